//! Batch: every finished card with its real part of the print, batch by batch, sheet by sheet; how the prints are shared.

use std::collections::BTreeMap;

use cards::model::Face;
use cards::pairs::{Print, Uneven};
use cards::plan::{BatchShares, Card, CardPart, PartKind};
use maud::{Markup, html};

use super::answer::Desk;
use super::{by_hand, chosen, fields, hand, say, shell};

/// The page.
pub(super) fn page(desk: &Desk<'_>) -> Markup {
    let plan = &desk.made.plan;
    let view = View::of(desk);
    let swap = chosen::swap(desk);
    let several = plan.batches.len() > 1;
    let sheets = html! {
        @for (index, batch) in plan.batches.iter().enumerate() {
            section.batch {
                @let own: Vec<&Card> = plan.cards.iter().filter(|card| card.batch == index).collect();
                @if !batch.name.is_empty() {
                    h2 { (batch.name) " " small { (say("cards-count", &[("count", own.len().into())])) } }
                }
                @if swap.is_none() { (shares(desk, index)) }
                @if view == View::LineUp && swap.is_none() {
                    div.of-sheet.line-up { ol.cards { @for card in &own { (one(desk, view, card)) } } }
                }
                @for ((pack, design, sheet), cards) in by_sheet(desk, &own).into_iter().filter(|_| view != View::LineUp || swap.is_some()) {
                    section.of-sheet {
                        @let name = plan.project.design(pack, design).map(|d| format!("{} {}", d.letter, d.name)).unwrap_or_default();
                        @let said = say("batch-sheet", &[("name", name.into()), ("sheet", sheet.into()), ("count", cards.len().into())]);
                        @if several { h3 { (said) } } @else { h2 { (said) } }
                        ol.cards {
                            @for card in cards {
                                @match &swap {
                                    Some(swap) => { (chosen::candidate(desk, swap, card)) }
                                    None => { (one(desk, view, card)) }
                                }
                            }
                        }
                    }
                }
            }
        }
    };
    let inside = html! {
        div.lead { h1 { (say("batch-title", &[])) } p.facts { (hand::facts(desk.made)) } }
        @if swap.is_none() { (chosen::opened(desk)) }
        @match &swap {
            Some(swap) => { (chosen::candidates(desk, swap, &sheets)) }
            None => {
                (chosen::made_so_far(desk))
                nav.several aria-label=(say("batch-sides", &[])) {
                    @for (which, query, name) in [
                        (View::Up, "?", say("batch-up", &[])),
                        (View::LineUp, "?side=line-up", say("batch-line-up", &[])),
                        (View::Other, "?side=other", say("batch-other", &[])),
                        (View::Both, "?side=both", say("batch-both", &[])),
                    ] {
                        a href=(query) aria-current=[(view == which).then_some("true")] { (name) }
                    }
                }
                p.hint { (say("batch-touch", &[])) }
                @match view {
                    View::Up | View::LineUp => {
                        p.hint.by-hand-only { (say("batch-drag", &[])) }
                        (by_hand::form(desk, if view == View::Up { "up" } else { "line-up" }))
                        div data-enhance="hold" data-ask=(format!("/w/{}/choices", desk.kept.id.0)) data-pictures=(format!("/w/{}/{}", desk.kept.id.0, desk.kept.now.number)) { (sheets) }
                    }
                    View::Other | View::Both => { (sheets) }
                }
                (wishes(desk))
            }
        }
    };
    shell::of_project(desk, "batch", &inside)
}

/// Which faces the cards are shown with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum View {
    /// Those that show.
    Up,
    /// Those that show, small, as many as can be seen at once.
    LineUp,
    /// Those behind.
    Other,
    /// Both, as on a light table.
    Both,
}

impl View {
    fn of(desk: &Desk<'_>) -> View {
        match desk.asked.query("side") {
            "line-up" => View::LineUp,
            "other" => View::Other,
            "both" => View::Both,
            _ => View::Up,
        }
    }
}

