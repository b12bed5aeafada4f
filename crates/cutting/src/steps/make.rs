//! Turns a tree into steps.

use std::collections::BTreeMap;

use super::plan::{
    CutPlan, CutStep, End, Fate, Fold, Limits, Part, PartId, Rect, ScoreStep, Step, Trims, Up, Work, cautions,
};
use super::schedule::{self, Loose, Node, Order, What};
use crate::tree::{Axis, Rows, Tree, TreeError, canonical, rows};

/// Everything the steps depend on.
#[derive(Debug, Clone, Copy)]
pub struct Job<'a> {
    /// The layout of the usable part of the sheet; its rows are cut in the order they have. See [`tidy`].
    pub tree: &'a Tree,
    /// The sheet's width, unusable edges and all.
    pub width: u32,
    /// The sheet's height, unusable edges and all.
    pub height: u32,
    /// Unusable edges.
    pub trims: Trims,
    /// How many sheets get this layout.
    pub sheets: u32,
    /// What the trimmer can do.
    pub limits: Limits,
    /// Score lines for every piece of a kind.
    pub folds: &'a [Fold],
}

/// Why there are no steps.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum StepsError {
    /// The tree does not fit what the unusable edges leave.
    #[error(transparent)]
    Tree(#[from] TreeError),
    /// The unusable edges leave nothing.
    #[error("the unusable edges leave nothing of {width} by {height}")]
    NothingLeft {
        /// The sheet's width.
        width: u32,
        /// The sheet's height.
        height: u32,
    },
    /// Steps for no sheet.
    #[error("steps for no sheet")]
    NoSheets,
    /// A score line that is not inside the pieces of its kind.
    #[error("{0:?} is not inside its pieces")]
    FoldOutside(Fold),
}

/// The same layout with the parts of every row re-ordered for the trimmer.
///
/// Equal parts come together, wide before narrow where nothing else decides, and the rest last, so
/// that [`steps`] moves the stop as seldom as any order of the rows allows. All waste of a row
/// becomes one part. Places on the sheet change: not for layouts placed on a print.
///
/// # Errors
/// As [`crate::tree::pieces`].
pub fn tidy(tree: &Tree, width: u32, height: u32) -> Result<Tree, TreeError> {
    let nodes = schedule::nodes(&canonical(tree, width, height)?, Rect { x: 0, y: 0, width, height });
    let (settings, _) = schedule::order(&nodes, Order::Free, 0);
    Ok(schedule::arranged(&nodes, &settings).tree(width, height))
}

/// The steps that cut a layout out of its sheets, then score the pieces.
///
/// Unusable edges come off first, each as the rest of a cut that measures what is kept. Then
/// equal settings are made together, see [the module](crate::steps).
///
/// # Errors
/// [`StepsError::Tree`] if the tree does not fit the usable rectangle;
/// [`StepsError::NothingLeft`], [`StepsError::NoSheets`], [`StepsError::FoldOutside`] for the other
/// parts of the job.
pub fn steps(job: &Job<'_>) -> Result<CutPlan, StepsError> {
    let usable = usable(job)?;
    let rows: Rows = rows(job.tree, usable.width, usable.height)?;
    if job.sheets == 0 {
        return Err(StepsError::NoSheets);
    }
    let nodes = schedule::nodes(&rows, usable);
    let (settings, fewest) = schedule::order(&nodes, Order::Kept, job.limits.smallest_strip);
    let mut bench = Bench::new(job, nodes, fewest);
    bench.trim(usable);
    for setting in settings {
        bench.stop_at(setting);
    }
    bench.number();
    bench.score()?;
    Ok(bench.plan)
}

fn usable(job: &Job<'_>) -> Result<Rect, StepsError> {
    let Trims { left, top, right, bottom } = job.trims;
    let nothing = StepsError::NothingLeft { width: job.width, height: job.height };
    let inside = |side: u32, near: u32, far: u32| side.checked_sub(near)?.checked_sub(far).filter(|left| *left > 0);
    match (inside(job.width, left, right), inside(job.height, top, bottom)) {
        (Some(width), Some(height)) => Ok(Rect { x: left, y: top, width, height }),
        _ => Err(nothing),
    }
}

/// Paper on the table while steps are made.
struct Bench<'a> {
    job: &'a Job<'a>,
    nodes: Vec<Node>,
    loose: Loose,
    /// The part in which a row lies, or what is left of it.
    hand: BTreeMap<usize, PartId>,
    plan: CutPlan,
    /// Where the stop stands, and how often it was set.
    stop: Option<(u32, u32)>,
}

/// Parts that can be cut together: how far, which way they lie, how often.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Alike {
    axis: Axis,
    end: End,
    along: u32,
    cuts: u32,
    up: Up,
}

