//! Source: WCAG 2.2, success criterion 1.4.1 (use of colour): what a colour says must be said another way too.
//! Printed in grey, every coloured area still carries a letter, a pattern or a print.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;

use std::collections::BTreeSet;
use std::sync::LazyLock;

use cards::Plan;
use cutting::Budget;
use drawing::scene::{Outline, Role};
use drawing::sheets::{Edition, Faces, Hand, Paper, Print, edition};
use drawing::{Mark, Scene, png};
use measure::{Length, Rect, Size, Unit};

static PLAN: LazyLock<Plan> = LazyLock::new(|| cards::plan::plan(&drive::project(), &mut Budget::nodes(200_000)));
static CROWDED: LazyLock<Plan> = LazyLock::new(|| cards::plan::plan(&drive::crowded(), &mut Budget::nodes(200_000)));

fn pages(plan: &Plan, print: Print) -> Vec<Scene> {
    let asked = Edition {
        paper: Paper::Letter,
        print,
        hand: Hand::Right,
        unit: Unit::Inch,
        language: words::Language::English,
    };
    edition(plan, &Faces::new(), &asked)
}

/// Marks without their groups, in the order in which they are drawn; a clipped group counts as a pattern.
fn flat<'a>(marks: &'a [Mark], found: &mut Vec<&'a Mark>) {
    for mark in marks {
        found.push(mark);
        if let Mark::Group { marks, .. } = mark {
            flat(marks, found);
        }
    }
}

/// What covers or marks a coloured area: words, pictures, patterns.
fn tells(mark: &Mark, area: Rect) -> bool {
    match mark {
        Mark::Text { line, at, .. } => area.contains(line.ink_box(*at)),
        Mark::Image { rect, .. } => area.overlaps(*rect),
        Mark::Group { clip: Some(clip), .. } => area.overlaps(*clip),
        _ => false,
    }
}

#[test]
fn every_colored_area_carries_a_letter_or_a_pattern() {
    let mut areas = 0;
    for plan in [&*PLAN, &*CROWDED] {
        for print in [Print::Normal, Print::Large] {
            for (number, page) in (1..).zip(pages(plan, print)) {
                let mut marks = Vec::new();
                flat(&page.marks, &mut marks);
                for (index, mark) in marks.iter().enumerate() {
                    let Mark::Shape { outline: Outline::Rect(rect), fill: Some(color), .. } = mark else { continue };
                    let [least, most] = [color.rgb.iter().min().unwrap(), color.rgb.iter().max().unwrap()];
                    let large = rect.size.width.min(rect.size.height) >= Length::POINT * 12;
                    if most - least < 40 || color.alpha < 255 || !large {
                        continue;
                    }
                    areas += 1;
                    // A later area that hides it speaks for it.
                    let hidden = marks[index + 1..].iter().any(|later| {
                        matches!(later, Mark::Shape { outline: Outline::Rect(over), fill: Some(fill), .. }
                            if fill.alpha == 255 && over.overlaps(*rect)
                            && over.size.width * 10 > rect.size.width * 9
                            && over.size.height * 10 > rect.size.height * 8)
                    });
                    let told = marks[index + 1..].iter().any(|later| tells(later, *rect));
                    assert!(told || hidden, "page {number}: {rect:?} in {color:?} is told by its colour alone");
                }
            }
        }
    }
    assert!(areas > 30, "the test would prove nothing without colours: {areas}");
}

/// Whether a picture is one even grey, its frame left out.
fn spread(picture: &image::GrayImage, rect: Rect, per_inch: u32) -> f64 {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "inside the page")]
    let px = |length: Length| (length.to_inches() * f64::from(per_inch)) as u32;
    let (left, top) = (px(rect.x) + 3, px(rect.y) + 3);
    let (right, bottom) = (px(rect.right()) - 3, px(rect.bottom()) - 3);
    let grey: Vec<f64> =
        (top..bottom).flat_map(|y| (left..right).map(move |x| f64::from(picture.get_pixel(x, y).0[0]))).collect();
    #[allow(clippy::cast_precision_loss, reason = "a few thousand pixels")]
    let count = grey.len() as f64;
    let mean = grey.iter().sum::<f64>() / count;
    (grey.iter().map(|value| (value - mean).powi(2)).sum::<f64>() / count).sqrt()
}

#[test]
fn in_grey_every_swatch_has_its_own_letters_and_a_pattern_that_shows() {
    let stocks: BTreeSet<&str> =
        PLAN.stocks.iter().map(|stock| PLAN.project.cardstocks[stock.cardstock].name.as_str()).collect();
    let pages = pages(&PLAN, Print::Normal);
    let mut letters = BTreeSet::new();
    for page in &pages {
        let grey = image::load_from_memory(&png::write(page, 150).unwrap()).unwrap().into_luma8();
        for mark in &page.marks {
            let Mark::Group { role: Some(Role::Figure(alt)), marks, .. } = mark else { continue };
            let Some(name) = stocks.iter().find(|name| alt.starts_with(&format!("{name}\u{a0}("))) else { continue };
            let Some(Mark::Shape { outline: Outline::Rect(rect), .. }) = marks.first() else { panic!("no area") };
            // The left quarter, which the letters do not reach.
            let edge = Rect::new(rect.x, rect.y, Size::new(Length::POINT * 9, rect.size.height));
            assert!(spread(&grey, edge, 150) > 4.0, "{name} is one even grey");
            letters.insert(alt.clone().split('(').nth(1).unwrap().to_owned());
        }
    }
    assert_eq!(letters.len(), stocks.len(), "{letters:?}");
}
