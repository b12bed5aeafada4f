//! Most value from one sheet.

use super::beam::{self, Guide, Task};
use super::mend::Mend;
use super::pattern::{self, Pattern};
use super::stock::Stock;
use super::table::{self, Grid, Table};
use super::worths::{self, Limits, Worths};
use super::{Answer, CutSheet, Instance, Item, PieceKind, Why, blocks, fill, items, wishes};
use crate::{Budget, Exhausted, Tree};

/// A way to cut the sheet, with its value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Pick {
    pub(super) value: u64,
    pub(super) tree: Tree,
}

/// Chosen: times that a full sheet is changed and made better again.
const KICKS: u64 = 10_000;

/// Chosen: width of the beams that cut a part of a sheet afresh.
const MEND: usize = 16;

struct Search<'a> {
    instance: &'a Instance,
    items: Vec<Item>,
    worth: Vec<i64>,
    best: Option<Pick>,
    bound: u64,
    /// No choice has all that must appear.
    impossible: bool,
    /// Full sheets that are not mended yet.
    made: Vec<Tree>,
}

/// Answer [`super::Question::MostValue`]; the instance has been checked.
pub(super) fn most_value(instance: &Instance, budget: &mut Budget<'_>) -> Answer {
    let sheet = &instance.sheets[0];
    if sheet.copies == Some(0) {
        return Answer::impossible(Why::TooFewSheets, 0);
    }
    let missing = |p: &PieceKind| {
        let item = Item { kind: 0, width: p.width, height: p.height, cap: 1, value: 0, turn: p.turn };
        p.min > 0 && !item.cuts(sheet.width, sheet.height, instance.rules)
    };
    if let Some(piece) = instance.pieces.iter().position(missing) {
        return Answer::impossible(Why::FitsNoSheet { piece }, 0);
    }
    let items: Vec<Item> =
        items(instance).into_iter().filter(|item| item.cuts(sheet.width, sheet.height, instance.rules)).collect();
    let worth = items.iter().map(|item| i64::try_from(item.value).unwrap_or(i64::MAX)).collect();
    let mut search =
        Search { instance, items, worth, best: None, bound: u64::MAX, impossible: false, made: Vec::new() };
    search.offer(&Tree::Waste);
    // A spent budget leaves the best so far, and the bound that was proven by then.
    let mut part = budget.part(budget.left() - budget.left() / 32);
    let _spent = search.run(&mut part);
    // Told before any wishes: the value is settled.
    part.tell(search.best.as_ref().map(|best| best.value), Some(search.bound));
    let _spent = budget.join(&part);
    if !part.stopped() {
        let _ended = search.calm(budget);
    }
    match search.best {
        None if search.impossible => Answer::impossible(Why::MinimumDoesNotFit, 0),
        None => Answer::unfinished(search.bound, 0),
        Some(pick) => {
            let sheets = vec![CutSheet { sheet: 0, tree: pick.tree, times: 1 }];
            Answer::worth(pick.value, search.bound, sheets)
        }
    }
}

