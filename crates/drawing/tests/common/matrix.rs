//! Transformation matrices of a PDF page, as its operators multiply them (ISO 32000-1, 8.3.4, from memory).

/// What a new matrix makes of the one before it: the operand of `cm`, then the matrix in force.
pub(crate) fn product(a: &[f64], b: [f64; 6]) -> [f64; 6] {
    [
        a[0] * b[0] + a[1] * b[2],
        a[0] * b[1] + a[1] * b[3],
        a[2] * b[0] + a[3] * b[2],
        a[2] * b[1] + a[3] * b[3],
        a[4] * b[0] + a[5] * b[2] + b[4],
        a[4] * b[1] + a[5] * b[3] + b[5],
    ]
}
