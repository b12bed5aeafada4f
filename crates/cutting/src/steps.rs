//! From a cut tree to what a person does at the trimmer.
//!
//! Offers [`effort()`], a fast count of settings and cuts that searches use as a wish.

mod effort;

pub use effort::{Effort, effort};
