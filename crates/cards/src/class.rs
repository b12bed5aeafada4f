//! A class: kits, what is still to cut, the days before it, what a seat costs.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use crate::days::{Day, Time};
use crate::finding::{Finding, Severity, Subject};
use crate::model::{Class, Price};
use crate::plan::{Plan, used_for};

/// Everything about a class.
#[derive(Debug, Clone, PartialEq)]
pub struct ClassPlan {
    /// Index of the batch whose cards are made.
    pub batch: usize,
    /// Kits wanted: seats, demonstrators, spare ones.
    pub kits: u32,
    /// Spare kits among them.
    pub spare: u32,
    /// Kits the plan shares its cards out over.
    pub planned: u32,
    /// Kits that are still to be cut; those that are cut are never cut again.
    pub to_cut: u32,
    /// Kits cut beyond what is wanted: spare.
    pub cut_beyond: u32,
    /// Cards in each kit, the fewest and the most.
    pub cards_each: (u32, u32),
    /// For each design: sheets still to cut for the kits beyond the plan, and how many of those are not there.
    pub more_sheets: Vec<MoreSheets>,
    /// The days before it.
    pub timetable: Vec<Due>,
    /// The day itself, part by part.
    pub on_the_day: Vec<DayPart>,
    /// Minutes of it all.
    pub minutes: u32,
    /// Its money.
    pub money: ClassMoney,
    /// What the maker should know.
    pub findings: Vec<Finding>,
}

/// Sheets of one design that further kits take.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MoreSheets {
    /// Its letter.
    pub letter: String,
    /// Sheets to cut.
    pub sheets: u32,
    /// Sheets of them that are not in the pack any more.
    pub short: u32,
}

/// A part of the class itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DayPart {
    /// What: `welcome`, `card`, `pause` or `end`.
    pub code: &'static str,
    /// Which card of a kit, from 1; 0 where it is none.
    pub card: u32,
    /// Minutes it takes.
    pub minutes: u32,
    /// When it begins and ends, if the class has a time.
    pub times: Option<(Time, Time)>,
    /// True if it ends after midnight.
    pub next_day: bool,
}

/// Something that is due on a day before the class.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Due {
    /// Which: the message file words it under `class-due-<code>`.
    pub code: &'static str,
    /// Days before the class.
    pub before: u32,
    /// The day, if the day of the class is told.
    pub day: Option<Day>,
    /// True if that day is over.
    pub past: bool,
}

/// What a class costs and brings, in one currency.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ClassMoney {
    /// The currency.
    pub currency: String,
    /// What one kit uses, not rounded.
    pub kit: Option<Decimal>,
    /// What all kits use.
    pub kits: Option<Decimal>,
    /// The room.
    pub room: Decimal,
    /// The teacher's hours.
    pub teacher: Decimal,
    /// What all seats use together.
    pub shared: Decimal,
    /// All of it.
    pub total: Option<Decimal>,
    /// Seats at which it pays for itself.
    pub break_even: u32,
    /// What a seat must cost for that, not rounded.
    pub seat: Option<Decimal>,
    /// The price of a seat that the maker asks, or else the one for break-even, rounded up to the coin.
    pub price: Option<Decimal>,
    /// What the booked seats bring.
    pub brings: Option<Decimal>,
    /// What is left of it.
    pub over: Option<Decimal>,
    /// Names of what has no price: the costs read “at least”.
    pub missing: Vec<String>,
    /// True if prices are in several currencies: nothing is added up.
    pub mixed: bool,
}

/// What is due how many days before a class.
///
/// # Source
/// Common practice of card classes.
const DUE: [(&str, u32); 8] =
    [("sample", 21), ("buy", 14), ("cut", 10), ("stamp", 7), ("bag", 5), ("print", 3), ("pack", 1), ("class", 0)];
