//! How much work a tree is: distinct trimmer settings and cuts, without making the steps.

use crate::tree::{Axis, Tree};

/// Work at the trimmer for one sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Effort {
    /// Least number of distinct distances at which the stop must stand.
    pub settings: u32,
    /// Cuts on one sheet.
    pub cuts: u32,
}

/// Distances beyond this many that could be left unmeasured are all measured.
const MOST_CHOICES: usize = 128;
/// Branches after which the choice of rests takes the best so far.
const MOST_BRANCHES: u32 = 4096;

/// Counts settings and cuts of a tree over a rectangle of so many steps.
///
/// Cuts of one direction that follow each other form one *row*. In every row one part is the rest
/// and need not be measured; a distance counts once, whichever way the paper lies. The parts of a
/// row may be taken in any order, and the waste of a row counts as one part. The count is the
/// exact minimum over the choice of rests (a largest independent set among the distances that occur
/// once in their rows); past 4096 branches, which takes far more pieces than a sheet holds,
/// it is an upper bound.
///
/// A tree that does not fit its rectangle is counted as if lengths ended at zero; ask
/// [`verify`](crate::verify::verify) whether it fits.
///
/// # Examples
/// ```
/// use cutting::steps::{Effort, effort};
/// use cutting::{Axis, Tree};
///
/// let piece = |width| Tree::Piece { kind: 0, width, height: 4, turned: false };
/// let tree = Tree::Cut { axis: Axis::X, at: 3, first: Box::new(piece(3)), second: Box::new(piece(2)) };
/// assert_eq!(effort(&tree, 5, 4), Effort { settings: 1, cuts: 1 });
/// ```
pub fn effort(tree: &Tree, width: u32, height: u32) -> Effort {
    let mut count = Count { stack: Vec::with_capacity(32), rows: Vec::with_capacity(64), ends: Vec::with_capacity(16) };
    count.enter(tree, width, height);
    let cuts = count.ends.iter().fold((0_usize, 0), |(from, sum), &end| (end, sum + (end - from - 1))).1;
    Effort { settings: count.settings(), cuts: u32::try_from(cuts).unwrap_or(u32::MAX) }
}

struct Count {
    /// Part sizes of the rows still being gathered.
    stack: Vec<u32>,
    /// Part sizes of the finished rows, one row after the other.
    rows: Vec<u32>,
    /// Where each finished row ends in `rows`.
    ends: Vec<usize>,
}

impl Count {
    /// Counts a whole rectangle; true if anything but waste lies in it.
    fn enter(&mut self, tree: &Tree, width: u32, height: u32) -> bool {
        let Tree::Cut { axis, .. } = tree else { return !matches!(tree, Tree::Waste) };
        let base = self.stack.len();
        let mut waste = 0;
        self.gather(tree, *axis, width, height, &mut waste);
        let used = self.stack.len() > base;
        if used {
            if waste > 0 {
                self.stack.push(waste);
            }
            if self.stack.len() - base > 1 {
                self.rows.extend_from_slice(&self.stack[base..]);
                self.ends.push(self.rows.len());
            }
        }
        self.stack.truncate(base);
        used
    }

    /// Pushes the sizes of the used parts of a row and sums its waste.
    fn gather(&mut self, tree: &Tree, row: Axis, width: u32, height: u32, waste: &mut u32) {
        if let Tree::Cut { axis, at, first, second } = tree
            && *axis == row
        {
            let (near, far) = match row {
                Axis::X => ((*at, height), (width.saturating_sub(*at), height)),
                Axis::Y => ((width, *at), (width, height.saturating_sub(*at))),
            };
            self.gather(first, row, near.0, near.1, waste);
            self.gather(second, row, far.0, far.1, waste);
            return;
        }
        let size = if row == Axis::X { width } else { height };
        if self.enter(tree, width, height) {
            self.stack.push(size);
        } else {
            *waste = waste.saturating_add(size);
        }
    }

    /// Distances that must be set: all that occur, less the most that can be rests together.
    fn settings(&mut self) -> u32 {
        let mut sizes = self.rows.clone();
        sizes.sort_unstable();
        sizes.dedup();
        let mut repeated = vec![false; sizes.len()];
        let mut from = 0;
        for &end in &self.ends {
            let row = &mut self.rows[from..end];
            row.sort_unstable();
            for pair in row.windows(2) {
                if pair[0] == pair[1]
                    && let Ok(place) = sizes.binary_search(&pair[0])
                {
                    repeated[place] = true;
                }
            }
            from = end;
        }
        let choices: Vec<u32> = sizes
            .iter()
            .zip(&repeated)
            .filter(|(_, repeated)| !**repeated)
            .map(|(&size, _)| size)
            .take(MOST_CHOICES)
            .collect();
        let mut clashes = vec![0_u128; choices.len()];
        let mut from = 0;
        for &end in &self.ends {
            let row: u128 = self.rows[from..end]
                .iter()
                .filter_map(|size| choices.binary_search(size).ok())
                .fold(0, |set, i| set | 1 << i);
            for (i, clash) in clashes.iter_mut().enumerate() {
                if row >> i & 1 == 1 {
                    *clash |= row & !(1 << i);
                }
            }
            from = end;
        }
        let all = if choices.len() == MOST_CHOICES { u128::MAX } else { (1 << choices.len()) - 1 };
        let mut rests = Rests { clashes: &clashes, best: 0, branches: 0 };
        rests.choose(all, 0);
        u32::try_from(sizes.len()).unwrap_or(u32::MAX).saturating_sub(rests.best)
    }
}

