//! A cut line that the maker moves: the layout that comes of it, the rest worked out anew.
//!
//! First the same cuts are tried with pieces at other sizes; where those cannot do it, the engine is asked for any layout
//! with the piece beside the line pinned at its new size. Left out on purpose: keeping it. What comes back are pins, which
//! the maker keeps or not.

use cutting::flexible::{self, shift};
use cutting::{Axis, Budget, Tree};
use measure::{Length, Rect, Size};

use super::answer::{Alternative, Layout, Piece, Plan};
use super::around;
use super::grid::Grid;
use super::groups::{Group, groups};
use super::paper::{self, Question};
use crate::model::{Project, Side};

/// A pinned piece as a goal names it: recipe, layer, left, top, size.
pub type Pinned = (String, String, Length, Length, Size);

/// Nodes that the walk through the same cuts may spend. Chosen: some 20 ms.
const SAME_CUTS: u64 = 60_000;

/// Part of a side that a rest at the far edge may take at most. Chosen: more is another layout.
const MOST_REST: u32 = 4;

/// A straight line along which a sheet is cut, in sheet coordinates.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CutLine {
    /// Which side of the sheet it divides.
    pub axis: Axis,
    /// Distance from the left (X) or top (Y) edge of the sheet.
    pub at: Length,
    /// Where it begins along itself.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
}

impl CutLine {
    /// Where a place along the line's axis lies on a rectangle: its near and far edge, and how far it reaches along the line.
    fn along(&self, rect: Rect) -> (Length, Length, Length, Length) {
        match self.axis {
            Axis::X => (rect.x, rect.right(), rect.y, rect.bottom()),
            Axis::Y => (rect.y, rect.bottom(), rect.x, rect.right()),
        }
    }

    /// How far a rectangle lies from a place along the line.
    fn off(&self, rect: Rect, near: Length) -> Length {
        let (_, _, from, to) = self.along(rect);
        if from <= near && near <= to { Length::ZERO } else { (from - near).max(near - to) }
    }

    /// True if that rectangle ends or begins on the line.
    fn beside(&self, rect: Rect) -> bool {
        let (near, far, from, to) = self.along(rect);
        (near == self.at || far == self.at) && from < self.to && to > self.from
    }
}

/// What comes of a moved line.
#[derive(Debug, Clone, PartialEq)]
pub struct Shifted {
    /// The layout.
    pub layout: Alternative,
    /// Its cut lines.
    pub cuts: Vec<CutLine>,
    /// What is left over of a sheet.
    pub left_over: Vec<Rect>,
    /// The pins that keep it: those that stay, and one piece beside the line.
    pub pins: Vec<Pinned>,
    /// Where the line lies now: on the nearest mark.
    pub at: Length,
}

/// Why a line stays where it is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Stays {
    /// There is no such line.
    NoLine,
    /// The sheet is cut on its printed lines.
    Printed,
    /// Pins lie on the first pack of a project without batches only.
    NoPins,
    /// It would leave the sheet.
    OffSheet,
    /// A piece beside it may not be so wide or so high.
    Range {
        /// Its recipe.
        recipe: String,
        /// Its layer.
        layer: String,
        /// Which side of it: X the width, Y the height, as it stands on the card.
        side: Axis,
        /// The smallest it may be.
        least: Length,
        /// The largest it may be.
        most: Length,
        /// What it would have to be.
        wanted: Length,
    },
    /// No straight cuts give as many cards with the line there.
    NoLayout {
        /// How many cards.
        cards: u32,
        /// The nearest place towards where it lies now that it could have, if one was found.
        nearest: Option<Length>,
        /// False: none was found before the budget ended.
        proven: bool,
    },
}

/// The lines along which a layout is cut, upright ones first, from the near edge on.
pub fn cut_lines(layout: &Layout) -> Vec<CutLine> {
    lines(&layout.tree, layout.usable, Grid::new(layout.step))
}

fn lines(tree: &Tree, usable: Rect, grid: Grid) -> Vec<CutLine> {
    let (width, height) = (grid.floor(usable.size.width), grid.floor(usable.size.height));
    let on_sheet = |line: shift::Line| {
        let (across, along) = match line.axis {
            Axis::X => (usable.x, usable.y),
            Axis::Y => (usable.y, usable.x),
        };
        let at = |steps| along + grid.length(steps);
        CutLine { axis: line.axis, at: across + grid.length(line.at), from: at(line.from), to: at(line.to) }
    };
    shift::lines(tree, width, height).into_iter().map(on_sheet).collect()
}

