//! Where a collage sheet is printed as panels.
//!
//! 1. Colours of the sheet are gathered into some hundred; two windows beside a place are as far apart as their colours are,
//!    in what kind and how much: a print's own stripes have the same colours on both sides, two prints have not.
//! 2. A line divides a part of the sheet if the windows beside it are apart nearly everywhere along it.
//! 3. The part is divided at the best line, and both halves likewise; a line of one half only is found so.
//! 4. Where exactly: every row of pixels near by belongs to the print before, to a plain gap, or to the print after.
//!
//! Left out on purpose: round or slanted panels; panels that no straight cut from edge to edge parts; two neighbours of one
//! print; a print whose own stripes are wider than `BESIDE`.

use crate::Raster;

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
/// The narrowest panel, the widest gap and the widest margin, in parts of the longest side. `Chosen:` 1 1/2, 1/4 and 3/4 in of
/// 12 in.
const NARROWEST: f64 = 0.125;
const GAP: f64 = 0.022;
const MARGIN: f64 = 0.06;
/// A side of the windows beside a line, in parts of the longest side. `Chosen:` an inch of 12 in, so that a stripe and its
/// neighbour are both in it.
const BESIDE: f64 = 0.08;
/// Windows beside a line are apart from here on: 0 the same colours, 1 none in common. `Chosen:` on sheets of seeds 1–200.
const APART: f64 = 0.22;
/// So much of a line may look alike on both sides. `Chosen:` likewise.
const ALIKE: f64 = 0.15;
/// A line that parts its prints less cleanly than this is none, but the edge of something in a picture. `Chosen:` likewise.
const CLEAN: f64 = 0.56;
/// Colours so many levels apart are hardly alike. `Chosen:` three times the noise of a phone photo.
const NEAR: f32 = 12.0;
/// A colour of which a print has less than this is not the print's. `Chosen:` likewise.
const RARE: f32 = 0.04;
/// Nor is a gap's, if a print has less than this: other gaps cross it. `Chosen:` likewise.
const SOME: f32 = 0.15;
/// Most colours told apart, and how near they lie. `Chosen:` less than `NEAR`.
const COLORS: usize = 800;
const REACH: f32 = 10.0;

