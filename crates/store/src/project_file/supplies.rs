//! Tape, foam, envelopes, ink and stamps.

use cards::model::{Supplies, Supply, Tape};

use super::desk::{Bounds, Desk, Table};
use super::paper;

/// What each supply is called where its file does not say, by its key.
const NAMES: [(&str, &str); 5] = [
    ("tape", "Tape"),
    ("foam", "Foam squares"),
    ("envelopes", "Envelopes"),
    ("ink_pad", "Ink pad"),
    ("stamps", "Stamps"),
];

pub(super) fn supplies(desk: &mut Desk, root: &Table<'_>) -> Supplies {
    let Some(table) = root.table(desk, "supplies") else { return Supplies::default() };
    let tape = table.table(desk, "tape").map(|tape| Tape {
        name: named(desk, &tape, "tape"),
        roll: tape.length(desk, "roll", Bounds::Spool),
        price: paper::price(desk, &tape, "price"),
        two_lines_from: tape
            .length(desk, "two_lines_from", Bounds::FromNothing)
            .unwrap_or_else(|| Tape::usual_two_lines_from(desk.unit)),
    });
    let mut supply = |key: &'static str, lasts: &str| {
        let supply = table.table(desk, key)?;
        Some(Supply {
            name: named(desk, &supply, key),
            lasts: supply.count(desk, lasts).unwrap_or(1),
            price: paper::price(desk, &supply, "price"),
        })
    };
    Supplies {
        tape,
        foam: supply("foam", "pack_of"),
        envelopes: supply("envelopes", "pack_of"),
        ink_pad: supply("ink_pad", "lasts"),
        stamps: supply("stamps", "lasts"),
    }
}

fn named(desk: &mut Desk, table: &Table<'_>, key: &str) -> String {
    table.text(desk, "name").unwrap_or_else(|| usual_name(key).to_owned())
}

/// What a supply is called where its file does not say.
pub(super) fn usual_name(key: &str) -> &'static str {
    NAMES.into_iter().find(|(known, _)| *known == key).map_or("", |(_, name)| name)
}
