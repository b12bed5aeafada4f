//! Least waste where nothing uses the whole sheet.
//!
//! A choice of sizes that fits still fits when a side shrinks, so the choices that fit form a lower set.
//! Boxes of choices are split in halves: a box whose smallest choice does not fit is dropped whole, a box
//! whose largest choice fits is done, and a box that cannot beat the best is left alone.

use std::cmp::Reverse;
use std::collections::BinaryHeap;

use super::greedy;
use super::grid::{Counts, Grid};
use crate::{Axis, Budget, Exhausted, Tree};

/// The best choice of sizes found.
#[derive(Debug, Clone)]
pub(super) struct Packed {
    pub(super) mix: usize,
    /// Area of the pieces, in square grid units.
    pub(super) area: u64,
    /// Trees of the same pieces that cut the waste off in different places.
    pub(super) trees: Vec<Tree>,
}

/// What the search came to.
#[derive(Debug, Clone, Default)]
pub(super) struct Packing {
    /// The best few, best first.
    pub(super) best: Vec<Packed>,
    /// No choice has pieces of more area than this.
    pub(super) most_area: u64,
    /// True if nothing was left out.
    pub(super) closed: bool,
}

type Size = (u32, u32);

/// Most sub-multisets a packing test may run over.
const MOST_SETS: usize = 40_000;

/// A box of choices for one mix.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
struct Node {
    most_area: u64,
    serial: Reverse<u64>,
    mix: usize,
    low: Vec<Size>,
    high: Vec<Size>,
}

/// Searches the choices of sizes, one size per kind, for the most area used. `ceiling` is a proven bound.
pub(super) fn least_waste(grid: &Grid, ceiling: u64, keep: usize, budget: &mut Budget<'_>) -> Packing {
    let mut search = Search { grid, keep, best: Vec::new(), serial: 0, stopped: false };
    let mut open: BinaryHeap<Node> = BinaryHeap::new();
    for mix in 0..grid.mixes.len() {
        let low: Vec<Size> = grid.kinds.iter().map(|k| (k.width.0, k.height.0)).collect();
        let high: Vec<Size> = grid.kinds.iter().map(|k| (k.width.1, k.height.1)).collect();
        match search.test(mix, &low, budget) {
            Ok(true) => search.open(&mut open, mix, low, high, ceiling),
            Ok(false) => {}
            Err(Exhausted) => {
                search.stopped = true;
                if search.best.is_empty() {
                    search.quick(mix, budget);
                }
            }
        }
    }
    let mut bound = 0;
    while let Some(node) = open.pop() {
        if node.most_area <= search.value() {
            break;
        }
        if search.stopped {
            bound = bound.max(node.most_area);
            break;
        }
        if search.split(&node, &mut open, ceiling, budget).is_err() {
            search.stopped = true;
            bound = bound.max(node.most_area);
        }
    }
    let value = search.value();
    Packing { most_area: bound.max(value), closed: !search.stopped, best: search.best }
}

struct Search<'g> {
    grid: &'g Grid,
    keep: usize,
    best: Vec<Packed>,
    serial: u64,
    stopped: bool,
}

