//! The search for smallest changes: sort by sort, from small to large.
//!
//! A change only allows more, so what works with a change works with every change that takes it in. A set of
//! changes is dropped whole as soon as all of them together do not work.

use std::collections::BTreeMap;

use super::{Aim, Change, End, Fix, Move, Reach, Side, changed};
use crate::flexible::grid::Grid;
use crate::flexible::instance::{Answer, Instance, Kind, Layout, Recipe, Span};
use crate::flexible::packing;
use crate::flexible::wishes::{self, Found};
use crate::flexible::{Solver, Whole, solve};
use crate::{Budget, Outcome};

/// Whether a question works.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Works {
    Yes,
    No,
    /// The budget ended first.
    Unknown,
}

/// Fixes of one sort, and whether everything smaller (or everything, if there are none) was refuted.
type Sorted = (Vec<Fix>, bool);

pub(super) struct Search<'a> {
    instance: &'a Instance,
    reach: &'a Reach,
    /// Kinds of which pieces are asked for.
    used: Vec<usize>,
    /// What is known of ranges that reach further, by the steps of each of `ends`.
    known: BTreeMap<Vec<u32>, Works>,
}

/// One end of one range, and by how many steps it can move.
#[derive(Debug, Clone, Copy)]
struct Movable {
    kind: usize,
    side: Side,
    end: End,
    most: u32,
}

