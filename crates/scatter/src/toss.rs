//! The even toss: large motifs first, each as far from the others as there is room, then nearer and nearer.
//!
//! Every class of motif starts with a wide gap; where many throws in a row miss, the gap shrinks, down to the wished
//! one at the least. What is sparse is so spread as evenly as what is dense.
//! Source: M. `McCool`, E. Fiume, *Hierarchical Poisson disk sampling distributions*, Graphics Interface 1992 (from
//! memory); distances here are between the ink of two motifs, not between points.

use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{RngCore, SeedableRng};

use crate::ask::{EdgeRule, MOST_MOTIFS, Placement, Turning, Wish};
use crate::room::{Room, rounded};

/// So many misses in a row make the gap shrink. Chosen: as many as Bridson 2007 tries round one point.
const MISSES: u32 = 30;

/// So many misses in a row at the wished gap say that the sheet is full. Chosen: measured, more adds under 1 %.
const FULL: u32 = 1_500;

/// By so much the gap shrinks.
const SHRINK: f64 = 0.9;

/// Random numbers of one sheet.
#[derive(Debug)]
pub(crate) struct Dice(ChaCha8Rng);

impl Dice {
    pub(crate) fn new(seed: u64) -> Dice {
        Dice(ChaCha8Rng::seed_from_u64(seed))
    }

    /// At least 0, below 1.
    fn part(&mut self) -> f64 {
        f64::from(self.0.next_u32()) / 4_294_967_296.0
    }

    pub(crate) fn within(&mut self, from: f64, to: f64) -> f64 {
        from + (to - from) * self.part()
    }

    pub(crate) fn below(&mut self, most: u16) -> u16 {
        u16::try_from(self.0.next_u32() % u32::from(most.max(1))).unwrap_or(0)
    }

    pub(crate) fn turn(&mut self, turning: Turning) -> u16 {
        match turning {
            Turning::Free => self.below(360),
            Turning::Within(most) => {
                let most = most.min(179);
                (360 + self.below(2 * most + 1) - most) % 360
            }
            Turning::Upright => 0,
        }
    }
}

/// How many of each motif a number of impressions comes to, by their shares; the remainders go to the smallest.
pub(crate) fn shared_out(wish: &Wish, count: u32) -> Vec<u32> {
    let whole: u64 = wish.motifs.iter().map(|motif| u64::from(motif.share)).sum();
    let of = |share: u32| u64::from(count) * u64::from(share) / whole.max(1);
    let mut counts: Vec<u32> =
        wish.motifs.iter().map(|motif| u32::try_from(of(motif.share)).unwrap_or(MOST_MOTIFS)).collect();
    let mut left = count - counts.iter().sum::<u32>().min(count);
    for motif in by_size(wish).into_iter().rev().cycle().take(if wish.motifs.is_empty() { 0 } else { 1_000 }) {
        if left == 0 {
            break;
        }
        counts[motif] += 1;
        left -= 1;
    }
    counts
}

/// Motifs in use, the largest first.
pub(crate) fn by_size(wish: &Wish) -> Vec<usize> {
    let mut order: Vec<usize> = (0..wish.motifs.len()).filter(|index| wish.motifs[*index].share > 0).collect();
    order.sort_by(|a, b| wish.motifs[*b].outline.reach().total_cmp(&wish.motifs[*a].outline.reach()));
    order
}

/// How many impressions a toss takes, about: 0.70 × (w + m)(h + m) / (m + g)².
///
/// From the random-packing limit 0.547 (J. Feder 1980), see `tests/blue_noise.rs`; m is the diameter of the mean motif.
pub(crate) fn about(wish: &Wish) -> u32 {
    let gap = wish.gap.to_mm();
    let (mut sum, mut weight) = (0.0, 0.0);
    for motif in &wish.motifs {
        let across = 2.0 * libm::sqrt(motif.outline.area() / core::f64::consts::PI);
        sum += f64::from(motif.share) * (across + gap) * (across + gap);
        weight += f64::from(motif.share);
    }
    let square = (sum / weight).max(1e-3);
    let across = if wish.edge == EdgeRule::RunOff { libm::sqrt(square) - gap } else { 0.0 };
    let room = (wish.sheet.width.to_mm() + across) * (wish.sheet.height.to_mm() + across);
    whole(0.7 * room / square).min(MOST_MOTIFS)
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "saturates; never below zero")]
fn whole(value: f64) -> u32 {
    libm::round(value.max(1.0)) as u32
}

/// Fills a sheet with so many of each motif, no nearer than a gap; the last and smallest motif goes on until nothing
/// fits where `fill` is set. Returns the gap the last impression was put with.
pub(crate) fn toss(wish: &Wish, room: &mut Room<'_>, counts: &[u32], least: f64, fill: bool) -> f64 {
    let mut dice = Dice::new(wish.seed);
    let order = by_size(wish);
    let mut reached = f64::INFINITY;
    for (place, &motif) in order.iter().enumerate() {
        let last = place + 1 == order.len();
        let there = room.placements().iter().filter(|placed| placed.motif == motif).count();
        let wanted = if last && fill { MOST_MOTIFS } else { counts[motif] };
        let mut left = wanted.saturating_sub(u32::try_from(there).unwrap_or(MOST_MOTIFS));
        let mut gap = least;
        if !(last && fill) {
            gap = gap.max(libm::sqrt(room.width * room.height / f64::from(counts[motif].max(1))));
        }
        let mut misses = 0;
        while left > 0 && room.len() < MOST_MOTIFS as usize {
            let placed = thrown(wish, room, motif, &mut dice);
            if room.takes(placed, gap) {
                room.put(placed);
                reached = reached.min(gap);
                (left, misses) = (left - 1, 0);
                continue;
            }
            misses += 1;
            if gap > least && misses >= MISSES {
                gap = (gap * SHRINK - 0.05).max(least);
                misses = 0;
            } else if misses >= FULL {
                break;
            }
        }
    }
    reached
}

fn thrown(wish: &Wish, room: &Room<'_>, motif: usize, dice: &mut Dice) -> Placement {
    let of = &wish.motifs[motif];
    let over = if wish.edge == EdgeRule::RunOff { of.outline.reach() } else { 0.0 };
    let x = rounded(dice.within(-over, room.width + over));
    let y = rounded(dice.within(-over, room.height + over));
    Placement { motif, x, y, turn: dice.turn(of.turning) }
}
