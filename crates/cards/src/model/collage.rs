//! The printed lines of a collage sheet: where they lie, one moved, one more, one fewer.
//!
//! Left out on purpose: how a sheet comes apart on its lines (`plan`), and how a collage is written down (`store`).

use cutting::Axis;
use measure::{Length, Mark, Rect, Size};

use super::Collage;

/// A printed line that can be moved.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PrintedLine {
    /// `X`: upright, it moves to left and right.
    pub axis: Axis,
    /// How far it lies from the left, or from the top.
    pub at: Length,
    /// Where along itself it begins.
    pub from: Length,
    /// Where along itself it ends.
    pub to: Length,
}

/// Edges of a panel that is told by itself, in the order of its lines.
const EDGES: usize = 4;

impl Collage {
    /// Panels that were found somewhere near, each edge on its nearest mark, or on the sheet's own edge where that is less than a
    /// mark away; as columns and rows if that is what they are. Panels narrower than `least` are left out; `None` if fewer than
    /// two are left.
    pub fn found(panels: &[Rect], sheet: Size, mark: Mark, least: Length) -> Option<Collage> {
        let on = |at: Length, side: Length| match mark.nearest(at) {
            marked if marked < mark.step() => Length::ZERO,
            marked if marked > side - mark.step() => side,
            marked => marked,
        };
        let snapped = |panel: &Rect| {
            let (left, top) = (on(panel.x, sheet.width), on(panel.y, sheet.height));
            let (right, bottom) = (on(panel.right(), sheet.width), on(panel.bottom(), sheet.height));
            let size = Size::new(right - left, bottom - top);
            (size.width >= least && size.height >= least).then(|| Rect::new(left, top, size))
        };
        let mut panels: Vec<Rect> = panels.iter().filter_map(snapped).collect();
        panels.sort_by_key(|panel| (panel.y, panel.x));
        if panels.len() < 2 {
            return None;
        }
        let free = Collage { columns: Vec::new(), rows: Vec::new(), panels };
        let rows = free.in_rows().filter(|rows| rows.rects() == free.panels);
        Some(rows.unwrap_or(free))
    }

    /// Columns and rows, as equal as marks of `mark` allow; the last of each takes what is left.
    pub fn even(sheet: Size, columns: u32, rows: u32, mark: Length) -> Collage {
        let parts = |side: Length, count: u32| {
            let count = i64::from(count.max(1));
            let each = measure::round::floor(Length::from_ticks(side.ticks() / count), mark);
            let each = if each > Length::ZERO { each } else { Length::from_ticks(side.ticks() / count) };
            let mut all = vec![each; usize::try_from(count - 1).unwrap_or(0)];
            all.push(side - each * (count - 1));
            all
        };
        Collage { columns: parts(sheet.width, columns), rows: parts(sheet.height, rows), panels: Vec::new() }
    }

    /// True if its panels are told one by one.
    pub fn is_free(&self) -> bool {
        self.columns.is_empty() && self.rows.is_empty()
    }

    /// Its lines: the right edge of each column, the lower edge of each row; or left, top, right and bottom of each panel.
    pub fn lines(&self) -> Vec<PrintedLine> {
        if self.is_free() {
            return self.panels.iter().flat_map(|panel| edges(*panel)).collect();
        }
        let ends = |sides: &[Length]| -> Vec<Length> {
            let mut end = Length::ZERO;
            let next = |side: &Length| {
                end += *side;
                end
            };
            sides.iter().map(next).collect()
        };
        let (across, down) = (ends(&self.columns), ends(&self.rows));
        let last = |ends: &[Length]| ends.last().copied().unwrap_or_default();
        let (right, bottom) = (last(&across), last(&down));
        let line = |axis, at, to| PrintedLine { axis, at, from: Length::ZERO, to };
        let upright = across.into_iter().map(|at| line(Axis::X, at, bottom));
        let level = down.iter().map(|&at| line(Axis::Y, at, right));
        upright.chain(level).collect()
    }

    /// Between which places a line can be moved on a sheet, so that every panel keeps a width and a height of `least` and
    /// none comes to lie over another; `None` if there is no such line.
    pub fn room(&self, line: usize, sheet: Size, least: Length) -> Option<(Length, Length)> {
        if self.is_free() {
            return self.room_of_edge(line, sheet, least);
        }
        let (axis, index, sides) = self.side(line)?;
        let at = self.lines().get(line)?.at;
        let before = at - sides.get(index).copied().unwrap_or_default();
        let whole = along(sheet, axis);
        let after = sides.get(index + 1).map_or(whole, |next| at + *next - least);
        let first = before + least;
        (first <= after).then_some((first, after))
    }

