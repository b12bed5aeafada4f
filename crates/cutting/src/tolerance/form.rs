//! How sides follow errors: whole coefficients of independent causes.

use std::collections::BTreeMap;

use crate::replay::{ReplayError, replay};
use crate::steps::{CutPlan, End, Fate, PartId};
use crate::tree::Axis;

/// One error, independent of every other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Cause {
    /// The hand at one cut; counted in the order of the steps.
    Cut(u32),
    /// The stop, from one time it was moved to the next ([`crate::steps::CutStep::stop`]): every cut at it shares this.
    Stop(u32),
    /// The print on the sheet, off its place along this axis: every cut on a printed line shares this.
    Drift(Axis),
}

/// A side that follows errors: its nominal length in steps and how often each cause is added to it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Form {
    /// Its length where nothing is off, in steps.
    pub side: u32,
    /// How often each cause is added; never nought.
    pub terms: BTreeMap<Cause, i64>,
}

impl Form {
    /// A side that nothing has touched yet.
    fn of(side: u32) -> Form {
        Form { side, terms: BTreeMap::new() }
    }

    fn add(&mut self, cause: Cause, times: i64) {
        let sum = self.terms.remove(&cause).unwrap_or(0) + times;
        if sum != 0 {
            self.terms.insert(cause, sum);
        }
    }

    /// What is left of this side after that one came off.
    fn less(&self, off: &Form, side: u32) -> Form {
        let mut rest = Form { side, terms: self.terms.clone() };
        for (&cause, &times) in &off.terms {
            rest.add(cause, -times);
        }
        rest
    }

    /// The most the side can be off, either way, where each cause is off by at most `most` of it.
    ///
    /// # Shape
    /// Reached where every cause is off by its most in the direction of its coefficient; so the interval
    /// nominal ± worst is exact.
    pub fn worst(&self, most: impl Fn(Cause) -> i64) -> i64 {
        self.terms.iter().map(|(&cause, &times)| times.abs() * most(cause)).sum()
    }

    /// How far the side is off where each cause is off by `error` of it.
    pub fn off(&self, error: impl Fn(Cause) -> i64) -> i64 {
        self.terms.iter().map(|(&cause, &times)| times * error(cause)).sum()
    }

    /// The stops it follows, each with how often.
    pub fn stops(&self) -> impl Iterator<Item = (u32, i64)> + '_ {
        self.terms.iter().filter_map(|(&cause, &times)| match cause {
            Cause::Stop(stop) => Some((stop, times)),
            _ => None,
        })
    }
}

/// A finished piece and how its sides follow errors.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PieceErrors {
    /// The part it is.
    pub part: PartId,
    /// Index of its kind.
    pub kind: usize,
    /// True if it lies a quarter turn from the way its kind is written.
    pub turned: bool,
    /// Its number on the layout, from 1.
    pub number: u32,
    /// Its width as it lies on the sheet.
    pub width: Form,
    /// Its height as it lies on the sheet.
    pub height: Form,
}

/// How the sides of every piece follow the errors of published steps, by number.
///
/// # Shape
/// `printed(axis, at)` says whether the line at `at` steps from the sheet's left (X) or top (Y) is cut by the print
/// and not by the stop. The sheet itself is taken to be of its size.
///
/// # Errors
/// The first [`ReplayError`] where the steps cannot be followed.
pub fn errors(plan: &CutPlan, printed: &dyn Fn(Axis, u32) -> bool) -> Result<Vec<PieceErrors>, ReplayError> {
    replay(plan)?;
    let mut sides: BTreeMap<PartId, (Form, Form)> = BTreeMap::new();
    sides.insert(PartId::SHEET, (Form::of(plan.sheet.0), Form::of(plan.sheet.1)));
    let mut cuts = 0;
    for (at, step) in plan.cut_steps().enumerate() {
        let unknown = |part| ReplayError::UnknownPart { step: at, part };
        for work in &step.work {
            let (width, height) = sides.get(&work.part).cloned().ok_or_else(|| unknown(work.part))?;
            let (mut left, across) = if step.axis == Axis::X { (width, height) } else { (height, width) };
            let pair =
                |along: Form| if step.axis == Axis::X { (along, across.clone()) } else { (across.clone(), along) };
            for &off in &work.off {
                let rect = plan.part(off).ok_or_else(|| unknown(off))?.rect;
                let start = step.axis.of(rect.x, rect.y);
                let end = start + step.setting;
                let (at_stop, at_blade) = if step.end == End::Near { (start, end) } else { (end, start) };
                let toward = if step.end == End::Near { 1 } else { -1 };
                let mut came = Form::of(step.setting);
                came.add(Cause::Cut(cuts), 1);
                cuts += 1;
                let lines = i64::from(printed(step.axis, at_blade)) - i64::from(printed(step.axis, at_stop));
                came.add(Cause::Drift(step.axis), toward * lines);
                // By a printed line the paper is moved until the line meets the blade: the stop is not asked.
                if !printed(step.axis, at_blade) {
                    came.add(Cause::Stop(step.stop), 1);
                }
                left = left.less(&came, left.side.saturating_sub(step.setting));
                sides.insert(off, pair(came));
            }
            sides.insert(work.rest, pair(left));
        }
    }
    let mut found: Vec<PieceErrors> = (plan.parts.iter())
        .filter_map(|part| {
            let Fate::Piece { kind, turned, number } = part.fate else { return None };
            let (width, height) = sides.remove(&part.id)?;
            Some(PieceErrors { part: part.id, kind, turned, number, width, height })
        })
        .collect();
    found.sort_by_key(|piece| piece.number);
    Ok(found)
}

/// How far one end of a side leans out of line where a sheet is out of square by `rise` over `run`; rounded up.
///
/// Turned over and laid on itself, a piece shows a gap of twice this.
pub fn lean(side: i64, rise: i64, run: i64) -> i64 {
    let leaned = i128::from(side).abs() * i128::from(rise).abs();
    let run = i128::from(run).abs().max(1);
    i64::try_from((leaned + run - 1) / run).unwrap_or(i64::MAX)
}
