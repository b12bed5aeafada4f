//! Cut plans that have been checked: the tree against what was asked, the steps by replaying them.
//!
//! A plan that fails a check is a bug of ours. It is never shown: the caller gets `None`.

use cutting::flexible::Instance;
use cutting::steps::{CutPlan, Fold as FoldLine, Job, Limits, Trims, steps, tidy};
use cutting::tree::pieces;
use cutting::verify::{Demand, Kind, Pin, verify};
use cutting::{Axis, Placed, Tree, replay};
use measure::{Length, Rect, Size};

use super::answer::StockCut;
use super::grid::Grid;
use crate::model::{Edges, Fold, Grain, Pack, Project};

/// A tree, where its pieces lie on the sheet, and its steps.
#[derive(Debug, Clone)]
pub(super) struct Done {
    pub(super) tree: Tree,
    /// Pieces in steps of the tree's grid, inside the part of the sheet that the tree divides.
    pub(super) placed: Vec<Placed>,
    pub(super) cut_plan: CutPlan,
}

/// True if the tree gives just what the instance asks for, with so many cards of each recipe.
pub(super) fn sound(instance: &Instance, tree: &Tree, cards: &[u32]) -> bool {
    let count = |kind: usize| {
        let each = instance.recipes.iter().zip(cards).map(|(recipe, &cards)| recipe.pieces[kind] * cards);
        each.sum::<u32>() + instance.spares.get(kind).copied().unwrap_or(0)
    };
    let kind = |(index, kind): (usize, &cutting::flexible::Kind)| Kind {
        width: kind.width.least..=kind.width.most,
        height: kind.height.least..=kind.height.most,
        step: 1,
        turn: kind.turn,
        uniform: kind.uniform,
        count: count(index)..=count(index),
    };
    let pin = |pin: &cutting::flexible::Pin| Pin {
        kind: pin.kind,
        x: Some(pin.x),
        y: Some(pin.y),
        width: Some(pin.width),
        height: Some(pin.height),
    };
    let demand = Demand {
        kinds: instance.kinds.iter().enumerate().map(kind).collect(),
        pins: instance.pins.iter().map(pin).collect(),
    };
    verify(tree, instance.width, instance.height, &demand).is_ok()
}

/// The steps that cut so many sheets of a pack, and one step of their grid.
///
/// The grid of the steps is the coarsest on which the whole sheet, its unusable edges and the layout lie.
pub(super) fn paper(
    project: &Project,
    pack: &Pack,
    usable: Rect,
    step: Length,
    tree: &Tree,
    sheets: u32,
) -> Option<(CutPlan, Length)> {
    let far = Size::new(pack.sheet.width - usable.right(), pack.sheet.height - usable.bottom());
    let lengths = [step, pack.sheet.width, pack.sheet.height, usable.x, usable.y, far.width, far.height];
    let grid = Grid::through(lengths)?;
    let scale = grid.exact(step)?;
    let tree = scaled(tree, scale);
    let trims = Trims {
        left: grid.exact(usable.x)?,
        top: grid.exact(usable.y)?,
        right: grid.exact(far.width)?,
        bottom: grid.exact(far.height)?,
    };
    let sheet = Sheet { grid, size: pack.sheet, trims, sheets, stack: project.trimmer.stack_paper };
    let plan = plan(project, &sheet, &tree, &[])?;
    Some((plan, grid.step()))
}

/// A sheet that is to be cut.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sheet {
    grid: Grid,
    size: Size,
    trims: Trims,
    sheets: u32,
    stack: u32,
}

impl Sheet {
    /// A sheet without unusable edges, cut so many times.
    pub(super) fn plain(grid: Grid, size: Size, sheets: u32) -> Sheet {
        Sheet { grid, size, trims: Trims::default(), sheets, stack: 1 }
    }

    /// The same sheet with unusable edges, which lie on its grid.
    pub(super) fn inside(mut self, edges: Edges) -> Sheet {
        let steps = |length| self.grid.floor(length);
        self.trims = Trims {
            left: steps(edges.left),
            top: steps(edges.top),
            right: steps(edges.right),
            bottom: steps(edges.bottom),
        };
        self
    }

    /// Width and height inside the edges, in steps.
    fn usable(&self) -> Option<(u32, u32)> {
        let Trims { left, top, right, bottom } = self.trims;
        let width = self.grid.exact(self.size.width)?.checked_sub(left)?.checked_sub(right)?;
        let height = self.grid.exact(self.size.height)?.checked_sub(top)?.checked_sub(bottom)?;
        Some((width, height))
    }
}

