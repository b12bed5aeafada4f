//! A sheet with its cuts: dimensions, pieces with letter and up arrow, scores, waste, the print underneath.

use measure::{Length, Rect, Size};

use super::labels::{Label, Placer, centred, stacked, upright};
use super::look::{ACCENT, Fit, INK, SOFT, WHITE, half, inset, middle, pt};
use super::swatch::Swatch;
use super::told::Told;
use crate::picture::Picture;
use crate::scene::{Color, Hatch, Mark, Pen, Point, Stretch, hatch, share};
use crate::text::{Face, Style};

/// What lies under the cuts.
#[derive(Debug, Clone)]
pub(super) enum Under {
    /// Whatever the drawing is laid over.
    Clear,
    /// A print.
    Print(Picture),
    /// A colour.
    Color(Color),
    /// Cardstock, with its letters and its pattern.
    Stock(Swatch),
}

/// A piece on a sheet, in sheet coordinates.
#[derive(Debug, Clone)]
pub(super) struct SketchPiece {
    pub(super) mark: String,
    pub(super) rect: Rect,
    pub(super) turned: bool,
    /// Fold lines: upright ones by x, level ones by y, on the sheet.
    pub(super) scores: Vec<(Point, Point)>,
}

/// Everything a drawing of a sheet shows.
#[derive(Debug, Clone)]
pub(super) struct Sketch {
    pub(super) sheet: Size,
    pub(super) pieces: Vec<SketchPiece>,
    pub(super) waste: Vec<Rect>,
    pub(super) edges: Vec<Rect>,
    pub(super) under: Under,
    /// True if the arrows matter: printed paper.
    pub(super) arrows: bool,
}

/// How much a drawing says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Says {
    /// Sizes, letters, arrows.
    All,
    /// Lines only.
    Nothing,
}

/// Room for the dimensions above and at the left of a sheet.
pub(super) fn dimensions_room(told: Told) -> Length {
    pt(if told.large() { 62 } else { 44 })
}

impl Sketch {
    /// The marks of the drawing inside `place`.
    pub(super) fn marks(&self, place: Rect, told: Told, says: Says) -> Vec<Mark> {
        let room = if says == Says::All {
            let room = dimensions_room(told);
            let size = Size::new(place.size.width - room, place.size.height - room);
            Rect::new(place.x + room, place.y + room, size)
        } else {
            place
        };
        let fit = Fit::into(self.sheet, room);
        let whole = fit.rect(Rect::new(Length::ZERO, Length::ZERO, self.sheet));
        let mut marks = self.paper(fit, whole, says);
        marks.push(Mark::frame(whole, Pen::solid(INK, share(pt(1), 3, 2))));
        if says == Says::Nothing {
            return marks;
        }
        let mut placer = Placer::new(place);
        self.dimensions(fit, whole, told, &mut placer, &mut marks);
        for piece in &self.pieces {
            let rect = fit.rect(piece.rect);
            let inside = |label: &Label| inset(rect, pt(2)).contains(label.around);
            if rect.size.width.min(rect.size.height) < pt(9) {
                continue;
            }
            let found = placer.first(self.labels(piece, rect, told).filter(inside));
            marks.extend(found.unwrap_or_default());
        }
        if let Under::Stock(swatch) = &self.under {
            marks.extend(self.letters(swatch, fit, told, &mut placer));
        }
        marks
    }

    /// The letters of a colour, in a corner of the first piece that has room.
    fn letters(&self, swatch: &Swatch, fit: Fit, told: Told, placer: &mut Placer) -> Vec<Mark> {
        let style = Style::new(Face::Bold, told.points(11));
        let spots = self.pieces.iter().flat_map(|piece| {
            let rect = fit.rect(piece.rect);
            let label = bare_pill(centred(&swatch.letters, style, Point::default(), INK));
            let (w, h) = (half(label.around.size.width) + pt(2), half(label.around.size.height) + pt(2));
            let inside = rect.size.width > w * 2 && rect.size.height > h * 2;
            let corners = [
                Point::new(rect.x + w, rect.y + h),
                Point::new(rect.right() - w, rect.bottom() - h),
                Point::new(rect.right() - w, rect.y + h),
                Point::new(rect.x + w, rect.bottom() - h),
            ];
            corners.into_iter().filter(move |_| inside)
        });
        let labels: Vec<Label> = spots.map(|at| bare_pill(centred(&swatch.letters, style, at, INK))).collect();
        placer.first(labels).unwrap_or_default()
    }

