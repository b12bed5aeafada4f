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
    pub(crate) real: LinearRgb,
}

/// What of a line cannot be read, as it stands there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Unread {
    /// No two or three numbers.
    Place(String),
    /// A place and nothing after it.
    NoColor,
    /// Anything but a colour.
    Color(String),
    /// After `#` or alone, not six signs of a colour.
    Hex(String),
    /// `lab` without three sound numbers and its white.
    Lab(String),
    /// `grey` without a share of the light.
    Grey(String),
}

impl Unread {
    /// What is wrong with a line, what was found, and what would do; `whose` says which line it is.
    pub(crate) fn said(&self, whose: String, text: &str) -> String {
        let short =
            |text: &str| Fact::from(text.trim().chars().filter(|sign| !sign.is_control()).take(60).collect::<String>());
        let facts = |found: &str| [("whose", whose.clone().into()), ("line", short(text)), ("found", short(found))];
        match self {
            Unread::Place(found) => say("refused-patch-place", &facts(found)),
            Unread::NoColor => say("refused-patch-no-color", &facts("")),
            Unread::Color(found) => say("refused-patch-color", &facts(found)),
            Unread::Hex(found) => say("refused-patch-hex", &facts(found)),
            Unread::Lab(found) => say("refused-patch-lab", &facts(found)),
            Unread::Grey(found) => say("refused-patch-grey", &facts(found)),
        }
    }
}

/// Reads the place of a line: its middle, and half a side where that is written.
pub(crate) fn place_of(text: &str) -> Option<(Point, Option<f64>)> {
    let numbers: Vec<f64> = text.split([',', ';']).map(|part| part.trim().parse().ok()).collect::<Option<_>>()?;
    let sound = numbers.iter().all(|number| number.is_finite());
    match numbers[..] {
        [x, y] if sound => Some((Point::new(x, y), None)),
        [x, y, half] if sound => Some((Point::new(x, y), Some(half))),
        _ => None,
    }
}

/// A line's place and its colour, as they are written; a space after a comma parts nothing.
pub(crate) fn parted(text: &str) -> (&str, &str) {
    let text = text.trim();
    let mut after_comma = false;
    let gap = text.char_indices().find(|(_, sign)| {
        let parts = sign.is_whitespace() && !after_comma;
        after_comma = matches!(sign, ',' | ';') || (after_comma && sign.is_whitespace());
        parts
    });
    let (place, color) = text.split_at(gap.map_or(text.len(), |(at, _)| at));
    (place, color.trim_start())
}

/// Reads one line.
///
/// # Errors
/// What of it cannot be read.
pub(crate) fn line(text: &str) -> Result<Line, Unread> {
    let (place, color) = parted(text);
    let (at, half) = place_of(place).ok_or_else(|| Unread::Place(place.to_owned()))?;
    Ok(Line { at, half, real: real(color)? })
}

fn real(text: &str) -> Result<LinearRgb, Unread> {
    let bare = text.len() == 6 && text.bytes().all(|sign| sign.is_ascii_hexdigit());
    if bare || text.starts_with('#') {
        let color = if bare { Srgb::from_hex(&format!("#{text}")) } else { Srgb::from_hex(text) };
        return color.map(Srgb::linear).ok_or_else(|| Unread::Hex(text.to_owned()));
    }
    let lower = text.to_lowercase();
    let mut parts = lower.split_whitespace().map(|part| part.trim_end_matches([',', ';']).replace(',', "."));
    let number = |part: Option<String>| part?.parse::<f64>().ok().filter(|value| value.is_finite());
    let Some(kind) = parts.next() else { return Err(Unread::NoColor) };
    let read = match kind.as_str() {
        "lab" => lab(&parts.collect::<Vec<_>>()).ok_or_else(|| Unread::Lab(text.to_owned()))?,
        "grey" | "gray" | "grau" => {
            let rest: String = parts.collect();
            let share = number(rest.strip_suffix('%').map(str::to_owned)).map(|percent| percent / 100.0);
            let share = share.filter(|share| *share > 0.0 && *share <= 1.0);
            let share = share.ok_or_else(|| Unread::Grey(text.to_owned()))?;
            LinearRgb { r: share, g: share, b: share }
        }
        _ => return Err(Unread::Color(text.to_owned())),
    };
    Ok(read)
}

