//! The numbered cuts: how the paper lies at the stop, where on the sheet that is, what to do.

use std::collections::BTreeSet;

use cards::Plan;
use cards::plan::{Layout, on_sheet};
use cutting::steps::{Caution, CutPlan, CutStep, Fate, PartId, ScoreStep, Step, Turn, Up};
use cutting::tree::Axis;
use measure::{Length, Rect, Size, from_steps};

use super::Faces;
use super::card::pixels;
use super::edition::Hand;
use super::labels::centred;
use super::look::{ACCENT, Fit, INK, SOFT, WHITE, half, inset, middle, pt, say, sixteenths};
use super::opening::of_batch;
use super::pages::Pages;
use super::papers::runs;
use super::sketch::{Under, arrow};
use super::told::Told;
use crate::picture::Picture;
use crate::scene::{Color, Hatch, Mark, Pen, Point, Role, hatch, share};
use crate::text::{Align, Face, Line, Style, place, shape, wrap};

/// One plan of cuts as the pages tell it.
pub(super) struct Cuts<'a> {
    pub(super) plan: &'a CutPlan,
    /// One grid step of it.
    pub(super) step: Length,
    pub(super) under: Under,
    /// What is pencilled on a finished part.
    pub(super) marks: Vec<(Rect, String)>,
    /// The cardstock that is cut; `None` for patterned paper.
    pub(super) stock: Option<&'a str>,
    /// A letter of the prints that are cut so; `None` where the mark says it already.
    pub(super) letter: Option<&'a str>,
    pub(super) told: Told,
}

impl Cuts<'_> {
    fn length(&self, steps: u32) -> String {
        self.told.length(from_steps(steps, self.step))
    }

    fn rect(&self, id: PartId) -> Rect {
        self.plan.part(id).map_or_else(Rect::default, |part| on_sheet(part.rect, self.step))
    }

    fn fate(&self, id: PartId) -> Fate {
        self.plan.part(id).map_or(Fate::Waste, |part| part.fate)
    }

    fn marks_of(&self, ids: &[PartId]) -> String {
        let marks: Vec<String> = ids
            .iter()
            .map(|id| {
                let rect = self.rect(*id);
                let named = self.marks.iter().find(|(there, _)| *there == rect).map(|(_, mark)| mark.clone());
                named.unwrap_or_else(|| match self.fate(*id) {
                    Fate::Piece { number, .. } => number.to_string(),
                    _ => String::new(),
                })
            })
            .collect();
        runs(&marks)
    }

    /// What to do, sentence by sentence; the first is the heading of the step.
    pub(super) fn sentences(&self, step: &Step, before: Option<&CutStep>) -> (String, Vec<String>) {
        match step {
            Step::Cut(cut) => self.cut_sentences(cut, before),
            Step::Score(score) => self.score_sentences(score),
        }
    }

    fn cut_sentences(&self, cut: &CutStep, before: Option<&CutStep>) -> (String, Vec<String>) {
        let same = before.is_some_and(|before| before.stop == cut.stop);
        let head =
            say(if same { "page-step-stays" } else { "page-step-set" }, &[("length", self.length(cut.setting).into())]);
        let count = cut.work.len();
        let whole = cut.work.iter().any(|work| work.part == PartId::SHEET);
        let take = if whole { "page-step-take-sheet" } else { "page-step-take-parts" };
        let turn = match self.told.turn(cut) {
            Turn::None => "none",
            Turn::Right => "right",
            Turn::Half => "half",
            Turn::Left => "left",
        };
        let mut said: Vec<String> = self.of_stock().into_iter().collect();
        said.push(say(take, &[("count", count.into()), ("turn", turn.into())]));
        said.push(say("page-step-cuts", &[("count", cut.cuts.into()), ("parts", count.into())]));
        said.extend(self.rest(cut));
        if self.plan.sheets > 1 && (cut.layers > 1 || self.stock.is_some()) {
            said.push(say(
                "page-step-stack",
                &[("layers", cut.layers.into()), ("strokes", cut.strokes.into()), ("sheets", self.plan.sheets.into())],
            ));
        }
        if !cut.finished.is_empty() {
            let marks = self.marks_of(&cut.finished);
            let count = cut.finished.len().into();
            said.push(match (self.letter, cut.finished.first()) {
                (Some(letter), Some(first)) => {
                    let such = format!("{letter}{}", self.marks_of(&[*first]));
                    say("page-step-label-letter", &[("marks", marks.into()), ("count", count), ("such", such.into())])
                }
                _ => say("page-step-label", &[("marks", marks.into()), ("count", count)]),
            });
        }
        (head, said)
    }

    /// Which cardstock it is, and how many sheets of it are cut so.
    fn of_stock(&self) -> Option<String> {
        let facts = [("name", self.stock?.into()), ("count", self.plan.sheets.into())];
        Some(say("page-step-stock", &facts))
    }

    /// What stays after the last cut, where all parts leave the same.
    fn rest(&self, cut: &CutStep) -> Option<String> {
        let size = |id: PartId| {
            let rect = self.rect(id);
            if cut.axis == Axis::X { rect.size.width } else { rect.size.height }
        };
        let first = cut.work.first()?;
        let (long, fate) = (size(first.rest), self.fate(first.rest));
        let alike = cut.work.iter().all(|work| size(work.rest) == long);
        if !alike {
            return None;
        }
        let id = match fate {
            Fate::Waste => "page-step-rest-waste",
            Fate::Edge => "page-step-rest-edge",
            _ => "page-step-rest",
        };
        Some(say(id, &[("length", self.told.length(long).into())]))
    }

    fn score_sentences(&self, score: &ScoreStep) -> (String, Vec<String>) {
        let side = if score.fold.axis == Axis::X { "left" } else { "top" };
        let head = say("page-step-score", &[("length", self.length(score.fold.at).into()), ("side", side.into())]);
        let marks = self.marks_of(&score.parts);
        let parts = say("page-step-score-parts", &[("marks", marks.into()), ("strokes", score.strokes.into())]);
        (head, self.of_stock().into_iter().chain([parts]).collect())
    }

    pub(super) fn cautions(&self, cut: &CutStep) -> Vec<String> {
        cut.cautions
            .iter()
            .map(|caution| match caution {
                Caution::LongCut { length } => say("page-step-long", &[("length", self.length(*length).into())]),
                Caution::NarrowStrip { held } => say("page-step-narrow", &[("length", self.length(*held).into())]),
                Caution::NarrowRest { rest } => say("page-step-narrow-rest", &[("length", self.length(*rest).into())]),
            })
            .collect()
    }
}

