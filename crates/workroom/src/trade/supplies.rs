//! Needs, packs, swaps of colours and the shelf in words.

use std::collections::BTreeMap;

use cards::Fact;
use cards::buying::{ColourSwap, Counted, Need, NeedOf, Purchase, recolor};
use cards::model::{Choice, Decided, Project};
use cards::plan::Plan;
use drawing::sheets::worded;
use measure::{Length, Mark, Unit};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use store::shelf::Item;
use words::{local, say};

use super::money;
use crate::wording;

/// An amount in its own measure.
pub(crate) fn amount(counted: Counted, value: u64, unit: Unit) -> String {
    let count = ("count", value.into());
    match counted {
        Counted::Sheets => say("amount-sheets", &[count]),
        Counted::Pieces => say("amount-pieces", &[count]),
        Counted::Uses => say("amount-uses", &[count]),
        Counted::Ticks => {
            let (id, whole) = match unit {
                Unit::Inch => ("amount-yards", Length::INCH * 36),
                Unit::Millimetre => ("amount-metres", Length::mm(1_000)),
            };
            let tenths = (u128::from(value) * 20 / u128::from(whole.ticks().unsigned_abs())).div_ceil(2);
            let tenths = u64::try_from(tenths).unwrap_or(u64::MAX);
            let number = Decimal::new(i64::try_from(tenths).unwrap_or(i64::MAX), 1).normalize();
            say(id, &[("count", local(&number.to_string()).into())])
        }
    }
}

/// The rule by which a need was counted.
pub(crate) fn rule(need: &Need, mark: Mark) -> String {
    let args = worded::arguments(&need.rule.1, &|length| wording::length(length, mark));
    match need.rule.0 {
        "paper" => say("need-rule-paper", &args),
        "cardstock" => {
            let of = |key: &str, id: &str| {
                let count = need.rule.1.iter().find_map(|(name, fact)| match fact {
                    Fact::Count(count) if *name == key && *count > 0 => Some(*count),
                    _ => None,
                })?;
                Some(say(id, &[("count", count.into())]))
            };
            let pieces = [
                of("bases", "need-of-bases"),
                of("mats", "need-of-mats"),
                of("strips", "need-of-strips"),
                of("inside", "need-of-inside"),
            ];
            let pieces: Vec<String> = pieces.into_iter().flatten().collect();
            say("need-rule-cardstock", &[("pieces", pieces.join(", ").into())])
        }
        "ribbon" => say("need-rule-ribbon", &args),
        "tape" => say("need-rule-tape", &args),
        "foam" => say("need-rule-foam", &args),
        "envelopes" => say("need-rule-envelopes", &args),
        "ink-pad" => say("need-rule-ink-pad", &args),
        _ => say("need-rule-stamps", &args),
    }
}

/// Whole packs: `1 pack of 300 pieces, 1 pack of 100 pieces`.
pub(crate) fn packs(purchase: &Purchase, unit: Unit) -> String {
    let Some(packs) = &purchase.packs else { return say("amount-no-pack", &[]) };
    let bought = packs.iter().zip(&purchase.need.on_sale).filter(|(count, _)| **count > 0);
    let told: Vec<String> = bought
        .map(|(count, sold)| {
            let holds = amount(purchase.need.counted, sold.holds, unit);
            say("amount-packs", &[("count", (*count).into()), ("holds", holds.into())])
        })
        .collect();
    if told.is_empty() {
        say("amount-packs", &[("count", 0_u32.into()), ("holds", "".into())])
    } else {
        told.join(", ")
    }
}

/// What the packs of a purchase cost.
pub(crate) fn cost(purchase: &Purchase) -> String {
    purchase.cost.map_or_else(|| say("sum-unknown", &[]), |cost| money(cost, &purchase.currency))
}

