//! Source: W3C, Web Content Accessibility Guidelines (WCAG) 2.2, 2023; ratios of `wcag_contrast.csv` computed with
//! coloraide (wcag21). Held to 4 decimals, and the thresholds to what each row says.
#![allow(clippy::unwrap_used, reason = "tests")]

use color::contrast_ratio;

mod table;

#[test]
fn every_row_of_contrast() {
    let rows = table::rows(include_str!("data/wcag_contrast.csv"));
    assert_eq!(rows.len(), 20);
    for row in rows {
        let (front, back) = (table::hex(&row[1]), table::hex(&row[2]));
        for got in [contrast_ratio(front, back), contrast_ratio(back, front)] {
            assert!((got - table::number(&row[3])).abs() < 5.01e-5, "row {}: {got}", row[0]);
            for (least, cell) in [(4.5, 4), (3.0, 5), (7.0, 6)] {
                assert_eq!(if got >= least { "pass" } else { "fail" }, row[cell], "row {}", row[0]);
            }
        }
    }
}
