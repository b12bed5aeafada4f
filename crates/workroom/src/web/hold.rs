//! A layer of a recipe taken hold of on the drawn card: moved, made larger or smaller, and what comes of it at once.
//!
//! Taken hold of as the lines of a layout are (`lines.js`). While it moves the whole project is planned anew, as it would be
//! if it were kept. Left out on purpose: what a moved edge does to its layer (`cards::plan::taken`).

use ::cards::model::{Layer, Material, Range, Recipe};
use ::cards::plan::{Budget, Handle, Holds, Plan, handles, lies_on, plan, stands, taken};
use ::cards::{Finding, Severity, Subject};
use drawing::scene::points;
use drawing::text::with_fractions;
use maud::{Markup, html};
use measure::{Length, Rect, Size, parse_length};
use store::project_file;
use store::projects::Kept;

use super::answer::{Answer, Asked, Desk};
use super::edit::{self, Changed};
use super::pulled::Pulled;
use super::room::Made;
use super::sheet::pt;
use super::{fields, layers, layout, say, shell};
use crate::cli::Clock;
use crate::wording;

/// Nodes and seconds for an answer while a layer moves: it must come before the hand notices.
const WHILE_MOVING: (u64, f64) = (2_000_000, 0.07);
/// Nodes and seconds once it was let go.
const LET_GO: (u64, f64) = (20_000_000, 1.5);

/// A layer in hand, where it lies on the recipe's first card, or as it would on one.
#[derive(Clone, Copy)]
struct Held<'a> {
    made: &'a Made,
    recipe: usize,
    layer: usize,
    rect: Rect,
}

impl<'a> Held<'a> {
    /// `recipe-layer` in numbers from 0.
    fn new(made: &'a Made, name: &str) -> Option<Held<'a>> {
        let (recipe, layer) = name.split_once('-')?;
        let (recipe, layer) = (recipe.parse().ok()?, layer.parse().ok()?);
        let rect = lies(&made.plan, recipe, layer)?;
        Some(Held { made, recipe, layer, rect })
    }

    fn recipe(&self) -> Option<&'a Recipe> {
        self.made.project().recipes.get(self.recipe)
    }

    fn is(&self) -> Option<&'a Layer> {
        self.recipe()?.layers.get(self.layer)
    }

    /// True if a card is made of its recipe.
    fn is_used(&self) -> bool {
        self.made.plan.cards.iter().any(|card| card.recipe == self.recipe)
    }

    fn name(&self) -> String {
        format!("{}-{}", self.recipe, self.layer)
    }

    /// The file with a handle moved to there, planned.
    fn moved(&self, text: &str, handle: Handle, to: (Length, Length), within: (u64, f64)) -> Result<Moved, String> {
        let (is, step) = (self.rect, self.made.project().mark.step());
        let (recipe, old) = self.recipe().zip(self.is()).ok_or_else(|| say("recipe-refused", &[]))?;
        let at = handle.at(is);
        // Whole marks from where it lies: what is off a mark stays off it by as much.
        let by = |goes: bool, to: Length, at: Length| {
            if goes { measure::round::nearest(to - at, step) } else { Length::ZERO }
        };
        let by = (by(handle.goes_across(), to.0, at.0), by(handle.goes_down(), to.1, at.1));
        let new = taken(recipe, self.layer, is, handle, by, step).map_err(|holds| self.why(&holds))?;
        let document = edit::document(text).map_err(|_| say("refused-place", &[]))?;
        let changes = layers::changes_of(self.made, &document, (self.recipe, self.layer), old, &new);
        let changed = edit::change(text, &changes).map_err(|_| say("refused-place", &[]))?;
        let Some(changed) = changed else {
            return Ok(Moved { changed: None, plan: None });
        };
        let project = project_file::read(&changed.text).map_err(|problems| {
            let said = |problem: &project_file::Problem| wording::problem(problem).said;
            problems.first().map(said).unwrap_or_default()
        })?;
        let clock = Clock::start(Some(within.1));
        let stop = || clock.over();
        let planned = plan(&project, &mut Budget::nodes(within.0).stopped_by(&stop));
        let mine = |finding: &&Finding| {
            let about = matches!(&finding.subject, Subject::Recipe(name) if *name == recipe.name)
                || finding.severity == Severity::Serious;
            about
                && !self.made.plan.findings.iter().any(|old| old.code == finding.code && old.subject == finding.subject)
        };
        let worded = |finding: &Finding| {
            let worded = wording::finding(finding, project.mark);
            with_fractions(&format!("{} {}", worded.said, worded.remedy))
        };
        let news: Vec<&Finding> = planned.findings.iter().filter(mine).collect();
        let grave = |finding: &&&Finding| finding.severity == Severity::Serious || finding.code == "layer-runs-over";
        let gone = self.is_used() && !planned.cards.iter().any(|card| card.recipe == self.recipe);
        if let Some(finding) = news.iter().find(grave) {
            return Err(worded(finding));
        }
        if gone {
            let finding = planned.findings.iter().find(|finding| finding.severity == Severity::Serious);
            return Err(finding.map_or_else(|| say("hold-no-layout", &[]), worded));
        }
        let told = news.into_iter().map(worded).collect();
        Ok(Moved { changed: Some(changed), plan: Some((planned, told)) })
    }

    fn why(&self, holds: &Holds) -> String {
        let layer = self.is().map(|layer| layer.name.clone()).unwrap_or_default();
        match holds {
            Holds::NoLayer => say("recipe-refused", &[]),
            Holds::NoSize => say("hold-no-size", &[("layer", layer.into())]),
            Holds::TooSmall(least) => {
                let least = wording::length(*least, self.made.project().mark);
                say("hold-too-small", &[("layer", layer.into()), ("least", least.into())])
            }
        }
    }
}

