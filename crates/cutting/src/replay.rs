//! Carries published steps out on a virtual sheet.
//!
//! Knows nothing of the tree the steps came from: it cuts rectangles as told, refuses whatever a
//! person at the table could not do, and says which pieces came out where.

use crate::steps::{Caution, CutPlan, CutStep, Fate, Fold, PartId, Rect, ScoreStep, Step, Up};
use crate::tree::{Axis, Placed};

/// What came out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Replayed {
    /// The finished pieces on one sheet, from top to bottom, then from left to right.
    pub pieces: Vec<Placed>,
    /// What is left over, unusable edges too, in the same order.
    pub waste: Vec<Rect>,
    /// Cuts on one sheet.
    pub cuts: u32,
    /// Strokes of the blade over all sheets.
    pub strokes: u32,
}

/// Why steps cannot be followed, or do not give what they promise. `step` counts from 0.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[allow(missing_docs, reason = "the fields are the step, the part and the numbers the message names")]
pub enum ReplayError {
    /// A sheet without area, or no sheets.
    #[error("there is no sheet")]
    NoSheet,
    /// Parts are not listed by their ids, 0 first.
    #[error("{0:?} is not at its place in the list")]
    PartOutOfPlace(PartId),
    /// A step names a part that the list does not have.
    #[error("step {step}: {part:?} is not in the list")]
    UnknownPart { step: usize, part: PartId },
    /// A step cuts a part that has not come out of any step yet.
    #[error("step {step}: {part:?} is not in hand yet")]
    NotYet { step: usize, part: PartId },
    /// A step cuts a part a second time.
    #[error("step {step}: {part:?} was cut before")]
    UsedTwice { step: usize, part: PartId },
    /// A step cuts a part that should stay as it is.
    #[error("step {step}: {part:?} should not be cut")]
    CutsFinished { step: usize, part: PartId },
    /// Something comes out under a name that is taken.
    #[error("step {step}: {part:?} comes out twice")]
    ComesTwice { step: usize, part: PartId },
    /// A step does nothing.
    #[error("step {step} does nothing")]
    Idle { step: usize },
    /// The stop stands at nought.
    #[error("step {step}: the setting is nought")]
    NoSetting { step: usize },
    /// The setting is as large as what is left of the part, or larger.
    #[error("step {step}: {part:?} has only {side} left for a cut at {setting}")]
    SettingTooLarge { step: usize, part: PartId, side: u32, setting: u32 },
    /// Not as many pieces come off as there are cuts.
    #[error("step {step}: {part:?} is cut {cuts} times and gives {off} pieces")]
    CutCount { step: usize, part: PartId, cuts: u32, off: usize },
    /// Parts of one step differ in length.
    #[error("step {step}: {part:?} is not as long as the others")]
    Unequal { step: usize, part: PartId },
    /// The part does not lie with the named end at the stop after the turn.
    #[error("step {step}: {part:?} does not lie right after the turn")]
    WrongTurn { step: usize, part: PartId },
    /// The stop's count does not follow its setting.
    #[error("step {step}: the stop's count {stop} does not follow its settings")]
    StopCount { step: usize, stop: u32 },
    /// More layers than the trimmer takes, or than there are.
    #[error("step {step}: {layers} layers where {most} are allowed")]
    StackOverLimit { step: usize, layers: u32, most: u32 },
    /// The strokes are not stacks times cuts.
    #[error("step {step}: {said} strokes instead of {strokes}")]
    Strokes { step: usize, said: u32, strokes: u32 },
    /// A piece that is not where the list says.
    #[error("step {step}: {part:?} comes out as {rect:?}")]
    WrongPlace { step: usize, part: PartId, rect: Rect },
    /// A part whose top points elsewhere than the list says.
    #[error("step {step}: the top of {part:?} points {up:?}")]
    WrongUp { step: usize, part: PartId, up: Up },
    /// Pieces labelled in a step are not the ones finished in it.
    #[error("step {step}: the labels are not those of the finished pieces")]
    Labels { step: usize },
    /// A danger is not pointed out, or is where there is none.
    #[error("step {step}: {caution:?} is missing or misplaced")]
    Caution { step: usize, caution: Caution },
    /// A cut after the scoring began.
    #[error("step {step} cuts after scoring")]
    CutAfterScore { step: usize },
    /// A part that should have been cut was not.
    #[error("{part:?} should be cut and is not")]
    MissingCut { part: PartId },
    /// A listed part never comes out.
    #[error("{part:?} never comes out")]
    NeverComes { part: PartId },
    /// A fold line outside a piece, on another kind, or nobody asked for.
    #[error("step {step}: {part:?} cannot get this fold")]
    WrongFold { step: usize, part: PartId },
    /// A fold is missing on a piece or is pressed twice.
    #[error("{part:?} gets {fold:?} {times} times")]
    FoldCount { part: PartId, fold: Fold, times: usize },
    /// Two pieces share a number, or a number is missing.
    #[error("number {number} is not given once")]
    Number { number: u32 },
    /// A promised piece does not come out.
    #[error("{0:?} does not come out")]
    MissingPiece(Placed),
    /// A piece comes out that was not promised.
    #[error("{0:?} was not promised")]
    ExtraPiece(Placed),
}

