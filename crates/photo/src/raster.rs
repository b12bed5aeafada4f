//! Upright pixels.

/// An opaque picture in sRGB, eight bits a channel, row by row from the top left.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Raster {
    width: usize,
    height: usize,
    rgb: Vec<u8>,
}

/// Longest side that is held. `Chosen:` as large as the rim decodes.
const LONGEST: usize = 16_384;

impl Raster {
    /// A picture of those pixels; `None` unless there are exactly width × height × 3 bytes, and some, no side over 16 384.
    #[must_use]
    pub fn new(width: usize, height: usize, rgb: Vec<u8>) -> Option<Self> {
        let wanted = width.checked_mul(height)?.checked_mul(3)?;
        (wanted > 0 && rgb.len() == wanted && width.max(height) <= LONGEST).then_some(Self { width, height, rgb })
    }

    /// Columns.
    #[must_use]
    pub fn width(&self) -> usize {
        self.width
    }

    /// Rows.
    #[must_use]
    pub fn height(&self) -> usize {
        self.height
    }

    /// Red, green, blue of every pixel.
    #[must_use]
    pub fn rgb(&self) -> &[u8] {
        &self.rgb
    }

    /// The bytes themselves.
    #[must_use]
    pub fn into_rgb(self) -> Vec<u8> {
        self.rgb
    }

    /// One pixel; beyond the edge, the edge's.
    #[must_use]
    pub fn pixel(&self, x: usize, y: usize) -> [u8; 3] {
        let at = (y.min(self.height - 1) * self.width + x.min(self.width - 1)) * 3;
        [self.rgb[at], self.rgb[at + 1], self.rgb[at + 2]]
    }

    /// The whole picture with its longest side at most `longest` (at least 1): whole blocks of pixels averaged, so that no
    /// line moves by a part of a pixel. Tells also how many pixels a side went into one; up to that many columns and rows less
    /// one are lost at the far edges.
    #[must_use]
    pub fn shrunk(&self, longest: usize) -> (Raster, usize) {
        let block = self.width.max(self.height).div_ceil(longest.max(1)).min(self.width).min(self.height);
        if block <= 1 {
            return (self.clone(), 1);
        }
        let (width, height) = (self.width / block, self.height / block);
        let mut rgb = Vec::with_capacity(width * height * 3);
        let count = u32::try_from(block * block).unwrap_or(u32::MAX);
        let mut sums = vec![0u32; width * 3];
        for row in 0..height {
            sums.fill(0);
            for y in row * block..(row + 1) * block {
                let line = &self.rgb[y * self.width * 3..][..width * block * 3];
                for (sum, pixels) in sums.chunks_exact_mut(3).zip(line.chunks_exact(block * 3)) {
                    for pixel in pixels.chunks_exact(3) {
                        for (sum, value) in sum.iter_mut().zip(pixel) {
                            *sum += u32::from(*value);
                        }
                    }
                }
            }
            rgb.extend(sums.iter().map(|sum| u8::try_from((sum + count / 2) / count).unwrap_or(u8::MAX)));
        }
        (Raster { width, height, rgb }, block)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn blocks_are_averaged() {
        let row: Vec<u8> = [0, 100, 10, 30, 7].iter().flat_map(|red| [*red, 0, 255]).collect();
        let two = [row.clone(), row].concat();
        let (small, block) = Raster::new(5, 2, two).unwrap().shrunk(3);
        assert_eq!((small.width(), small.height(), block), (2, 1, 2));
        assert_eq!(small.rgb(), [50, 0, 255, 20, 0, 255]);
    }

    #[test]
    fn wrong_lengths_are_refused() {
        assert!(Raster::new(2, 2, vec![0; 11]).is_none());
        assert!(Raster::new(0, 2, Vec::new()).is_none());
        assert!(Raster::new(usize::MAX, 2, vec![0; 6]).is_none());
    }
}
