//! Layers in the project file's own text: one more, and what a changed one writes anew.
//!
//! Left out on purpose: how large a new layer is and where it lies (`cards::plan::added`).

use cards::model::{Anchor, Layer, Material, Placement};
use cards::plan::{Fresh, added};
use maud::{Markup, html};
use store::projects::Kept;
use toml_edit::{ArrayOfTables, DocumentMut, Item, Table, Value};

use super::answer::{Asked, Desk};
use super::edit::{self, Changed};
use super::room::Made;
use super::{recipes, say, shell};
use crate::wording::{exact, exact_size};

/// The form: what, and on which layer.
pub(super) fn form(desk: &Desk<'_>, recipe: usize) -> Markup {
    let project = desk.made.project();
    let Some(known) = project.recipes.get(recipe) else { return html! {} };
    let can = |fresh: &Fresh| match fresh {
        Fresh::Greeting => !project.greetings.is_empty(),
        Fresh::Ribbon => !project.ribbons.is_empty(),
        _ => true,
    };
    // What is laid on most often: the topmost layer that is no strip.
    let wide = |layer: &Layer| matches!(layer.material, Material::Patterned { from_partner: false, .. });
    let usual = known.layers.iter().rposition(wide);
    html! {
        form.new-layer.panel-form method="post" action=(format!("/w/{}/recipe", desk.kept.id.0)) {
            (shell::seen(desk.kept, "cards", &format!("recipe-{}", recipe + 1)))
            input type="hidden" name="recipe" value=(recipe);
            input type="hidden" name="act" value="layer-new";
            label.field {
                span { (say("layer-new-kind", &[])) }
                select name="kind" { @for fresh in Fresh::ALL.iter().filter(|fresh| can(fresh)) { option value=(fresh.name()) selected[*fresh == Fresh::Band] { (offered(*fresh)) } } }
            }
            label.field {
                span { (say("layer-new-on", &[])) }
                select name="on" {
                    option value="" { (say("hold-card", &[])) }
                    @for (index, layer) in known.layers.iter().enumerate() { option value=(index) selected[Some(index) == usual] { (layer.name) } }
                }
            }
            button type="submit" { (say("layer-new", &[])) }
        }
    }
}

fn offered(fresh: Fresh) -> String {
    match fresh {
        Fresh::Panel => say("layer-new-panel", &[]),
        Fresh::Band => say("layer-new-band", &[]),
        Fresh::Mat => say("layer-new-mat", &[]),
        Fresh::Piece => say("layer-new-plain", &[]),
        Fresh::Strip => say("layer-new-across", &[]),
        Fresh::Greeting => say("layer-new-strip", &[]),
        Fresh::Ribbon => say("layer-new-ribbon", &[]),
    }
}

fn called(fresh: Fresh) -> String {
    match fresh {
        Fresh::Panel => say("new-panel", &[]),
        Fresh::Band => say("new-band", &[]),
        Fresh::Mat => say("new-mat", &[]),
        Fresh::Piece => say("new-plain", &[]),
        Fresh::Strip => say("new-across", &[]),
        Fresh::Greeting => say("new-strip", &[]),
        Fresh::Ribbon => say("new-ribbon", &[]),
    }
}

