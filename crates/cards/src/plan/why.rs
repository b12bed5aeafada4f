//! Why not? The smallest changes to a project that let its paper be cut, in the maker's terms.
//!
//! What small means is said in [`cutting::flexible::nearest`]. Left out on purpose: making the change; the maker
//! decides.

use cutting::flexible::Span;
use cutting::flexible::nearest::{Aim, Change, End, Fix, Move, Reach, Side, Sort, changed, nearest};
use measure::{Length, Mark, Rect, Size, Unit, sheets};

use super::answer::Alternative;
use super::fit;
use super::grid::{Grid, MOST_STEPS};
use super::paper::{self, Question};
use crate::finding::{Fact, Finding, Way, WayChange};
use crate::model::{Material, Project};
use cutting::Budget;

/// Most steps by which ranges reach further. Chosen: more are another card.
const MOST_RANGE_STEPS: u32 = 12;
/// Most ways of one sort. Chosen: few enough to read.
const EACH: usize = 2;
/// Most that are looked for: a sheet can come twice, upright and lying.
const EACH_SOUGHT: usize = 2 * EACH;

/// Why a pack gives no such layout, and what would help.
#[derive(Debug, Clone, PartialEq)]
pub struct WhyNot {
    /// Index of the pack.
    pub pack: usize,
    /// What was wanted of it.
    pub aim: Aim,
    /// One step of the ranges: the maker's mark, or the finer one on which every piece has a size.
    pub step: Length,
    /// True if it works as it stands.
    pub works: bool,
    /// What would help, the smallest change first.
    pub ways: Vec<WayOut>,
    /// Sorts of changes of which none within reach helps; proven.
    pub refuted: Vec<Sort>,
    /// Sorts of changes of which none was found before the budget ended.
    pub unknown: Vec<Sort>,
}

/// A way out and the layout it gives.
#[derive(Debug, Clone, PartialEq)]
pub struct WayOut {
    /// What changes and what comes of it.
    pub way: Way,
    /// A layout of the changed project; on another sheet its pieces lie inside that sheet.
    pub layout: Alternative,
}

/// The smallest changes that give a layout of one pack, or one without waste; `None` if nothing can be asked of it.
///
/// # Shape
/// Ranges may reach half an inch (12 mm) further in all, at most 12 marks. Other sheets are those of the tables of
/// [`measure::sheets`] that the trimmer can cut across, upright and lying. Each layout has been checked against the
/// changed question. `cards` from one sheet are asked for; `None`: the goal's, or the fewest that make sense. The same
/// project and budget in nodes give the same answer.
pub fn why(project: &Project, pack: usize, aim: Aim, cards: Option<u32>, budget: &mut Budget<'_>) -> Option<WhyNot> {
    let leads = project.packs.iter().position(|pack| pack.designs.iter().any(|design| design.sheets() > 0));
    let mut question = asked(project, pack, leads == Some(pack))?;
    let usual = || question.tries().last().copied().or(project.goal.cards_per_sheet).unwrap_or(1);
    let cards = cards.unwrap_or_else(usual);
    question.instance = question.with_cards(cards);
    question.instance.alternatives = 1;
    let (reach, names) = reach(&question, pack, aim);
    let found = nearest(&question.instance, &reach, budget).ok()?;
    let mut told: Vec<(Sort, Size)> = Vec::new();
    let mut ways = Vec::new();
    for fix in &found.fixes {
        let sort = fix.change.sort();
        let size = match fix.change {
            Change::Sheet { index } => names[index].1.short_first(),
            _ => Size::default(),
        };
        let again = sort == Sort::Sheet && told.contains(&(sort, size));
        if !again && told.iter().filter(|(other, _)| *other == sort).count() < EACH {
            told.push((sort, size));
            ways.extend(way_out(&question, &reach, &names, fix));
        }
    }
    Some(WhyNot {
        pack,
        aim,
        step: question.grid.step(),
        works: found.works,
        ways,
        refuted: found.refuted,
        unknown: found.unknown,
    })
}

