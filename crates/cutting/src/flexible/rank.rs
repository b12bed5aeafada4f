//! From closed blocks of one choice of sizes to the trees a maker would like best.
//!
//! A row of parts is cut one part at a time; each part but one (the *rest*, never measured) needs the
//! stop at its size. Settings are counted as a set over the whole tree, so sets are carried upwards: for
//! each block the smallest sets of settings that make it, each with the way it is made.
//!
//! Of two trees with the same settings the plainer one is kept: equal parts of a row that are cut alike
//! are handled together, so they count once.

use std::collections::BTreeSet;

use super::sizes::{Blocks, Made};
use crate::{Axis, Tree};

/// Settings as a set of at most 128 different lengths.
type Settings = u128;

/// Most sets kept for one block.
const MOST_SETS: usize = 12;

/// One way to make a block: which settings, and from what.
#[derive(Debug, Clone, Copy)]
struct Way {
    settings: Settings,
    /// Parts that are handled one by one; equal parts of a row count once.
    effort: u32,
    /// The part of which the whole row is made, if its parts are equal and cut alike along that axis.
    alike: Option<(Axis, Alike)>,
    made: Made,
    /// Which way of the first and of the second part.
    parts: (u16, u16),
}

/// A part and how it is made, near enough to tell equal ones: its block, its settings, its effort.
type Alike = (u32, Settings, u32);

/// The ways of one block by the cut at its root.
#[derive(Debug, Clone, Default)]
struct Ways {
    /// A single piece, or rows (root cut level).
    not_x: Vec<Way>,
    not_y: Vec<Way>,
    /// All of them.
    any: Vec<Way>,
}

/// Trees of the block `whole`, fewest settings first, each with a different set of settings.
pub(super) fn best_trees(blocks: &Blocks, whole: u32, most: usize) -> Vec<(u32, Tree)> {
    let needed = needed(blocks, whole);
    let mut lengths: BTreeSet<u32> = BTreeSet::new();
    for &number in &needed {
        lengths.insert(blocks.blocks[number as usize].w);
        lengths.insert(blocks.blocks[number as usize].h);
    }
    let lengths: Vec<u32> = lengths.into_iter().collect();
    if lengths.len() > 128 {
        return vec![(u32::MAX, blocks.tree(whole))];
    }
    let bit = |length: u32| -> Settings { lengths.binary_search(&length).map_or(0, |i| 1 << i) };
    let mut all: Vec<Ways> = vec![Ways::default(); blocks.blocks.len()];
    // A block's parts have less area, so blocks in order of area have their parts ready.
    for &number in &needed {
        let mut ways = Ways::default();
        for &made in &blocks.ways[number as usize] {
            match made {
                Made::Leaf { .. } => {
                    let way = Way { settings: 0, effort: 1, alike: None, made, parts: (0, 0) };
                    keep(&mut ways.not_x, way);
                    keep(&mut ways.not_y, way);
                    keep(&mut ways.any, way);
                }
                Made::Joined { axis, a, b } => {
                    // Each unordered pair stands for both orders: either part may be the one peeled off.
                    join(&mut ways, &all, blocks, axis, a, b, &bit);
                    if a != b {
                        join(&mut ways, &all, blocks, axis, b, a, &bit);
                    }
                }
            }
        }
        all[number as usize] = ways;
    }
    let mut best: Vec<(u32, u32, u16)> = (all[whole as usize].any.iter().enumerate())
        .map(|(i, way)| (way.settings.count_ones(), way.effort, i as u16))
        .collect();
    best.sort_unstable();
    best.truncate(most);
    best.into_iter().map(|(n, _, way)| (n, tree(&all, blocks, whole, List::Any, way))).collect()
}

/// The blocks that occur in some tree of `whole`, in order of area.
fn needed(blocks: &Blocks, whole: u32) -> Vec<u32> {
    let mut wanted = vec![false; blocks.blocks.len()];
    let mut stack = vec![whole];
    wanted[whole as usize] = true;
    while let Some(number) = stack.pop() {
        for made in &blocks.ways[number as usize] {
            if let Made::Joined { a, b, .. } = made {
                for part in [*a, *b] {
                    if !wanted[part as usize] {
                        wanted[part as usize] = true;
                        stack.push(part);
                    }
                }
            }
        }
    }
    let mut needed: Vec<u32> = (0..blocks.blocks.len() as u32).filter(|&n| wanted[n as usize]).collect();
    needed.sort_by_key(|&n| {
        let block = blocks.blocks[n as usize];
        (u64::from(block.w) * u64::from(block.h), n)
    });
    needed
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum List {
    NotX,
    NotY,
    Any,
}

fn list(ways: &Ways, which: List) -> &[Way] {
    match which {
        List::NotX => &ways.not_x,
        List::NotY => &ways.not_y,
        List::Any => &ways.any,
    }
}

/// The list of ways for a part that is peeled off a row cut along `axis`.
fn peeled(axis: Axis) -> List {
    if axis == Axis::X { List::NotX } else { List::NotY }
}

/// Peels `a` off, measured; what stays is `b`: the rest, or more of the row.
fn join(ways: &mut Ways, all: &[Ways], blocks: &Blocks, axis: Axis, a: u32, b: u32, bit: &dyn Fn(u32) -> Settings) {
    let side = |n: u32| {
        let block = blocks.blocks[n as usize];
        if axis == Axis::X { block.w } else { block.h }
    };
    let own = bit(side(a));
    let made = Made::Joined { axis, a, b };
    for (i, p) in list(&all[a as usize], peeled(axis)).iter().enumerate() {
        for (j, q) in all[b as usize].any.iter().enumerate() {
            let unit = (axis, (a, p.settings, p.effort));
            let same = q.alike == Some(unit) || (a == b && (p.settings, p.effort) == (q.settings, q.effort));
            let effort = match q.alike {
                _ if q.alike == Some(unit) => q.effort,
                _ if same => p.effort + 1,
                _ => p.effort + q.effort + 1,
            };
            let settings = p.settings | q.settings | own;
            let way = Way { settings, effort, alike: same.then_some(unit), made, parts: (i as u16, j as u16) };
            keep(if axis == Axis::X { &mut ways.not_y } else { &mut ways.not_x }, way);
            keep(&mut ways.any, way);
        }
    }
}

/// Keeps a way unless a kept one needs no other settings and no more effort; the smallest sets come first.
fn keep(list: &mut Vec<Way>, way: Way) {
    let covers = |a: &Way, b: &Way| a.settings & b.settings == a.settings && a.effort <= b.effort;
    if list.iter().any(|kept| covers(kept, &way)) {
        return;
    }
    list.retain(|kept| !covers(&way, kept));
    let key = |way: &Way| (way.settings.count_ones(), way.effort);
    let at = list.partition_point(|kept| key(kept) <= key(&way));
    list.insert(at, way);
    list.truncate(MOST_SETS);
}

fn tree(all: &[Ways], blocks: &Blocks, number: u32, which: List, way: u16) -> Tree {
    let block = blocks.blocks[number as usize];
    let way = list(&all[number as usize], which)[way as usize];
    match way.made {
        Made::Leaf { kind, turned } => Tree::Piece { kind, width: block.w, height: block.h, turned },
        Made::Joined { axis, a, b } => {
            let part = blocks.blocks[a as usize];
            let at = if axis == Axis::X { part.w } else { part.h };
            let first = tree(all, blocks, a, peeled(axis), way.parts.0);
            let second = tree(all, blocks, b, List::Any, way.parts.1);
            Tree::Cut { axis, at, first: Box::new(first), second: Box::new(second) }
        }
    }
}