/// The class of a project; `None` if it holds none, or none of its batches is shared out over kits.
///
/// # Shape
/// `today` is told. A day that is over is told in the findings and never refused.
pub fn class(plan: &Plan, today: Option<Day>) -> Option<ClassPlan> {
    let class = plan.project.trade.class.as_ref()?;
    let named = |batch: &&crate::model::Batch| class.batch.as_ref().is_none_or(|name| *name == batch.name);
    let batch = plan.batches.iter().position(|batch| named(&batch) && batch.kits.is_some())?;
    let planned = plan.batches[batch].kits.unwrap_or(1).max(1);
    let spare = class.spare_kits.unwrap_or_else(|| class.seats.div_ceil(20).max(1));
    let kits = class.seats + class.demonstrators + spare;
    let dealt = plan.shares.iter().find(|shares| shares.batch == batch).and_then(|shares| shares.kits.as_ref());
    let sizes = || dealt.iter().flat_map(|kits| &kits.cards).map(|kit| u32::try_from(kit.len()).unwrap_or(u32::MAX));
    let cards_each = (sizes().min().unwrap_or(0), sizes().max().unwrap_or(0));
    let mut findings = Vec::new();
    let about = |severity, code| Finding::new(severity, Subject::Project, code);
    if planned < kits {
        let told = about(Severity::Warning, "class-kits-few").with("planned", planned).with("kits", kits);
        findings.push(told.with("more", kits - planned));
    }
    if planned > kits {
        let told = about(Severity::Note, "class-kits-many").with("planned", planned).with("kits", kits);
        findings.push(told.with("more", planned - kits));
    }
    if cards_each.0 == 0 {
        let cards = plan.cards.iter().filter(|card| card.batch == batch).count();
        let told = about(Severity::Serious, "class-kits-empty").with("planned", planned);
        findings.push(told.with("cards", u64::try_from(cards).unwrap_or(u64::MAX)));
    }
    if class.left_handed > class.seats {
        let told = about(Severity::Warning, "class-left-handers").with("left", class.left_handed);
        findings.push(told.with("seats", class.seats));
    }
    let more_sheets = more_sheets(plan, batch, planned, kits.saturating_sub(planned.max(class.cut_kits)));
    for short in more_sheets.iter().filter(|more| more.short > 0) {
        let told = Finding::new(Severity::Serious, Subject::Design(short.letter.clone()), "class-sheets-short");
        findings
            .push(told.with("letter", short.letter.as_str()).with("sheets", short.sheets).with("short", short.short));
    }
    let date = class.date.as_deref().and_then(Day::parse);
    if let (Some(date), Some(today)) = (date, today)
        && date < today
    {
        let told = about(Severity::Warning, "class-past").with("date", date.to_string().as_str());
        findings.push(told.with("today", today.to_string().as_str()));
    }
    let timetable = timetable(date, today);
    if let (Some(date), Some(today)) = (date, today)
        && date >= today
        && timetable.iter().any(|due| due.past)
    {
        findings.push(about(Severity::Note, "class-late").with("days", u64::try_from(date.since(today)).unwrap_or(0)));
    }
    let on_the_day = on_the_day(class, cards_each.1);
    if let Some(late) = on_the_day.iter().find(|part| part.next_day) {
        let told = about(Severity::Warning, "class-past-midnight");
        findings.push(told.with("cards", cards_each.1).with("each", class.minutes_a_card).with("card", late.card));
    }
    let money = money(plan, class, batch, planned, kits);
    if money.mixed {
        findings.push(about(Severity::Warning, "class-currencies"));
    }
    Some(ClassPlan {
        batch,
        kits,
        spare,
        planned,
        to_cut: kits.saturating_sub(class.cut_kits),
        cut_beyond: class.cut_kits.saturating_sub(kits),
        cards_each,
        more_sheets,
        timetable,
        minutes: on_the_day.iter().fold(0, |sum, part| sum.saturating_add(part.minutes)),
        on_the_day,
        money,
        findings,
    })
}

/// The class itself: welcome, each card, a pause when half of them are made, time to spare; one after the other.
pub fn on_the_day(class: &Class, cards: u32) -> Vec<DayPart> {
    let mut wanted = vec![("welcome", 0, class.welcome_minutes)];
    for card in 1..=cards {
        wanted.push(("card", card, class.minutes_a_card));
        if class.pause_minutes > 0 && cards > 1 && card == cards.div_ceil(2) {
            wanted.push(("pause", 0, class.pause_minutes));
        }
    }
    wanted.push(("end", 0, class.end_minutes));
    let mut gone = 0_u32;
    let part = |(code, card, minutes): (&'static str, u32, u32)| {
        let begins = class.starts.map(|starts| starts.later(gone));
        gone = gone.saturating_add(minutes);
        let ends = class.starts.map(|starts| starts.later(gone));
        let next_day = ends.is_some_and(|(_, midnights)| midnights > 0);
        let times = begins.zip(ends).map(|((begins, _), (ends, _))| (begins, ends));
        DayPart { code, card, minutes, times, next_day }
    };
    wanted.into_iter().filter(|(.., minutes)| *minutes > 0).map(part).collect()
}