/// A file changed by hand, and its plan with what is new to know of it; nothing where nothing changes.
struct Moved {
    changed: Option<Changed>,
    plan: Option<(Plan, Vec<String>)>,
}

/// Where a layer lies on a recipe's cards.
fn lies(plan: &Plan, recipe: usize, layer: usize) -> Option<Rect> {
    stands(plan, recipe).get(layer).map(|lies| lies.rect)
}

/// The layers of a recipe to take hold of, and the one in hand.
pub(super) fn section(desk: &Desk<'_>, index: usize, recipe: &Recipe) -> Markup {
    let chosen = Held::new(desk.made, desk.asked.either("hold")).filter(|held| held.recipe == index);
    let at = format!("hands-{index}");
    html! {
        div.hands id=(at) {
            h3 { (say("hold-title", &[])) }
            p.which {
                @for (number, layer) in recipe.layers.iter().enumerate() {
                    @let name = format!("{index}-{number}");
                    @if Held::new(desk.made, &name).is_some() {
                        @let current = chosen.is_some_and(|held| held.layer == number);
                        a.chip href=(format!("/w/{}/cards?hold={name}#{at}", desk.kept.id.0)) aria-current=[current.then_some("true")] { (layer.name) }
                        " "
                    }
                }
            }
            @if let (Some(held), Some(layer)) = (chosen, chosen.and_then(|held| held.is())) { (opened(desk, &held, layer)) }
            @else { p.hint { (say("hold-which", &[])) } }
        }
    }
}

fn opened(desk: &Desk<'_>, held: &Held<'_>, layer: &Layer) -> Markup {
    let ask = format!("/w/{}/layers?hold={}", desk.kept.id.0, held.name());
    let unit = desk.made.project().unit;
    let typed = |name: &str| desk.asked.field(name).to_owned();
    html! {
        div.panels-edit data-enhance="lines" id=(format!("hold-{}", held.name())) data-ask=(ask) {
            div.sheet {
                (drawn(desk, held))
                p.hint.by-hand { (say("hold-hint", &[])) }
                p.moved role="status" {}
            }
            div.told {
                p.said { (said(desk.made, &desk.made.plan, held)) }
                div.by-typing {
                    form.panel-form method="post" action=(format!("/w/{}/layers", desk.kept.id.0)) {
                        (shell::seen(desk.kept, "cards", &format!("hands-{}", held.recipe)))
                        input type="hidden" name="hold" value=(held.name());
                        label.field {
                            span { (say("hold-what", &[("layer", (&layer.name).into())])) }
                            select name="line" {
                                @for handle in handles(layer) {
                                    @let number = number(*handle);
                                    option value=(number) selected[typed("line") == number.to_string()] { (handle_name(*handle)) ", " (place_of(*handle, held.rect, |length| fields::length(desk, length))) }
                                }
                            }
                        }
                        label.field.short {
                            span { (say("layout-to", &[])) }
                            input type="text" name="to" value=(typed("to")) placeholder=(wording::exact(held.rect.x, unit)) autocomplete="off" spellcheck="false";
                        }
                        button type="submit" { (say("layout-move-it", &[])) }
                    }
                }
                p.hint { (say(if matches!(layer.material, Material::Patterned { .. }) { "hold-range" } else { "hold-edges" }, &[])) }
            }
        }
    }
}

