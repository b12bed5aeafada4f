//! Where the branches of a tree lie, so that a print is cut at its best places.
//!
//! The parts of every row may lie in any order, and pieces of one size may change places, without another setting or cut.
//! Of all these orders [`place`] chooses the one whose pieces show most of what matters on the prints that are cut:
//!
//! | first | keep-whole regions that lie inside one piece (of the right kind), with nothing over them |
//! |---|---|
//! | then | as few cells as can be of regions to avoid |
//! | then | as many pictures ([`Motif`]) as can be whole in one piece, with nothing over them |
//! | then | what shows of pictures that lie in one piece, by their weight and area, and the weight of all cells that show |
//!
//! Several prints cut alike are one question: what is best over their sum. It is answered exactly, by dynamic programming
//! over (branch, place), within the budget; beyond it by improving the plain order, with a proven bound. Left out: what a
//! print looks like, and which tree is cut.

mod improve;
mod orders;
mod worth;

use std::convert::Infallible;

use crate::budget::Budget;
use crate::grade::Outcome;
use crate::tree::{Tree, TreeError, pieces, rows};

use worth::{Leaf, Worth};
pub use worth::{Tally, tally};

/// A rectangle of cells on the sheet, or on a piece as it lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Area {
    /// First column.
    pub left: u32,
    /// First row.
    pub top: u32,
    /// Column after the last.
    pub right: u32,
    /// Row after the last.
    pub bottom: u32,
}

/// A picture on a print, by its box.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Motif {
    /// Its box.
    pub area: Area,
    /// What each of its cells is worth while it is whole, up to 1 000 000.
    pub weight: u32,
}

/// A region that must lie inside one piece, with nothing over it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Keep {
    /// Where.
    pub area: Area,
    /// The kinds of piece that may show it; empty: any.
    pub kinds: Vec<usize>,
}

/// What matters on one print.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Print {
    /// What each cell is worth if it shows, up to 1 000 000, row by row; empty: nothing.
    pub weights: Vec<u32>,
    /// Its pictures.
    pub motifs: Vec<Motif>,
    /// Regions to keep whole.
    pub keep: Vec<Keep>,
    /// Regions that should not show.
    pub avoid: Vec<Area>,
    /// How many sheets of it are cut, up to 1 000 000.
    pub times: u32,
}

/// What other layers hide of every piece of one kind and size.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cover {
    /// Index of the kind.
    pub kind: usize,
    /// Width as it lies.
    pub width: u32,
    /// Height as it lies.
    pub height: u32,
    /// True if it lies a quarter turn from the way its kind is written.
    pub turned: bool,
    /// What is hidden, from the piece's own top left corner as it lies; areas may overlap.
    pub areas: Vec<Area>,
}

/// One question.
#[derive(Debug, Clone, Copy)]
pub struct Ask<'a> {
    /// The plain layout.
    pub tree: &'a Tree,
    /// The sheet's width.
    pub width: u32,
    /// The sheet's height.
    pub height: u32,
    /// The prints that are cut by it.
    pub prints: &'a [Print],
    /// What is hidden of pieces; a piece that is not listed shows whole.
    pub covers: &'a [Cover],
    /// The distances at which the stop stands, in order, for the plain layout: only orders that can be cut by the same are
    /// looked at. `None`: all orders, where the stop may have to move more often.
    pub stops: Option<&'a [u32]>,
}

/// How good an order is: the first field counts first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Score {
    /// Regions to keep that are kept, over all sheets.
    pub kept: i64,
    /// Cells to avoid that show, over all sheets, as a negative number.
    pub spared: i64,
    /// Pictures that lie whole in one piece with nothing over them, over all sheets.
    pub whole: i64,
    /// Worth of whole pictures and of cells that show, over all sheets.
    pub worth: i64,
}

impl std::ops::Add for Score {
    type Output = Score;
    fn add(self, other: Score) -> Score {
        Score {
            kept: self.kept.saturating_add(other.kept),
            spared: self.spared.saturating_add(other.spared),
            whole: self.whole.saturating_add(other.whole),
            worth: self.worth.saturating_add(other.worth),
        }
    }
}

/// The answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Placing {
    /// The tree with its branches where they lie best; the plain tree itself where no order is better.
    pub tree: Tree,
    /// How good it is.
    pub score: Score,
    /// How good the plain tree is.
    pub plain: Score,
    /// No order whose rows have their waste in one part is better than this, nor is the plain tree.
    pub bound: Score,
    /// [`Outcome::Proven`] if an order with its waste in one part reaches the bound; else [`Outcome::Best`] with the bound's
    /// worth.
    pub outcome: Outcome<Infallible>,
}

