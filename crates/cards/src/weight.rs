//! Weights: whole nanograms, so that ounces and grams are both exact; paper's weight from its area and grammage.
//!
//! Left out on purpose: what a scale says. A computed weight is an estimate; the maker weighs one finished card.

use std::iter::Sum;
use std::ops::Add;

use measure::Length;

/// An exact weight in whole nanograms.
///
/// # Source
/// 1 lb = 0.453 592 37 kg exactly, 1 oz = 1/16 lb: international yard and pound agreement, 1959.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Weight(u64);

impl Weight {
    /// Nothing.
    pub const ZERO: Weight = Weight(0);
    /// One gram.
    pub const GRAM: Weight = Weight(1_000_000_000);
    /// One ounce: 28.349 523 125 g.
    pub const OUNCE: Weight = Weight(28_349_523_125);

    /// So many milligrams.
    pub const fn milligrams(milligrams: u64) -> Weight {
        Weight(milligrams.saturating_mul(1_000_000))
    }

    /// So many thousandths of an ounce.
    pub const fn thousandths_of_an_ounce(thousandths: u64) -> Weight {
        // One ounce in nanograms divides by 125 and 5: a thousandth is 28 349 523.125 ng, rounded down.
        Weight(Weight::OUNCE.0.saturating_mul(thousandths) / 1_000)
    }

    /// The nanograms of this weight.
    pub const fn nanograms(self) -> u64 {
        self.0
    }

    /// Paper of that area (square ticks) and grammage (micrograms a square metre), to the nearest nanogram.
    ///
    /// # Source
    /// Grammage is mass ÷ area (ISO 536).
    pub fn of_paper(area: i128, micrograms_per_m2: u64) -> Weight {
        // One metre is 720 000 000 ticks.
        let metre = i128::from(Length::MM.ticks()) * 1_000;
        let square = metre * metre;
        // Square ticks of a square metre and micrograms stay far below 2^127.
        let nanograms = (area.max(0) * i128::from(micrograms_per_m2) * 1_000 + square / 2) / square;
        Weight(u64::try_from(nanograms).unwrap_or(u64::MAX))
    }

    /// This weight so many times.
    #[must_use]
    pub const fn times(self, times: u32) -> Weight {
        Weight(self.0.saturating_mul(times as u64))
    }

    /// Reads `0.9 g`, `13 g`, `3.5 oz`; at most four decimals. `None` if it is no weight.
    ///
    /// # Examples
    /// ```
    /// use cards::weight::Weight;
    /// assert_eq!(Weight::parse("0.9 g"), Some(Weight::milligrams(900)));
    /// assert_eq!(Weight::parse("1 oz"), Some(Weight::OUNCE));
    /// assert_eq!(Weight::parse("13"), None);
    /// ```
    pub fn parse(text: &str) -> Option<Weight> {
        let text = text.trim();
        let (number, unit) = if let Some(number) = text.strip_suffix("oz") {
            (number, Weight::OUNCE)
        } else {
            (text.strip_suffix('g')?, Weight::GRAM)
        };
        let number = number.trim_end();
        let (whole, part) = number.split_once('.').unwrap_or((number, ""));
        let digits = |text: &str| text.bytes().all(|digit| digit.is_ascii_digit());
        if whole.is_empty() || whole.len() > 6 || part.len() > 4 || !digits(whole) || !digits(part) {
            return None;
        }
        let ten_thousandths: u64 = format!("{whole}{part:0<4}").parse().ok()?;
        let nanograms = u128::from(unit.0) * u128::from(ten_thousandths) / 10_000;
        u64::try_from(nanograms).ok().map(Weight)
    }

    /// As a maker reads it off a scale: tenths of a gram, rounded to the nearest, a tie upwards: `13.0`.
    pub fn in_grams(self) -> String {
        let tenths = (self.0 + 50_000_000) / 100_000_000;
        format!("{}.{}", tenths / 10, tenths % 10)
    }

    /// Hundredths of an ounce, rounded to the nearest, a tie upwards: `0.46`.
    pub fn in_ounces(self) -> String {
        let hundredths = (u128::from(self.0) * 200 + u128::from(Weight::OUNCE.0)) / (2 * u128::from(Weight::OUNCE.0));
        format!("{}.{:02}", hundredths / 100, hundredths % 100)
    }

