//! What became of each recipe: the plan before and the plan after, side by side.

use cutting::Budget;
use measure::Size;

use super::sheet::{Sized, once, sizes_of};
use super::{Change, Fate, Told};
use crate::finding::{Fact, Finding, Severity, Subject, Way};
use crate::model::{Fold, Grain, Material, Project};
use crate::plan::{Aim, Plan, StockPlan, why};

/// Chosen: a card is made smaller by at most so many marks to find the nearest that gives as many bases.
const MOST_SMALLER: i64 = 32;

/// Each recipe that had cards: kept, changed or lost. What a sheet of cardstock gives fewer of is told in the findings.
pub(super) fn told(
    before: &Plan,
    after: &Plan,
    lost: &[usize],
    budget: &mut Budget<'_>,
    findings: &mut Vec<Finding>,
) -> Vec<Told> {
    let mut all = Vec::new();
    for (recipe, made) in before.project.recipes.iter().enumerate() {
        let cards = |plan: &Plan| plan.cards.iter().filter(|card| card.recipe == recipe).count() as u64;
        if cards(before) == 0 {
            continue;
        }
        let mut told = Told { recipe: made.name.clone(), fate: Fate::Kept, changes: Vec::new(), ways: Vec::new() };
        if lost.contains(&recipe) || (cards(after) == 0 && new_trouble(before, after, None)) {
            told.fate = Fate::Lost;
            told.ways = ways(&after.project, recipe, 1, budget);
            all.push(told);
            continue;
        }
        if cards(after) == 0 {
            // Fewer cards are wanted than use this recipe.
            told.fate = Fate::Changed;
            let facts = vec![("from", Fact::from(cards(before))), ("to", Fact::from(0_u64))];
            told.changes.push(Change::new("replan-cards-made", facts));
            all.push(told);
            continue;
        }
        told.changes = pieces(before, after, recipe);
        told.changes.extend(others(&before.project, &after.project, recipe));
        if let Some((change, finding)) = stock(before, after, recipe) {
            told.changes.push(change);
            findings.extend(finding);
        }
        if new_trouble(before, after, Some(&made.name)) {
            told.fate = Fate::Lost;
        } else if !told.changes.is_empty() {
            told.fate = Fate::Changed;
        }
        if let Some((change, from, to)) = per_sheet(before, after, recipe) {
            told.changes.push(change);
            if before.project.unit != after.project.unit && to < from {
                let subject = Subject::Recipe(made.name.clone());
                let mut finding = Finding::new(Severity::Note, subject, "replan-fewer-cards");
                finding = finding.with("recipe", made.name.as_str()).with("from", from).with("to", to);
                let sizes =
                    |way: &Way| !way.changes.iter().any(|one| ["way-sheet", "way-fewer-cards"].contains(&one.code));
                finding.ways = ways(&after.project, recipe, from, budget).into_iter().filter(sizes).collect();
                if !finding.ways.is_empty() {
                    findings.push(finding);
                }
            }
        }
        if cards(before) != cards(after) {
            let facts = vec![("from", Fact::from(cards(before))), ("to", Fact::from(cards(after)))];
            told.changes.push(Change::new("replan-cards-made", facts));
        }
        all.push(told);
    }
    all
}

/// True if something serious is said, of a recipe or of anything, that was not said before.
fn new_trouble(before: &Plan, after: &Plan, recipe: Option<&str>) -> bool {
    let about = |finding: &&Finding| {
        let named = |recipe: &str| {
            let fact = finding.facts.iter().any(|(key, fact)| *key == "recipe" && *fact == Fact::from(recipe));
            fact || finding.subject == Subject::Recipe(recipe.to_owned())
        };
        finding.severity == Severity::Serious && recipe.is_none_or(named)
    };
    let codes = |plan: &Plan| plan.findings.iter().filter(about).map(|finding| finding.code).collect::<Vec<_>>();
    let was = codes(before);
    codes(after).iter().any(|code| !was.contains(code))
}

