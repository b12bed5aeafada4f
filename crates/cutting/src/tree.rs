//! A cut tree: each inner node splits a rectangle in two, each leaf is a piece or waste.
//!
//! Offers where the pieces lie ([`pieces`]), the same tree with cuts of one direction side by side
//! ([`Rows`]), and a key that mirror images and re-ordered siblings share ([`canonical`]).
//! Leaves out: whether the pieces are the ones asked for ([`crate::verify`]) and how a person
//! makes the cuts ([`crate::steps`]).

use serde::Serialize;

/// Which side of a rectangle a cut divides.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Axis {
    /// An upright cut line: it divides the width; `first` is the left part.
    X,
    /// A level cut line: it divides the height; `first` is the upper part.
    Y,
}

impl Axis {
    /// The axis at right angles to this one.
    pub fn across(self) -> Axis {
        match self {
            Axis::X => Axis::Y,
            Axis::Y => Axis::X,
        }
    }

    /// The side of a rectangle that this axis divides.
    pub fn of(self, width: u32, height: u32) -> u32 {
        match self {
            Axis::X => width,
            Axis::Y => height,
        }
    }
}

/// A cut tree over a rectangle whose size the holder knows.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Tree {
    /// One straight cut, edge to edge.
    Cut {
        /// Which side it divides.
        axis: Axis,
        /// Distance of the cut from the left (X) or top (Y) edge of the rectangle in hand, in steps.
        at: u32,
        /// The left or upper part.
        first: Box<Tree>,
        /// The right or lower part.
        second: Box<Tree>,
    },
    /// A piece of the given kind fills the rectangle.
    Piece {
        /// Index of the kind in the instance.
        kind: usize,
        /// Width as it lies on the sheet, in steps.
        width: u32,
        /// Height as it lies on the sheet, in steps.
        height: u32,
        /// True if it lies a quarter turn from the way its kind is written.
        turned: bool,
    },
    /// Nothing that was asked for.
    Waste,
}

/// A piece where it lies on the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct Placed {
    /// Index of the kind in the instance.
    pub kind: usize,
    /// Left edge in steps.
    pub x: u32,
    /// Top edge in steps.
    pub y: u32,
    /// Width as it lies, in steps.
    pub width: u32,
    /// Height as it lies, in steps.
    pub height: u32,
    /// True if it lies a quarter turn from the way its kind is written.
    pub turned: bool,
}

/// Why a tree does not fit its rectangle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum TreeError {
    /// A cut that is not strictly inside the rectangle it divides.
    #[error("a cut {axis:?} at {at} does not divide a side of {side}")]
    CutOutside {
        /// Its axis.
        axis: Axis,
        /// Its distance from the left or top edge.
        at: u32,
        /// The side it should divide.
        side: u32,
    },
    /// A piece that is smaller or larger than its rectangle.
    #[error("a piece of {} by {} lies in a rectangle of {width} by {height}", piece.width, piece.height)]
    Misfit {
        /// The piece, at the rectangle's corner.
        piece: Placed,
        /// The rectangle's width.
        width: u32,
        /// The rectangle's height.
        height: u32,
    },
}

/// Where every piece of a tree lies, in the tree's order.
///
/// # Errors
/// [`TreeError::CutOutside`] or [`TreeError::Misfit`] for the first place where the tree does not
/// fit a rectangle of `width` by `height` steps.
///
/// # Examples
/// ```
/// use cutting::tree::{Axis, Placed, Tree, pieces};
///
/// let piece = Tree::Piece { kind: 4, width: 2, height: 3, turned: false };
/// let tree = Tree::Cut { axis: Axis::X, at: 5, first: Box::new(Tree::Waste), second: Box::new(piece) };
/// assert_eq!(pieces(&tree, 7, 3), Ok(vec![Placed { kind: 4, x: 5, y: 0, width: 2, height: 3, turned: false }]));
/// ```
pub fn pieces(tree: &Tree, width: u32, height: u32) -> Result<Vec<Placed>, TreeError> {
    let mut found = Vec::new();
    place(tree, [0, 0, width, height], &mut found)?;
    Ok(found)
}

