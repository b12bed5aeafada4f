//! Prints of lines: kettle stripe, pinstripe, ruled lines, hedge check.

use super::canvas::{At, Canvas, Outline};
use super::hand::{Hand, Point};
use super::ink::{BRICK, HEDGE, Ink, MILK, POT_BLUE, QUINCE, SLATE};

/// A line that leans a little as a hand does, from before 0 to past `length`; `place` sets down (along, aside).
fn drawn_line(hand: &mut Hand, length: f32, aside: f32, sway: f32, place: fn(f32, f32) -> Point) -> Vec<Point> {
    let steps = (length / 0.9) as i32 + 3;
    (-1..=steps).map(|i| place(i as f32 * 0.9, hand.near(aside, sway))).collect()
}

fn upright(along: f32, aside: f32) -> Point {
    (aside, along)
}

fn level(along: f32, aside: f32) -> Point {
    (along, aside)
}

/// Broad brushed stripes with fine companions; the same when turned end for end.
pub(super) fn kettle_stripe(canvas: &mut Canvas, hand: &mut Hand) {
    const REPEAT: f32 = 1.6;
    canvas.ground(MILK);
    let (width, height) = (canvas.width, canvas.height);
    let repeats = (width / REPEAT) as i32 + 2;
    for i in -1..=repeats {
        let x = (i as f32 + 0.5) * REPEAT;
        brushed(canvas, hand, height, x, 0.72, if i % 2 == 0 { POT_BLUE } else { POT_BLUE.tint(0.42) });
        let mut stroke = |aside: f32, wide: f32, ink: Ink, hand: &mut Hand| {
            let line = drawn_line(hand, height, x + aside, 0.007, upright);
            canvas.fill(&Outline::new().ribbon(&line, wide, wide), ink, At::SHEET);
        };
        for side in [-1.0_f32, 1.0] {
            stroke(side * 0.44, 0.035, POT_BLUE.shade(0.1), hand);
            stroke(side * 0.575, 0.075, QUINCE, hand);
            stroke(side * 0.66, 0.018, BRICK, hand);
        }
        stroke(REPEAT / 2.0, 0.05, BRICK, hand);
        stroke(0.0, 0.026, QUINCE.tint(0.3), hand);
    }
}

/// A stripe laid with a dry brush: soft edges and bristle marks.
fn brushed(canvas: &mut Canvas, hand: &mut Hand, height: f32, x: f32, wide: f32, ink: Ink) {
    let line = drawn_line(hand, height, x, 0.008, upright);
    canvas.fill(&Outline::new().ribbon(&line, wide, wide), ink, At::SHEET);
    let mut bristles = [Outline::new(), Outline::new()];
    for i in 0..34 {
        let aside = x + hand.near(0.0, wide * 0.98) * 0.49;
        let from = hand.between(-2.0, height);
        let long = hand.between(0.9, 3.4);
        let line = [(aside, from), (hand.near(aside, 0.01), from + long / 2.0), (hand.near(aside, 0.012), from + long)];
        let wide = hand.between(0.006, 0.02);
        bristles[i % 2] = core::mem::take(&mut bristles[i % 2]).ribbon(&line, wide, wide * 0.3);
    }
    canvas.fill(&bristles[0], MILK.thin(0.17), At::SHEET);
    canvas.fill(&bristles[1], SLATE.thin(0.16), At::SHEET);
}

/// Fine stripes on a pale blue ground.
pub(super) fn pinstripe(canvas: &mut Canvas, hand: &mut Hand) {
    const REPEAT: f32 = 0.17;
    canvas.ground(POT_BLUE.tint(0.72));
    let (width, height) = (canvas.width, canvas.height);
    let repeats = (width / REPEAT) as i32 + 1;
    for i in 0..=repeats {
        let x = (i as f32 + 0.5) * REPEAT;
        let (wide, ink) = match i.rem_euclid(6) {
            0 => (0.034, POT_BLUE.tint(0.12)),
            3 => (0.05, MILK),
            1 | 5 => (0.016, POT_BLUE.tint(0.38)),
            _ => (0.022, MILK.thin(0.8)),
        };
        let line = drawn_line(hand, height, x, 0.005, upright);
        let wide = hand.near(wide, wide * 0.12);
        canvas.fill(&Outline::new().ribbon(&line, wide, wide), ink, At::SHEET);
    }
}

