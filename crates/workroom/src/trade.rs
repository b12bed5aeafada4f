//! Post, supplies, prices and class in words: what the pages and the command line both say of them.
//!
//! Left out on purpose: every sum. `cards` works them out; here they become text.

use std::collections::BTreeMap;

use cards::Fact;
use cards::buying::{ColourSwap, Counted, Need, NeedOf, Purchase, Sum};
use cards::mailing::{LetterClass, Mailing, Verdict, Why, letter_classes};
use cards::model::{Project, Rate};
use cards::money::to_coin;
use cards::plan::Plan;
use cards::weight::Weight;
use drawing::sheets::worded;
use measure::{Length, Mark, Unit};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use store::shelf::Item;
use words::{local, say};

use crate::wording;

/// An amount of money to the coin, with its currency.
pub(crate) fn money(amount: Decimal, currency: &str) -> String {
    local(format!("{} {currency}", to_coin(amount, currency)).trim_end())
}

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

/// What the batch uses, as a sum.
pub(crate) fn used(plan: &Plan) -> Sum {
    let lines = &plan.costs.lines;
    let mut currencies: Vec<String> =
        lines.iter().filter(|line| line.used.is_some()).map(|line| line.currency.clone()).collect();
    currencies.dedup();
    let missing = lines.iter().filter(|line| line.used.is_none()).map(|line| line.name.clone()).collect();
    Sum { amount: plan.costs.total_used, missing, currencies }
}

/// A decimal without noughts at its end, at most two digits behind the point.
pub(crate) fn decimal(number: Decimal) -> String {
    local(&number.round_dp(2).normalize().to_string())
}

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
        "cardstock" => say("need-rule-cardstock", &args),
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

/// Grams and ounces.
pub(crate) fn weight(weight: Weight) -> String {
    let (grams, ounces) = (local(&weight.in_grams()), local(&weight.in_ounces()));
    say("grams-ounces", &[("grams", grams.into()), ("ounces", ounces.into())])
}

/// A thickness in hundredths of a millimetre.
pub(crate) fn thick(length: Length) -> String {
    let um = length.ticks() / (Length::MM.ticks() / 1_000);
    let mm = Decimal::new(um, 3).round_dp(2).normalize().to_string();
    say("millimetres", &[("mm", local(&mm).into())])
}

/// A limit as its operator tells it.
fn limit(length: Length, unit: Unit) -> String {
    local(&measure::write_exact_in(length, unit))
}

/// Why a class does not take a letter.
pub(crate) fn why(why: &Why, class: &LetterClass) -> String {
    let ratio = |thousandths: u32| local(&Decimal::new(i64::from(thousandths), 3).normalize().to_string());
    let of_class = |length: Length| limit(length, class.unit);
    let (id, fact) = match *why {
        Why::TooSmall(least) => ("post-why-too-small", Some(("least", of_class(least)))),
        Why::TooLong(most) => ("post-why-too-long", Some(("most", of_class(most)))),
        Why::TooHigh(most) => ("post-why-too-high", Some(("most", of_class(most)))),
        Why::TooThick(most) => ("post-why-too-thick", Some(("most", of_class(most)))),
        Why::TooThin(least) => ("post-why-too-thin", Some(("least", of_class(least)))),
        Why::TooHeavy(most) => ("post-why-too-heavy", Some(("most", weight(most)))),
        Why::TooSquare(least) => ("post-why-too-square", Some(("ratio", ratio(least)))),
        Why::TooSlender(most) => ("post-why-too-slender", Some(("ratio", ratio(most)))),
        Why::Uneven => ("post-why-uneven", None),
        Why::Stiff => ("post-why-stiff", None),
        Why::Upright => ("post-why-upright", None),
        Why::TooLargeTogether(most) => ("post-why-too-large-together", Some(("most", limit(most, Unit::Millimetre)))),
        Why::NotOver => ("post-why-not-over", None),
    };
    let args: Vec<(&str, words::Arg)> = fact.into_iter().map(|(name, text)| (name, text.into())).collect();
    say(id, &args)
}