impl Search<'_> {
    fn value(&self) -> u64 {
        self.best.first().map_or(0, |packed| packed.area)
    }

    fn area(&self, mix: usize, sizes: &[Size]) -> u64 {
        let numbers = &self.grid.mixes[mix].pieces;
        numbers.iter().zip(sizes).map(|(&n, &(w, h))| u64::from(n) * u64::from(w) * u64::from(h)).sum()
    }

    fn open(&mut self, open: &mut BinaryHeap<Node>, mix: usize, low: Vec<Size>, high: Vec<Size>, ceiling: u64) {
        let most_area = self.area(mix, &high).min(ceiling);
        self.serial += 1;
        open.push(Node { most_area, serial: Reverse(self.serial), mix, low, high });
    }

    /// True if the choice fits; keeps it if it is among the best.
    fn test(&mut self, mix: usize, sizes: &[Size], budget: &mut Budget<'_>) -> Result<bool, Exhausted> {
        let area = self.area(mix, sizes);
        if area > self.grid.area() {
            return Ok(false);
        }
        let Some(trees) = pack(self.grid, &self.grid.mixes[mix].pieces, sizes, budget)? else { return Ok(false) };
        self.keep(Packed { mix, area, trees });
        Ok(true)
    }

    fn keep(&mut self, packed: Packed) {
        let at = self.best.partition_point(|p| p.area >= packed.area);
        self.best.insert(at, packed);
        self.best.truncate(self.keep);
    }

    /// Greedy packings, grown side by side as far as they go: for questions too large to search.
    fn quick(&mut self, mix: usize, budget: &mut Budget<'_>) {
        let numbers = &self.grid.mixes[mix].pieces;
        if let Some((sizes, tree)) = greedy::grown(self.grid, numbers, budget) {
            let area = self.area(mix, &sizes);
            self.keep(Packed { mix, area, trees: vec![tree] });
        }
    }

    fn split(
        &mut self,
        node: &Node,
        open: &mut BinaryHeap<Node>,
        ceiling: u64,
        budget: &mut Budget<'_>,
    ) -> Result<(), Exhausted> {
        budget.spend(1)?;
        if self.area(node.mix, &node.high) <= ceiling && self.test(node.mix, &node.high, budget)? {
            return Ok(());
        }
        let numbers = &self.grid.mixes[node.mix].pieces;
        let stretch = |k: usize, wide: bool| -> u64 {
            let ((lw, lh), (hw, hh)) = (node.low[k], node.high[k]);
            let n = u64::from(numbers[k]);
            if wide { n * u64::from(hw - lw) * u64::from(hh) } else { n * u64::from(hh - lh) * u64::from(hw) }
        };
        let sides = (0..numbers.len()).flat_map(|k| [(k, true), (k, false)]);
        let Some((k, wide)) =
            sides.filter(|&(k, w)| stretch(k, w) > 0).max_by_key(|&(k, w)| (stretch(k, w), Reverse(k)))
        else {
            return Ok(());
        };
        let stride = self.grid.kinds[k].stride;
        let pick = |s: Size| if wide { s.0 } else { s.1 };
        let set = |s: Size, v: u32| if wide { (v, s.1) } else { (s.0, v) };
        let (lo, hi) = (pick(node.low[k]), pick(node.high[k]));
        let middle = (lo.midpoint(hi) / stride * stride).max(lo);
        let mut high = node.high.clone();
        high[k] = set(high[k], middle);
        self.open(open, node.mix, node.low.clone(), high, ceiling);
        let above = middle + stride;
        if above <= hi {
            let mut low = node.low.clone();
            low[k] = set(low[k], above);
            if self.area(node.mix, &node.high).min(ceiling) > self.value() && self.test(node.mix, &low, budget)? {
                self.open(open, node.mix, low, node.high.clone(), ceiling);
            }
        }
        Ok(())
    }
}

/// A block of pieces with waste: its bounding rectangle and how it was made.
#[derive(Debug, Clone, Copy)]
struct Bound {
    w: u32,
    h: u32,
    made: Made,
}

#[derive(Debug, Clone, Copy)]
enum Made {
    Leaf { kind: usize, turned: bool },
    Joined { axis: Axis, a: (u32, u32), b: (u32, u32) },
}

/// The smallest bounding rectangles of every sub-multiset of fixed pieces.
pub(super) struct Bounds {
    table: Vec<Vec<Bound>>,
    stride: Vec<usize>,
    numbers: Vec<u32>,
}

