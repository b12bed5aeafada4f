//! Reading a length as people write it: `4 3/4 in`, `4-3/4"`, `4¾`, `4,75 in`, `121 mm`, `12.1 cm`.
//!
//! Exact or refused: nothing is rounded here. Left out on purpose: feet, points, named sizes.

use std::str::FromStr;

use crate::{Length, Size, Unit, round};

/// The longest length anybody means: 100 m. What is longer is a typing slip.
pub const LONGEST: Length = Length::mm(100_000);

/// Why a text is not a length. `found` is the text in question, `at` its byte offset in the whole text.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ParseLengthError {
    /// Nothing was written.
    #[error("nothing is written: write a number and `in` or `mm`")]
    Empty,
    /// A number without a unit, and no default unit.
    #[error("no unit after `{found}`: write `in` or `mm`")]
    MissingUnit {
        /// The number as written.
        found: String,
        /// What it would be in inches, if that is a length.
        as_inches: Option<Length>,
        /// What it would be in millimetres, if that is a length.
        as_mm: Option<Length>,
    },
    /// The word after the number is no unit we read.
    #[error("`{found}` is no unit read here: write `in`, `mm` or `cm`")]
    UnknownUnit {
        /// The word as written.
        found: String,
        /// Where it starts.
        at: usize,
    },
    /// Where a number should be there is something else.
    #[error("`{found}` at byte {at} is not a number")]
    NotANumber {
        /// What stands there.
        found: String,
        /// Where it starts.
        at: usize,
    },
    /// Something is left after number and unit.
    #[error("`{found}` at byte {at} is too much: write one number and one unit")]
    Trailing {
        /// What is left.
        found: String,
        /// Where it starts.
        at: usize,
    },
    /// A comma with three digits after it is a thousand to some and a decimal to others.
    #[error("`{found}` may be a thousand or a decimal: write it with a point, or without the comma")]
    AmbiguousComma {
        /// The number as written.
        found: String,
        /// Where it starts.
        at: usize,
    },
    /// The fraction after a whole number is one or more, as in `4 5/4`.
    #[error("the fraction of `{found}` is one or more: write a smaller fraction")]
    FractionTooLarge {
        /// The mixed number as written.
        found: String,
        /// Where it starts.
        at: usize,
    },
    /// A fraction over nothing.
    #[error("`{found}` divides by zero")]
    ZeroDenominator {
        /// The fraction as written.
        found: String,
        /// Where it starts.
        at: usize,
    },
    /// Not a whole number of ticks, so it cannot be kept exactly.
    #[error("`{found}` cannot be kept exactly")]
    TooFine {
        /// The length as written.
        found: String,
        /// The closest length that can be written in the same unit (1/128 in or 0.01 mm; ties away from zero).
        nearest: Length,
        /// That unit.
        unit: Unit,
    },
    /// Longer than [`LONGEST`].
    #[error("`{found}` is longer than 100 m")]
    TooLarge {
        /// The length as written.
        found: String,
    },
    /// Below zero where only a length from nothing upwards makes sense.
    #[error("`{found}` is below zero")]
    Negative {
        /// The length as written.
        found: String,
    },
}

