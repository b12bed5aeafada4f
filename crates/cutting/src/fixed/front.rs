//! How far a sheet is filled by strips, rows, columns and piles, and where the next piece may come.

use super::Rules;
use crate::Axis;

/// The part of a sheet where the next piece may come, measured along the first cut's axis (`u`) and across (`v`).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Front {
    pub(super) sheet: usize,
    pub(super) axis: Axis,
    /// The strip from `u1` to `u2`, in it the row from `v1` to `v2`, in it the column from `c1` to `c2`, full to `top`.
    pub(super) u1: u32,
    pub(super) u2: u32,
    pub(super) v1: u32,
    pub(super) v2: u32,
    pub(super) c1: u32,
    pub(super) c2: u32,
    pub(super) top: u32,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Into {
    Column,
    Row,
    Strip,
    Sheet,
    /// On top of the last piece.
    Pile,
}

/// The fronts after a piece of `(du, dv)` was added to a sheet of `(u, v)`, as far as turns of the sheet allow.
pub(super) fn fronts(
    f: Front,
    (du, dv): (u32, u32),
    (u, v): (u32, u32),
    rules: Rules,
) -> impl Iterator<Item = (Into, Front)> {
    // Strips and rows take two runs, columns three, piles four; without trimming the last of them must span.
    let (most, trim) = rules.stages.map_or((u8::MAX, true), |stages| (stages.most, stages.trim));
    let spans = move |runs: u8, here: u32, whole: u32| most > runs || (most == runs && (trim || here == whole));
    let allowed = move |into: Into| match into {
        Into::Sheet | Into::Strip => true,
        Into::Row => spans(2, du, f.u2 - f.u1),
        Into::Column => spans(3, dv, f.v2 - f.v1),
        Into::Pile => spans(4, du, f.c2 - f.c1),
    };
    let pile = (du <= f.c2 - f.c1 && dv <= v - f.top)
        .then(|| (Into::Pile, Front { v2: f.v2.max(f.top + dv), top: f.top + dv, ..f }));
    let column = (du <= u - f.c2 && dv <= v - f.v1).then(|| {
        let (c1, c2) = (f.c2, f.c2 + du);
        (Into::Column, Front { c1, c2, u2: f.u2.max(c2), v2: f.v2.max(f.v1 + dv), top: f.v1 + dv, ..f })
    });
    let row = (du <= u - f.u1 && dv <= v - f.v2).then(|| {
        let (c1, c2, top) = (f.u1, f.u1 + du, f.v2 + dv);
        (Into::Row, Front { c1, c2, u2: f.u2.max(c2), v1: f.v2, v2: top, top, ..f })
    });
    let strip = (du <= u - f.u2 && dv <= v).then(|| {
        let (c1, c2) = (f.u2, f.u2 + du);
        (Into::Strip, Front { u1: c1, u2: c2, v1: 0, v2: dv, c1, c2, top: dv, ..f })
    });
    [pile, column, row, strip].into_iter().flatten().filter(move |&(into, _)| allowed(into))
}

/// Width and height as (along, across) an axis; the way back is the same.
pub(super) fn lie(axis: Axis, (width, height): (u32, u32)) -> (u32, u32) {
    if axis == Axis::X { (width, height) } else { (height, width) }
}

/// A number for a front under a cost; equal fronts have equal numbers.
pub(super) fn front_key(f: Front, cost: u64) -> u64 {
    let axis = u64::from(f.axis == Axis::X);
    let sides = [f.u1, f.u2, f.v1, f.v2, f.c1, f.c2, f.top];
    sides.iter().fold(mix(cost ^ axis ^ (f.sheet as u64) << 1), |key, &side| mix(key ^ u64::from(side)))
}

/// Splitmix64: Steele, Lea, Flood 2014 (from memory).
pub(super) fn mix(x: u64) -> u64 {
    let x = x.wrapping_add(0x9e37_79b9_7f4a_7c15);
    let x = (x ^ (x >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    let x = (x ^ (x >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    x ^ (x >> 31)
}
