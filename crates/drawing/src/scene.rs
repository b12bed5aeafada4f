//! A scene: resolved marks at true size, from which the writers work without further decisions.
//!
//! x runs right, y runs **down**, the origin is the page's top left corner. Left out on purpose:
//! choosing what to draw, and any unit but [`Length`].

use measure::{Length, Rect, Size};

use crate::picture::Picture;
use crate::text::Line;

/// So many PDF points as a length, rounded to the nearest tick.
///
/// The one way by which floats (text widths) become lengths here.
#[allow(clippy::cast_possible_truncation, reason = "clamped to what a drawing can hold: a million points")]
pub fn points(points: f64) -> Length {
    let ticks = points.clamp(-1.0e6, 1.0e6) * 254_000.0;
    Length::from_ticks(ticks.round() as i64)
}

/// A length that is a fraction of another, rounded to the nearest tick.
///
/// # Shape
/// `of × over / under`; `under` of zero counts as one.
pub fn share(of: Length, over: i64, under: i64) -> Length {
    let under = i128::from(if under == 0 { 1 } else { under });
    let exact = i128::from(of.ticks()) * i128::from(over) * 2 + under;
    Length::from_ticks(i64::try_from(exact.div_euclid(under * 2)).unwrap_or(i64::MAX))
}

/// An sRGB colour with its opacity.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Color {
    /// Red, green, blue.
    pub rgb: [u8; 3],
    /// 255 is opaque.
    pub alpha: u8,
}

impl Color {
    /// An opaque colour written `0xrrggbb`.
    #[allow(clippy::cast_possible_truncation, reason = "each is masked to one byte")]
    pub const fn hex(code: u32) -> Color {
        Color { rgb: [(code >> 16 & 0xff) as u8, (code >> 8 & 0xff) as u8, (code & 0xff) as u8], alpha: 255 }
    }

    /// The colour written `#rrggbb`; `None` if it is not written so.
    pub fn parse(text: &str) -> Option<Color> {
        let digits = text.strip_prefix('#')?;
        if digits.len() != 6 || !digits.is_ascii() {
            return None;
        }
        u32::from_str_radix(digits, 16).ok().map(Color::hex)
    }

    /// The same colour, see-through.
    pub const fn with_alpha(self, alpha: u8) -> Color {
        Color { rgb: self.rgb, alpha }
    }

    /// A mix: `part` of 255 of `other`, the rest of `self`.
    pub fn mix(self, other: Color, part: u8) -> Color {
        let blend = |a: u8, b: u8| {
            let sum = u32::from(a) * (255 - u32::from(part)) + u32::from(b) * u32::from(part);
            u8::try_from((sum + 127) / 255).unwrap_or(255)
        };
        let [r, g, b] = self.rgb;
        let [s, h, c] = other.rgb;
        Color { rgb: [blend(r, s), blend(g, h), blend(b, c)], alpha: self.alpha }
    }
}

/// A place on the page.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Point {
    /// To the right.
    pub x: Length,
    /// Down.
    pub y: Length,
}

impl Point {
    /// The place so far right and down.
    pub const fn new(x: Length, y: Length) -> Point {
        Point { x, y }
    }
}

/// One stretch of a path.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stretch {
    /// Start here.
    Move(Point),
    /// A straight line to here.
    Line(Point),
    /// A cubic Bézier curve: two handles and its end.
    Curve(Point, Point, Point),
    /// Back to the start.
    Close,
}

/// The form of a mark.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Outline {
    /// A rectangle.
    Rect(Rect),
    /// A straight line.
    Line(Point, Point),
    /// Any path.
    Path(Vec<Stretch>),
}

/// The pen of a mark.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pen {
    /// Its colour.
    pub color: Color,
    /// Its width.
    pub width: Length,
    /// Lengths of dashes and gaps in turn; empty: solid.
    pub dash: Vec<Length>,
}

impl Pen {
    /// A solid pen.
    pub const fn solid(color: Color, width: Length) -> Pen {
        Pen { color, width, dash: Vec::new() }
    }
}

/// What a group of marks is to a reader who does not see it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Role {
    /// A heading of that level, from 1.
    Heading(u8),
    /// A paragraph.
    Paragraph,
    /// A list; holds list items.
    List,
    /// One item of a list: words, or other roles, its label first.
    Item,
    /// What marks an item: its number, its dot.
    Label,
    /// A picture with the words that stand for it.
    Figure(String),
    /// A table; holds rows.
    Table,
    /// A row; holds cells.
    Row,
    /// The head of a column.
    HeadCell,
    /// A cell.
    Cell,
    /// Decoration, anything not read aloud.
    Artifact,
    /// What stands at the foot of every page: not read aloud either.
    Foot,
}

impl Role {
    /// True if it holds other roles instead of marks.
    pub fn holds_roles(&self) -> bool {
        matches!(self, Role::List | Role::Table | Role::Row)
    }

    /// True if a reader who hears the page hears nothing of it.
    pub fn is_silent(&self) -> bool {
        matches!(self, Role::Artifact | Role::Foot)
    }
}

