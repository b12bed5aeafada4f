//! A finished card, in proportion, each patterned piece showing the part of the print it is cut from.

use std::collections::BTreeSet;

use cards::Plan;
use cards::model::{Greeting, Recipe, Side};
use cards::plan::{Card, CardPart, PartKind};
use cards::stamping;
use measure::{Length, Rect, Size};

use super::Faces;
use super::look::{Fit, INK, WHITE, half, inset, middle, pt};
use crate::picture::Picture;
use crate::scene::{Color, Mark, Outline, Pen, Point, Stretch, points, share};
use crate::text::{Face, Style, outlined, shape};

/// Pixels an inch of a page needs.
const PER_INCH: u32 = 240;

/// The marks of a card whose front covers `front` on the page.
pub(super) fn marks(plan: &Plan, faces: &Faces, card: &Card, front: Rect) -> Vec<Mark> {
    let Some(recipe) = plan.project.recipes.get(card.recipe) else { return Vec::new() };
    let fit = Fit::into(recipe.finished, front);
    let whole = fit.rect(Rect::new(Length::ZERO, Length::ZERO, recipe.finished));
    let base = stock_color(plan, recipe.base);
    let mut marks = lifted(whole, fit.length(Length::INCH), 3);
    if !matches!(recipe.fold, cards::model::Fold::Flat) {
        // The leaf behind, a breath wider: the card is folded.
        let behind = share(fit.length(Length::INCH), 1, 28);
        let leaf = Rect::new(whole.x + behind, whole.y + behind, whole.size);
        marks.push(Mark::fill(leaf, base.mix(INK, 26)));
        marks.push(Mark::frame(leaf, edge(base)));
    }
    marks.push(Mark::fill(whole, base));
    marks.push(Mark::frame(whole, edge(base)));
    for part in &card.parts {
        marks.extend(part_marks(plan, faces, card, part, fit));
        if let Some((greeting, inked)) = stamped_on(plan, recipe, part) {
            let ink = Color::parse(&greeting.ink).unwrap_or(INK);
            marks.extend(greeting_mark(greeting, fit.rect(inked), ink));
        }
    }
    // A bow is tied last, over whatever lies on its ribbon.
    for part in &card.parts {
        if let PartKind::Ribbon(ribbon, true) = part.kind {
            let rect = fit.rect(part.rect);
            let wide = rect.size.width.min(rect.size.height);
            marks.extend(bow_marks(middle(rect), wide, ribbon_color(plan, ribbon)));
        }
    }
    marks
}

fn ribbon_color(plan: &Plan, ribbon: usize) -> Color {
    plan.project.ribbons.get(ribbon).and_then(|ribbon| Color::parse(&ribbon.color)).unwrap_or(INK)
}

fn part_marks(plan: &Plan, faces: &Faces, card: &Card, part: &CardPart, fit: Fit) -> Vec<Mark> {
    let rect = fit.rect(part.rect);
    let inch = fit.length(Length::INCH);
    match part.kind {
        PartKind::Patterned { layout, piece, design, side, .. } => {
            let mut marks = lifted(rect, inch, 1);
            match piece_picture(plan, faces, layout, piece, design, side, rect.size) {
                Some(picture) => marks.push(Mark::Image { picture, rect, clip: rect }),
                None => marks.push(Mark::fill(rect, WHITE)),
            }
            marks.push(Mark::frame(rect, Pen::solid(INK.with_alpha(60), hair())));
            marks
        }
        PartKind::Cardstock(stock) => {
            let color = stock_color(plan, stock);
            let mut marks = lifted(rect, inch, 1);
            marks.extend([Mark::fill(rect, color), Mark::frame(rect, edge(color))]);
            marks
        }
        PartKind::Strip(stock, _) => {
            let color = stock_color(plan, stock);
            let raised = matches!(
                plan.project.layer(card.recipe, part.layer).map(|l| &l.material),
                Some(cards::model::Material::Strip { foam_squares, .. }) if *foam_squares > 0
            );
            let mut marks = lifted(rect, inch, if raised { 3 } else { 1 });
            marks.extend([Mark::fill(rect, color), Mark::frame(rect, edge(color))]);
            marks
        }
        PartKind::Ribbon(ribbon, _) => ribbon_marks(rect, ribbon_color(plan, ribbon)),
    }
}

