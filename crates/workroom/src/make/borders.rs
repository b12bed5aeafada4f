//! What small errors do, as `plan.json` tells it.

use cards::Plan;
use cards::plan::Border;
use measure::Length;

use super::view::{BorderView, BordersView, RestView};
use crate::wording;

/// The borders of a plan.
pub(super) fn show(plan: &Plan) -> BordersView {
    let narrowest = plan.borders.narrowest().map(|(recipe, found)| border(plan, recipe, found));
    let each = |found: &cards::plan::RecipeBorders| {
        found.borders.iter().map(|one| border(plan, found.recipe, one)).collect::<Vec<_>>()
    };
    let rest = |rest: &cards::plan::RestAdvice| RestView {
        layout: rest.layout + 1,
        divides: if rest.upright { "width" } else { "height" },
        cuts: rest.cuts,
        on: rest.on.clone(),
        better: rest.better.clone(),
    };
    BordersView {
        narrowest,
        borders: plan.borders.recipes.iter().flat_map(each).collect(),
        rests: plan.borders.rests.iter().map(rest).collect(),
    }
}

fn border(plan: &Plan, recipe: usize, border: &Border) -> BorderView {
    let recipe = &plan.project.recipes[recipe];
    let text = |length: Length| wording::exact(length, plan.project.unit);
    let name = |layer: usize| recipe.layers[layer].name.clone();
    BorderView {
        recipe: recipe.name.clone(),
        layer: name(border.layer),
        on: border.on.map(name),
        edge: border.edge.name(),
        card: border.card,
        planned: text(border.planned),
        by_cuts: text(border.by_cuts),
        by_stop_wide: text(border.by_stop_wide),
        by_stop: text(border.by_stop),
        by_placing: text(border.by_placing),
        by_square: text(border.by_square),
        by_drift: text(border.by_drift),
        together: text(border.together),
        drawn: border.share.map(|share| share.draws),
        under_half: border.share.map(|share| share.under_half),
        worst_twentieth: border.share.map(|share| text(Length::from_ticks(share.worst_twentieth))),
    }
}
