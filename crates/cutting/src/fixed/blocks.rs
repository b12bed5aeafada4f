//! One sheet, exactly: blocks of pieces are put side by side or one on another until no block can lead to more value.
//!
//! A block has least width and height for its pieces. What can still be put around it is bounded by a table
//! ([`around`]); the most promising block is taken next and joined to all that were taken before. Of two blocks
//! of the same pieces only those stay of which none is both narrower and lower.
//!
//! It knows no [`super::Rules`]: under any, it does not start.
//!
//! # Source
//! Bottom-up joining: Wang 1983, *Operations Research* 31(3); best first with a bound: Viswanathan, Bagchi 1993,
//! *Operations Research* 41(4) (both from memory). Checked by `tests/bench_small.rs` and against plain search.

use std::collections::{BinaryHeap, HashMap};

use super::points;
use super::stock::stack;
use super::table::{Grid, join};
use super::worths::{Limits, Worths};
use super::{Item, front};
use crate::{Axis, Budget, Exhausted, Tree};

#[derive(Debug, Clone, Copy)]
enum Made {
    /// So many columns and rows of one piece.
    Grid {
        item: usize,
        turned: bool,
        columns: u32,
        rows: u32,
    },
    Pair(Axis, usize, usize),
}

#[derive(Debug, Clone, Copy)]
struct Block {
    width: u32,
    height: u32,
    worth: i64,
    made: Made,
    /// Sum over the pieces, the same in whatever order they came.
    key: u64,
    /// False once a smaller block of the same pieces exists.
    alive: bool,
}

/// Where a search of blocks ended.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Found {
    /// No choice of pieces is worth more than the larger of this and the best found.
    pub(super) bound: u64,
    /// Nothing is left open: the best found is the best there is.
    pub(super) closed: bool,
}

/// Chosen: blocks kept at most; their numbers take 2 bytes a kind.
const MOST: usize = 1 << 18;

/// Chosen: with more copies of one piece the blocks are too many to list; two sums of these fit 16 bits.
const MOST_COPIES: u32 = 4096;

struct Search<'a> {
    grid: &'a Grid,
    items: &'a [Item],
    limits: &'a [Limits],
    /// Worth of each item.
    worth: &'a [i64],
    /// A block is of use if its worth, and the most that can be put around it, reach this.
    least: i64,
    around: Vec<i64>,
    blocks: Vec<Block>,
    counts: Vec<u16>,
    same: HashMap<u64, Vec<usize>>,
    open: BinaryHeap<(i64, i64, std::cmp::Reverse<usize>)>,
    /// Blocks that have been joined to each other.
    taken: Vec<usize>,
}

/// Look for the most value; each better tree goes to `offer`. `best` is the value to beat, if any is known.
pub(super) fn search(
    (grid, table): (&Grid, &[i64]),
    (items, limits): (&[Item], &[Limits]),
    worths: &Worths,
    best: Option<u64>,
    offer: &mut dyn FnMut(&Tree),
    budget: &mut Budget<'_>,
) -> Found {
    let Some(mut search) = Search::of((grid, table), (items, limits), &worths.worth, i64::MIN, budget) else {
        return Found { bound: u64::MAX, closed: false };
    };
    // The least worth that leads to more than `best`.
    let least = |best: u64| {
        i64::try_from(best)
            .unwrap_or(i64::MAX)
            .saturating_add(1)
            .saturating_mul(worths.scale)
            .saturating_sub(worths.extra)
    };
    let mut best = best;
    search.least = best.map_or(i64::MIN, least);
    let mut seen = 0;
    search.grids();
    loop {
        for block in seen..search.blocks.len() {
            let counts = search.counts_of(block);
            let value = items.iter().zip(counts).map(|(item, &n)| item.value * u64::from(n)).sum();
            let kept = limits.iter().zip(counts).all(|(limit, &n)| u32::from(n) >= limit.min);
            if kept && best.is_none_or(|best| value > best) {
                best = Some(value);
                search.least = least(value);
                offer(&search.tree(block));
            }
        }
        seen = search.blocks.len();
        match search.step(budget) {
            Ok(true) => {}
            Ok(false) => return Found { bound: best.unwrap_or(0), closed: true },
            Err(bound) => {
                let bound = (bound.saturating_add(worths.extra)).max(0) / worths.scale;
                return Found { bound: u64::try_from(bound).unwrap_or(0), closed: false };
            }
        }
    }
}

