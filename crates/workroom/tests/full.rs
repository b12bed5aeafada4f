//! No room on the disk while somebody works: the edit is refused in words, nothing kept is lost, and it goes on once
//! there is room. Over the program itself; Linux, where a limit can be set from outside.
#![cfg(target_os = "linux")]
#![allow(clippy::unwrap_used, clippy::print_stdout, reason = "tests; one says where it cannot be done")]

use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::Command;

use store::projects::{ProjectId, Projects};

#[path = "common/folder.rs"]
mod folder;
#[path = "common/served.rs"]
mod served;

use folder::Folder;
use served::{Line, Served};

const SERVE: &str = "exec \"$0\" --no-open --port 0 --data \"$1\"";
/// More edits than any limit here has room for.
const MOST: i64 = 400;

fn edit(line: Line, seen: i64) -> (u16, String) {
    let (seen, name) = (seen.to_string(), format!("Edit after {seen}"));
    line.post("/w/1/edit", &[("seen", &seen), ("page", "cards"), ("set:name", &name)])
}

/// Edits until one is refused: how many were answered, and how it was told.
fn edit_until_refused(line: Line) -> (i64, u16, String) {
    for seen in 1..MOST {
        let (status, said) = edit(line, seen);
        if status != 303 {
            return (seen, status, said);
        }
    }
    panic!("{MOST} edits had room");
}

/// Every answered edit is there, none that was refused is, and pages are shown all the same.
fn nothing_lost(line: Line, now: i64) {
    let (status, page) = line.page("/w/1/cards");
    let name = format!("Edit after {}", now - 1);
    assert!(status == 200 && page.contains(&name), "{status}, {name}");
    assert!(page.contains(&format!("name=\"seen\" value=\"{now}\"")), "the page stands at revision {now}");
}

fn kept(data: &Path, most: i64) {
    let store = Projects::open(data).unwrap();
    for number in 2..=most {
        let text = store.revision(ProjectId(1), number).unwrap().unwrap().text;
        assert!(text.contains(&format!("\"Edit after {}\"", number - 1)), "revision {number}");
    }
    assert_eq!(store.get(ProjectId(1)).unwrap().unwrap().now.number, most);
}

#[test]
fn a_file_that_may_not_get_longer_is_told_and_goes_on_once_it_may() {
    let folder = Folder::new("limit");
    let data = folder.0.join("octavo.db");
    // Half a megabyte (`ulimit -f` counts 512 bytes); without the trap the system would end the program.
    let served = Served::through(&["sh"], &format!("trap '' XFSZ; ulimit -S -f 1024; {SERVE}"), &data, "");
    let line = served.line();
    let (now, status, said) = edit_until_refused(line);
    assert!(now > 1, "some edits had room: {said}");
    assert_eq!(status, 507, "{said}");
    assert!(said.contains("The disk took nothing more") && said.contains("Make room, then do it again"), "{said}");
    assert!(said.contains("Everything that was kept before is still there"), "{said}");
    nothing_lost(line, now);
    assert_eq!(edit(line, now).0, 507, "again");
    nothing_lost(line, now);

    let pid = served.child.id().to_string();
    assert!(Command::new("prlimit").args(["--pid", &pid, "--fsize=unlimited:"]).status().unwrap().success());
    for seen in now..now + 30 {
        let (status, said) = edit(line, seen);
        assert_eq!(status, 303, "there is room again: {said}");
    }
    nothing_lost(line, now + 30);
    drop(served);
    kept(&data, now + 30);
}

/// A small disk of its own, where whoever runs the tests may mount one.
#[test]
fn a_full_disk_is_told_and_goes_on_once_there_is_room() {
    let own = ["unshare", "--user", "--map-root-user", "--mount"];
    let may = Command::new(own[0]).args(&own[1..]).args(["mount", "-t", "tmpfs", "none", "/mnt"]).output();
    if !may.is_ok_and(|tried| tried.status.success()) {
        println!("NOT TESTED: a disk of one megabyte; none may be mounted here");
        return;
    }
    let folder = Folder::new("full");
    let disk = folder.0.join("disk");
    std::fs::create_dir(&disk).unwrap();
    let script = format!("mount -t tmpfs -o size=1m none \"$2\"; {SERVE}");
    let shell = [&own[..], &["sh"]].concat();
    let served = Served::through(&shell, &script, &disk.join("octavo.db"), disk.to_str().unwrap());
    let line = served.line();
    assert_eq!(edit(line, 1).0, 303);
    // The disk as the served program sees it.
    let inside = PathBuf::from(format!("/proc/{}/root{}", served.child.id(), disk.display()));
    let filler = inside.join("filler");
    let mut file = std::fs::File::create(&filler).unwrap();
    while file.write(&[0; 4096]).is_ok_and(|some| some > 0) {}
    assert!(file.metadata().unwrap().len() > 10_000, "it was the filler that filled it");

    let mut now = 2;
    let (status, said) = loop {
        let (status, said) = edit(line, now);
        if status != 303 {
            break (status, said);
        }
        now += 1;
        assert!(now < MOST);
    };
    assert_eq!(status, 507, "{said}");
    assert!(said.contains("The disk is full. Make room, then do it again."), "{said}");
    nothing_lost(line, now);
    assert_eq!(line.get("/backup").0, 507, "a copy has no room either");
    nothing_lost(line, now);

    std::fs::remove_file(&filler).unwrap();
    drop(file);
    for seen in now..now + 10 {
        let (status, said) = edit(line, seen);
        assert_eq!(status, 303, "there is room again: {said}");
    }
    nothing_lost(line, now + 10);
    // What lies on that disk, while the program does nothing: it goes with the program.
    let copy = folder.0.join("copy.db");
    for ending in ["", "-wal"] {
        let from = inside.join(format!("octavo.db{ending}"));
        std::fs::copy(from, format!("{}{ending}", copy.display())).unwrap();
    }
    kept(&copy, now + 10);
}
