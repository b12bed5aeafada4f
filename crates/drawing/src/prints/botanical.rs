//! Prints that grow: quince branch, leaf scatter, sprigs, dusk leaf.

use core::f32::consts::{FRAC_PI_2, TAU};

use super::canvas::{At, Canvas, Outline};
use super::hand::{Hand, Point};
use super::ink::{BRICK, HEDGE, Ink, LIGHT, MILK, POT_BLUE, QUINCE, SLATE};
use super::plants::{Bearing, LeafForm, LeafInks, SprigInks, blossom, leaf, quince, sprig};

/// Points in drawing order: from the top of the sheet down, so that lower motifs lie over higher.
fn downwards(mut points: Vec<Point>) -> Vec<Point> {
    points.sort_by(|a, b| a.1.total_cmp(&b.1));
    points
}

/// Inches between boughs.
const BOUGHS: f32 = 3.1;

/// The middle line of bough `index` at height `y`.
fn bough_x(index: i32, turn: f32, y: f32) -> f32 {
    let i = index as f32;
    i * BOUGHS + 0.42 * libm::sinf(y * 0.74 + i * 2.3 + turn) + 0.16 * libm::sinf(y * 1.9 + i * 5.1)
}

/// Boughs rise through the sheet; twigs carry fruit, blossom and leaves evenly into every gap.
pub(super) fn quince_branch(canvas: &mut Canvas, hand: &mut Hand) {
    let ground = POT_BLUE.tint(0.70);
    canvas.ground(ground);
    let (width, height) = (canvas.width, canvas.height);
    for point in hand.spaced(width, height, 0.8, 0.74) {
        let length = hand.between(0.8, 1.2);
        let form = LeafForm { length, width: length * 0.46, bow: hand.near(0.0, 0.12), veins: 0 };
        let tone = ground.with(POT_BLUE, hand.between(0.10, 0.17));
        let inks = LeafInks { base: tone, tip: tone, shadow: ground.with(POT_BLUE, 0.2).thin(0.3), vein: ground };
        let angle = -FRAC_PI_2 + hand.near(0.0, 1.5);
        leaf(canvas, hand, form, inks, At::new(point, angle, 1.0));
    }
    let turn = hand.unit() * TAU;
    let bark = BRICK.with(SLATE, 0.66);
    let count = (width / BOUGHS) as i32 + 2;
    for index in -1..=count {
        let steps = (height / 0.8) as i32 + 3;
        let line: Vec<Point> =
            (-2..=steps).rev().map(|s| s as f32 * 0.8).map(|y| (bough_x(index, turn, y), y)).collect();
        canvas.fill(&Outline::new().ribbon(&line, 0.19, 0.15), bark.shade(0.15), At::SHEET);
        canvas.fill(
            &Outline::new().ribbon(&line, 0.045, 0.035),
            bark.tint(0.42).thin(0.6),
            At::new((-0.04, 0.0), 0.0, 1.0),
        );
    }
    let ends = downwards(hand.spaced(width, height, 1.7, 1.34));
    let mut kinds: Vec<(Point, usize)> = Vec::with_capacity(ends.len());
    for end in ends {
        let kind = next_kind(hand, &kinds, end);
        kinds.push((end, kind));
    }
    for (end, _) in &kinds {
        twig(canvas, hand, *end, turn, bark);
    }
    for (end, kind) in kinds {
        match kind {
            0 => fruit_cluster(canvas, hand, end, bark),
            1 => blossom_cluster(canvas, hand, end),
            _ => leaf_cluster(canvas, hand, end),
        }
    }
}

/// Fruit 0, blossom 1 or leaves 2: the one least seen nearby.
fn next_kind(hand: &mut Hand, kinds: &[(Point, usize)], at: Point) -> usize {
    let mut seen = [0.0_f32, 0.25, 0.1];
    for (p, kind) in kinds {
        let (dx, dy) = (p.0 - at.0, p.1 - at.1);
        let square = dx * dx + dy * dy;
        if square < 5.2 {
            seen[*kind] += 1.0 / (0.6 + square);
        }
    }
    let weights = seen.map(|s| s + hand.between(0.0, 0.22));
    if weights[0] <= weights[1] && weights[0] <= weights[2] {
        0
    } else if weights[1] <= weights[2] {
        1
    } else {
        2
    }
}

