//! A way to cut one sheet, with the numbers of pieces it gives.

use super::table::join;
use crate::Tree;

/// One way to cut one sheet of a kind.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Pattern {
    pub(super) sheet: usize,
    pub(super) tree: Tree,
    /// How many of each item (index in the search's items).
    pub(super) counts: Vec<u32>,
}

impl Pattern {
    /// The pattern of a tree; `place[kind]` is the item of a piece kind.
    pub(super) fn of(sheet: usize, tree: Tree, place: &[Option<usize>], items: usize) -> Pattern {
        let mut counts = vec![0; items];
        count(&tree, place, &mut counts);
        Pattern { sheet, tree, counts }
    }
}

fn count(tree: &Tree, place: &[Option<usize>], counts: &mut [u32]) {
    match tree {
        Tree::Cut { first, second, .. } => {
            count(first, place, counts);
            count(second, place, counts);
        }
        Tree::Piece { kind, .. } => {
            if let Some(item) = place[*kind] {
                counts[item] += 1;
            }
        }
        Tree::Waste => {}
    }
}

/// The tree with pieces turned to waste once `left[kind]` of them are used up; `left` is counted down.
pub(super) fn trim(tree: &Tree, left: &mut [u32]) -> Tree {
    match tree {
        Tree::Cut { axis, at, first, second } => {
            let first = trim(first, left);
            join(*axis, *at, first, trim(second, left))
        }
        Tree::Piece { kind, .. } if left[*kind] == 0 => Tree::Waste,
        Tree::Piece { kind, .. } => {
            left[*kind] -= 1;
            tree.clone()
        }
        Tree::Waste => Tree::Waste,
    }
}
