//! Greetings on the page of stamping: each jig with its measures, strips that have to grow, stamps measured.

use cards::Project;
use cards::model::{Greeting, Material, MotifShape, Stamp};
use cards::stamping::{Growth, growths};
use drawing::sheets::stamping_told;
use maud::{Markup, html};
use measure::{Length, Size, Unit, round};
use store::projects::{Kept, StoreError};
use toml_edit::{ArrayOfTables, DocumentMut, Item, Table};

use super::answer::{Asked, Desk};
use super::edit::{self, Changed};
use super::room::{Made, Room};
use super::{fields, prints, say, shell, stamped};
use crate::wording::{exact, exact_size};

/// What has to be changed in the project file, place by place, so that a piece is large enough.
fn growing(document: &DocumentMut, project: &Project, growth: Growth) -> Vec<(String, String)> {
    let unit = project.unit;
    let at = |key: &str| format!("recipe.{}.layer.{}.{key}", growth.recipe, growth.layer);
    let sized = || vec![(at("size"), exact_size(growth.to, unit))];
    let Some(layer) = project.layer(growth.recipe, growth.layer) else { return Vec::new() };
    let Material::Patterned { width, height, prefer, .. } = &layer.material else { return sized() };
    if !edit::written(document, &at("size")).is_empty() {
        return sized();
    }
    // A piece with ranges: none of them may be less any more.
    let mut changes = Vec::new();
    for (key, range, least) in [("width", width, growth.to.width), ("height", height, growth.to.height)] {
        if least > range.least {
            let most = range.most.max(least);
            changes.push((at(key), format!("{} to {}", exact(least, unit), exact(most, unit))));
        }
    }
    let liked = Size::new(prefer.width.max(growth.to.width), prefer.height.max(growth.to.height));
    if liked != *prefer && !edit::written(document, &at("prefer")).is_empty() {
        changes.push((at("prefer"), exact_size(liked, unit)));
    }
    changes
}

/// The text of a project file with every piece as large as it has to be; `None` if the file has no such places.
pub(crate) fn grown(text: &str, project: &Project, found: &[Growth]) -> Option<String> {
    let document = edit::document(text).ok()?;
    let changes: Vec<(String, String)> = found.iter().flat_map(|growth| growing(&document, project, *growth)).collect();
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
                    @for (place, value) in growing(desk.document, project, *growth) {
                        input type="hidden" name=(format!("set:{place}")) value=(value);
                    }
                }
            }
            div.ends { button type="submit" { (say("greetings-grow-all", &[("count", small.len().into())])) } }
        }
    }
}

/// What the file says of greetings, and of the pieces they come on.
fn own(desk: &Desk<'_>) -> Markup {
    let project = desk.made.project();
    let pieces = (project.recipes.iter().enumerate())
        .flat_map(|(recipe, made)| made.layers.iter().enumerate().map(move |(layer, of)| (recipe, made, layer, of)))
        .filter(|(.., of)| !matches!(of.material, Material::Ribbon { .. }));
    let inside = html! {
        @for (index, greeting) in project.greetings.iter().enumerate() { (of_greeting(desk, index, greeting)) }
        @for (recipe, made, layer, of) in pieces {
            @let at = format!("recipe.{recipe}.layer.{layer}");
            @let strip = matches!(of.material, Material::Strip { .. });
            @if strip || !project.greetings.is_empty() {
                fieldset {
                    legend { (made.name) ": " (of.name) }
                    @if strip { (fields::line(desk, &format!("{at}.size"), &say("greetings-strip", &[]), "3 x 3/4")) }
                    @if !strip || project.greetings.len() > 1 {
                        (stamped_with(desk, &format!("{at}.greeting"), strip))
                    }
                    @if strip || of.stamped.is_some() {
                        (fields::choice(desk, &format!("{at}.words_at"), &say("greetings-at", &[]), &spots()))
                        (fields::line(desk, &format!("{at}.words_border"), &say("greetings-border", &[]), ""))
                    }
                }
            }
        }
    };
    html! {
        details id="greetings-change" {
            summary { (say("greetings-change", &[])) }
            p.hint { (say("greetings-how", &[])) }
            (fields::change(desk, "background", "greetings", &inside))
            @for (index, greeting) in project.greetings.iter().enumerate() { (picture_form(desk, index, greeting)) }
            (stamped::form(desk, 0, "greeting", &html! {
                h3 { (say("greetings-new", &[])) }
                div.row {
                    (typed("words", &say("greetings-words", &[])))
                    (typed("inked", &say("greetings-inked", &[])))
                }
                button type="submit" { (say("greetings-new-add", &[])) }
            }))
        }
    }
}

