//! What every page has: the name of the project, the way through the job, undo and redo, the last change.

use maud::{DOCTYPE, Markup, html};
use store::projects::Kept;

use super::answer::{Desk, PAGES};
use super::{assets, language, say};

/// The name of a page, as the way through the job says it.
fn name(page: &str) -> String {
    match page {
        "paper" => say("way-paper", &[]),
        "cards" => say("way-cards", &[]),
        "layout" => say("way-layout", &[]),
        "batch" => say("way-batch", &[]),
        "cardstock" => say("way-cardstock", &[]),
        "supplies" => say("way-supplies", &[]),
        "background" => say("way-background", &[]),
        "table" => say("way-table", &[]),
        "post" => say("way-post", &[]),
        "class" => say("way-class", &[]),
        _ => say("way-share", &[]),
    }
}

/// A whole page of HTML.
fn whole(title: &str, accent: Option<String>, class: &str, refresh: bool, body: &Markup) -> Markup {
    let mark = assets::mark();
    html! {
        (DOCTYPE)
        html lang=(words::spoken().tag()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                @if refresh { noscript { meta http-equiv="refresh" content="2"; } }
                title { (title) }
                link rel="icon" href="data:,";
                link rel="stylesheet" href=(format!("/assets/{mark}/workroom.css"));
                @if let Some(accent) = accent { link rel="stylesheet" href=(accent); }
                script type="module" src=(format!("/assets/{mark}/main.js")) {}
            }
            body class=(class) {
                a.skip href="#main" { (say("skip", &[])) }
                (body)
            }
        }
    }
}

/// A page that belongs to no project.
pub(super) fn plain(title: &str, inside: &Markup) -> Markup {
    let body = html! {
        header.top { a.brand href="/" { "Octavo" } }
        main id="main" { h1 { (title) } (inside) p { a href="/" { (say("to-hand", &[])) } } }
    };
    whole(&format!("{title} · Octavo"), None, "plain", false, &body)
}

/// The first page, with the accent of the project that lies on top.
pub(super) fn first(title: &str, accent: Option<String>, inside: &Markup) -> Markup {
    let body = html! {
        header.top { a.brand href="/" aria-current="page" { "Octavo" } }
        main id="main" { (inside) }
        footer.foot { (language::choice("/")) }
    };
    whole(&format!("{title} · Octavo"), accent, "hand", false, &body)
}

fn accent(kept: &Kept) -> String {
    format!("/w/{}/{}/accent.css", kept.id.0, kept.now.number)
}

fn way(kept: &Kept, page: &str) -> Markup {
    html! {
        nav.way aria-label=(say("way", &[])) {
            ol {
                @for other in PAGES {
                    li {
                        a href=(format!("/w/{}/{other}", kept.id.0)) aria-current=[(other == page).then_some("page")] {
                            (name(other))
                        }
                    }
                }
            }
        }
    }
}

/// The fields by which a form says which revision it saw and where to go afterwards.
pub(super) fn seen(kept: &Kept, page: &str, at: &str) -> Markup {
    html! {
        input type="hidden" name="seen" value=(kept.now.number);
        input type="hidden" name="page" value=(page);
        input type="hidden" name="at" value=(at);
    }
}

/// A page of a project.
pub(super) fn of_project(desk: &Desk<'_>, page: &str, inside: &Markup) -> Markup {
    let kept = desk.kept;
    let step = |verb: &str, label: String, able: bool| {
        html! {
            form method="post" action=(format!("/w/{}/{verb}", kept.id.0)) {
                (seen(kept, page, ""))
                button.quiet type="submit" disabled[!able] data-key=(verb) { (label) }
            }
        }
    };
    let project = &desk.made.project().name;
    let body = html! {
        header.top {
            a.brand href="/" { "Octavo" }
            p.project { (project) }
            div.steps {
                (step("undo", say("undo", &[]), kept.now.came_from.is_some()))
                (step("redo", say("redo", &[]), kept.next.is_some()))
            }
        }
        (way(kept, page))
        main id="main" {
            @if let Some(refused) = &desk.refused {
                div.refused role="alert" { h2 { (say("refused-title", &[])) } (refused) }
            }
            p.gone hidden { (say("gone", &[])) }
            (inside)
        }
        footer.foot {
            p { (say("last-change", &[("what", (&kept.now.what).into())])) }
            (language::choice(&format!("/w/{}/{page}", kept.id.0)))
        }
    };
    whole(&format!("{} · {project} · Octavo", name(page)), Some(accent(kept)), page, false, &body)
}

/// A page of a project whose plan is not there yet: without scripts it comes again every two seconds.
pub(super) fn waiting(kept: &Kept, page: &str, title: &str, inside: &Markup) -> Markup {
    without_plan(kept, page, title, true, inside)
}

/// A page of a project whose plan is not there, and that does not wait for it.
pub(super) fn unplanned(kept: &Kept, page: &str, title: &str, inside: &Markup) -> Markup {
    without_plan(kept, page, title, false, inside)
}

fn without_plan(kept: &Kept, page: &str, title: &str, refresh: bool, inside: &Markup) -> Markup {
    let body = html! {
        header.top { a.brand href="/" { "Octavo" } }
        (way(kept, page))
        main id="main" { h1 { (title) } (inside) }
        // A script that puts pages in place of each other looks for all three parts.
        footer.foot { p { (say("last-change", &[("what", (&kept.now.what).into())])) } }
    };
    whole(&format!("{title} · Octavo"), Some(accent(kept)), page, refresh, &body)
}
