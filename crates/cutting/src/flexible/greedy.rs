//! Greedy packings, for questions too large to search. They find; they prove nothing.

use std::cmp::Reverse;

use super::grid::Grid;
use super::packing::cut;
use crate::{Axis, Budget, Exhausted, Tree};

type Size = (u32, u32);

/// In which order pieces are put down.
#[derive(Debug, Clone, Copy)]
enum Order {
    LongSide,
    Area,
    Height,
    Width,
}

/// How the rest of a rectangle is cut beside a piece.
#[derive(Debug, Clone, Copy)]
enum Split {
    /// The larger remnant is kept whole.
    KeepLarger,
    Columns,
    Rows,
}

#[derive(Debug, Clone, Copy)]
struct Rule {
    order: Order,
    split: Split,
}

const RULES: [Rule; 12] = {
    const fn rule(order: Order, split: Split) -> Rule {
        Rule { order, split }
    }
    [
        rule(Order::LongSide, Split::KeepLarger),
        rule(Order::Area, Split::KeepLarger),
        rule(Order::Height, Split::Rows),
        rule(Order::Width, Split::Columns),
        rule(Order::Height, Split::KeepLarger),
        rule(Order::Width, Split::KeepLarger),
        rule(Order::LongSide, Split::Columns),
        rule(Order::LongSide, Split::Rows),
        rule(Order::Area, Split::Columns),
        rule(Order::Area, Split::Rows),
        rule(Order::Height, Split::Columns),
        rule(Order::Width, Split::Rows),
    ]
};

/// The largest sizes that some rule packs: all sides grow together first, then each side on its own.
pub(super) fn grown(grid: &Grid, numbers: &[u32], budget: &mut Budget<'_>) -> Option<(Vec<Size>, Tree)> {
    let pieces: u64 = numbers.iter().map(|&n| u64::from(n)).sum();
    // A budget already spent still buys a first answer.
    let mut own = Budget::nodes(budget.left().max(200 * pieces));
    let mut pack = |sizes: &[Size]| -> Result<Option<Tree>, Exhausted> {
        let area: u64 = numbers.iter().zip(sizes).map(|(&n, &(w, h))| u64::from(n) * u64::from(w) * u64::from(h)).sum();
        if area > grid.area() {
            return Ok(None);
        }
        for rule in RULES {
            own.spend(pieces)?;
            if let Some(tree) = packed(grid, numbers, sizes, rule) {
                return Ok(Some(tree));
            }
        }
        Ok(None)
    };
    let mut best = None;
    for eighths in (0..=8).rev() {
        let at = |(lo, hi): (u32, u32), stride: u32| ((lo + (hi - lo) * eighths / 8) / stride * stride).max(lo);
        let sizes: Vec<Size> = grid.kinds.iter().map(|k| (at(k.width, k.stride), at(k.height, k.stride))).collect();
        match pack(&sizes) {
            Ok(Some(tree)) => {
                best = Some((sizes, tree));
                break;
            }
            Ok(None) => {}
            Err(Exhausted) => break,
        }
    }
    let (mut sizes, mut tree) = best?;
    let mut grew = true;
    while grew {
        grew = false;
        for side in 0..2 * sizes.len() {
            let (k, wide) = (side / 2, side % 2 == 0);
            let kind = &grid.kinds[k];
            let most = if wide { kind.width.1 } else { kind.height.1 };
            let mut larger = sizes.clone();
            let length = if wide { &mut larger[k].0 } else { &mut larger[k].1 };
            *length += kind.stride;
            if numbers[k] == 0 || *length > most {
                continue;
            }
            match pack(&larger) {
                Ok(Some(better)) => {
                    (sizes, tree, grew) = (larger, better, true);
                }
                Ok(None) => {}
                Err(Exhausted) => return Some((sizes, tree)),
            }
        }
    }
    Some((sizes, tree))
}

