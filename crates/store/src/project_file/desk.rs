//! The reader's desk: values with their places, and the problems found so far.
//!
//! A getter that cannot read a value writes a problem down and gives `None`; the caller goes on with a
//! stand-in, so that one reading finds everything. Nothing read beside a problem ever leaves `store`.

use cards::days::{Day, Time};
use measure::{Length, Size, Unit, parse_length, parse_signed, parse_size};
use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::form::{Form, Shape};
use super::names::{Catalogue, Own, nearest};
use super::problem::{Problem, ProblemKind};

/// A value and where it stands.
#[derive(Debug, Clone)]
pub(super) struct Value<'a> {
    pub(super) inner: &'a DeValue<'a>,
    /// Byte offset.
    pub(super) at: usize,
    pub(super) path: String,
}

/// A table whose keys are all listed in its form; others have been reported.
#[derive(Debug, Clone)]
pub(super) struct Table<'a> {
    form: &'static Form,
    entries: &'a DeTable<'a>,
    pub(super) at: usize,
    pub(super) path: String,
}

/// Most entries of one list. Chosen: no shelf, card or wish is longer, and counts stay far from overflowing.
const MOST_ENTRIES: usize = 500;

/// Which lengths make sense.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Bounds {
    /// A piece or a sheet: 1 mm to 2 m.
    Piece,
    /// Above nothing, to 2 m: a border, the thickness of a sheet.
    Thin,
    /// From nothing to 2 m.
    FromNothing,
    /// From 2 m to the left or above to 2 m to the right or below.
    Shift,
    /// On a spool: 1 mm to 100 m.
    Spool,
}

impl Bounds {
    /// Chosen: nothing on a craft table is shorter than 1 mm or longer than 2 m.
    fn least_and_most(self) -> (Length, Length) {
        let longest = Length::mm(2_000);
        match self {
            Bounds::Piece => (Length::MM, longest),
            Bounds::Thin => (Length::from_ticks(1), longest),
            Bounds::FromNothing => (Length::ZERO, longest),
            Bounds::Shift => (-longest, longest),
            Bounds::Spool => (Length::MM, measure::LONGEST),
        }
    }
}

/// What has been found so far, and what bare numbers mean.
#[derive(Debug)]
pub(super) struct Desk {
    line_starts: Vec<usize>,
    text: String,
    pub(super) unit: Unit,
    /// The currency of prices that name none; empty where the project names none either.
    pub(super) currency: String,
    /// The day of prices that name none.
    pub(super) priced_on: Option<String>,
    pub(super) problems: Vec<Problem>,
    /// The names of the backgrounds there are, for faces that show one.
    pub(super) backgrounds: Own,
    /// Pieces that regions are shown on, as written, and where: looked up once the recipes are read.
    pub(super) shown_on: Vec<(String, usize, String)>,
}

impl Desk {
    pub(super) fn new(text: &str) -> Desk {
        let line_starts = std::iter::once(0).chain(text.match_indices('\n').map(|(at, _)| at + 1)).collect();
        Desk {
            line_starts,
            text: text.to_owned(),
            unit: Unit::Inch,
            currency: String::new(),
            priced_on: None,
            problems: Vec::new(),
            backgrounds: Own::new("background"),
            shown_on: Vec::new(),
        }
    }

    /// Writes a problem down.
    pub(super) fn report(&mut self, at: usize, path: &str, kind: ProblemKind) {
        let line = self.line(at);
        let start = self.line_starts[line - 1];
        let column = self.text.get(start..at).map_or(0, |before| before.chars().count()) + 1;
        self.problems.push(Problem { line, column, path: path.to_owned(), unit: self.unit, kind });
    }

    /// The line of a byte offset, from 1.
    pub(super) fn line(&self, at: usize) -> usize {
        self.line_starts.partition_point(|start| *start <= at).max(1)
    }

    /// True if nothing but spaces stands before a byte offset on its line.
    pub(super) fn starts_line(&self, at: usize) -> bool {
        let start = self.line_starts[self.line(at) - 1];
        self.text.get(start..at).is_some_and(|before| before.trim().is_empty())
    }

    pub(super) fn blame(&mut self, value: &Value<'_>, kind: ProblemKind) {
        self.report(value.at, &value.path, kind);
    }

    pub(super) fn wrong_type(&mut self, value: &Value<'_>, wanted: &'static str) {
        let found = type_code(value.inner);
        self.blame(value, ProblemKind::WrongType { found, wanted });
    }

