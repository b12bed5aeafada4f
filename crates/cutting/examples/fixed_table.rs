//! Prints what the fixed-piece engine reaches: `cargo run -p cutting --release --example fixed_table [nodes [part of
//! a name [lines.jsonl known.csv]]]`. Without files, the bench lines that the tests use. Times are of this machine,
//! one run; `<<<` marks a value that is not the best known one, `!!!` one that contradicts it.

#![allow(clippy::print_stdout, clippy::disallowed_methods, clippy::disallowed_types, reason = "a measuring program")]

#[path = "../tests/common/fixed_json.rs"]
mod fixed_json;
#[path = "../tests/common/fixed_recount.rs"]
mod fixed_recount;

use std::collections::HashMap;

use cutting::fixed::solve;
use cutting::{Budget, Outcome};
use serde_json::Value;

fn main() {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let nodes = args.first().and_then(|n| n.parse().ok()).unwrap_or(3_000_000);
    let part = args.get(1).map_or("", String::as_str);
    println!("instance,turn,limited,best known,ours,bound,outcome,nodes,milliseconds");
    if let [_, _, lines, known] = &args[..] {
        let read = |path: &String| std::fs::read_to_string(path).expect("the file can be read");
        table(&read(lines), &read(known), nodes, part);
        return;
    }
    table(include_str!("../tests/data/craft.jsonl"), include_str!("../tests/data/craft_best_known.csv"), nodes, part);
    let (lines, known) =
        (include_str!("../tests/data/bench_small.jsonl"), include_str!("../tests/data/bench_small_best_known.csv"));
    table(lines, known, nodes, part);
}

fn table(lines: &str, known: &str, nodes: u64, part: &str) {
    let name = |j: &Value| format!("{}/{}", j["family"].as_str().unwrap_or(""), j["name"].as_str().unwrap_or(""));
    let all: HashMap<String, Value> = lines
        .lines()
        .map(|line| serde_json::from_str::<Value>(line).expect("a bench line is JSON"))
        .map(|json| (name(&json), json))
        .collect();
    let (mut times, mut equal, mut better, mut proven, mut against) = (Vec::new(), 0, 0, 0, 0);
    for row in known.lines().skip(1).filter(|row| row.contains(part)) {
        let f: Vec<&str> = row.split(',').collect();
        let (Some(json), "free", "yes") = (all.get(f[0]), f[3], f[2]) else { continue };
        let turn = match f[5] {
            "yes" => Some(true),
            "no" => Some(false),
            _ => None,
        };
        let instance = fixed_json::instance(json, turn, f[6] == "yes");
        let start = std::time::Instant::now();
        let answer = match solve(&instance, &mut Budget::nodes(nodes)) {
            Ok(answer) => answer,
            Err(why) => {
                println!("{},{},{},{},refused: {why}", f[0], f[5], f[6], f[7]);
                continue;
            }
        };
        let time = start.elapsed().as_secs_f64() * 1e3;
        times.push(time);
        if !answer.sheets.is_empty() {
            fixed_recount::recount(&instance, &answer, f[0]);
        }
        let grade = match answer.outcome {
            Outcome::Proven => "proven",
            Outcome::Best { .. } => "best",
            Outcome::Impossible { .. } => "impossible",
            Outcome::Unfinished => "unfinished",
        };
        let (best, limit): (Option<u64>, Option<u64>) = (f[7].parse().ok(), f[8].parse().ok());
        let most = f[1].starts_with("max");
        let beats = best.is_some_and(|best| if most { answer.value > best } else { answer.value < best });
        let breaks = limit.is_some_and(|limit| if most { answer.value > limit } else { answer.value < limit })
            || best.is_some_and(|best| if most { answer.bound < best } else { answer.bound > best });
        let mark = match (breaks, best == Some(answer.value)) {
            (true, _) => " !!!",
            (false, true) => "",
            (false, false) => " <<<",
        };
        equal += u32::from(best == Some(answer.value));
        better += u32::from(beats);
        proven += u32::from(grade == "proven");
        against += u32::from(breaks);
        println!(
            "{},{},{},{},{},{},{grade},{},{time:.2}{mark}",
            f[0], f[5], f[6], f[7], answer.value, answer.bound, answer.nodes
        );
    }
    times.sort_by(f64::total_cmp);
    if let (Some(median), Some(worst)) = (times.get(times.len() / 2), times.last()) {
        let rows = times.len();
        println!("{rows} rows: {equal} as best known, {better} better, {proven} proven, {against} against a proof");
        println!("median {median:.2} ms, worst {worst:.2} ms");
    }
}
