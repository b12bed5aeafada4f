//! Prints of spots and of tone: tea dot, milk wash, speckle.

use core::f32::consts::TAU;

use super::canvas::{At, Canvas, Outline};
use super::hand::Hand;
use super::ink::{BRICK, HEDGE, LIGHT, MILK, POT_BLUE, QUINCE, SLATE};

/// Dots like drops of milk in tea, with pinheads between.
pub(super) fn tea_dot(canvas: &mut Canvas, hand: &mut Hand) {
    canvas.ground(BRICK);
    let (width, height) = (canvas.width, canvas.height);
    let mut soft = Outline::new();
    for point in hand.spaced(width, height, 0.3, 0.5) {
        let radius = hand.between(0.15, 0.24);
        soft = soft.spot(hand, point, radius, 0.15);
    }
    canvas.fill(&soft, BRICK.with(QUINCE, 0.22).thin(0.28), At::SHEET);
    for point in hand.spaced(width, height, 0.2, 0.385) {
        let at = At::new(point, hand.unit() * TAU, hand.between(0.088, 0.118));
        let spot = Outline::new().spot(hand, (0.0, 0.0), 1.0, 0.05);
        match hand.below(9) {
            0 => {
                canvas.fill(&spot, QUINCE, at);
                canvas.fill(&Outline::new().spot(hand, (-0.1, -0.12), 0.62, 0.06), QUINCE.tint(0.3), at);
            }
            1 | 2 => {
                canvas.fill(&spot, MILK, at);
                canvas.fill(&Outline::new().spot(hand, (0.03, 0.02), 0.66, 0.06), BRICK, at);
                canvas.fill(&Outline::new().spot(hand, (0.0, 0.0), 0.3, 0.1), MILK.with(QUINCE, 0.3), at);
            }
            _ => {
                canvas.fill(&spot, BRICK.tint(0.74), at);
                canvas.fill(&Outline::new().spot(hand, (-0.09, -0.06), 0.84, 0.05), MILK, at);
            }
        }
        let (dx, dy) = super::hand::direction(hand.unit() * TAU);
        let pin = (point.0 + dx * 0.2, point.1 + dy * 0.2);
        let radius = hand.between(0.013, 0.022);
        canvas.fill(&Outline::new().spot(hand, pin, radius, 0.2), BRICK.tint(0.42), At::SHEET);
    }
}

/// A plain wash: Milk pooling warmer and cooler, on paper with a tooth and fibres.
pub(super) fn milk_wash(canvas: &mut Canvas, hand: &mut Hand) {
    let across = canvas.across;
    let ppi = canvas.pixels_per_inch;
    let clouds = [Cloud::new(hand, canvas, 2.6), Cloud::new(hand, canvas, 0.9), Cloud::new(hand, canvas, 0.28)];
    let (pale, warm) = (MILK.with(LIGHT, 0.35).channels(), MILK.with(BRICK, 0.20).with(QUINCE, 0.10).channels());
    // The tooth is drawn at a fixed pitch, so it stays paper at any resolution.
    let tooth: Vec<f32> = (0..4096).map(|_| hand.near(0.0, 0.055)).collect();
    let columns: Vec<usize> = (0..across).map(|x| (x as f32 / ppi * 75.0) as usize).collect();
    let mut rows = [Vec::new(), Vec::new(), Vec::new()];
    for (y, line) in canvas.pixels.chunks_exact_mut(across as usize * 4).enumerate() {
        for (cloud, row) in clouds.iter().zip(&mut rows) {
            cloud.row(y as f32 / ppi, across, ppi, row);
        }
        let tooth_row = ((y as f32 / ppi * 75.0) as usize).wrapping_mul(1597);
        for (x, pixel) in line.chunks_exact_mut(4).enumerate() {
            let grain = tooth[(columns[x].wrapping_add(tooth_row)) & 4095];
            let share = (rows[0][x] * 0.62 + rows[1][x] * 0.25 + rows[2][x] * 0.13 + grain).clamp(0.0, 1.0);
            for ((channel, a), b) in pixel.iter_mut().zip(pale).zip(warm) {
                *channel = (a + (b - a) * share) as u8;
            }
            pixel[3] = 255;
        }
    }
    let mut fibres = [Outline::new(), Outline::new()];
    let (width, height) = (canvas.width, canvas.height);
    for (i, (x, y)) in hand.spaced(width, height, 0.1, 0.42).into_iter().enumerate() {
        let (dx, dy) = super::hand::direction(hand.unit() * TAU);
        let long = hand.between(0.05, 0.16);
        let bend = hand.near(0.0, 0.05);
        let line = [
            (x, y),
            (x + dx * long / 2.0 - dy * bend, y + dy * long / 2.0 + dx * bend),
            (x + dx * long, y + dy * long),
        ];
        fibres[i % 2] = core::mem::take(&mut fibres[i % 2]).ribbon(&line, 0.009, 0.005);
    }
    canvas.fill(&fibres[0], BRICK.shade(0.2).thin(0.20), At::SHEET);
    canvas.fill(&fibres[1], LIGHT.thin(0.75), At::SHEET);
}

