//! `octavo spoiled`: the least that has to be cut again for spoiled pieces.

use std::path::PathBuf;

use cards::Plan;
use cards::plan::{Budget, Fix, Lost, Rescue, rescue};
use clap::{Arg, ArgAction, ArgMatches, Command};
use drawing::sheets::{Edition, Faces, Paper, lost_name, recut_steps};
use serde::Serialize;
use words::say;

use super::ask::Source;
use super::make::{NODES, planned_on_prints, project};
use super::{Desk, Done, Refusal};
use crate::spoiled::{self, Unknown};

/// What was asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Request {
    /// Which project.
    pub(super) source: Source,
    /// The pieces, as they are named.
    pub(super) pieces: Vec<String>,
    /// True: print the answer as JSON.
    pub(super) json: bool,
}

impl Request {
    pub(super) fn read(given: &ArgMatches) -> Request {
        let file = given.get_one::<PathBuf>("file").cloned().unwrap_or_default();
        let pieces = given.get_many::<String>("pieces").map(|all| all.cloned().collect()).unwrap_or_default();
        Request { source: Source::File(file), pieces, json: given.get_flag("json") }
    }
}

pub(super) fn command() -> Command {
    Command::new("spoiled")
        .about(say("help-spoiled", &[]))
        .after_help(say("help-spoiled.examples", &[]))
        .arg(
            Arg::new("file")
                .value_name("FILE")
                .value_parser(clap::value_parser!(PathBuf))
                .required(true)
                .help(say("help-make.file", &[])),
        )
        .arg(Arg::new("pieces").value_name("PIECE").required(true).num_args(1..).help(say("help-spoiled.pieces", &[])))
        .arg(Arg::new("json").long("json").action(ArgAction::SetTrue).help(say("help-spoiled.json", &[])))
}

/// The answer for other programs.
#[derive(Debug, Serialize)]
struct View {
    /// What is taken, spares first, then what is left over, then new sheets.
    takes: Vec<TakeView>,
    /// Pieces that nothing is left for.
    missing: Vec<String>,
    /// True if no fewer new sheets would do; proven.
    fewest_sheets: bool,
}

#[derive(Debug, Serialize)]
struct TakeView {
    /// The pieces that come of it.
    pieces: Vec<String>,
    /// What is taken, in words.
    take: String,
    /// True if a whole new sheet is cut.
    new_sheet: bool,
    /// How it is cut, a step each; none for a spare.
    steps: Vec<String>,
}

/// Plan, then say what is cut again.
pub(super) fn run(request: &Request, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    let project = project(&request.source)?;
    let (plan, _) = planned_on_prints(&project, &request.source, desk);
    let lost = request.pieces.iter().map(|text| meant(&plan, text)).collect::<Result<Vec<Lost>, Refusal>>()?;
    let answer = rescue(&plan, &lost, &[], &mut Budget::nodes(NODES));
    if request.json {
        desk.json(&view(&plan, &answer))?;
    } else {
        tell(&plan, &answer, desk)?;
    }
    Ok(if answer.missing.is_empty() { Done::Well } else { Done::Seriously })
}

fn meant(plan: &Plan, text: &str) -> Result<Lost, Refusal> {
    spoiled::find(plan, text).map_err(|unknown| match unknown {
        Unknown::Nothing => Refusal::said("refused-piece", &[("piece", text.into())]),
        Unknown::Several(layouts) => {
            let ways: Vec<String> = layouts.iter().map(|layout| format!("`{layout}:{text}`")).collect();
            Refusal::said("refused-piece-several", &[("piece", text.into()), ("ways", ways.join(", ").into())])
        }
    })
}

fn steps(plan: &Plan, fix: &Fix) -> Vec<String> {
    let told = recut_steps(plan, &Faces::new(), fix, &Edition::plain(plan, Paper::usual(plan.project.unit)));
    let whole = |step: drawing::sheets::StepPicture| {
        [vec![format!("{}.", step.head.trim_end_matches('.'))], step.said, step.cautions].concat().join(" ")
    };
    told.into_iter().map(whole).collect()
}

fn named(plan: &Plan, lost: Lost) -> String {
    match lost {
        Lost::Paper { .. } => lost_name(plan, lost),
        Lost::Stock { .. } => spoiled::name(plan, lost),
    }
}

fn tell(plan: &Plan, answer: &Rescue, desk: &mut Desk<'_>) -> Result<(), Refusal> {
    for fix in &answer.fixes {
        for lost in &fix.lost {
            writeln!(desk.out, "{}", spoiled::name(plan, *lost))?;
        }
        writeln!(desk.out, "  {}", spoiled::told(plan, fix))?;
        for (number, step) in (1..).zip(steps(plan, fix)) {
            writeln!(desk.out, "  {number}. {step}")?;
        }
    }
    for lost in &answer.missing {
        writeln!(desk.out, "{}\n  {}", spoiled::name(plan, *lost), say("spoiled-missing", &[]))?;
    }
    if answer.fewest_sheets && answer.fixes.iter().any(|fix| fix.source.is_new_sheet()) {
        writeln!(desk.out, "{}", say("spoiled-fewest", &[]))?;
    }
    Ok(())
}

fn view(plan: &Plan, answer: &Rescue) -> View {
    let take = |fix: &Fix| TakeView {
        pieces: fix.lost.iter().map(|lost| named(plan, *lost)).collect(),
        take: spoiled::told(plan, fix),
        new_sheet: fix.source.is_new_sheet(),
        steps: steps(plan, fix),
    };
    View {
        takes: answer.fixes.iter().map(take).collect(),
        missing: answer.missing.iter().map(|lost| named(plan, *lost)).collect(),
        fewest_sheets: answer.fewest_sheets,
    }
}
