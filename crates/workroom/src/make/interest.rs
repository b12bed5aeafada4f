//! Where the interest of each print lies, for the plan: faces seen by `photo::interest`.
//!
//! Only faces that some batch shows are looked at; flat colours, collages and backgrounds stamped by hand (made to be
//! even) say nothing. Left out on purpose: what the plan
//! makes of it.

use std::collections::BTreeSet;

use cards::Project;
use cards::model::{Look, Placing};
use cards::plan::{PrintMap, PrintMaps, Spot};
use drawing::Picture;
use measure::{Length, Size};
use photo::{Interest, Raster};

use super::cores::shared_out;
use super::faces::FaceId;

/// A picture that should stay whole is at least so long. `Chosen:` motifs under 1/2 in read as texture (common practice), and
/// those a little larger come by the dozen: cutting some of them spoils nothing.
const LEAST_PICTURE: Length = Length::INCH;

/// The faces that the batches show and that can say something, with what they look like and the size of their sheet.
pub fn shown(project: &Project) -> Vec<(FaceId, &Look, Size)> {
    if project.placing == Placing::Plain {
        return Vec::new();
    }
    let ids: BTreeSet<FaceId> =
        project.made().iter().flat_map(|batch| &batch.takes).map(|take| (take.pack, take.design, take.side)).collect();
    let told = |id: FaceId| {
        let pack = project.packs.get(id.0)?;
        let face = pack.designs.get(id.1)?.face(id.2);
        let says = face.collage.is_none() && !matches!(face.look, Look::Plain(_) | Look::Stamped(_));
        says.then_some((id, &face.look, pack.sheet))
    };
    ids.into_iter().filter_map(told).collect()
}

/// The maps of all faces that the batches show, each by `seen`, shared out among the cores.
pub fn maps(project: &Project, seen: &(dyn Fn(FaceId, &Look, Size) -> Option<PrintMap> + Sync)) -> PrintMaps {
    let found = shared_out(&shown(project), |(id, look, size)| Some((*id, seen(*id, look, *size)?)));
    found.into_iter().flatten().collect()
}

/// Where the interest of a face lies, in cells of `mark` over its sheet.
pub fn map(picture: &Picture, sheet: Size, mark: Length) -> Option<PrintMap> {
    let side = |px: u32| usize::try_from(px).ok();
    let raster = Raster::new(side(picture.width_px())?, side(picture.height_px())?, picture.rgb().to_vec())?;
    let cells = |length: Length| usize::try_from(length.ticks() / mark.ticks().max(1)).unwrap_or(1).max(1);
    #[allow(clippy::cast_precision_loss, reason = "a few dozen")]
    let least = cells(LEAST_PICTURE) as f64;
    let interest = Interest::of(&raster, cells(sheet.width), cells(sheet.height), least);
    let whole = |cell: usize| u32::try_from(cell).unwrap_or(u32::MAX);
    let spot = |motif: &photo::Motif| Spot {
        left: whole(motif.left),
        top: whole(motif.top),
        right: whole(motif.right),
        bottom: whole(motif.bottom),
        weight: motif.weight,
    };
    Some(PrintMap {
        columns: whole(interest.columns()),
        rows: whole(interest.rows()),
        weights: interest.weights().to_vec(),
        spots: interest.motifs().iter().map(spot).collect(),
    })
}
