//! Wishes of a second rank, for no sheet more: few trimmer settings, few cuts, equal sheets, large offcuts.
//!
//! Sheets of the same pieces are cut alike, two kinds of sheet become one where one way of cutting gives the pieces
//! of both, and each sheet is laid out again in fewer turns where that is less work. Found by beams: no proof.

use super::beam::{self, Guide, Task};
use super::pattern::Pattern;
use super::rules::{Rules, Stages};
use super::stock::{Plan, Stock};
use super::{CutSheet, Item};
use crate::steps::{effort, tidy};
use crate::{Axis, Budget, Exhausted, Tree};

/// Chosen: width of the beams; wider ones rarely find a calmer sheet.
const WIDTH: usize = 8;

/// Chosen: with more kinds of sheet, only the first pairs are tried.
const MOST_PAIRS: usize = 60;

/// Less is better: settings of all kinds of sheet, cuts of all sheets, kinds of sheet, and what the largest offcuts
/// lack of their sheets.
type Score = (u64, u64, usize, u64);

/// Improve a plan; its cost and pieces stay as they are.
///
/// # Errors
/// [`Exhausted`] when stopped; the plan is then as good as it was by then.
pub(super) fn calm(stock: &Stock<'_>, plan: &mut Plan, budget: &mut Budget<'_>) -> Result<(), Exhausted> {
    *plan = alike(stock, &stock.sheets_of(plan));
    for at in 0..plan.uses.len() {
        let pattern = &plan.uses[at].0;
        if let Some(tree) = lay(stock, pattern.sheet, &pattern.counts, Some(&pattern.tree), budget)? {
            plan.uses[at].0.tree = tree;
        }
    }
    let mut best = score(stock, plan);
    while let Some((better, value)) = merged(stock, plan, best, budget)? {
        (*plan, best) = (better, value);
    }
    Ok(())
}

/// The plan of these sheets with those of the same pieces cut alike, by the tree that is least work.
fn alike(stock: &Stock<'_>, sheets: &[CutSheet]) -> Plan {
    let mut uses: Vec<(Pattern, u32)> = Vec::new();
    for cut in sheets {
        let pattern = Pattern::of(cut.sheet, cut.tree.clone(), &stock.place, stock.items.len());
        let work = |p: &Pattern| work(stock, p.sheet, &p.tree);
        match uses.iter_mut().find(|(p, _)| p.sheet == pattern.sheet && p.counts == pattern.counts) {
            None => uses.push((pattern, cut.times)),
            Some((known, times)) => {
                *times += cut.times;
                if work(&pattern) < work(known) {
                    *known = pattern;
                }
            }
        }
    }
    stock.plan(uses)
}

/// The plan with two kinds of sheet made one, where that is better than `best`.
fn merged(
    stock: &Stock<'_>,
    plan: &Plan,
    best: Score,
    budget: &mut Budget<'_>,
) -> Result<Option<(Plan, Score)>, Exhausted> {
    let mut tried = 0;
    for b in (1..plan.uses.len()).rev() {
        for a in 0..b {
            let ((first, n), (second, m)) = (&plan.uses[a], &plan.uses[b]);
            let together = n.saturating_add(*m);
            if first.sheet != second.sheet || tried >= MOST_PAIRS {
                continue;
            }
            let share = |(&x, &y): (&u32, &u32)| {
                let all = u64::from(x) * u64::from(*n) + u64::from(y) * u64::from(*m);
                u32::try_from(all.div_ceil(u64::from(together))).unwrap_or(u32::MAX)
            };
            let counts: Vec<u32> = first.counts.iter().zip(&second.counts).map(share).collect();
            let sheet = &stock.sheets[first.sheet];
            let area: u128 = stock.items.iter().zip(&counts).map(|(item, &n)| item.area() * u128::from(n)).sum();
            if area > super::stock::area(sheet) {
                continue;
            }
            tried += 1;
            let Some(tree) = lay(stock, first.sheet, &counts, None, budget)? else { continue };
            let mut uses = plan.uses.clone();
            uses.remove(b);
            uses[a] = (Pattern { sheet: first.sheet, tree, counts }, together);
            let better = alike(stock, &stock.sheets_of(&stock.plan(uses)));
            let value = score(stock, &better);
            if value < best && better.cost <= plan.cost && stock.suffices(&better) {
                return Ok(Some((better, value)));
            }
        }
    }
    Ok(None)
}

