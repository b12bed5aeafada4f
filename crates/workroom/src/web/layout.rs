//! Layout: one sheet and, beside it, the very cards made from it; other layouts, pins, one cut at a time.

use std::collections::BTreeSet;

use cards::plan::{Alternative, Budget, Card, Gain, Layout, LayoutGrade, PartKind, Piece, Plan, PrintGain, pins_for};
use cards::{Finding, Subject};
use cutting::Axis;
use drawing::sheets::{CutsOf, Hand};
use drawing::text::with_fractions;
use maud::{Markup, html};
use measure::{Length, Unit};
use store::projects::Kept;

use super::answer::{Asked, Desk, pins_of};
use super::edit::{self, Changed, Pin};
use super::room::Made;
use super::sheet::{as_it_is, drawn, layer, name, small};
use super::{fields, interest, moving, say, shell};
use crate::wording;

/// The page.
pub(super) fn page(desk: &Desk<'_>) -> Markup {
    let plan = &desk.made.plan;
    let chosen = desk.asked.query("sheet").parse::<usize>().unwrap_or(1).clamp(1, plan.layouts.len().max(1)) - 1;
    let inside = html! {
        div.lead { h1 { (say("layout-title", &[])) } @if let Some(layout) = plan.layouts.get(chosen) { p.facts { (sentence(desk, layout)) } } }
        @if plan.layouts.len() > 1 {
            nav.several aria-label=(say("layout-several", &[])) {
                @for number in 1..=plan.layouts.len() {
                    a href=(format!("?sheet={number}")) aria-current=[(number == chosen + 1).then_some("true")] {
                        (say("layout-number", &[("number", number.into())]))
                    }
                }
            }
        }
        (fields::findings(desk, about_paper))
        @if let Some(layout) = plan.layouts.get(chosen) { (one(desk, chosen, layout)) }
        @else { p { (say("layout-none", &[])) } }
    };
    shell::of_project(desk, "layout", &inside)
}

fn about_paper(finding: &Finding) -> bool {
    matches!(finding.subject, Subject::Layout(_) | Subject::Design(_) | Subject::Project)
}

/// A layout in a sentence.
fn sentence(desk: &Desk<'_>, layout: &Layout) -> String {
    let grade = match layout.grade {
        LayoutGrade::ProvenBest => "best",
        LayoutGrade::BestFound { .. } => "found",
        LayoutGrade::Stopped => "stopped",
    };
    let told = told(desk.made, layout.waste, layout.effort.settings, layout.effort.cuts, &layout.recipe_counts);
    format!("{told} {}", say("layout-grade", &[("grade", grade.into())]))
}

/// "Nothing left over, 3 settings, 15 cuts, 8 cards from a sheet."
pub(super) fn told(made: &Made, waste: i128, settings: u32, cuts: u32, counts: &[u32]) -> String {
    say(
        "layout-sentence",
        &[
            ("left", if waste == 0 { "none" } else { "some" }.into()),
            ("area", area(waste, made.project().unit).into()),
            ("settings", settings.into()),
            ("cuts", cuts.into()),
            ("cards", counts.iter().fold(0_u32, |sum, count| sum.saturating_add(*count)).into()),
        ],
    )
}

/// An area in square inches or square centimetres, to a tenth.
fn area(ticks: i128, unit: Unit) -> String {
    let side = match unit {
        Unit::Inch => Length::INCH,
        Unit::Millimetre => Length::mm(10),
    };
    let square = i128::from(side.ticks()) * i128::from(side.ticks());
    let tenths = (ticks * 10 + square / 2) / square;
    let id = if unit == Unit::Inch { "area-inches" } else { "area-centimetres" };
    say(id, &[("area", format!("{}.{}", tenths / 10, tenths % 10).into())])
}

