//! Source: academic instances of the OR-Datasets collection (Oliveira, Gamboa, Silva 2019, doi
//! `10.33965/ac2019_201912L016`) and generated craft instances, with best known values and their sources in
//! `data/bench_small_best_known.csv` and `data/craft_best_known.csv`. Whole numbers: no tolerance.

#![allow(clippy::unwrap_used, reason = "tests")]
#![allow(clippy::print_stdout, reason = "the table of results is what a reader of a failing run wants")]

#[path = "common/fixed_json.rs"]
mod fixed_json;
#[path = "common/fixed_recount.rs"]
mod fixed_recount;

use cutting::fixed::solve;
use cutting::{Budget, Outcome};
use serde_json::Value;

/// Run every row; returns (rows, rows at the best known value, rows proven, rows with their gap).
fn check(lines: &str, known: &str, nodes: u64) -> (usize, usize, usize, Vec<(String, u64, u64)>) {
    let all: Vec<Value> = lines.lines().map(|l| serde_json::from_str(l).unwrap()).collect();
    let (mut rows, mut equal, mut proven, mut gaps) = (0, 0, 0, Vec::new());
    for row in known.lines().skip(1) {
        let f: Vec<&str> = row.split(',').collect();
        let json =
            all.iter().find(|j| f[0] == format!("{}/{}", j["family"].as_str().unwrap(), j["name"].as_str().unwrap()));
        let turn = match f[5] {
            "yes" => Some(true),
            "no" => Some(false),
            _ => None,
        };
        let instance = fixed_json::instance(json.unwrap(), turn, f[6] == "yes");
        let (best, limit): (u64, u64) = (f[7].parse().unwrap(), f[8].parse().unwrap());
        let name = format!("{} turn {} limited {}", f[0], f[5], f[6]);
        let answer = solve(&instance, &mut Budget::nodes(nodes)).unwrap();
        println!("{name}: {} bound {} best {best} nodes {}", answer.value, answer.bound, answer.nodes);
        // An unfinished search claims nothing but its bound; it counts as a gap.
        if answer.outcome == Outcome::Unfinished {
            assert!(f[1] == "max value" || answer.bound <= best, "{name}: bound");
            rows += 1;
            gaps.push((name, 0, best));
            continue;
        }
        assert!(!matches!(answer.outcome, Outcome::Impossible { .. }), "{name}: {:?}", answer.outcome);
        fixed_recount::recount(&instance, &answer, &name);
        let most = f[1] == "max value";
        let impossible = if most {
            answer.value > limit || answer.bound < best
        } else {
            answer.value < limit || answer.bound > best
        };
        assert!(!impossible, "{name}: {} with bound {} against {best}, {limit}", answer.value, answer.bound);
        rows += 1;
        equal += usize::from(answer.value == best);
        proven += usize::from(answer.outcome == Outcome::Proven);
        if answer.value != best {
            gaps.push((name, answer.value, best));
        }
    }
    (rows, equal, proven, gaps)
}

#[test]
fn small_instances_are_never_better_than_proven_optima() {
    let (rows, equal, proven, gaps) =
        check(include_str!("data/bench_small.jsonl"), include_str!("data/bench_small_best_known.csv"), 3_000_000);
    println!("{rows} rows, {equal} equal, {proven} proven; {gaps:?}");
    assert_eq!(rows, 96);
}

#[test]
fn craft_instances_are_near_the_best_known() {
    let (rows, equal, proven, gaps) =
        check(include_str!("data/craft.jsonl"), include_str!("data/craft_best_known.csv"), 3_000_000);
    println!("{rows} rows, {equal} equal, {proven} proven; {gaps:?}");
    assert_eq!(rows, 30);
}
