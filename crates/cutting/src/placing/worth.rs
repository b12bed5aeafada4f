//! What a piece is worth where it lies.

use super::{Area, Ask, Cover, Keep, MOST_CELLS, Motif, PlacingError, Print, Score};
use crate::tree::{Placed, Tree, pieces};

/// A whole picture's cells count so many times what they count by themselves. `Chosen:` a picture that stays whole pleases
/// more than as much print in pieces.
const WHOLE: i64 = 4;
/// Weights and times above this are taken as this, so that sums stay inside 64 bits.
const MOST: u32 = 1_000_000;

/// What is looked at of a piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Leaf {
    pub(super) kind: usize,
    pub(super) width: u32,
    pub(super) height: u32,
    pub(super) turned: bool,
}

impl Leaf {
    pub(super) fn of(piece: &Placed) -> Leaf {
        Leaf { kind: piece.kind, width: piece.width, height: piece.height, turned: piece.turned }
    }
}

impl Area {
    fn cells(self) -> i64 {
        i64::from(self.right.saturating_sub(self.left)) * i64::from(self.bottom.saturating_sub(self.top))
    }

    fn meet(self, other: Area) -> Area {
        Area {
            left: self.left.max(other.left),
            top: self.top.max(other.top),
            right: self.right.min(other.right),
            bottom: self.bottom.min(other.bottom),
        }
    }

    fn within(self, other: Area) -> bool {
        self.left >= other.left && self.top >= other.top && self.right <= other.right && self.bottom <= other.bottom
    }

    fn empty(self) -> bool {
        self.right <= self.left || self.bottom <= self.top
    }

    fn moved(self, right: u32, down: u32) -> Area {
        Area {
            left: self.left.saturating_add(right),
            top: self.top.saturating_add(down),
            right: self.right.saturating_add(right),
            bottom: self.bottom.saturating_add(down),
        }
    }
}

/// All prints of a question in one.
#[derive(Debug)]
pub(super) struct Worth {
    width: u32,
    height: u32,
    /// Sums of the weights, and of the cells to avoid, above and to the left of each corner.
    weights: Sums,
    avoid: Sums,
    /// From the left.
    motifs: Vec<(Motif, i64)>,
    keeps: Vec<(Keep, i64)>,
    /// What is hidden of each leaf, as areas that do not overlap.
    hidden: Vec<(Leaf, Vec<Area>)>,
}

impl Worth {
    pub(super) fn of(ask: &Ask<'_>) -> Result<Worth, PlacingError> {
        let (width, height) = (ask.width, ask.height);
        let cells = u64::from(width) * u64::from(height);
        if cells > MOST_CELLS {
            return Err(PlacingError::TooLarge { width, height });
        }
        let cells = usize::try_from(cells).unwrap_or(0);
        let sheet = Area { left: 0, top: 0, right: width, bottom: height };
        let (mut weights, mut avoid) = (vec![0_i64; cells], vec![0_i64; cells]);
        let (mut motifs, mut keeps) = (Vec::new(), Vec::new());
        for print in ask.prints {
            let times = i64::from(print.times.min(MOST));
            if !print.weights.is_empty() && print.weights.len() != cells {
                return Err(PlacingError::Weights { weights: print.weights.len(), cells });
            }
            for (sum, weight) in weights.iter_mut().zip(&print.weights) {
                *sum = sum.saturating_add(i64::from((*weight).min(MOST)) * times);
            }
            // Areas to avoid may overlap: a cell is avoided once.
            let avoided: Vec<Area> = print.avoid.iter().map(|area| area.meet(sheet)).collect();
            for area in apart(&avoided) {
                for y in area.top..area.bottom {
                    for x in area.left..area.right {
                        avoid[y as usize * width as usize + x as usize] += times;
                    }
                }
            }
            motifs.extend(print.motifs.iter().filter(|motif| !motif.area.empty()).map(|motif| (*motif, times)));
            keeps.extend(print.keep.iter().filter(|keep| !keep.area.empty()).map(|keep| (keep.clone(), times)));
        }
        motifs.sort_by_key(|(motif, _)| (motif.area, motif.weight));
        let hidden = ask.covers.iter().map(|cover| (leaf_of(cover), shown_over(cover))).collect();
        let sums = |cells: &[i64]| Sums::of(cells, width as usize);
        Ok(Worth { width, height, weights: sums(&weights), avoid: sums(&avoid), motifs, keeps, hidden })
    }

