//! What the maker wants.

use cards::model::{Batch, Choice, Decided, Goal, Material, Meeting, Pack, Recipe, Side, Take};
use cards::pairs::Apart;
use measure::{Length, Size};

use super::desk::{Bounds, Desk, Table, Value};
use super::form::{MOST_CARDS, Shape};
use super::names::{Catalogue, Own};
use super::problem::ProblemKind;

pub(super) fn goal(desk: &mut Desk, root: &Table<'_>, letters: &Own, named: &Own, recipes: &[Recipe]) -> Goal {
    let mut goal = Goal::unsaid();
    let Some(table) = root.table(desk, "goal") else { return goal };
    wishes(desk, &table, letters, named, recipes, &mut goal);
    goal
}

/// The keys that a goal and a batch share.
fn wishes(desk: &mut Desk, table: &Table<'_>, letters: &Own, named: &Own, recipes: &[Recipe], goal: &mut Goal) {
    goal.cards_per_sheet = table.count(desk, "cards_per_sheet");
    goal.cards = table.count(desk, "cards");
    goal.set_of = table.count(desk, "set_of").unwrap_or(goal.set_of);
    goal.overs = table.count(desk, "overs").unwrap_or(goal.overs);
    goal.alternatives = table.count(desk, "alternatives").unwrap_or(goal.alternatives);
    for row in table.rows(desk, "spares") {
        let count = row.count(desk, "count").unwrap_or(1);
        if let Some((recipe, layer)) = piece(desk, &row, named, recipes) {
            goal.spares.push((recipe, layer, count));
        }
    }
    goal.partners = pairs(desk, table, "partners", letters, true);
    for row in table.rows(desk, "pins") {
        let mut edge = |key| row.need(desk, key).and_then(|value| desk.length(&value, Bounds::FromNothing));
        let (left, top) = (edge("left").unwrap_or(Length::ZERO), edge("top").unwrap_or(Length::ZERO));
        let size: Size = row.needed_size(desk, "size", Catalogue::Nothing);
        if let Some((recipe, layer)) = piece(desk, &row, named, recipes) {
            goal.pins.push((recipe, layer, left, top, size));
        }
    }
}

/// The batches. Indices of designs and recipes are the places of `letters` and `named`.
pub(super) fn batches(
    desk: &mut Desk,
    root: &Table<'_>,
    letters: &Own,
    named: &Own,
    packs: &[Pack],
    recipes: &[Recipe],
) -> Vec<Batch> {
    let mut own = Own::new("batch");
    let mut batches = Vec::new();
    for table in root.rows(desk, "batch") {
        let name = own.name(desk, &table, "name");
        let mut goal = Goal::unsaid();
        wishes(desk, &table, letters, named, recipes, &mut goal);
        let mut makes: Vec<usize> = Vec::new();
        for value in table.values(desk, "recipes") {
            let index = named.index(desk, &value);
            makes.extend(index.filter(|index| !makes.contains(index)));
        }
        let takes = takes(desk, &table, letters, packs);
        batches.push(Batch { name, takes, recipes: makes, goal, kits: table.count(desk, "kits") });
    }
    if let (Some(_), Some(_)) = (root.find("goal"), root.find("batch")) {
        root.at_most_one(desk, &["goal", "batch"]);
    }
    batches
}

/// The sheets of a batch: `each` of every design, but for those that `sheets` names.
fn takes(desk: &mut Desk, table: &Table<'_>, letters: &Own, packs: &[Pack]) -> Vec<Take> {
    let each = table.count(desk, "each");
    let rows = table.rows(desk, "sheets");
    let alone = table.find("sheets").is_some() && each.is_none();
    let mut takes = Vec::new();
    for (pack, paper) in packs.iter().enumerate() {
        for (design, printed) in paper.designs.iter().enumerate() {
            let sheets = if alone { 0 } else { each.unwrap_or(printed.sheets()) };
            takes.push(Take { pack, design, sheets, side: printed.up });
        }
    }
    let mut told = Own::new("letter");
    for row in rows {
        let Some(value) = row.need(desk, "design") else { continue };
        let count = row.count(desk, "count");
        let side = row.choice(desk, "up").map(|side| if side == 1 { Side::Back } else { Side::Front });
        let Some(letter) = desk.text(&value) else { continue };
        if letters.index_of(desk, &letter, value.at, &value.path).is_none() {
            continue;
        }
        told.take(desk, Some(letter.clone()), value.at, &value.path);
        for take in &mut takes {
            let printed = &packs[take.pack].designs[take.design];
            if printed.letter == letter {
                take.sheets = count.unwrap_or(each.unwrap_or(printed.sheets()));
                take.side = side.unwrap_or(take.side);
            }
        }
    }
    takes.retain(|take| take.sheets > 0);
    takes
}

