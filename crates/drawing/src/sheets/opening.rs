//! The opening page: every kind of finished card, in proportion, with its count.

use cards::Plan;
use cards::model::Side;
use cards::plan::{Card, PartKind};
use measure::{Length, Rect, Size};

use super::look::{ACCENT, CREAM, INK, RULE, SOFT, half, pt, say, sixteenths};
use super::pages::{Pages, fitted};
use super::told::Told;
use super::{Faces, card};
use crate::scene::{Mark, Pen, Point, Role, share};
use crate::text::{Align, Face, Style, place, shape, wrap};

/// Cards that look alike.
struct Kind<'a> {
    card: &'a Card,
    count: u32,
}

type Likeness = Vec<(usize, usize, usize)>;

/// What makes two cards look alike: recipe, pack, design, and what each layer is.
fn likeness(card: &Card) -> Likeness {
    let mut key = vec![(card.recipe, card.pack, card.design), (card.batch, 0, 4)];
    key.extend(card.parts.iter().map(|part| match part.kind {
        PartKind::Patterned { layout, design, side, .. } => (layout * 2 + usize::from(side == Side::Back), design, 0),
        PartKind::Cardstock(stock) => (stock, 0, 1),
        PartKind::Strip(stock, greeting) => (stock, greeting, 2),
        PartKind::Ribbon(ribbon, bow) => (ribbon, usize::from(bow), 3),
    }));
    key
}

fn kinds(plan: &Plan) -> Vec<Kind<'_>> {
    let mut kinds: Vec<(Likeness, Kind<'_>)> = Vec::new();
    for card in &plan.cards {
        let key = likeness(card);
        match kinds.iter_mut().find(|(seen, _)| *seen == key) {
            Some((_, kind)) => kind.count += 1,
            None => kinds.push((key, Kind { card, count: 1 })),
        }
    }
    kinds.sort_by_key(|(_, kind)| {
        (kind.card.batch, kind.card.recipe, kind.card.pack, kind.card.design, kind.card.number)
    });
    kinds.into_iter().map(|(_, kind)| kind).collect()
}

/// The design's letter and the name of the face a card shows.
fn names(plan: &Plan, card: &Card) -> (String, String) {
    let Some(design) = plan.project.design(card.pack, card.design) else {
        return (String::new(), String::new());
    };
    (design.letter.clone(), design.name.clone())
}

fn mat(plan: &Plan, card: &Card) -> Option<String> {
    let stock = card.parts.iter().find_map(|part| match part.kind {
        PartKind::Cardstock(stock) => Some(stock),
        _ => None,
    })?;
    plan.project.cardstocks.get(stock).map(|_| super::swatch::stock_name(plan, stock))
}

/// The partner's letter, if a piece of another design lies on the card.
fn partner(plan: &Plan, card: &Card) -> Option<String> {
    card.parts.iter().find_map(|part| match part.kind {
        PartKind::Patterned { layout, design, .. } if design != card.design => {
            let pack = plan.layouts.get(layout)?.pack;
            plan.project.design(pack, design).map(|design| design.letter.clone())
        }
        _ => None,
    })
}

/// The words that stand for the picture of a card.
pub(super) fn alt(plan: &Plan, card: &Card) -> String {
    let recipe = plan.project.recipes.get(card.recipe).map_or("", |recipe| recipe.name.as_str());
    let (letter, name) = names(plan, card);
    let known = plan.project.recipes.get(card.recipe);
    let words = card.parts.iter().find_map(|part| {
        let (greeting, _) = card::stamped_on(plan, known?, part)?;
        Some(greeting.words.clone())
    });
    let args = [("recipe", recipe.into()), ("letter", letter.into()), ("name", name.into())];
    match words {
        Some(words) => {
            let [recipe, letter, name] = args;
            say("page-card-alt-words", &[recipe, letter, name, ("words", words.into())])
        }
        None => say("page-card-alt", &args),
    }
}

