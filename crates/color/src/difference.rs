//! How far two colours are apart.

use palette::color_difference::Ciede2000;
use palette::white_point::D65;

use crate::Lab;

/// CIEDE2000 difference ΔE₀₀ between two colours.
///
/// For telling near colours apart on paper; for very far ones the number says only *far*.
///
/// # Shape
/// Both CIELAB under D65. Returns ΔE₀₀ ≥ 0, no unit, symmetric; about 1 is just visible. A coordinate that is no number
/// gives a NaN.
///
/// # Source
/// Sharma, Wu, Dalal 2005, *Color Research & Application* 30(1), 21–30; computed by the `palette` crate. Checked by
/// `tests/sharma_2005.rs`.
///
/// # Examples
/// ```
/// use color::{ciede2000, Lab};
/// let (sky, dusk) = (Lab::new(50.0, 2.6772, -79.7751), Lab::new(50.0, 0.0, -82.7485));
/// assert!((ciede2000(sky, dusk) - 2.0425).abs() < 5e-5);
/// ```
#[must_use]
pub fn ciede2000(one: Lab, other: Lab) -> f64 {
    let kept = |lab: Lab| palette::Lab::<D65, f64>::new(lab.l, lab.a, lab.b);
    kept(one).difference(kept(other))
}

/// How near two colours are, as a word.
///
/// # Source
/// Rules of thumb, from memory: about 1 is just visible side by side, under 2 to 3 a good match of cardstock, over 5
/// plainly another colour. `Chosen:` the step at 10.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Nearness {
    /// Up to 1: hardly to be told apart side by side.
    Same,
    /// Up to 3: a good match.
    Good,
    /// Up to 5: seen side by side, not apart.
    Close,
    /// Up to 10: of the same family, plainly another colour.
    Family,
    /// Beyond.
    Other,
}

impl Nearness {
    /// The word for a difference.
    #[must_use]
    pub fn of(delta_e: f64) -> Self {
        match delta_e {
            d if d <= 1.0 => Self::Same,
            d if d <= 3.0 => Self::Good,
            d if d <= 5.0 => Self::Close,
            d if d <= 10.0 => Self::Family,
            _ => Self::Other,
        }
    }
}

/// The nearest of a list: its place and ΔE₀₀; the earlier of equals. `None` for an empty list.
#[must_use]
pub fn nearest(wanted: Lab, list: &[Lab]) -> Option<(usize, f64)> {
    let mut best: Option<(usize, f64)> = None;
    for (at, have) in list.iter().enumerate() {
        let delta_e = ciede2000(wanted, *have);
        if best.is_none_or(|(_, least)| delta_e < least) {
            best = Some((at, delta_e));
        }
    }
    best
}
