//! Stamping the greetings: each jig's strip with its measures, how many, what a tilt does, in the order of the table.

use cards::Plan;
use cards::model::{Greeting, Spot};
use cards::stamping::{Ground, Placed, Sides, Sitting, place, sittings, steepest, tilt, wished};
use measure::{Length, Rect, Size};

use super::card::greeting_mark;
use super::edition::Edition;
use super::labels::{Label, Placer, centred};
use super::look::{ACCENT, CREAM, Fit, INK, SOFT, WHITE, half, inset, middle, pt, say};
use super::pages::Pages;
use super::swatch::{Swatch, stock_name};
use super::told::Told;
use crate::scene::{Mark, Pen, Point, Role, Scene, share};

/// One setting of the jig, in words and as a picture.
#[derive(Debug, Clone, PartialEq)]
pub struct StampingTold {
    /// Which greeting on strips of which size.
    pub head: String,
    /// Where it comes, how many, what a tilt does: sentence by sentence.
    pub said: Vec<String>,
    /// The strip with its measures.
    pub drawing: Scene,
}

/// Every setting of the jig that a plan's cards need, in the order in which to stamp.
///
/// # Shape
/// A drawing is `width` across.
pub fn stamping_told(plan: &Plan, edition: &Edition, width: Length) -> Vec<StampingTold> {
    words::speaking(edition.language, || {
        let told = Told::new(plan.project.mark, *edition);
        sittings(plan).iter().filter_map(|sitting| one(plan, sitting, told, width)).collect()
    })
}

fn one(plan: &Plan, sitting: &Sitting, told: Told, width: Length) -> Option<StampingTold> {
    let greeting = plan.project.greetings.get(sitting.greeting)?;
    let corner = Point::new(Length::ZERO, Length::ZERO);
    let (marks, size) = strip(plan, sitting, greeting, told, Rect::new(corner.x, corner.y, Size::new(width, width)));
    let head = head(greeting, sitting, told);
    let drawing = Scene { size, title: head.clone(), marks: vec![Mark::role(Role::Figure(alt(&head)), marks)] };
    Some(StampingTold { head, said: sentences(plan, sitting, greeting, told), drawing })
}

/// The chapter; nothing where nothing is stamped.
pub(super) fn stamping(plan: &Plan, told: Told, pages: &mut Pages) {
    let sittings = sittings(plan);
    if sittings.is_empty() {
        return;
    }
    pages.chapter(&say("page-stamping-title", &[]));
    pages.say(&say(if sittings.len() > 1 { "page-stamping-lead-several" } else { "page-stamping-lead" }, &[]));
    for sitting in &sittings {
        let Some(greeting) = plan.project.greetings.get(sitting.greeting) else { continue };
        let head = head(greeting, sitting, told);
        pages.room(Length::INCH * 4);
        pages.section(&head);
        pages.gap(pt(4));
        let wide = Size::new(pages.width().min(Length::INCH * 6), Length::INCH * 3);
        let (marks, size) = strip(plan, sitting, greeting, told, Rect::new(pages.left(), pages.y, wide));
        pages.push(Mark::role(Role::Figure(alt(&head)), marks));
        pages.gap(size.height + pt(10));
        for sentence in sentences(plan, sitting, greeting, told) {
            pages.item(&sentence);
        }
        pages.gap(pt(6));
    }
    for id in ["page-caution-heat", "page-caution-solvent"] {
        pages.note(&say(id, &[]));
    }
}

fn head(greeting: &Greeting, sitting: &Sitting, told: Told) -> String {
    let facts = [("words", (&greeting.words).into()), ("strip", told.size(sitting.strip).into())];
    match &sitting.piece {
        None => say("page-stamping-head", &facts),
        Some(piece) => {
            let [words, strip] = facts;
            say("page-stamping-head-piece", &[words, strip, ("piece", piece.into())])
        }
    }
}

/// What a stamped piece is cut from, in a few words.
fn ground(plan: &Plan, ground: Ground) -> String {
    match ground {
        Ground::Cardstock(stock) => stock_name(plan, stock),
        Ground::Print { pack, design, side } => {
            let found = plan.project.design(pack, design);
            let letter = found.map(|design| design.letter.as_str()).unwrap_or_default();
            let face = found.map(|design| design.face(side).name.as_str()).unwrap_or_default();
            say("page-stamping-print", &[("letter", letter.into()), ("face", face.into())])
        }
    }
}

