//! The drawing hand: its small irregularities, and its eye for even spacing.

use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// A point in inches, x to the right and y down.
pub(super) type Point = (f32, f32);

/// A seeded source of irregularity.
#[derive(Debug)]
pub(super) struct Hand {
    rng: ChaCha8Rng,
}

impl Hand {
    pub(super) fn new(seed: u64) -> Hand {
        Hand { rng: ChaCha8Rng::seed_from_u64(seed) }
    }

    /// A number in 0–1.
    pub(super) fn unit(&mut self) -> f32 {
        self.rng.random::<f32>()
    }

    pub(super) fn between(&mut self, low: f32, high: f32) -> f32 {
        low + (high - low) * self.unit()
    }

    /// A number within `spread` of `middle`, the middle likelier.
    pub(super) fn near(&mut self, middle: f32, spread: f32) -> f32 {
        middle + spread * (self.unit() + self.unit() - 1.0)
    }

    pub(super) fn chance(&mut self, share: f32) -> bool {
        self.unit() < share
    }

    /// One of 0..`count`; 0 if there is none.
    pub(super) fn below(&mut self, count: usize) -> usize {
        if count == 0 { 0 } else { self.rng.random_range(0..count as u64) as usize }
    }

    pub(super) fn pick<T: Copy>(&mut self, from: &[T], otherwise: T) -> T {
        let at = self.below(from.len());
        from.get(at).copied().unwrap_or(otherwise)
    }

    /// Points no nearer than `gap`, filling the extent and `margin` beyond each edge so that motifs run off it.
    ///
    /// # Source
    /// Bridson 2007, *Fast Poisson disk sampling in arbitrary dimensions*, SIGGRAPH sketches.
    pub(super) fn spaced(&mut self, width: f32, height: f32, margin: f32, gap: f32) -> Vec<Point> {
        let mut field = Field::new(width + 2.0 * margin, height + 2.0 * margin, gap);
        let first = (field.width * self.unit(), field.height * self.unit());
        field.put(first);
        let mut open = vec![first];
        while !open.is_empty() {
            let at = self.below(open.len());
            let around = open[at];
            let turn = self.unit();
            let tries: u8 = 14;
            let next = (0..tries).find_map(|i| {
                let (dx, dy) = direction((turn + f32::from(i) / f32::from(tries)) * core::f32::consts::TAU);
                let reach = gap * self.between(1.0, 1.25);
                let point = (around.0 + dx * reach, around.1 + dy * reach);
                field.free(point).then_some(point)
            });
            match next {
                Some(point) => {
                    field.put(point);
                    open.push(point);
                }
                None => {
                    open.swap_remove(at);
                }
            }
        }
        field.points.iter().map(|p| (p.0 - margin, p.1 - margin)).collect()
    }
}

/// The unit vector at an angle, in radians from x towards y.
pub(super) fn direction(angle: f32) -> Point {
    (libm::cosf(angle), libm::sinf(angle))
}

/// Points so far, in cells so small that each holds at most one.
struct Field {
    width: f32,
    height: f32,
    gap: f32,
    cell: f32,
    across: i64,
    down: i64,
    cells: Vec<Option<u32>>,
    points: Vec<Point>,
}

impl Field {
    fn new(width: f32, height: f32, gap: f32) -> Field {
        let cell = gap * core::f32::consts::FRAC_1_SQRT_2;
        let across = (width / cell) as i64 + 1;
        let down = (height / cell) as i64 + 1;
        Field {
            width,
            height,
            gap,
            cell,
            across,
            down,
            cells: vec![None; (across * down) as usize],
            points: Vec::new(),
        }
    }

    fn free(&self, p: Point) -> bool {
        if p.0 < 0.0 || p.1 < 0.0 || p.0 >= self.width || p.1 >= self.height {
            return false;
        }
        let (column, row) = ((p.0 / self.cell) as i64, (p.1 / self.cell) as i64);
        for y in (row - 2).max(0)..=(row + 2).min(self.down - 1) {
            for x in (column - 2).max(0)..=(column + 2).min(self.across - 1) {
                if let Some(i) = self.cells[(y * self.across + x) as usize] {
                    let q = self.points[i as usize];
                    let (dx, dy) = (p.0 - q.0, p.1 - q.1);
                    if dx * dx + dy * dy < self.gap * self.gap {
                        return false;
                    }
                }
            }
        }
        true
    }

    fn put(&mut self, p: Point) {
        let (column, row) = ((p.0 / self.cell) as i64, (p.1 / self.cell) as i64);
        let at = (row.min(self.down - 1) * self.across + column.min(self.across - 1)) as usize;
        self.cells[at] = Some(self.points.len() as u32);
        self.points.push(p);
    }
}