/// The least work for exactly these pieces on one sheet, if a tree is known or found.
pub(super) fn lay(
    stock: &Stock<'_>,
    s: usize,
    counts: &[u32],
    known: Option<&Tree>,
    budget: &mut Budget<'_>,
) -> Result<Option<Tree>, Exhausted> {
    let sheet = &stock.sheets[s];
    let items: Vec<Item> = stock.items.clone();
    let copies: Vec<u32> = (0..stock.sheets.len()).map(|other| u32::from(other == s)).collect();
    let mut best = known.map(|tree| (work(stock, s, tree), tree.clone()));
    let mut offer = |tree: Tree| {
        for tree in [tidy(&tree, sheet.width, sheet.height).ok(), Some(tree)].into_iter().flatten() {
            let value = work(stock, s, &tree);
            if stock.rules.allow(&tree, sheet.width, sheet.height) && best.as_ref().is_none_or(|(b, _)| value < *b) {
                best = Some((value, tree));
            }
        }
    };
    if let Some(tree) = known {
        offer(tree.clone());
    }
    for runs in [Some(2), Some(3), None] {
        // Fewer turns than are allowed, trimmed where that is allowed.
        let most = stock.rules.stages.map_or(u8::MAX, |stages| stages.most);
        let trim = stock.rules.stages.is_none_or(|stages| stages.trim);
        let stages = match runs {
            Some(runs) if runs <= most => Some(Stages { most: runs, trim }),
            Some(_) => continue,
            None => stock.rules.stages,
        };
        let rules = Rules { stages, ..stock.rules };
        let stock = Stock { sheets: stock.sheets, items: items.clone(), place: stock.place.clone(), rules };
        for guide in [Guide::WasteBySize, Guide::Cost] {
            let task = Task { left: counts, copies: &copies, below: u64::MAX, width: WIDTH, guide };
            if let Some(patterns) = beam::search(&stock, task, budget)?
                && let [pattern] = &patterns[..]
            {
                offer(pattern.tree.clone());
            }
        }
    }
    Ok(best.map(|(_, tree)| tree))
}

/// Settings, cuts, and what the largest offcut lacks of the sheet.
fn work(stock: &Stock<'_>, s: usize, tree: &Tree) -> (u32, u32, u64) {
    let sheet = &stock.sheets[s];
    let effort = effort(tree, sheet.width, sheet.height);
    let whole = u64::from(sheet.width) * u64::from(sheet.height);
    (effort.settings, effort.cuts, whole - offcut(tree, sheet.width, sheet.height).min(whole))
}

fn score(stock: &Stock<'_>, plan: &Plan) -> Score {
    plan.uses.iter().fold((0, 0, plan.uses.len(), 0), |(settings, cuts, kinds, lack), (pattern, times)| {
        let work = work(stock, pattern.sheet, &pattern.tree);
        let times = u64::from(*times);
        let lack = u64::saturating_add(lack, work.2.saturating_mul(times));
        (settings + u64::from(work.0), cuts + u64::from(work.1) * times, kinds, lack)
    })
}

/// The area of the largest piece of waste.
fn offcut(tree: &Tree, width: u32, height: u32) -> u64 {
    match tree {
        Tree::Waste => u64::from(width) * u64::from(height),
        Tree::Piece { .. } => 0,
        Tree::Cut { axis: Axis::X, at, first, second } => {
            offcut(first, *at, height).max(offcut(second, width.saturating_sub(*at), height))
        }
        Tree::Cut { axis: Axis::Y, at, first, second } => {
            offcut(first, width, *at).max(offcut(second, width, height.saturating_sub(*at)))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixed::SheetKind;

    #[test]
    fn two_kinds_of_sheet_become_one_where_that_is_less_work() {
        let sheets = [SheetKind::whole(12, 12, None, 1)];
        let item = |kind, width| Item { kind, width, height: 12, cap: 4, value: 0, turn: false };
        let stock = Stock {
            sheets: &sheets,
            items: vec![item(0, 5), item(1, 7)],
            place: vec![Some(0), Some(1)],
            rules: Rules::default(),
        };
        // Four sheets of one 5 and one 7 each need one setting; two of 5 + 5 and four of 7 need two settings.
        let pattern = |counts: Vec<u32>| {
            let tree = lay(&stock, 0, &counts, None, &mut Budget::unlimited()).expect("no limit").expect("it fits");
            Pattern { sheet: 0, tree, counts }
        };
        let mut plan = stock.plan(vec![(pattern(vec![2, 0]), 1), (pattern(vec![1, 1]), 2), (pattern(vec![0, 1]), 2)]);
        let before = score(&stock, &plan);
        calm(&stock, &mut plan, &mut Budget::unlimited()).expect("no limit");
        assert!(stock.suffices(&plan) && plan.cost <= 5);
        assert!(score(&stock, &plan) < before, "{:?} is not below {before:?}", score(&stock, &plan));
    }

    #[test]
    fn waste_comes_together_and_rows_of_one_size_are_cut_at_one_setting() {
        let sheets = [SheetKind::whole(10, 10, None, 1)];
        let stock = Stock {
            sheets: &sheets,
            items: vec![Item { kind: 0, width: 4, height: 4, cap: 3, value: 0, turn: false }],
            place: vec![Some(0)],
            rules: Rules::default(),
        };
        let piece = || Tree::Piece { kind: 0, width: 4, height: 4, turned: false };
        let cut = |axis, at, a, b| Tree::Cut { axis, at, first: Box::new(a), second: Box::new(b) };
        // Waste between the pieces, each trimmed by itself.
        let lone = || cut(Axis::Y, 4, piece(), Tree::Waste);
        let scattered = cut(Axis::X, 1, Tree::Waste, cut(Axis::X, 4, lone(), cut(Axis::X, 1, Tree::Waste, lone())));
        let tree = lay(&stock, 0, &[2], Some(&scattered), &mut Budget::unlimited()).expect("no limit").expect("known");
        assert!(work(&stock, 0, &tree) < work(&stock, 0, &scattered));
        assert_eq!(effort(&tree, 10, 10).settings, 1);
    }
}
