//! A stamped background: its order, its inkings, its edges; what was moved by hand; what cannot be done.
#![allow(clippy::unwrap_used, clippy::cast_possible_truncation, reason = "tests")]

use cards::background::{Arrangement, EdgeRule, Hand, MoveError, Refused, Turning, lay, shove, slips};
use cards::model::{Background, Motif, MotifShape};
use measure::{Length, Size};

fn stamp(name: &str, shape: &str, mm: i64, per_inking: u32) -> Motif {
    Motif {
        name: name.into(),
        shape: MotifShape::Drawn(shape.into()),
        size: Length::mm(mm),
        share: 1,
        turning: Turning::Free,
        ink: "#3b4148".into(),
        fill: None,
        per_inking,
    }
}

fn background() -> Background {
    Background {
        name: "Fern".into(),
        sheet: Size::new(Length::mm(200), Length::mm(150)),
        paper: "#ffffff".into(),
        seed: 1,
        arrangement: Arrangement::Toss,
        gap: Length::mm(3),
        edge: EdgeRule::RunOff,
        count: None,
        density: None,
        motifs: vec![stamp("dot", "dot", 6, 1), stamp("sprig", "sprig", 36, 2), stamp("leaf", "leaf", 20, 3)],
        locked: Vec::new(),
        stands: Vec::new(),
        markers: Vec::new(),
    }
}

#[test]
fn the_hand_never_lies_on_what_was_stamped_just_before() {
    for hand in [Hand::Right, Hand::Left] {
        let laid = lay(&background(), hand).unwrap();
        assert_eq!(laid.stamps.iter().map(|used| used.stamp).collect::<Vec<_>>(), [1, 2, 0], "the largest first");
        for pair in laid.impressions.windows(2).filter(|pair| pair[0].placed.motif == pair[1].placed.motif) {
            let high = Length::from_ticks(
                (2.0 * laid.outlines[pair[0].placed.motif].reach() * 100.0).round() as i64 * (Length::MM.ticks() / 100),
            ) + Length::mm(3);
            let row = |at: usize| pair[at].placed.y.ticks().div_euclid(high.ticks());
            let on = match hand {
                Hand::Right => pair[1].placed.x >= pair[0].placed.x,
                Hand::Left => pair[1].placed.x <= pair[0].placed.x,
            };
            assert!(row(1) > row(0) || (row(1) == row(0) && on), "{hand:?}: {pair:?}");
        }
        let numbers: Vec<u32> = laid.impressions.iter().map(|one| one.number).collect();
        assert_eq!(numbers, (1..=u32::try_from(numbers.len()).unwrap()).collect::<Vec<_>>());
    }
}

#[test]
fn inkings_and_paler_impressions_add_up() {
    let laid = lay(&background(), Hand::Right).unwrap();
    for used in &laid.stamps {
        let own: Vec<_> = laid.impressions.iter().filter(|one| one.placed.motif == used.stamp).collect();
        let per = [1, 2, 3][[0, 1, 2].iter().position(|stamp| *stamp == used.stamp).unwrap()];
        assert_eq!(used.impressions() as usize, own.len());
        assert_eq!(used.inkings as usize, own.len().div_ceil(per));
        assert_eq!(used.of_generation[0], used.inkings);
        assert!(own.iter().enumerate().all(|(at, one)| one.generation as usize == at % per + 1));
        assert_eq!(used.off_edge as usize, own.iter().filter(|one| one.inside_percent < 100).count());
        assert!(own.iter().all(|one| one.inside_percent == 100 || (25..=75).contains(&one.inside_percent)));
    }
    assert!(laid.stamps.iter().map(|used| used.off_edge).sum::<u32>() > 3);
}

