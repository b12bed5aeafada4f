//! The one way lengths become words, and how large those words are set, for one edition.

use cutting::steps::{CutStep, PartId, Turn, Up};
use measure::{FractionStyle, Length, Mark as Rule, Size, Unit, UnitSign, write_as};

use super::edition::{Edition, Hand, Print};
use super::look::say;
use crate::text::{Face, Style, with_fractions};

/// Writes lengths as the reader of an edition thinks of them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Told {
    mark: Rule,
    pub(super) edition: Edition,
}

impl Told {
    pub(super) const fn new(mark: Rule, edition: Edition) -> Told {
        Told { mark, edition }
    }

    pub(super) fn large(self) -> bool {
        self.edition.print == Print::Large
    }

    /// In an inch edition fractions are to be said in words as well, if the print is large.
    fn spells(self) -> bool {
        self.large() && self.edition.unit == Unit::Inch
    }

    /// The coarsest rule that says a length exactly, from the maker's own mark on; else the finest she reads.
    fn rule(self, length: Length) -> Rule {
        let (coarsest, finest) = match (self.edition.unit == self.mark.unit(), self.edition.unit) {
            (true, Unit::Inch) => (self.mark, Rule::ThirtySecondInch),
            (true, Unit::Millimetre) => (self.mark, Rule::HalfMillimetre),
            // Measures of the other unit seldom fall on a mark; finer than this nobody sets a stop by eye.
            (false, Unit::Inch) => (Rule::HalfInch, Rule::SixteenthInch),
            (false, Unit::Millimetre) => (Rule::WholeMillimetre, Rule::HalfMillimetre),
        };
        let finer = |rule: &Rule| rule.unit() == finest.unit() && rule.step() >= finest.step();
        // A border that small errors leave is often an odd 64th.
        if finest == Rule::ThirtySecondInch && !finest.holds(length) && Rule::SixtyFourthInch.holds(length) {
            return Rule::SixtyFourthInch;
        }
        [coarsest].into_iter().chain(Rule::ALL).filter(finer).find(|rule| rule.holds(length)).unwrap_or(finest)
    }

    fn written(self, length: Length, sign: UnitSign) -> String {
        let written = write_as(length, self.rule(length), FractionStyle::Typographic, sign);
        let text = words::local(&with_fractions(&written.text)).replace(' ', "\u{a0}");
        if written.exact { text } else { format!("≈\u{a0}{text}") }
    }

    /// `4¾ in` for a label; `≈ 76 mm` where that is rounded.
    pub(super) fn label(self, length: Length) -> String {
        self.written(length, UnitSign::Shown)
    }

    /// `4¾`: the unit stands elsewhere.
    pub(super) fn bare(self, length: Length) -> String {
        self.written(length, UnitSign::Hidden)
    }

    /// `4¾ in` in a sentence: `about 76 mm` where that is rounded, with the fraction in words in large print.
    pub(super) fn length(self, length: Length) -> String {
        let text = self.about(&self.label(length));
        match self.words(length).filter(|_| self.spells()) {
            Some(words) => say("page-length-words", &[("length", text.into()), ("words", words.into())]),
            None => text,
        }
    }

    /// `3 × 4½ in` in a sentence.
    pub(super) fn size(self, size: Size) -> String {
        let text = self.about(&format!("{}\u{a0}×\u{a0}{}", self.bare(size.width), self.label(size.height)));
        let fraction = |length: Length| self.words(length).is_some();
        if !self.spells() || !(fraction(size.width) || fraction(size.height)) {
            return text;
        }
        let spelt = |length: Length| self.words(length).unwrap_or_else(|| whole(length));
        let (width, height) = (spelt(size.width), spelt(size.height));
        say("page-size-words", &[("size", text.into()), ("width", width.into()), ("height", height.into())])
    }

    /// `3 × 4½` for a label.
    pub(super) fn bare_size(self, size: Size) -> String {
        let (width, height) = (self.bare(size.width), self.bare(size.height));
        if width.starts_with('≈') || height.starts_with('≈') {
            let plain = |text: &str| text.replace("≈\u{a0}", "");
            return format!("≈\u{a0}{}\u{a0}×\u{a0}{}", plain(&width), plain(&height));
        }
        format!("{width}\u{a0}×\u{a0}{height}")
    }

    /// The sign for a rounded measure as a word.
    fn about(self, text: &str) -> String {
        if !text.contains('≈') {
            return text.to_owned();
        }
        say("page-about", &[("measure", text.replace("≈\u{a0}", "").into())])
    }

    /// `four and three quarters`; nothing if the length, as it is written here, has no fraction.
    fn words(self, length: Length) -> Option<String> {
        let parts = length.mark_parts(self.rule(length));
        (parts.unit == Unit::Inch && parts.numerator > 0).then(|| {
            let fraction = say(
                "page-fraction",
                &[
                    ("over", parts.numerator.into()),
                    ("under", parts.denominator.into()),
                    ("count", number(parts.numerator).into()),
                ],
            );
            if parts.whole == 0 {
                return fraction;
            }
            say("page-fraction-after", &[("whole", number(parts.whole).into()), ("fraction", fraction.into())])
        })
    }

