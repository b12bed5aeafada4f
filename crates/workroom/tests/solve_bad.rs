//! Bad and huge questions through the program itself: a clear refusal, a graded answer or a reason, never a panic, never
//! an endless run.
//!
//! Source: cases made up for this test; every expected number is worked out beside it.
#![allow(clippy::unwrap_used, reason = "tests")]

use std::process::Command;

use serde_json::{Value, json};

struct Ended {
    code: i32,
    answer: Option<Value>,
    said: String,
}

/// Ask the program; one that does not end does not end this test either.
fn ask(name: &str, question: &str) -> Ended {
    let file = std::env::temp_dir().join(format!("octavo-bad-{}-{name}.json", std::process::id()));
    std::fs::write(&file, question).unwrap();
    let ended = Command::new(env!("CARGO_BIN_EXE_octavo"))
        .args(["solve", file.to_str().unwrap(), "--json", "--nodes", "2000000"])
        .output()
        .unwrap();
    std::fs::remove_file(file).unwrap();
    let said = String::from_utf8(ended.stderr).unwrap();
    assert!(!said.contains("panicked"), "{name}: {said}");
    let code = ended.status.code().unwrap_or_else(|| panic!("{name}: ended by a signal: {said}"));
    Ended { code, answer: serde_json::from_slice(&ended.stdout).ok(), said }
}

fn sheet() -> Value {
    json!({"w": 192, "h": 192})
}

fn piece() -> Value {
    json!({"w": 64, "h": 84, "demand": 10, "rotate": true, "value": 5})
}

/// A piece with some fields of other values.
fn with(change: &Value) -> Value {
    let mut piece = piece();
    piece.as_object_mut().unwrap().extend(change.as_object().unwrap().clone());
    piece
}

fn question(kind: &str, sheet: &Value, pieces: &[Value]) -> String {
    json!({"format": "cutbench-1", "kind": kind, "sheets": [sheet], "pieces": pieces}).to_string()
}

#[test]
fn what_cannot_be_read_is_refused_with_what_is_wrong() {
    let good = question("stock", &sheet(), &[piece()]);
    let width = |text: &str| good.replacen("\"w\":64", &format!("\"w\":{text}"), 1);
    assert_ne!(width("1"), good);
    let cases = [
        ("negative", width("-3"), "-3"),
        ("fraction", width("3.5"), "3.5"),
        ("not-a-number", width("NaN"), "line 1"),
        ("not-a-number-in-words", width("\"NaN\""), "NaN"),
        ("infinite", width("1e999"), "out of range"),
        ("null", width("null"), "null"),
        ("too-long", width("4294967296"), "4294967296"),
        ("demand-too-large", question("stock", &sheet(), &[with(&json!({"demand": 4_294_967_296_u64}))]), "4294967296"),
        ("negative-demand", question("stock", &sheet(), &[with(&json!({"demand": -1}))]), "-1"),
        ("no-demand", question("stock", &sheet(), &[with(&json!({"demand": null}))]), "demand"),
        ("no-piece", question("stock", &sheet(), &[]), "piece"),
        ("flat", question("stock", &sheet(), &[with(&json!({"h": 0}))]), "side of 0"),
        ("dear", question("stock", &json!({"w": 9, "h": 9, "cost": u64::MAX}), &[piece()]), "too large"),
        ("precious", question("knapsack", &sheet(), &[with(&json!({"value": u64::MAX}))]), "too large"),
        ("min-above", question("knapsack", &sheet(), &[with(&json!({"min": 11}))]), "minimum"),
        ("all-edge", question("stock", &json!({"w": 9, "h": 9, "edges": {"left": 9}}), &[piece()]), "edges"),
        (
            "edge-overflows",
            question("stock", &json!({"w": 9, "h": 9, "edges": {"left": u32::MAX, "right": u32::MAX}}), &[piece()]),
            "edges",
        ),
        (
            "confetti",
            question("knapsack", &sheet(), &[with(&json!({"w": 1, "h": 1, "demand": null}))]).replace("192", "1920"),
            "pieces could be cut",
        ),
        (
            "specks",
            question("knapsack", &sheet(), &[with(&json!({"w": 1, "h": 1, "demand": null, "value": 0}))])
                .replace("192", "4294967295"),
            "pieces could be cut",
        ),
        ("stages", good.replacen('{', "{\"rules\":{\"stages\":1},", 1), "between 2 and"),
        ("nested", "[".repeat(100_000), "recursion"),
        ("empty", String::new(), "empty"),
    ];
    for (name, text, named) in cases {
        let ended = ask(name, &text);
        assert_eq!(ended.code, 2, "{name}: {}", ended.said);
        assert!(ended.answer.is_none() && ended.said.contains(named), "{name}: {}", ended.said);
    }
}

