//! The layers of a recipe where they lie on the front of its card, with what shows beside each.
//!
//! Left out on purpose: whether it looks right there; `look` says that.

use measure::{Length, Rect, Size};

use super::answer::{PartKind, Plan};
use super::fit;
use super::look::gaps;
use crate::model::{Layer, Material};

/// A layer where it lies on the card's front.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LaidLayer {
    /// Where it lies; the top left of the front is 0, 0.
    pub rect: Rect,
    /// Index of the layer it lies on; `None`: the front itself.
    pub on: Option<usize>,
    /// What shows of that beside it: left, right, top, bottom. Below nought it runs over.
    pub borders: [Length; 4],
}

/// The layers of a recipe as they lie: patterned ones as they are cut for its first card, else as they are preferred.
///
/// # Shape
/// In the order of the recipe; empty if there is no such recipe.
pub fn stands(plan: &Plan, recipe: usize) -> Vec<LaidLayer> {
    let Some(known) = plan.project.recipes.get(recipe) else { return Vec::new() };
    let pieces = pieces(plan, recipe);
    let sizes = fit::sizes(&plan.project, known, |layer| pieces.get(layer).copied().unwrap_or_default());
    let places = fit::places(known, &sizes);
    let laid = |(index, rect): (usize, &Rect)| {
        let on = fit::host(known, index);
        let [left, top, right, bottom] = gaps(on.map_or_else(|| fit::front(known), |on| places[on]), *rect);
        LaidLayer { rect: *rect, on, borders: [left, right, top, bottom] }
    };
    places.iter().enumerate().map(laid).collect()
}

/// The sizes of patterned layers as they stand on the recipe's first card, else preferred.
fn pieces(plan: &Plan, recipe: usize) -> Vec<Size> {
    let card = plan.cards.iter().find(|card| card.recipe == recipe);
    let cut = |layer: usize| {
        let part = card?.parts.iter().find(|part| part.layer == layer)?;
        match part.kind {
            PartKind::Patterned { layout, piece, .. } => Some(plan.layouts.get(layout)?.pieces.get(piece)?.stands()),
            _ => None,
        }
    };
    let layers = plan.project.recipes.get(recipe).map_or(&[][..], |recipe| &recipe.layers);
    let size = |(index, layer): (usize, &Layer)| match &layer.material {
        Material::Patterned { prefer, .. } => cut(index).unwrap_or(*prefer),
        _ => Size::default(),
    };
    layers.iter().enumerate().map(size).collect()
}
