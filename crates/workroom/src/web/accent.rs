//! A colour out of the open paper, made readable.
//!
//! # Source
//! Relative luminance and contrast: Web Content Accessibility Guidelines 2.2, W3C 2023, definitions
//! "relative luminance" and "contrast ratio"; 4.5 to 1 is success criterion 1.4.3 (AA).

use cards::Project;
use drawing::Color;

/// The page in light and in dark, as `workroom.css` has them.
const LIGHT: Color = Color::hex(0xfb_f8_f1);
const DARK: Color = Color::hex(0x1f_1c_19);
const INK: Color = Color::hex(0x8c_43_26);
/// A little above the least, for the shades of paper that lie on the page.
const WANTED: f64 = 5.2;

/// The style sheet that sets a project's accent.
pub(super) fn style(project: &Project) -> String {
    let lively =
        |color: &Color| color.rgb.iter().max() > color.rgb.iter().min().map(|least| least.saturating_add(50)).as_ref();
    let found = project.cardstocks.iter().filter_map(|stock| Color::parse(&stock.color)).find(lively).unwrap_or(INK);
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
    fn every_accent_can_be_read() {
        for code in [0xd9_a4_41, 0xf6_f0_e2, 0x2f_5d_73, 0x00_00_00, 0xff_ff_ff, 0xff_ff_00] {
            let color = Color::hex(code);
            assert!(contrast(readable(color, LIGHT, Color::hex(0)), LIGHT) >= 4.5, "{code:x} in light");
            assert!(contrast(readable(color, DARK, Color::hex(0xff_ff_ff)), DARK) >= 4.5, "{code:x} in dark");
        }
    }
}
