//! Straight runs of edges.

use super::edges::Edges;
use crate::Point;

/// A line with how surely there is an edge at each pixel along it.
#[derive(Debug)]
pub(super) struct Line {
    /// A unit vector across it.
    pub(super) normal: [f64; 2],
    /// Where it lies: `normal` · place.
    pub(super) at: f64,
    /// Sums of sureness along it, from `first` on, pixel by pixel.
    sums: Vec<f64>,
    first: f64,
}

/// Most lines looked at. `Chosen:` a striped paper has many, and its four sides must be among them.
const MOST: usize = 300;
/// Directions told apart: one degree each.
const TURNS: usize = 180;
/// How far an edge may be turned from its line, in degrees. `Chosen:` where a printed motif meets the edge of its sheet, the
/// change of colour runs askew.
const WIDE: usize = 20;

impl Line {
    fn new(edges: &Edges, normal: [f64; 2], at: f64) -> Self {
        let (w, h) = (f(edges.width), f(edges.height));
        let reach = libm::hypot(w, h);
        let mut line = Self { normal, at, sums: vec![0.0], first: -reach };
        let mut sum = 0.0;
        let mut t = -reach;
        while t < reach {
            let place = line.place(t);
            sum += edges.across(place.x, place.y, normal);
            line.sums.push(sum);
            t += 1.0;
        }
        line
    }

    /// A unit vector along it.
    pub(super) fn way(&self) -> [f64; 2] {
        [-self.normal[1], self.normal[0]]
    }

    /// The place so far along it.
    pub(super) fn place(&self, t: f64) -> Point {
        let [wx, wy] = self.way();
        Point::new(self.normal[0] * self.at + wx * t, self.normal[1] * self.at + wy * t)
    }

    /// How far along it a place lies.
    pub(super) fn along(&self, at: Point) -> f64 {
        let [wx, wy] = self.way();
        at.x * wx + at.y * wy
    }

    /// Mean sureness between two places along it; 0 if they are no pixel apart.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "held to the sums")]
    pub(super) fn support(&self, from: f64, to: f64) -> f64 {
        let cell = |t: f64| (t - self.first).clamp(0.0, f(self.sums.len() - 1)) as usize;
        let (from, to) = (cell(from.min(to)), cell(from.max(to)));
        if to <= from { 0.0 } else { (self.sums[to] - self.sums[from]) / f(to - from) }
    }

    /// Where two lines meet; `None` if they run nearly the same way.
    pub(super) fn meets(&self, other: &Line) -> Option<Point> {
        let ([a, b], [c, d]) = (self.normal, other.normal);
        let sine = a * d - b * c;
        (sine.abs() > 0.5).then(|| Point::new((self.at * d - other.at * b) / sine, (a * other.at - c * self.at) / sine))
    }
}

#[allow(clippy::cast_precision_loss, reason = "small pictures")]
fn f(count: usize) -> f64 {
    count as f64
}

/// The lines that run through most edges, best first.
pub(super) fn found(edges: &Edges) -> Vec<Line> {
    let middle = (f(edges.width) / 2.0, f(edges.height) / 2.0);
    let reach = libm::hypot(middle.0, middle.1) + 2.0;
    let votes = Votes::of(edges, middle, reach);
    let mut kept: Vec<(f64, f64)> = Vec::new();
    let mut lines = Vec::new();
    for (turn, off) in votes.peaks(0.10 * f(edges.width.min(edges.height))) {
        let Some((turn, off)) = laid(edges, middle, turn, off) else { continue };
        let same = |(other, far): &(f64, f64)| {
            let apart = (turn - other).abs();
            let (apart, far) = if apart > 90.0 { (180.0 - apart, -far) } else { (apart, *far) };
            apart < 1.3 && (off - far).abs() < 2.0
        };
        if kept.iter().any(same) {
            continue;
        }
        kept.push((turn, off));
        let normal = [libm::cos(turn.to_radians()), libm::sin(turn.to_radians())];
        lines.push(Line::new(edges, normal, off + normal[0] * middle.0 + normal[1] * middle.1));
        if lines.len() == MOST {
            break;
        }
    }
    lines
}

/// Votes of edges for lines: by direction of the normal, then by distance from the middle.
struct Votes {
    cells: Vec<f32>,
    offs: usize,
    reach: f64,
}

