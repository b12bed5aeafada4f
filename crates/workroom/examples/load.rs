//! Prints how long the pages of the workroom take, what they weigh, and what memory an hour of edits needs:
//!
//!     cargo run --release -p workroom --example load
//!
//! Each page of the demo with 48 and with 192 cards: asked again and again (`again`), and as the first after an edit, with
//! the plan made anew (`edited`); every cut line moved by one to four marks both ways (`drag`); weight as sent, without
//! pictures. A piece taken from each third card: what would come of it on every other card, the two cards as they would be,
//! and the swap kept with the page drawn anew. A stamped background of 400 impressions with sliders moved and impressions dragged (`-- background` or
//! `-- swaps`: only that). Then 600 edits, with every page and its pictures looked at after each fiftieth. In process, without a browser:
//! what the workroom itself takes. Fails if a bar is missed.
#![allow(clippy::disallowed_methods, clippy::print_stdout, clippy::unwrap_used, reason = "a figure for a person")]

use std::process::ExitCode;
use std::time::Instant;

use workroom::web::{Answer, Asked, Method, Room, answer};

const PAGES: [&str; 12] =
    ["", "paper", "cards", "layout", "batch", "cardstock", "supplies", "background", "table", "post", "class", "share"];
const EDITS: usize = 600;

struct Load {
    room: Room,
    missed: Vec<String>,
}

impl Load {
    fn ask(&self, method: Method, address: &str, fields: &[(&str, &str)]) -> Answer {
        let (path, query) = address.split_once('?').unwrap_or((address, ""));
        let pair = |pair: &str| pair.split_once('=').map(|(key, value)| (key.to_owned(), value.to_owned()));
        let query = query.split('&').filter_map(pair).collect();
        let fields = fields.iter().map(|(key, value)| ((*key).to_owned(), value.as_bytes().to_vec())).collect();
        answer(&self.room, &Asked { method, path: path.to_owned(), query, fields, now: 1 })
    }

    fn get(&self, address: &str) -> (f64, Answer) {
        let started = Instant::now();
        let answered = self.ask(Method::Get, address, &[]);
        (started.elapsed().as_secs_f64() * 1e3, answered)
    }

    fn page(project: usize, page: &str) -> String {
        if page.is_empty() { "/".to_owned() } else { format!("/w/{project}/{page}") }
    }

    /// One small edit that was never made before, so that the plan is made anew.
    fn edit(&self, project: usize, number: usize) {
        let shown = String::from_utf8(self.get(&format!("/w/{project}/paper")).1.body).unwrap();
        let seen = shown.split("name=\"seen\" value=\"").nth(1).unwrap().split('"').next().unwrap().to_owned();
        let name = format!("Edited {number} times, {seen}");
        let fields = [("seen", seen.as_str()), ("page", "cards"), ("set:name", name.as_str())];
        let kept = self.ask(Method::Post, &format!("/w/{project}/edit"), &fields);
        assert_eq!(kept.status, 303, "{}", String::from_utf8_lossy(&kept.body));
    }

    /// Addresses of the pictures on a page.
    fn pictures(body: &[u8]) -> Vec<String> {
        let text = String::from_utf8_lossy(body).into_owned();
        let of = |mark: &str| -> Vec<String> {
            text.split(mark).skip(1).filter_map(|rest| rest.split('"').next().map(str::to_owned)).collect()
        };
        let mut all = of("src=\"");
        all.extend(of("image href=\""));
        all.retain(|address| address.starts_with("/w/"));
        all
    }

    fn told(&mut self, name: &str, mut times: Vec<f64>, bar: f64) {
        if times.is_empty() {
            return println!("{name:34} none");
        }
        times.sort_by(f64::total_cmp);
        let at = |share: usize| times[(times.len() * share / 100).min(times.len() - 1)];
        println!("{name:34} p50 {:7.1} ms   p95 {:7.1} ms   ({} times)", at(50), at(95), times.len());
        if at(95) >= bar {
            self.missed.push(format!("{name}: p95 {:.1} ms, bar {bar} ms", at(95)));
        }
    }

    fn pages(&mut self, project: usize, cards: usize) {
        println!("\n{cards} cards");
        for page in PAGES {
            let address = Load::page(project, page);
            let weight = self.get(&address).1.body.len();
            let times = (0..40).map(|_| self.get(&address).0).collect();
            let name = if page.is_empty() { "hand" } else { page };
            self.told(&format!("{name} again, {} kB", weight / 1000), times, 50.0);
            if weight >= 200_000 {
                self.missed.push(format!("{name}: {weight} bytes"));
            }
            let edited: Vec<f64> = (0..12)
                .map(|number| {
                    self.edit(project, number);
                    self.get(&address).0
                })
                .collect();
            self.told(&format!("{name} edited"), edited, 50.0);
        }
    }

