//! Measures the fixed-piece engine family by family and writes the table of `docs/benchmarks.md`.
//!
//! ```text
//! cargo run --release -p cutting --example fixed_table -- [--nodes N] [--bench DIR] [--results FILE]
//!     [--docs FILE] [--again] [--open] [--proof] [--only NAME …] [family …]
//! ```
//!
//! Every finished row is added to the results file (`docs/fixed_table.csv`) at once; a later run goes on where the
//! last one ended, `--again` measures the named families anew, `--open` those of their rows that are not proven.
//! `--proof` counts the seconds until the proof only, and makes short runs 31 times for their median. Without families:
//! all, the small ones first. Rows of the table are those of `best_known.csv` beside the bench's `data`; where there is
//! no bench, the lines that the tests use. `--docs` writes what the results file holds into the marked part of a
//! document.

#![allow(clippy::print_stdout, clippy::disallowed_methods, clippy::disallowed_types, reason = "a measuring program")]

#[path = "../../tests/common/fixed_json.rs"]
mod fixed_json;
#[path = "../../tests/common/fixed_recount.rs"]
mod fixed_recount;
mod report;
mod row;

use std::collections::HashMap;
use std::io::Write;
use std::path::{Path, PathBuf};

use cutting::fixed::{Answer, Instance, solve};
use cutting::{Budget, Outcome};
use row::{Asked, Row};
use serde_json::Value;

/// Families in the order in which they are measured.
const FAMILIES: [&str; 23] = [
    "craft",
    "gcut",
    "herz",
    "maa",
    "chl",
    "ngcutap",
    "okp",
    "abmr",
    "hr",
    "fhz",
    "csp-c",
    "hifi97u",
    "hifi01u",
    "mp",
    "ma",
    "assort",
    "ht",
    "ht-var",
    "atp",
    "macedo-a",
    "vu",
    "bwmv",
    "bench-small",
];

/// With `--proof` a run shorter than so many seconds is made so many times.
const SHORT: f64 = 0.05;
const REPEATS: usize = 31;

struct Options {
    nodes: u64,
    bench: PathBuf,
    results: PathBuf,
    docs: Option<PathBuf>,
    again: bool,
    /// Measure again what is not proven.
    open: bool,
    /// Seconds until it was proven, without the wishes of a second rank that come after.
    proof: bool,
    /// Only these instances, if any are named.
    only: Vec<String>,
    families: Vec<String>,
}

fn options() -> Options {
    let house = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let mut options = Options {
        nodes: 40_000_000,
        // Beside the project, or beside the place of its worktrees.
        bench: ["../shared/bench", "../../shared/bench"]
            .map(|at| house.join(at))
            .into_iter()
            .find(|at| at.is_dir())
            .unwrap_or_default(),
        results: house.join("docs/fixed_table.csv"),
        docs: None,
        again: false,
        open: false,
        proof: false,
        only: Vec::new(),
        families: Vec::new(),
    };
    let mut args = std::env::args().skip(1);
    while let Some(arg) = args.next() {
        let mut next = || args.next().unwrap_or_else(|| panic!("`{arg}` needs a value"));
        match arg.as_str() {
            "--nodes" => options.nodes = next().parse().expect("a number of nodes"),
            "--bench" => options.bench = next().into(),
            "--results" => options.results = next().into(),
            "--docs" => options.docs = Some(next().into()),
            "--only" => options.only.push(next()),
            "--again" => options.again = true,
            "--open" => options.open = true,
            "--proof" => options.proof = true,
            family => options.families.push(family.to_owned()),
        }
    }
    options
}

fn main() {
    let options = options();
    let mut rows = row::read(&options.results);
    if options.docs.is_none() || !options.families.is_empty() {
        let all = options.families.is_empty();
        for family in FAMILIES.iter().filter(|f| all || options.families.iter().any(|wanted| wanted == *f)) {
            if options.again {
                rows.retain(|row| row.asked.family() != *family);
            }
            let named = |row: &Row| options.only.is_empty() || options.only.contains(&row.asked.instance);
            if options.open {
                rows.retain(|row| row.asked.family() != *family || row.grade == "proven" || !named(row));
            }
            measure(family, &options, &mut rows);
            write(&options.results, &rows);
        }
    }
    if let Some(docs) = &options.docs {
        report::write(docs, &rows);
    }
}

