//! The most value that any number of pieces can have on each rectangle of a sheet: one table, all rectangles.
//!
//! It is oracle (the best way to cut a sheet under given worths), bound (no limit on numbers is a relaxation)
//! and pattern maker in one.
//!
//! # Source
//! Gilmore, Gomory 1966, *Operations Research* 14(6); Beasley 1985, *J. Operational Research Society* 36(4)
//! (from memory). Checked by `tests/bench_small.rs` on published optima.

use super::points::{self, Points};
use super::{Item, Rules, SheetKind, staged};
use crate::{Axis, Budget, Exhausted, Tree};

/// A sheet's positions and what follows from them alone; made once, filled many times.
#[derive(Debug, Clone)]
pub(super) struct Grid {
    pub(super) width: u32,
    pub(super) height: u32,
    pub(super) x: Vec<u32>,
    pub(super) y: Vec<u32>,
    pub(super) rules: Rules,
    rest_x: Rests,
    rest_y: Rests,
}

/// For each position p and each cut c up to its half: which position the rest p − c comes down to.
#[derive(Debug, Clone)]
struct Rests {
    /// The first position that may be cut at.
    first: usize,
    start: Vec<usize>,
    rest: Vec<u16>,
}

impl Rests {
    fn of(points: &[u32], rules: Rules) -> Rests {
        let first = points.partition_point(|&p| p < rules.least_strip.max(1));
        let mut rests = Rests { first, start: Vec::with_capacity(points.len() + 1), rest: Vec::new() };
        for (i, &p) in points.iter().enumerate() {
            rests.start.push(rests.rest.len());
            let mut rest = i;
            for &cut in points[first..].iter().take_while(|&&cut| cut <= p / 2) {
                while points[rest] > p - cut {
                    rest -= 1;
                }
                rests.rest.push(u16::try_from(rest).expect("points::LIMIT is below u16::MAX"));
            }
        }
        rests.start.push(rests.rest.len());
        rests
    }

    /// Rests after the cuts of position `p`, from the first that may be made.
    #[inline]
    fn of_point(&self, p: usize) -> &[u16] {
        &self.rest[self.start[p]..self.start[p + 1]]
    }

    /// (first part, second part) of each cut of position `p`.
    #[inline]
    fn cuts(&self, p: usize) -> impl Iterator<Item = (usize, usize)> {
        self.of_point(p).iter().enumerate().map(|(cut, &rest)| (cut + self.first, usize::from(rest)))
    }
}

impl Grid {
    /// The grid of a sheet for these items; `None` above [`points::LIMIT`].
    pub(super) fn of(sheet: &SheetKind, items: &[Item], rules: Rules) -> Option<Grid> {
        let Points { x, y } = Points::of((sheet.width, sheet.height), items, rules)?;
        let (rest_x, rest_y) = (Rests::of(&x, rules), Rests::of(&y, rules));
        Some(Grid { width: sheet.width, height: sheet.height, x, y, rules, rest_x, rest_y })
    }

    /// True if every cell stands for rectangles of exactly its size: what is left over cannot just be let be.
    pub(super) fn exact(&self) -> bool {
        self.rules.strips()
    }

    pub(super) fn cells(&self) -> usize {
        self.x.len() * self.y.len()
    }

    /// (first part, second part) of each cut across the width of column `i`.
    pub(super) fn cuts_x(&self, i: usize) -> impl Iterator<Item = (usize, usize)> {
        self.rest_x.cuts(i)
    }

    /// The same for the height of row `j`.
    pub(super) fn cuts_y(&self, j: usize) -> impl Iterator<Item = (usize, usize)> {
        self.rest_y.cuts(j)
    }

    /// The cell that a rectangle comes down to.
    pub(super) fn cell(&self, width: u32, height: u32) -> (usize, usize) {
        (points::floor(&self.x, width), points::floor(&self.y, height))
    }

    pub(super) fn at(&self, i: usize, j: usize) -> usize {
        i * self.y.len() + j
    }
}

/// The most worth of each cell, and of each cell in fewer runs where runs are limited.
#[derive(Debug, Clone, Default)]
pub(super) struct Table {
    /// The most worth of each cell.
    pub(super) value: Vec<i64>,
    /// With limited runs: what fewer runs give.
    layers: staged::Layers,
}

impl Table {
    /// The most worth of the whole sheet.
    pub(super) fn whole(&self) -> i64 {
        self.value.last().copied().unwrap_or(0)
    }
}

/// Fill a table. `worth[k]` belongs to `items[k]`; 0 leaves it out.
///
/// # Errors
/// [`Exhausted`] part way: the table is then of no use.
pub(super) fn fill(
    grid: &Grid,
    items: &[Item],
    worth: &[i64],
    table: &mut Table,
    budget: &mut Budget<'_>,
) -> Result<(), Exhausted> {
    if let Some(stages) = grid.rules.stages {
        return table.layers.fill(grid, (items, worth), stages, &mut table.value, budget);
    }
    let value = &mut table.value;
    seed(grid, items, worth, value);
    let rows = grid.y.len();
    for i in 1..grid.x.len() {
        budget.spend(rows as u64)?;
        grid.column_across(value, i);
        grid.column_along(&mut value[i * rows..(i + 1) * rows]);
    }
    Ok(())
}

