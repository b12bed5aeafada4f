//! What comes of a change to a background while it is tried, and the changes themselves.

use std::fmt::Write as _;

use cards::background::{EdgeRule, Hand, Impression, Laid, MoveError, Placement, lay, shove};
use cards::model::{Background, MotifShape};
use drawing::scene::points;
use drawing::sheets::stamp_ink;
use maud::{Markup, html};
use measure::{Length, Unit, parse_length};
use store::project_file;
use store::projects::{Kept, StoreError};
use toml_edit::{Array, ArrayOfTables, DocumentMut, InlineTable, Item, Table, Value};

use super::answer::{Answer, Asked, Desk};
use super::edit::{self, Changed};
use super::room::{Made, Room};
use super::{background, fields, greetings, prints, say, shell};
use crate::{backgrounds, pictures, wording};

/// The fields of a form that changes a background.
pub(super) fn hidden(desk: &Desk<'_>, index: usize, act: &str) -> Markup {
    html! {
        (shell::seen(desk.kept, "background", "stamping"))
        input type="hidden" name="b" value=(index);
        input type="hidden" name="act" value=(act);
    }
}

/// A form that changes a background.
pub(super) fn form(desk: &Desk<'_>, index: usize, act: &str, inside: &Markup) -> Markup {
    html! {
        form class=(format!("act-{act}")) method="post" action=(format!("/w/{}/background", desk.kept.id.0)) {
            (hidden(desk, index, act))
            (inside)
        }
    }
}

/// The sheet as it will be, every impression to take hold of.
pub(super) fn drawn(background: &Background, laid: &Laid) -> Markup {
    let (width, height) = (pt(laid.sheet.width), pt(laid.sheet.height));
    let label = say("background-alt", &[("name", (&background.name).into()), ("count", laid.impressions.len().into())]);
    html! {
        svg.stamped xmlns="http://www.w3.org/2000/svg" viewBox=(format!("0 0 {width} {height}")) role="group" aria-label=(label) {
            (over(background, laid))
        }
    }
}

fn pt(length: Length) -> String {
    format!("{:.1}", length.to_points())
}

/// The ink of every stamp once, and every impression by its place and turn.
fn over(background: &Background, laid: &Laid) -> Markup {
    html! {
        g.over {
            defs {
                @for used in &laid.stamps {
                    @for generation in 1..=background.motifs[used.stamp].per_inking.clamp(1, 3) { (ink(background, laid, used.stamp, generation)) }
                }
            }
            rect width=(pt(laid.sheet.width)) height=(pt(laid.sheet.height)) fill=(background.paper) {}
            @for one in &laid.impressions { (impression(background, laid, one)) }
        }
    }
}

fn ink(background: &Background, laid: &Laid, stamp: usize, generation: u32) -> Markup {
    let (of, outline) = (&background.motifs[stamp], &laid.outlines[stamp]);
    let color = stamp_ink(background, of, generation);
    let path = |rims: &[Vec<(f64, f64)>]| {
        let mut d = String::new();
        for rim in rims {
            for (at, p) in rim.iter().enumerate() {
                let sign = if at == 0 { 'M' } else { 'L' };
                // Writing to a text cannot fail.
                let _ = write!(d, "{sign}{:.2} {:.2}", p.0 * 72.0 / 25.4, p.1 * 72.0 / 25.4);
            }
            d.push('Z');
        }
        d
    };
    let open = outline.rims().len() > outline.patches().len();
    html! {
        g id=(format!("ink-{stamp}-{generation}")) {
            @match &of.fill {
                Some(fill) => {
                    path d=(path(outline.patches())) fill=(fill) {}
                    @if open { path d=(path(outline.rims())) fill=(color) fill-rule="evenodd" {} }
                    @else { path d=(path(outline.rims())) fill="none" stroke=(color) stroke-width="1.4" {} }
                }
                None => path d=(path(outline.rims())) fill=(color) fill-rule="evenodd" {},
            }
        }
    }
}

