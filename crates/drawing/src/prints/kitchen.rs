//! Still lifes for the recipe cards: each stands in a panel 3 wide and 4 high, its origin in the top left corner.

use super::canvas::{At, Canvas, Outline, smooth};
use super::hand::{Hand, Point};
use super::ink::{BRICK, HEDGE, Ink, LIGHT, MILK, POT_BLUE, QUINCE, SLATE};
use super::plants::{LeafForm, LeafInks, leaf, quince};

/// A turned thing between two shares of its half widths: (half width, height) from its top down.
fn turned(profile: &[Point], from: f32, to: f32) -> Outline {
    let mut outline: Vec<Point> = smooth(profile).iter().map(|(w, y)| (w * to, *y)).collect();
    let left: Vec<Point> = smooth(profile).iter().rev().map(|(w, y)| (w * from, *y)).collect();
    outline.extend(left);
    Outline::new().polygon(&outline)
}

/// Body, shade on the right, gleam on the left.
fn vessel(canvas: &mut Canvas, profile: &[Point], ink: Ink, at: At) {
    let wide = profile.iter().fold(0.0_f32, |w, p| w.max(p.0));
    let body = turned(profile, -1.0, 1.0);
    canvas.fade(
        &body,
        (-wide, 0.0),
        (wide, 0.0),
        &[ink.shade(0.06), ink.tint(0.20), ink, ink.shade(0.16), ink.shade(0.36)],
        at,
    );
    canvas.fill(&turned(profile, 0.52, 1.0), ink.shade(0.6).thin(0.16), at);
    if let Some(lit) = profile.get(1..profile.len().saturating_sub(1)) {
        canvas.fill(&turned(lit, -0.80, -0.70), LIGHT.thin(0.55), at);
        canvas.fill(&turned(lit, -0.64, -0.61), LIGHT.thin(0.35), at);
    }
}

/// A table from `y` down, a soft shadow on it, and a wall of faint strokes above.
fn table(canvas: &mut Canvas, hand: &mut Hand, y: f32, ink: Ink, at: At) {
    let edge: Vec<Point> = (0..=6_u8).map(|i| (f32::from(i) * 0.6 - 0.3, hand.near(y, 0.015))).collect();
    let floor = [(3.4, 4.2), (-0.4, 4.2)];
    canvas.fade(
        &Outline::new().polygon(&[edge.as_slice(), &floor].concat()),
        (0.0, y),
        (0.0, 4.0),
        &[ink.tint(0.06), ink.shade(0.12)],
        at,
    );
    let mut grain = Outline::new();
    for i in 0..4_u8 {
        let y = y + 0.16 + 0.24 * f32::from(i);
        let x = hand.between(-0.6, 1.6);
        let long = hand.between(0.8, 2.0);
        grain = grain.ribbon(&[(x, y), (x + long / 2.0, hand.near(y, 0.02)), (x + long, y)], 0.012, 0.006);
    }
    canvas.fill(&grain, ink.shade(0.4).thin(0.28), at);
}

fn cast(canvas: &mut Canvas, hand: &mut Hand, middle: Point, radii: Point, at: At) {
    let pool = Outline::new().oval(hand, (0.0, 0.0), (1.0, 1.0), 0.02);
    let dark = SLATE.shade(0.6);
    let flat = at.squeezed(middle, radii);
    canvas.glow(&pool, (0.0, 0.0), 1.0, &[dark.thin(0.5), dark.thin(0.34), dark.thin(0.0)], flat);
}

/// Steam curling up from `foot`.
fn steam(canvas: &mut Canvas, hand: &mut Hand, foot: Point, ink: Ink, at: At) {
    let mut curls = Outline::new();
    for (dx, high) in [(-0.2_f32, 0.62_f32), (0.02, 0.82), (0.24, 0.56)] {
        let x = foot.0 + dx;
        let line = [
            (x, foot.1),
            (x + hand.near(0.09, 0.02), foot.1 - high * 0.3),
            (x - hand.near(0.08, 0.02), foot.1 - high * 0.65),
            (x + hand.near(0.05, 0.02), foot.1 - high),
        ];
        curls = curls.ribbon(&line, 0.055, 0.012);
    }
    canvas.fill(&curls, ink, at);
}

