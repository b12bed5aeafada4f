//! Faces of papers as they were drawn, shared by all plans; pictures that were given, by what is in them.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex};

use cards::model::{Look, MotifShape};
use cards::plan::PrintMap;
use cards::{Plan, Project};
use drawing::Picture;
use measure::{Length, Size};

use super::room::locked;
use crate::colors::Seen;
use crate::make::faces::face_picture;
use crate::make::interest;
use crate::pictures;

/// Most faces kept. Chosen: both sides of the demo and some more; a face of 12 in is 4 MB.
const MOST: usize = 18;
/// What a face looks like whose picture is not here.
const MISSING: [u8; 3] = [0xe6, 0xdd, 0xcc];

/// Most maps kept. Chosen: both sides of three packs at two marks; a map of 12 in at 1/8 in is 20 kB.
const MOST_MAPS: usize = 96;

/// Faces already drawn, and where their interest lies.
#[derive(Debug, Default)]
pub(super) struct Prints {
    known: Mutex<Vec<Known>>,
    maps: Mutex<Vec<(String, PrintMap)>>,
}

/// A face that was drawn: by what it depends on; its colours once they were looked at.
#[derive(Debug)]
struct Known {
    key: String,
    picture: Picture,
    seen: Option<Arc<Seen>>,
}

/// The given pictures that a project shows: name in its file, bytes.
pub(super) type Given = BTreeMap<String, Arc<Vec<u8>>>;

impl Prints {
    /// What a face looks like; `None` if it is plain white.
    pub(super) fn face(&self, plan: &Plan, look: &Look, size: Size, given: &Given) -> Option<Picture> {
        if let Look::Stamped(index) = look {
            let of = format!("{look:?} {size:?} {:?}", plan.project.backgrounds.get(*index));
            return self.kept(of, || face_picture(Some(plan), look, size));
        }
        self.given_or_drawn(look, size, given)
    }

    /// What a face looks like that is no background of the plan's.
    fn given_or_drawn(&self, look: &Look, size: Size, given: &Given) -> Option<Picture> {
        self.kept(key(look, size, given), || match look {
            Look::Picture(name) => given.get(name).and_then(|bytes| read(bytes)).or(Some(Picture::plain(MISSING))),
            other => face_picture(None, other, size),
        })
    }

    /// The face that is known by this key, made if it is not yet.
    fn kept(&self, key: String, make: impl FnOnce() -> Option<Picture>) -> Option<Picture> {
        if let Some(known) = locked(&self.known).iter().find(|known| known.key == key) {
            return Some(known.picture.clone());
        }
        let made = make()?;
        let mut known = locked(&self.known);
        if known.len() >= MOST {
            known.remove(0);
        }
        known.push(Known { key, picture: made.clone(), seen: None });
        Some(made)
    }

    /// The colours of a face.
    pub(super) fn seen(&self, picture: &Picture) -> Arc<Seen> {
        let of = |known: &&mut Known| known.picture.is(picture);
        if let Some(seen) = locked(&self.known).iter_mut().find(of).and_then(|known| known.seen.clone()) {
            return seen;
        }
        let made = Arc::new(Seen::of(picture));
        // A face that is no longer kept keeps nothing alive here either.
        if let Some(known) = locked(&self.known).iter_mut().find(of) {
            known.seen = Some(Arc::clone(&made));
        }
        made
    }

    /// Where the interest of a face lies, in cells of a mark; `None` if its picture is not here.
    pub(super) fn map(&self, look: &Look, size: Size, mark: Length, given: &Given) -> Option<PrintMap> {
        if matches!(look, Look::Picture(name) if !given.contains_key(name)) {
            return None;
        }
        let key = format!("{} {mark:?}", key(look, size, given));
        if let Some((_, known)) = locked(&self.maps).iter().find(|(of, _)| *of == key) {
            return Some(known.clone());
        }
        let made = interest::map(&self.given_or_drawn(look, size, given)?, size, mark)?;
        let mut maps = locked(&self.maps);
        if maps.len() >= MOST_MAPS {
            maps.remove(0);
        }
        maps.push((key, made.clone()));
        Some(made)
    }
}

/// What a face's look depends on; a given picture is called by what is in it.
fn key(look: &Look, size: Size, given: &Given) -> String {
    format!("{look:?} {size:?} {}", matches!(look, Look::Picture(name) if given.contains_key(name)))
}

/// The pixels of a picture file, upright and no larger than a drawing needs.
pub(super) fn read(bytes: &[u8]) -> Option<Picture> {
    let read = pictures::decode(bytes).ok()?;
    Picture::new(read.width, read.height, Arc::from(read.rgb))
}

/// The name by which a project file calls a picture that was given here.
pub(super) fn name(hash: &str) -> String {
    format!("{hash}.jpg")
}

/// The hash in such a name.
pub(super) fn hash(name: &str) -> Option<&str> {
    let hash = name.strip_suffix(".jpg")?;
    (hash.len() == 64 && hash.bytes().all(|sign| sign.is_ascii_hexdigit())).then_some(hash)
}

/// The names of the picture files that a project shows.
pub(super) fn names(project: &Project) -> Vec<&str> {
    let faces = project.packs.iter().flat_map(|pack| &pack.designs).flat_map(|design| [&design.front, &design.back]);
    let stamps = project.backgrounds.iter().flat_map(|background| &background.motifs);
    let greetings = project.greetings.iter().filter_map(|greeting| greeting.mark.as_ref());
    let stamped = stamps.map(|stamp| &stamp.shape).chain(greetings).filter_map(|shape| match shape {
        MotifShape::Picture(name, _) => Some(name.as_str()),
        _ => None,
    });
    faces.filter_map(name_of).chain(stamped).collect()
}

fn name_of(face: &cards::model::Face) -> Option<&str> {
    match &face.look {
        Look::Picture(name) => Some(name),
        _ => None,
    }
}
