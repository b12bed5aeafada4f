//! Both faces of a piece, as on a light table: what shows, and what lies behind it.

use cards::Plan;
use cards::model::Side;
use cards::plan::{Card, CardPart, PartKind};
use measure::{Length, Rect, Size};

use super::card::piece_picture;
use super::look::{ACCENT, INK, SOFT, WHITE, half, inset, pt, say};
use super::{Faces, card, opening};
use crate::scene::{Mark, Pen, Point, Role, Scene, share};

/// One face of a patterned piece, `width` across as it stands on its card; `None` for a part that is no paper.
///
/// # Shape
/// A face that is not in `faces` is left white.
pub fn piece_drawing(plan: &Plan, faces: &Faces, part: &CardPart, side: Side, width: Length) -> Option<Scene> {
    let tall = share(width, part.rect.size.height.ticks(), part.rect.size.width.ticks().max(1));
    let rect = Rect::new(Length::ZERO, Length::ZERO, Size::new(width, tall));
    let alt = face_name(plan, part, side)?;
    let marks = face(plan, faces, part, side, rect)?;
    Some(Scene { size: rect.size, title: alt.clone(), marks: vec![Mark::role(Role::Figure(alt), marks)] })
}

/// A card, and under it both faces of each of its patterned pieces: left the one that shows, right the one behind.
///
/// # Shape
/// As [`super::card_picture`], taller by the faces.
pub fn light_table(plan: &Plan, faces: &Faces, one: &Card, width: Length) -> Scene {
    let above = super::card_picture(plan, faces, one, width);
    let room = share(width, 1, 12);
    let gap = half(room);
    let each = half(width - gap);
    let front = card::marks(plan, faces, one, Rect::new(room, room, Size::new(width, above.size.height - room * 2)));
    let mut marks = vec![Mark::role(Role::Figure(opening::alt(plan, one)), front)];
    let mut y = above.size.height;
    for part in &one.parts {
        let PartKind::Patterned { side, .. } = part.kind else { continue };
        let tall = share(each, part.rect.size.height.ticks(), part.rect.size.width.ticks().max(1));
        for (x, side, shows) in [(room, side, true), (room + each + gap, side.other(), false)] {
            let rect = Rect::new(x, y, Size::new(each, tall));
            let Some(mut drawn) = face(plan, faces, part, side, rect) else { continue };
            if shows {
                // Said by a heavy frame and a mark at the corner, not by colour alone.
                drawn.push(Mark::frame(inset(rect, -pt(1)), Pen::solid(ACCENT, pt(2))));
                let dot = share(each, 1, 9);
                let corner = Rect::new(rect.x, rect.y, Size::new(dot, dot));
                drawn.push(Mark::fill(corner, ACCENT));
                let (a, b, c) = (
                    Point::new(corner.x + share(dot, 2, 10), corner.y + share(dot, 5, 10)),
                    Point::new(corner.x + share(dot, 4, 10), corner.y + share(dot, 8, 10)),
                    Point::new(corner.x + share(dot, 8, 10), corner.y + share(dot, 2, 10)),
                );
                let pen = Pen::solid(WHITE, share(dot, 1, 7));
                drawn.extend([Mark::line(a, b, pen.clone()), Mark::line(b, c, pen)]);
            }
            let name = face_name(plan, part, side).unwrap_or_default();
            let id = if shows { "light-shows" } else { "light-behind" };
            marks.push(Mark::role(Role::Figure(say(id, &[("face", name.into())])), drawn));
        }
        y += tall + gap;
    }
    Scene { size: Size::new(above.size.width, y + gap), title: above.title, marks }
}

fn face_name(plan: &Plan, part: &CardPart, side: Side) -> Option<String> {
    let PartKind::Patterned { layout, design, .. } = part.kind else { return None };
    let pack = plan.layouts.get(layout)?.pack;
    Some(plan.project.design(pack, design)?.face(side).name.clone())
}

fn face(plan: &Plan, faces: &Faces, part: &CardPart, side: Side, rect: Rect) -> Option<Vec<Mark>> {
    let PartKind::Patterned { layout, piece, design, .. } = part.kind else { return None };
    let print = match piece_picture(plan, faces, layout, piece, design, side, rect.size) {
        Some(picture) => Mark::Image { picture, rect, clip: rect },
        None => Mark::fill(rect, WHITE),
    };
    let edge = Pen::solid(SOFT.mix(INK, 40), share(pt(1), 1, 2));
    Some(vec![print, Mark::frame(rect, edge)])
}
