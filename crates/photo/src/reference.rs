//! Colours put right by references: patches of the photo whose real colours are known.
//!
//! A printed or bought card of greys or colours lies beside the sheet; what the camera made of it against what it is gives a
//! map for the whole picture. The map is a value of its own; the photo is never changed.
//!
//! Left out on purpose: spectra. Two papers that look alike under one lamp and not under another cannot be told apart by a
//! camera, and no map of three numbers mends that.

use color::{Lab, LinearRgb, ciede2000};

use crate::least_squares::{add, solved};
use crate::light::{codes, light_of};
use crate::{Point, Raster};

/// A place of a photo with the colour that it has in truth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Patch {
    /// Its middle, in pixels of the upright photo, y down.
    pub at: Point,
    /// Half a side of the square that is looked at, in pixels.
    pub half: f64,
    /// What it is in truth; a little out of the range of screens is allowed.
    pub real: LinearRgb,
}

/// Why a patch is of no use.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Why {
    /// Part of it lies beyond the picture's edge.
    Outside,
    /// Under 25 pixels.
    Small,
    /// Too bright or too dark for the camera in more than one pixel of twenty.
    Clipped,
    /// Its pixels differ too much: an edge, a shadow or a shine runs through it.
    Uneven,
    /// Its real colour is no colour of a paper.
    Unreal,
    /// The patches together ask for more than four times, or less than a quarter, of a channel's light.
    Extreme,
}

/// The patch that spoils a correction.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("patch {patch} cannot be used: {why:?}")]
pub struct Spoilt {
    /// Its place in the list, from 0.
    pub patch: usize,
    /// What is wrong.
    pub why: Why,
}

/// How much a correction may do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    /// A factor for each channel of light.
    Gains,
    /// A factor and a constant for each: stray light too.
    Offset,
    /// Three by three numbers, held near the factors.
    Matrix,
}

/// Three rows: what red, green and blue light count, and a constant.
pub type Map = [[f64; 4]; 3];

/// What one patch is off by, in ΔE₀₀.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Off {
    /// As the camera saw it.
    pub before: f64,
    /// With the correction.
    pub after: f64,
}

/// A correction, and how well it does.
#[derive(Debug, Clone, PartialEq)]
pub struct Reference {
    map: Map,
    way: Way,
    seen: Vec<LinearRgb>,
    off: Vec<Off>,
    suspect: Option<usize>,
}

/// Pixels that a patch has at least. `Chosen:`.
const FEWEST: usize = 25;
/// Share of pixels that may be at the end of the camera's range. `Chosen:`.
const CLIPPED: f64 = 0.05;
/// Levels (of 255) by which pixels of a patch may stray, one standard deviation. `Chosen:` three times a phone's noise indoors, from memory.
const STRAY: f64 = 14.0;
/// Most that a channel is multiplied by; least is one over it. `Chosen:` two stops.
const MOST: f64 = 4.0;
/// Most light that is added or taken off. `Chosen:`.
const LIFT: f64 = 0.1;
/// Most that one channel counts in another. `Chosen:`.
const MIXED: f64 = 0.6;
/// Difference between the darkest and the brightest patch in a channel from which a constant can be told. `Chosen:`.
const APART: f64 = 0.1;
/// Patches from which a matrix is tried. `Chosen:` twice its columns.
const FOR_MATRIX: usize = 6;
/// How strongly the matrix is held to the factors, for each patch. `Chosen:`.
const RIDGE: f64 = 0.001;
/// A richer way is taken if its error on patches left out is so much of the plainer one's. `Chosen:`.
const BETTER: f64 = 0.95;

