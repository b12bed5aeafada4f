//! Free sizes: for every sub-multiset of pieces the set of rectangles it can tile, as boxes of intervals.
//!
//! A block of pieces of free size can be any width in one interval and any height in another. Two blocks
//! side by side add their width intervals and share what is common to their heights. On one grid a sum of
//! intervals is an interval, so a union of such boxes is exact: nothing is lost and nothing is invented.

use super::grid::{Counts, Grid};
use crate::{Axis, Budget, Exhausted, Tree};

/// All w in `w0..=w1` with all h in `h0..=h1`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Shape {
    pub(super) w0: u16,
    pub(super) w1: u16,
    pub(super) h0: u16,
    pub(super) h1: u16,
}

impl Shape {
    fn covers(self, other: Shape) -> bool {
        self.w0 <= other.w0 && other.w1 <= self.w1 && self.h0 <= other.h0 && other.h1 <= self.h1
    }

    pub(super) fn holds(self, w: u32, h: u32) -> bool {
        u32::from(self.w0) <= w && w <= u32::from(self.w1) && u32::from(self.h0) <= h && h <= u32::from(self.h1)
    }
}

/// The closed table.
pub(super) struct Shapes<'g> {
    grid: &'g Grid,
    most: Vec<u32>,
    stride: Vec<usize>,
    table: Vec<Vec<Shape>>,
    counts: Vec<Counts>,
    /// Largest number of pieces in one block of the table.
    block: u32,
    most_boxes: usize,
    /// True if every block of every mix was closed.
    pub(super) complete: bool,
}

/// How far a table is closed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Reach {
    /// Most pieces in one block.
    pub(super) block: u32,
    /// Most boxes kept for one sub-multiset.
    pub(super) boxes: usize,
}

/// Most boxes in the whole table: 12 million boxes of 8 bytes stay under 100 MB.
const MOST_SHAPES: usize = 12_000_000;
/// Most sub-multisets.
const MOST_SETS: usize = 400_000;

