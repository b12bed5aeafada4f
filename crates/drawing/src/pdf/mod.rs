//! Scenes as one PDF that a person who does not see it can use: PDF/UA-1 (ISO 14289-1).
//!
//! True size, words selectable, faces embedded, every role of a [`Scene`] kept as a tag, everything else
//! marked as decoration. [`write()`] refuses what breaks a rule: [`rules`] looks at the scenes, the library's own
//! check at the file. The same scenes give the same bytes: no clock is asked, and a creation date is
//! written only if the caller tells one.

mod paint;
pub mod rules;
mod tags;

use krilla::configure::{Accessibility, ConfigurationBuilder};
use krilla::error::KrillaError;
use krilla::geom::Point as At;
use krilla::metadata::{DateTime, Metadata};
use krilla::page::PageSettings;
use krilla::{Document, SerializeSettings};
use measure::Length;
use words::Language;

use crate::scene::Scene;
use rules::Breach;

/// What a PDF says about itself.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct About {
    /// Its title; must not be blank.
    pub title: String,
    /// Who made it, if told.
    pub author: Option<String>,
    /// Year, month, day, if told.
    pub date: Option<(u16, u8, u8)>,
    /// The language of every page; its tag is written as RFC 3066 wants it.
    pub language: Language,
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
    /// The scenes break rules of PDF/UA-1.
    #[error("not readable by everybody: {}", .0.iter().map(Breach::to_string).collect::<Vec<_>>().join("; "))]
    Rules(Vec<Breach>),
    /// The writer refused.
    #[error("writing the PDF: {0}")]
    Writer(String),
}

/// The scenes as pages of one PDF.
///
/// # Errors
/// [`PdfError::PageSize`] for a page without extent; [`PdfError::Rules`] where a reader who does not see the pages
/// would be lost; [`PdfError::Writer`] if the library refuses (a bug of ours).
pub fn write(scenes: &[Scene], about: &About) -> Result<Vec<u8>, PdfError> {
    let breaches = rules::breaches(scenes, about);
    if !breaches.is_empty() {
        return Err(PdfError::Rules(breaches));
    }
    let configuration = ConfigurationBuilder::new()
        .with_accessibility_validator(Accessibility::UA1)
        .finish()
        .map_err(|error| PdfError::Writer(format!("{error:?}")))?;
    let mut document = Document::new_with(SerializeSettings {
        compress_content_streams: about.streams == Streams::Compressed,
        configuration,
        ..SerializeSettings::default()
    });
    document.set_metadata(metadata(about));
    let mut painter = paint::Painter::new()?;
    let mut tree = tags::Tree::default();
    for (index, scene) in scenes.iter().enumerate() {
        let settings =
            PageSettings::from_wh(f(scene.size.width), f(scene.size.height)).ok_or(PdfError::PageSize(index + 1))?;
        let mut page = document.start_page_with(settings);
        let mut surface = page.surface();
        tree.page(&mut painter, &mut surface, scene);
        surface.finish();
        page.finish();
    }
    if let Some(failed) = painter.failed {
        return Err(failed);
    }
    let (tree, outline) = tree.finish(about.language.full_tag());
    document.set_tag_tree(tree);
    document.set_outline(outline);
    document.finish().map_err(|error| PdfError::Writer(told(&error)))
}

/// What the library found wrong, each thing once and without the bytes of fonts.
fn told(error: &KrillaError) -> String {
    let KrillaError::Validation(found) = error else { return error.to_string() };
    let mut said: Vec<String> = Vec::new();
    for (error, _) in found {
        let error: String = format!("{error:?}").chars().take(120).collect();
        if !said.contains(&error) {
            said.push(error);
        }
    }
    said.join("; ")
}

fn metadata(about: &About) -> Metadata {
    let mut metadata = Metadata::new()
        .title(about.title.clone())
        .language(about.language.full_tag().to_owned())
        .creator("Octavo".to_owned());
    if let Some(author) = &about.author {
        metadata = metadata.authors(vec![author.clone()]);
    }
    if let Some((year, month, day)) = about.date {
        metadata = metadata.creation_date(DateTime::new(year).month(month).day(day));
    }
    metadata
}

fn at(point: crate::scene::Point) -> At {
    At::from_xy(f(point.x), f(point.y))
}

#[allow(
    clippy::cast_possible_truncation,
    reason = "PDF numbers are single precision; 0.001 pt is far below what is seen"
)]
fn f(length: Length) -> f32 {
    length.to_points() as f32
}
