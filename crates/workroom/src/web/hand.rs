//! Work in hand: the projects as they lie on the table, new ones, and everything kept as one file.

use std::collections::BTreeSet;

use cards::plan::Card;
use maud::{Markup, html};
use store::project_file;
use store::projects::{Kept, StoreError};

use super::answer::{Answer, Asked};
use super::room::{Made, Room};
use super::{backups, begin, say, shell, table};

/// Most projects whose cards are laid out. Chosen: more would not fit on a table either.
const MOST_OPEN: usize = 12;

/// The first page; with why something was refused, if it was.
pub(super) fn page(room: &Room, asked: &Asked, refused: Option<Markup>) -> Result<Answer, StoreError> {
    let all = room.store().all()?;
    let (away, on_table): (Vec<Kept>, Vec<Kept>) = all.into_iter().partition(|kept| kept.put_away.is_some());
    let accent = on_table.first().map(|kept| format!("/w/{}/{}/accent.css", kept.id.0, kept.now.number));
    let mut shown = Vec::new();
    for (index, kept) in on_table.iter().enumerate() {
        shown.push(project(room, kept, index)?);
    }
    let status = if refused.is_some() { 422 } else { 200 };
    let inside = html! {
        h1 { (say("hand-title", &[])) }
        @if let Some(refused) = refused { div.refused role="alert" { h2 { (say("refused-title", &[])) } (refused) } }
        @if let Some(notice) = backups::notice(room, asked) { (notice) }
        @if let Some(kept) = away.iter().find(|kept| kept.id.0.to_string() == asked.query("away")) {
            div.notice role="status" {
                p { (say("hand-was-put-away", &[("name", name_of(kept).into())])) }
                (taken_back(kept))
            }
        }
        @if shown.is_empty() { p { (say("hand-empty", &[])) } }
        @for shown in &shown { (shown) }
        @if !away.is_empty() {
            section.away {
                h2 { (say("away-title", &[])) }
                ul {
                    @for kept in &away {
                        li {
                            (name_of(kept)) " " (taken_back(kept))
                        }
                    }
                }
            }
        }
        (begin::forms(asked))
        section.all {
            h2 { (say("backup-title", &[])) }
            p { (say("backup-lead", &[])) }
            div.ways {
                a.button href="/backup" { (say("backup-take", &[])) }
                form method="post" action="/restore" enctype="multipart/form-data" {
                    label.field { span { (say("restore-file", &[])) } input type="file" name="file" required; }
                    button type="submit" { (say("restore", &[])) }
                }
            }
        }
    };
    Ok(Answer::page(status, shell::first(&say("hand-title", &[]), accent, &inside)))
}

fn taken_back(kept: &Kept) -> Markup {
    html! {
        form.inline method="post" action=(format!("/w/{}/back", kept.id.0)) {
            button.quiet type="submit" { (say("take-back", &[])) }
        }
    }
}

pub(super) fn name_of(kept: &Kept) -> String {
    project_file::read(&kept.now.text).map_or_else(|_| say("no-name", &[]), |project| project.name)
}

/// One project: its finished cards, its name, how far it is.
fn project(room: &Room, kept: &Kept, index: usize) -> Result<Markup, StoreError> {
    let read = project_file::read(&kept.now.text);
    let name = read.as_ref().map_or_else(|_| say("no-name", &[]), |project| project.name.clone());
    let job = match &read {
        Ok(project) if index < MOST_OPEN => Some(room.job(&kept.now.text, project)),
        _ => None,
    };
    let made = job.as_ref().and_then(|job| job.wait(room.patience));
    let ticks = room.store().ticks(kept.id)?;
    let open = format!("/w/{}/cards", kept.id.0);
    let post = |verb: &str, label: String| {
        html! { form.inline method="post" action=(format!("/w/{}/{verb}", kept.id.0)) { button.quiet type="submit" { (label) } } }
    };
    Ok(html! {
        article.project id=(format!("project-{}", kept.id.0)) {
            div.cards {
                @if let Some(made) = &made {
                    @for card in one_of_each(made).into_iter().take(if index == 0 { 6 } else { 3 }) {
                        a href=(open) tabindex="-1" aria-hidden="true" {
                            img.card src=(format!("/w/{}/{}/card-{}.svg", kept.id.0, kept.now.number, card.number)) alt=""
                                width="252" height="360";
                        }
                    }
                }
            }
            div.told {
                h2 { a href=(open) { (name) } }
                @if let Some(made) = &made {
                    p.facts { (facts(made)) }
                    @let (done, all) = table::progress(made, &ticks);
                    @if all > 0 {
                        p {
                            (say("progress", &[("done", done.into()), ("all", all.into())])) " "
                            progress value=(done) max=(all) aria-label=(say("progress-label", &[])) {}
                        }
                    }
                } @else if read.is_err() {
                    p { (say("hand-unreadable", &[])) }
                } @else if job.is_some_and(|job| job.broken()) {
                    p { (say("hand-broken", &[])) }
                } @else {
                    p { (say("hand-working", &[])) }
                }
                div.ways {
                    a.button href=(open) { (say("hand-open", &[])) }
                    (post("copy", say("hand-copy", &[])))
                    a.button.quiet href=(format!("/w/{}/file/project.toml", kept.id.0)) { (say("hand-export", &[])) }
                    (post("away", say("hand-away", &[])))
                }
            }
        }
    })
}

/// "48 cards from 6 sheets, nothing left over."
pub(super) fn facts(made: &Made) -> String {
    let counts = &made.plan.counts;
    let left = made.plan.layouts.iter().any(|layout| layout.waste > 0);
    say(
        "hand-facts",
        &[
            ("cards", counts.cards.into()),
            ("sheets", counts.paper_sheets.into()),
            ("left", if left { "some" } else { "none" }.into()),
        ],
    )
}

/// The first card of each recipe and design.
pub(super) fn one_of_each(made: &Made) -> Vec<&Card> {
    let mut seen = BTreeSet::new();
    made.plan.cards.iter().filter(|card| seen.insert((card.recipe, card.pack, card.design))).collect()
}
