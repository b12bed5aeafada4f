//! The drawings of a plan as files: the handout as PDF, each sheet as SVG and PNG, each kind of card as PNG.

use std::collections::BTreeSet;
use std::thread;

use cards::Plan;
use cards::days::Day;
use cards::plan::Card;
use drawing::sheets::{
    Colors, Edition, Faces, Hand, Print, card_picture, contact_sheet, cut_files, every_card, full_edition, one_page,
    sheet_drawing, templates,
};
use drawing::{Scene, markdown, pdf, png, svg};
use measure::{Length, Size, Unit};
use words::Language;

use super::Wanted;
use crate::outputs::OutFile;

/// Pixels an inch of the drawings of sheets and cards. Chosen by looking: small words stay readable on a screen.
const PER_INCH: u32 = 100;
/// Pixels an inch of the first page as a picture: the size it has on a screen.
const PER_INCH_OF_PAGE: u32 = 96;
/// Width of a drawn sheet; its height is in proportion.
const SHEET_WIDTH: Length = Length::from_ticks(Length::INCH.ticks() * 9);
/// Width of a drawn card's front.
const CARD_WIDTH: Length = Length::from_ticks(Length::INCH.ticks() * 3);
/// Most kinds of cards that get a picture of their own; the handout shows them all.
const MOST_CARDS: usize = 24;
/// Most layouts that get a drawing of their own.
const MOST_SHEETS: usize = 24;

/// Why a page could not be drawn: a mistake of ours, told with what the drawing room said.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{file}: {reason}")]
pub struct DrawingError {
    /// The file.
    pub file: String,
    /// What the drawing room said.
    pub reason: String,
}

/// Every drawing of a plan.
///
/// # Errors
/// [`DrawingError`] where the drawing room refuses one.
pub(super) fn pages(
    plan: &Plan,
    faces: &Faces,
    colors: &Colors,
    wanted: &Wanted,
) -> Result<Vec<OutFile>, DrawingError> {
    let editions = editions(plan, wanted);
    let scenes = full_edition(plan, faces, colors, &wanted.edition);
    let language = wanted.edition.language;
    let (books, pictures) = thread::scope(|scope| {
        // The handouts take about as long as all the pictures together.
        let books = scope.spawn(|| {
            words::speaking(language, || {
                let drawn = |other: &Edition| {
                    let name = book_name(plan, other);
                    if *other == wanted.edition {
                        return book(plan, name, language, &scenes);
                    }
                    book(plan, name, language, &full_edition(plan, faces, colors, other))
                };
                let templates = templates(plan, &wanted.edition, wanted.square);
                let templates =
                    (!templates.is_empty()).then(|| book(plan, "templates.pdf".to_owned(), language, &templates));
                let short = one_page(plan, &wanted.edition);
                let short = std::iter::once(book(plan, "one-page.pdf".to_owned(), language, &short));
                let books = editions.iter().map(drawn).chain(templates).chain(short);
                books.collect::<Result<Vec<_>, _>>()
            })
        });
        let pictures = pictures(plan, faces);
        let gone = || DrawingError { file: HANDOUT.to_owned(), reason: "the drawing hand stopped".to_owned() };
        (books.join().unwrap_or_else(|_| Err(gone())), pictures)
    });
    let mut files = books?;
    if let Some(first) = scenes.first() {
        files.push(picture("cards.png".to_owned(), first, PER_INCH_OF_PAGE)?);
    }
    let every = every_card(plan, faces, &wanted.edition);
    if !every.is_empty() {
        files.push(book(plan, "every-card.pdf".to_owned(), language, &every)?);
    }
    for (number, scene) in (1..).zip(every.iter().take(MOST_SHEETS)) {
        files.push(picture(format!("every-card-{number}.png"), scene, PER_INCH)?);
    }
    if let Some(scene) = contact_sheet(plan, faces) {
        files.push(picture("contact-sheet.png".to_owned(), &scene, PER_INCH)?);
    }
    files.push(OutFile::new("handout.md", markdown::write(&scenes)));
    files.push(OutFile::new("handout.txt", markdown::plain_text(&scenes)));
    files.extend(cut_files(plan).into_iter().map(|cut| OutFile::new(format!("{}.svg", cut.name), cut.svg)));
    files.extend(pictures?);
    Ok(files)
}

const HANDOUT: &str = "handout.pdf";

/// The wanted edition, or every one for its paper, the plain one first.
fn editions(plan: &Plan, wanted: &Wanted) -> Vec<Edition> {
    if !wanted.every {
        return vec![wanted.edition];
    }
    let own = plan.project.unit;
    let other = if own == Unit::Inch { Unit::Millimetre } else { Unit::Inch };
    let mut all = Vec::new();
    for unit in [own, other] {
        for print in [Print::Normal, Print::Large] {
            for hand in [Hand::Right, Hand::Left] {
                all.push(Edition { paper: wanted.edition.paper, print, hand, unit, language: wanted.edition.language });
            }
        }
    }
    all
}