fn one(desk: &Desk<'_>, index: usize, layout: &Layout) -> Markup {
    let cards = first_sheet(desk, index);
    let cut = desk.asked.query("cut").parse::<usize>().ok();
    html! {
        div.sheet-and-cards id="by-hand" data-enhance="lines" data-ask=(format!("/w/{}/move?layout={index}", desk.kept.id.0)) {
            div.sheet {
                (drawn(desk, index, layout))
                p.hint.by-hand { (say("layout-hint-move", &[])) }
                p.moved role="status" {}
                (move_form(desk, index, layout))
                (piece_panels(desk, index, layout, &cards))
            }
            ol.made-of {
                @for card in &cards {
                    li id=(format!("card-{}", card.number)) tabindex="0" data-pieces=(pieces_of(desk, index, card)) {
                        (fields::card(desk, card, ""))
                        p {
                            strong { (say("layout-card", &[("number", card.number.into())])) } " " (fields::recipe(desk, card))
                            br; (say("layout-pieces", &[("marks", pieces_of(desk, index, card).into())]))
                        }
                    }
                }
            }
        }
        (placed(desk, index, layout))
        section.cuts id="cuts" {
            h2 { (say("layout-cuts", &[])) }
            @let all = layout.cut_plan.steps.len();
            @let now = cut.unwrap_or(1).clamp(1, all.max(1));
            @let heading = say("table-of", &[("number", now.into()), ("all", all.into())]);
            @if let Some(step) = fields::step(desk, CutsOf::Layout(index), now - 1, Hand::Right, &heading) { (step) }
            nav.walk aria-label=(say("layout-walk", &[])) {
                @if now > 1 { a.button rel="prev" href=(format!("?sheet={}&cut={}#cuts", index + 1, now - 1)) { (say("cut-before", &[])) } }
                @if now < all { a.button rel="next" href=(format!("?sheet={}&cut={}#cuts", index + 1, now + 1)) { (say("cut-after", &[])) } }
            }
        }
        section.others {
            h2 { (say("layout-others", &[])) }
            @let others = alternatives(desk, index, layout);
            @if others.is_empty() { p { (say("layout-no-others", &[])) } }
            ol { @for other in &others { (other) } }
        }
        section.pins id="pins" {
            h2 { (say("layout-pins", &[])) }
            p { (say("layout-pins-lead", &[])) }
            (pins(desk, index))
            (fields::change(desk, "layout", "", &html! {
                fieldset {
                    legend { (say("layout-wish", &[])) }
                    (fields::line(desk, "goal.cards_per_sheet", &say("field-cards-per-sheet", &[]), &say("hint-as-many", &[])))
                    (fields::line(desk, "mark", &say("field-mark", &[]), "1/8"))
                    (fields::choice(desk, "placing", &say("field-placing", &[]), &[("", say("placing-alike", &[])), ("alike", say("placing-alike", &[])), ("each", say("placing-each", &[])), ("plain", say("placing-plain", &[]))]))
                }
            }))
        }
    }
}

