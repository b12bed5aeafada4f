//! Four lines that end at each other.

use super::edges::Edges;
use super::lines::Line;
use super::pose::View;
use crate::Point;

/// Four corners in the small picture, clockwise, with what speaks for them.
#[derive(Debug, Clone)]
pub(super) struct Ring {
    pub(super) corners: [Point; 4],
    pub(super) score: f64,
}

/// A place where a line ends at another.
#[derive(Debug, Clone, Copy)]
struct Corner {
    at: Point,
    /// Which lines meet here, and which way along each the sheet lies (+1 or −1).
    arms: [(usize, f64); 2],
}

/// Corners followed from. `Chosen:` enough for a patterned sheet on a patterned table; bounds the time.
const MOST_CORNERS: usize = 1_200;

/// The rings: the best few, where the sheet is known one of any strong lines, two of three sides only, then others.
pub(super) fn found(edges: &Edges, lines: &[Line], view: View) -> Vec<Ring> {
    let corners = corners(edges, lines);
    let search = Search::new(edges, lines, &corners);
    let mut rings = best_of(search.rings(), &view, 9);
    let more = rings.split_off(rings.len().min(4));
    if view.knows() {
        // One only: printed stripes make many.
        let others = best_of(search.quads(lines, &view), &view, 5);
        let new = others.into_iter().find(|ring| !rings.iter().any(|other| other.nearly(ring)));
        rings.extend(new);
    }
    rings.extend(best_of(search.halves(lines), &view, 2));
    rings.extend(more);
    rings
}

/// The best so many that are not nearly the same.
fn best_of(mut rings: Vec<Ring>, view: &View, most: usize) -> Vec<Ring> {
    rings.sort_by(|one, other| other.score.total_cmp(&one.score));
    let mut kept: Vec<Ring> = Vec::new();
    for mut ring in rings {
        // No ring fits better than wholly: those that follow can no longer come in.
        if kept.len() == most && kept[most - 1].score >= ring.score {
            break;
        }
        ring.score *= view.fits(&ring.corners, ROUGH);
        if kept.iter().any(|other| other.score >= ring.score && other.nearly(&ring)) {
            continue;
        }
        kept.retain(|other| !other.nearly(&ring));
        let at = kept.partition_point(|other| other.score >= ring.score);
        kept.insert(at, ring);
        kept.truncate(most);
    }
    kept
}

fn corners(edges: &Edges, lines: &[Line]) -> Vec<Corner> {
    let (w, h) = (px(edges.width), px(edges.height));
    let arm = 0.09 * w.min(h);
    let inside = |at: Point| at.x > -4.0 && at.y > -4.0 && at.x < w + 4.0 && at.y < h + 4.0;
    // How a line stands at a place: its sureness on both sides of it.
    let sides = |line: &Line, at: Point| {
        let t = line.along(at);
        [(1.0, line.support(t + 3.0, t + arm)), (-1.0, line.support(t - arm, t - 3.0))]
    };
    let mut found: Vec<(f64, Corner)> = Vec::new();
    for (one, first) in lines.iter().enumerate() {
        for (other, second) in lines.iter().enumerate().take(one) {
            let Some(at) = first.meets(second).filter(|at| inside(*at)) else { continue };
            let (a, b) = (sides(first, at), sides(second, at));
            for way in 0..2 {
                for turn in 0..2 {
                    // The arm must be there; beyond the corner it must be fainter.
                    let (on, off) = (a[way].1, a[1 - way].1);
                    let (on2, off2) = (b[turn].1, b[1 - turn].1);
                    let ends = (on - 0.8 * off).min(on2 - 0.8 * off2);
                    if on > 0.22 && on2 > 0.22 && ends > 0.06 {
                        found.push((ends, Corner { at, arms: [(one, a[way].0), (other, b[turn].0)] }));
                    }
                }
            }
        }
    }
    found.sort_by(|one, other| other.0.total_cmp(&one.0));
    found.truncate(MOST_CORNERS);
    found.into_iter().map(|(_, corner)| corner).collect()
}

#[allow(clippy::cast_precision_loss, reason = "small pictures")]
fn px(count: usize) -> f64 {
    count as f64
}

/// One side: to which corner, by which of its arms, and the side's sureness.
#[derive(Debug, Clone, Copy)]
struct Side {
    to: usize,
    arm: usize,
    support: f64,
    /// Mean sureness past its two ends.
    beyond: f64,
}

/// How far past a corner a side is followed, in pixels of the small picture. `Chosen:` short, since a paper's printed lines
/// go on at once and a table's things seldom lie just so.
const PAST: f64 = 15.0;

