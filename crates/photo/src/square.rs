//! Four corners → a straight picture.
//!
//! | the photo has, for one pixel wanted | taken |
//! |---|---|
//! | up to 1.2 pixels a side | bicubic, 16 pixels (Catmull-Rom) |
//! | more | the mean of n × n places within the wanted pixel, each between 4 pixels |
//! | over 4 | the same, after the photo was halved |

use crate::{Homography, Point, Quad, Raster};

/// Finest parts of a pixel that places are told apart by: an error of 1/512 of a pixel at most.
const PARTS: usize = 256;
/// Weights are whole numbers of this.
const ONE: i16 = 1 << 10;

/// A straight picture, `width` × `height` pixels, of what lies between the corners.
///
/// # Shape
/// `corners` in pixels of the photo; parts beyond the photo take its edge's colour. Sizes are held to 1–16 384. The corners
/// of the answer are the corners of the sheet exactly.
///
/// # Source
/// Keys 1981, *IEEE Transactions on Acoustics, Speech and Signal Processing* 29(6), 1153–1160 (cubic convolution, a = −1/2).
/// Checked against the warp of `OpenCV` in `tests/opencv.rs`.
#[must_use]
pub fn square(photo: &Raster, corners: &Quad, width: usize, height: usize) -> Raster {
    let (width, height) = (width.clamp(1, 16_384), height.clamp(1, 16_384));
    let denser = pixels_for_one(corners, width, height);
    if denser > 4.0 && photo.width().min(photo.height()) >= 4 {
        let longest = photo.width().max(photo.height());
        let (small, block) = photo.shrunk(longest.div_ceil(2));
        #[allow(clippy::cast_precision_loss, reason = "blocks are small")]
        let scaled = corners.scaled(1.0 / block as f64);
        return square(&small, &scaled, width, height);
    }
    #[allow(clippy::cast_precision_loss, reason = "at most 16 384")]
    let Some(map) = Homography::onto(corners, width as f64, height as f64) else {
        // A quad has an area, so there is a map; a plain picture is better than a panic all the same.
        return Raster::new(width, height, vec![255; width * height * 3]).unwrap_or_else(|| photo.clone());
    };
    let rgb =
        if denser <= 1.2 { bicubic(photo, &map, width, height) } else { averaged(photo, &map, width, height, denser) };
    Raster::new(width, height, rgb).unwrap_or_else(|| photo.clone())
}

/// How many photo pixels a side lie in one wanted pixel, where they lie densest.
#[allow(clippy::cast_precision_loss, reason = "at most 16 384")]
fn pixels_for_one(corners: &Quad, width: usize, height: usize) -> f64 {
    let at = corners.corners();
    let across = at[0].far(at[1]).max(at[3].far(at[2])) / width as f64;
    let down = at[0].far(at[3]).max(at[1].far(at[2])) / height as f64;
    across.max(down)
}

/// Steps through one row of the map: where each pixel's middle lies in the photo.
#[allow(clippy::cast_precision_loss, reason = "at most 16 384")]
fn row_of(map: &Homography, y: f64, first: f64, step: f64, count: usize) -> impl Iterator<Item = (f64, f64)> + use<> {
    let [a, b, c, d, e, f, g, h, i] = map.rows();
    let start = (a * first + b * y + c, d * first + e * y + f, g * first + h * y + i);
    (0..count).map(move |at| {
        let x = at as f64 * step;
        let back = 1.0 / (start.2 + g * x);
        ((start.0 + a * x) * back, (start.1 + d * x) * back)
    })
}