fn impression(background: &Background, laid: &Laid, one: &Impression) -> Markup {
    let name = background.motifs.get(one.placed.motif).map_or("", |stamp| stamp.name.as_str());
    let facts = [("number", one.number.into()), ("stamp", name.into())];
    let said = if one.locked { say("stamped-one-locked", &facts) } else { say("stamped-one", &facts) };
    let (x, y) = (one.placed.x.to_points(), one.placed.y.to_points());
    let (wide, high) = (laid.sheet.width.to_points(), laid.sheet.height.to_points());
    let reach = laid.outlines.get(one.placed.motif).map_or(0.0, cards::background::Outline::reach) * 72.0 / 25.4;
    let wraps = background.edge == EdgeRule::Wrap;
    let along = |at: f64, size: f64| {
        let mut steps = vec![0.0];
        steps.extend((wraps && at < reach).then_some(size));
        steps.extend((wraps && at + reach > size).then_some(-size));
        steps
    };
    let copies: Vec<(f64, f64)> =
        along(x, wide).into_iter().flat_map(|dx| along(y, high).into_iter().map(move |dy| (dx, dy))).collect();
    let href = format!("#ink-{}-{}", one.placed.motif, one.generation);
    html! {
        g.impression.locked[one.locked] data-number=(one.number) data-x=(format!("{x:.1}")) data-y=(format!("{y:.1}"))
            tabindex=(if one.number == 1 { "0" } else { "-1" }) role="button" aria-pressed=(one.locked) aria-label=(said) {
            @for (dx, dy) in &copies {
                use href=(href) transform=(format!("translate({:.1} {:.1}) rotate({})", x + dx, y + dy, one.placed.turn)) {}
            }
            @if one.locked { circle.lock cx=(format!("{x:.1}")) cy=(format!("{y:.1}")) r="5" {} }
        }
    }
}

/// A sheet as a hand that slips stamps it, with rings round what touches another; the ink is that of the sheet above.
pub(super) fn askew(background: &Background, sheet: &Laid, touch: &[usize], caption: &str) -> Markup {
    let (width, height) = (pt(sheet.sheet.width), pt(sheet.sheet.height));
    let reach = |one: &Impression| {
        let reach = sheet.outlines.get(one.placed.motif).map_or(0.0, cards::background::Outline::reach);
        format!("{:.1}", reach * 72.0 / 25.4 + 3.0)
    };
    html! {
        figure.askew {
            svg xmlns="http://www.w3.org/2000/svg" viewBox=(format!("0 0 {width} {height}")) role="img" aria-label=(caption) {
                rect width=(width) height=(height) fill=(background.paper) {}
                @for one in &sheet.impressions {
                    use href=(format!("#ink-{}-{}", one.placed.motif, one.generation)) transform=(format!("translate({} {}) rotate({})", pt(one.placed.x), pt(one.placed.y), one.placed.turn)) {}
                }
                @for one in touch.iter().filter_map(|at| sheet.impressions.get(*at)) {
                    circle.touches cx=(pt(one.placed.x)) cy=(pt(one.placed.y)) r=(reach(one)) {}
                }
            }
            figcaption { (caption) }
        }
    }
}

/// What there is to stamp, in a sentence.
pub(super) fn told(desk: &Desk<'_>, background: &Background, laid: &Laid) -> String {
    let closest = laid.closest.map_or_else(|| "none".to_owned(), |closest| fields::length(desk, closest));
    let facts = [
        ("count", laid.impressions.len().into()),
        ("closest", closest.into()),
        ("off", laid.stamps.iter().map(|used| used.off_edge).sum::<u32>().into()),
        ("inkings", laid.stamps.iter().map(|used| used.inkings).sum::<u32>().into()),
        ("cover", laid.cover_percent.into()),
    ];
    let mut said = say("stamped-told", &facts);
    if let Some(short) = laid.shortfall {
        let facts = [("wished", short.wished.into()), ("placed", short.placed.into())];
        said = format!("{said} {}", say("stamped-short", &facts));
    }
    if !background.stands.is_empty() {
        said = format!("{said} {}", say("stamped-stand", &[]));
    }
    said
}

