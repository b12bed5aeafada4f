//! One exact integer length.

use std::iter::Sum;
use std::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

/// An exact length in whole ticks: 1 mm = 720 000 ticks, 1 in = 18 288 000 ticks.
///
/// # Source
/// 1 in = 25.4 mm exactly: international yard and pound agreement, 1959.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Length(i64);

impl Length {
    /// No length at all.
    pub const ZERO: Length = Length(0);
    /// One inch.
    pub const INCH: Length = Length(18_288_000);
    /// One millimetre.
    pub const MM: Length = Length(720_000);
    /// One PDF point, 1/72 in.
    pub const POINT: Length = Length(254_000);

    /// The length of so many ticks.
    pub const fn from_ticks(ticks: i64) -> Length {
        Length(ticks)
    }

    /// `numerator / denominator` inches; `None` if that is not a whole number of ticks.
    pub const fn inches(numerator: i64, denominator: i64) -> Option<Length> {
        let ticks = Self::INCH.0 * numerator;
        if denominator == 0 || ticks % denominator != 0 {
            return None;
        }
        Some(Length(ticks / denominator))
    }

    /// So many whole millimetres.
    pub const fn mm(millimetres: i64) -> Length {
        Length(Self::MM.0 * millimetres)
    }

    /// The ticks of this length.
    pub const fn ticks(self) -> i64 {
        self.0
    }

    /// Inches as a float, for drawing only.
    #[allow(clippy::cast_precision_loss, reason = "drawing leaves exactness here, once")]
    pub fn to_inches(self) -> f64 {
        self.0 as f64 / Self::INCH.0 as f64
    }

    /// Millimetres as a float, for drawing only.
    #[allow(clippy::cast_precision_loss, reason = "drawing leaves exactness here, once")]
    pub fn to_mm(self) -> f64 {
        self.0 as f64 / Self::MM.0 as f64
    }

    /// PDF points as a float, for drawing only.
    #[allow(clippy::cast_precision_loss, reason = "drawing leaves exactness here, once")]
    pub fn to_points(self) -> f64 {
        self.0 as f64 / Self::POINT.0 as f64
    }
}

impl Add for Length {
    type Output = Length;
    fn add(self, other: Length) -> Length {
        Length(self.0 + other.0)
    }
}

impl AddAssign for Length {
    fn add_assign(&mut self, other: Length) {
        self.0 += other.0;
    }
}

impl Sub for Length {
    type Output = Length;
    fn sub(self, other: Length) -> Length {
        Length(self.0 - other.0)
    }
}

impl SubAssign for Length {
    fn sub_assign(&mut self, other: Length) {
        self.0 -= other.0;
    }
}

impl Neg for Length {
    type Output = Length;
    fn neg(self) -> Length {
        Length(-self.0)
    }
}

impl Mul<i64> for Length {
    type Output = Length;
    fn mul(self, times: i64) -> Length {
        Length(self.0 * times)
    }
}

impl Sum for Length {
    fn sum<I: Iterator<Item = Length>>(lengths: I) -> Length {
        lengths.fold(Length::ZERO, Add::add)
    }
}
