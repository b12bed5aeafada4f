//! The paper a collage is printed on, where it shows between its panels and round them: of one colour under a slow change of
//! light, in gaps of one width on the whole sheet. What is only seen beside a print or two is those prints' own.

use crate::Raster;
use crate::least_squares::{add, solved};

use super::field::{STEP, Windows};
use super::tree::{Cut, Part};

/// What is looked at at a time along a line, in parts of an inch. `Chosen:` long enough for noise to even out.
const STRETCH: f64 = 0.48;
/// The narrowest and widest gap and the widest margin, in inches. `Chosen:`.
const GAPS: [f64; 2] = [0.08, 0.28];
const MARGIN: f64 = 0.75;
/// A row of pixels within a gap is so many levels from the gap's mean at most. `Chosen:` half of what tells colours apart.
const EVEN: f64 = 5.0;
/// Pixels so many levels from the paper's colour are it hardly. `Chosen:`.
const NEAR: f64 = 16.0;
/// So much of what is cut must show a gap. `Chosen:` on sheets of seeds 1–200 it is under 0.57 or over 0.63.
const MOST: f64 = 0.6;

/// So much of what lies all round must be of one colour, to be a margin without gaps; and how many pixels of it are looked at.
/// `Chosen:`.
const ROUND: f64 = 0.9;
const RIM: usize = 4;

/// The paper, as it shows.
pub(super) struct Ground<'a> {
    picture: &'a Raster,
    /// Levels of each channel as terms of the place.
    color: [[f64; 6]; 3],
    /// Pixels between panels; 0 if it shows only round them.
    pub(super) gap: usize,
    /// How far the sheet is turned: pixels aside a pixel along an upright line.
    turn: f64,
}

/// One row of pixels of a stretch: its mean color, and how far its pixels are from that, squared.
#[derive(Clone, Copy)]
struct Row {
    mean: [f64; 3],
    spread: f64,
}

/// What lies along a line in one stretch, row by row from `first`.
struct Strip {
    place: [f64; 2],
    /// Pixels aside, as the sheet is turned.
    aside: isize,
    rows: Vec<Row>,
}

/// A place of the sheet, −1 to 1, and the color seen there.
type Shown = ([f64; 2], [f64; 3]);

#[allow(clippy::cast_precision_loss, reason = "pixels")]
fn f(count: usize) -> f64 {
    count as f64
}

/// How many pixels a line stands aside so far from the sheet's middle.
#[allow(clippy::cast_possible_truncation, reason = "a few pixels")]
fn aside(axis: usize, from_middle: f64, turn: f64) -> isize {
    (from_middle * if axis == 0 { turn } else { -turn }).round() as isize
}

fn far(one: &[f64; 3], other: &[f64; 3]) -> f64 {
    (0..3).map(|at| (one[at] - other[at]).powi(2)).sum()
}

fn strips(picture: &Raster, axis: usize, across: [usize; 2], along: [usize; 2], long: usize, turn: f64) -> Vec<Strip> {
    let size = [picture.width(), picture.height()];
    let strip = |number: usize| {
        let from = along[0] + number * long;
        let row = |at: usize| {
            let pixel = |along: usize| {
                let (x, y) = if axis == 0 { (at, along) } else { (along, at) };
                picture.pixel(x, y).map(f64::from)
            };
            let mut mean = [0.0; 3];
            for along in from..from + long {
                let pixel = pixel(along);
                for channel in 0..3 {
                    mean[channel] += pixel[channel] / f(long);
                }
            }
            let spread = (from..from + long).map(|along| far(&pixel(along), &mean)).sum::<f64>() / f(long);
            Row { mean, spread }
        };
        let mut middle = [f(across[0] + across[1]) / 2.0, f(from) + f(long) / 2.0];
        if axis == 1 {
            middle.reverse();
        }
        let place = [middle[0] / f(size[0]), middle[1] / f(size[1])].map(|at| at * 2.0 - 1.0);
        let middle = f(from) + f(long) / 2.0 - f(size[1 - axis]) / 2.0;
        Strip { place, aside: aside(axis, middle, turn), rows: (across[0]..across[1]).map(row).collect() }
    };
    (0..(along[1] - along[0]) / long).map(strip).collect()
}

/// The mean color of a gap, if a strip's rows from one to another look like a gap between other things.
fn gap(strip: &Strip, from: usize, wide: usize, noise: f64, long: usize) -> Option<[f64; 3]> {
    let from = from.checked_add_signed(strip.aside).filter(|from| *from >= 2)?;
    let to = from + wide;
    if to + 2 > strip.rows.len() {
        return None;
    }
    let inner = &strip.rows[from + 1..to - 1];
    let mut mean = [0.0; 3];
    for row in inner {
        for (mean, level) in mean.iter_mut().zip(row.mean) {
            *mean += level / f(inner.len());
        }
    }
    let even = EVEN * EVEN + 3.5 * noise / f(long);
    let is_even = |row: &Row| far(&row.mean, &mean) < even && row.spread < 3.0 * noise;
    let other = |row: &Row| far(&row.mean, &mean) > 2.5 * even || row.spread > 6.0 * noise;
    (inner.iter().all(is_even) && other(&strip.rows[from - 2]) && other(&strip.rows[to + 1])).then_some(mean)
}

