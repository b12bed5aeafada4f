//! Where the ink of a pictured stamp lies.
//!
//! Left out on purpose: reading files, true sizes, and what the stamp says.

/// Part of the way from black to the ground at which a pixel counts as ink, in percent.
/// Chosen: a shadow on white paper stays lighter than three quarters of it, a pale ink does not.
const INK_BELOW_PERCENT: u32 = 75;
/// Share of a line's pixels, one in so many, that ink must cover to count; dust does not. Chosen.
const ONE_IN: usize = 400;

/// The box round the ink, in pixels from the top left.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct InkBox {
    /// From the left edge of the picture.
    pub(crate) left: u32,
    /// From its top edge.
    pub(crate) top: u32,
    /// How wide it is.
    pub(crate) width: u32,
    /// How high it is.
    pub(crate) height: u32,
}

/// Finds the ink of a stamp on a light ground: what is transparent in the file is white here.
///
/// # Shape
/// `rgb` holds red, green and blue of every pixel, row by row; `None` where nothing is darker than the ground, or the
/// numbers do not make a picture.
pub(crate) fn ink_box(width: u32, height: u32, rgb: &[u8]) -> Option<InkBox> {
    let (wide, high) = (usize::try_from(width).ok()?, usize::try_from(height).ok()?);
    if wide == 0 || high == 0 || rgb.len() != wide.checked_mul(high)?.checked_mul(3)? {
        return None;
    }
    // Luma by the weights of ITU-R BT.709, in whole numbers.
    let luma: Vec<u8> = rgb
        .chunks_exact(3)
        .map(|pixel| {
            let sum = 2_126 * u32::from(pixel[0]) + 7_152 * u32::from(pixel[1]) + 722 * u32::from(pixel[2]);
            u8::try_from(sum / 10_000).unwrap_or(u8::MAX)
        })
        .collect();
    let mut counts = [0_usize; 256];
    luma.iter().for_each(|&light| counts[usize::from(light)] += 1);
    // The ground is as light as the lightest twentieth: most of a picture of a stamp may be ink.
    let mut seen = 0;
    let ground = (0..=u8::MAX).rev().find(|&light| {
        seen += counts[usize::from(light)];
        seen * 20 >= luma.len()
    })?;
    let limit = u8::try_from(u32::from(ground) * INK_BELOW_PERCENT / 100).unwrap_or(u8::MAX);
    let (mut columns, mut rows) = (vec![0_usize; wide], vec![0_usize; high]);
    for (row, line) in luma.chunks_exact(wide).enumerate() {
        for (column, &light) in line.iter().enumerate() {
            if light < limit {
                columns[column] += 1;
                rows[row] += 1;
            }
        }
    }
    let (left, right) = ends(&columns, high)?;
    let (top, bottom) = ends(&rows, wide)?;
    let pixels = |count: usize| u32::try_from(count).ok();
    Some(InkBox {
        left: pixels(left)?,
        top: pixels(top)?,
        width: pixels(right - left + 1)?,
        height: pixels(bottom - top + 1)?,
    })
}

/// The first and the last line that ink covers enough of.
fn ends(counts: &[usize], long: usize) -> Option<(usize, usize)> {
    let least = (long / ONE_IN).max(1);
    let inked = |count: &usize| *count >= least;
    Some((counts.iter().position(inked)?, counts.iter().rposition(inked)?))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;

    fn picture(wide: u32, high: u32, color: impl Fn(u32, u32) -> [u8; 3]) -> Vec<u8> {
        (0..high).flat_map(|y| (0..wide).map(move |x| (x, y))).flat_map(|(x, y)| color(x, y)).collect()
    }

    #[test]
    fn the_box_of_a_drawn_mark_is_found_to_the_pixel() {
        let inside = |x, y| (30..90).contains(&x) && (12..28).contains(&y);
        let rgb = picture(120, 50, |x, y| if inside(x, y) { [40, 50, 60] } else { [250, 248, 240] });
        assert_eq!(ink_box(120, 50, &rgb), Some(InkBox { left: 30, top: 12, width: 60, height: 16 }));
    }

    #[test]
    fn a_gentle_shadow_and_dust_are_no_ink() {
        let inside = |x, y| (300..900).contains(&x) && (120..280).contains(&y);
        let rgb = picture(1_200, 1_000, |x, y| {
            let shade = u8::try_from(250 - x * 40 / 1_200).unwrap();
            if inside(x, y) || (x, y) == (20, 900) { [30, 30, 30] } else { [shade; 3] }
        });
        assert_eq!(ink_box(1_200, 1_000, &rgb), Some(InkBox { left: 300, top: 120, width: 600, height: 160 }));
    }

    #[test]
    fn white_paper_has_no_ink_and_numbers_must_make_a_picture() {
        assert_eq!(ink_box(8, 8, &[255; 192]), None);
        assert_eq!(ink_box(8, 8, &[255; 191]), None);
        assert_eq!(ink_box(0, 0, &[]), None);
        assert_eq!(ink_box(u32::MAX, u32::MAX, &[]), None);
    }
}
