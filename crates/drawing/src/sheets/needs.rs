//! What to cut and to buy: pieces, cardstock sheets, ribbon, costs.

use std::collections::BTreeMap;

use cards::Plan;
use cards::model::{Fold, Material};
use cards::money::to_coin;
use cards::plan::{LayoutGrade, StockPlan, StockSheetPlan};
use measure::{Length, Rect, Size};
use rust_decimal::Decimal;

use super::labels::centred;
use super::look::{INK, WHITE, half, inset, middle, pt, say, sixteenths};
use super::pages::{Column, Pages};
use super::papers::{left_over, runs};
use super::sketch::{Says, Sketch, SketchPiece, Under, dimensions_room};
use super::steps::Cuts;
use super::swatch::{Swatch, stock_name};
use super::told::Told;
use super::worded;
use crate::scene::{Mark, Pen, Point, Role, share};
use crate::text::{Align, Face, Line, Style, place, wrap};

/// The table of pieces, small supplies and costs.
pub(super) fn needs(plan: &Plan, told: Told, pages: &mut Pages) {
    pages.chapter(&say("page-needs-title", &[]));
    let (columns, rows) = pieces_table(plan, told);
    pages.table(&columns, &rows);
    colors(plan, told, pages);
    supplies(plan, told, pages);
    costs(plan, pages);
}

/// Every piece to cut: its name, size, from what, how many.
pub(super) fn pieces_table(plan: &Plan, told: Told) -> ([Column; 4], Vec<Vec<String>>) {
    let shares = if told.large() { [22, 34, 27, 17] } else { [20, 36, 32, 12] };
    let columns = [
        column("page-needs-piece", shares[0], Align::Start),
        column("page-needs-size", shares[1], Align::Start),
        column("page-needs-from", shares[2], Align::Start),
        column("page-needs-count", shares[3], Align::End),
    ];
    let mut rows = paper_rows(plan, told);
    rows.extend(stock_rows(plan, told));
    (columns, rows)
}

fn column(id: &str, share: i64, align: Align) -> Column {
    Column { head: say(id, &[]), share, align }
}

pub(super) fn layer_name(plan: &Plan, recipe: usize, layer: usize) -> String {
    let name = plan.project.layer(recipe, layer).map_or("", |layer| layer.name.as_str());
    with_recipe(plan, recipe, name)
}

/// The recipe is only named where there are several.
pub(super) fn with_recipe(plan: &Plan, recipe: usize, name: &str) -> String {
    match plan.project.recipes.get(recipe) {
        Some(recipe) if plan.project.recipes.len() > 1 => format!("{name} ({})", recipe.name),
        _ => name.to_owned(),
    }
}

fn paper_rows(plan: &Plan, told: Told) -> Vec<Vec<String>> {
    let mut kinds: BTreeMap<(usize, usize, usize, Length, Length), u32> = BTreeMap::new();
    let mut letters: BTreeMap<usize, Vec<String>> = BTreeMap::new();
    for layout in &plan.layouts {
        let sheets: u32 = layout.sheets.iter().map(|used| used.sheets).sum();
        for piece in &layout.pieces {
            let size = piece.stands();
            *kinds.entry((piece.recipe, piece.layer, layout.pack, size.width, size.height)).or_default() += sheets;
        }
        let pack = letters.entry(layout.pack).or_default();
        for used in &layout.sheets {
            let (letter, _) = super::papers::face_name(plan, layout.pack, used);
            if !pack.contains(&letter) {
                pack.push(letter);
            }
        }
    }
    kinds
        .into_iter()
        .map(|((recipe, layer, pack, width, height), count)| {
            let name = plan.project.packs.get(pack).map_or("", |pack| pack.name.as_str());
            let from = say(
                "page-needs-prints",
                &[
                    ("name", name.into()),
                    ("letters", letters.get(&pack).map(|all| letters_short(all)).unwrap_or_default().into()),
                ],
            );
            vec![layer_name(plan, recipe, layer), told.size(Size::new(width, height)), from, count.to_string()]
        })
        .collect()
}

/// `A–F` for letters in a row, else each of them.
fn letters_short(letters: &[String]) -> String {
    let signs: Option<Vec<u32>> = letters
        .iter()
        .map(|letter| {
            letter.chars().next().filter(|sign| letter.len() == 1 && sign.is_ascii_uppercase()).map(u32::from)
        })
        .collect();
    match (signs, letters) {
        (Some(signs), [first, _, .., last]) if signs.windows(2).all(|pair| pair[0] + 1 == pair[1]) => {
            format!("{first}–{last}")
        }
        _ => letters.join(", "),
    }
}

