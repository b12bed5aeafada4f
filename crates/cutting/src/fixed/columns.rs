//! The linear programme over all ways to cut a sheet: a bound on the cost, and good patterns on the way.
//!
//! The dual is solved (most worth of the pieces, one row a pattern that no pattern may beat its sheet's cost),
//! and the table of [`super::table`] looks for the pattern that beats it most. The floating-point solver only
//! proposes worths: each bound is worked out again from whole-number worths and exact tables, so it always holds.
//!
//! # Source
//! Gilmore, Gomory 1961, *Operations Research* 9(6); scaling the worths down to a bound when stopped early:
//! Farley 1990, *Operations Research* 38(5) (both from memory). Checked by `tests/bench_small.rs`.

use microlp::{ComparisonOp, OptimizationDirection, Problem, Solution, Variable};

use super::SheetKind;
use super::numbers::Cut;
use super::pattern::Pattern;
use super::stock::Stock;
use super::table::{self, Grid, Table};
use crate::{Budget, Exhausted};

/// What the programme gave by the time it ended or was stopped.
#[derive(Debug, Clone, Default)]
pub(super) struct Columns {
    /// No plan costs less.
    pub(super) bound: u64,
    /// No plan exists: the sheets there are do not suffice.
    pub(super) impossible: bool,
    /// What proved the bound, if worths did.
    pub(super) proof: Option<Proof>,
    /// The last worths of the items, whole numbers.
    pub(super) worth: Vec<i64>,
    /// All patterns made.
    pub(super) patterns: Vec<Pattern>,
    /// Worths that raised the bound, with what sheets hold of them.
    pub(super) cuts: Vec<Cut>,
}

/// Chosen: rounds before giving up; the hardest of the craft cases takes 45.
const ROUNDS: usize = 200;

/// Nodes of the budget that solving one linear programme afresh counts as. Chosen: as long as so many cells of a
/// table take, by measuring.
pub(super) fn programme_costs(rows: usize, columns: usize) -> u64 {
    1000 + (rows * columns) as u64
}

/// Chosen: a worth may rise to so many times the dearest sheet, so that the programme stays bounded.
pub(super) const HIGHEST: f64 = 64.0;

/// A bound without a programme: each piece is worth its share of the cheapest plain grid of it.
///
/// # Errors
/// [`Exhausted`] when stopped.
pub(super) fn quick(stock: &Stock<'_>, budget: &mut Budget<'_>) -> Result<u64, Exhausted> {
    let mut worth = Vec::with_capacity(stock.items.len());
    for item in &stock.items {
        let rate = |s: &SheetKind| -> Option<u64> {
            let there = |(w, h, _): (u32, u32, bool)| u64::from(s.width / w) * u64::from(s.height / h);
            let most = item.ways(s.width, s.height).map(there).max()?.min(u64::from(item.cap));
            (s.cost.min(1 << 20) << 20).checked_div(most)
        };
        let Some(least) = stock.sheets.iter().filter_map(rate).min() else { return Ok(0) };
        worth.push(i64::try_from(least).unwrap_or(0));
    }
    let mut table = Table::default();
    let mut most = Vec::with_capacity(stock.sheets.len());
    for s in 0..stock.sheets.len() {
        let Some(grid) = stock.grid(s, &stock.items) else { return Ok(0) };
        if grid.cells() as u64 > budget.left() / 64 {
            return Ok(0);
        }
        table::fill(&grid, &stock.items, &worth, &mut table, budget)?;
        most.push(table.whole());
    }
    Ok(match bound(stock, &worth, &most) {
        Bound::Cost(bound, _) => bound,
        Bound::Impossible => 0,
    })
}

