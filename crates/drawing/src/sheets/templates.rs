//! Templates at true size: a jig for the greeting, where each layer goes, a gauge for the scores, whole sheets in parts.
//!
//! Every page carries a square of one inch and one of 25 millimetres. A printer that prints small or large is made up
//! for: whoever measured the inch square types what she measured, and everything but the words is drawn so much larger.
//! Left out on purpose: envelopes, whose flaps and glue are a craft of their own.

use cards::Plan;
use cards::stamping::{self, Sitting};
use measure::{Length, Rect, Size};

use super::edition::Edition;
use super::labels::{Label, Placer, centred, stacked, upright};
use super::look::{ACCENT, Fit, INK, SOFT, half, inset, middle, pt, say, sixteenths};
use super::papers::left_over;
use super::told::Told;
use crate::scene::{Hatch, Mark, Pen, Point, Role, Scene, hatch, share};
use crate::text::{Align, Face, Style, place, shape, wrap};

/// Printers leave this much free at each edge. Chosen: the widest margin of common desk printers.
const MARGIN: Length = sixteenths(8);
/// What neighbouring parts of a large sheet share.
const OVERLAP: Length = sixteenths(8);

/// Something of true size, and how it is drawn where a [`Fit`] puts its corner.
pub(super) struct Drawing<'a> {
    pub(super) title: String,
    pub(super) note: String,
    pub(super) size: Size,
    pub(super) draw: Box<dyn Fn(Fit, Rect) -> Vec<Mark> + 'a>,
}

/// How true size is drawn, and with what words.
#[derive(Clone, Copy)]
pub(super) struct Press {
    pub(super) told: Told,
    /// What the square of one inch measured.
    pub(super) square: Length,
}

impl Press {
    fn at(self, corner: Point) -> Fit {
        Fit::scaled(corner, Length::INCH, self.square)
    }

    fn length(self, length: Length) -> Length {
        share(length, Length::INCH.ticks(), self.square.ticks())
    }

    fn size(self, size: Size) -> Size {
        Size::new(self.length(size.width), self.length(size.height))
    }

    pub(super) fn style(self) -> Style {
        Style::new(Face::Regular, self.told.points(11))
    }
}

/// The template pages of a plan.
///
/// # Shape
/// `square` is what a printed square of one inch measured: an inch for a printer that prints true. What is larger than
/// the page is laid over several, with marks where they meet.
pub fn templates(plan: &Plan, edition: &Edition, square: Length) -> Vec<Scene> {
    let press = Press { told: Told::new(plan.project.mark, *edition), square: square.max(Length::MM) };
    let mut drawings = Vec::new();
    drawings.extend(jigs(plan, press));
    drawings.extend(places(plan, press));
    drawings.extend(gauges(plan, press));
    drawings.extend(layouts(plan, press));
    let scenes: Vec<Vec<Scene>> = drawings.iter().map(|drawing| on_pages(drawing, press)).collect();
    scenes.into_iter().flatten().collect()
}

