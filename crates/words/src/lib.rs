//! The words a maker reads, and nothing else: kept in message files and asked for by name.
//!
//! Left out on purpose: lengths, findings and every other domain value. Whoever speaks turns its
//! facts into [`Arg`]s first, so this room uses no other.
//!
//! Messages live in `messages/en/*.ftl` and `messages/de/*.ftl` (Fluent syntax, <https://projectfluent.org/fluent/guide/>),
//! a file for each kind of speech. A name is `id` or `id.attribute`.
//!
//! Which language is spoken is a matter of the reader, not of the sentence: whoever answers a reader does so within
//! [`speaking`], and every [`say`] below it speaks that language. It holds for one thread; work handed to another thread
//! is given [`spoken`] to go on with. Outside of any `speaking`, English is spoken.

use std::cell::Cell;
use std::sync::LazyLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use unic_langid::LanguageIdentifier;

/// A language that is spoken here.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum Language {
    /// British English, whose message files are the ones the others are measured by.
    #[default]
    English,
    /// German, as it is written in Germany and Austria.
    German,
}

impl Language {
    /// Every language, the first one the fallback.
    pub const ALL: [Language; 2] = [Language::English, Language::German];

    /// Its short tag (BCP 47): `en`, `de`.
    pub const fn tag(self) -> &'static str {
        match self {
            Language::English => "en",
            Language::German => "de",
        }
    }

    /// The tag that says the country too, for a PDF and for plurals: `en-GB`, `de-DE`.
    pub const fn full_tag(self) -> &'static str {
        match self {
            Language::English => "en-GB",
            Language::German => "de-DE",
        }
    }

    /// What its speakers call it.
    pub const fn own_name(self) -> &'static str {
        match self {
            Language::English => "English",
            Language::German => "Deutsch",
        }
    }

    /// The language of a tag such as `de`, `de-AT` or `en_GB.UTF-8`, in any letter case; `None` if it is not spoken here.
    ///
    /// # Examples
    /// ```
    /// use words::Language;
    /// assert_eq!(Language::of_tag("de-AT"), Some(Language::German));
    /// assert_eq!(Language::of_tag("fr"), None);
    /// ```
    pub fn of_tag(tag: &str) -> Option<Language> {
        let first = tag.split(['-', '_', '.']).next().unwrap_or_default();
        Language::ALL.into_iter().find(|language| language.tag().eq_ignore_ascii_case(first))
    }

    /// Its message files by name, as they were when the program was built.
    pub const fn files(self) -> &'static [(&'static str, &'static str)] {
        match self {
            Language::English => &ENGLISH,
            Language::German => &GERMAN,
        }
    }
}

thread_local! {
    static SPOKEN: Cell<Language> = const { Cell::new(Language::English) };
}

/// The language spoken on this thread now.
pub fn spoken() -> Language {
    SPOKEN.get()
}

/// Answers in a language: every [`say`] within `answer`, on this thread, speaks it.
///
/// # Examples
/// ```
/// use words::{Language, say, speaking};
/// let sheets = || say("count-sheets", &[("count", 5_u32.into())]);
/// assert_eq!(speaking(Language::German, sheets), "5 Bögen");
/// assert_eq!(sheets(), "5 sheets");
/// ```
pub fn speaking<T>(language: Language, answer: impl FnOnce() -> T) -> T {
    /// Speaks as before again, also where the answer panicked.
    struct Before(Language);
    impl Drop for Before {
        fn drop(&mut self) {
            SPOKEN.set(self.0);
        }
    }
    let _before = Before(SPOKEN.replace(language));
    answer()
}

/// A measure or an amount of money as the language spoken now writes it: `148,5 mm` and `4¾ Zoll` in German.
///
/// # Shape
/// `written` is a number as this house writes it (a decimal point, no separators), with or without a unit behind it.
pub fn local(written: &str) -> String {
    match spoken() {
        Language::English => written.to_owned(),
        Language::German => german_measure(written),
    }
}

