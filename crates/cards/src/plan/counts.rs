//! How many of everything, summed from the finished cards and the cut sheets.

use measure::Length;

use super::answer::{Card, Counts, Layout, PartKind};
use crate::model::{Material, Project};

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
        project.ribbons.iter().zip(ribbon).map(|(kind, length)| (length, spools(length, kind.spool))).collect();
    counts
}

/// Whole spools that give so much ribbon; ends that are joined are not counted as a loss.
fn spools(length: Length, spool: Option<Length>) -> Option<u32> {
    let spool = spool.filter(|spool| *spool > Length::ZERO)?.ticks();
    u32::try_from(length.ticks() / spool + i64::from(length.ticks() % spool != 0)).ok()
}
