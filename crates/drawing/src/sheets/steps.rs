//! The numbered cuts: how the paper lies at the stop, where on the sheet that is, what to do.

use std::collections::BTreeSet;

use cards::Plan;
use cards::plan::Layout;
use cutting::steps::{Caution, CutPlan, CutStep, Fate, PartId, ScoreStep, Step, Turn, Up};
use cutting::tree::Axis;
use measure::{Length, Rect, Size, from_steps};

use super::Faces;
use super::card::pixels;
use super::labels::centred;
use super::look::{
    ACCENT, BODY, Fit, INK, SMALL, SMALL_STRONG, SOFT, STRONG, Told, WHITE, half, inset, middle, pt, say, sixteenths,
};
use super::pages::Pages;
use super::papers::{on_sheet, runs};
use super::sketch::{Under, arrow};
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
        let turn = match cut.turn {
            Turn::None => "none",
            Turn::Right => "right",
            Turn::Half => "half",
            Turn::Left => "left",
        };
        let mut said = vec![
            say(take, &[("count", count.into()), ("turn", turn.into())]),
            say("page-step-cuts", &[("count", cut.cuts.into()), ("parts", count.into())]),
        ];
        said.extend(self.rest(cut));
        if self.plan.sheets > 1 && cut.layers > 1 {
            said.push(say(
                "page-step-stack",
                &[("layers", cut.layers.into()), ("strokes", cut.strokes.into()), ("sheets", self.plan.sheets.into())],
            ));
        }
        if !cut.finished.is_empty() {
            let marks = self.marks_of(&cut.finished);
            said.push(say("page-step-label", &[("marks", marks.into()), ("count", cut.finished.len().into())]));
        }
        (head, said)
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
        (head, vec![say("page-step-score-parts", &[("marks", marks.into()), ("strokes", score.strokes.into())])])
    }

    fn cautions(&self, cut: &CutStep) -> Vec<String> {
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
    for (index, layout) in plan.layouts.iter().enumerate() {
        if layout.cut_plan.steps.is_empty() {
            continue;
        }
        let id = if plan.layouts.len() == 1 { "page-steps-title" } else { "page-steps-title-numbered" };
        pages.chapter(&say(id, &[("number", (index + 1).into())]));
        let tally = layout.cut_plan.tally();
        pages.say(&say(
            "page-steps-lead",
            &[
                ("cuts", tally.cuts.into()),
                ("sheets", layout.cut_plan.sheets.into()),
                ("strokes", tally.strokes.into()),
            ],
        ));
        pages.gap(pt(4));
        draw(&of_layout(faces, layout, told), pages);
    }
    cutting_cautions(pages);
}

fn of_layout<'a>(faces: &Faces, layout: &'a Layout, told: Told) -> Cuts<'a> {
    let print = layout.sheets.first().and_then(|used| faces.get(&(layout.pack, used.design, used.side)));
    let under = print.map_or(Under::Color(WHITE), |print| Under::Print(print.at_most(700)));
    let marks = layout.pieces.iter().map(|piece| (piece.rect, piece.mark.clone())).collect();
    Cuts { plan: &layout.cut_plan, step: layout.cut_step, under, marks, told }
}

/// Where narrow strips, stacks and blades can hurt.
fn cutting_cautions(pages: &mut Pages) {
    pages.gap(pt(4));
    pages.room(sixteenths(44));
    pages.section(&say("page-cautions-cutting", &[]));
    for id in
        ["page-caution-blade", "page-caution-lever", "page-caution-strips", "page-caution-stack", "page-caution-knife"]
    {
        pages.item(&say(id, &[]));
    }
}