    fn paper(&self, fit: Fit, whole: Rect, says: Says) -> Vec<Mark> {
        let mut marks = Vec::new();
        if !matches!(self.under, Under::Clear) {
            marks.push(Mark::fill(whole, WHITE));
        }
        match &self.under {
            Under::Clear => {}
            Under::Print(picture) => {
                marks.push(Mark::Image { picture: picture.clone(), rect: whole, clip: whole });
                let veil = if says == Says::Nothing { 70 } else { 165 };
                marks.push(Mark::fill(whole, WHITE.with_alpha(veil)));
            }
            Under::Color(color) => marks.push(Mark::fill(whole, color.mix(WHITE, 120))),
            Under::Stock(swatch) => marks.extend(swatch.fill(whole)),
        }
        let thin = Pen::solid(SOFT, share(pt(1), 1, 2));
        for (rects, kind, pitch) in
            [(&self.waste, Hatch::Rising, if says == Says::Nothing { 4 } else { 7 }), (&self.edges, Hatch::Crossed, 5)]
        {
            for rect in rects {
                let rect = fit.rect(*rect);
                marks.push(Mark::fill(rect, WHITE.with_alpha(200)));
                marks.push(hatch(rect, kind, pt(pitch), &thin));
            }
        }
        let pen = Pen::solid(INK, if says == Says::All { share(pt(1), 5, 4) } else { share(pt(1), 3, 4) });
        let parts = self.pieces.iter().map(|piece| piece.rect);
        for rect in parts.chain(self.waste.iter().copied()).chain(self.edges.iter().copied()) {
            marks.push(Mark::frame(fit.rect(rect), pen.clone()));
        }
        let dashed = Pen { color: ACCENT, width: share(pt(1), 5, 4), dash: vec![pt(5), pt(3)] };
        for (from, to) in self.pieces.iter().flat_map(|piece| &piece.scores) {
            marks.push(Mark::line(fit.point(from.x, from.y), fit.point(to.x, to.y), dashed.clone()));
        }
        marks
    }

    /// Overall sizes, then the chain of parts along the upper and the left edge.
    fn dimensions(&self, fit: Fit, whole: Rect, told: Told, placer: &mut Placer, marks: &mut Vec<Mark>) {
        let (far, near) = if told.large() { (pt(48), pt(17)) } else { (pt(34), pt(13)) };
        let top = Rect::new(whole.x, whole.y - far, Size::new(whole.size.width, Length::ZERO));
        span(top, true, &told.label(self.sheet.width), told, placer, marks);
        let left = Rect::new(whole.x - far, whole.y, Size::new(Length::ZERO, whole.size.height));
        span(left, false, &told.label(self.sheet.height), told, placer, marks);
        let parts: Vec<Rect> =
            self.pieces.iter().map(|piece| piece.rect).chain(self.waste.iter().chain(&self.edges).copied()).collect();
        if parts.len() < 2 {
            return;
        }
        for part in &parts {
            let drawn = fit.rect(*part);
            if part.y == Length::ZERO && part.size.width < self.sheet.width {
                let line = Rect::new(drawn.x, whole.y - near, Size::new(drawn.size.width, Length::ZERO));
                span(line, true, &told.bare(part.size.width), told, placer, marks);
            }
            if part.x == Length::ZERO && part.size.height < self.sheet.height {
                let line = Rect::new(whole.x - near, drawn.y, Size::new(Length::ZERO, drawn.size.height));
                span(line, false, &told.bare(part.size.height), told, placer, marks);
            }
        }
    }

    /// Ways to label a piece, the fullest first; each is shaped only when it is asked for.
    fn labels<'a>(&'a self, piece: &'a SketchPiece, rect: Rect, told: Told) -> impl Iterator<Item = Label> + 'a {
        let at = middle(rect);
        let size = told.bare_size(piece.rect.size);
        let row = format!("{}\u{a0}\u{a0}{size}", piece.mark);
        let bold = move |points| Style::new(Face::Bold, told.points(points));
        let plain = move |points| Style::new(Face::Regular, told.points(points));
        let full = [(24, 13), (18, 12), (14, 11)].into_iter().map(move |(large, small)| {
            let lines = [(piece.mark.clone(), bold(large)), (size.clone(), plain(small))];
            self.pill(stacked(&lines, at, pt(6), INK), piece, large)
        });
        let (level, slim) = (row.clone(), row.clone());
        let level = [12, 11, 10]
            .into_iter()
            .map(move |points| self.pill(centred(&level, plain(points), at, INK), piece, points));
        let standing =
            [12, 11, 10].into_iter().map(move |points| self.pill(upright(&row, plain(points), at, INK), piece, points));
        let short = [14, 11, 9]
            .into_iter()
            .map(move |points| self.pill(centred(&piece.mark, bold(points), at, INK), piece, points));
        // Narrow strips: words straight on the paper.
        let bare = [true, false].into_iter().map(move |level| match level {
            true => centred(&slim, plain(10), at, INK),
            false => upright(&slim, plain(10), at, INK),
        });
        let last = [10, 9].into_iter().map(move |points| centred(&piece.mark, bold(points), at, INK));
        full.chain(level).chain(standing).chain(short).chain(bare).chain(last)
    }