    fn room_of_edge(&self, line: usize, sheet: Size, least: Length) -> Option<(Length, Length)> {
        let panel = *self.panels.get(line / EDGES)?;
        let at = *edges(panel).get(line % EDGES)?;
        let (mut first, mut last) = match line % EDGES {
            0 => (Length::ZERO, panel.right() - least),
            1 => (Length::ZERO, panel.bottom() - least),
            2 => (panel.x + least, sheet.width),
            _ => (panel.y + least, sheet.height),
        };
        for (number, other) in self.panels.iter().enumerate() {
            let [left, top, right, bottom] = edges(*other).map(|edge| edge.at);
            let beside = match at.axis {
                Axis::X => panel.y < bottom && top < panel.bottom(),
                Axis::Y => panel.x < right && left < panel.right(),
            };
            if number == line / EDGES || !beside {
                continue;
            }
            match line % EDGES {
                0 if right <= panel.x => first = first.max(right),
                1 if bottom <= panel.y => first = first.max(bottom),
                2 if left >= panel.right() => last = last.min(left),
                3 if top >= panel.bottom() => last = last.min(top),
                _ => {}
            }
        }
        (first <= last).then_some((first, last))
    }

    /// The same with a line moved as near to `to` as its room allows; `None` if there is no such line or no room.
    pub fn with_line(&self, line: usize, to: Length, sheet: Size, least: Length) -> Option<Collage> {
        let (first, last) = self.room(line, sheet, least)?;
        let to = to.clamp(first, last);
        let mut moved = self.clone();
        if self.is_free() {
            let panel = moved.panels.get_mut(line / EDGES)?;
            let [left, top, right, bottom] = edges(*panel).map(|edge| edge.at);
            let (left, top, right, bottom) = match line % EDGES {
                0 => (to, top, right, bottom),
                1 => (left, to, right, bottom),
                2 => (left, top, to, bottom),
                _ => (left, top, right, to),
            };
            *panel = Rect::new(left, top, Size::new(right - left, bottom - top));
            return Some(moved);
        }
        let (axis, index, _) = self.side(line)?;
        let by = to - self.lines().get(line)?.at;
        let sides = moved.sides_mut(axis);
        *sides.get_mut(index)? += by;
        if let Some(next) = sides.get_mut(index + 1) {
            *next -= by;
        }
        Some(moved)
    }

    /// The same with one more line across the whole of it; `None` where panels are told one by one, or where the line would
    /// leave less than `least` beside it.
    pub fn divided(&self, axis: Axis, at: Length, sheet: Size, least: Length) -> Option<Collage> {
        let mut divided = self.clone();
        let whole = along(sheet, axis);
        let sides = divided.sides_mut(axis);
        let mut start = Length::ZERO;
        for index in 0..sides.len() {
            let side = sides[index];
            if at >= start + least && at <= start + side - least {
                sides[index] = at - start;
                sides.insert(index + 1, start + side - at);
                return Some(divided);
            }
            start += side;
        }
        // Beyond the last line, the sheet may hold one more column or row.
        if sides.is_empty() || at < start + least || at > whole {
            return None;
        }
        sides.push(at - start);
        Some(divided)
    }

    /// The same without a line, or without the panel whose edge it is; `None` if nothing would be left.
    pub fn without_line(&self, line: usize) -> Option<Collage> {
        let mut fewer = self.clone();
        if self.is_free() {
            (line / EDGES < fewer.panels.len() && fewer.panels.len() > 1).then(|| fewer.panels.remove(line / EDGES))?;
            return Some(fewer);
        }
        let (axis, index, sides) = self.side(line)?;
        if sides.len() < 2 {
            return None;
        }
        let sides = fewer.sides_mut(axis);
        let gone = sides.remove(index);
        // What lay before the line joins what lies after it; after the last there is only blank paper.
        if let Some(next) = sides.get_mut(index) {
            *next += gone;
        }
        Some(fewer)
    }

    /// The same panels, each told by itself.
    pub fn free(&self) -> Collage {
        Collage { panels: self.rects(), ..Collage::default() }
    }

    /// Columns and rows through every edge of its panels; `None` if there is no panel.
    pub fn in_rows(&self) -> Option<Collage> {
        let between = |mut edges: Vec<Length>| -> Vec<Length> {
            edges.push(Length::ZERO);
            edges.sort_unstable();
            edges.dedup();
            edges.windows(2).map(|pair| pair[1] - pair[0]).collect()
        };
        let rects = self.rects();
        let across = between(rects.iter().flat_map(|rect| [rect.x, rect.right()]).collect());
        let down = between(rects.iter().flat_map(|rect| [rect.y, rect.bottom()]).collect());
        (!across.is_empty() && !down.is_empty()).then(|| Collage { columns: across, rows: down, panels: Vec::new() })
    }

    /// Which column or row a line ends.
    fn side(&self, line: usize) -> Option<(Axis, usize, &[Length])> {
        let columns = self.columns.len();
        let (axis, index) = if line < columns { (Axis::X, line) } else { (Axis::Y, line - columns) };
        let sides = if axis == Axis::X { &self.columns } else { &self.rows };
        (index < sides.len()).then_some((axis, index, sides))
    }

