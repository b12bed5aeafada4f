//! Where a collage sheet is printed as panels.
//!
//! 1. Colours are averaged over short blocks along each way; `steps` asks how surely there is a step across.
//! 2. A line divides a part of the sheet if it shows a step nearly from edge to edge, and if the prints on its two sides are
//!    not the same: a stripe of one print has that print's colours on both sides.
//! 3. The part is divided there, and both halves likewise; a line of one half only is found so.
//! 4. A narrow plain strip between two lines, or along an edge, that neither neighbour has the colour of is a gap, no panel.
//!
//! Left out on purpose: round or slanted panels; panels that no straight cut from edge to edge parts; a print whose own
//! stripes are wider than `BESIDE`.

use crate::Raster;
use crate::steps::{HALF, stepped};

/// A panel, in parts of the sheet from its top left, 0 to 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Panel {
    /// Left edge.
    pub left: f64,
    /// Top edge.
    pub top: f64,
    /// Right edge.
    pub right: f64,
    /// Bottom edge.
    pub bottom: f64,
}

/// Longest side of the picture that is looked at. `Chosen:` a pixel is a fiftieth of an inch on a sheet of 12 in.
const SEEN: usize = 600;
/// Pixels averaged along a line.
const BLOCK: usize = 5;
/// The narrowest panel and the widest gap, in parts of the longest side. `Chosen:` 3/4 in and 1/3 in of 12 in.
const NARROWEST: f64 = 0.0625;
const GAP: f64 = 0.03;
/// How much of the prints beside a line is compared. `Chosen:` an inch of 12 in.
const BESIDE: f64 = 0.085;
/// A line shows a step along so much of itself, beyond chance. `Chosen:` on sheets of seeds 1–40.
const SHOWN: f64 = 0.7;
/// Prints differ if so much of one has colours that the other has nearly nothing of. `Chosen:` likewise.
const APART: f64 = 0.15;
const RARE: f64 = 0.015;
/// Colours told apart, each channel: those of neighbouring bins are alike, for the lamp's sake.
const BINS: usize = 16;
/// How far a line may lean over the whole sheet, in pixels of `SEEN`. `Chosen:` 0.4°.
const LEAN: i32 = 4;

/// The panels of a straight picture of a sheet, top to bottom, then left to right; one that is the whole sheet if no line
/// divides it.
///
/// # Shape
/// Edges are those of the print, in parts of the sheet: the caller brings them to the maker's marks. Gaps between panels and
/// a margin round them belong to none.
///
/// # Source
/// The method is our own. Measured on generated sheets (`examples/panels_table.rs`, figures in `docs/photo.md`).
#[must_use]
pub fn find_panels(sheet: &Raster) -> Vec<Panel> {
    let (picture, _) = sheet.shrunk(SEEN);
    let (w, h) = (picture.width(), picture.height());
    if w.min(h) < 40 {
        return vec![Panel { left: 0.0, top: 0.0, right: 1.0, bottom: 1.0 }];
    }
    let look = Look { across: Steps::of(&picture, false), down: Steps::of(&picture, true), picture };
    let mut found = Vec::new();
    look.divide(Part { from: [0, 0], to: [w, h] }, 0, &mut found);
    found.sort_by_key(|part| (part.from[1], part.from[0]));
    let share = |at: usize, of: usize| f(at) / f(of);
    let panel = |part: &Part| Panel {
        left: share(part.from[0], w),
        top: share(part.from[1], h),
        right: share(part.to[0], w),
        bottom: share(part.to[1], h),
    };
    found.iter().map(panel).collect()
}

#[allow(clippy::cast_precision_loss, reason = "small numbers")]
fn f(count: usize) -> f64 {
    count as f64
}

/// A rectangle of pixels.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Part {
    from: [usize; 2],
    to: [usize; 2],
}

/// How surely there is a step at each place: by blocks along the line, then by pixels across it.
struct Steps {
    long: usize,
    steps: Vec<f32>,
    chance: f64,
}

impl Steps {
    #[allow(clippy::cast_precision_loss, reason = "a small number")]
    fn of(picture: &Raster, down: bool) -> Self {
        let (long, other) =
            if down { (picture.height(), picture.width()) } else { (picture.width(), picture.height()) };
        let blocks = other / BLOCK;
        let wide = long + 2 * HALF;
        let mut colors = vec![[0.0_f32; 3]; blocks * wide];
        for block in 0..blocks {
            for at in 0..wide {
                let near = at.saturating_sub(HALF).min(long - 1);
                let color = &mut colors[block * wide + at];
                for along in block * BLOCK..(block + 1) * BLOCK {
                    let pixel = if down { picture.pixel(along, near) } else { picture.pixel(near, along) };
                    for (sum, value) in color.iter_mut().zip(pixel) {
                        *sum += f32::from(value) / BLOCK as f32;
                    }
                }
            }
        }
        let found = stepped(&colors, blocks, wide, long);
        Self { long, steps: found.steps, chance: found.chance }
    }

