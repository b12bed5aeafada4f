//! Source: IEC 61966-2-1:1999 and ISO/CIE 11664-4 by way of `srgb_lab.csv` and `hex_delta_e.csv`, computed with coloraide
//! 8.13.1, colorjs.io 0.7.1 and culori 4.0.2, which agree to all digits shown. Held to 1e-4 in CIELAB (digits shown) and
//! to 1e-4 in ΔE₀₀ along the whole chain.
#![allow(clippy::unwrap_used, reason = "tests")]

use color::{Lab, ciede2000};

mod table;

#[test]
fn every_row_of_srgb_to_cielab_and_back() {
    let rows = table::rows(include_str!("data/srgb_lab.csv"));
    assert_eq!(rows.len(), 32);
    for row in rows {
        let color = table::hex(&row[1]);
        let lab = Lab::of(color);
        for (got, cell) in [lab.l, lab.a, lab.b].into_iter().zip(&row[5..8]) {
            assert!((got - table::number(cell)).abs() < 1e-4, "{}: {lab:?}", row[0]);
        }
        // WCAG's coefficients are those of the standard to 4 decimals.
        assert!((color.linear().luminance() - table::number(&row[3])).abs() < 5e-5, "{}", row[0]);
        assert_eq!(lab.srgb(), color, "{}", row[0]);
    }
}

/// What `lab … D50` of a bought card is read with. Cells have four decimals; the light of white is 1.
#[test]
fn every_row_of_cielab_under_d50_to_srgb() {
    for row in table::rows(include_str!("data/srgb_lab.csv")) {
        let [l, a, b] = [8, 9, 10].map(|cell: usize| table::number(&row[cell]));
        let light = Lab::new(l, a, b).light_from_d50();
        let wanted = table::hex(&row[1]).linear();
        for (got, wanted) in [(light.r, wanted.r), (light.g, wanted.g), (light.b, wanted.b)] {
            assert!((got - wanted).abs() < 1e-5, "{}: {light:?}", row[0]);
        }
        // And not what D65 would make of the same numbers, but for greys.
        let chroma = a.hypot(b);
        let apart = ciede2000(Lab::of_light(Lab::new(l, a, b).light()), Lab::of_light(light));
        assert!(chroma < 1.0 || apart > 0.2, "{}: {apart}", row[0]);
    }
}

#[test]
fn every_row_of_hex_to_difference() {
    let rows = table::rows(include_str!("data/hex_delta_e.csv"));
    assert_eq!(rows.len(), 20);
    for row in rows {
        let got = ciede2000(Lab::of(table::hex(&row[1])), Lab::of(table::hex(&row[2])));
        assert!((got - table::number(&row[3])).abs() < 1e-4, "row {}: {got}", row[0]);
    }
}
