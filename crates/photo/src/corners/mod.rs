//! The four corners of a sheet in a photo, found by themselves.
//!
//! 1. `edges`: where colours change, and which way, in the photo made small; weak edges in calm places count as much as
//!    strong ones in busy places.
//! 2. `lines`: straight runs of such edges (a Hough transform, then least squares).
//! 3. `rings`: a side of a sheet *ends* at its corners, while a stripe of the table or a line printed across the sheet goes
//!    on. Four lines that end at each other make a ring; so do three, where the fourth side is too faint to be a line.
//! 4. `pose`: where the sheet's proportion is known, rings are held against what some camera can see of such a sheet.
//! 5. `around`: each side of the best rings is looked for anew in a larger picture, from within it to well outside, by steps
//!    of colour along whole lines. The outermost ring whose sides show steps from corner to corner is the sheet.
//! 6. `refine`: every side is laid anew through the photo, to parts of a pixel.
//!
//! Left out on purpose: learned weights, lenses, sheets that leave the photo.

mod around;
mod edges;
mod lines;
mod pose;
mod refine;
mod rings;

use crate::{Point, Quad, Raster};

/// Longest side in which lines are sought. `Chosen:` a side of a sheet is then some 300 pixels, its edge one or two.
const SEEN: usize = 520;
/// How many rings of each search have their sides looked for anew. `Chosen:` the sheet's is nearly always among them; bounds
/// the time.
const LAID: usize = 6;
/// How much an edge's surroundings take from it, in two searches. `Chosen:` likewise.
const BESIDE: [f32; 2] = [0.45, 0.08];
/// Longest side of the picture that sides are looked for anew in. `Chosen:` a pixel is a thousandth of the photo.
const LARGER: usize = 1_400;
/// A side of which less than this shows an edge is faint. `Chosen:` on photos of seeds 50001–50100.
const SURE: f64 = 0.5;
/// A stretch next to a corner of which less than this shows an edge is faint. `Chosen:` likewise.
const SURE_END: f64 = 0.55;
/// Another ring with more than this part of the best one's score is a rival. `Chosen:` likewise.
const RIVAL: f64 = 0.9;

/// Corners that would have to move by more than this part of a side to be a sheet of the given proportion are doubted.
/// `Chosen:` sheets that curl, and lenses, make a hundredth or two.
const OTHER: f64 = 0.04;

/// What was found.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// The corners in the photo's pixels; the first is the one nearest to the photo's top left, or the next one where the sheet's
    /// proportion says that the sheet lies a quarter turn from its upright.
    pub corners: Quad,
    /// 0 (a guess) to 1 (beyond doubt).
    pub confidence: f64,
    /// Why the corners should be looked at; empty if nothing speaks against them.
    pub doubts: Vec<Doubt>,
}

/// Why corners should be looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Doubt {
    /// Part of a side can hardly be told from the table.
    FaintSide,
    /// A side seems to go on past its corner.
    GoesOn,
    /// Three sides of a larger ring are close outside: this may be a printed margin and not the sheet.
    Margin,
    /// Another four lines would do nearly as well.
    Rival,
    /// The sheet takes up little of the photo.
    Small,
    /// The sheet reaches the photo's edge.
    AtEdge,
    /// No camera sees a sheet of the given proportion so.
    Proportion,
}

/// The corners of the largest clear sheet; `None` if no four lines make one.
///
/// `proportion`: the sheet's width by its height, if known (the photo may be turned); above 0. It tells the sheet's edge from
/// printed lines and stripes of the table, by what a camera of any usual focal length can see.
///
/// # Shape
/// Any photo; sheets of any proportion, seen at up to some 45°. The same photo gives the same answer.
///
/// # Source
/// Duda, Hart 1972, *Communications of the ACM* 15(1), 11–15 (lines); the rings are our own. Measured on generated photos
/// (`examples/corners_table.rs`, figures in `docs/photo.md`).
#[must_use]
pub fn find_corners(photo: &Raster, proportion: Option<f64>) -> Option<Found> {
    let (small, block) = photo.shrunk(SEEN);
    let (larger, larger_block) = photo.shrunk(LARGER);
    let view = pose::View::of(&larger, proportion);
    // Twice: weak edges beside their surroundings, and weak edges beside the noise alone.
    let mut rings = Vec::new();
    for beside in BESIDE {
        let seen = edges::Edges::of(&small, beside);
        let lines = lines::found(&seen);
        let found = rings::found(&seen, &lines, pose::View::of(&small, proportion));
        for ring in found.into_iter().take(LAID + usize::from(proportion.is_some())) {
            if !rings.iter().any(|other: &rings::Ring| other.nearly(&ring)) {
                rings.push(ring);
            }
        }
    }
    #[allow(clippy::cast_precision_loss, reason = "small numbers")]
    let times = block as f64 / larger_block as f64;
    let near = |ring: &rings::Ring| {
        around::best(&larger, &view, ring.corners.map(|at| Point::new(at.x * times, at.y * times)))
    };
    let mut laid: Vec<around::Ring> = rings.iter().filter_map(near).collect();
    laid.sort_by(|one, other| other.rank.total_cmp(&one.rank));
    let best = *laid.first()?;
    #[allow(clippy::cast_precision_loss, reason = "a small number")]
    let scale = larger_block as f64;
    let refined = refine::refined(photo, best.corners.map(|at| Point::new(at.x * scale, at.y * scale)))?;
    let corners = Quad::new(refined.corners).ok()?;
    // From the first corner to the second runs the sheet's width.
    let view = pose::View::of(photo, proportion);
    let mut laid_out = corners.corners();
    if view.turned(&laid_out) {
        laid_out.rotate_left(1);
    }
    let corners = Quad::new(laid_out).ok()?;
    let mut found = judged(photo, corners, &laid, refined.support, best.area(&larger));
    if view.misfit(&found.corners.corners()) > OTHER {
        found.doubts.push(Doubt::Proportion);
    }
    Some(found)
}

/// What speaks against an answer.
#[allow(clippy::cast_precision_loss, reason = "pixel counts")]
fn judged(photo: &Raster, corners: Quad, rings: &[around::Ring], support: [f64; 4], area: f64) -> Found {
    let best = &rings[0];
    let (w, h) = (photo.width() as f64, photo.height() as f64);
    let mut doubts = Vec::new();
    let laid = support.iter().copied().fold(1.0, f64::min);
    if best.weakest < SURE || laid < 0.3 || best.end < SURE_END {
        doubts.push(Doubt::FaintSide);
    }
    if best.margin > 0.8 {
        doubts.push(Doubt::Margin);
    }
    if best.goes_on > 0.8 {
        doubts.push(Doubt::GoesOn);
    }
    let other = rings[1..]
        .iter()
        .filter(|ring| best.differs(ring) && !ring.lies_within(best))
        .map(|ring| ring.rank / best.rank);
    let rival = other.fold(best.rival, f64::max);
    if rival > RIVAL {
        doubts.push(Doubt::Rival);
    }
    if area < 0.1 {
        doubts.push(Doubt::Small);
    }
    let margin = 0.004 * w.max(h);
    if corners.corners().iter().any(|at| at.x < margin || at.y < margin || at.x > w - margin || at.y > h - margin) {
        doubts.push(Doubt::AtEdge);
    }
    let confidence = (best.weakest.min(best.end) * (1.0 - 0.5 * rival.min(1.0)) * 1.6).clamp(0.0, 1.0);
    doubts.sort();
    Found { corners, confidence, doubts }
}
