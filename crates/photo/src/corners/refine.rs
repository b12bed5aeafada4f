//! Every side laid anew through the larger photo, to parts of a pixel.

use crate::{Point, Quad, Raster};

/// Longest side of the picture sides are laid through. `Chosen:` a pixel is then a two-thousandth of the photo.
const SEEN: usize = 2_000;
/// Longest side of the picture the sides come from, and how far they may be off there, in its pixels. `Chosen:` on photos of seeds
/// 50001–50740, 60001–60200 and 70001–70200.
const LARGER: f64 = super::LARGER as f64;
const OFF: f64 = 3.0;
/// Places looked at along a side.
const PLACES: usize = 180;

/// Corners after laying the sides anew, and for each side how large a part of it shows an edge there.
#[derive(Debug)]
pub(super) struct Refined {
    pub(super) corners: [Point; 4],
    pub(super) support: [f64; 4],
}

/// A line as a place and a way.
#[derive(Debug, Clone, Copy)]
struct Side {
    from: Point,
    to: Point,
}

#[allow(clippy::cast_precision_loss, reason = "pixel counts")]
pub(super) fn refined(photo: &Raster, corners: [Point; 4]) -> Option<Refined> {
    let (picture, block) = photo.shrunk(SEEN);
    let block = block as f64;
    let mut corners = corners.map(|at| Point::new(at.x / block, at.y / block));
    let mut support = [0.0; 4];
    let longest = picture.width().max(picture.height()) as f64;
    // First as far as the lines of the larger picture may be off, then close by: a printed line is often stronger than the edge.
    for reach in [(longest / LARGER * OFF).max(2.5), 2.5] {
        let mut sides = [Side { from: corners[0], to: corners[1] }; 4];
        for (at, side) in sides.iter_mut().enumerate() {
            *side = Side { from: corners[at], to: corners[(at + 1) % 4] };
            let (laid, seen) = relaid(&picture, *side, reach);
            (*side, support[at]) = (laid, seen);
        }
        for at in 0..4 {
            corners[at] = meet(sides[(at + 3) % 4], sides[at])?;
        }
    }
    let corners = corners.map(|at| Point::new(at.x * block, at.y * block));
    Quad::new(corners).ok().map(|quad| Refined { corners: quad.corners(), support })
}

fn meet(one: Side, other: Side) -> Option<Point> {
    let (a, b) = (one.to.x - one.from.x, one.to.y - one.from.y);
    let (c, d) = (other.to.x - other.from.x, other.to.y - other.from.y);
    let sine = a * d - b * c;
    if sine.abs() < 1e-9 {
        return None;
    }
    let t = ((other.from.x - one.from.x) * d - (other.from.y - one.from.y) * c) / sine;
    Some(Point::new(one.from.x + a * t, one.from.y + b * t))
}

/// How strongly colours change across a side, place by place along it: `PLACES` rows of `width` steps of half a pixel.
struct Profiles {
    width: usize,
    sure: Vec<f64>,
}

impl Profiles {
    #[allow(clippy::cast_precision_loss, clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "small")]
    fn of(picture: &Raster, side: Side, reach: f64) -> Self {
        let steps = (reach * 2.0) as usize;
        let width = steps * 2 + 1;
        let long = side.from.far(side.to);
        let way = [(side.to.x - side.from.x) / long, (side.to.y - side.from.y) / long];
        let normal = [-way[1], way[0]];
        let mut strength = Vec::with_capacity(PLACES * width);
        for place in 0..PLACES {
            let share = 0.03 + 0.94 * (place as f64 + 0.5) / PLACES as f64;
            let (x, y) = (side.from.x + way[0] * long * share, side.from.y + way[1] * long * share);
            for step in 0..width {
                let off = (step as f64 - steps as f64) / 2.0;
                let mut most = 0.0_f64;
                let colors = [off - 1.25, off + 1.25].map(|off| {
                    // The mean of three places along the side: noise goes down, the edge stays.
                    let mut sum = [0.0; 3];
                    for along in [-1.5, 0.0, 1.5] {
                        let at = between(
                            picture,
                            x + normal[0] * off + way[0] * along,
                            y + normal[1] * off + way[1] * along,
                        );
                        for (sum, value) in sum.iter_mut().zip(at) {
                            *sum += value / 3.0;
                        }
                    }
                    sum
                });
                for (before, after) in colors[0].iter().zip(colors[1]) {
                    most = most.max((before - after).abs());
                }
                strength.push(most);
            }
        }
        let mut sorted = strength.clone();
        sorted.sort_by(f64::total_cmp);
        let floor = (sorted[sorted.len() / 4] * 2.0).clamp(2.5, 12.0);
        Self { width, sure: strength.into_iter().map(|s| s / (s + floor)).collect() }
    }

