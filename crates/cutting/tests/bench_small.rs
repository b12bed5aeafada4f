//! Source: academic instances of the OR-Datasets collection (Oliveira, Gamboa, Silva 2019, doi
//! `10.33965/ac2019_201912L016`) and generated craft instances, with best known values and their sources in
//! `data/bench_small_best_known.csv` and `data/craft_best_known.csv`. Whole numbers: no tolerance.
//!
//! `data/fixed_known.csv` notes what the engine itself reaches, so that a change for better or worse is seen.

#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/fixed_json.rs"]
mod fixed_json;
#[path = "common/fixed_recount.rs"]
mod fixed_recount;

use cutting::fixed::solve;
use cutting::{Budget, Outcome};
use serde_json::Value;

const NODES: u64 = 4_000_000;

/// Value and bound that the engine is known to reach.
fn known(instance: &str, turn: &str, limited: &str) -> (u64, u64) {
    let rows = include_str!("data/fixed_known.csv").lines().filter(|line| !line.starts_with('#')).skip(1);
    let mut found =
        rows.map(|line| line.split(',').collect::<Vec<_>>()).filter(|f| f[..3] == [instance, turn, limited]);
    let row = found.next().unwrap_or_else(|| panic!("{instance} {turn} {limited} is not in the table"));
    assert!(found.next().is_none(), "{instance} {turn} {limited} is twice in the table");
    (row[3].parse().unwrap(), row[4].parse().unwrap())
}

/// Run every row against the best known values and our own; returns the number of rows.
fn check(lines: &str, best_known: &str) -> usize {
    let all: Vec<Value> = lines.lines().map(|l| serde_json::from_str(l).unwrap()).collect();
    let (mut rows, mut changed) = (0, Vec::new());
    for row in best_known.lines().skip(1) {
        let f: Vec<&str> = row.split(',').collect();
        let named = |j: &&Value| f[0] == format!("{}/{}", j["family"].as_str().unwrap(), j["name"].as_str().unwrap());
        let turn = match f[5] {
            "yes" => Some(true),
            "no" => Some(false),
            _ => None,
        };
        let instance = fixed_json::instance(all.iter().find(named).unwrap(), turn, f[6] == "yes");
        // The best value that is published, and the bound that nothing can pass.
        let (best, limit): (u64, u64) = (f[7].parse().unwrap(), f[8].parse().unwrap());
        let name = format!("{} turn {} limited {}", f[0], f[5], f[6]);
        let answer = solve(&instance, &mut Budget::nodes(NODES)).unwrap();
        assert!(matches!(answer.outcome, Outcome::Proven | Outcome::Best { .. }), "{name}: {:?}", answer.outcome);
        fixed_recount::recount(&instance, &answer, &name);
        let impossible = if f[1] == "max value" {
            answer.value > limit || answer.bound < best
        } else {
            answer.value < limit || answer.bound > best
        };
        assert!(!impossible, "{name}: {} with bound {} against {best}, {limit}", answer.value, answer.bound);
        assert_eq!(answer.outcome == Outcome::Proven, answer.value == answer.bound, "{name}: grade");
        rows += 1;
        let ours = (answer.value, answer.bound);
        let reached = known(f[0], f[5], f[6]).0;
        let passed = if f[1] == "max value" { answer.bound < reached } else { answer.bound > reached };
        assert!(!passed, "{name}: bound {} against {reached}, which was reached", answer.bound);
        if ours != known(f[0], f[5], f[6]) {
            changed.push(format!("{name}: {ours:?} instead of {:?}", known(f[0], f[5], f[6])));
        }
    }
    assert!(changed.is_empty(), "better or worse than noted:\n{}", changed.join("\n"));
    rows
}

#[test]
fn small_instances_are_as_known_and_never_better_than_proven_optima() {
    let rows = check(include_str!("data/bench_small.jsonl"), include_str!("data/bench_small_best_known.csv"));
    assert_eq!(rows, 96);
}

#[test]
fn craft_instances_are_as_known_and_never_better_than_proven_optima() {
    let rows = check(include_str!("data/craft.jsonl"), include_str!("data/craft_best_known.csv"));
    assert_eq!(rows, 30);
}

/// 192 bases and 384 mats from Letter at 1/16 in: an everyday case must be answered at once.
#[test]
fn the_everyday_case_is_proven_at_once() {
    use cutting::fixed::{Instance, PieceKind, Question, Rules, SheetKind};
    let piece = |(width, height, n)| PieceKind { width, height, demand: Some(n), min: 0, value: 0, turn: true };
    // Bases of 3 1/4 x 4 3/4 in that open to 6 1/2 in, mats all of that size, or 1/4 and 1/2 in smaller.
    let same = vec![(104, 76, 192), (52, 76, 384)];
    let smaller = vec![(104, 76, 192), (48, 72, 192), (44, 68, 192)];
    for pieces in [same, smaller] {
        let instance = Instance {
            sheets: vec![SheetKind::whole(136, 176, None, 1)],
            pieces: pieces.into_iter().map(piece).collect(),
            question: Question::LeastCost,
            rules: Rules::default(),
        };
        let answer = solve(&instance, &mut Budget::nodes(300_000)).unwrap();
        fixed_recount::recount(&instance, &answer, "everyday");
        assert_eq!(answer.outcome, Outcome::Proven, "{} with bound {}", answer.value, answer.bound);
    }
}
