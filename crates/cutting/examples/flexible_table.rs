//! Prints the table of the flexible instances: time, grade, waste, settings, how many exist.
//!
//! `cargo run --release -p cutting --example flexible_table [part of a name]`

#![allow(clippy::disallowed_methods, clippy::disallowed_types, reason = "a table of times for a person")]

#[path = "../tests/common/flex_json.rs"]
mod flex_json;

use std::time::Instant;

use cutting::Budget;
use cutting::flexible::{Instance, solve};

#[allow(clippy::print_stdout, reason = "a table for a person")]
fn row(name: &str, instance: &Instance) {
    let started = Instant::now();
    let answer = solve(instance, &mut Budget::nodes(200_000_000)).expect("the bench asks proper questions");
    let time = started.elapsed();
    let first = answer.layouts.first();
    println!(
        "{name:20} {:>10.1} ms  {:28} waste {:>6}  settings {:>3}  exist {:?}  nodes {}",
        time.as_secs_f64() * 1e3,
        format!("{:?}", answer.outcome),
        first.map_or("-".into(), |l| l.waste.to_string()),
        first.map_or("-".into(), |l| l.effort.settings.to_string()),
        answer.exist,
        answer.nodes,
    );
}

/// The most memory this process has held, in MB; the kernel's own figure, 0 where it gives none.
fn most_memory_mb() -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    line.and_then(|line| line.trim().trim_end_matches(" kB").parse::<u64>().ok()).unwrap_or(0) / 1024
}

#[allow(clippy::print_stdout, reason = "a table for a person")]
fn main() {
    let wanted = std::env::args().nth(1).unwrap_or_default();
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/data/flex");
    let mut files: Vec<_> = std::fs::read_dir(folder).expect("the bench").map(|f| f.expect("a file").path()).collect();
    files.sort();
    for unit in [8, 16] {
        for uniform in [true, false] {
            let name = format!("sixteen-{unit}-{}", if uniform { "one" } else { "free" });
            if name.contains(&wanted) {
                row(&name, &flex_json::sixteen(unit, uniform));
            }
        }
    }
    for file in files {
        let (name, instance) = flex_json::instance(&std::fs::read_to_string(file).expect("a file"));
        if name.contains(&wanted) {
            row(&name, &instance);
        }
    }
    println!("most memory held: {} MB", most_memory_mb());
}
