//! An outline out of a mask: the rim of the largest patch of ink.

use measure::Length;

use crate::outline::{MOST_CORNERS, Outline, OutlineError};

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

/// The outline of the largest patch of ink, with pixels of this side.
///
/// # Shape
/// Holes are filled: what lies inside a rim is taken up. Patches that touch at a corner only are two.
///
/// # Errors
/// [`TraceError`] for a mask without ink or without rows.
pub fn trace(mask: &Mask, pixel: Length) -> Result<Outline, TraceError> {
    let (width, pixels) = (mask.width, mask.inked.len());
    if width == 0 || !pixels.is_multiple_of(width) || pixels == 0 {
        return Err(TraceError::NoRows { pixels, width });
    }
    let first = largest_patch(mask).ok_or(TraceError::NoInk)?;
    let rim = rim(mask, first);
    let at = |(x, y): (i64, i64)| {
        (Length::from_ticks(x.saturating_mul(pixel.ticks())), Length::from_ticks(y.saturating_mul(pixel.ticks())))
    };
    // Half a pixel off is what the mask itself is worth; coarser where that leaves too many corners.
    let mut slack = 0.71;
    loop {
        let corners: Vec<(Length, Length)> = thinned(&rim, slack).into_iter().map(at).collect();
        match Outline::new(&corners) {
            Err(OutlineError::TooManyCorners { .. }) if corners.len() > MOST_CORNERS => slack *= 1.5,
            // Thinning may make far sides of a fine neck meet, or leave nothing of a speck: the rim itself never does.
            Err(OutlineError::CrossesItself { .. } | OutlineError::Empty { .. }) if slack > 0.1 => slack /= 2.0,
            other => return Ok(other?),
        }
    }
}

/// The top left pixel of the patch with the most pixels.
fn largest_patch(mask: &Mask) -> Option<(i64, i64)> {
    let mut seen = vec![false; mask.inked.len()];
    let (mut most, mut best) = (0, None);
    for start in 0..mask.inked.len() {
        if !mask.inked[start] || seen[start] {
            continue;
        }
        let (mut open, mut size) = (vec![start], 0);
        seen[start] = true;
        while let Some(at) = open.pop() {
            size += 1;
            let column = at % mask.width;
            let beside = [
                (column > 0).then(|| at.wrapping_sub(1)),
                (column + 1 < mask.width).then_some(at + 1),
                at.checked_sub(mask.width),
                (at + mask.width < mask.inked.len()).then_some(at + mask.width),
            ];
            for next in beside.into_iter().flatten() {
                if mask.inked[next] && !seen[next] {
                    seen[next] = true;
                    open.push(next);
                }
            }
        }
        if size > most {
            (most, best) = (size, Some(start));
        }
    }
    let at = best?;
    Some((i64::try_from(at % mask.width).ok()?, i64::try_from(at / mask.width).ok()?))
}

/// Corners of pixels round a patch, clockwise, ink always on the right hand.
fn rim(mask: &Mask, first: (i64, i64)) -> Vec<(i64, i64)> {
    let inked = |x: i64, y: i64| {
        let (Ok(column), Ok(row)) = (usize::try_from(x), usize::try_from(y)) else { return false };
        column < mask.width && mask.inked.get(row * mask.width + column).copied().unwrap_or(false)
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
