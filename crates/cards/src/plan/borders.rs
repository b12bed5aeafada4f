//! What small errors do to every border of every card: how narrow each can come out, and where the rest belongs.
//!
//! A border is what shows of one layer beside the layer on it. It follows the errors of both pieces and of the hand
//! that lays one on the other. Each card is looked at with its own patterned pieces; of the pieces of cardstock that
//! could lie under them, the worst. Left out on purpose: words, and whether a border should be wider.

use std::collections::{BTreeMap, BTreeSet};

use cutting::Axis;
use cutting::steps::{CutPlan, Fate};
use cutting::tolerance::{Cause, Form, Pair, Share, errors, lean, rests, simulate};
use measure::{Length, Rect, Size};

use super::answer::{Card, CardPart, Layout, PartKind, StockPlan};
use super::fit;
use crate::finding::{Finding, Severity, Subject};
use crate::model::{Anchor, Fold, Material, Project, Recipe};

/// How large the errors are (common practice): the hand at one cut or in laying one layer on another, and the stop.
pub const HAND: Length = Length::from_ticks(Length::INCH.ticks() / 32);
/// A print off its place on the sheet (common practice, from memory: 1/32 to 1/16 in).
pub const DRIFT: Length = Length::from_ticks(Length::INCH.ticks() / 16);
/// A sheet out of square: so much over [`RUN`] (common practice).
pub const RISE: Length = DRIFT;
/// The length over which [`RISE`] is measured.
pub const RUN: Length = Length::from_ticks(Length::INCH.ticks() * 12);
/// A border as narrow as this is one: beyond it, nobody sees an error. Chosen: twice the usual border.
const SEEN: Length = Length::from_ticks(Length::INCH.ticks() / 4);
/// Draws for the share of cards. Chosen: one standard error is a quarter of a hundredth at most.
const DRAWS: u32 = 40_000;
/// The seed of the draws: the same shares on every machine.
const SEED: u64 = 32;

/// Which edge of a layer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Edge {
    /// Left.
    Left,
    /// Right.
    Right,
    /// Top.
    Top,
    /// Bottom.
    Bottom,
}

impl Edge {
    /// Its name for programs and messages.
    pub fn name(self) -> &'static str {
        match self {
            Edge::Left => "left",
            Edge::Right => "right",
            Edge::Top => "top",
            Edge::Bottom => "bottom",
        }
    }
}

/// A border and how narrow it can come out. Below nought the layer runs over the edge.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Border {
    /// Index of the layer in its recipe.
    pub layer: usize,
    /// Index of the layer it lies on; `None`: the card's front.
    pub on: Option<usize>,
    /// Which edge of the layer.
    pub edge: Edge,
    /// Its width where nothing is off, on the card where it comes out narrowest.
    pub planned: Length,
    /// Where every cut of both pieces is off by 1/32 in, all the wrong way.
    pub by_cuts: Length,
    /// Where one setting of the stop is 1/32 in too wide, the worst of them.
    pub by_stop_wide: Length,
    /// Where one setting of the stop is 1/32 in off either way.
    pub by_stop: Length,
    /// Where the layer is laid 1/32 in off its place.
    pub by_placing: Length,
    /// Where the sheet was out of square by 1/16 over 12 in.
    pub by_square: Length,
    /// Where the print lay 1/16 in off, and was cut by; as planned where nothing is cut by the print.
    pub by_drift: Length,
    /// All of these at once on one card, all the wrong way.
    pub together: Length,
    /// Number of the first card where all at once leave least.
    pub card: u32,
    /// How often it, or the border across from it, is under half its width where each cut and the placing are off at random.
    pub share: Option<Share>,
}

impl Border {
    /// Takes over what another card loses more of to one kind of error.
    fn narrow(&mut self, other: &Border) {
        self.by_cuts = self.by_cuts.min(other.by_cuts);
        self.by_stop_wide = self.by_stop_wide.min(other.by_stop_wide);
        self.by_stop = self.by_stop.min(other.by_stop);
        self.by_placing = self.by_placing.min(other.by_placing);
        self.by_square = self.by_square.min(other.by_square);
        self.by_drift = self.by_drift.min(other.by_drift);
    }
}

