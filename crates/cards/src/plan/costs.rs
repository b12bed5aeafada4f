//! What the batch uses up, from the maker's own prices.
//!
//! *Used* is what lies in the cards. A sheet of paper is used whole. A sheet of cardstock that gives fewer pieces
//! than it could is used in part: the rest goes back on the shelf. What is bought in whole packs is
//! another figure and never mixed in.

use std::collections::BTreeMap;

use measure::Size;
use rust_decimal::Decimal;

use super::answer::{Card, CostLine, CostOf, Costs, Counts, Layout, PartKind, Plan, StockPlan, StockSheetPlan};
use super::counts::tape_on;
use crate::finding::{Finding, Severity, Subject};
use crate::model::{Material, Price, Project, Supply};

/// A part of a price: the price, how much is used, how much the price buys.
type Share<'p> = (Option<&'p Price>, Decimal, Decimal);

/// The costs, as far as prices were given; a line without a price makes the total read “at least”.
pub(super) fn costs(
    project: &Project,
    layouts: &[Layout],
    stocks: &[StockPlan],
    counts: &Counts,
    findings: &mut Vec<Finding>,
) -> Costs {
    let mut lines = Vec::new();
    for (index, pack) in project.packs.iter().enumerate() {
        let used = layouts.iter().filter(|layout| layout.pack == index).flat_map(|layout| &layout.sheets);
        let used: u64 = used.map(|used| u64::from(used.sheets)).sum();
        if used > 0 {
            let share = (pack.price.as_ref(), Decimal::from(used), Decimal::from(pack.sheets()));
            lines.push(line(CostOf::Paper(index), &pack.name, &[share]));
        }
    }
    for stock in stocks {
        let cardstock = &project.cardstocks[stock.cardstock];
        let mut shares = Vec::new();
        for (index, size) in cardstock.sheets.iter().enumerate() {
            let used = sheets_used(stock, index);
            if used > Decimal::ZERO {
                shares.push((size.price.as_ref(), used, Decimal::from(size.pack_of.max(1))));
            }
        }
        if !shares.is_empty() {
            lines.push(line(CostOf::Cardstock(stock.cardstock), &cardstock.name, &shares));
        }
    }
    for (index, (ribbon, (length, _))) in project.ribbons.iter().zip(&counts.ribbon).enumerate() {
        if length.ticks() > 0 {
            let spool = ribbon.spool.map_or(Decimal::ZERO, |spool| Decimal::from(spool.ticks()));
            let share = (ribbon.price.as_ref(), Decimal::from(length.ticks()), spool);
            lines.push(line(CostOf::Ribbon(index), &ribbon.name, &[share]));
        }
    }
    if let (Some(tape), Some((length, _))) = (&project.supplies.tape, counts.tape)
        && length.ticks() > 0
    {
        let roll = tape.roll.map_or(Decimal::ZERO, |roll| Decimal::from(roll.ticks()));
        let share = (tape.price.as_ref(), Decimal::from(length.ticks()), roll);
        lines.push(line(CostOf::Tape, &tape.name, &[share]));
    }
    let mut supply = |of: CostOf, supply: Option<&Supply>, count: u32| {
        if let Some(supply) = supply.filter(|_| count > 0) {
            let share = (supply.price.as_ref(), Decimal::from(count), Decimal::from(supply.lasts.max(1)));
            lines.push(line(of, &supply.name, &[share]));
        }
    };
    let supplies = &project.supplies;
    supply(CostOf::Foam, supplies.foam.as_ref(), counts.foam_squares);
    supply(CostOf::Envelopes, supplies.envelopes.as_ref(), counts.envelopes.map_or(0, |(count, _)| count));
    supply(CostOf::InkPad, supplies.ink_pad.as_ref(), counts.impressions);
    supply(CostOf::Stamps, supplies.stamps.as_ref(), counts.impressions);
    for line in lines.iter().filter(|line| line.used.is_none()) {
        findings.push(Finding::new(Severity::Note, Subject::Project, "price-missing").with("name", line.name.as_str()));
    }
    if !one_currency(&lines) {
        findings.push(Finding::new(Severity::Note, Subject::Project, "currencies-differ"));
    }
    total(lines)
}

