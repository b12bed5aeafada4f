//! A phone photo of one sheet for a face: its corners found, corrected by hand or by typing, and the sheet made straight.
//!
//! The photo is kept as it came, so that it can be made straight anew: under its own hash, and under that of the straight
//! picture, which goes with its design wherever that is put, renamed or copied (the patches whose colours are known: `known`).
//! Left out on purpose: which corners were taken the last time; they are looked for again.

use ::cards::model::Look;
use maud::{Markup, html};
use photo::{Point, Quad, QuadError, Raster};
use store::projects::{Kept, StoreError};

use super::answer::{Answer, Asked, Desk};
use super::edit::{self, Changed};
use super::facing::why;
use super::known::{self, Known};
use super::room::Room;
use super::{prints, say, shell};
use crate::pictures;
use crate::references;
use crate::squaring::{self, Wanted};

/// Longest side a photo is kept with. Chosen: 12 megapixels of a phone stay as they are.
const LONGEST: u32 = 4_096;
/// Pixels to an inch of a sheet. Chosen: as fine as a drawing needs.
const DOTS: i64 = 200;
/// The corners, in order.
const CORNERS: [&str; 4] = ["tl", "tr", "br", "bl"];

/// Which face, by its numbers and its side, and the hash of which photo.
#[derive(Debug, Clone, Copy)]
struct At<'a> {
    pack: usize,
    design: usize,
    side: &'a str,
    photo: &'a str,
}

