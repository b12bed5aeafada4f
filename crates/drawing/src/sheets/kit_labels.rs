//! Labels for kits: on label sheets by their dimensions, or on plain paper with lines to cut by.

use measure::{Length, Rect, Size, Unit};

use super::edition::Paper;
use super::look::{INK, SOFT, half, inset, pt, say};
use crate::scene::{Mark, Pen, Point, Role, Scene, share};
use crate::text::{Align, Face, Style, place, shape, wrap};

/// A sheet of labels by its dimensions.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LabelSheet {
    /// Its name on the command line and in addresses.
    pub name: &'static str,
    /// The page.
    pub paper: Paper,
    /// Labels across and down.
    pub across: i64,
    /// Labels down.
    pub down: i64,
    /// The top left corner of the first label.
    pub first: Point,
    /// One label.
    pub label: Size,
    /// From one label to the next, right and down.
    pub pitch: Size,
    /// True if the labels are cut out: each has a frame.
    pub framed: bool,
}

const fn inches(thousandths: i64) -> Length {
    Unit::Inch.thousandths(thousandths)
}

const fn mm(thousandths: i64) -> Length {
    Unit::Millimetre.thousandths(thousandths)
}

const fn ticks(sixteenths: i64, of: i64) -> Length {
    Length::from_ticks(Length::INCH.ticks() / of * sixteenths)
}

/// Label sheets as they are sold, by their dimensions; the first two are plain paper, to cut.
///
/// # Source
/// Dimensions of common label sheets, from memory: print one on plain paper and hold it against the sheet first.
pub static LABEL_SHEETS: [LabelSheet; 5] = [
    LabelSheet {
        name: "plain",
        paper: Paper::Letter,
        across: 2,
        down: 4,
        first: Point::new(inches(500), inches(500)),
        label: Size::new(inches(3_750), inches(2_500)),
        pitch: Size::new(inches(3_750), inches(2_500)),
        framed: true,
    },
    LabelSheet {
        name: "plain-a4",
        paper: Paper::A4,
        across: 2,
        down: 4,
        first: Point::new(mm(10_000), mm(18_500)),
        label: Size::new(mm(95_000), mm(65_000)),
        pitch: Size::new(mm(95_000), mm(65_000)),
        framed: true,
    },
    LabelSheet {
        name: "three-ten",
        paper: Paper::Letter,
        across: 3,
        down: 10,
        first: Point::new(ticks(3, 16), inches(500)),
        label: Size::new(inches(2_625), inches(1_000)),
        pitch: Size::new(inches(2_750), inches(1_000)),
        framed: false,
    },
    LabelSheet {
        name: "two-five",
        paper: Paper::Letter,
        across: 2,
        down: 5,
        first: Point::new(ticks(5, 32), inches(500)),
        label: Size::new(inches(4_000), inches(2_000)),
        pitch: Size::new(ticks(67, 16), inches(2_000)),
        framed: false,
    },
    LabelSheet {
        name: "two-seven",
        paper: Paper::A4,
        across: 2,
        down: 7,
        first: Point::new(mm(4_650), mm(15_150)),
        label: Size::new(mm(99_100), mm(38_100)),
        pitch: Size::new(mm(101_600), mm(38_100)),
        framed: false,
    },
];

impl LabelSheet {
    /// The sheet of that name; plain paper of the maker's unit for any other.
    pub fn named(name: &str, unit: Unit) -> &'static LabelSheet {
        let plain = usize::from(unit == Unit::Millimetre);
        LABEL_SHEETS.iter().skip(2).find(|sheet| sheet.name == name).unwrap_or(&LABEL_SHEETS[plain])
    }

    /// Where each label of a page lies, row by row.
    pub fn places(&self) -> Vec<Rect> {
        let place = |index: i64| {
            let (column, row) = (index % self.across, index / self.across);
            let (x, y) = (self.first.x + self.pitch.width * column, self.first.y + self.pitch.height * row);
            Rect::new(x, y, self.label)
        };
        (0..self.across * self.down).map(place).collect()
    }
}

