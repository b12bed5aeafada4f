//! How the prints are shared over the cards, by which rule pieces meet, and what goes into each kit.

use std::collections::{BTreeMap, BTreeSet};

use cards::Plan;
use cards::model::Layer;
use cards::pairs::{Apart, Print, Uneven};
use cards::plan::{BatchKits, BatchShares, CardKind};

use super::look::say;
use super::needs::with_recipe;
use super::pages::{Column, Pages};
use crate::text::Align;

/// Most layers of a recipe that get a column.
const MOST_LAYERS: usize = 4;

/// Draws the page; nothing where no prints meet, all shares are even and there are no kits.
pub(super) fn shares(plan: &Plan, pages: &mut Pages) {
    let meet = plan.shares.iter().flat_map(|batch| &batch.shown).any(|one| from_partner(plan, one.recipe, one.layer));
    let uneven = plan.shares.iter().flat_map(|batch| &batch.shares).any(|share| share.reason.is_some());
    if !meet && !uneven && plan.shares.iter().all(|batch| batch.kits.is_none()) {
        return;
    }
    pages.chapter(&say("page-shares-title", &[]));
    if meet {
        pages.say(&rule(plan));
    }
    for batch in &plan.shares {
        of_batch(plan, batch, pages);
    }
}

fn from_partner(plan: &Plan, recipe: usize, layer: usize) -> bool {
    plan.project.layer(recipe, layer).is_some_and(Layer::is_from_partner)
}

/// By which rule the pieces of one card come from different prints.
fn rule(plan: &Plan) -> String {
    let mut partners: Vec<String> = Vec::new();
    for (one, other) in plan.batches.iter().flat_map(|batch| &batch.goal.partners) {
        let pair = say("page-shares-pair", &[("one", one.into()), ("other", other.into())]);
        if !partners.contains(&pair) {
            partners.push(pair);
        }
    }
    let meeting = &plan.project.meeting;
    let apart = match meeting.apart {
        Apart::Designs => "designs",
        Apart::Faces => "faces",
        Apart::Anything => "nothing",
    };
    let mut said = vec![say("page-shares-rule", &[("apart", apart.into())])];
    if meeting.one_large {
        said.push(say("page-shares-large", &[]));
    }
    let list = |pairs: &[(String, String)]| {
        let pair =
            |(one, other): &(String, String)| say("page-shares-pair", &[("one", one.into()), ("other", other.into())]);
        pairs.iter().map(pair).collect::<Vec<_>>()
    };
    let lists = [
        ("page-shares-only", list(&meeting.only)),
        ("page-shares-never", list(&meeting.never)),
        ("page-shares-partners", partners),
    ];
    for (id, pairs) in lists {
        if !pairs.is_empty() {
            said.push(say(id, &[("pairs", pairs.join(", ").into())]));
        }
    }
    said.join(" ")
}

fn of_batch(plan: &Plan, batch: &BatchShares, pages: &mut Pages) {
    let name = plan.batches.get(batch.batch).map_or("", |batch| batch.name.as_str());
    let recipes: BTreeSet<usize> = batch.shown.iter().map(|shown| shown.recipe).collect();
    for recipe in recipes {
        let own = plan.project.recipes.get(recipe).map_or("", |recipe| recipe.name.as_str());
        let parts: Vec<&str> = [name, own].into_iter().filter(|part| !part.is_empty()).collect();
        of_recipe(plan, batch, recipe, &parts.join(" · "), pages);
    }
    if let Some(kits) = &batch.kits {
        of_kits(plan, kits, name, pages);
    }
}