/// Lines that rings are made of wherever they end, and how surely each side must show. `Chosen:` on photos of seeds
/// 50001–50400; bounds the time.
const STRONG: usize = 70;
const SHOWN: f64 = 0.5;
/// What a ring in the small picture may be off and still be as good as half.
const ROUGH: f64 = 0.06;

struct Search<'a> {
    edges: &'a Edges,
    corners: &'a [Corner],
    /// For each corner and arm, the sides that leave by it.
    sides: Vec<[Vec<Side>; 2]>,
}

impl<'a> Search<'a> {
    fn new(edges: &'a Edges, lines: &[Line], corners: &'a [Corner]) -> Self {
        let least = 0.14 * px(edges.width.min(edges.height));
        let mut ends: Vec<Vec<(usize, usize)>> = vec![Vec::new(); lines.len()];
        for (at, corner) in corners.iter().enumerate() {
            for (arm, (line, _)) in corner.arms.iter().enumerate() {
                ends[*line].push((at, arm));
            }
        }
        let leaving = |from: &Corner, arm: usize| {
            let (number, way) = from.arms[arm];
            let line = &lines[number];
            let start = line.along(from.at);
            let mut sides = Vec::new();
            for (to, other) in &ends[number] {
                let end = line.along(corners[*to].at);
                let long = (end - start) * way;
                if long < least || corners[*to].arms[*other].1 * way > 0.0 {
                    continue;
                }
                let support = line.support(start + way * 3.0, end - way * 3.0);
                if support < 0.25 {
                    continue;
                }
                let past = line.support(end + way * 3.0, end + way * PAST);
                let before = line.support(start - way * 3.0, start - way * PAST);
                sides.push(Side { to: *to, arm: *other, support, beyond: (past + before) / 2.0 });
            }
            sides
        };
        let sides = corners.iter().map(|corner| [leaving(corner, 0), leaving(corner, 1)]).collect();
        Self { edges, corners, sides }
    }

    /// Every way round four corners, each ring once: it begins at its earliest corner and leaves by its first arm.
    fn rings(&self) -> Vec<Ring> {
        let mut rings = Vec::new();
        for first in 0..self.corners.len() {
            for one in self.sides[first][0].iter().filter(|side| side.to > first) {
                for two in self.sides[one.to][1 - one.arm].iter().filter(|side| side.to > first) {
                    for three in self.sides[two.to][1 - two.arm].iter().filter(|side| side.to > first) {
                        let last = self.sides[three.to][1 - three.arm].iter();
                        for four in last.filter(|side| side.to == first && side.arm == 1) {
                            rings.extend(self.ring([first, one.to, two.to, three.to], [one, two, three, four]));
                        }
                    }
                }
            }
        }
        rings
    }

    /// Three sides that hang together; the fourth runs between the places where the outer two seem to end.
    fn halves(&self, lines: &[Line]) -> Vec<Ring> {
        let least = 0.2 * px(self.edges.width.min(self.edges.height));
        let reach = px(self.edges.width.max(self.edges.height));
        let end = |from: &Corner, arm: usize| {
            let (number, way) = from.arms[arm];
            let line = &lines[number];
            let start = line.along(from.at);
            let (mut far, mut best) = (least, (0.0, least));
            while far < reach {
                let sum = (line.support(start, start + way * far) - 0.35) * far;
                if sum > best.0 {
                    best = (sum, far);
                }
                far += 2.0;
            }
            let far = best.1;
            let beyond = line.support(start + way * (far + 3.0), start + way * (far + PAST));
            (line.place(start + way * far), line.support(start, start + way * far), beyond)
        };
        let mut rings = Vec::new();
        for (first, corner) in self.corners.iter().enumerate() {
            for arm in 0..2 {
                for side in self.sides[first][arm].iter().filter(|side| side.to > first && side.support > 0.4) {
                    let other = &self.corners[side.to];
                    if corner.at.far(other.at) < 1.5 * least {
                        continue;
                    }
                    let (back, on) = (end(corner, 1 - arm), end(other, 1 - side.arm));
                    let part = |to: usize, support: f64, beyond: f64| Side { to, arm: 0, support, beyond };
                    let (left, right) = (part(first, back.1, back.2), part(side.to, on.1, on.2));
                    // The side that was not seen is as good as the others' mean.
                    let unseen = part(first, (back.1 + on.1) / 2.0, (back.2 + on.2) / 2.0);
                    rings.extend(self.ring_at([corner.at, other.at, on.0, back.0], [side, &right, &unseen, &left]));
                }
            }
        }
        rings
    }

