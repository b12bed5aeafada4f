//! Words made ready to draw: shaped, measured, broken into lines.
//!
//! The faces come from the `typst-assets` crate (Libertinus Serif, SIL Open Font Licence 1.1). A
//! fraction written with the fraction slash U+2044 is built by the font's own `frac` feature; figures
//! are tabular (`tnum`) throughout, so that columns of them stand straight. Left out on purpose:
//! scripts that run from right to left.

use std::borrow::Cow;
use std::collections::BTreeMap;
use std::sync::{Arc, LazyLock, Mutex, MutexGuard, PoisonError};

use measure::{Length, Rect, Size};
use rustybuzz::ttf_parser::{GlyphId, OutlineBuilder};
use rustybuzz::{Feature, UnicodeBuffer};

use crate::scene::{Color, Mark, Point, Stretch, points};

/// A face of the family.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Face {
    /// For reading.
    Regular,
    /// For emphasis and notes.
    Italic,
    /// For headings and labels.
    Semibold,
    /// For figures that must be seen first.
    Bold,
}

impl Face {
    /// Every face.
    pub const ALL: [Face; 4] = [Face::Regular, Face::Italic, Face::Semibold, Face::Bold];

    /// The bytes of its font file.
    pub fn bytes(self) -> &'static [u8] {
        // The order of `typst_assets::fonts`, checked by a test against each font's own name.
        let place = match self {
            Face::Regular => 0,
            Face::Bold => 1,
            Face::Italic => 2,
            Face::Semibold => 4,
        };
        typst_assets::fonts().nth(place).unwrap_or_default()
    }

    pub(crate) fn shaper(self) -> Option<&'static rustybuzz::Face<'static>> {
        static SHAPERS: LazyLock<[Option<rustybuzz::Face<'static>>; 4]> =
            LazyLock::new(|| Face::ALL.map(|face| rustybuzz::Face::from_slice(face.bytes(), 0)));
        SHAPERS[self as usize].as_ref()
    }
}

/// How words are set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Style {
    /// Which face.
    pub face: Face,
    /// Its size (the em).
    pub size: Length,
}

impl Style {
    /// A face at so many points.
    pub const fn new(face: Face, points: i64) -> Style {
        Style { face, size: Length::from_ticks(Length::POINT.ticks() * points) }
    }

    /// Distance from one baseline to the next: 1.35 em.
    pub fn leading(self) -> Length {
        crate::scene::share(self.size, 27, 20)
    }

    /// Height of a capital above the baseline.
    pub fn cap_height(self) -> Length {
        let units = self.face.shaper().and_then(|face| face.capital_height()).unwrap_or(650);
        em_share(self, f64::from(units))
    }
}

/// One glyph of a line, in thousandths or whatever the em is divided into, as shares of the em.
#[derive(Debug, Clone, PartialEq)]
pub struct Glyph {
    /// Its number in the font.
    pub id: u16,
    /// Where its letters start in the text, in bytes.
    pub start: usize,
    /// Where they end.
    pub end: usize,
    /// How far it moves the pen, as a share of the em.
    pub advance: f64,
    /// Its shift to the right, as a share of the em.
    pub right: f64,
    /// Its shift up, as a share of the em.
    pub up: f64,
}

/// A shaped line.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// Its words.
    pub text: Arc<str>,
    /// How they are set.
    pub style: Style,
    /// Its glyphs, left to right.
    pub glyphs: Arc<[Glyph]>,
    /// How far it moves the pen.
    pub width: Length,
    /// How far its ink reaches above the baseline.
    pub above: Length,
    /// How far its ink reaches below the baseline.
    pub below: Length,
}

impl Line {
    /// The box its ink lies in if its baseline starts at `at`.
    pub fn ink_box(&self, at: Point) -> Rect {
        Rect::new(at.x, at.y - self.above, Size::new(self.width, self.above + self.below))
    }
}

/// Which point of a line is placed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Align {
    /// The start of its baseline.
    Start,
    /// The middle of its baseline.
    Middle,
    /// The end of its baseline.
    End,
}

/// `text` shaped as one line.
///
/// # Shape
/// A sign the face lacks is drawn as an empty box, and its letters stay in the text, so that what is copied
/// or read aloud is what was written. Control signs become spaces; byte order marks and signs that are none
/// go.
pub fn shape(text: &str, style: Style) -> Line {
    let known = |shaped: &Shaped| shaped.lines.get(&style).and_then(|lines| lines.get(text)).cloned();
    if let Some(line) = known(&shaped()) {
        return line;
    }
    let line = shape_anew(text, style);
    shaped().keep(text, &line);
    line
}

