//! Named sheet sizes, short edge first: ISO A, B and C, North American sheets, pads.
//!
//! | series | what | source |
//! |---|---|---|
//! | A0–A10, B0–B10 | paper | ISO 216 |
//! | C0–C10 | what holds the A size of the same number | ISO 269 |
//! | letter, legal, … | North American sheets | PWG 5101.1 |
//! | 12x12, 8x8, 6x6 | pads and packs | common practice |
//!
//! A name alone misleads: `A6` is an ISO sheet here and a North American envelope in [`crate::envelopes`]. Whoever
//! prints a name prints the measurements beside it. Left out on purpose: weights, grain, prices, real sheets (a label
//! strip may stick out, so the maker measures hers).

use crate::{Basis, Length, Size, Unit};

/// A size people call by a name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct NamedSize {
    /// Its name: `A4`, `letter`, `12x12`.
    pub name: &'static str,
    /// Other names for it.
    pub aliases: &'static [&'static str],
    /// Short edge × long edge.
    pub size: Size,
    /// The unit it is sold by.
    pub unit: Unit,
    /// Where the size comes from.
    pub source: &'static str,
    /// How sure it is.
    pub basis: Basis,
}

/// A series of ISO sizes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Series {
    /// ISO 216 A: 841 × 1189 mm and its halves.
    A,
    /// ISO 216 B: 1000 × 1414 mm and its halves.
    B,
    /// ISO 269 C: 917 × 1297 mm and its halves.
    C,
}

/// The sheet called `name`, whatever its case, spaces, hyphens or sign between edges; `ISO A4` and `a 4` find A4.
///
/// # Examples
/// ```
/// # use measure::{sheet, Length, Size};
/// assert_eq!(sheet("a4").map(|found| found.size), Some(Size::new(Length::mm(210), Length::mm(297))));
/// assert_eq!(sheet("12 × 12"), sheet("12x12"));
/// ```
pub fn sheet(name: &str) -> Option<&'static NamedSize> {
    let wanted = plain(name);
    let short = wanted.strip_prefix("iso").unwrap_or(&wanted);
    ISO.iter().find(|row| plain(row.name) == short).or_else(|| {
        OTHERS.iter().find(|row| plain(row.name) == wanted || row.aliases.iter().any(|alias| plain(alias) == wanted))
    })
}

/// Every named sheet: ISO first, then North American, then pads and parent sheets.
pub fn sheets() -> impl Iterator<Item = &'static NamedSize> {
    ISO.iter().chain(&OTHERS)
}

/// Size number `n` of a series, short edge × long edge.
///
/// The long edge is halved and rounded down to a whole millimetre, the short edge becomes the long one.
///
/// # Source
/// ISO 216:2007 and ISO 269:1985. Checked by `tests/iso216.rs`, all 33 rows. `None` past 10, where the tables end.
pub const fn iso_size(series: Series, n: u8) -> Option<Size> {
    if n > 10 {
        return None;
    }
    let (mut short, mut long) = match series {
        Series::A => (841, 1189),
        Series::B => (1000, 1414),
        Series::C => (917, 1297),
    };
    let mut done = 0;
    while done < n {
        (short, long) = (long / 2, short);
        done += 1;
    }
    Some(Size::new(Length::mm(short), Length::mm(long)))
}

/// How far an edge of an ISO A or B sheet may be off either way: 1.5 mm up to 150 mm, 2 mm up to 600 mm, 3 mm above.
///
/// # Source
/// ISO 216, as quoted in four public pages. Checked by `tests/iso216.rs`.
pub fn iso_tolerance(edge: Length) -> Length {
    if edge <= Length::mm(150) {
        Length::from_ticks(Length::MM.ticks() * 3 / 2)
    } else if edge <= Length::mm(600) {
        Length::mm(2)
    } else {
        Length::mm(3)
    }
}

/// A name as it is compared: small letters, `x` between edges, no spaces, hyphens or underscores.
pub(crate) fn plain(name: &str) -> String {
    let kept = name.chars().filter(|sign| !sign.is_whitespace() && !matches!(sign, '-' | '_'));
    kept.map(|sign| if sign == '×' { 'x' } else { sign.to_ascii_lowercase() }).collect()
}