/// What was gained by looking at the prints: one print both ways, and a sentence.
fn placed(desk: &Desk<'_>, index: usize, layout: &Layout) -> Markup {
    let Some(gain) = &layout.gain else { return html! {} };
    let (before, after, all) = gain.whole();
    if !gain.moved {
        let facts = [("whole", before.into()), ("pictures", all.into())];
        let Some((at, print)) = gain
            .prints
            .iter()
            .enumerate()
            .filter(|(_, print)| !print.spots.is_empty())
            .max_by_key(|(at, print)| (print.after.cut, std::cmp::Reverse(*at)))
        else {
            return html! {};
        };
        let tally =
            [("whole", (print.after.whole + print.after.hidden).into()), ("pictures", print.spots.len().into())];
        let address = format!("/w/{}/{}/placed-{index}-{at}.svg", desk.kept.id.0, desk.kept.now.number);
        return html! {
            @if all > 0 {
                section.placed id="placed" {
                    p.hint { (say("layout-placed-stays", &facts)) }
                    details {
                        summary { (say("layout-placed-see", &[])) }
                        (by_print(desk, layout, gain))
                        div.two-ways { figure {
                            figcaption { (print_name(desk, layout, print)) ": " (say("layout-placed-part", &tally)) }
                            img src=(address) alt=(say("placed-alt", &tally)) loading="lazy";
                        } }
                        p.hint { (say("layout-placed-key", &[])) }
                    }
                }
            }
        };
    }
    let facts = [("after", after.into()), ("before", before.into()), ("pictures", all.into())];
    // What another layer covers lies on one piece all the same: the drawing knows no cards.
    let on_one = |tally: cards::plan::Tally| tally.whole + tally.hidden;
    let drawn = |print: usize, plain: &str| {
        format!("/w/{}/{}/placed-{index}-{print}{plain}.svg", desk.kept.id.0, desk.kept.now.number)
    };
    html! {
        section.placed id="placed" {
            h2 { (say("layout-placed", &[])) }
            p { (say("layout-placed-lead", &facts)) " " (say(if gain.proven { "layout-placed-proven" } else { "layout-placed-best" }, &[])) }
            @if let Some((at, print)) = gain.most() {
                @let part = |whole: usize| say("layout-placed-part", &[("whole", whole.into()), ("pictures", print.spots.len().into())]);
                div.two-ways {
                    figure {
                        figcaption { strong { (say("layout-placed-plain", &[])) } ": " (part(on_one(print.before))) }
                        img src=(drawn(at, "-plain")) alt=(say("placed-plain-alt", &[("whole", on_one(print.before).into()), ("pictures", print.spots.len().into())])) loading="lazy";
                    }
                    figure {
                        figcaption { strong { (say("layout-placed-now", &[])) } ": " (part(on_one(print.after))) }
                        img src=(drawn(at, "")) alt=(say("placed-alt", &[("whole", on_one(print.after).into()), ("pictures", print.spots.len().into())])) loading="lazy";
                    }
                }
                p.hint { (say("layout-placed-key", &[])) }
            }
            (by_print(desk, layout, gain))
        }
    }
}

/// What becomes of each print, in numbers; each with the way to what is seen in it.
fn by_print(desk: &Desk<'_>, layout: &Layout, gain: &Gain) -> Markup {
    html! {
        ul.by-print {
            @for print in gain.prints.iter().filter(|print| !print.spots.is_empty()) {
                @let facts = [
                    ("plain", print.before.whole.into()), ("whole", print.after.whole.into()), ("pictures", print.spots.len().into()),
                    ("kept", print.after.kept.into()), ("regions", (print.after.kept + print.after.lost).into()),
                ];
                li {
                    a href=(interest::address((layout.pack, print.design, print.side))) { (print_name(desk, layout, print)) } ": "
                    (say("layout-placed-print", &facts))
                    @if print.after.kept + print.after.lost > 0 { " " (say("layout-placed-regions", &facts)) }
                }
            }
        }
    }
}

fn print_name(desk: &Desk<'_>, layout: &Layout, print: &PrintGain) -> String {
    let design = desk.made.project().design(layout.pack, print.design);
    design.map(|design| format!("{} {}", design.letter, design.face(print.side).name)).unwrap_or_default()
}

/// A line moved by typing where it should lie.
fn move_form(desk: &Desk<'_>, index: usize, layout: &Layout) -> Markup {
    let typed = |name: &str| desk.asked.field(name).to_owned();
    let (_, lines) = as_it_is(layout);
    let chosen = typed("line");
    html! {
        details.by-typing open[desk.refused.is_some() && !typed("line").is_empty()] {
            summary { (say("layout-move", &[])) }
            form.change method="post" action=(format!("/w/{}/move", desk.kept.id.0)) {
                (shell::seen(desk.kept, "layout", ""))
                input type="hidden" name="layout" value=(index);
                fieldset {
                    label.field {
                        span { (say("layout-which", &[])) }
                        select name="line" {
                            @for (number, line) in lines.iter().enumerate() {
                                option value=(number) selected[number.to_string() == chosen] { (name(desk, line)) }
                            }
                        }
                    }
                    label.field.short {
                        span { (say("layout-to", &[])) }
                        input type="text" name="to" value=(typed("to")) autocomplete="off" spellcheck="false";
                    }
                    button type="submit" { (say("layout-move-it", &[])) }
                }
            }
        }
    }
}

