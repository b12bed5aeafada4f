//! Where the branches of a layout lie, so that the prints are cut at their best places.
//!
//! The rim hands in where the interest of a print lies ([`PrintMap`]), the project what the maker marked herself; from both
//! `cutting::placing` chooses among the orders that the stops of the plain layout allow, and among those of layouts that
//! are as good otherwise. A layout on printed lines or with pinned pieces stays as it is. Left out on purpose: how interest is
//! found.

use std::collections::BTreeMap;

use cutting::placing::{Area, Ask, Cover, Keep, Motif, Print, Score, place, tally};
use cutting::steps::{CutPlan, Step};
use cutting::tree::pieces;
use cutting::{Budget, Outcome, Tree};
use measure::{Length, Rect, Size};

pub use cutting::placing::Tally;

use super::answer::{Layout, Piece, SheetUse};
use super::checked;
use super::fit;
use super::grid::Grid;
use super::paper::{PaperKind, numbered};
use crate::model::{Batch, Material, Placing, Project, Recipe, Side, Wanted};

/// A picture of a print, by its box in cells.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Spot {
    /// First column.
    pub left: u32,
    /// First row.
    pub top: u32,
    /// Column after its last.
    pub right: u32,
    /// Row after its last.
    pub bottom: u32,
    /// What it is worth to keep it whole, 1 to 1000.
    pub weight: u16,
}

/// Where the interest of a print lies: weights in a grid over the whole sheet, face up and upright.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct PrintMap {
    /// Cells across; at least 1, or the map says nothing.
    pub columns: u32,
    /// Cells down.
    pub rows: u32,
    /// What each cell is worth, 0 to 1000, row by row.
    pub weights: Vec<u16>,
    /// Its pictures.
    pub spots: Vec<Spot>,
}

/// The maps that are known: by pack, design and side.
pub type PrintMaps = BTreeMap<(usize, usize, Side), PrintMap>;

/// What placing did to a layout.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Gain {
    /// The plain layout's cuts, in the layout's steps.
    pub plain_tree: Tree,
    /// Its pieces.
    pub plain_pieces: Vec<Piece>,
    /// How good the plain layout is.
    pub plain: Score,
    /// How good the best order is that was found.
    pub score: Score,
    /// True if no order that the stops allow is better; proven.
    pub proven: bool,
    /// True if the layout lies in that order: it is enough better to give up the plain one.
    pub moved: bool,
    /// What becomes of each print on one sheet: index of the design, its side, sheets, under the plain layout, under this one.
    pub prints: Vec<PrintGain>,
}

/// What becomes of one print.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PrintGain {
    /// Index of the design.
    pub design: usize,
    /// The side that shows.
    pub side: Side,
    /// Sheets of it.
    pub sheets: u32,
    /// Its pictures, on the sheet.
    pub spots: Vec<Rect>,
    /// On one sheet, under the plain layout.
    pub before: Tally,
    /// On one sheet, as it is cut.
    pub after: Tally,
}

/// Most nodes of one choice. `Chosen:` the demo takes a thousandth; all of it is half a second.
const NODES: u64 = 300_000;
/// What part of it each layout that is as good otherwise gets. `Chosen:` eight of them take as long as the layout itself.
const EQUALS: u64 = 8;
/// A sheet cut in plain order is easier to follow; it is given up only if one picture more in so many stays whole. `Chosen:`.
const ONE_IN: i64 = 10;
/// Clear paper round a picture that counts as whole (common practice: keep it 1/8 in from a cut).
const CLEAR: Length = Length::from_ticks(Length::INCH.ticks() / 8);