/// The file with a layer more in a recipe, as a form asks for it; or why it cannot be.
pub(super) fn add(asked: &Asked, kept: &Kept, made: &Made) -> Result<Changed, String> {
    let gone = || say("recipe-refused", &[]);
    let index: usize = asked.field("recipe").parse().map_err(|_| gone())?;
    let recipe = made.project().recipes.get(index).ok_or_else(gone)?;
    let fresh = Fresh::ALL.into_iter().find(|fresh| fresh.name() == asked.field("kind")).ok_or_else(gone)?;
    let on = match asked.field("on") {
        "" => None,
        on => Some(on.parse::<usize>().ok().filter(|on| *on < recipe.layers.len()).ok_or_else(gone)?),
    };
    let found = added(&made.plan, index, on, fresh).ok_or_else(|| say("layer-new-no-room", &[]))?;
    let taken = |wanted: &str| recipe.layers.iter().any(|layer| layer.name == wanted);
    let name = recipes::unused(&called(fresh), taken);
    let layer = Layer { name: name.clone(), ..found.layer };
    let document = edit::document(&kept.now.text).map_err(|_| gone())?;
    let mut changes = Vec::new();
    for (at, after) in &found.changed {
        changes.extend(recipe.layers.get(*at).map(|before| changes_of(made, &document, (index, *at), before, after)));
    }
    let changes: Vec<(String, String)> = changes.into_iter().flatten().collect();
    let changed = edit::change(&kept.now.text, &changes).map_err(|_| gone())?;
    let text = changed.map_or_else(|| kept.now.text.clone(), |changed| changed.text);
    let mut document = edit::document(&text).map_err(|_| gone())?;
    let fresh = edit::document(&written(made, &recipe.layers, &layer)).map_err(|_| gone())?;
    let table = fresh.get("layer").and_then(Item::as_array_of_tables).and_then(|all| all.get(0)).ok_or_else(gone)?;
    let recipes = document.get_mut("recipe").and_then(Item::as_array_of_tables_mut);
    let layers = recipes.and_then(|all| all.get_mut(index)).and_then(|recipe| recipe.get_mut("layer"));
    let layers = layers.and_then(Item::as_array_of_tables_mut).ok_or_else(gone)?;
    insert(layers, found.at, table.clone()).ok_or_else(gone)?;
    let facts = [("name", recipe.name.clone().into()), ("layer", name.into())];
    Ok(Changed { text: document.to_string(), what: say("edit-layer-new", &facts) })
}

/// Puts a layer before the one at that index.
fn insert(layers: &mut ArrayOfTables, at: usize, mut table: Table) -> Option<()> {
    // A mat that does not say what it follows follows the next layer: that is another one now.
    let names: Vec<String> = layers.iter().map(|layer| name_of(layer).to_owned()).collect();
    for (index, layer) in layers.iter_mut().enumerate() {
        let mat = layer.get("kind").and_then(Item::as_str) == Some("mat");
        if let (true, false, Some(next)) = (mat, layer.contains_key("follows"), names.get(index + 1)) {
            layer.insert("follows", toml_edit::value(next));
        }
    }
    recipes::unplaced(&mut table);
    table.decor_mut().set_prefix("\n");
    layers.push(table);
    for index in (at..layers.len() - 1).rev() {
        recipes::swap(layers, index, index + 1)?;
    }
    Some(())
}

fn name_of(layer: &Table) -> &str {
    layer.get("name").and_then(Item::as_str).unwrap_or_default()
}

/// A layer as a project file has it; what it refers to is named by the layers as they were.
fn written(made: &Made, layers: &[Layer], layer: &Layer) -> String {
    let project = made.project();
    let unit = project.unit;
    let quoted = |text: &str| Value::from(text).to_string();
    let named = |index: usize| layers.get(index).map(|layer| layer.name.as_str()).unwrap_or_default();
    let mut lines = vec![format!("name = {}", quoted(&layer.name))];
    let mut line = |key: &str, text: &str| lines.push(format!("{key} = {}", quoted(text)));
    let stock = |index: usize| project.cardstocks.get(index).map(|stock| stock.name.as_str()).unwrap_or_default();
    match &layer.material {
        Material::Patterned { width, height, prefer, .. } => {
            let range = |least, most| format!("{} to {}", exact(least, unit), exact(most, unit));
            line("width", &range(width.least, width.most));
            line("height", &range(height.least, height.most));
            line("prefer", &exact_size(*prefer, unit));
        }
        Material::Mat { follows, border, cardstock } => {
            line("kind", "mat");
            line("follows", named(*follows));
            line("border", &exact(*border, unit));
            line("cardstock", stock(cardstock.first().map_or(0, |(_, stock)| *stock)));
        }
        Material::Plain { size, cardstock } => {
            line("kind", "plain");
            line("size", &exact_size(*size, unit));
            line("cardstock", stock(*cardstock));
        }
        Material::Strip { size, cardstock, greeting, .. } => {
            line("kind", "strip");
            line("size", &exact_size(*size, unit));
            line("cardstock", stock(*cardstock));
            line("greeting", project.greetings.get(*greeting).map(|one| one.words.as_str()).unwrap_or_default());
        }
        Material::Ribbon { ribbon, length, .. } => {
            line("kind", "ribbon");
            line("ribbon", project.ribbons.get(*ribbon).map(|one| one.name.as_str()).unwrap_or_default());
            line("length", &exact(*length, unit));
        }
    }
    if let Some((greeting, _)) = layer.stamped {
        line("greeting", project.greetings.get(greeting).map(|one| one.words.as_str()).unwrap_or_default());
    }
    for (key, value) in placed(made, &layer.placement) {
        if !value.is_empty() {
            line(key, &value);
        }
    }
    if let Some(on) = layer.placement.on {
        line("on", named(on));
    }
    lines.extend(layer.placement.overlap.then(|| "overlap = true".to_owned()));
    lines.extend(layer.is_from_partner().then(|| "from_partner = true".to_owned()));
    format!("[[layer]]\n{}\n", lines.join("\n"))
}

