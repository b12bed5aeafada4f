//! Exact lengths: ticks, inch fractions, millimetres, sizes and rectangles.
//!
//! Left out on purpose: paper, prices, floats as the truth, screen pixels.

mod format;
mod length;
mod parse;
pub mod round;
mod serial;
mod size;
mod unit;

pub use format::{FractionStyle, MarkParts, UnitSign, Written, write, write_as, write_exact, write_exact_in};
pub use length::Length;
pub use parse::{LONGEST, ParseLengthError, ParseSizeError, parse_length, parse_signed, parse_size};
pub use size::{Rect, Size};
pub use unit::{Mark, Unit};
