//! Table: one step at a time, in large type, with ticks that survive a closed lid.

use std::collections::BTreeSet;

use cards::model::{Fold, Material, Recipe};
use cards::plan::{Card, StockCut};
use cutting::steps::Step;
use drawing::sheets::{CutsOf, Hand};
use maud::{Markup, html};
use store::projects::StoreError;

use super::answer::{Asked, Desk};
use super::room::Made;
use super::supplies::Part;
use super::{fields, hand, sample, say, shell, spoiled};

/// What is kept beside the ticks for a maker who cuts with the left hand.
const LEFT: &str = "left-hand";

/// One thing to do at the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Todo {
    /// A step at the trimmer.
    Cut(CutsOf, usize),
    /// A layer laid on the cards of a recipe; the base first.
    Lay(usize, usize),
}

/// Everything there is to do, in order.
fn todos(made: &Made) -> Vec<Todo> {
    let plan = &made.plan;
    let mut all = Vec::new();
    for (index, layout) in plan.layouts.iter().enumerate() {
        all.extend((0..layout.cut_plan.steps.len()).map(|step| Todo::Cut(CutsOf::Layout(index), step)));
    }
    for (index, stock) in plan.stocks.iter().enumerate() {
        for (number, sheet) in stock.sheets.iter().enumerate() {
            all.extend((0..sheet.cut_plan.steps.len()).map(|step| Todo::Cut(CutsOf::Stock(index, number), step)));
        }
    }
    for (index, _) in plan.project.recipes.iter().enumerate() {
        if let Some(card) = of_recipe(made, index) {
            // A sheet inside is glued in when everything else is done.
            let inside = usize::from(plan.project.recipes[index].inside.is_some());
            all.extend((0..=card.parts.len() + inside).map(|layer| Todo::Lay(index, layer)));
        }
    }
    all
}

fn of_recipe(made: &Made, recipe: usize) -> Option<&Card> {
    hand::one_of_each(made).into_iter().find(|card| card.recipe == recipe)
}

/// The name under which a tick is kept: it holds what is to be done, so that a changed step is not ticked.
fn key(made: &Made, todo: Todo) -> String {
    let fold = |text: &str| {
        text.bytes().fold(0xcbf2_9ce4_8422_2325_u64, |sum, byte| (sum ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3))
    };
    match todo {
        Todo::Cut(CutsOf::Layout(index), step) => {
            let found = made.plan.layouts.get(index).and_then(|layout| layout.cut_plan.steps.get(step));
            format!("sheet-{index}-{step}-{:x}", fold(&format!("{found:?}")))
        }
        Todo::Cut(CutsOf::Stock(stock, sheet), step) => {
            let stocks = made.plan.stocks.get(stock);
            let found = stocks.and_then(|s| s.sheets.get(sheet)).and_then(|sheet| sheet.cut_plan.steps.get(step));
            format!("stock-{stock}-{sheet}-{step}-{:x}", fold(&format!("{found:?}")))
        }
        Todo::Lay(recipe, layer) => {
            let size =
                layer.checked_sub(1).and_then(|part| of_recipe(made, recipe)?.parts.get(part)).map(|part| part.rect);
            format!("card-{recipe}-{layer}-{:x}", fold(&format!("{size:?}")))
        }
    }
}

/// The parts of the work, each with whether its last step is done.
pub(super) fn parts(made: &Made, ticks: &BTreeSet<String>) -> Vec<(Part, bool)> {
    let mut parts: Vec<(Part, bool)> = Vec::new();
    for todo in todos(made) {
        let part = match todo {
            Todo::Cut(CutsOf::Layout(index), _) => Part::Sheet(index),
            Todo::Cut(CutsOf::Stock(stock, sheet), _) => Part::Stock(stock, sheet),
            Todo::Lay(recipe, _) => Part::Card(recipe),
        };
        let done = ticks.contains(&key(made, todo));
        match parts.last_mut().filter(|(last, _)| *last == part) {
            Some((_, all)) => *all &= done,
            None => parts.push((part, done)),
        }
    }
    parts
}

