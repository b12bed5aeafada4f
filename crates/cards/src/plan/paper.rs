//! One layout for each pack that is used: the question asked of the flexible engine, and its answer in the maker's terms.

use std::collections::BTreeSet;

use cutting::flexible::{self, Answer, Count, Instance, Kind, Pin, Refusal, Span, Why, Wish};
use cutting::steps::tidy;
use cutting::tree::pieces;
use cutting::{Budget, Outcome, Tree};
use measure::{Length, Rect, Size};

use super::answer::{Alternative, Exist, Layout, LayoutGrade, Piece};
use super::around::{self, Around};
use super::checked;
use super::fit;
use super::grid::{Grid, MOST_STEPS};
use super::why;
use crate::finding::{Finding, Severity, Subject};
use crate::model::{Material, Pack, Project, Range, Recipe, Way};

/// Most numbers of cards that are tried for a sheet, the largest first.
const MOST_TRIES: u32 = 64;

/// A layer of a recipe that is cut from patterned paper: one kind of the engine.
#[derive(Debug, Clone, Copy)]
pub(super) struct PaperKind {
    pub(super) recipe: usize,
    pub(super) layer: usize,
}

/// All that is asked about one pack.
#[derive(Clone)]
pub(super) struct Question<'p> {
    pub(super) project: &'p Project,
    pack: usize,
    /// True for the pack that the goal speaks of: its numbers bind, and pins lie on it.
    leads: bool,
    pub(super) grid: Grid,
    pub(super) usable: Rect,
    pub(super) kinds: Vec<PaperKind>,
    pub(super) instance: Instance,
}

/// The layout of a pack; `None`, with findings that say why, if there is none.
///
/// `leads` is true for the pack that the goal speaks of. Other sheets (loose ones, scraps) give as many
/// cards as they can, however few.
pub(super) fn lay_out(
    project: &Project,
    pack: usize,
    leads: bool,
    budget: &mut Budget<'_>,
    findings: &mut Vec<Finding>,
) -> Option<Layout> {
    let before = findings.len();
    let layout = best(project, pack, leads, budget, findings);
    if layout.is_none() && leads {
        why::ways_out(project, pack, budget, &mut findings[before..]);
    }
    layout
}

/// As [`lay_out`], without the search for ways out.
pub(super) fn best(
    project: &Project,
    pack: usize,
    leads: bool,
    budget: &mut Budget<'_>,
    findings: &mut Vec<Finding>,
) -> Option<Layout> {
    let question = ask(project, pack, leads, Grid::new(project.mark.step()), findings)?;
    let tries = question.tries();
    if tries.is_empty() {
        findings.push(if question.by_area() == 0 { question.too_much_area(1) } else { question.none("goal-no-mix") });
        return None;
    }
    let mut last = None;
    for &cards in &tries {
        let instance = question.with_cards(cards);
        let share = if tries.len() == 1 { budget.left() / 4 * 3 } else { budget.left() / 8 };
        let mut part = budget.part(share);
        let Around { answer, free } = around::solve(&instance, &mut part);
        let ended = budget.join(&part).is_err();
        match answer {
            Ok(answer) if !answer.layouts.is_empty() => {
                if let Some(wanted) = project.goal.cards_per_sheet.filter(|&wanted| !leads && cards < wanted) {
                    findings.push(
                        question.about(Severity::Note, "sheet-gives-fewer").with("cards", cards).with("wanted", wanted),
                    );
                }
                let mut layout = question.layout(&instance, &answer, findings)?;
                question.and_without_pins(&instance, &free, &mut layout);
                return Some(layout);
            }
            other => last = Some(other),
        }
        if ended {
            break;
        }
    }
    if let Some(answer) = last {
        findings.push(question.refusal(&answer));
    }
    None
}

