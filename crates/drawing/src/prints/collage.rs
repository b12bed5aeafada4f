//! The recipe cards: twelve printed panels on one sheet, to be cut apart.

use core::f32::consts::{FRAC_PI_4, TAU};

use super::canvas::{At, Canvas, Outline};
use super::hand::Hand;
use super::ink::{BRICK, HEDGE, Ink, LIGHT, MILK, POT_BLUE, QUINCE, SLATE};
use super::kitchen;
use super::plants::{Bearing, LeafInks, SprigInks, sprig};

/// Inches.
pub(super) const PANEL: (i32, i32) = (3, 4);
pub(super) const ACROSS: u32 = 4;
pub(super) const DOWN: u32 = 3;

type Picture = fn(&mut Canvas, &mut Hand, At);

/// Row by row, pictures and patterns by turns, no ground beside its like.
const PANELS: [(Ink, Ink, Picture); 12] = [
    (QUINCE, MILK, kitchen::kettle),
    (MILK, MILK, checked_cloth),
    (POT_BLUE, MILK, kitchen::cup),
    (BRICK, MILK, milk_sprig),
    (HEDGE, HEDGE, dots),
    (POT_BLUE, MILK, kitchen::jam_jar),
    (HEDGE, HEDGE, kitchen::label_frame),
    (SLATE, SLATE, kitchen::single_quince),
    (POT_BLUE, MILK, kitchen::bowl_and_spoon),
    (QUINCE, QUINCE, stripes),
    (MILK, QUINCE, kitchen::teapot),
    (BRICK, MILK, kitchen::quince_half),
];

/// How much of the second ink is in each ground.
const SOFTNESS: [f32; 12] = [0.55, 0.0, 0.62, 0.06, 0.0, 0.30, 0.0, 0.0, 0.78, 0.0, 0.16, 0.62];

/// Draws the panels from the sheet's top left corner; a smaller sheet shows fewer of them, a larger one begins again.
pub(super) fn recipe_cards(canvas: &mut Canvas, hand: &mut Hand) {
    let ppi = canvas.pixels_per_inch;
    let line = |index: i32, inches: i32| (index as f32 * inches as f32 * ppi + 0.5) as i32;
    let (across, down) = ((canvas.width / PANEL.0 as f32) as i32, (canvas.height / PANEL.1 as f32) as i32);
    let seeds: Vec<u64> = (0..PANELS.len()).map(|_| u64::from(hand.below(1 << 30) as u32)).collect();
    for row in 0..=down {
        for column in 0..=across {
            let (x, y) = (line(column, PANEL.0), line(row, PANEL.1));
            let (wide, high) = (line(column + 1, PANEL.0) - x, line(row + 1, PANEL.1) - y);
            let which = ((row % DOWN as i32) * ACROSS as i32 + column % ACROSS as i32) as usize;
            if x >= canvas.across as i32 || y >= canvas.down as i32 || wide == 0 || high == 0 {
                continue;
            }
            canvas.put(&panel(which, seeds[which], wide as u32, high as u32, ppi), x as u32, y as u32);
        }
    }
}

fn panel(which: usize, seed: u64, wide: u32, high: u32, pixels_per_inch: f32) -> Canvas {
    let mut canvas = Canvas::new(wide, high, pixels_per_inch);
    let mut hand = Hand::new(seed);
    let (ink, other, picture) = PANELS[which];
    let ground = ink.with(other, SOFTNESS[which]);
    canvas.ground(ground);
    wall(&mut canvas, &mut hand, ground, which);
    picture(&mut canvas, &mut hand, At::SHEET);
    canvas
}

/// A quiet paper on the wall behind the picture, tone on tone.
fn wall(canvas: &mut Canvas, hand: &mut Hand, ground: Ink, which: usize) {
    let tone = if which.is_multiple_of(2) { ground.with(LIGHT, 0.30) } else { ground.shade(0.10) };
    let mut marks = Outline::new();
    match which {
        0 | 5 | 10 => {
            for point in hand.spaced(3.0, 4.0, 0.2, 0.3) {
                marks = marks.spot(hand, point, 0.035, 0.15);
            }
        }
        2 | 8 => {
            for i in 0..16_u8 {
                let x = 0.1 + f32::from(i) * 0.2;
                marks = marks.ribbon(&[(x, -0.1), (hand.near(x, 0.01), 2.0), (x, 4.1)], 0.05, 0.05);
            }
        }
        7 | 11 | 3 => {
            for point in hand.spaced(3.0, 4.0, 0.2, 0.36) {
                let (dx, dy) = super::hand::direction(hand.unit() * TAU);
                marks = marks.ribbon(
                    &[(point.0 - dx * 0.07, point.1 - dy * 0.07), (point.0 + dx * 0.07, point.1 + dy * 0.07)],
                    0.028,
                    0.016,
                );
            }
        }
        _ => return,
    }
    canvas.fill(&marks, tone.thin(0.7), At::SHEET);
}

