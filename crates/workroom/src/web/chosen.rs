//! One card opened on the Batch page: both faces of its pieces, turned over, swapped; what was chosen by hand so far.

use cards::model::{Choice, Decided, Side};
use cards::plan::{Card, CardPart, Lost, PartKind, refusal};
use drawing::sheets::lost_name;
use maud::{Markup, html};
use store::projects::Kept;

use super::answer::{Asked, Desk};
use super::edit::{self, Changed, EditError};
use super::room::Made;
use super::{batch, by_hand, fields, say, shell, spoiled};
use crate::wording;

/// The card that is open.
fn open_card<'a>(desk: &'a Desk<'_>) -> Option<&'a Card> {
    let number: u32 = desk.asked.either("card").parse().ok()?;
    desk.made.plan.cards.iter().find(|card| card.number == number)
}

/// A card that looks for another to change a piece with.
pub(super) struct Swap<'a> {
    card: &'a Card,
    layer: String,
}

/// The swap that is asked for.
pub(super) fn swap<'a>(desk: &'a Desk<'_>) -> Option<Swap<'a>> {
    let layer = desk.asked.query("swap");
    let card = open_card(desk).filter(|_| !layer.is_empty())?;
    Some(Swap { card, layer: layer.to_owned() })
}

/// The opened card with its pieces.
pub(super) fn opened(desk: &Desk<'_>) -> Markup {
    let Some(card) = open_card(desk) else { return html! {} };
    let last = desk.made.plan.cards.len();
    let to = |number: u32| format!("?card={number}#card");
    html! {
        section.one-card id="card" aria-labelledby="card-name" {
            div.lead {
                h2 id="card-name" { (say("layout-card", &[("number", card.number.into())])) " " small { (fields::recipe(desk, card)) ", " (fields::design(desk, card)) } }
                nav.ways aria-label=(say("batch-walk", &[])) {
                    @if card.number > 1 { a.button rel="prev" href=(to(card.number - 1)) { (say("batch-before", &[])) } }
                    @if usize::try_from(card.number).is_ok_and(|number| number < last) { a.button rel="next" href=(to(card.number + 1)) { (say("batch-after", &[])) } }
                    a.button.quiet href="batch" { (say("batch-close", &[])) }
                }
            }
            div.open {
                figure.whole {
                    (fields::card(desk, card, ""))
                    figcaption { a href=(format!("/w/{}/file/card-{}.png", desk.kept.id.0, card.number)) { (say("batch-png", &[])) } }
                }
                div.pieces {
                    @for (index, part) in card.parts.iter().enumerate() {
                        @if matches!(part.kind, PartKind::Patterned { .. }) { (piece(desk, card, index, part)) }
                    }
                }
            }
        }
    }
}

