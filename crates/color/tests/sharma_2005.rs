//! Source: G. Sharma, W. Wu, E. N. Dalal, The CIEDE2000 color-difference formula: implementation notes, supplementary test
//! data, and mathematical observations, Color Research & Application 30(1), 21–30, 2005, Table 1. Held to 4 decimals as
//! published; the two rows on the discontinuity of the mean hue may give the other branch's value.
#![allow(clippy::unwrap_used, reason = "tests")]

use color::{Lab, ciede2000};

mod table;

#[test]
fn all_34_pairs_to_4_decimals() {
    let rows = table::rows(include_str!("data/ciede2000_sharma2005.csv"));
    assert_eq!(rows.len(), 34);
    let mut on_the_edge = 0;
    for row in rows {
        let at = |cell: usize| table::number(&row[cell]);
        let (one, other) = (Lab::new(at(1), at(2), at(3)), Lab::new(at(4), at(5), at(6)));
        for got in [ciede2000(one, other), ciede2000(other, one)] {
            let mut wanted = vec![at(7)];
            if row[8] == "hue180" {
                wanted.push(at(9));
                on_the_edge += 1;
            }
            assert!(wanted.iter().any(|wanted| (got - wanted).abs() < 5.01e-5), "pair {}: {got}", row[0]);
        }
    }
    assert_eq!(on_the_edge, 4);
}