/// Each piece in the cell of its own size, all else 0.
pub(super) fn seed(grid: &Grid, items: &[Item], worth: &[i64], value: &mut Vec<i64>) {
    value.clear();
    value.resize(grid.cells(), 0);
    for (item, &worth) in items.iter().zip(worth) {
        for (w, h, _) in item.ways(grid.width, grid.height) {
            let (i, j) = grid.cell(w, h);
            let cell = &mut value[grid.at(i, j)];
            *cell = worth.max(*cell);
        }
    }
}

impl Grid {
    /// Raise column `i` to what cuts across the width give, from the columns before it.
    pub(super) fn column_across(&self, value: &mut [i64], i: usize) {
        let rows = self.y.len();
        let (done, here) = value.split_at_mut(i * rows);
        let column = &mut here[..rows];
        if !self.exact() {
            raise(column, &done[(i - 1) * rows..]);
        }
        for (a, b) in self.cuts_x(i) {
            let (first, second) = (&done[a * rows..(a + 1) * rows], &done[b * rows..(b + 1) * rows]);
            for ((cell, &first), &second) in column.iter_mut().zip(first).zip(second) {
                *cell = (*cell).max(first + second);
            }
        }
    }

    /// Raise a column to what cuts across the height give.
    pub(super) fn column_along(&self, column: &mut [i64]) {
        let (exact, first) = (self.exact(), self.rest_y.first);
        for j in 1..column.len() {
            let mut best = if exact { column[j] } else { column[j].max(column[j - 1]) };
            for (cut, &rest) in self.rest_y.of_point(j).iter().enumerate() {
                best = best.max(column[cut + first] + column[usize::from(rest)]);
            }
            column[j] = best;
        }
    }
}

fn raise(column: &mut [i64], before: &[i64]) {
    for (cell, &value) in column.iter_mut().zip(before) {
        *cell = value.max(*cell);
    }
}

/// A way to cut the whole sheet that has the table's value.
pub(super) fn tree(grid: &Grid, items: &[Item], worth: &[i64], table: &Table) -> Tree {
    let (i, j) = (grid.x.len() - 1, grid.y.len() - 1);
    if let Some(stages) = grid.rules.stages {
        return table.layers.tree(grid, (items, worth), stages);
    }
    branch(&Filled { grid, items, worth, value: &table.value }, (i, j), (grid.width, grid.height))
}

struct Filled<'a> {
    grid: &'a Grid,
    items: &'a [Item],
    worth: &'a [i64],
    value: &'a [i64],
}

fn branch(table: &Filled<'_>, (mut i, mut j): (usize, usize), (width, height): (u32, u32)) -> Tree {
    let grid = table.grid;
    let value = |i: usize, j: usize| table.value[grid.at(i, j)];
    let best = value(i, j);
    if best == 0 {
        return Tree::Waste;
    }
    while !grid.exact() && i > 0 && value(i - 1, j) == best {
        i -= 1;
    }
    while !grid.exact() && j > 0 && value(i, j - 1) == best {
        j -= 1;
    }
    for (item, &worth) in table.items.iter().zip(table.worth) {
        let leaves = |&(w, h, _): &(u32, u32, bool)| grid.rules.splits(w, width) && grid.rules.splits(h, height);
        if worth == best
            && let Some((w, h, turned)) = item.ways(grid.x[i], grid.y[j]).find(leaves)
        {
            return set(item.kind, (w, h, turned), (width, height));
        }
    }
    if let Some((a, b)) = grid.cuts_x(i).find(|&(a, b)| value(a, j) + value(b, j) == best) {
        let at = grid.x[a];
        let first = branch(table, (a, j), (at, height));
        return join(Axis::X, at, first, branch(table, (b, j), (width - at, height)));
    }
    let (a, b) =
        grid.cuts_y(j).find(|&(a, b)| value(i, a) + value(i, b) == best).expect("a cell's value comes from somewhere");
    let at = grid.y[a];
    let first = branch(table, (i, a), (width, at));
    join(Axis::Y, at, first, branch(table, (i, b), (width, height - at)))
}

/// A piece at the top left corner of a rectangle, the rest waste.
pub(super) fn set(kind: usize, (w, h, turned): (u32, u32, bool), (width, height): (u32, u32)) -> Tree {
    let mut tree = Tree::Piece { kind, width: w, height: h, turned };
    if h < height {
        tree = join(Axis::Y, h, tree, Tree::Waste);
    }
    if w < width {
        tree = join(Axis::X, w, tree, Tree::Waste);
    }
    tree
}

/// A cut, or waste if both parts are.
pub(super) fn join(axis: Axis, at: u32, first: Tree, second: Tree) -> Tree {
    if first == Tree::Waste && second == Tree::Waste {
        return Tree::Waste;
    }
    Tree::Cut { axis, at, first: Box::new(first), second: Box::new(second) }
}