    /// Rings of any two pairs of strong lines that make the known sheet, wherever those lines end: on a checked cloth a side of
    /// the sheet may lie on an edge of the cloth that runs on.
    fn quads(&self, lines: &[Line], view: &View) -> Vec<Ring> {
        let lines = &lines[..lines.len().min(STRONG)];
        let (w, h) = (px(self.edges.width), px(self.edges.height));
        let least = 0.14 * w.min(h);
        let crossing = |one: &Line, other: &Line| {
            one.meets(other).filter(|at| at.x > -4.0 && at.y > -4.0 && at.x < w + 4.0 && at.y < h + 4.0)
        };
        let side = |line: &Line, from: Point, to: Point| {
            let (start, end) = (line.along(from), line.along(to));
            let way = (end - start).signum();
            let support = line.support(start + way * 3.0, end - way * 3.0);
            let past = line.support(end + way * 3.0, end + way * PAST);
            let before = line.support(start - way * 3.0, start - way * PAST);
            Side { to: 0, arm: 0, support, beyond: (past + before) / 2.0 }
        };
        let mut rings = Vec::new();
        for (first, upper) in lines.iter().enumerate() {
            for lower in &lines[first + 1..] {
                // The lines from one to the other that show an edge there, and where they meet them.
                let mut across: Vec<(Point, Point, Side)> = Vec::new();
                for line in lines {
                    let Some((from, to)) = crossing(upper, line).zip(crossing(lower, line)) else { continue };
                    if from.far(to) > least {
                        let seen = side(line, from, to);
                        across.extend((seen.support > SHOWN).then_some((from, to, seen)));
                    }
                }
                for (at, (from, to, left)) in across.iter().enumerate() {
                    for (other_from, other_to, right) in &across[at + 1..] {
                        if from.far(*other_from) < least || to.far(*other_to) < least {
                            continue;
                        }
                        let (above, below) = (side(upper, *from, *other_from), side(lower, *to, *other_to));
                        if above.support < SHOWN || below.support < SHOWN {
                            continue;
                        }
                        let corners = [*from, *other_from, *other_to, *to];
                        if view.misfit(&corners) < ROUGH {
                            rings.extend(self.ring_at(corners, [&above, right, &below, left]));
                        }
                    }
                }
            }
        }
        rings
    }

    fn ring(&self, at: [usize; 4], sides: [&Side; 4]) -> Option<Ring> {
        self.ring_at(at.map(|at| self.corners[at].at), sides)
    }

    fn ring_at(&self, mut corners: [Point; 4], sides: [&Side; 4]) -> Option<Ring> {
        let mut area = twice_area(&corners);
        if area < 0.0 {
            corners.reverse();
            area = -area;
        }
        let first =
            (0..4).min_by(|a, b| (corners[*a].x + corners[*a].y).total_cmp(&(corners[*b].x + corners[*b].y)))?;
        corners.rotate_left(first);
        crate::Quad::new(corners).ok()?;
        let area = area / 2.0 / (px(self.edges.width) * px(self.edges.height));
        let lens: Vec<f64> = (0..4).map(|side| corners[side].far(corners[(side + 1) % 4])).collect();
        // A sheet seen at 45° has opposite sides of not much over twice one another.
        if (0..2).any(|side| lens[side].max(lens[side + 2]) > 2.6 * lens[side].min(lens[side + 2])) || area < 0.03 {
            return None;
        }
        let mean = sides.iter().map(|side| side.support).sum::<f64>() / 4.0;
        let weakest = sides.iter().map(|side| side.support).fold(1.0, f64::min);
        let beyond = sides.iter().map(|side| side.beyond).sum::<f64>() / 4.0;
        let quality = (0.5 * mean + 0.5 * weakest - 0.6 * beyond).max(0.0);
        let score = quality * libm::sqrt(quality) * (0.5 + libm::sqrt(area));
        Some(Ring { corners, score })
    }
}

fn twice_area(corners: &[Point; 4]) -> f64 {
    (0..4).map(|at| (corners[at], corners[(at + 1) % 4])).map(|(a, b)| a.x * b.y - b.x * a.y).sum()
}

impl Ring {
    /// The same ring but for some pixels.
    pub(super) fn nearly(&self, other: &Ring) -> bool {
        (0..4).any(|turn| (0..4).all(|at| self.corners[at].far(other.corners[(at + turn) % 4]) < 7.0))
    }
}
