//! Each side of a ring looked for anew, from a little within it to well outside, in a larger picture.
//!
//! A paper printed to a margin has a ring within its edge, and the edge itself may be ten times fainter than the print. So
//! what runs along a side is straightened into a strip, a step of colour is asked for at every place and distance by how well
//! two flat halves explain it (a soft shadow is no step, and a strong line near by hides nothing), and whole lines across the
//! strip are counted. Of all ways to take a line for each side, that one is the sheet whose sides show steps from corner to
//! corner and none beyond; of several such, the outermost.

use super::pose::View;
use crate::steps::{HALF, Stepped, shaded, stepped};
use crate::{Point, Raster};

/// Places along a side, and as many beyond each end.
const PLACES: usize = 84;
const EXTRA: usize = 15;
const ALL: usize = PLACES + 2 * EXTRA;
/// How far outside and within a side lines are looked for, in parts of its length. `Chosen:` margins and gaps of collages.
const OUT: f64 = 0.13;
const IN: f64 = 0.07;
/// Lines kept for a side. `Chosen:` their fourth power is tried; a striped paper has many.
const LINES: usize = 12;

/// How far a line near its side may lie askew, in pixels from end to end, where proportions tell right from wrong.
/// `Chosen:` on photos of seeds 50001–50400: a ring of the small picture is off by so much at a corner.
const SLANT: f64 = 14.0;
/// What a ring may be off, in parts of a side, and still be half as good as one that fits. `Chosen:` likewise; lenses and
/// sheets that do not lie flat make a hundredth.
const NEAR: f64 = 0.015;

/// What a side loses if all of it may be the far side of a shadow, where the sheet's proportion is known: on a table a little paler
/// than the paper its true sides look so too, and only the proportion holds them. `Chosen:` on photos of seeds 50001–50740,
/// 60001–60200 and 70001–70200: no more than sets it behind an edge close within.
const SHADE: f64 = 0.36;
/// How clearly three sides of a larger ring must show, how little its sides may go on, and how well it must fit the sheet's
/// proportion, to be held against a ring with four clear sides within it. `Chosen:` likewise; the sheet's fourth side may be blind.
const CLEAR: f64 = 0.8;
const GOES_ON: f64 = 0.7;
const FITS: f64 = 0.005;
/// So much larger is such a ring at least, where its sides may be a shadow's: no shadow beside a sheet is so wide all round.
const PALER: f64 = 1.06;

/// Four corners in the larger picture with what speaks for them.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ring {
    pub(super) corners: [Point; 4],
    /// What speaks for it among those close by, and among all.
    pub(super) score: f64,
    pub(super) rank: f64,
    /// What part of its faintest side shows a step, beyond chance.
    pub(super) weakest: f64,
    /// The faintest stretch next to a corner.
    pub(super) end: f64,
    /// How surely a side goes on past a corner.
    pub(super) goes_on: f64,
    /// Score of the best other ring that differs, in parts of this one's.
    pub(super) rival: f64,
    /// What speaks for its sides but the faintest.
    three: f64,
    /// The same where none is held to be a shadow: the table may be paler than the paper.
    paler: f64,
    /// What speaks for three sides of a larger ring near by: it may be the sheet, one side of it unseen.
    pub(super) margin: f64,
}

/// What lies along a side, straightened: for every place along and distance outward, how surely there is a step.
struct Strip {
    from: Point,
    way: [f64; 2],
    normal: [f64; 2],
    long: f64,
    /// Distances run from −`inner` on.
    inner: usize,
    offs: usize,
    steps: Vec<f32>,
    /// The same, less a pixel beside the step itself: for choosing between lines that are hardly apart.
    sharp: Vec<f32>,
    /// Where the step may be a shadow's far side.
    shades: Vec<f32>,
    chance: f64,
}

/// A line across a strip: its distance outward at the side's beginning and end.
struct Line {
    start: f64,
    end: f64,
    /// Steps from the strip's beginning to each place, and places that may be a shadow's far side.
    sums: [f64; ALL + 1],
    shades: [f64; ALL + 1],
}

#[allow(clippy::cast_precision_loss, reason = "small numbers")]
fn f(count: usize) -> f64 {
    count as f64
}

