//! What a maker wishes of a background, and what is wrong with a wish.

use measure::{Length, Size};

use crate::outline::Outline;

/// So many impressions a sheet may be asked for. Chosen: an hour's stamping is a few hundred.
pub const MOST_MOTIFS: u32 = 10_000;

/// How a motif may be turned.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Turning {
    /// Any whole degree.
    Free,
    /// Up to so many whole degrees either way.
    Within(u16),
    /// As it stands.
    Upright,
}

impl Turning {
    /// How far apart the turns of two equal neighbours must be, in degrees; `None` where they can not differ.
    /// Chosen: a twelfth of a circle is seen at a glance; within narrow limits a third of the range.
    #[must_use]
    pub fn apart(self) -> Option<u16> {
        match self {
            Turning::Free => Some(30),
            Turning::Within(most) if most >= 2 => Some((2 * most / 3).min(30)),
            Turning::Within(_) | Turning::Upright => None,
        }
    }
}

/// What happens at the edges of the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EdgeRule {
    /// Some motifs run off, and show and lose at least a quarter each.
    RunOff,
    /// All ink stays on the sheet.
    Inside,
    /// What leaves on one side comes in on the other: the sheet repeats without a seam.
    Wrap,
}

/// How motifs are set out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Arrangement {
    /// Evenly at random: no clumps, no holes, no rows.
    Toss,
    /// Rows and columns.
    Grid,
    /// Every other row is moved by half a pitch.
    Brick,
    /// Every other column is moved by half a pitch.
    HalfDrop,
    /// Rows and columns turned by 45°.
    Diagonal,
}

/// One stamp.
#[derive(Debug, Clone, PartialEq)]
pub struct Motif {
    /// The edge of its ink.
    pub outline: Outline,
    /// How many of this motif for every one of the others; 0 leaves it out.
    pub share: u32,
    /// How it may be turned.
    pub turning: Turning,
}

/// One impression.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Placement {
    /// Which motif, counted from 0.
    pub motif: usize,
    /// Its centre of ink from the left edge.
    pub x: Length,
    /// Its centre of ink from the top edge.
    pub y: Length,
    /// Clockwise turn in whole degrees, 0–359.
    pub turn: u16,
}

/// What a sheet should be.
#[derive(Debug, Clone, PartialEq)]
pub struct Wish {
    /// The sheet.
    pub sheet: Size,
    /// The stamps.
    pub motifs: Vec<Motif>,
    /// Least distance between the ink of two impressions.
    pub gap: Length,
    /// How many impressions; `None` for as many as go on.
    pub count: Option<u32>,
    /// How they are set out.
    pub arrangement: Arrangement,
    /// What happens at the edges.
    pub edge: EdgeRule,
    /// Impressions that stay where they are.
    pub locked: Vec<Placement>,
    /// The same seed gives the same sheet.
    pub seed: u64,
}

/// Why a wish has no sheet at all. A wish that is only too great has one, see [`Shortfall`](crate::Shortfall).
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ScatterError {
    /// No motif, or only motifs with a share of 0.
    #[error("no motif to stamp")]
    NoMotif,
    /// The sheet has no area, or the gap is below zero.
    #[error("the sheet or the gap is not above zero")]
    NoSheet,
    /// A motif does not fit the sheet.
    #[error("motif {motif} is {widest:?} wide, the sheet's shorter side is {side:?}")]
    LargerThanSheet {
        /// Which motif, counted from 0.
        motif: usize,
        /// The shorter side of the motif's ink.
        widest: Length,
        /// The shorter side of the sheet.
        side: Length,
    },
    /// More impressions than [`MOST_MOTIFS`].
    #[error("{count} impressions are more than {MOST_MOTIFS}")]
    TooMany {
        /// How many were asked for.
        count: u32,
    },
    /// A locked impression names a motif that is not there.
    #[error("locked impression {lock} names motif {motif}, which is not there")]
    UnknownMotif {
        /// Which locked impression, counted from 0.
        lock: usize,
        /// The motif it names.
        motif: usize,
    },
}

impl Wish {
    /// Refuses what has no answer.
    pub(crate) fn check(&self) -> Result<(), ScatterError> {
        if self.sheet.width <= Length::ZERO || self.sheet.height <= Length::ZERO || self.gap < Length::ZERO {
            return Err(ScatterError::NoSheet);
        }
        if self.motifs.iter().all(|motif| motif.share == 0) {
            return Err(ScatterError::NoMotif);
        }
        if let Some(count) = self.count.filter(|count| *count > MOST_MOTIFS) {
            return Err(ScatterError::TooMany { count });
        }
        let side = self.sheet.width.min(self.sheet.height);
        for (motif, of) in self.motifs.iter().enumerate().filter(|(_, of)| of.share > 0) {
            let (width, height) = of.outline.extent();
            let long_side = self.sheet.width.max(self.sheet.height).to_mm();
            if width.min(height) > side.to_mm() || width.max(height) > long_side {
                let widest = crate::room::rounded(width.min(height));
                return Err(ScatterError::LargerThanSheet { motif, widest, side });
            }
        }
        for (lock, placed) in self.locked.iter().enumerate() {
            if placed.motif >= self.motifs.len() {
                return Err(ScatterError::UnknownMotif { lock, motif: placed.motif });
            }
        }
        Ok(())
    }
}
