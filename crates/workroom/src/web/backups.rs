//! Everything as one file, and back: asked before it replaces what is here, and taken back by one click.

use maud::{Markup, html};
use store::projects::{Kept, OpenError, Projects, RestoreError, StoreError};

use super::answer::{Answer, Asked, lost};
use super::room::Room;
use super::{hand, say, shell};

/// Everything as one file.
pub(super) fn backup(room: &Room, asked: &Asked) -> Result<Answer, StoreError> {
    let bytes = room.store().backup_bytes(&room.scratch(asked.now))?;
    let name = format!("octavo-backup-{}.db", ::cards::days::Day::of_seconds(asked.now));
    Ok(Answer::file(&name, "application/vnd.sqlite3", bytes))
}

/// A backup that was sent is asked about first; one that was asked about, or what was kept aside, is brought back.
pub(super) fn restore(room: &Room, asked: &Asked) -> Result<Answer, StoreError> {
    if !asked.field("aside").is_empty() {
        let Some(bytes) = room.kept_aside(asked.field("aside"))? else { return Ok(lost()) };
        return brought(room, asked, &bytes);
    }
    if !asked.field("offered").is_empty() {
        return match room.take_offered(asked.field("offered")) {
            Some(bytes) => brought(room, asked, &bytes),
            None => hand::page(room, asked, Some(html! { p { (say("restore-again", &[])) } })),
        };
    }
    let bytes = asked.fields.iter().find(|(key, _)| key == "file").map_or(&[][..], |(_, bytes)| bytes);
    if bytes.is_empty() {
        return hand::page(room, asked, Some(html! { p { (say("restore-nothing", &[])) } }));
    }
    match Projects::look_into(bytes, &room.scratch(asked.now)) {
        Ok(theirs) => {
            let ours = room.store().all()?;
            let offered = room.offer(asked.now, bytes.to_vec());
            Ok(question(&ours, &theirs, &offered))
        }
        Err(RestoreError::Backup(why)) => refused(room, asked, &why),
        Err(RestoreError::Store(error)) => Err(error),
    }
}

/// What would go, and what would come.
fn question(ours: &[Kept], theirs: &[Kept], offered: &str) -> Answer {
    let names = |all: &[Kept]| html! { ul { @for kept in all { li { (hand::name_of(kept)) } } } };
    let inside = html! {
        p { (say("restore-goes", &[("count", ours.len().into())])) }
        (names(ours))
        p { (say("restore-comes", &[("count", theirs.len().into())])) }
        (names(theirs))
        p { (say("restore-kept", &[])) }
        div.ways {
            form method="post" action="/restore" {
                input type="hidden" name="offered" value=(offered);
                button type="submit" { (say("restore", &[])) }
            }
            a.button.quiet href="/" { (say("restore-leave", &[])) }
        }
    };
    Answer::page(200, shell::plain(&say("restore-title", &[]), &inside))
}

/// Replaces everything by a backup; what there was is kept beside it.
fn brought(room: &Room, asked: &Asked, bytes: &[u8]) -> Result<Answer, StoreError> {
    let (aside, mark) = room.keep_aside(asked.now)?;
    let restored = room.store().restore(bytes, &room.scratch(asked.now));
    match restored {
        Ok(()) => {
            room.forget();
            Ok(Answer::see(format!("/?brought={mark}")))
        }
        Err(RestoreError::Backup(why)) => {
            // Nothing was replaced, so nobody will look for what there was.
            let _ = std::fs::remove_file(aside);
            refused(room, asked, &why)
        }
        Err(RestoreError::Store(error)) => Err(error),
    }
}

fn refused(room: &Room, asked: &Asked, why: &OpenError) -> Result<Answer, StoreError> {
    let said = say("restore-refused", &[("reason", why.to_string().into())]);
    hand::page(room, asked, Some(html! { p { (said) } }))
}

/// That a backup was brought back, where what was here lies, and the way back to it.
pub(super) fn notice(room: &Room, asked: &Asked) -> Option<Markup> {
    let mark = asked.query("brought");
    let file = room.aside_path(mark)?;
    let name = file.file_name()?.to_string_lossy().into_owned();
    Some(html! {
        div.notice role="status" {
            p { (say("restored", &[("file", name.into())])) }
            form.inline method="post" action="/restore" {
                input type="hidden" name="aside" value=(mark);
                button.quiet type="submit" { (say("take-back", &[])) }
            }
        }
    })
}