/// Sheets of one size that are used up: one with 4 mats, where a sheet gives 5, counts for 4/5.
fn sheets_used(stock: &StockPlan, size: usize) -> Decimal {
    let most = stock.most_each.get(size);
    let part = |sheet: &StockSheetPlan| {
        let mut given = vec![0_u32; stock.cuts.len()];
        for piece in &sheet.pieces {
            given[piece.cut] += 1;
        }
        let each = given.iter().enumerate().filter(|(_, count)| **count > 0).map(|(cut, count)| {
            let most = most.and_then(|most| most.get(cut)).copied().unwrap_or(0).max(*count);
            Decimal::from(*count) / Decimal::from(most)
        });
        each.fold(Decimal::ZERO, Decimal::saturating_add).min(Decimal::ONE)
    };
    let sheets = stock.sheets.iter().filter(|sheet| sheet.size == size);
    let used = sheets.map(|sheet| Decimal::from(sheet.times).saturating_mul(part(sheet)));
    used.fold(Decimal::ZERO, Decimal::saturating_add)
}

/// One line: the sum of price × used ÷ bought, unknown as soon as one of them is.
fn line(of: CostOf, name: &str, shares: &[Share<'_>]) -> CostLine {
    let first = shares.iter().find_map(|(price, ..)| *price);
    let same = |price: &Price| first.is_some_and(|first| first.currency == price.currency);
    let share = |(price, used, bought): &Share<'_>| {
        let price = price.filter(|price| same(price))?;
        // The product first: a price that divides evenly stays exact.
        let product = price.amount.checked_mul(*used);
        product.and_then(|product| product.checked_div(*bought)).map(|used| used.normalize())
    };
    let used = shares.iter().map(share).try_fold(Decimal::ZERO, |sum, share| sum.checked_add(share?));
    CostLine {
        of,
        name: name.to_owned(),
        used,
        currency: first.map(|price| price.currency.clone()).unwrap_or_default(),
        date: first.and_then(|price| price.date.clone()),
    }
}

/// True if all lines with a price are in one currency.
fn one_currency(lines: &[CostLine]) -> bool {
    let mut known = lines.iter().filter(|line| line.used.is_some()).map(|line| &line.currency);
    known.next().is_none_or(|first| known.all(|other| other == first))
}

/// The lines with their total, if they share one currency.
fn total(lines: Vec<CostLine>) -> Costs {
    let at_least = lines.iter().any(|line| line.used.is_none());
    let mut known = lines.iter().filter_map(|line| line.used).peekable();
    let any = known.peek().is_some();
    let sum = known.try_fold(Decimal::ZERO, Decimal::checked_add);
    let total_used = if any && one_currency(&lines) { sum } else { None };
    Costs { lines, total_used, at_least }
}

/// Costs of one card: what the batch uses ÷ its cards.
#[must_use]
pub fn per_card(costs: &Costs, cards: &[Card]) -> Option<Decimal> {
    costs.total_used?.checked_div(Decimal::from(cards.len()))
}

/// What some of the cards use of it all, line by line.
///
/// The sheets of a layout are shared out over the pieces that cards are made of, by area, and so are the sheets of a
/// cardstock; ribbon and tape by length, the rest by the piece. The parts of two groups of cards add up to the whole.
#[must_use]
pub fn used_for(plan: &Plan, of: impl Fn(&Card) -> bool) -> Costs {
    let whole = weights(plan, |_| true);
    let some = weights(plan, of);
    let part = |line: &CostLine| {
        let weight = |weights: &Weights| weights.get(&line.of).copied().unwrap_or_default();
        let (some, whole) = (weight(&some), weight(&whole));
        // All of it without a division, so that nothing is lost.
        let share = if some == whole { Some(Decimal::ONE) } else { some.checked_div(whole) };
        CostLine { used: line.used.zip(share).and_then(|(used, share)| used.checked_mul(share)), ..line.clone() }
    };
    let touched = plan.costs.lines.iter().filter(|line| some.get(&line.of).is_some_and(|weight| !weight.is_zero()));
    total(touched.map(part).collect())
}