impl<'a> Search<'a> {
    pub(super) fn new(instance: &'a Instance, reach: &'a Reach) -> Search<'a> {
        let asked = |kind: &usize| {
            let spare = instance.spares.get(*kind).is_some_and(|&count| count > 0);
            spare || instance.recipes.iter().any(|recipe| recipe.cards.most > 0 && recipe.pieces[*kind] > 0)
        };
        let used = (0..instance.kinds.len()).filter(asked).collect();
        Search { instance, reach, used, known: BTreeMap::new() }
    }

    /// Whether a question works. May spend the whole budget.
    pub(super) fn works(&self, instance: &Instance, budget: &mut Budget<'_>) -> Works {
        let Ok(grid) = Grid::of(instance) else { return Works::No };
        let Ok(grid) = grid else { return Works::No };
        match self.reach.aim {
            Aim::NoWaste => tiles(instance, &grid, budget),
            // A pinned piece keeps its size: the engine itself must say.
            Aim::AnyLayout if !grid.pins.is_empty() => match solve(instance, budget) {
                Ok(answer) => judged(&answer),
                Err(_) => Works::No,
            },
            Aim::AnyLayout => packs(&grid, budget).0,
        }
    }

    /// As [`Search::works`], with a share of the budget, so that one hard question does not end the search.
    fn asked(&self, instance: &Instance, budget: &mut Budget<'_>) -> Works {
        let mut part = budget.part(budget.left() / 3);
        let works = self.works(instance, &mut part);
        let _ = budget.join(&part);
        works
    }

    /// A layout of a changed question that works.
    fn fix(&self, change: Change, smallest: bool, budget: &mut Budget<'_>) -> Option<Fix> {
        let mut instance = changed(self.instance, self.reach, &change);
        instance.alternatives = 1;
        let mut part = budget.part(budget.left() / 3);
        let solved = solve(&instance, &mut part).ok().and_then(|answer| answer.layouts.into_iter().next());
        let _ = budget.join(&part);
        let wanted = |layout: &Layout| self.reach.aim == Aim::AnyLayout || layout.waste == 0;
        let layout = solved.filter(wanted).or_else(|| self.plain(&instance))?;
        Some(Fix { change, layout, smallest })
    }

    /// The layout by which a question was seen to work, where the engine's budget gave none.
    fn plain(&self, instance: &Instance) -> Option<Layout> {
        let grid = Grid::of(instance).ok()?.ok()?;
        let found = match self.reach.aim {
            Aim::AnyLayout if grid.pins.is_empty() => packs(&grid, &mut Budget::unlimited()).1?,
            _ => return None,
        };
        wishes::best(instance, &grid, vec![found]).into_iter().next()
    }

    pub(super) fn turns(&self, budget: &mut Budget<'_>) -> Sorted {
        let may = |kind: &usize| {
            let turns = self.reach.turn.get(*kind).copied().unwrap_or(false);
            turns && !self.instance.kinds[*kind].turn
        };
        let kinds: Vec<usize> = self.used.iter().copied().filter(may).collect();
        let turned = |kinds: &[usize]| Change::Turn { kinds: kinds.to_vec() };
        if kinds.is_empty() {
            return (Vec::new(), true);
        }
        match self.asked(&changed(self.instance, self.reach, &turned(&kinds)), budget) {
            Works::No => return (Vec::new(), true),
            Works::Unknown => return (Vec::new(), false),
            Works::Yes => {}
        }
        let mut sure = true;
        for count in 1..=kinds.len() {
            let mut fixes = Vec::new();
            let mut refuted = true;
            for subset in subsets(&kinds, count) {
                if fixes.len() >= self.reach.each {
                    break;
                }
                match self.asked(&changed(self.instance, self.reach, &turned(&subset)), budget) {
                    Works::Yes => fixes.extend(self.fix(turned(&subset), sure, budget)),
                    Works::No => {}
                    Works::Unknown => refuted = false,
                }
            }
            if !fixes.is_empty() {
                return (fixes, sure);
            }
            sure &= refuted;
        }
        (Vec::new(), false)
    }

    pub(super) fn fewer_cards(&self, budget: &mut Budget<'_>) -> Sorted {
        let mut sure = true;
        let least = self.instance.cards.least;
        // What the sheet's area rules out is not even tried.
        let first = least.saturating_sub(self.most_by_area()).max(1);
        for by in first..=self.reach.cards.min(least.saturating_sub(1)) {
            // A try that is refused at once costs something too, so that a slip of the pen ends.
            if budget.spend(100).is_err() {
                return (Vec::new(), false);
            }
            let change = Change::FewerCards { by };
            match self.asked(&changed(self.instance, self.reach, &change), budget) {
                Works::Yes => match self.fix(change, sure, budget) {
                    Some(fix) => return (vec![fix], sure),
                    None => sure = false,
                },
                Works::No => {}
                Works::Unknown => sure = false,
            }
        }
        (Vec::new(), sure)
    }

    /// No more cards than these come out of the sheet's area, were every card the smallest.
    fn most_by_area(&self) -> u32 {
        let kinds = &self.instance.kinds;
        let smallest = |recipe: &Recipe| -> u64 {
            let area = |(kind, count): (&Kind, &u32)| {
                u64::from(kind.width.least) * u64::from(kind.height.least) * u64::from(*count)
            };
            kinds.iter().zip(&recipe.pieces).map(area).fold(0, u64::saturating_add)
        };
        let card = self.instance.recipes.iter().map(smallest).min().unwrap_or(0);
        let sheet = u64::from(self.instance.width) * u64::from(self.instance.height);
        u32::try_from(sheet.checked_div(card).unwrap_or(u64::MAX)).unwrap_or(u32::MAX)
    }

    pub(super) fn other_sheets(&self, budget: &mut Budget<'_>) -> Sorted {
        let area = |index: &usize| {
            let (width, height) = self.reach.sheets[*index];
            u64::from(width) * u64::from(height)
        };
        let mut order: Vec<usize> = (0..self.reach.sheets.len()).collect();
        order.sort_by_key(|index| (area(index), *index));
        let mut sure = true;
        let mut fixes: Vec<Fix> = Vec::new();
        for index in order {
            if fixes.len() >= self.reach.each {
                break;
            }
            let change = Change::Sheet { index };
            match self.asked(&changed(self.instance, self.reach, &change), budget) {
                Works::Yes => match self.fix(change, sure, budget) {
                    Some(fix) => fixes.push(fix),
                    None => sure = false,
                },
                Works::No => {}
                Works::Unknown => sure = false,
            }
        }
        (fixes, sure)
    }

    /// The ends that can move. Where any layout will do, a larger piece never helps.
    fn ends(&self) -> Vec<Movable> {
        let (width, height) = (self.instance.width, self.instance.height);
        let mut ends = Vec::new();
        for &index in &self.used {
            let kind = &self.instance.kinds[index];
            let step = kind.step.max(1);
            let (wide, high) = if kind.turn { (width.max(height), width.max(height)) } else { (width, height) };
            let sheet = (Span::new(1, wide), Span::new(1, high));
            let (widths, heights) = self.reach.bounds.get(index).copied().unwrap_or(sheet);
            let sides = [(Side::Width, kind.width, widths, wide), (Side::Height, kind.height, heights, high)];
            for (side, span, bound, room) in sides {
                let down = span.least.saturating_sub(bound.least.max(1)) / step;
                let up = bound.most.min(room).saturating_sub(span.most) / step;
                let up = if self.reach.aim == Aim::AnyLayout { 0 } else { up };
                for (end, most) in [(End::Least, down), (End::Most, up)] {
                    let most = most.min(self.reach.steps);
                    if most > 0 {
                        ends.push(Movable { kind: index, side, end, most });
                    }
                }
            }
        }
        ends
    }

    /// The smallest total of steps that works, and the ways to share it out: fewest ranges first.
    pub(super) fn sizes(&mut self, budget: &mut Budget<'_>) -> Sorted {
        let ends = self.ends();
        let reached = ends.iter().fold(0_u32, |sum, end| sum.saturating_add(end.most)).min(self.reach.steps);
        let mut sure = true;
        for total in 1..=reached {
            let all: Vec<u32> = ends.iter().map(|end| end.most.min(total)).collect();
            match self.moved(&ends, &all, budget) {
                Works::No => continue,
                Works::Unknown => sure = false,
                Works::Yes => {}
            }
            let mut ways = Ways { ends: &ends, found: Vec::new(), refuted: true };
            for ranges in 1..=ends.len().min(total as usize) {
                let mut steps = vec![0; ends.len()];
                self.share_out(&mut ways, 0, total, ranges, &mut steps, budget);
                if ways.found.len() >= self.reach.each {
                    break;
                }
            }
            let fix = |steps: &Vec<u32>, budget: &mut Budget<'_>| self.fix(change_of(&ends, steps), sure, budget);
            let fixes: Vec<Fix> = ways.found.iter().filter_map(|steps| fix(steps, budget)).collect();
            if !fixes.is_empty() {
                return (fixes, sure);
            }
            sure &= ways.refuted && ways.found.is_empty();
        }
        (Vec::new(), sure)
    }

    /// Shares `left` steps out over exactly `ranges` of the ends from `at` on.
    fn share_out(
        &mut self,
        ways: &mut Ways<'_>,
        at: usize,
        left: u32,
        ranges: usize,
        steps: &mut Vec<u32>,
        budget: &mut Budget<'_>,
    ) {
        if ways.found.len() >= self.reach.each {
            return;
        }
        let ends = ways.ends;
        if ranges == 0 || at == ends.len() {
            if left == 0 && ranges == 0 {
                match self.moved(ends, steps, budget) {
                    Works::Yes => ways.found.push(steps.clone()),
                    Works::No => {}
                    Works::Unknown => ways.refuted = false,
                }
            }
            return;
        }
        // Each range that moves takes one step at least.
        if (left as usize) < ranges {
            return;
        }
        // Dropped whole, if not even all of the rest moving as far as they may would do.
        let furthest = left - (ranges as u32 - 1);
        let mut relaxed = steps.clone();
        for (index, end) in ends.iter().enumerate().skip(at) {
            relaxed[index] = end.most.min(furthest);
        }
        if self.moved(ends, &relaxed, budget) == Works::No {
            return;
        }
        for taken in (1..=ends[at].most.min(furthest)).rev() {
            steps[at] = taken;
            self.share_out(ways, at + 1, left - taken, ranges - 1, steps, budget);
        }
        steps[at] = 0;
        self.share_out(ways, at + 1, left, ranges, steps, budget);
    }

    /// Whether the question works with each end moved by so many steps.
    fn moved(&mut self, ends: &[Movable], steps: &[u32], budget: &mut Budget<'_>) -> Works {
        if let Some(&known) = self.known.get(steps) {
            return known;
        }
        let works = self.asked(&changed(self.instance, self.reach, &change_of(ends, steps)), budget);
        self.known.insert(steps.to_vec(), works);
        works
    }
}

