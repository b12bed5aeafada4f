//! The edge of a motif's ink as a polygon, and how far two of them are apart.

use measure::{Length, Size};

use crate::ask::Placement;

/// An outline may have so many corners. Chosen: a traced motif of 3 in keeps its shape with fewer.
pub const MOST_CORNERS: usize = 400;

/// A point or a step, in millimetres; x right, y down.
pub(crate) type Point = (f64, f64);

/// Why corners are no outline.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum OutlineError {
    /// Fewer than three corners, or no area between them.
    #[error("an outline of {corners} corners holds no ink")]
    Empty {
        /// How many corners were given.
        corners: usize,
    },
    /// Two sides meet that are not neighbours.
    #[error("sides {first} and {second} of the outline meet")]
    CrossesItself {
        /// Number of the first side, from 1.
        first: usize,
        /// Number of the second side, from 1.
        second: usize,
    },
    /// More corners than [`MOST_CORNERS`].
    #[error("{corners} corners are too many")]
    TooManyCorners {
        /// How many corners were given.
        corners: usize,
    },
}

/// An outline may have so many patches. Chosen: a spray of dots has fewer.
pub const MOST_PATCHES: usize = 60;

/// The edge of a motif's ink, about its own centre of ink: one patch or several, which always move together.
#[derive(Debug, Clone, PartialEq)]
pub struct Outline {
    /// Corners of every patch in millimetres from the centre of area.
    patches: Vec<Vec<Point>>,
    /// Every rim there is to draw, also round blank places in a patch and round what lies in those.
    rims: Vec<Vec<Point>>,
    area: f64,
    /// Largest distance of a corner from the centre.
    reach: f64,
    /// Radius of a disc about the centre that is all ink; 0 where the centre is blank.
    core: f64,
}

// Corners are finite: they come from lengths.
impl Eq for Outline {}

impl Outline {
    /// The outline with these corners, moved so that its centre of area is at 0, 0.
    ///
    /// # Errors
    /// [`OutlineError`] for too few or too many corners, no area, or sides that meet.
    pub fn new(corners: &[(Length, Length)]) -> Result<Outline, OutlineError> {
        Outline::of_patches(&[corners.to_vec()], &[])
    }

    /// The outline of several patches of ink that belong to one stamp, with the rims that are only drawn.
    ///
    /// # Shape
    /// `inner` are rims of blank places inside a patch, and of ink inside those: even-odd, as they are drawn. They
    /// count for no distance: what lies inside a rim is taken up.
    ///
    /// # Errors
    /// As [`Outline::new`], for each patch; patches may meet each other.
    pub fn of_patches(
        patches: &[Vec<(Length, Length)>],
        inner: &[Vec<(Length, Length)>],
    ) -> Result<Outline, OutlineError> {
        let corners: usize = patches.iter().chain(inner).map(Vec::len).sum();
        if corners > MOST_CORNERS || patches.len() > MOST_PATCHES {
            return Err(OutlineError::TooManyCorners { corners });
        }
        let in_mm =
            |rim: &Vec<(Length, Length)>| -> Vec<Point> { rim.iter().map(|(x, y)| (x.to_mm(), y.to_mm())).collect() };
        let patches: Vec<Vec<Point>> = patches.iter().map(in_mm).collect();
        let (mut whole, mut moment) = (0.0, (0.0, 0.0));
        for points in &patches {
            if let Some((first, second)) = crossing(points) {
                return Err(OutlineError::CrossesItself { first: first + 1, second: second + 1 });
            }
            let twice = twice_area(points);
            if points.len() < 3 || twice.abs() < 1e-6 {
                return Err(OutlineError::Empty { corners });
            }
            let sign = twice.signum();
            for (a, b) in sides(points) {
                let cross = (a.0 * b.1 - b.0 * a.1) * sign;
                moment.0 += (a.0 + b.0) * cross;
                moment.1 += (a.1 + b.1) * cross;
            }
            whole += twice.abs();
        }
        if whole < 1e-6 {
            return Err(OutlineError::Empty { corners });
        }
        let centre = (moment.0 / (3.0 * whole), moment.1 / (3.0 * whole));
        let about = |rim: &Vec<Point>| -> Vec<Point> { rim.iter().map(|p| (p.0 - centre.0, p.1 - centre.1)).collect() };
        let mut rims: Vec<Vec<Point>> = patches.iter().map(about).collect();
        rims.extend(inner.iter().map(in_mm).map(|rim| about(&rim)));
        let patches: Vec<Vec<Point>> = patches.iter().map(about).collect();
        let reach = patches.iter().flatten().map(|p| libm::hypot(p.0, p.1)).fold(0.0, f64::max);
        let core = patches.iter().find(|patch| holds(patch, (0.0, 0.0))).map_or(0.0, |patch| {
            libm::sqrt(sides(patch).map(|(a, b)| to_side((0.0, 0.0), a, b)).fold(f64::INFINITY, f64::min))
        });
        Ok(Outline { patches, rims, area: whole / 2.0, reach, core })
    }

