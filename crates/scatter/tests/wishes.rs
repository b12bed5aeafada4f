//! What holds on every sheet: the gap, no equal neighbours, locks, edges, sameness, arrangements; what is refused.
#![allow(clippy::unwrap_used, reason = "tests")]

mod common;

use common::{disc, leaf, length, motif, three, wish};
use measure::{Length, Size};
use scatter::{
    Arrangement, EdgeRule, Mask, MoveError, Placement, ScatterError, Slip, TraceError, Turning, Wish, apart, by_hand,
    distance, make_room, scatter, trace, worst_by_hand,
};

fn inks(wish: &Wish, placements: &[Placement]) -> Vec<Vec<Vec<(f64, f64)>>> {
    placements.iter().map(|p| wish.motifs[p.motif].outline.at(p.x.to_mm(), p.y.to_mm(), p.turn)).collect()
}

#[test]
fn ink_keeps_its_distance_whatever_the_arrangement_and_edge() {
    use scatter::Arrangement::{Brick, Diagonal, Grid, HalfDrop, Toss};
    for arrangement in [Toss, Grid, Brick, HalfDrop, Diagonal] {
        for edge in [EdgeRule::RunOff, EdgeRule::Inside, EdgeRule::Wrap] {
            let wish = Wish { arrangement, edge, sheet: Size::new(length(150.0), length(120.0)), ..wish(three(), 3.0) };
            let sheet = scatter(&wish).unwrap();
            assert!(sheet.placements.len() > 5, "{arrangement:?} {edge:?}");
            // All pairs and all copies: slow and plain, without the cells.
            let inks = inks(&wish, &sheet.placements);
            let steps: Vec<(f64, f64)> = match edge {
                EdgeRule::Wrap => {
                    (-1..=1).flat_map(|x| (-1..=1).map(move |y| (150.0 * f64::from(x), 120.0 * f64::from(y)))).collect()
                }
                _ => vec![(0.0, 0.0)],
            };
            let mut least = f64::MAX;
            for (index, one) in inks.iter().enumerate() {
                for (other, ink) in inks.iter().enumerate() {
                    for step in steps.iter().filter(|step| other != index || **step != (0.0, 0.0)) {
                        let copy: Vec<_> = ink[0].iter().map(|p| (p.0 + step.0, p.1 + step.1)).collect();
                        least = least.min(distance(&one[0], &copy));
                    }
                }
            }
            assert!(least >= 3.0 - 1e-9, "{arrangement:?} {edge:?}: {least}");
            assert!((sheet.closest.unwrap().to_mm() - least).abs() < 0.006, "{arrangement:?} {edge:?}: {least}");
        }
    }
}

#[test]
fn no_equal_neighbours_stand_in_the_same_turn() {
    let wish = wish(vec![motif(leaf(30.0), 1, Turning::Within(30)), motif(leaf(18.0), 1, Turning::Free)], 4.0);
    let sheet = scatter(&wish).unwrap();
    for (index, one) in sheet.placements.iter().enumerate() {
        for other in &sheet.placements[index + 1..] {
            let away = (one.x.to_mm() - other.x.to_mm()).hypot(one.y.to_mm() - other.y.to_mm());
            let long = if one.motif == 0 { 30.0 } else { 18.0 };
            let apart = one.turn.abs_diff(other.turn).min(360 - one.turn.abs_diff(other.turn));
            let least = if one.motif == 0 { 20 } else { 30 };
            assert!(one.motif != other.motif || away >= long || apart >= least, "{one:?} {other:?}");
        }
        if one.motif == 0 {
            assert!(one.turn <= 30 || one.turn >= 330, "{one:?}");
        }
    }
}

#[test]
fn same_seed_same_sheet_other_seed_other_sheet_locks_stay() {
    let first = Wish { count: Some(60), ..wish(three(), 4.0) };
    let sheet = scatter(&first).unwrap();
    assert_eq!(sheet, scatter(&first).unwrap());
    assert_eq!((sheet.placements.len(), sheet.shortfall), (60, None));
    let locked = sheet.placements[..7].to_vec();
    let second = Wish { seed: 2, locked: locked.clone(), ..first };
    let again = scatter(&second).unwrap();
    assert!(again.locks_in_the_way.is_empty() && again.placements.len() == 60);
    assert!(locked.iter().all(|lock| again.placements.contains(lock)));
    assert!(sheet.placements[7..].iter().all(|free| !again.placements.contains(free)));
}

