//! Tables where the sheet may be turned only so often: one layer for each number of runs and first direction.
//!
//! A layer holds the most worth of each cell in so many runs at most, the first of them along its axis: strips that
//! are cut off one after another, each worth what the layer of one run less, along the other axis, says. With no run
//! left a strip is one piece that spans it; with trimming, one that fits it.
//!
//! # Source
//! Gilmore, Gomory 1965, *Operations Research* 13(1), for two and three runs (from memory). Checked by
//! `tests/fixed_stages.rs`.

use super::Item;
use super::rules::Stages;
use super::table::{Grid, join, seed};
use crate::{Axis, Budget, Exhausted, Tree};

/// Tables by number of runs, then by first axis (x, y); the first is of pieces alone, once for both.
#[derive(Debug, Clone, Default)]
pub(super) struct Layers(Vec<[Vec<i64>; 2]>);

/// What a tree is read from.
struct Read<'a> {
    grid: &'a Grid,
    items: &'a [Item],
    worth: &'a [i64],
    layers: &'a [[Vec<i64>; 2]],
    trim: bool,
}

impl Layers {
    /// Fill all layers; `value` becomes the last one, over both first directions.
    pub(super) fn fill(
        &mut self,
        grid: &Grid,
        (items, worth): (&[Item], &[i64]),
        stages: Stages,
        value: &mut Vec<i64>,
        budget: &mut Budget<'_>,
    ) -> Result<(), Exhausted> {
        let rows = grid.y.len();
        self.0.resize(usize::from(stages.most) + 1, [Vec::new(), Vec::new()]);
        let mut pieces = std::mem::take(&mut self.0[0][0]);
        seed(grid, items, worth, &mut pieces);
        if stages.trim {
            trim(grid, (items, worth), &mut pieces);
        }
        self.0[0][1].clone_from(&pieces);
        self.0[0][0] = pieces;
        for runs in 1..self.0.len() {
            let (before, here) = self.0.split_at_mut(runs);
            let [across, along] = &mut here[0];
            let [after_along, after_across] = &before[runs - 1];
            across.clone_from(after_across);
            along.clone_from(after_along);
            grid.column_along(&mut along[..rows]);
            for i in 1..grid.x.len() {
                budget.spend(rows as u64)?;
                grid.column_across(across, i);
                grid.column_along(&mut along[i * rows..(i + 1) * rows]);
            }
        }
        if let Some([across, along]) = self.0.last() {
            value.clear();
            value.extend(across.iter().zip(along).map(|(&a, &b)| a.max(b)));
        }
        Ok(())
    }

    /// A way to cut the whole sheet that has the last layer's value.
    pub(super) fn tree(&self, grid: &Grid, (items, worth): (&[Item], &[i64]), stages: Stages) -> Tree {
        let read = Read { grid, items, worth, layers: &self.0, trim: stages.trim };
        let cell = (grid.x.len() - 1, grid.y.len() - 1);
        let runs = usize::from(stages.most);
        let at = grid.at(cell.0, cell.1);
        let axis = if self.0[runs][0][at] >= self.0[runs][1][at] { Axis::X } else { Axis::Y };
        read.strips((runs, axis), cell, (grid.width, grid.height))
    }
}

/// Each cell gets the best single piece that can be trimmed out of it.
fn trim(grid: &Grid, (items, worth): (&[Item], &[i64]), value: &mut [i64]) {
    for (i, &width) in grid.x.iter().enumerate() {
        for (j, &height) in grid.y.iter().enumerate() {
            let at = grid.at(i, j);
            if grid.exact() {
                let here = items.iter().zip(worth).filter(|(item, _)| item.cuts(width, height, grid.rules));
                value[at] = here.map(|(_, &worth)| worth).max().unwrap_or(0).max(0);
            } else {
                let narrower = if i > 0 { value[grid.at(i - 1, j)] } else { 0 };
                let lower = if j > 0 { value[grid.at(i, j - 1)] } else { 0 };
                value[at] = value[at].max(narrower).max(lower);
            }
        }
    }
}

