//! What Octavo answers: layouts, cards, cardstock sheets, counts, costs and findings.
//!
//! A plan is a pure function of the project and the budget.

mod adding;
mod answer;
mod around;
mod batch;
mod borders;
mod checked;
mod choices;
mod collage;
mod costs;
mod counts;
mod fit;
mod grid;
mod groups;
mod handle;
mod laid;
mod look;
mod mix;
mod paper;
mod placed;
mod rescue;
mod sample;
mod shares;
mod shift;
mod short;
mod stamped;
mod stock;
mod why;

pub use adding::{Added, Fresh, added};
pub use answer::{
    Alternative, Card, CardPart, CostLine, CostOf, Costs, Counts, Exist, Layout, LayoutGrade, PartKind, Piece, Plan,
    SheetUse, StockCut, StockPiece, StockPlan, StockSheetPlan,
};
pub use borders::{Border, Borders, DRIFT, Edge, HAND, RISE, RUN, RecipeBorders, RestAdvice};
pub use choices::{refusal, tried};
pub(crate) use costs::{Weights, add_up, weights_each};
pub use costs::{per_card, used_for};
pub(crate) use counts::tape_on;
pub use grid::on_sheet;
pub use handle::{Handle, Holds, handles, lies_on, taken};
pub use laid::{LaidLayer, stands};
pub use placed::{Gain, PrintGain, PrintMap, PrintMaps, Spot, Tally};
pub use rescue::{Fix, Lost, Recut, Rescue, Source, rescue};
pub use sample::{MadeBy, Measured, allowed, compare, made_by};
pub use shares::{BatchKits, BatchShares, CardKind};
pub use shift::{CutLine, Pinned, Shifted, Stays, cut_lines, left_over, pins_for, shift};
pub use why::{WayOut, WhyNot, why};

pub use cutting::Budget;
pub use cutting::flexible::nearest::{Aim, Sort};

use crate::model::{Collage, Project};

/// The whole answer to a project.
///
/// # Shape
/// Pure: the same project and the same budget in nodes give the same plan. Every layout has been checked
/// against what was asked and its steps replayed. What cannot be done is told in the findings; the rest of
/// the plan is still there.
pub fn plan(project: &Project, budget: &mut Budget<'_>) -> Plan {
    plan_on(project, &PrintMaps::new(), budget)
}

/// As [`plan`], with layouts placed on the prints where something is known of them: among the orders in which the cuts of a
/// layout may lie, the one that keeps most of what matters whole.
///
/// # Shape
/// Pure, as [`plan`]. How many cards, pieces, settings and cuts there are does not change. Without maps, only regions that
/// the maker marked are looked at.
pub fn plan_on(project: &Project, maps: &PrintMaps, budget: &mut Budget<'_>) -> Plan {
    let mut findings = Vec::new();
    // Paper decides everything after it, so it may spend most; what it leaves over goes to the cardstock.
    let batches = project.made();
    let for_paper = budget.left() / 4 * 3;
    let layouts = budget.within(for_paper, |part| batch::layouts(project, maps, &batches, part, &mut findings));
    let mut cards = batch::cards(project, &batches, &layouts, &mut findings);
    choices::carry_out(project, &layouts, &mut cards, &mut findings);
    let stocks = stock::stocks(project, &cards, budget, &mut findings);
    let shares = shares::shares(project, &batches, &layouts, &cards, &mut findings);
    let counts = counts::counts(project, &layouts, &cards);
    look::look(project, &layouts, &cards, &mut findings);
    let borders = borders::borders(project, &layouts, &cards, &stocks, &mut findings);
    let backgrounds = stamped::backgrounds(project, &mut findings);
    let costs = costs::costs(project, &layouts, &stocks, &counts, &mut findings);
    // The gravest first; what is said twice is said once.
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.severity));
    let mut told = Vec::new();
    findings.retain(|finding| {
        let fresh = !told.contains(finding);
        if fresh {
            told.push(finding.clone());
        }
        fresh
    });
    Plan {
        project: project.clone(),
        batches,
        backgrounds,
        layouts,
        cards,
        stocks,
        shares,
        borders,
        counts,
        costs,
        findings,
    }
}

/// The layout of one sheet of a pack, cut on its printed lines where it is a collage that can be; `None` if there is none.
pub(crate) fn one_sheet(
    project: &Project,
    pack: usize,
    collage: Option<&Collage>,
    budget: &mut Budget<'_>,
) -> Option<Layout> {
    let untold = &mut Vec::new();
    match collage {
        Some(collage) => collage::lay_out(project, pack, collage, budget, untold),
        None => paper::best(project, pack, true, budget, untold),
    }
}