/// All choices of pieces that fit the sheet and are worth at least `least`, each with a tree; `None` if too many.
pub(super) fn list(
    (grid, table): (&Grid, &[i64]),
    (items, limits): (&[Item], &[Limits]),
    worth: &[i64],
    least: i64,
    budget: &mut Budget<'_>,
) -> Option<Vec<(Vec<u32>, Tree)>> {
    let mut search = Search::of((grid, table), (items, limits), worth, least, budget)?;
    search.grids();
    while search.step(budget).ok()? {}
    let mut seen: HashMap<u64, Vec<usize>> = HashMap::new();
    let mut found = Vec::new();
    for (at, block) in search.blocks.iter().enumerate().filter(|(_, block)| block.worth >= least) {
        let same = seen.entry(block.key).or_default();
        if same.iter().all(|&other| search.counts_of(other) != search.counts_of(at)) {
            same.push(at);
            found.push((search.counts_of(at).iter().map(|&n| u32::from(n)).collect(), search.tree(at)));
        }
    }
    Some(found)
}

/// The most that can be put around a block of each cell's size, by the table of what each rectangle can hold.
///
/// `around(w, h)` is the most of `around(w + x, h) + table(x, h)` and `around(w, h + y) + table(w, y)`.
fn around(grid: &Grid, table: &[i64], budget: &mut Budget<'_>) -> Result<Vec<i64>, Exhausted> {
    let (columns, rows) = (grid.x.len(), grid.y.len());
    let (beside, above) = (gaps(&grid.x), gaps(&grid.y));
    let mut most = vec![0_i64; grid.cells()];
    for i in (0..columns).rev() {
        // One node for eight sums.
        budget.spend((rows * (columns - i + rows) / 8) as u64)?;
        for j in (0..rows).rev() {
            let mut best = 0;
            for (wider, &gap) in (i + 1..columns).zip(&beside[i]) {
                best = best.max(most[grid.at(wider, j)] + table[grid.at(gap, j)]);
            }
            for (higher, &gap) in (j + 1..rows).zip(&above[j]) {
                best = best.max(most[grid.at(i, higher)] + table[grid.at(i, gap)]);
            }
            if i + 1 < columns {
                best = best.max(most[grid.at(i + 1, j)]);
            }
            if j + 1 < rows {
                best = best.max(most[grid.at(i, j + 1)]);
            }
            most[grid.at(i, j)] = best;
        }
    }
    Ok(most)
}

/// For each position the positions that the distances to all later ones come down to.
fn gaps(positions: &[u32]) -> Vec<Vec<usize>> {
    let gap =
        |(i, &from): (usize, &u32)| positions[i + 1..].iter().map(|&to| points::floor(positions, to - from)).collect();
    positions.iter().enumerate().map(gap).collect()
}

impl<'a> Search<'a> {
    /// Ready to start; `None` under rules, if there are too many copies, or no nodes for the table.
    fn of(
        (grid, table): (&'a Grid, &[i64]),
        (items, limits): (&'a [Item], &'a [Limits]),
        worth: &'a [i64],
        least: i64,
        budget: &mut Budget<'_>,
    ) -> Option<Search<'a>> {
        // A pair of blocks leaves strips of any width and turns the sheet at will.
        if !grid.rules.plain() || limits.iter().any(|limit| limit.cap > MOST_COPIES) {
            return None;
        }
        let around = around(grid, table, budget).ok()?;
        let (blocks, counts, same, open) = (Vec::new(), Vec::new(), HashMap::new(), BinaryHeap::new());
        Some(Search { grid, items, limits, worth, least, around, blocks, counts, same, open, taken: Vec::new() })
    }

