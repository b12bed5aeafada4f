//! Every finished card of the plan, small, with its number: what the cuts will give, before the first one.

use cards::Plan;
use measure::{Length, Rect, Size};

use super::edition::Edition;
use super::look::{CREAM, INK, half, pt, say};
use super::opening::{alt, of_batch};
use super::pages::Pages;
use super::told::Told;
use super::{Faces, card};
use crate::scene::{Mark, Point, Role, Scene, share};
use crate::text::{Align, Face, Style, place, shape};

/// Cards across a page. Chosen by looking: a card's print and its greeting can be told apart, and 48 cards take two pages.
const ACROSS: i64 = 6;
/// The same in large print.
const ACROSS_LARGE: i64 = 4;

/// Every finished card in the order of their numbers, batch by batch, each as it will look; no page where there is no card.
///
/// # Shape
/// As [`super::edition`]: pure, in the edition's language and print.
pub fn every_card(plan: &Plan, faces: &Faces, edition: &Edition) -> Vec<Scene> {
    if plan.cards.is_empty() {
        return Vec::new();
    }
    words::speaking(edition.language, || {
        let told = Told::new(plan.project.mark, *edition);
        let mut pages = Pages::new(told, &plan.project.name);
        let mut batch = None;
        let mut column = 0;
        let across = if told.large() { ACROSS_LARGE } else { ACROSS };
        let cell = share(pages.width(), 1, across);
        let wide = cell - pt(14);
        let caption = told.small_strong().leading() + pt(8);
        let mut row = Length::ZERO;
        for card in &plan.cards {
            let finished =
                plan.project.recipes.get(card.recipe).map_or(Size::new(wide, wide), |recipe| recipe.finished);
            // All cards of a page share one scale: the widest fills its cell.
            let height = tallest(plan, wide);
            if batch != Some(card.batch) {
                if column > 0 {
                    pages.gap(row);
                }
                pages.chapter(&of_batch(plan, card.batch, say("page-every-card", &[])));
                pages.note(&say("page-every-card-lead", &[]));
                (batch, column) = (Some(card.batch), 0);
            }
            row = height + caption;
            if column == 0 {
                pages.room(row);
            }
            let scale = |length: Length| share(wide, length.ticks(), widest(plan).ticks());
            let size = Size::new(scale(finished.width), scale(finished.height));
            let left = pages.left() + cell * column;
            let front = Rect::new(left + half(cell - size.width), pages.y + (height - size.height), size);
            let marks = card::marks(plan, faces, card, front);
            pages.push(Mark::role(Role::Figure(alt(plan, card)), marks));
            let base = pages.y + height + told.small_strong().size + pt(4);
            let number = shape(&card.number.to_string(), told.small_strong());
            let at = Point::new(left + half(cell), base);
            pages.push(Mark::role(Role::Paragraph, vec![place(number, at, Align::Middle, INK)]));
            column += 1;
            if column == across {
                pages.gap(row);
                column = 0;
            }
        }
        pages.finish(&plan.project.name)
    })
}

/// Most cards of one contact sheet. `Chosen:` more are too small to be told apart.
const MOST_ON_ONE: usize = 400;

/// Every finished card on one sheet, with its number, to be shown as one picture; `None` where there is no card, or more than
/// can be told apart.
///
/// # Shape
/// About four across to three down; each card an inch wide at most.
pub fn contact_sheet(plan: &Plan, faces: &Faces) -> Option<Scene> {
    let count = plan.cards.len();
    if count == 0 || count > MOST_ON_ONE {
        return None;
    }
    let (wide, style) = (Length::INCH, Style::new(Face::Semibold, 9));
    let tall = tallest(plan, wide);
    let cell = Size::new(wide + pt(14), tall + pt(24));
    // As many across as make the whole a third wider than tall, or all of them.
    let area = |across: usize| {
        let across = i64::try_from(across).unwrap_or(1);
        let rows = i64::try_from(count).unwrap_or(1).div_euclid(across) + 1;
        cell.width * across * 3 >= cell.height * rows * 4
    };
    let across = (1..=count).find(|across| area(*across)).unwrap_or(count);
    let whole = |number: usize| i64::try_from(number).unwrap_or(0);
    let size = Size::new(cell.width * whole(across) + pt(14), cell.height * whole(count.div_ceil(across)) + pt(10));
    let mut marks = vec![Mark::fill(Rect::new(Length::ZERO, Length::ZERO, size), CREAM)];
    for (at, card) in plan.cards.iter().enumerate() {
        let finished = plan.project.recipes.get(card.recipe).map_or(Size::new(wide, wide), |recipe| recipe.finished);
        let scale = |length: Length| share(wide, length.ticks(), widest(plan).ticks());
        let own = Size::new(scale(finished.width), scale(finished.height));
        let (left, top) = (pt(14) + cell.width * whole(at % across), pt(10) + cell.height * whole(at / across));
        let front = Rect::new(left + half(wide - own.width), top + (tall - own.height), own);
        marks.push(Mark::role(Role::Figure(alt(plan, card)), card::marks(plan, faces, card, front)));
        let number = shape(&card.number.to_string(), style);
        marks.push(place(number, Point::new(left + half(wide), top + tall + pt(16)), Align::Middle, INK));
    }
    Some(Scene { size, title: say("page-every-card", &[]), marks })
}

/// The widest front of the plan's cards.
fn widest(plan: &Plan) -> Length {
    let made = plan.cards.iter().filter_map(|card| plan.project.recipes.get(card.recipe));
    made.map(|recipe| recipe.finished.width).max().unwrap_or(Length::INCH).max(Length::from_ticks(1))
}

/// The height of the tallest card where the widest is `wide`.
fn tallest(plan: &Plan, wide: Length) -> Length {
    let made = plan.cards.iter().filter_map(|card| plan.project.recipes.get(card.recipe));
    let tallest = made.map(|recipe| recipe.finished.height).max().unwrap_or(Length::INCH);
    share(wide, tallest.ticks(), widest(plan).ticks())
}