/// A twig from the nearest bough, leaving it below the end and rising to it, with a pair of leaves.
fn twig(canvas: &mut Canvas, hand: &mut Hand, end: Point, turn: f32, bark: Ink) {
    let root_y = end.1 + hand.between(0.85, 1.25);
    let index = ((end.0 / BOUGHS) + 0.5).floor() as i32;
    let root = (-1..=1)
        .map(|d| bough_x(index + d, turn, root_y))
        .min_by(|a, b| (a - end.0).abs().total_cmp(&(b - end.0).abs()))
        .map_or(end, |x| (x, root_y));
    let middle = (root.0 + (end.0 - root.0) * 0.52, root.1 + (end.1 - root.1) * 0.34);
    canvas.fill(&Outline::new().ribbon(&[root, middle, end], 0.10, 0.05), bark, At::SHEET);
    let side = if end.0 < root.0 { 1.0_f32 } else { -1.0 };
    for (share, lean) in [(0.35_f32, 0.5_f32), (0.72, -0.7)] {
        let from = (root.0 + (end.0 - root.0) * (share + 0.12), root.1 + (end.1 - root.1) * (share - 0.08));
        let angle = -FRAC_PI_2 + side * lean + hand.near(0.0, 0.25);
        green_leaf(canvas, hand, from, angle, 0.72);
    }
}

fn green_leaf(canvas: &mut Canvas, hand: &mut Hand, from: Point, angle: f32, length: f32) {
    let body = hand.pick(
        &[HEDGE, HEDGE.shade(0.22), HEDGE.with(POT_BLUE, 0.35), HEDGE.with(QUINCE, 0.28), HEDGE.tint(0.14)],
        HEDGE,
    );
    let long = length * hand.near(1.0, 0.18);
    let form = LeafForm { length: long, width: long * hand.near(0.55, 0.06), bow: hand.near(0.0, 0.09), veins: 5 };
    leaf(canvas, hand, form, LeafInks::of(body), At::new(from, angle, 1.0));
}

fn fruit_cluster(canvas: &mut Canvas, hand: &mut Hand, end: Point, bark: Ink) {
    let lean = hand.near(0.0, 0.3);
    let size = hand.near(0.66, 0.07);
    for spread in [-1.25_f32, 1.15, -2.2] {
        let angle = -FRAC_PI_2 + spread + hand.near(0.0, 0.2);
        green_leaf(canvas, hand, (end.0, end.1 - 0.34), angle, 0.98);
    }
    let at = At::new((end.0, end.1 + 0.22), lean, size);
    let shadow = Outline::new().oval(hand, (0.10, 0.12), (0.98, 0.98), 0.02);
    canvas.fill(&shadow, POT_BLUE.shade(0.4).thin(0.16), at);
    quince(canvas, hand, at);
    canvas.fill(
        &Outline::new().ribbon(&[(0.0, -0.90), (0.03, -1.05), (-0.04, -1.22)], 0.09, 0.13),
        bark.shade(0.2),
        at,
    );
    let angle = 0.25 + hand.near(0.0, 0.35);
    green_leaf(canvas, hand, (end.0 + 0.02, end.1 - 0.42), angle, 0.86);
}

fn blossom_cluster(canvas: &mut Canvas, hand: &mut Hand, end: Point) {
    let start = hand.unit() * TAU;
    for i in 0..5_u8 {
        let angle = start + f32::from(i) * TAU / 5.0 + hand.near(0.0, 0.3);
        green_leaf(canvas, hand, end, angle, 0.86);
    }
    for (angle, reach, size) in [(0.3_f32, 0.44_f32, 0.29_f32), (2.5, 0.42, 0.32), (4.4, 0.36, 0.38)] {
        let (dx, dy) = super::hand::direction(angle + start);
        let middle = (end.0 + dx * reach, end.1 + dy * reach);
        let at = At::new(middle, 0.0, size * hand.near(1.0, 0.1));
        canvas.fill(&Outline::new().spot(hand, (0.07, 0.10), 0.94, 0.06), HEDGE.shade(0.6).thin(0.25), at);
        blossom(canvas, hand, BRICK.with(QUINCE, 0.12), at);
    }
}

