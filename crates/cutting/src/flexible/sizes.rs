//! One size per piece: which sizes can make up the sheet exactly, and which trees do it.
//!
//! First the sizes: for each mix the areas must add up to the sheet, and every kind must take part in a
//! row across the sheet and in a column down it. Few sizes are left. For each, blocks are closed upwards:
//! two blocks with an equal side join. As all sizes are fixed a block's area is fixed too, so one number
//! beside the count tells the whole rectangle.

use std::cell::Cell;
use std::collections::BTreeMap;

use super::grid::{Counts, Grid};
use super::quick::QuickSet;
use crate::{Axis, Budget, Exhausted, Tree};

/// A rectangle tiled by some pieces of fixed size.
#[derive(Debug, Clone, Copy)]
pub(super) struct Block {
    pub(super) counts: Counts,
    pub(super) w: u32,
    pub(super) h: u32,
}

/// How a block came about.
#[derive(Debug, Clone, Copy)]
pub(super) enum Made {
    Leaf { kind: usize, turned: bool },
    Joined { axis: Axis, a: u32, b: u32 },
}

/// The blocks of one choice of sizes. The buffers are kept between choices.
#[derive(Default)]
pub(super) struct Blocks {
    pub(super) blocks: Vec<Block>,
    pub(super) made: Vec<Made>,
    /// All ways each block can be made; filled only by [`Blocks::close_fully`].
    pub(super) ways: Vec<Vec<Made>>,
    by_w: Vec<Vec<u32>>,
    by_h: Vec<Vec<u32>>,
    seen: QuickSet,
}

/// Whether a closing stops at the first whole sheet.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Until {
    Found,
    Closed,
}

/// Most blocks for one choice of sizes: with their lists about 40 MB.
const MOST_BLOCKS: usize = 400_000;
/// Most ways of making them that are remembered: about 60 MB.
const MOST_WAYS: u64 = 4_000_000;

impl Blocks {
    /// True if some mix tiles the sheet with these sizes.
    pub(super) fn tiles(&mut self, task: &Task<'_>, budget: &mut Budget<'_>) -> Result<bool, Exhausted> {
        Ok(!self.close(task, Until::Found, budget)?.is_empty())
    }

    /// Closes everything and remembers every way; the numbers of the blocks that are the whole sheet.
    pub(super) fn close_fully(&mut self, task: &Task<'_>, budget: &mut Budget<'_>) -> Result<Vec<u32>, Exhausted> {
        self.close(task, Until::Closed, budget)
    }

    fn close(&mut self, task: &Task<'_>, until: Until, budget: &mut Budget<'_>) -> Result<Vec<u32>, Exhausted> {
        let (width, height) = (task.grid.width, task.grid.height);
        for block in &self.blocks {
            self.by_w[block.w as usize].clear();
            self.by_h[block.h as usize].clear();
        }
        self.blocks.clear();
        self.made.clear();
        self.ways.clear();
        self.seen.clear();
        self.by_w.resize(width as usize + 1, Vec::new());
        self.by_h.resize(height as usize + 1, Vec::new());
        let rows = task.sums(Axis::X);
        let columns = task.sums(Axis::Y);
        let mut whole = Vec::new();
        for (kind, &(w, h)) in task.sizes.iter().enumerate() {
            if task.most.get(kind) == 0 {
                continue;
            }
            let ways = if task.grid.kinds[kind].turn && w != h { 2 } else { 1 };
            for turned in [false, true].into_iter().take(ways) {
                let (w, h) = if turned { (h, w) } else { (w, h) };
                let block = Block { counts: Counts::one(kind), w, h };
                self.push(task, block, Made::Leaf { kind, turned }, &rows, &columns, until, &mut whole);
            }
        }
        let mut next = 0;
        let mut ways = 0u64;
        while next < self.blocks.len() {
            if until == Until::Found && !whole.is_empty() {
                break;
            }
            let block = self.blocks[next];
            let mut joins = 0;
            // Beside a block of the same height, above a block of the same width. The lists grow while they
            // are read; blocks added now are met again when their own turn comes.
            for (axis, list) in [(Axis::X, block.h), (Axis::Y, block.w)] {
                let mut i = 0;
                loop {
                    let partners = if axis == Axis::X { &self.by_h[list as usize] } else { &self.by_w[list as usize] };
                    let Some(&other) = partners.get(i) else { break };
                    i += 1;
                    if other as usize > next {
                        continue;
                    }
                    joins += 1;
                    let partner = self.blocks[other as usize];
                    let counts = block.counts.plus(partner.counts);
                    if !counts.within(task.most) {
                        continue;
                    }
                    let (w, h) = match axis {
                        Axis::X => (block.w + partner.w, block.h),
                        Axis::Y => (block.w, block.h + partner.h),
                    };
                    if w > width || h > height {
                        continue;
                    }
                    let made = Made::Joined { axis, a: next as u32, b: other };
                    self.push(task, Block { counts, w, h }, made, &rows, &columns, until, &mut whole);
                }
            }
            budget.spend(1 + joins / 16)?;
            ways += joins;
            if self.blocks.len() > MOST_BLOCKS || (until == Until::Closed && ways > MOST_WAYS) {
                return Err(Exhausted);
            }
            next += 1;
        }
        Ok(whole)
    }

