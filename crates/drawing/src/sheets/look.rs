//! The look of the pages: inks, and how true size becomes drawn size.

use measure::{Length, Rect, Size};
use words::Arg;

use crate::scene::{Color, Point, share};
use crate::text::with_fractions;

/// Words and cut lines.
pub(super) const INK: Color = Color::hex(0x2b_26_22);
/// Notes and captions: at least 4.5:1 on [`CREAM`].
pub(super) const SOFT: Color = Color::hex(0x5f_54_48);
/// Hairlines between things.
pub(super) const RULE: Color = Color::hex(0xd3_c8_b6);
/// The board finished cards lie on.
pub(super) const CREAM: Color = Color::hex(0xf4_ed_e0);
/// What the eye should find first; 4.5:1 or more on white and on [`CREAM`].
pub(super) const ACCENT: Color = Color::hex(0x8c_43_26);
/// White paper.
pub(super) const WHITE: Color = Color::hex(0xff_ff_ff);

/// So many points.
pub(super) const fn pt(points: i64) -> Length {
    Length::from_ticks(Length::POINT.ticks() * points)
}

/// So many sixteenths of an inch.
pub(super) const fn sixteenths(count: i64) -> Length {
    Length::from_ticks(Length::INCH.ticks() / 16 * count)
}

/// Half a length.
pub(super) fn half(length: Length) -> Length {
    share(length, 1, 2)
}

/// A message with its facts, fractions set as fractions.
pub(super) fn say(id: &str, args: &[(&str, Arg)]) -> String {
    with_fractions(&words::say(id, args))
}

/// How something of true size is drawn into a place on the page.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Fit {
    /// Where its top left corner lies.
    pub(super) at: Point,
    over: Length,
    under: Length,
}

impl Fit {
    /// As large as the place allows, in its middle, in proportion.
    pub(super) fn into(natural: Size, place: Rect) -> Fit {
        let wide = i128::from(natural.width.ticks()) * i128::from(place.size.height.ticks());
        let tall = i128::from(natural.height.ticks()) * i128::from(place.size.width.ticks());
        let (over, under) =
            if wide >= tall { (place.size.width, natural.width) } else { (place.size.height, natural.height) };
        let fit = Fit { at: Point::new(place.x, place.y), over, under };
        let drawn = fit.size(natural);
        let at = Point::new(
            place.x + half(place.size.width - drawn.width),
            place.y + half(place.size.height - drawn.height),
        );
        Fit { at, ..fit }
    }

    /// At a given share of true size.
    pub(super) const fn scaled(at: Point, over: Length, under: Length) -> Fit {
        Fit { at, over, under }
    }

    /// At the same scale, with its corner elsewhere.
    pub(super) const fn from(self, at: Point) -> Fit {
        Fit { at, ..self }
    }

    pub(super) fn length(self, length: Length) -> Length {
        share(length, self.over.ticks(), self.under.ticks())
    }

    pub(super) fn size(self, size: Size) -> Size {
        Size::new(self.length(size.width), self.length(size.height))
    }

    pub(super) fn point(self, x: Length, y: Length) -> Point {
        Point::new(self.at.x + self.length(x), self.at.y + self.length(y))
    }

    /// Corner by corner, so that neighbours share their edge.
    pub(super) fn rect(self, rect: Rect) -> Rect {
        let (near, far) = (self.point(rect.x, rect.y), self.point(rect.right(), rect.bottom()));
        Rect::new(near.x, near.y, Size::new(far.x - near.x, far.y - near.y))
    }
}

/// A rectangle made smaller (or larger) all round.
pub(super) fn inset(rect: Rect, by: Length) -> Rect {
    Rect::new(rect.x + by, rect.y + by, rect.size.inset(by))
}

/// The middle of a rectangle.
pub(super) fn middle(rect: Rect) -> Point {
    Point::new(rect.x + half(rect.size.width), rect.y + half(rect.size.height))
}
