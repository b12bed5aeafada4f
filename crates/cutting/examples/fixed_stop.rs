//! Measures how soon the fixed-piece engine answers once it is told to stop, and the most memory it held:
//! `cargo run --release -p cutting --example fixed_stop -- [lines.jsonl …]`; without files, the craft instances.

#![allow(clippy::print_stdout, clippy::disallowed_methods, clippy::disallowed_types, reason = "a measuring program")]

#[path = "../tests/common/fixed_json.rs"]
mod fixed_json;

use std::time::{Duration, Instant};

use cutting::Budget;
use cutting::fixed::solve;
use serde_json::Value;

fn main() {
    let files: Vec<String> = std::env::args().skip(1).collect();
    let mut texts: Vec<String> = files.iter().map(|path| std::fs::read_to_string(path).expect("a file")).collect();
    if texts.is_empty() {
        texts.push(include_str!("../tests/data/craft.jsonl").to_owned());
    }
    let mut waits: Vec<(Duration, String)> = Vec::new();
    for line in texts.iter().flat_map(|text| text.lines()) {
        let json: Value = serde_json::from_str(line).expect("a bench line is JSON");
        let instance = fixed_json::instance(&json, None, true);
        for after in [5, 20, 80, 320].map(Duration::from_millis) {
            let start = Instant::now();
            let stop = || start.elapsed() >= after;
            if solve(&instance, &mut Budget::unlimited().stopped_by(&stop)).is_ok() && start.elapsed() > after {
                waits.push((start.elapsed() - after, format!("{} after {after:?}", json["name"])));
            }
        }
    }
    waits.sort();
    for (wait, name) in waits.iter().rev().take(5) {
        println!("{:.1} ms: {name}", wait.as_secs_f64() * 1e3);
    }
    if let Some((wait, _)) = waits.get(waits.len() / 2) {
        println!("{} stops, median {:.2} ms", waits.len(), wait.as_secs_f64() * 1e3);
    }
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    println!("{}", status.lines().find(|line| line.starts_with("VmHWM")).unwrap_or("most memory: unknown"));
}
