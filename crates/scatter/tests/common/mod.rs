//! Motifs and wishes for the tests.
#![allow(dead_code, reason = "each test file uses its own part")]

use measure::{Length, Size};
use scatter::{Arrangement, EdgeRule, Motif, Outline, Turning, Wish};

/// A regular polygon of this radius in hundredths of a millimetre.
pub(crate) fn disc(radius: f64, corners: u32) -> Outline {
    let at = |index: u32| {
        let angle = f64::from(index) / f64::from(corners) * std::f64::consts::TAU;
        (length(radius * angle.cos()), length(radius * angle.sin()))
    };
    Outline::new(&(0..corners).map(at).collect::<Vec<_>>()).unwrap()
}

/// A leaf, pointed above.
pub(crate) fn leaf(long: f64) -> Outline {
    let half = [(0.0, -0.5), (0.12, -0.34), (0.2, -0.1), (0.18, 0.15), (0.08, 0.38)];
    let mut corners: Vec<(f64, f64)> = half.to_vec();
    corners.extend([(0.03, 0.5), (-0.03, 0.5)]);
    corners.extend(half[1..].iter().rev().map(|p| (-p.0, p.1)));
    Outline::new(&corners.iter().map(|p| (length(p.0 * long), length(p.1 * long))).collect::<Vec<_>>()).unwrap()
}

#[expect(clippy::cast_possible_truncation, reason = "hundredths of a millimetre")]
pub(crate) fn length(mm: f64) -> Length {
    Length::from_ticks((mm * 100.0).round() as i64 * 7_200)
}

/// A foot square with these motifs.
pub(crate) fn wish(motifs: Vec<Motif>, gap: f64) -> Wish {
    let foot = Length::inches(12, 1).unwrap();
    Wish {
        sheet: Size::new(foot, foot),
        motifs,
        gap: length(gap),
        count: None,
        arrangement: Arrangement::Toss,
        edge: EdgeRule::RunOff,
        locked: Vec::new(),
        seed: 1,
    }
}

pub(crate) fn motif(outline: Outline, share: u32, turning: Turning) -> Motif {
    Motif { outline, share, turning }
}

/// Leaf, smaller leaf and dot.
pub(crate) fn three() -> Vec<Motif> {
    vec![
        motif(leaf(30.0), 1, Turning::Free),
        motif(leaf(16.0), 2, Turning::Free),
        motif(disc(3.0, 12), 3, Turning::Free),
    ]
}