pub(super) fn kettle(canvas: &mut Canvas, hand: &mut Hand, at: At) {
    table(canvas, hand, 2.95, QUINCE.with(BRICK, 0.42), at);
    cast(canvas, hand, (1.62, 3.22), (1.25, 0.2), at);
    steam(canvas, hand, (0.34, 1.5), MILK.thin(0.85), at.on((0.0, 0.0), 0.0, 1.0));
    let at = at.on((1.56, 2.5), 0.0, 0.95);
    let ink = POT_BLUE;
    let spout = Outline::new().ribbon(&[(-0.62, 0.35), (-0.98, 0.1), (-1.12, -0.36), (-1.34, -0.62)], 0.46, 0.16);
    canvas.fade(&spout, (-1.2, 0.0), (-0.7, 0.3), &[ink.tint(0.2), ink.shade(0.1)], at);
    canvas.fill(&Outline::new().ribbon(&[(-1.43, -0.55), (-1.25, -0.69)], 0.07, 0.07), MILK.shade(0.05), at);
    let bail = [(-0.66, -0.55), (-0.78, -1.05), (-0.42, -1.5), (0.0, -1.6), (0.42, -1.5), (0.78, -1.05), (0.66, -0.55)];
    canvas.fill(&Outline::new().ribbon(&bail, 0.075, 0.075), SLATE.shade(0.2), at);
    let grip = [(-0.34, -1.545), (0.0, -1.61), (0.34, -1.545)];
    canvas.fill(&Outline::new().ribbon(&grip, 0.17, 0.17), BRICK, at);
    canvas.fill(
        &Outline::new().ribbon(&[(-0.3, -1.575), (0.0, -1.64), (0.3, -1.575)], 0.035, 0.035),
        BRICK.tint(0.5),
        at,
    );
    vessel(canvas, &[(0.60, -0.62), (0.80, -0.42), (0.95, 0.0), (1.0, 0.38), (0.92, 0.66), (0.84, 0.74)], ink, at);
    vessel(canvas, &[(0.10, -0.86), (0.34, -0.80), (0.54, -0.68), (0.60, -0.60)], ink.shade(0.1), at);
    canvas.fill(&Outline::new().ribbon(&[(-0.62, -0.61), (0.0, -0.575), (0.62, -0.61)], 0.045, 0.045), MILK, at);
    canvas.fill(&Outline::new().spot(hand, (0.0, -0.93), 0.115, 0.03), BRICK, at);
    canvas.fill(&Outline::new().spot(hand, (-0.035, -0.965), 0.035, 0.1), LIGHT.thin(0.8), at);
    // A garland of milk leaves round the belly.
    for i in -4..=4_i8 {
        let x = f32::from(i) * 0.19;
        let y = 0.26 - x * x * 0.10;
        let form = LeafForm { length: 0.21, width: 0.085, bow: 0.01, veins: 0 };
        let tone = MILK.with(ink, 0.04 + 0.04 * f32::from(i + 4));
        let inks = LeafInks { base: tone, tip: tone, shadow: ink.thin(0.12), vein: ink.thin(0.5) };
        for turn in [-0.75_f32, 0.75] {
            leaf(canvas, hand, form, inks, at.on((x - 0.07, y), turn, 1.0));
        }
    }
    let rim = Outline::new().ribbon(&[(-0.86, 0.69), (0.0, 0.74), (0.86, 0.69)], 0.05, 0.05);
    canvas.fill(&rim, SLATE.shade(0.3).thin(0.55), at);
}