impl Way {
    /// The least-squares map of this way from what was seen to what is real, in linear light.
    ///
    /// `None` if there are too few patches, or they lie too near each other, or the map would be beyond the limits of factors (a quarter to
    /// four), constants (0.1) or mixing (0.6).
    #[must_use]
    pub fn fit(self, pairs: &[(LinearRgb, LinearRgb)]) -> Option<Map> {
        let pairs: Vec<([f64; 3], [f64; 3])> = pairs.iter().map(|(seen, real)| (parts(*seen), parts(*real))).collect();
        let map = match self {
            Self::Gains => gains(&pairs)?,
            Self::Offset => offsets(&pairs)?,
            Self::Matrix => matrix(&pairs)?,
        };
        let held = map.iter().enumerate().all(|(row, line)| {
            line.iter().enumerate().all(|(column, value)| match column {
                3 => value.abs() <= LIFT,
                _ if column == row => (1.0 / MOST..=MOST).contains(value),
                _ => value.abs() <= MIXED,
            })
        });
        held.then_some(map)
    }
}

impl Reference {
    /// The map that these patches ask for: factors for one patch, a constant too where two lie far enough apart, a matrix from
    /// six. A richer way is taken only if it does better on patches left out of the fit.
    ///
    /// # Errors
    /// The first patch that cannot be used, and why. An empty list is patch 0, [`Why::Extreme`].
    pub fn fitted(photo: &Raster, patches: &[Patch]) -> Result<Self, Spoilt> {
        let mut pairs = Vec::new();
        for (number, patch) in patches.iter().enumerate() {
            let spoilt = |why| Spoilt { patch: number, why };
            if !parts(patch.real).iter().all(|light| (-0.2..=1.3).contains(light)) {
                return Err(spoilt(Why::Unreal));
            }
            pairs.push((seen(photo, patch).map_err(spoilt)?, patch.real));
        }
        let plain = Way::Gains.fit(&pairs).ok_or_else(|| Spoilt { patch: farthest(&pairs), why: Why::Extreme })?;
        let (mut way, mut map) = (Way::Gains, plain);
        let mut least = mean(&left_out(Way::Gains, &pairs));
        for (richer, from) in [(Way::Offset, 2), (Way::Matrix, FOR_MATRIX)] {
            if pairs.len() < from {
                continue;
            }
            let Some(fit) = richer.fit(&pairs) else { continue };
            // Two patches leave none over to judge by: a constant then needs a plain gain on the two.
            let error = if pairs.len() == 2 { mean(&after(&fit, &pairs)) } else { mean(&left_out(richer, &pairs)) };
            if error < least * BETTER {
                (way, map, least) = (richer, fit, error);
            }
        }
        let identity = [[1.0, 0.0, 0.0, 0.0], [0.0, 1.0, 0.0, 0.0], [0.0, 0.0, 1.0, 0.0]];
        let off = after(&identity, &pairs).into_iter().zip(after(&map, &pairs));
        let off = off.map(|(before, after)| Off { before, after }).collect();
        let seen = pairs.iter().map(|(seen, _)| *seen).collect();
        Ok(Self { map, way, seen, off, suspect: suspect(&left_out(way, &pairs)) })
    }

    /// The picture with the correction; light beyond what a screen shows is held to it.
    #[must_use]
    pub fn applied(&self, picture: &Raster) -> Raster {
        let coded = codes();
        let rgb = picture.rgb().chunks_exact(3).flat_map(|pixel| {
            let light = mapped(&self.map, light_of([pixel[0], pixel[1], pixel[2]]));
            [light.r, light.g, light.b].map(&coded)
        });
        Raster::new(picture.width(), picture.height(), rgb.collect()).unwrap_or_else(|| picture.clone())
    }

    /// The map.
    #[must_use]
    pub fn map(&self) -> &Map {
        &self.map
    }

    /// Which way was taken.
    #[must_use]
    pub fn way(&self) -> Way {
        self.way
    }

    /// What the camera made of each patch, in their order.
    #[must_use]
    pub fn seen(&self) -> &[LinearRgb] {
        &self.seen
    }

    /// What the correction makes of a colour; a little out of the range of screens where it is so.
    #[must_use]
    pub fn corrected(&self, seen: LinearRgb) -> LinearRgb {
        mapped(&self.map, seen)
    }

