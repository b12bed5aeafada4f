//! A cut line that is moved: what comes of it while it moves, and the edit once it is let go.

use cards::plan::{Budget, CutLine, Pinned, Shifted, Stays, cut_lines, pins_for, shift};
use cutting::Axis;
use drawing::scene::{points, share};
use drawing::text::with_fractions;
use maud::{Markup, html};
use measure::{Length, parse_length};
use store::projects::Kept;

use super::answer::{Answer, Asked, Desk};
use super::edit::{self, Changed, Pin};
use super::room::Made;
use super::sheet::{self, Over};
use super::{fields, layout, say};
use crate::cli::Clock;
use crate::wording;

/// Nodes and seconds for an answer while a line moves: it must come before the hand notices.
const WHILE_MOVING: (u64, f64) = (300_000, 0.07);
/// Nodes and seconds once it was let go. Chosen: as long as a page may take.
const LET_GO: (u64, f64) = (10_000_000, 1.2);

/// Which line, and where it is to lie.
struct Wanted {
    layout: usize,
    line: usize,
    to: Length,
    near: Length,
}

/// What was asked for: `to` as typed, or `marks` from where it lies, or `point` in the drawing.
fn wanted(made: &Made, asked: impl Fn(&str) -> String, on: Option<drawing::sheets::OnScreen>) -> Option<Wanted> {
    let index: usize = asked("layout").parse().ok()?;
    let line: usize = asked("line").parse().ok()?;
    let laid = made.plan.layouts.get(index)?;
    let known = cut_lines(laid).get(line).copied()?;
    let sheet = made.project().packs.get(laid.pack)?.sheet;
    // A place in the drawing is a share of the sheet.
    let drawn = |name: &str, axis: Axis| {
        let whole = on?.whole();
        let at: f64 = asked(name).parse().ok().filter(|at: &f64| at.is_finite())?;
        let at = points(at.clamp(-10_000.0, 10_000.0));
        Some(match axis {
            Axis::X => share(sheet.width, (at - whole.x).ticks(), whole.size.width.ticks()),
            Axis::Y => share(sheet.height, (at - whole.y).ticks(), whole.size.height.ticks()),
        })
    };
    let typed = || parse_length(&asked("to"), Some(made.project().unit)).ok();
    let marks = || {
        let marks: i64 = asked("marks").parse().ok().filter(|marks: &i64| marks.abs() < 100_000)?;
        Some(known.at + laid.step * marks)
    };
    let to = drawn("point", known.axis).or_else(marks).or_else(typed)?;
    let near = drawn("near", known.axis.across()).unwrap_or(known.from);
    Some(Wanted { layout: index, line, to, near })
}

fn shifted(made: &Made, wanted: &Wanted, (nodes, seconds): (u64, f64)) -> Result<Shifted, Stays> {
    let clock = Clock::start(Some(seconds));
    let stop = || clock.over();
    let mut budget = Budget::nodes(nodes).stopped_by(&stop);
    shift(&made.plan, wanted.layout, wanted.line, wanted.to, wanted.near, &mut budget)
}

/// What comes of a line that is being moved: the cuts over the print, and a sentence; or why it stays.
pub(super) fn tried(desk: &Desk<'_>) -> Option<Answer> {
    let index: usize = desk.asked.query("layout").parse().ok()?;
    let laid = desk.made.plan.layouts.get(index)?;
    let on = sheet::place(desk, index)?;
    let wanted = wanted(desk.made, |name| desk.asked.query(name).to_owned(), Some(on))?;
    let told = match shifted(desk.made, &wanted, WHILE_MOVING) {
        Ok(found) => html! {
            svg { (sheet::over(desk, index, laid, &on, &Over { pieces: &found.layout.pieces, left_over: &found.left_over, lines: &found.cuts })) }
            p.said data-to=(wording::exact(found.at, desk.made.project().unit)) {
                (layout::pieces_told(desk.made, &found.layout.pieces)) " "
                (layout::told(desk.made, found.layout.waste, found.layout.effort.settings, found.layout.effort.cuts, &found.layout.recipe_counts))
            }
        },
        Err(stays) => html! { p.stays { (why(desk.made, &stays)) } },
    };
    Some(Answer::page(200, told))
}

