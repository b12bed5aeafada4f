//! A collage sheet on the Paper page: its printed lines drawn over it, moved by hand or by typing, one more, one fewer.
//!
//! The lines are taken hold of as those of a layout are (`lines.js`). Left out on purpose: what a moved line does to the
//! other panels (`cards::model::Collage`).

use ::cards::model::{Collage, Design, Face, Look, PrintedLine, Side};
use cutting::Axis;
use drawing::scene::points;
use maud::{Markup, html};
use measure::{Length, Rect, Size, parse_length, parse_size};
use store::projects::Kept;

use super::answer::{Answer, Asked, Desk};
use super::edit::{self, Changed};
use super::room::Made;
use super::sheet::pt;
use super::{fields, say, shell};
use crate::{panels, wording};

/// Most columns or rows a form asks for.
const MOST: u32 = 24;

/// A face by its place.
#[derive(Clone, Copy)]
pub(super) struct At<'a> {
    made: &'a Made,
    pack: usize,
    design: usize,
    side: Side,
}

impl<'a> At<'a> {
    fn new(made: &'a Made, asked: &Asked) -> Option<At<'a>> {
        let number = |name: &str| asked.either(name).parse::<usize>().ok();
        let side = match asked.either("side") {
            "front" => Side::Front,
            "back" => Side::Back,
            _ => return None,
        };
        let at = At { made, pack: number("pack")?, design: number("design")?, side };
        at.face().map(|_| at)
    }

    fn face(&self) -> Option<&'a Face> {
        Some(self.made.project().design(self.pack, self.design)?.face(self.side))
    }

    fn sheet(&self) -> Size {
        self.made.project().packs.get(self.pack).map(|pack| pack.sheet).unwrap_or_default()
    }

    fn mark(&self) -> Length {
        self.made.project().mark.step()
    }

    /// The narrowest panel.
    fn least(&self) -> Length {
        panels::least(self.made.project().mark)
    }

    fn name(&self) -> String {
        format!("panels-{}-{}-{}", self.pack, self.design, self.side.name())
    }

    /// Its place in the file.
    fn place(&self, key: &str) -> String {
        format!("pack.{}.design.{}.{}.{key}", self.pack, self.design, self.side.name())
    }
}

/// The printed panels of a face: to open, to see, to change.
pub(super) fn section(desk: &Desk<'_>, pack: usize, design: usize, side: Side, of: &Design) -> Markup {
    let at = At { made: desk.made, pack, design, side };
    let face = of.face(side);
    let chosen = desk.asked.either("panels") == at.name();
    html! {
        details.panels id=(at.name()) open[chosen] {
            summary {
                @match &face.collage {
                    Some(collage) => { (say("panels-title", &[("face", (&face.name).into()), ("count", collage.rects().len().into())])) }
                    None => { (say("panels-none", &[("face", (&face.name).into())])) }
                }
            }
            @match &face.collage {
                Some(collage) => { (opened(desk, &at, collage)) }
                None => {
                    p.hint { (say("panels-what", &[])) }
                    (form(desk, &at, "begin", &html! {
                        (short(desk, "columns", &say("panels-columns", &[]), "4"))
                        (short(desk, "rows", &say("panels-rows", &[]), "3"))
                        button type="submit" { (say("panels-begin", &[])) }
                    }))
                    (look_for(desk, &at, face))
                }
            }
        }
    }
}