fn place(tree: &Tree, [x, y, w, h]: [u32; 4], found: &mut Vec<Placed>) -> Result<(), TreeError> {
    match *tree {
        Tree::Waste => Ok(()),
        Tree::Piece { kind, width, height, turned } => {
            let piece = Placed { kind, x, y, width, height, turned };
            if (width, height) != (w, h) {
                return Err(TreeError::Misfit { piece, width: w, height: h });
            }
            found.push(piece);
            Ok(())
        }
        Tree::Cut { axis, at, ref first, ref second } => {
            let side = axis.of(w, h);
            if at == 0 || at >= side {
                return Err(TreeError::CutOutside { axis, at, side });
            }
            let (near, far) = match axis {
                Axis::X => ([x, y, at, h], [x + at, y, w - at, h]),
                Axis::Y => ([x, y, w, at], [x, y + at, w, h - at]),
            };
            place(first, near, found)?;
            place(second, far, found)
        }
    }
}

/// Where every rectangle lies that nothing was asked for: left, top, width and height in steps, in the tree's order.
///
/// # Errors
/// As [`pieces`].
///
/// # Examples
/// ```
/// use cutting::tree::{Axis, Tree, rests};
///
/// let piece = Tree::Piece { kind: 4, width: 2, height: 3, turned: false };
/// let tree = Tree::Cut { axis: Axis::X, at: 5, first: Box::new(Tree::Waste), second: Box::new(piece) };
/// assert_eq!(rests(&tree, 7, 3), Ok(vec![[0, 0, 5, 3]]));
/// ```
pub fn rests(tree: &Tree, width: u32, height: u32) -> Result<Vec<[u32; 4]>, TreeError> {
    // The walk that finds the pieces also refuses a tree that does not fit.
    pieces(tree, width, height)?;
    let mut found = Vec::new();
    let mut open = vec![(tree, [0, 0, width, height])];
    while let Some((tree, [x, y, w, h])) = open.pop() {
        match *tree {
            Tree::Waste => found.push([x, y, w, h]),
            Tree::Piece { .. } => {}
            Tree::Cut { axis: Axis::X, at, ref first, ref second } => {
                open.push((second, [x + at, y, w - at, h]));
                open.push((first, [x, y, at, h]));
            }
            Tree::Cut { axis: Axis::Y, at, ref first, ref second } => {
                open.push((second, [x, y + at, w, h - at]));
                open.push((first, [x, y, w, at]));
            }
        }
    }
    Ok(found)
}

/// Area of the rectangle that no piece covers, in square steps.
///
/// # Errors
/// As [`pieces`].
pub fn waste_area(tree: &Tree, width: u32, height: u32) -> Result<u64, TreeError> {
    let used = pieces(tree, width, height)?.iter().map(|p| u64::from(p.width) * u64::from(p.height)).sum::<u64>();
    Ok(u64::from(width) * u64::from(height) - used)
}

/// A tree whose cuts of one direction stand side by side in one row.
///
/// A row has at least two parts, no part of a row is a row of the same axis, and waste that touches
/// waste in a row is one part.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Rows {
    /// Parts from left to right (X) or from top to bottom (Y), each with its size along the axis.
    Row {
        /// Which side the cuts divide.
        axis: Axis,
        /// The parts.
        parts: Vec<(u32, Rows)>,
    },
    /// A piece fills the rectangle.
    Piece {
        /// Index of the kind in the instance.
        kind: usize,
        /// True if it lies a quarter turn from the way its kind is written.
        turned: bool,
    },
    /// Nothing that was asked for.
    Waste,
}

/// The tree with cuts of one direction side by side.
///
/// # Errors
/// As [`pieces`].
pub fn rows(tree: &Tree, width: u32, height: u32) -> Result<Rows, TreeError> {
    pieces(tree, width, height)?;
    Ok(flat(tree, width, height))
}

