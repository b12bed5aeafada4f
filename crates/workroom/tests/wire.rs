//! What comes over the wire otherwise than it should: cut off in the middle, too slowly, too large, from elsewhere, or no
//! request at all. Each is told in words where there is anybody left to tell, the others are answered meanwhile, and
//! nothing is changed.
#![allow(clippy::unwrap_used, reason = "tests")]
#![allow(clippy::disallowed_methods, reason = "slowness takes a clock")]

use std::io::{Read as _, Write as _};
use std::sync::mpsc;
use std::thread;
use std::time::{Duration, Instant};

use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;
use workroom::web::{Address, Limits, Room, serve};

#[path = "common/folder.rs"]
mod folder;
#[path = "common/served.rs"]
mod served;

use folder::Folder;
use served::{Line, Served, encoded, status};

/// A project stands at a revision.
fn stands_at(line: Line, revision: i64) {
    let (status, page) = line.page("/w/1/paper");
    assert_eq!(status, 200, "the others are answered all the same");
    assert!(page.contains(&format!("name=\"seen\" value=\"{revision}\"")), "it does not stand at revision {revision}");
}

#[test]
fn a_request_cut_off_anywhere_changes_nothing() {
    let folder = Folder::new("cut-off");
    let served = Served::over(&folder.0.join("octavo.db"));
    let line = served.line();
    let body = encoded(&[("seen", "1"), ("page", "cards"), ("set:name", "All or nothing")]);
    let whole = format!("{}{body}", line.head("POST", "/w/1/edit", &line.form(body.len())));
    // One byte short of whole is the last of them.
    let places = (1..whole.len()).filter(|place| place % 5 == 0 || place + 3 > whole.len());
    let mut tried = 0;
    for place in places {
        let mut stream = line.connect().unwrap();
        stream.write_all(&whole.as_bytes()[..place]).unwrap();
        drop(stream);
        tried += 1;
    }
    assert!(tried > 40);
    stands_at(line, 1);
    assert_eq!(status(&line.send(&whole, b"")), 303, "not cut off, it would have changed something");
    stands_at(line, 2);
}

#[test]
fn a_request_from_elsewhere_is_refused() {
    let folder = Folder::new("elsewhere");
    let served = Served::over(&folder.0.join("octavo.db"));
    let line = served.line();
    let origin = format!("Origin: http://127.0.0.1:{}\r\n", line.port);
    let foreign = "Origin: http://elsewhere.example\r\n";
    for (path, more, wanted, said) in [
        ("/w/1/away", format!("{foreign}Content-Length: 0\r\n"), 403, "from another page than ours"),
        ("/w/1/away", "Content-Length: 0\r\n".to_owned(), 403, "from another page than ours"),
        ("/w/1/shelf", format!("{foreign}Content-Length: 0\r\n"), 403, "from another page than ours"),
        ("/new", format!("{foreign}Content-Length: 0\r\n"), 403, "from another page than ours"),
        ("/restore", format!("{foreign}Content-Length: 0\r\n"), 403, "from another page than ours"),
        ("/language", format!("{foreign}Content-Length: 0\r\n"), 403, "from another page than ours"),
        (
            "/w/1/edit",
            format!("{origin}Content-Type: multipart/form-data; boundary=x\r\nContent-Length: 9\r\n"),
            400,
            "did not arrive whole",
        ),
    ] {
        let back = line.send(&line.head("POST", path, &more), b"--x\r\n\r\n--");
        assert_eq!(status(&back), wanted, "{path} {more}: {back}");
        assert!(back.contains(said), "{path}: {back}");
    }
    let strange = format!("GET / HTTP/1.1\r\nHost: elsewhere.example:{}\r\nConnection: close\r\n\r\n", line.port);
    assert_eq!(status(&line.send(&strange, b"")), 421);
    stands_at(line, 1);

    // A language is chosen with anything in the form; it leads to no other place.
    for (language, page) in [("de", "//elsewhere.example"), ("xx", "http://elsewhere.example/"), ("", "\r\nA: b")] {
        let (status, back) = line.post("/language", &[("language", language), ("page", page)]);
        assert!(status == 303 && back.contains("location: /\r\n"), "{language} {page:?}: {back}");
    }
}

#[test]
fn what_is_no_request_at_all_harms_nobody() {
    let folder = Folder::new("noise");
    let served = Served::over(&folder.0.join("octavo.db"));
    let line = served.line();
    let mut chance = ChaCha8Rng::seed_from_u64(7);
    for turn in 0..60 {
        let length = chance.random_range(1..3_000);
        let mut noise: Vec<u8> = (0..length).map(|_| chance.random()).collect();
        if turn % 3 == 0 {
            noise.splice(0..0, line.head("POST", "/restore", &line.form(length)).into_bytes());
        }
        let mut stream = line.connect().unwrap();
        let _ = stream.write_all(&noise);
        let _ = stream.shutdown(std::net::Shutdown::Write);
        let mut back = Vec::new();
        let _ = stream.read_to_end(&mut back);
        let back = String::from_utf8_lossy(&back).into_owned();
        assert!(back.is_empty() || [400, 405, 408, 414, 421, 422, 431].contains(&status(&back)), "turn {turn}: {back}");
    }
    let long = format!("GET /{} HTTP/1.1\r\nHost: a\r\n\r\n", "x".repeat(1 << 20));
    assert!([0, 414, 431].contains(&status(&line.send(&long, b""))));
    stands_at(line, 1);
}