/// A row for each print, a column for each layer.
fn of_recipe(plan: &Plan, batch: &BatchShares, recipe: usize, title: &str, pages: &mut Pages) {
    let shown = || batch.shown.iter().filter(|shown| shown.recipe == recipe);
    let mut layers: Vec<usize> = shown().map(|shown| shown.layer).collect();
    layers.sort_unstable();
    layers.dedup();
    layers.truncate(MOST_LAYERS);
    let mut rows: BTreeMap<Print, Vec<String>> = BTreeMap::new();
    for one in shown().filter(|one| one.cards > 0) {
        let Some(column) = layers.iter().position(|&layer| layer == one.layer) else { continue };
        let row = rows.entry(one.print).or_insert_with(|| vec![String::from("–"); layers.len()]);
        row[column] = one.cards.to_string();
    }
    pages.section(title);
    let layer_name = |layer| plan.project.layer(recipe, layer).map_or(String::new(), |layer| layer.name.clone());
    let mut columns = vec![Column { head: say("page-shares-print", &[]), share: 40, align: Align::Start }];
    columns.extend(layers.iter().map(|&layer| Column { head: layer_name(layer), share: 15, align: Align::End }));
    let rows: Vec<Vec<String>> =
        rows.into_iter().map(|(print, row)| [vec![named(plan, print)], row].concat()).collect();
    pages.table(&columns, &rows);
    for share in batch.shares.iter().filter(|share| share.recipe == recipe) {
        let id = match share.reason {
            // The table says it.
            None => continue,
            Some(Uneven::AllUsed) => "page-shares-all-used",
            Some(Uneven::Partners) => "page-shares-by-partner",
            Some(Uneven::Rule) => "page-shares-by-rule",
        };
        let facts = [
            ("layer", layer_name(share.layer).into()),
            ("most", letter(plan, share.most.0).into()),
            ("most-cards", share.most.1.into()),
            ("fewest", letter(plan, share.fewest.0).into()),
            ("fewest-cards", share.fewest.1.into()),
        ];
        pages.note(&say(id, &facts));
    }
}

fn letter(plan: &Plan, print: Print) -> String {
    plan.project.design(print.pack, print.design).map_or(String::new(), |design| design.letter.clone())
}

/// `A · Quince Branch, fruit on boughs`.
fn named(plan: &Plan, print: Print) -> String {
    plan.project.design(print.pack, print.design).map_or(String::new(), |design| {
        let face = design.face(print.side).name.as_str();
        let name = format!("{} · {}", design.letter, design.name);
        if face.is_empty() { name } else { format!("{name}, {face}") }
    })
}

/// What goes into each kit: one table where all are alike, else a line for those that are.
fn of_kits(plan: &Plan, kits: &BatchKits, name: &str, pages: &mut Pages) {
    let number = kits.cards.len();
    let id = if name.is_empty() { "page-kits-title" } else { "page-kits-title-of" };
    let title = say(id, &[("batch", name.into()), ("count", number.into())]);
    pages.section(&title);
    let mut alike: Vec<(&Vec<u32>, Vec<usize>)> = Vec::new();
    for (index, kit) in kits.dealt.cards.iter().enumerate() {
        match alike.iter_mut().find(|(seen, _)| *seen == kit) {
            Some((_, which)) => which.push(index + 1),
            None => alike.push((kit, vec![index + 1])),
        }
    }
    let head = |which: &Vec<usize>| {
        if alike.len() == 1 {
            return say("page-kits-each", &[]);
        }
        let numbers: Vec<String> = which.iter().map(usize::to_string).collect();
        say("page-kits-these", &[("numbers", super::papers::runs(&numbers).into())])
    };
    let said = if kits.dealt.equal {
        say("page-kits-alike", &[("count", number.into())])
    } else {
        say("page-kits-unlike", &[("swaps", kits.dealt.swaps.into())])
    };
    pages.say(&said);
    let kind = |kind: &CardKind| {
        let print = kind.print.map(|print| named(plan, print)).unwrap_or_default();
        with_recipe(plan, kind.recipe, &print)
    };
    let shown: Vec<_> = alike.iter().take(MOST_LAYERS).collect();
    let mut columns = vec![Column { head: say("page-kits-card", &[]), share: 40, align: Align::Start }];
    columns.extend(shown.iter().map(|(_, which)| Column { head: head(which), share: 15, align: Align::End }));
    let row = |(index, of): (usize, &CardKind)| {
        let counts = shown.iter().map(|(kit, _)| kit.get(index).copied().unwrap_or(0).to_string());
        [kind(of)].into_iter().chain(counts).collect()
    };
    let rows: Vec<Vec<String>> = kits.kinds.iter().enumerate().map(row).collect();
    pages.table(&columns, &rows);
    for (kit, which) in alike.iter().skip(MOST_LAYERS) {
        let cards: Vec<String> = (kits.kinds.iter().zip(kit.iter()))
            .filter(|&(_, &count)| count > 0)
            .map(|(of, count)| format!("{count} × {}", kind(of)))
            .collect();
        pages.note(&format!("{}: {}", head(which), cards.join(", ")));
    }
}
