//! The checker: is a tree really an answer to what was asked?
//!
//! Shares only types with any search, and walks the tree on its own. Reports every fault, not the
//! first. Leaves out: how good the answer is.

use std::ops::RangeInclusive;

use crate::tree::{Axis, Placed, Tree};

/// What pieces are asked for, in whole grid steps.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Demand {
    /// The kinds; [`Placed::kind`] is an index into them.
    pub kinds: Vec<Kind>,
    /// Pieces that must lie at given places.
    pub pins: Vec<Pin>,
}

/// One kind of piece, written the way it is held.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kind {
    /// Widths that will do.
    pub width: RangeInclusive<u32>,
    /// Heights that will do.
    pub height: RangeInclusive<u32>,
    /// Sizes must be this far apart, counted from the least; 0 and 1 allow every size.
    pub step: u32,
    /// May lie a quarter turn round on the sheet.
    pub turn: bool,
    /// All copies have one size.
    pub uniform: bool,
    /// How many copies; `8..=8` asks for exactly eight.
    pub count: RangeInclusive<u32>,
}

impl Kind {
    /// So many pieces of one size.
    pub fn exact(width: u32, height: u32, count: u32) -> Kind {
        Kind {
            width: width..=width,
            height: height..=height,
            step: 1,
            turn: false,
            uniform: true,
            count: count..=count,
        }
    }

    /// The same kind, allowed to lie a quarter turn round.
    #[must_use]
    pub fn turning(mut self) -> Kind {
        self.turn = true;
        self
    }
}

/// A piece that must lie at a given place; what is `None` is free. Each pin needs a piece of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Pin {
    /// Index of the kind.
    pub kind: usize,
    /// Left edge.
    pub x: Option<u32>,
    /// Top edge.
    pub y: Option<u32>,
    /// Width as it lies.
    pub width: Option<u32>,
    /// Height as it lies.
    pub height: Option<u32>,
}

impl Pin {
    fn holds(&self, piece: &Placed) -> bool {
        let agrees = |asked: Option<u32>, is: u32| asked.is_none_or(|asked| asked == is);
        self.kind == piece.kind
            && agrees(self.x, piece.x)
            && agrees(self.y, piece.y)
            && agrees(self.width, piece.width)
            && agrees(self.height, piece.height)
    }
}

/// What the checker counted in a sound tree.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Report {
    /// Area no piece covers, in square steps.
    pub waste: u64,
    /// Copies of every kind.
    pub pieces: Vec<u32>,
    /// Two-way cuts in the tree, those inside waste too.
    pub cuts: u32,
    /// Where the pieces lie, in the tree's order.
    pub placed: Vec<Placed>,
}

/// One thing that is wrong with a tree.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Fault {
    /// The sheet has no area.
    #[error("the sheet is empty")]
    EmptySheet,
    /// A cut that is not strictly inside its rectangle; what lies beyond it was not looked at.
    #[error("a cut {axis:?} at {at} does not divide a side of {side}")]
    CutOutside {
        /// Its axis.
        axis: Axis,
        /// Its distance.
        at: u32,
        /// The side it should divide.
        side: u32,
    },
    /// A piece is not as large as its rectangle.
    #[error("{piece:?} lies in a rectangle of {width} by {height}")]
    Misfit {
        /// The piece.
        piece: Placed,
        /// The rectangle's width.
        width: u32,
        /// The rectangle's height.
        height: u32,
    },
    /// A piece of a kind nobody asked for.
    #[error("{0:?} is of no kind that was asked for")]
    UnknownKind(Placed),
    /// A piece outside its kind's range.
    #[error("{0:?} is outside its range")]
    OutOfRange(Placed),
    /// A piece between two steps of its kind.
    #[error("{0:?} is between two steps")]
    OffStep(Placed),
    /// A piece turned that may not be.
    #[error("{0:?} may not be turned")]
    Turned(Placed),
    /// Two copies of a uniform kind differ.
    #[error("{first:?} and {second:?} should be equal")]
    Uneven {
        /// A copy.
        first: Placed,
        /// A copy of another size.
        second: Placed,
    },
    /// Too few or too many copies.
    #[error("{found} of kind {kind}")]
    Count {
        /// The kind.
        kind: usize,
        /// Copies in the tree.
        found: u32,
    },
    /// A pinned piece is elsewhere.
    #[error("no piece for {0:?}")]
    Unpinned(Pin),
    /// Two pieces overlap.
    #[error("{first:?} and {second:?} overlap")]
    Overlap {
        /// One piece.
        first: Placed,
        /// The other.
        second: Placed,
    },
    /// A piece reaches over the sheet's edge.
    #[error("{0:?} is not on the sheet")]
    OffSheet(Placed),
    /// Pieces and waste do not add up to the sheet.
    #[error("pieces and waste cover {covered} of {sheet}")]
    Area {
        /// What they cover, in square steps.
        covered: u64,
        /// The sheet's area.
        sheet: u64,
    },
}