/// What would come of sliders as they stand, or of one impression moved: the picture, a sentence, fields as text.
pub(super) fn tried(desk: &Desk<'_>) -> Option<Answer> {
    let index: usize = desk.asked.query("b").parse().ok()?;
    let told = if desk.asked.query("number").is_empty() { slid(desk, index) } else { moving(desk, index) };
    let told = told.unwrap_or_else(|why| html! { p.stays { (why) } });
    Some(Answer::page(200, told))
}

/// Sliders: lengths come in steps, numbers as they are.
fn slid(desk: &Desk<'_>, index: usize) -> Result<Markup, String> {
    let unit = desk.made.project().unit;
    let mut changes: Vec<(String, String)> = Vec::new();
    let mut put = |place: &str, value: String| {
        changes.retain(|(there, _)| there != place);
        changes.push((place.to_owned(), value));
    };
    for (key, value) in &desk.asked.query {
        if let Some(place) = key.strip_prefix("set:") {
            put(place, value.clone());
        }
    }
    let mut set = Vec::new();
    for (key, value) in &desk.asked.query {
        let number = value.parse::<i64>().ok().filter(|number| (0..=1_000_000_000).contains(number));
        let text = match (key.split_once(':'), number) {
            (Some(("steps", place)), Some(steps)) if steps < 100_000 => {
                let length = (background::step(unit) * steps).max(Length::from_ticks(0));
                Some((place, wording::exact(length, unit)))
            }
            (Some(("number", place)), Some(number)) => Some((place, number.to_string())),
            _ => None,
        };
        if let Some((place, text)) = text {
            // A sheet goes by a number or by how dense it is.
            if let Some(of) = place.strip_suffix(".density") {
                put(&format!("{of}.count"), String::new());
                set.push((format!("{of}.count"), String::new()));
            }
            put(place, text.clone());
            set.push((place.to_owned(), text));
        }
    }
    let refused = || say("refused-place", &[]);
    let text = changed(&desk.kept.now.text, index, &changes).map_err(|()| refused())?;
    let mut project = project_file::read(&text).map_err(|problems| {
        let worded = problems.first().map(wording::problem);
        worded.map_or_else(refused, |worded| format!("{}: {}", worded.said, worded.remedy))
    })?;
    let mut tried = project.backgrounds.get_mut(index).cloned().ok_or_else(refused)?;
    with_ink(&mut tried, desk.made, index);
    let laid = lay(&tried, Hand::Right).map_err(|_| say("stamped-none", &[]))?;
    Ok(html! {
        svg { (over(&tried, &laid)) }
        p.said { (told(desk, &tried, &laid)) }
        @for (place, text) in &set { data.set data-place=(place) value=(text) {} }
    })
}

/// The ink of pictures as it was traced already.
fn with_ink(background: &mut Background, made: &Made, index: usize) {
    let known = made.project().backgrounds.get(index).map_or(&[][..], |before| &before.motifs);
    for stamp in &mut background.motifs {
        if let MotifShape::Picture(name, ink) = &mut stamp.shape {
            *ink = known.iter().find_map(|before| match &before.shape {
                MotifShape::Picture(of, ink) if of == name => ink.clone(),
                _ => None,
            });
        }
    }
}

/// One impression at another place, and the rest making room.
fn moving(desk: &Desk<'_>, index: usize) -> Result<Markup, String> {
    let (before, laid) = at_hand(desk.made, index).ok_or_else(|| say("refused-place", &[]))?;
    let number: usize = desk.asked.query("number").parse().map_err(|_| say("refused-place", &[]))?;
    let place = |name: &str| -> Option<Length> {
        let at: f64 = desk.asked.query(name).parse().ok().filter(|at: &f64| at.is_finite())?;
        Some(points(at.clamp(-10_000.0, 10_000.0)))
    };
    let (Some(x), Some(y)) = (place("x"), place("y")) else { return Err(say("refused-place", &[])) };
    let one = number.checked_sub(1).and_then(|at| laid.impressions.get(at)).ok_or_else(|| say("refused-place", &[]))?;
    let turn = desk.asked.query("turn").parse::<u16>().unwrap_or(one.placed.turn);
    let (after, gone) = shove(before, laid, number - 1, (x, y, turn)).map_err(|why| refusal(&why))?;
    let stood = lay(&after, Hand::Right).map_err(|_| say("stamped-none", &[]))?;
    let unit = desk.made.project().unit;
    Ok(html! {
        svg { (over(&after, &stood)) }
        p.said data-x=(wording::exact(rounded(x), unit)) data-y=(wording::exact(rounded(y), unit)) data-turn=(turn) {
            (told(desk, &after, &stood))
            @if gone > 0 { " " (say("stamped-gone", &[("count", gone.into())])) }
        }
    })
}

