//! A plan that takes longer than a page should: how far it is, what was there before, and a way to stop it. A plan of
//! which nothing came: what that means, what was there before, and ways on.
//!
//! With scripts, the page listens (server-sent events, <https://html.spec.whatwg.org/multipage/server-sent-events.html>)
//! and comes by itself once the plan is there. Each answer carries one event and ends; the browser asks again after the
//! time the event names, which is all that a few seconds of waiting need. Without scripts the page is asked for again
//! every two seconds.

use std::sync::Arc;
use std::time::Duration;

use maud::{Markup, html};
use store::project_file;
use store::projects::{Kept, StoreError};

use super::answer::Answer;
use super::room::{Job, Made, Room};
use super::{say, share, shell};

/// How long one answer waits for the plan. Chosen: a reader sees a number change about twice a second.
const LISTEN: Duration = Duration::from_millis(500);

/// The page is to be asked for again: its plan is there, or nothing comes of it. The browser would listen again after
/// 50 ms.
const DONE: &str = "retry: 50\nevent: done\ndata: done\n\n";

/// Cards of before that are shown meanwhile. Chosen: a row on a desk.
const MOST_CARDS: usize = 6;

/// How far a plan is, in a sentence.
fn so_far(job: &Job) -> String {
    let (seconds, nodes) = job.so_far();
    say("working-so-far", &[("seconds", words::local(&format!("{seconds:.1}")).into()), ("nodes", nodes.into())])
}

/// One event: `done`, or how far it is. `None` if the file cannot be read: there is nothing to wait for.
pub(super) fn event(room: &Room, kept: &Kept) -> Option<Answer> {
    let project = project_file::read(&kept.now.text).ok()?;
    let job = room.job(&kept.now.text, &project);
    let text = match job.wait(LISTEN) {
        Some(_) => DONE.to_owned(),
        None if job.broken() => DONE.to_owned(),
        None => format!("retry: 50\ndata: {}\n\n", so_far(&job)),
    };
    let mut answer = Answer::kept("text/event-stream", text.into_bytes());
    answer.forever = false;
    Some(answer)
}

/// What is answered where a plan is not there: the page that waits for it, or what broke. `refused` says why a change
/// was not made, if one was asked for: nothing comes by itself then, for the form would be sent again.
pub(super) fn meanwhile(
    room: &Room,
    kept: &Kept,
    page: &str,
    job: &Arc<Job>,
    refused: Option<&Markup>,
) -> Result<Answer, StoreError> {
    if job.broken() {
        return Ok(Answer::page(500, broken(room, kept, page, refused)?));
    }
    if let Some(refused) = refused {
        let inside = html! {
            div.refused role="alert" { h2 { (say("refused-title", &[])) } (refused) }
            p { a.button href=(format!("/w/{}/{page}", kept.id.0)) { (say("working-back", &[])) } }
        };
        return Ok(Answer::page(503, shell::unplanned(kept, page, &say("working-title", &[]), &inside)));
    }
    Ok(Answer::page(200, waiting(room, kept, page, job)?))
}

fn waiting(room: &Room, kept: &Kept, page: &str, job: &Arc<Job>) -> Result<Markup, StoreError> {
    let inside = html! {
        div.waits data-enhance="progress" data-from=(format!("/w/{}/progress", kept.id.0)) {
            p { (say("working", &[])) }
            p.so-far aria-live="polite" { (so_far(job)) }
            form method="post" action=(format!("/w/{}/stop", kept.id.0)) {
                (shell::seen(kept, page, ""))
                button type="submit" { (say("working-stop", &[])) }
            }
        }
        (before(room, kept, |text| room.at_hand(text))?)
    };
    Ok(shell::waiting(kept, page, &say("working-title", &[]), &inside))
}

/// Octavo's own mistake: the change is kept, and three ways lead on.
fn broken(room: &Room, kept: &Kept, page: &str, refused: Option<&Markup>) -> Result<Markup, StoreError> {
    let form = |verb: &str, label: String| {
        html! {
            form method="post" action=(format!("/w/{}/{verb}", kept.id.0)) {
                (shell::seen(kept, page, ""))
                button type="submit" { (label) }
            }
        }
    };
    // Nothing else is being worked out for this page, so the plan of before may be made anew.
    let anew = |text: &str| {
        let project = project_file::read(text).ok()?;
        room.job(text, &project).wait(room.patience)
    };
    let inside = html! {
        div.refused role="alert" {
            p { (say("broken", &[])) }
            p { (say("broken-kept", &[("what", (&kept.now.what).into())])) }
            @if let Some(refused) = refused { (refused) }
        }
        div.ways {
            @if kept.now.came_from.is_some() { (form("undo", say("broken-undo", &[]))) }
            (form("again", say("broken-again", &[])))
        }
        (before(room, kept, anew)?)
        section {
            h2 { (say("broken-text", &[])) }
            (share::text_form(kept, &kept.now.text))
        }
    };
    Ok(shell::unplanned(kept, page, &say("broken-title", &[]), &inside))
}

/// The cards as they were before the change, where their plan is at hand.
fn before(room: &Room, kept: &Kept, plan: impl FnOnce(&str) -> Option<Arc<Made>>) -> Result<Markup, StoreError> {
    let before = match kept.now.came_from {
        Some(number) => room.store().revision(kept.id, number)?,
        None => None,
    };
    let before = before.and_then(|revision| Some((revision.number, plan(&revision.text)?)));
    Ok(html! {
        @if let Some((number, made)) = before {
            section.before {
                h2 { (say("working-before", &[])) }
                div.cards {
                    @for card in made.plan.cards.iter().take(MOST_CARDS) {
                        img.card src=(format!("/w/{}/{number}/card-{}.svg", kept.id.0, card.number)) alt="";
                    }
                }
            }
        }
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::super::{Asked, Method, answer};
    use super::*;

    fn text(room: &Room, path: &str) -> (u16, String) {
        let (path, fields) = (path.to_owned(), Vec::new());
        let answered = answer(room, &Asked { method: Method::Get, path, query: Vec::new(), fields, now: 1 });
        (answered.status, String::from_utf8(answered.body).unwrap())
    }

    #[test]
    fn a_page_that_cannot_wait_says_how_far_the_plan_is_and_the_event_says_when_it_is_there() {
        let mut room = Room::in_memory(1).unwrap();
        room.patience = Duration::ZERO;
        let (status, shown) = text(&room, "/w/1/batch");
        assert_eq!(status, 200);
        assert!(
            shown.contains("s so far") && shown.contains("/w/1/stop") && shown.contains("/w/1/progress"),
            "{shown}"
        );
        assert!(shown.contains("http-equiv=\"refresh\""), "without scripts it comes again by itself");
        let events = std::iter::repeat_with(|| text(&room, "/w/1/progress").1);
        let last = events.take(240).find(|event| event.contains("event: done")).unwrap();
        assert!(last.starts_with("retry: ") && last.ends_with("\n\n"), "{last:?}");
        assert!(text(&room, "/w/1/batch").1.contains("of-sheet"));
        assert_eq!(text(&room, "/w/99/progress").0, 404);
    }
}