/// Checks a tree over a sheet against what was asked.
///
/// # Errors
/// Every [`Fault`] found, in a fixed order.
///
/// # Examples
/// ```
/// use cutting::tree::Tree;
/// use cutting::verify::{Demand, Fault, Kind, verify};
///
/// let tree = Tree::Piece { kind: 0, width: 3, height: 5, turned: true };
/// let mut demand = Demand { kinds: vec![Kind::exact(5, 3, 1)], pins: vec![] };
/// assert!(matches!(verify(&tree, 3, 5, &demand).unwrap_err()[..], [Fault::Turned(_)]));
/// demand.kinds[0].turn = true;
/// assert_eq!(verify(&tree, 3, 5, &demand).unwrap().waste, 0);
/// ```
pub fn verify(tree: &Tree, width: u32, height: u32, demand: &Demand) -> Result<Report, Vec<Fault>> {
    if width == 0 || height == 0 {
        return Err(vec![Fault::EmptySheet]);
    }
    let walked = walk(tree, width, height);
    let mut faults = walked.faults;
    let placed = walked.placed;
    for piece in &placed {
        faults.extend(piece_fault(piece, demand));
        if u64::from(piece.x) + u64::from(piece.width) > u64::from(width)
            || u64::from(piece.y) + u64::from(piece.height) > u64::from(height)
        {
            faults.push(Fault::OffSheet(*piece));
        }
    }
    let mut counts = vec![0_u32; demand.kinds.len()];
    for piece in &placed {
        if let Some(count) = counts.get_mut(piece.kind) {
            *count += 1;
        }
    }
    for (kind, asked) in demand.kinds.iter().enumerate() {
        if !asked.count.contains(&counts[kind]) {
            faults.push(Fault::Count { kind, found: counts[kind] });
        }
        if asked.uniform {
            faults.extend(uneven(&placed, kind));
        }
    }
    faults.extend(unpinned(&placed, &demand.pins));
    faults.extend(overlaps(&placed));
    let used: u64 = placed.iter().map(|p| u64::from(p.width) * u64::from(p.height)).sum();
    let sheet = u64::from(width) * u64::from(height);
    if used.saturating_add(walked.waste) != sheet {
        faults.push(Fault::Area { covered: used.saturating_add(walked.waste), sheet });
    }
    if faults.is_empty() {
        Ok(Report { waste: walked.waste, pieces: counts, cuts: walked.cuts, placed })
    } else {
        Err(faults)
    }
}

struct Walked {
    placed: Vec<Placed>,
    waste: u64,
    cuts: u32,
    faults: Vec<Fault>,
}