/// A layout as its prints want it, or as several where each design is cut for its own print.
pub(super) fn on_prints(
    project: &Project,
    maps: &PrintMaps,
    batch: &Batch,
    mut layout: Layout,
    budget: &mut Budget<'_>,
) -> Vec<Layout> {
    // A pinned piece keeps its place only if the branches stay where they are.
    if project.placing == Placing::Plain || !batch.goal.pins.is_empty() {
        return vec![layout];
    }
    if project.placing == Placing::Alike || layout.sheets.len() < 2 {
        place_on_prints(project, maps, &mut layout, budget);
        return vec![layout];
    }
    let mut parts: Vec<Layout> = Vec::new();
    for used in &layout.sheets {
        let mut part = Layout { sheets: vec![used.clone()], ..layout.clone() };
        place_on_prints(project, maps, &mut part, budget);
        // What came out the same is cut together.
        match parts.iter_mut().find(|other| other.tree == part.tree && other.pieces == part.pieces) {
            Some(other) => {
                other.sheets.extend(part.sheets);
                match (&mut other.gain, part.gain) {
                    (Some(gain), Some(more)) => gain.join(more),
                    (gain @ None, more) => *gain = more,
                    _ => {}
                }
            }
            None => parts.push(part),
        }
    }
    parts
}

impl Gain {
    /// One gain of two designs that are cut alike.
    fn join(&mut self, other: Gain) {
        (self.plain, self.score) = (self.plain + other.plain, self.score + other.score);
        self.proven &= other.proven;
        self.moved |= other.moved;
        self.prints.extend(other.prints);
    }

    /// The print that gained most, by its place in `prints`; the first of equals.
    #[must_use]
    pub fn most(&self) -> Option<(usize, &PrintGain)> {
        let better = |print: &PrintGain| print.after.whole.saturating_sub(print.before.whole);
        self.prints.iter().enumerate().max_by_key(|(at, print)| (better(print), std::cmp::Reverse(*at)))
    }

    /// Pictures whole in one piece with nothing over them, and pictures in all, over all sheets: plain, then as it is cut.
    #[must_use]
    pub fn whole(&self) -> (u64, u64, u64) {
        let count = |of: fn(&PrintGain) -> usize| -> u64 {
            self.prints.iter().map(|print| u64::try_from(of(print)).unwrap_or(0) * u64::from(print.sheets)).sum()
        };
        let all = |print: &PrintGain| print.after.whole + print.after.hidden + print.after.cut;
        (count(|print| print.before.whole), count(|print| print.after.whole), count(all))
    }
}

/// The best cuts so far, and whether none that were asked for can be better.
struct Best {
    tree: Tree,
    score: Score,
    proven: bool,
}

impl Best {
    /// Of two as good ones the first stays.
    fn or(&mut self, other: cutting::placing::Placing) {
        self.proven &= other.outcome == Outcome::Proven;
        if other.score > self.score {
            (self.tree, self.score) = (other.tree, other.score);
        }
    }
}

