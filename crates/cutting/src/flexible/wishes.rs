//! Putting layouts in the order a maker would: wishes, differences, growing into what is left over.

use std::cmp::Reverse;
use std::collections::btree_map::Entry;
use std::collections::{BTreeMap, BTreeSet};

use super::grid::Grid;
use super::instance::{Instance, Layout, Wish};
use crate::steps::effort;
use crate::{Axis, Tree};

/// A tree on the scaled grid.
#[derive(Debug, Clone)]
pub(super) struct Found {
    pub(super) mix: usize,
    pub(super) tree: Tree,
}

/// How promising a choice of sizes is before its trees are drawn: few different sides, near to preferred.
pub(super) fn promise(grid: &Grid, sizes: &[(u32, u32)]) -> (usize, u64, u64) {
    let used = |k: &usize| grid.mixes.iter().any(|mix| mix.pieces[*k] > 0);
    let kinds: Vec<usize> = (0..sizes.len()).filter(used).collect();
    let sides: BTreeSet<u32> = kinds.iter().flat_map(|&k| [sizes[k].0, sizes[k].1]).collect();
    let off = kinds.iter().map(|&k| grid.kinds[k].off(sizes[k].0, sizes[k].1)).sum();
    let rough = kinds.iter().map(|&k| rough(sizes[k].0) + rough(sizes[k].1)).sum();
    (sides.len(), off, rough)
}

/// How far a side is from a round fraction: 0 for a multiple of 16 units, 4 for an odd number.
fn rough(side: u32) -> u64 {
    u64::from(4 - side.trailing_zeros().min(4))
}

/// Most equals told beside a layout. `Chosen:` each is placed on the prints anew.
const MOST_EQUALS: usize = 8;

/// Sorts by waste and wishes, and keeps layouts that differ in sizes or settings.
pub(super) fn best(instance: &Instance, grid: &Grid, found: Vec<Found>) -> Vec<Layout> {
    let sheet = u64::from(instance.width) * u64::from(instance.height);
    let mut ranked: Vec<(u64, Vec<u64>, Vec<(usize, u32, u32)>, Layout)> = found
        .into_iter()
        .map(|f| {
            // A pin holds its place only if the branches stay where they are.
            let tree = if grid.pins.is_empty() { arranged(f.tree, grid.width, grid.height) } else { f.tree };
            let tree = padded(scaled(&tree, grid.scale), instance, grid);
            let mut leaves = Vec::new();
            collect(&tree, &mut leaves);
            let used: u64 = leaves.iter().map(|&(_, w, h)| u64::from(w) * u64::from(h)).sum();
            let off = leaves.iter().map(|&(k, w, h)| {
                let (pw, ph) = instance.kinds[k].prefer;
                u64::from(w.abs_diff(pw)) + u64::from(h.abs_diff(ph))
            });
            let off_preferred = off.sum();
            let effort = effort(&tree, instance.width, instance.height);
            let cards = grid.mixes[f.mix].cards.clone();
            let key = instance.wishes.iter().map(|wish| match wish {
                Wish::Settings => u64::from(effort.settings),
                Wish::Cuts => u64::from(effort.cuts),
                Wish::Preferred => off_preferred,
                Wish::Round => leaves.iter().map(|&(_, w, h)| rough(w) + rough(h)).sum(),
                Wish::Variety => (cards.len() - cards.iter().filter(|&&n| n > 0).count()) as u64,
            });
            let key = key.collect();
            leaves.sort_unstable();
            (
                sheet - used,
                key,
                leaves,
                Layout { tree, cards, waste: sheet - used, effort, off_preferred, equals: Vec::new() },
            )
        })
        .collect();
    ranked.sort_by(|a, b| (a.0, &a.1, &a.2).cmp(&(b.0, &b.1, &b.2)));
    // By pieces and settings: which layout has them, if it was kept, and its wishes.
    let mut seen: BTreeMap<(Vec<(usize, u32, u32)>, u32), (usize, Vec<u64>)> = BTreeMap::new();
    let mut layouts: Vec<Layout> = Vec::new();
    for (_, key, leaves, layout) in ranked {
        match seen.entry((leaves, layout.effort.settings)) {
            Entry::Vacant(place) if layouts.len() < instance.alternatives.max(1) => {
                place.insert((layouts.len(), key));
                layouts.push(layout);
            }
            Entry::Vacant(_) => {}
            Entry::Occupied(known) => {
                let (at, wishes) = known.get();
                let kept = &mut layouts[*at];
                let alike = *wishes == key && kept.cards == layout.cards && kept.effort == layout.effort;
                let new = kept.tree != layout.tree && !kept.equals.contains(&layout.tree);
                if alike && new && kept.equals.len() < MOST_EQUALS {
                    kept.equals.push(layout.tree);
                }
            }
        }
    }
    layouts
}

/// Sizes of the pieces as they stand on the card (unturned).
fn collect(tree: &Tree, leaves: &mut Vec<(usize, u32, u32)>) {
    match tree {
        Tree::Piece { kind, width, height, turned } => {
            leaves.push(if *turned { (*kind, *height, *width) } else { (*kind, *width, *height) });
        }
        Tree::Waste => {}
        Tree::Cut { first, second, .. } => {
            collect(first, leaves);
            collect(second, leaves);
        }
    }
}

/// The same tree on the caller's steps.
fn scaled(tree: &Tree, scale: u32) -> Tree {
    match tree {
        Tree::Cut { axis, at, first, second } => Tree::Cut {
            axis: *axis,
            at: at * scale,
            first: Box::new(scaled(first, scale)),
            second: Box::new(scaled(second, scale)),
        },
        Tree::Piece { kind, width, height, turned } => {
            Tree::Piece { kind: *kind, width: width * scale, height: height * scale, turned: *turned }
        }
        Tree::Waste => Tree::Waste,
    }
}

