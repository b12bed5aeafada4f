//! Whole packs at the least cost: an integer programme of one row, solved exactly.

use std::collections::VecDeque;

/// A pack on sale.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PackOnSale {
    /// What it holds; a pack of nothing is never bought.
    pub holds: u64,
    /// What it costs, in the smallest unit of money that is told.
    pub price: u64,
}

/// Most packs of one kind that are tried: beyond, the pack that is cheapest by the piece makes up the bulk.
/// Chosen: an exact answer needs at most `holds of the cheapest − 1` of each other kind.
const MOST_STEPS: u64 = 4_000_000;
/// Most ways to share packs over colours that are looked at.
/// Chosen: seven colours of a few packs each, at once.
const MOST_WAYS: u64 = 200_000;
/// No colour gives away more than one in so many of its pieces: the batch is to look as it was planned. Chosen.
const MOST_GIVEN: u64 = 4;

/// How many of each pack to buy so that at least `need` is there: least cost, then least left over.
///
/// # Shape
/// Exact for every need: a table over the amounts up to what the pack that is cheapest by the piece settles by itself.
/// `None` if nothing on sale holds anything, or the table would be larger than memory should be (packs of millions of
/// pieces with no common measure).
///
/// # Source
/// The unbounded covering knapsack, by dynamic programming over the amount; that an optimal answer exists with fewer than
/// `h` packs in all besides the one with the best price by the piece, where `h` is what that one holds, follows from
/// the pigeonhole principle on residues modulo `h`.
///
/// # Examples
/// ```
/// use cards::buying::{PackOnSale, cheapest};
/// let packs = [PackOnSale { holds: 50, price: 650 }, PackOnSale { holds: 10, price: 150 }];
/// assert_eq!(cheapest(60, &packs), Some(vec![1, 1]));
/// assert_eq!(cheapest(96, &packs), Some(vec![2, 0]));
/// ```
pub fn cheapest(need: u64, packs: &[PackOnSale]) -> Option<Vec<u64>> {
    let mut count = vec![0; packs.len()];
    if need == 0 {
        return Some(count);
    }
    // Best by the piece: compared without a division; of equals the smaller, which leaves less over.
    let best = (0..packs.len()).filter(|&index| packs[index].holds > 0).min_by(|&a, &b| {
        let worth = |at: usize, other: usize| u128::from(packs[at].price) * u128::from(packs[other].holds);
        worth(a, b).cmp(&worth(b, a)).then(packs[a].holds.cmp(&packs[b].holds))
    })?;
    let measure = packs.iter().map(|pack| pack.holds).filter(|holds| *holds > 0).fold(0, gcd);
    let holds: Vec<u64> = packs.iter().map(|pack| pack.holds / measure).collect();
    let need = need.div_ceil(measure);
    // So much can be left to the others; whole best packs cover the rest.
    let largest = holds.iter().copied().max().unwrap_or(1);
    let others = holds[best].checked_mul(largest)?.min(need);
    let bulk = (need - others) / holds[best];
    let left = need - bulk * holds[best];
    if left + largest > MOST_STEPS {
        return None;
    }
    count[best] = bulk;
    for (index, more) in table(left, &holds, packs)?.into_iter().enumerate() {
        count[index] += more;
    }
    Some(count)
}

/// Best ways to hold exactly each amount up to `need` and one pack beyond; the best of those that reach `need`.
fn table(need: u64, holds: &[u64], packs: &[PackOnSale]) -> Option<Vec<u64>> {
    let largest = holds.iter().copied().max().unwrap_or(1);
    let size = usize::try_from(need + largest).ok()?;
    // Cost, then number of packs, then which pack came last.
    let mut best: Vec<Option<(u128, u64, usize)>> = vec![None; size];
    best[0] = Some((0, 0, usize::MAX));
    for amount in 1..size {
        for (index, pack) in packs.iter().enumerate() {
            let step = usize::try_from(holds[index]).ok()?;
            if step == 0 || step > amount {
                continue;
            }
            let Some((cost, number, _)) = best[amount - step] else { continue };
            let way = (cost + u128::from(pack.price), number + 1, index);
            if best[amount].is_none_or(|known| (way.0, way.1) < (known.0, known.1)) {
                best[amount] = Some(way);
            }
        }
    }
    let reach = usize::try_from(need).ok()?;
    let ends = (reach..size).filter_map(|amount| best[amount].map(|(cost, number, _)| (cost, amount, number)));
    let (_, mut amount, _) = ends.min()?;
    let mut count = vec![0; packs.len()];
    while let Some((_, _, index)) = best[amount].filter(|_| amount > 0) {
        count[index] += 1;
        amount -= usize::try_from(holds[index]).ok()?;
    }
    Some(count)
}

