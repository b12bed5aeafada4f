//! The question on its own grid: steps scaled down to the unit every side is a multiple of, mixes of
//! recipes written out, piece numbers packed into one word.

use super::instance::{Instance, Refusal, Why};

/// Most kinds a packed count holds.
pub(super) const MOST_KINDS: usize = 16;
/// Most pieces of one kind a packed count holds.
pub(super) const MOST_PIECES: u32 = 127;
/// Most mixes of recipes that are written out.
const MOST_MIXES: usize = 20_000;

/// How many pieces of each kind, eight bits a kind.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub(super) struct Counts(pub(super) u128);

/// The top bit of every lane.
const GUARD: u128 = 0x8080_8080_8080_8080_8080_8080_8080_8080;

impl Counts {
    pub(super) fn of(numbers: &[u32]) -> Counts {
        Counts(numbers.iter().rev().fold(0, |word, &n| (word << 8) | u128::from(n.min(MOST_PIECES))))
    }

    pub(super) fn one(kind: usize) -> Counts {
        Counts(1 << (8 * kind))
    }

    pub(super) fn get(self, kind: usize) -> u32 {
        u32::from(self.0.to_le_bytes()[kind])
    }

    pub(super) fn plus(self, other: Counts) -> Counts {
        Counts(self.0 + other.0)
    }

    pub(super) fn minus(self, other: Counts) -> Counts {
        Counts(self.0 - other.0)
    }

    /// True if no lane of `self` is above the same lane of `most`.
    pub(super) fn within(self, most: Counts) -> bool {
        ((most.0 | GUARD) - self.0) & GUARD == GUARD
    }
}

/// One kind on the scaled grid.
#[derive(Debug, Clone)]
pub(super) struct GridKind {
    pub(super) width: (u32, u32),
    pub(super) height: (u32, u32),
    /// Sides are multiples of this many grid units, counted from zero.
    pub(super) stride: u32,
    pub(super) prefer: (u32, u32),
    pub(super) turn: bool,
    pub(super) uniform: bool,
}

impl GridKind {
    /// All sizes, in canonical orientation; a turnable kind lists each physical size once.
    pub(super) fn sizes(&self) -> Vec<(u32, u32)> {
        let mut sizes = Vec::new();
        for w in (self.width.0..=self.width.1).filter(|w| w % self.stride == 0) {
            for h in (self.height.0..=self.height.1).filter(|h| h % self.stride == 0) {
                let twin = self.turn && w > h && self.holds(h, w);
                if !twin {
                    sizes.push((w, h));
                }
            }
        }
        sizes
    }

    fn holds(&self, w: u32, h: u32) -> bool {
        self.width.0 <= w && w <= self.width.1 && self.height.0 <= h && h <= self.height.1
    }

    pub(super) fn least_area(&self) -> u64 {
        u64::from(self.width.0) * u64::from(self.height.0)
    }

    pub(super) fn most_area(&self) -> u64 {
        u64::from(self.width.1) * u64::from(self.height.1)
    }

    /// Sum of side differences from the preferred size.
    pub(super) fn off(&self, w: u32, h: u32) -> u64 {
        u64::from(w.abs_diff(self.prefer.0)) + u64::from(h.abs_diff(self.prefer.1))
    }
}

/// One allowed number of cards of each recipe, and the pieces it takes.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Mix {
    pub(super) pieces: Vec<u32>,
    pub(super) cards: Vec<u32>,
}

/// A pinned piece on the scaled grid.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct GridPin {
    pub(super) kind: usize,
    pub(super) x: u32,
    pub(super) y: u32,
    pub(super) width: u32,
    pub(super) height: u32,
    pub(super) turned: bool,
}

/// The scaled question.
#[derive(Debug, Clone)]
pub(super) struct Grid {
    pub(super) width: u32,
    pub(super) height: u32,
    /// Steps to one grid unit.
    pub(super) scale: u32,
    pub(super) kinds: Vec<GridKind>,
    pub(super) pins: Vec<GridPin>,
    /// Allowed mixes, each with different pieces.
    pub(super) mixes: Vec<Mix>,
    /// True if `mixes` lists all of them.
    pub(super) all_mixes: bool,
}

