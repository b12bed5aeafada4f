//! Source: ISO 216:2007 A and B sizes, ISO 269:1985 C sizes, and the tolerances of ISO 216.
#![allow(clippy::unwrap_used, reason = "tests")]

use measure::sheets::{Series, iso_size, iso_tolerance, sheet, sheets};
use measure::{Length, Unit};

mod table;

#[test]
fn every_size_of_the_three_series() {
    let rows = table::rows(include_str!("data/iso216.csv"));
    assert_eq!(rows.len(), 33);
    for row in rows {
        let series = match row["series"].as_str() {
            "A" => Series::A,
            "B" => Series::B,
            _ => Series::C,
        };
        let size = iso_size(series, row["n"].parse().unwrap()).unwrap();
        assert_eq!(size.width, table::decimal(&row["short_mm"], Length::MM), "{}", row["name"]);
        assert_eq!(size.height, table::decimal(&row["long_mm"], Length::MM), "{}", row["name"]);
        let named = sheet(&row["name"].to_lowercase()).unwrap();
        assert_eq!((named.name, named.size, named.source), (row["name"].as_str(), size, row["standard"].as_str()));
        if !row["tol_short_mm"].is_empty() {
            assert_eq!(iso_tolerance(size.width), table::decimal(&row["tol_short_mm"], Length::MM));
            assert_eq!(iso_tolerance(size.height), table::decimal(&row["tol_long_mm"], Length::MM));
        }
    }
}

#[test]
fn names_are_found_however_written_and_no_others() {
    assert_eq!(sheet("ISO A4"), sheet("a 4"));
    assert!(sheet("iso b10").is_some());
    for name in ["A11", "D4", "", "iso", "isoletter"] {
        assert_eq!(sheet(name), None, "{name}");
    }
    assert_eq!(iso_size(Series::A, 11), None);
    assert_eq!(sheets().filter(|row| row.unit == Unit::Millimetre).count(), 33);
}
