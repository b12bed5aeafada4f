//! Layouts round pinned pieces: a layout that keeps the pins by itself stays as it is.
//!
//! Left out on purpose: pins a moved line needs (`shift`).

use cutting::flexible::{self, Answer, Count, Instance, Layout, Refusal};
use cutting::steps::tidy;
use cutting::{Budget, Outcome};

use super::checked;

/// The engine's answer, and where pieces are pinned also what it answers without them.
pub(super) struct Around {
    pub(super) answer: Result<Answer, Refusal>,
    /// Layouts for the same cards that need not keep the pins, best first.
    pub(super) free: Vec<Layout>,
}

/// Solves round the pins.
///
/// The best layout of all that lies as the pins say is the best round them too: a piece that is pinned where it lies
/// changes nothing. Only if the layouts of the free question do not lie so, the question is asked with the pins.
pub(super) fn solve(instance: &Instance, budget: &mut Budget<'_>) -> Around {
    if instance.pins.is_empty() {
        return Around { answer: flexible::solve(instance, budget), free: Vec::new() };
    }
    let free = Instance { pins: Vec::new(), ..instance.clone() };
    let mut part = budget.part(budget.left() / 3);
    let found = flexible::solve(&free, &mut part);
    // What is left of the budget says by itself whether there is more to ask.
    let _ = budget.join(&part);
    let (outcome, layouts) = match found {
        Ok(found) => (found.outcome, found.layouts),
        Err(_) => (Outcome::Unfinished, Vec::new()),
    };
    // Branches lie where a layout without pins has them.
    let keeps = |layout: &Layout| {
        let tree = tidy(&layout.tree, instance.width, instance.height).ok()?;
        checked::sound(instance, &tree, &layout.cards).then(|| Layout { tree, ..layout.clone() })
    };
    let stays = outcome != Outcome::Unfinished;
    let kept: Vec<Layout> = layouts.iter().map_while(keeps).collect();
    let Some(first) = kept.first().filter(|_| stays) else {
        return Around { answer: flexible::solve(instance, budget), free: layouts };
    };
    let alike = kept.iter().filter(|layout| layout.waste == first.waste).count();
    let exist = Count::AtLeast(u64::try_from(alike).unwrap_or(u64::MAX));
    Around { answer: Ok(Answer { outcome, layouts: kept, exist, nodes: part.spent() }), free: layouts }
}
