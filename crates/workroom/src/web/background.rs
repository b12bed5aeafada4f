//! Background: paper the maker stamps herself, as it will be, and how it is set out.
//!
//! What comes of a change, and the changes themselves, are in `stamped`.

use cards::background::{Impression, Laid, SHAPES, askew, slips};
use cards::model::{Background, Look, MotifShape, Side};
use maud::{Markup, html};
use measure::{Length, Unit};

use super::answer::Desk;
use super::stamped::{self, drawn};
use super::{edit, fields, greetings, say, shell};
use crate::backgrounds;

/// The page.
pub(super) fn page(desk: &Desk<'_>) -> Markup {
    let project = desk.made.project();
    let index = index(desk);
    let inside = html! {
        div.lead { h1 { (say("background-title", &[])) } p.facts { (say("background-lead", &[])) } }
        p.caution { (say("background-caution", &[])) }
        p.caution { (say("background-caution-heat", &[])) }
        (fields::findings(desk, |finding| finding.code.starts_with("background-")))
        @if project.backgrounds.len() > 1 {
            nav.which aria-label=(say("stamped-which", &[])) {
                @for (other, background) in project.backgrounds.iter().enumerate() {
                    a href=(format!("/w/{}/background?b={other}", desk.kept.id.0)) aria-current=[(other == index).then_some("true")] { (background.name) }
                }
            }
        }
        @if let Some(background) = project.backgrounds.get(index) { (one(desk, index, background)) }
        section id="begin-stamping" {
            h2 { (if project.backgrounds.is_empty() { say("stamped-begin", &[]) } else { say("stamped-begin-other", &[]) }) }
            (stamped::form(desk, index, "begin", &html! {
                div.row {
                    (typed(desk, "name", &say("stamped-name", &[]), ""))
                    (typed(desk, "sheet", &say("stamped-sheet", &[]), &sheet(desk)))
                }
                button type="submit" { (say("stamped-begin-it", &[])) }
            }))
        }
        (greetings::section(desk))
    };
    shell::of_project(desk, "background", &inside)
}

/// Which background is shown.
fn index(desk: &Desk<'_>) -> usize {
    let index: usize = desk.asked.either("b").parse().unwrap_or(0);
    index.min(desk.made.project().backgrounds.len().saturating_sub(1))
}

/// The sheet that a new one is for: that of the first paper.
fn sheet(desk: &Desk<'_>) -> String {
    let project = desk.made.project();
    let first = project.packs.first().map(|pack| crate::wording::exact_size(pack.sheet, project.unit));
    first.unwrap_or_else(|| "12 x 12 in".to_owned())
}

fn typed(desk: &Desk<'_>, name: &str, label: &str, otherwise: &str) -> Markup {
    let field = desk.asked.field(name);
    let value = if field.is_empty() { otherwise } else { field };
    html! { label.field { span { (label) } input type="text" name=(name) value=(value) autocomplete="off" spellcheck="false"; } }
}

/// One background: its picture, what sets it out, its stamps, what was moved by hand.
fn one(desk: &Desk<'_>, index: usize, background: &Background) -> Markup {
    let laid = desk.made.plan.backgrounds.get(index).and_then(Option::as_ref);
    let id = desk.kept.id.0;
    html! {
        section.stamping id="stamping" data-enhance="stamping" data-ask=(format!("/w/{id}/stamped?b={index}")) {
            h2 { (background.name) }
            div.side-by-side {
                div {
                    figure.sheet {
                        @if let Some(laid) = laid { (drawn(background, laid)) }
                        @else { p { (say("stamped-none", &[])) } }
                    }
                    p.moved role="status" { @if let Some(laid) = laid { (stamped::told(desk, background, laid)) } }
                    p.hint.by-hand-only { (say("stamped-by-hand", &[])) }
                }
                (set_out(desk, index, background))
            }
        }
        @if let Some(laid) = laid { (by_hand(desk, index, background, laid)) (sure(desk, background, laid)) }
        (files(desk, index))
        (stamps(desk, index, background))
        (shown_on(desk, index))
    }
}

/// A step of a slider: 1/32 in or 0.5 mm.
pub(super) fn step(unit: Unit) -> Length {
    match unit {
        Unit::Inch => Length::from_ticks(Length::INCH.ticks() / 32),
        Unit::Millimetre => Length::from_ticks(Length::MM.ticks() / 2),
    }
}