/// The class of a verdict, or that it is no letter.
pub(crate) fn class(verdict: &Verdict) -> String {
    verdict.class.map_or_else(|| say("post-none", &[]), |class| class.class.to_owned())
}

/// Why not a better class, a sentence each; what is only from memory last.
pub(crate) fn reasons(verdict: &Verdict) -> Vec<String> {
    let told = |(class, whys): &(&LetterClass, Vec<Why>)| {
        let reasons: Vec<String> = whys.iter().map(|one| why(one, class)).collect();
        say("post-not", &[("class", class.class.into()), ("reasons", reasons.join(", ").into())])
    };
    let mut all: Vec<String> = verdict.not.iter().map(told).collect();
    if let (Some(class), false) = (verdict.class, verdict.doubts.is_empty()) {
        let doubts: Vec<String> = verdict.doubts.iter().map(|one| why(one, class)).collect();
        all.push(say("post-doubt", &[("reasons", doubts.join(", ").into())]));
    }
    all
}

/// The maker's own rate, with its date.
pub(crate) fn rate(rate: Option<&Rate>) -> String {
    let Some(rate) = rate else { return say("post-no-rate", &[]) };
    let price = money(rate.price.amount, &rate.price.currency);
    match &rate.price.date {
        Some(date) => say("post-rate-dated", &[("price", price.into()), ("date", date.into())]),
        None => say("post-rate", &[("price", price.into())]),
    }
}

/// Where the limits of a verdict were read.
pub(crate) fn source(verdict: &Verdict) -> String {
    let row = verdict.class.or_else(|| verdict.not.first().map(|(class, _)| *class));
    row.map_or_else(String::new, |row| {
        // A row that says `same` has the source of the row before it.
        let before = letter_classes().take_while(|other| *other != row).filter(|other| other.source != "same");
        let source = if row.source == "same" { before.last().map_or("", |other| other.source) } else { row.source };
        let facts = [("source", source.into()), ("year", row.year.into()), ("sure", row.sure.into())];
        say("post-sure", &facts)
    })
}

/// What a kind of card is called: recipe and number, after the batch where there are several.
pub(crate) fn kind(plan: &Plan, mailing: &Mailing) -> String {
    let recipe = plan.project.recipes.get(mailing.recipe).map_or("", |recipe| recipe.name.as_str());
    let kind = say("post-kind", &[("recipe", recipe.into()), ("cards", mailing.cards.into())]);
    if plan.batches.len() < 2 {
        return kind;
    }
    let batch = plan.batches.get(mailing.batch).map_or("", |batch| batch.called(&plan.project));
    say("post-of-batch", &[("batch", batch.into()), ("kind", kind.into())])
}

/// What is to know of a kind of card before any operator is asked, a sentence each.
pub(crate) fn measures(plan: &Plan, mailing: &Mailing) -> Vec<String> {
    let mark = plan.project.mark;
    let length = |length: Length| wording::length(length, mark);
    let heavy = weight(mailing.letter.weight.unwrap_or_default());
    let weighs = if mailing.body.at_least {
        say("post-weighs-at-least", &[("weight", heavy.into())])
    } else {
        say("post-weighs", &[("weight", heavy.into())])
    };
    let thickness =
        say("post-thick", &[("mm", thick(mailing.thickness()).into()), ("all", thick(mailing.stacked()).into())]);
    let (long, high) = (mailing.letter.length, mailing.letter.height);
    let size = say("post-size", &[("width", length(long).into()), ("height", length(high).into())]);
    let mut told = vec![weighs, thickness, size];
    let fit = &mailing.fit;
    let wanted = ("wanted", wording::length(fit.wanted, Mark::usual(plan.project.unit)).into());
    match (&fit.own, fit.left) {
        (Some(own), Some(left)) => {
            let facts = [
                ("envelope", (&own.name).into()),
                ("width", length(left.width).into()),
                ("height", length(left.height).into()),
                wanted,
            ];
            told.push(if fit.fits { say("post-fits", &facts) } else { say("post-fits-not", &facts) });
        }
        _ => told.push(say("post-no-envelope", &[wanted])),
    }
    if !fit.fits && !fit.others.is_empty() {
        let named = |row: &&measure::EnvelopeSize| {
            let unit = row.unit;
            let facts = [
                ("name", row.name.into()),
                ("width", limit(row.size.width, unit).into()),
                ("height", limit(row.size.height, unit).into()),
            ];
            say("post-named", &facts)
        };
        let names: Vec<String> = fit.others.iter().map(named).collect();
        told.push(say("post-others", &[("names", names.join(", ").into())]));
    }
    let (blank, sheet) = (fit.blank, fit.blank.sheet());
    let facts = [
        ("width", length(sheet.width).into()),
        ("height", length(sheet.height).into()),
        ("face-width", length(blank.face.width).into()),
        ("face-height", length(blank.face.height).into()),
        ("side", length(blank.side).into()),
        ("lower", length(blank.lower).into()),
        ("upper", length(blank.upper).into()),
    ];
    told.push(say("post-make", &facts));
    told
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
    let serves = |item: &Item| kind_on_shelf(need.of).iter().any(|kind| item.is_alike(kind, &need.name));
    items.enumerate().find(|(_, item)| serves(item) && one_unit(need, &item.unit).is_some()).map(|(index, _)| index)
}

