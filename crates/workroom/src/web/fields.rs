//! The parts of forms and pages that several pages share.

use cards::{Finding, Severity, Subject};
use drawing::Scene;
use drawing::sheets::{CutsOf, Edition, Hand, Paper, Print, step_picture};
use maud::{Markup, PreEscaped, html};

use super::answer::{Asked, Desk};
use super::room::Made;
use super::{edit, say, shell};
use crate::wording;

/// A line to type in: what stands at a place of the file, as the maker wrote it.
pub(super) fn line(desk: &Desk<'_>, place: &str, label: &str, hint: &str) -> Markup {
    let value = desk.typed.get(place).cloned().unwrap_or_else(|| edit::written(desk.document, place));
    html! {
        label.field {
            span { (label) }
            input type="text" name=(format!("set:{place}")) value=(value) placeholder=(hint) autocomplete="off" spellcheck="false";
        }
    }
}

/// A choice: what stands at a place, or its default.
pub(super) fn choice(desk: &Desk<'_>, place: &str, label: &str, all: &[(&str, String)]) -> Markup {
    let written = edit::written(desk.document, place);
    let value = desk.typed.get(place).unwrap_or(&written);
    // What is left out has a meaning too, and needs no second line where it is that of another choice.
    let left_out = all.iter().find(|(key, _)| key.is_empty()).map(|(_, said)| said);
    let offered =
        all.iter().filter(
            |(key, said)| {
                if value.is_empty() { key.is_empty() || Some(said) != left_out } else { !key.is_empty() }
            },
        );
    html! {
        label.field {
            span { (label) }
            select name=(format!("set:{place}")) {
                @for (key, said) in offered {
                    option value=(key) selected[key == value] { (said) }
                }
            }
        }
    }
}

/// What was typed into a field of a form, read by `parse`; what is wrong with it said with the field's label.
pub(super) fn typed<T, E: ToString>(
    asked: &Asked,
    name: &str,
    label: String,
    parse: impl FnOnce(&str) -> Result<T, E>,
) -> Result<T, String> {
    let typed = asked.field(name).trim();
    let why = |error: E| [("label", label.into()), ("typed", typed.into()), ("why", error.to_string().into())];
    parse(typed).map_err(|error| say("new-bad-size", &why(error)))
}

/// A form that changes the project file.
pub(super) fn change(desk: &Desk<'_>, page: &str, at: &str, inside: &Markup) -> Markup {
    html! {
        form.change method="post" action=(format!("/w/{}/edit", desk.kept.id.0)) {
            (shell::seen(desk.kept, page, at))
            (inside)
            div.ends { button type="submit" { (say("change", &[])) } }
        }
    }
}

/// What the maker should know, gravest first.
pub(super) fn findings(desk: &Desk<'_>, wanted: impl Fn(&Finding) -> bool) -> Markup {
    let mark = desk.made.project().mark;
    let found: Vec<&Finding> = desk.made.plan.findings.iter().filter(|finding| wanted(finding)).collect();
    html! {
        @if !found.is_empty() {
            ul.findings {
                @for finding in found {
                    @let worded = wording::finding(finding, mark);
                    @let (class, word) = match finding.severity {
                        Severity::Serious => ("serious", say("graveness-serious", &[])),
                        Severity::Warning => ("warning", say("graveness-warning", &[])),
                        Severity::Note => ("note", say("graveness-note", &[])),
                    };
                    li class=(class) {
                        strong { (word) } " "
                        @if let Subject::Recipe(name) = &finding.subject {
                            @if !worded.said.contains(name) { (name) ": " }
                        }
                        (drawing::text::with_fractions(worded.said.trim_end_matches('.'))) ". "
                        span.remedy { (drawing::text::with_fractions(&worded.remedy)) }
                    }
                }
            }
        }
    }
}

/// The edition in which steps are told on a screen.
pub(super) fn edition(made: &Made, hand: Hand) -> Edition {
    let unit = made.project().unit;
    Edition { paper: Paper::usual(unit), print: Print::Large, hand, unit, language: words::spoken() }
}

