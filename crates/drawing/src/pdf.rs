//! Scenes as one PDF: true size, words selectable, faces embedded, roles kept as tags.
//!
//! The same scenes give the same bytes: no clock is asked, and a creation date is written only if the
//! caller tells one. “Tagged” is what our own tests see; no outside validator has judged it.

use std::collections::BTreeMap;
use std::collections::btree_map::Entry;
use std::num::NonZeroU16;

use krilla::color::rgb;
use krilla::geom::{PathBuilder, Point as At, Rect as Box_, Size as Extent, Transform};
use krilla::image::Image;
use krilla::metadata::{DateTime, Metadata};
use krilla::num::NormalizedF32;
use krilla::page::PageSettings;
use krilla::paint::{Fill, FillRule, Stroke, StrokeDash};
use krilla::surface::Surface;
use krilla::tagging::{Artifact, ArtifactType, ContentTag, ListNumbering, TableHeaderScope, Tag, TagGroup, TagTree};
use krilla::text::{Font, GlyphId, KrillaGlyph};
use krilla::{Document, SerializeSettings};
use measure::{Length, Rect};

use crate::scene::{Color, Mark, Outline, Pen, Role, Scene, Stretch};
use crate::text::{Face, Line};

/// What a PDF says about itself.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct About {
    /// Its title.
    pub title: String,
    /// Who made it, if told.
    pub author: Option<String>,
    /// Year, month, day, if told.
    pub date: Option<(u16, u8, u8)>,
    /// Whether its streams are compressed.
    pub streams: Streams,
}

/// How the drawing operators are kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Streams {
    /// Compressed: small files.
    #[default]
    Compressed,
    /// As text: for tests and for the curious.
    Readable,
}

/// Why a PDF could not be written.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PdfError {
    /// A page has no extent, or one that no PDF can hold.
    #[error("page {0} has no size")]
    PageSize(usize),
    /// The writer refused.
    #[error("writing the PDF: {0}")]
    Writer(String),
}

/// The scenes as pages of one PDF.
///
/// # Errors
/// [`PdfError::PageSize`] for a page without extent; [`PdfError::Writer`] if the library refuses (a bug of ours).
pub fn write(scenes: &[Scene], about: &About) -> Result<Vec<u8>, PdfError> {
    let settings = SerializeSettings {
        compress_content_streams: about.streams == Streams::Compressed,
        ..SerializeSettings::default()
    };
    let mut document = Document::new_with(settings);
    let mut metadata =
        Metadata::new().title(about.title.clone()).language("en-GB".to_owned()).creator("Octavo".to_owned());
    if let Some(author) = &about.author {
        metadata = metadata.authors(vec![author.clone()]);
    }
    if let Some((year, month, day)) = about.date {
        metadata = metadata.creation_date(DateTime::new(year).month(month).day(day));
    }
    document.set_metadata(metadata);
    let mut writer = Writer::new();
    let mut tags = TagTree::new().with_lang(Some("en-GB".to_owned()));
    for (index, scene) in scenes.iter().enumerate() {
        let size = (f(scene.size.width), f(scene.size.height));
        let settings = PageSettings::from_wh(size.0, size.1).ok_or(PdfError::PageSize(index + 1))?;
        let mut page = document.start_page_with(settings);
        let mut surface = page.surface();
        for group in writer.page(&mut surface, &scene.marks) {
            tags.push(group);
        }
        surface.finish();
        page.finish();
    }
    document.set_tag_tree(tags);
    document.finish().map_err(|error| PdfError::Writer(format!("{error:?}")))
}

struct Writer {
    fonts: [Option<Font>; 4],
    images: BTreeMap<usize, Image>,
}

impl Writer {
    fn new() -> Writer {
        Writer { fonts: Face::ALL.map(|face| Font::new(face.bytes().into(), 0)), images: BTreeMap::new() }
    }

    /// Draws the marks of a page (or of a holder of roles); gives back the tags made.
    fn page(&mut self, surface: &mut Surface<'_>, marks: &[Mark]) -> Vec<TagGroup> {
        let mut groups = Vec::new();
        for mark in marks {
            match mark {
                Mark::Group { role: Some(role), clip: None, turn: None, marks } if role.holds_roles() => {
                    let mut group = holder(role);
                    for inner in self.page(surface, marks) {
                        group.push(inner);
                    }
                    groups.push(group);
                }
                Mark::Group { role: Some(role), .. } if *role != Role::Artifact => {
                    let id = surface.start_tagged(ContentTag::Other);
                    self.draw(surface, mark);
                    surface.end_tagged();
                    groups.push(leaf(role, id));
                }
                mark => {
                    surface.start_tagged(ContentTag::Artifact(Artifact::with_kind(ArtifactType::Layout)));
                    self.draw(surface, mark);
                    surface.end_tagged();
                }
            }
        }
        groups
    }

