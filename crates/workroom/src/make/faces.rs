//! What each face of the plan's papers looks like: drawn prints, pictures from files, plain colours.
//!
//! Only faces that show somewhere are made. Left out on purpose: where they are laid.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::sync::{Arc, Mutex, PoisonError};

use cards::model::{Look, Side};
use cards::plan::{PartKind, PrintMaps};
use cards::{Plan, Project};
use drawing::sheets::Faces;
use drawing::{Picture, prints};
use measure::{Length, Size};

use super::cores::shared_out;
use super::interest;
use crate::pictures::{self, PictureError};

/// Which face: pack, design, side.
pub type FaceId = (usize, usize, Side);

/// A picture file that cannot be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BadPicture {
    /// Its name in the project file.
    pub name: String,
    /// Why.
    pub error: PictureError,
}

/// The faces of a plan's papers.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Made {
    /// What each looks like.
    pub faces: Faces,
    /// Picture files whose shape is not their sheet's, so that they are stretched.
    pub stretched: Vec<String>,
}

/// One face, if it could be made, and whether it is stretched.
type Face = Option<(Picture, Shape)>;

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Shape {
    Sheets,
    Stretched,
}

/// Pixels an inch of paper. Chosen by looking: a sheet is drawn at half its size or less on a page, so 100 give
/// 200 dots an inch there; a card's front drawn near true size still shows no steps.
const PER_INCH: u32 = 100;
/// The drawn prints are the same on every run.
const SEED: u64 = 1;

/// The faces that show on a layout or a card of the plan.
///
/// # Shape
/// Pictures lie in or below `folder`; without a folder there are none. All that cannot be used are told at once.
///
/// # Errors
/// [`BadPicture`], one for each picture file.
pub fn faces(plan: &Plan, folder: Option<&Path>, known: &Known) -> Result<Made, Vec<BadPicture>> {
    let wanted = wanted(plan);
    // Drawing a print takes longest, so the faces are shared out among the cores.
    let made: Vec<(FaceId, Result<Face, BadPicture>)> = shared_out(&wanted, |(id, look, size)| match known.get(*id) {
        Some(known) => (*id, Ok(Some(known))),
        None => (*id, face(Some(plan), look, *size, folder)),
    });
    let (mut faces, mut stretched, mut bad) = (Faces::new(), BTreeSet::new(), Vec::new());
    for (id, made) in made {
        match made {
            Ok(Some((picture, shape))) => {
                faces.insert(id, picture);
                if shape == Shape::Stretched {
                    stretched.insert(id);
                }
            }
            Ok(None) => {}
            Err(error) => bad.push((id, error)),
        }
    }
    let name = |(id, look, _): &(FaceId, &Look, Size)| match look {
        Look::Picture(name) if stretched.contains(id) => Some(name.clone()),
        _ => None,
    };
    let mut stretched: Vec<String> = wanted.iter().filter_map(name).collect();
    stretched.dedup();
    bad.sort_by_key(|(id, _)| *id);
    let mut bad: Vec<BadPicture> = bad.into_iter().map(|(_, error)| error).collect();
    bad.dedup();
    if bad.is_empty() { Ok(Made { faces, stretched }) } else { Err(bad) }
}

/// Faces that were made before the plan was, to see where their interest lies.
#[derive(Debug, Default)]
pub struct Known(Mutex<BTreeMap<FaceId, (Picture, Shape)>>);

impl Known {
    fn get(&self, id: FaceId) -> Option<(Picture, Shape)> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).get(&id).cloned()
    }
}

/// Where the interest of the project's prints lies; a picture that cannot be used is told later, with the others.
pub fn print_maps(project: &Project, folder: Option<&Path>) -> (PrintMaps, Known) {
    let known = Known::default();
    let mark = project.mark.step();
    let seen = |id: FaceId, look: &Look, size: Size| {
        let (picture, shape) = face(None, look, size, folder).ok().flatten()?;
        let map = interest::map(&picture, size, mark);
        known.0.lock().unwrap_or_else(PoisonError::into_inner).insert(id, (picture, shape));
        map
    };
    let maps = interest::maps(project, &seen);
    (maps, known)
}

