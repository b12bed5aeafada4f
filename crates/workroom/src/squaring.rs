//! A photo of one sheet made straight, with the light set right where that is wished: for the command and for the page.

use measure::{Length, Size};
use photo::light::Correction;
use photo::reference::Reference;
use photo::{Point, Quad, Raster};

/// How much of a lamp's light is evened out. `Chosen:` gentle; a sheet may be darker at one end because it is printed so.
const EVENED: f64 = 0.7;
/// Half a side of the patch round a place held to be white or grey, in parts of the photo's longest side. `Chosen:` some
/// thousand pixels of a small photo.
pub(crate) const PATCH: f64 = 0.008;

/// What is to be done to a photo. The photo itself is never changed.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Wanted {
    /// The corners of the sheet in it.
    pub(crate) corners: Quad,
    /// Even out the light.
    pub(crate) even: bool,
    /// A place in the photo that is white or grey in truth.
    pub(crate) neutral: Option<Point>,
    /// Colours put right by patches of the photo that are known; the neutral place is then left alone.
    pub(crate) reference: Option<Reference>,
}

impl Wanted {
    /// The straight picture, so many pixels across and down.
    pub(crate) fn squared(&self, photo: &Raster, (width, height): (usize, usize)) -> Raster {
        let mut flat = photo::square(photo, &self.corners, width, height);
        if let Some(reference) = &self.reference {
            flat = reference.applied(&flat);
        }
        let mut light = Correction::evened(&flat, if self.even { EVENED } else { 0.0 });
        if let (Some(at), None) = (self.neutral, &self.reference) {
            #[allow(clippy::cast_precision_loss, reason = "pixel counts")]
            let (w, h) = (photo.width() as f64, photo.height() as f64);
            let half = PATCH * w.max(h);
            light =
                light.with_neutral(photo, [(at.x - half) / w, (at.y - half) / h, (at.x + half) / w, (at.y + half) / h]);
        }
        light.applied(&flat)
    }
}

/// Width by height of a sheet; `None` if one of them is nothing.
#[allow(clippy::cast_precision_loss, reason = "a size in ticks")]
pub(crate) fn proportion(sheet: Size) -> Option<f64> {
    let (width, height) = (sheet.width.ticks() as f64, sheet.height.ticks() as f64);
    (width > 0.0 && height > 0.0).then(|| width / height)
}

/// Pixels across and down for a sheet at so many to an inch.
pub(crate) fn pixels(sheet: Size, dots: i64) -> (usize, usize) {
    let side = |length: Length| {
        let exact = i128::from(length.ticks()) * i128::from(dots) / i128::from(Length::INCH.ticks());
        usize::try_from(exact.clamp(1, 16_384)).unwrap_or(1)
    };
    (side(sheet.width), side(sheet.height))
}
