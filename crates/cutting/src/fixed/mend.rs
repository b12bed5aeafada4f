//! A full sheet made better part by part: a rectangle of it, or two that can be laid side by side, is cut afresh from its
//! own pieces and those that are not on the sheet. A heuristic, no proof.
//!
//! # Source
//! Taking a part out and putting it in again better: Shaw 1998, *CP98*, LNCS 1520 (from memory).

use std::collections::HashSet;

use super::SheetKind;
use super::beam::{self, Guide, Task};
use super::front::mix;
use super::pattern::Pattern;
use super::stock::{Stock, stack};
use crate::tree::{Rows, rows};
use crate::{Axis, Budget, Exhausted, Tree};

/// Chosen: parts of the nodes that are left for one rectangle.
const SHARE: u64 = 64;

/// A rectangle that can be cut afresh: a node of the flat tree, or two parts of one row.
struct Region {
    path: Vec<usize>,
    /// The parts of the row that are joined; empty: the node itself.
    parts: Vec<usize>,
    width: u32,
    height: u32,
    counts: Vec<u32>,
}

/// A sheet that is mended.
pub(super) struct Mend<'a> {
    pub(super) stock: &'a Stock<'a>,
    pub(super) worth: &'a [i64],
    pub(super) caps: &'a [u32],
    /// About the most that the sheet can be worth.
    pub(super) bound: u64,
    /// Width of the beams.
    pub(super) width: usize,
    /// Rectangles that were cut afresh without gain, with what was there to cut.
    past: HashSet<u64>,
}

impl<'a> Mend<'a> {
    pub(super) fn of(
        stock: &'a Stock<'a>,
        (worth, caps): (&'a [i64], &'a [u32]),
        (width, bound): (usize, u64),
    ) -> Mend<'a> {
        Mend { stock, worth, caps, bound, width, past: HashSet::new() }
    }

    /// The tree made better until no rectangle can be; then, as long as the nodes last, a rectangle is cut afresh under
    /// other worths and all is made better again, and what is worth less than before is dropped.
    ///
    /// # Errors
    /// [`Exhausted`] when stopped; `tree` then is the best so far.
    pub(super) fn run(&mut self, tree: &mut Tree, kicks: u64, budget: &mut Budget<'_>) -> Result<(), Exhausted> {
        self.settle(tree, budget)?;
        let mut now = (self.value(tree), tree.clone());
        let mut best = now.0;
        for kick in 0..kicks {
            if best >= i64::try_from(self.bound).unwrap_or(i64::MAX) {
                break;
            }
            let Some(mut next) = self.kicked(&now.1, kick, budget)? else { continue };
            let ended = self.settle(&mut next, budget);
            let value = self.value(&next);
            if value > best {
                best = value;
                *tree = next.clone();
            }
            if value >= now.0 {
                now = (value, next);
            }
            ended?;
        }
        Ok(())
    }

    fn value(&self, tree: &Tree) -> i64 {
        value(&Pattern::of(0, tree.clone(), &self.stock.place, self.worth.len()).counts, self.worth)
    }

    fn regions(&self, tree: &Tree) -> Option<(Rows, Vec<Region>, Vec<u32>)> {
        let sheet = &self.stock.sheets[0];
        let flat = rows(tree, sheet.width, sheet.height).ok()?;
        let mut regions = Vec::new();
        list(self.stock, &flat, (sheet.width, sheet.height), &mut Vec::new(), &mut regions);
        regions.sort_by_key(Region::area);
        let used = counts(self.stock, &flat);
        Some((flat, regions, used))
    }

    fn settle(&mut self, tree: &mut Tree, budget: &mut Budget<'_>) -> Result<(), Exhausted> {
        let sheet = &self.stock.sheets[0];
        'again: while let Some((flat, regions, used)) = self.regions(tree) {
            for region in &regions {
                let now = value(&region.counts, self.worth);
                let left = self.left(region, &used);
                let key = left.iter().fold(mix(u64::from(region.width) << 32 | u64::from(region.height)), |key, &n| {
                    mix(key.wrapping_add(u64::from(n)))
                });
                if !self.past.insert(mix(key ^ now.unsigned_abs())) {
                    continue;
                }
                for guide in Guide::ALL {
                    if let Some(new) = self.afresh(region, &left, (self.worth, guide), budget)?
                        && self.value(&new) > now
                    {
                        *tree = replaced(&flat, (sheet.width, sheet.height), &region.path, region, &new);
                        continue 'again;
                    }
                }
            }
            break;
        }
        Ok(())
    }

    /// One of the larger rectangles cut under worths that are a little different.
    fn kicked(&self, tree: &Tree, kick: u64, budget: &mut Budget<'_>) -> Result<Option<Tree>, Exhausted> {
        let sheet = &self.stock.sheets[0];
        let Some((flat, regions, used)) = self.regions(tree) else { return Ok(None) };
        let large: Vec<&Region> = regions.iter().filter(|r| r.area() * 8 >= area(sheet.width, sheet.height)).collect();
        let seed = mix(kick + 1);
        let Some(region) = large.get(usize::try_from(seed % (large.len().max(1) as u64)).unwrap_or(0)) else {
            return Ok(None);
        };
        // Up to a quarter more or less.
        let noise = |k: u64| 768 + i64::try_from(mix(seed ^ mix(k + 7)) % 512).unwrap_or(0);
        let worth: Vec<i64> = (0..).zip(self.worth).map(|(k, &w)| (w / 16 * noise(k) / 64).max(0)).collect();
        let guide = Guide::ALL[usize::try_from(seed >> 32 & 3).unwrap_or(0)];
        let new = self.afresh(region, &self.left(region, &used), (&worth, guide), budget)?;
        Ok(new.map(|new| replaced(&flat, (sheet.width, sheet.height), &region.path, region, &new)))
    }

    /// Pieces that a region may be cut into.
    fn left(&self, region: &Region, used: &[u32]) -> Vec<u32> {
        (0..self.caps.len()).map(|k| self.caps[k].saturating_sub(used[k]) + region.counts[k]).collect()
    }

    /// A region cut by a beam.
    fn afresh(
        &self,
        region: &Region,
        left: &[u32],
        (worth, guide): (&[i64], Guide),
        budget: &mut Budget<'_>,
    ) -> Result<Option<Tree>, Exhausted> {
        let whole = &self.stock.sheets[0];
        let share = u128::from(self.bound) * region.area() / area(whole.width, whole.height);
        let share = u64::try_from(share).unwrap_or(u64::MAX).max(1);
        let sheets = [SheetKind::whole(region.width, region.height, Some(1), 1)];
        let Stock { items, place, rules, .. } = self.stock;
        let part = Stock { sheets: &sheets, items: items.clone(), place: place.clone(), rules: *rules };
        let task = Task { left, copies: &[1], below: u64::MAX, width: self.width, guide };
        let mut nodes = budget.part(budget.left() / SHARE);
        let found = beam::most_worth(&part, task, (worth, share), &mut nodes);
        budget.join(&nodes)?;
        Ok(found.ok().flatten())
    }
}

