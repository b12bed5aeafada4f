//! Where the words of a scene end up, turned groups and all.

use drawing::scene::Mark;
use drawing::{Point, Scene};
use measure::{Rect, Size};

/// Every line of words with the box of its ink on the page.
pub(crate) fn boxes(scene: &Scene) -> Vec<(String, Rect)> {
    let mut found = Vec::new();
    gather(&scene.marks, &|rect| rect, &mut found);
    found
}

fn gather(marks: &[Mark], place: &dyn Fn(Rect) -> Rect, found: &mut Vec<(String, Rect)>) {
    for mark in marks {
        match mark {
            Mark::Text { line, at, .. } => found.push((line.text.to_string(), place(line.ink_box(*at)))),
            Mark::Group { turn: None, marks, .. } => gather(marks, place, found),
            Mark::Group { turn: Some((quarters, about)), marks, .. } => {
                gather(marks, &|rect| place(turned(rect, *quarters, *about)), found);
            }
            _ => {}
        }
    }
}

/// A rectangle turned clockwise about a point: right becomes down, down becomes left.
fn turned(rect: Rect, quarters: u8, about: Point) -> Rect {
    (0..quarters % 4).fold(rect, |r, _| {
        let x = about.x - (r.bottom() - about.y);
        let y = about.y + (r.x - about.x);
        Rect::new(x, y, Size::new(r.size.height, r.size.width))
    })
}