/// Catmull-Rom's four weights for each part of a pixel, adding up to `ONE`.
#[allow(clippy::cast_precision_loss, clippy::cast_possible_truncation, reason = "small whole numbers")]
fn cubic_weights() -> Vec<[i16; 4]> {
    let weights = |part: usize| {
        let t = part as f64 / PARTS as f64;
        let exact = [
            ((2.0 - t) * t - 1.0) * t / 2.0,
            ((3.0 * t - 5.0) * t * t + 2.0) / 2.0,
            ((4.0 - 3.0 * t) * t + 1.0) * t / 2.0,
            (t - 1.0) * t * t / 2.0,
        ];
        let mut whole = exact.map(|weight| libm::round(weight * f64::from(ONE)) as i16);
        whole[if t < 0.5 { 1 } else { 2 }] += ONE - whole.iter().sum::<i16>();
        whole
    };
    (0..PARTS).map(weights).collect()
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_possible_wrap,
    reason = "places are held to the photo, at most 16 384, before they are made whole"
)]
fn bicubic(photo: &Raster, map: &Homography, width: usize, height: usize) -> Vec<u8> {
    let weights = cubic_weights();
    let (wide, high, pixels) = (photo.width(), photo.height(), photo.rgb());
    let mut rgb = vec![0u8; width * height * 3];
    let far = (wide as f64 + 4.0, high as f64 + 4.0);
    let parts = PARTS as f64;
    // In parts of a pixel, from the middle of the first one; shifted by 4 pixels so as to be positive.
    let part = |at: f64, far: f64| ((at.clamp(-3.0, far) + 3.5) * parts + 0.5) as i32;
    let mut places = vec![(0i32, 0i32); width];
    let stride = wide * 3;
    for (y, line) in rgb.chunks_exact_mut(width * 3).enumerate() {
        // Where the whole row lies first: divisions and roundings then go two at once.
        for (place, (x, y)) in places.iter_mut().zip(row_of(map, y as f64 + 0.5, 0.5, 1.0, width)) {
            *place = (part(x, far.0), part(y, far.1));
        }
        for (to, (x, y)) in line.chunks_exact_mut(3).zip(&places) {
            let (x, y) = (*x as usize, *y as usize);
            let (wx, wy) = (&weights[x % PARTS], &weights[y % PARTS]);
            let (left, top) = ((x / PARTS) as isize - 5, (y / PARTS) as isize - 5);
            let mut sums = [1 << 19; 3];
            if left >= 0 && top >= 0 && left as usize + 4 <= wide && top as usize + 4 <= high {
                let at = (top as usize * wide + left as usize) * 3;
                // First down, twelve values at a time, then across: the first goes eight at once, since products of
                // sixteen bits need no wider multiplication.
                let Some(window) = pixels.get(at..at + 3 * stride + 12) else { continue };
                let row = |down: usize| window.get(down * stride..).and_then(<[u8]>::first_chunk::<12>);
                let (Some(r0), Some(r1), Some(r2), Some(r3)) = (row(0), row(1), row(2), row(3)) else { continue };
                let mut down = [0i32; 12];
                let times = |value: u8, weight: i16| i32::from(i16::from(value)) * i32::from(weight);
                for at in 0..12 {
                    down[at] =
                        times(r0[at], wy[0]) + times(r1[at], wy[1]) + times(r2[at], wy[2]) + times(r3[at], wy[3]);
                }
                for channel in 0..3 {
                    sums[channel] += down[channel] * i32::from(wx[0])
                        + down[channel + 3] * i32::from(wx[1])
                        + down[channel + 6] * i32::from(wx[2])
                        + down[channel + 9] * i32::from(wx[3]);
                }
            } else {
                for (down, weight) in (top..).zip(wy) {
                    for (across, more) in (left..).zip(wx) {
                        let pixel = photo.pixel(across.max(0) as usize, down.max(0) as usize);
                        for (sum, value) in sums.iter_mut().zip(pixel) {
                            *sum += i32::from(value) * i32::from(*weight) * i32::from(*more);
                        }
                    }
                }
            }
            for (to, sum) in to.iter_mut().zip(sums) {
                *to = (sum >> 20).clamp(0, 255) as u8;
            }
        }
    }
    rgb
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "places are held to the photo, at most 16 384, before they are made whole"
)]
fn averaged(photo: &Raster, map: &Homography, width: usize, height: usize, denser: f64) -> Vec<u8> {
    let places = libm::ceil(denser) as usize;
    let step = 1.0 / places as f64;
    let (wide, high, pixels) = (photo.width(), photo.height(), photo.rgb());
    let most = ((wide.max(2) - 1) as f64 - 1e-6, (high.max(2) - 1) as f64 - 1e-6);
    let (next, below) = (if wide > 1 { 3 } else { 0 }, if high > 1 { wide * 3 } else { 0 });
    let mut rgb = vec![0u8; width * height * 3];
    let mut sums = vec![0u32; width * 3];
    let share = (places * places) as u32;
    for (y, line) in rgb.chunks_exact_mut(width * 3).enumerate() {
        sums.fill(0);
        for sub in 0..places {
            let across = row_of(map, y as f64 + (sub as f64 + 0.5) * step, step / 2.0, step, width * places);
            for (at, (x, y)) in across.enumerate() {
                let (x, y) = ((x - 0.5).clamp(0.0, most.0), (y - 0.5).clamp(0.0, most.1));
                let (left, top) = ((x * 256.0) as u32, (y * 256.0) as u32);
                let (fx, fy) = (left & 255, top & 255);
                let from = ((top >> 8) as usize * wide + (left >> 8) as usize) * 3;
                let to = &mut sums[at / places * 3..][..3];
                for (channel, to) in to.iter_mut().enumerate() {
                    let value = |at: usize| u32::from(pixels[at]);
                    let from = from + channel;
                    let upper = value(from) * (256 - fx) + value(from + next) * fx;
                    let lower = value(from + below) * (256 - fx) + value(from + below + next) * fx;
                    *to += (upper * (256 - fy) + lower * fy) >> 8;
                }
            }
        }
        for (to, sum) in line.iter_mut().zip(&sums) {
            *to = ((sum + share * 128) / (share * 256)).min(255) as u8;
        }
    }
    rgb
}

