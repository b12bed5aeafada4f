//! Everything about straight cuts that run edge to edge of the piece in hand.
//!
//! All sizes inside this room are whole grid *steps* (`u32`); the caller knows what one step
//! measures. x runs right, y runs **down**, the origin is the sheet's top left corner.
//!
//! Left out on purpose: cards, money, why a piece exists, wall-clock time.

pub mod budget;
pub mod fixed;
pub mod flexible;
pub mod grade;
pub mod placing;
pub mod replay;
pub mod steps;
pub mod tolerance;
pub mod tree;
pub mod verify;

pub use budget::{Budget, Exhausted, Progress};
pub use grade::Outcome;
pub use tree::{Axis, Placed, Tree};
