//! The shelf of supplies: what an item is. [`table`] reads and writes it as CSV; [`crate::projects::Projects`] keeps it.
//!
//! Left out on purpose: what a project needs of it, and words.

pub mod table;

use rust_decimal::Decimal;

use crate::projects::{ProjectId, StoreError};

/// What lies on a shelf.
pub const KINDS: [&str; 10] =
    ["paper", "cardstock", "ribbon", "adhesive", "foam", "envelope", "ink", "stamp", "marker", "other"];
/// In what it is counted.
pub const UNITS: [&str; 8] = ["sheet", "piece", "roll", "use", "m", "cm", "yd", "in"];

/// One thing on the shelf, as the maker tells it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Item {
    /// One of [`KINDS`].
    pub kind: String,
    /// The maker's name for it; unique among its kind, whatever its case.
    pub name: String,
    /// How much there is, in its own unit; never below nothing.
    pub amount: Decimal,
    /// One of [`UNITS`].
    pub unit: String,
    /// What it cost, if told.
    pub price: Option<Decimal>,
    /// How much of the unit the price buys; one if `None`.
    pub buys: Option<Decimal>,
    /// ISO 4217 code; empty if none is told.
    pub currency: String,
    /// The day of the price, `YYYY-MM-DD`.
    pub priced_on: Option<String>,
    /// Where it lies.
    pub place: String,
    /// Its colour, `#rrggbb`; empty if none is told.
    pub color: String,
}

/// An item with what became of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shelved {
    /// Names it in the file; never used twice.
    pub id: i64,
    /// One more with every change.
    pub revision: i64,
    /// The item with what is there now.
    pub item: Item,
    /// What projects have laid aside of it, by project.
    pub held: Vec<(ProjectId, Decimal)>,
}

impl Shelved {
    /// What a project may take: what is there, less what others have laid aside; nothing if they have it all.
    pub fn free_for(&self, project: ProjectId) -> Decimal {
        let others = self.held.iter().filter(|(of, _)| *of != project).map(|(_, amount)| *amount);
        let held = others.fold(Decimal::ZERO, Decimal::saturating_add);
        self.item.amount.saturating_sub(held).max(Decimal::ZERO)
    }
}

/// One line of the ledger.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// Why: `counted`, `bought`, `used` or `returned`.
    pub why: String,
    /// With its sign.
    pub amount: Decimal,
    /// What was wanted besides and was not there.
    pub short: Decimal,
    /// What was there afterwards.
    pub there: Decimal,
    /// The project that used it.
    pub project: Option<ProjectId>,
    /// Its part.
    pub part: Option<String>,
    /// Seconds since 1970.
    pub made_at: i64,
}

/// Why an item was not kept. Nothing was written.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum ShelfError {
    /// It was changed since it was looked at.
    #[error("`{}` has moved on", now.item.name)]
    Stale {
        /// The item as it is now.
        now: Box<Shelved>,
        /// What became of it since, oldest first.
        since: Vec<Entry>,
    },
    /// There is no such item any more.
    #[error("there is no such item")]
    Gone,
    /// Another item of that kind has the name.
    #[error("`{0}` is on the shelf already")]
    Taken(String),
    /// An amount or a price below nothing.
    #[error("`{0}` is below nothing")]
    Negative(Decimal),
    /// A value that the shelf does not know.
    #[error("`{0}` cannot stand here")]
    Bad(String),
    /// The file could not be read or written.
    #[error(transparent)]
    Store(#[from] StoreError),
}

impl From<rusqlite::Error> for ShelfError {
    fn from(error: rusqlite::Error) -> ShelfError {
        ShelfError::Store(error.into())
    }
}

impl Item {
    /// Whether the shelf can hold it.
    ///
    /// # Errors
    /// [`ShelfError::Negative`], [`ShelfError::Bad`].
    pub fn check(&self) -> Result<(), ShelfError> {
        for amount in [Some(self.amount), self.price, self.buys].into_iter().flatten() {
            if amount < Decimal::ZERO {
                return Err(ShelfError::Negative(amount));
            }
        }
        let bad = |text: &str| Err(ShelfError::Bad(text.to_owned()));
        if !KINDS.contains(&self.kind.as_str()) {
            return bad(&self.kind);
        }
        if !UNITS.contains(&self.unit.as_str()) {
            return bad(&self.unit);
        }
        if self.name.trim().is_empty() || self.name.chars().count() > 200 || self.name.chars().any(char::is_control) {
            return bad(&self.name);
        }
        if self.buys.is_some_and(|buys| buys.is_zero()) {
            return bad("0");
        }
        if !self.currency.is_empty() && !is_currency(&self.currency) {
            return bad(&self.currency);
        }
        if !self.color.is_empty() && !is_color(&self.color) {
            return bad(&self.color);
        }
        match &self.priced_on {
            Some(day) if cards::days::Day::parse(day).is_none() => bad(day),
            _ => Ok(()),
        }
    }

    /// True if the other has the same kind and name, whatever the case.
    pub fn is_alike(&self, kind: &str, name: &str) -> bool {
        self.kind == kind && self.name.trim().to_lowercase() == name.trim().to_lowercase()
    }
}

/// `#` and six hexadecimal digits.
pub(crate) fn is_color(text: &str) -> bool {
    text.strip_prefix('#')
        .is_some_and(|digits| digits.len() == 6 && digits.bytes().all(|sign| sign.is_ascii_hexdigit()))
}

/// Three capitals.
///
/// # Source
/// ISO 4217: an alphabetic code has three letters.
pub(crate) fn is_currency(text: &str) -> bool {
    text.len() == 3 && text.bytes().all(|sign| sign.is_ascii_uppercase())
}