    fn end(&self, folder: &std::path::Path) -> ExitCode {
        std::fs::remove_dir_all(folder).unwrap();
        for missed in &self.missed {
            println!("bar missed: {missed}");
        }
        if self.missed.is_empty() { ExitCode::SUCCESS } else { ExitCode::FAILURE }
    }

    fn drags(&mut self, project: usize, cards: usize) {
        // Every line of every layout; a line that may not lie there is told at once, so those that moved are told apart.
        let (mut moved, mut stayed) = (Vec::new(), Vec::new());
        for (layout, line) in (0..9).flat_map(|layout| (0..99).map(move |line| (layout, line))) {
            for marks in [-4, -3, -2, -1, 1, 2, 3, 4] {
                let (time, said) = self.get(&format!("/w/{project}/move?layout={layout}&line={line}&marks={marks}"));
                match String::from_utf8_lossy(&said.body).contains("class=\"said\"") {
                    _ if said.status != 200 => {}
                    true => moved.push(time),
                    false => stayed.push(time),
                }
            }
        }
        self.told(&format!("drag, {cards} cards, solved anew"), moved, 100.0);
        self.told(&format!("drag, {cards} cards, it stays"), stayed, 100.0);
    }

    /// A piece of each third card taken up, laid over two others and let go on one of them.
    fn swaps(&mut self, project: usize, cards: usize) {
        let (mut taken, mut over, mut kept) = (Vec::new(), Vec::new(), Vec::new());
        self.get(&format!("/w/{project}/batch"));
        for card in (1..=cards).step_by(3) {
            let (time, said) = self.get(&format!("/w/{project}/choices?card={card}&layer=band"));
            if said.status != 200 {
                continue;
            }
            taken.push(time);
            let said = String::from_utf8(said.body).unwrap();
            let may: Vec<&str> = said.split("class=\"may\" data-with=\"").skip(1).collect();
            let may: Vec<&str> = may.iter().filter_map(|rest| rest.split('"').next()).collect();
            let shown = String::from_utf8(self.get(&format!("/w/{project}/batch")).1.body).unwrap();
            let seen = shown.split("name=\"seen\" value=\"").nth(1).unwrap().split('"').next().unwrap().to_owned();
            for with in [may.first(), may.last()].into_iter().flatten() {
                let asked = format!("card={card}&layer=band&with={with}");
                let started = Instant::now();
                for of in [&card.to_string(), *with] {
                    let drawn = self.get(&format!("/w/{project}/{seen}/card-{of}.svg?{asked}")).1;
                    assert_eq!(drawn.status, 200);
                }
                over.push(started.elapsed().as_secs_f64() * 1e3);
            }
            let Some(with) = may.get(card % may.len().max(1)) else { continue };
            let card = card.to_string();
            let fields = [("seen", seen.as_str()), ("card", &card), ("layer", "band"), ("with", with)];
            let started = Instant::now();
            let answered = self.ask(Method::Post, &format!("/w/{project}/choices"), &fields);
            assert_eq!(answered.status, 303, "{}", String::from_utf8_lossy(&answered.body));
            self.get(&format!("/w/{project}/batch"));
            kept.push(started.elapsed().as_secs_f64() * 1e3);
        }
        self.told(&format!("swap, {cards} cards, taken up"), taken, 100.0);
        self.told(&format!("swap, {cards} cards, laid over"), over, 100.0);
        self.told(&format!("swap, {cards} cards, let go"), kept, 100.0);
    }

    /// Every handle of every layer by one to four marks both ways: the whole project is planned anew each time.
    fn layers(&mut self, project: usize, cards: usize) {
        let (mut moved, mut stayed) = (Vec::new(), Vec::new());
        for (recipe, layer) in (0..9).flat_map(|recipe| (0..9).map(move |layer| (recipe, layer))) {
            for line in 0..5 {
                for marks in [-4, -2, -1, 1, 2, 4] {
                    let asked =
                        format!("/w/{project}/layers?hold={recipe}-{layer}&line={line}&marks={marks}&down={marks}");
                    let (time, said) = self.get(&asked);
                    match String::from_utf8_lossy(&said.body).contains("class=\"said\"") {
                        _ if said.status != 200 => {}
                        true => moved.push(time),
                        false => stayed.push(time),
                    }
                }
            }
        }
        self.told(&format!("layer, {cards} cards, planned anew"), moved, 100.0);
        self.told(&format!("layer, {cards} cards, it stays"), stayed, 100.0);
    }
}

