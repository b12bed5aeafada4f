//! The words a maker reads, and nothing else: kept in message files and asked for by name.
//!
//! Left out on purpose: lengths, findings and every other domain value. Whoever speaks turns its
//! facts into [`Arg`]s first, so this room uses no other.
//!
//! Messages live in `messages/en/*.ftl` (Fluent syntax, <https://projectfluent.org/fluent/guide/>), a file
//! for each kind of speech. A name is `id` or `id.attribute`.

use std::sync::LazyLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use unic_langid::LanguageIdentifier;

/// The English message files by name, as they were when the program was built.
pub const ENGLISH: [(&str, &str); 8] = [
    ("counts.ftl", include_str!("../messages/en/counts.ftl")),
    ("commands.ftl", include_str!("../messages/en/commands.ftl")),
    ("projects.ftl", include_str!("../messages/en/projects.ftl")),
    ("findings.ftl", include_str!("../messages/en/findings.ftl")),
    ("replan.ftl", include_str!("../messages/en/replan.ftl")),
    ("pages.ftl", include_str!("../messages/en/pages.ftl")),
    ("rooms.ftl", include_str!("../messages/en/rooms.ftl")),
    ("hands.ftl", include_str!("../messages/en/hands.ftl")),
];

/// One value put into a message.
#[derive(Debug, Clone, PartialEq)]
pub enum Arg {
    /// A text that is put in as it is: a name the maker gave, a length already written out.
    Text(String),
    /// A whole number; messages can choose a plural by it. Written without separators.
    Number(i64),
}

impl From<&str> for Arg {
    fn from(text: &str) -> Arg {
        Arg::Text(text.to_owned())
    }
}

impl From<String> for Arg {
    fn from(text: String) -> Arg {
        Arg::Text(text)
    }
}

impl From<&String> for Arg {
    fn from(text: &String) -> Arg {
        Arg::Text(text.clone())
    }
}

impl From<i64> for Arg {
    fn from(number: i64) -> Arg {
        Arg::Number(number)
    }
}

impl From<u32> for Arg {
    fn from(number: u32) -> Arg {
        Arg::Number(i64::from(number))
    }
}

impl From<u64> for Arg {
    fn from(number: u64) -> Arg {
        Arg::Number(i64::try_from(number).unwrap_or(i64::MAX))
    }
}

impl From<usize> for Arg {
    fn from(number: usize) -> Arg {
        Arg::Number(i64::try_from(number).unwrap_or(i64::MAX))
    }
}

/// The message `id` (or `id.attribute`) with `args` put in.
///
/// # Shape
/// Plain text without the invisible isolation marks Fluent can add, so that it can be drawn, searched
/// and copied sign by sign. A name that does not exist gives `⟨name⟩`, and an argument that is missing
/// gives `⟨$name⟩` in its place: visible, never a panic.
///
/// # Examples
/// ```
/// assert_eq!(words::say("count-sheets", &[("count", 1_u32.into())]), "1 sheet");
/// assert_eq!(words::say("count-sheets", &[("count", 5_u32.into())]), "5 sheets");
/// assert_eq!(words::say("no-such-message", &[]), "⟨no-such-message⟩");
/// ```
pub fn say(id: &str, args: &[(&str, Arg)]) -> String {
    let mut given = FluentArgs::with_capacity(args.len());
    for (name, arg) in args {
        given.set(*name, value(arg));
    }
    format(id, &given).unwrap_or_else(|| format!("⟨{id}⟩"))
}

/// True if the message `id` (or `id.attribute`) exists.
///
/// For texts that are optional, such as a note below a step.
pub fn known(id: &str) -> bool {
    let (message, attribute) = split(id);
    BUNDLE.get_message(message).is_some_and(|found| match attribute {
        Some(name) => found.get_attribute(name).is_some(),
        None => found.value().is_some(),
    })
}

static BUNDLE: LazyLock<FluentBundle<FluentResource>> = LazyLock::new(|| {
    let mut bundle = FluentBundle::new_concurrent(vec![british()]);
    bundle.set_use_isolating(false);
    for (_, text) in ENGLISH {
        // A broken entry is left out and the rest kept: the tests below refuse a file with one.
        let resource = FluentResource::try_new(text.to_owned()).unwrap_or_else(|(partly, _)| partly);
        bundle.add_resource_overriding(resource);
    }
    bundle
});

/// `en-GB`; were it ever not to parse, the undetermined language still formats everything but plurals.
fn british() -> LanguageIdentifier {
    "en-GB".parse().unwrap_or_default()
}

fn split(id: &str) -> (&str, Option<&str>) {
    id.split_once('.').map_or((id, None), |(message, attribute)| (message, Some(attribute)))
}

fn value(arg: &Arg) -> FluentValue<'_> {
    match arg {
        Arg::Text(text) => FluentValue::from(text.as_str()),
        Arg::Number(number) => FluentValue::from(*number),
    }
}

fn format(id: &str, args: &FluentArgs<'_>) -> Option<String> {
    let (message, attribute) = split(id);
    let found = BUNDLE.get_message(message)?;
    let pattern = match attribute {
        Some(name) => found.get_attribute(name)?.value(),
        None => found.value()?,
    };
    let mut errors = Vec::new();
    let text = BUNDLE.format_pattern(pattern, Some(args), &mut errors);
    if errors.is_empty() { Some(text.into_owned()) } else { Some(text.replace('{', "⟨").replace('}', "⟩")) }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;

    #[test]
    fn message_files_are_whole_and_name_nothing_twice() {
        let mut strict = FluentBundle::new_concurrent(vec![british()]);
        for (file, text) in ENGLISH {
            let resource = FluentResource::try_new(text.to_owned());
            assert!(resource.is_ok(), "{file}: {:?}", resource.err().map(|(_, errors)| errors));
            let added = strict.add_resource(resource.unwrap());
            assert!(added.is_ok(), "{file}: a name is used twice: {added:?}");
        }
    }

    #[test]
    fn plurals_follow_the_number() {
        for (count, expected) in [(0, "0 sheets"), (1, "1 sheet"), (2, "2 sheets"), (1500, "1500 sheets")] {
            assert_eq!(say("count-sheets", &[("count", Arg::Number(count))]), expected);
        }
    }

    #[test]
    fn no_invisible_signs_are_added() {
        let text = say("refused-file-missing", &[("path", "a b.toml".into())]);
        assert!(text.contains("`a b.toml`"), "{text}");
        assert!(!text.chars().any(|sign| ('\u{2066}'..='\u{2069}').contains(&sign)), "{text:?}");
    }

    #[test]
    fn attributes_are_found_by_a_dot() {
        assert!(known("refused-file-missing.remedy"));
        assert!(!known("refused-file-missing.nothing"));
        assert_eq!(say("refused-file-missing.nothing", &[]), "⟨refused-file-missing.nothing⟩");
    }

    #[test]
    fn a_missing_argument_is_seen() {
        assert!(say("refused-file-missing", &[]).contains("⟨$path⟩"));
    }
}