/// One resolved mark.
#[derive(Debug, Clone, PartialEq)]
pub enum Mark {
    /// A filled or stroked form.
    Shape {
        /// Its form.
        outline: Outline,
        /// Its fill.
        fill: Option<Color>,
        /// Its pen.
        pen: Option<Pen>,
    },
    /// A shaped line of text; `at` is where its baseline starts.
    Text {
        /// The words, shaped.
        line: Line,
        /// Left end of the baseline.
        at: Point,
        /// Their colour.
        color: Color,
    },
    /// A picture stretched over `rect`, cut off at `clip`.
    Image {
        /// Its pixels.
        picture: Picture,
        /// Where the whole picture would lie.
        rect: Rect,
        /// The part that shows.
        clip: Rect,
    },
    /// Marks that belong together.
    Group {
        /// What they are.
        role: Option<Role>,
        /// Shows only what lies inside this rectangle (before turning).
        clip: Option<Rect>,
        /// Turned clockwise by so many quarter turns about that point.
        turn: Option<(u8, Point)>,
        /// What it holds.
        marks: Vec<Mark>,
    },
}

impl Mark {
    /// A filled rectangle.
    pub const fn fill(rect: Rect, color: Color) -> Mark {
        Mark::Shape { outline: Outline::Rect(rect), fill: Some(color), pen: None }
    }

    /// A rectangle's edge.
    pub const fn frame(rect: Rect, pen: Pen) -> Mark {
        Mark::Shape { outline: Outline::Rect(rect), fill: None, pen: Some(pen) }
    }

    /// A straight line.
    pub const fn line(from: Point, to: Point, pen: Pen) -> Mark {
        Mark::Shape { outline: Outline::Line(from, to), fill: None, pen: Some(pen) }
    }

    /// A filled path.
    pub const fn path(stretches: Vec<Stretch>, color: Color) -> Mark {
        Mark::Shape { outline: Outline::Path(stretches), fill: Some(color), pen: None }
    }

    /// Marks with a role.
    pub const fn role(role: Role, marks: Vec<Mark>) -> Mark {
        Mark::Group { role: Some(role), clip: None, turn: None, marks }
    }

    /// Marks cut off at a rectangle.
    pub const fn clipped(clip: Rect, marks: Vec<Mark>) -> Mark {
        Mark::Group { role: None, clip: Some(clip), turn: None, marks }
    }

    /// Marks turned clockwise by quarter turns about a point.
    pub const fn turned(quarters: u8, about: Point, marks: Vec<Mark>) -> Mark {
        Mark::Group { role: None, clip: None, turn: Some((quarters, about)), marks }
    }
}

impl Mark {
    /// The words in it, line by line.
    pub fn words(&self) -> Vec<&str> {
        match self {
            Mark::Text { line, .. } => vec![&line.text],
            Mark::Group { marks, .. } => marks.iter().flat_map(Mark::words).collect(),
            _ => Vec::new(),
        }
    }

    /// The smallest rectangle that holds what shows of it (of a curve, its handles too); `None` if nothing does.
    pub fn bounds(&self) -> Option<Rect> {
        match self {
            Mark::Shape { outline, pen, .. } => {
                let ends = match outline {
                    Outline::Rect(rect) => corners(*rect).to_vec(),
                    Outline::Line(from, to) => vec![*from, *to],
                    Outline::Path(stretches) => stretches
                        .iter()
                        .flat_map(|stretch| match stretch {
                            Stretch::Move(to) | Stretch::Line(to) => vec![*to],
                            Stretch::Curve(one, two, to) => vec![*one, *two, *to],
                            Stretch::Close => Vec::new(),
                        })
                        .collect(),
                };
                let half = pen.as_ref().map_or(Length::ZERO, |pen| share(pen.width, 1, 2));
                around(&ends).map(|rect| Rect::new(rect.x - half, rect.y - half, rect.size.inset(-half)))
            }
            Mark::Text { line, at, .. } => Some(line.ink_box(*at)),
            Mark::Image { rect, clip, .. } => common(*rect, *clip),
            Mark::Group { clip, turn, marks, .. } => {
                let all: Vec<Point> = marks.iter().filter_map(Mark::bounds).flat_map(corners).collect();
                let mut rect = around(&all)?;
                if let Some(clip) = clip {
                    rect = common(rect, *clip)?;
                }
                let Some((quarters, about)) = turn else { return Some(rect) };
                let turned = |p: Point| {
                    // Clockwise, y down: right becomes down, down becomes left.
                    (0..quarters % 4).fold(p, |p, _| Point::new(about.x - (p.y - about.y), about.y + (p.x - about.x)))
                };
                around(&corners(rect).map(turned))
            }
        }
    }
}

fn corners(rect: Rect) -> [Point; 2] {
    [Point::new(rect.x, rect.y), Point::new(rect.right(), rect.bottom())]
}

