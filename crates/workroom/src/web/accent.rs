//! A colour out of the open paper, made readable: one of its prints that a cardstock of the project repeats.
//!
//! # Source
//! Relative luminance and contrast: Web Content Accessibility Guidelines 2.2, W3C 2023, definitions
//! "relative luminance" and "contrast ratio"; 4.5 to 1 is success criterion 1.4.3 (AA).

use cards::Project;
use color::{Lab, Share, Srgb, ciede2000};
use drawing::Color;

/// The page in light and in dark, as `workroom.css` has them.
const LIGHT: Color = Color::hex(0xfb_f8_f1);
const DARK: Color = Color::hex(0x1f_1c_19);
const INK: Color = Color::hex(0x8c_43_26);
/// A little above the least, for the shades of paper that lie on the page.
const WANTED: f64 = 5.2;

/// A colour of the prints is that of a cardstock up to so much ΔE₀₀. Chosen: "close" in words.
const REPEATED: f64 = 6.0;

/// The colour of the prints that the first lively cardstock repeats; else their liveliest; else the cardstock's own.
fn of_paper(project: &Project, prints: &[&Share]) -> Color {
    let lively = |color: Srgb| {
        let parts = [color.r, color.g, color.b];
        parts.iter().max() > parts.iter().min().map(|least| least.saturating_add(50)).as_ref()
    };
    let stock = project.cardstocks.iter().filter_map(|stock| Srgb::from_hex(&stock.color)).find(|color| lively(*color));
    let apart = |share: &Share| stock.map_or(f64::INFINITY, |stock| ciede2000(Lab::of(stock), share.lab));
    let shown = prints.iter().filter(|share| lively(share.color));
    let repeated = shown.clone().min_by(|one, other| apart(one).total_cmp(&apart(other)));
    let liveliest =
        shown.max_by(|one, other| (one.share * one.lab.chroma()).total_cmp(&(other.share * other.lab.chroma())));
    let found = repeated.filter(|share| apart(share) <= REPEATED).or(liveliest).map(|share| share.color).or(stock);
    found.map_or(INK, |color| Color { rgb: [color.r, color.g, color.b], ..INK })
}

/// The style sheet that sets a project's accent, from the colours of its prints as far as they are known.
pub(super) fn style(project: &Project, prints: &[&Share]) -> String {
    let found = of_paper(project, prints);
    let (light, dark) = (readable(found, LIGHT, Color::hex(0)), readable(found, DARK, Color::hex(0xff_ff_ff)));
    format!(
        ":root{{--accent:{};--on-accent:#fffdf8}}@media (prefers-color-scheme:dark){{:root{{--accent:{};--on-accent:#1b1815}}}}",
        written(light),
        written(dark)
    )
}

/// The colour moved towards `pole` until it can be read on `ground`.
fn readable(color: Color, ground: Color, pole: Color) -> Color {
    (0..=250)
        .step_by(10)
        .map(|part| color.mix(pole, part))
        .find(|mixed| contrast(*mixed, ground) >= WANTED)
        .unwrap_or(pole)
}

fn written(color: Color) -> String {
    let [red, green, blue] = color.rgb;
    format!("#{red:02x}{green:02x}{blue:02x}")
}

fn contrast(one: Color, other: Color) -> f64 {
    let (one, other) = (luminance(one), luminance(other));
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}

fn luminance(color: Color) -> f64 {
    let [red, green, blue] = color.rgb.map(|part| {
        let part = f64::from(part) / 255.0;
        if part <= 0.04045 { part / 12.92 } else { ((part + 0.055) / 1.055).powf(2.4) }
    });
    0.2126 * red + 0.7152 * green + 0.0722 * blue
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;

    #[test]
    fn contrast_is_that_of_the_guidelines() {
        // The guidelines' own ends: black on white is 21 to 1, a colour on itself 1 to 1.
        let (white, black, grey) = (Color::hex(0xff_ff_ff), Color::hex(0), Color::hex(0x76_76_76));
        assert!((contrast(white, black) - 21.0).abs() < 1e-9);
        assert!((contrast(grey, grey) - 1.0).abs() < 1e-9);
        // #767676 is widely given as the lightest grey with 4.5 to 1 on white (common practice).
        assert!(contrast(grey, white) >= 4.5 && contrast(Color::hex(0x77_77_77), white) < 4.5);
    }

    #[test]
    fn the_accent_is_a_color_of_the_prints() {
        let project = store::project_file::read(crate::make::ONE_EACH).unwrap();
        let share = |hex: &str, share: f64| {
            let color = Srgb::from_hex(hex).unwrap();
            Share { color, lab: Lab::of(color), share }
        };
        let blue = Srgb::from_hex(&project.cardstocks[1].color).unwrap();
        let near = Srgb::new(blue.r + 3, blue.g, blue.b).to_string();
        let shares = [share("#d39b43", 0.9), share(&near, 0.1), share("#808080", 0.5)];
        let all: Vec<&Share> = shares.iter().collect();
        let Srgb { r, g, b } = shares[1].color;
        assert_eq!(of_paper(&project, &all).rgb, [r, g, b], "the one that a cardstock repeats");
        assert_eq!(of_paper(&project, &all[..1]).rgb, [0xd3, 0x9b, 0x43], "else the liveliest");
        assert_eq!(of_paper(&project, &all[2..]).rgb, [blue.r, blue.g, blue.b], "else the cardstock's own");
    }

    #[test]
    fn every_accent_can_be_read() {
        for code in [0xd9_a4_41, 0xf6_f0_e2, 0x2f_5d_73, 0x00_00_00, 0xff_ff_ff, 0xff_ff_00] {
            let color = Color::hex(code);
            assert!(contrast(readable(color, LIGHT, Color::hex(0)), LIGHT) >= 4.5, "{code:x} in light");
            assert!(contrast(readable(color, DARK, Color::hex(0xff_ff_ff)), DARK) >= 4.5, "{code:x} in dark");
        }
    }
}