    /// Exactly, in grams: `0.9 g`.
    pub fn exact_grams(self) -> String {
        let text = format!("{}.{:09}", self.0 / 1_000_000_000, self.0 % 1_000_000_000);
        format!("{} g", text.trim_end_matches('0').trim_end_matches('.'))
    }

    /// The text that [`Weight::parse`] reads back as this weight, if it read it before: grams where they say it in four
    /// decimals, else ounces.
    pub fn exact_text(self) -> String {
        if self.0.is_multiple_of(100_000) {
            return self.exact_grams();
        }
        // What was read in ounces was rounded down: the next ten-thousandth above says it again.
        let ounces = (u128::from(self.0) * 10_000).div_ceil(u128::from(Weight::OUNCE.0));
        let text = format!("{}.{:04}", ounces / 10_000, ounces % 10_000);
        format!("{} oz", text.trim_end_matches('0').trim_end_matches('.'))
    }
}

impl Add for Weight {
    type Output = Weight;
    fn add(self, other: Weight) -> Weight {
        Weight(self.0.saturating_add(other.0))
    }
}

impl Sum for Weight {
    fn sum<I: Iterator<Item = Weight>>(weights: I) -> Weight {
        weights.fold(Weight::ZERO, Add::add)
    }
}

/// A grade of paper sold by the pound of 500 sheets of its basic size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Grade {
    /// 20 × 26 in.
    Cover,
    /// 25 × 38 in: text, book, offset.
    Text,
    /// 17 × 22 in: bond, writing.
    Bond,
    /// 25 1/2 × 30 1/2 in.
    Index,
    /// 22 1/2 × 28 1/2 in.
    Bristol,
    /// 24 × 36 in.
    Tag,
}

impl Grade {
    /// Every grade.
    pub const ALL: [Grade; 6] = [Grade::Cover, Grade::Text, Grade::Bond, Grade::Index, Grade::Bristol, Grade::Tag];

    /// Its basic size in half inches.
    const fn half_inches(self) -> (u64, u64) {
        match self {
            Grade::Cover => (40, 52),
            Grade::Text => (50, 76),
            Grade::Bond => (34, 44),
            Grade::Index => (51, 61),
            Grade::Bristol => (45, 57),
            Grade::Tag => (48, 72),
        }
    }

    /// The name the trade gives it, as a code for messages.
    pub const fn code(self) -> &'static str {
        match self {
            Grade::Cover => "cover",
            Grade::Text => "text",
            Grade::Bond => "bond",
            Grade::Index => "index",
            Grade::Bristol => "bristol",
            Grade::Tag => "tag",
        }
    }

    /// Micrograms a square metre of so many pounds, to the nearest.
    ///
    /// The same number of pounds is another paper in another grade: 80 lb text is 118 g/m², 80 lb cover 216 g/m².
    ///
    /// # Source
    /// lb × 453.592 37 g ÷ (500 × width × height × 0.000 645 16 m²), exact by definition of pound and inch; basic
    /// sizes as published by paper merchants.
    ///
    /// # Examples
    /// ```
    /// use cards::weight::Grade;
    /// assert_eq!(Grade::Cover.micrograms_per_m2(80), 216_329_101);
    /// ```
    pub const fn micrograms_per_m2(self, pounds: u32) -> u64 {
        let (width, height) = self.half_inches();
        // A pound is 45 359 237 times ten micrograms, a square half inch 16 129 hundredths of a square millimetre.
        let mass = pounds as u128 * 45_359_237 * 1_000_000_000;
        let area = 500 * width as u128 * height as u128 * 16_129;
        #[allow(clippy::cast_possible_truncation, reason = "a paper of 2^32 lb stays below 2^64 µg")]
        let rounded = ((mass * 2 + area) / (2 * area)) as u64;
        rounded
    }
}

/// The cover weight in pounds nearest to a grammage, as North American packs print it: 216 g/m² is 80.
pub fn cover_pounds(gsm: u32) -> u32 {
    const KNOWN: [u32; 11] = [50, 60, 65, 80, 90, 100, 105, 110, 120, 130, 140];
    let apart = |pounds: &u32| Grade::Cover.micrograms_per_m2(*pounds).abs_diff(u64::from(gsm) * 1_000_000);
    KNOWN.into_iter().min_by_key(apart).unwrap_or(80)
}
