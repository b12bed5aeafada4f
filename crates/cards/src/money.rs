//! Sums of money: shared out to the cent, what a price leaves, the price for a wish.
//!
//! Exact decimals throughout; every rounding is here, by name. Left out on purpose: what a thing is worth.

use rust_decimal::{Decimal, RoundingStrategy};

use crate::model::Selling;

/// Digits behind the point of a currency's smallest coin.
///
/// # Source
/// ISO 4217:2015, minor units; two where the code is not among the exceptions.
pub fn minor_units(currency: &str) -> u32 {
    match currency {
        "BIF" | "CLP" | "DJF" | "GNF" | "ISK" | "JPY" | "KMF" | "KRW" | "PYG" | "RWF" | "UGX" | "VND" | "VUV"
        | "XAF" | "XOF" | "XPF" => 0,
        "BHD" | "IQD" | "JOD" | "KWD" | "LYD" | "OMR" | "TND" => 3,
        _ => 2,
    }
}

/// Rounded to the smallest coin, a half away from nothing.
pub fn to_coin(amount: Decimal, currency: &str) -> Decimal {
    let mut rounded = amount.round_dp_with_strategy(minor_units(currency), RoundingStrategy::MidpointAwayFromZero);
    rounded.rescale(minor_units(currency));
    rounded
}

/// Rounded up to the smallest coin: a price that is surely enough.
pub fn up_to_coin(amount: Decimal, currency: &str) -> Decimal {
    let mut rounded = amount.round_dp_with_strategy(minor_units(currency), RoundingStrategy::ToPositiveInfinity);
    rounded.rescale(minor_units(currency));
    rounded
}

/// A total shared out by weights so that the shares add up to it, to the coin.
///
/// # Shape
/// The total is rounded to the coin first. Each share is what its weight gives, cut off; the coins that are then over go
/// one by one to the shares that lost most by the cutting, of equals to the first. All nothing if no weight is above
/// nothing; a weight below nothing counts as nothing.
///
/// # Source
/// Method of the largest remainder.
///
/// # Examples
/// ```
/// use cards::money::share_out;
/// use rust_decimal::Decimal;
/// let shares = share_out(Decimal::new(100, 2), "GBP", &[Decimal::ONE; 3]);
/// assert_eq!(shares.iter().map(ToString::to_string).collect::<Vec<_>>(), ["0.34", "0.33", "0.33"]);
/// ```
pub fn share_out(total: Decimal, currency: &str, weights: &[Decimal]) -> Vec<Decimal> {
    let digits = minor_units(currency);
    let coin = Decimal::new(1, digits);
    let total = to_coin(total, currency);
    let weights: Vec<Decimal> = weights.iter().map(|weight| (*weight).max(Decimal::ZERO)).collect();
    let whole = weights.iter().fold(Decimal::ZERO, |sum, weight| sum.saturating_add(*weight));
    if whole.is_zero() {
        return vec![Decimal::ZERO; weights.len()];
    }
    let exact: Vec<Decimal> = weights
        .iter()
        .map(|weight| total.checked_mul(*weight).and_then(|share| share.checked_div(whole)).unwrap_or_default())
        .collect();
    let mut shares: Vec<Decimal> =
        exact.iter().map(|share| share.round_dp_with_strategy(digits, RoundingStrategy::ToZero)).collect();
    let mut order: Vec<usize> = (0..shares.len()).collect();
    // Stable: of equal remainders the first comes first.
    order.sort_by_key(|&at| std::cmp::Reverse(exact[at] - shares[at]));
    let mut over = total - shares.iter().copied().fold(Decimal::ZERO, |sum, share| sum + share);
    for at in order {
        if over < coin {
            break;
        }
        shares[at] += coin;
        over -= coin;
    }
    for share in &mut shares {
        share.rescale(digits);
    }
    shares
}

/// What a price leaves.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Leaves {
    /// Fees of that price.
    pub fees: Decimal,
    /// Tax of that price.
    pub tax: Decimal,
    /// What is left after fees, tax and material.
    pub over: Decimal,
    /// That for an hour of work; `None` if no time is told.
    pub wage: Option<Decimal>,
}

/// What a price of one card leaves, after its material, for so many minutes of work.
pub fn leaves(price: Decimal, material: Decimal, minutes: Decimal, selling: &Selling) -> Option<Leaves> {
    let percent = |part: Decimal| price.checked_mul(part)?.checked_div(Decimal::ONE_HUNDRED);
    let (fees, tax) = (percent(selling.fees)?, percent(selling.tax)?);
    let over = price.checked_sub(fees)?.checked_sub(tax)?.checked_sub(material)?;
    let wage = over.checked_mul(Decimal::from(60)).and_then(|over| over.checked_div(minutes));
    Some(Leaves { fees, tax, over, wage })
}

/// The price of one card that pays its material, its work by the hour, fees and tax, and leaves the wished margin.
///
/// # Shape
/// Not rounded. `None` if fees, tax and margin leave nothing of any price.
pub fn wished(material: Decimal, minutes: Decimal, selling: &Selling) -> Option<Decimal> {
    let hour = selling.hour.as_ref().map_or(Decimal::ZERO, |hour| hour.amount);
    let work = minutes.checked_mul(hour)?.checked_div(Decimal::from(60))?;
    let stays = Decimal::ONE_HUNDRED - selling.fees - selling.tax - selling.margin;
    if stays <= Decimal::ZERO {
        return None;
    }
    material.checked_add(work)?.checked_mul(Decimal::ONE_HUNDRED)?.checked_div(stays)
}
