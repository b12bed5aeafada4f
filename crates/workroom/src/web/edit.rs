//! Changes to a project file that leave everything else of it, comments too, as it was.
//!
//! A change is a place (`recipe.0.layer.1.width`) and what is to stand there as the maker writes it; an empty text takes the
//! key away. Whether the file is still right is for `store::project_file` to tell.

use cards::model::{Choice, Decided, Side};
use toml_edit::{Array, ArrayOfTables, DocumentMut, InlineTable, Item, Table, Value};

use super::say;

/// A changed file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Changed {
    /// The project file.
    pub(super) text: String,
    /// What changed, in words.
    pub(super) what: String,
}

/// Why a change could not be made: the file has no such place, or cannot be read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum EditError {
    /// No such place.
    NoPlace,
    /// The file as kept is no TOML.
    Unreadable,
}

/// A pin as a page sends it: recipe, layer, left, top, size, each as written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Pin {
    pub(super) recipe: String,
    pub(super) layer: String,
    pub(super) left: String,
    pub(super) top: String,
    pub(super) size: String,
}

const WHOLE: [&str; 28] = [
    "seed",
    "share",
    "turn_within",
    "per_inking",
    "copies",
    "use",
    "cards_per_sheet",
    "cards",
    "set_of",
    "overs",
    "least",
    "most",
    "foam_squares",
    "alternatives",
    "count",
    "density",
    "gsm",
    "seats",
    "demonstrators",
    "spare_kits",
    "left_handed",
    "cut_kits",
    "minutes_a_card",
    "welcome_minutes",
    "pause_minutes",
    "end_minutes",
    "break_even",
    "envelope_gsm",
];
/// Tables of the file that are begun when their first key is written.
const OWN_TABLES: [&str; 6] = ["goal", "trimmer", "post", "selling", "minutes", "class"];
const YES_OR_NO: [&str; 6] = ["from_partner", "may_turn", "free_size", "overlap", "bow", "stiff"];

/// The file as a document.
pub(super) fn document(text: &str) -> Result<DocumentMut, EditError> {
    text.parse().map_err(|_| EditError::Unreadable)
}

/// What stands at a place, as the maker wrote it; empty if nothing does.
pub(super) fn written(document: &DocumentMut, place: &str) -> String {
    in_table(document.as_table(), place).unwrap_or_default()
}

fn in_table(table: &dyn toml_edit::TableLike, place: &str) -> Option<String> {
    let (key, rest) = place.split_once('.').map_or((place, None), |(key, rest)| (key, Some(rest)));
    match (table.get(key)?, rest) {
        (Item::Value(value), None) => Some(shown(value)),
        (Item::Value(value), Some(rest)) => in_value(value, rest),
        (Item::Table(inner), Some(rest)) => in_table(inner, rest),
        (Item::ArrayOfTables(tables), Some(rest)) => {
            let (index, rest) = rest.split_once('.')?;
            in_table(tables.get(index.parse().ok()?)?, rest)
        }
        _ => None,
    }
}

fn in_value(value: &Value, place: &str) -> Option<String> {
    match value {
        Value::InlineTable(table) => in_table(table, place),
        Value::Array(list) => {
            let (index, rest) = place.split_once('.').map_or((place, None), |(index, rest)| (index, Some(rest)));
            let inner = list.get(index.parse().ok()?)?;
            rest.map_or_else(|| Some(shown(inner)), |rest| in_value(inner, rest))
        }
        _ => None,
    }
}

fn shown(value: &Value) -> String {
    match value {
        Value::String(text) => text.value().clone(),
        Value::Array(list) => {
            let pair =
                |value: &Value| value.as_array().map(|pair| pair.iter().map(shown).collect::<Vec<_>>().join(" "));
            let one = |value: &Value| pair(value).unwrap_or_else(|| shown(value));
            let between = if list.iter().all(Value::is_inline_table) { "; " } else { ", " };
            list.iter().map(one).collect::<Vec<_>>().join(between)
        }
        Value::InlineTable(table) if table.contains_key("top") => {
            table.iter().map(|(_, value)| shown(value)).collect::<Vec<_>>().join(", ")
        }
        other => other.clone().decorated("", "").to_string(),
    }
}