/// A foot square with 400 impressions in every arrangement and at every edge: sliders of the page Background moved, and
/// impressions dragged.
fn backgrounds(load: &mut Load) {
    const TEXT: &str = include_str!("../../../examples/stamped-background.toml");
    println!();
    // What the example has goes on 245 times: smaller stamps for 400.
    let small = [("\"1 3/4\"", "\"3/4\""), ("size = \"1\"", "size = \"1/2\""), ("\"7/8\"", "\"1/2\"")];
    let small = small.iter().fold(TEXT.to_owned(), |text, (from, to)| text.replacen(from, to, 1));
    let (mut slid, mut dragged) = (Vec::new(), Vec::new());
    for arrangement in ["toss", "grid", "brick", "half-drop", "diagonal"] {
        let mut of = Vec::new();
        for edge in ["run off", "inside", "wrap"] {
            let own = format!("seed = 7\ncount = 400\narrangement = \"{arrangement}\"\nedge = \"{edge}\"");
            let text = small.replacen("seed = 7", &own, 1).replacen("gap = \"1/8\"", "gap = \"1/16\"", 1);
            let made = load.ask(Method::Post, "/new", &[("kind", "file"), ("text", &text)]);
            assert_eq!(made.status, 303, "{}", String::from_utf8_lossy(&made.body));
            let to = made.to.unwrap();
            let project = to.trim_start_matches("/w/").split('/').next().unwrap().to_owned();
            load.get(&format!("/w/{project}/background"));
            for (place, steps) in [
                ("steps:background.0.gap", 0..8),
                ("number:background.0.seed", 1..9),
                ("steps:background.0.stamp.1.size", 12..18),
            ] {
                for step in steps {
                    let (time, said) = load.get(&format!("/w/{project}/stamped?b=0&{place}={step}"));
                    assert!(String::from_utf8_lossy(&said.body).contains("class=\"said\""));
                    of.push(time);
                }
            }
            for number in (1..200).step_by(23) {
                let (time, _) = load.get(&format!("/w/{project}/stamped?b=0&number={number}&x={}&y=300", number * 3));
                dragged.push(time);
            }
        }
        slid.extend(of.iter().copied());
        load.told(&format!("400 stamped, {arrangement}"), of, 100.0);
    }
    load.told("400 stamped, all arrangements", slid, 100.0);
    load.told("400 stamped, one dragged", dragged, 100.0);
}

fn memory(name: &str) -> Option<u64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|line| line.starts_with(name))?;
    Some(line.split_whitespace().nth(1)?.parse::<u64>().ok()? / 1000)
}

fn main() -> ExitCode {
    let folder = std::env::temp_dir().join(format!("octavo-load-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap();
    let room = Room::open(&folder.join("octavo.db"), 1).unwrap();
    let mut load = Load { room, missed: Vec::new() };
    if std::env::args().any(|asked| asked == "swaps") {
        load.swaps(1, 48);
        load.swaps(2, 192);
        return load.end(&folder);
    }
    if std::env::args().any(|asked| asked == "background") {
        backgrounds(&mut load);
        return load.end(&folder);
    }
    let first = load.get("/").0;
    println!("the first page of all, with its plan: {first:.0} ms");
    // Both lie there from the beginning: one sheet of each design, and the whole pack.
    load.pages(1, 48);
    load.pages(2, 192);
    // Cuts are moved in projects without batches: all sheets of the pack cut like the first.
    let text = String::from_utf8(load.get("/w/1/file/project.toml").1.body).unwrap();
    let whole: String =
        text.lines().filter(|line| !line.trim_start().starts_with("use =")).flat_map(|line| [line, "\n"]).collect();
    assert_eq!(load.ask(Method::Post, "/new", &[("kind", "file"), ("text", &whole)]).status, 303);
    println!();
    load.drags(1, 48);
    load.drags(3, 192);
    load.layers(1, 48);
    load.layers(2, 192);
    load.swaps(1, 48);
    load.swaps(2, 192);
    backgrounds(&mut load);
    let started = Instant::now();
    for number in 0..EDITS {
        load.edit(1, number);
        if number % 50 == 0 {
            for page in PAGES {
                let (_, shown) = load.get(&Load::page(1, page));
                for picture in Load::pictures(&shown.body) {
                    load.get(&picture);
                }
            }
        }
    }
    println!(
        "\n{EDITS} edits with every page and picture after each fiftieth: {:.0} s",
        started.elapsed().as_secs_f64()
    );
    if let (Some(now), Some(most)) = (memory("VmRSS"), memory("VmHWM")) {
        println!("memory now {now} MB, most {most} MB");
        if most >= 300 {
            load.missed.push(format!("memory: {most} MB"));
        }
    }
    load.end(&folder)
}
