//! Layout: one sheet and, beside it, the very cards made from it; other layouts, pins, one cut at a time.

use cards::model::Way;
use cards::plan::{Alternative, Card, Layout, LayoutGrade, PartKind, Piece};
use cards::{Finding, Subject};
use drawing::sheets::{CutsOf, Hand, piece_places, sheet_drawing};
use drawing::svg;
use maud::{Markup, PreEscaped, html};
use measure::{Length, Unit};
use store::projects::Kept;

use super::answer::{Asked, Desk, pins_of};
use super::drawings::sheet_size;
use super::edit::{self, Changed, Pin};
use super::room::Made;
use super::{fields, say, shell};
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
    let told = told(desk, layout.waste, layout.effort.settings, layout.effort.cuts, &layout.recipe_counts);
    format!("{told} {}", say("layout-grade", &[("grade", grade.into())]))
}

fn told(desk: &Desk<'_>, waste: i128, settings: u32, cuts: u32, counts: &[u32]) -> String {
    say(
        "layout-sentence",
        &[
            ("left", if waste == 0 { "none" } else { "some" }.into()),
            ("area", area(waste, desk.made.project().unit).into()),
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
    let plan = &desk.made.plan;
    let cut = desk.asked.query("cut").parse::<usize>().ok();
    html! {
        div.sheet-and-cards data-enhance="ties" {
            div.sheet {
                (drawn(desk, index, layout))
                p.hint { (say("layout-hint", &[])) }
            }
            ol.made-of {
                @for card in first_sheet(desk, index) {
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
            @if layout.alternatives.is_empty() { p { (say("layout-no-others", &[])) } }
            ol {
                @for (number, other) in layout.alternatives.iter().enumerate() { (alternative(desk, index, number, other)) }
            }
        }
        section.pins id="pins" {
            h2 { (say("layout-pins", &[])) }
            p { (say("layout-pins-lead", &[])) }
            (pins(desk, index, layout))
            (fields::change(desk, "layout", "", &html! {
                fieldset {
                    legend { (say("layout-wish", &[])) }
                    (fields::line(desk, "goal.cards_per_sheet", &say("field-cards-per-sheet", &[]), &say("hint-as-many", &[])))
                    (fields::line(desk, "mark", &say("field-mark", &[]), "1/8"))
                }
            }))
        }
        @if plan.layouts.is_empty() { p { (say("layout-none", &[])) } }
    }
}

/// The sheet, each piece a link to its card.
fn drawn(desk: &Desk<'_>, index: usize, layout: &Layout) -> Markup {
    let plan = &desk.made.plan;
    let Some(size) = plan.project.packs.get(layout.pack).map(|pack| sheet_size(pack.sheet)) else { return html! {} };
    let address = format!("inline/{}/{}/sheet-{index}", desk.kept.id.0, desk.kept.now.number);
    let text = desk.room.text(&address, || Some(svg::write(&sheet_drawing(plan, &desk.made.faces, index, size)?)));
    let (Some(text), Some(places)) = (text, piece_places(plan, index, size)) else { return html! {} };
    let ties = html! {
        @for (piece, place) in layout.pieces.iter().zip(places) {
            a.piece href=(card_of(desk, index, piece).map_or_else(|| "#pins".to_owned(), |card| format!("#card-{}", card.number)))
                data-piece=(piece.mark) aria-label=(say("layout-piece", &[("mark", (&piece.mark).into()), ("layer", layer(desk, piece).into())])) {
                rect x=(place.x.to_points()) y=(place.y.to_points()) width=(place.size.width.to_points())
                    height=(place.size.height.to_points()) fill="transparent" {}
            }
        }
    };
    let inside = text.trim_end().strip_suffix("</svg>").unwrap_or(&text).to_owned();
    let PreEscaped(inside) = fields::inline(&inside, "s");
    // A picture hides what is in it from a reader of screens; this one holds links.
    let inside = inside.replacen(" role=\"img\"", " role=\"group\"", 1);
    html! { (PreEscaped(inside)) (ties) (PreEscaped("</svg>")) }
}

fn layer(desk: &Desk<'_>, piece: &Piece) -> String {
    let recipe = desk.made.project().recipes.get(piece.recipe);
    recipe.and_then(|recipe| recipe.layers.get(piece.layer)).map(|layer| layer.name.clone()).unwrap_or_default()
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

fn card_of<'a>(desk: &'a Desk<'_>, index: usize, piece: &Piece) -> Option<&'a Card> {
    first_sheet(desk, index)
        .into_iter()
        .find(|card| pieces_of(desk, index, card).split(' ').any(|mark| mark == piece.mark))
}

fn alternative(desk: &Desk<'_>, index: usize, number: usize, other: &Alternative) -> Markup {
    html! {
        li {
            p { (told(desk, other.waste, other.effort.settings, other.effort.cuts, &other.recipe_counts)) }
            form.inline method="post" action=(format!("/w/{}/pins", desk.kept.id.0)) {
                (shell::seen(desk.kept, "layout", ""))
                input type="hidden" name="layout" value=(index);
                input type="hidden" name="take" value=(number);
                button.quiet type="submit" { (say("layout-take", &[])) }
            }
        }
    }
}

/// The pins there are, and a form for one more.
fn pins(desk: &Desk<'_>, index: usize, layout: &Layout) -> Markup {
    let there = pins_of(desk.made);
    let form = |inside: Markup| {
        html! {
            form.pin method="post" action=(format!("/w/{}/pins", desk.kept.id.0)) {
                (shell::seen(desk.kept, "layout", "pins"))
                input type="hidden" name="layout" value=(index);
                (inside)
            }
        }
    };
    let short = |label: String, name: &str, value: String| {
        html! { label.field.short { span { (label) } input type="text" name=(name) value=(value) autocomplete="off"; } }
    };
    html! {
        @if !there.is_empty() {
            ul {
                @for (number, pin) in there.iter().enumerate() {
                    li {
                        (say("layout-pinned", &[("layer", (&pin.layer).into()), ("size", (&pin.size).into()), ("left", (&pin.left).into()), ("top", (&pin.top).into())]))
                        (form(html! { button.quiet type="submit" name="unpin" value=(number) { (say("layout-unpin", &[])) } }))
                    }
                }
            }
            (form(html! { button.quiet type="submit" name="unpin" value="all" { (say("layout-unpin-all", &[])) } }))
        }
        details {
            summary { (say("layout-pin-more", &[])) }
            @let unit = desk.made.project().unit;
            @for piece in layout.pieces.iter().filter(|piece| piece.card.is_some()) {
                (form(html! {
                    fieldset {
                        legend { (piece.mark) " " (layer(desk, piece)) }
                        input type="hidden" name="pin" value=(piece.mark);
                        (short(say("field-left", &[]), "left", wording::exact(piece.rect.x, unit)))
                        (short(say("field-top", &[]), "top", wording::exact(piece.rect.y, unit)))
                        (short(say("field-size", &[]), "size", wording::exact_size(piece.rect.size, unit)))
                        button type="submit" { (say("layout-pin", &[])) }
                    }
                }))
            }
        }
    }
}

/// A piece of a layout as a pin where it lies.
fn pin(made: &Made, piece: &Piece) -> Option<Pin> {
    let (unit, recipe) = (made.project().unit, made.project().recipes.get(piece.recipe)?);
    Some(Pin {
        recipe: recipe.name.clone(),
        layer: recipe.layers.get(piece.layer)?.name.clone(),
        left: wording::exact(piece.rect.x, unit),
        top: wording::exact(piece.rect.y, unit),
        size: wording::exact_size(piece.rect.size, unit),
    })
}

/// The file with a piece pinned or let go, or another layout taken.
pub(super) fn pinned(asked: &Asked, kept: &Kept, made: &Made) -> Option<Changed> {
    let text = &kept.now.text;
    let layout = made.plan.layouts.get(asked.field("layout").parse::<usize>().ok()?)?;
    if let Ok(number) = asked.field("take").parse::<usize>() {
        let other = layout.alternatives.get(number)?;
        let all: Vec<Pin> =
            other.pieces.iter().filter(|piece| piece.card.is_some()).filter_map(|piece| pin(made, piece)).collect();
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
    let mut fresh = pin(made, piece)?;
    for (name, value) in [("left", &mut fresh.left), ("top", &mut fresh.top), ("size", &mut fresh.size)] {
        let typed = asked.field(name).trim();
        if !typed.is_empty() {
            typed.clone_into(value);
        }
    }
    let facts = [("layer", (&fresh.layer).into()), ("left", (&fresh.left).into()), ("top", (&fresh.top).into())];
    let what = say("edit-pinned", &facts);
    all.push(fresh);
    edit::pins(text, &all, what).ok()
}

/// The word for which ways up a print may be used.
pub(super) fn way(way: Way) -> String {
    match way {
        Way::Any => say("way-any", &[]),
        Way::OneWay => say("way-one", &[]),
        Way::TwoWays => say("way-two", &[]),
    }
}