impl<'a> Bench<'a> {
    fn new(job: &'a Job<'a>, nodes: Vec<Node>, fewest: bool) -> Bench<'a> {
        let loose = schedule::whole(&nodes);
        let plan = CutPlan {
            sheet: (job.width, job.height),
            sheets: job.sheets,
            limits: job.limits,
            trims: job.trims,
            folds: job.folds.to_vec(),
            parts: Vec::new(),
            steps: Vec::new(),
            fewest,
        };
        let mut bench = Bench { job, nodes, loose, hand: BTreeMap::new(), plan, stop: None };
        let sheet = Rect { x: 0, y: 0, width: job.width, height: job.height };
        let id = bench.part(sheet, Fate::Cut, Up::Away);
        bench.lie(0, id);
        bench
    }

    fn part(&mut self, rect: Rect, fate: Fate, up: Up) -> PartId {
        let id = PartId(u32::try_from(self.plan.parts.len()).unwrap_or(u32::MAX));
        self.plan.parts.push(Part { id, rect, fate, up });
        id
    }

    fn get(&self, id: PartId) -> Part {
        self.plan.parts[id.0 as usize]
    }

    /// A node is now a part of its own.
    fn lie(&mut self, node: usize, id: PartId) {
        self.hand.insert(node, id);
        self.plan.parts[id.0 as usize].fate = match self.nodes[node].what {
            What::Row { .. } => Fate::Cut,
            What::Waste => Fate::Waste,
            What::Piece { kind, turned } => Fate::Piece { kind, turned, number: 0 },
        };
    }

    /// Takes the unusable edges off, one by one, long cuts first.
    fn trim(&mut self, usable: Rect) {
        let (width, height) = (self.job.width, self.job.height);
        let Trims { left, top, right, bottom } = self.job.trims;
        let mut edges = [
            (Axis::X, End::Far, left, width - left, height),
            (Axis::X, End::Near, right, usable.width, height),
            (Axis::Y, End::Far, top, height - top, usable.width),
            (Axis::Y, End::Near, bottom, usable.height, usable.width),
        ];
        if width > height {
            // The long cut first: then the other two run over what the first two left.
            edges.rotate_left(2);
        }
        let mut id = PartId::SHEET;
        for (axis, end, edge, keep, _) in edges {
            if edge == 0 {
                continue;
            }
            let from = self.get(id);
            let Some((kept, strip)) = from.rect.split(axis, end, keep) else { continue };
            let up = Up::needed(axis, end);
            self.plan.parts[id.0 as usize].fate = Fate::Cut;
            let kept = self.part(kept, Fate::Cut, up);
            let strip = self.part(strip, Fate::Edge, up);
            let work = Work { part: id, off: vec![kept], rest: strip };
            let alike = Alike { axis, end, along: axis.of(from.rect.width, from.rect.height), cuts: 1, up: from.up };
            self.push(keep, alike, vec![work]);
            id = kept;
        }
        self.lie(0, id);
        // A layout that is one whole piece after an edge came off is finished by that cut.
        if id != PartId::SHEET && !matches!(self.get(id).fate, Fate::Cut) {
            self.finish_last(id);
        }
    }

    fn finish_last(&mut self, id: PartId) {
        if matches!(self.get(id).fate, Fate::Piece { .. })
            && let Some(Step::Cut(step)) = self.plan.steps.last_mut()
        {
            step.finished.push(id);
        }
    }

    /// Makes every cut that one distance allows.
    fn stop_at(&mut self, setting: u32) {
        loop {
            let mut groups: BTreeMap<Alike, Vec<usize>> = BTreeMap::new();
            for row in 0..self.nodes.len() {
                if let Some(alike) = self.alike(row, setting) {
                    groups.entry(alike).or_default().push(row);
                }
            }
            if groups.is_empty() {
                return;
            }
            // Long cuts first; then what already lies right.
            let mut groups: Vec<(Alike, Vec<usize>)> = groups.into_iter().collect();
            let longest = |rows: &[usize]| rows.iter().map(|row| self.across(*row)).max();
            groups.sort_by_key(|(alike, rows)| (std::cmp::Reverse(longest(rows)), *alike));
            for (alike, rows) in groups {
                let work = rows.iter().map(|row| self.cut(*row, setting, alike)).collect();
                self.push(setting, alike, work);
            }
        }
    }

    fn across(&self, row: usize) -> u32 {
        let rect = self.nodes[row].rect;
        match self.nodes[row].what {
            What::Row { axis, .. } => axis.across().of(rect.width, rect.height),
            _ => 0,
        }
    }

    /// How a row would be cut at this distance: off the near end if it can be, else off the far one.
    fn alike(&self, row: usize, setting: u32) -> Option<Alike> {
        let What::Row { axis, .. } = self.nodes[row].what else { return None };
        let sizes: Vec<u32> =
            schedule::together(&self.nodes, &self.loose, row).map(|part| self.nodes[part].size).collect();
        let run = |count: usize| count.min(sizes.len().saturating_sub(1));
        let near = run(sizes.iter().take_while(|size| **size == setting).count());
        let far = run(sizes.iter().rev().take_while(|size| **size == setting).count());
        let (end, cuts) = if near > 0 { (End::Near, near) } else { (End::Far, far) };
        let hand = self.get(*self.hand.get(&row)?);
        let along = axis.of(hand.rect.width, hand.rect.height);
        (cuts > 0).then(|| Alike { axis, end, along, cuts: u32::try_from(cuts).unwrap_or(u32::MAX), up: hand.up })
    }

    /// Cuts one row as planned.
    fn cut(&mut self, row: usize, setting: u32, alike: Alike) -> Work {
        let part = self.hand[&row];
        let up = Up::needed(alike.axis, alike.end);
        let mut left = self.get(part).rect;
        let mut off = Vec::new();
        let mut rest_node = None;
        for _ in 0..alike.cuts {
            let mut parts = schedule::together(&self.nodes, &self.loose, row);
            let node = if alike.end == End::Near { parts.next() } else { parts.next_back() };
            drop(parts);
            let (Some(node), Some((piece, rest))) = (node, left.split(alike.axis, alike.end, setting)) else { break };
            rest_node = schedule::take(&self.nodes, &mut self.loose, row, node);
            let id = self.part(piece, Fate::Cut, up);
            self.lie(node, id);
            off.push(id);
            left = rest;
        }
        let rest = self.part(left, Fate::Cut, up);
        match rest_node {
            Some(node) => self.lie(node, rest),
            None => {
                self.hand.insert(row, rest);
            }
        }
        Work { part, off, rest }
    }

    fn push(&mut self, setting: u32, alike: Alike, work: Vec<Work>) {
        let stop = match self.stop {
            Some((at, stop)) if at == setting => stop,
            Some((_, stop)) => stop + 1,
            None => 0,
        };
        self.stop = Some((setting, stop));
        let sides: Vec<(u32, u32)> = work
            .iter()
            .map(|work| self.get(work.part).rect)
            .map(|rect| (alike.axis.of(rect.width, rect.height), alike.axis.across().of(rect.width, rect.height)))
            .collect();
        let sheets = u32::try_from(work.len()).unwrap_or(u32::MAX).saturating_mul(self.job.sheets);
        let layers = self.job.limits.stack.max(1).min(sheets);
        let finished = work
            .iter()
            .flat_map(|work| work.off.iter().chain([&work.rest]))
            .copied()
            .filter(|id| matches!(self.get(*id).fate, Fate::Piece { .. }))
            .collect();
        self.plan.steps.push(Step::Cut(CutStep {
            stop,
            setting,
            axis: alike.axis,
            end: alike.end,
            turn: alike.up.turn_to(Up::needed(alike.axis, alike.end)),
            cuts: alike.cuts,
            layers,
            strokes: sheets.div_ceil(layers).saturating_mul(alike.cuts),
            finished,
            cautions: cautions(&self.job.limits, setting, alike.cuts, &sides),
            work,
        }));
    }

    /// Numbers the pieces from 1, row by row as one reads the sheet.
    fn number(&mut self) {
        let mut pieces: Vec<&mut Part> =
            self.plan.parts.iter_mut().filter(|part| matches!(part.fate, Fate::Piece { .. })).collect();
        pieces.sort_by_key(|part| (part.rect.y, part.rect.x));
        for (place, part) in (1..).zip(pieces) {
            if let Fate::Piece { number, .. } = &mut part.fate {
                *number = place;
            }
        }
    }

    fn score(&mut self) -> Result<(), StepsError> {
        for fold in self.job.folds {
            let mut parts = Vec::new();
            for part in &self.plan.parts {
                let Fate::Piece { kind, turned, .. } = part.fate else { continue };
                if kind != fold.kind {
                    continue;
                }
                let axis = if turned { fold.axis.across() } else { fold.axis };
                if fold.at == 0 || fold.at >= axis.of(part.rect.width, part.rect.height) {
                    return Err(StepsError::FoldOutside(*fold));
                }
                parts.push(part.id);
            }
            if !parts.is_empty() {
                let strokes = u32::try_from(parts.len()).unwrap_or(u32::MAX).saturating_mul(self.job.sheets);
                self.plan.steps.push(Step::Score(ScoreStep { fold: *fold, parts, strokes }));
            }
        }
        Ok(())
    }
}
