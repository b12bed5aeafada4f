//! The order of distances that moves the stop least often.

use std::collections::{BTreeMap, BTreeSet};

use super::plan::{End, Rect};
use crate::tree::{Axis, Rows};

/// A part of the layout: a row of parts, or a leaf.
#[derive(Debug, Clone)]
pub(super) struct Node {
    pub(super) rect: Rect,
    /// Size along the axis of the row it is part of.
    pub(super) size: u32,
    pub(super) what: What,
}

#[derive(Debug, Clone)]
pub(super) enum What {
    Row { axis: Axis, parts: Vec<usize> },
    Piece { kind: usize, turned: bool },
    Waste,
}

/// Lays the rows out as a list; the root is node 0.
pub(super) fn nodes(rows: &Rows, rect: Rect) -> Vec<Node> {
    let mut list = Vec::new();
    lay(rows, rect, 0, &mut list);
    list
}

fn lay(rows: &Rows, rect: Rect, size: u32, list: &mut Vec<Node>) -> usize {
    let at = list.len();
    let what = match *rows {
        Rows::Waste | Rows::Row { .. } => What::Waste,
        Rows::Piece { kind, turned } => What::Piece { kind, turned },
    };
    list.push(Node { rect, size, what });
    if let Rows::Row { axis, parts } = rows {
        let mut ids = Vec::with_capacity(parts.len());
        let mut left = rect;
        for (i, (size, part)) in parts.iter().enumerate() {
            let rect = match left.split(*axis, End::Near, *size) {
                Some((first, rest)) if i + 1 < parts.len() => {
                    left = rest;
                    first
                }
                _ => left,
            };
            ids.push(lay(part, rect, *size, list));
        }
        list[at].what = What::Row { axis: *axis, parts: ids };
    }
    at
}

/// May the parts of a row change places?
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Order {
    /// Parts come off the two ends only.
    Kept,
    /// Any part may be taken next.
    Free,
}

/// Which nodes are on their own: cut off, or the last of their row.
pub(super) type Loose = Vec<bool>;

/// The nodes as they are before the first cut.
pub(super) fn whole(nodes: &[Node]) -> Loose {
    let mut loose = vec![false; nodes.len()];
    if let Some(root) = loose.first_mut() {
        *root = true;
    }
    loose
}

/// The parts of a row that are still together, if the row itself can be cut.
pub(super) fn together<'a>(
    nodes: &'a [Node],
    loose: &'a Loose,
    row: usize,
) -> impl DoubleEndedIterator<Item = usize> + 'a {
    let parts: &[usize] = match &nodes[row].what {
        What::Row { parts, .. } if loose[row] => parts,
        _ => &[],
    };
    parts.iter().copied().filter(|part| !loose[*part])
}

/// The part that may be cut off next at that distance.
fn next(nodes: &[Node], loose: &Loose, row: usize, setting: u32, order: Order) -> Option<usize> {
    let mut parts = together(nodes, loose, row);
    match order {
        Order::Free => parts.find(|part| nodes[*part].size == setting),
        Order::Kept => {
            let first = parts.next()?;
            let last = parts.next_back();
            [Some(first), last].into_iter().flatten().find(|part| nodes[*part].size == setting)
        }
    }
}

/// Takes one part off its row; the last one left is the rest.
pub(super) fn take(nodes: &[Node], loose: &mut Loose, row: usize, part: usize) -> Option<usize> {
    loose[part] = true;
    let rest = {
        let mut left = together(nodes, loose, row);
        let only = left.next();
        if left.next().is_none() { only } else { None }
    };
    if let Some(rest) = rest {
        loose[rest] = true;
    }
    rest
}

/// Makes every cut the setting allows; returns how many were narrow, twice if both sides were, and how many measured
/// waste: then the good piece is the rest, and takes the errors.
fn close(
    nodes: &[Node],
    loose: &mut Loose,
    setting: u32,
    order: Order,
    smallest: u32,
    taken: &mut Vec<(usize, usize)>,
) -> (u32, u32) {
    let (mut narrow, mut waste) = (0, 0);
    let mut changed = true;
    while changed {
        changed = false;
        for row in 0..nodes.len() {
            while let Some(part) = next(nodes, loose, row, setting, order) {
                take(nodes, loose, row, part);
                taken.push((row, part));
                waste += u32::from(matches!(nodes[part].what, What::Waste));
                changed = true;
                let held: u32 = together(nodes, loose, row).map(|part| nodes[part].size).sum();
                let held = if held == 0 { last_size(nodes, row, loose) } else { held };
                narrow += u32::from(setting < smallest) + u32::from(held < smallest);
            }
        }
    }
    (narrow, waste)
}

/// The size of the smallest part of a finished row: its rest, or something as narrow.
fn last_size(nodes: &[Node], row: usize, loose: &Loose) -> u32 {
    match &nodes[row].what {
        What::Row { parts, .. } => {
            parts.iter().filter(|part| loose[**part]).map(|part| nodes[*part].size).min().unwrap_or(u32::MAX)
        }
        _ => u32::MAX,
    }
}