/// How many steps are done, of how many.
pub(super) fn progress(made: &Made, ticks: &BTreeSet<String>) -> (usize, usize) {
    let all = todos(made);
    (all.iter().filter(|todo| ticks.contains(&key(made, **todo))).count(), all.len())
}

/// Where to go after a tick: the next step.
pub(super) fn after(asked: &Asked) -> String {
    if asked.field("then") == "spoiled" {
        return "table#spoiled".to_owned();
    }
    let next: usize = asked.field("next").parse().unwrap_or(1);
    format!("table?step={next}#step")
}

/// The page.
pub(super) fn page(desk: &Desk<'_>) -> Result<Markup, StoreError> {
    let made = desk.made;
    let ticks = desk.room.store().ticks(desk.kept.id)?;
    let all = todos(made);
    let ticked: Vec<bool> = all.iter().map(|todo| ticks.contains(&key(made, *todo))).collect();
    let first_open = ticked.iter().position(|done| !done).unwrap_or(all.len().saturating_sub(1));
    let now = match desk.asked.query("step").parse::<usize>() {
        Ok(number) => number.clamp(1, all.len().max(1)) - 1,
        Err(_) => first_open,
    };
    let left = ticks.contains(LEFT);
    let hand = if left { Hand::Left } else { Hand::Right };
    let to = |number: usize| format!("?step={}#step", number + 1);
    let spoiled = spoiled::section(desk, hand)?;
    let keys: BTreeSet<String> = all.iter().map(|todo| key(made, *todo)).collect();
    let of_step = |tick: &&String| ["sheet-", "stock-", "card-"].iter().any(|kind| tick.starts_with(kind));
    let earlier = ticks.iter().filter(of_step).filter(|tick| !keys.contains(*tick)).count();
    let inside = html! {
        div.lead {
            h1 { (say("table-title", &[])) }
            p.facts { (say("progress", &[("done", ticked.iter().filter(|done| **done).count().into()), ("all", all.len().into())])) }
            @if earlier > 0 { p.earlier { (say("table-earlier", &[("count", earlier.into())])) } }
        }
        @if let Some(todo) = all.get(now) {
            section class=(if left { "now for-left" } else { "now for-right" }) id="step" data-enhance="table" {
                (shown(desk, *todo, hand, &say("table-of", &[("number", (now + 1).into()), ("all", all.len().into())])))
                div.tick {
                    @if now > 0 { a.button.large rel="prev" href=(to(now - 1)) { (say("cut-before", &[])) } }
                    form method="post" action=(format!("/w/{}/tick", desk.kept.id.0)) {
                        input type="hidden" name="step" value=(key(made, *todo));
                        @if ticked.get(now) == Some(&true) {
                            input type="hidden" name="done" value="no";
                            input type="hidden" name="next" value=(now + 1);
                            button.large type="submit" { (say("table-not-done", &[])) }
                        } @else {
                            input type="hidden" name="done" value="yes";
                            input type="hidden" name="next" value=((now + 2).min(all.len()));
                            button.large.main type="submit" data-key=" " { (say("table-done", &[])) }
                        }
                    }
                    @if now + 1 < all.len() { a.button.large rel="next" href=(to(now + 1)) { (say("cut-after", &[])) } }
                }
                div.helps {
                    form method="post" action=(format!("/w/{}/tick", desk.kept.id.0)) {
                        input type="hidden" name="step" value=(LEFT);
                        input type="hidden" name="done" value=(if left { "no" } else { "yes" });
                        input type="hidden" name="next" value=(now + 1);
                        button.quiet type="submit" data-hand { @if left { (say("table-right-hand", &[])) } @else { (say("table-left-hand", &[])) } }
                    }
                    button.quiet type="button" data-read hidden { (say("table-read", &[])) }
                    button.quiet type="button" data-full hidden { (say("table-full", &[])) }
                    p.hint { (say("table-keys", &[])) }
                    p.hint role="status" data-mute hidden { (say("table-mute", &[])) }
                    p.hint data-awake hidden { (say("table-awake", &[])) }
                    p.hint data-sleeps hidden { (say("table-sleeps", &[])) }
                }
            }
            (cautions(desk, *todo))
        } @else {
            p { (say("table-nothing", &[])) }
        }
        (sample::section(desk))
        (spoiled)
        section.all-steps {
            h2 { (say("table-all", &[])) }
            ol {
                @for (number, todo) in all.iter().enumerate() {
                    li class=[ticked.get(number).is_some_and(|done| *done).then_some("done")] {
                        a href=(to(number)) aria-current=[(number == now).then_some("step")] { (short(desk, *todo)) }
                        @if ticked.get(number) == Some(&true) { " " span.mark { (say("table-ticked", &[])) } }
                    }
                }
            }
        }
    };
    Ok(shell::of_project(desk, "table", &inside))
}

