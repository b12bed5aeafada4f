//! Colours on the page of cardstock: every print with its colours and what goes with it, whether greetings can be read, and
//! one card as eyes with fewer colours may see it.

use std::collections::BTreeSet;

use cards::model::Side;
use cards::plan::Card;
use color::{Sight, Srgb, matrix_of};
use maud::{Markup, html};
use words::local;

use super::answer::Desk;
use super::{fields, say};
use crate::colors::{Beside, OfPrint, OnShelf, Stuff, beside, goes, near, nearest_of_kinds, on_shelf, read, readable};
use crate::make::faces::FaceId;

/// Whose eyes are shown, with what they are called.
const SIGHTS: [(Sight, &str); 4] = [
    (Sight::Protan, "sight-protan"),
    (Sight::Deutan, "sight-deutan"),
    (Sight::Tritan, "sight-tritan"),
    (Sight::Grey, "sight-grey"),
];

/// Most cards that are offered to be looked at. `Chosen:` a list longer than this is no choice.
const MOST_CHOSEN: usize = 60;

/// All of it.
pub(super) fn section(desk: &Desk<'_>) -> Markup {
    let prints = desk.made.colors();
    if prints.is_empty() {
        return html! {};
    }
    let reads = read(&desk.made.plan, &desk.made.faces);
    let project = desk.made.project();
    let shelf = desk.room.store().shelf().map(|shelf| on_shelf(&shelf)).unwrap_or_default();
    html! {
        section.matched id="colors" {
            h2 { (say("matched-title", &[])) }
            p.hint { (say("matched-lead", &[])) }
            @for print in prints { (one(desk, print, &shelf)) }
            @if !reads.is_empty() {
                h3 { (say("matched-reads", &[])) }
                ul {
                    @for of in &reads {
                        @let words = project.greetings.get(of.greeting).map_or("", |greeting| greeting.words.as_str());
                        li {
                            (swatch(of.ground)) (swatch(of.ink))
                            (say("matched-read", &[("words", words.into()), ("on", of.told_on().into()), ("contrast", tenth(of.contrast).into()), ("how", readable(of.contrast).into())]))
                        }
                    }
                }
            }
            (eyes(desk))
        }
    }
}

fn tenth(number: f64) -> String {
    local(&format!("{number:.1}"))
}

fn swatch(color: Srgb) -> Markup {
    html! {
        svg.swatch viewBox="0 0 20 20" width="24" height="24" aria-hidden="true" {
            rect x="1" y="1" width="18" height="18" fill=(color.to_string()) stroke="currentColor" stroke-width="1" {}
        }
    }
}

/// A print's colours as a bar, by their share.
pub(super) fn palette(print: &OfPrint) -> Markup {
    let mut from = 0.0;
    let blocks: Vec<(f64, f64, Srgb)> = print
        .seen
        .shares
        .iter()
        .map(|share| {
            let block = (from, share.share * 100.0, share.color);
            from += block.1;
            block
        })
        .collect();
    let told: Vec<String> =
        print.seen.shares.iter().map(|share| format!("{} {:.0} %", share.color, share.share * 100.0)).collect();
    html! {
        svg.palette viewBox="0 0 100 8" preserveAspectRatio="none" role="img" aria-label=(say("matched-palette", &[("colors", told.join(", ").into())])) {
            @for (x, width, color) in &blocks {
                rect x=(format!("{x:.2}")) y="0" width=(format!("{width:.2}")) height="8" fill=(color.to_string()) {}
            }
        }
    }
}

/// Where a print's colours stand on the page of cardstock.
pub(super) fn anchor((pack, design, side): FaceId) -> String {
    format!("colors-{pack}-{design}-{}", side.name())
}

/// One print: a bar of its colours, the nearest of what is there, and all of it behind a line to open.
fn one(desk: &Desk<'_>, print: &OfPrint, shelf: &[OnShelf]) -> Markup {
    let project = desk.made.project();
    let (pack, design, side) = print.face;
    let Some(of) = project.packs.get(pack).and_then(|pack| pack.designs.get(design)) else { return html! {} };
    let all = beside(&desk.made.plan, print, shelf);
    let side = if side == Side::Front { say("face-front", &[]) } else { say("face-back", &[]) };
    html! {
        section.print id=(anchor(print.face)) {
            h3 { (of.letter) " · " (of.name) " " small { (side) } }
            (palette(print))
            ul.nearest { @for best in nearest_of_kinds(&all) { li { (swatch(best.color)) (sentence(best)) } } }
            details {
                summary { (say("matched-all", &[])) }
                div.wide { table.beside {
                    thead { tr {
                        th scope="col" { (say("matched-what", &[])) }
                        th scope="col" { (say("matched-nearest", &[])) }
                        th scope="col" { "ΔE₀₀" }
                        th scope="col" { (say("matched-how", &[])) }
                        th scope="col" { (say("matched-laid", &[])) }
                    } }
                    tbody { @for of in &all { (row(of)) } }
                } }
                @for greeting in &project.greetings {
                    @if let Some(worst) = Srgb::from_hex(&greeting.ink).and_then(|ink| print.seen.worst(ink)) {
                        p { (say("matched-straight", &[("words", (&greeting.words).into()), ("contrast", tenth(worst).into()), ("how", readable(worst).into())])) }
                    }
                }
            }
        }
    }
}

