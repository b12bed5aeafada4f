//! Names the file may use without saying them first, and the nearest of known names.

use measure::Size;

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
            Catalogue::Formats => measure::formats::format(name)
                .map(|row| row.face)
                .or_else(|| measure::sheet(name).map(|row| row.size)),
            Catalogue::Envelopes => measure::envelope(name).map(|row| row.size),
        }
    }
}

/// The known names at most two slips away, nearest first, at most three.
pub(super) fn nearest<'n>(found: &str, known: impl Iterator<Item = &'n str>) -> Vec<String> {
    let found = found.to_lowercase();
    let mut near: Vec<(usize, &str)> =
        known.map(|name| (slips(&found, &name.to_lowercase()), name)).filter(|(slips, _)| *slips <= 2).collect();
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