/// What follows the page's address to see its cards in a certain way; `None` for a way that there is not.
pub(super) fn side(name: &str) -> Option<&'static str> {
    match name {
        "up" => Some(""),
        "line-up" => Some("?side=line-up"),
        _ => None,
    }
}

fn one(desk: &Desk<'_>, view: View, card: &Card) -> Markup {
    let open = desk.asked.either("card") == card.number.to_string();
    let small = view == View::LineUp;
    let holds = (small || view == View::Up).then(|| by_hand::holds(desk, card));
    let and = if small { "side=line-up&" } else { "" };
    html! {
        li data-card=(card.number) data-holds=[holds] {
            a href=(format!("?{and}card={}#card", card.number)) aria-current=[open.then_some("true")] {
                @match view {
                    View::Up | View::LineUp => { (fields::card(desk, card, "")) }
                    View::Other => { (fields::card(desk, card, "?side=other")) }
                    View::Both => { (lit(desk, card)) }
                }
            }
            @if small { p { (card.number) } } @else { p { (card.number) " " (fields::recipe(desk, card)) @if let Some(from) = partner(desk, card) { br; (from) } } }
        }
    }
}

/// A card with both faces of each of its pieces under it.
fn lit(desk: &Desk<'_>, card: &Card) -> Markup {
    let faces: Vec<String> = card.parts.iter().filter_map(|part| faces_said(desk, card, part)).collect();
    let said = say(
        "batch-lit-alt",
        &[
            ("number", card.number.into()),
            ("recipe", fields::recipe(desk, card).into()),
            ("faces", faces.join("; ").into()),
        ],
    );
    let address = format!("/w/{}/{}/light-{}.svg", desk.kept.id.0, desk.kept.now.number, card.number);
    html! { img.card src=(address) alt=(said) loading="lazy" width="252" height="560"; }
}

fn faces_said(desk: &Desk<'_>, card: &Card, part: &CardPart) -> Option<String> {
    let (shows, behind) = (face(desk, part, true)?, face(desk, part, false)?);
    let layer = layer_name(desk, card, part);
    let facts = [("layer", layer.into()), ("shows", (&shows.name).into()), ("behind", (&behind.name).into())];
    Some(say("batch-faces", &facts))
}

/// The face of a patterned piece that shows, or the one behind it.
pub(super) fn face<'a>(desk: &'a Desk<'_>, part: &CardPart, shows: bool) -> Option<&'a Face> {
    let PartKind::Patterned { layout, design, side, .. } = part.kind else { return None };
    let pack = desk.made.plan.layouts.get(layout)?.pack;
    Some(desk.made.project().design(pack, design)?.face(if shows { side } else { side.other() }))
}

/// The name of a part's layer.
pub(super) fn layer_name(desk: &Desk<'_>, card: &Card, part: &CardPart) -> String {
    desk.made.project().layer(card.recipe, part.layer).map(|layer| layer.name.clone()).unwrap_or_default()
}