/// A drawing on one page, or on as many as it needs.
pub(super) fn on_pages(drawing: &Drawing<'_>, press: Press) -> Vec<Scene> {
    let page = press.told.edition.paper.size();
    let style = press.style();
    let width = page.width - MARGIN * 2;
    let title = Style::new(Face::Semibold, press.told.points(15));
    let head = wrap(&drawing.title, title, width);
    let note = wrap(&drawing.note, style, width);
    let lines = |count: usize| i64::try_from(count).unwrap_or(1);
    let top = MARGIN + title.leading() * lines(head.len()) + style.leading() * lines(note.len() + 1) + pt(12);
    let foot = press.length(Length::INCH) + pt(10);
    let room = Size::new(width, page.height - top - foot - MARGIN);
    let whole = press.size(drawing.size);
    let (columns, rows) = (parts(whole.width, room.width), parts(whole.height, room.height));
    let mut scenes = Vec::new();
    for row in 0..rows {
        for column in 0..columns {
            let number = row * columns + column + 1;
            let of = if columns * rows > 1 {
                let args = [
                    ("number", number.into()),
                    ("count", (columns * rows).into()),
                    ("row", (row + 1).into()),
                    ("column", (column + 1).into()),
                ];
                say("page-template-part", &args)
            } else {
                say("page-template-true", &[])
            };
            let shown = Rect::new(MARGIN, top, Size::new(whole.width.min(room.width), whole.height.min(room.height)));
            let pitch = Size::new(room.width - OVERLAP, room.height - OVERLAP);
            let corner = Point::new(MARGIN - pitch.width * column, top - pitch.height * row);
            let mut marks = (drawing.draw)(press.at(corner), shown);
            marks.extend(meeting(shown, (column, columns), (row, rows)));
            let figure = Mark::Group {
                role: Some(Role::Figure(format!("{} {of}", drawing.title))),
                clip: Some(inset(shown, -pt(1))),
                turn: None,
                marks,
            };
            let mut page_marks = vec![];
            page_marks.push(block(&head, title, MARGIN, Role::Heading(1), INK));
            let at = MARGIN + title.leading() * lines(head.len());
            page_marks.push(block(&note, style, at, Role::Paragraph, INK));
            let at = at + style.leading() * lines(note.len());
            page_marks.push(block(&wrap(&of, style, width), style, at, Role::Paragraph, SOFT));
            page_marks.push(figure);
            page_marks.extend(squares(page, press));
            scenes.push(Scene { size: page, title: drawing.title.clone(), marks: page_marks });
        }
    }
    scenes
}

fn block(lines: &[crate::text::Line], style: Style, top: Length, role: Role, color: crate::Color) -> Mark {
    let placed = (0_i64..).zip(lines).map(|(index, line)| {
        place(line.clone(), Point::new(MARGIN, top + style.size + style.leading() * index), Align::Start, color)
    });
    Mark::role(role, placed.collect())
}

/// How many pages a length needs where each shares [`OVERLAP`] with the next.
fn parts(whole: Length, room: Length) -> i64 {
    let mut count = 1;
    // A hundredth of an inch of a sheet's edge needs no page of its own.
    while room * count - OVERLAP * (count - 1) + Length::from_ticks(Length::INCH.ticks() / 100) < whole && count < 40 {
        count += 1;
    }
    count
}

/// Dashed lines where a part ends and its neighbour goes on, with crosses that come to lie on each other.
fn meeting(shown: Rect, (column, columns): (i64, i64), (row, rows): (i64, i64)) -> Vec<Mark> {
    let dashed = Pen { color: ACCENT, width: pt(1), dash: vec![pt(6), pt(3)] };
    let cross = |at: Point| {
        let arm = pt(7);
        let pen = Pen::solid(ACCENT, pt(1));
        [
            Mark::line(Point::new(at.x - arm, at.y), Point::new(at.x + arm, at.y), pen.clone()),
            Mark::line(Point::new(at.x, at.y - arm), Point::new(at.x, at.y + arm), pen),
        ]
    };
    let mut marks = Vec::new();
    let mid = half(OVERLAP);
    let along = |from: Length, length: Length| [from + share(length, 1, 8), from + share(length, 7, 8)];
    let upright_at = [(column > 0, shown.x + mid), (column + 1 < columns, shown.right() - mid)];
    for x in upright_at.into_iter().filter(|(there, _)| *there).map(|(_, x)| x) {
        marks.push(Mark::line(Point::new(x, shown.y), Point::new(x, shown.bottom()), dashed.clone()));
        marks.extend(along(shown.y, shown.size.height).into_iter().flat_map(|y| cross(Point::new(x, y))));
    }
    let level_at = [(row > 0, shown.y + mid), (row + 1 < rows, shown.bottom() - mid)];
    for y in level_at.into_iter().filter(|(there, _)| *there).map(|(_, y)| y) {
        marks.push(Mark::line(Point::new(shown.x, y), Point::new(shown.right(), y), dashed.clone()));
        marks.extend(along(shown.x, shown.size.width).into_iter().flat_map(|x| cross(Point::new(x, y))));
    }
    marks
}

