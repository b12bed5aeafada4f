//! Facts into words: the one place where lengths, findings and problems become what a maker reads.

use cards::replan::Change;
use cards::{Fact, Finding, Way};
use drawing::sheets::worded;
use measure::{FractionStyle, Length, Mark, Size, Unit, UnitSign, write_as, write_exact_in};
use store::project_file::Problem;
use words::say;

/// A finding or a problem in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Worded {
    /// What was found.
    pub said: String,
    /// What would do.
    pub remedy: String,
    /// The smallest changes known to help, each a phrase.
    pub ways: Vec<String>,
}

/// A length as the maker thinks of it: at her mark or at a finer one, to 1/64 in, that says it exactly; else rounded to 1/32 in
/// or 1/2 mm, the finest that is read off a rule.
pub fn length(length: Length, mark: Mark) -> String {
    // A border that small errors leave is often an odd 64th: told where it is exactly one.
    let (finest, finer) = match mark.unit() {
        Unit::Inch => (Mark::ThirtySecondInch, Mark::SixtyFourthInch),
        Unit::Millimetre => (Mark::HalfMillimetre, Mark::HalfMillimetre),
    };
    let of_unit = Mark::ALL.into_iter().filter(|rule| rule.unit() == mark.unit() && rule.parts() <= finer.parts());
    let rule = [mark].into_iter().chain(of_unit).find(|rule| rule.holds(length)).unwrap_or(finest);
    words::local(&write_as(length, rule, FractionStyle::Plain, UnitSign::Shown).text)
}

/// A size as the maker thinks of it.
pub fn size(size: Size, mark: Mark) -> String {
    format!("{} × {}", length(size.width, mark), length(size.height, mark))
}

/// A length for a file: exact, in the maker's unit where that can say it.
pub fn exact(length: Length, unit: Unit) -> String {
    write_exact_in(length, unit)
}

/// A size for a file: two exact lengths.
pub fn exact_size(size: Size, unit: Unit) -> String {
    format!("{} x {}", exact(size.width, unit), exact(size.height, unit))
}

/// A finding in words.
pub fn finding(finding: &Finding, mark: Mark) -> Worded {
    let ways = finding.ways.iter().map(|way| self::way(way, mark)).collect();
    Worded { ways, ..with_remedy(&format!("finding-{}", finding.code), &finding.facts, &|found| length(found, mark)) }
}

/// A way out in words: what changes, then what comes of it.
pub fn way(way: &Way, mark: Mark) -> String {
    worded::way(way, &|found| length(found, mark))
}

/// What a re-plan changed, in words: what was at the mark of then, what is at the mark of now.
pub fn change(change: &Change, was: Mark, is: Mark) -> String {
    let (from, to): (Vec<_>, Vec<_>) = change.facts.iter().cloned().partition(|(name, _)| name.starts_with("from"));
    let mut args = worded::arguments(&from, &|found| length(found, was));
    args.extend(worded::arguments(&to, &|found| length(found, is)));
    say(change.code, &args)
}

/// A problem of a project file in words, without its place.
pub fn problem(problem: &Problem) -> Worded {
    with_remedy(&format!("problem-{}", problem.code()), &problem.facts(), &|found| exact(found, problem.unit))
}

fn with_remedy(id: &str, facts: &[(&'static str, Fact)], length: &dyn Fn(Length) -> String) -> Worded {
    let args = worded::arguments(facts, length);
    Worded { said: say(id, &args), remedy: say(&format!("{id}.remedy"), &args), ways: Vec::new() }
}

/// The name of a size from the tables of `measure`, in the language that is spoken where it has a word for it.
pub(crate) fn size_name(name: &str) -> String {
    // Keys of a message begin with a letter.
    let mut slug = String::from("s-");
    for sign in name.chars() {
        if sign.is_ascii_alphanumeric() {
            slug.push(sign.to_ascii_lowercase());
        } else if !slug.ends_with('-') {
            slug.push('-');
        }
    }
    say("size-name", &[("slug", slug.trim_end_matches('-').into()), ("name", name.into())])
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;

    #[test]
    fn lengths_are_said_at_the_makers_mark_or_exactly() {
        let said = |ticks, mark| length(Length::from_ticks(ticks), mark);
        let inch = Length::INCH.ticks();
        assert_eq!(said(inch * 9 / 2, Mark::EighthInch), "4 1/2 in");
        assert_eq!(said(inch / 16, Mark::EighthInch), "1/16 in");
        assert_eq!(said(inch * 21 / 128, Mark::EighthInch), "5/32 in");
        assert_eq!(length(Length::mm(105), Mark::WholeMillimetre), "105 mm");
    }

    #[test]
    fn sizes_have_german_names_where_german_has_words() {
        let names =
            measure::formats::formats().map(|row| row.name).chain(measure::envelopes::envelopes().map(|row| row.name));
        let mut changed = 0;
        for name in names {
            assert_eq!(size_name(name), name, "as it stands in the table");
            let german = words::speaking(words::Language::German, || size_name(name));
            for english in ["square", "sheet", "fold", "slim", "from", "half", " x "] {
                assert!(!german.contains(english), "{name}: {german}");
            }
            changed += usize::from(german != name);
        }
        assert!(changed >= 30, "{changed}");
    }

    #[test]
    fn files_say_lengths_exactly_in_the_makers_unit() {
        assert_eq!(exact(Length::mm(127), Unit::Millimetre), "127 mm");
        assert_eq!(exact(Length::mm(127), Unit::Inch), "5 in");
    }
}