/// A length to type, with a slider for those who have scripts.
fn slid(desk: &Desk<'_>, place: &str, label: &str, now: Length, most: Length) -> Markup {
    let step = step(desk.made.project().unit).ticks();
    let value = desk.typed.get(place).cloned().unwrap_or_else(|| edit::written(desk.document, place));
    let shown = if value.is_empty() { crate::wording::exact(now, desk.made.project().unit) } else { value };
    html! {
        div.slid {
            label.field {
                span { (label) }
                input type="text" name=(format!("set:{place}")) value=(shown) autocomplete="off" spellcheck="false";
            }
            input.slide hidden type="range" name=(format!("steps:{place}")) min="0" max=(most.ticks() / step) value=((now.ticks() + step / 2) / step) aria-label=(label);
        }
    }
}

/// A number to type, with a slider.
fn counted(desk: &Desk<'_>, place: &str, label: &str, now: u32, most: u32) -> Markup {
    let value = desk.typed.get(place).cloned().unwrap_or_else(|| edit::written(desk.document, place));
    let shown = if value.is_empty() { now.to_string() } else { value };
    html! {
        div.slid {
            label.field {
                span { (label) }
                input type="text" inputmode="numeric" name=(format!("set:{place}")) value=(shown) autocomplete="off";
            }
            input.slide hidden type="range" name=(format!("number:{place}")) min="0" max=(most) value=(now) aria-label=(label);
        }
    }
}

/// How much of the sheet is to be ink; nothing written: by number, or as many as go on.
fn dense(desk: &Desk<'_>, place: &str, laid: Option<&Laid>) -> Markup {
    let label = say("stamped-density", &[]);
    html! {
        div.slid {
            (fields::line(desk, place, &label, &say("stamped-count-all", &[])))
            input.slide hidden type="range" name=(format!("number:{place}")) min="1" max="60" value=(laid.map_or(20, |laid| laid.cover_percent.max(1))) aria-label=(label);
        }
    }
}

/// What sets the sheet out.
fn set_out(desk: &Desk<'_>, index: usize, background: &Background) -> Markup {
    let place = |key: &str| format!("background.{index}.{key}");
    let arrangements = vec![
        ("", say("stamped-toss", &[])),
        ("toss", say("stamped-toss", &[])),
        ("grid", say("stamped-grid", &[])),
        ("brick", say("stamped-brick", &[])),
        ("half-drop", say("stamped-half-drop", &[])),
        ("diagonal", say("stamped-diagonal", &[])),
    ];
    let edges = vec![
        ("", say("stamped-run-off", &[])),
        ("run off", say("stamped-run-off", &[])),
        ("inside", say("stamped-inside", &[])),
        ("wrap", say("stamped-wrap", &[])),
    ];
    html! {
        div.set-out {
            (stamped::form(desk, index, "change", &html! {
                (slid(desk, &place("gap"), &say("stamped-gap", &[]), background.gap, Length::INCH))
                @for (number, stamp) in background.motifs.iter().enumerate() {
                    @let own = |key: &str| place(&format!("stamp.{number}.{key}"));
                    fieldset {
                        legend { (stamp.name) }
                        (slid(desk, &own("size"), &say("stamped-size", &[]), stamp.size, Length::INCH * 4))
                        (counted(desk, &own("share"), &say("stamped-share", &[]), stamp.share, 12))
                    }
                }
                div.row {
                    (fields::choice(desk, &place("arrangement"), &say("stamped-arrangement", &[]), &arrangements))
                    (fields::choice(desk, &place("edge"), &say("stamped-edge", &[]), &edges))
                }
                (dense(desk, &place("density"), desk.made.plan.backgrounds.get(index).and_then(Option::as_ref)))
                div.row {
                    (fields::line(desk, &place("count"), &say("stamped-count", &[]), &say("stamped-count-all", &[])))
                    (counted(desk, &place("seed"), &say("stamped-seed", &[]), background.seed, 200))
                }
                div.ends { button type="submit" { (say("change", &[])) } }
            }))
        }
    }
}