/// Only a point between two figures is a decimal point.
fn german_measure(written: &str) -> String {
    let signs: Vec<char> = written.chars().collect();
    let figure = |at: Option<usize>| at.and_then(|at| signs.get(at)).is_some_and(char::is_ascii_digit);
    let between = |at: usize| figure(at.checked_sub(1)) && figure(Some(at + 1));
    let turned = signs.iter().enumerate().map(|(at, sign)| if *sign == '.' && between(at) { ',' } else { *sign });
    let text: String = turned.collect();
    for space in [" ", "\u{a0}"] {
        if let Some(number) = text.strip_suffix("in").and_then(|rest| rest.strip_suffix(space)) {
            return format!("{number}{space}Zoll");
        }
    }
    text
}

/// The English message files by name, as they were when the program was built.
pub const ENGLISH: [(&str, &str); 13] = [
    ("counts.ftl", include_str!("../messages/en/counts.ftl")),
    ("photos.ftl", include_str!("../messages/en/photos.ftl")),
    ("commands.ftl", include_str!("../messages/en/commands.ftl")),
    ("projects.ftl", include_str!("../messages/en/projects.ftl")),
    ("findings.ftl", include_str!("../messages/en/findings.ftl")),
    ("replan.ftl", include_str!("../messages/en/replan.ftl")),
    ("pages.ftl", include_str!("../messages/en/pages.ftl")),
    ("rooms.ftl", include_str!("../messages/en/rooms.ftl")),
    ("hands.ftl", include_str!("../messages/en/hands.ftl")),
    ("shaping.ftl", include_str!("../messages/en/shaping.ftl")),
    ("trade.ftl", include_str!("../messages/en/trade.ftl")),
    ("stamping.ftl", include_str!("../messages/en/stamping.ftl")),
    ("background.ftl", include_str!("../messages/en/background.ftl")),
];

/// The German message files; a message they lack is said in English.
const GERMAN: [(&str, &str); 13] = [
    ("counts.ftl", include_str!("../messages/de/counts.ftl")),
    ("photos.ftl", include_str!("../messages/de/photos.ftl")),
    ("commands.ftl", include_str!("../messages/de/commands.ftl")),
    ("projects.ftl", include_str!("../messages/de/projects.ftl")),
    ("findings.ftl", include_str!("../messages/de/findings.ftl")),
    ("replan.ftl", include_str!("../messages/de/replan.ftl")),
    ("pages.ftl", include_str!("../messages/de/pages.ftl")),
    ("rooms.ftl", include_str!("../messages/de/rooms.ftl")),
    ("hands.ftl", include_str!("../messages/de/hands.ftl")),
    ("shaping.ftl", include_str!("../messages/de/shaping.ftl")),
    ("trade.ftl", include_str!("../messages/de/trade.ftl")),
    ("stamping.ftl", include_str!("../messages/de/stamping.ftl")),
    ("background.ftl", include_str!("../messages/de/background.ftl")),
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
    english().get_message(message).is_some_and(|found| match attribute {
        Some(name) => found.get_attribute(name).is_some(),
        None => found.value().is_some(),
    })
}

type Bundle = FluentBundle<FluentResource>;

static BUNDLES: LazyLock<[Bundle; Language::ALL.len()]> = LazyLock::new(|| Language::ALL.map(bundle));

fn bundle(language: Language) -> Bundle {
    // Were the tag ever not to parse, the undetermined language still formats everything but plurals.
    let tag: LanguageIdentifier = language.full_tag().parse().unwrap_or_default();
    let mut bundle = FluentBundle::new_concurrent(vec![tag]);
    bundle.set_use_isolating(false);
    for (_, text) in language.files() {
        // A broken entry is left out and the rest kept: the tests below refuse a file with one.
        let resource = FluentResource::try_new((*text).to_owned()).unwrap_or_else(|(partly, _)| partly);
        bundle.add_resource_overriding(resource);
    }
    bundle
}

fn english() -> &'static Bundle {
    let [english, ..] = &*BUNDLES;
    english
}

fn german() -> &'static Bundle {
    let [_, german] = &*BUNDLES;
    german
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

