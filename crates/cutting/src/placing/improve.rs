//! Answers beyond the exact search: single changes of place while they make things better.

use super::orders::rebuilt;
use super::worth::{Leaf, Worth};
use super::{Ask, PlacingError, Score, score_of};
use crate::budget::Budget;
use crate::tree::{Axis, Placed, Rows, Tree, pieces, rows};

/// The plain tree with two parts of a row changing places, as long as that is better and the budget lasts.
pub(super) fn climb(ask: &Ask<'_>, worth: &Worth, budget: &mut Budget<'_>) -> Result<Tree, PlacingError> {
    let mut tree = ask.tree.clone();
    let mut best = score_of(worth, ask, &tree)?;
    // The exact search has spent its share; this one looks at so many changes of its own. Chosen: some tenths of a second.
    let mut tries = 20_000_u32;
    loop {
        let now = rows(&tree, ask.width, ask.height)?;
        let mut better = None;
        each_row(&now, &mut Vec::new(), &mut |path, parts| {
            for one in 0..parts {
                for other in one + 1..parts {
                    if tries == 0 || budget.stopped() {
                        return;
                    }
                    tries -= 1;
                    let mut changed = now.clone();
                    swap(&mut changed, path, one, other);
                    if ask.stops.is_some_and(|stops| !follows(&changed, stops)) {
                        continue;
                    }
                    let fresh = changed.tree(ask.width, ask.height);
                    if let Ok(score) = score_of(worth, ask, &fresh)
                        && score > best
                    {
                        best = score;
                        better = Some(fresh);
                    }
                }
            }
        });
        match better {
            Some(fresh) => tree = exchanged(ask, worth, &fresh),
            None => return Ok(tree),
        }
        best = score_of(worth, ask, &tree)?;
    }
}

fn each_row(rows: &Rows, path: &mut Vec<usize>, look: &mut impl FnMut(&[usize], usize)) {
    let Rows::Row { parts, .. } = rows else { return };
    look(path, parts.len());
    for (at, (_, part)) in parts.iter().enumerate() {
        path.push(at);
        each_row(part, path, look);
        path.pop();
    }
}

fn swap(rows: &mut Rows, path: &[usize], one: usize, other: usize) {
    let Rows::Row { parts, .. } = rows else { return };
    match path.split_first() {
        None => parts.swap(one, other),
        Some((at, deeper)) => swap(&mut parts[*at].1, deeper, one, other),
    }
}

/// The tree with pieces of one size changing places while that is better.
pub(super) fn exchanged(ask: &Ask<'_>, worth: &Worth, tree: &Tree) -> Tree {
    let Ok(placed) = pieces(tree, ask.width, ask.height) else { return tree.clone() };
    let mut leaves: Vec<Leaf> = placed.iter().map(Leaf::of).collect();
    let value = |leaf: Leaf, at: &Placed| worth.leaf(leaf, at.x, at.y);
    let mut values: Vec<Score> = leaves.iter().zip(&placed).map(|(leaf, at)| value(*leaf, at)).collect();
    loop {
        let mut best: Option<(Score, Score, usize, usize)> = None;
        for one in 0..leaves.len() {
            for other in one + 1..leaves.len() {
                let (a, b) = (leaves[one], leaves[other]);
                if a == b || (a.width, a.height) != (b.width, b.height) {
                    continue;
                }
                let (here, there) = (value(b, &placed[one]), value(a, &placed[other]));
                if here + there > values[one] + values[other] {
                    best = Some((here, there, one, other));
                    break;
                }
            }
            if best.is_some() {
                break;
            }
        }
        let Some((here, there, one, other)) = best else { break };
        leaves.swap(one, other);
        (values[one], values[other]) = (here, there);
    }
    let mut next = leaves.into_iter();
    rebuilt(tree, &mut |leaf| next.next().unwrap_or(leaf))
}

/// True if rows can be cut in their order by these stops: a part of the stop's distance at either end of a row comes off.
pub(super) fn follows(rows: &Rows, stops: &[u32]) -> bool {
    let Rows::Row { axis, parts } = rows else { return true };
    let axis: Axis = *axis;
    debug_assert!(parts.iter().all(|(_, part)| !matches!(part, Rows::Row { axis: inner, .. } if *inner == axis)));
    let mut open: &[(u32, Rows)] = parts;
    let mut at = 0;
    while let [one, middle @ ..] = open
        && let [inner @ .., last] = middle
    {
        let Some(set) = stops.get(at) else { return false };
        let part = if one.0 == *set {
            open = middle;
            one
        } else if last.0 == *set {
            open = &open[..=inner.len()];
            last
        } else {
            at += 1;
            continue;
        };
        if !follows(&part.1, &stops[at..]) {
            return false;
        }
    }
    open.first().is_none_or(|(_, rest)| follows(rest, &stops[at.min(stops.len())..]))
}