fn number(handle: Handle) -> usize {
    Handle::ALL.iter().position(|one| *one == handle).unwrap_or_default()
}

fn handle_name(handle: Handle) -> String {
    match handle {
        Handle::Left => say("hold-left", &[]),
        Handle::Top => say("hold-top", &[]),
        Handle::Right => say("hold-right", &[]),
        Handle::Bottom => say("hold-bottom", &[]),
        Handle::Whole => say("hold-whole", &[]),
    }
}

/// Where a handle is, as it is told and as it is typed.
fn place_of(handle: Handle, rect: Rect, length: impl Fn(Length) -> String) -> String {
    let (x, y) = handle.at(rect);
    match (handle.goes_across(), handle.goes_down()) {
        (true, true) => format!("{}, {}", length(x), length(y)),
        (true, false) => length(x),
        _ => length(y),
    }
}

/// The card with its layers, to take hold of one.
fn drawn(desk: &Desk<'_>, held: &Held<'_>) -> Markup {
    let Some(card) = Pulled::new(desk, &desk.made.plan, held.recipe) else { return html! {} };
    let name = held.is().map(|layer| layer.name.clone()).unwrap_or_default();
    html! {
        svg.lined.front xmlns="http://www.w3.org/2000/svg" viewBox=(card.view()) role="group" font-family="'Libertinus Serif', serif"
            aria-label=(say("hold-alt", &[("layer", name.into())])) {
            (card.base())
            (over(desk.made, held, &card, held.rect))
        }
    }
}

/// The layers where they lie on a card, what shows round the one in hand, and its handles.
fn over(made: &Made, held: &Held<'_>, pulled: &Pulled<'_>, own: Rect) -> Markup {
    let Some(layer) = held.is() else { return html! {} };
    let (mark, unit) = (made.project().mark, made.project().unit);
    let front = held.recipe().map(|recipe| recipe.finished).unwrap_or_default();
    let told = |length: Length| with_fractions(&wording::length(length, mark));
    // The whole layer lies under its own edges.
    let whole_first = handles(layer).iter().rev();
    html! {
        g.over {
            (pulled.papers())
            (pulled.borders(held.layer))
            @for handle in whole_first {
                @let axis = match (handle.goes_across(), handle.goes_down()) { (true, true) => "both", (true, false) => "x", _ => "y" };
                @let (from, to) = ends(*handle, own);
                @let now = if axis == "y" { handle.at(own).1 } else { handle.at(own).0 };
                g.grip tabindex="0" role="slider" data-line=(number(*handle)) data-axis=(axis)
                    data-at=(place_of(*handle, own, |length| wording::exact(length, unit)))
                    aria-orientation=(if axis == "y" { "vertical" } else { "horizontal" })
                    aria-label=(format!("{}: {}", layer.name, handle_name(*handle)))
                    aria-valuemin="0" aria-valuemax=(marks(made, front.width.max(front.height)))
                    aria-valuenow=(marks(made, now)) aria-valuetext=(place_of(*handle, own, told)) {
                    @if *handle == Handle::Whole { (outline(own, "whole")) }
                    line.touch x1=(pt(from.0)) y1=(pt(from.1)) x2=(pt(to.0)) y2=(pt(to.1)) {}
                    line.cut x1=(pt(from.0)) y1=(pt(from.1)) x2=(pt(to.0)) y2=(pt(to.1)) {}
                    @let knob = (mid(from.0, to.0), mid(from.1, to.1));
                    line.knob x1=(pt(knob.0)) y1=(pt(knob.1)) x2=(pt(knob.0)) y2=(pt(knob.1)) {}
                }
            }
        }
    }
}

