//! Parts of a print that matter to the maker, on the Paper page: those to keep whole and those to avoid, marked by drawing a
//! frame or by typing, and taken off again.
//!
//! Left out on purpose: what becomes of them (`cards::plan::placed`).

use ::cards::model::{Design, Face, Material, Region, Side, Wanted};
use maud::{Markup, html};
use measure::{Length, Rect, Unit, parse_length, parse_size};
use store::projects::Kept;

use super::answer::{Asked, Desk};
use super::edit::{self, Changed};
use super::room::Made;
use super::sheet::pt;
use super::{fields, interest, say, shell};
use crate::wording;

/// Most regions of a face. Chosen: more frames than these hide the print.
const MOST: usize = 24;

fn name((pack, design): (usize, usize), side: Side) -> String {
    format!("parts-{pack}-{design}-{}", side.name())
}

/// The marked parts of a face: to open, to see, to change.
pub(super) fn section(desk: &Desk<'_>, at: (usize, usize), side: Side, of: &Design) -> Markup {
    let face = of.face(side);
    let name = name(at, side);
    let chosen = desk.asked.either("panels") == name;
    html! {
        details.parts id=(name) open[chosen] {
            summary { (say("regions-title", &[("face", (&face.name).into()), ("count", face.regions.len().into())])) }
            @if face.collage.is_some() { p.hint { (say("regions-collage", &[])) } }
            p.hint { (say("regions-what", &[])) " " a href=(interest::address((at.0, at.1, side))) { (say("regions-interest", &[("face", (&face.name).into())])) } }
            div.parts-edit data-enhance="regions" data-per=(per(desk)) data-mark=(pt(desk.made.project().mark.step())) {
                div.sheet { (drawn(desk, at, side, face)) p.hint.by-hand { (say("regions-keys", &[])) } }
                div.told {
                    @for (number, region) in face.regions.iter().enumerate() {
                        (form(desk, at, side, "remove", &html! {
                            input type="hidden" name="number" value=(number);
                            p { strong { (number + 1) } " " (told(desk, region)) }
                            button type="submit" { (say("regions-remove", &[])) }
                        }))
                        details open[desk.asked.field("act") == "change" && desk.asked.field("number") == number.to_string()] {
                            summary { (say("regions-change", &[("number", (number + 1).into())])) }
                            (form(desk, at, side, "change", &html! {
                                input type="hidden" name="number" value=(number);
                                (inputs(desk, Some(region)))
                                button type="submit" { (say("regions-change-it", &[])) }
                            }))
                        }
                    }
                    @if face.regions.len() < MOST {
                        (form(desk, at, side, "add", &html! {
                            (inputs(desk, None))
                            button type="submit" { (say("regions-add", &[])) }
                        }))
                    }
                }
            }
        }
    }
}

/// What is asked of a region: what was typed and refused, or what a region that is there has.
fn inputs(desk: &Desk<'_>, there: Option<&Region>) -> Markup {
    let unit = desk.made.project().unit;
    let sent = (desk.asked.field("act") == "change") == there.is_some() && !desk.asked.field("act").is_empty();
    let has = |name: &str| {
        let Some(region) = there.filter(|_| !sent) else { return desk.asked.field(name).to_owned() };
        match (name, &region.wanted) {
            ("left", _) => wording::exact(region.rect.x, unit),
            ("top", _) => wording::exact(region.rect.y, unit),
            ("size", _) => wording::exact_size(region.rect.size, unit),
            ("wanted", Wanted::Avoid) => "avoid".to_owned(),
            ("show", Wanted::Keep { show_on: Some((recipe, layer)) }) => format!("{recipe}/{layer}"),
            _ => String::new(),
        }
    };
    html! {
        label.field {
            span { (say("regions-wanted", &[])) }
            select name="wanted" { @for (key, said) in [("keep", say("regions-keep", &[])), ("avoid", say("regions-avoid", &[]))] {
                option value=(key) selected[has("wanted") == key] { (said) }
            } }
        }
        @for (key, label) in [("left", say("field-left", &[])), ("top", say("field-top", &[])), ("size", say("field-size", &[]))] {
            label.field.short { span { (label) } input type="text" name=(key) value=(has(key)) autocomplete="off" spellcheck="false"; }
        }
        label.field {
            span { (say("regions-show", &[])) }
            select name="show" { option value="" { (say("regions-any", &[])) } @for piece in pieces(desk.made) { option value=(piece) selected[has("show") == piece] { (piece) } } }
        }
    }
}