    /// Ink of the outline, mm²; blank places inside a patch count as ink.
    #[must_use]
    pub fn area(&self) -> f64 {
        self.area
    }

    /// Width and height of the ink as it stands, in millimetres.
    #[must_use]
    pub fn extent(&self) -> (f64, f64) {
        let [left, top, right, bottom] = bounds_of(&self.patches);
        (right - left, bottom - top)
    }

    /// Left, top, right and bottom of its ink about the centre of area, in millimetres.
    #[must_use]
    pub fn bounds(&self) -> [f64; 4] {
        bounds_of(&self.patches)
    }

    /// Where the ink balances, about the centre of area, in millimetres: blank places inside a patch are blank here.
    #[must_use]
    pub fn balance(&self) -> (f64, f64) {
        let (whole, moment) = self.even_odd();
        if whole <= 0.0 {
            return (0.0, 0.0);
        }
        (moment.0 / (3.0 * whole), moment.1 / (3.0 * whole))
    }

    /// Ink of the outline, mm²; blank places inside a patch are blank.
    #[must_use]
    pub fn ink(&self) -> f64 {
        self.even_odd().0 / 2.0
    }

    /// Twice the area of the ink, and six times its moments.
    fn even_odd(&self) -> (f64, Point) {
        let (mut whole, mut moment) = (0.0, (0.0, 0.0));
        for (index, rim) in self.rims.iter().enumerate() {
            let Some(first) = rim.first() else { continue };
            // Even-odd: a rim inside one other is that of a blank place, inside two that of ink.
            let held = self.rims.iter().enumerate().filter(|(at, by)| *at != index && holds(by, *first)).count();
            let sign = if held.is_multiple_of(2) { 1.0 } else { -1.0 } * twice_area(rim).signum();
            for (a, b) in sides(rim) {
                let cross = (a.0 * b.1 - b.0 * a.1) * sign;
                whole += cross;
                moment.0 += (a.0 + b.0) * cross;
                moment.1 += (a.1 + b.1) * cross;
            }
        }
        (whole, moment)
    }

    /// Corners of every patch about the centre of ink, in millimetres.
    #[must_use]
    pub fn patches(&self) -> &[Vec<(f64, f64)>] {
        &self.patches
    }

    /// Every rim to draw, even-odd, about the centre of ink, in millimetres.
    #[must_use]
    pub fn rims(&self) -> &[Vec<(f64, f64)>] {
        &self.rims
    }

    /// The largest distance of its ink from its centre, in millimetres.
    #[must_use]
    pub fn reach(&self) -> f64 {
        self.reach
    }

    pub(crate) fn core(&self) -> f64 {
        self.core
    }

    /// The patches with the motif turned clockwise by whole degrees and its centre at a place.
    #[must_use]
    pub fn at(&self, x: f64, y: f64, turn: u16) -> Vec<Vec<(f64, f64)>> {
        self.turned(x, y, f64::from(turn))
    }

    /// What of its ink is on a sheet where it is placed, 0 to 1; exactly 1 only where all of it is.
    #[must_use]
    pub fn share_on(&self, placed: Placement, sheet: Size) -> f64 {
        let ink = self.at(placed.x.to_mm(), placed.y.to_mm(), placed.turn);
        share_inside(&ink, sheet.width.to_mm(), sheet.height.to_mm())
    }

