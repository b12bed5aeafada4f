//! The exact search: every branch at every place it can come to lie, once.
//!
//! What is left of a row is a block of parts; its first column (or line), which parts are in it and where the stop stands
//! decide how good its best order is, whatever was cut off before. Equal branches are one class, so that a row of eight
//! equal strips has nine blocks and not 256.

use std::collections::BTreeMap;

use super::worth::{Leaf, Worth};
use super::{Ask, Score};
use crate::budget::{Budget, Exhausted};
use crate::tree::{Axis, Rows, Tree, canonical, pieces};

/// Rows that can be parted into more blocks than this are beyond the exact search. `Chosen:` twenty parts that all differ.
const MOST_BLOCKS: u64 = 1 << 20;

/// A class of equal branches.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
enum Class {
    Waste,
    Piece(Leaf),
    /// Classes with their size along the axis and how many there are.
    Row(Axis, Vec<(usize, u32, u32)>),
}

/// A block: class, left, top, how many stops are past, which parts are left (mixed radix over the counts of a row).
type Key = (usize, u32, u32, usize, u64);

/// Which part comes off a block next.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Next {
    /// Nothing: it is a leaf, or cannot be cut so.
    None,
    /// The block is one part: the rest.
    Rest(usize),
    /// The part of this place in the row's list comes off at the left or top (true), or at the other end.
    Off(usize, bool),
    /// The stop moves on.
    Stop,
}

struct Search<'a, 'b, 'c> {
    ask: &'a Ask<'a>,
    worth: &'a Worth,
    /// Labels that pieces of one size may have, or `None`: every piece keeps its own.
    labels: Option<BTreeMap<(u32, u32), Vec<Leaf>>>,
    classes: Vec<Class>,
    memo: BTreeMap<Key, (Option<Score>, Next)>,
    budget: &'b mut Budget<'c>,
}

/// The best tree, and what no order is better than; `None` if the budget does not suffice.
pub(super) fn best(ask: &Ask<'_>, worth: &Worth, budget: &mut Budget<'_>) -> Option<(Tree, Score)> {
    let (mut found, mut best) = alone(ask, worth, ask.tree, budget).ok()??;
    let placed = pieces(ask.tree, ask.width, ask.height).ok()?;
    let mut sizes: BTreeMap<(u32, u32), Vec<Leaf>> = BTreeMap::new();
    for piece in &placed {
        let own = sizes.entry((piece.width, piece.height)).or_default();
        if !own.contains(&Leaf::of(piece)) {
            own.push(Leaf::of(piece));
        }
    }
    sizes.retain(|_, labels| labels.len() > 1);
    if sizes.is_empty() {
        return Some((found, best));
    }
    // Pieces of one size may change places: a bound by letting each place choose its piece freely, ...
    let Ok(Some((free, bound))) = search(ask, worth, ask.tree, Some(sizes), budget) else {
        return Some((found, worth.bound(&placed)));
    };
    // ... and answers by changing places and ordering anew in turn, from both.
    for start in [found.clone(), relabelled(&free, &placed)] {
        let (mut now, mut last) = (start, None);
        while let Ok(Some((ordered, score))) = alone(ask, worth, &super::improve::exchanged(ask, worth, &now), budget) {
            if score > best {
                (found, best) = (ordered.clone(), score);
            }
            if last.is_some_and(|last| score <= last) {
                break;
            }
            (now, last) = (ordered, Some(score));
        }
    }
    Some((found, bound.max(best)))
}

/// A tree whose places chose pieces freely, with each label as often as there are pieces of it: too many are replaced by
/// those that are missing, in order.
fn relabelled(tree: &Tree, placed: &[crate::tree::Placed]) -> Tree {
    let mut left: Vec<Leaf> = placed.iter().map(Leaf::of).collect();
    left.sort();
    let mut kept = left.clone();
    // First those that are right stay; then the others take what is left of their size.
    let mut right = Vec::new();
    let mut index = 0;
    visit(tree, &mut |leaf| {
        if let Some(at) = kept.iter().position(|known| *known == leaf) {
            kept.remove(at);
            right.push(index);
        }
        index += 1;
    });
    let mut index = 0;
    rebuilt(tree, &mut |leaf| {
        let this = index;
        index += 1;
        if right.contains(&this) {
            return leaf;
        }
        let fits = |other: &Leaf| (other.width, other.height) == (leaf.width, leaf.height);
        match kept.iter().position(fits) {
            Some(at) => kept.remove(at),
            None => leaf,
        }
    })
}

fn visit(tree: &Tree, each: &mut impl FnMut(Leaf)) {
    match tree {
        Tree::Waste => {}
        Tree::Piece { kind, width, height, turned } => {
            each(Leaf { kind: *kind, width: *width, height: *height, turned: *turned });
        }
        Tree::Cut { first, second, .. } => {
            visit(first, each);
            visit(second, each);
        }
    }
}