/// The smallest changes that would let so many cards of a recipe be cut from the sheets it has now.
fn ways(project: &Project, recipe: usize, cards: u32, budget: &mut Budget<'_>) -> Vec<Way> {
    let mut alone = project.clone();
    alone.batches = Vec::new();
    for (other, made) in alone.recipes.iter_mut().enumerate() {
        (made.least, made.most) = (0, (other != recipe).then_some(0));
    }
    let designs = alone.recipes[recipe].designs.clone();
    for design in alone.packs.iter_mut().flat_map(|pack| &mut pack.designs) {
        let may = designs.is_empty() || designs.contains(&design.letter);
        (design.copies, design.use_sheets) = (u32::from(may), None);
    }
    let Some(pack) = alone.packs.iter().position(|pack| pack.sheets() > 0) else { return Vec::new() };
    let why = budget.within(budget.left() / 4, |part| why(&alone, pack, Aim::AnyLayout, Some(cards), part));
    why.filter(|why| !why.works).map_or_else(Vec::new, |why| why.ways.into_iter().map(|out| out.way).collect())
}

fn sizes(from: Size, to: Size) -> Vec<(&'static str, Fact)> {
    let mut facts = vec![("from-width", Fact::from(from.width)), ("from-height", Fact::from(from.height))];
    facts.extend([("width", Fact::from(to.width)), ("height", Fact::from(to.height))]);
    facts
}

/// Patterned pieces of other sizes.
fn pieces(before: &Plan, after: &Plan, recipe: usize) -> Vec<Change> {
    let of = |plan: &Plan, layer: usize| {
        let own = |&(of, at, _): &Sized| (of, at) == (recipe, layer);
        once(plan.layouts.iter().flat_map(sizes_of).filter(own).map(|(_, _, size)| size))
    };
    let mut changes = Vec::new();
    for (layer, made) in before.project.recipes[recipe].layers.iter().enumerate() {
        let (was, is) = (of(before, layer), of(after, layer));
        let named = ("layer", Fact::from(made.name.as_str()));
        match (was.as_slice(), is.as_slice()) {
            _ if was == is => {}
            (&[was], &[is]) => {
                let mut facts = vec![named];
                facts.extend(sizes(was, is));
                changes.push(Change::new("replan-piece", facts));
            }
            _ => changes.push(Change::new("replan-pieces", vec![named])),
        }
    }
    changes
}

/// The card itself and what is on it beside patterned paper.
fn others(before: &Project, after: &Project, recipe: usize) -> Vec<Change> {
    let (was, is) = (&before.recipes[recipe], &after.recipes[recipe]);
    let mut changes = Vec::new();
    if was.finished != is.finished {
        changes.push(Change::new("replan-finished", sizes(was.finished, is.finished)));
    }
    for (old, new) in was.layers.iter().zip(&is.layers) {
        let named = ("layer", Fact::from(old.name.as_str()));
        let (code, more) = match (&old.material, &new.material) {
            (Material::Mat { border: from, .. }, Material::Mat { border: to, .. }) if from != to => {
                ("replan-border", vec![("from", Fact::from(*from)), ("to", Fact::from(*to))])
            }
            (Material::Ribbon { length: from, .. }, Material::Ribbon { length: to, .. }) if from != to => {
                ("replan-ribbon", vec![("from", Fact::from(*from)), ("to", Fact::from(*to))])
            }
            (Material::Plain { size: from, .. }, Material::Plain { size: to, .. })
            | (Material::Strip { size: from, .. }, Material::Strip { size: to, .. })
                if from != to =>
            {
                ("replan-piece", sizes(*from, *to))
            }
            _ => continue,
        };
        let mut facts = vec![named];
        facts.extend(more);
        changes.push(Change { code, facts });
    }
    if let (Some((from, _)), Some((to, _))) = (was.inside, is.inside)
        && from != to
    {
        changes.push(Change::new("replan-inside", sizes(from, to)));
    }
    changes
}

/// Cards of a recipe from one sheet, where there is one number before and after.
fn per_sheet(before: &Plan, after: &Plan, recipe: usize) -> Option<(Change, u32, u32)> {
    let of = |plan: &Plan| {
        let own = plan.layouts.iter().filter(|layout| layout.recipe_counts[recipe] > 0);
        let counts = once(own.clone().map(|layout| layout.recipe_counts[recipe]));
        let sheets: u32 = own.flat_map(|layout| &layout.sheets).map(|used| used.sheets).sum();
        <[u32; 1]>::try_from(counts).ok().map(|[count]| (count, sheets))
    };
    let ((was, sheets_were), (is, sheets)) = (of(before)?, of(after)?);
    let facts = vec![
        ("from", Fact::from(was)),
        ("to", Fact::from(is)),
        ("sheets-from", Fact::from(sheets_were)),
        ("sheets-to", Fact::from(sheets)),
    ];
    (was != is).then_some((Change::new("replan-per-sheet", facts), was, is))
}