impl<'g> Shapes<'g> {
    /// Closes the table as far as `reach` says. `sizes[k]` fixes the size of a kind.
    ///
    /// Returns `None` where the table would be too large.
    pub(super) fn close(
        grid: &'g Grid,
        fixed: &[Option<(u32, u32)>],
        reach: Reach,
        budget: &mut Budget<'_>,
    ) -> Result<Option<Shapes<'g>>, Exhausted> {
        let most = grid.most();
        let mut stride = Vec::with_capacity(most.len());
        let mut sets = 1usize;
        for &n in &most {
            stride.push(sets);
            sets = sets.saturating_mul(n as usize + 1);
        }
        if sets > MOST_SETS {
            return Ok(None);
        }
        let total: u32 = most.iter().sum();
        let mut shapes = Shapes {
            grid,
            most,
            stride,
            table: vec![Vec::new(); sets],
            counts: Vec::with_capacity(sets),
            block: reach.block.min(total),
            most_boxes: reach.boxes,
            complete: reach.block >= total,
        };
        shapes.counts = (0..sets).map(|index| shapes.counts_at(index)).collect();
        shapes.fill(fixed, budget)?;
        Ok(Some(shapes))
    }

    fn counts_at(&self, index: usize) -> Counts {
        let numbers: Vec<u32> =
            self.most.iter().zip(&self.stride).map(|(&n, &s)| ((index / s) % (n as usize + 1)) as u32).collect();
        Counts::of(&numbers)
    }

    pub(super) fn index(&self, numbers: &[u32]) -> usize {
        numbers.iter().zip(&self.stride).map(|(&n, &s)| n as usize * s).sum()
    }

    pub(super) fn of(&self, index: usize) -> &[Shape] {
        &self.table[index]
    }

    pub(super) fn counts(&self, index: usize) -> Counts {
        self.counts[index]
    }

    pub(super) fn len(&self) -> usize {
        self.table.len()
    }

    /// True if the pieces at `index` tile exactly w × h.
    pub(super) fn tiles(&self, index: usize, w: u32, h: u32) -> bool {
        self.table[index].iter().any(|shape| shape.holds(w, h))
    }

    /// For each sub-multiset the area it may have: what the rest of some mix can fill up.
    fn windows(&self, fixed: &[Option<(u32, u32)>]) -> Vec<(u64, u64)> {
        let areas: Vec<(u64, u64)> = self
            .grid
            .kinds
            .iter()
            .zip(fixed)
            .map(|(kind, size)| match size {
                Some((w, h)) => (u64::from(*w) * u64::from(*h), u64::from(*w) * u64::from(*h)),
                None => (kind.least_area(), kind.most_area()),
            })
            .collect();
        let sheet = self.grid.area();
        (0..self.table.len())
            .map(|index| {
                let (mut low, mut high) = (u64::MAX, 0);
                for mix in &self.grid.mixes {
                    if !self.counts[index].within(Counts::of(&mix.pieces)) {
                        continue;
                    }
                    let (mut least, mut most) = (0, 0);
                    for (k, area) in areas.iter().enumerate() {
                        let rest = u64::from(mix.pieces[k] - self.counts[index].get(k));
                        least += rest * area.0;
                        most += rest * area.1;
                    }
                    if least > sheet {
                        continue;
                    }
                    low = low.min(sheet.saturating_sub(most));
                    high = high.max(sheet - least);
                }
                (low, high)
            })
            .collect()
    }

    fn fill(&mut self, fixed: &[Option<(u32, u32)>], budget: &mut Budget<'_>) -> Result<(), Exhausted> {
        let windows = self.windows(fixed);
        let sheet = (self.grid.width.min(u32::from(u16::MAX)) as u16, self.grid.height.min(u32::from(u16::MAX)) as u16);
        for (k, size) in fixed.iter().enumerate() {
            if self.most[k] == 0 {
                continue;
            }
            let index = self.stride[k];
            for shape in self.single(k, *size) {
                add(&mut self.table[index], shape, windows[index], sheet);
            }
        }
        let totals: Vec<u32> =
            (0..self.table.len()).map(|i| (0..self.most.len()).map(|k| self.counts[i].get(k)).sum()).collect();
        let mut by_total: Vec<usize> = (1..self.table.len()).filter(|&i| totals[i] <= self.block).collect();
        by_total.sort_by_key(|&i| (totals[i], i));
        let mut held = 0usize;
        let mut fresh = Vec::new();
        for &index in &by_total {
            if totals[index] < 2 || windows[index].0 > windows[index].1 {
                continue;
            }
            fresh.clear();
            let mut work = 0u64;
            // Every split once: the part with the smaller index first. Indices add like counts do.
            for_each_part(&self.most, &self.stride, self.counts[index], index, |a| {
                let b = index - a;
                if a > b || self.table[a].is_empty() || self.table[b].is_empty() {
                    return;
                }
                for &p in &self.table[a] {
                    for &q in &self.table[b] {
                        let (h0, h1) = (p.h0.max(q.h0), p.h1.min(q.h1));
                        if h0 <= h1 && p.w0 + q.w0 <= sheet.0 {
                            let w1 = (u32::from(p.w1) + u32::from(q.w1)).min(u32::from(sheet.0)) as u16;
                            add(&mut fresh, Shape { w0: p.w0 + q.w0, w1, h0, h1 }, windows[index], sheet);
                        }
                        let (w0, w1) = (p.w0.max(q.w0), p.w1.min(q.w1));
                        if w0 <= w1 && p.h0 + q.h0 <= sheet.1 {
                            let h1 = (u32::from(p.h1) + u32::from(q.h1)).min(u32::from(sheet.1)) as u16;
                            add(&mut fresh, Shape { w0, w1, h0: p.h0 + q.h0, h1 }, windows[index], sheet);
                        }
                    }
                }
                work += 1 + (self.table[a].len() * self.table[b].len()) as u64 / 8;
            });
            budget.spend(work)?;
            if fresh.len() > self.most_boxes {
                // The roomiest boxes promise most.
                let room = |s: &Shape| u64::from(s.w1 - s.w0 + 1) * u64::from(s.h1 - s.h0 + 1);
                fresh.sort_by_key(|s| (std::cmp::Reverse(room(s)), *s));
                fresh.truncate(self.most_boxes);
                self.complete = false;
            }
            held += fresh.len();
            if held > MOST_SHAPES {
                self.complete = false;
                return Ok(());
            }
            let mut own = std::mem::take(&mut self.table[index]);
            own.extend_from_slice(&fresh);
            self.table[index] = own;
        }
        Ok(())
    }

    /// The boxes of one piece. A kind on a coarser step than the grid gives one box a size.
    fn single(&self, k: usize, size: Option<(u32, u32)>) -> Vec<Shape> {
        let kind = &self.grid.kinds[k];
        let short = |v: u32| v.min(u32::from(u16::MAX)) as u16;
        let mut shapes = Vec::new();
        let mut push = |w: (u32, u32), h: (u32, u32)| {
            shapes.push(Shape { w0: short(w.0), w1: short(w.1), h0: short(h.0), h1: short(h.1) });
            if kind.turn {
                shapes.push(Shape { w0: short(h.0), w1: short(h.1), h0: short(w.0), h1: short(w.1) });
            }
        };
        match size {
            Some((w, h)) => push((w, w), (h, h)),
            None if kind.stride == 1 => push(kind.width, kind.height),
            None => kind.sizes().into_iter().for_each(|(w, h)| push((w, w), (h, h))),
        }
        shapes
    }

    /// A tree of exactly w × h from the pieces at `index`; `taste` chooses among equally possible cuts.
    pub(super) fn tree(&self, index: usize, w: u32, h: u32, taste: &mut Taste) -> Option<Tree> {
        if let Some(leaf) = self.leaf(index, w, h) {
            return Some(leaf);
        }
        let mut parts = Vec::new();
        for_each_part(&self.most, &self.stride, self.counts[index], index, |a| {
            if !self.table[a].is_empty() && !self.table[index - a].is_empty() {
                parts.push(a);
            }
        });
        let start = taste.next(parts.len());
        for offset in 0..parts.len() {
            let a = parts[(start + offset) % parts.len()];
            let b = index - a;
            for axis in if taste.next(2) == 0 { [Axis::X, Axis::Y] } else { [Axis::Y, Axis::X] } {
                let (length, across) = if axis == Axis::X { (w, h) } else { (h, w) };
                let Some(at) = self.cut_at(a, b, axis, length, across, taste) else { continue };
                let ((aw, ah), (bw, bh)) =
                    if axis == Axis::X { ((at, h), (w - at, h)) } else { ((w, at), (w, h - at)) };
                let first = self.tree(a, aw, ah, taste)?;
                let second = self.tree(b, bw, bh, taste)?;
                taste.used(at);
                return Some(Tree::Cut { axis, at, first: Box::new(first), second: Box::new(second) });
            }
        }
        None
    }

    fn leaf(&self, index: usize, w: u32, h: u32) -> Option<Tree> {
        let k = self.stride.iter().zip(&self.most).position(|(&s, &n)| n > 0 && s == index)?;
        let kind = &self.grid.kinds[k];
        self.tiles(index, w, h).then(|| {
            let inside =
                |w: u32, h: u32| kind.width.0 <= w && w <= kind.width.1 && kind.height.0 <= h && h <= kind.height.1;
            let upright = inside(w, h) && (!kind.turn || !inside(h, w) || kind.off(w, h) <= kind.off(h, w));
            Tree::Piece { kind: k, width: w, height: h, turned: !upright }
        })
    }

    /// Where to cut so that `a` and `b` fill their parts: a position used before, if one is possible.
    fn cut_at(&self, a: usize, b: usize, axis: Axis, length: u32, across: u32, taste: &Taste) -> Option<u32> {
        let along = |s: &Shape| if axis == Axis::X { (s.w0, s.w1, s.h0, s.h1) } else { (s.h0, s.h1, s.w0, s.w1) };
        let mut best: Option<(u32, u32)> = None;
        for p in &self.table[a] {
            let (p0, p1, c0, c1) = along(p);
            if across < u32::from(c0) || across > u32::from(c1) {
                continue;
            }
            for q in &self.table[b] {
                let (q0, q1, d0, d1) = along(q);
                if across < u32::from(d0) || across > u32::from(d1) || length < u32::from(q0) {
                    continue;
                }
                let low = u32::from(p0).max(length.saturating_sub(u32::from(q1)));
                let high = u32::from(p1).min(length - u32::from(q0));
                if low > high {
                    continue;
                }
                let (at, cost) = taste.choose(low, high, length);
                if best.is_none_or(|(_, c)| cost < c) {
                    best = Some((at, cost));
                }
            }
        }
        best.map(|(at, _)| at)
    }
}

