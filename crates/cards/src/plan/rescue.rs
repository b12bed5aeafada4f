//! A spoiled piece: the least that must be cut again.
//!
//! A piece of the same print or cardstock comes, in this order, from a spare that is already cut, from what the
//! planned sheets leave over (offcuts, and what earlier rescues left), or from one more sheet. The fixed engine
//! decides which of them together give all lost pieces; a new sheet weighs more than all offcuts together.
//!
//! Leaves out: another print in the place of the lost one, which is the maker's to decide, and the collage's
//! printed panels: a fresh collage sheet is cut like any other.

use std::collections::BTreeMap;

use cutting::fixed::{self, Instance, PieceKind, Question, SheetKind};
use cutting::steps::CutPlan;
use cutting::tree::rests;
use cutting::{Budget, Tree};
use measure::{Length, Rect, Size};

use super::answer::{Plan, StockCut};
use super::checked::{self, Sheet};
use super::grid::{Grid, MOST_STEPS};
use super::stock::upright;
use crate::model::{Edges, Fold, Grain, Side, Way};

/// Something that was spoiled.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Lost {
    /// A patterned piece.
    Paper {
        /// Index of the layout.
        layout: usize,
        /// Index of the piece in the layout.
        piece: usize,
        /// Index of the design in the layout's pack.
        design: usize,
    },
    /// A base, mat, strip or inside sheet.
    Stock {
        /// Index of the cardstock's plan in [`Plan::stocks`].
        stock: usize,
        /// Index of the cut in that plan.
        cut: usize,
    },
}

/// Where the new piece comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Source {
    /// A spare, already cut.
    Spare {
        /// Index of the layout.
        layout: usize,
        /// Index of the piece in the layout.
        piece: usize,
        /// Index of the design in the layout's pack.
        design: usize,
    },
    /// What a patterned sheet leaves over.
    PaperRest {
        /// Index of the layout.
        layout: usize,
        /// Index of the design in the layout's pack.
        design: usize,
        /// Where it lies on the sheet.
        rect: Rect,
    },
    /// What a sheet of cardstock leaves over.
    StockRest {
        /// Index in [`Plan::stocks`].
        stock: usize,
        /// Index of the sheet in that plan.
        sheet: usize,
        /// Where it lies on the sheet.
        rect: Rect,
    },
    /// What an earlier rescue left over.
    EarlierRest {
        /// Index among the earlier fixes.
        fix: usize,
        /// Where it lies on what was cut then.
        rect: Rect,
    },
    /// A patterned sheet that no layout uses.
    PaperSheet {
        /// Index of the pack.
        pack: usize,
        /// Index of the design.
        design: usize,
    },
    /// One more sheet of cardstock.
    StockSheet {
        /// Index of the cardstock.
        cardstock: usize,
        /// Index of the size in the cardstock's `sheets`.
        size: usize,
    },
}

impl Source {
    /// True for a sheet that was not yet cut.
    pub fn is_new_sheet(&self) -> bool {
        matches!(self, Source::PaperSheet { .. } | Source::StockSheet { .. })
    }
}

/// How a rest or a new sheet is cut.
#[derive(Debug, Clone, PartialEq)]
pub struct Recut {
    /// Size of what is cut.
    pub size: Size,
    /// One grid step.
    pub step: Length,
    /// The kinds of lost pieces that the leaves of `tree` name by index.
    pub kinds: Vec<Lost>,
    /// The cuts, in grid steps.
    pub tree: Tree,
    /// The trimmer steps, replayed and checked.
    pub cut_plan: CutPlan,
}

/// One thing taken to replace lost pieces.
#[derive(Debug, Clone, PartialEq)]
pub struct Fix {
    /// What is taken.
    pub source: Source,
    /// Which lost pieces come from it.
    pub lost: Vec<Lost>,
    /// How it is cut; `None`: it is a spare, ready as it is.
    pub recut: Option<Recut>,
}

/// How lost pieces are replaced.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Rescue {
    /// What is taken: spares first, then rests, then new sheets.
    pub fixes: Vec<Fix>,
    /// Lost pieces that nothing is left for: that many cards less, or another print.
    pub missing: Vec<Lost>,
    /// True if nothing takes fewer new sheets; proven.
    pub fewest_sheets: bool,
}

