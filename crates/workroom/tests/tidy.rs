//! What a review forgets: arrows between rooms, messages, file lengths, sources, names in the guides.
#![allow(clippy::unwrap_used, reason = "tests")]

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// Which rooms a room may use, as ARCHITECTURE.md has it.
const ARROWS: [(&str, &[&str]); 10] = [
    ("measure", &[]),
    ("color", &[]),
    ("words", &[]),
    ("photo", &["color"]),
    ("cutting", &["measure"]),
    ("scatter", &["measure"]),
    ("cards", &["measure", "cutting", "scatter"]),
    ("drawing", &["measure", "cutting", "cards", "words"]),
    ("store", &["measure", "cards"]),
    ("workroom", &["measure", "color", "photo", "words", "cutting", "scatter", "cards", "drawing", "store"]),
];

/// A file of Rust may be so long.
const MOST_LINES: usize = 900;

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).ancestors().nth(2).unwrap().to_owned()
}

fn read(path: &Path) -> String {
    fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// All files below a folder with that extension, in order.
fn files(folder: &Path, extension: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    let mut entries: Vec<PathBuf> =
        fs::read_dir(folder).map(|entries| entries.map(|entry| entry.unwrap().path()).collect()).unwrap_or_default();
    entries.sort();
    for path in entries {
        if path.is_dir() {
            found.extend(files(&path, extension));
        } else if path.extension().is_some_and(|is| is == extension) {
            found.push(path);
        }
    }
    found
}

/// The files of Rust in one part (`src`, `tests`) of every room.
fn code(part: &str) -> Vec<PathBuf> {
    ARROWS.iter().flat_map(|(room, _)| files(&root().join("crates").join(room).join(part), "rs")).collect()
}

/// A file's own code: without comment lines and without its unit tests.
fn without_tests(path: &Path) -> String {
    let text = read(path);
    let own = text.split("\nmod tests {").next().unwrap_or_default();
    own.lines().map(str::trim).filter(|line| !line.starts_with("//")).flat_map(|line| [line, " "]).collect()
}

fn manifest(path: &Path) -> toml::Table {
    read(path).parse().unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

fn manifest_of(room: &str) -> toml::Table {
    manifest(&root().join("crates").join(room).join("Cargo.toml"))
}

#[test]
fn arrows_between_rooms_point_down_only() {
    let rooms: BTreeSet<&str> = ARROWS.iter().map(|(room, _)| *room).collect();
    let folders = fs::read_dir(root().join("crates")).unwrap();
    for folder in folders {
        let name = folder.unwrap().file_name().into_string().unwrap();
        assert!(rooms.contains(name.as_str()), "{name} is no room of the table");
    }
    for (room, allowed) in ARROWS {
        for section in ["dependencies", "dev-dependencies", "build-dependencies"] {
            let table = manifest_of(room);
            let Some(deps) = table.get(section).and_then(toml::Value::as_table) else { continue };
            for used in deps.keys().filter(|used| rooms.contains(used.as_str())) {
                // Tests may look whether codes have words, and plan what was read.
                let looks_up = section == "dev-dependencies" && ["words", "cutting"].contains(&used.as_str());
                assert!(looks_up || allowed.contains(&used.as_str()), "{room} must not use {used}");
            }
        }
    }
}

#[test]
fn only_the_sheets_of_a_drawing_know_cards() {
    let sheets = root().join("crates/drawing/src/sheets");
    for path in files(&root().join("crates/drawing/src"), "rs") {
        if !path.starts_with(&sheets) && path != sheets.with_extension("rs") {
            assert!(!without_tests(&path).contains("cards::"), "{} knows cards", path.display());
        }
    }
}

#[test]
fn every_room_takes_the_lints_and_versions_of_the_house() {
    for (room, _) in ARROWS {
        let table = manifest_of(room);
        assert_eq!(table["lints"]["workspace"].as_bool(), Some(true), "{room}");
        for section in ["dependencies", "dev-dependencies"] {
            let Some(deps) = table.get(section).and_then(toml::Value::as_table) else { continue };
            for (name, value) in deps {
                let shared = value.get("workspace").and_then(toml::Value::as_bool);
                assert_eq!(shared, Some(true), "{room}: `{name}` takes its version from the root");
            }
        }
    }
}

#[test]
fn every_dependency_is_used() {
    for (room, _) in ARROWS {
        let folder = root().join("crates").join(room);
        let own: String = files(&folder, "rs").iter().map(|path| read(path)).collect();
        let table = manifest_of(room);
        for section in ["dependencies", "dev-dependencies"] {
            let Some(deps) = table.get(section).and_then(toml::Value::as_table) else { continue };
            for name in deps.keys() {
                let word = name.replace('-', "_");
                let used = [format!("{word}::"), format!("use {word}"), format!("{word}!")];
                assert!(used.iter().any(|used| own.contains(used)), "{room} does not use `{name}`");
            }
        }
    }
    let shared = manifest(&root().join("Cargo.toml"));
    for name in shared["workspace"]["dependencies"].as_table().unwrap().keys() {
        let used = ARROWS.iter().any(|(room, _)| {
            let table = manifest_of(room);
            ["dependencies", "dev-dependencies"]
                .iter()
                .any(|of| table.get(*of).is_some_and(|deps| deps.get(name).is_some()))
        });
        assert!(used, "no room uses `{name}`");
    }
}

#[test]
fn every_library_is_told_in_the_list_of_dependencies() {
    let list = read(&root().join("docs/dependencies.md"));
    let told: BTreeSet<&str> = list
        .lines()
        .filter(|line| line.starts_with("| "))
        .filter_map(|line| line.split('|').nth(1))
        .flat_map(|cell| cell.split(','))
        .map(str::trim)
        .collect();
    let table = manifest(&root().join("Cargo.toml"));
    for name in table["workspace"]["dependencies"].as_table().unwrap().keys() {
        let room = ARROWS.iter().any(|(room, _)| room == name);
        assert!(room || told.contains(name.as_str()), "`{name}` is not told in docs/dependencies.md");
    }
}

#[test]
fn files_stay_short_enough_to_read() {
    for path in files(&root().join("crates"), "rs") {
        let lines = read(&path).lines().count();
        assert!(lines <= MOST_LINES, "{} has {lines} lines: look for a seam", path.display());
    }
    let lines = read(&root().join("ARCHITECTURE.md")).lines().count();
    assert!(lines <= 200, "ARCHITECTURE.md has {lines} lines");
}

/// A test with data from outside says in its head whose they are.
#[test]
fn outside_checks_name_their_source() {
    let mut checked = 0;
    for path in code("tests") {
        // Helpers in folders of their own belong to the tests beside them.
        if path.parent().is_some_and(|folder| !folder.ends_with("tests")) {
            continue;
        }
        let text = read(&path);
        let head: String = text.lines().take_while(|line| line.starts_with("//!")).collect();
        assert!(!head.is_empty(), "{}: say what the test shows", path.display());
        let data = path.parent().unwrap().join("data");
        let uses_data = text.contains("include_str!(\"data/") || text.contains(concat!("tests", "/data"));
        if uses_data && data.is_dir() {
            checked += 1;
            assert!(head.contains("//! Source:"), "{}: name the source in a line `//! Source:`", path.display());
        }
    }
    assert!(checked >= 3, "tests with data are found: {checked}");
}

#[test]
fn modules_and_files_named_in_the_guides_exist() {
    let mut seen = 0;
    for guide in ["ARCHITECTURE.md", "CONTRIBUTING.md", "DESIGN.md"] {
        let text = read(&root().join(guide));
        for quoted in text.split('`').skip(1).step_by(2) {
            let parts: Vec<&str> = quoted.split("::").collect();
            if parts.len() > 1 && ARROWS.iter().any(|(room, _)| *room == parts[0]) {
                seen += 1;
                let place = root().join("crates").join(parts[0]).join("src").join(parts[1..].join("/"));
                let there = place.with_extension("rs").is_file() || place.join("mod.rs").is_file();
                assert!(there, "`{quoted}` is named in {guide} but is not there");
            } else if quoted.starts_with("crates/") && !quoted.contains(['<', '*']) {
                seen += 1;
                assert!(root().join(quoted).exists(), "`{quoted}` is named in {guide} but is not there");
            }
        }
    }
    assert!(seen > 15, "the guides name modules: {seen}");
}

/// Every message and attribute by name (`id`, `id.attribute`).
fn messages() -> BTreeSet<String> {
    let plain = |name: &str| {
        name.starts_with(|sign: char| sign.is_ascii_lowercase())
            && name.chars().all(|sign| sign.is_ascii_lowercase() || sign.is_ascii_digit() || sign == '-')
    };
    let mut all = BTreeSet::new();
    for (_, text) in words::ENGLISH {
        let mut message = String::new();
        for line in text.lines() {
            let Some((name, _)) = line.split_once(" =") else { continue };
            if let Some(attribute) = name.strip_prefix("    .").filter(|name| plain(name)) {
                all.insert(format!("{message}.{attribute}"));
            } else if plain(name) {
                name.clone_into(&mut message);
                all.insert(message.clone());
            }
        }
    }
    all
}

/// Names that code asks for, by where: what follows `say("` and `said("`, and the codes of problems.
fn asked_for() -> BTreeMap<String, PathBuf> {
    let mut all = BTreeMap::new();
    for path in code("src") {
        let text = without_tests(&path);
        let first_text = |after: &str| {
            after.trim_start().strip_prefix('"').and_then(|rest| rest.split('"').next()).map(str::to_owned)
        };
        for opener in ["say(", "said("] {
            all.extend(text.split(opener).skip(1).filter_map(first_text).map(|name| (name, path.clone())));
        }
        // Until the first of them is worded, nobody can be told the problems of a project file.
        let worded = messages().iter().any(|name| name.starts_with("problem-"));
        if path.ends_with("store/src/project_file/problem.rs") && worded {
            let codes = text.split("fn code(").find(|part| part.contains("=> \"")).unwrap_or_default();
            let codes = codes.split("fn facts(").next().unwrap_or_default();
            let codes = codes.split("=> \"").skip(1).filter_map(|after| after.split('"').next());
            all.extend(codes.map(|code| (format!("problem-{code}"), path.clone())));
        }
        if path.starts_with(root().join("crates/cards")) {
            let codes = text.split("code: \"").skip(1).filter_map(|after| after.split('"').next());
            all.extend(codes.map(|code| (format!("finding-{code}"), path.clone())));
        }
    }
    all
}

#[test]
fn every_message_that_is_asked_for_exists() {
    let all = messages();
    let asked = asked_for();
    assert!(asked.len() > 20, "the reader of code finds what is asked for");
    for (name, path) in asked {
        assert!(all.contains(&name), "{} asks for `{name}`, which no message file has", path.display());
        if name.starts_with("problem-") || name.starts_with("finding-") {
            assert!(all.contains(&format!("{name}.remedy")), "`{name}` says what would do in `.remedy`");
        }
    }
}

#[test]
fn every_message_is_used() {
    let mut quoted: BTreeSet<String> = BTreeSet::new();
    for path in code("src") {
        quoted.extend(without_tests(&path).split('"').map(str::to_owned));
    }
    for name in messages() {
        let code = name.strip_prefix("finding-").or_else(|| name.strip_prefix("problem-")).unwrap_or(&name);
        let used = name.ends_with(".remedy") || quoted.contains(&name) || quoted.contains(code);
        assert!(used, "nothing says the message `{name}`");
    }
}
