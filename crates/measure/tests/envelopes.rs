//! Source: ISO 269:1985, PWG 5101.1, published size charts; `tests/data/envelopes.csv`.
#![allow(clippy::unwrap_used, reason = "tests")]

use measure::envelopes::{clearance, envelope, envelopes, envelopes_for};
use measure::{Length, Size, Unit, parse_size, sheet};

mod table;

#[test]
fn every_row_and_its_clearance() {
    let rows = table::rows(include_str!("data/envelopes.csv"));
    // One more than the table: 133 x 184, a trade size in millimetres.
    assert_eq!((rows.len(), envelopes().count()), (42, 43));
    for row in rows {
        let found = envelope(&row["name"]).unwrap();
        let unit = if row["unit"] == "in" { Unit::Inch } else { Unit::Millimetre };
        let cell = |column: &str| table::decimal(&row[column], unit.length());
        assert_eq!(found.unit, unit);
        assert_eq!(found.size, Size::new(cell("short"), cell("long")), "{}", found.name);
        assert_eq!(found.card, Size::new(cell("card_short"), cell("card_long")), "{}", found.name);
        assert_eq!(found.clearance(), Size::new(cell("clearance_short"), cell("clearance_long")), "{}", found.name);
        assert_eq!((found.source, found.note), (row["source"].as_str(), row["note"].as_str()));
        assert_eq!(found.basis, table::basis(&row["sure"]));
    }
}

#[test]
fn a_name_is_one_envelope_and_not_the_sheet_of_that_name() {
    for row in envelopes() {
        assert_eq!(envelope(row.name), Some(row));
    }
    assert_ne!(envelope("A6").unwrap().size, sheet("A6").unwrap().size);
    assert_eq!(envelope("C6").unwrap().size, sheet("C6").unwrap().size);
}

#[test]
fn what_a_card_may_travel_in() {
    let size = |text: &str| parse_size(text, None).unwrap();
    let quarter = Length::inches(1, 4).unwrap();
    let names = |card: &str, least| envelopes_for(size(card), least).iter().map(|row| row.name).collect::<Vec<_>>();
    assert_eq!(names("7 x 5 in", quarter)[..2], ["A7", "Lee"]);
    assert!(!names("5 x 7 in", Length::ZERO).contains(&"B6"), "127 mm is over 125");
    assert!(!names("4 1/4 x 5 1/2 in", quarter).contains(&"A2"), "the accepted exception leaves 1/8 in one way");
    assert_eq!(clearance(size("4 3/8 x 5 3/4 in"), size("5 1/2 x 4 1/4 in")), size("1/8 x 1/4 in"));
}