/// A piece: both its faces, and what can be done with it.
fn piece(desk: &Desk<'_>, card: &Card, index: usize, part: &CardPart) -> Markup {
    let PartKind::Patterned { layout, piece, design, side, sheet } = part.kind else { return html! {} };
    let layer = batch::layer_name(desk, card, part);
    let laid = desk.made.plan.layouts.get(layout);
    let lost = Lost::Paper { layout, piece, design };
    let design_of = laid.and_then(|laid| desk.made.project().design(laid.pack, design));
    let letter = design_of.map(|design| design.letter.clone()).unwrap_or_default();
    let address = |side: Side| {
        let (id, number, side) = (desk.kept.id.0, desk.kept.now.number, side.name());
        format!("/w/{id}/{number}/piece-{}-{index}-{side}.svg", card.number)
    };
    let behind = side.other();
    let name = |shows| batch::face(desk, part, shows).map(|face| face.name.clone()).unwrap_or_default();
    // Turned over from the side its sheet was cut on, the pencilled mark is in sight.
    let used = laid.and_then(|laid| laid.sheets.iter().find(|used| used.design == design)).map(|used| used.side);
    let turned = used.is_some_and(|used| used != side);
    html! {
        article.piece-of {
            h3 { (layer) " " small { (say("batch-piece", &[("mark", lost_name(&desk.made.plan, lost).into()), ("sheet", sheet.into()), ("letter", letter.into())])) } }
            div.two-faces {
                figure.shows { img src=(address(side)) alt="" width="160" height="160"; figcaption { (say("batch-shows", &[("face", name(true).into())])) } }
                figure { img src=(address(behind)) alt="" width="160" height="160"; figcaption { (say("batch-behind", &[("face", name(false).into())])) } }
            }
            @if turned { p.hint { (say("batch-rub-out", &[])) } }
            div.ways {
                form method="post" action=(format!("/w/{}/choices", desk.kept.id.0)) {
                    (of_piece(desk, card, &layer))
                    button type="submit" name="turn" value=(behind.name()) { (say("batch-turn", &[])) }
                }
                a.button href=(format!("?card={}&swap={}#swap", card.number, percent(&layer))) { (say("batch-swap", &[])) }
                form method="post" action=(format!("/w/{}/spoil", desk.kept.id.0)) {
                    (shell::seen(desk.kept, "table", "spoiled"))
                    input type="hidden" name="piece" value=(spoiled::key(desk.made, lost));
                    button type="submit" { (say("spoiled-this", &[])) }
                }
            }
        }
    }
}

fn of_piece(desk: &Desk<'_>, card: &Card, layer: &str) -> Markup {
    html! {
        (shell::seen(desk.kept, "batch", "card"))
        input type="hidden" name="card" value=(card.number);
        input type="hidden" name="layer" value=(layer);
    }
}

/// A text as it may stand in an address.
pub(super) fn percent(text: &str) -> String {
    let sign = |byte: u8| {
        if byte.is_ascii_alphanumeric() { char::from(byte).to_string() } else { format!("%{byte:02X}") }
    };
    text.bytes().map(sign).collect()
}

/// All cards, each a button that swaps with it.
pub(super) fn candidates(desk: &Desk<'_>, swap: &Swap<'_>, sheets: &Markup) -> Markup {
    let facts = [("number", swap.card.number.into()), ("layer", (&swap.layer).into())];
    html! {
        form.swapping id="swap" method="post" action=(format!("/w/{}/choices", desk.kept.id.0)) {
            (of_piece(desk, swap.card, &swap.layer))
            h2 { (say("batch-swap-title", &facts)) }
            p { (say("batch-swap-lead", &facts)) " " a href=(format!("?card={}#card", swap.card.number)) { (say("batch-swap-not", &[])) } }
            (sheets)
        }
    }
}

/// A card to swap with, or why not.
pub(super) fn candidate(desk: &Desk<'_>, swap: &Swap<'_>, other: &Card) -> Markup {
    let choice = Choice { card: swap.card.number, layer: swap.layer.clone(), decided: Decided::Swap(other.number) };
    let refused = refusal(&desk.made.plan, &choice).map(|finding| finding.code);
    html! {
        li class=[refused.is_some().then_some("not")] {
            @match refused {
                None => {
                    button.pick type="submit" name="with" value=(other.number) {
                        (fields::card(desk, other, ""))
                        span { (say("batch-swap-with", &[("number", other.number.into())])) }
                    }
                }
                Some(code) => {
                    (fields::card(desk, other, ""))
                    p { (other.number) " " (say("batch-swap-why", &[("why", code.into())])) }
                }
            }
        }
    }
}

