//! Interest on sheets of known motifs, drawn here from seeds, with noise and uneven light.
#![allow(clippy::unwrap_used, reason = "tests")]
#![allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "test drawings"
)]

use photo::{Interest, Motif, Raster};
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// Pixels an inch, and inches a side.
const DOTS: usize = 60;
const INCHES: usize = 12;
/// Marks of 1/8 in.
const CELLS: usize = INCHES * 8;

/// A motif's middle and half axes in inches: a round flower with petals and a heart.
struct Flower {
    x: f64,
    y: f64,
    wide: f64,
    high: f64,
    color: [f64; 3],
}

impl Flower {
    fn apart(&self, other: &Flower) -> bool {
        (self.x - other.x).abs() > self.wide + other.wide + 0.15
            || (self.y - other.y).abs() > self.high + other.high + 0.15
    }

    fn color_at(&self, x: f64, y: f64) -> Option<[f64; 3]> {
        let (dx, dy) = ((x - self.x) / self.wide, (y - self.y) / self.high);
        let far = dx.hypot(dy);
        let petals = 0.86 + 0.14 * (8.0 * dy.atan2(dx)).cos();
        (far < petals).then_some(if far < 0.3 { [240.0, 205.0, 90.0] } else { self.color })
    }

    fn share_of(&self, motif: &Motif) -> f64 {
        let own = [self.x - self.wide, self.y - self.high, self.x + self.wide, self.y + self.high].map(|v| v * 8.0);
        let other = [motif.left, motif.top, motif.right, motif.bottom].map(|v| v as f64);
        let both = (own[2].min(other[2]) - own[0].max(other[0])).max(0.0)
            * (own[3].min(other[3]) - own[1].max(other[1])).max(0.0);
        let area = |b: [f64; 4]| (b[2] - b[0]) * (b[3] - b[1]);
        both / (area(own) + area(other) - both)
    }
}

fn sheet(seed: u64) -> (Raster, Vec<Flower>) {
    let mut random = ChaCha8Rng::seed_from_u64(seed);
    let inches = INCHES as f64;
    let mut flowers: Vec<Flower> = Vec::new();
    for _ in 0..400 {
        let (wide, high) = (random.random_range(0.35..1.4), random.random_range(0.35..1.4));
        let flower = Flower {
            x: random.random_range(wide + 0.1..inches - wide - 0.1),
            y: random.random_range(high + 0.1..inches - high - 0.1),
            wide,
            high,
            color: [
                random.random_range(60.0..200.0),
                random.random_range(40.0..130.0),
                random.random_range(60.0..200.0),
            ],
        };
        if flowers.iter().all(|other| flower.apart(other)) && flowers.len() < 24 {
            flowers.push(flower);
        }
    }
    let slope = [random.random_range(-0.25..0.25), random.random_range(-0.25..0.25)];
    let ground = [238.0, 230.0, 214.0];
    let side = DOTS * INCHES;
    let mut rgb = Vec::with_capacity(side * side * 3);
    for row in 0..side {
        for column in 0..side {
            let (x, y) = ((column as f64 + 0.5) / DOTS as f64, (row as f64 + 0.5) / DOTS as f64);
            let color = flowers.iter().find_map(|flower| flower.color_at(x, y)).unwrap_or(ground);
            let lamp = 1.0 + slope[0] * (x / inches - 0.5) + slope[1] * (y / inches - 0.5);
            rgb.extend(color.map(|v| (v * lamp + random.random_range(-6.0..6.0)).clamp(0.0, 255.0) as u8));
        }
    }
    (Raster::new(side, side, rgb).unwrap(), flowers)
}