fn gcd(a: u32, b: u32) -> u32 {
    if b == 0 { a } else { gcd(b, a % b) }
}

impl Grid {
    /// Scales and checks an instance. The inner result says why nothing can exist, if that is plain already.
    pub(super) fn of(instance: &Instance) -> Result<Result<Grid, Why>, Refusal> {
        let side = |s: u32| (1..=65_535).contains(&s);
        if !side(instance.width) || !side(instance.height) {
            return Err(Refusal::Sheet);
        }
        let too_many = Refusal::TooMany { kinds: MOST_KINDS, pieces: MOST_PIECES };
        if instance.kinds.len() > MOST_KINDS {
            return Err(too_many);
        }
        for (i, pin) in instance.pins.iter().enumerate() {
            let inside = pin.kind < instance.kinds.len()
                && pin.width > 0
                && pin.height > 0
                && pin.x.checked_add(pin.width).is_some_and(|right| right <= instance.width)
                && pin.y.checked_add(pin.height).is_some_and(|bottom| bottom <= instance.height);
            if !inside {
                return Err(Refusal::Pin(i));
            }
        }
        let mut scale = instance.kinds.iter().fold(0, |g, kind| gcd(g, kind.step.max(1))).max(1);
        for pin in &instance.pins {
            scale = [pin.x, pin.y, pin.width, pin.height].into_iter().fold(scale, gcd);
        }
        let mut kinds = Vec::with_capacity(instance.kinds.len());
        for (i, kind) in instance.kinds.iter().enumerate() {
            let step = kind.step.max(1);
            let inward = |lo: u32, hi: u32| (lo.div_ceil(step).max(1) * step, hi / step * step);
            let (width, height) =
                (inward(kind.width.least, kind.width.most), inward(kind.height.least, kind.height.most));
            if width.0 > width.1 || height.0 > height.1 || width.1 > 1 << 20 || height.1 > 1 << 20 {
                return Err(Refusal::Kind(i));
            }
            kinds.push(GridKind {
                width: (width.0 / scale, width.1 / scale),
                height: (height.0 / scale, height.1 / scale),
                stride: step / scale,
                prefer: (kind.prefer.0 / scale, kind.prefer.1 / scale),
                turn: kind.turn,
                uniform: kind.uniform,
            });
        }
        let pins = pinned(instance, &mut kinds, scale)?;
        for (i, recipe) in instance.recipes.iter().enumerate() {
            if recipe.pieces.len() != kinds.len() {
                return Err(Refusal::Recipe(i));
            }
        }
        let (mut mixes, all_mixes, over) = write_out(instance);
        if mixes.is_empty() {
            return if over { Err(too_many) } else { Ok(Err(Why::NoMix)) };
        }
        mixes.sort();
        mixes.dedup_by(|a, b| a.pieces == b.pieces);
        let (width, height) = (instance.width / scale, instance.height / scale);
        if width == 0 || height == 0 {
            return Ok(Err(Why::NoTree));
        }
        let grid = Grid { width, height, scale, kinds, pins, mixes, all_mixes };
        Ok(grid.without_hopeless_mixes())
    }

    /// Drops mixes with a piece larger than the sheet, or more area than the sheet.
    fn without_hopeless_mixes(mut self) -> Result<Grid, Why> {
        let sheet = u64::from(self.width) * u64::from(self.height);
        let fits = |kind: &GridKind| {
            let upright = kind.width.0 <= self.width && kind.height.0 <= self.height;
            upright || (kind.turn && kind.height.0 <= self.width && kind.width.0 <= self.height)
        };
        let fitting: Vec<bool> = self.kinds.iter().map(fits).collect();
        let mut why = None;
        let mut least_of_all = u64::MAX;
        let mut kept = Vec::new();
        for mix in std::mem::take(&mut self.mixes) {
            if let Some(kind) = (0..self.kinds.len()).find(|&k| mix.pieces[k] > 0 && !fitting[k]) {
                why.get_or_insert(Why::PieceTooLarge { kind });
                continue;
            }
            let least: u64 =
                mix.pieces.iter().zip(&self.kinds).map(|(&n, kind)| u64::from(n) * kind.least_area()).sum();
            least_of_all = least_of_all.min(least);
            if least <= sheet {
                kept.push(mix);
            }
        }
        self.mixes = kept;
        if self.mixes.is_empty() {
            let square = u64::from(self.scale) * u64::from(self.scale);
            return Err(why.unwrap_or(Why::TooMuchArea { least: least_of_all * square, sheet: sheet * square }));
        }
        Ok(self)
    }

