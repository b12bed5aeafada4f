//! Spoiled one: the least that has to be cut again, on the Table page, kept until it is taken back.

use std::collections::BTreeSet;
use std::fmt::Debug;

use cards::plan::{Budget, Fix, Lost, Rescue, rescue};
use drawing::sheets::{Hand, lost_name, recut_steps};
use drawing::svg;
use maud::{Markup, PreEscaped, html};
use store::projects::{ProjectId, Spoiled, StoreError};

use super::answer::{Asked, Desk};
use super::chosen::percent;
use super::room::{Made, Room};
use super::{fields, say, shell};
use crate::spoiled::{self, Unknown};

/// Nodes to find what is cut again. Chosen: a few pieces from a few sheets need a hundredth.
const NODES: u64 = 300_000;

/// How a piece is marked that nothing is left for.
const NOTHING: &str = "caution nothing-left";

/// A sum of what a thing looks like, so that a piece of another plan is not taken for it.
fn fold(thing: &impl Debug) -> u64 {
    let text = format!("{thing:?}");
    text.bytes().fold(0xcbf2_9ce4_8422_2325, |sum, byte| (sum ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3))
}

/// The name under which a lost piece is kept.
pub(super) fn key(made: &Made, lost: Lost) -> String {
    let plan = &made.plan;
    match lost {
        Lost::Paper { layout, piece, design } => {
            let laid = plan.layouts.get(layout);
            let sum = fold(&(laid.map(|laid| (&laid.sheets, laid.pieces.get(piece))), lost_name(plan, lost)));
            format!("paper-{layout}-{piece}-{design}-{sum:x}")
        }
        Lost::Stock { stock, cut } => {
            let found = plan.stocks.get(stock);
            let sum = fold(&found.map(|found| (found.cardstock, found.cuts.get(cut).map(|cut| (cut.size, cut.layer)))));
            format!("stock-{stock}-{cut}-{sum:x}")
        }
    }
}

/// The piece of a name, if it is one of this plan.
fn lost_of(made: &Made, name: &str) -> Option<Lost> {
    let parts: Vec<&str> = name.split('-').collect();
    let number = |index: usize| parts.get(index)?.parse::<usize>().ok();
    let lost = match *parts.first()? {
        "paper" => Lost::Paper { layout: number(1)?, piece: number(2)?, design: number(3)? },
        "stock" => Lost::Stock { stock: number(1)?, cut: number(2)? },
        _ => return None,
    };
    (key(made, lost) == name).then_some(lost)
}

/// What takes the place of each spoiled piece, in the order in which they were spoiled.
fn rescues(made: &Made, all: &[Spoiled]) -> Vec<(i64, Lost, Rescue)> {
    let mut earlier: Vec<Fix> = Vec::new();
    let mut found = Vec::new();
    for spoiled in all {
        let Some(lost) = lost_of(made, &spoiled.piece) else { continue };
        let answer = rescue(&made.plan, &[lost], &earlier, &mut Budget::nodes(NODES));
        earlier.extend(answer.fixes.iter().cloned());
        found.push((spoiled.id, lost, answer));
    }
    found
}

/// The tick of a piece that is cut again.
fn again(id: i64) -> String {
    format!("spoiled-{id}")
}

/// True if something spoiled after it is cut again already: what that was cut from depends on this one.
fn followed(all: &[Spoiled], ticks: &BTreeSet<String>, id: i64) -> bool {
    all.iter().any(|later| later.id > id && ticks.contains(&again(later.id)))
}