fn of(axis: Axis) -> usize {
    usize::from(axis == Axis::Y)
}

impl Read<'_> {
    fn value(&self, (runs, axis): (usize, Axis), (i, j): (usize, usize)) -> i64 {
        self.layers[runs][of(axis)][self.grid.at(i, j)]
    }

    /// The strips of a rectangle, cut along an axis in so many runs.
    fn strips(&self, run: (usize, Axis), (i, j): (usize, usize), (width, height): (u32, u32)) -> Tree {
        let (_, axis) = run;
        let best = self.value(run, (i, j));
        if best == 0 {
            return Tree::Waste;
        }
        let (mut i, mut j) = (i, j);
        while !self.grid.exact() && if axis == Axis::X { i > 0 } else { j > 0 } {
            let less = if axis == Axis::X { (i - 1, j) } else { (i, j - 1) };
            if self.value(run, less) != best {
                break;
            }
            (i, j) = less;
        }
        // What the walk left over is cut off as waste.
        let (side, whole) = if axis == Axis::X { (self.grid.x[i], width) } else { (self.grid.y[j], height) };
        let inner = if axis == Axis::X { (side, height) } else { (width, side) };
        let tree = self.tight(run, (i, j), inner, best);
        if side < whole { join(axis, side, tree, Tree::Waste) } else { tree }
    }

    /// The same where the strips fill the rectangle.
    fn tight(&self, run: (usize, Axis), (i, j): (usize, usize), (width, height): (u32, u32), best: i64) -> Tree {
        let (runs, axis) = run;
        let fewer = (runs - 1, axis.across());
        if self.value(fewer, (i, j)) == best {
            if runs > 1 {
                return self.strips(fewer, (i, j), (width, height));
            }
            if let Some(tree) = self.piece((i, j), (width, height), axis, best) {
                return tree;
            }
        }
        let grid = self.grid;
        if axis == Axis::X {
            let mut cuts = grid.cuts_x(i);
            let found = cuts.find(|&(a, b)| self.value(run, (a, j)) + self.value(run, (b, j)) == best);
            let (a, b) = found.expect("a cell's value comes from somewhere");
            let at = grid.x[a];
            let first = self.strips(run, (a, j), (at, height));
            join(Axis::X, at, first, self.strips(run, (b, j), (width - at, height)))
        } else {
            let mut cuts = grid.cuts_y(j);
            let found = cuts.find(|&(a, b)| self.value(run, (i, a)) + self.value(run, (i, b)) == best);
            let (a, b) = found.expect("a cell's value comes from somewhere");
            let at = grid.y[a];
            let first = self.strips(run, (i, a), (width, at));
            join(Axis::Y, at, first, self.strips(run, (i, b), (width, height - at)))
        }
    }

    /// One piece in a strip that was cut off along an axis: what is left beside it is trimmed.
    fn piece(&self, (i, j): (usize, usize), (width, height): (u32, u32), axis: Axis, best: i64) -> Option<Tree> {
        let (x, y) = (self.grid.x[i], self.grid.y[j]);
        let rules = self.grid.rules;
        for (item, _) in self.items.iter().zip(self.worth).filter(|&(_, &worth)| worth == best) {
            for (w, h, turned) in item.ways(x, y) {
                let spans = w == width && h == height;
                let trimmed = self.trim && rules.splits(w, width) && rules.splits(h, height);
                if !spans && !trimmed {
                    continue;
                }
                let mut tree = Tree::Piece { kind: item.kind, width: w, height: h, turned };
                // The strip's own direction last, so that trimming is the innermost cut.
                for axis in [axis.across(), axis] {
                    let (side, whole) = if axis == Axis::X { (w, width) } else { (h, height) };
                    if side < whole {
                        tree = join(axis, side, tree, Tree::Waste);
                    }
                }
                return Some(tree);
            }
        }
        None
    }
}
