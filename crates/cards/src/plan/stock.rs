//! What is cut from each cardstock, and how its sheets are cut.

use std::cmp::Reverse;
use std::collections::BTreeMap;
use std::collections::btree_map::Entry;

use cutting::fixed::{self, Answer, CutSheet, Instance, PieceKind, Question, SheetKind};
use cutting::steps::effort;
use cutting::tree::pieces;
use cutting::{Axis, Budget, Tree};
use measure::{Length, Rect, Size};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use super::answer::{Card, PartKind, StockCut, StockPiece, StockPlan, StockSheetPlan};
use super::checked::{self, Sheet};
use super::grid::{Grid, MOST_STEPS};
use super::paper::grade;
use crate::finding::{Finding, Severity, Subject};
use crate::model::{Cardstock, Edges, Fold, Grain, Project, StockSheet};

/// Chosen: nodes for counting how many pieces of one kind a sheet gives; the demo's bases and mats take far fewer.
const MOST_NODES: u64 = 100_000;

/// The plans of all cardstocks that are used.
pub(super) fn stocks(
    project: &Project,
    cards: &[Card],
    budget: &mut Budget<'_>,
    findings: &mut Vec<Finding>,
) -> Vec<StockPlan> {
    let wanted = cuts(project, cards);
    let mut left = u64::try_from(wanted.len()).unwrap_or(u64::MAX);
    let mut plans = Vec::new();
    for (cardstock, cuts) in wanted {
        let nodes = budget.left() / left.max(1);
        plans.push(budget.within(nodes, |part| plan(project, cardstock, cuts, part, findings)));
        left -= 1;
    }
    plans
}

/// What is wanted from each cardstock, summed over the cards: recipe by recipe, base first.
fn cuts(project: &Project, cards: &[Card]) -> BTreeMap<usize, Vec<StockCut>> {
    let mut counts: BTreeMap<(usize, usize, Option<usize>, bool, Size), u32> = BTreeMap::new();
    for card in cards {
        let recipe = &project.recipes[card.recipe];
        *counts.entry((recipe.base, card.recipe, None, false, recipe.base_size().0)).or_default() += 1;
        if let Some((size, cardstock)) = recipe.inside {
            *counts.entry((cardstock, card.recipe, None, true, size)).or_default() += 1;
        }
        for part in &card.parts {
            if let PartKind::Cardstock(cardstock) | PartKind::Strip(cardstock, _) = part.kind {
                *counts.entry((cardstock, card.recipe, Some(part.layer), false, part.rect.size)).or_default() += 1;
            }
        }
    }
    let mut cuts: BTreeMap<usize, Vec<StockCut>> = BTreeMap::new();
    for ((cardstock, recipe, layer, inside, size), count) in counts {
        let Some(stock) = project.cardstocks.get(cardstock) else { continue };
        let base = layer.is_none() && !inside;
        let made = &project.recipes[recipe];
        let scores = if base { made.base_size().1 } else { Vec::new() };
        let keeps_grain =
            base && made.fold != Fold::Flat && stock.sheets.iter().any(|sheet| sheet.grain != Grain::Unknown);
        let of_stock: &mut Vec<StockCut> = cuts.entry(cardstock).or_default();
        let name = |recipe: usize, layer: Option<usize>| layer.map(|layer| &project.recipes[recipe].layers[layer].name);
        let alike = |cut: &&mut StockCut| {
            let same = (cut.size, &cut.scores, cut.inside) == (size, &scores, inside) && cut.may_turn != keeps_grain;
            let fold = project.recipes[cut.recipe].fold == made.fold;
            // Two layers of one recipe stay apart, whatever their names.
            same && fold && cut.recipe != recipe && name(cut.recipe, cut.layer) == name(recipe, layer)
        };
        if let Some(cut) = of_stock.iter_mut().find(alike) {
            cut.count = cut.count.saturating_add(count);
            cut.also.extend((!cut.also.contains(&recipe)).then_some(recipe));
            continue;
        }
        of_stock.push(StockCut {
            recipe,
            also: Vec::new(),
            layer,
            inside,
            size,
            count,
            scores,
            may_turn: !keeps_grain,
        });
    }
    cuts
}

