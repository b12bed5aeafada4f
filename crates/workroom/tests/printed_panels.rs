//! The demo's own collage: twelve pictures, some with the edge of a table or a plain border of their own.
//!
//! Source: `drawing::prints::panels`, by which the sheet is drawn. An edge may be off by 1/8 in, the marks of a maker's rule.
#![allow(clippy::unwrap_used, reason = "tests")]

use measure::{Length, Size};
use photo::{Raster, find_panels};

#[test]
fn the_twelve_panels_of_the_demo_are_found() {
    let grid = drawing::prints::panels("recipe-cards").unwrap();
    let inches = |length: Length| f64::from(u32::try_from(length.ticks() * 8 / Length::INCH.ticks()).unwrap()) / 8.0;
    for per_inch in [50, 80, 100] {
        let sheet = Size::new(Length::INCH * 12, Length::INCH * 12);
        let drawn = drawing::prints::draw("recipe-cards", sheet, per_inch, 1).unwrap();
        let picture = Raster::new(drawn.width_px as usize, drawn.height_px as usize, drawn.rgb).unwrap();
        let found = find_panels(&picture);
        assert_eq!(found.len(), 12, "{per_inch}: {found:.3?}");
        let (wide, high) = (inches(grid.panel.width), inches(grid.panel.height));
        for (at, panel) in (0_u32..).zip(&found) {
            let (left, top) = (f64::from(at % grid.across) * wide, f64::from(at / grid.across) * high);
            let edges = [panel.left, panel.top, panel.right, panel.bottom].map(|edge| edge * 12.0);
            for (seen, real) in edges.into_iter().zip([left, top, left + wide, top + high]) {
                assert!((seen - real).abs() <= 0.125, "{per_inch}, panel {at}: {seen} instead of {real}");
            }
        }
    }
}
