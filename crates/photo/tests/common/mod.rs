//! Photos of sheets on tables, drawn from seeds, with the truth beside them. Shared by tests and examples.
#![allow(dead_code, reason = "each user needs a part")]
#![allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "test drawings"
)]

use photo::{Homography, Point, Quad, Raster};
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// What a photo shows, for tables of results.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Table {
    /// One colour, clearly another than the paper's.
    Plain,
    /// Pale as the paper: 8 to 16 levels apart.
    Pale,
    /// Boards with grain and joints.
    Wood,
    /// A striped or checked cloth.
    Cloth,
    /// Specks and things lying about.
    Busy,
}

/// A photo and where its sheet lies.
#[derive(Debug)]
pub(crate) struct Scene {
    pub(crate) photo: Raster,
    pub(crate) corners: [Point; 4],
    pub(crate) table: Table,
    pub(crate) tilt_deg: f64,
    pub(crate) paper: &'static str,
    /// Width by height.
    pub(crate) proportion: f64,
}

impl Scene {
    /// The worst distance of a corner from the truth in hundredths of the mean side, whichever corner is named first.
    pub(crate) fn worst(&self, found: &Quad) -> f64 {
        let side = (0..4).map(|at| self.corners[at].far(self.corners[(at + 1) % 4])).sum::<f64>() / 4.0;
        let off = |turn: usize| {
            (0..4).map(|at| self.corners[at].far(found.corners()[(at + turn) % 4])).fold(0.0_f64, f64::max)
        };
        (0..4).map(off).fold(f64::INFINITY, f64::min) / side * 100.0
    }
}

type Color = [f64; 3];

fn mix(one: Color, other: Color, share: f64) -> Color {
    [0, 1, 2].map(|at| one[at] + (other[at] - one[at]) * share)
}

/// A repeatable number from 0 to 1 for whole places.
fn hash(x: i64, y: i64, salt: u64) -> f64 {
    let mut v = (x as u64).wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ (y as u64).wrapping_mul(0xC2B2_AE3D_27D4_EB4F) ^ salt;
    v = (v ^ (v >> 31)).wrapping_mul(0xD6E8_FEB8_6659_FD93);
    v = (v ^ (v >> 32)).wrapping_mul(0xD6E8_FEB8_6659_FD93);
    ((v ^ (v >> 32)) >> 11) as f64 / (1u64 << 53) as f64
}

/// Smooth noise, 0 to 1.
fn cloud(x: f64, y: f64, salt: u64) -> f64 {
    let (ix, iy) = (x.floor(), y.floor());
    let ease = |t: f64| t * t * (3.0 - 2.0 * t);
    let (fx, fy) = (ease(x - ix), ease(y - iy));
    let at = |dx: i64, dy: i64| hash(ix as i64 + dx, iy as i64 + dy, salt);
    let (top, bottom) = (at(0, 0) + (at(1, 0) - at(0, 0)) * fx, at(0, 1) + (at(1, 1) - at(0, 1)) * fx);
    top + (bottom - top) * fy
}

fn any_color(random: &mut ChaCha8Rng, from: f64, to: f64) -> Color {
    [0; 3].map(|_| random.random_range(from..to))
}

/// What is printed on a sheet: a colour for each place of it (0 to 1 across and down).
pub(crate) struct Paper {
    kind: &'static str,
    ground: Color,
    inks: [Color; 3],
    pitch: f64,
    margin: f64,
    salt: u64,
    /// Straight lines across the sheet or parts of it: vertical, place, from, to.
    panels: Vec<(f64, f64, f64, f64, Color)>,
}

impl Paper {
    fn new(random: &mut ChaCha8Rng) -> Self {
        let kind = ["plain", "dots", "stripes", "plaid", "flowers", "collage", "tiles"][random.random_range(0..7)];
        let base = random.random_range(212.0..246.0);
        let ground = [0; 3].map(|_| base + random.random_range(-9.0..9.0));
        let inks = [0; 3].map(|_| any_color(random, 60.0, 225.0));
        let mut panels = Vec::new();
        if kind == "collage" {
            let (a, b) = (random.random_range(0.3..0.7), random.random_range(0.3..0.7));
            let gap = if random.random_bool(0.5) { 0.02 } else { 0.0 };
            for (l, t, r, bt) in [(0.0, 0.0, a, b), (a, 0.0, 1.0, b), (0.0, b, a, 1.0), (a, b, 1.0, 1.0)] {
                panels.push((l + gap, t + gap, r - gap, bt - gap, any_color(random, 110.0, 245.0)));
            }
        }
        let margin = if random.random_bool(0.3) { random.random_range(0.02..0.06) } else { 0.0 };
        Self { kind, ground, inks, pitch: random.random_range(0.04..0.12), margin, salt: random.random(), panels }
    }

