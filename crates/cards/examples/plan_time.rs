//! Prints how long the card drive takes to plan: `cargo run --release -p cards --example plan_time`.
#![allow(clippy::disallowed_methods, clippy::disallowed_types, clippy::print_stdout, reason = "a figure for a person")]

#[path = "../tests/common/drive.rs"]
mod drive;

use std::time::Instant;

fn main() {
    for copies in [1, 4, 210] {
        let mut project = drive::project();
        for design in &mut project.packs[0].designs {
            (design.copies, design.use_sheets) = (copies, None);
        }
        let started = Instant::now();
        let plan = cards::plan::plan(&project, &mut cutting::Budget::nodes(20_000_000));
        println!("{:6} cards {:8.1} ms", plan.cards.len(), started.elapsed().as_secs_f64() * 1e3);
    }
}
