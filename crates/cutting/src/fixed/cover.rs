//! The cheapest plan exactly, for few sheets: all ways to cut a sheet that a better plan could use, then a search
//! for sheets that cover the pieces.
//!
//! Worths that prove a bound also say which ways of cutting cannot be in a plan below the best cost: those whose
//! pieces are worth less than the sheet by more than the gap.
//!
//! # Source
//! Fixing by reduced cost over enumerated columns: Baldacci, Christofides, Mingozzi 2008, *Mathematical
//! Programming* 115 (from memory). Checked by `tests/fixed_brute_force.rs`.

use std::collections::HashMap;

use super::columns::Proof;
use super::pattern::Pattern;
use super::stock::{Plan, Stock};
use super::table::{self, Table};
use super::worths::Limits;
use super::{Item, blocks};
use crate::{Budget, Exhausted};

/// What the search found out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Covered {
    /// A plan below the given cost, and no plan is cheaper.
    Best(Plan),
    /// No plan is below the given cost.
    None,
    /// Too many ways to cut a sheet, or the budget is spent.
    Open,
}

struct Search<'a> {
    stock: &'a Stock<'a>,
    proof: &'a Proof,
    patterns: Vec<Pattern>,
    /// For each item the patterns that hold it.
    with: Vec<Vec<usize>>,
    used: Vec<usize>,
    below: u64,
    best: Option<Vec<usize>>,
    /// Least cost at which a state was met.
    met: HashMap<(Vec<u32>, Vec<u32>), u64>,
}

/// Chosen: bytes of states remembered at most, about.
const REMEMBERED: usize = 1 << 27;

/// The cheapest plan below a cost, all plans considered.
pub(super) fn cheapest(stock: &Stock<'_>, proof: &Proof, below: u64, budget: &mut Budget<'_>) -> Covered {
    let Some(patterns) = patterns(stock, proof, below, budget) else { return Covered::Open };
    let holds = |k: usize| (0..patterns.len()).filter(|&p| patterns[p].counts[k] > 0).collect();
    let with = (0..stock.items.len()).map(holds).collect();
    let (used, best, met) = (Vec::new(), None, HashMap::new());
    let mut search = Search { stock, proof, patterns, with, used, below, best, met };
    let left: Vec<u32> = stock.items.iter().map(|item| item.cap).collect();
    let copies: Vec<u32> = stock.sheets.iter().map(|s| s.copies.unwrap_or(u32::MAX)).collect();
    if search.cover(&left, &copies, 0, budget).is_err() {
        return Covered::Open;
    }
    match search.best {
        None => Covered::None,
        Some(uses) => {
            let mut times: Vec<(Pattern, u32)> = Vec::new();
            for p in uses {
                let pattern = &search.patterns[p];
                match times.iter_mut().find(|(other, _)| other == pattern) {
                    Some((_, times)) => *times += 1,
                    None => times.push((pattern.clone(), 1)),
                }
            }
            Covered::Best(stock.plan(times))
        }
    }
}

/// All largest ways to cut each sheet that may be in a plan below the cost; `None` if there are too many.
fn patterns(stock: &Stock<'_>, proof: &Proof, below: u64, budget: &mut Budget<'_>) -> Option<Vec<Pattern>> {
    let slack = proof.slack(stock, below);
    let mut all = Vec::new();
    let mut table = Table::default();
    for (s, sheet) in stock.sheets.iter().enumerate().filter(|(_, sheet)| sheet.copies != Some(0)) {
        let here: Vec<usize> =
            (0..stock.items.len()).filter(|&k| stock.items[k].fits(sheet.width, sheet.height)).collect();
        let items: Vec<Item> = here.iter().map(|&k| stock.items[k]).collect();
        let worth: Vec<i64> = here.iter().map(|&k| proof.worth[k]).collect();
        let area = u128::from(sheet.width) * u128::from(sheet.height);
        let most = |item: &Item| item.cap.min(u32::try_from(area / item.area()).unwrap_or(u32::MAX));
        let limits: Vec<Limits> = items.iter().map(|item| Limits { min: 0, cap: most(item) }).collect();
        let grid = stock.grid(s, &items)?;
        table::fill(&grid, &items, &worth, &mut table, budget).ok()?;
        let least = i64::try_from((proof.full(stock, s) - slack).max(0)).ok()?;
        let found = blocks::list((&grid, &table.value), (&items, &limits), &worth, least, budget)?;
        let known: std::collections::HashSet<&Vec<u32>> = found.iter().map(|(counts, _)| counts).collect();
        for (counts, tree) in &found {
            // One with a piece more covers whatever this one does.
            let larger = (0..counts.len()).any(|k| {
                let mut more = counts.clone();
                more[k] += 1;
                known.contains(&more)
            });
            if !larger {
                all.push(Pattern::of(s, tree.clone(), &stock.place, stock.items.len()));
            }
        }
    }
    Some(all)
}

