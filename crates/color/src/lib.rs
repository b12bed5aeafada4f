//! Light as numbers: what a printed or dyed paper's colour is, how far two are apart, what can be read on what.
//!
//! | module | offers |
//! |---|---|
//! | `srgb`, `lab` | the values, and the ways between them |
//! | `difference` | CIEDE2000, and the words for how near two colours are |
//! | `contrast` | contrast ratio; what a stamped ink leaves to read on plain and on patterned ground |
//! | `palette` | the few colours of a print, with their share of its area |
//! | `pairings` | which of a list of papers matches, goes tone on tone, stands out, or stays quiet |
//! | `sight` | the same colours as people with a colour-vision deficiency may see them |
//!
//! Left out on purpose: lengths, files, the names of shop colours. A camera's colours are not the paper's; nothing here
//! can know the lamp they were seen under.

mod contrast;
mod difference;
mod lab;
mod pairings;
mod palette;
mod sight;
mod srgb;

pub use contrast::{Ground, contrast_ratio, legible_on, stamped};
pub use difference::{Nearness, ciede2000, nearest};
pub use lab::Lab;
pub use pairings::{Pairing, pair};
pub use palette::{Share, palette_of};
pub use sight::{Sight, matrix_of, seen_by};
pub use srgb::{LinearRgb, Srgb};