fn typed(name: &str, label: &str) -> Markup {
    html! { label.field { span { (label) } input type="text" name=(name) autocomplete="off" spellcheck="false"; } }
}

fn of_greeting(desk: &Desk<'_>, index: usize, greeting: &Greeting) -> Markup {
    let place = |key: &str| format!("greeting.{index}.{key}");
    let middles = vec![
        ("", say("greetings-middle-ends", &[])),
        ("ends", say("greetings-middle-ends", &[])),
        ("weight", say("greetings-middle-weight", &[])),
    ];
    html! {
        fieldset {
            legend { (greeting.words) }
            (fields::line(desk, &place("words"), &say("greetings-words", &[]), ""))
            (fields::line(desk, &place("inked"), &say("greetings-inked", &[]), "2 1/4 x 3/8"))
            (fields::line(desk, &place("ink"), &say("greetings-ink", &[]), "#333333"))
            (fields::line(desk, &place("stamp.size"), &say("greetings-stamp-size", &[]), ""))
            (fields::line(desk, &place("stamp.left"), &say("greetings-stamp-left", &[]), ""))
            (fields::line(desk, &place("stamp.top"), &say("greetings-stamp-top", &[]), ""))
            @if !matches!(greeting.mark, Some(MotifShape::Picture(..))) {
                (fields::line(desk, &place("outline"), &say("greetings-outline", &[]), "0,0 9,0 9,2 0,2"))
            }
            @if greeting.mark.is_some() {
                (fields::choice(desk, &place("middle"), &say("greetings-its-middle", &[]), &middles))
            }
        }
    }
}

/// A picture of what a greeting leaves, given with how wide it is in truth.
fn picture_form(desk: &Desk<'_>, index: usize, greeting: &Greeting) -> Markup {
    html! {
        form.act-greeting-picture method="post" action=(format!("/w/{}/background", desk.kept.id.0)) enctype="multipart/form-data" {
            (stamped::hidden(desk, 0, "greeting-picture"))
            input type="hidden" name="greeting" value=(index);
            fieldset {
                legend { (greeting.words) }
                label.field { span { (say("greetings-picture", &[])) } input type="file" name="file" accept="image/png,image/jpeg,image/webp"; }
                (typed("wide", &say("greetings-picture-wide", &[])))
                button type="submit" { (say("greetings-picture-take", &[])) }
            }
        }
    }
}

/// Which greeting a piece is stamped with; a strip always has one.
fn stamped_with(desk: &Desk<'_>, place: &str, strip: bool) -> Markup {
    let written = edit::written(desk.document, place);
    let value = desk.typed.get(place).unwrap_or(&written);
    html! {
        label.field {
            span { (say("greetings-on", &[])) }
            select name=(format!("set:{place}")) {
                @if !strip || value.is_empty() {
                    option value="" selected[value.is_empty()] { (say("greetings-on-none", &[])) }
                }
                @for greeting in &desk.made.project().greetings {
                    option value=(greeting.words) selected[greeting.words == *value] { (greeting.words) }
                }
            }
        }
    }
}

