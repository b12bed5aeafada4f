//! What is answered: cut sheets, their value, a proven bound and a grade.

use crate::{Outcome, Tree};

/// Sheets that are all cut the same way.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CutSheet {
    /// Index of the sheet kind.
    pub sheet: usize,
    /// How one of them is cut; leaves name piece kinds of the instance.
    pub tree: Tree,
    /// How many are cut so, at least 1.
    pub times: u32,
}

/// Why no answer exists.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Why {
    /// A piece that is wanted fits no sheet, turned or not.
    FitsNoSheet {
        /// Index of the piece kind.
        piece: usize,
    },
    /// The pieces have more area than all the sheets there are.
    TooLittleArea {
        /// Area of the wanted pieces, in square steps.
        wanted: u128,
        /// Area of all sheets, in square steps.
        there: u128,
    },
    /// The sheets there are cannot give all pieces by straight cuts, though their area might do.
    TooFewSheets,
    /// The pieces that must appear cannot be cut from one sheet.
    MinimumDoesNotFit,
}

/// The answer to an [`Instance`](super::Instance).
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answer {
    /// How good it is.
    pub outcome: Outcome<Why>,
    /// Least cost: what the sheets cost. Most value: what the pieces are worth. 0 where there is no answer.
    pub value: u64,
    /// Proven: no answer costs less, or is worth more, than this.
    pub bound: u64,
    /// The sheets, largest number of equal ones first; empty where there is no answer.
    pub sheets: Vec<CutSheet>,
    /// Nodes this search spent.
    pub nodes: u64,
}

impl Answer {
    /// No answer, with the reason.
    pub(super) fn impossible(why: Why, nodes: u64) -> Answer {
        Answer { outcome: Outcome::Impossible { why }, value: 0, bound: 0, sheets: Vec::new(), nodes }
    }

    /// No answer yet; `bound` holds all the same.
    pub(super) fn unfinished(bound: u64, nodes: u64) -> Answer {
        Answer { outcome: Outcome::Unfinished, value: 0, bound, sheets: Vec::new(), nodes }
    }

    /// A least-cost answer with a proven bound: `Proven` exactly when the two meet.
    pub(super) fn cost(value: u64, bound: u64, sheets: Vec<CutSheet>) -> Answer {
        debug_assert!(bound <= value, "least cost {value} below its bound {bound}");
        Answer::found(value, bound, sheets)
    }

    /// A most-value answer with a proven bound: `Proven` exactly when the two meet.
    pub(super) fn worth(value: u64, bound: u64, sheets: Vec<CutSheet>) -> Answer {
        debug_assert!(bound >= value, "most value {value} above its bound {bound}");
        Answer::found(value, bound, sheets)
    }

    fn found(value: u64, bound: u64, sheets: Vec<CutSheet>) -> Answer {
        let outcome = if value == bound { Outcome::Proven } else { Outcome::Best { bound } };
        Answer { outcome, value, bound, sheets, nodes: 0 }
    }
}
