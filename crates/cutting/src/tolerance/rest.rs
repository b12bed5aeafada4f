//! Rows whose rest falls where it matters.

use std::collections::BTreeMap;

use crate::steps::{CutPlan, Fate, PartId};
use crate::tree::Axis;

/// A row of cuts along one axis that ends on a piece where the rest matters, though another place of it is free.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// The part the row is cut from.
    pub part: PartId,
    /// The side it divides.
    pub axis: Axis,
    /// How many cuts come together in the rest.
    pub cuts: u32,
    /// Numbers of the pieces on the rest that should not be there.
    pub on: Vec<u32>,
    /// Numbers of the pieces of the place that should be cut last.
    pub better: Vec<u32>,
}

/// Rows whose rest should lie elsewhere.
///
/// # Shape
/// `matters(number, axis)` says whether the side of that piece along that axis must be right. A row is told where
/// its rest has such a piece, the errors of at least two cuts meet in it, and another place of the row has none.
/// Leftovers never matter.
pub fn rests(plan: &CutPlan, matters: &dyn Fn(u32, Axis) -> bool) -> Vec<Row> {
    let mut cut: BTreeMap<PartId, (Axis, Vec<PartId>, PartId)> = BTreeMap::new();
    for step in plan.cut_steps() {
        for work in &step.work {
            cut.insert(work.part, (step.axis, work.off.clone(), work.rest));
        }
    }
    let mut inner: Vec<PartId> = Vec::new();
    let mut rows = Vec::new();
    for (&part, (axis, ..)) in &cut {
        let (mut places, mut rest) = (Vec::new(), part);
        while let Some((_, off, next)) = cut.get(&rest).filter(|(along, ..)| along == axis) {
            places.extend(off.iter().copied());
            rest = *next;
            inner.push(rest);
        }
        rows.push((part, *axis, places, rest));
    }
    let told = |(part, axis, places, rest): (PartId, Axis, Vec<PartId>, PartId)| {
        let critical = |place: PartId| -> Vec<u32> {
            pieces(plan, &cut, place).into_iter().filter(|&number| matters(number, axis)).collect()
        };
        let on = critical(rest);
        let better = places.iter().rev().find(|&&place| critical(place).is_empty())?;
        let cuts = u32::try_from(places.len()).unwrap_or(u32::MAX);
        (!on.is_empty() && cuts > 1).then(|| Row { part, axis, cuts, on, better: pieces(plan, &cut, *better) })
    };
    rows.into_iter().filter(|(part, ..)| !inner.contains(part)).filter_map(told).collect()
}

/// Numbers of the pieces that come of a part.
fn pieces(plan: &CutPlan, cut: &BTreeMap<PartId, (Axis, Vec<PartId>, PartId)>, part: PartId) -> Vec<u32> {
    let (mut open, mut found) = (vec![part], Vec::new());
    while let Some(part) = open.pop() {
        if let Some((_, off, rest)) = cut.get(&part) {
            open.extend(off.iter().chain([rest]));
        } else if let Some(Fate::Piece { number, .. }) = plan.part(part).map(|part| part.fate) {
            found.push(number);
        }
    }
    found.sort_unstable();
    found
}
