//! To be written.

pub mod prints;
