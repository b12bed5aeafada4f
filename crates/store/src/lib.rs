//! What is kept: the project file, read whole or refused with every mistake named, and the projects with every
//! revision in one SQLite file.
//!
//! Left out on purpose: what o'clock it is (it is told), words (problems are data), drawing, planning.

pub mod project_file;
pub mod projects;
pub mod shelf;
