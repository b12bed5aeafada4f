//! Single plants and parts of plants: leaf, quince, blossom, sprig.

use super::canvas::{At, Canvas, Outline};
use super::hand::{Hand, Point};
use super::ink::{BRICK, HEDGE, Ink, LIGHT, MILK, QUINCE};

/// The tones of one leaf.
#[derive(Debug, Clone, Copy)]
pub(super) struct LeafInks {
    pub(super) base: Ink,
    pub(super) tip: Ink,
    /// Over the half away from the light.
    pub(super) shadow: Ink,
    pub(super) vein: Ink,
}

impl LeafInks {
    /// Tones around one green, lit from the left.
    pub(super) fn of(body: Ink) -> LeafInks {
        LeafInks {
            base: body.shade(0.12),
            tip: body.tint(0.16),
            shadow: body.shade(0.4).thin(0.38),
            vein: body.tint(0.62),
        }
    }
}

/// The form of one leaf, in inches; it grows from the origin along x.
#[derive(Debug, Clone, Copy)]
pub(super) struct LeafForm {
    pub(super) length: f32,
    pub(super) width: f32,
    /// How far the midrib bows sideways.
    pub(super) bow: f32,
    /// Pairs of side veins.
    pub(super) veins: u8,
}

const OVATE: [f32; 9] = [0.0, 0.50, 0.84, 0.99, 1.0, 0.87, 0.64, 0.34, 0.0];

fn ovate(t: f32) -> f32 {
    let x = (t * 8.0).clamp(0.0, 7.999);
    let i = x as usize;
    OVATE[i] + (OVATE[i + 1] - OVATE[i]) * (x - i as f32)
}

pub(super) fn leaf(canvas: &mut Canvas, hand: &mut Hand, form: LeafForm, inks: LeafInks, at: At) {
    let LeafForm { length, width, bow, veins } = form;
    let rib = |t: f32| (t * length, 4.0 * bow * t * (1.0 - t));
    let mut side = |sign: f32| -> Vec<Point> {
        (0..=8_u8)
            .map(|i| {
                let t = f32::from(i) / 8.0;
                let (x, y) = rib(t);
                (x, y + sign * ovate(t) * width / 2.0 * hand.near(1.0, 0.06))
            })
            .collect()
    };
    let (upper, mut lower) = (side(-1.0), side(1.0));
    lower.reverse();
    let mut spine: Vec<Point> = (0..=6_u8).map(|i| rib(f32::from(i) / 6.0)).collect();
    canvas.fade(&Outline::new().two_sided(&upper, &lower), (0.0, 0.0), (length, 0.0), &[inks.base, inks.tip], at);
    canvas.fill(&Outline::new().two_sided(&spine, &lower), inks.shadow, at);
    let mut lines = Outline::new();
    for i in 1..=veins {
        let t = 0.06 + 0.74 * f32::from(i) / f32::from(veins + 1);
        let start = rib(t);
        for sign in [-1.0_f32, 1.0] {
            let end_t = (t + hand.near(0.19, 0.03)).min(0.97);
            let (ex, ey) = rib(end_t);
            let end = (ex, ey + sign * ovate(end_t) * width * 0.43);
            let middle = ((start.0 * 0.42 + end.0 * 0.58), (start.1 * 0.56 + end.1 * 0.44));
            lines = lines.ribbon(&[start, middle, end], width * 0.022, width * 0.006);
        }
    }
    spine.insert(0, (-0.13 * length, 0.0));
    canvas.fill(&lines.ribbon(&spine, width * 0.075, width * 0.012), inks.vein, at);
}

const QUINCE_FRUIT: [Point; 14] = [
    (0.0, -0.93),
    (0.27, -0.97),
    (0.55, -0.70),
    (0.80, -0.26),
    (0.95, 0.24),
    (0.83, 0.69),
    (0.47, 0.96),
    (0.10, 0.91),
    (-0.17, 0.95),
    (-0.56, 0.93),
    (-0.88, 0.60),
    (-0.95, 0.12),
    (-0.74, -0.38),
    (-0.36, -0.93),
];

