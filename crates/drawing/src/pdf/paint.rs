//! The marks of a scene as drawing operators.

use std::collections::BTreeMap;
use std::collections::btree_map::Entry;

use krilla::color::rgb;
use krilla::geom::{PathBuilder, Point as At, Rect as Box_, Size as Extent, Transform};
use krilla::image::Image;
use krilla::num::NormalizedF32;
use krilla::paint::{Fill, FillRule, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::text::{Font, GlyphId, KrillaGlyph};
use measure::Rect;

use super::{PdfError, at, f};
use crate::Picture;
use crate::scene::{Color, Mark, Outline, Pen, Point, Stretch};
use crate::text::{Face, Glyph, Line, shape};

/// Fonts and pictures, each embedded once.
pub(super) struct Painter {
    fonts: Vec<Font>,
    images: BTreeMap<usize, Image>,
    /// The first thing that could not be drawn.
    pub(super) failed: Option<PdfError>,
}

impl Painter {
    pub(super) fn new() -> Result<Painter, PdfError> {
        let font = |face: Face| Font::new(face.bytes().into(), 0);
        let fonts: Option<Vec<Font>> = Face::ALL.into_iter().map(font).collect();
        let fonts = fonts.ok_or_else(|| PdfError::Writer("a face is not a font".to_owned()))?;
        Ok(Painter { fonts, images: BTreeMap::new(), failed: None })
    }

    /// Draws a mark and all in it, whatever its roles.
    pub(super) fn draw(&mut self, surface: &mut Surface<'_>, mark: &Mark) {
        match mark {
            Mark::Shape { outline, fill, pen } => draw_shape(surface, outline, *fill, pen.as_ref()),
            // Words of a drawing stand apart too when they are copied.
            Mark::Text { line, at, color } => self.glyphs(surface, line, &line.glyphs, *at, *color, " "),
            Mark::Image { picture, rect, clip } => self.image(surface, picture, *rect, *clip),
            Mark::Group { clip, turn, marks, .. } => {
                let pushed = push(surface, *clip, *turn);
                for mark in marks {
                    self.draw(surface, mark);
                }
                pop(surface, pushed);
            }
        }
    }

    fn image(&mut self, surface: &mut Surface<'_>, picture: &Picture, rect: Rect, clip: Rect) {
        let image = match self.images.entry(picture.address()) {
            Entry::Occupied(found) => found.get().clone(),
            Entry::Vacant(vacant) => match Image::from_jpeg(picture.jpeg().into(), false) {
                Ok(image) => vacant.insert(image).clone(),
                Err(error) => {
                    self.failed.get_or_insert(PdfError::Writer(format!("a picture: {error}")));
                    return;
                }
            },
        };
        let Some(size) = Extent::from_wh(f(rect.size.width), f(rect.size.height)) else { return };
        let clipped = clip != rect && push_clip(surface, clip);
        surface.push_transform(&Transform::from_translate(f(rect.x), f(rect.y)));
        surface.draw_image(image, size);
        surface.pop();
        if clipped {
            surface.pop();
        }
    }

    /// Some glyphs of a line, and `after` them (a space or nothing), from `at` on.
    #[allow(clippy::cast_possible_truncation, reason = "shares of an em; PDF keeps single precision")]
    pub(super) fn glyphs(
        &self,
        surface: &mut Surface<'_>,
        line: &Line,
        glyphs: &[Glyph],
        from: Point,
        color: Color,
        after: &str,
    ) {
        let Some(font) = self.fonts.get(line.style.face as usize) else { return };
        let drawn = |glyph: &Glyph, shift: usize| {
            let letters = glyph.start + shift..glyph.end + shift;
            let (advance, right, up) = (glyph.advance as f32, glyph.right as f32, glyph.up as f32);
            KrillaGlyph::new(GlyphId::new(u32::from(glyph.id)), advance, right, up, 0.0, letters, None)
        };
        let mut all: Vec<KrillaGlyph> = glyphs.iter().map(|glyph| drawn(glyph, 0)).collect();
        let mut text = std::borrow::Cow::Borrowed(&*line.text);
        if !after.is_empty() {
            all.extend(shape(after, line.style).glyphs.iter().map(|glyph| drawn(glyph, line.text.len())));
            text.to_mut().push_str(after);
        }
        surface.set_stroke(None);
        surface.set_fill(Some(fill_of(color)));
        let at: At = at(from);
        surface.draw_glyphs(at, &all, font.clone(), &text, f(line.style.size), false);
    }
}

/// Turns and cuts off what follows; how often to [`pop`].
pub(super) fn push(surface: &mut Surface<'_>, clip: Option<Rect>, turn: Option<(u8, Point)>) -> u8 {
    let mut pushed = 0;
    if let Some((quarters, about)) = turn {
        let angle = f32::from(quarters % 4) * 90.0;
        surface.push_transform(&Transform::from_rotate_at(angle, f(about.x), f(about.y)));
        pushed += 1;
    }
    if clip.is_some_and(|clip| push_clip(surface, clip)) {
        pushed += 1;
    }
    pushed
}

pub(super) fn pop(surface: &mut Surface<'_>, pushed: u8) {
    for _ in 0..pushed {
        surface.pop();
    }
}

fn push_clip(surface: &mut Surface<'_>, rect: Rect) -> bool {
    let mut builder = PathBuilder::new();
    let Some(rect) = box_of(rect) else { return false };
    builder.push_rect(rect);
    let Some(path) = builder.finish() else { return false };
    surface.push_clip_path(&path, &FillRule::NonZero);
    true
}

fn draw_shape(surface: &mut Surface<'_>, outline: &Outline, fill: Option<Color>, pen: Option<&Pen>) {
    if fill.is_none() && pen.is_none() {
        return;
    }
    let mut builder = PathBuilder::new();
    match outline {
        Outline::Rect(rect) => {
            let Some(rect) = box_of(*rect) else { return };
            builder.push_rect(rect);
        }
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
    let Some(path) = builder.finish() else { return };
    surface.set_fill(fill.map(fill_of));
    surface.set_stroke(pen.map(|pen| {
        Stroke {
            paint: rgb_of(pen.color).into(),
            width: f(pen.width),
            opacity: opacity(pen.color),
            dash: (!pen.dash.is_empty())
                .then(|| StrokeDash { array: pen.dash.iter().map(|&dash| f(dash)).collect(), offset: 0.0 }),
            ..Stroke::default()
        }
    }));
    surface.draw_path(&path);
}

fn fill_of(color: Color) -> Fill {
    Fill { paint: rgb_of(color).into(), opacity: opacity(color), rule: FillRule::NonZero }
}

fn rgb_of(color: Color) -> rgb::Color {
    let [r, g, b] = color.rgb;
    rgb::Color::new(r, g, b)
}

fn opacity(color: Color) -> NormalizedF32 {
    NormalizedF32::new(f32::from(color.alpha) / 255.0).unwrap_or(NormalizedF32::ONE)
}

pub(super) fn box_of(rect: Rect) -> Option<Box_> {
    Box_::from_ltrb(f(rect.x), f(rect.y), f(rect.right()), f(rect.bottom()))
}
