//! Another number of people or cards: how many kits, sheets and packs they take.

use super::{no_choices, note, put_back, taken};
use crate::finding::{Finding, Severity, Subject};
use crate::model::{Batch, Design, Price, Project, Take};
use crate::plan::{Card, Layout, Plan, SheetUse};

/// Kits for so many seats: one each, one for whoever shows how, and spare ones.
///
/// # Source
/// Spare kits: 5 % of the seats, and 1 at least: common practice in card classes. Part of a kit counts as a kit.
///
/// # Examples
/// ```
/// // 14 seats, a demonstrator, one spare; 60 seats, a demonstrator, three spare.
/// assert_eq!((cards::replan::kits(14), cards::replan::kits(60)), (16, 64));
/// ```
pub fn kits(seats: u32) -> u32 {
    kits_and(seats, None)
}

/// Kits for so many seats with so many spare ones.
pub(super) fn kits_and(seats: u32, spare: Option<u32>) -> u32 {
    seats.saturating_add(1).saturating_add(spare.unwrap_or_else(|| seats.div_ceil(20).max(1)))
}

/// The same project for so many seats. Batches that are shared out over kits grow or shrink, each kit alike; where none
/// is, a single goal makes a set for each seat.
pub(super) fn seated(plan: &Plan, seats: u32, kits: u32, findings: &mut Vec<Finding>) -> Project {
    let mut batches = plan.batches.clone();
    let told = |code| note(code).with("seats", seats).with("kits", kits).with("spare", kits.saturating_sub(seats + 1));
    let shared: Vec<usize> = (0..batches.len()).filter(|&batch| batches[batch].kits.is_some_and(|k| k > 0)).collect();
    if let (true, [batch]) = (shared.is_empty(), batches.as_mut_slice()) {
        let set = batch.goal.set_of.max(1);
        let cards = seats.saturating_mul(set).max(1);
        batch.goal.cards = Some(cards);
        batch.goal.overs = kits.saturating_mul(set).saturating_sub(cards);
        grow(plan, 0, batch, u64::from(kits) * u64::from(set), made(plan, 0));
        findings.push(told("replan-sets").with("set", set).with("cards", kits.saturating_mul(set)));
    } else if shared.is_empty() {
        findings.push(Finding::new(Severity::Serious, Subject::Project, "replan-no-kits"));
        return plan.project.clone();
    }
    for index in shared {
        let batch = &mut batches[index];
        let old = batch.kits.unwrap_or(1);
        batch.goal.cards = batch.goal.cards.map(|cards| scaled(cards, kits, old));
        batch.goal.overs = scaled(batch.goal.overs, kits, old);
        grow(plan, index, batch, u64::from(kits), u64::from(old));
        batch.kits = Some(kits);
        findings.push(told("replan-kits").with("batch", batch.name.as_str()).with("before", old));
    }
    let mut project = finished(plan, batches, findings);
    // The class has these seats too: its kits, money and labels follow them.
    if let Some(class) = project.trade.class.as_mut() {
        class.seats = seats;
        class.demonstrators = 1;
        class.spare_kits = Some(kits.saturating_sub(seats.saturating_add(1)));
    }
    project
}

/// The same project with so many cards in the batches that are not shared out over kits, each its share.
pub(super) fn counted(plan: &Plan, cards: u32, findings: &mut Vec<Finding>) -> Project {
    let mut batches = plan.batches.clone();
    let free: Vec<usize> = (0..batches.len()).filter(|&batch| batches[batch].kits.is_none()).collect();
    let all: u64 = free.iter().map(|&batch| made(plan, batch)).sum();
    if all == 0 {
        findings.push(Finding::new(Severity::Serious, Subject::Project, "replan-no-cards"));
        return plan.project.clone();
    }
    let mut told = 0;
    let mut seen = 0;
    for index in free {
        // Up to here so many; rounding falls on no batch twice.
        seen += made(plan, index);
        let until = u32::try_from(u64::from(cards) * seen / all).unwrap_or(u32::MAX);
        let (share, batch) = (until - told, &mut batches[index]);
        told = until;
        let wanted = share.saturating_sub(batch.goal.overs);
        (batch.goal.cards, batch.goal.overs) =
            if wanted == 0 { (Some(share), 0) } else { (Some(wanted), batch.goal.overs) };
        grow(plan, index, batch, u64::from(share), made(plan, index).max(1));
        let whole = trim(plan, index, batch, share);
        // Designs that meet on one card are cut together: what that gives beyond is spare.
        if !batch.goal.partners.is_empty() && whole > share {
            batch.goal.overs += whole - share;
            let name = batch.called(&plan.project);
            findings.push(note("replan-spare-cards").with("cards", whole - share).with("batch", name));
        }
    }
    findings.push(note("replan-cards").with("cards", cards).with("before", all));
    finished(plan, batches, findings)
}

/// Cards of a batch in a plan.
fn made(plan: &Plan, batch: usize) -> u64 {
    plan.cards.iter().filter(|card| card.batch == batch).count() as u64
}

