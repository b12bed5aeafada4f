//! The shelf as a table for a spreadsheet (CSV), and back.
//!
//! Read are UTF-8 with or without a mark, UTF-16 with one, and Windows-1252; commas, semicolons or tabs between cells;
//! decimal points or commas. Written is UTF-8 with a mark, and commas and points or semicolons and decimal commas, as
//! spreadsheets of the maker's language read it. A cell that a spreadsheet would take for a
//! formula is written with an apostrophe before it, which reading takes off again.
//!
//! # Source
//! RFC 4180 for the quoting; the Unicode standard for marks and UTF-16; windows-1252 as the WHATWG encoding standard has it.

use rust_decimal::Decimal;

use super::{Item, KINDS, UNITS, is_color, is_currency};

/// The columns, in the order in which they are written. The first four are needed.
pub const COLUMNS: [&str; 10] =
    ["kind", "name", "amount", "unit", "price", "buys", "currency", "priced_on", "place", "color"];
/// Columns that cannot be left out.
const NEEDED: usize = 4;
/// Most bytes that are read. Chosen: a shelf of ten thousand things.
pub const MOST_BYTES: usize = 4 << 20;
/// Most items that are read.
const MOST_ITEMS: usize = 10_000;

/// One mistake in a table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TableProblem {
    /// Line, from 1; the heads are line 1.
    pub line: u64,
    /// Number of the column, from 1; 0 for the line as a whole.
    pub column: usize,
    /// Its head, as the table has it.
    pub head: String,
    /// What stands there.
    pub found: String,
    /// What is wrong: the message file words it under `shelf-problem-<code>`.
    pub code: &'static str,
    /// What could stand there, if that can be listed.
    pub known: String,
}

/// Reads a table of items.
///
/// # Errors
/// Every mistake, line by line.
pub fn read(bytes: &[u8]) -> Result<Vec<Item>, Vec<TableProblem>> {
    let alone = |code, found: &str| {
        let known = COLUMNS.join(", ");
        Err(vec![TableProblem { line: 1, column: 0, head: String::new(), found: found.to_owned(), code, known }])
    };
    if bytes.len() > MOST_BYTES {
        return alone("too-large", "");
    }
    let Some(text) = decoded(bytes) else { return alone("not-text", "") };
    let Some(first) = text.lines().find(|line| !line.trim().is_empty()) else { return alone("empty", "") };
    let between = [';', '\t', ','].into_iter().max_by_key(|sign| first.matches(*sign).count()).unwrap_or(',');
    let mut reader = csv::ReaderBuilder::new()
        .delimiter(u8::try_from(between).unwrap_or(b','))
        .flexible(true)
        .trim(csv::Trim::All)
        .from_reader(text.as_bytes());
    let heads: Vec<String> = match reader.headers() {
        Ok(heads) => heads.iter().map(|head| head.trim().to_lowercase()).collect(),
        Err(_) => return alone("not-a-table", first),
    };
    let place = |column: &str| heads.iter().position(|head| head == column);
    if let Some(missing) = COLUMNS[..NEEDED].iter().find(|column| place(column).is_none()) {
        return alone("no-column", missing);
    }
    let mut reading = Reading { heads: heads.clone(), problems: Vec::new() };
    for (at, head) in heads.iter().enumerate() {
        if !COLUMNS.contains(&head.as_str()) {
            reading.blame(1, at, head, "unknown-column", &COLUMNS);
        }
    }
    let mut items: Vec<Item> = Vec::new();
    for (index, record) in reader.records().enumerate() {
        let Ok(record) = record else {
            reading.whole(0, "not-a-table");
            break;
        };
        let line = record.position().map_or(0, csv::Position::line);
        if record.iter().all(str::is_empty) {
            continue;
        }
        if index >= MOST_ITEMS {
            reading.whole(line, "too-many");
            break;
        }
        if record.len() > heads.len() {
            reading.whole(line, "too-wide");
            continue;
        }
        let cell = |column: &str| {
            let text = place(column).and_then(|at| record.get(at)).unwrap_or_default();
            unguarded(text).to_owned()
        };
        let Some(item) = reading.item(line, &cell, &place) else { continue };
        if items.iter().any(|other| other.is_alike(&item.kind, &item.name)) {
            reading.blame(line, place("name").unwrap_or(0), &item.name, "twice", &[]);
            continue;
        }
        items.push(item);
    }
    if reading.problems.is_empty() { Ok(items) } else { Err(reading.problems) }
}