/// The base from one sheet of cardstock: how many there were and are. Fewer are told with the nearest card that gives
/// as many.
fn stock(before: &Plan, after: &Plan, recipe: usize) -> Option<(Change, Option<Finding>)> {
    let (_, was, _) = base(before, recipe)?;
    let (stock, is, turn) = base(after, recipe)?;
    if was == is {
        return None;
    }
    let (project, made) = (&after.project, &after.project.recipes[recipe]);
    let cardstock = &project.cardstocks[stock.cardstock];
    let used = stock.most_each.iter().position(|most| !most.is_empty()).unwrap_or(0);
    let sheet = cardstock.sheets.get(used)?;
    let mut facts = vec![("cardstock", Fact::from(cardstock.name.as_str()))];
    facts.extend([("from", Fact::from(was)), ("to", Fact::from(is))]);
    let change = Change::new("replan-base-per-sheet", facts);
    let fewer = (is < was).then(|| {
        let (size, _) = made.base_size();
        let subject = Subject::Recipe(made.name.clone());
        let finding = match is {
            0 => Finding::new(Severity::Serious, subject, "replan-no-base"),
            _ => Finding::new(Severity::Warning, subject, "replan-fewer-bases"),
        };
        let finding = finding.with("recipe", made.name.as_str()).with("width", size.width).with("height", size.height);
        let finding = finding.with("cardstock", cardstock.name.as_str()).with("from", was).with("to", is);
        let finding = finding.with("sheet-width", sheet.size.width).with("sheet-height", sheet.size.height);
        // A card twice as large gives fewer bases, and no smaller one is the same card.
        let same_card = before.project.recipes[recipe].finished == made.finished || is == 0;
        let as_many = nearest(project, recipe, sheet.usable(), sheet.grain, turn || is == 0, was).filter(|_| same_card);
        match as_many {
            Some(card) => finding.with("near", "some").with("card-width", card.width).with("card-height", card.height),
            None => finding.with("near", "none"),
        }
    });
    Some((change, fewer))
}

/// Where a base is cut, how many one sheet gives at most, and whether it may lie turned.
fn base(plan: &Plan, recipe: usize) -> Option<(&StockPlan, u32, bool)> {
    plan.stocks.iter().find_map(|stock| {
        let own = |cut: &crate::plan::StockCut| {
            cut.layer.is_none() && !cut.inside && (cut.recipe == recipe || cut.also.contains(&recipe))
        };
        let index = stock.cuts.iter().position(own)?;
        let most = stock.most_each.iter().filter_map(|most| most.get(index)).max();
        Some((stock, most.copied().unwrap_or(0), stock.cuts[index].may_turn))
    })
}

/// The card, smaller by the fewest marks in all, of whose bases so many come out of a sheet.
fn nearest(project: &Project, recipe: usize, sheet: Size, grain: Grain, turn: bool, wanted: u32) -> Option<Size> {
    let step = project.mark.step();
    let mut made = project.recipes[recipe].clone();
    let was = made.finished;
    for smaller in 0..=MOST_SMALLER {
        for narrower in 0..=smaller {
            made.finished = Size::new(was.width - step * narrower, was.height - step * (smaller - narrower));
            if made.finished.width <= step || made.finished.height <= step {
                continue;
            }
            let (base, _) = made.base_size();
            // The fold follows the grain where it is known.
            let along_width = made.fold == Fold::Top;
            let upright = match grain {
                Grain::AlongHeight => !along_width,
                Grain::AlongWidth => along_width,
                Grain::Unknown => true,
            };
            let lies = if upright { base } else { base.turned() };
            let most = sheet.side_by_side(lies).max(if turn { sheet.side_by_side(lies.turned()) } else { 0 });
            if most >= i64::from(wanted) {
                return Some(made.finished);
            }
        }
    }
    None
}
