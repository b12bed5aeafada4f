//! Sheets and wanted pieces made ready for a least-cost search, and what can be said of them at once.

use super::pattern::Pattern;
use super::table::Grid;
use super::{Item, Rules, SheetKind, Why};
use crate::Tree;

/// A least-cost question made ready: the wanted items, and which item a piece kind is.
#[derive(Debug)]
pub(super) struct Stock<'a> {
    pub(super) sheets: &'a [SheetKind],
    pub(super) items: Vec<Item>,
    /// The item of each piece kind; `None` where nothing is wanted.
    pub(super) place: Vec<Option<usize>>,
    pub(super) rules: Rules,
}

/// Patterns with how often each is cut.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Plan {
    pub(super) cost: u64,
    pub(super) uses: Vec<(Pattern, u32)>,
}

impl Stock<'_> {
    pub(super) fn pieces(&self) -> u64 {
        self.items.iter().map(|item| u64::from(item.cap)).sum()
    }

    pub(super) fn impossible(&self) -> Option<Why> {
        let there = |s: &&SheetKind| s.copies != Some(0);
        if !self.items.is_empty() && !self.sheets.iter().any(|s| there(&s)) {
            return Some(Why::TooFewSheets);
        }
        let fits = |item: &Item| self.sheets.iter().filter(there).any(|s| item.cuts(s.width, s.height, self.rules));
        if let Some(item) = self.items.iter().find(|item| !fits(item)) {
            return Some(Why::FitsNoSheet { piece: item.kind });
        }
        let there = self.sheets.iter().try_fold(0_u128, |sum, s| Some(sum + area(s) * u128::from(s.copies?)))?;
        let wanted = self.items.iter().map(|item| item.area() * u128::from(item.cap)).sum();
        (wanted > there).then_some(Why::TooLittleArea { wanted, there })
    }

    /// What the area alone must cost.
    pub(super) fn area_bound(&self) -> u64 {
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
    pub(super) fn grids(&self) -> Option<Plan> {
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
        self.rules.allow(&tree, sheet.width, sheet.height).then_some(Pattern { sheet: s, tree, counts })
    }

    /// The grid of a sheet for these items.
    pub(super) fn grid(&self, s: usize, items: &[Item]) -> Option<Grid> {
        Grid::of(&self.sheets[s], items, self.rules)
    }

    /// True if the pattern keeps the rules.
    pub(super) fn allows(&self, pattern: &Pattern) -> bool {
        let sheet = &self.sheets[pattern.sheet];
        self.rules.allow(&pattern.tree, sheet.width, sheet.height)
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

    /// The area of each item, scaled down where a sheet has more than 2^40 square steps.
    pub(super) fn areas(&self) -> Vec<i64> {
        let largest = self.sheets.iter().map(area).max().unwrap_or(1);
        let scale = (largest >> 40).max(1);
        self.items.iter().map(|item| i64::try_from(item.area() / scale).unwrap_or(1 << 40).max(1)).collect()
    }
}

pub(super) fn area(sheet: &SheetKind) -> u128 {
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