struct Reading {
    heads: Vec<String>,
    problems: Vec<TableProblem>,
}

impl Reading {
    fn blame(&mut self, line: u64, at: usize, found: &str, code: &'static str, known: &[&str]) {
        let head = self.heads.get(at).cloned().unwrap_or_default();
        let (column, known) = (at + 1, known.join(", "));
        self.problems.push(TableProblem { line, column, head, found: found.to_owned(), code, known });
    }

    fn whole(&mut self, line: u64, code: &'static str) {
        let (head, found, known) = (String::new(), String::new(), String::new());
        self.problems.push(TableProblem { line, column: 0, head, found, code, known });
    }

    fn item(
        &mut self,
        line: u64,
        cell: &dyn Fn(&str) -> String,
        place: &dyn Fn(&str) -> Option<usize>,
    ) -> Option<Item> {
        let before = self.problems.len();
        let at = |column: &str| place(column).unwrap_or(0);
        let kind = cell("kind").to_lowercase();
        if !KINDS.contains(&kind.as_str()) {
            self.blame(line, at("kind"), &kind, "kind", &KINDS);
        }
        let unit = cell("unit").to_lowercase();
        if !UNITS.contains(&unit.as_str()) {
            self.blame(line, at("unit"), &unit, "unit", &UNITS);
        }
        let name = cell("name");
        if name.is_empty() || name.chars().count() > 200 || name.chars().any(char::is_control) {
            self.blame(line, at("name"), &name, "name", &[]);
        }
        let amount = self.number(line, at("amount"), &cell("amount"), true).unwrap_or_default();
        let price = self.number(line, at("price"), &cell("price"), false);
        let buys = self.number(line, at("buys"), &cell("buys"), false);
        if buys.is_some_and(|buys| buys.is_zero()) {
            self.blame(line, at("buys"), &cell("buys"), "nothing", &[]);
        }
        let currency = cell("currency").to_uppercase();
        if !currency.is_empty() && !is_currency(&currency) {
            self.blame(line, at("currency"), &cell("currency"), "currency", &[]);
        }
        let priced_on = Some(cell("priced_on")).filter(|day| !day.is_empty());
        if let Some(day) = priced_on.as_ref().filter(|day| cards::days::Day::parse(day).is_none()) {
            self.blame(line, at("priced_on"), day, "day", &[]);
        }
        let color = cell("color").to_lowercase();
        if !color.is_empty() && !is_color(&color) {
            self.blame(line, at("color"), &cell("color"), "color", &[]);
        }
        let place = cell("place");
        (self.problems.len() == before).then_some(Item {
            kind,
            name,
            amount,
            unit,
            price,
            buys,
            currency,
            priced_on,
            place,
            color,
        })
    }

    fn number(&mut self, line: u64, at: usize, text: &str, needed: bool) -> Option<Decimal> {
        if text.is_empty() {
            if needed {
                self.blame(line, at, text, "no-number", &[]);
            }
            return None;
        }
        match number(text) {
            Ok(number) => Some(number),
            Err(code) => {
                self.blame(line, at, text, code, &[]);
                None
            }
        }
    }
}

/// A number with a decimal point or a decimal comma.
///
/// # Errors
/// The code of what is wrong. A comma before exactly three digits could part thousands and is refused.
pub fn number(text: &str) -> Result<Decimal, &'static str> {
    let text = text.trim();
    if text.starts_with(['-', '−']) {
        return Err("negative");
    }
    let plain = match (text.split_once(','), text.contains('.')) {
        (None, _) => text.to_owned(),
        (Some(_), true) => return Err("two-separators"),
        (Some((whole, part)), false) if part.contains(',') || (part.len() == 3 && whole != "0") => {
            return Err("two-separators");
        }
        (Some((whole, part)), false) => format!("{whole}.{part}"),
    };
    let digits = plain.bytes().all(|sign| sign.is_ascii_digit() || sign == b'.');
    let number = Decimal::from_str_exact(&plain).ok().filter(|_| digits).ok_or("no-number")?;
    if number > Decimal::from(100_000_000) || number.scale() > 6 {
        return Err("too-much");
    }
    Ok(number)
}

