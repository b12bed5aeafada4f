//! How much each stretch of each straight line across a sheet looks like the border of two prints.

use super::colors::{Colors, POINT};

/// Pixels from one line looked at to the next.
pub(super) const STEP: usize = 2;
/// What a print has less of than this is not the print's. `Chosen:`.
const RARE: f32 = 0.04;

/// Windows of the picture beside lines of one way, as sums of points.
pub(super) struct Windows {
    /// Lines and stretches.
    pub(super) lines: usize,
    pub(super) stretches: usize,
    /// Pixels a stretch is long.
    pub(super) long: usize,
    sums: Vec<f32>,
}

impl Windows {
    /// Lines that stand at places of `axis` (0: upright ones).
    pub(super) fn of(colors: &Colors, axis: usize, long: usize) -> Self {
        let lines = colors.size[axis] / STEP;
        let stretches = colors.size[1 - axis].div_ceil(long);
        let wide = (stretches + 1) * POINT;
        let mut sums = vec![0.0_f32; (lines + 1) * wide];
        for line in 0..lines {
            for stretch in 0..stretches {
                let mut sum = [0.0_f32; POINT];
                for along in stretch * long..((stretch + 1) * long).min(colors.size[1 - axis]) {
                    for across in line * STEP..(line + 1) * STEP {
                        let (x, y) = if axis == 0 { (across, along) } else { (along, across) };
                        for (sum, value) in sum.iter_mut().zip(colors.point(x, y)) {
                            *sum += value;
                        }
                    }
                }
                let here = (line + 1) * wide + (stretch + 1) * POINT;
                for at in 0..POINT {
                    let (above, left) = (sums[here - wide + at], sums[here - POINT + at]);
                    sums[here + at] = sum[at] + above + left - sums[here - wide - POINT + at];
                }
            }
        }
        Self { lines, stretches, long, sums }
    }

    /// What a window holds, from one line to another and one stretch to another.
    fn held(&self, lines: [usize; 2], stretches: [usize; 2]) -> [f32; POINT] {
        let wide = (self.stretches + 1) * POINT;
        let at = |line: usize, stretch: usize| &self.sums[line * wide + stretch * POINT..][..POINT];
        let (a, b) = (at(lines[1], stretches[1]), at(lines[0], stretches[1]));
        let (c, d) = (at(lines[1], stretches[0]), at(lines[0], stretches[0]));
        let much = ((lines[1] - lines[0]) * (stretches[1] - stretches[0])).max(1);
        #[allow(clippy::cast_precision_loss, reason = "a few thousand")]
        let share = 1.0 / (much * STEP * self.long) as f32;
        std::array::from_fn(|at| (a[at] - b[at] - c[at] + d[at]) * share)
    }

    /// How far apart two windows beside a line are.
    fn beside(&self, line: usize, guard: usize, deep: usize, stretches: [usize; 2]) -> f32 {
        let before = [line.saturating_sub(guard + deep), line.saturating_sub(guard)];
        let after = [(line + guard).min(self.lines), (line + guard + deep).min(self.lines)];
        if before[0] == before[1] || after[0] == after[1] {
            return 0.0;
        }
        apart(&self.held(before, stretches), &self.held(after, stretches))
    }

    /// How much each row of cells across a line goes with the print before it, and how much with the print after it: from one
    /// line to another, in the mean of some stretches, beside which the prints are looked at so deep.
    pub(super) fn sides(&self, lines: [usize; 2], stretches: [usize; 2], deep: usize, turn: f32) -> [Vec<f64>; 2] {
        let mut sides = [vec![0.0; lines[1] - lines[0]], vec![0.0; lines[1] - lines[0]]];
        for stretch in stretches[0]..stretches[1] {
            let off = self.aside(stretch, turn);
            let line = |line: usize| line.saturating_add_signed(off).min(self.lines);
            let only = [stretch, stretch + 1];
            let before = self.held([line(lines[0]).saturating_sub(deep), line(lines[0])], only);
            let after = self.held([line(lines[1]), (line(lines[1]) + deep).min(self.lines)], only);
            for (row, number) in (lines[0]..lines[1]).enumerate() {
                let from = line(number).min(self.lines - 1);
                let cell = self.held([from, from + 1], only);
                let goes = [like(&cell, &before), like(&cell, &after)].map(|much| much.max(0.0));
                for (side, much) in sides.iter_mut().zip(goes) {
                    side[row] += f64::from(much / (goes[0] + goes[1] + RARE));
                }
            }
        }
        for row in sides.iter_mut().flatten() {
            #[allow(clippy::cast_precision_loss, reason = "a few dozen")]
            let much = (stretches[1] - stretches[0]).max(1) as f64;
            *row /= much;
        }
        sides
    }

    /// How many lines a turned line stands aside in a stretch.
    #[allow(clippy::cast_possible_truncation, clippy::cast_precision_loss, reason = "a few lines")]
    fn aside(&self, stretch: usize, turn: f32) -> isize {
        (turn * (stretch as f32 + 0.5 - self.stretches as f32 / 2.0) * (self.long / STEP) as f32).round() as isize
    }

    /// For each line and stretch: 0 for the same print on both sides, 1 for two with no colour in common.
    pub(super) fn borders(&self, inch: usize) -> Vec<f32> {
        let deep = [inch * 3 / 4, inch, inch * 4 / 3].map(|pixels| pixels / STEP);
        let near = (inch / 6 / STEP).max(2);
        let mut seen = Vec::with_capacity((self.lines + 1) * self.stretches);
        for line in 0..=self.lines {
            for stretch in 0..self.stretches {
                let more = [stretch.saturating_sub(1), (stretch + 2).min(self.stretches)];
                let only = [stretch, stretch + 1];
                let far = deep.map(|deep| self.beside(line, 0, deep, more)).into_iter().fold(1.0, f32::min);
                let near = self.beside(line, 1, near, only);
                seen.push(far.min(near));
            }
        }
        seen
    }
}

fn like(one: &[f32; POINT], other: &[f32; POINT]) -> f32 {
    one.iter().zip(other).map(|(a, b)| a * b).sum()
}

/// The kernel two-sample distance of two windows, divided by what it can be at most.
fn apart(one: &[f32; POINT], other: &[f32; POINT]) -> f32 {
    let own = like(one, one) + like(other, other);
    if own > 1e-6 { (1.0 - 2.0 * like(one, other) / own).max(0.0) } else { 0.0 }
}

/// What is seen along lines that are turned about the sheet's middle: by so many pixels a pixel along them.
pub(super) fn turned(field: &[f32], stretches: usize, long: usize, turn: f32) -> Vec<f32> {
    let lines = field.len() / stretches;
    let mut seen = Vec::with_capacity(field.len());
    for line in 0..lines {
        for stretch in 0..stretches {
            #[allow(clippy::cast_precision_loss, reason = "a few hundred")]
            let off = turn * (stretch as f32 + 0.5 - stretches as f32 / 2.0) * (long / STEP) as f32;
            #[allow(clippy::cast_precision_loss, reason = "a few hundred")]
            let place = (line as f32 + off).clamp(0.0, (lines - 1) as f32);
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped")]
            let before = place as usize;
            #[allow(clippy::cast_precision_loss, reason = "a few hundred")]
            let share = place - before as f32;
            let value = |line: usize| field[line.min(lines - 1) * stretches + stretch];
            seen.push(value(before) * (1.0 - share) + value(before + 1) * share);
        }
    }
    seen
}
