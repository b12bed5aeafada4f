//! Colours as screens and cameras write them, and the light they stand for.

use std::fmt;
use std::sync::OnceLock;

/// A colour in sRGB, eight bits a channel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Srgb {
    /// Red, 0–255.
    pub r: u8,
    /// Green, 0–255.
    pub g: u8,
    /// Blue, 0–255.
    pub b: u8,
}

/// Light of the sRGB primaries, 0 to 1 each; what may be added up and averaged.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LinearRgb {
    /// Red light.
    pub r: f64,
    /// Green light.
    pub g: f64,
    /// Blue light.
    pub b: f64,
}

impl Srgb {
    /// A colour of its three channels.
    #[must_use]
    pub const fn new(r: u8, g: u8, b: u8) -> Self {
        Self { r, g, b }
    }

    /// Reads `#rrggbb`; `None` if it is anything else.
    #[must_use]
    pub fn from_hex(text: &str) -> Option<Self> {
        let digits = text.strip_prefix('#')?;
        if digits.len() != 6 || !digits.bytes().all(|byte| byte.is_ascii_hexdigit()) {
            return None;
        }
        let channel = |at: usize| u8::from_str_radix(digits.get(at..at + 2)?, 16).ok();
        Some(Self { r: channel(0)?, g: channel(2)?, b: channel(4)? })
    }

    /// The light of this colour.
    #[must_use]
    pub fn linear(self) -> LinearRgb {
        let table = decoding();
        LinearRgb { r: table[usize::from(self.r)], g: table[usize::from(self.g)], b: table[usize::from(self.b)] }
    }
}

impl fmt::Display for Srgb {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(to, "#{:02x}{:02x}{:02x}", self.r, self.g, self.b)
    }
}

impl LinearRgb {
    /// The nearest eight-bit colour; light out of range is held to 0–1.
    #[must_use]
    pub fn srgb(self) -> Srgb {
        Srgb { r: encode(self.r), g: encode(self.g), b: encode(self.b) }
    }

    /// Relative luminance: 0 for black, 1 for white.
    ///
    /// # Source
    /// W3C, Web Content Accessibility Guidelines 2.2, 2023, definition of *relative luminance*.
    #[must_use]
    pub fn luminance(self) -> f64 {
        0.2126 * self.r + 0.7152 * self.g + 0.0722 * self.b
    }
}

/// Light of each of the 256 values of a channel.
///
/// # Source
/// IEC 61966-2-1:1999, as W3C quotes it: linear part up to 0.04045.
fn decoding() -> &'static [f64; 256] {
    static TABLE: OnceLock<[f64; 256]> = OnceLock::new();
    TABLE.get_or_init(|| {
        let mut table = [0.0; 256];
        for (value, light) in (0u8..=255).zip(&mut table) {
            let coded = f64::from(value) / 255.0;
            *light = if coded <= 0.04045 { coded / 12.92 } else { libm::pow((coded + 0.055) / 1.055, 2.4) };
        }
        table
    })
}

/// One channel of light as eight bits.
fn encode(light: f64) -> u8 {
    let light = if light.is_finite() { light.clamp(0.0, 1.0) } else { 0.0 };
    let coded = if light <= 0.003_130_8 { light * 12.92 } else { 1.055 * libm::pow(light, 1.0 / 2.4) - 0.055 };
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held to 0–255 and rounded")]
    let byte = libm::round(coded.clamp(0.0, 1.0) * 255.0) as u8;
    byte
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_grey_comes_back() {
        for value in 0..=255 {
            let grey = Srgb::new(value, 255 - value, value / 2);
            assert_eq!(grey.linear().srgb(), grey);
        }
    }

    #[test]
    fn only_six_digits_after_a_hash_are_a_colour() {
        assert_eq!(Srgb::from_hex("#0fA010"), Some(Srgb::new(15, 160, 16)));
        for wrong in ["", "#", "0fa010", "#0fa01", "#0fa0100", "#0fg010", "#+f+f+f", "#ä0fa0"] {
            assert_eq!(Srgb::from_hex(wrong), None, "{wrong}");
        }
    }
}