    /// What a piece is worth with its top left corner at a place.
    pub(super) fn leaf(&self, leaf: Leaf, x: u32, y: u32) -> Score {
        let piece = Area { left: x, top: y, right: x + leaf.width, bottom: y + leaf.height };
        let hidden = self.hidden_of(leaf);
        let under =
            |area: Area| hidden.iter().map(move |over| over.moved(x, y).meet(area)).filter(|area| !area.empty());
        let shows = |sums: &Sums| sums.over(piece) - under(piece).map(|area| sums.over(area)).sum::<i64>();
        let (mut whole, mut worth) = (0, shows(&self.weights));
        let from = self.motifs.partition_point(|(motif, _)| motif.area.left < piece.left);
        for (motif, times) in &self.motifs[from..] {
            if motif.area.left >= piece.right {
                break;
            }
            if motif.area.within(piece) {
                let cells = motif.area.cells() - under(motif.area).map(Area::cells).sum::<i64>();
                whole += if cells == motif.area.cells() { *times } else { 0 };
                let each = i64::from(motif.weight.min(MOST)) * WHOLE * times;
                worth = worth.saturating_add(each.saturating_mul(cells));
            }
        }
        let held = |keep: &Keep| {
            keep.area.within(piece)
                && (keep.kinds.is_empty() || keep.kinds.contains(&leaf.kind))
                && under(keep.area).next().is_none()
        };
        let kept = self.keeps.iter().filter(|(keep, _)| held(keep)).map(|(_, times)| times).sum();
        Score { kept, spared: -shows(&self.avoid), whole, worth }
    }

    fn hidden_of(&self, leaf: Leaf) -> &[Area] {
        self.hidden.iter().find(|(of, _)| *of == leaf).map_or(&[], |(_, areas)| areas)
    }

    /// The most that pieces can be worth together, each at its own best place.
    pub(super) fn bound(&self, placed: &[Placed]) -> Score {
        let mut leaves: Vec<Leaf> = placed.iter().map(Leaf::of).collect();
        leaves.sort();
        let mut sum = Score::default();
        let mut last: Option<(Leaf, Score)> = None;
        for leaf in leaves {
            let best = match last {
                Some((known, best)) if known == leaf => best,
                _ => self.best_anywhere(leaf),
            };
            last = Some((leaf, best));
            sum = sum + best;
        }
        let kept = self.keeps.iter().map(|(_, times)| times).sum();
        Score { kept: sum.kept.min(kept), spared: sum.spared.min(0), ..sum }
    }

    /// The best of each number by itself: no single place need reach all three.
    fn best_anywhere(&self, leaf: Leaf) -> Score {
        let mut best = Score { kept: 0, spared: i64::MIN, whole: 0, worth: 0 };
        for y in 0..=self.height.saturating_sub(leaf.height) {
            for x in 0..=self.width.saturating_sub(leaf.width) {
                let here = self.leaf(leaf, x, y);
                best.kept = best.kept.max(here.kept);
                best.spared = best.spared.max(here.spared);
                best.whole = best.whole.max(here.whole);
                best.worth = best.worth.max(here.worth);
            }
        }
        best
    }
}

fn leaf_of(cover: &Cover) -> Leaf {
    Leaf { kind: cover.kind, width: cover.width, height: cover.height, turned: cover.turned }
}

/// What is hidden of a piece, held to the piece, as areas that do not overlap.
fn shown_over(cover: &Cover) -> Vec<Area> {
    let piece = Area { left: 0, top: 0, right: cover.width, bottom: cover.height };
    let inside: Vec<Area> = cover.areas.iter().map(|area| area.meet(piece)).collect();
    apart(&inside)
}

