//! Weights, thicknesses and the classes of letters.
//!
//! Source: `tests/data/postal_letters.csv` and `postal_examples.csv` (limits of eight operators and worked classes, each
//! row with its own source, gathered 25 November 2026), `basis_weight.csv` (pound and inch of 1959, exact),
//! `weights.csv` (worked weights of a card), `caliper.csv` (typical thicknesses, from memory).
#![allow(clippy::unwrap_used, reason = "tests")]

use std::collections::BTreeMap;

use cards::mailing::limits::{LetterClass, letter_classes};
use cards::mailing::verdict::reasons;
use cards::mailing::{Letter, Role, Verdict, Why, judge, operators};
use cards::weight::{Grade, Weight};
use measure::{Length, Size, Unit};

type Row = BTreeMap<String, String>;

/// Rows by the names of their columns; cells in double quotes may hold commas.
fn rows(text: &str) -> Vec<Row> {
    let cells = |line: &str| {
        let (mut cells, mut cell, mut quoted) = (Vec::new(), String::new(), false);
        for sign in line.chars() {
            match sign {
                '"' => quoted = !quoted,
                ',' if !quoted => cells.push(std::mem::take(&mut cell)),
                other => cell.push(other),
            }
        }
        cells.push(cell);
        cells
    };
    let mut lines = text.lines().filter(|line| !line.starts_with('#'));
    let head = cells(lines.next().unwrap());
    let row = |line| {
        let found = cells(line);
        assert_eq!(found.len(), head.len(), "{line}");
        head.iter().cloned().zip(found).collect()
    };
    lines.map(row).collect()
}

/// A decimal of so many units, exactly.
fn thousandths(text: &str) -> i64 {
    let (whole, part) = text.split_once('.').unwrap_or((text, ""));
    assert!(part.len() <= 3, "{text}");
    format!("{whole}{part:0<3}").parse().unwrap()
}

fn cell(row: &Row, name: &str) -> Option<i64> {
    Some(row[name].as_str()).filter(|text| !text.is_empty()).map(thousandths)
}

fn thin(length: Length, height: Length) -> Letter {
    let (length, height) = (length.max(height), length.min(height));
    Letter { length, height, thickness: None, weight: None, even: true, flexible: true, upright: false }
}

#[test]
fn every_row_of_the_table_is_what_was_read() {
    let read = rows(include_str!("data/postal_letters.csv"));
    let table: Vec<&LetterClass> = letter_classes().collect();
    assert_eq!((read.len(), table.len()), (24, 24));
    for (row, class) in read.iter().zip(table) {
        assert_eq!((class.operator, class.class), (row["operator"].as_str(), row["class"].as_str()));
        let unit = if row["unit"] == "in" { Unit::Inch } else { Unit::Millimetre };
        assert_eq!(class.unit, unit);
        let lengths = |names: [&str; 3]| names.map(|name| cell(row, name).map(|of| unit.thousandths(of)));
        assert_eq!(class.least, lengths(["min_length", "min_height", "min_thickness"]), "{class:?}");
        assert_eq!(class.most, lengths(["max_length", "max_height", "max_thickness"]), "{class:?}");
        let ratio = ["min_ratio", "max_ratio"].map(|name| cell(row, name).map(|of| u32::try_from(of).unwrap()));
        assert_eq!(class.ratio, ratio);
        let weight =
            cell(row, "max_weight").map(|of| u64::try_from(of).unwrap()).map(|of| match &*row["weight_unit"] {
                "g" => Weight::milligrams(of),
                unit => {
                    assert_eq!(unit, "oz");
                    Weight::thousandths_of_an_ounce(of)
                }
            });
        assert_eq!(class.most_weight, weight);
        let told = [class.other, class.source, class.year, class.sure];
        assert_eq!(told, ["other", "source", "year", "sure"].map(|name| row[name].as_str()));
    }
}