/// Moving one, locking some, tossing the rest anew.
fn by_hand(desk: &Desk<'_>, index: usize, background: &Background, laid: &Laid) -> Markup {
    let locked: Vec<String> =
        laid.impressions.iter().filter(|one| one.locked).map(|one| one.number.to_string()).collect();
    let first = laid.impressions.first();
    // Near enough to be typed over: what is not typed over stays where it stands.
    let unit = desk.made.project().unit;
    let exact = |length: Length| crate::wording::exact(measure::round::nearest(length, step(unit)), unit);
    let at = |of: fn(&Impression) -> Length| first.map_or_else(String::new, |one| exact(of(one)));
    html! {
        section.by-hand-forms id="by-hand" {
            h2 { (say("stamped-hand", &[])) }
            @if !background.stands.is_empty() { p { (say("stamped-stands", &[])) } }
            @if !locked.is_empty() { p { (say("stamped-locked-are", &[("numbers", locked.join(", ").into())])) } }
            div.forms {
                div.toss { (stamped::form(desk, index, "toss", &html! {
                    button.large type="submit" { (say("stamped-toss-anew", &[])) }
                    p.hint { (say("stamped-toss-hint", &[])) }
                })) }
                div.lock { (stamped::form(desk, index, "lock", &html! {
                    (typed(desk, "numbers", &say("stamped-numbers", &[]), ""))
                    div.ways {
                        button type="submit" name="how" value="lock" { (say("stamped-lock", &[])) }
                        button.quiet type="submit" name="how" value="free" { (say("stamped-free", &[])) }
                    }
                })) }
                div.by-typing { (stamped::form(desk, index, "move", &html! {
                    div.row {
                        (typed(desk, "number", &say("stamped-number", &[]), "1"))
                        (typed(desk, "x", &say("stamped-right", &[]), &at(|one| one.placed.x)))
                        (typed(desk, "y", &say("stamped-down", &[]), &at(|one| one.placed.y)))
                        (typed(desk, "turn", &say("stamped-degrees", &[]), &first.map_or(0, |one| one.placed.turn).to_string()))
                    }
                    button type="submit" { (say("stamped-move", &[])) }
                })) }
            }
        }
    }
}

/// What slips of the hand do to it.
fn sure(desk: &Desk<'_>, background: &Background, laid: &Laid) -> Markup {
    let none = || say("guide-sure-none", &[]);
    let apart = |length: Length| if length > Length::ZERO { fields::length(desk, length) } else { none() };
    let told = slips(background, laid).into_iter().map(|found| {
        let place = fields::length(desk, found.slip.place);
        let facts = [
            ("place", place.clone().into()),
            ("turn", u32::from(found.slip.turn_deg).into()),
            ("usual", apart(found.loosened.usual).into()),
            ("worst", apart(found.loosened.worst).into()),
            ("touch", found.loosened.touch_per_mille.div_ceil(10).into()),
        ];
        let drawn = askew(background, laid, found.slip).map(|(sheet, touch)| {
            let facts = [
                ("place", place.into()),
                ("turn", u32::from(found.slip.turn_deg).into()),
                ("count", touch.len().into()),
            ];
            stamped::askew(background, &sheet, &touch, &say("guide-askew", &facts))
        });
        (say("guide-sure-row", &facts), drawn)
    });
    let told: Vec<(String, Option<Markup>)> = told.collect();
    html! {
        @if !told.is_empty() {
            section.sure {
                h2 { (say("guide-sure", &[])) }
                ul.plain-list { @for (said, _) in &told { li { (said) } } }
                div.forms { @for (_, drawn) in &told { @if let Some(drawn) = drawn { (drawn) } } }
            }
        }
    }
}

/// What can be saved and printed.
fn files(desk: &Desk<'_>, index: usize) -> Markup {
    let number = index + 1;
    let to = |name: &str| format!("/w/{}/file/background-{number}{name}", desk.kept.id.0);
    html! {
        section {
            h2 { (say("stamped-print", &[])) }
            div.ways {
                a.button href=(to(".pdf")) { (say("stamped-guide", &[])) }
                a.button href=(to("-light-box.pdf")) { (say("stamped-light-box", &[])) }
                a.button href=(to(".png")) { (say("stamped-picture", &[])) }
                a.button href=(to(".svg")) { (say("stamped-svg", &[])) }
            }
        }
    }
}

