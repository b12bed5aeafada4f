//! Motifs placed evenly on a sheet by their ink: toss, grid, brick, half-drop, diagonal.
//!
//! | module | offers |
//! |---|---|
//! | `outline` | the edge of a motif's ink: distance, overlap, the share inside a sheet |
//! | `trace` | an outline out of a mask of inked and blank pixels |
//! | `ask` | what a maker wishes, and what is wrong with a wish |
//! | `place` | the sheet that answers a wish |
//! | `shove` | one impression moved by hand, and the rest making room |
//! | `hand` | what small slips of a hand do to the distances |
//!
//! Places and sizes are exact lengths; the geometry between them is reckoned in millimetres as floats and every
//! place is rounded to 1/100 mm before it is checked. Same wish and same seed, same sheet, on every machine.
//!
//! Left out on purpose: cards, papers, colours, how a motif is drawn.

mod ask;
mod hand;
mod lattice;
mod outline;
mod place;
mod room;
mod shove;
mod toss;
mod trace;

pub use ask::{Arrangement, EdgeRule, MOST_MOTIFS, Motif, Placement, ScatterError, Turning, Wish};
pub use hand::{Askew, Loosened, Slip, by_hand, worst_by_hand};
pub use outline::{MOST_CORNERS, MOST_PATCHES, Outline, OutlineError, apart, distance};
pub use place::{Scattering, Shortfall, scatter};
pub use shove::{MoveError, make_room};
pub use trace::{Mask, TraceError, trace};
