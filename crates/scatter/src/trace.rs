//! An outline out of a mask: the rims of all its ink, as one motif.

use measure::Length;

use crate::outline::{MOST_CORNERS, MOST_PATCHES, Outline, OutlineError};

/// Pixels that are inked or blank, row by row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mask {
    /// Pixels in a row.
    pub width: usize,
    /// Whether each pixel is inked; rows follow each other.
    pub inked: Vec<bool>,
}

/// Why a mask has no outline.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum TraceError {
    /// No pixel is inked.
    #[error("no pixel of the mask is inked")]
    NoInk,
    /// The rows do not fill the mask, or the width is not above zero.
    #[error("{pixels} pixels are no rows of {width}")]
    NoRows {
        /// Pixels given.
        pixels: usize,
        /// Pixels in a row.
        width: usize,
    },
    /// The rim is no outline.
    #[error(transparent)]
    Outline(#[from] OutlineError),
}

/// The outline of all ink of a mask as one motif, with pixels of this side.
///
/// # Shape
/// What lies inside the rim of a patch is taken up; blank places inside are kept to be drawn. Patches that touch at a
/// corner only are two. Specks are left out: less than a five-hundredth of the largest patch (chosen: dust of a scan),
/// and whatever is more than the largest [`MOST_PATCHES`].
///
/// # Errors
/// [`TraceError`] for a mask without ink or without rows.
pub fn trace(mask: &Mask, pixel: Length) -> Result<Outline, TraceError> {
    let (width, pixels) = (mask.width, mask.inked.len());
    if width == 0 || !pixels.is_multiple_of(width) || pixels == 0 {
        return Err(TraceError::NoRows { pixels, width });
    }
    let rims = rims(mask);
    if rims.is_empty() {
        return Err(TraceError::NoInk);
    }
    let at = |(x, y): (i64, i64)| {
        (Length::from_ticks(x.saturating_mul(pixel.ticks())), Length::from_ticks(y.saturating_mul(pixel.ticks())))
    };
    // Half a pixel off is what the mask itself is worth; coarser where that leaves too many corners.
    let mut slack = 0.71;
    let mut fewest = 0;
    loop {
        let mut made = Made::default();
        for rim in &rims {
            made.take(rim, slack, fewest, at);
        }
        match Outline::of_patches(&made.patches, &made.inner) {
            // Where coarser lines no longer help, the smallest patches and blank places go.
            Err(OutlineError::TooManyCorners { .. }) if slack < 8.0 => slack *= 1.5,
            Err(OutlineError::TooManyCorners { .. }) => fewest = (fewest * 2).max(16),
            other => return Ok(other?),
        }
    }
}

/// Rims made into corners.
#[derive(Default)]
struct Made {
    patches: Vec<Vec<(Length, Length)>>,
    inner: Vec<Vec<(Length, Length)>>,
}

impl Made {
    /// Takes up a rim with as few corners as its slack leaves, unless it has fewer pixels than `fewest`.
    fn take(&mut self, rim: &Rim, slack: f64, fewest: usize, at: impl Fn((i64, i64)) -> (Length, Length)) {
        if rim.pixels < fewest {
            return;
        }
        let mut slack = slack;
        // Thinning may make far sides of a fine neck meet, or leave nothing of a speck: the rim itself never does.
        let corners = loop {
            let line = if slack > 0.1 { thinned(&rim.line, slack) } else { rim.line.clone() };
            let corners: Vec<(Length, Length)> = line.into_iter().map(&at).collect();
            if slack <= 0.1 || Outline::new(&corners).is_ok() || corners.len() > MOST_CORNERS {
                break corners;
            }
            slack /= 2.0;
        };
        if rim.shows { self.patches.push(corners) } else { self.inner.push(corners) }
    }
}

/// The rim of a patch of ink, or of a blank place inside one.
struct Rim {
    line: Vec<(i64, i64)>,
    pixels: usize,
    /// True for the outer rim of a patch that lies in no other.
    shows: bool,
}

/// Every rim that is worth having, the largest first.
fn rims(mask: &Mask) -> Vec<Rim> {
    let mut patches = patches(mask, true);
    let largest = patches.iter().map(|patch| patch.pixels).max().unwrap_or(0);
    let worth = |patch: &Patch| patch.pixels * 500 >= largest;
    patches.retain(worth);
    let holes = patches_of_blank(mask).into_iter().filter(worth);
    let mut found: Vec<Rim> =
        holes.map(|hole| Rim { line: rim(mask, false, hole.first), pixels: hole.pixels, shows: false }).collect();
    let blank = found.len();
    for patch in patches {
        let inside = found[..blank].iter().any(|hole| within(&hole.line, patch.first));
        found.push(Rim { line: rim(mask, true, patch.first), pixels: patch.pixels, shows: !inside });
    }
    found.sort_by_key(|rim| (core::cmp::Reverse(rim.pixels), rim.line[0]));
    found.truncate(MOST_PATCHES);
    found
}

/// Pixels of one kind that hang together by their sides.
struct Patch {
    /// Its top left pixel.
    first: (i64, i64),
    pixels: usize,
    /// Whether it reaches the edge of the mask.
    at_edge: bool,
}