impl Strip {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "parts of a side")]
    fn of(picture: &Raster, from: Point, to: Point) -> Self {
        let long = from.far(to);
        let way = [(to.x - from.x) / long, (to.y - from.y) / long];
        let normal = [way[1], -way[0]];
        let (inner, outer) = ((IN * long).max(6.0) as usize, (OUT * long).max(8.0) as usize);
        let offs = inner + outer + 1;
        let wide = offs + 2 * HALF;
        let step = long / f(PLACES);
        let samples = (step.ceil() as usize).clamp(1, 12);
        let mut colors = vec![[0.0_f32; 3]; ALL * wide];
        for place in 0..ALL {
            for off in 0..wide {
                let out = f(off) - f(HALF + inner);
                let mut sum = [0.0_f32; 3];
                for sample in 0..samples {
                    let along = (f(place) - f(EXTRA) + (f(sample) + 0.5) / f(samples)) * step;
                    let x = from.x + way[0] * along + normal[0] * out;
                    let y = from.y + way[1] * along + normal[1] * out;
                    let seen = between(picture, x, y);
                    sum = [0, 1, 2].map(|at| sum[at] + seen[at]);
                }
                colors[place * wide + off] = sum.map(|value| value / samples as f32);
            }
        }
        let Stepped { steps, sharp, chance } = stepped(&colors, ALL, wide, offs);
        let shades = shaded(&colors, ALL, wide, offs);
        Self { from, way, normal, long, inner, offs, steps, sharp, shades, chance }
    }

    /// The lines that most of the side shows steps along, best first.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within the strip")]
    fn lines(&self, slant: f64) -> Vec<Line> {
        let mut found: Vec<(f32, usize, usize)> = Vec::new();
        let chance = self.chance as f32;
        let least = (chance + 0.35 * (1.0 - chance)) * PLACES as f32;
        for start in 0..self.offs {
            for end in 0..self.offs {
                let far = f(start.abs_diff(self.inner).max(end.abs_diff(self.inner)));
                if f(start.abs_diff(end)) > slant.max(5.0 + 0.3 * far) {
                    continue;
                }
                let by = (end as f32 - start as f32) / PLACES as f32;
                let mut at = start as f32 + by / 2.0 + 0.5;
                let mut sum = 0.0;
                for place in EXTRA..EXTRA + PLACES {
                    sum += self.sharp[place * self.offs + at as usize];
                    at += by;
                }
                if sum > least {
                    found.push((sum, start, end));
                }
            }
        }
        found.sort_by(|one, other| other.0.total_cmp(&one.0).then((one.1, one.2).cmp(&(other.1, other.2))));
        let mut kept: Vec<(usize, usize)> = Vec::new();
        for (_, start, end) in found {
            let close = |(s, e): &(usize, usize)| {
                (s + e).abs_diff(start + end) <= 5 && (f(*s) - f(*e) - f(start) + f(end)).abs() <= 7.0
            };
            if !kept.iter().any(close) {
                kept.push((start, end));
                if kept.len() == 3 * LINES {
                    break;
                }
            }
        }
        // The best, and of the others the outermost.
        if kept.len() > LINES {
            let mut others = kept.split_off(LINES * 2 / 3);
            others.sort_by_key(|(start, end)| std::cmp::Reverse(start + end));
            others.truncate(LINES - LINES * 2 / 3);
            kept.extend(others);
        }
        kept.into_iter().map(|(start, end)| self.line(f(start) - f(self.inner), f(end) - f(self.inner))).collect()
    }

    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held to the strip")]
    fn line(&self, start: f64, end: f64) -> Line {
        let (mut sums, mut shades) = ([0.0; ALL + 1], [0.0; ALL + 1]);
        for place in 0..ALL {
            let share = (f(place) - f(EXTRA) + 0.5) / f(PLACES);
            let off = (start + (end - start) * share + f(self.inner)).round();
            let within = off >= 0.0 && off < f(self.offs);
            let at = |map: &[f32]| if within { f64::from(map[place * self.offs + off as usize]) } else { 0.0 };
            sums[place + 1] = sums[place] + at(&self.steps);
            shades[place + 1] = shades[place] + at(&self.shades);
        }
        Line { start, end, sums, shades }
    }

    fn place(&self, line: &Line, share: f64) -> Point {
        let (along, out) = (share * self.long, line.start + (line.end - line.start) * share);
        Point::new(
            self.from.x + self.way[0] * along + self.normal[0] * out,
            self.from.y + self.way[1] * along + self.normal[1] * out,
        )
    }

    /// Which place (with parts) a point lies at.
    fn along(&self, at: Point) -> f64 {
        let along = (at.x - self.from.x) * self.way[0] + (at.y - self.from.y) * self.way[1];
        along / self.long * f(PLACES) + f(EXTRA)
    }
}