/// The ruling of a recipe card, all over.
pub(super) fn ruled_lines(canvas: &mut Canvas, hand: &mut Hand) {
    const REPEAT: f32 = 0.25;
    canvas.ground(MILK);
    let (width, height) = (canvas.width, canvas.height);
    let repeats = (height / REPEAT) as i32 + 1;
    for i in 0..=repeats {
        let y = (i as f32 + 0.5) * REPEAT;
        let mut rule = |y: f32, wide: f32, ink: Ink| {
            let line = drawn_line(hand, width, y, 0.006, level);
            canvas.fill(&Outline::new().ribbon(&line, wide, wide), ink, At::SHEET);
        };
        if i % 6 == 2 {
            rule(y - 0.028, 0.017, BRICK.tint(0.12));
            rule(y + 0.028, 0.017, BRICK.tint(0.12));
        } else {
            rule(y, 0.021, POT_BLUE.tint(if i % 2 == 0 { 0.30 } else { 0.46 }));
        }
    }
}

/// The threads of the check, in order: how many threads and which ink, repeated there and back.
const SETT: [(u32, Ink); 11] = [
    (9, MILK),
    (2, QUINCE),
    (5, MILK),
    (1, BRICK),
    (3, MILK),
    (4, HEDGE),
    (1, MILK),
    (14, HEDGE),
    (1, MILK),
    (4, HEDGE),
    (3, MILK),
];

/// A woven check: each pixel shows warp or weft as a twill would, with threads uneven in tone.
pub(super) fn hedge_check(canvas: &mut Canvas, hand: &mut Hand) {
    let (across, down) = (canvas.across, canvas.down);
    let warp = threads(hand, across, canvas.pixels_per_inch);
    let weft = threads(hand, down, canvas.pixels_per_inch);
    let data = &mut canvas.pixels;
    for (row, under) in data.chunks_exact_mut(across as usize * 4).zip(&weft) {
        for (pixel, over) in row.chunks_exact_mut(4).zip(&warp) {
            // Over two, under two, stepping one thread each row: a 2/2 twill.
            let on_top = (over.index + under.index) & 3 < 2;
            let share: u32 = if on_top { 176 } else { 80 };
            let light = if on_top { over.light } else { under.light };
            for ((channel, a), b) in pixel.iter_mut().zip(over.rgb).zip(under.rgb) {
                let mixed = u32::from(a) * share + u32::from(b) * (256 - share);
                *channel = ((mixed * light) >> 16).min(255) as u8;
            }
            pixel[3] = 255;
        }
    }
}

/// What one line of pixels shows of its thread.
struct Thread {
    index: u32,
    rgb: [u8; 3],
    /// Lightness across the thread, 256 for plain.
    light: u32,
}

fn threads(hand: &mut Hand, pixels: u32, pixels_per_inch: f32) -> Vec<Thread> {
    const PITCH: f32 = 0.042;
    let order: Vec<Ink> = SETT.iter().flat_map(|(n, ink)| (0..*n).map(|_| *ink)).collect();
    let count = (pixels as f32 / pixels_per_inch / PITCH) as usize + 2;
    let inks: Vec<[u8; 3]> = (0..count)
        .map(|i| {
            let ink = order[i % order.len()].with(SLATE, hand.between(0.0, 0.07)).with(MILK, hand.between(0.0, 0.10));
            ink.channels().map(|c| (c + 0.5) as u8)
        })
        .collect();
    (0..pixels)
        .map(|p| {
            let at = (p as f32 + 0.5) / pixels_per_inch / PITCH;
            let index = at as usize;
            let edge = (at - index as f32 - 0.5).abs() * 2.0;
            Thread { index: index as u32, rgb: inks[index.min(count - 1)], light: (262.0 - 26.0 * edge * edge) as u32 }
        })
        .collect()
}