    /// A table of that form; keys the form does not list are reported.
    pub(super) fn table<'a>(&mut self, value: &Value<'a>, form: &'static Form) -> Option<Table<'a>> {
        let DeValue::Table(entries) = value.inner else {
            self.wrong_type(value, "table");
            return None;
        };
        Some(self.open(entries, value.at, &value.path, form))
    }

    /// As [`Desk::table`], for entries already at hand.
    pub(super) fn open<'a>(
        &mut self,
        entries: &'a DeTable<'a>,
        at: usize,
        path: &str,
        form: &'static Form,
    ) -> Table<'a> {
        for key in entries.keys().filter(|key| form.key(key.get_ref()).is_none()) {
            let found = key.get_ref().to_string();
            let known: Vec<String> = form.keys.iter().map(|key| key.name.to_owned()).collect();
            let nearest = nearest(&found, known.iter().map(String::as_str));
            self.report(key.span().start, &join(path, &found), ProblemKind::UnknownKey { found, nearest, known });
        }
        Table { form, entries, at, path: path.to_owned() }
    }

    /// The entries of a list.
    pub(super) fn list<'a>(&mut self, value: &Value<'a>, wanted: &'static str) -> Option<Vec<Value<'a>>> {
        self.list_up_to(value, wanted, MOST_ENTRIES)
    }

    /// The entries of a list that may be longer than most.
    pub(super) fn list_up_to<'a>(
        &mut self,
        value: &Value<'a>,
        wanted: &'static str,
        most: usize,
    ) -> Option<Vec<Value<'a>>> {
        let DeValue::Array(entries) = value.inner else {
            self.wrong_type(value, wanted);
            return None;
        };
        if entries.is_empty() {
            self.blame(value, ProblemKind::EmptyList);
        }
        if entries.len() > most {
            self.blame(value, ProblemKind::ListTooLong { entries: entries.len(), most });
            return None;
        }
        Some(entries.iter().enumerate().map(|(index, entry)| element(value, index, entry)).collect())
    }

    /// The entries of a list, or the one value that stands in its place.
    pub(super) fn one_or_many<'a>(&mut self, value: &Value<'a>) -> Vec<Value<'a>> {
        match value.inner {
            DeValue::Array(_) => self.list(value, "sizes-or-tables").unwrap_or_default(),
            _ => vec![value.clone()],
        }
    }

    /// Text with something in it, trimmed. Chosen: at most 200 characters, as on a label.
    pub(super) fn text(&mut self, value: &Value<'_>) -> Option<String> {
        self.text_as(value, Shape::Text)
    }

    fn text_as(&mut self, value: &Value<'_>, shape: Shape) -> Option<String> {
        let DeValue::String(text) = value.inner else {
            self.wrong_type(value, shape.code());
            return None;
        };
        let text = text.trim();
        if text.is_empty() || text.chars().count() > 200 || text.chars().any(char::is_control) {
            self.blame(value, ProblemKind::BadText);
            return None;
        }
        Some(text.to_owned())
    }

    pub(super) fn yes_no(&mut self, value: &Value<'_>) -> Option<bool> {
        let answer = value.inner.as_bool();
        if answer.is_none() {
            self.wrong_type(value, Shape::YesNo.code());
        }
        answer
    }

    /// A length within bounds; a bare number, quoted or not, is in the project's unit.
    pub(super) fn length(&mut self, value: &Value<'_>, bounds: Bounds) -> Option<Length> {
        let text = self.number_or_text(value, Shape::Length)?;
        let read = match bounds {
            Bounds::Shift => parse_signed(&text, Some(self.unit)),
            Bounds::Spool => return self.spool(value, &text),
            _ => parse_length(&text, Some(self.unit)),
        };
        match read {
            Ok(length) => self.bounded(value, length, bounds),
            Err(why) => {
                self.blame(value, ProblemKind::BadLength { why });
                None
            }
        }
    }

    /// A length on a spool may also be in yards, feet or metres.
    ///
    /// # Source
    /// 1 yd = 36 in, 1 ft = 12 in: international yard and pound agreement, 1959.
    fn spool(&mut self, value: &Value<'_>, text: &str) -> Option<Length> {
        let known = [("yd", "in", 36), ("ft", "in", 12), ("m", "mm", 1_000)];
        let long = known.into_iter().find_map(|(sign, unit, times)| {
            let number = text.trim().strip_suffix(sign)?;
            number.ends_with(|sign: char| !sign.is_alphabetic()).then_some((format!("{number} {unit}"), times))
        });
        let read = match &long {
            Some((number, times)) => parse_length(number, None).map(|length| (length, *times)),
            None => parse_length(text, Some(self.unit)).map(|length| (length, 1)),
        };
        match read {
            Ok((length, times)) => self.bounded(value, length * times, Bounds::Spool),
            Err(why) => {
                self.blame(value, ProblemKind::BadLength { why });
                None
            }
        }
    }

    pub(super) fn bounded(&mut self, value: &Value<'_>, found: Length, bounds: Bounds) -> Option<Length> {
        let (least, most) = bounds.least_and_most();
        if found < least || most < found {
            self.blame(value, ProblemKind::OutOfBounds { found, least, most });
            return None;
        }
        Some(found)
    }

    /// Two lengths within the bounds of a piece, or else a name of the catalogue.
    ///
    /// Lengths go first: `12 x 12` is in the project's unit even where a sheet goes by that name.
    pub(super) fn size(&mut self, value: &Value<'_>, catalogue: Catalogue) -> Option<Size> {
        let text = self.text_as(value, Shape::Size)?;
        let why = match parse_size(&text, Some(self.unit)) {
            Ok(size) => {
                // One complaint for a size is enough: both sides come from the same slip.
                let width = self.bounded(value, size.width, Bounds::Piece)?;
                return Some(Size::new(width, self.bounded(value, size.height, Bounds::Piece)?));
            }
            Err(why) => why,
        };
        // Names are compared without their dashes, which must not hide a minus.
        let named = if text.starts_with(['-', '−']) { None } else { catalogue.find(&text) };
        if named.is_none() {
            let nearest = catalogue.nearest(&text);
            self.blame(value, ProblemKind::BadSize { why, nearest });
        }
        named
    }

    /// Two lengths with `to` between them, or one length twice. A unit behind the second holds for the first.
    pub(super) fn range(&mut self, value: &Value<'_>) -> Option<(Length, Length)> {
        let text = self.number_or_text(value, Shape::Range)?;
        let Some((first, second)) = text.split_once(" to ") else {
            let length = self.length(value, Bounds::Piece)?;
            return Some((length, length));
        };
        let most = self.part(value, second)?;
        let unit = second.trim_start_matches(|sign: char| !sign.is_alphabetic() && !"\"″”".contains(sign));
        let bare = !first.contains(|sign: char| sign.is_alphabetic() || "\"″”".contains(sign));
        let least = self.part(value, &if bare { format!("{first} {unit}") } else { first.to_owned() })?;
        if least > most {
            self.blame(value, ProblemKind::LeastAboveMost { least, most });
            return None;
        }
        Some((least, most))
    }

    fn part(&mut self, value: &Value<'_>, text: &str) -> Option<Length> {
        match parse_length(text, Some(self.unit)) {
            Ok(length) => self.bounded(value, length, Bounds::Piece),
            Err(why) => {
                self.blame(value, ProblemKind::BadLength { why });
                None
            }
        }
    }

    fn number_or_text(&mut self, value: &Value<'_>, shape: Shape) -> Option<String> {
        match value.inner {
            DeValue::String(text) => Some(text.to_string()),
            DeValue::Integer(number) if number.radix() == 10 => Some(number.as_str().to_owned()),
            DeValue::Float(number) => Some(number.as_str().to_owned()),
            _ => {
                self.wrong_type(value, shape.code());
                None
            }
        }
    }

    /// A whole number within the bounds that the form states for the key.
    pub(super) fn count(&mut self, value: &Value<'_>, shape: Shape) -> Option<u32> {
        let (DeValue::Integer(number), Shape::Count(least, most)) = (value.inner, shape) else {
            self.wrong_type(value, "count");
            return None;
        };
        let read = u32::from_str_radix(number.as_str(), number.radix()).ok();
        let within = read.filter(|number| (least..=most).contains(number));
        if within.is_none() {
            let found = number.to_string();
            self.blame(value, ProblemKind::CountOutOfBounds { found, least, most });
        }
        within
    }

    /// The index of the word among those that can stand there.
    pub(super) fn choice(&mut self, value: &Value<'_>, choices: &[&str]) -> Option<usize> {
        let found = self.text_as(value, Shape::Choice(&[]))?;
        let index = choices.iter().position(|choice| *choice == found);
        if index.is_none() {
            let nearest = nearest(&found, choices.iter().copied());
            let choices = choices.iter().map(|choice| (*choice).to_owned()).collect();
            self.blame(value, ProblemKind::BadChoice { found, nearest, choices });
        }
        index
    }

    /// `#rrggbb`, in small letters.
    pub(super) fn color(&mut self, value: &Value<'_>) -> Option<String> {
        let found = self.text_as(value, Shape::Color)?;
        let digits = found.strip_prefix('#').filter(|digits| digits.len() == 6);
        if digits.is_some_and(|digits| digits.bytes().all(|digit| digit.is_ascii_hexdigit())) {
            return Some(found.to_ascii_lowercase());
        }
        self.blame(value, ProblemKind::BadColor { found });
        None
    }

    /// A day, as TOML writes it or as text.
    pub(super) fn date(&mut self, value: &Value<'_>) -> Option<String> {
        let found = match value.inner {
            DeValue::Datetime(date) => date.to_string(),
            _ => self.text_as(value, Shape::Date)?,
        };
        if is_day(&found) {
            return Some(found);
        }
        self.blame(value, ProblemKind::BadDate { found });
        None
    }

    /// A time of the day, as TOML writes it or as text.
    pub(super) fn time(&mut self, value: &Value<'_>) -> Option<Time> {
        let found = match value.inner {
            DeValue::Datetime(time) => time.to_string(),
            _ => self.text_as(value, Shape::Text)?,
        };
        let time = Time::parse(found.trim());
        if time.is_none() {
            self.blame(value, ProblemKind::BadTime { found });
        }
        time
    }

    /// The exact digits of a number or text that should be an amount.
    pub(super) fn amount(&mut self, value: &Value<'_>) -> Option<rust_decimal::Decimal> {
        let found = self.number_or_text(value, Shape::Price)?;
        let plain = !found.is_empty() && found.chars().all(|sign| sign.is_ascii_digit() || sign == '.');
        let amount = rust_decimal::Decimal::from_str_exact(&found).ok();
        // Chosen: a million of any currency is a slip, and no currency has more than four decimals.
        let amount = amount.filter(|amount| plain && amount.scale() <= 4 && *amount <= 1_000_000.into());
        if amount.is_none() {
            self.blame(value, ProblemKind::BadPrice { found });
        }
        amount
    }
}