/// Puts the branches of a layout where the prints of its sheets want them, and says what was gained; leaves it as it is if
/// nothing is known of its prints.
fn place_on_prints(project: &Project, maps: &PrintMaps, layout: &mut Layout, budget: &mut Budget<'_>) {
    if !layout.panels.is_empty() {
        return;
    }
    let sheets = layout.sheets.iter().map(|used| used.sheets).sum();
    let seen = Seen::of(project, maps, layout);
    if seen.prints.iter().all(|(_, print)| print == &Print { times: print.times, ..Print::default() }) {
        return;
    }
    let grid = Grid::new(layout.step);
    let (width, height) = (grid.floor(layout.usable.size.width), grid.floor(layout.usable.size.height));
    let prints: Vec<Print> = seen.prints.iter().map(|(_, print)| print.clone()).collect();
    let pack = &project.packs[layout.pack];
    let Some((plain_plan, plain_step)) =
        checked::paper(project, pack, layout.usable, layout.step, &layout.tree, sheets)
    else {
        return;
    };
    let stops = stops(&plain_plan, plain_step, layout.step);
    let plain_tree = layout.tree.clone();
    let ask = Ask { tree: &plain_tree, width, height, prints: &prints, covers: &seen.covers, stops: Some(&stops) };
    let Ok(placing) = budget.within(NODES, |part| place(&ask, part)) else { return };
    let plain = placing.plain;
    let mut best = Best { score: placing.score, proven: placing.outcome == Outcome::Proven, tree: placing.tree };
    // Cuts that are as good otherwise: the same pieces from as many settings, elsewhere on the print.
    for other in &layout.equals {
        let Some((plan, step)) = checked::paper(project, pack, layout.usable, layout.step, other, sheets) else {
            continue;
        };
        let own = self::stops(&plan, step, layout.step);
        if step != plain_step || own.len() > stops.len() {
            continue;
        }
        let ask = Ask { tree: other, stops: Some(&own), ..ask };
        match budget.within(NODES / EQUALS, |part| place(&ask, part)) {
            Ok(found) => best.or(found),
            Err(_) => best.proven = false,
        }
    }
    let plain_pieces = layout.pieces.clone();
    let pictures =
        prints.iter().map(|print| i64::from(print.times) * i64::try_from(print.motifs.len()).unwrap_or(0)).sum();
    let moved = best.tree != plain_tree && enough(plain, best.score, pictures);
    if moved {
        let more = |plan: &CutPlan| self::stops(plan, plain_step, layout.step).len() > stops.len();
        match checked::paper(project, pack, layout.usable, layout.step, &best.tree, sheets) {
            Some((plan, step)) if step == plain_step && !more(&plan) => {}
            // The search keeps to the stops; were it not so, the plain layout would be the better one.
            _ => {
                debug_assert!(false, "placing moved the stop more often");
                return;
            }
        }
        let Ok(mut placed) = pieces(&best.tree, width, height) else { return };
        // Reading order: the order in which the trimmer steps number the pieces.
        placed.sort_by_key(|piece| (piece.y, piece.x));
        layout.pieces = numbered(&placed, &seen.kinds, &layout.recipe_counts, layout.usable, grid);
        layout.tree = best.tree.clone();
    }
    let told = |(used, print): &(SheetUse, Print)| {
        let on_sheet = |motif: &Motif| {
            let Area { left, top, right, bottom } = motif.area;
            let size = Size::new(grid.length(right - left), grid.length(bottom - top));
            Rect::new(layout.usable.x + grid.length(left), layout.usable.y + grid.length(top), size)
        };
        Some(PrintGain {
            design: used.design,
            side: used.side,
            sheets: used.sheets,
            spots: print.motifs.iter().map(on_sheet).collect(),
            before: tally(&ask, &plain_tree, print).ok()?,
            after: tally(&ask, &layout.tree, print).ok()?,
        })
    };
    layout.gain = Some(Gain {
        prints: seen.prints.iter().filter_map(told).collect(),
        plain_pieces,
        plain,
        score: best.score,
        proven: best.proven,
        moved,
        plain_tree: plain_tree.clone(),
    });
}

/// Whether a better order is worth a less tidy sheet: it keeps or spares a region that the maker marked, or one picture more
/// in so many.
fn enough(plain: Score, best: Score, pictures: i64) -> bool {
    (best.kept, best.spared) > (plain.kept, plain.spared) || (best.whole - plain.whole) * ONE_IN >= pictures.max(1)
}

/// Where the stop stands, one after the other, in the layout's steps; unusable edges are not the layout's.
fn stops(plan: &CutPlan, cut_step: Length, step: Length) -> Vec<u32> {
    let trims = [plan.trims.left, plan.trims.top, plan.trims.right, plan.trims.bottom];
    let edges = trims.iter().filter(|trim| **trim > 0).count();
    let mut stops: Vec<u32> = Vec::new();
    for step_of in plan.steps.iter().skip(edges) {
        let Step::Cut(cut) = step_of else { continue };
        let at = i64::from(cut.setting) * cut_step.ticks() / step.ticks().max(1);
        let at = u32::try_from(at).unwrap_or(u32::MAX);
        if stops.last() != Some(&at) {
            stops.push(at);
        }
    }
    stops
}

