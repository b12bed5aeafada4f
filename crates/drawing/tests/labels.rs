//! On drawings of random layouts no words lie on other words, and none leave the page.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::cast_possible_truncation, reason = "tests")]

#[path = "common/boxes.rs"]
mod boxes;
#[path = "common/drive.rs"]
mod drive;

use std::collections::BTreeSet;

use boxes::boxes;
use cards::Plan;
use cards::plan::Piece;
use cutting::steps::{Job, Limits, Trims, steps};
use cutting::tree::{Axis, Tree, pieces};
use drawing::Picture;
use drawing::sheets::{Edition, Faces, Hand, Paper, Print, edition, sheet_drawing};
use measure::{Length, Mark, Rect, Size, Unit, from_steps};

fn planned() -> Plan {
    static PLAN: std::sync::LazyLock<Plan> =
        std::sync::LazyLock::new(|| cards::plan::plan(&drive::project(), &mut cutting::Budget::nodes(200_000)));
    PLAN.clone()
}

/// Numbers that look random and are the same every time (a linear congruence, Knuth's constants).
struct Dice(u64);

impl Dice {
    fn below(&mut self, sides: u64) -> u32 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 33) % sides.max(1)) as u32
    }
}

fn grow(width: u32, height: u32, depth: u32, dice: &mut Dice) -> Tree {
    let axis = if dice.below(2) == 0 { Axis::X } else { Axis::Y };
    let side = axis.of(width, height);
    if depth == 0 || side < 2 || dice.below(6) == 0 {
        return match dice.below(7) {
            0 => Tree::Waste,
            turned => Tree::Piece { kind: 0, width, height, turned: turned == 1 },
        };
    }
    let at = 1 + dice.below(u64::from(side) - 1);
    let (first, second) = match axis {
        Axis::X => ((at, height), (width - at, height)),
        Axis::Y => ((width, at), (width, height - at)),
    };
    let first = Box::new(grow(first.0, first.1, depth - 1, dice));
    let second = Box::new(grow(second.0, second.1, depth - 1, dice));
    Tree::Cut { axis, at, first, second }
}

/// The plan with a random layout on a random sheet in place of its own.
fn shuffled(mut plan: Plan, dice: &mut Dice) -> Plan {
    let mark =
        [Mark::QuarterInch, Mark::EighthInch, Mark::SixteenthInch, Mark::WholeMillimetre][dice.below(4) as usize];
    let parts = u32::try_from(Length::INCH.ticks() / mark.step().ticks()).unwrap();
    let (width, height) = (parts * (2 + dice.below(12)), parts * (2 + dice.below(12)));
    let (left, top) = (dice.below(3) * dice.below(2), dice.below(3) * dice.below(2));
    let (right, bottom) = (dice.below(4) * dice.below(2), dice.below(4) * dice.below(2));
    let (inner, tall) = (width - left - right, height - top - bottom);
    let depth = 2 + dice.below(4);
    let tree = grow(inner, tall, depth, dice);
    let length = |steps| from_steps(steps, mark.step());
    let layout = &mut plan.layouts[0];
    let placed = pieces(&tree, inner, tall).unwrap();
    layout.pieces = (1..)
        .zip(placed)
        .map(|(number, piece)| Piece {
            mark: number.to_string(),
            recipe: 0,
            layer: 1,
            card: None,
            rect: Rect::new(
                length(piece.x + left),
                length(piece.y + top),
                Size::new(length(piece.width), length(piece.height)),
            ),
            turned: piece.turned,
        })
        .collect();
    let limits = Limits { longest_cut: 400, smallest_strip: 2, stack: 2 };
    let trims = Trims { left, top, right, bottom };
    layout.cut_plan = steps(&Job { tree: &tree, width, height, trims, sheets: 6, limits, folds: &[] }).unwrap();
    (layout.step, layout.cut_step) = (mark.step(), mark.step());
    layout.usable = Rect::new(length(left), length(top), Size::new(length(inner), length(tall)));
    layout.tree = tree;
    plan.project.packs[0].sheet = Size::new(length(width), length(height));
    plan.project.mark = mark;
    plan.project.unit = mark.unit();
    plan.cards.truncate(2);
    plan
}

#[test]
fn words_on_three_hundred_random_sheets_never_meet() {
    let plan = planned();
    let mut faces = Faces::new();
    faces.insert((0, 0, cards::model::Side::Front), Picture::plain([210, 190, 150]));
    let mut dice = Dice(2026);
    let (mut labels, mut pieces) = (0, 0);
    for round in 0..300 {
        let plan = shuffled(plan.clone(), &mut dice);
        let size = if round % 2 == 0 { drive::size("7 x 7") } else { drive::size("5 x 6") };
        let scene = sheet_drawing(&plan, &faces, 0, size).unwrap();
        let found = boxes(&scene);
        let page = Rect::new(Length::ZERO, Length::ZERO, scene.size);
        for (index, (text, rect)) in found.iter().enumerate() {
            assert!(page.contains(*rect), "round {round}: `{text}` leaves the page");
            for (other, there) in &found[..index] {
                assert!(!rect.overlaps(*there), "round {round}: `{text}` lies on `{other}`");
            }
        }
        // Large pieces always carry their mark: at least a fifth of the sheet each way.
        let said: BTreeSet<&str> = found.iter().map(|(text, _)| text.split('\u{a0}').next().unwrap()).collect();
        let sheet = plan.project.packs[0].sheet;
        let longest = sheet.width.max(sheet.height);
        for piece in &plan.layouts[0].pieces {
            let least = piece.rect.size.width.min(piece.rect.size.height);
            if least * 5 >= longest {
                assert!(said.contains(piece.mark.as_str()), "round {round}: no mark on {}", piece.mark);
            }
        }
        labels += found.len();
        pieces += plan.layouts[0].pieces.len();
    }
    // The test would prove nothing on empty drawings.
    assert!(labels > pieces && pieces > 1_000, "{labels} words on {pieces} pieces");
}

/// Every edition for both papers.
fn editions() -> Vec<Edition> {
    let mut all = Vec::new();
    for paper in [Paper::Letter, Paper::A4] {
        for print in [Print::Normal, Print::Large] {
            for hand in [Hand::Right, Hand::Left] {
                for unit in [Unit::Inch, Unit::Millimetre] {
                    all.push(Edition { paper, print, hand, unit, language: words::Language::English });
                }
            }
        }
    }
    all
}

#[test]
fn words_of_the_pages_never_meet() {
    let crowded = cards::plan::plan(&drive::crowded(), &mut cutting::Budget::nodes(200_000));
    assert!(crowded.project.recipes.len() > 1 && !crowded.findings.is_empty());
    for (plan, as_asked) in
        [&planned(), &crowded].into_iter().flat_map(|plan| editions().into_iter().map(move |e| (plan, e)))
    {
        for (number, scene) in (1..).zip(edition(plan, &Faces::new(), &as_asked)) {
            let found = boxes(&scene);
            let page = Rect::new(Length::ZERO, Length::ZERO, scene.size);
            for (index, (text, rect)) in found.iter().enumerate() {
                assert!(page.contains(*rect), "{as_asked:?} page {number}: `{text}` leaves the page");
                for (other, there) in &found[..index] {
                    assert!(!rect.overlaps(*there), "{as_asked:?} page {number}: `{text}` lies on `{other}`");
                }
            }
        }
    }
}
