//! Pieces of fixed size from sheets, by straight edge-to-edge cuts that take no width, any number of turns.
//!
//! | Question | Answer | Proven by |
//! |---|---|---|
//! | [`Question::LeastCost`] | all pieces, from sheets that cost the least | area, a linear programme over all ways to cut a sheet, numbers of sheets that none of its worths forbid, or for few pieces a search over all of them |
//! | [`Question::MostValue`] | one sheet, pieces worth the most, some of them at most or at least so often | table of all rectangles with improved worths, or search over blocks |
//!
//! The search is deterministic: same instance and budget in nodes, same answer, in whatever order sheets and pieces are
//! named and whatever a step is worth (`canon`). The best answer so far always
//! comes back, with a bound that holds. One node is one cell of a table, or one step of a search.
//!
//! [`Rules`] narrow down which cuts may be made: turns of the sheet, narrow strips; a [`SheetKind`] may have unusable
//! edges. Offcuts that are to be used first are sheets of little or no cost with limited copies.
//!
//! Of plans that cost the same, one of fewer trimmer settings, fewer cuts and larger offcuts is sought with a small part of
//! the nodes.
//!
//! Left out on purpose: blade width.

mod answer;
mod beam;
mod blocks;
mod canon;
mod columns;
mod costs;
mod cover;
mod deep;
mod dive;
mod fill;
mod front;
mod instance;
mod least;
mod look;
mod mend;
mod numbers;
mod one_by_one;
mod pattern;
mod pick;
mod points;
mod pool;
mod relaxed;
mod rules;
mod staged;
mod stock;
mod table;
mod wishes;
mod worths;

pub use answer::{Answer, CutSheet, Why};
pub use instance::{Instance, InstanceError, PieceKind, Question, SheetKind};
pub use rules::{Edges, Rules, Stages};

use crate::Budget;

/// A kind of piece that takes part in a search.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Item {
    kind: usize,
    width: u32,
    height: u32,
    /// At most so many; `u32::MAX`: any number.
    cap: u32,
    value: u64,
    turn: bool,
}

impl Item {
    /// The ways it may lie: (width, height, turned), at most two, none that does not fit.
    fn ways(self, width: u32, height: u32) -> impl Iterator<Item = (u32, u32, bool)> {
        let lying = self.turn && self.width != self.height;
        [(self.width, self.height, false), (self.height, self.width, true)]
            .into_iter()
            .filter(move |&(w, h, turned)| (lying || !turned) && w <= width && h <= height)
    }

    fn fits(self, width: u32, height: u32) -> bool {
        self.ways(width, height).next().is_some()
    }

    /// True if it can be cut from a sheet: what is left over beside it may be cut off.
    fn cuts(self, width: u32, height: u32, rules: Rules) -> bool {
        self.ways(width, height).any(|(w, h, _)| rules.splits(w, width) && rules.splits(h, height))
    }

    fn area(self) -> u128 {
        u128::from(self.width) * u128::from(self.height)
    }
}

/// The pieces that are wanted at all.
fn items(instance: &Instance) -> Vec<Item> {
    instance
        .pieces
        .iter()
        .enumerate()
        .map(|(kind, p)| Item {
            kind,
            width: p.width,
            height: p.height,
            cap: p.demand.unwrap_or(u32::MAX),
            value: p.value,
            turn: p.turn,
        })
        .filter(|item| item.cap > 0)
        .collect()
}

/// The question itself; the instance has been checked and its sheets lie inside their edges.
fn asked(inside: &Instance, budget: &mut Budget<'_>) -> Answer {
    match inside.question {
        Question::LeastCost => least::least_cost(inside, budget),
        Question::MostValue => pick::most_value(inside, budget),
    }
}

/// The best answer within the budget.
///
/// # Errors
/// [`InstanceError`] where [`Instance::check`] refuses the instance.
///
/// # Examples
/// Four cards of 5 x 7 in from sheets of 12 x 12 in: straight cuts give three a sheet, so two sheets.
/// ```
/// use cutting::fixed::{Instance, PieceKind, Question, Rules, SheetKind, solve};
/// use cutting::Budget;
/// let sheet = SheetKind::whole(12, 12, None, 1);
/// let piece = PieceKind { width: 5, height: 7, demand: Some(4), min: 0, value: 0, turn: true };
/// let (sheets, pieces) = (vec![sheet], vec![piece]);
/// let instance = Instance { sheets, pieces, question: Question::LeastCost, rules: Rules::default() };
/// let answer = solve(&instance, &mut Budget::nodes(100_000))?;
/// assert_eq!(answer.value, 2);
/// # Ok::<(), cutting::fixed::InstanceError>(())
/// ```
pub fn solve(instance: &Instance, budget: &mut Budget<'_>) -> Result<Answer, InstanceError> {
    instance.check()?;
    let before = budget.spent();
    let canon = canon::Canon::of(instance);
    let plain = canon.instance.rules.plain();
    let mut answer = if plain { asked(&canon.instance, budget) } else { relaxed::solve(&canon.instance, budget) };
    canon.undo(instance, &mut answer);
    answer.nodes = budget.spent() - before;
    Ok(answer)
}