#[test]
fn what_is_too_large_is_heard_out_and_told() {
    let folder = Folder::new("large");
    let served = Served::over(&folder.0.join("octavo.db"));
    let line = served.line();
    // Just over the limit, and well over it: all of it is sent before anything is read, as a browser does.
    for size in [(64 << 20) + 1, 150 << 20] {
        let head = line.head("POST", "/w/1/text", &line.form(size));
        let mut stream = line.connect().unwrap();
        stream.write_all(head.as_bytes()).unwrap();
        let part = vec![b'x'; 1 << 20];
        let mut left = size;
        while left > 0 {
            let some = left.min(part.len());
            stream.write_all(&part[..some]).unwrap();
            left -= some;
        }
        let mut back = String::new();
        stream.read_to_string(&mut back).unwrap();
        assert_eq!(status(&back), 413, "{back}");
        assert!(back.contains("That is too large: 64 MB is the most."), "{back}");
    }
    stands_at(line, 1);
}

/// A phone's photo is larger than what the form library takes by itself, 2 MB.
#[test]
fn what_is_as_large_as_a_photo_arrives_whole() {
    let folder = Folder::new("photo");
    let served = Served::over(&folder.0.join("octavo.db"));
    let line = served.line();
    let (code, back) = line.upload("/restore", &[], &vec![b'x'; 8 << 20]);
    assert!(!back.contains("did not arrive whole"), "{back}");
    assert_eq!(code, 422, "{back}");
    stands_at(line, 1);
}

/// A workroom in this process, with less patience than a maker's.
fn impatient(limits: Limits) -> Line {
    let (told, address) = mpsc::channel();
    thread::spawn(move || {
        let room = Room::in_memory(1_000).unwrap();
        serve(room, Address { port: 0 }, limits, |at| told.send(at.to_owned()).unwrap()).unwrap();
    });
    let address = address.recv().unwrap();
    Line { port: address.rsplit(':').next().unwrap().trim_end_matches('/').parse().unwrap() }
}

/// Sends one byte after another until nobody listens any more, and looks at another page in between; what came back, and
/// when the answer had come.
fn drip(line: Line, first: &str, slowly: &str) -> (String, Duration) {
    let mut stream = line.connect().unwrap();
    stream.set_nonblocking(false).unwrap();
    stream.set_read_timeout(Some(Duration::from_millis(20))).unwrap();
    let started = Instant::now();
    stream.write_all(first.as_bytes()).unwrap();
    let mut back = Vec::new();
    for byte in slowly.bytes().cycle() {
        let _ = stream.write_all(&[byte]);
        let mut some = [0; 4096];
        match stream.read(&mut some) {
            Ok(0) => break,
            Ok(length) => back.extend_from_slice(&some[..length]),
            Err(error) if matches!(error.kind(), std::io::ErrorKind::WouldBlock | std::io::ErrorKind::TimedOut) => {}
            Err(_) => break,
        }
        assert!(started.elapsed() < Duration::from_secs(30), "nobody put an end to it");
        stands_at(line, 1);
    }
    (String::from_utf8_lossy(&back).into_owned(), started.elapsed())
}

#[test]
fn who_is_too_slow_is_told_and_the_others_do_not_wait() {
    let arrival = Duration::from_millis(700);
    let line = impatient(Limits { arrival, silence: Duration::from_secs(60) });
    stands_at(line, 1);
    for (first, slowly) in [
        ("GET /w/1/cards HTTP/1.1\r\nX: ".to_owned(), "slow"),
        ("\r\n".to_owned(), "\r\n"),
        (line.head("POST", "/w/1/text", &line.form(4_000)), "a"),
    ] {
        let (back, took) = drip(line, &first, slowly);
        assert_eq!(status(&back), 408, "{first}: {back}");
        assert!(back.contains("The request did not arrive in time. Try it again."), "{first}: {back}");
        assert!(took >= arrival, "{first}: it had its time: {took:?}");
    }
    stands_at(line, 1);
}

#[test]
fn a_connection_that_says_nothing_is_closed_and_one_that_is_used_is_not() {
    let line = impatient(Limits { arrival: Duration::from_secs(60), silence: Duration::from_millis(900) });
    let mut silent = line.connect().unwrap();
    let mut back = Vec::new();
    silent.read_to_end(&mut back).unwrap();
    assert!(back.is_empty(), "there is nothing to tell: {}", String::from_utf8_lossy(&back));

    // One connection for many requests: silence counts from the last answer.
    let mut used = line.connect().unwrap();
    for _ in 0..4 {
        let request = format!("GET /w/99 HTTP/1.1\r\nHost: 127.0.0.1:{}\r\n\r\n", line.port);
        used.write_all(request.as_bytes()).unwrap();
        let mut back = String::new();
        while !back.contains("</html>") {
            let mut some = [0; 4096];
            let length = used.read(&mut some).unwrap();
            assert!(length > 0, "it was closed: {back}");
            back.push_str(&String::from_utf8_lossy(&some[..length]));
        }
        assert_eq!(status(&back), 404);
        thread::sleep(Duration::from_millis(400));
    }
}
