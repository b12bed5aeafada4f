//! A change that comes after another: what changed meanwhile, and three ways on.
//!
//! A form asks for a change of what its page showed. So the change is made to the text that was seen: a copy that keeps both
//! is what the maker had before her, and only what she really changed is offered for the newer text.

use maud::html;
use store::projects::{Kept, Revision, StoreError};

use super::answer::{Answer, Asked};
use super::edit::{self, Changed};
use super::room::Room;
use super::{say, shell};

/// What is asked of the text that a page showed.
const OF_WHAT_WAS_SEEN: [&str; 13] = [
    "edit",
    "pins",
    "choices",
    "rates",
    "recipe",
    "panels",
    "regions",
    "layers",
    "background",
    "face",
    "photo",
    "move",
    "sample",
];

/// The project as the page showed it that asks for a change; as it is now for all else.
///
/// # Errors
/// [`StoreError`] if the revision cannot be read.
pub(super) fn as_seen(room: &Room, kept: Kept, verb: &str, seen: i64) -> Result<Kept, StoreError> {
    if seen == kept.now.number || !OF_WHAT_WAS_SEEN.contains(&verb) {
        return Ok(kept);
    }
    let found = room.store().revision(kept.id, seen)?;
    Ok(match found {
        Some(now) => Kept { now, ..kept },
        None => kept,
    })
}

/// Somebody else was quicker: what changed, and three ways on. `kept` is what was seen.
pub(super) fn page(asked: &Asked, kept: &Kept, mine: &Changed, now: i64, since: &[Revision]) -> Answer {
    let (path, fields) = again(asked, kept, mine);
    let inside = html! {
        p { (say("stale", &[])) }
        h2 { (say("stale-theirs", &[])) }
        ul { @for made in since { li { (made.what) } } @if since.is_empty() { li { (say("stale-undone", &[])) } } }
        h2 { (say("stale-mine", &[])) }
        p { (mine.what) }
        div.ways {
            form method="post" action=(path) {
                @for (key, value) in fields { textarea hidden name=(key) { (written_whole(&value)) } }
                input type="hidden" name="seen" value=(now);
                button type="submit" { (say("stale-on-top", &[])) }
            }
            form method="post" action=(format!("/w/{}/copy", kept.id.0)) {
                input type="hidden" name="page" value=(asked.field("page"));
                textarea hidden name="text" { (written_whole(&mine.text)) }
                button type="submit" { (say("stale-both", &[])) }
            }
            a.button href=(format!("/w/{}/cards", kept.id.0)) { (say("stale-theirs-only", &[])) }
        }
        p.hint { (say("stale-both-told", &[])) }
    };
    Answer::page(409, shell::plain(&say("stale-title", &[]), &inside))
}

/// A browser takes the first line break of a text field away.
fn written_whole(text: &str) -> String {
    if text.starts_with('\n') { format!("\n{text}") } else { text.to_owned() }
}

/// The form once more, without what it left as it was; a picture is on its face by its name, it need not come again.
fn again(asked: &Asked, kept: &Kept, mine: &Changed) -> (String, Vec<(String, String)>) {
    let document = edit::document(&kept.now.text).ok();
    let was = |place: &str| document.as_ref().map(|document| edit::written(document, place)).unwrap_or_default();
    let text = |value: &[u8]| std::str::from_utf8(value).ok().map(str::to_owned);
    let all = || asked.fields.iter().filter(|(key, _)| key != "seen");
    if asked.path.ends_with("/face") {
        let face = ["pack", "design"].map(|key| asked.field(key));
        let face = format!("pack.{}.design.{}.{}", face[0], face[1], asked.field("side"));
        let now = edit::document(&mine.text).ok();
        let is = |place: &str| now.as_ref().map(|document| edit::written(document, place)).unwrap_or_default();
        let places = ["picture", "drawn", "color", "background", "way"].map(|key| format!("{face}.{key}"));
        let changed = places.into_iter().filter(|place| was(place) != is(place));
        let mut fields: Vec<_> = changed.map(|place| (format!("set:{place}"), is(&place))).collect();
        fields.extend(["page", "at"].map(|key| (key.to_owned(), asked.field(key).to_owned())));
        return (format!("/w/{}/edit", kept.id.0), fields);
    }
    let left = |key: &str, value: &str| {
        let place = key.strip_prefix("set:").filter(|_| asked.path.ends_with("/edit"));
        place.is_some_and(|place| was(place).trim() == value.replace("\r\n", "\n").trim())
    };
    let fields = all().filter_map(|(key, value)| Some((key.clone(), text(value)?)));
    (asked.path.clone(), fields.filter(|(key, value)| !left(key, value)).collect())
}
