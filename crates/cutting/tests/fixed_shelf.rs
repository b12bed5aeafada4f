//! Source: brute force written for these tests, which shares no code with the engine; and arithmetic on areas alone.
//! Whole numbers: no tolerance.
//!
//! A shelf: several kinds of sheet, a few of each, at odd prices. Which sheets are taken decides the cost, so that a bound
//! with shares of sheets lies far below it.
#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/fixed_json.rs"]
mod fixed_json;
#[path = "common/fixed_plain.rs"]
mod fixed_plain;
#[path = "common/fixed_recount.rs"]
mod fixed_recount;

use std::cell::Cell;

use cutting::fixed::{Instance, PieceKind, Question, Rules, SheetKind, solve};
use cutting::{Budget, Outcome};
use proptest::prelude::*;
use proptest::test_runner::{RngSeed, TestRunner};
use serde_json::Value;

fn shelf() -> impl Strategy<Value = Vec<SheetKind>> {
    let sheet = (3_u32..9, 3_u32..9, 1_u32..3, 1_u64..4, 0_u64..9);
    let sheet = sheet.prop_map(|(width, height, copies, rate, more)| {
        SheetKind::whole(width, height, Some(copies), rate * u64::from(width * height) / 4 + more)
    });
    prop::collection::vec(sheet, 3..5)
}

fn piece() -> impl Strategy<Value = PieceKind> {
    (1_u32..6, 1_u32..6, 1_u32..3, any::<bool>()).prop_map(|(width, height, n, turn)| PieceKind {
        width,
        height,
        demand: Some(n),
        min: 0,
        value: 0,
        turn,
    })
}

#[test]
fn shelves_of_odd_sheets_are_answered_as_by_brute_force() {
    let config = ProptestConfig {
        cases: 160,
        rng_seed: RngSeed::Fixed(12),
        failure_persistence: None,
        ..ProptestConfig::default()
    };
    let (proven, all) = (Cell::new(0), Cell::new(0));
    let asked = (shelf(), prop::collection::vec(piece(), 3..6));
    let each = |(mut sheets, pieces): (Vec<SheetKind>, Vec<PieceKind>)| {
        let question = Question::LeastCost;
        let instance = Instance { sheets: sheets.clone(), pieces, question, rules: Rules::default() };
        let mut plain = fixed_plain::Plain::of(&instance);
        let wanted = plain.all();
        let found = solve(&instance, &mut Budget::nodes(400_000)).unwrap();
        let Some(best) = plain.cost(&mut sheets, wanted) else {
            prop_assert!(found.sheets.is_empty(), "{:?}", found.outcome);
            return Ok(());
        };
        fixed_recount::recount(&instance, &found, "shelf");
        prop_assert!(found.bound <= best, "bound {} above {best}", found.bound);
        prop_assert_eq!(found.value, best, "{:?}", found.outcome);
        all.set(all.get() + 1);
        proven.set(proven.get() + usize::from(found.outcome == Outcome::Proven));
        Ok(())
    };
    TestRunner::new(config).run(&asked, each).unwrap();
    assert!(all.get() >= 60 && proven.get() == all.get(), "{} of {}", proven.get(), all.get());
}

/// True if some sheets that cost less than `cost` together have the area that is wanted.
fn cheaper_by_area(sheets: &[SheetKind], cost: u64, area: u64) -> bool {
    let Some((sheet, rest)) = sheets.split_first() else { return cost > 0 && area == 0 };
    let each = u64::from(sheet.width) * u64::from(sheet.height);
    (0..=sheet.copies.unwrap())
        .map(u64::from)
        .take_while(|n| n * sheet.cost < cost)
        .any(|n| cheaper_by_area(rest, cost - n * sheet.cost, area.saturating_sub(n * each)))
}

/// The area alone, with whole sheets, shows that nothing is cheaper on these two.
#[test]
fn the_area_of_whole_sheets_proves_two_of_the_shelves() {
    for (name, cost) in [("craft-12-shelf", 180), ("craft-14-shelf", 132)] {
        let mut lines = include_str!("data/craft.jsonl").lines().map(|l| serde_json::from_str::<Value>(l).unwrap());
        let json = lines.find(|json| json["name"] == name).unwrap();
        let instance = fixed_json::instance(&json, None, true);
        let area = |p: &PieceKind| u64::from(p.width) * u64::from(p.height) * u64::from(p.demand.unwrap());
        let area = instance.pieces.iter().map(area).sum();
        assert!(!cheaper_by_area(&instance.sheets, cost, area), "{name}");
        assert!(cheaper_by_area(&instance.sheets, cost + 1, area), "{name}");
        let found = solve(&instance, &mut Budget::nodes(2_000_000)).unwrap();
        fixed_recount::recount(&instance, &found, name);
        assert_eq!((found.value, found.outcome), (cost, Outcome::Proven), "{name}");
    }
}
