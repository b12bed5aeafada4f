//! The sheet that answers a wish.

use measure::Length;

use crate::ask::{Arrangement, Placement, ScatterError, Wish};
use crate::lattice::set_out;
use crate::room::{Room, rounded};
use crate::toss::{about, by_size, shared_out, toss};

/// A wish that could not be met in full.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Shortfall {
    /// How many impressions were wished.
    pub wished: u32,
    /// How many the sheet holds at the wished gap: as many as were found to go on.
    pub placed: u32,
    /// A gap with which the wished number was found to go on; `None` where none was found.
    pub gap_that_would_do: Option<Length>,
}

/// A sheet of impressions.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Scattering {
    /// Impressions in stamping order: the largest motif first, then row by row.
    pub placements: Vec<Placement>,
    /// Least distance of ink found between two impressions; `None` for fewer than two.
    pub closest: Option<Length>,
    /// What was wished and is not there.
    pub shortfall: Option<Shortfall>,
    /// Locked impressions, counted from 0, that stand nearer to another locked one than the gap, or leave a sliver.
    pub locks_in_the_way: Vec<usize>,
}

/// The sheet that answers a wish.
///
/// # Shape
/// Same wish, same answer. Between two impressions there is at least the gap, except between two that are locked.
/// Where a number is wished that does not go on, the answer is the fullest sheet that was found, with a shortfall.
///
/// # Errors
/// [`ScatterError`] where there is nothing to stamp, or a motif larger than the sheet.
pub fn scatter(wish: &Wish) -> Result<Scattering, ScatterError> {
    wish.check()?;
    let (mut room, locks_in_the_way) = begun(wish);
    let gap = wish.gap.to_mm();
    match (wish.arrangement, wish.count) {
        (Arrangement::Toss, None) => {
            toss(wish, &mut room, &shared_out(wish, about(wish)), gap, true);
        }
        (Arrangement::Toss, Some(count)) => {
            toss(wish, &mut room, &shared_out(wish, count), gap, false);
        }
        (_, None) => set_out(wish, &mut room, 1.0),
        (_, Some(count)) => room = widened(wish, count),
    }
    let placed = u32::try_from(room.len()).unwrap_or(u32::MAX);
    let shortfall = wish
        .count
        .filter(|wished| placed < *wished && falls_short(wish, placed, *wished))
        .map(|wished| Shortfall { wished, placed, gap_that_would_do: gap_for(wish, wished) });
    let closest = room.closest().map(rounded);
    let mut placements = room.placements();
    let order = by_size(wish);
    let rank = |motif: usize| order.iter().position(|is| *is == motif).unwrap_or(order.len());
    placements.sort_by_key(|placed| (rank(placed.motif), placed.y, placed.x));
    Ok(Scattering { placements, closest, shortfall, locks_in_the_way })
}

/// A sheet with the locked impressions on it.
fn begun(wish: &Wish) -> (Room<'_>, Vec<usize>) {
    let mut room = Room::new(wish);
    let mut in_the_way = Vec::new();
    for (lock, placed) in wish.locked.iter().enumerate() {
        if room.in_the_way(*placed, wish.gap.to_mm()).is_none_or(|near| !near.is_empty()) {
            in_the_way.push(lock);
        }
        room.put(*placed);
    }
    (room, in_the_way)
}

/// An arrangement widened until it holds no more than a number.
fn widened(wish: &Wish, count: u32) -> Room<'_> {
    let laid = |scale: f64| {
        let (mut room, _) = begun(wish);
        set_out(wish, &mut room, scale);
        room
    };
    let tight = laid(1.0);
    let most = count as usize;
    if tight.len() <= most {
        return tight;
    }
    // Places thin out with the square of the pitch: begun near there, then halved between. A dozen sheets at most.
    let held = f64::from(u32::try_from(tight.len()).unwrap_or(u32::MAX));
    let guess = libm::sqrt(held / f64::from(count.max(1)));
    let (mut low, mut high) = (1.0, guess.max(1.0) * 1.05);
    while laid(high).len() > most && high < 1_000.0 {
        (low, high) = (high, high * 1.3);
    }
    low = if low > 1.0 { low } else { (guess * 0.9).max(1.0) };
    if laid(low).len() <= most {
        (low, high) = (1.0, low);
    }
    for _ in 0..6 {
        let middle = f64::midpoint(low, high);
        if laid(middle).len() > most { low = middle } else { high = middle }
    }
    laid(high)
}

/// Arrangements come in whole rows: they fall short only where the tightest one holds too few.
fn falls_short(wish: &Wish, placed: u32, wished: u32) -> bool {
    wish.arrangement == Arrangement::Toss || {
        let (mut room, _) = begun(wish);
        set_out(wish, &mut room, 1.0);
        placed < wished && room.len() < wished as usize
    }
}

/// A gap below the wished one with which the number goes on.
fn gap_for(wish: &Wish, wished: u32) -> Option<Length> {
    if wish.arrangement == Arrangement::Toss {
        let (mut room, _) = begun(wish);
        let reached = toss(wish, &mut room, &shared_out(wish, wished), 0.0, false);
        return (room.len() >= wished as usize && reached.is_finite()).then(|| rounded(reached));
    }
    let holds = |gap: f64| {
        let tighter = Wish { gap: rounded(gap), ..wish.clone() };
        let (mut room, _) = begun(&tighter);
        set_out(&tighter, &mut room, 1.0);
        room.len() >= wished as usize
    };
    let whole = wish.gap.to_mm();
    [0.75, 0.5, 0.25, 0.0].into_iter().map(|part| whole * part).find(|gap| holds(*gap)).map(rounded)
}