/// Replace lost pieces from spares, from what is left over, or from as few new sheets as do.
///
/// `earlier` are the fixes already made, whose sources are gone and whose rests may be used. What does not exist in
/// the plan (an index out of range) counts as missing.
///
/// # Shape
/// Pure; lost pieces may be named in any order and more than once. Each of them comes back once, in a fix or missing.
pub fn rescue(plan: &Plan, lost: &[Lost], earlier: &[Fix], budget: &mut Budget<'_>) -> Rescue {
    let mut answer = Rescue { fewest_sheets: true, ..Rescue::default() };
    let mut by_material: BTreeMap<Material, Vec<Lost>> = BTreeMap::new();
    for &piece in lost {
        match Material::of(plan, piece) {
            Some(material) => by_material.entry(material).or_default().push(piece),
            None => answer.missing.push(piece),
        }
    }
    let mut parts = u64::try_from(by_material.len()).unwrap_or(u64::MAX);
    for (material, mut open) in by_material {
        open.sort_unstable();
        take_spares(plan, earlier, &mut open, &mut answer);
        let nodes = budget.left() / parts.max(1);
        parts = parts.saturating_sub(1);
        budget.within(nodes, |part| recut(plan, material, open, earlier, part, &mut answer));
    }
    answer.fixes.sort_by_key(|fix| (fix.recut.is_some(), fix.source.is_new_sheet(), fix.source));
    answer
}

/// What a lost piece is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Material {
    /// Pack and design.
    Paper(usize, usize),
    /// Index in [`Plan::stocks`].
    Stock(usize),
}

impl Material {
    fn of(plan: &Plan, lost: Lost) -> Option<Material> {
        match lost {
            Lost::Paper { layout, piece, design } => {
                let layout = plan.layouts.get(layout)?;
                layout.pieces.get(piece)?;
                layout.sheets.iter().find(|used| used.design == design)?;
                Some(Material::Paper(layout.pack, design))
            }
            Lost::Stock { stock, cut } => {
                plan.stocks.get(stock)?.cuts.get(cut)?;
                Some(Material::Stock(stock))
            }
        }
    }
}

/// How often a source was taken before.
fn taken(source: Source, earlier: &[Fix]) -> u32 {
    u32::try_from(earlier.iter().filter(|fix| fix.source == source).count()).unwrap_or(u32::MAX)
}

/// Replace by spares of the same layer and print as far as they go.
fn take_spares(plan: &Plan, earlier: &[Fix], open: &mut Vec<Lost>, answer: &mut Rescue) {
    let mut gone: BTreeMap<Source, u32> = BTreeMap::new();
    open.retain(|&lost| {
        let Lost::Paper { layout, piece, design } = lost else { return true };
        let wanted = &plan.layouts[layout].pieces[piece];
        let size = plan.layouts[layout].pieces[piece].stands();
        for (index, other) in plan.layouts.iter().enumerate() {
            if other.pack != plan.layouts[layout].pack {
                continue;
            }
            let sheets: u32 = other.sheets.iter().filter(|used| used.design == design).map(|used| used.sheets).sum();
            for (spare, found) in other.pieces.iter().enumerate() {
                let alike = (found.recipe, found.layer) == (wanted.recipe, wanted.layer);
                if found.card.is_some() || !alike || other.pieces[spare].stands() != size {
                    continue;
                }
                let source = Source::Spare { layout: index, piece: spare, design };
                let used = gone.entry(source).or_insert_with(|| taken(source, earlier));
                if *used < sheets {
                    *used += 1;
                    answer.fixes.push(Fix { source, lost: vec![lost], recut: None });
                    return false;
                }
            }
        }
        true
    });
}

/// One rest or new sheet that may be cut.
#[derive(Debug, Clone, Copy)]
struct Stuff {
    source: Source,
    size: Size,
    grain: Grain,
    copies: Option<u32>,
}