/// Each stamp: what it is, how it turns, its ink.
fn stamps(desk: &Desk<'_>, index: usize, background: &Background) -> Markup {
    // A shelf that cannot be read is told elsewhere: here it only has no markers.
    let shelf = desk.room.store().shelf().map(|shelf| backgrounds::markers(&shelf)).unwrap_or_default();
    let colored = backgrounds::colored(background, &shelf);
    let turns = vec![
        ("", say("stamped-free-turn", &[])),
        ("free", say("stamped-free-turn", &[])),
        ("upright", say("stamped-upright", &[])),
    ];
    let shapes: Vec<(&str, String)> = SHAPES.iter().map(|name| (*name, shape(name))).collect();
    html! {
        section.stamps id="stamps" {
            h2 { (say("stamped-stamps", &[])) }
            @for (number, stamp) in background.motifs.iter().enumerate() {
                @let place = |key: &str| format!("background.{index}.stamp.{number}.{key}");
                article {
                    h3 { (stamp.name) }
                    @if let Some(of) = colored.iter().find(|of| of.stamp == number) {
                        p {
                            @match &of.marker {
                                Some((name, _)) => (say("stamped-marker", &[("marker", name.into()), ("near", (&of.near).into())])),
                                None => (say("stamped-no-marker", &[])),
                            }
                        }
                    }
                    details {
                        summary { (say("stamped-more", &[("name", (&stamp.name).into())])) }
                        (stamped::form(desk, index, "change", &html! {
                            div.row {
                                (fields::line(desk, &place("name"), &say("stamped-name", &[]), ""))
                                @if matches!(stamp.shape, MotifShape::Drawn(_)) {
                                    (fields::choice(desk, &place("shape"), &say("stamped-shape", &[]), &shapes))
                                }
                                @if matches!(stamp.shape, MotifShape::Corners(_)) {
                                    (fields::line(desk, &place("outline"), &say("stamped-outline", &[]), "0,0 4,0 2,3"))
                                }
                                (fields::choice(desk, &place("turn"), &say("stamped-turn", &[]), &turns))
                                (fields::line(desk, &place("turn_within"), &say("stamped-within", &[]), "15"))
                            }
                            div.row {
                                (fields::line(desk, &place("ink"), &say("stamped-ink", &[]), "#3b4148"))
                                (fields::line(desk, &place("fill"), &say("stamped-fill", &[]), "#d9a441"))
                                (fields::line(desk, &place("per_inking"), &say("stamped-per-inking", &[]), "1"))
                            }
                            div.ends { button type="submit" { (say("change", &[])) } }
                        }))
                        form method="post" action=(format!("/w/{}/background", desk.kept.id.0)) enctype="multipart/form-data" {
                            (stamped::hidden(desk, index, "picture"))
                            input type="hidden" name="stamp" value=(number);
                            label.field { span { (say("stamped-from-picture", &[])) } input type="file" name="file" accept="image/png,image/jpeg,image/webp"; }
                            button type="submit" { (say("stamped-take-picture", &[])) }
                        }
                        @if background.motifs.len() > 1 {
                            (stamped::form(desk, index, "unstamp", &html! {
                                input type="hidden" name="stamp" value=(number);
                                button.quiet type="submit" { (say("stamped-take-away", &[("name", (&stamp.name).into())])) }
                            }))
                        }
                    }
                }
            }
            p { (say("stamped-markers-shelf", &[("count", shelf.len().into())])) " " a href=(format!("/w/{}/supplies#shelf", desk.kept.id.0)) { (say("supplies-shelf", &[])) } }
            (stamped::form(desk, index, "stamp", &html! {
                h3 { (say("stamped-add", &[])) }
                div.row {
                    (typed(desk, "name", &say("stamped-name", &[]), ""))
                    label.field {
                        span { (say("stamped-shape", &[])) }
                        select name="shape" { @for (key, said) in &shapes { option value=(key) selected[desk.asked.field("shape") == *key] { (said) } } }
                    }
                    (typed(desk, "size", &say("stamped-size", &[]), &crate::wording::exact(Length::INCH, desk.made.project().unit)))
                }
                button type="submit" { (say("stamped-add-it", &[])) }
            }))
        }
    }
}

fn shape(name: &str) -> String {
    match name {
        "ring" => say("shape-ring", &[]),
        "leaf" => say("shape-leaf", &[]),
        "sprig" => say("shape-sprig", &[]),
        "drop" => say("shape-drop", &[]),
        "flower" => say("shape-flower", &[]),
        "star" => say("shape-star", &[]),
        "heart" => say("shape-heart", &[]),
        "diamond" => say("shape-diamond", &[]),
        _ => say("shape-dot", &[]),
    }
}

/// Which face of which design shows it, and a way to let one show it.
fn shown_on(desk: &Desk<'_>, index: usize) -> Markup {
    let mut shows = Vec::new();
    let mut others = Vec::new();
    for (pack, paper) in desk.made.project().packs.iter().enumerate() {
        for (design, printed) in paper.designs.iter().enumerate() {
            for side in [Side::Front, Side::Back] {
                let face = printed.face(side);
                let facts = [
                    ("letter", (&printed.letter).into()),
                    ("design", (&printed.name).into()),
                    ("face", (&face.name).into()),
                ];
                let said = say("stamped-face", &facts);
                if face.look == Look::Stamped(index) {
                    shows.push(said);
                } else {
                    others.push((format!("{pack}-{design}-{}", side.name()), said));
                }
            }
        }
    }
    html! {
        section {
            h2 { (say("stamped-shown", &[])) }
            @if shows.is_empty() { p { (say("stamped-shown-nowhere", &[])) } }
            @else { ul.plain-list { @for said in &shows { li { (said) } } } }
            @if !others.is_empty() {
                (stamped::form(desk, index, "show", &html! {
                    label.field {
                        span { (say("stamped-show-on", &[])) }
                        select name="face" { @for (key, said) in &others { option value=(key) { (said) } } }
                    }
                    button type="submit" { (say("stamped-show", &[])) }
                }))
            }
            (stamped::form(desk, index, "remove", &html! { button.quiet type="submit" { (say("stamped-remove", &[])) } }))
        }
    }
}
