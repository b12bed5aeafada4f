//! Source: mpmath 1.3.0, a general-purpose library: tables `tilts.csv` and `steepest.csv` beside this file, made by the
//! definition (a length times the sine; the corners of a box turned round its middle), to a tick and to a tenth of a
//! degree. An eighth of an inch clear round words: common practice.
#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;

use cards::model::{Anchor, Greeting, Material, Spot, Stamp, Third};
use cards::stamping::{Sides, enough, growths, place, sittings, steepest, tilt, wished};
use measure::{Length, Rect, Size};
use proptest::prelude::*;

fn rows(text: &str) -> Vec<Vec<i64>> {
    let numbers = |line: &str| line.split(',').map(|number| number.parse().unwrap()).collect();
    text.lines().skip(2).map(numbers).collect()
}

#[test]
fn a_tilt_lifts_an_end_as_the_sine_says() {
    let rows = rows(include_str!("data/tilts.csv"));
    assert_eq!(rows.len(), 80);
    for row in rows {
        let rise = tilt(Length::from_ticks(row[0]), u32::try_from(row[1]).unwrap());
        assert!((rise.ticks() - row[2]).abs() <= 1, "{row:?}: {rise:?}");
    }
}

#[test]
fn a_strip_forgives_as_much_as_turned_corners_show() {
    let rows = rows(include_str!("data/steepest.csv"));
    assert_eq!(rows.len(), 120);
    for row in rows {
        let length = |at: usize| Length::from_ticks(row[at]);
        let ink = Rect::new(length(2), length(3), Size::new(length(4), length(5)));
        let found = steepest(Size::new(length(0), length(1)), ink, length(6));
        assert_eq!(found.map_or(-1, i64::from), row[7], "{row:?}");
    }
}

fn greeting(inked: Size, stamp: Option<Stamp>) -> Greeting {
    Greeting { words: "with thanks".into(), inked, ink: "#333333".into(), stamp, mark: None, balanced: false }
}

#[test]
fn words_come_where_the_maker_says() {
    let (size, length) = (drive::size, drive::length);
    let words = greeting(size("1 x 1/4"), None);
    let at = |spot| place(size("3 x 3/4"), &words, spot).ink;
    let corner = |x: &str, y: &str| Rect::new(length(x), length(y), size("1 x 1/4"));
    assert_eq!(at(Spot::default()), corner("1", "1/4"));
    assert_eq!(at(Spot::On { across: Third::First, down: Third::Middle }), corner("1/2", "1/4"));
    assert_eq!(at(Spot::On { across: Third::Last, down: Third::First }), corner("1 1/2", "1/8"));
    let border = length("3/16");
    assert_eq!(at(Spot::Border { anchor: Anchor::Left, border }), corner("3/16", "1/4"));
    assert_eq!(at(Spot::Border { anchor: Anchor::BottomRight, border }), corner("1 13/16", "5/16"));
}

#[test]
fn the_block_follows_the_ink_and_not_the_ink_the_block() {
    let (size, length) = (drive::size, drive::length);
    // Cut with more rubber at the left than at the right: centred by its block it would come out to the right.
    let stamp = Stamp { size: size("3 1/2 x 1"), left: length("1/2"), top: length("1/8") };
    let placed = place(size("3 x 3/4"), &greeting(size("2 1/4 x 3/8"), Some(stamp)), Spot::default());
    let clear = Sides::of(size("3 x 3/4"), placed.ink);
    assert_eq!((clear.left, clear.above), (clear.right, clear.below));
    assert_eq!(placed.stamp.unwrap(), Rect::new(-length("1/8"), length("1/16"), stamp.size));
}

#[test]
fn a_strip_too_small_says_which_would_do_and_then_does() {
    let mut project = drive::project();
    project.greetings[0].inked = drive::size("2 7/8 x 5/8");
    let found = growths(&project);
    assert!(!found.is_empty());
    for growth in &found {
        // On the project's marks of 1/8 in: the ink and 1/8 in on each side.
        assert_eq!(growth.to, drive::size("3 1/8 x 7/8"));
        let Material::Strip { size, .. } = &mut project.recipes[growth.recipe].layers[growth.layer].material else {
            unreachable!("only strips are too small")
        };
        *size = growth.to;
    }
    assert_eq!(growths(&project), []);
}

/// Corners in thousandths of an inch of a mark 2 in wide and 1 in high.
fn marked(corners: &[(i64, i64)], balanced: bool) -> Greeting {
    let thousandths = corners.iter().map(|(x, y)| (x * 1_000, y * 1_000)).collect();
    let mark = Some(cards::model::MotifShape::Corners(thousandths));
    Greeting { mark, balanced, ..greeting(drive::size("2 x 1"), None) }
}

#[test]
fn a_mark_with_more_ink_at_one_end_balances_there() {
    let (size, length) = (drive::size, drive::length);
    // A right triangle's centre of area lies a third of the way from the right angle; an L's, by its two rectangles:
    // 2 × 1/2 at 1 and 3/4, 1/2 × 1/2 at 1/4 and 1/4 of an inch.
    for (corners, x, y) in [
        (&[(0, 0), (0, 1), (2, 1)][..], (2.0 / 3.0), 2.0 / 3.0),
        (
            &[(0, 0), (500, 0), (500, 500), (2_000, 500), (2_000, 1_000), (0, 1_000)],
            (1.0 + 0.0625) / 1.25,
            0.8125 / 1.25,
        ),
    ] {
        let strip = size("4 x 2");
        let ends = place(strip, &marked(corners, false), Spot::default()).ink;
        assert_eq!((ends.x, ends.y), (length("1"), length("1/2")));
        let weighed = place(strip, &marked(corners, true), Spot::default()).ink;
        assert!((weighed.x.to_inches() - (2.0 - x)).abs() < 1e-3, "{} {x}", weighed.x.to_inches());
        assert!((weighed.y.to_inches() - (1.0 - y)).abs() < 1e-3, "{} {y}", weighed.y.to_inches());
        // And the strip that would do leaves as much at the end that is nearer.
        let least = enough(&marked(corners, true), Spot::default(), Length::MM);
        let clear = Sides::of(least, place(least, &marked(corners, true), Spot::default()).ink);
        assert!(
            clear.least() >= length("1/8")
                && least.width > enough(&marked(corners, false), Spot::default(), Length::MM).width
        );
    }
}

