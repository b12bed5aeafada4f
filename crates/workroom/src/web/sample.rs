//! Sample first: one card made, its pieces measured, what made the difference, and the rest planned anew.

use cards::model::{Material, Recipe};
use cards::plan::{Card, CardPart, MadeBy, Measured, PartKind, compare, made_by};
use cutting::tree::Axis;
use maud::{Markup, html};
use measure::{Length, Mark, Rect, Size, parse_length};
use store::projects::Kept;

use super::answer::{Asked, Desk};
use super::edit::{self, Changed, EditError};
use super::room::Made;
use super::{fields, hand, say};
use crate::wording::{exact, exact_size};

/// The field of a part's side: `w2` is the width of the third part.
fn field(part: usize, axis: Axis) -> String {
    format!("{}{part}", if axis == Axis::X { "w" } else { "h" })
}

/// A card of each recipe, to be made first.
fn first_of(made: &Made, recipe: usize) -> Option<&Card> {
    hand::one_of_each(made).into_iter().find(|card| card.recipe == recipe)
}

/// Parts that can be measured: everything but ribbon.
fn parts(card: &Card) -> impl Iterator<Item = (usize, &CardPart)> {
    card.parts.iter().enumerate().filter(|(_, part)| !matches!(part.kind, PartKind::Ribbon(..)))
}

fn side(size: Size, axis: Axis) -> Length {
    if axis == Axis::X { size.width } else { size.height }
}

/// What was typed for a side: nothing, a length, or something else.
fn typed(made: &Made, asked: &Asked, part: usize, axis: Axis) -> Option<Result<Length, String>> {
    let text = asked.either(&field(part, axis)).trim();
    (!text.is_empty()).then(|| parse_length(text, Some(made.project().unit)).map_err(|_| text.to_owned()))
}

/// The part of the Table page.
pub(super) fn section(desk: &Desk<'_>) -> Markup {
    let project = desk.made.project();
    let chosen = desk.asked.either("sample");
    let Some((index, recipe, card)) = project
        .recipes
        .iter()
        .enumerate()
        .filter_map(|(index, recipe)| Some((index, recipe, first_of(desk.made, index)?)))
        .find(|(index, ..)| chosen.is_empty() || chosen == index.to_string())
    else {
        return html! {};
    };
    let told: Vec<Markup> = parts(card)
        .flat_map(|(part, of)| [Axis::X, Axis::Y].map(|axis| one(desk, card, part, of, axis)))
        .flatten()
        .collect();
    let answered = !told.is_empty();
    html! {
        section.sample id="sample" {
            h2 { (say("sample-title", &[])) }
            p { (say("sample-lead", &[])) }
            @if project.recipes.len() > 1 {
                nav.several aria-label=(say("sample-which", &[])) {
                    @for (other, recipe) in project.recipes.iter().enumerate() {
                        @if first_of(desk.made, other).is_some() {
                            a href=(format!("?sample={other}#sample")) aria-current=[(other == index).then_some("true")] { (recipe.name) }
                        }
                    }
                }
            }
            @if answered { div role="status" { ul.measured { @for one in &told { (one) } } } }
            form.measures method="get" action="table#sample" {
                input type="hidden" name="sample" value=(index);
                input type="hidden" name="page" value="table";
                input type="hidden" name="at" value="sample";
                figure { (fields::card(desk, card, "")) }
                div.rows {
                    @for (part, of) in parts(card) { (row(desk, recipe, part, of)) }
                    div.ways {
                        button.main type="submit" { (say("sample-compare", &[])) }
                        @if answered && can_plan(desk.made, desk.asked, recipe, card) {
                            button type="submit" formmethod="post" formaction=(format!("/w/{}/sample", desk.kept.id.0)) name="seen" value=(desk.kept.now.number) { (say("sample-plan", &[])) }
                        }
                    }
                }
            }
        }
    }
}

fn row(desk: &Desk<'_>, recipe: &Recipe, part: usize, of: &CardPart) -> Markup {
    let layer = recipe.layers.get(of.layer).map_or("", |layer| &layer.name);
    let value = |axis| desk.asked.either(&field(part, axis)).to_owned();
    let size = of.rect.size;
    html! {
        fieldset {
            legend { (layer) }
            p.hint { (say("sample-planned", &[("width", fields::length(desk, size.width).into()), ("height", fields::length(desk, size.height).into())])) }
            label.field { span { (say("sample-width", &[])) } input type="text" name=(field(part, Axis::X)) value=(value(Axis::X)) autocomplete="off" inputmode="text"; }
            label.field { span { (say("sample-height", &[])) } input type="text" name=(field(part, Axis::Y)) value=(value(Axis::Y)) autocomplete="off" inputmode="text"; }
        }
    }
}