/// Smooth noise of one wavelength, in 0–1.
struct Cloud {
    cell: f32,
    across: usize,
    values: Vec<f32>,
}

impl Cloud {
    fn new(hand: &mut Hand, canvas: &Canvas, cell: f32) -> Cloud {
        let across = (canvas.width / cell) as usize + 3;
        let down = (canvas.height / cell) as usize + 3;
        Cloud { cell, across, values: (0..across * down).map(|_| hand.unit()).collect() }
    }

    /// The values along the pixels of one row at `y` inches.
    fn row(&self, y: f32, pixels: u32, pixels_per_inch: f32, out: &mut Vec<f32>) {
        let ease = |t: f32| t * t * (3.0 - 2.0 * t);
        let at = y / self.cell;
        let top = at as usize;
        let share = ease(at - top as f32);
        let edge: Vec<f32> = (0..self.across)
            .map(|i| {
                let (a, b) = (self.values[top * self.across + i], self.values[(top + 1) * self.across + i]);
                a + (b - a) * share
            })
            .collect();
        out.clear();
        out.extend((0..pixels).map(|x| {
            let at = x as f32 / pixels_per_inch / self.cell;
            let left = at as usize;
            edge[left] + (edge[left + 1] - edge[left]) * ease(at - left as f32)
        }));
    }
}

/// Speckles as on an egg or an enamel mug: many fine, some larger, none in line.
pub(super) fn speckle(canvas: &mut Canvas, hand: &mut Hand) {
    let ground = SLATE.with(POT_BLUE, 0.3).tint(0.70);
    canvas.ground(ground);
    let (width, height) = (canvas.width, canvas.height);
    for (gap, low, high, cover) in
        [(0.34_f32, 0.03_f32, 0.085_f32, 0.16_f32), (0.13, 0.006, 0.017, 0.75), (0.23, 0.014, 0.033, 0.85)]
    {
        let inks = [SLATE, SLATE.tint(0.25), POT_BLUE, MILK, LIGHT, QUINCE, BRICK, HEDGE];
        let mut layers: Vec<Outline> = inks.iter().map(|_| Outline::new()).collect();
        for point in hand.spaced(width, height, 0.1, gap) {
            let small = hand.unit();
            let radius = low + (high - low) * small * small;
            let which = hand.pick(&[0, 0, 0, 1, 1, 2, 2, 3, 3, 3, 4, 5, 6, 7], 0_usize);
            let radii = (radius * hand.between(0.8, 1.3), radius * hand.between(0.8, 1.15));
            layers[which] = core::mem::take(&mut layers[which]).oval(hand, point, radii, 0.22);
        }
        for (layer, ink) in layers.iter().zip(inks) {
            canvas.fill(layer, ink.thin(cover), At::SHEET);
        }
    }
}