fn scaled(count: u32, new: u32, old: u32) -> u32 {
    let scaled = (u64::from(count) * u64::from(new)).div_ceil(u64::from(old.max(1)));
    u32::try_from(scaled).unwrap_or(u32::MAX)
}

/// Sheets of each design for `new` cards of it where there were `old`, in whole sheets.
fn grow(plan: &Plan, index: usize, batch: &mut Batch, new: u64, old: u64) {
    for take in &mut batch.takes {
        let layout = plan.layouts.iter().find(|layout| layout.batch == index && of(layout, take).is_some());
        let Some(layout) = layout else {
            // Sheets that no card needed before are for nothing; the plan takes them only if it must.
            take.sheets = 0;
            continue;
        };
        let of_take = |card: &&Card| (card.batch, card.pack, card.design) == (index, take.pack, take.design);
        let cards = plan.cards.iter().filter(of_take).count() as u64;
        let gives = layout.recipe_counts.iter().map(|&cards| u64::from(cards)).sum::<u64>().max(1);
        let cards = (cards * new).div_ceil(old.max(1));
        take.sheets = u32::try_from(cards.div_ceil(gives)).unwrap_or(u32::MAX).min(MOST_SHEETS);
    }
    batch.takes.retain(|take| take.sheets > 0);
}

/// Takes sheets away that so many cards do not need, the last designs first and partners together; cards that are left.
fn trim(plan: &Plan, index: usize, batch: &mut Batch, cards: u32) -> u32 {
    let gives = |take: &Take| {
        let own = plan.layouts.iter().find(|layout| layout.batch == index && of(layout, take).is_some());
        own.map_or(0, |layout| layout.recipe_counts.iter().sum::<u32>())
    };
    let letter = |take: &Take| plan.project.packs[take.pack].designs[take.design].letter.clone();
    let partners = batch.goal.partners.clone();
    let partner = |one: &str| {
        let pair = partners.iter().find(|(a, b)| a == one || b == one);
        pair.map(|(a, b)| if a == one { b.clone() } else { a.clone() })
    };
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for (at, take) in batch.takes.iter().enumerate() {
        let with = partner(&letter(take));
        let own = |group: &&mut Vec<usize>| with.as_deref().is_some_and(|with| letter(&batch.takes[group[0]]) == with);
        match groups.iter_mut().find(own) {
            Some(group) => group.push(at),
            None => groups.push(vec![at]),
        }
    }
    let mut all: u32 =
        batch.takes.iter().map(|take| take.sheets.saturating_mul(gives(take))).fold(0, u32::saturating_add);
    let mut went_on = true;
    while went_on {
        went_on = false;
        for group in groups.iter().rev() {
            let less: u32 = group.iter().map(|&at| gives(&batch.takes[at])).sum();
            let ready = group.iter().all(|&at| batch.takes[at].sheets > 0);
            if ready && less > 0 && all.saturating_sub(less) >= cards {
                for &at in group {
                    batch.takes[at].sheets -= 1;
                }
                all -= less;
                went_on = true;
            }
        }
    }
    batch.takes.retain(|take| take.sheets > 0);
    all
}

/// Chosen: as many copies as a project file may name.
pub(super) const MOST_SHEETS: u32 = 100_000;

/// How a layout uses the design of a take.
pub(super) fn of<'l>(layout: &'l Layout, take: &Take) -> Option<&'l SheetUse> {
    let own = |used: &&SheetUse| layout.pack == take.pack && used.design == take.design;
    layout.sheets.iter().find(own)
}

fn finished(plan: &Plan, batches: Vec<Batch>, findings: &mut Vec<Finding>) -> Project {
    let mut project = plan.project.clone();
    no_choices(&mut project, findings);
    enough(&mut project, &batches, |_| true, findings);
    put_back(&mut project, batches);
    project
}

/// As many whole packs of each paper of the same kind as the batches take; their price with them.
pub(super) fn enough(
    project: &mut Project,
    batches: &[Batch],
    same: impl Fn(usize) -> bool,
    findings: &mut Vec<Finding>,
) {
    for (index, pack) in project.packs.iter_mut().enumerate().filter(|(index, _)| same(*index)) {
        let packs = |(design, printed): (usize, &Design)| taken(batches, index, design).div_ceil(printed.copies.max(1));
        let packs = pack.designs.iter().enumerate().map(packs).max().unwrap_or(1).max(1);
        if packs == 1 {
            continue;
        }
        for design in &mut pack.designs {
            design.copies = design.copies.max(1).saturating_mul(packs).min(MOST_SHEETS);
        }
        let times = |price: Price| Price { amount: price.amount * rust_decimal::Decimal::from(packs), ..price };
        pack.price = pack.price.take().map(times);
        let sheets: u32 = pack.designs.iter().map(|design| design.copies).fold(0, u32::saturating_add);
        let told = note("replan-more-packs").with("pack", pack.name.as_str()).with("packs", packs);
        findings.push(told.with("sheets", sheets));
    }
}