/// The part of a print that a piece is cut from, the way it stands on the card.
pub(super) fn piece_picture(
    plan: &Plan,
    faces: &Faces,
    layout: usize,
    piece: usize,
    design: usize,
    side: Side,
    drawn: Size,
) -> Option<Picture> {
    let layout = plan.layouts.get(layout)?;
    let piece = layout.pieces.get(piece)?;
    let picture = faces.get(&(layout.pack, design, side))?;
    let sheet = plan.project.packs.get(layout.pack)?.sheet;
    let printed = plan.project.design(layout.pack, design)?;
    let up = layout.sheets.iter().find(|used| used.design == design).map_or(side, |used| used.side);
    let cut_from = if side == up { piece.rect } else { printed.on_other_side(piece.rect, sheet) };
    let (wide, tall) = (pixels(drawn.width), pixels(drawn.height));
    let (wide, tall) = if piece.turned { (tall, wide) } else { (wide, tall) };
    // More pixels than the picture has would show nothing more.
    let wide = wide.min(own(picture.width_px(), piece.rect.size.width, sheet.width));
    let tall = tall.min(own(picture.height_px(), piece.rect.size.height, sheet.height));
    let cut = picture.part(shares_of(cut_from, sheet), wide, tall);
    // A turned piece lies with its top to the right.
    Some(if piece.turned { cut.turned(3) } else { cut })
}

/// How many of a picture's `pixels` lie on a part of the sheet.
fn own(pixels: u32, part: Length, whole: Length) -> u32 {
    let ticks = i128::from(whole.ticks()).max(1);
    let px = (i128::from(pixels) * i128::from(part.ticks()) + ticks / 2) / ticks;
    u32::try_from(px).unwrap_or(1).max(1)
}

/// Where a part of a sheet begins and ends, as shares of its width and height: left, top, right, bottom.
pub(super) fn shares_of(part: Rect, sheet: Size) -> [f64; 4] {
    let share = |length: Length, whole: Length| length.to_points() / whole.to_points().max(1.0);
    [
        share(part.x, sheet.width),
        share(part.y, sheet.height),
        share(part.right(), sheet.width),
        share(part.bottom(), sheet.height),
    ]
}

/// Pixels that a drawn length needs.
pub(super) fn pixels(drawn: Length) -> u32 {
    let px = drawn.ticks().max(0) / (Length::INCH.ticks() / i64::from(PER_INCH));
    u32::try_from(px).unwrap_or(1).clamp(1, 4_000)
}

/// The colour of a cardstock, white if it cannot be read.
pub(super) fn stock_color(plan: &Plan, stock: usize) -> Color {
    plan.project.cardstocks.get(stock).and_then(|stock| Color::parse(&stock.color)).unwrap_or(WHITE)
}

fn hair() -> Length {
    share(pt(1), 2, 5)
}

fn edge(color: Color) -> Pen {
    Pen::solid(color.mix(INK, 70), hair())
}

/// A soft shadow: the layer lies on something. `inch` is an inch at this scale.
fn lifted(rect: Rect, inch: Length, by: i64) -> Vec<Mark> {
    let step = share(inch, by, 110);
    (1..=3)
        .map(|ring| {
            let grown = inset(rect, -share(step, ring - 1, 2));
            let moved = Rect::new(grown.x + share(step, 1, 2), grown.y + step, grown.size);
            Mark::fill(moved, INK.with_alpha(22))
        })
        .collect()
}

