//! A background that is stamped by hand as a picture at true size, and as pixels: the face used everywhere else.

use cards::background::{EdgeRule, Impression, Laid, Outline as Ink};
use cards::model::{Background, Motif};
use measure::{Length, Rect, Size};

use super::look::{Fit, say};
use crate::Picture;
use crate::png::{self, PngError};
use crate::scene::{Color, Mark, Outline, Pen, Point, Role, Scene, Stretch, points};

/// What of 255 a second impression loses of its ink to the paper; a third loses it again. Chosen by looking.
const PALER: u8 = 120;
/// The line of a stamp that is coloured in.
const LINE: Length = Length::from_ticks(Length::MM.ticks() / 2);

/// The background at true size, with nothing beyond the edges of its sheet.
pub fn background_scene(background: &Background, laid: &Laid) -> Scene {
    let fit = Fit::scaled(Point::default(), Length::INCH, Length::INCH);
    let whole = Rect::new(Length::ZERO, Length::ZERO, laid.sheet);
    let marks = vec![Mark::clipped(whole, picture_marks(background, laid, fit))];
    let title = say("background-alt", &[("name", (&background.name).into()), ("count", laid.impressions.len().into())]);
    Scene { size: laid.sheet, title: title.clone(), marks: vec![Mark::role(Role::Figure(title), marks)] }
}

/// The pixels of the background over a sheet of some size, so many to the inch: from its top left corner, again and
/// again where it repeats without a seam, else blank paper beyond it.
///
/// # Errors
/// [`PngError`] for a sheet without pixels, or too large for them.
pub fn background_pixels(
    background: &Background,
    laid: &Laid,
    sheet: Size,
    per_inch: u32,
) -> Result<Picture, PngError> {
    let repeats = background.edge == EdgeRule::Wrap;
    let mut marks = vec![Mark::fill(Rect::new(Length::ZERO, Length::ZERO, sheet), paper_of(background))];
    let (mut x, mut y) = (Length::ZERO, Length::ZERO);
    loop {
        let fit = Fit::scaled(Point::new(x, y), Length::INCH, Length::INCH);
        marks.push(Mark::clipped(Rect::new(x, y, laid.sheet), picture_marks(background, laid, fit)));
        x += laid.sheet.width;
        if x >= sheet.width || !repeats {
            (x, y) = (Length::ZERO, y + laid.sheet.height);
        }
        if y >= sheet.height || !repeats || marks.len() > 400 {
            break;
        }
    }
    png::pixels(&Scene { size: sheet, title: String::new(), marks }, per_inch)
}

fn paper_of(background: &Background) -> Color {
    Color::parse(&background.paper).unwrap_or(super::look::WHITE)
}

/// Paper, then every impression in stamping order, with its copies where the sheet repeats.
pub(super) fn picture_marks(background: &Background, laid: &Laid, fit: Fit) -> Vec<Mark> {
    let mut marks = vec![Mark::fill(fit.rect(Rect::new(Length::ZERO, Length::ZERO, laid.sheet)), paper_of(background))];
    for one in &laid.impressions {
        for step in steps(background, laid, one) {
            marks.extend(impression(background, laid, one, fit, step));
        }
    }
    marks
}

/// The steps by which copies of an impression show on the sheet; one that is no step for itself.
pub(super) fn steps(background: &Background, laid: &Laid, one: &Impression) -> Vec<(Length, Length)> {
    let mut found = vec![(Length::ZERO, Length::ZERO)];
    if background.edge != EdgeRule::Wrap {
        return found;
    }
    let reach = points(laid.outlines.get(one.placed.motif).map_or(0.0, Ink::reach) * 72.0 / 25.4) + LINE;
    let along = |at: Length, size: Length| {
        let mut steps = vec![Length::ZERO];
        steps.extend((at < reach).then_some(size));
        steps.extend((at + reach > size).then_some(-size));
        steps
    };
    for x in along(one.placed.x, laid.sheet.width) {
        for y in along(one.placed.y, laid.sheet.height) {
            if (x, y) != (Length::ZERO, Length::ZERO) {
                found.push((x, y));
            }
        }
    }
    found
}