/// How a cut is told to the engine. In the engine's frame the grain of every sheet runs along its height.
#[derive(Debug, Clone, Copy)]
struct Told {
    width: u32,
    height: u32,
    /// Written a quarter turned, because its fold runs along its width.
    swapped: bool,
}

/// One cardstock as it is asked of the engine.
struct Nest<'p> {
    project: &'p Project,
    cardstock: usize,
    stock: &'p Cardstock,
    grid: Grid,
    told: Vec<Told>,
    /// True for each sheet that the engine sees a quarter turned.
    turned_sheets: Vec<bool>,
}

/// The plan of one cardstock.
fn plan(
    project: &Project,
    cardstock: usize,
    cuts: Vec<StockCut>,
    budget: &mut Budget<'_>,
    findings: &mut Vec<Finding>,
) -> StockPlan {
    let stock = &project.cardstocks[cardstock];
    let mut plan = StockPlan {
        cardstock,
        area_bound: area_bound(stock, &cuts),
        cuts,
        sheets: Vec::new(),
        sheet_count: 0,
        most_each: Vec::new(),
        grade: super::LayoutGrade::Stopped,
    };
    let about = |severity, code| {
        Finding::new(severity, Subject::Cardstock(stock.name.clone()), code).with("cardstock", stock.name.as_str())
    };
    let lengths = |size: &Size| [size.width, size.height];
    let nothing_left = stock.sheets.iter().any(|sheet| !has_area(sheet.usable()));
    let sizes = stock.sheets.iter().flat_map(|sheet| lengths(&sheet.size));
    let sizes = sizes.chain(plan.cuts.iter().flat_map(|cut| lengths(&cut.size)));
    let sizes: Vec<Length> = sizes.chain(plan.cuts.iter().flat_map(|cut| cut.scores.iter().copied())).collect();
    let flat = sizes.iter().any(|&length| length <= Length::ZERO);
    let edges = stock.sheets.iter().flat_map(|sheet| {
        let Edges { left, top, right, bottom } = sheet.unusable;
        [left, top, right, bottom]
    });
    let longest = stock.sheets.iter().map(|sheet| sheet.size.width.max(sheet.size.height)).max().unwrap_or_default();
    let Some(grid) =
        Grid::through(sizes.into_iter().chain(edges)).filter(|_| !flat && !nothing_left && !stock.sheets.is_empty())
    else {
        findings.push(about(Severity::Serious, "cardstock-no-sheet"));
        return plan;
    };
    if longest.ticks() / grid.step().ticks() > MOST_STEPS {
        findings.push(about(Severity::Serious, "cardstock-too-fine"));
        return plan;
    }
    let turned_sheets = stock.sheets.iter().map(|sheet| sheet.grain == Grain::AlongWidth).collect();
    let mut nest = Nest { project, cardstock, stock, grid, told: Vec::new(), turned_sheets };
    nest.tell(&mut plan.cuts, findings);
    nest.solve(&mut plan, budget, findings);
    plan.most_each = nest.most_each(&plan, budget);
    plan
}

/// True if a sheet of that size is there at all.
fn has_area(size: Size) -> bool {
    size.width > Length::ZERO && size.height > Length::ZERO
}

/// No plan uses fewer sheets than this: area wanted ÷ area of the largest sheet, rounded up.
fn area_bound(stock: &Cardstock, cuts: &[StockCut]) -> u32 {
    let wanted: i128 = cuts.iter().map(|cut| cut.size.area().max(0) * i128::from(cut.count)).sum();
    let largest = stock.sheets.iter().map(|sheet| sheet.usable().area()).max().unwrap_or(0);
    if largest <= 0 {
        return 0;
    }
    u32::try_from(wanted / largest + i128::from(wanted % largest != 0)).unwrap_or(u32::MAX)
}

