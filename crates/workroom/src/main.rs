//! The front door.

use std::process::ExitCode;

fn main() -> ExitCode {
    let mut out = std::io::stdout().lock();
    let mut err = std::io::stderr().lock();
    ExitCode::from(workroom::cli::run(std::env::args_os(), &mut out, &mut err))
}
