//! The envelope to make, at true size: cut lines solid, score lines dashed.

use cards::Plan;
use cards::mailing::{Blank, mailings};
use measure::{Length, Rect};

use super::edition::Edition;
use super::labels::centred;
use super::look::{ACCENT, Fit, INK, middle, pt, say};
use super::templates::{Drawing, Press, on_pages};
use super::told::Told;
use crate::scene::{Mark, Pen, Scene};

/// A template for each size of envelope that the plan's cards could go into, made by hand.
///
/// # Shape
/// As [`super::templates()`]: what is larger than the page is laid over several.
pub fn envelope_templates(plan: &Plan, edition: &Edition, square: Length) -> Vec<Scene> {
    let press = Press { told: Told::new(plan.project.mark, *edition), square: square.max(Length::MM) };
    let mut blanks: Vec<(Blank, String)> = Vec::new();
    for mailing in mailings(plan) {
        let recipe = plan.project.recipes.get(mailing.recipe).map_or("", |recipe| recipe.name.as_str());
        match blanks.iter_mut().find(|(blank, _)| *blank == mailing.fit.blank) {
            Some((_, names)) if names.split(", ").any(|name| name == recipe) => {}
            Some((_, names)) => *names = format!("{names}, {recipe}"),
            None => blanks.push((mailing.fit.blank, recipe.to_owned())),
        }
    }
    let pages = blanks.into_iter().map(|(blank, names)| on_pages(&drawing(blank, &names, press), press));
    pages.flatten().collect()
}

fn drawing(blank: Blank, names: &str, press: Press) -> Drawing<'static> {
    let told = press.told;
    let draw = move |fit: Fit, _: Rect| {
        let cut = outline(blank);
        let corner = |point: &(Length, Length)| fit.point(point.0, point.1);
        let pen = Pen::solid(INK, pt(1));
        let mut marks: Vec<Mark> = (cut.iter().zip(cut.iter().cycle().skip(1)))
            .map(|(from, to)| Mark::line(corner(from), corner(to), pen.clone()))
            .collect();
        let score = Pen { color: ACCENT, width: pt(1), dash: vec![pt(6), pt(3)] };
        let face = face(blank);
        let (left, right, top, bottom) = (face.x, face.right(), face.y, face.bottom());
        for (from, to) in [
            ((left, top), (right, top)),
            ((left, bottom), (right, bottom)),
            ((left, top), (left, bottom)),
            ((right, top), (right, bottom)),
        ] {
            marks.push(Mark::line(corner(&from), corner(&to), score.clone()));
        }
        let drawn = fit.rect(face);
        let centre = middle(drawn);
        let text = say("page-envelope-face", &[("size", told.size(blank.face).into())]);
        marks.extend(centred(&text, press.style(), centre, INK).marks);
        marks
    };
    Drawing {
        title: say("page-envelope-title", &[("names", names.into())]),
        note: say("page-envelope-note", &[("size", told.size(blank.sheet()).into())]),
        size: blank.sheet(),
        draw: Box::new(draw),
    }
}

/// Where the face lies on the sheet: the upper flap above it, the lower one below.
fn face(blank: Blank) -> Rect {
    Rect::new(blank.side, blank.upper, blank.face)
}

/// The corners of the cut, clockwise from the top left of the upper flap. Flaps are narrower at their ends, so that they
/// do not show beside the face.
fn outline(blank: Blank) -> Vec<(Length, Length)> {
    let face = face(blank);
    let sheet = blank.sheet();
    // Chosen: an eighth of an inch at each end of a flap.
    let slant = Length::from_ticks(Length::INCH.ticks() / 8);
    let (left, right, top, bottom) = (face.x, face.right(), face.y, face.bottom());
    vec![
        (left + slant * 4, Length::ZERO),
        (right - slant * 4, Length::ZERO),
        (right, top),
        (sheet.width, top + slant * 2),
        (sheet.width, bottom - slant * 2),
        (right, bottom),
        (right - slant, sheet.height),
        (left + slant, sheet.height),
        (left, bottom),
        (Length::ZERO, bottom - slant * 2),
        (Length::ZERO, top + slant * 2),
        (left, top),
    ]
}