/// Cut what is still open from rests and new sheets.
fn recut(
    plan: &Plan,
    material: Material,
    mut open: Vec<Lost>,
    earlier: &[Fix],
    budget: &mut Budget<'_>,
    answer: &mut Rescue,
) {
    let mut stuff = match material {
        Material::Paper(pack, design) => paper_stuff(plan, pack, design),
        Material::Stock(stock) => stock_stuff(plan, stock),
    };
    stuff.extend(earlier_rests(plan, material, earlier));
    for there in &mut stuff {
        let gone = taken(there.source, earlier);
        there.copies = there.copies.map(|copies| copies.saturating_sub(gone));
    }
    stuff.retain(|there| there.copies != Some(0));
    // Where not everything can be had, one piece less is asked for, the largest first.
    while !open.is_empty() {
        let cutting = Cutting::new(plan, material, &open, &stuff);
        let cut = cutting.and_then(|cutting| budget.within(u64::MAX, |part| cutting.solve(part)));
        if let Some((fixes, proven)) = cut {
            answer.fewest_sheets &= proven;
            answer.fixes.extend(fixes);
            return;
        }
        let area = |lost: &Lost| size_of(plan, *lost).area();
        let largest = open.iter().enumerate().max_by_key(|(_, lost)| area(lost)).map_or(0, |(index, _)| index);
        answer.missing.push(open.remove(largest));
    }
}

/// The size of a lost piece as it stands on its card.
fn size_of(plan: &Plan, lost: Lost) -> Size {
    match lost {
        Lost::Paper { layout, piece, .. } => plan.layouts[layout].pieces[piece].stands(),
        Lost::Stock { stock, cut } => plan.stocks[stock].cuts[cut].size,
    }
}

/// Rests of a design on all layouts, and its sheets that no layout uses.
fn paper_stuff(plan: &Plan, pack: usize, design: usize) -> Vec<Stuff> {
    let mut stuff = Vec::new();
    let mut used = 0_u32;
    for (index, layout) in plan.layouts.iter().enumerate().filter(|(_, layout)| layout.pack == pack) {
        let sheets: u32 = layout.sheets.iter().filter(|used| used.design == design).map(|used| used.sheets).sum();
        if sheets == 0 {
            continue;
        }
        used = used.saturating_add(sheets);
        let grid = Grid::new(layout.step);
        for rect in rests_of(&layout.tree, grid, layout.usable.size) {
            let rect = Rect::new(rect.x + layout.usable.x, rect.y + layout.usable.y, rect.size);
            let source = Source::PaperRest { layout: index, design, rect };
            stuff.push(Stuff { source, size: rect.size, grain: Grain::Unknown, copies: Some(sheets) });
        }
    }
    let pack_of = &plan.project.packs[pack];
    let unused = pack_of.designs[design].copies.saturating_sub(used);
    if unused > 0 {
        let source = Source::PaperSheet { pack, design };
        stuff.push(Stuff { source, size: pack_of.usable(), grain: Grain::Unknown, copies: Some(unused) });
    }
    stuff
}

/// Rests of a cardstock's sheets, and its sheets that are not yet cut.
fn stock_stuff(plan: &Plan, stock: usize) -> Vec<Stuff> {
    let planned = &plan.stocks[stock];
    let cardstock = &plan.project.cardstocks[planned.cardstock];
    let mut stuff = Vec::new();
    for (index, sheet) in planned.sheets.iter().enumerate() {
        let whole = &cardstock.sheets[sheet.size];
        let Edges { left, top, .. } = whole.unusable;
        for rect in rests_of(&sheet.tree, Grid::new(sheet.step), whole.usable()) {
            let rect = Rect::new(rect.x + left, rect.y + top, rect.size);
            let source = Source::StockRest { stock, sheet: index, rect };
            stuff.push(Stuff { source, size: rect.size, grain: whole.grain, copies: Some(sheet.times) });
        }
    }
    for (size, sheet) in cardstock.sheets.iter().enumerate() {
        let used: u32 = planned.sheets.iter().filter(|cut| cut.size == size).map(|cut| cut.times).sum();
        let source = Source::StockSheet { cardstock: planned.cardstock, size };
        let copies = sheet.count.map(|count| count.saturating_sub(used));
        stuff.push(Stuff { source, size: sheet.usable(), grain: sheet.grain, copies });
    }
    stuff
}

