//! Source: `octavo why` the whole way, on the question of `job.md` section 10, story 1: 12 x 12 in into eight 3 x 4 1/2
//! and eight 3 x 1 1/2 tiles; with 3 1/16 it cannot.
#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/run.rs"]
mod run;

use std::fs;
use std::path::{Path, PathBuf};

use run::octavo;
use serde_json::Value;

/// A project file of this test's own; gone when dropped.
struct Scratch(PathBuf);

impl Scratch {
    fn new(name: &str, text: &str) -> Scratch {
        let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("why-{}-{name}.toml", std::process::id()));
        fs::write(&path, text).unwrap();
        Scratch(path)
    }

    fn named(&self) -> &str {
        self.0.to_str().unwrap()
    }
}

impl Drop for Scratch {
    fn drop(&mut self) {
        let _ = fs::remove_file(&self.0);
    }
}

/// Eight cards of a panel and a band from one sheet.
fn eight(sheet: &str, panel: &str, band: &str) -> String {
    format!(
        "name = \"Eight\"\n[[pack]]\nname = \"Spring\"\nsheet = \"{sheet}\"\n[[pack.design]]\nname = \"Meadow\"\n\
         [[cardstock]]\nname = \"Milk\"\ncolor = \"#f6f0e2\"\n[[recipe]]\nname = \"Twin\"\nformat = \"3 1/2 x 5\"\n\
         [[recipe.layer]]\nname = \"panel\"\nsize = \"{panel}\"\n[[recipe.layer]]\nname = \"band\"\nsize = \"{band}\"\n\
         at = \"bottom\"\ndown = \"-3/4\"\n[goal]\ncards_per_sheet = 8\n"
    )
}

#[test]
fn three_and_a_sixteenth_cannot_and_is_told_what_would() {
    let file = Scratch::new("story", &eight("12 x 12", "3 1/16 x 4 1/2", "3 x 1 1/2"));
    let (code, out, err) = octavo(&["why", file.named()]);
    assert_eq!((code, err.as_str()), (1, ""), "{out}");
    let lines: Vec<&str> = out.lines().collect();
    assert_eq!(lines[0], "The panel of Twin has no size on your marks of 1/8 in that fits its card.");
    assert_eq!(lines[1], "What would do, the smallest change of each sort:");
    assert_eq!(lines[2], "  1. let the panel of Twin be 1/16 in narrower, 3 in wide: nothing is left over");
    assert!(lines.contains(&"Letting pieces turn does not help, or their prints forbid it."), "{out}");
    assert!(!out.contains('⟨') && !out.contains("may do too"), "{out}");
}

#[test]
fn both_too_wide_need_both_narrower() {
    let text = eight("12 x 12", "3 1/16 x 4 1/2", "3 1/16 x 1 1/2").replace("[[pack]]", "mark = \"1/16\"\n[[pack]]");
    let file = Scratch::new("both", &text);
    let (code, out, _) = octavo(&["why", file.named()]);
    assert_eq!(code, 1);
    assert!(out.starts_with("The smallest pieces together are 103 % of a sheet of Spring.\n"), "{out}");
    let both = "  1. let the panel of Twin be 1/16 in narrower, 3 in wide, and let the band of Twin be 1/16 in narrower, \
                3 in wide: nothing is left over";
    assert!(out.lines().any(|line| line == both), "{out}");
}

#[test]
fn a_layout_that_wastes_is_told_what_leaves_nothing_over_and_one_that_does_not_needs_nothing() {
    let file = Scratch::new("waste", &eight("12 x 12", "3 x 4 3/8", "3 x 1 1/2"));
    let (code, out, _) = octavo(&["why", file.named()]);
    assert_eq!(code, 0);
    assert!(out.starts_with("Spring: the best layout leaves 3 % of the sheet over.\nTo leave nothing over"), "{out}");
    assert!(
        out.contains("  1. let the panel of Twin be 1/8 in higher, 4 1/2 in high: nothing is left over\n"),
        "{out}"
    );
    let (code, out, _) = octavo(&["why", "--demo"]);
    assert_eq!((code, out.lines().count()), (0, 1), "{out}");
    assert!(out.contains("uses the whole sheet"), "{out}");
}

#[test]
fn the_answer_as_json_has_the_pieces_of_each_layout() {
    let file = Scratch::new("json", &eight("12 x 12", "3 1/16 x 4 1/2", "3 x 1 1/2"));
    let (code, out, _) = octavo(&["why", file.named(), "--json"]);
    assert_eq!(code, 1);
    let packs: Value = serde_json::from_str(&out).unwrap();
    assert_eq!((&packs[0]["pack"], &packs[0]["found"]), (&Value::from("Spring"), &Value::from("none")));
    let way = &packs[0]["ways"][0];
    assert_eq!((&way["changes"][0]["code"], &way["smallest"]), (&Value::from("way-narrower"), &Value::from(true)));
    assert_eq!(&way["changes"][0]["facts"]["to"], "3 in");
    let pieces = way["pieces"].as_array().unwrap();
    assert_eq!(pieces.iter().filter(|piece| piece["layer"] == "panel" && piece["width"] == "3 in").count(), 8);
    assert_eq!(pieces.len(), 16);
}

#[test]
fn make_tells_the_ways_and_keeps_them_in_the_plan() {
    let file = Scratch::new("make", &eight("12 x 12", "3 1/16 x 4 1/2", "3 x 1 1/2"));
    let folder = file.0.with_extension("out");
    let (code, out, _) = octavo(&["make", file.named(), "--out", folder.to_str().unwrap()]);
    let plan: Value = serde_json::from_str(&fs::read_to_string(folder.join("plan.json")).unwrap()).unwrap();
    fs::remove_dir_all(&folder).unwrap();
    assert_eq!(code, 1);
    let way = "let the panel of Twin be 1/16 in narrower, 3 in wide: nothing is left over";
    assert!(out.contains(&format!("  would do: {way}\n")), "{out}");
    let findings = plan["findings"].as_array().unwrap();
    let finding = findings.iter().find(|finding| finding["code"] == "piece-not-on-mark").unwrap();
    assert_eq!(finding["ways"][0]["said"], way);
    assert_eq!(finding["ways"][0]["left_percent"], 0);
}
