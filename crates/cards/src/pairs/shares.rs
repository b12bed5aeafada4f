//! How evenly the prints are shared over the cards, and over kits.

use std::collections::BTreeMap;

use super::Print;

/// How many cards of a recipe show a print at a layer, out of how many that could.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Shown {
    /// Index of the recipe.
    pub recipe: usize,
    /// Index of the layer.
    pub layer: usize,
    /// What shows.
    pub print: Print,
    /// Cards that show it.
    pub cards: u32,
    /// Pieces of it that there are for that recipe and layer.
    pub there: u32,
}

/// Why a share is not even.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Uneven {
    /// Every piece of the print shown least is used.
    AllUsed,
    /// Pieces of it are left, but the rule sends the cards to other prints.
    Rule,
    /// Pieces of it are left, but partners that the maker named go together first. [`evenness`], which knows no
    /// partners, takes it for the rule.
    Partners,
}

/// The share of one recipe's layer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Share {
    /// Index of the recipe.
    pub recipe: usize,
    /// Index of the layer.
    pub layer: usize,
    /// The print that shows most, and on how many cards.
    pub most: (Print, u32),
    /// The print that shows least, and on how many cards.
    pub fewest: (Print, u32),
    /// Told if the two are more than one apart.
    pub reason: Option<Uneven>,
}

/// For each recipe and layer: most and fewest cards of one print, with the reason if they are more than one apart.
pub fn evenness(shown: &[Shown]) -> Vec<Share> {
    let mut layers: BTreeMap<(usize, usize), BTreeMap<Print, (u32, u32)>> = BTreeMap::new();
    for one in shown {
        let sum = layers.entry((one.recipe, one.layer)).or_default().entry(one.print).or_default();
        *sum = (sum.0.saturating_add(one.cards), sum.1.saturating_add(one.there));
    }
    let mut shares = Vec::new();
    for ((recipe, layer), prints) in layers {
        let count = |(&print, &(cards, there)): (&Print, &(u32, u32))| (cards, print, there);
        let Some(most) = prints.iter().map(count).max_by_key(|&(cards, print, _)| (cards, std::cmp::Reverse(print)))
        else {
            continue;
        };
        // Of several that show least, one that could show more: it is the harder to explain.
        let Some(fewest) = prints.iter().map(count).min_by_key(|&(cards, print, there)| (cards, there <= cards, print))
        else {
            continue;
        };
        let used_up = fewest.2 <= fewest.0;
        let reason = (most.0 - fewest.0 > 1).then_some(if used_up { Uneven::AllUsed } else { Uneven::Rule });
        shares.push(Share { recipe, layer, most: (most.1, most.0), fewest: (fewest.1, fewest.0), reason });
    }
    shares
}

/// Cards shared over equal kits.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kits {
    /// By kit, by class of cards: how many.
    pub cards: Vec<Vec<u32>>,
    /// True if all kits are alike.
    pub equal: bool,
    /// Pairs of neighbours (the last sits beside the first) that have different cards, so that they can swap.
    pub swaps: u32,
}

/// Share classes of cards over kits: of each class, and in all, most minus fewest is at most one.
///
/// What does not divide goes round, and neighbours sit half a round apart, so that they get different cards.
pub fn kits(counts: &[u32], kits: u32) -> Kits {
    let number = kits as usize;
    if number == 0 {
        return Kits { cards: Vec::new(), equal: true, swaps: 0 };
    }
    let mut round: Vec<Vec<u32>> = vec![counts.iter().map(|count| count / kits).collect(); number];
    let mut at = 0;
    for (class, count) in counts.iter().enumerate() {
        for _ in 0..count % kits {
            round[at % number][class] += 1;
            at += 1;
        }
    }
    let half = number.div_ceil(2);
    let mut cards: Vec<Vec<u32>> = Vec::with_capacity(number);
    for seat in 0..number {
        cards.push(round[if seat % 2 == 0 { seat / 2 } else { half + seat / 2 }].clone());
    }
    let can_swap = |one: &[u32], other: &[u32]| {
        let more = |one: &[u32], other: &[u32]| one.iter().zip(other).any(|(one, other)| one > other);
        more(one, other) && more(other, one)
    };
    let pairs = match number {
        1 => 0,
        2 => 1,
        more => more,
    };
    let swaps = (0..pairs).filter(|&seat| can_swap(&cards[seat], &cards[(seat + 1) % number])).count();
    let equal = cards.iter().all(|kit| *kit == cards[0]);
    Kits { cards, equal, swaps: u32::try_from(swaps).unwrap_or(u32::MAX) }
}