impl<'a> Value<'a> {
    /// The value of one of its keys.
    pub(super) fn under(&self, key: &str, value: &'a Spanned<DeValue<'a>>) -> Value<'a> {
        Value { inner: value.get_ref(), at: value.span().start, path: join(&self.path, key) }
    }
}

impl<'a> Table<'a> {
    /// The value of a key of the form.
    pub(super) fn find(&self, key: &str) -> Option<Value<'a>> {
        debug_assert!(self.form.key(key).is_some(), "`{key}` is not listed in the form `{}`", self.form.name);
        let value = self.entries.get(key)?;
        Some(Value { inner: value.get_ref(), at: value.span().start, path: join(&self.path, key) })
    }

    /// The value of a key that cannot be left out.
    pub(super) fn need(&self, desk: &mut Desk, key: &str) -> Option<Value<'a>> {
        let found = self.find(key);
        if let (None, Some(key)) = (&found, self.form.key(key)) {
            debug_assert!(key.needed, "`{}` is needed, and its form says it is not", key.name);
            let kind = ProblemKind::MissingKey { key: key.name, wanted: key.shape.code() };
            desk.report(self.at, &join(&self.path, key.name), kind);
        }
        found
    }

    /// A count with the bounds of its key.
    pub(super) fn count(&self, desk: &mut Desk, key: &str) -> Option<u32> {
        let shape = self.form.key(key)?.shape;
        self.find(key).and_then(|value| desk.count(&value, shape))
    }

    /// The text of a key, if it is there.
    pub(super) fn text(&self, desk: &mut Desk, key: &str) -> Option<String> {
        self.find(key).and_then(|value| desk.text(&value))
    }

    /// The answer of a key; no if it is not there.
    pub(super) fn yes(&self, desk: &mut Desk, key: &str) -> bool {
        self.find(key).and_then(|value| desk.yes_no(&value)).unwrap_or(false)
    }

    /// The values listed under a key; none if it is not there.
    pub(super) fn values(&self, desk: &mut Desk, key: &str) -> Vec<Value<'a>> {
        let wanted = self.form.key(key).map_or("tables", |key| key.shape.code());
        self.find(key).and_then(|value| desk.list(&value, wanted)).unwrap_or_default()
    }

    /// The tables listed under a key, opened with the form the key states; none if it is not there.
    pub(super) fn rows(&self, desk: &mut Desk, key: &str) -> Vec<Table<'a>> {
        let Some(Shape::Tables(form)) = self.form.key(key).map(|key| key.shape) else { return Vec::new() };
        self.values(desk, key).iter().filter_map(|value| desk.table(value, form)).collect()
    }

    /// The table under a key, opened with the form the key states.
    pub(super) fn table(&self, desk: &mut Desk, key: &str) -> Option<Table<'a>> {
        let Some(Shape::Table(form)) = self.form.key(key).map(|key| key.shape) else { return None };
        desk.table(&self.find(key)?, form)
    }

    /// The length of a key, if it is there.
    pub(super) fn length(&self, desk: &mut Desk, key: &str, bounds: Bounds) -> Option<Length> {
        self.find(key).and_then(|value| desk.length(&value, bounds))
    }

    /// The length of a key that cannot be left out; one inch stands in for one that cannot be read.
    pub(super) fn needed_length(&self, desk: &mut Desk, key: &str, bounds: Bounds) -> Length {
        self.need(desk, key).and_then(|value| desk.length(&value, bounds)).unwrap_or(Length::INCH)
    }

    /// The size of a key that cannot be left out; a square inch stands in for one that cannot be read.
    pub(super) fn needed_size(&self, desk: &mut Desk, key: &str, catalogue: Catalogue) -> Size {
        let found = self.need(desk, key).and_then(|value| desk.size(&value, catalogue));
        found.unwrap_or(Size::new(Length::INCH, Length::INCH))
    }

    /// The index of the word under a key with choices.
    pub(super) fn choice(&self, desk: &mut Desk, key: &str) -> Option<usize> {
        let Some(Shape::Choice(choices)) = self.form.key(key).map(|key| key.shape) else { return None };
        self.find(key).and_then(|value| desk.choice(&value, choices))
    }

    /// Reports at the last of these keys if more than one is written.
    pub(super) fn at_most_one(&self, desk: &mut Desk, choices: &[&str]) {
        let written: Vec<(usize, &str)> = choices.iter().filter_map(|key| Some((self.find(key)?.at, *key))).collect();
        let Some((_, last)) = written.iter().max().filter(|_| written.len() > 1) else { return };
        let found = written.iter().map(|(_, key)| (*key).to_owned()).collect();
        let choices = choices.iter().map(|key| (*key).to_owned()).collect();
        self.blame_key(desk, last, ProblemKind::PickOne { found, choices });
    }

    /// The path of a key, there or not.
    pub(super) fn path_of(&self, key: &str) -> String {
        join(&self.path, key)
    }

    /// Reports about a key: where its value stands, or else where the table starts.
    pub(super) fn blame_key(&self, desk: &mut Desk, key: &str, kind: ProblemKind) {
        let at = self.find(key).map_or(self.at, |value| value.at);
        desk.report(at, &self.path_of(key), kind);
    }
}