impl Line {
    /// Mean of the steps between two places; none if they are hardly apart or outside.
    fn mean(&self, from: f64, to: f64) -> Option<f64> {
        mean(&self.sums, from, to)
    }

    /// What part of it, between two places, may be the far side of a shadow.
    fn shade(&self, from: f64, to: f64) -> f64 {
        mean(&self.shades, from, to).unwrap_or(0.0)
    }
}

/// Mean between two places of what was summed up; none if they are hardly apart or outside.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held to the strip")]
fn mean(sums: &[f64; ALL + 1], from: f64, to: f64) -> Option<f64> {
    let cell = |at: f64| at.round().clamp(0.0, f(ALL)) as usize;
    let (from, to) = (cell(from), cell(to));
    (to > from).then(|| (sums[to] - sums[from]) / f(to - from))
}

/// The colour at a place, between the four pixels round it.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss, reason = "held first")]
fn between(picture: &Raster, x: f64, y: f64) -> [f32; 3] {
    let (w, h) = (picture.width(), picture.height());
    let x = (x - 0.5).clamp(0.0, f(w - 1)) as f32;
    let y = (y - 0.5).clamp(0.0, f(h - 1)) as f32;
    let (left, top) = (x as usize, y as usize);
    let (fx, fy) = (x - left as f32, y - top as f32);
    let (right, below) = ((left + 1).min(w - 1), (top + 1).min(h - 1));
    let rgb = picture.rgb();
    let at = |x: usize, y: usize| (y * w + x) * 3;
    let from = [at(left, top), at(right, top), at(left, below), at(right, below)];
    [0, 1, 2].map(|channel| {
        let [a, b, c, d] = from.map(|from| f32::from(rgb[from + channel]));
        let (upper, lower) = (a + (b - a) * fx, c + (d - c) * fx);
        upper + (lower - upper) * fy
    })
}

/// The best ring with every side near a ring's own or outside it; `None` if some side shows nothing.
pub(super) fn best(picture: &Raster, view: &View, corners: [Point; 4]) -> Option<Ring> {
    if (0..4).any(|at| corners[at].far(corners[(at + 1) % 4]) < 24.0) {
        return None;
    }
    // Lines askew to a ring's own side make rings of other proportions: they are let in where that can be told.
    let slant = if view.knows() { SLANT } else { 0.0 };
    let strips = [0, 1, 2, 3].map(|side| Strip::of(picture, corners[side], corners[(side + 1) % 4]));
    let lines = [0, 1, 2, 3].map(|side| strips[side].lines(slant));

    let tables = Tables::of(picture, &strips, &lines, if view.knows() { SHADE } else { 0.0 });
    let mut rings: Vec<Ring> = Vec::new();
    for a in 0..lines[0].len() {
        for b in 0..lines[1].len() {
            for c in 0..lines[2].len() {
                for d in 0..lines[3].len() {
                    rings.extend(tables.ring(picture, [a, b, c, d]));
                }
            }
        }
    }
    // Whether a camera can see them so is asked only of those that may still be the best, or a rival.
    rings.sort_by(|one, other| other.score.total_cmp(&one.score));
    let mut most = 0.0_f64;
    let mut asked = 0;
    for ring in &mut rings {
        if ring.score < 0.5 * most {
            break;
        }
        let fits = view.fits(&ring.corners, NEAR);
        ring.score *= fits;
        ring.rank *= fits;
        most = most.max(ring.score);
        asked += 1;
    }
    let others = rings.split_off(asked);
    let mut best = *rings.iter().reduce(|one, other| if other.score > one.score { other } else { one })?;
    let size = best.area(picture);
    let close = rings.iter().filter(|ring| ring.score > 0.5 * best.score);
    let rivals = close.filter(|ring| best.differs(ring) && !ring.lies_within(&best));
    best.rival = rivals.map(|ring| ring.score / best.score).fold(0.0, f64::max);
    let larger = rings.iter().filter(|ring| ring.three > 0.5 && ring.area(picture) > 1.02 * size);
    best.margin = larger.filter(|ring| best.differs(ring)).map(|ring| ring.three).fold(0.0, f64::max);
    if view.knows() {
        // A larger ring of the sheet's own proportion counts even if nothing at all is seen of its fourth side.
        let clear = |ring: &Ring| {
            let by = ring.area(picture) / size;
            ring.goes_on < GOES_ON && (by > 1.02 && ring.three > CLEAR || by > PALER && ring.paler > CLEAR)
        };
        let sheets = rings.iter().chain(&others).filter(|ring| clear(ring) && best.differs(ring));
        let fit = sheets.filter(|ring| view.misfit(&ring.corners) < FITS);
        best.margin = fit.map(|ring| ring.paler).fold(best.margin, f64::max);
    }
    Some(best)
}