/// Cuts off what lies beyond the last full grid unit.
fn padded(tree: Tree, instance: &Instance, grid: &Grid) -> Tree {
    let (width, height) = (grid.width * grid.scale, grid.height * grid.scale);
    let tree = if height < instance.height { cut(Axis::Y, height, tree, Tree::Waste) } else { tree };
    if width < instance.width { cut(Axis::X, width, tree, Tree::Waste) } else { tree }
}

fn cut(axis: Axis, at: u32, first: Tree, second: Tree) -> Tree {
    Tree::Cut { axis, at, first: Box::new(first), second: Box::new(second) }
}

/// The same cuts in the order of the table: wide parts first, equal parts together, waste last.
fn arranged(tree: Tree, width: u32, height: u32) -> Tree {
    let Tree::Cut { axis, .. } = tree else { return tree };
    let mut parts: Vec<(u32, Tree)> = Vec::new();
    let length = if axis == Axis::X { width } else { height };
    flatten(tree, axis, length, &mut parts);
    let mut parts: Vec<(u32, Tree)> = parts
        .into_iter()
        .map(|(size, part)| {
            let (w, h) = if axis == Axis::X { (size, height) } else { (width, size) };
            (size, arranged(part, w, h))
        })
        .collect();
    parts.sort_by(|a, b| {
        let key = |p: &(u32, Tree)| (p.1 == Tree::Waste, Reverse(p.0));
        (key(a), &a.1).cmp(&(key(b), &b.1))
    });
    // Waste beside waste in one row is one piece of waste.
    let waste: u32 = parts.iter().filter(|p| p.1 == Tree::Waste).map(|p| p.0).sum();
    parts.retain(|p| p.1 != Tree::Waste);
    if waste > 0 {
        parts.push((waste, Tree::Waste));
    }
    let mut rest = None;
    while let Some((size, part)) = parts.pop() {
        rest = Some(match rest {
            None => part,
            Some(rest) => cut(axis, size, part, rest),
        });
    }
    rest.unwrap_or(Tree::Waste)
}

fn flatten(tree: Tree, axis: Axis, length: u32, parts: &mut Vec<(u32, Tree)>) {
    match tree {
        Tree::Cut { axis: own, at, first, second } if own == axis => {
            flatten(*first, axis, at, parts);
            flatten(*second, axis, length - at, parts);
        }
        other => parts.push((length, other)),
    }
}

/// Lets pieces of free size grow into waste that lies along their whole side.
pub(super) fn grow(grid: &Grid, found: &mut [Found]) {
    for f in found {
        let tree = std::mem::replace(&mut f.tree, Tree::Waste);
        f.tree = grown(grid, arranged(tree, grid.width, grid.height), grid.width, grid.height);
    }
}

/// The tree filling as much of width × height as free sizes allow; it is given more room than it has, at most.
fn grown(grid: &Grid, tree: Tree, width: u32, height: u32) -> Tree {
    match tree {
        Tree::Waste => Tree::Waste,
        Tree::Piece { kind, width: w, height: h, turned } => {
            let own = &grid.kinds[kind];
            let (most_w, most_h) = if turned { (own.height.1, own.width.1) } else { (own.width.1, own.height.1) };
            let stretch = |v: u32, room: u32, most: u32| {
                if own.uniform { v } else { (room.min(most) / own.stride * own.stride).max(v) }
            };
            let (w, h) = (stretch(w, width, most_w), stretch(h, height, most_h));
            let piece = Tree::Piece { kind, width: w, height: h, turned };
            let piece = if h < height { cut(Axis::Y, h, piece, Tree::Waste) } else { piece };
            if w < width { cut(Axis::X, w, piece, Tree::Waste) } else { piece }
        }
        Tree::Cut { axis, .. } => {
            let length = if axis == Axis::X { width } else { height };
            let mut parts = Vec::new();
            flatten(tree, axis, length, &mut parts);
            let waste: u32 = parts.iter().filter(|p| p.1 == Tree::Waste).map(|p| p.0).sum();
            parts.retain(|p| p.1 != Tree::Waste);
            let mut spare = waste;
            let mut rest = (spare > 0).then_some(Tree::Waste);
            let mut done: Vec<(u32, Tree)> = Vec::new();
            for (size, part) in parts {
                let more = room(grid, &part, axis).min(spare);
                spare -= more;
                let (w, h) = if axis == Axis::X { (size + more, height) } else { (width, size + more) };
                done.push((size + more, grown(grid, part, w, h)));
            }
            if spare == 0 {
                rest = None;
            }
            while let Some((size, part)) = done.pop() {
                rest = Some(match rest {
                    None => part,
                    Some(rest) => cut(axis, size, part, rest),
                });
            }
            rest.unwrap_or(Tree::Waste)
        }
    }
}

/// By how much a part can grow along an axis.
fn room(grid: &Grid, tree: &Tree, along: Axis) -> u32 {
    match tree {
        Tree::Waste => 0,
        Tree::Piece { kind, width, height, turned } => {
            let own = &grid.kinds[*kind];
            if own.uniform {
                return 0;
            }
            let (most_w, most_h) = if *turned { (own.height.1, own.width.1) } else { (own.width.1, own.height.1) };
            match along {
                Axis::X => most_w - *width,
                Axis::Y => most_h - *height,
            }
        }
        Tree::Cut { axis, first, second, .. } if *axis == along => room(grid, first, along) + room(grid, second, along),
        Tree::Cut { first, second, .. } => room(grid, first, along).min(room(grid, second, along)),
    }
}