/// Blank places with ink all round.
fn patches_of_blank(mask: &Mask) -> Vec<Patch> {
    patches(mask, false).into_iter().filter(|patch| !patch.at_edge).collect()
}

fn patches(mask: &Mask, inked: bool) -> Vec<Patch> {
    let mut seen = vec![false; mask.inked.len()];
    let mut found = Vec::new();
    for start in 0..mask.inked.len() {
        if mask.inked[start] != inked || seen[start] {
            continue;
        }
        let (mut open, mut pixels, mut at_edge) = (vec![start], 0, false);
        seen[start] = true;
        while let Some(at) = open.pop() {
            pixels += 1;
            let column = at % mask.width;
            let beside = [
                (column > 0).then(|| at.wrapping_sub(1)),
                (column + 1 < mask.width).then_some(at + 1),
                at.checked_sub(mask.width),
                (at + mask.width < mask.inked.len()).then_some(at + mask.width),
            ];
            at_edge |= beside.contains(&None);
            for next in beside.into_iter().flatten() {
                if mask.inked[next] == inked && !seen[next] {
                    seen[next] = true;
                    open.push(next);
                }
            }
        }
        let place = |value: usize| i64::try_from(value).unwrap_or(i64::MAX);
        found.push(Patch { first: (place(start % mask.width), place(start / mask.width)), pixels, at_edge });
    }
    found
}

/// Whether the middle of a pixel lies inside a rim of pixel corners.
fn within(rim: &[(i64, i64)], (x, y): (i64, i64)) -> bool {
    // Only upright steps at this row, to the right of the pixel.
    let steps = rim.iter().zip(rim.iter().cycle().skip(1));
    steps.filter(|(a, b)| a.0 == b.0 && a.1.min(b.1) == y && a.0 > x).count() % 2 == 1
}

/// Corners of pixels round a patch of ink, or of no ink, clockwise: the patch is always on the right hand.
fn rim(mask: &Mask, ink: bool, first: (i64, i64)) -> Vec<(i64, i64)> {
    let inked = |x: i64, y: i64| {
        let (Ok(column), Ok(row)) = (usize::try_from(x), usize::try_from(y)) else { return false };
        column < mask.width && mask.inked.get(row * mask.width + column).is_some_and(|is| *is == ink)
    };
    // The pixels ahead on the left and on the right of a corner, for each way of going: right, down, left, up.
    let ahead = |(x, y): (i64, i64), way: usize| match way {
        0 => (inked(x, y - 1), inked(x, y)),
        1 => (inked(x, y), inked(x - 1, y)),
        2 => (inked(x - 1, y), inked(x - 1, y - 1)),
        _ => (inked(x - 1, y - 1), inked(x, y - 1)),
    };
    const STEPS: [(i64, i64); 4] = [(1, 0), (0, 1), (-1, 0), (0, -1)];
    let (mut at, mut way) = (first, 0);
    let mut corners = Vec::new();
    loop {
        corners.push(at);
        at = (at.0 + STEPS[way].0, at.1 + STEPS[way].1);
        let (left, right) = ahead(at, way);
        // Pixels that touch at a corner are two patches: turn right first.
        way = if !right {
            (way + 1) % 4
        } else if left {
            (way + 3) % 4
        } else {
            way
        };
        if at == first && way == 0 {
            return corners;
        }
    }
}

/// A closed line with fewer corners, none of the lost ones further than `slack` from it (Douglas and Peucker 1973).
fn thinned(line: &[(i64, i64)], slack: f64) -> Vec<(i64, i64)> {
    let far = (0..line.len()).max_by_key(|index| {
        let (dx, dy) = (line[*index].0 - line[0].0, line[*index].1 - line[0].1);
        dx * dx + dy * dy
    });
    let Some(far) = far.filter(|far| *far > 0) else { return line.to_vec() };
    let mut keep = vec![false; line.len() + 1];
    (keep[0], keep[far]) = (true, true);
    let mut open = vec![(0, far), (far, line.len())];
    while let Some((from, to)) = open.pop() {
        let (a, b) = (line[from], line[to % line.len()]);
        let worst = (from + 1..to).map(|index| (off(line[index], a, b), index)).max_by(|x, y| x.0.total_cmp(&y.0));
        if let Some((distance, index)) = worst.filter(|worst| worst.0 > slack) {
            debug_assert!(distance.is_finite());
            keep[index] = true;
            open.extend([(from, index), (index, to)]);
        }
    }
    line.iter().zip(&keep).filter(|(_, keep)| **keep).map(|(point, _)| *point).collect()
}

/// Distance of a point from the line through two others.
#[expect(clippy::cast_precision_loss, reason = "pixels of a picture")]
fn off(p: (i64, i64), a: (i64, i64), b: (i64, i64)) -> f64 {
    let (dx, dy) = ((b.0 - a.0) as f64, (b.1 - a.1) as f64);
    let (px, py) = ((p.0 - a.0) as f64, (p.1 - a.1) as f64);
    let length = libm::hypot(dx, dy);
    if length > 0.0 { (dx * py - dy * px).abs() / length } else { libm::hypot(px, py) }
}
