//! What should never have been sent: requests with anything in them, cut off, too large, from elsewhere; files that are no
//! store of ours, may not be written, or are open elsewhere. Each is told in words, and nothing kept is lost.
#![allow(clippy::unwrap_used, reason = "tests")]

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::Duration;

use rand::seq::IndexedRandom as _;
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;
use workroom::web::{Answer, Asked, Method, Room, answer};

/// Every address that changes something in a project.
const CHANGES: [&str; 16] = [
    "edit", "text", "pins", "choices", "recipe", "panels", "face", "move", "undo", "redo", "copy", "spoil", "sample",
    "tick", "stop", "away",
];
/// Names of fields that some form has, and of places in a project file.
const NAMES: [&str; 34] = [
    "seen",
    "page",
    "at",
    "card",
    "swap",
    "turn",
    "value",
    "mark",
    "back",
    "step",
    "done",
    "text",
    "line",
    "to",
    "sheet",
    "recipe",
    "layer",
    "left",
    "top",
    "size",
    "kind",
    "file",
    "format",
    "w1",
    "h1",
    "set:name",
    "set:recipe.0.layer.0.border",
    "set:pack.0.design.0.use",
    "set:pack.0.price",
    "set:goal.cards",
    "set:recipe.99.layer.7.width",
    "set:..",
    "set:",
    "set:pack.0.design.3.front.collage.columns",
];
const VALUES: [&str; 22] = [
    "",
    "1",
    "-1",
    "0",
    "99999999999999999999",
    "yes",
    "front",
    "1/0",
    "4 3/4 in",
    "1e400",
    "NaN",
    "<script>alert(1)</script>",
    "\"\"\"",
    "]]\n[[pack]]",
    "'; DROP TABLE project; --",
    "../../etc/passwd",
    "\u{202e}txt",
    "\u{0}",
    "𝄞𝄞𝄞",
    "add",
    "%00%ff",
    "paper",
];

fn ask(room: &Room, method: Method, path: &str, fields: Vec<(String, Vec<u8>)>) -> Answer {
    answer(room, &Asked { method, path: path.to_owned(), query: Vec::new(), fields, now: 5_000 })
}

fn body(answer: &Answer) -> String {
    String::from_utf8_lossy(&answer.body).into_owned()
}

/// The revision a project stands at, as its pages say it.
fn revision(room: &Room) -> i64 {
    let shown = body(&ask(room, Method::Get, "/w/1/paper", Vec::new()));
    let found = shown.split("name=\"seen\" value=\"").nth(1).unwrap_or_default();
    found.split('"').next().and_then(|number| number.parse().ok()).unwrap_or(-1)
}

#[test]
fn forms_with_anything_in_them_never_break_a_page() {
    let room = Room::in_memory(1_000).unwrap();
    let mut chance = ChaCha8Rng::seed_from_u64(5);
    let mut refused = 0;
    for turn in 0..400 {
        let change = CHANGES.choose(&mut chance).unwrap();
        let mut fields = vec![("seen".to_owned(), revision(&room).to_string().into_bytes())];
        for _ in 0..chance.random_range(0..6) {
            let name = (*NAMES.choose(&mut chance).unwrap()).to_owned();
            let value = if chance.random_bool(0.1) {
                (0..chance.random_range(0..60)).map(|_| chance.random()).collect()
            } else {
                VALUES.choose(&mut chance).unwrap().as_bytes().to_vec()
            };
            fields.push((name, value));
        }
        let shown = format!("{change} {fields:?}");
        let answered = ask(&room, Method::Post, &format!("/w/1/{change}"), fields);
        assert!([303, 404, 409, 422].contains(&answered.status), "turn {turn}: {} to {shown}", answered.status);
        refused += u32::from(answered.status != 303);
        if *change == "away" {
            assert_eq!(ask(&room, Method::Post, "/w/1/back", Vec::new()).status, 303);
        }
        // Whatever was kept can still be shown, or mended as text.
        let page = ask(&room, Method::Get, "/w/1/paper", Vec::new());
        assert!([200, 422].contains(&page.status), "turn {turn}: {} after {shown}", page.status);
        assert!(!body(&page).contains("<script>alert"), "turn {turn}: what was typed became part of the page: {shown}");
    }
    assert!(refused > 20, "the forms are hostile: {refused} refused");
}

/// A folder that is gone afterwards.
struct Folder(PathBuf);

impl Folder {
    fn new(name: &str) -> Folder {
        let path = std::env::temp_dir().join(format!("octavo-hostile-{name}-{}", std::process::id()));
        let _ = std::fs::remove_dir_all(&path);
        std::fs::create_dir_all(&path).unwrap();
        Folder(path)
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = std::fs::remove_dir_all(&self.0);
    }
}

/// A served workroom, stopped afterwards.
struct Served {
    child: Child,
    port: u16,
}

impl Served {
    fn over(data: &Path) -> Served {
        let mut child = Command::new(env!("CARGO_BIN_EXE_octavo"))
            .args(["--no-open", "--port", "0", "--data"])
            .arg(data)
            .stdout(Stdio::piped())
            .spawn()
            .unwrap();
        let mut line = String::new();
        BufReader::new(child.stdout.take().unwrap()).read_line(&mut line).unwrap();
        let port = line.split("127.0.0.1:").nth(1).unwrap().split('/').next().unwrap().parse().unwrap();
        Served { child, port }
    }