    /// What each patch is off by, in their order.
    #[must_use]
    pub fn off(&self) -> &[Off] {
        &self.off
    }

    /// What the patches are off by in the mean.
    #[must_use]
    pub fn mean(&self) -> Off {
        let of = |part: fn(&Off) -> f64| mean(&self.off.iter().map(part).collect::<Vec<_>>());
        Off { before: of(|off| off.before), after: of(|off| off.after) }
    }

    /// A patch that the others do not bear out: perhaps a shine, a shadow, or a slip of typing.
    #[must_use]
    pub fn suspect(&self) -> Option<usize> {
        self.suspect
    }
}

fn parts(light: LinearRgb) -> [f64; 3] {
    [light.r, light.g, light.b]
}

fn mapped(map: &Map, light: LinearRgb) -> LinearRgb {
    let [r, g, b] = map.map(|row| row[0] * light.r + row[1] * light.g + row[2] * light.b + row[3]);
    LinearRgb { r, g, b }
}

#[allow(clippy::cast_precision_loss, reason = "a count of patches or pixels")]
fn mean(values: &[f64]) -> f64 {
    if values.is_empty() { 0.0 } else { values.iter().sum::<f64>() / values.len() as f64 }
}

/// The mean light of a patch.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "held to the picture"
)]
fn seen(photo: &Raster, patch: &Patch) -> Result<LinearRgb, Why> {
    let (w, h) = (photo.width() as f64, photo.height() as f64);
    let Patch { at, half, .. } = *patch;
    let inside = at.x - half >= 0.0 && at.y - half >= 0.0 && at.x + half <= w && at.y + half <= h;
    if !inside {
        return Err(Why::Outside);
    }
    let (x0, x1) = ((at.x - half) as usize, (at.x + half) as usize);
    let (y0, y1) = ((at.y - half) as usize, (at.y + half) as usize);
    let count = x1.saturating_sub(x0) * y1.saturating_sub(y0);
    if count < FEWEST {
        return Err(Why::Small);
    }
    let (mut light, mut sum, mut squares, mut clipped) = ([0.0; 3], [0.0; 3], [0.0; 3], 0usize);
    for y in y0..y1 {
        for x in x0..x1 {
            let pixel = photo.pixel(x, y);
            clipped += usize::from(pixel.iter().any(|value| *value >= 254 || *value <= 1));
            let of = parts(light_of(pixel));
            for channel in 0..3 {
                let level = f64::from(pixel[channel]);
                light[channel] += of[channel];
                sum[channel] += level;
                squares[channel] += level * level;
            }
        }
    }
    let n = count as f64;
    if clipped as f64 > CLIPPED * n {
        return Err(Why::Clipped);
    }
    if sum.iter().zip(squares).any(|(sum, squares)| squares / n - (sum / n) * (sum / n) > STRAY * STRAY) {
        return Err(Why::Uneven);
    }
    let [r, g, b] = light.map(|light| light / n);
    Ok(LinearRgb { r, g, b })
}

/// The pair whose light is farthest from what it should be, as a factor.
fn farthest(pairs: &[(LinearRgb, LinearRgb)]) -> usize {
    let far = |(seen, real): &(LinearRgb, LinearRgb)| {
        let pair = parts(*seen).into_iter().zip(parts(*real));
        pair.map(|(seen, real)| libm::log((real.max(1e-4)) / seen.max(1e-4)).abs()).fold(0.0_f64, f64::max)
    };
    let most = pairs.iter().enumerate().max_by(|(_, one), (_, other)| far(one).total_cmp(&far(other)));
    most.map_or(0, |(number, _)| number)
}