const ISO_NAMES: [&str; 33] = [
    "A0", "A1", "A2", "A3", "A4", "A5", "A6", "A7", "A8", "A9", "A10", "B0", "B1", "B2", "B3", "B4", "B5", "B6", "B7",
    "B8", "B9", "B10", "C0", "C1", "C2", "C3", "C4", "C5", "C6", "C7", "C8", "C9", "C10",
];

static ISO: [NamedSize; 33] = iso_table();

const fn iso_table() -> [NamedSize; 33] {
    let mut table = [inches("", &[], [0, 0], "", Basis::Read); 33];
    let mut at = 0;
    let mut n = 0;
    while at < 33 {
        let (series, source) = match at / 11 {
            0 => (Series::A, "ISO 216:2007"),
            1 => (Series::B, "ISO 216:2007"),
            _ => (Series::C, "ISO 269:1985"),
        };
        let size = iso_size(series, n).expect("a series has sizes 0 to 10");
        table[at] =
            NamedSize { name: ISO_NAMES[at], aliases: &[], size, unit: Unit::Millimetre, source, basis: Basis::Read };
        at += 1;
        n = (n + 1) % 11;
    }
    table
}

/// A row in thousandths of an inch.
const fn inches(
    name: &'static str,
    aliases: &'static [&'static str],
    edges: [i64; 2],
    source: &'static str,
    basis: Basis,
) -> NamedSize {
    let size = Size::new(Unit::Inch.thousandths(edges[0]), Unit::Inch.thousandths(edges[1]));
    NamedSize { name, aliases, size, unit: Unit::Inch, source, basis }
}

#[rustfmt::skip]
static OTHERS: [NamedSize; 21] = [
    inches("letter", &["us letter", "ansi a"], [8_500, 11_000], "PWG 5101.1 na_letter", Basis::Read),
    inches("legal", &["us legal"], [8_500, 14_000], "PWG 5101.1 na_legal", Basis::Read),
    inches("ledger/tabloid", &["ledger", "tabloid", "ansi b"], [11_000, 17_000], "PWG 5101.1 na_ledger", Basis::Read),
    inches("half letter", &["half sheet", "invoice", "statement"], [5_500, 8_500], "PWG 5101.1 na_invoice", Basis::Read),
    inches("quarter letter", &["quarter sheet"], [4_250, 5_500], "letter divided by four", Basis::Computed),
    inches("5x7", &[], [5_000, 7_000], "PWG 5101.1 na_5x7", Basis::Read),
    inches("4x6", &[], [4_000, 6_000], "PWG 5101.1 na_index-4x6", Basis::Read),
    inches("3x5", &[], [3_000, 5_000], "PWG 5101.1 na_index-3x5", Basis::Read),
    inches("5x8", &[], [5_000, 8_000], "PWG 5101.1 na_index-5x8", Basis::Read),
    inches("executive", &[], [7_250, 10_500], "PWG 5101.1 na_executive", Basis::Read),
    inches("6x9", &[], [6_000, 9_000], "PWG 5101.1 na_6x9", Basis::Read),
    inches("8x10", &[], [8_000, 10_000], "PWG 5101.1 na_govt-letter", Basis::Read),
    inches("9x12", &["arch a"], [9_000, 12_000], "PWG 5101.1 na_arch-a", Basis::Read),
    inches("12x18", &["arch b"], [12_000, 18_000], "PWG 5101.1 na_arch-b", Basis::Read),
    inches("13x19", &["super b"], [13_000, 19_000], "PWG 5101.1 na_super-b", Basis::Read),
    inches("12x12", &[], [12_000, 12_000], "patterned paper and cardstock pads and packs", Basis::CommonPractice),
    inches("8x8", &[], [8_000, 8_000], "paper pads", Basis::CommonPractice),
    inches("6x6", &[], [6_000, 6_000], "paper pads", Basis::CommonPractice),
    inches("cover parent", &[], [20_000, 26_000], "basic size of cover stock, see basis_weight.csv", Basis::Read),
    inches("text parent", &[], [25_000, 38_000], "basic size of text and book papers", Basis::Read),
    inches("bond parent", &[], [17_000, 22_000], "basic size of bond", Basis::Read),
];