fn sentence(of: &Beside) -> String {
    let facts = [("name", (&of.name).into()), ("delta", tenth(of.delta_e).into()), ("near", near(of.delta_e).into())];
    let said = say(of.stuff.nearest_name(), &facts);
    if matches!(of.stuff, Stuff::Shelf(..)) { say("matched-on-shelf", &[("said", said.into())]) } else { said }
}

fn row(of: &Beside) -> Markup {
    html! {
        tr {
            th scope="row" { (swatch(of.color)) (of.called()) }
            td { (swatch(of.nearest)) (of.nearest.to_string()) }
            td { (tenth(of.delta_e)) ", " (near(of.delta_e)) }
            td { (goes(of.pairing)) }
            td { @if of.cards > 0 { (say("count-cards", &[("count", of.cards.into())])) } @else { "–" } }
        }
    }
}

/// One card as it is drawn, and as others may see it: the first one, or whichever is asked for.
fn eyes(desk: &Desk<'_>) -> Markup {
    let cards = &desk.made.plan.cards;
    let asked = desk.asked.query("eyes");
    let chosen = asked.parse::<u32>().ok().and_then(|number| cards.iter().find(|card| card.number == number));
    let Some(card) = chosen.or(cards.first()) else { return html! {} };
    let address = format!("/w/{}/{}/card-{}.svg", desk.kept.id.0, desk.kept.now.number, card.number);
    // The first card of each recipe and design: the others look much like one of them.
    let mut kinds = BTreeSet::new();
    let first: Vec<_> =
        cards.iter().filter(|of| kinds.insert((of.recipe, of.pack, of.design))).take(MOST_CHOSEN).collect();
    html! {
        details.eyes id="eyes" open[!asked.is_empty()] {
            summary { (say("sight-title", &[])) }
            p.hint { (say("sight-lead", &[])) }
            form.inline.which method="get" action="cardstock#eyes" {
                label.field {
                    span { (say("sight-which", &[])) }
                    select name="eyes" {
                        @if !first.iter().any(|of| of.number == card.number) { (choice(desk, card, true)) }
                        @for of in &first { (choice(desk, of, of.number == card.number)) }
                    }
                }
                button type="submit" { (say("sight-show", &[])) }
            }
            div.views {
                figure {
                    svg viewBox="0 0 100 130" role="img" aria-label=(say("sight-own-alt", &[("number", card.number.into())])) {
                        image href=(address) width="100" height="130" {}
                    }
                    figcaption { (say("sight-own", &[])) }
                }
                @for (sight, name) in SIGHTS {
                    figure {
                        svg viewBox="0 0 100 130" role="img" aria-label=(say("sight-alt", &[("number", card.number.into()), ("eyes", say(name, &[]).into())])) {
                            filter id=(name) x="0" y="0" width="1" height="1" { feColorMatrix type="matrix" values=(values(sight)) {} }
                            image href=(address) width="100" height="130" filter=(format!("url(#{name})")) {}
                        }
                        figcaption { (say(name, &[])) }
                    }
                }
            }
        }
    }
}

fn choice(desk: &Desk<'_>, card: &Card, chosen: bool) -> Markup {
    let said = say(
        "sight-card",
        &[
            ("number", card.number.into()),
            ("recipe", fields::recipe(desk, card).into()),
            ("design", fields::design(desk, card).into()),
        ],
    );
    html! { option value=(card.number) selected[chosen] { (said) } }
}

/// The twenty numbers of a colour matrix on linear light.
fn values(sight: Sight) -> String {
    let rows = matrix_of(sight).map(|[r, g, b]| format!("{r} {g} {b} 0 0"));
    format!("{} 0 0 0 1 0", rows.join(" "))
}
