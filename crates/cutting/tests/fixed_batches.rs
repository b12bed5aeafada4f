//! About 2 000 pieces of 20 sizes are within one sheet of the proven bound.
//!
//! Source: the batches are generated (`common/batches.rs`); the bound is the engine's own, which
//! `bench_small.rs` holds against published optima; the pieces are counted and the cuts followed again by
//! `common/fixed_recount.rs`. How long it takes is measured by the example `fixed_batch`.

#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/batches.rs"]
mod batches;
#[path = "common/fixed_recount.rs"]
mod fixed_recount;

use cutting::Budget;
use cutting::fixed::solve;

/// Chosen: a second or so of one core when optimised.
const NODES: u64 = 10_000_000;

#[test]
fn two_thousand_pieces_are_within_one_sheet_of_the_bound() {
    // One of each sort; the example runs all.
    for (name, instance) in batches::all().into_iter().take(1 + batches::SORTS) {
        let pieces: u32 = instance.pieces.iter().filter_map(|p| p.demand).sum();
        assert!(instance.pieces.len() == 20 && (1600..2400).contains(&pieces), "{name}: {pieces} pieces");
        let answer = solve(&instance, &mut Budget::nodes(NODES)).unwrap();
        fixed_recount::recount(&instance, &answer, &name);
        assert!(answer.value - answer.bound <= 1, "{name}: {} with bound {}", answer.value, answer.bound);
    }
}