impl Bounds {
    /// Every sub-multiset that fits into w × h, the empty one too.
    pub(super) fn within(&self, w: u32, h: u32) -> Vec<Counts> {
        let fits = |index: usize| index == 0 || self.table[index].iter().any(|b| b.w <= w && b.h <= h);
        (0..self.table.len()).filter(|&i| fits(i)).map(|i| self.counts(i)).collect()
    }

    /// A tree of that sub-multiset in w × h.
    pub(super) fn tree(&self, counts: Counts, w: u32, h: u32) -> Option<Tree> {
        let index: usize = self.stride.iter().enumerate().map(|(k, s)| counts.get(k) as usize * s).sum();
        if index == 0 {
            return Some(Tree::Waste);
        }
        let at = self.table[index].iter().position(|b| b.w <= w && b.h <= h)?;
        Some(fill(&self.table, (index as u32, at as u32), w, h))
    }

    fn counts(&self, index: usize) -> Counts {
        let numbers = self.numbers.iter().zip(&self.stride).map(|(&n, &s)| ((index / s) % (n as usize + 1)) as u32);
        Counts::of(&numbers.collect::<Vec<_>>())
    }
}

/// Trees for exactly these pieces, waste allowed, or `None` if none fits: exact, over the smallest
/// bounding rectangles of every sub-multiset.
pub(super) fn pack(
    grid: &Grid,
    numbers: &[u32],
    sizes: &[Size],
    budget: &mut Budget<'_>,
) -> Result<Option<Vec<Tree>>, Exhausted> {
    let area: u64 = numbers.iter().zip(sizes).map(|(&n, &(w, h))| u64::from(n) * u64::from(w) * u64::from(h)).sum();
    if area > grid.area() {
        return Ok(None);
    }
    let spare = grid.area() - area;
    let bounds = bounds(grid, numbers, sizes, spare, budget)?;
    let last = bounds.table.len() - 1;
    let (table, at) = (&bounds.table, (last as u32, 0));
    Ok(table[last].first().map(|_| {
        let (w, h) = (grid.width, grid.height);
        vec![fill(table, at, w, h), pushed(table, at, w, h, Axis::X), pushed(table, at, w, h, Axis::Y)]
    }))
}

/// Closes the table of smallest bounding rectangles; a block may waste at most `spare` inside.
pub(super) fn bounds(
    grid: &Grid,
    numbers: &[u32],
    sizes: &[Size],
    spare: u64,
    budget: &mut Budget<'_>,
) -> Result<Bounds, Exhausted> {
    let mut stride = Vec::with_capacity(numbers.len());
    let mut sets = 1usize;
    for &n in numbers {
        stride.push(sets);
        sets = sets.saturating_mul(n as usize + 1);
    }
    if sets > MOST_SETS {
        return Err(Exhausted);
    }
    let mut own = Bounds { table: vec![Vec::new(); sets], stride, numbers: numbers.to_vec() };
    for index in 1..sets {
        let counts = own.counts(index);
        let area: u64 =
            sizes.iter().enumerate().map(|(k, &(w, h))| u64::from(counts.get(k)) * u64::from(w) * u64::from(h)).sum();
        let mut front: Vec<Bound> = Vec::new();
        let mut offer = |w: u32, h: u32, made: Made| {
            let inside = w <= grid.width && h <= grid.height;
            if inside && u64::from(w) * u64::from(h) - area <= spare {
                insert(&mut front, Bound { w, h, made });
            }
        };
        if let Some(kind) = (0..numbers.len()).find(|&k| numbers[k] > 0 && own.stride[k] == index) {
            let (w, h) = sizes[kind];
            offer(w, h, Made::Leaf { kind, turned: false });
            if grid.kinds[kind].turn {
                offer(h, w, Made::Leaf { kind, turned: true });
            }
        }
        let table = &own.table;
        let mut work = 1;
        super::shapes::for_each_part(numbers, &own.stride, counts, index, |a| {
            let b = index - a;
            if a > b {
                return;
            }
            work += (table[a].len() * table[b].len()) as u64 / 8;
            for (i, p) in table[a].iter().enumerate() {
                for (j, q) in table[b].iter().enumerate() {
                    let parts = ((a as u32, i as u32), (b as u32, j as u32));
                    offer(p.w + q.w, p.h.max(q.h), Made::Joined { axis: Axis::X, a: parts.0, b: parts.1 });
                    offer(p.w.max(q.w), p.h + q.h, Made::Joined { axis: Axis::Y, a: parts.0, b: parts.1 });
                }
            }
        });
        budget.spend(work)?;
        own.table[index] = front;
    }
    Ok(own)
}

