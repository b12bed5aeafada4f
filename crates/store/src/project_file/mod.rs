//! Project files: reading a whole [`Project`], or every mistake in it at once; and writing one.
//!
//! `docs/project-file.md` says what a maker can write. A project that comes out of here has no dangling
//! index, no empty list where one is needed and no range upside down.
//!
//! | module | holds |
//! |---|---|
//! | `form` | every table and key there is |
//! | `desk` | values with their places, problems found so far |
//! | `names` | known names, lists of the maker's own names |
//! | `background` | stamped backgrounds: their keys, and the walk through them |
//! | `paper`, `supplies`, `recipe`, `goal`, `trade` | the walk through the file |
//! | `problem` | what can be wrong |
//! | `write` | the way back: a project as a file |

mod background;
mod desk;
mod form;
mod goal;
mod names;
mod paper;
mod problem;
mod recipe;
mod schema;
mod supplies;
mod trade;
mod write;

use cards::Project;
use cards::model::{Envelope, Greeting, Placing, Ribbon, Stamp, Trimmer};
use measure::{Length, Mark, Size, Unit};
use toml::de::{DeTable, DeValue};

use desk::{Bounds, Desk, Table, Value};
use form::{ENVELOPE, PROJECT, UNITS};
use names::{Catalogue, Own};
pub use problem::{Problem, ProblemKind};
pub use schema::schema;
pub use write::write;

/// The largest file that is read, in bytes. Chosen: the longest project we could think of is a tenth of it.
pub const MOST_BYTES: usize = 1 << 20;

/// The prints a face can name under `drawn`; `drawing` draws them.
pub const DRAWN: &[&str] = form::DRAWN;

/// Reads a project file as it lies on disk. A byte order mark at its start is passed over.
///
/// # Errors
/// As [`read`]; besides a file that is larger than [`MOST_BYTES`] or not UTF-8.
pub fn read_bytes(bytes: &[u8]) -> Result<Project, Vec<Problem>> {
    let alone = |line, column, kind| Err(vec![Problem { line, column, path: String::new(), unit: Unit::Inch, kind }]);
    if bytes.len() > MOST_BYTES {
        return alone(1, 1, ProblemKind::TooLargeFile { bytes: bytes.len(), most: MOST_BYTES });
    }
    match std::str::from_utf8(bytes) {
        Ok(text) => read(text),
        Err(why) => {
            let good = String::from_utf8_lossy(&bytes[..why.valid_up_to()]);
            let last = good.rsplit('\n').next().map_or(0, |line| line.chars().count());
            alone(good.matches('\n').count() + 1, last + 1, ProblemKind::NotUtf8)
        }
    }
}

/// Reads a project file.
///
/// # Errors
/// Every mistake that can be seen, in the order of their lines. Where the text is not TOML, only that and
/// the mistakes that concern one value alone: what is missing cannot be told in a broken file.
///
/// # Examples
/// ```
/// let problems = store::project_file::read("nmae = \"Mine\"").unwrap_err();
/// assert_eq!(problems[0].line, 1);
/// assert!(problems.iter().any(|problem| problem.code() == "unknown-key"));
/// ```
pub fn read(text: &str) -> Result<Project, Vec<Problem>> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut desk = Desk::new(text);
    if text.len() > MOST_BYTES {
        desk.report(0, "", ProblemKind::TooLargeFile { bytes: text.len(), most: MOST_BYTES });
        return Err(desk.problems);
    }
    let (root, errors) = DeTable::parse_recoverable(text);
    let empty = errors.is_empty() && root.get_ref().is_empty();
    if empty {
        desk.report(0, "", ProblemKind::EmptyFile);
        return Err(desk.problems);
    }
    let project = project(&mut desk, root.get_ref());
    if !errors.is_empty() {
        desk.problems.retain(|problem| problem.kind.is_local());
    }
    syntax(&mut desk, errors);
    if desk.problems.is_empty() {
        return Ok(project);
    }
    desk.problems.sort_by(|a, b| (a.line, a.column, &a.path).cmp(&(b.line, b.column, &b.path)));
    Err(desk.problems)
}