impl Region {
    fn area(&self) -> u128 {
        area(self.width, self.height)
    }
}

fn area(width: u32, height: u32) -> u128 {
    u128::from(width) * u128::from(height)
}

/// All regions below a node.
fn list(stock: &Stock<'_>, node: &Rows, (w, h): (u32, u32), path: &mut Vec<usize>, out: &mut Vec<Region>) {
    let Rows::Row { axis, parts } = node else { return };
    let region = |parts: Vec<usize>, size: u32, counts: Vec<u32>, path: &[usize]| {
        let (width, height) = if *axis == Axis::X { (size, h) } else { (w, size) };
        Region { path: path.to_vec(), parts, width, height, counts }
    };
    let each: Vec<Vec<u32>> = parts.iter().map(|(_, part)| counts(stock, part)).collect();
    let both = |a: usize, b: usize| each[a].iter().zip(&each[b]).map(|(a, b)| a + b).collect();
    for (a, (size, part)) in parts.iter().enumerate() {
        out.push(region(vec![a], *size, each[a].clone(), path));
        for b in (a + 1..parts.len()).filter(|_| parts.len() > 2) {
            out.push(region(vec![a, b], size + parts[b].0, both(a, b), path));
        }
        path.push(a);
        list(stock, part, if *axis == Axis::X { (*size, h) } else { (w, *size) }, path, out);
        path.pop();
    }
}

fn counts(stock: &Stock<'_>, node: &Rows) -> Vec<u32> {
    let mut all = vec![0; stock.items.len()];
    count(stock, node, &mut all);
    all
}

fn count(stock: &Stock<'_>, node: &Rows, all: &mut [u32]) {
    match node {
        Rows::Row { parts, .. } => parts.iter().for_each(|(_, part)| count(stock, part, all)),
        Rows::Piece { kind, .. } => {
            if let Some(item) = stock.place.get(*kind).copied().flatten() {
                all[item] += 1;
            }
        }
        Rows::Waste => {}
    }
}

fn value(counts: &[u32], worth: &[i64]) -> i64 {
    counts.iter().zip(worth).map(|(&n, &worth)| i64::from(n) * worth).sum()
}

/// The tree with a region cut anew.
fn replaced(node: &Rows, (w, h): (u32, u32), path: &[usize], region: &Region, new: &Tree) -> Tree {
    let Rows::Row { axis, parts } = node else { return new.clone() };
    let length = axis.of(w, h);
    let inner = |size: u32| if *axis == Axis::X { (size, h) } else { (w, size) };
    let trees: Vec<(u32, Tree)> = match path.split_first() {
        Some((&at, path)) => parts
            .iter()
            .enumerate()
            .map(|(p, (size, part))| match p == at {
                true => (*size, replaced(part, inner(*size), path, region, new)),
                false => (*size, written(part, inner(*size))),
            })
            .collect(),
        None => {
            let size = region.parts.iter().map(|&p| parts[p].0).sum();
            let others = parts.iter().enumerate().filter(|(p, _)| !region.parts.contains(p));
            let others = others.map(|(_, (size, part))| (*size, written(part, inner(*size))));
            others.chain([(size, new.clone())]).collect()
        }
    };
    stack(*axis, trees.into_iter(), length)
}

/// The tree of a flat one.
fn written(node: &Rows, (w, h): (u32, u32)) -> Tree {
    match node {
        Rows::Waste => Tree::Waste,
        Rows::Piece { kind, turned } => Tree::Piece { kind: *kind, width: w, height: h, turned: *turned },
        Rows::Row { axis, parts } => {
            let inner = |size: u32| if *axis == Axis::X { (size, h) } else { (w, size) };
            stack(*axis, parts.iter().map(|(size, part)| (*size, written(part, inner(*size)))), axis.of(w, h))
        }
    }
}