/// A swap of colours: what is saved, then each colour.
pub(crate) fn swap(project: &Project, swap: &ColourSwap) -> (String, Vec<String>) {
    let total = |packs: &[u64]| packs.iter().sum::<u64>();
    let said = say(
        "supplies-swap",
        &[
            ("saved", money(swap.saved, &swap.currency).into()),
            ("moved", swap.swap.moved.into()),
            ("piece", (&swap.piece).into()),
            ("before", total(&swap.now).into()),
            ("after", total(&swap.swap.packs).into()),
        ],
    );
    let each =
        (swap.cardstocks.iter().zip(&swap.pieces_now).zip(&swap.swap.pieces)).filter(|((_, now), then)| now != then);
    let told = each.map(|((index, now), then)| {
        let name = project.cardstocks.get(*index).map_or("", |stock| stock.name.as_str());
        say("supplies-swap-one", &[("name", name.into()), ("now", (*now).into()), ("then", (*then).into())])
    });
    (said, told.collect())
}

/// Recipes that are made on a base too dark to write on and have no lighter sheet inside: recipe, base and contrast.
///
/// # Source
/// A black pen on the base, against 4.5 : 1: contrast of text, WCAG 2.2, 1.4.3, borrowed for paper.
pub(crate) fn dark_bases(plan: &Plan) -> Vec<String> {
    let project = &plan.project;
    let made = project.recipes.iter().zip(&plan.counts.cards_by_recipe);
    let told = |(recipe, cards): (&cards::model::Recipe, &u32)| {
        let base = project.cardstocks.get(recipe.base).filter(|_| *cards > 0 && recipe.inside.is_none())?;
        let contrast = color::contrast_ratio(color::Srgb::from_hex(&base.color)?, color::Srgb::from_hex("#000000")?);
        let facts = [
            ("recipe", (&recipe.name).into()),
            ("base", (&base.name).into()),
            ("contrast", local(&format!("{contrast:.1}")).into()),
        ];
        (contrast < 4.5).then(|| say("supplies-dark-base", &facts))
    };
    made.filter_map(told).collect()
}

/// The pieces of a swap as the project file has them: card, layer, name of the cardstock.
pub(crate) fn recolored(plan: &Plan, found: &ColourSwap) -> Vec<(u32, String, String)> {
    let piece = |choice: Choice| {
        let Decided::CutFrom(cardstock) = choice.decided else { return None };
        Some((choice.card, choice.layer, plan.project.cardstocks.get(cardstock)?.name.clone()))
    };
    recolor(plan, found).into_iter().filter_map(piece).collect()
}

/// The kind of item on the shelf that serves a need.
fn kind_on_shelf(of: NeedOf) -> &'static [&'static str] {
    match of {
        NeedOf::Paper(_) => &["paper"],
        NeedOf::Cardstock(..) => &["cardstock"],
        NeedOf::Ribbon(_) => &["ribbon"],
        NeedOf::Tape => &["adhesive"],
        NeedOf::Foam => &["foam", "adhesive"],
        NeedOf::Envelopes => &["envelope"],
        NeedOf::InkPad => &["ink"],
        NeedOf::Stamps => &["stamp"],
    }
}

/// One unit of an item in a need's own measure; `None` where the two cannot be compared.
fn one_unit(need: &Need, unit: &str) -> Option<Decimal> {
    let ticks = |length: Length| Some(Decimal::from(length.ticks()));
    match (need.counted, unit) {
        (Counted::Sheets, "sheet" | "piece") | (Counted::Pieces, "piece" | "sheet") => Some(Decimal::ONE),
        (Counted::Uses, "use") => Some(Decimal::ONE),
        (Counted::Ticks, "m") => ticks(Length::mm(1_000)),
        (Counted::Ticks, "cm") => ticks(Length::mm(10)),
        (Counted::Ticks, "yd") => ticks(Length::INCH * 36),
        (Counted::Ticks, "in") => ticks(Length::INCH),
        // A whole roll, pad or stamp is what one that is bought holds.
        (Counted::Ticks, "roll") | (Counted::Uses, "piece") => {
            need.on_sale.first().map(|sold| Decimal::from(sold.holds))
        }
        _ => None,
    }
}

/// The item of a shelf that serves a need: its place in the list.
pub(crate) fn item_of<'i>(need: &Need, items: impl Iterator<Item = &'i Item>) -> Option<usize> {
    // A shelf may have been written down in another language than is spoken now.
    let names = words::Language::ALL.map(|language| words::speaking(language, || worded::supply(&need.name)));
    let serves = |item: &Item| {
        kind_on_shelf(need.of)
            .iter()
            .any(|kind| item.is_alike(kind, &need.name) || names.iter().any(|name| item.is_alike(kind, name)))
    };
    items.enumerate().find(|(_, item)| serves(item) && one_unit(need, &item.unit).is_some()).map(|(index, _)| index)
}

