//! What the batch needs, what is there, what to buy in whole packs, and what that costs: three figures that are never mixed.
//!
//! | figure | says |
//! |---|---|
//! | *used* | what lies in the cards ([`crate::plan::Costs`]) |
//! | *bought* | whole packs for this batch, after what is on the shelf |
//! | *next batch* | whole packs for the same batch again, after what this one leaves over |
//!
//! Left out on purpose: what a price should be ([`crate::money`]) and where things lie (the shelf is told).

mod packs;
mod shares;

use std::collections::BTreeMap;

use measure::Length;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

pub use packs::{Colour, PackOnSale, Swap, cheapest, swap};
pub use shares::{Alike, CardShares, Together, card_shares};

use crate::Fact;
use crate::model::{Choice, Decided, Material, Price, Project, Supply};
use crate::plan::{PartKind, Plan, StockCut};

/// What a need is of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum NeedOf {
    /// Sheets of patterned paper, by index of the pack.
    Paper(usize),
    /// Sheets of cardstock, by index and by index of the sheet's size.
    Cardstock(usize, usize),
    /// Ribbon, by index.
    Ribbon(usize),
    /// Tape.
    Tape,
    /// Foam squares.
    Foam,
    /// Envelopes.
    Envelopes,
    /// Ink: impressions.
    InkPad,
    /// Stamps: impressions.
    Stamps,
}

/// In what an amount is counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Counted {
    /// Sheets.
    Sheets,
    /// Pieces.
    Pieces,
    /// Ticks of length.
    Ticks,
    /// Uses of a tool or an ink pad: half of it can be used up.
    Uses,
}

/// One pack of something on sale.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OnSale {
    /// What it holds, in the need's own measure.
    pub holds: u64,
    /// Its price, if told.
    pub price: Option<Price>,
}

/// One thing the batch needs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Need {
    /// What.
    pub of: NeedOf,
    /// The maker's own name of it.
    pub name: String,
    /// In what it is counted.
    pub counted: Counted,
    /// How much.
    pub amount: u64,
    /// The rule by which it was counted: a code (`need-rule-<code>` in the message file) and its facts.
    pub rule: (&'static str, Vec<(&'static str, Fact)>),
    /// The packs it is sold in; empty where the maker told of none.
    pub on_sale: Vec<OnSale>,
}

/// What is done about a need.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Purchase {
    /// The need.
    pub need: Need,
    /// What of it is on the shelf and free, in its own measure.
    pub there: u64,
    /// How many of each pack on sale to buy; `None` where no pack is told of.
    pub packs: Option<Vec<u64>>,
    /// What those cost; `None`: a price is missing.
    pub cost: Option<Decimal>,
    /// What is left over afterwards, with what was there.
    pub left: u64,
    /// How many of each pack the same batch takes again after that.
    pub next_packs: Option<Vec<u64>>,
    /// What those cost.
    pub next_cost: Option<Decimal>,
    /// The currency of its prices.
    pub currency: String,
}

/// A sum of money, as far as it is known.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Sum {
    /// The sum; `None` where no price is known, or prices are in several currencies.
    pub amount: Option<Decimal>,
    /// Names of what has no price: with one of them the sum reads “at least”.
    pub missing: Vec<String>,
    /// The currencies there are; more than one cannot be added up.
    pub currencies: Vec<String>,
}

/// Everything to buy.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shopping {
    /// One entry a need.
    pub purchases: Vec<Purchase>,
    /// What this batch costs at the shop.
    pub bought: Sum,
    /// What the same batch costs again.
    pub next: Sum,
}

