//! Motifs: connected patches of a print that are not its ground.
//!
//! Where pictures touch and overlap until they cover the sheet, such patches are the whole print; there a picture is a compact
//! patch of colours that are rare on it ([`figures`]): the fruit and the blossoms among the leaves.
//!
//! The ground of a part is the colour that covers most of it and of its rim. What is left falls into patches. A patch too large to be one picture, or one
//! that fills its box (a printed panel, a stripe, a square of a check), is a part with a ground of its own, and is looked
//! into in the same way.

use color::ciede2000;

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
///
/// A patch with several figures among other things is a clump: its figures are the motifs. A figure that is alone in its patch is a part of
/// it, as the heart of a flower.
pub(super) fn found(seen: &Seen, edges: &[f32], least: f64) -> Vec<Patch> {
    let mut figures = figures(seen, edges, least);
    let mut motifs = Vec::new();
    for patch in on_grounds(seen, least) {
        let mut inside = vec![false; seen.class.len()];
        for at in &patch.pixels {
            inside[*at] = true;
        }
        let within = |figure: &Patch| figure.pixels.iter().filter(|at| inside[**at]).count() * 2 > figure.pixels.len();
        let (count, covered) = figures
            .iter()
            .filter(|figure| within(figure))
            .fold((0, 0), |(count, covered), figure| (count + 1, covered + figure.pixels.len()));
        if count < 2 || covered * 2 > patch.pixels.len() {
            figures.retain(|figure| !within(figure));
            motifs.push(patch);
        }
    }
    // A figure in the middle of another is a part of it.
    let boxed = |one: &Patch, other: &Patch| {
        one.left >= other.left && one.right <= other.right && one.top >= other.top && one.bottom <= other.bottom
    };
    let alone = |at: usize| (0..figures.len()).all(|other| other == at || !boxed(&figures[at], &figures[other]));
    let alone: Vec<bool> = (0..figures.len()).map(alone).collect();
    motifs.extend(figures.into_iter().zip(alone).filter(|(_, alone)| *alone).map(|(figure, _)| figure));
    motifs
}

/// Compact patches that are not the ground of their part.
fn on_grounds(seen: &Seen, least: f64) -> Vec<Patch> {
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
            } else if px(patch.pixels.len()) >= LOOSE * w * h {
                motifs.push(patch);
            }
        }
    }
    motifs
}

/// Colours nearer to each other than this (ΔE₀₀) are light and shade of one thing: fruit has more of it than petals.
/// `Chosen:` on the drawn prints.
const ONE_THING: [f64; 2] = [16.0, 11.0];
/// Colours of one thing that cover more of the sheet than this are no figure's, but the print's own. `Chosen:` likewise.
const RARE: f64 = 0.25;
/// A patch on a ground fills its box at least so far, or it is a tangle of sprigs. `Chosen:` likewise.
const LOOSE: f64 = 0.46;
/// A figure fills its box so far: a disc fills 0.785, a triangle half. `Chosen:` likewise.
const COMPACT: f64 = 0.5;

/// So much of a figure is of its own colours; closed gaps are the rest. `Chosen:` likewise; a crowd of dots has half.
const SOLID: f64 = 0.65;
/// A figure that fills its box so far is a square of a check. `Chosen:` a disc fills 0.785.
const ROUND: f64 = 0.86;
/// A rim pixel is an edge from so much of a full edge on. `Chosen:` a lamp's slope is a hundredth.
const SHARP: f32 = 0.3;