/// Where a layer goes, but for what it lies on; empty: as it is left out.
fn placed(made: &Made, placement: &Placement) -> [(&'static str, String); 3] {
    let unit = made.project().unit;
    let at = match placement.anchor {
        Anchor::TopLeft => "top left",
        Anchor::Top => "top",
        Anchor::TopRight => "top right",
        Anchor::Left => "left",
        Anchor::Middle => "",
        Anchor::Right => "right",
        Anchor::BottomLeft => "bottom left",
        Anchor::Bottom => "bottom",
        Anchor::BottomRight => "bottom right",
    };
    let shift = |length: measure::Length| if length.ticks() == 0 { String::new() } else { exact(length, unit) };
    [("at", at.to_owned()), ("right", shift(placement.right)), ("down", shift(placement.down))]
}

/// The changes that make a layer of the file another; what it is called and made of stays.
pub(super) fn changes_of(
    made: &Made,
    document: &DocumentMut,
    (recipe, index): (usize, usize),
    before: &Layer,
    after: &Layer,
) -> Vec<(String, String)> {
    let unit = made.project().unit;
    let mut changes = Vec::new();
    let mut set = |key: &str, value: String| changes.push((format!("recipe.{recipe}.layer.{index}.{key}"), value));
    match (&before.material, &after.material) {
        (
            Material::Patterned { width: was_wide, height: was_high, prefer: liked, .. },
            Material::Patterned { width, height, prefer, .. },
        ) => {
            let range = |range: &cards::model::Range| match range.least == range.most {
                true => exact(range.most, unit),
                false => format!("{} to {}", exact(range.least, unit), exact(range.most, unit)),
            };
            let sized = !edit::written(document, &format!("recipe.{recipe}.layer.{index}.size")).is_empty();
            if sized && (width, height) != (was_wide, was_high) {
                set("size", exact_size(measure::Size::new(width.most, height.most), unit));
            } else {
                for (key, was, is) in [("width", was_wide, width), ("height", was_high, height)] {
                    if was != is {
                        set(key, range(is));
                    }
                }
            }
            // What is liked best goes along, where it is said.
            if prefer != liked
                && (!sized || !edit::written(document, &format!("recipe.{recipe}.layer.{index}.prefer")).is_empty())
            {
                set("prefer", exact_size(*prefer, unit));
            }
        }
        (Material::Mat { border: was, .. }, Material::Mat { border, .. }) if was != border => {
            set("border", exact(*border, unit));
        }
        (Material::Plain { size: was, .. }, Material::Plain { size, .. })
        | (Material::Strip { size: was, .. }, Material::Strip { size, .. })
            if was != size =>
        {
            set("size", exact_size(*size, unit));
        }
        _ => {}
    }
    for ((key, was), (_, is)) in placed(made, &before.placement).into_iter().zip(placed(made, &after.placement)) {
        if was != is {
            set(key, is);
        }
    }
    // A layer that lies on nothing named any more lies on its mat, or on the card.
    if before.placement.on.is_some() && after.placement.on.is_none() {
        set("on", String::new());
    }
    changes
}
