//! What is kept: the project file, read whole or refused with every mistake named.
//!
//! Left out on purpose: opening files (bytes and text are told), words (problems are data), drawing.

pub mod project_file;
