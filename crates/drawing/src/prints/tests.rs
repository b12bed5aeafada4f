//! What every print must be: the same each time, its true size, and its own.
#![allow(clippy::unwrap_used, reason = "tests")]

use std::collections::BTreeSet;

use measure::{Length, Size};

use super::{Pixels, draw, names, panels};

const PPI: u32 = 40;

fn inches(width: i64, height: i64) -> Size {
    Size::new(Length::inches(width, 1).unwrap(), Length::inches(height, 1).unwrap())
}

fn pixel(face: &Pixels, x: u32, y: u32) -> &[u8] {
    let at = (y * face.width_px + x) as usize * 3;
    &face.rgb[at..at + 3]
}

/// Mean difference of a channel between two faces.
fn difference(a: &[u8], b: &[u8]) -> f64 {
    a.iter().zip(b).map(|(a, b)| f64::from(a.abs_diff(*b))).sum::<f64>() / a.len() as f64
}

#[test]
fn the_same_seed_gives_the_same_bytes_and_another_seed_others() {
    for name in names() {
        let face = draw(name, inches(5, 4), PPI, 3).unwrap();
        assert_eq!(face, draw(name, inches(5, 4), PPI, 3).unwrap(), "{name}");
        assert_ne!(face, draw(name, inches(5, 4), PPI, 4).unwrap(), "{name}");
    }
}

#[test]
fn the_pixels_are_the_size_asked_for() {
    let half = Size::new(Length::inches(9, 2).unwrap(), Length::inches(3, 1).unwrap());
    for name in names() {
        let face = draw(name, half, 30, 1).unwrap();
        assert_eq!((face.width_px, face.height_px, face.rgb.len()), (135, 90, 135 * 90 * 3), "{name}");
    }
}

#[test]
fn no_print_is_blank() {
    for name in names() {
        let face = draw(name, inches(6, 6), PPI, 1).unwrap();
        let tones: BTreeSet<&[u8]> = face.rgb.chunks_exact(3).collect();
        assert!(tones.len() > 24, "{name}: {}", tones.len());
    }
}

#[test]
fn a_one_way_print_is_not_itself_upside_down() {
    for name in ["quince-branch", "sprigs", "dusk-leaf", "recipe-cards"] {
        let face = draw(name, inches(6, 6), PPI, 1).unwrap();
        let turned: Vec<u8> = face.rgb.chunks_exact(3).rev().flatten().copied().collect();
        assert!(difference(&face.rgb, &turned) > 6.0, "{name}: {}", difference(&face.rgb, &turned));
    }
}

#[test]
fn panel_edges_lie_on_the_panel_grid() {
    let grid = panels("recipe-cards").unwrap();
    assert_eq!((grid.panel, grid.across, grid.down), (inches(3, 4), 4, 3));
    let face = draw("recipe-cards", inches(12, 12), PPI, 1).unwrap();
    // Every column line: the share of pixels whose colour jumps from the pixel left of it.
    let jump = |a: &[u8], b: &[u8]| a.iter().zip(b).map(|(a, b)| u32::from(a.abs_diff(*b))).sum::<u32>() > 12;
    for row in 0..grid.down {
        for line in 1..grid.across {
            let x = line * 3 * PPI;
            let (top, bottom) = (row * 4 * PPI, (row + 1) * 4 * PPI);
            let jumps = (top..bottom).filter(|y| jump(pixel(&face, x, *y), pixel(&face, x - 1, *y))).count();
            assert!(jumps * 100 > 80 * (4 * PPI) as usize, "row {row}, line {line}: {jumps}");
        }
    }
    for column in 0..grid.across {
        for line in 1..grid.down {
            let y = line * 4 * PPI;
            let (left, right) = (column * 3 * PPI, (column + 1) * 3 * PPI);
            let jumps = (left..right).filter(|x| jump(pixel(&face, *x, y), pixel(&face, *x, y - 1))).count();
            assert!(jumps * 100 > 80 * (3 * PPI) as usize, "column {column}, line {line}: {jumps}");
        }
    }
}

#[test]
fn a_smaller_sheet_of_a_collage_shows_the_same_first_panel() {
    let (large, small) =
        (draw("recipe-cards", inches(12, 12), PPI, 1).unwrap(), draw("recipe-cards", inches(6, 6), PPI, 1).unwrap());
    for y in 0..4 * PPI {
        for x in 0..3 * PPI {
            assert_eq!(pixel(&large, x, y), pixel(&small, x, y));
        }
    }
}

#[test]
fn an_unknown_name_or_an_impossible_size_draws_nothing() {
    assert_eq!(draw("no-such-print", inches(6, 6), PPI, 1), None);
    assert_eq!(draw("tea-dot", inches(0, 6), PPI, 1), None);
    assert_eq!(draw("tea-dot", inches(6, 6), 0, 1), None);
    assert_eq!(draw("tea-dot", inches(6, 6), 1_000_000, 1), None);
    assert_eq!(panels("tea-dot"), None);
}