/// Makes every change that changes something; `None` if none does.
pub(super) fn change(text: &str, changes: &[(String, String)]) -> Result<Option<Changed>, EditError> {
    let mut document = document(text)?;
    let mut what = Vec::new();
    // A sheet inside that has no size is none: its whole entry goes.
    let gone = |place: &str| {
        let whole = place.strip_suffix(".size").or_else(|| place.strip_suffix(".cardstock"));
        let whole = whole.filter(|whole| whole.ends_with(".inside"))?;
        let size = changes.iter().find(|(of, _)| of.strip_suffix(".size") == Some(whole));
        size.filter(|(_, value)| value.trim().is_empty()).map(|_| whole.to_owned())
    };
    for (place, value) in changes {
        if let Some(whole) = gone(place) {
            let from = written(&document, &format!("{whole}.size"));
            if !from.is_empty() {
                put(document.as_item_mut(), &whole, "", &mut Vec::new())?;
                let facts = [("key", "inside".into()), ("from", from.into()), ("to", say("edit-nothing", &[]).into())];
                what.push(say("edit-changed", &facts));
            }
            continue;
        }
        let before = written(&document, place);
        if before.trim() == value.trim() {
            continue;
        }
        let mut names = Vec::new();
        put(document.as_item_mut(), place, value.trim(), &mut names)?;
        // The project's own name comes first and needs no saying.
        names.drain(..usize::from(document.contains_key("name") && !names.is_empty()));
        let key = place.rsplit('.').next().unwrap_or_default().replace('_', " ");
        let nothing = || say("edit-nothing", &[]);
        let shown = |text: &str| if text.trim().is_empty() { nothing() } else { text.trim().to_owned() };
        let facts = [("key", key.into()), ("from", shown(&before).into()), ("to", shown(value).into())];
        let said = say("edit-changed", &facts);
        what.push(if names.is_empty() { said } else { format!("{}: {said}", names.join(", ")) });
    }
    Ok((!what.is_empty()).then(|| Changed { text: document.to_string(), what: what.join("; ") }))
}

fn put(item: &mut Item, place: &str, value: &str, names: &mut Vec<String>) -> Result<(), EditError> {
    names.extend(item.get("name").and_then(Item::as_str).map(str::to_owned));
    let Some((key, rest)) = place.split_once('.') else { return set(item, place, value) };
    if let Item::ArrayOfTables(tables) = item {
        let table = key.parse().ok().and_then(|index: usize| tables.get_mut(index)).ok_or(EditError::NoPlace)?;
        // A table is no item of its own; it is one for as long as it is changed.
        let mut own = Item::Table(std::mem::take(table));
        let done = put(&mut own, rest, value, names);
        if let Item::Table(changed) = own {
            *table = changed;
        }
        return done;
    }
    if let Item::Value(Value::Array(list)) = item {
        let index: usize = key.parse().map_err(|_| EditError::NoPlace)?;
        let inner = list.get_mut(index).ok_or(EditError::NoPlace)?;
        let mut own = Item::Value(inner.clone());
        put(&mut own, rest, value, names)?;
        if let Item::Value(changed) = own {
            *inner = changed;
        }
        return Ok(());
    }
    if !item.is_table_like() {
        return Err(EditError::NoPlace);
    }
    let there = item.get(key).is_some_and(|found| !found.is_none());
    if !there {
        let own_table = OWN_TABLES.contains(&key);
        if !["front", "back", "collage", "stamp", "inside"].contains(&key) && !own_table {
            return Err(EditError::NoPlace);
        }
        let fresh = if own_table {
            Item::Table(toml_edit::Table::new())
        } else {
            Item::Value(Value::InlineTable(InlineTable::new()))
        };
        item.as_table_like_mut().ok_or(EditError::NoPlace)?.insert(key, fresh);
    }
    let inner = item.get_mut(key).ok_or(EditError::NoPlace)?;
    put(inner, rest, value, names)?;
    // A stamp of which nothing is said any more is none.
    let empty = inner.as_table_like().is_some_and(toml_edit::TableLike::is_empty);
    if let (true, "stamp", Some(table)) = (empty, key, item.as_table_like_mut()) {
        table.remove(key);
    }
    Ok(())
}

