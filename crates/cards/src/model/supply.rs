//! What is used up beside paper, cardstock and ribbon.

use measure::{Length, Unit};

use super::Price;

/// Double-sided tape on a roll.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tape {
    /// The maker's name for it.
    pub name: String,
    /// Length on one roll, if told.
    pub roll: Option<Length>,
    /// Price of a roll.
    pub price: Option<Price>,
    /// A layer at least so long on its shorter side takes two lines of tape, a narrower one takes one.
    pub two_lines_from: Length,
}

impl Tape {
    /// From where a layer takes two lines if the maker does not say: 2 in, or 50 mm.
    ///
    /// # Source
    /// Chosen: a band of a card is narrower, a mat wider.
    pub const fn usual_two_lines_from(unit: Unit) -> Length {
        match unit {
            Unit::Inch => Unit::Inch.thousandths(2_000),
            Unit::Millimetre => Length::mm(50),
        }
    }
}

/// Something bought by the pack, or used so many times before it is bought again.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Supply {
    /// The maker's name for it.
    pub name: String,
    /// Pieces in a pack, or uses of it; never 0.
    pub lasts: u32,
    /// Price of a pack, or of the thing.
    pub price: Option<Price>,
}

/// Small supplies; one that is not told of is not counted and costs nothing.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Supplies {
    /// Tape that holds the layers.
    pub tape: Option<Tape>,
    /// Foam squares.
    pub foam: Option<Supply>,
    /// Envelopes, one for each card.
    pub envelopes: Option<Supply>,
    /// Ink pad: one use is one impression.
    pub ink_pad: Option<Supply>,
    /// Stamps: one use is one impression.
    pub stamps: Option<Supply>,
}
