//! References as a maker writes them, a line each: where a patch lies in the photo, and its colour in truth. For the command and the page.
//!
//! `640,220 #8c8c8c`, `640,220 lab 54.2 0.3 -1.1 D50`, `640,220 grey 18%`; a third number after the place is half a side in pixels.

use color::{Lab, LinearRgb, Srgb};
use photo::reference::{Off, Patch, Reference, Spoilt, Way, Why};
use photo::{Point, Raster};
use words::{Arg as Fact, say};

use crate::colors;
use crate::squaring::PATCH;

/// Most patches that are read. `Chosen:` a large colour card has 140.
pub(crate) const MOST: usize = 200;

/// One line.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Line {
    /// Its middle, in pixels of the upright photo.
    pub(crate) at: Point,
    /// Half a side that was written.
    half: Option<f64>,
    real: LinearRgb,
}

/// Reads one line; `None` if it is anything else.
pub(crate) fn line(text: &str) -> Option<Line> {
    let (place, color) = text.trim().split_once(char::is_whitespace)?;
    let places: Vec<f64> = place.split([',', ';']).map(|part| part.parse().ok()).collect::<Option<_>>()?;
    let (at, half) = match places[..] {
        [x, y] => (Point::new(x, y), None),
        [x, y, half] => (Point::new(x, y), Some(half)),
        _ => return None,
    };
    let finite = at.x.is_finite() && at.y.is_finite() && half.is_none_or(f64::is_finite);
    finite.then_some(Line { at, half, real: real(color.trim())? })
}

fn real(text: &str) -> Option<LinearRgb> {
    if text.starts_with('#') {
        return Srgb::from_hex(text).map(Srgb::linear);
    }
    let lower = text.to_lowercase().replace(',', ".");
    let mut parts = lower.split_whitespace();
    let number = |part: Option<&str>| part?.parse::<f64>().ok().filter(|value| value.is_finite());
    match parts.next()? {
        "lab" => {
            let lab = Lab::new(number(parts.next())?, number(parts.next())?, number(parts.next())?);
            let sound = (0.0..=100.0).contains(&lab.l) && lab.a.abs() <= 128.0 && lab.b.abs() <= 128.0;
            let light = match (parts.next()?, parts.next()) {
                ("d50", None) => lab.light_from_d50(),
                ("d65", None) => lab.light(),
                _ => return None,
            };
            sound.then_some(light)
        }
        "grey" | "gray" | "grau" => {
            let rest: String = parts.collect();
            let share = number(rest.strip_suffix('%'))? / 100.0;
            (share > 0.0 && share <= 1.0).then_some(LinearRgb { r: share, g: share, b: share })
        }
        _ => None,
    }
}

/// Reads many, empty ones left out; or says which line cannot be read.
pub(crate) fn lines(text: &str) -> Result<Vec<Line>, String> {
    let written = text.lines().enumerate().filter(|(_, text)| !text.trim().is_empty());
    let read = |(number, text): (usize, &str)| {
        line(text).ok_or_else(|| {
            let shown: String = text.trim().chars().take(60).collect();
            say("refused-reference-line", &[("number", (number + 1).into()), ("line", shown.into())])
        })
    };
    let all: Vec<Line> = written.map(read).collect::<Result<_, _>>()?;
    if all.len() > MOST { Err(say("refused-reference-many", &[("most", MOST.into())])) } else { Ok(all) }
}

/// The correction that they ask for; or which one spoils it, and what would do.
pub(crate) fn fitted(photo: &Raster, lines: &[Line]) -> Result<Reference, String> {
    #[allow(clippy::cast_precision_loss, reason = "pixel counts")]
    let usual = PATCH * photo.width().max(photo.height()) as f64;
    let patches: Vec<Patch> =
        lines.iter().map(|line| Patch { at: line.at, half: line.half.unwrap_or(usual), real: line.real }).collect();
    Reference::fitted(photo, &patches).map_err(|spoilt| refused(spoilt, lines))
}