fn set(item: &mut Item, key: &str, value: &str) -> Result<(), EditError> {
    let table = item.as_table_like_mut().ok_or(EditError::NoPlace)?;
    if value.is_empty() {
        table.remove(key);
        return Ok(());
    }
    let before = table.get(key).and_then(Item::as_value);
    let whole = before.is_some_and(Value::is_integer) || (before.is_none() && WHOLE.contains(&key));
    let yes = before.is_some_and(Value::is_bool) || (before.is_none() && YES_OR_NO.contains(&key));
    let mut made: Value = match (value.parse::<i64>(), value.parse::<bool>()) {
        (Ok(number), _) if whole => number.into(),
        (_, Ok(yes_or_no)) if yes => yes_or_no.into(),
        _ if key == "partners" => pairs(value).into(),
        _ if key == "columns" || key == "rows" => lengths(value).into(),
        _ if key == "panels" => panels(value).into(),
        _ if key == "keep" || key == "avoid" => panels(value).into(),
        _ => value.into(),
    };
    if let Some(before) = before {
        *made.decor_mut() = before.decor().clone();
    }
    table.insert(key, Item::Value(made));
    Ok(())
}

/// `A C, B F` as pairs.
fn pairs(text: &str) -> Array {
    let pair = |pair: &str| pair.split_whitespace().collect::<Array>();
    text.split(',').filter(|pair| !pair.trim().is_empty()).map(|text| Value::Array(pair(text))).collect()
}

/// `3, 3, 4 1/2` as a list.
fn lengths(text: &str) -> Array {
    text.split(',').map(str::trim).filter(|text| !text.is_empty()).collect()
}

/// `0, 0, 3 x 4; 3, 0, 3 x 4` as panels: left, top, size; behind it, for a region to keep, the piece that shows it.
fn panels(text: &str) -> Array {
    let panel = |text: &str| {
        let parts = ["left", "top", "size", "show_on"].into_iter().zip(text.splitn(4, ',').map(str::trim));
        parts.map(|(key, value)| (key, Value::from(value))).collect::<InlineTable>()
    };
    text.split(';').filter(|one| !one.trim().is_empty()).map(|text| Value::InlineTable(panel(text))).collect()
}

/// Puts these pins in place of those there are; `what` says so.
pub(super) fn pins(text: &str, pins: &[Pin], what: String) -> Result<Changed, EditError> {
    let mut document = document(text)?;
    let mut list = Array::new();
    for pin in pins {
        let mut table = InlineTable::new();
        for (key, value) in [
            ("recipe", &pin.recipe),
            ("layer", &pin.layer),
            ("left", &pin.left),
            ("top", &pin.top),
            ("size", &pin.size),
        ] {
            table.insert(key, value.as_str().into());
        }
        list.push(table);
    }
    let goal = document.as_table_mut().entry("goal").or_insert_with(toml_edit::table);
    let goal = goal.as_table_like_mut().ok_or(EditError::NoPlace)?;
    if pins.is_empty() {
        goal.remove("pins");
    } else {
        goal.insert("pins", Item::Value(Value::Array(list)));
    }
    Ok(Changed { text: document.to_string(), what })
}

/// Adds a choice by hand at the end; one that only takes back the last is that: it goes.
pub(super) fn choose(text: &str, choice: &Choice, undoes_last: bool, what: String) -> Result<Changed, EditError> {
    if undoes_last {
        let last = document(text)?.get("choice").and_then(Item::as_array_of_tables).map_or(0, ArrayOfTables::len);
        return unchoose(text, last.checked_sub(1).ok_or(EditError::NoPlace)?, what);
    }
    let mut document = document(text)?;
    let mut table = Table::new();
    table.insert("card", toml_edit::value(i64::from(choice.card)));
    table.insert("layer", toml_edit::value(choice.layer.as_str()));
    match choice.decided {
        Decided::Swap(with) => table.insert("with", toml_edit::value(i64::from(with))),
        Decided::Shows(Side::Front) => table.insert("shows", toml_edit::value("front")),
        Decided::Shows(Side::Back) => table.insert("shows", toml_edit::value("back")),
        // Colours are chosen many at once, by name.
        Decided::CutFrom(_) => return Err(EditError::NoPlace),
    };
    let all = document.as_table_mut().entry("choice").or_insert_with(|| Item::ArrayOfTables(ArrayOfTables::new()));
    all.as_array_of_tables_mut().ok_or(EditError::NoPlace)?.push(table);
    Ok(Changed { text: document.to_string(), what })
}

