//! Share: the handout seen before it is saved, templates and files, the project file itself.

use cards::{Plan, Project};
use drawing::sheets::{Colors, Edition, Faces, Hand, Paper, Print, full_edition as pages_of};
use drawing::{Picture, Scene};
use maud::{Markup, html};
use measure::Unit;
use store::projects::Kept;
use words::Language;

use super::answer::{Answer, Asked, Desk};
use super::room::Made;
use super::{say, shell};
use crate::make;

/// The edition that a query asks for; left out, the plain one.
pub(super) fn edition(project: &Project, asked: &Asked) -> Edition {
    let metric = project.unit == Unit::Millimetre;
    Edition {
        paper: match asked.query("sheet") {
            "a4" => Paper::A4,
            "letter" => Paper::Letter,
            _ if metric => Paper::A4,
            _ => Paper::Letter,
        },
        print: if asked.query("print") == "large" { Print::Large } else { Print::Normal },
        hand: if asked.query("hand") == "left" { Hand::Left } else { Hand::Right },
        unit: match asked.query("units") {
            "mm" => Unit::Millimetre,
            "inches" => Unit::Inch,
            _ => project.unit,
        },
        language: Language::of_tag(asked.query("language")).unwrap_or_else(words::spoken),
    }
}

/// The query that asks for the same edition again.
fn again(edition: &Edition) -> String {
    format!(
        "?sheet={}&print={}&hand={}&units={}&language={}",
        if edition.paper == Paper::A4 { "a4" } else { "letter" },
        if edition.print == Print::Large { "large" } else { "normal" },
        if edition.hand == Hand::Left { "left" } else { "right" },
        if edition.unit == Unit::Inch { "inches" } else { "mm" },
        edition.language.tag()
    )
}

