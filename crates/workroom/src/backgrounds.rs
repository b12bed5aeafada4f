//! Backgrounds stamped by hand: the ink of stamps that are pictures, markers chosen by colour, the files of a guide.

use std::fmt::Write as _;
use std::sync::Arc;

use cards::Plan;
use cards::background::{Hand, Laid, Mask, Outline, lay, slips, trace};
use cards::model::{Background, Marker, MotifShape, Project};
use color::{Lab, Srgb, nearest};
use drawing::sheets::{
    ColoredIn, Edition, Guide, background_pixels, background_scene, hand_of, light_box, placing_guide,
};
use drawing::{Picture, Scene, pdf, png, svg};
use measure::{Length, Size};
use store::shelf::Shelved;

use crate::colors::near;
use crate::make::DrawingError;
use crate::outputs::OutFile;
use crate::pictures;

/// Pixels of a traced picture's longer side. Chosen: a tenth of a millimetre on a stamp of 1 1/4 in.
const TRACED: u32 = 320;
/// Pixels an inch of a background's own picture: sharp on a card's panel, printed at true size.
const PER_INCH: u32 = 150;

/// The ink of a picture file; `None` if it cannot be read or holds none.
pub(crate) fn ink(bytes: &[u8]) -> Option<Outline> {
    let (width, inked) = pictures::ink(bytes, TRACED).ok()?;
    trace(&Mask { width, inked }, Length::MM).ok()
}

/// The project with the ink of every stamp that is a picture, as far as it can be had.
pub(crate) fn traced(project: &Project, read: &dyn Fn(&str) -> Option<Arc<Vec<u8>>>) -> Project {
    let mut traced = project.clone();
    let stamps = traced.backgrounds.iter_mut().flat_map(|background| &mut background.motifs);
    let greetings = traced.greetings.iter_mut().filter_map(|greeting| greeting.mark.as_mut());
    for shape in stamps.map(|stamp| &mut stamp.shape).chain(greetings) {
        if let MotifShape::Picture(name, outline) = shape {
            *outline = read(name).and_then(|bytes| ink(&bytes));
        }
    }
    traced
}

/// The face of a background on a sheet of some size.
pub(crate) fn face(plan: &Plan, index: usize, sheet: Size, per_inch: u32) -> Option<Picture> {
    let (background, laid) = (plan.project.backgrounds.get(index)?, plan.backgrounds.get(index)?.as_ref()?);
    background_pixels(background, laid, sheet, per_inch).ok()
}

/// The markers on a shelf whose colour is told and of which there is something left.
pub(crate) fn markers(shelf: &[Shelved]) -> Vec<Marker> {
    let items = shelf.iter().map(|shelved| &shelved.item);
    let there = items.filter(|item| item.kind == "marker" && !item.amount.is_zero() && !item.color.is_empty());
    there.map(|item| Marker { name: item.name.clone(), color: item.color.clone() }).collect()
}

/// How every stamp that is coloured in is, the lightest colour first, with the nearest of the markers that the
/// background names and of those on the shelf.
pub(crate) fn colored(background: &Background, shelf: &[Marker]) -> Vec<ColoredIn> {
    let all: Vec<&Marker> = background.markers.iter().chain(shelf).collect();
    let known: Vec<(&Marker, Lab)> =
        all.into_iter().filter_map(|marker| Some((marker, Lab::of(Srgb::from_hex(&marker.color)?)))).collect();
    let markers: Vec<Lab> = known.iter().map(|(_, lab)| *lab).collect();
    let mut all: Vec<(f64, ColoredIn)> = Vec::new();
    for (stamp, of) in background.motifs.iter().enumerate().filter(|(_, of)| of.share > 0) {
        let Some(wanted) = of.fill.as_deref().and_then(Srgb::from_hex).map(Lab::of) else { continue };
        let found = nearest(wanted, &markers);
        let marker = found.and_then(|(at, _)| known.get(at)).map(|(marker, _)| *marker);
        let near = found.map_or_else(String::new, |(_, delta)| near(delta));
        let marker = marker.map(|marker| (marker.name.clone(), marker.color.clone()));
        all.push((-wanted.l, ColoredIn { stamp, marker, near }));
    }
    all.sort_by(|one, other| one.0.total_cmp(&other.0));
    all.into_iter().map(|(_, of)| of).collect()
}

/// The sheet numbered for the hand of an edition.
pub(crate) fn for_hand(background: &Background, laid: &Laid, edition: &Edition) -> Laid {
    match hand_of(edition) {
        Hand::Right => laid.clone(),
        Hand::Left => lay(background, Hand::Left).unwrap_or_else(|_| laid.clone()),
    }
}

/// The files of one background of a plan: the guide, the sheet for a light box, its picture; none if it cannot be stamped.
///
/// # Errors
/// [`DrawingError`], a mistake of ours.
pub(crate) fn files(
    plan: &Plan,
    index: usize,
    edition: &Edition,
    square: Length,
    shelf: &[Marker],
) -> Result<Vec<OutFile>, DrawingError> {
    let (Some(background), Some(Some(laid))) = (plan.project.backgrounds.get(index), plan.backgrounds.get(index))
    else {
        return Ok(Vec::new());
    };
    let number = index + 1;
    let scene = background_scene(background, laid);
    let picture = format!("background-{number}.png");
    let failed = |file: &str, reason: String| DrawingError { file: file.to_owned(), reason };
    let bytes = png::write(&scene, PER_INCH).map_err(|error| failed(&picture, error.to_string()))?;
    let laid = for_hand(background, laid, edition);
    let (colored, slips) = (colored(background, shelf), slips(background, &laid));
    let guide = Guide { background, laid: &laid, mark: plan.project.mark, colored: &colored, slips: &slips };
    let book = |name: String, scenes: &[Scene]| {
        let about = pdf::About {
            title: background.name.clone(),
            author: plan.project.maker.clone(),
            language: edition.language,
            ..pdf::About::default()
        };
        let bytes = pdf::write(scenes, &about).map_err(|error| failed(&name, error.to_string()))?;
        Ok(OutFile::new(name, bytes))
    };
    Ok(vec![
        book(format!("background-{number}.pdf"), &placing_guide(&guide, edition, square))?,
        book(format!("background-{number}-light-box.pdf"), &[light_box(&guide, edition)])?,
        OutFile::new(picture, bytes),
        OutFile::new(format!("background-{number}.svg"), svg::write(&scene)),
    ])
}

/// The rims of an outline stretched over a box, as a path of a drawing in points.
pub(crate) fn path_over(outline: &Outline, x: Length, y: Length, over: Size) -> String {
    let [left, top, right, bottom] = outline.bounds();
    let (x, y, wide, high) = (x.to_points(), y.to_points(), over.width.to_points(), over.height.to_points());
    let mut d = String::new();
    for rim in outline.rims() {
        for (at, p) in rim.iter().enumerate() {
            let sign = if at == 0 { 'M' } else { 'L' };
            let along = |at: f64, from: f64, to: f64, long: f64| long * (at - from) / (to - from).max(1e-9);
            let (right_by, down_by) = (along(p.0, left, right, wide), along(p.1, top, bottom, high));
            // Writing to a text cannot fail.
            let _ = write!(d, "{sign}{:.2} {:.2}", x + right_by, y + down_by);
        }
        d.push('Z');
    }
    d
}
