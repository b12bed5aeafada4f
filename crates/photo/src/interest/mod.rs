//! Where the interest of a print lies: a plain grid of weights over a straight picture, and the boxes of its motifs.
//!
//! | part | what it says | from |
//! |---|---|---|
//! | edge | something is drawn here | how fast the colour changes from pixel to pixel |
//! | distinct | this colour stands out from the sheet's own | its distance from every colour of the print, weighted by their area |
//! | motif | this belongs to a picture that should stay whole | connected patches that are not ground (`motifs`) |
//!
//! All three can be told for every cell. Left out on purpose: learned weights, faces, what a maker likes; she can mark parts
//! herself, and those weigh more than anything here.

mod motifs;

use color::{Lab, Share, Srgb, ciede2000, palette_of};

use crate::Raster;

/// Weights over a sheet, cell by cell.
#[derive(Debug, Clone, PartialEq)]
pub struct Interest {
    columns: usize,
    rows: usize,
    weights: Vec<u16>,
    reasons: Vec<Reasons>,
    motifs: Vec<Motif>,
}

/// Why a cell weighs what it weighs: each from 0 (nothing) to 255.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Reasons {
    /// How fast colours change in it.
    pub edge: u8,
    /// How far its colours stand from the print's usual ones.
    pub distinct: u8,
    /// How much of it belongs to a motif, large motifs counting more.
    pub motif: u8,
}

/// A picture on the sheet that should stay whole: its box, in cells.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Motif {
    /// First column.
    pub left: usize,
    /// First row.
    pub top: usize,
    /// Column after its last.
    pub right: usize,
    /// Row after its last.
    pub bottom: usize,
    /// What it is worth to keep it whole, 1 to 1000: large pictures in colours of their own most.
    pub weight: u16,
}

/// Most columns or rows of a grid. `Chosen:` a sheet of 24 in in marks of 1/64.
pub const MOST_CELLS: usize = 1_536;
/// Longest side of the picture that is looked at. `Chosen:` 25 pixels an inch of a 12 in sheet.
const SEEN: usize = 300;
/// What a cell weighs at most.
const WHOLE: f32 = 1000.0;
/// Shares of edge, distinctness and motif in a cell's weight. `Chosen:` a motif's inside may be calm and its colour common, so
/// that none of them may count alone.
const PARTS: [f32; 3] = [0.3, 0.3, 0.4];
/// A change of colour from one pixel to the next (CIELAB) that counts as a full edge. `Chosen:`.
const FULL_EDGE: f32 = 12.0;
/// A mean distance from the print's colours (ΔE₀₀) that counts as fully distinct. `Chosen:`.
const FULLY_DISTINCT: f64 = 40.0;

impl Interest {
    /// The interest of a straight picture in a grid of so many columns and rows; `motif_cells` is how many cells a motif is
    /// long at least.
    ///
    /// # Shape
    /// The grid covers the whole picture; with columns and rows the sheet's size in the maker's marks, a cell is a mark.
    /// Columns and rows are held to 1–1536. The same picture gives the same weights on every machine.
    ///
    /// # Source
    /// Distinctness: Cheng, Zhang, Mitra, Huang, Hu 2011, *CVPR*, 409–416, equation 3 (contrast of a colour with the
    /// histogram of the picture), with the print's palette for the histogram. The rest is `Chosen:`; measured on sheets of
    /// known motifs in `tests/interest.rs`.
    #[must_use]
    pub fn of(picture: &Raster, columns: usize, rows: usize, motif_cells: f64) -> Self {
        let (columns, rows) = (columns.clamp(1, MOST_CELLS), rows.clamp(1, MOST_CELLS));
        let (small, _) = picture.shrunk(SEEN);
        let seen = Seen::of(&small);
        let cell = f(seen.width) / f(columns).max(1.0);
        let least = if motif_cells.is_finite() { (motif_cells * cell).max(4.0) } else { 4.0 };
        let edges = seen.edges();
        let patches = motifs::found(&seen, &edges, least);
        let mut worth = vec![0.0_f32; seen.class.len()];
        let mut boxes = Vec::new();
        for patch in &patches {
            let value = seen.worth(patch, least);
            for at in &patch.pixels {
                worth[*at] = worth[*at].max(value);
            }
            boxes.push(boxed(patch, &seen, columns, rows, value));
        }
        boxes.sort();
        let reasons: Vec<Reasons> = (0..rows * columns)
            .map(|at| {
                let across = span(at % columns, columns, seen.width);
                let down = span(at / columns, rows, seen.height);
                seen.reasons(across, down, &edges, &worth)
            })
            .collect();
        let weights = reasons.iter().map(weight).collect();
        Self { columns, rows, weights, reasons, motifs: boxes }
    }

