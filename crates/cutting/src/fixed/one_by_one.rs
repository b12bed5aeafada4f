//! Sheet after sheet, each filled as well as the worths of its pieces say.

use super::pattern::{self, Pattern};
use super::stock::{Plan, Stock, area};
use super::{Item, fill};
use crate::{Budget, Exhausted};

impl Stock<'_> {
    /// Raise the worth of pieces that lie on wasteful sheets of a plan.
    ///
    /// # Source
    /// Sequential value correction: Mukhacheva, Zalgaller 1993 (from memory).
    pub(super) fn correct(&self, plan: &Plan, worth: &mut [i64]) {
        let areas = self.areas();
        for (pattern, times) in &plan.uses {
            let sheet = &self.sheets[pattern.sheet];
            let used: u128 = self.items.iter().zip(&pattern.counts).map(|(i, &n)| i.area() * u128::from(n)).sum();
            // Per mille of the sheet's area; an area share fits i64.
            let filled = i64::try_from(used * 1000 / area(sheet)).unwrap_or(1000).max(1);
            for (k, &n) in pattern.counts.iter().enumerate().filter(|&(_, &n)| n > 0) {
                let share =
                    i64::from(n.saturating_mul(*times).min(self.items[k].cap)) * 1000 / i64::from(self.items[k].cap);
                let fair = areas[k].saturating_mul(1000) / filled;
                worth[k] += (fair.max(worth[k] / 8) - worth[k]) / 2 * share / 1000;
                worth[k] = worth[k].max(1);
            }
        }
    }

    /// Sheet after sheet, each cut as well as the worths say for its cost.
    pub(super) fn one_by_one(&self, worth: &[i64], budget: &mut Budget<'_>) -> Result<Option<Plan>, Exhausted> {
        let mut left: Vec<u32> = self.items.iter().map(|item| item.cap).collect();
        let mut copies: Vec<u32> = self.sheets.iter().map(|s| s.copies.unwrap_or(u32::MAX)).collect();
        let mut uses: Vec<(Pattern, u32)> = Vec::new();
        while left.iter().any(|&n| n > 0) {
            let Some(pattern) = self.next_pattern(&left, &copies, worth, budget)? else { return Ok(None) };
            let times = left.iter().zip(&pattern.counts).filter(|&(_, &c)| c > 0).map(|(&l, &c)| l / c).min();
            let Some(times) = times.map(|t| t.min(copies[pattern.sheet])) else { return Ok(None) };
            for (left, count) in left.iter_mut().zip(&pattern.counts) {
                *left -= count * times;
            }
            copies[pattern.sheet] -= if self.sheets[pattern.sheet].copies.is_some() { times } else { 0 };
            uses.push((pattern, times));
        }
        Ok(Some(self.plan(uses)))
    }

    /// The best next sheet: the cheapest that takes all that is left, else the most worth for its cost.
    fn next_pattern(
        &self,
        left: &[u32],
        copies: &[u32],
        worth: &[i64],
        budget: &mut Budget<'_>,
    ) -> Result<Option<Pattern>, Exhausted> {
        let items: Vec<Item> = self.items.iter().zip(left).map(|(item, &cap)| Item { cap, ..*item }).collect();
        let mut best: Option<(bool, i128, u64, Pattern)> = None;
        for (s, sheet) in self.sheets.iter().enumerate().filter(|&(s, _)| copies[s] > 0) {
            let wanted: Vec<usize> =
                (0..items.len()).filter(|&k| items[k].cap > 0 && items[k].fits(sheet.width, sheet.height)).collect();
            let here: Vec<Item> = wanted.iter().map(|&k| items[k]).collect();
            let worth: Vec<i64> = wanted.iter().map(|&k| worth[k].max(1)).collect();
            if here.is_empty() {
                continue;
            }
            let Some(grid) = self.grid(s, &here).filter(|grid| fill::can_fill(grid, here.len())) else { continue };
            let (value, tree) = fill::fill(&grid, &here, &worth, budget)?;
            // The table's tree may hold more of a piece than is left; what it has too many is waste.
            let mut still = vec![0; self.place.len()];
            for item in &here {
                still[item.kind] = item.cap;
            }
            let tree = pattern::trim(&tree, &mut still);
            let pattern = Pattern::of(s, tree, &self.place, self.items.len());
            let all = pattern.counts == left;
            let rate = i128::from(value) * (1 << 32) / i128::from(sheet.cost.max(1));
            let better = best.as_ref().is_none_or(|(best_all, best_rate, best_cost, _)| match (all, *best_all) {
                (true, true) => sheet.cost < *best_cost,
                (false, false) => rate > *best_rate,
                (all, _) => all,
            });
            if better {
                best = Some((all, rate, sheet.cost, pattern));
            }
        }
        Ok(best.map(|(.., pattern)| pattern))
    }
}