/// The file with a line moved, `None` if it lies there already; or why it cannot be.
pub(super) fn moved(asked: &Asked, kept: &Kept, made: &Made) -> Result<Option<Changed>, Markup> {
    let refused = |said: String| html! { p { (said) } };
    let field = |name: &str| asked.field(name).trim().to_owned();
    fields::typed(asked, "to", say("layout-to", &[]), |typed| parse_length(typed, Some(made.project().unit)))
        .map_err(refused)?;
    // Where along the line it was held is a length of the sheet here.
    let known = |name: &str| parse_length(&field(name), Some(made.project().unit)).ok();
    let wanted = wanted(made, field, None).ok_or_else(|| refused(say("stays-no-line", &[])))?;
    let wanted = Wanted { near: known("along").unwrap_or(wanted.near), ..wanted };
    let found = shifted(made, &wanted, LET_GO).map_err(|stays| refused(why(made, &stays)))?;
    let line = made.plan.layouts.get(wanted.layout).map(cut_lines).and_then(|all| all.get(wanted.line).copied());
    if line.is_some_and(|line| line.at == found.at) {
        return Ok(None);
    }
    let pins = kept_by(made, wanted.layout, &found);
    let what = line.map(|line| told(made, &line, found.at)).unwrap_or_default();
    edit::pins(&kept.now.text, &pins, what).map(Some).map_err(|_| refused(say("refused-place", &[])))
}

/// The fewest pins with which the plan comes out as it was shown.
fn kept_by(made: &Made, index: usize, found: &Shifted) -> Vec<Pin> {
    let mut plan = made.plan.clone();
    plan.project.goal.pins.clone_from(&found.pins);
    let pins = pins_for(&plan, index, &found.layout, &mut Budget::nodes(4_000_000));
    pins.unwrap_or_else(|| found.pins.clone()).iter().map(|pin| written(made, pin)).collect()
}

/// A pin in the words of a project file.
pub(super) fn written(made: &Made, (recipe, layer, left, top, size): &Pinned) -> Pin {
    let unit = made.project().unit;
    Pin {
        recipe: recipe.clone(),
        layer: layer.clone(),
        left: wording::exact(*left, unit),
        top: wording::exact(*top, unit),
        size: wording::exact_size(*size, unit),
    }
}

fn length(made: &Made, length: Length) -> String {
    with_fractions(&wording::length(length, made.project().mark))
}

fn told(made: &Made, line: &CutLine, at: Length) -> String {
    let facts = [("from", length(made, line.at).into()), ("to", length(made, at).into())];
    say(if line.axis == Axis::X { "edit-moved-upright" } else { "edit-moved-level" }, &facts)
}

/// Why a line stays, and what would do.
fn why(made: &Made, stays: &Stays) -> String {
    match stays {
        Stays::NoLine => say("stays-no-line", &[]),
        Stays::Printed => say("stays-printed", &[]),
        Stays::NoPins => say("stays-no-pins", &[]),
        Stays::OffSheet => say("stays-off-sheet", &[]),
        Stays::Range { recipe, layer, side, least, most, wanted } => {
            let facts = [
                ("layer", layer.into()),
                ("recipe", recipe.into()),
                ("side", if *side == Axis::X { "width" } else { "height" }.into()),
                ("least", length(made, *least).into()),
                ("most", length(made, *most).into()),
                ("wanted", length(made, *wanted).into()),
            ];
            say(if least == most { "stays-size" } else { "stays-range" }, &facts)
        }
        Stays::NoLayout { cards, nearest, proven } => {
            let facts = [("cards", (*cards).into()), ("proven", if *proven { "yes" } else { "no" }.into())];
            let said = say("stays-no-layout", &facts);
            let nearest = nearest.map(|at| say("stays-nearest", &[("at", length(made, at).into())]));
            let pinned = (!made.project().goal.pins.is_empty()).then(|| say("stays-pinned", &[]));
            [Some(said), nearest, pinned].into_iter().flatten().collect::<Vec<_>>().join(" ")
        }
    }
}
