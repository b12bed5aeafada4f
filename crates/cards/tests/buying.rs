//! Whole packs at the least cost, and swaps of colours that save packs.
//!
//! Source: `tests/data/packs.csv` and `swaps.csv`, solved by scipy's mixed-integer programming (`HiGHS`), seeds and version
//! in their heads; besides a brute force that shares no code.
#![allow(clippy::unwrap_used, reason = "tests")]

use cards::buying::{Colour, PackOnSale, cheapest, swap};
use proptest::prelude::*;

fn data(text: &str) -> impl Iterator<Item = Vec<&str>> {
    text.lines().filter(|line| !line.starts_with('#')).skip(1).map(|line| line.split(',').collect())
}

fn numbers(text: &str) -> Vec<u64> {
    text.split(':').map(|number| number.parse().unwrap()).collect()
}

/// Cost and what is left over of an answer, which must cover the need.
fn judged(need: u64, packs: &[PackOnSale], found: &[u64]) -> (u64, u64) {
    let holds: u64 = found.iter().zip(packs).map(|(count, pack)| count * pack.holds).sum();
    assert!(holds >= need, "{found:?} does not cover {need}");
    (found.iter().zip(packs).map(|(count, pack)| count * pack.price).sum(), holds - need)
}

#[test]
fn packs_cost_what_a_general_solver_says() {
    let mut seen = 0;
    for row in data(include_str!("data/packs.csv")) {
        let need = row[0].parse().unwrap();
        let pack = |text: &str| PackOnSale { holds: numbers(text)[0], price: numbers(text)[1] };
        let packs: Vec<PackOnSale> = row[1].split(' ').map(pack).collect();
        let found = cheapest(need, &packs).unwrap();
        assert_eq!(judged(need, &packs, &found), (row[2].parse().unwrap(), row[3].parse().unwrap()), "{row:?}");
        seen += 1;
    }
    assert_eq!(seen, 150);
}

/// Every way to buy at most enough of each kind, tried one by one.
fn tried(need: u64, packs: &[PackOnSale]) -> (u64, u64) {
    let Some((first, rest)) = packs.split_first() else { return (0, 0) };
    if rest.is_empty() {
        let count = need.div_ceil(first.holds);
        return (count * first.price, count * first.holds - need);
    }
    (0..=need.div_ceil(first.holds))
        .map(|count| {
            let covered = count * first.holds;
            if covered >= need {
                return (count * first.price, covered - need);
            }
            let (cost, left) = tried(need - covered, rest);
            (cost + count * first.price, left)
        })
        .min()
        .unwrap()
}

proptest! {
    #[test]
    fn packs_cost_what_trying_all_says(
        need in 1..60_u64,
        packs in proptest::collection::vec((1..20_u64, 0..50_u64), 1..4),
    ) {
        let packs: Vec<PackOnSale> = packs.into_iter().map(|(holds, price)| PackOnSale { holds, price }).collect();
        let found = cheapest(need, &packs).unwrap();
        prop_assert_eq!(judged(need, &packs, &found), tried(need, &packs));
    }

    #[test]
    fn large_needs_are_bought_as_small_ones_and_the_bulk(extra in 0..200_u64) {
        let packs = [PackOnSale { holds: 50, price: 650 }, PackOnSale { holds: 12, price: 170 }];
        let (cost, _) = judged(extra, &packs, &cheapest(extra, &packs).unwrap());
        let need = 1_000_000_000 + extra;
        let (large, _) = judged(need, &packs, &cheapest(need, &packs).unwrap());
        prop_assert_eq!(large, cost + 1_000_000_000 / 50 * 650);
    }
}

#[test]
fn what_cannot_be_bought_is_told() {
    assert_eq!(cheapest(5, &[]), None);
    assert_eq!(cheapest(5, &[PackOnSale { holds: 0, price: 1 }]), None);
    assert_eq!(cheapest(0, &[]), Some(vec![]));
    // Ribbon in ticks: two spools with a common measure of a yard.
    let yard = 36 * 18_288_000;
    let spools = [PackOnSale { holds: 10 * yard, price: 320 }, PackOnSale { holds: 25 * yard, price: 700 }];
    assert_eq!(cheapest(1_536 * 18_288_000, &spools), Some(vec![2, 1]), "42 2/3 yards");
}

#[test]
fn swaps_save_what_a_general_solver_says() {
    let (mut seen, mut saving) = (0, 0);
    for row in data(include_str!("data/swaps.csv")) {
        let colour = |text: &str| {
            let [pieces, pack_gives, price, there] = numbers(text)[..] else { panic!("{text}") };
            Colour { pieces, pack_gives, price, there }
        };
        let colours: Vec<Colour> = row[0].split(' ').map(colour).collect();
        let [now, cost, moved] = [1, 2, 3].map(|at| row[at].parse::<u64>().unwrap());
        seen += 1;
        let Some(found) = swap(&colours) else {
            assert_eq!(cost, now, "{row:?}: a swap would save");
            continue;
        };
        saving += 1;
        assert!(found.cost < now);
        assert_eq!((found.cost, found.moved), (cost, moved), "{row:?}");
        assert_eq!(found.pieces.iter().sum::<u64>(), colours.iter().map(|colour| colour.pieces).sum::<u64>());
        let mut given = 0;
        for ((colour, pieces), packs) in colours.iter().zip(&found.pieces).zip(&found.packs) {
            assert!(*pieces <= packs * colour.pack_gives + colour.there, "{row:?}");
            given += colour.pieces.saturating_sub(*pieces);
        }
        assert_eq!(given, moved);
    }
    assert!(seen == 80 && saving > 15, "{saving}");
}

#[test]
fn six_packs_of_mats_become_four() {
    let colour = |pieces| Colour { pieces, pack_gives: 60, price: 48_000, there: 0 };
    let found = swap(&[colour(64), colour(64), colour(32), colour(32)]).unwrap();
    assert_eq!(found.packs, [1, 1, 1, 1]);
    assert_eq!((found.moved, found.cost), (8, 4 * 48_000));
    assert_eq!(found.pieces, [60, 60, 36, 36]);
}