/// The borders of one recipe.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RecipeBorders {
    /// Index of the recipe.
    pub recipe: usize,
    /// Its borders, each and each kind of error as on its own worst card, the narrowest first; the first has a share.
    pub borders: Vec<Border>,
}

/// A row of cuts whose rest lies where it matters.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RestAdvice {
    /// Index of the layout.
    pub layout: usize,
    /// True if the row divides the width of the sheet.
    pub upright: bool,
    /// How many cuts meet in the rest.
    pub cuts: u32,
    /// Marks of the pieces that have the rest now.
    pub on: Vec<String>,
    /// Marks of the pieces that may have it: cut these last.
    pub better: Vec<String>,
}

/// What small errors do.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Borders {
    /// Every recipe that has cards and borders, in the project's order.
    pub recipes: Vec<RecipeBorders>,
    /// Rows whose rest belongs elsewhere; none: it lies where it does not matter, or nowhere better.
    pub rests: Vec<RestAdvice>,
}

impl Borders {
    /// The narrowest border of all, with the index of its recipe.
    pub fn narrowest(&self) -> Option<(usize, &Border)> {
        let each = self.recipes.iter().filter_map(|found| Some((found.recipe, found.borders.first()?)));
        each.min_by_key(|(_, border)| border.together)
    }
}

/// Width and height of a piece as it stands on the card.
type Forms = [Form; 2];
/// A cut of cardstock: cardstock, recipe, layer, size.
type StockKey = (usize, usize, Option<usize>, Size);

/// What small errors do to a plan's cards; the narrowest border becomes a finding.
pub(super) fn borders(
    project: &Project,
    layouts: &[Layout],
    cards: &[Card],
    stocks: &[StockPlan],
    findings: &mut Vec<Finding>,
) -> Borders {
    let papers: Vec<Vec<Option<Forms>>> = layouts.iter().map(paper_forms).collect();
    let stock = stock_forms(stocks);
    let mut worst: BTreeMap<(usize, usize, Edge), (Border, Pair)> = BTreeMap::new();
    let mut critical: BTreeSet<(usize, usize, bool)> = BTreeSet::new();
    for card in cards {
        let Some(recipe) = project.recipes.get(card.recipe) else { continue };
        let bench = Bench { recipe, card, papers: &papers, stock: &stock };
        for part in &card.parts {
            let seen = bench.layer(part);
            if let PartKind::Patterned { layout, piece, .. } = part.kind {
                for (border, _) in seen.iter().filter(|(border, _)| border.planned <= SEEN) {
                    let across = matches!(border.edge, Edge::Left | Edge::Right);
                    let turned = layouts[layout].pieces[piece].turned;
                    critical.insert((layout, piece, across != turned));
                }
            }
            for (border, pair) in seen {
                let key = (card.recipe, border.layer, border.edge);
                match worst.get_mut(&key) {
                    None => drop(worst.insert(key, (border, pair))),
                    Some(known) => {
                        let (base, least) = if border.together < known.0.together {
                            let least = std::mem::replace(known, (border, pair)).0;
                            (&mut known.0, least)
                        } else {
                            (&mut known.0, border)
                        };
                        base.narrow(&least);
                    }
                }
            }
        }
    }
    let mut recipes: Vec<RecipeBorders> = Vec::new();
    for recipe in 0..project.recipes.len() {
        let own = worst.iter().filter(|((of, ..), _)| *of == recipe).map(|(_, found)| found);
        let mut own: Vec<&(Border, Pair)> = own.collect();
        own.sort_by_key(|(border, _)| border.together);
        let Some((_, pair)) = own.first() else { continue };
        let share = simulate(pair, DRAWS, SEED);
        let mut borders: Vec<Border> = own.iter().map(|(border, _)| border.clone()).collect();
        borders[0].share = Some(share);
        recipes.push(RecipeBorders { recipe, borders });
    }
    let rests = (layouts.iter().enumerate()).flat_map(|(index, layout)| advice(index, layout, &critical)).collect();
    let found = Borders { recipes, rests };
    tell(project, &found, findings);
    found
}