/// What makes one free tree nicer than another while it is drawn out of the table.
#[derive(Debug, Clone)]
pub(super) struct Taste {
    settings: Vec<u32>,
    state: u64,
}

impl Taste {
    pub(super) fn seeded(seed: u64) -> Taste {
        Taste { settings: Vec::new(), state: seed }
    }

    /// A number below `below`; 0 for seed 0 so that the first tree is the plain one.
    fn next(&mut self, below: usize) -> usize {
        if self.state == 0 || below == 0 {
            return 0;
        }
        // SplitMix64 (Steele, Lea, Flood 2014): a stateless shuffle is enough to vary the order of branches.
        self.state = self.state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.state;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) % below as u64) as usize
    }

    fn used(&mut self, at: u32) {
        if !self.settings.contains(&at) {
            self.settings.push(at);
        }
    }

    /// A position in `low..=high` and how dear it is: one used before, else the roundest near the middle.
    fn choose(&self, low: u32, high: u32, length: u32) -> (u32, u32) {
        if let Some(&at) = self.settings.iter().find(|&&s| low <= s && s <= high) {
            return (at, 0);
        }
        if let Some(&rest) = self.settings.iter().find(|&&s| s < length && low <= length - s && length - s <= high) {
            return (length - rest, 1);
        }
        let middle = low.midpoint(high);
        let mut bit = 1u32;
        let mut at = middle;
        while bit <= high {
            let round = middle.next_multiple_of(bit);
            if round > high {
                break;
            }
            at = round;
            bit *= 2;
        }
        (at, 2)
    }
}

