//! Exact lengths: ticks, inch fractions, millimetres, sizes and rectangles.
//!
//! Left out on purpose: paper, prices, floats as the truth, screen pixels.

mod length;
mod size;

pub use length::Length;
pub use size::{Rect, Size};