fn leaf_cluster(canvas: &mut Canvas, hand: &mut Hand, end: Point) {
    let lean = hand.near(0.0, 0.3);
    for spread in [-1.9_f32, 1.9, -1.15, 1.1, -0.45, 0.4] {
        let angle = -FRAC_PI_2 + spread + lean + hand.near(0.0, 0.12);
        green_leaf(canvas, hand, end, angle, 0.95);
    }
    for (x, y) in [(-0.06, -0.10), (0.10, -0.05), (0.03, 0.09)] {
        let at = At::new((end.0 + x, end.1 + y), 0.0, 0.085);
        let bud = Outline::new().oval(hand, (0.0, 0.0), (1.0, 1.15), 0.08);
        canvas.glow(&bud, (-0.3, -0.4), 1.7, &[LIGHT, BRICK.tint(0.55), BRICK.tint(0.1)], at);
    }
}

/// Small leaves tossed in any direction, with seeds between.
pub(super) fn leaf_scatter(canvas: &mut Canvas, hand: &mut Hand) {
    canvas.ground(MILK);
    let (width, height) = (canvas.width, canvas.height);
    let bodies = [
        HEDGE,
        HEDGE.tint(0.3),
        HEDGE.tint(0.52),
        HEDGE.with(POT_BLUE, 0.5),
        POT_BLUE.tint(0.45),
        QUINCE.tint(0.1),
        QUINCE.with(BRICK, 0.4).tint(0.2),
        HEDGE.with(QUINCE, 0.4),
    ];
    let points = hand.spaced(width, height, 0.4, 0.44);
    for (x, y) in points {
        let angle = hand.unit() * TAU;
        let length = hand.between(0.36, 0.54);
        let (dx, dy) = super::hand::direction(angle);
        let form = LeafForm { length, width: length * hand.between(0.36, 0.5), bow: hand.near(0.0, 0.06), veins: 4 };
        let body = hand.pick(&bodies, HEDGE);
        let inks = LeafInks {
            base: body.shade(0.06),
            tip: body.tint(0.12),
            shadow: body.shade(0.3).thin(0.3),
            vein: MILK.thin(0.85),
        };
        let stalk = Outline::new().ribbon(&[(-length * 0.24, 0.015), (-length * 0.1, 0.0), (0.04, 0.0)], 0.016, 0.022);
        let at = At::new((x - dx * length / 2.0, y - dy * length / 2.0), angle, 1.0);
        canvas.fill(&stalk, body.shade(0.25), at);
        leaf(canvas, hand, form, inks, at);
        let seed = (x + dy * 0.25, y - dx * 0.25);
        if hand.chance(0.75) {
            let ink = hand.pick(&[QUINCE, BRICK.tint(0.3), POT_BLUE.tint(0.35)], QUINCE);
            let radius = hand.between(0.014, 0.026);
            canvas.fill(&Outline::new().spot(hand, seed, radius, 0.25), ink, At::SHEET);
        }
    }
}

/// Sprigs, all growing up, three kinds.
pub(super) fn sprigs(canvas: &mut Canvas, hand: &mut Hand) {
    let ground = HEDGE.tint(0.76);
    canvas.ground(ground);
    let (width, height) = (canvas.width, canvas.height);
    let mut flecks = Outline::new();
    for point in hand.spaced(width, height, 0.1, 0.27) {
        let radius = hand.between(0.012, 0.022);
        flecks = flecks.spot(hand, point, radius, 0.3);
    }
    canvas.fill(&flecks, HEDGE.tint(0.5), At::SHEET);
    let deep = HEDGE.shade(0.28);
    for (x, y) in downwards(hand.spaced(width, height, 1.0, 1.06)) {
        let kind = hand.below(3);
        let (bearing, body, fruit) = match kind {
            0 => (Bearing::Leaves, HEDGE.with(POT_BLUE, 0.45), BRICK),
            1 => (Bearing::Berries, HEDGE, BRICK),
            _ => (Bearing::Flowers, HEDGE.with(QUINCE, 0.22), BRICK.with(QUINCE, 0.2)),
        };
        let inks = SprigInks { stem: deep, leaf: LeafInks::of(body), fruit, gleam: LIGHT };
        let at = At::new((x, y + 0.6), hand.near(0.0, 0.42), hand.between(1.08, 1.32));
        sprig(canvas, hand, bearing, inks, at);
    }
}