fn alt(head: &str) -> String {
    say("page-stamping-alt", &[("head", head.into())])
}

fn sentences(plan: &Plan, sitting: &Sitting, greeting: &Greeting, told: Told) -> Vec<String> {
    let Placed { ink, stamp } = place(sitting.strip, greeting, sitting.spot);
    let clear = Sides::of(sitting.strip, ink);
    let length = |length: Length| told.length(length);
    let mut said = Vec::new();
    if clear.least() < Length::ZERO {
        said.push(say("page-stamping-over", &[("over", length(-clear.least()).into())]));
    } else {
        let sides = [("left", clear.left), ("right", clear.right), ("above", clear.above), ("below", clear.below)];
        let middle = sitting.spot == Spot::default();
        let sides = sides.map(|(name, side)| (name, length(side).into()));
        said.push(say(
            match (middle, greeting.balanced) {
                (true, true) => "page-stamping-weight",
                (true, false) => "page-stamping-middle",
                (false, _) => "page-stamping-where",
            },
            &sides,
        ));
    }
    if let Some(stamp) = stamp {
        let way = |edge: Length| if edge < Length::ZERO { "beyond" } else { "inside" };
        let facts = [
            ("left", length(stamp.x.max(-stamp.x)).into()),
            ("left-way", way(stamp.x).into()),
            ("above", length(stamp.y.max(-stamp.y)).into()),
            ("above-way", way(stamp.y).into()),
        ];
        said.push(say("page-stamping-edges", &facts));
    }
    let of = |(of, count): &(Ground, u32)| {
        say("page-stamping-of", &[("count", (*count).into()), ("stock", ground(plan, *of).into())])
    };
    let stocks: Vec<String> = sitting.strips.iter().map(of).collect();
    said.push(say("page-stamping-count", &[("count", sitting.count().into()), ("stocks", stocks.join(", ").into())]));
    let wished = wished(sitting.spot);
    let rise = length(tilt(ink.size.width.max(ink.size.height), 10));
    said.push(match steepest(sitting.strip, ink, wished) {
        Some(tenths) if tenths < 450 => {
            let degrees = words::local(&format!("{}.{}", tenths / 10, tenths % 10));
            let facts = [("rise", rise.into()), ("clear", length(wished).into()), ("degrees", degrees.into())];
            say("page-stamping-tilt", &facts)
        }
        Some(_) => say("page-stamping-tilt-free", &[("rise", rise.into())]),
        None => say("page-stamping-tilt-tight", &[("rise", rise.into()), ("clear", length(wished).into())]),
    });
    said
}

