//! Brute force for small questions: every split of the pieces by every cut. It shares no code with the engine.

use std::collections::BTreeMap;

use cutting::fixed::{Instance, PieceKind, SheetKind};

/// Single pieces: width, height, may turn, kind.
type Piece = (u32, u32, bool, usize);

pub(crate) struct Plain {
    pub(crate) pieces: Vec<Piece>,
    known: BTreeMap<(u32, u32, u32), bool>,
}

impl Plain {
    /// Every piece of the instance by itself.
    pub(crate) fn of(instance: &Instance) -> Plain {
        let kinds = instance.pieces.iter().enumerate();
        let one = |(k, p): (usize, &PieceKind)| {
            (0..p.demand.unwrap_or(99).min(99)).map(|_| (p.width, p.height, p.turn, k)).collect::<Vec<_>>()
        };
        Plain { pieces: kinds.flat_map(one).collect(), known: BTreeMap::new() }
    }

    /// The mask of all pieces.
    pub(crate) fn all(&self) -> u32 {
        (1 << self.pieces.len()) - 1
    }

    /// True if the pieces of the mask can be cut from w × h, waste allowed.
    pub(crate) fn cuts(&mut self, w: u32, h: u32, mask: u32) -> bool {
        if mask == 0 {
            return true;
        }
        if w == 0 || h == 0 {
            return false;
        }
        if mask.is_power_of_two() {
            let (a, b, turn, _) = self.pieces[mask.trailing_zeros() as usize];
            return (a <= w && b <= h) || (turn && b <= w && a <= h);
        }
        if let Some(&known) = self.known.get(&(w, h, mask)) {
            return known;
        }
        let mut found = false;
        let mut part = (mask - 1) & mask;
        while part > 0 && !found {
            found = (1..w).any(|at| self.cuts(at, h, part) && self.cuts(w - at, h, mask ^ part))
                || (1..h).any(|at| self.cuts(w, at, part) && self.cuts(w, h - at, mask ^ part));
            part = (part - 1) & mask;
        }
        self.known.insert((w, h, mask), found);
        found
    }

    /// Least cost of cutting the pieces of the mask from the sheets that are left; `None`: they do not suffice.
    pub(crate) fn cost(&mut self, sheets: &mut Vec<SheetKind>, mask: u32) -> Option<u64> {
        if mask == 0 {
            return Some(0);
        }
        let first = mask & mask.wrapping_neg();
        let mut best = None;
        for s in 0..sheets.len() {
            let SheetKind { width, height, copies, cost, .. } = sheets[s].clone();
            if copies == Some(0) {
                continue;
            }
            sheets[s].copies = copies.map(|n| n - 1);
            let mut part = mask;
            while part > 0 {
                if part & first > 0
                    && self.cuts(width, height, part)
                    && let Some(rest) = self.cost(sheets, mask ^ part)
                {
                    best = Some(best.map_or(cost + rest, |b: u64| b.min(cost + rest)));
                }
                part = (part - 1) & mask;
            }
            sheets[s].copies = copies;
        }
        best
    }
}
