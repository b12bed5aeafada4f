//! All pieces from sheets that cost the least.

use super::pattern::{self, Pattern};
use super::table::Grid;
use super::{Answer, CutSheet, Instance, Item, SheetKind, Why, fill, items};
use crate::{Budget, Exhausted, Tree};

/// A least-cost question made ready: the wanted items, and which item a piece kind is.
#[derive(Debug)]
pub(super) struct Stock<'a> {
    pub(super) sheets: &'a [SheetKind],
    pub(super) items: Vec<Item>,
    /// The item of each piece kind; `None` where nothing is wanted.
    pub(super) place: Vec<Option<usize>>,
}

/// Patterns with how often each is cut.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Plan {
    pub(super) cost: u64,
    pub(super) uses: Vec<(Pattern, u32)>,
}

/// Answer [`super::Question::LeastCost`]; the instance has been checked.
pub(super) fn least_cost(instance: &Instance, budget: &mut Budget<'_>) -> Answer {
    let items = items(instance);
    let mut place = vec![None; instance.pieces.len()];
    for (k, item) in items.iter().enumerate() {
        place[item.kind] = Some(k);
    }
    let stock = Stock { sheets: &instance.sheets, items, place };
    if let Some(why) = stock.impossible() {
        return Answer::impossible(why, 0);
    }
    let mut best = stock.grids();
    let bound = stock.area_bound();
    // A spent budget leaves the best so far.
    let _spent = stock.improve(&mut best, bound, budget);
    match best {
        None => Answer::unfinished(bound, 0),
        Some(plan) => {
            let sheets = stock.sheets_of(&plan);
            let value = sheets.iter().map(|s| stock.sheets[s.sheet].cost * u64::from(s.times)).sum();
            Answer::found(value, bound.min(value), sheets, 0)
        }
    }
}

