//! Backgrounds stamped by hand: their tables and keys, and the walk through them.

use cards::background::{
    Arrangement, EdgeRule, MOST_MOTIFS, Placement, SHAPES, StampError, Turning, outline, shape_outline,
};
use cards::model::{Background, Marker, Motif, MotifShape};
use measure::{Length, Size};
use toml::de::DeValue;

use super::desk::{Bounds, Desk, Table, Value};
use super::form::{Form, Shape, may, needed};
use super::names::{Catalogue, Own};
use super::paper::{WHITE, picture};
use super::problem::ProblemKind;

/// A background.
pub(super) static BACKGROUND: Form = Form {
    name: "background",
    says: "Paper you stamp yourself.",
    keys: &[
        needed("name", Shape::Text, "Its name."),
        needed("sheet", Shape::Size, "The sheet you stamp."),
        may("paper", Shape::Color, "Colour of the blank paper. Left out: white."),
        may("seed", Shape::Count(0, 1_000_000_000), "The same seed gives the same sheet. Left out: 1."),
        may("arrangement", Shape::Choice(ARRANGEMENTS), "How the impressions are set out. Left out: toss."),
        may("gap", Shape::Length, "Least distance between the ink of two. Left out: 1/8 in, or 3 mm."),
        may("edge", Shape::Choice(EDGES), "What happens at the edges. Left out: run off."),
        may("count", Shape::Count(1, MOST_MOTIFS), "How many impressions. Left out: as many as go on."),
        may("density", Shape::Count(1, 90), "Instead of a number: how much of the sheet is to be ink, in percent."),
        needed("stamp", Shape::Tables(&STAMP), "The stamps."),
        may("locked", Shape::Tables(&STAND), "Impressions that stay where they are."),
        may("stands", Shape::Tables(&STAND), "Where all others stand, once one was moved by hand."),
        may("marker", Shape::Tables(&MARKER), "The markers you have, for colouring in."),
    ],
};

/// How impressions can be set out.
pub(super) const ARRANGEMENTS: &[&str] = &["toss", "grid", "brick", "half-drop", "diagonal"];
/// What can happen at the edges.
pub(super) const EDGES: &[&str] = &["run off", "inside", "wrap"];
/// How a stamp can be turned.
pub(super) const TURNS: &[&str] = &["free", "upright"];

static STAMP: Form = Form {
    name: "background_stamp",
    says: "One stamp of a background.",
    keys: &[
        needed("name", Shape::Text, "Its name."),
        may("shape", Shape::Choice(SHAPES), "A shape that Octavo draws."),
        may("outline", Shape::Text, "Its corners, such as 0,0 4,0 2,3: right and down, in any unit."),
        may("picture", Shape::Text, "A PNG, JPEG or WebP beside this file: what is dark, or not clear, is its ink."),
        needed("size", Shape::Length, "The longer side of its ink."),
        may("share", Shape::Count(0, 100), "How many of it for every one of the others. Left out: 1."),
        may("turn", Shape::Choice(TURNS), "Turned as it comes, or upright. Left out: free."),
        may("turn_within", Shape::Count(1, 179), "Turned up to so many degrees either way."),
        may("ink", Shape::Color, "Colour of its ink. Left out: #3b4148."),
        may("fill", Shape::Color, "The colour it is coloured in with. Left out: none."),
        may("per_inking", Shape::Count(1, 3), "Impressions made with one inking, the later ones paler. Left out: 1."),
    ],
};

static STAND: Form = Form {
    name: "stand",
    says: "Where an impression stands.",
    keys: &[
        needed("stamp", Shape::Text, "The stamp."),
        needed("x", Shape::Length, "Its middle, from the left edge of the sheet."),
        needed("y", Shape::Length, "Its middle, from the top edge of the sheet."),
        may("turn", Shape::Count(0, 359), "Turned clockwise by so many degrees. Left out: 0."),
    ],
};

static MARKER: Form = Form {
    name: "marker",
    says: "A marker on your shelf.",
    keys: &[needed("name", Shape::Text, "Its name."), needed("color", Shape::Color, "Its colour.")],
};

/// The ink of a stamp that names none.
pub(super) const INK: &str = "#3b4148";

