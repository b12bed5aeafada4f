//! Colours as eyes tell them apart: CIELAB under daylight D65.

use crate::{LinearRgb, Srgb};

/// CIELAB, white D65 taken from its published x 0.3127, y 0.3290.
///
/// D50 would give other numbers (red against blue 55.8 apart and not 52.9), so values from elsewhere must be D65 too.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lab {
    /// Lightness, 0 black to 100 white.
    pub l: f64,
    /// Green (negative) to red.
    pub a: f64,
    /// Blue (negative) to yellow.
    pub b: f64,
}

/// CIE XYZ of sRGB's primaries and white, in exact fractions.
///
/// # Source
/// IEC 61966-2-1:1999 primaries (0.640/0.330, 0.300/0.600, 0.150/0.060) and white x 0.3127 y 0.3290; the fractions follow
/// from them and are those of W3C's CSS Color Module Level 4.
const TO_XYZ: [[f64; 3]; 3] = [
    [506_752.0 / 1_228_815.0, 87_881.0 / 245_763.0, 12_673.0 / 70_218.0],
    [87_098.0 / 409_605.0, 175_762.0 / 245_763.0, 12_673.0 / 175_545.0],
    [7_918.0 / 409_605.0, 87_881.0 / 737_289.0, 1_001_167.0 / 1_053_270.0],
];
/// The inverse of `TO_XYZ`, same source.
const FROM_XYZ: [[f64; 3]; 3] = [
    [12_831.0 / 3_959.0, -329.0 / 214.0, -1_974.0 / 3_959.0],
    [-851_781.0 / 878_810.0, 1_648_619.0 / 878_810.0, 36_519.0 / 878_810.0],
    [705.0 / 12_673.0, -2_585.0 / 12_673.0, 705.0 / 667.0],
];
/// Bradford adaptation from D50 to D65, same source.
#[allow(clippy::excessive_precision, reason = "as published")]
const D50_TO_D65: [[f64; 3]; 3] = [
    [0.955_473_421_488_075, -0.023_098_454_948_764_71, 0.063_259_243_200_570_72],
    [-0.028_369_709_333_863_7, 1.009_995_398_081_304_1, 0.021_041_441_191_917_323],
    [0.012_314_014_864_481_998, -0.020_507_649_298_898_964, 1.330_365_926_242_124],
];
const WHITE: [f64; 3] = [0.3127 / 0.3290, 1.0, (1.0 - 0.3127 - 0.3290) / 0.3290];
/// CIE 15, ISO/CIE 11664-4.
const EPSILON: f64 = 216.0 / 24_389.0;
/// Same source.
const KAPPA: f64 = 24_389.0 / 27.0;

impl Lab {
    /// A colour of its three coordinates.
    #[must_use]
    pub const fn new(l: f64, a: f64, b: f64) -> Self {
        Self { l, a, b }
    }

    /// CIELAB of an sRGB colour.
    #[must_use]
    pub fn of(color: Srgb) -> Self {
        Self::of_light(color.linear())
    }

    /// CIELAB of light of the sRGB primaries.
    #[must_use]
    pub fn of_light(light: LinearRgb) -> Self {
        let [x, y, z] = xyz(light);
        let [fx, fy, fz] = [x / WHITE[0], y / WHITE[1], z / WHITE[2]]
            .map(|t| if t > EPSILON { libm::cbrt(t) } else { (KAPPA * t + 16.0) / 116.0 });
        Self { l: 116.0 * fy - 16.0, a: 500.0 * (fx - fy), b: 200.0 * (fy - fz) }
    }

    /// The nearest sRGB colour; what no screen can show is held to what it can, channel by channel.
    #[must_use]
    pub fn srgb(self) -> Srgb {
        self.light().srgb()
    }

    /// The light of this colour; out of 0 to 1 where no screen can show it.
    #[must_use]
    pub fn light(self) -> LinearRgb {
        self.light_under(WHITE, |xyz| xyz)
    }

    /// The light of a colour whose CIELAB is given under D50, as card makers and print shops do, seen under D65.
    ///
    /// # Source
    /// White x 0.3457, y 0.3585 and the Bradford matrix of W3C's CSS Color Module Level 4, sample code.
    #[must_use]
    pub fn light_from_d50(self) -> LinearRgb {
        self.light_under([0.3457 / 0.3585, 1.0, (1.0 - 0.3457 - 0.3585) / 0.3585], |xyz| times(&D50_TO_D65, xyz))
    }

    fn light_under(self, white: [f64; 3], adapted: impl Fn([f64; 3]) -> [f64; 3]) -> LinearRgb {
        let fy = (self.l + 16.0) / 116.0;
        let [fx, fz] = [fy + self.a / 500.0, fy - self.b / 200.0];
        let back = |f: f64| {
            let cubed = f * f * f;
            if cubed > EPSILON { cubed } else { (116.0 * f - 16.0) / KAPPA }
        };
        let y = if self.l > KAPPA * EPSILON { fy * fy * fy } else { self.l / KAPPA };
        let [r, g, b] = times(&FROM_XYZ, adapted([back(fx) * white[0], y * white[1], back(fz) * white[2]]));
        LinearRgb { r, g, b }
    }

    /// How colourful: 0 for greys.
    #[must_use]
    pub fn chroma(self) -> f64 {
        libm::hypot(self.a, self.b)
    }

    /// Hue in degrees, 0 up to 360; of no meaning where [`chroma`](Self::chroma) is small.
    #[must_use]
    pub fn hue_deg(self) -> f64 {
        let deg = libm::atan2(self.b, self.a).to_degrees();
        if deg < 0.0 { deg + 360.0 } else { deg }
    }
}

/// CIE XYZ, white at Y = 1.
pub(crate) fn xyz(light: LinearRgb) -> [f64; 3] {
    times(&TO_XYZ, [light.r, light.g, light.b])
}

/// A matrix on a column.
pub(crate) fn times(matrix: &[[f64; 3]; 3], column: [f64; 3]) -> [f64; 3] {
    matrix.map(|row| row[0] * column[0] + row[1] * column[1] + row[2] * column[2])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_cube_of_colors_comes_back() {
        for step in 0..16u8 {
            for other in 0..16u8 {
                let color = Srgb::new(step * 17, other * 17, step ^ other);
                assert_eq!(Lab::of(color).srgb(), color);
            }
        }
    }
}