/// Lines that were shaped before: most words of a page stood on the last one too, and shaping takes most of the time of
/// laying out. A line depends on its text and style alone, so what is kept here changes no answer.
#[derive(Default)]
struct Shaped {
    lines: BTreeMap<Style, BTreeMap<Box<str>, Line>>,
    kept: usize,
}

/// Most lines kept, with most bytes of one. Chosen: all of a large handout, some 20 MB at the worst.
const MOST_SHAPED: usize = 20_000;
const LONGEST_KEPT: usize = 120;

impl Shaped {
    fn keep(&mut self, text: &str, line: &Line) {
        if text.len() > LONGEST_KEPT {
            return;
        }
        if self.kept >= MOST_SHAPED {
            *self = Shaped::default();
        }
        let new = self.lines.entry(line.style).or_default().insert(text.into(), line.clone()).is_none();
        self.kept += usize::from(new);
    }
}

fn shaped() -> MutexGuard<'static, Shaped> {
    static SHAPED: Mutex<Shaped> = Mutex::new(Shaped { lines: BTreeMap::new(), kept: 0 });
    // Whoever panicked in the middle left whole lines behind.
    SHAPED.lock().unwrap_or_else(PoisonError::into_inner)
}

fn shape_anew(text: &str, style: Style) -> Line {
    let text = &*without_control(text);
    let mut glyphs = Vec::new();
    let (mut width, mut above, mut below) = (0.0_f64, 0.0_f64, 0.0_f64);
    if let Some(face) = style.face.shaper() {
        let em = f64::from(face.units_per_em());
        let mut buffer = UnicodeBuffer::new();
        buffer.push_str(text);
        let tabular = Feature::new(rustybuzz::ttf_parser::Tag::from_bytes(b"tnum"), 1, ..);
        let shaped = rustybuzz::shape(face, &[tabular], buffer);
        let mut starts: Vec<usize> = shaped.glyph_infos().iter().map(|info| info.cluster as usize).collect();
        starts.push(text.len());
        starts.sort_unstable();
        for (info, place) in shaped.glyph_infos().iter().zip(shaped.glyph_positions()) {
            let start = info.cluster as usize;
            let end = starts[starts.partition_point(|&next| next <= start)];
            let mut id = u16::try_from(info.glyph_id).unwrap_or(0);
            let mut advance = f64::from(place.x_advance) / em;
            if id == 0
                && let Some(instead) = BOXES.iter().find_map(|&sign| face.glyph_index(sign))
            {
                id = instead.0;
                advance = f64::from(face.glyph_hor_advance(instead).unwrap_or(0)) / em;
            }
            let up = f64::from(place.y_offset) / em;
            if let Some(ink) = face.glyph_bounding_box(GlyphId(id)) {
                above = above.max(f64::from(ink.y_max) / em + up);
                below = below.max(-f64::from(ink.y_min) / em - up);
            }
            glyphs.push(Glyph { id, start, end, advance, right: f64::from(place.x_offset) / em, up });
            width += advance;
        }
    }
    let size = style.size.to_points();
    Line {
        text: Arc::from(text),
        style,
        glyphs: Arc::from(glyphs),
        width: points(width * size),
        above: points(above * size),
        below: points(below * size),
    }
}

/// What is drawn for a sign that a face lacks: the first of these that it has.
const BOXES: [char; 3] = ['\u{25a1}', '\u{fffd}', '?'];

fn without_control(text: &str) -> Cow<'_, str> {
    let gone = |sign: char| matches!(sign, '\u{feff}' | '\u{fffe}' | '\u{ffff}');
    if !text.contains(|sign: char| sign.is_control() || gone(sign)) {
        return Cow::Borrowed(text);
    }
    let kept = text.chars().filter(|&sign| !gone(sign));
    Cow::Owned(kept.map(|sign| if sign.is_control() { ' ' } else { sign }).collect())
}