/// So much of an item in the need's own measure, rounded down.
fn in_need(need: &Need, unit: &str, amount: Decimal) -> u64 {
    let measured = one_unit(need, unit).and_then(|one| amount.checked_mul(one));
    measured.and_then(|amount| amount.floor().to_u64()).unwrap_or(0)
}

/// So much of a need in an item's unit.
pub(crate) fn in_item(need: &Need, unit: &str, amount: u64) -> Decimal {
    let shared = one_unit(need, unit).and_then(|one| Decimal::from(amount).checked_div(one));
    // Six digits are kept on the shelf.
    shared.unwrap_or_default().round_dp(6).normalize()
}

/// What of each need is there, by the amounts that are free.
pub(crate) fn there(needs: &[Need], items: &[(Item, Decimal)]) -> BTreeMap<NeedOf, u64> {
    let mut there = BTreeMap::new();
    for need in needs {
        if let Some(at) = item_of(need, items.iter().map(|(item, _)| item)) {
            let (item, free) = &items[at];
            there.insert(need.of, in_need(need, &item.unit, *free));
        }
    }
    there
}

/// One mistake of a table of the shelf, in words with its place.
pub(crate) fn table_problem(problem: &store::shelf::table::TableProblem) -> String {
    let facts = [("found", (&problem.found).into()), ("known", (&problem.known).into())];
    let said = match problem.code {
        "too-large" => say("shelf-problem-too-large", &facts),
        "not-text" => say("shelf-problem-not-text", &facts),
        "empty" => say("shelf-problem-empty", &facts),
        "not-a-table" => say("shelf-problem-not-a-table", &facts),
        "no-column" => say("shelf-problem-no-column", &facts),
        "unknown-column" => say("shelf-problem-unknown-column", &facts),
        "too-many" => say("shelf-problem-too-many", &facts),
        "too-wide" => say("shelf-problem-too-wide", &facts),
        "twice" => say("shelf-problem-twice", &facts),
        "kind" => say("shelf-problem-kind", &facts),
        "unit" => say("shelf-problem-unit", &facts),
        "name" => say("shelf-problem-name", &facts),
        "nothing" => say("shelf-problem-nothing", &facts),
        "currency" => say("shelf-problem-currency", &facts),
        "color" => say("shelf-problem-color", &facts),
        "day" => say("shelf-problem-day", &facts),
        "no-number" => say("shelf-problem-no-number", &facts),
        "negative" => say("shelf-problem-negative", &facts),
        "two-separators" => say("shelf-problem-two-separators", &facts),
        _ => say("shelf-problem-too-much", &facts),
    };
    let line = ("line", problem.line.into());
    if problem.column == 0 {
        return say("shelf-problem", &[line, ("said", said.into())]);
    }
    let place = [line, ("column", problem.column.into()), ("head", (&problem.head).into()), ("said", said.into())];
    say("shelf-problem-place", &place)
}

/// What kind of thing lies on the shelf.
pub(crate) fn shelf_kind(kind: &str) -> String {
    say("shelf-kind-name", &[("kind", kind.into())])
}

/// In what a thing on the shelf is counted.
pub(crate) fn shelf_unit(unit: &str) -> String {
    say("shelf-unit-name", &[("unit", unit.into())])
}

/// How much of a thing is on the shelf.
pub(crate) fn shelf_amount(item: &Item) -> String {
    let one = if item.amount == Decimal::ONE { "yes" } else { "no" };
    let facts = [("amount", super::decimal(item.amount).into()), ("one", one.into()), ("unit", (&item.unit).into())];
    say("shelf-there", &facts)
}

/// A thing as its maker told it: name, amount, price with its day, place.
pub(crate) fn shelf_item(item: &Item) -> String {
    let mut told = vec![format!("{}: {}", item.name, shelf_amount(item))];
    if let Some(price) = item.price {
        told.push(super::money(price, &item.currency));
    }
    told.extend(item.priced_on.clone());
    if !item.place.is_empty() {
        told.push(item.place.clone());
    }
    told.join(", ")
}
