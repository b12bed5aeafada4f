//! A scene as pixels, drawn mark by mark with the outlines of the faces we carry: no other program's idea of it.
//!
//! Left out on purpose: reading SVG. A test draws the SVG of the same scene with `resvg` and compares.

use image::codecs::png::{CompressionType, FilterType, PngEncoder};
use image::{ExtendedColorType, ImageEncoder};
use measure::{Length, Rect};
use rustybuzz::ttf_parser::{GlyphId, OutlineBuilder};
use tiny_skia::{
    FillRule, Paint, Path, PathBuilder, Pixmap, PixmapPaint, PixmapRef, Rect as Box_, Stroke, StrokeDash, Transform,
};

use crate::picture::Picture;
use crate::scene::{Color, Mark, Outline, Pen, Point, Scene, Stretch};
use crate::text::Line;

/// Why a scene could not be drawn.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PngError {
    /// The page has no pixels, or more than 16 000 one way.
    #[error("a page of {0} x {1} px cannot be drawn")]
    Size(u32, u32),
    /// The pixels could not be written.
    #[error("drawing: {0}")]
    Drawing(String),
}

/// The scene as a PNG file on white, so many pixels to the inch.
///
/// # Errors
/// [`PngError::Size`] for an empty or enormous page; [`PngError::Drawing`] if the encoder refuses (a bug of ours).
pub fn write(scene: &Scene, per_inch: u32) -> Result<Vec<u8>, PngError> {
    encode(&painted(scene, per_inch)?)
}

