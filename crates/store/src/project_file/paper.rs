//! Packs, loose sheets, cardstocks and prices.

use cards::model::{
    Cardstock, Collage, Design, Edges, Face, Grain, Lies, Look, Material, Pack, Price, PrintSize, Recipe, Region, Side,
    StockSheet, Wanted, Way,
};
use measure::{Length, Rect, Size, Unit};
use toml::de::DeValue;

use super::desk::{Bounds, Desk, Table, Value};
use super::form::{PRICE, STOCK_SHEET};
use super::names::{Catalogue, Own};
use super::problem::ProblemKind;

/// Plain paper, where a face says nothing of itself.
pub(super) const WHITE: &str = "#ffffff";

/// Packs first, then loose sheets, each a pack of one design. Takes up every letter.
pub(super) fn packs(desk: &mut Desk, root: &Table<'_>, letters: &mut Own) -> Vec<Pack> {
    let mut own = Own::new("pack");
    let mut packs = Vec::new();
    for table in root.rows(desk, "pack") {
        packs.push(pack(desk, &table, &mut own, letters));
    }
    for table in root.rows(desk, "loose") {
        packs.push(loose(desk, &table, &mut own, letters));
    }
    name_the_rest(&mut packs, letters);
    packs
}

fn pack(desk: &mut Desk, table: &Table<'_>, own: &mut Own, letters: &mut Own) -> Pack {
    let name = own.name(desk, table, "name");
    let (sheet, unusable) = sheet(desk, table);
    let mut names = Own::new("design");
    let tables = match table.need(desk, "design") {
        Some(_) => table.rows(desk, "design"),
        None => Vec::new(),
    };
    if tables.is_empty() {
        letters.lost();
    }
    let mut designs = Vec::new();
    for row in tables {
        let mut design = design(desk, &row, sheet, letters);
        if let Some(value) = row.find("name") {
            let read = desk.text(&value);
            design.name = names.take(desk, read, value.at, &value.path);
        }
        designs.push(design);
    }
    made_of(desk, table, name, (sheet, unusable), designs)
}

/// A pack of these designs, with what its table says of the paper itself.
fn made_of(
    desk: &mut Desk,
    table: &Table<'_>,
    name: String,
    (sheet, unusable): (Size, Edges),
    designs: Vec<Design>,
) -> Pack {
    Pack {
        name,
        sheet,
        unusable,
        grammage_gsm: table.count(desk, "gsm"),
        thickness_um: table.length(desk, "thickness", Bounds::Thin).and_then(micrometres),
        price: price(desk, table, "price"),
        designs,
    }
}

/// A loose sheet is a pack of one design that has its name.
fn loose(desk: &mut Desk, table: &Table<'_>, own: &mut Own, letters: &mut Own) -> Pack {
    let name = own.name(desk, table, "name");
    let (sheet, unusable) = sheet(desk, table);
    let mut design = design(desk, table, sheet, letters);
    design.name.clone_from(&name);
    made_of(desk, table, name, (sheet, unusable), vec![design])
}

/// The sheet as measured and what is lost at its edges.
fn sheet(desk: &mut Desk, table: &Table<'_>) -> (Size, Edges) {
    let read = table.need(desk, "sheet").and_then(|value| desk.size(&value, Catalogue::Sheets));
    let edges = edges(desk, table, read);
    // Two metres stand in for a sheet that cannot be read, so that nothing else is blamed for it.
    let Some(sheet) = read else { return (Size::new(Length::mm(2_000), Length::mm(2_000)), edges) };
    (sheet, edges)
}

/// What is lost at the edges of a sheet; some of it must be left, where its size could be read.
fn edges(desk: &mut Desk, table: &Table<'_>, sheet: Option<Size>) -> Edges {
    let Some(lost) = table.table(desk, "unusable") else { return Edges::default() };
    let mut edge = |key| lost.length(desk, key, Bounds::FromNothing).unwrap_or_default();
    let edges = Edges { left: edge("left"), top: edge("top"), right: edge("right"), bottom: edge("bottom") };
    if let Some(sheet) = sheet {
        let left = edges.inside(sheet);
        if left.width <= Length::ZERO || left.height <= Length::ZERO {
            table.blame_key(desk, "unusable", ProblemKind::NothingLeft { sheet });
        }
    }
    edges
}