    fn sides_mut(&mut self, axis: Axis) -> &mut Vec<Length> {
        match axis {
            Axis::X => &mut self.columns,
            Axis::Y => &mut self.rows,
        }
    }
}

fn along(size: Size, axis: Axis) -> Length {
    match axis {
        Axis::X => size.width,
        Axis::Y => size.height,
    }
}

/// Left, top, right and bottom of a panel.
fn edges(panel: Rect) -> [PrintedLine; EDGES] {
    let upright = |at| PrintedLine { axis: Axis::X, at, from: panel.y, to: panel.bottom() };
    let level = |at| PrintedLine { axis: Axis::Y, at, from: panel.x, to: panel.right() };
    [upright(panel.x), level(panel.y), upright(panel.right()), level(panel.bottom())]
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;

    fn inches(whole: i64) -> Length {
        Length::INCH * whole
    }

    fn sheet() -> Size {
        Size::new(inches(12), inches(12))
    }

    fn eighth() -> Length {
        Length::from_ticks(Length::INCH.ticks() / 8)
    }

    #[test]
    fn even_parts_are_on_the_mark_and_use_the_whole_sheet() {
        let seven = Collage::even(sheet(), 7, 3, eighth());
        assert_eq!(seven.rects().len(), 21);
        assert_eq!(seven.columns[0], Length::from_ticks(Length::INCH.ticks() * 13 / 8));
        assert_eq!(seven.columns.iter().fold(Length::ZERO, |sum, side| sum + *side), inches(12));
        assert_eq!(seven.rows, [inches(4); 3]);
    }

    #[test]
    fn a_line_takes_from_one_side_and_gives_to_the_other_and_stops_at_its_neighbours() {
        let grid = Collage::even(sheet(), 4, 3, eighth());
        let moved = grid.with_line(0, inches(2), sheet(), eighth()).unwrap();
        assert_eq!(moved.columns, [inches(2), inches(4), inches(3), inches(3)]);
        let far = grid.with_line(4, inches(30), sheet(), eighth()).unwrap();
        assert_eq!(far.rows, [inches(8) - eighth(), eighth(), inches(4)]);
        let last = grid.with_line(3, inches(11), sheet(), eighth()).unwrap();
        assert_eq!(last.columns[3], inches(2));
        assert_eq!(grid.with_line(7, inches(2), sheet(), eighth()), None);
    }

    #[test]
    fn a_line_more_and_the_same_line_fewer_are_where_we_began() {
        let grid = Collage::even(sheet(), 4, 3, eighth());
        let more = grid.divided(Axis::Y, inches(2), sheet(), eighth()).unwrap();
        assert_eq!(more.rows, [inches(2), inches(2), inches(4), inches(4)]);
        assert_eq!(more.without_line(4).unwrap(), grid);
        assert_eq!(grid.divided(Axis::X, inches(3), sheet(), eighth()), None, "on a line there is");
        assert_eq!(grid.divided(Axis::X, inches(13), sheet(), eighth()), None, "off the sheet");
        assert_eq!(Collage::even(sheet(), 1, 1, eighth()).without_line(0), None);
    }

    #[test]
    fn panels_told_one_by_one_keep_off_each_other() {
        let free = Collage::even(sheet(), 2, 2, eighth()).free();
        assert_eq!(free.lines().len(), 16);
        let stays = free.with_line(2, inches(9), sheet(), eighth()).unwrap();
        assert_eq!(stays, free, "its neighbour begins there");
        let narrower = free.with_line(2, inches(5), sheet(), eighth()).unwrap();
        assert_eq!(narrower.panels[0].size, Size::new(inches(5), inches(6)));
        assert_eq!(narrower.in_rows().unwrap().columns, [inches(5), inches(1), inches(6)]);
        assert_eq!(free.without_line(5).unwrap().panels.len(), 3);
    }

    #[test]
    fn panels_found_lie_on_marks() {
        let near = |sixteenths: i64, off: i64| Length::from_ticks(Length::INCH.ticks() * sixteenths / 16 + off);
        let rect =
            |left, top, right: Length, bottom: Length| Rect::new(left, top, Size::new(right - left, bottom - top));
        let off = 300_000;
        let end = inches(12) - near(0, off);
        let two =
            [rect(near(0, off), near(0, 0), near(96, off), end), rect(near(96, off), near(0, off), end, near(192, 0))];
        let found = |panels: &[Rect]| Collage::found(panels, sheet(), Mark::SixteenthInch, eighth());
        let rows = found(&two).unwrap();
        assert_eq!((rows.columns, rows.rows), (vec![inches(6); 2], vec![inches(12)]));
        // A gap between them: no columns and rows.
        let apart = [two[0], rect(near(100, -off), near(0, off), end, end)];
        let free = found(&apart).unwrap();
        assert_eq!(free.panels[1].x, near(100, 0));
        assert_eq!(found(&two[..1]), None);
        assert_eq!(found(&[two[0], rect(near(97, 0), near(0, 0), near(98, 0), end)]), None);
    }
}
