//! How long the flexible engine takes: sixteen pieces in four kinds on 12 x 12 in, on two grids, of one size and free.

#[path = "../tests/common/flex_json.rs"]
mod flex_json;

use cutting::Budget;
use cutting::flexible::{Answer, solve};

fn main() {
    divan::main();
}

/// Steps to the inch, and whether all copies share one size.
const CASES: [(u32, bool); 4] = [(8, true), (8, false), (16, true), (16, false)];

#[divan::bench(args = CASES, sample_count = 5, sample_size = 1)]
fn sixteen(case: (u32, bool)) -> Answer {
    let (unit, uniform) = case;
    solve(&flex_json::sixteen(unit, uniform), &mut Budget::nodes(200_000_000)).expect("the bench asks proper questions")
}

/// A recipe written by hand, not made to come out without waste.
#[divan::bench(sample_count = 5, sample_size = 1)]
fn recipe() -> Answer {
    let (_, instance) = flex_json::instance(include_str!("../tests/data/flex/flex-19-recipe.json"));
    solve(&instance, &mut Budget::nodes(200_000_000)).expect("the bench asks proper questions")
}
