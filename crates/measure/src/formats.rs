//! Card formats: from the face everything else follows by arithmetic.
//!
//! The base is the face doubled across the fold and scored in the middle; the mat leaves a border of 1/8 in (3 mm) all
//! round, the panel the same again. Left out on purpose: gatefolds and z-folds (the domain's), what a layer is made of.
//!
//! Nominal A5 and A6 say 148 mm, half of an A4 is 148.5 mm; both are here, because ISO 216 rounds down and both fit C5
//! and C6. A name such as `A6` never goes without its measurements.

use crate::sheets::plain;
use crate::{Basis, Length, Size, Unit};

/// Which edge of the face is folded.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FoldedEdge {
    /// The left edge, like a book: the base is twice as wide.
    Side,
    /// The upper edge, like a tent: the base is twice as high.
    Top,
}

/// One way of making a card.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct CardFormat {
    /// Its name.
    pub name: &'static str,
    /// The unit it is planned in.
    pub unit: Unit,
    /// Finished size, width × height, upright.
    pub face: Size,
    /// Where it is folded.
    pub fold: FoldedEdge,
    /// Envelopes for it by name in [`crate::envelopes`], the usual one first; empty if it is sold by size only.
    pub envelopes: &'static [&'static str],
    /// Where the format comes from.
    pub source: &'static str,
    /// How sure it is.
    pub basis: Basis,
}

impl CardFormat {
    /// The base to cut, width × height as the closed card stands.
    pub fn base(&self) -> Size {
        match self.fold {
            FoldedEdge::Side => Size::new(self.face.width * 2, self.face.height),
            FoldedEdge::Top => Size::new(self.face.width, self.face.height * 2),
        }
    }

    /// Where to score: from the left of the base for a side fold, from its top for a top fold.
    pub fn score_at(&self) -> Length {
        match self.fold {
            FoldedEdge::Side => self.face.width,
            FoldedEdge::Top => self.face.height,
        }
    }

    /// The mat: the face less the usual border all round.
    pub fn mat(&self) -> Size {
        self.face.inset(usual_border(self.unit))
    }

    /// The panel: the mat less the usual border all round.
    pub fn panel(&self) -> Size {
        self.mat().inset(usual_border(self.unit))
    }
}

/// The border of a layer on the one below: 1/8 in or 3 mm on every side.
///
/// # Source
/// Common practice.
pub const fn usual_border(unit: Unit) -> Length {
    match unit {
        Unit::Inch => Unit::Inch.thousandths(125),
        Unit::Millimetre => Length::mm(3),
    }
}

/// The format called `name`, whatever its case, spaces or hyphens.
pub fn format(name: &str) -> Option<&'static CardFormat> {
    let wanted = plain(name);
    FORMATS.iter().find(|row| plain(row.name) == wanted)
}

/// Every format of the table.
pub fn formats() -> impl Iterator<Item = &'static CardFormat> {
    FORMATS.iter()
}

/// The formats with that finished size, upright or lying.
pub fn formats_of(face: Size) -> impl Iterator<Item = &'static CardFormat> {
    FORMATS.iter().filter(move |row| row.face.short_first() == face.short_first())
}

const PRACTICE: &str = "common practice";

/// A row in thousandths of its unit.
const fn row(
    name: &'static str,
    unit: Unit,
    face: [i64; 2],
    fold: FoldedEdge,
    envelopes: &'static [&'static str],
) -> CardFormat {
    let face = Size::new(unit.thousandths(face[0]), unit.thousandths(face[1]));
    CardFormat { name, unit, face, fold, envelopes, source: PRACTICE, basis: Basis::CommonPractice }
}

#[rustfmt::skip]
static FORMATS: [CardFormat; 24] = {
    use FoldedEdge::{Side, Top};
    use Unit::{Inch, Millimetre};
    [
        row("quarter-sheet, side fold", Inch, [4_250, 5_500], Side, &["A2", "5 1/2-bar"]),
        row("quarter-sheet, tent fold", Inch, [4_250, 5_500], Top, &["A2", "5 1/2-bar"]),
        row("5 x 7, side fold", Inch, [5_000, 7_000], Side, &["A7", "Lee", "A7.5"]),
        row("5 x 7, tent fold", Inch, [5_000, 7_000], Top, &["A7", "Lee", "A7.5"]),
        row("3.5 x 5, side fold", Inch, [3_500, 5_000], Side, &["5-bar", "A1"]),
        row("3.5 x 5, tent fold", Inch, [3_500, 5_000], Top, &["5-bar", "A1"]),
        row("4.5 x 6.25", Inch, [4_500, 6_250], Side, &["A6", "6-bar"]),
        row("4.5 x 6.25, tent fold", Inch, [4_500, 6_250], Top, &["A6", "6-bar"]),
        row("half-sheet", Inch, [5_500, 8_500], Side, &["A9"]),
        row("slim", Inch, [3_500, 8_500], Side, &["slimline (A long)", "No. 10"]),
        row("square 4.25", Inch, [4_250, 4_250], Side, &["square 5"]),
        row("square 5.25", Inch, [5_250, 5_250], Side, &["square 5.5"]),
        row("square 5.75", Inch, [5_750, 5_750], Side, &["square 6"]),
        row("A6, side fold", Millimetre, [105_000, 148_000], Side, &["C6"]),
        row("A6, tent fold", Millimetre, [105_000, 148_000], Top, &["C6"]),
        row("A6, side fold from half an A4", Millimetre, [105_000, 148_500], Side, &["C6"]),
        row("A5", Millimetre, [148_000, 210_000], Side, &["C5"]),
        row("A5 from A4", Millimetre, [148_500, 210_000], Side, &["C5"]),
        row("DL slim", Millimetre, [99_000, 210_000], Side, &["DL", "C6/C5"]),
        row("square 148", Millimetre, [148_000, 148_000], Side, &["square 155"]),
        row("square 148, tent fold", Millimetre, [148_000, 148_000], Top, &["square 155"]),
        row("square 144", Millimetre, [144_000, 144_000], Side, &["square 155"]),
        row("127 x 178", Millimetre, [127_000, 178_000], Side, &["133 x 184"]),
        row("127 x 178, tent fold", Millimetre, [127_000, 178_000], Top, &["133 x 184"]),
    ]
};
