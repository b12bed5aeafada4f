//! The best way to cut a sheet apart edge to edge, by what is seen at each line.

use std::collections::BTreeMap;

use super::field::STEP;

/// A rectangle of pixels.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Part {
    pub(super) from: [usize; 2],
    pub(super) to: [usize; 2],
}

impl Part {
    pub(super) fn long(&self, axis: usize) -> usize {
        self.to[axis].saturating_sub(self.from[axis])
    }

    /// The same from one place of an axis to another.
    pub(super) fn between(mut self, axis: usize, from: usize, to: usize) -> Self {
        self.from[axis] = from;
        self.to[axis] = to;
        self
    }
}

/// A cut from edge to edge of a part.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Cut {
    pub(super) part: Part,
    pub(super) axis: usize,
    pub(super) at: usize,
}

/// What is seen at each line of both ways, summed along the lines.
pub(super) struct Seen {
    sums: [Vec<f32>; 2],
    stretches: [usize; 2],
    pub(super) long: usize,
}

impl Seen {
    pub(super) fn of(fields: [(&[f32], usize); 2], long: usize) -> Self {
        let sum = |(field, stretches): (&[f32], usize)| {
            let mut sums = Vec::with_capacity(field.len() + field.len() / stretches.max(1));
            for line in field.chunks(stretches) {
                let mut sum = 0.0;
                sums.push(sum);
                for value in line {
                    sum += value;
                    sums.push(sum);
                }
            }
            sums
        };
        Self { sums: fields.map(sum), stretches: fields.map(|field| field.1), long }
    }

    /// The sum over a line's stretches that lie in a part, and how many they are.
    fn along(&self, part: Part, axis: usize, at: usize) -> (f32, usize) {
        let stretch = |pixel: usize| ((pixel + self.long / 2) / self.long).min(self.stretches[axis]);
        let (from, to) = (stretch(part.from[1 - axis]), stretch(part.to[1 - axis]));
        let line = &self.sums[axis][at / STEP * (self.stretches[axis] + 1)..];
        (line[to] - line[from], to - from)
    }
}

/// What a cut must show.
#[derive(Debug, Clone, Copy)]
pub(super) struct Price {
    /// A stretch that shows less than this speaks against a cut.
    pub(super) stretch: f32,
    /// In stretches.
    pub(super) cut: f32,
    /// The narrowest panel.
    pub(super) narrow: usize,
}

struct Search<'a> {
    seen: &'a Seen,
    price: Price,
    known: BTreeMap<Part, (f32, Option<(usize, usize)>)>,
}

/// The cuts whose worth together is the most, and that worth.
pub(super) fn best_cuts(seen: &Seen, whole: Part, price: Price) -> (f32, Vec<Cut>) {
    let mut search = Search { seen, price, known: BTreeMap::new() };
    let worth = search.worth(whole, 0);
    let (lines, of_rows) = search.rows_and_columns(whole);
    if of_rows >= worth {
        return (of_rows, rows_and_columns(whole, &lines));
    }
    let mut cuts = Vec::new();
    let mut open = vec![whole];
    while let Some(part) = open.pop() {
        if let Some((_, Some((axis, at)))) = search.known.get(&part).copied() {
            cuts.push(Cut { part, axis, at });
            open.push(part.between(axis, at, part.to[axis]));
            open.push(part.between(axis, part.from[axis], at));
        }
    }
    (worth, cuts)
}

/// The cuts of lines that cross the whole sheet: into columns, and each of them into rows.
fn rows_and_columns(whole: Part, [upright, level]: &[Vec<usize>; 2]) -> Vec<Cut> {
    let mut cuts = Vec::new();
    let mut parts = vec![whole];
    for (axis, lines) in [(0, upright), (1, level)] {
        let mut next = Vec::new();
        for mut part in parts {
            for at in lines {
                cuts.push(Cut { part, axis, at: *at });
                next.push(part.between(axis, part.from[axis], *at));
                part = part.between(axis, *at, part.to[axis]);
            }
            next.push(part);
        }
        parts = next;
    }
    cuts
}

/// Lines of each way that are tried in a part. `Chosen:`.
const TRIED: usize = 5;
const DEEPEST: usize = 12;
/// Most parts looked at.
const PARTS: usize = 60_000;

impl Search<'_> {
    /// What the best cuts of a part are worth together.
    fn worth(&mut self, part: Part, depth: usize) -> f32 {
        if let Some((worth, _)) = self.known.get(&part) {
            return *worth;
        }
        let mut best = (0.0, None);
        if depth < DEEPEST && self.known.len() < PARTS {
            for axis in [0, 1] {
                for (own, at) in self.lines(part, axis) {
                    let before = self.worth(part.between(axis, part.from[axis], at), depth + 1);
                    let after = self.worth(part.between(axis, at, part.to[axis]), depth + 1);
                    if own + before + after > best.0 {
                        best = (own + before + after, Some((axis, at)));
                    }
                }
            }
        }
        self.known.insert(part, best);
        best.0
    }

    /// Lines that cross the whole sheet, and what they are worth together: each is paid for once, so that a sheet of rows
    /// and columns is taken for one although something else may be seen in a panel.
    fn rows_and_columns(&self, whole: Part) -> ([Vec<usize>; 2], f32) {
        let mut worth = 0.0;
        let lines = [0, 1].map(|axis| {
            let mut taken: Vec<usize> = Vec::new();
            for (own, at) in self.peaks(whole, axis) {
                if own > 0.0 && taken.iter().all(|other| other.abs_diff(at) >= self.price.narrow) {
                    worth += own;
                    taken.push(at);
                }
            }
            taken.sort_unstable();
            taken
        });
        (lines, worth)
    }

    /// The lines of one way that may cut a part: the best few.
    fn lines(&self, part: Part, axis: usize) -> Vec<(f32, usize)> {
        let mut peaks = self.peaks(part, axis);
        peaks.truncate(TRIED);
        peaks
    }

    /// The lines of one way that show more than their neighbours, the best first.
    fn peaks(&self, part: Part, axis: usize) -> Vec<(f32, usize)> {
        let narrow = self.price.narrow;
        if part.long(axis) < 2 * narrow || part.long(1 - axis) < narrow / 2 {
            return Vec::new();
        }
        let from = (part.from[axis] + narrow).div_ceil(STEP) * STEP;
        let all: Vec<(f32, usize)> = (from..=part.to[axis] - narrow)
            .step_by(STEP)
            .map(|at| {
                let (sum, stretches) = self.seen.along(part, axis, at);
                #[allow(clippy::cast_precision_loss, reason = "a few dozen")]
                let price = stretches as f32 * self.price.stretch + self.price.cut;
                (sum - price, at)
            })
            .collect();
        let peak = |at: usize| {
            let around = all[at.saturating_sub(3)..(at + 4).min(all.len())].iter();
            around
                .enumerate()
                .all(|(other, line)| line.0 < all[at].0 || (line.0 <= all[at].0 && at.saturating_sub(3) + other >= at))
        };
        let mut peaks: Vec<(f32, usize)> = (0..all.len()).filter(|at| peak(*at)).map(|at| all[at]).collect();
        peaks.retain(|line| line.0 > -self.price.cut);
        peaks.sort_by(|one, other| other.0.total_cmp(&one.0));
        peaks
    }
}