/// Draws the steps of every layout.
pub(super) fn steps(plan: &Plan, faces: &Faces, told: Told, pages: &mut Pages) {
    let mut warned = false;
    for (index, layout) in plan.layouts.iter().enumerate() {
        if layout.cut_plan.steps.is_empty() || cut_as(plan, index).is_some() {
            continue;
        }
        let id = if plan.layouts.len() == 1 { "page-steps-title" } else { "page-steps-title-numbered" };
        pages.chapter(&of_batch(plan, layout.batch, say(id, &[("number", (index + 1).into())])));
        let tally = layout.cut_plan.tally();
        pages.say(&say(
            "page-steps-lead",
            &[
                ("cuts", tally.cuts.into()),
                ("sheets", layout.cut_plan.sheets.into()),
                ("strokes", tally.strokes.into()),
            ],
        ));
        let hand = if told.edition.hand == Hand::Left { "page-steps-left" } else { "page-steps-right" };
        pages.say(&say(hand, &[]));
        pages.gap(pt(4));
        draw(&of_layout(plan, faces, layout, told), pages);
        // Once, with the first cuts: before a blade is in the hand.
        if !warned {
            cutting_cautions(pages);
            warned = true;
        }
    }
    if !warned {
        cutting_cautions(pages);
    }
}

/// The index of an earlier layout whose cuts and marks are the very same.
pub(super) fn cut_as(plan: &Plan, index: usize) -> Option<usize> {
    let own = plan.layouts.get(index)?;
    let places =
        |layout: &Layout| layout.pieces.iter().map(|piece| (piece.rect, piece.mark.clone())).collect::<Vec<_>>();
    plan.layouts[..index].iter().position(|other| {
        (other.usable, other.step, &other.tree) == (own.usable, own.step, &own.tree) && places(other) == places(own)
    })
}

pub(super) fn of_layout<'a>(plan: &'a Plan, faces: &Faces, layout: &'a Layout, told: Told) -> Cuts<'a> {
    let letter = layout.sheets.first().and_then(|used| plan.project.design(layout.pack, used.design));
    let letter = letter.map(|design| design.letter.as_str());
    let print = layout.sheets.first().and_then(|used| faces.get(&(layout.pack, used.design, used.side)));
    let under = print.map_or(Under::Color(WHITE), |print| Under::Print(print.at_most(700)));
    let marks = layout.pieces.iter().map(|piece| (piece.rect, piece.mark.clone())).collect();
    Cuts { plan: &layout.cut_plan, step: layout.cut_step, under, marks, stock: None, letter, told }
}

