//! What is asked: sheets, pieces and the question, and the check that a search may rely on.

use super::points;
use super::rules::{Edges, MOST_STAGES, Rules};

/// A kind of sheet that pieces may be cut from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetKind {
    /// Width in steps, at least 1.
    pub width: u32,
    /// Height in steps, at least 1.
    pub height: u32,
    /// How many there are; `None`: as many as are wanted.
    pub copies: Option<u32>,
    /// What one costs, in the caller's unit of money or 1 to count sheets.
    pub cost: u64,
    /// Steps along its edges that are cut off as waste.
    pub edges: Edges,
}

impl SheetKind {
    /// A sheet that can be used from edge to edge.
    pub const fn whole(width: u32, height: u32, copies: Option<u32>, cost: u64) -> SheetKind {
        SheetKind { width, height, copies, cost, edges: Edges::NONE }
    }

    /// Width and height inside the unusable edges; `None` if nothing is left.
    pub(super) fn usable(&self) -> Option<(u32, u32)> {
        self.edges.inside(self.width, self.height)
    }
}

/// A kind of piece to cut.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PieceKind {
    /// Width in steps, at least 1.
    pub width: u32,
    /// Height in steps, at least 1.
    pub height: u32,
    /// [`Question::LeastCost`]: exactly so many are cut (`None` is refused).
    /// [`Question::MostValue`]: at most so many; `None`: any number.
    pub demand: Option<u32>,
    /// [`Question::MostValue`]: at least so many must be among the pieces. Not used for least cost.
    pub min: u32,
    /// [`Question::MostValue`]: what one is worth. Not used for least cost.
    pub value: u64,
    /// True if it may lie a quarter turn from the way it is written.
    pub turn: bool,
}

/// What the answer must be best at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Question {
    /// Cut all pieces from sheets that cost the least in all.
    LeastCost,
    /// Cut one sheet (of the only sheet kind) into pieces worth the most in all.
    MostValue,
}

/// Fixed rectangles to cut from sheets with straight edge-to-edge cuts that take no width.
///
/// Every value can be written down; [`Instance::check`] says which ones a search takes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Instance {
    /// The kinds of sheet.
    pub sheets: Vec<SheetKind>,
    /// The kinds of piece; a kind with demand 0 is allowed and never cut.
    pub pieces: Vec<PieceKind>,
    /// The question.
    pub question: Question,
    /// Which cuts may be made.
    pub rules: Rules,
}

/// Why an instance cannot be searched.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum InstanceError {
    /// There is no sheet kind.
    #[error("no sheet kind: name at least one")]
    NoSheet,
    /// There is no piece kind.
    #[error("no piece kind: name at least one")]
    NoPiece,
    /// A sheet side is 0.
    #[error("sheet kind `{sheet}` has a side of 0")]
    FlatSheet {
        /// Index of the sheet kind.
        sheet: usize,
    },
    /// A piece side is 0.
    #[error("piece kind `{piece}` has a side of 0")]
    FlatPiece {
        /// Index of the piece kind.
        piece: usize,
    },
    /// A least-cost question leaves the number of pieces open.
    #[error("piece kind `{piece}` has no demand: least cost needs one")]
    NoDemand {
        /// Index of the piece kind.
        piece: usize,
    },
    /// More pieces must appear than may appear.
    #[error("piece kind `{piece}` has a minimum above its demand")]
    MinAboveDemand {
        /// Index of the piece kind.
        piece: usize,
    },
    /// A most-value question is about one sheet kind.
    #[error("most value is asked of one sheet kind, here are `{sheets}`")]
    NotOneSheet {
        /// How many kinds were given.
        sheets: usize,
    },
    /// A limit of turns that no search takes.
    #[error("at most `{stages}` runs of cuts: between 2 and `{most}` can be asked for")]
    Stages {
        /// What was asked.
        stages: u8,
        /// The most that can be asked.
        most: u8,
    },
    /// Unusable edges leave nothing of a sheet.
    #[error("nothing of sheet kind `{sheet}` is left inside its edges")]
    OnlyEdges {
        /// Index of the sheet kind.
        sheet: usize,
    },
    /// An unusable edge is narrower than the narrowest strip that may be cut off.
    #[error("an edge of `{edge}` steps cannot be cut off sheet kind `{sheet}`: the narrowest strip is `{least}`")]
    NarrowEdge {
        /// Index of the sheet kind.
        sheet: usize,
        /// The edge.
        edge: u32,
        /// The narrowest strip.
        least: u32,
    },
    /// So many pieces could lie on one sheet that a plan of it could not be held.
    #[error("more than `{limit}` pieces could be cut from one sheet of kind `{sheet}`: ask for fewer or larger ones")]
    TooMany {
        /// Index of the sheet kind.
        sheet: usize,
        /// The most pieces of one sheet.
        limit: u32,
    },
    /// Costs, values or numbers of pieces are so large that their sum could overflow.
    #[error("costs, values or demands are too large to add up")]
    TooLarge,
    /// Pieces reach too many different positions on a sheet for a table of them.
    #[error("more than `{limit}` positions along a side of sheet kind `{sheet}`: use a coarser step")]
    TooFine {
        /// Index of the sheet kind.
        sheet: usize,
        /// The most positions a side may have.
        limit: usize,
    },
}

