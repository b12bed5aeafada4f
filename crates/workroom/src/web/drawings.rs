//! Pictures, each by its own address: it names the revision, so it may be kept for ever.

use std::time::Duration;

use cards::model::Side;
use cards::plan::{Card, PartKind};
use drawing::scene::{points, share};
use drawing::sheets::{
    CutsOf, Hand, card_picture, light_table, piece_drawing, placed_drawing, step_picture, stock_drawing,
};
use drawing::{Color, Mark, Scene, svg};
use measure::{Length, Rect, Size};
use store::project_file;
use store::projects::{ProjectId, Revision};

use super::answer::{Answer, Asked};
use super::room::{Made, Room};
use super::{accent, by_hand, fields, interest, share as sharing};

/// How long a drawing waits for its plan.
const PATIENCE: Duration = Duration::from_secs(60);
/// Width of a card's front as drawn. Chosen: sharp on a screen at twice the usual size, light to send.
const CARD: Length = Length::from_ticks(Length::INCH.ticks() * 3 / 2);
/// Pixels across a print under its cuts. Chosen: sharp at the widest that a page shows it.
const PRINT_PX: u32 = 1_000;
const SVG: &str = "image/svg+xml";

/// The longest side of a sheet as drawn.
pub(super) const SHEET: Length = Length::from_ticks(Length::INCH.ticks() * 8);

/// A sheet's size as drawn.
pub(super) fn sheet_size(sheet: Size) -> Size {
    let longest = sheet.width.max(sheet.height).ticks();
    Size::new(share(SHEET, sheet.width.ticks(), longest), share(SHEET, sheet.height.ticks(), longest))
}

/// A drawing by its name under a revision.
pub(super) fn drawing(room: &Room, asked: &Asked, id: ProjectId, revision: &Revision, name: &str) -> Option<Answer> {
    let asked_for: Vec<String> = asked.query.iter().map(|(key, value)| format!("{key}={value}")).collect();
    let address = format!("{}/{}/{name}?{}", id.0, revision.number, asked_for.join("&"));
    if name == "accent.css" {
        return accent_of(room, revision);
    }
    room.drawn(&address, || {
        let project = project_file::read(&revision.text).ok()?;
        let made = room.job(&revision.text, &project).wait(PATIENCE)?;
        if let Some(number) = name.strip_prefix("print-").and_then(|rest| rest.strip_suffix(".jpg")) {
            return print(&made, number.parse().ok()?);
        }
        if let Some(which) = name.strip_prefix("side-").and_then(|rest| rest.strip_suffix(".jpg")) {
            return whole_side(&made, which);
        }
        let stem = name.strip_suffix(".svg")?;
        let (kind, rest) = stem.split_once('-')?;
        let numbers: Vec<usize> = rest.split('-').filter_map(|part| part.parse().ok()).collect();
        let hand = if rest.ends_with("left") { Hand::Left } else { Hand::Right };
        let step =
            |of: CutsOf, index: usize| step_picture(&made.plan, &made.faces, of, index, &fields::edition(&made, hand));
        // Every drawing is a picture, whose letters are drawn: an image on a page knows none of its fonts.
        if let ("page" | "template" | "short", [number]) = (kind, numbers.as_slice()) {
            let page = sharing::drawn(&made, kind, *number, &sharing::edition(made.project(), asked))?;
            return Some(Answer::kept(SVG, svg::write_outlined(&page).into_bytes()));
        }
        let scene = match (kind, numbers.as_slice()) {
            ("card", [number]) => card(&made, asked, *number)?,
            ("light", [number]) => light_table(&made.plan, made.both_faces(), numbered(&made, *number)?, CARD),
            ("piece", [number, part]) => {
                let part = numbered(&made, *number)?.parts.get(*part)?;
                let side = if rest.ends_with("back") { Side::Back } else { Side::Front };
                piece_drawing(&made.plan, made.both_faces(), part, side, CARD)?
            }
            ("face", [pack, design]) => face(&made, asked, *pack, *design, rest.ends_with("back"))?,
            ("interest", [pack, design]) => {
                let side = if rest.ends_with("back") { Side::Back } else { Side::Front };
                interest::drawn(&made, (*pack, *design, side), rest.split('-').nth(2)?)?
            }
            ("palette", [pack, design]) => palette(&made, *pack, *design, rest.ends_with("back"))?,
            ("sheetstep", [layout, index]) => step(CutsOf::Layout(*layout), *index)?.drawing,
            ("sheetmap", [layout, index]) => step(CutsOf::Layout(*layout), *index)?.place,
            ("stockstep", [stock, sheet, index]) => step(CutsOf::Stock(*stock, *sheet), *index)?.drawing,
            ("stockmap", [stock, sheet, index]) => step(CutsOf::Stock(*stock, *sheet), *index)?.place,
            ("placed", [layout, print]) => {
                let pack = made.project().packs.get(made.plan.layouts.get(*layout)?.pack)?;
                let plain = rest.ends_with("plain");
                placed_drawing(&made.plan, &made.faces, *layout, *print, plain, sheet_size(pack.sheet))?
            }
            ("stock", [stock, sheet]) => {
                let plan = made.plan.stocks.get(*stock)?;
                let size =
                    made.project().cardstocks.get(plan.cardstock)?.sheets.get(plan.sheets.get(*sheet)?.size)?.size;
                stock_drawing(&made.plan, *stock, *sheet, sheet_size(size))?
            }
            _ => return None,
        };
        Some(Answer::kept(SVG, svg::write_outlined(&scene).into_bytes()))
    })
}

