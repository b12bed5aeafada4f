//! One sheet filled well with pieces of which only so many are left: a heuristic, no proof.
//!
//! The table of [`super::table`], but each cell keeps one way to cut it with its numbers of pieces; what a
//! combination has beyond the numbers left counts as waste.

use super::Item;
use super::table::{Grid, join, set};
use crate::{Axis, Budget, Exhausted, Tree};

#[derive(Debug, Clone, Copy)]
enum Made {
    Nothing,
    Narrower,
    Lower,
    Piece(u16, bool),
    Side(u16, u16),
    Stack(u16, u16),
}

struct Cells<'a> {
    grid: &'a Grid,
    items: &'a [Item],
    worth: &'a [i64],
    caps: Vec<u16>,
    value: Vec<i64>,
    counts: Vec<u16>,
    made: Vec<Made>,
}

/// Chosen: numbers kept for all cells together, 64 MB of them.
const LARGEST: usize = 1 << 25;

/// True if the table of this grid and so many items is not too large to fill, and any number of turns will do.
pub(super) fn can_fill(grid: &Grid, items: usize) -> bool {
    grid.rules.stages.is_none() && grid.cells().saturating_mul(items) <= LARGEST
}

/// A good way to cut the whole sheet with at most `item.cap` of each item, and its worth.
///
/// # Errors
/// [`Exhausted`] before the table is full.
pub(super) fn fill(
    grid: &Grid,
    items: &[Item],
    worth: &[i64],
    budget: &mut Budget<'_>,
) -> Result<(i64, Tree), Exhausted> {
    let caps = items.iter().map(|item| u16::try_from(item.cap).unwrap_or(u16::MAX)).collect();
    let (cells, kinds) = (grid.cells(), items.len());
    let mut table = Cells {
        grid,
        items,
        worth,
        caps,
        value: vec![0; cells],
        counts: vec![0; cells * kinds],
        made: vec![Made::Nothing; cells],
    };
    table.seed();
    for i in 1..grid.x.len() {
        // Each pair of cells is weighed kind by kind: one node for four pairs.
        let rows = grid.y.len();
        budget.spend((rows * (4 + grid.cuts_x(i).count() + rows / 4) / 4) as u64)?;
        for j in 1..grid.y.len() {
            table.cell(i, j);
        }
    }
    let (i, j) = (grid.x.len() - 1, grid.y.len() - 1);
    Ok((table.value[grid.at(i, j)], table.tree((i, j), (grid.width, grid.height))))
}

impl Cells<'_> {
    fn seed(&mut self) {
        for (k, item) in self.items.iter().enumerate().filter(|(_, item)| item.cap > 0) {
            for (w, h, turned) in item.ways(self.grid.width, self.grid.height) {
                let (i, j) = self.grid.cell(w, h);
                let at = self.grid.at(i, j);
                if self.worth[k] > self.value[at] {
                    self.value[at] = self.worth[k];
                    self.made[at] = Made::Piece(u16::try_from(k).unwrap_or(u16::MAX), turned);
                    let kinds = self.items.len();
                    self.counts[at * kinds..(at + 1) * kinds].fill(0);
                    self.counts[at * kinds + k] = 1;
                }
            }
        }
    }

    fn cell(&mut self, i: usize, j: usize) {
        let grid = self.grid;
        let at = grid.at(i, j);
        let (mut best, mut made) = (self.value[at], self.made[at]);
        if !grid.exact() && self.value[grid.at(i - 1, j)] > best {
            (best, made) = (self.value[grid.at(i - 1, j)], Made::Narrower);
        }
        if !grid.exact() && self.value[grid.at(i, j - 1)] > best {
            (best, made) = (self.value[grid.at(i, j - 1)], Made::Lower);
        }
        let short = |p: usize| u16::try_from(p).unwrap_or(u16::MAX);
        for (a, b) in grid.cuts_x(i) {
            if let Some(value) = self.together(grid.at(a, j), grid.at(b, j), best) {
                (best, made) = (value, Made::Side(short(a), short(b)));
            }
        }
        for (a, b) in grid.cuts_y(j) {
            if let Some(value) = self.together(grid.at(i, a), grid.at(i, b), best) {
                (best, made) = (value, Made::Stack(short(a), short(b)));
            }
        }
        self.keep(i, j, best, made);
    }

    /// The worth of two cells together, if it is above `best`.
    #[inline]
    fn together(&self, a: usize, b: usize, best: i64) -> Option<i64> {
        let mut value = self.value[a] + self.value[b];
        if value <= best {
            return None;
        }
        let kinds = self.items.len();
        let (first, second) = (&self.counts[a * kinds..(a + 1) * kinds], &self.counts[b * kinds..(b + 1) * kinds]);
        for k in 0..kinds {
            let over = first[k].saturating_add(second[k]).saturating_sub(self.caps[k]);
            if over > 0 {
                value -= i64::from(over) * self.worth[k];
                if value <= best {
                    return None;
                }
            }
        }
        Some(value)
    }

    fn keep(&mut self, i: usize, j: usize, best: i64, made: Made) {
        let grid = self.grid;
        let kinds = self.items.len();
        let at = grid.at(i, j);
        self.value[at] = best;
        self.made[at] = made;
        let pair = match made {
            Made::Nothing | Made::Piece(..) => return,
            Made::Narrower => (grid.at(i - 1, j), None),
            Made::Lower => (grid.at(i, j - 1), None),
            Made::Side(a, b) => (grid.at(usize::from(a), j), Some(grid.at(usize::from(b), j))),
            Made::Stack(a, b) => (grid.at(i, usize::from(a)), Some(grid.at(i, usize::from(b)))),
        };
        for k in 0..kinds {
            let first = self.counts[pair.0 * kinds + k];
            let second = pair.1.map_or(0, |b| self.counts[b * kinds + k]);
            self.counts[at * kinds + k] = first.saturating_add(second).min(self.caps[k]);
        }
    }

    fn tree(&self, (i, j): (usize, usize), (width, height): (u32, u32)) -> Tree {
        let grid = self.grid;
        match self.made[grid.at(i, j)] {
            Made::Nothing => Tree::Waste,
            Made::Narrower => self.tree((i - 1, j), (width, height)),
            Made::Lower => self.tree((i, j - 1), (width, height)),
            Made::Piece(k, turned) => {
                let item = self.items[usize::from(k)];
                let (w, h) = if turned { (item.height, item.width) } else { (item.width, item.height) };
                set(item.kind, (w, h, turned), (width, height))
            }
            Made::Side(a, b) => {
                let at = grid.x[usize::from(a)];
                let first = self.tree((usize::from(a), j), (at, height));
                join(Axis::X, at, first, self.tree((usize::from(b), j), (width - at, height)))
            }
            Made::Stack(a, b) => {
                let at = grid.y[usize::from(a)];
                let first = self.tree((i, usize::from(a)), (width, at));
                join(Axis::Y, at, first, self.tree((i, usize::from(b)), (width, height - at)))
            }
        }
    }
}
