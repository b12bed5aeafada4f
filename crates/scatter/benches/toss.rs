//! How long a sheet takes: 400 impressions on 12 × 12 in must come within 300 ms.
#![allow(clippy::unwrap_used, missing_docs, reason = "bench")]

#[path = "../tests/common/mod.rs"]
mod common;

use scatter::{Arrangement, EdgeRule, Placement, Wish, make_room, scatter};

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

/// Nine of 400 impressions dragged, one after the other, each from the sheet as it was set out.
#[divan::bench(sample_count = 3, args = ARRANGED)]
fn nine_dragged((arrangement, edge): (Arrangement, EdgeRule)) -> usize {
    let wish = Wish { count: Some(400), arrangement, edge, ..common::wish(small(), 1.0) };
    let standing = scatter(&wish).unwrap().placements;
    let mut gone = 0;
    for which in (0..200).step_by(23) {
        let target = standing[(which * 7 + 50) % standing.len()];
        let to = Placement { x: target.x + common::length(3.0), y: target.y, ..standing[which] };
        if let Ok(after) = make_room(&wish, &standing, &[], which, to) {
            gone += after.iter().filter(|place| place.is_none()).count();
        }
    }
    gone
}

/// Stamps small enough that 400 go on a foot square in rows too.
fn small() -> Vec<scatter::Motif> {
    vec![
        common::motif(common::leaf(12.0), 1, scatter::Turning::Free),
        common::motif(common::leaf(9.0), 2, scatter::Turning::Free),
        common::motif(common::disc(3.0, 12), 3, scatter::Turning::Free),
    ]
}

/// Every arrangement with 400 impressions at every edge: the numbers of `docs/benchmarks.md`.
#[divan::bench(sample_count = 10, args = ARRANGED)]
fn four_hundred((arrangement, edge): (Arrangement, EdgeRule)) -> usize {
    let wish = Wish { count: Some(400), arrangement, edge, ..common::wish(small(), 1.0) };
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
