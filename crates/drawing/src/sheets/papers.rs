//! How each patterned sheet is cut: one page a layout.

use cards::Plan;
use cards::plan::{Layout, SheetUse, on_sheet};
use cutting::steps::Fate;
use measure::{Length, Rect, Size};

use super::Faces;
use super::card::pixels;
use super::look::{INK, SOFT, WHITE, half, pt, say, sixteenths};
use super::opening::of_batch;
use super::pages::{Pages, fitted};
use super::sketch::{Says, Sketch, SketchPiece, Under};
use super::told::Told;
use crate::scene::{Mark, Point, Role, share};
use crate::text::{Align, place, wrap};

/// Largest picture of a whole sheet on a page, in pixels across.
const MOST_PX: u32 = 1_200;

/// Waste and unusable edges of a cut plan, on the sheet.
pub(super) fn left_over(plan: &cutting::steps::CutPlan, step: Length) -> (Vec<Rect>, Vec<Rect>) {
    let of = |wanted: Fate| {
        plan.parts.iter().filter(|part| part.fate == wanted).map(|part| on_sheet(part.rect, step)).collect()
    };
    (of(Fate::Waste), of(Fate::Edge))
}

/// The drawing of a layout over the print of one of its sheets, made for a drawing `wide` across.
pub(super) fn sketch(plan: &Plan, faces: &Faces, layout: &Layout, used: Option<&SheetUse>, wide: Length) -> Sketch {
    let sheet = plan.project.packs.get(layout.pack).map_or(layout.usable.size, |pack| pack.sheet);
    let (waste, edges) = left_over(&layout.cut_plan, layout.cut_step);
    let print = used.and_then(|used| faces.get(&(layout.pack, used.design, used.side)));
    let under = print.map_or(Under::Color(WHITE), |print| Under::Print(print.at_most(pixels(wide).min(MOST_PX))));
    let pieces = layout.pieces.iter().map(|piece| SketchPiece {
        mark: piece.mark.clone(),
        rect: piece.rect,
        turned: piece.turned,
        scores: Vec::new(),
    });
    Sketch { sheet, pieces: pieces.collect(), waste, edges, under, arrows: true }
}

/// The words that stand for the drawing of a layout.
pub(super) fn alt(plan: &Plan, index: usize, layout: &Layout, told: Told) -> String {
    let sheet = plan.project.packs.get(layout.pack).map_or(layout.usable.size, |pack| pack.sheet);
    let pieces = kinds(plan, layout, told).into_iter().map(|(marks, what)| format!("{marks}: {what}"));
    say(
        "page-sheet-alt",
        &[
            ("number", (index + 1).into()),
            ("size", told.size(sheet).into()),
            ("pieces", pieces.collect::<Vec<_>>().join("; ").into()),
        ],
    )
}

/// Draws a page for every layout.
pub(super) fn papers(plan: &Plan, faces: &Faces, told: Told, pages: &mut Pages) {
    for (index, layout) in plan.layouts.iter().enumerate() {
        page(plan, faces, told, index, layout, pages);
    }
}

fn page(plan: &Plan, faces: &Faces, told: Told, index: usize, layout: &Layout, pages: &mut Pages) {
    let Some(pack) = plan.project.packs.get(layout.pack) else { return };
    let title = if plan.layouts.len() == 1 { "page-sheet-title" } else { "page-sheet-title-numbered" };
    pages.chapter(&of_batch(plan, layout.batch, say(title, &[("number", (index + 1).into())])));
    let sheets: u32 = layout.sheets.iter().map(|used| used.sheets).sum();
    pages.say(&say(
        "page-sheet-lead",
        &[
            ("pack", (&pack.name).into()),
            ("size", told.size(pack.sheet).into()),
            ("sheets", sheets.into()),
            ("cards", layout.recipe_counts.iter().sum::<u32>().into()),
        ],
    ));
    pages.gap(pt(4));
    let (waste, edges) = left_over(&layout.cut_plan, layout.cut_step);
    let key = if waste.is_empty() && edges.is_empty() { "page-sheet-key-whole" } else { "page-sheet-key" };
    let mut notes = vec![say(key, &[]), say("page-sheet-first", &[])];
    if let Some(same) = super::steps::cut_as(plan, index) {
        notes.insert(0, say("page-steps-as", &[("number", (same + 1).into())]));
    }
    notes.extend(super::placed::stays(layout));
    let legend: Vec<String> =
        kinds(plan, layout, told).into_iter().map(|(marks, what)| format!("{marks}  –  {what}")).collect();
    let lines: usize = legend.iter().chain(&notes).map(|text| wrap(text, told.small(), pages.width()).len()).sum();
    let strip = if layout.sheets.len() > 1 { sixteenths(12) + pt(46) } else { Length::ZERO };
    let below = told.small().leading() * i64::try_from(lines).unwrap_or(0) + strip + pt(24);
    // In large print the drawing has the page; the words go over to the next.
    let tall = if told.large() {
        pages.left_over().min(pages.width())
    } else {
        (pages.left_over() - below).min(pages.width()).max(sixteenths(48))
    };
    let area = Rect::new(pages.left(), pages.y, Size::new(pages.width(), tall));
    let drawing = sketch(plan, faces, layout, layout.sheets.first(), area.size.width);
    let marks = drawing.marks(area, told, Says::All);
    pages.push(Mark::role(Role::Figure(alt(plan, index, layout, told)), marks));
    pages.y = area.bottom() + pt(10);
    for text in &legend {
        pages.block(text, told.small(), INK, Role::Paragraph);
    }
    for note in &notes {
        pages.note(note);
    }
    if layout.sheets.len() > 1 {
        pages.gap(pt(4));
        uses(plan, faces, layout, pages);
    }
    super::placed::gained(plan, faces, layout, pages);
}

