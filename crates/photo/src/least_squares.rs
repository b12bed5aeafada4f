//! Least squares: sums over what was seen, then elimination.

/// Adds one observation to a normal system: what its `N` terms are, what they should add up to, and how much it counts.
/// A row is a term's sums with all terms and with the values, so that `W` is `N` + 1.
pub(crate) fn add<const N: usize, const W: usize>(rows: &mut [[f64; W]; N], terms: &[f64; N], value: f64, weight: f64) {
    for (row, of) in rows.iter_mut().zip(terms) {
        for (cell, with) in row.iter_mut().zip(terms.iter().chain([&value])) {
            *cell += weight * of * with;
        }
    }
}

/// The coefficients, by elimination; the system is symmetric and positive, so that it needs no pivots.
pub(crate) fn solved<const N: usize, const W: usize>(mut rows: [[f64; W]; N]) -> [f64; N] {
    for at in 0..N {
        let head = rows[at];
        for (other, row) in rows.iter_mut().enumerate() {
            if other != at {
                let times = row[at] / head[at];
                for (value, take) in row.iter_mut().zip(head).skip(at) {
                    *value -= times * take;
                }
            }
        }
    }
    std::array::from_fn(|at| rows[at][N] / rows[at][at])
}