/// Pieces in some order into the snuggest corner of what is free.
fn packed(grid: &Grid, numbers: &[u32], sizes: &[Size], rule: Rule) -> Option<Tree> {
    let mut wanted: Vec<usize> = (0..numbers.len()).flat_map(|k| std::iter::repeat_n(k, numbers[k] as usize)).collect();
    wanted.sort_by_key(|&k| {
        let (w, h) = sizes[k];
        let first = match rule.order {
            Order::LongSide => w.max(h),
            Order::Area => w.saturating_mul(h),
            Order::Height => h,
            Order::Width => w,
        };
        (Reverse((first, w.max(h), w.min(h))), k)
    });
    let mut root = Free::Open { w: grid.width, h: grid.height };
    for kind in wanted {
        let (w, h) = sizes[kind];
        let mut ways = vec![(w, h, false)];
        if grid.kinds[kind].turn {
            ways.push((h, w, true));
        }
        let best = ways.into_iter().filter_map(|(w, h, t)| root.snuggest(w, h).map(|slack| (slack, w, h, t))).min()?;
        root.place(rule.split, best.0, kind, best.1, best.2, best.3);
    }
    Some(root.tree())
}

/// The state of a greedy packing.
enum Free {
    Open { w: u32, h: u32 },
    Taken { kind: usize, w: u32, h: u32, turned: bool },
    Cut { axis: Axis, at: u32, parts: Box<(Free, Free)> },
}

impl Free {
    /// The least slack of any open rectangle that holds w × h.
    fn snuggest(&self, w: u32, h: u32) -> Option<(u32, u32)> {
        match self {
            Free::Open { w: fw, h: fh } if w <= *fw && h <= *fh => Some(((fw - w).min(fh - h), (fw - w).max(fh - h))),
            Free::Cut { parts, .. } => [parts.0.snuggest(w, h), parts.1.snuggest(w, h)].into_iter().flatten().min(),
            _ => None,
        }
    }

    /// Puts the piece into the first open rectangle with that slack; true once done.
    fn place(&mut self, rule: Split, slack: (u32, u32), kind: usize, w: u32, h: u32, turned: bool) -> bool {
        if self.snuggest(w, h) != Some(slack) {
            return false;
        }
        match self {
            Free::Open { w: fw, h: fh } => {
                let (fw, fh) = (*fw, *fh);
                let piece = Free::Taken { kind, w, h, turned };
                let right_first = match rule {
                    Split::KeepLarger => (fw - w) > (fh - h),
                    Split::Columns => true,
                    Split::Rows => false,
                };
                *self = if right_first {
                    let column = split(Axis::Y, h, fh, piece, Free::Open { w, h: fh - h });
                    split(Axis::X, w, fw, column, Free::Open { w: fw - w, h: fh })
                } else {
                    let row = split(Axis::X, w, fw, piece, Free::Open { w: fw - w, h });
                    split(Axis::Y, h, fh, row, Free::Open { w: fw, h: fh - h })
                };
                true
            }
            Free::Cut { parts, .. } => {
                parts.0.place(rule, slack, kind, w, h, turned) || parts.1.place(rule, slack, kind, w, h, turned)
            }
            Free::Taken { .. } => false,
        }
    }

    fn tree(self) -> Tree {
        match self {
            Free::Open { .. } => Tree::Waste,
            Free::Taken { kind, w, h, turned } => Tree::Piece { kind, width: w, height: h, turned },
            Free::Cut { axis, at, parts } => {
                let (a, b) = *parts;
                match (a.tree(), b.tree()) {
                    (Tree::Waste, Tree::Waste) => Tree::Waste,
                    (first, second) => cut(axis, at, first, second),
                }
            }
        }
    }
}

fn split(axis: Axis, at: u32, length: u32, first: Free, second: Free) -> Free {
    if at == length { first } else { Free::Cut { axis, at, parts: Box::new((first, second)) } }
}