/// A layout as placing looks at it.
struct Seen {
    kinds: Vec<PaperKind>,
    prints: Vec<(SheetUse, Print)>,
    covers: Vec<Cover>,
}

impl Seen {
    fn of(project: &Project, maps: &PrintMaps, layout: &Layout) -> Seen {
        let grid = Grid::new(layout.step);
        let (width, height) = (grid.floor(layout.usable.size.width), grid.floor(layout.usable.size.height));
        let mut placed = pieces(&layout.tree, width, height).unwrap_or_default();
        placed.sort_by_key(|piece| (piece.y, piece.x));
        let most = placed.iter().map(|piece| piece.kind + 1).max().unwrap_or(0);
        // A kind without a piece is never asked for.
        let mut kinds = vec![PaperKind { recipe: 0, layer: 0 }; most];
        let mut covers: Vec<Cover> = Vec::new();
        for (at, piece) in placed.iter().zip(&layout.pieces) {
            kinds[at.kind] = PaperKind { recipe: piece.recipe, layer: piece.layer };
            let known = |cover: &Cover| {
                (cover.kind, cover.width, cover.height, cover.turned) == (at.kind, at.width, at.height, at.turned)
            };
            if !covers.iter().any(known) {
                let areas = hidden(project, layout, piece).into_iter().map(|rect| cells(rect, grid)).collect();
                covers.push(Cover { kind: at.kind, width: at.width, height: at.height, turned: at.turned, areas });
            }
        }
        let view = View { grid, usable: layout.usable, width, height, sheet: project.packs[layout.pack].sheet };
        let print = |used: &SheetUse| {
            let face = project.packs[layout.pack].designs[used.design].face(used.side);
            let mut print =
                maps.get(&(layout.pack, used.design, used.side)).map_or_else(Print::default, |map| view.print(map));
            // A picture larger than every piece is cut whatever is done.
            let fits = |area: Area| {
                placed
                    .iter()
                    .any(|piece| area.right - area.left <= piece.width && area.bottom - area.top <= piece.height)
            };
            print.motifs.retain(|motif| fits(motif.area));
            print.times = used.sheets;
            for region in &face.regions {
                let Some(area) = view.area(region.rect) else { continue };
                match &region.wanted {
                    Wanted::Avoid => print.avoid.push(area),
                    Wanted::Keep { show_on } => {
                        let right = |(_, kind): &(usize, &PaperKind)| {
                            let recipe = &project.recipes[kind.recipe];
                            show_on.as_ref().is_some_and(|(name, layer)| {
                                recipe.name == *name && recipe.layers[kind.layer].name == *layer
                            })
                        };
                        let kinds: Vec<usize> =
                            kinds.iter().enumerate().filter(right).map(|(index, _)| index).collect();
                        // A piece that this layout does not have cannot show it: any piece is better than none.
                        print.keep.push(Keep { area, kinds });
                    }
                }
            }
            (used.clone(), print)
        };
        let prints = layout.sheets.iter().map(print).collect();
        Seen { kinds, prints, covers }
    }
}

/// The usable part of a sheet in steps.
struct View {
    grid: Grid,
    usable: Rect,
    width: u32,
    height: u32,
    sheet: Size,
}

