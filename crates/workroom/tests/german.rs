//! The whole demo in German: no message is missing, no English is left over, measures are written the German way.

#![allow(clippy::unwrap_used, reason = "tests")]

use std::fs;

/// The demo's own names, which stay as its maker gave them.
const THEIRS: [&str; 5] =
    ["Twin with a bow", "with thanks", "A thank-you card drive for a village library", "Recipe Cards", "recipe cards"];

#[test]
fn the_handout_of_the_demo_is_german_throughout() {
    let folder = std::env::temp_dir().join(format!("octavo-german-{}", std::process::id()));
    let args = ["octavo", "--language", "de", "make", "--demo", "--out", folder.to_str().unwrap()];
    let (mut out, mut err) = (Vec::new(), Vec::new());
    let code = workroom::cli::run(args.map(Into::into), &mut out, &mut err);
    let said = String::from_utf8(out).unwrap();
    let err = String::from_utf8(err).unwrap();
    // A slow machine is told how far a long search is.
    assert!(code == 0 && err.lines().all(|line| line.contains("Knoten")), "{code}: {err}");
    assert!(said.starts_with("192 Karten aus 24 Bögen"), "{said}");
    let mut text = fs::read_to_string(folder.join("handout.md")).unwrap();
    let pdf = fs::read(folder.join("handout.pdf")).unwrap();
    fs::remove_dir_all(&folder).unwrap();
    assert!(pdf.windows(5).any(|found| found == b"de-DE"), "the PDF says its language");
    assert!(text.contains("Zoll") && text.contains("14,40"), "{text}");
    assert!(!text.contains('⟨'), "no message is missing");
    // Some spaces may not be broken at.
    text = text.replace('\u{a0}', " ");
    for name in THEIRS {
        text = text.replace(name, "");
    }
    let english =
        ["the", "and", "with", "sheets", "cards", "each", "from", "cut", "glue", "tape", "foam", "envelopes", "stamps"];
    let words = text.split(|sign: char| !sign.is_alphanumeric());
    let left: Vec<&str> = words.filter(|word| english.contains(&word.to_lowercase().as_str())).collect();
    assert!(left.is_empty(), "English in the German handout: {left:?}");
}

#[test]
fn a_language_that_is_not_spoken_is_refused() {
    let (mut out, mut err) = (Vec::new(), Vec::new());
    let code = workroom::cli::run(["octavo", "why", "--demo", "--language", "fr"].map(Into::into), &mut out, &mut err);
    let told = String::from_utf8(err).unwrap();
    assert_eq!(code, 2);
    assert!(told.contains("`fr`"), "{told}");
}