impl Nest<'_> {
    fn about(&self, severity: Severity, code: &'static str) -> Finding {
        Finding::new(severity, Subject::Cardstock(self.stock.name.clone()), code)
            .with("cardstock", self.stock.name.as_str())
    }

    /// A finding about one cut: the recipe, and the layer (empty for the base and the inside sheet).
    fn about_cut(&self, severity: Severity, code: &'static str, cut: &StockCut) -> Finding {
        let recipe = &self.project.recipes[cut.recipe];
        let layer =
            cut.layer.map_or(if cut.inside { "inside" } else { "" }, |layer| recipe.layers[layer].name.as_str());
        let finding = self.about(severity, code).with("recipe", recipe.name.as_str()).with("layer", layer);
        finding.with("width", cut.size.width).with("height", cut.size.height)
    }

    /// Write the cuts in the engine's frame; one that fits only across the grain may turn, with a finding.
    fn tell(&mut self, cuts: &mut [StockCut], findings: &mut Vec<Finding>) {
        for cut in cuts {
            let swapped = !cut.may_turn && self.project.recipes[cut.recipe].fold == Fold::Top;
            let size = if swapped { cut.size.turned() } else { cut.size };
            let told = Told { width: self.grid.floor(size.width), height: self.grid.floor(size.height), swapped };
            if !cut.may_turn && !self.fits(told, false) && self.fits(told, true) {
                cut.may_turn = true;
                findings.push(self.about_cut(Severity::Warning, "grain-across-fold", cut));
            }
            self.told.push(told);
        }
    }

    /// True if a cut comes out of some sheet.
    fn fits(&self, told: Told, turn: bool) -> bool {
        let kinds = self.sheet_kinds(false);
        let upright = kinds.iter().any(|sheet| told.width <= sheet.width && told.height <= sheet.height);
        upright || (turn && kinds.iter().any(|sheet| told.height <= sheet.width && told.width <= sheet.height))
    }

    /// The sheets in the engine's frame, with the numbers that are there or as many as are wanted.
    fn sheet_kinds(&self, limited: bool) -> Vec<SheetKind> {
        let costs = sheet_costs(&self.stock.sheets);
        // Offcuts are never bought: however many sheets are wanted, there are no more of them.
        let bought = costs.iter().any(|&cost| cost > 0);
        let kind = |(index, sheet): (usize, &StockSheet)| {
            let size = if self.turned_sheets[index] { sheet.usable().turned() } else { sheet.usable() };
            let copies = sheet.count.filter(|_| limited || (bought && costs[index] == 0));
            // The steps take the unusable edges off, so the engine sees what is inside.
            SheetKind::whole(self.grid.floor(size.width), self.grid.floor(size.height), copies, costs[index])
        };
        self.stock.sheets.iter().enumerate().map(kind).collect()
    }

    /// Ask the engine, first for the sheets that are there, then for as many as are needed.
    fn solve(&self, plan: &mut StockPlan, budget: &mut Budget<'_>, findings: &mut Vec<Finding>) {
        let mut pieces = Vec::new();
        for (cut, told) in plan.cuts.iter().zip(&self.told) {
            let fits = self.fits(*told, cut.may_turn);
            if !fits {
                let code = match cut.layer {
                    Some(_) => "piece-fits-no-sheet",
                    None if cut.inside => "inside-fits-no-sheet",
                    None => "base-fits-no-sheet",
                };
                findings.push(self.about_cut(Severity::Serious, code, cut));
            }
            let demand = Some(if fits { cut.count } else { 0 });
            pieces.push(PieceKind {
                width: told.width,
                height: told.height,
                demand,
                min: 0,
                value: 0,
                turn: cut.may_turn,
            });
        }
        if pieces.iter().all(|piece| piece.demand == Some(0)) {
            return;
        }
        let limited = self.stock.sheets.iter().any(|sheet| sheet.count.is_some());
        let mut instance = Instance {
            sheets: self.sheet_kinds(true),
            pieces,
            question: Question::LeastCost,
            rules: fixed::Rules::default(),
        };
        // Chosen: a quarter is kept for the question whether narrow strips can be done without.
        let nodes = if limited { budget.left() / 2 } else { budget.left() / 4 * 3 };
        let mut answer = budget.within(nodes, |part| fixed::solve(&instance, part));
        // Whatever the reason: pieces that fit no sheet at all are not asked for here.
        let lacks = |answer: &Answer| answer.sheets.is_empty();
        let short = limited && answer.as_ref().is_ok_and(lacks);
        if short {
            instance.sheets = self.sheet_kinds(false);
            answer = budget.within(budget.left() / 4 * 3, |part| fixed::solve(&instance, part));
        }
        if let Ok(free) = &mut answer {
            self.keep_strips_wide(&mut instance, free, budget, findings);
        }
        match answer {
            Ok(answer) if !answer.sheets.is_empty() => self.publish(plan, &answer, short, findings),
            Ok(_) => findings.push(self.about(Severity::Serious, "cardstock-unfinished")),
            Err(fixed::InstanceError::TooFine { .. }) => {
                findings.push(self.about(Severity::Serious, "cardstock-too-fine"));
            }
            Err(_) => findings.push(self.about(Severity::Serious, "internal-check")),
        }
    }

    /// A plan without strips that are hard to hold takes the place of one with them if it costs no more; else they are told.
    ///
    /// A piece that is itself narrower counts as the narrowest that is held.
    fn keep_strips_wide(
        &self,
        instance: &mut Instance,
        free: &mut Answer,
        budget: &mut Budget<'_>,
        findings: &mut Vec<Finding>,
    ) {
        let wanted = instance.pieces.iter().filter(|piece| piece.demand != Some(0));
        let narrowest = wanted.map(|piece| piece.width.min(piece.height)).min().unwrap_or(0);
        let least_strip = self.grid.ceil(self.project.trimmer.smallest_strip).min(narrowest);
        let strip = |answer: &Answer| {
            let of = |cut: &CutSheet| {
                narrowest_part(&cut.tree, instance.sheets[cut.sheet].width, instance.sheets[cut.sheet].height)
            };
            answer.sheets.iter().map(of).min().unwrap_or(u32::MAX)
        };
        let found = strip(free);
        if found >= least_strip {
            return;
        }
        instance.rules.least_strip = least_strip;
        let wide = budget.within(budget.left(), |part| fixed::solve(instance, part));
        match wide {
            Ok(wide) if !wide.sheets.is_empty() && wide.value <= free.value => *free = wide,
            _ => findings.push(
                self.about(Severity::Warning, "cardstock-strip-narrow")
                    .with("width", self.grid.length(found))
                    .with("least", self.project.trimmer.smallest_strip),
            ),
        }
    }

    /// The engine's answer in the maker's terms, checked.
    fn publish(&self, plan: &mut StockPlan, answer: &Answer, short: bool, findings: &mut Vec<Finding>) {
        plan.grade = grade(&answer.outcome);
        plan.sheet_count = answer.sheets.iter().map(|sheet| sheet.times).sum();
        for cut_sheet in &self.alike(answer) {
            let swapped = |kind: usize| self.told[kind].swapped;
            let tree = upright(&cut_sheet.tree, &swapped, self.turned_sheets[cut_sheet.sheet]);
            let StockSheet { size, grain, unusable, .. } = self.stock.sheets[cut_sheet.sheet];
            let sheet = Sheet::plain(self.grid, size, cut_sheet.times).inside(unusable);
            let Some(done) = checked::stock(self.project, &plan.cuts, &sheet, grain, &tree) else {
                findings.push(self.about(Severity::Serious, "internal-check"));
                continue;
            };
            let length = |steps: u32| self.grid.length(steps);
            let piece = |placed: &cutting::Placed| StockPiece {
                cut: placed.kind,
                rect: Rect::new(
                    unusable.left + length(placed.x),
                    unusable.top + length(placed.y),
                    Size::new(length(placed.width), length(placed.height)),
                ),
                turned: placed.turned,
            };
            plan.sheets.push(StockSheetPlan {
                size: cut_sheet.sheet,
                times: cut_sheet.times,
                step: self.grid.step(),
                tree: done.tree,
                pieces: done.placed.iter().map(piece).collect(),
                cut_plan: done.cut_plan,
            });
        }
        if !cut_exactly(plan, &self.told) {
            debug_assert!(
                false,
                "the sheets of `{}` do not give what was asked",
                self.project.cardstocks[self.cardstock].name
            );
            findings.push(self.about(Severity::Serious, "internal-check"));
        }
        if short {
            for (index, sheet) in self.stock.sheets.iter().enumerate() {
                let used: u32 = plan.sheets.iter().filter(|cut| cut.size == index).map(|cut| cut.times).sum();
                if let Some(there) = sheet.count.filter(|&there| there < used) {
                    let finding =
                        self.about(Severity::Serious, "cardstock-short").with("wanted", used).with("there", there);
                    let finding = finding
                        .with("short", used - there)
                        .with("width", sheet.size.width)
                        .with("height", sheet.size.height);
                    findings.push(finding);
                }
            }
        }
    }

    /// The most pieces of each cut that one sheet gives, for each size that is used.
    fn most_each(&self, plan: &StockPlan, budget: &mut Budget<'_>) -> Vec<Vec<u32>> {
        let kinds = self.sheet_kinds(false);
        let mut of_size = |(index, sheet): (usize, &SheetKind)| {
            let used: Vec<&StockSheetPlan> = plan.sheets.iter().filter(|cut| cut.size == index).collect();
            if used.is_empty() {
                return Vec::new();
            }
            let most = |(cut, told): (usize, &Told)| {
                let there = |sheet: &&StockSheetPlan| sheet.pieces.iter().filter(|piece| piece.cut == cut).count();
                let seen = used.iter().map(there).max().unwrap_or(0);
                let piece = PieceKind {
                    width: told.width,
                    height: told.height,
                    demand: None,
                    min: 0,
                    value: 1,
                    turn: plan.cuts[cut].may_turn,
                };
                let sheets = vec![sheet.clone()];
                let rules = fixed::Rules::default();
                let instance = Instance { sheets, pieces: vec![piece], question: Question::MostValue, rules };
                let answer = budget.within(MOST_NODES, |part| fixed::solve(&instance, part));
                // Each is worth 1, so the worth is their number.
                let found = answer.map_or(0, |answer| u32::try_from(answer.value).unwrap_or(u32::MAX));
                found.max(u32::try_from(seen).unwrap_or(u32::MAX))
            };
            self.told.iter().enumerate().map(most).collect()
        };
        kinds.iter().enumerate().map(&mut of_size).collect()
    }

    /// Sheets that give the same pieces are cut alike: by the tree that is least work. Most sheets first.
    fn alike(&self, answer: &Answer) -> Vec<CutSheet> {
        let mut groups: BTreeMap<(usize, Vec<u32>), CutSheet> = BTreeMap::new();
        let kinds = self.sheet_kinds(false);
        for cut_sheet in &answer.sheets {
            let SheetKind { width, height, .. } = kinds[cut_sheet.sheet];
            let mut given = vec![0; self.told.len()];
            for piece in pieces(&cut_sheet.tree, width, height).unwrap_or_default() {
                given[piece.kind] += 1;
            }
            let work = |tree: &Tree| {
                let effort = effort(tree, width, height);
                (effort.settings, effort.cuts)
            };
            match groups.entry((cut_sheet.sheet, given)) {
                Entry::Vacant(free) => drop(free.insert(cut_sheet.clone())),
                Entry::Occupied(mut taken) => {
                    let kept = taken.get_mut();
                    kept.times += cut_sheet.times;
                    if work(&cut_sheet.tree) < work(&kept.tree) {
                        kept.tree = cut_sheet.tree.clone();
                    }
                }
            }
        }
        let mut sheets: Vec<CutSheet> = groups.into_values().collect();
        sheets.sort_by_key(|sheet| Reverse(sheet.times));
        sheets
    }
}

