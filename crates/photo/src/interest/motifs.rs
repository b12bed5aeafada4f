//! Motifs: connected patches of a print that are not its ground.
//!
//! The ground of a part is the colour that covers most of it and of its rim. What is left falls into patches. A patch too large to be one picture, or one
//! that fills its box (a printed panel, a stripe, a square of a check), is a part with a ground of its own, and is looked
//! into in the same way.

use super::Seen;

/// A connected patch: its pixels, and its box (`right` and `bottom` beyond the last pixel).
#[derive(Debug, Clone)]
pub(super) struct Patch {
    pub(super) pixels: Vec<usize>,
    pub(super) left: usize,
    pub(super) top: usize,
    pub(super) right: usize,
    pub(super) bottom: usize,
}

/// A patch of more than this share of the sheet's area, by its box, is no single picture. `Chosen:`.
const TOO_LARGE: f64 = 0.3;
/// Nor is one longer than this share of a side of the sheet. `Chosen:`.
const TOO_LONG: f64 = 0.8;
/// A patch that fills its box so far is a panel or a square of a check, with right angles. `Chosen:` an ellipse fills 0.785.
const RIGHT_ANGLED: f64 = 0.93;
/// A part has a ground if one colour's shares of its area and of its rim add up to this. `Chosen:` of 2.
const LEAST_GROUND: f64 = 0.3;
/// A motif has a body so thick, as a share of the least length, somewhere: sprigs and dots that hang together are texture.
/// `Chosen:` half of what a motif is long at least; looked at on the twelve drawn prints.
const BODY: f64 = 0.5;
/// How many parts are looked into. `Chosen:` bounds the time; a collage of as many panels is still taken apart.
const MOST_LOOKS: usize = 64;

/// The motifs at least `least` pixels long, and a quarter as wide.
pub(super) fn found(seen: &Seen, least: f64) -> Vec<Patch> {
    let mut motifs = Vec::new();
    let mut parts: std::collections::VecDeque<Vec<usize>> = [(0..seen.class.len()).collect()].into();
    for _ in 0..MOST_LOOKS {
        let Some(part) = parts.pop_front() else { break };
        for (patch, thick) in left_of(seen, &part, least) {
            let (w, h) = (px(patch.right - patch.left), px(patch.bottom - patch.top));
            if !thick || w.max(h) < least || w.min(h) < least / 4.0 {
                continue;
            }
            let large = w * h > TOO_LARGE * px(seen.width) * px(seen.height)
                || w > TOO_LONG * px(seen.width)
                || h > TOO_LONG * px(seen.height);
            if large || px(patch.pixels.len()) > RIGHT_ANGLED * w * h {
                parts.push_back(patch.pixels);
            } else {
                motifs.push(patch);
            }
        }
    }
    motifs
}

/// The patches of a part that are not its ground, each with whether it has a body; none if the part has no ground.
fn left_of(seen: &Seen, part: &[usize], least: f64) -> Vec<(Patch, bool)> {
    let mut inside = vec![false; seen.class.len()];
    for at in part {
        inside[*at] = true;
    }
    let Some(ground) = ground(seen, part, &inside) else { return Vec::new() };
    let ink: Vec<bool> = inside.iter().zip(&seen.class).map(|(inside, class)| *inside && *class != ground).collect();
    // Gaps within a motif (a stem that hardly touches its leaf) are closed: an eighth of the least length.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few pixels")]
    let ink = closed(&ink, &inside, seen.width, (least / 16.0) as usize);
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few pixels")]
    let half = (BODY * least / 2.0) as usize;
    let without: Vec<bool> = ink.iter().map(|ink| !ink).collect();
    let no_core = spread(&without, seen.width, half);
    let thick = |patch: &Patch| patch.pixels.iter().any(|at| !no_core[*at]);
    let patches = patches(&ink, seen.width).into_iter().map(|patch| {
        let thick = thick(&patch);
        (patch, thick)
    });
    patches.collect()
}

#[allow(clippy::cast_precision_loss, reason = "small pictures")]
fn px(count: usize) -> f64 {
    count as f64
}

