//! Where cuts are worth trying on a sheet: sums of piece sides.
//!
//! # Source
//! Normal patterns: Herz 1972; Christofides, Whitlock 1977, *Operations Research* 25(1) (from memory). Here
//! each piece enters a sum at most as often as it is wanted.

use super::{Item, Rules};

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
    pub(super) fn of((w, h): (u32, u32), items: &[Item], rules: Rules) -> Option<Points> {
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

/// Chosen: up to this length every step is looked at, above only the sums there are.
const DENSE: u32 = 1 << 14;

/// All sums with up to `cap` more sides, each one of `sides`.
fn add_item(sums: &[u32], sides: &[u32], cap: u32, length: u32) -> Option<Vec<u32>> {
    if length <= DENSE { add_dense(sums, sides, cap, length) } else { add_sparse(sums, sides, cap, length) }
}

fn add_dense(sums: &[u32], sides: &[u32], cap: u32, length: u32) -> Option<Vec<u32>> {
    // `used[s]`: the fewest copies of this item in a sum that reaches s.
    let mut used = vec![u32::MAX; length as usize + 1];
    for &sum in sums {
        used[sum as usize] = 0;
    }
    for sum in 0..used.len() {
        for &side in sides {
            let before = sum.checked_sub(side as usize).map_or(u32::MAX, |at| used[at]);
            if before < cap {
                used[sum] = used[sum].min(before + 1);
            }
        }
    }
    let reached: Vec<u32> = (0..=length).zip(used).filter(|&(_, copies)| copies < u32::MAX).map(|(s, _)| s).collect();
    (reached.len() <= LIMIT).then_some(reached)
}

fn add_sparse(sums: &[u32], sides: &[u32], cap: u32, length: u32) -> Option<Vec<u32>> {
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
        for (sums, sides, cap) in [(&[0, 4, 9][..], &[3, 7][..], 3), (&[0], &[5, 6], 1), (&[0, 2], &[2], u32::MAX)] {
            assert_eq!(add_dense(sums, sides, cap, 50), add_sparse(sums, sides, cap, 50));
        }
        assert_eq!(floor(&[0, 3, 6], 5), 1);
    }
}
