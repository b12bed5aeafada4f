//! What the batch uses up, from the maker's own prices.

use rust_decimal::Decimal;

use super::answer::{Card, CostLine, Costs, Counts, Layout, StockPlan};
use crate::finding::{Finding, Severity, Subject};
use crate::model::{Price, Project};

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
            lines.push(line(&pack.name, &[(pack.price.as_ref(), Decimal::from(used), Decimal::from(pack.sheets()))]));
        }
    }
    for stock in stocks {
        let cardstock = &project.cardstocks[stock.cardstock];
        let mut shares = Vec::new();
        for (index, size) in cardstock.sheets.iter().enumerate() {
            let used: u64 =
                stock.sheets.iter().filter(|sheet| sheet.size == index).map(|sheet| u64::from(sheet.times)).sum();
            if used > 0 {
                shares.push((size.price.as_ref(), Decimal::from(used), Decimal::from(size.pack_of.max(1))));
            }
        }
        if !shares.is_empty() {
            lines.push(line(&cardstock.name, &shares));
        }
    }
    for (ribbon, (length, _)) in project.ribbons.iter().zip(&counts.ribbon) {
        if length.ticks() > 0 {
            let spool = ribbon.spool.map_or(Decimal::ZERO, |spool| Decimal::from(spool.ticks()));
            lines.push(line(&ribbon.name, &[(ribbon.price.as_ref(), Decimal::from(length.ticks()), spool)]));
        }
    }
    for line in lines.iter().filter(|line| line.used.is_none()) {
        findings.push(Finding::new(Severity::Note, Subject::Project, "price-missing").with("name", line.name.as_str()));
    }
    total(lines, findings)
}

/// One line: the sum of price × used ÷ bought, unknown as soon as one of them is.
fn line(name: &str, shares: &[(Option<&Price>, Decimal, Decimal)]) -> CostLine {
    let first = shares.iter().find_map(|(price, ..)| *price);
    let same = |price: &Price| first.is_some_and(|first| first.currency == price.currency);
    let share = |(price, used, bought): &(Option<&Price>, Decimal, Decimal)| {
        let price = price.filter(|price| same(price))?;
        // The product first: a price that divides evenly stays exact.
        let product = price.amount.checked_mul(*used);
        product.and_then(|product| product.checked_div(*bought)).map(|used| used.normalize())
    };
    let used = shares.iter().map(share).try_fold(Decimal::ZERO, |sum, share| sum.checked_add(share?));
    CostLine {
        name: name.to_owned(),
        used,
        currency: first.map(|price| price.currency.clone()).unwrap_or_default(),
        date: first.and_then(|price| price.date.clone()),
    }
}

/// The lines with their total, if they share one currency.
fn total(lines: Vec<CostLine>, findings: &mut Vec<Finding>) -> Costs {
    let at_least = lines.iter().any(|line| line.used.is_none());
    let known: Vec<&CostLine> = lines.iter().filter(|line| line.used.is_some()).collect();
    let one_currency = known.windows(2).all(|pair| pair[0].currency == pair[1].currency);
    if !one_currency {
        findings.push(Finding::new(Severity::Note, Subject::Project, "currencies-differ"));
    }
    let sum = known.iter().filter_map(|line| line.used).try_fold(Decimal::ZERO, Decimal::checked_add);
    let total_used = if known.is_empty() || !one_currency { None } else { sum };
    Costs { lines, total_used, at_least }
}

/// Costs of one card: what the batch uses ÷ its cards.
#[must_use]
pub fn per_card(costs: &Costs, cards: &[Card]) -> Option<Decimal> {
    costs.total_used?.checked_div(Decimal::from(cards.len()))
}
