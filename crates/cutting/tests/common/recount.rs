//! An independent recount of a flexible answer: walks the tree with its own arithmetic.

use cutting::flexible::{Instance, Layout};
use cutting::{Axis, Tree};

/// Pieces (kind, x, y, width, height, turned) and waste area of a tree; panics where a cut is outside.
pub(crate) fn walk(
    tree: &Tree,
    x: u32,
    y: u32,
    w: u32,
    h: u32,
    pieces: &mut Vec<(usize, u32, u32, u32, u32, bool)>,
) -> u64 {
    match tree {
        Tree::Waste => u64::from(w) * u64::from(h),
        Tree::Piece { kind, width, height, turned } => {
            assert_eq!((*width, *height), (w, h), "a piece fills its rectangle");
            pieces.push((*kind, x, y, w, h, *turned));
            0
        }
        Tree::Cut { axis: Axis::X, at, first, second } => {
            assert!(0 < *at && *at < w, "a cut runs inside");
            walk(first, x, y, *at, h, pieces) + walk(second, x + at, y, w - at, h, pieces)
        }
        Tree::Cut { axis: Axis::Y, at, first, second } => {
            assert!(0 < *at && *at < h, "a cut runs inside");
            walk(first, x, y, w, *at, pieces) + walk(second, x, y + at, w, h - at, pieces)
        }
    }
}

/// Checks one layout against its question.
pub(crate) fn check(instance: &Instance, layout: &Layout) {
    let mut pieces = Vec::new();
    let waste = walk(&layout.tree, 0, 0, instance.width, instance.height, &mut pieces);
    assert_eq!(waste, layout.waste, "the waste is what the tree leaves over");
    assert!(instance.cards.holds(layout.cards.iter().sum()), "the number of cards is allowed");
    for (recipe, &cards) in instance.recipes.iter().zip(&layout.cards) {
        assert!(recipe.cards.holds(cards), "a recipe keeps its bounds");
    }
    for (k, kind) in instance.kinds.iter().enumerate() {
        let own: Vec<_> = pieces.iter().filter(|p| p.0 == k).collect();
        let wanted: u32 = instance.recipes.iter().zip(&layout.cards).map(|(r, &n)| r.pieces[k] * n).sum();
        let wanted = wanted + instance.spares.get(k).copied().unwrap_or(0);
        assert_eq!(own.len(), wanted as usize, "kind {k} comes as often as it is wanted");
        let stands: Vec<(u32, u32)> = own.iter().map(|p| if p.5 { (p.4, p.3) } else { (p.3, p.4) }).collect();
        for (p, &(w, h)) in own.iter().zip(&stands) {
            assert!(kind.turn || !p.5, "kind {k} may not turn");
            assert!(kind.width.holds(w) && kind.height.holds(h), "kind {k} of {w} x {h} keeps its range");
            assert!(w % kind.step == 0 && h % kind.step == 0, "kind {k} lies on its step");
        }
        if kind.uniform {
            assert!(stands.windows(2).all(|p| p[0] == p[1]), "kind {k} has one size: {stands:?}");
        }
    }
    for pin in &instance.pins {
        assert!(
            pieces.iter().any(|p| (p.0, p.1, p.2, p.3, p.4) == (pin.kind, pin.x, pin.y, pin.width, pin.height)),
            "the pinned piece lies where it was pinned"
        );
    }
}