    fn color(&self, u: f64, v: f64) -> Color {
        let m = self.margin;
        if u < m || v < m || u > 1.0 - m || v > 1.0 - m {
            return self.ground;
        }
        let p = self.pitch;
        let (cu, cv) = ((u / p).fract() - 0.5, (v / p).fract() - 0.5);
        match self.kind {
            "dots" => {
                if cu * cu + cv * cv < 0.07 {
                    self.inks[0]
                } else {
                    self.ground
                }
            }
            "stripes" => {
                if cu > 0.0 {
                    mix(self.ground, self.inks[0], 0.6)
                } else {
                    self.ground
                }
            }
            "plaid" => {
                let one = if cu.abs() < 0.22 { mix(self.ground, self.inks[0], 0.5) } else { self.ground };
                if cv.abs() < 0.18 { mix(one, self.inks[1], 0.5) } else { one }
            }
            "flowers" => {
                for dx in -1..=1 {
                    for dy in -1..=1 {
                        let (x, y) = ((u / p).floor() as i64 + dx, (v / p).floor() as i64 + dy);
                        let cx = (x as f64 + hash(x, y, self.salt)) * p;
                        let cy = (y as f64 + hash(x, y, self.salt ^ 1)) * p;
                        let r = p * (0.2 + 0.3 * hash(x, y, self.salt ^ 2));
                        let turn = libm::atan2(v - cy, u - cx);
                        let reach = r * (0.75 + 0.25 * libm::cos(5.0 * turn));
                        let far = libm::hypot(u - cx, v - cy);
                        if far < r * 0.25 {
                            return self.inks[2];
                        }
                        if far < reach {
                            return self.inks[(hash(x, y, self.salt ^ 3) * 2.0) as usize];
                        }
                    }
                }
                self.ground
            }
            "collage" => {
                let inside = |p: &&(f64, f64, f64, f64, Color)| u >= p.0 && u < p.2 && v >= p.1 && v < p.3;
                self.panels.iter().find(inside).map_or(self.ground, |panel| {
                    if (u * 30.0).fract() < 0.2 { mix(panel.4, self.ground, 0.4) } else { panel.4 }
                })
            }
            "tiles" => {
                let side = p * 2.0;
                let (x, y) = ((u / side).floor() as i64, (v / side).floor() as i64);
                self.inks[(hash(x, y, self.salt) * 3.0) as usize]
            }
            _ => self.ground,
        }
    }
}

struct Ground {
    table: Table,
    colors: [Color; 3],
    pitch: f64,
    turn: f64,
    salt: u64,
}

impl Ground {
    fn new(random: &mut ChaCha8Rng, paper: &Paper) -> Self {
        let table = [Table::Plain, Table::Pale, Table::Wood, Table::Cloth, Table::Busy][random.random_range(0..5)];
        let first = match table {
            Table::Plain => any_color(random, 40.0, 150.0),
            Table::Pale => {
                let by = random.random_range(8.0..16.0) * if random.random_bool(0.7) { -1.0 } else { 1.0 };
                paper.ground.map(|value| (value + by + random.random_range(-3.0..3.0)).min(253.0))
            }
            Table::Wood => {
                [random.random_range(90.0..170.0), random.random_range(60.0..120.0), random.random_range(30.0..80.0)]
            }
            Table::Cloth | Table::Busy => any_color(random, 60.0, 200.0),
        };
        let colors = [first, any_color(random, 40.0, 220.0), any_color(random, 40.0, 220.0)];
        let (pitch, turn) = (random.random_range(0.05..0.25), random.random_range(0.0..std::f64::consts::TAU));
        Self { table, colors, pitch, turn, salt: random.random() }
    }

