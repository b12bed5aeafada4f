//! Findings and ways out in words, however the reader is told a length.

use cards::{Fact, Way};
use measure::Length;
use words::{Arg, say};

/// Facts as a message takes them.
pub fn arguments(facts: &[(&'static str, Fact)], length: &dyn Fn(Length) -> String) -> Vec<(&'static str, Arg)> {
    let arg = |fact: &Fact| match fact {
        Fact::Length(found) => Arg::Text(length(*found)),
        Fact::Count(count) => Arg::from(*count),
        Fact::Text(text) => Arg::from(text),
    };
    facts.iter().map(|(name, fact)| (*name, arg(fact))).collect()
}

/// A way out: what changes, then what comes of it.
pub fn way(way: &Way, length: &dyn Fn(Length) -> String) -> String {
    let mut changes = way.changes.iter().map(|change| say(change.code, &arguments(&change.facts, length)));
    let first = changes.next().unwrap_or_default();
    let changes = changes.fold(first, |first, next| say("way-and", &[("first", first.into()), ("next", next.into())]));
    let said = match way.left_percent {
        0 => say("way-gives-whole", &[("way", changes.into())]),
        percent => say("way-gives", &[("way", changes.into()), ("percent", percent.into())]),
    };
    if way.smallest { said } else { say("way-perhaps-smaller", &[("way", said.into())]) }
}

/// Which ways up a print may be used.
pub fn print_way(way: cards::model::Way) -> String {
    match way {
        cards::model::Way::Any => say("way-any", &[]),
        cards::model::Way::OneWay => say("way-one", &[]),
        cards::model::Way::TwoWays => say("way-two", &[]),
    }
}

/// The name of a supply: where its file gives none, the word for it in the language that is spoken.
pub fn supply(name: &str) -> String {
    let key = match name {
        "Tape" => "tape",
        "Foam squares" => "foam",
        "Envelopes" => "envelopes",
        "Ink pad" => "ink-pad",
        "Stamps" => "stamps",
        _ => "own",
    };
    say("page-supply", &[("key", key.into()), ("name", name.into())])
}
