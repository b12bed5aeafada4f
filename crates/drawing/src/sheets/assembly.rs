//! Putting a card together: its layers pulled apart, the borders between them, one act after the other.

use cards::Plan;
use cards::model::{Fold, Material, Recipe};
use cards::plan::{Card, CardPart, PartKind};
use measure::{Length, Rect, Size};

use super::card::piece_picture;
use super::edition::Hand;
use super::labels::{Placer, centred};
use super::look::{ACCENT, CREAM, Fit, INK, SOFT, WHITE, half, pt, say, sixteenths};
use super::pages::Pages;
use super::swatch::Swatch;
use super::told::Told;
use super::{Faces, card};
use crate::scene::{Mark, Pen, Point, Role, share};
use crate::text::{Align, Face, Style, place, shape, wrap};

/// One layer as it is shown: the base first.
struct Shown<'a> {
    /// Its layer in the recipe; `None` for the base.
    part: Option<&'a CardPart>,
    name: String,
    rect: Rect,
    /// Which of the shown ones it lies on.
    on: Option<usize>,
}

/// A page for each recipe of which cards are made.
pub(super) fn assembly(plan: &Plan, faces: &Faces, told: Told, pages: &mut Pages) {
    for (index, recipe) in plan.project.recipes.iter().enumerate() {
        let Some(card) = plan.cards.iter().find(|card| card.recipe == index) else { continue };
        let several = plan.project.recipes.len() > 1;
        let id = if several { "page-assembly-title-named" } else { "page-assembly-title" };
        pages.chapter(&say(id, &[("name", (&recipe.name).into())]));
        let layers = layers(recipe, card);
        pages.say(&say("page-assembly-lead", &[]));
        pages.gap(pt(6));
        apart(plan, faces, card, &layers, told, pages);
        borders(plan, faces, recipe, card, &layers, told, pages);
        pages.section(&say("page-assembly-steps", &[]));
        for (number, act) in (1_u32..).zip(acts(plan, recipe, &layers, told)) {
            pages.numbered(number, &act);
        }
        pages.note(&say("page-caution-glue", &[]));
        if layers.iter().any(Shown::is_ribbon) {
            pages.note(&say("page-caution-ribbon", &[]));
        }
    }
}

fn layers<'a>(recipe: &Recipe, card: &'a Card) -> Vec<Shown<'a>> {
    let front = Rect::new(Length::ZERO, Length::ZERO, recipe.finished);
    let mut all = vec![Shown { part: None, name: say("page-needs-base", &[]), rect: front, on: None }];
    for part in &card.parts {
        let name = recipe.layers.get(part.layer).map(|layer| layer.name.clone()).unwrap_or_default();
        // What it lies on is the topmost layer below that reaches all round it.
        let on = all.iter().rposition(|below| !below.is_ribbon() && below.rect.contains(part.rect)).unwrap_or(0);
        all.push(Shown { part: Some(part), name, rect: part.rect, on: Some(on) });
    }
    all
}

impl Shown<'_> {
    fn is_ribbon(&self) -> bool {
        matches!(self.part.map(|part| &part.kind), Some(PartKind::Ribbon(..)))
    }
}

/// What a layer is made of, in a few words: a print's letter, a colour with its letters.
fn made_of(plan: &Plan, recipe: &Recipe, layer: &Shown<'_>) -> (String, Option<Swatch>) {
    let stock = |index| (super::swatch::stock_name(plan, index), Some(Swatch::stock(plan, index)));
    match layer.part.map(|part| &part.kind) {
        None => stock(recipe.base),
        Some(PartKind::Cardstock(index) | PartKind::Strip(index, _)) => stock(*index),
        Some(PartKind::Ribbon(index, _)) => {
            let swatch = Swatch::ribbon(plan, *index);
            let name = plan.project.ribbons.get(*index).map_or("", |ribbon| ribbon.name.as_str());
            (format!("{name}\u{a0}({})", swatch.letters), Some(swatch))
        }
        Some(PartKind::Patterned { layout, design, .. }) => {
            let pack = plan.layouts.get(*layout).map_or(0, |layout| layout.pack);
            let letter = plan.project.design(pack, *design).map(|design| design.letter.clone()).unwrap_or_default();
            (say("page-assembly-print", &[("letter", letter.into())]), None)
        }
    }
}