/// Cards by the sheet their main piece is cut from: pack, design, which sheet of it.
fn by_sheet<'a>(desk: &Desk<'_>, cards: &[&'a Card]) -> BTreeMap<(usize, usize, u32), Vec<&'a Card>> {
    let mut all: BTreeMap<_, Vec<&Card>> = BTreeMap::new();
    for card in cards {
        let sheet = card.parts.iter().find_map(|part| match part.kind {
            PartKind::Patterned { layout, design, sheet, .. } => {
                let pack = desk.made.plan.layouts.get(layout)?.pack;
                ((pack, design) == (card.pack, card.design)).then_some(sheet)
            }
            _ => None,
        });
        all.entry((card.pack, card.design, sheet.unwrap_or(1).max(1))).or_default().push(card);
    }
    all
}

/// How many cards show each print at each layer, and whether that is even.
fn shares(desk: &Desk<'_>, index: usize) -> Markup {
    let plan = &desk.made.plan;
    let Some(own) = plan.shares.iter().find(|shares| shares.batch == index) else { return html! {} };
    html! {
        details.shares open {
            summary { (say("batch-shares", &[])) }
            @for share in &own.shares {
                @let recipe = plan.project.recipes.get(share.recipe);
                @let layer = plan.project.layer(share.recipe, share.layer);
                div.share {
                    p { strong { (recipe.map_or("", |recipe| &recipe.name)) ", " (layer.map_or("", |layer| &layer.name)) } " " span.even { (even(desk, share)) } }
                    ul.prints { @for (print, cards) in counted(own, share.recipe, share.layer) { (count_of(desk, print, cards)) } }
                }
            }
            @if let Some(kits) = &own.kits {
                p { (say("batch-kits", &[("count", kits.cards.len().into()), ("alike", if kits.dealt.equal { "yes" } else { "no" }.into())])) }
            }
        }
    }
}

fn counted(shares: &BatchShares, recipe: usize, layer: usize) -> Vec<(Print, u32)> {
    let own = shares.shown.iter().filter(|shown| (shown.recipe, shown.layer) == (recipe, layer) && shown.cards > 0);
    own.map(|shown| (shown.print, shown.cards)).collect()
}

fn count_of(desk: &Desk<'_>, print: Print, cards: u32) -> Markup {
    let found = desk.made.project().design(print.pack, print.design);
    let side = print.side.name();
    let (id, number) = (desk.kept.id.0, desk.kept.now.number);
    html! {
        @if let Some(design) = found {
            li {
                img src=(format!("/w/{id}/{number}/face-{}-{}-{side}.svg?size=small", print.pack, print.design)) alt="" loading="lazy" width="40" height="40";
                span { strong { (cards) } " " (design.letter) " " (design.face(print.side).name) }
            }
        }
    }
}

/// Most and fewest of a print, and why they differ.
fn even(desk: &Desk<'_>, share: &cards::pairs::Share) -> String {
    let letter = |print: Print| {
        desk.made.project().design(print.pack, print.design).map(|design| design.letter.clone()).unwrap_or_default()
    };
    let why = match share.reason {
        _ if share.most.1 == share.fewest.1 => "same",
        None => "one",
        Some(Uneven::AllUsed) => "used",
        Some(Uneven::Rule) => "rule",
        Some(Uneven::Partners) => "partners",
    };
    say(
        "batch-even",
        &[
            ("why", why.into()),
            ("most", share.most.1.into()),
            ("of-most", letter(share.most.0).into()),
            ("fewest", share.fewest.1.into()),
            ("of-fewest", letter(share.fewest.0).into()),
            ("apart", (share.most.1 - share.fewest.1).into()),
        ],
    )
}

/// Which print the card's piece from elsewhere is cut from.
fn partner(desk: &Desk<'_>, card: &Card) -> Option<String> {
    card.parts.iter().find_map(|part| match part.kind {
        PartKind::Patterned { layout, design, .. } if design != card.design => {
            let pack = desk.made.plan.layouts.get(layout)?.pack;
            let letter = desk.made.project().design(pack, design)?.letter.clone();
            let layer = layer_name(desk, card, part);
            Some(say("batch-partner", &[("layer", layer.into()), ("letter", letter.into())]))
        }
        _ => None,
    })
}

/// What is wanted, to change: of the project, or of each of its batches.
fn wishes(desk: &Desk<'_>) -> Markup {
    let batches = &desk.made.project().batches;
    let fields = |place: &str| {
        html! {
            (fields::line(desk, &format!("{place}.cards"), &say("field-cards", &[]), &say("hint-as-many", &[])))
            (fields::line(desk, &format!("{place}.overs"), &say("field-overs", &[]), "0"))
            (fields::line(desk, &format!("{place}.set_of"), &say("field-set-of", &[]), "1"))
            (fields::line(desk, &format!("{place}.partners"), &say("field-partners", &[]), "A C, B F"))
        }
    };
    html! {
        section.wishes {
            h2 { (say("batch-wish", &[])) }
            (fields::change(desk, "batch", "", &html! {
                @if batches.is_empty() { fieldset { legend { (say("batch-wish-all", &[])) } (fields("goal")) } }
                @for (index, batch) in batches.iter().enumerate() {
                    fieldset { legend { (batch.name) } (fields(&format!("batch.{index}"))) }
                }
            }))
        }
    }
}