#[test]
fn a_panel_takes_words_too_and_each_impression_is_counted_once() {
    let mut project = drive::project();
    let panel = project.recipes[0].layers.iter().position(|layer| layer.name == "panel").unwrap();
    let before = cards::plan(&project, &mut cutting::Budget::nodes(1_000_000));
    let top = Spot::Border { anchor: Anchor::Top, border: drive::length("1/4") };
    project.recipes[0].layers[panel].stamped = Some((0, top));
    let plan = cards::plan(&project, &mut cutting::Budget::nodes(1_000_000));
    let all = sittings(&plan);
    assert_eq!(all.len(), 2, "{all:?}");
    let on_panels = all.iter().find(|sitting| sitting.piece.as_deref() == Some("panel")).unwrap();
    assert_eq!(on_panels.count() as usize, plan.cards.len());
    assert!(on_panels.strips.iter().all(|(ground, _)| matches!(ground, cards::stamping::Ground::Print { .. })));
    // Of each design as many as there are cards of it.
    for (ground, count) in &on_panels.strips {
        let cards::stamping::Ground::Print { pack, design, .. } = *ground else { unreachable!() };
        let of = plan.cards.iter().filter(|card| (card.pack, card.design) == (pack, design)).count();
        assert_eq!(*count as usize, of);
    }
    assert_eq!(plan.counts.impressions, before.counts.impressions + on_panels.count());
    assert!(!plan.findings.iter().any(|finding| finding.code == "greeting-covered"));
    // Where the band lies, words on the panel are covered.
    let bottom = Spot::Border { anchor: Anchor::Bottom, border: drive::length("1/4") };
    project.recipes[0].layers[panel].stamped = Some((0, bottom));
    let plan = cards::plan(&project, &mut cutting::Budget::nodes(1_000_000));
    assert!(plan.findings.iter().any(|finding| finding.code == "greeting-covered"), "{:?}", plan.findings);
    // Too wide for the least panel: told with the size that would do.
    project.greetings[0].inked = drive::size("4 x 3/8");
    project.recipes[0].layers[panel].stamped = Some((0, top));
    let growth = growths(&project).into_iter().find(|growth| growth.layer == panel).unwrap();
    assert_eq!(growth.to.width, drive::length("4 1/4"));
}

#[test]
fn every_strip_of_a_batch_is_stamped_once_light_inks_first() {
    let mut project = drive::project();
    let plan = cards::plan(&project, &mut cutting::Budget::nodes(1_000_000));
    let all = sittings(&plan);
    assert_eq!(all.len(), 1, "one stamp, one size of strip");
    assert_eq!(all[0].count(), plan.counts.strips);

    // Every other recipe's strip in a pale ink, and one card's words elsewhere.
    let pale = Greeting { words: "hello".into(), ink: "#e8d9a0".into(), ..project.greetings[0].clone() };
    project.greetings.push(pale);
    let mut second = project.recipes[0].clone();
    second.name = "Second".into();
    for layer in &mut second.layers {
        if let Material::Strip { greeting, .. } = &mut layer.material {
            *greeting = 1;
        }
    }
    (project.recipes[0].least, second.least) = (4, 4);
    project.recipes.push(second);
    let plan = cards::plan(&project, &mut cutting::Budget::nodes(1_000_000));
    let all = sittings(&plan);
    let words: Vec<&str> = all.iter().map(|sitting| project.greetings[sitting.greeting].words.as_str()).collect();
    assert_eq!(words, ["hello", "with thanks"]);
    assert_eq!(all.iter().map(cards::stamping::Sitting::count).sum::<u32>(), plan.counts.strips);
}

fn spot() -> impl Strategy<Value = Spot> {
    let third = || prop_oneof![Just(Third::First), Just(Third::Middle), Just(Third::Last)];
    let edge = prop_oneof![
        Just(Anchor::TopLeft),
        Just(Anchor::Top),
        Just(Anchor::Right),
        Just(Anchor::BottomRight),
        Just(Anchor::Middle)
    ];
    prop_oneof![
        (third(), third()).prop_map(|(across, down)| Spot::On { across, down }),
        (edge, 0..9_000_000_i64).prop_map(|(anchor, ticks)| Spot::Border { anchor, border: Length::from_ticks(ticks) }),
    ]
}

proptest! {
    #[test]
    fn the_strip_that_would_do_is_the_smallest(
        (wide, high) in (1..90_000_000_i64, 1..30_000_000_i64),
        spot in spot(),
        step in prop_oneof![Just(Length::MM), Just(Length::from_ticks(Length::INCH.ticks() / 16))],
    ) {
        let words = greeting(Size::new(Length::from_ticks(wide), Length::from_ticks(high)), None);
        let least = enough(&words, spot, step);
        let clear = |strip: Size| Sides::of(strip, place(strip, &words, spot).ink).least();
        prop_assert!(clear(least) >= wished(spot));
        prop_assert!(clear(Size::new(least.width - step, least.height)) < wished(spot));
        prop_assert!(clear(Size::new(least.width, least.height - step)) < wished(spot));
    }
}
