//! Printed panels proposed from a picture of a sheet: found by `photo`, brought to the maker's marks by `cards`.

use cards::model::Collage;
use drawing::scene::share;
use measure::formats::usual_border;
use measure::{Length, Mark, Rect, Size};
use photo::{Panel, Raster};

/// Parts a side is told in between the two rooms. `Chosen:` finer than any mark, on any sheet.
const PARTS: i64 = 1_000_000;

/// The narrowest panel. `Chosen:` two usual borders, less than any piece has.
pub(crate) fn least(mark: Mark) -> Length {
    (usual_border(mark.unit()) * 2).max(mark.step())
}

/// The panels a straight picture of a whole sheet shows, on the maker's marks; `None` if it is one print.
pub(crate) fn proposed(picture: &Raster, sheet: Size, mark: Mark) -> Option<Collage> {
    let found: Vec<Rect> = photo::find_panels(picture).iter().map(|panel| on_sheet(panel, sheet)).collect();
    Collage::found(&found, sheet, mark, least(mark))
}

fn on_sheet(panel: &Panel, sheet: Size) -> Rect {
    #[allow(clippy::cast_possible_truncation, reason = "shares of 0 to 1")]
    let at = |part: f64, side: Length| share(side, (part.clamp(0.0, 1.0) * 1e6).round() as i64, PARTS);
    let (left, top) = (at(panel.left, sheet.width), at(panel.top, sheet.height));
    let size = Size::new(at(panel.right, sheet.width) - left, at(panel.bottom, sheet.height) - top);
    Rect::new(left, top, size)
}
