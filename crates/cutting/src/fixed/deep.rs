//! Whole numbers from the linear programme, with new patterns for what is left after each sheet that was fixed.
//!
//! The dive of [`super::dive`] rounds shares of the patterns that there are; these were made for all pieces together
//! and hold many a piece more often than it is wanted. Here each step makes patterns of the numbers that are left,
//! until the programme of the rest is as good as solved, and takes the sheet of the largest share; where that leads
//! nowhere, the sheet of the next largest share at a few places. A heuristic, no proof.
//!
//! # Source
//! Diving in column generation with limited discrepancies: Sadykov, Vanderbeck, Pessoa, Tahiri, Uchoa 2019,
//! *INFORMS J. Computing* 31(2) (from memory).

use std::collections::BTreeSet;

use microlp::{ComparisonOp, OptimizationDirection, Problem, Solution, Variable};

use super::beam::{self, Guide, Task};
use super::columns::{self, Bound, Proof, whole};
use super::dive::Rest;
use super::look::{self, Kind};
use super::pattern::Pattern;
use super::stock::{Plan, Stock};
use crate::{Budget, Exhausted};

/// Chosen: at so many places of one way down the sheet of the largest share may be passed over.
const SPARE: usize = 6;

/// Chosen: rounds of new patterns after one sheet was fixed, and before the first.
const ROUNDS: (usize, usize) = (12, 400);

/// Chosen: so few pieces are also cut by beams of this width.
const END: (u64, usize) = (48, 16);

/// Whole-number worth of the dearest sheet's cost, like that of [`super::columns`].
const UNIT: f64 = (1_u64 << 34) as f64;

struct Deep<'a> {
    stock: &'a Stock<'a>,
    pool: &'a mut Vec<Pattern>,
    /// Only plans that cost less are of use, and none costs less than `enough`.
    below: u64,
    enough: u64,
    best: Option<Plan>,
    /// What was left, with the places still spare, where a way down has been already.
    met: BTreeSet<(Vec<u32>, Vec<u32>, usize)>,
    dearest: f64,
    proven: Proven,
    /// The programme of all pieces is not below the best cost.
    hopeless: bool,
}

/// What the programme of all pieces proves.
#[derive(Debug, Clone, Default)]
pub(super) struct Proven {
    /// No plan costs less.
    pub(super) bound: u64,
    pub(super) proof: Option<Proof>,
}

/// The dual programme of what is left, solved.
struct Dual {
    solution: Solution,
    worth: Vec<Option<Variable>>,
    spare: Vec<Option<Variable>>,
    /// Patterns of the pool that are rows, in order.
    rows: Vec<usize>,
}

/// The cheapest plan that was met below a cost, and what the programme of all pieces proves; patterns made on the
/// way are added to the pool.
///
/// # Errors
/// [`Exhausted`] when stopped; `found` and `proven` then have the best so far.
pub(super) fn search(
    stock: &Stock<'_>,
    pool: &mut Vec<Pattern>,
    (enough, below): (u64, u64),
    (found, proven): (&mut Option<Plan>, &mut Proven),
    budget: &mut Budget<'_>,
) -> Result<(), Exhausted> {
    let dearest = float(stock.sheets.iter().map(|s| s.cost).max().unwrap_or(1).max(1));
    let mut deep = Deep {
        stock,
        pool,
        below,
        enough,
        best: None,
        met: BTreeSet::new(),
        dearest,
        proven: Proven::default(),
        hopeless: false,
    };
    let rest = Rest::all(stock);
    let mut ended = Ok(());
    for spare in 0..=SPARE {
        ended = deep.level(&rest, spare, budget);
        if ended.is_err() || deep.done() || deep.hopeless {
            break;
        }
    }
    (*found, *proven) = (deep.best, deep.proven);
    ended
}