/// The largest side of the picture of a whole sheet at the trimmer.
const AT_TRIMMER: Length = sixteenths(20);
/// The picture of where on the sheet.
const MAP: Length = sixteenths(14);

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
    let picture = sixteenths(26);
    let words_at = pages.left() + picture + pt(22);
    let words_wide = pages.right() - MAP - pt(16) - words_at;
    let mut lines: Vec<(Line, Color)> = Vec::new();
    lines.extend(wrap(&said.join(" "), BODY, words_wide).into_iter().map(|line| (line, INK)));
    for caution in cautions {
        lines.extend(wrap(caution, Style::new(Face::Semibold, 12), words_wide).into_iter().map(|line| (line, ACCENT)));
    }
    let leading = BODY.leading();
    let words_tall = pt(26) + leading * i64::try_from(lines.len()).unwrap_or(0);
    let (marks, tall) = match step {
        Step::Cut(cut) => at_trimmer(told, cut, Rect::new(pages.left(), pages.y, Size::new(picture, Length::ZERO))),
        Step::Score(score) => scored(told, score, Rect::new(pages.left(), pages.y, Size::new(picture, Length::ZERO))),
    };
    let height = words_tall.max(tall).max(MAP + pt(18));
    let top = pages.y;
    pages.room(height + pt(10));
    // On a new page everything moves up together.
    let marks = if pages.y == top {
        marks
    } else {
        match step {
            Step::Cut(cut) => {
                at_trimmer(told, cut, Rect::new(pages.left(), pages.y, Size::new(picture, Length::ZERO))).0
            }
            Step::Score(score) => {
                scored(told, score, Rect::new(pages.left(), pages.y, Size::new(picture, Length::ZERO))).0
            }
        }
    };
    let alt = say("page-step-alt", &[("number", number.into()), ("head", head.into())]);
    pages.push(Mark::role(Role::Figure(alt), marks));
    let mut texts = Vec::new();
    let number = shape(&number.to_string(), Style::new(Face::Bold, 19));
    let head_at = words_at + number.width.max(pt(20)) + pt(4);
    texts.push(place(number, Point::new(words_at, pages.y + pt(17)), Align::Start, ACCENT));
    for (index, line) in
        (0_i64..).zip(wrap(head, Style::new(Face::Semibold, 15), pages.right() - MAP - pt(10) - head_at))
    {
        texts.push(place(line, Point::new(head_at, pages.y + pt(16) + pt(20) * index), Align::Start, INK));
    }
    let mut base = pages.y + pt(26) + BODY.size;
    for (line, color) in lines {
        texts.push(place(line, Point::new(words_at, base), Align::Start, color));
        base += leading;
    }
    pages.push(Mark::role(Role::Paragraph, texts));
    let map = map(told, step, there, Rect::new(pages.right() - MAP, pages.y + pt(4), Size::new(MAP, MAP)));
    pages.push(Mark::role(Role::Artifact, map));
    pages.gap(height + pt(8));
    pages.rule();
    pages.gap(pt(9));
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
        Under::Color(color) => vec![Mark::fill(drawn, color.mix(WHITE, 110))],
    }
}

fn sheet_size(told: &Cuts<'_>) -> Size {
    let (width, height) = told.plan.sheet;
    Size::new(from_steps(width, told.step), from_steps(height, told.step))
}

fn scale(told: &Cuts<'_>, at: Point) -> Fit {
    let sheet = sheet_size(told);
    Fit::scaled(at, AT_TRIMMER, sheet.width.max(sheet.height))
}