/// The days before a class, the earliest first.
pub fn timetable(date: Option<Day>, today: Option<Day>) -> Vec<Due> {
    let due = |(code, before): (&'static str, u32)| {
        let day = date.map(|date| date.earlier(i64::from(before)));
        Due { code, before, day, past: day.zip(today).is_some_and(|(day, today)| day < today) }
    };
    DUE.into_iter().map(due).collect()
}

/// Sheets that so many kits more take, of each design the batch cuts.
fn more_sheets(plan: &Plan, batch: usize, planned: u32, more: u32) -> Vec<MoreSheets> {
    if more == 0 {
        return Vec::new();
    }
    let mut all: BTreeMap<(usize, usize), u32> = BTreeMap::new();
    let mut used: BTreeMap<(usize, usize), u32> = BTreeMap::new();
    for layout in &plan.layouts {
        for take in &layout.sheets {
            *used.entry((layout.pack, take.design)).or_default() += take.sheets;
            if layout.batch == batch {
                // As many sheets for a kit as now, in whole sheets.
                let sheets = (u64::from(take.sheets) * u64::from(more)).div_ceil(u64::from(planned));
                *all.entry((layout.pack, take.design)).or_default() += u32::try_from(sheets).unwrap_or(u32::MAX);
            }
        }
    }
    let told = |((pack, design), sheets): ((usize, usize), u32)| {
        let printed = plan.project.design(pack, design)?;
        let there = printed.sheets().saturating_sub(used.get(&(pack, design)).copied().unwrap_or(0));
        Some(MoreSheets { letter: printed.letter.clone(), sheets, short: sheets.saturating_sub(there) })
    };
    all.into_iter().filter_map(told).collect()
}

fn money(plan: &Plan, class: &Class, batch: usize, planned: u32, kits: u32) -> ClassMoney {
    let used = used_for(plan, |card| card.batch == batch);
    let missing: Vec<String> =
        used.lines.iter().filter(|line| line.used.is_none()).map(|line| line.name.clone()).collect();
    let told: Vec<&Price> = [&class.room, &class.hour, &class.shared, &class.price].into_iter().flatten().collect();
    let mut currencies: Vec<&str> =
        used.lines.iter().filter(|line| line.used.is_some()).map(|line| line.currency.as_str()).collect();
    currencies.extend(told.iter().map(|price| price.currency.as_str()));
    currencies.sort_unstable();
    currencies.dedup();
    let mixed = currencies.len() > 1;
    let amount = |price: &Option<Price>| price.as_ref().map_or(Decimal::ZERO, |price| price.amount);
    // Seats are booked and drop out: two thirds of them is common practice.
    let break_even = class.break_even.unwrap_or_else(|| (class.seats * 2).div_ceil(3)).max(1);
    let mut money = ClassMoney {
        currency: currencies.first().map(|&code| code.to_owned()).unwrap_or_default(),
        room: amount(&class.room),
        teacher: class.hours.saturating_mul(amount(&class.hour)),
        shared: amount(&class.shared),
        break_even,
        missing,
        mixed,
        ..ClassMoney::default()
    };
    if mixed {
        return money;
    }
    money.kit = used.total_used.and_then(|total| total.checked_div(Decimal::from(planned)));
    money.kits = used.total_used.and_then(|total| {
        total.checked_mul(Decimal::from(kits)).and_then(|all| all.checked_div(Decimal::from(planned)))
    });
    money.total = money.kits.map(|kits| kits + money.room + money.teacher + money.shared);
    money.seat = money.total.and_then(|total| total.checked_div(Decimal::from(break_even)));
    let asked = class.price.as_ref().map(|price| price.amount);
    money.price = asked.or_else(|| money.seat.map(|seat| crate::money::up_to_coin(seat, &money.currency)));
    money.brings = money.price.and_then(|price| price.checked_mul(Decimal::from(class.seats)));
    money.over = money.brings.zip(money.total).map(|(brings, total)| brings - total);
    money
}