/// What to mind at a step: blades where something is cut, heat and vapours where it is stamped, glue where it is laid.
fn cautions(desk: &Desk<'_>, todo: Todo) -> Markup {
    let all = match todo {
        Todo::Cut(..) => vec![
            say("page-caution-blade", &[]),
            say("page-caution-lever", &[]),
            say("page-caution-strips", &[]),
            say("page-caution-stack", &[]),
            say("page-caution-knife", &[]),
        ],
        Todo::Lay(recipe, number) => {
            let part = number.checked_sub(1).and_then(|part| of_recipe(desk.made, recipe)?.parts.get(part));
            let layer = part.and_then(|part| desk.made.project().layer(recipe, part.layer));
            let mut all = Vec::new();
            if layer.is_some_and(|layer| layer.greeting().is_some()) {
                all.extend([say("page-caution-heat", &[]), say("page-caution-solvent", &[])]);
            }
            if layer.is_some_and(|layer| matches!(layer.material, Material::Ribbon { .. })) {
                all.push(say("page-caution-ribbon", &[]));
            }
            all.extend([say("page-caution-glue", &[]), say("page-caution-children", &[])]);
            all
        }
    };
    html! {
        section id="care" {
            h2 { (say("page-cautions-title", &[])) }
            ul.findings { @for caution in all { li.note { (caution) } } }
        }
    }
}

/// What a step is about, in a few words.
fn short(desk: &Desk<'_>, todo: Todo) -> String {
    match todo {
        Todo::Cut(of, step) => {
            let number = (step + 1).into();
            match of {
                CutsOf::Layout(index) => say("table-short-sheet", &[("sheet", (index + 1).into()), ("number", number)]),
                CutsOf::Stock(stock, sheet) => {
                    let plan = desk.made.plan.stocks.get(stock);
                    let name = plan
                        .and_then(|plan| desk.made.project().cardstocks.get(plan.cardstock))
                        .map(|s| s.name.clone());
                    let facts =
                        [("name", name.unwrap_or_default().into()), ("sheet", (sheet + 1).into()), ("number", number)];
                    say("table-short-stock", &facts)
                }
            }
        }
        Todo::Lay(recipe, layer) => {
            let name = desk.made.project().recipes.get(recipe).map(|recipe| recipe.name.clone()).unwrap_or_default();
            say("table-short-card", &[("name", name.into()), ("layer", layer_name(desk, recipe, layer).into())])
        }
    }
}

fn layer_name(desk: &Desk<'_>, recipe: usize, layer: usize) -> String {
    let of_card = of_recipe(desk.made, recipe);
    if of_card.is_some_and(|card| layer > card.parts.len()) {
        return say("stock-inside", &[]);
    }
    let part = layer.checked_sub(1).and_then(|part| of_card?.parts.get(part));
    let found = part.and_then(|part| desk.made.project().layer(recipe, part.layer));
    found.map_or_else(|| say("cards-base", &[]), |layer| layer.name.clone())
}

fn shown(desk: &Desk<'_>, todo: Todo, hand: Hand, of: &str) -> Markup {
    match todo {
        Todo::Cut(cuts, step) => {
            let heading = format!("{of} · {}", short(desk, todo));
            fields::step(desk, cuts, step, hand, &heading).unwrap_or_default()
        }
        Todo::Lay(recipe, layer) => lay(desk, recipe, layer, &format!("{of} · {}", short(desk, todo))),
    }
}