/// How much of each line some of the cards take, in a measure of the line's own.
fn weights(plan: &Plan, of: impl Fn(&Card) -> bool) -> Weights {
    let mut weights = Weights::new();
    for (card, own) in plan.cards.iter().zip(weights_each(plan)) {
        if of(card) {
            add_up(&mut weights, own);
        }
    }
    weights
}

/// How much is taken of each line, in a measure of the line's own.
pub(crate) type Weights = BTreeMap<CostOf, Decimal>;

/// Adds one to the other.
pub(crate) fn add_up(weights: &mut Weights, more: Weights) {
    for (of, more) in more {
        let weight = weights.entry(of).or_default();
        *weight = weight.saturating_add(more);
    }
}

/// How much of each line every card takes, in the order of the cards.
pub(crate) fn weights_each(plan: &Plan) -> impl Iterator<Item = Weights> {
    let mut cut_up = vec![Decimal::ZERO; plan.layouts.len()];
    for part in plan.cards.iter().flat_map(|card| &card.parts) {
        if let PartKind::Patterned { layout, .. } = part.kind {
            cut_up[layout] = cut_up[layout].saturating_add(area(part.rect.size));
        }
    }
    plan.cards.iter().map(move |card| weights_of(plan, &cut_up, card))
}

/// How much of each line a card takes; `cut_up` is the area of the pieces that each layout gives to cards.
fn weights_of(plan: &Plan, cut_up: &[Decimal], card: &Card) -> Weights {
    let project = &plan.project;
    let sheets = |layout: &Layout| layout.sheets.iter().map(|used| u64::from(used.sheets)).sum::<u64>();
    let mut weights = Weights::new();
    let mut add = |of: CostOf, more: Decimal| {
        let weight = weights.entry(of).or_default();
        *weight = weight.saturating_add(more);
    };
    let recipe = &project.recipes[card.recipe];
    add(CostOf::Cardstock(recipe.base), area(recipe.base_size().0));
    if let Some((size, cardstock)) = recipe.inside {
        add(CostOf::Cardstock(cardstock), area(size));
    }
    for part in &card.parts {
        if recipe.layers[part.layer].greeting().is_some() {
            add(CostOf::InkPad, Decimal::ONE);
            add(CostOf::Stamps, Decimal::ONE);
        }
        match (&part.kind, &recipe.layers[part.layer].material) {
            (PartKind::Patterned { layout, .. }, _) => {
                let sheets = Decimal::from(sheets(&plan.layouts[*layout]));
                let share = area(part.rect.size).saturating_mul(sheets).checked_div(cut_up[*layout]);
                add(CostOf::Paper(plan.layouts[*layout].pack), share.unwrap_or_default());
            }
            (PartKind::Cardstock(cardstock), _) => {
                add(CostOf::Cardstock(*cardstock), area(part.rect.size));
            }
            (PartKind::Strip(cardstock, _), Material::Strip { foam_squares, .. }) => {
                add(CostOf::Cardstock(*cardstock), area(part.rect.size));
                add(CostOf::Foam, Decimal::from(*foam_squares));
            }
            (PartKind::Ribbon(ribbon, _), Material::Ribbon { length, .. }) => {
                add(CostOf::Ribbon(*ribbon), Decimal::from(length.ticks()));
            }
            _ => {}
        }
    }
    if let Some(tape) = &project.supplies.tape {
        add(CostOf::Tape, Decimal::from(tape_on(project, tape, card).ticks()));
    }
    add(CostOf::Envelopes, Decimal::ONE);
    weights
}

/// An area in square millimetres: a weight, never a truth.
fn area(size: Size) -> Decimal {
    let side = |length: measure::Length| Decimal::from(length.ticks()) / Decimal::from(measure::Length::MM.ticks());
    side(size.width).saturating_mul(side(size.height))
}
