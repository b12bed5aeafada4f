//! Lengths on a grid of equal steps.

use measure::{Length, Rect, Size, from_steps};

/// Most steps along one side of a sheet that the engines take.
pub(super) const MOST_STEPS: i64 = 65_535;

/// A grid of equal steps; the step is never zero or negative.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Grid {
    step: Length,
}

impl Grid {
    /// The grid of that step; a step of no length becomes one tick.
    pub(super) fn new(step: Length) -> Grid {
        Grid { step: step.max(Length::from_ticks(1)) }
    }

    /// The coarsest grid on which all these lengths lie; `None` if there is no positive length.
    pub(super) fn through(lengths: impl IntoIterator<Item = Length>) -> Option<Grid> {
        let step = lengths.into_iter().map(|length| length.ticks().max(0)).fold(0, common_divisor);
        (step > 0).then(|| Grid::new(Length::from_ticks(step)))
    }

    /// One step.
    pub(super) fn step(self) -> Length {
        self.step
    }

    /// Whole steps in `length`, rounded down; 0 for a negative length, [`u32::MAX`] at most.
    pub(super) fn floor(self, length: Length) -> u32 {
        u32::try_from(length.ticks().max(0) / self.step.ticks()).unwrap_or(u32::MAX)
    }

    /// Steps that cover `length`, rounded up; 0 for a negative length, [`u32::MAX`] at most.
    pub(super) fn ceil(self, length: Length) -> u32 {
        let (ticks, step) = (length.ticks().max(0), self.step.ticks());
        u32::try_from(ticks / step + i64::from(ticks % step != 0)).unwrap_or(u32::MAX)
    }

    /// The steps of a length that lies on the grid.
    pub(super) fn exact(self, length: Length) -> Option<u32> {
        (length.ticks() >= 0 && length.ticks() % self.step.ticks() == 0).then(|| self.floor(length))
    }

    /// So many steps as a length.
    pub(super) fn length(self, steps: u32) -> Length {
        self.step * i64::from(steps)
    }
}

/// A rectangle of a cut plan as lengths: on the sheet, if that is the whole of it.
pub fn on_sheet(rect: cutting::steps::Rect, step: Length) -> Rect {
    let size = Size::new(from_steps(rect.width, step), from_steps(rect.height, step));
    Rect::new(from_steps(rect.x, step), from_steps(rect.y, step), size)
}

/// Greatest common divisor; the other number where one is 0.
fn common_divisor(a: i64, b: i64) -> i64 {
    if b == 0 { a } else { common_divisor(b, a % b) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ranges_round_inward() {
        let eighth = Grid::new(Length::from_ticks(Length::INCH.ticks() / 8));
        let length = Length::from_ticks(Length::INCH.ticks() * 49 / 16);
        assert_eq!((eighth.floor(length), eighth.ceil(length), eighth.exact(length)), (24, 25, None));
        assert_eq!(eighth.exact(Length::INCH * 3), Some(24));
        assert_eq!(eighth.floor(-Length::INCH), 0);
    }

    #[test]
    fn the_grid_through_letter_and_its_pieces() {
        let inch = Length::INCH.ticks();
        let lengths = [17 * inch / 2, 11 * inch, 7 * inch, 5 * inch, 13 * inch / 4].map(Length::from_ticks);
        assert_eq!(Grid::through(lengths).map(Grid::step), Some(Length::from_ticks(inch / 4)));
        assert_eq!(Grid::through([]), None);
    }
}