/// Points in one of the project's units.
fn per(desk: &Desk<'_>) -> String {
    let unit = if desk.made.project().unit == Unit::Inch { Length::INCH } else { Length::mm(1) };
    format!("{}", unit.to_points())
}

/// The patterned pieces of the recipes, as the file calls them.
fn pieces(made: &Made) -> Vec<String> {
    let layers =
        made.project().recipes.iter().flat_map(|recipe| recipe.layers.iter().map(move |layer| (recipe, layer)));
    layers
        .filter(|(_, layer)| matches!(layer.material, Material::Patterned { .. }))
        .map(|(recipe, layer)| format!("{}/{}", recipe.name, layer.name))
        .collect()
}

fn told(desk: &Desk<'_>, region: &Region) -> String {
    let length = |length| fields::length(desk, length).into();
    let facts = |piece: String| {
        let Rect { x, y, size } = region.rect;
        [
            ("left", length(x)),
            ("top", length(y)),
            ("width", length(size.width)),
            ("height", length(size.height)),
            ("piece", piece.into()),
        ]
    };
    match &region.wanted {
        Wanted::Keep { show_on: Some((recipe, layer)) } => say("regions-kept-on", &facts(format!("{recipe}/{layer}"))),
        Wanted::Keep { show_on: None } => say("regions-kept", &facts(String::new())),
        Wanted::Avoid => say("regions-avoided", &facts(String::new())),
    }
}

/// The face with its frames: solid to keep, broken with a cross to avoid.
fn drawn(desk: &Desk<'_>, (pack, design): (usize, usize), side: Side, face: &Face) -> Markup {
    let sheet = desk.made.project().packs.get(pack).map(|pack| pack.sheet).unwrap_or_default();
    let print = format!("/w/{}/{}/face-{pack}-{design}-{}.svg", desk.kept.id.0, desk.kept.now.number, side.name());
    let letters = sheet.width.to_points() / 18.0;
    html! {
        svg.lined.regions xmlns="http://www.w3.org/2000/svg" viewBox=(format!("0 0 {} {}", pt(sheet.width), pt(sheet.height))) role="img"
            aria-label=(say("regions-title", &[("face", (&face.name).into()), ("count", face.regions.len().into())])) {
            rect.ground width=(pt(sheet.width)) height=(pt(sheet.height)) {}
            image href=(print) width=(pt(sheet.width)) height=(pt(sheet.height)) preserveAspectRatio="none" {}
            @for (number, region) in face.regions.iter().enumerate() {
                @let Rect { x, y, size } = region.rect;
                @let avoid = region.wanted == Wanted::Avoid;
                rect.around x=(pt(x)) y=(pt(y)) width=(pt(size.width)) height=(pt(size.height)) {}
                rect class=(if avoid { "avoid" } else { "keep" }) x=(pt(x)) y=(pt(y)) width=(pt(size.width)) height=(pt(size.height)) {}
                @if avoid { path.avoid d=(format!("M{} {}L{} {}", pt(x), pt(y), pt(x + size.width), pt(y + size.height))) {} }
                text.size x=(pt(x + Length::from_ticks(size.width.ticks() / 2))) y=(pt(y + Length::from_ticks(size.height.ticks() / 2))) font-size=(format!("{letters:.1}")) { (number + 1) }
            }
        }
    }
}

