//! Writes the results into the marked part of a document.

use std::collections::BTreeMap;
use std::fmt::Write;
use std::path::Path;

use super::row::Row;

const BEGIN: &str = "<!-- fixed_table: begin, written by `cargo run --release -p cutting --example fixed_table` -->";
const END: &str = "<!-- fixed_table: end -->";

/// Replace what stands between the two marks; both must be there.
pub(crate) fn write(docs: &Path, rows: &[Row]) {
    let text = std::fs::read_to_string(docs).expect("the document can be read");
    let (before, rest) = text.split_once(BEGIN).expect("the document has the first mark");
    let (_, after) = rest.split_once(END).expect("the document has the last mark");
    std::fs::write(docs, format!("{before}{BEGIN}\n\n{}\n{END}{after}", table(rows))).expect("it can be written");
}

/// The machine's processor as the kernel names it.
fn machine() -> String {
    let text = std::fs::read_to_string("/proc/cpuinfo").unwrap_or_default();
    let name =
        text.lines().find_map(|line| line.strip_prefix("model name")).map(|l| l.trim_start_matches([' ', '\t', ':']));
    name.unwrap_or("unknown processor").to_owned()
}

/// Day of the run, by the system's clock.
fn today() -> String {
    let since = std::time::SystemTime::now().duration_since(std::time::UNIX_EPOCH).map_or(0, |d| d.as_secs());
    // Days to a date: Howard Hinnant, chrono-compatible low-level date algorithms (from memory).
    let z = since / 86_400 + 719_468;
    let (era, day) = (z / 146_097, z % 146_097);
    let year = (day - day / 1460 + day / 36_524 - day / 146_096) / 365;
    let day = day - (365 * year + year / 4 - year / 100);
    let shifted = (5 * day + 2) / 153;
    let (month, day) = (if shifted < 10 { shifted + 3 } else { shifted - 9 }, day - (153 * shifted + 2) / 5 + 1);
    format!("{}-{month:02}-{day:02}", era * 400 + year + u64::from(month <= 2))
}

fn table(rows: &[Row]) -> String {
    let mut out = String::new();
    let _ = writeln!(
        out,
        "Written {} on {}, one thread; times are processor seconds, on a machine shared with other builds.\n",
        today(),
        machine()
    );
    out.push_str("| family | cuts | rows | proven by us | as best known | better | short of it | no figure | settled by others | of these as they say | median s | worst s |\n");
    out.push_str("|---|---|---:|---:|---:|---:|---:|---:|---:|---:|---:|---:|\n");
    let mut groups: BTreeMap<(&str, String), Vec<&Row>> = BTreeMap::new();
    for row in rows {
        groups.entry((row.asked.family(), cuts(row))).or_default().push(row);
    }
    for ((family, cuts), rows) in &groups {
        let count = |what: &dyn Fn(&Row) -> bool| rows.iter().filter(|row| what(row)).count();
        let mut times: Vec<f64> = rows.iter().map(|row| row.seconds).collect();
        times.sort_by(f64::total_cmp);
        let _ = writeln!(
            out,
            "| {family} | {cuts} | {} | {} | {} | {} | {} | {} | {} | {} | {:.3} | {:.2} |",
            rows.len(),
            count(&|row| row.grade == "proven"),
            count(&|row| row.asked.best.is_some() && row.asked.best == row.ours),
            count(&Row::better),
            count(&Row::short),
            count(&|row| row.asked.best.is_none()),
            count(&Row::settled),
            count(&|row| row.settled() && row.asked.best == row.ours),
            times[times.len() / 2],
            times.last().copied().unwrap_or_default()
        );
    }
    let against: Vec<&Row> = rows.iter().filter(|row| row.against()).collect();
    let _ = writeln!(out, "\nRows against a proof of others: {}.", against.len());
    rows_of(&mut out, "Against a proof of others", &against);
    rows_of(&mut out, "Short of the best known", &rows.iter().filter(|row| row.short()).collect::<Vec<_>>());
    rows_of(&mut out, "Better than the best known", &rows.iter().filter(|row| row.better()).collect::<Vec<_>>());
    out
}

fn cuts(row: &Row) -> String {
    match (row.asked.stages.as_str(), row.asked.trim.as_str()) {
        ("free", _) => "free".to_owned(),
        (stages, "no") => format!("{stages}-stage exact"),
        (stages, _) => format!("{stages}-stage trim"),
    }
}

fn rows_of(out: &mut String, title: &str, rows: &[&Row]) {
    if rows.is_empty() {
        return;
    }
    let _ = writeln!(out, "\n{title} ({}):\n", rows.len());
    out.push_str(
        "| instance | cuts | turning | limited | best known (bound) | ours | our bound | gap, % | nodes | s |\n",
    );
    out.push_str("|---|---|---|---|---:|---:|---:|---:|---:|---:|\n");
    let number = |n: Option<u64>| n.map_or("-".to_owned(), |n| n.to_string());
    for row in rows {
        let a = &row.asked;
        let known = if row.settled() { number(a.best) } else { format!("{} ({})", number(a.best), number(a.bound)) };
        let _ = writeln!(
            out,
            "| {} | {} | {} | {} | {known} | {} | {} | {:.2} | {} | {:.2} |",
            a.instance,
            cuts(row),
            a.turn,
            a.limited,
            number(row.ours),
            row.our_bound,
            row.gap(),
            row.nodes,
            row.seconds
        );
    }
}