/// Writes down what a form says was spoiled, or takes one back. If that cannot be: where to look, an address of the
/// Table page that says why beside the form and keeps what was typed.
pub(super) fn change(room: &Room, asked: &Asked, id: ProjectId, made: &Made) -> Result<Option<String>, StoreError> {
    if let Ok(back) = asked.field("back").parse() {
        let mut store = room.store();
        if followed(&store.spoiled(id)?, &store.ticks(id)?, back) {
            return Ok(Some("table?refused=later#spoiled-why".to_owned()));
        }
        store.unspoil(id, back)?;
        store.tick(id, &again(back), None)?;
        return Ok(None);
    }
    let (typed, layout) = (asked.field("mark").trim(), asked.field("layout").trim());
    let chosen = asked.field("piece");
    let found =
        if typed.is_empty() { lost_of(made, chosen).ok_or(Unknown::Nothing) } else { named(made, typed, layout) };
    if let Ok(lost) = found {
        room.store().spoil(id, &key(made, lost), asked.now)?;
        return Ok(None);
    }
    let why = match (typed.is_empty(), chosen.is_empty()) {
        (false, _) => "mark",
        (true, false) => "piece",
        (true, true) => "empty",
    };
    Ok(Some(format!("table?refused={why}&mark={}&layout={}#spoiled-why", percent(typed), percent(layout))))
}

/// The piece that is meant by what was typed, and by the layout that was chosen.
fn named(made: &Made, typed: &str, layout: &str) -> Result<Lost, Unknown> {
    let whole = layout.is_empty() || typed.contains(':');
    spoiled::find(&made.plan, &if whole { typed.to_owned() } else { format!("{layout}:{typed}") })
}

/// Why the last form was refused, by the address it led to.
fn refused(desk: &Desk<'_>) -> Option<String> {
    let typed = desk.asked.query("mark").trim();
    match desk.asked.query("refused") {
        "later" => Some(say("spoiled-followed", &[])),
        "piece" => Some(say("spoiled-other-plan", &[])),
        "empty" => Some(say("spoiled-empty", &[])),
        "mark" => match named(desk.made, typed, desk.asked.query("layout").trim()) {
            Err(Unknown::Several(layouts)) => {
                let layouts: Vec<String> = layouts.iter().map(usize::to_string).collect();
                Some(say("spoiled-several", &[("name", typed.into()), ("layouts", layouts.join(", ").into())]))
            }
            Err(Unknown::Nothing) => Some(say("spoiled-unknown", &[("name", typed.into())])),
            // It is known by now: the plan has changed, or the address was typed.
            Ok(_) => None,
        },
        _ => None,
    }
}

/// The part of the Table page.
pub(super) fn section(desk: &Desk<'_>, hand: Hand) -> Result<Markup, StoreError> {
    let (all, ticks) = {
        let store = desk.room.store();
        (store.spoiled(desk.kept.id)?, store.ticks(desk.kept.id)?)
    };
    let known = all.iter().filter(|spoiled| lost_of(desk.made, &spoiled.piece).is_some()).count();
    let told = told(desk, &all, hand);
    Ok(html! {
        section.spoiled id="spoiled" {
            h2 { (say("spoiled-title", &[])) }
            p { (say("spoiled-lead", &[])) }
            @for (id, markup) in told {
                @let nothing = markup.0.contains(NOTHING);
                article.again {
                    (markup)
                    @let key = again(id);
                    @let done = ticks.contains(&key);
                    div.ways {
                        @if !nothing || done {
                            form method="post" action=(format!("/w/{}/tick", desk.kept.id.0)) {
                                input type="hidden" name="step" value=(key);
                                input type="hidden" name="then" value="spoiled";
                                input type="hidden" name="done" value=(if done { "no" } else { "yes" });
                                button type="submit" class=[(!done).then_some("main")] { @if done { (say("spoiled-not-cut", &[])) } @else { (say("spoiled-cut", &[])) } }
                            }
                        }
                        @if followed(&all, &ticks, id) {
                            p.hint { (say("spoiled-followed", &[])) }
                        } @else {
                            form method="post" action=(format!("/w/{}/spoil", desk.kept.id.0)) {
                                (shell::seen(desk.kept, "table", "spoiled"))
                                button.quiet type="submit" name="back" value=(id) { (say("spoiled-take-back", &[])) }
                            }
                        }
                        @if done { span.mark { "✓ " (say("spoiled-is-cut", &[])) } }
                    }
                }
            }
            @if known < all.len() { p.hint { (say("spoiled-stale", &[("count", (all.len() - known).into())])) } }
            (form(desk))
        }
    })
}