fn outline(rect: Rect, class: &str) -> Markup {
    html! { rect class=(class) x=(pt(rect.x)) y=(pt(rect.y)) width=(pt(rect.size.width)) height=(pt(rect.size.height)) {} }
}

fn mid(one: Length, other: Length) -> Length {
    Length::from_ticks((one.ticks() + other.ticks()) / 2)
}

fn marks(made: &Made, length: Length) -> i64 {
    length.ticks() / made.project().mark.step().ticks().max(1)
}

type Spot = (Length, Length);

/// Both ends of what a handle is: an edge, or the middle of the layer.
fn ends(handle: Handle, rect: Rect) -> (Spot, Spot) {
    let (left, top, right, bottom) = (rect.x, rect.y, rect.right(), rect.bottom());
    match handle {
        Handle::Left => ((left, top), (left, bottom)),
        Handle::Right => ((right, top), (right, bottom)),
        Handle::Top => ((left, top), (right, top)),
        Handle::Bottom => ((left, bottom), (right, bottom)),
        Handle::Whole => {
            let middle = (mid(left, right), mid(top, bottom));
            (middle, middle)
        }
    }
}

/// A layer in words: its size, and what shows round it.
fn said(made: &Made, plan: &Plan, held: &Held<'_>) -> String {
    let (Some(recipe), Some(layer), Some(own)) = (held.recipe(), held.is(), lies(plan, held.recipe, held.layer)) else {
        return String::new();
    };
    let mark = made.project().mark;
    let new = plan.project.layer(held.recipe, held.layer);
    let told = |length: Length| wording::length(length, mark);
    let on = lies_on(recipe, held.layer).and_then(|on| recipe.layers.get(on)).map(|on| on.name.clone());
    let [left, right, above, below] =
        stands(plan, held.recipe).get(held.layer).map(|lies| lies.borders).unwrap_or_default();
    let facts = [
        ("layer", (&layer.name).into()),
        ("size", wording::size(own.size, mark).into()),
        ("on", on.unwrap_or_else(|| say("hold-card", &[])).into()),
        ("left", told(left).into()),
        ("above", told(above).into()),
        ("right", told(right).into()),
        ("below", told(below).into()),
    ];
    let mut text = say("hold-said", &facts);
    let mine = plan.layouts.iter().find(|laid| laid.pieces.iter().any(|piece| piece.recipe == held.recipe));
    if let (Some(laid), Material::Patterned { .. }) = (mine, &layer.material) {
        let sentence = layout::told(made, laid.waste, laid.effort.settings, laid.effort.cuts, &laid.recipe_counts);
        if let Some(Layer { material: Material::Patterned { width, height, .. }, .. }) = new
            && (width.least, height.least) != (width.most, height.most)
        {
            let range = |range: &Range| {
                let facts = [("least", told(range.least).into()), ("most", told(range.most).into())];
                if range.least == range.most { told(range.least) } else { say("hold-range-told", &facts) }
            };
            let facts = [("width", range(width).into()), ("height", range(height).into())];
            text.push(' ');
            text.push_str(&say("hold-ranges", &facts));
        }
        text.push(' ');
        text.push_str(&say("hold-sheet", &[("sentence", sentence.into())]));
    }
    text
}

/// Where a handle is wanted: `point` and `near` in the drawing, `marks` and `down` from where it is, or `to` as typed.
fn wanted(held: &Held<'_>, handle: Handle, asked: &Asked) -> Option<(Length, Length)> {
    let (x, y) = handle.at(held.rect);
    let whole = handle == Handle::Whole;
    let number = |name: &str| asked.query(name).parse::<f64>().ok().filter(|at| at.is_finite());
    let counted = |name: &str| asked.query(name).parse::<i64>().ok().filter(|marks| marks.abs() < 10_000);
    let step = held.made.project().mark.step();
    if let Some(at) = number("point").map(|at| points(at.clamp(-5_000.0, 5_000.0))) {
        if whole {
            // The hand holds its middle.
            let down = points(number("near")?.clamp(-5_000.0, 5_000.0));
            let size = held.rect.size;
            return Some((at - mid(Length::ZERO, size.width), down - mid(Length::ZERO, size.height)));
        }
        return Some(if handle.goes_across() { (at, y) } else { (x, at) });
    }
    if let Some(marks) = counted("marks") {
        let down = counted("down").unwrap_or_default();
        return Some(if whole {
            (x + step * marks, y + step * down)
        } else if handle.goes_across() {
            (x + step * marks, y)
        } else {
            (x, y + step * marks)
        });
    }
    let length = |text: &str| parse_length(text.trim(), Some(held.made.project().unit)).ok();
    let typed = asked.field("to");
    if whole {
        let (left, top) = typed.split_once(',')?;
        return Some((length(left)?, length(top)?));
    }
    let at = length(typed)?;
    Some(if handle.goes_across() { (at, y) } else { (x, at) })
}

