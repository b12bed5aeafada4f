//! `octavo solve`: one cutting question from a file.

use std::fs;
use std::io::Read;
use std::path::Path;

use cutting::Budget;
use words::{Arg, say};

use super::ask::SolveRequest;
use super::clock::{Clock, Teller};
use super::{Desk, Done, Refusal};
use crate::solve::{AnswerJson, Grade, QuestionError, read, solve};

/// Largest instance file that is read. The bench's largest is far below 1 MB.
const MOST_BYTES: u64 = 32 << 20;

/// Read the question, ask the engine, print the answer.
pub(super) fn run(request: &SolveRequest, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    let text = text_of(&request.file)?;
    let named = request.file.display().to_string();
    let question = read(&text).map_err(|error| refusal(&error, &named))?;
    let clock = Clock::start(Some(request.seconds));
    let mut answer = {
        let stop = || clock.over();
        let teller = Teller::new(&clock, desk.err);
        let tell = |progress| teller.tell(progress);
        let mut budget = Budget::nodes(request.nodes.unwrap_or(u64::MAX)).stopped_by(&stop).telling(&tell);
        solve(&question, &mut budget).map_err(|error| refusal(&error, &named))?
    };
    answer.seconds = clock.seconds();
    if request.json {
        serde_json::to_writer(&mut *desk.out, &answer).map_err(std::io::Error::from)?;
        writeln!(desk.out)?;
    } else {
        writeln!(desk.out, "{}", sentence(&answer))?;
    }
    let answered = matches!(answer.grade, Grade::ProvenBest | Grade::BestFound);
    Ok(if answered { Done::Well } else { Done::Seriously })
}

/// The text of a file that is neither huge nor anything but text.
pub(super) fn text_of(path: &Path) -> Result<String, Refusal> {
    let named = || ("path", Arg::Text(path.display().to_string()));
    let failed = |error: std::io::Error| match error.kind() {
        std::io::ErrorKind::NotFound => Refusal::said("refused-file-missing", &[named()]),
        _ => Refusal::said("refused-file-unreadable", &[named(), ("reason", error.to_string().into())]),
    };
    let meta = fs::metadata(path).map_err(failed)?;
    if meta.is_dir() {
        return Err(Refusal::said("refused-file-is-folder", &[named()]));
    }
    // A device or a pipe tells no length beforehand, so the reading itself is bounded too.
    let mut bytes = Vec::new();
    let file = fs::File::open(path).map_err(failed)?;
    if meta.len() <= MOST_BYTES {
        file.take(MOST_BYTES + 1).read_to_end(&mut bytes).map_err(failed)?;
    }
    if meta.len() > MOST_BYTES || bytes.len() as u64 > MOST_BYTES {
        return Err(Refusal::said("refused-file-too-large", &[named(), ("limit", (MOST_BYTES >> 20).into())]));
    }
    String::from_utf8(bytes).map_err(|error| {
        let upto = &error.as_bytes()[..error.utf8_error().valid_up_to()];
        let line = 1 + upto.iter().filter(|byte| **byte == b'\n').count();
        Refusal::said("refused-file-not-text", &[named(), ("line", line.into())])
    })
}

fn refusal(error: &QuestionError, path: &str) -> Refusal {
    let mut args: Vec<(&str, Arg)> = vec![("path", path.into())];
    let id = match error {
        QuestionError::Empty => "refused-instance-empty",
        QuestionError::Several(count) => {
            args.push(("count", (*count).into()));
            "refused-instance-several"
        }
        QuestionError::NotJson { line, column, what } => {
            args.extend([("line", (*line).into()), ("column", (*column).into()), ("what", what.into())]);
            "refused-instance-not-json"
        }
        QuestionError::FloorPlan => "refused-instance-floor-plan",
        QuestionError::UnknownFormat(format) => {
            args.push(("format", format.into()));
            "refused-instance-format"
        }
        QuestionError::CutStep { width, height, step } => {
            args.extend([("width", (*width).into()), ("height", (*height).into()), ("step", (*step).into())]);
            "refused-instance-cut-step"
        }
        QuestionError::Field(what) | QuestionError::Refused(what) => {
            args.push(("what", what.into()));
            "refused-instance-field"
        }
    };
    Refusal::said(id, &args)
}

/// The answer in one sentence, for people.
fn sentence(answer: &AnswerJson) -> String {
    let amount = |value: Option<u64>| value.map_or_else(|| "–".to_owned(), |value| value.to_string());
    let measure = if let Some(cost) = answer.cost {
        say("answer-cost", &[("sheets", answer.sheets.unwrap_or(0).into()), ("cost", cost.into())])
    } else if let Some(sheets) = answer.sheets {
        say("count-sheets", &[("count", sheets.into())])
    } else if let Some(value) = answer.value {
        say("answer-value", &[("value", value.into())])
    } else {
        say("answer-waste", &[("waste", amount(answer.waste).into())])
    };
    let id = match answer.grade {
        Grade::ProvenBest => "answer-proven-best",
        Grade::BestFound => "answer-best-found",
        Grade::Impossible => "answer-impossible",
        Grade::Stopped => "answer-stopped",
    };
    let why = answer.why.clone().unwrap_or_default();
    say(id, &[("measure", measure.into()), ("bound", amount(answer.bound).into()), ("why", why.into())])
}
