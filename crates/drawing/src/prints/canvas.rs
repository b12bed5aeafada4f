//! A sheet to draw on in inches, and the outlines a hand would draw.

use super::cover::{BLOCK, Cover};
use super::hand::{Hand, Point, direction};
use super::ink::Ink;

/// Where a motif stands: its own inches → the sheet's. The point (x, y) goes to (a·x + c·y + e, b·x + d·y + f).
#[derive(Debug, Clone, Copy)]
pub(super) struct At {
    a: f32,
    b: f32,
    c: f32,
    d: f32,
    e: f32,
    f: f32,
}

impl At {
    pub(super) const SHEET: At = At { a: 1.0, b: 0.0, c: 0.0, d: 1.0, e: 0.0, f: 0.0 };

    /// Its origin at `point`, turned by `angle` radians, `size` times as large.
    pub(super) fn new(point: Point, angle: f32, size: f32) -> At {
        let (cos, sin) = direction(angle);
        At { a: cos * size, b: sin * size, c: -sin * size, d: cos * size, e: point.0, f: point.1 }
    }

    /// A place within this place.
    pub(super) fn then(self, inner: At) -> At {
        let (e, f) = self.point((inner.e, inner.f));
        At {
            a: self.a * inner.a + self.c * inner.b,
            b: self.b * inner.a + self.d * inner.b,
            c: self.a * inner.c + self.c * inner.d,
            d: self.b * inner.c + self.d * inner.d,
            e,
            f,
        }
    }

    /// A place at `point` within this one, its two directions scaled apart.
    pub(super) fn squeezed(self, point: Point, scale: Point) -> At {
        self.then(At { a: scale.0, b: 0.0, c: 0.0, d: scale.1, e: point.0, f: point.1 })
    }

    /// A shorthand for [`At::then`] with a point, an angle and a size.
    pub(super) fn on(self, point: Point, angle: f32, size: f32) -> At {
        self.then(At::new(point, angle, size))
    }

    fn point(self, (x, y): Point) -> Point {
        (self.a * x + self.c * y + self.e, self.b * x + self.d * y + self.f)
    }

    /// The same, `times` as large from the sheet's corner: inches → pixels.
    fn scaled(self, times: f32) -> At {
        let At { a, b, c, d, e, f } = self;
        At { a: a * times, b: b * times, c: c * times, d: d * times, e: e * times, f: f * times }
    }

    /// The way back; `None` where everything lies on one line.
    fn back(self) -> Option<At> {
        let At { a, b, c, d, e, f } = self;
        let scale = a * d - b * c;
        if scale.abs() < 1e-12 {
            return None;
        }
        let (a, b, c, d) = (d / scale, -b / scale, -c / scale, a / scale);
        Some(At { a, b, c, d, e: -(a * e + c * f), f: -(b * e + d * f) })
    }
}

/// Opaque pixels with a scale.
#[derive(Debug)]
pub(super) struct Canvas {
    /// Red, green, blue and 255 of each, row by row.
    pub(super) pixels: Vec<u8>,
    pub(super) across: u32,
    pub(super) down: u32,
    pub(super) pixels_per_inch: f32,
    /// Inches.
    pub(super) width: f32,
    /// Inches.
    pub(super) height: f32,
    cover: Cover,
}

/// How a shape is filled, told in pixels.
enum Paint {
    Flat(Tone),
    Run(At, Tones),
    Glow(At, Tones),
}

/// Four channels, the last opaque, and how much they cover (0–1).
type Tone = ([u8; 4], f32);

/// Tones of a run of inks, evenly spaced.
struct Tones(Vec<Tone>);

/// Few enough to be quick, more than a print shows.
const TONES: u16 = 128;

impl Tones {
    fn new(inks: &[Ink]) -> Option<Tones> {
        let (first, last) = (inks.first()?, inks.len() - 1);
        let tone = |step: u16| {
            let at = f32::from(step) / f32::from(TONES) * last as f32;
            let index = at as usize;
            let from = inks.get(index).unwrap_or(first);
            from.with(*inks.get(index + 1).unwrap_or(from), at - index as f32).paint()
        };
        Some(Tones((0..=TONES).map(tone).collect()))
    }

    /// The tones at shares (0–1) of the run: the colours of a block, its covers made weaker by theirs.
    fn at(&self, shares: &[f32; BLOCK], inks: &mut Inks, covers: &mut [f32; BLOCK]) {
        let steps = shares.map(|share| whole(share.clamp(0.0, 1.0) * f32::from(TONES)));
        for ((step, ink), cover) in steps.into_iter().zip(inks.chunks_exact_mut(4)).zip(covers) {
            if let Some((color, strength)) = self.0.get(usize::from(step)) {
                ink.copy_from_slice(color);
                *cover *= strength;
            }
        }
    }
}