    pub(super) const fn title(self) -> Style {
        Style::new(Face::Semibold, 30)
    }

    pub(super) fn heading(self) -> Style {
        Style::new(Face::Semibold, if self.large() { 26 } else { 21 })
    }

    pub(super) fn subheading(self) -> Style {
        Style::new(Face::Semibold, if self.large() { 21 } else { 15 })
    }

    pub(super) fn body(self) -> Style {
        Style::new(Face::Regular, self.points(13))
    }

    pub(super) fn item(self) -> Style {
        Style::new(Face::Regular, self.points(12))
    }

    pub(super) fn strong(self) -> Style {
        Style::new(Face::Semibold, self.points(13))
    }

    pub(super) fn small(self) -> Style {
        Style::new(Face::Regular, self.points(11))
    }

    pub(super) fn small_strong(self) -> Style {
        Style::new(Face::Semibold, self.points(11))
    }

    /// So many points, or the least of the edition.
    pub(super) fn points(self, points: i64) -> i64 {
        if self.large() { points.max(18) } else { points }
    }

    /// How a part must lie at the stop of this reader's trimmer.
    ///
    /// With the stop on the other side the same end touches it once the part is turned half round.
    pub(super) fn up(self, cut: &CutStep) -> Up {
        let up = Up::needed(cut.axis, cut.end);
        match self.edition.hand {
            Hand::Right => up,
            Hand::Left => up.turned(Turn::Half),
        }
    }

    /// How a part is turned before a cut: parts that come off the trimmer lie half round too, a whole sheet does not.
    pub(super) fn turn(self, cut: &CutStep) -> Turn {
        if self.edition.hand == Hand::Left && cut.work.iter().any(|work| work.part == PartId::SHEET) {
            return Up::Away.turn_to(self.up(cut));
        }
        cut.turn
    }
}

fn whole(length: Length) -> String {
    number(length.ticks() / Length::INCH.ticks())
}

/// A number in words as far as the message goes.
fn number(number: i64) -> String {
    say("page-number-words", &[("number", number.into())])
}

#[cfg(test)]
mod tests {
    use words::Language;

    use super::super::edition::Paper;
    use super::*;

    fn told(mark: Rule, unit: Unit, print: Print) -> Told {
        Told::new(mark, Edition { paper: Paper::Letter, print, hand: Hand::Right, unit, language: Language::English })
    }

    fn inches(sixteenths: i64) -> Length {
        Length::from_ticks(Length::INCH.ticks() / 16 * sixteenths)
    }

    #[test]
    fn fractions_are_said_in_words_in_large_print() {
        let large = told(Rule::EighthInch, Unit::Inch, Print::Large);
        assert_eq!(large.length(inches(76)), "4¾\u{a0}in (four and three quarters)");
        assert_eq!(large.length(inches(48)), "3\u{a0}in");
        assert_eq!(large.length(inches(8)), "½\u{a0}in (one half)");
        assert_eq!(large.length(inches(51)), "3\u{a0}3⁄16\u{a0}in (three and three sixteenths)");
        let size = Size::new(inches(48), inches(72));
        assert_eq!(large.size(size), "3\u{a0}×\u{a0}4½\u{a0}in (three by four and one half)");
        let fine = Length::from_ticks(Length::INCH.ticks() / 64 * 5);
        assert_eq!(large.length(fine), "5⁄64\u{a0}in (five sixty-fourths)");
        let all = (1..32).map(|n| large.length(Length::from_ticks(Length::INCH.ticks() / 32 * n)));
        for text in all {
            assert!(text.ends_with(')') && !text.contains(['⟨', '{']), "{text}");
        }
    }

    #[test]
    fn what_is_rounded_says_about() {
        let mm = told(Rule::EighthInch, Unit::Millimetre, Print::Normal);
        assert_eq!(mm.length(Length::INCH * 3), "about 76\u{a0}mm");
        assert_eq!(mm.label(Length::INCH * 3), "≈\u{a0}76\u{a0}mm");
        assert_eq!(mm.length(Length::INCH * 5), "127\u{a0}mm");
        let inch = told(Rule::WholeMillimetre, Unit::Inch, Print::Normal);
        assert_eq!(inch.length(Length::mm(148)), "about 5\u{a0}13⁄16\u{a0}in");
        assert_eq!(inch.length(Length::mm(127)), "5\u{a0}in");
        // In the maker's own unit too.
        let own = told(Rule::EighthInch, Unit::Inch, Print::Normal);
        assert_eq!(own.length(Length::from_ticks(Length::INCH.ticks() / 64)), "1⁄64\u{a0}in");
        assert_eq!(own.length(Length::from_ticks(Length::INCH.ticks() / 128 * 3)), "about 1⁄32\u{a0}in");
        assert_eq!(own.length(inches(1)), "1⁄16\u{a0}in");
    }
}