/// Everything the plan needs, with the rule beside it.
pub fn needs(plan: &Plan) -> Vec<Need> {
    let project = &plan.project;
    let counts = &plan.counts;
    let mut needs = Vec::new();
    for (index, pack) in project.packs.iter().enumerate() {
        let own = plan.layouts.iter().filter(|layout| layout.pack == index).flat_map(|layout| &layout.sheets);
        let sheets: u64 = own.map(|used| u64::from(used.sheets)).sum();
        if sheets > 0 {
            let on_sale = vec![OnSale { holds: u64::from(pack.sheets()), price: pack.price.clone() }];
            let rule = ("paper", vec![("cards", Fact::Count(u64::from(counts.cards)))]);
            let (of, counted) = (NeedOf::Paper(index), Counted::Sheets);
            needs.push(Need { of, name: pack.name.clone(), counted, amount: sheets, rule, on_sale });
        }
    }
    needs.extend(stock_needs(plan));
    for (index, (ribbon, (length, _))) in project.ribbons.iter().zip(&counts.ribbon).enumerate() {
        if let Some(amount) = ticks(*length) {
            let on_sale = long(project, &ribbon.name, ribbon.spool, ribbon.price.as_ref());
            let rule = ("ribbon", ribbon_facts(plan, index));
            let (of, counted) = (NeedOf::Ribbon(index), Counted::Ticks);
            needs.push(Need { of, name: ribbon.name.clone(), counted, amount, rule, on_sale });
        }
    }
    let supplies = &project.supplies;
    if let (Some(tape), Some((length, _))) = (&supplies.tape, counts.tape)
        && let Some(amount) = ticks(length)
    {
        let on_sale = long(project, &tape.name, tape.roll, tape.price.as_ref());
        let rule = ("tape", vec![("from", Fact::Length(tape.two_lines_from))]);
        needs.push(Need { of: NeedOf::Tape, name: tape.name.clone(), counted: Counted::Ticks, amount, rule, on_sale });
    }
    let envelopes = counts.envelopes.map_or(0, |(count, _)| count);
    let small: [(NeedOf, &Option<Supply>, u32, &'static str, Counted); 4] = [
        (NeedOf::Foam, &supplies.foam, counts.foam_squares, "foam", Counted::Pieces),
        (NeedOf::Envelopes, &supplies.envelopes, envelopes, "envelopes", Counted::Pieces),
        (NeedOf::InkPad, &supplies.ink_pad, counts.impressions, "ink-pad", Counted::Uses),
        (NeedOf::Stamps, &supplies.stamps, counts.impressions, "stamps", Counted::Uses),
    ];
    for (of, supply, count, rule, counted) in small {
        let Some(supply) = supply.as_ref().filter(|_| count > 0) else { continue };
        let on_sale = by_piece(project, &supply.name, supply.lasts, supply.price.as_ref());
        let rule = (rule, vec![("count", Fact::Count(u64::from(count)))]);
        needs.push(Need { of, name: supply.name.clone(), counted, amount: u64::from(count), rule, on_sale });
    }
    needs
}

/// What some of the cards take of a need when they are put together, in its own measure: nothing of paper and cardstock,
/// which are used when they are cut.
pub fn used_by(plan: &Plan, of: NeedOf, which: impl Fn(&crate::plan::Card) -> bool) -> u64 {
    let project = &plan.project;
    let each = |card: &crate::plan::Card| -> u64 {
        let recipe = &project.recipes[card.recipe];
        let strips = || card.parts.iter().filter(|part| matches!(part.kind, PartKind::Strip(..)));
        match of {
            NeedOf::Paper(_) | NeedOf::Cardstock(..) => 0,
            NeedOf::Envelopes => 1,
            NeedOf::InkPad | NeedOf::Stamps => {
                let stamped = card.parts.iter().filter(|part| recipe.layers[part.layer].greeting().is_some());
                stamped.count() as u64
            }
            NeedOf::Foam => strips()
                .map(|part| match recipe.layers[part.layer].material {
                    Material::Strip { foam_squares, .. } => u64::from(foam_squares),
                    _ => 0,
                })
                .sum(),
            NeedOf::Ribbon(index) => card
                .parts
                .iter()
                .filter(|part| matches!(part.kind, PartKind::Ribbon(ribbon, _) if ribbon == index))
                .filter_map(|part| match recipe.layers[part.layer].material {
                    Material::Ribbon { length, .. } => ticks(length),
                    _ => None,
                })
                .sum(),
            NeedOf::Tape => project
                .supplies
                .tape
                .as_ref()
                .and_then(|tape| ticks(crate::plan::tape_on(project, tape, card)))
                .unwrap_or(0),
        }
    };
    plan.cards.iter().filter(|card| which(card)).map(each).sum()
}

/// Which cards get which colour, so that a swap comes about: a choice for each piece.
///
/// # Shape
/// Cards of batches that are shared out over kits come last, so that kits stay alike as long as they can; of the others the
/// last ones change. Empty if the plan has no such pieces any more.
pub fn recolor(plan: &Plan, swap: &ColourSwap) -> Vec<Choice> {
    let colours = || swap.cardstocks.iter().zip(swap.pieces_now.iter().zip(&swap.swap.pieces));
    let mut wanted: Vec<usize> = Vec::new();
    for (cardstock, (now, then)) in colours() {
        wanted.extend((*now..*then).map(|_| *cardstock));
    }
    let mut wanted = wanted.into_iter();
    let mut cards: Vec<&crate::plan::Card> = plan.cards.iter().collect();
    let kits = |card: &crate::plan::Card| plan.batches.get(card.batch).is_some_and(|batch| batch.kits.is_some());
    cards.sort_by_key(|card| (kits(card), std::cmp::Reverse(card.number)));
    let mut choices = Vec::new();
    for (cardstock, (now, then)) in colours() {
        let of_colour = |card: &&crate::plan::Card| {
            let part = card.parts.iter().find(|part| part.kind == PartKind::Cardstock(*cardstock))?;
            Some((card.number, plan.project.layer(card.recipe, part.layer)?.name.clone()))
        };
        let given = usize::try_from(now.saturating_sub(*then)).unwrap_or(0);
        for (card, layer) in cards.iter().filter_map(of_colour).take(given) {
            let Some(fresh) = wanted.next() else { break };
            choices.push(Choice { card, layer, decided: Decided::CutFrom(fresh) });
        }
    }
    choices.sort();
    choices
}

fn stock_needs(plan: &Plan) -> Vec<Need> {
    let mut needs = Vec::new();
    for stock in &plan.stocks {
        let Some(cardstock) = plan.project.cardstocks.get(stock.cardstock) else { continue };
        let mut by_size: BTreeMap<usize, u64> = BTreeMap::new();
        for sheet in &stock.sheets {
            *by_size.entry(sheet.size).or_default() += u64::from(sheet.times);
        }
        let count = |of: &dyn Fn(&StockCut) -> bool| {
            let own = stock.cuts.iter().filter(|cut| of(cut)).map(|cut| u64::from(cut.count));
            Fact::Count(own.sum())
        };
        let strip = |cut: &StockCut| {
            let layer = cut.layer.and_then(|layer| plan.project.layer(cut.recipe, layer));
            layer.is_some_and(|layer| matches!(layer.material, Material::Strip { .. }))
        };
        let facts = vec![
            ("pieces", count(&|_| true)),
            ("bases", count(&|cut| cut.layer.is_none() && !cut.inside)),
            ("inside", count(&|cut| cut.inside)),
            ("strips", count(&strip)),
            ("mats", count(&|cut| cut.layer.is_some() && !strip(cut))),
        ];
        for (size, amount) in by_size {
            let Some(sheet) = cardstock.sheets.get(size) else { continue };
            let on_sale = by_piece(&plan.project, &cardstock.name, sheet.pack_of, sheet.price.as_ref());
            let rule = ("cardstock", facts.clone());
            let (of, counted) = (NeedOf::Cardstock(stock.cardstock, size), Counted::Sheets);
            needs.push(Need { of, name: cardstock.name.clone(), counted, amount, rule, on_sale });
        }
    }
    needs
}

fn ticks(length: Length) -> Option<u64> {
    u64::try_from(length.ticks()).ok().filter(|ticks| *ticks > 0)
}

/// Cards with that ribbon, without and with a bow.
fn ribbon_facts(plan: &Plan, index: usize) -> Vec<(&'static str, Fact)> {
    let tied = |bow: bool| {
        let with = |card: &&crate::plan::Card| {
            let laid = |part: &&crate::plan::CardPart| part.kind == PartKind::Ribbon(index, bow);
            card.parts.iter().any(|part| laid(&part))
        };
        plan.cards.iter().filter(with).count() as u64
    };
    vec![("wraps", Fact::Count(tied(false))), ("bows", Fact::Count(tied(true)))]
}

/// The project's own roll and other rolls on offer.
fn long(project: &Project, name: &str, own: Option<Length>, price: Option<&Price>) -> Vec<OnSale> {
    let own = own.and_then(ticks).map(|holds| OnSale { holds, price: price.cloned() });
    let offers = project.trade.offers.iter().filter(|offer| offer.of == name);
    let others = offers.filter_map(|offer| Some(OnSale { holds: ticks(offer.length?)?, price: offer.price.clone() }));
    own.into_iter().chain(others).collect()
}

/// The project's own pack and other packs on offer.
fn by_piece(project: &Project, name: &str, own: u32, price: Option<&Price>) -> Vec<OnSale> {
    let own = OnSale { holds: u64::from(own.max(1)), price: price.cloned() };
    let offers = project.trade.offers.iter().filter(|offer| offer.of == name);
    let others =
        offers.filter_map(|offer| Some(OnSale { holds: u64::from(offer.pack_of?.max(1)), price: offer.price.clone() }));
    std::iter::once(own).chain(others).collect()
}

/// What the batch uses, as a sum.
pub fn used(plan: &Plan) -> Sum {
    let mut sum = Sum { amount: plan.costs.total_used, ..Sum::default() };
    for line in &plan.costs.lines {
        match line.used {
            None => sum.missing.push(line.name.clone()),
            Some(_) if sum.currencies.contains(&line.currency) => {}
            Some(_) => sum.currencies.push(line.currency.clone()),
        }
    }
    sum
}

/// What to buy, after what is on the shelf.
///
/// # Shape
/// `there` says what is free on the shelf of each need, in its own measure; a need that is not named has nothing there.
pub fn shopping(plan: &Plan, there: &BTreeMap<NeedOf, u64>) -> Shopping {
    let purchase = |need: Need| {
        let there = there.get(&need.of).copied().unwrap_or(0);
        purchase(need, there)
    };
    let purchases: Vec<Purchase> = needs(plan).into_iter().map(purchase).collect();
    let bought = sum(&purchases, |purchase| purchase.packs.as_ref(), |purchase| purchase.cost);
    let next = sum(&purchases, |purchase| purchase.next_packs.as_ref(), |purchase| purchase.next_cost);
    Shopping { purchases, bought, next }
}

fn purchase(need: Need, there: u64) -> Purchase {
    let currency = need.on_sale.iter().find_map(|pack| pack.price.as_ref()).map(|price| price.currency.clone());
    let buy = |there: u64| packs_for(&need, need.amount.saturating_sub(there));
    let packs = buy(there);
    let left = left(&need, there, packs.as_deref());
    let next_packs = buy(left);
    let cost = |packs: &Option<Vec<u64>>| packs.as_ref().and_then(|packs| cost(&need, packs));
    Purchase {
        there,
        cost: cost(&packs),
        next_cost: cost(&next_packs),
        left,
        packs,
        next_packs,
        currency: currency.unwrap_or_default(),
        need,
    }
}

/// What is there and bought, less what is used.
fn left(need: &Need, there: u64, packs: Option<&[u64]>) -> u64 {
    let bought: u64 = match packs {
        Some(packs) => packs.iter().zip(&need.on_sale).map(|(packs, sold)| packs.saturating_mul(sold.holds)).sum(),
        None => need.amount.saturating_sub(there),
    };
    there.saturating_add(bought).saturating_sub(need.amount)
}

/// The cheapest whole packs. Where a price is missing or in another currency, only packs with one are bought; where
/// none has one, the fewest packs of the first kind.
fn packs_for(need: &Need, amount: u64) -> Option<Vec<u64>> {
    let first = need.on_sale.first()?;
    let currency = need.on_sale.iter().find_map(|pack| pack.price.as_ref()).map(|price| price.currency.clone());
    let ten_thousandths = |price: &Price| {
        let same = currency.as_ref() == Some(&price.currency);
        (price.amount * Decimal::from(10_000)).to_u64().filter(|_| same)
    };
    let priced: Vec<PackOnSale> = (need.on_sale.iter())
        .map(|pack| match pack.price.as_ref().and_then(ten_thousandths) {
            Some(price) => PackOnSale { holds: pack.holds, price },
            None => PackOnSale { holds: 0, price: 0 },
        })
        .collect();
    if let Some(found) = cheapest(amount, &priced).filter(|_| priced.iter().any(|pack| pack.holds > 0)) {
        return Some(found);
    }
    let mut packs = vec![0; need.on_sale.len()];
    packs[0] = amount.div_ceil(first.holds.max(1));
    Some(packs)
}

fn cost(need: &Need, packs: &[u64]) -> Option<Decimal> {
    let each = packs.iter().zip(&need.on_sale).filter(|(packs, _)| **packs > 0);
    let cost = |(packs, sold): (&u64, &OnSale)| sold.price.as_ref()?.amount.checked_mul(Decimal::from(*packs));
    each.map(cost).try_fold(Decimal::ZERO, |sum, cost| sum.checked_add(cost?))
}

fn sum<'p>(
    purchases: &'p [Purchase],
    packs: impl Fn(&'p Purchase) -> Option<&'p Vec<u64>>,
    cost: impl Fn(&Purchase) -> Option<Decimal>,
) -> Sum {
    let mut total = Sum::default();
    let mut amounts = Vec::new();
    for purchase in purchases {
        let nothing = packs(purchase).is_some_and(|packs| packs.iter().all(|packs| *packs == 0));
        match cost(purchase) {
            _ if nothing => {}
            Some(cost) => {
                amounts.push(cost);
                if !total.currencies.contains(&purchase.currency) {
                    total.currencies.push(purchase.currency.clone());
                }
            }
            None => total.missing.push(purchase.need.name.clone()),
        }
    }
    if total.currencies.len() <= 1 && (total.missing.is_empty() || !amounts.is_empty()) {
        total.amount = amounts.into_iter().try_fold(Decimal::ZERO, Decimal::checked_add);
    }
    total
}

/// A swap of colours that saves whole packs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ColourSwap {
    /// The piece that is cut of these cardstocks: its name.
    pub piece: String,
    /// The cardstocks, by index.
    pub cardstocks: Vec<usize>,
    /// Packs of each now.
    pub now: Vec<u64>,
    /// Pieces of each now.
    pub pieces_now: Vec<u64>,
    /// What does.
    pub swap: Swap,
    /// What is saved.
    pub saved: Decimal,
    /// The currency.
    pub currency: String,
}