/// The question about a pack; `None`, with findings, if nothing can be asked.
pub(super) fn ask<'p>(
    project: &'p Project,
    pack: usize,
    leads: bool,
    grid: Grid,
    findings: &mut Vec<Finding>,
) -> Option<Question<'p>> {
    let paper = &project.packs[pack];
    let room = paper.usable();
    let (width, height) = (grid.floor(room.width), grid.floor(room.height));
    let about = |severity, code| Finding::new(severity, Subject::Project, code).with("pack", paper.name.as_str());
    if width == 0 || height == 0 {
        findings.push(about(Severity::Serious, "sheet-too-small"));
        return None;
    }
    if i64::from(width.max(height)) > MOST_STEPS {
        findings.push(about(Severity::Serious, "sheet-too-large").with("mark", grid.step()));
        return None;
    }
    let used = Size::new(grid.length(width), grid.length(height));
    if used != room {
        let finding = about(Severity::Note, "sheet-not-on-grid").with("mark", grid.step());
        findings.push(finding.with("width", room.width - used.width).with("height", room.height - used.height));
    }
    let kinds = paper_kinds(project, findings);
    if kinds.is_empty() {
        findings.push(Finding::new(Severity::Serious, Subject::Project, "no-paper-piece"));
        return None;
    }
    let upright = upright(paper);
    let mut engine_kinds = Vec::new();
    for kind in &kinds {
        engine_kinds.push(engine_kind(project, *kind, grid, upright, findings)?);
    }
    let usable = Rect::new(paper.unusable.left, paper.unusable.top, used);
    let mut question = Question {
        project,
        pack,
        leads,
        grid,
        usable,
        instance: Instance {
            width,
            height,
            recipes: engine_recipes(project, &kinds, leads),
            spares: vec![0; kinds.len()],
            pins: Vec::new(),
            kinds: engine_kinds,
            cards: Span::new(1, 1),
            wishes: Wish::ORDER.to_vec(),
            alternatives: usize::try_from(project.goal.alternatives.clamp(1, 50)).unwrap_or(1),
        },
        kinds,
    };
    if leads {
        question.spare(findings);
        question.pin(findings);
    }
    Some(question)
}

/// True if a print that is used may not lie on its side.
pub(super) fn upright(paper: &Pack) -> bool {
    paper.designs.iter().filter(|design| design.sheets() > 0).any(|design| design.face_up().way != Way::Any)
}

/// The layers cut from patterned paper, of all recipes that can be made at all.
fn paper_kinds(project: &Project, findings: &mut Vec<Finding>) -> Vec<PaperKind> {
    let mut kinds = Vec::new();
    for (index, recipe) in project.recipes.iter().enumerate() {
        // A recipe that the batch, or this paper, does not make.
        if recipe.most == Some(0) && recipe.least == 0 {
            continue;
        }
        let subject = Subject::Recipe(recipe.name.clone());
        if recipe.most.is_some_and(|most| most < recipe.least) {
            let finding =
                Finding::new(Severity::Serious, subject, "recipe-bounds").with("recipe", recipe.name.as_str());
            findings.push(finding.with("least", recipe.least).with("most", recipe.most.unwrap_or(0)));
            continue;
        }
        let layers =
            recipe.layers.iter().enumerate().filter(|(_, layer)| matches!(layer.material, Material::Patterned { .. }));
        let before = kinds.len();
        kinds.extend(layers.map(|(layer, _)| PaperKind { recipe: index, layer }));
        if kinds.len() == before {
            findings.push(
                Finding::new(Severity::Warning, subject, "recipe-without-paper").with("recipe", recipe.name.as_str()),
            );
        }
    }
    kinds
}

/// The recipes as the engine takes them: only those with paper give cards.
fn engine_recipes(project: &Project, kinds: &[PaperKind], leads: bool) -> Vec<flexible::Recipe> {
    let recipe = |(index, recipe): (usize, &Recipe)| {
        let pieces: Vec<u32> = kinds.iter().map(|kind| u32::from(kind.recipe == index)).collect();
        let made = pieces.iter().any(|&count| count > 0);
        let most = if made { recipe.most.unwrap_or(u32::MAX) } else { 0 };
        let least = if made && leads { recipe.least } else { 0 };
        flexible::Recipe { pieces, cards: Span::new(least, most) }
    };
    project.recipes.iter().enumerate().map(recipe).collect()
}

/// A layer as a kind of the engine: ranges rounded inward; `None`, with a finding, if no size on the grid is left.
fn engine_kind(
    project: &Project,
    kind: PaperKind,
    grid: Grid,
    upright: bool,
    findings: &mut Vec<Finding>,
) -> Option<Kind> {
    let recipe = &project.recipes[kind.recipe];
    let layer = &recipe.layers[kind.layer];
    let Material::Patterned { width, height, prefer, free_size, may_turn, .. } = &layer.material else { return None };
    let room = fit::room(recipe, kind.layer);
    let bounded = |range: &Range, room: Length| fit::bounded(layer, range, room);
    let spans = (span(grid, bounded(width, room.width)), span(grid, bounded(height, room.height)));
    let (Some(wide), Some(high)) = spans else {
        let finding = Finding::new(Severity::Serious, Subject::Recipe(recipe.name.clone()), "piece-not-on-mark");
        let finding =
            finding.with("recipe", recipe.name.as_str()).with("layer", layer.name.as_str()).with("mark", grid.step());
        findings.push(finding.with("width", width.least).with("height", height.least));
        return None;
    };
    let nearest = |span: Span, length: Length| {
        grid.floor(length + Length::from_ticks(grid.step().ticks() / 2)).clamp(span.least, span.most)
    };
    Some(Kind {
        width: wide,
        height: high,
        prefer: (nearest(wide, prefer.width), nearest(high, prefer.height)),
        step: 1,
        turn: *may_turn && !upright,
        uniform: !free_size,
    })
}