/// A sheet of cardstock: the tree put in order, its pieces and its steps with the scores.
///
/// Checked besides: a base that keeps the grain lies so that its fold follows the grain of this sheet.
pub(super) fn stock(project: &Project, cuts: &[StockCut], sheet: &Sheet, grain: Grain, tree: &Tree) -> Option<Done> {
    let (width, height) = sheet.usable()?;
    let tree = tidy(tree, width, height).ok()?;
    let kind = |cut: &StockCut| {
        let (w, h) = (sheet.grid.exact(cut.size.width)?, sheet.grid.exact(cut.size.height)?);
        let mut kind = Kind::exact(w, h, 0);
        kind.count = 0..=cut.count;
        kind.turn = cut.may_turn || lies_turned(project, cut, grain);
        Some(kind)
    };
    let kinds = cuts.iter().map(kind).collect::<Option<Vec<_>>>()?;
    let mut placed = verify(&tree, width, height, &Demand { kinds, pins: Vec::new() }).ok()?.placed;
    // Reading order: the order in which the steps number the pieces.
    placed.sort_by_key(|piece| (piece.y, piece.x));
    let wrong = |piece: &Placed| {
        let cut = &cuts[piece.kind];
        !cut.may_turn && piece.turned != lies_turned(project, cut, grain)
    };
    if placed.iter().any(wrong) {
        return None;
    }
    let mut folds = Vec::new();
    for (index, cut) in cuts.iter().enumerate() {
        if !placed.iter().any(|piece| piece.kind == index) {
            continue;
        }
        let axis = if project.recipes[cut.recipe].fold == Fold::Top { Axis::Y } else { Axis::X };
        for score in &cut.scores {
            folds.push(FoldLine { kind: index, axis, at: sheet.grid.exact(*score)? });
        }
    }
    let sheet = Sheet { stack: project.trimmer.stack_cardstock, ..*sheet };
    let cut_plan = plan(project, &sheet, &tree, &folds)?;
    Some(Done { tree, placed, cut_plan })
}

/// A single sheet or rest of patterned paper: its pieces and its steps.
///
/// Each kind is a size as it stands on its card, how many there may be, and whether it may lie a quarter turned.
pub(super) fn loose(project: &Project, kinds: &[(Size, u32, bool)], sheet: &Sheet, tree: &Tree) -> Option<Done> {
    let (width, height) = sheet.usable()?;
    let tree = tidy(tree, width, height).ok()?;
    let kind = |&(size, most, turn): &(Size, u32, bool)| {
        let mut kind = Kind::exact(sheet.grid.exact(size.width)?, sheet.grid.exact(size.height)?, 0);
        kind.count = 0..=most;
        kind.turn = turn;
        Some(kind)
    };
    let kinds = kinds.iter().map(kind).collect::<Option<Vec<_>>>()?;
    let placed = verify(&tree, width, height, &Demand { kinds, pins: Vec::new() }).ok()?.placed;
    let cut_plan = plan(project, sheet, &tree, &[])?;
    Some(Done { tree, placed, cut_plan })
}

/// True if a cut that keeps the grain must lie a quarter turned on a sheet of that grain.
///
/// The fold of a base runs along its height, for a top fold along its width.
fn lies_turned(project: &Project, cut: &StockCut, grain: Grain) -> bool {
    let along_width = project.recipes[cut.recipe].fold == Fold::Top;
    match grain {
        Grain::AlongHeight => along_width,
        Grain::AlongWidth => !along_width,
        // The engine writes such a sheet as if its grain ran along its height.
        Grain::Unknown => along_width,
    }
}

/// Steps for a tree on the sheet's own grid, replayed.
fn plan(project: &Project, sheet: &Sheet, tree: &Tree, folds: &[FoldLine]) -> Option<CutPlan> {
    let (width, height) = (sheet.grid.exact(sheet.size.width)?, sheet.grid.exact(sheet.size.height)?);
    let Trims { left, top, right, bottom } = sheet.trims;
    let promised: Vec<Placed> = pieces(tree, width - left - right, height - top - bottom)
        .ok()?
        .into_iter()
        .map(|piece| Placed { x: piece.x + left, y: piece.y + top, ..piece })
        .collect();
    let limits = Limits {
        longest_cut: sheet.grid.floor(project.trimmer.longest_cut),
        smallest_strip: sheet.grid.ceil(project.trimmer.smallest_strip),
        stack: sheet.stack,
    };
    let job = Job { tree, width, height, trims: sheet.trims, sheets: sheet.sheets.max(1), limits, folds };
    let plan = steps(&job).ok()?;
    replay::check(&plan, &promised).ok()?;
    Some(plan)
}

/// The same tree with so many steps where there was one.
fn scaled(tree: &Tree, scale: u32) -> Tree {
    match tree {
        Tree::Waste => Tree::Waste,
        Tree::Piece { kind, width, height, turned } => {
            Tree::Piece { kind: *kind, width: width * scale, height: height * scale, turned: *turned }
        }
        Tree::Cut { axis, at, first, second } => Tree::Cut {
            axis: *axis,
            at: at * scale,
            first: Box::new(scaled(first, scale)),
            second: Box::new(scaled(second, scale)),
        },
    }
}