/// Why nothing can be said.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum PlacingError {
    /// The tree does not fit its sheet.
    #[error(transparent)]
    Tree(#[from] TreeError),
    /// The sheet has more cells than are looked at.
    #[error("a sheet of {width} by {height} cells is larger than {MOST_CELLS} cells")]
    TooLarge {
        /// Its width.
        width: u32,
        /// Its height.
        height: u32,
    },
    /// A print with another number of weights than the sheet has cells.
    #[error("{weights} weights for {cells} cells")]
    Weights {
        /// How many there are.
        weights: usize,
        /// How many there should be.
        cells: usize,
    },
}

/// Most cells of a sheet. `Chosen:` 24 in square in marks of 1/64.
pub const MOST_CELLS: u64 = 1_536 * 1_536;

/// The best order of a tree's branches.
///
/// # Shape
/// Exact over all orders of all rows (with [`Ask::stops`], over those that the stops allow) while the budget lasts, and over
/// changes of place between pieces of one size if the bound is reached; [`Placing::outcome`] says so. The same question and
/// budget give the same answer. Every row's waste becomes one part; a plain tree with waste on both sides of a piece may be
/// better than all such orders, and is then the answer.
///
/// # Errors
/// [`PlacingError::Tree`] if the tree does not fit, [`PlacingError::TooLarge`] past [`MOST_CELLS`],
/// [`PlacingError::Weights`] if a print's grid is not the sheet's.
///
/// # Examples
/// ```
/// use cutting::placing::{Area, Ask, Motif, Print, place};
/// use cutting::{Axis, Budget, Tree};
///
/// // A picture lies from 2 to 6, where the plain layout cuts at 3: the wide piece goes to the left.
/// let piece = |kind, width| Box::new(Tree::Piece { kind, width, height: 4, turned: false });
/// let tree = Tree::Cut { axis: Axis::X, at: 3, first: piece(0, 3), second: piece(1, 6) };
/// let area = Area { left: 2, top: 0, right: 6, bottom: 4 };
/// let prints = [Print { motifs: vec![Motif { area, weight: 10 }], times: 1, ..Print::default() }];
/// let ask = Ask { tree: &tree, width: 9, height: 4, prints: &prints, covers: &[], stops: None };
/// let placing = place(&ask, &mut Budget::nodes(1000))?;
/// assert_eq!(placing.tree, Tree::Cut { axis: Axis::X, at: 6, first: piece(1, 6), second: piece(0, 3) });
/// # Ok::<(), cutting::placing::PlacingError>(())
/// ```
pub fn place(ask: &Ask<'_>, budget: &mut Budget<'_>) -> Result<Placing, PlacingError> {
    let worth = Worth::of(ask)?;
    let plain = score_of(&worth, ask, ask.tree)?;
    let (tree, bound) = match orders::best(ask, &worth, budget) {
        Some((tree, bound)) => (tree, bound),
        None => (improve::climb(ask, &worth, budget)?, worth.bound(&pieces(ask.tree, ask.width, ask.height)?)),
    };
    let score = score_of(&worth, ask, &tree)?;
    let proven = score.max(plain) == bound.max(score);
    // The plain tree may have waste in several parts, which none of the orders has.
    let bound = bound.max(score).max(plain);
    let outcome =
        if proven { Outcome::Proven } else { Outcome::Best { bound: u64::try_from(bound.worth).unwrap_or(0) } };
    if score > plain {
        Ok(Placing { tree, score, plain, bound, outcome })
    } else {
        Ok(Placing { tree: ask.tree.clone(), score: plain, plain, bound, outcome })
    }
}

/// How good a tree is as it lies.
///
/// # Errors
/// As [`place`]; the tree of the question is not looked at.
pub fn score(ask: &Ask<'_>, tree: &Tree) -> Result<Score, PlacingError> {
    score_of(&Worth::of(ask)?, ask, tree)
}

fn score_of(worth: &Worth, ask: &Ask<'_>, tree: &Tree) -> Result<Score, PlacingError> {
    let placed = pieces(tree, ask.width, ask.height)?;
    Ok(placed.iter().fold(Score::default(), |sum, piece| sum + worth.leaf(Leaf::of(piece), piece.x, piece.y)))
}

/// True if the rows of a tree can be cut, in the order they have, while the stop stands at these distances one after the
/// other.
///
/// # Errors
/// As [`crate::tree::pieces`].
pub fn follows(tree: &Tree, width: u32, height: u32, stops: &[u32]) -> Result<bool, TreeError> {
    Ok(improve::follows(&rows(tree, width, height)?, stops))
}