/// A quince about 2 across, hanging: its stem is at (0, −0.93), its eye below.
pub(super) fn quince(canvas: &mut Canvas, hand: &mut Hand, at: At) {
    let points = QUINCE_FRUIT.map(|(x, y)| (hand.near(x, 0.035), hand.near(y, 0.035)));
    let body = Outline::new().closed(&points);
    let deep = QUINCE.with(BRICK, 0.42);
    canvas.fade(&body, (-0.8, -0.8), (0.8, 0.9), &[QUINCE.tint(0.34), QUINCE, QUINCE.with(BRICK, 0.16)], at);
    canvas.glow(&body, (-0.30, -0.22), 1.42, &[deep.thin(0.0), deep.thin(0.0), deep.thin(0.07), deep.thin(0.62)], at);
    let blush = HEDGE.with(QUINCE, 0.35);
    canvas.glow(&body, (0.05, -1.0), 0.75, &[blush.thin(0.55), blush.thin(0.0)], at);
    canvas.glow(&body, (-0.42, -0.10), 0.62, &[LIGHT.with(QUINCE, 0.12).thin(0.62), LIGHT.thin(0.0)], at);
    let ribs = Outline::new().ribbon(&[(0.10, -0.80), (0.40, -0.30), (0.50, 0.30), (0.24, 0.82)], 0.015, 0.05).ribbon(
        &[(-0.06, -0.78), (-0.20, -0.2), (-0.22, 0.36), (-0.06, 0.82)],
        0.01,
        0.04,
    );
    canvas.fill(&ribs, deep.thin(0.26), at);
    let mut freckles = Outline::new();
    for _ in 0..22 {
        let middle = (hand.near(0.12, 0.72), hand.near(0.12, 0.72));
        let radius = hand.between(0.010, 0.024);
        freckles = freckles.spot(hand, middle, radius, 0.3);
    }
    canvas.fill(&freckles, BRICK.shade(0.15).thin(0.42), at);
    let gleam = Outline::new().ribbon(&[(-0.62, -0.16), (-0.70, 0.08), (-0.66, 0.34)], 0.075, 0.03).ribbon(
        &[(-0.50, -0.42), (-0.545, -0.34), (-0.58, -0.27)],
        0.06,
        0.05,
    );
    canvas.fill(&gleam, LIGHT.thin(0.72), at);
    let mut eye = Outline::new();
    for x in [-0.19_f32, -0.10, 0.0, 0.10, 0.18] {
        eye = eye.ribbon(&[(x * 0.3, 0.86), (x, 0.93), (x * 1.5, 1.09 - x.abs() * 0.4)], 0.10, 0.02);
    }
    canvas.fill(&eye, HEDGE.shade(0.5), at);
    canvas.fill(&Outline::new().oval(hand, (0.02, -0.92), (0.13, 0.05), 0.1), BRICK.shade(0.55).thin(0.8), at);
}

/// A five-petalled blossom about 2 across, seen from the front.
pub(super) fn blossom(canvas: &mut Canvas, hand: &mut Hand, blush: Ink, at: At) {
    let start = hand.unit();
    for i in 0..5_u8 {
        let angle = (f32::from(i) / 5.0 + start + hand.near(0.0, 0.012)) * core::f32::consts::TAU;
        let (w, l) = (hand.near(0.53, 0.05), hand.near(1.0, 0.07));
        let petal = Outline::new().closed(&[
            (0.05, 0.0),
            (0.34 * l, -w * 0.72),
            (0.74 * l, -w),
            (0.99 * l, -w * 0.52),
            (0.93 * l, 0.02),
            (1.0 * l, w * 0.5),
            (0.76 * l, w),
            (0.34 * l, w * 0.74),
        ]);
        let here = at.on((0.0, 0.0), angle, 1.0);
        canvas.fill(&petal, MILK.with(blush, 0.34).shade(0.05), here.on((0.02, 0.04), 0.0, 1.03));
        canvas.glow(
            &petal,
            (0.0, 0.0),
            1.0,
            &[blush.tint(0.25), blush.tint(0.74), LIGHT, LIGHT.with(blush, 0.1)],
            here,
        );
        let lines = Outline::new()
            .ribbon(&[(0.16, 0.0), (0.45, -0.02), (0.74, 0.03)], 0.03, 0.01)
            .ribbon(&[(0.2, -0.06), (0.42, -0.17), (0.62, -0.24)], 0.025, 0.01)
            .ribbon(&[(0.2, 0.06), (0.42, 0.17), (0.62, 0.26)], 0.025, 0.01);
        canvas.fill(&lines, blush.thin(0.3), here);
    }
    let mut threads = Outline::new();
    let mut anthers = Outline::new();
    for i in 0..11_u8 {
        let (x, y) = super::hand::direction((f32::from(i) / 11.0 + start) * core::f32::consts::TAU);
        let reach = hand.between(0.26, 0.42);
        threads = threads.ribbon(&[(0.0, 0.0), (x * reach, y * reach)], 0.03, 0.02);
        anthers = anthers.spot(hand, (x * reach, y * reach), 0.055, 0.2);
    }
    canvas.fill(&threads, HEDGE.tint(0.3), at);
    canvas.fill(&anthers, QUINCE.with(BRICK, 0.22), at);
    canvas.fill(&Outline::new().spot(hand, (0.0, 0.0), 0.12, 0.1), HEDGE.tint(0.15), at);
}

