//! A sheet to draw on in inches, and the outlines a hand would draw.

use resvg::tiny_skia::{
    FillRule, GradientStop, LinearGradient, Paint, Path, PathBuilder, Pixmap, Point as SkPoint, RadialGradient, Shader,
    SpreadMode, Transform,
};

use super::hand::{Hand, Point, direction};
use super::ink::Ink;

/// Where a motif stands: its own inches → the sheet's.
#[derive(Debug, Clone, Copy)]
pub(super) struct At(Transform);

impl At {
    pub(super) const SHEET: At = At(Transform { sx: 1.0, kx: 0.0, ky: 0.0, sy: 1.0, tx: 0.0, ty: 0.0 });

    /// Its origin at `point`, turned by `angle` radians, `size` times as large.
    pub(super) fn new(point: Point, angle: f32, size: f32) -> At {
        let (cos, sin) = direction(angle);
        At(Transform::from_row(cos * size, sin * size, -sin * size, cos * size, point.0, point.1))
    }

    /// A place within this place.
    pub(super) fn then(self, inner: At) -> At {
        At(inner.0.post_concat(self.0))
    }

    /// A place at `point` within this one, its two directions scaled apart.
    pub(super) fn squeezed(self, point: Point, scale: Point) -> At {
        self.then(At(Transform::from_row(scale.0, 0.0, 0.0, scale.1, point.0, point.1)))
    }

    /// A shorthand for [`At::then`] with a point, an angle and a size.
    pub(super) fn on(self, point: Point, angle: f32, size: f32) -> At {
        self.then(At::new(point, angle, size))
    }
}

/// Pixels with a scale.
#[derive(Debug)]
pub(super) struct Canvas {
    pub(super) pixmap: Pixmap,
    pub(super) pixels_per_inch: f32,
    /// Inches.
    pub(super) width: f32,
    /// Inches.
    pub(super) height: f32,
}

impl Canvas {
    pub(super) fn new(width_px: u32, height_px: u32, pixels_per_inch: f32) -> Option<Canvas> {
        let pixmap = Pixmap::new(width_px, height_px)?;
        let (width, height) = (width_px as f32 / pixels_per_inch, height_px as f32 / pixels_per_inch);
        Some(Canvas { pixmap, pixels_per_inch, width, height })
    }

    pub(super) fn ground(&mut self, ink: Ink) {
        self.pixmap.fill(ink.color());
    }

    pub(super) fn fill(&mut self, outline: &Outline, ink: Ink, at: At) {
        self.lay(outline, Shader::SolidColor(ink.color()), at);
    }

    /// Fills with inks running from one point to another, evenly spaced.
    pub(super) fn fade(&mut self, outline: &Outline, from: Point, to: Point, inks: &[Ink], at: At) {
        let shader = LinearGradient::new(sk(from), sk(to), stops(inks), SpreadMode::Pad, Transform::identity());
        if let Some(shader) = shader {
            self.lay(outline, shader, at);
        }
    }

    /// Fills with inks running outwards from a point.
    pub(super) fn glow(&mut self, outline: &Outline, middle: Point, radius: f32, inks: &[Ink], at: At) {
        let shader = RadialGradient::new(
            sk(middle),
            0.0,
            sk(middle),
            radius,
            stops(inks),
            SpreadMode::Pad,
            Transform::identity(),
        );
        if let Some(shader) = shader {
            self.lay(outline, shader, at);
        }
    }

    fn lay(&mut self, outline: &Outline, shader: Shader<'_>, at: At) {
        let Some(path) = outline.path() else { return };
        let paint = Paint { shader, anti_alias: true, ..Paint::default() };
        let to_pixels = at.0.post_scale(self.pixels_per_inch, self.pixels_per_inch);
        self.pixmap.fill_path(&path, &paint, FillRule::Winding, to_pixels, None);
    }
}

fn sk(p: Point) -> SkPoint {
    SkPoint::from_xy(p.0, p.1)
}

fn stops(inks: &[Ink]) -> Vec<GradientStop> {
    let last = (inks.len().max(2) - 1) as f32;
    inks.iter().enumerate().map(|(i, ink)| GradientStop::new(i as f32 / last, ink.color())).collect()
}

/// One or more closed shapes, filled together.
#[derive(Debug, Clone, Default)]
pub(super) struct Outline {
    builder: PathBuilder,
}

impl Outline {
    pub(super) fn new() -> Outline {
        Outline::default()
    }

    fn path(&self) -> Option<Path> {
        self.builder.clone().finish()
    }

    /// A smooth closed line through the points.
    pub(super) fn closed(mut self, points: &[Point]) -> Outline {
        let n = points.len();
        if n < 3 {
            return self;
        }
        self.builder.move_to(points[0].0, points[0].1);
        for i in 0..n {
            self.bend(points[(i + n - 1) % n], points[i], points[(i + 1) % n], points[(i + 2) % n]);
        }
        self.builder.close();
        self
    }

    /// A closed shape of two smooth sides that meet in points: `there` and back along `back`.
    pub(super) fn two_sided(mut self, there: &[Point], back: &[Point]) -> Outline {
        let Some(first) = there.first() else { return self };
        self.builder.move_to(first.0, first.1);
        self.along(there);
        self.along(back);
        self.builder.close();
        self
    }

    /// Straight edges.
    pub(super) fn polygon(mut self, points: &[Point]) -> Outline {
        for (i, p) in points.iter().enumerate() {
            if i == 0 {
                self.builder.move_to(p.0, p.1);
            } else {
                self.builder.line_to(p.0, p.1);
            }
        }
        self.builder.close();
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
                self.builder.move_to(here.0 - nx, here.1 - ny);
            } else {
                self.builder.line_to(here.0 - nx, here.1 - ny);
            }
            right.push((here.0 + nx, here.1 + ny));
        }
        for p in right.iter().rev() {
            self.builder.line_to(p.0, p.1);
        }
        self.builder.close();
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
        self.builder.cubic_to(
            p1.0 + (p2.0 - p0.0) / 6.0,
            p1.1 + (p2.1 - p0.1) / 6.0,
            p2.0 - (p3.0 - p1.0) / 6.0,
            p2.1 - (p3.1 - p1.1) / 6.0,
            p2.0,
            p2.1,
        );
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