pub(super) fn cup(canvas: &mut Canvas, hand: &mut Hand, at: At) {
    table(canvas, hand, 2.75, HEDGE.tint(0.30), at);
    cast(canvas, hand, (1.52, 3.17), (1.42, 0.22), at);
    steam(canvas, hand, (1.45, 1.55), LIGHT.thin(0.75), at);
    let at = at.on((1.45, 2.45), 0.0, 1.0);
    let saucer = [(1.12, 0.52), (1.16, 0.57), (0.86, 0.69), (0.50, 0.75)];
    vessel(canvas, &saucer, MILK.with(BRICK, 0.05), at);
    canvas.fill(&Outline::new().oval(hand, (0.0, 0.53), (1.12, 0.13), 0.0), MILK.shade(0.09), at);
    canvas.fill(&Outline::new().oval(hand, (0.0, 0.54), (0.62, 0.07), 0.0), SLATE.thin(0.22), at);
    let ring = [(0.70, -0.42), (1.02, -0.52), (1.18, -0.28), (0.98, 0.04), (0.56, 0.22)];
    canvas.fill(&Outline::new().ribbon(&ring, 0.12, 0.10), MILK.shade(0.10), at);
    canvas.fill(&Outline::new().ribbon(&ring, 0.03, 0.03), BRICK, at);
    let bowl = [(0.80, -0.70), (0.79, -0.42), (0.70, 0.02), (0.52, 0.36), (0.36, 0.48), (0.38, 0.55)];
    vessel(canvas, &bowl, MILK.with(BRICK, 0.04), at);
    canvas.fill(&turned(&[(0.785, -0.38), (0.77, -0.29), (0.755, -0.22)], -1.0, 1.0), BRICK, at);
    for i in -3..=3_i8 {
        let x = f32::from(i) * 0.19;
        let y = 0.02 - x * x * 0.22;
        canvas.fill(&Outline::new().spot(hand, (x, y), 0.065, 0.08), BRICK.shade(0.05), at);
        canvas.fill(&Outline::new().spot(hand, (x - 0.012, y - 0.012), 0.03, 0.1), QUINCE.tint(0.2), at);
    }
    canvas.fill(&Outline::new().oval(hand, (0.0, -0.70), (0.80, 0.155), 0.0), LIGHT, at);
    let tea = Outline::new().oval(hand, (0.0, -0.68), (0.73, 0.115), 0.0);
    canvas.fade(&tea, (-0.7, 0.0), (0.7, 0.0), &[BRICK.with(QUINCE, 0.35).shade(0.1), BRICK.shade(0.35)], at);
    canvas.fill(
        &Outline::new().ribbon(&[(-0.5, -0.69), (-0.28, -0.645), (0.05, -0.63)], 0.03, 0.01),
        QUINCE.tint(0.35),
        at,
    );
}

pub(super) fn jam_jar(canvas: &mut Canvas, hand: &mut Hand, at: At) {
    table(canvas, hand, 3.05, SLATE.with(POT_BLUE, 0.3), at);
    cast(canvas, hand, (1.58, 3.42), (1.15, 0.19), at);
    let at = at.on((1.5, 2.45), 0.0, 1.0);
    let jam = QUINCE.with(BRICK, 0.5);
    vessel(canvas, &[(0.64, -0.92), (0.78, -0.74), (0.86, -0.5), (0.87, 0.2), (0.86, 0.8), (0.80, 0.94)], jam, at);
    canvas.fill(
        &turned(&[(0.62, -0.95), (0.72, -0.82), (0.78, -0.74)], -1.0, 1.0),
        MILK.with(POT_BLUE, 0.2).thin(0.75),
        at,
    );
    let mut fruit = Outline::new();
    for _ in 0..16 {
        let middle = (hand.near(0.0, 0.7), hand.near(0.1, 0.78));
        let radius = hand.between(0.04, 0.09);
        fruit = fruit.spot(hand, middle, radius, 0.3);
    }
    canvas.fill(&fruit, QUINCE.tint(0.1).thin(0.45), at);
    let label = Outline::new().oval(hand, (0.0, 0.12), (0.56, 0.52), 0.005);
    canvas.fill(&label, MILK, at);
    canvas.fill(&Outline::new().oval(hand, (0.0, 0.12), (0.50, 0.46), 0.005), BRICK, at);
    canvas.fill(&Outline::new().oval(hand, (0.0, 0.12), (0.48, 0.44), 0.005), MILK, at);
    quince(canvas, hand, at.on((0.0, 0.17), 0.15, 0.27));
    green(canvas, hand, at.on((-0.03, -0.08), 0.1, 1.0), 0.3, HEDGE);
    green(canvas, hand, at.on((-0.03, -0.08), 2.7, 1.0), 0.24, HEDGE.shade(0.2));
    cloth_cap(canvas, hand, at);
}