    fn at(&self, place: usize, step: usize) -> f64 {
        self.sure[place * self.width + step]
    }
}

/// A side moved to where most of it shows an edge; and what part does.
#[allow(clippy::cast_precision_loss, clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "small")]
fn relaid(picture: &Raster, side: Side, reach: f64) -> (Side, f64) {
    let profiles = Profiles::of(picture, side, reach);
    let width = profiles.width;
    let share = |place: usize| (place as f64 + 0.5) / PLACES as f64;
    let mut best = (-1.0, 0.0, 0.0);
    for start in 0..width {
        for end in 0..width {
            let (s, e) = (start as f64, end as f64);
            let sum: f64 =
                (0..PLACES).map(|place| profiles.at(place, libm::round(s + (e - s) * share(place)) as usize)).sum();
            if sum > best.0 {
                best = (sum, s, e);
            }
        }
    }
    let (mut start, mut end) = (best.1, best.2);
    for _ in 0..4 {
        let mut sums = [0.0; 5];
        for place in 0..PLACES {
            let line = start + (end - start) * share(place);
            let Some((peak, sure)) = peak(&profiles, place, line) else { continue };
            let off = peak - line;
            let weight = sure * sure / (1.0 + off * off);
            for (sum, term) in
                sums.iter_mut().zip([1.0, share(place), share(place) * share(place), peak, peak * share(place)])
            {
                *sum += weight * term;
            }
        }
        let [n, s, ss, p, sp] = sums;
        let spread = n * ss - s * s;
        if spread > 1e-9 {
            let slope = (n * sp - s * p) / spread;
            start = (p - slope * s) / n;
            end = start + slope;
        }
    }
    // An edge shows where the change at the line stands well over the quiet of the profile.
    let shown = (0..PLACES).filter(|place| {
        let line = start + (end - start) * share(*place);
        peak(&profiles, *place, line).is_some_and(|(peak, sure)| sure > 0.55 && (peak - line).abs() <= 1.5)
    });
    let support = shown.count() as f64 / PLACES as f64;
    (moved(side, start, end, width), support)
}

/// The strongest change within two pixels of the line, between steps by a parabola.
#[allow(clippy::cast_precision_loss, clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "small")]
fn peak(profiles: &Profiles, place: usize, line: f64) -> Option<(f64, f64)> {
    let middle = libm::round(line.clamp(0.0, (profiles.width - 1) as f64)) as usize;
    let (from, to) = (middle.saturating_sub(4).max(1), (middle + 5).min(profiles.width - 1));
    let value = |step: usize| profiles.at(place, step);
    let pull = |step: usize| value(step) - 0.04 * (step as f64 - line).abs();
    let top = (from..to).reduce(|best, step| if pull(step) > pull(best) { step } else { best })?;
    let (before, here, after) = (value(top - 1), value(top), value(top + 1));
    let bend = before - 2.0 * here + after;
    let by = if bend < -1e-9 { ((before - after) / (2.0 * bend)).clamp(-1.0, 1.0) } else { 0.0 };
    Some((top as f64 + by, here))
}

#[allow(clippy::cast_precision_loss, reason = "small")]
fn moved(side: Side, start: f64, end: f64, width: usize) -> Side {
    let long = side.from.far(side.to);
    let normal = [-(side.to.y - side.from.y) / long, (side.to.x - side.from.x) / long];
    let middle = (width / 2) as f64;
    // The profiles run from 3 % to 97 % of the side.
    let off = |share: f64| (start + (end - start) * (share - 0.03) / 0.94 - middle) / 2.0;
    let by = |at: Point, off: f64| Point::new(at.x + normal[0] * off, at.y + normal[1] * off);
    Side { from: by(side.from, off(0.0)), to: by(side.to, off(1.0)) }
}

/// The colour at a place, between the four pixels round it.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss, reason = "held first")]
fn between(picture: &Raster, x: f64, y: f64) -> [f64; 3] {
    let x = (x - 0.5).clamp(0.0, (picture.width() - 1) as f64);
    let y = (y - 0.5).clamp(0.0, (picture.height() - 1) as f64);
    let (left, top) = (x as usize, y as usize);
    let (fx, fy) = (x - left as f64, y - top as f64);
    let mut out = [0.0; 3];
    for (dx, dy, weight) in
        [(0, 0, (1.0 - fx) * (1.0 - fy)), (1, 0, fx * (1.0 - fy)), (0, 1, (1.0 - fx) * fy), (1, 1, fx * fy)]
    {
        for (out, value) in out.iter_mut().zip(picture.pixel(left + dx, top + dy)) {
            *out += f64::from(value) * weight;
        }
    }
    out
}
