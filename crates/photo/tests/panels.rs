//! Printed panels on twenty small sheets of known geometry; the table in `docs/photo.md` is `examples/panels_table.rs`.
#![allow(clippy::unwrap_used, reason = "tests")]
#![allow(clippy::cast_precision_loss, reason = "counts")]

use photo::{Panel, Raster, find_panels};

#[path = "common/collages.rs"]
mod collages;

#[test]
fn twenty_sheets() {
    let (mut good, mut found, mut all) = (0, 0, 0);
    for seed in 7_000..7_020 {
        let (picture, truth) = collages::collage(seed, 32, collages::MODERATE);
        let seen = find_panels(&picture);
        good += collages::right(&seen, &truth);
        (found, all) = (found + seen.len(), all + truth.len());
    }
    assert!(good as f64 >= 0.9 * found as f64, "{good} right of {found} found");
    assert!(good as f64 >= 0.9 * all as f64, "{good} right of {all} there");
}

#[test]
fn a_sheet_of_one_print_is_one_panel() {
    let whole = [Panel { left: 0.0, top: 0.0, right: 1.0, bottom: 1.0 }];
    assert_eq!(find_panels(&Raster::new(300, 300, vec![180; 300 * 300 * 3]).unwrap()), whole);
    assert_eq!(find_panels(&Raster::new(3, 2, vec![9; 18]).unwrap()), whole);
    let stripes = (0..300 * 300).flat_map(|at| if at % 300 / 10 % 2 == 0 { [200, 180, 170] } else { [90, 120, 140] });
    assert_eq!(find_panels(&Raster::new(300, 300, stripes.collect()).unwrap()), whole);
}

#[test]
fn a_margin_without_gaps_belongs_to_no_panel() {
    // Four checked prints that meet in the middle, in a pale margin of 20 pixels.
    let color = |x: usize, y: usize| {
        if !(20..580).contains(&x) || !(20..580).contains(&y) {
            return [244, 242, 238];
        }
        let inks = [[210, 90, 90], [90, 160, 90], [90, 110, 200], [200, 170, 70]];
        let [red, green, blue] = inks[usize::from(x >= 300) + 2 * usize::from(y >= 300)];
        if (x / 9 + y / 9).is_multiple_of(2) { [red, green, blue] } else { [red / 2, green / 2, blue / 2] }
    };
    let rgb = (0..600 * 600).flat_map(|at| color(at % 600, at / 600)).collect();
    let found = find_panels(&Raster::new(600, 600, rgb).unwrap());
    let at = |from: f64, to: f64| [from / 600.0, to / 600.0];
    let halves = [at(20.0, 300.0), at(300.0, 580.0)];
    let truth: Vec<Panel> = halves
        .iter()
        .flat_map(|[top, bottom]| {
            halves.iter().map(|[left, right]| Panel { left: *left, top: *top, right: *right, bottom: *bottom })
        })
        .collect();
    assert!(found.len() == 4 && collages::right(&found, &truth) == 4, "{found:.3?}");
}