/// Make columns until the bound cannot rise or reaches `enough`.
///
/// # Errors
/// [`Exhausted`] when stopped; `columns` then holds what was proven by then.
pub(super) fn generate(
    stock: &Stock<'_>,
    enough: u64,
    columns: &mut Columns,
    budget: &mut Budget<'_>,
) -> Result<(), Exhausted> {
    let Some(grids) = (0..stock.sheets.len()).map(|s| stock.grid(s, &stock.items)).collect::<Option<Vec<Grid>>>()
    else {
        return Ok(());
    };
    for s in 0..stock.sheets.len() {
        columns.patterns.extend((0..stock.items.len()).filter_map(|k| stock.grid_pattern(s, k)));
    }
    let Some(mut dual) = Dual::of(stock, &columns.patterns) else { return Ok(()) };
    let mut table = Table::default();
    for _ in 0..ROUNDS {
        columns.worth = dual.worth();
        let mut most = Vec::with_capacity(grids.len());
        let mut better = Vec::new();
        for (s, grid) in grids.iter().enumerate() {
            table::fill(grid, &stock.items, &columns.worth, &mut table, budget)?;
            let whole = table.whole();
            most.push(whole);
            if dual.beaten(s, whole) {
                let tree = table::tree(grid, &stock.items, &columns.worth, &table);
                better.push(Pattern::of(s, tree, &stock.place, stock.items.len()));
            }
        }
        match bound(stock, &columns.worth, &most) {
            Bound::Cost(bound, proof) => {
                if let Some(proof) = proof
                    && columns.proof.as_ref().is_none_or(|known| proof.tighter(known, stock))
                {
                    columns.proof = Some(proof);
                    let most = most.iter().map(|&most| i128::from(most));
                    columns.cuts.push(Cut::of(stock, columns.worth.clone(), most));
                }
                columns.bound = columns.bound.max(bound);
            }
            Bound::Impossible => {
                columns.impossible = true;
                return Ok(());
            }
        }
        if better.is_empty() || columns.bound >= enough {
            return Ok(());
        }
        for pattern in better {
            budget.spend(programme_costs(stock.items.len(), columns.patterns.len()) / 8)?;
            let Some(next) = dual.add(&pattern) else { return Ok(()) };
            dual = next;
            if !columns.patterns.contains(&pattern) {
                columns.patterns.push(pattern);
            }
        }
    }
    Ok(())
}

/// Worths with what they prove: no sheet's pieces are worth more than `rate` times its cost and `above` together.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Proof {
    /// Whole-number worth of each item.
    pub(super) worth: Vec<i64>,
    rate: i128,
    above: Vec<i128>,
}

impl Proof {
    /// A proof of nothing, with which every plan must be tried.
    pub(super) fn none(stock: &Stock<'_>) -> Proof {
        Proof { worth: vec![0; stock.items.len()], rate: 1, above: vec![0; stock.sheets.len()] }
    }

    /// That sheets of each kind hold no more than so much worth, whatever they cost.
    pub(super) fn sheets(worth: Vec<i64>, most: Vec<i128>) -> Proof {
        Proof { worth, rate: 1, above: most }
    }

    /// What a sheet's pieces can be worth.
    pub(super) fn full(&self, stock: &Stock<'_>, s: usize) -> i128 {
        self.rate * i128::from(stock.sheets[s].cost) + self.above[s]
    }

    /// The least cost of what is left, rounded up.
    pub(super) fn rest(&self, stock: &Stock<'_>, left: &[u32], copies: &[u32]) -> u64 {
        let sum = self.sum(stock, left, copies).max(0);
        u64::try_from((sum + self.rate - 1) / self.rate).unwrap_or(u64::MAX)
    }

    /// How much less than full a sheet may be in a plan below a cost.
    pub(super) fn slack(&self, stock: &Stock<'_>, below: u64) -> i128 {
        let left: Vec<u32> = stock.items.iter().map(|item| item.cap).collect();
        let copies: Vec<u32> = stock.sheets.iter().map(|s| s.copies.unwrap_or(u32::MAX)).collect();
        self.rate * (i128::from(below) - 1) - self.sum(stock, &left, &copies)
    }

    /// True if this proves more than another proof does, fractions counted.
    pub(super) fn tighter(&self, other: &Proof, stock: &Stock<'_>) -> bool {
        let left: Vec<u32> = stock.items.iter().map(|item| item.cap).collect();
        let copies: Vec<u32> = stock.sheets.iter().map(|s| s.copies.unwrap_or(u32::MAX)).collect();
        self.sum(stock, &left, &copies).saturating_mul(other.rate)
            > other.sum(stock, &left, &copies).saturating_mul(self.rate)
    }

    fn sum(&self, stock: &Stock<'_>, left: &[u32], copies: &[u32]) -> i128 {
        let worth: i128 = left.iter().zip(&self.worth).map(|(&n, &y)| i128::from(n) * i128::from(y)).sum();
        let limited = stock.sheets.iter().zip(copies).zip(&self.above).filter(|((s, _), _)| s.copies.is_some());
        worth - limited.map(|((_, &copies), above)| i128::from(copies) * above).sum::<i128>()
    }
}

/// What worths and tables prove.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Bound {
    Cost(u64, Option<Proof>),
    Impossible,
}

