//! A bound on the most value from one sheet when pieces come at most, or at least, so often.
//!
//! The table counts every piece as often as it likes. Pieces that it uses too often are made worth less, pieces
//! that it must use more; what that changes at most is added up beside the table.
//!
//! # Source
//! Lagrangian relaxation of the numbers of copies, improved by subgradients: Christofides, Whitlock 1977,
//! *Operations Research* 25(1); Held, Wolfe, Crowder 1974, *Mathematical Programming* 6 (from memory).

use super::Item;
use super::pattern::Pattern;
use super::table::{self, Grid, Table};
use crate::{Budget, Exhausted, Tree};

/// A piece's worth in a search: at least `min` and at most `cap` copies of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Limits {
    pub(super) min: u32,
    pub(super) cap: u32,
}

/// Worths with the bound that they prove.
#[derive(Debug, Clone, Default)]
pub(super) struct Worths {
    /// Worth of each item, `scale` times the value at first.
    pub(super) worth: Vec<i64>,
    /// What may be added to the table's value, in the same measure.
    pub(super) extra: i64,
    pub(super) scale: i64,
    /// No choice of pieces is worth more, in the instance's measure.
    pub(super) bound: u64,
}

/// Chosen: rounds of improving worths.
const ROUNDS: u32 = 80;

/// Chosen: a value counts so many times, so that worths between whole values are possible.
const SCALE: i64 = 256;

/// Improve the bound; every tree that the table proposes is handed to `offer`, which says the best value so far.
///
/// # Errors
/// [`Exhausted`] when stopped; `best` then has the best bound so far.
pub(super) fn improve(
    grid: &Grid,
    items: &[Item],
    limits: &[Limits],
    best: &mut Worths,
    offer: &mut dyn FnMut(&Tree) -> u64,
    budget: &mut Budget<'_>,
) -> Result<(), Exhausted> {
    let value = |k: usize| i64::try_from(items[k].value).unwrap_or(i64::MAX);
    let most = items.iter().zip(limits).map(|(item, l)| u128::from(item.value) * u128::from(l.cap)).sum::<u128>();
    let scale = if most < 1 << 52 { SCALE } else { 1 };
    let mut worth: Vec<i64> = (0..items.len()).map(|k| value(k).saturating_mul(scale)).collect();
    let place: Vec<Option<usize>> = places(items);
    let (mut table, mut step, mut stale) = (Table::default(), 1.0_f64, 0);
    for _ in 0..ROUNDS {
        table::fill(grid, items, &worth, &mut table, budget)?;
        let whole = table.whole();
        let extra = extra(items, limits, &worth, scale);
        let bound = u64::try_from((whole + extra).max(0) / scale).unwrap_or(u64::MAX);
        let tree = table::tree(grid, items, &worth, &table);
        let found = offer(&tree);
        if best.worth.is_empty() || bound < best.bound {
            *best = Worths { worth: worth.clone(), extra, scale, bound };
            stale = 0;
        } else {
            stale += 1;
            if stale % 4 == 0 {
                step /= 2.0;
            }
        }
        if best.bound <= found {
            return Ok(());
        }
        let counts = Pattern::of(0, tree, &place, items.len()).counts;
        // How far each count is from what the worth allows.
        let far: Vec<i64> = (0..items.len())
            .map(|k| {
                let n = i64::from(counts[k]);
                let (min, cap) = (i64::from(limits[k].min), i64::from(limits[k].cap));
                if worth[k] > value(k) * scale {
                    n - min
                } else if worth[k] < value(k) * scale {
                    n - cap
                } else {
                    (n - cap).max(0) + (n - min).min(0)
                }
            })
            .collect();
        let norm: f64 = far.iter().map(|&d| float(d) * float(d)).sum();
        if norm == 0.0 || step < 1e-3 {
            return Ok(());
        }
        let gap = float((whole + extra) - i64::try_from(found).unwrap_or(i64::MAX / scale).saturating_mul(scale));
        for (k, worth) in worth.iter_mut().enumerate() {
            let moved = *worth - round(step * gap * float(far[k]) / norm);
            // A step does not cross the value itself, where the sense of the limit changes.
            let full = value(k) * scale;
            let crosses = (*worth < full && moved > full) || (*worth > full && moved < full);
            *worth = if crosses { full } else { moved }.clamp(0, full.saturating_mul(8).max(1 << 20));
        }
    }
    Ok(())
}

/// The most that the true value of allowed numbers can be above their worth.
fn extra(items: &[Item], limits: &[Limits], worth: &[i64], scale: i64) -> i64 {
    let rows = items.iter().zip(limits).zip(worth);
    rows.map(|((item, limit), &worth)| {
        let above = i64::try_from(item.value).unwrap_or(i64::MAX).saturating_mul(scale) - worth;
        above * i64::from(if above > 0 { limit.cap } else { limit.min })
    })
    .sum()
}

/// The item of each piece kind that the items name.
pub(super) fn places(items: &[Item]) -> Vec<Option<usize>> {
    let mut place = vec![None; items.iter().map(|item| item.kind + 1).max().unwrap_or(0)];
    for (k, item) in items.iter().enumerate() {
        place[item.kind] = Some(k);
    }
    place
}

#[expect(clippy::cast_precision_loss, reason = "a proposal only; bounds are worked out in whole numbers")]
fn float(n: i64) -> f64 {
    n as f64
}

#[expect(clippy::cast_possible_truncation, reason = "saturates; a proposal only")]
fn round(x: f64) -> i64 {
    x.round().clamp(-1e15, 1e15) as i64
}