fn stock_rows(plan: &Plan, told: Told) -> Vec<Vec<String>> {
    let mut rows = Vec::new();
    for stock in &plan.stocks {
        let name = stock_name(plan, stock.cardstock);
        for cut in &stock.cuts {
            let piece = piece_name(plan, cut);
            let mut size = told.size(cut.size);
            if !cut.scores.is_empty() {
                let scores: Vec<String> = cut.scores.iter().map(|score| told.bare(*score)).collect();
                let top = plan.project.recipes.get(cut.recipe).is_some_and(|recipe| recipe.fold == Fold::Top);
                let side = if top { "top" } else { "left" };
                size = say(
                    "page-needs-scored",
                    &[("size", size.into()), ("at", scores.join(", ").into()), ("side", side.into())],
                );
            }
            rows.push(vec![piece, size, name.clone(), cut.count.to_string()]);
        }
    }
    rows
}

fn piece_name(plan: &Plan, cut: &cards::plan::StockCut) -> String {
    let layer = cut.layer.and_then(|layer| plan.project.layer(cut.recipe, layer));
    let name = match layer {
        _ if cut.inside => say("page-needs-inside", &[]),
        None => say("page-needs-base", &[]),
        Some(layer) => layer.name.clone(),
    };
    // A piece that several recipes share is none of theirs alone.
    if cut.also.is_empty() { with_recipe(plan, cut.recipe, &name) } else { name }
}

/// A swatch of every cardstock and ribbon with its letters, its pattern and its name.
fn colors(plan: &Plan, told: Told, pages: &mut Pages) {
    let stocks =
        plan.stocks.iter().map(|stock| (Swatch::stock(plan, stock.cardstock), stock_name(plan, stock.cardstock)));
    let ribbons = plan.project.ribbons.iter().enumerate().zip(&plan.counts.ribbon);
    let ribbons = ribbons.filter(|(_, (length, _))| *length > Length::ZERO).map(|((index, ribbon), _)| {
        let swatch = Swatch::ribbon(plan, index);
        let name = format!("{}\u{a0}({})", ribbon.name, swatch.letters);
        (swatch, name)
    });
    let all: Vec<(Swatch, String)> = stocks.chain(ribbons).collect();
    if all.is_empty() {
        return;
    }
    let style = told.small();
    let box_size = Size::new(pt(if told.large() { 54 } else { 40 }), pt(if told.large() { 34 } else { 26 }));
    let columns = if told.large() { 2 } else { 4 };
    let step = share(pages.width(), 1, columns);
    let row_tall = box_size.height + pt(10);
    pages.room(row_tall * 2 + told.subheading().leading());
    pages.section(&say("page-colors-title", &[]));
    for (index, (swatch, name)) in (0_i64..).zip(all) {
        if index > 0 && index % columns == 0 {
            pages.gap(row_tall);
            pages.room(row_tall);
        }
        let rect = Rect::new(pages.left() + step * (index % columns), pages.y, box_size);
        let mut marks = swatch.fill(rect);
        marks.push(Mark::frame(rect, Pen::solid(INK, share(pt(1), 3, 4))));
        let letters = Style::new(Face::Bold, told.points(12));
        let label = centred(&swatch.letters, letters, middle(rect), INK);
        marks.push(Mark::fill(inset(label.around, -pt(3)), WHITE));
        marks.extend(label.marks);
        pages.push(Mark::role(Role::Figure(name.clone()), marks));
        let wide = step - box_size.width - pt(14);
        let lines = wrap(&name, style, wide);
        let spare = box_size.height - style.leading() * i64::try_from(lines.len()).unwrap_or(1);
        let mut base = pages.y + half(spare) + style.size;
        let mut texts = Vec::new();
        for line in lines.into_iter().take(2) {
            texts.push(place(line, Point::new(rect.right() + pt(6), base), Align::Start, INK));
            base += style.leading();
        }
        pages.push(Mark::role(Role::Paragraph, texts));
    }
    pages.gap(row_tall + pt(6));
}

/// Whole packs, if a pack is told of.
fn packs(count: Option<u32>) -> String {
    count.map(|count| say("page-needs-packs", &[("count", count.into())])).unwrap_or_default()
}