/// What is left over of a sheet cut by that tree, in sheet coordinates.
pub fn left_over(tree: &Tree, usable: Rect, step: Length) -> Vec<Rect> {
    let grid = Grid::new(step);
    let (width, height) = (grid.floor(usable.size.width), grid.floor(usable.size.height));
    let on_sheet = |[x, y, w, h]: [u32; 4]| {
        let size = Size::new(grid.length(w), grid.length(h));
        Rect::new(usable.x + grid.length(x), usable.y + grid.length(y), size)
    };
    shift::left_over(tree, width, height).into_iter().map(on_sheet).collect()
}

/// The layout with one of its [`cut_lines`] moved to the mark nearest `to`.
///
/// # Shape
/// `near` is where along the line the maker holds it: of the pieces beside it, the one there is held. Pins that do not
/// touch the line stay. As many cards as before. Every layout has been checked against the question.
///
/// # Errors
/// [`Stays`]: why it cannot lie there.
pub fn shift(
    plan: &Plan,
    layout: usize,
    line: usize,
    to: Length,
    near: Length,
    budget: &mut Budget<'_>,
) -> Result<Shifted, Stays> {
    let laid = plan.layouts.get(layout).ok_or(Stays::NoLine)?;
    let line = cut_lines(laid).get(line).copied().ok_or(Stays::NoLine)?;
    let alone = alone(plan, layout)?;
    let grid = Grid::new(laid.step);
    let moving = Moving { plan, alone, laid, grid, line };
    let half = Length::from_ticks(grid.step().ticks() / 2);
    let start = if line.axis == Axis::X { laid.usable.x } else { laid.usable.y };
    let side = if line.axis == Axis::X { laid.usable.size.width } else { laid.usable.size.height };
    let wanted = grid.floor((to - start).max(Length::ZERO) + half);
    if wanted == 0 || grid.length(wanted) >= side {
        return Err(Stays::OffSheet);
    }
    let (cards, proven) = match moving.to(wanted, near, budget) {
        Err(Stays::NoLayout { cards, proven, .. }) => (cards, proven),
        other => return other,
    };
    // Where it could lie instead: outwards from the place that was asked for, the same cuts only.
    let now = grid.floor(line.at - start);
    let between = (1..wanted.abs_diff(now)).map(|off| if now > wanted { wanted + off } else { wanted - off });
    let nearest = between.into_iter().find(|&at| moving.same_cuts(at, near, budget).is_some());
    let nearest = nearest.map(|at| start + grid.length(at));
    Err(Stays::NoLayout { cards, nearest, proven })
}

/// The fewest pins, the largest pieces first, with which `wanted` is the layout that a plan chooses.
///
/// # Shape
/// Pins the maker set and that `wanted` keeps come first. Where even all pieces pinned are answered otherwise, all are.
pub fn pins_for(plan: &Plan, layout: usize, wanted: &Alternative, budget: &mut Budget<'_>) -> Option<Vec<Pinned>> {
    let laid = plan.layouts.get(layout)?;
    let alone = alone(plan, layout).ok()?;
    let mut order: Vec<usize> = (0..wanted.pieces.len()).filter(|&index| wanted.pieces[index].card.is_some()).collect();
    let area = |index: usize| {
        let size = wanted.pieces[index].rect.size;
        i128::from(size.width.ticks()) * i128::from(size.height.ticks())
    };
    order.sort_by_key(|&index| {
        (std::cmp::Reverse(area(index)), wanted.pieces[index].rect.y, wanted.pieces[index].rect.x)
    });
    let all: Vec<Pinned> = order.iter().filter_map(|&index| pinned(&plan.project, &wanted.pieces, index)).collect();
    let mut pins: Vec<Pinned> = plan.project.goal.pins.iter().filter(|pin| all.contains(pin)).cloned().collect();
    for next in all.iter().map(Some).chain([None]) {
        if chosen(&alone, laid, &pins, budget).is_some_and(|found| found.pieces == wanted.pieces) {
            return Some(pins);
        }
        pins.extend(next.filter(|next| !pins.contains(next)).cloned());
    }
    Some(all)
}

/// The layout that a plan with those pins chooses for as many cards.
fn chosen(alone: &Project, laid: &Layout, pins: &[Pinned], budget: &mut Budget<'_>) -> Option<Alternative> {
    let mut project = alone.clone();
    project.goal.pins = pins.to_vec();
    let question = paper::ask(&project, laid.pack, true, Grid::new(laid.step), &mut Vec::new())?;
    let instance = question.with_cards(cards(laid));
    let answer = around::solve(&instance, budget).answer.ok()?;
    question.told(&instance, answer.layouts.first()?)
}

