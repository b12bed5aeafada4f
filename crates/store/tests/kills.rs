//! A program that is killed in the middle of its edits loses none that it has answered.
//!
//! The test runs itself again as the program that edits (with `OCTAVO_KILL_FILE` set), reads each answer, and kills
//! it (`SIGKILL`) at some moment. `OCTAVO_KILL_EDITS=1000 cargo test -p store --test kills` does a thousand edits;
//! left out, fifty.
#![allow(clippy::unwrap_used, clippy::print_stdout, reason = "a test that tells what it counted")]

use std::io::{BufRead, BufReader, Write as _};
use std::path::Path;
use std::process::{Command, Stdio};

use store::projects::{ProjectId, Projects};

const FILE: &str = "OCTAVO_KILL_FILE";

/// The editing program: edits for ever, and says each one once it is kept. Does nothing in an ordinary run.
#[test]
fn editor() {
    let Ok(file) = std::env::var(FILE) else { return };
    let mut store = Projects::open(Path::new(&file)).unwrap();
    let id = ProjectId(1);
    let mut out = std::io::stdout();
    loop {
        let seen = store.get(id).unwrap().unwrap().now.number;
        let made = store.save(id, seen, &format!("text {}", seen + 1), "edit", seen).unwrap();
        writeln!(out, "\nkept {}", made.number).unwrap();
        out.flush().unwrap();
    }
}

#[test]
fn answered_edits_survive_kills() {
    let wanted: i64 = std::env::var("OCTAVO_KILL_EDITS").ok().and_then(|text| text.parse().ok()).unwrap_or(50);
    let folder = std::env::temp_dir().join(format!("octavo-kills-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap();
    let file = folder.join("octavo.db");
    let _ = std::fs::remove_file(&file);
    Projects::open(&file).unwrap().add("text 1", "begun", 0).unwrap();

    let (mut answered, mut kills, mut seed) = (1_i64, 0_u32, 0x2545_f491_u32);
    while answered < wanted {
        let mut editor = Command::new(std::env::current_exe().unwrap())
            .args(["--exact", "editor", "--nocapture"])
            .env(FILE, &file)
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        // A different number of answers each time, then a kill while the next edit is under way.
        seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        let answers = seed >> 28;
        let mut lines = BufReader::new(editor.stdout.take().unwrap()).lines();
        let mut heard = 0;
        while heard < answers.max(1) {
            let line = lines.next().unwrap().unwrap();
            if let Some(number) = line.strip_prefix("kept ") {
                answered = number.parse().unwrap();
                heard += 1;
            }
        }
        for _ in 0..(seed >> 8) % 40_000 {
            std::hint::spin_loop();
        }
        editor.kill().unwrap();
        editor.wait().unwrap();
        kills += 1;
        // What it said before it died, but had not been read yet, was answered too.
        for line in lines.map_while(Result::ok) {
            if let Some(number) = line.strip_prefix("kept ").and_then(|number| number.parse().ok()) {
                answered = number;
            }
        }
        let store = Projects::open(&file).unwrap();
        let now = store.get(ProjectId(1)).unwrap().unwrap().now;
        assert!(now.number >= answered, "answered {answered}, kept {}", now.number);
        assert_eq!(now.text, format!("text {}", now.number));
        assert_eq!(store.history(ProjectId(1), u32::MAX).unwrap().len(), usize::try_from(now.number).unwrap());
    }
    assert!(kills > 1, "the editor was killed {kills} times");
    println!("{answered} answered edits, {kills} kills, 0 lost");
    std::fs::remove_dir_all(&folder).unwrap();
}