/// `text` broken at its spaces into lines no wider than `width`.
///
/// A word that is wider alone gets a line of its own. A no-break space never breaks; `\n` always does.
/// An empty text gives no line.
pub fn wrap(text: &str, style: Style, width: Length) -> Vec<Line> {
    let mut lines = Vec::new();
    for paragraph in text.split('\n') {
        let mut line = String::new();
        let mut taken = Length::ZERO;
        let space = shape(" ", style).width;
        for word in paragraph.split(' ').filter(|word| !word.is_empty()) {
            let wide = shape(word, style).width;
            if !line.is_empty() && taken + space + wide > width {
                lines.push(shape(&line, style));
                line.clear();
                taken = Length::ZERO;
            }
            if !line.is_empty() {
                line.push(' ');
                taken += space;
            }
            line.push_str(word);
            taken += wide;
        }
        if !line.is_empty() {
            lines.push(shape(&line, style));
        }
    }
    lines
}

/// A shaped line as a mark, placed by one of its points.
pub fn place(line: Line, at: Point, align: Align, color: Color) -> Mark {
    let shift = match align {
        Align::Start => Length::ZERO,
        Align::Middle => crate::scene::share(line.width, 1, 2),
        Align::End => line.width,
    };
    Mark::Text { at: Point::new(at.x - shift, at.y), line, color }
}

/// `text` shaped and placed in one go.
pub fn say(text: &str, style: Style, at: Point, align: Align, color: Color) -> Mark {
    place(shape(text, style), at, align, color)
}

/// The outlines of a line's letters as one filled path: words that are part of a picture.
///
/// # Shape
/// Its baseline starts at `at`. It cannot be selected or read aloud: say the words in the picture's role.
pub fn outlined(line: &Line, at: Point, color: Color) -> Mark {
    let mut pen = Drawn { path: Vec::new(), x: 0.0, y: 0.0, scale: 0.0, last: (0.0, 0.0) };
    if let Some(face) = line.style.face.shaper() {
        let size = line.style.size.to_points();
        pen.scale = size / f64::from(face.units_per_em());
        let mut along = at.x.to_points();
        for glyph in line.glyphs.iter() {
            (pen.x, pen.y) = (along + glyph.right * size, at.y.to_points() - glyph.up * size);
            face.outline_glyph(GlyphId(glyph.id), &mut pen);
            along += glyph.advance * size;
        }
    }
    Mark::path(pen.path, color)
}

/// Font units, y up, to a path on the page.
struct Drawn {
    path: Vec<Stretch>,
    x: f64,
    y: f64,
    scale: f64,
    last: (f64, f64),
}

impl Drawn {
    fn to(&self, x: f64, y: f64) -> Point {
        Point::new(points(self.x + x * self.scale), points(self.y - y * self.scale))
    }
}

impl OutlineBuilder for Drawn {
    fn move_to(&mut self, x: f32, y: f32) {
        self.last = (f64::from(x), f64::from(y));
        self.path.push(Stretch::Move(self.to(self.last.0, self.last.1)));
    }

    fn line_to(&mut self, x: f32, y: f32) {
        self.last = (f64::from(x), f64::from(y));
        self.path.push(Stretch::Line(self.to(self.last.0, self.last.1)));
    }

    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        // A quadratic curve is the cubic whose handles lie two thirds of the way to its one.
        let (from, by, end) = (self.last, (f64::from(x1), f64::from(y1)), (f64::from(x), f64::from(y)));
        let toward = |a: f64, b: f64| a + (b - a) * 2.0 / 3.0;
        self.path.push(Stretch::Curve(
            self.to(toward(from.0, by.0), toward(from.1, by.1)),
            self.to(toward(end.0, by.0), toward(end.1, by.1)),
            self.to(end.0, end.1),
        ));
        self.last = end;
    }

    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        self.last = (f64::from(x), f64::from(y));
        self.path.push(Stretch::Curve(
            self.to(f64::from(x1), f64::from(y1)),
            self.to(f64::from(x2), f64::from(y2)),
            self.to(self.last.0, self.last.1),
        ));
    }

    fn close(&mut self) {
        self.path.push(Stretch::Close);
    }
}

