//! Sums, working time and prices in words.

use cards::buying::{Alike, CardShares, Sum, Together};
use cards::plan::Plan;
use rust_decimal::Decimal;
use words::say;

use super::{decimal, money};

/// A sum that may miss something.
pub(crate) fn sum(sum: &Sum) -> String {
    let currency = sum.currencies.first().map_or("", String::as_str);
    match sum.amount {
        _ if sum.currencies.len() > 1 => say("sum-mixed", &[("currencies", sum.currencies.join(", ").into())]),
        None => say("sum-unknown", &[]),
        Some(amount) if !sum.missing.is_empty() => say("sum-at-least", &[("amount", money(amount, currency).into())]),
        Some(amount) => money(amount, currency),
    }
}

/// The same, for each of so many cards.
pub(crate) fn sum_each(whole: &Sum, cards: usize) -> String {
    let amount = whole.amount.and_then(|amount| amount.checked_div(Decimal::from(cards)));
    sum(&Sum { amount, ..whole.clone() })
}

/// What some cards have of the three figures, in words.
#[derive(Debug, Clone)]
pub(crate) struct Figured {
    /// Which cards.
    pub(crate) cards: String,
    /// Used, bought and next batch: together, and one of them.
    pub(crate) figures: [(String, String); 3],
}

/// The three figures of every batch and recipe, then of all cards together.
pub(crate) fn by_kind(plan: &Plan, shares: &CardShares, sums: [&Sum; 3]) -> Vec<Figured> {
    let mut kinds: Vec<(usize, Option<usize>)> = Vec::new();
    for batch in 0..plan.batches.len() {
        let mut recipes: Vec<usize> =
            plan.cards.iter().filter(|card| card.batch == batch).map(|card| card.recipe).collect();
        recipes.sort_unstable();
        recipes.dedup();
        kinds.extend(recipes.iter().map(|&recipe| (batch, Some(recipe))));
        // A batch of several recipes has a line of its own.
        if recipes.len() > 1 && plan.batches.len() > 1 {
            kinds.push((batch, None));
        }
    }
    let told = |together: Together, cards: String| {
        let one = |(amount, sum): (Option<Decimal>, &Sum)| {
            let part = |amount: Option<Decimal>| self::sum(&Sum { amount, ..sum.clone() });
            let each = amount.and_then(|amount| amount.checked_div(Decimal::from(together.cards)));
            (part(amount), part(each))
        };
        let [used, bought, next] = together.figures;
        Figured { cards, figures: [(used, sums[0]), (bought, sums[1]), (next, sums[2])].map(one) }
    };
    let of_kind = |&(batch, recipe): &(usize, Option<usize>)| {
        let together = shares.together(plan, |card| card.batch == batch && recipe.is_none_or(|of| of == card.recipe));
        told(together, super::kind_of(plan, batch, recipe, together.cards))
    };
    let mut rows: Vec<Figured> = kinds.iter().map(of_kind).collect();
    let all = shares.together(plan, |_| true);
    rows.push(told(all, say("supplies-all-cards", &[("cards", all.cards.into())])));
    rows
}

/// Every card's share of the three figures: `1–16`, then an amount each.
pub(crate) fn each_card(plan: &Plan, shares: &CardShares, sums: [&Sum; 3]) -> Vec<(String, [String; 3])> {
    let row = |alike: Alike| {
        let cards = if alike.first == alike.last {
            alike.first.to_string()
        } else {
            format!("{}–{}", alike.first, alike.last)
        };
        let [used, bought, next] = alike.each;
        let told = |(amount, sum): (Option<Decimal>, &Sum)| self::sum(&Sum { amount, ..sum.clone() });
        (cards, [(used, sums[0]), (bought, sums[1]), (next, sums[2])].map(told))
    };
    shares.alike(plan).into_iter().map(row).collect()
}

/// What a kind of work is called.
pub(crate) fn work(key: &str) -> String {
    match key {
        "piece" => say("work-piece", &[]),
        "base" => say("work-base", &[]),
        "mat" => say("work-mat", &[]),
        "strip" => say("work-strip", &[]),
        "ribbon" => say("work-ribbon", &[]),
        "bow" => say("work-bow", &[]),
        "card" => say("work-card", &[]),
        "layered" => say("work-layered", &[]),
        "label" => say("work-label", &[]),
        _ => say("work-kit", &[]),
    }
}

/// What a price of a batch's cards leaves.
#[derive(Debug, Clone)]
pub(crate) struct Priced {
    /// The batch.
    pub(crate) batch: String,
    /// Material of one card.
    pub(crate) material: String,
    /// Minutes of one card.
    pub(crate) minutes: String,
    /// Price asked.
    pub(crate) asked: String,
    /// What it leaves.
    pub(crate) leaves: String,
    /// For an hour.
    pub(crate) wage: String,
    /// The price for the wish.
    pub(crate) wished: String,
}

/// Material, time and price of every batch.
pub(crate) fn priced(plan: &Plan) -> Vec<Priced> {
    let selling = &plan.project.trade.selling;
    let of_batch = |(index, batch): (usize, &cards::model::Batch)| {
        let cards = plan.cards.iter().filter(|card| card.batch == index).count();
        let each = |total: Decimal| total.checked_div(Decimal::from(cards));
        let used = cards::plan::used_for(plan, |card| card.batch == index);
        let currency = used.lines.iter().find(|line| line.used.is_some()).map(|line| line.currency.clone());
        let currency = currency.unwrap_or_default();
        let material = used.total_used.and_then(each);
        let minutes = each(cards::work::minutes(&cards::work::work(plan, index)));
        let same = |price: &&cards::model::Price| price.currency == currency;
        // Cards of kits are put together and paid for in the class: the Class page has their money.
        let sold = batch.kits.is_none();
        let asked = selling.price.as_ref().filter(same).filter(|_| sold);
        let unknown = || if sold { say("sum-unknown", &[]) } else { "–".to_owned() };
        let left = (asked.zip(material).zip(minutes))
            .and_then(|((price, material), minutes)| cards::money::leaves(price.amount, material, minutes, selling));
        let wished =
            material.zip(minutes).and_then(|(material, minutes)| cards::money::wished(material, minutes, selling));
        let at_least =
            |text: String| if used.at_least { say("sum-at-least", &[("amount", text.into())]) } else { text };
        Priced {
            batch: batch.called(&plan.project).to_owned(),
            material: material.map_or_else(unknown, |amount| at_least(money(amount, &currency))),
            minutes: minutes.map_or_else(unknown, decimal),
            asked: asked.map_or_else(
                || if sold { say("supplies-no-price", &[]) } else { unknown() },
                |price| money(price.amount, &currency),
            ),
            leaves: left.map_or_else(unknown, |left| money(left.over, &currency)),
            wage: left.and_then(|left| left.wage).map_or_else(unknown, |wage| money(wage, &currency)),
            wished: match (wished, material) {
                _ if !sold => unknown(),
                (Some(price), _) => at_least(money(cards::money::up_to_coin(price, &currency), &currency)),
                (None, Some(_)) => say("supplies-nothing-stays", &[]),
                (None, None) => unknown(),
            },
        }
    };
    plan.batches.iter().enumerate().map(of_batch).collect()
}