fn rounded(length: Length) -> Length {
    let step = Length::MM.ticks() / 100;
    Length::from_ticks((length.ticks() + step / 2).div_euclid(step) * step)
}

fn at_hand(made: &Made, index: usize) -> Option<(&Background, &Laid)> {
    Some((made.project().backgrounds.get(index)?, made.plan.backgrounds.get(index)?.as_ref()?))
}

fn refusal(why: &MoveError) -> String {
    match why {
        MoveError::Edge => say("stamped-stays-edge", &[]),
        MoveError::Locked(number) => say("stamped-stays-locked", &[("number", (number + 1).into())]),
        MoveError::Unknown(_) | MoveError::Wish(_) => say("refused-place", &[]),
    }
}

/// Keys that change where impressions come: what stood by hand is set out anew.
const SETS_OUT: [&str; 12] = [
    "gap",
    "density",
    "count",
    "arrangement",
    "edge",
    "seed",
    "sheet",
    "size",
    "share",
    "turn",
    "turn_within",
    "shape",
];

/// The file with these changes; where the sheet is set out anew, nothing stands by hand any more.
fn changed(text: &str, index: usize, changes: &[(String, String)]) -> Result<String, ()> {
    let changed = edit::change(text, changes).map_err(|_| ())?;
    let Some(changed) = changed else { return Ok(text.to_owned()) };
    let before = edit::document(text).map_err(|_| ())?;
    let anew = changes.iter().any(|(place, value)| {
        let key = place.rsplit('.').next().unwrap_or_default();
        SETS_OUT.contains(&key) && edit::written(&before, place).trim() != value.trim()
    });
    if !anew {
        return Ok(changed.text);
    }
    let mut document = edit::document(&changed.text).map_err(|_| ())?;
    table(&mut document, index).ok_or(())?.remove("stands");
    Ok(document.to_string())
}

fn table(document: &mut DocumentMut, index: usize) -> Option<&mut Table> {
    document.get_mut("background")?.as_array_of_tables_mut()?.get_mut(index)
}

/// The file with a background changed; or why it cannot be.
///
/// # Errors
/// [`StoreError`] if a picture cannot be kept.
pub(super) fn change(
    room: &Room,
    asked: &Asked,
    kept: &Kept,
    made: &Made,
) -> Result<Result<Option<Changed>, String>, StoreError> {
    if asked.field("act") == "picture" {
        return pictured(room, asked, kept);
    }
    match asked.field("act") {
        "greeting-picture" => return greetings::pictured(room, asked, kept, made),
        "greeting" => return Ok(greetings::added(asked, kept, made)),
        _ => {}
    }
    Ok(made_of(asked, kept, made))
}