/// The words of one label.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KitLabel {
    /// `Kit 3 of 16`.
    pub head: String,
    /// The project and what else stands below the head.
    pub lines: Vec<String>,
    /// What is in it, each with a box to tick, as far as there is room.
    pub contents: Vec<String>,
    /// What is not in it; last, if there is room.
    pub foot: String,
}

/// Pages of labels, as many as they take.
///
/// # Shape
/// What does not fit on a label is left off from the end of its contents, and its foot says how many lines that are; nothing
/// leaves the label.
pub fn kit_labels(labels: &[KitLabel], on: &LabelSheet) -> Vec<Scene> {
    let places = on.places();
    let page = |labels: &[KitLabel]| {
        let mut marks = Vec::new();
        for (label, rect) in labels.iter().zip(&places) {
            if on.framed {
                let pen = Pen::solid(SOFT, share(pt(1), 1, 2));
                marks.push(Mark::role(Role::Artifact, vec![Mark::frame(*rect, pen)]));
            }
            marks.extend(drawn(label, *rect));
        }
        let title = labels.first().map_or(String::new(), |label| label.head.clone());
        Scene { size: on.paper.size(), title, marks }
    };
    labels.chunks(places.len()).map(page).collect()
}

fn drawn(label: &KitLabel, rect: Rect) -> Vec<Mark> {
    let small = rect.size.height < inches(1_250);
    let inner = inset(rect, pt(if small { 6 } else { 9 }));
    let head = Style::new(Face::Semibold, if small { 13 } else { 15 });
    let body = Style::new(Face::Regular, if small { 9 } else { 10 });
    let mut y = inner.y;
    let mut marks = Vec::new();
    let room = |y: Length, style: Style| y + style.leading() <= inner.bottom();
    let mut words = |text: &str, style: Style, role: Role, y: &mut Length, right: Length, x: Length| {
        let mut held = Vec::new();
        for line in wrap(text, style, right - x) {
            if !room(*y, style) {
                break;
            }
            held.push(place(line, Point::new(x, *y + style.size), Align::Start, INK));
            *y += style.leading();
        }
        if !held.is_empty() {
            marks.push(Mark::role(role, held));
        }
    };
    words(&label.head, head, Role::Heading(1), &mut y, inner.right(), inner.x);
    for line in &label.lines {
        words(line, body, Role::Paragraph, &mut y, inner.right(), inner.x);
    }
    let mut ticks = Vec::new();
    let gap = pt(6);
    let column = half(inner.size.width - gap);
    let start = y + pt(2);
    let end = if label.foot.is_empty() { inner.bottom() } else { inner.bottom() - body.leading() };
    let (mut x, mut y) = (inner.x, start);
    let mut left_off = 0;
    for (index, item) in label.contents.iter().enumerate() {
        let lines = wrap(item, body, column - pt(12));
        let tall = body.leading() * i64::try_from(lines.len()).unwrap_or(1);
        if y + tall > end {
            if x > inner.x || start + tall > end {
                left_off = label.contents.len() - index;
                break;
            }
            (x, y) = (inner.x + column + gap, start);
        }
        let tick = Rect::new(x, y + share(body.size, 1, 4), Size::new(pt(7), pt(7)));
        let mut held = vec![Mark::role(Role::Label, vec![Mark::frame(tick, Pen::solid(INK, share(pt(1), 1, 2)))])];
        for line in lines {
            held.push(place(line, Point::new(x + pt(12), y + body.size), Align::Start, INK));
            y += body.leading();
        }
        ticks.push(Mark::role(Role::Item, held));
    }
    if !ticks.is_empty() {
        marks.push(Mark::role(Role::List, ticks));
        // A list that is not whole says so: it is packed by.
        let foot = match left_off {
            0 => label.foot.clone(),
            more => say("page-label-more", &[("count", more.into())]),
        };
        let line = shape(&foot, body);
        if !foot.is_empty() && line.width <= inner.size.width {
            let base = inner.bottom() - share(body.size, 1, 4);
            marks.push(Mark::role(Role::Paragraph, vec![place(line, Point::new(inner.x, base), Align::Start, SOFT)]));
        }
    }
    marks
}