/// The ink of one impression: paler where it is not the first of its inking, coloured in where its stamp is.
fn impression(background: &Background, laid: &Laid, one: &Impression, fit: Fit, step: (Length, Length)) -> Vec<Mark> {
    let (Some(stamp), Some(ink)) = (background.motifs.get(one.placed.motif), laid.outlines.get(one.placed.motif))
    else {
        return Vec::new();
    };
    let color = ink_of(stamp, one.generation, paper_of(background));
    let rims = rims(ink, one, fit, step);
    let Some(fill) = stamp.fill.as_deref().and_then(Color::parse) else { return vec![Mark::path(rims, color)] };
    let patches = rims_of(ink.patches(), one, fit, step);
    let mut marks = vec![Mark::path(patches, fill)];
    if ink.rims().len() > ink.patches().len() {
        marks.push(Mark::path(rims, color));
    } else {
        let pen = Pen::solid(color, fit.length(LINE));
        marks.push(Mark::Shape { outline: Outline::Path(rims), fill: None, pen: Some(pen) });
    }
    marks
}

/// The colour of an impression of that generation on the background's paper, `#rrggbb`.
pub fn stamp_ink(background: &Background, stamp: &Motif, generation: u32) -> String {
    let [red, green, blue] = ink_of(stamp, generation, paper_of(background)).rgb;
    format!("#{red:02x}{green:02x}{blue:02x}")
}

/// The colour of an impression of that generation on a paper.
pub(super) fn ink_of(stamp: &Motif, generation: u32, paper: Color) -> Color {
    let ink = Color::parse(&stamp.ink).unwrap_or(super::look::INK);
    (1..generation).fold(ink, |ink, _| ink.mix(paper, PALER))
}

/// Every rim of an impression, inner ones against the way of what holds them, so that blank places stay blank.
pub(super) fn rims(ink: &Ink, one: &Impression, fit: Fit, step: (Length, Length)) -> Vec<Stretch> {
    rims_of(ink.rims(), one, fit, step)
}

fn rims_of(rims: &[Vec<(f64, f64)>], one: &Impression, fit: Fit, step: (Length, Length)) -> Vec<Stretch> {
    let angle = f64::from(one.placed.turn).to_radians();
    let (sin, cos) = (libm::sin(angle), libm::cos(angle));
    let place = |p: &(f64, f64)| {
        let mm = |mm: f64| points(mm * 72.0 / 25.4);
        let (x, y) = (mm(p.0 * cos - p.1 * sin), mm(p.0 * sin + p.1 * cos));
        fit.point(one.placed.x + step.0 + x, one.placed.y + step.1 + y)
    };
    ordered(rims, place)
}

/// Rims put where they come, inner ones against the way of what holds them, so that blank places stay blank.
pub(super) fn ordered(rims: &[Vec<(f64, f64)>], place: impl Fn(&(f64, f64)) -> Point) -> Vec<Stretch> {
    let mut path = Vec::new();
    for (index, rim) in rims.iter().enumerate() {
        let Some(first) = rim.first() else { continue };
        let held = rims.iter().enumerate().filter(|(other, by)| *other != index && holds(by, *first)).count();
        let onward = area(rim) > 0.0;
        let ordered: Vec<Point> = if onward == held.is_multiple_of(2) {
            rim.iter().map(&place).collect()
        } else {
            rim.iter().rev().map(&place).collect()
        };
        path.push(Stretch::Move(ordered[0]));
        path.extend(ordered[1..].iter().map(|to| Stretch::Line(*to)));
        path.push(Stretch::Close);
    }
    path
}

fn pairs(rim: &[(f64, f64)]) -> impl Iterator<Item = (&(f64, f64), &(f64, f64))> {
    rim.iter().zip(rim.iter().cycle().skip(1))
}

fn area(rim: &[(f64, f64)]) -> f64 {
    pairs(rim).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum()
}

fn holds(rim: &[(f64, f64)], p: (f64, f64)) -> bool {
    let crossed = |(a, b): &(&(f64, f64), &(f64, f64))| {
        (a.1 > p.1) != (b.1 > p.1) && p.0 < (b.0 - a.0) * (p.1 - a.1) / (b.1 - a.1) + a.0
    };
    pairs(rim).filter(crossed).count() % 2 == 1
}
