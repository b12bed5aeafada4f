//! A print under its cuts, with its pictures: which stay whole, and which are cut or covered.

use cards::Plan;
use cards::plan::Piece;
use measure::{Length, Rect, Size};

use super::Faces;
use super::card::pixels;
use super::look::{ACCENT, Fit, INK, WHITE, pt, say};
use crate::scene::{Mark, Pen, Point, Role, Scene};

/// One print of a layout under its cuts as they lie, or (`plain`) as they would lie had the print not been looked at; `None`
/// if nothing is known of it.
///
/// # Shape
/// `print` counts the prints of the layout's gain. A picture that stays whole has a solid frame; one that is cut or covered is
/// veiled and crossed out.
pub fn placed_drawing(
    plan: &Plan,
    faces: &Faces,
    layout: usize,
    print: usize,
    plain: bool,
    size: Size,
) -> Option<Scene> {
    let layout = plan.layouts.get(layout)?;
    let gain = layout.gain.as_ref()?;
    let shown = gain.prints.get(print)?;
    let sheet = plan.project.packs.get(layout.pack)?.sheet;
    let area = Rect::new(Length::ZERO, Length::ZERO, size);
    let fit = Fit::into(sheet, area);
    let whole = fit.rect(Rect::new(Length::ZERO, Length::ZERO, sheet));
    let mut marks = Vec::new();
    match faces.get(&(layout.pack, shown.design, shown.side)) {
        Some(face) => {
            marks.push(Mark::Image { picture: face.at_most(pixels(size.width)), rect: whole, clip: whole });
        }
        None => marks.push(Mark::fill(whole, WHITE)),
    }
    marks.push(Mark::fill(whole, WHITE.with_alpha(70)));
    let pieces: &[Piece] = if plain { &gain.plain_pieces } else { &layout.pieces };
    for piece in pieces {
        let rect = fit.rect(piece.rect);
        marks.push(Mark::frame(rect, Pen::solid(WHITE, pt(4))));
        marks.push(Mark::frame(rect, Pen::solid(INK, pt(1))));
    }
    for spot in &shown.spots {
        let rect = fit.rect(*spot);
        if pieces.iter().any(|piece| piece.rect.contains(*spot)) {
            marks.push(Mark::frame(rect, Pen::solid(WHITE, pt(4))));
            marks.push(Mark::frame(rect, Pen::solid(INK, pt(2))));
        } else {
            let corner = |x: Length, y: Length| Point::new(x, y);
            marks.push(Mark::fill(rect, WHITE.with_alpha(140)));
            marks.push(Mark::line(
                corner(rect.x, rect.y),
                corner(rect.right(), rect.bottom()),
                Pen::solid(ACCENT, pt(2)),
            ));
            marks.push(Mark::line(
                corner(rect.right(), rect.y),
                corner(rect.x, rect.bottom()),
                Pen::solid(ACCENT, pt(2)),
            ));
        }
    }
    let tally = if plain { shown.before } else { shown.after };
    let facts = [("whole", (tally.whole + tally.hidden).into()), ("pictures", shown.spots.len().into())];
    let alt = say(if plain { "placed-plain-alt" } else { "placed-alt" }, &facts);
    Some(Scene { size, title: alt.clone(), marks: vec![Mark::role(Role::Figure(alt), marks)] })
}