/// A checked cloth tied over a jar's mouth.
fn cloth_cap(canvas: &mut Canvas, hand: &mut Hand, at: At) {
    let hem: Vec<Point> = (0..=10_u8)
        .map(|i| (0.98 - 0.196 * f32::from(i), if i % 2 == 0 { -0.56 } else { -0.68 } - hand.between(0.0, 0.04)))
        .collect();
    let top = [
        (-0.98, -0.58),
        (-0.80, -0.86),
        (-0.70, -1.0),
        (-0.72, -1.18),
        (-0.5, -1.32),
        (0.0, -1.36),
        (0.5, -1.32),
        (0.72, -1.18),
        (0.70, -1.0),
        (0.80, -0.86),
        (0.98, -0.58),
    ];
    let cloth = Outline::new().two_sided(&top, &hem);
    canvas.fade(&cloth, (-0.9, 0.0), (0.95, 0.0), &[MILK, LIGHT, MILK.shade(0.16)], at);
    for i in -3..=3_i8 {
        let x = f32::from(i) * 0.2;
        let fold = Outline::new().ribbon(&[(x, -1.33 + x * x * 0.12), (x * 1.06, -1.0), (x * 1.34, -0.66)], 0.09, 0.12);
        canvas.fill(&fold, BRICK.thin(0.50), at);
    }
    for (y, wide) in [(-1.22_f32, 0.70_f32), (-1.07, 0.70), (-0.84, 0.80), (-0.72, 0.86)] {
        let band = Outline::new().ribbon(&[(-wide, y - 0.01), (0.0, y + 0.05), (wide, y - 0.01)], 0.075, 0.075);
        canvas.fill(&band, BRICK.thin(0.45), at);
    }
    canvas.fill(
        &Outline::new().ribbon(&[(-0.71, -0.99), (0.0, -0.93), (0.71, -0.99)], 0.06, 0.06),
        QUINCE.shade(0.25),
        at,
    );
    let bow = Outline::new()
        .ribbon(&[(0.1, -0.94), (0.34, -0.80), (0.38, -0.98), (0.1, -0.94)], 0.04, 0.04)
        .ribbon(&[(0.1, -0.94), (-0.12, -0.78), (-0.18, -0.95), (0.1, -0.94)], 0.04, 0.04)
        .ribbon(&[(0.1, -0.94), (0.16, -0.74), (0.28, -0.58)], 0.035, 0.02)
        .ribbon(&[(0.1, -0.94), (0.04, -0.72), (-0.06, -0.54)], 0.035, 0.02);
    canvas.fill(&bow, QUINCE.shade(0.12), at);
}

fn green(canvas: &mut Canvas, hand: &mut Hand, at: At, length: f32, body: Ink) {
    let form = LeafForm { length, width: length * 0.52, bow: hand.near(0.0, length * 0.1), veins: 5 };
    leaf(canvas, hand, form, LeafInks::of(body), at);
}

pub(super) fn single_quince(canvas: &mut Canvas, hand: &mut Hand, at: At) {
    let at = at.on((1.5, 2.18), 0.0, 1.0);
    for (angle, length) in [(-2.75_f32, 1.15_f32), (-0.35, 1.2), (-2.15, 0.95)] {
        green(canvas, hand, at.on((0.02, -1.05), angle, 1.0), length, HEDGE.with(POT_BLUE, 0.12));
    }
    quince(canvas, hand, at.on((0.0, 0.0), 0.05, 1.08));
    canvas.fill(
        &Outline::new().ribbon(&[(0.05, -1.0), (0.04, -1.2), (0.24, -1.48)], 0.10, 0.15),
        BRICK.with(SLATE, 0.6).tint(0.2),
        at,
    );
    green(canvas, hand, at.on((0.08, -1.08), 0.42, 1.0), 0.9, HEDGE.with(QUINCE, 0.2));
}