/// Reports where the text is not TOML, without the echoes of a slip.
fn syntax(desk: &mut Desk, errors: Vec<toml::de::Error>) {
    let place = |error: toml::de::Error| (error.span().map_or(0, |span| span.start), error.message().to_owned());
    let mut errors: Vec<(usize, String)> = errors.into_iter().map(place).collect();
    errors.sort();
    let mut last_line = 0;
    for (at, message) in errors {
        let line = desk.line(at);
        // One slip often trips the reader of TOML several times on its line.
        if line == last_line {
            continue;
        }
        last_line = line;
        // A line that should go on a list or table above it: a bracket was left open, and every line after
        // this one is wrong for the same reason.
        let left_open = message.contains("expected `,`") && desk.starts_line(at);
        desk.report(at, "", ProblemKind::Syntax { message });
        if left_open {
            return;
        }
    }
}

/// The whole file. Beside a problem, what it gives is a stand-in.
fn project(desk: &mut Desk, entries: &DeTable<'_>) -> Project {
    let root = desk.open(entries, 0, "", &PROJECT);
    // The unit first: it decides what every bare number means.
    if let Some(1) = root.find("unit").and_then(|value| desk.choice(&value, UNITS)) {
        desk.unit = Unit::Millimetre;
    }
    let name = root.need(desk, "name").and_then(|value| desk.text(&value)).unwrap_or_default();
    let maker = root.text(desk, "maker");
    let date = root.find("date").and_then(|value| desk.date(&value));
    let mark = mark(desk, &root);
    desk.currency = root.find("currency").and_then(|value| paper::currency(desk, &value)).unwrap_or_default();
    desk.priced_on = root.find("priced_on").and_then(|value| desk.date(&value));
    let trimmer = trimmer(desk, &root);
    let placing = match root.choice(desk, "placing") {
        Some(1) => Placing::Each,
        Some(2) => Placing::Plain,
        _ => Placing::Alike,
    };

    let mut letters = Own::new("letter");
    let mut stamped_papers = Own::new("background");
    let backgrounds = background::backgrounds(desk, &root, &mut stamped_papers);
    desk.backgrounds = stamped_papers;
    let mut packs = paper::packs(desk, &root, &mut letters);
    let mut stocks = Own::new("cardstock");
    let cardstocks = paper::cardstocks(desk, &root, &mut stocks);
    let mut spools = Own::new("ribbon");
    let ribbons = ribbons(desk, &root, &mut spools);
    let mut stamped = Own::new("greeting");
    let greetings = greetings(desk, &root, &mut stamped);
    let supplies = supplies::supplies(desk, &root);
    let envelope = root.find("envelope").and_then(|value| envelope(desk, &value));

    let used = packs.iter().flat_map(|pack| &pack.designs).filter(|design| design.use_sheets != Some(0));
    let used: Vec<String> = used.map(|design| design.letter.clone()).collect();
    let shelf =
        recipe::Shelf { mark, used: &used, letters: &letters, stocks: &stocks, spools: &spools, stamped: &stamped };
    let mut named = Own::new("recipe");
    let recipes = recipe::recipes(desk, &root, &shelf, &mut named);
    paper::settle_regions(desk, &mut packs, &recipes);
    if root.find("pack").is_none() && root.find("loose").is_none() && recipes.iter().any(recipe::wants_paper) {
        root.blame_key(desk, "pack", ProblemKind::MissingKey { key: "pack", wanted: "tables" });
    }
    let meeting = goal::meeting(desk, &root, &letters);
    let goal = goal::goal(desk, &root, &letters, &named, &recipes);
    let batches = goal::batches(desk, &root, &letters, &named, &packs, &recipes);
    let choices = goal::choices(desk, &root, &recipes, &stocks);
    let trade = trade::trade(desk, &root, &batches, &cardstocks, &ribbons, &supplies);
    Project {
        name,
        maker,
        date,
        unit: desk.unit,
        mark,
        trimmer,
        placing,
        packs,
        backgrounds,
        cardstocks,
        ribbons,
        greetings,
        supplies,
        envelope,
        recipes,
        meeting,
        goal,
        batches,
        choices,
        trade,
    }
}