    /// As [`Outline::at`], turned by any part of a degree.
    pub(crate) fn turned(&self, x: f64, y: f64, turn_deg: f64) -> Vec<Vec<Point>> {
        let angle = turn_deg * core::f64::consts::PI / 180.0;
        let (sin, cos) = (libm::sin(angle), libm::cos(angle));
        let at = |p: &Point| (x + p.0 * cos - p.1 * sin, y + p.0 * sin + p.1 * cos);
        self.patches.iter().map(|patch| patch.iter().map(at).collect()).collect()
    }
}

/// Least distance between the ink of two motifs of several patches, in millimetres; 0 where they touch or overlap.
#[must_use]
pub fn apart(one: &[Vec<(f64, f64)>], other: &[Vec<(f64, f64)>]) -> f64 {
    libm::sqrt(least(one, other, f64::INFINITY))
}

/// The squared distance of two motifs, exact where it is below `limit`.
fn least(one: &[Vec<Point>], other: &[Vec<Point>], limit: f64) -> f64 {
    one.iter().fold(limit, |nearest, patch| {
        other.iter().fold(nearest, |nearest, with| squared_distance(patch, with, nearest).min(nearest))
    })
}

/// Distance between the ink of two polygons in millimetres; 0 where they touch or overlap.
#[must_use]
pub fn distance(one: &[(f64, f64)], other: &[(f64, f64)]) -> f64 {
    libm::sqrt(squared_distance(one, other, f64::INFINITY))
}

/// Whether the ink of two motifs comes nearer than a gap.
pub(crate) fn nearer(one: &[Vec<Point>], other: &[Vec<Point>], gap: f64) -> bool {
    least(one, other, gap * gap) < gap * gap
}

/// The squared distance, exact where it is below `limit`.
fn squared_distance(one: &[Point], other: &[Point], limit: f64) -> f64 {
    if one.is_empty() || other.is_empty() {
        return f64::INFINITY;
    }
    let around = bounds(other);
    if beside(bounds(one), around) >= limit {
        return limit;
    }
    if holds(one, other[0]) || holds(other, one[0]) {
        return 0.0;
    }
    let mut least = limit;
    for (a, b) in sides(one) {
        if beside(bounds(&[a, b]), around) >= least {
            continue;
        }
        for (c, d) in sides(other) {
            if beside(bounds(&[a, b]), bounds(&[c, d])) < least {
                least = least.min(between(a, b, c, d));
            }
        }
        if least == 0.0 {
            return 0.0;
        }
    }
    least
}

/// Share of a motif's ink inside the sheet 0..width, 0..height; exactly 1 only for ink that is wholly inside.
pub(crate) fn share_inside(ink: &[Vec<Point>], width: f64, height: f64) -> f64 {
    let [left, top, right, bottom] = bounds_of(ink);
    if left >= 0.0 && top >= 0.0 && right <= width && bottom <= height {
        return 1.0;
    }
    let whole: f64 = ink.iter().map(|patch| twice_area(patch).abs()).sum();
    let inside: f64 = ink.iter().map(|patch| twice_area(patch).abs() * part_inside(patch, width, height)).sum();
    (inside / whole).min(1.0 - f64::EPSILON)
}

/// How far a point lies inside one edge of a sheet of a width and a height.
type Inside = fn(Point, f64, f64) -> f64;

