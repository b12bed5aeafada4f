//! How well corners are found on photos made from seeds: `corners_table FIRST COUNT [WIDTH] [FOLDER|-] [free]`.
//!
//! The finder is told the sheet's proportion, as the workroom does; with `free` it is not.
//!
//! Prints a line for each photo that went wrong or was doubted, then a table. With a folder, writes the photos that went
//! wrong as PPM, for looking at. Figures in `docs/photo.md` were made with seeds no threshold was chosen on.
#![allow(clippy::print_stdout, clippy::disallowed_methods, clippy::disallowed_types, reason = "a command")]
#![allow(clippy::cast_precision_loss, clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "counts")]

#[path = "../tests/common/mod.rs"]
mod common;

fn main() {
    let asked: Vec<String> = std::env::args().skip(1).collect();
    let number = |at: usize, or: u64| asked.get(at).and_then(|text| text.parse().ok()).unwrap_or(or);
    let (first, count, wide) = (number(0, 1), number(1, 20), usize::try_from(number(2, 1200)).unwrap_or(1200));
    let free = asked.get(4).is_some_and(|word| word == "free");
    let (mut worst, mut spent) = (Vec::new(), Vec::new());
    let (mut missed, mut doubted, mut silent) = (0, 0, 0);
    let mut by_table = std::collections::BTreeMap::<_, (u32, u32)>::new();
    for seed in first..first + count {
        let scene = common::scene(seed, wide);
        let start = std::time::Instant::now();
        let found = photo::find_corners(&scene.photo, (!free).then_some(scene.proportion));
        spent.push(start.elapsed().as_secs_f64() * 1000.0);
        let off = found.as_ref().map(|found| scene.worst(&found.corners));
        let kind = by_table.entry(scene.table).or_default();
        kind.0 += 1;
        let good = off.is_some_and(|off| off <= 1.0);
        kind.1 += u32::from(good);
        missed += u32::from(!good);
        let doubts = found.as_ref().map(|found| found.doubts.clone()).unwrap_or_default();
        doubted += u32::from(good && !doubts.is_empty());
        silent += u32::from(off.is_some_and(|off| off > 1.0) && doubts.is_empty());
        if !good || !doubts.is_empty() {
            let sure = found.map_or(0.0, |found| found.confidence);
            println!(
                "seed {seed}: off {off:.2?} % sure {sure:.2} {doubts:?}; {} on {:?}, {:.0}°",
                scene.paper, scene.table, scene.tilt_deg
            );
            if let Some(folder) = asked.get(3).filter(|folder| *folder != "-") {
                let head = format!("P6 {} {} 255\n", scene.photo.width(), scene.photo.height());
                let _ = std::fs::write(format!("{folder}/{seed}.ppm"), [head.as_bytes(), scene.photo.rgb()].concat());
            }
        }
        worst.extend(off.filter(|off| *off <= 1.0));
    }
    worst.sort_by(f64::total_cmp);
    let at =
        |share: f64| worst.get((worst.len() as f64 * share) as usize).or(worst.last()).copied().unwrap_or(f64::NAN);
    println!(
        "photos {count}, found within 1 % of the side: {:.1} %",
        100.0 * (count as f64 - f64::from(missed)) / count as f64
    );
    println!(
        "worst corner of a found sheet, % of the side: median {:.3}, 95th {:.3}, most {:.3}",
        at(0.5),
        at(0.95),
        at(1.0)
    );
    spent.sort_by(f64::total_cmp);
    println!("milliseconds: median {:.0}, most {:.0}", spent[spent.len() / 2], spent[spent.len() - 1]);
    println!("off by more than 1 % without a warning: {silent}; found well but doubted: {doubted}");
    for (table, (all, good)) in by_table {
        println!("  {table:?}: {good} of {all}");
    }
}