/// The project as if it were about one layout only.
fn alone(plan: &Plan, layout: usize) -> Result<Project, Stays> {
    let laid = plan.layouts.get(layout).ok_or(Stays::NoLine)?;
    if !laid.panels.is_empty() {
        return Err(Stays::Printed);
    }
    let batch = plan.batches.get(laid.batch).ok_or(Stays::NoLine)?;
    let gone: Vec<Vec<u32>> = plan.project.packs.iter().map(|pack| vec![0; pack.designs.len()]).collect();
    let groups = groups(&plan.project, batch, &gone, &mut Vec::new());
    let holds = |group: &&Group| {
        let has = |design: usize, side: Side| group.takes.iter().any(|take| (take.design, take.side) == (design, side));
        group.pack == laid.pack && laid.sheets.iter().all(|used| has(used.design, used.side))
    };
    let first = groups.first().map(|group| group.pack);
    let group = groups.iter().find(holds).ok_or(Stays::NoPins)?;
    if !plan.project.batches.is_empty() || first != Some(group.pack) {
        return Err(Stays::NoPins);
    }
    Ok(group.project(&plan.project, batch))
}

fn cards(laid: &Layout) -> u32 {
    laid.recipe_counts.iter().sum()
}

fn pinned(project: &Project, pieces: &[Piece], piece: usize) -> Option<Pinned> {
    let piece = pieces.get(piece)?;
    let recipe = project.recipes.get(piece.recipe)?.name.clone();
    let layer = project.layer(piece.recipe, piece.layer)?.name.clone();
    Some((recipe, layer, piece.rect.x, piece.rect.y, piece.rect.size))
}

struct Moving<'p> {
    plan: &'p Plan,
    alone: Project,
    laid: &'p Layout,
    grid: Grid,
    line: CutLine,
}