/// What earlier fixes of the same material left over.
fn earlier_rests(plan: &Plan, material: Material, earlier: &[Fix]) -> Vec<Stuff> {
    let mut stuff = Vec::new();
    for (index, fix) in earlier.iter().enumerate() {
        let same = fix.lost.first().is_some_and(|&lost| Material::of(plan, lost) == Some(material));
        let Some(recut) = fix.recut.as_ref().filter(|_| same) else { continue };
        for rect in rests_of(&recut.tree, Grid::new(recut.step), recut.size) {
            let source = Source::EarlierRest { fix: index, rect };
            stuff.push(Stuff { source, size: rect.size, grain: grain_of(plan, fix.source, earlier), copies: Some(1) });
        }
    }
    stuff
}

/// Which way the grain of a source runs.
fn grain_of(plan: &Plan, source: Source, earlier: &[Fix]) -> Grain {
    match source {
        Source::Spare { .. } | Source::PaperRest { .. } | Source::PaperSheet { .. } => Grain::Unknown,
        Source::StockRest { stock, sheet, .. } => {
            let planned = &plan.stocks[stock];
            plan.project.cardstocks[planned.cardstock].sheets[planned.sheets[sheet].size].grain
        }
        Source::StockSheet { cardstock, size } => plan.project.cardstocks[cardstock].sheets[size].grain,
        // A fix can only rest on one before it, so this ends.
        Source::EarlierRest { fix, .. } => {
            earlier.get(fix).map_or(Grain::Unknown, |before| grain_of(plan, before.source, &earlier[..fix]))
        }
    }
}

fn rests_of(tree: &Tree, grid: Grid, size: Size) -> Vec<Rect> {
    let rects = rests(tree, grid.floor(size.width), grid.floor(size.height)).unwrap_or_default();
    let length = |steps: u32| grid.length(steps);
    let rect = |[x, y, w, h]: [u32; 4]| Rect::new(length(x), length(y), Size::new(length(w), length(h)));
    rects.into_iter().map(rect).collect()
}

/// Lost pieces of one material and the stuff they may come from, in the engine's frame: grain along the height.
struct Cutting<'a> {
    plan: &'a Plan,
    material: Material,
    /// Kinds of lost pieces and how many of each, each with whether it is written a quarter turned.
    kinds: Vec<(Lost, u32, bool)>,
    stuff: Vec<Stuff>,
    grid: Grid,
    instance: Instance,
}