#[test]
fn moved_by_hand_stays_by_hand_and_locks_outlive_another_seed() {
    let before = background();
    let laid = lay(&before, Hand::Right).unwrap();
    let at = laid.impressions[0].placed;
    let to = (at.x + Length::mm(9), at.y + Length::mm(4), at.turn);
    let (after, gone) = shove(&before, &laid, 0, to).unwrap();
    assert_eq!(after.stands.len() + gone as usize, laid.impressions.len());
    let stood = lay(&after, Hand::Right).unwrap();
    assert_eq!((stood.impressions.len(), stood.too_near), (after.stands.len(), 0));
    assert!(stood.impressions.iter().any(|one| (one.placed.x, one.placed.y) == (to.0, to.1)));
    assert!(stood.closest.unwrap() >= Length::mm(3));
    // Another seed sets out all but the locked ones.
    let locked = vec![stood.impressions[2].placed, stood.impressions[5].placed];
    let tossed = Background { stands: Vec::new(), seed: 2, locked: locked.clone(), ..after };
    let laid = lay(&tossed, Hand::Right).unwrap();
    assert_eq!(laid.impressions.iter().filter(|one| one.locked).count(), 2);
    assert!(locked.iter().all(|lock| laid.impressions.iter().any(|one| one.placed == *lock)));
    let off = shove(&tossed, &laid, 0, (Length::mm(-400), Length::ZERO, 0));
    assert_eq!(off, Err(MoveError::Edge));
}

#[test]
fn a_wish_too_great_gives_the_fullest_sheet_and_ten_thousand_come_back() {
    let laid = lay(&Background { count: Some(10_000), ..background() }, Hand::Right).unwrap();
    let short = laid.shortfall.unwrap();
    assert_eq!((short.wished, short.placed as usize), (10_000, laid.impressions.len()));
    assert!(short.placed > 50);
}

#[test]
fn a_wished_density_is_met_or_the_fullest_sheet_told() {
    for edge in [EdgeRule::RunOff, EdgeRule::Inside, EdgeRule::Wrap] {
        for percent in [4, 8, 12, 16] {
            let laid = lay(&Background { density: Some(percent), edge, ..background() }, Hand::Right).unwrap();
            // Counted anew, impression by impression: discs, leaves and sprigs by their own areas.
            let sheet = 200.0 * 150.0;
            let ink: f64 = laid
                .impressions
                .iter()
                .map(|one| {
                    let outline = &laid.outlines[one.placed.motif];
                    let share = if edge == EdgeRule::Wrap { 100 } else { one.inside_percent };
                    outline.area() * f64::from(share) / 100.0
                })
                .sum();
            assert!((ink / sheet * 100.0 - f64::from(laid.cover_percent)).abs() < 0.7, "{edge:?} {percent}");
            assert!(
                laid.shortfall.is_some() || laid.cover_percent.abs_diff(percent) <= 1,
                "{edge:?} {percent}: {}",
                laid.cover_percent
            );
        }
        let laid = lay(&Background { density: Some(80), edge, ..background() }, Hand::Right).unwrap();
        let short = laid.shortfall.unwrap();
        assert!(laid.cover_percent < 80 && short.wished > short.placed, "{edge:?}");
    }
    // A ring's blank middle is no ink: 1 - 0.62² of the disc.
    let mut ring = Background { count: Some(1), edge: EdgeRule::Inside, ..background() };
    ring.motifs = vec![stamp("ring", "ring", 100, 1)];
    let laid = lay(&ring, Hand::Right).unwrap();
    let disc = std::f64::consts::PI * 2_500.0;
    assert!((laid.outlines[0].ink() / disc - (1.0 - 0.62 * 0.62)).abs() < 0.02, "{}", laid.outlines[0].ink() / disc);
}

#[test]
fn what_cannot_be_stamped_says_why() {
    let mut large = background();
    large.motifs[1].size = Length::mm(400);
    assert!(matches!(lay(&large, Hand::Right), Err(Refused::Wish(_))));
    let mut crossed = background();
    crossed.motifs[0].shape = MotifShape::Corners(vec![(0, 0), (4_000, 4_000), (4_000, 0), (0, 3_000)]);
    assert!(lay(&crossed, Hand::Right).unwrap_err().corners().is_some());
    let mut missing = background();
    missing.motifs[0].shape = MotifShape::Picture("fern.png".into(), None);
    assert!(matches!(lay(&missing, Hand::Right), Err(Refused::Stamp { stamp: 0, .. })));
    let laid = lay(&background(), Hand::Right).unwrap();
    assert!(slips(&missing, &laid).is_empty());
}
