//! A change that came too late, kept beside the newer one: nothing of either is lost, and neither holds the other's.

use store::project_file;
use store::projects::{Kept, StoreError};

use super::answer::{Answer, Asked, Method, lost, project};
use super::room::Room;
use super::{edit, say};

/// Keeps a change that came too late beside the newer one: as a copy of what its maker saw, with her change.
pub(super) fn copied(room: &Room, asked: &Asked, kept: &Kept, rest: &[&str]) -> Result<Answer, StoreError> {
    let Ok(number) = asked.field("as_copy_of").parse() else { return Ok(lost()) };
    let seen = room.store().revision(kept.id, number)?;
    let Some(seen) = seen else { return Ok(lost()) };
    let named = |text: &str| {
        let name = project_file::read(text).map(|project| project.name).unwrap_or_default();
        let copied = edit::change(text, &[("name".to_owned(), say("copy-name", &[("name", name.into())]))]);
        copied.ok().flatten().map_or_else(|| text.to_owned(), |changed| changed.text)
    };
    let what = say("edit-copy", &[]);
    let id = room.store().add(&named(&seen.text), &what, asked.now)?;
    let Some(copy) = room.store().get(id)? else { return Ok(lost()) };
    let mut again = asked.clone();
    again.path = asked.path.replacen(&format!("/w/{}/", kept.id.0), &format!("/w/{}/", id.0), 1);
    again.fields.retain(|(name, _)| name != "as_copy_of" && name != "seen");
    again.fields.push(("seen".to_owned(), copy.now.number.to_string().into_bytes()));
    // Whole files are taken as they were written: they bring the name of the other.
    if let (["text"], Some((_, text))) = (rest, again.fields.iter_mut().find(|(name, _)| name == "text")) {
        let written = String::from_utf8_lossy(text).replace("\r\n", "\n");
        *text = named(&written).into_bytes();
    }
    project(room, &again, Method::Post, id, rest)
}