/// What each piece is, shown once it is pointed out: its size, its card, and a form to pin it.
fn piece_panels(desk: &Desk<'_>, index: usize, layout: &Layout, cards: &[&Card]) -> Markup {
    let unit = desk.made.project().unit;
    let there = &desk.made.project().goal.pins;
    let short = |label: String, name: &str, value: String| {
        html! { label.field.short { span { (label) } input type="text" name=(name) value=(value) autocomplete="off"; } }
    };
    html! {
        @for piece in &layout.pieces {
            @let pinned = there.iter().position(|pin| (pin.2, pin.3, pin.4) == (piece.rect.x, piece.rect.y, piece.rect.size));
            @let card = cards.iter().find(|card| pieces_of(desk, index, card).split(' ').any(|mark| mark == piece.mark));
            article.one-piece id=(format!("piece-{}", piece.mark)) tabindex="-1" {
                h3 { (say("layout-piece", &[("mark", (&piece.mark).into()), ("layer", layer(desk, piece).into())])) }
                p {
                    (with_fractions(&wording::size(piece.rect.size, desk.made.project().mark))) " · "
                    @if pinned.is_some() { (say("layout-pinned-mark", &[])) " · " }
                    @if let Some(card) = card { a href=(format!("#card-{}", card.number)) { (say("layout-card", &[("number", card.number.into())])) } }
                    @else { (say("layout-spare", &[])) }
                }
                @if let Some(card) = card { div.its-card { (fields::card(desk, card, "")) } }
                @if let Some(number) = pinned {
                    (pin_form(desk, index, &html! { button type="submit" name="unpin" value=(number) { (say("layout-unpin", &[])) } }))
                } @else if piece.card.is_some() {
                    (pin_form(desk, index, &html! {
                        input type="hidden" name="pin" value=(piece.mark);
                        button type="submit" { (say("layout-pin", &[])) }
                        details {
                            summary { (say("layout-pin-more", &[])) }
                            fieldset {
                                (short(say("field-left", &[]), "left", wording::exact(piece.rect.x, unit)))
                                (short(say("field-top", &[]), "top", wording::exact(piece.rect.y, unit)))
                                (short(say("field-size", &[]), "size", wording::exact_size(piece.rect.size, unit)))
                            }
                        }
                    }))
                }
            }
        }
    }
}

fn pin_form(desk: &Desk<'_>, index: usize, inside: &Markup) -> Markup {
    html! {
        form.pin method="post" action=(format!("/w/{}/pins", desk.kept.id.0)) {
            (shell::seen(desk.kept, "layout", ""))
            input type="hidden" name="layout" value=(index);
            (inside)
        }
    }
}

/// "panel 3 in × 4 1/2 in, band 3 in × 1 1/2 in." as they stand on the card, each kind once.
pub(super) fn pieces_told(made: &Made, pieces: &[Piece]) -> String {
    let mut seen = BTreeSet::new();
    let mut told: Vec<String> = Vec::new();
    for piece in pieces {
        let stands = piece.stands();
        if !seen.insert((piece.recipe, piece.layer, stands.width, stands.height)) {
            continue;
        }
        let Some(recipe) = made.project().recipes.get(piece.recipe) else { continue };
        let Some(layer) = recipe.layers.get(piece.layer) else { continue };
        let size = with_fractions(&wording::size(stands, made.project().mark));
        let of = if made.project().recipes.len() > 1 { format!(" ({})", recipe.name) } else { String::new() };
        told.push(format!("{}{of} {size}", layer.name));
    }
    format!("{}.", told.join(", "))
}

/// The cards that the first sheet of the layout's first design makes, as far as each has a piece of it.
fn first_sheet<'a>(desk: &'a Desk<'_>, index: usize) -> Vec<&'a Card> {
    let plan = &desk.made.plan;
    let Some(first) = plan.layouts.get(index).and_then(|layout| layout.sheets.first()) else { return Vec::new() };
    let of_it = |card: &&Card| {
        card.parts.iter().any(|part| {
            matches!(part.kind, PartKind::Patterned { layout, design, sheet, .. }
                if layout == index && design == first.design && sheet <= 1)
        })
    };
    plan.cards.iter().filter(of_it).take(40).collect()
}