/// A strip with the box of its ink and all measures, from the top of a room as wide as it; and how large that is.
fn strip(plan: &Plan, sitting: &Sitting, greeting: &Greeting, told: Told, room: Rect) -> (Vec<Mark>, Size) {
    let (style, width) = (told.small(), room.size.width);
    let placed = place(sitting.strip, greeting, sitting.spot);
    let side = style.leading() * 5;
    let row = style.leading() + pt(8);
    // What reaches beyond the strip needs room too.
    let whole = placed.stamp.map_or(placed.ink, |stamp| around(stamp, placed.ink));
    let whole = around(whole, Rect::new(Length::ZERO, Length::ZERO, sitting.strip));
    let fit = Fit::into(whole.size, Rect::new(side, row, Size::new(width - side * 2, Length::INCH * 2)));
    let at = Point::new(room.x + side - fit.length(whole.x), room.y + row - fit.length(whole.y));
    let fit = fit.from(at);
    let outline = fit.rect(Rect::new(Length::ZERO, Length::ZERO, sitting.strip));
    let ink = fit.rect(placed.ink);
    let mut marks = Vec::new();
    match sitting.strips.first() {
        Some((Ground::Cardstock(stock), _)) => marks.extend(Swatch::stock(plan, *stock).fill(outline)),
        Some((Ground::Print { .. }, _)) => marks.push(Mark::fill(outline, CREAM)),
        None => marks.push(Mark::fill(outline, WHITE)),
    }
    marks.push(Mark::frame(outline, Pen::solid(INK, pt(1))));
    marks.push(Mark::fill(ink, WHITE.with_alpha(200)));
    if let Some(stamp) = placed.stamp {
        marks.push(Mark::frame(fit.rect(stamp), Pen { color: SOFT, width: pt(1), dash: vec![pt(1), pt(2)] }));
    }
    marks.push(Mark::frame(ink, Pen { color: ACCENT, width: pt(1), dash: vec![pt(4), pt(2)] }));
    marks.extend(greeting_mark(greeting, ink, INK));
    let high = fit.rect(whole).bottom() + row * 2 - room.y;
    let mut placer = Placer::new(Rect::new(room.x, room.y, Size::new(width, high)));
    let clear = Sides::of(sitting.strip, placed.ink);
    let beneath = fit.rect(whole).bottom() + half(row) + pt(2);
    let level = [
        (outline.x, ink.x, clear.left),
        (ink.x, ink.right(), placed.ink.size.width),
        (ink.right(), outline.right(), clear.right),
    ];
    for (from, to, length) in level {
        let y = beneath - half(row) + pt(3);
        marks.extend(measured(Point::new(from, y), Point::new(to, y)));
        let at = from + half(to - from);
        let spots = [0, 1].map(|line| Point::new(at, beneath + style.leading() * line));
        marks.extend(first(&mut placer, &told.label(length), told, &spots));
    }
    let beside = outline.x.min(ink.x) - pt(8);
    for (from, to, length) in [(outline.y, ink.y, clear.above), (ink.bottom(), outline.bottom(), clear.below)] {
        marks.extend(measured(Point::new(beside, from), Point::new(beside, to)));
        let at = Point::new(beside - half(side) + pt(4), from + half(to - from));
        let spots = [0, -1, 1].map(|step| Point::new(at.x, at.y + style.leading() * step));
        marks.extend(first(&mut placer, &told.label(length), told, &spots));
    }
    (marks, Size::new(width, beneath + style.leading() * 2 - room.y))
}

fn first(placer: &mut Placer, text: &str, told: Told, spots: &[Point]) -> Vec<Mark> {
    let labels: Vec<Label> = spots.iter().map(|at| centred(text, told.small(), *at, INK)).collect();
    placer.first(labels).unwrap_or_default()
}

/// A line between two points with a stroke across at each end.
fn measured(from: Point, to: Point) -> [Mark; 3] {
    let pen = Pen::solid(INK, share(pt(1), 3, 4));
    let level = from.y == to.y;
    let stroke = |at: Point| {
        let (right, down) = if level { (Length::ZERO, pt(3)) } else { (pt(3), Length::ZERO) };
        Mark::line(Point::new(at.x - right, at.y - down), Point::new(at.x + right, at.y + down), pen.clone())
    };
    [Mark::line(from, to, pen.clone()), stroke(from), stroke(to)]
}

/// The smallest rectangle round two.
fn around(one: Rect, other: Rect) -> Rect {
    let (x, y) = (one.x.min(other.x), one.y.min(other.y));
    Rect::new(x, y, Size::new(one.right().max(other.right()) - x, one.bottom().max(other.bottom()) - y))
}

/// A jig's strip at true size, for the template: the box of the ink and the stamp's own edges.
pub(super) fn jig(greeting: &Greeting, placed: Placed, fit: Fit, corner: Point) -> Vec<Mark> {
    let at = fit.from(corner);
    let mut marks = Vec::new();
    if let Some(stamp) = placed.stamp {
        marks.push(Mark::frame(at.rect(stamp), Pen { color: SOFT, width: pt(1), dash: vec![pt(1), pt(2)] }));
    }
    let inked = at.rect(placed.ink);
    marks.push(Mark::frame(inked, Pen { color: ACCENT, width: pt(1), dash: vec![pt(4), pt(2)] }));
    marks.extend(greeting_mark(greeting, inked, SOFT));
    let (middle, beyond) = (middle(inked), pt(6));
    let pen = Pen { color: SOFT, width: share(pt(1), 1, 2), dash: vec![pt(8), pt(2), pt(2), pt(2)] };
    let cross = inset(inked, -beyond);
    marks.push(Mark::line(Point::new(middle.x, cross.y), Point::new(middle.x, cross.bottom()), pen.clone()));
    marks.push(Mark::line(Point::new(cross.x, middle.y), Point::new(cross.right(), middle.y), pen));
    marks
}
