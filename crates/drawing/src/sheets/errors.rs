//! What small errors do: each recipe's card with its narrowest border marked, and how narrow each can come out.

use cards::Plan;
use cards::plan::{Border, DRIFT, Edge, HAND, RISE, RUN, RecipeBorders};
use measure::{Length, Rect, Size};

use super::Faces;
use super::card;
use super::look::{Fit, INK, WHITE, half, pt, say, sixteenths};
use super::pages::{Column, Pages};
use super::told::Told;
use crate::scene::{Mark, Pen, Point, Role, share};
use crate::text::Align;

/// Rows a recipe may have in the table: the narrowest; wider ones never matter.
const MOST_ROWS: usize = 6;

/// Draws the page; nothing where no card has a border.
pub(super) fn errors(plan: &Plan, faces: &Faces, told: Told, pages: &mut Pages) {
    if plan.borders.recipes.is_empty() {
        return;
    }
    pages.chapter(&say("page-errors-title", &[]));
    let sizes = [("hand", HAND), ("rise", RISE), ("run", RUN), ("drift", DRIFT)];
    let sizes = sizes.map(|(name, length)| (name, told.length(length).into()));
    pages.say(&say("page-errors-lead", &sizes));
    for found in &plan.borders.recipes {
        recipe(plan, faces, told, found, pages);
    }
    pages.section(&say("page-errors-rest-title", &[]));
    if plan.borders.rests.is_empty() {
        pages.say(&say("page-errors-rest-well", &[]));
    }
    for rest in &plan.borders.rests {
        let layout = u64::try_from(rest.layout + 1).unwrap_or(u64::MAX);
        let (on, better) = (rest.on.join(", "), rest.better.join(", "));
        let facts = [("layout", layout.into()), ("on", on.into()), ("better", better.into())];
        pages.say(&say("page-errors-rest", &facts));
    }
}

fn recipe(plan: &Plan, faces: &Faces, told: Told, found: &RecipeBorders, pages: &mut Pages) {
    let Some(recipe) = plan.project.recipes.get(found.recipe) else { return };
    let Some(narrowest) = found.borders.first() else { return };
    let Some(shown) = plan.cards.iter().find(|card| card.number == narrowest.card) else { return };
    let high = Length::INCH * 2;
    let wide = share(high, recipe.finished.width.ticks(), recipe.finished.height.ticks()).min(Length::INCH * 3);
    let high = share(wide, recipe.finished.height.ticks(), recipe.finished.width.ticks());
    pages.room(high + sixteenths(60));
    pages.section(&recipe.name);
    let front = Rect::new(pages.left() + pt(12), pages.y + pt(6), Size::new(wide, high));
    let fit = Fit::into(recipe.finished, front);
    let mut marks = card::marks(plan, faces, shown, front);
    if let Some(gap) = gap(plan, shown, narrowest) {
        marks.extend(pointed(fit.rect(gap), narrowest.edge, fit.rect(front_of(recipe.finished))));
    }
    let words = sentence(plan, told, found, narrowest);
    pages.push(Mark::role(Role::Figure(words.clone()), marks));
    pages.gap(high + pt(24));
    pages.say(&words);
    let columns = [
        ("page-errors-border", 7, Align::Start),
        ("page-errors-planned", 3, Align::End),
        ("page-errors-cuts", 3, Align::End),
        ("page-errors-stop", 3, Align::End),
        ("page-errors-placed", 3, Align::End),
        ("page-errors-square", 3, Align::End),
        ("page-errors-drift", 3, Align::End),
    ];
    let columns = columns.map(|(id, share, align)| Column { head: say(id, &[]), share, align });
    let row = |border: &Border| {
        let mut row = vec![named(plan, found.recipe, border)];
        let widths = [border.by_cuts, border.by_stop, border.by_placing, border.by_square, border.by_drift];
        row.push(told.bare(border.planned));
        row.extend(widths.map(|width| left(told, width)));
        row
    };
    let rows: Vec<Vec<String>> = found.borders.iter().take(MOST_ROWS).map(row).collect();
    pages.table(&columns, &rows);
}

fn front_of(finished: Size) -> Rect {
    Rect::new(Length::ZERO, Length::ZERO, finished)
}

/// A width that is left, or that nothing is.
fn left(told: Told, width: Length) -> String {
    if width > Length::ZERO { told.bare(width) } else { say("page-errors-gone", &[]) }
}

fn named(plan: &Plan, recipe: usize, border: &Border) -> String {
    let layer = plan.project.layer(recipe, border.layer).map_or(String::new(), |layer| layer.name.clone());
    say("page-errors-named", &[("layer", layer.into()), ("edge", border.edge.name().into())])
}

fn sentence(plan: &Plan, told: Told, found: &RecipeBorders, border: &Border) -> String {
    let share = border.share.map_or(0, |share| {
        (u64::from(share.under_half) * 100 + u64::from(share.draws) / 2) / u64::from(share.draws.max(1))
    });
    let facts = [
        ("border", named(plan, found.recipe, border).into()),
        ("planned", told.length(border.planned).into()),
        ("stop", told.length(border.by_stop.max(Length::ZERO)).into()),
        ("share", share.into()),
    ];
    say("page-errors-said", &facts)
}

/// Where the border lies on the card's front.
fn gap(plan: &Plan, card: &cards::plan::Card, border: &Border) -> Option<Rect> {
    let of = |layer: usize| card.parts.iter().find(|part| part.layer == layer).map(|part| part.rect);
    let own = of(border.layer)?;
    let finished = plan.project.recipes.get(card.recipe)?.finished;
    let under = border.on.and_then(of).unwrap_or_else(|| front_of(finished));
    Some(match border.edge {
        Edge::Left => Rect::new(under.x, own.y, Size::new(own.x - under.x, own.size.height)),
        Edge::Right => Rect::new(own.right(), own.y, Size::new(under.right() - own.right(), own.size.height)),
        Edge::Top => Rect::new(own.x, under.y, Size::new(own.size.width, own.y - under.y)),
        Edge::Bottom => Rect::new(own.x, own.bottom(), Size::new(own.size.width, under.bottom() - own.bottom())),
    })
}

/// The border framed, and an arrow at it from outside the card.
fn pointed(gap: Rect, edge: Edge, front: Rect) -> Vec<Mark> {
    let middle = Point::new(gap.x + half(gap.size.width), gap.y + half(gap.size.height));
    let long = pt(20);
    let (from, wing) = match edge {
        Edge::Left => (Point::new(front.x - long, middle.y), (-1, 0)),
        Edge::Right => (Point::new(front.right() + long, middle.y), (1, 0)),
        Edge::Top => (Point::new(middle.x, front.y - long), (0, -1)),
        Edge::Bottom => (Point::new(middle.x, front.bottom() + long), (0, 1)),
    };
    // White under black: seen on any print, in grey too.
    let mut marks = vec![
        Mark::frame(gap, Pen::solid(WHITE, pt(3))),
        Mark::frame(gap, Pen::solid(INK, pt(1))),
        Mark::line(from, middle, Pen::solid(WHITE, pt(4))),
        Mark::line(from, middle, Pen::solid(INK, pt(2))),
    ];
    for side in [-1, 1] {
        let back = pt(6);
        let tip = Point::new(
            middle.x + back * wing.0 + pt(4) * (side * wing.1),
            middle.y + back * wing.1 + pt(4) * (side * wing.0),
        );
        marks.push(Mark::line(middle, tip, Pen::solid(INK, pt(2))));
    }
    marks
}
