//! A print under its cuts, with its pictures: which stay whole, and which are cut or covered.

use cards::Plan;
use cards::plan::{Layout, Piece};
use measure::{Length, Rect, Size};

use super::Faces;
use super::card::pixels;
use super::look::{ACCENT, Fit, INK, WHITE, half, middle, pt, say, sixteenths};
use super::pages::Pages;
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
    let area = Rect::new(Length::ZERO, Length::ZERO, size);
    let (alt, marks) = marks(plan, faces, plan.layouts.get(layout)?, print, plain, area)?;
    Some(Scene { size, title: alt.clone(), marks: vec![Mark::role(Role::Figure(alt), marks)] })
}

/// The words for such a drawing and its marks inside `area`.
fn marks(
    plan: &Plan,
    faces: &Faces,
    layout: &Layout,
    print: usize,
    plain: bool,
    area: Rect,
) -> Option<(String, Vec<Mark>)> {
    let gain = layout.gain.as_ref()?;
    let shown = gain.prints.get(print)?;
    let sheet = plan.project.packs.get(layout.pack)?.sheet;
    let fit = Fit::into(sheet, area);
    let whole = fit.rect(Rect::new(Length::ZERO, Length::ZERO, sheet));
    let mut marks = Vec::new();
    match faces.get(&(layout.pack, shown.design, shown.side)) {
        Some(face) => {
            marks.push(Mark::Image { picture: face.at_most(pixels(area.size.width)), rect: whole, clip: whole });
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
    Some((alt, marks))
}

/// Where the plain order was kept: how many pictures stay whole in it.
pub(super) fn stays(layout: &Layout) -> Option<String> {
    let gain = layout.gain.as_ref().filter(|gain| !gain.moved)?;
    let (before, _, all) = gain.whole();
    (all > 0).then(|| say("layout-placed-stays", &[("whole", before.into()), ("pictures", all.into())]))
}

/// What placing gained on the sheets of a layout: the numbers, and the print that gained most, both ways.
pub(super) fn gained(plan: &Plan, faces: &Faces, layout: &Layout, pages: &mut Pages) {
    let Some(gain) = &layout.gain else { return };
    let (before, after, all) = gain.whole();
    if all == 0 || !gain.moved {
        return;
    }
    let Some((at, print)) = gain.most() else { return };
    let told = pages.told;
    let side = if told.large() { pages.width() } else { half(pages.width() - pt(16)) };
    let side = side.min(sixteenths(64));
    pages.room(side + told.subheading().leading() + told.body().leading() * 5);
    pages.section(&say("layout-placed", &[]));
    let facts = [("after", after.into()), ("before", before.into()), ("pictures", all.into())];
    let proven = if gain.proven { say("layout-placed-proven", &[]) } else { say("layout-placed-best", &[]) };
    pages.say(&format!("{} {proven}", say("layout-placed-lead", &facts)));
    let part = |plain: bool| {
        let tally = if plain { print.before } else { print.after };
        let facts = [("whole", (tally.whole + tally.hidden).into()), ("pictures", print.spots.len().into())];
        if plain { say("page-placed-plain", &facts) } else { say("page-placed-now", &facts) }
    };
    let mut right = Length::ZERO;
    for plain in [true, false] {
        pages.room(side + told.small().leading() * 3);
        let area = Rect::new(pages.left() + right, pages.y, Size::new(side, side));
        if let Some((alt, marks)) = marks(plan, faces, layout, at, plain, area) {
            pages.push(Mark::role(Role::Figure(alt), marks));
        }
        if told.large() || !plain {
            pages.y = area.bottom() + pt(6);
        }
        if told.large() {
            pages.note(&part(plain));
        }
        right = if told.large() { Length::ZERO } else { side + pt(16) };
    }
    if !told.large() {
        pages.note(&format!("{} {}", part(true), part(false)));
    }
    let letter = plan.project.design(layout.pack, print.design).map_or("", |design| design.letter.as_str());
    let print = say("page-placed-print", &[("letter", letter.into())]);
    pages.note(&format!("{print} {}", say("layout-placed-key", &[])));
}
