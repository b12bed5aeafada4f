//! The craft: what a maker says (`model`) and what the plan answers (`plan`).
//!
//! Left out on purpose: SQL, HTTP, SVG, files, pixels and today's date (it is told).

pub mod background;
pub mod buying;
pub mod class;
pub mod days;
pub mod finding;
pub mod mailing;
pub mod model;
pub mod money;
pub mod pairs;
pub mod plan;
pub mod replan;
pub mod stamping;
pub mod weight;
pub mod work;

pub use finding::{Fact, Finding, Severity, Subject, Way, WayChange};
pub use model::Project;
pub use plan::{Plan, plan};