/// The greeting stamped on a part of a card, and where its ink lies on the front.
pub(super) fn stamped_on<'a>(plan: &'a Plan, recipe: &Recipe, part: &CardPart) -> Option<(&'a Greeting, Rect)> {
    let (greeting, spot) = recipe.layers.get(part.layer)?.greeting()?;
    let greeting = plan.project.greetings.get(greeting)?;
    let ink = stamping::place(part.rect.size, greeting, spot).ink;
    Some((greeting, Rect::new(part.rect.x + ink.x, part.rect.y + ink.y, ink.size)))
}

/// What a greeting is stamped on.
#[derive(Debug, Clone, PartialEq)]
pub enum GreetingGround {
    /// A cardstock, by its index.
    Cardstock(usize),
    /// The part of a print that lies under its ink.
    Print {
        /// Which face: pack, design, side.
        face: (usize, usize, Side),
        /// Its pixels.
        picture: Picture,
        /// Pixels to an inch of the paper.
        per_inch: f64,
    },
}

/// Every piece of paper of the plan with a greeting on it: which card (the first of those alike), which greeting, on what;
/// prints only where `faces` has them.
pub fn greeting_grounds(plan: &Plan, faces: &Faces) -> Vec<(u32, usize, GreetingGround)> {
    let mut seen = BTreeSet::new();
    let mut all = Vec::new();
    for card in &plan.cards {
        let Some(recipe) = plan.project.recipes.get(card.recipe) else { continue };
        for part in &card.parts {
            let Some((greeting, spot)) = recipe.layers.get(part.layer).and_then(|layer| layer.greeting()) else {
                continue;
            };
            let Some(stamp) = plan.project.greetings.get(greeting) else { continue };
            let ink = stamping::place(part.rect.size, stamp, spot).ink;
            let found = match part.kind {
                PartKind::Cardstock(stock) | PartKind::Strip(stock, _) => {
                    seen.insert((greeting, stock, None)).then_some(GreetingGround::Cardstock(stock))
                }
                PartKind::Patterned { layout, piece, design, side, .. } => {
                    let alike = (layout, piece, design, side, ink.x, ink.y);
                    if !seen.insert((greeting, 0, Some(alike))) {
                        continue;
                    }
                    print_under(plan, faces, (layout, piece, design, side), part.rect.size, ink)
                }
                PartKind::Ribbon(..) => None,
            };
            all.extend(found.map(|ground| (card.number, greeting, ground)));
        }
    }
    all
}

/// The part of a print under the ink of a greeting on one of its pieces.
fn print_under(
    plan: &Plan,
    faces: &Faces,
    (layout, piece, design, side): (usize, usize, usize, Side),
    size: Size,
    ink: Rect,
) -> Option<GreetingGround> {
    let whole = piece_picture(plan, faces, layout, piece, design, side, size)?;
    let per_inch = f64::from(whole.width_px()) / (size.width.to_points() / 72.0).max(1e-9);
    let shares = shares_of(ink, size).map(|share| share.clamp(0.0, 1.0));
    let (wide, tall) = (pixels(ink.size.width), pixels(ink.size.height));
    let wide = wide.min(own(whole.width_px(), ink.size.width, size.width));
    let tall = tall.min(own(whole.height_px(), ink.size.height, size.height));
    let picture = whole.part(shares, wide, tall);
    let pack = plan.layouts.get(layout)?.pack;
    Some(GreetingGround::Print { face: (pack, design, side), picture, per_inch })
}