/// Follows the steps on a virtual sheet.
///
/// # Errors
/// The first [`ReplayError`], in the order of the steps.
pub fn replay(plan: &CutPlan) -> Result<Replayed, ReplayError> {
    let mut table = Table::new(plan)?;
    for (at, step) in plan.steps.iter().enumerate() {
        match step {
            Step::Cut(cut) => table.cut(at, cut)?,
            Step::Score(score) => table.score(at, score)?,
        }
    }
    table.close()
}

/// Follows the steps and compares what comes out with what was promised, in places on the whole sheet.
///
/// # Errors
/// As [`replay`], then [`ReplayError::MissingPiece`] and [`ReplayError::ExtraPiece`].
pub fn check(plan: &CutPlan, promised: &[Placed]) -> Result<Replayed, ReplayError> {
    let found = replay(plan)?;
    let mut promised = promised.to_vec();
    promised.sort_by_key(|piece| (piece.y, piece.x, *piece));
    let mut extra = found.pieces.clone();
    for piece in promised {
        match extra.iter().position(|other| *other == piece) {
            Some(at) => drop(extra.remove(at)),
            None => return Err(ReplayError::MissingPiece(piece)),
        }
    }
    match extra.first() {
        Some(piece) => Err(ReplayError::ExtraPiece(*piece)),
        None => Ok(found),
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum State {
    Unseen,
    InHand { rect: Rect, up: Up },
    Gone,
}

struct Table<'a> {
    plan: &'a CutPlan,
    states: Vec<State>,
    stop: Option<(u32, u32)>,
    scored: Vec<(PartId, Fold)>,
    cuts: u32,
    strokes: u32,
}

impl<'a> Table<'a> {
    fn new(plan: &'a CutPlan) -> Result<Table<'a>, ReplayError> {
        let (width, height) = plan.sheet;
        if width == 0 || height == 0 || plan.sheets == 0 || plan.parts.is_empty() {
            return Err(ReplayError::NoSheet);
        }
        for (place, part) in (0..).zip(&plan.parts) {
            if part.id != PartId(place) {
                return Err(ReplayError::PartOutOfPlace(part.id));
            }
        }
        let states = vec![State::Unseen; plan.parts.len()];
        let mut table = Table { plan, states, stop: None, scored: Vec::new(), cuts: 0, strokes: 0 };
        table.comes(0, PartId::SHEET, Rect { x: 0, y: 0, width, height }, Up::Away)?;
        Ok(table)
    }

    fn index(&self, step: usize, part: PartId) -> Result<usize, ReplayError> {
        usize::try_from(part.0).ok().filter(|at| *at < self.states.len()).ok_or(ReplayError::UnknownPart { step, part })
    }

    fn comes(&mut self, step: usize, part: PartId, rect: Rect, up: Up) -> Result<(), ReplayError> {
        let at = self.index(step, part)?;
        if self.states[at] != State::Unseen {
            return Err(ReplayError::ComesTwice { step, part });
        }
        let listed = &self.plan.parts[at];
        if listed.rect != rect {
            return Err(ReplayError::WrongPlace { step, part, rect });
        }
        if listed.up != up {
            return Err(ReplayError::WrongUp { step, part, up });
        }
        self.states[at] = State::InHand { rect, up };
        Ok(())
    }

    fn cut(&mut self, step: usize, cut: &CutStep) -> Result<(), ReplayError> {
        if !self.scored.is_empty() {
            return Err(ReplayError::CutAfterScore { step });
        }
        if cut.work.is_empty() || cut.cuts == 0 {
            return Err(ReplayError::Idle { step });
        }
        if cut.setting == 0 {
            return Err(ReplayError::NoSetting { step });
        }
        self.set_stop(step, cut)?;
        let mut finished = Vec::new();
        let mut sides: Vec<(u32, u32)> = Vec::new();
        for work in &cut.work {
            let (rect, up) = self.take_up(step, work.part)?;
            let up = up.turned(cut.turn);
            if up != at_stop(cut) {
                return Err(ReplayError::WrongTurn { step, part: work.part });
            }
            if work.off.len() != cut.cuts as usize {
                return Err(ReplayError::CutCount { step, part: work.part, cuts: cut.cuts, off: work.off.len() });
            }
            let along = cut.axis.of(rect.width, rect.height);
            if sides.first().is_some_and(|first| first.0 != along) {
                return Err(ReplayError::Unequal { step, part: work.part });
            }
            sides.push((along, cut.axis.across().of(rect.width, rect.height)));
            let mut left = rect;
            for off in &work.off {
                let Some((piece, rest)) = left.split(cut.axis, cut.end, cut.setting) else {
                    let side = cut.axis.of(left.width, left.height);
                    return Err(ReplayError::SettingTooLarge { step, part: work.part, side, setting: cut.setting });
                };
                self.comes(step, *off, piece, up)?;
                left = rest;
            }
            self.comes(step, work.rest, left, up)?;
            finished.extend(work.off.iter().chain([&work.rest]).filter(|id| self.is_piece(**id)));
        }
        finished.sort_unstable();
        let mut labels = cut.finished.clone();
        labels.sort_unstable();
        if labels != finished {
            return Err(ReplayError::Labels { step });
        }
        self.count(step, cut)?;
        self.dangers(step, cut, &sides)
    }

    fn is_piece(&self, part: PartId) -> bool {
        self.plan.part(part).is_some_and(|part| matches!(part.fate, Fate::Piece { .. }))
    }

    fn set_stop(&mut self, step: usize, cut: &CutStep) -> Result<(), ReplayError> {
        let due = match self.stop {
            None => 0,
            Some((setting, stop)) => stop + u32::from(setting != cut.setting),
        };
        if cut.stop != due {
            return Err(ReplayError::StopCount { step, stop: cut.stop });
        }
        self.stop = Some((cut.setting, due));
        Ok(())
    }

    /// Takes a part out of hand, to be cut.
    fn take_up(&mut self, step: usize, part: PartId) -> Result<(Rect, Up), ReplayError> {
        let at = self.index(step, part)?;
        match self.states[at] {
            State::Unseen => Err(ReplayError::NotYet { step, part }),
            State::Gone => Err(ReplayError::UsedTwice { step, part }),
            State::InHand { .. } if self.plan.parts[at].fate != Fate::Cut => {
                Err(ReplayError::CutsFinished { step, part })
            }
            State::InHand { rect, up } => {
                self.states[at] = State::Gone;
                Ok((rect, up))
            }
        }
    }

    fn count(&mut self, step: usize, cut: &CutStep) -> Result<(), ReplayError> {
        let parts = u32::try_from(cut.work.len()).unwrap_or(u32::MAX);
        let sheets = parts.saturating_mul(self.plan.sheets);
        let most = self.plan.limits.stack.max(1).min(sheets);
        if cut.layers == 0 || cut.layers > most {
            return Err(ReplayError::StackOverLimit { step, layers: cut.layers, most });
        }
        let strokes = sheets.div_ceil(cut.layers).saturating_mul(cut.cuts);
        if cut.strokes != strokes {
            return Err(ReplayError::Strokes { step, said: cut.strokes, strokes });
        }
        self.cuts = self.cuts.saturating_add(parts.saturating_mul(cut.cuts));
        self.strokes = self.strokes.saturating_add(strokes);
        Ok(())
    }

    /// Works the dangers out anew and compares.
    fn dangers(&self, step: usize, cut: &CutStep, sides: &[(u32, u32)]) -> Result<(), ReplayError> {
        let limits = &self.plan.limits;
        let mut due = Vec::new();
        let (mut length, mut rest) = (0, u32::MAX);
        for (along, across) in sides {
            length = length.max(*across);
            rest = rest.min(along - cut.setting * cut.cuts);
        }
        if length > limits.longest_cut {
            due.push(Caution::LongCut { length });
        }
        if cut.setting < limits.smallest_strip {
            due.push(Caution::NarrowStrip { held: rest });
        }
        if rest < limits.smallest_strip {
            due.push(Caution::NarrowRest { rest });
        }
        let missing = due.iter().find(|caution| !cut.cautions.contains(caution));
        let misplaced = cut.cautions.iter().find(|caution| !due.contains(caution));
        match missing.or(misplaced) {
            Some(caution) => Err(ReplayError::Caution { step, caution: *caution }),
            None => Ok(()),
        }
    }

    fn score(&mut self, step: usize, score: &ScoreStep) -> Result<(), ReplayError> {
        if score.parts.is_empty() {
            return Err(ReplayError::Idle { step });
        }
        for part in &score.parts {
            let at = self.index(step, *part)?;
            let State::InHand { rect, .. } = self.states[at] else {
                return Err(ReplayError::NotYet { step, part: *part });
            };
            let fits = match self.plan.parts[at].fate {
                Fate::Piece { kind, turned, .. } => {
                    let along_x = (score.fold.axis == Axis::X) != turned;
                    let side = if along_x { rect.width } else { rect.height };
                    kind == score.fold.kind && 0 < score.fold.at && score.fold.at < side
                }
                _ => false,
            };
            if !fits || !self.plan.folds.contains(&score.fold) {
                return Err(ReplayError::WrongFold { step, part: *part });
            }
            self.scored.push((*part, score.fold));
        }
        let strokes = u32::try_from(score.parts.len()).unwrap_or(u32::MAX).saturating_mul(self.plan.sheets);
        if score.strokes != strokes {
            return Err(ReplayError::Strokes { step, said: score.strokes, strokes });
        }
        Ok(())
    }

    /// Nothing may be left to do.
    fn close(self) -> Result<Replayed, ReplayError> {
        let mut pieces = Vec::new();
        let mut waste = Vec::new();
        let mut numbers = Vec::new();
        for (part, state) in self.plan.parts.iter().zip(&self.states) {
            let rect = match *state {
                State::Unseen => return Err(ReplayError::NeverComes { part: part.id }),
                State::Gone => continue,
                State::InHand { rect, .. } => rect,
            };
            match part.fate {
                Fate::Cut => return Err(ReplayError::MissingCut { part: part.id }),
                Fate::Waste | Fate::Edge => waste.push(rect),
                Fate::Piece { kind, turned, number } => {
                    let Rect { x, y, width, height } = rect;
                    pieces.push(Placed { kind, x, y, width, height, turned });
                    numbers.push(number);
                    for fold in self.plan.folds.iter().filter(|fold| fold.kind == kind) {
                        let times = self.scored.iter().filter(|scored| **scored == (part.id, *fold)).count();
                        if times != 1 {
                            return Err(ReplayError::FoldCount { part: part.id, fold: *fold, times });
                        }
                    }
                }
            }
        }
        numbers.sort_unstable();
        if let Some((number, _)) = (1..).zip(&numbers).find(|(due, number)| due != *number) {
            return Err(ReplayError::Number { number });
        }
        pieces.sort_by_key(|piece| (piece.y, piece.x, *piece));
        waste.sort_by_key(|rect| (rect.y, rect.x));
        Ok(Replayed { pieces, waste, cuts: self.cuts, strokes: self.strokes })
    }
}

/// How a part must lie: the stop is at the left, so its end must have come there.
fn at_stop(cut: &CutStep) -> Up {
    use crate::steps::End;
    match (cut.axis, cut.end) {
        (Axis::X, End::Near) => Up::Away,
        (Axis::X, End::Far) => Up::Toward,
        // The top edge is at the left once the top points left.
        (Axis::Y, End::Near) => Up::Left,
        (Axis::Y, End::Far) => Up::Right,
    }
}