    /// Cells across.
    #[must_use]
    pub fn columns(&self) -> usize {
        self.columns
    }

    /// Cells down.
    #[must_use]
    pub fn rows(&self) -> usize {
        self.rows
    }

    /// The weights, 0 to 1000, row by row from the top left.
    #[must_use]
    pub fn weights(&self) -> &[u16] {
        &self.weights
    }

    /// Why each cell weighs so, in the same order.
    #[must_use]
    pub fn reasons(&self) -> &[Reasons] {
        &self.reasons
    }

    /// The motifs, from the left, then from the top.
    #[must_use]
    pub fn motifs(&self) -> &[Motif] {
        &self.motifs
    }
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 1000")]
fn weight(of: &Reasons) -> u16 {
    let parts = [of.edge, of.distinct, of.motif].map(|part| f32::from(part) / 255.0);
    let sum: f32 = parts.iter().zip(PARTS).map(|(part, share)| part * share).sum();
    libm::roundf(sum.clamp(0.0, 1.0) * WHOLE) as u16
}

#[allow(clippy::cast_precision_loss, reason = "small pictures")]
fn f(count: usize) -> f64 {
    count as f64
}

/// The pixels of one cell along a side, at least one.
fn span(cell: usize, cells: usize, pixels: usize) -> std::ops::Range<usize> {
    let from = (cell * pixels / cells).min(pixels - 1);
    from..((cell + 1) * pixels / cells).clamp(from + 1, pixels)
}

/// A patch's box, in cells; half a pixel at its rim is no more than the blur of the edge.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within the grid")]
fn boxed(patch: &motifs::Patch, seen: &Seen, columns: usize, rows: usize, worth: f32) -> Motif {
    let low = |pixel: usize, cells: usize, pixels: usize| ((f(pixel) + 0.5) * f(cells) / f(pixels)) as usize;
    let high = |pixel: usize, cells: usize, pixels: usize| {
        (libm::ceil((f(pixel) - 0.5) * f(cells) / f(pixels)) as usize).clamp(1, cells)
    };
    let (left, top) = (low(patch.left, columns, seen.width), low(patch.top, rows, seen.height));
    Motif {
        left,
        top,
        right: high(patch.right, columns, seen.width).max(left + 1),
        bottom: high(patch.bottom, rows, seen.height).max(top + 1),
        weight: libm::roundf(worth * WHOLE).clamp(1.0, WHOLE) as u16,
    }
}

/// A small picture, its colours, and which of them each pixel is.
#[derive(Debug)]
struct Seen {
    width: usize,
    height: usize,
    labs: Vec<[f32; 3]>,
    class: Vec<u8>,
    /// The colours that are told apart, with their shares.
    colors: Vec<Share>,
    /// How much each colour of the print stands out, 0 to 1.
    distinct: Vec<f32>,
}

/// Most colours of a print that are told apart here.
const COLORS: usize = 10;

impl Seen {
    #[allow(clippy::cast_possible_truncation, reason = "colours as single floats")]
    fn of(picture: &Raster) -> Self {
        let calm = calmed(picture);
        let (width, height) = (calm.width(), calm.height());
        let pixels: Vec<Srgb> = calm.rgb().chunks_exact(3).map(|p| Srgb::new(p[0], p[1], p[2])).collect();
        let colors = palette_of(&pixels, COLORS);
        let mut labs = Vec::with_capacity(pixels.len());
        let mut class = Vec::with_capacity(pixels.len());
        let mut last = (Srgb::new(0, 0, 0), None);
        for pixel in &pixels {
            // Neighbours are often alike to the last bit.
            let lab = match last {
                (color, Some(lab)) if color == *pixel => lab,
                _ => Lab::of(*pixel),
            };
            last = (*pixel, Some(lab));
            labs.push([lab.l as f32, lab.a as f32, lab.b as f32]);
            class.push(nearest(lab, &colors));
        }
        let distinct = colors.iter().map(|one| {
            let far: f64 = colors.iter().map(|other| other.share * ciede2000(one.lab, other.lab)).sum();
            (far / FULLY_DISTINCT).min(1.0) as f32
        });
        let distinct = distinct.collect();
        Self { width, height, labs, class, colors, distinct }
    }

