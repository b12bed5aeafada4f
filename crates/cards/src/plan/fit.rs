//! Where each layer lies on the front of a card.
//!
//! Left out on purpose: whether it looks right there; `look` says that.

use measure::{Length, Rect, Size};

use crate::model::{Anchor, Layer, Material, Project, Range, Recipe};

/// The size of every layer of a recipe, bottom first.
///
/// `piece` gives the size of a patterned layer as it stands on the card. A mat that follows itself in
/// a circle keeps the size of nothing.
pub(super) fn sizes(project: &Project, recipe: &Recipe, piece: impl Fn(usize) -> Size) -> Vec<Size> {
    let mut known: Vec<Option<Size>> = recipe
        .layers
        .iter()
        .enumerate()
        .map(|(index, layer)| match &layer.material {
            Material::Patterned { .. } => Some(piece(index)),
            Material::Plain { size, .. } | Material::Strip { size, .. } => Some(*size),
            Material::Mat { .. } | Material::Ribbon { .. } => None,
        })
        .collect();
    // Each round settles at least one layer of every open chain, so as many rounds as layers are enough.
    for _ in 0..recipe.layers.len() {
        for (index, layer) in recipe.layers.iter().enumerate() {
            if known[index].is_none() {
                known[index] = following(project, recipe, layer, &known);
            }
        }
    }
    known.into_iter().map(Option::unwrap_or_default).collect()
}

/// The size of a mat or of a ribbon, once the size of what it follows or lies on is known.
fn following(project: &Project, recipe: &Recipe, layer: &Layer, known: &[Option<Size>]) -> Option<Size> {
    match &layer.material {
        Material::Mat { follows, border, .. } => {
            let inner = known.get(*follows).copied().flatten()?;
            Some(Size::new(inner.width + *border * 2, inner.height + *border * 2))
        }
        Material::Ribbon { ribbon, length, .. } => {
            let host = match layer.placement.on {
                Some(on) if on < known.len() => known[on]?,
                _ => recipe.finished,
            };
            let width = project.ribbons.get(*ribbon).map_or(Length::ZERO, |ribbon| ribbon.width);
            Some(Size::new(host.width.min(*length), width))
        }
        _ => None,
    }
}

/// What a layer lies on: the layer it names, the mat that follows it, or the front itself (`None`).
pub(super) fn host(recipe: &Recipe, index: usize) -> Option<usize> {
    let layer = &recipe.layers[index];
    if let Some(on) = layer.placement.on {
        return (on < recipe.layers.len() && on != index).then_some(on);
    }
    let unmoved = layer.placement.anchor == Anchor::Middle
        && layer.placement.right == Length::ZERO
        && layer.placement.down == Length::ZERO;
    if !unmoved {
        return None;
    }
    recipe.layers.iter().position(|other| matches!(other.material, Material::Mat { follows, .. } if follows == index))
}

/// Where each layer lies on the front, top left of the front is 0, 0.
///
/// Layers that lie on one another in a circle are placed on the front.
pub(super) fn places(recipe: &Recipe, sizes: &[Size]) -> Vec<Rect> {
    let mut places: Vec<Option<Rect>> = vec![None; sizes.len()];
    for _ in 0..sizes.len() {
        for index in 0..sizes.len() {
            let under = match host(recipe, index) {
                None => Some(front(recipe)),
                Some(on) => places[on],
            };
            if let (None, Some(under)) = (places[index], under) {
                places[index] = Some(lay(&recipe.layers[index], sizes[index], under));
            }
        }
    }
    (places.into_iter().enumerate())
        .map(|(index, place)| place.unwrap_or_else(|| lay(&recipe.layers[index], sizes[index], front(recipe))))
        .collect()
}

/// The front of the card.
pub(super) fn front(recipe: &Recipe) -> Rect {
    Rect::new(Length::ZERO, Length::ZERO, recipe.finished)
}

/// A layer of that size, laid on `under` as its placement says.
fn lay(layer: &Layer, size: Size, under: Rect) -> Rect {
    let (column, row) = layer.placement.anchor.halves();
    let shift = |room: Length, halves: i64| Length::from_ticks(room.ticks() * halves / 2);
    Rect::new(
        under.x + shift(under.size.width - size.width, column) + layer.placement.right,
        under.y + shift(under.size.height - size.height, row) + layer.placement.down,
        size,
    )
}

/// The largest size a patterned layer may have so that it and the mats that follow it stay inside the front.
pub(super) fn room(recipe: &Recipe, index: usize) -> Size {
    let mut room = recipe.finished;
    let (mut inner, mut rounds) = (index, 0);
    while let Some((mat, border)) = mat_of(recipe, inner) {
        room = Size::new(room.width - border * 2, room.height - border * 2);
        (inner, rounds) = (mat, rounds + 1);
        if rounds > recipe.layers.len() {
            break;
        }
    }
    room
}

/// A range that looks right, bounded by the room there is, where a layer must keep to it and can.
pub(super) fn bounded(layer: &Layer, range: &Range, room: Length) -> Range {
    match layer.placement.overlap {
        false if range.least <= room => Range { least: range.least, most: range.most.min(room) },
        _ => *range,
    }
}

/// The mat that follows a layer, and its border.
fn mat_of(recipe: &Recipe, inner: usize) -> Option<(usize, Length)> {
    recipe.layers.iter().enumerate().find_map(|(index, layer)| match layer.material {
        Material::Mat { follows, border, .. } if follows == inner => Some((index, border)),
        _ => None,
    })
}
