//! Whether four corners can be a sheet of known proportion before a camera.
//!
//! The first two columns of the map from a unit square to the four corners are the sheet's two ways as the camera sees them;
//! for the right focal length they stand at right angles, and their lengths are as the sheet's sides. The focal length is not
//! known, so the one that suits best is taken, from wide to twofold lenses. (Zhang, He 2007, *Digital Signal Processing*
//! 17(2), 414–432, find a whiteboard's proportion so; from memory.)

use crate::{Point, Raster};

/// What is known of the sheet and the camera.
#[derive(Debug, Clone, Copy)]
pub(super) struct View {
    /// The photo's middle, and its longer side, in the pixels that corners are given in.
    middle: (f64, f64),
    longer: f64,
    /// Natural logarithm of width by height.
    log_proportion: Option<f64>,
}

/// Nearest and farthest focal length, in parts of the photo's longer side. `Chosen:` phones have 0.65 to 0.8, and twice that
/// with the second lens.
const NEAREST: f64 = 0.6;
const FARTHEST: f64 = 1.75;

impl View {
    #[allow(clippy::cast_precision_loss, reason = "pixel counts")]
    pub(super) fn of(picture: &Raster, proportion: Option<f64>) -> Self {
        let (w, h) = (picture.width() as f64, picture.height() as f64);
        Self { middle: (w / 2.0, h / 2.0), longer: w.max(h), log_proportion: proportion.map(libm::log) }
    }

    /// Whether the sheet's proportion is known.
    pub(super) fn knows(&self) -> bool {
        self.log_proportion.is_some()
    }

    /// How far four corners are from any view of the sheet: about the part of a side some corner would have to move by.
    pub(super) fn misfit(&self, corners: &[Point; 4]) -> f64 {
        let Some(known) = self.log_proportion else { return 0.0 };
        let upright = self.off(corners, known);
        if known.abs() < 1e-6 { upright } else { upright.min(self.off(corners, -known)) }
    }

    /// True if the first side is the sheet's height rather than its width.
    pub(super) fn turned(&self, corners: &[Point; 4]) -> bool {
        self.log_proportion.is_some_and(|known| self.off(corners, -known) + 1e-6 < self.off(corners, known))
    }

    /// The same for a sheet whose first side by its second has that logarithm.
    fn off(&self, corners: &[Point; 4], known: f64) -> f64 {
        let at = corners.map(|at| ((at.x - self.middle.0) / self.longer, (at.y - self.middle.1) / self.longer));
        let [(x0, y0), (x1, y1), (x2, y2), (x3, y3)] = at;
        // Heckbert 1989: the map from the unit square, g and h its last row.
        let (dx1, dx2, dx3) = (x1 - x2, x3 - x2, x0 - x1 + x2 - x3);
        let (dy1, dy2, dy3) = (y1 - y2, y3 - y2, y0 - y1 + y2 - y3);
        let den = dx1 * dy2 - dx2 * dy1;
        if den.abs() < 1e-12 {
            return f64::INFINITY;
        }
        let (g, h) = ((dx3 * dy2 - dx2 * dy3) / den, (dx1 * dy3 - dx3 * dy1) / den);
        let one = [x1 - x0 + g * x1, y1 - y0 + g * y1, g];
        let other = [x3 - x0 + h * x3, y3 - y0 + h * y3, h];
        let flat = |a: &[f64; 3], b: &[f64; 3]| a[0] * b[0] + a[1] * b[1];
        let near = |a: &[f64; 3], b: &[f64; 3]| a[2] * b[2];
        let pairs = [(&one, &one), (&other, &other), (&one, &other)];
        let ([oo, tt, ot], [oo2, tt2, ot2]) = (pairs.map(|(a, b)| flat(a, b)), pairs.map(|(a, b)| near(a, b)));
        // `s`: one over the square of the focal length.
        let off = |s: f64, log: f64| {
            let (oo, tt, ot) = (oo * s + oo2, tt * s + tt2, ot * s + ot2);
            (ot / libm::sqrt(oo * tt), libm::log(oo / tt) / 2.0 - log)
        };
        let held =
            |s: f64| if s.is_finite() { s.clamp(1.0 / FARTHEST / FARTHEST, 1.0 / NEAREST / NEAREST) } else { 1.0 };
        let square = libm::exp(2.0 * known);
        let (right, long) = (held(-ot2 / ot), held((square * tt2 - oo2) / (oo - square * tt)));
        let (at_right, at_long) = (off(right, known), off(long, known));
        // Both ways it is off are nearly straight in `s`: between the two there is one place where both together are least.
        let (by_angle, by_ratio) = (at_long.0 - at_right.0, at_right.1 - at_long.1);
        let weight = by_angle * by_angle + by_ratio * by_ratio;
        let share = if weight > 1e-18 { (by_ratio * at_right.1 - by_angle * at_right.0) / weight } else { 0.0 };
        let between = off(held(right + (long - right) * share), known);
        let squares = [at_right, at_long, between].map(|(angle, ratio)| angle * angle + ratio * ratio);
        libm::sqrt(squares.into_iter().fold(f64::INFINITY, f64::min))
    }

