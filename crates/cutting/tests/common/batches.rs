//! Large batches: about 2 000 pieces of 20 sizes. Generated (splitmix64: Steele, Lea, Flood 2014), so no outside figures.

use cutting::fixed::{Instance, PieceKind, Question, Rules, SheetKind};

/// Whole numbers that look random, the same every time.
struct Draw(u64);

impl Draw {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let x = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let x = (x ^ (x >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        x ^ (x >> 31)
    }

    /// A number from `low` to `high`.
    fn between(&mut self, low: u32, high: u32) -> u32 {
        low + u32::try_from(self.next() % u64::from(high - low + 1)).expect("below a u32")
    }
}

/// One size of sheet without limit.
fn batch((width, height): (u32, u32), pieces: Vec<PieceKind>) -> Instance {
    let sheets = vec![SheetKind::whole(width, height, None, 1)];
    Instance { sheets, pieces, question: Question::LeastCost, rules: Rules::default() }
}

/// The batch of the first published figure: 100 each of 20 sizes from 12 x 12 in at 1/16 in.
pub(crate) fn plain() -> Instance {
    let piece = |k: u32| PieceKind {
        width: 24 + k * 3,
        height: 20 + k * 7 % 60,
        demand: Some(100),
        min: 0,
        value: 0,
        turn: true,
    };
    batch((192, 192), (0..20).map(piece).collect())
}

/// 20 different sizes whose sides are multiples of `step` from `low` to `high`, about 2 000 pieces.
fn drawn(seed: u64, sheet: (u32, u32), (low, high, step): (u32, u32, u32), turns: [bool; 2]) -> Instance {
    let mut draw = Draw(seed);
    let mut pieces: Vec<PieceKind> = Vec::new();
    while pieces.len() < 20 {
        let (width, height) =
            (draw.between(low / step, high / step) * step, draw.between(low / step, high / step) * step);
        let known =
            pieces.iter().any(|p| (p.width, p.height) == (width, height) || (p.height, p.width) == (width, height));
        let fits = width <= sheet.0 && height <= sheet.1;
        if !known && fits {
            let turn = turns[pieces.len() % 2];
            pieces.push(PieceKind { width, height, demand: Some(draw.between(50, 150)), min: 0, value: 0, turn });
        }
    }
    batch(sheet, pieces)
}

/// How many sorts of drawn batches there are.
#[allow(dead_code, reason = "not every measure needs it")]
pub(crate) const SORTS: usize = 7;

/// All batches, by name: the plain one, then each sort with one seed after another.
pub(crate) fn all() -> Vec<(String, Instance)> {
    let mut all = vec![("plain".to_owned(), plain())];
    let square = (192, 192);
    for seed in 1..=6 {
        // Any sixteenth; quarter inches as cards have them; larger and smaller pieces; Letter; A4 in millimetres.
        all.push((format!("sixteenths-{seed}"), drawn(seed, square, (24, 110, 1), [true, true])));
        all.push((format!("quarters-{seed}"), drawn(seed + 10, square, (12, 112, 4), [true, true])));
        all.push((format!("mixed-{seed}"), drawn(seed + 20, square, (20, 100, 2), [true, false])));
        all.push((format!("large-{seed}"), drawn(seed + 30, square, (48, 150, 1), [true, true])));
        all.push((format!("small-{seed}"), drawn(seed + 40, square, (16, 56, 1), [true, true])));
        all.push((format!("letter-{seed}"), drawn(seed + 50, (136, 176), (16, 104, 2), [true, true])));
        all.push((format!("metric-{seed}"), drawn(seed + 60, (297, 210), (30, 150, 1), [true, false])));
    }
    all
}