/// Where narrow strips, stacks and blades can hurt.
fn cutting_cautions(pages: &mut Pages) {
    pages.gap(pt(4));
    pages.room(sixteenths(26));
    pages.section(&say("page-cautions-cutting", &[]));
    for id in
        ["page-caution-blade", "page-caution-lever", "page-caution-strips", "page-caution-stack", "page-caution-knife"]
    {
        pages.item(&say(id, &[]));
    }
}

/// Sizes of the pictures of a step, by edition.
impl Told {
    /// The largest side of the picture of a whole sheet at the trimmer.
    fn at_trimmer(self) -> Length {
        sixteenths(if self.large() { 40 } else { 20 })
    }

    /// The width kept for the picture of a part at the trimmer.
    pub(super) fn step_picture(self) -> Length {
        sixteenths(if self.large() { 60 } else { 26 })
    }

    /// The picture of where on the sheet.
    pub(super) fn map(self) -> Length {
        sixteenths(if self.large() { 26 } else { 14 })
    }
}

fn draw(told: &Cuts<'_>, pages: &mut Pages) {
    let mut there = BTreeSet::from([PartId::SHEET]);
    let mut before: Option<&CutStep> = None;
    for (number, step) in (1_usize..).zip(&told.plan.steps) {
        let (head, said) = told.sentences(step, before);
        let cautions = if let Step::Cut(cut) = step { told.cautions(cut) } else { Vec::new() };
        block(told, number, step, &head, &said, &cautions, &there, pages);
        if let Step::Cut(cut) = step {
            for work in &cut.work {
                there.remove(&work.part);
                there.extend(work.off.iter().chain([&work.rest]).copied());
            }
            before = Some(cut);
        }
    }
}

#[allow(clippy::too_many_arguments, reason = "the parts of one step, each used once")]
fn block(
    told: &Cuts<'_>,
    number: usize,
    step: &Step,
    head: &str,
    said: &[String],
    cautions: &[String],
    there: &BTreeSet<PartId>,
    pages: &mut Pages,
) {
    let look = told.told;
    let large = look.large();
    let number = shape(&number.to_string(), Style::new(Face::Bold, if large { 24 } else { 19 }));
    let head_style = Style::new(Face::Semibold, if large { 21 } else { 15 });
    let words_at = if large { pages.left() } else { pages.left() + look.step_picture() + pt(22) };
    let right = if large { pages.right() } else { pages.right() - look.map() - pt(10) };
    let head_at = words_at + number.width.max(pt(20)) + pt(if large { 8 } else { 4 });
    let heads = wrap(head, head_style, right - head_at);
    let count = |lines: usize| i64::try_from(lines).unwrap_or(0);
    let head_tall = head_style.leading() * count(heads.len()) + pt(6);
    let wide = if large { pages.width() } else { right - pt(6) - words_at };
    let mut lines: Vec<(Line, Color)> = Vec::new();
    lines.extend(wrap(&said.join(" "), look.body(), wide).into_iter().map(|line| (line, INK)));
    for caution in cautions {
        let style = Style::new(Face::Semibold, look.points(12));
        lines.extend(wrap(caution, style, wide).into_iter().map(|line| (line, ACCENT)));
    }
    let words_tall = look.body().leading() * count(lines.len());
    let drawing = |y: Length| {
        let place = Rect::new(pages.left(), y, Size::new(look.step_picture(), Length::ZERO));
        match step {
            Step::Cut(cut) => at_trimmer(told, cut, place),
            Step::Score(score) => scored(told, score, place),
        }
    };
    // Beside each other, or in large print one below the other: what to do first, then how it looks.
    let pictures_tall = drawing(pages.y).1.max(look.map() + look.small().leading() + pt(4));
    let height = if large {
        head_tall + words_tall + pt(10) + pictures_tall
    } else {
        (head_tall + words_tall).max(pictures_tall)
    };
    let height = height + pt(8);
    if pages.left_over() < height + pt(10) {
        pages.fresh();
    }
    let top = pages.y;
    let pictures = if large { top + head_tall + words_tall + pt(10) } else { top };
    let place = Rect::new(pages.left(), pictures, Size::new(look.step_picture(), Length::ZERO));
    let marks = match step {
        Step::Cut(cut) => at_trimmer(told, cut, place).0,
        Step::Score(score) => scored(told, score, place).0,
    };
    let figure = Mark::role(
        Role::Figure(say("page-step-alt", &[("number", (&*number.text).into()), ("head", head.into())])),
        marks,
    );
    let label =
        Mark::role(Role::Label, vec![place_at(number, Point::new(words_at, top + head_style.size + pt(2)), ACCENT)]);
    let mut said_head = Vec::new();
    for (index, line) in (0_i64..).zip(heads) {
        let base = top + head_style.size + pt(1) + head_style.leading() * index;
        said_head.push(place_at(line, Point::new(head_at, base), INK));
    }
    let mut texts = Vec::new();
    let mut base = top + head_tall + look.body().size;
    for (line, color) in lines {
        texts.push(place_at(line, Point::new(words_at, base), color));
        base += look.body().leading();
    }
    let (head, words) = (Mark::role(Role::Paragraph, said_head), Mark::role(Role::Paragraph, texts));
    let map_at = Point::new(pages.right() - look.map(), pictures + pt(4));
    let map = map(told, step, there, Rect::new(map_at.x, map_at.y, Size::new(look.map(), look.map())));
    let item = if large { vec![label, head, words, figure] } else { vec![label, figure, head, words] };
    pages.push(Mark::role(Role::List, vec![Mark::role(Role::Item, item)]));
    pages.push(Mark::role(Role::Artifact, map));
    pages.gap(height);
    pages.rule();
    pages.gap(pt(9));
}