/// Marks of the pieces of this layout's first sheet that lie on a card.
fn pieces_of(desk: &Desk<'_>, index: usize, card: &Card) -> String {
    let Some(layout) = desk.made.plan.layouts.get(index) else { return String::new() };
    let first = layout.sheets.first().map(|used| used.design);
    let marks = card.parts.iter().filter_map(|part| match part.kind {
        PartKind::Patterned { layout: of, piece, design, sheet, .. }
            if of == index && Some(design) == first && sheet <= 1 =>
        {
            layout.pieces.get(piece).map(|piece| piece.mark.clone())
        }
        _ => None,
    });
    marks.collect::<Vec<_>>().join(" ")
}

/// The other layouts, each with what sets it apart; two that could not be told apart are one.
fn alternatives(desk: &Desk<'_>, index: usize, layout: &Layout) -> Vec<Markup> {
    let made = desk.made;
    let first =
        |waste, effort: cutting::steps::Effort, counts: &[u32]| told(made, waste, effort.settings, effort.cuts, counts);
    let mut known = vec![(
        first(layout.waste, layout.effort, &layout.recipe_counts),
        pieces_told(made, &layout.pieces),
        stops(made, layout, &layout.tree),
    )];
    let mut shown = Vec::new();
    for (number, other) in layout.alternatives.iter().enumerate() {
        let sentence = first(other.waste, other.effort, &other.recipe_counts);
        let (pieces, stops) = (pieces_told(made, &other.pieces), stops(made, layout, &other.tree));
        if known.contains(&(sentence.clone(), pieces.clone(), stops.clone())) {
            continue;
        }
        let apart = known.iter().all(|(_, other, _)| *other != pieces);
        known.push((sentence.clone(), pieces.clone(), stops.clone()));
        shown.push(html! {
            li {
                (small(desk, layout, other))
                div {
                    p { strong { (first_up(&pieces)) } }
                    @if !apart { p { (stops) } }
                    p { (sentence) @if made.project().recipes.len() > 1 { " " (counts(made, &other.recipe_counts)) } }
                    form.inline method="post" action=(format!("/w/{}/pins", desk.kept.id.0)) {
                        (shell::seen(desk.kept, "layout", ""))
                        input type="hidden" name="layout" value=(index);
                        input type="hidden" name="take" value=(number);
                        button type="submit" { (say("layout-take", &[])) }
                    }
                }
            }
        });
    }
    shown
}