fn around(points: &[Point]) -> Option<Rect> {
    let (left, right) = (points.iter().map(|p| p.x).min()?, points.iter().map(|p| p.x).max()?);
    let (top, bottom) = (points.iter().map(|p| p.y).min()?, points.iter().map(|p| p.y).max()?);
    Some(Rect::new(left, top, Size::new(right - left, bottom - top)))
}

fn common(a: Rect, b: Rect) -> Option<Rect> {
    let (left, right) = (a.x.max(b.x), a.right().min(b.right()));
    let (top, bottom) = (a.y.max(b.y), a.bottom().min(b.bottom()));
    (left <= right && top <= bottom).then(|| Rect::new(left, top, Size::new(right - left, bottom - top)))
}

/// Slanted lines over a rectangle, to tell it apart without colour.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Hatch {
    /// Rising to the right.
    Rising,
    /// Falling to the right.
    Falling,
    /// Both.
    Crossed,
    /// Upright.
    Upright,
    /// Level.
    Level,
    /// Dots in rows.
    Dotted,
}

impl Hatch {
    /// Every hatch, in the order in which they are given out.
    pub const ALL: [Hatch; 6] =
        [Hatch::Rising, Hatch::Falling, Hatch::Level, Hatch::Upright, Hatch::Crossed, Hatch::Dotted];
}

/// The hatch drawn over a rectangle, lines `pitch` apart along the edges.
pub fn hatch(rect: Rect, kind: Hatch, pitch: Length, pen: &Pen) -> Mark {
    let mut path = Vec::new();
    let mut line = |from: Point, to: Point| path.extend([Stretch::Move(from), Stretch::Line(to)]);
    let (left, top, right, bottom) = (rect.x, rect.y, rect.right(), rect.bottom());
    let (width, height) = (rect.size.width, rect.size.height);
    let pitch = pitch.max(Length::POINT);
    let mut offset = Length::ZERO;
    if matches!(kind, Hatch::Rising | Hatch::Falling | Hatch::Crossed) {
        while offset < width + height {
            offset += pitch;
            if kind != Hatch::Falling {
                line(Point::new(left + offset - height, bottom), Point::new(left + offset, top));
            }
            if kind != Hatch::Rising {
                line(Point::new(left + offset - height, top), Point::new(left + offset, bottom));
            }
        }
    } else if kind == Hatch::Upright {
        offset = share(pitch, 1, 2);
        while offset < width {
            line(Point::new(left + offset, top), Point::new(left + offset, bottom));
            offset += pitch;
        }
    } else {
        offset = share(pitch, 1, 2);
        while offset < height {
            line(Point::new(left, top + offset), Point::new(right, top + offset));
            offset += pitch;
        }
    }
    let dash = if kind == Hatch::Dotted { vec![pen.width, pitch - pen.width] } else { pen.dash.clone() };
    let pen = Pen { dash, ..pen.clone() };
    Mark::clipped(rect, vec![Mark::Shape { outline: Outline::Path(path), fill: None, pen: Some(pen) }])
}

/// A page, or a figure, at true size.
#[derive(Debug, Clone, PartialEq)]
pub struct Scene {
    /// Its size.
    pub size: Size,
    /// What it is called.
    pub title: String,
    /// What it holds, undermost first.
    pub marks: Vec<Mark>,
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;

    #[test]
    fn shares_round_to_the_nearest_tick() {
        assert_eq!(share(Length::from_ticks(10), 1, 3), Length::from_ticks(3));
        assert_eq!(share(Length::from_ticks(11), 1, 2), Length::from_ticks(6));
        assert_eq!(share(Length::from_ticks(-10), 1, 3), Length::from_ticks(-3));
        assert_eq!(points(72.0), Length::INCH);
    }

    #[test]
    fn bounds_hold_what_shows() {
        let inch = Length::INCH;
        let rect = Rect::new(inch, inch, Size::new(inch * 2, inch));
        let box_ = Mark::fill(rect, Color::hex(0));
        assert_eq!(box_.bounds(), Some(rect));
        // A quarter turn about the top left corner: two wide, one high becomes one wide, two high, to its left.
        let turned = Mark::turned(1, Point::new(inch, inch), vec![box_.clone()]);
        assert_eq!(turned.bounds(), Some(Rect::new(Length::ZERO, inch, Size::new(inch, inch * 2))));
        let clip = Rect::new(inch * 2, Length::ZERO, Size::new(inch * 9, inch * 9));
        let clipped = Mark::clipped(clip, vec![box_]);
        assert_eq!(clipped.bounds(), Some(Rect::new(inch * 2, inch, Size::new(inch, inch))));
        assert_eq!(Mark::role(Role::Artifact, Vec::new()).bounds(), None);
    }

    #[test]
    fn colors_are_read_and_mixed() {
        assert_eq!(Color::parse("#2F5D73").unwrap().rgb, [0x2f, 0x5d, 0x73]);
        assert_eq!(Color::parse("2F5D73"), None);
        assert_eq!(Color::parse("#2F5D7é"), None);
        assert_eq!(Color::hex(0).mix(Color::hex(0xff_ff_ff), 255).rgb, [255, 255, 255]);
    }
}
