//! Stamped backgrounds for other programs.

use cards::Plan;

use super::view::{BackgroundView, ImpressionView, StampUseView};
use crate::wording;

/// Every background of a plan that can be stamped.
pub fn backgrounds(plan: &Plan) -> Vec<BackgroundView> {
    let text = |length| wording::exact(length, plan.project.unit);
    let pairs = plan.project.backgrounds.iter().zip(&plan.backgrounds);
    let made = pairs.filter_map(|(background, laid)| {
        let laid = laid.as_ref()?;
        let name = |stamp: usize| background.motifs.get(stamp).map(|stamp| stamp.name.clone()).unwrap_or_default();
        let impressions = laid.impressions.iter().map(|one| ImpressionView {
            number: one.number,
            stamp: name(one.placed.motif),
            x: text(one.placed.x),
            y: text(one.placed.y),
            turn_deg: one.placed.turn,
            generation: one.generation,
            inside_percent: one.inside_percent,
            locked: one.locked,
        });
        let stamps = laid.stamps.iter().map(|used| StampUseView {
            stamp: name(used.stamp),
            first: used.of_generation[0],
            paler: used.of_generation[1] + used.of_generation[2],
            inkings: used.inkings,
            off_edge: used.off_edge,
        });
        Some(BackgroundView {
            name: background.name.clone(),
            sheet: wording::exact_size(background.sheet, plan.project.unit),
            seed: background.seed,
            closest: laid.closest.map(text),
            cover_percent: laid.cover_percent,
            wished: laid.shortfall.map(|short| short.wished),
            gap_that_would_do: laid.shortfall.and_then(|short| short.gap_that_would_do).map(text),
            stamps: stamps.collect(),
            impressions: impressions.collect(),
        })
    });
    made.collect()
}