/// Every fraction as it is set: `4 3/4` as `4¾`, and where there is no single sign, `4 3/16` as the built `4 3⁄16` whose
/// space does not break.
///
/// A date such as `24/12/2026` has two slashes and is left as it is.
pub fn with_fractions(text: &str) -> String {
    let built = built_fractions(text);
    let Some(first) = built.find('\u{2044}') else { return built };
    let mut out = built[..first].to_owned();
    let mut rest = &built[first..];
    while let Some(after) = rest.strip_prefix('\u{2044}') {
        let digits = |text: &str| text.bytes().take_while(u8::is_ascii_digit).count();
        let (over, under) = (out.bytes().rev().take_while(u8::is_ascii_digit).count(), digits(after));
        let (before, number) = out.split_at(out.len() - over);
        let sign = SIGNS.iter().find(|(of, _)| of.split_once('/') == Some((number, &after[..under])));
        let taken = match sign {
            Some((_, sign)) => {
                let whole =
                    before.strip_suffix('\u{a0}').filter(|whole| whole.ends_with(|sign: char| sign.is_ascii_digit()));
                out = format!("{}{sign}", whole.unwrap_or(before));
                under
            }
            None => {
                out.push('\u{2044}');
                0
            }
        };
        let next = after[taken..].find('\u{2044}').map_or(after.len(), |at| at + taken);
        out.push_str(&after[taken..next]);
        rest = &after[next..];
    }
    out
}

/// Fractions that have a sign of their own.
const SIGNS: [(&str, char); 7] =
    [("1/2", '½'), ("1/4", '¼'), ("3/4", '¾'), ("1/8", '⅛'), ("3/8", '⅜'), ("5/8", '⅝'), ("7/8", '⅞')];

fn built_fractions(text: &str) -> String {
    let signs: Vec<char> = text.chars().collect();
    let mut out = String::with_capacity(text.len() + 8);
    for (index, &sign) in signs.iter().enumerate() {
        if sign == '/' && is_fraction(&signs, index) {
            out.push('\u{2044}');
        } else if sign == ' ' && precedes_fraction(&signs, index) {
            out.push('\u{a0}');
        } else {
            out.push(sign);
        }
    }
    out
}

fn digits_back(signs: &[char], from: usize) -> usize {
    signs[..from].iter().rev().take_while(|sign| sign.is_ascii_digit()).count()
}

fn digits_on(signs: &[char], from: usize) -> usize {
    signs[from..].iter().take_while(|sign| sign.is_ascii_digit()).count()
}

fn is_fraction(signs: &[char], slash: usize) -> bool {
    let (before, after) = (digits_back(signs, slash), digits_on(signs, slash + 1));
    let outer = |at: Option<usize>| at.and_then(|at| signs.get(at)).is_some_and(|&sign| sign == '/');
    before > 0 && after > 0 && !outer((slash - before).checked_sub(1)) && !outer(Some(slash + 1 + after))
}

fn precedes_fraction(signs: &[char], space: usize) -> bool {
    let digits = digits_on(signs, space + 1);
    let slash = space + 1 + digits;
    let is_slash = match signs.get(slash) {
        Some('/') => is_fraction(signs, slash),
        Some('\u{2044}') => true,
        _ => false,
    };
    digits > 0 && is_slash && space.checked_sub(1).is_some_and(|before| signs[before].is_ascii_digit())
}