/// The gap that is meant where none is written.
pub(super) fn usual_gap(unit: measure::Unit) -> Length {
    match unit {
        measure::Unit::Inch => measure::Unit::Inch.thousandths(125),
        measure::Unit::Millimetre => Length::mm(3),
    }
}

/// Backgrounds; takes up their names.
pub(super) fn backgrounds(desk: &mut Desk, root: &Table<'_>, own: &mut Own) -> Vec<Background> {
    root.rows(desk, "background").iter().map(|table| background(desk, table, own)).collect()
}

fn background(desk: &mut Desk, table: &Table<'_>, own: &mut Own) -> Background {
    let name = own.name(desk, table, "name");
    let sheet = table.need(desk, "sheet").and_then(|value| desk.size(&value, Catalogue::Sheets));
    let mut named = Own::new("stamp");
    let tables = match table.need(desk, "stamp") {
        Some(_) => table.rows(desk, "stamp"),
        None => Vec::new(),
    };
    if tables.is_empty() {
        named.lost();
    }
    let motifs: Vec<Motif> = tables.iter().map(|row| stamp(desk, row, sheet, &mut named)).collect();
    if !motifs.is_empty() && motifs.iter().all(|stamp| stamp.share == 0) {
        table.blame_key(desk, "stamp", ProblemKind::NothingToStamp);
    }
    table.at_most_one(desk, &["count", "density"]);
    let locked = stands(desk, table, "locked", &named);
    let stands = stands(desk, table, "stands", &named);
    let mut markers = Own::new("marker");
    let marked = table.rows(desk, "marker");
    Background {
        name,
        // Two metres stand in for a sheet that cannot be read.
        sheet: sheet.unwrap_or(Size::new(Length::mm(2_000), Length::mm(2_000))),
        paper: table.find("paper").and_then(|value| desk.color(&value)).unwrap_or_else(|| WHITE.to_owned()),
        seed: table.count(desk, "seed").unwrap_or(1),
        arrangement: match table.choice(desk, "arrangement") {
            Some(1) => Arrangement::Grid,
            Some(2) => Arrangement::Brick,
            Some(3) => Arrangement::HalfDrop,
            Some(4) => Arrangement::Diagonal,
            _ => Arrangement::Toss,
        },
        gap: table.length(desk, "gap", Bounds::FromNothing).unwrap_or(usual_gap(desk.unit)),
        edge: match table.choice(desk, "edge") {
            Some(1) => EdgeRule::Inside,
            Some(2) => EdgeRule::Wrap,
            _ => EdgeRule::RunOff,
        },
        count: table.count(desk, "count"),
        density: table.count(desk, "density"),
        motifs,
        locked,
        stands,
        markers: marked
            .iter()
            .map(|row| Marker {
                name: markers.name(desk, row, "name"),
                color: row.need(desk, "color").and_then(|value| desk.color(&value)).unwrap_or_default(),
            })
            .collect(),
    }
}

fn stamp(desk: &mut Desk, row: &Table<'_>, sheet: Option<Size>, named: &mut Own) -> Motif {
    let name = named.name(desk, row, "name");
    row.at_most_one(desk, &["turn", "turn_within"]);
    let turning = match (row.choice(desk, "turn"), row.count(desk, "turn_within")) {
        (_, Some(most)) => Turning::Within(u16::try_from(most).unwrap_or(179)),
        (Some(1), None) => Turning::Upright,
        _ => Turning::Free,
    };
    let size = row.needed_length(desk, "size", Bounds::Piece);
    let mut made = Motif {
        name,
        shape: MotifShape::Drawn(SHAPES[0].to_owned()),
        size,
        share: row.count(desk, "share").unwrap_or(1),
        turning,
        ink: row.find("ink").and_then(|value| desk.color(&value)).unwrap_or_else(|| INK.to_owned()),
        fill: row.find("fill").and_then(|value| desk.color(&value)),
        per_inking: row.count(desk, "per_inking").unwrap_or(1),
    };
    let Some(shape) = shape(desk, row) else { return made };
    made.shape = shape;
    match (outline(&made), sheet) {
        (Ok(ink), Some(sheet)) => {
            let (width, height) = ink.extent();
            let (short, long) = (sheet.width.min(sheet.height), sheet.width.max(sheet.height));
            if width.min(height) > short.to_mm() || width.max(height) > long.to_mm() {
                row.blame_key(desk, "size", ProblemKind::StampTooLarge { size, sheet });
            }
        }
        // The rim has not traced a picture yet.
        (Err(StampError::NoInk(_) | StampError::UnknownShape(_)) | Ok(_), _) => {}
        (Err(StampError::Outline(why)), _) => {
            row.blame_key(desk, "outline", ProblemKind::BadOutline { why: Some(why) });
        }
    }
    made
}

