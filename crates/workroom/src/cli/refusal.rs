//! Why a command could not do its job, in words: where, what, and what would do.

use std::fmt;

use words::{Arg, say};

/// Why a command stopped before it made anything.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Refusal {
    /// The reader of our output went away; that is no failure.
    PipeClosed,
    /// Said in one sentence, with what would do.
    Said {
        /// Where and what.
        what: String,
        /// What would do.
        remedy: Option<String>,
    },
    /// Several at once, such as every mistake in a project file.
    Many(Vec<Refusal>),
}

impl Refusal {
    /// The message `id` and, if it has one, its `.remedy`.
    pub fn said(id: &str, args: &[(&str, Arg)]) -> Refusal {
        let remedy = format!("{id}.remedy");
        Refusal::Said { what: say(id, args), remedy: words::known(&remedy).then(|| say(&remedy, args)) }
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Refusal::PipeClosed => Ok(()),
            Refusal::Said { what, remedy: None } => write!(out, "{what}"),
            Refusal::Said { what, remedy: Some(remedy) } => write!(out, "{what}: {remedy}"),
            Refusal::Many(all) => {
                for (index, refusal) in all.iter().enumerate() {
                    if index > 0 {
                        writeln!(out)?;
                    }
                    write!(out, "{refusal}")?;
                }
                Ok(())
            }
        }
    }
}