    /// How fast the colour changes at each pixel, 0 to 1.
    fn edges(&self) -> Vec<f32> {
        let mut out = Vec::with_capacity(self.labs.len());
        for y in 0..self.height {
            for x in 0..self.width {
                let at = |x: usize, y: usize| self.labs[y * self.width + x];
                let (right, below) = ((x + 1).min(self.width - 1), (y + 1).min(self.height - 1));
                let across = difference(at(right, y), at(x.saturating_sub(1), y));
                let down = difference(at(x, below), at(x, y.saturating_sub(1)));
                out.push((libm::sqrtf(across + down) / 2.0 / FULL_EDGE).min(1.0));
            }
        }
        out
    }

    /// What it is worth to keep a patch whole, 0 to 1: its colours' distinctness and its length, full from four times the
    /// least length on.
    #[allow(clippy::cast_precision_loss, clippy::cast_possible_truncation, reason = "pixel counts")]
    fn worth(&self, patch: &motifs::Patch, least: f64) -> f32 {
        let long = f((patch.right - patch.left).max(patch.bottom - patch.top));
        let size = (long / (4.0 * least)).min(1.0) as f32;
        let sum: f32 = patch.pixels.iter().map(|at| self.distinct[usize::from(self.class[*at])]).sum();
        let stands_out = sum / patch.pixels.len().max(1) as f32;
        size * (0.4 + 0.6 * stands_out)
    }

    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss, reason = "0 to 255")]
    fn reasons(
        &self,
        across: std::ops::Range<usize>,
        down: std::ops::Range<usize>,
        edges: &[f32],
        worth: &[f32],
    ) -> Reasons {
        let mut sums = [0.0_f32; 3];
        let count = (across.len() * down.len()) as f32;
        for y in down {
            for at in y * self.width + across.start..y * self.width + across.end {
                let parts = [edges[at], self.distinct[usize::from(self.class[at])], worth[at]];
                for (sum, part) in sums.iter_mut().zip(parts) {
                    *sum += part;
                }
            }
        }
        let [edge, distinct, motif] = sums.map(|sum| libm::roundf((sum / count).clamp(0.0, 1.0) * 255.0) as u8);
        Reasons { edge, distinct, motif }
    }
}

fn difference(one: [f32; 3], other: [f32; 3]) -> f32 {
    one.iter().zip(other).map(|(a, b)| (a - b) * (a - b)).sum()
}

fn nearest(lab: Lab, colors: &[Share]) -> u8 {
    let far = |of: &Share| {
        let [l, a, b] = [of.lab.l - lab.l, of.lab.a - lab.a, of.lab.b - lab.b];
        l * l + a * a + b * b
    };
    let best = (0..colors.len()).reduce(|best, at| if far(&colors[at]) < far(&colors[best]) { at } else { best });
    u8::try_from(best.unwrap_or(0)).unwrap_or(0)
}

/// The mean of each pixel and its eight neighbours: a camera's noise is no print.
fn calmed(picture: &Raster) -> Raster {
    let (w, h) = (picture.width(), picture.height());
    let mut rgb = Vec::with_capacity(w * h * 3);
    for y in 0..h {
        for x in 0..w {
            let mut sum = [0u16; 3];
            for down in [y.saturating_sub(1), y, y + 1] {
                for across in [x.saturating_sub(1), x, x + 1] {
                    for (sum, value) in sum.iter_mut().zip(picture.pixel(across, down)) {
                        *sum += u16::from(value);
                    }
                }
            }
            rgb.extend(sum.map(|sum| u8::try_from((sum + 4) / 9).unwrap_or(u8::MAX)));
        }
    }
    Raster::new(w, h, rgb).unwrap_or_else(|| picture.clone())
}
