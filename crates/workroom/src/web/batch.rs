//! Batch: every finished card with its real part of the print, sheet by sheet; shares and partners.

use std::collections::BTreeMap;

use cards::plan::{Card, PartKind};
use maud::{Markup, html};

use super::answer::Desk;
use super::{fields, hand, say, shell};

/// The page.
pub(super) fn page(desk: &Desk<'_>) -> Markup {
    let other = desk.asked.query("side") == "other";
    let plan = &desk.made.plan;
    let inside = html! {
        div.lead { h1 { (say("batch-title", &[])) } p.facts { (hand::facts(desk.made)) } }
        nav.several aria-label=(say("batch-sides", &[])) {
            a href="?" aria-current=[(!other).then_some("true")] { (say("batch-up", &[])) }
            a href="?side=other" aria-current=[other.then_some("true")] { (say("batch-other", &[])) }
        }
        table.shares {
            caption { (say("batch-shares", &[])) }
            thead { tr { th scope="col" { (say("batch-recipe", &[])) } th scope="col" { (say("batch-count", &[])) } th scope="col" { (say("batch-prints", &[])) } } }
            tbody {
                @for (index, recipe) in plan.project.recipes.iter().enumerate() {
                    tr { th scope="row" { (recipe.name) } td { (plan.counts.cards_by_recipe.get(index).copied().unwrap_or(0)) } td { (shares(desk, index)) } }
                }
            }
        }
        (fields::change(desk, "batch", "", &html! {
            fieldset {
                legend { (say("batch-wish", &[])) }
                (fields::line(desk, "goal.cards", &say("field-cards", &[]), &say("hint-as-many", &[])))
                (fields::line(desk, "goal.overs", &say("field-overs", &[]), "0"))
                (fields::line(desk, "goal.set_of", &say("field-set-of", &[]), "1"))
                (fields::line(desk, "goal.partners", &say("field-partners", &[]), "A C, B F"))
            }
        }))
        @for ((pack, design, sheet), cards) in by_sheet(desk) {
            section.of-sheet {
                @let name = plan.project.packs.get(pack).and_then(|pack| pack.designs.get(design)).map(|d| format!("{} {}", d.letter, d.name)).unwrap_or_default();
                h2 { (say("batch-sheet", &[("name", name.into()), ("sheet", sheet.into()), ("count", cards.len().into())])) }
                ol.cards {
                    @for card in cards {
                        li { (fields::card(desk, card, if other { "?side=other" } else { "" })) p { (card.number) " " (fields::recipe(desk, card)) @if let Some(from) = partner(desk, card) { br; (from) } } }
                    }
                }
            }
        }
    };
    shell::of_project(desk, "batch", &inside)
}

/// Cards by the sheet their main piece is cut from: pack, design, which sheet of it.
fn by_sheet<'a>(desk: &'a Desk<'_>) -> BTreeMap<(usize, usize, u32), Vec<&'a Card>> {
    let mut all: BTreeMap<_, Vec<&Card>> = BTreeMap::new();
    for card in &desk.made.plan.cards {
        let sheet = card.parts.iter().find_map(|part| match part.kind {
            PartKind::Patterned { design, sheet, .. } if design == card.design => Some(sheet),
            _ => None,
        });
        all.entry((card.pack, card.design, sheet.unwrap_or(1).max(1))).or_default().push(card);
    }
    all
}

/// "A 8, B 8, …".
fn shares(desk: &Desk<'_>, recipe: usize) -> String {
    let mut all: BTreeMap<(usize, usize), u32> = BTreeMap::new();
    for card in desk.made.plan.cards.iter().filter(|card| card.recipe == recipe) {
        *all.entry((card.pack, card.design)).or_default() += 1;
    }
    let letter = |(pack, design): (usize, usize)| {
        desk.made
            .project()
            .packs
            .get(pack)
            .and_then(|pack| pack.designs.get(design))
            .map(|d| d.letter.clone())
            .unwrap_or_default()
    };
    all.into_iter().map(|(of, count)| format!("{}\u{a0}{count}", letter(of))).collect::<Vec<_>>().join(", ")
}

/// Which print the card's piece from elsewhere is cut from.
fn partner(desk: &Desk<'_>, card: &Card) -> Option<String> {
    card.parts.iter().find_map(|part| match part.kind {
        PartKind::Patterned { layout, design, .. } if design != card.design => {
            let pack = desk.made.plan.layouts.get(layout)?.pack;
            let letter = desk.made.project().packs.get(pack)?.designs.get(design)?.letter.clone();
            let layer = desk.made.project().recipes.get(card.recipe)?.layers.get(part.layer)?.name.clone();
            Some(say("batch-partner", &[("layer", layer.into()), ("letter", letter.into())]))
        }
        _ => None,
    })
}
