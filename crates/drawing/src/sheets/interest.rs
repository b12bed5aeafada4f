//! Where the interest of a print lies: the print pale, darker where it matters more, its pictures framed and numbered.
//!
//! Left out on purpose: how interest is found. This room is handed shares.

use std::sync::Arc;

use measure::{Length, Rect, Size};

use super::look::{ACCENT, Fit, INK, WHITE, half, middle, pt};
use crate::picture::Picture;
use crate::scene::{Mark, Pen, Point, Role, Scene};
use crate::text::{Align, Face, Style, place, shape};

/// Shares in a grid over a sheet.
#[derive(Debug, Clone, Copy)]
pub struct Shade<'a> {
    /// Cells across; at least 1.
    pub columns: usize,
    /// From 0 (nothing) to 255, row by row from the top left.
    pub shares: &'a [u8],
}

/// Longest side of the picture that is made, in pixels. `Chosen:` sharp at the widest that a page shows it.
const SEEN: u32 = 600;

/// A print of a sheet, shaded; `boxes` are framed and numbered from 1.
///
/// # Shape
/// The sheet fills `size` in proportion. `alt` is said of the whole.
pub fn interest_drawing(
    print: &Picture,
    sheet: Size,
    shade: Shade<'_>,
    boxes: &[Rect],
    size: Size,
    alt: &str,
) -> Scene {
    let fit = Fit::into(sheet, Rect::new(Length::ZERO, Length::ZERO, size));
    let whole = fit.rect(Rect::new(Length::ZERO, Length::ZERO, sheet));
    let mut marks = Vec::new();
    if let Some(picture) = shaded(print, shade) {
        marks.push(Mark::Image { picture, rect: whole, clip: whole });
    }
    marks.push(Mark::frame(whole, Pen::solid(INK, pt(1))));
    for (number, on_sheet) in (1_usize..).zip(boxes) {
        let rect = fit.rect(*on_sheet);
        marks.push(Mark::frame(rect, Pen::solid(WHITE, pt(5))));
        marks.push(Mark::frame(rect, Pen::solid(INK, pt(2))));
        let style = Style::new(Face::Bold, 15);
        let line = shape(&number.to_string(), style);
        let ground = Size::new(line.width + pt(8), style.size + pt(5));
        let at = middle(rect);
        let ground = Rect::new(at.x - half(ground.width), at.y - half(ground.height), ground);
        marks.push(Mark::fill(ground, WHITE.with_alpha(225)));
        let base = Point::new(at.x, ground.bottom() - pt(5));
        marks.push(place(line, base, Align::Middle, INK));
    }
    Scene { size, title: alt.to_owned(), marks: vec![Mark::role(Role::Figure(alt.to_owned()), marks)] }
}

/// The print in pale grey, towards the accent where the share is large: told apart by how dark it is, too.
fn shaded(print: &Picture, shade: Shade<'_>) -> Option<Picture> {
    let small = print.part([0.0, 0.0, 1.0, 1.0], print.width_px().min(SEEN), print.height_px().min(SEEN));
    let (wide, tall) = (usize::try_from(small.width_px()).ok()?, usize::try_from(small.height_px()).ok()?);
    let columns = shade.columns.max(1);
    let rows = shade.shares.len() / columns;
    if rows == 0 || wide == 0 || tall == 0 {
        return None;
    }
    let mut rgb = Vec::with_capacity(wide * tall * 3);
    for (at, pixel) in small.rgb().chunks_exact(3).enumerate() {
        let (x, y) = (at % wide, at / wide);
        let share = u32::from(shade.shares[(y * rows / tall) * columns + x * columns / wide]);
        let grey = (u32::from(pixel[0]) * 3 + u32::from(pixel[1]) * 6 + u32::from(pixel[2])) / 10;
        // Half way to white, so that the shading is the darkest thing on it.
        let pale = 128 + grey / 2;
        for ink in ACCENT.rgb {
            let mixed = (pale * (255 - share * 4 / 5) + u32::from(ink) * (share * 4 / 5)) / 255;
            rgb.push(u8::try_from(mixed).unwrap_or(u8::MAX));
        }
    }
    Picture::new(small.width_px(), small.height_px(), Arc::from(rgb))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;

    #[test]
    fn what_matters_is_darker_where_it_lies() {
        let white = Picture::new(20, 20, Arc::from(vec![255; 1200])).unwrap();
        let shares: Vec<u8> = (0..16).map(|at| if at == 5 { 255 } else { 0 }).collect();
        let made = shaded(&white, Shade { columns: 4, shares: &shares }).unwrap();
        let light = |x: usize, y: usize| u32::from(made.rgb()[(y * 20 + x) * 3 + 1]);
        assert!(light(7, 7) < 120 && light(2, 2) > 240 && light(12, 7) > 240 && light(7, 12) > 240);
        assert!(shaded(&white, Shade { columns: 4, shares: &[] }).is_none());
    }

    #[test]
    fn every_picture_has_its_frame_and_its_number() {
        let inch = Length::INCH;
        let sheet = Size::new(inch * 12, inch * 6);
        let boxes =
            [Rect::new(inch, inch, Size::new(inch * 2, inch * 2)), Rect::new(inch * 6, inch, Size::new(inch, inch))];
        let print = Picture::plain([200, 180, 160]);
        let scene = interest_drawing(&print, sheet, Shade { columns: 2, shares: &[0, 9] }, &boxes, sheet, "two");
        let svg = crate::svg::write(&scene);
        assert!(svg.contains(">1<") && svg.contains(">2<") && !svg.contains(">3<"), "{svg}");
    }
}
