//! Prints what the fixed-piece engine reaches on the bench lines that the tests use: `cargo run -p cutting
//! --release --example fixed_table [nodes [part of a name]]`. Times are of this machine, one run.

#![allow(clippy::print_stdout, clippy::disallowed_methods, clippy::disallowed_types, reason = "a measuring program")]

#[path = "../tests/common/fixed_json.rs"]
mod fixed_json;
#[path = "../tests/common/fixed_recount.rs"]
mod fixed_recount;

use cutting::Budget;
use cutting::fixed::solve;
use serde_json::Value;

fn main() {
    let part = std::env::args().nth(2).unwrap_or_default();
    let nodes = std::env::args().nth(1).and_then(|n| n.parse().ok()).unwrap_or(3_000_000);
    println!("instance,turn,limited,best known,ours,bound,outcome,nodes,milliseconds");
    table(
        include_str!("../tests/data/craft.jsonl"),
        include_str!("../tests/data/craft_best_known.csv"),
        (nodes, &part),
    );
    table(
        include_str!("../tests/data/bench_small.jsonl"),
        include_str!("../tests/data/bench_small_best_known.csv"),
        (nodes, &part),
    );
}

fn table(lines: &str, known: &str, (nodes, part): (u64, &str)) {
    let all: Vec<Value> = lines.lines().map(|l| serde_json::from_str(l).expect("a bench line is JSON")).collect();
    let mut times = Vec::new();
    for row in known.lines().skip(1).filter(|row| row.contains(part)) {
        let f: Vec<&str> = row.split(',').collect();
        let named =
            |j: &&Value| f[0] == format!("{}/{}", j["family"].as_str().unwrap_or(""), j["name"].as_str().unwrap_or(""));
        let json = all.iter().find(named).expect("every row has its line");
        let turn = match f[5] {
            "yes" => Some(true),
            "no" => Some(false),
            _ => None,
        };
        let instance = fixed_json::instance(json, turn, f[6] == "yes");
        let start = std::time::Instant::now();
        let answer = solve(&instance, &mut Budget::nodes(nodes)).expect("a bench instance is sound");
        let time = start.elapsed().as_secs_f64() * 1e3;
        times.push(time);
        if !answer.sheets.is_empty() {
            fixed_recount::recount(&instance, &answer, f[0]);
        }
        let outcome = format!("{:?}", answer.outcome);
        let outcome = outcome.split([' ', '{']).next().unwrap_or("");
        let mark = if answer.value == f[7].parse::<u64>().unwrap_or(0) { "" } else { " <<<" };
        println!(
            "{},{},{},{},{},{},{outcome},{},{time:.2}{mark}",
            f[0], f[5], f[6], f[7], answer.value, answer.bound, answer.nodes
        );
    }
    times.sort_by(f64::total_cmp);
    if times.is_empty() {
        return;
    }
    println!("median {:.2} ms, worst {:.2} ms", times[times.len() / 2], times[times.len() - 1]);
}
