//! Names the file may use without saying them first, the maker's own names, and the nearest of known ones.

use measure::Size;

use super::desk::{Desk, Table, Value};
use super::problem::ProblemKind;

/// Which table of named sizes a size may name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Catalogue {
    /// None: a size is two lengths.
    Nothing,
    /// Sheets.
    Sheets,
    /// Card formats, then sheets.
    Formats,
    /// Envelopes.
    Envelopes,
}

impl Catalogue {
    /// The size of that name.
    pub(super) fn find(self, name: &str) -> Option<Size> {
        match self {
            Catalogue::Nothing => None,
            Catalogue::Sheets => measure::sheet(name).map(|row| row.size),
            Catalogue::Formats => {
                measure::formats::format(name).map(|row| row.face).or_else(|| measure::sheet(name).map(|row| row.size))
            }
            Catalogue::Envelopes => measure::envelope(name).map(|row| row.size),
        }
    }

    /// Names that look like a text that is not two lengths.
    pub(super) fn nearest(self, found: &str) -> Vec<String> {
        // A number alone is a forgotten side, not a name.
        if !found.contains(char::is_alphabetic) {
            return Vec::new();
        }
        let sheets = || measure::sheets::sheets().map(|row| row.name);
        match self {
            Catalogue::Nothing => Vec::new(),
            Catalogue::Sheets => nearest(found, sheets()),
            Catalogue::Formats => nearest(found, measure::formats::formats().map(|row| row.name).chain(sheets())),
            Catalogue::Envelopes => nearest(found, measure::envelopes::envelopes().map(|row| row.name)),
        }
    }
}

/// Names the maker gives to things of one kind, in the order of the file, and where they stand.
#[derive(Debug, Clone)]
pub(super) struct Own {
    of: &'static str,
    names: Vec<(String, usize)>,
    /// True if a name could not be read: then an unknown one may be that one, and is no second mistake.
    broken: bool,
}

impl Own {
    pub(super) fn new(of: &'static str) -> Own {
        Own { of, names: Vec::new(), broken: false }
    }

    /// Reads the needed name of a thing and takes it up.
    pub(super) fn name(&mut self, desk: &mut Desk, table: &Table<'_>, key: &str) -> String {
        let value = table.need(desk, key);
        let name = value.as_ref().and_then(|value| desk.text(value));
        let at = value.map_or(table.at, |value| value.at);
        self.take(desk, name, at, &table.path_of(key))
    }

    /// Takes up a name, which may be taken; one that could not be read leaves its place empty.
    pub(super) fn take(&mut self, desk: &mut Desk, name: Option<String>, at: usize, path: &str) -> String {
        let name = name.unwrap_or_default();
        let line = desk.line(at);
        if name.is_empty() {
            self.broken = true;
        } else if let Some((_, first_line)) = self.names.iter().find(|(taken, _)| *taken == name) {
            let kind = ProblemKind::DuplicateName { name: name.clone(), of: self.of, first_line: *first_line };
            desk.report(at, path, kind);
        }
        self.names.push((name.clone(), line));
        name
    }

    /// Counts something that could not be read at all, so that no later name is blamed for it.
    pub(super) fn lost(&mut self) {
        self.broken = true;
    }

    /// Takes up a name that is known to be free.
    pub(super) fn grant(&mut self, name: &str) {
        self.names.push((name.to_owned(), 0));
    }

    /// The name at an index; empty if it could not be read.
    pub(super) fn at(&self, index: usize) -> &str {
        self.names.get(index).map_or("", |(name, _)| name)
    }

    pub(super) fn has(&self, name: &str) -> bool {
        self.position(name).is_some()
    }

    pub(super) fn position(&self, name: &str) -> Option<usize> {
        self.names.iter().position(|(known, _)| known == name)
    }

    /// The index of a name the maker refers to.
    pub(super) fn index(&self, desk: &mut Desk, value: &Value<'_>) -> Option<usize> {
        let found = desk.text(value)?;
        self.index_of(desk, &found, value.at, &value.path)
    }

    /// As [`Own::index`], for a name already read.
    pub(super) fn index_of(&self, desk: &mut Desk, found: &str, at: usize, path: &str) -> Option<usize> {
        let index = self.position(found);
        if index.is_none() && !self.broken {
            let known = self.known();
            let nearest = nearest(found, known.iter().map(String::as_str));
            let kind = ProblemKind::UnknownName { found: found.to_owned(), of: self.of, nearest, known };
            desk.report(at, path, kind);
        }
        index
    }

    /// The index of the name under a key; without the key, the only one there is.
    pub(super) fn index_or_only(&self, desk: &mut Desk, table: &Table<'_>, key: &str) -> Option<usize> {
        match (table.find(key), self.names.len()) {
            (Some(value), _) => self.index(desk, &value),
            (None, 1) => Some(0),
            (None, _) => {
                if !self.broken {
                    table.blame_key(desk, key, ProblemKind::NameNeeded { of: self.of, known: self.known() });
                }
                None
            }
        }
    }

    fn known(&self) -> Vec<String> {
        self.names.iter().map(|(name, _)| name.clone()).filter(|name| !name.is_empty()).collect()
    }
}

/// The known names at most two slips away, nearest first, at most three.
pub(super) fn nearest<'n>(found: &str, known: impl Iterator<Item = &'n str>) -> Vec<String> {
    let found = found.to_lowercase();
    let signs = found.chars().count();
    // Two slips in a name of two or three signs leave nothing of it; a long text is no slip of a name.
    let most = (signs / 2).min(2);
    let close = |name: &&str| signs <= 60 && name.chars().count().abs_diff(signs) <= most;
    let far = |name: &'n str| (slips(&found, &name.to_lowercase()), name);
    let mut near: Vec<(usize, &str)> = known.filter(close).map(far).filter(|(slips, _)| *slips <= most).collect();
    near.sort();
    near.into_iter().take(3).map(|(_, name)| name.to_owned()).collect()
}

/// Characters to insert, drop or replace to turn one text into the other.
fn slips(from: &str, to: &str) -> usize {
    let to: Vec<char> = to.chars().collect();
    let mut row: Vec<usize> = (0..=to.len()).collect();
    for (i, a) in from.chars().enumerate() {
        let mut corner = row[0];
        row[0] = i + 1;
        for (j, b) in to.iter().enumerate() {
            let replaced = corner + usize::from(a != *b);
            corner = row[j + 1];
            row[j + 1] = replaced.min(row[j] + 1).min(corner + 1);
        }
    }
    row[to.len()]
}