impl Search<'_> {
    /// Cover what is left in all ways that stay below the best cost.
    fn cover(&mut self, left: &[u32], copies: &[u32], cost: u64, budget: &mut Budget<'_>) -> Result<(), Exhausted> {
        if left.iter().all(|&n| n == 0) {
            if cost < self.below {
                self.below = cost;
                self.best = Some(self.used.clone());
            }
            return Ok(());
        }
        if cost.saturating_add(self.proof.rest(self.stock, left, copies)) >= self.below {
            return Ok(());
        }
        let key = (left.to_vec(), copies.to_vec());
        if self.met.get(&key).is_some_and(|&met| met <= cost) {
            return Ok(());
        }
        let bytes = 4 * (left.len() + copies.len()) + 96;
        if self.met.len() < REMEMBERED / bytes {
            self.met.insert(key, cost);
        }
        // The largest piece that is left must come from some sheet.
        let Some(item) = (0..left.len()).filter(|&k| left[k] > 0).max_by_key(|&k| (self.stock.items[k].area(), k))
        else {
            return Ok(());
        };
        budget.spend(self.with[item].len() as u64 + 16)?;
        let mut next: Vec<(i128, usize)> = self.with[item]
            .iter()
            .filter(|&&p| copies[self.patterns[p].sheet] > 0)
            .map(|&p| (self.waste(p, left), p))
            .collect();
        next.sort_unstable();
        let mut tried: std::collections::HashSet<(usize, Vec<u32>)> = std::collections::HashSet::new();
        for (_, p) in next {
            let sheet = self.patterns[p].sheet;
            let after: Vec<u32> =
                left.iter().zip(&self.patterns[p].counts).map(|(&left, &n)| left.saturating_sub(n)).collect();
            if !tried.insert((sheet, after.clone())) {
                continue;
            }
            let mut copies = copies.to_vec();
            if self.stock.sheets[sheet].copies.is_some() {
                copies[sheet] -= 1;
            }
            self.used.push(p);
            let ended = self.cover(&after, &copies, cost + self.stock.sheets[sheet].cost, budget);
            self.used.pop();
            ended?;
        }
        Ok(())
    }

    /// What a sheet costs above the worth of those of its pieces that are still wanted.
    fn waste(&self, p: usize, left: &[u32]) -> i128 {
        let pattern = &self.patterns[p];
        let rows = pattern.counts.iter().zip(left).zip(&self.proof.worth);
        let worth: i128 = rows.map(|((&n, &left), &worth)| i128::from(n.min(left)) * i128::from(worth)).sum();
        self.proof.full(self.stock, pattern.sheet) - worth
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Instance, PieceKind, Question, Rules, SheetKind, solve};
    use crate::{Budget, Outcome};

    #[test]
    fn seven_pieces_fit_one_sheet_only_in_a_deep_nest() {
        let sheet = SheetKind::whole(7, 6, None, 2);
        let piece = |width, height, n, turn| PieceKind { width, height, demand: Some(n), min: 0, value: 0, turn };
        let pieces = vec![piece(1, 5, 2, true), piece(2, 2, 1, false), piece(5, 1, 2, true), piece(2, 4, 2, false)];
        let instance = Instance { sheets: vec![sheet], pieces, question: Question::LeastCost, rules: Rules::default() };
        let answer = solve(&instance, &mut Budget::nodes(400_000)).expect("sound");
        assert_eq!((answer.value, answer.outcome), (2, Outcome::Proven), "{}", answer.nodes);
    }
}
