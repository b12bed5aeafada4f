//! The two units a maker writes, and the marks of the rule she cuts by.

use crate::{Length, round};

/// A unit a length can be written in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Unit {
    /// Inches, written as fractions.
    Inch,
    /// Millimetres, written as decimals.
    Millimetre,
}

impl Unit {
    /// One of this unit.
    pub const fn length(self) -> Length {
        match self {
            Unit::Inch => Length::INCH,
            Unit::Millimetre => Length::MM,
        }
    }

    /// So many thousandths of this unit: 3.625 in and 148.5 mm without a float.
    pub const fn thousandths(self, count: i64) -> Length {
        Length::from_ticks(self.length().ticks() / 1000 * count)
    }

    /// The sign written after a number: `in` or `mm`.
    pub const fn sign(self) -> &'static str {
        match self {
            Unit::Inch => "in",
            Unit::Millimetre => "mm",
        }
    }

    /// The finest mark we write in this unit: 1/128 in or 0.01 mm.
    pub const fn finest(self) -> Length {
        match self {
            Unit::Inch => Length::from_ticks(Length::INCH.ticks() / 128),
            Unit::Millimetre => Length::from_ticks(Length::MM.ticks() / 100),
        }
    }
}

/// The finest division a maker reads on her rule or trimmer.
///
/// # Source
/// Trimmers 1/16 in, scoring boards 1/8 in, rulers 1/32 or 1/64 in, metric rules whole or half millimetres: common practice.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Mark {
    /// 1/2 in.
    HalfInch,
    /// 1/4 in.
    QuarterInch,
    /// 1/8 in.
    EighthInch,
    /// 1/16 in.
    SixteenthInch,
    /// 1/32 in.
    ThirtySecondInch,
    /// 1/64 in.
    SixtyFourthInch,
    /// 1/128 in.
    HundredTwentyEighthInch,
    /// 1 mm.
    WholeMillimetre,
    /// 0.5 mm.
    HalfMillimetre,
    /// 0.1 mm.
    TenthMillimetre,
}

impl Mark {
    /// The mark of a maker who names none: 1/8 in, or 1 mm.
    pub const fn usual(unit: Unit) -> Mark {
        match unit {
            Unit::Inch => Mark::EighthInch,
            Unit::Millimetre => Mark::WholeMillimetre,
        }
    }

    /// Every mark, coarse to fine within its unit.
    pub const ALL: [Mark; 10] = [
        Mark::HalfInch,
        Mark::QuarterInch,
        Mark::EighthInch,
        Mark::SixteenthInch,
        Mark::ThirtySecondInch,
        Mark::SixtyFourthInch,
        Mark::HundredTwentyEighthInch,
        Mark::WholeMillimetre,
        Mark::HalfMillimetre,
        Mark::TenthMillimetre,
    ];

    /// The mark that divides one `unit` into `parts`; `None` if no rule here is so divided.
    ///
    /// # Examples
    /// ```
    /// # use measure::{Mark, Unit};
    /// assert_eq!(Mark::new(Unit::Inch, 8), Some(Mark::EighthInch));
    /// assert_eq!(Mark::new(Unit::Inch, 10), None);
    /// ```
    pub fn new(unit: Unit, parts: i64) -> Option<Mark> {
        Mark::ALL.into_iter().find(|mark| mark.unit() == unit && mark.parts() == parts)
    }

    /// The mark whose step is exactly this length.
    pub fn from_step(step: Length) -> Option<Mark> {
        Mark::ALL.into_iter().find(|mark| mark.step() == step)
    }

    /// The unit the rule is divided in.
    pub const fn unit(self) -> Unit {
        match self {
            Mark::WholeMillimetre | Mark::HalfMillimetre | Mark::TenthMillimetre => Unit::Millimetre,
            _ => Unit::Inch,
        }
    }

    /// Into how many parts the unit is divided.
    pub const fn parts(self) -> i64 {
        match self {
            Mark::WholeMillimetre => 1,
            Mark::HalfInch | Mark::HalfMillimetre => 2,
            Mark::QuarterInch => 4,
            Mark::EighthInch => 8,
            Mark::TenthMillimetre => 10,
            Mark::SixteenthInch => 16,
            Mark::ThirtySecondInch => 32,
            Mark::SixtyFourthInch => 64,
            Mark::HundredTwentyEighthInch => 128,
        }
    }

    /// From one mark to the next.
    pub const fn step(self) -> Length {
        Length::from_ticks(self.unit().length().ticks() / self.parts())
    }

    /// True if `length` lies exactly on a mark.
    pub const fn holds(self, length: Length) -> bool {
        length.ticks() % self.step().ticks() == 0
    }

    /// The mark nearest to `length`; a tie goes to the mark further from zero.
    pub fn nearest(self, length: Length) -> Length {
        round::nearest(length, self.step())
    }
}