/// True if the base of a recipe is scored at the trimmer: a step before this one has told it.
fn is_scored(made: &Made, recipe: usize) -> bool {
    let base = |cut: &StockCut| {
        (cut.recipe == recipe || cut.also.contains(&recipe)) && cut.layer.is_none() && !cut.scores.is_empty()
    };
    made.plan.stocks.iter().any(|stock| {
        stock.sheets.iter().any(|sheet| {
            sheet.pieces.iter().any(|piece| stock.cuts.get(piece.cut).is_some_and(base))
                && sheet.cut_plan.steps.iter().any(|step| matches!(step, Step::Score(_)))
        })
    })
}

/// The base as it lies open, with its fold and where that is.
fn opened(desk: &Desk<'_>, recipe: &Recipe) -> Markup {
    let (size, scores) = recipe.base_size();
    let at = |length: measure::Length| (length.to_points() * 10.0).round();
    let (wide, high) = (at(size.width), at(size.height));
    let said: Vec<String> = scores.iter().map(|score| fields::length(desk, *score)).collect();
    let alt = say("lay-fold-alt", &[("at", said.join(", ").into())]);
    let room = 400.0;
    html! {
        svg.opened role="img" aria-label=(alt) viewBox=(format!("-20 -{room} {} {}", wide + 360.0, high + room + 20.0)) {
            rect x="0" y="0" width=(wide) height=(high) {}
            @for (score, said) in scores.iter().zip(&said) {
                @let there = at(*score);
                @if recipe.fold == Fold::Top {
                    line x1="0" y1=(there) x2=(wide + 60.0) y2=(there) {}
                    text x=(wide + 80.0) y=(there + 60.0) { (said) }
                } @else {
                    line x1=(there) y1="-60" x2=(there) y2=(high) {}
                    text x=(there) y="-110" text-anchor="middle" { (said) }
                }
            }
        }
    }
}

/// Lay one layer on all cards of a recipe.
fn lay(desk: &Desk<'_>, recipe: usize, layer: usize, of: &str) -> Markup {
    let Some(card) = of_recipe(desk.made, recipe) else { return html! {} };
    let Some(known) = desk.made.project().recipes.get(recipe) else { return html! {} };
    let length = |length| fields::length(desk, length);
    let made = desk.made;
    let count = desk.made.plan.counts.cards_by_recipe.get(recipe).copied().unwrap_or(0);
    let part = layer.checked_sub(1).and_then(|part| card.parts.get(part));
    html! {
        div.at-trimmer {
            figure.drawing {
                @match (layer, known.fold) {
                    (0, Fold::Side | Fold::Top | Fold::Gate | Fold::Zed) => (opened(desk, known)),
                    _ => (fields::card(desk, card, &format!("?layers={layer}"))),
                }
            }
            div.told {
                p.where-it-is { (of) }
                @if let Some(part) = part {
                    h2 { (say("lay-head", &[("layer", layer_name(desk, recipe, layer).into())])) }
                    p { (say("lay-where", &[("left", length(part.rect.x).into()), ("top", length(part.rect.y).into())])) }
                    @if known.layers.get(part.layer).is_some_and(|layer| layer.greeting().is_some()) { p { (say("lay-strip", &[])) } }
                } @else if layer > card.parts.len() {
                    h2 { (say("lay-head", &[("layer", layer_name(desk, recipe, layer).into())])) }
                    p { (say("page-act-inside", &[])) }
                } @else {
                    h2 { (say("lay-base", &[("count", count.into())])) }
                    @let (_, scores) = known.base_size();
                    @let said = if is_scored(made, recipe) { "lay-scored" } else { "lay-score" };
                    @for score in scores { p { (say(said, &[("at", length(score).into())])) } }
                }
                p { (say("lay-count", &[("count", count.into())])) }
            }
        }
    }
}