    #[allow(clippy::too_many_arguments, reason = "one call site each for leaves and joins, all borrowed state")]
    fn push(
        &mut self,
        task: &Task<'_>,
        block: Block,
        made: Made,
        rows: &Sums,
        columns: &Sums,
        until: Until,
        whole: &mut Vec<u32>,
    ) {
        // What is left beside and below must be a sum of sides, else the block is in no whole sheet.
        let (width, height) = (task.grid.width, task.grid.height);
        if block.w > width || block.h > height || !rows.has(width - block.w) || !columns.has(height - block.h) {
            return;
        }
        if let Some(known) = self.seen.find(block.counts.0, block.w) {
            if until == Until::Closed {
                self.ways[known as usize].push(made);
            }
            return;
        }
        let number = self.blocks.len() as u32;
        self.seen.insert(block.counts.0, block.w, number);
        self.blocks.push(block);
        self.made.push(made);
        if until == Until::Closed {
            self.ways.push(vec![made]);
        }
        self.by_w[block.w as usize].push(number);
        self.by_h[block.h as usize].push(number);
        if block.w == width
            && block.h == height
            && task.grid.mixes.iter().any(|m| Counts::of(&m.pieces) == block.counts)
        {
            whole.push(number);
        }
    }

    /// The blocks of exactly w × h.
    pub(super) fn sized(&self, w: u32, h: u32) -> impl Iterator<Item = u32> + '_ {
        let row = self.by_w.get(w as usize).map_or(&[][..], Vec::as_slice);
        row.iter().copied().filter(move |&n| self.blocks[n as usize].h == h)
    }

    /// The tree by which a block was first made.
    pub(super) fn tree(&self, number: u32) -> Tree {
        let block = self.blocks[number as usize];
        match self.made[number as usize] {
            Made::Leaf { kind, turned } => Tree::Piece { kind, width: block.w, height: block.h, turned },
            Made::Joined { axis, a, b } => {
                let part = self.blocks[a as usize];
                let at = if axis == Axis::X { part.w } else { part.h };
                Tree::Cut { axis, at, first: Box::new(self.tree(a)), second: Box::new(self.tree(b)) }
            }
        }
    }
}

/// One choice of sizes to be tried.
pub(super) struct Task<'a> {
    pub(super) grid: &'a Grid,
    pub(super) sizes: &'a [(u32, u32)],
    /// Most pieces of each kind.
    pub(super) most: Counts,
}

/// Which sums of sides there are, up to a length.
pub(super) struct Sums(Vec<u64>);

impl Sums {
    fn has(&self, v: u32) -> bool {
        self.0[(v / 64) as usize] >> (v % 64) & 1 == 1
    }

    /// Adds one more piece that shows `side` or `turned`; true if that made a new sum.
    fn add(&mut self, side: u32, turned: Option<u32>, upto: u32) -> bool {
        let mut grew = false;
        let last = self.0.len() - 1;
        // From the top down, so that every word is read before it is changed.
        for i in (0..=last).rev() {
            let mut word = self.0[i] | self.moved(i, side);
            if let Some(other) = turned {
                word |= self.moved(i, other);
            }
            if i == last && upto % 64 < 63 {
                word &= (1u64 << (upto % 64 + 1)) - 1;
            }
            grew |= word != self.0[i];
            self.0[i] = word;
        }
        grew
    }