fn asked_handle(held: &Held<'_>, line: &str) -> Option<Handle> {
    let handle = *Handle::ALL.get(line.parse::<usize>().ok()?)?;
    held.is().filter(|layer| handles(layer).contains(&handle)).map(|_| handle)
}

/// What comes of a layer while it is moved: it and its measures, and a sentence; or why it stays.
pub(super) fn tried(desk: &Desk<'_>) -> Option<Answer> {
    let held = Held::new(desk.made, desk.asked.query("hold"))?;
    let handle = asked_handle(&held, desk.asked.query("line"))?;
    let to = wanted(&held, handle, desk.asked)?;
    let told = match held.moved(&desk.kept.now.text, handle, to, WHILE_MOVING) {
        Err(why) => html! { p.stays { (why) } },
        Ok(moved) => {
            let (plan, news) = moved.plan.as_ref().map_or((&desk.made.plan, &[][..]), |(plan, news)| (plan, news));
            let pulled = Pulled::new(desk, plan, held.recipe)?;
            let own = lies(plan, held.recipe, held.layer).unwrap_or(held.rect);
            let unit = desk.made.project().unit;
            // What is kept is where the hand was: the layout may choose another size out of a range.
            let kept = place_of(handle, shifted(&held, handle, to), |length| wording::exact(length, unit));
            let shown = place_of(handle, own, |length| wording::exact(length, unit));
            html! {
                svg { (over(desk.made, &held, &pulled, own)) }
                p.said data-to=(kept) data-shown=(shown) {
                    (with_fractions(&said(desk.made, plan, &held)))
                    @for one in news { " " (one) }
                }
            }
        }
    };
    Some(Answer::page(200, told))
}

/// The layer's place with one handle on the mark where it was wanted.
fn shifted(held: &Held<'_>, handle: Handle, to: (Length, Length)) -> Rect {
    let (is, step) = (held.rect, held.made.project().mark.step());
    let at = handle.at(is);
    let (x, y) = (at.0 + measure::round::nearest(to.0 - at.0, step), at.1 + measure::round::nearest(to.1 - at.1, step));
    match handle {
        Handle::Whole => Rect::new(x, y, is.size),
        Handle::Left => Rect::new(x, is.y, Size::new(is.right() - x, is.size.height)),
        Handle::Top => Rect::new(is.x, y, Size::new(is.size.width, is.bottom() - y)),
        Handle::Right => Rect::new(is.x, is.y, Size::new(x - is.x, is.size.height)),
        Handle::Bottom => Rect::new(is.x, is.y, Size::new(is.size.width, y - is.y)),
    }
}

/// The file with a layer moved; or why it stays.
pub(super) fn change(asked: &Asked, kept: &Kept, made: &Made) -> Result<Option<Changed>, Markup> {
    let refused = |said: String| html! { p { (said) } };
    let held = Held::new(made, asked.field("hold")).ok_or_else(|| refused(say("recipe-refused", &[])))?;
    let handle = asked_handle(&held, asked.field("line")).ok_or_else(|| refused(say("recipe-refused", &[])))?;
    let to = wanted(&held, handle, asked).ok_or_else(|| {
        let facts = [("typed", asked.field("to").trim().into())];
        refused(say(if handle == Handle::Whole { "hold-bad-place" } else { "hold-bad-length" }, &facts))
    })?;
    held.moved(&kept.now.text, handle, to, LET_GO).map(|moved| moved.changed).map_err(refused)
}