fn terms([x, y]: [f64; 2]) -> [f64; 6] {
    [1.0, x, y, x * x, x * y, y * y]
}

/// Levels of each channel over the sheet from what was seen of them, without what is not like the rest; and the share that is.
fn surface(seen: &[Shown]) -> Option<([[f64; 6]; 3], f64)> {
    let mut color = [[0.0; 6]; 3];
    // From the middle value on.
    for (channel, levels) in color.iter_mut().enumerate() {
        let mut all: Vec<f64> = seen.iter().map(|(_, color)| color[channel]).collect();
        all.sort_by(f64::total_cmp);
        levels[0] = *all.get(all.len() / 2)?;
    }
    let mut reach = 150.0;
    let mut kept = 0;
    for _ in 0..12 {
        let near = seen.iter().filter(|(place, seen)| far(&at(&color, *place), seen) < reach * reach);
        let mut rows = [[[0.0; 7]; 6]; 3];
        kept = 0;
        for (place, seen) in near {
            kept += 1;
            for channel in 0..3 {
                add(&mut rows[channel], &terms(*place), seen[channel], 1.0);
            }
        }
        if kept == 0 {
            return None;
        }
        for (channel, rows) in rows.iter_mut().enumerate() {
            for (term, row) in rows.iter_mut().enumerate() {
                // Little bent without a reason.
                row[term] += if term == 0 { 1e-6 } else { 0.005 * f(kept) };
            }
            color[channel] = solved(*rows);
        }
        reach = (reach * 0.8_f64).max(1.25 * NEAR);
    }
    Some((color, f(kept) / f(seen.len().max(1))))
}

fn at(color: &[[f64; 6]; 3], place: [f64; 2]) -> [f64; 3] {
    let terms = terms(place);
    color.map(|levels| levels.iter().zip(&terms).map(|(level, term)| level * term).sum())
}

impl<'a> Ground<'a> {
    /// The paper that shows along the cuts of a sheet.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "parts of an inch")]
    pub(super) fn of(picture: &'a Raster, cuts: &[Cut], inch: usize, turn: f32) -> Option<Self> {
        let turn = f64::from(turn);
        let part = |share: f64| (share * f(inch)) as usize;
        let long = part(STRETCH).max(4);
        let (least, most) = (part(GAPS[0]).max(3), part(GAPS[1]));
        let beside = most + 9;
        let size = [picture.width(), picture.height()];
        let looked: Vec<Vec<Strip>> = cuts
            .iter()
            .map(|cut| {
                let across = [cut.at.saturating_sub(beside), (cut.at + beside).min(size[cut.axis])];
                // The ends may lie on other gaps.
                let other = 1 - cut.axis;
                let (from, to) = (cut.part.from[other] + most, cut.part.to[other].saturating_sub(most));
                strips(picture, cut.axis, across, [from, to.max(from)], long, turn)
            })
            .collect();
        let mut spreads: Vec<f64> =
            looked.iter().flatten().flat_map(|strip| strip.rows.iter().map(|row| row.spread)).collect();
        spreads.sort_by(f64::total_cmp);
        // Plain rows are the quietest; what a row of noise strays by itself comes on top.
        let noise = spreads.get(spreads.len() / 10)? + 4.0;
        let all: usize = looked.iter().map(Vec::len).sum();
        let mut best: (usize, usize, Vec<Shown>) = (0, 0, Vec::new());
        for wide in least..=most {
            let mut found = Vec::new();
            for strips in &looked {
                let rows = strips.first().map_or(0, |strip| strip.rows.len());
                let at = |from: usize| -> Vec<Shown> {
                    let seen =
                        strips.iter().filter_map(|strip| Some((strip.place, gap(strip, from, wide, noise, long)?)));
                    seen.collect()
                };
                let most = (2..(rows + 1).saturating_sub(wide + 3))
                    .map(at)
                    .reduce(|best, other| if other.len() > best.len() { other } else { best });
                found.extend(most.unwrap_or_default());
            }
            if found.len() > best.0 {
                best = (found.len(), wide, found);
            }
        }
        let (color, share) = surface(&best.2)?;
        if f(best.0) * share > MOST * f(all) {
            return Some(Self { picture, color, gap: best.1, turn });
        }
        Self::round(picture, noise, long, turn)
    }

