//! Pieces that must lie just here.
//!
//! A rectangle that holds pins is cut anywhere that crosses none of them; a part without pins may lie
//! anywhere, so the tables of blocks answer for it. What sub-multisets can tile each such rectangle is
//! worked out once, from the pins outwards.

use std::collections::BTreeMap;

use super::grid::{Counts, Grid, GridPin};
use crate::{Axis, Budget, Exhausted, Tree};

/// What can fill a rectangle that holds no pin.
pub(super) trait Fillings {
    /// Every sub-multiset that fills w × h; may include none at all where waste is allowed.
    fn of(&mut self, w: u32, h: u32) -> Vec<Counts>;
    /// A tree of that sub-multiset in w × h.
    fn tree(&mut self, counts: Counts, w: u32, h: u32) -> Option<Tree>;
}

/// Most sub-multisets held for all areas: 16 bytes each, 64 MB.
const MOST_HELD: usize = 4_000_000;

/// A rectangle by its edges.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Area {
    left: u32,
    top: u32,
    right: u32,
    bottom: u32,
}

impl Area {
    fn size(self) -> (u32, u32) {
        (self.right - self.left, self.bottom - self.top)
    }

    /// The two parts of a cut at sheet coordinate `at`.
    fn parts(self, axis: Axis, at: u32) -> (Area, Area) {
        match axis {
            Axis::X => (Area { right: at, ..self }, Area { left: at, ..self }),
            Axis::Y => (Area { bottom: at, ..self }, Area { top: at, ..self }),
        }
    }

    fn inside(self, pin: &GridPin) -> bool {
        self.left <= pin.x && self.top <= pin.y && pin.x + pin.width <= self.right && pin.y + pin.height <= self.bottom
    }
}

/// The search outwards from the pins.
pub(super) struct Pinned<'a> {
    grid: &'a Grid,
    fillings: &'a mut dyn Fillings,
    most: Counts,
    known: BTreeMap<Area, Vec<Counts>>,
    /// Entries held by `known`.
    held: usize,
    filled: BTreeMap<(u32, u32), Vec<Counts>>,
}

impl<'a> Pinned<'a> {
    pub(super) fn of(grid: &'a Grid, most: Counts, fillings: &'a mut dyn Fillings) -> Pinned<'a> {
        Pinned { grid, fillings, most, known: BTreeMap::new(), held: 0, filled: BTreeMap::new() }
    }

    /// A tree of the whole sheet for each mix that has one.
    pub(super) fn trees(&mut self, budget: &mut Budget<'_>) -> Result<Vec<(usize, Tree)>, Exhausted> {
        let sheet = Area { left: 0, top: 0, right: self.grid.width, bottom: self.grid.height };
        let reached = self.reach(sheet, budget)?;
        let mut trees = Vec::new();
        for (number, mix) in self.grid.mixes.iter().enumerate() {
            let counts = Counts::of(&mix.pieces);
            if reached.binary_search(&counts).is_ok()
                && let Some(tree) = self.tree(sheet, counts, budget)?
            {
                trees.push((number, tree));
            }
        }
        Ok(trees)
    }

    fn holds_pin(&self, area: Area) -> bool {
        self.grid.pins.iter().any(|pin| area.inside(pin))
    }

    /// Cuts of an area that cross no pin.
    fn cuts(&self, area: Area) -> Vec<(Axis, u32)> {
        let free = |axis: Axis, at: u32| {
            self.grid.pins.iter().filter(|pin| area.inside(pin)).all(|pin| match axis {
                Axis::X => at <= pin.x || pin.x + pin.width <= at,
                Axis::Y => at <= pin.y || pin.y + pin.height <= at,
            })
        };
        let across = (area.left + 1..area.right).map(|at| (Axis::X, at));
        let down = (area.top + 1..area.bottom).map(|at| (Axis::Y, at));
        across.chain(down).filter(|&(axis, at)| free(axis, at)).collect()
    }

    fn fill(&mut self, w: u32, h: u32) -> Vec<Counts> {
        if let Some(known) = self.filled.get(&(w, h)) {
            return known.clone();
        }
        let mut sets = self.fillings.of(w, h);
        sets.retain(|s| s.within(self.most));
        sets.sort_unstable();
        sets.dedup();
        self.filled.insert((w, h), sets.clone());
        sets
    }

    /// Every sub-multiset, pins included, that fills the area with its pins in their places.
    fn reach(&mut self, area: Area, budget: &mut Budget<'_>) -> Result<Vec<Counts>, Exhausted> {
        let (w, h) = area.size();
        if !self.holds_pin(area) {
            return Ok(self.fill(w, h));
        }
        if let Some(known) = self.known.get(&area) {
            return Ok(known.clone());
        }
        let mut reached = Vec::new();
        if let Some(pin) = self.exact(area) {
            reached.push(Counts::one(pin.kind));
        }
        for (axis, at) in self.cuts(area) {
            let (a, b) = area.parts(axis, at);
            // The part without pins is a look-up: if nothing fills it, the other need not be worked out.
            let (near, far) = if self.holds_pin(a) { (b, a) } else { (a, b) };
            let first = self.reach(near, budget)?;
            if first.is_empty() {
                continue;
            }
            let second = self.reach(far, budget)?;
            budget.spend(1 + (first.len() * second.len()) as u64 / 8)?;
            for p in &first {
                for q in &second {
                    let sum = p.plus(*q);
                    if sum.within(self.most) {
                        reached.push(sum);
                    }
                }
            }
            reached.sort_unstable();
            reached.dedup();
        }
        self.held += reached.len();
        if self.held > MOST_HELD {
            return Err(Exhausted);
        }
        self.known.insert(area, reached.clone());
        Ok(reached)
    }

    fn exact(&self, area: Area) -> Option<&GridPin> {
        let (w, h) = area.size();
        self.grid.pins.iter().find(|pin| area.inside(pin) && (pin.width, pin.height) == (w, h))
    }

    fn tree(&mut self, area: Area, counts: Counts, budget: &mut Budget<'_>) -> Result<Option<Tree>, Exhausted> {
        let (w, h) = area.size();
        if !self.holds_pin(area) {
            return Ok(self.fillings.tree(counts, w, h));
        }
        if let Some(pin) = self.exact(area).filter(|pin| Counts::one(pin.kind) == counts) {
            return Ok(Some(Tree::Piece { kind: pin.kind, width: w, height: h, turned: pin.turned }));
        }
        for (axis, at) in self.cuts(area) {
            let (a, b) = area.parts(axis, at);
            let (first, second) = (self.reach(a, budget)?, self.reach(b, budget)?);
            let split = first.iter().find(|p| p.within(counts) && second.binary_search(&counts.minus(**p)).is_ok());
            if let Some(&part) = split {
                let from = if axis == Axis::X { area.left } else { area.top };
                let (first, second) = (self.tree(a, part, budget)?, self.tree(b, counts.minus(part), budget)?);
                return Ok(first.zip(second).map(|(first, second)| Tree::Cut {
                    axis,
                    at: at - from,
                    first: Box::new(first),
                    second: Box::new(second),
                }));
            }
        }
        Ok(None)
    }
}
