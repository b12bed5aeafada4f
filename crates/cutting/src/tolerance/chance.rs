//! How often a border comes out narrow, where every error is as likely large as small.

use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{RngCore, SeedableRng};

/// The two borders at either end of a layer laid on another, and what moves them.
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Pair {
    /// The border at the left or the top.
    pub near: i64,
    /// The border at the right or the bottom.
    pub far: i64,
    /// Halves of a difference in size that the near border takes: 1 for a layer laid in the middle, 0 for one laid
    /// at the left or the top, 2 at the right or the bottom.
    pub halves: i64,
    /// The most each independent error adds to the difference of the two sizes, either way.
    pub sizes: Vec<i64>,
    /// The most the layer lies off its place, either way.
    pub place: i64,
}

impl Pair {
    /// The narrowest the two borders can be, exactly.
    pub fn least(&self) -> (i64, i64) {
        let sum: i64 = self.sizes.iter().sum();
        let half = |halves: i64| (sum * halves + 1) / 2;
        (self.near - half(self.halves) - self.place, self.far - half(2 - self.halves) - self.place)
    }
}

/// What draws gave.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Share {
    /// Draws made.
    pub draws: u32,
    /// Draws in which one of the two borders (of those above nought) was under half its width.
    pub under_half: u32,
    /// One draw in twenty had a border of this or less.
    pub worst_twentieth: i64,
}

/// Draws every error evenly between its two ends.
///
/// # Shape
/// The same seed gives the same shares on every machine.
pub fn simulate(pair: &Pair, draws: u32, seed: u64) -> Share {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    // Even over the 2^32 points from −most to +most; a step between two is far below any length told.
    let mut even = |most: i64| {
        let point = i128::from(rng.next_u32()) * 2 - i128::from(u32::MAX);
        i64::try_from(i128::from(most) * point / i128::from(u32::MAX)).unwrap_or(0)
    };
    let (mut under_half, mut narrow) = (0, Vec::new());
    // What is flush, or runs over the edge, is no border.
    let narrow_of = |made: i64, planned: i64| planned > 0 && made * 2 < planned;
    for _ in 0..draws {
        let off: i64 = pair.sizes.iter().map(|&most| even(most)).sum();
        let place = even(pair.place);
        let near = pair.near + off * pair.halves / 2 + place;
        let far = pair.far + off * (2 - pair.halves) / 2 - place;
        under_half += u32::from(narrow_of(near, pair.near) || narrow_of(far, pair.far));
        narrow.push(if pair.near <= 0 {
            far
        } else if pair.far <= 0 {
            near
        } else {
            near.min(far)
        });
    }
    let twentieth = narrow.len() / 20;
    let worst_twentieth = if narrow.is_empty() { 0 } else { *narrow.select_nth_unstable(twentieth).1 };
    Share { draws, under_half, worst_twentieth }
}