impl<'a> Cutting<'a> {
    fn new(plan: &'a Plan, material: Material, open: &[Lost], stuff: &[Stuff]) -> Option<Cutting<'a>> {
        let mut kinds: Vec<(Lost, u32, bool)> = Vec::new();
        for &lost in open {
            match kinds.last_mut() {
                Some((kind, count, _)) if *kind == lost => *count += 1,
                _ => kinds.push((lost, 1, written_turned(plan, lost))),
            }
        }
        let lengths = |size: &Size| [size.width, size.height];
        let wanted: Vec<Size> = kinds.iter().map(|&(lost, ..)| size_of(plan, lost)).collect();
        let fits = |there: &&Stuff| {
            let fits = |size: &Size| size.width <= there.size.width && size.height <= there.size.height;
            wanted.iter().any(|size| fits(size) || fits(&size.turned()))
        };
        let stuff: Vec<Stuff> = stuff.iter().filter(fits).copied().collect();
        let grid = Grid::through(wanted.iter().flat_map(lengths).chain(stuff.iter().flat_map(|s| lengths(&s.size))))?;
        let longest = stuff.iter().map(|there| there.size.width.max(there.size.height)).max()?;
        if longest.ticks() / grid.step().ticks() > MOST_STEPS {
            return None;
        }
        let new_sheet = u64::try_from(open.len()).unwrap_or(u64::MAX).saturating_add(1);
        let sheet = |there: &Stuff| {
            let size = if there.grain == Grain::AlongWidth { there.size.turned() } else { there.size };
            let cost = if there.source.is_new_sheet() { new_sheet } else { 1 };
            SheetKind::whole(grid.floor(size.width), grid.floor(size.height), there.copies, cost)
        };
        let piece = |(&(lost, count, swapped), size): (&(Lost, u32, bool), &Size)| {
            let size = if swapped { size.turned() } else { *size };
            PieceKind {
                width: grid.floor(size.width),
                height: grid.floor(size.height),
                demand: Some(count),
                min: 0,
                value: 0,
                turn: may_turn(plan, lost),
            }
        };
        let instance = Instance {
            sheets: stuff.iter().map(sheet).collect(),
            pieces: kinds.iter().zip(&wanted).map(piece).collect(),
            question: Question::LeastCost,
            rules: fixed::Rules::default(),
        };
        Some(Cutting { plan, material, kinds, stuff, grid, instance })
    }

    /// What is cut, and whether no fewer new sheets would do; `None` if the stuff does not give every piece.
    fn solve(&self, budget: &mut Budget<'_>) -> Option<(Vec<Fix>, bool)> {
        let answer = fixed::solve(&self.instance, budget).ok().filter(|answer| !answer.sheets.is_empty())?;
        let mut fixes = Vec::new();
        for sheet in &answer.sheets {
            let fix = self.fix(sheet.sheet, &sheet.tree)?;
            fixes.extend(std::iter::repeat_n(fix, sheet.times as usize));
        }
        let dearest = self.instance.sheets.iter().map(|sheet| sheet.cost).max().unwrap_or(1).max(1);
        Some((fixes, answer.value / dearest == answer.bound / dearest))
    }

    /// One thing cut, checked and with its steps.
    fn fix(&self, index: usize, tree: &Tree) -> Option<Fix> {
        let there = self.stuff[index];
        let tree = upright(tree, &|kind| self.kinds[kind].2, there.grain == Grain::AlongWidth);
        let sheet = Sheet::plain(self.grid, there.size, 1);
        let project = &self.plan.project;
        let done = match self.material {
            Material::Stock(stock) => {
                let cut = |&(lost, count, _): &(Lost, u32, bool)| match lost {
                    Lost::Stock { cut, .. } => Some(StockCut { count, ..self.plan.stocks[stock].cuts[cut].clone() }),
                    Lost::Paper { .. } => None,
                };
                let cuts: Vec<StockCut> = self.kinds.iter().map(cut).collect::<Option<_>>()?;
                checked::stock(project, &cuts, &sheet, there.grain, &tree)?
            }
            Material::Paper(..) => {
                let kind = |&(lost, count, _): &(Lost, u32, bool)| {
                    (size_of(self.plan, lost), count, may_turn(self.plan, lost))
                };
                checked::loose(project, &self.kinds.iter().map(kind).collect::<Vec<_>>(), &sheet, &tree)?
            }
        };
        let lost: Vec<Lost> = done.placed.iter().map(|piece| self.kinds[piece.kind].0).collect();
        let kinds = self.kinds.iter().map(|&(lost, ..)| lost).collect();
        let recut = Recut { size: there.size, step: self.grid.step(), kinds, tree: done.tree, cut_plan: done.cut_plan };
        Some(Fix { source: there.source, lost, recut: Some(recut) })
    }
}

/// True if a lost piece is told to the engine a quarter turned: its fold runs along its width.
fn written_turned(plan: &Plan, lost: Lost) -> bool {
    let Lost::Stock { stock, cut } = lost else { return false };
    let cut = &plan.stocks[stock].cuts[cut];
    !cut.may_turn && plan.project.recipes[cut.recipe].fold == Fold::Top
}

/// True if a lost piece may lie a quarter turned from the way it stands on its card.
fn may_turn(plan: &Plan, lost: Lost) -> bool {
    match lost {
        Lost::Paper { layout, design, .. } => {
            let layout = &plan.layouts[layout];
            let printed = &plan.project.packs[layout.pack].designs[design];
            let side = layout.sheets.iter().find(|used| used.design == design).map(|used| used.side);
            let face = printed.face(side.unwrap_or(Side::Front));
            face.way == Way::Any
        }
        Lost::Stock { stock, cut } => plan.stocks[stock].cuts[cut].may_turn,
    }
}