impl View {
    fn print(&self, map: &PrintMap) -> Print {
        let cells = u64::from(map.columns) * u64::from(map.rows);
        if cells == 0 || usize::try_from(cells).ok() != Some(map.weights.len()) {
            return Print::default();
        }
        let step = self.grid.step().ticks();
        // The cell of the map under the middle of each step.
        let under = |from: Length, at: u32, cells: u32, side: Length| -> usize {
            let middle = from.ticks() + i64::from(at) * step + step / 2;
            let cell = i128::from(middle) * i128::from(cells) / i128::from(side.ticks().max(1));
            usize::try_from(cell.clamp(0, i128::from(cells) - 1)).unwrap_or(0)
        };
        let columns: Vec<usize> =
            (0..self.width).map(|at| under(self.usable.x, at, map.columns, self.sheet.width)).collect();
        let mut weights = Vec::with_capacity(columns.len() * self.height as usize);
        for at in 0..self.height {
            let row = under(self.usable.y, at, map.rows, self.sheet.height) * map.columns as usize;
            weights.extend(columns.iter().map(|column| u32::from(map.weights[row + column])));
        }
        let motif = |spot: &Spot| {
            let along = |cell: u32, cells: u32, side: Length| {
                let ticks = i128::from(side.ticks()) * i128::from(cell) / i128::from(cells);
                Length::from_ticks(i64::try_from(ticks).unwrap_or(0))
            };
            let (left, right) =
                (along(spot.left, map.columns, self.sheet.width), along(spot.right, map.columns, self.sheet.width));
            let (top, bottom) =
                (along(spot.top, map.rows, self.sheet.height), along(spot.bottom, map.rows, self.sheet.height));
            // Clear of the cuts by an eighth, but for a picture that the sheet's own edge cuts.
            let l = (left - CLEAR).max(self.usable.x).min(left);
            let t = (top - CLEAR).max(self.usable.y).min(top);
            let r = (right + CLEAR).min(self.usable.right()).max(right);
            let b = (bottom + CLEAR).min(self.usable.bottom()).max(bottom);
            let area = self.area(Rect::new(l, t, Size::new(r - l, b - t)))?;
            Some(Motif { area, weight: u32::from(spot.weight) })
        };
        Print { weights, motifs: map.spots.iter().filter_map(motif).collect(), ..Print::default() }
    }

    /// The steps that a place on the sheet touches; `None` if it is not whole on the usable part.
    fn area(&self, rect: Rect) -> Option<Area> {
        if !self.usable.contains(rect) || rect.size.width <= Length::ZERO || rect.size.height <= Length::ZERO {
            return None;
        }
        let moved = Rect::new(rect.x - self.usable.x, rect.y - self.usable.y, rect.size);
        Some(cells(moved, self.grid))
    }
}

/// The cells that a rectangle touches.
fn cells(rect: Rect, grid: Grid) -> Area {
    Area {
        left: grid.floor(rect.x),
        top: grid.floor(rect.y),
        right: grid.ceil(rect.right()),
        bottom: grid.ceil(rect.bottom()),
    }
}

/// What other layers hide of a piece, from its own top left corner as it lies on the sheet.
fn hidden(project: &Project, layout: &Layout, piece: &Piece) -> Vec<Rect> {
    let recipe: &Recipe = &project.recipes[piece.recipe];
    let size = |layer: usize| {
        if layer == piece.layer {
            return piece.stands();
        }
        let laid = layout.pieces.iter().find(|other| (other.recipe, other.layer) == (piece.recipe, layer));
        match (laid, &recipe.layers[layer].material) {
            (Some(other), _) => other.stands(),
            (None, Material::Patterned { prefer, .. }) => *prefer,
            _ => Size::default(),
        }
    };
    let places = fit::places(recipe, &fit::sizes(project, recipe, size));
    let own = places[piece.layer];
    let over = places.iter().skip(piece.layer + 1).filter_map(|place| {
        let (left, top) = (place.x.max(own.x), place.y.max(own.y));
        let (right, bottom) = (place.right().min(own.right()), place.bottom().min(own.bottom()));
        let size = Size::new(right - left, bottom - top);
        (size.width > Length::ZERO && size.height > Length::ZERO).then(|| Rect::new(left - own.x, top - own.y, size))
    });
    let lies = |rect: Rect| {
        if !piece.turned {
            return rect;
        }
        // A turned piece lies with its top to the right.
        Rect::new(own.size.height - rect.bottom(), rect.x, rect.size.turned())
    };
    over.map(lies).collect()
}