/// How the worked examples name a verdict.
fn named(verdict: &Verdict) -> String {
    let Some(class) = verdict.class else {
        let small = verdict.not.last().unwrap().1.iter().any(|why| matches!(why, Why::TooSmall(_)));
        return if small { "too small".to_owned() } else { "none".to_owned() };
    };
    let square = || verdict.not[0].1.iter().any(|why| matches!(why, Why::TooSquare(_)));
    let only = |whys: &[Why]| whys.len() == 1;
    match (verdict.operator, class.class) {
        ("USPS", "letter machinable") => "letter, machinable".to_owned(),
        ("USPS", "letter") => "letter, nonmachinable".to_owned(),
        ("USPS", "large envelope (flat)") => "flat".to_owned(),
        ("Canada Post", "Standard Lettermail") => "Standard".to_owned(),
        ("Canada Post", _) if square() && only(&verdict.not[0].1) => "Other (ratio)".to_owned(),
        ("Canada Post", _) => "Other".to_owned(),
        ("Australia Post", class) => class.strip_suffix(" letter").unwrap().to_owned(),
        (_, class) => class.to_owned(),
    }
}

#[test]
fn worked_examples_fall_into_their_classes() {
    let read = rows(include_str!("data/postal_examples.csv"));
    assert_eq!(read.len(), 22);
    let mut differ = Vec::new();
    for row in &read {
        let edge = |name| Unit::Inch.thousandths(cell(row, name).unwrap());
        let metric = |name| Unit::Millimetre.thousandths(cell(row, name).unwrap());
        // Sizes of ISO envelopes are exact in millimetres, the others in inches.
        let iso = ["C6", "DL", "C6/C5", "B6", "C5", "B5", "C4"].contains(&row["envelope"].as_str());
        let sides =
            if iso { (metric("length_mm"), metric("height_mm")) } else { (edge("length_in"), edge("height_in")) };
        let letter = Letter { upright: sides.0 < sides.1, ..thin(sides.0, sides.1) };
        let columns = [
            ("usps", "USPS"),
            ("royal_mail", "Royal Mail"),
            ("canada_post", "Canada Post"),
            ("deutsche_post", "Deutsche Post"),
            ("australia_post", "Australia Post"),
        ];
        for (column, operator) in columns {
            let mut wanted = row[column].as_str();
            if letter.upright && column == "usps" {
                assert!(wanted.ends_with("nonmachinable"));
                wanted = "letter, nonmachinable";
            }
            let found = named(&judge(&letter, operator));
            // A square of 6 1/2 in is too high for Canada besides its ratio, and the examples say so by leaving it out.
            if found != wanted {
                differ.push(format!("{} {operator}: {found}, not {wanted}", row["envelope"]));
            }
        }
    }
    assert!(differ.is_empty(), "{differ:#?}");
}

/// Every class with letters: just inside is taken, one tick beyond any limit is not, for that reason.
#[test]
fn every_limit_of_every_row_is_inclusive() {
    let tick = Length::from_ticks(1);
    let mut limits = 0;
    for class in letter_classes().filter(|row| matches!(row.role, Role::Letter(_) | Role::Least)) {
        let edge = |index: usize, or: i64| class.most[index].unwrap_or(Length::mm(or));
        // A shape inside every limit: as long as may be, and as high as its ratio allows.
        let height = edge(1, 100).min(Length::from_ticks(edge(0, 150).ticks() / 3 * 2));
        let inside = Letter {
            thickness: class.most[2].or(class.least[2]),
            weight: class.most_weight,
            ..thin(edge(0, 150), height)
        };
        let inside =
            Letter { length: inside.length.min(Length::from_ticks(inside.height.ticks() / 10 * 22)), ..inside };
        assert_eq!(reasons(&inside, class), [], "{class:?}");
        let mut beyond = |letter: Letter, expected: fn(&Why) -> bool| {
            limits += 1;
            assert!(reasons(&letter, class).iter().any(expected), "{class:?} takes {letter:?}");
        };
        if let Some(most) = class.most[0] {
            beyond(Letter { length: most + tick, ..inside }, |why| matches!(why, Why::TooLong(_)));
        }
        if let Some(most) = class.most[1] {
            beyond(Letter { height: most + tick, ..inside }, |why| matches!(why, Why::TooHigh(_)));
        }
        if let Some(most) = class.most[2] {
            beyond(Letter { thickness: Some(most + tick), ..inside }, |why| matches!(why, Why::TooThick(_)));
        }
        if let Some(least) = class.least[0] {
            beyond(Letter { length: least - tick, ..inside }, |why| matches!(why, Why::TooSmall(_)));
        }
        if let Some(least) = class.least[1] {
            beyond(Letter { height: least - tick, ..inside }, |why| matches!(why, Why::TooSmall(_)));
        }
        if let Some(least) = class.least[2] {
            beyond(Letter { thickness: Some(least - tick), ..inside }, |why| matches!(why, Why::TooThin(_)));
        }
        if let Some(most) = class.most_weight {
            let heavier = most + Weight::milligrams(1);
            beyond(Letter { weight: Some(heavier), ..inside }, |why| matches!(why, Why::TooHeavy(_)));
        }
        if class.ratio[0].is_some() {
            beyond(Letter { length: inside.height, ..inside }, |why| matches!(why, Why::TooSquare(_)));
        }
        if let Some(most) = class.ratio[1] {
            let long = Length::from_ticks(inside.height.ticks() * i64::from(most) / 1_000 + 1_000);
            beyond(Letter { length: long, ..inside }, |why| matches!(why, Why::TooSlender(_)));
        }
    }
    assert!(limits > 90, "{limits}");
}

