//! The published cut plan: plain data, no words, whole grid steps.

use serde::Serialize;

use crate::tree::Axis;

/// Names a piece of paper in hand; 0 is the whole sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct PartId(pub u32);

impl PartId {
    /// The whole sheet.
    pub const SHEET: PartId = PartId(0);
}

/// A rectangle on the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct Rect {
    /// Left edge.
    pub x: u32,
    /// Top edge.
    pub y: u32,
    /// Width.
    pub width: u32,
    /// Height.
    pub height: u32,
}

impl Rect {
    /// The two parts when a piece of `setting` is taken off one end: what comes off, and what stays.
    ///
    /// `None` unless the cut is strictly inside.
    pub fn split(self, axis: Axis, end: End, setting: u32) -> Option<(Rect, Rect)> {
        let side = axis.of(self.width, self.height);
        if setting == 0 || setting >= side {
            return None;
        }
        let at = if end == End::Near { setting } else { side - setting };
        let (near, far) = match axis {
            Axis::X => (Rect { width: at, ..self }, Rect { x: self.x + at, width: self.width - at, ..self }),
            Axis::Y => (Rect { height: at, ..self }, Rect { y: self.y + at, height: self.height - at, ..self }),
        };
        Some(if end == End::Near { (near, far) } else { (far, near) })
    }
}

/// Which end of a part lies against the stop, as the part lies on the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum End {
    /// The left end, or the top.
    Near,
    /// The right end, or the bottom.
    Far,
}

/// Where the sheet's top points while a part lies in the trimmer.
///
/// The blade runs away from the person and the stop is at the left. For a trimmer with the stop at
/// the right, look at all of it in a mirror: words change, parts and distances do not.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Up {
    /// Away from the person: the print stands upright.
    Away,
    /// To the right.
    Right,
    /// Towards the person: upside down.
    Toward,
    /// To the left, at the stop.
    Left,
}

impl Up {
    /// How a part must lie so that this end of it touches the stop.
    pub fn needed(axis: Axis, end: End) -> Up {
        match (axis, end) {
            (Axis::X, End::Near) => Up::Away,
            (Axis::X, End::Far) => Up::Toward,
            (Axis::Y, End::Near) => Up::Left,
            (Axis::Y, End::Far) => Up::Right,
        }
    }

    /// Where the top points after a turn.
    #[must_use]
    pub fn turned(self, turn: Turn) -> Up {
        const CLOCKWISE: [Up; 4] = [Up::Away, Up::Right, Up::Toward, Up::Left];
        CLOCKWISE[(self as usize + turn as usize) % 4]
    }

    /// The turn that leads from here to there.
    pub fn turn_to(self, there: Up) -> Turn {
        const TURNS: [Turn; 4] = [Turn::None, Turn::Right, Turn::Half, Turn::Left];
        TURNS[(4 + there as usize - self as usize) % 4]
    }
}

/// A turn of the paper on the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Turn {
    /// Leave it as it lies.
    None,
    /// A quarter turn to the right (clockwise).
    Right,
    /// Half round.
    Half,
    /// A quarter turn to the left.
    Left,
}

/// What becomes of a part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Fate {
    /// It is cut further.
    Cut,
    /// It is a finished piece, to be labelled.
    Piece {
        /// Index of the kind.
        kind: usize,
        /// True if it lies a quarter turn from the way its kind is written: its top is not the sheet's.
        turned: bool,
        /// Its number on this layout, from 1, in reading order.
        number: u32,
    },
    /// It is left over from the layout.
    Waste,
    /// It is an unusable edge.
    Edge,
}

/// A piece of paper in hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
pub struct Part {
    /// Its name.
    pub id: PartId,
    /// Where it lies on the sheet.
    pub rect: Rect,
    /// What becomes of it.
    pub fate: Fate,
    /// Where the sheet's top points when it comes off the trimmer.
    pub up: Up,
}

/// What the trimmer and its user can do, in steps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
pub struct Limits {
    /// Longest cut in one go.
    pub longest_cut: u32,
    /// Narrowest strip that is safe to hold or to cut off.
    pub smallest_strip: u32,
    /// Layers of paper that may be cut at once; 0 counts as 1.
    pub stack: u32,
}

/// Unusable edges, taken off before the layout starts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Hash, Serialize)]
pub struct Trims {
    /// At the left.
    pub left: u32,
    /// At the top.
    pub top: u32,
    /// At the right.
    pub right: u32,
    /// At the bottom.
    pub bottom: u32,
}

/// A score line for every piece of a kind, as the piece is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct Fold {
    /// Index of the kind.
    pub kind: usize,
    /// X for an upright line.
    pub axis: Axis,
    /// Distance from the piece's own left or top.
    pub at: u32,
}

