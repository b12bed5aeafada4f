//! Prints how long every move of every cut line of the card drive takes, both ways, one to four marks:
//! `cargo run --release -p cards --example shift_time`.
#![allow(clippy::disallowed_methods, clippy::disallowed_types, clippy::print_stdout, reason = "a figure for a person")]

#[path = "../tests/common/drive.rs"]
mod drive;

use std::time::Instant;

use cards::plan::{Budget, cut_lines, pins_for, shift};
use measure::Length;

fn main() {
    let plan = cards::plan::plan(&drive::project(), &mut Budget::nodes(20_000_000));
    let lines = cut_lines(&plan.layouts[0]);
    let mut times = Vec::new();
    for (index, line) in lines.iter().enumerate() {
        for marks in [-4_i64, -3, -2, -1, 1, 2, 3, 4] {
            let to = line.at + Length::from_ticks(Length::INCH.ticks() / 8 * marks);
            let started = Instant::now();
            let found = shift(&plan, 0, index, to, line.from, &mut Budget::nodes(400_000));
            let took = started.elapsed().as_secs_f64() * 1e3;
            let said = found.map_or_else(
                |stays| format!("{stays:?}"),
                |found| {
                    format!(
                        "waste {}, {} pins",
                        found.layout.waste / i128::from(plan.layouts[0].step.ticks()).pow(2),
                        found.pins.len()
                    )
                },
            );
            println!("line {index} {:?} {marks:+}: {took:7.1} ms  {said}", line.axis);
            times.push(took);
        }
    }
    times.sort_by(f64::total_cmp);
    println!("worst {:.1} ms of {}", times[times.len() - 1], times.len());
    for other in &plan.layouts[0].alternatives {
        let started = Instant::now();
        let pins = pins_for(&plan, 0, other, &mut Budget::nodes(20_000_000));
        println!("take: {:.1} ms, {} pins", started.elapsed().as_secs_f64() * 1e3, pins.map_or(0, |pins| pins.len()));
    }
}
