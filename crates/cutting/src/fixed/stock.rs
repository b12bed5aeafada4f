//! All pieces from sheets that cost the least.

use super::beam::{self, Guide, Task};
use super::columns::{self, Columns, Proof};
use super::cover::{self, Covered};
use super::pattern::{self, Pattern};
use super::table::Grid;
use super::{Answer, CutSheet, Instance, Item, SheetKind, Why, costs, dive, fill, items, pool};
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
    let mut search =
        Search { best: stock.grids(), bound: stock.area_bound(), impossible: false, pool: Vec::new(), too_wide: false };
    search.raise(&stock, 0);
    // A spent budget leaves the best so far.
    let _spent = search.run(&stock, budget);
    match search.best {
        None if search.impossible => Answer::impossible(Why::TooFewSheets, 0),
        None => Answer::unfinished(search.bound, 0),
        Some(plan) => {
            let sheets = stock.sheets_of(&plan);
            let value = sheets.iter().map(|s| stock.sheets[s.sheet].cost * u64::from(s.times)).sum();
            Answer::cost(value, search.bound, sheets)
        }
    }
}

/// Chosen: widths of the beam, one after another while the gap is open and the budget lasts.
const WIDTHS: [usize; 5] = [4, 16, 64, 256, 1024];

/// Chosen: with more pieces the beam forgets too much on its way.
const MANY: u64 = 2000;

struct Search {
    best: Option<Plan>,
    bound: u64,
    impossible: bool,
    pool: Vec<Pattern>,
    /// A beam took too much of the budget: no wider one is tried.
    too_wide: bool,
}

impl Search {
    fn run(&mut self, stock: &Stock<'_>, budget: &mut Budget<'_>) -> Result<(), Exhausted> {
        if self.done() {
            return Ok(());
        }
        self.beam(stock, WIDTHS[0], budget)?;
        if self.best.is_none()
            && !self.done()
            && let Some(plan) = stock.one_by_one(&stock.areas(), budget)?
        {
            self.offer(plan);
        }
        self.raise(stock, self.bound);
        if self.done() {
            return Ok(());
        }
        let mut columns = Columns::default();
        let enough = self.best.as_ref().map_or(u64::MAX, |plan| plan.cost);
        let made = columns::generate(stock, enough, &mut columns, budget);
        self.raise(stock, columns.bound);
        self.impossible |= columns.impossible;
        made?;
        for pattern in columns.patterns {
            self.keep(&pattern);
        }
        let mut worth = columns.worth;
        for width in WIDTHS {
            self.dive(stock, width, budget)?;
            if self.done() {
                return Ok(());
            }
            if worth.len() == stock.items.len()
                && let Some(plan) = stock.one_by_one(&worth, budget)?
            {
                stock.correct(&plan, &mut worth);
                self.offer(plan);
            }
            if !self.done() && width < WIDTHS[3] {
                self.cover(stock, columns.proof.as_ref(), budget)?;
            }
            if !self.done()
                && let Some(plan) = pool::cheapest(stock, &self.pool, self.best.as_ref(), budget)?
            {
                self.offer(plan);
            }
            if !self.done() && width > WIDTHS[0] {
                self.beam(stock, width, budget)?;
            }
            if self.done() {
                return Ok(());
            }
        }
        Ok(())
    }

    /// Cut all pieces by beams of a width under all guides, as long as each is a small part of the budget.
    fn beam(&mut self, stock: &Stock<'_>, width: usize, budget: &mut Budget<'_>) -> Result<(), Exhausted> {
        if self.too_wide || stock.pieces() > MANY {
            return Ok(());
        }
        let left: Vec<u32> = stock.items.iter().map(|item| item.cap).collect();
        let copies: Vec<u32> = stock.sheets.iter().map(|s| s.copies.unwrap_or(u32::MAX)).collect();
        for guide in Guide::ALL {
            if self.done() {
                return Ok(());
            }
            let task = Task { left: &left, copies: &copies, below: self.below(), width, guide };
            let mut part = budget.part(budget.left() / 8);
            let found = beam::search(stock, task, &mut part);
            budget.spend(part.spent())?;
            match found {
                Ok(Some(patterns)) => {
                    self.offer(stock.plan(patterns.into_iter().map(|pattern| (pattern, 1)).collect()));
                    self.raise(stock, self.bound);
                }
                Ok(None) => {}
                Err(Exhausted) => {
                    self.too_wide = true;
                    return Ok(());
                }
            }
        }
        Ok(())
    }

