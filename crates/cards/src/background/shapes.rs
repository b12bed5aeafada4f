//! Shapes of stamps that Octavo draws itself. All of them are our own.

use scatter::{Outline, OutlineError};

use super::in_lengths;

/// Every shape's name, in the order in which they are offered.
pub const SHAPES: &[&str] = &["dot", "ring", "leaf", "sprig", "drop", "flower", "star", "heart", "diamond"];

type Rim = Vec<(f64, f64)>;

/// The outline of a shape, its longer side so many millimetres; `None` if there is none of that name.
pub(super) fn shape(name: &str, size_mm: f64) -> Option<Result<Outline, OutlineError>> {
    let (patches, inner) = rims(name)?;
    Some(
        super::scaled(&patches, &inner, size_mm)
            .and_then(|(patches, inner)| Outline::of_patches(&in_lengths(&patches), &in_lengths(&inner))),
    )
}

/// Patches and inner rims in any unit.
fn rims(name: &str) -> Option<(Vec<Rim>, Vec<Rim>)> {
    let whole = |rim: Rim| (vec![rim], Vec::new());
    Some(match name {
        "dot" => whole(around(32, |_| 1.0)),
        "ring" => (vec![around(40, |_| 1.0)], vec![around(40, |_| 0.62)]),
        "leaf" => whole(leaf((0.0, 0.0), 1.0, 0.0)),
        "sprig" => (sprig(), Vec::new()),
        "drop" => whole(half_mirrored(&[
            (0.0, -1.0),
            (0.12, -0.66),
            (0.3, -0.3),
            (0.47, 0.02),
            (0.55, 0.3),
            (0.52, 0.58),
            (0.38, 0.82),
            (0.18, 0.96),
            (0.0, 1.0),
        ])),
        "flower" => whole(around(80, |angle| 0.5 + 0.5 * libm::sqrt(libm::fabs(libm::cos(2.5 * angle))))),
        "star" => whole(
            (0..10_u32)
                .map(|at| {
                    let far = if at % 2 == 0 { 1.0 } else { 0.46 };
                    let angle = f64::from(at) * core::f64::consts::PI / 5.0;
                    (far * libm::sin(angle), -far * libm::cos(angle))
                })
                .collect(),
        ),
        "heart" => whole(half_mirrored(&[
            (0.0, -0.5),
            (0.12, -0.72),
            (0.3, -0.86),
            (0.54, -0.88),
            (0.76, -0.78),
            (0.92, -0.56),
            (0.97, -0.28),
            (0.9, 0.0),
            (0.72, 0.28),
            (0.46, 0.56),
            (0.2, 0.8),
            (0.0, 0.98),
        ])),
        "diamond" => whole(vec![(0.0, -1.0), (0.62, 0.0), (0.0, 1.0), (-0.62, 0.0)]),
        _ => return None,
    })
}

/// A rim at a distance that goes by the angle from the top.
fn around(corners: u32, far: impl Fn(f64) -> f64) -> Rim {
    let at = |corner: u32| {
        let angle = f64::from(corner) / f64::from(corners) * core::f64::consts::TAU;
        (far(angle) * libm::sin(angle), -far(angle) * libm::cos(angle))
    };
    (0..corners).map(at).collect()
}

/// The right half from top to bottom, and the same mirrored.
fn half_mirrored(half: &[(f64, f64)]) -> Rim {
    let mut rim = half.to_vec();
    rim.extend(half.iter().rev().filter(|p| p.0 > 0.0).map(|p| (-p.0, p.1)));
    rim
}

/// A leaf with its stalk, pointing to where its angle from the top says, its foot at a place.
fn leaf(foot: (f64, f64), long: f64, angle: f64) -> Rim {
    let half = [
        (0.0, -1.0),
        (0.05, -0.93),
        (0.1, -0.85),
        (0.15, -0.76),
        (0.19, -0.66),
        (0.21, -0.56),
        (0.21, -0.46),
        (0.18, -0.36),
        (0.13, -0.27),
        (0.07, -0.2),
        (0.03, -0.16),
        (0.025, 0.0),
    ];
    let (sin, cos) = (libm::sin(angle), libm::cos(angle));
    half_mirrored(&half)
        .into_iter()
        .map(|(x, y)| (foot.0 + long * (x * cos - y * sin), foot.1 + long * (x * sin + y * cos)))
        .collect()
}

/// A twig of five leaves, each a patch of its own.
fn sprig() -> Vec<Rim> {
    let mut patches = vec![leaf((0.0, 0.0), 0.62, 0.0)];
    for (along, long) in [(0.14, 0.56), (0.5, 0.5)] {
        patches.push(leaf((0.07, along), long, 0.95));
        patches.push(leaf((-0.07, along + 0.1), long, -0.95));
    }
    patches
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;

    #[test]
    fn every_shape_has_ink_and_its_size() {
        for name in SHAPES {
            let outline = shape(name, 20.0).unwrap().unwrap();
            let (width, height) = outline.extent();
            assert!((width.max(height) - 20.0).abs() < 0.05, "{name}: {width} x {height}");
            assert!(outline.area() > 40.0, "{name}: {}", outline.area());
        }
        assert!(shape("cloud", 20.0).is_none());
    }
}