fn place_at(line: Line, at: Point, color: Color) -> Mark {
    place(line, at, Align::Start, color)
}

fn quarters(up: Up) -> u8 {
    match up {
        Up::Away => 0,
        Up::Right => 1,
        Up::Toward => 2,
        Up::Left => 3,
    }
}

/// The print or colour of a part, turned as it lies at the stop.
fn paper_marks(told: &Cuts<'_>, part: Rect, turned: u8, drawn: Rect) -> Vec<Mark> {
    let sheet = sheet_size(told);
    match &told.under {
        Under::Print(print) => {
            let of = |length: Length, whole: Length| length.to_points() / whole.to_points().max(1.0);
            let shares = [
                of(part.x, sheet.width),
                of(part.y, sheet.height),
                of(part.right(), sheet.width),
                of(part.bottom(), sheet.height),
            ];
            let (wide, tall) = (pixels(drawn.size.width) / 2, pixels(drawn.size.height) / 2);
            let (wide, tall) = if turned % 2 == 1 { (tall, wide) } else { (wide, tall) };
            let picture: Picture = print.part(shares, wide.max(1), tall.max(1)).turned(turned);
            vec![Mark::Image { picture, rect: drawn, clip: drawn }, Mark::fill(drawn, WHITE.with_alpha(140))]
        }
        Under::Clear => Vec::new(),
        Under::Color(color) => vec![Mark::fill(drawn, color.mix(WHITE, 110))],
        Under::Stock(swatch) => swatch.fill(drawn),
    }
}

fn sheet_size(told: &Cuts<'_>) -> Size {
    let (width, height) = told.plan.sheet;
    Size::new(from_steps(width, told.step), from_steps(height, told.step))
}

fn scale(told: &Cuts<'_>, at: Point) -> Fit {
    let sheet = sheet_size(told);
    Fit::scaled(at, told.told.at_trimmer(), sheet.width.max(sheet.height))
}