#[test]
fn what_cannot_be_cut_is_graded_impossible_with_the_reason() {
    let cases = [
        (
            "larger-than-any-sheet",
            question("stock", &sheet(), &[piece(), with(&json!({"w": 193, "h": 193}))]),
            "larger than every sheet",
        ),
        (
            "longer-turned-or-not",
            question("stock", &json!({"w": 300, "h": 50}), &[with(&json!({"w": 60, "h": 60}))]),
            "larger than every sheet",
        ),
        (
            "larger-inside-the-edges",
            question("stock", &json!({"w": 100, "h": 100, "edges": {"left": 20}}), &[with(&json!({"w": 84, "h": 84}))]),
            "larger than every sheet",
        ),
        ("none-there", question("stock", &json!({"w": 192, "h": 192, "copies": 0}), &[piece()]), "sheets"),
        ("too-few", question("stock", &json!({"w": 192, "h": 192, "copies": 1}), &[piece()]), "square units"),
        // Four of 5 x 7 would do by area on 12 x 12, but straight cuts give three.
        (
            "pinwheel",
            question("stock", &json!({"w": 12, "h": 12, "copies": 1}), &[with(&json!({"w": 5, "h": 7, "demand": 4}))]),
            "sheets",
        ),
        ("must-appear", question("knapsack", &sheet(), &[with(&json!({"min": 9}))]), "must appear"),
    ];
    for (name, text, named) in cases {
        let ended = ask(name, &text);
        let answer = ended.answer.unwrap_or_else(|| panic!("{name}: {}", ended.said));
        assert_eq!((ended.code, answer["grade"].as_str()), (1, Some("impossible")), "{name}: {answer}");
        assert!(answer["why"].as_str().unwrap().contains(named), "{name}: {answer}");
        assert_eq!(answer["trees"], json!([]), "{name}");
    }
}

#[test]
fn huge_and_odd_questions_are_answered() {
    let large = json!({"w": u32::MAX, "h": u32::MAX});
    let cases = [
        ("zero-demand", question("stock", &sheet(), &[with(&json!({"demand": 0}))]), 0),
        // Three columns of two: six from a sheet.
        ("million", question("stock", &sheet(), &[with(&json!({"demand": 1_000_000}))]), 166_667),
        (
            "one-each",
            question("stock", &sheet(), &[with(&json!({"w": 190, "h": 190, "demand": 1_000_000}))]),
            1_000_000,
        ),
        ("as-many-as-can-be-written", question("stock", &sheet(), &[with(&json!({"demand": u32::MAX}))]), 715_827_883),
        ("as-large-as-can-be-written", question("stock", &large, &[with(&json!({"w": u32::MAX, "h": u32::MAX}))]), 10),
        // Two halves do not fit beside each other: 2^31 twice is one more than there is.
        ("halves", question("stock", &large, &[with(&json!({"w": 1_u32 << 31, "h": 1_u32 << 31, "demand": 9}))]), 9),
        ("deep", question("stock", &json!({"w": 3990, "h": 1}), &[with(&json!({"w": 1, "h": 1, "demand": 3990}))]), 1),
    ];
    for (name, text, sheets) in cases {
        let ended = ask(name, &text);
        assert_eq!(ended.code, 0, "{name}: {}", ended.said);
        if name == "deep" {
            // The answer is nested deeper than this reader goes; that it was written whole is all that is asked.
            continue;
        }
        let answer = ended.answer.unwrap_or_else(|| panic!("{name}: {}", ended.said));
        assert_eq!(answer["grade"], "proven best", "{name}");
        assert_eq!(answer["sheets"], json!(sheets), "{name}");
        let times = |tree: &Value| tree.get("times").map_or(1, |times| times.as_u64().unwrap());
        let trees = answer["trees"].as_array().unwrap();
        assert_eq!(trees.iter().map(times).sum::<u64>(), sheets, "{name}");
        assert!(sheets <= 10_000 || trees.len() < 100, "{name}: equal sheets are told once");
    }
}
