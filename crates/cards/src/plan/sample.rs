//! The first sample: what was measured beside what was planned, and which setting made the difference.
//!
//! Source: common practice: 1/32 in, or 1 mm, is what a hand and a rule are off by.

use cutting::steps::CutPlan;
use cutting::tree::Axis;
use measure::{Length, Rect, Unit, from_steps};

use super::grid::on_sheet;

/// How one side of a piece came out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Measured {
    /// As planned, or off by no more than hand and rule are.
    Fine,
    /// Too long by that much; below zero, too short.
    Off(Length),
}

/// What gives a side of a piece its length.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum MadeBy {
    /// A setting of the stop, at these steps, from 1.
    Setting(Length, Vec<usize>),
    /// It is what the cuts before it leave; nothing measures it.
    Rest,
}

/// What hand and rule are off by: 1/32 in or 1 mm.
pub const fn allowed(unit: Unit) -> Length {
    match unit {
        Unit::Inch => Length::from_ticks(Length::INCH.ticks() / 32),
        Unit::Millimetre => Length::MM,
    }
}

/// Compares a side with what it was planned to be.
pub fn compare(planned: Length, measured: Length, unit: Unit) -> Measured {
    let off = measured - planned;
    if off <= allowed(unit) && -off <= allowed(unit) { Measured::Fine } else { Measured::Off(off) }
}

/// What gives a piece its width (`Axis::X`) or its height as it lies on the sheet.
///
/// # Shape
/// `step` is one grid step of the cut plan, `rect` where the piece lies on the whole sheet.
pub fn made_by(plan: &CutPlan, step: Length, rect: Rect, axis: Axis) -> MadeBy {
    let span = |rect: Rect| match axis {
        Axis::X => (rect.x, rect.right()),
        Axis::Y => (rect.y, rect.bottom()),
    };
    let (mut setting, mut steps) = (None, Vec::new());
    for (number, cut) in (1..).zip(&plan.steps) {
        let cutting::steps::Step::Cut(cut) = cut else { continue };
        let parts = cut.work.iter().flat_map(|work| &work.off).filter_map(|id| plan.part(*id));
        let mut measured = parts.map(|part| on_sheet(part.rect, step));
        if cut.axis == axis && measured.any(|part| part.contains(rect) && span(part) == span(rect)) {
            setting = Some(from_steps(cut.setting, step));
            steps.push(number);
        }
    }
    setting.map_or(MadeBy::Rest, |setting| MadeBy::Setting(setting, steps))
}