/// Gives the finding that says why there is no layout its ways out.
pub(super) fn ways_out(project: &Project, pack: usize, budget: &mut Budget<'_>, findings: &mut [Finding]) {
    const CODES: [&str; 6] = [
        "goal-no-mix",
        "layout-none",
        "layout-piece-too-large",
        "layout-too-much-area",
        "layout-unfinished",
        "piece-not-on-mark",
    ];
    let Some(finding) = findings.iter_mut().rfind(|finding| CODES.contains(&finding.code)) else { return };
    let why = budget.within(budget.left() / 2, |part| why(project, pack, Aim::AnyLayout, None, part));
    finding.ways = why.map(|why| why.ways.into_iter().map(|out| out.way).collect()).unwrap_or_default();
}

/// The question on the maker's marks, or on the first finer ones of her unit on which every piece has a size.
fn asked(project: &Project, pack: usize, leads: bool) -> Option<Question<'_>> {
    let finer = |mark: &Mark| mark.unit() == project.mark.unit() && mark.parts() > project.mark.parts();
    let marks = [project.mark].into_iter().chain(Mark::ALL.into_iter().filter(finer));
    let ask = |mark: Mark| paper::ask(project, pack, leads, Grid::new(mark.step()), &mut Vec::new());
    let mut questions = marks.filter_map(ask);
    questions.next()
}

/// How far changes may go, and the names of the sheets to try.
fn reach(question: &Question<'_>, pack: usize, aim: Aim) -> (Reach, Vec<(&'static str, Size)>) {
    let project = question.project;
    let paper = &project.packs[pack];
    // Chosen: half an inch or 12 mm; further, it is another card.
    let far = match project.unit {
        Unit::Inch => Unit::Inch.thousandths(500),
        Unit::Millimetre => Length::mm(12),
    };
    let mut sheets: Vec<(&'static str, Size)> = Vec::new();
    for row in sheets::sheets() {
        let across = row.size.width.min(row.size.height);
        for size in [row.size, Size::new(row.size.height, row.size.width)] {
            let steps = [size.width, size.height].map(|side| question.grid.floor(side));
            let usable = steps.iter().all(|&side| side > 0 && i64::from(side) <= MOST_STEPS);
            let known = sheets.iter().any(|(_, known)| *known == size) || size == paper.sheet;
            // Smaller sheets are no help where the pieces do not even go into this one.
            let smaller = size.width <= paper.sheet.width && size.height <= paper.sheet.height;
            if usable && !known && across <= project.trimmer.longest_cut && (aim == Aim::NoWaste || !smaller) {
                sheets.push((row.name, size));
            }
        }
    }
    let upright = paper::upright(paper);
    let bounds = question.kinds.iter().zip(&question.instance.kinds);
    let bounds = bounds.map(|(kind, asked)| {
        let recipe = &project.recipes[kind.recipe];
        let room = match recipe.layers[kind.layer].placement.overlap {
            true => paper.sheet,
            false => fit::room(recipe, kind.layer),
        };
        // No piece becomes a strip that cannot be held, and none runs over its card.
        let strip = question.grid.ceil(project.trimmer.smallest_strip);
        let within =
            |span: Span, room: Length| Span::new(strip.min(span.least), question.grid.floor(room).max(span.most));
        (within(asked.width, room.width), within(asked.height, room.height))
    });
    let bounds = bounds.collect();
    let reach = Reach {
        aim,
        turn: vec![!upright; question.kinds.len()],
        steps: question.grid.floor(far).clamp(1, MOST_RANGE_STEPS),
        bounds,
        cards: question.instance.cards.least.saturating_sub(1),
        sheets: sheets
            .iter()
            .map(|(_, size)| (question.grid.floor(size.width), question.grid.floor(size.height)))
            .collect(),
        each: EACH_SOUGHT,
    };
    (reach, sheets)
}

/// A fix in the maker's terms, checked; `None` if its layout is not what the changed question asks for.
fn way_out(question: &Question<'_>, reach: &Reach, names: &[(&'static str, Size)], fix: &Fix) -> Option<WayOut> {
    let instance = changed(&question.instance, reach, &fix.change);
    let mut changed = question.clone();
    if let Change::Sheet { index } = fix.change {
        // Another sheet is whole: the edges that cannot be used are those of this one.
        changed.usable = Rect::new(Length::ZERO, Length::ZERO, names.get(index)?.1);
    }
    let layout = changed.told(&instance, &fix.layout);
    debug_assert!(layout.is_some(), "a layout is not what was asked for");
    let layout = layout?;
    let area = u64::from(instance.width) * u64::from(instance.height);
    let cards: u32 = fix.layout.cards.iter().sum();
    let told = |code, facts| WayChange { code, facts };
    let changes = match &fix.change {
        Change::Turn { kinds } => kinds.iter().map(|&kind| told("way-turn", piece(question, kind))).collect(),
        Change::Sizes { moves } => moves.iter().map(|to| moved(question, to)).collect(),
        Change::FewerCards { by } => {
            let facts = vec![("cards", Fact::from(question.instance.cards.least - by)), ("by", Fact::from(*by))];
            vec![told("way-fewer-cards", facts)]
        }
        Change::Sheet { index } => {
            let (name, size) = names.get(*index)?;
            let facts = vec![
                // A name that only repeats the numbers says nothing.
                ("name", Fact::from(if name.starts_with(char::is_alphabetic) { *name } else { "none" })),
                ("width", Fact::from(size.width)),
                ("height", Fact::from(size.height)),
            ];
            vec![told("way-sheet", facts)]
        }
    };
    let left_percent = u32::try_from((fix.layout.waste * 100).div_ceil(area.max(1))).unwrap_or(100);
    Some(WayOut { way: Way { changes, cards, left_percent, smallest: fix.smallest }, layout })
}