/// What speaks for one side, from corner to corner.
#[derive(Debug, Clone, Copy)]
struct Seen {
    /// What part of it shows a step, beyond chance; the lesser of its ends; how surely it goes on.
    share: f64,
    end: f64,
    goes_on: f64,
    /// How surely it may be the far side of a shadow.
    shade: f64,
    side: f64,
    score: f64,
    rank: f64,
}

/// Every corner of two lines and every side of three, so that a ring of four is looked up.
struct Tables {
    counts: [usize; 4],
    corners: [Vec<Option<Point>>; 4],
    sides: [Vec<Option<Seen>>; 4],
    /// What a side loses if all of it may be the far side of a shadow.
    shade: f64,
}

impl Tables {
    fn of(picture: &Raster, strips: &[Strip; 4], lines: &[Vec<Line>; 4], shade: f64) -> Self {
        let counts = [0, 1, 2, 3].map(|at| lines[at].len());
        let whole = |side: usize, line: usize| {
            let (strip, line) = (&strips[side], &lines[side][line]);
            [strip.place(line, 0.0), strip.place(line, 1.0)]
        };
        let corners = [0, 1, 2, 3].map(|at: usize| {
            let before = (at + 3) % 4;
            let pairs = (0..counts[before]).flat_map(|one| (0..counts[at]).map(move |other| (one, other)));
            pairs.map(|(one, other)| meet(whole(before, one), whole(at, other))).collect::<Vec<_>>()
        });
        let sides = [0, 1, 2, 3].map(|at: usize| {
            let (before, after) = ((at + 3) % 4, (at + 1) % 4);
            let mut sides = Vec::with_capacity(counts[before] * counts[at] * counts[after]);
            for first in 0..counts[before] {
                for own in 0..counts[at] {
                    for last in 0..counts[after] {
                        let (from, to) =
                            (corners[at][first * counts[at] + own], corners[after][own * counts[after] + last]);
                        let seen = from.zip(to).and_then(|ends| seen(picture, &strips[at], &lines[at][own], ends));
                        sides.push(seen);
                    }
                }
            }
            sides
        });
        Self { counts, corners, sides, shade }
    }

    fn ring(&self, picture: &Raster, own: [usize; 4]) -> Option<Ring> {
        let mut corners = [Point::new(0.0, 0.0); 4];
        let (mut sides, mut plain, mut shade) = ([0.0_f64; 4], [0.0_f64; 4], 1.0);
        let (mut score, mut rank) = (1.0, 1.0);
        let (mut weakest, mut end, mut goes_on) = (1.0_f64, 1.0_f64, 0.0_f64);
        for at in 0..4 {
            let (before, after) = ((at + 3) % 4, (at + 1) % 4);
            corners[at] = self.corners[at][own[before] * self.counts[at] + own[at]]?;
            let seen = self.sides[at][(own[before] * self.counts[at] + own[at]) * self.counts[after] + own[after]]?;
            let lit = 1.0 - self.shade * seen.shade;
            (sides[at], plain[at]) = (seen.side * lit, seen.side);
            shade *= lit;
            score *= seen.score;
            rank *= seen.rank;
            weakest = weakest.min(seen.share);
            end = end.min(seen.end);
            goes_on = goes_on.max(seen.goes_on);
        }
        sides.sort_by(f64::total_cmp);
        plain.sort_by(f64::total_cmp);
        let (three, paler) = (sides[1], plain[1]);
        let mut ring =
            Ring { corners, score: 0.0, rank: 0.0, weakest, end, goes_on, rival: 0.0, three, paler, margin: 0.0 };
        let area = ring.area(picture);
        ring.score = libm::sqrt(score * shade) * area * area * area;
        ring.rank = libm::sqrt(rank * shade) * area;
        (area > 0.02).then_some(ring)
    }
}

