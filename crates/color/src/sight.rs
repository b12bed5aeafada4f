//! The same colours as people with a colour-vision deficiency may see them.

use crate::lab::times;
use crate::{LinearRgb, Srgb};

/// Whose eyes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Sight {
    /// Without the red-sensitive cones.
    Protan,
    /// Without the green-sensitive cones.
    Deutan,
    /// Without the blue-sensitive cones.
    Tritan,
    /// No colour at all, only light and dark.
    Grey,
}

/// What such eyes may make of a colour; an approximation, and nobody's eyes are an average.
///
/// # Source
/// Machado, Oliveira, Fernandes 2009, *IEEE Transactions on Visualization and Computer Graphics* 15(6), 1291–1298: the
/// matrices of severity 1.0, on linear light. `Grey` is relative luminance (WCAG 2.2).
#[must_use]
pub fn seen_by(sight: Sight, color: Srgb) -> Srgb {
    let light = color.linear();
    let [r, g, b] = times(&matrix_of(sight), [light.r, light.g, light.b]);
    LinearRgb { r, g, b }.srgb()
}

/// The matrix of such eyes, on linear light: red, green and blue of the answer, each from red, green and blue.
///
/// # Source
/// That of [`seen_by`].
#[must_use]
pub fn matrix_of(sight: Sight) -> [[f64; 3]; 3] {
    match sight {
        Sight::Protan => {
            [[0.152_286, 1.052_583, -0.204_868], [0.114_503, 0.786_281, 0.099_216], [-0.003_882, -0.048_116, 1.051_998]]
        }
        Sight::Deutan => {
            [[0.367_322, 0.860_646, -0.227_968], [0.280_085, 0.672_501, 0.047_413], [-0.011_820, 0.042_940, 0.968_881]]
        }
        Sight::Tritan => {
            [[1.255_528, -0.076_749, -0.178_779], [-0.078_411, 0.930_809, 0.147_602], [0.004_733, 0.691_367, 0.303_900]]
        }
        Sight::Grey => [[0.2126, 0.7152, 0.0722]; 3],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Lab, ciede2000};

    #[test]
    fn greys_stay_grey() {
        for sight in [Sight::Protan, Sight::Deutan, Sight::Tritan, Sight::Grey] {
            for value in [0, 40, 128, 200, 255] {
                assert_eq!(seen_by(sight, Srgb::new(value, value, value)), Srgb::new(value, value, value));
            }
        }
    }

    #[test]
    fn red_and_green_draw_together_where_they_should() {
        let (rust, moss) = (Srgb::new(170, 90, 50), Srgb::new(120, 120, 45));
        let apart = |sight| ciede2000(Lab::of(seen_by(sight, rust)), Lab::of(seen_by(sight, moss)));
        let seen = ciede2000(Lab::of(rust), Lab::of(moss));
        assert!(apart(Sight::Deutan) < seen / 2.0 && apart(Sight::Tritan) > seen / 2.0);
    }
}