/// One design; its letter and name may still be empty.
fn design(desk: &mut Desk, table: &Table<'_>, sheet: Size, letters: &mut Own) -> Design {
    let letter = match table.find("letter") {
        Some(value) => {
            let read = letter(desk, &value);
            letters.take(desk, read, value.at, &value.path)
        }
        None => String::new(),
    };
    let copies = table.count(desk, "copies");
    let use_sheets = table.count(desk, "use");
    // Copies that are written and cannot be read are one mistake already.
    let known = if table.find("copies").is_some() { copies } else { Some(1) };
    if let (Some(wanted), Some(copies)) = (use_sheets, known)
        && wanted > copies
    {
        table.blame_key(desk, "use", ProblemKind::UseAboveCopies { wanted, copies });
    }
    Design {
        letter,
        name: String::new(),
        copies: copies.unwrap_or(1),
        use_sheets,
        front: face(desk, table, "front", sheet),
        back: face(desk, table, "back", sheet),
        lies: match table.choice(desk, "back_lies") {
            Some(1) => Lies::HeadToFoot,
            _ => Lies::LikeABook,
        },
        up: match table.choice(desk, "up") {
            Some(1) => Side::Back,
            _ => Side::Front,
        },
    }
}

/// One to four letters or digits.
fn letter(desk: &mut Desk, value: &Value<'_>) -> Option<String> {
    let found = desk.text(value)?;
    if (1..=4).contains(&found.chars().count()) && found.chars().all(char::is_alphanumeric) {
        return Some(found);
    }
    desk.blame(value, ProblemKind::BadLetter { found });
    None
}

/// Gives designs without a letter the next free one, and designs without a name their letter.
fn name_the_rest(packs: &mut [Pack], letters: &mut Own) {
    let mut free = (0_u32..).map(spelled);
    for design in packs.iter_mut().flat_map(|pack| &mut pack.designs) {
        if design.letter.is_empty() {
            design.letter = free.find(|letter| !letters.has(letter)).unwrap_or_default();
            letters.grant(&design.letter);
        }
        if design.name.is_empty() {
            design.name.clone_from(&design.letter);
        }
    }
}

/// `A` to `Z`, then `A2` to `Z2` and so on.
fn spelled(number: u32) -> String {
    let letter = char::from_u32(u32::from('A') + number % 26).unwrap_or('A');
    match number / 26 {
        0 => letter.to_string(),
        round => format!("{letter}{}", round + 1),
    }
}

fn face(desk: &mut Desk, design: &Table<'_>, key: &str, sheet: Size) -> Face {
    let plain = || Look::Plain(WHITE.to_owned());
    let Some(table) = design.table(desk, key) else {
        return Face {
            name: key.to_owned(),
            way: Way::Any,
            print_size: None,
            look: plain(),
            collage: None,
            regions: Vec::new(),
        };
    };
    Face {
        name: table.text(desk, "name").unwrap_or_else(|| key.to_owned()),
        way: match table.choice(desk, "way") {
            Some(1) => Way::OneWay,
            Some(2) => Way::TwoWays,
            _ => Way::Any,
        },
        print_size: table
            .choice(desk, "print")
            .map(|index| [PrintSize::Large, PrintSize::Medium, PrintSize::Small, PrintSize::Solid][index.min(3)]),
        look: look(desk, &table).unwrap_or_else(plain),
        collage: table.table(desk, "collage").map(|panels| collage(desk, &panels, sheet)),
        regions: regions(desk, &table, sheet),
    }
}

/// Regions to keep whole, then regions to avoid; each on the sheet.
fn regions(desk: &mut Desk, table: &Table<'_>, sheet: Size) -> Vec<Region> {
    let mut found = Vec::new();
    for key in ["keep", "avoid"] {
        for row in table.rows(desk, key) {
            let mut edge = |key| row.need(desk, key).and_then(|value| desk.length(&value, Bounds::FromNothing));
            let (left, top) = (edge("left"), edge("top"));
            let size = row.needed_size(desk, "size", Catalogue::Nothing);
            let wanted = if key == "avoid" {
                Wanted::Avoid
            } else {
                let show_on = row.find("show_on").and_then(|value| {
                    let text = desk.text(&value)?;
                    // Recipes are read later: until then the whole text stands for the recipe.
                    desk.shown_on.push((text.clone(), value.at, value.path.clone()));
                    Some((text, String::new()))
                });
                Wanted::Keep { show_on }
            };
            let (Some(left), Some(top)) = (left, top) else { continue };
            let rect = Rect::new(left, top, size);
            let reaches = Size::new(rect.right(), rect.bottom());
            if !reaches.fits(sheet) {
                row.blame_key(desk, "size", ProblemKind::RegionOffSheet { reaches, sheet });
            }
            found.push(Region { rect, wanted });
        }
    }
    found
}