    fn counts_of(&self, block: usize) -> &[u16] {
        &self.counts[block * self.items.len()..(block + 1) * self.items.len()]
    }

    fn tree(&self, block: usize) -> Tree {
        self.within(block, (self.grid.width, self.grid.height))
    }

    /// Start from plain grids of one piece.
    fn grids(&mut self) {
        for (item, kind) in self.items.iter().enumerate() {
            let cap = self.limits[item].cap;
            for (w, h, turned) in kind.ways(self.grid.width, self.grid.height) {
                for columns in 1..=(self.grid.width / w).min(cap) {
                    for rows in 1..=(self.grid.height / h).min(cap / columns) {
                        let mut counts = vec![0; self.items.len()];
                        counts[item] = short(columns * rows);
                        let block = Block {
                            width: w * columns,
                            height: h * rows,
                            worth: self.worth[item] * i64::from(columns * rows),
                            made: Made::Grid { item, turned, columns, rows },
                            key: mark(item).wrapping_mul(u64::from(columns * rows)),
                            alive: true,
                        };
                        self.add(block, &counts);
                    }
                }
            }
        }
    }

    /// Take the most promising block and join it to all taken before; false if there is none left.
    ///
    /// # Errors
    /// What the block promises, when stopped or when there are too many blocks.
    fn step(&mut self, budget: &mut Budget<'_>) -> Result<bool, i64> {
        let Some((bound, _, std::cmp::Reverse(block))) = self.open.pop() else { return Ok(false) };
        if bound < self.least {
            return Ok(false);
        }
        if !self.blocks[block].alive {
            return Ok(true);
        }
        let mut taken = std::mem::take(&mut self.taken);
        taken.retain(|&other| self.blocks[other].alive);
        taken.push(block);
        let spent = budget.spend(taken.len() as u64 / 2 + 1);
        if spent.is_ok() {
            let mut counts = vec![0; self.items.len()];
            for &other in &taken {
                for axis in [Axis::X, Axis::Y] {
                    if let Some(pair) = self.pair(axis, block, other, &mut counts) {
                        self.add(pair, &counts);
                    }
                }
            }
        }
        self.taken = taken;
        if spent.is_err() || self.blocks.len() > MOST { Err(bound) } else { Ok(true) }
    }

    /// Two blocks joined, if they fit the sheet, keep the limits and may still lead to more value.
    fn pair(&self, axis: Axis, a: usize, b: usize, counts: &mut [u16]) -> Option<Block> {
        let (first, second) = (&self.blocks[a], &self.blocks[b]);
        let (width, height) = match axis {
            Axis::X => (first.width.checked_add(second.width)?, first.height.max(second.height)),
            Axis::Y => (first.width.max(second.width), first.height.checked_add(second.height)?),
        };
        if width > self.grid.width || height > self.grid.height {
            return None;
        }
        let worth = first.worth + second.worth;
        let kinds = self.items.len();
        if self.bound(width, height, worth) < self.least {
            return None;
        }
        for (k, count) in counts.iter_mut().enumerate() {
            *count = self.counts[a * kinds + k] + self.counts[b * kinds + k];
            if u32::from(*count) > self.limits[k].cap {
                return None;
            }
        }
        let key = first.key.wrapping_add(second.key);
        Some(Block { width, height, worth, made: Made::Pair(axis, a, b), key, alive: true })
    }

    fn bound(&self, width: u32, height: u32, worth: i64) -> i64 {
        let (i, j) = self.grid.cell(width, height);
        worth + self.around[self.grid.at(i, j)]
    }

