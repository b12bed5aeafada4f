//! How long the work of a batch takes, step by step, from the maker's own timings or the usual ones.

use rust_decimal::Decimal;

use crate::model::Material;
use crate::plan::{Card, PartKind, Plan};

/// One kind of work.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Work {
    /// Its key among the maker's timings.
    pub key: &'static str,
    /// How often it is done.
    pub times: u64,
    /// Minutes each; patterned paper that is cut in pairs takes half.
    pub each: Decimal,
    /// Minutes in all.
    pub minutes: Decimal,
}

/// The work of one batch. A batch that is shared out over kits is prepared, labelled and packed: whoever gets a kit lays
/// ribbon, ties bows and assembles.
pub fn work(plan: &Plan, batch: usize) -> Vec<Work> {
    let timings = &plan.project.trade.minutes;
    let cards: Vec<&Card> = plan.cards.iter().filter(|card| card.batch == batch).collect();
    let kits = plan.batches.get(batch).and_then(|batch| batch.kits);
    let pieces: u64 = plan
        .layouts
        .iter()
        .filter(|layout| layout.batch == batch)
        .map(|layout| {
            let sheets: u64 = layout.sheets.iter().map(|used| u64::from(used.sheets)).sum();
            sheets * layout.pieces.len() as u64
        })
        .sum();
    let (mut mats, mut strips, mut wraps, mut bows, mut plain, mut layered) = (0, 0, 0, 0, 0, 0);
    for card in &cards {
        let recipe = &plan.project.recipes[card.recipe];
        mats += u64::from(recipe.inside.is_some());
        let mut tied = false;
        for part in &card.parts {
            strips += u64::from(recipe.layers[part.layer].greeting().is_some());
            match (&part.kind, &recipe.layers[part.layer].material) {
                (PartKind::Cardstock(_), _) => mats += 1,
                (PartKind::Ribbon(_, bow), Material::Ribbon { .. }) => {
                    wraps += 1;
                    bows += u64::from(*bow);
                    tied |= *bow;
                }
                _ => {}
            }
        }
        if tied { layered += 1 } else { plain += 1 }
    }
    let pairs = if plan.project.trimmer.stack_paper >= 2 { Decimal::TWO } else { Decimal::ONE };
    let bases = cards.len() as u64;
    let mut all = vec![
        ("piece", pieces, timings.piece / pairs),
        ("base", bases, timings.base),
        ("mat", mats, timings.mat),
        ("strip", strips, timings.strip),
    ];
    match kits {
        Some(kits) => {
            all.extend([("label", u64::from(kits), timings.label), ("kit", u64::from(kits), timings.kit)]);
        }
        None => all.extend([
            ("ribbon", wraps, timings.ribbon),
            ("bow", bows, timings.bow),
            ("card", plain, timings.card),
            ("layered", layered, timings.layered),
        ]),
    }
    let work = |(key, times, each): (&'static str, u64, Decimal)| {
        let minutes = each.saturating_mul(Decimal::from(times)).normalize();
        Work { key, times, each: each.normalize(), minutes }
    };
    all.into_iter().filter(|(_, times, _)| *times > 0).map(work).collect()
}

/// Minutes of it all.
pub fn minutes(work: &[Work]) -> Decimal {
    work.iter().fold(Decimal::ZERO, |sum, work| sum.saturating_add(work.minutes))
}