/// A layout as things to do, in order.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct CutPlan {
    /// The sheet's width and height, unusable edges and all.
    pub sheet: (u32, u32),
    /// How many sheets get this layout.
    pub sheets: u32,
    /// What was asked of the trimmer.
    pub limits: Limits,
    /// Unusable edges.
    pub trims: Trims,
    /// Score lines asked for.
    pub folds: Vec<Fold>,
    /// Every part that is ever in hand; a part's id is its place here.
    pub parts: Vec<Part>,
    /// What to do.
    pub steps: Vec<Step>,
    /// True if no order moves the stop less often (unusable edges apart).
    pub fewest: bool,
}

/// One thing to do.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Step {
    /// Cut equal parts off.
    Cut(CutStep),
    /// Press a fold line.
    Score(ScoreStep),
}

/// Cuts of one distance off one end of parts that lie alike.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct CutStep {
    /// Counts how often the stop has moved, from 0: steps that share the number share the setting.
    pub stop: u32,
    /// Distance between stop and blade.
    pub setting: u32,
    /// Which side of the parts is divided, as they lie on the sheet.
    pub axis: Axis,
    /// Which end is at the stop.
    pub end: End,
    /// How to turn the parts first.
    pub turn: Turn,
    /// Cuts from each part.
    pub cuts: u32,
    /// The parts, each with what comes of it.
    pub work: Vec<Work>,
    /// Layers cut at once.
    pub layers: u32,
    /// Strokes of the blade over all sheets: stacks × cuts.
    pub strokes: u32,
    /// Finished pieces to label now.
    pub finished: Vec<PartId>,
    /// What to take care of.
    pub cautions: Vec<Caution>,
}

/// One part that goes under the blade.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Work {
    /// The part that goes in.
    pub part: PartId,
    /// What comes off, in order.
    pub off: Vec<PartId>,
    /// What stays in hand after the last cut; never measured.
    pub rest: PartId,
}

/// A danger of one step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Caution {
    /// The cut is longer than the trimmer.
    LongCut {
        /// Length of the cut.
        length: u32,
    },
    /// The strip that comes off is narrower than is safe: hold the wide part.
    NarrowStrip {
        /// The narrowest piece it is ever cut from, to be held.
        held: u32,
    },
    /// What stays after the last cut is narrower than is safe to hold.
    NarrowRest {
        /// The rest's size.
        rest: u32,
    },
}

/// A fold line on finished pieces of one kind.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ScoreStep {
    /// The line.
    pub fold: Fold,
    /// The pieces.
    pub parts: Vec<PartId>,
    /// Lines to press over all sheets.
    pub strokes: u32,
}

/// Work counted over a whole plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize)]
pub struct Tally {
    /// How often the stop is set.
    pub stops: u32,
    /// Distinct distances among them.
    pub settings: u32,
    /// Cuts on one sheet.
    pub cuts: u32,
    /// Strokes of the blade over all sheets.
    pub strokes: u32,
}

impl CutPlan {
    /// The part of that name.
    pub fn part(&self, id: PartId) -> Option<&Part> {
        self.parts.get(usize::try_from(id.0).ok()?)
    }

    /// The cut steps, in order.
    pub fn cut_steps(&self) -> impl Iterator<Item = &CutStep> {
        self.steps.iter().filter_map(|step| match step {
            Step::Cut(cut) => Some(cut),
            Step::Score(_) => None,
        })
    }

    /// Counts the work.
    pub fn tally(&self) -> Tally {
        let mut tally = Tally::default();
        let mut settings = std::collections::BTreeSet::new();
        let mut last = None;
        for step in self.cut_steps() {
            settings.insert(step.setting);
            tally.stops += u32::from(last != Some(step.stop));
            last = Some(step.stop);
            tally.cuts += step.cuts * u32::try_from(step.work.len()).unwrap_or(u32::MAX);
            tally.strokes += step.strokes;
        }
        tally.settings = u32::try_from(settings.len()).unwrap_or(u32::MAX);
        tally
    }
}

/// The dangers of a step: `sides` are each part's size along the cuts' axis and across it.
pub(crate) fn cautions(limits: &Limits, setting: u32, cuts: u32, sides: &[(u32, u32)]) -> Vec<Caution> {
    let rests = || sides.iter().map(|(along, _)| along.saturating_sub(setting.saturating_mul(cuts)));
    let mut found = Vec::new();
    let length = sides.iter().map(|(_, across)| *across).max().unwrap_or(0);
    if length > limits.longest_cut {
        found.push(Caution::LongCut { length });
    }
    if setting < limits.smallest_strip {
        found.push(Caution::NarrowStrip { held: rests().min().unwrap_or(0) });
    }
    if let Some(rest) = rests().min().filter(|rest| *rest < limits.smallest_strip) {
        found.push(Caution::NarrowRest { rest });
    }
    found
}
