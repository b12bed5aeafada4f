//! The cheapest plan from a pool of patterns, by a small integer programme whose answer is checked again.

use microlp::{ComparisonOp, OptimizationDirection, Problem, SolveOptions, TerminationReason};

use super::columns::programme_costs;

use super::pattern::Pattern;
use super::stock::{Plan, Stock};
use crate::{Budget, Exhausted};

/// Chosen: nodes of the integer programme, so that a craft case answers at once.
const NODES: u64 = 200;

/// Chosen: nodes of the integer programme between two looks at the budget, and so at the stop signal.
const SLICE: u64 = 8;

/// A plan from these patterns that costs less than `best`, if the search finds one.
///
/// # Errors
/// [`Exhausted`] before anything was tried.
pub(super) fn cheapest(
    stock: &Stock<'_>,
    pool: &[Pattern],
    best: Option<&Plan>,
    budget: &mut Budget<'_>,
) -> Result<Option<Plan>, Exhausted> {
    let slice_costs = SLICE * programme_costs(stock.items.len(), pool.len()) / 8;
    budget.spend(slice_costs)?;
    let mut problem = Problem::new(OptimizationDirection::Minimize);
    let dearest = stock.sheets.iter().map(|s| s.cost).max().unwrap_or(1).max(1);
    let mut uses = Vec::with_capacity(pool.len());
    for pattern in pool {
        let most = most_times(stock, pattern);
        #[expect(clippy::cast_precision_loss, reason = "the answer is counted again in whole numbers")]
        let cost = stock.sheets[pattern.sheet].cost as f64 / dearest as f64;
        uses.push(problem.add_integer_var(cost, (0, i32::try_from(most).unwrap_or(i32::MAX))));
    }
    for (k, item) in stock.items.iter().enumerate() {
        let row: Vec<_> = pool
            .iter()
            .zip(&uses)
            .filter(|(p, _)| p.counts[k] > 0)
            .map(|(p, &x)| (x, f64::from(p.counts[k])))
            .collect();
        problem.add_constraint(row, ComparisonOp::Ge, f64::from(item.cap));
    }
    for (s, copies) in stock.sheets.iter().enumerate().filter_map(|(s, sheet)| Some((s, sheet.copies?))) {
        let row: Vec<_> = pool.iter().zip(&uses).filter(|(p, _)| p.sheet == s).map(|(_, &x)| (x, 1.0)).collect();
        problem.add_constraint(row, ComparisonOp::Le, f64::from(copies));
    }
    let mut options = SolveOptions::default();
    options.node_limit = Some(SLICE);
    if let Some(best) = best {
        let times = |pattern: &Pattern| best.uses.iter().filter(|(p, _)| p == pattern).map(|(_, t)| *t).sum::<u32>();
        options.warm_start = Some(pool.iter().zip(&uses).map(|(p, &x)| (x, f64::from(times(p)))).collect());
    }
    let Ok(mut outcome) = problem.solve_with(options) else { return Ok(None) };
    for _ in 1..NODES / SLICE {
        // A spent budget leaves what was found so far.
        if outcome.termination_reason() != TerminationReason::NodeLimit || budget.spend(slice_costs).is_err() {
            break;
        }
        match outcome.resume() {
            Ok(next) => outcome = next,
            Err(_) => return Ok(None),
        }
    }
    let Ok(solution) = outcome.into_solution() else { return Ok(None) };
    let plan: Vec<(Pattern, u32)> = pool
        .iter()
        .zip(&uses)
        .map(|(pattern, &x)| (pattern.clone(), times(solution.var_value(x))))
        .filter(|(_, times)| *times > 0)
        .collect();
    let plan = stock.plan(plan);
    Ok(Some(plan).filter(|plan| stock.suffices(plan) && best.is_none_or(|best| plan.cost < best.cost)))
}

/// More often than this a pattern is of no use.
fn most_times(stock: &Stock<'_>, pattern: &Pattern) -> u32 {
    let pieces = stock.items.iter().zip(&pattern.counts).filter(|&(_, &n)| n > 0);
    let most = pieces.map(|(item, &n)| item.cap.div_ceil(n)).max().unwrap_or(0);
    stock.sheets[pattern.sheet].copies.map_or(most, |copies| most.min(copies))
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "saturates; the plan is counted again")]
fn times(x: f64) -> u32 {
    x.round() as u32
}