pub(super) fn quince_half(canvas: &mut Canvas, hand: &mut Hand, at: At) {
    let at = at.on((1.5, 2.2), 0.0, 1.15);
    for (angle, length) in [(-2.6_f32, 0.95_f32), (-0.5, 1.0)] {
        green(canvas, hand, at.on((0.0, -0.95), angle, 1.0), length, HEDGE);
    }
    canvas.fill(
        &Outline::new().ribbon(&[(0.0, -0.85), (0.02, -1.05), (-0.1, -1.25)], 0.09, 0.13),
        BRICK.with(SLATE, 0.6),
        at,
    );
    const HALF: [Point; 12] = [
        (0.0, -0.96),
        (0.32, -0.92),
        (0.62, -0.52),
        (0.90, 0.02),
        (0.92, 0.48),
        (0.62, 0.90),
        (0.12, 0.98),
        (-0.30, 0.99),
        (-0.76, 0.80),
        (-0.95, 0.30),
        (-0.80, -0.22),
        (-0.40, -0.86),
    ];
    let points = HALF.map(|(x, y)| (hand.near(x, 0.02), hand.near(y, 0.02)));
    let cut = Outline::new().closed(&points);
    canvas.fill(&cut, BRICK.shade(0.4).thin(0.22), at.on((0.07, 0.09), 0.0, 1.0));
    canvas.fill(&cut, QUINCE.with(BRICK, 0.12), at);
    let inner = at.on((0.0, 0.0), 0.0, 0.93);
    canvas.glow(
        &cut,
        (0.0, 0.1),
        1.0,
        &[QUINCE.tint(0.52), LIGHT.with(QUINCE, 0.14), LIGHT.with(QUINCE, 0.12), QUINCE.tint(0.45)],
        inner,
    );
    let core = Outline::new().closed(&[
        (0.0, -0.34),
        (0.30, -0.12),
        (0.40, 0.20),
        (0.24, 0.50),
        (0.0, 0.60),
        (-0.24, 0.50),
        (-0.40, 0.20),
        (-0.30, -0.12),
    ]);
    canvas.fill(&core, QUINCE.with(HEDGE, 0.2).tint(0.42), at);
    canvas.fill(&core, QUINCE.tint(0.66), at.on((0.0, 0.012), 0.0, 0.93));
    let lines = Outline::new().ribbon(&[(0.0, -0.84), (0.01, -0.5), (0.0, -0.32)], 0.05, 0.02).ribbon(
        &[(0.0, 0.60), (0.0, 0.92)],
        0.025,
        0.08,
    );
    canvas.fill(&lines, QUINCE.with(HEDGE, 0.3).tint(0.2), at);
    for (x, turn) in [(-0.15_f32, 0.3_f32), (0.15, -0.3)] {
        let cell = Outline::new().closed(&[
            (0.0, -0.30),
            (0.12, -0.04),
            (0.10, 0.22),
            (0.0, 0.30),
            (-0.10, 0.22),
            (-0.12, -0.04),
        ]);
        let here = at.on((x, 0.14), turn, 1.0);
        canvas.fill(&cell, QUINCE.with(BRICK, 0.25).tint(0.28), here);
        for (sx, sy) in [(-0.035_f32, -0.02_f32), (0.04, 0.07)] {
            let seed =
                Outline::new().closed(&[(0.0, -0.13), (0.055, 0.02), (0.03, 0.10), (-0.03, 0.10), (-0.055, 0.02)]);
            let at = here.on((sx, sy), turn * -0.4, 1.0);
            canvas.fill(&seed, BRICK.shade(0.62), at);
            canvas.fill(&Outline::new().ribbon(&[(-0.02, -0.05), (-0.025, 0.03)], 0.014, 0.01), QUINCE.tint(0.4), at);
        }
    }
}

