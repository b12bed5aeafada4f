//! Laws that hold for every length: what is written reads back, roundings keep their side, no text makes a panic.
#![allow(clippy::unwrap_used, reason = "tests")]

use measure::{
    FractionStyle, Length, Mark, Size, Unit, UnitSign, from_steps, parse_length, parse_signed, parse_size, round,
    steps_exact, steps_floor, write, write_as, write_exact, write_exact_in,
};
use proptest::prelude::*;

fn mark() -> impl Strategy<Value = Mark> {
    prop::sample::select(Mark::ALL.to_vec())
}

fn unit() -> impl Strategy<Value = Unit> {
    prop::sample::select(vec![Unit::Inch, Unit::Millimetre])
}

/// Lengths up to 10 m either way.
fn length() -> impl Strategy<Value = Length> {
    (-7_200_000_000_i64..=7_200_000_000).prop_map(Length::from_ticks)
}

/// Texts that come near to a length, so that the inner branches are met.
fn near_text() -> impl Strategy<Value = String> {
    let parts = vec![
        "4",
        "0",
        "000",
        "12",
        "99999999999999999999",
        "/",
        "⁄",
        ".",
        ",",
        "-",
        "−",
        " ",
        "\u{a0}",
        "¾",
        "⅓",
        "in",
        "mm",
        "cm",
        "by",
        "x",
        "×",
        "\"",
        "″",
        "'",
        "’",
        "é",
        "b",
        "İ",
    ];
    prop::collection::vec(prop::sample::select(parts), 0..9).prop_map(|parts| parts.concat())
}

proptest! {
    // 7 800 half inches are 99 m: up to the longest length that is read.
    #[test]
    fn written_at_its_mark_a_length_reads_back(steps in -7_800_i64..7_800, mark in mark()) {
        let length = mark.step() * steps;
        for style in [FractionStyle::Plain, FractionStyle::Typographic] {
            let shown = write_as(length, mark, style, UnitSign::Shown);
            prop_assert!(shown.exact);
            prop_assert_eq!(parse_signed(&shown.text, None), Ok(length));
            let hidden = write_as(length, mark, style, UnitSign::Hidden);
            prop_assert_eq!(parse_signed(&hidden.text, Some(mark.unit())), Ok(length));
        }
    }

    #[test]
    fn what_is_written_is_the_nearest_mark(length in length(), mark in mark()) {
        let written = write(length, mark);
        prop_assert!(written.error.ticks().abs() * 2 <= mark.step().ticks());
        prop_assert_eq!(parse_signed(&written.text, None), Ok(length + written.error));
        prop_assert_eq!(written.exact, mark.holds(length));
    }

    #[test]
    fn exact_text_reads_back(length in length(), unit in unit()) {
        prop_assert_eq!(parse_signed(&write_exact(length), None), Ok(length));
        prop_assert_eq!(parse_signed(&write_exact_in(length, unit), None), Ok(length));
    }

    #[test]
    fn files_keep_lengths_sizes_and_marks(width in length(), height in length(), mark in mark(), unit in unit()) {
        let width = round::floor(width, mark.step());
        let size = Size::new(Length::from_ticks(width.ticks().abs()), Length::from_ticks(height.ticks().abs()));
        let text = serde_json::to_string(&(width, size, mark, unit)).unwrap();
        prop_assert_eq!(serde_json::from_str::<(Length, Size, Mark, Unit)>(&text).unwrap(), (width, size, mark, unit));
    }

    #[test]
    fn roundings_keep_their_side(length in length(), mark in mark()) {
        let step = mark.step();
        let (below, above) = (round::floor(length, step), round::ceiling(length, step));
        prop_assert!(below <= length && length <= above);
        let gap = if mark.holds(length) { Length::ZERO } else { step };
        prop_assert_eq!(above - below, gap);
        let nearest = round::nearest(length, step);
        prop_assert!(nearest == below || nearest == above);
        prop_assert_eq!(round::nearest(-length, step), -nearest);
    }

    #[test]
    fn steps_and_lengths(steps in 0_u32..10_000_000, mark in mark(), over in 1_i64..7_000) {
        let length = from_steps(steps, mark.step());
        let more = length + Length::from_ticks(over);
        prop_assert_eq!(steps_exact(length, mark.step()), Some(steps));
        prop_assert_eq!(steps_floor(more, mark.step()), Some(steps));
        prop_assert_eq!(steps_exact(more, mark.step()), None);
        prop_assert_eq!(steps_floor(-more, mark.step()), None);
    }

    #[test]
    fn no_bytes_make_a_panic(bytes in prop::collection::vec(any::<u8>(), 0..40), unit in prop::option::of(unit())) {
        let text = String::from_utf8_lossy(&bytes);
        let _ = (parse_length(&text, unit), parse_signed(&text, unit), parse_size(&text, unit));
    }

    #[test]
    fn no_text_near_a_length_makes_a_panic(text in near_text(), unit in prop::option::of(unit())) {
        let _ = parse_size(&text, unit);
        if let Ok(length) = parse_length(&text, unit) {
            prop_assert!(Length::ZERO <= length && length <= measure::LONGEST);
            prop_assert_eq!(parse_length(&write_exact(length), None), Ok(length));
        }
    }
}

#[test]
fn files_refuse_numbers_and_say_what_to_write() {
    let error = serde_json::from_str::<Length>("4.25").unwrap_err().to_string();
    assert!(error.contains("4 1/4 in"), "{error}");
    assert!(serde_json::from_str::<Mark>("\"1/10 in\"").is_err());
    assert!(serde_json::from_str::<Size>("\"4 in\"").is_err());
}