/// Three numbers and the white under which they were measured.
fn lab(parts: &[String]) -> Option<LinearRgb> {
    let [l, a, b, white] = parts else { return None };
    let number = |part: &str| part.parse::<f64>().ok().filter(|value| value.is_finite());
    let lab = Lab::new(number(l)?, number(a)?, number(b)?);
    let sound = (0.0..=100.0).contains(&lab.l) && lab.a.abs() <= 128.0 && lab.b.abs() <= 128.0;
    match white.as_str() {
        "d50" if sound => Some(lab.light_from_d50()),
        "d65" if sound => Some(lab.light()),
        _ => None,
    }
}

/// Reads many, empty ones left out; or says which line cannot be read and why.
pub(crate) fn lines(text: &str) -> Result<Vec<Line>, String> {
    let written = text.lines().enumerate().filter(|(_, text)| !text.trim().is_empty());
    let whose = |number: usize| say("patch-of-a-file", &[("number", (number + 1).into())]);
    let read = |(number, text): (usize, &str)| line(text).map_err(|unread| unread.said(whose(number), text));
    let all: Vec<Line> = written.map(read).collect::<Result<_, _>>()?;
    if all.len() > MOST { Err(many()) } else { Ok(all) }
}

/// Why more than [`MOST`] are refused.
pub(crate) fn many() -> String {
    say("refused-reference-many", &[("most", MOST.into())])
}

/// The patch that spoils a correction, from 0, with what is wrong and what would do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Refused {
    pub(crate) patch: usize,
    pub(crate) said: String,
}

/// Half a side of a patch that does not say its own.
#[allow(clippy::cast_precision_loss, reason = "pixel counts")]
pub(crate) fn usual(photo: &Raster) -> f64 {
    PATCH * photo.width().max(photo.height()) as f64
}

