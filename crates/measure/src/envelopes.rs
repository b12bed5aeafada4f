//! Envelopes by name: outside size, the card each is meant for, and the clearance that leaves.
//!
//! Envelope names live in a table of their own: the North American A2, A6, A7 … are other sizes than the ISO sheets of
//! those names, so whoever prints a name prints the measurements beside it. Left out on purpose: postage, liners.
//!
//! # Source
//! ISO 269:1985 for C, B and DL; PWG 5101.1 and published size charts for the North American ones; each row says which.

use crate::sheets::plain;
use crate::{Basis, Length, Size, Unit};

/// One envelope of the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct EnvelopeSize {
    /// Its name: `A7`, `C6`, `No. 10`.
    pub name: &'static str,
    /// The unit it is sold by.
    pub unit: Unit,
    /// Outside size, short edge × long edge.
    pub size: Size,
    /// The card it is meant for, short edge × long edge.
    pub card: Size,
    /// Where the size comes from.
    pub source: &'static str,
    /// How sure the size is.
    pub basis: Basis,
    /// What to know about it; often nothing.
    pub note: &'static str,
}

impl EnvelopeSize {
    /// What is left in all, short way × long way, with the card it is meant for.
    pub fn clearance(&self) -> Size {
        clearance(self.size, self.card)
    }
}

/// The envelope called `name`, whatever its case, spaces or hyphens.
///
/// # Examples
/// ```
/// # use measure::{envelope, Length};
/// let a7 = envelope("a7").map(|found| found.size.width);
/// assert_eq!(a7, Length::inches(21, 4));
/// ```
pub fn envelope(name: &str) -> Option<&'static EnvelopeSize> {
    let wanted = plain(name);
    ENVELOPES.iter().find(|row| plain(row.name) == wanted)
}

/// Every envelope of the table, ISO first.
pub fn envelopes() -> impl Iterator<Item = &'static EnvelopeSize> {
    ENVELOPES.iter()
}

/// The envelopes that leave a card at least `least` in all each way, smallest area first, then in the table's order.
///
/// A quarter inch (about 6 mm) is usual, and a thick card wants its thickness more: common practice.
pub fn envelopes_for(card: Size, least: Length) -> Vec<&'static EnvelopeSize> {
    let roomy = |row: &&EnvelopeSize| {
        let left = clearance(row.size, card);
        left.width >= least && left.height >= least
    };
    let mut found: Vec<_> = ENVELOPES.iter().filter(roomy).collect();
    found.sort_by_key(|row| row.size.area());
    found
}

/// What an envelope leaves of a card in all, short way × long way; below zero where the card is too large.
pub fn clearance(envelope: Size, card: Size) -> Size {
    let (envelope, card) = (envelope.short_first(), card.short_first());
    Size::new(envelope.width - card.width, envelope.height - card.height)
}

/// A row in thousandths of its unit.
const fn row(
    name: &'static str,
    unit: Unit,
    size: [i64; 2],
    card: [i64; 2],
    source: &'static str,
    basis: Basis,
    note: &'static str,
) -> EnvelopeSize {
    let size = Size::new(unit.thousandths(size[0]), unit.thousandths(size[1]));
    let card = Size::new(unit.thousandths(card[0]), unit.thousandths(card[1]));
    EnvelopeSize { name, unit, size, card, source, basis, note }
}