/// What was chosen by hand, each to be taken back.
pub(super) fn made_so_far(desk: &Desk<'_>) -> Markup {
    let choices = &desk.made.project().choices;
    html! {
        (fields::findings(desk, |finding| finding.code.starts_with("choice-")))
        @if !choices.is_empty() {
            section.chosen {
                h2 { (say("batch-chosen", &[])) }
                ul {
                    @for (index, choice) in choices.iter().enumerate() {
                        li {
                            (told(desk.made, choice)) " "
                            form.inline method="post" action=(format!("/w/{}/choices", desk.kept.id.0)) {
                                (shell::seen(desk.kept, "batch", ""))
                                button.quiet type="submit" name="drop" value=(index) { (say("batch-take-back", &[])) }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// A choice in words.
fn told(made: &Made, choice: &Choice) -> String {
    let facts = |with: u32, side: &'static str| {
        [("card", choice.card.into()), ("layer", (&choice.layer).into()), ("with", with.into()), ("side", side.into())]
    };
    match choice.decided {
        Decided::Swap(with) => say("edit-swapped", &facts(with, "front")),
        Decided::Shows(side) => say("edit-turned", &facts(0, side.name())),
        Decided::CutFrom(cardstock) => {
            let name = made.project().cardstocks.get(cardstock).map_or("", |stock| stock.name.as_str());
            let facts = [("card", choice.card.into()), ("layer", (&choice.layer).into()), ("name", name.into())];
            say("edit-recolored", &facts)
        }
    }
}

/// What a form changes; or why it cannot.
pub(super) fn change(asked: &Asked, kept: &Kept, made: &Made) -> Result<Result<Changed, EditError>, Markup> {
    let text = &kept.now.text;
    let drop = asked.field("drop");
    if !drop.is_empty() {
        let dropped = drop.parse().map_err(|_| EditError::NoPlace);
        return Ok(dropped.and_then(|index| edit::unchoose(text, index, say("edit-choice-back", &[]))));
    }
    let unclear = || html! { p { (say("batch-no-card", &[])) } };
    let number = |name: &str| asked.field(name).trim().parse::<u32>().map_err(|_| unclear());
    let decided = match asked.field("turn") {
        "front" => Decided::Shows(Side::Front),
        "back" => Decided::Shows(Side::Back),
        _ => Decided::Swap(number("with")?),
    };
    let card = number("card")?;
    let layer = by_hand::layer_of(made, card, |name| asked.field(name).to_owned());
    let choice = Choice { card, layer: layer.unwrap_or_default(), decided };
    if let Some(finding) = refusal(&made.plan, &choice) {
        let worded = wording::finding(&finding, made.project().mark);
        return Err(html! { p { (worded.said) " " span.remedy { (worded.remedy) } } });
    }
    let undoes = made.project().choices.last().is_some_and(|last| takes_back(made, last, &choice));
    Ok(edit::choose(text, &choice, undoes, told(made, &choice)))
}

/// True if doing this after `last` is as if neither had been done.
fn takes_back(made: &Made, last: &Choice, now: &Choice) -> bool {
    if last.layer != now.layer {
        return false;
    }
    match (last.decided, now.decided) {
        (Decided::Swap(with), Decided::Swap(other)) => {
            (last.card, with) == (now.card, other) || (last.card, with) == (other, now.card)
        }
        (Decided::Shows(was), Decided::Shows(is)) => last.card == now.card && was != is && shows_by_itself(made, now),
        _ => false,
    }
}

/// True if the piece shows that side as its sheet is cut.
fn shows_by_itself(made: &Made, choice: &Choice) -> bool {
    let Some(card) = made.plan.cards.iter().find(|card| card.number == choice.card) else { return false };
    let layers = made.project().recipes.get(card.recipe).map(|recipe| &recipe.layers);
    let meant = |part: &&CardPart| {
        layers.and_then(|layers| layers.get(part.layer)).is_some_and(|layer| layer.name == choice.layer)
    };
    let Some(PartKind::Patterned { layout, design, .. }) = card.parts.iter().find(meant).map(|part| &part.kind) else {
        return false;
    };
    let used = made.plan.layouts.get(*layout).and_then(|laid| laid.sheets.iter().find(|used| used.design == *design));
    used.is_some_and(|used| choice.decided == Decided::Shows(used.side))
}