/// The entries of a table whose keys are the maker's own, such as design letters, in the order of their names.
pub(super) fn own_keys<'a>(value: &Value<'a>) -> Option<Vec<(&'a str, usize, Value<'a>)>> {
    let DeValue::Table(entries) = value.inner else { return None };
    let entry = |(key, inner): (&'a Spanned<std::borrow::Cow<'a, str>>, &'a Spanned<DeValue<'a>>)| {
        let path = join(&value.path, key.get_ref());
        (key.get_ref().as_ref(), key.span().start, Value { inner: inner.get_ref(), at: inner.span().start, path })
    };
    Some(entries.iter().map(entry).collect())
}

fn element<'a>(list: &Value<'a>, index: usize, entry: &'a Spanned<DeValue<'a>>) -> Value<'a> {
    Value { inner: entry.get_ref(), at: entry.span().start, path: format!("{}[{index}]", list.path) }
}

fn join(path: &str, key: &str) -> String {
    if path.is_empty() { key.to_owned() } else { format!("{path}.{key}") }
}

fn type_code(value: &DeValue<'_>) -> &'static str {
    match value {
        DeValue::String(_) => "text",
        DeValue::Integer(_) | DeValue::Float(_) => "number",
        DeValue::Boolean(_) => "yes-no",
        DeValue::Datetime(_) => "date",
        DeValue::Array(_) => "list",
        DeValue::Table(_) => "table",
    }
}

/// True for a day of the calendar written `YYYY-MM-DD`, from the year 1900.
fn is_day(text: &str) -> bool {
    Day::parse(text).is_some_and(|day| day.parts().0 >= 1900)
}
