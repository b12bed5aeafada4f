//! A background stamped by hand: which stamps, how they are set out, what was moved or locked by hand.

use measure::{Length, Size};
use scatter::{Arrangement, EdgeRule, Outline, Placement, Turning};

/// Paper that the maker stamps herself.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Background {
    /// The maker's name for it; unique in the project.
    pub name: String,
    /// The sheet that is stamped.
    pub sheet: Size,
    /// Colour of the blank paper, `#rrggbb`.
    pub paper: String,
    /// The same seed gives the same sheet.
    pub seed: u32,
    /// How the impressions are set out.
    pub arrangement: Arrangement,
    /// Least distance between the ink of two impressions.
    pub gap: Length,
    /// What happens at the edges.
    pub edge: EdgeRule,
    /// How many impressions; `None` for as many as go on.
    pub count: Option<u32>,
    /// How much of the sheet is to be ink, in percent; only where no number is wished.
    pub density: Option<u32>,
    /// The stamps; at least one.
    pub motifs: Vec<Motif>,
    /// Impressions that stay where they are, whatever else changes.
    pub locked: Vec<Placement>,
    /// Where all others stand, once one was moved by hand; empty: set out by the seed.
    pub stands: Vec<Placement>,
    /// Markers the maker has, for colouring in.
    pub markers: Vec<Marker>,
}

/// A marker on the shelf.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Marker {
    /// The maker's name for it.
    pub name: String,
    /// `#rrggbb`.
    pub color: String,
}

/// One stamp of a background.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Motif {
    /// The maker's name for it; unique in its background.
    pub name: String,
    /// What it leaves.
    pub shape: MotifShape,
    /// The longer side of its ink.
    pub size: Length,
    /// How many of it for every one of the others; 0 leaves it out.
    pub share: u32,
    /// How it may be turned.
    pub turning: Turning,
    /// Colour of its ink, `#rrggbb`.
    pub ink: String,
    /// The colour it is coloured in with, `#rrggbb`, if it is.
    pub fill: Option<String>,
    /// Impressions made with one inking: the second is paler.
    pub per_inking: u32,
}

/// What a stamp leaves on the paper.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum MotifShape {
    /// One of the shapes that Octavo draws, by its name.
    Drawn(String),
    /// Corners in thousandths of any unit, x right, y down; scaled to the stamp's size.
    Corners(Vec<(i64, i64)>),
    /// A PNG, JPEG or WebP beside the project file, and the outline of its ink once the rim has traced it.
    Picture(String, Option<Outline>),
}
