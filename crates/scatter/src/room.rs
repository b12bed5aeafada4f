//! The sheet while it fills: which impressions are near a place, and whether one more may go there.

use std::borrow::Cow;

use measure::Length;

use crate::ask::{EdgeRule, Placement, Wish};
use crate::outline::{Point, apart, bounds_of, nearer, share_inside};

/// Less than this of a motif must neither show nor be lost at an edge: slivers look like mistakes. common practice
const SLIVER: f64 = 0.25;

/// Places are whole hundredths of a millimetre.
const STEP: i64 = 7_200;

/// A length from millimetres, at the nearest hundredth.
#[expect(clippy::cast_possible_truncation, reason = "saturates; sheets are far smaller")]
pub(crate) fn rounded(mm: f64) -> Length {
    Length::from_ticks((libm::round(mm * 100.0) as i64).saturating_mul(STEP))
}

/// An impression with its outline worked out.
#[derive(Debug, Clone)]
struct Set {
    placed: Placement,
    centre: Point,
    reach: f64,
    core: f64,
    ink: Vec<Vec<Point>>,
}

/// A sheet and what is on it.
#[derive(Debug)]
pub(crate) struct Room<'w> {
    wish: &'w Wish,
    pub(crate) width: f64,
    pub(crate) height: f64,
    widest: f64,
    cell: f64,
    columns: usize,
    rows: usize,
    cells: Vec<Vec<usize>>,
    sets: Vec<Set>,
}