/// The same cells as areas that do not overlap.
fn apart(areas: &[Area]) -> Vec<Area> {
    let mut done: Vec<Area> = Vec::new();
    for area in areas.iter().filter(|area| !area.empty()) {
        let mut fresh = vec![*area];
        for old in &done {
            fresh = fresh.into_iter().flat_map(|part| without(part, *old)).collect();
        }
        done.extend(fresh);
    }
    done
}

/// What is left of an area where another is taken out.
fn without(area: Area, hole: Area) -> Vec<Area> {
    let hole = area.meet(hole);
    if hole.empty() {
        return vec![area];
    }
    let parts = [
        Area { bottom: hole.top, ..area },
        Area { top: hole.bottom, ..area },
        Area { top: hole.top, bottom: hole.bottom, right: hole.left, ..area },
        Area { top: hole.top, bottom: hole.bottom, left: hole.right, ..area },
    ];
    parts.into_iter().filter(|part| !part.empty()).collect()
}

/// A summed-area table.
///
/// # Source
/// Crow 1984, *SIGGRAPH*, 207–212. Checked by `tests/placing.rs` against tables made by another library.
#[derive(Debug)]
struct Sums {
    across: usize,
    sums: Vec<i64>,
}

impl Sums {
    fn of(cells: &[i64], width: usize) -> Sums {
        let across = width + 1;
        let rows = cells.len().checked_div(width).unwrap_or(0);
        let mut sums = vec![0_i64; across * (rows + 1)];
        for row in 0..rows {
            let mut line = 0_i64;
            for column in 0..width {
                line = line.saturating_add(cells[row * width + column]);
                sums[(row + 1) * across + column + 1] = sums[row * across + column + 1].saturating_add(line);
            }
        }
        Sums { across, sums }
    }

    /// The sum over an area inside the sheet.
    fn over(&self, area: Area) -> i64 {
        let at = |x: u32, y: u32| self.sums.get(y as usize * self.across + x as usize).copied().unwrap_or(0);
        let (high, low) = (at(area.right, area.top), at(area.left, area.bottom));
        at(area.right, area.bottom) - high - low + at(area.left, area.top)
    }
}

/// What becomes of one print under a tree, counted on one sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Tally {
    /// Pictures that lie whole in one piece, with nothing over them.
    pub whole: usize,
    /// Pictures that lie in one piece, with something over a part of them.
    pub hidden: usize,
    /// Pictures that a cut goes through, or that lie in no piece.
    pub cut: usize,
    /// Regions to keep that are kept.
    pub kept: usize,
    /// Regions to keep that are not.
    pub lost: usize,
    /// Cells to avoid that show.
    pub shown: u64,
}

/// Counts what becomes of a print under a tree.
///
/// # Errors
/// As [`super::place`]; the prints and the tree of the question are not looked at.
pub fn tally(ask: &Ask<'_>, tree: &Tree, print: &Print) -> Result<Tally, PlacingError> {
    let one = [Print { times: 1, ..print.clone() }];
    let worth = Worth::of(&Ask { prints: &one, ..*ask })?;
    let placed = pieces(tree, ask.width, ask.height)?;
    let mut tally = Tally::default();
    for (motif, _) in &worth.motifs {
        let holder = placed.iter().find(|piece| motif.area.within(area_of(piece)));
        match holder {
            None => tally.cut += 1,
            Some(piece) if covered(worth.hidden_of(Leaf::of(piece)), piece, motif.area) => tally.hidden += 1,
            Some(_) => tally.whole += 1,
        }
    }
    let scores = placed.iter().map(|piece| worth.leaf(Leaf::of(piece), piece.x, piece.y));
    let sum = scores.fold(Score::default(), |sum, score| sum + score);
    tally.kept = usize::try_from(sum.kept).unwrap_or(0);
    tally.lost = worth.keeps.len().saturating_sub(tally.kept);
    tally.shown = sum.spared.unsigned_abs();
    Ok(tally)
}

fn area_of(piece: &Placed) -> Area {
    Area { left: piece.x, top: piece.y, right: piece.x + piece.width, bottom: piece.y + piece.height }
}

fn covered(hidden: &[Area], piece: &Placed, area: Area) -> bool {
    hidden.iter().any(|over| !over.moved(piece.x, piece.y).meet(area).empty())
}
