//! Roundings by name, each with its tie stated; no rounding happens anywhere else in the house.
//!
//! | name | goes | for |
//! |---|---|---|
//! | [`nearest`] | to the nearest step, ties away from zero | writing a length on a rule |
//! | [`floor`] | down, towards minus infinity | what still fits |
//! | [`ceiling`] | up, towards plus infinity | what is surely enough |
//!
//! Left out on purpose: rounding of money, of floats.

use crate::Length;

/// The whole step nearest to `length`; a tie goes to the step further from zero.
///
/// # Panics
/// If `step` is not above zero, or the answer leaves the range of a length (about 12 800 km).
pub fn nearest(length: Length, step: Length) -> Length {
    let ticks = i128::from(length.ticks());
    let size = i128::from(checked_step(step));
    let steps = (2 * ticks.abs() + size).div_euclid(2 * size) * ticks.signum();
    from_i128(steps * size)
}

/// The greatest whole step not above `length`.
///
/// # Panics
/// As [`nearest`].
pub fn floor(length: Length, step: Length) -> Length {
    let size = i128::from(checked_step(step));
    from_i128(i128::from(length.ticks()).div_euclid(size) * size)
}

/// The smallest whole step not below `length`.
///
/// # Panics
/// As [`nearest`].
pub fn ceiling(length: Length, step: Length) -> Length {
    let size = i128::from(checked_step(step));
    from_i128(-(-i128::from(length.ticks())).div_euclid(size) * size)
}

fn checked_step(step: Length) -> i64 {
    assert!(step > Length::ZERO, "a step is above zero");
    step.ticks()
}

fn from_i128(ticks: i128) -> Length {
    Length::from_ticks(i64::try_from(ticks).expect("a rounded length stays within 12 800 km"))
}