/// A range in whole steps, rounded inward; `None` if it holds no whole step.
fn span(grid: Grid, range: Range) -> Option<Span> {
    let span = Span::new(grid.ceil(range.least).max(1), grid.floor(range.most));
    (span.least <= span.most).then_some(span)
}

impl Question<'_> {
    /// A finding about this pack.
    fn about(&self, severity: Severity, code: &'static str) -> Finding {
        Finding::new(severity, Subject::Project, code).with("pack", self.project.packs[self.pack].name.as_str())
    }

    /// The kind that a recipe and a layer name.
    fn named(&self, recipe: &str, layer: &str) -> Option<usize> {
        self.kinds.iter().position(|kind| {
            let made = &self.project.recipes[kind.recipe];
            made.name == recipe && made.layers[kind.layer].name == layer
        })
    }

    /// Enter the spare pieces that were asked for.
    fn spare(&mut self, findings: &mut Vec<Finding>) {
        for (recipe, layer, count) in &self.project.goal.spares {
            match self.named(recipe, layer) {
                Some(kind) => self.instance.spares[kind] = self.instance.spares[kind].saturating_add(*count),
                None => findings.push(
                    self.about(Severity::Warning, "spare-unknown")
                        .with("recipe", recipe.as_str())
                        .with("layer", layer.as_str()),
                ),
            }
        }
    }

    /// Enter the pinned pieces; their places are told on the whole sheet.
    fn pin(&mut self, findings: &mut Vec<Finding>) {
        for (recipe, layer, left, top, size) in &self.project.goal.pins {
            let place = self.named(recipe, layer).and_then(|kind| {
                Some(Pin {
                    kind,
                    x: self.grid.exact(*left - self.usable.x)?,
                    y: self.grid.exact(*top - self.usable.y)?,
                    width: self.grid.exact(size.width)?,
                    height: self.grid.exact(size.height)?,
                })
            });
            match place {
                Some(pin) => self.instance.pins.push(pin),
                None => findings.push(
                    self.about(Severity::Warning, "pin-dropped")
                        .with("recipe", recipe.as_str())
                        .with("layer", layer.as_str()),
                ),
            }
        }
    }

    /// The question about exactly so many cards.
    pub(super) fn with_cards(&self, cards: u32) -> Instance {
        let mut instance = self.instance.clone();
        instance.cards = Span::exactly(cards);
        for recipe in &mut instance.recipes {
            recipe.cards.most = recipe.cards.most.min(cards);
            // A recipe that must give more cards than there are stays as it is: the engine says that no mix exists.
            recipe.cards.most = recipe.cards.most.max(recipe.cards.least);
        }
        instance
    }

    /// The numbers of cards to try, in order.
    pub(super) fn tries(&self) -> Vec<u32> {
        let least =
            self.instance.recipes.iter().fold(0_u32, |sum, recipe| sum.saturating_add(recipe.cards.least)).max(1);
        let most = self.instance.recipes.iter().fold(0_u32, |sum, recipe| sum.saturating_add(recipe.cards.most));
        match self.project.goal.cards_per_sheet {
            Some(cards) if self.leads => vec![cards],
            Some(cards) => (1..=cards.min(self.by_area()).min(most)).rev().take(MOST_TRIES as usize).collect(),
            None => (least..=self.by_area().min(most)).rev().take(MOST_TRIES as usize).collect(),
        }
    }

    /// Cards that the sheet's area could give if every card were the smallest one.
    fn by_area(&self) -> u32 {
        let cards = self.area() / self.smallest_card().unwrap_or(u64::MAX);
        u32::try_from(cards).unwrap_or(u32::MAX)
    }

    /// Area of the usable sheet, in square steps.
    fn area(&self) -> u64 {
        u64::from(self.instance.width) * u64::from(self.instance.height)
    }

    /// Least area of patterned paper that a card takes, in square steps; `None` if no card takes any.
    fn smallest_card(&self) -> Option<u64> {
        let kinds = &self.instance.kinds;
        let card = |recipe: &flexible::Recipe| -> u64 {
            let area = |(kind, count): (&Kind, &u32)| {
                u64::from(kind.width.least) * u64::from(kind.height.least) * u64::from(*count)
            };
            kinds.iter().zip(&recipe.pieces).map(area).fold(0, u64::saturating_add)
        };
        self.instance.recipes.iter().map(card).filter(|&area| area > 0).min()
    }

    /// That so many of the smallest cards are larger than the sheet.
    fn too_much_area(&self, cards: u32) -> Finding {
        let least = self.smallest_card().unwrap_or(0).saturating_mul(u64::from(cards));
        self.none("layout-too-much-area").with("percent", least.saturating_mul(100).div_ceil(self.area().max(1)))
    }

    /// That this pack gives no layout: serious for the pack that the goal speaks of, else a warning, because
    /// the other sheets may do.
    fn none(&self, code: &'static str) -> Finding {
        self.about(if self.leads { Severity::Serious } else { Severity::Warning }, code)
    }

    /// Why there is no layout.
    fn refusal(&self, answer: &Result<Answer, Refusal>) -> Finding {
        let serious = |code| self.none(code);
        let named = |finding: Finding, kind: usize| match self.kinds.get(kind) {
            Some(kind) => {
                let recipe = &self.project.recipes[kind.recipe];
                finding.with("recipe", recipe.name.as_str()).with("layer", recipe.layers[kind.layer].name.as_str())
            }
            None => finding.with("recipe", "").with("layer", ""),
        };
        match answer {
            Ok(Answer { outcome: Outcome::Impossible { why }, .. }) => match why {
                // Numbers beyond the sheet are no mistake in the bounds.
                Why::NoMix if self.project.goal.cards_per_sheet.is_some_and(|cards| cards > self.by_area()) => {
                    self.too_much_area(self.project.goal.cards_per_sheet.unwrap_or(0))
                }
                Why::NoMix => serious("goal-no-mix"),
                Why::TooMuchArea { least, sheet } => {
                    serious("layout-too-much-area").with("percent", least.saturating_mul(100).div_ceil((*sheet).max(1)))
                }
                Why::PieceTooLarge { kind } => named(serious("layout-piece-too-large"), *kind),
                Why::NoTree => serious("layout-none").with("mark", self.grid.step()),
            },
            Ok(_) => serious("layout-unfinished"),
            Err(Refusal::Kind(kind)) => named(serious("layout-piece-too-large"), *kind),
            Err(Refusal::Pin(_)) => serious("layout-pin"),
            Err(Refusal::TooMany { kinds, pieces }) => serious("layout-too-many")
                .with("kinds", u64::try_from(*kinds).unwrap_or(u64::MAX))
                .with("pieces", *pieces),
            Err(Refusal::Sheet | Refusal::Recipe(_)) => self.about(Severity::Serious, "internal-check"),
        }
    }

    /// The engine's answer in the maker's terms, checked.
    fn layout(&self, instance: &Instance, answer: &Answer, findings: &mut Vec<Finding>) -> Option<Layout> {
        let mut told: Vec<Alternative> =
            answer.layouts.iter().filter_map(|layout| self.told(instance, layout)).collect();
        let pack = &self.project.packs[self.pack];
        let best = if told.len() == answer.layouts.len() {
            told.remove(0)
        } else {
            debug_assert!(false, "a layout is not what was asked for");
            findings.push(self.about(Severity::Serious, "internal-check"));
            return None;
        };
        let Some((cut_plan, cut_step)) =
            checked::paper(self.project, pack, self.usable, self.grid.step(), &best.tree, 1)
        else {
            debug_assert!(false, "the steps of a layout do not give its pieces");
            findings.push(self.about(Severity::Serious, "internal-check"));
            return None;
        };
        let equals = self.equals(instance, &answer.layouts[0], &best.tree);
        // With pins the branches lie as they must: the steps may move the stop more often than the tree alone would.
        let mut effort = best.effort;
        if !instance.pins.is_empty() {
            let stops: BTreeSet<u32> = cut_plan.cut_steps().map(|cut| cut.setting).collect();
            effort.settings = effort.settings.max(u32::try_from(stops.len()).unwrap_or(u32::MAX));
        }
        Some(Layout {
            batch: 0,
            pack: self.pack,
            panels: Vec::new(),
            step: self.grid.step(),
            usable: self.usable,
            tree: best.tree,
            pieces: best.pieces,
            cut_plan,
            cut_step,
            effort,
            waste: best.waste,
            recipe_counts: best.recipe_counts,
            sheets: Vec::new(),
            grade: grade(&answer.outcome),
            exist: match answer.exist {
                Count::Exactly(count) => Exist::Exactly(count),
                Count::AtLeast(count) => Exist::AtLeast(count),
            },
            alternatives: told,
            equals,
            gain: None,
        })
    }

    /// The equals of a layout in the order of the table, each checked; none round pins, where branches stay.
    fn equals(&self, instance: &Instance, layout: &flexible::Layout, tree: &Tree) -> Vec<Tree> {
        if !instance.pins.is_empty() {
            return Vec::new();
        }
        let tidied = layout.equals.iter().filter_map(|other| tidy(other, instance.width, instance.height).ok());
        tidied.filter(|other| other != tree && checked::sound(instance, other, &layout.cards)).collect()
    }

    /// Round pins, other layouts are told that need not keep them: pinning one piece takes no choice away.
    fn and_without_pins(&self, instance: &Instance, free: &[flexible::Layout], layout: &mut Layout) {
        if free.is_empty() {
            return;
        }
        let without = Instance { pins: Vec::new(), ..instance.clone() };
        for other in free.iter().filter_map(|other| self.told(&without, other)) {
            let known =
                layout.pieces == other.pieces || layout.alternatives.iter().any(|told| told.pieces == other.pieces);
            if !known && layout.alternatives.len() + 1 < instance.alternatives {
                layout.alternatives.push(other);
            }
        }
    }

    /// One layout in the order of the table; `None` if it is not what was asked for.
    pub(super) fn told(&self, instance: &Instance, layout: &flexible::Layout) -> Option<Alternative> {
        // A pinned piece keeps its place only if the branches stay where they are.
        let tree = if instance.pins.is_empty() {
            tidy(&layout.tree, instance.width, instance.height).ok()?
        } else {
            layout.tree.clone()
        };
        self.as_it_lies(instance, layout, tree)
    }

    /// A layout with its branches where that tree has them.
    pub(super) fn as_it_lies(&self, instance: &Instance, layout: &flexible::Layout, tree: Tree) -> Option<Alternative> {
        if !checked::sound(instance, &tree, &layout.cards) {
            return None;
        }
        let mut placed = pieces(&tree, instance.width, instance.height).ok()?;
        // Reading order: the order in which the trimmer steps number the pieces.
        placed.sort_by_key(|piece| (piece.y, piece.x));
        Some(Alternative {
            pieces: numbered(&placed, &self.kinds, &layout.cards, self.usable, self.grid),
            waste: self.square(layout.waste),
            effort: layout.effort,
            recipe_counts: layout.cards.clone(),
            tree,
        })
    }

    /// Square steps as square ticks.
    pub(super) fn square(&self, steps: u64) -> i128 {
        let step = i128::from(self.grid.step().ticks());
        i128::from(steps) * step * step
    }
}