/// `handout.pdf` for the plain edition; the others say what they are.
fn book_name(plan: &Plan, edition: &Edition) -> String {
    let mut name = "handout".to_owned();
    if edition.print == Print::Large {
        name.push_str("-large");
    }
    if edition.hand == Hand::Left {
        name.push_str("-left");
    }
    if edition.unit != plan.project.unit {
        name.push_str(if edition.unit == Unit::Inch { "-inches" } else { "-mm" });
    }
    name.push_str(".pdf");
    name
}

/// Pages as a PDF that says whose project it is and of which day.
pub(crate) fn book(plan: &Plan, name: String, language: Language, scenes: &[Scene]) -> Result<OutFile, DrawingError> {
    let about = pdf::About {
        title: plan.project.name.clone(),
        author: plan.project.maker.clone(),
        date: plan.project.date.as_deref().and_then(day),
        language,
        ..pdf::About::default()
    };
    let written = pdf::write(scenes, &about);
    let bytes = written.map_err(|error| DrawingError { file: name.clone(), reason: error.to_string() })?;
    Ok(OutFile::new(name, bytes))
}

fn pictures(plan: &Plan, faces: &Faces) -> Result<Vec<OutFile>, DrawingError> {
    let mut files = Vec::new();
    for (index, layout) in plan.layouts.iter().enumerate().take(MOST_SHEETS) {
        let Some(pack) = plan.project.packs.get(layout.pack) else { continue };
        let Some(scene) = sheet_drawing(plan, faces, index, drawn_size(pack.sheet)) else { continue };
        files.push(OutFile::new(format!("sheet-{}.svg", index + 1), svg::write(&scene)));
        files.push(picture(format!("sheet-{}.png", index + 1), &scene, PER_INCH)?);
    }
    for card in kinds(plan) {
        let scene = card_picture(plan, faces, card, CARD_WIDTH);
        files.push(picture(format!("card-{}.png", card.number), &scene, PER_INCH)?);
    }
    Ok(files)
}

/// One finished card as PNG.
pub(crate) fn card_png(plan: &Plan, faces: &Faces, card: &Card) -> Option<Vec<u8>> {
    png::write(&card_picture(plan, faces, card, CARD_WIDTH), PER_INCH).ok()
}

/// All finished cards on one sheet as PNG.
pub(crate) fn contact_png(plan: &Plan, faces: &Faces) -> Option<Vec<u8>> {
    png::write(&contact_sheet(plan, faces)?, PER_INCH).ok()
}

fn picture(file: String, scene: &Scene, per_inch: u32) -> Result<OutFile, DrawingError> {
    match png::write(scene, per_inch) {
        Ok(bytes) => Ok(OutFile::new(file, bytes)),
        Err(error) => Err(DrawingError { file, reason: error.to_string() }),
    }
}

/// The first card of each recipe and design.
fn kinds(plan: &Plan) -> impl Iterator<Item = &Card> {
    let mut seen = BTreeSet::new();
    plan.cards.iter().filter(move |card| seen.insert((card.recipe, card.pack, card.design))).take(MOST_CARDS)
}

/// As wide as all drawn sheets, in proportion, but at most three times as high.
fn drawn_size(sheet: Size) -> Size {
    let ticks = |length: Length| i128::from(length.ticks()).max(1);
    let height = ticks(SHEET_WIDTH) * ticks(sheet.height) / ticks(sheet.width);
    let most = ticks(SHEET_WIDTH) * 3;
    let height = i64::try_from(height.clamp(ticks(SHEET_WIDTH) / 3, most)).unwrap_or(SHEET_WIDTH.ticks());
    Size::new(SHEET_WIDTH, Length::from_ticks(height))
}

/// Year, month and day of `YYYY-MM-DD`.
fn day(text: &str) -> Option<(u16, u8, u8)> {
    let (year, month, day) = Day::parse(text)?.parts();
    Some((year.try_into().ok()?, month.try_into().ok()?, day.try_into().ok()?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_are_read() {
        assert_eq!(day("2026-11-25"), Some((2026, 11, 25)));
        assert_eq!(day("2026-11"), None);
    }

    #[test]
    fn drawn_sheets_keep_their_proportion_within_reason() {
        let inches = |width, height| Size::new(Length::INCH * width, Length::INCH * height);
        assert_eq!(drawn_size(inches(12, 12)), inches(9, 9));
        assert_eq!(drawn_size(inches(6, 12)), inches(9, 18));
        assert_eq!(drawn_size(inches(1, 99)), inches(9, 27));
        assert_eq!(drawn_size(inches(99, 1)), inches(9, 3));
    }
}
