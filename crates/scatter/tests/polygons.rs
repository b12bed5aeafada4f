//! Distance, overlap, area of outlines and their share on a sheet, against a general-purpose geometry library.
//!
//! Source: shapely (GEOS), 80 random pairs; `scripts/scatter_reference.py` wrote `data/polygon_pairs.csv`.
#![allow(clippy::unwrap_used, reason = "tests")]

use measure::{Length, Size};
use scatter::{Arrangement, EdgeRule, Motif, Outline, OutlineError, Placement, Turning, Wish, distance, scatter};

fn points(text: &str) -> Vec<(f64, f64)> {
    let numbers: Vec<f64> = text.split(' ').map(|value| value.parse().unwrap()).collect();
    numbers.chunks(2).map(|pair| (pair[0], pair[1])).collect()
}

#[expect(clippy::cast_possible_truncation, reason = "hundredths of a millimetre")]
fn length(mm: f64) -> Length {
    Length::from_ticks((mm * 100.0).round() as i64 * 7_200)
}

fn outline(points: &[(f64, f64)]) -> Result<Outline, OutlineError> {
    let corners: Vec<(Length, Length)> = points.iter().map(|p| (length(p.0), length(p.1))).collect();
    Outline::new(&corners)
}

#[test]
fn distance_overlap_and_area_are_as_shapely_has_them() {
    let mut apart = 0;
    for line in include_str!("data/polygon_pairs.csv").lines().skip(2) {
        let cells: Vec<&str> = line.split(',').collect();
        let (one, other) = (points(cells[0]), points(cells[1]));
        let wanted: f64 = cells[2].parse().unwrap();
        assert!((distance(&one, &other) - wanted).abs() < 1e-5, "{line}: {}", distance(&one, &other));
        assert_eq!(distance(&one, &other) < 1e-9, cells[3] == "1", "{line}");
        assert!((outline(&one).unwrap().area() - cells[4].parse::<f64>().unwrap()).abs() < 1e-4, "{line}");
        apart += usize::from(wanted > 0.0);
    }
    assert!((10..70).contains(&apart), "both kinds of pairs are there: {apart}");
}

/// The rule of a quarter follows shapely's shares: a locked motif is in the way just where it would leave a sliver.
#[test]
fn slivers_are_where_shapely_sees_them() {
    let mut slivers = 0;
    for line in include_str!("data/polygon_pairs.csv").lines().skip(2) {
        let cells: Vec<&str> = line.split(',').collect();
        let other = points(cells[1]);
        let share: f64 = cells[5].parse().unwrap();
        let shape = outline(&other).unwrap();
        // Where the centre of ink stands: a corner as given less the same corner about the centre.
        let at = |of: fn(&(f64, f64)) -> f64| length(of(&other[0]) - of(&shape.patches()[0][0]));
        let (x, y) = (at(|p| p.0), at(|p| p.1));
        let (width, height) = shape.extent();
        if width.max(height) > 20.0 || (share - 0.25).abs() < 0.01 || (share - 0.75).abs() < 0.01 || share > 0.99 {
            continue;
        }
        let wish = Wish {
            sheet: Size::new(Length::mm(20), Length::mm(20)),
            motifs: vec![Motif { outline: shape, share: 1, turning: Turning::Upright }],
            gap: Length::ZERO,
            count: Some(1),
            arrangement: Arrangement::Toss,
            edge: EdgeRule::RunOff,
            locked: vec![Placement { motif: 0, x, y, turn: 0 }],
            seed: 1,
        };
        let sliver = !(0.25..=0.75).contains(&share);
        assert_eq!(scatter(&wish).unwrap().locks_in_the_way.len(), usize::from(sliver), "{line}");
        slivers += usize::from(sliver);
    }
    assert!(slivers > 5, "{slivers}");
}

#[test]
fn outlines_without_ink_or_with_crossing_sides_are_refused() {
    assert_eq!(outline(&[(0.0, 0.0), (1.0, 1.0)]), Err(OutlineError::Empty { corners: 2 }));
    assert_eq!(
        outline(&[(0.0, 0.0), (9.0, 9.0), (9.0, 0.0), (0.0, 9.0)]),
        Err(OutlineError::CrossesItself { first: 1, second: 3 })
    );
    let many: Vec<(f64, f64)> = (0..401).map(|at| (f64::from(at), f64::from(at * at % 7))).collect();
    assert_eq!(outline(&many), Err(OutlineError::TooManyCorners { corners: 401 }));
}