fn opened(desk: &Desk<'_>, at: &At<'_>, collage: &Collage) -> Markup {
    let lines = collage.lines();
    let ask = format!("/w/{}/panels?pack={}&design={}&side={}", desk.kept.id.0, at.pack, at.design, at.side.name());
    let axes = [("x", say("panels-upright", &[])), ("y", say("panels-level", &[]))];
    html! {
        div.panels-edit data-enhance="lines" id=(format!("{}-edit", at.name())) data-ask=(ask) {
            div.sheet {
                (drawn(desk, at, collage))
                p.hint.by-hand { (say("panels-hint", &[])) }
                p.moved role="status" {}
            }
            div.told {
                div.by-typing {
                    (form(desk, at, "move", &html! {
                        label.field {
                            span { (say("panels-which", &[])) }
                            select name="line" { @for (number, line) in lines.iter().enumerate() { option value=(number) selected[desk.asked.field("line") == number.to_string()] { (name(desk, collage, number, line)) } } }
                        }
                        (short(desk, "to", &say("layout-to", &[]), ""))
                        button type="submit" { (say("layout-move-it", &[])) }
                    }))
                }
                @if collage.is_free() {
                    (form(desk, at, "add", &html! {
                        (short(desk, "left", &say("field-left", &[]), ""))
                        (short(desk, "top", &say("field-top", &[]), ""))
                        (short(desk, "size", &say("field-size", &[]), ""))
                        button type="submit" { (say("panels-add", &[])) }
                    }))
                    (form(desk, at, "remove", &html! {
                        label.field {
                            span { (say("panels-which-panel", &[])) }
                            select name="line" { @for (number, panel) in collage.panels.iter().enumerate() { option value=(number * 4) { (panel_name(desk, number, panel)) } } }
                        }
                        button type="submit" { (say("panels-remove", &[])) }
                    }))
                } @else {
                    (form(desk, at, "divide", &html! {
                        label.field {
                            span { (say("panels-new-line", &[])) }
                            select name="axis" { @for (axis, said) in &axes { option value=(axis) selected[desk.asked.field("axis") == *axis] { (said) } } }
                        }
                        (short(desk, "at-place", &say("layout-to", &[]), ""))
                        button type="submit" { (say("panels-divide", &[])) }
                    }))
                    (form(desk, at, "remove", &html! {
                        label.field {
                            span { (say("panels-which", &[])) }
                            select name="line" { @for (number, line) in lines.iter().enumerate() { option value=(number) { (name(desk, collage, number, line)) } } }
                        }
                        button type="submit" { (say("panels-join", &[])) }
                    }))
                    (exact(desk, at))
                }
                div.ways {
                    @if collage.is_free() { (form(desk, at, "rows", &html! { button type="submit" { (say("panels-in-rows", &[])) } })) }
                    @else { (form(desk, at, "free", &html! { button type="submit" { (say("panels-free", &[])) } })) }
                    @if let Some(face) = at.face() { (look_for(desk, at, face)) }
                    (form(desk, at, "clear", &html! { button.quiet type="submit" { (say("panels-clear", &[])) } }))
                }
            }
        }
    }
}

/// The panels looked for in the face's picture, where it has one.
fn look_for(desk: &Desk<'_>, at: &At<'_>, face: &Face) -> Markup {
    let pictured = matches!(face.look, Look::Picture(_) | Look::Drawn(_));
    html! {
        @if pictured {
            (form(desk, at, "find", &html! { button type="submit" { (say("panels-look", &[])) } }))
        }
    }
}

/// Widths and heights as they stand in the file, to type.
fn exact(desk: &Desk<'_>, at: &At<'_>) -> Markup {
    fields::change(
        desk,
        "paper",
        &at.name(),
        &html! {
            input type="hidden" name="panels" value=(at.name());
            (fields::line(desk, &at.place("collage.columns"), &say("panels-widths", &[]), "3, 3, 3, 3"))
            (fields::line(desk, &at.place("collage.rows"), &say("panels-heights", &[]), "4, 4, 4"))
        },
    )
}

fn short(desk: &Desk<'_>, name: &str, label: &str, hint: &str) -> Markup {
    let typed = desk.asked.field(name);
    let value = if typed.is_empty() && matches!(name, "columns" | "rows") { hint } else { typed };
    html! { label.field.short { span { (label) } input type="text" name=(name) value=(value) autocomplete="off" spellcheck="false"; } }
}

