//! A finished card as a body: what each layer weighs, how thick it is where it is thickest.

use std::collections::BTreeMap;

use measure::{Length, Rect};

use crate::model::{Fold, Material, Project, Recipe};
use crate::plan::{Card, CardPart, PartKind, Plan};
use crate::weight::Weight;

/// Thickness of layers whose own is not told, in micrometres: from memory, common practice for
/// paper of 120 g/m², cardstock of 216 g/m², flat ribbon, foam and a tied bow.
const PAPER_UM: u32 = 150;
const CARDSTOCK_UM: u32 = 280;
const RIBBON_UM: u32 = 300;
const FOAM_UM: u32 = 1_000;
const BOW_UM: u32 = 5_000;
/// One side of an envelope (24 lb bond: 0.11 mm).
const ENVELOPE_UM: u32 = 110;
/// Paper of an envelope in g/m² where the maker tells none: 24 lb bond.
pub(super) const ENVELOPE_GSM: u32 = 90;
/// Tape, ribbon, foam and glue of one card together where the maker tells none: 1 to 2 g, from memory.
const EXTRAS: Weight = Weight::GRAM;

/// Which layer of a card.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Of {
    /// The base, folded.
    Base,
    /// The sheet inside.
    Inside,
    /// A layer of the recipe, by index.
    Layer(usize),
    /// Foam squares under a layer, by its index.
    Foam(usize),
    /// Tape, ribbon, foam and glue together: a weight without a thickness of its own.
    Extras,
    /// The envelope.
    Envelope,
}

/// One layer of a card.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct BodyLayer {
    /// Which.
    pub of: Of,
    /// How thick it is.
    pub um: u32,
    /// What it weighs; `None` where its grammage is not told, or where it is weighed with the extras.
    pub weight: Option<Weight>,
    /// True if the maker told its thickness.
    pub measured: bool,
}

/// A card with its layers counted and weighed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Body {
    /// The layers, bottom first.
    pub layers: Vec<BodyLayer>,
    /// At the thickest point of the front, where layers really lie over each other.
    pub thickest_um: u32,
    /// All layers as if they met in one point: never less than the card is.
    pub stacked_um: u32,
    /// What is known of its weight.
    pub weight: Weight,
    /// True if a grammage is missing: it weighs at least that.
    pub at_least: bool,
    /// True with a bow on it.
    pub bow: bool,
}

/// Thickness of a finished card: every layer counted as if they all met in one point.
///
/// # Source
/// Told thicknesses are the maker's; the rest is common practice, from memory.
pub(crate) fn stacked(project: &Project, recipe: &Recipe) -> Length {
    let mut um = base_um(project, recipe).0 + inside_um(project, recipe).unwrap_or(0);
    for layer in &recipe.layers {
        let first = match &layer.material {
            Material::Mat { cardstock, .. } => cardstock.first().map(|(_, index)| *index),
            Material::Plain { cardstock, .. } | Material::Strip { cardstock, .. } => Some(*cardstock),
            _ => None,
        };
        um += layer_um(project, &layer.material, None, first).0 + foam_um(project, &layer.material);
    }
    length_of(um)
}

/// So many micrometres.
pub(crate) fn length_of(um: u32) -> Length {
    Length::from_ticks(i64::from(um) * (Length::MM.ticks() / 1_000))
}

/// The finished card as a body.
pub fn body(plan: &Plan, card: &Card) -> Body {
    let project = &plan.project;
    let recipe = &project.recipes[card.recipe];
    let gsm = |cardstock: usize| project.cardstocks.get(cardstock).and_then(|stock| stock.grammage_gsm);
    let paper = |area: i128, gsm: Option<u32>| gsm.map(|gsm| Weight::of_paper(area, u64::from(gsm) * 1_000_000));
    let (um, measured) = base_um(project, recipe);
    let base = paper(recipe.base_size().0.area(), gsm(recipe.base));
    let mut layers = vec![BodyLayer { of: Of::Base, um, weight: base, measured }];
    if let (Some((size, cardstock)), Some(um)) = (recipe.inside, inside_um(project, recipe)) {
        let measured = project.cardstocks.get(cardstock).is_some_and(|stock| stock.thickness_um.is_some());
        layers.push(BodyLayer { of: Of::Inside, um, weight: paper(size.area(), gsm(cardstock)), measured });
    }
    let under: u32 = layers.iter().map(|layer| layer.um).sum();
    let mut raised: Vec<(Rect, u32)> = Vec::new();
    let mut bow = false;
    for part in &card.parts {
        let material = &recipe.layers[part.layer].material;
        let pack = match part.kind {
            PartKind::Patterned { layout, .. } => plan.layouts.get(layout).map(|layout| layout.pack),
            _ => None,
        };
        let (um, measured) = layer_um(project, material, pack, cardstock_of(part));
        let weight = match part.kind {
            PartKind::Patterned { .. } => {
                paper(part.rect.size.area(), pack.and_then(|pack| project.packs.get(pack)?.grammage_gsm))
            }
            PartKind::Cardstock(stock) | PartKind::Strip(stock, _) => paper(part.rect.size.area(), gsm(stock)),
            PartKind::Ribbon(_, tied) => {
                bow |= tied;
                None
            }
        };
        let foam = foam_um(project, material);
        if foam > 0 {
            layers.push(BodyLayer { of: Of::Foam(part.layer), um: foam, weight: None, measured: false });
        }
        layers.push(BodyLayer { of: Of::Layer(part.layer), um, weight, measured });
        raised.push((part.rect, um + foam));
    }
    let at_least = layers.iter().any(|layer| layer.weight.is_none() && wants_weight(recipe, layer.of));
    let extras = project.trade.post.extras;
    let measured = extras.is_some();
    layers.push(BodyLayer { of: Of::Extras, um: 0, weight: Some(extras.unwrap_or(EXTRAS)), measured });
    let stacked_um = layers.iter().map(|layer| layer.um).sum();
    let weight = layers.iter().filter_map(|layer| layer.weight).sum();
    Body { layers, thickest_um: under + deepest(&raised), stacked_um, weight, at_least, bow }
}

