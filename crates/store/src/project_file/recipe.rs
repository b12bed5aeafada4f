//! Recipes and their layers.

use cards::model::{Anchor, Fold, Layer, Material, Placement, Range, Recipe, Spot, Third};
use measure::{Length, Mark, Size, Unit, formats};
use toml::de::DeValue;

use super::desk::{Bounds, Desk, Table, Value, own_keys};
use super::form::{KINDS, LAYERS};
use super::names::{Catalogue, Own};
use super::problem::ProblemKind;

/// What recipes refer to.
pub(super) struct Shelf<'s> {
    /// The finest mark the maker cuts to.
    pub(super) mark: Mark,
    /// Letters of the designs of which sheets are used.
    pub(super) used: &'s [String],
    /// Every letter.
    pub(super) letters: &'s Own,
    pub(super) stocks: &'s Own,
    pub(super) spools: &'s Own,
    pub(super) stamped: &'s Own,
}

/// True if it has a layer of patterned paper.
pub(super) fn wants_paper(recipe: &Recipe) -> bool {
    recipe.layers.iter().any(|layer| matches!(layer.material, Material::Patterned { .. }))
}

/// Recipes; takes up their names.
pub(super) fn recipes(desk: &mut Desk, root: &Table<'_>, shelf: &Shelf<'_>, own: &mut Own) -> Vec<Recipe> {
    let tables = match root.need(desk, "recipe") {
        Some(_) => root.rows(desk, "recipe"),
        None => Vec::new(),
    };
    if tables.is_empty() {
        own.lost();
    }
    tables.into_iter().map(|table| recipe(desk, &table, shelf, own)).collect()
}

fn recipe(desk: &mut Desk, table: &Table<'_>, shelf: &Shelf<'_>, own: &mut Own) -> Recipe {
    let name = own.name(desk, table, "name");
    let finished = table.needed_size(desk, "format", Catalogue::Formats);
    let fold =
        [Fold::Side, Fold::Top, Fold::Gate, Fold::Zed, Fold::Flat][table.choice(desk, "fold").unwrap_or(0).min(4)];
    let base = shelf.stocks.index_or_only(desk, table, "base").unwrap_or(0);
    let inside = table.table(desk, "inside").map(|inside| {
        let size = inside.needed_size(desk, "size", Catalogue::Nothing);
        (size, shelf.stocks.index_or_only(desk, &inside, "cardstock").unwrap_or(0))
    });
    let mut designs: Vec<String> = Vec::new();
    for value in table.values(desk, "designs") {
        let Some(letter) = desk.text(&value) else { continue };
        if shelf.letters.index_of(desk, &letter, value.at, &value.path).is_some() && !designs.contains(&letter) {
            designs.push(letter);
        }
    }
    let least = table.count(desk, "least").unwrap_or(0);
    let most = table.count(desk, "most");
    if let Some(most) = most.filter(|most| least > *most) {
        table.blame_key(desk, "least", ProblemKind::FewestAboveMost { least, most });
    }
    let values = match table.need(desk, "layer") {
        Some(_) => table.values(desk, "layer"),
        None => Vec::new(),
    };
    Recipe { name, finished, fold, base, inside, layers: layers(desk, &values, shelf), designs, least, most }
}

/// A layer whose name is known, still to be read: `None` if it is no table or of no known kind.
struct Begun<'a> {
    table: Option<Table<'a>>,
    kind: usize,
    /// The later layer a mat follows.
    follows: Option<usize>,
}

const MAT: usize = 1;
const RIBBON: usize = 4;

