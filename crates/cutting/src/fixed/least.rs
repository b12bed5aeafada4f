//! All pieces from sheets that cost the least.

use super::beam::{self, Guide, Task};
use super::columns::{self, Columns, Proof};
use super::cover::{self, Covered};
use super::deep::{self, Proven};
use super::numbers::{self, Cut, Numbered};
use super::pattern::{self, Pattern};
use super::stock::{Plan, Stock};
use super::{Answer, CutSheet, Instance, Why, costs, dive, items, pool, wishes};
use crate::{Budget, Exhausted, Tree};

/// Answer [`super::Question::LeastCost`]; the instance has been checked.
pub(super) fn least_cost(instance: &Instance, budget: &mut Budget<'_>) -> Answer {
    let items = items(instance);
    let mut place = vec![None; instance.pieces.len()];
    for (k, item) in items.iter().enumerate() {
        place[item.kind] = Some(k);
    }
    let stock = Stock { sheets: &instance.sheets, items, place, rules: instance.rules };
    if let Some(why) = stock.impossible() {
        return Answer::impossible(why, 0);
    }
    let mut search = Search {
        best: stock.grids(),
        bound: stock.area_bound(),
        impossible: false,
        pool: Vec::new(),
        proof: None,
        too_wide: false,
    };
    search.raise(&stock, 0);
    // Chosen: a sixteenth of the nodes, and so many at most, for wishes. A spent budget leaves the best so far.
    let spare = (budget.left() / 16).min(WISHES);
    let mut part = budget.part(budget.left() - spare);
    let ended = search.run(&stock, &mut part);
    // Told before any wishes: the cost is settled.
    part.tell(search.best.as_ref().map(|plan| plan.cost), Some(search.bound));
    let _spent = budget.join(&part);
    if let Some(plan) = &mut search.best
        && (ended.is_ok() || !part.stopped())
    {
        let mut part = budget.part(spare);
        let _ended = wishes::calm(&stock, plan, &mut part);
        let _spent = budget.join(&part);
    }
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

/// Chosen: the most nodes for wishes of a second rank, some ten milliseconds.
const WISHES: u64 = 500_000;

/// Chosen: a first glance at numbers of sheets is a part of the nodes; a look, when patterns are there, is a smaller part
/// but so many nodes if that is not more than half; the last, when quicker ways have not settled it, is half.
const GLANCE: u64 = 128;
const LOOK: (u64, u64) = (8, 2_000_000);

/// Chosen: with more pieces the beam forgets too much on its way.
const MANY: u64 = 2000;

struct Search {
    best: Option<Plan>,
    bound: u64,
    impossible: bool,
    pool: Vec<Pattern>,
    /// What proves the bound, if worths do.
    proof: Option<Proof>,
    /// A beam took too much of the budget: no wider one is tried.
    too_wide: bool,
}

impl Search {
    fn run(&mut self, stock: &Stock<'_>, budget: &mut Budget<'_>) -> Result<(), Exhausted> {
        if self.done() {
            return Ok(());
        }
        let quick = columns::quick(stock, budget)?;
        self.raise(stock, quick);
        if self.done() {
            return Ok(());
        }
        // A look only: most small questions are proven with it. Where there are several kinds of sheets, it comes later.
        let several = stock.sheets.len() > 1 && self.best.is_some();
        if !several {
            self.beam(stock, 1, budget)?;
        }
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
        // Chosen: two thirds of the nodes; the bound and the patterns made by then are of use all the same.
        let mut part = budget.part(budget.left() / 3 * 2);
        let _ended = columns::generate(stock, enough, &mut columns, &mut part);
        self.raise(stock, columns.bound);
        self.impossible |= columns.impossible;
        budget.join(&part)?;
        self.proof = columns.proof;
        for pattern in columns.patterns {
            self.keep(&pattern);
        }
        if several && !self.done() {
            self.numbers(stock, &mut columns.cuts, budget.left() / GLANCE, budget)?;
            self.beam(stock, 1, budget)?;
        }
        self.beam(stock, WIDTHS[0], budget)?;
        self.raise(stock, self.bound);
        if self.done() {
            return Ok(());
        }
        let look = (budget.left() / LOOK.0).max(LOOK.1.min(budget.left() / 2));
        self.numbers(stock, &mut columns.cuts, look, budget)?;
        if self.done() {
            return Ok(());
        }
        let mut worth = columns.worth;
        for width in WIDTHS {
            budget.tell(self.best.as_ref().map(|plan| plan.cost), Some(self.bound));
            self.dive(stock, width, budget)?;
            if self.done() {
                return Ok(());
            }
            if worth.len() == stock.items.len() {
                // Chosen: an eighth of the nodes, or all of them while there is no plan.
                let nodes = if self.best.is_some() { budget.left() / 8 } else { budget.left() };
                let mut part = budget.part(nodes);
                let plan = stock.one_by_one(&worth, &mut part);
                budget.join(&part)?;
                if let Ok(Some(plan)) = plan {
                    stock.correct(&plan, &mut worth);
                    self.offer(plan);
                }
            }
            if !self.done() && width == WIDTHS[0] {
                // Chosen: a look only, until the proof is better.
                self.cover(stock, 16, budget)?;
                self.deep(stock, budget)?;
            }
            if !self.done() && width < WIDTHS[3] {
                self.cover(stock, 3, budget)?;
            }
            if !self.done()
                && let Some(plan) = pool::cheapest(stock, &self.pool, self.best.as_ref(), budget)?
            {
                self.offer(plan);
            }
            if !self.done() && width > WIDTHS[0] {
                self.beam(stock, width, budget)?;
            }
            if width == WIDTHS[1] {
                self.numbers(stock, &mut columns.cuts, budget.left() / 2, budget)?;
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
            budget.join(&part)?;
            match found {
                Ok(Some(patterns)) if !patterns.iter().all(|p| stock.allows(p)) => {}
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

    /// Choose numbers of sheets first, where there are several kinds; with so many nodes.
    fn numbers(
        &mut self,
        stock: &Stock<'_>,
        cuts: &mut Vec<Cut>,
        nodes: u64,
        budget: &mut Budget<'_>,
    ) -> Result<(), Exhausted> {
        if stock.sheets.len() < 2 || self.done() {
            return Ok(());
        }
        let mut found = Numbered::default();
        let mut part = budget.part(nodes);
        let limits = (self.bound, self.below());
        let _ended = numbers::search(stock, (&mut self.pool, cuts), limits, &mut found, &mut part);
        budget.join(&part)?;
        if let Some(plan) = found.plan {
            debug_assert!(stock.suffices(&plan), "a plan of given numbers gives all pieces");
            self.offer(plan);
        }
        self.raise(stock, found.bound);
        Ok(())
    }

    /// Dive with new patterns on the way; with a part of the budget.
    fn deep(&mut self, stock: &Stock<'_>, budget: &mut Budget<'_>) -> Result<(), Exhausted> {
        if self.done() {
            return Ok(());
        }
        let (mut found, mut proven) = (None, Proven::default());
        // Chosen: a third of the nodes.
        let mut part = budget.part(budget.left() / 3);
        let limits = (self.bound, self.below());
        let _ended = deep::search(stock, &mut self.pool, limits, (&mut found, &mut proven), &mut part);
        budget.join(&part)?;
        if let Some(proof) = proven.proof
            && self.proof.as_ref().is_none_or(|known| proof.tighter(known, stock))
        {
            self.proof = Some(proof);
        }
        if let Some(plan) = found {
            debug_assert!(stock.suffices(&plan), "a deep dive's plan gives all pieces");
            self.offer(plan);
        }
        self.raise(stock, proven.bound);
        Ok(())
    }

    /// Look for the cheapest plan exactly, where the pieces are few; with a part of the budget.
    fn cover(&mut self, stock: &Stock<'_>, share: u64, budget: &mut Budget<'_>) -> Result<(), Exhausted> {
        if stock.pieces() > u64::from(dive::FEW) || !stock.rules.plain() {
            return Ok(());
        }
        let none = Proof::none(stock);
        let mut part = budget.part(budget.left() / share);
        let covered = cover::cheapest(stock, self.proof.as_ref().unwrap_or(&none), self.below(), &mut part);
        budget.join(&part)?;
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
    /// The sheets of a plan, without a piece too many.
    pub(super) fn sheets_of(&self, plan: &Plan) -> Vec<CutSheet> {
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
