//! Editions of the pages: for which paper, which eyes, which hand, which rule, in which language.
//!
//! The plan is the same in all of them; so are the pieces. Left out on purpose: re-planning in another unit, which
//! gives other pieces.

use cards::Plan;
use measure::{Length, Size, Unit};
use words::Language;

/// The page that is printed on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Paper {
    /// 8 1/2 × 11 in.
    Letter,
    /// 210 × 297 mm.
    A4,
}

impl Paper {
    /// The page of a maker who thinks in that unit.
    pub const fn usual(unit: Unit) -> Paper {
        match unit {
            Unit::Inch => Paper::Letter,
            Unit::Millimetre => Paper::A4,
        }
    }

    /// Its size, upright.
    pub const fn size(self) -> Size {
        match self {
            Paper::Letter => Size::new(
                Length::from_ticks(Length::INCH.ticks() / 2 * 17),
                Length::from_ticks(Length::INCH.ticks() * 11),
            ),
            Paper::A4 => Size::new(Length::mm(210), Length::mm(297)),
        }
    }
}

/// How large the words are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Print {
    /// Words of 11 to 13 points.
    Normal,
    /// No words below 18 points, left aligned, margins of an inch, lines of at most 6 in, fractions in words too.
    ///
    /// # Source
    /// The large-print figures of common practice: 18 pt, 1.25 to 1.5 spacing, no italics.
    Large,
}

/// The hand that moves the blade; the stop of the trimmer is on the other side.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Hand {
    /// The right hand; the stop is at the left.
    Right,
    /// The left hand; the stop is at the right.
    Left,
}

/// One edition of the pages.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Edition {
    /// The page.
    pub paper: Paper,
    /// How large the words are.
    pub print: Print,
    /// Which hand cuts.
    pub hand: Hand,
    /// The unit measures are told in; what is not exact in it says so.
    pub unit: Unit,
    /// The language of its words.
    pub language: Language,
}

impl Edition {
    /// The edition nobody asked for otherwise: normal print, right hand, the maker's own unit,
    /// the language spoken now.
    pub fn plain(plan: &Plan, paper: Paper) -> Edition {
        let language = words::spoken();
        Edition { paper, print: Print::Normal, hand: Hand::Right, unit: plan.project.unit, language }
    }
}