/// The pixels of a block, or what is laid over them.
type Inks = [u8; BLOCK * 4];

/// The nearest whole number of one in 0–256, in a way that many can be told at once.
fn whole(number: f32) -> u16 {
    // From 2^23 on a float's last bits count ones.
    ((number + 8_388_608.0).to_bits() & 0x1FF) as u16
}

/// Lays colours over the pixels of a block; of both 256 parts in all.
fn blend(pixels: &mut Inks, inks: &Inks, covers: &[f32; BLOCK]) {
    let mut over = [0_u16; BLOCK * 4];
    for (over, cover) in over.chunks_exact_mut(4).zip(covers) {
        over.fill(whole(cover * 256.0));
    }
    for ((pixel, ink), over) in pixels.iter_mut().zip(inks).zip(over) {
        // At most 255 · 256 + 128: 16 bits hold it.
        let under = 256_u16.wrapping_sub(over);
        let sum = u16::from(*pixel).wrapping_mul(under).wrapping_add(u16::from(*ink).wrapping_mul(over));
        *pixel = (sum.wrapping_add(128) >> 8) as u8;
    }
}

impl Canvas {
    pub(super) fn new(across: u32, down: u32, pixels_per_inch: f32) -> Canvas {
        let (width, height) = (across as f32 / pixels_per_inch, down as f32 / pixels_per_inch);
        let pixels = vec![255; across as usize * down as usize * 4];
        Canvas { pixels, across, down, pixels_per_inch, width, height, cover: Cover::new(across, down) }
    }

    pub(super) fn ground(&mut self, ink: Ink) {
        let [red, green, blue] = ink.channels().map(|channel| (channel + 0.5) as u8);
        for pixel in self.pixels.chunks_exact_mut(4) {
            pixel.copy_from_slice(&[red, green, blue, 255]);
        }
    }

    /// Copies another canvas in, its top left corner at a pixel of this one; what lies outside is left off.
    pub(super) fn put(&mut self, other: &Canvas, x: u32, y: u32) {
        let wide = other.across.min(self.across.saturating_sub(x)) as usize * 4;
        let from = other.pixels.chunks_exact(other.across as usize * 4);
        let to = self.pixels.chunks_exact_mut(self.across as usize * 4).skip(y as usize);
        for (to, from) in to.zip(from) {
            to[x as usize * 4..][..wide].copy_from_slice(&from[..wide]);
        }
    }

    pub(super) fn fill(&mut self, outline: &Outline, ink: Ink, at: At) {
        self.lay(outline, &Paint::Flat(ink.paint()), at);
    }

    /// Fills with inks running from one point to another, evenly spaced.
    pub(super) fn fade(&mut self, outline: &Outline, from: Point, to: Point, inks: &[Ink], at: At) {
        let (x, y) = (to.0 - from.0, to.1 - from.1);
        // Its own x runs from 0 to 1 along the line.
        let along = At { a: x, b: y, c: -y, d: x, e: from.0, f: from.1 };
        self.run(outline, along, inks, at, Paint::Run);
    }

    /// Fills with inks running outwards from a point.
    pub(super) fn glow(&mut self, outline: &Outline, middle: Point, radius: f32, inks: &[Ink], at: At) {
        let around = At { a: radius, b: 0.0, c: 0.0, d: radius, e: middle.0, f: middle.1 };
        self.run(outline, around, inks, at, Paint::Glow);
    }

    fn run(&mut self, outline: &Outline, own: At, inks: &[Ink], at: At, paint: fn(At, Tones) -> Paint) {
        let back = at.then(own).scaled(self.pixels_per_inch).back();
        if let (Some(back), Some(tones)) = (back, Tones::new(inks)) {
            self.lay(outline, &paint(back, tones), at);
        }
    }