    fn moved(&self, i: usize, by: u32) -> u64 {
        let (words, bits) = ((by / 64) as usize, by % 64);
        if i < words {
            return 0;
        }
        let mut word = self.0[i - words] << bits;
        if bits > 0 && i > words {
            word |= self.0[i - words - 1] >> (64 - bits);
        }
        word
    }
}

impl Task<'_> {
    /// Sums of sides along one edge: across the sheet a piece shows its width, down it its height, and
    /// the other one too if it may turn.
    fn sums(&self, axis: Axis) -> Sums {
        let length = if axis == Axis::X { self.grid.width } else { self.grid.height };
        let mut sums = Sums(vec![0; length as usize / 64 + 1]);
        sums.0[0] = 1;
        for (k, &(w, h)) in self.sizes.iter().enumerate() {
            let (side, other) = if axis == Axis::X { (w, h) } else { (h, w) };
            let turned = (self.grid.kinds[k].turn && w != h).then_some(other);
            for _ in 0..self.most.get(k).min(length / side.min(turned.unwrap_or(side))) {
                if !sums.add(side, turned, length) {
                    break;
                }
            }
        }
        sums
    }
}

/// Walks through every choice of sizes whose areas make up the sheet for some mix, and which passes the
/// row-and-column test. Stops when `visit` says so.
pub(super) struct Choices<'g> {
    grid: &'g Grid,
    sizes: Vec<Vec<(u32, u32)>>,
    /// True once a mix has used up its share.
    cut_short: Cell<bool>,
}

/// What to do after a visit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Go {
    On,
    Stop,
}

