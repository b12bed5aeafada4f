//! Source: the build-up, squareness and border figures of the trade notes (worked there, common practice); the share
//! and the twentieth in closed form (sums of even draws); pieces cut here as polygons by lines, which shares no code.
#![allow(clippy::unwrap_used, reason = "tests")]

use std::collections::BTreeMap;

use cutting::steps::{CutPlan, End, Fate, Job, Limits, PartId, Trims, steps};
use cutting::tolerance::{Cause, Pair, errors, lean, rests, simulate};
use cutting::tree::{Axis, Tree};
use proptest::prelude::*;

const LIMITS: Limits = Limits { longest_cut: 4000, smallest_strip: 1, stack: 2 };

fn row(axis: Axis, mut parts: Vec<(u32, Tree)>) -> Tree {
    let (_, mut tree) = parts.pop().unwrap();
    while let Some((at, first)) = parts.pop() {
        tree = Tree::Cut { axis, at, first: Box::new(first), second: Box::new(tree) };
    }
    tree
}

fn piece(width: u32, height: u32) -> Tree {
    Tree::Piece { kind: 0, width, height, turned: false }
}

fn planned(tree: &Tree, width: u32, height: u32, trims: Trims) -> CutPlan {
    steps(&Job { tree, width, height, trims, sheets: 1, limits: LIMITS, folds: &[] }).unwrap()
}

fn no_print(_: Axis, _: u32) -> bool {
    false
}

/// Four strips 3 in wide from 12 in, in 32nds.
fn strips() -> CutPlan {
    planned(&row(Axis::X, (0..4).map(|_| (96, piece(96, 384))).collect()), 384, 384, Trims::default())
}

#[test]
fn a_stop_set_wide_builds_up_in_the_rest() {
    let found = errors(&strips(), &no_print).unwrap();
    let wide = |cause| i64::from(matches!(cause, Cause::Stop(_)));
    let widths: Vec<i64> = found.iter().map(|piece| 96 + piece.width.off(wide)).collect();
    // Three of 3 1/32, the last 2 29/32.
    assert_eq!(widths, [97, 97, 97, 93]);
    // Side borders on a mat of 3 1/4: 7/64 and 11/64, and 5/64 where the stop stands as much too near.
    let border = |width: i64| (104 - width, 64);
    assert_eq!((border(97), border(93), border(96 + 3)), ((7, 64), (11, 64), (5, 64)));
    // Each cut by itself: 1/32 off where the stop was asked, three times as much in the rest.
    let each = |cause| i64::from(matches!(cause, Cause::Cut(_)));
    assert_eq!(found.iter().map(|piece| piece.width.worst(each)).collect::<Vec<_>>(), [1, 1, 1, 3]);
    assert!(found.iter().all(|piece| piece.height.worst(|_| 1) == 0), "no cut across, no error");
}

#[test]
fn squareness_is_as_worked() {
    // In 10 000ths of an inch: 1/16 over 12 is 0.30 degrees, and 0.023 over 4 1/2.
    let (rise, run) = (625, 120_000);
    assert_eq!((lean(120_000, rise, run), lean(45_000, rise, run)), (625, 235));
    assert!(((0.0625_f64 / 12.0).atan().to_degrees() - 0.30).abs() < 0.005);
    let turned_over = (45_000.0_f64 * (0.0625_f64 / 12.0)).mul_add(2.0, 0.0);
    assert!((turned_over - 2.0 * 235.0).abs() < 2.0, "a flipped piece shows twice the error");
}

/// A border of so many 32nds of an inch, all three errors up to 1/32, in 1/32 000 000.
fn border(width: i64) -> Pair {
    const ONE: i64 = 1_000_000;
    Pair { near: width * ONE, far: width * ONE, halves: 1, sizes: vec![ONE, ONE], place: ONE }
}

