//! Which papers go with a print, and in what way.

use crate::{Lab, Share, ciede2000};

/// How a paper goes with a print.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Pairing {
    /// It repeats a colour of the print.
    Match,
    /// It is a lighter or darker one of a colour of the print.
    ToneOnTone,
    /// It stands out against the print: across the colour circle, or far lighter or darker.
    Contrast,
    /// It is white, grey, black, cream or kraft: it goes beside anything.
    Neutral,
}

/// How far ΔE₀₀ a match may be off. `Chosen:` over it two papers are plainly not the same colour.
const MATCHED: f64 = 5.0;
/// Hues so near are tones of each other. `Chosen:`.
const SAME_HUE_DEG: f64 = 25.0;
/// Hues so far lie across the circle. `Chosen:` a complement is 180 away, its neighbours 150.
const ACROSS_DEG: f64 = 140.0;
/// Colours of less chroma are greys. `Chosen:`.
const GREY_BELOW: f64 = 10.0;
/// Creams and krafts: a yellow to orange hue of little chroma. `Chosen:` kraft card is about L 61, C 28, hue 72.
const CREAM: (f64, f64, f64) = (30.0, 60.0, 105.0);

/// How a paper goes with a print: the way it pairs, the colour of the print it pairs with, and ΔE₀₀ to it.
///
/// A match is told before all else, then neutral, tone on tone and contrast; `None` where it does none of these, or the
/// print has no colours. Tone on tone and contrast look at the print's colours in the order given (largest first).
///
/// # Source
/// The four ways are common practice; every limit is `Chosen:` and stands beside its name.
#[must_use]
pub fn pair(paper: Lab, print: &[Share]) -> Option<(Pairing, usize, f64)> {
    let apart: Vec<f64> = print.iter().map(|of| ciede2000(paper, of.lab)).collect();
    let nearest = (0..apart.len()).reduce(|best, at| if apart[at] < apart[best] { at } else { best })?;
    if apart[nearest] <= MATCHED {
        return Some((Pairing::Match, nearest, apart[nearest]));
    }
    if is_neutral(paper) {
        return Some((Pairing::Neutral, nearest, apart[nearest]));
    }
    let with = |wanted: &dyn Fn(&Share) -> bool| print.iter().position(wanted);
    let turn = |of: &Share| {
        let turn = (paper.hue_deg() - of.lab.hue_deg()).abs();
        turn.min(360.0 - turn)
    };
    let colorful = |of: &Share| of.lab.chroma() >= GREY_BELOW;
    if let Some(at) = with(&|of| colorful(of) && turn(of) <= SAME_HUE_DEG) {
        return Some((Pairing::ToneOnTone, at, apart[at]));
    }
    let at = with(&|of| colorful(of) && turn(of) >= ACROSS_DEG).or_else(|| {
        let first = print.first()?;
        ((first.lab.l - paper.l).abs() >= 45.0).then_some(0)
    })?;
    Some((Pairing::Contrast, at, apart[at]))
}

/// White, grey, black, cream or kraft.
fn is_neutral(paper: Lab) -> bool {
    let (chroma, hue) = (paper.chroma(), paper.hue_deg());
    chroma < GREY_BELOW || (chroma < CREAM.0 && (CREAM.1..=CREAM.2).contains(&hue) && paper.l > 45.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Srgb;

    fn lab(hex: &str) -> Lab {
        Lab::of(Srgb::from_hex(hex).unwrap())
    }

    fn print(colors: &[&str]) -> Vec<Share> {
        let share = |hex: &&str| Share { color: Srgb::from_hex(hex).unwrap(), lab: lab(hex), share: 0.3 };
        colors.iter().map(share).collect()
    }

    #[test]
    fn papers_pair_as_a_maker_would_say() {
        let sage = print(&["#f4f1e6", "#8fa98a", "#4a6348"]);
        let told = |hex: &str| pair(lab(hex), &sage).map(|(way, at, _)| (way, at));
        assert_eq!(told("#8ea889"), Some((Pairing::Match, 1)));
        assert_eq!(told("#2f4a30"), Some((Pairing::ToneOnTone, 1)));
        assert_eq!(told("#808080").map(|(way, _)| way), Some(Pairing::Neutral));
        assert_eq!(told("#b08d66").map(|(way, _)| way), Some(Pairing::Neutral), "kraft");
        assert_eq!(told("#8a2a5a"), Some((Pairing::Contrast, 1)));
        assert_eq!(pair(lab("#8ea889"), &[]), None);
    }
}