/// Largest set of distances of which no two meet in a row.
struct Rests<'a> {
    clashes: &'a [u128],
    best: u32,
    branches: u32,
}

impl Rests<'_> {
    fn choose(&mut self, mut open: u128, mut chosen: u32) {
        self.branches += 1;
        loop {
            if chosen + open.count_ones() <= self.best || (self.branches > MOST_BRANCHES && self.best > 0) {
                return;
            }
            if open == 0 {
                self.best = chosen;
                return;
            }
            // A distance with at most one clash left may always be taken; else branch on the busiest.
            let mut busiest = (0, 0);
            let mut easy = None;
            let mut rest = open;
            while rest != 0 {
                let i = rest.trailing_zeros() as usize;
                rest &= rest - 1;
                let degree = (self.clashes[i] & open).count_ones();
                if degree <= 1 {
                    easy = Some(i);
                    break;
                }
                if degree > busiest.0 {
                    busiest = (degree, i);
                }
            }
            let Some(i) = easy else {
                let i = busiest.1;
                self.choose(open & !(1 << i) & !self.clashes[i], chosen + 1);
                open &= !(1 << i);
                continue;
            };
            open &= !(1 << i) & !self.clashes[i];
            chosen += 1;
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "tests")]
mod tests {
    use super::*;

    fn row(axis: Axis, parts: Vec<(u32, Tree)>) -> Tree {
        let mut parts = parts;
        let (_, mut tree) = parts.pop().unwrap();
        while let Some((at, first)) = parts.pop() {
            tree = Tree::Cut { axis, at, first: Box::new(first), second: Box::new(tree) };
        }
        tree
    }

    fn piece(width: u32, height: u32) -> Tree {
        Tree::Piece { kind: 0, width, height, turned: false }
    }

    #[test]
    fn common_practice_twins() {
        let column =
            || row(Axis::Y, vec![(18, piece(12, 18)), (18, piece(12, 18)), (6, piece(12, 6)), (6, piece(12, 6))]);
        let tree = row(Axis::X, (0..4).map(|_| (12, column())).collect());
        assert_eq!(effort(&tree, 48, 48), Effort { settings: 3, cuts: 15 });
    }

    #[test]
    fn the_same_distance_can_be_the_rest_of_two_rows() {
        let columns = [2, 3].map(|w| (w, row(Axis::Y, vec![(7, piece(w, 7)), (9, piece(w, 9))])));
        // 2|3 and 7|9 twice: one of 2, 3 and one of 7, 9 must be set.
        assert_eq!(effort(&row(Axis::X, columns.into()), 5, 16), Effort { settings: 2, cuts: 3 });
    }

    #[test]
    fn waste_of_a_row_is_one_rest() {
        let tree = row(
            Axis::X,
            vec![(1, Tree::Waste), (3, piece(3, 4)), (2, Tree::Waste), (3, piece(3, 4)), (1, Tree::Waste)],
        );
        assert_eq!(effort(&tree, 10, 4), Effort { settings: 1, cuts: 2 });
    }

    #[test]
    fn exact_against_every_choice_of_rests() {
        // Rows as sets of sizes; compare with trying every rest in every row.
        for seed in 0..300_u64 {
            let mut state = seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1;
            let mut next = |n: u64| {
                state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
                (state >> 33) % n
            };
            let rows: Vec<Vec<u32>> = (0..=next(4))
                .map(|_| (0..2 + next(3)).map(|_| 1 + u32::try_from(next(7)).unwrap()).collect())
                .collect();
            let ends = rows
                .iter()
                .scan(0, |end, row| {
                    *end += row.len();
                    Some(*end)
                })
                .collect();
            let mut count = Count { stack: Vec::new(), rows: rows.concat(), ends };
            let mut least = u32::MAX;
            let choices: usize = rows.iter().map(Vec::len).product();
            for mut choice in 0..choices {
                let mut set = std::collections::BTreeSet::new();
                for row in &rows {
                    let rest = choice % row.len();
                    choice /= row.len();
                    set.extend(row.iter().enumerate().filter(|(i, _)| *i != rest).map(|(_, size)| *size));
                }
                least = least.min(u32::try_from(set.len()).unwrap());
            }
            assert_eq!(count.settings(), least, "{rows:?}");
        }
    }
}
