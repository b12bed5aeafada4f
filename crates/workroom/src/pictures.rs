//! Pictures at the rim: a PNG, JPEG or WebP file becomes upright pixels no larger than a drawing needs.
//!
//! Left out on purpose: what a picture shows, and squaring a photo; a picture covers its sheet exactly.

use std::fs;
use std::io::Cursor;
use std::path::{Component, Path, PathBuf};

use image::{DynamicImage, ImageDecoder, ImageFormat, ImageReader, Limits, imageops::FilterType};

/// Upright pixels.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pixels {
    /// Width in pixels.
    pub width: u32,
    /// Height in pixels.
    pub height: u32,
    /// Red, green and blue of every pixel, 8 bit each, sRGB, row by row from the top left.
    pub rgb: Vec<u8>,
    /// Width and height of the file's own picture, upright, before it was made smaller.
    pub original: (u32, u32),
}

/// Why a picture cannot be used.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PictureError {
    /// Not beside the project file.
    #[error("the picture must lie beside the project file or in a folder below it")]
    Elsewhere,
    /// No such file.
    #[error("no such file")]
    Missing,
    /// It cannot be opened or read.
    #[error("{0}")]
    Unreadable(String),
    /// None of the kinds that are read.
    #[error("neither PNG, JPEG nor WebP")]
    WrongKind,
    /// Larger than is read.
    #[error("too large")]
    TooLarge,
    /// The file ends before its picture does, as when copying was broken off.
    #[error("it ends before the picture does")]
    CutOff,
    /// It begins like a picture but is damaged.
    #[error("damaged: {0}")]
    Damaged(String),
}

/// Largest file that is read, in bytes.
pub const MOST_BYTES: u64 = 64 << 20;
/// Largest picture that is decoded, in pixels a side. Chosen: four times a 12 megapixel phone's longer side.
pub const MOST_SIDE: u32 = 16_000;
/// Most pixels of a picture that is decoded, in millions. Chosen: a 12-inch sheet scanned at 600 dots an inch has 52, a
/// phone's largest photo mostly 50; two copies of so many stay below 400 MB.
pub const MOST_MILLIONS: u32 = 64;
/// Longest side that a drawing needs: 12 in at 200 dots an inch.
pub const LONGEST_SIDE: u32 = 2_400;
/// Memory a decoder may take.
const MOST_MEMORY: u64 = 512 << 20;

/// Read the picture `name` beside a project file that lies in `folder`.
///
/// # Errors
/// [`PictureError`], one variant a cause.
pub fn load(folder: &Path, name: &str) -> Result<Pixels, PictureError> {
    decode(&bytes(folder, name)?)
}

/// The bytes of the picture file `name` beside a project file that lies in `folder`.
///
/// # Errors
/// As [`load`], as far as a file that is not opened tells.
pub fn bytes(folder: &Path, name: &str) -> Result<Vec<u8>, PictureError> {
    let path = place(folder, name)?;
    let unreadable = |error: std::io::Error| match error.kind() {
        std::io::ErrorKind::NotFound => PictureError::Missing,
        _ => PictureError::Unreadable(error.to_string()),
    };
    let meta = fs::metadata(&path).map_err(unreadable)?;
    if !meta.is_file() {
        return Err(PictureError::WrongKind);
    }
    if meta.len() > MOST_BYTES {
        return Err(PictureError::TooLarge);
    }
    fs::read(&path).map_err(unreadable)
}

/// Which pixels of a picture file's bytes are ink, row by row, and how many a row has; no side longer than `most`.
///
/// # Shape
/// Of a picture with clear parts, what is not clear; of any other, what is nearer to its darkest than to its lightest
/// tone. A picture of one tone holds no ink (chosen: tones closer than a sixth of the scale are one).
///
/// # Errors
/// As [`decode_whole`].
pub fn ink(bytes: &[u8], most: u32) -> Result<(usize, Vec<bool>), PictureError> {
    let mut picture = upright(bytes)?;
    if picture.width().max(picture.height()) > most {
        picture = picture.resize(most, most, FilterType::Triangle);
    }
    let width = usize::try_from(picture.width()).unwrap_or(0);
    let rgba = picture.to_rgba8();
    if rgba.pixels().any(|pixel| pixel[3] < 128) {
        return Ok((width, rgba.pixels().map(|pixel| pixel[3] >= 128).collect()));
    }
    let grey = picture.into_luma8();
    let (dark, light) = grey.pixels().fold((255, 0), |(dark, light), pixel| (pixel[0].min(dark), pixel[0].max(light)));
    let between = u8::midpoint(dark, light);
    let tones = u32::from(light) > u32::from(dark) + 42;
    Ok((width, grey.pixels().map(|pixel| tones && pixel[0] < between).collect()))
}

/// Upright pixels of a PNG, JPEG or WebP file's bytes, no larger than a drawing needs.
///
/// # Errors
/// As [`decode_whole`].
pub fn decode(bytes: &[u8]) -> Result<Pixels, PictureError> {
    let mut picture = upright(bytes)?;
    let original = (picture.width(), picture.height());
    if picture.width().max(picture.height()) > LONGEST_SIDE {
        picture = picture.resize(LONGEST_SIDE, LONGEST_SIDE, FilterType::Triangle);
    }
    Ok(Pixels { width: picture.width(), height: picture.height(), rgb: on_white(picture), original })
}