/// Faces on some layout or turned over on some card, with what they look like and the size of their sheet.
fn wanted(plan: &Plan) -> Vec<(FaceId, &Look, Size)> {
    let mut ids: BTreeSet<FaceId> = BTreeSet::new();
    for layout in &plan.layouts {
        ids.extend(layout.sheets.iter().map(|used| (layout.pack, used.design, used.side)));
    }
    for part in plan.cards.iter().flat_map(|card| &card.parts) {
        if let PartKind::Patterned { layout, design, side, .. } = part.kind
            && let Some(layout) = plan.layouts.get(layout)
        {
            ids.insert((layout.pack, design, side));
        }
    }
    let found = ids.into_iter().filter_map(|id| {
        let pack = plan.project.packs.get(id.0)?;
        let design = pack.designs.get(id.1)?;
        let face = design.face(id.2);
        Some((id, &face.look, pack.sheet))
    });
    found.collect()
}

/// The faces that show on a layout of the plan, each drawn by `draw`, shared out among the cores.
pub fn faces_by(plan: &Plan, draw: &(dyn Fn(&Plan, &Look, Size) -> Option<Picture> + Sync)) -> Faces {
    let drawn = shared_out(&wanted(plan), |(id, look, size)| Some((*id, draw(plan, look, *size)?)));
    drawn.into_iter().flatten().collect()
}

/// What one face looks like, if Octavo draws it, it is a background of the plan, or one colour.
pub fn face_picture(plan: Option<&Plan>, look: &Look, size: Size) -> Option<Picture> {
    face(plan, look, size, None).ok().flatten().map(|(picture, _)| picture)
}

/// A background has its face from the plan, where it was laid.
fn face(plan: Option<&Plan>, look: &Look, size: Size, folder: Option<&Path>) -> Result<Face, BadPicture> {
    let whole = |picture: Option<Picture>| picture.map(|picture| (picture, Shape::Sheets));
    match look {
        Look::Plain(color) => Ok(whole(plain(color))),
        Look::Stamped(index) => {
            Ok(whole(plan.and_then(|plan| crate::backgrounds::face(plan, *index, size, per_inch(size)))))
        }
        Look::Drawn(name) => {
            let drawn = prints::draw(name, size, per_inch(size), SEED);
            Ok(whole(drawn.and_then(|drawn| Picture::new(drawn.width_px, drawn.height_px, Arc::from(drawn.rgb)))))
        }
        Look::Picture(name) => {
            let bad = |error| BadPicture { name: name.clone(), error };
            let folder = folder.ok_or_else(|| bad(PictureError::Missing))?;
            let read = pictures::load(folder, name).map_err(bad)?;
            let shape = shape(read.original, size);
            Ok(Picture::new(read.width, read.height, Arc::from(read.rgb)).map(|picture| (picture, shape)))
        }
    }
}

/// Whether a picture covers its sheet without being stretched by more than a fiftieth.
/// Chosen: a sheet squared by hand is off by less, and nobody sees it.
fn shape((width, height): (u32, u32), sheet: Size) -> Shape {
    let across = i128::from(width) * i128::from(sheet.height.ticks());
    let down = i128::from(height) * i128::from(sheet.width.ticks());
    if (across - down).abs() * 50 > across.max(down) { Shape::Stretched } else { Shape::Sheets }
}

/// Fewer pixels an inch on sheets so large that a picture of them would outgrow its use.
fn per_inch(size: Size) -> u32 {
    let inches = size.width.max(size.height).ticks() / Length::INCH.ticks();
    let most = i64::from(pictures::LONGEST_SIDE) / (inches + 1);
    PER_INCH.min(u32::try_from(most).unwrap_or(1)).max(1)
}

/// The flat colour of `#rrggbb`.
fn plain(color: &str) -> Option<Picture> {
    let number = u32::from_str_radix(color.strip_prefix('#')?, 16).ok()?;
    let [_, red, green, blue] = number.to_be_bytes();
    Some(Picture::plain([red, green, blue]))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;

    #[test]
    fn plain_colors_are_read() {
        assert_eq!(plain("#2f5d73").unwrap().rgb(), [0x2f, 0x5d, 0x73]);
        assert!(plain("blue").is_none());
    }

    #[test]
    fn a_picture_of_another_shape_is_noticed() {
        let sheet = Size::new(Length::INCH * 12, Length::INCH * 12);
        assert_eq!(shape((3000, 3000), sheet), Shape::Sheets);
        assert_eq!(shape((3000, 2950), sheet), Shape::Sheets);
        assert_eq!(shape((4000, 3000), sheet), Shape::Stretched);
    }

    #[test]
    fn huge_sheets_get_fewer_pixels_an_inch() {
        assert_eq!(per_inch(Size::new(Length::INCH * 12, Length::INCH * 12)), PER_INCH);
        assert_eq!(per_inch(Size::new(Length::INCH * 99, Length::INCH)), 24);
        assert_eq!(per_inch(Size::new(Length::INCH * 9999, Length::INCH)), 1);
    }
}