/// Draws the opening page, and more of its kind if there are many kinds of card.
pub(super) fn opening(plan: &Plan, faces: &Faces, told: Told, pages: &mut Pages) {
    header(plan, told, pages);
    let kinds = kinds(plan);
    if kinds.is_empty() {
        pages.say(&say("page-no-cards", &[]));
    }
    let mut rest = kinds.as_slice();
    let mut first = true;
    while !rest.is_empty() {
        // Batches are never mixed on a board.
        let batch = rest[0].card.batch;
        let these = &rest[..rest.iter().take_while(|kind| kind.card.batch == batch).count()];
        match (first, batch_name(plan, batch)) {
            (true, None) => {}
            (true, Some(name)) => pages.section(&say("page-batch-cards", &batch_facts(plan, batch, &name))),
            (false, None) => pages.chapter(&say("page-more-cards", &[])),
            (false, Some(name)) => pages.chapter(&say("page-batch-cards", &batch_facts(plan, batch, &name))),
        }
        // Few cards a page, drawn large, rather than many small ones.
        let most = match (first, these.len()) {
            (true, _) if told.large() => 2,
            (false, _) if told.large() => 4,
            (true, 0..=8) => 8,
            (true, _) => 6,
            (false, _) => 9,
        };
        let facts = match (first, told.large()) {
            (true, false) => sixteenths(17),
            (true, true) => (told.item().leading() + pt(4)) * 4 + pt(16),
            (false, _) => Length::ZERO,
        };
        let board = Rect::new(pages.left(), pages.y, Size::new(pages.width(), pages.left_over() - facts));
        let (columns, rows) = grid(plan, these, board.size, most, told);
        let here = these.len().min(columns * rows);
        let board = Rect { size: fitted_board(plan, &these[..here], board.size, columns, told), ..board };
        draw_board(plan, faces, &these[..here], board, columns, pages);
        rest = &rest[here..];
        pages.y = board.bottom();
        if first {
            facts_row(plan, told, pages);
        }
        first = false;
    }
}

/// What a batch is called, where there are several.
pub(super) fn batch_name(plan: &Plan, batch: usize) -> Option<String> {
    (plan.batches.len() > 1).then(|| plan.batches.get(batch).map(|batch| batch.name.clone()))?
}

/// A title, with the batch where there are several.
pub(super) fn of_batch(plan: &Plan, batch: usize, title: String) -> String {
    match batch_name(plan, batch) {
        Some(name) => say("page-of-batch", &[("title", title.into()), ("name", name.into())]),
        None => title,
    }
}

