//! Paper: every design of the packs, both faces, which side is up, which way its print stands.

use cards::model::{Design, Face, Look, Pack, Side, Way};
use drawing::sheets::worded::print_way;
use maud::{Markup, html};

use super::answer::Desk;
use super::{collage, fields, matched, regions, say, shell, straight};
use crate::make::faces::FaceId;
use crate::trade;

/// The page.
pub(super) fn page(desk: &Desk<'_>) -> Markup {
    let project = desk.made.project();
    // Loose sheets follow the packs; only packs have a place of their own in the file.
    let packs = desk.document.get("pack").and_then(toml_edit::Item::as_array_of_tables).map_or(0, |packs| packs.len());
    let inside = html! {
        div.lead {
            h1 { (say("paper-title", &[])) }
            p.facts { (say("paper-lead", &[("designs", project.packs.iter().map(|pack| pack.designs.len()).sum::<usize>().into()), ("sheets", project.packs.iter().map(cards::model::Pack::sheets).fold(0_u32, u32::saturating_add).into())])) }
        }
        @if !desk.made.missing.is_empty() {
            p.caution { (say("paper-missing", &[("names", desk.made.missing.join(", ").into())])) }
        }
        @for (index, pack) in project.packs.iter().enumerate() {
            section.pack {
                h2 { (pack.name) " " small { (fields::length(desk, pack.sheet.width)) " × " (fields::length(desk, pack.sheet.height)) } }
                p.facts { (cost(pack)) }
                div.designs {
                    @for (number, design) in pack.designs.iter().enumerate() { (one(desk, (index, number), design, index < packs)) }
                }
                @if index < packs {
                    details {
                        summary { (say("paper-pack-change", &[("name", (&pack.name).into())])) }
                        (fields::change(desk, "paper", "", &html! {
                            (fields::line(desk, &format!("pack.{index}.name"), &say("field-name", &[]), ""))
                            (fields::line(desk, &format!("pack.{index}.sheet"), &say("new-sheet", &[]), ""))
                            (fields::line(desk, &format!("pack.{index}.price"), &say("field-price", &[]), ""))
                        }))
                    }
                }
            }
        }
        section { ul.findings { li.note { (say("page-caution-paper", &[])) } li.note { (say("page-caution-colors", &[])) } } }
    };
    shell::of_project(desk, "paper", &inside)
}

/// What the pack costs as it is bought, and when that was asked; or that it is not told.
fn cost(pack: &Pack) -> String {
    let sheets = ("sheets", pack.sheets().into());
    match &pack.price {
        Some(price) => {
            let facts = [sheets, ("price", trade::money(price.amount, &price.currency).into())];
            match &price.date {
                Some(date) => {
                    format!("{} {}", say("paper-price", &facts), say("paper-price-date", &[("date", date.into())]))
                }
                None => say("paper-price", &facts),
            }
        }
        None => say("paper-no-price", &[sheets]),
    }
}