/// What is told of one side that was typed.
fn one(desk: &Desk<'_>, card: &Card, part: usize, of: &CardPart, axis: Axis) -> Option<Markup> {
    let layer = desk.made.project().layer(card.recipe, of.layer)?.name.clone();
    let across = if axis == Axis::X { "width" } else { "height" };
    let measured = match typed(desk.made, desk.asked, part, axis)? {
        Ok(measured) => measured,
        Err(text) => {
            let facts = [("layer", layer.into()), ("side", across.into()), ("typed", text.into())];
            return Some(html! { li.off { (say("sample-unclear", &facts)) } });
        }
    };
    let planned = side(of.rect.size, axis);
    let length = |length| fields::length(desk, length);
    let mut facts = vec![
        ("layer", layer.into()),
        ("side", across.into()),
        ("planned", length(planned).into()),
        ("measured", length(measured).into()),
    ];
    let off = match compare(planned, measured, desk.made.project().unit) {
        Measured::Fine => return Some(html! { li.fine { "✓ " (say("sample-fine", &facts)) } }),
        Measured::Off(off) => off,
    };
    let more = off > Length::ZERO;
    facts.push(("by", length(if more { off } else { -off }).into()));
    facts.push(("more", if more { "yes" } else { "no" }.into()));
    let said = say("sample-off", &facts);
    let advice = match advice(desk.made, card, of, axis) {
        Some((MadeBy::Setting(setting, steps), sheet)) => {
            let steps: Vec<String> = steps.iter().map(usize::to_string).collect();
            say(
                "sample-setting",
                &[
                    ("setting", length(setting).into()),
                    ("corrected", length(setting - off).into()),
                    ("steps", steps.join(", ").into()),
                    ("sheet", sheet.into()),
                ],
            )
        }
        Some((MadeBy::Rest, sheet)) => say("sample-rest", &[("sheet", sheet.into())]),
        None => String::new(),
    };
    Some(html! { li.off { strong { (said) } " " (advice) } })
}

/// What gives a side of a part its length, and the cuts it is on, in words.
fn advice(made: &Made, card: &Card, of: &CardPart, axis: Axis) -> Option<(MadeBy, String)> {
    let lies = |turned: bool| if turned { axis.across() } else { axis };
    if let PartKind::Patterned { layout, piece, .. } = of.kind {
        let laid = made.plan.layouts.get(layout)?;
        let piece = laid.pieces.get(piece)?;
        let found = made_by(&laid.cut_plan, laid.cut_step, piece.rect, lies(piece.turned));
        return Some((found, say("sample-layout", &[("number", (layout + 1).into())])));
    }
    let cardstock = match of.kind {
        PartKind::Cardstock(stock) | PartKind::Strip(stock, _) => stock,
        _ => return None,
    };
    let planned = made.plan.stocks.iter().find(|planned| planned.cardstock == cardstock)?;
    let wanted = planned.cuts.iter().position(|cut| {
        cut.layer == Some(of.layer)
            && cut.size == of.rect.size
            && (cut.recipe == card.recipe || cut.also.contains(&card.recipe))
    })?;
    let (sheet, piece) = planned
        .sheets
        .iter()
        .find_map(|sheet| Some((sheet, sheet.pieces.iter().find(|piece| piece.cut == wanted)?)))?;
    let rect: Rect = piece.rect;
    let name = made.project().cardstocks.get(cardstock)?.name.clone();
    Some((made_by(&sheet.cut_plan, sheet.step, rect, lies(piece.turned)), name))
}

/// Sizes to plan with: index of the layer, and each side as measured where it was.
fn measured(made: &Made, asked: &Asked, recipe: &Recipe, card: &Card) -> Vec<(usize, Size)> {
    let side = |part, axis, planned| match typed(made, asked, part, axis) {
        Some(Ok(measured)) if measured > Length::ZERO => measured,
        _ => planned,
    };
    let size = |(part, of): (usize, &CardPart)| {
        let own = !matches!(recipe.layers.get(of.layer)?.material, Material::Mat { .. });
        let planned = of.rect.size;
        let found = Size::new(side(part, Axis::X, planned.width), side(part, Axis::Y, planned.height));
        (own && found != planned).then_some((of.layer, found))
    };
    parts(card).filter_map(size).collect()
}

fn can_plan(made: &Made, asked: &Asked, recipe: &Recipe, card: &Card) -> bool {
    !measured(made, asked, recipe, card).is_empty()
}

/// The project with the sizes that were measured; `None` if nothing was.
pub(super) fn change(asked: &Asked, kept: &Kept, made: &Made) -> Result<Option<Changed>, EditError> {
    let index: usize = asked.field("sample").parse().unwrap_or(0);
    let project = made.project();
    let (Some(recipe), Some(card)) = (project.recipes.get(index), first_of(made, index)) else { return Ok(None) };
    let text = &kept.now.text;
    let document = edit::document(text)?;
    let mut changes = Vec::new();
    let mut finest = project.mark;
    for (layer, size) in measured(made, asked, recipe, card) {
        let place = format!("recipe.{index}.layer.{layer}");
        let mut set = |key: &str, value: String| changes.push((format!("{place}.{key}"), value));
        if edit::written(&document, &format!("{place}.size")).is_empty() {
            set("width", exact(size.width, project.unit));
            set("height", exact(size.height, project.unit));
            set("prefer", exact_size(size, project.unit));
        } else {
            set("size", exact_size(size, project.unit));
        }
        let holds = |mark: &Mark| mark.holds(size.width) && mark.holds(size.height);
        if !holds(&finest) {
            // The coarsest finer mark that both sides lie on; else the finest there is.
            let finer: Vec<Mark> = Mark::ALL
                .into_iter()
                .filter(|mark| mark.unit() == project.unit && mark.parts() > finest.parts())
                .collect();
            let on_it = finer.iter().copied().filter(holds).min_by_key(|mark| mark.parts());
            finest = on_it.or(finer.into_iter().max_by_key(|mark| mark.parts())).unwrap_or(finest);
        }
    }
    if finest != project.mark {
        changes.push(("mark".to_owned(), exact(finest.step(), project.unit)));
    }
    edit::change(text, &changes)
}

/// Fewer cards than before: why the sizes are not taken.
pub(super) fn fewer(before: u32, now: u32) -> Markup {
    html! { p { (say("sample-fewer", &[("now", now.into()), ("before", before.into())])) } }
}