fn batch_facts(plan: &Plan, batch: usize, name: &str) -> [(&'static str, words::Arg); 2] {
    let count = plan.cards.iter().filter(|card| card.batch == batch).count();
    [("name", name.into()), ("count", count.into())]
}

fn header(plan: &Plan, told: Told, pages: &mut Pages) {
    let project = &plan.project;
    let by = [project.maker.as_deref(), project.date.as_deref()].into_iter().flatten().collect::<Vec<_>>().join(" · ");
    pages.gap(pt(2));
    if !by.is_empty() {
        pages.block(&by, told.small(), SOFT, Role::Paragraph);
        pages.gap(pt(2));
    }
    let style = if shape(&project.name, told.title()).width > pages.width() {
        Style::new(Face::Semibold, 25)
    } else {
        told.title()
    };
    pages.block(&project.name, style, INK, Role::Heading(1));
    pages.gap(pt(6));
    pages.push(Mark::fill(Rect::new(pages.left(), pages.y, Size::new(sixteenths(14), pt(2))), ACCENT));
    pages.gap(pt(14));
    if told.edition.unit != project.unit {
        let id = if told.edition.unit == measure::Unit::Millimetre { "page-edition-mm" } else { "page-edition-inches" };
        pages.note(&say(id, &[]));
        pages.gap(pt(6));
    }
}

/// Room for the caption under a card.
fn caption_tall(told: Told) -> Length {
    if told.large() { told.strong().leading() * 5 + pt(10) } else { pt(62) }
}

/// Columns and rows that show the cards largest.
fn grid(plan: &Plan, kinds: &[Kind<'_>], board: Size, most: usize, told: Told) -> (usize, usize) {
    let count = kinds.len().min(most).max(1);
    let widest = largest(plan, kinds);
    let drawn = |columns: usize| {
        let rows = count.div_ceil(columns);
        let cell = cell_size(board, columns, rows, told);
        let by_width = share(widest.height, cell.width.ticks(), widest.width.ticks().max(1));
        by_width.min(cell.height)
    };
    let best =
        (1..=count.min(if told.large() { 2 } else { 4 })).max_by_key(|&columns| (drawn(columns), columns)).unwrap_or(1);
    (best, count.div_ceil(best))
}

fn largest(plan: &Plan, kinds: &[Kind<'_>]) -> Size {
    let sizes =
        kinds.iter().filter_map(|kind| plan.project.recipes.get(kind.card.recipe)).map(|recipe| recipe.finished);
    sizes.fold(Size::new(pt(1), pt(1)), |a, b| Size::new(a.width.max(b.width), a.height.max(b.height)))
}

/// The room one card has on the board, its caption and the space around taken off.
fn cell_size(board: Size, columns: usize, rows: usize, told: Told) -> Size {
    let (columns, rows) = (i64::try_from(columns).unwrap_or(1), i64::try_from(rows).unwrap_or(1));
    Size::new(
        share(board.width - pt(24), 1, columns) - pt(26),
        share(board.height - pt(20), 1, rows) - caption_tall(told) - pt(14),
    )
}

/// The board no taller than its cards need.
fn fitted_board(plan: &Plan, kinds: &[Kind<'_>], board: Size, columns: usize, told: Told) -> Size {
    let rows = kinds.len().div_ceil(columns.max(1));
    let widest = largest(plan, kinds);
    let cell = Rect::new(Length::ZERO, Length::ZERO, cell_size(board, columns, rows, told));
    let tall = super::look::Fit::into(widest, cell).length(widest.height);
    let needed = (tall + caption_tall(told) + pt(34)) * i64::try_from(rows).unwrap_or(1) + pt(20);
    Size::new(board.width, board.height.min(needed))
}

fn draw_board(plan: &Plan, faces: &Faces, kinds: &[Kind<'_>], board: Rect, columns: usize, pages: &mut Pages) {
    pages.push(Mark::role(Role::Artifact, vec![Mark::fill(board, CREAM)]));
    let rows = kinds.len().div_ceil(columns);
    let inner =
        Rect::new(board.x + pt(12), board.y + pt(14), Size::new(board.size.width - pt(24), board.size.height - pt(20)));
    let told = pages.told;
    let cell = cell_size(board.size, columns, rows, told);
    // One scale for all, so that a large card looks large beside a small one.
    let widest = largest(plan, kinds);
    let scale = super::look::Fit::into(widest, Rect::new(Length::ZERO, Length::ZERO, cell));
    let count = |n: usize| i64::try_from(n).unwrap_or(0);
    let step = Size::new(share(inner.size.width, 1, count(columns)), share(inner.size.height, 1, count(rows)));
    let tall = scale.length(widest.height);
    for (index, kind) in kinds.iter().enumerate() {
        let (row, column) = (index / columns, index % columns);
        let in_row = (kinds.len() - row * columns).min(columns);
        // A row that is not full stands in the middle.
        let indent = half(step.width * count(columns - in_row));
        let centre = inner.x + indent + step.width * count(column) + half(step.width);
        let top =
            inner.y + step.height * count(row) + half((step.height - tall - caption_tall(told)).max(Length::ZERO));
        let Some(recipe) = plan.project.recipes.get(kind.card.recipe) else { continue };
        let size = scale.size(recipe.finished);
        let front = Rect::new(centre - half(size.width), top + tall - size.height, size);
        let marks = card::marks(plan, faces, kind.card, front);
        pages.push(Mark::role(Role::Figure(alt(plan, kind.card)), marks));
        let wide = step.width - pt(10);
        let below = top + tall + pt(if told.large() { 26 } else { 22 });
        let caption = if told.large() {
            caption(plan, kind, told, (Point::new(centre - half(wide), below), Align::Start), wide)
        } else {
            caption(plan, kind, told, (Point::new(centre, below), Align::Middle), wide)
        };
        pages.push(Mark::role(Role::Paragraph, caption));
    }
}

fn caption(plan: &Plan, kind: &Kind<'_>, told: Told, (at, align): (Point, Align), wide: Length) -> Vec<Mark> {
    let (letter, name) = names(plan, kind.card);
    let mut cards = say("page-caption-count", &[("count", kind.count.into())]);
    if plan.project.recipes.len() > 1
        && let Some(recipe) = plan.project.recipes.get(kind.card.recipe)
    {
        cards = format!("{cards}, {}", recipe.name);
    }
    let mut parts = Vec::new();
    if let Some(mat) = mat(plan, kind.card) {
        parts.push(say("page-caption-mat", &[("name", mat.into())]));
    }
    if let Some(partner) = partner(plan, kind.card) {
        parts.push(say("page-caption-partner", &[("letter", partner.into())]));
    }
    let mut marks = Vec::new();
    let mut y = at.y;
    let texts = [
        (format!("{letter} · {name}"), told.strong(), INK),
        (cards, told.small_strong(), ACCENT),
        (parts.join(", "), told.small(), SOFT),
    ];
    // In large print nothing is cut off: five lines are kept, words go over to the next.
    let mut left = if told.large() { 5 } else { 3 };
    for (text, style, color) in texts {
        let lines = wrap(&text, style, wide);
        let most = if told.large() { left } else { 1 };
        let lines = if told.large() || lines.len() <= 1 { lines } else { vec![fitted(&text, style, wide)] };
        for line in lines.into_iter().take(most) {
            marks.push(place(line, Point::new(at.x, y), align, color));
            y += style.leading();
            left -= 1;
        }
    }
    marks
}

/// The numbers one asks for first, large, side by side.
fn facts_row(plan: &Plan, told: Told, pages: &mut Pages) {
    let counts = &plan.counts;
    let sizes: Vec<String> = {
        let mut seen: Vec<Size> = Vec::new();
        for (recipe, count) in plan.project.recipes.iter().zip(&counts.cards_by_recipe) {
            if *count > 0 && !seen.contains(&recipe.finished) {
                seen.push(recipe.finished);
            }
        }
        seen.into_iter().map(|size| told.bare_size(size)).collect()
    };
    let unit = match told.edition.unit {
        measure::Unit::Inch => "in",
        measure::Unit::Millimetre => "mm",
    };
    let mut facts = vec![
        (counts.cards.to_string(), say("page-fact-cards", &[("count", counts.cards.into())])),
        (counts.paper_sheets.to_string(), say("page-fact-sheets", &[("count", counts.paper_sheets.into())])),
    ];
    if let [size] = sizes.as_slice() {
        facts.push((size.clone(), say("page-fact-finished", &[("unit", unit.into())])));
    }
    // Where sheets are cut in several ways, each way's page tells its own.
    if let [layout] = plan.layouts.as_slice() {
        let tally = layout.cut_plan.tally();
        facts.push((
            tally.settings.to_string(),
            say("page-fact-settings", &[("count", tally.settings.into()), ("cuts", tally.cuts.into())]),
        ));
    }
    if told.large() {
        pages.gap(pt(12));
        for (number, what) in facts {
            pages.item(&format!("{number} {what}"));
        }
        return;
    }
    let count = i64::try_from(facts.len()).unwrap_or(1);
    let wide = share(pages.width(), 1, count);
    let top = pages.y + pt(18);
    for (index, (number, what)) in (0_i64..).zip(facts) {
        let x = pages.left() + wide * index;
        let centre = x + half(wide);
        let large = fitted(&number, Style::new(Face::Semibold, 24), wide - pt(12));
        let small = fitted(&what, told.small(), wide - pt(8));
        pages.push(Mark::role(
            Role::Paragraph,
            vec![
                place(large, Point::new(centre, top + pt(22)), Align::Middle, INK),
                place(small, Point::new(centre, top + pt(40)), Align::Middle, SOFT),
            ],
        ));
        if index > 0 {
            let line = (Point::new(x, top + pt(4)), Point::new(x, top + pt(42)));
            pages.push(Mark::line(line.0, line.1, Pen::solid(RULE, pt(1))));
        }
    }
    pages.y = top + pt(46);
}
