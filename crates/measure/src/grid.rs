//! Lengths as whole steps of a mark: the grid the engines count on.
//!
//! | name | what does not fall on a step |
//! |---|---|
//! | [`steps_exact`] | is refused |
//! | [`steps_floor`] | goes down to the step before |
//! | [`from_steps`] | cannot occur |
//!
//! Left out on purpose: rounding up (a piece may never be larger than what there is).

use crate::Length;

/// So many whole steps as make up `length`; `None` if it is not a whole number of them, below zero, or over `u32::MAX`.
///
/// # Examples
/// ```
/// # use measure::{Mark, Length, steps_exact};
/// assert_eq!(steps_exact(Length::INCH, Mark::EighthInch.step()), Some(8));
/// assert_eq!(steps_exact(Length::MM, Mark::EighthInch.step()), None);
/// ```
pub fn steps_exact(length: Length, step: Length) -> Option<u32> {
    let steps = steps_floor(length, step)?;
    (from_steps(steps, step) == length).then_some(steps)
}

/// The most whole steps that fit into `length`; `None` if it is below zero, the step not above it, or over `u32::MAX`.
pub fn steps_floor(length: Length, step: Length) -> Option<u32> {
    if step <= Length::ZERO || length < Length::ZERO {
        return None;
    }
    u32::try_from(length.ticks() / step.ticks()).ok()
}

/// The length of so many steps.
///
/// # Panics
/// If the length leaves 12 800 km; steps counted from a length never do.
pub fn from_steps(steps: u32, step: Length) -> Length {
    step * i64::from(steps)
}
