//! Cards: each recipe as the finished card, then layer on layer, with its measures to change.

use ::cards::Subject;
use ::cards::model::{Layer, Material, Recipe};
use ::cards::plan::Card;
use maud::{Markup, html};
use measure::Length;

use super::answer::Desk;
use super::{fields, hand, hold, layers, pulled, recipes, say, shell};

/// The page.
pub(super) fn page(desk: &Desk<'_>) -> Markup {
    let project = desk.made.project();
    let inside = html! {
        div.lead {
            h1 { (say("cards-title", &[])) }
            p.facts { (hand::facts(desk.made)) }
        }
        (fields::findings(desk, |finding| matches!(finding.subject, Subject::Recipe(_) | Subject::Envelope(_))))
        @for dark in crate::trade::dark_bases(&desk.made.plan) { p.caution { (dark) } }
        @for (index, one) in project.recipes.iter().enumerate() {
            (recipe(desk, index, one))
        }
        (new_recipe(desk))
        section {
            ul.findings {
                @for caution in [say("class-caution-parts", &[]), say("cards-caution-magnets", &[]), say("page-caution-ribbon", &[]), say("page-caution-sample", &[])] { li.note { (caution) } }
            }
        }
    };
    shell::of_project(desk, "cards", &inside)
}

fn recipe(desk: &Desk<'_>, index: usize, recipe: &Recipe) -> Markup {
    let project = desk.made.project();
    let mine: Vec<&Card> = desk.made.plan.cards.iter().filter(|card| card.recipe == index).collect();
    let kinds: Vec<&Card> = hand::one_of_each(desk.made).into_iter().filter(|card| card.recipe == index).collect();
    let at = format!("recipe-{}", index + 1);
    let place = |key: &str| format!("recipe.{index}.{key}");
    let (base, scores) = recipe.base_size();
    let length = |length: Length| fields::length(desk, length);
    html! {
        section.recipe id=(at) aria-labelledby=(format!("{at}-name")) {
            h2 id=(format!("{at}-name")) { (recipe.name) " " small { (say("cards-count", &[("count", mine.len().into())])) } }
            @if kinds.is_empty() { p.hint { (say("recipe-unused", &[])) } }
            @else { div.finished {
                @for card in kinds.iter().take(6) { figure { (fields::card(desk, card, "")) figcaption { (fields::design(desk, card)) } } }
            } }
            @if let Some((base_alone, layers_alone)) = pulled::apart(desk, index) {
                h3 { (say("cards-apart", &[])) }
                ol.apart {
                    li {
                        (base_alone)
                        p { strong { (say("cards-base", &[])) } }
                        p { (length(base.width)) " × " (length(base.height)) }
                        @if !scores.is_empty() {
                            p { (say("cards-score", &[("at", scores.iter().map(|s| length(*s)).collect::<Vec<_>>().join(", ").into())])) }
                        }
                    }
                    @for (layer, (drawn, size)) in recipe.layers.iter().zip(layers_alone) {
                        li {
                            (drawn)
                            p { strong { (layer.name) } }
                            p { (length(size.width)) " × " (length(size.height)) }
                        }
                    }
                    @if let Some((size, cardstock)) = recipe.inside {
                        li {
                            p { strong { (say("stock-inside", &[])) } }
                            p { (length(size.width)) " × " (length(size.height)) }
                            p { (project.cardstocks.get(cardstock).map_or("", |stock| stock.name.as_str())) }
                        }
                    }
                }
            }
            (hold::section(desk, index, recipe))
            div.ways {
                (act(desk, index, None, "copy", &say("recipe-copy", &[]), &say("recipe-copy-of", &[("name", (&recipe.name).into())])))
                @if desk.made.project().recipes.len() > 1 { (act(desk, index, None, "delete", &say("recipe-delete", &[]), &say("recipe-delete-of", &[("name", (&recipe.name).into())]))) }
            }
            details open[desk.refused.is_some()] {
                summary { (say("cards-change", &[("name", (&recipe.name).into())])) }
                (fields::change(desk, "cards", &at, &html! {
                    fieldset {
                        legend { (say("cards-whole", &[])) }
                        (fields::line(desk, &place("name"), &say("field-name", &[]), ""))
                        (fields::line(desk, &place("format"), &say("field-format", &[]), ""))
                        (fields::choice(desk, &place("fold"), &say("field-fold", &[]), &folds()))
                        (fields::choice(desk, &place("base"), &say("field-base", &[]), &stocks(desk)))
                        (fields::line(desk, &place("inside.size"), &say("field-inside", &[]), ""))
                        (fields::choice(desk, &place("inside.cardstock"), &say("field-inside-of", &[]), &stocks(desk)))
                    }
                    @for (number, layer) in recipe.layers.iter().enumerate() {
                        fieldset {
                            legend { (layer.name) }
                            (layer_fields(desk, &format!("recipe.{index}.layer.{number}"), layer))
                        }
                    }
                }))
            }
            details {
                summary { (say("recipe-order", &[])) }
                (layers::form(desk, index))
                ol.order {
                    @for (number, layer) in recipe.layers.iter().enumerate().rev() {
                        @let of = |id: &str| say(id, &[("layer", (&layer.name).into())]);
                        li {
                            strong { (layer.name) } " "
                            @if number + 1 < recipe.layers.len() { (act(desk, index, Some(number), "layer-up", &say("layer-up", &[]), &of("layer-up-of"))) }
                            @if number > 0 { (act(desk, index, Some(number), "layer-down", &say("layer-down", &[]), &of("layer-down-of"))) }
                            @if recipe.layers.len() > 1 { (act(desk, index, Some(number), "layer-gone", &say("layer-gone", &[]), &of("layer-gone-of"))) }
                        }
                    }
                }
            }
        }
    }
}