fn insert(front: &mut Vec<Bound>, bound: Bound) {
    if front.iter().any(|f| f.w <= bound.w && f.h <= bound.h) {
        return;
    }
    front.retain(|f| !(bound.w <= f.w && bound.h <= f.h));
    front.push(bound);
}

/// The block in a rectangle of w × h, what is too much cut off as waste.
fn fill(table: &[Vec<Bound>], at: (u32, u32), w: u32, h: u32) -> Tree {
    let bound = table[at.0 as usize][at.1 as usize];
    if bound.w < w {
        return cut(Axis::X, bound.w, fill(table, at, bound.w, h), Tree::Waste);
    }
    if bound.h < h {
        return cut(Axis::Y, bound.h, fill(table, at, w, bound.h), Tree::Waste);
    }
    match bound.made {
        Made::Leaf { kind, turned } => Tree::Piece { kind, width: w, height: h, turned },
        Made::Joined { axis, a, b } => {
            let part = table[a.0 as usize][a.1 as usize];
            match axis {
                Axis::X => cut(axis, part.w, fill(table, a, part.w, h), fill(table, b, w - part.w, h)),
                Axis::Y => cut(axis, part.h, fill(table, a, w, part.h), fill(table, b, w, h - part.h)),
            }
        }
    }
}

/// The same, but waste is left to the end of each row, so that it need not be measured: fewer settings, more
/// cuts. `row` is the direction of the row the block is part of.
fn pushed(table: &[Vec<Bound>], at: (u32, u32), w: u32, h: u32, row: Axis) -> Tree {
    let bound = table[at.0 as usize][at.1 as usize];
    let own = match bound.made {
        Made::Leaf { .. } => None,
        Made::Joined { axis, .. } => Some(axis),
    };
    // What is too long for the row ends the row, unless the block itself goes on with it.
    let too_long = match row {
        Axis::X => (bound.w < w).then_some(bound.w),
        Axis::Y => (bound.h < h).then_some(bound.h),
    };
    if let Some(length) = too_long.filter(|_| own != Some(row)) {
        let (w, h) = if row == Axis::X { (length, h) } else { (w, length) };
        return cut(row, length, pushed(table, at, w, h, row), Tree::Waste);
    }
    match bound.made {
        Made::Leaf { kind, turned } => {
            let piece = Tree::Piece { kind, width: bound.w, height: bound.h, turned };
            match row {
                Axis::X if bound.h < h => cut(Axis::Y, bound.h, piece, Tree::Waste),
                Axis::Y if bound.w < w => cut(Axis::X, bound.w, piece, Tree::Waste),
                _ => piece,
            }
        }
        Made::Joined { axis, a, b } => {
            let part = table[a.0 as usize][a.1 as usize];
            let (at, first, second) = match axis {
                Axis::X => (part.w, (part.w, h), (w - part.w, h)),
                Axis::Y => (part.h, (w, part.h), (w, h - part.h)),
            };
            let first = pushed(table, a, first.0, first.1, axis);
            cut(axis, at, first, pushed(table, b, second.0, second.1, axis))
        }
    }
}

pub(super) fn cut(axis: Axis, at: u32, first: Tree, second: Tree) -> Tree {
    Tree::Cut { axis, at, first: Box::new(first), second: Box::new(second) }
}
