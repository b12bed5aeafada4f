//! What can be read on what.

use crate::{LinearRgb, Srgb};

/// Contrast ratio of two colours, 1 (the same) to 21 (black and white), symmetric.
///
/// Not to be rounded before it is compared: `#777777` on white is 4.478 and fails 4.5.
///
/// # Source
/// W3C, Web Content Accessibility Guidelines 2.2, 2023, *contrast ratio*. Checked by `tests/wcag_2_2.rs`.
#[must_use]
pub fn contrast_ratio(one: Srgb, other: Srgb) -> f64 {
    of_luminances(one.linear().luminance(), other.linear().luminance())
}

fn of_luminances(one: f64, other: f64) -> f64 {
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}

/// What an ink looks like on a paper: an ink is clear, it takes away light, so it is never lighter than its paper.
///
/// # Source
/// `Chosen:` the light of both multiplied, channel by channel; the simplest rule for a clear ink. A pigment ink that
/// covers is nearer to its own colour.
#[must_use]
pub fn stamped(ink: Srgb, paper: Srgb) -> Srgb {
    let (ink, paper) = (ink.linear(), paper.linear());
    LinearRgb { r: ink.r * paper.r, g: ink.g * paper.g, b: ink.b * paper.b }.srgb()
}

/// How an ink reads on a patterned ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ground {
    /// Contrast ratio at the worst place.
    pub worst: f64,
    /// Contrast ratio half of the places reach.
    pub median: f64,
    /// Share of the places, 0 to 1, below the 3 that large letters need.
    pub share_below: f64,
    /// Column and row of the worst place, in the pixels given: its middle.
    pub worst_at: (usize, usize),
}

/// Legibility of an ink stamped on a patterned ground.
///
/// The ground is parted into squares about as wide as a letter's stroke and its nearest surroundings. What is stamped is
/// seen against its own surroundings: in each square the ink on the square's mean colour is compared with the *least
/// favourable* of the square and its eight neighbours.
///
/// # Shape
/// `pixels` row by row, `width` in each row; `window` is the side of a square in pixels (at least 1; squares at the far
/// edges may be smaller). `None` if there are no pixels or they are no whole rows.
///
/// # Source
/// `Chosen:` the squares; the ratio and the 3 are those of WCAG 2.2 (SC 1.4.3, large text).
#[must_use]
pub fn legible_on(ink: Srgb, pixels: &[Srgb], width: usize, window: usize) -> Option<Ground> {
    if pixels.is_empty() || width == 0 || !pixels.len().is_multiple_of(width) {
        return None;
    }
    let (height, window) = (pixels.len() / width, window.max(1));
    let (columns, rows) = (width.div_ceil(window), height.div_ceil(window));
    let means = square_means(pixels, width, window);
    let ink = ink.linear();
    let inked = |m: &LinearRgb| LinearRgb { r: m.r * ink.r, g: m.g * ink.g, b: m.b * ink.b }.luminance();
    let mut ratios: Vec<(f64, usize)> = Vec::with_capacity(means.len());
    for row in 0..rows {
        for column in 0..columns {
            let letter = inked(&means[row * columns + column]);
            let mut worst = f64::INFINITY;
            for near_row in row.saturating_sub(1)..(row + 2).min(rows) {
                for near in column.saturating_sub(1)..(column + 2).min(columns) {
                    worst = worst.min(of_luminances(letter, means[near_row * columns + near].luminance()));
                }
            }
            ratios.push((worst, row * columns + column));
        }
    }
    ratios.sort_by(|one, other| one.0.total_cmp(&other.0).then(one.1.cmp(&other.1)));
    let below = ratios.iter().filter(|(ratio, _)| *ratio < 3.0).count();
    let (worst, at) = ratios[0];
    let middle = |cell: usize, most: usize| (cell * window + window / 2).min(most - 1);
    #[allow(clippy::cast_precision_loss, reason = "counts of squares are far below 2^52")]
    let share_below = below as f64 / ratios.len() as f64;
    Some(Ground {
        worst,
        median: ratios[ratios.len() / 2].0,
        share_below,
        worst_at: (middle(at % columns, width), middle(at / columns, height)),
    })
}

/// Mean light of each square, row by row.
fn square_means(pixels: &[Srgb], width: usize, window: usize) -> Vec<LinearRgb> {
    let height = pixels.len() / width;
    let mut means = Vec::new();
    for top in (0..height).step_by(window) {
        for left in (0..width).step_by(window) {
            let (mut sum, mut count) = ([0.0; 3], 0.0);
            for row in top..(top + window).min(height) {
                for pixel in &pixels[row * width + left..row * width + (left + window).min(width)] {
                    let light = pixel.linear();
                    sum = [sum[0] + light.r, sum[1] + light.g, sum[2] + light.b];
                    count += 1.0;
                }
            }
            means.push(LinearRgb { r: sum[0] / count, g: sum[1] / count, b: sum[2] / count });
        }
    }
    means
}

#[cfg(test)]
mod tests {
    use super::*;

    const INK: Srgb = Srgb::new(20, 20, 60);
    const PALE: Srgb = Srgb::new(245, 240, 230);

    #[test]
    fn plain_ground_reads_as_plain_contrast() {
        let ground = legible_on(INK, &[PALE; 400], 20, 4).unwrap();
        let plain = contrast_ratio(stamped(INK, PALE), PALE);
        assert!((ground.worst - plain).abs() < 0.3 && (ground.median - plain).abs() < 0.3, "{ground:?} {plain}");
        assert!(ground.share_below < 1e-9);
    }

    #[test]
    fn a_dark_flower_is_found_where_it_lies() {
        let mut pixels = vec![PALE; 40 * 40];
        for row in 28..36 {
            for column in 8..16 {
                pixels[row * 40 + column] = Srgb::new(30, 30, 50);
            }
        }
        let ground = legible_on(INK, &pixels, 40, 4).unwrap();
        assert!(ground.worst < 1.6 && ground.median > 10.0, "{ground:?}");
        assert!((4..20).contains(&ground.worst_at.0) && (24..40).contains(&ground.worst_at.1), "{ground:?}");
    }

    #[test]
    fn no_whole_rows_are_no_ground() {
        assert_eq!(legible_on(INK, &[], 4, 2), None);
        assert_eq!(legible_on(INK, &[PALE; 7], 4, 2), None);
        assert_eq!(legible_on(INK, &[PALE; 7], 0, 2), None);
    }
}
