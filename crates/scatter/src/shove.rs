//! One impression moved by hand: the rest makes room.
//!
//! What is in its way goes to the nearest place that is free, or pushes others in turn, each at most once; who finds no
//! place near goes to any that is free, such as the one that was left. Locked ones stay.

use measure::Length;

use crate::ask::{MOST_MOTIFS, Placement, ScatterError, Turning, Wish};
use crate::outline::Point;
use crate::room::{Room, rounded};
use crate::toss::Dice;

/// Places are tried on so many rings, each so many times round. Chosen: by looking; more moves no impression less.
const RINGS: u32 = 10;
const ROUND: u32 = 20;
/// Pushing one more impression is worth going so much further, in parts of the motif's reach. Chosen: by looking.
const PUSH: f64 = 0.8;
/// So many places are tried anywhere before one is given up. Chosen: a page waits for it.
const THROWS: u32 = 400;

/// Why an impression can not be moved to a place.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum MoveError {
    /// There is no impression of that number, or more than there can be.
    #[error("there is no impression {0}")]
    Unknown(usize),
    /// It would run off the edge against the rule, or leave a sliver there.
    #[error("the edge forbids that place")]
    Edge,
    /// A locked impression is too near.
    #[error("locked impression {0} is in the way")]
    Locked(usize),
    /// The wish itself has no answer.
    #[error(transparent)]
    Wish(#[from] ScatterError),
}

/// The impressions, in the same order, after one was moved; `None` for those that found no place any more.
///
/// # Shape
/// `fixed` are numbers of impressions that stay; `wish.locked` is not looked at. Same question, same answer.
///
/// # Errors
/// [`MoveError`].
pub fn make_room(
    wish: &Wish,
    standing: &[Placement],
    fixed: &[usize],
    which: usize,
    to: Placement,
) -> Result<Vec<Option<Placement>>, MoveError> {
    wish.check()?;
    let all_there = standing.iter().chain([&to]).all(|placed| placed.motif < wish.motifs.len());
    if which >= standing.len() || standing.len() > MOST_MOTIFS as usize || !all_there {
        return Err(MoveError::Unknown(which));
    }
    let gap = wish.gap.to_mm();
    let mut room = Room::new(wish);
    // The number of every impression in the room; those that stay and the moved one first.
    let mut numbers = Vec::new();
    for index in fixed.iter().copied().filter(|index| *index != which && *index < standing.len()) {
        room.put(standing[index]);
        numbers.push(index);
    }
    match room.in_the_way(to, gap) {
        None => return Err(MoveError::Edge),
        Some(near) => {
            if let Some(first) = near.first() {
                return Err(MoveError::Locked(numbers[*first]));
            }
        }
    }
    room.put(to);
    numbers.push(which);
    let firm = numbers.len();
    let mut answer: Vec<Option<Placement>> = standing.iter().copied().map(Some).collect();
    answer[which] = Some(to);
    for (index, placed) in standing.iter().enumerate() {
        if !numbers[..firm].contains(&index) {
            room.put(*placed);
            numbers.push(index);
        }
    }
    // Rooms' numbers of those that may not be pushed (any more).
    let mut settled: Vec<bool> = (0..numbers.len()).map(|at| at < firm).collect();
    let mut waiting: std::collections::VecDeque<usize> =
        room.in_the_way(to, gap).unwrap_or_default().into_iter().filter(|at| *at + 1 != firm).collect();
    waiting.iter().for_each(|at| room.lift(*at));
    let mut dice = Dice::new(wish.seed);
    while let Some(at) = waiting.pop_front() {
        let index = numbers[at];
        let before = standing[index];
        let found = nearest(wish, &room, before, to, &settled)
            .or_else(|| anywhere(wish, &room, before, standing[which], &mut dice));
        let Some((placed, pushed)) = found else {
            answer[index] = None;
            continue;
        };
        for other in pushed {
            room.lift(other);
            waiting.push_back(other);
        }
        answer[index] = Some(placed);
        let number = room.put(placed);
        numbers.push(index);
        settled.push(true);
        debug_assert_eq!(number + 1, numbers.len());
    }
    Ok(answer)
}