fn made_of(asked: &Asked, kept: &Kept, made: &Made) -> Result<Option<Changed>, String> {
    let refused = || say("refused-place", &[]);
    let index: usize = asked.field("b").parse().map_err(|_| refused())?;
    let unit = made.project().unit;
    let mut document = edit::document(&kept.now.text).map_err(|_| refused())?;
    let name = made.project().backgrounds.get(index).map(|of| of.name.clone()).unwrap_or_default();
    let facts = || [("name", (&name).into())];
    let what = match asked.field("act") {
        "change" => {
            let changes = asked.changes();
            let told = edit::change(&kept.now.text, &changes).map_err(|_| refused())?;
            let Some(told) = told else { return Ok(None) };
            let text = changed(&kept.now.text, index, &changes).map_err(|()| refused())?;
            return Ok(Some(Changed { text, what: told.what }));
        }
        "begin" => {
            let (named, sheet) = (asked.field("name").trim(), asked.field("sheet").trim());
            if named.is_empty() {
                return Err(say("stamped-name-first", &[]));
            }
            begin(&mut document, named, sheet, unit).ok_or_else(refused)?;
            say("edit-stamped-begun", &[("name", named.into())])
        }
        "remove" => {
            let all = document.get_mut("background").and_then(Item::as_array_of_tables_mut).ok_or_else(refused)?;
            if index >= all.len() {
                return Err(refused());
            }
            all.remove(index);
            if all.is_empty() {
                document.remove("background");
            }
            say("edit-stamped-gone", &facts())
        }
        "toss" => {
            let of = table(&mut document, index).ok_or_else(refused)?;
            let seed = made.project().backgrounds.get(index).map_or(1, |of| of.seed);
            of.insert("seed", toml_edit::value(i64::from(seed % 1_000_000_000) + 1));
            of.remove("stands");
            say("edit-stamped-tossed", &facts())
        }
        "lock" => {
            let (before, laid) = at_hand(made, index).ok_or_else(refused)?;
            let numbers = numbers(asked.field("numbers"), laid.impressions.len())?;
            let frees = asked.field("how") == "free";
            // What is locked here stays where it stands; what is freed stands there too until all is set out anew.
            let mut locked = before.locked.clone();
            let mut stands = before.stands.clone();
            for one in numbers.iter().filter_map(|number| laid.impressions.get(number - 1)) {
                if frees {
                    locked.retain(|placed| *placed != one.placed);
                    if !before.stands.is_empty() && one.locked {
                        stands.push(one.placed);
                    }
                } else if !locked.contains(&one.placed) {
                    locked.push(one.placed);
                    stands.retain(|placed| *placed != one.placed);
                }
            }
            if !frees && stands.is_empty() {
                // Locking moves nothing: until the next toss the others stand where they are.
                let others = laid.impressions.iter().map(|one| one.placed).filter(|placed| !locked.contains(placed));
                stands = others.collect();
            }
            write(&mut document, index, before, &locked, &stands, unit).ok_or_else(refused)?;
            let told = [("count", numbers.len().into()), ("name", (&name).into())];
            if frees { say("edit-stamped-freed", &told) } else { say("edit-stamped-locked", &told) }
        }
        "move" => {
            let (before, laid) = at_hand(made, index).ok_or_else(refused)?;
            let number: usize = asked.field("number").trim().parse().map_err(|_| say("stamped-bad-number", &[]))?;
            let one = number.checked_sub(1).and_then(|at| laid.impressions.get(at));
            let one = one.ok_or_else(|| say("stamped-bad-number", &[]))?;
            let length =
                |key: &str, label| fields::typed(asked, key, label, |typed| measure::parse_signed(typed, Some(unit)));
            let (x, y) = (length("x", say("stamped-right", &[]))?, length("y", say("stamped-down", &[]))?);
            let turn = asked.field("turn").trim().parse::<u16>().map_or(one.placed.turn, |turn| turn % 360);
            let (after, _) = shove(before, laid, number - 1, (x, y, turn)).map_err(|why| refusal(&why))?;
            write(&mut document, index, before, &after.locked, &after.stands, unit).ok_or_else(refused)?;
            say("edit-stamped-moved", &[("number", number.into()), ("name", (&name).into())])
        }
        "stamp" => {
            let named = asked.field("name").trim();
            if named.is_empty() {
                return Err(say("stamped-name-first", &[]));
            }
            let size = asked.field("size").trim();
            fields::typed(asked, "size", say("stamped-size", &[]), |typed| parse_length(typed, Some(unit)))?;
            let of = table(&mut document, index).ok_or_else(refused)?;
            of.remove("stands");
            let all = of.get_mut("stamp").and_then(Item::as_array_of_tables_mut).ok_or_else(refused)?;
            all.push(stamp(named, asked.field("shape"), size));
            say("edit-stamp-added", &[("stamp", named.into()), ("name", (&name).into())])
        }
        "unstamp" => {
            let at: usize = asked.field("stamp").parse().map_err(|_| refused())?;
            let before = made.project().backgrounds.get(index).ok_or_else(refused)?;
            let gone = before.motifs.get(at).map(|stamp| stamp.name.clone()).ok_or_else(refused)?;
            let locked: Vec<Placement> = before.locked.iter().copied().filter(|placed| placed.motif != at).collect();
            write(&mut document, index, before, &locked, &[], unit).ok_or_else(refused)?;
            let of = table(&mut document, index).ok_or_else(refused)?;
            of.get_mut("stamp").and_then(Item::as_array_of_tables_mut).ok_or_else(refused)?.remove(at);
            say("edit-stamp-gone", &[("stamp", gone.into()), ("name", (&name).into())])
        }
        "show" => {
            let parts: Vec<&str> = asked.field("face").split('-').collect();
            let [pack, design, side] = parts[..] else { return Err(refused()) };
            return shown(asked, kept, made, &name, (pack, design, side));
        }
        _ => return Err(refused()),
    };
    Ok(Some(Changed { text: document.to_string(), what }))
}

