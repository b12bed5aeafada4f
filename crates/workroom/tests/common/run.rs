//! The commands as a person gives them.

use std::ffi::OsString;

/// Exit code, what was printed, what was said.
pub(crate) fn octavo(args: &[&str]) -> (u8, String, String) {
    let (mut out, mut err) = (Vec::new(), Vec::new());
    let args = ["octavo"].iter().chain(args).map(OsString::from);
    let code = workroom::cli::run(args, &mut out, &mut err);
    (code, String::from_utf8(out).unwrap(), String::from_utf8(err).unwrap())
}