/// What was decided for single cards. Whether there is such a card only a plan can tell.
pub(super) fn choices(desk: &mut Desk, root: &Table<'_>, recipes: &[Recipe], stocks: &Own) -> Vec<Choice> {
    let (mut pieces, mut plain) = (Own::new("layer"), Own::new("layer"));
    for layer in recipes.iter().flat_map(|recipe| &recipe.layers) {
        let known = match layer.material {
            Material::Patterned { .. } => &mut pieces,
            Material::Mat { .. } | Material::Plain { .. } => &mut plain,
            Material::Strip { .. } | Material::Ribbon { .. } => continue,
        };
        if layer.name.is_empty() {
            pieces.lost();
            plain.lost();
        } else if !known.has(&layer.name) {
            known.grant(&layer.name);
        }
    }
    if recipes.iter().any(|recipe| recipe.layers.is_empty()) {
        pieces.lost();
        plain.lost();
    }
    let mut choices = Vec::new();
    for table in root.rows(desk, "choice") {
        let card = table.need(desk, "card").and_then(|value| desk.count(&value, Shape::Count(1, MOST_CARDS)));
        let layer = table.need(desk, "layer").and_then(|value| {
            let layer = desk.text(&value)?;
            let known = if table.find("cardstock").is_some() { &plain } else { &pieces };
            known.index_of(desk, &layer, value.at, &value.path).map(|_| layer)
        });
        table.at_most_one(desk, &["with", "shows", "cardstock"]);
        let with = table.count(desk, "with").map(Decided::Swap);
        let shows = table.choice(desk, "shows").map(|side| if side == 1 { Side::Back } else { Side::Front });
        let cut_from = table.find("cardstock").and_then(|value| stocks.index(desk, &value)).map(Decided::CutFrom);
        if ["with", "shows", "cardstock"].iter().all(|key| table.find(key).is_none()) {
            table.blame_key(desk, "with", ProblemKind::MissingKey { key: "with", wanted: "count" });
        }
        if let (Some(card), Some(layer), Some(decided)) = (card, layer, with.or(shows.map(Decided::Shows)).or(cut_from))
        {
            choices.push(Choice { card, layer, decided });
        }
    }
    choices
}

/// The names of a recipe and of one of its layers of patterned paper.
fn piece(desk: &mut Desk, row: &Table<'_>, named: &Own, recipes: &[Recipe]) -> Option<(String, String)> {
    let recipe = named.index_or_only(desk, row, "recipe");
    let value = row.need(desk, "layer")?;
    let layer = desk.text(&value)?;
    let recipe = recipes.get(recipe?)?;
    let cut = |layer: &&cards::model::Layer| matches!(layer.material, Material::Patterned { .. });
    let mut pieces = Own::new("layer");
    for known in recipe.layers.iter().filter(cut) {
        pieces.grant(&known.name);
    }
    // A layer that could not be read may be the one meant.
    if recipe.layers.iter().any(|layer| layer.name.is_empty()) || recipe.layers.is_empty() {
        pieces.lost();
    }
    pieces.index_of(desk, &layer, value.at, &value.path)?;
    Some((recipe.name.clone(), layer))
}

/// Which prints may meet on one card.
pub(super) fn meeting(desk: &mut Desk, root: &Table<'_>, letters: &Own) -> Meeting {
    let Some(table) = root.table(desk, "pairs") else { return Meeting::default() };
    let apart = match table.choice(desk, "apart") {
        Some(1) => Apart::Faces,
        Some(2) => Apart::Anything,
        _ => Apart::Designs,
    };
    let one_large = table.find("one_large").and_then(|value| desk.yes_no(&value)).unwrap_or(false);
    let only = pairs(desk, &table, "only", letters, false);
    Meeting { apart, one_large, only, never: pairs(desk, &table, "never", letters, false) }
}

/// Pairs of letters; `once`: each letter in one pair only.
fn pairs(desk: &mut Desk, table: &Table<'_>, key: &str, letters: &Own, once: bool) -> Vec<(String, String)> {
    let mut pairs = Vec::new();
    let mut taken: Vec<String> = Vec::new();
    for value in table.values(desk, key) {
        let Some(entries) = desk.list(&value, "pairs") else { continue };
        let [first, second] = entries.as_slice() else {
            if !entries.is_empty() {
                desk.blame(&value, ProblemKind::WrongType { found: "list", wanted: "pairs" });
            }
            continue;
        };
        let mut partner = |value: &Value<'_>| -> Option<String> {
            let letter = desk.text(value)?;
            letters.index_of(desk, &letter, value.at, &value.path)?;
            if once && taken.contains(&letter) {
                desk.blame(value, ProblemKind::PartnerTwice { letter: letter.clone() });
            }
            taken.push(letter.clone());
            Some(letter)
        };
        let (first, second) = (partner(first), partner(second));
        pairs.extend(first.zip(second));
    }
    pairs
}
