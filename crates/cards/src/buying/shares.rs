//! Each card's own share of the three figures, to the coin: the shares of all cards add up to the figure.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use super::{NeedOf, Purchase, Shopping, Sum, used};
use crate::money::share_out;
use crate::plan::{Card, CostOf, Plan, Weights, add_up, weights_each};

/// What each card has of the three figures, in the order of the cards; `None` where the figure has no amount.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct CardShares {
    /// Of what lies in the cards.
    pub used: Option<Vec<Decimal>>,
    /// Of the whole packs for this batch.
    pub bought: Option<Vec<Decimal>>,
    /// Of the whole packs for the same batch again.
    pub next: Option<Vec<Decimal>>,
}

/// Cards in a row that have the same shares and are of one batch and recipe.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Alike {
    /// Number of the first.
    pub first: u32,
    /// Number of the last.
    pub last: u32,
    /// What each of them has of the three figures: used, bought, next batch.
    pub each: [Option<Decimal>; 3],
}

/// What some cards have together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Together {
    /// How many cards they are.
    pub cards: usize,
    /// Of the three figures: used, bought, next batch.
    pub figures: [Option<Decimal>; 3],
}

/// The shares of every card.
///
/// # Shape
/// A card's part of a line is what it takes of it, of all that the cards take of it: paper and cardstock by area, ribbon and
/// tape by length, the rest by the piece. A figure is then shared out by [`share_out`], which keeps it to the coin: first over
/// the cards of each batch and recipe together, so that none of them loses to another what single coins cannot say, then
/// in each over its cards. Where a price is missing the shares are those of what is known, as the figure is.
pub fn card_shares(plan: &Plan, shopping: &Shopping) -> CardShares {
    let lines = plan.costs.lines.iter().filter_map(|line| Some((line.of, line.used?)));
    let cost = |cost: fn(&Purchase) -> Option<Decimal>| {
        let told =
            shopping.purchases.iter().filter_map(move |purchase| Some((purchase.need.of.line(), cost(purchase)?)));
        by_line(told)
    };
    let lines = [by_line(lines), cost(|purchase| purchase.cost), cost(|purchase| purchase.next_cost)];
    let each: Vec<Weights> = weights_each(plan).collect();
    let mut whole = Weights::new();
    for own in &each {
        add_up(&mut whole, own.clone());
    }
    let mut kinds: BTreeMap<(usize, usize), Vec<usize>> = BTreeMap::new();
    for (at, card) in plan.cards.iter().enumerate() {
        kinds.entry((card.batch, card.recipe)).or_default().push(at);
    }
    let share = |sum: &Sum, lines: &BTreeMap<CostOf, Decimal>| {
        let amount = sum.amount?;
        let currency = sum.currencies.first().map_or("", String::as_str);
        let exact: Vec<Decimal> = each.iter().map(|own| taken(lines, own, &whole)).collect();
        // Of nothing everybody has nothing, and what no card takes by itself is everybody's alike.
        let nobody = exact.iter().all(Decimal::is_zero);
        let weights = if nobody { vec![Decimal::ONE; exact.len()] } else { exact };
        let of_kind = |kind: &Vec<usize>| kind.iter().fold(Decimal::ZERO, |sum, &at| sum.saturating_add(weights[at]));
        let together: Vec<Decimal> = kinds.values().map(of_kind).collect();
        let mut shares = vec![Decimal::ZERO; weights.len()];
        for (kind, amount) in kinds.values().zip(share_out(amount, currency, &together)) {
            let own: Vec<Decimal> = kind.iter().map(|&at| weights[at]).collect();
            for (&at, share) in kind.iter().zip(share_out(amount, currency, &own)) {
                shares[at] = share;
            }
        }
        Some(shares)
    };
    CardShares {
        used: share(&used(plan), &lines[0]),
        bought: share(&shopping.bought, &lines[1]),
        next: share(&shopping.next, &lines[2]),
    }
}

fn by_line(amounts: impl Iterator<Item = (CostOf, Decimal)>) -> BTreeMap<CostOf, Decimal> {
    let mut lines: BTreeMap<CostOf, Decimal> = BTreeMap::new();
    for (of, amount) in amounts {
        let line = lines.entry(of).or_default();
        *line = line.saturating_add(amount);
    }
    lines
}

/// What a card takes of some lines, in money.
fn taken(lines: &BTreeMap<CostOf, Decimal>, own: &Weights, whole: &Weights) -> Decimal {
    let part = |(of, weight): (&CostOf, &Decimal)| {
        let amount = lines.get(of)?.checked_mul(*weight)?;
        amount.checked_div(*whole.get(of)?)
    };
    own.iter().filter_map(part).fold(Decimal::ZERO, Decimal::saturating_add)
}

impl CardShares {
    fn figures(&self) -> [Option<&Vec<Decimal>>; 3] {
        [self.used.as_ref(), self.bought.as_ref(), self.next.as_ref()]
    }

    /// What some of the cards have together: the sum of their shares.
    pub fn together(&self, plan: &Plan, of: impl Fn(&Card) -> bool) -> Together {
        let mine: Vec<usize> = (0..plan.cards.len()).filter(|&at| of(&plan.cards[at])).collect();
        let sum = |shares: &Vec<Decimal>| {
            let own = mine.iter().filter_map(|&at| shares.get(at));
            own.fold(Decimal::ZERO, |sum, share| sum.saturating_add(*share))
        };
        Together { cards: mine.len(), figures: self.figures().map(|shares| shares.map(sum)) }
    }

    /// Every card's share, cards that are alike and follow each other together.
    pub fn alike(&self, plan: &Plan) -> Vec<Alike> {
        let mut rows: Vec<((usize, usize), Alike)> = Vec::new();
        for (at, card) in plan.cards.iter().enumerate() {
            let each = self.figures().map(|shares| shares.and_then(|shares| shares.get(at)).copied());
            let kind = (card.batch, card.recipe);
            match rows.last_mut() {
                Some((of, row)) if *of == kind && row.each == each && row.last + 1 == card.number => {
                    row.last = card.number;
                }
                _ => rows.push((kind, Alike { first: card.number, last: card.number, each })),
            }
        }
        rows.into_iter().map(|(_, row)| row).collect()
    }
}

impl NeedOf {
    /// The line of the costs it is a part of.
    pub fn line(self) -> CostOf {
        match self {
            NeedOf::Paper(pack) => CostOf::Paper(pack),
            NeedOf::Cardstock(cardstock, _) => CostOf::Cardstock(cardstock),
            NeedOf::Ribbon(ribbon) => CostOf::Ribbon(ribbon),
            NeedOf::Tape => CostOf::Tape,
            NeedOf::Foam => CostOf::Foam,
            NeedOf::Envelopes => CostOf::Envelopes,
            NeedOf::InkPad => CostOf::InkPad,
            NeedOf::Stamps => CostOf::Stamps,
        }
    }
}
