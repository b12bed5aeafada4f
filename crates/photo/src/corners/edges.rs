//! Where colours change, and which way.

use crate::Raster;

/// Gradients of a small picture: of each pixel's three channels, the one that changes most.
#[derive(Debug)]
pub(super) struct Edges {
    pub(super) width: usize,
    pub(super) height: usize,
    /// Direction of the change, of length 1 (or 0), pixel by pixel.
    pub(super) way: Vec<[f32; 2]>,
    /// How surely there is an edge, 0 to 1: its strength beside that of its surroundings.
    pub(super) sure: Vec<f32>,
    /// Places that are strongest along their own direction.
    pub(super) ridge: Vec<(usize, usize)>,
}

/// Half the side of the surroundings, in pixels. `Chosen:`.
const AROUND: usize = 12;

impl Edges {
    /// `beside`: how much the strength of its surroundings takes from an edge's sureness.
    #[allow(clippy::cast_precision_loss, reason = "small pictures")]
    pub(super) fn of(picture: &Raster, beside: f32) -> Self {
        let (width, height) = (picture.width(), picture.height());
        let channels: Vec<Vec<f32>> = (0..3)
            .map(|channel| {
                let plane = picture.rgb().iter().skip(channel).step_by(3).map(|value| f32::from(*value)).collect();
                smoothed(plane, width, height)
            })
            .collect();
        let mut way = vec![[0.0; 2]; width * height];
        let mut strength = vec![0.0_f32; width * height];
        for y in 1..height.max(2) - 1 {
            for x in 1..width.max(2) - 1 {
                let at = y * width + x;
                for plane in &channels {
                    let (gx, gy) = (plane[at + 1] - plane[at - 1], plane[at + width] - plane[at - width]);
                    let size = libm::sqrtf(gx * gx + gy * gy) / 2.0;
                    if size > strength[at] {
                        strength[at] = size;
                        way[at] = [gx / (2.0 * size), gy / (2.0 * size)];
                    }
                }
            }
        }
        let mut sorted = strength.clone();
        sorted.sort_by(f32::total_cmp);
        let calm = sorted[sorted.len() * 3 / 10];
        // Half the noise of calm places; `Chosen:` held between a quarter of a level and three.
        let floor = (calm * 1.2).clamp(0.25, 3.0);
        let around = mean_square(&strength, width, height);
        let sure = strength.iter().zip(&around).map(|(s, a)| s / (s + floor + beside * libm::sqrtf(*a))).collect();
        let mut edges = Self { width, height, way, sure, ridge: Vec::new() };
        edges.ridge = edges.ridges(&strength);
        edges
    }

    fn ridges(&self, strength: &[f32]) -> Vec<(usize, usize)> {
        let mut found = Vec::new();
        for y in 2..self.height.max(4) - 2 {
            for x in 2..self.width.max(4) - 2 {
                let at = y * self.width + x;
                let [wx, wy] = self.way[at];
                if self.sure[at] < 0.2 {
                    continue;
                }
                #[allow(clippy::cast_possible_truncation, reason = "-1, 0 or 1")]
                let (dx, dy) = (libm::roundf(wx) as isize, libm::roundf(wy) as isize);
                let step = dy * self.width.cast_signed() + dx;
                let beside = |step: isize| strength[at.wrapping_add_signed(step)];
                if strength[at] >= beside(step) && strength[at] > beside(-step) {
                    found.push((x, y));
                }
            }
        }
        found
    }

    /// How surely an edge with that normal runs through a place, looked for one pixel to either side.
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        clippy::cast_precision_loss,
        reason = "held to the picture first"
    )]
    pub(super) fn across(&self, x: f64, y: f64, normal: [f64; 2]) -> f64 {
        let mut best = 0.0_f64;
        for off in [-1.0, 0.0, 1.0] {
            let (x, y) = (x + normal[0] * off, y + normal[1] * off);
            if x < 1.0 || y < 1.0 || x >= self.width as f64 - 1.0 || y >= self.height as f64 - 1.0 {
                continue;
            }
            let at = y as usize * self.width + x as usize;
            let [wx, wy] = self.way[at];
            let along = (f64::from(wx) * normal[0] + f64::from(wy) * normal[1]).abs();
            best = best.max(f64::from(self.sure[at]) * ((along - 0.75) * 4.0).clamp(0.0, 1.0));
        }
        best
    }
}

/// Smoothed by 1 4 6 4 1 in both ways.
fn smoothed(plane: Vec<f32>, width: usize, height: usize) -> Vec<f32> {
    let pass = |plane: &[f32], across: bool| {
        let mut out = vec![0.0; plane.len()];
        for y in 0..height {
            for x in 0..width {
                let take = |by: isize| {
                    let (x, y) = if across {
                        (x.saturating_add_signed(by).min(width - 1), y)
                    } else {
                        (x, y.saturating_add_signed(by).min(height - 1))
                    };
                    plane[y * width + x]
                };
                out[y * width + x] = (take(-2) + take(2) + 4.0 * (take(-1) + take(1)) + 6.0 * take(0)) / 16.0;
            }
        }
        out
    };
    pass(&pass(&plane, true), false)
}

/// Mean of the squares in the surroundings of each pixel.
#[allow(clippy::cast_precision_loss, clippy::cast_possible_truncation, reason = "small pictures")]
fn mean_square(values: &[f32], width: usize, height: usize) -> Vec<f32> {
    let mut sums = vec![0.0_f64; (width + 1) * (height + 1)];
    for y in 0..height {
        let mut row = 0.0;
        for x in 0..width {
            let value = f64::from(values[y * width + x]);
            row += value * value;
            sums[(y + 1) * (width + 1) + x + 1] = sums[y * (width + 1) + x + 1] + row;
        }
    }
    let mut means = Vec::with_capacity(values.len());
    for y in 0..height {
        let (top, bottom) = (y.saturating_sub(AROUND), (y + AROUND + 1).min(height));
        for x in 0..width {
            let (left, right) = (x.saturating_sub(AROUND), (x + AROUND + 1).min(width));
            let at = |x: usize, y: usize| sums[y * (width + 1) + x];
            let sum = at(right, bottom) - at(left, bottom) - at(right, top) + at(left, top);
            means.push((sum / ((right - left) * (bottom - top)) as f64) as f32);
        }
    }
    means
}