/// Names first, since layers refer to one another; then mats and what they follow; then the rest.
fn layers(desk: &mut Desk, values: &[Value<'_>], shelf: &Shelf<'_>) -> Vec<Layer> {
    let mut own = Own::new("layer");
    let mut begun: Vec<Begun<'_>> = values.iter().map(|value| begin(desk, value, &mut own)).collect();
    for index in (0..begun.len()).filter(|index| begun[*index].kind == MAT).collect::<Vec<_>>() {
        begun[index].follows = follows(desk, &begun, index, &own);
    }
    let read = |index: usize| {
        let layer = &begun[index];
        let (material, placement, stamped) = match &layer.table {
            Some(table) => {
                let made = material(desk, table, layer, shelf);
                let stamped = stamped(desk, table, &made, shelf);
                (made, placement(desk, table, index, &begun, &own), stamped)
            }
            None => (stand_in(), centred(), None),
        };
        Layer { name: own.at(index).to_owned(), material, placement, stamped }
    };
    (0..begun.len()).map(read).collect()
}

/// Opens a layer with the form of its kind and takes up its name.
fn begin<'a>(desk: &mut Desk, value: &Value<'a>, own: &mut Own) -> Begun<'a> {
    let DeValue::Table(entries) = value.inner else {
        desk.wrong_type(value, "table");
        own.take(desk, None, value.at, &value.path);
        return Begun { table: None, kind: 0, follows: None };
    };
    let kind = match entries.get("kind") {
        Some(kind) => desk.choice(&value.under("kind", kind), KINDS),
        None => Some(0),
    };
    let Some(kind) = kind else {
        // Which keys it may have goes by its kind: only its name can be read.
        let name = entries.get("name").and_then(|name| name.get_ref().as_str()).map(|name| name.trim().to_owned());
        own.take(desk, name, value.at, &value.path);
        return Begun { table: None, kind: 0, follows: None };
    };
    let table = desk.open(entries, value.at, &value.path, LAYERS[kind].1);
    own.name(desk, &table, "name");
    Begun { table: Some(table), kind, follows: None }
}

/// The later layer a mat follows: the one it names, else the next.
fn follows(desk: &mut Desk, begun: &[Begun<'_>], index: usize, own: &Own) -> Option<usize> {
    let table = begun[index].table.as_ref()?;
    let followed = match table.find("follows") {
        Some(value) => own.index(desk, &value)?,
        None => index + 1,
    };
    if followed <= index {
        let layer = own.at(followed).to_owned();
        table.blame_key(desk, "follows", ProblemKind::FollowsEarlier { layer });
        return None;
    }
    if begun.get(followed).is_none_or(|layer| layer.kind == RIBBON) {
        table.blame_key(desk, "follows", ProblemKind::NothingToFollow);
        return None;
    }
    Some(followed)
}

fn placement(desk: &mut Desk, table: &Table<'_>, index: usize, begun: &[Begun<'_>], own: &Own) -> Placement {
    // The nearest mat below that follows it: that is what it is glued to.
    let mat = begun[..index].iter().rposition(|layer| layer.follows == Some(index));
    let on = match table.find("on") {
        None => mat,
        Some(value) => {
            let on = own.index(desk, &value);
            if let Some(on) = on.filter(|on| *on >= index) {
                desk.blame(&value, ProblemKind::LaidOnLater { layer: own.at(on).to_owned() });
            }
            on
        }
    };
    let mut shift = |key| table.length(desk, key, Bounds::Shift).unwrap_or(Length::ZERO);
    let (right, down) = (shift("right"), shift("down"));
    let anchor = match table.choice(desk, "at") {
        Some(0) => Anchor::TopLeft,
        Some(1) => Anchor::Top,
        Some(2) => Anchor::TopRight,
        Some(3) => Anchor::Left,
        Some(5) => Anchor::Right,
        Some(6) => Anchor::BottomLeft,
        Some(7) => Anchor::Bottom,
        Some(8) => Anchor::BottomRight,
        _ => Anchor::Middle,
    };
    Placement { on, anchor, right, down, overlap: table.yes(desk, "overlap") }
}