fn form(desk: &Desk<'_>, (pack, design): (usize, usize), side: Side, act: &str, inside: &Markup) -> Markup {
    let name = name((pack, design), side);
    html! {
        form.panel-form method="post" action=(format!("/w/{}/regions", desk.kept.id.0)) {
            (shell::seen(desk.kept, "paper", &name))
            input type="hidden" name="pack" value=(pack);
            input type="hidden" name="design" value=(design);
            input type="hidden" name="side" value=(side.name());
            input type="hidden" name="panels" value=(name);
            input type="hidden" name="act" value=(act);
            (inside)
        }
    }
}

/// The file with the regions of a face changed; or why it cannot be.
pub(super) fn change(asked: &Asked, kept: &Kept, made: &Made) -> Result<Option<Changed>, Markup> {
    let refused = |said: String| html! { p { (said) } };
    let nowhere = || refused(say("refused-place", &[]));
    let number = |name: &str| asked.field(name).parse::<usize>().ok();
    let side = match asked.field("side") {
        "front" => Side::Front,
        "back" => Side::Back,
        _ => return Err(nowhere()),
    };
    let (Some(pack), Some(design)) = (number("pack"), number("design")) else { return Err(nowhere()) };
    let Some(face) = made.project().design(pack, design).map(|design| design.face(side)) else { return Err(nowhere()) };
    let mut regions = face.regions.clone();
    let id = match asked.field("act") {
        "remove" => {
            let at = number("number").filter(|at| *at < regions.len()).ok_or_else(nowhere)?;
            regions.remove(at);
            "edit-regions-gone"
        }
        "change" => {
            let at = number("number").filter(|at| *at < regions.len()).ok_or_else(nowhere)?;
            regions[at] = wanted(asked, made).map_err(refused)?;
            "edit-regions-changed"
        }
        "add" if regions.len() < MOST => {
            regions.push(wanted(asked, made).map_err(refused)?);
            "edit-regions"
        }
        _ => return Err(nowhere()),
    };
    let unit = made.project().unit;
    let list = |keep: bool| {
        let these = regions.iter().filter(|region| (region.wanted != Wanted::Avoid) == keep);
        these.map(|region| one(region, unit)).collect::<Vec<_>>().join("; ")
    };
    let place = |key: &str| format!("pack.{pack}.design.{design}.{}.{key}", side.name());
    let changes = [(place("keep"), list(true)), (place("avoid"), list(false))];
    let what = say(id, &[("face", (&face.name).into())]);
    let changed = edit::change(&kept.now.text, &changes).map_err(|_| nowhere())?;
    Ok(changed.map(|changed| Changed { what, ..changed }))
}

/// A region as `edit` takes it: left, top, size, and the piece that shows it.
fn one(region: &Region, unit: Unit) -> String {
    let Rect { x, y, size } = region.rect;
    let placed =
        format!("{}, {}, {}", wording::exact(x, unit), wording::exact(y, unit), wording::exact_size(size, unit));
    match &region.wanted {
        Wanted::Keep { show_on: Some((recipe, layer)) } => format!("{placed}, {recipe}/{layer}"),
        _ => placed,
    }
}

/// The region that a form asks for.
fn wanted(asked: &Asked, made: &Made) -> Result<Region, String> {
    let unit = made.project().unit;
    let length = |name: &str, label| fields::typed(asked, name, label, |typed| parse_length(typed, Some(unit)));
    let (x, y) = (length("left", say("field-left", &[]))?, length("top", say("field-top", &[]))?);
    let size = fields::typed(asked, "size", say("field-size", &[]), |typed| parse_size(typed, Some(unit)))?;
    let show_on = match asked.field("show") {
        "" => None,
        piece if pieces(made).iter().any(|known| known == piece) => {
            piece.rsplit_once('/').map(|(recipe, layer)| (recipe.to_owned(), layer.to_owned()))
        }
        _ => return Err(say("refused-place", &[])),
    };
    let wanted = if asked.field("wanted") == "avoid" { Wanted::Avoid } else { Wanted::Keep { show_on } };
    Ok(Region { rect: Rect::new(x, y, size), wanted })
}