fn gains(pairs: &[([f64; 3], [f64; 3])]) -> Option<Map> {
    let mut map = [[0.0; 4]; 3];
    for (channel, row) in map.iter_mut().enumerate() {
        let (with, own) = pairs.iter().fold((0.0, 0.0), |(with, own), (seen, real)| {
            (with + seen[channel] * real[channel], own + seen[channel] * seen[channel])
        });
        row[channel] = (own > 0.0).then(|| with / own)?;
    }
    Some(map)
}

#[allow(clippy::cast_precision_loss, reason = "a count of patches")]
fn offsets(pairs: &[([f64; 3], [f64; 3])]) -> Option<Map> {
    let n = pairs.len() as f64;
    let mut map = [[0.0; 4]; 3];
    for (channel, row) in map.iter_mut().enumerate() {
        let all = || pairs.iter().map(|(seen, real)| (seen[channel], real[channel]));
        let least = all().map(|(seen, _)| seen).fold(f64::INFINITY, f64::min);
        let most = all().map(|(seen, _)| seen).fold(f64::NEG_INFINITY, f64::max);
        if most - least < APART || pairs.len() < 2 {
            return None;
        }
        let (x, y) = all().fold((0.0, 0.0), |(x, y), (seen, real)| (x + seen / n, y + real / n));
        let (with, own) = all().fold((0.0, 0.0), |(with, own), (seen, real)| {
            (with + (seen - x) * (real - y), own + (seen - x) * (seen - x))
        });
        row[channel] = with / own;
        row[3] = y - row[channel] * x;
    }
    Some(map)
}

/// Each row for itself: least squares with a pull to the row of factors.
#[allow(clippy::cast_precision_loss, reason = "a count of patches")]
fn matrix(pairs: &[([f64; 3], [f64; 3])]) -> Option<Map> {
    let plain = gains(pairs)?;
    let pull = RIDGE * pairs.len() as f64;
    let mut map = [[0.0; 4]; 3];
    for (channel, row) in map.iter_mut().enumerate() {
        let mut system = [[0.0; 4]; 3];
        for (seen, real) in pairs {
            add(&mut system, seen, real[channel], 1.0);
        }
        for (at, line) in system.iter_mut().enumerate() {
            line[at] += pull;
            line[3] += pull * plain[channel][at];
        }
        row[..3].copy_from_slice(&solved(system));
    }
    Some(map)
}

/// ΔE₀₀ of every pair with a map.
fn after(map: &Map, pairs: &[(LinearRgb, LinearRgb)]) -> Vec<f64> {
    pairs.iter().map(|(seen, real)| apart(mapped(map, *seen), *real)).collect()
}

fn apart(one: LinearRgb, other: LinearRgb) -> f64 {
    ciede2000(Lab::of_light(one), Lab::of_light(other))
}

/// ΔE₀₀ of every pair with the map of all the others; infinite where the others give none. Of a single pair: itself.
fn left_out(way: Way, pairs: &[(LinearRgb, LinearRgb)]) -> Vec<f64> {
    if pairs.len() < 2 {
        return way.fit(pairs).map(|map| after(&map, pairs)).unwrap_or_default();
    }
    let without = |number: usize| {
        let others: Vec<_> = pairs.iter().enumerate().filter(|(at, _)| *at != number).map(|(_, pair)| *pair).collect();
        let (seen, real) = pairs[number];
        way.fit(&others).map_or(f64::INFINITY, |map| apart(mapped(&map, seen), real))
    };
    (0..pairs.len()).map(without).collect()
}

/// The one that is off by more than 8 and by three times the middle of all, of at least four. `Chosen:`.
fn suspect(left_out: &[f64]) -> Option<usize> {
    let mut sorted = left_out.to_vec();
    sorted.sort_by(f64::total_cmp);
    let middle = (sorted.len() >= 4).then(|| sorted[(sorted.len() - 1) / 2])?;
    let (number, worst) = left_out.iter().enumerate().max_by(|(_, one), (_, other)| one.total_cmp(other))?;
    (*worst > 8.0 && *worst > 3.0 * middle).then_some(number)
}
