//! A cut that is moved: the same cuts in the same order, the pieces at other sizes of their ranges.
//!
//! A tree's sizes hang together: pieces of one kind share a size, and what meets along a cut has one length there.
//! Moving a line sets one of them; the rest follows, or is chosen as near to what it was as it goes. Sizes are walked
//! from the whole sheet inwards, and a part is given up as soon as its pieces can no longer fill it.
//!
//! Left out on purpose: another order of cuts ([`super::solve`] with a pin answers that).

use super::{Instance, Kind};
use crate::tree::{Axis, Tree};
use crate::{Budget, Exhausted};

/// Cuts that lie in one line, end to end, on the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Line {
    /// Which side it divides.
    pub axis: Axis,
    /// Distance from the left (X) or top (Y) edge of the sheet.
    pub at: u32,
    /// Where it begins along itself.
    pub from: u32,
    /// Where it ends.
    pub to: u32,
}

/// Left, top, width, height.
type Area = [u32; 4];

/// The cut lines of a tree, upright ones first, each group from the near edge on.
///
/// # Shape
/// Cuts that meet end to end are one line. `tree` fits `width` by `height`.
pub fn lines(tree: &Tree, width: u32, height: u32) -> Vec<Line> {
    let mut found: Vec<Line> = Vec::new();
    walk(tree, [0, 0, width, height], &mut |node, area| {
        if let Tree::Cut { axis, at, .. } = node {
            found.push(line_of(*axis, *at, area));
        }
    });
    found.sort_unstable();
    let mut joined: Vec<Line> = Vec::new();
    for line in found {
        match joined.last_mut() {
            Some(last) if (last.axis, last.at, last.to) == (line.axis, line.at, line.from) => last.to = line.to,
            _ => joined.push(line),
        }
    }
    joined
}

/// What is left over: left, top, width, height of each part.
pub fn left_over(tree: &Tree, width: u32, height: u32) -> Vec<[u32; 4]> {
    let mut found = Vec::new();
    walk(tree, [0, 0, width, height], &mut |node, area| {
        if *node == Tree::Waste {
            found.push(area);
        }
    });
    found
}

fn line_of(axis: Axis, at: u32, [left, top, width, height]: Area) -> Line {
    match axis {
        Axis::X => Line { axis, at: left + at, from: top, to: top + height },
        Axis::Y => Line { axis, at: top + at, from: left, to: left + width },
    }
}

fn parts(axis: Axis, at: u32, [left, top, width, height]: Area) -> (Area, Area) {
    match axis {
        Axis::X => ([left, top, at, height], [left + at, top, width.saturating_sub(at), height]),
        Axis::Y => ([left, top, width, at], [left, top + at, width, height.saturating_sub(at)]),
    }
}

fn walk<'t>(tree: &'t Tree, area: Area, see: &mut dyn FnMut(&'t Tree, Area)) {
    see(tree, area);
    if let Tree::Cut { axis, at, first, second } = tree {
        let (one, other) = parts(*axis, *at, area);
        walk(first, one, see);
        walk(second, other, see);
    }
}

/// The tree with that line at `to`, every piece in its range; `None` if these cuts cannot give it.
///
/// # Shape
/// Pins of the instance stay where they are. `tree` answers the instance; the answer uses as much of the sheet wherever
/// `tree` used all of it.
///
/// # Errors
/// [`Exhausted`] if the budget ended first.
pub fn shifted(
    instance: &Instance,
    tree: &Tree,
    line: Line,
    to: u32,
    budget: &mut Budget<'_>,
) -> Result<Option<Tree>, Exhausted> {
    let sheet = [0, 0, instance.width, instance.height];
    let mut nodes = Vec::new();
    walk(tree, sheet, &mut |node, was| {
        let held = match node {
            Tree::Cut { axis, at, .. } => {
                let own = line_of(*axis, *at, was);
                let on_it = (own.axis, own.at) == (line.axis, line.at) && line.from <= own.from && own.to <= line.to;
                if on_it { Held::Line } else { Held::Free }
            }
            Tree::Piece { kind, .. } => {
                let pin =
                    instance.pins.iter().any(|pin| pin.kind == *kind && [pin.x, pin.y, pin.width, pin.height] == was);
                if pin { Held::Pin(was) } else { Held::Free }
            }
            Tree::Waste => Held::Free,
        };
        nodes.push((node, held));
    });
    let mut search = Search {
        instance,
        line,
        to,
        is: vec![sheet; nodes.len()],
        skip: nodes.iter().map(|(node, _)| count(node)).collect(),
        nodes,
        sizes: vec![None; instance.kinds.len()],
    };
    let found = search.go(0, budget)?;
    Ok(found.then(|| search.tree(0)))
}

/// Nodes of a tree, itself among them.
fn count(tree: &Tree) -> usize {
    match tree {
        Tree::Cut { first, second, .. } => 1 + count(first) + count(second),
        Tree::Piece { .. } | Tree::Waste => 1,
    }
}

/// What holds a node where it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Held {
    Free,
    /// It is the line that is moved.
    Line,
    /// A pinned piece.
    Pin(Area),
}

