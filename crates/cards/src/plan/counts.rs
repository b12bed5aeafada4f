//! How many of everything, summed from the finished cards and the cut sheets.

use measure::{Length, Size};

use super::answer::{Card, Counts, Layout, PartKind};
use crate::model::{Material, Project, Tape};

/// The counts of a batch.
pub(super) fn counts(project: &Project, layouts: &[Layout], cards: &[Card]) -> Counts {
    let mut counts = Counts {
        cards: u32::try_from(cards.len()).unwrap_or(u32::MAX),
        cards_by_recipe: vec![0; project.recipes.len()],
        ..Counts::default()
    };
    for layout in layouts {
        let sheets: u32 = layout.sheets.iter().map(|used| used.sheets).sum();
        counts.paper_sheets += sheets;
        counts.paper_pieces += sheets.saturating_mul(u32::try_from(layout.pieces.len()).unwrap_or(u32::MAX));
    }
    let mut ribbon = vec![Length::ZERO; project.ribbons.len()];
    for card in cards {
        let recipe = &project.recipes[card.recipe];
        counts.cards_by_recipe[card.recipe] += 1;
        counts.bases += 1;
        for part in &card.parts {
            counts.impressions += u32::from(recipe.layers[part.layer].greeting().is_some());
            match (&recipe.layers[part.layer].material, &part.kind) {
                (Material::Mat { .. }, _) => counts.mats += 1,
                (Material::Strip { foam_squares, .. }, _) => {
                    counts.strips += 1;
                    counts.foam_squares = counts.foam_squares.saturating_add(*foam_squares);
                }
                (Material::Ribbon { length, .. }, PartKind::Ribbon(kind, _)) => ribbon[*kind] += *length,
                _ => {}
            }
        }
    }
    counts.ribbon =
        project.ribbons.iter().zip(ribbon).map(|(kind, length)| (length, rolls(length, kind.spool))).collect();
    let supplies = &project.supplies;
    counts.tape = supplies.tape.as_ref().map(|tape| {
        let length = cards.iter().fold(Length::ZERO, |sum, card| sum + tape_on(project, tape, card));
        (length, rolls(length, tape.roll))
    });
    counts.foam_packs = supplies.foam.as_ref().map(|foam| counts.foam_squares.div_ceil(foam.lasts.max(1)));
    let mailed = project.envelope.is_some() || supplies.envelopes.is_some();
    counts.envelopes = mailed.then(|| {
        let packs = supplies.envelopes.as_ref().map(|pack| counts.cards.div_ceil(pack.lasts.max(1)));
        (counts.cards, packs)
    });
    counts
}

/// Whole spools or rolls that give so much; ends that are joined are not counted as a loss.
fn rolls(length: Length, roll: Option<Length>) -> Option<u32> {
    let roll = roll.filter(|roll| *roll > Length::ZERO)?.ticks();
    u32::try_from(length.ticks() / roll + i64::from(length.ticks() % roll != 0)).ok()
}

/// The tape in one card: lines along the longer side of every layer that is glued flat.
///
/// A strip on foam squares and a ribbon (its ends go under the mat) take none.
///
/// # Source
/// Two lines on a wide layer, one on a narrow one: common practice.
pub(crate) fn tape_on(project: &Project, tape: &Tape, card: &Card) -> Length {
    let lines = |size: Size| {
        let (short, long) = (size.width.min(size.height), size.width.max(size.height));
        if short >= tape.two_lines_from { long * 2 } else { long }
    };
    let recipe = &project.recipes[card.recipe];
    let taped = card.parts.iter().filter(|part| match recipe.layers[part.layer].material {
        Material::Ribbon { .. } => false,
        Material::Strip { foam_squares, .. } => foam_squares == 0,
        _ => true,
    });
    let layers = taped.map(|part| lines(part.rect.size));
    let inside = recipe.inside.iter().map(|(size, _)| lines(*size));
    layers.chain(inside).fold(Length::ZERO, |sum, length| sum + length)
}
