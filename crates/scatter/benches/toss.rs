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

#[divan::bench(sample_count = 3)]
fn half_drop_of_100() -> usize {
    sheet(Some(100), 1.0, Arrangement::HalfDrop)
}
