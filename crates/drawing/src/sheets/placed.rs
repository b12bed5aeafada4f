//! A print under its cuts, with its pictures: which stay whole, and which are cut or covered.

use cards::Plan;
use cards::plan::Piece;
use measure::{Length, Rect, Size};

use super::Faces;
use super::card::pixels;
use super::look::{ACCENT, Fit, INK, WHITE, middle, pt, say};
use crate::scene::{Mark, Pen, Point, Role, Scene};

/// One print of a layout under its cuts as they lie, or (`plain`) as they would lie had the print not been looked at; `None`
/// if nothing is known of it.
///
/// # Shape
/// `print` counts the prints of the layout's gain. A picture on one piece has a solid frame; one that is cut has a
/// broken one, and a cross.
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
    marks.push(Mark::fill(whole, WHITE.with_alpha(50)));
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
            let pen = |color, width| Pen { color, width, dash: vec![pt(5), pt(4)] };
            marks.push(Mark::frame(rect, Pen::solid(WHITE.with_alpha(180), pt(4))));
            marks.push(Mark::frame(rect, pen(ACCENT, pt(2))));
            // A small cross in its middle: told apart without colour, and prints stay to be seen.
            let (at, arm) = (middle(rect), pt(8));
            for (pen, arm) in [(Pen::solid(WHITE, pt(7)), arm + pt(1)), (Pen::solid(ACCENT, pt(4)), arm)] {
                let corner = |right: i64, down: i64| Point::new(at.x + arm * right, at.y + arm * down);
                marks.push(Mark::line(corner(-1, -1), corner(1, 1), pen.clone()));
                marks.push(Mark::line(corner(1, -1), corner(-1, 1), pen));
            }
        }
    }
    let tally = if plain { shown.before } else { shown.after };
    let facts = [("whole", (tally.whole + tally.hidden).into()), ("pictures", shown.spots.len().into())];
    let alt = say(if plain { "placed-plain-alt" } else { "placed-alt" }, &facts);
    Some(Scene { size, title: alt.clone(), marks: vec![Mark::role(Role::Figure(alt), marks)] })
}