/// Share of a polygon inside the sheet.
fn part_inside(polygon: &[Point], width: f64, height: f64) -> f64 {
    let whole = twice_area(polygon).abs();
    let [left, top, right, bottom] = bounds(polygon);
    if left >= 0.0 && top >= 0.0 && right <= width && bottom <= height {
        return 1.0;
    }
    if right <= 0.0 || bottom <= 0.0 || left >= width || top >= height {
        return 0.0;
    }
    let mut left_over = polygon.to_vec();
    // Cut at the edges it crosses in turn: right for the area of any polygon, as the window is convex.
    let edges: [(bool, Inside); 4] = [
        (left < 0.0, |p, _, _| p.0),
        (right > width, |p, w, _| w - p.0),
        (top < 0.0, |p, _, _| p.1),
        (bottom > height, |p, _, h| h - p.1),
    ];
    for (_, edge) in edges.into_iter().filter(|(crossed, _)| *crossed) {
        let mut kept = Vec::with_capacity(left_over.len() + 4);
        for (a, b) in sides(&left_over) {
            let (from, to) = (edge(a, width, height), edge(b, width, height));
            if from >= 0.0 {
                kept.push(a);
            }
            if (from < 0.0) != (to < 0.0) {
                let part = from / (from - to);
                kept.push((a.0 + (b.0 - a.0) * part, a.1 + (b.1 - a.1) * part));
            }
        }
        left_over = kept;
    }
    twice_area(&left_over).abs() / whole
}

/// Left, top, right, bottom.
pub(crate) fn bounds(points: &[Point]) -> [f64; 4] {
    points.iter().fold([f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY], |b, p| {
        [b[0].min(p.0), b[1].min(p.1), b[2].max(p.0), b[3].max(p.1)]
    })
}

/// Left, top, right, bottom of several polygons.
pub(crate) fn bounds_of(ink: &[Vec<Point>]) -> [f64; 4] {
    ink.iter()
        .map(|patch| bounds(patch))
        .fold([f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY], |a, b| {
            [a[0].min(b[0]), a[1].min(b[1]), a[2].max(b[2]), a[3].max(b[3])]
        })
}

/// Squared distance of two boxes.
fn beside(one: [f64; 4], other: [f64; 4]) -> f64 {
    let dx = (other[0] - one[2]).max(one[0] - other[2]).max(0.0);
    let dy = (other[1] - one[3]).max(one[1] - other[3]).max(0.0);
    dx * dx + dy * dy
}

fn sides(points: &[Point]) -> impl Iterator<Item = (Point, Point)> + '_ {
    points.iter().copied().zip(points.iter().copied().cycle().skip(1))
}

fn twice_area(points: &[Point]) -> f64 {
    sides(points).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum()
}

/// Whether a point lies inside, by counting the sides to its right.
fn holds(polygon: &[Point], p: Point) -> bool {
    sides(polygon)
        .filter(|(a, b)| (a.1 > p.1) != (b.1 > p.1) && p.0 < (b.0 - a.0) * (p.1 - a.1) / (b.1 - a.1) + a.0)
        .count()
        % 2
        == 1
}

/// Squared distance of a point to a side.
fn to_side(p: Point, a: Point, b: Point) -> f64 {
    let (along, from) = ((b.0 - a.0, b.1 - a.1), (p.0 - a.0, p.1 - a.1));
    let length = along.0 * along.0 + along.1 * along.1;
    let part = if length > 0.0 { ((from.0 * along.0 + from.1 * along.1) / length).clamp(0.0, 1.0) } else { 0.0 };
    let (dx, dy) = (from.0 - along.0 * part, from.1 - along.1 * part);
    dx * dx + dy * dy
}

/// On which side of a line from `a` to `b` a point lies.
fn hand(a: Point, b: Point, p: Point) -> f64 {
    (b.0 - a.0) * (p.1 - a.1) - (b.1 - a.1) * (p.0 - a.0)
}

/// Squared distance of two sides; 0 where they meet.
fn between(a: Point, b: Point, c: Point, d: Point) -> f64 {
    if hand(a, b, c) * hand(a, b, d) < 0.0 && hand(c, d, a) * hand(c, d, b) < 0.0 {
        return 0.0;
    }
    to_side(a, c, d).min(to_side(b, c, d)).min(to_side(c, a, b)).min(to_side(d, a, b))
}

/// The first two sides, counted from 0, that meet and are not neighbours.
fn crossing(points: &[Point]) -> Option<(usize, usize)> {
    let all: Vec<(Point, Point)> = sides(points).collect();
    let count = all.len();
    for first in 0..count {
        for second in first + 2..count {
            let neighbours = first == 0 && second == count - 1;
            if !neighbours && between(all[first].0, all[first].1, all[second].0, all[second].1) < 1e-12 {
                return Some((first, second));
            }
        }
    }
    None
}