/// The narrowest part that any cut of a tree leaves; [`u32::MAX`] where nothing is cut.
fn narrowest_part(tree: &Tree, width: u32, height: u32) -> u32 {
    let Tree::Cut { axis, at, first, second } = tree else { return u32::MAX };
    let (rest, parts) = match axis {
        Axis::X => (width.saturating_sub(*at), [(*at, height), (width.saturating_sub(*at), height)]),
        Axis::Y => (height.saturating_sub(*at), [(width, *at), (width, height.saturating_sub(*at))]),
    };
    let [a, b] = parts;
    (*at).min(rest).min(narrowest_part(first, a.0, a.1)).min(narrowest_part(second, b.0, b.1))
}

/// A tree as the maker sees it: the engine's frame undone, of pieces written turned and of a turned sheet.
pub(super) fn upright(tree: &Tree, swapped: &dyn Fn(usize) -> bool, turned_sheet: bool) -> Tree {
    match *tree {
        Tree::Waste => Tree::Waste,
        Tree::Piece { kind, width, height, turned } => {
            let (width, height) = if turned_sheet { (height, width) } else { (width, height) };
            Tree::Piece { kind, width, height, turned: turned ^ swapped(kind) ^ turned_sheet }
        }
        Tree::Cut { axis, at, ref first, ref second } => Tree::Cut {
            axis: if turned_sheet { axis.across() } else { axis },
            at,
            first: Box::new(upright(first, swapped, turned_sheet)),
            second: Box::new(upright(second, swapped, turned_sheet)),
        },
    }
}