fn material(desk: &mut Desk, table: &Table<'_>, layer: &Begun<'_>, shelf: &Shelf<'_>) -> Material {
    match layer.kind {
        MAT => {
            let border = table.length(desk, "border", Bounds::Thin);
            let border = border.unwrap_or_else(|| formats::usual_border(desk.unit));
            let cardstock = mat_cardstock(desk, table, shelf);
            Material::Mat { follows: layer.follows.unwrap_or(0), border, cardstock }
        }
        2 => Material::Plain {
            size: table.needed_size(desk, "size", Catalogue::Nothing),
            cardstock: shelf.stocks.index_or_only(desk, table, "cardstock").unwrap_or(0),
        },
        3 => Material::Strip {
            size: table.needed_size(desk, "size", Catalogue::Nothing),
            cardstock: shelf.stocks.index_or_only(desk, table, "cardstock").unwrap_or(0),
            greeting: shelf.stamped.index_or_only(desk, table, "greeting").unwrap_or(0),
            spot: spot(desk, table),
            foam_squares: table.count(desk, "foam_squares").unwrap_or(0),
        },
        RIBBON => Material::Ribbon {
            ribbon: shelf.spools.index_or_only(desk, table, "ribbon").unwrap_or(0),
            length: table.needed_length(desk, "length", Bounds::Piece),
            bow: table.yes(desk, "bow"),
        },
        _ => patterned(desk, table, shelf.mark),
    }
}

/// The lines of [`SPOTS`], in its order, before its edges and corners.
pub(super) const LINES: [(Third, Third); 9] = [
    (Third::Middle, Third::Middle),
    (Third::First, Third::Middle),
    (Third::Last, Third::Middle),
    (Third::Middle, Third::First),
    (Third::Middle, Third::Last),
    (Third::First, Third::First),
    (Third::Last, Third::First),
    (Third::First, Third::Last),
    (Third::Last, Third::Last),
];

/// The edges and corners of [`SPOTS`], in its order.
pub(super) const EDGES: [Anchor; 8] = [
    Anchor::TopLeft,
    Anchor::Top,
    Anchor::TopRight,
    Anchor::Left,
    Anchor::Right,
    Anchor::BottomLeft,
    Anchor::Bottom,
    Anchor::BottomRight,
];

/// The greeting stamped on a layer that is no strip, and where on it.
fn stamped(desk: &mut Desk, table: &Table<'_>, made: &Material, shelf: &Shelf<'_>) -> Option<(usize, Spot)> {
    if matches!(made, Material::Strip { .. } | Material::Ribbon { .. }) {
        return None;
    }
    let Some(value) = table.find("greeting") else {
        for key in ["words_at", "words_border"].into_iter().filter(|key| table.find(key).is_some()) {
            table.blame_key(desk, key, ProblemKind::PlaceWithoutGreeting);
        }
        return None;
    };
    let greeting = shelf.stamped.index(desk, &value)?;
    Some((greeting, spot(desk, table)))
}

/// Where the words of a greeting come.
fn spot(desk: &mut Desk, table: &Table<'_>) -> Spot {
    let chosen = table.choice(desk, "words_at").unwrap_or(0);
    let border = table.length(desk, "words_border", Bounds::FromNothing);
    if let Some(anchor) = chosen.checked_sub(LINES.len()).and_then(|edge| EDGES.get(edge)) {
        return Spot::Border { anchor: *anchor, border: border.unwrap_or_else(|| usual_words_border(desk.unit)) };
    }
    if border.is_some() {
        table.blame_key(desk, "words_border", ProblemKind::BorderWithoutEdge);
    }
    let (across, down) = LINES[chosen.min(LINES.len() - 1)];
    Spot::On { across, down }
}

/// From an edge to the words where the maker does not say: 1/4 in, or 6 mm.
///
/// # Source
/// Chosen: twice the least that should stay clear.
pub(super) const fn usual_words_border(unit: Unit) -> Length {
    match unit {
        Unit::Inch => Unit::Inch.thousandths(250),
        Unit::Millimetre => Length::mm(6),
    }
}

