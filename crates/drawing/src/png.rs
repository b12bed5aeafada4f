//! A scene as pixels: its SVG drawn by `resvg` with the faces we carry, never with those of the machine.

use std::sync::{Arc, LazyLock};

use image::codecs::png::{CompressionType, FilterType, PngEncoder};
use image::{ExtendedColorType, ImageEncoder};
use resvg::{tiny_skia, usvg};

use crate::scene::Scene;
use crate::text::Face;

/// Why a scene could not be drawn.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PngError {
    /// The page has no pixels, or more than 16 000 one way.
    #[error("a page of {0} x {1} px cannot be drawn")]
    Size(u32, u32),
    /// The drawing could not be read back.
    #[error("drawing: {0}")]
    Drawing(String),
}

/// The scene as a PNG file on white, so many pixels to the inch.
///
/// # Errors
/// [`PngError::Size`] for an empty or enormous page; [`PngError::Drawing`] if the SVG is refused (a bug of ours).
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "clamped before"
)]
pub fn write(scene: &Scene, per_inch: u32) -> Result<Vec<u8>, PngError> {
    let pixels = |inches: f64| (inches * f64::from(per_inch)).round().clamp(0.0, 1.0e6) as u32;
    let (width, height) = (pixels(scene.size.width.to_inches()), pixels(scene.size.height.to_inches()));
    if width == 0 || height == 0 || width > 16_000 || height > 16_000 {
        return Err(PngError::Size(width, height));
    }
    let options =
        usvg::Options { fontdb: FONTS.clone(), font_family: "Libertinus Serif".to_owned(), ..usvg::Options::default() };
    let tree = usvg::Tree::from_str(&crate::svg::write(scene), &options)
        .map_err(|error| PngError::Drawing(error.to_string()))?;
    let mut canvas = tiny_skia::Pixmap::new(width, height).ok_or(PngError::Size(width, height))?;
    canvas.fill(tiny_skia::Color::WHITE);
    let (across, down) = (width as f32 / tree.size().width(), height as f32 / tree.size().height());
    resvg::render(&tree, tiny_skia::Transform::from_scale(across, down), &mut canvas.as_mut());
    encode(&canvas)
}

/// On white nothing is clear, so three bytes a pixel are enough. Quick compression makes the file somewhat larger and
/// takes most of the time away.
fn encode(canvas: &tiny_skia::Pixmap) -> Result<Vec<u8>, PngError> {
    let rgb: Vec<u8> = canvas.data().chunks_exact(4).flat_map(|pixel| [pixel[0], pixel[1], pixel[2]]).collect();
    let mut bytes = Vec::new();
    let encoder = PngEncoder::new_with_quality(&mut bytes, CompressionType::Fast, FilterType::Adaptive);
    encoder
        .write_image(&rgb, canvas.width(), canvas.height(), ExtendedColorType::Rgb8)
        .map_err(|error| PngError::Drawing(error.to_string()))?;
    Ok(bytes)
}

static FONTS: LazyLock<Arc<usvg::fontdb::Database>> = LazyLock::new(|| {
    let mut fonts = usvg::fontdb::Database::new();
    for face in Face::ALL {
        fonts.load_font_data(face.bytes().to_vec());
    }
    fonts.set_serif_family("Libertinus Serif");
    Arc::new(fonts)
});
