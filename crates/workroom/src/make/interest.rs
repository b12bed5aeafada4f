//! Where the interest of each print lies, for the plan: faces seen by `photo::interest`.
//!
//! Only faces that some batch shows are looked at; flat colours, collages and backgrounds stamped by hand (made to be
//! even) say nothing. Left out on purpose: what the plan
//! makes of it.

use std::collections::BTreeSet;

use cards::Project;
use cards::model::{Look, Placing};
use cards::plan::{PrintMap, PrintMaps, Spot};
use drawing::sheets::{Shade, interest_drawing};
use drawing::{Picture, Scene};
use measure::{Length, Rect, Size};
use photo::{Interest, Raster};
use words::{local, say};

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
    let Explained { interest, .. } = explained(picture, sheet, mark)?;
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

/// The same, with all that explains it.
pub(crate) fn explained(picture: &Picture, sheet: Size, mark: Length) -> Option<Explained> {
    let side = |px: u32| usize::try_from(px).ok();
    let raster = Raster::new(side(picture.width_px())?, side(picture.height_px())?, picture.rgb().to_vec())?;
    let cells = |length: Length| usize::try_from(length.ticks() / mark.ticks().max(1)).unwrap_or(1).max(1);
    #[allow(clippy::cast_precision_loss, reason = "a few dozen")]
    let least = cells(LEAST_PICTURE) as f64;
    let interest = Interest::of(&raster, cells(sheet.width), cells(sheet.height), least);
    Some(Explained { interest, sheet })
}

/// The interest of a print, and why.
#[derive(Debug)]
pub(crate) struct Explained {
    interest: Interest,
    sheet: Size,
}

/// What is shaded on a print.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Part {
    /// What cells weigh in all.
    Sum,
    /// How fast colours change.
    Edge,
    /// How far colours stand from the print's usual ones.
    Distinct,
    /// What belongs to a picture.
    Motif,
}

impl Part {
    /// Each with its name in addresses.
    pub(crate) const ALL: [(Part, &str); 4] =
        [(Part::Sum, "sum"), (Part::Edge, "edge"), (Part::Distinct, "distinct"), (Part::Motif, "motif")];
}

/// A picture that was found on a print.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Found {
    /// Where, on the sheet.
    pub(crate) rect: Rect,
    /// What it is worth to keep it whole: 1 to 1000.
    pub(crate) weight: u16,
    /// Mean of edges, colours of its own and belonging to a picture inside it, in percent.
    pub(crate) reasons: [u32; 3],
}

impl Found {
    /// Where it lies and what it is worth; why. `length`: how a length is written.
    pub(crate) fn told(&self, length: impl Fn(Length) -> String) -> (String, String) {
        let tenth = format!("{}.{}", self.weight / 100, self.weight % 100 / 10);
        let facts = [
            ("width", length(self.rect.size.width).into()),
            ("height", length(self.rect.size.height).into()),
            ("left", length(self.rect.x).into()),
            ("top", length(self.rect.y).into()),
            ("weight", local(&tenth).into()),
        ];
        let [edge, distinct, motif] = self.reasons;
        let why = [("edge", edge.into()), ("distinct", distinct.into()), ("motif", motif.into())];
        (say("interest-picture", &facts), say("interest-reasons", &why))
    }
}

impl Explained {
    /// The pictures, from the left, then from the top.
    pub(crate) fn found(&self) -> Vec<Found> {
        let of = &self.interest;
        let along = |cell: usize, cells: usize, side: Length| {
            let ticks = i128::from(side.ticks()) * i128::try_from(cell).unwrap_or(0)
                / i128::try_from(cells.max(1)).unwrap_or(1);
            Length::from_ticks(i64::try_from(ticks).unwrap_or(0))
        };
        let found = of.motifs().iter().map(|motif| {
            let across = |cell| along(cell, of.columns(), self.sheet.width);
            let down = |cell| along(cell, of.rows(), self.sheet.height);
            let (left, top) = (across(motif.left), down(motif.top));
            let size = Size::new(across(motif.right) - left, down(motif.bottom) - top);
            let mut sums = [0_u32; 3];
            let mut count = 0_u32;
            for row in motif.top..motif.bottom {
                for column in motif.left..motif.right {
                    let Some(why) = of.reasons().get(row * of.columns() + column) else { continue };
                    for (sum, part) in sums.iter_mut().zip([why.edge, why.distinct, why.motif]) {
                        *sum += u32::from(part);
                    }
                    count += 1;
                }
            }
            let reasons = sums.map(|sum| (sum * 20 / 51 + count / 2) / count.max(1));
            Found { rect: Rect::new(left, top, size), weight: motif.weight, reasons }
        });
        found.collect()
    }

    /// The print shaded by a part of it; with the pictures framed where it is all of it.
    pub(crate) fn drawn(&self, print: &Picture, part: Part, size: Size, alt: &str) -> Scene {
        let of = &self.interest;
        let shares: Vec<u8> = match part {
            Part::Sum => of
                .weights()
                .iter()
                .map(|weight| u8::try_from(u32::from(*weight) * 51 / 200).unwrap_or(u8::MAX))
                .collect(),
            Part::Edge => of.reasons().iter().map(|why| why.edge).collect(),
            Part::Distinct => of.reasons().iter().map(|why| why.distinct).collect(),
            Part::Motif => of.reasons().iter().map(|why| why.motif).collect(),
        };
        let boxes: Vec<Rect> =
            if part == Part::Sum { self.found().iter().map(|found| found.rect).collect() } else { Vec::new() };
        interest_drawing(print, self.sheet, Shade { columns: of.columns(), shares: &shares }, &boxes, size, alt)
    }
}
