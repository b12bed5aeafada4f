//! Pictures: shared pixels, cut and made smaller to what a page needs.
//!
//! A JPEG copy is made once, when a writer first asks, and shared by every page and edition that shows
//! the picture. Left out on purpose: reading image files.

use std::sync::{Arc, OnceLock};

/// Quality of the JPEG copies. Chosen: no halo can be seen at 200 dpi around printed outlines.
const JPEG_QUALITY: u8 = 86;

/// An opaque picture in sRGB, row by row from the top left.
#[derive(Debug, Clone)]
pub struct Picture {
    pixels: Arc<Pixels>,
}

#[derive(Debug)]
struct Pixels {
    width_px: u32,
    height_px: u32,
    rgb: Arc<[u8]>,
    jpeg: OnceLock<Arc<Vec<u8>>>,
}

impl PartialEq for Picture {
    fn eq(&self, other: &Picture) -> bool {
        self.is(other)
            || (self.width_px() == other.width_px()
                && self.height_px() == other.height_px()
                && self.pixels.rgb == other.pixels.rgb)
    }
}

impl Picture {
    /// The picture of those pixels; `None` unless there are exactly width × height × 3 bytes, and some.
    pub fn new(width_px: u32, height_px: u32, rgb: Arc<[u8]>) -> Option<Picture> {
        let wanted = usize::try_from(width_px).ok()?.checked_mul(usize::try_from(height_px).ok()?)?.checked_mul(3)?;
        if wanted == 0 || rgb.len() != wanted || width_px > 16_000 || height_px > 16_000 {
            return None;
        }
        Some(Picture { pixels: Arc::new(Pixels { width_px, height_px, rgb, jpeg: OnceLock::new() }) })
    }

    /// One pixel of one colour, to be stretched.
    pub fn plain(rgb: [u8; 3]) -> Picture {
        let pixels = Pixels { width_px: 1, height_px: 1, rgb: Arc::from(rgb), jpeg: OnceLock::new() };
        Picture { pixels: Arc::new(pixels) }
    }

    /// Columns.
    pub fn width_px(&self) -> u32 {
        self.pixels.width_px
    }

    /// Rows.
    pub fn height_px(&self) -> u32 {
        self.pixels.height_px
    }

    /// Its bytes: red, green, blue of each pixel.
    pub fn rgb(&self) -> &[u8] {
        &self.pixels.rgb
    }

    /// True if both share the same pixels in memory.
    pub fn is(&self, other: &Picture) -> bool {
        Arc::ptr_eq(&self.pixels, &other.pixels)
    }

    /// A number that tells shared pictures apart while they live.
    pub(crate) fn address(&self) -> usize {
        Arc::as_ptr(&self.pixels) as usize
    }

    /// Its JPEG copy, made once.
    pub fn jpeg(&self) -> Arc<Vec<u8>> {
        let pixels = &self.pixels;
        pixels
            .jpeg
            .get_or_init(|| {
                let mut bytes = Vec::new();
                let mut encoder = image::codecs::jpeg::JpegEncoder::new_with_quality(&mut bytes, JPEG_QUALITY);
                let written =
                    encoder.encode(&pixels.rgb, pixels.width_px, pixels.height_px, image::ExtendedColorType::Rgb8);
                // Cannot fail: the length was checked when the picture was made, and a vector takes all.
                debug_assert!(written.is_ok());
                Arc::new(bytes)
            })
            .clone()
    }

    /// The part from (`left`, `top`) to (`right`, `bottom`), told as shares of the whole (0 to 1), made
    /// `width_px` wide and `height_px` high by averaging; each at least 1 px.
    ///
    /// Shares outside 0 to 1 are moved to the edge. Averaging by exact area keeps thin printed lines.
    pub fn part(&self, [left, top, right, bottom]: [f64; 4], width_px: u32, height_px: u32) -> Picture {
        let columns = spans(left, right, self.width_px(), width_px.clamp(1, 16_000));
        let rows = spans(top, bottom, self.height_px(), height_px.clamp(1, 16_000));
        let neighbours = columns.windows(2).all(|pair| pair[0].first + 1 == pair[1].first);
        let rgb = if neighbours && columns.iter().chain(&rows).all(Span::is_one) {
            self.cut(&columns, &rows)
        } else {
            self.averaged(&columns, &rows)
        };
        let (width_px, height_px) = (size(columns.len()), size(rows.len()));
        Picture { pixels: Arc::new(Pixels { width_px, height_px, rgb: Arc::from(rgb), jpeg: OnceLock::new() }) }
    }

