//! Colours on the page of cardstock: every print with its colours and what goes with it, whether greetings can be read, and
//! one card as eyes with fewer colours may see it.

use cards::model::Side;
use color::{Sight, Srgb, matrix_of};
use maud::{Markup, html};
use words::local;

use super::answer::Desk;
use super::say;
use crate::colors::{Beside, OfPrint, beside, goes, near, read, readable};

/// Whose eyes are shown, with what they are called.
const SIGHTS: [(Sight, &str); 4] = [
    (Sight::Protan, "sight-protan"),
    (Sight::Deutan, "sight-deutan"),
    (Sight::Tritan, "sight-tritan"),
    (Sight::Grey, "sight-grey"),
];

/// All of it.
pub(super) fn section(desk: &Desk<'_>) -> Markup {
    let prints = desk.made.colors();
    if prints.is_empty() {
        return html! {};
    }
    let reads = read(&desk.made.plan);
    let project = desk.made.project();
    html! {
        section.matched id="colors" {
            h2 { (say("matched-title", &[])) }
            p.hint { (say("matched-lead", &[])) }
            @for print in prints { (one(desk, print)) }
            @if !reads.is_empty() {
                h3 { (say("matched-reads", &[])) }
                ul {
                    @for of in &reads {
                        @let words = project.greetings.get(of.greeting).map_or("", |greeting| greeting.words.as_str());
                        li {
                            (swatch(of.ground)) (swatch(of.ink))
                            (say("matched-read", &[("words", words.into()), ("on", (&of.on).into()), ("contrast", tenth(of.contrast).into()), ("how", readable(of.contrast).into())]))
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

/// One print: a bar of its colours, the nearest of what is there, and all of it behind a line to open.
fn one(desk: &Desk<'_>, print: &OfPrint) -> Markup {
    let project = desk.made.project();
    let (pack, design, side) = print.face;
    let Some(of) = project.packs.get(pack).and_then(|pack| pack.designs.get(design)) else { return html! {} };
    let all = beside(&desk.made.plan, print);
    let best = all.iter().min_by(|one, other| one.delta_e.total_cmp(&other.delta_e));
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
    let side = if side == Side::Front { say("face-front", &[]) } else { say("face-back", &[]) };
    let told: Vec<String> =
        print.seen.shares.iter().map(|share| format!("{} {:.0} %", share.color, share.share * 100.0)).collect();
    html! {
        section.print {
            h3 { (of.letter) " · " (of.name) " " small { (side) } }
            svg.palette viewBox="0 0 100 8" preserveAspectRatio="none" role="img" aria-label=(say("matched-palette", &[("colors", told.join(", ").into())])) {
                @for (x, width, color) in &blocks {
                    rect x=(format!("{x:.2}")) y="0" width=(format!("{width:.2}")) height="8" fill=(color.to_string()) {}
                }
            }
            @if let Some(best) = best { p { (sentence(best)) } }
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
    say(
        "matched-best",
        &[("name", of.called().into()), ("delta", tenth(of.delta_e).into()), ("near", near(of.delta_e).into())],
    )
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

/// One card as it is drawn, and as others may see it.
fn eyes(desk: &Desk<'_>) -> Markup {
    let Some(card) = desk.made.plan.cards.first() else { return html! {} };
    let address = format!("/w/{}/{}/card-{}.svg", desk.kept.id.0, desk.kept.now.number, card.number);
    html! {
        details.eyes {
            summary { (say("sight-title", &[])) }
            p.hint { (say("sight-lead", &[])) }
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

/// The twenty numbers of a colour matrix on linear light.
fn values(sight: Sight) -> String {
    let rows = matrix_of(sight).map(|[r, g, b]| format!("{r} {g} {b} 0 0"));
    format!("{} 0 0 0 1 0", rows.join(" "))
}
