//! A face of a paper: a picture put on it, that picture turned, the arrow of its print turned.

use maud::{Markup, html};
use store::projects::{Kept, StoreError};

use super::answer::Asked;
use super::edit::{self, Changed};
use super::prints;
use super::room::Room;
use super::{say, straight};
use crate::pictures::{self, PictureError};

/// The arrow of a print goes round these.
const WAYS: [&str; 3] = ["any", "one way", "two ways"];

/// The file with a face changed; or why it cannot be.
///
/// # Errors
/// [`StoreError`] if a picture cannot be kept.
pub(super) fn change(room: &Room, asked: &Asked, kept: &Kept) -> Result<Result<Changed, Markup>, StoreError> {
    let refused = |said: String| Ok(Err(html! { p { (said) } }));
    let number = |name: &str| asked.field(name).parse::<usize>().ok();
    let side = Some(asked.field("side")).filter(|side| ["front", "back"].contains(side));
    let (Some(pack), Some(design), Some(side)) = (number("pack"), number("design"), side) else {
        return refused(say("refused-place", &[]));
    };
    let design = format!("pack.{pack}.design.{design}");
    let place = |key: &str| format!("{design}.{side}.{key}");
    let Ok(document) = edit::document(&kept.now.text) else { return refused(say("refused-place", &[])) };
    let named = [place("name"), format!("{design}.name")].map(|place| edit::written(&document, &place));
    let name = named.into_iter().find(|name| !name.is_empty()).unwrap_or_default();
    let (changes, what) = match asked.field("act") {
        "arrow" => {
            let now = edit::written(&document, &place("way"));
            let at = WAYS.iter().position(|way| *way == now).unwrap_or(0);
            let next = WAYS[(at + 1) % WAYS.len()];
            (vec![(place("way"), next.to_owned())], say("edit-arrow", &[("name", name.into())]))
        }
        act => {
            let given = if act == "turn" {
                let hash = edit::written(&document, &place("picture"));
                let bytes = prints::hash(&hash).map(|hash| room.store().picture_of_hash(hash)).transpose()?.flatten();
                let Some(picture) = bytes.and_then(|bytes| prints::read(&bytes)) else {
                    return refused(say("face-no-picture", &[]));
                };
                picture.turned(1)
            } else {
                let bytes = asked.fields.iter().find(|(key, _)| key == "file").map_or(&[][..], |(_, bytes)| bytes);
                match pictures::decode(bytes)
                    .map(|read| drawing::Picture::new(read.width, read.height, read.rgb.into()))
                {
                    Ok(Some(picture)) => picture,
                    Ok(None) => return refused(say("face-wrong-kind", &[])),
                    Err(error) => return refused(why(&error)),
                }
            };
            // Kept as it will be drawn: upright, no larger than needed, and without where and when it was taken.
            let hash = room.store().keep_picture(kept.id, &place("picture"), &given.jpeg())?;
            if act == "turn" {
                straight::follow(room, kept, &edit::written(&document, &place("picture")), &hash)?;
            }
            let none = |key| (place(key), String::new());
            let changes =
                vec![none("drawn"), none("color"), none("background"), (place("picture"), prints::name(&hash))];
            let id = if act == "turn" { "edit-face-turned" } else { "edit-face" };
            (changes, say(id, &[("name", name.into())]))
        }
    };
    match edit::change(&kept.now.text, &changes) {
        Ok(Some(changed)) => Ok(Ok(Changed { what, ..changed })),
        Ok(None) => refused(say("face-same", &[])),
        Err(_) => refused(say("refused-place", &[])),
    }
}

pub(super) fn why(error: &PictureError) -> String {
    match error {
        PictureError::WrongKind => say("face-wrong-kind", &[]),
        PictureError::TooLarge => {
            say("face-too-large", &[("side", pictures::MOST_SIDE.into()), ("millions", pictures::MOST_MILLIONS.into())])
        }
        PictureError::CutOff => say("face-cut-off", &[]),
        other => say("face-damaged", &[("why", other.to_string().into())]),
    }
}