/// A step at the trimmer: how it lies, what to do, where that is.
pub(super) fn step(desk: &Desk<'_>, of: CutsOf, index: usize, hand: Hand, heading: &str) -> Option<Markup> {
    let told = step_text(desk, of, index, hand, heading)?;
    Some(PreEscaped(told))
}

/// The step as a text that is made once for each revision.
fn step_text(desk: &Desk<'_>, of: CutsOf, index: usize, hand: Hand, heading: &str) -> Option<String> {
    let address = format!("step/{}/{}/{of:?}/{index}/{hand:?}/{heading}", desk.kept.id.0, desk.kept.now.number);
    desk.room.text(&address, || Some(drawn_step(desk, of, index, hand, heading)?.into_string()))
}

fn drawn_step(desk: &Desk<'_>, of: CutsOf, index: usize, hand: Hand, heading: &str) -> Option<Markup> {
    let told = step_picture(&desk.made.plan, &desk.made.faces, of, index, &edition(desk.made, hand))?;
    let picture = |kind: &str, scene: &Scene, alt: &str| {
        let (sort, numbers) = match of {
            CutsOf::Layout(layout) => ("sheet", format!("{layout}-{index}")),
            CutsOf::Stock(stock, sheet) => ("stock", format!("{stock}-{sheet}-{index}")),
        };
        let side = if hand == Hand::Left { "left" } else { "right" };
        let address = format!("/w/{}/{}/{sort}{kind}-{numbers}-{side}.svg", desk.kept.id.0, desk.kept.now.number);
        let (width, height) = (scene.size.width.to_points().round(), scene.size.height.to_points().round());
        html! { img src=(address) alt=(alt) width=(width) height=(height); }
    };
    Some(html! {
        div.at-trimmer {
            figure.drawing { (picture("step", &told.drawing, &told.drawing.title)) }
            div.told {
                p.where-it-is { (heading) }
                h2 { (told.head) }
                @for sentence in &told.said { p { (sentence) } }
                @for caution in &told.cautions { p.caution { (caution) } }
            }
            figure.map { (picture("map", &told.place, &told.place.title)) }
        }
    })
}

/// A drawing in the page itself, its own names kept apart from those of other drawings.
pub(super) fn inline(drawn: &str, apart: &str) -> Markup {
    let own = drawn
        .replace("id=\"", &format!("id=\"{apart}"))
        .replace("href=\"#", &format!("href=\"#{apart}"))
        .replace("url(#", &format!("url(#{apart}"));
    PreEscaped(own)
}

/// A length as the maker thinks of it.
pub(super) fn length(desk: &Desk<'_>, length: measure::Length) -> String {
    drawing::text::with_fractions(&wording::length(length, desk.made.project().mark))
}

/// A card's picture by its address.
pub(super) fn card(desk: &Desk<'_>, card: &cards::plan::Card, more: &str) -> Markup {
    let said = say(
        "card-alt",
        &[("number", card.number.into()), ("recipe", recipe(desk, card).into()), ("print", design(desk, card).into())],
    );
    let address = format!("/w/{}/{}/card-{}.svg{more}", desk.kept.id.0, desk.kept.now.number, card.number);
    html! { img.card src=(address) alt=(said) loading="lazy" width="252" height="360"; }
}

/// The name of a card's recipe.
pub(super) fn recipe(desk: &Desk<'_>, card: &cards::plan::Card) -> String {
    desk.made.project().recipes.get(card.recipe).map(|recipe| recipe.name.clone()).unwrap_or_default()
}

/// The letter and name of a card's print.
pub(super) fn design(desk: &Desk<'_>, card: &cards::plan::Card) -> String {
    desk.made
        .project()
        .design(card.pack, card.design)
        .map(|design| format!("{} {}", design.letter, design.name))
        .unwrap_or_default()
}