pub(super) fn bowl_and_spoon(canvas: &mut Canvas, hand: &mut Hand, at: At) {
    table(canvas, hand, 2.55, BRICK.with(QUINCE, 0.25).tint(0.1), at);
    cast(canvas, hand, (1.55, 3.15), (1.45, 0.24), at);
    for (x, y, size, lean) in [(0.86, 1.78, 0.44, -0.5), (2.12, 1.80, 0.42, 0.6), (1.5, 1.58, 0.50, 0.1)] {
        quince(canvas, hand, at.on((x, y), lean, size));
    }
    green(canvas, hand, at.on((1.42, 1.14), -2.5, 1.0), 0.62, HEDGE.tint(0.1));
    green(canvas, hand, at.on((1.56, 1.14), -0.5, 1.0), 0.66, HEDGE);
    let bowl = at.on((1.5, 2.4), 0.0, 1.0);
    vessel(
        canvas,
        &[(1.22, -0.52), (1.20, -0.36), (1.06, 0.12), (0.74, 0.54), (0.46, 0.68), (0.48, 0.78)],
        POT_BLUE.tint(0.1),
        bowl,
    );
    canvas.fill(&turned(&[(1.215, -0.38), (1.19, -0.28), (1.165, -0.19)], -1.0, 1.0), MILK, bowl);
    canvas.fill(&turned(&[(1.14, -0.11), (1.125, -0.07), (1.11, -0.02)], -1.0, 1.0), MILK, bowl);
    canvas.fill(&Outline::new().ribbon(&[(-1.22, -0.52), (0.0, -0.46), (1.22, -0.52)], 0.085, 0.085), LIGHT, bowl);
    let spoon = at.on((0.52, 3.56), -0.13, 1.0);
    let wood = QUINCE.with(BRICK, 0.38).tint(0.22);
    canvas.fill(&Outline::new().oval(hand, (0.05, 0.06), (0.34, 0.18), 0.0), SLATE.shade(0.5).thin(0.35), spoon);
    canvas.fill(&Outline::new().ribbon(&[(0.1, 0.0), (1.0, -0.01), (2.1, 0.03)], 0.085, 0.12), wood, spoon);
    canvas.fill(
        &Outline::new().ribbon(&[(0.3, -0.025), (1.0, -0.035), (2.05, 0.0)], 0.02, 0.025),
        LIGHT.thin(0.5),
        spoon,
    );
    canvas.fill(&Outline::new().oval(hand, (0.0, 0.0), (0.34, 0.19), 0.01), wood, spoon);
    canvas.fade(
        &Outline::new().oval(hand, (-0.01, 0.015), (0.27, 0.135), 0.01),
        (-0.2, -0.1),
        (0.2, 0.12),
        &[wood.shade(0.35), wood.tint(0.2)],
        spoon,
    );
}