/// The names of a piece.
fn piece(question: &Question<'_>, kind: usize) -> Vec<(&'static str, Fact)> {
    let kind = question.kinds[kind];
    let recipe = &question.project.recipes[kind.recipe];
    vec![("recipe", Fact::from(recipe.name.as_str())), ("layer", Fact::from(recipe.layers[kind.layer].name.as_str()))]
}

/// A range that reaches further: to where, and how much further than the maker wrote.
fn moved(question: &Question<'_>, to: &Move) -> WayChange {
    let asked = &question.instance.kinds[to.kind];
    let kind = question.kinds[to.kind];
    let layer = &question.project.recipes[kind.recipe].layers[kind.layer];
    let span = if to.side == Side::Width { asked.width } else { asked.height };
    let by = to.steps * asked.step.max(1);
    let (code, end) = match (to.side, to.end) {
        (Side::Width, End::Least) => ("way-narrower", span.least.saturating_sub(by)),
        (Side::Width, End::Most) => ("way-wider", span.most.saturating_add(by)),
        (Side::Height, End::Least) => ("way-lower", span.least.saturating_sub(by)),
        (Side::Height, End::Most) => ("way-higher", span.most.saturating_add(by)),
    };
    let length = question.grid.length(end);
    let written = match (&layer.material, to.side, to.end) {
        (Material::Patterned { width, .. }, Side::Width, End::Least) => width.least,
        (Material::Patterned { width, .. }, Side::Width, End::Most) => width.most,
        (Material::Patterned { height, .. }, Side::Height, End::Least) => height.least,
        (Material::Patterned { height, .. }, Side::Height, End::Most) => height.most,
        _ => length,
    };
    let further = if written > length { written - length } else { length - written };
    let mut facts = piece(question, to.kind);
    facts.extend([("to", Fact::from(length)), ("by", Fact::from(further))]);
    WayChange { code, facts }
}