/// Ribbon, foam, tape, greetings, envelopes.
fn supplies(plan: &Plan, told: Told, pages: &mut Pages) {
    let counts = &plan.counts;
    let mut rows = Vec::new();
    for (index, (ribbon, (length, spools))) in plan.project.ribbons.iter().zip(&counts.ribbon).enumerate() {
        if *length <= Length::ZERO {
            continue;
        }
        let made = plan.project.recipes.iter().zip(&counts.cards_by_recipe).filter(|(_, cards)| **cards > 0);
        let mut lengths = made.flat_map(|(recipe, _)| &recipe.layers).filter_map(|layer| match layer.material {
            Material::Ribbon { ribbon: laid, length, .. } => (laid == index).then_some(length),
            _ => None,
        });
        // Told for each card only where it is the same for all.
        let each = lengths.next().filter(|first| lengths.all(|other| other == *first));
        let mut what = told.length(*length);
        if let Some(each) = each {
            what = say("page-needs-ribbon", &[("length", what.into()), ("each", told.length(each).into())]);
        }
        let bought = spools.map(|spools| say("page-needs-spools", &[("count", spools.into())])).unwrap_or_default();
        rows.push(vec![
            say(
                "page-needs-ribbon-name",
                &[("name", (&ribbon.name).into()), ("width", told.length(ribbon.width).into())],
            ),
            what,
            bought,
        ]);
    }
    let mut greetings: Vec<String> = Vec::new();
    if counts.strips > 0 {
        greetings.extend(
            plan.project.greetings.iter().map(|greeting| say("page-quoted", &[("words", (&greeting.words).into())])),
        );
        rows.push(vec![say("page-needs-strips", &[]), greetings.join(", "), counts.strips.to_string()]);
    }
    if counts.foam_squares > 0 {
        let bought = packs(counts.foam_packs);
        rows.push(vec![say("page-needs-foam", &[]), bought, counts.foam_squares.to_string()]);
    }
    if let (Some(tape), Some((length, rolls))) = (&plan.project.supplies.tape, counts.tape)
        && length > Length::ZERO
    {
        let bought = rolls.map(|rolls| say("page-needs-rolls", &[("count", rolls.into())])).unwrap_or_default();
        rows.push(vec![worded::supply(&tape.name), told.length(length), bought]);
    }
    if let Some(envelope) = &plan.project.envelope {
        let name = say("page-needs-envelopes", &[]);
        let mut what = vec![envelope.name.clone(), told.size(envelope.size)];
        what.extend(Some(packs(counts.envelopes.and_then(|(_, packs)| packs))).filter(|packs| !packs.is_empty()));
        rows.push(vec![name, what.join(", "), counts.cards.to_string()]);
    }
    if rows.is_empty() {
        return;
    }
    pages.section(&say("page-needs-small", &[]));
    let columns = [
        column("page-needs-what", 36, Align::Start),
        column("page-needs-how", 40, Align::Start),
        column("page-needs-count", 24, Align::End),
    ];
    pages.table(&columns, &rows);
}

fn costs(plan: &Plan, pages: &mut Pages) {
    let costs = &plan.costs;
    if costs.lines.iter().all(|line| line.used.is_none()) {
        return;
    }
    let money = |amount: Decimal, currency: &str| {
        words::local(format!("{}\u{a0}{currency}", to_coin(amount, currency)).trim_end())
    };
    let mut rows: Vec<Vec<String>> = costs
        .lines
        .iter()
        .map(|line| {
            let used = line.used.map_or_else(|| say("page-cost-unknown", &[]), |used| money(used, &line.currency));
            vec![worded::supply(&line.name), line.date.clone().unwrap_or_default(), used]
        })
        .collect();
    let lines = rows.len();
    if let Some(total) = costs.total_used {
        let currency = costs.lines.iter().find(|line| line.used.is_some()).map_or("", |line| line.currency.as_str());
        let said = |amount: Decimal| {
            let amount = money(amount, currency);
            if costs.at_least { say("page-cost-at-least", &[("amount", amount.into())]) } else { amount }
        };
        rows.push(vec![say("page-cost-total", &[]), String::new(), said(total)]);
        if let Some(each) = cards::plan::per_card(costs, &plan.cards) {
            rows.push(vec![say("page-cost-each", &[]), String::new(), said(each)]);
        }
    }
    let totals = rows.len() - lines;
    // Kept on one page where one page can hold it.
    let tall = (pages.told.body().leading() + pt(3)) * i64::try_from(rows.len()).unwrap_or(0) + pt(86);
    pages.room(tall.min(sixteenths(130)));
    pages.section(&say("page-cost-title", &[]));
    let columns = [
        column("page-cost-what", 46, Align::Start),
        column("page-cost-date", 26, Align::Start),
        column("page-cost-used", 28, Align::End),
    ];
    pages.table_with_total(&columns, &rows, totals);
    pages.note(&say("page-caution-costs", &[]));
}