    pub(super) fn area(&self) -> u64 {
        u64::from(self.width) * u64::from(self.height)
    }

    /// Most pieces of each kind in any mix.
    pub(super) fn most(&self) -> Vec<u32> {
        let mut most = vec![0; self.kinds.len()];
        for mix in &self.mixes {
            for (m, &n) in most.iter_mut().zip(&mix.pieces) {
                *m = n.max(*m);
            }
        }
        most
    }

    pub(super) fn most_area_of(&self, mix: &Mix) -> u64 {
        mix.pieces.iter().zip(&self.kinds).map(|(&n, kind)| u64::from(n) * kind.most_area()).sum()
    }
}

/// The pins on the grid. A pinned kind of one size has the size of its pin.
fn pinned(instance: &Instance, kinds: &mut [GridKind], scale: u32) -> Result<Vec<GridPin>, Refusal> {
    let mut pins = Vec::with_capacity(instance.pins.len());
    for (i, pin) in instance.pins.iter().enumerate() {
        let (width, height) = (pin.width / scale, pin.height / scale);
        let kind = &mut kinds[pin.kind];
        let upright = kind.holds(width, height);
        if !(upright || kind.turn && kind.holds(height, width)) {
            return Err(Refusal::Pin(i));
        }
        let (w, h) = if upright { (width, height) } else { (height, width) };
        if kind.uniform {
            kind.width = (w, w);
            kind.height = (h, h);
        }
        pins.push(GridPin { kind: pin.kind, x: pin.x / scale, y: pin.y / scale, width, height, turned: !upright });
    }
    let apart = |a: &GridPin, b: &GridPin| {
        a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y
    };
    for (i, a) in pins.iter().enumerate() {
        if pins[..i].iter().any(|b| !apart(a, b)) {
            return Err(Refusal::Pin(i));
        }
    }
    Ok(pins)
}

/// Every allowed mix; whether that is all of them; whether some was too large to count.
fn write_out(instance: &Instance) -> (Vec<Mix>, bool, bool) {
    let mut mixes = Vec::new();
    let mut over = false;
    let mut complete = true;
    let mut cards = vec![0u32; instance.recipes.len()];
    // An explicit stack of recipe levels would hide the plain recursion.
    fn level(
        instance: &Instance,
        cards: &mut Vec<u32>,
        at: usize,
        sum: u32,
        mixes: &mut Vec<Mix>,
        over: &mut bool,
        complete: &mut bool,
    ) {
        if mixes.len() >= MOST_MIXES {
            *complete = false;
            return;
        }
        if at == instance.recipes.len() {
            if !instance.cards.holds(sum) {
                return;
            }
            let mut pieces = instance.spares.clone();
            pieces.resize(instance.kinds.len(), 0);
            for (recipe, &n) in instance.recipes.iter().zip(cards.iter()) {
                for (p, &each) in pieces.iter_mut().zip(&recipe.pieces) {
                    *p = p.saturating_add(each.saturating_mul(n));
                }
            }
            if pieces.iter().any(|&n| n > MOST_PIECES) {
                *over = true;
            } else if pieces.iter().any(|&n| n > 0) {
                mixes.push(Mix { pieces, cards: cards.clone() });
            }
            return;
        }
        let rest: u32 = instance.recipes[at + 1..].iter().fold(0u32, |s, r| s.saturating_add(r.cards.most));
        let low = instance.recipes[at].cards.least.max(instance.cards.least.saturating_sub(sum.saturating_add(rest)));
        let high = instance.recipes[at].cards.most.min(instance.cards.most.saturating_sub(sum)).min(MOST_PIECES);
        for n in low..=high {
            cards[at] = n;
            level(instance, cards, at + 1, sum + n, mixes, over, complete);
        }
        cards[at] = 0;
    }
    level(instance, &mut cards, 0, 0, &mut mixes, &mut over, &mut complete);
    let complete = complete && !over;
    (mixes, complete, over)
}