impl Search<'_> {
    fn run(&mut self, budget: &mut Budget<'_>) -> Result<(), Exhausted> {
        let rules = self.instance.rules;
        let Some(grid) = Grid::of(&self.instance.sheets[0], &self.items, rules) else { return Ok(()) };
        let limits: Vec<Limits> = self.items.iter().map(|&item| self.limits(item)).collect();
        self.bound = self.area_bound(&limits);
        self.beams(&limits, &self.worth.clone(), 2, budget)?;
        let mut worths = Worths::default();
        let items = self.items.clone();
        let mut offer = |tree: &Tree| {
            self.offer(tree);
            self.best.as_ref().map_or(0, |best| best.value)
        };
        // Chosen: a third of the nodes, but two tables at least.
        let mut part = budget.part((budget.left() / 3).max(2 * grid.cells() as u64));
        let improved = worths::improve(&grid, &items, &limits, &mut worths, &mut offer, &mut part);
        budget.join(&part)?;
        if worths.worth.is_empty() {
            improved?;
        }
        self.bound = self.bound.min(worths.bound);
        for width in [8, 64] {
            budget.tell(self.best.as_ref().map(|best| best.value), Some(self.bound));
            if self.closed() {
                return Ok(());
            }
            let scaled: Vec<i64> = worths.worth.iter().map(|w| w / worths.scale).collect();
            self.beams(&limits, &self.worth.clone(), width, budget)?;
            self.beams(&limits, &scaled, width, budget)?;
            if width == 8 && fill::can_fill(&grid, items.len()) && grid.cells() as u64 <= budget.left() / 8 {
                for worth in [&self.worth.clone(), &worths.worth] {
                    let (_, tree) = fill::fill(&grid, &items, worth, budget)?;
                    self.offer(&tree);
                }
            }
        }
        // A search of blocks begins with a table that may be too dear.
        let (columns, rows) = (grid.x.len() as u64, grid.y.len() as u64);
        let around = columns * rows * (columns / 2 + rows) / 8;
        // Chosen: a look with a sixteenth of the nodes, then all sheets made so far are mended, then the search again; a
        // quarter of the nodes is kept for wider beams.
        for share in [16, 1] {
            let nodes = budget.left() / share;
            let nodes = nodes - if share == 1 { nodes / 4 } else { 0 };
            if rules.plain() && !self.closed() && !self.impossible && around <= nodes / 2 {
                let mut part = budget.part(nodes);
                let ended = self.prove((&grid, &items, &limits), &worths, &mut part);
                budget.join(&part)?;
                if ended.is_err() && part.stopped() {
                    return ended;
                }
            }
            for mut tree in std::mem::take(&mut self.made) {
                self.mend(&mut tree, &limits, (MEND, 0), budget)?;
                self.offer(&tree);
            }
        }
        for width in [256, 1024, 4096, 16384] {
            let scaled: Vec<i64> = worths.worth.iter().map(|w| w / worths.scale).collect();
            for worth in [self.worth.clone(), scaled] {
                if !self.impossible {
                    self.beams(&limits, &worth, width, budget)?;
                }
            }
            if width == 1024
                && let Some(pick) = &self.best
            {
                let mut tree = pick.tree.clone();
                self.mend(&mut tree, &limits, (MEND, KICKS), budget)?;
                self.offer(&tree);
            }
        }
        Ok(())
    }

    /// Search all blocks of pieces, as far as the nodes go.
    fn prove(
        &mut self,
        (grid, items, limits): (&Grid, &[Item], &[Limits]),
        worths: &Worths,
        budget: &mut Budget<'_>,
    ) -> Result<(), Exhausted> {
        let mut table = Table::default();
        table::fill(grid, items, &worths.worth, &mut table, budget)?;
        let best = self.best.as_ref().map(|best| best.value);
        let mut offer = |tree: &Tree| self.offer(tree);
        let found = blocks::search((grid, &table.value), (items, limits), worths, best, &mut offer, budget);
        let best = self.best.as_ref().map(|best| best.value);
        self.bound = self.bound.min(found.bound.max(best.unwrap_or(0)));
        self.impossible = found.closed && best.is_none();
        Ok(())
    }

    /// Fill the sheet by beams of a width under all guides, as long as they are a small part of the budget.
    fn beams(
        &mut self,
        limits: &[Limits],
        worth: &[i64],
        width: usize,
        budget: &mut Budget<'_>,
    ) -> Result<(), Exhausted> {
        let place = worths::places(&self.items);
        let stock =
            Stock { sheets: &self.instance.sheets, items: self.items.clone(), place, rules: self.instance.rules };
        let left: Vec<u32> = limits.iter().map(|limit| limit.cap).collect();
        for guide in Guide::ALL {
            if self.closed() {
                return Ok(());
            }
            let task = Task { left: &left, copies: &[1], below: u64::MAX, width, guide };
            // Chosen: a small part of the nodes, a larger one for beams that need it.
            let mut part = budget.part(budget.left() / if width > 1024 { 6 } else { 16 });
            let filled = beam::most_worth(&stock, task, (worth, self.bound), &mut part);
            budget.join(&part)?;
            match filled {
                Ok(Some(mut tree)) => {
                    self.offer(&tree);
                    if width > 64 {
                        self.mend(&mut tree, limits, (MEND, 0), budget)?;
                        self.offer(&tree);
                    } else if width > 2 && !self.made.contains(&tree) {
                        self.made.push(tree);
                    }
                }
                Ok(None) => {}
                // Too wide for this budget.
                Err(Exhausted) => return Ok(()),
            }
        }
        Ok(())
    }

    /// Cut parts of a full sheet afresh, with a part of the budget.
    fn mend(
        &self,
        tree: &mut Tree,
        limits: &[Limits],
        (width, kicks): (usize, u64),
        budget: &mut Budget<'_>,
    ) -> Result<(), Exhausted> {
        if self.closed() {
            return Ok(());
        }
        let place = worths::places(&self.items);
        let stock =
            Stock { sheets: &self.instance.sheets, items: self.items.clone(), place, rules: self.instance.rules };
        let caps: Vec<u32> = limits.iter().map(|limit| limit.cap).collect();
        // Chosen: a sixteenth of the nodes, or half if that is what is left to do.
        let mut part = budget.part(budget.left() / if kicks > 0 { 2 } else { 16 });
        let mut mend = Mend::of(&stock, (&self.worth, &caps), (width, self.bound));
        let _ended = mend.run(tree, kicks, &mut part);
        budget.join(&part)
    }

    /// The same pieces by the layout that is least work.
    fn calm(&mut self, budget: &mut Budget<'_>) -> Result<(), Exhausted> {
        let Some(pick) = &mut self.best else { return Ok(()) };
        let place = worths::places(&self.items);
        let counts = Pattern::of(0, pick.tree.clone(), &place, self.items.len()).counts;
        let stock =
            Stock { sheets: &self.instance.sheets, items: self.items.clone(), place, rules: self.instance.rules };
        if let Some(tree) = wishes::lay(&stock, 0, &counts, Some(&pick.tree), budget)? {
            pick.tree = tree;
        }
        Ok(())
    }

    /// What the area alone allows: the densest piece all over the sheet, or all pieces there may be.
    fn area_bound(&self, limits: &[Limits]) -> u64 {
        let sheet = &self.instance.sheets[0];
        let area = u128::from(sheet.width) * u128::from(sheet.height);
        let densest = self.items.iter().map(|item| u128::from(item.value) * area / item.area()).max().unwrap_or(0);
        let all = self.items.iter().zip(limits).map(|(item, l)| u128::from(item.value) * u128::from(l.cap)).sum();
        u64::try_from(densest.min(all)).unwrap_or(u64::MAX)
    }

    fn closed(&self) -> bool {
        self.best.as_ref().is_some_and(|best| best.value >= self.bound)
    }

    /// How often an item may come, no more than its area allows.
    fn limits(&self, item: Item) -> Limits {
        let sheet = &self.instance.sheets[0];
        let most = u128::from(sheet.width) * u128::from(sheet.height) / item.area();
        Limits { min: self.instance.pieces[item.kind].min, cap: item.cap.min(u32::try_from(most).unwrap_or(u32::MAX)) }
    }

    /// Keep a tree, cut down to the numbers allowed, if it is the best so far and has all that must appear.
    fn offer(&mut self, tree: &Tree) {
        let kinds = &self.instance.pieces;
        let mut left: Vec<u32> = kinds.iter().map(|p| p.demand.unwrap_or(u32::MAX)).collect();
        let tree = pattern::trim(tree, &mut left);
        let sheet = &self.instance.sheets[0];
        if !self.instance.rules.allow(&tree, sheet.width, sheet.height) {
            return;
        }
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