/// The colour that covers most of a part and of its rim (an even mix of both: what lies in the middle of a part is not its
/// ground, however large); `None` if there is no such, or nothing else.
fn ground(seen: &Seen, part: &[usize], inside: &[bool]) -> Option<u8> {
    let (mut area, mut rim) = ([0usize; 256], [0usize; 256]);
    let (width, height) = (seen.width, seen.height);
    for at in part {
        let (x, y) = (at % width, at / width);
        let class = usize::from(seen.class[*at]);
        area[class] += 1;
        let within = x > 0
            && y > 0
            && x + 1 < width
            && y + 1 < height
            && [at - 1, at + 1, at - width, at + width].iter().all(|near| inside[*near]);
        rim[class] += usize::from(!within);
    }
    let all = px(rim.iter().sum::<usize>()).max(1.0);
    let score = |class: u8| px(area[usize::from(class)]) / px(part.len()) + px(rim[usize::from(class)]) / all;
    let most = (0..=u8::MAX).reduce(|best, class| if score(class) > score(best) { class } else { best })?;
    (score(most) >= LEAST_GROUND && area[usize::from(most)] < part.len()).then_some(most)
}

/// Grown by so many pixels and shrunk again, within a part.
fn closed(ink: &[bool], inside: &[bool], width: usize, by: usize) -> Vec<bool> {
    if by == 0 {
        return ink.to_vec();
    }
    let grown = spread(ink, width, by);
    let without: Vec<bool> = grown.iter().map(|ink| !ink).collect();
    let shrunk = spread(&without, width, by);
    shrunk.iter().zip(inside).map(|(out, inside)| !out && *inside).collect()
}

/// Every pixel with one that is set at most `by` columns and rows away.
fn spread(set: &[bool], width: usize, by: usize) -> Vec<bool> {
    let height = set.len() / width;
    let pass = |set: &[bool], across: bool| {
        let mut out = vec![false; set.len()];
        let (lines, long) = if across { (height, width) } else { (width, height) };
        for line in 0..lines {
            let place = |at: usize| if across { line * width + at } else { at * width + line };
            let mut near = 0usize;
            // How many of the window `at - by ..= at + by` are set.
            for at in 0..long + by {
                near += usize::from(at < long && set[place(at)]);
                if let Some(gone) = at.checked_sub(2 * by + 1) {
                    near -= usize::from(set[place(gone)]);
                }
                if let Some(middle) = at.checked_sub(by) {
                    out[place(middle)] = near > 0;
                }
            }
        }
        out
    };
    pass(&pass(set, true), false)
}

/// The connected patches (by sides and corners), each from its first pixel in reading order.
fn patches(ink: &[bool], width: usize) -> Vec<Patch> {
    let height = ink.len() / width;
    let mut open = ink.to_vec();
    let mut found = Vec::new();
    for start in 0..open.len() {
        if !open[start] {
            continue;
        }
        open[start] = false;
        let mut pixels = vec![start];
        let mut next = 0;
        let (mut left, mut right, mut top, mut bottom) = (width, 0, height, 0);
        while next < pixels.len() {
            let (x, y) = (pixels[next] % width, pixels[next] / width);
            next += 1;
            (left, right) = (left.min(x), right.max(x + 1));
            (top, bottom) = (top.min(y), bottom.max(y + 1));
            for down in y.saturating_sub(1)..(y + 2).min(height) {
                for across in x.saturating_sub(1)..(x + 2).min(width) {
                    let at = down * width + across;
                    if open[at] {
                        open[at] = false;
                        pixels.push(at);
                    }
                }
            }
        }
        found.push(Patch { pixels, left, top, right, bottom });
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn small_gaps_are_closed_and_wide_ones_stay() {
        let set: Vec<bool> = "..#.#....#..".chars().map(|c| c == '#').collect();
        let closed = closed(&set, &[true; 12], 12, 1);
        let drawn: String = closed.iter().map(|set| if *set { '#' } else { '.' }).collect();
        assert_eq!(drawn, "..###....#..");
    }

    #[test]
    fn patches_touch_by_corners() {
        let set: Vec<bool> = "#...\
                              .#..\
                              ...#"
            .chars()
            .map(|c| c == '#')
            .collect();
        let found = patches(&set, 4);
        assert_eq!(found.len(), 2);
        assert_eq!((found[0].left, found[0].top, found[0].right, found[0].bottom), (0, 0, 2, 2));
    }
}
