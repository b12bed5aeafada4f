//! Exact lengths: ticks, inch fractions, millimetres, sizes and rectangles; marks, grids and roundings; named sizes.
//!
//! | module | offers |
//! |---|---|
//! | `length`, `size` | the values |
//! | `unit`, `parse`, `format`, `serial` | how they are written and read |
//! | [`round`], `grid` | the named roundings, whole steps of a mark |
//! | [`sheets`], [`envelopes`], [`formats`] | published and customary sizes, each row with its source |
//!
//! Left out on purpose: what a sheet is made of, prices, floats as the truth, screen pixels.

mod basis;
pub mod envelopes;
mod format;
pub mod formats;
mod grid;
mod length;
mod parse;
pub mod round;
mod serial;
pub mod sheets;
mod size;
mod unit;

pub use basis::Basis;
pub use envelopes::{EnvelopeSize, envelope};
pub use format::{FractionStyle, MarkParts, UnitSign, Written, write, write_as, write_exact, write_exact_in};
pub use formats::CardFormat;
pub use grid::{from_steps, steps_exact, steps_floor};
pub use length::Length;
pub use parse::{LONGEST, ParseLengthError, ParseSizeError, parse_length, parse_signed, parse_size};
pub use sheets::{NamedSize, sheet};
pub use size::{Rect, Size};
pub use unit::{Mark, Unit};