/// Says which recipe and layer each region is shown on, now that the recipes are known.
pub(super) fn settle_regions(desk: &mut Desk, packs: &mut [Pack], recipes: &[Recipe]) {
    let mut pieces = Own::new("piece");
    let mut named: Vec<(String, (String, String))> = Vec::new();
    for recipe in recipes {
        for layer in recipe.layers.iter().filter(|layer| matches!(layer.material, Material::Patterned { .. })) {
            let text = format!("{}/{}", recipe.name, layer.name);
            pieces.grant(&text);
            named.push((text, (recipe.name.clone(), layer.name.clone())));
        }
        if recipe.name.is_empty() || recipe.layers.is_empty() || recipe.layers.iter().any(|layer| layer.name.is_empty())
        {
            pieces.lost();
        }
    }
    if recipes.is_empty() {
        pieces.lost();
    }
    for (text, at, path) in std::mem::take(&mut desk.shown_on) {
        let _ = pieces.index_of(desk, &text, at, &path);
    }
    let faces =
        packs.iter_mut().flat_map(|pack| &mut pack.designs).flat_map(|design| [&mut design.front, &mut design.back]);
    for region in faces.flat_map(|face| &mut face.regions) {
        if let Wanted::Keep { show_on: Some(on) } = &mut region.wanted
            && let Some((_, known)) = named.iter().find(|(text, _)| *text == on.0)
        {
            on.clone_from(known);
        }
    }
}

/// What a face looks like: one of four keys, or none.
fn look(desk: &mut Desk, table: &Table<'_>) -> Option<Look> {
    table.at_most_one(desk, &["picture", "drawn", "color", "background"]);
    if let Some(value) = table.find("picture") {
        return picture(desk, &value).map(Look::Picture);
    }
    if let Some(index) = table.choice(desk, "drawn") {
        return Some(Look::Drawn(super::DRAWN[index].to_owned()));
    }
    if let Some(value) = table.find("background") {
        let own = desk.backgrounds.clone();
        return own.index(desk, &value).map(Look::Stamped);
    }
    table.find("color").and_then(|value| desk.color(&value)).map(Look::Plain)
}

/// The plain name of a PNG or JPEG, so that nothing outside the project's folder can be reached.
pub(super) fn picture(desk: &mut Desk, value: &Value<'_>) -> Option<String> {
    let found = desk.text(value)?;
    let lower = found.to_lowercase();
    let kind = [".png", ".jpg", ".jpeg"].iter().any(|end| lower.ends_with(end) && lower.len() > end.len());
    if kind && !found.starts_with('.') && !found.contains(['/', '\\', ':']) {
        return Some(found);
    }
    desk.blame(value, ProblemKind::BadPicture { found });
    None
}

/// Printed panels: columns and rows, or one by one.
fn collage(desk: &mut Desk, table: &Table<'_>, sheet: Size) -> Collage {
    if table.find("panels").is_some() {
        return one_by_one(desk, table, sheet);
    }
    let mut lengths = |key: &'static str| -> Vec<Length> {
        let Some(value) = table.find(key) else {
            table.blame_key(desk, key, ProblemKind::MissingKey { key, wanted: "lengths" });
            return Vec::new();
        };
        let entries = desk.list(&value, "lengths").unwrap_or_default();
        entries.iter().filter_map(|entry| desk.length(entry, Bounds::Piece)).collect()
    };
    let collage = Collage { columns: lengths("columns"), rows: lengths("rows"), panels: Vec::new() };
    let sum = |lengths: &[Length]| lengths.iter().fold(Length::ZERO, |sum, length| sum + *length);
    let printed = Size::new(sum(&collage.columns), sum(&collage.rows));
    if !printed.fits(sheet) {
        let key = if printed.width > sheet.width { "columns" } else { "rows" };
        table.blame_key(desk, key, ProblemKind::CollageTooLarge { printed, sheet });
    }
    collage
}

/// Panels that are told one by one: on the sheet, none over another.
fn one_by_one(desk: &mut Desk, table: &Table<'_>, sheet: Size) -> Collage {
    if table.find("columns").is_some() || table.find("rows").is_some() {
        table.at_most_one(desk, &["columns", "rows", "panels"]);
    }
    let mut panels: Vec<Rect> = Vec::new();
    for row in table.rows(desk, "panels") {
        let mut edge = |key| row.need(desk, key).and_then(|value| desk.length(&value, Bounds::FromNothing));
        let (left, top) = (edge("left"), edge("top"));
        let size = row.needed_size(desk, "size", Catalogue::Nothing);
        let (Some(left), Some(top)) = (left, top) else { continue };
        let panel = Rect::new(left, top, size);
        let reaches = Size::new(panel.right(), panel.bottom());
        if !reaches.fits(sheet) {
            row.blame_key(desk, "size", ProblemKind::CollageTooLarge { printed: reaches, sheet });
        }
        let number = |index: usize| u32::try_from(index + 1).unwrap_or(u32::MAX);
        let meets = |other: &Rect| {
            panel.x < other.right() && other.x < panel.right() && panel.y < other.bottom() && other.y < panel.bottom()
        };
        if let Some(one) = panels.iter().position(meets) {
            let kind = ProblemKind::PanelsOverlap { one: number(one), other: number(panels.len()) };
            row.blame_key(desk, "left", kind);
        }
        panels.push(panel);
    }
    Collage { panels, ..Collage::default() }
}

