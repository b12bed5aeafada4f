//! Reads the checked tables under `tests/data`: `#` lines are sources, then a header, then rows.
#![allow(dead_code, reason = "each test file uses what it needs")]

use std::collections::BTreeMap;

use measure::{Basis, Length};

/// One row by column name.
pub(crate) type Row = BTreeMap<String, String>;

/// All rows; quoted cells may hold commas and doubled quotes.
pub(crate) fn rows(text: &str) -> Vec<Row> {
    let mut lines = text.lines().filter(|line| !line.starts_with('#'));
    let header = cells(lines.next().expect("a header"));
    lines.map(|line| header.iter().cloned().zip(cells(line)).collect()).collect()
}

fn cells(line: &str) -> Vec<String> {
    let (mut cells, mut cell, mut quoted) = (Vec::new(), String::new(), false);
    let mut signs = line.chars().peekable();
    while let Some(sign) = signs.next() {
        match sign {
            '"' if quoted && signs.peek() == Some(&'"') => cell.extend(signs.next()),
            '"' => quoted = !quoted,
            ',' if !quoted => cells.push(std::mem::take(&mut cell)),
            _ => cell.push(sign),
        }
    }
    cells.push(cell);
    cells
}

/// A signed decimal times a unit, by long hand, so that the tables are not read by the code they check.
pub(crate) fn decimal(text: &str, unit: Length) -> Length {
    let (whole, part) = text.split_once('.').unwrap_or((text, ""));
    let digits: i64 = format!("{whole}{part}").parse().expect("digits");
    let ticks = digits * unit.ticks();
    let places = 10_i64.pow(u32::try_from(part.len()).expect("few places"));
    assert_eq!(ticks % places, 0, "{text} is whole ticks");
    Length::from_ticks(ticks / places)
}

/// How sure a row says it is.
pub(crate) fn basis(sure: &str) -> Basis {
    match sure {
        "read" => Basis::Read,
        "computed" => Basis::Computed,
        "common practice" => Basis::CommonPractice,
        "from memory" => Basis::FromMemory,
        _ => panic!("`{sure}` says nothing"),
    }
}
