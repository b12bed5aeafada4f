//! Colours of a project's prints, what goes with them, and whether its greeting can be read.
//!
//! Source: WCAG 2.2, relative luminance and contrast ratio, worked out here anew from the colours as they are written; the
//! drawn prints are made of the demo's own colours (`../shared/job.md`, section 12), so that each cardstock of a print's colour must match it.
#![allow(clippy::unwrap_used, reason = "tests")]

use std::path::Path;
use std::process::Command;

use serde_json::Value;

fn told(args: &[&str]) -> (String, String) {
    let out = Command::new(env!("CARGO_BIN_EXE_octavo")).args(args).output().unwrap();
    assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stderr));
    (String::from_utf8(out.stdout).unwrap(), String::from_utf8(out.stderr).unwrap())
}

fn project() -> String {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/kettle-and-quince.toml");
    file.display().to_string()
}

/// WCAG 2.2's relative luminance of `#rrggbb`.
fn luminance(hex: &str) -> f64 {
    let part = |at: usize| {
        let value = f64::from(u8::from_str_radix(&hex[at..at + 2], 16).unwrap()) / 255.0;
        if value <= 0.04045 { value / 12.92 } else { ((value + 0.055) / 1.055).powf(2.4) }
    };
    0.2126 * part(1) + 0.7152 * part(3) + 0.0722 * part(5)
}

#[test]
fn every_print_says_what_goes_with_it() {
    let (out, err) = told(&["colors", &project(), "--json"]);
    let told: Value = serde_json::from_str(&out).unwrap();
    assert!(err.is_empty(), "{err}");
    let prints = told["prints"].as_array().unwrap();
    assert_eq!(prints.len(), 6);
    for print in prints {
        let shares: f64 = print["colors"].as_array().unwrap().iter().map(|of| of["share"].as_f64().unwrap()).sum();
        assert!((shares - 1.0).abs() < 1e-9, "{shares}");
        // What is nearest in the print is one of its colours.
        let colors: Vec<&Value> = print["colors"].as_array().unwrap().iter().map(|of| &of["color"]).collect();
        let beside = print["beside"].as_array().unwrap();
        assert!(beside.len() >= 5 && beside.iter().all(|of| colors.contains(&&of["nearest"])));
        // The strip of every card is Milk: it lies beside every print.
        assert!(beside.iter().any(|of| of["name"] == "Milk" && of["cards"] == 16), "{print}");
    }
    let of = |design: &str, name: &str| {
        let print = prints.iter().find(|print| print["design"] == design).unwrap();
        print["beside"].as_array().unwrap().iter().find(|of| of["name"] == name).unwrap().clone()
    };
    for (design, name) in [("B", "Pot Blue"), ("C", "Brick"), ("E", "Hedge")] {
        let held = of(design, name);
        assert!(held["delta_e"].as_f64().unwrap() < 5.0 && held["pairing"] == "match", "{design} {held}");
    }
    assert!(of("C", "Pot Blue")["delta_e"].as_f64().unwrap() > 20.0);
}

#[test]
fn the_greeting_reads_on_its_strip_as_the_standard_says() {
    let (out, _) = told(&["colors", &project(), "--json"]);
    let told: Value = serde_json::from_str(&out).unwrap();
    let greeting = &told["greetings"][0];
    let file = std::fs::read_to_string(project()).unwrap();
    let parsed: toml::Table = file.parse().unwrap();
    let ink = parsed["greeting"][0]["ink"].as_str().unwrap();
    let milk = parsed["cardstock"].as_array().unwrap().iter().find(|of| of["name"].as_str() == Some("Milk")).unwrap();
    let paper = milk["color"].as_str().unwrap();
    // A transparent ink takes light away from the paper's: darker than the ink itself, so never less contrast.
    let least = (luminance(paper) + 0.05) / (luminance(ink) + 0.05);
    let contrast = greeting["contrast"].as_f64().unwrap();
    assert!(contrast >= least && contrast < least * 1.5, "{contrast} {least}");
}

#[test]
fn it_is_told_in_words_too() {
    let (out, err) = told(&["colors", &project()]);
    assert!(out.contains("C · Tea Dot, front") && out.contains("Brick: nearest #"), "{out}");
    assert!(out.contains("easy to read") && err.contains("daylight"), "{out} {err}");
    let (out, _) = told(&["colors", &project(), "--language", "de"]);
    assert!(out.contains("Vorderseite") && out.contains("gut zu lesen"), "{out}");
}
