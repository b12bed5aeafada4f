//! The map between a photo's plane and the sheet's.

/// A place in a picture: x right, y down, in pixels; the first pixel reaches from 0 to 1, its middle is 0.5.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// To the right.
    pub x: f64,
    /// Down.
    pub y: f64,
}

impl Point {
    /// A place.
    #[must_use]
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    /// Distance to another place.
    #[must_use]
    pub fn far(self, other: Point) -> f64 {
        libm::hypot(self.x - other.x, self.y - other.y)
    }
}

/// Four corners that make a sheet: top left, top right, bottom right, bottom left as the sheet is to be seen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Quad([Point; 4]);

/// Why four places are no sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum QuadError {
    /// A place is no number.
    #[error("a corner is no number")]
    NotFinite,
    /// Two sides cross.
    #[error("the corners are crossed")]
    Crossed,
    /// Some corner bends inward, or three corners lie on a line.
    #[error("one corner lies inside the others")]
    Hollow,
    /// The corners run the other way round: the sheet would be seen as in a mirror.
    #[error("the corners run the wrong way round")]
    Mirrored,
    /// Two corners are hardly apart.
    #[error("two corners are hardly apart")]
    TooSmall,
}

/// Corners nearer than this, in pixels, make no side. `Chosen:`.
const NEAREST: f64 = 4.0;

impl Quad {
    /// Corners in the order top left, top right, bottom right, bottom left.
    ///
    /// # Errors
    /// [`QuadError`], one variant a cause.
    pub fn new(corners: [Point; 4]) -> Result<Self, QuadError> {
        if corners.iter().any(|at| !at.x.is_finite() || !at.y.is_finite()) {
            return Err(QuadError::NotFinite);
        }
        let near = |one: usize, other: usize| corners[one].far(corners[other]) < NEAREST;
        if (0..4).any(|one| (0..one).any(|other| near(one, other))) {
            return Err(QuadError::TooSmall);
        }
        let turns: Vec<f64> = (0..4)
            .map(|at| {
                let [one, two, three] = [corners[at], corners[(at + 1) % 4], corners[(at + 2) % 4]];
                let cross = (two.x - one.x) * (three.y - two.y) - (two.y - one.y) * (three.x - two.x);
                cross / (one.far(two) * two.far(three))
            })
            .collect();
        // The sine of the bend at each corner, positive where the way round runs clockwise (y runs down).
        let (right, left) = (turns.iter().filter(|t| **t > 0.02).count(), turns.iter().filter(|t| **t < -0.02).count());
        match (right, left) {
            (4, 0) => Ok(Self(corners)),
            (0, 4) => Err(QuadError::Mirrored),
            (2, 2) => Err(QuadError::Crossed),
            _ => Err(QuadError::Hollow),
        }
    }

    /// The corners, in order.
    #[must_use]
    pub fn corners(&self) -> [Point; 4] {
        self.0
    }

    /// The same places in a picture whose pixels are `times` as small.
    #[must_use]
    pub fn scaled(&self, times: f64) -> Self {
        Self(self.0.map(|at| Point::new(at.x * times, at.y * times)))
    }

    /// The sheet turned clockwise by so many quarter turns: the corner that was bottom left becomes the top left one.
    #[must_use]
    pub fn turned(&self, quarters: usize) -> Self {
        let mut corners = self.0;
        corners.rotate_right(quarters % 4);
        Self(corners)
    }

    /// Mean length of the four sides.
    #[must_use]
    pub fn side(&self) -> f64 {
        (0..4).map(|at| self.0[at].far(self.0[(at + 1) % 4])).sum::<f64>() / 4.0
    }
}

/// A map of straight lines onto straight lines.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Homography([f64; 9]);

impl Homography {
    /// The map that carries four places to four places; `None` if three of either four lie on a line.
    ///
    /// # Source
    /// Hartley, Zisserman 2004, *Multiple View Geometry*, 2nd ed., ch. 4: eight linear equations in eight unknowns, solved
    /// by elimination with pivots. Checked against `OpenCV` in `tests/opencv.rs`.
    #[must_use]
    pub fn between(from: [Point; 4], to: [Point; 4]) -> Option<Self> {
        let mut rows = [[0.0; 9]; 8];
        for (at, (from, to)) in from.iter().zip(&to).enumerate() {
            let (x, y) = (from.x, from.y);
            rows[2 * at] = [x, y, 1.0, 0.0, 0.0, 0.0, -to.x * x, -to.x * y, to.x];
            rows[2 * at + 1] = [0.0, 0.0, 0.0, x, y, 1.0, -to.y * x, -to.y * y, to.y];
        }
        let found = solved(rows)?;
        let mut all = [1.0; 9];
        all[..8].copy_from_slice(&found);
        all.iter().all(|value| value.is_finite()).then_some(Self(all))
    }