struct Search<'t> {
    instance: &'t Instance,
    line: Line,
    to: u32,
    /// The tree from the outside in, each node before its parts.
    nodes: Vec<(&'t Tree, Held)>,
    /// How many nodes each holds.
    skip: Vec<usize>,
    /// Where each lies now.
    is: Vec<Area>,
    /// The size of every kind that has one and is already met, as its kind is written.
    sizes: Vec<Option<(u32, u32)>>,
}

impl Search<'_> {
    /// Fills the nodes from `node` on; true once all are.
    fn go(&mut self, node: usize, budget: &mut Budget<'_>) -> Result<bool, Exhausted> {
        let Some(&(tree, held)) = self.nodes.get(node) else { return Ok(true) };
        budget.spend(1)?;
        let area = self.is[node];
        match tree {
            Tree::Waste => Ok(area[2] > 0 && area[3] > 0 && self.go(node + 1, budget)?),
            Tree::Piece { kind, turned, .. } => {
                if let Held::Pin(pinned) = held
                    && pinned != area
                {
                    return Ok(false);
                }
                let size = if *turned { (area[3], area[2]) } else { (area[2], area[3]) };
                if !may_have(&self.instance.kinds[*kind], size) {
                    return Ok(false);
                }
                let before = self.sizes[*kind];
                if self.instance.kinds[*kind].uniform {
                    if before.is_some_and(|known| known != size) {
                        return Ok(false);
                    }
                    self.sizes[*kind] = Some(size);
                }
                let found = self.go(node + 1, budget)?;
                if !found {
                    self.sizes[*kind] = before;
                }
                Ok(found)
            }
            Tree::Cut { axis, at, .. } => {
                let (first, second) = (node + 1, node + 1 + self.skip[node + 1]);
                let (start, side) = (area[usize::from(*axis == Axis::Y)], axis.of(area[2], area[3]));
                let (near, far) = (self.range(first, *axis), self.range(second, *axis));
                let least = near.0.max(side.saturating_sub(far.1)).max(1);
                let most = near.1.min(side.saturating_sub(far.0.max(1)));
                let across = axis.across().of(area[2], area[3]);
                for part in [first, second] {
                    let (least, most) = self.range(part, axis.across());
                    if across < least || across > most {
                        return Ok(false);
                    }
                }
                if held == Held::Line {
                    debug_assert_eq!(*axis, self.line.axis, "only the line itself is held");
                    let Some(cut) = self.to.checked_sub(start).filter(|cut| (least..=most).contains(cut)) else {
                        return Ok(false);
                    };
                    return self.cut(node, second, *axis, cut, budget);
                }
                // The nearest to where it was first.
                let reach = most.abs_diff(*at).max(least.abs_diff(*at));
                for off in 0..=reach {
                    let sides = [at.checked_sub(off), at.checked_add(off).filter(|_| off > 0)];
                    for cut in sides.into_iter().flatten().filter(|cut| (least..=most).contains(cut)) {
                        if self.cut(node, second, *axis, cut, budget)? {
                            return Ok(true);
                        }
                    }
                }
                Ok(false)
            }
        }
    }

    fn cut(
        &mut self,
        node: usize,
        second: usize,
        axis: Axis,
        at: u32,
        budget: &mut Budget<'_>,
    ) -> Result<bool, Exhausted> {
        (self.is[node + 1], self.is[second]) = parts(axis, at, self.is[node]);
        self.go(node + 1, budget)
    }

    /// Least and most that a node can be along an axis, with the sizes met so far.
    fn range(&self, node: usize, along: Axis) -> (u32, u32) {
        match self.nodes[node].0 {
            Tree::Waste => (1, u32::MAX),
            Tree::Piece { kind, turned, .. } => {
                let axis = if *turned { along.across() } else { along };
                let known = &self.instance.kinds[*kind];
                let span = if axis == Axis::X { known.width } else { known.height };
                self.sizes[*kind].map_or((span.least, span.most), |(w, h)| (axis.of(w, h), axis.of(w, h)))
            }
            Tree::Cut { axis, .. } => {
                let one = self.range(node + 1, along);
                let other = self.range(node + 1 + self.skip[node + 1], along);
                if *axis == along {
                    (one.0.saturating_add(other.0), one.1.saturating_add(other.1))
                } else {
                    (one.0.max(other.0), one.1.min(other.1))
                }
            }
        }
    }

    fn tree(&self, node: usize) -> Tree {
        let [left, top, width, height] = self.is[node];
        match self.nodes[node].0 {
            Tree::Waste => Tree::Waste,
            Tree::Piece { kind, turned, .. } => Tree::Piece { kind: *kind, width, height, turned: *turned },
            Tree::Cut { axis, .. } => {
                let second = node + 1 + self.skip[node + 1];
                let at = match axis {
                    Axis::X => self.is[second][0] - left,
                    Axis::Y => self.is[second][1] - top,
                };
                let (first, second) = (Box::new(self.tree(node + 1)), Box::new(self.tree(second)));
                Tree::Cut { axis: *axis, at, first, second }
            }
        }
    }
}

fn may_have(kind: &Kind, (width, height): (u32, u32)) -> bool {
    let step = kind.step.max(1);
    kind.width.holds(width) && kind.height.holds(height) && width % step == 0 && height % step == 0
}