/// All upright pixels of a PNG, JPEG or WebP file's bytes. Of a moving picture, the first.
///
/// # Errors
/// [`PictureError::WrongKind`], [`PictureError::TooLarge`] or [`PictureError::Damaged`].
pub fn decode_whole(bytes: &[u8]) -> Result<Pixels, PictureError> {
    let picture = upright(bytes)?;
    let original = (picture.width(), picture.height());
    Ok(Pixels { width: original.0, height: original.1, rgb: on_white(picture), original })
}

/// The bytes of a PNG file with those pixels.
///
/// # Errors
/// [`PictureError::Damaged`] if they are no picture of that size.
pub fn png(width: u32, height: u32, rgb: &[u8]) -> Result<Vec<u8>, PictureError> {
    let mut bytes = Vec::new();
    let encoder = image::codecs::png::PngEncoder::new(&mut bytes);
    image::ImageEncoder::write_image(encoder, rgb, width, height, image::ExtendedColorType::Rgb8)
        .map_err(|error| PictureError::Damaged(error.to_string()))?;
    Ok(bytes)
}

fn upright(bytes: &[u8]) -> Result<DynamicImage, PictureError> {
    let mut limits = Limits::default();
    limits.max_image_width = Some(MOST_SIDE);
    limits.max_image_height = Some(MOST_SIDE);
    limits.max_alloc = Some(MOST_MEMORY);
    let mut reader = ImageReader::new(Cursor::new(bytes))
        .with_guessed_format()
        .map_err(|error| PictureError::Unreadable(error.to_string()))?;
    if !matches!(reader.format(), Some(ImageFormat::Png | ImageFormat::Jpeg | ImageFormat::WebP)) {
        return Err(PictureError::WrongKind);
    }
    // One decoder would fill the rest with grey, another call the data corrupt.
    let whole = match reader.format() {
        Some(ImageFormat::Jpeg) => ends(bytes),
        // A RIFF file says at its head how long it is.
        Some(ImageFormat::WebP) => {
            let said = bytes.get(4..8).and_then(|size| Some(u32::from_le_bytes(size.try_into().ok()?)));
            said.is_some_and(|said| bytes.len() as u64 >= u64::from(said) + 8)
        }
        _ => true,
    };
    if !whole {
        return Err(PictureError::CutOff);
    }
    reader.limits(limits);
    let refused = |error: image::ImageError| match error {
        image::ImageError::Limits(_) => PictureError::TooLarge,
        image::ImageError::IoError(error) if error.kind() == std::io::ErrorKind::UnexpectedEof => PictureError::CutOff,
        other => PictureError::Damaged(other.to_string()),
    };
    let mut decoder = reader.into_decoder().map_err(refused)?;
    let (width, height) = decoder.dimensions();
    if u64::from(width) * u64::from(height) > u64::from(MOST_MILLIONS) * 1_000_000 {
        return Err(PictureError::TooLarge);
    }
    let turned = decoder.orientation().map_err(refused)?;
    let mut picture = DynamicImage::from_decoder(decoder).map_err(refused)?;
    picture.apply_orientation(turned);
    Ok(picture)
}

/// True if a JPEG file has the mark at which its picture ends; what phones add behind it does not matter.
///
/// Source: ISO/IEC 10918-1, annex B (from memory): segments tell their length, coded data has no marks but for restarts.
fn ends(bytes: &[u8]) -> bool {
    const END: u8 = 0xd9;
    const SCAN: u8 = 0xda;
    let mut at = 2;
    let mut coded = false;
    while let Some([0xff, mark]) = bytes.get(at..at + 2) {
        match *mark {
            END => return true,
            // Fill bytes before a mark.
            0xff => at += 1,
            // Marks without a segment: in coded data a plain 0xff, and restarts.
            0x00 | 0x01 | 0xd0..=0xd8 => at += 2,
            kind => {
                let Some(&[high, low]) = bytes.get(at + 2..at + 4) else { return false };
                at += 2 + usize::from(u16::from_be_bytes([high, low]));
                coded |= kind == SCAN;
            }
        }
        if coded {
            let rest = bytes.get(at..).unwrap_or_default();
            at += rest.iter().position(|&byte| byte == 0xff).unwrap_or(rest.len());
        }
    }
    false
}

/// Paper shows through where a picture is clear.
fn on_white(picture: DynamicImage) -> Vec<u8> {
    if !picture.color().has_alpha() {
        return picture.into_rgb8().into_raw();
    }
    let blended = |color: u8, opacity: u8| {
        let (color, opacity) = (u32::from(color), u32::from(opacity));
        u8::try_from((color * opacity + 255 * (255 - opacity) + 127) / 255).unwrap_or(u8::MAX)
    };
    let rgba = picture.into_rgba8();
    rgba.pixels().flat_map(|pixel| [0, 1, 2].map(|channel| blended(pixel[channel], pixel[3]))).collect()
}