#[test]
fn what_is_uneven_stiff_or_upright_is_not_machinable() {
    let inch = |text: i64| Unit::Inch.thousandths(text);
    let plain = Letter {
        thickness: Some(inch(100)),
        weight: Some(Weight::milligrams(13_000)),
        ..thin(inch(5_625), inch(4_125))
    };
    let why = |letter: Letter| {
        let verdict = judge(&letter, "USPS");
        (verdict.class.map(|class| class.class), verdict.not.first().map(|(_, why)| why.clone()).unwrap_or_default())
    };
    assert_eq!(why(plain), (Some("letter machinable"), vec![]));
    assert_eq!(why(Letter { even: false, ..plain }), (Some("letter"), vec![Why::Uneven]));
    assert_eq!(why(Letter { flexible: false, ..plain }), (Some("letter"), vec![Why::Stiff]));
    assert_eq!(why(Letter { upright: true, ..plain }), (Some("letter"), vec![Why::Upright]));
    // Thicker than a letter: a large envelope, but only if it is even and bends; else a parcel.
    let thick = Letter { thickness: Some(inch(251)), ..plain };
    assert_eq!(why(thick).0, Some("large envelope (flat)"));
    assert_eq!(why(Letter { even: false, ..thick }).0, None);
    // In Australia a stiff thing is a parcel, however flat.
    let stiff = judge(&Letter { flexible: false, ..plain }, "Australia Post");
    assert_eq!(stiff.class, None);
    assert!(stiff.not.iter().all(|(_, why)| why.contains(&Why::Stiff)));
    // Over 4 1/4 in high it must be 0.009 in thick.
    let large = Letter { height: inch(4_375), length: inch(5_750), thickness: Some(inch(8)), ..plain };
    assert_eq!(why(large), (Some("letter"), vec![Why::TooThin(inch(9))]));
    assert_eq!(operators().len(), 8);
}

#[test]
fn a_row_from_memory_is_a_doubt_and_not_a_judgement() {
    let small = thin(Unit::Inch.thousandths(5_125), Unit::Inch.thousandths(3_625));
    let verdict = judge(&small, "Royal Mail");
    assert_eq!(verdict.class.map(|class| class.class), Some("Letter"));
    assert!(matches!(verdict.doubts.as_slice(), [Why::TooSmall(_)]));
}

#[test]
fn pounds_become_grammage() {
    let grades = [
        ("cover", Grade::Cover),
        ("text/book/offset", Grade::Text),
        ("bond/writing", Grade::Bond),
        ("index", Grade::Index),
        ("bristol", Grade::Bristol),
        ("tag", Grade::Tag),
    ];
    let read = rows(include_str!("data/basis_weight.csv"));
    assert_eq!(read.len(), 34);
    for row in read {
        let grade = grades.iter().find(|(name, _)| *name == row["grade"]).unwrap().1;
        let found = grade.micrograms_per_m2(row["lb"].parse().unwrap());
        // The table has two decimals.
        let hundredths = (found + 5_000) / 10_000;
        assert_eq!(hundredths, u64::try_from(thousandths(&row["gsm_exact"]) / 10).unwrap(), "{row:?}");
        assert_eq!((found + 500_000) / 1_000_000, row["gsm_rounded"].parse::<u64>().unwrap(), "{row:?}");
    }
}