impl Votes {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within the reach")]
    fn of(edges: &Edges, middle: (f64, f64), reach: f64) -> Self {
        let offs = (2.0 * reach) as usize + 2;
        let mut cells = vec![0.0_f32; TURNS * offs];
        let table: Vec<(f64, f64)> =
            (0..TURNS).map(|turn| (libm::cos(f(turn).to_radians()), libm::sin(f(turn).to_radians()))).collect();
        for &(x, y) in &edges.ridge {
            let at = y * edges.width + x;
            let [wx, wy] = edges.way[at];
            let turn = f64::from(libm::atan2f(wy, wx)).to_degrees().rem_euclid(180.0) as usize;
            let (dx, dy) = (f(x) + 0.5 - middle.0, f(y) + 0.5 - middle.1);
            for by in 0..=2 * WIDE {
                let turn = (turn + TURNS + by - WIDE) % TURNS;
                let off = dx * table[turn].0 + dy * table[turn].1;
                cells[turn * offs + (off + reach) as usize] +=
                    edges.sure[at] * if by.abs_diff(WIDE) <= 4 { 1.0 } else { 0.6 };
            }
        }
        Self { cells, offs, reach }
    }

    /// Cells with more votes than their neighbours, most first, as direction in degrees and distance.
    fn peaks(&self, least: f64) -> Vec<(f64, f64)> {
        let value = |turn: usize, off: usize| {
            let row = &self.cells[turn * self.offs..(turn + 1) * self.offs];
            // Two neighbouring distances together: a line often falls between.
            row[off] + 0.5 * (row[off.saturating_sub(1)] + row[(off + 1).min(self.offs - 1)])
        };
        let mut found = Vec::new();
        for turn in 0..TURNS {
            for off in 2..self.offs - 2 {
                let here = value(turn, off);
                if f64::from(here) < least {
                    continue;
                }
                let around = (-1_isize..=1).flat_map(|dt| (-1_isize..=1).map(move |d| (dt, d)));
                let top = around.filter(|by| *by != (0, 0)).all(|(dt, d)| {
                    let near = turn.cast_signed() + dt;
                    let wrapped = !(0..TURNS.cast_signed()).contains(&near);
                    let near = near.rem_euclid(TURNS.cast_signed()).cast_unsigned();
                    let off = if wrapped {
                        (self.offs - 1 - off).wrapping_add_signed(-d)
                    } else {
                        off.wrapping_add_signed(d)
                    };
                    let there = value(near, off.min(self.offs - 1));
                    there < here || (there <= here && (dt, d) > (0, 0))
                });
                if top {
                    found.push((here, turn, off));
                }
            }
        }
        found.sort_by(|one, other| other.0.total_cmp(&one.0).then((one.1, one.2).cmp(&(other.1, other.2))));
        found.into_iter().map(|(_, turn, off)| (f(turn), f(off) + 0.5 - self.reach)).collect()
    }
}

/// A line laid anew by least squares through the edges near it, twice; `None` if too few are.
fn laid(edges: &Edges, middle: (f64, f64), mut turn: f64, mut off: f64) -> Option<(f64, f64)> {
    for near in [2.2, 1.3] {
        let (nx, ny) = (libm::cos(turn.to_radians()), libm::sin(turn.to_radians()));
        let mut sums = [0.0; 6];
        for &(x, y) in &edges.ridge {
            let (dx, dy) = (f(x) + 0.5 - middle.0, f(y) + 0.5 - middle.1);
            let across = dx * nx + dy * ny - off;
            if across.abs() > near {
                continue;
            }
            let at = y * edges.width + x;
            let [wx, wy] = edges.way[at];
            if (f64::from(wx) * nx + f64::from(wy) * ny).abs() < 0.85 {
                continue;
            }
            let (along, weight) = (dy * nx - dx * ny, f64::from(edges.sure[at]));
            for (sum, term) in sums.iter_mut().zip([1.0, along, along * along, across, across * along, 0.0]) {
                *sum += weight * term;
            }
        }
        let [n, s, ss, a, sa, _] = sums;
        let spread = n * ss - s * s;
        if n < 6.0 || spread <= 1e-6 {
            return None;
        }
        let slope = (n * sa - s * a) / spread;
        let shift = (a - slope * s) / n;
        // A small turn: the distance from the middle changes by the cosine.
        let by = libm::atan(slope);
        off = (off + shift) * libm::cos(by);
        turn -= by.to_degrees();
    }
    // A normal keeps its line when it is turned round with its distance.
    if turn < 0.0 {
        (turn, off) = (turn + 180.0, -off);
    } else if turn >= 180.0 {
        (turn, off) = (turn - 180.0, -off);
    }
    Some((turn, off))
}