/// So much of an item in the need's own measure, rounded down.
pub(crate) fn in_need(need: &Need, unit: &str, amount: Decimal) -> u64 {
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

/// What is due before a class.
pub(crate) fn due(code: &str) -> String {
    match code {
        "sample" => say("class-due-sample", &[]),
        "buy" => say("class-due-buy", &[]),
        "cut" => say("class-due-cut", &[]),
        "stamp" => say("class-due-stamp", &[]),
        "bag" => say("class-due-bag", &[]),
        "print" => say("class-due-print", &[]),
        "pack" => say("class-due-pack", &[]),
        _ => say("class-due-class", &[]),
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

/// A kit's contents, a line each: how many of what.
pub(crate) fn contents(plan: &Plan, batch: usize, kit: &[u32]) -> Vec<String> {
    use cards::model::Material;
    use cards::plan::PartKind;
    let project = &plan.project;
    let mark = project.mark;
    // In the order of the layers, so that mats of all colours stand together.
    let mut counts: BTreeMap<(usize, String), u32> = BTreeMap::new();
    let mut put = |rank: usize, what: String, count: u32| *counts.entry((rank, what)).or_default() += count;
    let last = project.recipes.iter().map(|recipe| recipe.layers.len()).max().unwrap_or(0) * 2 + 2;
    for card in plan.cards.iter().filter(|card| card.batch == batch && kit.contains(&card.number)) {
        let recipe = &project.recipes[card.recipe];
        put(0, say("class-content-base", &[]), 1);
        for part in &card.parts {
            let layer = &recipe.layers[part.layer];
            let rank = part.layer * 2 + 1;
            match (&part.kind, &layer.material) {
                (PartKind::Ribbon(index, _), Material::Ribbon { length, .. }) => {
                    let name = project.ribbons.get(*index).map_or("", |ribbon| ribbon.name.as_str());
                    let length = wording::length(*length, mark);
                    put(rank, say("class-content-ribbon", &[("length", length.into()), ("name", name.into())]), 1);
                }
                (PartKind::Cardstock(index), _) => {
                    let stock = project.cardstocks.get(*index).map_or("", |stock| stock.name.as_str());
                    put(rank, format!("{} {stock}", layer.name), 1);
                }
                (_, Material::Strip { foam_squares, .. }) => {
                    put(rank, layer.name.clone(), 1);
                    if *foam_squares > 0 {
                        put(rank + 1, say("class-content-foam", &[]), *foam_squares);
                    }
                }
                _ => put(rank, layer.name.clone(), 1),
            }
        }
        if plan.counts.envelopes.is_some() {
            put(last, say("class-content-envelope", &[]), 1);
        }
    }
    put(last + 1, say("class-content-strip-spare", &[]), 1);
    put(last + 2, say("class-content-handout", &[]), 1);
    let told = |((_, what), count): ((usize, String), u32)| {
        say("class-content", &[("count", count.into()), ("what", what.into())])
    };
    counts.into_iter().map(told).collect()
}

/// The facts of a finding that are counts or texts, worded with its remedy.
pub(crate) fn finding(finding: &cards::Finding, mark: Mark) -> (String, String) {
    debug_assert!(finding.facts.iter().all(|(_, fact)| !matches!(fact, Fact::Length(_))), "classes have no lengths");
    let worded = wording::finding(finding, mark);
    (worded.said, worded.remedy)
}

/// Kits, cards, left-handers and the day itself, a sentence each.
pub(crate) fn kits_told(plan: &Plan, found: &cards::class::ClassPlan) -> Vec<String> {
    let Some(class) = &plan.project.trade.class else { return Vec::new() };
    let mut told = vec![say(
        "class-kits",
        &[
            ("kits", found.kits.into()),
            ("seats", class.seats.into()),
            ("demonstrators", class.demonstrators.into()),
            ("spare", found.spare.into()),
        ],
    )];
    if class.cut_kits > 0 {
        told.push(say("class-kits-cut", &[("cut", class.cut_kits.into()), ("to-cut", found.to_cut.into())]));
    }
    if found.cut_beyond > 0 {
        told.push(say("class-kits-beyond", &[("beyond", found.cut_beyond.into())]));
    }
    let (least, most) = found.cards_each;
    let same = if least == most { "yes" } else { "no" };
    told.push(say("class-cards", &[("least", least.into()), ("most", most.into()), ("same", same.into())]));
    if !found.more_sheets.is_empty() {
        let one = |more: &cards::class::MoreSheets| {
            let sheets = say("amount-sheets", &[("count", more.sheets.into())]);
            say("class-more-one", &[("sheets", sheets.into()), ("letter", (&more.letter).into())])
        };
        let sheets: Vec<String> = found.more_sheets.iter().map(one).collect();
        told.push(say("class-more", &[("sheets", sheets.join(", ").into())]));
    }
    told.push(say("class-left", &[("left", class.left_handed.into())]));
    let (welcome, each, end) = found.minutes;
    let all = welcome.saturating_add(each.saturating_mul(most)).saturating_add(end);
    let hours = say("class-hours", &[("hours", (all / 60).into()), ("minutes", (all % 60).into())]);
    told.push(say(
        "class-on-the-day",
        &[
            ("welcome", welcome.into()),
            ("each", each.into()),
            ("cards", most.into()),
            ("end", end.into()),
            ("hours", hours.into()),
        ],
    ));
    told
}

/// The day something is due, with its weekday; only how many days before where no day is told.
pub(crate) fn day(due: &cards::class::Due) -> String {
    let Some(day) = due.day else { return format!("−{}", due.before) };
    let weekday = say("weekday", &[("day", day.weekday().into())]);
    let over = if due.past { format!(" ({})", say("class-over", &[])) } else { String::new() };
    format!("{day} {weekday}{over}")
}

/// The money of a class, a line each.
pub(crate) fn money_told(plan: &Plan, found: &cards::class::ClassPlan) -> Vec<(String, Option<Decimal>)> {
    let money = &found.money;
    let seats = plan.project.trade.class.as_ref().map_or(0, |class| class.seats);
    vec![
        (say("class-money-kit", &[]), money.kit),
        (say("class-money-kits", &[("kits", found.kits.into())]), money.kits),
        (say("class-money-room", &[]), Some(money.room).filter(|_| !money.mixed)),
        (say("class-money-teacher", &[]), Some(money.teacher).filter(|_| !money.mixed)),
        (say("class-money-shared", &[]), Some(money.shared).filter(|_| !money.mixed)),
        (say("class-money-total", &[]), money.total),
        (say("class-money-seat", &[("seats", money.break_even.into())]), money.seat),
        (say("class-money-price", &[]), money.price),
        (say("class-money-brings", &[("seats", seats.into())]), money.brings),
        (say("class-money-over", &[]), money.over),
    ]
}