/// The two sides of an envelope with that face.
pub(super) fn envelope_layer(project: &Project, face: i128) -> BodyLayer {
    let told = project.trade.post.envelope_gsm;
    let gsm = u64::from(told.unwrap_or(ENVELOPE_GSM)) * 1_000_000;
    // The blank is about 2.5 times the face: rule of thumb, from memory.
    let weight = Weight::of_paper(face * 5 / 2, gsm);
    BodyLayer { of: Of::Envelope, um: ENVELOPE_UM * 2, weight: Some(weight), measured: told.is_some() }
}

/// Foam and ribbon are weighed with the extras.
fn wants_weight(recipe: &Recipe, of: Of) -> bool {
    match of {
        Of::Layer(index) => !matches!(recipe.layers[index].material, Material::Ribbon { .. }),
        Of::Base | Of::Inside => true,
        Of::Foam(_) | Of::Extras | Of::Envelope => false,
    }
}

fn cardstock_of(part: &CardPart) -> Option<usize> {
    match part.kind {
        PartKind::Cardstock(stock) | PartKind::Strip(stock, _) => Some(stock),
        _ => None,
    }
}

fn stock_um(project: &Project, index: usize) -> (u32, bool) {
    let told = project.cardstocks.get(index).and_then(|stock| stock.thickness_um);
    (told.unwrap_or(CARDSTOCK_UM), told.is_some())
}

fn base_um(project: &Project, recipe: &Recipe) -> (u32, bool) {
    let sheets = match recipe.fold {
        Fold::Flat => 1,
        Fold::Side | Fold::Top | Fold::Gate => 2,
        Fold::Zed => 3,
    };
    let (um, measured) = stock_um(project, recipe.base);
    (um * sheets, measured)
}

/// A sheet inside that is larger than the closed card is folded with it.
fn inside_um(project: &Project, recipe: &Recipe) -> Option<u32> {
    let (size, index) = recipe.inside?;
    let layers = if size.fits(recipe.finished) { 1 } else { 2 };
    Some(stock_um(project, index).0 * layers)
}

/// How thick a layer is, and whether the maker told so.
fn layer_um(project: &Project, material: &Material, pack: Option<usize>, cardstock: Option<usize>) -> (u32, bool) {
    match material {
        Material::Patterned { .. } => {
            let told = pack.and_then(|pack| project.packs.get(pack)?.thickness_um);
            (told.unwrap_or(PAPER_UM), told.is_some())
        }
        Material::Mat { .. } | Material::Plain { .. } | Material::Strip { .. } => {
            cardstock.map_or((CARDSTOCK_UM, false), |index| stock_um(project, index))
        }
        Material::Ribbon { bow: true, .. } => {
            let told = project.trade.post.bow_um;
            (told.unwrap_or(BOW_UM), told.is_some())
        }
        Material::Ribbon { ribbon, .. } => {
            let told = project.ribbons.get(*ribbon).and_then(|ribbon| ribbon.thickness_um);
            (told.unwrap_or(RIBBON_UM), told.is_some())
        }
    }
}

fn foam_um(project: &Project, material: &Material) -> u32 {
    match material {
        Material::Strip { foam_squares, .. } if *foam_squares > 0 => project.trade.post.foam_um.unwrap_or(FOAM_UM),
        _ => 0,
    }
}

/// The most that lies over one point of the front.
///
/// Between two neighbouring edges nothing changes, so one point of each cell of the grid of all edges is enough.
fn deepest(raised: &[(Rect, u32)]) -> u32 {
    let starts = |of: fn(&Rect) -> Length| -> Vec<Length> { raised.iter().map(|(rect, _)| of(rect)).collect() };
    // A deepest cell has its left edge at the left of some layer and its top edge at the top of some layer.
    let mut most: BTreeMap<(Length, Length), u32> = BTreeMap::new();
    for x in starts(|rect| rect.x) {
        for y in starts(|rect| rect.y) {
            let over = |(rect, _): &&(Rect, u32)| rect.x <= x && x < rect.right() && rect.y <= y && y < rect.bottom();
            most.insert((x, y), raised.iter().filter(over).map(|(_, um)| um).sum());
        }
    }
    most.into_values().max().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use measure::Size;

    #[test]
    fn only_what_lies_over_each_other_adds_up() {
        let rect = |x, y, w, h| Rect::new(Length::mm(x), Length::mm(y), Size::new(Length::mm(w), Length::mm(h)));
        let cross = [(rect(0, 4, 10, 2), 5), (rect(4, 0, 2, 10), 7)];
        assert_eq!(deepest(&cross), 12);
        let apart = [(rect(0, 0, 5, 5), 5), (rect(5, 0, 5, 5), 7)];
        assert_eq!(deepest(&apart), 7, "edges that touch do not lie over each other");
        assert_eq!(deepest(&[]), 0);
    }
}
