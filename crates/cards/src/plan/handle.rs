//! A layer taken hold of on the front of its card: what it becomes when an edge or the whole of it is moved.
//!
//! Left out on purpose: whether it looks right there and whether the sheet can still be cut; a plan says that.

use measure::{Length, Rect};

use super::fit;
use crate::model::{Layer, Material, Range, Recipe};

/// Where a layer is taken hold of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Handle {
    /// Its left edge.
    Left,
    /// Its top edge.
    Top,
    /// Its right edge.
    Right,
    /// Its bottom edge.
    Bottom,
    /// All of it.
    Whole,
}

impl Handle {
    /// All of them, edges first.
    pub const ALL: [Handle; 5] = [Handle::Left, Handle::Top, Handle::Right, Handle::Bottom, Handle::Whole];

    /// True if it moves to the left and the right.
    pub fn goes_across(self) -> bool {
        matches!(self, Handle::Left | Handle::Right | Handle::Whole)
    }

    /// True if it moves up and down.
    pub fn goes_down(self) -> bool {
        matches!(self, Handle::Top | Handle::Bottom | Handle::Whole)
    }

    /// Where on a layer it is: along the way it moves; for the whole of it the top left corner.
    pub fn at(self, layer: Rect) -> (Length, Length) {
        match self {
            Handle::Left | Handle::Top | Handle::Whole => (layer.x, layer.y),
            Handle::Right => (layer.right(), layer.y),
            Handle::Bottom => (layer.x, layer.bottom()),
        }
    }
}

/// Why a layer stays as it is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Holds {
    /// There is no such layer.
    NoLayer,
    /// Its size comes from something else: a ribbon's from its spool.
    NoSize,
    /// It would be smaller than that.
    TooSmall(Length),
}

/// The handles a layer has.
pub fn handles(layer: &Layer) -> &'static [Handle] {
    match layer.material {
        Material::Ribbon { .. } => &[Handle::Whole],
        _ => &Handle::ALL,
    }
}

/// What a layer lies on: an earlier layer, or the front of the card.
pub fn lies_on(recipe: &Recipe, layer: usize) -> Option<usize> {
    (layer < recipe.layers.len()).then(|| fit::host(recipe, layer)).flatten()
}

