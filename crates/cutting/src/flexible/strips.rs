//! Beyond what can be closed: whole strips of at most so many pieces, put side by side.
//!
//! Each strip runs the full height (or width) of the sheet and is exact inside; strips are added up over
//! the counts. This finds whole-sheet trees for large questions; not finding one proves nothing.

use super::grid::Grid;
use super::shapes::{Shapes, Taste};
use crate::{Axis, Budget, Exhausted, Tree};

/// Widths a set of strips can have, and the last strip put in.
#[derive(Debug, Clone, Copy)]
struct Reach {
    low: u32,
    high: u32,
    strip: u32,
    /// Which entry of the sub-multiset without that strip it came from.
    from: u32,
}

/// Most entries kept for one sub-multiset.
const MOST_ENTRIES: usize = 6;

/// A whole-sheet tree of strips for some mix, with the mix's number.
pub(super) fn whole(
    grid: &Grid,
    shapes: &Shapes<'_>,
    budget: &mut Budget<'_>,
) -> Result<Option<(usize, Tree)>, Exhausted> {
    for axis in [Axis::X, Axis::Y] {
        if let Some(found) = along(grid, shapes, axis, budget)? {
            return Ok(Some(found));
        }
    }
    Ok(None)
}

fn along(
    grid: &Grid,
    shapes: &Shapes<'_>,
    axis: Axis,
    budget: &mut Budget<'_>,
) -> Result<Option<(usize, Tree)>, Exhausted> {
    let (length, across) = if axis == Axis::X { (grid.width, grid.height) } else { (grid.height, grid.width) };
    let mut strips: Vec<(usize, u32, u32)> = Vec::new();
    for index in 1..shapes.len() {
        for shape in shapes.of(index) {
            let (l0, l1, c0, c1) = if axis == Axis::X {
                (shape.w0, shape.w1, shape.h0, shape.h1)
            } else {
                (shape.h0, shape.h1, shape.w0, shape.w1)
            };
            if u32::from(c0) <= across && across <= u32::from(c1) {
                strips.push((index, u32::from(l0), u32::from(l1)));
            }
        }
    }
    let mut reach: Vec<Vec<Reach>> = vec![Vec::new(); shapes.len()];
    reach[0].push(Reach { low: 0, high: 0, strip: u32::MAX, from: 0 });
    for index in 1..shapes.len() {
        let counts = shapes.counts(index);
        budget.spend(1 + strips.len() as u64 / 64)?;
        let mut own: Vec<Reach> = Vec::new();
        for (number, &(strip, low, high)) in strips.iter().enumerate() {
            if strip > index || !shapes.counts(strip).within(counts) {
                continue;
            }
            for (from, entry) in reach[index - strip].iter().enumerate() {
                let (low, high) = (entry.low + low, (entry.high + high).min(length));
                if low > length || own.iter().any(|o| o.low <= low && high <= o.high) || own.len() >= MOST_ENTRIES {
                    continue;
                }
                own.push(Reach { low, high, strip: number as u32, from: from as u32 });
            }
        }
        reach[index] = own;
    }
    for (mix_number, mix) in grid.mixes.iter().enumerate() {
        let index = shapes.index(&mix.pieces);
        let hit = reach[index].iter().position(|entry| entry.low <= length && length <= entry.high);
        if let Some(entry) = hit {
            return Ok(
                draw(shapes, &strips, &reach, axis, length, across, (index, entry)).map(|tree| (mix_number, tree))
            );
        }
    }
    Ok(None)
}

/// Walks back through the strips, giving each a width so that all add up.
fn draw(
    shapes: &Shapes<'_>,
    strips: &[(usize, u32, u32)],
    reach: &[Vec<Reach>],
    axis: Axis,
    length: u32,
    across: u32,
    last: (usize, usize),
) -> Option<Tree> {
    let (mut index, mut entry) = last;
    let mut left = length;
    let mut parts: Vec<(Tree, u32)> = Vec::new();
    while index > 0 {
        let step = reach[index][entry];
        let (strip, low, high) = strips[step.strip as usize];
        let before = reach[index - strip][step.from as usize];
        // What the strips before it can be bounds what this one may be.
        let least = low.max(left.saturating_sub(before.high));
        let most = high.min(left - before.low);
        let width = least.midpoint(most);
        let (w, h) = if axis == Axis::X { (width, across) } else { (across, width) };
        parts.push((shapes.tree(strip, w, h, &mut Taste::seeded(0))?, width));
        left -= width;
        index -= strip;
        entry = step.from as usize;
    }
    let (mut tree, _) = parts.pop()?;
    while let Some((part, width)) = parts.pop() {
        tree = Tree::Cut { axis, at: width, first: Box::new(part), second: Box::new(tree) };
    }
    Some(tree)
}