impl Moving<'_> {
    /// The pins that do not touch the line.
    fn staying(&self) -> Vec<Pinned> {
        let touches = |pin: &&Pinned| !self.line.beside(Rect::new(pin.2, pin.3, pin.4));
        self.alone.goal.pins.iter().filter(touches).cloned().collect()
    }

    fn asked<'q>(&self, project: &'q Project) -> Result<Question<'q>, Stays> {
        paper::ask(project, self.laid.pack, true, self.grid, &mut Vec::new()).ok_or(Stays::NoLine)
    }

    fn start(&self) -> Length {
        if self.line.axis == Axis::X { self.laid.usable.x } else { self.laid.usable.y }
    }

    /// The same cuts with the line at that step.
    fn same_cuts(&self, at: u32, near: Length, budget: &mut Budget<'_>) -> Option<Shifted> {
        let mut project = self.alone.clone();
        project.goal.pins = self.staying();
        let question = self.asked(&project).ok()?;
        let instance = question.with_cards(cards(self.laid));
        let line = self.steps(self.line)?;
        let tree = budget.within(SAME_CUTS, |part| self.moved(&instance, line, at, part))?;
        let lost = shift::left_over(&tree, instance.width, instance.height);
        let layout = flexible::Layout {
            effort: cutting::steps::effort(&tree, instance.width, instance.height),
            cards: self.laid.recipe_counts.clone(),
            waste: lost.iter().map(|[_, _, w, h]| u64::from(*w) * u64::from(*h)).sum(),
            off_preferred: 0,
            equals: Vec::new(),
            tree,
        };
        let told = question.as_it_lies(&instance, &layout, layout.tree.clone())?;
        self.done(told, at, near)
    }

    /// The same cuts in the whole sheet; else in as much of it as they fill, with a rest at the far edge.
    fn moved(
        &self,
        instance: &flexible::Instance,
        line: shift::Line,
        at: u32,
        budget: &mut Budget<'_>,
    ) -> Option<Tree> {
        let tree = &self.laid.tree;
        if let Some(found) = shift::shifted(instance, tree, line, at, budget).ok()? {
            return Some(found);
        }
        let axis = line.axis;
        for rest in 1..=axis.of(instance.width, instance.height) / MOST_REST {
            let mut smaller = instance.clone();
            let side = if axis == Axis::X { &mut smaller.width } else { &mut smaller.height };
            *side -= rest;
            let cut = *side;
            if let Some(found) = shift::shifted(&smaller, tree, line, at, budget).ok()? {
                let (first, second) = (Box::new(found), Box::new(Tree::Waste));
                return Some(Tree::Cut { axis, at: cut, first, second });
            }
        }
        None
    }

    fn steps(&self, line: CutLine) -> Option<shift::Line> {
        let (across, along) = match line.axis {
            Axis::X => (self.laid.usable.x, self.laid.usable.y),
            Axis::Y => (self.laid.usable.y, self.laid.usable.x),
        };
        let exact = |length: Length| self.grid.exact(length);
        let (from, to) = (exact(line.from - along)?, exact(line.to - along)?);
        Some(shift::Line { axis: line.axis, at: exact(line.at - across)?, from, to })
    }

    /// The answer, with the pins that keep it.
    fn done(&self, layout: Alternative, at: u32, near: Length) -> Option<Shifted> {
        let at = self.start() + self.grid.length(at);
        let line = CutLine { at, ..self.line };
        let beside = (0..layout.pieces.len())
            .filter(|&index| layout.pieces[index].card.is_some() && line.beside(layout.pieces[index].rect))
            .min_by_key(|&index| (self.line.off(layout.pieces[index].rect, near), index));
        let mut pins = self.staying();
        pins.extend(beside.and_then(|index| pinned(&self.plan.project, &layout.pieces, index)));
        Some(Shifted {
            cuts: lines(&layout.tree, self.laid.usable, self.grid),
            left_over: left_over(&layout.tree, self.laid.usable, self.grid.step()),
            layout,
            pins,
            at,
        })
    }

    fn to(&self, at: u32, near: Length, budget: &mut Budget<'_>) -> Result<Shifted, Stays> {
        if let Some(found) = self.same_cuts(at, near, budget) {
            return Ok(found);
        }
        let place = self.start() + self.grid.length(at);
        let mut refused = None;
        let mut best: Option<Shifted> = None;
        let mut unfinished = false;
        for (index, rect) in self.held(near, place) {
            let Some((recipe, layer, ..)) = pinned(&self.plan.project, &self.laid.pieces, index) else { continue };
            let mut project = self.alone.clone();
            project.goal.pins = self.staying();
            project.goal.pins.push((recipe, layer, rect.x, rect.y, rect.size));
            let question = self.asked(&project)?;
            if let Some(range) = self.out_of_range(index, rect, &question) {
                refused = refused.or(Some(range));
                continue;
            }
            let mut instance = question.with_cards(cards(self.laid));
            instance.alternatives = 1;
            let mut part = budget.part(budget.left() / 2);
            let answer = flexible::solve(&instance, &mut part);
            let ended = budget.join(&part).is_err() || budget.stopped();
            if let Ok(answer) = answer {
                unfinished |= answer.outcome == cutting::Outcome::Unfinished;
                let told = answer.layouts.first().and_then(|layout| question.told(&instance, layout));
                let found = told.and_then(|told| self.done(told, at, near));
                if let Some(mut found) =
                    found.filter(|found| best.as_ref().is_none_or(|b| found.layout.waste < b.layout.waste))
                {
                    found.pins.clone_from(&project.goal.pins);
                    best = Some(found);
                }
            }
            if ended || best.as_ref().is_some_and(|best| best.layout.waste <= self.laid.waste) {
                unfinished |= ended;
                break;
            }
        }
        match (best, refused) {
            (Some(best), _) => Ok(best),
            (None, Some(range)) => Err(range),
            (None, None) => Err(Stays::NoLayout { cards: cards(self.laid), nearest: None, proven: !unfinished }),
        }
    }

    /// The nearest piece before and the nearest after the line, each with the rectangle it would have.
    fn held(&self, near: Length, place: Length) -> Vec<(usize, Rect)> {
        let side = |before: bool| {
            let ends = |rect: Rect| {
                let (start, end, ..) = self.line.along(rect);
                if before { end == self.line.at } else { start == self.line.at }
            };
            let beside = self.laid.pieces.iter().enumerate();
            let beside = beside.filter(|(_, piece)| self.line.beside(piece.rect) && ends(piece.rect));
            let (index, nearest) = beside.min_by_key(|(_, piece)| self.line.off(piece.rect, near))?;
            let rect = nearest.rect;
            let (start, end, ..) = self.line.along(rect);
            let (start, end) = if before { (start, place) } else { (place, end) };
            let moved = match self.line.axis {
                Axis::X => Rect::new(start, rect.y, Size::new(end - start, rect.size.height)),
                Axis::Y => Rect::new(rect.x, start, Size::new(rect.size.width, end - start)),
            };
            Some((index, moved))
        };
        [side(true), side(false)].into_iter().flatten().collect()
    }

    /// Why that piece may not be so large, if it may not.
    fn out_of_range(&self, index: usize, rect: Rect, question: &Question<'_>) -> Option<Stays> {
        let piece = &self.laid.pieces[index];
        let kind = question.kinds.iter().position(|kind| (kind.recipe, kind.layer) == (piece.recipe, piece.layer));
        let known = question.instance.kinds.get(kind?)?;
        let side = if piece.turned { self.line.axis.across() } else { self.line.axis };
        let span = if side == Axis::X { known.width } else { known.height };
        let wanted = if self.line.axis == Axis::X { rect.size.width } else { rect.size.height };
        let (least, most) = (self.grid.length(span.least), self.grid.length(span.most));
        if least <= wanted && wanted <= most {
            return None;
        }
        let recipe = &self.plan.project.recipes[piece.recipe];
        let (recipe, layer) = (recipe.name.clone(), recipe.layers[piece.layer].name.clone());
        Some(Stays::Range { recipe, layer, side, least, most, wanted })
    }
}