/// Cuts single pieces from another cardstock: card, layer and the cardstock's name for each.
pub(super) fn recolor(text: &str, pieces: &[(u32, String, String)], what: String) -> Result<Changed, EditError> {
    let mut document = document(text)?;
    let all = document.as_table_mut().entry("choice").or_insert_with(|| Item::ArrayOfTables(ArrayOfTables::new()));
    let all = all.as_array_of_tables_mut().ok_or(EditError::NoPlace)?;
    for (card, layer, cardstock) in pieces {
        let mut table = Table::new();
        table.insert("card", toml_edit::value(i64::from(*card)));
        table.insert("layer", toml_edit::value(layer.as_str()));
        table.insert("cardstock", toml_edit::value(cardstock.as_str()));
        all.push(table);
    }
    Ok(Changed { text: document.to_string(), what })
}

/// Takes one choice out.
pub(super) fn unchoose(text: &str, index: usize, what: String) -> Result<Changed, EditError> {
    let mut document = document(text)?;
    let all = document.get_mut("choice").and_then(Item::as_array_of_tables_mut).ok_or(EditError::NoPlace)?;
    if index >= all.len() {
        return Err(EditError::NoPlace);
    }
    all.remove(index);
    if all.is_empty() {
        document.as_table_mut().remove("choice");
    }
    Ok(Changed { text: document.to_string(), what })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;
    use crate::make::ONE_EACH as DEMO;
    use cards::model::Wanted;

    #[test]
    fn places_are_read_as_written() {
        let demo = document(DEMO).unwrap();
        for (place, is) in [
            ("name", "Thank-you cards from one sheet of each design"),
            ("recipe.0.name", "Twin"),
            ("recipe.0.layer.1.width", "2 3/4 to 3 1/4"),
            ("recipe.0.layer.0.cardstock.B", "Brick"),
            ("recipe.0.layer.4.foam_squares", "2"),
            ("pack.0.design.1.front.name", "broad stripe"),
            ("pack.0.design.3.up", "back"),
            ("pack.0.design.0.copies", "4"),
            ("goal.cards_per_sheet", "8"),
            ("goal.partners", "A C, B F, D E"),
            ("goal.nothing", ""),
            ("recipe.7.name", ""),
        ] {
            assert_eq!(written(&demo, place), is, "{place}");
        }
    }

    #[test]
    fn a_change_leaves_the_rest_and_its_comments() {
        let changes = [
            ("recipe.0.layer.1.width".to_owned(), "3".to_owned()),
            ("pack.0.design.0.front.way".to_owned(), "any".to_owned()),
            ("goal.cards_per_sheet".to_owned(), "7".to_owned()),
            ("name".to_owned(), "Thank-you cards from one sheet of each design".to_owned()),
        ];
        let changed = change(DEMO, &changes).unwrap().unwrap();
        assert!(changed.text.starts_with("# Six sheets"));
        let lines = DEMO.lines().zip(changed.text.lines()).filter(|(before, after)| before != after).count();
        assert_eq!((lines, DEMO.lines().count()), (3, changed.text.lines().count()));
        assert!(changed.what.contains("Twin, panel: width"), "{}", changed.what);
        let read = store::project_file::read(&changed.text).unwrap();
        assert_eq!(read.goal.cards_per_sheet, Some(7));
        assert_eq!(change(DEMO, &[("goal.cards_per_sheet".to_owned(), " 8 ".to_owned())]).unwrap(), None);
    }

    #[test]
    fn pins_are_written_and_taken_away() {
        let pin = Pin {
            recipe: "Twin".into(),
            layer: "panel".into(),
            left: "0".into(),
            top: "0".into(),
            size: "3 x 4 1/2".into(),
        };
        let pinned = pins(DEMO, &[pin], String::new()).unwrap();
        assert_eq!(store::project_file::read(&pinned.text).unwrap().goal.pins.len(), 1);
        assert_eq!(pins(&pinned.text, &[], String::new()).unwrap().text.trim(), DEMO.trim());
    }

    #[test]
    fn choices_are_written_and_taken_back() {
        let swap = Choice { card: 1, layer: "band".into(), decided: Decided::Swap(9) };
        let turn = Choice { card: 3, layer: "panel".into(), decided: Decided::Shows(Side::Back) };
        let one = choose(DEMO, &swap, false, String::new()).unwrap().text;
        let two = choose(&one, &turn, false, String::new()).unwrap().text;
        assert_eq!(store::project_file::read(&two).unwrap().choices, [swap.clone(), turn]);
        assert!(two.starts_with(DEMO.trim_end()), "the rest stays as it was");
        assert_eq!(unchoose(&two, 1, String::new()).unwrap().text, one);
        assert_eq!(choose(&one, &swap, true, String::new()).unwrap().text, DEMO);
        assert_eq!(unchoose(&one, 1, String::new()), Err(EditError::NoPlace));
        assert_eq!(unchoose(DEMO, 0, String::new()), Err(EditError::NoPlace));
    }

    #[test]
    fn a_collage_is_written_as_the_file_has_it() {
        let place = "pack.0.design.3.front.collage";
        let key = |key: &str| format!("{place}.{key}");
        assert_eq!(written(&document(DEMO).unwrap(), &key("columns")), "3, 3, 3, 3");
        let set = |text: &str, changes: &[(&str, &str)]| {
            let changes: Vec<_> = changes.iter().map(|(at, value)| (key(at), (*value).to_owned())).collect();
            change(text, &changes).unwrap().unwrap().text
        };
        let moved = set(DEMO, &[("columns", "2 1/2, 3 1/2, 3, 3")]);
        assert_eq!(DEMO.lines().zip(moved.lines()).filter(|(before, after)| before != after).count(), 1);
        let free = set(DEMO, &[("columns", ""), ("rows", ""), ("panels", "0, 0, 3 x 4; 3 in, 0, 3 x 4")]);
        assert_eq!(written(&document(&free).unwrap(), &key("panels")), "0, 0, 3 x 4; 3 in, 0, 3 x 4");
        let read = store::project_file::read(&free).unwrap();
        assert_eq!(read.packs[0].designs[3].front.collage.as_ref().map(|collage| collage.panels.len()), Some(2));
        let none = change(DEMO, &[(place.to_owned(), String::new())]).unwrap().unwrap().text;
        assert_eq!(store::project_file::read(&none).unwrap().packs[0].designs[3].front.collage, None);
        let fresh = change(DEMO, &[("pack.0.design.0.back.collage.columns".to_owned(), "6, 6".to_owned())]);
        assert!(fresh.unwrap().unwrap().text.contains("collage = { columns = [\"6\", \"6\"] }"));
    }

    #[test]
    fn marked_parts_are_written_as_the_file_has_them() {
        let place = |key: &str| format!("pack.0.design.0.front.{key}");
        let marked = [(place("keep"), "1, 2, 3 x 4, Twin/panel; 0, 0, 1 x 1"), (place("avoid"), "9, 9, 2 x 1")];
        let marked: Vec<_> = marked.into_iter().map(|(at, value)| (at, value.to_owned())).collect();
        let text = change(DEMO, &marked).unwrap().unwrap().text;
        let front = &store::project_file::read(&text).unwrap().packs[0].designs[0].front;
        let shown: Vec<_> = front.regions.iter().map(|region| region.wanted.clone()).collect();
        let twin = Some(("Twin".to_owned(), "panel".to_owned()));
        assert_eq!(shown, [Wanted::Keep { show_on: twin }, Wanted::Keep { show_on: None }, Wanted::Avoid]);
        let cleared: Vec<_> = marked.into_iter().map(|(at, _)| (at, String::new())).collect();
        assert!(
            store::project_file::read(&change(&text, &cleared).unwrap().unwrap().text).unwrap().packs[0].designs[0]
                .front
                .regions
                .is_empty()
        );
    }

    #[test]
    fn a_place_that_is_not_there_is_refused() {
        for place in ["recipe.9.name", "recipe.x.name", "nothing.here", "name.inside", "recipe.0.layer.99.width"] {
            assert_eq!(change(DEMO, &[(place.to_owned(), "1".to_owned())]), Err(EditError::NoPlace), "{place}");
        }
    }
}