fn em_share(style: Style, units: f64) -> Length {
    let em = style.face.shaper().map_or(1000.0, |face| f64::from(face.units_per_em()));
    points(style.size.to_points() * units / em)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;

    const BODY: Style = Style::new(Face::Regular, 12);

    #[test]
    fn each_face_is_the_one_it_says() {
        for (face, name) in [
            (Face::Regular, "LibertinusSerif-Regular"),
            (Face::Italic, "LibertinusSerif-Italic"),
            (Face::Semibold, "LibertinusSerif-Semibold"),
            (Face::Bold, "LibertinusSerif-Bold"),
        ] {
            let parsed = rustybuzz::ttf_parser::Face::parse(face.bytes(), 0).unwrap();
            let found =
                parsed.names().into_iter().filter(|entry| entry.name_id == 6).find_map(|entry| entry.to_string());
            assert_eq!(found.as_deref(), Some(name));
        }
    }

    #[test]
    fn the_font_builds_its_own_fractions() {
        // Numerators and denominators are smaller than figures, so the built fraction is narrower.
        let built = shape("3\u{2044}16", BODY);
        let plain = shape("3/16", BODY);
        assert!(built.width < plain.width, "{:?} {:?}", built.width.to_points(), plain.width.to_points());
        assert_ne!(built.glyphs[0].id, plain.glyphs[0].id);
    }

    #[test]
    fn figures_have_one_width() {
        let one = shape("1", BODY).width;
        for figure in ["0", "2", "3", "4", "5", "6", "7", "8", "9"] {
            assert_eq!(shape(figure, BODY).width, one);
        }
    }

    #[test]
    fn every_sign_of_the_pages_is_in_every_face() {
        for face in Face::ALL {
            let shaper = face.shaper().unwrap();
            for sign in "×≈→↑°±⁄½¼¾⅛⅜⅝⅞–—‘’“”…·•′″£€\u{a0}éüñßç".chars()
            {
                assert!(shaper.glyph_index(sign).is_some(), "{face:?} lacks {sign}");
            }
        }
    }

    #[test]
    fn lines_fit_and_keep_every_word() {
        let text = "Set the stop to 4 3/4 and cut three times, then turn a quarter turn to the right.";
        let width = points(120.0);
        let lines = wrap(text, BODY, width);
        assert!(lines.len() > 2 && lines.iter().all(|line| line.width <= width + Length::from_ticks(9)));
        let joined: Vec<&str> = lines.iter().map(|line| &*line.text).collect();
        assert_eq!(joined.join(" "), text);
        assert!(wrap("", BODY, width).is_empty());
        assert_eq!(wrap("unbreakable", BODY, Length::ZERO).len(), 1);
    }

    #[test]
    fn fractions_are_rewritten_and_dates_are_not() {
        assert_eq!(with_fractions("set 4 3/4 in"), "set 4¾ in");
        assert_eq!(with_fractions("1/2 by 3/16"), "½ by 3\u{2044}16");
        assert_eq!(
            with_fractions("4 3/16, 10 1/2 × 11/2, 31/64"),
            "4\u{a0}3\u{2044}16, 10½ × 11\u{2044}2, 31\u{2044}64"
        );
        assert_eq!(with_fractions("24/12/2026 and/or 5/"), "24/12/2026 and/or 5/");
        assert_eq!(with_fractions("4 3\u{2044}4"), "4¾");
        assert_eq!(with_fractions("page 3\u{2044} and \u{2044}4"), "page 3\u{2044} and \u{2044}4");
    }

    #[test]
    fn outlined_letters_lie_where_the_line_lies() {
        let line = shape("Hop", BODY);
        let there = line.ink_box(Point::new(Length::INCH, Length::INCH));
        let Mark::Shape { outline: crate::scene::Outline::Path(path), .. } =
            outlined(&line, Point::new(Length::INCH, Length::INCH), Color::hex(0))
        else {
            panic!("not a path")
        };
        let ends: Vec<Point> = path
            .iter()
            .filter_map(|stretch| match stretch {
                Stretch::Move(to) | Stretch::Line(to) | Stretch::Curve(_, _, to) => Some(*to),
                Stretch::Close => None,
            })
            .collect();
        let (top, bottom) = (ends.iter().map(|p| p.y).min().unwrap(), ends.iter().map(|p| p.y).max().unwrap());
        let near = |a: Length, b: Length| (a - b).to_points().abs() < 0.01;
        assert!(near(top, there.y) && near(bottom, there.bottom()), "the ink is as tall as the line says");
        assert!(ends.iter().all(|p| p.x >= there.x && p.x <= there.right()));
    }

    #[test]
    fn a_sign_the_face_lacks_is_a_box_that_still_says_itself() {
        let line = shape("a小b", BODY);
        assert_eq!(&*line.text, "a小b");
        assert!(line.glyphs.iter().all(|glyph| glyph.id != 0));
        let said: Vec<&str> = line.glyphs.iter().map(|glyph| &line.text[glyph.start..glyph.end]).collect();
        assert_eq!(said, ["a", "小", "b"]);
        assert_eq!(&*shape("\u{feff}a\tb\0", BODY).text, "a b ");
        // Letters that run from right to left are not set in their order here, but none is said twice.
        let hebrew = shape("שלום", BODY);
        let mut ranges: Vec<(usize, usize)> = hebrew.glyphs.iter().map(|glyph| (glyph.start, glyph.end)).collect();
        ranges.sort_unstable();
        assert_eq!(ranges, [(0, 2), (2, 4), (4, 6), (6, 8)]);
    }

    #[test]
    fn the_ink_box_holds_capitals_and_tails() {
        let line = shape("Hpq", BODY);
        // The outline of an H may end a few font units from the font's stated cap height: 3 % is allowed.
        assert!(line.above * 100 >= BODY.cap_height() * 97 && line.below > Length::ZERO);
        let there = line.ink_box(Point::new(Length::INCH, Length::INCH));
        assert_eq!(there.x, Length::INCH);
        assert!(there.y < Length::INCH && there.bottom() > Length::INCH);
    }
}