/// What a stamp leaves: exactly one of three keys.
fn shape(desk: &mut Desk, row: &Table<'_>) -> Option<MotifShape> {
    let keys = ["shape", "outline", "picture"];
    row.at_most_one(desk, &keys);
    if let Some(value) = row.find("picture") {
        return picture(desk, &value).map(|name| MotifShape::Picture(name, None));
    }
    if let Some(value) = row.find("outline") {
        return corners(desk, &value).map(MotifShape::Corners);
    }
    if row.find("shape").is_none() {
        let choices = keys.map(str::to_owned).to_vec();
        row.blame_key(desk, "shape", ProblemKind::PickOne { found: Vec::new(), choices });
    }
    row.choice(desk, "shape").map(|index| MotifShape::Drawn(SHAPES[index].to_owned()))
}

/// What a greeting's stamp leaves, if it is told.
pub(super) fn mark(desk: &mut Desk, row: &Table<'_>) -> Option<MotifShape> {
    row.at_most_one(desk, &["outline", "picture"]);
    if let Some(value) = row.find("picture") {
        return picture(desk, &value).map(|name| MotifShape::Picture(name, None));
    }
    let shape = row.find("outline").and_then(|value| corners(desk, &value)).map(MotifShape::Corners)?;
    if let Err(StampError::Outline(why)) = shape_outline(&shape, Length::INCH) {
        row.blame_key(desk, "outline", ProblemKind::BadOutline { why: Some(why) });
        return None;
    }
    Some(shape)
}

/// `0,0 4,0 2,3` in thousandths.
fn corners(desk: &mut Desk, value: &Value<'_>) -> Option<Vec<(i64, i64)>> {
    let DeValue::String(text) = value.inner else {
        desk.wrong_type(value, Shape::Text.code());
        return None;
    };
    let corner = |corner: &str| {
        let (x, y) = corner.split_once(',')?;
        Some((thousandths(x)?, thousandths(y)?))
    };
    let read: Option<Vec<(i64, i64)>> = text.split_whitespace().map(corner).collect();
    if read.is_none() {
        desk.blame(value, ProblemKind::BadOutline { why: None });
    }
    read
}

/// A plain decimal number of at most three decimals and six whole digits.
fn thousandths(text: &str) -> Option<i64> {
    let number = rust_decimal::Decimal::from_str_exact(text).ok()?;
    let within = number.abs() < 1_000_000.into() && number.scale() <= 3;
    within.then(|| (number * rust_decimal::Decimal::from(1_000)).try_into().ok()).flatten()
}

fn stands(desk: &mut Desk, table: &Table<'_>, key: &str, named: &Own) -> Vec<Placement> {
    let Some(value) = table.find(key) else { return Vec::new() };
    let entries = desk.list_up_to(&value, "tables", MOST_MOTIFS as usize).unwrap_or_default();
    let mut found = Vec::new();
    for entry in &entries {
        let Some(row) = desk.table(entry, &STAND) else { continue };
        let stamp = row.need(desk, "stamp").and_then(|value| named.index(desk, &value));
        let mut place = |key: &'static str| row.need(desk, key).and_then(|value| desk.length(&value, Bounds::Shift));
        let (x, y) = (place("x"), place("y"));
        let turn = row.count(desk, "turn").and_then(|turn| u16::try_from(turn).ok()).unwrap_or(0);
        if let (Some(motif), Some(x), Some(y)) = (stamp, x, y) {
            found.push(Placement { motif, x, y, turn });
        }
    }
    found
}