/// A face of a design shows the background.
fn shown(
    _: &Asked,
    kept: &Kept,
    made: &Made,
    name: &str,
    (pack, design, side): (&str, &str, &str),
) -> Result<Option<Changed>, String> {
    let refused = || say("refused-place", &[]);
    let (at, number): (usize, usize) = (pack.parse().map_err(|_| refused())?, design.parse().map_err(|_| refused())?);
    let packs = &made.project().packs;
    let of = packs.get(at).and_then(|pack| pack.designs.get(number)).ok_or_else(refused)?;
    // Loose sheets come after the packs and hold their design themselves.
    let document = edit::document(&kept.now.text).map_err(|_| refused())?;
    let listed = document.get("pack").and_then(Item::as_array_of_tables).map_or(0, ArrayOfTables::len);
    let face = match at.checked_sub(listed) {
        None => format!("pack.{at}.design.{number}.{side}"),
        Some(loose) => format!("loose.{loose}.{side}"),
    };
    let mut changes: Vec<(String, String)> =
        ["picture", "drawn", "color", "collage"].iter().map(|key| (format!("{face}.{key}"), String::new())).collect();
    changes.push((format!("{face}.background"), name.to_owned()));
    let changed = edit::change(&kept.now.text, &changes).map_err(|_| refused())?;
    let what = say("edit-stamped-shown", &[("name", name.into()), ("design", (&of.name).into())]);
    Ok(changed.map(|changed| Changed { what, ..changed }))
}

/// `3, 12-15` as numbers from 1.
fn numbers(text: &str, most: usize) -> Result<Vec<usize>, String> {
    let bad = || say("stamped-bad-number", &[]);
    let mut found = Vec::new();
    for part in text.split([',', ' ', ';']).filter(|part| !part.is_empty()) {
        let (from, to) = part.split_once(['-', '–']).unwrap_or((part, part));
        let (from, to): (usize, usize) =
            (from.trim().parse().map_err(|_| bad())?, to.trim().parse().map_err(|_| bad())?);
        if from == 0 || to > most || from > to {
            return Err(bad());
        }
        found.extend(from..=to);
    }
    found.sort_unstable();
    found.dedup();
    if found.is_empty() { Err(bad()) } else { Ok(found) }
}

/// Where locked ones and all others stand, as the file has it.
fn write(
    document: &mut DocumentMut,
    index: usize,
    background: &Background,
    locked: &[Placement],
    stands: &[Placement],
    unit: Unit,
) -> Option<()> {
    let of = table(document, index)?;
    for (key, places) in [("locked", locked), ("stands", stands)] {
        if places.is_empty() {
            of.remove(key);
            continue;
        }
        let mut list = Array::new();
        for place in places {
            let mut row = InlineTable::new();
            row.insert("stamp", background.motifs.get(place.motif)?.name.as_str().into());
            row.insert("x", wording::exact(place.x, unit).into());
            row.insert("y", wording::exact(place.y, unit).into());
            if place.turn != 0 {
                row.insert("turn", i64::from(place.turn).into());
            }
            let mut row = Value::InlineTable(row);
            row.decor_mut().set_prefix("\n    ");
            list.push_formatted(row);
        }
        list.set_trailing("\n");
        of.insert(key, Item::Value(Value::Array(list)));
    }
    Some(())
}