fn first_up(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// "5 Whole, 3 Banded".
fn counts(made: &Made, counts: &[u32]) -> String {
    let some = made.project().recipes.iter().zip(counts).filter(|(_, count)| **count > 0);
    let each: Vec<String> = some.map(|(recipe, count)| format!("{count} {}", recipe.name)).collect();
    format!("{}.", each.join(", "))
}

/// Where the cuts lie: "Upright at 3, 6 and 9 in; level at 4 1/2 in."
fn stops(made: &Made, layout: &Layout, tree: &cutting::Tree) -> String {
    let lines = cards::plan::cut_lines(&Layout { tree: tree.clone(), ..layout.clone() });
    let places = |axis: Axis| {
        let at: BTreeSet<Length> = lines.iter().filter(|line| line.axis == axis).map(|line| line.at).collect();
        let told: Vec<String> =
            at.into_iter().map(|at| with_fractions(&wording::length(at, made.project().mark))).collect();
        if told.is_empty() { say("edit-nothing", &[]) } else { told.join(", ") }
    };
    say("layout-stops", &[("upright", places(Axis::X).into()), ("level", places(Axis::Y).into())])
}

/// The pins there are.
fn pins(desk: &Desk<'_>, index: usize) -> Markup {
    let there = pins_of(desk.made);
    html! {
        @if there.is_empty() { p { (say("layout-no-pins", &[])) } }
        @else {
            ul {
                @for (number, pin) in there.iter().enumerate() {
                    li {
                        (say("layout-pinned", &[("layer", (&pin.layer).into()), ("size", (&pin.size).into()), ("left", (&pin.left).into()), ("top", (&pin.top).into())]))
                        (pin_form(desk, index, &html! { button.quiet type="submit" name="unpin" value=(number) { (say("layout-unpin", &[])) } }))
                    }
                }
            }
            (pin_form(desk, index, &html! { button.quiet type="submit" name="unpin" value="all" { (say("layout-unpin-all", &[])) } }))
        }
    }
}

/// A piece of a layout as a pin where it lies.
fn pin(made: &Made, piece: &Piece) -> Option<Pin> {
    let recipe = made.project().recipes.get(piece.recipe)?.name.clone();
    let layer = made.project().layer(piece.recipe, piece.layer)?.name.clone();
    Some(moving::written(made, &(recipe, layer, piece.rect.x, piece.rect.y, piece.rect.size)))
}

/// The fewest pins, the piece's and those there are among them, with which the layout stays as it is.
fn as_it_lies(made: &Made, index: usize, piece: &Piece) -> Option<Vec<Pin>> {
    let laid = made.plan.layouts.get(index)?;
    let recipe = made.project().recipes.get(piece.recipe)?.name.clone();
    let layer = made.project().layer(piece.recipe, piece.layer)?.name.clone();
    let mut plan = made.plan.clone();
    plan.project.goal.pins.push((recipe, layer, piece.rect.x, piece.rect.y, piece.rect.size));
    let now = Alternative {
        tree: laid.tree.clone(),
        pieces: laid.pieces.clone(),
        effort: laid.effort,
        waste: laid.waste,
        recipe_counts: laid.recipe_counts.clone(),
    };
    fewest(made, &plan, index, &now)
}

/// The fewest pins with which a layout is chosen, as they are written.
fn fewest(made: &Made, plan: &Plan, index: usize, wanted: &Alternative) -> Option<Vec<Pin>> {
    let pins = pins_for(plan, index, wanted, &mut Budget::nodes(10_000_000))?;
    Some(pins.iter().map(|pin| moving::written(made, pin)).collect())
}

fn made_index(asked: &Asked) -> Option<usize> {
    asked.field("layout").parse().ok()
}

/// The file with a piece pinned or let go, or another layout taken.
pub(super) fn pinned(asked: &Asked, kept: &Kept, made: &Made) -> Option<Changed> {
    let text = &kept.now.text;
    let layout = made.plan.layouts.get(made_index(asked)?)?;
    if let Ok(number) = asked.field("take").parse::<usize>() {
        let other = layout.alternatives.get(number)?;
        let all = fewest(made, &made.plan, made_index(asked)?, other)?;
        return edit::pins(text, &all, say("edit-taken", &[])).ok();
    }
    let mut all = pins_of(made);
    match asked.field("unpin") {
        "" => {}
        "all" => return edit::pins(text, &[], say("edit-unpinned", &[])).ok(),
        number => {
            let number: usize = number.parse().ok().filter(|number| *number < all.len())?;
            all.remove(number);
            return edit::pins(text, &all, say("edit-unpinned", &[])).ok();
        }
    }
    let piece = layout.pieces.iter().find(|piece| piece.mark == asked.field("pin"))?;
    let here = pin(made, piece)?;
    let mut fresh = here.clone();
    for (name, value) in [("left", &mut fresh.left), ("top", &mut fresh.top), ("size", &mut fresh.size)] {
        let typed = asked.field(name).trim();
        if !typed.is_empty() {
            typed.clone_into(value);
        }
    }
    let facts = [("layer", (&fresh.layer).into()), ("left", (&fresh.left).into()), ("top", (&fresh.top).into())];
    let what = say("edit-pinned", &facts);
    // Pinned where it lies already, it changes nothing: with it go as few others as that takes.
    if fresh == here {
        all = as_it_lies(made, made_index(asked)?, piece).unwrap_or(all);
    }
    if !all.contains(&fresh) {
        all.push(fresh);
    }
    edit::pins(text, &all, what).ok()
}