    fn lay(&mut self, outline: &Outline, paint: &Paint, at: At) {
        const PLACES: [f32; BLOCK] = places();
        outline.edges(at.scaled(self.pixels_per_inch), &mut self.cover);
        let wide = self.across as usize;
        let pixels = &mut self.pixels;
        let mut inks: Inks = [255; BLOCK * 4];
        if let Paint::Flat((color, _)) = paint {
            inks.chunks_exact_mut(4).for_each(|ink| ink.copy_from_slice(color));
        }
        self.cover.take(|y, x, covers| {
            let middle = (x as f32 + 0.5, y as f32 + 0.5);
            match paint {
                Paint::Flat((_, strength)) => covers.iter_mut().for_each(|cover| *cover *= strength),
                Paint::Run(back, tones) => {
                    let start = back.point(middle).0;
                    tones.at(&PLACES.map(|place| start + back.a * place), &mut inks, covers);
                }
                Paint::Glow(back, tones) => {
                    let (u, v) = back.point(middle);
                    let square = |u: f32, v: f32| u * u + v * v;
                    let shares = PLACES.map(|place| square(u + back.a * place, v + back.b * place).sqrt());
                    tones.at(&shares, &mut inks, covers);
                }
            }
            let start = (y * wide + x) * 4;
            let count = BLOCK.min(wide.saturating_sub(x)) * 4;
            if count == 0 {
                // The spare block beyond a row that is whole blocks wide.
                return;
            }
            let row = &mut pixels[start..start + count];
            if let Ok(whole) = row.try_into() {
                blend(whole, &inks, covers);
            } else {
                // The last block of a row.
                let mut part: Inks = [0; BLOCK * 4];
                part[..count].copy_from_slice(row);
                blend(&mut part, &inks, covers);
                row.copy_from_slice(&part[..count]);
            }
        });
    }
}

/// 0, 1, 2 …: the pixels of a block.
const fn places() -> [f32; BLOCK] {
    let mut places = [0.0; BLOCK];
    let mut index = 1;
    while index < BLOCK {
        places[index] = places[index - 1] + 1.0;
        index += 1;
    }
    places
}

/// One stretch of an outline.
#[derive(Debug, Clone, Copy)]
enum Stretch {
    Move(Point),
    Line(Point),
    Curve(Point, Point, Point),
}

/// One or more closed shapes, filled together; all the same way round.
#[derive(Debug, Clone, Default)]
pub(super) struct Outline {
    stretches: Vec<Stretch>,
}

/// How far a flattened curve may lie off, in pixels.
const FLATNESS: f32 = 0.08;

impl Outline {
    pub(super) fn new() -> Outline {
        Outline::default()
    }

    /// Its edges, closed, in pixels.
    fn edges(&self, to_pixels: At, cover: &mut Cover) {
        let (mut start, mut here) = ((0.0, 0.0), (0.0, 0.0));
        for stretch in &self.stretches {
            match *stretch {
                Stretch::Move(to) => {
                    cover.edge(here, start);
                    start = to_pixels.point(to);
                    here = start;
                }
                Stretch::Line(to) => {
                    let to = to_pixels.point(to);
                    cover.edge(here, to);
                    here = to;
                }
                Stretch::Curve(one, two, to) => {
                    let (one, two, to) = (to_pixels.point(one), to_pixels.point(two), to_pixels.point(to));
                    flatten(here, one, two, to, cover);
                    here = to;
                }
            }
        }
        cover.edge(here, start);
    }

    /// A smooth closed line through the points.
    pub(super) fn closed(mut self, points: &[Point]) -> Outline {
        let n = points.len();
        if n < 3 {
            return self;
        }
        self.stretches.push(Stretch::Move((points[0].0, points[0].1)));
        for i in 0..n {
            self.bend(points[(i + n - 1) % n], points[i], points[(i + 1) % n], points[(i + 2) % n]);
        }
        self
    }

    /// A closed shape of two smooth sides that meet in points: `there` and back along `back`.
    pub(super) fn two_sided(mut self, there: &[Point], back: &[Point]) -> Outline {
        let Some(first) = there.first() else { return self };
        self.stretches.push(Stretch::Move((first.0, first.1)));
        self.along(there);
        self.along(back);
        self
    }

    /// Straight edges.
    pub(super) fn polygon(mut self, points: &[Point]) -> Outline {
        for (i, p) in points.iter().enumerate() {
            if i == 0 {
                self.stretches.push(Stretch::Move((p.0, p.1)));
            } else {
                self.stretches.push(Stretch::Line((p.0, p.1)));
            }
        }
        self
    }

    pub(super) fn rect(self, x: f32, y: f32, width: f32, height: f32) -> Outline {
        self.polygon(&[(x, y), (x + width, y), (x + width, y + height), (x, y + height)])
    }

    /// A round spot, off true by `wobble` of its radius.
    pub(super) fn spot(self, hand: &mut Hand, middle: Point, radius: f32, wobble: f32) -> Outline {
        self.oval(hand, middle, (radius, radius), wobble)
    }

