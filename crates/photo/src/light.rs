//! Gentle corrections that can be taken back: uneven light, and white balance.
//!
//! A correction is a value of its own: kept beside the picture, applied when it is shown, and left out when the maker says
//! so. The picture that was squared is never changed.

use color::LinearRgb;

use crate::Raster;
use crate::least_squares::{add, solved};

/// A slow change of light over a sheet, and the colour of the lamp.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Correction {
    /// Light over the sheet as 1, x, y, x², xy, y² of places from −1 to 1; the logarithm of what it is multiplied by.
    field: [f64; 6],
    /// What red, green and blue light are multiplied by.
    gains: [f64; 3],
}

/// Light is evened by no more than this much at any place: a sheet may be darker at one end because it is printed so.
/// `Chosen:`.
const MOST: f64 = 0.35;
/// Blocks a side whose light is compared. `Chosen:`.
const BLOCKS: usize = 12;

impl Correction {
    /// Nothing.
    pub const NONE: Self = Self { field: [0.0; 6], gains: [1.0; 3] };

    /// Evens what looks like lamp light over the sheet: the bright parts of each block are taken to be paper of one colour, a
    /// smooth surface of second order is laid through them, and `strength` (0 to 1) says how much of it to take out.
    #[must_use]
    #[allow(clippy::cast_precision_loss, reason = "pixel counts")]
    pub fn evened(picture: &Raster, strength: f64) -> Self {
        let strength = if strength.is_finite() { strength.clamp(0.0, 1.0) } else { 0.0 };
        let mut seen: Vec<([f64; 6], f64)> = Vec::new();
        for row in 0..BLOCKS {
            for column in 0..BLOCKS {
                let (x0, x1) = (column * picture.width() / BLOCKS, (column + 1) * picture.width() / BLOCKS);
                let (y0, y1) = (row * picture.height() / BLOCKS, (row + 1) * picture.height() / BLOCKS);
                let mut lights = Vec::new();
                for y in (y0..y1).step_by(((y1 - y0) / 24).max(1)) {
                    for x in (x0..x1).step_by(((x1 - x0) / 24).max(1)) {
                        lights.push(light_of(picture.pixel(x, y)).luminance());
                    }
                }
                lights.sort_by(f64::total_cmp);
                let Some(bright) = lights.get(lights.len() * 4 / 5) else { continue };
                let middle = |at: usize| (at as f64 + 0.5) * 2.0 / BLOCKS as f64 - 1.0;
                seen.push((terms(middle(column), middle(row)), libm::log(bright.max(0.002))));
            }
        }
        let mut field = fitted(&seen);
        // The whole sheet keeps its lightness: only the change over it is taken out.
        field[0] = -(field[3] + field[5]) / 3.0;
        Self { field: field.map(|term| -term * strength), gains: [1.0; 3] }
    }

    /// The same with the colour of the lamp taken out: what lies in the marked part (shares of the sheet, 0 to 1: left, top,
    /// right, bottom) is held to be white or grey. Gains are kept between a half and two.
    #[must_use]
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        clippy::cast_precision_loss,
        reason = "held to the picture"
    )]
    pub fn with_neutral(self, picture: &Raster, [left, top, right, bottom]: [f64; 4]) -> Self {
        let place = |share: f64, size: usize| (share.clamp(0.0, 1.0) * size as f64) as usize;
        let (x0, x1) = (place(left.min(right), picture.width()), place(left.max(right), picture.width()));
        let (y0, y1) = (place(top.min(bottom), picture.height()), place(top.max(bottom), picture.height()));
        let mut sum = [0.0; 3];
        for y in y0..y1.max(y0 + 1) {
            for x in x0..x1.max(x0 + 1) {
                let light = light_of(picture.pixel(x, y));
                sum = [sum[0] + light.r, sum[1] + light.g, sum[2] + light.b];
            }
        }
        let grey = 0.2126 * sum[0] + 0.7152 * sum[1] + 0.0722 * sum[2];
        let gains = sum.map(|channel| if channel > 0.0 { (grey / channel).clamp(0.5, 2.0) } else { 1.0 });
        Self { gains, ..self }
    }

    /// What takes this one back.
    #[must_use]
    pub fn undone(&self) -> Self {
        Self { field: self.field.map(|term| -term), gains: self.gains.map(|gain| 1.0 / gain) }
    }

    /// How much the light is changed at the place changed most, as a factor (1: nowhere).
    #[must_use]
    pub fn most(&self) -> f64 {
        let places = [-1.0, -0.5, 0.0, 0.5, 1.0];
        let at = |x: f64, y: f64| self.at(x, y).abs();
        let most = places.iter().flat_map(|x| places.iter().map(move |y| at(*x, *y))).fold(0.0_f64, f64::max);
        libm::exp(most)
    }

    fn at(&self, x: f64, y: f64) -> f64 {
        let sum: f64 = terms(x, y).iter().zip(self.field).map(|(term, field)| term * field).sum();
        sum.clamp(-MOST, MOST)
    }

    /// The picture with the correction.
    #[must_use]
    #[allow(clippy::cast_precision_loss, reason = "pixel counts")]
    pub fn applied(&self, picture: &Raster) -> Raster {
        if *self == Self::NONE {
            return picture.clone();
        }
        let coded = codes();
        let (w, h) = (picture.width(), picture.height());
        let mut rgb = Vec::with_capacity(w * h * 3);
        // The field is slow: one factor for 8 pixels of a row is finer than anyone sees.
        const RUN: usize = 8;
        for (y, line) in picture.rgb().chunks_exact(w * 3).enumerate() {
            let down = (y as f64 + 0.5) * 2.0 / h as f64 - 1.0;
            for (at, run) in line.chunks(RUN * 3).enumerate() {
                let across = ((at * RUN + RUN / 2) as f64 * 2.0 / w as f64 - 1.0).min(1.0);
                let factor = libm::exp(self.at(across, down));
                for pixel in run.chunks_exact(3) {
                    let light = light_of([pixel[0], pixel[1], pixel[2]]);
                    let [r, g, b] = self.gains;
                    rgb.extend([light.r * r, light.g * g, light.b * b].map(|light| coded(light * factor)));
                }
            }
        }
        Raster::new(w, h, rgb).unwrap_or_else(|| picture.clone())
    }
}