fn gcd(one: u64, other: u64) -> u64 {
    if other == 0 { one } else { gcd(other, one % other) }
}

/// One colour that pieces could be cut from: how many it is to give, what a whole pack of it gives, what a pack costs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Colour {
    /// Pieces that are wanted of it now.
    pub pieces: u64,
    /// Pieces that one pack of it gives; a colour of which nothing is bought gives none.
    pub pack_gives: u64,
    /// What a pack costs.
    pub price: u64,
    /// Pieces that come out of what lies on the shelf.
    pub there: u64,
}

/// Packs of each colour and pieces that change their colour.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Swap {
    /// Packs of each colour.
    pub packs: Vec<u64>,
    /// Pieces each colour gives after the swap.
    pub pieces: Vec<u64>,
    /// How many pieces change their colour.
    pub moved: u64,
    /// What all packs cost.
    pub cost: u64,
}

/// Fewer packs by giving pieces another of the colours: least cost, then fewest pieces that change. No colour gives away
/// more than a quarter of its pieces.
///
/// # Shape
/// Exact: every number of packs of each colour up to what would do for all pieces is looked at. `None` if nothing is
/// saved, or there are too many ways to look at them all.
pub fn swap(colours: &[Colour]) -> Option<Swap> {
    let now: Vec<u64> = colours.iter().map(packs_now).collect::<Option<_>>()?;
    let all: u64 = colours.iter().map(|colour| colour.pieces).sum();
    let cost_now: u64 = now.iter().zip(colours).map(|(packs, colour)| packs * colour.price).sum();
    let alone = |colour: &Colour| if colour.pack_gives == 0 { 0 } else { all.div_ceil(colour.pack_gives) };
    let most: Vec<u64> = colours.iter().map(alone).collect();
    let ways = most.iter().try_fold(1_u64, |ways, packs| ways.checked_mul(packs + 1))?;
    if ways > MOST_WAYS {
        return None;
    }
    let mut best: Option<Swap> = None;
    let mut waiting = VecDeque::from([Vec::new()]);
    while let Some(packs) = waiting.pop_front() {
        if packs.len() < colours.len() {
            waiting.extend((0..=most[packs.len()]).map(|next| [packs.as_slice(), &[next]].concat()));
            continue;
        }
        let holds = |(packs, colour): (&u64, &Colour)| packs * colour.pack_gives + colour.there;
        let room: Vec<u64> = packs.iter().zip(colours).map(holds).collect();
        if room.iter().sum::<u64>() < all {
            continue;
        }
        let cost = packs.iter().zip(colours).map(|(packs, colour)| packs * colour.price).sum();
        let over = |(room, colour): (&u64, &Colour)| colour.pieces.saturating_sub(*room);
        if room.iter().zip(colours).any(|pair| over(pair) * MOST_GIVEN > pair.1.pieces) {
            continue;
        }
        let moved = room.iter().zip(colours).map(over).sum();
        if best.as_ref().is_none_or(|best| (cost, moved) < (best.cost, best.moved)) {
            best = Some(Swap { pieces: shared(colours, &room), packs, moved, cost });
        }
    }
    best.filter(|best| best.cost < cost_now)
}

/// Whole packs of a colour as it is; `None` where none can be bought and some must.
fn packs_now(colour: &Colour) -> Option<u64> {
    let wanted = colour.pieces.saturating_sub(colour.there);
    if wanted == 0 {
        return Some(0);
    }
    (colour.pack_gives > 0).then(|| wanted.div_ceil(colour.pack_gives))
}

/// Pieces for each colour: what is over the room of one goes to the others, piece by piece to where most is free.
fn shared(colours: &[Colour], room: &[u64]) -> Vec<u64> {
    let mut pieces: Vec<u64> = colours.iter().zip(room).map(|(colour, room)| colour.pieces.min(*room)).collect();
    let mut left = colours.iter().map(|colour| colour.pieces).sum::<u64>() - pieces.iter().sum::<u64>();
    while left > 0 {
        let free = |at: &usize| room[*at] - pieces[*at];
        // The first of those with most room.
        let Some(at) = (0..pieces.len()).rev().max_by_key(free).filter(|at| free(at) > 0) else { break };
        pieces[at] += 1;
        left -= 1;
    }
    pieces
}
