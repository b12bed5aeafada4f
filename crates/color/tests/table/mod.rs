//! Reads the checked tables under `tests/data`: `#` lines are sources, then a header, then rows without quotes.
#![allow(dead_code, reason = "each test file uses what it needs")]

use color::Srgb;

/// The rows, cell by cell. Cells of these tables hold no commas.
pub(crate) fn rows(text: &str) -> Vec<Vec<String>> {
    let table = text.lines().filter(|line| !line.is_empty() && !line.starts_with("#"));
    table.skip(1).map(|line| line.split(',').map(str::to_owned).collect()).collect()
}

/// A number.
pub(crate) fn number(cell: &str) -> f64 {
    cell.parse().unwrap_or_else(|_| panic!("`{cell}` is a number"))
}

/// A colour.
pub(crate) fn hex(cell: &str) -> Srgb {
    Srgb::from_hex(cell).unwrap_or_else(|| panic!("`{cell}` is a colour"))
}