#[test]
fn shares_are_those_of_the_notes_and_of_the_closed_form() {
    let narrow = simulate(&border(2), 200_000, 1);
    let share = f64::from(narrow.under_half) / 200_000.0;
    // One side: P((m − p)/2 + q < −1) = ∫ q²/4 over 0..1 = 1/12; both sides cannot be at once. Four standard errors.
    assert!((share - 1.0 / 6.0).abs() < 4.0 * (0.139_f64 / 200_000.0).sqrt(), "{share}");
    assert_eq!(format!("{:.0} %", share * 100.0), "17 %");
    let wide = simulate(&border(4), 200_000, 2);
    assert_eq!(wide.under_half, 0);
    // P(T − |q| < −s) = (2 − s)³/6 for s from 1 to 2, T triangular: a twentieth at s = 2 − 0.3^(1/3).
    #[allow(clippy::cast_precision_loss, reason = "far below 2^53")]
    let told = wide.worst_twentieth as f64 / 1e6 / 32.0;
    let exact = (4.0 - (2.0 - 0.3_f64.cbrt())) / 32.0;
    assert!((told - exact).abs() < 0.0003 && (told - 0.083).abs() < 0.0006, "{told} {exact}");
    assert_eq!(border(4).least(), (2_000_000, 2_000_000));
    assert_eq!(simulate(&border(4), 1000, 5), simulate(&border(4), 1000, 5));
}

/// The share of sums of even draws between ±ends that lie below a value: the volume of a box cut by a plane, by
/// inclusion and exclusion over its corners (Irwin and Hall's sum, for ends that differ).
fn below(ends: &[f64], value: f64) -> f64 {
    let corners = (0..1_u32 << ends.len()).map(|corner| {
        let signs =
            ends.iter().enumerate().map(|(bit, end)| if corner >> bit & 1 == 1 { (-1.0, -end) } else { (1.0, *end) });
        let (sign, sum) = signs.fold((1.0, 0.0), |(sign, sum), (one, end)| (sign * one, sum + end));
        sign * (value + sum).max(0.0).powi(i32::try_from(ends.len()).unwrap())
    });
    let box_and_factorial: f64 = ends.iter().zip(1_u32..).map(|(end, n)| 2.0 * end * f64::from(n)).product();
    corners.sum::<f64>() / box_and_factorial
}

#[test]
fn the_rest_of_four_is_as_narrow_as_the_exact_sum_says() {
    // A rest of three cuts on a mat of its own, laid by hand: sum of five even draws, one of them whole.
    const ONE: i64 = 1_000_000;
    let pair = Pair { near: 2 * ONE, far: 20 * ONE, halves: 1, sizes: vec![ONE; 4], place: ONE };
    let drawn = f64::from(simulate(&pair, 100_000, 9).under_half) / 100_000.0;
    let exact = below(&[0.5, 0.5, 0.5, 0.5, 1.0], -1.0);
    assert!((below(&[0.5, 0.5, 1.0], -1.0) - 1.0 / 12.0).abs() < 1e-12, "the sum of the notes, one side");
    assert!((drawn - exact).abs() < 0.005, "{drawn} {exact}");
}

#[test]
fn print_that_drifts_moves_only_what_has_one_printed_edge() {
    // Printed columns at 3, 6 and 9 in: the first and the last take the drift, those between two lines keep their size.
    let found = errors(&strips(), &|axis, at| axis == Axis::X && [96, 192, 288].contains(&at)).unwrap();
    let drift = |cause| i64::from(matches!(cause, Cause::Drift(_)));
    assert_eq!(found.iter().map(|piece| piece.width.off(drift)).collect::<Vec<_>>(), [1, 0, 0, -1]);
    assert!(found.iter().all(|piece| piece.width.stops().count() == 0), "the stop is not asked");
}

