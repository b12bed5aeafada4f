//! Source: international yard and pound agreement, 1959 (1 in = 25.4 mm exactly): inch fractions in decimals and
//! millimetres, `tests/data/length_fractions.csv`. No tolerance.
#![allow(clippy::unwrap_used, reason = "tests")]

use measure::{Length, Mark, parse_length, write};

mod table;

#[test]
fn fractions_of_a_rule() {
    let rows = table::rows(include_str!("data/length_fractions.csv"));
    assert_eq!(rows.len(), 33);
    for row in rows {
        let (above, below) = (row["numerator"].parse().unwrap(), row["denominator"].parse().unwrap());
        let length = Length::inches(above, below).unwrap();
        assert_eq!(length, table::decimal(&row["decimal_in"], Length::INCH));
        assert_eq!(length, table::decimal(&row["mm"], Length::MM));
        let reduced = format!("{} in", row["reduced"]);
        assert_eq!(write(length, Mark::SixtyFourthInch).text, reduced);
        assert_eq!(parse_length(&reduced, None), Ok(length));
        assert_eq!(parse_length(&format!("{}\"", row["decimal_in"]), None), Ok(length));
        assert_eq!(parse_length(&format!("{} mm", row["mm"]), None), Ok(length));
    }
}

#[test]
fn inch_of_1959() {
    assert_eq!(parse_length("25.4 mm", None), Ok(Length::INCH));
    assert_eq!(Length::INCH * 36, table::decimal("914.4", Length::MM));
}