    fn color(&self, u: f64, v: f64) -> Color {
        let (c, s) = (libm::cos(self.turn), libm::sin(self.turn));
        let (x, y) = (u * c - v * s, u * s + v * c);
        match self.table {
            Table::Plain | Table::Pale => {
                let cloudy =
                    (cloud(x * 3.0, y * 3.0, self.salt) - 0.5) * if self.table == Table::Pale { 3.0 } else { 14.0 };
                self.colors[0].map(|value| value + cloudy)
            }
            Table::Wood => {
                let grain = cloud(x * 60.0 + 2.0 * cloud(x * 4.0, y * 2.0, self.salt), y * 2.0, self.salt) - 0.5;
                let board = hash((x / 0.45).floor() as i64, 0, self.salt) - 0.5;
                let joint = if (x / 0.45).fract().abs() < 0.012 { -45.0 } else { 0.0 };
                self.colors[0].map(|value| value + grain * 34.0 + board * 30.0 + joint)
            }
            Table::Cloth => {
                let one = if (x / self.pitch).rem_euclid(1.0) < 0.5 {
                    self.colors[0]
                } else {
                    mix(self.colors[0], self.colors[1], 0.6)
                };
                if (y / self.pitch).rem_euclid(1.0) < 0.5 { one } else { mix(one, self.colors[2], 0.35) }
            }
            Table::Busy => {
                let speck = (cloud(x * 45.0, y * 45.0, self.salt) - 0.5) * 60.0;
                let mut color = self.colors[0].map(|value| value + speck);
                for thing in 0..9_i64 {
                    let place = |salt: u64, most: f64| (hash(thing, 7, self.salt ^ salt) - 0.5) * most;
                    let (dx, dy) = (x - place(1, 4.0), y - place(2, 4.0));
                    let (c, s) = (libm::cos(place(3, 6.0)), libm::sin(place(3, 6.0)));
                    let (px, py) = (dx * c - dy * s, dx * s + dy * c);
                    let lies = match thing % 3 {
                        0 => px.abs() < 0.03 && py.abs() < 0.5,
                        1 => px * px + py * py < 0.03,
                        _ => px.abs() < 0.2 && py.abs() < 0.14,
                    };
                    if lies {
                        color = self.colors[1 + (thing % 2) as usize];
                    }
                }
                color
            }
        }
    }
}

/// How the light falls: a lamp's slope, and a shadow with a soft edge.
struct Light {
    slope: [f64; 2],
    shadow: f64,
    edge: [f64; 3],
    soft: f64,
    tint: Color,
}

impl Light {
    fn new(random: &mut ChaCha8Rng) -> Self {
        let turn = random.random_range(0.0..std::f64::consts::TAU);
        Self {
            slope: [random.random_range(-0.3..0.3), random.random_range(-0.3..0.3)],
            shadow: if random.random_bool(0.5) { random.random_range(0.15..0.45) } else { 0.0 },
            edge: [libm::cos(turn), libm::sin(turn), random.random_range(-0.3..0.3)],
            soft: random.random_range(0.02..0.15),
            tint: [random.random_range(0.94..1.0), random.random_range(0.92..0.98), random.random_range(0.78..0.98)],
        }
    }

    /// For a place of the photo, −0.5 to 0.5 both ways.
    fn at(&self, x: f64, y: f64) -> Color {
        let lamp = 1.0 + self.slope[0] * x + self.slope[1] * y;
        let into = (self.edge[0] * x + self.edge[1] * y - self.edge[2]) / self.soft;
        let shade = 1.0 - self.shadow / (1.0 + libm::exp(-4.0 * into));
        self.tint.map(|tint| tint * lamp.min(1.04) * shade)
    }
}