/// The panels of a straight picture of a sheet, top to bottom, then left to right; one that is the whole sheet if no line
/// divides it.
///
/// # Shape
/// Edges are those of the print, in parts of the sheet: the caller brings them to the maker's marks. Gaps between panels and
/// a margin round them belong to none.
///
/// # Source
/// The method is our own; windows are compared by the kernel two-sample distance (Gretton et al. 2012, *Journal of Machine
/// Learning Research* 13, 723–773), divided by what it can be at most. Measured on generated sheets
/// (`examples/panels_table.rs`, figures in `docs/photo.md`).
#[must_use]
pub fn find_panels(sheet: &Raster) -> Vec<Panel> {
    let (picture, _) = sheet.shrunk(SEEN);
    let (w, h) = (picture.width(), picture.height());
    if w.min(h) < 40 {
        return vec![Panel { left: 0.0, top: 0.0, right: 1.0, bottom: 1.0 }];
    }
    let look = Look::of(&picture);
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

impl Part {
    fn long(&self, axis: usize) -> usize {
        self.to[axis].saturating_sub(self.from[axis])
    }

    /// The same from one place of an axis to another.
    fn between(mut self, axis: usize, from: usize, to: usize) -> Self {
        self.from[axis] = from;
        self.to[axis] = to;
        self
    }
}

/// The sheet as numbers of colours.
struct Look {
    size: [usize; 2],
    labels: Vec<u16>,
    colors: usize,
    /// How alike two colours are, 0 to 1.
    alike: Vec<f32>,
}

/// Where the print before a line ends and the print after it begins.
#[derive(Debug, Clone, Copy)]
struct Placed {
    first: usize,
    last: usize,
    /// How much of what lies near belongs to the print, gap or print it was given to: 0 to 1.
    clean: f64,
}

/// What share of a window each colour has.
type Spread = Vec<(usize, f32)>;

impl Look {
    fn of(picture: &Raster) -> Self {
        let (w, h) = (picture.width(), picture.height());
        // Means of two by two pixels: half the noise.
        let at = |x: usize, y: usize| {
            let four = [(0, 0), (1, 0), (0, 1), (1, 1)].map(|(dx, dy)| picture.pixel(x + dx, y + dy));
            [0, 1, 2].map(|channel| four.iter().map(|pixel| f32::from(pixel[channel])).sum::<f32>() / 4.0)
        };
        let far = |one: &[f32; 3], other: &[f32; 3]| (0..3).map(|at| (one[at] - other[at]).powi(2)).sum::<f32>();
        let mut colors: Vec<[f32; 3]> = Vec::new();
        let mut labels = Vec::with_capacity(w * h);
        let mut last = 0;
        for y in 0..h {
            for x in 0..w {
                let color = at(x, y);
                let new = colors.get(last).is_none_or(|near| far(near, &color) > REACH * REACH / 4.0);
                if new {
                    let nearest = (0..colors.len()).map(|at| (far(&colors[at], &color), at));
                    let nearest = nearest.min_by(|one, other| one.0.total_cmp(&other.0));
                    last = match nearest {
                        Some((far, at)) if far < REACH * REACH || colors.len() >= COLORS => at,
                        _ => {
                            colors.push(color);
                            colors.len() - 1
                        }
                    };
                }
                labels.push(u16::try_from(last).unwrap_or(u16::MAX));
            }
        }
        let pairs = colors.iter().flat_map(|one| colors.iter().map(move |other| (one, other)));
        let alike = pairs.map(|(one, other)| libm::expf(-far(one, other) / (2.0 * NEAR * NEAR))).collect();
        Self { size: [w, h], labels, colors: colors.len(), alike }
    }

    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "parts of a side")]
    fn part(&self, share: f64) -> usize {
        (share * f(self.size[0].max(self.size[1]))) as usize
    }

    fn spread(&self, part: Part, every: usize) -> Spread {
        let mut counts = vec![0_u32; self.colors];
        let mut all = 0_u32;
        for y in (part.from[1]..part.to[1]).step_by(every) {
            for label in self.labels[y * self.size[0]..][part.from[0]..part.to[0]].iter().step_by(every) {
                counts[usize::from(*label)] += 1;
                all += 1;
            }
        }
        #[allow(clippy::cast_precision_loss, reason = "pixel counts")]
        let share = |count: u32| count as f32 / all.max(1) as f32;
        counts.iter().enumerate().filter(|(_, count)| **count > 0).map(|(at, count)| (at, share(*count))).collect()
    }

    fn like(&self, one: &Spread, other: &Spread) -> f64 {
        let row = |(at, share): &(usize, f32)| {
            let row = &self.alike[at * self.colors..];
            share * other.iter().map(|(with, much)| row[*with] * much).sum::<f32>()
        };
        f64::from(one.iter().map(row).sum::<f32>())
    }

    /// 0 for the same colours in the same shares, 1 for none in common.
    fn apart(&self, one: &Spread, other: &Spread) -> f64 {
        let own = self.like(one, one) + self.like(other, other);
        if own > 0.0 { 1.0 - 2.0 * self.like(one, other) / own } else { 0.0 }
    }

    /// How far apart a part is on the two sides of a line, where it is least so.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a share of a count")]
    fn parted(&self, part: Part, axis: usize, at: usize) -> f64 {
        let window = self.part(BESIDE);
        let (from, to) = (part.from[1 - axis], part.to[1 - axis]);
        let long = window.min(to - from);
        let steps = (to - from - long).div_ceil((window / 2).max(1));
        // Two depths, for a print whose stripes do not go evenly into one.
        let apart = |start: usize, deep: usize| {
            let before = part.between(axis, at.saturating_sub(deep).max(part.from[axis]), at);
            let after = part.between(axis, at, (at + deep).min(part.to[axis]));
            let block = |beside: Part| self.spread(beside.between(1 - axis, start, start + long), 2);
            self.apart(&block(before), &block(after))
        };
        let mut seen: Vec<f64> = (0..=steps)
            .map(|step| from + (to - from - long) * step / steps.max(1))
            .map(|start| apart(start, window).min(apart(start, window * 4 / 3)))
            .collect();
        seen.sort_by(f64::total_cmp);
        seen[(f(seen.len()) * ALIKE) as usize]
    }

    fn divide(&self, part: Part, depth: usize, found: &mut Vec<Part>) {
        let part = self.trimmed(part);
        // Of the best line of each way, the one that parts its prints the more cleanly: where lines of two halves nearly run
        // on into each other, the line between them is the less clean one.
        let best = [0, 1]
            .into_iter()
            .filter_map(|axis| {
                let (at, apart) = self.line(part, axis)?;
                let placed = self.place(part, axis, at);
                if placed.clean < CLEAN {
                    return None;
                }
                Some((axis, placed, apart * libm::pow(placed.clean.max(0.0), 6.0)))
            })
            .reduce(|best, line| if line.2 > best.2 { line } else { best });
        match best {
            Some((axis, Placed { first, last, .. }, _)) if depth < 12 => {
                self.divide(part.between(axis, part.from[axis], first), depth + 1, found);
                self.divide(part.between(axis, last, part.to[axis]), depth + 1, found);
            }
            _ => found.push(part),
        }
    }

    /// The best line across a part.
    fn line(&self, part: Part, axis: usize) -> Option<(usize, f64)> {
        let narrow = self.part(NARROWEST).max(4);
        if part.long(axis) < 2 * narrow || part.long(1 - axis) < 8 {
            return None;
        }
        let places = (part.from[axis] + narrow..=part.to[axis] - narrow).step_by(2);
        let seen = places.map(|at| (at, self.parted(part, axis, at)));
        seen.filter(|(_, apart)| *apart > APART).reduce(|best, line| if line.1 > best.1 { line } else { best })
    }

    /// How well each colour goes with a print: near 0 or near 1.
    fn belongs(&self, spread: &Spread) -> Vec<f32> {
        let with = |at: usize| spread.iter().map(|(with, much)| self.alike[at * self.colors + with] * much).sum();
        (0..self.colors).map(with).collect()
    }

    /// Row by row of pixels along a line from one place to another: the mean of what each colour counts.
    fn rows(&self, part: Part, axis: usize, from: usize, to: usize, counts: &[f32]) -> Vec<f64> {
        let mean = |at: usize| {
            let spread = self.spread(part.between(axis, at, at + 1), 1);
            f64::from(spread.iter().map(|(label, share)| counts[*label] * share).sum::<f32>())
        };
        (from..to).map(mean).collect()
    }

    /// The colour that most of a row of pixels has, if most has one.
    fn plain(&self, part: Part, axis: usize, at: usize) -> Option<usize> {
        let spread = self.spread(part.between(axis, at, at + 1), 1);
        let most = spread.iter().copied().reduce(|most, of| if of.1 > most.1 { of } else { most })?.0;
        let own = &self.alike[most * self.colors..][..self.colors];
        let share: f32 = spread.iter().filter(|(label, _)| own[*label] > 0.2).map(|(_, share)| share).sum();
        (share > 0.7).then_some(most)
    }

    /// Where exactly the print before a line ends and the print after it begins.
    fn place(&self, part: Part, axis: usize, at: usize) -> Placed {
        let mut at = at;
        let mut found = Placed { first: at, last: at, clean: 0.0 };
        // What was found may lie amid what was taken for one of the prints: once more from there.
        for _ in 0..4 {
            found = self.placed(part, axis, at);
            let middle = usize::midpoint(found.first, found.last);
            if middle.abs_diff(at) < 3 {
                break;
            }
            at = middle;
        }
        found
    }

    fn placed(&self, part: Part, axis: usize, at: usize) -> Placed {
        let (near, window) = (self.part(GAP) + 4, self.part(BESIDE));
        let (from, to) = (at.saturating_sub(near).max(part.from[axis] + 2), (at + near).min(part.to[axis] - 2));
        let before = part.between(axis, from.saturating_sub(window).max(part.from[axis]), from);
        let after = part.between(axis, to, (to + window).min(part.to[axis]));
        let all = to - from;
        let mut plain: Vec<usize> = (from..to).filter_map(|at| self.plain(part, axis, at)).collect();
        plain.sort_unstable();
        plain.dedup();
        // Stretch by stretch: what lies beside one is not beside another, and a gap that crosses the line is in one only.
        let (mut first, mut last) = (vec![0.0; all], vec![0.0; all]);
        let mut gaps = vec![vec![0.0; all]; plain.len()];
        let stretches = (part.long(1 - axis) / window.max(1)).max(1);
        for stretch in 0..stretches {
            let place = |number: usize| part.from[1 - axis] + part.long(1 - axis) * number / stretches;
            let within = |of: Part| of.between(1 - axis, place(stretch), place(stretch + 1));
            let before = self.belongs(&self.spread(within(before), 1));
            let after = self.belongs(&self.spread(within(after), 1));
            let of = |one: &[f32], other: &[f32]| -> Vec<f32> {
                one.iter().zip(other).map(|(own, other)| own / (own + other + RARE)).collect()
            };
            let (ours, theirs) = (of(&before, &after), of(&after, &before));
            let neither: Vec<f32> = before.iter().zip(&after).map(|(one, other)| SOME / (one + other + SOME)).collect();
            for row in 0..all {
                let spread = self.spread(within(part).between(axis, from + row, from + row + 1), 1);
                let mean = |counts: &dyn Fn(usize) -> f32| {
                    let sum: f32 = spread.iter().map(|(label, share)| counts(*label) * share).sum();
                    f64::from(sum) / f(stretches)
                };
                first[row] += mean(&|label| ours[label]);
                last[row] += mean(&|label| theirs[label]);
                for (gap, color) in gaps.iter_mut().zip(&plain) {
                    let own = &self.alike[color * self.colors..][..self.colors];
                    gap[row] += mean(&|label| if own[label] > 0.2 { neither[label] } else { 0.0 });
                }
            }
        }
        let (first, last) = (sums(&first), sums(&last));
        let rest = |at: usize| last[all] - last[at];
        let mut best = (f64::MIN, at, at);
        for (cut, before) in first.iter().enumerate() {
            let worth = before + rest(cut);
            if worth > best.0 {
                best = (worth, from + cut, from + cut);
            }
        }
        for gap in gaps {
            let gap = sums(&gap);
            for start in 0..all {
                for end in start + 3..=all.min(start + self.part(GAP) + 1) {
                    let worth = first[start] + gap[end] - gap[start] + rest(end) - 0.8;
                    if worth > best.0 {
                        best = (worth, from + start, from + end);
                    }
                }
            }
        }
        Placed { first: best.1, last: best.2, clean: best.0 / f(all.max(1)) }
    }

    /// Less the margin where it reaches the sheet's edge: plain strips whose colour the print inside has not.
    fn trimmed(&self, mut part: Part) -> Part {
        let (widest, window) = (self.part(MARGIN), self.part(BESIDE));
        for axis in [0, 1] {
            if part.long(axis) < 3 * widest {
                continue;
            }
            let (from, to) = (part.from[axis], part.to[axis]);
            let edge = |inside: Part, outer: usize, from: usize, backward: bool| {
                let belongs = self.belongs(&self.spread(inside, 1));
                let Some(color) = self.plain(part, axis, outer) else { return 0 };
                let color: Vec<f32> = belongs
                    .iter()
                    .zip(&self.alike[color * self.colors..])
                    .map(|(own, alike)| if *alike > 0.2 { SOME / (own + SOME) } else { 0.0 })
                    .collect();
                let belongs: Vec<f32> = belongs.iter().map(|own| own / (own + RARE)).collect();
                let mut gap = self.rows(part, axis, from, from + widest, &color);
                let mut print = self.rows(part, axis, from, from + widest, &belongs);
                if backward {
                    gap.reverse();
                    print.reverse();
                }
                let (gap, print) = (sums(&gap), sums(&print));
                let worth = |cut: usize| {
                    let kept = if cut == 0 { 0.8 } else { 0.0 };
                    gap[cut] + print[widest] - print[cut] + kept
                };
                (0..=widest).reduce(|best, cut| if worth(cut) > worth(best) { cut } else { best }).unwrap_or(0)
            };
            let inside = part.between(axis, from + widest, (from + widest + window).min(to));
            let before = edge(inside, from, from, false);
            let inside = part.between(axis, to.saturating_sub(widest + window).max(from), to - widest);
            let after = edge(inside, to - 1, to - widest, true);
            let (before, after) = (if from == 0 { before } else { 0 }, if to == self.size[axis] { after } else { 0 });
            part = part.between(axis, from + before, to - after);
        }
        part
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
