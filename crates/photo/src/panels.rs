//! Where a collage sheet is printed as panels: one decision for the whole sheet.
//!
//! | module | offers |
//! |---|---|
//! | `colors` | colours as points, so that windows of the picture are compared fast |
//! | `field` | how much each stretch of each line looks like the border of two prints |
//! | `tree` | the cuts from edge to edge whose worth together is the most |
//! | `ground` | the paper between and round the panels: one colour, one width of gap |
//!
//! A stretch of a line is a border if the windows beside it are apart both near by and as deep as an inch: a print's own
//! stripes have the same colours on both sides of an inch, a thing in a picture is not apart all along a line. A gap is one
//! only if most of the lines show it, so that a plain border or a stripe of one print is none.
//!
//! Left out on purpose: round or slanted panels; panels that no straight cut from edge to edge parts; two neighbours of one
//! print without a gap; a print whose own stripes are wider than an inch.

mod colors;
mod field;
mod ground;
mod tree;

use crate::Raster;

use colors::Colors;
use field::{Windows, turned};
use ground::Ground;
use tree::{Cut, Part, Price, Seen, best_cuts};

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
/// The smallest picture that is looked at. `Chosen:` a panel has some pixels then.
const LEAST: usize = 60;
/// Inches the longest side is taken for; a stretch of a line and the narrowest panel, in parts of an inch. `Chosen:`.
const INCHES: usize = 12;
const STRETCH: [usize; 2] = [1, 4];
const NARROW: [usize; 2] = [3, 2];
/// A stretch less apart than this speaks against a cut; what a cut must show beyond, in stretches. `Chosen:` on sheets of seeds
/// 1–200; from 0.2 to 0.4 no panel of seeds 1–100 is divided or missed.
const APART: f32 = 0.38;
const CUT: f32 = 0.8;
/// How far the sheet may be turned in its picture: pixels aside a pixel along a line. `Chosen:` up to half a degree.
const TURNS: [f32; 5] = [0.0, 0.0044, -0.0044, 0.0087, -0.0087];

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
    let whole = Part { from: [0, 0], to: [w, h] };
    let mut found = if w.min(h) < LEAST { vec![whole] } else { parts(&picture, whole) };
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

fn parts(picture: &Raster, whole: Part) -> Vec<Part> {
    let inch = picture.width().max(picture.height()) / INCHES;
    let long = (inch * STRETCH[0] / STRETCH[1]).max(1);
    let colors = Colors::of(picture);
    let windows = [0, 1].map(|axis| Windows::of(&colors, axis, long));
    let fields = [0, 1].map(|axis| windows[axis].borders(inch));
    let price = Price { stretch: APART, cut: CUT, narrow: inch * NARROW[0] / NARROW[1] };
    let cut = |turn: f32| {
        let [upright, level] =
            [(0, turn), (1, -turn)].map(|(axis, turn)| turned(&fields[axis], windows[axis].stretches, long, turn));
        let seen = Seen::of([(&upright, windows[0].stretches), (&level, windows[1].stretches)], long);
        let (worth, cuts) = best_cuts(&seen, whole, price);
        (worth, cuts, turn)
    };
    let best = TURNS.into_iter().map(cut).reduce(|best, other| if other.0 > best.0 { other } else { best });
    let Some((_, cuts, turn)) = best else { return vec![whole] };
    laid(picture, &cuts, whole, Ground::of(picture, &cuts, inch, turn).as_ref(), &windows, inch)
}

/// The panels that cuts leave, without gaps and margins.
fn laid(
    picture: &Raster,
    cuts: &[Cut],
    whole: Part,
    ground: Option<&Ground<'_>>,
    windows: &[Windows; 2],
    inch: usize,
) -> Vec<Part> {
    let margins = ground.map_or([[0; 2]; 2], |ground| ground.margins(whole, inch));
    let mut printed = whole;
    for (axis, [before, after]) in margins.into_iter().enumerate() {
        printed = printed.between(axis, before, whole.to[axis] - after);
    }
    let mut found = Vec::new();
    let mut open = vec![(whole, printed)];
    while let Some((seen, printed)) = open.pop() {
        let Some(Cut { axis, at, .. }) = cuts.iter().find(|cut| cut.part == seen).copied() else {
            found.push(printed);
            continue;
        };
        let edge = sharpest(picture, seen, axis, at);
        let (ends, begins) = ground.filter(|ground| ground.gap > 0).map_or((edge, edge), |ground| {
            let from = ground.begins(&Cut { part: seen, axis, at }, &windows[axis], inch);
            (from, from + ground.gap)
        });
        open.push((seen.between(axis, seen.from[axis], at), printed.between(axis, printed.from[axis], ends)));
        open.push((seen.between(axis, at, seen.to[axis]), printed.between(axis, begins, printed.to[axis])));
    }
    found
}

/// The place next to a line where the pixels before and after it differ most: lines are looked at only every few pixels.
fn sharpest(picture: &Raster, part: Part, axis: usize, at: usize) -> usize {
    let differ = |at: &usize| {
        let along = part.from[1 - axis]..part.to[1 - axis];
        let pixel = |across: usize, along: usize| {
            if axis == 0 { picture.pixel(across, along) } else { picture.pixel(along, across) }
        };
        let off = |along: usize| {
            let (one, other) = (pixel(*at - 1, along), pixel(*at, along));
            (0..3).map(|channel| u32::from(one[channel].abs_diff(other[channel]))).sum::<u32>()
        };
        along.map(off).sum::<u32>()
    };
    let near = at.saturating_sub(field::STEP).max(1)..=(at + field::STEP).min(part.to[axis] - 1);
    near.max_by_key(differ).unwrap_or(at)
}