/// Why a text is not a size.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ParseSizeError {
    /// No `x`, `×` or `by` between two lengths.
    #[error("`{found}` is not two lengths: write them as `3 1/2 x 5 in`")]
    NotTwoLengths {
        /// The text as written.
        found: String,
    },
    /// The first length is wrong; its offsets count from the start of the whole text.
    #[error("width: {0}")]
    Width(#[source] ParseLengthError),
    /// The second length is wrong; its offsets count from the start of the whole text.
    #[error("height: {0}")]
    Height(#[source] ParseLengthError),
}

/// Reads a length from nothing upwards. A number without a unit is in `default`, if there is one.
///
/// # Errors
/// Every variant of [`ParseLengthError`]; the text is never rounded and never guessed at.
///
/// # Examples
/// ```
/// # use measure::{parse_length, Length, Unit};
/// let wanted = Length::inches(19, 4);
/// for text in ["4 3/4 in", "4-3/4\"", "4¾″", "4.75 inches", "4,75 in", "12.065 cm"] {
///     assert_eq!(parse_length(text, None).ok(), wanted);
/// }
/// assert_eq!(parse_length("4¾", Some(Unit::Inch)).ok(), wanted);
/// assert!(parse_length("4¾", None).is_err());
/// ```
pub fn parse_length(text: &str, default: Option<Unit>) -> Result<Length, ParseLengthError> {
    let length = parse_signed(text, default)?;
    if length < Length::ZERO { Err(ParseLengthError::Negative { found: text.trim().to_owned() }) } else { Ok(length) }
}

/// Reads a length that may lie below zero: a `-` or `−` before the number turns it round.
///
/// # Errors
/// As [`parse_length`], without `Negative`.
pub fn parse_signed(text: &str, default: Option<Unit>) -> Result<Length, ParseLengthError> {
    Reader { text, at: 0 }.written()?.length(default.map(Scale::from))
}

/// Reads width and height: `3 1/2 x 5 in`, `105 × 148 mm`, `6 by 6` with a default unit.
///
/// A unit written on one side only holds for both sides, before the default.
///
/// # Errors
/// [`ParseSizeError::NotTwoLengths`] without `x`, `×` or `by`; else what is wrong with one side, as [`parse_length`].
///
/// # Examples
/// ```
/// # use measure::{parse_size, Length, Size};
/// let card = Size::new(Length::mm(105), Length::mm(148));
/// assert_eq!(parse_size("105 × 148 mm", None), Ok(card));
/// ```
pub fn parse_size(text: &str, default: Option<Unit>) -> Result<Size, ParseSizeError> {
    let Some((before, after)) = between(text) else {
        return Err(ParseSizeError::NotTwoLengths { found: text.trim().to_owned() });
    };
    let width = Reader { text: &text[..before], at: 0 }.written().map_err(ParseSizeError::Width)?;
    let height = Reader { text, at: after }.written().map_err(ParseSizeError::Height)?;
    let default = default.map(Scale::from);
    let (width_unit, height_unit) = (height.scale.or(default), width.scale.or(default));
    let width = width.length(width_unit).and_then(|side| from_nothing(side, &text[..before]));
    let height = height.length(height_unit).and_then(|side| from_nothing(side, &text[after..]));
    Ok(Size::new(width.map_err(ParseSizeError::Width)?, height.map_err(ParseSizeError::Height)?))
}

fn from_nothing(length: Length, found: &str) -> Result<Length, ParseLengthError> {
    if length < Length::ZERO { Err(ParseLengthError::Negative { found: found.trim().to_owned() }) } else { Ok(length) }
}

/// The byte offsets where the sign between two lengths starts and ends.
fn between(text: &str) -> Option<(usize, usize)> {
    text.char_indices().find_map(|(at, sign)| match sign {
        'x' | 'X' | '×' => Some((at, at + sign.len_utf8())),
        'b' | 'B' if text[at + 1..].starts_with(['y', 'Y']) => Some((at, at + 2)),
        _ => None,
    })
}

impl FromStr for Length {
    type Err = ParseLengthError;

    /// As [`parse_length`] without a default unit.
    fn from_str(text: &str) -> Result<Length, ParseLengthError> {
        parse_length(text, None)
    }
}

/// What one written unit is worth; centimetres are read but never written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Scale {
    Inch,
    Millimetre,
    Centimetre,
}

impl From<Unit> for Scale {
    fn from(unit: Unit) -> Scale {
        match unit {
            Unit::Inch => Scale::Inch,
            Unit::Millimetre => Scale::Millimetre,
        }
    }
}

impl Scale {
    fn ticks(self) -> i128 {
        i128::from(match self {
            Scale::Inch => Length::INCH.ticks(),
            Scale::Millimetre => Length::MM.ticks(),
            Scale::Centimetre => 10 * Length::MM.ticks(),
        })
    }

    fn unit(self) -> Unit {
        if self == Scale::Inch { Unit::Inch } else { Unit::Millimetre }
    }
}

/// A number and perhaps a unit, as read; `below` and `over` are at most [`MOST_DIGITS`] digits long.
#[derive(Debug, Clone, Copy)]
struct Written<'t> {
    found: &'t str,
    value: Fraction,
    scale: Option<Scale>,
}

#[derive(Debug, Clone, Copy)]
struct Fraction {
    above: i128,
    below: i128,
}

