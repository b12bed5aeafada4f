//! Lengths as people write them, and the closest mark of a 1/16 in rule.
//!
//! Source: `tests/data/length_parse.csv`, arithmetic on 1 in = 25.4 mm.
#![allow(clippy::unwrap_used, reason = "tests")]

use measure::{
    FractionStyle, Length, Mark, ParseLengthError, ParseSizeError, Size, Unit, UnitSign, parse_length, parse_signed,
    parse_size, write, write_as, write_exact, write_exact_in,
};

mod table;

fn inches(above: i64, below: i64) -> Length {
    Length::inches(above, below).unwrap()
}

#[test]
fn table_of_written_lengths() {
    let rows = table::rows(include_str!("data/length_parse.csv"));
    assert_eq!(rows.len(), 14);
    for row in rows {
        let length = parse_length(&row["text"], None).unwrap();
        assert_eq!(length, table::decimal(&row["mm"], Length::MM), "{}", row["text"]);
        let written = write(length, Mark::SixteenthInch);
        assert_eq!(written.text, format!("{} in", row["nearest_16th_in"]));
        assert_eq!(written.error, table::decimal(&row["error_mm"], Length::MM));
        assert_eq!(written.exact, written.error == Length::ZERO);
    }
}

#[test]
fn many_ways_to_write_one_length() {
    let ways = [
        "4 3/4 in",
        "4-3/4\"",
        "4¾\"",
        "4 ¾ in",
        "4¾″",
        "4 3⁄4 in",
        "4 3∕4 in",
        "4.75 in",
        "4.75\"",
        "4,75 in",
        "4.7500 in",
        "4¾”",
        "4¾''",
        "4¾’’",
        "4¾′′",
        "4¾ inches",
        "4 3/4 inch",
        "4.75 In.",
        "  4\u{a0}3/4\u{202f}in ",
        "19/4 in",
        "4 6/8 in",
        "4–3/4 in",
        "12.065 cm",
        "120.65 mm",
        "120,65 Millimetres",
        "00004.75 in",
        "4¾in",
    ];
    for way in ways {
        assert_eq!(parse_length(way, None), Ok(inches(19, 4)), "{way}");
        assert_eq!(way.parse(), Ok(inches(19, 4)));
    }
    assert_eq!(parse_length("3⁄4 in", None), Ok(inches(3, 4)));
    assert_eq!(parse_length(".5 in", None), Ok(inches(1, 2)));
    assert_eq!(parse_length("½ mm", None), Ok(Length::from_ticks(360_000)));
    assert_eq!(parse_length("1/3 in", None), Ok(Length::from_ticks(6_096_000)));
}

#[test]
fn number_without_a_unit_takes_the_default_or_says_what_it_would_be() {
    assert_eq!(parse_length("4¾", Some(Unit::Inch)), Ok(inches(19, 4)));
    assert_eq!(parse_length("121,5", Some(Unit::Millimetre)), Ok(Length::from_ticks(87_480_000)));
    assert_eq!(parse_length("5 in", Some(Unit::Millimetre)), Ok(inches(5, 1)));
    let error = ParseLengthError::MissingUnit {
        found: "4¾".to_owned(),
        as_inches: Some(inches(19, 4)),
        as_mm: Some(Length::from_ticks(3_420_000)),
    };
    assert_eq!(parse_length(" 4¾ ", None), Err(error));
}

#[test]
fn what_is_no_length_is_refused_with_its_facts() {
    use ParseLengthError as E;
    let at = |found: &str, at| (found.to_owned(), at);
    let refused = |text: &str| parse_length(text, None).unwrap_err();
    assert_eq!(refused("  "), E::Empty);
    let (found, at_byte) = at("pt", 2);
    assert_eq!(refused("5 pt"), E::UnknownUnit { found, at: at_byte });
    let (found, at_byte) = at("'", 1);
    assert_eq!(refused("5'"), E::UnknownUnit { found, at: at_byte });
    let (found, at_byte) = at("in", 0);
    assert_eq!(refused("in"), E::NotANumber { found, at: at_byte });
    let (found, at_byte) = at("1,000", 0);
    assert_eq!(refused("1,000 mm"), E::AmbiguousComma { found, at: at_byte });
    assert_eq!(parse_length("0,125 in", None), Ok(inches(1, 8)));
    let (found, at_byte) = at("4 5/4", 0);
    assert_eq!(refused("4 5/4 in"), E::FractionTooLarge { found, at: at_byte });
    let (found, at_byte) = at("3/0", 2);
    assert_eq!(refused("4 3/0 in"), E::ZeroDenominator { found, at: at_byte });
    let (found, at_byte) = at("5 in", 5);
    assert_eq!(refused("4 in 5 in"), E::Trailing { found, at: at_byte });
    for text in [
        "4/ in",
        "/4 in",
        "4. in",
        ". in",
        "4 3/ in",
        "¼/2 in",
        "4 - 3/4 in",
        "4.5.5 in",
        "4.5 3/4 in",
        "--4 in",
        "1e3 mm",
    ] {
        parse_length(text, None).unwrap_err();
    }
}