/// The pieces on the whole sheet, numbered in the order of `placed`, each with the card it is for; what no card takes
/// is a spare.
pub(super) fn numbered(
    placed: &[cutting::Placed],
    kinds: &[PaperKind],
    cards: &[u32],
    usable: Rect,
    grid: Grid,
) -> Vec<Piece> {
    let firsts: Vec<u32> = cards.iter().scan(0, |next, &cards| Some(std::mem::replace(next, *next + cards))).collect();
    let mut taken = vec![0_u32; kinds.len()];
    let piece = |(index, placed): (usize, &cutting::Placed)| {
        let kind = kinds[placed.kind];
        let nth = taken[placed.kind];
        taken[placed.kind] += 1;
        let size = Size::new(grid.length(placed.width), grid.length(placed.height));
        Piece {
            mark: (index + 1).to_string(),
            recipe: kind.recipe,
            layer: kind.layer,
            card: (nth < cards[kind.recipe]).then(|| (firsts[kind.recipe] + nth) as usize),
            rect: Rect::new(usable.x + grid.length(placed.x), usable.y + grid.length(placed.y), size),
            turned: placed.turned,
        }
    };
    placed.iter().enumerate().map(piece).collect()
}

/// A grade in the words of a plan.
pub(super) fn grade<W>(outcome: &Outcome<W>) -> LayoutGrade {
    match outcome {
        Outcome::Proven => LayoutGrade::ProvenBest,
        Outcome::Best { bound } => LayoutGrade::BestFound { bound: *bound },
        Outcome::Impossible { .. } | Outcome::Unfinished => LayoutGrade::Stopped,
    }
}
