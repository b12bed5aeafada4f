//! Where cuts are worth trying on a sheet: sums of piece sides.
//!
//! # Source
//! Normal patterns: Herz 1972; Christofides, Whitlock 1977, *Operations Research* 25(1) (from memory). Here
//! each piece enters a sum at most as often as it is wanted.

use super::{Item, Rules, SheetKind};

/// Chosen: the most positions along one side, so that a table takes at most 128 MB.
pub(super) const LIMIT: usize = 4000;

/// Chosen: the most cells of all tables of a search together, 256 MB of them.
pub(super) const LARGEST: usize = 1 << 25;

/// Positions along both sides of one sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Points {
    /// Widths that can be filled by pieces side by side, ascending, from 0; the last stands for the whole width.
    pub(super) x: Vec<u32>,
    /// The same for heights.
    pub(super) y: Vec<u32>,
}

impl Points {
    /// The positions for these items; `None` above [`LIMIT`].
    ///
    /// Where narrow strips are forbidden, a part is cut exactly as large as it must be: every multiple of the
    /// common divisor of all lengths is a position.
    pub(super) fn of(sheet: &SheetKind, items: &[Item], rules: Rules) -> Option<Points> {
        let (w, h) = (sheet.width, sheet.height);
        if rules.strips() {
            let lengths = items.iter().flat_map(|item| [item.width, item.height]).chain([w, h, rules.least_strip]);
            let unit = lengths.fold(0, gcd).max(1);
            let all = |length: u32| ((length / unit) as usize <= LIMIT).then(|| (0..=length / unit).map(|n| n * unit));
            return Some(Points { x: all(w)?.collect(), y: all(h)?.collect() });
        }
        let fits = |a: u32, b: u32| a <= w && b <= h;
        let side = |length: u32, across: bool| {
            let mut sums = vec![0];
            for item in items {
                let (upright, lying) = (fits(item.width, item.height), item.turn && fits(item.height, item.width));
                let (first, second) = if across { (item.height, item.width) } else { (item.width, item.height) };
                let mut sides = Vec::new();
                if upright {
                    sides.push(first);
                }
                if lying && (second != first || !upright) {
                    sides.push(second);
                }
                sums = add_item(&sums, &sides, item.cap, length)?;
            }
            Some(sums)
        };
        Some(Points { x: side(w, false)?, y: side(h, true)? })
    }
}

/// All sums with up to `cap` more sides, each one of `sides`.
fn add_item(sums: &[u32], sides: &[u32], cap: u32, length: u32) -> Option<Vec<u32>> {
    // `used[s]`: the fewest copies of this item in a sum that reaches s; a sum is extended while copies are left.
    let mut reached: std::collections::BTreeMap<u32, u32> = sums.iter().map(|&s| (s, 0)).collect();
    let mut layer: Vec<u32> = sums.to_vec();
    let mut used = 0;
    while !layer.is_empty() && used < cap {
        used += 1;
        let mut next = Vec::new();
        for &start in &layer {
            for &side in sides {
                let Some(sum) = start.checked_add(side).filter(|&sum| sum <= length) else { continue };
                if let std::collections::btree_map::Entry::Vacant(place) = reached.entry(sum) {
                    place.insert(used);
                    next.push(sum);
                }
            }
            if reached.len() > LIMIT {
                return None;
            }
        }
        layer = next;
    }
    Some(reached.into_keys().collect())
}

fn gcd(a: u32, b: u32) -> u32 {
    if b == 0 { a } else { gcd(b, a % b) }
}

/// Index of the largest point that is at most `length`; points start at 0.
pub(super) fn floor(points: &[u32], length: u32) -> usize {
    points.partition_point(|&p| p <= length) - 1
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sums_respect_the_number_of_copies() {
        assert_eq!(add_item(&[0], &[3], 2, 100), Some(vec![0, 3, 6]));
        assert_eq!(add_item(&[0, 3, 6], &[5], 1, 9), Some(vec![0, 3, 5, 6, 8]));
        assert_eq!(floor(&[0, 3, 6], 5), 1);
    }
}
