//! Greetings on the page of stamping: each jig with its measures, strips that have to grow, stamps measured.

use cards::model::Material;
use cards::stamping::{Growth, growths};
use drawing::sheets::stamping_told;
use maud::{Markup, html};
use measure::{Length, Unit};

use super::answer::Desk;
use super::{edit, fields, say, shell};
use crate::wording::exact_size;

/// The place of a strip's size in the project file.
fn place(recipe: usize, layer: usize) -> String {
    format!("recipe.{recipe}.layer.{layer}.size")
}

/// The text of a project file with every strip as large as it has to be; `None` if the file has no such places.
pub(crate) fn grown(text: &str, found: &[Growth], unit: Unit) -> Option<String> {
    let changes: Vec<(String, String)> =
        found.iter().map(|growth| (place(growth.recipe, growth.layer), exact_size(growth.to, unit))).collect();
    Some(edit::change(text, &changes).ok()??.text)
}

/// Every jig of the plan, and what can be changed of greetings and strips.
pub(super) fn section(desk: &Desk<'_>) -> Markup {
    let edition = fields::edition(desk.made, drawing::sheets::Hand::Right);
    let all = stamping_told(&desk.made.plan, &edition, Length::INCH * 6);
    let small = growths(desk.made.project());
    html! {
        section id="greetings" {
            h2 { (say("page-stamping-title", &[])) }
            @if all.is_empty() { p { (say("greetings-none", &[])) } }
            @else { p { (say(if all.len() > 1 { "page-stamping-lead-several" } else { "page-stamping-lead" }, &[])) } }
            p { a href=(format!("/w/{}/file/templates.pdf", desk.kept.id.0)) { (say("greetings-jigs", &[])) } }
            @if !small.is_empty() { (too_small(desk, &small)) }
            ol.jigs {
                @for (index, told) in all.iter().enumerate() {
                    li.jig {
                        h3 { (told.head) }
                        figure.drawing { (fields::inline(&drawing::svg::write(&told.drawing), &format!("jig{index}-"))) }
                        ul { @for sentence in &told.said { li { (sentence) } } }
                    }
                }
            }
            (own(desk))
        }
    }
}

fn too_small(desk: &Desk<'_>, small: &[Growth]) -> Markup {
    let project = desk.made.project();
    let unit = project.unit;
    html! {
        form.change method="post" action=(format!("/w/{}/edit", desk.kept.id.0)) {
            (shell::seen(desk.kept, "background", "greetings"))
            ul.findings {
                @for growth in small {
                    @let recipe = project.recipes.get(growth.recipe);
                    @let layer = recipe.and_then(|recipe| recipe.layers.get(growth.layer));
                    @let facts = [
                        ("recipe", recipe.map_or("", |recipe| recipe.name.as_str()).into()),
                        ("layer", layer.map_or("", |layer| layer.name.as_str()).into()),
                        ("from", exact_size(growth.from, unit).into()),
                        ("to", exact_size(growth.to, unit).into()),
                    ];
                    li.warning { (drawing::text::with_fractions(&say("greetings-grow", &facts))) }
                    input type="hidden" name=(format!("set:{}", place(growth.recipe, growth.layer))) value=(exact_size(growth.to, unit));
                }
            }
            div.ends { button type="submit" { (say("greetings-grow-all", &[("count", small.len().into())])) } }
        }
    }
}

/// What the file says of greetings, and of the strips they come on.
fn own(desk: &Desk<'_>) -> Markup {
    let project = desk.made.project();
    let strips: Vec<(usize, usize)> = (project.recipes.iter().enumerate())
        .flat_map(|(recipe, made)| (0..made.layers.len()).map(move |layer| (recipe, layer)))
        .filter(|(recipe, layer)| {
            let found = project.layer(*recipe, *layer);
            found.is_some_and(|layer| matches!(layer.material, Material::Strip { .. }))
        })
        .collect();
    let inside = html! {
        @for (index, greeting) in project.greetings.iter().enumerate() {
            fieldset {
                legend { (greeting.words) }
                (fields::line(desk, &format!("greeting.{index}.words"), &say("greetings-words", &[]), ""))
                (fields::line(desk, &format!("greeting.{index}.inked"), &say("greetings-inked", &[]), "2 1/4 x 3/8"))
                (fields::line(desk, &format!("greeting.{index}.ink"), &say("greetings-ink", &[]), "#333333"))
                (fields::line(desk, &format!("greeting.{index}.stamp.size"), &say("greetings-stamp-size", &[]), ""))
                (fields::line(desk, &format!("greeting.{index}.stamp.left"), &say("greetings-stamp-left", &[]), ""))
                (fields::line(desk, &format!("greeting.{index}.stamp.top"), &say("greetings-stamp-top", &[]), ""))
            }
        }
        @for (recipe, layer) in strips {
            @let at = format!("recipe.{recipe}.layer.{layer}");
            fieldset {
                legend {
                    (project.recipes.get(recipe).map_or("", |recipe| recipe.name.as_str())) ": "
                    (project.layer(recipe, layer).map_or("", |layer| layer.name.as_str()))
                }
                (fields::line(desk, &format!("{at}.size"), &say("greetings-strip", &[]), "3 x 3/4"))
                (fields::choice(desk, &format!("{at}.words_at"), &say("greetings-at", &[]), &spots()))
                (fields::line(desk, &format!("{at}.words_border"), &say("greetings-border", &[]), ""))
            }
        }
    };
    html! {
        details {
            summary { (say("greetings-change", &[])) }
            p.hint { (say("greetings-how", &[])) }
            (fields::change(desk, "background", "greetings", &inside))
        }
    }
}

/// Where words may come, as the file has it and as it is said.
fn spots() -> Vec<(&'static str, String)> {
    vec![
        ("", say("spot-middle", &[])),
        ("middle", say("spot-middle", &[])),
        ("left third", say("spot-left-third", &[])),
        ("right third", say("spot-right-third", &[])),
        ("upper third", say("spot-upper-third", &[])),
        ("lower third", say("spot-lower-third", &[])),
        ("upper left third", say("spot-upper-left-third", &[])),
        ("upper right third", say("spot-upper-right-third", &[])),
        ("lower left third", say("spot-lower-left-third", &[])),
        ("lower right third", say("spot-lower-right-third", &[])),
        ("left", say("spot-left", &[])),
        ("right", say("spot-right", &[])),
        ("top", say("spot-top", &[])),
        ("bottom", say("spot-bottom", &[])),
        ("top left", say("spot-top-left", &[])),
        ("top right", say("spot-top-right", &[])),
        ("bottom left", say("spot-bottom-left", &[])),
        ("bottom right", say("spot-bottom-right", &[])),
    ]
}