    /// Pixel for pixel.
    fn cut(&self, columns: &[Span], rows: &[Span]) -> Vec<u8> {
        let stride = self.width_px() as usize * 3;
        let first = columns.first().map_or(0, |span| span.first) * 3;
        let mut rgb = Vec::with_capacity(columns.len() * rows.len() * 3);
        for row in rows {
            rgb.extend_from_slice(&self.pixels.rgb[row.first * stride + first..][..columns.len() * 3]);
        }
        rgb
    }

    /// Each target pixel the mean of the source pixels it covers: first down, then across.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a mean of bytes is a byte")]
    fn averaged(&self, columns: &[Span], rows: &[Span]) -> Vec<u8> {
        let stride = self.width_px() as usize * 3;
        let from = columns.first().map_or(0, |span| span.first);
        let to = columns.last().map_or(0, |span| span.first + span.weights.len());
        let mut sums = vec![0.0_f32; (to - from) * 3];
        let mut rgb = Vec::with_capacity(columns.len() * rows.len() * 3);
        for row in rows {
            sums.fill(0.0);
            for (y, weight) in (row.first..).zip(&row.weights) {
                let source = &self.pixels.rgb[y * stride + from * 3..y * stride + to * 3];
                for (sum, channel) in sums.iter_mut().zip(source) {
                    *sum += f32::from(*channel) * weight;
                }
            }
            for column in columns {
                let mut mean = [0.5_f32; 3];
                for (pixel, weight) in sums[(column.first - from) * 3..].chunks_exact(3).zip(&column.weights) {
                    for (mean, sum) in mean.iter_mut().zip(pixel) {
                        *mean += sum * weight;
                    }
                }
                rgb.extend(mean.map(|channel| channel as u8));
            }
        }
        rgb
    }

    /// The whole picture, at most so many pixels wide (itself if it is not wider).
    pub fn at_most(&self, width_px: u32) -> Picture {
        if self.width_px() <= width_px {
            return self.clone();
        }
        let height = u64::from(self.height_px()) * u64::from(width_px) / u64::from(self.width_px());
        self.part([0.0, 0.0, 1.0, 1.0], width_px, u32::try_from(height).unwrap_or(1))
    }

    /// Turned clockwise by so many quarter turns.
    pub fn turned(&self, quarters: u8) -> Picture {
        let (w, h) = (self.width_px() as usize, self.height_px() as usize);
        let quarters = quarters % 4;
        if quarters == 0 {
            return self.clone();
        }
        let (nw, nh) = if quarters % 2 == 1 { (h, w) } else { (w, h) };
        let mut rgb = Vec::with_capacity(nw * nh * 3);
        for y in 0..nh {
            for x in 0..nw {
                let (sx, sy) = match quarters {
                    1 => (y, h - 1 - x),
                    2 => (w - 1 - x, h - 1 - y),
                    _ => (w - 1 - y, x),
                };
                let at = (sy * w + sx) * 3;
                rgb.extend_from_slice(&self.pixels.rgb[at..at + 3]);
            }
        }
        Picture {
            pixels: Arc::new(Pixels {
                width_px: size(nw),
                height_px: size(nh),
                rgb: Arc::from(rgb),
                jpeg: OnceLock::new(),
            }),
        }
    }

    /// The colour most of it has, as the mean of its more colourful half: an accent taken from the paper.
    pub fn accent(&self) -> [u8; 3] {
        let mut seen: Vec<(u32, [u8; 3])> = self
            .pixels
            .rgb
            .chunks_exact(3)
            .step_by((self.pixels.rgb.len() / 3 / 4096).max(1))
            .map(|pixel| {
                let (least, most) =
                    (pixel.iter().min().copied().unwrap_or(0), pixel.iter().max().copied().unwrap_or(0));
                (u32::from(most - least), [pixel[0], pixel[1], pixel[2]])
            })
            .collect();
        seen.sort_by(|a, b| b.cmp(a));
        let kept = &seen[..(seen.len() / 4).max(1)];
        let count = u32::try_from(kept.len()).unwrap_or(1);
        let mut sum = [0_u32; 3];
        for (_, pixel) in kept {
            for (total, channel) in sum.iter_mut().zip(pixel) {
                *total += u32::from(*channel);
            }
        }
        sum.map(|channel| u8::try_from(channel / count).unwrap_or(255))
    }
}

