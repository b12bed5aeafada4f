//! The printed papers of the demo, drawn by our own hand: the pack "Kettle & Quince".
//!
//! | Sheet | Side 1 | Side 2 |
//! |---|---|---|
//! | A | `quince-branch`, one way | `leaf-scatter`, any way |
//! | B | `kettle-stripe`, two ways | `pinstripe`, two ways |
//! | C | `tea-dot`, any way | `milk-wash`, any way |
//! | D | `recipe-cards`, panels, one way | `ruled-lines`, two ways |
//! | E | `hedge-check`, any way | `sprigs`, one way |
//! | F | `dusk-leaf`, one way | `speckle`, any way |
//!
//! Motifs have a true size, so a smaller sheet shows less of a print and not a smaller print. Same
//! name, size, resolution and seed, same bytes. Left out: lettering, and reading or writing image files.
#![allow(clippy::needless_range_loop, reason = "channels of two pixels are walked side by side")]
#![allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "pixels and cells from small, non-negative inches; float-to-integer casts saturate"
)]

mod botanical;
mod canvas;
mod collage;
mod cover;
mod hand;
mod ink;
mod kitchen;
mod plants;
mod spots;
mod woven;

use measure::{Length, Size};

use canvas::Canvas;
use hand::Hand;

/// A drawn face: rows from the top, three bytes (red, green, blue; sRGB) a pixel, no padding.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pixels {
    /// Columns.
    pub width_px: u32,
    /// Rows.
    pub height_px: u32,
    /// `3 × width_px × height_px` bytes.
    pub rgb: Vec<u8>,
}

/// The panels a collage is printed with, from the sheet's top left corner.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PanelGrid {
    /// One panel.
    pub panel: Size,
    /// Panels across a 12 × 12 in sheet.
    pub across: u32,
    /// Panels down a 12 × 12 in sheet.
    pub down: u32,
}

type Draw = fn(&mut Canvas, &mut Hand);

const PRINTS: [(&str, Draw); 12] = [
    ("quince-branch", botanical::quince_branch),
    ("leaf-scatter", botanical::leaf_scatter),
    ("kettle-stripe", woven::kettle_stripe),
    ("pinstripe", woven::pinstripe),
    ("tea-dot", spots::tea_dot),
    ("milk-wash", spots::milk_wash),
    ("recipe-cards", collage::recipe_cards),
    ("ruled-lines", woven::ruled_lines),
    ("hedge-check", woven::hedge_check),
    ("sprigs", botanical::sprigs),
    ("dusk-leaf", botanical::dusk_leaf),
    ("speckle", spots::speckle),
];

/// The most pixels a face may have along one side.
const MOST_PX: i128 = 20_000;

/// The names of the prints, sheet by sheet, side 1 before side 2.
pub fn names() -> impl Iterator<Item = &'static str> {
    PRINTS.iter().map(|(name, _)| *name)
}

/// The panels of a collage; `None` for a print that is not one.
pub fn panels(name: &str) -> Option<PanelGrid> {
    if name != "recipe-cards" {
        return None;
    }
    let inches = |n: i32| Length::inches(i64::from(n), 1);
    let panel = Size::new(inches(collage::PANEL.0)?, inches(collage::PANEL.1)?);
    Some(PanelGrid { panel, across: collage::ACROSS, down: collage::DOWN })
}

/// Draws one print at true size, from the sheet's top left corner.
///
/// `None` if no print has this name, or if a side would have no pixel or more than 20 000.
pub fn draw(name: &str, size: Size, pixels_per_inch: u32, seed: u64) -> Option<Pixels> {
    let place = PRINTS.iter().position(|(known, _)| *known == name)?;
    let (width_px, height_px) = (pixels(size.width, pixels_per_inch)?, pixels(size.height, pixels_per_inch)?);
    let mut canvas = Canvas::new(width_px, height_px, pixels_per_inch as f32);
    // Each print has its own stream, so that two prints of one seed do not share their spacing.
    let mut hand = Hand::new(seed.wrapping_mul(PRINTS.len() as u64).wrapping_add(place as u64));
    PRINTS[place].1(&mut canvas, &mut hand);
    let mut rgb = vec![0; width_px as usize * height_px as usize * 3];
    for (to, from) in rgb.chunks_exact_mut(3).zip(canvas.pixels.chunks_exact(4)) {
        to.copy_from_slice(&from[..3]);
    }
    Some(Pixels { width_px, height_px, rgb })
}

/// The nearest whole number of pixels.
fn pixels(length: Length, pixels_per_inch: u32) -> Option<u32> {
    let inch = i128::from(Length::INCH.ticks());
    let px = (i128::from(length.ticks()) * i128::from(pixels_per_inch) + inch / 2).div_euclid(inch);
    (1..=MOST_PX).contains(&px).then_some(px as u32)
}

#[cfg(test)]
mod tests;