#[test]
fn motifs_are_found_where_they_were_drawn() {
    let (mut drawn, mut found, mut both) = (0, 0, 0);
    for seed in 0..6 {
        let (picture, flowers) = sheet(seed);
        let interest = Interest::of(&picture, CELLS, CELLS, 4.0);
        drawn += flowers.len();
        found += interest.motifs().len();
        both += flowers.iter().filter(|f| interest.motifs().iter().any(|motif| f.share_of(motif) > 0.7)).count();
        // A cell within a motif weighs at least three times as much as one on the ground.
        let (mut inside, mut outside) = ((0.0, 0.0), (0.0, 0.0));
        for (at, weight) in interest.weights().iter().enumerate() {
            let (x, y) = ((at % CELLS) as f64 / 8.0 + 0.0625, (at / CELLS) as f64 / 8.0 + 0.0625);
            let on = flowers.iter().any(|flower| flower.color_at(x, y).is_some());
            let sum = if on { &mut inside } else { &mut outside };
            *sum = (sum.0 + f64::from(*weight), sum.1 + 1.0);
        }
        let (inside, outside) = (inside.0 / inside.1, outside.0 / outside.1);
        assert!(inside > 3.0 * outside, "seed {seed}: {inside} {outside}");
    }
    // Measured: see `docs/photo.md`.
    let (recall, precision) = (f64::from(both as u32) / drawn as f64, both as f64 / found as f64);
    assert!(recall > 0.95 && precision > 0.95, "{both} of {drawn} drawn, of {found} found");
}

#[test]
fn plain_and_striped_sheets_have_no_motif() {
    let side = 360;
    let draw = |color: &dyn Fn(usize, usize) -> [u8; 3]| {
        let rgb = (0..side * side).flat_map(|at| color(at % side, at / side)).collect();
        Raster::new(side, side, rgb).unwrap()
    };
    let plain = Interest::of(&draw(&|_, _| [200, 180, 160]), 96, 96, 4.0);
    assert!(plain.motifs().is_empty() && plain.weights().iter().all(|weight| *weight == 0));
    let stripes = draw(&|x, _| if x / 30 % 2 == 0 { [200, 180, 160] } else { [90, 120, 160] });
    assert!(Interest::of(&stripes, 96, 96, 4.0).motifs().is_empty());
    let checks = draw(&|x, y| if (x / 40 + y / 40) % 2 == 0 { [200, 180, 160] } else { [90, 120, 160] });
    assert!(Interest::of(&checks, 96, 96, 4.0).motifs().is_empty());
}

#[test]
fn a_picture_in_a_printed_panel_is_found() {
    // Four panels of different grounds, a disc in each: 180 pixels are 12 cells wide.
    let side = 360_usize;
    let grounds = [[230, 220, 190], [160, 190, 210], [200, 160, 150], [120, 150, 120]];
    let rgb = (0..side * side).flat_map(|at| {
        let (x, y) = (at % side, at / side);
        let (dx, dy) = ((x % 180).abs_diff(90), (y % 180).abs_diff(90));
        if dx * dx + dy * dy < 50 * 50 { [60, 50, 110] } else { grounds[x / 180 + y / 180 * 2] }
    });
    let interest = Interest::of(&Raster::new(side, side, rgb.collect()).unwrap(), 24, 24, 1.0);
    let boxes: Vec<[usize; 4]> = interest.motifs().iter().map(|m| [m.left, m.top, m.right, m.bottom]).collect();
    assert_eq!(boxes, [[2, 2, 10, 10], [2, 14, 10, 22], [14, 2, 22, 10], [14, 14, 22, 22]]);
}

#[test]
fn odd_grids_and_tiny_pictures_are_no_trouble() {
    for (w, h) in [(1, 1), (2, 7), (300, 1)] {
        let picture = Raster::new(w, h, (0..w * h * 3).map(|v| (v * 37 % 251) as u8).collect()).unwrap();
        for (columns, rows, least) in [(0, 0, 0.0), (5, 700, f64::NAN), (1, 1, -3.0), (9, 9, f64::INFINITY)] {
            let interest = Interest::of(&picture, columns, rows, least);
            assert_eq!(interest.weights().len(), interest.columns() * interest.rows());
            assert!(interest.motifs().iter().all(|m| m.right <= interest.columns() && m.bottom <= interest.rows()));
        }
    }
}