fn tell(project: &Project, found: &Borders, findings: &mut Vec<Finding>) {
    if let Some((recipe, border)) = found.narrowest() {
        let recipe = &project.recipes[recipe];
        let about = Finding::new(Severity::Note, Subject::Recipe(recipe.name.clone()), "border-errors");
        let share = border.share.map_or(0, |share| {
            (u64::from(share.under_half) * 100 + u64::from(share.draws) / 2) / u64::from(share.draws.max(1))
        });
        findings.push(
            about
                .with("recipe", recipe.name.as_str())
                .with("layer", recipe.layers[border.layer].name.as_str())
                .with("edge", border.edge.name())
                .with("planned", border.planned)
                .with("stop", border.by_stop.max(Length::ZERO))
                .with("cuts", border.by_cuts.max(Length::ZERO))
                .with("share", share)
                .with("hand", HAND),
        );
    }
    for rest in &found.rests {
        let layout = u64::try_from(rest.layout + 1).unwrap_or(u64::MAX);
        let about = Finding::new(Severity::Note, Subject::Layout(rest.layout + 1), "rest-matters");
        let about = about.with("layout", layout).with("cuts", rest.cuts);
        findings.push(about.with("on", rest.on.join(", ").as_str()).with("better", rest.better.join(", ").as_str()));
    }
}

fn standing(width: Form, height: Form, turned: bool) -> Forms {
    if turned { [height, width] } else { [width, height] }
}

/// Where a part of a cut plan lies, in lengths.
fn lies(plan: &CutPlan, step: Length, part: cutting::steps::PartId) -> Option<Rect> {
    let rect = plan.part(part)?.rect;
    let long = |steps: u32| step * i64::from(steps);
    Some(Rect::new(long(rect.x), long(rect.y), Size::new(long(rect.width), long(rect.height))))
}

/// How each piece of a layout follows errors, in the order of its pieces.
fn paper_forms(layout: &Layout) -> Vec<Option<Forms>> {
    let step = layout.cut_step;
    let printed = |axis: Axis, at: u32| {
        // The edge of the sheet is where the paper ends, wherever the print lies.
        if at == 0 || at == axis.of(layout.cut_plan.sheet.0, layout.cut_plan.sheet.1) {
            return false;
        }
        let at = step * i64::from(at);
        layout.panels.iter().any(|panel| match axis {
            Axis::X => panel.x == at || panel.right() == at,
            Axis::Y => panel.y == at || panel.bottom() == at,
        })
    };
    // A plan's steps have been replayed before: they can be followed.
    let found = errors(&layout.cut_plan, &printed).unwrap_or_default();
    let by_place: BTreeMap<(Length, Length), (Form, Form)> = (found.into_iter())
        .filter_map(|piece| {
            let rect = lies(&layout.cut_plan, step, piece.part)?;
            Some(((rect.x, rect.y), (piece.width, piece.height)))
        })
        .collect();
    let forms = layout.pieces.iter().map(|piece| {
        let (width, height) = by_place.get(&(piece.rect.x, piece.rect.y)).cloned()?;
        Some(standing(width, height, piece.turned))
    });
    forms.collect()
}

/// The worst piece of every cut of cardstock.
fn stock_forms(stocks: &[StockPlan]) -> BTreeMap<StockKey, Forms> {
    let mut worst: BTreeMap<StockKey, Forms> = BTreeMap::new();
    for stock in stocks {
        for sheet in &stock.sheets {
            let found = errors(&sheet.cut_plan, &|_, _| false).unwrap_or_default();
            for piece in found {
                let Some(cut) = stock.cuts.get(piece.kind).filter(|cut| !cut.inside) else { continue };
                let forms = standing(piece.width, piece.height, piece.turned);
                let key = (stock.cardstock, cut.recipe, cut.layer, cut.size);
                match worst.get_mut(&key) {
                    None => drop(worst.insert(key, forms)),
                    Some(known) => {
                        for (known, form) in known.iter_mut().zip(forms) {
                            if form.worst(|_| 1) > known.worst(|_| 1) {
                                *known = form;
                            }
                        }
                    }
                }
            }
        }
    }
    worst
}

