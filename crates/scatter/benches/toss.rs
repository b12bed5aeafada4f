//! How long a sheet takes: 400 impressions on 12 × 12 in must come within 300 ms.
#![allow(clippy::unwrap_used, missing_docs, reason = "bench")]

#[path = "../tests/common/mod.rs"]
mod common;

use scatter::{Arrangement, EdgeRule, Wish, scatter};

fn main() {
    divan::main();
}

fn sheet(count: Option<u32>, gap: f64, arrangement: Arrangement) -> usize {
    let wish = Wish { count, arrangement, edge: EdgeRule::RunOff, ..common::wish(common::three(), gap) };
    scatter(&wish).unwrap().placements.len()
}

#[divan::bench(sample_count = 10)]
fn toss_of_400() -> usize {
    let placed = sheet(Some(400), 1.5, Arrangement::Toss);
    assert_eq!(placed, 400);
    placed
}

#[divan::bench(sample_count = 10)]
fn full_sheet() -> usize {
    sheet(None, 3.0, Arrangement::Toss)
}

#[divan::bench(sample_count = 3)]
fn ten_thousand_wished() -> usize {
    sheet(Some(10_000), 1.0, Arrangement::Toss)
}

/// Every arrangement with 400 impressions at every edge: the numbers of `docs/benchmarks.md`.
#[divan::bench(sample_count = 10, args = ARRANGED)]
fn four_hundred((arrangement, edge): (Arrangement, EdgeRule)) -> usize {
    // Stamps small enough that 400 go on a foot square in rows too.
    let motifs = vec![
        common::motif(common::leaf(12.0), 1, scatter::Turning::Free),
        common::motif(common::leaf(9.0), 2, scatter::Turning::Free),
        common::motif(common::disc(3.0, 12), 3, scatter::Turning::Free),
    ];
    let wish = Wish { count: Some(400), arrangement, edge, ..common::wish(motifs, 1.0) };
    let placed = scatter(&wish).unwrap().placements.len();
    assert!((300..=400).contains(&placed), "{placed}");
    placed
}

const ARRANGED: [(Arrangement, EdgeRule); 10] = [
    (Arrangement::Toss, EdgeRule::RunOff),
    (Arrangement::Toss, EdgeRule::Wrap),
    (Arrangement::Grid, EdgeRule::RunOff),
    (Arrangement::Grid, EdgeRule::Wrap),
    (Arrangement::Brick, EdgeRule::RunOff),
    (Arrangement::Brick, EdgeRule::Wrap),
    (Arrangement::HalfDrop, EdgeRule::RunOff),
    (Arrangement::HalfDrop, EdgeRule::Wrap),
    (Arrangement::Diagonal, EdgeRule::RunOff),
    (Arrangement::Diagonal, EdgeRule::Wrap),
];