/// Distances that can be cut now.
fn choices(nodes: &[Node], loose: &Loose, order: Order) -> BTreeSet<u32> {
    let mut found = BTreeSet::new();
    for row in 0..nodes.len() {
        match order {
            Order::Free => found.extend(together(nodes, loose, row).map(|part| nodes[part].size)),
            Order::Kept => {
                let mut parts = together(nodes, loose, row);
                let ends = [parts.next(), parts.next_back()];
                found.extend(ends.into_iter().flatten().map(|part| nodes[part].size));
            }
        }
    }
    found
}

/// A distance that two parts of one row share must still be set: at least so many stops to come.
fn least(nodes: &[Node], loose: &Loose) -> u32 {
    let mut must = BTreeSet::new();
    let mut open = false;
    for node in nodes {
        if let What::Row { parts, .. } = &node.what {
            let mut sizes: Vec<u32> =
                parts.iter().filter(|part| !loose[**part]).map(|part| nodes[*part].size).collect();
            sizes.sort_unstable();
            open |= !sizes.is_empty();
            must.extend(sizes.windows(2).filter(|pair| pair[0] == pair[1]).map(|pair| pair[0]));
        }
    }
    u32::try_from(must.len()).unwrap_or(u32::MAX).max(u32::from(open))
}

/// Nodes the search may open before it turns greedy.
const MOST_NODES: usize = 4000;

/// The distances in order, and whether fewer are impossible.
///
/// Among orders with the fewest stops: fewest narrow cuts, then fewest cuts that measure waste, then wide before narrow.
pub(super) fn order(nodes: &[Node], order: Order, smallest: u32) -> (Vec<u32>, bool) {
    type Key = (u32, u32, u32, Vec<std::cmp::Reverse<u32>>);
    let start = whole(nodes);
    let mut queue: BTreeSet<(Key, Loose)> = BTreeSet::from([((least(nodes, &start), 0, 0, Vec::new()), start)]);
    let mut closed: BTreeMap<Loose, ()> = BTreeMap::new();
    while let Some(((_, narrow, waste, path), loose)) = queue.pop_first() {
        let found = choices(nodes, &loose, order);
        if found.is_empty() {
            return (path.into_iter().map(|setting| setting.0).collect(), true);
        }
        if closed.len() >= MOST_NODES {
            break;
        }
        if closed.insert(loose.clone(), ()).is_some() {
            continue;
        }
        for setting in found {
            let mut then = loose.clone();
            let (thin, lost) = close(nodes, &mut then, setting, order, smallest, &mut Vec::new());
            if closed.contains_key(&then) {
                continue;
            }
            let mut path = path.clone();
            path.push(std::cmp::Reverse(setting));
            let stops = u32::try_from(path.len()).unwrap_or(u32::MAX).saturating_add(least(nodes, &then));
            queue.insert(((stops, narrow + thin, waste + lost, path), then));
        }
    }
    (greedy(nodes, order, smallest), false)
}

/// Always the distance that makes the most cuts, the widest of equals.
fn greedy(nodes: &[Node], order: Order, smallest: u32) -> Vec<u32> {
    let mut loose = whole(nodes);
    let mut path = Vec::new();
    loop {
        let best = choices(nodes, &loose, order)
            .into_iter()
            .map(|setting| {
                let mut then = loose.clone();
                let mut taken = Vec::new();
                close(nodes, &mut then, setting, order, smallest, &mut taken);
                (taken.len(), setting, then)
            })
            .max_by_key(|(cuts, setting, _)| (*cuts, *setting));
        let Some((_, setting, then)) = best else { return path };
        path.push(setting);
        loose = then;
    }
}

/// The rows with their parts in the order in which they are cut off, the rest last.
pub(super) fn arranged(nodes: &[Node], settings: &[u32]) -> Rows {
    let mut loose = whole(nodes);
    let mut taken = Vec::new();
    for setting in settings {
        close(nodes, &mut loose, *setting, Order::Free, 0, &mut taken);
    }
    let mut orders: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for (row, part) in taken {
        orders.entry(row).or_default().push(part);
    }
    rebuild(nodes, 0, &orders)
}

fn rebuild(nodes: &[Node], at: usize, orders: &BTreeMap<usize, Vec<usize>>) -> Rows {
    match &nodes[at].what {
        What::Waste => Rows::Waste,
        What::Piece { kind, turned } => Rows::Piece { kind: *kind, turned: *turned },
        What::Row { axis, parts } => {
            let mut order = orders.get(&at).cloned().unwrap_or_default();
            order.extend(parts.iter().filter(|part| !orders.get(&at).is_some_and(|order| order.contains(part))));
            let parts = order.into_iter().map(|part| (nodes[part].size, rebuild(nodes, part, orders))).collect();
            Rows::Row { axis: *axis, parts }
        }
    }
}