impl<'w> Room<'w> {
    pub(crate) fn new(wish: &'w Wish) -> Room<'w> {
        let (width, height) = (wish.sheet.width.to_mm(), wish.sheet.height.to_mm());
        let used = || wish.motifs.iter().map(|motif| motif.outline.reach());
        let widest = used().fold(0.0, f64::max);
        let least = used().fold(f64::INFINITY, f64::min);
        // Cells of about the smaller motifs, never more than 200 a side.
        let cell = (2.0 * least + wish.gap.to_mm()).max(width.max(height) / 200.0);
        let (columns, rows) = (count_of(width / cell), count_of(height / cell));
        Room {
            wish,
            width,
            height,
            widest,
            cell,
            columns,
            rows,
            cells: vec![Vec::new(); columns * rows],
            sets: Vec::new(),
        }
    }

    pub(crate) fn placements(&self) -> Vec<Placement> {
        self.sets.iter().map(|set| set.placed).collect()
    }

    pub(crate) fn len(&self) -> usize {
        self.sets.len()
    }

    fn wraps(&self) -> bool {
        self.wish.edge == EdgeRule::Wrap
    }

    /// The cell of a place; places off the sheet belong to the cells at its edge.
    fn cell_of(&self, (x, y): Point) -> (usize, usize) {
        let at = |value: f64, most: usize| (count_of(value.max(0.0) / self.cell) - 1).min(most - 1);
        (at(x, self.columns), at(y, self.rows))
    }

    /// Impressions whose centre is within `far` of a place, each with the step that brings a copy of it there.
    fn near(&self, centre: Point, far: f64) -> Vec<(usize, Point)> {
        let mut found = Vec::new();
        let steps = |size: f64| if self.wraps() { vec![-size, 0.0, size] } else { vec![0.0] };
        for dx in steps(self.width) {
            for dy in steps(self.height) {
                let (x, y) = (centre.0 - dx, centre.1 - dy);
                let off = x + far < 0.0 || y + far < 0.0 || x - far > self.width || y - far > self.height;
                if self.wraps() && off {
                    continue;
                }
                let (from, to) = (self.cell_of((x - far, y - far)), self.cell_of((x + far, y + far)));
                for row in from.1..=to.1 {
                    for column in from.0..=to.0 {
                        for &index in &self.cells[row * self.columns + column] {
                            let other = self.sets[index].centre;
                            let (ax, ay) = (other.0 - x, other.1 - y);
                            if ax * ax + ay * ay < far * far {
                                found.push((index, (dx, dy)));
                            }
                        }
                    }
                }
            }
        }
        found
    }

    /// Whether one more may go here with this gap round it.
    pub(crate) fn takes(&self, placed: Placement, gap: f64) -> bool {
        let set = self.worked_out(placed);
        self.edge_allows(&set.ink)
            && !self.is_crowded(&set, gap)
            && !self.meets_itself(&set, gap)
            && !self.repeats_a_neighbour(&set)
    }

    /// Which impressions, by the order in which they were put, are nearer to a place than a gap; `None` where the edge
    /// or its own copy forbids the place.
    pub(crate) fn in_the_way(&self, placed: Placement, gap: f64) -> Option<Vec<usize>> {
        self.fewer_in_the_way(placed, gap, usize::MAX, |_| false)
    }

    /// As [`Room::in_the_way`]; `None` too where `most` or more are in the way, or one that is `firm`.
    pub(crate) fn fewer_in_the_way(
        &self,
        placed: Placement,
        gap: f64,
        most: usize,
        firm: impl Fn(usize) -> bool,
    ) -> Option<Vec<usize>> {
        let centre = (placed.x.to_mm(), placed.y.to_mm());
        let outline = &self.wish.motifs[placed.motif].outline;
        let near = self.near(centre, outline.reach() + self.widest + gap);
        // Discs of ink round the middles tell most of it without the outlines.
        let overlaps = |index: usize, step: Point| {
            let other = &self.sets[index];
            let (dx, dy) = (other.centre.0 + step.0 - centre.0, other.centre.1 + step.1 - centre.1);
            let least = outline.core() + other.core + gap;
            outline.core() > 0.0 && other.core > 0.0 && dx * dx + dy * dy < least * least
        };
        let mut found: Vec<usize> = Vec::new();
        let mut open = Vec::new();
        for (index, step) in near {
            if overlaps(index, step) {
                if firm(index) {
                    return None;
                }
                if !found.contains(&index) {
                    found.push(index);
                }
            } else {
                open.push((index, step));
            }
        }
        if found.len() >= most {
            return None;
        }
        let set = self.worked_out(placed);
        if !self.edge_allows(&set.ink) || self.meets_itself(&set, gap) {
            return None;
        }
        for (index, step) in open {
            if found.contains(&index) || !nearer(&set.ink, &moved(&self.sets[index].ink, step), gap) {
                continue;
            }
            found.push(index);
            if firm(index) || found.len() >= most {
                return None;
            }
        }
        found.sort_unstable();
        Some(found)
    }

    /// Puts it on the sheet without asking; returns its number in the order of putting.
    pub(crate) fn put(&mut self, placed: Placement) -> usize {
        let set = self.worked_out(placed);
        let (column, row) = self.cell_of(set.centre);
        self.cells[row * self.columns + column].push(self.sets.len());
        self.sets.push(set);
        self.sets.len() - 1
    }

    /// Takes an impression up again: it is in nobody's way any more, and keeps its number.
    pub(crate) fn lift(&mut self, index: usize) {
        let (column, row) = self.cell_of(self.sets[index].centre);
        self.cells[row * self.columns + column].retain(|there| *there != index);
    }

    fn worked_out(&self, placed: Placement) -> Set {
        let outline = &self.wish.motifs[placed.motif].outline;
        let centre = (placed.x.to_mm(), placed.y.to_mm());
        let ink = outline.at(centre.0, centre.1, placed.turn);
        Set { placed, centre, reach: outline.reach(), core: outline.core(), ink }
    }

    fn edge_allows(&self, ink: &[Vec<Point>]) -> bool {
        match self.wish.edge {
            EdgeRule::Wrap => true,
            EdgeRule::Inside => {
                let [left, top, right, bottom] = bounds_of(ink);
                left >= 0.0 && top >= 0.0 && right <= self.width && bottom <= self.height
            }
            EdgeRule::RunOff => {
                let share = share_inside(ink, self.width, self.height);
                // Exactly 1 comes back only for ink that is wholly inside.
                share >= 1.0 || (SLIVER..=1.0 - SLIVER).contains(&share)
            }
        }
    }

    fn is_crowded(&self, set: &Set, gap: f64) -> bool {
        let near = self.near(set.centre, set.reach + self.widest + gap);
        let apart = |(index, step): &(usize, Point)| {
            let other = &self.sets[*index];
            libm::hypot(other.centre.0 + step.0 - set.centre.0, other.centre.1 + step.1 - set.centre.1)
        };
        // The cheap refusal first: the cores alone come too near.
        near.iter().any(|by| apart(by) < set.core + self.sets[by.0].core + gap)
            || near.iter().any(|by| {
                let other = &self.sets[by.0];
                apart(by) < set.reach + other.reach + gap && nearer(&set.ink, &moved(&other.ink, by.1), gap)
            })
    }

    /// On a sheet that repeats, a large motif may come too near its own copy.
    fn meets_itself(&self, set: &Set, gap: f64) -> bool {
        self.wraps()
            && [(self.width, 0.0), (0.0, self.height), (self.width, self.height), (self.width, -self.height)]
                .into_iter()
                .filter(|step| libm::hypot(step.0, step.1) < 2.0 * set.reach + gap)
                .any(|step| nearer(&set.ink, &moved(&set.ink, step), gap))
    }

    /// Whether an equal motif in nearly the same turn stands next to it.
    fn repeats_a_neighbour(&self, set: &Set) -> bool {
        let turning = self.wish.motifs[set.placed.motif].turning;
        let alone = self.wish.motifs.iter().filter(|motif| motif.share > 0).count() < 2;
        let apart = match turning.apart() {
            Some(apart) => apart,
            // A single upright stamp can not but stand beside itself.
            None if alone => return false,
            None => 361,
        };
        self.near(set.centre, self.neighbourhood(set)).iter().any(|(index, _)| {
            let other = self.sets[*index].placed;
            other.motif == set.placed.motif && difference(other.turn, set.placed.turn) < apart
        })
    }

    /// Within so far from centre to centre two equal motifs are neighbours: no third fits between them.
    fn neighbourhood(&self, set: &Set) -> f64 {
        2.0 * set.reach + 2.0 * self.wish.gap.to_mm()
    }

    /// The least distance of ink between any two impressions, mm.
    pub(crate) fn closest(&self) -> Option<f64> {
        let mut least = f64::INFINITY;
        for (index, set) in self.sets.iter().enumerate() {
            let far = set.reach + self.widest + least.min(self.width.max(self.height));
            for (other, step) in self.near(set.centre, far) {
                if other != index || step != (0.0, 0.0) {
                    least = least.min(apart(&set.ink, &moved(&self.sets[other].ink, step)));
                }
            }
        }
        least.is_finite().then_some(least)
    }
}

/// The ink a step away; the ink itself where there is no step.
pub(crate) fn moved(ink: &[Vec<Point>], (dx, dy): Point) -> Cow<'_, [Vec<Point>]> {
    if (dx, dy) == (0.0, 0.0) {
        return Cow::Borrowed(ink);
    }
    Cow::Owned(ink.iter().map(|patch| patch.iter().map(|p| (p.0 + dx, p.1 + dy)).collect()).collect())
}

/// How far two turns are apart, 0–180.
pub(crate) fn difference(one: u16, other: u16) -> u16 {
    let apart = one.abs_diff(other) % 360;
    apart.min(360 - apart)
}

/// A small count above a float, at least 1.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "saturates; never below zero")]
fn count_of(value: f64) -> usize {
    libm::floor(value).max(0.0) as usize + 1
}
