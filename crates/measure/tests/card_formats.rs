//! Source: common practice, `tests/data/card_formats.csv`.
//! Base = twice the face across the fold, score in the middle, a border of 1/8 in or 3 mm a layer.
#![allow(clippy::unwrap_used, reason = "tests")]

use measure::formats::{FoldedEdge, format, formats, formats_of, usual_border};
use measure::{Length, Size, Unit, envelope, parse_size};

mod table;

#[test]
fn every_row_of_the_table() {
    let rows = table::rows(include_str!("data/card_formats.csv"));
    assert_eq!(rows.len(), 17);
    for row in rows {
        let found = format(&row["format"]).unwrap();
        let unit = if row["unit"] == "in" { Unit::Inch } else { Unit::Millimetre };
        let cell = |column: &str| table::decimal(&row[column], unit.length());
        let size = |what: &str| Size::new(cell(&format!("{what}_short")), cell(&format!("{what}_long")));
        assert_eq!(found.unit, unit);
        assert_eq!(found.face, size("face"), "{}", found.name);
        assert_eq!(found.base().short_first(), size("base"), "{}", found.name);
        assert_eq!(found.mat(), size("mat"), "{}", found.name);
        assert_eq!(found.panel(), size("panel"), "{}", found.name);
        assert_eq!(found.score_at(), cell("score_at"), "{}", found.name);
        let across = if found.fold == FoldedEdge::Side { found.base().width } else { found.base().height };
        let named = if row["score_along"] == "long edge" { size("base").height } else { size("base").width };
        assert_eq!(across, named, "{} is scored along its {}", found.name, row["score_along"]);
    }
}

#[test]
fn arithmetic_of_every_format() {
    let mut names = Vec::new();
    for row in formats() {
        assert_eq!(row.base().area(), 2 * row.face.area(), "{}", row.name);
        assert_eq!(row.face.width - row.mat().width, usual_border(row.unit) * 2);
        assert_eq!(row.mat().height - row.panel().height, usual_border(row.unit) * 2);
        assert!(row.panel().width > Length::ZERO && row.face.width <= row.face.height);
        for name in row.envelopes {
            let sold = envelope(name).unwrap();
            let left = measure::envelopes::clearance(sold.size, row.face);
            assert!(left.width > Length::ZERO && left.height > Length::ZERO, "{} in {name}: {left}", row.name);
        }
        assert!(formats_of(row.face.turned()).any(|other| other.name == row.name));
        names.push(row.name);
    }
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), formats().count());
}

#[test]
fn tent_fold_of_five_by_seven_needs_fourteen_inches() {
    let tent = format("5 x 7, tent fold").unwrap();
    let sheet = parse_size("12 x 12 in", None).unwrap();
    assert!(!tent.base().fits_turned(sheet));
    assert!(format("5 x 7, side fold").unwrap().base().fits_turned(sheet));
}