/// The message in the language spoken; in English where that has none.
fn format(id: &str, args: &FluentArgs<'_>) -> Option<String> {
    match spoken() {
        Language::English => None,
        Language::German => format_by(german(), id, args),
    }
    .or_else(|| format_by(english(), id, args))
}

fn format_by(bundle: &Bundle, id: &str, args: &FluentArgs<'_>) -> Option<String> {
    let (message, attribute) = split(id);
    let found = bundle.get_message(message)?;
    let pattern = match attribute {
        Some(name) => found.get_attribute(name)?.value(),
        None => found.value()?,
    };
    let mut errors = Vec::new();
    let text = bundle.format_pattern(pattern, Some(args), &mut errors);
    if errors.is_empty() { Some(text.into_owned()) } else { Some(text.replace('{', "⟨").replace('}', "⟩")) }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::panic, reason = "tests")]
    use std::collections::{BTreeMap, BTreeSet};

    use fluent_syntax::ast::Entry;

    use super::*;

    #[test]
    fn message_files_are_whole_and_name_nothing_twice() {
        for language in Language::ALL {
            let mut strict = FluentBundle::new_concurrent(vec![language.full_tag().parse().unwrap()]);
            for (file, text) in language.files() {
                let resource = FluentResource::try_new((*text).to_owned());
                let file = format!("{}/{file}", language.tag());
                assert!(resource.is_ok(), "{file}: {:?}", resource.err().map(|(_, errors)| errors));
                let added = strict.add_resource(resource.unwrap());
                assert!(added.is_ok(), "{file}: a name is used twice: {added:?}");
            }
        }
    }

    /// Every message and attribute by name, with the variables it puts in.
    fn told(language: Language) -> BTreeMap<String, BTreeSet<String>> {
        let mut all = BTreeMap::new();
        for (_, text) in language.files() {
            let resource = FluentResource::try_new((*text).to_owned()).unwrap();
            for entry in resource.entries() {
                let Entry::Message(message) = entry else { continue };
                let own = message.value.iter().map(|value| (message.id.name.to_owned(), value));
                let attributes = message.attributes.iter();
                let attributes = attributes.map(|one| (format!("{}.{}", message.id.name, one.id.name), &one.value));
                for (name, pattern) in own.chain(attributes) {
                    // The debug form names every variable, wherever in the pattern it stands.
                    let form = format!("{pattern:?}");
                    let parts = form.split("VariableReference { id: Identifier { name: \"").skip(1);
                    let variables = parts.filter_map(|rest| rest.split('"').next()).map(str::to_owned).collect();
                    all.insert(name, variables);
                }
            }
        }
        all
    }

    #[test]
    fn german_says_everything_that_english_says_with_the_same_facts() {
        let (english, german) = (told(Language::English), told(Language::German));
        assert!(english.len() > 500, "the reader of messages finds them: {}", english.len());
        assert_eq!(english.keys().collect::<Vec<_>>(), german.keys().collect::<Vec<_>>());
        let mut differing = Vec::new();
        for (name, variables) in &english {
            // German may say less (a number that only chose a plural), never a fact that is not given.
            if !german[name].is_subset(variables) {
                differing.push((name, variables, &german[name]));
            }
        }
        assert!(differing.is_empty(), "{differing:#?}");
    }

    #[test]
    fn measures_are_written_as_the_language_writes_them() {
        let german = |text: &str| speaking(Language::German, || local(text));
        assert_eq!(german("148.5 mm"), "148,5 mm");
        assert_eq!(german("4¾\u{a0}in"), "4¾\u{a0}Zoll");
        assert_eq!(german("3 × 4½ in"), "3 × 4½ Zoll");
        assert_eq!(german("Version 1. Within"), "Version 1. Within");
        assert_eq!(local("148.5 mm"), "148.5 mm");
    }

    #[test]
    fn a_language_ends_with_its_answer_even_where_that_panics() {
        let broken = std::panic::catch_unwind(|| speaking(Language::German, || panic!("in the middle")));
        assert!(broken.is_err());
        assert_eq!(spoken(), Language::English);
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
