//! Grid, brick, half-drop and diagonal: places by their definitions, motifs and turns so that no neighbour is equal.

use crate::ask::{Arrangement, EdgeRule, Placement, Turning, Wish};
use crate::outline::Point;
use crate::room::{Room, rounded};
use crate::toss::{Dice, by_size};

/// So many turns are tried at one place.
const TURNS: u32 = 12;

/// Distance of columns and of rows, before the sheet asks for more.
fn pitch(wish: &Wish) -> Point {
    let gap = wish.gap.to_mm();
    let mut most: Point = (0.0, 0.0);
    for motif in wish.motifs.iter().filter(|motif| motif.share > 0) {
        let (width, height) = match motif.turning {
            Turning::Upright => motif.outline.extent(),
            Turning::Free | Turning::Within(_) => (2.0 * motif.outline.reach(), 2.0 * motif.outline.reach()),
        };
        most = (most.0.max(width + gap), most.1.max(height + gap));
    }
    // Places are rounded to 1/100 mm: without this two neighbours might lose the gap to it.
    let (wide, high) = (most.0 + 0.02, most.1 + 0.02);
    let square = wide.max(high);
    match wish.arrangement {
        // Rows half a diagonal apart, every other one moved by the other half.
        Arrangement::Diagonal => (square * core::f64::consts::SQRT_2, square * core::f64::consts::FRAC_1_SQRT_2),
        Arrangement::Toss | Arrangement::Grid | Arrangement::Brick | Arrangement::HalfDrop => (wide, high),
    }
}

/// The places of an arrangement with its pitch so many times as wide, row by row.
pub(crate) fn places(wish: &Wish, scale: f64) -> Vec<Point> {
    let (width, height) = (wish.sheet.width.to_mm(), wish.sheet.height.to_mm());
    let (p, q) = pitch(wish);
    let (mut p, mut q) = (p * scale, q * scale);
    let (rows_move, columns_move) = match wish.arrangement {
        Arrangement::Brick | Arrangement::Diagonal => (true, false),
        Arrangement::HalfDrop => (false, true),
        Arrangement::Toss | Arrangement::Grid => (false, false),
    };
    let wraps = wish.edge == EdgeRule::Wrap;
    if wraps {
        // A sheet that repeats holds whole pitches, two of them where every other line is moved.
        p = width / wholes(width / p, columns_move);
        q = height / wholes(height / q, rows_move);
    }
    let reach = wish.motifs.iter().map(|motif| motif.outline.reach()).fold(0.0, f64::max);
    let mut found = Vec::new();
    let (across, down) = (libm::ceil((width / 2.0 + reach) / p) + 1.0, libm::ceil((height / 2.0 + reach) / q) + 1.0);
    let mut row = -down;
    while row <= down {
        let mut column = -across;
        while column <= across {
            let by = |moved: bool, line: f64| if moved && !is_even(line) { 0.5 } else { 0.0 };
            let x = width / 2.0 + (column + by(rows_move, row)) * p;
            let y = height / 2.0 + (row + by(columns_move, column)) * q;
            let on_sheet = (-1e-9..width - 1e-9).contains(&x) && (-1e-9..height - 1e-9).contains(&y);
            if !wraps || on_sheet {
                found.push((x, y));
            }
            column += 1.0;
        }
        row += 1.0;
    }
    found
}

fn is_even(line: f64) -> bool {
    (line.abs() % 2.0) < 0.5
}

fn wholes(value: f64, even: bool) -> f64 {
    if even { (2.0 * libm::floor(value / 2.0)).max(2.0) } else { libm::floor(value).max(1.0) }
}

/// Fills a sheet by an arrangement.
pub(crate) fn set_out(wish: &Wish, room: &mut Room<'_>, scale: f64) {
    let mut dice = Dice::new(wish.seed);
    let order = by_size(wish);
    let mut used = vec![0_u32; wish.motifs.len()];
    for placed in room.placements() {
        used[placed.motif] += 1;
    }
    for place in places(wish, scale) {
        // The motif that is furthest behind its share goes first.
        let mut first = order.clone();
        first.sort_by_key(|motif| u64::from(used[*motif]) * 1_000_000 / u64::from(wish.motifs[*motif].share));
        if let Some(placed) = first.iter().find_map(|motif| fitting(wish, room, *motif, place, &mut dice)) {
            used[placed.motif] += 1;
            room.put(placed);
        }
    }
}

/// An impression of this motif here, or moved a little where it would leave a sliver at an edge.
fn fitting(wish: &Wish, room: &Room<'_>, motif: usize, (x, y): Point, dice: &mut Dice) -> Option<Placement> {
    let of = &wish.motifs[motif];
    let gap = wish.gap.to_mm();
    let away = of.outline.reach() / 2.0;
    // From further off the sheet than that hardly any motif has a quarter of its ink on it. Chosen: a bar's quarter ends
    // at half of its reach.
    let off = (-x).max(x - room.width).max(-y).max(y - room.height);
    if off - away > 0.6 * of.outline.reach() {
        return None;
    }
    let moves = [(0.0, 0.0), (-away, 0.0), (away, 0.0), (0.0, -away), (0.0, away)];
    let tried = if wish.edge == EdgeRule::RunOff { &moves[..] } else { &moves[..1] };
    let turns = if of.turning == Turning::Upright { 1 } else { TURNS };
    tried.iter().find_map(|(dx, dy)| {
        if off > 0.6 * of.outline.reach() && (*dx, *dy) == (0.0, 0.0) {
            return None;
        }
        (0..turns).find_map(|_| {
            let placed = Placement { motif, x: rounded(x + dx), y: rounded(y + dy), turn: dice.turn(of.turning) };
            room.takes(placed, gap).then_some(placed)
        })
    })
}