/// A quad that covers a whole picture, for pictures that need no squaring.
impl Quad {
    /// The four corners of a picture of that size.
    #[must_use]
    #[allow(clippy::cast_precision_loss, reason = "at most 16 384")]
    pub fn whole(picture: &Raster) -> Option<Self> {
        let (w, h) = (picture.width() as f64, picture.height() as f64);
        Self::new([Point::new(0.0, 0.0), Point::new(w, 0.0), Point::new(w, h), Point::new(0.0, h)]).ok()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn checks(side: usize) -> Raster {
        let rgb = (0..side * side).flat_map(|at| {
            let (x, y) = (at % side, at / side);
            let value = u8::try_from((x * 5 + y * 3) % 200).unwrap();
            [value, 255 - value, u8::try_from(x % 7 * 30).unwrap()]
        });
        Raster::new(side, side, rgb.collect()).unwrap()
    }

    #[test]
    fn a_picture_squared_by_its_own_corners_is_itself() {
        for side in [5, 64] {
            let picture = checks(side);
            let quad = Quad::whole(&picture).unwrap();
            assert_eq!(square(&picture, &quad, side, side), picture);
        }
    }

    #[test]
    fn half_as_large_is_the_mean_of_blocks() {
        let picture = checks(64);
        let half = square(&picture, &Quad::whole(&picture).unwrap(), 32, 32);
        let (blocks, _) = picture.shrunk(32);
        let worst = half.rgb().iter().zip(blocks.rgb()).map(|(a, b)| a.abs_diff(*b)).max().unwrap();
        assert!(worst <= 1, "{worst}");
        let tiny = square(&picture, &Quad::whole(&picture).unwrap(), 4, 4);
        assert_eq!((tiny.width(), tiny.height()), (4, 4));
    }

    #[test]
    fn tiny_photos_and_corners_beyond_the_edge_are_no_trouble() {
        for side in [1, 2, 3] {
            let tiny = Raster::new(side, side, vec![77; side * side * 3]).unwrap();
            let quad =
                Quad::new([(-50.0, -40.0), (60.0, -30.0), (80.0, 90.0), (-20.0, 70.0)].map(|(x, y)| Point::new(x, y)));
            for (w, h) in [(1, 1), (9, 400), (300, 2)] {
                assert!(square(&tiny, &quad.unwrap(), w, h).rgb().iter().all(|value| *value == 77), "{side} {w} {h}");
            }
        }
    }
}