fn form(desk: &Desk<'_>, at: &At<'_>, act: &str, inside: &Markup) -> Markup {
    html! {
        form.panel-form method="post" action=(format!("/w/{}/panels", desk.kept.id.0)) {
            (shell::seen(desk.kept, "paper", &at.name()))
            input type="hidden" name="pack" value=(at.pack);
            input type="hidden" name="design" value=(at.design);
            input type="hidden" name="side" value=(at.side.name());
            input type="hidden" name="panels" value=(at.name());
            input type="hidden" name="act" value=(act);
            (inside)
        }
    }
}

/// A line in words: "after column 2: 6 in from the left".
fn name(desk: &Desk<'_>, collage: &Collage, number: usize, line: &PrintedLine) -> String {
    let at = ("at", fields::length(desk, line.at).into());
    if collage.is_free() {
        let edge = ["left", "top", "right", "bottom"][number % 4];
        return say("panels-edge", &[("panel", (number / 4 + 1).into()), ("edge", edge.into()), at]);
    }
    match line.axis {
        Axis::X => say("panels-line-upright", &[("number", (number + 1).into()), at]),
        Axis::Y => say("panels-line-level", &[("number", (number + 1 - collage.columns.len()).into()), at]),
    }
}

fn panel_name(desk: &Desk<'_>, number: usize, panel: &Rect) -> String {
    let (width, height) = (fields::length(desk, panel.size.width), fields::length(desk, panel.size.height));
    say("panels-panel", &[("number", (number + 1).into()), ("size", format!("{width} × {height}").into())])
}

/// The face with its panels over it.
fn drawn(desk: &Desk<'_>, at: &At<'_>, collage: &Collage) -> Markup {
    let sheet = at.sheet();
    let view = format!("0 0 {} {}", pt(sheet.width), pt(sheet.height));
    let print =
        format!("/w/{}/{}/face-{}-{}-{}.svg", desk.kept.id.0, desk.kept.now.number, at.pack, at.design, at.side.name());
    let face = at.face().map(|face| face.name.clone()).unwrap_or_default();
    html! {
        svg.lined xmlns="http://www.w3.org/2000/svg" viewBox=(view) role="group" font-family="'Libertinus Serif', serif"
            aria-label=(say("panels-title", &[("face", face.into()), ("count", collage.rects().len().into())])) {
            rect.ground width=(pt(sheet.width)) height=(pt(sheet.height)) {}
            image href=(print) width=(pt(sheet.width)) height=(pt(sheet.height)) preserveAspectRatio="none" {}
            (over(desk, at, collage))
        }
    }
}

/// Panels with their sizes, and the lines to take hold of.
fn over(desk: &Desk<'_>, at: &At<'_>, collage: &Collage) -> Markup {
    let (sheet, unit) = (at.sheet(), desk.made.project().unit);
    // Chosen: letters a phone still shows at 12 px, where a panel is wide enough for them.
    let letters = sheet.width.to_points() / 22.0;
    let room =
        |panel: &Rect| panel.size.width.to_points() > letters * 4.8 && panel.size.height.to_points() > letters * 1.5;
    html! {
        g.over {
            @for panel in collage.rects() {
                rect.panel x=(pt(panel.x)) y=(pt(panel.y)) width=(pt(panel.size.width)) height=(pt(panel.size.height)) {}
                @if room(&panel) {
                    text.size aria-hidden="true" x=(pt(panel.x + half(panel.size.width))) y=(pt(panel.y + half(panel.size.height))) font-size=(format!("{letters:.1}")) {
                        (drawing::text::with_fractions(&wording::size(panel.size, desk.made.project().mark)))
                    }
                }
            }
            @for (number, line) in collage.lines().iter().enumerate() {
                @let axis = if line.axis == Axis::X { "x" } else { "y" };
                @let (from, to, knob) = ends(line, number);
                g.grip tabindex="0" role="slider" data-line=(number) data-at=(wording::exact(line.at, unit)) data-axis=(axis)
                    aria-orientation=(if line.axis == Axis::X { "horizontal" } else { "vertical" }) aria-label=(say("panels-grip", &[]))
                    aria-valuemin="0" aria-valuemax=(line_marks(at, if line.axis == Axis::X { sheet.width } else { sheet.height }))
                    aria-valuenow=(line_marks(at, line.at)) aria-valuetext=(name(desk, collage, number, line)) {
                    line.touch x1=(from.0) y1=(from.1) x2=(to.0) y2=(to.1) {}
                    line.cut x1=(from.0) y1=(from.1) x2=(to.0) y2=(to.1) {}
                    line.knob x1=(knob.0) y1=(knob.1) x2=(knob.0) y2=(knob.1) {}
                }
            }
        }
    }
}