    /// The paper that shows all round a sheet whose panels have no gaps.
    fn round(picture: &'a Raster, noise: f64, long: usize, turn: f64) -> Option<Self> {
        let size = [picture.width(), picture.height()];
        let sides = [(0, 0), (0, size[0] - RIM), (1, 0), (1, size[1] - RIM)];
        let looked =
            sides.map(|(axis, from)| strips(picture, axis, [from, from + RIM], [0, size[1 - axis]], long, turn));
        let all: Vec<&Strip> = looked.iter().flatten().collect();
        let even = EVEN * EVEN + 3.5 * noise / f(long);
        let plain = |strip: &&Strip| {
            let mean = strip.rows[0].mean;
            let same = |row: &Row| far(&row.mean, &mean) < 2.0 * even && row.spread < 3.0 * noise;
            strip.rows.iter().all(same).then_some((strip.place, mean))
        };
        let found: Vec<Shown> = all.iter().filter_map(plain).collect();
        let (color, share) = surface(&found)?;
        (f(found.len()) * share > ROUND * f(all.len())).then_some(Self { picture, color, gap: 0, turn })
    }

    /// How much each row of pixels across a line is the paper's colour, in the mean of a part of it.
    fn rows(&self, axis: usize, across: [usize; 2], along: [usize; 2]) -> Vec<f64> {
        let size = [self.picture.width(), self.picture.height()];
        let row = |across: usize| {
            let is = |along: usize| {
                let across = across.saturating_add_signed(aside(axis, f(along) - f(size[1 - axis]) / 2.0, self.turn));
                let across = across.min(size[axis] - 1);
                let (x, y) = if axis == 0 { (across, along) } else { (along, across) };
                let place = [f(x) / f(size[0]), f(y) / f(size[1])].map(|at| at * 2.0 - 1.0);
                let off = far(&self.picture.pixel(x, y).map(f64::from), &at(&self.color, place));
                libm::exp(-off / (2.0 * NEAR * NEAR))
            };
            (along[0]..along[1]).step_by(2).map(is).sum::<f64>() / f((along[1] - along[0]).div_ceil(2).max(1))
        };
        (across[0]..across[1]).map(row).collect()
    }

    /// Where the gap of a cut begins: what lies before it goes with the print before, what lies after it with the print after.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "parts of an inch, half a degree")]
    pub(super) fn begins(&self, cut: &Cut, windows: &Windows, inch: usize) -> usize {
        if self.gap == 0 {
            return cut.at;
        }
        let beside = ((GAPS[1] * f(inch)) as usize + 9) / STEP;
        let line = cut.at / STEP;
        let lines = [line.saturating_sub(beside), (line + beside).min(windows.lines)];
        let across = lines.map(|line| line * STEP);
        let other = 1 - cut.axis;
        let along = [cut.part.from[other], cut.part.to[other]];
        let rows = self.rows(cut.axis, across, along);
        let stretches = along.map(|at| ((at + windows.long / 2) / windows.long).min(windows.stretches));
        let turn = if cut.axis == 0 { self.turn } else { -self.turn };
        let sides = windows.sides(lines, stretches, inch / STEP, turn as f32);
        let sides = sides.map(|cells| sums(&cells.iter().flat_map(|cell| [*cell; STEP]).collect::<Vec<_>>()));
        let rows = sums(&rows);
        let all = across[1] - across[0];
        let worth = |start: usize| {
            let end = start + self.gap;
            sides[0][start] + rows[end] - rows[start] + sides[1][all] - sides[1][end]
        };
        let best = (0..=all - self.gap).reduce(|best, start| if worth(start) > worth(best) { start } else { best });
        across[0] + best.unwrap_or(beside)
    }

    /// How wide the margin is at the beginning and at the end of an axis.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "parts of an inch")]
    pub(super) fn margins(&self, whole: Part, inch: usize) -> [[usize; 2]; 2] {
        let widest = (MARGIN * f(inch)) as usize;
        let flank = 6;
        [0, 1].map(|axis| {
            let size = whole.to[axis];
            let along = [0, whole.to[1 - axis]];
            let width = |rows: Vec<f64>| {
                let sums = sums(&rows);
                let worth = |wide: usize| {
                    let inner = sums[wide];
                    inner - f(wide) * 0.5 - (sums[wide + flank] - sums[wide])
                };
                let best = (0..=widest).reduce(|best, wide| if worth(wide) > worth(best) { wide } else { best });
                // No end of it was seen: a print of the paper's colour.
                best.filter(|wide| *wide < widest).unwrap_or(0)
            };
            let before = self.rows(axis, [0, widest + flank], along);
            let mut after = self.rows(axis, [size - widest - flank, size], along);
            after.reverse();
            [width(before), width(after)]
        })
    }
}

/// Sums up to each place.
fn sums(values: &[f64]) -> Vec<f64> {
    let mut sums = vec![0.0];
    let mut sum = 0.0;
    for value in values {
        sum += value;
        sums.push(sum);
    }
    sums
}
