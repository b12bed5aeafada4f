//! The four corners of a sheet in a photo, found by themselves.
//!
//! 1. `edges`: where colours change, and which way, in the photo made small; weak edges in calm places count as much as
//!    strong ones in busy places.
//! 2. `lines`: straight runs of such edges (a Hough transform, then least squares).
//! 3. `rings`: a side of a sheet *ends* at its corners, while a stripe of the table or a line printed across the sheet goes
//!    on. Four lines that end at each other make a ring; the best supported and largest one is the sheet.
//! 4. `refine`: every side is laid anew through the larger photo, to parts of a pixel.
//!
//! Left out on purpose: learned weights, lenses, sheets that leave the photo.

mod edges;
mod lines;
mod refine;
mod rings;

use crate::{Quad, Raster};

/// Longest side in which lines are sought. `Chosen:` a side of a sheet is then some 300 pixels, its edge one or two.
const SEEN: usize = 520;
/// How many rings are laid anew in the larger photo. `Chosen:`.
const LAID: usize = 6;
/// A side of which less than this shows an edge is faint. `Chosen:` on photos of seeds 1–60 and 5000–5019.
const SURE: f64 = 0.62;

/// What was found.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// The corners in the photo's pixels; the first is the one nearest to the photo's top left.
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
    /// More lines run close outside the sides: these may be a printed margin and not the sheet.
    Margin,
    /// Another four lines would do nearly as well.
    Rival,
    /// The sheet takes up little of the photo.
    Small,
    /// The sheet reaches the photo's edge.
    AtEdge,
}

/// The corners of the largest clear sheet; `None` if no four lines make one.
///
/// # Shape
/// Any photo; sheets of any proportion, seen at up to some 45°. The same photo gives the same answer.
///
/// # Source
/// Duda, Hart 1972, *Communications of the ACM* 15(1), 11–15 (lines); the rings are our own. Measured on generated photos
/// (`examples/corners_table.rs`, figures in `docs/photo.md`).
#[must_use]
pub fn find_corners(photo: &Raster) -> Option<Found> {
    let (small, block) = photo.shrunk(SEEN);
    let seen = edges::Edges::of(&small);
    let lines = lines::found(&seen);
    let rings = rings::found(&seen, &lines);
    #[allow(clippy::cast_precision_loss, reason = "a small number")]
    let large = |ring: &rings::Ring| ring.corners.map(|at| crate::Point::new(at.x * block as f64, at.y * block as f64));
    // A shadow's edge is straight too, but soft: the larger photo tells them apart.
    let mut laid: Vec<(rings::Ring, refine::Refined)> = Vec::new();
    for mut ring in rings.into_iter().take(LAID) {
        if let Some(refined) = refine::refined(photo, large(&ring)) {
            ring.score *= 0.3 + refined.support.iter().sum::<f64>() / 4.0;
            laid.push((ring, refined));
        }
    }
    laid.sort_by(|one, other| other.0.score.total_cmp(&one.0.score));
    let (_, best) = laid.first()?;
    let corners = Quad::new(best.corners).ok()?;
    let support = best.support;
    let rings: Vec<rings::Ring> = laid.into_iter().map(|(ring, _)| ring).collect();
    let mut found = judged(photo, corners, &rings, support);
    if rings::rims(&rings[0], &lines) >= 2 {
        found.doubts.push(Doubt::Margin);
        found.doubts.sort();
        found.confidence *= 0.6;
    }
    Some(found)
}

/// What speaks against an answer.
#[allow(clippy::cast_precision_loss, reason = "pixel counts")]
fn judged(photo: &Raster, corners: Quad, rings: &[rings::Ring], support: [f64; 4]) -> Found {
    let best = &rings[0];
    let (w, h) = (photo.width() as f64, photo.height() as f64);
    let mut doubts = Vec::new();
    let weakest = support.iter().copied().fold(1.0, f64::min).min(best.weakest);
    if weakest < SURE {
        doubts.push(Doubt::FaintSide);
    }
    if best.goes_on > 0.55 {
        doubts.push(Doubt::GoesOn);
    }
    let rival = rings[1..].iter().filter(|ring| !ring.lies_within(best) || ring.lies_around(best));
    let rival = rival.map(|ring| ring.score / best.score).fold(0.0, f64::max);
    if rival > 0.9 {
        doubts.push(Doubt::Rival);
    }
    if best.area < 0.1 {
        doubts.push(Doubt::Small);
    }
    let margin = 0.004 * w.max(h);
    if corners.corners().iter().any(|at| at.x < margin || at.y < margin || at.x > w - margin || at.y > h - margin) {
        doubts.push(Doubt::AtEdge);
    }
    let confidence = (weakest * (1.0 - 0.5 * rival.min(1.0)) * 1.6).clamp(0.0, 1.0);
    doubts.sort();
    Found { corners, confidence, doubts }
}
