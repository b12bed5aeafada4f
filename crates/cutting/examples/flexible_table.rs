//! Prints the table of the flexible instances: time, grade, waste, settings, how many exist.
//!
//! `cargo run --release -p cutting --example flexible_table [part of a name]`

#![allow(clippy::disallowed_methods, clippy::disallowed_types, reason = "a table of times for a person")]

#[path = "../tests/common/flex_json.rs"]
mod flex_json;

use std::time::Instant;

use cutting::Budget;
use cutting::flexible::{Instance, Kind, Recipe, Span, Wish, solve};

#[allow(clippy::print_stdout, reason = "a table for a person")]
fn row(name: &str, instance: &Instance) {
    let started = Instant::now();
    let answer = solve(instance, &mut Budget::nodes(20_000_000)).expect("the bench asks proper questions");
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

/// Thirty pieces in ten kinds on 12 × 12 in at marks of 1/16 in, sides free by 5/16 in: beyond what can be closed.
fn thirty(uniform: bool) -> Instance {
    let sizes = [(3, 4), (2, 4), (4, 2), (2, 3), (3, 2), (2, 2), (1, 4), (4, 1), (1, 3), (2, 1)];
    let kind = |&(w, h): &(u32, u32)| Kind {
        width: Span::new(w * 14 - 2, w * 14 + 3),
        height: Span::new(h * 14 - 2, h * 14 + 3),
        prefer: (w * 14, h * 14),
        step: 1,
        turn: false,
        uniform,
    };
    Instance {
        width: 192,
        height: 192,
        kinds: sizes.iter().map(kind).collect(),
        recipes: vec![Recipe { pieces: vec![1; 10], cards: Span::exactly(3) }],
        cards: Span::exactly(3),
        spares: vec![0; 10],
        pins: Vec::new(),
        wishes: Wish::ORDER.to_vec(),
        alternatives: 3,
    }
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
    for uniform in [true, false] {
        let name = format!("thirty-{}", if uniform { "one" } else { "free" });
        if name.contains(&wanted) {
            row(&name, &thirty(uniform));
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
