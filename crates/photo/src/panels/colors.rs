//! A picture's colours as points between which closeness is a plain product: a window of the picture is the mean of its
//! points, and two windows are compared in a few dozen multiplications however many pixels they have.

use crate::Raster;

/// Colours so many levels apart are hardly alike. `Chosen:` three times the noise of a phone photo.
const NEAR: f32 = 12.0;
/// Most colours told apart, and how near they lie. `Chosen:` less than `NEAR`.
const COLORS: usize = 800;
const REACH: f32 = 10.0;
/// Levels of a channel that are one to begin with.
const STEP: u8 = 4;
/// Numbers a point has. `Chosen:`.
pub(super) const POINT: usize = 128;

/// The colours of a picture.
pub(super) struct Colors {
    pub(super) size: [usize; 2],
    /// Which colour each pixel has.
    labels: Vec<u16>,
    /// Of each colour.
    points: Vec<[f32; POINT]>,
}

impl Colors {
    pub(super) fn of(picture: &Raster) -> Self {
        let (w, h) = (picture.width(), picture.height());
        // Means of two by two pixels: half the noise.
        let at = |x: usize, y: usize| {
            let four = [(0, 0), (1, 0), (0, 1), (1, 1)].map(|(dx, dy)| picture.pixel(x + dx, y + dy));
            [0, 1, 2].map(|channel| four.iter().map(|pixel| u16::from(pixel[channel])).sum::<u16>() / 4)
        };
        let side = 256 / usize::from(STEP);
        let mut known = vec![u16::MAX; side * side * side];
        let mut colors: Vec<[f32; 3]> = Vec::new();
        let mut counts: Vec<f32> = Vec::new();
        let mut labels = Vec::with_capacity(w * h);
        for y in 0..h {
            for x in 0..w {
                let cell = at(x, y).map(|level| level / u16::from(STEP));
                let place = cell.iter().fold(0, |place, level| place * side + usize::from(*level));
                if known[place] == u16::MAX {
                    let color = cell.map(|level| (f32::from(level) + 0.5) * f32::from(STEP));
                    let nearest = colors.iter().map(|near| far(near, &color)).enumerate();
                    let nearest = nearest.min_by(|one, other| one.1.total_cmp(&other.1));
                    let label = match nearest {
                        Some((at, far)) if far < REACH * REACH || colors.len() >= COLORS => at,
                        _ => {
                            colors.push(color);
                            counts.push(0.0);
                            colors.len() - 1
                        }
                    };
                    known[place] = u16::try_from(label).unwrap_or(0);
                }
                labels.push(known[place]);
                counts[usize::from(known[place])] += 1.0;
            }
        }
        Self { size: [w, h], labels, points: points(&colors, &counts) }
    }

    pub(super) fn point(&self, x: usize, y: usize) -> &[f32; POINT] {
        &self.points[usize::from(self.labels[y * self.size[0] + x])]
    }
}

fn far(one: &[f32; 3], other: &[f32; 3]) -> f32 {
    (0..3).map(|at| (one[at] - other[at]).powi(2)).sum()
}

/// Points whose products are nearly `exp(−distance² / 2 NEAR²)`: as many columns of that table's Cholesky factor as a point
/// has numbers, the colour first that most pixels still want (Fine and Scheinberg 2001, *Journal of Machine Learning
/// Research* 2, 243–264).
fn points(colors: &[[f32; 3]], counts: &[f32]) -> Vec<[f32; POINT]> {
    let mut points = vec![[0.0_f32; POINT]; colors.len()];
    let mut wanting = vec![1.0_f32; colors.len()];
    for column in 0..POINT.min(colors.len()) {
        let most = (0..colors.len())
            .max_by(|one, other| (wanting[*one] * counts[*one]).total_cmp(&(wanting[*other] * counts[*other])));
        let Some(pivot) = most.filter(|at| wanting[*at] > 1e-3) else { break };
        let head = points[pivot];
        let root = wanting[pivot].sqrt();
        for at in 0..colors.len() {
            let alike = libm::expf(-far(&colors[at], &colors[pivot]) / (2.0 * NEAR * NEAR));
            let known: f32 = points[at][..column].iter().zip(&head).map(|(one, other)| one * other).sum();
            let value = (alike - known) / root;
            points[at][column] = value;
            wanting[at] -= value * value;
        }
        wanting[pivot] = 0.0;
    }
    points
}