/// One card and what its pieces follow.
struct Bench<'a> {
    recipe: &'a Recipe,
    card: &'a Card,
    papers: &'a [Vec<Option<Forms>>],
    stock: &'a BTreeMap<StockKey, Forms>,
}

impl Bench<'_> {
    /// How a part of the card follows errors; nothing known: it is taken to be right.
    fn forms(&self, part: &CardPart) -> Option<Forms> {
        match part.kind {
            PartKind::Patterned { layout, piece, .. } => self.papers.get(layout)?.get(piece)?.clone(),
            PartKind::Cardstock(stock) | PartKind::Strip(stock, _) => {
                self.stock.get(&(stock, self.card.recipe, Some(part.layer), part.rect.size)).cloned()
            }
            PartKind::Ribbon(..) => None,
        }
    }

    /// Every border of a layer, with what moves it.
    fn layer(&self, part: &CardPart) -> Vec<(Border, Pair)> {
        let Some(layer) = self.recipe.layers.get(part.layer) else { return Vec::new() };
        if layer.placement.overlap || matches!(layer.material, Material::Ribbon { .. }) {
            return Vec::new();
        }
        let on = fit::host(self.recipe, part.layer);
        let under = on.and_then(|on| self.card.parts.iter().find(|part| part.layer == on));
        let (place, host, folded) = match under {
            Some(under) => (under.rect, self.forms(under), None),
            None => {
                let (size, _) = self.recipe.base_size();
                let base = self.stock.get(&(self.recipe.base, self.card.recipe, None, size)).cloned();
                (fit::front(self.recipe), base, folded(self.recipe.fold))
            }
        };
        let (own, host) = (self.forms(part).unwrap_or_default(), host.unwrap_or_default());
        let (column, row) = halves(layer.placement.anchor);
        let gaps = [
            (Edge::Left, Edge::Right, part.rect.x - place.x, place.right() - part.rect.right(), column),
            (Edge::Top, Edge::Bottom, part.rect.y - place.y, place.bottom() - part.rect.bottom(), row),
        ];
        let mut found = Vec::new();
        for (axis, (near_edge, far_edge, near, far, halves)) in gaps.into_iter().enumerate() {
            let along = if axis == 0 { part.rect.size.height } else { part.rect.size.width };
            let moves = Moves::new(&own[axis], &host[axis], folded == Some(axis), along);
            let pair = moves.pair(near, far, halves);
            for (edge, planned, halves) in [(near_edge, near, halves), (far_edge, far, 2 - halves)] {
                if planned > Length::ZERO {
                    found.push((self.border(part.layer, on, edge, planned, &moves, halves), pair.clone()));
                }
            }
        }
        found
    }

    fn border(
        &self,
        layer: usize,
        on: Option<usize>,
        edge: Edge,
        planned: Length,
        moves: &Moves,
        halves: i64,
    ) -> Border {
        // Half of what the sizes differ goes to each side of a layer laid in the middle; rounded up.
        let share = |sum: i64| planned - Length::from_ticks((sum * halves + 1) / 2);
        let by_cuts = share(moves.cuts.iter().sum());
        let (by_stop, by_drift) = (share(moves.stop), share(moves.drift));
        let (by_placing, by_square) = (planned - HAND, planned - Length::from_ticks((moves.lean + 1) / 2));
        let lost = |left: Length| planned - left;
        let together = by_cuts - lost(by_stop) - lost(by_placing) - lost(by_square) - lost(by_drift);
        let by_stop_wide = share(moves.stop_wide);
        let card = self.card.number;
        Border {
            layer,
            on,
            edge,
            planned,
            by_cuts,
            by_stop_wide,
            by_stop,
            by_placing,
            by_square,
            by_drift,
            together,
            card,
            share: None,
        }
    }
}