/// True if the sheets give exactly what was asked, counted piece by piece.
fn cut_exactly(plan: &StockPlan, told: &[Told]) -> bool {
    let mut given = vec![0_u64; plan.cuts.len()];
    for sheet in &plan.sheets {
        for piece in &sheet.pieces {
            given[piece.cut] += u64::from(sheet.times);
        }
    }
    debug_assert_eq!(told.len(), plan.cuts.len(), "every cut is told to the engine");
    plan.cuts.iter().zip(given).all(|(cut, given)| given == 0 || given == u64::from(cut.count))
}

/// What one sheet of each size costs: its price in ten-thousandths where every size has one in one
/// currency, else 1, so that sheets are counted.
fn sheet_costs(sheets: &[StockSheet]) -> Vec<u64> {
    let cost = |sheet: &StockSheet| {
        let price = sheet.price.as_ref()?;
        let same =
            sheets.iter().all(|other| other.price.as_ref().is_some_and(|other| other.currency == price.currency));
        let each = price.amount.checked_div(Decimal::from(sheet.pack_of.max(1)))?.checked_mul(Decimal::from(10_000))?;
        // What cost nothing, and of which there are so many, is an offcut: it is used first.
        let offcut = each.is_zero() && sheet.count.is_some();
        each.round().to_u64().filter(|&cost| same && (offcut || (1..1 << 32).contains(&cost)))
    };
    let costs: Option<Vec<u64>> = sheets.iter().map(cost).collect();
    costs.filter(|_| sheets.len() > 1).unwrap_or_else(|| vec![1; sheets.len()])
}