/// The same cuts with other labels on the pieces, asked for in the tree's order.
pub(super) fn rebuilt(tree: &Tree, label: &mut impl FnMut(Leaf) -> Leaf) -> Tree {
    match tree {
        Tree::Waste => Tree::Waste,
        Tree::Piece { kind, width, height, turned } => {
            let leaf = label(Leaf { kind: *kind, width: *width, height: *height, turned: *turned });
            Tree::Piece { kind: leaf.kind, width: *width, height: *height, turned: leaf.turned }
        }
        Tree::Cut { axis, at, first, second } => {
            let first = Box::new(rebuilt(first, label));
            Tree::Cut { axis: *axis, at: *at, first, second: Box::new(rebuilt(second, label)) }
        }
    }
}

fn alone(
    ask: &Ask<'_>,
    worth: &Worth,
    tree: &Tree,
    budget: &mut Budget<'_>,
) -> Result<Option<(Tree, Score)>, Exhausted> {
    search(ask, worth, tree, None, budget)
}

fn search(
    ask: &Ask<'_>,
    worth: &Worth,
    tree: &Tree,
    labels: Option<BTreeMap<(u32, u32), Vec<Leaf>>>,
    budget: &mut Budget<'_>,
) -> Result<Option<(Tree, Score)>, Exhausted> {
    let Ok(rows) = canonical(tree, ask.width, ask.height) else { return Ok(None) };
    let mut search = Search { ask, worth, labels, classes: Vec::new(), memo: BTreeMap::new(), budget };
    let root = search.class(&rows, ask.width, ask.height);
    let blocks = |class: &Class| match class {
        Class::Row(_, list) => list.iter().fold(1_u64, |all, part| all.saturating_mul(u64::from(part.2) + 1)),
        _ => 1,
    };
    if search.classes.iter().any(|class| blocks(class) > MOST_BLOCKS) {
        return Err(Exhausted);
    }
    let key = search.whole(root, 0, 0, 0);
    let Some(score) = search.value(key)? else { return Ok(None) };
    let tree = search.arranged(key).tree(ask.width, ask.height);
    Ok(Some((tree, score)))
}

