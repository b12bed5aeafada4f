//! The command line: what was asked, who answers, and which exit code says how it went.
//!
//! | exit code | means |
//! |---|---|
//! | 0 | done; also when the reader of the output went away |
//! | 1 | done, with a serious finding, or proven impossible |
//! | 2 | could not: nothing was written |

mod ask;
mod background;
mod clock;
mod greetings;
mod interest;
mod make;
mod matched;
mod open;
mod panels;
mod picture;
mod refusal;
mod replan;
mod solve;
mod spoiled;
mod trade;
mod why;

use std::ffi::OsString;
use std::io::{self, Write};

use words::say;

pub(crate) use clock::{Clock, seconds_now};
pub(crate) use make::NODES;
pub use refusal::Refusal;

/// How a command ended, when it did what it could.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Done {
    /// All well.
    Well,
    /// Done, but the maker must look: a serious finding, an impossible question.
    Seriously,
}

/// Where a command writes: the answer to `out`, words to the person to `err`.
struct Desk<'a> {
    out: &'a mut dyn Write,
    err: &'a mut dyn Write,
}

impl Desk<'_> {
    /// An answer for other programs.
    fn json(&mut self, answer: &impl serde::Serialize) -> Result<(), Refusal> {
        serde_json::to_writer_pretty(&mut *self.out, answer).map_err(io::Error::from)?;
        writeln!(self.out)?;
        Ok(())
    }
}

/// Run one command line and give its exit code.
///
/// # Shape
/// `args` begins with the program's own name. Answers go to `out`, words to the person to `err`.
pub fn run(args: impl IntoIterator<Item = OsString>, out: &mut dyn Write, err: &mut dyn Write) -> u8 {
    let (language, args) = ask::language(args);
    words::speaking(language, || answered(args, Desk { out, err }))
}

/// As [`run`], in the language spoken now.
fn answered(args: Vec<OsString>, mut desk: Desk<'_>) -> u8 {
    let ended = match ask::read(args) {
        ask::Asked::Open(request) => open::run(&request, &mut desk),
        ask::Asked::Text(text) => tell(&mut desk, text.trim_end()),
        ask::Asked::Refused(refusal) => Err(*refusal),
        ask::Asked::Make(request) => make::run(&request, &mut desk),
        ask::Asked::Solve(request) => solve::run(&request, &mut desk),
        ask::Asked::Schema(of) => schema(&of, &mut desk),
        ask::Asked::Replan(request) => replan::run(&request, &mut desk),
        ask::Asked::Spoiled(request) => spoiled::run(&request, &mut desk),
        ask::Asked::Trade(request) => trade::run(&request, &mut desk),
        ask::Asked::Greetings(request) => greetings::run(&request, &mut desk),
        ask::Asked::Why(request) => why::run(&request, &mut desk),
        ask::Asked::Square(request) => picture::square(&request, &mut desk),
        ask::Asked::Panels(request) => panels::run(&request, &mut desk),
        ask::Asked::Interest(request) => interest::run(&request, &mut desk),
        ask::Asked::Background(request) => background::run(&request, &mut desk),
        ask::Asked::Colors(request) => picture::colors(&request, &mut desk),
    };
    let ended = ended.and_then(|done| desk.out.flush().map(|()| done).map_err(Refusal::from));
    match ended {
        Ok(Done::Well) => 0,
        Ok(Done::Seriously) => 1,
        Err(Refusal::PipeClosed) => 0,
        Err(refusal) => {
            // The error stream may be closed too: there is nobody left to tell.
            let _ = writeln!(desk.err, "{refusal}");
            2
        }
    }
}

/// The published schema of something.
fn schema(of: &str, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    let name = format!("{of}.schema.json");
    let found = crate::make::schemas().into_iter().find(|(is, _)| *is == name);
    tell(desk, found.map(|(_, text)| text).unwrap_or_default().trim_end())
}

fn tell(desk: &mut Desk<'_>, text: &str) -> Result<Done, Refusal> {
    writeln!(desk.out, "{text}")?;
    Ok(Done::Well)
}

impl From<io::Error> for Refusal {
    fn from(error: io::Error) -> Refusal {
        if error.kind() == io::ErrorKind::BrokenPipe {
            Refusal::PipeClosed
        } else {
            Refusal::Said { what: say("refused-output", &[("reason", error.to_string().into())]), remedy: None }
        }
    }
}