/// Compact patches in rare colours.
fn figures(seen: &Seen, edges: &[f32], least: f64) -> Vec<Patch> {
    let mut taken = vec![false; seen.class.len()];
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few pixels")]
    let (gap, half) = ((least / 8.0) as usize, (BODY * least / 2.0) as usize);
    let mut found: Vec<Patch> = Vec::new();
    for thing in things(seen) {
        let ink: Vec<bool> =
            seen.class.iter().zip(&taken).map(|(class, taken)| thing.contains(class) && !taken).collect();
        let ink = closed(&ink, &vec![true; ink.len()], seen.width, gap);
        // Thin parts that tie two figures together do not count: only what is near a body.
        let without: Vec<bool> = ink.iter().map(|ink| !ink).collect();
        let body: Vec<bool> = spread(&without, seen.width, half).iter().map(|thin| !thin).collect();
        let near = spread(&body, seen.width, half + half.div_ceil(2));
        let ink: Vec<bool> = ink.iter().zip(&near).map(|(ink, near)| *ink && *near).collect();
        for patch in patches(&ink, seen.width) {
            if is_figure(seen, &patch, &thing, least) && edged(seen, &patch, edges) {
                for at in &patch.pixels {
                    taken[*at] = true;
                }
                found.push(patch);
            }
        }
    }
    found
}

/// Whether a patch has the size and shape of a figure, and is of its thing's colours.
fn is_figure(seen: &Seen, patch: &Patch, thing: &[u8], least: f64) -> bool {
    let (w, h) = (px(patch.right - patch.left), px(patch.bottom - patch.top));
    let large = w * h > TOO_LARGE * px(seen.width) * px(seen.height);
    let fills = px(patch.pixels.len()) / (w * h);
    let inked = patch.pixels.iter().filter(|at| thing.contains(&seen.class[**at])).count();
    w.max(h) >= least
        && !large
        && px(inked) >= SOLID * px(patch.pixels.len())
        && (COMPACT..ROUND).contains(&fills)
        && !cornered(seen, patch)
}

/// Whether a patch holds three corners of its box: the ground of a printed panel, with a picture on it.
fn cornered(seen: &Seen, patch: &Patch) -> bool {
    let (in_x, in_y) = ((patch.right - patch.left) / 8, (patch.bottom - patch.top) / 8);
    let places = [
        (patch.left + in_x, patch.top + in_y),
        (patch.right - 1 - in_x, patch.top + in_y),
        (patch.left + in_x, patch.bottom - 1 - in_y),
        (patch.right - 1 - in_x, patch.bottom - 1 - in_y),
    ];
    let held = places.iter().filter(|(x, y)| patch.pixels.contains(&(y * seen.width + x))).count();
    held >= 3
}

/// Whether most of a patch's rim is an edge of the print; where it is not, the light changes over one colour.
fn edged(seen: &Seen, patch: &Patch, edges: &[f32]) -> bool {
    let mut inside = vec![false; seen.class.len()];
    for at in &patch.pixels {
        inside[*at] = true;
    }
    let (width, height) = (seen.width, seen.height);
    let (mut rim, mut sharp) = (0usize, 0usize);
    for at in &patch.pixels {
        let (x, y) = (at % width, at / width);
        let within = x == 0 || y == 0 || x + 1 == width || y + 1 == height;
        if !within && [at - 1, at + 1, at - width, at + width].iter().any(|near| !inside[*near]) {
            rim += 1;
            sharp += usize::from(edges[*at] > SHARP);
        }
    }
    sharp * 2 > rim
}

/// The rare colours of the print: each with those that are light and shade of the same thing, the commonest thing first.
fn things(seen: &Seen) -> Vec<Vec<u8>> {
    let colors = u8::try_from(seen.colors.len()).unwrap_or(u8::MAX);
    let of = |color: u8| &seen.colors[usize::from(color)];
    let share = |thing: &[u8]| thing.iter().map(|color| of(*color).share).sum::<f64>();
    let around = |one: u8, near: f64| -> Vec<u8> {
        (0..colors).filter(|other| ciede2000(of(one).lab, of(*other).lab) < near).collect()
    };
    let mut things: Vec<Vec<u8>> = ONE_THING
        .iter()
        .flat_map(|near| (0..colors).map(move |one| (one, *near)))
        .map(|(one, near)| around(one, near))
        .collect();
    things.retain(|thing| share(thing) <= RARE);
    things.sort_by(|one, other| share(other).total_cmp(&share(one)).then(one.cmp(other)));
    things.dedup();
    things
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
