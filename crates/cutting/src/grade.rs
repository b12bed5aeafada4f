//! How good an answer is.

/// The grade of an answer. `W` says why something is impossible.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Outcome<W> {
    /// Nothing better exists; proven.
    Proven,
    /// The best found; nothing better than `bound` exists.
    Best {
        /// A proven bound in the measure of the question (least waste, fewest sheets, most value).
        bound: u64,
    },
    /// No answer exists; proven.
    Impossible {
        /// Why.
        why: W,
    },
    /// The budget ran out before an answer was found.
    Unfinished,
}
