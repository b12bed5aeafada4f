//! How sure a figure of a table is.

/// Where a row of a table comes from; the source itself stands beside it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Basis {
    /// Read in the source named.
    Read,
    /// Follows from other figures by exact arithmetic.
    Computed,
    /// Common practice of the trade; nobody publishes it as a standard.
    CommonPractice,
    /// From memory: to be measured before anything is cut by it.
    FromMemory,
}