fn place(line: &Line) -> Fact {
    format!("{:.0},{:.0}", line.at.x, line.at.y).into()
}

fn refused(Spoilt { patch, why }: Spoilt, lines: &[Line]) -> String {
    let Some(line) = lines.get(patch) else { return say("refused-reference-extreme", &[]) };
    let facts = [("number", (patch + 1).into()), ("place", place(line))];
    match why {
        Why::Outside => say("refused-reference-outside", &facts),
        Why::Small => say("refused-reference-small", &facts),
        Why::Clipped => say("refused-reference-clipped", &facts),
        Why::Uneven => say("refused-reference-uneven", &facts),
        Why::Unreal => say("refused-reference-unreal", &facts),
        Why::Extreme => say("refused-reference-extreme", &facts),
    }
}

/// What a correction does, sentence by sentence.
pub(crate) fn told(reference: &Reference, lines: &[Line]) -> Vec<String> {
    let tenth = |value: f64| Fact::from(format!("{value:.1}"));
    let off = |off: &Off| {
        [("before", tenth(off.before)), ("after", tenth(off.after)), ("near", colors::near(off.after).into())]
    };
    let mut all = vec![match reference.way() {
        Way::Gains => say("reference-gains", &[("count", lines.len().into())]),
        Way::Offset => say("reference-offset", &[("count", lines.len().into())]),
        Way::Matrix => say("reference-matrix", &[("count", lines.len().into())]),
    }];
    for (number, (line, of)) in lines.iter().zip(reference.off()).enumerate() {
        let [before, after, near] = off(of);
        all.push(say(
            "reference-patch",
            &[("number", (number + 1).into()), ("place", place(line)), before, after, near],
        ));
    }
    all.push(say("reference-mean", &off(&reference.mean())));
    if let Some(number) = reference.suspect() {
        all.push(say("reference-suspect", &[("number", (number + 1).into())]));
    }
    all.push(say("reference-limits", &[]));
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn colors_are_read_as_they_are_written() {
        let of = |text: &str| line(text).map(|line| line.real.srgb());
        assert_eq!(of("640,220 #8fa98a"), Some(Srgb::new(0x8f, 0xa9, 0x8a)));
        assert_eq!(of("640,220,12 lab 54.2905 80.8049 69.891 D50"), Some(Srgb::new(255, 0, 0)));
        assert_eq!(of(" 6.5,7  Lab 100 0 0 d65"), Some(Srgb::new(255, 255, 255)));
        // 18 % of the light: L* 49.5, #767676 in sRGB.
        assert_eq!(of("1,2 grey 18%"), of("1,2 Grau 18,0 %"));
        assert_eq!(of("1,2 grey 18%"), Some(Srgb::new(118, 118, 118)));
        for wrong in [
            "",
            "640 #8fa98a",
            "640,220",
            "640,220 8fa98a",
            "1,2,3,4 #8fa98a",
            "1,2 lab 50 0 0",
            "1,2 lab 50 0 0 d55",
            "1,2 lab 50 0 0 d50 x",
            "1,2 lab NaN 0 0 d50",
            "NaN,2 #8fa98a",
            "1,2 grey 18",
            "1,2 grey 180%",
            "1,2 grey 0%",
            "1,2 lab 150 0 0 d50",
            "x,2 #8fa98a",
            "1,inf #8fa98a",
        ] {
            assert_eq!(line(wrong), None, "{wrong}");
        }
    }

    #[test]
    fn a_line_that_cannot_be_read_is_named() {
        assert_eq!(lines("\n1,2 #ffffff\n\n").unwrap().len(), 1);
        assert!(lines("1,2 #ffffff\nhello\n").unwrap_err().contains("hello"));
        assert!(lines(&"1,2 #ffffff\n".repeat(201)).is_err());
    }
}