/// The two test squares and what to do with them.
fn squares(page: Size, press: Press) -> Vec<Mark> {
    let pen = Pen::solid(INK, share(pt(1), 3, 4));
    let style = press.style();
    let mut marks = Vec::new();
    let bottom = page.height - MARGIN;
    let mut x = MARGIN;
    for (length, id, alt) in [
        (Length::INCH, "page-rule-square", "page-rule-square-alt"),
        (Length::mm(25), "page-template-mm", "page-template-mm-alt"),
    ] {
        let side = press.length(length);
        let square = Rect::new(x, bottom - side, Size::new(side, side));
        let label = centred(&say(id, &[]), style, middle(square), INK);
        let mut figure = vec![Mark::frame(square, pen.clone())];
        figure.extend(label.marks);
        marks.push(Mark::role(Role::Figure(say(alt, &[])), figure));
        x = square.right() + pt(12);
    }
    let said = if press.square == Length::INCH { "page-template-check" } else { "page-template-corrected" };
    let measured = press.told.label(press.square);
    let exact = format!("{:.3}", press.square.to_inches());
    let text = say(said, &[("measured", if press.square == Length::INCH { measured } else { exact }.into())]);
    let width = page.width - MARGIN - x;
    let mut texts = Vec::new();
    let lines = wrap(&text, style, width);
    let count = i64::try_from(lines.len()).unwrap_or(1);
    let mut base = bottom - style.leading() * (count - 1) - pt(4);
    for line in lines {
        texts.push(place(line, Point::new(x, base), Align::Start, INK));
        base += style.leading();
    }
    marks.push(Mark::role(Role::Paragraph, texts));
    marks
}

fn thin() -> Pen {
    Pen::solid(INK, share(pt(1), 3, 4))
}

fn centre_pen() -> Pen {
    Pen { color: SOFT, width: share(pt(1), 1, 2), dash: vec![pt(8), pt(2), pt(2), pt(2)] }
}

/// Centre lines of a rectangle, a little longer than it.
fn centre_lines(rect: Rect, beyond: Length) -> [Mark; 2] {
    let at = middle(rect);
    [
        Mark::line(Point::new(at.x, rect.y - beyond), Point::new(at.x, rect.bottom() + beyond), centre_pen()),
        Mark::line(Point::new(rect.x - beyond, at.y), Point::new(rect.right() + beyond, at.y), centre_pen()),
    ]
}

/// For every greeting strip: a corner to lay it in, its outline, its centre, and where the words come.
fn jigs<'a>(plan: &'a Plan, press: Press) -> Vec<Drawing<'a>> {
    let arm = sixteenths(6);
    let jig = move |sitting: Sitting| {
        let strip = sitting.strip;
        let greeting = plan.project.greetings.get(sitting.greeting)?;
        let placed = stamping::place(strip, greeting, sitting.spot);
        let size = Size::new(strip.width + arm * 2, strip.height + arm * 3);
        let args = [
            ("strip", press.told.size(strip).into()),
            ("words", (&greeting.words).into()),
            ("inked", press.told.size(greeting.inked).into()),
            ("side", press.told.length(placed.ink.x).into()),
            ("above", press.told.length(placed.ink.y).into()),
        ];
        let draw = move |fit: Fit, _: Rect| {
            let outline = fit.rect(Rect::new(arm, arm, strip));
            let mut marks = vec![];
            // The corner: an L of card is taped along it, the strip butts against it.
            let corner = Pen::solid(INK, pt(4));
            let (left, top) = (outline.x - pt(2), outline.y - pt(2));
            let down = outline.bottom() + fit.length(arm);
            marks.push(Mark::line(Point::new(left, top - pt(2)), Point::new(left, down), corner.clone()));
            marks.push(Mark::line(Point::new(left - pt(2), top), Point::new(outline.right(), top), corner));
            marks.push(Mark::frame(outline, thin()));
            // Or two flaps, cut round and folded up along the thick corner: no card has to be taped.
            let wide = fit.length(arm) - pt(4);
            let slope = share(wide, 1, 2);
            let flaps = [
                [
                    Point::new(outline.x, outline.y),
                    Point::new(outline.x - wide, outline.y + slope),
                    Point::new(outline.x - wide, outline.bottom() - slope),
                    Point::new(outline.x, outline.bottom()),
                ],
                [
                    Point::new(outline.x, outline.y),
                    Point::new(outline.x + slope, outline.y - wide),
                    Point::new(outline.right() - slope, outline.y - wide),
                    Point::new(outline.right(), outline.y),
                ],
            ];
            marks
                .extend(flaps.iter().flat_map(|flap| flap.windows(2)).map(|ends| Mark::line(ends[0], ends[1], thin())));
            marks.extend(super::stamping::jig(greeting, placed, fit, Point::new(outline.x, outline.y)));
            marks
        };
        Some(Drawing {
            title: say("page-jig-title", &[("words", (&greeting.words).into())]),
            note: say("page-jig-note", &args),
            size,
            draw: Box::new(draw),
        })
    };
    stamping::sittings(plan).into_iter().filter_map(jig).collect()
}

