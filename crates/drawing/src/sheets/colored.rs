//! The paper and its colours: each print with its way up and its palette, what lies nearest, whether greetings can be read.
//!
//! Left out on purpose: how colours are found and compared. This room is handed them.

use cards::Plan;
use cards::model::{Side, Way};
use measure::{Length, Rect, Size};

use super::Faces;
use super::card::pixels;
use super::look::{INK, SOFT, WHITE, half, pt, say, sixteenths};
use super::pages::Pages;
use super::sketch::arrow;
use super::told::Told;
use super::worded::print_way;
use crate::scene::{Color, Mark, Pen, Point, Role, share};
use crate::text::{Align, Line, Style, place, shape, wrap};

/// What is known of the colours of a plan's papers.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Colors {
    /// Every print whose colours are known, in the order of packs and designs.
    pub prints: Vec<PrintColors>,
    /// How each greeting reads on what it is stamped on.
    pub reads: Vec<Reads>,
}

/// The colours of one print.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PrintColors {
    /// Pack, design, side.
    pub face: (usize, usize, Side),
    /// Its colours and their shares of its area in thousandths, largest first.
    pub shares: Vec<(Color, u32)>,
    /// The nearest cardstock, ribbon and ink, those of them that there are.
    pub nearest: Vec<Nearest>,
}

/// What of the project lies nearest to a print.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Nearest {
    /// Name of the message that says its kind and its name.
    pub kind: &'static str,
    /// Its name; of an ink, the words that are stamped with it.
    pub name: String,
    /// How far it lies from the nearest colour of the print: ΔE₀₀ in tenths.
    pub tenths: u32,
    /// Name of the message that says the same in words.
    pub near: &'static str,
}

/// How a greeting reads.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reads {
    /// Its words.
    pub words: String,
    /// What it is stamped on.
    pub on: String,
    /// Contrast ratio in tenths.
    pub tenths: u32,
    /// Name of the message that says how well it reads.
    pub how: &'static str,
}

/// `4.2`, as the language writes it.
fn decimal(tenths: u32) -> String {
    words::local(&format!("{}.{}", tenths / 10, tenths % 10))
}

/// Draws the chapter; nothing where no print has a picture.
pub(super) fn colored(plan: &Plan, faces: &Faces, colors: &Colors, told: Told, pages: &mut Pages) {
    if colors.prints.is_empty() {
        return;
    }
    pages.chapter(&say("page-colored-title", &[]));
    pages.say(&say("page-colored-lead", &[]));
    pages.note(&say("page-colored-screen", &[]));
    if !colors.reads.is_empty() {
        pages.section(&say("matched-reads", &[]));
        for of in &colors.reads {
            let facts = [
                ("words", (&of.words).into()),
                ("on", (&of.on).into()),
                ("contrast", decimal(of.tenths).into()),
                ("how", say(of.how, &[]).into()),
            ];
            pages.item(&say("matched-read", &facts));
        }
    }
    let mut last = None;
    for print in &colors.prints {
        let (pack, design, _) = print.face;
        if last == Some((pack, design)) {
            continue;
        }
        last = Some((pack, design));
        let Some(of) = plan.project.design(pack, design) else { continue };
        let of_side = |side| colors.prints.iter().find(|print| print.face == (pack, design, side));
        let sides = [Side::Front, Side::Back];
        let blocks: Vec<Block<'_>> = sides
            .into_iter()
            .filter_map(|side| Block::of(plan, of_side(side)?, of_side(side.other()).is_none(), told, pages))
            .collect();
        // A heading is never alone at the foot of a page.
        pages.room(told.subheading().leading() + pt(10) + blocks.first().map_or(Length::ZERO, |block| block.high));
        let heading = format!("{} · {}", of.letter, of.name);
        pages.section(&heading);
        for (nth, block) in blocks.into_iter().enumerate() {
            // On another page than the first, the second face says again whose it is.
            if nth > 0 && pages.left_over() < block.high {
                pages.fresh();
                pages.section(&say("page-colored-goes-on", &[("heading", heading.as_str().into())]));
            }
            block.draw(faces, told, pages);
        }
    }
}

fn side_name(side: Side) -> String {
    match side {
        Side::Front => say("page-colored-front", &[]),
        Side::Back => say("page-colored-back", &[]),
    }
}

/// Rows of the palette; as many as there can be colours.
const ROWS: i64 = 8;

fn row_tall(told: Told) -> Length {
    told.small().size + pt(2)
}

/// Height of a print's picture and of its palette.
fn tall(told: Told) -> Length {
    row_tall(told) * ROWS
}

/// One face: its picture with its arrow, its palette as bars, and beside it (in large print below) what lies nearest.
struct Block<'a> {
    print: &'a PrintColors,
    sheet: Size,
    turns: Way,
    title: String,
    way: String,
    lines: Vec<(Vec<Line>, Style, Color)>,
    /// From its top to where it ends; it stays on one page.
    high: Length,
}