    /// A label on a white ground, its up arrow at the left.
    fn pill(&self, label: Label, piece: &SketchPiece, points: i64) -> Label {
        if !self.arrows {
            return bare_pill(label);
        }
        let long = pt(points.clamp(10, 20));
        let gap = pt(5);
        let wide = if piece.turned { long } else { share(long, 1, 2) };
        let shift = half(wide + gap);
        let mut moved = shifted(label, shift);
        let centre = Point::new(moved.around.x - gap - half(wide), middle(moved.around).y);
        moved.marks.extend(arrow(centre, long, u8::from(piece.turned)));
        let tall = if piece.turned { share(long, 1, 2) } else { long };
        let top = moved.around.y.min(centre.y - half(tall));
        let bottom = moved.around.bottom().max(centre.y + half(tall));
        let left = moved.around.x - gap - wide;
        moved.around = Rect::new(left, top, Size::new(moved.around.right() - left, bottom - top));
        bare_pill(moved)
    }
}

/// A white ground under a label.
fn bare_pill(mut label: Label) -> Label {
    let ground = inset(label.around, -pt(3));
    label.marks.insert(0, Mark::fill(ground, WHITE.with_alpha(225)));
    label.around = ground;
    label
}

/// A label moved to the right.
fn shifted(label: Label, by: Length) -> Label {
    let marks = label.marks.into_iter().map(|mark| moved(mark, by)).collect();
    Label { marks, around: Rect::new(label.around.x + by, label.around.y, label.around.size) }
}

fn moved(mark: Mark, by: Length) -> Mark {
    match mark {
        Mark::Text { line, at, color } => Mark::Text { line, at: Point::new(at.x + by, at.y), color },
        Mark::Group { role, clip, turn, marks } => {
            let turn = turn.map(|(quarters, about)| (quarters, Point::new(about.x + by, about.y)));
            // What is turned about a moved point moves with it if its own marks move too.
            Mark::Group { role, clip, turn, marks: marks.into_iter().map(|mark| moved(mark, by)).collect() }
        }
        other => other,
    }
}

/// An arrow `long`, pointing up, then turned clockwise.
pub(super) fn arrow(at: Point, long: Length, quarters: u8) -> Vec<Mark> {
    let to = |x: i64, y: i64| Point::new(at.x + share(long, x, 20), at.y + share(long, y, 20));
    let path = vec![
        Stretch::Move(to(0, -10)),
        Stretch::Line(to(5, -2)),
        Stretch::Line(to(2, -2)),
        Stretch::Line(to(2, 10)),
        Stretch::Line(to(-2, 10)),
        Stretch::Line(to(-2, -2)),
        Stretch::Line(to(-5, -2)),
        Stretch::Close,
    ];
    let mark = Mark::path(path, ACCENT);
    if quarters == 0 { vec![mark] } else { vec![Mark::turned(quarters, at, vec![mark])] }
}

/// A dimension along a line without thickness: ends ticked, the words in a gap in its middle.
fn span(line: Rect, level: bool, text: &str, told: Told, placer: &mut Placer, marks: &mut Vec<Mark>) {
    let style = Style::new(Face::Regular, told.points(12));
    let at = middle(line);
    let long = if level { line.size.width } else { line.size.height };
    let fits = |label: &Label| {
        let along = if level { label.around.size.width } else { label.around.size.height };
        along + pt(6) <= long
    };
    // Level words are easier to read; beside an upright line only short ones have room.
    let flat = centred(text, style, at, INK);
    let labels = if level || flat.around.size.width <= pt(if told.large() { 27 } else { 21 }) {
        vec![flat, upright(text, style, at, INK)]
    } else {
        vec![upright(text, style, at, INK)]
    };
    let labels: Vec<Label> = labels.into_iter().filter(fits).collect();
    let boxes: Vec<Rect> = labels.iter().map(|label| label.around).collect();
    let pen = Pen::solid(SOFT, share(pt(1), 3, 4));
    let tick = pt(4);
    let (from, to) = (Point::new(line.x, line.y), Point::new(line.x + line.size.width, line.y + line.size.height));
    for end in [from, to] {
        let (a, b) = if level {
            (Point::new(end.x, end.y - tick), Point::new(end.x, end.y + tick))
        } else {
            (Point::new(end.x - tick, end.y), Point::new(end.x + tick, end.y))
        };
        marks.push(Mark::line(a, b, pen.clone()));
    }
    let placed = labels.into_iter().zip(boxes).find_map(|(label, around)| placer.first([label]).map(|m| (m, around)));
    match placed {
        Some((words, around)) => {
            let gap = pt(3);
            let (stop, start) = if level {
                (Point::new(around.x - gap, from.y), Point::new(around.right() + gap, from.y))
            } else {
                (Point::new(from.x, around.y - gap), Point::new(from.x, around.bottom() + gap))
            };
            marks.extend([Mark::line(from, stop, pen.clone()), Mark::line(start, to, pen)]);
            marks.extend(words);
        }
        None => marks.push(Mark::line(from, to, pen)),
    }
}
