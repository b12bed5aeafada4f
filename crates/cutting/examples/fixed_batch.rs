//! Measures large batches, 2 000 pieces of 20 sizes: `cargo run --release -p cutting --example fixed_batch --
//! [--nodes N]`; the batches are those of `tests/common/batches.rs`.

#![allow(clippy::print_stdout, clippy::disallowed_methods, clippy::disallowed_types, reason = "a measuring program")]

#[path = "../tests/common/batches.rs"]
mod batches;
#[path = "../tests/common/fixed_recount.rs"]
mod fixed_recount;

use cutting::Budget;
use cutting::fixed::solve;

fn main() {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let after = |flag: &str| args.iter().position(|arg| arg == flag).and_then(|at| args.get(at + 1));
    let nodes: u64 = after("--nodes").map_or(10_000_000, |n| n.parse().expect("a number of nodes"));
    println!("| batch | sheets | bound | nodes | ms |\n|---|---:|---:|---:|---:|");
    for (name, instance) in batches::all() {
        if after("--only").is_some_and(|only| !name.contains(only.as_str())) {
            continue;
        }
        let start = std::time::Instant::now();
        let answer = solve(&instance, &mut Budget::nodes(nodes)).expect("a proper question");
        let ms = start.elapsed().as_secs_f64() * 1e3;
        fixed_recount::recount(&instance, &answer, &name);
        println!("| {name} | {} | {} | {} | {ms:.0} |", answer.value, answer.bound, answer.nodes);
    }
}