/// The accent of a project; from its cardstock until its prints are drawn, and then nothing is kept of it.
fn accent_of(room: &Room, revision: &Revision) -> Option<Answer> {
    const CSS: &str = "text/css; charset=utf-8";
    let project = project_file::read(&revision.text).ok()?;
    let made = room.job(&revision.text, &project).wait(Duration::ZERO);
    let prints: Vec<&color::Share> =
        made.iter().flat_map(|made| made.colors()).flat_map(|print| &print.seen.shares).collect();
    let style = accent::style(&project, &prints).into_bytes();
    let answer = Answer::kept(CSS, style);
    Some(if made.is_some() { answer } else { answer.passing() })
}

fn numbered(made: &Made, number: usize) -> Option<&Card> {
    made.plan.cards.iter().find(|card| usize::try_from(card.number) == Ok(number))
}

/// The print under a layout, as it lies under its cuts.
fn print(made: &Made, layout: usize) -> Option<Answer> {
    let layout = made.plan.layouts.get(layout)?;
    let used = layout.sheets.first()?;
    let print = made.face((layout.pack, used.design, used.side))?.at_most(PRINT_PX);
    Some(Answer::kept("image/jpeg", print.jpeg().to_vec()))
}

/// One side of a design, `pack-design-front` or `-back`.
fn whole_side(made: &Made, which: &str) -> Option<Answer> {
    let mut parts = which.split('-');
    let (pack, design) = (parts.next()?.parse().ok()?, parts.next()?.parse().ok()?);
    let side = if parts.next()? == "back" { Side::Back } else { Side::Front };
    let print = made.face((pack, design, side))?.at_most(PRINT_PX);
    Some(Answer::kept("image/jpeg", print.jpeg().to_vec()))
}

/// A card, whole or with its first layers only, and with its sheets' other sides where that is asked for.
fn card(made: &Made, asked: &Asked, number: usize) -> Option<Scene> {
    let known = numbered(made, number)?;
    let mut card = by_hand::as_it_would_be(made, asked, known.number).unwrap_or_else(|| known.clone());
    if let Ok(layers) = asked.query("layers").parse() {
        card.parts.truncate(layers);
    }
    let other = asked.query("side") == "other";
    if other {
        for part in &mut card.parts {
            if let PartKind::Patterned { side, .. } = &mut part.kind {
                *side = side.other();
            }
        }
    }
    let faces = if other { made.both_faces() } else { &made.faces };
    Some(card_picture(&made.plan, faces, &card, CARD))
}

/// The colours of a face by their share, as a bar.
fn palette(made: &Made, pack: usize, design: usize, back: bool) -> Option<Scene> {
    let seen = made.seen((pack, design, if back { Side::Back } else { Side::Front }))?;
    let size = Size::new(Length::INCH * 2, Length::from_ticks(Length::INCH.ticks() / 6));
    let mut marks = Vec::new();
    let mut left = 0.0;
    for of in &seen.shares {
        let at = |share: f64| points(size.width.to_points() * share);
        let (x, next) = (at(left), at((left + of.share).min(1.0)));
        let rect = Rect::new(x, Length::ZERO, Size::new(next - x, size.height));
        marks.push(Mark::fill(rect, Color { rgb: [of.color.r, of.color.g, of.color.b], alpha: 255 }));
        left += of.share;
    }
    Some(Scene { size, title: String::new(), marks })
}

/// A face of a sheet, small.
fn face(made: &Made, asked: &Asked, pack: usize, design: usize, back: bool) -> Option<Scene> {
    let side = if back { Side::Back } else { Side::Front };
    let picture = made.face((pack, design, side))?.at_most(if asked.query("size") == "small" { 96 } else { 360 });
    let sheet = made.project().packs.get(pack)?.sheet;
    let width = Length::INCH * 2;
    let size = Size::new(width, share(width, sheet.height.ticks(), sheet.width.ticks()));
    let rect = Rect::new(Length::ZERO, Length::ZERO, size);
    Some(Scene { size, title: String::new(), marks: vec![Mark::Image { picture, rect, clip: rect }] })
}
