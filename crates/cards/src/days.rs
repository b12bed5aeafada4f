//! Days of the calendar: counted, moved and named; times of the day. No clock: what day it is today is told.
//!
//! Twenty lines of arithmetic instead of a library for time: there are no zones or leap seconds here.
//!
//! # Source
//! The Gregorian calendar as ISO 8601 has it; days since 1 March of year 0, in eras of 400 years (146 097 days).

use std::fmt;

/// One day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Day(i64);

impl Day {
    /// The day of a year, a month (1 to 12) and a day of the month; `None` if there is no such day.
    pub fn new(year: i64, month: i64, day: i64) -> Option<Day> {
        if !(1..=9_999).contains(&year) || !(1..=12).contains(&month) || day < 1 {
            return None;
        }
        // The year begins in March, so that the day that comes and goes is its last.
        let (shifted, from_march) = (year - i64::from(month < 3), (month + 9) % 12);
        let (era, of_era) = (shifted.div_euclid(400), shifted.rem_euclid(400));
        let of_year = (153 * from_march + 2) / 5 + day - 1;
        let found = Day(era * 146_097 + of_era * 365 + of_era / 4 - of_era / 100 + of_year);
        (found.parts() == (year, month, day)).then_some(found)
    }

    /// The day that so many seconds since the beginning of 1970 fall on, without any zone.
    pub fn of_seconds(seconds: i64) -> Day {
        // 1 January 1970.
        Day(719_468 + seconds.div_euclid(86_400))
    }

    /// Reads `YYYY-MM-DD`; `None` if it is no day.
    ///
    /// # Examples
    /// ```
    /// use cards::days::Day;
    /// assert_eq!(Day::parse("2026-12-05").map(|day| (day.weekday(), day.earlier(21).to_string())), Some((6, "2026-11-14".into())));
    /// assert_eq!(Day::parse("2026-02-29"), None);
    /// ```
    pub fn parse(text: &str) -> Option<Day> {
        let mut parts = text.split('-');
        let mut part = |width: usize| {
            let text = parts.next()?;
            let digits = text.len() == width && text.bytes().all(|digit| digit.is_ascii_digit());
            digits.then(|| text.parse().ok())?
        };
        let (year, month, day) = (part(4)?, part(2)?, part(2)?);
        if parts.next().is_some() { None } else { Day::new(year, month, day) }
    }

    /// So many days earlier.
    #[must_use]
    pub const fn earlier(self, days: i64) -> Day {
        Day(self.0 - days)
    }

    /// Days from another day to this one; below zero if this one comes first.
    pub const fn since(self, other: Day) -> i64 {
        self.0 - other.0
    }

    /// The day of the week: Monday is 1, Sunday is 7.
    ///
    /// # Source
    /// ISO 8601.
    pub const fn weekday(self) -> i64 {
        // 1 March of year 0 was a Wednesday.
        (self.0 + 2).rem_euclid(7) + 1
    }

    /// Year, month and day of the month.
    pub const fn parts(self) -> (i64, i64, i64) {
        let (era, of_era) = (self.0.div_euclid(146_097), self.0.rem_euclid(146_097));
        let years = (of_era - of_era / 1_460 + of_era / 36_524 - of_era / 146_096) / 365;
        let of_year = of_era - (365 * years + years / 4 - years / 100);
        let from_march = (5 * of_year + 2) / 153;
        let day = of_year - (153 * from_march + 2) / 5 + 1;
        let month = if from_march < 10 { from_march + 3 } else { from_march - 9 };
        let year = era * 400 + years + if month < 3 { 1 } else { 0 };
        (year, month, day)
    }
}

impl fmt::Display for Day {
    /// `YYYY-MM-DD`.
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (year, month, day) = self.parts();
        write!(formatter, "{year:04}-{month:02}-{day:02}")
    }
}

/// A time of the day, to the minute.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Time(u32);

/// Minutes of a day.
const DAY: u32 = 24 * 60;

impl Time {
    /// Reads `14:00`, or `14:00:00` as TOML writes it; `None` if it is no time of a day.
    ///
    /// # Examples
    /// ```
    /// use cards::days::Time;
    /// let begins = Time::parse("13:45").map(|time| time.later(150));
    /// assert_eq!(begins.map(|(time, days)| (time.to_string(), days)), Some(("16:15".into(), 0)));
    /// assert_eq!(Time::parse("24:00"), None);
    /// ```
    pub fn parse(text: &str) -> Option<Time> {
        let mut parts = text.strip_suffix(":00").filter(|short| short.contains(':')).unwrap_or(text).split(':');
        let mut part = |most: u32| {
            let text = parts.next()?;
            let digits = (1..=2).contains(&text.len()) && text.bytes().all(|digit| digit.is_ascii_digit());
            text.parse().ok().filter(|number| digits && *number < most)
        };
        let (hours, minutes): (u32, u32) = (part(24)?, part(60)?);
        if parts.next().is_some() { None } else { Some(Time(hours * 60 + minutes)) }
    }

    /// So many minutes later, and how many midnights lie between.
    #[must_use]
    pub const fn later(self, minutes: u32) -> (Time, u32) {
        let all = self.0.saturating_add(minutes);
        (Time(all % DAY), all / DAY)
    }
}

impl fmt::Display for Time {
    /// `HH:MM`.
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{:02}:{:02}", self.0 / 60, self.0 % 60)
    }
}
