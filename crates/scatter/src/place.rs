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
    // How many it would hold at the most, where that is known to be more than it was asked to hold.
    let mut holds = 0;
    match (wish.arrangement, wish.count) {
        (Arrangement::Toss, None) => {
            toss(wish, &mut room, &shared_out(wish, about(wish)), gap, true);
        }
        (Arrangement::Toss, Some(count)) => {
            toss(wish, &mut room, &shared_out(wish, count), gap, false);
        }
        (_, None) => set_out(wish, &mut room, 1.0),
        (_, Some(count)) => (room, holds) = widened(wish, count),
    }
    let placed = u32::try_from(room.len()).unwrap_or(u32::MAX);
    // Arrangements come in whole rows: they fall short only where the tightest one holds too few.
    let shortfall = wish.count.filter(|wished| placed < *wished && holds < *wished as usize).map(|wished| Shortfall {
        wished,
        placed,
        gap_that_would_do: gap_for(wish, wished),
    });
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

/// An arrangement widened until it holds no more than a number, and how many the tightest one holds.
fn widened(wish: &Wish, count: u32) -> (Room<'_>, usize) {
    let laid = |scale: f64| {
        let (mut room, _) = begun(wish);
        set_out(wish, &mut room, scale);
        room
    };
    let tight = laid(1.0);
    let most = count as usize;
    let holds = tight.len();
    if holds <= most {
        return (tight, holds);
    }
    // Places thin out with the square of the pitch: each guess goes by that from the nearer of two sheets, one too full
    // and one not. Ten sheets at most.
    let part = |of: usize| f64::from(u32::try_from(of.max(1)).unwrap_or(u32::MAX));
    let (mut low, mut many) = (1.0, holds);
    let mut best: Option<(f64, Room<'_>)> = None;
    for _ in 0..9 {
        let scale = match &best {
            None => low * libm::sqrt(part(many) / part(most)) * 1.02,
            Some((high, room)) => {
                let by_fewer = high * libm::sqrt(part(room.len()) / part(most));
                let by_more = low * libm::sqrt(part(many) / part(most));
                // Kept off both ends, so that what is between them gets smaller each time.
                f64::midpoint(by_fewer, by_more).clamp(low + (high - low) * 0.2, high - (high - low) * 0.2)
            }
        };
        let room = laid(scale);
        if room.len() > most {
            (low, many) = (scale, room.len());
        } else {
            let near = room.len() * 100 >= most * 98;
            best = Some((scale, room));
            if near {
                break;
            }
        }
        if best.as_ref().is_some_and(|(high, _)| high - low < low * 0.004) {
            break;
        }
    }
    match best {
        Some((_, room)) => (room, holds),
        None => (laid(low * 1_000.0), holds),
    }
}

/// A gap below the wished one with which the number goes on.
fn gap_for(wish: &Wish, wished: u32) -> Option<Length> {
    if wish.arrangement == Arrangement::Toss {
        // How near they come where they may come as near as they must; a wide gap asks for more of neighbours than a
        // narrow one, so the answer is tried.
        let tossed = |gap: Length, least: f64| {
            let tighter = Wish { gap, ..wish.clone() };
            let (mut room, _) = begun(&tighter);
            let reached = toss(&tighter, &mut room, &shared_out(wish, wished), least, false);
            (room.len() >= wished as usize).then_some(reached)
        };
        let reached = tossed(Length::ZERO, 0.0)?.min(wish.gap.to_mm());
        let holds = |gap: f64| tossed(rounded(gap), rounded(gap).to_mm()).is_some();
        return [1.0, 0.8, 0.6, 0.4, 0.2].into_iter().map(|part| reached * part).find(|gap| holds(*gap)).map(rounded);
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
