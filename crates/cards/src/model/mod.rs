//! What a maker says: papers, cardstock, recipes and the goal.
//!
//! Plain values; `store::project_file` reads them from TOML and reports every mistake there. A value
//! that comes out of `store` has no dangling index, no empty list where one is needed and no range
//! upside down; `plan` still copes (with findings) with anything that cannot be carried out.

mod background;
mod collage;
mod paper;
mod project;
mod recipe;
mod supply;
mod trade;

pub use background::{Background, Marker, Motif, MotifShape};
pub use collage::PrintedLine;
pub use paper::{
    Cardstock, Collage, Design, Edges, Face, Grain, Lies, Look, Pack, Price, PrintSize, Region, Side, StockSheet,
    Wanted, Way,
};
pub use project::{
    Batch, Choice, Decided, Envelope, Goal, Greeting, Meeting, Placing, Project, Ribbon, Stamp, Take, Trimmer,
};
pub use recipe::{Anchor, Fold, Layer, Material, Placement, Range, Recipe, Spot, Third};
pub use supply::{Supplies, Supply, Tape};
pub use trade::{Class, Minutes, Offer, Post, Rate, Selling, Trade};