/// One cardstock for all, or one for each design that is used.
fn mat_cardstock(desk: &mut Desk, table: &Table<'_>, shelf: &Shelf<'_>) -> Vec<(Option<String>, usize)> {
    let Some(value) = table.find("cardstock") else {
        let only = shelf.stocks.index_or_only(desk, table, "cardstock");
        return only.map(|index| (None, index)).into_iter().collect();
    };
    if value.inner.is_str() {
        let index = shelf.stocks.index(desk, &value);
        return index.map(|index| (None, index)).into_iter().collect();
    }
    let Some(entries) = own_keys(&value) else {
        desk.wrong_type(&value, "by-letter");
        return Vec::new();
    };
    let mut found = Vec::new();
    let mut named: Vec<&str> = Vec::new();
    for (letter, at, entry) in entries {
        shelf.letters.index_of(desk, letter, at, &entry.path);
        named.push(letter);
        found.extend(shelf.stocks.index(desk, &entry).map(|index| (Some(letter.to_owned()), index)));
    }
    let without: Vec<String> = shelf.used.iter().filter(|letter| !named.contains(&letter.as_str())).cloned().collect();
    if !without.is_empty() {
        desk.blame(&value, ProblemKind::DesignsWithout { letters: without });
    }
    found
}

fn patterned(desk: &mut Desk, table: &Table<'_>, mark: Mark) -> Material {
    let sized = table.find("size");
    let ranged = ["width", "height"].into_iter().any(|key| table.find(key).is_some());
    let mut ranges = None;
    if let Some(value) = &sized {
        if ranged {
            table.at_most_one(desk, &["size", "width", "height"]);
        }
        let size = desk.size(value, Catalogue::Nothing).filter(|_| !ranged);
        ranges = size.map(|size| (Range::exactly(size.width), Range::exactly(size.height)));
    } else if ranged {
        let mut range = |key: &'static str| match table.find(key) {
            Some(value) => desk.range(&value).map(|(least, most)| Range { least, most }),
            None => {
                table.blame_key(desk, key, ProblemKind::MissingKey { key, wanted: "range" });
                None
            }
        };
        let (width, height) = (range("width"), range("height"));
        ranges = width.zip(height);
    } else {
        table.blame_key(desk, "size", ProblemKind::MissingKey { key: "size", wanted: "size-or-ranges" });
    }
    let liked = table.find("prefer").and_then(|value| Some((desk.size(&value, Catalogue::Nothing)?, value)));
    let (width, height) = ranges.unwrap_or((Range::exactly(Length::INCH), Range::exactly(Length::INCH)));
    let prefer = match liked {
        Some((prefer, value)) => {
            let least = Size::new(width.least, height.least);
            let most = Size::new(width.most, height.most);
            if ranges.is_some() && !(least.fits(prefer) && prefer.fits(most)) {
                desk.blame(&value, ProblemKind::PreferOutside { prefer, least, most });
            }
            prefer
        }
        None => Size::new(middle(width, mark), middle(height, mark)),
    };
    Material::Patterned {
        width,
        height,
        prefer,
        free_size: table.yes(desk, "free_size"),
        may_turn: table.yes(desk, "may_turn"),
        from_partner: table.yes(desk, "from_partner"),
        die: table.text(desk, "die"),
    }
}

/// The middle of a range on a mark, if one lies within; the middle itself if none does.
pub(super) fn middle(range: Range, mark: Mark) -> Length {
    let exact = Length::from_ticks((range.least.ticks() + range.most.ticks()) / 2);
    let marked = mark.nearest(exact);
    if range.least <= marked && marked <= range.most { marked } else { exact }
}

fn centred() -> Placement {
    Placement { on: None, anchor: Anchor::Middle, right: Length::ZERO, down: Length::ZERO, overlap: false }
}

/// Stands in for a layer that could not be read; it never leaves this crate.
fn stand_in() -> Material {
    Material::Plain { size: Size::new(Length::INCH, Length::INCH), cardstock: 0 }
}