/// A photo `wide` pixels across (3 to 4) of a sheet seen at up to 40°, from a seed.
pub(crate) fn scene(seed: u64, wide: usize) -> Scene {
    let mut random = ChaCha8Rng::seed_from_u64(seed);
    let high = wide * 3 / 4;
    let paper = Paper::new(&mut random);
    let ground = Ground::new(&mut random, &paper);
    let light = Light::new(&mut random);
    let ((corners, tilt_deg, back), proportion) = loop {
        let aspect = [1.0, 8.5 / 11.0, 11.0 / 8.5, 1.0][random.random_range(0..4)];
        if let Some(seen) = camera(&mut random, wide as f64, high as f64, aspect) {
            break (seen, aspect);
        }
    };
    let near_shadow =
        (random.random_range(0.006..0.03), random.random_range(0.0..0.35), random.random_range(-1.0..1.0));
    let noise = random.random_range(1.0..4.0);
    let color_at = |x: f64, y: f64| {
        let at = back.apply(Point::new(x, y));
        let (u, v) = (at.x, at.y);
        let color = if (0.0..1.0).contains(&u) && (0.0..1.0).contains(&v) {
            paper.color(u, v)
        } else {
            // A sheet lies a little off the table: a thin soft shadow on one side.
            let (du, dv) = (u - near_shadow.0 * near_shadow.2, v - near_shadow.0);
            let off = (-du).max(du - 1.0).max(-dv).max(dv - 1.0).max(0.0);
            let shade = 1.0 - near_shadow.1 * libm::exp(-off / near_shadow.0 * 2.0);
            ground.color(u, v).map(|value| value * shade)
        };
        let light = light.at(x / wide as f64 - 0.5, y / high as f64 - 0.5);
        [0, 1, 2].map(|at| color[at] * light[at])
    };
    let mut rgb = Vec::with_capacity(wide * high * 3);
    for y in 0..high {
        for x in 0..wide {
            let mut sum = [0.0; 3];
            for (dx, dy) in [(0.125, 0.375), (0.375, 0.875), (0.625, 0.125), (0.875, 0.625)] {
                let color = color_at(x as f64 + dx, y as f64 + dy);
                sum = [0, 1, 2].map(|at| sum[at] + color[at] / 4.0);
            }
            let grain = (0..4).map(|_| random.random_range(-1.0..1.0)).sum::<f64>() * 0.87 * noise;
            let speck = [0; 3].map(|_| random.random_range(-0.8..0.8) * noise);
            rgb.extend([0, 1, 2].map(|at| (sum[at] + grain + speck[at]).clamp(0.0, 255.0).round() as u8));
        }
    }
    let photo = Raster::new(wide, high, rgb).expect("a picture of that size");
    Scene { photo, corners, table: ground.table, tilt_deg, paper: paper.kind, proportion }
}

/// A sheet before a pinhole camera: its corners, the tilt, and the way from the photo to the sheet (0 to 1); `None` if it is
/// not wholly in the photo or too small in it.
fn camera(random: &mut ChaCha8Rng, wide: f64, high: f64, aspect: f64) -> Option<([Point; 4], f64, Homography)> {
    let tilt_deg: f64 = random.random_range(0.0..40.0);
    let (axis, roll) = (random.random_range(0.0..std::f64::consts::TAU), random.random_range(-0.6..0.6_f64));
    let focal = wide * random.random_range(0.75..1.2);
    let far = random.random_range(1.0..1.8) * focal / high;
    let shift = (random.random_range(-0.1..0.1) * far, random.random_range(-0.1..0.1) * far);
    let (st, ct) = (libm::sin(tilt_deg.to_radians()), libm::cos(tilt_deg.to_radians()));
    let (ax, ay) = (libm::cos(axis), libm::sin(axis));
    let seen = |u: f64, v: f64| {
        let (x, y) = (u * aspect.sqrt(), v / aspect.sqrt());
        let (x, y) = (x * libm::cos(roll) - y * libm::sin(roll), x * libm::sin(roll) + y * libm::cos(roll));
        // Turned about the axis (ax, ay) in the plane by the tilt.
        let along = x * ax + y * ay;
        let across = -x * ay + y * ax;
        let (px, py) = (along * ax - across * ct * ay, along * ay + across * ct * ax);
        let z = far + across * st;
        Point::new(wide / 2.0 + focal * (px + shift.0) / z, high / 2.0 + focal * (py + shift.1) / z)
    };
    let corners = [seen(-0.5, -0.5), seen(0.5, -0.5), seen(0.5, 0.5), seen(-0.5, 0.5)];
    let inside = |at: &Point| at.x > wide * 0.02 && at.y > high * 0.02 && at.x < wide * 0.98 && at.y < high * 0.98;
    let quad = Quad::new(corners).ok()?;
    if !corners.iter().all(inside) || quad.side() < 0.4 * high {
        return None;
    }
    let flat = [Point::new(0.0, 0.0), Point::new(1.0, 0.0), Point::new(1.0, 1.0), Point::new(0.0, 1.0)];
    Some((corners, tilt_deg, Homography::between(corners, flat)?))
}