/// A new recipe from a format.
fn new_recipe(desk: &Desk<'_>) -> Markup {
    let project = desk.made.project();
    let also = |name: &str, label: String| {
        html! { label.also { input type="checkbox" name=(name) value="yes" checked; span { (label) } } }
    };
    html! {
        section.new-recipe id="new-recipe" {
            h2 { (say("recipe-new", &[])) }
            p { (say("recipe-new-lead", &[])) }
            form method="post" action=(format!("/w/{}/recipe", desk.kept.id.0)) {
                (shell::seen(desk.kept, "cards", &format!("recipe-{}", project.recipes.len() + 1)))
                input type="hidden" name="act" value="begin";
                label.field {
                    span { (say("recipe-format", &[])) }
                    select name="format" {
                        @for (index, format) in recipes::offered(project.unit) {
                            option value=(index) { (crate::wording::size_name(format.name)) " · " (drawing::text::with_fractions(&crate::wording::size(format.face, measure::Mark::usual(format.unit)))) }
                        }
                    }
                }
                @if !project.greetings.is_empty() { (also("greeting", say("recipe-greeting", &[]))) }
                @if !project.ribbons.is_empty() { (also("ribbon", say("recipe-ribbon", &[]))) }
                button.main type="submit" { (say("recipe-begin", &[])) }
            }
        }
    }
}

/// A button that does something with a whole recipe, or with one of its layers.
fn act(desk: &Desk<'_>, recipe: usize, layer: Option<usize>, act: &str, label: &str, said: &str) -> Markup {
    html! {
        form.inline method="post" action=(format!("/w/{}/recipe", desk.kept.id.0)) {
            (shell::seen(desk.kept, "cards", &format!("recipe-{}", recipe + 1)))
            input type="hidden" name="recipe" value=(recipe);
            @if let Some(layer) = layer { input type="hidden" name="layer" value=(layer); }
            button.quiet type="submit" name="act" value=(act) aria-label=(said) { (label) }
        }
    }
}

fn layer_fields(desk: &Desk<'_>, place: &str, layer: &Layer) -> Markup {
    let line = |key: &str, label: String| fields::line(desk, &format!("{place}.{key}"), &label, "");
    html! {
        @match &layer.material {
            Material::Patterned { .. } => {
                @if super::edit::written(desk.document, &format!("{place}.size")).is_empty() {
                    (line("width", say("field-width", &[])))
                    (line("height", say("field-height", &[])))
                    (line("prefer", say("field-prefer", &[])))
                } @else {
                    (line("size", say("field-size", &[])))
                }
            }
            Material::Mat { cardstock, .. } => {
                (line("border", say("field-border", &[])))
                @for (letter, _) in cardstock {
                    @if let Some(letter) = letter {
                        (fields::choice(desk, &format!("{place}.cardstock.{letter}"), &say("field-mat-for", &[("letter", letter.into())]), &stocks(desk)))
                    } @else {
                        (fields::choice(desk, &format!("{place}.cardstock"), &say("field-cardstock", &[]), &stocks(desk)))
                    }
                }
            }
            Material::Plain { .. } => { (line("size", say("field-size", &[]))) }
            Material::Strip { .. } => {
                (line("size", say("field-size", &[])))
                (line("foam_squares", say("field-foam", &[])))
            }
            Material::Ribbon { .. } => { (line("length", say("field-length", &[]))) }
        }
        (line("right", say("field-right", &[])))
        (line("down", say("field-down", &[])))
    }
}

fn folds() -> Vec<(&'static str, String)> {
    vec![
        ("", say("fold-as-is", &[])),
        ("side", say("fold-side", &[])),
        ("top", say("fold-top", &[])),
        ("gate", say("fold-gate", &[])),
        ("z", say("fold-z", &[])),
        ("flat", say("fold-flat", &[])),
    ]
}

/// The cardstocks by name.
fn stocks<'a>(desk: &'a Desk<'_>) -> Vec<(&'a str, String)> {
    let all = desk.made.project().cardstocks.iter().map(|stock| (stock.name.as_str(), stock.name.clone()));
    std::iter::once(("", say("choice-only", &[]))).chain(all).collect()
}