    /// The map from a straight picture of that size to the photo.
    #[must_use]
    pub fn onto(photo: &Quad, width: f64, height: f64) -> Option<Self> {
        let flat = [Point::new(0.0, 0.0), Point::new(width, 0.0), Point::new(width, height), Point::new(0.0, height)];
        Self::between(flat, photo.corners())
    }

    /// Where a place goes; far away (infinite) for places on the horizon.
    #[must_use]
    pub fn apply(&self, at: Point) -> Point {
        let [a, b, c, d, e, f, g, h, i] = self.0;
        let w = g * at.x + h * at.y + i;
        Point::new((a * at.x + b * at.y + c) / w, (d * at.x + e * at.y + f) / w)
    }

    /// The way back; `None` where there is none.
    #[must_use]
    pub fn inverse(&self) -> Option<Self> {
        let [a, b, c, d, e, f, g, h, i] = self.0;
        let back = [
            e * i - f * h,
            c * h - b * i,
            b * f - c * e,
            f * g - d * i,
            a * i - c * g,
            c * d - a * f,
            d * h - e * g,
            b * g - a * h,
            a * e - b * d,
        ];
        let last = back[8];
        let scaled = back.map(|value| value / last);
        scaled.iter().all(|value| value.is_finite()).then_some(Self(scaled))
    }

    /// The nine numbers, row by row, the last 1.
    #[must_use]
    pub fn rows(&self) -> [f64; 9] {
        self.0
    }
}

/// Gauss elimination with the largest pivot; `None` if there is none to speak of.
fn solved(mut rows: [[f64; 9]; 8]) -> Option<[f64; 8]> {
    let largest = rows.iter().flatten().fold(0.0_f64, |most, value| most.max(value.abs()));
    for at in 0..8 {
        let pivot = (at..8).reduce(|best, row| if rows[row][at].abs() > rows[best][at].abs() { row } else { best })?;
        rows.swap(at, pivot);
        let head = rows[at];
        if head[at].abs() < largest * 1e-14 {
            return None;
        }
        for (below, row) in rows.iter_mut().enumerate() {
            if below != at {
                let times = row[at] / head[at];
                for (value, take) in row.iter_mut().zip(head).skip(at) {
                    *value -= times * take;
                }
            }
        }
    }
    let mut found = [0.0; 8];
    for (at, value) in found.iter_mut().enumerate() {
        *value = rows[at][8] / rows[at][at];
    }
    Some(found)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn quad(places: [(f64, f64); 4]) -> Result<Quad, QuadError> {
        Quad::new(places.map(|(x, y)| Point::new(x, y)))
    }

    #[test]
    fn crossed_and_hollow_corners_are_refused() {
        assert!(quad([(0.0, 0.0), (100.0, 5.0), (90.0, 80.0), (3.0, 70.0)]).is_ok());
        assert_eq!(quad([(0.0, 0.0), (100.0, 5.0), (3.0, 70.0), (90.0, 80.0)]), Err(QuadError::Crossed));
        assert_eq!(quad([(0.0, 0.0), (100.0, 5.0), (20.0, 20.0), (3.0, 70.0)]), Err(QuadError::Hollow));
        assert_eq!(quad([(0.0, 0.0), (50.0, 0.0), (100.0, 0.0), (3.0, 70.0)]), Err(QuadError::Hollow));
        assert_eq!(quad([(0.0, 0.0), (3.0, 70.0), (90.0, 80.0), (100.0, 5.0)]), Err(QuadError::Mirrored));
        assert_eq!(quad([(0.0, 0.0), (1.0, 1.0), (90.0, 80.0), (3.0, 70.0)]), Err(QuadError::TooSmall));
        assert_eq!(quad([(f64::NAN, 0.0), (9.0, 1.0), (90.0, 80.0), (3.0, 70.0)]), Err(QuadError::NotFinite));
    }

    #[test]
    fn turning_four_times_is_nothing() {
        let one = quad([(0.0, 0.0), (100.0, 5.0), (90.0, 80.0), (3.0, 70.0)]).unwrap();
        assert_eq!(one.turned(4), one);
        assert_eq!(one.turned(1).corners()[0], one.corners()[3]);
        assert_eq!(one.turned(3).turned(1), one);
    }
}