/// The place that moves it and others least, with those it pushes.
fn nearest(
    wish: &Wish,
    room: &Room<'_>,
    before: Placement,
    from: Placement,
    settled: &[bool],
) -> Option<(Placement, Vec<usize>)> {
    let gap = wish.gap.to_mm();
    let reach = wish.motifs[before.motif].outline.reach();
    let (x, y) = (before.x.to_mm(), before.y.to_mm());
    // The first place of every ring lies straight away from what came.
    let away = libm::atan2(y - from.y.to_mm(), x - from.x.to_mm());
    let mut best: Option<(f64, Placement, Vec<usize>)> = None;
    for ring in 0..=RINGS {
        let far = (2.0 * reach + gap) * f64::from(ring) / f64::from(RINGS);
        if best.as_ref().is_some_and(|best| best.0 <= far) {
            break;
        }
        for step in 0..if ring == 0 { 1 } else { ROUND } {
            let side = if step % 2 == 0 { 1.0 } else { -1.0 };
            let angle = away + side * f64::from(step.div_ceil(2)) * core::f64::consts::TAU / f64::from(ROUND);
            let spot = (x + far * libm::cos(angle), y + far * libm::sin(angle));
            for turn in turns(wish.motifs[before.motif].turning, before.turn) {
                let placed = at(before, spot, turn);
                // Pushing so many or more costs no less than what was found.
                let most = best.as_ref().map_or(usize::MAX, |best| pushes(best.0 - far, reach));
                let firm = |other: usize| settled[other];
                let Some(near) = room.fewer_in_the_way(placed, gap, most, firm) else { continue };
                let cost = far + reach * PUSH * f64::from(u32::try_from(near.len()).unwrap_or(u32::MAX));
                if best.as_ref().is_none_or(|best| cost < best.0) {
                    best = Some((cost, placed, near));
                }
                break;
            }
        }
    }
    best.map(|(_, placed, near)| (placed, near))
}

/// How many pushes are no longer worth it.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "saturates; never below zero")]
fn pushes(left: f64, reach: f64) -> usize {
    libm::ceil((left / (reach * PUSH).max(1e-6)).max(0.0)) as usize
}

/// A free place: the one that was left, or any.
fn anywhere(
    wish: &Wish,
    room: &Room<'_>,
    before: Placement,
    left: Placement,
    dice: &mut Dice,
) -> Option<(Placement, Vec<usize>)> {
    let gap = wish.gap.to_mm();
    let turning = wish.motifs[before.motif].turning;
    let there = Placement { x: left.x, y: left.y, ..before };
    let free = |placed: Placement| room.fewer_in_the_way(placed, gap, 1, |_| true).map(|_| placed);
    let thrown = (0..THROWS).find_map(|_| {
        let spot = (dice.within(0.0, room.width), dice.within(0.0, room.height));
        free(at(before, spot, dice.turn(turning)))
    });
    free(there).or(thrown).map(|placed| (placed, Vec::new()))
}

fn at(before: Placement, (x, y): Point, turn: u16) -> Placement {
    let place = |mm: f64| -> Length { rounded(mm) };
    Placement { x: place(x), y: place(y), turn, ..before }
}

/// The turn it has, then turns near it.
fn turns(turning: Turning, turn: u16) -> Vec<u16> {
    let near = |by: i32| u16::try_from((i32::from(turn) + by).rem_euclid(360)).unwrap_or(turn);
    match turning {
        Turning::Upright => vec![turn],
        Turning::Free => vec![turn, near(25), near(-25), near(60), near(-60)],
        Turning::Within(most) => {
            let kept = |turn: u16| turn <= most || turn + most >= 360;
            [0, 10, -10].into_iter().map(near).filter(|turn| kept(*turn)).collect()
        }
    }
}
