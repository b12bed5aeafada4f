//! The chapter about the paper's colours: there where colours are known, left out where none are, in every edition whole
//! and tagged.
//!
//! Source: ISO 14289-1:2014 (PDF/UA-1) from memory, read back by `lopdf`; large print as in `editions.rs`.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;
#[allow(dead_code, reason = "other tests read more of the tags")]
#[path = "common/tags.rs"]
mod tags;

use cards::model::Side;
use cutting::Budget;
use drawing::sheets::{Colors, Edition, Faces, Hand, Nearest, Paper, Print, PrintColors, Reads, full_edition};
use drawing::{Color, markdown, pdf};
use measure::Unit;
use words::Language;

fn colors() -> Colors {
    let nearest = |kind, name: &str| Nearest { kind, name: name.into(), tenths: 42, near: "near-close" };
    let print = |design, side| PrintColors {
        face: (0, design, side),
        shares: (0..8).map(|at| (Color::hex(0x20_40_60 + at * 0x10_08_04), 300 - at * 25)).collect(),
        nearest: vec![nearest("page-colored-cardstock", "Pot Blue"), nearest("page-colored-ink", "With thanks")],
    };
    let prints = vec![print(0, Side::Front), print(0, Side::Back), print(1, Side::Front)];
    let reads = vec![Reads { words: "With thanks".into(), on: "Milk".into(), tenths: 97, how: "reads-well" }];
    Colors { prints, reads }
}

#[test]
fn every_edition_has_the_chapter_and_it_is_tagged() {
    let plan = cards::plan::plan(&drive::project(), &mut Budget::nodes(200_000));
    for (language, wanted) in [
        (
            Language::English,
            ["# The paper and its colours", "Nearest cardstock: Pot Blue, close (ΔE 4.2)", "does not show"],
        ),
        (
            Language::German,
            ["# Das Papier und seine Farben", "Nächster Tonkarton: „Pot Blue“, nah (ΔE 4,2)", "nicht zu sehen"],
        ),
    ] {
        for print in [Print::Normal, Print::Large] {
            let edition = Edition { paper: Paper::A4, print, hand: Hand::Left, unit: Unit::Inch, language };
            let scenes = full_edition(&plan, &Faces::new(), &colors(), &edition);
            let about = pdf::About { language, title: "Thanks".into(), ..pdf::About::default() };
            let bytes = pdf::write(&scenes, &about).unwrap();
            let document = lopdf::Document::load_mem(&bytes).unwrap();
            assert_eq!(tags::Read::new(&document).faults(), [], "{language:?} {print:?}");
            let text =
                markdown::plain_text(&scenes).replace('\u{a0}', " ").split_whitespace().collect::<Vec<_>>().join(" ");
            for words in wanted {
                // Titles of chapters are set in capitals.
                assert!(
                    text.to_uppercase().contains(&words.trim_start_matches("# ").to_uppercase()),
                    "{words}: {text}"
                );
            }
            // Only the second design has a side that does not show.
            assert_eq!(text.matches(wanted[2]).count(), 1, "{language:?}");
        }
    }
}

#[test]
fn a_second_face_on_a_page_of_its_own_says_whose_it_is() {
    let plan = cards::plan::plan(&drive::project(), &mut Budget::nodes(200_000));
    let design = &plan.project.packs[0].designs[0];
    let heading = format!("{} · {}", design.letter, design.name);
    let mut apart = 0;
    for (paper, print) in [(Paper::A4, Print::Normal), (Paper::A4, Print::Large), (Paper::Letter, Print::Large)] {
        let edition = Edition { paper, print, hand: Hand::Right, unit: Unit::Inch, language: Language::English };
        for scene in full_edition(&plan, &Faces::new(), &colors(), &edition) {
            let text = markdown::plain_text(std::slice::from_ref(&scene)).replace('\u{a0}', " ");
            if text.contains(&format!("Back: {}", design.back.name)) {
                assert!(text.contains(&heading), "{text}");
                apart += usize::from(text.contains(&format!("{heading} (continued)")));
            }
        }
    }
    assert!(apart > 0, "some edition parts the two faces, or this shows nothing");
}

#[test]
fn without_colors_there_is_no_chapter() {
    let plan = cards::plan::plan(&drive::project(), &mut Budget::nodes(200_000));
    let edition = Edition::plain(&plan, Paper::Letter);
    let scenes = full_edition(&plan, &Faces::new(), &Colors::default(), &edition);
    let text = markdown::plain_text(&scenes).to_uppercase();
    assert!(!text.contains("THE PAPER AND ITS COLOURS") && text.contains("STEP BY STEP"));
}