impl Written<'_> {
    fn length(self, default: Option<Scale>) -> Result<Length, ParseLengthError> {
        match self.scale.or(default) {
            Some(scale) => self.in_scale(scale),
            None => Err(ParseLengthError::MissingUnit {
                found: self.found.to_owned(),
                as_inches: self.in_scale(Scale::Inch).ok(),
                as_mm: self.in_scale(Scale::Millimetre).ok(),
            }),
        }
    }

    fn in_scale(self, scale: Scale) -> Result<Length, ParseLengthError> {
        let Fraction { above, below } = self.value;
        let (whole, over) = (above * scale.ticks() / below, above * scale.ticks() % below);
        let found = self.found.to_owned();
        let length = match i64::try_from(whole).map(Length::from_ticks) {
            Ok(length) if -LONGEST <= length && length <= LONGEST => length,
            _ => return Err(ParseLengthError::TooLarge { found }),
        };
        if over != 0 {
            let nearest = round::nearest(length, scale.unit().finest());
            return Err(ParseLengthError::TooFine { found, nearest, unit: scale.unit() });
        }
        Ok(length)
    }
}

/// More digits than this are never a length; they keep the sums below far inside an `i128`.
const MOST_DIGITS: usize = 12;

/// Walks once over `text`; `at` is a byte offset on a character's edge.
struct Reader<'t> {
    text: &'t str,
    at: usize,
}

impl<'t> Reader<'t> {
    fn rest(&self) -> &'t str {
        &self.text[self.at..]
    }

    fn skip_spaces(&mut self) {
        self.at = self.text.len() - self.rest().trim_start().len();
    }

    /// Takes the next character if it is one of `signs`.
    fn take(&mut self, signs: &[char]) -> bool {
        let next = self.rest().chars().next().filter(|sign| signs.contains(sign));
        self.at += next.map_or(0, char::len_utf8);
        next.is_some()
    }

    /// Takes as many ASCII digits as there are.
    fn digits(&mut self) -> &'t str {
        let rest = self.rest();
        let count = rest.bytes().take_while(u8::is_ascii_digit).count();
        self.at += count;
        &rest[..count]
    }

    /// Number, unit, nothing more.
    fn written(mut self) -> Result<Written<'t>, ParseLengthError> {
        self.skip_spaces();
        let found = self.rest().trim_end();
        if found.is_empty() {
            return Err(ParseLengthError::Empty);
        }
        let sign = if self.take(&['-', '−']) { -1 } else { 1 };
        let value = self.number(found)?;
        self.skip_spaces();
        let scale = self.unit()?;
        self.skip_spaces();
        if !self.rest().is_empty() {
            return Err(ParseLengthError::Trailing { found: self.rest().trim_end().to_owned(), at: self.at });
        }
        Ok(Written { found, value: Fraction { above: sign * value.above, ..value }, scale })
    }

    /// `4`, `4.75`, `4,75`, `.75`, `3/4`, `¾`, `4 3/4`, `4-3/4`, `4¾`, `4 ¾`.
    fn number(&mut self, found: &str) -> Result<Fraction, ParseLengthError> {
        let start = self.at;
        if let Some(glyph) = self.glyph() {
            return Ok(glyph);
        }
        let first = self.digits();
        if first.is_empty() && !self.rest().starts_with(['.', ',']) {
            return Err(ParseLengthError::NotANumber { found: self.rest().trim_end().to_owned(), at: start });
        }
        if self.take(&['.', ',']) {
            return self.decimals(start, first, found);
        }
        if self.take(&SLASHES) {
            return self.denominator(start, first, found);
        }
        let whole = number_of(first).ok_or_else(|| ParseLengthError::TooLarge { found: found.to_owned() })?;
        let Some(part) = self.part_after(found)? else { return Ok(Fraction { above: whole, below: 1 }) };
        if part.above >= part.below {
            let found = self.text[start..self.at].to_owned();
            return Err(ParseLengthError::FractionTooLarge { found, at: start });
        }
        Ok(Fraction { above: whole * part.below + part.above, below: part.below })
    }

    /// The fraction after a whole number, across a hyphen or spaces; nothing is taken if there is none.
    fn part_after(&mut self, found: &str) -> Result<Option<Fraction>, ParseLengthError> {
        let whole_end = self.at;
        if !self.take(&['-', '‐', '‑', '–']) {
            self.skip_spaces();
        }
        if let Some(glyph) = self.glyph() {
            return Ok(Some(glyph));
        }
        let start = self.at;
        let above = self.digits();
        if start > whole_end && !above.is_empty() && self.take(&SLASHES) {
            return self.denominator(start, above, found).map(Some);
        }
        self.at = whole_end;
        Ok(None)
    }

    fn denominator(&mut self, start: usize, above: &str, found: &str) -> Result<Fraction, ParseLengthError> {
        let at = self.at;
        let below = self.digits();
        if below.is_empty() || above.is_empty() {
            return Err(ParseLengthError::NotANumber { found: self.text[start..].trim_end().to_owned(), at });
        }
        let (Some(above), Some(below)) = (number_of(above), number_of(below)) else {
            return Err(ParseLengthError::TooLarge { found: found.to_owned() });
        };
        if below == 0 {
            let found = self.text[start..self.at].to_owned();
            return Err(ParseLengthError::ZeroDenominator { found, at: start });
        }
        Ok(Fraction { above, below })
    }

    /// The digits after a point or comma that has just been taken.
    fn decimals(&mut self, start: usize, whole: &str, found: &str) -> Result<Fraction, ParseLengthError> {
        let comma = self.text[..self.at].ends_with(',');
        let digits = self.digits();
        let number = &self.text[start..self.at];
        if digits.is_empty() {
            return Err(ParseLengthError::NotANumber { found: self.text[start..].trim_end().to_owned(), at: start });
        }
        if comma && digits.len() == 3 && !whole.trim_start_matches('0').is_empty() {
            return Err(ParseLengthError::AmbiguousComma { found: number.to_owned(), at: start });
        }
        let whole = if whole.is_empty() { "0" } else { whole };
        let Some(whole) = number_of(whole) else {
            return Err(ParseLengthError::TooLarge { found: found.to_owned() });
        };
        // Digits past the twelfth cannot make a whole tick; a 1 in their place keeps "too fine" true.
        let digits = digits.trim_end_matches('0');
        let kept = &digits[..digits.len().min(MOST_DIGITS)];
        let more = i128::from(kept.len() < digits.len());
        let below = kept.bytes().fold(10, |below, _| below * 10);
        let above = number_of(kept).unwrap_or(0) * 10 + more;
        Ok(Fraction { above: whole * below + above, below })
    }

    /// A fraction of a single glyph, such as `¾`.
    fn glyph(&mut self) -> Option<Fraction> {
        let next = self.rest().chars().next()?;
        let (_, above, below) = GLYPHS.into_iter().find(|(glyph, ..)| *glyph == next)?;
        self.at += next.len_utf8();
        Some(Fraction { above: i128::from(above), below: i128::from(below) })
    }

    /// The unit that stands next, if any: a word, or marks for inches.
    fn unit(&mut self) -> Result<Option<Scale>, ParseLengthError> {
        let (rest, at) = (self.rest(), self.at);
        if let Some(marks) = INCH_MARKS.into_iter().find(|marks| rest.starts_with(marks)) {
            self.at += marks.len();
            return Ok(Some(Scale::Inch));
        }
        let end = rest.find(|sign: char| !sign.is_alphabetic()).unwrap_or(rest.len());
        let word = rest[..end].to_lowercase();
        let scale = match word.as_str() {
            "" if rest.starts_with(['\'', '’', '′']) => None,
            "" => return Ok(None),
            "in" | "inch" | "inches" | "zoll" => Some(Scale::Inch),
            "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => Some(Scale::Millimetre),
            "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Some(Scale::Centimetre),
            _ => None,
        };
        if scale.is_none() {
            return Err(ParseLengthError::UnknownUnit { found: rest.trim_end().to_owned(), at });
        }
        self.at += end;
        self.take(&['.']);
        Ok(scale)
    }
}

