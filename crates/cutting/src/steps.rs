//! From a cut tree to what a person does at the trimmer.
//!
//! | offers | cost | when |
//! |---|---|---|
//! | [`effort()`] | microseconds | a search wants to know how much work a tree is |
//! | [`tidy`] | milliseconds | the parts of a row may change places: equal ones come together, the rest last |
//! | [`steps`] | milliseconds | the cuts of one tree, as data a page can word and [`crate::replay`] can check |
//!
//! How the order of cuts is found: cuts of one direction form a row, from which parts are taken at
//! either end until one, the *rest*, remains unmeasured. Wherever the stop stands, every cut it
//! allows is made (doing one more can never hurt a later one), so an order is just a
//! sequence of distances; the shortest is found by a best-first search over what is still uncut,
//! exact up to a fixed number of nodes and greedy beyond ([`CutPlan::fewest`] says which).
//!
//! Leaves out: words, units, and where on a print the cuts fall.

mod effort;
mod make;
mod plan;
mod schedule;

pub use effort::{Effort, effort};
pub use make::{Job, StepsError, steps, tidy};
pub use plan::{
    Caution, CutPlan, CutStep, End, Fate, Fold, Limits, Part, PartId, Rect, ScoreStep, Step, Tally, Trims, Turn, Up,
    Work,
};