/// The file with another greeting; strips that named none keep the one they had.
pub(super) fn added(asked: &Asked, kept: &Kept, made: &Made) -> Result<Option<Changed>, String> {
    let refused = || say("greetings-needs-words", &[]);
    let (words, inked) = (asked.field("words").trim(), asked.field("inked").trim());
    if words.is_empty() || inked.is_empty() {
        return Err(refused());
    }
    let project = made.project();
    let mut changes = Vec::new();
    if let [only] = project.greetings.as_slice() {
        for (recipe, of) in project.recipes.iter().enumerate() {
            for (layer, _) in of.layers.iter().enumerate().filter(|(_, layer)| layer.greeting().is_some()) {
                changes.push((format!("recipe.{recipe}.layer.{layer}.greeting"), only.words.clone()));
            }
        }
    }
    let named = edit::change(&kept.now.text, &changes).map_err(|_| refused())?;
    let text = named.map_or_else(|| kept.now.text.clone(), |changed| changed.text);
    let mut document = edit::document(&text).map_err(|_| refused())?;
    let mut greeting = Table::new();
    greeting.insert("words", toml_edit::value(words));
    greeting.insert("inked", toml_edit::value(inked));
    let all = document.as_table_mut().entry("greeting").or_insert_with(|| Item::ArrayOfTables(ArrayOfTables::new()));
    all.as_array_of_tables_mut().ok_or_else(refused)?.push(greeting);
    Ok(Some(Changed { text: document.to_string(), what: say("edit-greeting-added", &[("words", words.into())]) }))
}

/// A greeting takes its outline, its ink's size and its stamp's size from a picture of known width.
pub(super) fn pictured(
    room: &Room,
    asked: &Asked,
    kept: &Kept,
    made: &Made,
) -> Result<Result<Option<Changed>, String>, StoreError> {
    let unit = made.project().unit;
    let bytes = asked.fields.iter().find(|(key, _)| key == "file").map_or(&[][..], |(_, bytes)| bytes);
    let Some(wide) = true_width(asked.field("wide"), unit) else { return Ok(Err(say("greetings-bad-wide", &[]))) };
    let (picture, width, inked) = match stamped::inked(bytes) {
        Ok(found) => found,
        Err(why) => return Ok(Err(why)),
    };
    let at = |key: &str| format!("greeting.{}.{key}", asked.field("greeting"));
    let hash = room.store().keep_picture(kept.id, &at("picture"), &picture.jpeg())?;
    let told = measured(width, &inked, wide, unit);
    let changes = [
        (at("outline"), String::new()),
        (at("picture"), prints::name(&hash)),
        (at("inked"), exact_size(told.inked, unit)),
        (at("stamp.size"), exact_size(told.stamp.size, unit)),
        (at("stamp.left"), exact(told.stamp.left, unit)),
        (at("stamp.top"), exact(told.stamp.top, unit)),
    ];
    let changed = edit::change(&kept.now.text, &changes).map_err(|_| say("refused-place", &[]));
    Ok(changed.map(|changed| changed.map(|of| Changed { what: say("edit-greeting-pictured", &[]), ..of })))
}

/// How wide a picture is in truth. Chosen: no block is narrower than a pencil or wider than a table.
pub(crate) fn true_width(text: &str, unit: Unit) -> Option<Length> {
    let length = measure::parse_length(text, Some(unit)).ok()?;
    (length >= Length::mm(3) && length <= Length::INCH * 40).then_some(length)
}

/// The ink of a pictured stamp in truth, and the stamp it is on.
struct Measured {
    inked: Size,
    stamp: Stamp,
}

/// The box of a mask's ink, of which a row is so wide in truth; to the finest mark of a rule, a picture is no better.
fn measured(width: usize, inked: &[bool], wide: Length, unit: Unit) -> Measured {
    let mark = match unit {
        Unit::Inch => Length::from_ticks(Length::INCH.ticks() / 64),
        Unit::Millimetre => Length::from_ticks(Length::MM.ticks() / 10),
    };
    let count = |pixels: usize| i64::try_from(pixels).unwrap_or(i64::MAX);
    let length = |pixels: usize| round::nearest(drawing::scene::share(wide, count(pixels), count(width.max(1))), mark);
    let (mut left, mut top, mut right, mut bottom) = (width, inked.len() / width.max(1), 0, 0);
    for (at, _) in inked.iter().enumerate().filter(|(_, ink)| **ink) {
        let (x, y) = (at % width.max(1), at / width.max(1));
        (left, top, right, bottom) = (left.min(x), top.min(y), right.max(x + 1), bottom.max(y + 1));
    }
    let (left, top, right, bottom) = (length(left), length(top), length(right), length(bottom));
    let inked_size = Size::new((right - left).max(mark), (bottom - top).max(mark));
    let size = Size::new(length(width), length(inked.len() / width.max(1)));
    Measured { inked: inked_size, stamp: Stamp { size, left, top } }
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
