//! How much of each pixel a shape covers, by exact area.
//!
//! Every edge adds to its pixels the area to its right; summed along a row that gives the cover. Shapes that overlap
//! within one outline count once where they run the same way round, as all of the drawing hand's do.
//!
//! # Source
//! The accumulation buffer of R. Levien, “Inside the fastest font renderer in the world” (2016); from memory.

use super::hand::Point;

/// Pixels that are summed and painted together.
pub(super) const BLOCK: usize = 16;
/// Less cover than this is no cover but rounding.
const NOTHING: f32 = 1.0 / 1024.0;

/// The sums of one sheet, all zero between two shapes.
#[derive(Debug)]
pub(super) struct Cover {
    width: f32,
    height: f32,
    /// Blocks in a row.
    blocks: usize,
    area: Vec<f32>,
    /// Blocks that an edge runs through.
    crossed: Vec<bool>,
    /// The rows and the blocks of a row among which all edges run: from, to.
    rows: (usize, usize),
    columns: (usize, usize),
}

impl Cover {
    pub(super) fn new(width: u32, height: u32) -> Cover {
        // An edge at the right rim writes one pixel past it.
        let (blocks, rows) = ((width as usize + 2).div_ceil(BLOCK), height as usize);
        Cover {
            width: width as f32,
            height: height as f32,
            blocks,
            area: vec![0.0; blocks * BLOCK * rows],
            crossed: vec![false; blocks * rows],
            rows: (usize::MAX, 0),
            columns: (usize::MAX, 0),
        }
    }

    /// Adds an edge of a closed shape, in pixels.
    pub(super) fn edge(&mut self, from: Point, to: Point) {
        let (sign, upper, lower) = if from.1 < to.1 { (1.0, from, to) } else { (-1.0, to, from) };
        let (first, last) = (upper.1.max(0.0), lower.1.min(self.height));
        let within = first < last;
        if !within {
            return;
        }
        let slope = (lower.0 - upper.0) / (lower.1 - upper.1);
        let mut x = upper.0 + (first - upper.1) * slope;
        let (top, end) = (first as usize, last.ceil() as usize);
        self.rows = (self.rows.0.min(top), self.rows.1.max(end));
        for row in top..end {
            let tall = last.min(row as f32 + 1.0) - first.max(row as f32);
            let next = x + slope * tall;
            self.stretch(row, x.clamp(0.0, self.width), next.clamp(0.0, self.width), tall * sign);
            x = next;
        }
    }

    /// The stretch of an edge within one row, `tall` of it.
    fn stretch(&mut self, row: usize, from: f32, to: f32, tall: f32) {
        let (left, right) = if from < to { (from, to) } else { (to, from) };
        let (start, end) = (left as usize, right.ceil() as usize);
        let wide = self.blocks * BLOCK;
        let area = &mut self.area[row * wide..][..wide];
        let (first, last) = (start / BLOCK, end.max(start + 1) / BLOCK);
        self.crossed[row * self.blocks..][first..=last].fill(true);
        self.columns = (self.columns.0.min(first), self.columns.1.max(last + 1));
        let inside = left - start as f32;
        if end <= start + 1 {
            let beyond = tall * (0.5 * (left + right) - start as f32);
            area[start] += tall - beyond;
            area[start + 1] += beyond;
            return;
        }
        let share = 1.0 / (right - left);
        let head = 0.5 * share * (1.0 - inside) * (1.0 - inside);
        let past = right - end as f32 + 1.0;
        let tail = 0.5 * share * past * past;
        area[start] += tall * head;
        if end == start + 2 {
            area[start + 1] += tall * (1.0 - head - tail);
        } else {
            let second = share * (1.5 - inside);
            area[start + 1] += tall * (second - head);
            for one in &mut area[start + 2..end - 1] {
                *one += tall * share;
            }
            let so_far = second + (end - start - 3) as f32 * share;
            area[end - 1] += tall * (1.0 - so_far - tail);
        }
        area[end] += tall * tail;
    }