/// Cardstocks; takes up their names.
pub(super) fn cardstocks(desk: &mut Desk, root: &Table<'_>, own: &mut Own) -> Vec<Cardstock> {
    let tables = match root.need(desk, "cardstock") {
        Some(_) => root.rows(desk, "cardstock"),
        None => Vec::new(),
    };
    if tables.is_empty() {
        own.lost();
    }
    let read = |table: Table<'_>| Cardstock {
        name: own.name(desk, &table, "name"),
        color: table.need(desk, "color").and_then(|value| desk.color(&value)).unwrap_or_default(),
        grammage_gsm: table.count(desk, "gsm"),
        thickness_um: table.length(desk, "thickness", Bounds::Thin).and_then(micrometres),
        sheets: stock_sheets(desk, &table),
    };
    tables.into_iter().map(read).collect()
}

fn stock_sheets(desk: &mut Desk, table: &Table<'_>) -> Vec<StockSheet> {
    let Some(value) = table.find("sheet") else { return vec![usual_stock_sheet(desk.unit)] };
    let entries = desk.one_or_many(&value);
    entries.iter().filter_map(|entry| stock_sheet(desk, entry)).collect()
}

/// Letter, or A4.
///
/// # Source
/// PWG 5101.1 (Letter is 8 1/2 × 11 in), ISO 216 (A4 is 210 × 297 mm).
fn usual_stock_sheet(unit: Unit) -> StockSheet {
    let size = match unit {
        Unit::Inch => Size::new(Unit::Inch.thousandths(8_500), Unit::Inch.thousandths(11_000)),
        Unit::Millimetre => Size::new(Length::mm(210), Length::mm(297)),
    };
    StockSheet { size, count: None, grain: Grain::Unknown, price: None, pack_of: 1, unusable: Edges::default() }
}

fn stock_sheet(desk: &mut Desk, value: &Value<'_>) -> Option<StockSheet> {
    if !matches!(value.inner, DeValue::Table(_)) {
        let size = desk.size(value, Catalogue::Sheets)?;
        return Some(StockSheet { size, ..usual_stock_sheet(desk.unit) });
    }
    let table = desk.table(value, &STOCK_SHEET)?;
    let size = table.needed_size(desk, "size", Catalogue::Sheets);
    let upright = size.height >= size.width;
    let grain = match table.choice(desk, "grain") {
        Some(0) if upright => Grain::AlongHeight,
        Some(1) if !upright => Grain::AlongHeight,
        Some(0..=2) => Grain::AlongWidth,
        Some(3) => Grain::AlongHeight,
        _ => Grain::Unknown,
    };
    let pack_of = table.count(desk, "pack_of").unwrap_or(1);
    let unusable = edges(desk, &table, Some(size));
    let (count, price) = (table.count(desk, "count"), price(desk, &table, "price"));
    Some(StockSheet { size, count, grain, price, pack_of, unusable })
}

/// To the nearest micrometre; a thinner sheet than one does not exist.
pub(super) fn micrometres(thickness: Length) -> Option<u32> {
    let step = Length::MM.ticks() / 1_000;
    u32::try_from((thickness.ticks() + step / 2) / step).ok().map(|micrometres| micrometres.max(1))
}

/// An amount alone, with the project's currency and date, or a table with its own.
pub(super) fn price(desk: &mut Desk, table: &Table<'_>, key: &str) -> Option<Price> {
    let value = table.find(key)?;
    if !matches!(value.inner, DeValue::Table(_)) {
        let amount = desk.amount(&value)?;
        return Some(Price { amount, currency: desk.currency.clone(), date: desk.priced_on.clone() });
    }
    let table = desk.table(&value, &PRICE)?;
    let amount = table.need(desk, "amount").and_then(|value| desk.amount(&value));
    let own = table.find("currency").and_then(|value| currency(desk, &value));
    let date = table.find("date").and_then(|value| desk.date(&value));
    Some(Price {
        amount: amount?,
        currency: own.unwrap_or_else(|| desk.currency.clone()),
        date: date.or_else(|| desk.priced_on.clone()),
    })
}

/// Three capitals.
///
/// # Source
/// ISO 4217: an alphabetic code has three letters.
pub(super) fn currency(desk: &mut Desk, value: &Value<'_>) -> Option<String> {
    let found = desk.text(value)?;
    if found.len() == 3 && found.bytes().all(|sign| sign.is_ascii_uppercase()) {
        return Some(found);
    }
    desk.blame(value, ProblemKind::BadCurrency { found });
    None
}