/// Chosen: sums of costs, values and pieces stay below this, so that i64 never overflows with room to scale.
const LARGEST_SUM: u128 = 1 << 52;

/// Chosen: the most pieces of one sheet, so that a tree of them takes some ten MB; confetti of 1/16 in from 12 x 12 in
/// is 36 864.
const MOST_PIECES: u32 = 1 << 17;

impl Instance {
    /// Check that a search takes this instance.
    ///
    /// # Errors
    /// [`InstanceError`], the first one found, sheets before pieces.
    pub fn check(&self) -> Result<(), InstanceError> {
        if self.sheets.is_empty() {
            return Err(InstanceError::NoSheet);
        }
        if self.pieces.is_empty() {
            return Err(InstanceError::NoPiece);
        }
        if self.question == Question::MostValue && self.sheets.len() != 1 {
            return Err(InstanceError::NotOneSheet { sheets: self.sheets.len() });
        }
        if let Some(sheet) = self.sheets.iter().position(|s| s.width == 0 || s.height == 0) {
            return Err(InstanceError::FlatSheet { sheet });
        }
        self.check_rules()?;
        for (piece, kind) in self.pieces.iter().enumerate() {
            if kind.width == 0 || kind.height == 0 {
                return Err(InstanceError::FlatPiece { piece });
            }
            match self.question {
                Question::LeastCost if kind.demand.is_none() => return Err(InstanceError::NoDemand { piece }),
                Question::MostValue if kind.demand.is_some_and(|d| d < kind.min) => {
                    return Err(InstanceError::MinAboveDemand { piece });
                }
                _ => {}
            }
        }
        self.check_sums()?;
        self.check_numbers()?;
        for (sheet, kind) in self.sheets.iter().enumerate() {
            let (width, height) = kind.usable().unwrap_or((kind.width, kind.height));
            let Some(points) = points::Points::of((width, height), &super::items(self), self.rules) else {
                return Err(InstanceError::TooFine { sheet, limit: points::LIMIT });
            };
            let layers = self.rules.stages.map_or(1, |stages| 2 * usize::from(stages.most) + 3);
            if points.x.len() * points.y.len() > points::LARGEST / layers {
                return Err(InstanceError::TooFine { sheet, limit: (points::LARGEST / layers).isqrt() });
            }
        }
        Ok(())
    }

    fn check_rules(&self) -> Result<(), InstanceError> {
        let rules = self.rules;
        if let Some(stages) = rules.stages.map(|s| s.most).filter(|most| !(2..=MOST_STAGES).contains(most)) {
            return Err(InstanceError::Stages { stages, most: MOST_STAGES });
        }
        for (sheet, kind) in self.sheets.iter().enumerate() {
            let Edges { left, right, top, bottom } = kind.edges;
            if let Some(edge) =
                [left, right, top, bottom].into_iter().find(|&edge| edge > 0 && edge < rules.least_strip)
            {
                return Err(InstanceError::NarrowEdge { sheet, edge, least: rules.least_strip });
            }
            if kind.usable().is_none() {
                return Err(InstanceError::OnlyEdges { sheet });
            }
        }
        Ok(())
    }

    /// No sheet may hold more pieces than a tree can.
    fn check_numbers(&self) -> Result<(), InstanceError> {
        for (sheet, kind) in self.sheets.iter().enumerate() {
            let (width, height) = kind.usable().unwrap_or((kind.width, kind.height));
            let here = || super::items(self).into_iter().filter(|item| item.fits(width, height));
            let area = u128::from(width) * u128::from(height);
            let each: u128 = here().map(|item| (area / item.area()).min(u128::from(item.cap))).sum();
            let smallest = here().map(|item| area / item.area()).max().unwrap_or(0);
            if each.min(smallest) > u128::from(MOST_PIECES) {
                return Err(InstanceError::TooMany { sheet, limit: MOST_PIECES });
            }
        }
        Ok(())
    }

    /// No sum of costs or values that a search forms may overflow.
    fn check_sums(&self) -> Result<(), InstanceError> {
        let total = match self.question {
            Question::LeastCost => {
                let pieces: u128 = self.pieces.iter().map(|p| u128::from(p.demand.unwrap_or(0))).sum();
                let dearest = self.sheets.iter().map(|s| u128::from(s.cost)).max().unwrap_or(0);
                pieces.saturating_mul(dearest.max(1))
            }
            Question::MostValue => {
                let sheet = &self.sheets[0];
                let area = u128::from(sheet.width) * u128::from(sheet.height);
                self.pieces.iter().fold(0, |sum: u128, p| {
                    let most = area / (u128::from(p.width) * u128::from(p.height));
                    let most = p.demand.map_or(most, |d| most.min(u128::from(d)));
                    sum.saturating_add(most.saturating_mul(u128::from(p.value)))
                })
            }
        };
        if total > LARGEST_SUM { Err(InstanceError::TooLarge) } else { Ok(()) }
    }
}