/// For every recipe: the card's front with the outline of each layer.
fn places<'a>(plan: &'a Plan, press: Press) -> Vec<Drawing<'a>> {
    let of = |(index, recipe): (usize, &'a cards::model::Recipe)| {
        let card = plan.cards.iter().find(|card| card.recipe == index)?;
        let told = press.told;
        let draw = move |fit: Fit, shown: Rect| {
            let front = fit.rect(Rect::new(Length::ZERO, Length::ZERO, recipe.finished));
            let mut marks = vec![Mark::frame(front, Pen::solid(INK, pt(2)))];
            marks.extend(centre_lines(front, Length::ZERO));
            let mut placer = Placer::new(shown);
            for part in &card.parts {
                let rect = fit.rect(part.rect);
                marks.push(Mark::frame(rect, thin()));
            }
            for part in card.parts.iter().rev() {
                let rect = fit.rect(part.rect);
                let name = recipe.layers.get(part.layer).map_or("", |layer| layer.name.as_str());
                let text = format!("{name}\u{a0}\u{a0}{}", told.bare_size(part.rect.size));
                let style = press.style();
                let spots = (1..8).flat_map(|eighth| {
                    let y = rect.y + share(rect.size.height, eighth, 8);
                    [2, 1, 3].map(|quarter| Point::new(rect.x + share(rect.size.width, quarter, 4), y))
                });
                let labels: Vec<Label> = spots
                    .map(|at| centred(&text, style, at, INK))
                    .filter(|label| rect.contains(label.around) || rect.size.height < pt(24))
                    .map(|mut label| {
                        label.marks.insert(0, Mark::fill(inset(label.around, -pt(2)), super::look::WHITE));
                        label
                    })
                    .collect();
                marks.extend(placer.first(labels).unwrap_or_default());
            }
            marks
        };
        Some(Drawing {
            title: say("page-place-title", &[("name", (&recipe.name).into())]),
            note: say("page-place-note", &[("size", told.size(recipe.finished).into())]),
            size: recipe.finished,
            draw: Box::new(draw),
        })
    };
    plan.project.recipes.iter().enumerate().filter_map(of).collect()
}

