//! Pieces dragged from card to card on the Batch page: where they can be taken hold of, what would come of each card, and
//! how the two would look. The form that is sent is the same as without a hand: `choices`.

use cards::model::{Choice, Decided};
use cards::plan::{Card, PartKind, refusal, tried};
use drawing::sheets::pieces_in_picture;
use maud::{Markup, html};

use super::answer::{Answer, Asked, Desk};
use super::room::Made;
use super::{batch, say, shell};
use crate::wording;

/// Where a card's pieces can be taken hold of in its picture: `part left top right bottom`, the last on top.
pub(super) fn holds(desk: &Desk<'_>, card: &Card) -> String {
    let places = pieces_in_picture(&desk.made.plan, card).into_iter();
    let written = places.map(|(part, [left, top, right, bottom])| format!("{part} {left} {top} {right} {bottom}"));
    written.collect::<Vec<_>>().join(";")
}

/// The form that a script fills in once a piece was let go.
pub(super) fn form(desk: &Desk<'_>, side: &str) -> Markup {
    html! {
        form id="by-hand" method="post" action=(format!("/w/{}/choices", desk.kept.id.0)) hidden {
            (shell::seen(desk.kept, "batch", ""))
            input type="hidden" name="side" value=(side);
            @for name in ["card", "part", "with"] { input type="hidden" name=(name); }
        }
    }
}

/// The layer that is meant: by its name, or by its place among the card's parts.
pub(super) fn layer_of(made: &Made, card: u32, asked: impl Fn(&str) -> String) -> Option<String> {
    let named = asked("layer");
    if !named.is_empty() {
        return Some(named);
    }
    let card = made.plan.cards.iter().find(|known| known.number == card)?;
    let part = card.parts.get(asked("part").parse::<usize>().ok()?)?;
    Some(made.project().layer(card.recipe, part.layer)?.name.clone())
}

/// The choice that is being thought of: everything but the other card.
fn thought(made: &Made, asked: &Asked) -> Option<(u32, String)> {
    let card = asked.query("card").parse().ok()?;
    Some((card, layer_of(made, card, |name| asked.query(name).to_owned())?))
}

/// What would come of every card if the piece were let go on it: how the piece looks, and a sentence for each.
pub(super) fn told(desk: &Desk<'_>) -> Option<Answer> {
    let (number, layer) = thought(desk.made, desk.asked)?;
    let card = desk.made.plan.cards.iter().find(|card| card.number == number)?;
    let meant = |part: &&cards::plan::CardPart| batch::layer_name(desk, card, part) == layer;
    let part = card.parts.iter().position(|part| meant(&part))?;
    let PartKind::Patterned { side, .. } = card.parts.get(part)?.kind else { return None };
    let about = |with: u32| [("card", number.into()), ("layer", (&layer).into()), ("with", with.into())];
    let picture = format!("/w/{}/{}/piece-{number}-{part}-{}.svg", desk.kept.id.0, desk.kept.now.number, side.name());
    let told = html! {
        p.taken data-picture=(picture) { (say("hold-taken", &about(number))) }
        ul {
            @for other in desk.made.plan.cards.iter().filter(|other| other.number != number) {
                @let choice = Choice { card: number, layer: layer.clone(), decided: Decided::Swap(other.number) };
                @match refusal(&desk.made.plan, &choice) {
                    None => { li.may data-with=(other.number) { (say("hold-may", &about(other.number))) } }
                    Some(finding) => {
                        @let worded = wording::finding(&finding, desk.made.project().mark);
                        li.may-not data-with=(other.number) { (worded.said) " " (worded.remedy) }
                    }
                }
            }
        }
    };
    Some(Answer::page(200, told))
}

/// A card as it would be after the swap that an address tells of; `None` if it tells of none that can be.
pub(super) fn as_it_would_be(made: &Made, asked: &Asked, number: u32) -> Option<Card> {
    let with = asked.query("with").parse().ok()?;
    let (card, layer) = thought(made, asked)?;
    let after = tried(&made.plan, &Choice { card, layer, decided: Decided::Swap(with) }).ok()?;
    after.into_iter().find(|card| card.number == number)
}