impl<'a> Block<'a> {
    /// `alone` if the sheet's other face does not show, which is then said.
    fn of(plan: &Plan, print: &'a PrintColors, alone: bool, told: Told, pages: &Pages) -> Option<Block<'a>> {
        let (pack, design, side) = print.face;
        let (of, pack) = (plan.project.design(pack, design)?, plan.project.packs.get(pack)?);
        let title =
            say("page-colored-face", &[("side", side_name(side).into()), ("name", (&of.face(side).name).into())]);
        let way = print_way(of.face(side).way);
        let mut texts = vec![(title.clone(), told.strong(), INK), (way.clone(), told.small(), SOFT)];
        for near in &print.nearest {
            let facts = [
                ("name", (&near.name).into()),
                ("delta", decimal(near.tenths).into()),
                ("near", say(near.near, &[]).into()),
            ];
            texts.push((say(near.kind, &facts), told.small(), INK));
        }
        if alone {
            let facts = [("side", side_name(side.other()).into()), ("name", (&of.face(side.other()).name).into())];
            texts.push((say("page-colored-unseen", &facts), told.small(), SOFT));
        }
        let wide = if told.large() { pages.width() } else { pages.right() - beside(told, pages) };
        let lines: Vec<(Vec<Line>, Style, Color)> =
            texts.into_iter().map(|(text, style, color)| (wrap(&text, style, wide), style, color)).collect();
        let words: Length = lines
            .iter()
            .map(|(lines, style, _)| style.leading() * i64::try_from(lines.len()).unwrap_or(1) + between(told))
            .sum();
        let high = if told.large() { tall(told) + BELOW + words } else { tall(told).max(words) };
        Some(Block { print, sheet: pack.sheet, turns: of.face(side).way, title, way, lines, high })
    }

    fn draw(self, faces: &Faces, told: Told, pages: &mut Pages) {
        pages.room(self.high);
        let (x, y, tall) = (pages.left(), pages.y, tall(told));
        let mut marks = picture(faces, self.print, self.sheet, Rect::new(x, y, Size::new(tall, tall)), self.turns);
        marks.extend(palette(self.print, Point::new(x + tall + GAP, y), palette_wide(told), told));
        let shares: Vec<String> =
            self.print.shares.iter().map(|(color, share)| format!("{} {}", hex(*color), percent(*share))).collect();
        let facts = [("title", self.title.into()), ("way", self.way.into()), ("colors", shares.join(", ").into())];
        pages.push(Mark::role(Role::Figure(say("page-colored-alt", &facts)), marks));
        let (left, mut down) = if told.large() { (x, y + tall + BELOW) } else { (beside(told, pages), y) };
        for (lines, style, color) in self.lines {
            let mut held = Vec::new();
            for line in lines {
                held.push(place(line, Point::new(left, down + style.size), Align::Start, color));
                down += style.leading();
            }
            down += between(told);
            pages.push(Mark::role(Role::Paragraph, held));
        }
        pages.y = (y + tall).max(down) + pt(8);
    }
}

/// Between the picture, its palette and what is said beside them.
const GAP: Length = pt(12);

/// Between the picture and what is said below it, in large print.
const BELOW: Length = pt(8);

/// Between two things said.
fn between(told: Told) -> Length {
    pt(if told.large() { 6 } else { 2 })
}

fn palette_wide(told: Told) -> Length {
    sixteenths(if told.large() { 40 } else { 24 })
}

/// Where that begins what is said beside a picture and its palette.
fn beside(told: Told, pages: &Pages) -> Length {
    pages.left() + tall(told) + GAP + palette_wide(told) + GAP
}

/// The print with its top up; an arrow says so where it has one, and a double one where either way will do.
fn picture(faces: &Faces, print: &PrintColors, sheet: Size, area: Rect, way: Way) -> Vec<Mark> {
    let whole = super::look::Fit::into(sheet, area).rect(Rect::new(Length::ZERO, Length::ZERO, sheet));
    let mut marks = vec![match faces.get(&print.face) {
        Some(face) => Mark::Image { picture: face.at_most(pixels(whole.size.width)), rect: whole, clip: whole },
        None => Mark::fill(whole, WHITE),
    }];
    marks.push(Mark::frame(whole, Pen::solid(INK, pt(1))));
    let quarters: &[u8] = match way {
        Way::Any => &[],
        Way::OneWay => &[0],
        Way::TwoWays => &[0, 2],
    };
    if !quarters.is_empty() {
        let ground = Size::new(pt(16) * i64::try_from(quarters.len()).unwrap_or(1), pt(24));
        let ground = Rect::new(whole.x + pt(4), whole.y + pt(4), ground);
        marks.push(Mark::fill(ground, WHITE.with_alpha(225)));
        for (at, quarters) in (0_i64..).zip(quarters) {
            let centre = Point::new(ground.x + pt(8) + pt(16) * at, ground.y + pt(12));
            marks.extend(arrow(centre, pt(20), *quarters));
        }
    }
    marks
}

/// A bar for each colour, as long as its share, and the share in figures behind it.
fn palette(print: &PrintColors, at: Point, wide: Length, told: Told) -> Vec<Mark> {
    let figures = shape("100 %", told.small()).width + pt(6);
    let longest = wide - figures;
    let most = print.shares.iter().map(|(_, share)| *share).max().unwrap_or(1).max(1);
    let mut marks = Vec::new();
    for (row, (color, part)) in (0_i64..).zip(&print.shares) {
        let top = at.y + row_tall(told) * row;
        let long = share(longest, i64::from(*part), i64::from(most)).max(pt(6));
        let bar = Rect::new(at.x, top + pt(2), Size::new(long, row_tall(told) - pt(3)));
        marks.push(Mark::fill(bar, *color));
        marks.push(Mark::frame(bar, Pen::solid(SOFT, half(pt(1)))));
        let base = Point::new(bar.right() + pt(5), top + told.small().size);
        marks.push(place(shape(&percent(*part), told.small()), base, Align::Start, INK));
    }
    marks
}

/// `34 %`.
fn percent(thousandths: u32) -> String {
    format!("{}\u{a0}%", (thousandths + 5) / 10)
}

fn hex(color: Color) -> String {
    let [r, g, b] = color.rgb;
    format!("#{r:02x}{g:02x}{b:02x}")
}