impl Search<'_, '_, '_> {
    fn class(&mut self, rows: &Rows, width: u32, height: u32) -> usize {
        let class = match rows {
            Rows::Waste => Class::Waste,
            Rows::Piece { kind, turned } => self.piece(Leaf { kind: *kind, width, height, turned: *turned }),
            Rows::Row { axis, parts } => {
                let mut list: Vec<(usize, u32, u32)> = Vec::new();
                for (size, part) in parts {
                    let (w, h) = if *axis == Axis::X { (*size, height) } else { (width, *size) };
                    let class = self.class(part, w, h);
                    match list.iter_mut().find(|(of, along, _)| (*of, *along) == (class, *size)) {
                        Some((_, _, count)) => *count += 1,
                        None => list.push((class, *size, 1)),
                    }
                }
                Class::Row(*axis, list)
            }
        };
        match self.classes.iter().position(|known| *known == class) {
            Some(known) => known,
            None => {
                self.classes.push(class);
                self.classes.len() - 1
            }
        }
    }

    /// Where labels are free, all pieces of a size are one class, told by its first label.
    fn piece(&self, leaf: Leaf) -> Class {
        let free = self.labels.as_ref().and_then(|labels| labels.get(&(leaf.width, leaf.height)));
        Class::Piece(free.map_or(leaf, |labels| labels[0]))
    }

    /// The key of a whole branch.
    fn whole(&self, class: usize, x: u32, y: u32, stop: usize) -> Key {
        let code = match &self.classes[class] {
            Class::Row(_, list) => list.iter().map(|part| u64::from(part.2) + 1).product::<u64>() - 1,
            _ => 0,
        };
        // A leaf is not cut any more: where the stop stands does not matter.
        let stop = if matches!(self.classes[class], Class::Row(..)) { stop } else { 0 };
        (class, x, y, stop, code)
    }

    /// The label that is worth most where a piece lies.
    fn labelled(&self, leaf: Leaf, x: u32, y: u32) -> (Score, Leaf) {
        let own = (self.worth.leaf(leaf, x, y), leaf);
        let free = self.labels.as_ref().and_then(|labels| labels.get(&(leaf.width, leaf.height)));
        let others = free.into_iter().flatten().map(|other| (self.worth.leaf(*other, x, y), *other));
        others.fold(own, |best, other| if other.0 > best.0 { other } else { best })
    }

    /// How good the best order of a block is; `None` if the stops do not allow any.
    fn value(&mut self, key: Key) -> Result<Option<Score>, Exhausted> {
        if let Some((known, _)) = self.memo.get(&key) {
            return Ok(*known);
        }
        self.budget.spend(1)?;
        let (class, x, y, ..) = key;
        let answer = match self.classes[class].clone() {
            Class::Waste => (Some(Score::default()), Next::None),
            Class::Piece(leaf) => (Some(self.labelled(leaf, x, y).0), Next::None),
            Class::Row(axis, list) => self.block(key, axis, &list)?,
        };
        self.memo.insert(key, answer);
        Ok(answer.0)
    }

    fn block(&mut self, key: Key, axis: Axis, list: &[(usize, u32, u32)]) -> Result<(Option<Score>, Next), Exhausted> {
        let (class, x, y, stop, code) = key;
        let left = counts(list, code);
        let parts: u32 = left.iter().sum();
        let long: u32 = list.iter().zip(&left).map(|(part, count)| part.1 * count).sum();
        if parts == 1 {
            let at = left.iter().position(|count| *count > 0).unwrap_or(0);
            let child = self.whole(list[at].0, x, y, stop);
            return Ok((self.value(child)?, Next::Rest(at)));
        }
        let mut best: (Option<Score>, Next) = (None, Next::None);
        let set = self.ask.stops.map(|stops| stops.get(stop).copied());
        let mut radix = 1;
        for (at, (part, size, count)) in list.iter().enumerate() {
            let unit = radix;
            radix *= u64::from(*count) + 1;
            if left[at] == 0 || set.is_some_and(|set| set != Some(*size)) {
                continue;
            }
            // Without stops every order is reached by taking parts off the first end alone.
            let ends: &[bool] = if set.is_some() { &[true, false] } else { &[true] };
            for &near in ends {
                let (off, rest) = if near { (0, *size) } else { (long - size, 0) };
                let (there, then) = match axis {
                    Axis::X => ((x + off, y), (x + rest, y)),
                    Axis::Y => ((x, y + off), (x, y + rest)),
                };
                let child = self.whole(*part, there.0, there.1, stop);
                let (Some(one), Some(others)) =
                    (self.value(child)?, self.value((class, then.0, then.1, stop, code - unit))?)
                else {
                    continue;
                };
                if best.0.is_none_or(|known| one + others > known) {
                    best = (Some(one + others), Next::Off(at, near));
                }
            }
        }
        if self.ask.stops.is_some_and(|stops| stop < stops.len()) {
            let later = self.value((class, x, y, stop + 1, code))?;
            if later > best.0 {
                best = (later, Next::Stop);
            }
        }
        Ok(best)
    }

    /// The best order of a block, whose value is known.
    fn arranged(&self, key: Key) -> Rows {
        let (class, x, y, mut stop, mut code) = key;
        let (axis, list) = match &self.classes[class] {
            Class::Waste => return Rows::Waste,
            Class::Piece(leaf) => {
                let leaf = self.labelled(*leaf, x, y).1;
                return Rows::Piece { kind: leaf.kind, turned: leaf.turned };
            }
            Class::Row(axis, list) => (*axis, list),
        };
        let (mut begin, end) = (axis.of(x, y), Vec::new());
        let (mut first, mut last) = (Vec::new(), end);
        loop {
            let place = |at: u32| if axis == Axis::X { (at, y) } else { (x, at) };
            let (bx, by) = place(begin);
            let left = counts(list, code);
            let long: u32 = list.iter().zip(&left).map(|(part, count)| part.1 * count).sum();
            match self.memo.get(&(class, bx, by, stop, code)).map(|known| known.1) {
                Some(Next::Off(at, near)) => {
                    let (part, size, _) = list[at];
                    let (px, py) = place(if near { begin } else { begin + long - size });
                    let made = (size, self.arranged(self.whole(part, px, py, stop)));
                    if near {
                        first.push(made);
                    } else {
                        last.push(made);
                    }
                    begin += if near { size } else { 0 };
                    code -= list[..at].iter().map(|part| u64::from(part.2) + 1).product::<u64>();
                }
                Some(Next::Stop) => stop += 1,
                Some(Next::Rest(at)) => {
                    first.push((list[at].1, self.arranged(self.whole(list[at].0, bx, by, stop))));
                    break;
                }
                Some(Next::None) | None => break,
            }
        }
        first.extend(last.into_iter().rev());
        Rows::Row { axis, parts: first }
    }
}

/// How many of each part are left.
fn counts(list: &[(usize, u32, u32)], code: u64) -> Vec<u32> {
    let mut code = code;
    let next = |part: &(usize, u32, u32)| {
        let radix = u64::from(part.2) + 1;
        let count = code % radix;
        code /= radix;
        u32::try_from(count).unwrap_or(0)
    };
    list.iter().map(next).collect()
}
