//! A scene of resolved marks at true size, its writers, and the sheets made of it.
//!
//! | From | To | By |
//! |---|---|---|
//! | words | shaped, measured lines | [`text`] |
//! | [`scene::Scene`] | a page of a browser, a cutter, an editor | [`svg::write`] |
//! | scenes | one tagged PDF | [`pdf::write`] |
//! | [`scene::Scene`] | pixels | [`png::write`] |
//! | scenes | their words as text | [`markdown::write`] |
//!
//! Everything is placed in exact [`measure::Length`]s; decimals appear only inside the writers. Left
//! out on purpose: browsers, files, how a plan was found, and reading image files: pictures are handed
//! in as pixels.

pub mod markdown;
pub mod pdf;
pub mod picture;
pub mod png;
pub mod prints;
pub mod scene;
pub mod sheets;
pub mod svg;
pub mod text;

pub use picture::Picture;
pub use scene::{Color, Mark, Point, Role, Scene};
