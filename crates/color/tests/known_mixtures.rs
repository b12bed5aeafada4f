//! Pictures of known mixture: colours drawn in known shares, with the noise and the soft edges of a camera, come back as
//! those colours and shares; the same whatever the order of the pixels.
#![allow(clippy::unwrap_used, reason = "tests")]

use color::{Lab, Share, Srgb, ciede2000, palette_of};
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// A picture of those colours in those hundredths, each value moved by up to `noise`; every 40th pixel is an edge, a blend
/// of two neighbours.
fn picture(mixture: &[(&str, usize)], noise: i16, seed: u64) -> Vec<Srgb> {
    let mut random = ChaCha8Rng::seed_from_u64(seed);
    let colors: Vec<Srgb> =
        mixture.iter().flat_map(|(hex, part)| std::iter::repeat_n(Srgb::from_hex(hex).unwrap(), part * 200)).collect();
    let shift = |value: u8, by: i16| u8::try_from((i16::from(value) + by).clamp(0, 255)).unwrap();
    (0..colors.len())
        .map(|at| {
            let (one, other) = (colors[at], colors[(at + 4_001) % colors.len()]);
            let mixed = |a: u8, b: u8| if at % 40 == 0 { a / 2 + b / 2 } else { a };
            let mut moved = |value: u8| shift(value, random.random_range(-noise..=noise));
            Srgb::new(moved(mixed(one.r, other.r)), moved(mixed(one.g, other.g)), moved(mixed(one.b, other.b)))
        })
        .collect()
}

fn close(found: &[Share], mixture: &[(&str, usize)], delta_e: f64, share: f64) {
    assert_eq!(found.len(), mixture.len(), "{found:?}");
    for (hex, part) in mixture {
        let wanted = Lab::of(Srgb::from_hex(hex).unwrap());
        let best = found.iter().min_by(|a, b| ciede2000(a.lab, wanted).total_cmp(&ciede2000(b.lab, wanted))).unwrap();
        let off = (best.share - f64::from(u32::try_from(*part).unwrap()) / 100.0).abs();
        assert!(ciede2000(best.lab, wanted) < delta_e && off < share, "{hex} {part}: {best:?}");
    }
}

const MIXTURES: [&[(&str, usize)]; 5] = [
    &[("#f4efe2", 62), ("#8fa98a", 25), ("#b2473e", 10), ("#2d3b55", 3)],
    &[("#ffffff", 50), ("#e8e4da", 50)],
    &[("#d8b4c0", 70), ("#7a4b6a", 20), ("#f0d98c", 10)],
    &[("#1f2a44", 90), ("#d9b65c", 10)],
    &[("#f7c8c8", 20), ("#c8e4f7", 20), ("#d3f0c9", 20), ("#f7efc1", 20), ("#e0d0f4", 20)],
];

#[test]
fn colors_and_shares_come_back() {
    for (seed, mixture) in (0..).zip(MIXTURES) {
        close(&palette_of(&picture(mixture, 6, seed), 8), mixture, 2.0, 0.03);
    }
}

#[test]
fn one_color_is_one_color() {
    let found = palette_of(&picture(&[("#c0a060", 100)], 12, 3), 8);
    close(&found, &[("#c0a060", 100)], 1.0, 1e-9);
}

#[test]
fn the_order_of_pixels_changes_nothing() {
    let mut pixels = picture(MIXTURES[0], 8, 9);
    let found = palette_of(&pixels, 8);
    assert!(found.windows(2).all(|two| two[0].share >= two[1].share));
    assert!((found.iter().map(|of| of.share).sum::<f64>() - 1.0).abs() < 1e-9);
    pixels.reverse();
    assert_eq!(palette_of(&pixels, 8), found);
    pixels.rotate_left(777);
    assert_eq!(palette_of(&pixels, 8), found);
    assert_eq!(palette_of(&pixels, 2).len(), 2);
    assert!(palette_of(&pixels, 0).is_empty() && palette_of(&[], 5).is_empty());
}