/// The cost that these worths prove, in exact whole numbers.
///
/// With any k > 0 for which no pattern of an unlimited sheet is worth more than k times its cost, a plan costs at
/// least (worth of all pieces − copies × what a limited sheet's best pattern is worth above k times its cost) / k.
pub(super) fn bound(stock: &Stock<'_>, worth: &[i64], most: &[i64]) -> Bound {
    let all: i128 = stock.items.iter().zip(worth).map(|(item, &y)| i128::from(item.cap) * i128::from(y)).sum();
    let sheets = || stock.sheets.iter().zip(most.iter().map(|&v| i128::from(v)));
    let above = |k: i128| -> Vec<i128> { sheets().map(|(s, v)| (v - k * i128::from(s.cost)).max(0)).collect() };
    let proof = |k: i128| Proof { worth: worth.to_vec(), rate: k, above: above(k) };
    let limited = |above: &[i128]| -> i128 {
        stock.sheets.iter().zip(above).filter_map(|(s, above)| Some(i128::from(s.copies?) * above)).sum()
    };
    let ratio = |s: &SheetKind, v: i128| {
        if s.cost == 0 { None } else { Some((v + i128::from(s.cost) - 1) / i128::from(s.cost)) }
    };
    let mut least = 0;
    for (sheet, v) in sheets().filter(|(s, v)| s.copies.is_none() && *v > 0) {
        let Some(k) = ratio(sheet, v) else { return Bound::Cost(0, None) };
        least = least.max(k);
    }
    if least == 0 && all > limited(&above(0)) {
        return Bound::Impossible;
    }
    let ks = sheets().filter_map(|(s, v)| ratio(s, v)).filter(|&k| k >= least).chain([least]).filter(|&k| k > 0);
    let best = ks.map(proof).reduce(|a, b| if b.tighter(&a, stock) { b } else { a });
    let cost = best.as_ref().map_or(0, |proof| {
        let sum = (all - limited(&proof.above)).max(0);
        u64::try_from((sum + proof.rate - 1) / proof.rate).unwrap_or(u64::MAX)
    });
    Bound::Cost(cost, best)
}

/// The dual programme, solved.
struct Dual {
    solution: Solution,
    worth: Vec<Variable>,
    /// What a limited sheet's next copy would save; `None` where there is no limit.
    spare: Vec<Option<Variable>>,
    /// Cost of each sheet as a share of the dearest.
    cost: Vec<f64>,
    /// Whole-number worth of the dearest sheet's cost.
    unit: f64,
}

impl Dual {
    fn of(stock: &Stock<'_>, patterns: &[Pattern]) -> Option<Dual> {
        let dearest = stock.sheets.iter().map(|s| s.cost).max().unwrap_or(1).max(1);
        // Chosen: 2^34 for the dearest sheet leaves the rounding below 1e-9 of it, and room for 2^26 of them in i64.
        let unit = (float(1 << 34) / float(dearest)).ceil() * float(dearest);
        let cost: Vec<f64> = stock.sheets.iter().map(|s| float(s.cost) / float(dearest)).collect();
        let mut problem = Problem::new(OptimizationDirection::Maximize);
        let worth: Vec<Variable> =
            stock.items.iter().map(|item| problem.add_var(f64::from(item.cap), (0.0, HIGHEST))).collect();
        let spare: Vec<Option<Variable>> =
            stock.sheets.iter().map(|s| Some(problem.add_var(-f64::from(s.copies?), (0.0, f64::INFINITY)))).collect();
        for pattern in patterns {
            problem.add_constraint(row(pattern, &worth, &spare), ComparisonOp::Le, cost[pattern.sheet]);
        }
        let solution = problem.solve().ok()?.into_solution().ok()?;
        Some(Dual { solution, worth, spare, cost, unit })
    }

    fn add(self, pattern: &Pattern) -> Option<Dual> {
        let row = row(pattern, &self.worth, &self.spare);
        let outcome = self.solution.add_constraint(row, ComparisonOp::Le, self.cost[pattern.sheet]).ok()?;
        Some(Dual { solution: outcome.into_solution().ok()?, ..self })
    }

    fn worth(&self) -> Vec<i64> {
        self.worth.iter().map(|&y| whole(self.solution.var_value(y) * self.unit)).collect()
    }

    /// True if a pattern of this sheet is worth clearly more than the programme allows.
    fn beaten(&self, s: usize, most: i64) -> bool {
        let spare = self.spare[s].map_or(0.0, |m| self.solution.var_value(m));
        most > whole((self.cost[s] + spare + 1e-7) * self.unit)
    }
}

fn row(pattern: &Pattern, worth: &[Variable], spare: &[Option<Variable>]) -> Vec<(Variable, f64)> {
    let pieces = worth.iter().zip(&pattern.counts).filter(|&(_, &n)| n > 0).map(|(&y, &n)| (y, f64::from(n)));
    pieces.chain(spare[pattern.sheet].map(|m| (m, -1.0))).collect()
}

#[expect(clippy::cast_precision_loss, reason = "a proposal only; bounds are worked out in whole numbers")]
fn float(n: u64) -> f64 {
    n as f64
}

#[expect(clippy::cast_possible_truncation, reason = "saturates; a proposal only")]
pub(super) fn whole(x: f64) -> i64 {
    (x.max(0.0) as i64).min(1 << 48)
}