/// The first part of a step as it lies at the stop; the marks and how tall they are.
pub(super) fn at_trimmer(told: &Cuts<'_>, cut: &CutStep, place: Rect) -> (Vec<Mark>, Length) {
    let Some(work) = cut.work.first() else { return (Vec::new(), Length::ZERO) };
    let part = told.rect(work.part);
    let turned = quarters(told.told.up(cut));
    let lies = if turned % 2 == 1 { part.size.turned() } else { part.size };
    let left = told.told.edition.hand == Hand::Left;
    let bar = pt(9);
    let above = pt(if told.told.large() { 30 } else { 22 });
    let fit = scale(told, Point::new(place.x + bar + pt(2), place.y + above));
    let drawn_size = fit.size(lies);
    // The stop is at the left, or for a left hand at the right; distances are measured from it.
    let edge = if left { place.right() - bar - pt(2) } else { fit.at.x };
    let from_stop = |length: Length| if left { edge - fit.length(length) } else { edge + fit.length(length) };
    let drawn = Rect::new(if left { edge - drawn_size.width } else { edge }, fit.at.y, drawn_size);
    let mut marks = paper_marks(told, part, turned, drawn);
    // What becomes waste is hatched, as on the sheet's own drawing.
    let setting = from_steps(cut.setting, told.step);
    let last = from_stop(setting * i64::from(cut.cuts));
    let rest = if left {
        Rect::new(drawn.x, drawn.y, Size::new(last - drawn.x, drawn.size.height))
    } else {
        Rect::new(last, drawn.y, Size::new(drawn.right() - last, drawn.size.height))
    };
    let thin = Pen::solid(SOFT, share(pt(1), 1, 2));
    match told.fate(work.rest) {
        Fate::Waste => marks.push(hatch(rest, Hatch::Rising, pt(6), &thin)),
        Fate::Edge => marks.push(hatch(rest, Hatch::Crossed, pt(5), &thin)),
        _ => {}
    }
    marks.push(Mark::frame(drawn, Pen::solid(INK, pt(1))));
    let stop_at = if left { place.right() - bar } else { place.x };
    let stop = Rect::new(stop_at, place.y + above - pt(8), Size::new(bar, drawn.size.height + pt(16)));
    marks.push(Mark::fill(stop, INK));
    let below = half(told.told.small().size) + pt(7);
    for index in 1..=i64::from(cut.cuts) {
        let x = from_stop(setting * index);
        let (from, to) = (Point::new(x, drawn.y - pt(6)), Point::new(x, drawn.bottom() + pt(6)));
        marks.push(Mark::line(from, to, Pen::solid(ACCENT, pt(2))));
        let first = from_stop(setting * (index - 1));
        let at = Point::new(first + half(x - first), drawn.bottom() + below);
        let label = centred(&index.to_string(), told.told.small_strong(), at, ACCENT);
        if cut.cuts > 1 && label.around.size.width + pt(2) < fit.length(setting) {
            marks.extend(label.marks);
        }
    }
    // The distance the stop is set to, above the paper.
    let end = from_stop(setting);
    let line = shape(&told.told.bare(setting), told.told.strong());
    let fits = line.width + pt(10) < fit.length(setting);
    let pen = Pen::solid(INK, share(pt(1), 3, 4));
    let dimension = drawn.y - half(told.told.strong().size) - pt(4);
    for x in [edge, end] {
        marks.push(Mark::line(Point::new(x, dimension - pt(4)), Point::new(x, dimension + pt(4)), pen.clone()));
    }
    marks.push(Mark::line(Point::new(edge, dimension), Point::new(end, dimension), pen));
    let aside = pt(4) + half(line.width);
    let words = match (fits, left) {
        (true, _) => Point::new(edge + half(end - edge), dimension),
        (false, false) => Point::new(end + aside, dimension),
        (false, true) => Point::new(end - aside, dimension),
    };
    let label = centred(&told.told.bare(setting), told.told.strong(), words, INK);
    marks.push(Mark::fill(inset(label.around, -pt(2)), WHITE));
    marks.extend(label.marks);
    let long = share(drawn.size.width.min(drawn.size.height), 1, 2).min(pt(26)).max(pt(9));
    let centre = middle(drawn);
    marks.push(Mark::fill(
        inset(Rect::new(centre.x, centre.y, Size::default()), -(half(long) + pt(2))),
        WHITE.with_alpha(170),
    ));
    marks.extend(arrow(centre, long, turned));
    let tall =
        above + drawn.size.height + if cut.cuts > 1 { below + half(told.told.small().size) + pt(2) } else { pt(10) };
    (marks, tall)
}