#[rustfmt::skip]
static ENVELOPES: [EnvelopeSize; 43] = [
    row("C7", Unit::Millimetre, [81_000, 114_000], [74_000, 105_000], "ISO 269", Basis::Read, "A7 flat or A6 folded once"),
    row("C7/C6", Unit::Millimetre, [81_000, 162_000], [74_000, 148_000], "ISO 269", Basis::Read, "A5 folded in three (its third is 70 x 148)"),
    row("C6", Unit::Millimetre, [114_000, 162_000], [105_000, 148_000], "ISO 269", Basis::Read, "A6 card, A4 folded twice"),
    row("DL", Unit::Millimetre, [110_000, 220_000], [99_000, 210_000], "ISO 269", Basis::Read, "A4 folded in three; slim cards 99 x 210"),
    row("C6/C5", Unit::Millimetre, [114_000, 229_000], [99_000, 210_000], "ISO 269", Basis::Read, "A4 folded in three with more room"),
    row("B6", Unit::Millimetre, [125_000, 176_000], [114_000, 162_000], "ISO 269", Basis::Read, "holds a C6 envelope; a 5 x 7 in card does not fit: 127 mm is over 125"),
    row("C5", Unit::Millimetre, [162_000, 229_000], [148_000, 210_000], "ISO 269", Basis::Read, "A5 card, A4 folded once"),
    row("B5", Unit::Millimetre, [176_000, 250_000], [162_000, 229_000], "ISO 269", Basis::Read, "holds a C5 envelope"),
    row("C4", Unit::Millimetre, [229_000, 324_000], [210_000, 297_000], "ISO 269", Basis::Read, "A4 flat"),
    row("B4", Unit::Millimetre, [250_000, 353_000], [229_000, 324_000], "ISO 269", Basis::Read, "holds a C4 envelope"),
    row("E4", Unit::Millimetre, [280_000, 400_000], [250_000, 353_000], "ISO 269", Basis::Read, "holds B4"),
    row("square 130", Unit::Millimetre, [130_000, 130_000], [120_000, 120_000], "trade size", Basis::FromMemory, "card 120-125 mm"),
    row("square 155", Unit::Millimetre, [155_000, 155_000], [148_000, 148_000], "trade size", Basis::FromMemory, "card 144-148 mm"),
    row("square 160", Unit::Millimetre, [160_000, 160_000], [150_000, 150_000], "trade size", Basis::FromMemory, "card 150-155 mm"),
    row("square 220", Unit::Millimetre, [220_000, 220_000], [210_000, 210_000], "PWG 5101.1 om_invite", Basis::Read, "card size from memory"),
    row("133 x 184", Unit::Millimetre, [133_000, 184_000], [127_000, 178_000], "trade size", Basis::CommonPractice, "the 5 x 7 in card in millimetres; B6 is too small for it"),
    row("A1", Unit::Inch, [3_625, 5_125], [3_500, 4_875], "published envelope size charts (several read)", Basis::Read, "for the 3.5 x 5 card it is tight (1/8 in both ways); charts give as largest enclosure 3.5 x 4.75 or 3.375 x 4.875: they disagree; a 3.5 x 4.875 card is common practice"),
    row("4-bar", Unit::Inch, [3_625, 5_125], [3_375, 4_875], "published envelope size charts (several read)", Basis::Read, "pointed flap; same outside size as A1"),
    row("A2", Unit::Inch, [4_375, 5_750], [4_250, 5_500], "PWG 5101.1 na_a2 and charts", Basis::Read, "two charts say largest enclosure 4.125 x 5.5; the quarter-sheet card 4.25 x 5.5 leaves only 1/8 in in height and is the common use"),
    row("5 1/2-bar", Unit::Inch, [4_375, 5_750], [4_250, 5_500], "published envelope size charts (several read)", Basis::Read, "pointed flap; same outside size as A2"),
    row("5-bar", Unit::Inch, [4_125, 5_625], [3_875, 5_375], "published envelope size charts (several read)", Basis::Read, "pointed flap"),
    row("A6", Unit::Inch, [4_750, 6_500], [4_500, 6_250], "published envelope size charts (several read)", Basis::Read, ""),
    row("6-bar", Unit::Inch, [4_750, 6_500], [4_500, 6_250], "published envelope size charts (several read)", Basis::Read, "pointed flap; same outside size as A6 (one chart prints 4.625 as largest height)"),
    row("A7", Unit::Inch, [5_250, 7_250], [5_000, 7_000], "published envelope size charts (several read)", Basis::Read, "the 5 x 7 card"),
    row("Lee", Unit::Inch, [5_250, 7_250], [5_000, 7_000], "published envelope size charts (several read)", Basis::Read, "pointed flap; same outside size as A7"),
    row("A7.5", Unit::Inch, [5_500, 7_500], [5_000, 7_000], "published envelope size charts (several read)", Basis::Read, "thicker 5 x 7 cards"),
    row("A8", Unit::Inch, [5_500, 8_125], [5_250, 7_875], "published envelope size charts (several read)", Basis::Read, ""),
    row("A9", Unit::Inch, [5_750, 8_750], [5_500, 8_500], "published envelope size charts (several read)", Basis::Read, "the half-sheet card; card size common practice"),
    row("A10", Unit::Inch, [6_000, 9_500], [5_750, 9_250], "published envelope size charts (several read)", Basis::Read, ""),
    row("slimline (A long)", Unit::Inch, [3_875, 8_875], [3_625, 8_625], "published envelope size charts (several read)", Basis::Read, "3.5 x 8.5 slim card fits; common practice"),
    row("No. 6 3/4", Unit::Inch, [3_625, 6_500], [3_375, 6_250], "PWG 5101.1 na_personal", Basis::Read, "enclosure from memory"),
    row("Monarch", Unit::Inch, [3_875, 7_500], [3_625, 7_250], "PWG 5101.1 na_monarch", Basis::Read, "enclosure from memory"),
    row("No. 9", Unit::Inch, [3_875, 8_875], [3_625, 8_625], "PWG 5101.1 na_number-9", Basis::Read, "enclosure from memory"),
    row("No. 10", Unit::Inch, [4_125, 9_500], [3_875, 9_250], "PWG 5101.1 na_number-10", Basis::Read, "slim card 3.5 x 8.5 to 4 x 9; common practice"),
    row("No. 11", Unit::Inch, [4_500, 10_375], [4_250, 10_125], "PWG 5101.1 na_number-11", Basis::Read, "enclosure: quarter inch rule"),
    row("No. 12", Unit::Inch, [4_750, 11_000], [4_500, 10_750], "PWG 5101.1 na_number-12", Basis::Read, "enclosure: quarter inch rule"),
    row("No. 14", Unit::Inch, [5_000, 11_500], [4_750, 11_250], "PWG 5101.1 na_number-14", Basis::Read, "enclosure: quarter inch rule"),
    row("square 5", Unit::Inch, [5_000, 5_000], [4_750, 4_750], "quarter inch rule read in a trade guide", Basis::CommonPractice, ""),
    row("square 5.5", Unit::Inch, [5_500, 5_500], [5_250, 5_250], "quarter inch rule read in a trade guide", Basis::CommonPractice, ""),
    row("square 6", Unit::Inch, [6_000, 6_000], [5_750, 5_750], "quarter inch rule read in a trade guide", Basis::Read, ""),
    row("square 6.5", Unit::Inch, [6_500, 6_500], [6_250, 6_250], "quarter inch rule read in a trade guide", Basis::CommonPractice, ""),
    row("square 7", Unit::Inch, [7_000, 7_000], [6_750, 6_750], "quarter inch rule read in a trade guide", Basis::CommonPractice, ""),
    row("square 8", Unit::Inch, [8_000, 8_000], [7_750, 7_750], "quarter inch rule read in a trade guide", Basis::CommonPractice, ""),
];
