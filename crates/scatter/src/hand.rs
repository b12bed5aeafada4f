//! What a hand does to a sheet: every impression a little off its place and its turn.
//!
//! A seeded simulation: the same sheet gives the same figures. Left out on purpose: what is off for all impressions
//! alike, such as a guide that lies askew.

use measure::Length;

use crate::ask::{EdgeRule, Placement, Wish};
use crate::outline::{Point, apart, bounds_of};
use crate::room::{moved, rounded};
use crate::toss::Dice;

/// How far off a hand may be: every place and turn in between is equally likely.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Slip {
    /// Sideways and up or down, either way.
    pub place: Length,
    /// Turned either way, in degrees.
    pub turn_deg: u16,
}

/// What comes of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Loosened {
    /// The least distance of ink found on any of the sheets; 0 where two touched or overlapped.
    pub worst: Length,
    /// The least distance of ink on a middling sheet.
    pub usual: Length,
    /// Of a thousand impressions, how many touch another, over all sheets.
    pub touch_per_mille: u32,
}

/// One sheet as a hand that slips stamps it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Askew {
    /// Where every impression comes, in the order given; turns to the nearest degree.
    pub placements: Vec<Placement>,
    /// Which of them, by that order, touch another.
    pub touch: Vec<usize>,
}

/// So many sheets are stamped by `sheets` hands that slip; `None` for fewer than two impressions or no sheets.
///
/// # Source
/// Monte Carlo: independent, even errors, as the tolerance of cuts has them (`cutting::tolerance`).
#[must_use]
pub fn by_hand(wish: &Wish, placements: &[Placement], slip: Slip, sheets: u32, seed: u64) -> Option<Loosened> {
    let tries = tries(wish, placements, slip, sheets, seed)?;
    let touched = tries.iter().map(|one| one.touches.iter().filter(|touches| **touches).count() as u64).sum::<u64>();
    let mut leasts: Vec<f64> = tries.iter().map(|one| one.least).collect();
    leasts.sort_by(f64::total_cmp);
    let whole = u64::from(sheets) * placements.len() as u64;
    Some(Loosened {
        worst: rounded(leasts[0]),
        usual: rounded(leasts[leasts.len() / 2]),
        touch_per_mille: u32::try_from((touched * 1_000 + whole / 2) / whole).unwrap_or(1_000),
    })
}

/// Of the sheets of [`by_hand`] the one on which most impressions touch, or else come nearest.
#[must_use]
pub fn worst_by_hand(wish: &Wish, placements: &[Placement], slip: Slip, sheets: u32, seed: u64) -> Option<Askew> {
    let tries = tries(wish, placements, slip, sheets, seed)?;
    let count = |one: &Try| one.touches.iter().filter(|touches| **touches).count();
    let worst = tries.into_iter().reduce(|worst, one| {
        let order = count(&one).cmp(&count(&worst)).then(worst.least.total_cmp(&one.least));
        if order.is_gt() { one } else { worst }
    })?;
    let touch = (0..worst.touches.len()).filter(|at| worst.touches[*at]).collect();
    Some(Askew { placements: worst.placements, touch })
}

/// One sheet that was tried.
struct Try {
    placements: Vec<Placement>,
    touches: Vec<bool>,
    least: f64,
}

fn tries(wish: &Wish, placements: &[Placement], slip: Slip, sheets: u32, seed: u64) -> Option<Vec<Try>> {
    if placements.len() < 2 || sheets == 0 || placements.iter().any(|placed| placed.motif >= wish.motifs.len()) {
        return None;
    }
    let pairs = pairs(wish, placements, slip);
    let mut dice = Dice::new(seed);
    let far = wish.sheet.width.to_mm().max(wish.sheet.height.to_mm());
    let mut tries = Vec::new();
    for _ in 0..sheets {
        let (placements, inks): (Vec<Placement>, Vec<Vec<Vec<Point>>>) =
            placements.iter().map(|placed| slipped(wish, *placed, slip, &mut dice)).unzip();
        let bounds: Vec<[f64; 4]> = inks.iter().map(|ink| bounds_of(ink)).collect();
        let mut touches = vec![false; inks.len()];
        let mut least = far;
        for (one, other, step) in &pairs {
            if !within(bounds[*one], bounds[*other], *step, least) {
                continue;
            }
            let distance = apart(&inks[*one], &moved(&inks[*other], *step));
            least = least.min(distance);
            if distance <= 0.0 {
                (touches[*one], touches[*other]) = (true, true);
            }
        }
        tries.push(Try { placements, touches, least });
    }
    Some(tries)
}

fn slipped(wish: &Wish, placed: Placement, slip: Slip, dice: &mut Dice) -> (Placement, Vec<Vec<Point>>) {
    let by = |dice: &mut Dice, most: f64| dice.within(-most, most);
    let (dx, dy) = (by(dice, slip.place.to_mm()), by(dice, slip.place.to_mm()));
    let turn = f64::from(placed.turn) + by(dice, f64::from(slip.turn_deg));
    let (x, y) = (placed.x.to_mm() + dx, placed.y.to_mm() + dy);
    let ink = wish.motifs[placed.motif].outline.turned(x, y, turn);
    (Placement { x: rounded(x), y: rounded(y), turn: whole_degrees(turn), ..placed }, ink)
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 359")]
fn whole_degrees(turn: f64) -> u16 {
    libm::round(turn).rem_euclid(360.0) as u16
}

/// Pairs that may come nearest: of every impression, those in reach of it with the gap and the slips of both.
fn pairs(wish: &Wish, placements: &[Placement], slip: Slip) -> Vec<(usize, usize, Point)> {
    let (width, height) = (wish.sheet.width.to_mm(), wish.sheet.height.to_mm());
    let steps: Vec<Point> = if wish.edge == EdgeRule::Wrap {
        [-1.0, 0.0, 1.0].iter().flat_map(|x| [-1.0, 0.0, 1.0].map(|y| (x * width, y * height))).collect()
    } else {
        vec![(0.0, 0.0)]
    };
    let reach = |placed: &Placement| wish.motifs[placed.motif].outline.reach();
    let more = 2.0 * core::f64::consts::SQRT_2 * slip.place.to_mm() + 2.0 * wish.gap.to_mm() + 10.0;
    let mut found = Vec::new();
    for (one, a) in placements.iter().enumerate() {
        for (other, b) in placements.iter().enumerate().skip(one + 1) {
            for step in &steps {
                let (dx, dy) = (b.x.to_mm() + step.0 - a.x.to_mm(), b.y.to_mm() + step.1 - a.y.to_mm());
                if libm::hypot(dx, dy) < reach(a) + reach(b) + more {
                    found.push((one, other, *step));
                }
            }
        }
    }
    found
}

/// Whether two boxes, one of them moved, come within a distance.
fn within(one: [f64; 4], other: [f64; 4], step: Point, far: f64) -> bool {
    let dx = (other[0] + step.0 - one[2]).max(one[0] - other[2] - step.0).max(0.0);
    let dy = (other[1] + step.1 - one[3]).max(one[1] - other[3] - step.1).max(0.0);
    dx * dx + dy * dy <= far * far
}
