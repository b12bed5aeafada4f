//! Whole numbers from the linear programme: patterns are fixed little by little, what is left is cut afresh.

use microlp::{ComparisonOp, OptimizationDirection, Problem};

use super::beam::{self, Guide, Task};
use super::columns;
use super::pattern::Pattern;
use super::stock::{Plan, Stock};
use crate::{Budget, Exhausted};

/// Chosen: what is left is cut by the beam once it is so few pieces.
pub(super) const FEW: u32 = 160;

/// What is still to be cut, and what was fixed.
#[derive(Clone)]
pub(super) struct Rest {
    pub(super) left: Vec<u32>,
    pub(super) copies: Vec<u32>,
    pub(super) fixed: Vec<(Pattern, u32)>,
    pub(super) cost: u64,
}

impl Rest {
    /// All pieces from all sheets.
    pub(super) fn all(stock: &Stock<'_>) -> Rest {
        Rest {
            left: stock.items.iter().map(|item| item.cap).collect(),
            copies: stock.sheets.iter().map(|s| s.copies.unwrap_or(u32::MAX)).collect(),
            fixed: Vec::new(),
            cost: 0,
        }
    }

    pub(super) fn pieces(&self) -> u64 {
        self.left.iter().map(|&n| u64::from(n)).sum()
    }

    pub(super) fn fix(&mut self, stock: &Stock<'_>, pattern: &Pattern, times: u32) {
        for (left, count) in self.left.iter_mut().zip(&pattern.counts) {
            *left = left.saturating_sub(count.saturating_mul(times));
        }
        if stock.sheets[pattern.sheet].copies.is_some() {
            self.copies[pattern.sheet] -= times;
        }
        self.cost += stock.sheets[pattern.sheet].cost * u64::from(times);
        self.fixed.push((pattern.clone(), times));
    }
}

/// The cheapest plan met on the way down, if it costs less than `below`.
///
/// # Errors
/// [`Exhausted`] when stopped; `found` then has the best so far.
pub(super) fn dive(
    stock: &Stock<'_>,
    pool: &[Pattern],
    (below, width): (u64, usize),
    found: &mut Option<Plan>,
    budget: &mut Budget<'_>,
) -> Result<(), Exhausted> {
    let mut rest = Rest::all(stock);
    let mut below = below;
    while rest.pieces() > 0 && rest.cost < below {
        if rest.pieces() <= u64::from(FEW) {
            for guide in Guide::ALL {
                let task = Task { left: &rest.left, copies: &rest.copies, below: below - rest.cost, width, guide };
                if let Some(patterns) = beam::search(stock, task, budget)?
                    && patterns.iter().all(|p| stock.allows(p))
                {
                    let ends = patterns.into_iter().map(|pattern| (pattern, 1));
                    let plan = stock.plan(rest.fixed.iter().cloned().chain(ends).collect());
                    below = plan.cost;
                    *found = Some(plan);
                }
            }
        }
        budget.spend(columns::programme_costs(stock.items.len(), pool.len()))?;
        let Some(uses) = relaxed(stock, pool, &rest) else { return Ok(()) };
        let whole: Vec<(usize, u32)> =
            uses.iter().map(|&(p, x)| (p, floor(x + 1e-6))).filter(|&(_, times)| times > 0).collect();
        if whole.is_empty() {
            // The largest share becomes one whole sheet; the pool's order breaks ties.
            let most = uses.iter().fold(None, |best: Option<(usize, f64)>, &(p, x)| match best {
                Some((_, y)) if y >= x - 1e-9 => best,
                _ => Some((p, x)),
            });
            let Some((p, _)) = most else { return Ok(()) };
            rest.fix(stock, &pool[p], 1);
        }
        for (p, times) in whole {
            rest.fix(stock, &pool[p], times);
        }
    }
    if rest.pieces() == 0 && rest.cost < below {
        *found = Some(stock.plan(rest.fixed));
    }
    Ok(())
}

/// The patterns that the linear programme uses for the rest, in the pool's order.
fn relaxed(stock: &Stock<'_>, pool: &[Pattern], rest: &Rest) -> Option<Vec<(usize, f64)>> {
    let dearest = stock.sheets.iter().map(|s| s.cost).max().unwrap_or(1).max(1);
    let mut problem = Problem::new(OptimizationDirection::Minimize);
    let useful = |p: &Pattern| p.counts.iter().zip(&rest.left).any(|(&n, &left)| n > 0 && left > 0);
    let mut uses = Vec::new();
    for (p, pattern) in pool.iter().enumerate().filter(|(_, p)| rest.copies[p.sheet] > 0 && useful(p)) {
        #[expect(clippy::cast_precision_loss, reason = "a proposal only; costs are added in whole numbers")]
        let cost = stock.sheets[pattern.sheet].cost as f64 / dearest as f64;
        uses.push((p, problem.add_var(cost, (0.0, f64::INFINITY))));
    }
    for (k, &left) in rest.left.iter().enumerate().filter(|&(_, &left)| left > 0) {
        // A piece too many is of no use: what is left caps the count, so that rounding wastes less.
        let row: Vec<_> =
            uses.iter().map(|&(p, x)| (x, f64::from(pool[p].counts[k].min(left)))).filter(|&(_, n)| n > 0.0).collect();
        problem.add_constraint(row, ComparisonOp::Ge, f64::from(left));
    }
    for (s, _) in stock.sheets.iter().enumerate().filter(|(_, sheet)| sheet.copies.is_some()) {
        let row: Vec<_> = uses.iter().filter(|&&(p, _)| pool[p].sheet == s).map(|&(_, x)| (x, 1.0)).collect();
        problem.add_constraint(row, ComparisonOp::Le, f64::from(rest.copies[s]));
    }
    let solution = problem.solve().ok()?.into_solution().ok()?;
    Some(uses.into_iter().map(|(p, x)| (p, solution.var_value(x))).filter(|&(_, x)| x > 1e-7).collect())
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "saturates; plans are counted again")]
fn floor(x: f64) -> u32 {
    x as u32
}
