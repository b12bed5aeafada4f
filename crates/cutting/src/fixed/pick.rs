//! Most value from one sheet.

use super::pattern::{self, Pattern};
use super::table::{self, Grid};
use super::{Answer, CutSheet, Instance, Item, PieceKind, Why, fill, items};
use crate::{Budget, Exhausted, Tree};

/// A way to cut the sheet, with its value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Pick {
    pub(super) value: u64,
    pub(super) tree: Tree,
}

struct Search<'a> {
    instance: &'a Instance,
    items: Vec<Item>,
    worth: Vec<i64>,
    best: Option<Pick>,
    bound: u64,
}

/// Answer [`super::Question::MostValue`]; the instance has been checked.
pub(super) fn most_value(instance: &Instance, budget: &mut Budget<'_>) -> Answer {
    let sheet = &instance.sheets[0];
    let missing = |p: &PieceKind| {
        let upright = p.width <= sheet.width && p.height <= sheet.height;
        p.min > 0 && !upright && !(p.turn && p.height <= sheet.width && p.width <= sheet.height)
    };
    if let Some(piece) = instance.pieces.iter().position(missing) {
        return Answer::impossible(Why::FitsNoSheet { piece }, 0);
    }
    let items: Vec<Item> = items(instance).into_iter().filter(|item| item.fits(sheet.width, sheet.height)).collect();
    let worth = items.iter().map(|item| i64::try_from(item.value).unwrap_or(i64::MAX)).collect();
    let mut search = Search { instance, items, worth, best: None, bound: u64::MAX };
    search.offer(&Tree::Waste);
    // A spent budget leaves the best so far, and the bound that was proven by then.
    let _spent = search.run(budget);
    match search.best {
        None => Answer::unfinished(search.bound, 0),
        Some(pick) => {
            let sheets = vec![CutSheet { sheet: 0, tree: pick.tree, times: 1 }];
            Answer::worth(pick.value, search.bound, sheets)
        }
    }
}

impl Search<'_> {
    fn run(&mut self, budget: &mut Budget<'_>) -> Result<(), Exhausted> {
        let Some(grid) = Grid::of(&self.instance.sheets[0], &self.items) else { return Ok(()) };
        let mut value = Vec::new();
        table::fill(&grid, &self.items, &self.worth, &mut value, budget)?;
        self.bound = value.last().map_or(0, |&v| v.unsigned_abs());
        self.offer(&table::tree(&grid, &self.items, &self.worth, &value));
        if self.best.as_ref().is_some_and(|best| best.value == self.bound) {
            return Ok(());
        }
        if fill::can_fill(&grid, self.items.len()) {
            let (_, tree) = fill::fill(&grid, &self.items, &self.worth, budget)?;
            self.offer(&tree);
        }
        Ok(())
    }

    /// Keep a tree, cut down to the numbers allowed, if it is the best so far and has all that must appear.
    fn offer(&mut self, tree: &Tree) {
        let kinds = &self.instance.pieces;
        let mut left: Vec<u32> = kinds.iter().map(|p| p.demand.unwrap_or(u32::MAX)).collect();
        let tree = pattern::trim(tree, &mut left);
        let place: Vec<Option<usize>> = (0..kinds.len()).map(Some).collect();
        let counts = Pattern::of(0, tree.clone(), &place, kinds.len()).counts;
        if kinds.iter().zip(&counts).any(|(p, &count)| count < p.min) {
            return;
        }
        let value = kinds.iter().zip(&counts).map(|(p, &count)| p.value * u64::from(count)).sum();
        if self.best.as_ref().is_none_or(|best| value > best.value) {
            self.best = Some(Pick { value, tree });
        }
    }
}