/// A piece with the line to press.
pub(super) fn scored(told: &Cuts<'_>, score: &ScoreStep, place: Rect) -> (Vec<Mark>, Length) {
    let Some(first) = score.parts.first() else { return (Vec::new(), Length::ZERO) };
    let part = told.rect(*first);
    let turned = matches!(told.fate(*first), Fate::Piece { turned: true, .. });
    let quarter = if turned { 3 } else { 0 };
    let lies = if turned { part.size.turned() } else { part.size };
    let fit = scale(told, Point::new(place.x + pt(11), place.y + pt(8)));
    let drawn = Rect::new(fit.at.x, fit.at.y, fit.size(lies));
    let mut marks = paper_marks(told, part, quarter, drawn);
    marks.push(Mark::frame(drawn, Pen::solid(INK, pt(1))));
    let at = fit.length(from_steps(score.fold.at, told.step));
    let (from, to) = if score.fold.axis == Axis::X {
        (Point::new(drawn.x + at, drawn.y), Point::new(drawn.x + at, drawn.bottom()))
    } else {
        (Point::new(drawn.x, drawn.y + at), Point::new(drawn.right(), drawn.y + at))
    };
    marks.push(Mark::line(from, to, Pen { color: ACCENT, width: pt(2), dash: vec![pt(5), pt(3)] }));
    (marks, drawn.size.height + pt(16))
}

/// Where on the sheet the parts of a step lie.
pub(super) fn map(told: &Cuts<'_>, step: &Step, there: &BTreeSet<PartId>, place: Rect) -> Vec<Mark> {
    let fit = Fit::into(sheet_size(told), place);
    let worked: Vec<PartId> = match step {
        Step::Cut(cut) => cut.work.iter().map(|work| work.part).collect(),
        Step::Score(score) => score.parts.clone(),
    };
    let mut marks = Vec::new();
    let pen = Pen::solid(SOFT, share(pt(1), 3, 4));
    for id in there {
        let rect = fit.rect(told.rect(*id));
        let fill = if worked.contains(id) { ACCENT.mix(WHITE, 190) } else { WHITE };
        marks.push(Mark::fill(rect, fill));
        if worked.contains(id) {
            marks.push(hatch(rect, Hatch::Falling, pt(5), &Pen::solid(ACCENT.mix(WHITE, 120), share(pt(1), 1, 2))));
        }
        marks.push(Mark::frame(rect, pen.clone()));
    }
    if let Step::Cut(cut) = step {
        let heavy = Pen::solid(ACCENT, share(pt(1), 3, 2));
        for work in &cut.work {
            for part in &work.off {
                let rect = fit.rect(told.rect(*part));
                // The edge on the far side from the stop is the cut.
                let whole = fit.rect(told.rect(work.part));
                let (a, b) = match (cut.axis, cut.end) {
                    (Axis::X, cutting::steps::End::Near) => {
                        (Point::new(rect.right(), whole.y), Point::new(rect.right(), whole.bottom()))
                    }
                    (Axis::X, cutting::steps::End::Far) => {
                        (Point::new(rect.x, whole.y), Point::new(rect.x, whole.bottom()))
                    }
                    (Axis::Y, cutting::steps::End::Near) => {
                        (Point::new(whole.x, rect.bottom()), Point::new(whole.right(), rect.bottom()))
                    }
                    (Axis::Y, cutting::steps::End::Far) => {
                        (Point::new(whole.x, rect.y), Point::new(whole.right(), rect.y))
                    }
                };
                marks.push(Mark::line(a, b, heavy.clone()));
            }
        }
    }
    let style = told.told.small();
    let caption = centred(
        &say("page-step-map", &[]),
        style,
        Point::new(middle(place).x, place.bottom() + half(style.size) + pt(5)),
        SOFT,
    );
    marks.extend(caption.marks);
    marks
}

impl Cuts<'_> {
    /// The steps in one short sentence each, for a page where the sheet itself is drawn.
    pub(super) fn short(&self) -> Vec<String> {
        let mut before: Option<u32> = None;
        let mut said = Vec::new();
        for step in &self.plan.steps {
            match step {
                Step::Cut(cut) => {
                    let same = before == Some(cut.stop);
                    let turn = match self.told.turn(cut) {
                        Turn::None => "none",
                        Turn::Right => "right",
                        Turn::Half => "half",
                        Turn::Left => "left",
                    };
                    let mut sentence = say(
                        "page-step-short",
                        &[
                            ("same", if same { "yes" } else { "no" }.into()),
                            ("length", self.length(cut.setting).into()),
                            ("turn", turn.into()),
                            ("count", cut.cuts.into()),
                            ("parts", cut.work.len().into()),
                        ],
                    );
                    for caution in self.cautions(cut) {
                        sentence = format!("{sentence} {caution}");
                    }
                    said.push(sentence);
                    before = Some(cut.stop);
                }
                Step::Score(score) => {
                    let (head, rest) = self.score_sentences(score);
                    said.push(format!("{head} {}", rest.join(" ")));
                }
            }
        }
        said
    }
}
