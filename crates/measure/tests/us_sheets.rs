//! Source: North American sheets (PWG 5101.1 media names) and pads (common practice).
#![allow(clippy::unwrap_used, reason = "tests")]

use measure::sheets::{sheet, sheets};
use measure::{Basis, Length, Unit};

mod table;

#[test]
fn every_row_in_inches_and_millimetres() {
    let rows = table::rows(include_str!("data/us_sheets.csv"));
    let named: Vec<_> = sheets().filter(|row| row.unit == Unit::Inch).collect();
    assert_eq!((rows.len(), named.len()), (21, 21));
    for (row, named) in rows.iter().zip(named) {
        assert_eq!(named.name, row["name"]);
        assert_eq!(named.source, row["source"]);
        assert_eq!(named.basis, table::basis(&row["sure"]));
        for (edge, column) in [(named.size.width, "short"), (named.size.height, "long")] {
            assert_eq!(edge, table::decimal(&row[&format!("{column}_in")], Length::INCH), "{}", named.name);
            assert_eq!(edge, table::decimal(&row[&format!("{column}_mm")], Length::MM), "{}", named.name);
        }
        assert_eq!(sheet(&named.name.to_uppercase()), Some(named));
    }
}

#[test]
fn aliases_and_signs() {
    for (alias, name) in
        [("US Letter", "letter"), ("tabloid", "ledger/tabloid"), ("12 × 12", "12x12"), ("Half-Letter", "half letter")]
    {
        assert_eq!(sheet(alias).unwrap().name, name);
    }
    assert_eq!(sheet("quarter letter").unwrap().basis, Basis::Computed);
}

#[test]
fn no_name_or_alias_means_two_sheets() {
    for row in sheets() {
        for name in row.aliases.iter().chain([&row.name]) {
            assert_eq!(sheet(name), Some(row), "{name}");
        }
        assert!(row.size.width <= row.size.height && !row.source.is_empty());
    }
}