/// What a greeting's stamp leaves, over its ink: its outline where that is known, else its words, as wide or as tall as
/// the ink, whichever is reached first.
pub(super) fn greeting_mark(greeting: &Greeting, inked: Rect, ink: Color) -> Option<Mark> {
    if let Some(mark) = stamping::mark_of(greeting) {
        let [left, top, right, bottom] = mark.bounds();
        let share = |at: f64, from: f64, to: f64, long: Length| {
            points(long.to_points() * ((at - from) / (to - from).max(1e-9)).clamp(0.0, 1.0))
        };
        let place = |p: &(f64, f64)| {
            let (x, y) = (share(p.0, left, right, inked.size.width), share(p.1, top, bottom, inked.size.height));
            Point::new(inked.x + x, inked.y + y)
        };
        return Some(Mark::path(super::stamped::ordered(mark.rims(), place), ink));
    }
    let words = &greeting.words;
    let trial = shape(words, Style::new(Face::Italic, 100));
    let tall = trial.above + trial.below;
    if trial.width <= Length::ZERO || tall <= Length::ZERO {
        return None;
    }
    let by_width = share(trial.style.size, inked.size.width.ticks(), trial.width.ticks());
    let by_height = share(trial.style.size, inked.size.height.ticks(), tall.ticks());
    let line = shape(words, Style { face: Face::Italic, size: by_width.min(by_height) });
    let centre = middle(inked);
    let base = centre.y + half(line.above - line.below);
    // Drawn, not written: on a small picture of a card the words would be smaller than any a page may hold.
    Some(outlined(&line, Point::new(centre.x - half(line.width), base), ink))
}

fn ribbon_marks(rect: Rect, color: Color) -> Vec<Mark> {
    let level = rect.size.width >= rect.size.height;
    let wide = if level { rect.size.height } else { rect.size.width };
    let line = share(wide, 1, 9);
    let dark = color.mix(INK, 60);
    let mut marks = vec![Mark::fill(rect, color)];
    // Woven edges.
    if level {
        for y in [rect.y, rect.bottom() - line] {
            marks.push(Mark::fill(Rect::new(rect.x, y, Size::new(rect.size.width, line)), dark));
        }
    } else {
        for x in [rect.x, rect.right() - line] {
            marks.push(Mark::fill(Rect::new(x, rect.y, Size::new(line, rect.size.height)), dark));
        }
    }
    marks
}

/// A bow of ribbon `wide`: two tails, two loops, a knot.
fn bow_marks(at: Point, wide: Length, color: Color) -> Vec<Mark> {
    let to = |x: i64, y: i64| Point::new(at.x + share(wide, x, 10), at.y + share(wide, y, 10));
    let pen = Pen::solid(color.mix(INK, 110), share(wide, 1, 14));
    let shape = |stretches: Vec<Stretch>, fill: Color| Mark::Shape {
        outline: Outline::Path(stretches),
        fill: Some(fill),
        pen: Some(pen.clone()),
    };
    let mut marks = Vec::new();
    for side in [-1, 1] {
        marks.push(shape(
            vec![
                Stretch::Move(to(0, 0)),
                Stretch::Curve(to(side * 8, 3), to(side * 17, 8), to(side * 23, 17)),
                Stretch::Line(to(side * 26, 12)),
                Stretch::Line(to(side * 31, 13)),
                Stretch::Curve(to(side * 24, 4), to(side * 14, -1), to(0, -3)),
                Stretch::Close,
            ],
            color.mix(INK, 24),
        ));
    }
    for side in [-1, 1] {
        marks.push(shape(
            vec![
                Stretch::Move(to(0, 0)),
                Stretch::Curve(to(side * 8, -16), to(side * 24, -16), to(side * 23, -3)),
                Stretch::Curve(to(side * 22, 8), to(side * 8, 7), to(0, 0)),
                Stretch::Close,
            ],
            color,
        ));
        marks.push(shape(
            vec![
                Stretch::Move(to(side * 4, -1)),
                Stretch::Curve(to(side * 10, -8), to(side * 17, -8), to(side * 17, -2)),
                Stretch::Curve(to(side * 16, 3), to(side * 9, 3), to(side * 4, -1)),
                Stretch::Close,
            ],
            color.mix(INK, 70),
        ));
    }
    let knot = Rect::new(at.x - share(wide, 4, 10), at.y - share(wide, 5, 10), Size::new(share(wide, 8, 10), wide));
    marks.push(Mark::fill(knot, color.mix(WHITE, 20)));
    marks.push(Mark::frame(knot, pen));
    marks
}
