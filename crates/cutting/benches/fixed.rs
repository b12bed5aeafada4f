//! How long the fixed-piece engine takes: every craft instance, the everyday case, a large batch.

#[allow(dead_code, reason = "one of its batches only")]
#[path = "../tests/common/batches.rs"]
mod batches;
#[path = "../tests/common/fixed_json.rs"]
mod fixed_json;

use cutting::Budget;
use cutting::fixed::{Answer, Instance, PieceKind, Question, Rules, SheetKind, solve};

/// Enough to prove most craft cases, few enough to answer while a person waits.
const NODES: u64 = 1_000_000;

fn main() {
    divan::main();
}

fn names() -> impl Iterator<Item = String> {
    let lines = include_str!("../tests/data/craft.jsonl").lines();
    lines.map(|line| json(line)["name"].as_str().expect("a name").to_owned())
}

fn json(line: &str) -> serde_json::Value {
    serde_json::from_str(line).expect("a bench line is JSON")
}

fn run(instance: &Instance) -> Answer {
    solve(instance, &mut Budget::nodes(NODES)).expect("the bench asks proper questions")
}

#[divan::bench(args = names(), sample_count = 5, sample_size = 1)]
fn craft(bencher: divan::Bencher<'_, '_>, name: &str) {
    let all = include_str!("../tests/data/craft.jsonl").lines().map(json);
    let line = all.into_iter().find(|json| json["name"] == name).expect("every name has its line");
    let instance = fixed_json::instance(&line, None, true);
    bencher.bench(|| run(&instance));
}

fn piece((width, height, n): (u32, u32, u32)) -> PieceKind {
    PieceKind { width, height, demand: Some(n), min: 0, value: 0, turn: true }
}

/// 192 bases and 384 mats from Letter at 1/16 in.
#[divan::bench(sample_count = 20)]
fn everyday() -> Answer {
    run(&Instance {
        sheets: vec![SheetKind::whole(136, 176, None, 1)],
        pieces: [(104, 76, 192), (48, 72, 192), (44, 68, 192)].map(piece).to_vec(),
        question: Question::LeastCost,
        rules: Rules::default(),
    })
}

/// 2 000 pieces of 20 sizes from 12 x 12 in at 1/16 in, with nodes enough for the proof.
#[divan::bench(sample_count = 3, sample_size = 1)]
fn two_thousand_pieces() -> Answer {
    solve(&batches::plain(), &mut Budget::nodes(10_000_000)).expect("the bench asks proper questions")
}