    fn draw(&mut self, surface: &mut Surface<'_>, mark: &Mark) {
        match mark {
            Mark::Shape { outline, fill, pen } => shape(surface, outline, *fill, pen.as_ref()),
            Mark::Text { line, at, color } => self.text(surface, line, At::from_xy(f(at.x), f(at.y)), *color),
            Mark::Image { picture, rect, clip } => {
                let address = picture.address();
                let image = match self.images.entry(address) {
                    Entry::Occupied(found) => found.get().clone(),
                    Entry::Vacant(vacant) => {
                        // Our own JPEG copy; were the library to refuse it, the page would lack the picture.
                        let Ok(image) = Image::from_jpeg(picture.jpeg().into(), false) else { return };
                        vacant.insert(image).clone()
                    }
                };
                let Some(size) = Extent::from_wh(f(rect.size.width), f(rect.size.height)) else { return };
                let clipped = clip != rect && push_clip(surface, *clip);
                surface.push_transform(&Transform::from_translate(f(rect.x), f(rect.y)));
                surface.draw_image(image, size);
                surface.pop();
                if clipped {
                    surface.pop();
                }
            }
            Mark::Group { clip, turn, marks, .. } => {
                if let Some((quarters, about)) = turn {
                    let angle = f32::from(quarters % 4) * 90.0;
                    surface.push_transform(&Transform::from_rotate_at(angle, f(about.x), f(about.y)));
                }
                let clipped = clip.is_some_and(|clip| push_clip(surface, clip));
                for mark in marks {
                    self.draw(surface, mark);
                }
                if clipped {
                    surface.pop();
                }
                if turn.is_some() {
                    surface.pop();
                }
            }
        }
    }

    #[allow(clippy::cast_possible_truncation, reason = "shares of an em; PDF keeps single precision")]
    fn text(&mut self, surface: &mut Surface<'_>, line: &Line, at: At, color: Color) {
        let Some(font) = &self.fonts[line.style.face as usize] else { return };
        let glyphs: Vec<KrillaGlyph> = line
            .glyphs
            .iter()
            .map(|glyph| {
                let id = GlyphId::new(u32::from(glyph.id));
                KrillaGlyph::new(
                    id,
                    glyph.advance as f32,
                    glyph.right as f32,
                    glyph.up as f32,
                    0.0,
                    glyph.start..glyph.end,
                    None,
                )
            })
            .collect();
        surface.set_stroke(None);
        surface.set_fill(Some(fill_of(color)));
        surface.draw_glyphs(at, &glyphs, font.clone(), &line.text, f(line.style.size), false);
    }
}

fn holder(role: &Role) -> TagGroup {
    match role {
        Role::Table => TagGroup::new(Tag::Table),
        Role::Row => TagGroup::new(Tag::TR),
        _ => TagGroup::new(Tag::L(ListNumbering::None)),
    }
}

fn leaf(role: &Role, id: krilla::tagging::Identifier) -> TagGroup {
    let mut group = match role {
        Role::Heading(level) => {
            TagGroup::new(Tag::Hn(NonZeroU16::new(u16::from(*level)).unwrap_or(NonZeroU16::MIN), None))
        }
        Role::Figure(alt) => TagGroup::new(Tag::Figure(Some(alt.clone()))),
        Role::HeadCell => TagGroup::new(Tag::TH(TableHeaderScope::Column)),
        Role::Cell => TagGroup::new(Tag::TD),
        Role::Item => {
            let mut body = TagGroup::new(Tag::LBody);
            body.push(id);
            let mut item = TagGroup::new(Tag::LI);
            item.push(body);
            return item;
        }
        _ => TagGroup::new(Tag::P),
    };
    group.push(id);
    group
}

fn push_clip(surface: &mut Surface<'_>, rect: Rect) -> bool {
    let mut builder = PathBuilder::new();
    let Some(rect) = box_of(rect) else { return false };
    builder.push_rect(rect);
    let Some(path) = builder.finish() else { return false };
    surface.push_clip_path(&path, &FillRule::NonZero);
    true
}

fn shape(surface: &mut Surface<'_>, outline: &Outline, fill: Option<Color>, pen: Option<&Pen>) {
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

fn box_of(rect: Rect) -> Option<Box_> {
    Box_::from_ltrb(f(rect.x), f(rect.y), f(rect.right()), f(rect.bottom()))
}

#[allow(
    clippy::cast_possible_truncation,
    reason = "PDF numbers are single precision; 0.001 pt is far below what is seen"
)]
fn f(length: Length) -> f32 {
    length.to_points() as f32
}