#[test]
fn exact_or_refused() {
    let fine = parse_length("4.12345678 in", None).unwrap_err();
    let nearest = inches(528, 128);
    assert_eq!(fine, ParseLengthError::TooFine { found: "4.12345678 in".to_owned(), nearest, unit: Unit::Inch });
    assert!(matches!(parse_length("0.00000000000000000000000001 mm", None), Err(ParseLengthError::TooFine { .. })));
    assert!(matches!(parse_length("1/7 in", None), Err(ParseLengthError::TooFine { .. })));
    assert_eq!(parse_length("100000 mm", None), Ok(measure::LONGEST));
    for large in
        ["100000.01 mm", "99999999999 in", "999999999999999999999999999999999 cm", "9999999999999999999999/1 in"]
    {
        assert!(matches!(parse_length(large, None), Err(ParseLengthError::TooLarge { .. })), "{large}");
    }
}

#[test]
fn below_zero_only_where_asked() {
    assert_eq!(parse_signed("-4 3/4 in", None), Ok(-inches(19, 4)));
    assert_eq!(parse_signed("−1,5 mm", None), Ok(Length::from_ticks(-1_080_000)));
    assert_eq!(parse_length("-1 in", None), Err(ParseLengthError::Negative { found: "-1 in".to_owned() }));
    assert_eq!(parse_length("-0 in", None), Ok(Length::ZERO));
}

#[test]
fn sizes() {
    let card = Size::new(inches(7, 2), inches(5, 1));
    for text in
        ["3 1/2 x 5 in", "3½ × 5\"", "3½\" by 5\"", "3.5in X 5in", "3 1/2 in x 5", "88.9 x 127 mm", "3½ x 12.7 cm"]
    {
        let wanted =
            if text == "3½ x 12.7 cm" { Size::new(Length::from_ticks(25_200_000), inches(5, 1)) } else { card };
        assert_eq!(parse_size(text, None), Ok(wanted), "{text}");
    }
    assert_eq!(parse_size("3½x5", Some(Unit::Inch)), Ok(card));
    assert!(matches!(parse_size("3½x5", None), Err(ParseSizeError::Width(ParseLengthError::MissingUnit { .. }))));
    assert!(matches!(parse_size("3½ 5 in", None), Err(ParseSizeError::NotTwoLengths { .. })));
    let trailing = ParseLengthError::UnknownUnit { found: "x 6".to_owned(), at: 7 };
    assert_eq!(parse_size("4 x 5 \u{20}x 6", None), Err(ParseSizeError::Height(trailing)));
    assert!(matches!(parse_size("-4 x 5 in", None), Err(ParseSizeError::Width(ParseLengthError::Negative { .. }))));
}

#[test]
fn written_forms() {
    let written = |length, mark, style| write_as(length, mark, style, UnitSign::Hidden).text;
    assert_eq!(written(inches(19, 4), Mark::SixteenthInch, FractionStyle::Plain), "4 3/4");
    assert_eq!(written(inches(19, 4), Mark::SixteenthInch, FractionStyle::Typographic), "4¾");
    assert_eq!(written(inches(67, 16), Mark::SixteenthInch, FractionStyle::Typographic), "4 3⁄16");
    assert_eq!(written(inches(3, 16), Mark::SixteenthInch, FractionStyle::Typographic), "3⁄16");
    assert_eq!(written(inches(-1, 8), Mark::EighthInch, FractionStyle::Typographic), "-⅛");
    assert_eq!(written(inches(12, 1), Mark::EighthInch, FractionStyle::Plain), "12");
    assert_eq!(write(Length::from_ticks(106_920_000), Mark::HalfMillimetre).text, "148.5 mm");
    assert_eq!(write(Length::from_ticks(-216_000), Mark::TenthMillimetre).text, "-0.3 mm");
    assert_eq!(write(inches(1, 32), Mark::SixteenthInch).text, "1/16 in", "a tie goes away from zero");
    assert_eq!(write(inches(-1, 32), Mark::SixteenthInch).text, "-1/16 in");
}

#[test]
fn exact_forms() {
    assert_eq!(write_exact(inches(5, 1)), "5 in");
    assert_eq!(write_exact_in(inches(5, 1), Unit::Millimetre), "127 mm");
    assert_eq!(write_exact_in(inches(1, 64), Unit::Millimetre), "1/64 in");
    assert_eq!(write_exact(Length::from_ticks(7_200)), "0.01 mm");
    assert_eq!(write_exact(Length::from_ticks(-1)), "-1/720000 mm");
    assert_eq!(write_exact(Length::from_ticks(720_001)), "1 1/720000 mm");
}