/// What a sprig carries.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Bearing {
    Leaves,
    Berries,
    Flowers,
}

/// The tones of a sprig.
#[derive(Debug, Clone, Copy)]
pub(super) struct SprigInks {
    pub(super) stem: Ink,
    pub(super) leaf: LeafInks,
    pub(super) fruit: Ink,
    pub(super) gleam: Ink,
}

/// A sprig 1 high growing up from the origin.
pub(super) fn sprig(canvas: &mut Canvas, hand: &mut Hand, bearing: Bearing, inks: SprigInks, at: At) {
    let sway = hand.near(0.0, 0.16);
    let stem = [(0.0, 0.0), (sway * 0.25, -0.34), (sway * 0.7, -0.66), (sway, -0.94)];
    canvas.fill(&Outline::new().ribbon(&stem, 0.032, 0.012), inks.stem, at);
    let rise = |t: f32| (sway * t * (0.6 + 0.4 * t), -0.94 * t);
    let pairs: u8 = if bearing == Bearing::Leaves { 6 } else { 4 };
    for i in 0..pairs {
        let t = 0.16 + if bearing == Bearing::Leaves { 0.13 } else { 0.145 } * f32::from(i);
        for side in [-1.0_f32, 1.0] {
            let from = rise(t + side * 0.022);
            let (bearing_angle, long) = (hand.near(0.86, 0.14), hand.near(0.34 - 0.026 * f32::from(i), 0.03));
            let angle = -core::f32::consts::FRAC_PI_2 + side * bearing_angle;
            if bearing == Bearing::Berries && i % 2 == 1 {
                let end = (from.0 + side * long * 0.62, from.1 - long * 0.55);
                let bend = (from.0 + side * long * 0.4, from.1 - long * 0.2);
                canvas.fill(&Outline::new().ribbon(&[from, bend, end], 0.018, 0.012), inks.stem, at);
                berry(canvas, hand, inks, at.on(end, 0.0, 0.062));
            } else {
                let form = LeafForm { length: long, width: long * 0.36, bow: -side * long * 0.07, veins: 3 };
                leaf(canvas, hand, form, inks.leaf, at.on(from, angle, 1.0));
            }
        }
    }
    let top = rise(1.0);
    match bearing {
        Bearing::Leaves => {
            let form = LeafForm { length: 0.24, width: 0.1, bow: 0.01, veins: 3 };
            let angle = -core::f32::consts::FRAC_PI_2 + sway * 0.6;
            leaf(canvas, hand, form, inks.leaf, at.on((top.0, top.1 + 0.05), angle, 1.0));
        }
        Bearing::Berries => {
            for (x, y) in [(-0.10, -0.02), (0.10, -0.03), (0.0, -0.11)] {
                let end = (top.0 + x, top.1 + y);
                canvas.fill(&Outline::new().ribbon(&[(top.0, top.1 + 0.08), end], 0.016, 0.012), inks.stem, at);
                berry(canvas, hand, inks, at.on(end, 0.0, 0.064));
            }
        }
        Bearing::Flowers => {
            for (x, y, size) in [(-0.17, 0.08, 0.10), (0.18, 0.05, 0.10), (0.0, -0.05, 0.145)] {
                let end = (top.0 + x, top.1 + y);
                canvas.fill(&Outline::new().ribbon(&[(top.0 * 0.8, top.1 + 0.24), end], 0.018, 0.012), inks.stem, at);
                blossom(canvas, hand, inks.fruit, at.on(end, 0.0, size));
            }
        }
    }
}

/// A berry of radius 1.
fn berry(canvas: &mut Canvas, hand: &mut Hand, inks: SprigInks, at: At) {
    let body = Outline::new().spot(hand, (0.0, 0.0), 1.0, 0.06);
    canvas.glow(&body, (-0.3, -0.35), 1.6, &[inks.fruit.tint(0.2), inks.fruit, inks.fruit.shade(0.4)], at);
    canvas.fill(&Outline::new().spot(hand, (-0.35, -0.38), 0.22, 0.2), inks.gleam.thin(0.85), at);
}
