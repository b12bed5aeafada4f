//! The few colours of a print, with their share of its area.

use std::collections::BTreeMap;

use crate::{Lab, Srgb, ciede2000};

/// One colour of a print.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Share {
    /// The colour, as sRGB.
    pub color: Srgb,
    /// The same, as CIELAB.
    pub lab: Lab,
    /// Its part of the area, 0 to 1.
    pub share: f64,
}

/// Colours nearer than this are one. `Chosen:` well over the 5 at which two papers are plainly not the same, since a print's
/// own colour wavers with its shading and with the camera.
const MERGED_BELOW: f64 = 7.0;
/// Colours of less area are given to their nearest. `Chosen:`.
const LEAST_SHARE: f64 = 0.01;
/// How many means start the search. `Chosen:` twice what a print is described by, so that a small colour gets its own.
const STARTS: usize = 16;
const ROUNDS: usize = 16;

/// The colours of a picture, largest area first (then lighter first), at most `most`.
///
/// Pixels are gathered in boxes of near colours; means are laid farthest first and moved to the middle of their colours
/// (k-means in CIELAB); means that are nearly the same colour are made one, the nearest pair first; what is left in specks
/// is given to its nearest. The same pixels in any order give the same colours.
///
/// # Shape
/// `pixels` in any order, all of the same area. Shares add up to 1. Empty for no pixels or `most` = 0.
///
/// # Source
/// Lloyd 1982, *IEEE Transactions on Information Theory* 28(2), 129–137; farthest-first starts: Gonzalez 1985, *Theoretical
/// Computer Science* 38, 293–306. Checked on pictures of known mixture in `tests/known_mixtures.rs`.
#[must_use]
pub fn palette_of(pixels: &[Srgb], most: usize) -> Vec<Share> {
    let boxes = gathered(pixels);
    if boxes.is_empty() || most == 0 {
        return Vec::new();
    }
    let mut groups = Groups::started(&boxes);
    groups.settle(&boxes);
    groups.merge(&boxes, most);
    groups.shares(&boxes)
}

/// A box of near colours: their mean, and how many pixels.
struct Gathered {
    lab: Lab,
    weight: f64,
}

#[allow(clippy::cast_precision_loss, reason = "pixel counts and sums are far below 2^52")]
fn gathered(pixels: &[Srgb]) -> Vec<Gathered> {
    let mut sums: BTreeMap<u16, [u64; 4]> = BTreeMap::new();
    for pixel in pixels {
        let key = u16::from(pixel.r >> 3) << 10 | u16::from(pixel.g >> 3) << 5 | u16::from(pixel.b >> 3);
        let sum = sums.entry(key).or_default();
        for (total, value) in sum.iter_mut().zip([u64::from(pixel.r), u64::from(pixel.g), u64::from(pixel.b), 1]) {
            *total += value;
        }
    }
    let all = pixels.len() as f64;
    let mean = |total: u64, count: u64| u8::try_from((total + count / 2) / count).unwrap_or(u8::MAX);
    sums.values()
        .map(|[r, g, b, count]| Gathered {
            lab: Lab::of(Srgb::new(mean(*r, *count), mean(*g, *count), mean(*b, *count))),
            weight: *count as f64 / all,
        })
        .collect()
}

/// Plain distance in CIELAB, squared.
fn apart(one: Lab, other: Lab) -> f64 {
    let [l, a, b] = [one.l - other.l, one.a - other.a, one.b - other.b];
    l * l + a * a + b * b
}

/// Means, and which mean each box belongs to.
struct Groups {
    means: Vec<Lab>,
    of: Vec<usize>,
}

