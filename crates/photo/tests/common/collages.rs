//! Squared pictures of collage sheets, drawn from seeds, with their panels. Shared by tests and examples.
#![allow(dead_code, reason = "each user needs a part")]
#![allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "test drawings"
)]

use photo::{Panel, Raster};
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// Inches a side.
pub(crate) const INCHES: f64 = 12.0;

type Color = [f64; 3];

/// How hard a picture is to read.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Trouble {
    /// Standard deviation of a pixel, in levels.
    pub(crate) noise: f64,
    /// How far the sheet may be turned, in degrees.
    pub(crate) tilt: f64,
    /// How much darker one side may be than the other.
    pub(crate) light: f64,
}

/// What `docs/photo.md` calls moderate.
pub(crate) const MODERATE: Trouble = Trouble { noise: 4.0, tilt: 0.25, light: 0.2 };

struct Print {
    kind: usize,
    inks: [Color; 3],
    pitch: f64,
}

impl Print {
    fn new(random: &mut ChaCha8Rng) -> Self {
        let mut color = |from: f64, to: f64| [0; 3].map(|_| random.random_range(from..to));
        let inks = [color(110.0, 245.0), color(60.0, 235.0), color(60.0, 235.0)];
        Self { kind: random.random_range(0..6), inks, pitch: random.random_range(0.2..0.7) }
    }

    fn color(&self, x: f64, y: f64) -> Color {
        let p = self.pitch;
        let (cx, cy) = ((x / p).fract() - 0.5, (y / p).fract() - 0.5);
        let at = |condition: bool| if condition { self.inks[1] } else { self.inks[0] };
        match self.kind {
            1 => at(cx * cx + cy * cy < 0.08),
            2 => at(cx > 0.0),
            3 => at(cy > 0.1),
            4 if cx.abs() < 0.2 && cy.abs() < 0.2 => self.inks[2],
            4 => at(cx.abs() < 0.2 || cy.abs() < 0.2),
            5 => {
                let (row, far) =
                    ((y / p).floor() as i64, libm::hypot((x / p + 0.37 * (y / p).floor()).fract() - 0.5, cy));
                let turn = libm::atan2(cy, cx);
                if far < 0.12 { self.inks[2] } else { at(far < 0.36 + 0.09 * libm::cos(5.0 * turn + row as f64)) }
            }
            _ => self.inks[0],
        }
    }
}

/// A rectangle cut into two again and again, edge to edge of what is left, down to some two inches.
fn divided(random: &mut ChaCha8Rng, part: [f64; 4], left: u32, found: &mut Vec<[f64; 4]>) {
    let (wide, high) = (part[2] - part[0], part[3] - part[1]);
    let upright = if (wide - high).abs() < 0.5 { random.random_bool(0.5) } else { wide > high };
    let long = if upright { wide } else { high };
    if long < 4.0 || left == 0 || (left < 3 && random.random_bool(0.25)) {
        found.push(part);
        return;
    }
    // Marks of 1/8 in.
    let at = (random.random_range(1.75..long - 1.75) * 8.0_f64).round() / 8.0;
    let (mut one, mut other) = (part, part);
    let axis = usize::from(!upright);
    one[axis + 2] = part[axis] + at;
    other[axis] = part[axis] + at;
    divided(random, one, left - 1, found);
    divided(random, other, left - 1, found);
}

/// A sheet of `dots` pixels an inch, and its panels.
pub(crate) fn collage(seed: u64, dots: usize, trouble: Trouble) -> (Raster, Vec<Panel>) {
    let mut random = ChaCha8Rng::seed_from_u64(seed);
    let mut parts = Vec::new();
    divided(&mut random, [0.0, 0.0, INCHES, INCHES], 4, &mut parts);
    let gap: f64 = if random.random_bool(0.4) { random.random_range(0.06..0.12) } else { 0.0 };
    let edge = if gap > 0.0 { gap } else { 0.0 };
    let ground = [0; 3].map(|_| random.random_range(235.0..250.0));
    let inked: Vec<([f64; 4], Print)> = parts
        .iter()
        .map(|part| ([part[0] + edge, part[1] + edge, part[2] - edge, part[3] - edge], Print::new(&mut random)))
        .collect();
    let turn = random.random_range(-trouble.tilt..=trouble.tilt).to_radians();
    let slope = [0; 2].map(|_| random.random_range(-trouble.light..=trouble.light) / 1.5);
    let side = (INCHES * dots as f64) as usize;
    let mut rgb = Vec::with_capacity(side * side * 3);
    for py in 0..side {
        for px in 0..side {
            let mut sum = [0.0; 3];
            for (dx, dy) in [(0.25, 0.25), (0.75, 0.25), (0.25, 0.75), (0.75, 0.75)] {
                let (x, y) = ((px as f64 + dx) / dots as f64 - 6.0, (py as f64 + dy) / dots as f64 - 6.0);
                let (x, y) = (x - y * turn + 6.0, y + x * turn + 6.0);
                let (x, y) = (x.clamp(0.0, INCHES - 1e-6), y.clamp(0.0, INCHES - 1e-6));
                let inside = |part: &[f64; 4]| x >= part[0] && x < part[2] && y >= part[1] && y < part[3];
                let color = inked
                    .iter()
                    .find(|(part, _)| inside(part))
                    .map_or(ground, |(part, print)| print.color(x - part[0] + 0.13, y - part[1] + 0.21));
                sum = [0, 1, 2].map(|at| sum[at] + color[at] / 4.0);
            }
            let (u, v) = (px as f64 / side as f64 - 0.5, py as f64 / side as f64 - 0.5);
            let light = 0.97 - (slope[0] * u + slope[1] * v).abs().min(0.4) - slope[0] * u - slope[1] * v;
            let grain = (0..4).map(|_| random.random_range(-1.0..1.0)).sum::<f64>() * 0.87 * trouble.noise;
            rgb.extend(sum.map(|value| (value * light + grain).clamp(0.0, 255.0).round() as u8));
        }
    }
    let panels = inked.iter().map(|(part, _)| {
        let [left, top, right, bottom] = part.map(|at| at / INCHES);
        Panel { left, top, right, bottom }
    });
    (Raster::new(side, side, rgb).expect("a picture of that size"), panels.collect())
}

/// How many of the panels found are true: every edge within 1/8 in.
pub(crate) fn right(found: &[Panel], truth: &[Panel]) -> usize {
    let near = |one: f64, other: f64| (one - other).abs() * INCHES <= 0.125;
    let same = |one: &Panel, other: &Panel| {
        near(one.left, other.left)
            && near(one.top, other.top)
            && near(one.right, other.right)
            && near(one.bottom, other.bottom)
    };
    truth.iter().filter(|panel| found.iter().any(|other| same(other, panel))).count()
}