    /// Keep a block unless one of the same pieces is as small; those that are larger go.
    fn add(&mut self, block: Block, counts: &[u16]) {
        let kinds = self.items.len();
        let same = self.same.entry(block.key).or_default();
        let alike = |&other: &usize| &self.counts[other * kinds..(other + 1) * kinds] == counts;
        let smaller = |a: &Block, b: &Block| a.width <= b.width && a.height <= b.height;
        if same.iter().any(|other| alike(other) && smaller(&self.blocks[*other], &block)) {
            return;
        }
        same.retain(|other| {
            let gone = alike(other) && smaller(&block, &self.blocks[*other]);
            if gone {
                self.blocks[*other].alive = false;
            }
            !gone
        });
        let at = self.blocks.len();
        same.push(at);
        self.blocks.push(block);
        self.counts.extend_from_slice(counts);
        let bound = self.bound(block.width, block.height, block.worth);
        if bound >= self.least {
            self.open.push((bound, block.worth, std::cmp::Reverse(at)));
        }
    }

    /// The tree of a block at the top left corner of a rectangle.
    fn within(&self, block: usize, (width, height): (u32, u32)) -> Tree {
        let Block { width: w, height: h, made, .. } = self.blocks[block];
        let mut tree = match made {
            Made::Grid { item, turned, columns, rows } => {
                let (w, h) = (w / columns, h / rows);
                let piece = Tree::Piece { kind: self.items[item].kind, width: w, height: h, turned };
                let column = stack(Axis::Y, (0..rows).map(|_| (h, piece.clone())), h * rows);
                stack(Axis::X, (0..columns).map(|_| (w, column.clone())), w * columns)
            }
            Made::Pair(Axis::X, a, b) => {
                let at = self.blocks[a].width;
                join(Axis::X, at, self.within(a, (at, h)), self.within(b, (w - at, h)))
            }
            Made::Pair(Axis::Y, a, b) => {
                let at = self.blocks[a].height;
                join(Axis::Y, at, self.within(a, (w, at)), self.within(b, (w, h - at)))
            }
        };
        if h < height {
            tree = join(Axis::Y, h, tree, Tree::Waste);
        }
        if w < width {
            tree = join(Axis::X, w, tree, Tree::Waste);
        }
        tree
    }
}

/// A number for each item; blocks with equal sums are compared piece by piece.
fn mark(item: usize) -> u64 {
    front::mix(item as u64 + 1)
}

fn short(n: u32) -> u16 {
    u16::try_from(n).unwrap_or(u16::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixed::{Rules, SheetKind, Stages};

    /// What a search of blocks lists for two pieces of 5 x 6 and 4 x 7 on 11 x 11.
    fn listed(rules: Rules) -> Option<Vec<(Vec<u32>, Tree)>> {
        let sheet = SheetKind::whole(11, 11, None, 1);
        let item = |kind, width, height| Item { kind, width, height, cap: 4, value: 1, turn: true };
        let items = [item(0, 5, 6), item(1, 4, 7)];
        let grid = Grid::of(&sheet, &items, rules)?;
        let table = vec![100; grid.cells()];
        let limits = [Limits { min: 0, cap: 4 }, Limits { min: 0, cap: 4 }];
        list((&grid, &table), (&items, &limits), &[1, 1], 1, &mut Budget::nodes(1_000_000))
    }

    #[test]
    fn blocks_that_would_break_a_rule_are_not_searched() {
        let free = listed(Rules::default()).unwrap_or_default();
        let least = Rules { least_strip: 2, ..Rules::default() };
        let turns = Rules { stages: Some(Stages { most: 2, trim: false }), ..Rules::default() };
        for rules in [least, turns] {
            assert!(free.iter().any(|(_, tree)| !rules.allow(tree, 11, 11)), "without the rule it is broken");
            assert!(listed(rules).is_none_or(|found| found.iter().all(|(_, tree)| rules.allow(tree, 11, 11))));
        }
    }
}