/// Pieces that are alike, their marks together: `1–4, 9` and `panel, 3 × 4½ in`.
pub(super) fn kinds(plan: &Plan, layout: &Layout, told: Told) -> Vec<(String, String)> {
    let mut kinds: Vec<((usize, usize, Size), Vec<String>)> = Vec::new();
    for piece in &layout.pieces {
        let stands = piece.stands();
        let key = (piece.recipe, piece.layer, stands);
        match kinds.iter_mut().find(|(seen, _)| *seen == key) {
            Some((_, marks)) => marks.push(piece.mark.clone()),
            None => kinds.push((key, vec![piece.mark.clone()])),
        }
    }
    let named = |recipe: usize, layer: usize| {
        let Some(recipe) = plan.project.recipes.get(recipe) else { return String::new() };
        let name = recipe.layers.get(layer).map_or("", |layer| layer.name.as_str());
        if plan.project.recipes.len() > 1 { format!("{name} ({})", recipe.name) } else { name.to_owned() }
    };
    kinds
        .into_iter()
        .map(|((recipe, layer, size), marks)| {
            let what = say(
                "page-piece-kind",
                &[
                    ("name", named(recipe, layer).into()),
                    ("size", told.size(size).into()),
                    ("count", marks.len().into()),
                ],
            );
            (runs(&marks), what)
        })
        .collect()
}

/// Marks in a row said short: 1, 2, 3, 5 become `1–3, 5`.
pub(super) fn runs(marks: &[String]) -> String {
    let numbers: Option<Vec<u32>> = marks.iter().map(|mark| mark.parse().ok()).collect();
    let Some(mut numbers) = numbers else { return marks.join(", ") };
    numbers.sort_unstable();
    let mut runs: Vec<(u32, u32)> = Vec::new();
    for number in numbers {
        match runs.last_mut() {
            Some((_, last)) if *last + 1 == number => *last = number,
            _ => runs.push((number, number)),
        }
    }
    let said = runs.into_iter().map(|(from, to)| match to - from {
        0 => from.to_string(),
        1 => format!("{from}, {to}"),
        _ => format!("{from}–{to}"),
    });
    said.collect::<Vec<_>>().join(", ")
}

/// The letter of a design and the name of the face that shows.
pub(super) fn face_name(plan: &Plan, pack: usize, used: &SheetUse) -> (String, String) {
    let Some(design) = plan.project.design(pack, used.design) else {
        return (String::new(), String::new());
    };
    (design.letter.clone(), design.face(used.side).name.clone())
}

/// A small picture of every print that is cut this way, with how many sheets.
fn uses(plan: &Plan, faces: &Faces, layout: &Layout, pages: &mut Pages) {
    let count = i64::try_from(layout.sheets.len()).unwrap_or(1);
    let told = pages.told;
    let columns = count.min(if told.large() { 3 } else { 8 });
    let wide = share(pages.width(), 1, columns);
    let side = sixteenths(if told.large() { 20 } else { 12 });
    let captions = if told.large() { told.small().leading() * 3 + pt(14) } else { pt(40) };
    for (index, used) in (0_i64..).zip(&layout.sheets) {
        if index > 0 && index % columns == 0 {
            pages.gap(side + captions);
        }
        if index % columns == 0 {
            pages.room(side + captions);
        }
        let x = pages.left() + wide * (index % columns);
        let at = if told.large() { x } else { x + half(wide - side) };
        let area = Rect::new(at, pages.y, Size::new(side, side));
        let (letter, name) = face_name(plan, layout.pack, used);
        let words = say("page-sheet-use", &[("letter", (&letter).into()), ("count", used.sheets.into())]);
        let marks = sketch(plan, faces, layout, Some(used), side).marks(area, told, Says::Nothing);
        pages.push(Mark::role(Role::Figure(format!("{words}, {name}")), marks));
        let (centre, align) = if told.large() { (x, Align::Start) } else { (area.x + half(side), Align::Middle) };
        let mut base = area.bottom() + told.small().size + pt(3);
        let mut lines = Vec::new();
        for (text, style, color) in [(&words, told.small_strong(), INK), (&name, told.small(), SOFT)] {
            let broken =
                if told.large() { wrap(text, style, wide - pt(8)) } else { vec![fitted(text, style, wide - pt(4))] };
            for line in broken.into_iter().take(2) {
                lines.push(place(line, Point::new(centre, base), align, color));
                base += style.leading();
            }
        }
        pages.push(Mark::role(Role::Paragraph, lines));
    }
    pages.gap(side + captions);
}