    /// What that takes from a ring: 1 to 0.
    pub(super) fn fits(&self, corners: &[Point; 4], near: f64) -> f64 {
        let off = self.misfit(corners) / near;
        1.0 / (1.0 + off * off)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A pinhole camera `focal` pixels before the middle of a photo of 1200 × 900.
    fn seen(proportion: f64, tilt: f64, axis: f64, focal: f64) -> [Point; 4] {
        let (wide, high) = (libm::sqrt(proportion), 1.0 / libm::sqrt(proportion));
        [(-0.5, -0.5), (0.5, -0.5), (0.5, 0.5), (-0.5, 0.5)].map(|(u, v)| {
            let (x, y) = (u * wide + 0.1, v * high - 0.05);
            let (along, across) =
                (x * libm::cos(axis) + y * libm::sin(axis), -x * libm::sin(axis) + y * libm::cos(axis));
            let (lower, z) = (across * libm::cos(tilt), 2.0 + across * libm::sin(tilt));
            let (px, py) =
                (along * libm::cos(axis) - lower * libm::sin(axis), along * libm::sin(axis) + lower * libm::cos(axis));
            Point::new(600.0 + focal * px / z, 450.0 + focal * py / z)
        })
    }

    #[test]
    fn what_a_camera_sees_of_a_sheet_fits_and_another_sheet_does_not() {
        let photo = Raster::new(1200, 900, vec![0; 1200 * 900 * 3]).unwrap();
        for tilt_deg in [0.0_f64, 3.0, 12.0, 25.0, 40.0] {
            for axis_deg in [0.0_f64, 20.0, 45.0, 70.0, 130.0] {
                for focal in [780.0, 900.0, 1400.0] {
                    for proportion in [1.0, 8.5 / 11.0, libm::sqrt(2.0)] {
                        let corners = seen(proportion, tilt_deg.to_radians(), axis_deg.to_radians(), focal);
                        let off = |known: f64| View::of(&photo, Some(known)).misfit(&corners);
                        let told = format!("{tilt_deg}° about {axis_deg}°, {focal}, {proportion}");
                        assert!(off(proportion) < 1e-9, "{told}: {}", off(proportion));
                        let next = [corners[1], corners[2], corners[3], corners[0]];
                        let said = |corners: &[Point; 4]| View::of(&photo, Some(proportion)).turned(corners);
                        assert!(
                            !said(&corners) && (said(&next) || tilt_deg > 4.0 || libm::fabs(proportion - 1.0) < 0.01)
                        );
                        // A photo turned by a quarter says the same.
                        assert!(off(1.0 / proportion) < 1e-9, "{told}");
                        if tilt_deg < 4.0 {
                            assert!(off(proportion * 1.1) > 0.05, "{told}: {}", off(proportion * 1.1));
                        }
                        assert!(View::of(&photo, None).misfit(&corners).abs() < 1e-12);
                    }
                }
            }
        }
    }
}