pub(crate) fn light_of([r, g, b]: [u8; 3]) -> LinearRgb {
    color::Srgb::new(r, g, b).linear()
}

/// Light to eight bits by a table: `libm`'s powers for every pixel would take seconds.
pub(crate) fn codes() -> impl Fn(f64) -> u8 {
    const FINE: u32 = 16_384;
    let table: Vec<u8> = (0..=FINE)
        .map(|at| {
            let light = f64::from(at) / f64::from(FINE);
            // Square roots spread the dark end, where eyes see most.
            let light = light * light;
            LinearRgb { r: light, g: light, b: light }.srgb().r
        })
        .collect();
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held to 0–1 first")]
    move |light: f64| table[libm::round(libm::sqrt(light.clamp(0.0, 1.0)) * f64::from(FINE)) as usize]
}

fn terms(x: f64, y: f64) -> [f64; 6] {
    [1.0, x, y, x * x, x * y, y * y]
}

/// Least squares, then again with what lies far off (a dark motif in a block) counting less.
fn fitted(seen: &[([f64; 6], f64)]) -> [f64; 6] {
    let mut weights = vec![1.0; seen.len()];
    let mut found = [0.0; 6];
    for _ in 0..6 {
        let mut rows = [[0.0; 7]; 6];
        for ((terms, value), weight) in seen.iter().zip(&weights) {
            add(&mut rows, terms, *value, *weight);
        }
        for (at, row) in rows.iter_mut().enumerate() {
            row[at] += 1e-9;
        }
        found = solved(rows);
        for ((terms, value), weight) in seen.iter().zip(&mut weights) {
            let off = value - terms.iter().zip(found).map(|(term, field)| term * field).sum::<f64>();
            *weight = 1.0 / (1.0 + (off / 0.05) * (off / 0.05));
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Cream paper with dark dots under a lamp at the left, reddish.
    fn lamplit() -> Raster {
        let side = 240;
        let rgb = (0..side * side).flat_map(|at| {
            let (x, y) = (at % side, at / side);
            let dot = (x % 20) * (x % 20) + (y % 20) * (y % 20) < 60;
            let paper = if dot { 0.2 } else { 0.8 };
            let lamp = 1.0 - 0.4 * x as f64 / side as f64;
            let light = paper * lamp;
            let seen = LinearRgb { r: light, g: light * 0.9, b: light * 0.75 }.srgb();
            [seen.r, seen.g, seen.b]
        });
        Raster::new(side, side, rgb.collect()).unwrap()
    }

    #[test]
    fn lamp_light_is_evened_and_comes_back() {
        let photo = lamplit();
        let spread = |picture: &Raster| i32::from(picture.pixel(35, 35)[1]) - i32::from(picture.pixel(215, 215)[1]);
        let correction = Correction::evened(&photo, 1.0);
        let even = correction.applied(&photo);
        assert!(spread(&photo) > 30 && spread(&even).abs() <= 4, "{} {}", spread(&photo), spread(&even));
        let back = correction.undone().applied(&even);
        let worst = back.rgb().iter().zip(photo.rgb()).map(|(a, b)| a.abs_diff(*b)).max().unwrap();
        assert!(worst <= 2, "{worst}");
        let gentle = Correction::evened(&photo, 0.5);
        assert!(gentle.most() > 1.02 && gentle.most() < correction.most());
    }

    #[test]
    fn a_marked_patch_becomes_grey() {
        let photo = lamplit();
        let balanced = Correction::NONE.with_neutral(&photo, [0.4, 0.4, 0.6, 0.6]).applied(&photo);
        let [r, g, b] = balanced.pixel(155, 155);
        assert!(r.abs_diff(g) <= 2 && g.abs_diff(b) <= 2, "{r} {g} {b}");
        assert_eq!(Correction::NONE.applied(&photo), photo);
    }
}
