//! Words put where no other words are: measured boxes, the first place that is free.

use measure::{Length, Rect, Size};

use super::look::{half, inset, pt};
use crate::scene::{Color, Mark, Point};
use crate::text::{Align, Line, Style, place, shape};

/// Free space kept round every box of words.
const CLEAR: Length = pt(2);

/// Words that may still move: their marks, and the box those need.
pub(super) struct Label {
    pub(super) marks: Vec<Mark>,
    pub(super) around: Rect,
}

/// Where words already are.
pub(super) struct Placer {
    page: Rect,
    taken: Vec<Rect>,
}

impl Placer {
    /// Nothing is taken yet; nothing may leave `page`.
    pub(super) const fn new(page: Rect) -> Placer {
        Placer { page, taken: Vec::new() }
    }

    /// Puts down the first label whose box is free; `None` if none is.
    pub(super) fn first(&mut self, labels: impl IntoIterator<Item = Label>) -> Option<Vec<Mark>> {
        let free = |label: &Label| {
            let around = inset(label.around, -CLEAR);
            self.page.contains(label.around) && !self.taken.iter().any(|taken| taken.overlaps(around))
        };
        let label = labels.into_iter().find(free)?;
        self.taken.push(label.around);
        Some(label.marks)
    }
}

/// A line whose ink is centred on a point.
pub(super) fn centred(text: &str, style: Style, at: Point, color: Color) -> Label {
    let line = shape(text, style);
    let base = at.y + half(line.above - line.below);
    let around = line.ink_box(Point::new(at.x - half(line.width), base));
    Label { marks: vec![place(line, Point::new(at.x, base), Align::Middle, color)], around }
}

/// The same, read from below upwards.
pub(super) fn upright(text: &str, style: Style, at: Point, color: Color) -> Label {
    let flat = centred(text, style, at, color);
    let size = flat.around.size.turned();
    let around = Rect::new(at.x - half(size.width), at.y - half(size.height), size);
    Label { marks: vec![Mark::turned(3, at, flat.marks)], around }
}

/// Lines below each other, centred on a point.
pub(super) fn stacked(lines: &[(String, Style)], at: Point, gap: Length, color: Color) -> Label {
    let shaped: Vec<Line> = lines.iter().map(|(text, style)| shape(text, *style)).collect();
    let gaps = gap * i64::try_from(shaped.len().saturating_sub(1)).unwrap_or(0);
    let tall: Length = shaped.iter().map(|line| line.above + line.below).sum::<Length>() + gaps;
    let wide = shaped.iter().map(|line| line.width).max().unwrap_or_default();
    let around = Rect::new(at.x - half(wide), at.y - half(tall), Size::new(wide, tall));
    let mut y = around.y;
    let mut marks = Vec::new();
    for line in shaped {
        let (base, below) = (y + line.above, line.below);
        marks.push(place(line, Point::new(at.x, base), Align::Middle, color));
        y = base + below + gap;
    }
    Label { marks, around }
}