/// The first part of a step as it lies at the stop; the marks and how tall they are.
fn at_trimmer(told: &Cuts<'_>, cut: &CutStep, place: Rect) -> (Vec<Mark>, Length) {
    let Some(work) = cut.work.first() else { return (Vec::new(), Length::ZERO) };
    let part = told.rect(work.part);
    let up = Up::needed(cut.axis, cut.end);
    let turned = quarters(up);
    let lies = if turned % 2 == 1 { part.size.turned() } else { part.size };
    let bar = pt(9);
    let above = pt(22);
    let fit = scale(told, Point::new(place.x + bar + pt(2), place.y + above));
    let drawn = Rect::new(fit.at.x, fit.at.y, fit.size(lies));
    let mut marks = paper_marks(told, part, turned, drawn);
    // What becomes waste is hatched, as on the sheet's own drawing.
    let setting = from_steps(cut.setting, told.step);
    let over = fit.length(setting * i64::from(cut.cuts));
    let rest = Rect::new(drawn.x + over, drawn.y, Size::new(drawn.size.width - over, drawn.size.height));
    let thin = Pen::solid(SOFT, share(pt(1), 1, 2));
    match told.fate(work.rest) {
        Fate::Waste => marks.push(hatch(rest, Hatch::Rising, pt(6), &thin)),
        Fate::Edge => marks.push(hatch(rest, Hatch::Crossed, pt(5), &thin)),
        _ => {}
    }
    marks.push(Mark::frame(drawn, Pen::solid(INK, pt(1))));
    let stop = Rect::new(place.x, place.y + above - pt(8), Size::new(bar, drawn.size.height + pt(16)));
    marks.push(Mark::fill(stop, INK));
    for index in 1..=i64::from(cut.cuts) {
        let x = fit.at.x + fit.length(setting * index);
        let (from, to) = (Point::new(x, drawn.y - pt(6)), Point::new(x, drawn.bottom() + pt(6)));
        marks.push(Mark::line(from, to, Pen::solid(ACCENT, pt(2))));
        let first = fit.at.x + fit.length(setting * (index - 1));
        let at = Point::new(first + half(x - first), drawn.bottom() + pt(12));
        let label = centred(&index.to_string(), SMALL_STRONG, at, ACCENT);
        if cut.cuts > 1 && label.around.size.width + pt(2) < x - first {
            marks.extend(label.marks);
        }
    }
    // The distance the stop is set to, above the paper.
    let end = fit.at.x + fit.length(setting);
    let line = shape(&told.told.bare(setting), STRONG);
    let fits = line.width + pt(10) < end - fit.at.x;
    let pen = Pen::solid(INK, share(pt(1), 3, 4));
    let dimension = drawn.y - pt(11);
    for x in [fit.at.x, end] {
        marks.push(Mark::line(Point::new(x, dimension - pt(4)), Point::new(x, dimension + pt(4)), pen.clone()));
    }
    marks.push(Mark::line(Point::new(fit.at.x, dimension), Point::new(end, dimension), pen));
    let words = if fits {
        Point::new(fit.at.x + half(end - fit.at.x), dimension)
    } else {
        Point::new(end + pt(4) + half(line.width), dimension)
    };
    let label = centred(&told.told.bare(setting), STRONG, words, INK);
    marks.push(Mark::fill(inset(label.around, -pt(2)), WHITE));
    marks.extend(label.marks);
    let long = share(drawn.size.width.min(drawn.size.height), 1, 2).min(pt(26)).max(pt(9));
    let centre = middle(drawn);
    marks.push(Mark::fill(
        inset(Rect::new(centre.x, centre.y, Size::default()), -(half(long) + pt(2))),
        WHITE.with_alpha(170),
    ));
    marks.extend(arrow(centre, long, turned));
    let tall = above + drawn.size.height + pt(if cut.cuts > 1 { 18 } else { 10 });
    (marks, tall)
}

/// A piece with the line to press.
fn scored(told: &Cuts<'_>, score: &ScoreStep, place: Rect) -> (Vec<Mark>, Length) {
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
fn map(told: &Cuts<'_>, step: &Step, there: &BTreeSet<PartId>, place: Rect) -> Vec<Mark> {
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
    let caption =
        centred(&say("page-step-map", &[]), SMALL, Point::new(middle(place).x, place.bottom() + pt(10)), SOFT);
    marks.extend(caption.marks);
    marks
}

impl Cuts<'_> {
    /// The steps in one short sentence each, for a page where the sheet itself is drawn.
    pub(super) fn short(&self) -> Vec<String> {
        let mut before: Option<(u32, Up)> = None;
        let mut said = Vec::new();
        for step in &self.plan.steps {
            match step {
                Step::Cut(cut) => {
                    let same = before.is_some_and(|(stop, _)| stop == cut.stop);
                    let turn = match cut.turn {
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
                    before = Some((cut.stop, Up::needed(cut.axis, cut.end)));
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
