//! Recipes as a whole, and their layers: a new one from a format, a copy, one fewer; a layer more, fewer, higher or lower.
//!
//! Every change is made in the project file's own text. Left out on purpose: measures of a layer (`cards` has their forms).

use measure::formats::{FoldedEdge, formats, usual_border};
use measure::{CardFormat, Unit};
use store::projects::Kept;
use toml_edit::{ArrayOfTables, DocumentMut, Item, Table, Value};

use super::answer::Asked;
use super::edit::{self, Changed};
use super::room::Made;
use super::{layers, say};
use crate::wording::{exact, exact_size};

/// Formats to choose from, each with its place in the list.
pub(super) fn offered(unit: Unit) -> Vec<(usize, &'static CardFormat)> {
    // Those planned in the maker's own unit come first.
    let mut all: Vec<_> = formats().enumerate().collect();
    all.sort_by_key(|(_, format)| format.unit != unit);
    all
}

/// The file with its recipes changed; or why it cannot be.
pub(super) fn change(asked: &Asked, kept: &Kept, made: &Made) -> Result<Changed, String> {
    if asked.field("act") == "layer-new" {
        return layers::add(asked, kept, made);
    }
    changed(asked, kept, made).ok_or_else(|| say("recipe-refused", &[]))
}

/// `None` if the file has no such recipe or layer, or if it would be left without one.
fn changed(asked: &Asked, kept: &Kept, made: &Made) -> Option<Changed> {
    let mut document = edit::document(&kept.now.text).ok()?;
    let number = |name: &str| asked.field(name).parse::<usize>().ok();
    let act = asked.field("act");
    let taken = |wanted: &str| made.project().recipes.iter().any(|recipe| recipe.name == wanted);
    if act == "begin" {
        let (_, format) = formats().enumerate().find(|(index, _)| Some(*index) == number("format"))?;
        let name = unused(&crate::wording::size_name(format.name), taken);
        append(&mut document, &begun(made, format, &name, asked))?;
        return Some(Changed { text: document.to_string(), what: say("edit-recipe-new", &[("name", name.into())]) });
    }
    let index = number("recipe")?;
    let name = made.project().recipes.get(index)?.name.clone();
    let recipes = document.get_mut("recipe")?.as_array_of_tables_mut()?;
    let what = match act {
        "copy" => {
            let mut copy = recipes.get(index)?.clone();
            let named = unused(&name, taken);
            copy.insert("name", toml_edit::value(&named));
            unplaced(&mut copy);
            recipes.push(copy);
            say("edit-recipe-copy", &[("name", name.into())])
        }
        "delete" => {
            (recipes.len() > 1 && index < recipes.len()).then(|| recipes.remove(index))?;
            say("edit-recipe-gone", &[("name", name.into())])
        }
        _ => {
            let own = recipes.get_mut(index)?.get_mut("layer")?.as_array_of_tables_mut()?;
            let at = number("layer").filter(|at| *at < own.len())?;
            let layer = own.get(at)?.get("name").and_then(Item::as_str).unwrap_or_default().to_owned();
            let facts = [("name", name.into()), ("layer", layer.into())];
            match act {
                "layer-up" => swap(own, at, at + 1)?,
                "layer-down" => swap(own, at.checked_sub(1)?, at)?,
                "layer-gone" if own.len() > 1 => drop(own.remove(at)),
                _ => return None,
            }
            say(if act == "layer-gone" { "edit-layer-gone" } else { "edit-layer-moved" }, &facts)
        }
    };
    Some(Changed { text: document.to_string(), what })
}

/// That name, or with a number the first that is not taken.
pub(super) fn unused(name: &str, taken: impl Fn(&str) -> bool) -> String {
    let numbered = (2..).map(|number| format!("{name} {number}"));
    std::iter::once(name.to_owned()).chain(numbered).find(|name| !taken(name)).unwrap_or_default()
}