/// Adds a box unless its area cannot be completed or another covers it; drops those it covers.
fn add(list: &mut Vec<Shape>, shape: Shape, window: (u64, u64), sheet: (u16, u16)) {
    let area = |w: u16, h: u16| u64::from(w) * u64::from(h);
    let mut shape = shape;
    shape.w1 = shape.w1.min(sheet.0);
    shape.h1 = shape.h1.min(sheet.1);
    if shape.w0 > shape.w1 || shape.h0 > shape.h1 {
        return;
    }
    if area(shape.w1, shape.h1) < window.0 || area(shape.w0, shape.h0) > window.1 {
        return;
    }
    let mut i = 0;
    while i < list.len() {
        if list[i].covers(shape) {
            return;
        }
        if shape.covers(list[i]) {
            list.swap_remove(i);
        } else {
            i += 1;
        }
    }
    list.push(shape);
}

/// Calls `f` with the index of every sub-multiset that is neither empty nor the whole.
pub(super) fn for_each_part(most: &[u32], stride: &[usize], whole: Counts, index: usize, mut f: impl FnMut(usize)) {
    let kinds = most.len();
    let mut numbers = vec![0u32; kinds];
    let mut at = 0usize;
    loop {
        let mut k = 0;
        loop {
            if k == kinds {
                return;
            }
            if numbers[k] < whole.get(k) {
                numbers[k] += 1;
                at += stride[k];
                break;
            }
            at -= numbers[k] as usize * stride[k];
            numbers[k] = 0;
            k += 1;
        }
        if at == index {
            return;
        }
        f(at);
    }
}
