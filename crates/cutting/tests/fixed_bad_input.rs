//! Questions that are wrong, huge or stopped: each is refused or answered with its reason, never with a panic.
#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/fixed_recount.rs"]
mod fixed_recount;

use std::cell::Cell;

use cutting::fixed::{Answer, Instance, InstanceError, PieceKind, Question, Rules, SheetKind, Why, solve};
use cutting::{Budget, Outcome};

const SHEET: SheetKind = SheetKind::whole(192, 192, None, 1);
const PIECE: PieceKind = PieceKind { width: 64, height: 84, demand: Some(10), min: 0, value: 5, turn: true };

fn least(sheets: Vec<SheetKind>, pieces: Vec<PieceKind>) -> Instance {
    Instance { sheets, pieces, question: Question::LeastCost, rules: Rules::default() }
}

fn most(sheets: Vec<SheetKind>, pieces: Vec<PieceKind>) -> Instance {
    Instance { sheets, pieces, question: Question::MostValue, rules: Rules::default() }
}

fn answer(instance: &Instance) -> Answer {
    let answer = solve(instance, &mut Budget::nodes(1_000_000)).unwrap();
    if matches!(answer.outcome, Outcome::Proven | Outcome::Best { .. }) {
        fixed_recount::recount(instance, &answer, "odd");
    }
    answer
}

#[test]
fn questions_that_make_no_sense_are_refused_with_their_reason() {
    let flat_sheet = SheetKind { width: 0, ..SHEET };
    let flat_piece = PieceKind { height: 0, ..PIECE };
    let open = PieceKind { demand: None, ..PIECE };
    let above = PieceKind { min: 11, ..PIECE };
    let dear = SheetKind { cost: u64::MAX, ..SHEET };
    let precious = PieceKind { value: u64::MAX, ..PIECE };
    let cases = [
        (least(vec![], vec![PIECE]), InstanceError::NoSheet),
        (least(vec![SHEET], vec![]), InstanceError::NoPiece),
        (least(vec![SHEET, flat_sheet], vec![PIECE]), InstanceError::FlatSheet { sheet: 1 }),
        (least(vec![SHEET], vec![PIECE, flat_piece]), InstanceError::FlatPiece { piece: 1 }),
        (least(vec![SHEET], vec![open]), InstanceError::NoDemand { piece: 0 }),
        (most(vec![SHEET], vec![above]), InstanceError::MinAboveDemand { piece: 0 }),
        (most(vec![SHEET, SHEET], vec![PIECE]), InstanceError::NotOneSheet { sheets: 2 }),
        (least(vec![dear], vec![PIECE]), InstanceError::TooLarge),
        (most(vec![SHEET], vec![precious]), InstanceError::TooLarge),
    ];
    for (instance, error) in cases {
        assert_eq!(solve(&instance, &mut Budget::nodes(1000)).unwrap_err(), error);
    }
}

#[test]
fn questions_without_an_answer_say_why() {
    let large = PieceKind { width: 193, ..PIECE };
    let why = |instance: &Instance| match answer(instance).outcome {
        Outcome::Impossible { why } => why,
        other => panic!("{other:?}"),
    };
    assert_eq!(why(&least(vec![SHEET], vec![PIECE, large.clone()])), Why::FitsNoSheet { piece: 1 });
    assert_eq!(why(&most(vec![SHEET], vec![PieceKind { min: 1, ..large }])), Why::FitsNoSheet { piece: 0 });
    let one = SheetKind { copies: Some(1), ..SHEET };
    let wanted = 10 * 64 * 84;
    assert_eq!(why(&least(vec![one.clone()], vec![PIECE])), Why::TooLittleArea { wanted, there: 192 * 192 });
    // Four of 5 x 7 would do by area, but straight cuts give three of 12 x 12.
    let four = PieceKind { width: 80, height: 112, demand: Some(4), min: 4, value: 1, turn: true };
    assert_eq!(why(&least(vec![one.clone()], vec![four.clone()])), Why::TooFewSheets);
    assert_eq!(why(&most(vec![one], vec![four])), Why::MinimumDoesNotFit);
    let none = SheetKind { copies: Some(0), ..SHEET };
    assert_eq!(why(&least(vec![none], vec![PIECE])), Why::TooFewSheets);
}

#[test]
fn nothing_wanted_costs_nothing() {
    let found = answer(&least(vec![SHEET], vec![PieceKind { demand: Some(0), ..PIECE }]));
    assert_eq!((found.value, found.outcome), (0, Outcome::Proven));
    let found = answer(&most(vec![SHEET], vec![PieceKind { demand: Some(0), ..PIECE }]));
    assert_eq!((found.value, found.outcome), (0, Outcome::Proven));
}

#[test]
fn huge_numbers_are_answered() {
    let million = PieceKind { demand: Some(1_000_000), ..PIECE };
    let found = answer(&least(vec![SHEET], vec![million.clone(), PieceKind { width: 50, ..million.clone() }]));
    assert!(found.bound > 0 && found.value - found.bound <= 1, "{} {}", found.value, found.bound);

    let some = SheetKind { copies: Some(2_000_000), ..SHEET };
    let found = answer(&least(vec![some], vec![million]));
    assert_eq!((found.value, found.outcome), (166_667, Outcome::Proven));

    let wide = SheetKind { width: u32::MAX, height: u32::MAX, ..SHEET };
    let piece = PieceKind { width: u32::MAX / 2, height: u32::MAX / 3, ..PIECE };
    let found = answer(&least(vec![wide.clone()], vec![piece.clone()]));
    assert_eq!((found.value, found.outcome), (2, Outcome::Proven));
    let found = answer(&most(vec![wide.clone()], vec![piece]));
    assert_eq!((found.value, found.outcome), (30, Outcome::Proven));

    // A speck on a plain: too many places for a table, said so and not tried.
    let speck = PieceKind { width: 1, height: 1, demand: None, ..PIECE };
    let refused = solve(&most(vec![wide], vec![speck]), &mut Budget::nodes(1000)).unwrap_err();
    assert!(matches!(refused, InstanceError::TooFine { .. } | InstanceError::TooLarge), "{refused:?}");
}

#[test]
fn without_nodes_there_is_still_a_bound_and_where_stock_is_open_an_answer() {
    let instance = least(vec![SHEET], vec![PIECE, PieceKind { width: 100, height: 30, ..PIECE }]);
    let found = solve(&instance, &mut Budget::nodes(0)).unwrap();
    fixed_recount::recount(&instance, &found, "no nodes");
    assert!(found.bound > 0 && found.value > 0);
    let instance = most(vec![SHEET], vec![PIECE]);
    let found = solve(&instance, &mut Budget::nodes(0)).unwrap();
    assert!(found.bound < 100, "{}", found.bound);
}

#[test]
fn a_stop_is_heeded_within_few_nodes() {
    let pieces = (0..30).map(|k| PieceKind { width: 20 + k, height: 60 - k, ..PIECE }).collect();
    let instance = least(vec![SHEET], pieces);
    let looks = Cell::new(0_u32);
    let stop = || {
        looks.set(looks.get() + 1);
        looks.get() > 5
    };
    let found = solve(&instance, &mut Budget::unlimited().stopped_by(&stop)).unwrap();
    fixed_recount::recount(&instance, &found, "stopped");
    assert!(found.nodes < 200_000, "{} nodes after the stop", found.nodes);
}