#[test]
fn half_drop_and_brick_are_what_their_names_say() {
    let dot = || vec![motif(disc(8.0, 32), 1, Turning::Upright)];
    for (arrangement, moved_columns) in [(Arrangement::HalfDrop, true), (Arrangement::Brick, false)] {
        let wish = Wish { arrangement, edge: EdgeRule::Wrap, ..wish(dot(), 4.0) };
        let sheet = scatter(&wish).unwrap();
        // Along the axis that stays, lines are one pitch apart; every other line is moved by half of the other pitch.
        let mut lines: std::collections::BTreeMap<Length, Vec<Length>> = std::collections::BTreeMap::new();
        for p in &sheet.placements {
            let (line, along) = if moved_columns { (p.x, p.y) } else { (p.y, p.x) };
            lines.entry(line).or_default().push(along);
        }
        // Read the other way a half-drop is lines half a pitch apart: lines here are a whole dot and its gap apart.
        let at: Vec<Length> = lines.keys().copied().collect();
        assert!(at.windows(2).all(|pair| pair[1] - pair[0] >= length(20.0)), "{arrangement:?}: {at:?}");
        let lines: Vec<Vec<Length>> = lines
            .into_values()
            .map(|mut line| {
                line.sort();
                line
            })
            .collect();
        let pitch = lines[0][1] - lines[0][0];
        assert_eq!(lines.len() % 2, 0);
        for pair in lines.windows(2) {
            let moved = (pair[1][0] - pair[0][0]).ticks().abs();
            assert!((moved - pitch.ticks() / 2).abs() <= 14_400, "{arrangement:?}: {moved}");
        }
    }
}

#[test]
fn what_can_not_be_met_says_what_can() {
    let wish = Wish { count: Some(400), sheet: Size::new(length(150.0), length(150.0)), ..wish(three(), 6.0) };
    let sheet = scatter(&wish).unwrap();
    let short = sheet.shortfall.unwrap();
    assert_eq!((short.wished, short.placed as usize), (400, sheet.placements.len()));
    if let Some(gap) = short.gap_that_would_do {
        let looser = scatter(&Wish { gap, ..wish.clone() }).unwrap();
        assert!(gap < wish.gap && looser.placements.len() > sheet.placements.len());
    }
    // A gap far too wide for as many: one that would do is named, and it does.
    let wide = Wish { count: Some(60), gap: length(50.0), sheet: wish.sheet, ..wish.clone() };
    let named = scatter(&wide).unwrap().shortfall.unwrap().gap_that_would_do.unwrap();
    assert!(named < wide.gap && scatter(&Wish { gap: named, ..wide }).unwrap().shortfall.is_none(), "{named:?}");
    let fewer = Wish { count: Some(short.placed + 8), ..wish };
    let gap = scatter(&fewer).unwrap().shortfall.map(|short| short.gap_that_would_do);
    assert!(gap.is_none_or(|gap| gap.is_some()), "{gap:?}");
}

#[test]
fn bad_wishes_are_refused() {
    let large = wish(vec![motif(disc(160.0, 24), 1, Turning::Upright)], 2.0);
    assert!(matches!(scatter(&large), Err(ScatterError::LargerThanSheet { motif: 0, .. })));
    assert_eq!(scatter(&wish(vec![], 2.0)), Err(ScatterError::NoMotif));
    assert_eq!(
        scatter(&Wish { count: Some(10_001), ..wish(three(), 2.0) }),
        Err(ScatterError::TooMany { count: 10_001 })
    );
    let lock = Placement { motif: 9, x: Length::ZERO, y: Length::ZERO, turn: 0 };
    assert_eq!(
        scatter(&Wish { locked: vec![lock], ..wish(three(), 2.0) }),
        Err(ScatterError::UnknownMotif { lock: 0, motif: 9 })
    );
}

#[test]
fn a_mask_gives_the_rim_of_its_ink() {
    let inked = (0..60 * 60)
        .map(|at| {
            let (x, y) = (at % 60 - 30, at / 60 - 30);
            x * x + y * y < 625
        })
        .collect();
    let outline = trace(&Mask { width: 60, inked }, Length::mm(1)).unwrap();
    let disc = std::f64::consts::PI * 625.0;
    assert!((outline.area() - disc).abs() < 0.03 * disc, "{}", outline.area());
    assert_eq!(trace(&Mask { width: 4, inked: vec![false; 16] }, Length::MM), Err(TraceError::NoInk));
    assert_eq!(
        trace(&Mask { width: 5, inked: vec![true; 16] }, Length::MM),
        Err(TraceError::NoRows { pixels: 16, width: 5 })
    );
    assert!((trace(&Mask { width: 1, inked: vec![true] }, Length::MM).unwrap().area() - 1.0).abs() < 1e-9);
}

#[test]
fn a_stamp_of_several_patches_is_one_motif_and_keeps_its_blank_places() {
    // A ring, a dot in its middle, and a bar beside it; one speck of dust.
    let inked: Vec<bool> = (0..60 * 90)
        .map(|at| {
            let (x, y) = (at % 90, at / 90);
            let far = (x - 30) * (x - 30) + (y - 30) * (y - 30);
            (15 * 15..25 * 25).contains(&far)
                || far < 36
                || (70..80).contains(&x) && (10..50).contains(&y)
                || (x, y) == (88, 1)
        })
        .collect();
    let outline = trace(&Mask { width: 90, inked }, Length::MM).unwrap();
    assert_eq!((outline.patches().len(), outline.rims().len()), (2, 4));
    let taken = std::f64::consts::PI * 625.0 + 400.0;
    assert!((outline.area() - taken).abs() < 0.03 * taken, "{}", outline.area());
    // Another impression keeps its distance from the bar too: 30 mm to the right of the ring lies the bar.
    let still = motif(outline.clone(), 1, Turning::Upright);
    let sheet = scatter(&wish(vec![still], 5.0)).unwrap();
    let inks = inks(&wish(vec![motif(outline, 1, Turning::Upright)], 5.0), &sheet.placements);
    for (index, one) in inks.iter().enumerate() {
        assert!(inks[index + 1..].iter().all(|other| apart(one, other) >= 5.0 - 1e-9));
    }
    assert!(inks.len() > 5, "{}", inks.len());
}

