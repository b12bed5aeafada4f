//! What should never have been sent: forms and addresses with anything in them; files that are no store of ours, may not
//! be written, or are open elsewhere. Each is told in words, and nothing kept is lost. What comes over the wire cut off,
//! too slowly or too large is in `wire.rs`, a full disk in `full.rs`, a killed server in `kills.rs`.
#![allow(clippy::unwrap_used, reason = "tests")]

use std::collections::BTreeSet;
use std::path::Path;
use std::process::{Command, Stdio};

use rand::seq::IndexedRandom as _;
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;
use store::projects::{ProjectId, Projects};
use workroom::web::{Answer, Asked, Method, Room, answer};

#[path = "common/folder.rs"]
mod folder;
#[path = "common/served.rs"]
mod served;

use folder::Folder;
use served::Served;

/// Every address that changes something in a project.
const CHANGES: [&str; 25] = [
    "photo",
    "regions",
    "layers",
    "background",
    "edit",
    "text",
    "pins",
    "choices",
    "recipe",
    "panels",
    "face",
    "move",
    "undo",
    "redo",
    "copy",
    "spoil",
    "sample",
    "tick",
    "shelf",
    "stop",
    "again",
    "away",
    "back",
    "swap",
    "rates",
];
/// And those that belong to no project.
const OTHERS: [&str; 2] = ["new", "restore"];
/// Every page of a project, and the parts of pages that are asked for by themselves.
const SHOWN: [&str; 20] = [
    "interest",
    "photo",
    "photo.jpg",
    "paper",
    "cards",
    "layout",
    "batch",
    "cardstock",
    "supplies",
    "background",
    "table",
    "post",
    "class",
    "share",
    "move",
    "panels",
    "layers",
    "choices",
    "stamped",
    "progress",
];
/// Names of fields that some form has, and of places in a project file.
const NAMES: [&str; 96] = [
    "photo",
    "offered",
    "aside",
    "tl-x",
    "br-y",
    "white-x",
    "white-y",
    "patches",
    "patch-place",
    "patch-color",
    "spot.x",
    "spot.y",
    "check",
    "even",
    "part",
    "with",
    "seen",
    "hold",
    "on",
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
    "set:rate.of",
    "set:rate.up_to",
    "set:rate.price",
    "set:rate.date",
    "set:recipe.0.layer.0.border",
    "set:pack.0.design.0.use",
    "set:pack.0.price",
    "set:goal.cards",
    "set:recipe.99.layer.7.width",
    "set:..",
    "set:",
    "set:pack.0.design.3.front.collage.columns",
    "set:selling.price",
    "set:minutes.cut",
    "set:class.seats",
    "set:class.days",
    "set:post.0.name",
    "act",
    "id",
    "revision",
    "name",
    "amount",
    "unit",
    "price",
    "buys",
    "currency",
    "priced_on",
    "place",
    "why",
    "table",
    "pack",
    "designs",
    "copies",
    "example",
    "design",
    "side",
    "columns",
    "rows",
    "panels",
    "then",
    "hand",
    "next",
    "marks",
    "b",
    "number",
    "numbers",
    "x",
    "y",
    "stamp",
    "steps:background.0.gap",
    "number:background.0.seed",
    "set:background.0.stamp.0.size",
];
const VALUES: [&str; 39] = [
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
    "save",
    "import",
    "remove",
    "picture",
    "file",
    "pack",
    "kind;name;amount\ncardstock;Milk;=1+1",
    "left",
    "SQLite format 3\u{0}",
    "begin",
    "toss",
    "lock",
    "without 1",
    "with 640,220 #8c8c8c",
    "1e300,-1e300",
    "stamp",
    "change",
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

/// Everything that is kept: project, revision, its text, and what it came from.
fn everything(data: &Path) -> BTreeSet<(i64, i64, String, String, Option<i64>)> {
    let store = Projects::open(data).unwrap();
    let mut all = BTreeSet::new();
    for kept in store.all().unwrap() {
        for made in store.history(kept.id, u32::MAX).unwrap() {
            let whole = store.revision(ProjectId(kept.id.0), made.number).unwrap().unwrap();
            all.insert((kept.id.0, whole.number, whole.text, whole.what, whole.came_from));
        }
    }
    all
}

fn anything(chance: &mut ChaCha8Rng) -> Vec<u8> {
    if chance.random_bool(0.1) {
        (0..chance.random_range(0..60)).map(|_| chance.random()).collect()
    } else {
        VALUES.choose(chance).unwrap().as_bytes().to_vec()
    }
}

/// Sends so many forms with anything in them; how many were refused.
fn hostile_forms(room: &Room, chance: &mut ChaCha8Rng, turns: u32) -> u32 {
    let mut refused = 0;
    for turn in 0..turns {
        let path = match chance.random_range(0..12) {
            0 => format!("/{}", OTHERS.choose(chance).unwrap()),
            _ => format!("/w/1/{}", CHANGES.choose(chance).unwrap()),
        };
        let mut fields = vec![("seen".to_owned(), revision(room).to_string().into_bytes())];
        for _ in 0..chance.random_range(0..6) {
            fields.push(((*NAMES.choose(chance).unwrap()).to_owned(), anything(chance)));
        }
        let shown = format!("{path} {fields:?}");
        let answered = ask(room, Method::Post, &path, fields);
        assert!([303, 404, 409, 422].contains(&answered.status), "turn {turn}: {} to {shown}", answered.status);
        refused += u32::from(answered.status != 303);
        if path.ends_with("away") {
            assert_eq!(ask(room, Method::Post, "/w/1/back", Vec::new()).status, 303);
        }
        // Whatever was kept can still be shown, or mended as text.
        let page = ask(room, Method::Get, "/w/1/paper", Vec::new());
        assert!([200, 422].contains(&page.status), "turn {turn}: {} after {shown}", page.status);
        assert!(!body(&page).contains("<script>alert"), "turn {turn}: what was typed became part of the page: {shown}");
    }
    refused
}

#[test]
fn forms_with_anything_in_them_never_break_a_page_nor_touch_a_kept_revision() {
    let folder = Folder::new("forms");
    let data = folder.0.join("octavo.db");
    let mut chance = ChaCha8Rng::seed_from_u64(5);
    let mut before = BTreeSet::new();
    let mut refused = 0;
    // A few times over, so that there is something of each time that the next could harm.
    for _ in 0..4 {
        let room = Room::open(&data, 1_000).unwrap();
        refused += hostile_forms(&room, &mut chance, 110);
        drop(room);
        let now = everything(&data);
        let gone: Vec<_> = before.difference(&now).collect();
        assert!(gone.is_empty(), "kept, and no longer as it was: {:?}", gone.first());
        assert!(now.len() > before.len(), "some of them are kept: {}", now.len());
        before = now;
    }
    assert!(refused > 20, "the forms are hostile: {refused} refused");
}

#[test]
fn addresses_with_anything_after_the_question_mark_never_break_a_page() {
    let room = Room::in_memory(1_000).unwrap();
    let mut chance = ChaCha8Rng::seed_from_u64(6);
    for turn in 0..200 {
        let path = match chance.random_range(0..16) {
            0 => "/".to_owned(),
            1 => "/w/1/1/card-1.svg".to_owned(),
            _ => format!("/w/1/{}", SHOWN.choose(&mut chance).unwrap()),
        };
        let mut query = Vec::new();
        for _ in 0..chance.random_range(1..5) {
            let value = String::from_utf8_lossy(&anything(&mut chance)).into_owned();
            let name = match chance.random_range(0..3) {
                0 => ["layout", "step", "print", "units", "language", "swap"].choose(&mut chance).unwrap(),
                _ => NAMES.choose(&mut chance).unwrap(),
            };
            query.push(((*name).to_owned(), value));
        }
        let shown = format!("{path} {query:?}");
        let answered = answer(&room, &Asked { method: Method::Get, path, query, fields: Vec::new(), now: 5_000 });
        assert!([200, 404].contains(&answered.status), "turn {turn}: {} to {shown}", answered.status);
        assert!(
            !body(&answered).contains("<script>alert"),
            "turn {turn}: what was asked became part of the page: {shown}"
        );
    }
    assert_eq!(revision(&room), 1, "looking changes nothing");
}

/// So that no address is left out above when one is added.
#[test]
fn every_address_that_there_is_was_tried() {
    let source = include_str!("../src/web/answer.rs");
    let posts: Vec<&str> = source
        .split("(Method::Post, [\"")
        .skip(1)
        .filter_map(|rest| rest.split("\"])").next())
        .filter(|name| !name.is_empty())
        .collect();
    assert!(posts.len() > 15, "{posts:?}");
    for name in posts {
        assert!(CHANGES.contains(&name) || OTHERS.contains(&name), "`{name}` is not tried with anything in it");
    }
    let gets = source.split("(Method::Get, [\"").skip(1).filter_map(|rest| rest.split("\"])").next());
    let others = ["assets\", _, name", "backup", "file\", \"project.toml", "file\", name"];
    for name in gets {
        let known = SHOWN.contains(&name) || others.iter().any(|other| name.starts_with(other));
        assert!(known, "`{name}` is not tried with anything after it");
    }
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
    assert_eq!(served.line().get("/").0, 200, "the first one goes on");
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