/// The layers side by side, in the order in which they lie, each with where the next one goes.
fn apart(plan: &Plan, faces: &Faces, card: &Card, layers: &[Shown<'_>], told: Told, pages: &mut Pages) {
    let Some(recipe) = plan.project.recipes.get(card.recipe) else { return };
    let most = if told.large() { 2 } else { 4 };
    // Rows as full as each other.
    let rows = layers.len().div_ceil(most);
    let columns = layers.len().div_ceil(rows.max(1)).max(1);
    let count = |n: usize| i64::try_from(n).unwrap_or(1);
    let wide = share(pages.width(), 1, count(columns));
    let gap = pt(16);
    let tallest = sixteenths(if told.large() { 48 } else { 43 });
    let natural = Rect::new(Length::ZERO, Length::ZERO, recipe.finished);
    let room = Size::new(wide - gap, tallest);
    let scale = Fit::into(natural.size, Rect::new(Length::ZERO, Length::ZERO, room));
    let drawn = scale.size(natural.size);
    let style = told.small();
    let captions: Vec<Vec<crate::text::Line>> =
        layers.iter().map(|layer| caption(plan, recipe, layer, told, wide - gap)).collect();
    for (row, chunk) in (0..).zip(layers.chunks(columns)) {
        let first = row * columns;
        let lines = captions[first..first + chunk.len()].iter().map(Vec::len).max().unwrap_or(0);
        let below = style.leading() * count(lines) + pt(24);
        pages.room(drawn.height + below + pt(8));
        let top = pages.y;
        let mut marks = Vec::new();
        for column in 0..chunk.len() {
            let number = first + column;
            let at = Point::new(pages.left() + wide * count(column), top);
            let here = Fit::scaled(at, drawn.width, natural.size.width);
            marks.extend(one_apart(plan, faces, recipe, layers, number, told, here));
            let mut base = top + drawn.height + style.size + pt(8);
            for (index, line) in captions[number].iter().enumerate() {
                let color = if index == 0 { INK } else { SOFT };
                let place_at = Point::new(at.x, base);
                marks.push(place(line.clone(), place_at, Align::Start, color));
                base += style.leading();
            }
            if column + 1 < chunk.len() {
                let y = top + half(drawn.height);
                let x = at.x + drawn.width + half(wide - drawn.width);
                marks.extend(super::sketch::arrow(Point::new(x, y), pt(13), 1));
            }
        }
        let alt = say("page-assembly-alt", &[("layers", names(layers).into())]);
        pages.push(Mark::role(Role::Figure(alt), marks));
        pages.gap(drawn.height + below);
    }
}

fn names(layers: &[Shown<'_>]) -> String {
    layers.iter().map(|layer| layer.name.clone()).collect::<Vec<_>>().join(", ")
}

fn caption(plan: &Plan, recipe: &Recipe, layer: &Shown<'_>, told: Told, wide: Length) -> Vec<crate::text::Line> {
    let size = told.size(layer.rect.size);
    let (of, _) = made_of(plan, recipe, layer);
    let mut lines = wrap(&layer.name, told.small_strong(), wide);
    lines.extend(wrap(&size, told.small(), wide));
    lines.extend(wrap(&of, told.small(), wide));
    lines
}

/// One layer alone, where it lies on the card, with the outlines of what lies right on it.
fn one_apart(
    plan: &Plan,
    faces: &Faces,
    recipe: &Recipe,
    layers: &[Shown<'_>],
    number: usize,
    told: Told,
    fit: Fit,
) -> Vec<Mark> {
    let layer = &layers[number];
    let front = fit.rect(layers[0].rect);
    let rect = fit.rect(layer.rect);
    let mut marks = Vec::new();
    if number > 0 {
        // The card's edge, pale, says where on it this layer lies.
        marks.push(Mark::fill(front, CREAM.mix(WHITE, 120)));
        let pale = Pen { color: SOFT.mix(WHITE, 120), width: share(pt(1), 1, 2), dash: vec![pt(1), pt(2)] };
        marks.push(Mark::frame(front, pale));
    }
    match layer.part.map(|part| &part.kind) {
        Some(PartKind::Patterned { layout, piece, design, side, .. }) => {
            match piece_picture(plan, faces, *layout, *piece, *design, *side, rect.size) {
                Some(picture) => marks.push(Mark::Image { picture, rect, clip: rect }),
                None => marks.push(Mark::fill(rect, WHITE)),
            }
        }
        _ => {
            if let (_, Some(swatch)) = made_of(plan, recipe, layer) {
                marks.extend(swatch.fill(rect));
            }
        }
    }
    marks.push(Mark::frame(rect, Pen::solid(INK, share(pt(1), 4, 5))));
    if let Some(part) = layer.part
        && let Some((greeting, on_front)) = card::stamped_on(plan, recipe, part)
    {
        let ink = crate::scene::Color::parse(&greeting.ink).unwrap_or(INK);
        // The layer is drawn where it is pulled to, not where it lies on the front.
        let inked = Rect::new(
            rect.x + fit.length(on_front.x - part.rect.x),
            rect.y + fit.length(on_front.y - part.rect.y),
            fit.size(greeting.inked),
        );
        if let Some(words) = card::greeting_mark(greeting, inked, ink) {
            let around = super::look::inset(inked, -pt(2));
            marks.extend([Mark::fill(around, WHITE.with_alpha(200)), words]);
        }
    } else if let (_, Some(swatch)) = made_of(plan, recipe, layer) {
        let style = Style::new(Face::Bold, told.points(12));
        let label = centred(&swatch.letters, style, super::look::middle(rect), INK);
        let ground = super::look::inset(label.around, -pt(3));
        if rect.contains(ground) {
            marks.push(Mark::fill(ground, WHITE));
            marks.extend(label.marks);
        }
    }
    let under = Pen::solid(WHITE.with_alpha(190), share(pt(1), 5, 2));
    let ghost = Pen { color: INK, width: share(pt(1), 4, 5), dash: vec![pt(4), pt(3)] };
    for above in layers.iter().filter(|above| above.on == Some(number)) {
        marks.push(Mark::frame(fit.rect(above.rect), under.clone()));
        marks.push(Mark::frame(fit.rect(above.rect), ghost.clone()));
    }
    let badge = (number + 1).to_string();
    marks.extend(badge_at(&badge, Point::new(front.x + pt(9), front.y + pt(9))));
    marks
}

/// A number on a white disc's square.
fn badge_at(number: &str, at: Point) -> Vec<Mark> {
    let label = centred(number, Style::new(Face::Bold, 18), at, ACCENT);
    let ground = super::look::inset(Rect::new(at.x, at.y, Size::default()), -pt(11));
    let mut marks = vec![Mark::fill(ground, WHITE), Mark::frame(ground, Pen::solid(ACCENT, pt(1)))];
    marks.extend(label.marks);
    marks
}

/// The finished front with the width of every border beside it.
fn borders(
    plan: &Plan,
    faces: &Faces,
    recipe: &Recipe,
    card: &Card,
    layers: &[Shown<'_>],
    told: Told,
    pages: &mut Pages,
) {
    let shown: Vec<(&Shown<'_>, &Shown<'_>)> = layers
        .iter()
        .filter(|layer| !layer.is_ribbon())
        .filter_map(|layer| layer.on.and_then(|on| layers.get(on)).map(|below| (layer, below)))
        .collect();
    let style = Style::new(Face::Regular, told.points(11));
    let row = style.leading().max(pt(14));
    let tall = sixteenths(if told.large() { 48 } else { 40 });
    let natural = recipe.finished;
    let scale = Fit::into(natural, Rect::new(Length::ZERO, Length::ZERO, Size::new(sixteenths(40), tall)));
    let drawn = scale.size(natural);
    let count = |n: usize| i64::try_from(n).unwrap_or(1);
    let needed = drawn.height + pt(16) + row * count(shown.len()) + pt(16);
    pages.room(needed + told.subheading().leading() + pt(8));
    pages.section(&say("page-assembly-borders", &[]));
    let front = Rect::new(pages.left() + pt(2), pages.y + pt(2), drawn);
    let mut marks = card::marks(plan, faces, card, front);
    let fit = Fit::scaled(Point::new(front.x, front.y), drawn.width, natural.width);
    let page = Rect::new(pages.left(), pages.y, Size::new(pages.width(), needed));
    let mut placer = Placer::new(page);
    let pen = Pen::solid(INK, share(pt(1), 3, 4));
    let thin = Pen { color: SOFT, width: share(pt(1), 1, 2), dash: vec![pt(1), pt(2)] };
    for (index, (layer, below)) in (0_i64..).zip(&shown) {
        let (left, top) = (layer.rect.x - below.rect.x, layer.rect.y - below.rect.y);
        if left > Length::ZERO {
            // Below the card, one row for each layer.
            let y = front.bottom() + pt(14) + row * index;
            let (a, b) = (fit.point(below.rect.x, below.rect.y).x, fit.point(layer.rect.x, layer.rect.y).x);
            let foot = fit.point(layer.rect.x, layer.rect.bottom()).y;
            marks.push(Mark::line(Point::new(b, foot), Point::new(b, y), thin.clone()));
            marks.extend(ticked(Point::new(a, y), Point::new(b, y), &pen));
            let words = say(
                "page-assembly-left",
                &[("length", told.label(left).into()), ("name", (&layer.name).into()), ("below", (&below.name).into())],
            );
            let line = shape(&words, style);
            let at = Point::new(b + pt(6) + half(line.width), y);
            marks.extend(placer.first([centred(&words, style, at, INK)]).unwrap_or_default());
        }
        if top > Length::ZERO {
            // At its right, one column for each layer.
            let x = front.right() + pt(20) + pt(if told.large() { 70 } else { 46 }) * index;
            let (a, b) = (fit.point(below.rect.x, below.rect.y).y, fit.point(layer.rect.x, layer.rect.y).y);
            let side = fit.point(layer.rect.right(), layer.rect.y).x;
            marks.push(Mark::line(Point::new(side, b), Point::new(x, b), thin.clone()));
            marks.extend(ticked(Point::new(x, a), Point::new(x, b), &pen));
            let words = told.bare(top);
            let line = shape(&words, style);
            let at = Point::new(x + pt(8) + half(line.width), a + half(b - a).max(style.size));
            marks.extend(placer.first([centred(&words, style, at, INK)]).unwrap_or_default());
        }
    }
    let said: Vec<String> = shown.iter().map(|(layer, below)| border(layer, below, told)).collect();
    pages.push(Mark::role(Role::Figure(said.join(" ")), marks));
    pages.gap(needed);
}

/// A line with a tick at either end.
fn ticked(from: Point, to: Point, pen: &Pen) -> Vec<Mark> {
    let tick = pt(4);
    let level = from.y == to.y;
    let end = |at: Point| {
        let (a, b) = if level {
            (Point::new(at.x, at.y - tick), Point::new(at.x, at.y + tick))
        } else {
            (Point::new(at.x - tick, at.y), Point::new(at.x + tick, at.y))
        };
        Mark::line(a, b, pen.clone())
    };
    vec![Mark::line(from, to, pen.clone()), end(from), end(to)]
}

/// How much of the layer below shows round a layer.
fn border(layer: &Shown<'_>, below: &Shown<'_>, told: Told) -> String {
    let (l, b) = (layer.rect, below.rect);
    let (left, right) = (l.x - b.x, b.right() - l.right());
    let (top, bottom) = (l.y - b.y, b.bottom() - l.bottom());
    let name = |id: &str, args: Vec<(&str, words::Arg)>| {
        let mut all = vec![("name", words::Arg::from(&layer.name)), ("below", (&below.name).into())];
        all.extend(args);
        say(id, &all)
    };
    if left == right && top == bottom && left == top {
        return name("page-border-round", vec![("length", told.length(left).into())]);
    }
    let sides = if left == right && left == Length::ZERO {
        name("page-border-flush", Vec::new())
    } else if left == right {
        name("page-border-even", vec![("length", told.length(left).into())])
    } else {
        name("page-border-sides", vec![("left", told.length(left).into()), ("right", told.length(right).into())])
    };
    name(
        "page-border-each",
        vec![("sides", sides.into()), ("top", told.length(top).into()), ("bottom", told.length(bottom).into())],
    )
}

/// One act each, in the order of the table: what lies on the mat, the ribbon, the mat on the base, the strip, the bow.
fn acts(plan: &Plan, recipe: &Recipe, layers: &[Shown<'_>], told: Told) -> Vec<String> {
    let mut said = Vec::new();
    let material = |layer: &Shown<'_>| layer.part.and_then(|part| recipe.layers.get(part.layer)).map(|l| &l.material);
    for layer in layers {
        if let Some(part) = layer.part
            && let Some((greeting, ink)) = card::stamped_on(plan, recipe, part)
        {
            let (left, above) = (ink.x - part.rect.x, ink.y - part.rect.y);
            let middle = left - (part.rect.right() - ink.right());
            let facts = [
                ("words", (&greeting.words).into()),
                ("name", (&layer.name).into()),
                ("margin", told.length(left).into()),
                ("above", told.length(above).into()),
            ];
            let level = middle.max(-middle) < sixteenths(1);
            said.push(say(if level { "page-act-stamp" } else { "page-act-stamp-at" }, &facts));
        }
    }
    said.push(say(
        match recipe.fold {
            Fold::Flat => "page-act-flat",
            Fold::Side | Fold::Top => "page-act-fold",
            Fold::Gate | Fold::Zed => "page-act-folds",
        },
        &[],
    ));
    let put = |layer: &Shown<'_>| {
        let below = layer.on.and_then(|on| layers.get(on)).unwrap_or(layer);
        let foam = match material(layer) {
            Some(Material::Strip { foam_squares, .. }) => *foam_squares,
            _ => 0,
        };
        let args = [("name", (&layer.name).into()), ("below", (&below.name).into()), ("count", foam.into())];
        let act = say(if foam > 0 { "page-act-foam" } else { "page-act-glue" }, &args);
        format!("{act} {}", border(layer, below, told))
    };
    let strip = |layer: &&Shown<'_>| matches!(material(layer), Some(Material::Strip { .. }));
    let loose = |layer: &&Shown<'_>| !layer.is_ribbon() && !strip(layer);
    let ribbons: Vec<&Shown<'_>> = layers.iter().filter(|layer| layer.is_ribbon()).collect();
    let on_base = |layer: &&Shown<'_>| layer.on == Some(0);
    said.extend(layers.iter().filter(loose).filter(|layer| layer.on.is_some_and(|on| on > 0)).map(put));
    for ribbon in &ribbons {
        said.push(say("page-act-ribbon", &[("name", (&ribbon.name).into())]));
        said.push(say("page-act-ribbon-ends", &[("name", (&ribbon.name).into())]));
    }
    said.extend(layers.iter().filter(loose).filter(on_base).map(put));
    said.extend(layers.iter().filter(strip).map(put));
    if ribbons.iter().any(|ribbon| matches!(ribbon.part.map(|part| &part.kind), Some(PartKind::Ribbon(_, true)))) {
        let id = if told.edition.hand == Hand::Left { "page-act-bow-left" } else { "page-act-bow-right" };
        said.push(say(id, &[]));
    }
    if recipe.inside.is_some() {
        said.push(say("page-act-inside", &[]));
    }
    said.push(say("page-act-press", &[]));
    said
}
