//! Writing a length at the marks of a rule, and saying how far off the writing is.
//!
//! Left out on purpose: words (`four and three quarters`); they belong to the language of the page, made from [`MarkParts`].

use std::fmt;

use crate::parse::GLYPHS;
use crate::{Length, Mark, Size, Unit};

/// A length as written at a mark.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Written {
    /// What to print: `4 3/4`, `4¾ in`, `148.5 mm`.
    pub text: String,
    /// True if the text says the length exactly.
    pub exact: bool,
    /// What was printed less what was wanted.
    pub error: Length,
}

/// A length rounded to a mark and taken apart, in lowest terms: sign, whole units, `numerator / denominator` of one.
///
/// `numerator` is 0 and `denominator` 1 if nothing is left over.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct MarkParts {
    /// True below zero.
    pub negative: bool,
    /// Whole units.
    pub whole: i64,
    /// Parts over, below `denominator`.
    pub numerator: i64,
    /// Parts in a unit.
    pub denominator: i64,
    /// The unit.
    pub unit: Unit,
}

/// How a fraction of an inch is set. Millimetres are decimals in both.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FractionStyle {
    /// `4 3/4`: for files, commands and plain text.
    Plain,
    /// `4¾`, and `4 3⁄16` with the fraction slash U+2044 where no single glyph exists: for pages.
    Typographic,
}

/// Whether the unit is written behind the number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum UnitSign {
    /// ` in` or ` mm` follows.
    Shown,
    /// The number alone; the page says the unit elsewhere.
    Hidden,
}

impl Length {
    /// This length at the nearest mark, taken apart; a tie goes to the mark further from zero.
    ///
    /// # Examples
    /// ```
    /// # use measure::{Length, Mark};
    /// let parts = Length::mm(121).mark_parts(Mark::SixteenthInch);
    /// assert_eq!((parts.whole, parts.numerator, parts.denominator), (4, 3, 4));
    /// ```
    pub fn mark_parts(self, mark: Mark) -> MarkParts {
        let nearest = mark.nearest(self).ticks();
        let steps = nearest.abs() / mark.step().ticks();
        let (mut numerator, mut denominator) = (steps % mark.parts(), mark.parts());
        // Every mark but the tenth of a millimetre is a power of two, so 2 and 5 are all that can be shared.
        for factor in [2, 5] {
            while numerator % factor == 0 && denominator % factor == 0 {
                (numerator, denominator) = (numerator / factor, denominator / factor);
            }
        }
        MarkParts { negative: nearest < 0, whole: steps / mark.parts(), numerator, denominator, unit: mark.unit() }
    }
}

/// Writes `length` at the nearest mark with plain fractions and its unit: `4 3/4 in`, `148.5 mm`.
///
/// What is written at a mark the length lies on reads back as the same length.
///
/// # Examples
/// ```
/// # use measure::{write, Length, Mark};
/// let written = write(Length::mm(105), Mark::SixteenthInch);
/// assert_eq!(written.text, "4 1/8 in");
/// assert!(!written.exact);
/// assert_eq!(written.error.to_mm(), -0.225);
/// ```
pub fn write(length: Length, mark: Mark) -> Written {
    write_as(length, mark, FractionStyle::Plain, UnitSign::Shown)
}

/// As [`write()`], with the fraction set as `style` says and the unit shown or hidden.
pub fn write_as(length: Length, mark: Mark, style: FractionStyle, sign: UnitSign) -> Written {
    let mut text = number(length.mark_parts(mark), style);
    if sign == UnitSign::Shown {
        text.push(' ');
        text.push_str(mark.unit().sign());
    }
    let error = mark.nearest(length) - length;
    Written { text, exact: error == Length::ZERO, error }
}

/// The plain text that says `length` exactly and reads back as it: inches to 1/128, else millimetres to 0.01, else
/// a fraction of a millimetre (`1/720000 mm` is one tick). The form of project files.
///
/// # Examples
/// ```
/// # use measure::{write_exact, Length};
/// assert_eq!(write_exact(Length::from_ticks(77_724_000)), "4 1/4 in");
/// assert_eq!(write_exact(Length::mm(121)), "121 mm");
/// ```
pub fn write_exact(length: Length) -> String {
    write_exact_in(length, Unit::Inch)
}

/// As [`write_exact`], trying the maker's own unit first: 127 mm is `5 in` to one and `127 mm` to another.
pub fn write_exact_in(length: Length, first: Unit) -> String {
    let inches = Mark::HundredTwentyEighthInch.holds(length);
    let hundredths = length.ticks() % Unit::Millimetre.finest().ticks() == 0;
    if inches && (first == Unit::Inch || !hundredths) {
        return write(length, Mark::HundredTwentyEighthInch).text;
    }
    let mm = Length::MM.ticks().unsigned_abs();
    let sign = if length < Length::ZERO { "-" } else { "" };
    let (whole, over) = (length.ticks().unsigned_abs() / mm, length.ticks().unsigned_abs() % mm);
    if hundredths {
        return format!("{sign}{whole}{} mm", decimals(over * 100 / mm));
    }
    let divisor = greatest_common_divisor(over, mm);
    let whole = if whole == 0 { String::new() } else { format!("{whole} ") };
    format!("{sign}{whole}{}/{} mm", over / divisor, mm / divisor)
}

impl fmt::Display for Length {
    /// As [`write_exact`].
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.pad(&write_exact(*self))
    }
}

impl fmt::Display for Size {
    /// Exactly, width first; the unit once if both sides share it: `4 1/4 x 5 1/2 in`.
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (width, height) = (write_exact(self.width), write_exact(self.height));
        let shared =
            [" in", " mm"].into_iter().find_map(|sign| width.strip_suffix(sign).filter(|_| height.ends_with(sign)));
        formatter.pad(&format!("{} x {height}", shared.unwrap_or(&width)))
    }
}

impl fmt::Display for Mark {
    /// The step: `1/8 in`, `0.5 mm`.
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.pad(&write(self.step(), *self).text)
    }
}

fn number(parts: MarkParts, style: FractionStyle) -> String {
    let sign = if parts.negative { "-" } else { "" };
    let MarkParts { whole, numerator, denominator, .. } = parts;
    if numerator == 0 {
        return format!("{sign}{whole}");
    }
    if parts.unit == Unit::Millimetre {
        return format!("{sign}{whole}.{}", numerator * 10 / denominator);
    }
    let glyph = GLYPHS.into_iter().find(|&(_, above, below)| (above, below) == (numerator, denominator));
    let whole = if whole == 0 { String::new() } else { whole.to_string() };
    let gap = if whole.is_empty() { "" } else { " " };
    match (style, glyph) {
        (FractionStyle::Plain, _) => format!("{sign}{whole}{gap}{numerator}/{denominator}"),
        (FractionStyle::Typographic, Some((glyph, ..))) => format!("{sign}{whole}{glyph}"),
        (FractionStyle::Typographic, None) => format!("{sign}{whole}{gap}{numerator}⁄{denominator}"),
    }
}

/// `.25`, `.5` or nothing: `hundredths` without the zeros at its end.
fn decimals(hundredths: u64) -> String {
    let digits = format!(".{hundredths:02}");
    digits.trim_end_matches('0').trim_end_matches('.').to_owned()
}

fn greatest_common_divisor(a: u64, b: u64) -> u64 {
    if b == 0 { a } else { greatest_common_divisor(b, a % b) }
}