#[test]
fn layers_weigh_what_was_worked_out() {
    let read = rows(include_str!("data/weights.csv"));
    // The table gives four decimals of a gram: compare tenths of a milligram.
    let tenths = |weight: Weight| (weight.nanograms() + 50_000) / 100_000;
    let wanted = |text: &str| {
        let (whole, part) = text.split_once('.').unwrap();
        format!("{whole}{part:0<4}").parse::<u64>().unwrap()
    };
    let sizes: BTreeMap<&str, (&str, &str)> = BTreeMap::from([
        ("base 5.5 x 8.5 in, 80 lb cover", ("5.5", "8.5")),
        ("mat 4 x 5.25 in, 80 lb cover", ("4", "5.25")),
        ("panel 3.75 x 5 in, 120 g/m2", ("3.75", "5")),
        ("greeting strip 1 x 3 in, 80 lb cover", ("1", "3")),
    ]);
    let mut card = Weight::ZERO;
    for row in &read {
        let Some((width, height)) = sizes.get(row["item"].as_str()) else { continue };
        let edge = |text| Unit::Inch.thousandths(thousandths(text));
        let area = Size::new(edge(width), edge(height)).area();
        let found = match row["gsm"].as_str() {
            // Printed with three decimals, worked with all of them.
            "216.329" => Weight::of_paper(area, Grade::Cover.micrograms_per_m2(80)),
            gsm => Weight::of_paper(area, u64::try_from(thousandths(gsm)).unwrap() * 1_000),
        };
        assert_eq!(tenths(found), wanted(&row["grams"]), "{row:?}");
        card = card + found;
    }
    let a2 = measure::envelope("A2").unwrap().size.area();
    let envelope = Weight::of_paper(a2 * 5 / 2, Grade::Bond.micrograms_per_m2(24));
    let row = |item: &str| read.iter().find(|row| row["item"].starts_with(item)).unwrap();
    assert_eq!(tenths(envelope), wanted(&row("envelope blank")["grams"]));
    assert_eq!(tenths(card + envelope), wanted(&row("whole card")["grams"]));
    assert_eq!((card + envelope).in_ounces(), "0.53");
    let mm = |a: i64, b: i64| Size::new(Unit::Millimetre.thousandths(a), Unit::Millimetre.thousandths(b)).area();
    assert_eq!(tenths(Weight::of_paper(mm(148_500, 210_000), 220_000_000)), wanted(&row("A6 base")["grams"]));
    assert_eq!(tenths(Weight::of_paper(mm(210_000, 297_000), 80_000_000)), wanted(&row("A4 sheet")["grams"]));
    for (item, weight) in [("1 oz", Weight::OUNCE), ("13 oz", Weight::thousandths_of_an_ounce(13_000))] {
        assert_eq!(weight.exact_grams(), format!("{} g", row(item)["grams"].trim_end_matches('0')));
    }
    let half = Weight::parse("3.5 oz").unwrap();
    assert_eq!(half.nanograms(), 99_223_330_937, "half a nanogram is left off");
}

#[test]
fn guessed_thicknesses_lie_in_the_usual_ranges() {
    // What a card is counted with where nobody measured: paper of 120 g/m², 80 lb cover.
    let read = rows(include_str!("data/caliper.csv"));
    for (paper, mm) in [("patterned paper, light", "0.15"), ("80 lb cover", "0.28"), ("24 lb bond", "0.11")] {
        let row = read.iter().find(|row| row["paper"] == paper).unwrap();
        let within = thousandths(&row["caliper_low_mm"])..=thousandths(&row["caliper_high_mm"]);
        assert!(within.contains(&thousandths(mm)), "{row:?}");
    }
}

#[test]
fn weights_are_read_and_refused() {
    assert_eq!(Weight::parse(" 13 g "), Some(Weight::milligrams(13_000)));
    assert_eq!(Weight::parse("3.5oz").unwrap().in_ounces(), "3.50");
    for bad in ["", "g", "13", "-1 g", "1,5 g", "1.23456 g", "1e3 g", "1234567 g", ". g", "1 kg", "½ oz"] {
        assert_eq!(Weight::parse(bad), None, "{bad}");
    }
    assert_eq!(Weight::milligrams(12_950).in_grams(), "13.0");
    assert_eq!(Weight::parse("0.0001 oz").unwrap().nanograms(), 2_834_952);
}
