//! Source: common practice: fifteen layouts a card maker cuts by hand (sheet, pieces, cuts), added up as cut trees.
//! Each is asked for with every side free by one mark either way, and once with the exact sizes. Tolerance: none.
#![allow(clippy::expect_used, dead_code, clippy::type_complexity, reason = "tests share helpers")]

#[path = "common/recount.rs"]
mod recount;

use cutting::flexible::{Instance, Kind, Recipe, Span, Wish, solve};
use cutting::{Budget, Outcome};

/// Name, sheet, pieces as (how many, width, height), cuts of the known layout; sizes in marks of `mark`.
struct Known {
    name: &'static str,
    sheet: (u32, u32),
    pieces: &'static [(u32, u32, u32)],
    cuts: u32,
}

/// Eighths of an inch, or millimetres for the metric ones.
const KNOWN: [Known; 15] = [
    Known { name: "twins", sheet: (96, 96), pieces: &[(8, 24, 36), (8, 24, 12)], cuts: 15 },
    Known {
        name: "both ways up",
        sheet: (96, 96),
        pieces: &[(4, 36, 24), (4, 24, 36), (2, 24, 24), (2, 12, 36), (1, 12, 24)],
        cuts: 12,
    },
    Known { name: "nine", sheet: (96, 96), pieces: &[(6, 32, 36), (3, 32, 24)], cuts: 8 },
    Known { name: "dozen", sheet: (96, 96), pieces: &[(12, 32, 24)], cuts: 11 },
    Known {
        name: "wide borders",
        sheet: (96, 96),
        pieces: &[(8, 22, 34), (4, 22, 28), (2, 8, 34), (1, 8, 28)],
        cuts: 14,
    },
    Known { name: "tall eight", sheet: (96, 96), pieces: &[(4, 38, 36), (2, 38, 24), (2, 20, 48)], cuts: 7 },
    Known { name: "squares", sheet: (96, 96), pieces: &[(4, 38, 38), (2, 38, 20), (2, 20, 38), (1, 20, 20)], cuts: 8 },
    Known { name: "slim", sheet: (96, 96), pieces: &[(3, 26, 66), (3, 26, 30), (1, 18, 66), (1, 18, 30)], cuts: 7 },
    Known {
        name: "metric nine",
        sheet: (304, 304),
        pieces: &[(3, 93, 136), (6, 93, 84), (1, 25, 136), (2, 25, 84)],
        cuts: 11,
    },
    Known {
        name: "A4 four",
        sheet: (210, 297),
        pieces: &[(4, 93, 136), (2, 93, 25), (2, 24, 136), (1, 24, 25)],
        cuts: 8,
    },
    Known { name: "pad six", sheet: (48, 48), pieces: &[(2, 24, 36), (2, 24, 12)], cuts: 3 },
    Known { name: "letter", sheet: (68, 88), pieces: &[(4, 24, 36), (2, 24, 16), (2, 20, 36), (1, 20, 16)], cuts: 8 },
    Known { name: "collage", sheet: (96, 96), pieces: &[(3, 32, 42), (6, 32, 24), (3, 32, 6)], cuts: 11 },
    Known {
        name: "mixed four recipes",
        sheet: (96, 96),
        pieces: &[(3, 32, 42), (2, 32, 27), (4, 16, 42), (1, 32, 12), (2, 16, 12)],
        cuts: 11,
    },
    Known { name: "pad eight", sheet: (64, 64), pieces: &[(2, 32, 42), (2, 32, 22)], cuts: 3 },
];

/// The question whose pieces are those of the layout, each side free by `slack` marks.
fn question(known: &Known, slack: u32) -> Instance {
    let kinds: Vec<Kind> = known
        .pieces
        .iter()
        .map(|&(_, w, h)| Kind {
            width: Span::new(w - slack, w + slack),
            height: Span::new(h - slack, h + slack),
            prefer: (w, h),
            step: 1,
            turn: false,
            uniform: true,
        })
        .collect();
    Instance {
        width: known.sheet.0,
        height: known.sheet.1,
        recipes: vec![Recipe { pieces: known.pieces.iter().map(|p| p.0).collect(), cards: Span::exactly(1) }],
        cards: Span::exactly(1),
        spares: vec![0; kinds.len()],
        kinds,
        pins: Vec::new(),
        wishes: Wish::ORDER.to_vec(),
        alternatives: 3,
    }
}

#[test]
fn every_known_layout_is_found_from_its_exact_sizes() {
    for known in &KNOWN {
        let area: u32 = known.pieces.iter().map(|&(n, w, h)| n * w * h).sum();
        assert_eq!(area, known.sheet.0 * known.sheet.1, "{}: added up a second way", known.name);
        let instance = question(known, 0);
        let answer = solve(&instance, &mut Budget::nodes(20_000_000)).expect("a proper question");
        assert_eq!(answer.outcome, Outcome::Proven, "{}", known.name);
        assert_eq!(answer.layouts[0].waste, 0, "{}", known.name);
        assert_eq!(answer.layouts[0].effort.cuts, known.cuts, "{}", known.name);
        answer.layouts.iter().for_each(|layout| recount::check(&instance, layout));
    }
}

#[test]
fn every_known_layout_is_found_when_sides_are_free_by_a_mark() {
    for known in &KNOWN {
        let instance = question(known, 1);
        let answer = solve(&instance, &mut Budget::nodes(20_000_000)).expect("a proper question");
        assert_eq!((&answer.outcome, answer.layouts[0].waste), (&Outcome::Proven, 0), "{}", known.name);
        answer.layouts.iter().for_each(|layout| recount::check(&instance, layout));
    }
}

#[test]
fn a_panel_a_sixteenth_too_wide_does_not_tile() {
    // Eight panels 3 1/16 x 4 1/2 and eight bands 3 x 1 1/2, in sixteenths.
    let mut instance = question(&KNOWN[0], 0);
    (instance.width, instance.height) = (192, 192);
    for (kind, (w, h)) in instance.kinds.iter_mut().zip([(49, 72), (48, 24)]) {
        (kind.width, kind.height, kind.prefer) = (Span::exactly(w), Span::exactly(h), (w, h));
    }
    let answer = solve(&instance, &mut Budget::nodes(20_000_000)).expect("a proper question");
    assert!(answer.layouts.is_empty(), "their area is more than the sheet's");
    assert!(matches!(answer.outcome, Outcome::Impossible { .. }), "{:?}", answer.outcome);
}
