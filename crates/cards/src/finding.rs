//! What the maker should know, with a remedy. Data only: the words are chosen at the rim.

use measure::Length;

/// How much a finding matters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// Good to know.
    Note,
    /// Likely to spoil something: look before cutting.
    Warning,
    /// The plan cannot be carried out as it stands. Makes `octavo make` end with exit code 1.
    Serious,
}

/// What a finding is about.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Subject {
    /// The project as a whole.
    Project,
    /// A recipe, by name.
    Recipe(String),
    /// A design, by its letter.
    Design(String),
    /// A layout, by its number from 1.
    Layout(usize),
    /// A cardstock, by name.
    Cardstock(String),
    /// An envelope, by name.
    Envelope(String),
}

/// One fact of a finding, to be worded at the rim.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Fact {
    /// A length, written to the maker's mark.
    Length(Length),
    /// A number of things.
    Count(u64),
    /// A name the maker gave, or another text that is not ours to translate.
    Text(String),
}

/// Something the maker should know.
///
/// `code` is a kebab-case name; the message file holds the sentence under `finding-<code>` and the
/// remedy under its attribute `.remedy`; both may use the facts by name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Finding {
    /// How much it matters.
    pub severity: Severity,
    /// What it is about.
    pub subject: Subject,
    /// Which finding, in kebab case.
    pub code: &'static str,
    /// The facts by name, in a fixed order.
    pub facts: Vec<(&'static str, Fact)>,
    /// The smallest changes known to help, the smallest first; empty where none was looked for or found.
    pub ways: Vec<Way>,
}

/// One way out: changes to make together, and what comes of them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Way {
    /// What changes.
    pub changes: Vec<WayChange>,
    /// Cards from one sheet then.
    pub cards: u32,
    /// Percent of the sheet left over then, rounded up; 0 only where nothing is.
    pub left_percent: u32,
    /// True if every smaller change of its sort was shown not to help.
    pub smallest: bool,
}

/// One change of a way; the message file words it under its code, which begins with `way-`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WayChange {
    /// Which change, in kebab case.
    pub code: &'static str,
    /// The facts by name, in a fixed order.
    pub facts: Vec<(&'static str, Fact)>,
}

impl Finding {
    /// A finding without facts yet.
    pub fn new(severity: Severity, subject: Subject, code: &'static str) -> Finding {
        Finding { severity, subject, code, facts: Vec::new(), ways: Vec::new() }
    }

    /// The same finding with one fact more.
    #[must_use]
    pub fn with(mut self, name: &'static str, fact: impl Into<Fact>) -> Finding {
        self.facts.push((name, fact.into()));
        self
    }
}

impl From<Length> for Fact {
    fn from(length: Length) -> Fact {
        Fact::Length(length)
    }
}

impl From<u32> for Fact {
    fn from(count: u32) -> Fact {
        Fact::Count(u64::from(count))
    }
}

impl From<u64> for Fact {
    fn from(count: u64) -> Fact {
        Fact::Count(count)
    }
}

impl From<&str> for Fact {
    fn from(text: &str) -> Fact {
        Fact::Text(text.to_owned())
    }
}
