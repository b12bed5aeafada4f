//! Source: `data/pieces_per_sheet.csv`, exact rational dynamic programme outside this crate; its head says how.
//! One step is 1/2000 mm here (an inch is 50 800 of them), so both inches and millimetres are exact.

#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/fixed_recount.rs"]
mod fixed_recount;

use cutting::fixed::{Instance, PieceKind, Question, Rules, SheetKind, solve};
use cutting::{Budget, Outcome};

/// Whole 1/2000 mm of a plain decimal number: 0.001 in is 50.8 of them, 1/80 in is 635.
fn steps(text: &str, inches: bool) -> u32 {
    let thousandths: u32 = match text.split_once('.') {
        None => text.parse::<u32>().unwrap() * 1000,
        Some((whole, part)) => whole.parse::<u32>().unwrap() * 1000 + format!("{part:0<3}").parse::<u32>().unwrap(),
    };
    if inches { thousandths * 508 / 10 } else { thousandths * 2 }
}

fn most(sheet: (u32, u32), piece: (u32, u32), turn: bool) -> u64 {
    let sheet = SheetKind::whole(sheet.0, sheet.1, Some(1), 1);
    let piece = PieceKind { width: piece.0, height: piece.1, demand: None, min: 0, value: 1, turn };
    let instance =
        Instance { sheets: vec![sheet], pieces: vec![piece], question: Question::MostValue, rules: Rules::default() };
    let answer = solve(&instance, &mut Budget::nodes(1_000_000)).unwrap();
    assert_eq!(answer.outcome, Outcome::Proven);
    fixed_recount::recount(&instance, &answer, "pieces per sheet");
    answer.value
}

#[test]
fn every_row_of_the_table_is_met_exactly() {
    let mut rows = 0;
    for line in include_str!("data/pieces_per_sheet.csv").lines().filter(|l| !l.starts_with('#')).skip(1) {
        let line = line.rsplit_once('"').map_or(line.split_once(',').unwrap().1, |(_, rest)| &rest[1..]);
        let f: Vec<&str> = line.split(',').collect();
        let inches = f[2] == "in";
        let piece = (steps(f[0], inches), steps(f[1], inches));
        let sheet = match f[3] {
            "letter" => (steps("8.5", true), steps("11", true)),
            "legal" => (steps("8.5", true), steps("14", true)),
            "12x12" => (steps("12", true), steps("12", true)),
            "A4" => (steps("210", false), steps("297", false)),
            "A3" => (steps("297", false), steps("420", false)),
            other => panic!("a sheet without a size: {other}"),
        };
        let expected: Vec<u64> = f[4..7].iter().map(|n| n.parse().unwrap()).collect();
        let ours = [most(sheet, piece, true), most(sheet, piece, false), most(sheet, (piece.1, piece.0), false)];
        assert_eq!(ours.to_vec(), expected, "{line}");
        rows += 1;
    }
    assert!(rows >= 70, "{rows} rows");
}

#[test]
fn four_cards_need_two_square_sheets_three_need_one() {
    for (wanted, sheets) in [(3, 1), (4, 2)] {
        let sheet = SheetKind::whole(12, 12, None, 1);
        let piece = PieceKind { width: 5, height: 7, demand: Some(wanted), min: 0, value: 0, turn: true };
        let instance = Instance {
            sheets: vec![sheet],
            pieces: vec![piece],
            question: Question::LeastCost,
            rules: Rules::default(),
        };
        let answer = solve(&instance, &mut Budget::nodes(1_000_000)).unwrap();
        assert_eq!((answer.value, answer.outcome.clone()), (sheets, Outcome::Proven));
        fixed_recount::recount(&instance, &answer, "cards");
    }
}