fn seen(picture: &Raster, strip: &Strip, line: &Line, ends: (Point, Point)) -> Option<Seen> {
    let (from, to) = (strip.along(ends.0), strip.along(ends.1));
    let over = |share: f64| ((share - strip.chance) / (1.0 - strip.chance)).clamp(0.0, 1.0);
    let share = over(line.mean(from, to)?);
    let end = over(line.mean(from, from + 4.0)?).min(over(line.mean(to - 4.0, to)?));
    // Past the photo's edge nothing is known.
    let beyond = |from: f64, to: f64| {
        let at = strip.place(line, ((from + to) / 2.0 - f(EXTRA)) / f(PLACES));
        let inside = at.x > 0.0 && at.y > 0.0 && at.x < f(picture.width()) && at.y < f(picture.height());
        if inside { line.mean(from, to).map_or(0.0, over) } else { 0.7 }
    };
    let (before, after) = (beyond(from - 8.0, from - 1.0), beyond(to + 1.0, to + 8.0));
    // Right past the corner: a line printed through the sheet goes on there even if the sheet soon ends.
    let next = line.mean(from - 3.0, from - 1.0).map_or(0.0, over) + line.mean(to + 1.0, to + 3.0).map_or(0.0, over);
    let shade = rise(line.shade(from, to), 0.4, 0.8);
    // One place of the four next to a corner may be blind.
    let side = rise(share, 0.3, 0.8) * (0.03 + 0.97 * rise(end, 0.2, 0.75));
    let score = side * (1.0 - 0.15 * (before + after)) * (1.0 - 0.08 * next);
    let rank = side * (1.0 - 0.35 * (before + after)) * (1.0 - 0.08 * next);
    Some(Seen { share, end, goes_on: before.max(after), shade, side, score, rank })
}

impl Ring {
    /// Whether some corner lies elsewhere in the other.
    pub(super) fn differs(&self, other: &Ring) -> bool {
        let side = self.corners[0].far(self.corners[2]);
        let apart = |turn: usize| (0..4).any(|at| self.corners[at].far(other.corners[(at + turn) % 4]) > 0.006 * side);
        (0..4).all(apart)
    }

    /// All of its corners lie in the other, or nearly.
    pub(super) fn lies_within(&self, other: &Ring) -> bool {
        let side = |at: usize| (other.corners[at], other.corners[(at + 1) % 4]);
        let out =
            |at: Point, (a, b): (Point, Point)| ((b.x - a.x) * (at.y - a.y) - (b.y - a.y) * (at.x - a.x)) / a.far(b);
        self.corners.iter().all(|at| (0..4).all(|number| out(*at, side(number)) > -4.0))
    }

    /// Part of the picture within it.
    pub(super) fn area(&self, picture: &Raster) -> f64 {
        let twice: f64 =
            (0..4).map(|at| (self.corners[at], self.corners[(at + 1) % 4])).map(|(a, b)| a.x * b.y - b.x * a.y).sum();
        twice / 2.0 / (f(picture.width()) * f(picture.height()))
    }
}

/// From 0 at `low` to 1 at `high`.
fn rise(value: f64, low: f64, high: f64) -> f64 {
    ((value - low) / (high - low)).clamp(0.0, 1.0)
}

fn meet(one: [Point; 2], other: [Point; 2]) -> Option<Point> {
    let (a, b) = (one[1].x - one[0].x, one[1].y - one[0].y);
    let (c, d) = (other[1].x - other[0].x, other[1].y - other[0].y);
    let sine = a * d - b * c;
    if sine.abs() < 1e-9 {
        return None;
    }
    let t = ((other[0].x - one[0].x) * d - (other[0].y - one[0].y) * c) / sine;
    Some(Point::new(one[0].x + a * t, one[0].y + b * t))
}