fn one(desk: &Desk<'_>, (pack, number): (usize, usize), design: &Design, ours: bool) -> Markup {
    let at = format!("design-{pack}-{number}");
    let place = |key: &str| format!("pack.{pack}.design.{number}.{key}");
    let side = |side: Side, face: &Face| {
        let (word, up) = match side {
            Side::Front => ("front", design.up == Side::Front),
            Side::Back => ("back", design.up == Side::Back),
        };
        html! {
            figure class=(if up { "face up" } else { "face" }) {
                div.print {
                    img src=(format!("/w/{}/{}/face-{pack}-{number}-{word}.svg", desk.kept.id.0, desk.kept.now.number))
                        alt=(say("paper-face-alt", &[("name", (&face.name).into()), ("design", (&design.name).into())])) loading="lazy" width="144" height="144";
                    @match face.way {
                        Way::OneWay => { span.arrow aria-hidden="true" { "↑" } }
                        Way::TwoWays => { span.arrow aria-hidden="true" { "↕" } }
                        Way::Any => {}
                    }
                }
                figcaption {
                    (face.name) @if up { " · " strong { (say("paper-up", &[])) } }
                    br; small { (print_way(face.way)) }
                }
                (colors(desk, (pack, number, side), face))
                @if ours {
                    div.face-acts {
                        @if !up {
                            form method="post" action=(format!("/w/{}/edit", desk.kept.id.0)) {
                                (shell::seen(desk.kept, "paper", &at))
                                button.quiet type="submit" name=(format!("set:{}", place("up"))) value=(word) { (say("paper-show", &[])) }
                            }
                        }
                        (act(desk, &at, (pack, number), word, "arrow", &html! { button.quiet type="submit" { (say("paper-arrow", &[])) } }))
                        @if matches!(&face.look, Look::Picture(name) if super::prints::hash(name).is_some()) {
                            (act(desk, &at, (pack, number), word, "turn", &html! { button.quiet type="submit" { (say("paper-turn", &[])) } }))
                        }
                        details {
                            summary { (say("paper-picture", &[])) }
                            (act(desk, &at, (pack, number), word, "picture", &html! {
                                label.field { span { (say("paper-picture-file", &[("name", (&face.name).into())])) } input type="file" name="file" accept="image/png,image/jpeg,image/webp" required; }
                                button type="submit" { (say("paper-picture-put", &[])) }
                            }))
                            form method="post" action=(format!("/w/{}/photo", desk.kept.id.0)) enctype="multipart/form-data" {
                                (shell::seen(desk.kept, "paper", &at))
                                input type="hidden" name="pack" value=(pack);
                                input type="hidden" name="design" value=(number);
                                input type="hidden" name="side" value=(word);
                                label.field { span { (say("paper-photo-file", &[("name", (&face.name).into())])) } input type="file" name="file" accept="image/png,image/jpeg,image/webp" required; }
                                button type="submit" { (say("paper-photo-put", &[])) }
                            }
                            @if let Look::Picture(name) = &face.look && let Some(address) = straight::again(desk, (pack, number), word, name) {
                                p { a href=(address) { (say("paper-photo-again", &[])) } }
                            }
                        }
                    }
                }
            }
        }
    };
    html! {
        article.design id=(at) {
            h3 { (design.letter) " " (design.name) " " small { (say("paper-copies", &[("use", design.sheets().into()), ("copies", design.copies.into())])) } }
            div.faces { (side(Side::Front, &design.front)) (side(Side::Back, &design.back)) }
            @if ours {
                details {
                    summary { (say("paper-change", &[("name", (&design.name).into())])) }
                    (fields::change(desk, "paper", &at, &html! {
                        (fields::line(desk, &place("name"), &say("field-name", &[]), ""))
                        (fields::line(desk, &place("front.name"), &say("field-front-name", &[]), ""))
                        (fields::line(desk, &place("back.name"), &say("field-back-name", &[]), ""))
                        (fields::line(desk, &place("copies"), &say("field-copies", &[]), "1"))
                        (fields::line(desk, &place("use"), &say("field-use", &[]), &say("hint-all", &[])))
                        (fields::choice(desk, &place("up"), &say("field-up", &[]), &[("", say("paper-front", &[])), ("front", say("paper-front", &[])), ("back", say("paper-back", &[]))]))
                        (fields::choice(desk, &place("front.way"), &say("field-way-front", &[]), &ways()))
                        (fields::choice(desk, &place("back.way"), &say("field-way-back", &[]), &ways()))
                        (fields::choice(desk, &place("front.print"), &say("field-print-front", &[]), &prints()))
                        (fields::choice(desk, &place("back.print"), &say("field-print-back", &[]), &prints()))
                    }))
                }
                @for side in [Side::Front, Side::Back] { (collage::section(desk, pack, number, side, design)) }
                @for side in [Side::Front, Side::Back] { (regions::section(desk, (pack, number), side, design)) }
            }
        }
    }
}

/// The colours of a face by their share; of one that shows, with the way to what goes with them.
fn colors(desk: &Desk<'_>, id: FaceId, face: &Face) -> Markup {
    let (pack, design, side) = id;
    let address = format!("/w/{}/{}/palette-{pack}-{design}-{}.svg", desk.kept.id.0, desk.kept.now.number, side.name());
    let shows = desk.made.faces.contains_key(&id);
    let bar = html! { img.palette src=(address) alt=(say("paper-colors-alt", &[("name", (&face.name).into())])) loading="lazy" width="144" height="12"; };
    html! {
        @if shows { a.colors href=(format!("cardstock#{}", matched::anchor(id))) title=(say("paper-colors", &[])) { (bar) } }
        @else { (bar) }
    }
}

/// A form that changes one face.
fn act(desk: &Desk<'_>, at: &str, (pack, design): (usize, usize), side: &str, what: &str, inside: &Markup) -> Markup {
    html! {
        form method="post" action=(format!("/w/{}/face", desk.kept.id.0)) enctype="multipart/form-data" {
            (shell::seen(desk.kept, "paper", at))
            input type="hidden" name="pack" value=(pack);
            input type="hidden" name="design" value=(design);
            input type="hidden" name="side" value=(side);
            input type="hidden" name="act" value=(what);
            (inside)
        }
    }
}

/// How large the motifs of a print are.
fn prints() -> Vec<(&'static str, String)> {
    vec![
        ("", say("print-untold", &[])),
        ("large", say("print-large", &[])),
        ("medium", say("print-medium", &[])),
        ("small", say("print-small", &[])),
        ("solid", say("print-solid", &[])),
    ]
}

fn ways() -> Vec<(&'static str, String)> {
    vec![
        ("", print_way(Way::Any)),
        ("any", print_way(Way::Any)),
        ("one way", print_way(Way::OneWay)),
        ("two ways", print_way(Way::TwoWays)),
    ]
}
