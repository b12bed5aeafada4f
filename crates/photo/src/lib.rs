//! Pixels of a maker's own paper: from a phone photo taken at an angle to a straight picture of the sheet.
//!
//! | module | offers |
//! |---|---|
//! | `raster` | upright pixels, made smaller |
//! | `homography` | the map between a photo's plane and the sheet's |
//! | `corners` | the four corners of the sheet, found by themselves, with a confidence |
//! | `square` | four corners → a straight picture of a chosen size |
//! | `interest` | a grid of weights over a straight picture, and the boxes of its motifs |
//! | `panels` | the rectangles a collage sheet is printed as |
//! | `reference` | colours put right by patches whose real colours are known |
//! | `light` | gentle corrections that can be taken back: uneven light, white balance |
//!
//! Left out on purpose: image files, lenses (a phone straightens its own), several sheets in one photo.

pub mod corners;
mod homography;
mod interest;
mod least_squares;
pub mod light;
mod panels;
mod raster;
pub mod reference;
mod square;
mod steps;

pub use corners::{Doubt, Found, find_corners};
pub use homography::{Homography, Point, Quad, QuadError};
pub use interest::{Interest, MOST_CELLS, Motif, Reasons};
pub use panels::{Panel, find_panels};
pub use raster::Raster;
pub use square::square;
