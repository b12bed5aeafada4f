//! What Octavo sees in a print by itself: its pictures, each to be kept whole at a click, and how it comes about.
//!
//! Left out on purpose: what becomes of them (`cards::plan::placed`).

use cards::model::{Design, Look, Placing, Side};
use drawing::Scene;
use maud::{Markup, html};

use super::answer::{Answer, Asked, Desk};
use super::drawings::sheet_size;
use super::room::Made;
use super::{fields, say, shell};
use crate::make::faces::FaceId;
use crate::make::interest::{Explained, Found, Part, explained};
use crate::wording;

/// Where a face's page is.
pub(super) fn address((pack, design, side): FaceId) -> String {
    format!("interest?pack={pack}&design={design}&side={}", side.name())
}

fn asked_for(asked: &Asked) -> Option<FaceId> {
    let number = |name: &str| asked.query(name).parse::<usize>().ok();
    let side = match asked.query("side") {
        "front" => Side::Front,
        "back" => Side::Back,
        _ => return None,
    };
    Some((number("pack")?, number("design")?, side))
}

fn seen(made: &Made, id: FaceId) -> Option<(drawing::Picture, Explained)> {
    let print = made.face(id)?;
    let sheet = made.project().packs.get(id.0)?.sheet;
    let explained = explained(&print, sheet, made.project().mark.step())?;
    Some((print, explained))
}

/// A face shaded by a part of its interest, by that part's name.
pub(super) fn drawn(made: &Made, id: FaceId, part: &str) -> Option<Scene> {
    let (part, _) = Part::ALL.into_iter().find(|(_, name)| *name == part)?;
    let (print, seen) = seen(made, id)?;
    let sheet = made.project().packs.get(id.0)?.sheet;
    Some(seen.drawn(&print, part, sheet_size(sheet), ""))
}

/// The page; `None` for a face that there is not.
pub(super) fn page(desk: &Desk<'_>) -> Option<Answer> {
    let id = asked_for(desk.asked)?;
    let design = desk.made.project().design(id.0, id.1)?;
    let face = design.face(id.2);
    let found = seen(desk.made, id).map(|(_, seen)| seen.found()).unwrap_or_default();
    let shown = |part: &str| {
        let (pack, design, side) = (id.0, id.1, id.2.name());
        format!("/w/{}/{}/interest-{pack}-{design}-{part}-{side}.svg", desk.kept.id.0, desk.kept.now.number)
    };
    let alt = say("interest-alt", &[("face", (&face.name).into()), ("count", found.len().into())]);
    let parts = [
        ("edge", say("interest-edge", &[]), say("interest-edge-what", &[])),
        ("distinct", say("interest-distinct", &[]), say("interest-distinct-what", &[])),
        ("motif", say("interest-motif", &[]), say("interest-motif-what", &[])),
    ];
    let inside = html! {
        div.lead {
            h1 { (say("interest-title", &[("face", (&face.name).into())])) }
            p { (say("interest-lead", &[])) }
        }
        @if let Some(said) = unused(desk, id, design) { p.caution { (said) } }
        div.seen-in {
            div {
                figure { img src=(shown("sum")) alt=(alt); figcaption { (say("interest-key", &[])) } }
                h2 { (say("interest-why", &[])) }
                p { (say("interest-sum", &[])) }
                div.views {
                    @for (name, title, what) in &parts {
                        figure { img src=(shown(name)) alt=(format!("{title}: {what}")) loading="lazy"; figcaption { strong { (title) } br; (what) } }
                    }
                }
            }
            div {
                h2 { (say("interest-found", &[("count", found.len().into())])) }
                @if found.is_empty() { p { (say("interest-none", &[])) } }
                ol { @for (number, one) in (1_usize..).zip(&found) { li { strong { (number) } " " (picture(desk, id, one)) } } }
            }
        }
        p { a href=(format!("paper?panels=parts-{}-{}-{side}#parts-{}-{}-{side}", id.0, id.1, id.0, id.1, side = id.2.name())) { (say("interest-mark", &[])) } }
    };
    Some(Answer::page(200, shell::of_project(desk, "paper", &inside)))
}

/// Why nothing comes of it, if so.
fn unused(desk: &Desk<'_>, (pack, number, side): FaceId, design: &Design) -> Option<String> {
    let face = design.face(side);
    let shows = desk.made.plan.layouts.iter().any(|layout| {
        layout.pack == pack && layout.sheets.iter().any(|used| (used.design, used.side) == (number, side))
    });
    let id = match (&face.look, desk.made.project().placing) {
        _ if face.collage.is_some() => "interest-collage",
        (Look::Plain(_) | Look::Stamped(_), _) => "interest-even",
        (_, Placing::Plain) => "interest-plain",
        _ if !shows => "interest-unseen",
        _ => return None,
    };
    Some(say(id, &[]))
}

/// One picture in words, and a button that keeps it whole.
fn picture(desk: &Desk<'_>, (pack, design, side): FaceId, found: &Found) -> Markup {
    let (unit, rect) = (desk.made.project().unit, found.rect);
    let (said, why) = found.told(|length| fields::length(desk, length));
    let name = format!("parts-{pack}-{design}-{}", side.name());
    let hidden = [
        ("pack", pack.to_string()),
        ("design", design.to_string()),
        ("side", side.name().to_owned()),
        ("panels", name.clone()),
        ("act", "add".to_owned()),
        ("wanted", "keep".to_owned()),
        ("left", wording::exact(rect.x, unit)),
        ("top", wording::exact(rect.y, unit)),
        ("size", wording::exact_size(rect.size, unit)),
    ];
    html! {
        (said) " " small { (why) }
        form.inline method="post" action=(format!("/w/{}/regions", desk.kept.id.0)) {
            (shell::seen(desk.kept, "paper", &name))
            @for (key, value) in &hidden { input type="hidden" name=(key) value=(value); }
            button.quiet type="submit" { (say("interest-keep", &[])) }
        }
    }
}