/// The cardstock sheets by colour, each drawn with its cuts and its settings beside it.
pub(super) fn cardstock(plan: &Plan, told: Told, pages: &mut Pages) {
    if plan.stocks.iter().all(|stock| stock.sheets.is_empty()) {
        return;
    }
    pages.chapter(&say("page-stock-title", &[]));
    pages.say(&say("page-stock-lead", &[]));
    let trimmed = |sheet: &StockSheetPlan| !left_over(&sheet.cut_plan, sheet.step).1.is_empty();
    if plan.stocks.iter().flat_map(|stock| &stock.sheets).any(trimmed) {
        pages.say(&say("page-stock-edges", &[]));
    }
    for stock in &plan.stocks {
        color(plan, stock, told, pages);
    }
}

fn color(plan: &Plan, stock: &StockPlan, told: Told, pages: &mut Pages) {
    pages.gap(pt(6));
    // The heading, its note and the first sheet stay together.
    let first = stock.sheets.first().map_or(Length::ZERO, |sheet| Prepared::new(plan, stock, sheet, told, pages).tall);
    pages.room(first + pt(if told.large() { 100 } else { 56 }));
    let title = say(
        "page-stock-color",
        &[("name", stock_name(plan, stock.cardstock).into()), ("count", stock.sheet_count.into())],
    );
    pages.section(&title);
    let grade = match stock.grade {
        LayoutGrade::ProvenBest => say("page-stock-best", &[]),
        LayoutGrade::BestFound { .. } => say("page-stock-found", &[("bound", stock.area_bound.into())]),
        LayoutGrade::Stopped => say("page-stock-stopped", &[]),
    };
    pages.note(&grade);
    for sheet in &stock.sheets {
        stock_sheet(plan, stock, sheet, told, pages);
    }
}

/// One sheet of cardstock ready to be drawn, and the room it needs.
struct Prepared {
    sketch: Sketch,
    words: Vec<Line>,
    drawn_tall: Length,
    tall: Length,
}

impl Prepared {
    fn new(plan: &Plan, stock: &StockPlan, sheet: &StockSheetPlan, told: Told, pages: &Pages) -> Prepared {
        let known = plan.project.cardstocks.get(stock.cardstock).and_then(|s| s.sheets.get(sheet.size));
        let size = known.map_or(Size::new(pt(1), pt(1)), |known| known.size);
        let (waste, edges) = left_over(&sheet.cut_plan, sheet.step);
        let under = Under::Stock(Swatch::stock(plan, stock.cardstock));
        let mut sketch = Sketch { sheet: size, pieces: Vec::new(), waste, edges, under, arrows: false };
        let mut marks_of: Vec<(Rect, String)> = Vec::new();
        let mut kinds: BTreeMap<usize, Vec<String>> = BTreeMap::new();
        for (number, piece) in (1_u32..).zip(&sheet.pieces) {
            let mark = number.to_string();
            let cut = stock.cuts.get(piece.cut);
            let scores = cut.map(|cut| scores(plan, cut, piece.rect, piece.turned)).unwrap_or_default();
            marks_of.push((piece.rect, mark.clone()));
            kinds.entry(piece.cut).or_default().push(mark.clone());
            sketch.pieces.push(SketchPiece { mark, rect: piece.rect, turned: piece.turned, scores });
        }
        let large = told.large();
        let wide = pages.right() - words_at(pages);
        let words = sheet_words(plan, stock, sheet, &kinds, &marks_of, told, wide);
        let words_tall: Length = words.iter().map(|line| line.style.leading()).sum();
        let (side, room) = (stock_side(told), dimensions_room(told));
        let drawn_tall = share(side, size.height.ticks(), size.width.max(size.height).ticks()) + room;
        // In large print the words below may go over to the next page, the first three lines may not.
        let first = told.body().leading() * 3;
        let tall = if large { drawn_tall + first + pt(4) } else { drawn_tall.max(words_tall + pt(10)) };
        Prepared { sketch, words, drawn_tall, tall: tall + pt(10) }
    }
}

