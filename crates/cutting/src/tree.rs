//! A cut plan: each inner node splits a rectangle in two, each leaf is a piece or waste.

/// Which side of a rectangle a cut divides.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
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
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
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
