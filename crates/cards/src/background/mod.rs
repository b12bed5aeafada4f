//! A background stamped by hand: the sheet that answers a wish, in the order in which it is stamped.
//!
//! | offers | gives |
//! |---|---|
//! | [`lay`] | every impression with its number, its inking and what of it runs off |
//! | [`shove`] | the background with one impression moved and the rest making room |
//! | [`slips`], [`askew`] | what an unsure hand does to the distances, and the worst of its sheets |
//! | [`outline`] | the ink of one stamp at its size |
//!
//! Left out on purpose: how it is drawn, colours as numbers, files: the outline of a picture's ink comes from the rim.

mod lay;
mod shapes;

use measure::Length;

use crate::model::{Motif, MotifShape};

pub use lay::{Hand, Impression, Laid, Refused, Slipped, StampUse, askew, lay, shove, slips};
pub use scatter::{
    Arrangement, EdgeRule, Loosened, MOST_CORNERS, MOST_MOTIFS, Mask, MoveError, Outline, OutlineError, Placement,
    ScatterError, Shortfall, Slip, TraceError, Turning, trace,
};
pub use shapes::SHAPES;

/// Why a stamp has no outline.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum StampError {
    /// Its corners are none.
    #[error(transparent)]
    Outline(#[from] OutlineError),
    /// Nothing that Octavo draws is called so.
    #[error("no shape is called `{0}`")]
    UnknownShape(String),
    /// Its picture has not been traced: it is missing, or holds no ink.
    #[error("the ink of `{0}` is not known")]
    NoInk(String),
}

/// The ink of a stamp at its size, in millimetres.
///
/// # Errors
/// [`StampError`].
pub fn outline(stamp: &Motif) -> Result<Outline, StampError> {
    shape_outline(&stamp.shape, stamp.size)
}

/// The ink of a shape whose longer side is `size`.
///
/// # Errors
/// [`StampError`].
pub fn shape_outline(shape: &MotifShape, size: Length) -> Result<Outline, StampError> {
    let size_mm = size.to_mm();
    match shape {
        MotifShape::Drawn(name) => match shapes::shape(name, size_mm) {
            Some(made) => Ok(made?),
            None => Err(StampError::UnknownShape(name.clone())),
        },
        MotifShape::Corners(corners) => {
            #[expect(clippy::cast_precision_loss, reason = "thousandths of what a person typed")]
            let rim: Vec<(f64, f64)> = corners.iter().map(|(x, y)| (*x as f64, *y as f64)).collect();
            let (patches, _) = scaled(&[rim], &[], size_mm)?;
            Ok(Outline::of_patches(&in_lengths(&patches), &[])?)
        }
        MotifShape::Picture(name, traced) => {
            let traced = traced.as_ref().ok_or_else(|| StampError::NoInk(name.clone()))?;
            let inner = traced.rims().get(traced.patches().len()..).unwrap_or_default();
            let (patches, inner) = scaled(traced.patches(), inner, size_mm)?;
            Ok(Outline::of_patches(&in_lengths(&patches), &in_lengths(&inner))?)
        }
    }
}

type Rims = Vec<Vec<(f64, f64)>>;

/// The rims so much larger or smaller that the longer side of all is a size.
fn scaled(patches: &[Vec<(f64, f64)>], inner: &[Vec<(f64, f64)>], size_mm: f64) -> Result<(Rims, Rims), OutlineError> {
    let all = || patches.iter().flatten();
    let side = |of: fn(&(f64, f64)) -> f64| {
        let (least, most) = all().map(of).fold((f64::MAX, f64::MIN), |(least, most), at| (least.min(at), most.max(at)));
        most - least
    };
    let longer = side(|p| p.0).max(side(|p| p.1));
    if !longer.is_finite() || longer <= 0.0 {
        return Err(OutlineError::Empty { corners: all().count() });
    }
    let by = size_mm / longer;
    let made = |rims: &[Vec<(f64, f64)>]| -> Rims {
        rims.iter().map(|rim| rim.iter().map(|p| (p.0 * by, p.1 * by)).collect()).collect()
    };
    Ok((made(patches), made(inner)))
}

/// Rims in lengths, to the nearest hundredth of a millimetre.
fn in_lengths(rims: &[Vec<(f64, f64)>]) -> Vec<Vec<(Length, Length)>> {
    rims.iter().map(|rim| rim.iter().map(|p| (hundredths(p.0), hundredths(p.1))).collect()).collect()
}

/// A length from millimetres, at the nearest hundredth.
#[expect(clippy::cast_possible_truncation, reason = "saturates; stamps are far smaller")]
pub(crate) fn hundredths(mm: f64) -> Length {
    Length::from_ticks((libm::round(mm * 100.0) as i64).saturating_mul(Length::MM.ticks() / 100))
}