fn half(length: Length) -> Length {
    Length::from_ticks(length.ticks() / 2)
}

/// A number of marks.
fn line_marks(at: &At<'_>, length: Length) -> i64 {
    length.ticks() / at.mark().ticks().max(1)
}

type Spot = (String, String);

/// Both ends of a line and a place for its knob, which lies where those of other lines do not.
fn ends(line: &PrintedLine, number: usize) -> (Spot, Spot, Spot) {
    // Chosen: a little off the middle, by turns, so that two knobs never lie on each other nor on a panel's size.
    let part = if number.is_multiple_of(2) { 7 } else { 5 };
    let knob = line.from + Length::from_ticks((line.to - line.from).ticks() * part / 12);
    let spot = |along: Length| match line.axis {
        Axis::X => (pt(line.at), pt(along)),
        Axis::Y => (pt(along), pt(line.at)),
    };
    (spot(line.from), spot(line.to), spot(knob))
}

/// What comes of a line that is being moved.
pub(super) fn tried(desk: &Desk<'_>) -> Option<Answer> {
    let at = At::new(desk.made, desk.asked)?;
    let collage = at.face()?.collage.as_ref()?;
    let number: usize = desk.asked.query("line").parse().ok()?;
    let line = *collage.lines().get(number)?;
    let marks =
        || Some(line.at + at.mark() * desk.asked.query("marks").parse::<i64>().ok().filter(|m| m.abs() < 100_000)?);
    let point = || {
        let at: f64 = desk.asked.query("point").parse().ok().filter(|at: &f64| at.is_finite())?;
        Some(points(at.clamp(-20_000.0, 20_000.0)))
    };
    let to = desk.made.project().mark.nearest(point().or_else(marks)?);
    let told = match collage.with_line(number, to, at.sheet(), at.least()) {
        Some(moved) => {
            let line = *moved.lines().get(number)?;
            html! {
                svg { (over(desk, &at, &moved)) }
                p.said data-to=(wording::exact(line.at, desk.made.project().unit)) { (name(desk, &moved, number, &line)) }
            }
        }
        None => html! { p.stays { (say("panels-stays", &[])) } },
    };
    Some(Answer::page(200, told))
}

/// The file with the panels of a face changed; or why it cannot be.
pub(super) fn change(asked: &Asked, kept: &Kept, made: &Made) -> Result<Option<Changed>, Markup> {
    let refused = |said: String| html! { p { (said) } };
    let at = At::new(made, asked).ok_or_else(|| refused(say("refused-place", &[])))?;
    let name = at.face().map(|face| face.name.clone()).unwrap_or_default();
    let wanted = wanted(&at, asked).map_err(refused)?;
    let unit = made.project().unit;
    let list = |sides: &[Length]| sides.iter().map(|side| wording::exact(*side, unit)).collect::<Vec<_>>().join(", ");
    let one = |panel: &Rect| {
        let size = wording::exact_size(panel.size, unit);
        format!("{}, {}, {size}", wording::exact(panel.x, unit), wording::exact(panel.y, unit))
    };
    let changes: Vec<(String, String)> = match &wanted {
        None => vec![(at.place("collage"), String::new())],
        Some(collage) => {
            let panels = collage.panels.iter().map(one).collect::<Vec<_>>().join("; ");
            let all = [
                ("collage.columns", list(&collage.columns)),
                ("collage.rows", list(&collage.rows)),
                ("collage.panels", panels),
            ];
            all.into_iter().map(|(key, value)| (at.place(key), value)).collect()
        }
    };
    let id = if wanted.is_some() { "edit-panels" } else { "edit-panels-gone" };
    let what = say(id, &[("face", name.into())]);
    let changed = edit::change(&kept.now.text, &changes).map_err(|_| refused(say("refused-place", &[])))?;
    Ok(changed.map(|changed| Changed { what, ..changed }))
}