/// The scene as pixels on white, so many to the inch.
///
/// # Errors
/// [`PngError::Size`] for an empty or enormous page.
pub fn pixels(scene: &Scene, per_inch: u32) -> Result<Picture, PngError> {
    let canvas = painted(scene, per_inch)?;
    let rgb: Vec<u8> = canvas.data().chunks_exact(4).flat_map(|pixel| [pixel[0], pixel[1], pixel[2]]).collect();
    let (width, height) = (canvas.width(), canvas.height());
    Picture::new(width, height, std::sync::Arc::from(rgb)).ok_or(PngError::Size(width, height))
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped before")]
fn painted(scene: &Scene, per_inch: u32) -> Result<Pixmap, PngError> {
    let pixels = |inches: f64| (inches * f64::from(per_inch)).round().clamp(0.0, 1.0e6) as u32;
    let (width, height) = (pixels(scene.size.width.to_inches()), pixels(scene.size.height.to_inches()));
    if width == 0 || height == 0 || width > 16_000 || height > 16_000 {
        return Err(PngError::Size(width, height));
    }
    let mut canvas = Pixmap::new(width, height).ok_or(PngError::Size(width, height))?;
    canvas.fill(tiny_skia::Color::WHITE);
    let across = f64::from(width) / scene.size.width.to_points();
    let down = f64::from(height) / scene.size.height.to_points();
    let mut painter = Painter { canvas };
    painter.marks(&scene.marks, Transform::from_scale(across as f32, down as f32));
    Ok(painter.canvas)
}

/// On white nothing is clear, so three bytes a pixel are enough. Quick compression makes the file somewhat larger and
/// takes most of the time away.
fn encode(canvas: &Pixmap) -> Result<Vec<u8>, PngError> {
    let rgb: Vec<u8> = canvas.data().chunks_exact(4).flat_map(|pixel| [pixel[0], pixel[1], pixel[2]]).collect();
    let mut bytes = Vec::new();
    let encoder = PngEncoder::new_with_quality(&mut bytes, CompressionType::Fast, FilterType::Adaptive);
    encoder
        .write_image(&rgb, canvas.width(), canvas.height(), ExtendedColorType::Rgb8)
        .map_err(|error| PngError::Drawing(error.to_string()))?;
    Ok(bytes)
}

struct Painter {
    canvas: Pixmap,
}

impl Painter {
    fn marks(&mut self, marks: &[Mark], to: Transform) {
        for mark in marks {
            self.mark(mark, to);
        }
    }

    /// `to` takes points of the page to pixels.
    fn mark(&mut self, mark: &Mark, to: Transform) {
        match mark {
            Mark::Shape { outline, fill, pen } => {
                let Some(path) = path_of(outline) else { return };
                if let Some(color) = fill {
                    self.canvas.fill_path(&path, &paint(*color), FillRule::Winding, to, None);
                }
                if let Some(pen) = pen {
                    self.canvas.stroke_path(&path, &paint(pen.color), &stroke(pen), to, None);
                }
            }
            Mark::Text { line, at, color } => {
                if let Some(path) = letters(line, *at) {
                    self.canvas.fill_path(&path, &paint(*color), FillRule::Winding, to, None);
                }
            }
            Mark::Image { picture, rect, clip } => self.image(picture, *rect, *clip, to),
            Mark::Group { clip, turn, marks, .. } => {
                let to = turn.map_or(to, |(quarters, about)| to.pre_concat(turned(quarters, about)));
                match clip {
                    Some(clip) => self.clipped(marks, *clip, to),
                    None => self.marks(marks, to),
                }
            }
        }
    }

    /// Marks on a canvas of their own that is no larger than what shows of them.
    fn clipped(&mut self, marks: &[Mark], clip: Rect, to: Transform) {
        let Some([left, top, right, bottom]) = pixels_of(clip, to) else { return };
        let (left, top) = (left.max(0), top.max(0));
        let (right, bottom) = (right.min(side(self.canvas.width())), bottom.min(side(self.canvas.height())));
        let (Ok(wide), Ok(tall)) = (u32::try_from(right - left), u32::try_from(bottom - top)) else { return };
        let Some(canvas) = Pixmap::new(wide, tall) else { return };
        let mut inner = Painter { canvas };
        #[allow(clippy::cast_precision_loss, reason = "at most 16 000")]
        inner.marks(marks, to.post_translate(-left as f32, -top as f32));
        self.put(inner.canvas.as_ref(), left, top);
    }

    fn image(&mut self, picture: &Picture, rect: Rect, clip: Rect, to: Transform) {
        let Some([left, top, right, bottom]) = pixels_of(clip, to) else { return };
        let (Ok(wide), Ok(tall)) = (u32::try_from(right - left), u32::try_from(bottom - top)) else { return };
        if wide == 0 || tall == 0 || wide > 16_000 || tall > 16_000 {
            return;
        }
        let share = |at: Length, from: Length, of: Length| (at - from).to_points() / of.to_points();
        let shares = [
            share(clip.x, rect.x, rect.size.width),
            share(clip.y, rect.y, rect.size.height),
            share(clip.right(), rect.x, rect.size.width),
            share(clip.bottom(), rect.y, rect.size.height),
        ];
        let quarters = quarters(to);
        let (across, down) = if quarters % 2 == 1 { (tall, wide) } else { (wide, tall) };
        let shown = picture.part(shares, across, down).turned(quarters);
        let rgba: Vec<u8> = shown.rgb().chunks_exact(3).flat_map(|rgb| [rgb[0], rgb[1], rgb[2], 255]).collect();
        if let Some(pixels) = PixmapRef::from_bytes(&rgba, wide, tall) {
            self.put(pixels, left, top);
        }
    }

    fn put(&mut self, pixels: PixmapRef<'_>, left: i32, top: i32) {
        self.canvas.draw_pixmap(left, top, pixels, &PixmapPaint::default(), Transform::identity(), None);
    }
}

fn side(pixels: u32) -> i32 {
    i32::try_from(pixels).unwrap_or(i32::MAX)
}

/// A clockwise turn by quarter turns about a point, exact.
fn turned(quarters: u8, about: Point) -> Transform {
    let (cos, sin) = match quarters % 4 {
        0 => (1.0, 0.0),
        1 => (0.0, 1.0),
        2 => (-1.0, 0.0),
        _ => (0.0, -1.0),
    };
    let (x, y) = (f(about.x), f(about.y));
    Transform::from_row(cos, sin, -sin, cos, x - cos * x + sin * y, y - sin * x - cos * y)
}

/// How many quarter turns clockwise a transform makes.
fn quarters(to: Transform) -> u8 {
    if to.sx.abs() >= to.ky.abs() {
        if to.sx >= 0.0 { 0 } else { 2 }
    } else if to.ky >= 0.0 {
        1
    } else {
        3
    }
}

/// The whole pixels nearest to a rectangle: left, top, right, bottom.
#[allow(clippy::cast_possible_truncation, reason = "float-to-integer casts saturate")]
fn pixels_of(rect: Rect, to: Transform) -> Option<[i32; 4]> {
    let there = box_of(rect)?.transform(to)?;
    Some([there.left(), there.top(), there.right(), there.bottom()].map(|edge| edge.round() as i32))
}

fn box_of(rect: Rect) -> Option<Box_> {
    Box_::from_ltrb(f(rect.x), f(rect.y), f(rect.right()), f(rect.bottom()))
}

fn path_of(outline: &Outline) -> Option<Path> {
    let mut builder = PathBuilder::new();
    match outline {
        Outline::Rect(rect) => builder.push_rect(box_of(*rect)?),
        Outline::Line(from, to) => {
            builder.move_to(f(from.x), f(from.y));
            builder.line_to(f(to.x), f(to.y));
        }
        Outline::Path(stretches) => {
            for stretch in stretches {
                match stretch {
                    Stretch::Move(to) => builder.move_to(f(to.x), f(to.y)),
                    Stretch::Line(to) => builder.line_to(f(to.x), f(to.y)),
                    Stretch::Curve(a, b, to) => builder.cubic_to(f(a.x), f(a.y), f(b.x), f(b.y), f(to.x), f(to.y)),
                    Stretch::Close => builder.close(),
                }
            }
        }
    }
    builder.finish()
}

/// The outlines of a line's glyphs where they stand.
#[allow(clippy::cast_possible_truncation, reason = "shares of an em; pixels need single precision")]
fn letters(line: &Line, at: Point) -> Option<Path> {
    let face = line.style.face.shaper()?;
    let size = line.style.size.to_points();
    let scale = (size / f64::from(face.units_per_em())) as f32;
    let mut pen = Letters { builder: PathBuilder::new(), x: 0.0, y: 0.0, scale };
    let mut along = at.x.to_points();
    for glyph in line.glyphs.iter() {
        pen.x = (along + glyph.right * size) as f32;
        pen.y = (at.y.to_points() - glyph.up * size) as f32;
        face.outline_glyph(GlyphId(glyph.id), &mut pen);
        along += glyph.advance * size;
    }
    pen.builder.finish()
}

/// Font units, y up, to points of the page.
struct Letters {
    builder: PathBuilder,
    x: f32,
    y: f32,
    scale: f32,
}

impl Letters {
    fn to(&self, x: f32, y: f32) -> (f32, f32) {
        (self.x + x * self.scale, self.y - y * self.scale)
    }
}

impl OutlineBuilder for Letters {
    fn move_to(&mut self, x: f32, y: f32) {
        let (x, y) = self.to(x, y);
        self.builder.move_to(x, y);
    }

    fn line_to(&mut self, x: f32, y: f32) {
        let (x, y) = self.to(x, y);
        self.builder.line_to(x, y);
    }

    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        let ((x1, y1), (x, y)) = (self.to(x1, y1), self.to(x, y));
        self.builder.quad_to(x1, y1, x, y);
    }

    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        let ((x1, y1), (x2, y2), (x, y)) = (self.to(x1, y1), self.to(x2, y2), self.to(x, y));
        self.builder.cubic_to(x1, y1, x2, y2, x, y);
    }

    fn close(&mut self) {
        self.builder.close();
    }
}

fn paint(color: Color) -> Paint<'static> {
    let [r, g, b] = color.rgb;
    let mut paint = Paint::default();
    paint.set_color_rgba8(r, g, b, color.alpha);
    paint
}

fn stroke(pen: &Pen) -> Stroke {
    let dash = pen.dash.iter().map(|&dash| f(dash)).collect::<Vec<f32>>();
    let dash = if dash.is_empty() { None } else { StrokeDash::new(dash, 0.0) };
    Stroke { width: f(pen.width), dash, ..Stroke::default() }
}

#[allow(clippy::cast_possible_truncation, reason = "pixels need no more than single precision")]
fn f(length: Length) -> f32 {
    length.to_points() as f32
}