/// A checked cloth laid cornerwise, with a stitched edge.
fn checked_cloth(canvas: &mut Canvas, hand: &mut Hand, at: At) {
    let at = at.on((1.5, 2.0), FRAC_PI_4, 1.0);
    for i in -7..=7_i8 {
        let x = hand.near(f32::from(i) * 0.5, 0.01);
        canvas.fill(&Outline::new().rect(x - 0.125, -3.6, 0.25, 7.2), BRICK.thin(0.52), at);
        canvas.fill(&Outline::new().rect(-3.6, x - 0.125, 7.2, 0.25), BRICK.thin(0.52), at);
        canvas.fill(&Outline::new().rect(x + 0.235, -3.6, 0.03, 7.2), QUINCE.thin(0.8), at);
        canvas.fill(&Outline::new().rect(-3.6, x + 0.235, 7.2, 0.03), QUINCE.thin(0.8), at);
    }
    let mut weave = Outline::new();
    for i in 0..120_i16 {
        let x = f32::from(i - 60) * 0.055;
        weave = weave.rect(x, -3.6, 0.014, 7.2);
    }
    canvas.fill(&weave, LIGHT.thin(0.16), at);
}

fn milk_sprig(canvas: &mut Canvas, hand: &mut Hand, at: At) {
    let tone = MILK.with(QUINCE, 0.12);
    let leaf = LeafInks { base: tone.with(BRICK, 0.16), tip: LIGHT, shadow: BRICK.thin(0.16), vein: BRICK.thin(0.55) };
    let inks = SprigInks { stem: tone, leaf, fruit: QUINCE, gleam: LIGHT };
    for (x, lean, size) in [(1.05_f32, -0.34_f32, 2.35_f32), (1.95, 0.36, 2.3)] {
        sprig(canvas, hand, Bearing::Berries, inks, at.on((1.5 + (x - 1.5) * 0.25, 3.5), lean, size));
    }
    sprig(canvas, hand, Bearing::Flowers, inks, at.on((1.5, 3.72), 0.0, 3.0));
    let tie = Outline::new()
        .ribbon(&[(1.36, 3.3), (1.5, 3.34), (1.64, 3.3)], 0.08, 0.08)
        .ribbon(&[(1.5, 3.34), (1.2, 3.2), (1.14, 3.42), (1.5, 3.34)], 0.05, 0.05)
        .ribbon(&[(1.5, 3.34), (1.8, 3.2), (1.86, 3.42), (1.5, 3.34)], 0.05, 0.05);
    canvas.fill(&tie, POT_BLUE.shade(0.2), at);
}

fn dots(canvas: &mut Canvas, hand: &mut Hand, at: At) {
    for point in hand.spaced(3.0, 4.0, 0.3, 0.46) {
        let radius = hand.between(0.12, 0.15);
        canvas.fill(
            &Outline::new().spot(hand, (point.0 + 0.02, point.1 + 0.03), radius, 0.05),
            HEDGE.shade(0.4).thin(0.5),
            at,
        );
        canvas.fill(&Outline::new().spot(hand, point, radius, 0.05), MILK, at);
        if hand.chance(0.3) {
            canvas.fill(&Outline::new().spot(hand, point, radius * 0.6, 0.08), QUINCE, at);
        } else if hand.chance(0.25) {
            canvas.fill(&Outline::new().spot(hand, point, radius * 0.5, 0.08), BRICK, at);
        }
    }
}

fn stripes(canvas: &mut Canvas, hand: &mut Hand, at: At) {
    for i in 0..7_u8 {
        let x = 0.02 + f32::from(i) * 0.5;
        let mut stroke = |aside: f32, wide: f32, ink: Ink| {
            let line: Vec<_> = (0..=6_u8).map(|s| (hand.near(x + aside, 0.008), f32::from(s) * 0.8 - 0.4)).collect();
            canvas.fill(&Outline::new().ribbon(&line, wide, wide), ink, at);
        };
        stroke(0.0, 0.22, MILK);
        stroke(0.0, 0.05, POT_BLUE);
        stroke(0.19, 0.02, BRICK);
        stroke(0.25, 0.035, QUINCE.shade(0.22));
        stroke(0.31, 0.02, BRICK);
    }
}