/// For every folded base: where its scores lie.
fn gauges<'a>(plan: &'a Plan, press: Press) -> Vec<Drawing<'a>> {
    let mut seen: Vec<(Size, Vec<Length>)> = Vec::new();
    let mut gauges = Vec::new();
    for (recipe, count) in plan.project.recipes.iter().zip(&plan.counts.cards_by_recipe) {
        let (base, scores) = recipe.base_size();
        if *count == 0 || scores.is_empty() || seen.contains(&(base, scores.clone())) {
            continue;
        }
        seen.push((base, scores.clone()));
        // The folded side runs along the gauge; a top fold is laid on its side.
        let top = recipe.fold == cards::model::Fold::Top;
        let long = if top { base.height } else { base.width };
        let tall = sixteenths(22);
        let told = press.told;
        let marks_at = scores.clone();
        let draw = move |fit: Fit, shown: Rect| {
            let outline = fit.rect(Rect::new(Length::ZERO, Length::ZERO, Size::new(long, tall)));
            let mut marks = vec![Mark::frame(outline, thin())];
            // Half inches or centimetres along the lower edge.
            let step = if told.edition.unit == measure::Unit::Inch { sixteenths(8) } else { Length::mm(10) };
            let mut at = step;
            while at < long {
                let x = fit.point(at, tall);
                marks.push(Mark::line(x, Point::new(x.x, x.y - pt(8)), thin()));
                at += step;
            }
            let mut placer = Placer::new(shown);
            for score in &marks_at {
                let (from, to) = (fit.point(*score, Length::ZERO), fit.point(*score, tall));
                marks.push(Mark::line(from, to, Pen { color: ACCENT, width: pt(2), dash: vec![pt(6), pt(3)] }));
                let text = say("page-gauge-score", &[("length", told.label(*score).into())]);
                let line = shape(&text, press.style());
                let y = from.y + half(to.y - from.y);
                let beside = [1, -1].map(|side| {
                    centred(&text, press.style(), Point::new(from.x + (half(line.width) + pt(8)) * side, y), INK)
                });
                marks.extend(placer.first(beside).unwrap_or_default());
            }
            marks
        };
        gauges.push(Drawing {
            title: say("page-gauge-title", &[("name", (&recipe.name).into())]),
            note: say(if top { "page-gauge-note-top" } else { "page-gauge-note" }, &[("size", told.size(base).into())]),
            size: Size::new(long, tall),
            draw: Box::new(draw),
        });
    }
    gauges
}

/// Every layout of patterned paper at true size.
fn layouts<'a>(plan: &'a Plan, press: Press) -> Vec<Drawing<'a>> {
    let told = press.told;
    let of = move |(index, layout): (usize, &'a cards::plan::Layout)| {
        let pack = plan.project.packs.get(layout.pack)?;
        let (waste, edges) = left_over(&layout.cut_plan, layout.cut_step);
        let draw = move |fit: Fit, shown: Rect| {
            let whole = fit.rect(Rect::new(Length::ZERO, Length::ZERO, pack.sheet));
            let mut marks = vec![Mark::frame(whole, Pen::solid(INK, pt(2)))];
            let grey = Pen::solid(SOFT, share(pt(1), 1, 2));
            for (rects, kind) in [(&waste, Hatch::Rising), (&edges, Hatch::Crossed)] {
                for rect in rects {
                    let rect = fit.rect(*rect);
                    marks.push(hatch(rect, kind, pt(12), &grey));
                    marks.push(Mark::frame(rect, thin()));
                }
            }
            let mut placer = Placer::new(shown);
            for piece in &layout.pieces {
                let rect = fit.rect(piece.rect);
                marks.push(Mark::frame(rect, thin()));
                // Words stand in the part of the piece that this page shows.
                let (left, right) = (rect.x.max(shown.x), rect.right().min(shown.right()));
                let (top, bottom) = (rect.y.max(shown.y), rect.bottom().min(shown.bottom()));
                if right <= left || bottom <= top {
                    continue;
                }
                let seen = Rect::new(left, top, Size::new(right - left, bottom - top));
                let size = told.bare_size(piece.rect.size);
                let lines =
                    [(piece.mark.clone(), Style::new(Face::Bold, told.points(20))), (size.clone(), press.style())];
                let at = middle(seen);
                let row = format!("{}\u{a0}\u{a0}{size}", piece.mark);
                let labels = [
                    stacked(&lines, at, pt(6), INK),
                    centred(&row, press.style(), at, INK),
                    upright(&row, press.style(), at, INK),
                    centred(&piece.mark, press.style(), at, INK),
                ];
                let inside = |label: &Label| seen.contains(label.around);
                marks.extend(placer.first(labels.into_iter().filter(inside)).unwrap_or_default());
            }
            marks
        };
        Some(Drawing {
            title: say("page-full-title", &[("number", (index + 1).into()), ("pack", (&pack.name).into())]),
            note: say("page-full-note", &[("size", told.size(pack.sheet).into())]),
            size: pack.sheet,
            draw: Box::new(draw),
        })
    };
    plan.layouts.iter().enumerate().take(MOST_LAYOUTS).filter_map(of).collect()
}

/// Most layouts that are printed at true size. Chosen: four pages each.
const MOST_LAYOUTS: usize = 6;