#[test]
fn a_rest_belongs_on_a_band() {
    // Wide comes off before narrow, so the last panel takes what three cuts leave and the wide bands do not.
    let tree = row(Axis::Y, [152, 112, 70, 50].map(|h| (h, piece(96, h))).to_vec());
    let plan = planned(&tree, 96, 384, Trims::default());
    let found = errors(&plan, &no_print).unwrap();
    let panels: Vec<u32> = found.iter().filter(|piece| piece.height.side == 50).map(|piece| piece.number).collect();
    let rows = rests(&plan, &|number, axis| axis == Axis::Y && panels.contains(&number));
    assert_eq!(rows.len(), 1, "{rows:?}");
    assert!(rows[0].on.iter().all(|number| panels.contains(number)) && rows[0].cuts == 3);
    assert!(!rows[0].better.is_empty() && rows[0].better.iter().all(|number| !panels.contains(number)));
    assert!(rests(&plan, &|_, _| true).is_empty(), "nowhere better to go");
    assert!(rests(&plan, &|_, axis| axis == Axis::X).is_empty(), "along the other side nothing is cut");
    assert!(rests(&strips(), &|number, _| number < 4).is_empty(), "the rest does not matter already");
}

// ---- pieces as polygons: each part is four lines, each line a point and a direction ----

type Point = (f64, f64);
type Line = (Point, Point);

#[derive(Clone, Copy)]
struct Quad {
    left: Line,
    right: Line,
    top: Line,
    bottom: Line,
}

fn meet(a: Line, b: Line) -> Point {
    let cross = |u: Point, v: Point| u.0 * v.1 - u.1 * v.0;
    let between = (b.0.0 - a.0.0, b.0.1 - a.0.1);
    let along = cross(between, b.1) / cross(a.1, b.1);
    (a.0.0 + along * a.1.0, a.0.1 + along * a.1.1)
}

/// The line at a distance beside another, on the side where `toward` points.
fn beside(line: Line, toward: Point, distance: f64) -> Line {
    let length = line.1.0.hypot(line.1.1);
    let normal = (-line.1.1 / length, line.1.0 / length);
    let sign = if normal.0 * toward.0 + normal.1 * toward.1 > 0.0 { distance } else { -distance };
    ((line.0.0 + normal.0 * sign, line.0.1 + normal.1 * sign), line.1)
}

fn apart(a: Line, b: Line) -> f64 {
    let length = a.1.0.hypot(a.1.1);
    ((b.0.0 - a.0.0) * a.1.1 - (b.0.1 - a.0.1) * a.1.0).abs() / length
}

/// Cut the steps out of a sheet whose left edge leans; `error(cut, stop)` is added to each setting.
fn cut_out(plan: &CutPlan, slope: f64, error: &dyn Fn(u32, u32) -> f64) -> BTreeMap<u32, Quad> {
    let (width, height) = (f64::from(plan.sheet.0), f64::from(plan.sheet.1));
    let upright = (slope, 1.0);
    let sheet = Quad {
        left: ((0.0, 0.0), upright),
        right: ((width, 0.0), upright),
        top: ((0.0, 0.0), (1.0, 0.0)),
        bottom: ((0.0, height), (1.0, 0.0)),
    };
    let mut parts = BTreeMap::from([(PartId::SHEET, sheet)]);
    let mut cuts = 0;
    for step in plan.cut_steps() {
        for work in &step.work {
            let mut held = parts[&work.part];
            for &off in &work.off {
                let setting = f64::from(step.setting) + error(cuts, step.stop);
                cuts += 1;
                let mut came = held;
                match (step.axis, step.end) {
                    (Axis::X, End::Near) => (held.left, came.right) = twice(beside(held.left, (1.0, 0.0), setting)),
                    (Axis::X, End::Far) => (held.right, came.left) = twice(beside(held.right, (-1.0, 0.0), setting)),
                    (Axis::Y, End::Near) => (held.top, came.bottom) = twice(beside(held.top, (0.0, 1.0), setting)),
                    (Axis::Y, End::Far) => (held.bottom, came.top) = twice(beside(held.bottom, (0.0, -1.0), setting)),
                }
                parts.insert(off, came);
            }
            parts.insert(work.rest, held);
        }
    }
    let numbered = plan.parts.iter().filter_map(|part| match part.fate {
        Fate::Piece { number, .. } => Some((number, parts[&part.id])),
        _ => None,
    });
    numbered.collect()
}

fn twice(line: Line) -> (Line, Line) {
    (line, line)
}