/// A recipe of a format: a mat and a panel, each a border smaller all round; with a greeting and a ribbon where they are wanted.
fn begun(made: &Made, format: &CardFormat, name: &str, asked: &Asked) -> String {
    let project = made.project();
    let unit = project.unit;
    let border = usual_border(format.unit);
    let quoted = |text: &str| Value::from(text).to_string();
    let stock = |index: usize| {
        let all = &project.cardstocks;
        all.get(index).or(all.first()).map(|stock| quoted(&stock.name)).unwrap_or_default()
    };
    let (panel, play) = (format.panel(), border * 2);
    let fold = if format.fold == FoldedEdge::Top { "top" } else { "side" };
    let (mat_name, panel_name) = (quoted(&say("new-mat", &[])), quoted(&say("new-panel", &[])));
    let range = |most| format!("{} to {}", exact(most - play, unit), exact(most, unit));
    let mut text = format!(
        "[[recipe]]\nname = {}\nformat = \"{}\"\nfold = \"{fold}\"\nbase = {}\n\n[[recipe.layer]]\nname = {mat_name}\nkind = \"mat\"\n\
         follows = {panel_name}\nborder = \"{}\"\ncardstock = {}\n\n[[recipe.layer]]\nname = {panel_name}\nwidth = \"{}\"\n\
         height = \"{}\"\nprefer = \"{}\"\n",
        quoted(name),
        exact_size(format.face, unit),
        stock(0),
        exact(border, unit),
        stock(1),
        range(panel.width),
        range(panel.height),
        exact_size(panel, unit),
    );
    if let (true, Some(ribbon)) = (asked.field("ribbon") == "yes", project.ribbons.first()) {
        text.push_str(&format!(
            "\n[[recipe.layer]]\nname = {}\nkind = \"ribbon\"\nribbon = {}\nlength = \"{}\"\noverlap = true\n",
            quoted(&say("new-ribbon", &[])),
            quoted(&ribbon.name),
            // Chosen: once across and an eighth round each end.
            exact(format.face.width + border * 2, unit),
        ));
    }
    if let (true, Some(greeting)) = (asked.field("greeting") == "yes", project.greetings.first()) {
        let strip = measure::Size::new(greeting.inked.width + border * 4, greeting.inked.height + border * 4);
        text.push_str(&format!(
            "\n[[recipe.layer]]\nname = {}\nkind = \"strip\"\nsize = \"{}\"\ncardstock = {}\ngreeting = {}\nat = \"bottom\"\n\
             down = \"-{}\"\n",
            quoted(&say("new-strip", &[])),
            exact_size(strip, unit),
            stock(0),
            quoted(&greeting.words),
            exact(border * 4, unit),
        ));
    }
    text
}

/// Puts a recipe after those there are.
fn append(document: &mut DocumentMut, text: &str) -> Option<()> {
    let fresh = edit::document(text).ok()?;
    let mut recipe = fresh.get("recipe")?.as_array_of_tables()?.get(0)?.clone();
    unplaced(&mut recipe);
    recipe.decor_mut().set_prefix("\n");
    let all = document.as_table_mut().entry("recipe").or_insert_with(|| Item::ArrayOfTables(ArrayOfTables::new()));
    all.as_array_of_tables_mut()?.push(recipe);
    Some(())
}

/// Takes away where a table and its own stood in a file: they come after what stands before them now.
pub(super) fn unplaced(table: &mut Table) {
    table.set_position(None);
    for (_, item) in table.iter_mut() {
        match item {
            Item::Table(inner) => unplaced(inner),
            Item::ArrayOfTables(all) => all.iter_mut().for_each(unplaced),
            _ => {}
        }
    }
}

/// Two layers change places.
pub(super) fn swap(layers: &mut ArrayOfTables, one: usize, other: usize) -> Option<()> {
    let (mut first, mut second) = (layers.get(one)?.clone(), layers.get(other)?.clone());
    let (here, there) = (first.position(), second.position());
    first.set_position(there);
    second.set_position(here);
    *layers.get_mut(one)? = second;
    *layers.get_mut(other)? = first;
    Some(())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;

    #[test]
    fn layers_change_places_in_the_text() {
        let mut document = edit::document("[[layer]]\nname = \"a\" # lowest\n\n[[layer]]\nname = \"b\"\n").unwrap();
        swap(document.get_mut("layer").unwrap().as_array_of_tables_mut().unwrap(), 0, 1).unwrap();
        let text = document.to_string();
        assert!(text.find("\"b\"").unwrap() < text.find("\"a\" # lowest").unwrap(), "{text}");
    }

    #[test]
    fn a_copied_recipe_comes_last_and_the_rest_stays() {
        let demo = crate::make::ONE_EACH;
        let mut document = edit::document(demo).unwrap();
        let recipes = document.get_mut("recipe").unwrap().as_array_of_tables_mut().unwrap();
        let mut copy = recipes.get(0).unwrap().clone();
        copy.insert("name", toml_edit::value("Another"));
        unplaced(&mut copy);
        recipes.push(copy);
        let read = store::project_file::read(&document.to_string()).unwrap();
        let before = store::project_file::read(demo).unwrap();
        assert_eq!(read.recipes.len(), before.recipes.len() + 1);
        assert_eq!(read.recipes.last().unwrap().layers, before.recipes[0].layers);
        assert_eq!(read.recipes[0], before.recipes[0]);
    }
}