    /// Hands out the cover (0–1) of the shape whose edges were added, block by block (`y`, `x` of its first pixel), and
    /// forgets it.
    pub(super) fn take(&mut self, mut paint: impl FnMut(usize, usize, &mut [f32; BLOCK])) {
        let (wide, columns) = (self.blocks * BLOCK, self.columns);
        for y in self.rows.0..self.rows.1 {
            let area = &mut self.area[y * wide..][columns.0 * BLOCK..columns.1 * BLOCK];
            let crossed = &mut self.crossed[y * self.blocks..][columns.0..columns.1];
            let mut sum = 0.0_f32;
            for (index, (area, crossed)) in area.chunks_exact_mut(BLOCK).zip(crossed).enumerate() {
                let mut covers = [sum.abs().min(1.0); BLOCK];
                if *crossed {
                    for (cover, area) in covers.iter_mut().zip(area) {
                        sum += *area;
                        *area = 0.0;
                        *cover = sum.abs().min(1.0);
                    }
                    *crossed = false;
                } else if sum.abs() < NOTHING {
                    continue;
                }
                paint(y, (columns.0 + index) * BLOCK, &mut covers);
            }
        }
        (self.rows, self.columns) = ((usize::MAX, 0), (usize::MAX, 0));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The covers of a polygon on 40 × 20 pixels.
    fn covers(polygons: &[&[Point]]) -> Vec<f32> {
        let mut cover = Cover::new(40, 20);
        for points in polygons {
            for (index, from) in points.iter().enumerate() {
                cover.edge(*from, points[(index + 1) % points.len()]);
            }
        }
        let mut all = vec![0.0; 40 * 20];
        cover.take(|y, x, covers| {
            for (index, cover) in covers.iter().enumerate().filter(|(index, _)| x + index < 40) {
                all[y * 40 + x + index] = *cover;
            }
        });
        assert!(cover.area.iter().all(|area| area.abs() == 0.0) && !cover.crossed.contains(&true), "all forgotten");
        all
    }

    /// Twice the area of a polygon.
    ///
    /// # Source
    /// The shoelace formula.
    fn area(points: &[Point]) -> f32 {
        let twice: f32 = points.iter().zip(points.iter().cycle().skip(1)).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum();
        twice.abs() / 2.0
    }

    #[test]
    fn the_cover_of_a_shape_sums_to_its_area() {
        let shapes: [&[Point]; 4] = [
            &[(3.25, 2.5), (17.75, 2.5), (17.75, 9.125), (3.25, 9.125)],
            &[(1.0, 1.0), (38.5, 4.2), (12.3, 18.9)],
            &[(20.1, 0.4), (21.3, 10.0), (20.1, 19.7), (18.9, 10.0)],
            &[(0.2, 10.0), (39.9, 10.2), (39.9, 10.3), (0.2, 10.1)],
        ];
        for shape in shapes {
            let sum: f32 = covers(&[shape]).iter().sum();
            assert!((sum - area(shape)).abs() < 0.01, "{sum} for {}", area(shape));
            let backwards: Vec<Point> = shape.iter().rev().copied().collect();
            let sum: f32 = covers(&[&backwards]).iter().sum();
            assert!((sum - area(shape)).abs() < 0.01, "the other way round: {sum}");
        }
    }

    #[test]
    fn a_pixel_half_covered_says_half() {
        let all = covers(&[&[(2.5, 3.0), (5.0, 3.0), (5.0, 5.5), (2.5, 5.5)]]);
        for (x, y, wanted) in [(2, 3, 0.5), (3, 3, 1.0), (4, 4, 1.0), (5, 4, 0.0), (3, 5, 0.5), (2, 5, 0.25)] {
            assert!((all[y * 40 + x] - wanted).abs() < 1e-4, "{x}, {y}: {}", all[y * 40 + x]);
        }
    }

    #[test]
    fn shapes_that_overlap_cover_once_and_what_lies_outside_is_cut_off() {
        let square: &[Point] = &[(4.0, 4.0), (10.0, 4.0), (10.0, 10.0), (4.0, 10.0)];
        let sum: f32 = covers(&[square, square]).iter().sum();
        assert!((sum - 36.0).abs() < 0.01, "{sum}");
        let large: &[Point] = &[(-50.0, -30.0), (90.0, -30.0), (90.0, 70.0), (-50.0, 70.0)];
        assert!(covers(&[large]).iter().all(|cover| (cover - 1.0).abs() < 1e-4));
        let away: &[Point] = &[(-9.0, 3.0), (-4.0, 3.0), (-4.0, 9.0), (-9.0, 9.0)];
        assert!(covers(&[away]).iter().all(|cover| *cover < NOTHING));
    }
}
