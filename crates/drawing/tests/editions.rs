//! What other editions promise: large print large, the left hand's stop at the other side and the same pieces, another
//! unit honest about rounding.
//!
//! Source: the large-print figures (18 pt, left aligned, no italics, 1.25 to 1.5 spacing, 1 in margins, lines of at
//! most 6 in) are common practice of large-print publishers. That a part turned half round shows the stop its other
//! end is checked by turning rectangles here, without the code under test.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

#[path = "common/boxes.rs"]
mod boxes;
#[path = "common/drive.rs"]
mod drive;

use std::sync::LazyLock;

use cards::Plan;
use cutting::Budget;
use drawing::sheets::{Edition, Faces, Hand, Paper, Print, edition};
use drawing::text::{Face, Line};
use drawing::{Mark, Scene};
use measure::{Length, Unit};

static PLAN: LazyLock<Plan> = LazyLock::new(|| cards::plan::plan(&drive::project(), &mut Budget::nodes(200_000)));
static CROWDED: LazyLock<Plan> = LazyLock::new(|| cards::plan::plan(&drive::crowded(), &mut Budget::nodes(200_000)));

fn of(print: Print, hand: Hand, unit: Unit) -> Edition {
    Edition { paper: Paper::Letter, print, hand, unit, language: words::Language::English }
}

fn lines(marks: &[Mark]) -> Vec<Line> {
    marks
        .iter()
        .flat_map(|mark| match mark {
            Mark::Text { line, .. } => vec![line.clone()],
            Mark::Group { marks, .. } => lines(marks),
            _ => Vec::new(),
        })
        .collect()
}

fn said(pages: &[Scene]) -> String {
    let words = pages.iter().flat_map(|page| lines(&page.marks)).map(|line| line.text.replace('\u{a0}', " "));
    words.collect::<Vec<_>>().join(" ")
}

#[test]
fn large_print_is_large_upright_and_not_wide() {
    for plan in [&*PLAN, &*CROWDED] {
        for paper in [Paper::Letter, Paper::A4] {
            let asked = Edition { paper, ..of(Print::Large, Hand::Right, Unit::Inch) };
            for page in edition(plan, &Faces::new(), &asked) {
                for line in lines(&page.marks) {
                    assert!(line.style.size >= Length::POINT * 18, "`{}`", line.text);
                    assert_ne!(line.style.face, Face::Italic, "`{}`", line.text);
                    assert!(line.width <= Length::INCH * 6, "`{}` is longer than 6 in", line.text);
                    assert!(!line.text.contains('…'), "`{}` is cut off", line.text);
                    let spacing = line.style.leading().to_points() / line.style.size.to_points();
                    assert!((1.25..=1.5).contains(&spacing));
                }
                for (text, rect) in boxes::boxes(&page) {
                    assert!(rect.x >= Length::INCH - Length::POINT * 4, "`{text}` is in the left margin");
                    assert!(
                        rect.right() <= page.size.width - Length::INCH + Length::POINT * 4,
                        "`{text}` is in the right margin"
                    );
                }
            }
        }
    }
}

#[test]
fn large_print_says_fractions_in_words() {
    let text = said(&edition(&PLAN, &Faces::new(), &of(Print::Large, Hand::Right, Unit::Inch)));
    assert!(text.contains("three by four and one half"), "the panel");
    assert!(text.contains("4½ in (four and one half)"), "a setting");
    let normal = said(&edition(&PLAN, &Faces::new(), &of(Print::Normal, Hand::Right, Unit::Inch)));
    assert!(!normal.contains("one half"));
}

#[test]
fn in_the_other_unit_what_is_not_exact_says_about() {
    let text = said(&edition(&PLAN, &Faces::new(), &of(Print::Normal, Hand::Right, Unit::Millimetre)));
    assert!(text.contains("about 76 × 114.5 mm"), "a panel of 3 × 4 1/2 in is 76.2 × 114.3 mm");
    assert!(text.contains("127 mm"), "5 in are 127 mm exactly");
    assert!(!text.contains("about 127 mm"));
    assert!(!text.contains(" in (") && !text.contains("½"));
}

#[test]
fn the_left_hand_gets_the_same_pieces_with_the_stop_at_the_other_side() {
    use cutting::steps::{End, PartId, Turn, Up};
    // Where a part's edge points (0 away, 1 right, 2 toward, 3 left) when it lies upright, and after quarter turns.
    let points = |axis: cutting::Axis, end: End, quarters: u8| {
        let upright = match (axis, end) {
            (cutting::Axis::X, End::Near) => 3,
            (cutting::Axis::X, End::Far) => 1,
            (cutting::Axis::Y, End::Near) => 0,
            (cutting::Axis::Y, End::Far) => 2,
        };
        (upright + quarters) % 4
    };
    let quarters = |up: Up| match up {
        Up::Away => 0,
        Up::Right => 1,
        Up::Toward => 2,
        Up::Left => 3,
    };
    for plan in [&*PLAN, &*CROWDED] {
        let left = said(&edition(plan, &Faces::new(), &of(Print::Normal, Hand::Left, Unit::Inch)));
        let right = said(&edition(plan, &Faces::new(), &of(Print::Normal, Hand::Right, Unit::Inch)));
        assert!(left.contains("stop is at the right") && right.contains("stop is at the left"));
        for layout in &plan.layouts {
            for (number, cut) in (1..).zip(layout.cut_plan.cut_steps()) {
                let up = Up::needed(cut.axis, cut.end);
                assert_eq!(points(cut.axis, cut.end, quarters(up)), 3, "a right hand's stop is at the left");
                assert_eq!(points(cut.axis, cut.end, (quarters(up) + 2) % 4), 1, "turned half round, at the right");
                // A whole sheet lies upright before; what has been cut lies as it came off.
                if number == 1 && cut.work.iter().all(|work| work.part == PartId::SHEET) {
                    let turn = Up::Away.turn_to(up.turned(Turn::Half));
                    let words = match turn {
                        Turn::None => "Take a whole sheet, upright.",
                        Turn::Right => "Take a whole sheet and turn it a quarter turn to the right.",
                        Turn::Half => "Take a whole sheet and turn it half round.",
                        Turn::Left => "Take a whole sheet and turn it a quarter turn to the left.",
                    };
                    assert!(left.contains(words), "{words}");
                }
            }
        }
        // Sizes, counts and labels are the same.
        for wanted in ["Finished: 1", "pencil"] {
            assert_eq!(left.matches(wanted).count(), right.matches(wanted).count());
        }
    }
}