    /// Sends bytes as they are; what comes back until the other side closes, or the pause is over.
    fn send(&self, head: &str, rest: &[u8]) -> String {
        let mut stream = TcpStream::connect(("127.0.0.1", self.port)).unwrap();
        stream.set_read_timeout(Some(Duration::from_secs(20))).unwrap();
        // The other side may have heard enough before everything is said.
        let _ = stream.write_all(head.as_bytes()).and_then(|()| stream.write_all(rest));
        let mut back = Vec::new();
        let _ = stream.read_to_end(&mut back);
        String::from_utf8_lossy(&back).into_owned()
    }

    fn head(&self, method: &str, path: &str, more: &str) -> String {
        format!("{method} {path} HTTP/1.1\r\nHost: 127.0.0.1:{}\r\nConnection: close\r\n{more}\r\n", self.port)
    }

    fn status(&self, path: &str) -> String {
        let back = self.send(&self.head("GET", path, ""), b"");
        back.split(' ').nth(1).unwrap_or_default().to_owned()
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

#[test]
fn requests_that_are_cut_off_too_large_or_from_elsewhere_change_nothing() {
    let folder = Folder::new("wire");
    let served = Served::over(&folder.0.join("octavo.db"));
    assert_eq!(served.status("/w/1/cards"), "200");

    let origin = format!("Origin: http://127.0.0.1:{}\r\n", served.port);
    let form = "Content-Type: application/x-www-form-urlencoded\r\n";
    // Cut off in the middle of the head, and of the form.
    for (head, rest) in [
        ("POST /w/1/away HTTP/1.1\r\nHost: 127.0".to_owned(), &b""[..]),
        (served.head("POST", "/w/1/text", &format!("{origin}{form}Content-Length: 400\r\n")), &b"seen=1&text=na"[..]),
    ] {
        let mut stream = TcpStream::connect(("127.0.0.1", served.port)).unwrap();
        stream.write_all(head.as_bytes()).unwrap();
        stream.write_all(rest).unwrap();
        drop(stream);
    }
    assert_eq!(served.status("/w/1/cards"), "200", "the others are answered all the same");

    let foreign = "Origin: http://elsewhere.example\r\n";
    for (path, more, status) in [
        ("/w/1/away", format!("{foreign}Content-Length: 0\r\n"), "403"),
        ("/w/1/away", "Content-Length: 0\r\n".to_owned(), "403"),
        ("/w/1/edit", format!("{origin}Content-Type: multipart/form-data; boundary=x\r\nContent-Length: 9\r\n"), "400"),
    ] {
        let back = served.send(&served.head("POST", path, &more), b"--x\r\n\r\n--");
        assert!(back.starts_with(&format!("HTTP/1.1 {status}")), "{path} {more}: {back}");
    }
    let strange = format!("GET / HTTP/1.1\r\nHost: elsewhere.example:{}\r\nConnection: close\r\n\r\n", served.port);
    assert!(served.send(&strange, b"").starts_with("HTTP/1.1 421"));

    let size = 65 << 20;
    let large = served.head("POST", "/w/1/text", &format!("{origin}{form}Content-Length: {size}\r\n"));
    let back = served.send(&large, &vec![b'x'; size]);
    assert!(back.is_empty() || back.starts_with("HTTP/1.1 413"), "{back}");

    let shown = served.send(&served.head("GET", "/w/1/paper", ""), b"");
    assert!(shown.contains("name=\"seen\" value=\"1\""), "nothing was changed by any of them");
}

fn refused(data: &Path, as_nobody: bool) -> String {
    let mut command = Command::new(env!("CARGO_BIN_EXE_octavo"));
    command.args(["--no-open", "--port", "0", "--data"]).arg(data).stdout(Stdio::null()).stderr(Stdio::piped());
    #[cfg(unix)]
    if as_nobody {
        use std::os::unix::process::CommandExt as _;
        command.uid(65_534);
    }
    let out = command.spawn().unwrap().wait_with_output().unwrap();
    assert_eq!(out.status.code(), Some(2));
    String::from_utf8(out.stderr).unwrap()
}

#[test]
fn a_file_that_cannot_be_the_store_is_refused_and_left_as_it_was() {
    let folder = Folder::new("files");
    let data = folder.0.join("octavo.db");
    let served = Served::over(&data);
    let second = refused(&data, false);
    assert!(second.contains("open"), "two workrooms on one file: {second}");
    assert_eq!(served.status("/"), "200", "the first one goes on");
    drop(served);

    let letter = folder.0.join("letter.db");
    let text = "Dear Aunt,\nthank you for the pack of paper, it is lovely. ".repeat(40);
    std::fs::write(&letter, &text).unwrap();
    let said = refused(&letter, false);
    assert!(said.contains("letter.db"), "{said}");
    assert_eq!(std::fs::read_to_string(&letter).unwrap(), text);
}

/// As a user who owns nothing: whoever runs the tests may be root, whom no mode of a file stops.
#[cfg(unix)]
#[test]
fn a_store_that_may_only_be_read_is_told() {
    use std::os::unix::fs::{MetadataExt as _, PermissionsExt as _};
    let folder = Folder::new("read-only");
    let data = folder.0.join("octavo.db");
    drop(Served::over(&data));
    let before = std::fs::read(&data).unwrap();
    let mode = |path: &Path, mode| std::fs::set_permissions(path, std::fs::Permissions::from_mode(mode)).unwrap();
    let root = std::fs::metadata(&data).unwrap().uid() == 0;
    mode(&data, 0o444);
    mode(&folder.0, 0o555);
    let said = refused(&data, root);
    mode(&folder.0, 0o755);
    assert!(said.contains("octavo.db") && said.contains("read"), "{said}");
    assert_eq!(std::fs::read(&data).unwrap(), before);
}
