//! The craft: what a maker says (`model`) and what the plan answers (`plan`).
//!
//! Left out on purpose: SQL, HTTP, SVG, files, pixels and today's date (it is told).

pub mod finding;
pub mod model;
pub mod pairs;
pub mod plan;
pub mod replan;

pub use finding::{Fact, Finding, Severity, Subject, Way, WayChange};
pub use model::Project;
pub use plan::{Plan, plan};