    /// What part of a line shows a step beyond chance: at `at`, `lean` pixels farther at the end of the sheet.
    #[allow(clippy::cast_possible_truncation, reason = "small numbers")]
    fn shown(&self, at: usize, lean: i32, from: usize, to: usize) -> f64 {
        let blocks = self.steps.len() / self.long;
        // The blocks at both ends lie partly on what is beside.
        let (first, last) = ((from / BLOCK + 1).min(blocks), (to / BLOCK).saturating_sub(1).min(blocks));
        if last < first + 3 {
            return 0.0;
        }
        let (middle, mut sum) = ((first + last) / 2, 0.0);
        for block in first..last {
            let off = (block.cast_signed() - middle.cast_signed()) * lean as isize;
            let off = (off + off.signum() * blocks.cast_signed() / 2) / blocks.cast_signed();
            let place = at.saturating_add_signed(off).min(self.long - 1);
            sum += f64::from(self.steps[block * self.long + place]);
        }
        ((sum / f(last - first) - self.chance) / (1.0 - self.chance)).max(0.0)
    }
}

struct Look {
    across: Steps,
    down: Steps,
    picture: Raster,
}

/// Where a part is divided: the panels end at `first` and begin again at `last`.
struct Cut {
    axis: usize,
    first: usize,
    last: usize,
    worth: f64,
}

impl Look {
    fn divide(&self, part: Part, depth: usize, found: &mut Vec<Part>) {
        let part = self.trimmed(part);
        let best = [0, 1]
            .into_iter()
            .flat_map(|axis| self.cuts(part, axis))
            .reduce(|best, cut| if cut.worth > best.worth { cut } else { best });
        match best {
            Some(cut) if depth < 12 => {
                let (mut before, mut after) = (part, part);
                before.to[cut.axis] = cut.first;
                after.from[cut.axis] = cut.last;
                self.divide(before, depth + 1, found);
                self.divide(after, depth + 1, found);
            }
            _ => found.push(part),
        }
    }

    fn longest(&self) -> f64 {
        f(self.picture.width().max(self.picture.height()))
    }