    fn dive(&mut self, stock: &Stock<'_>, width: usize, budget: &mut Budget<'_>) -> Result<(), Exhausted> {
        let mut found = None;
        let ended = dive::dive(stock, &self.pool, (self.below(), width), &mut found, budget);
        if let Some(plan) = found {
            debug_assert!(stock.suffices(&plan), "a dive's plan gives all pieces");
            self.offer(plan);
            self.raise(stock, self.bound);
        }
        ended
    }

    /// Look for the cheapest plan exactly, where the pieces are few; with a part of the budget.
    fn cover(&mut self, stock: &Stock<'_>, proof: Option<&Proof>, budget: &mut Budget<'_>) -> Result<(), Exhausted> {
        if stock.pieces() > u64::from(dive::FEW) {
            return Ok(());
        }
        let none = Proof::none(stock);
        let mut part = budget.part(budget.left() / 4);
        let covered = cover::cheapest(stock, proof.unwrap_or(&none), self.below(), &mut part);
        budget.spend(part.spent())?;
        match covered {
            Covered::Open => {}
            Covered::Best(plan) => {
                debug_assert!(stock.suffices(&plan), "a cover gives all pieces");
                self.bound = plan.cost;
                self.offer(plan);
            }
            Covered::None => match &self.best {
                Some(best) => self.bound = best.cost,
                None => self.impossible = true,
            },
        }
        Ok(())
    }

    /// Only plans below this cost are of use.
    fn below(&self) -> u64 {
        self.best.as_ref().map_or(u64::MAX, |plan| plan.cost)
    }

    fn done(&self) -> bool {
        self.impossible || self.best.as_ref().is_some_and(|plan| plan.cost <= self.bound)
    }

    /// Raise the bound to the next sum that sheets can cost.
    fn raise(&mut self, stock: &Stock<'_>, bound: u64) {
        self.bound = self.bound.max(bound);
        if let Some(best) = &self.best {
            self.bound = costs::next_sum(stock.sheets, self.bound, best.cost);
        }
    }

    fn keep(&mut self, pattern: &Pattern) {
        if !self.pool.iter().any(|p| p.sheet == pattern.sheet && p.counts == pattern.counts) {
            self.pool.push(pattern.clone());
        }
    }

    fn offer(&mut self, plan: Plan) {
        for (pattern, _) in &plan.uses {
            self.keep(pattern);
        }
        if self.best.as_ref().is_none_or(|best| plan.cost < best.cost) {
            self.best = Some(plan);
        }
    }
}

impl Stock<'_> {
    fn pieces(&self) -> u64 {
        self.items.iter().map(|item| u64::from(item.cap)).sum()
    }

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

    /// True if the plan gives all pieces from the sheets there are.
    pub(super) fn suffices(&self, plan: &Plan) -> bool {
        let pieces = self.items.iter().enumerate().all(|(k, item)| {
            let cut: u64 = plan.uses.iter().map(|(p, times)| u64::from(p.counts[k]) * u64::from(*times)).sum();
            cut >= u64::from(item.cap)
        });
        let used = |s: usize| plan.uses.iter().filter(|(p, _)| p.sheet == s).map(|(_, t)| u64::from(*t)).sum::<u64>();
        pieces
            && self.sheets.iter().enumerate().all(|(s, k)| k.copies.is_none_or(|copies| used(s) <= u64::from(copies)))
    }

    /// Raise the worth of pieces that lie on wasteful sheets of a plan.
    ///
    /// # Source
    /// Sequential value correction: Mukhacheva, Zalgaller 1993 (from memory).
    fn correct(&self, plan: &Plan, worth: &mut [i64]) {
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
pub(super) fn stack(axis: crate::Axis, parts: impl DoubleEndedIterator<Item = (u32, Tree)>, length: u32) -> Tree {
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
