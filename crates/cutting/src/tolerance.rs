//! What small errors at the trimmer do to every piece of published steps.
//!
//! | offers | gives |
//! |---|---|
//! | [`errors`] | how far each side of each piece follows each single error, exactly |
//! | [`Form::worst`] | the most a side can be off, and no bound that is never reached |
//! | [`rests`] | rows whose rest falls on a piece where it matters, though another place is free |
//! | [`lean`] | how far a side leans where a sheet is out of square |
//! | [`Pair`], [`simulate`] | how often a border comes out narrow, by seeded draws |
//!
//! A piece that comes off has the setting's size and the errors of its own cut; a rest has what is left, and so
//! the errors of all cuts before it, turned round. Every size here is a whole number of the caller's own smallest
//! unit, and sums of errors are exact. Left out on purpose: what a piece is for, and how large errors are.

mod chance;
mod form;
mod rest;

pub use chance::{Pair, Share, simulate};
pub use form::{Cause, Form, PieceErrors, errors, lean};
pub use rest::{Row, rests};
