//! How far apart the looks at the stop signal are, in nodes; how long that takes is measured by the example `fixed_stop`.
//!
//! Source: none outside; a node stands for ten to fifty nanoseconds (`docs/benchmarks.md`), a stop must be heeded
//! within 50 ms.
#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/batches.rs"]
#[allow(dead_code, reason = "some of its batches only")]
mod batches;
#[path = "common/fixed_json.rs"]
mod fixed_json;

use std::cell::Cell;

use cutting::Budget;
use cutting::fixed::{Instance, PieceKind, Question, Rules, SheetKind, solve};

/// Chosen: some five milliseconds.
const WIDEST: u64 = 200_000;

fn questions() -> Vec<(String, Instance)> {
    let lines = include_str!("data/craft.jsonl").lines().chain(include_str!("data/bench_small.jsonl").lines());
    let mut all: Vec<(String, Instance)> = lines
        .map(|line| serde_json::from_str::<serde_json::Value>(line).unwrap())
        .map(|json| (json["name"].as_str().unwrap().to_owned(), fixed_json::instance(&json, None, true)))
        .collect();
    all.extend(batches::all().into_iter().take(1 + batches::SORTS));
    // A fine grid of some sixteen million cells, and many kinds.
    let piece = |k: u32| PieceKind {
        width: 101 + 7 * k,
        height: 205 - 3 * k,
        demand: Some(9),
        min: 0,
        value: u64::from(90 + k),
        turn: true,
    };
    let sheets = vec![SheetKind::whole(3999, 3999, Some(1), 1)];
    let pieces: Vec<PieceKind> = (0..30).map(piece).collect();
    for question in [Question::LeastCost, Question::MostValue] {
        let (sheets, pieces) = (sheets.clone(), pieces.clone());
        all.push((format!("fine {question:?}"), Instance { sheets, pieces, question, rules: Rules::default() }));
    }
    all
}

#[test]
fn the_looks_at_the_stop_signal_are_close_together() {
    let mut wide = Vec::new();
    for (name, instance) in questions() {
        let mut budget = Budget::nodes(4_000_000);
        solve(&instance, &mut budget).unwrap();
        if budget.widest() > WIDEST {
            wide.push(format!("{name}: {} nodes", budget.widest()));
        }
    }
    assert!(wide.is_empty(), "{}", wide.join("\n"));
}

#[test]
fn once_stopped_a_search_spends_no_more_than_lies_between_two_looks() {
    for (name, instance) in questions().into_iter().step_by(9) {
        for at in [1_u32, 3, 20, 200, 1000] {
            let (looks, after) = (Cell::new(0_u32), Cell::new(0_u32));
            let stop = || {
                looks.set(looks.get() + 1);
                after.set(after.get() + u32::from(looks.get() > at));
                looks.get() >= at
            };
            let mut budget = Budget::nodes(4_000_000).stopped_by(&stop);
            solve(&instance, &mut budget).unwrap();
            assert!(after.get() <= 2, "{name} stopped at look {at}: {} more looks", after.get());
        }
    }
}