/// Ways to share a total of steps out.
struct Ways<'e> {
    ends: &'e [Movable],
    found: Vec<Vec<u32>>,
    /// True while every way that was not found was refuted.
    refuted: bool,
}

fn change_of(ends: &[Movable], steps: &[u32]) -> Change {
    let moves = ends.iter().zip(steps).filter(|(_, steps)| **steps > 0);
    let moves = moves.map(|(end, &steps)| Move { kind: end.kind, side: end.side, end: end.end, steps }).collect();
    Change::Sizes { moves }
}

/// Whether a tree uses the whole sheet.
fn tiles(instance: &Instance, grid: &Grid, budget: &mut Budget<'_>) -> Works {
    if !instance.width.is_multiple_of(grid.scale) || !instance.height.is_multiple_of(grid.scale) {
        return Works::No;
    }
    let mut solver = Solver { instance, grid, found: Vec::new() };
    match solver.whole(budget) {
        Whole::Yes(_) => Works::Yes,
        Whole::No => Works::No,
        Whole::Unknown => Works::Unknown,
    }
}

/// Whether the smallest pieces of some mix fit, and how: where they do not, no others do.
fn packs(grid: &Grid, budget: &mut Budget<'_>) -> (Works, Option<Found>) {
    let sizes: Vec<(u32, u32)> = grid.kinds.iter().map(|kind| (kind.width.0, kind.height.0)).collect();
    let mut sure = grid.all_mixes;
    // Few cards first: they fit soonest.
    for (mix, pieces) in grid.mixes.iter().enumerate() {
        match packing::pack(grid, &pieces.pieces, &sizes, budget) {
            Ok(Some(mut trees)) => return (Works::Yes, Some(Found { mix, tree: trees.swap_remove(0) })),
            Ok(None) => {}
            Err(_) => sure = false,
        }
    }
    (if sure { Works::No } else { Works::Unknown }, None)
}

fn judged(answer: &Answer) -> Works {
    match answer.outcome {
        _ if !answer.layouts.is_empty() => Works::Yes,
        Outcome::Impossible { .. } => Works::No,
        _ => Works::Unknown,
    }
}

/// Every choice of so many, in order.
fn subsets(of: &[usize], count: usize) -> Vec<Vec<usize>> {
    let Some((first, rest)) = of.split_first().filter(|_| count > 0) else {
        return if count == 0 { vec![Vec::new()] } else { Vec::new() };
    };
    let mut with = subsets(rest, count - 1);
    with.iter_mut().for_each(|subset| subset.insert(0, *first));
    with.extend(subsets(rest, count));
    with
}