/// The finest mark the maker cuts to.
fn mark(desk: &mut Desk, root: &Table<'_>) -> Mark {
    let usual = Mark::usual(desk.unit);
    let Some(value) = root.find("mark") else { return usual };
    let Some(step) = desk.length(&value, Bounds::Thin) else { return usual };
    Mark::from_step(step).unwrap_or_else(|| {
        let known = Mark::ALL.into_iter().map(|mark| measure::write_exact_in(mark.step(), mark.unit())).collect();
        desk.blame(&value, ProblemKind::BadMark { found: step, known });
        usual
    })
}

/// What the trimmer can do.
fn trimmer(desk: &mut Desk, root: &Table<'_>) -> Trimmer {
    let mut trimmer = Trimmer::usual(desk.unit);
    let Some(table) = root.table(desk, "trimmer") else { return trimmer };
    if let Some(length) = table.length(desk, "longest_cut", Bounds::Piece) {
        trimmer.longest_cut = length;
    }
    if let Some(length) = table.length(desk, "smallest_strip", Bounds::FromNothing) {
        trimmer.smallest_strip = length;
    }
    if let Some(sheets) = table.count(desk, "stack_paper") {
        trimmer.stack_paper = sheets;
    }
    if let Some(sheets) = table.count(desk, "stack_cardstock") {
        trimmer.stack_cardstock = sheets;
    }
    trimmer
}

fn ribbons(desk: &mut Desk, root: &Table<'_>, own: &mut Own) -> Vec<Ribbon> {
    let tables = root.rows(desk, "ribbon");
    let read = |table: Table<'_>| Ribbon {
        name: own.name(desk, &table, "name"),
        color: table.need(desk, "color").and_then(|value| desk.color(&value)).unwrap_or_default(),
        width: table.needed_length(desk, "width", Bounds::Piece),
        thickness_um: table.length(desk, "thickness", Bounds::Thin).and_then(paper::micrometres),
        spool: table.length(desk, "spool", Bounds::Spool),
        price: paper::price(desk, &table, "price"),
    };
    tables.into_iter().map(read).collect()
}

fn greetings(desk: &mut Desk, root: &Table<'_>, own: &mut Own) -> Vec<Greeting> {
    let tables = root.rows(desk, "greeting");
    let read = |table: Table<'_>| {
        let words = own.name(desk, &table, "words");
        let inked = table.needed_size(desk, "inked", Catalogue::Nothing);
        let ink = table.find("ink").and_then(|value| desk.color(&value)).unwrap_or_else(|| "#333333".to_owned());
        let stamp = table.table(desk, "stamp").map(|stamp| read_stamp(desk, &stamp, inked));
        let mark = background::mark(desk, &table);
        let balanced = table.choice(desk, "middle") == Some(1);
        if balanced && mark.is_none() {
            table.blame_key(desk, "middle", ProblemKind::WeightWithoutMark);
        }
        Greeting { words, inked, ink, stamp, mark, balanced }
    };
    tables.into_iter().map(read).collect()
}

/// The stamp of a greeting: what is not said of it is half of what the ink leaves free.
fn read_stamp(desk: &mut Desk, table: &Table<'_>, inked: Size) -> Stamp {
    let size = table.needed_size(desk, "size", Catalogue::Nothing);
    let half = |free: Length| Length::from_ticks(free.ticks().div_euclid(2));
    let left = table.length(desk, "left", Bounds::FromNothing).unwrap_or_else(|| half(size.width - inked.width));
    let top = table.length(desk, "top", Bounds::FromNothing).unwrap_or_else(|| half(size.height - inked.height));
    let beyond = left < Length::ZERO
        || top < Length::ZERO
        || left + inked.width > size.width
        || top + inked.height > size.height;
    if beyond {
        table.blame_key(desk, "size", ProblemKind::InkBeyondStamp { inked, stamp: size });
    }
    Stamp { size, left, top }
}

/// A name, a size, or a table with both. Without a name of its own it is called as it is written.
fn envelope(desk: &mut Desk, value: &Value<'_>) -> Option<Envelope> {
    let (name, size) = if let DeValue::Table(_) = value.inner {
        let table = desk.table(value, &ENVELOPE)?;
        (table.text(desk, "name"), table.need(desk, "size")?)
    } else {
        (None, value.clone())
    };
    let found: Size = desk.size(&size, Catalogue::Envelopes)?;
    let name = name.or_else(|| size.inner.as_str().map(|text| text.trim().to_owned())).unwrap_or_default();
    Some(Envelope { name, size: found })
}