#[test]
fn what_is_in_the_way_makes_room_and_locked_ones_stay() {
    let wish = wish(three(), 3.0);
    let standing = scatter(&wish).unwrap().placements;
    let (mut given_up, mut untouched) = (0, 0);
    for (which, target) in [(0, 40), (3, 12), (60, 1), (20, 90)] {
        let to = Placement { x: standing[target].x, y: standing[target].y, ..standing[which] };
        let fixed: Vec<usize> = (0..standing.len()).filter(|at| at % 9 == 5 && *at != target).collect();
        let after = match make_room(&wish, &standing, &fixed, which, to) {
            Ok(after) => after,
            Err(MoveError::Edge | MoveError::Locked(_)) => continue,
            Err(other) => panic!("{other}"),
        };
        assert_eq!((after.len(), after[which]), (standing.len(), Some(to)));
        assert!(fixed.iter().all(|at| after[*at] == Some(standing[*at])));
        assert_eq!(make_room(&wish, &standing, &fixed, which, to).unwrap(), after);
        let there: Vec<Placement> = after.iter().flatten().copied().collect();
        given_up += standing.len() - there.len();
        untouched += after.iter().zip(&standing).filter(|(after, before)| **after == Some(**before)).count();
        let inks = inks(&wish, &there);
        for (index, one) in inks.iter().enumerate() {
            assert!(inks[index + 1..].iter().all(|other| apart(one, other) >= 3.0 - 1e-9), "{which} to {target}");
        }
    }
    assert!(given_up <= 4 && untouched > standing.len(), "{given_up} given up, {untouched} untouched");
    assert_eq!(make_room(&wish, &standing, &[], 10_000, standing[0]), Err(MoveError::Unknown(10_000)));
    let off = Placement { x: length(-300.0), ..standing[0] };
    assert_eq!(make_room(&wish, &standing, &[], 0, off), Err(MoveError::Edge));
    let on = Placement { x: standing[1].x, y: standing[1].y, ..standing[0] };
    assert_eq!(make_room(&wish, &standing, &[1], 0, on), Err(MoveError::Locked(1)));
}

#[test]
fn a_sure_hand_keeps_the_gap_and_an_unsure_one_loses_it() {
    let wish = wish(three(), 3.0);
    let sheet = scatter(&wish).unwrap();
    let told =
        |mm: f64, turn_deg| by_hand(&wish, &sheet.placements, Slip { place: length(mm), turn_deg }, 12, 7).unwrap();
    let sure = told(0.0, 0);
    assert_eq!((sure.worst, sure.touch_per_mille), (sheet.closest.unwrap(), 0));
    let (little, much) = (told(1.0, 2), told(3.0, 5));
    // Two hands 1 mm off either way each come at most 2√2 mm nearer by place; turns add to it.
    assert!(little.worst < sure.worst && little.worst > Length::ZERO, "{little:?}");
    assert!(much.worst == Length::ZERO && much.touch_per_mille > little.touch_per_mille, "{much:?}");
    assert_eq!(much, told(3.0, 5));
    // The worst sheet of the twelve: at least as many touch as on average, each touches another there (turns are told to
    // the nearest degree, half of one is 0.14 mm at 16 mm), and nobody is further off than the hand.
    let slip = Slip { place: length(3.0), turn_deg: 5 };
    let worst = worst_by_hand(&wish, &sheet.placements, slip, 12, 7).unwrap();
    assert!(
        worst.touch.len() * 1_000 >= sheet.placements.len() * much.touch_per_mille as usize,
        "{}",
        worst.touch.len()
    );
    let inks = inks(&wish, &worst.placements);
    for at in &worst.touch {
        let near = inks.iter().enumerate().filter(|(other, _)| other != at).map(|(_, ink)| apart(&inks[*at], ink));
        assert!(near.fold(f64::MAX, f64::min) < 0.3, "{at}");
    }
    for (one, other) in worst.placements.iter().zip(&sheet.placements) {
        let off = |a: Length, b: Length| (a - b).to_mm().abs() <= 3.01;
        assert!(off(one.x, other.x) && off(one.y, other.y) && one.motif == other.motif);
    }
    assert!(
        worst_by_hand(&wish, &sheet.placements, Slip { place: Length::ZERO, turn_deg: 0 }, 3, 7)
            .unwrap()
            .touch
            .is_empty()
    );
    assert_eq!(by_hand(&wish, &sheet.placements[..1], Slip { place: length(1.0), turn_deg: 0 }, 5, 1), None);
}