/// Large leaves rising in the dusk: three depths, the nearest lit.
pub(super) fn dusk_leaf(canvas: &mut Canvas, hand: &mut Hand) {
    let ground = SLATE.with(POT_BLUE, 0.28).shade(0.3);
    canvas.ground(ground);
    let (width, height) = (canvas.width, canvas.height);
    let far = ground.with(POT_BLUE, 0.38);
    for point in downwards(hand.spaced(width, height, 1.6, 1.15)) {
        let tone = far.with(SLATE, hand.between(0.0, 0.4));
        let inks = LeafInks { base: tone.shade(0.3), tip: tone, shadow: ground.thin(0.35), vein: tone.tint(0.14) };
        rising_leaf(canvas, hand, point, 2.5, 6, inks);
    }
    for point in downwards(hand.spaced(width, height, 1.8, 1.75)) {
        let body = hand.pick(&[POT_BLUE, POT_BLUE.with(HEDGE, 0.5), SLATE.with(POT_BLUE, 0.5).tint(0.14)], POT_BLUE);
        let inks =
            LeafInks { base: body.shade(0.42), tip: body.tint(0.08), shadow: ground.thin(0.4), vein: body.tint(0.42) };
        leaf_shadow(canvas, hand, point);
        rising_leaf(canvas, hand, point, 2.8, 8, inks);
    }
    for point in downwards(hand.spaced(width, height, 2.0, 2.25)) {
        let body = hand.pick(
            &[
                HEDGE.with(POT_BLUE, 0.3),
                HEDGE.tint(0.2),
                POT_BLUE.tint(0.42),
                QUINCE.with(BRICK, 0.25),
                HEDGE.with(QUINCE, 0.3),
            ],
            HEDGE,
        );
        let inks = LeafInks {
            base: body.shade(0.38),
            tip: body.tint(0.2),
            shadow: body.shade(0.75).thin(0.4),
            vein: body.tint(0.68),
        };
        leaf_shadow(canvas, hand, point);
        rising_leaf(canvas, hand, point, 2.9, 9, inks);
    }
    let mut glints = Outline::new();
    for point in hand.spaced(width, height, 0.2, 0.8) {
        let radius = hand.between(0.014, 0.035);
        glints = glints.spot(hand, point, radius, 0.2);
    }
    canvas.fill(&glints, QUINCE.tint(0.35).thin(0.8), At::SHEET);
}

/// A soft dark bed under the leaf that will stand at `point`.
fn leaf_shadow(canvas: &mut Canvas, hand: &mut Hand, point: Point) {
    let bed = Outline::new().oval(hand, (0.08, 0.1), (0.9, 1.35), 0.05);
    let ink = SLATE.shade(0.85);
    canvas.glow(&bed, (0.08, 0.1), 1.3, &[ink.thin(0.45), ink.thin(0.22), ink.thin(0.0)], At::new(point, 0.0, 1.0));
}

fn rising_leaf(canvas: &mut Canvas, hand: &mut Hand, middle: Point, length: f32, veins: u8, inks: LeafInks) {
    let long = length * hand.near(1.0, 0.16);
    let angle = -FRAC_PI_2 + hand.near(0.0, 0.75);
    let (dx, dy) = super::hand::direction(angle);
    let root = (middle.0 - dx * long / 2.0, middle.1 - dy * long / 2.0);
    let form = LeafForm { length: long, width: long * hand.near(0.47, 0.07), bow: hand.near(0.0, 0.3), veins };
    leaf(canvas, hand, form, inks, At::new(root, angle, 1.0));
}
