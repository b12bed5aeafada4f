//! Which cuts may be made: how often the sheet may be turned, and how narrow a strip may be.

use crate::{Axis, Tree};

/// A limit on the turns of a sheet between cuts: all parts are cut one way, then all the other way, and so on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Stages {
    /// At most so many runs of cuts of one direction, at least 2; either direction may be the first.
    pub most: u8,
    /// True if one run more may trim pieces to size: then it only cuts waste off single pieces.
    pub trim: bool,
}

/// Which cuts may be made. By default: all that run edge to edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Rules {
    /// A limit on turns of the sheet; `None`: any number.
    pub stages: Option<Stages>,
    /// No cut may leave a part narrower than this, in steps, waste or not; 0 and 1: no rule.
    pub least_strip: u32,
}

/// Steps along the edges of a sheet that cannot be used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Edges {
    /// At the left edge.
    pub left: u32,
    /// At the right edge.
    pub right: u32,
    /// At the top edge.
    pub top: u32,
    /// At the bottom edge.
    pub bottom: u32,
}

impl Edges {
    /// The whole sheet can be used.
    pub const NONE: Edges = Edges { left: 0, right: 0, top: 0, bottom: 0 };

    /// Width and height inside the edges; `None` if nothing is left.
    pub(super) fn inside(self, width: u32, height: u32) -> Option<(u32, u32)> {
        let w = width.checked_sub(self.left)?.checked_sub(self.right).filter(|&w| w > 0)?;
        let h = height.checked_sub(self.top)?.checked_sub(self.bottom).filter(|&h| h > 0)?;
        Some((w, h))
    }

    /// The tree of the whole sheet for a tree of what is inside.
    pub(super) fn around(self, tree: Tree, (width, height): (u32, u32)) -> Tree {
        let Some((w, h)) = self.inside(width, height).filter(|_| tree != Tree::Waste) else { return tree };
        let cut = |axis, at, first, second| super::table::join(axis, at, first, second);
        let mut tree = tree;
        if self.bottom > 0 {
            tree = cut(Axis::Y, h, tree, Tree::Waste);
        }
        if self.top > 0 {
            tree = cut(Axis::Y, self.top, Tree::Waste, tree);
        }
        if self.right > 0 {
            tree = cut(Axis::X, w, tree, Tree::Waste);
        }
        if self.left > 0 {
            tree = cut(Axis::X, self.left, Tree::Waste, tree);
        }
        tree
    }
}

/// Chosen: more runs than this are taken as any number.
pub(super) const MOST_STAGES: u8 = 8;

impl Rules {
    /// True if any edge-to-edge cut may be made.
    pub(super) fn plain(self) -> bool {
        self.stages.is_none() && !self.strips()
    }

    /// True if narrow strips are forbidden.
    pub(super) fn strips(self) -> bool {
        self.least_strip > 1
    }

    /// True if a part may be cut off a side, or is all of it.
    pub(super) fn splits(self, part: u32, whole: u32) -> bool {
        part == whole || (part >= self.least_strip && whole - part >= self.least_strip)
    }

    /// True if a tree of a rectangle keeps the rules.
    pub(super) fn allow(self, tree: &Tree, width: u32, height: u32) -> bool {
        self.wide(tree, width, height) && self.stages.is_none_or(|s| in_stages(tree, None, s.most, s.trim))
    }

    fn wide(self, tree: &Tree, width: u32, height: u32) -> bool {
        let Tree::Cut { axis, at, first, second } = tree else { return true };
        let side = if *axis == Axis::X { width } else { height };
        let parts =
            if *axis == Axis::X { [(*at, height), (side - at, height)] } else { [(width, *at), (width, side - at)] };
        !self.strips()
            || (*at >= self.least_strip
                && side - at >= self.least_strip
                && self.wide(first, parts[0].0, parts[0].1)
                && self.wide(second, parts[1].0, parts[1].1))
    }
}

/// True if a tree needs at most `left` further runs, coming from cuts along `along`.
fn in_stages(tree: &Tree, along: Option<Axis>, left: u8, trim: bool) -> bool {
    let Tree::Cut { axis, first, second, .. } = tree else { return true };
    let same = along == Some(*axis);
    if same || left > 0 {
        let left = if same { left } else { left - 1 };
        return in_stages(first, Some(*axis), left, trim) && in_stages(second, Some(*axis), left, trim);
    }
    trim && matches!((&**first, &**second), (Tree::Piece { .. }, Tree::Waste) | (Tree::Waste, Tree::Piece { .. }))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cut(axis: Axis, at: u32, first: Tree, second: Tree) -> Tree {
        Tree::Cut { axis, at, first: Box::new(first), second: Box::new(second) }
    }

    #[test]
    fn runs_are_counted_and_trimming_is_one_more() {
        let piece = || Tree::Piece { kind: 0, width: 3, height: 3, turned: false };
        let row = cut(Axis::Y, 3, cut(Axis::X, 3, piece(), piece()), Tree::Waste);
        let stages = |most, trim| Rules { stages: Some(Stages { most, trim }), ..Rules::default() };
        assert!(stages(2, false).allow(&row, 6, 6));
        let trimmed = cut(Axis::Y, 4, cut(Axis::X, 3, cut(Axis::Y, 3, piece(), Tree::Waste), Tree::Waste), Tree::Waste);
        assert!(!stages(2, false).allow(&trimmed, 6, 6));
        assert!(stages(2, true).allow(&trimmed, 6, 6) && stages(3, false).allow(&trimmed, 6, 6));
        let pile = cut(Axis::Y, 6, cut(Axis::X, 3, cut(Axis::Y, 3, piece(), piece()), Tree::Waste), Tree::Waste);
        assert!(!stages(2, true).allow(&pile, 6, 7));
    }

    #[test]
    fn a_strip_below_the_least_is_seen() {
        let piece = Tree::Piece { kind: 0, width: 5, height: 6, turned: false };
        let tree = cut(Axis::X, 5, piece, Tree::Waste);
        let least = |least_strip| Rules { least_strip, ..Rules::default() };
        assert!(least(1).allow(&tree, 6, 6) && !least(2).allow(&tree, 6, 6) && least(2).allow(&tree, 7, 6));
    }
}
