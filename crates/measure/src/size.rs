//! Sizes and rectangles; x runs right, y runs **down**, the origin is top left.

use crate::Length;

/// Width × height.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Size {
    /// Along x.
    pub width: Length,
    /// Along y.
    pub height: Length,
}

impl Size {
    /// Width × height.
    pub const fn new(width: Length, height: Length) -> Size {
        Size { width, height }
    }

    /// The same size after a quarter turn.
    pub const fn turned(self) -> Size {
        Size { width: self.height, height: self.width }
    }

    /// The same size lying so that its width is the short edge.
    pub fn short_first(self) -> Size {
        if self.width <= self.height { self } else { self.turned() }
    }

    /// What is left inside a border of that width on all four sides; below zero where the border is too wide.
    pub fn inset(self, border: Length) -> Size {
        Size { width: self.width - border * 2, height: self.height - border * 2 }
    }

    /// True if `self` lies inside `other`, turned a quarter or not.
    pub fn fits_turned(self, other: Size) -> bool {
        self.fits(other) || self.turned().fits(other)
    }

    /// How many pieces come out of it when all are cut alike, side by side, none turned.
    ///
    /// # Shape
    /// Whole rows and columns only, so a person can do it without a plan; other ways of cutting may give more.
    pub fn side_by_side(self, piece: Size) -> i64 {
        let times = |whole: Length, part: Length| whole.ticks() / part.ticks().max(1);
        times(self.width, piece.width) * times(self.height, piece.height)
    }

    /// Area in square ticks.
    pub fn area(self) -> i128 {
        i128::from(self.width.ticks()) * i128::from(self.height.ticks())
    }

    /// True if `self` lies inside `other` without turning.
    pub fn fits(self, other: Size) -> bool {
        self.width <= other.width && self.height <= other.height
    }
}

/// A rectangle by its top left corner and its size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Rect {
    /// Left edge.
    pub x: Length,
    /// Top edge.
    pub y: Length,
    /// Width and height.
    pub size: Size,
}

impl Rect {
    /// The rectangle of that size with that top left corner.
    pub const fn new(x: Length, y: Length, size: Size) -> Rect {
        Rect { x, y, size }
    }

    /// Right edge.
    pub fn right(self) -> Length {
        self.x + self.size.width
    }

    /// Bottom edge.
    pub fn bottom(self) -> Length {
        self.y + self.size.height
    }

    /// True if `inner` lies wholly inside `self`; touching edges count as inside.
    pub fn contains(self, inner: Rect) -> bool {
        self.x <= inner.x && self.y <= inner.y && inner.right() <= self.right() && inner.bottom() <= self.bottom()
    }

    /// True if the two share some area; touching edges do not.
    pub fn overlaps(self, other: Rect) -> bool {
        self.x < other.right() && other.x < self.right() && self.y < other.bottom() && other.y < self.bottom()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pieces_side_by_side_are_whole_rows_and_columns() {
        let inches = |w, h| Size::new(Length::INCH * w, Length::INCH * h);
        assert_eq!(inches(12, 12).side_by_side(inches(3, 4)), 12);
        assert_eq!(inches(6, 6).side_by_side(inches(3, 4)), 2);
        assert_eq!(inches(2, 2).side_by_side(inches(3, 4)), 0);
    }
}