/// Which piece it is: by what is pencilled on it, or by its cardstock.
fn form(desk: &Desk<'_>) -> Markup {
    let plan = &desk.made.plan;
    let example = spoiled::papers(plan).last().map(|lost| lost_name(plan, *lost)).unwrap_or_default();
    let refused = refused(desk);
    html! {
        @if let Some(why) = &refused { p.refused id="spoiled-why" role="alert" { (why) } }
        form.which method="post" action=(format!("/w/{}/spoil", desk.kept.id.0)) {
            (shell::seen(desk.kept, "table", "spoiled"))
            label.field {
                span { (say("spoiled-paper", &[])) }
                input type="text" name="mark" value=(desk.asked.query("mark")) aria-invalid=[refused.is_some().then_some("true")] aria-describedby=[refused.is_some().then_some("spoiled-why")] placeholder=(say("spoiled-hint", &[("name", example.into())])) autocomplete="off" spellcheck="false";
            }
            @if plan.layouts.len() > 1 {
                label.field {
                    span { (say("spoiled-layout", &[])) }
                    select name="layout" {
                        option value="" { "–" }
                        @for number in 1..=plan.layouts.len() { option value=(number) selected[desk.asked.query("layout") == number.to_string()] { (number) } }
                    }
                }
            }
            label.field {
                span { (say("spoiled-stock", &[])) }
                select name="piece" {
                    option value="" { (say("spoiled-none", &[])) }
                    @for lost in spoiled::stocks(plan) { option value=(key(desk.made, lost)) { (drawing::text::with_fractions(&spoiled::name(plan, lost))) } }
                }
            }
            button.main type="submit" { (say("spoiled-say", &[])) }
        }
    }
}

/// Each spoiled piece with what takes its place; worked out once for each revision and each list of them.
fn told(desk: &Desk<'_>, all: &[Spoiled], hand: Hand) -> Vec<(i64, PreEscaped<String>)> {
    let ids: Vec<String> = all.iter().map(|spoiled| spoiled.id.to_string()).collect();
    let address =
        |id: i64| format!("spoiled/{}/{}/{}/{id}/{hand:?}", desk.kept.id.0, desk.kept.now.number, ids.join("-"));
    let known: Vec<i64> = all.iter().filter(|one| lost_of(desk.made, &one.piece).is_some()).map(|one| one.id).collect();
    let mut worked: Option<Vec<(i64, Lost, Rescue)>> = None;
    let mut texts = Vec::new();
    for id in known {
        let made = desk.room.text(&address(id), || {
            let all = worked.get_or_insert_with(|| rescues(desk.made, all));
            let (_, lost, answer) = all.iter().find(|(of, ..)| *of == id)?;
            Some(one(desk, *lost, answer, id, hand).into_string())
        });
        texts.extend(made.map(|text| (id, PreEscaped(text))));
    }
    texts
}

fn one(desk: &Desk<'_>, lost: Lost, answer: &Rescue, id: i64, hand: Hand) -> Markup {
    let plan = &desk.made.plan;
    let set = |text: &str| drawing::text::with_fractions(text);
    html! {
        h3 { (set(&spoiled::name(plan, lost))) }
        @for fix in &answer.fixes {
            p.take { (set(&spoiled::told(plan, fix))) " " @if answer.fewest_sheets && fix.source.is_new_sheet() { (say("spoiled-fewest", &[])) } }
            @let steps = recut_steps(plan, &desk.made.faces, fix, &fields::edition(desk.made, hand));
            @if !steps.is_empty() {
                ol.recut aria-label=(say("spoiled-steps", &[])) {
                    @for (number, step) in steps.iter().enumerate() {
                        li {
                            div.drawing { (fields::inline(&svg::write(&step.drawing), &format!("s{id}-{number}"))) }
                            div.told {
                                h4 { (step.head) }
                                @for sentence in &step.said { p { (sentence) } }
                                @for caution in &step.cautions { p.caution { (caution) } }
                            }
                        }
                    }
                }
            }
        }
        @if !answer.missing.is_empty() { p class=(NOTHING) { (say("spoiled-missing", &[])) } }
    }
}
