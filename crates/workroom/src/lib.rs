//! The workroom: commands and, later, pages.