    /// Straight lines across a part that show a step nearly from edge to edge.
    fn lines(&self, part: Part, axis: usize) -> Vec<(usize, f64)> {
        let steps = if axis == 0 { &self.across } else { &self.down };
        let (from, to) = (part.from[1 - axis], part.to[1 - axis]);
        let shown: Vec<f64> = (part.from[axis] + 2..part.to[axis].saturating_sub(2))
            .map(|at| (-LEAN..=LEAN).map(|lean| steps.shown(at, lean, from, to)).fold(0.0, f64::max))
            .collect();
        let mut lines = Vec::new();
        let mut at = 0;
        while at < shown.len() {
            // A step is as sure a pixel beside it: the middle of equals.
            let top = shown[at.saturating_sub(3)..(at + 4).min(shown.len())].iter().copied().fold(0.0, f64::max);
            if shown[at] >= SHOWN && shown[at] >= top {
                let mut end = at;
                while end + 1 < shown.len() && shown[end + 1] >= shown[at] && end - at < 3 {
                    end += 1;
                }
                lines.push((part.from[axis] + 2 + usize::midpoint(at, end), shown[at]));
                at = end + 3;
            } else {
                at += 1;
            }
        }
        lines
    }

    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "parts of a side")]
    fn cuts(&self, part: Part, axis: usize) -> Vec<Cut> {
        let (narrow, gap) = ((NARROWEST * self.longest()) as usize, (GAP * self.longest()) as usize);
        let lines = self.lines(part, axis);
        let (start, end) = (part.from[axis], part.to[axis]);
        let mut cuts = Vec::new();
        for (number, &(first, sure)) in lines.iter().enumerate() {
            if first < start + narrow {
                continue;
            }
            let pair = lines[number + 1..].iter().take_while(|(last, _)| *last <= first + gap);
            let one = std::iter::once((first, sure)).chain(pair.copied());
            for (last, other) in one {
                if last + narrow > end || (last > first && !self.is_gap(part, axis, first, last)) {
                    continue;
                }
                let (before, after) = self.beside(part, axis, first, last);
                let apart = self.apart(before, after);
                // Beside a gap the prints may be alike: the gap itself parts them.
                let apart = if last > first { apart.max(2.0 * APART) } else { apart };
                if apart > APART {
                    let long = f(part.to[1 - axis] - part.from[1 - axis]) / self.longest();
                    let worth = sure.min(other) * apart.min(0.6) * (0.5 + long);
                    cuts.push(Cut { axis, first: first + usize::from(last == first), last: last + 1, worth });
                }
            }
        }
        cuts
    }

    /// The prints on both sides of a line or a gap.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "parts of a side")]
    fn beside(&self, part: Part, axis: usize, first: usize, last: usize) -> (Part, Part) {
        let far = (BESIDE * self.longest()) as usize;
        let (mut before, mut after) = (part, part);
        before.to[axis] = first.saturating_sub(1).max(part.from[axis] + 1);
        before.from[axis] = before.to[axis].saturating_sub(far).max(part.from[axis]);
        after.from[axis] = (last + 3).min(part.to[axis] - 1);
        after.to[axis] = (after.from[axis] + far).min(part.to[axis]);
        (before, after)
    }

    /// A plain strip whose colour neither side has.
    fn is_gap(&self, part: Part, axis: usize, first: usize, last: usize) -> bool {
        if last < first + 4 {
            return false;
        }
        let mut strip = part;
        strip.from[axis] = first + 2;
        strip.to[axis] = last - 1;
        let (before, after) = self.beside(part, axis, first, last);
        self.plain(strip).is_some_and(|color| self.share(before, color) < 0.1 && self.share(after, color) < 0.1)
    }

    /// Less the plain strips along its edges that the print inside has not the colour of.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "parts of a side")]
    fn trimmed(&self, mut part: Part) -> Part {
        let widest = (2.0 * GAP * self.longest()) as usize;
        for axis in [0, 1] {
            let lines = self.lines(part, axis);
            let before = lines.iter().rev().find(|(at, _)| {
                *at < part.from[axis] + widest && {
                    let mut strip = part;
                    strip.to[axis] = at.saturating_sub(1).max(part.from[axis] + 1);
                    let inside = self.beside(part, axis, *at, *at).1;
                    self.plain(strip).is_some_and(|color| self.share(inside, color) < 0.1)
                }
            });
            let after = lines.iter().find(|(at, _)| {
                *at + widest > part.to[axis] && {
                    let mut strip = part;
                    strip.from[axis] = (at + 2).min(part.to[axis] - 1);
                    let inside = self.beside(part, axis, *at, *at).0;
                    self.plain(strip).is_some_and(|color| self.share(inside, color) < 0.1)
                }
            });
            if let Some((at, _)) = before {
                part.from[axis] = at + 1;
            }
            if let Some((at, _)) = after.filter(|(at, _)| *at > part.from[axis] + widest) {
                part.to[axis] = *at;
            }
        }
        part
    }

    fn pixels(&self, part: Part) -> impl Iterator<Item = [u8; 3]> + '_ {
        let rows = (part.from[1]..part.to[1]).step_by(2);
        rows.flat_map(move |y| (part.from[0]..part.to[0]).step_by(2).map(move |x| self.picture.pixel(x, y)))
    }

    /// The colour of a part if nearly all of it has it; the lamp may make it brighter at one end.
    fn plain(&self, part: Part) -> Option<[f64; 3]> {
        let mut sums = [0.0; 3];
        let mut count = 0.0;
        for pixel in self.pixels(part) {
            sums = [0, 1, 2].map(|at| sums[at] + f64::from(pixel[at]));
            count += 1.0;
        }
        if count < 1.0 {
            return None;
        }
        let color = sums.map(|sum| sum / count);
        (self.share(part, color) > 0.85).then_some(color)
    }

    /// What share of a part has nearly that colour.
    fn share(&self, part: Part, color: [f64; 3]) -> f64 {
        let (mut near, mut count) = (0.0, 0.0);
        for pixel in self.pixels(part) {
            count += 1.0;
            near += f64::from(u8::from((0..3).all(|at| (f64::from(pixel[at]) - color[at]).abs() < 22.0)));
        }
        if count > 0.0 { near / count } else { 0.0 }
    }

    /// What share of either print has colours that the other has not, whichever is more: where in a print its colours lie,
    /// and how much there is of each, is not asked, since a band may end amid a stripe.
    fn apart(&self, one: Part, other: Part) -> f64 {
        let spread = |part: Part| {
            let mut counts = vec![0u32; BINS * BINS * BINS];
            let mut all = 0u32;
            for pixel in self.pixels(part) {
                let [r, g, b] = pixel.map(|value| usize::from(value) * BINS / 256);
                counts[(r * BINS + g) * BINS + b] += 1;
                all += 1;
            }
            (counts, f64::from(all.max(1)))
        };
        let (one, other) = (spread(one), spread(other));
        let missing = |(counts, all): &(Vec<u32>, f64), (others, rest): &(Vec<u32>, f64)| {
            let near = |at: usize| at.saturating_sub(1)..(at + 2).min(BINS);
            let mut sum = 0u32;
            for (at, count) in counts.iter().enumerate().filter(|(_, count)| **count > 0) {
                let (r, g, b) = (at / BINS / BINS, at / BINS % BINS, at % BINS);
                let around =
                    near(r).flat_map(|r| near(g).flat_map(move |g| near(b).map(move |b| (r * BINS + g) * BINS + b)));
                let there: u32 = around.map(|at| others[at]).sum();
                if f64::from(there) < RARE * rest {
                    sum += count;
                }
            }
            f64::from(sum) / all
        };
        missing(&one, &other).max(missing(&other, &one))
    }
}
