//! Kits, days and money of a class in words.

use std::collections::BTreeMap;

use cards::Fact;
use cards::class::ClassPlan;
use cards::plan::Plan;
use measure::Mark;
use rust_decimal::Decimal;
use words::say;

use crate::wording;

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

/// A kit's contents, a line each: how many of what.
pub(crate) fn contents(plan: &Plan, batch: usize, kit: &[u32]) -> Vec<String> {
    let mut counts = pieces(plan, batch, kit);
    let last = last_rank(plan);
    counts.insert((last + 1, say("class-content-strip-spare", &[])), 1);
    counts.insert((last + 2, say("class-content-handout", &[])), 1);
    worded(counts)
}

/// For how many of the plan's kits is still to be cut, and what of it, a line each, with a spare strip for each kit.
///
/// Kits beyond the plan are not among them: `kits_told` says their sheets.
pub(crate) fn ahead(plan: &Plan, found: &ClassPlan) -> (u32, Vec<String>) {
    let Some(kits) = dealt(plan, found.batch) else { return (0, Vec::new()) };
    let cut = plan.project.trade.class.as_ref().map_or(0, |class| class.cut_kits) as usize;
    let open = kits.cards.iter().skip(cut).take(found.to_cut as usize);
    let (cards, count) = open.fold((Vec::new(), 0_u32), |(mut cards, count), kit| {
        cards.extend_from_slice(kit);
        (cards, count + 1)
    });
    if count == 0 {
        return (0, Vec::new());
    }
    let mut counts = pieces(plan, found.batch, &cards);
    counts.insert((last_rank(plan) + 1, say("class-content-strip-spare", &[])), count);
    (count, worded(counts))
}

fn dealt(plan: &Plan, batch: usize) -> Option<&cards::plan::BatchKits> {
    plan.shares.iter().find(|shares| shares.batch == batch)?.kits.as_ref()
}

/// How many cards of each print are in a kit: as many in all, or from the fewest to the most.
pub(crate) fn mix(plan: &Plan, batch: usize) -> Vec<(String, String)> {
    spread(plan, batch)
        .into_iter()
        .map(|(print, (least, most))| {
            let each = if least == most { least.to_string() } else { format!("{least}–{most}") };
            (print, each)
        })
        .collect()
}

/// How even that is, in a sentence.
pub(crate) fn mix_even(plan: &Plan, batch: usize) -> String {
    let by = spread(plan, batch).values().map(|(least, most)| most - least).max().unwrap_or(0);
    let swaps = dealt(plan, batch).map_or(0, |kits| kits.dealt.swaps);
    say("class-mix-even", &[("by", by.into()), ("swaps", swaps.into())])
}

fn spread(plan: &Plan, batch: usize) -> BTreeMap<String, (u32, u32)> {
    use cards::plan::PartKind;
    let Some(kits) = dealt(plan, batch) else { return BTreeMap::new() };
    let print_of = |number: &u32| {
        let card = plan.cards.iter().find(|card| card.batch == batch && card.number == *number)?;
        let PartKind::Patterned { layout, design, .. } =
            card.parts.iter().map(|part| &part.kind).find(|kind| matches!(kind, PartKind::Patterned { .. }))?
        else {
            return None;
        };
        let design = plan.project.design(plan.layouts.get(*layout)?.pack, *design)?;
        Some(format!("{} {}", design.letter, design.name))
    };
    let counted: Vec<BTreeMap<String, u32>> = kits
        .cards
        .iter()
        .map(|kit| {
            let mut counts = BTreeMap::new();
            for print in kit.iter().filter_map(print_of) {
                *counts.entry(print).or_default() += 1;
            }
            counts
        })
        .collect();
    let prints: std::collections::BTreeSet<&String> = counted.iter().flat_map(BTreeMap::keys).collect();
    let of = |print: &String| {
        let each = || counted.iter().map(|kit| kit.get(print).copied().unwrap_or(0));
        (print.clone(), (each().min().unwrap_or(0), each().max().unwrap_or(0)))
    };
    prints.into_iter().map(of).collect()
}

fn last_rank(plan: &Plan) -> usize {
    plan.project.recipes.iter().map(|recipe| recipe.layers.len()).max().unwrap_or(0) * 2 + 2
}

fn worded(counts: BTreeMap<(usize, String), u32>) -> Vec<String> {
    let told = |((_, what), count): ((usize, String), u32)| {
        say("class-content", &[("count", count.into()), ("what", what.into())])
    };
    counts.into_iter().map(told).collect()
}

/// What these cards are made of, in the order of the layers: how many of what.
fn pieces(plan: &Plan, batch: usize, cards: &[u32]) -> BTreeMap<(usize, String), u32> {
    use cards::model::Material;
    use cards::plan::PartKind;
    let project = &plan.project;
    let mark = project.mark;
    // In the order of the layers, so that mats of all colours stand together.
    let mut counts: BTreeMap<(usize, String), u32> = BTreeMap::new();
    let mut put = |rank: usize, what: String, count: u32| *counts.entry((rank, what)).or_default() += count;
    let last = last_rank(plan);
    for card in plan.cards.iter().filter(|card| card.batch == batch && cards.contains(&card.number)) {
        let recipe = &project.recipes[card.recipe];
        put(0, say("class-content-base", &[]), 1);
        if let Some((_, cardstock)) = recipe.inside {
            let stock = project.cardstocks.get(cardstock).map_or("", |stock| stock.name.as_str());
            put(last, format!("{} {stock}", say("stock-inside", &[])), 1);
        }
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
    counts
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
    told
}

/// How long the class takes.
pub(crate) fn day_length(found: &cards::class::ClassPlan) -> String {
    let hours = say("class-hours", &[("hours", (found.minutes / 60).into()), ("minutes", (found.minutes % 60).into())]);
    say("class-on-the-day", &[("cards", found.cards_each.1.into()), ("hours", hours.into())])
}

/// What a part of the class is.
pub(crate) fn day_part(part: &cards::class::DayPart) -> String {
    match part.code {
        "welcome" => say("class-part-welcome", &[]),
        "card" => say("class-part-card", &[("card", part.card.into())]),
        "pause" => say("class-part-pause", &[]),
        _ => say("class-part-end", &[]),
    }
}

/// From when to when; a dash where the class has no time.
pub(crate) fn when(part: &cards::class::DayPart) -> String {
    part.times.map_or_else(|| "–".to_owned(), |(begins, ends)| format!("{begins}–{ends}"))
}

/// How long a part takes.
pub(crate) fn takes(part: &cards::class::DayPart) -> String {
    say("class-part-minutes", &[("minutes", part.minutes.into())])
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