/// The correction that they ask for; or which one spoils it, and what would do.
pub(crate) fn fitted(photo: &Raster, lines: &[Line]) -> Result<Reference, Refused> {
    let usual = usual(photo);
    let patches: Vec<Patch> =
        lines.iter().map(|line| Patch { at: line.at, half: line.half.unwrap_or(usual), real: line.real }).collect();
    Reference::fitted(photo, &patches).map_err(|spoilt| Refused { patch: spoilt.patch, said: refused(spoilt, lines) })
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

/// What the patches are off by, in words.
fn off(off: &Off) -> [(&'static str, Fact); 3] {
    let tenth = |value: f64| Fact::from(words::local(&format!("{value:.1}")));
    [("before", tenth(off.before)), ("after", tenth(off.after)), ("near", colors::near(off.after).into())]
}

/// What one patch is off by.
pub(crate) fn told_of(of: &Off) -> String {
    say("reference-off", &off(of))
}

/// How all of them were fitted.
pub(crate) fn told_way(reference: &Reference) -> String {
    let count = [("count", reference.off().len().into())];
    match reference.way() {
        Way::Gains => say("reference-gains", &count),
        Way::Offset => say("reference-offset", &count),
        Way::Matrix => say("reference-matrix", &count),
    }
}

/// What all of them are off by in the mean, which one the others do not bear out, and what no patch mends.
pub(crate) fn told_mean(reference: &Reference) -> Vec<String> {
    let suspect = |number: usize| say("reference-suspect", &[("number", (number + 1).into())]);
    let mean = say("reference-mean", &off(&reference.mean()));
    [Some(mean), reference.suspect().map(suspect), Some(say("reference-limits", &[]))].into_iter().flatten().collect()
}

/// What a correction does, sentence by sentence.
pub(crate) fn told(reference: &Reference, lines: &[Line]) -> Vec<String> {
    let mut all = vec![told_way(reference)];
    for (number, (line, of)) in lines.iter().zip(reference.off()).enumerate() {
        let [before, after, near] = off(of);
        let which = [("number", (number + 1).into()), ("place", place(line))];
        all.push(say("reference-patch", &[&which[..], &[before, after, near]].concat()));
    }
    all.extend(told_mean(reference));
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn colors_are_read_as_they_are_written() {
        let of = |text: &str| line(text).map(|line| line.real.srgb());
        let red = Ok(Srgb::new(255, 0, 0));
        assert_eq!(of("640,220 #8fa98a"), Ok(Srgb::new(0x8f, 0xa9, 0x8a)));
        assert_eq!(of("640, 220, 9  8fa98a"), of("640,220 #8FA98A"));
        assert_eq!(of("640,220,12 lab 54.2905 80.8049 69.891 D50"), red);
        assert_eq!(of("640,220,12 lab 54.2905, 80.8049, 69.891, D50"), red);
        assert_eq!(of("640,220,12 Lab 54,2905; 80,8049; 69,891; d50"), red);
        assert_eq!(of(" 6.5,7  Lab 100 0 0 d65"), Ok(Srgb::new(255, 255, 255)));
        // 18 % of the light: L* 49.5, #767676 in sRGB.
        assert_eq!(of("1,2 grey 18%"), of("1,2 Grau 18,0 %"));
        assert_eq!(of("1,2 grey 18%"), Ok(Srgb::new(118, 118, 118)));
    }

    #[test]
    fn what_cannot_be_read_is_named() {
        let place = |found: &str| Unread::Place(found.to_owned());
        let lab = |found: &str| Unread::Lab(found.to_owned());
        let grey = |found: &str| Unread::Grey(found.to_owned());
        for (text, wrong) in [
            ("", place("")),
            ("640 #8fa98a", place("640")),
            ("640.220 #8fa98a", place("640.220")),
            ("1,2,3,4 #8fa98a", place("1,2,3,4")),
            ("NaN,2 #8fa98a", place("NaN,2")),
            ("x,2 #8fa98a", place("x,2")),
            ("1,inf #8fa98a", place("1,inf")),
            ("640,220", Unread::NoColor),
            ("640,220 brown", Unread::Color("brown".to_owned())),
            ("640,220 8fa98", Unread::Color("8fa98".to_owned())),
            ("640,220 #8fa98", Unread::Hex("#8fa98".to_owned())),
            ("640,220 #8fa98ä", Unread::Hex("#8fa98ä".to_owned())),
            ("1,2 lab 50 0 0", lab("lab 50 0 0")),
            ("1,2 lab 50 0 0 d55", lab("lab 50 0 0 d55")),
            ("1,2 lab 50 0 0 d50 x", lab("lab 50 0 0 d50 x")),
            ("1,2 lab NaN 0 0 d50", lab("lab NaN 0 0 d50")),
            ("1,2 lab 150 0 0 d50", lab("lab 150 0 0 d50")),
            ("1,2 grey 18", grey("grey 18")),
            ("1,2 grey 180%", grey("grey 180%")),
            ("1,2 grey 0%", grey("grey 0%")),
        ] {
            assert_eq!(line(text), Err(wrong.clone()), "{text}");
            let said = wrong.said("Patch 7".to_owned(), text);
            assert!(
                said.starts_with("Patch 7")
                    && said.contains(text)
                    && said.contains("#8c8c8c") | said.contains("18%") | said.contains("D50"),
                "{said}"
            );
        }
        let bell = Unread::Color("\u{7}\u{1b}[2J".to_owned()).said(String::new(), "1,2 \u{7}");
        assert!(!bell.contains(char::is_control), "{bell:?}");
    }

    #[test]
    fn a_line_that_cannot_be_read_is_named() {
        assert_eq!(lines("\n1,2 #ffffff\n\n").unwrap().len(), 1);
        let said = lines("1,2 #ffffff\n\n1,2 hello\n").unwrap_err();
        assert!(said.contains("Line 3") && said.contains("hello"), "{said}");
        assert!(lines(&"1,2 #ffffff\n".repeat(201)).is_err());
    }
}
