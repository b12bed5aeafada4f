//! Source: ISO 32000-1 and CSS. Sizes in PDF points, 1/72 in each (ISO 32000-1:2008, 8.3.2.3; from memory), and CSS px, 1/96 in each.
#![allow(clippy::unwrap_used, reason = "tests")]

use measure::{Length, Size, parse_length, parse_size, sheet};

mod table;

/// The size a row of the table names.
fn named(what: &str) -> Size {
    let one = |text: &str| parse_length(text, None);
    match what {
        "100 mm rule" => Size::new(Length::mm(100), Length::ZERO),
        "4 in rule" => Size::new(one("4 in").unwrap(), Length::ZERO),
        "1 in test square" => Size::new(Length::INCH, Length::INCH),
        "1 mm" | "1/16 in" => Size::new(one(what).unwrap(), one(what).unwrap()),
        _ => sheet(what).map_or_else(|| parse_size(what, None).unwrap(), |row| row.size),
    }
}

#[test]
fn points_and_pixels() {
    let rows = table::rows(include_str!("data/page_points.csv"));
    assert_eq!(rows.len(), 13);
    for row in rows {
        let size = named(&row["what"]);
        let near = |length: Length, column: &str, per_point: f64| {
            let wanted: f64 = row[column].parse().unwrap();
            // The table is rounded to six digits.
            let got = length.to_points() * per_point;
            assert!((got - wanted).abs() <= 0.5e-6 + 1e-12 * wanted, "{} {column}: {got}", row["what"]);
        };
        near(size.width, "width_pt", 1.0);
        near(size.width, "width_css_px", 96.0 / 72.0);
        if row["height_pt"] != "0" {
            near(size.height, "height_pt", 1.0);
            near(size.height, "height_css_px", 96.0 / 72.0);
        }
    }
}