/// The most that each kind of error adds to how far a layer outgrows what it lies on, in ticks.
struct Moves {
    cuts: Vec<i64>,
    stop: i64,
    stop_wide: i64,
    drift: i64,
    lean: i64,
}

impl Moves {
    fn new(own: &Form, host: &Form, scored: bool, along: Length) -> Moves {
        let hand = HAND.ticks();
        let cuts = |form: &Form| {
            let each = form.terms.iter().filter(|(cause, _)| matches!(cause, Cause::Cut(_)));
            each.map(|(_, times)| times.abs() * hand).collect::<Vec<_>>()
        };
        let mut all = [cuts(own), cuts(host)].concat();
        // The score that ends the front is set like a cut.
        all.extend(scored.then_some(hand));
        let stops = || own.stops().map(|(_, times)| times).chain(host.stops().map(|(_, times)| -times));
        let drift = |form: &Form| form.worst(|cause| if matches!(cause, Cause::Drift(_)) { DRIFT.ticks() } else { 0 });
        Moves {
            cuts: all,
            stop: stops().map(|times| times.abs() * hand).max().unwrap_or(0),
            stop_wide: stops().map(|times| times * hand).max().unwrap_or(0).max(0),
            drift: drift(own) + drift(host),
            lean: lean(along.ticks(), RISE.ticks(), RUN.ticks()),
        }
    }

    fn pair(&self, near: Length, far: Length, halves: i64) -> Pair {
        Pair { near: near.ticks(), far: far.ticks(), halves, sizes: self.cuts.clone(), place: HAND.ticks() }
    }
}

/// Which side of the front a score ends: 0 the width, 1 the height.
fn folded(fold: Fold) -> Option<usize> {
    match fold {
        Fold::Side | Fold::Gate | Fold::Zed => Some(0),
        Fold::Top => Some(1),
        Fold::Flat => None,
    }
}

/// Halves of a difference in size that the left and the top border take.
fn halves(anchor: Anchor) -> (i64, i64) {
    let column = match anchor {
        Anchor::TopLeft | Anchor::Left | Anchor::BottomLeft => 0,
        Anchor::Top | Anchor::Middle | Anchor::Bottom => 1,
        Anchor::TopRight | Anchor::Right | Anchor::BottomRight => 2,
    };
    let row = match anchor {
        Anchor::TopLeft | Anchor::Top | Anchor::TopRight => 0,
        Anchor::Left | Anchor::Middle | Anchor::Right => 1,
        Anchor::BottomLeft | Anchor::Bottom | Anchor::BottomRight => 2,
    };
    (column, row)
}

/// Rows of a layout whose rest belongs elsewhere.
fn advice(index: usize, layout: &Layout, critical: &BTreeSet<(usize, usize, bool)>) -> Vec<RestAdvice> {
    let mut piece_of: BTreeMap<u32, usize> = BTreeMap::new();
    for part in &layout.cut_plan.parts {
        let Fate::Piece { number, .. } = part.fate else { continue };
        let Some(rect) = lies(&layout.cut_plan, layout.cut_step, part.id) else { continue };
        if let Some(piece) = layout.pieces.iter().position(|piece| piece.rect == rect) {
            piece_of.insert(number, piece);
        }
    }
    let matters = |number: u32, axis: Axis| {
        piece_of.get(&number).is_some_and(|&piece| critical.contains(&(index, piece, axis == Axis::X)))
    };
    let marks = |numbers: &[u32]| {
        let pieces = numbers.iter().filter_map(|number| piece_of.get(number));
        pieces.map(|&piece| layout.pieces[piece].mark.clone()).collect::<Vec<_>>()
    };
    let rows = rests(&layout.cut_plan, &matters).into_iter().map(|row| RestAdvice {
        layout: index,
        upright: row.axis == Axis::X,
        cuts: row.cuts,
        on: marks(&row.on),
        better: marks(&row.better),
    });
    rows.collect()
}