/// Walks the tree without recursion, so that no depth can hurt.
fn walk(tree: &Tree, width: u32, height: u32) -> Walked {
    let mut walked = Walked { placed: Vec::new(), waste: 0, cuts: 0, faults: Vec::new() };
    let mut open = vec![(tree, 0_u32, 0_u32, width, height)];
    while let Some((tree, x, y, w, h)) = open.pop() {
        match tree {
            Tree::Waste => walked.waste += u64::from(w) * u64::from(h),
            &Tree::Piece { kind, width, height, turned } => {
                let piece = Placed { kind, x, y, width, height, turned };
                if (width, height) != (w, h) {
                    walked.faults.push(Fault::Misfit { piece, width: w, height: h });
                }
                walked.placed.push(piece);
            }
            Tree::Cut { axis, at, first, second } => {
                walked.cuts += 1;
                let side = match axis {
                    Axis::X => w,
                    Axis::Y => h,
                };
                if *at == 0 || *at >= side {
                    walked.faults.push(Fault::CutOutside { axis: *axis, at: *at, side });
                } else if *axis == Axis::X {
                    open.push((second, x + at, y, w - at, h));
                    open.push((first, x, y, *at, h));
                } else {
                    open.push((second, x, y + at, w, h - at));
                    open.push((first, x, y, w, *at));
                }
            }
        }
    }
    walked
}

fn piece_fault(piece: &Placed, demand: &Demand) -> Option<Fault> {
    let Some(kind) = demand.kinds.get(piece.kind) else { return Some(Fault::UnknownKind(*piece)) };
    if piece.turned && !kind.turn {
        return Some(Fault::Turned(*piece));
    }
    let (width, height) = if piece.turned { (piece.height, piece.width) } else { (piece.width, piece.height) };
    if width == 0 || height == 0 || !kind.width.contains(&width) || !kind.height.contains(&height) {
        return Some(Fault::OutOfRange(*piece));
    }
    let step = kind.step.max(1);
    let off = |size: u32, range: &RangeInclusive<u32>| !(size - range.start()).is_multiple_of(step);
    (off(width, &kind.width) || off(height, &kind.height)).then_some(Fault::OffStep(*piece))
}

fn uneven(placed: &[Placed], kind: usize) -> Option<Fault> {
    let own = |p: &Placed| if p.turned { (p.height, p.width) } else { (p.width, p.height) };
    let mut copies = placed.iter().filter(|p| p.kind == kind);
    let first = *copies.next()?;
    let second = *copies.find(|p| own(p) != own(&first))?;
    Some(Fault::Uneven { first, second })
}

/// Pins that get no piece of their own when as many as possible do (augmenting paths).
fn unpinned(placed: &[Placed], pins: &[Pin]) -> Vec<Fault> {
    let mut holder = vec![None; placed.len()];
    let mut faults = Vec::new();
    for pin in 0..pins.len() {
        let mut seen = vec![false; placed.len()];
        if !seat(pin, pins, placed, &mut holder, &mut seen) {
            faults.push(Fault::Unpinned(pins[pin]));
        }
    }
    faults
}

fn seat(pin: usize, pins: &[Pin], placed: &[Placed], holder: &mut [Option<usize>], seen: &mut [bool]) -> bool {
    for (i, piece) in placed.iter().enumerate() {
        if seen[i] || !pins[pin].holds(piece) {
            continue;
        }
        seen[i] = true;
        if holder[i].is_none_or(|other| seat(other, pins, placed, holder, seen)) {
            holder[i] = Some(pin);
            return true;
        }
    }
    false
}

fn overlaps(placed: &[Placed]) -> Vec<Fault> {
    let far = |at: u32, size: u32| u64::from(at) + u64::from(size);
    let mut by_left: Vec<&Placed> = placed.iter().collect();
    by_left.sort_by_key(|p| (p.x, p.y));
    let mut faults = Vec::new();
    for (i, first) in by_left.iter().enumerate() {
        let beside = by_left[i + 1..].iter().take_while(|second| u64::from(second.x) < far(first.x, first.width));
        for second in beside {
            if u64::from(second.y) < far(first.y, first.height) && u64::from(first.y) < far(second.y, second.height) {
                faults.push(Fault::Overlap { first: **first, second: **second });
            }
        }
    }
    faults
}
