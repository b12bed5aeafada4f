//! Never worse than the best guillotine rule of rectpack, a general-purpose packing library.
//!
//! Source: `docs/rectpack.csv`, written by `scripts/references.py --packing`: the best of its 18 guillotine placement
//! rules in seven orders, without merging of free rectangles. Instances: `bench_small.jsonl` and `craft.jsonl`. Whole
//! numbers: no tolerance. The other rows of the file are compared by `docs/benchmarks.md`; one of them is lost.
#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/fixed_json.rs"]
mod fixed_json;
#[path = "common/fixed_recount.rs"]
mod fixed_recount;

use cutting::Budget;
use cutting::fixed::solve;
use serde_json::Value;

/// Chosen: what a page waits for at most, some tenths of a second.
const NODES: u64 = 1_000_000;

#[test]
fn no_row_of_the_tests_is_worse_than_rectpack() {
    let lines = include_str!("data/bench_small.jsonl").lines().chain(include_str!("data/craft.jsonl").lines());
    let all: Vec<Value> = lines.map(|line| serde_json::from_str(line).unwrap()).collect();
    let named = |j: &Value| format!("{}/{}", j["family"].as_str().unwrap(), j["name"].as_str().unwrap());
    let (mut rows, mut worse, mut better) = (0, Vec::new(), 0);
    for row in include_str!("../../../docs/rectpack.csv").lines().skip(1) {
        let fields: Vec<&str> = row.split(',').collect();
        let Some(json) = all.iter().find(|json| named(json) == fields[0]) else { continue };
        let turn = match fields[1] {
            "yes" => Some(true),
            "no" => Some(false),
            _ => None,
        };
        let instance = fixed_json::instance(json, turn, fields[2] == "yes");
        let found = solve(&instance, &mut Budget::nodes(NODES)).unwrap();
        fixed_recount::recount(&instance, &found, row);
        // Where rectpack places not all pieces it has no figure.
        let Ok(theirs) = fields[4].parse::<u64>() else { continue };
        rows += 1;
        let (lost, won) = match fields[3] {
            "max" => (found.value < theirs, found.value > theirs),
            _ => (found.value > theirs, found.value < theirs),
        };
        better += u32::from(won);
        if lost {
            worse.push(format!("{row}: {}", found.value));
        }
    }
    assert!(worse.is_empty(), "worse than rectpack:\n{}", worse.join("\n"));
    assert!(rows >= 60 && better >= 30, "{rows} rows, {better} better");
}