    pub(super) fn oval(self, hand: &mut Hand, middle: Point, radii: Point, wobble: f32) -> Outline {
        const ROUND: [Point; 8] = [
            (1.0, 0.0),
            (std::f32::consts::FRAC_1_SQRT_2, std::f32::consts::FRAC_1_SQRT_2),
            (0.0, 1.0),
            (-std::f32::consts::FRAC_1_SQRT_2, std::f32::consts::FRAC_1_SQRT_2),
            (-1.0, 0.0),
            (-std::f32::consts::FRAC_1_SQRT_2, -std::f32::consts::FRAC_1_SQRT_2),
            (0.0, -1.0),
            (std::f32::consts::FRAC_1_SQRT_2, -std::f32::consts::FRAC_1_SQRT_2),
        ];
        let points = ROUND.map(|(x, y)| {
            let reach = hand.near(1.0, wobble);
            (middle.0 + x * radii.0 * reach, middle.1 + y * radii.1 * reach)
        });
        self.closed(&points)
    }

    /// A brush stroke along a smooth line, `from` wide at its start, `to` at its end.
    pub(super) fn ribbon(mut self, line: &[Point], from: f32, to: f32) -> Outline {
        let spine = smooth(line);
        let last = spine.len();
        if last < 2 {
            return self;
        }
        let mut right = Vec::with_capacity(last);
        for i in 0..last {
            let (before, after) = (spine[i.saturating_sub(1)], spine[(i + 1).min(last - 1)]);
            let (dx, dy) = (after.0 - before.0, after.1 - before.1);
            let long = (dx * dx + dy * dy).sqrt().max(1e-6);
            let half = (from + (to - from) * (i as f32 / (last - 1) as f32)) / 2.0;
            let (nx, ny) = (-dy / long * half, dx / long * half);
            let here = spine[i];
            if i == 0 {
                self.stretches.push(Stretch::Move((here.0 - nx, here.1 - ny)));
            } else {
                self.stretches.push(Stretch::Line((here.0 - nx, here.1 - ny)));
            }
            right.push((here.0 + nx, here.1 + ny));
        }
        for p in right.iter().rev() {
            self.stretches.push(Stretch::Line((p.0, p.1)));
        }
        self
    }

    fn along(&mut self, points: &[Point]) {
        let n = points.len();
        for i in 1..n {
            self.bend(points[i.saturating_sub(2)], points[i - 1], points[i], points[(i + 1).min(n - 1)]);
        }
    }

    /// One piece of a Catmull–Rom line, as a cubic.
    fn bend(&mut self, p0: Point, p1: Point, p2: Point, p3: Point) {
        self.stretches.push(Stretch::Curve(
            (p1.0 + (p2.0 - p0.0) / 6.0, p1.1 + (p2.1 - p0.1) / 6.0),
            (p2.0 - (p3.0 - p1.0) / 6.0, p2.1 - (p3.1 - p1.1) / 6.0),
            p2,
        ));
    }
}

/// A cubic as edges, as many as its bend asks for.
///
/// # Source
/// Wang's bound on the distance of a Bézier curve from its chords (1984); from memory.
fn flatten(p0: Point, p1: Point, p2: Point, p3: Point, cover: &mut Cover) {
    let bend = |a: f32, b: f32, c: f32| (a - 2.0 * b + c).abs();
    let first = bend(p0.0, p1.0, p2.0) + bend(p0.1, p1.1, p2.1);
    let second = bend(p1.0, p2.0, p3.0) + bend(p1.1, p2.1, p3.1);
    let steps = (first.max(second) * 0.75 / FLATNESS).sqrt().ceil().clamp(1.0, 64.0) as u8;
    let mut here = p0;
    for step in 1..=steps {
        let t = f32::from(step) / f32::from(steps);
        let s = 1.0 - t;
        let (w0, w1, w2, w3) = (s * s * s, 3.0 * s * s * t, 3.0 * s * t * t, t * t * t);
        let next = (w0 * p0.0 + w1 * p1.0 + w2 * p2.0 + w3 * p3.0, w0 * p0.1 + w1 * p1.1 + w2 * p2.1 + w3 * p3.1);
        cover.edge(here, next);
        here = next;
    }
}

/// A line through the points, six steps a piece; two points stay a straight line.
pub(super) fn smooth(line: &[Point]) -> Vec<Point> {
    let n = line.len();
    if n < 3 {
        return line.to_vec();
    }
    let mut spine = vec![line[0]];
    for i in 1..n {
        let (p0, p1, p2, p3) = (line[i.saturating_sub(2)], line[i - 1], line[i], line[(i + 1).min(n - 1)]);
        for step in 1..=6_u8 {
            let t = f32::from(step) / 6.0;
            let at = |a: f32, b: f32, c: f32, d: f32| {
                b + 0.5 * t * (c - a + t * (2.0 * a - 5.0 * b + 4.0 * c - d + t * (3.0 * (b - c) + d - a)))
            };
            spine.push((at(p0.0, p1.0, p2.0, p3.0), at(p0.1, p1.1, p2.1, p3.1)));
        }
    }
    spine
}
