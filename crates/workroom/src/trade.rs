//! Post, supplies, prices and class in words: what the pages and the command line both say of them.
//!
//! Left out on purpose: every sum. `cards` works them out; here they become text.

mod class;
mod post;
mod price;
mod supplies;

use cards::money::to_coin;
use rust_decimal::Decimal;
use words::local;

pub(crate) use class::{
    ahead, contents, day, day_length, day_part, due, finding, kits_told, mix, mix_even, money_told, takes, when,
};
pub(crate) use post::{class, kind, kind_of, measures, rate, reasons, source, thick, weight};
pub(crate) use price::{by_kind, each_card, priced, sum, sum_each, work};
pub(crate) use supplies::{
    amount, cost, dark_bases, in_item, item_of, packs, recolored, rule, shelf_amount, shelf_item, shelf_kind,
    shelf_unit, swap, table_problem, there,
};

/// Names of supplies, one after the other.
pub(crate) fn names(all: &[String]) -> String {
    all.iter().map(|name| drawing::sheets::worded::supply(name)).collect::<Vec<_>>().join(", ")
}

/// An amount of money to the coin, with its currency.
pub(crate) fn money(amount: Decimal, currency: &str) -> String {
    local(format!("{} {currency}", to_coin(amount, currency)).trim_end())
}

/// A decimal without noughts at its end, at most two digits behind the point.
pub(crate) fn decimal(number: Decimal) -> String {
    local(&number.round_dp(2).normalize().to_string())
}