impl Groups {
    /// The heaviest box, then again and again the one that stands farthest off for its weight.
    fn started(boxes: &[Gathered]) -> Self {
        let mut means: Vec<Lab> = Vec::new();
        let mut far = vec![f64::INFINITY; boxes.len()];
        while means.len() < STARTS {
            let pull = |at: usize| boxes[at].weight * far[at].min(1e6);
            let next = (0..boxes.len()).reduce(|best, at| if pull(at) > pull(best) { at } else { best });
            let Some(next) = next.filter(|at| pull(*at) > 0.0) else { break };
            means.push(boxes[next].lab);
            for (far, gathered) in far.iter_mut().zip(boxes) {
                *far = far.min(apart(gathered.lab, boxes[next].lab));
            }
        }
        Self { means, of: vec![0; boxes.len()] }
    }

    /// Gives every box to its nearest mean; tells whether any changed.
    fn assign(&mut self, boxes: &[Gathered]) -> bool {
        let mut changed = false;
        for (of, gathered) in self.of.iter_mut().zip(boxes) {
            let mut best = (f64::INFINITY, 0);
            for (at, mean) in self.means.iter().enumerate() {
                let far = apart(gathered.lab, *mean);
                if far < best.0 {
                    best = (far, at);
                }
            }
            changed |= *of != best.1;
            *of = best.1;
        }
        changed
    }

    /// Weight of each group, and its means moved to the middle; a group of nothing stays where it is.
    fn centre(&mut self, boxes: &[Gathered]) -> Vec<f64> {
        let mut sums = vec![[0.0; 4]; self.means.len()];
        for (of, gathered) in self.of.iter().zip(boxes) {
            let (lab, weight) = (gathered.lab, gathered.weight);
            for (sum, part) in sums[*of].iter_mut().zip([lab.l, lab.a, lab.b, 1.0]) {
                *sum += part * weight;
            }
        }
        for (mean, [l, a, b, weight]) in self.means.iter_mut().zip(&sums) {
            if *weight > 0.0 {
                *mean = Lab::new(l / weight, a / weight, b / weight);
            }
        }
        sums.iter().map(|sum| sum[3]).collect()
    }

    fn settle(&mut self, boxes: &[Gathered]) {
        self.assign(boxes);
        for _ in 0..ROUNDS {
            self.centre(boxes);
            if !self.assign(boxes) {
                break;
            }
        }
    }

    /// Makes near groups one, then gives specks to their nearest, until no more than `most` are left.
    fn merge(&mut self, boxes: &[Gathered], most: usize) {
        loop {
            let weights = self.centre(boxes);
            if self.means.len() < 2 {
                return;
            }
            let mut pair: Option<(f64, usize, usize)> = None;
            for one in 0..self.means.len() {
                for other in 0..one {
                    let delta_e = ciede2000(self.means[one], self.means[other]);
                    if pair.is_none_or(|(least, ..)| delta_e < least) {
                        pair = Some((delta_e, other, one));
                    }
                }
            }
            let near = pair.filter(|(delta_e, ..)| *delta_e < MERGED_BELOW);
            let speck = (0..weights.len()).reduce(|best, at| if weights[at] < weights[best] { at } else { best });
            let (into, gone) = match (near, speck) {
                (Some((_, into, gone)), _) => (into, gone),
                (None, Some(speck)) if weights[speck] < LEAST_SHARE || self.means.len() > most => {
                    let mut kin: Vec<usize> = (0..self.means.len()).filter(|at| *at != speck).collect();
                    let from = |at: &usize| ciede2000(self.means[*at], self.means[speck]);
                    kin.sort_by(|one, other| from(one).total_cmp(&from(other)));
                    (kin[0], speck)
                }
                _ => return,
            };
            for of in &mut self.of {
                if *of == gone {
                    *of = into;
                }
                *of -= usize::from(*of > gone);
            }
            self.means.remove(gone);
        }
    }

    fn shares(mut self, boxes: &[Gathered]) -> Vec<Share> {
        let weights = self.centre(boxes);
        let all = self.means.iter().zip(weights);
        let mut shares: Vec<Share> = all.map(|(lab, share)| Share { color: lab.srgb(), lab: *lab, share }).collect();
        shares.sort_by(|one, other| other.share.total_cmp(&one.share).then(other.lab.l.total_cmp(&one.lab.l)));
        shares
    }
}
