//! The workroom: the commands, and the rim where files, pictures, clocks and words meet the other rooms.
//!
//! Left out on purpose: arithmetic of its own. It asks, words the answer, and writes it whole or not at all.

mod backgrounds;
pub mod cli;
mod colors;
mod labels;
pub mod make;
pub mod outputs;
mod panels;
pub mod pictures;
mod references;
pub mod solve;
pub mod spoiled;
mod squaring;
mod stamps;
mod trade;
pub mod web;
pub mod wording;
