//! What is kept stays kept: revisions, undo across restarts, stale saves, ticks, pictures, backups, and files that
//! are not ours. Kills are in `kills.rs`.
#![allow(clippy::unwrap_used, reason = "tests")]

use std::path::PathBuf;

use rusqlite::Connection;
use store::projects::{OpenError, ProjectId, Projects, RestoreError, SaveError, StoreError};

/// An empty folder of this test's own.
fn folder(name: &str) -> PathBuf {
    let folder = std::env::temp_dir().join(format!("octavo-store-{name}-{}", std::process::id()));
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

#[test]
fn undo_and_redo_work_across_restarts() {
    let file = folder("undo").join("octavo.db");
    let mut store = Projects::open(&file).unwrap();
    let id = store.add("one", "begun", 10).unwrap();
    assert_eq!(store.save(id, 1, "two", "second", 11).unwrap().number, 2);
    assert_eq!(store.save(id, 2, "three", "third", 12).unwrap().number, 3);
    assert_eq!(store.undo(id, 3).unwrap().unwrap().text, "two");
    drop(store);

    let mut store = Projects::open(&file).unwrap();
    let kept = store.get(id).unwrap().unwrap();
    assert_eq!((kept.now.text.as_str(), kept.now.what.as_str(), kept.next), ("two", "second", Some(3)));
    assert_eq!(store.redo(id, 2).unwrap().unwrap().text, "three");
    assert_eq!(store.redo(id, 3).unwrap(), None);
    // A new edit after an undo: the old one is no longer next, but still kept.
    store.undo(id, 3).unwrap();
    assert_eq!(store.save(id, 2, "four", "fourth", 13).unwrap().number, 4);
    assert_eq!(store.undo(id, 4).unwrap().unwrap().text, "two");
    assert_eq!(store.redo(id, 2).unwrap().unwrap().text, "four");
    assert_eq!(store.revision(id, 3).unwrap().unwrap().text, "three");
    assert_eq!(store.undo(id, 4).unwrap().unwrap().number, 2);
    assert_eq!(store.undo(id, 2).unwrap().unwrap().number, 1);
    assert_eq!(store.undo(id, 1).unwrap(), None);
    assert_eq!(store.history(id, 9).unwrap().len(), 4);
}

#[test]
fn a_stale_save_is_refused_with_what_changed() {
    let mut store = Projects::in_memory().unwrap();
    let id = store.add("one", "begun", 1).unwrap();
    store.save(id, 1, "hers", "panel wider", 2).unwrap();
    let Err(SaveError::Stale { now, since }) = store.save(id, 1, "mine", "band lower", 3) else { panic!("saved") };
    assert_eq!((now.number, now.text.as_str()), (2, "hers"));
    assert_eq!(since.iter().map(|made| made.what.as_str()).collect::<Vec<_>>(), ["panel wider"]);
    assert_eq!(store.get(id).unwrap().unwrap().now.text, "hers");
    assert_eq!(store.history(id, 9).unwrap().len(), 2);
    assert_eq!(store.save(ProjectId(99), 1, "", "", 1), Err(SaveError::NoProject(ProjectId(99))));
}

#[test]
fn what_was_undone_is_not_told_as_a_change() {
    let mut store = Projects::in_memory().unwrap();
    let id = store.add("one", "begun", 1).unwrap();
    store.save(id, 1, "three", "to three", 2).unwrap();
    store.undo(id, 2).unwrap();
    store.save(id, 1, "two", "to two", 3).unwrap();
    let stale = |saved| match saved {
        Err(SaveError::Stale { since, .. }) => since.into_iter().map(|made| made.what).collect::<Vec<_>>(),
        other => panic!("{other:?}"),
    };
    assert_eq!(stale(store.save(id, 1, "mine", "to mine", 4)), ["to two"]);
    // Seen from the branch that was left, only what is open now differs; after an undo nothing was added.
    assert_eq!(stale(store.save(id, 2, "mine", "to mine", 4)), ["to two"]);
    store.undo(id, 3).unwrap();
    assert!(stale(store.save(id, 3, "mine", "to mine", 4)).is_empty());
}

#[test]
fn put_away_and_taken_back() {
    let mut store = Projects::in_memory().unwrap();
    let (one, two) = (store.add("a", "", 1).unwrap(), store.add("b", "", 2).unwrap());
    store.put_away(one, 5).unwrap();
    let all = store.all().unwrap();
    assert_eq!(all.iter().map(|kept| (kept.id, kept.put_away)).collect::<Vec<_>>(), [(two, None), (one, Some(5))]);
    store.take_back(one).unwrap();
    assert_eq!(store.get(one).unwrap().unwrap().put_away, None);
}

#[test]
fn ticks_and_pictures_are_kept() {
    let mut store = Projects::in_memory().unwrap();
    let id = store.add("a", "", 1).unwrap();
    store.tick(id, "cut 1", Some(4)).unwrap();
    store.tick(id, "cut 2", Some(5)).unwrap();
    store.tick(id, "cut 1", None).unwrap();
    assert_eq!(store.ticks(id).unwrap().into_iter().collect::<Vec<_>>(), ["cut 2"]);
    // FIPS 180-2, appendix B.1: SHA-256 of "abc".
    let hash = store.keep_picture(id, "leaf.png", b"abc").unwrap();
    assert_eq!(hash, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    assert_eq!(store.picture(id, "leaf.png").unwrap().unwrap(), b"abc");
    assert_eq!(store.picture(id, "../leaf.png").unwrap(), None);
    // Of a name that others have: one's own first, then the first of theirs.
    let [second, third] = ["b", "c"].map(|text| store.add(text, "", 2).unwrap());
    store.keep_picture(second, "leaf.png", b"abd").unwrap();
    for (of, wanted) in [(id, "abc"), (second, "abd"), (third, "abc")] {
        assert_eq!(store.picture_or_others(of, "leaf.png").unwrap().unwrap(), wanted.as_bytes());
    }
    assert_eq!(store.picture(third, "leaf.png").unwrap(), None);
    assert_eq!(store.picture_or_others(third, "stem.png").unwrap(), None);
}

#[test]
fn a_backup_comes_back_the_same() {
    let folder = folder("backup");
    let mut store = Projects::open(&folder.join("octavo.db")).unwrap();
    let id = store.add("one", "begun", 1).unwrap();
    store.save(id, 1, "two", "second", 2).unwrap();
    store.keep_picture(id, "p", b"pixels").unwrap();
    store.tick(id, "cut", Some(3)).unwrap();
    let scratch = folder.join("scratch");
    let bytes = store.backup_bytes(&scratch).unwrap();
    assert!(!scratch.exists());
    let before = (store.all().unwrap(), store.history(id, 9).unwrap(), store.ticks(id).unwrap());

    store.save(id, 2, "three", "third", 4).unwrap();
    store.add("another", "", 5).unwrap();
    store.restore(&bytes, &scratch).unwrap();
    assert_eq!((store.all().unwrap(), store.history(id, 9).unwrap(), store.ticks(id).unwrap()), before);
    assert_eq!(store.picture(id, "p").unwrap().unwrap(), b"pixels");

    // Half a backup, and something else altogether: refused, nothing changes.
    // Nor nothing at all, nor an empty database of nobody's, which opening would take for a new one.
    let plain = folder.join("empty.db");
    let nobody = Connection::open(&plain).unwrap();
    nobody.execute_batch("CREATE TABLE hens (name TEXT); DROP TABLE hens").unwrap();
    drop(nobody);
    let empty = std::fs::read(plain).unwrap();
    assert!(empty.len() > 100);
    let letter = b"a letter, not a backup, and quite long enough to be one".as_slice();
    for bad in [&bytes[..bytes.len() / 2], letter, b"x", b"", b"SQLite format 3\0", &empty] {
        assert!(matches!(store.restore(bad, &scratch), Err(RestoreError::Backup(_))));
        assert_eq!(store.all().unwrap(), before.0);
    }
    assert!(!scratch.exists());
    store.save(id, 2, "goes on", "", 9).unwrap();
}

#[test]
fn a_file_that_is_not_ours_is_left_as_it_was() {
    let folder = folder("theirs");
    let refused = |name: &str| {
        let file = folder.join(name);
        let before = std::fs::read(&file).unwrap();
        let error = Projects::open(&file).unwrap_err();
        assert_eq!(std::fs::read(&file).unwrap(), before, "{name}");
        error
    };
    std::fs::write(folder.join("letter"), "Dear aunt, ".repeat(200)).unwrap();
    assert_eq!(refused("letter"), OpenError::NotADatabase);

    let other = Connection::open(folder.join("other")).unwrap();
    other.execute_batch("CREATE TABLE hens (name TEXT)").unwrap();
    drop(other);
    assert_eq!(refused("other"), OpenError::Theirs);

    drop(Projects::open(&folder.join("newer")).unwrap());
    let newer = Connection::open(folder.join("newer")).unwrap();
    newer.pragma_update(None, "user_version", Projects::VERSION + 1).unwrap();
    drop(newer);
    assert_eq!(refused("newer"), OpenError::Newer { found: Projects::VERSION + 1, known: Projects::VERSION });

    assert!(matches!(Projects::open(&folder.join("no such folder/x")), Err(OpenError::Store(_))));
}

#[test]
fn a_second_program_is_told_that_the_file_is_open() {
    let file = folder("second").join("octavo.db");
    let first = Projects::open(&file).unwrap();
    assert_eq!(Projects::open(&file).unwrap_err(), OpenError::Store(StoreError::InUse));
    drop(first);
    Projects::open(&file).unwrap();
}

#[test]
fn every_earlier_version_opens() {
    // The file as the first version began it.
    let file = folder("versions").join("v1.db");
    let old = Connection::open(&file).unwrap();
    old.execute_batch(include_str!("../schema/0001_projects.sql")).unwrap();
    old.pragma_update(None, "user_version", 1).unwrap();
    old.pragma_update(None, "application_id", 0x4f63_7476).unwrap();
    old.execute_batch(
        "INSERT INTO project (head) VALUES (1); INSERT INTO revision VALUES (1, 1, NULL, 'text', 'begun', 7)",
    )
    .unwrap();
    drop(old);
    let store = Projects::open(&file).unwrap();
    assert_eq!(store.all().unwrap()[0].now.text, "text");
}

#[test]
fn spoiled_pieces_stay_until_the_last_is_taken_back() {
    let file = folder("spoiled").join("s.db");
    let mut store = Projects::open(&file).unwrap();
    let id = store.add("text", "begun", 1).unwrap();
    let other = store.add("text", "begun", 1).unwrap();
    store.spoil(id, "one", 2).unwrap();
    store.spoil(id, "two", 3).unwrap();
    store.spoil(other, "theirs", 4).unwrap();
    drop(store);
    let mut store = Projects::open(&file).unwrap();
    let named = |store: &Projects| -> Vec<String> {
        store.spoiled(id).unwrap().into_iter().map(|spoiled| spoiled.piece).collect()
    };
    assert_eq!(named(&store), ["one", "two"]);
    let all = store.spoiled(id).unwrap();
    store.unspoil(id, all[0].id).unwrap();
    assert_eq!(named(&store), ["two"]);
    store.unspoil(other, all[1].id).unwrap();
    assert_eq!(named(&store), ["two"], "of another project");
    assert_eq!(store.spoiled(other).unwrap().len(), 1);
}
