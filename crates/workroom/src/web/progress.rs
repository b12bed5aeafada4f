//! A plan that takes longer than a page should: how far it is, what was there before, and a way to stop it.
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
use super::room::{Job, Room};
use super::{say, shell};

/// How long one answer waits for the plan. Chosen: a reader sees a number change about twice a second.
const LISTEN: Duration = Duration::from_millis(500);
/// After how many milliseconds the browser asks again.
const AGAIN: u32 = 50;

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
        Some(_) => format!("retry: {AGAIN}\nevent: done\ndata: done\n\n"),
        None => format!("retry: {AGAIN}\ndata: {}\n\n", so_far(&job)),
    };
    let mut answer = Answer::kept("text/event-stream", text.into_bytes());
    answer.forever = false;
    Some(answer)
}

/// The page meanwhile, with the cards as they were before the change where those are at hand.
pub(super) fn page(room: &Room, kept: &Kept, page: &str, job: &Arc<Job>) -> Result<Markup, StoreError> {
    let before = match kept.now.came_from {
        Some(number) => room.store().revision(kept.id, number)?,
        None => None,
    };
    let before = before.and_then(|revision| Some((revision.number, room.at_hand(&revision.text)?)));
    let inside = html! {
        div.waits data-enhance="progress" data-from=(format!("/w/{}/progress", kept.id.0)) {
            p { (say("working", &[])) }
            p.so-far aria-live="polite" { (so_far(job)) }
            form method="post" action=(format!("/w/{}/stop", kept.id.0)) {
                (shell::seen(kept, page, ""))
                button type="submit" { (say("working-stop", &[])) }
            }
        }
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
    };
    Ok(shell::waiting(kept, page, &say("working-title", &[]), &inside))
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
            shown.contains("s so far, ") && shown.contains("/w/1/stop") && shown.contains("/w/1/progress"),
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