pub(super) fn teapot(canvas: &mut Canvas, hand: &mut Hand, at: At) {
    table(canvas, hand, 2.9, POT_BLUE.with(SLATE, 0.2), at);
    cast(canvas, hand, (1.52, 3.2), (1.3, 0.2), at);
    let at = at.on((1.52, 2.4), 0.0, 0.95);
    let ink = BRICK;
    let spout = Outline::new().ribbon(&[(-0.58, 0.38), (-0.98, 0.22), (-1.10, -0.16), (-1.38, -0.46)], 0.44, 0.13);
    canvas.fade(&spout, (-1.3, -0.2), (-0.6, 0.5), &[ink.tint(0.25), ink.shade(0.16)], at);
    let ring = [(0.72, -0.36), (1.12, -0.52), (1.36, -0.16), (1.20, 0.28), (0.76, 0.48)];
    canvas.fill(&Outline::new().ribbon(&ring, 0.15, 0.13), ink.shade(0.25), at);
    canvas.fill(&Outline::new().ribbon(&ring, 0.03, 0.03), ink.tint(0.35), at);
    vessel(
        canvas,
        &[(0.42, -0.72), (0.72, -0.56), (0.96, -0.12), (0.98, 0.26), (0.78, 0.64), (0.50, 0.80), (0.52, 0.86)],
        ink,
        at,
    );
    vessel(canvas, &[(0.12, -0.98), (0.30, -0.92), (0.44, -0.80), (0.46, -0.70)], ink.shade(0.12), at);
    canvas.fill(
        &Outline::new().ribbon(&[(-0.47, -0.71), (0.0, -0.67), (0.47, -0.71)], 0.05, 0.05),
        QUINCE.tint(0.3),
        at,
    );
    canvas.fill(&Outline::new().spot(hand, (0.0, -1.06), 0.12, 0.02), QUINCE, at);
    canvas.fill(&Outline::new().spot(hand, (-0.03, -1.10), 0.035, 0.1), LIGHT.thin(0.85), at);
    for (x, y) in [
        (-0.55, -0.10),
        (-0.20, -0.22),
        (0.18, -0.2),
        (0.52, -0.06),
        (-0.38, 0.2),
        (0.0, 0.1),
        (0.36, 0.24),
        (-0.14, 0.46),
        (0.22, 0.52),
        (-0.66, 0.28),
        (-0.45, 0.5),
    ] {
        canvas.fill(&Outline::new().spot(hand, (x, y), 0.075, 0.08), MILK.with(ink, (x + 0.6) * 0.22), at);
    }
    steam(canvas, hand, (-1.36, -0.58), MILK.thin(0.55), at.on((-0.05, 0.0), 0.0, 1.0));
}

/// A blank label in a double frame, with leaves at its corners.
pub(super) fn label_frame(canvas: &mut Canvas, hand: &mut Hand, at: At) {
    let frame = |inset: f32, notch: f32| {
        let (l, t, r, b) = (inset, inset, 3.0 - inset, 4.0 - inset);
        let n = notch;
        Outline::new().polygon(&[
            (l + n, t),
            (r - n, t),
            (r - n * 0.5, t + n * 0.5),
            (r, t + n),
            (r, b - n),
            (r - n * 0.5, b - n * 0.5),
            (r - n, b),
            (l + n, b),
            (l + n * 0.5, b - n * 0.5),
            (l, b - n),
            (l, t + n),
            (l + n * 0.5, t + n * 0.5),
        ])
    };
    canvas.fill(&frame(0.36, 0.36), HEDGE.shade(0.55).thin(0.35), at.on((0.04, 0.05), 0.0, 1.0));
    canvas.fill(&frame(0.36, 0.36), MILK, at);
    canvas.fill(&frame(0.45, 0.34), BRICK, at);
    canvas.fill(&frame(0.475, 0.335), MILK, at);
    canvas.fill(&frame(0.54, 0.32), QUINCE, at);
    canvas.fill(&frame(0.556, 0.32), LIGHT.with(MILK, 0.5), at);
    let ruled = [2.0_f32, 2.32, 2.64, 2.96];
    let mut rules = Outline::new();
    for y in ruled {
        rules = rules.ribbon(&[(0.92, hand.near(y, 0.008)), (1.5, y), (2.08, hand.near(y, 0.008))], 0.014, 0.014);
    }
    canvas.fill(&rules, POT_BLUE.tint(0.35), at);
    for (angle, length) in [(-2.8_f32, 0.56_f32), (-0.34, 0.56), (2.75, 0.42), (0.4, 0.42)] {
        green(canvas, hand, at.on((1.5, 1.12), angle, 1.0), length, HEDGE);
    }
    quince(canvas, hand, at.on((1.5, 1.28), 0.12, 0.3));
    for (x, y, turn) in [(0.40, 0.40, 0.8_f32), (2.60, 0.40, 2.34), (2.60, 3.60, 3.94), (0.40, 3.60, 5.5)] {
        for spread in [-0.62_f32, 0.62, 0.0] {
            green(canvas, hand, at.on((x, y), turn + spread, 1.0), 0.4, HEDGE.with(QUINCE, 0.3));
        }
    }
}