fn stamp(name: &str, shape: &str, size: &str) -> Table {
    let mut stamp = Table::new();
    stamp.insert("name", toml_edit::value(name));
    stamp.insert("shape", toml_edit::value(shape));
    stamp.insert("size", toml_edit::value(size));
    stamp
}

/// A first background: a leaf and a dot, to be changed.
fn begin(document: &mut DocumentMut, name: &str, sheet: &str, unit: Unit) -> Option<()> {
    let mut of = Table::new();
    of.insert("name", toml_edit::value(name));
    of.insert("sheet", toml_edit::value(sheet));
    let (large, small) = match unit {
        Unit::Inch => ("1 1/4", "1/4"),
        Unit::Millimetre => ("32", "6"),
    };
    let mut stamps = ArrayOfTables::new();
    stamps.push(stamp(&say("shape-leaf", &[]), "leaf", large));
    let mut dots = stamp(&say("shape-dot", &[]), "dot", small);
    dots.insert("share", toml_edit::value(2));
    stamps.push(dots);
    of.insert("stamp", Item::ArrayOfTables(stamps));
    let all = document.as_table_mut().entry("background").or_insert_with(|| Item::ArrayOfTables(ArrayOfTables::new()));
    all.as_array_of_tables_mut()?.push(of);
    Some(())
}

/// What is used of a picture that was given: black ink on white, nothing else of it; with the mask and its width.
pub(super) fn inked(bytes: &[u8]) -> Result<(drawing::Picture, usize, Vec<bool>), String> {
    let bad = || say("stamped-bad-picture", &[]);
    let (width, inked) = pictures::ink(bytes, 800).map_err(|_| bad())?;
    if !inked.contains(&true) || backgrounds::ink(bytes).is_none() {
        return Err(say("stamped-empty-picture", &[]));
    }
    let rgb: Vec<u8> = inked.iter().flat_map(|ink| [if *ink { 0 } else { 255 }; 3]).collect();
    let (wide, high) = (u32::try_from(width).unwrap_or(1), u32::try_from(inked.len() / width.max(1)).unwrap_or(1));
    let picture = drawing::Picture::new(wide, high, rgb.into()).ok_or_else(bad)?;
    Ok((picture, width, inked))
}

/// A stamp takes its ink from a picture that was given.
fn pictured(room: &Room, asked: &Asked, kept: &Kept) -> Result<Result<Option<Changed>, String>, StoreError> {
    let bytes = asked.fields.iter().find(|(key, _)| key == "file").map_or(&[][..], |(_, bytes)| bytes);
    let (picture, ..) = match inked(bytes) {
        Ok(inked) => inked,
        Err(why) => return Ok(Err(why)),
    };
    let place = |key: &str| format!("background.{}.stamp.{}.{key}", asked.field("b"), asked.field("stamp"));
    let hash = room.store().keep_picture(kept.id, &place("picture"), &picture.jpeg())?;
    let changes =
        [(place("shape"), String::new()), (place("outline"), String::new()), (place("picture"), prints::name(&hash))];
    let refused = || say("refused-place", &[]);
    let index = asked.field("b").parse().unwrap_or(usize::MAX);
    Ok(match edit::change(&kept.now.text, &changes) {
        Ok(Some(told)) => changed(&kept.now.text, index, &changes)
            .map(|text| Some(Changed { text, what: say("edit-stamp-pictured", &[]) }))
            .map_err(|()| refused())
            .map(|made| made.or(Some(told))),
        Ok(None) => Ok(None),
        Err(_) => Err(refused()),
    })
}