/// The collage a form asks for; `None`: no collage any more.
fn wanted(at: &At<'_>, asked: &Asked) -> Result<Option<Collage>, String> {
    let unit = at.made.project().unit;
    let sheet = at.sheet();
    let length = |name: &str, label| fields::typed(asked, name, label, |typed| parse_length(typed, Some(unit)));
    let count = |name: &str, label: String| {
        let typed = asked.field(name).trim();
        typed.parse::<u32>().ok().filter(|count| (1..=MOST).contains(count)).ok_or_else(|| {
            say("new-bad-number", &[("label", label.into()), ("typed", typed.into()), ("most", MOST.into())])
        })
    };
    let words = |length: Length| drawing::text::with_fractions(&wording::length(length, at.made.project().mark));
    let there = at.face().and_then(|face| face.collage.clone());
    if asked.field("act") == "begin" {
        let columns = count("columns", say("panels-columns", &[]))?;
        let rows = count("rows", say("panels-rows", &[]))?;
        return Ok(Some(Collage::even(sheet, columns, rows, at.mark())));
    }
    if asked.field("act") == "find" {
        let picture = at.made.face((at.pack, at.design, at.side));
        let pixels = |side: u32| usize::try_from(side).unwrap_or(0);
        let raster = picture.and_then(|picture| {
            photo::Raster::new(pixels(picture.width_px()), pixels(picture.height_px()), picture.rgb().to_vec())
        });
        let found = raster.and_then(|raster| panels::proposed(&raster, sheet, at.made.project().mark));
        return found.map(Some).ok_or_else(|| say("panels-one-print-here", &[]));
    }
    let collage = there.ok_or_else(|| say("refused-place", &[]))?;
    let line = || asked.field("line").parse::<usize>().map_err(|_| say("refused-place", &[]));
    match asked.field("act") {
        "clear" => Ok(None),
        "move" => {
            let to = length("to", say("layout-to", &[]))?;
            let (first, last) = collage.room(line()?, sheet, at.least()).ok_or_else(|| say("panels-stays", &[]))?;
            if to < first || to > last {
                return Err(say("panels-between", &[("first", words(first).into()), ("last", words(last).into())]));
            }
            Ok(collage.with_line(line()?, to, sheet, at.least()))
        }
        "divide" => {
            let to = length("at-place", say("layout-to", &[]))?;
            let axis = if asked.field("axis") == "y" { Axis::Y } else { Axis::X };
            let facts = [("least", words(at.least()).into())];
            collage.divided(axis, to, sheet, at.least()).map(Some).ok_or_else(|| say("panels-no-divide", &facts))
        }
        "remove" => collage.without_line(line()?).map(Some).ok_or_else(|| say("panels-last", &[])),
        "free" => Ok(Some(collage.free())),
        "rows" => Ok(collage.in_rows()),
        "add" => {
            let (left, top) = (length("left", say("field-left", &[]))?, length("top", say("field-top", &[]))?);
            let size = fields::typed(asked, "size", say("field-size", &[]), |typed| parse_size(typed, Some(unit)))?;
            let mut more = collage;
            more.panels.push(Rect::new(left, top, size));
            Ok(Some(more))
        }
        _ => Err(say("refused-place", &[])),
    }
}