/// What stands before the parts of a whole in a written table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Decimals {
    /// A point; commas between cells.
    Point,
    /// A comma; semicolons between cells.
    Comma,
}

/// The items as a table.
pub fn write(items: &[Item], decimals: Decimals) -> Vec<u8> {
    let between = if decimals == Decimals::Comma { b';' } else { b',' };
    let mut writer =
        csv::WriterBuilder::new().delimiter(between).terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    let one = |number: Decimal| match decimals {
        Decimals::Point => number.to_string(),
        Decimals::Comma => {
            // Three digits behind a comma could be thousands: a nought more makes them parts.
            let wide = number.scale() == 3;
            format!("{number}{}", if wide { "0" } else { "" }).replace('.', ",")
        }
    };
    let decimal = |number: Option<Decimal>| number.map(one).unwrap_or_default();
    // Rows of one length into memory: nothing can fail.
    let _ = writer.write_record(COLUMNS);
    for item in items {
        let cells = [
            item.kind.clone(),
            item.name.clone(),
            one(item.amount),
            item.unit.clone(),
            decimal(item.price),
            decimal(item.buys),
            item.currency.clone(),
            item.priced_on.clone().unwrap_or_default(),
            item.place.clone(),
            item.color.clone(),
        ];
        let _ = writer.write_record(cells.map(|cell| guarded(&cell)));
    }
    let table = writer.into_inner().unwrap_or_default();
    // The mark tells spreadsheets that it is UTF-8.
    [b"\xef\xbb\xbf".as_slice(), &table].concat()
}

/// What makes a spreadsheet take a cell for a formula.
const FORMULA: [char; 6] = ['=', '+', '-', '@', '\t', '\r'];

/// A cell that no spreadsheet takes for a formula.
pub fn guarded(cell: &str) -> String {
    // An apostrophe that was there already is kept apart from ours.
    if cell.starts_with(FORMULA) || cell.starts_with('\'') { format!("'{cell}") } else { cell.to_owned() }
}

/// The cell as it was before [`guarded`].
fn unguarded(cell: &str) -> &str {
    match cell.strip_prefix('\'') {
        Some(rest) if rest.starts_with(FORMULA) || rest.starts_with('\'') => rest,
        _ => cell,
    }
}

/// The text in whichever of the known encodings it is; `None` if it is no text.
fn decoded(bytes: &[u8]) -> Option<String> {
    let sixteen = |rest: &[u8], word: fn([u8; 2]) -> u16| {
        let words: Vec<u16> = rest.chunks_exact(2).map(|pair| word([pair[0], pair[1]])).collect();
        String::from_utf16(&words).ok().filter(|_| rest.len().is_multiple_of(2))
    };
    let text = match bytes {
        [0xef, 0xbb, 0xbf, rest @ ..] => String::from_utf8(rest.to_vec()).ok()?,
        [0xff, 0xfe, rest @ ..] => sixteen(rest, u16::from_le_bytes)?,
        [0xfe, 0xff, rest @ ..] => sixteen(rest, u16::from_be_bytes)?,
        _ => match std::str::from_utf8(bytes) {
            Ok(text) => text.to_owned(),
            Err(_) => bytes.iter().map(|byte| western(*byte)).collect(),
        },
    };
    // A nought is in no table; pictures and programs have many.
    (!text.contains('\0')).then_some(text)
}

/// A byte of Windows-1252.
fn western(byte: u8) -> char {
    const HIGH: [char; 32] = [
        '€', '\u{81}', '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', '\u{8d}', 'Ž', '\u{8f}', '\u{90}', '‘',
        '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', '\u{9d}', 'ž', 'Ÿ',
    ];
    match byte {
        0x80..=0x9f => HIGH[usize::from(byte - 0x80)],
        // The rest is as in Latin-1.
        other => char::from(other),
    }
}