/// Every language by its own name, the chosen one marked.
fn languages(chosen: Language) -> [(&'static str, String, bool); Language::ALL.len()] {
    Language::ALL.map(|language| (language.tag(), language.own_name().to_owned(), language == chosen))
}

/// Side of the square by which a printer is checked.
const SQUARE: measure::Length = measure::Length::INCH;

/// The page.
pub(super) fn page(desk: &Desk<'_>) -> Markup {
    let wanted = edition(desk.made.project(), desk.asked);
    let query = again(&wanted);
    let file = |name: &str| format!("/w/{}/file/{name}", desk.kept.id.0);
    // Laying the pages out takes longest: their titles are kept, and no picture is cut for them.
    let address = format!("titles/{}/{}/{query}", desk.kept.id.0, desk.kept.now.number);
    let titles = desk
        .room
        .text(&address, || Some(titles(&desk.made.plan, desk.made.page_colors(), &blank(&desk.made.faces), &wanted)));
    let titles = titles.unwrap_or_default();
    let pages: Vec<&str> = titles.lines().collect();
    let pick = |name: &str, label: String, all: &[(&str, String, bool)]| {
        html! {
            label.field { span { (label) } select name=(name) { @for (value, said, chosen) in all { option value=(value) selected[*chosen] { (said) } } } }
        }
    };
    let inside = html! {
        div.lead { h1 { (say("share-title", &[])) } p.facts { (say("share-lead", &[])) } }
        form.editions method="get" action=(format!("/w/{}/share", desk.kept.id.0)) {
            (pick("sheet", say("share-paper", &[]), &[("letter", say("share-letter", &[]), wanted.paper == Paper::Letter), ("a4", say("share-a4", &[]), wanted.paper == Paper::A4)]))
            (pick("print", say("share-print", &[]), &[("normal", say("share-normal", &[]), wanted.print == Print::Normal), ("large", say("share-large", &[]), wanted.print == Print::Large)]))
            (pick("hand", say("share-hand", &[]), &[("right", say("share-right", &[]), wanted.hand == Hand::Right), ("left", say("share-left", &[]), wanted.hand == Hand::Left)]))
            (pick("units", say("share-units", &[]), &[("inches", say("share-inches", &[]), wanted.unit == Unit::Inch), ("mm", say("share-mm", &[]), wanted.unit == Unit::Millimetre)]))
            (pick("language", say("share-language", &[]), &languages(wanted.language)))
            button type="submit" { (say("share-see", &[])) }
        }
        p.ways { a.button.main href=(format!("{}{query}", file("handout.pdf"))) { (say("share-handout", &[("pages", pages.len().into())])) } }
        ol.pages {
            @for (number, page) in (1_usize..).zip(&pages) {
                li {
                    @let src = format!("/w/{}/{}/page-{number}.svg{query}", desk.kept.id.0, desk.kept.now.number);
                    (thumbnail(&src, &say("share-page", &[("number", number.into()), ("title", (*page).into())])))
                }
            }
        }
        @let (templates, short) = others(desk, &wanted, &query);
        section {
            h2 { (say("share-true-size", &[])) }
            p { (say("share-true-size-lead", &[])) }
            (pictured(desk, "template", templates, &query))
            p.ways { a.button href=(format!("{}{query}", file("templates.pdf"))) { (say("share-templates", &[])) } }
        }
        section {
            h2 { (say("share-one-page", &[])) }
            (pictured(desk, "short", short, &query))
            p.ways { a.button href=(format!("{}{query}", file("one-page.pdf"))) { (say("share-save", &[])) } }
        }
        section {
            h2 { (say("share-every-card", &[])) }
            p { (say("share-every-card-lead", &[("count", desk.made.plan.cards.len().into())])) }
            p.ways { a.button href=(format!("{}{query}", file("every-card.pdf"))) { (say("share-save", &[])) } " " a.button href=(file("contact-sheet.png")) { (say("share-contact", &[])) } }
        }
        section {
            h2 { (say("share-drawings", &[])) }
            ul.pages {
                @for number in 1..=desk.made.plan.layouts.len() {
                    @let name = file(&format!("sheet-{number}.svg"));
                    li { img src=(name) alt="" loading="lazy" width="306" height="306"; a href=(name) { (say("share-sheet", &[("number", number.into())])) } }
                }
            }
        }
        section {
            h2 { (say("share-files", &[])) }
            ul.files {
                li { a href=(file("project.toml")) { (say("share-project", &[])) } " " (say("share-project-note", &[])) }
                li { a href=(file("pieces.csv")) { (say("share-pieces", &[])) } ", " a href=(file("cardstock.csv")) { (say("share-cardstock", &[])) } ", " a href=(file("supplies.csv")) { (say("share-supplies", &[])) } " " (say("share-tables-note", &[])) }
                li { a href=(format!("{}{query}", file("handout.md"))) { (say("share-markdown", &[])) } " " (say("share-markdown-note", &[])) }
                li { a href=(format!("{}{query}", file("handout.txt"))) { (say("share-plain", &[])) } " " (say("share-plain-note", &[])) }
                li { a href=(file("plan.json")) { (say("share-plan", &[])) } " " (say("share-plan-note", &[])) }
            }
        }
        section {
            ul.findings {
                @for caution in [say("share-caution-rights", &[]), say("share-caution-own", &[]), say("share-caution-photos", &[])] { li.note { (caution) } }
            }
        }
        section {
            h2 { (say("share-text", &[])) }
            p { (say("share-text-lead", &[])) }
            (text_form(desk.kept, &desk.kept.now.text))
        }
    };
    shell::of_project(desk, "share", &inside)
}

/// How many pages the templates have, and the short handout.
fn others(desk: &Desk<'_>, wanted: &Edition, query: &str) -> (usize, usize) {
    let address = format!("others/{}/{}/{query}", desk.kept.id.0, desk.kept.now.number);
    let counted = || {
        let templates = drawing::sheets::templates(&desk.made.plan, wanted, SQUARE).len();
        Some(format!("{templates} {}", drawing::sheets::one_page(&desk.made.plan, wanted).len()))
    };
    let text = desk.room.text(&address, counted).unwrap_or_default();
    let mut counts = text.split(' ').map(|count| count.parse().unwrap_or_default());
    (counts.next().unwrap_or_default(), counts.next().unwrap_or_default())
}

/// A page as a small picture, to be seen large by itself.
fn thumbnail(src: &str, said: &str) -> Markup {
    html! { a href=(src) { img src=(src) alt=(said) loading="lazy" width="306" height="396"; } }
}

/// Pages as pictures.
fn pictured(desk: &Desk<'_>, kind: &str, count: usize, query: &str) -> Markup {
    html! {
        ol.pages {
            @for number in 1..=count {
                @let src = format!("/w/{}/{}/{kind}-{number}.svg{query}", desk.kept.id.0, desk.kept.now.number);
                li { (thumbnail(&src, &say("share-page-plain", &[("number", number.into())]))) }
            }
        }
    }
}

/// A page of the handout, the templates or the short handout as a drawing, from the first.
pub(super) fn drawn(made: &Made, kind: &str, number: usize, wanted: &Edition) -> Option<Scene> {
    let plan = &made.plan;
    let all = match kind {
        "page" => pages_of(plan, &made.faces, made.page_colors(), wanted),
        "template" => drawing::sheets::templates(plan, wanted, SQUARE),
        _ => drawing::sheets::one_page(plan, wanted),
    };
    all.into_iter().nth(number.checked_sub(1)?)
}

/// The titles of all pages, a line each.
fn titles(plan: &Plan, colors: &Colors, faces: &Faces, edition: &Edition) -> String {
    let pages = pages_of(plan, faces, colors, edition);
    let titles = pages.into_iter().map(|page| page.title.replace('\n', " "));
    titles.collect::<Vec<_>>().join("\n")
}

/// The same faces, one pixel each: what a page says does not depend on what is printed on the papers.
fn blank(faces: &Faces) -> Faces {
    let pixel = Picture::plain([255; 3]);
    faces.keys().map(|id| (*id, pixel.clone())).collect()
}

/// The project file itself, to be changed by hand.
pub(super) fn text_form(kept: &Kept, text: &str) -> Markup {
    html! {
        form.change method="post" action=(format!("/w/{}/text", kept.id.0)) {
            (shell::seen(kept, "share", ""))
            label.field { span { (say("share-text-label", &[])) } textarea id="text" name="text" rows="24" spellcheck="false" { "\n" (text) } }
            div.ends { button type="submit" { (say("change", &[])) } }
        }
    }
}

/// A file to save, by its name.
pub(super) fn file(desk: &Desk<'_>, name: &str) -> Option<Answer> {
    let plan = &desk.made.plan;
    match name {
        "templates.pdf" | "one-page.pdf" | "every-card.pdf" | "handout.pdf" => {
            let wanted = edition(desk.made.project(), desk.asked);
            let faces = &desk.made.faces;
            let scenes = match name {
                "templates.pdf" => drawing::sheets::templates(plan, &wanted, SQUARE),
                "one-page.pdf" => drawing::sheets::one_page(plan, &wanted),
                "every-card.pdf" => drawing::sheets::every_card(plan, faces, &wanted),
                _ => pages_of(plan, faces, desk.made.page_colors(), &wanted),
            };
            let made = make::book(plan, name.to_owned(), wanted.language, &scenes).ok()?;
            Some(Answer::file(name, "application/pdf", made.bytes))
        }
        "contact-sheet.png" => Some(Answer::file(name, "image/png", make::contact_png(plan, &desk.made.faces)?)),
        name if name.starts_with("card-") => {
            let number: u32 = name.strip_prefix("card-")?.strip_suffix(".png")?.parse().ok()?;
            let card = plan.cards.iter().find(|card| card.number == number)?;
            Some(Answer::file(name, "image/png", make::card_png(plan, &desk.made.faces, card)?))
        }
        "handout.md" | "handout.txt" => {
            let scenes =
                pages_of(plan, &desk.made.faces, desk.made.page_colors(), &edition(desk.made.project(), desk.asked));
            let (kind, text) = if name.ends_with(".md") {
                ("text/markdown; charset=utf-8", drawing::markdown::write(&scenes))
            } else {
                ("text/plain; charset=utf-8", drawing::markdown::plain_text(&scenes))
            };
            Some(Answer::file(name, kind, text.into_bytes()))
        }
        "envelope.pdf" => {
            let bytes = crate::labels::envelopes(plan, &edition(desk.made.project(), desk.asked));
            Some(Answer::file("envelope.pdf", "application/pdf", bytes))
        }
        "pieces.csv" | "cardstock.csv" | "supplies.csv" => {
            let found = make::tables::tables(plan).into_iter().find(|table| table.name == name)?;
            Some(Answer::file(name, "text/csv; charset=utf-8", found.bytes))
        }
        name if name.starts_with("background-") => {
            let rest = name.strip_prefix("background-")?;
            let digits = rest.find(|sign: char| !sign.is_ascii_digit())?;
            let index = rest[..digits].parse::<usize>().ok()?.checked_sub(1)?;
            let wanted = edition(desk.made.project(), desk.asked);
            let shelf = crate::backgrounds::markers(&desk.room.store().shelf().ok()?);
            let files = crate::backgrounds::files(plan, index, &wanted, measure::Length::INCH, &shelf).ok()?;
            let kind = match name.rsplit('.').next()? {
                "pdf" => "application/pdf",
                "png" => "image/png",
                _ => "image/svg+xml",
            };
            Some(Answer::file(name, kind, files.into_iter().find(|file| file.name == name)?.bytes))
        }
        "shelf.csv" => super::supplies::table(desk.room),
        "labels.pdf" => super::class::labels_pdf(desk),
        "plan.json" => Some(Answer::file("plan.json", "application/json", make::plan_json(plan).into_bytes())),
        _ => {
            let number: usize = name.strip_prefix("sheet-")?.strip_suffix(".svg")?.parse().ok()?;
            let index = number.checked_sub(1)?;
            let size = super::drawings::sheet_size(plan.project.packs.get(plan.layouts.get(index)?.pack)?.sheet);
            let scene = drawing::sheets::sheet_drawing(plan, &desk.made.faces, index, size)?;
            Some(Answer::file(name, "image/svg+xml", drawing::svg::write(&scene).into_bytes()))
        }
    }
}

/// A name in small Latin letters, digits and dashes, at most 40 of them: safe in a header and on every disk.
pub(super) fn slug(name: &str) -> String {
    let mut slug = String::new();
    for sign in name.to_lowercase().chars() {
        match sign {
            'ä' => slug.push_str("ae"),
            'ö' => slug.push_str("oe"),
            'ü' => slug.push_str("ue"),
            'ß' => slug.push_str("ss"),
            sign if sign.is_ascii_alphanumeric() => slug.push(sign),
            _ if !slug.is_empty() && !slug.ends_with('-') => slug.push('-'),
            _ => {}
        }
    }
    if slug.len() > 40 {
        slug.truncate(41);
        slug.truncate(slug.rfind('-').unwrap_or(40));
    }
    slug.trim_end_matches('-').to_owned()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use std::sync::Arc;

    use super::*;
    use crate::colors;

    #[test]
    fn pages_are_called_the_same_with_blank_papers() {
        for text in [make::DEMO, make::ONE_EACH] {
            let project = store::project_file::read(text).unwrap();
            let plan = cards::plan::plan(&project, &mut cutting::Budget::nodes(crate::cli::NODES));
            let faces =
                make::faces::faces_by(&plan, &|plan, look, size| make::faces::face_picture(Some(plan), look, size));
            assert!(faces.len() > 5);
            let prints = colors::of_prints(&faces, &|picture| Arc::new(colors::Seen::of(picture)));
            let colors = colors::for_pages(&plan, &faces, &prints);
            for paper in [Paper::Letter, Paper::A4] {
                let edition = Edition::plain(&plan, paper);
                let blank = titles(&plan, &colors, &blank(&faces), &edition);
                assert_eq!(blank, titles(&plan, &colors, &faces, &edition));
                assert!(blank.lines().count() > 5, "{blank}");
            }
        }
    }
}