#[test]
fn polygons_of_a_sheet_out_of_square_lean_as_told() {
    // Eight panels 3 × 4 1/2 and eight bands from 12 × 12, in 64ths; left edge out by 1/16 over 12.
    let column = || row(Axis::Y, [288, 288, 96, 96].map(|h| (h, piece(192, h))).to_vec());
    let tree = row(Axis::X, (0..4).map(|_| (192, column())).collect());
    let plan = planned(&tree, 768, 768, Trims::default());
    let quads = cut_out(&plan, 4.0 / 768.0, &|_, _| 0.0);
    assert_eq!(quads.len(), 16);
    for quad in quads.values() {
        let (above, below) = (meet(quad.left, quad.top), meet(quad.left, quad.bottom));
        let height = if below.1 - above.1 > 192.0 { 288 } else { 96 };
        let told = f64::from(i32::try_from(lean(height * 1000, 4, 768)).unwrap()) / 1000.0;
        assert!((below.0 - above.0 - told).abs() < 2e-3, "{told}");
    }
    let panel = quads.values().find(|quad| (apart(quad.top, quad.bottom) - 288.0).abs() < 1e-9).unwrap();
    let leaned = (meet(panel.left, panel.bottom).0 - meet(panel.left, panel.top).0) / 64.0;
    assert!((leaned - 0.0234).abs() < 0.0005, "0.023 over 4 1/2: {leaned}");
}

/// A random tree over a rectangle.
fn tree(width: u32, height: u32, seeds: &mut impl Iterator<Item = u32>, deep: u32) -> Tree {
    let seed = seeds.next().unwrap_or(0);
    let axis = if seed.is_multiple_of(2) { Axis::X } else { Axis::Y };
    let side = axis.of(width, height);
    if deep == 0 || side < 2 {
        return if seed.is_multiple_of(7) { Tree::Waste } else { piece(width, height) };
    }
    let at = 1 + (seed / 2) % (side - 1);
    let parts = match axis {
        Axis::X => [(at, height), (width - at, height)],
        Axis::Y => [(width, at), (width, height - at)],
    };
    let [first, second] = parts.map(|(w, h)| Box::new(tree(w, h, seeds, deep - 1)));
    Tree::Cut { axis, at, first, second }
}

proptest! {
    /// Sides of pieces cut as polygons with random errors are those of the forms.
    #[test]
    fn forms_say_what_polygons_measure(
        seeds in prop::collection::vec(0_u32..100_000, 40),
        offs in prop::collection::vec(-31_i64..=31, 120),
        trim in 0_u32..2,
    ) {
        let trims = Trims { left: trim, top: trim, ..Trims::default() };
        let tree = tree(20, 16, &mut seeds.into_iter(), 4);
        let plan = planned(&tree, 20 + trim, 16 + trim, trims);
        let found = errors(&plan, &no_print).unwrap();
        let at = |index: u32| offs[index as usize % offs.len()];
        // In 1000ths of a step: a cut is off by its own, a stop by its own.
        let (of_cut, of_stop) = (|cut: u32| at(cut), |stop: u32| at(stop + 57));
        let quads = cut_out(&plan, 0.0, &|cut, stop| f64::from(i32::try_from(of_cut(cut) + of_stop(stop)).unwrap()) / 1000.0);
        prop_assert_eq!(found.len(), quads.len());
        for piece in &found {
            let quad = quads[&piece.number];
            let error = |cause| match cause {
                Cause::Cut(cut) => of_cut(cut),
                Cause::Stop(stop) => of_stop(stop),
                Cause::Drift(_) => 0,
            };
            for (form, measured) in [(&piece.width, apart(quad.left, quad.right)), (&piece.height, apart(quad.top, quad.bottom))] {
                let told = f64::from(i32::try_from(i64::from(form.side) * 1000 + form.off(error)).unwrap()) / 1000.0;
                prop_assert!((told - measured).abs() < 1e-6, "{} {told} {measured}", piece.number);
                prop_assert!(form.off(error).abs() <= form.worst(|_| 31));
                let ends: i64 = form.worst(|_| 31);
                let reached = form.off(|cause| 31 * form.terms[&cause].signum());
                prop_assert_eq!(ends, reached, "the worst is reached");
            }
        }
    }
}
