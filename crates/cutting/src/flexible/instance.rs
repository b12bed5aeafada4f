//! What is asked of the flexible engine, and what it answers.

use crate::steps::Effort;
use crate::{Outcome, Tree};

/// The smallest and the largest of something, both included.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Span {
    /// Smallest.
    pub least: u32,
    /// Largest.
    pub most: u32,
}

impl Span {
    /// From `least` to `most`, both included.
    pub const fn new(least: u32, most: u32) -> Span {
        Span { least, most }
    }

    /// Exactly this value.
    pub const fn exactly(value: u32) -> Span {
        Span { least: value, most: value }
    }

    /// True if `value` lies in it.
    pub const fn holds(self, value: u32) -> bool {
        self.least <= value && value <= self.most
    }
}

/// One kind of piece.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kind {
    /// Widths that look right, in steps.
    pub width: Span,
    /// Heights that look right, in steps.
    pub height: Span,
    /// The size liked best: width, height.
    pub prefer: (u32, u32),
    /// Finished sides are multiples of this many steps.
    pub step: u32,
    /// True if it may lie a quarter turned. (A piece that may only turn half round does not need it:
    /// a half turn does not change a rectangle.)
    pub turn: bool,
    /// True: all copies have one size.
    pub uniform: bool,
}

/// What one card takes, and how many cards of it a sheet may give.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Recipe {
    /// Pieces of each kind for one card, one entry a kind.
    pub pieces: Vec<u32>,
    /// How many cards of it from one sheet.
    pub cards: Span,
}

/// A piece that must lie just here.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Pin {
    /// Index of its kind.
    pub kind: usize,
    /// Left edge.
    pub x: u32,
    /// Top edge.
    pub y: u32,
    /// Width as it lies.
    pub width: u32,
    /// Height as it lies.
    pub height: u32,
}

/// A wish by which layouts that waste equally little are put in order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Wish {
    /// Fewest different trimmer settings.
    Settings,
    /// Fewest cuts.
    Cuts,
    /// Sizes closest to the preferred ones (sum of side differences over all pieces, in steps).
    Preferred,
    /// Round fractions: sides that are multiples of larger powers of two of the step.
    Round,
    /// Variety: as many different recipes as can be.
    Variety,
}

impl Wish {
    /// The order the product uses.
    pub const ORDER: [Wish; 5] = [Wish::Settings, Wish::Cuts, Wish::Preferred, Wish::Round, Wish::Variety];
}

/// One question.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Instance {
    /// Width of the usable sheet, in steps.
    pub width: u32,
    /// Height of the usable sheet, in steps.
    pub height: u32,
    /// The kinds of pieces.
    pub kinds: Vec<Kind>,
    /// The recipes.
    pub recipes: Vec<Recipe>,
    /// Cards in all from one sheet.
    pub cards: Span,
    /// Spare pieces asked for, one entry a kind.
    pub spares: Vec<u32>,
    /// Pinned pieces.
    pub pins: Vec<Pin>,
    /// Wishes after least waste, in order.
    pub wishes: Vec<Wish>,
    /// How many layouts that really differ to answer with.
    pub alternatives: usize,
}

/// How many layouts exist.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Count {
    /// Exactly so many.
    Exactly(u64),
    /// At least so many.
    AtLeast(u64),
}

/// One layout.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Layout {
    /// Its cuts.
    pub tree: Tree,
    /// Cards of each recipe.
    pub cards: Vec<u32>,
    /// What is left over, in square steps.
    pub waste: u64,
    /// Settings and cuts.
    pub effort: Effort,
    /// Sum of side differences from the preferred sizes, over all pieces, in steps.
    pub off_preferred: u64,
    /// Other cuts that are as good in everything asked for: the same pieces, left over, wishes and settings. A few at most.
    pub equals: Vec<Tree>,
}

/// Why no layout exists.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Why {
    /// The bounds of the recipes allow no such number of cards.
    NoMix,
    /// The smallest pieces of every allowed mix together are larger than the sheet.
    TooMuchArea {
        /// Smallest area of the smallest mix.
        least: u64,
        /// Area of the sheet.
        sheet: u64,
    },
    /// A kind is larger than the sheet even at its smallest.
    PieceTooLarge {
        /// Index of the kind.
        kind: usize,
    },
    /// Every tree was looked at (or ruled out) and none fits.
    NoTree,
}

/// Why an instance cannot be asked.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Refusal {
    /// The sheet has no area, or a side above 65 535 steps.
    #[error("the sheet must have sides from 1 to 65535 steps")]
    Sheet,
    /// A kind's range is upside down, empty on its step, or has a zero side.
    #[error("kind {0} has no size on its step")]
    Kind(usize),
    /// A recipe's list of pieces is not one entry a kind.
    #[error("recipe {0} must name one number a kind")]
    Recipe(usize),
    /// A pin names no kind, lies outside the sheet, over another pin, or has a size its kind may not have.
    #[error("pin {0} cannot lie there")]
    Pin(usize),
    /// More kinds, or more pieces of one kind, than the engine counts.
    #[error("at most {kinds} kinds and {pieces} pieces of a kind")]
    TooMany {
        /// Most kinds.
        kinds: usize,
        /// Most pieces of one kind.
        pieces: u32,
    },
}

/// What the engine answers.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answer {
    /// How good the first layout is, by waste.
    pub outcome: Outcome<Why>,
    /// Layouts that really differ, best first.
    pub layouts: Vec<Layout>,
    /// How many layouts waste as little, counted by their sizes: two count as one where every piece has the
    /// same size in both, however the cuts are mirrored or re-ordered.
    pub exist: Count,
    /// Nodes spent.
    pub nodes: u64,
}