fn size(count: usize) -> u32 {
    u32::try_from(count).unwrap_or(1)
}

/// The source pixels that one target pixel covers, from `first` on, each with its share of it.
struct Span {
    first: usize,
    weights: Vec<f32>,
}

impl Span {
    fn is_one(&self) -> bool {
        self.weights.len() == 1
    }
}

/// A target pixel that covers less than this of a source pixel leaves it out: it is rounding.
const SLIVER: f64 = 1.0e-3;

/// Which source pixels each of `into` target pixels covers.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to the picture first")]
fn spans(from: f64, to: f64, of: u32, into: u32) -> Vec<Span> {
    let whole = f64::from(of);
    let (from, to) = (from.clamp(0.0, 1.0) * whole, to.clamp(0.0, 1.0) * whole);
    let step = (to - from).max(0.0) / f64::from(into);
    let last = of as usize - 1;
    (0..into)
        .map(|index| {
            let start = from + step * f64::from(index);
            let end = start + step;
            let first = ((start + SLIVER).floor() as usize).min(last);
            let count = ((end - SLIVER).ceil() as usize).clamp(first + 1, last + 1) - first;
            let covered = |pixel: usize| {
                let pixel = pixel as f64;
                (end.min(pixel + 1.0) - start.max(pixel)).max(SLIVER)
            };
            let all: f64 = (first..first + count).map(covered).sum();
            let weights = (first..first + count).map(|pixel| (covered(pixel) / all) as f32).collect();
            Span { first, weights }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;

    fn four() -> Picture {
        // Red, green above blue, white.
        Picture::new(2, 2, Arc::from([255, 0, 0, 0, 255, 0, 0, 0, 255, 255, 255, 255])).unwrap()
    }

    #[test]
    fn a_part_shows_exactly_its_pixels() {
        assert_eq!(four().part([0.5, 0.0, 1.0, 0.5], 1, 1).rgb(), [0, 255, 0]);
        assert_eq!(four().part([0.0, 0.0, 1.0, 1.0], 1, 1).rgb(), [128, 128, 128]);
        assert_eq!(four().part([0.0, 0.0, 1.0, 1.0], 2, 2), four());
    }

    #[test]
    fn a_part_between_pixels_is_their_mean_by_area() {
        let row = Picture::new(4, 1, Arc::from([0, 0, 0, 100, 0, 0, 200, 0, 0, 60, 0, 0])).unwrap();
        let red = |picture: Picture| picture.rgb().chunks_exact(3).map(|pixel| pixel[0]).collect::<Vec<u8>>();
        // Three pixels over four: 0 and a third of 100; two thirds of 100 and 200; a third of 200 and 60.
        assert_eq!(red(row.part([0.0, 0.0, 1.0, 1.0], 3, 1)), [25, 150, 95]);
        assert_eq!(red(row.part([0.25, 0.0, 0.75, 1.0], 2, 1)), [100, 200], "pixel for pixel");
        assert_eq!(red(row.part([0.0, 0.0, 0.5, 1.0], 4, 1)), [0, 0, 100, 100], "made larger");
        assert_eq!(red(row.part([0.125, 0.0, 0.375, 1.0], 1, 1)), [50]);
    }

    #[test]
    fn a_quarter_turn_moves_the_left_edge_to_the_top() {
        assert_eq!(four().turned(1).rgb(), [0, 0, 255, 255, 0, 0, 255, 255, 255, 0, 255, 0]);
        assert_eq!(four().turned(3).turned(1), four());
        assert_eq!(four().turned(2), four().turned(1).turned(1));
    }

    #[test]
    fn wrong_lengths_are_refused() {
        assert!(Picture::new(2, 2, Arc::from([0_u8; 11])).is_none());
        assert!(Picture::new(0, 2, Arc::from([0_u8; 0])).is_none());
        assert!(Picture::new(u32::MAX, u32::MAX, Arc::from([0_u8; 3])).is_none());
    }

    #[test]
    fn the_jpeg_copy_is_made_once() {
        let picture = four();
        assert!(Arc::ptr_eq(&picture.jpeg(), &picture.clone().jpeg()));
        assert_eq!(picture.jpeg()[..2], [0xff, 0xd8]);
    }
}