/// Where the picture lies. A project file handed over by somebody else must not reach into other folders.
fn place(folder: &Path, name: &str) -> Result<PathBuf, PictureError> {
    let relative = Path::new(name);
    let inside = relative.components().all(|part| matches!(part, Component::Normal(_) | Component::CurDir));
    if inside && !name.is_empty() { Ok(folder.join(relative)) } else { Err(PictureError::Elsewhere) }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;

    fn png(width: u32, height: u32) -> Vec<u8> {
        let mut bytes = Cursor::new(Vec::new());
        DynamicImage::new_rgb8(width, height).write_to(&mut bytes, ImageFormat::Png).unwrap();
        bytes.into_inner()
    }

    #[test]
    fn small_pictures_keep_their_pixels() {
        let read = decode(&png(30, 20)).unwrap();
        assert_eq!((read.width, read.height, read.rgb.len()), (30, 20, 1800));
        assert_eq!(read.rgb[..3], [0, 0, 0]);
    }

    #[test]
    fn clear_parts_show_white_paper() {
        let mut half = image::RgbaImage::new(2, 1);
        half.put_pixel(0, 0, image::Rgba([200, 0, 0, 0]));
        half.put_pixel(1, 0, image::Rgba([200, 0, 0, 51]));
        assert_eq!(on_white(DynamicImage::ImageRgba8(half)), [255, 255, 255, 244, 204, 204]);
    }

    #[test]
    fn large_pictures_are_made_smaller_and_keep_their_shape() {
        let read = decode(&png(4800, 2400)).unwrap();
        assert_eq!((read.width, read.height, read.original), (2400, 1200, (4800, 2400)));
    }

    #[test]
    fn jpeg_lying_on_its_side_is_turned_upright() {
        let mut bytes = Cursor::new(Vec::new());
        DynamicImage::new_rgb8(16, 8).write_to(&mut bytes, ImageFormat::Jpeg).unwrap();
        let plain = bytes.into_inner();
        // An Exif block that says "turn a quarter to the right" (orientation 6), put after the start marker.
        let exif: &[u8] = &[
            0xff, 0xe1, 0x00, 0x22, b'E', b'x', b'i', b'f', 0, 0, b'M', b'M', 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0,
            3, 0, 0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0,
        ];
        let turned = [&plain[..2], exif, &plain[2..]].concat();
        let (flat, upright) = (decode(&plain).unwrap(), decode(&turned).unwrap());
        assert_eq!((flat.width, flat.height), (16, 8));
        assert_eq!((upright.width, upright.height), (8, 16));
    }

    #[test]
    fn webp_grey_deep_and_clear_pictures_are_read() {
        let kinds = [
            (DynamicImage::new_rgb8(6, 4), ImageFormat::WebP),
            (DynamicImage::new_luma8(6, 4), ImageFormat::Png),
            (DynamicImage::new_rgb16(6, 4), ImageFormat::Png),
            (DynamicImage::new_luma_a16(6, 4), ImageFormat::Png),
            (DynamicImage::new_luma8(6, 4), ImageFormat::Jpeg),
        ];
        for (picture, format) in kinds {
            let mut bytes = Cursor::new(Vec::new());
            picture.write_to(&mut bytes, format).unwrap();
            let read = decode_whole(&bytes.into_inner()).unwrap();
            assert_eq!((read.width, read.height, read.rgb.len()), (6, 4, 72));
            assert_eq!(decode_whole(&super::png(6, 4, &read.rgb).unwrap()).unwrap(), read);
        }
    }

    #[test]
    fn refusals_by_kind() {
        assert_eq!(decode(b"GIF89a\x01\x00\x01\x00"), Err(PictureError::WrongKind));
        // What phones of one make call HEIC.
        assert_eq!(decode(b"\0\0\0\x18ftypheic\0\0\0\0mif1heic"), Err(PictureError::WrongKind));
        assert_eq!(decode(b"hello"), Err(PictureError::WrongKind));
        assert_eq!(decode(b""), Err(PictureError::WrongKind));
        let cut_off = &png(30, 20)[..40];
        assert_eq!(decode(cut_off), Err(PictureError::CutOff));
        // A PNG head that claims 60 000 × 60 000 pixels.
        let mut bomb = png(30, 20);
        bomb[16..24].copy_from_slice(&[0, 0, 0xea, 0x60, 0, 0, 0xea, 0x60]);
        assert!(matches!(decode(&bomb), Err(PictureError::TooLarge | PictureError::Damaged(_))), "{:?}", decode(&bomb));
    }

    #[test]
    fn only_files_below_the_project_are_reached() {
        for name in ["/etc/hostname", "../x.png", "a/../../x.png", ""] {
            assert_eq!(load(Path::new("/tmp"), name), Err(PictureError::Elsewhere), "{name}");
        }
        assert_eq!(load(Path::new("/tmp"), "no such picture.png"), Err(PictureError::Missing));
    }
}