impl<'g> Choices<'g> {
    pub(super) fn of(grid: &'g Grid) -> Choices<'g> {
        let near_first = |kind: &super::grid::GridKind| {
            let mut sizes = kind.sizes();
            sizes.sort_by_key(|&(w, h)| (kind.off(w, h), w, h));
            sizes
        };
        Choices { grid, sizes: grid.kinds.iter().map(near_first).collect(), cut_short: Cell::new(false) }
    }

    /// Calls `visit` with each choice of sizes and the number of the mix it may serve, sizes near to the
    /// preferred first.
    pub(super) fn each(
        &self,
        budget: &mut Budget<'_>,
        visit: &mut dyn FnMut(&[(u32, u32)], usize, &mut Budget<'_>) -> Result<Go, Exhausted>,
    ) -> Result<Go, Exhausted> {
        for mix in 0..self.grid.mixes.len() {
            // A mix that asks for very many choices must not starve the ones after it.
            let left = (self.grid.mixes.len() - mix) as u64;
            let mut share = budget.part(budget.left() / left);
            let went = self.of_mix(mix, &mut share, &mut |sizes, budget| visit(sizes, mix, budget));
            let spent = budget.spend(share.spent());
            match went {
                Ok(Go::Stop) => return Ok(Go::Stop),
                Ok(Go::On) => {}
                Err(Exhausted) if left == 1 => return Err(Exhausted),
                Err(Exhausted) => self.cut_short.set(true),
            }
            spent?;
        }
        if self.cut_short.get() { Err(Exhausted) } else { Ok(Go::On) }
    }

    /// How many choices there are for the mix with most of them.
    pub(super) fn most(&self) -> u64 {
        let of = |mix: &super::grid::Mix| {
            let taken = mix.pieces.iter().zip(&self.sizes).filter(|(n, _)| **n > 0);
            taken.fold(1u64, |all, (_, sizes)| all.saturating_mul(sizes.len() as u64))
        };
        self.grid.mixes.iter().map(of).max().unwrap_or(0)
    }

    fn of_mix(
        &self,
        mix: usize,
        budget: &mut Budget<'_>,
        visit: &mut dyn FnMut(&[(u32, u32)], &mut Budget<'_>) -> Result<Go, Exhausted>,
    ) -> Result<Go, Exhausted> {
        let numbers = &self.grid.mixes[mix].pieces;
        // Kinds that take no part keep their first size, so that a choice has one entry a kind.
        let mut order: Vec<usize> = (0..numbers.len()).filter(|&k| numbers[k] > 0).collect();
        order.sort_by_key(|&k| self.sizes[k].len());
        let mut sizes: Vec<(u32, u32)> = self.sizes.iter().map(|s| s[0]).collect();
        let Some(&last) = order.last() else { return Ok(Go::On) };
        let mut by_area: BTreeMap<u64, Vec<(u32, u32)>> = BTreeMap::new();
        for &(w, h) in &self.sizes[last] {
            by_area.entry(u64::from(w) * u64::from(h)).or_default().push((w, h));
        }
        let mut bounds = vec![(0u64, 0u64); order.len() + 1];
        for (i, &k) in order.iter().enumerate().rev() {
            let n = u64::from(numbers[k]);
            let areas = self.sizes[k].iter().map(|&(w, h)| u64::from(w) * u64::from(h));
            let (low, high) = areas.fold((u64::MAX, 0), |(l, h), a| (l.min(a), h.max(a)));
            bounds[i] = (bounds[i + 1].0 + n * low, bounds[i + 1].1 + n * high);
        }
        let walk = Walk { choices: self, numbers, order: &order, by_area: &by_area, bounds: &bounds };
        walk.level(0, self.grid.area(), &mut sizes, budget, visit)
    }
}

struct Walk<'a, 'g> {
    choices: &'a Choices<'g>,
    numbers: &'a [u32],
    order: &'a [usize],
    by_area: &'a BTreeMap<u64, Vec<(u32, u32)>>,
    bounds: &'a [(u64, u64)],
}

impl Walk<'_, '_> {
    fn level(
        &self,
        at: usize,
        left: u64,
        sizes: &mut Vec<(u32, u32)>,
        budget: &mut Budget<'_>,
        visit: &mut dyn FnMut(&[(u32, u32)], &mut Budget<'_>) -> Result<Go, Exhausted>,
    ) -> Result<Go, Exhausted> {
        if left < self.bounds[at].0 || left > self.bounds[at].1 {
            return Ok(Go::On);
        }
        if at + 2 < self.order.len() {
            budget.spend(1)?;
        }
        let kind = self.order[at];
        let n = u64::from(self.numbers[kind]);
        if at + 1 == self.order.len() {
            if !left.is_multiple_of(n) {
                return Ok(Go::On);
            }
            let Some(fitting) = self.by_area.get(&(left / n)) else { return Ok(Go::On) };
            for &size in fitting {
                sizes[kind] = size;
                budget.spend(1)?;
                if self.takes_part(sizes) && visit(sizes, budget)? == Go::Stop {
                    return Ok(Go::Stop);
                }
            }
            return Ok(Go::On);
        }
        for &(w, h) in &self.choices.sizes[kind] {
            let area = n * u64::from(w) * u64::from(h);
            if area > left {
                continue;
            }
            sizes[kind] = (w, h);
            if self.level(at + 1, left - area, sizes, budget, visit)? == Go::Stop {
                return Ok(Go::Stop);
            }
        }
        Ok(Go::On)
    }

    /// Every kind lies in some row across the sheet and in some column down it, so the sheet's width and
    /// height are sums of sides in which that kind occurs.
    fn takes_part(&self, sizes: &[(u32, u32)]) -> bool {
        let grid = self.choices.grid;
        let most = Counts::of(self.numbers);
        let task = Task { grid, sizes, most };
        let rows = task.sums(Axis::X);
        if !rows.has(grid.width) {
            return false;
        }
        let columns = task.sums(Axis::Y);
        if !columns.has(grid.height) {
            return false;
        }
        self.order.iter().all(|&k| {
            let (w, h) = sizes[k];
            let part = |sums: &Sums, length: u32, side: u32| side <= length && sums.has(length - side);
            let turn = grid.kinds[k].turn;
            (part(&rows, grid.width, w) && part(&columns, grid.height, h))
                || (turn && part(&rows, grid.width, h) && part(&columns, grid.height, w))
        })
    }
}