/// The largest side of a drawn cardstock sheet.
fn stock_side(told: Told) -> Length {
    sixteenths(if told.large() { 58 } else { 44 })
}

/// Where the words of a sheet of cardstock start: beside it, or in large print below.
fn words_at(pages: &Pages) -> Length {
    if pages.told.large() { pages.left() } else { pages.left() + stock_side(pages.told) + pt(40) }
}

fn stock_sheet(plan: &Plan, stock: &StockPlan, sheet: &StockSheetPlan, told: Told, pages: &mut Pages) {
    let Prepared { sketch, words, drawn_tall, tall } = Prepared::new(plan, stock, sheet, told, pages);
    pages.room(tall);
    let large = told.large();
    let wide = if large { pages.width() } else { stock_side(told) + pt(24) };
    let area = Rect::new(pages.left(), pages.y, Size::new(wide, drawn_tall));
    let alt = say("page-stock-alt", &[("size", told.size(sketch.sheet).into()), ("count", sheet.pieces.len().into())]);
    pages.push(Mark::role(Role::Figure(alt), sketch.marks(area, told, Says::All)));
    if large {
        pages.gap(drawn_tall + pt(10));
        for line in words {
            pages.room(line.style.leading());
            let at = Point::new(pages.left(), pages.y + line.style.size);
            pages.gap(line.style.leading());
            pages.push(Mark::role(Role::Paragraph, vec![place(line, at, Align::Start, INK)]));
        }
        pages.gap(pt(10));
        return;
    }
    let mut texts = Vec::new();
    let mut y = pages.y + pt(10);
    for line in words {
        let (size, leading) = (line.style.size, line.style.leading());
        texts.push(place(line, Point::new(words_at(pages), y + size), Align::Start, INK));
        y += leading;
    }
    pages.push(Mark::role(Role::Paragraph, texts));
    pages.gap(tall);
}

fn sheet_words(
    plan: &Plan,
    stock: &StockPlan,
    sheet: &StockSheetPlan,
    kinds: &BTreeMap<usize, Vec<String>>,
    marks: &[(Rect, String)],
    told: Told,
    wide: Length,
) -> Vec<Line> {
    let mut lines = wrap(&say("page-stock-times", &[("count", sheet.times.into())]), told.strong(), wide);
    for (cut, marks) in kinds {
        let Some(cut) = stock.cuts.get(*cut) else { continue };
        let what = say(
            "page-stock-piece",
            &[
                ("marks", runs(marks).into()),
                ("name", piece_name(plan, cut).into()),
                ("size", told.size(cut.size).into()),
            ],
        );
        lines.extend(wrap(&what, told.body(), wide));
    }
    let (plan, marks) = (&sheet.cut_plan, marks.to_vec());
    // The sheet's own heading says which cardstock it is.
    let steps = Cuts { plan, step: sheet.step, under: Under::Color(INK), marks, stock: None, letter: None, told };
    lines.extend(wrap("\u{a0}", told.small(), wide));
    for (number, sentence) in (1_u32..).zip(steps.short()) {
        lines.extend(wrap(&format!("{number}.\u{a0}{sentence}"), told.body(), wide));
    }
    lines
}

/// Fold lines of a base where it lies on its sheet.
pub(super) fn scores(plan: &Plan, cut: &cards::plan::StockCut, rect: Rect, turned: bool) -> Vec<(Point, Point)> {
    let top = plan.project.recipes.get(cut.recipe).is_some_and(|recipe| recipe.fold == Fold::Top);
    cut.scores
        .iter()
        .map(|score| {
            // A turned piece lies with its top to the right: its left is at the top, its top at the right.
            match (top, turned) {
                (false, false) => upright_line(rect, rect.x + *score),
                (false, true) => level_line(rect, rect.y + *score),
                (true, false) => level_line(rect, rect.y + *score),
                (true, true) => upright_line(rect, rect.right() - *score),
            }
        })
        .collect()
}

fn upright_line(rect: Rect, x: Length) -> (Point, Point) {
    (Point::new(x, rect.y), Point::new(x, rect.bottom()))
}

fn level_line(rect: Rect, y: Length) -> (Point, Point) {
    (Point::new(rect.x, y), Point::new(rect.right(), y))
}