/// The lines of a family and the rows asked of it.
fn asked(family: &str, options: &Options) -> (HashMap<String, Value>, Vec<Asked>) {
    let data = options.bench.join("data");
    let here = data.is_dir();
    let tests = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data");
    let read = |path: PathBuf| std::fs::read_to_string(path).unwrap_or_default();
    let (lines, known) = match family {
        "bench-small" if here => return (HashMap::new(), Vec::new()),
        "bench-small" => (read(tests.join("bench_small.jsonl")), read(tests.join("bench_small_best_known.csv"))),
        "craft" => (read(tests.join("craft.jsonl")), read(tests.join("craft_best_known.csv"))),
        _ if !here => return (HashMap::new(), Vec::new()),
        _ => (read(data.join(format!("{family}.jsonl"))), read(options.bench.join("best_known.csv"))),
    };
    let name = |j: &Value| format!("{}/{}", j["family"].as_str().unwrap_or(""), j["name"].as_str().unwrap_or(""));
    let instances: HashMap<String, Value> = lines
        .lines()
        .map(|line| serde_json::from_str::<Value>(line).expect("a bench line is JSON"))
        .map(|json| (name(&json), json))
        .collect();
    (instances, row::asked(&known))
}

fn measure(family: &str, options: &Options, rows: &mut Vec<Row>) {
    let (instances, asked) = asked(family, options);
    let mut file = std::fs::OpenOptions::new().create(true).append(true).open(&options.results).expect("results");
    for asked in asked {
        let Some(json) = instances.get(&asked.instance) else { continue };
        let named = options.only.is_empty() || options.only.contains(&asked.instance);
        if !named || rows.iter().any(|row| row.asked.same(&asked)) {
            continue;
        }
        let Some(instance) = asked.instance(json) else { continue };
        let run = || timed(&instance, options);
        let (answer, mut seconds) = match run() {
            Ok(first) => first,
            Err(why) => {
                println!("{}: refused: {why}", asked.instance);
                continue;
            }
        };
        // One short run is mostly the machine's noise: the median of many.
        if options.proof && seconds < SHORT {
            let mut times: Vec<f64> = (0..REPEATS).filter_map(|_| Some(run().ok()?.1)).collect();
            times.sort_by(f64::total_cmp);
            seconds = times[times.len() / 2];
        }
        if !answer.sheets.is_empty() {
            fixed_recount::recount(&instance, &answer, &asked.instance);
        }
        let grade = match answer.outcome {
            Outcome::Proven => "proven",
            Outcome::Best { .. } => "best",
            Outcome::Impossible { .. } => "impossible",
            Outcome::Unfinished => "unfinished",
        };
        let row = Row {
            ours: (!answer.sheets.is_empty() || grade == "proven").then_some(answer.value),
            our_bound: answer.bound,
            grade: grade.to_owned(),
            nodes: answer.nodes,
            seconds,
            asked,
        };
        println!("{}{}", row.line(), row.mark());
        writeln!(file, "{}", row.line()).expect("results can be written");
        rows.push(row);
    }
}

/// An answer, and the seconds until it was there; with `--proof` until it was first told that no better one is possible.
fn timed(instance: &Instance, options: &Options) -> Result<(Answer, f64), cutting::fixed::InstanceError> {
    let (start, clock) = (processor_time(), std::time::Instant::now());
    let settled = std::cell::Cell::new(None);
    let told = |now: cutting::Progress| {
        if options.proof && settled.get().is_none() && now.best.is_some() && now.best == now.bound {
            let passed = clock.elapsed().as_secs_f64();
            settled.set(Some((processor_time(), passed)));
        }
    };
    let answer = solve(instance, &mut Budget::nodes(options.nodes).telling(&told))?;
    let passed = clock.elapsed().as_secs_f64();
    let (ended, passed) = settled.get().unwrap_or_else(|| (processor_time(), passed));
    // The kernel counts in ticks, too coarse for short runs.
    Ok((answer, Some(ended - start).filter(|&s| s > 0.05).unwrap_or(passed)))
}

/// Seconds that this thread has run, by the kernel's count; where there is none, since the first call.
fn processor_time() -> f64 {
    static START: std::sync::OnceLock<std::time::Instant> = std::sync::OnceLock::new();
    let counted = std::fs::read_to_string("/proc/thread-self/schedstat").ok();
    let nanoseconds = counted.and_then(|text| text.split_whitespace().next()?.parse::<f64>().ok());
    let wall = || START.get_or_init(std::time::Instant::now).elapsed().as_secs_f64();
    nanoseconds.map_or_else(wall, |n| n / 1e9)
}

/// The whole results file, in the order of families.
fn write(path: &Path, rows: &[Row]) {
    let place = |row: &&Row| FAMILIES.iter().position(|f| *f == row.asked.family()).unwrap_or(usize::MAX);
    let mut sorted: Vec<&Row> = rows.iter().collect();
    sorted.sort_by_key(place);
    let lines: Vec<String> = sorted.iter().map(|row| row.line() + "\n").collect();
    std::fs::write(path, format!("{}\n{}", row::HEAD, lines.concat())).expect("results can be written");
}