impl Stock<'_> {
    fn impossible(&self) -> Option<Why> {
        let fits = |item: &Item| self.sheets.iter().any(|s| s.copies != Some(0) && item.fits(s.width, s.height));
        if let Some(item) = self.items.iter().find(|item| !fits(item)) {
            return Some(Why::FitsNoSheet { piece: item.kind });
        }
        let there = self.sheets.iter().try_fold(0_u128, |sum, s| Some(sum + area(s) * u128::from(s.copies?)))?;
        let wanted = self.items.iter().map(|item| item.area() * u128::from(item.cap)).sum();
        (wanted > there).then_some(Why::TooLittleArea { wanted, there })
    }

    /// What the area alone must cost.
    fn area_bound(&self) -> u64 {
        let mut sheets: Vec<&SheetKind> = self.sheets.iter().collect();
        sheets.sort_by(|a, b| (u128::from(a.cost) * area(b)).cmp(&(u128::from(b.cost) * area(a))));
        let mut wanted: u128 = self.items.iter().map(|item| item.area() * u128::from(item.cap)).sum();
        let mut cost = 0_u128;
        for sheet in sheets {
            let there = sheet.copies.map_or(wanted, |copies| (area(sheet) * u128::from(copies)).min(wanted));
            if there == wanted {
                cost += (wanted * u128::from(sheet.cost)).div_ceil(area(sheet));
                break;
            }
            cost += u128::from(sheet.cost) * there / area(sheet);
            wanted -= there;
        }
        u64::try_from(cost).unwrap_or(0)
    }

    /// Each kind of piece by itself in a plain grid: a plan at once, if sheets are without limit.
    fn grids(&self) -> Option<Plan> {
        let mut uses = Vec::new();
        for item in 0..self.items.len() {
            let fits = |&s: &usize| self.sheets[s].copies.is_none();
            let pattern = (0..self.sheets.len())
                .filter(fits)
                .filter_map(|s| self.grid_pattern(s, item))
                .min_by_key(|p| self.cost_of(p, self.items[item].cap.div_ceil(p.counts[item])))?;
            let times = self.items[item].cap.div_ceil(pattern.counts[item]);
            uses.push((pattern, times));
        }
        Some(self.plan(uses))
    }

    fn cost_of(&self, pattern: &Pattern, times: u32) -> u64 {
        self.sheets[pattern.sheet].cost * u64::from(times)
    }

    /// As many of one item as a plain grid gives on a sheet, at most as many as are wanted.
    pub(super) fn grid_pattern(&self, s: usize, k: usize) -> Option<Pattern> {
        let (sheet, item) = (&self.sheets[s], self.items[k]);
        let way = item
            .ways(sheet.width, sheet.height)
            .max_by_key(|&(w, h, turned)| (u64::from(sheet.width / w) * u64::from(sheet.height / h), !turned))?;
        let (w, h, turned) = way;
        let mut left = item.cap.min(4096);
        let mut counts = vec![0; self.items.len()];
        let mut columns = Vec::new();
        for _ in 0..sheet.width / w {
            let rows = left.min(sheet.height / h);
            if rows == 0 {
                break;
            }
            left -= rows;
            counts[k] += rows;
            columns.push(rows);
        }
        let piece = Tree::Piece { kind: item.kind, width: w, height: h, turned };
        let column = |rows: u32| stack(crate::Axis::Y, (0..rows).map(|_| (h, piece.clone())), sheet.height);
        let tree = stack(crate::Axis::X, columns.into_iter().map(|rows| (w, column(rows))), sheet.width);
        Some(Pattern { sheet: s, tree, counts })
    }

    pub(super) fn plan(&self, uses: Vec<(Pattern, u32)>) -> Plan {
        let cost = uses.iter().map(|(p, times)| self.cost_of(p, *times)).sum();
        Plan { cost, uses }
    }

    fn improve(&self, best: &mut Option<Plan>, bound: u64, budget: &mut Budget<'_>) -> Result<(), Exhausted> {
        if best.as_ref().is_some_and(|plan| plan.cost <= bound) {
            return Ok(());
        }
        if let Some(plan) = self.one_by_one(&self.areas(), budget)?
            && best.as_ref().is_none_or(|best| plan.cost < best.cost)
        {
            *best = Some(plan);
        }
        Ok(())
    }

    /// The area of each item, scaled down where a sheet has more than 2^40 square steps.
    pub(super) fn areas(&self) -> Vec<i64> {
        let largest = self.sheets.iter().map(area).max().unwrap_or(1);
        let scale = (largest >> 40).max(1);
        self.items.iter().map(|item| i64::try_from(item.area() / scale).unwrap_or(1 << 40).max(1)).collect()
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
            let Some(grid) = Grid::of(sheet, &here).filter(|grid| fill::can_fill(grid, here.len())) else { continue };
            let (value, tree) = fill::fill(&grid, &here, &worth, budget)?;
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

    /// The sheets of a plan, without a piece too many.
    fn sheets_of(&self, plan: &Plan) -> Vec<CutSheet> {
        let mut left = vec![0; self.place.len()];
        for item in &self.items {
            left[item.kind] = item.cap;
        }
        let mut sheets: Vec<CutSheet> = Vec::new();
        for (pattern, times) in &plan.uses {
            let whole = self
                .items
                .iter()
                .zip(&pattern.counts)
                .filter(|&(_, &count)| count > 0)
                .map(|(item, &count)| left[item.kind] / count)
                .min()
                .unwrap_or(0)
                .min(*times);
            for (item, &count) in self.items.iter().zip(&pattern.counts) {
                left[item.kind] -= count * whole;
            }
            add(&mut sheets, pattern.sheet, pattern.tree.clone(), whole);
            for _ in whole..*times {
                let tree = pattern::trim(&pattern.tree, &mut left);
                if tree == Tree::Waste {
                    break;
                }
                add(&mut sheets, pattern.sheet, tree, 1);
            }
        }
        sheets.sort_by(|a, b| b.times.cmp(&a.times).then(a.sheet.cmp(&b.sheet)).then(a.tree.cmp(&b.tree)));
        sheets
    }
}

fn add(sheets: &mut Vec<CutSheet>, sheet: usize, tree: Tree, times: u32) {
    if times == 0 {
        return;
    }
    match sheets.iter_mut().find(|s| s.sheet == sheet && s.tree == tree) {
        Some(same) => same.times += times,
        None => sheets.push(CutSheet { sheet, tree, times }),
    }
}

fn area(sheet: &SheetKind) -> u128 {
    u128::from(sheet.width) * u128::from(sheet.height)
}

/// Parts one after another along an axis; what is left over is waste.
fn stack(axis: crate::Axis, parts: impl DoubleEndedIterator<Item = (u32, Tree)>, length: u32) -> Tree {
    let parts: Vec<(u32, Tree)> = parts.collect();
    let left = length - parts.iter().map(|(side, _)| side).sum::<u32>();
    let mut tree: Option<Tree> = (left > 0).then_some(Tree::Waste);
    for (side, part) in parts.into_iter().rev() {
        tree = Some(match tree {
            None => part,
            Some(rest) => super::table::join(axis, side, part, rest),
        });
    }
    tree.unwrap_or(Tree::Waste)
}