/// A layer with a handle moved by so much to the right and down.
///
/// `is` is where it lies now. A layer in the middle of what it lies on stays in the middle and grows on both sides;
/// elsewhere the edge opposite stays where it is. A mat grows all round, because it follows what lies on it. Where a
/// range looks right, the layer gets the one size that the hand gave it. No side becomes less than `least`.
///
/// # Errors
/// [`Holds`], and the layer stays as it is.
pub fn taken(
    recipe: &Recipe,
    layer: usize,
    is: Rect,
    handle: Handle,
    (right, down): (Length, Length),
    least: Length,
) -> Result<Layer, Holds> {
    let mut new = recipe.layers.get(layer).ok_or(Holds::NoLayer)?.clone();
    if !handles(&new).contains(&handle) {
        return Err(Holds::NoSize);
    }
    if handle == Handle::Whole {
        new.placement.right += right;
        new.placement.down += down;
        return Ok(new);
    }
    // How much longer the side becomes at the edge in hand.
    let (across, grow) = match handle {
        Handle::Left => (true, -right),
        Handle::Right => (true, right),
        Handle::Top => (false, -down),
        _ => (false, down),
    };
    if let Material::Mat { border, .. } = &mut new.material {
        *border += grow;
        return if *border < least { Err(Holds::TooSmall(least)) } else { Ok(new) };
    }
    let (column, row) = new.placement.anchor.halves();
    let halves = if across { column } else { row };
    let shift = if across { &mut new.placement.right } else { &mut new.placement.down };
    let in_the_middle = halves == 1 && *shift == Length::ZERO;
    let more = if in_the_middle { grow * 2 } else { grow };
    if !in_the_middle {
        // What the anchor takes of the growth, and the rest of it where the first edge is in hand.
        *shift += Length::from_ticks(grow.ticks() * halves / 2);
        if matches!(handle, Handle::Left | Handle::Top) {
            *shift -= grow;
        }
    }
    let side = if across { is.size.width } else { is.size.height } + more;
    if side < least {
        return Err(Holds::TooSmall(least));
    }
    match &mut new.material {
        Material::Patterned { width, height, prefer, .. } => {
            let (range, liked) = if across { (width, &mut prefer.width) } else { (height, &mut prefer.height) };
            // A hand that draws an edge to a place means that place, not one of many about it.
            *range = Range { least: side, most: side };
            *liked = side;
        }
        Material::Plain { size, .. } | Material::Strip { size, .. } => {
            *(if across { &mut size.width } else { &mut size.height }) = side;
        }
        Material::Mat { .. } | Material::Ribbon { .. } => return Err(Holds::NoSize),
    }
    Ok(new)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use measure::Size;

    use super::*;
    use crate::model::{Anchor, Fold, Placement};

    fn inch(sixteenths: i64) -> Length {
        Length::from_ticks(Length::INCH.ticks() / 16 * sixteenths)
    }

    fn recipe(anchor: Anchor, right: Length, down: Length) -> Recipe {
        let placement = Placement { on: None, anchor, right, down, overlap: false };
        let material = Material::Plain { size: Size::new(inch(32), inch(16)), cardstock: 0 };
        Recipe {
            name: "one".into(),
            finished: Size::new(inch(56), inch(80)),
            fold: Fold::Side,
            base: 0,
            inside: None,
            layers: vec![Layer { name: "tag".into(), material, placement, stamped: None }],
            designs: Vec::new(),
            least: 0,
            most: None,
        }
    }

    fn place(recipe: &Recipe) -> Rect {
        let Material::Plain { size, .. } = recipe.layers[0].material else { unreachable!("it is plain") };
        fit::places(recipe, &[size])[0]
    }

    #[test]
    fn the_edge_in_hand_follows_and_the_one_opposite_stays() {
        let anchors = [Anchor::TopLeft, Anchor::Top, Anchor::BottomRight, Anchor::Left, Anchor::Middle];
        for anchor in anchors {
            for handle in Handle::ALL.into_iter().filter(|handle| *handle != Handle::Whole) {
                // A shift of its own, so that nothing is in the middle.
                let mut made = recipe(anchor, inch(1), inch(2));
                let before = place(&made);
                let by = (
                    if handle.goes_across() { inch(4) } else { Length::ZERO },
                    if handle.goes_down() { inch(4) } else { Length::ZERO },
                );
                made.layers[0] = taken(&made, 0, before, handle, by, inch(1)).unwrap();
                let after = place(&made);
                let edges = |rect: Rect| [rect.x, rect.y, rect.right(), rect.bottom()];
                let moved = Handle::ALL.iter().position(|one| *one == handle).unwrap();
                for (edge, (was, is)) in edges(before).into_iter().zip(edges(after)).enumerate() {
                    assert_eq!(is - was, if edge == moved { inch(4) } else { Length::ZERO }, "{anchor:?} {handle:?}");
                }
            }
        }
    }

    #[test]
    fn what_lies_in_the_middle_stays_there_and_grows_on_both_sides() {
        let mut made = recipe(Anchor::Middle, Length::ZERO, Length::ZERO);
        let before = place(&made);
        made.layers[0] = taken(&made, 0, before, Handle::Left, (-inch(2), Length::ZERO), inch(1)).unwrap();
        let after = place(&made);
        assert_eq!((before.x - after.x, after.right() - before.right()), (inch(2), inch(2)));
        assert_eq!((before.y, before.size.height), (after.y, after.size.height));
    }

    #[test]
    fn the_whole_moves_and_keeps_its_size() {
        let mut made = recipe(Anchor::Bottom, Length::ZERO, Length::ZERO);
        let before = place(&made);
        made.layers[0] = taken(&made, 0, before, Handle::Whole, (inch(3), -inch(5)), inch(1)).unwrap();
        assert_eq!(place(&made), Rect::new(before.x + inch(3), before.y - inch(5), before.size));
    }

    #[test]
    fn nothing_becomes_less_than_it_may() {
        let made = recipe(Anchor::TopLeft, Length::ZERO, Length::ZERO);
        let by = (-inch(32), Length::ZERO);
        assert_eq!(taken(&made, 0, place(&made), Handle::Right, by, inch(1)), Err(Holds::TooSmall(inch(1))));
        assert_eq!(taken(&made, 7, place(&made), Handle::Right, by, inch(1)), Err(Holds::NoLayer));
    }
}