impl<'a> At<'a> {
    fn new(asked: &'a Asked) -> Option<At<'a>> {
        let number = |name: &str| asked.either(name).parse::<usize>().ok();
        let side = Some(asked.either("side")).filter(|side| ["front", "back"].contains(side))?;
        let photo = asked.either("photo");
        let hash = photo.bytes().all(|byte| byte.is_ascii_hexdigit());
        Some(At { pack: number("pack")?, design: number("design")?, side, photo: if hash { photo } else { "" } })
    }

    fn query(&self) -> String {
        format!("pack={}&design={}&side={}&photo={}", self.pack, self.design, self.side, self.photo)
    }

    fn place(&self, key: &str) -> String {
        format!("pack.{}.design.{}.{}.{key}", self.pack, self.design, self.side)
    }
}

/// The name under which the photo is kept that a straight picture, told by its hash, was made of.
fn behind(picture: &str) -> String {
    format!("photo of {picture}")
}

/// Where the page of the photo is of which a face's picture was made, if it was made of one.
pub(super) fn again(desk: &Desk<'_>, (pack, design): (usize, usize), side: &str, picture: &str) -> Option<String> {
    let photo = desk.room.store().hash_of_picture(&behind(prints::hash(picture)?)).ok()??;
    Some(address(desk.kept, At { pack, design, side, photo: &photo }))
}

/// Whether a straight picture was made of a photo.
fn made_of(desk: &Desk<'_>, straight: &str, photo: &str) -> bool {
    desk.room.store().hash_of_picture(&behind(straight)).ok().flatten().as_deref() == Some(photo)
}

/// The photo behind a picture stands behind what was made of that picture too.
pub(super) fn follow(room: &Room, kept: &Kept, from: &str, to: &str) -> Result<(), StoreError> {
    let Some(from) = prints::hash(from) else { return Ok(()) };
    let Some(photo) = room.store().hash_of_picture(&behind(from))? else { return Ok(()) };
    let Some(bytes) = room.store().picture_of_hash(&photo)? else { return Ok(()) };
    let mut store = room.store();
    store.keep_picture(kept.id, &behind(to), &bytes)?;
    known::follow(&mut store, kept, from, to)
}

/// Where the page of a face's photo is.
fn address(kept: &Kept, at: At<'_>) -> String {
    format!("/w/{}/photo?{}", kept.id.0, at.query())
}

fn raster(bytes: &[u8]) -> Option<Raster> {
    let read = pictures::decode_whole(bytes).ok()?;
    let side = |pixels: u32| usize::try_from(pixels).unwrap_or(0);
    Raster::new(side(read.width), side(read.height), read.rgb)
}

/// The photo itself.
pub(super) fn file(room: &Room, asked: &Asked) -> Result<Option<Answer>, StoreError> {
    let Some(at) = At::new(asked) else { return Ok(None) };
    let bytes = room.store().picture_of_hash(at.photo)?;
    Ok(bytes.map(|body| Answer { status: 200, kind: "image/jpeg", forever: false, to: None, file: None, body }))
}

/// Keeps a photo that was sent; or says why it cannot be.
pub(super) fn upload(room: &Room, asked: &Asked, kept: &Kept) -> Result<Result<Answer, Markup>, StoreError> {
    let refused = |said: String| Ok(Err(html! { p { (said) } }));
    let Some(at) = At::new(asked) else { return refused(say("refused-place", &[])) };
    let bytes = asked.fields.iter().find(|(key, _)| key == "file").map_or(&[][..], |(_, bytes)| bytes);
    let read = match pictures::decode_whole(bytes) {
        Ok(read) => read,
        Err(error) => return refused(why(&error)),
    };
    let Some(picture) = drawing::Picture::new(read.width, read.height, read.rgb.into()) else {
        return refused(say("face-wrong-kind", &[]));
    };
    // Kept upright and without where and when it was taken.
    let hash = room.store().keep_picture(kept.id, &at.place("photo"), &picture.at_most(LONGEST).jpeg())?;
    Ok(Ok(Answer::see(address(kept, At { photo: &hash, ..at }))))
}

/// The corners as they were typed; `None` if none were.
fn typed(asked: &Asked) -> Option<[[String; 2]; 4]> {
    let field = |corner: &str, axis: &str| asked.field(&format!("{corner}-{axis}")).trim().to_owned();
    let all = CORNERS.map(|corner| ["x", "y"].map(|axis| field(corner, axis)));
    all.iter().flatten().any(|text| !text.is_empty()).then_some(all)
}

fn number(text: &str) -> Option<f64> {
    text.trim().replace(',', ".").parse::<f64>().ok().filter(|value| value.abs() < 1e6)
}

/// The file with the straight picture on the face; or why it cannot be.
pub(super) fn change(room: &Room, asked: &Asked, kept: &Kept) -> Result<Result<Changed, Markup>, StoreError> {
    let refused = |said: String| Ok(Err(html! { p { (said) } }));
    let Some(at) = At::new(asked) else { return refused(say("refused-place", &[])) };
    let bytes = room.store().picture_of_hash(at.photo)?;
    let Some(photo) = bytes.as_deref().and_then(raster) else { return refused(say("face-no-picture", &[])) };
    let project = store::project_file::read(&kept.now.text).ok();
    let sheet = project.as_ref().and_then(|project| Some(project.packs.get(at.pack)?.sheet));
    let Some(sheet) = sheet else { return refused(say("refused-place", &[])) };
    let places: Option<Vec<Point>> =
        typed(asked).unwrap_or_default().iter().map(|[x, y]| Some(Point::new(number(x)?, number(y)?))).collect();
    let Some(Ok(places)) = places.map(<[Point; 4]>::try_from) else { return refused(say("photo-eight", &[])) };
    let corners = match Quad::new(places) {
        Ok(corners) => corners,
        Err(QuadError::Crossed) => return refused(told("refused-corners-crossed")),
        Err(QuadError::Mirrored) => return refused(told("refused-corners-mirrored")),
        Err(_) => return refused(told("refused-corners-hollow")),
    };
    let neutral = match (asked.field("white-x").trim(), asked.field("white-y").trim()) {
        ("", "") => None,
        (x, y) => match (number(x), number(y)) {
            (Some(x), Some(y)) => Some(Point::new(x, y)),
            _ => return refused(say("photo-two", &[])),
        },
    };
    let patches = known::written(asked);
    let lines = match known::read(&patches) {
        Ok(lines) => lines,
        Err(said) => return refused(said),
    };
    if !lines.is_empty() && neutral.is_some() {
        return refused(say("photo-one-way", &[]));
    }
    let reference = match (!lines.is_empty()).then(|| references::fitted(&photo, &lines)).transpose() {
        Ok(reference) => reference,
        Err(spoilt) => return refused(spoilt.said),
    };
    let wanted = Wanted { corners, even: asked.field("even") == "yes", neutral, reference };
    let flat = wanted.squared(&photo, squaring::pixels(sheet, DOTS));
    let side = |pixels: usize| u32::try_from(pixels).unwrap_or(0);
    let (width, height) = (side(flat.width()), side(flat.height()));
    let Some(picture) = drawing::Picture::new(width, height, flat.into_rgb().into()) else {
        return refused(say("face-wrong-kind", &[]));
    };
    let picture = picture.at_most(pictures::LONGEST_SIDE);
    let hash = room.store().keep_picture(kept.id, &at.place("picture"), &picture.jpeg())?;
    room.store().keep_picture(kept.id, &behind(&hash), bytes.as_deref().unwrap_or_default())?;
    known::keep(&mut room.store(), kept, at.photo, &hash, &patches)?;
    let none = |key| (at.place(key), String::new());
    let changes = vec![none("drawn"), none("color"), none("background"), (at.place("picture"), prints::name(&hash))];
    let name = project
        .as_ref()
        .and_then(|project| project.design(at.pack, at.design))
        .map(|design| if at.side == "back" { design.back.name.clone() } else { design.front.name.clone() });
    let what = say("edit-photo", &[("name", name.unwrap_or_default().into())]);
    match edit::change(&kept.now.text, &changes) {
        Ok(Some(changed)) => Ok(Ok(Changed { what, ..changed })),
        Ok(None) => refused(say("face-same", &[])),
        Err(_) => refused(say("refused-place", &[])),
    }
}

/// A refusal with what would do.
fn told(id: &str) -> String {
    match id {
        "refused-corners-crossed" => {
            format!("{}: {}", say("refused-corners-crossed", &[]), say("refused-corners-crossed.remedy", &[]))
        }
        "refused-corners-mirrored" => {
            format!("{}: {}", say("refused-corners-mirrored", &[]), say("refused-corners-mirrored.remedy", &[]))
        }
        _ => format!("{}: {}", say("refused-corners-hollow", &[]), say("refused-corners-hollow.remedy", &[])),
    }
}

/// The page; `None` if no photo of that face is kept.
pub(super) fn page(desk: &Desk<'_>, refused: Option<&Markup>) -> Option<Answer> {
    let at = At::new(desk.asked)?;
    let design = desk.made.project().design(at.pack, at.design)?;
    let face = if at.side == "back" { &design.back } else { &design.front };
    let bytes = desk.room.store().picture_of_hash(at.photo).ok()??;
    let photo = raster(&bytes)?;
    #[allow(clippy::cast_precision_loss, reason = "pixel counts")]
    let (w, h) = (photo.width() as f64, photo.height() as f64);
    let mut note = say("photo-found", &[]);
    let places = typed(desk.asked).unwrap_or_else(|| {
        let sheet = desk.made.project().packs.get(at.pack).map(|pack| pack.sheet);
        let found = photo::find_corners(&photo, sheet.and_then(squaring::proportion));
        note = match &found {
            None => say("photo-none", &[]),
            Some(found) if !found.doubts.is_empty() => say("photo-doubted", &[]),
            Some(_) => say("photo-found", &[]),
        };
        let inset = [(0.1, 0.1), (0.9, 0.1), (0.9, 0.9), (0.1, 0.9)].map(|(x, y)| Point::new(x * w, y * h));
        found.map_or(inset, |found| found.corners.corners()).map(|at| [at.x, at.y].map(|value| format!("{value:.0}")))
    });
    let names = [say("photo-tl", &[]), say("photo-tr", &[]), say("photo-br", &[]), say("photo-bl", &[])];
    let field = |name: String, value: &str, label: String| {
        html! { label.field.short { span { (label) } input type="text" inputmode="numeric" name=(name) value=(value) autocomplete="off"; } }
    };
    let spot = |place: &[String; 2]| place.each_ref().map(|text| number(text).unwrap_or(0.0));
    let spots = places.each_ref().map(spot);
    let outline = spots.map(|[x, y]| format!("{x},{y}")).join(" ");
    let reach = w.max(h) / 40.0;
    let straight = match &face.look {
        Look::Picture(name) => prints::hash(name).filter(|straight| made_of(desk, straight, at.photo)),
        _ => None,
    };
    let known = Known::of(desk, at.photo, straight, &photo);
    let action = format!("/w/{}/photo", desk.kept.id.0);
    let picture = format!("/w/{}/photo.jpg?{}", desk.kept.id.0, at.query());
    let inside = html! {
        div.lead {
            h1 { (say("photo-title", &[("name", (&face.name).into())])) }
            p { (say("photo-lead", &[])) }
        }
        @if let Some(refused) = refused { div.refused role="alert" { (refused) } }
        div.photo-edit data-enhance="corners" {
            div.sheet id="photo" {
                svg.lined xmlns="http://www.w3.org/2000/svg" viewBox=(format!("0 0 {w} {h}")) role="group" aria-label=(say("photo-title", &[("name", (&face.name).into())])) {
                    image href=(picture) width=(w) height=(h) {}
                    polygon.outline points=(outline) {}
                    (known.marks(reach))
                    @for (number, (name, [x, y])) in names.iter().zip(spots).enumerate() {
                        circle.corner tabindex="0" role="button" data-corner=(CORNERS[number]) aria-label=(name) cx=(x) cy=(y) r=(reach) {}
                    }
                }
                p.hint.by-hand-only { (say("photo-hint", &[])) }
            }
            form.told method="post" action=(action) {
                // The first button is the one that Enter presses: it changes nothing.
                button.unseen type="submit" name="check" value="yes" tabindex="-1" aria-hidden="true" { (say("photo-check", &[])) }
                (shell::seen(desk.kept, "paper", &format!("design-{}-{}", at.pack, at.design)))
                input type="hidden" name="pack" value=(at.pack);
                input type="hidden" name="design" value=(at.design);
                input type="hidden" name="side" value=(at.side);
                input type="hidden" name="photo" value=(at.photo);
                input type="hidden" name="act" value="square";
                p role="status" { (note) }
                @for (number, name) in names.iter().enumerate() {
                    fieldset {
                        legend { (name) }
                        (field(format!("{}-x", CORNERS[number]), &places[number][0], say("photo-right", &[])))
                        (field(format!("{}-y", CORNERS[number]), &places[number][1], say("photo-down", &[])))
                    }
                }
                fieldset {
                    legend { (say("photo-light", &[])) }
                    label { input type="checkbox" name="even" value="yes" checked[desk.asked.field("even") == "yes"]; " " (say("photo-even", &[])) }
                    p.hint { (say("photo-white", &[])) }
                    (field("white-x".to_owned(), desk.asked.field("white-x"), say("photo-right", &[])))
                    (field("white-y".to_owned(), desk.asked.field("white-y"), say("photo-down", &[])))
                }
                (known.form(&action, &picture))
                button.main type="submit" { (say("photo-make", &[])) }
                p.hint { (say("photo-kept", &[])) }
            }
        }
    };
    let status = if refused.is_some() { 422 } else { 200 };
    Some(Answer::page(status, shell::of_project(desk, "paper", &inside)))
}