/// The swap of mats between cardstocks that saves most, where only such pieces are cut from them.
///
/// # Shape
/// Cardstocks are looked at together if each gives one and the same piece and nothing else, from one size of sheet, with
/// prices in one currency. `there` as in [`shopping`].
pub fn colour_swap(plan: &Plan, there: &BTreeMap<NeedOf, u64>) -> Option<ColourSwap> {
    let mut groups: BTreeMap<(Length, Length, String), Vec<(usize, Colour)>> = BTreeMap::new();
    for stock in &plan.stocks {
        let [cut] = stock.cuts.as_slice() else { continue };
        let (Some(layer), Some(cardstock)) = (cut.layer, plan.project.cardstocks.get(stock.cardstock)) else {
            continue;
        };
        let mat = matches!(
            plan.project.layer(cut.recipe, layer).map(|layer| &layer.material),
            Some(Material::Mat { .. } | Material::Plain { .. })
        );
        let [sheet] = cardstock.sheets.as_slice() else { continue };
        let each = stock.most_each.first().and_then(|each| each.first()).copied().unwrap_or(0);
        let Some(price) = sheet.price.as_ref().filter(|_| mat && each > 0) else { continue };
        let Some(worth) = (price.amount * Decimal::from(10_000)).to_u64() else { continue };
        let here = there.get(&NeedOf::Cardstock(stock.cardstock, 0)).copied().unwrap_or(0);
        let colour = Colour {
            pieces: u64::from(cut.count),
            pack_gives: u64::from(each) * u64::from(sheet.pack_of),
            price: worth,
            there: here * u64::from(each),
        };
        let size = cut.size.short_first();
        groups.entry((size.width, size.height, price.currency.clone())).or_default().push((stock.cardstock, colour));
    }
    let best = groups.into_iter().filter_map(|((.., currency), group)| {
        let (cardstocks, colours): (Vec<usize>, Vec<Colour>) = group.into_iter().unzip();
        let swap = swap(&colours)?;
        let now = |colour: &Colour| colour.pieces.saturating_sub(colour.there).div_ceil(colour.pack_gives.max(1));
        let now: Vec<u64> = colours.iter().map(now).collect();
        let before: u64 = now.iter().zip(&colours).map(|(packs, colour)| packs * colour.price).sum();
        let saved = Decimal::from(before - swap.cost) / Decimal::from(10_000);
        let stock = plan.stocks.iter().find(|stock| stock.cardstock == cardstocks[0])?;
        let cut = &stock.cuts[0];
        let piece = plan.project.layer(cut.recipe, cut.layer?)?.name.clone();
        let pieces_now = colours.iter().map(|colour| colour.pieces).collect();
        Some(ColourSwap { piece, cardstocks, now, pieces_now, swap, saved: saved.normalize(), currency })
    });
    best.max_by_key(|swap| swap.saved)
}