fn flat(tree: &Tree, width: u32, height: u32) -> Rows {
    match *tree {
        Tree::Waste => Rows::Waste,
        Tree::Piece { kind, turned, .. } => Rows::Piece { kind, turned },
        Tree::Cut { axis, .. } => {
            let mut parts = Vec::new();
            gather(tree, axis, (width, height), &mut parts);
            if parts.len() == 1 { parts.remove(0).1 } else { Rows::Row { axis, parts } }
        }
    }
}

fn gather(tree: &Tree, row: Axis, (width, height): (u32, u32), parts: &mut Vec<(u32, Rows)>) {
    match tree {
        Tree::Cut { axis, at, first, second } if *axis == row => {
            let (near, far) = match row {
                Axis::X => ((*at, height), (width - at, height)),
                Axis::Y => ((width, *at), (width, height - at)),
            };
            gather(first, row, near, parts);
            gather(second, row, far, parts);
        }
        _ => match (flat(tree, width, height), parts.last_mut()) {
            (Rows::Waste, Some((size, Rows::Waste))) => *size += row.of(width, height),
            (part, _) => parts.push((row.of(width, height), part)),
        },
    }
}

impl Rows {
    /// The same cuts as a tree of two-way cuts, each taking off the first part of its row.
    ///
    /// The rectangle has `width` by `height` steps.
    pub fn tree(&self, width: u32, height: u32) -> Tree {
        match self {
            Rows::Waste => Tree::Waste,
            Rows::Piece { kind, turned } => Tree::Piece { kind: *kind, width, height, turned: *turned },
            Rows::Row { axis, parts } => {
                let mut open: Vec<(u32, Tree)> = Vec::with_capacity(parts.len());
                for (size, part) in parts {
                    let (w, h) = if *axis == Axis::X { (*size, height) } else { (width, *size) };
                    open.push((*size, part.tree(w, h)));
                }
                let last = open.pop().map_or(Tree::Waste, |(_, tree)| tree);
                open.into_iter().rev().fold(last, |second, (at, first)| Tree::Cut {
                    axis: *axis,
                    at,
                    first: Box::new(first),
                    second: Box::new(second),
                })
            }
        }
    }
}

/// A key that two trees share exactly if one becomes the other by re-ordering the parts of rows.
///
/// Mirror images are such re-orderings. A tree and its transposed copy have different keys, since
/// print and grain tell them apart.
///
/// # Errors
/// As [`pieces`].
pub fn canonical(tree: &Tree, width: u32, height: u32) -> Result<Rows, TreeError> {
    Ok(sorted(rows(tree, width, height)?))
}

fn sorted(rows: Rows) -> Rows {
    let Rows::Row { axis, parts } = rows else { return rows };
    let mut wasted = 0;
    let mut sorted_parts = Vec::with_capacity(parts.len());
    for (size, part) in parts {
        match part {
            Rows::Waste => wasted += size,
            part => sorted_parts.push((size, sorted(part))),
        }
    }
    sorted_parts.sort();
    if wasted > 0 {
        sorted_parts.push((wasted, Rows::Waste));
    }
    Rows::Row { axis, parts: sorted_parts }
}

/// The tree's image when left and right ([`Axis::X`]) or top and bottom ([`Axis::Y`]) change places.
///
/// # Errors
/// As [`pieces`].
pub fn mirror(tree: &Tree, width: u32, height: u32, across: Axis) -> Result<Tree, TreeError> {
    pieces(tree, width, height)?;
    Ok(mirrored(tree, width, height, across))
}

fn mirrored(tree: &Tree, width: u32, height: u32, across: Axis) -> Tree {
    let Tree::Cut { axis, at, first, second } = tree else { return tree.clone() };
    let ((fw, fh), (sw, sh)) = match axis {
        Axis::X => ((*at, height), (width - at, height)),
        Axis::Y => ((width, *at), (width, height - at)),
    };
    let first = Box::new(mirrored(first, fw, fh, across));
    let second = Box::new(mirrored(second, sw, sh, across));
    if *axis == across {
        Tree::Cut { axis: *axis, at: axis.of(width, height) - at, first: second, second: first }
    } else {
        Tree::Cut { axis: *axis, at: *at, first, second }
    }
}