impl Deep<'_> {
    fn done(&self) -> bool {
        self.below <= self.enough.max(self.proven.bound)
    }

    /// All ways down from what is left that pass over the largest share at so many places at most.
    fn level(&mut self, rest: &Rest, spare: usize, budget: &mut Budget<'_>) -> Result<(), Exhausted> {
        if rest.pieces() == 0 {
            self.offer(self.stock.plan(rest.fixed.clone()));
            return Ok(());
        }
        if !self.met.insert((rest.left.clone(), rest.copies.clone(), spare)) {
            return Ok(());
        }
        let Some((cost, shares)) = self.relaxed(rest, budget)? else { return Ok(()) };
        if rest.cost.saturating_add(up(cost * self.dearest - 1e-6)) >= self.below {
            self.hopeless |= rest.fixed.is_empty();
            return Ok(());
        }
        if rest.pieces() <= END.0 {
            self.end(rest, budget)?;
        }
        let fixed: Vec<(usize, u32)> =
            shares.iter().map(|&(p, x)| (p, down(x + 1e-6))).filter(|&(_, times)| times > 0).collect();
        if !fixed.is_empty() {
            let mut next = rest.clone();
            for (p, times) in fixed {
                next.fix(self.stock, &self.pool[p], times);
            }
            return self.level(&next, spare, budget);
        }
        for (passed, &(p, _)) in shares.iter().take(spare + 1).enumerate() {
            if self.done() || rest.cost >= self.below {
                return Ok(());
            }
            let mut next = rest.clone();
            next.fix(self.stock, &self.pool[p], 1);
            self.level(&next, spare - passed, budget)?;
        }
        Ok(())
    }

    /// What is left, cut by beams.
    fn end(&mut self, rest: &Rest, budget: &mut Budget<'_>) -> Result<(), Exhausted> {
        for guide in Guide::ALL {
            let below = self.below.saturating_sub(rest.cost);
            let task = Task { left: &rest.left, copies: &rest.copies, below, width: END.1, guide };
            if let Some(patterns) = beam::search(self.stock, task, budget)?
                && patterns.iter().all(|p| self.stock.allows(p))
            {
                let ends = patterns.into_iter().map(|pattern| (pattern, 1));
                self.offer(self.stock.plan(rest.fixed.iter().cloned().chain(ends).collect()));
            }
        }
        Ok(())
    }

    fn offer(&mut self, plan: Plan) {
        if plan.cost < self.below {
            self.below = plan.cost;
            self.best = Some(plan);
        }
    }

    /// The programme of what is left, with new patterns: its cost, and the shares, the largest first.
    #[expect(clippy::type_complexity, reason = "a cost and shares")]
    fn relaxed(&mut self, rest: &Rest, budget: &mut Budget<'_>) -> Result<Option<(f64, Vec<(usize, f64)>)>, Exhausted> {
        let there = (0..self.stock.sheets.len()).filter(|&s| rest.copies[s] > 0);
        let Some(kinds) = there.filter_map(|s| Kind::of(self.stock, s, &rest.left)).collect::<Option<Vec<Kind>>>()
        else {
            return Ok(None);
        };
        let useful = |p: &Pattern| p.counts.iter().zip(&rest.left).any(|(&n, &left)| n > 0 && left > 0);
        let rows: Vec<usize> =
            (0..self.pool.len()).filter(|&p| rest.copies[self.pool[p].sheet] > 0 && useful(&self.pool[p])).collect();
        budget.spend(columns::programme_costs(self.stock.items.len(), rows.len()))?;
        let Some(mut dual) = self.dual(rest, rows) else { return Ok(None) };
        let first = rest.fixed.is_empty() && self.met.len() == 1;
        let rounds = if first { ROUNDS.1 } else { ROUNDS.0 };
        for _ in 0..rounds {
            let worth = dual.worth();
            let (mut better, mut most) = (Vec::new(), vec![0; self.stock.sheets.len()]);
            for kind in &kinds {
                let spare = dual.spare[kind.sheet].map_or(0.0, |m| dual.solution.var_value(m));
                let least = whole((self.cost(kind.sheet) + spare + 1e-6) * UNIT);
                let look = look::look((self.stock, kind), (&worth, least), (&*self.pool, first), budget)?;
                most[kind.sheet] = look.most;
                better.extend(look.better);
            }
            if first
                && let Bound::Cost(bound, Some(proof)) = columns::bound(self.stock, &worth, &most)
                && self.proven.proof.as_ref().is_none_or(|known| proof.tighter(known, self.stock))
            {
                self.proven = Proven { bound, proof: Some(proof) };
                if self.done() {
                    return Ok(None);
                }
            }
            if better.is_empty() {
                break;
            }
            for pattern in better {
                budget.spend(columns::programme_costs(self.stock.items.len(), dual.rows.len()) / 8)?;
                self.pool.push(pattern);
                let Some(next) = self.add(dual, rest, self.pool.len() - 1) else { return Ok(None) };
                dual = next;
            }
        }
        budget.spend(columns::programme_costs(self.stock.items.len(), self.stock.items.len()) / 2)?;
        Ok(self.shares(&dual, rest))
    }

    fn cost(&self, s: usize) -> f64 {
        float(self.stock.sheets[s].cost) / self.dearest
    }

    fn dual(&self, rest: &Rest, rows: Vec<usize>) -> Option<Dual> {
        let mut problem = Problem::new(OptimizationDirection::Maximize);
        let worth: Vec<Option<Variable>> = rest
            .left
            .iter()
            .map(|&left| (left > 0).then(|| problem.add_var(f64::from(left), (0.0, columns::HIGHEST))))
            .collect();
        let limited = |(s, sheet): (usize, &super::SheetKind)| sheet.copies.map(|_| f64::from(rest.copies[s]));
        let spare: Vec<Option<Variable>> = self
            .stock
            .sheets
            .iter()
            .enumerate()
            .map(|sheet| limited(sheet).map(|copies| problem.add_var(-copies, (0.0, f64::INFINITY))))
            .collect();
        for &p in &rows {
            let pattern = &self.pool[p];
            problem.add_constraint(row(pattern, rest, &worth, &spare), ComparisonOp::Le, self.cost(pattern.sheet));
        }
        let solution = problem.solve().ok()?.into_solution().ok()?;
        Some(Dual { solution, worth, spare, rows })
    }

    fn add(&self, dual: Dual, rest: &Rest, p: usize) -> Option<Dual> {
        let pattern = &self.pool[p];
        let row = row(pattern, rest, &dual.worth, &dual.spare);
        let outcome = dual.solution.add_constraint(row, ComparisonOp::Le, self.cost(pattern.sheet)).ok()?;
        let mut rows = dual.rows;
        rows.push(p);
        Some(Dual { solution: outcome.into_solution().ok()?, rows, ..dual })
    }

    /// The cost of the rest, and how often each pattern is used: only those whose pieces are worth all they cost.
    fn shares(&self, dual: &Dual, rest: &Rest) -> Option<(f64, Vec<(usize, f64)>)> {
        let mut problem = Problem::new(OptimizationDirection::Minimize);
        let mut uses = Vec::new();
        for &p in &dual.rows {
            let pattern = &self.pool[p];
            let row = row(pattern, rest, &dual.worth, &dual.spare);
            let worth: f64 = row.iter().map(|&(y, n)| n * dual.solution.var_value(y)).sum();
            if worth >= self.cost(pattern.sheet) - 1e-6 {
                uses.push((p, problem.add_var(self.cost(pattern.sheet), (0.0, f64::INFINITY))));
            }
        }
        for (k, &left) in rest.left.iter().enumerate().filter(|&(_, &left)| left > 0) {
            let row: Vec<_> = uses
                .iter()
                .map(|&(p, x)| (x, f64::from(self.pool[p].counts[k].min(left))))
                .filter(|&(_, n)| n > 0.0)
                .collect();
            problem.add_constraint(row, ComparisonOp::Ge, f64::from(left));
        }
        for (s, _) in self.stock.sheets.iter().enumerate().filter(|(_, sheet)| sheet.copies.is_some()) {
            let row: Vec<_> = uses.iter().filter(|&&(p, _)| self.pool[p].sheet == s).map(|&(_, x)| (x, 1.0)).collect();
            problem.add_constraint(row, ComparisonOp::Le, f64::from(rest.copies[s]));
        }
        let solution = problem.solve().ok()?.into_solution().ok()?;
        let shares = uses.into_iter().map(|(p, x)| (p, solution.var_value(x))).filter(|&(_, x)| x > 1e-7);
        let mut shares: Vec<(usize, f64)> = shares.collect();
        let cost = shares.iter().map(|&(p, x)| self.cost(self.pool[p].sheet) * x).sum();
        // Shares that differ by rounding only stay in the pool's order.
        shares.sort_by_key(|&(p, x)| (std::cmp::Reverse(whole(x * 1e6)), p));
        Some((cost, shares))
    }
}

impl Dual {
    fn worth(&self) -> Vec<i64> {
        self.worth.iter().map(|y| y.map_or(0, |y| whole(self.solution.var_value(y) * UNIT))).collect()
    }
}

/// A piece too many is of no use: what is left caps the count.
fn row(pattern: &Pattern, rest: &Rest, worth: &[Option<Variable>], spare: &[Option<Variable>]) -> Vec<(Variable, f64)> {
    let counts = pattern.counts.iter().zip(&rest.left).map(|(&n, &left)| n.min(left));
    let pieces = worth.iter().zip(counts).filter_map(|(&y, n)| Some((y?, f64::from(n)))).filter(|&(_, n)| n > 0.0);
    pieces.chain(spare[pattern.sheet].map(|m| (m, -1.0))).collect()
}

#[expect(clippy::cast_precision_loss, reason = "a proposal only; costs are added in whole numbers")]
fn float(n: u64) -> f64 {
    n as f64
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "saturates; plans are counted again")]
fn down(x: f64) -> u32 {
    x as u32
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "saturates; plans are counted again")]
fn up(x: f64) -> u64 {
    x.ceil() as u64
}