/// The number of these digits; `None` if they are too many. No digits are zero.
fn number_of(digits: &str) -> Option<i128> {
    let digits = digits.trim_start_matches('0');
    if digits.len() > MOST_DIGITS {
        return None;
    }
    Some(digits.bytes().fold(0, |number, digit| number * 10 + i128::from(digit - b'0')))
}

/// Solidus, fraction slash, division slash.
const SLASHES: [char; 3] = ['/', '⁄', '∕'];

/// What people write for inches: straight and curly quotes, double primes, two single ones of a kind.
const INCH_MARKS: [&str; 7] = ["\"", "″", "”", "“", "''", "’’", "′′"];

/// Fractions of one glyph and their parts.
///
/// # Source
/// The Unicode Standard, Latin-1 Supplement (U+00BC–00BE) and Number Forms (U+2150–215E).
pub(crate) const GLYPHS: [(char, i64, i64); 18] = [
    ('½', 1, 2),
    ('⅓', 1, 3),
    ('⅔', 2, 3),
    ('¼', 1, 4),
    ('¾', 3, 4),
    ('⅕', 1, 5),
    ('⅖', 2, 5),
    ('⅗', 3, 5),
    ('⅘', 4, 5),
    ('⅙', 1, 6),
    ('⅚', 5, 6),
    ('⅐', 1, 7),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
    ('⅑', 1, 9),
    ('⅒', 1, 10),
];
