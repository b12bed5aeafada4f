//! Why not? The smallest changes of a question that make it work.
//!
//! A change only ever allows more: a piece may turn, a range reaches further, a card fewer will do, the sheet is
//! another one. *Small* is, in this order:
//!
//! | change | smaller is | because |
//! |---|---|---|
//! | [`Change::Turn`] | fewer kinds let turn | the card keeps its looks |
//! | [`Change::Sizes`] | fewer steps in all, then fewer ranges | the card looks nearly the same |
//! | [`Change::FewerCards`] | fewer cards less | a card is lost |
//! | [`Change::Sheet`] | less area | other paper must be had |
//!
//! The smallest of each is looked for, so the maker can choose. A half turn is not listed: it does not change a
//! rectangle, so it never makes a layout work. Left out on purpose: changes of two sorts at once.

mod search;

use super::instance::{Instance, Layout, Refusal, Span};
use crate::Budget;

/// When a question counts as working.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Aim {
    /// Some layout gives the pieces; it may waste.
    AnyLayout,
    /// Some layout gives the pieces and uses the whole sheet.
    NoWaste,
}

/// How far changes may go.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reach {
    /// When a question counts as working.
    pub aim: Aim,
    /// True for the kinds that could be let turn, one entry a kind; those missing could not.
    pub turn: Vec<bool>,
    /// Most steps by which ranges may reach further, all together.
    pub steps: u32,
    /// Widths and heights to which the ranges of each kind may reach; those missing reach to the sheet's sides.
    pub bounds: Vec<(Span, Span)>,
    /// Most cards less.
    pub cards: u32,
    /// Other sheets to try: width, height.
    pub sheets: Vec<(u32, u32)>,
    /// Most changes of each sort to answer with.
    pub each: usize,
}

/// Which side of a piece, as it stands on the card.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Side {
    /// Its width.
    Width,
    /// Its height.
    Height,
}

/// Which end of a range.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum End {
    /// The smallest: the piece may be narrower or lower.
    Least,
    /// The largest: the piece may be wider or higher.
    Most,
}

/// One range that reaches further.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Move {
    /// Index of the kind.
    pub kind: usize,
    /// Which of its sides.
    pub side: Side,
    /// Which end of that range.
    pub end: End,
    /// By how many steps of the kind.
    pub steps: u32,
}

/// One change; they order as the table of this module says.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Change {
    /// These kinds may lie a quarter turned.
    Turn {
        /// Indices of the kinds.
        kinds: Vec<usize>,
    },
    /// These ranges reach further.
    Sizes {
        /// Each range once, in the order of the kinds.
        moves: Vec<Move>,
    },
    /// So many cards less will do.
    FewerCards {
        /// How many.
        by: u32,
    },
    /// Another sheet.
    Sheet {
        /// Its index in [`Reach::sheets`].
        index: usize,
    },
}

/// A sort of change.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Sort {
    /// [`Change::Turn`].
    Turn,
    /// [`Change::Sizes`].
    Sizes,
    /// [`Change::FewerCards`].
    FewerCards,
    /// [`Change::Sheet`].
    Sheet,
}

impl Change {
    /// Its sort.
    pub fn sort(&self) -> Sort {
        match self {
            Change::Turn { .. } => Sort::Turn,
            Change::Sizes { .. } => Sort::Sizes,
            Change::FewerCards { .. } => Sort::FewerCards,
            Change::Sheet { .. } => Sort::Sheet,
        }
    }
}

impl Sort {
    /// Every sort, the smallest first.
    pub const ORDER: [Sort; 4] = [Sort::Turn, Sort::Sizes, Sort::FewerCards, Sort::Sheet];
}

/// A change that works.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fix {
    /// What changes.
    pub change: Change,
    /// A layout of the changed question.
    pub layout: Layout,
    /// True if every smaller change of its sort was refuted.
    pub smallest: bool,
}

/// What was found.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Nearest {
    /// True if the question works as it stands; nothing else was looked for then.
    pub works: bool,
    /// The smallest changes of each sort that work, in order.
    pub fixes: Vec<Fix>,
    /// Sorts of which no change within reach works; proven.
    pub refuted: Vec<Sort>,
    /// Sorts of which none was found before the budget ended.
    pub unknown: Vec<Sort>,
}

/// The smallest changes that make the question work.
///
/// # Shape
/// Sizes in steps of the caller's grid. Same instance, reach and budget in nodes: same answer. Every layout that
/// is answered is one of the changed question. Complete while the budget lasts and the engine decides each changed
/// question; [`Fix::smallest`] and [`Nearest::refuted`] say where that is so.
///
/// # Errors
/// [`Refusal`] if the instance cannot be asked as it stands.
pub fn nearest(instance: &Instance, reach: &Reach, budget: &mut Budget<'_>) -> Result<Nearest, Refusal> {
    let _ = super::Grid::of(instance)?;
    let mut search = search::Search::new(instance, reach);
    let mut nearest = Nearest::default();
    let mut part = budget.part(budget.left() / 4);
    let works = search.works(instance, &mut part);
    let _ = budget.join(&part);
    if works == search::Works::Yes {
        nearest.works = true;
        return Ok(nearest);
    }
    for (index, sort) in Sort::ORDER.into_iter().enumerate() {
        // Each sort has an equal share of what is left: a hard one must not starve those after it.
        let share = budget.left() / (Sort::ORDER.len() - index) as u64;
        let mut part = budget.part(share);
        let (fixes, sure) = match sort {
            Sort::Turn => search.turns(&mut part),
            Sort::Sizes => search.sizes(&mut part),
            Sort::FewerCards => search.fewer_cards(&mut part),
            Sort::Sheet => search.other_sheets(&mut part),
        };
        let _ = budget.join(&part);
        match (fixes.is_empty(), sure) {
            (true, true) => nearest.refuted.push(sort),
            (true, false) => nearest.unknown.push(sort),
            (false, _) => nearest.fixes.extend(fixes),
        }
    }
    Ok(nearest)
}

/// The question with a change made to it; the same question if the change names nothing in it.
pub fn changed(instance: &Instance, reach: &Reach, change: &Change) -> Instance {
    let mut changed = instance.clone();
    match change {
        Change::Turn { kinds } => {
            for &kind in kinds {
                if let Some(kind) = changed.kinds.get_mut(kind) {
                    kind.turn = true;
                }
            }
        }
        Change::Sizes { moves } => {
            for to in moves {
                let Some(kind) = changed.kinds.get_mut(to.kind) else { continue };
                let by = to.steps.saturating_mul(kind.step.max(1));
                let span = match to.side {
                    Side::Width => &mut kind.width,
                    Side::Height => &mut kind.height,
                };
                match to.end {
                    End::Least => span.least = span.least.saturating_sub(by).max(1),
                    End::Most => span.most = span.most.saturating_add(by),
                }
            }
        }
        Change::FewerCards { by } => changed.cards.least = changed.cards.least.saturating_sub(*by).max(1),
        Change::Sheet { index } => {
            if let Some(&(width, height)) = reach.sheets.get(*index) {
                (changed.width, changed.height) = (width, height);
            }
        }
    }
    changed
}
