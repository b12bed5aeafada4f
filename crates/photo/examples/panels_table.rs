//! How well printed panels are found on sheets made from seeds: `panels_table FIRST COUNT [FOLDER]`.
//!
//! Prints precision and recall at several degrees of trouble; with a folder, writes the moderate sheets that went wrong as PPM.
#![allow(clippy::print_stdout, clippy::disallowed_methods, reason = "a command")]
#![allow(clippy::cast_precision_loss, reason = "counts")]

#[path = "../tests/common/collages.rs"]
mod collages;

use collages::{MODERATE, Trouble, collage, right};

fn main() {
    let asked: Vec<String> = std::env::args().skip(1).collect();
    let number = |at: usize, or: u64| asked.get(at).and_then(|text| text.parse().ok()).unwrap_or(or);
    let (first, count) = (number(0, 1), number(1, 20));
    let kinds = [
        ("none", Trouble { noise: 0.5, tilt: 0.0, light: 0.0 }),
        ("moderate", MODERATE),
        ("strong", Trouble { noise: 9.0, tilt: 0.5, light: 0.35 }),
    ];
    for (name, trouble) in kinds {
        let (mut good, mut found, mut all, mut whole) = (0, 0, 0, 0);
        for seed in first..first + count {
            let (picture, truth) = collage(seed, 50, trouble);
            let seen = photo::find_panels(&picture);
            let ok = right(&seen, &truth);
            (good, found, all) = (good + ok, found + seen.len(), all + truth.len());
            whole += u32::from(ok == truth.len() && ok == seen.len());
            if name == "moderate" && (ok < truth.len() || ok < seen.len()) {
                println!("seed {seed}: {ok} right of {} found, {} there", seen.len(), truth.len());
                if let Some(folder) = asked.get(2) {
                    let head = format!("P6 {} {} 255\n", picture.width(), picture.height());
                    let _ = std::fs::write(format!("{folder}/p{seed}.ppm"), [head.as_bytes(), picture.rgb()].concat());
                    println!("   found {seen:.3?}");
                }
            }
        }
        println!(
            "{name} (noise {}, turned up to {}°, light {}): precision {:.3}, recall {:.3}, sheets wholly right {whole} of {count}",
            trouble.noise,
            trouble.tilt,
            trouble.light,
            f64::from(u32::try_from(good).unwrap_or(0)) / found.max(1) as f64,
            good as f64 / all.max(1) as f64
        );
    }
}
