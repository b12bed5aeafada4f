//! `octavo why`: why a sheet gives no layout, or none without waste, and the smallest changes that would.

use std::path::PathBuf;

use cards::model::Design;
use cards::plan::{Aim, Layout, Sort, WhyNot, why};
use cards::{Fact, Finding, Plan};
use clap::{Arg, ArgAction, ArgMatches, Command};
use serde::Serialize;
use words::say;

use super::ask::Source;
use super::make::{NODES, planned, project, watched};
use super::{Desk, Done, Refusal};
use crate::make::view::{PieceView, WayView};
use crate::{make, wording};

/// What was asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Request {
    /// Which project.
    pub(super) source: Source,
    /// True: print the answer as JSON.
    pub(super) json: bool,
}

impl Request {
    pub(super) fn read(given: &ArgMatches) -> Request {
        let file = given.get_one::<PathBuf>("file");
        Request { source: file.map_or(Source::Demo, |file| Source::File(file.clone())), json: given.get_flag("json") }
    }
}

pub(super) fn command() -> Command {
    Command::new("why")
        .about(say("help-why", &[]))
        .after_help(say("help-why.examples", &[]))
        .arg(super::ask::file())
        .arg(Arg::new("demo").long("demo").action(ArgAction::SetTrue).help(say("help-why.demo", &[])))
        .arg(Arg::new("json").long("json").action(ArgAction::SetTrue).help(say("help-why.json", &[])))
}

/// The answer for other programs: one entry a pack.
#[derive(Debug, Serialize)]
struct PackView {
    pack: String,
    /// `layout` if there is one, else `none`.
    found: &'static str,
    /// `any-layout` or `no-waste`: what the ways lead to.
    aim: &'static str,
    /// Why there is no layout.
    #[serde(skip_serializing_if = "Option::is_none")]
    why: Option<String>,
    /// Percent of the sheet left over now, rounded up.
    #[serde(skip_serializing_if = "Option::is_none")]
    left_percent: Option<u32>,
    ways: Vec<WayOutView>,
    /// Sorts of changes of which none within reach helps; proven.
    ruled_out: Vec<&'static str>,
    /// Sorts of changes of which none was found in the time given.
    not_known: Vec<&'static str>,
}

/// A way out with the pieces of its layout.
#[derive(Debug, Serialize)]
struct WayOutView {
    #[serde(flatten)]
    way: WayView,
    pieces: Vec<PieceView>,
}

/// Plan, then ask of each pack what would make it work, or leave nothing over.
pub(super) fn run(request: &Request, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    let project = project(&request.source)?;
    let plan = planned(&project, desk);
    let mut views = Vec::new();
    let mut all_found = true;
    for (index, pack) in project.packs.iter().enumerate() {
        if pack.designs.iter().all(|design: &Design| design.sheets() == 0) {
            continue;
        }
        let layout = plan.layouts.iter().find(|layout| layout.pack == index);
        // Later packs are not cut once the batch is full: nothing is wrong with them.
        let finding = finding_of(&plan, index);
        if layout.is_none() && finding.is_none() && !plan.layouts.is_empty() {
            continue;
        }
        let known = layout.is_some_and(|layout| layout.waste == 0);
        let answer = if known { None } else { asked(&plan, index, layout, desk) };
        all_found &= layout.is_some();
        if request.json {
            views.push(view(&plan, index, layout, finding, answer.as_ref()));
        } else {
            tell(&plan, index, layout, finding, answer.as_ref(), desk)?;
        }
    }
    if request.json {
        desk.json(&views)?;
    }
    Ok(if all_found { Done::Well } else { Done::Seriously })
}

/// What would leave nothing over, or give a layout where there is none.
fn asked(plan: &Plan, pack: usize, layout: Option<&Layout>, desk: &mut Desk<'_>) -> Option<WhyNot> {
    let aim = if layout.is_some() { Aim::NoWaste } else { Aim::AnyLayout };
    let cards = layout.map(|layout| layout.recipe_counts.iter().sum());
    watched(NODES, desk, |budget| why(&plan.project, pack, aim, cards, budget))
}

/// The finding that says why a pack gives no layout.
fn finding_of(plan: &Plan, pack: usize) -> Option<&Finding> {
    let name = &plan.project.packs[pack].name;
    let about =
        |finding: &Finding| finding.facts.iter().any(|(key, fact)| *key == "pack" && *fact == Fact::Text(name.clone()));
    let layout = |finding: &&Finding| {
        let code = finding.code;
        code == "piece-not-on-mark" || (about(finding) && (code.starts_with("layout-") || code == "goal-no-mix"))
    };
    plan.findings.iter().find(layout)
}

/// Percent of a sheet that a layout leaves over, rounded up; 0 only where nothing is.
fn left_percent(layout: &Layout) -> u32 {
    let area = layout.usable.size.area().max(1);
    u32::try_from((layout.waste * 100 + area - 1) / area).unwrap_or(100)
}

fn tell(
    plan: &Plan,
    pack: usize,
    layout: Option<&Layout>,
    finding: Option<&Finding>,
    answer: Option<&WhyNot>,
    desk: &mut Desk<'_>,
) -> Result<(), Refusal> {
    let mark = plan.project.mark;
    let named = ("pack", (&plan.project.packs[pack].name).into());
    match (layout, finding) {
        (Some(layout), _) if layout.waste == 0 => writeln!(desk.out, "{}", say("why-whole", &[named]))?,
        (Some(layout), _) => {
            let percent = ("percent", left_percent(layout).into());
            writeln!(desk.out, "{}", say("why-waste", &[named, percent]))?;
        }
        (None, Some(finding)) => writeln!(desk.out, "{}", wording::finding(finding, mark).said)?,
        (None, None) => writeln!(desk.out, "{}", say("why-none", &[named]))?,
    }
    let Some(answer) = answer else { return Ok(()) };
    if !answer.ways.is_empty() {
        let id = if answer.aim == Aim::NoWaste { "why-ways-whole" } else { "why-ways" };
        writeln!(desk.out, "{}", say(id, &[]))?;
    }
    for (index, out) in answer.ways.iter().enumerate() {
        let args = [("number", (index + 1).into()), ("way", wording::way(&out.way, mark).into())];
        writeln!(desk.out, "{}", say("why-way", &args))?;
    }
    for sort in &answer.refuted {
        let id = match sort {
            Sort::Turn => "why-no-turn",
            Sort::Sizes => "why-no-sizes",
            Sort::FewerCards => "why-no-fewer-cards",
            Sort::Sheet => "why-no-sheet",
        };
        writeln!(desk.out, "{}", say(id, &[]))?;
    }
    if !answer.unknown.is_empty() {
        writeln!(desk.out, "{}", say("why-not-known", &[]))?;
    }
    Ok(())
}

fn view(
    plan: &Plan,
    pack: usize,
    layout: Option<&Layout>,
    finding: Option<&Finding>,
    answer: Option<&WhyNot>,
) -> PackView {
    let code = |sort: &Sort| match sort {
        Sort::Turn => "turn",
        Sort::Sizes => "sizes",
        Sort::FewerCards => "fewer-cards",
        Sort::Sheet => "sheet",
    };
    let ways = answer.map_or(&[][..], |answer| &answer.ways);
    PackView {
        pack: plan.project.packs[pack].name.clone(),
        found: if layout.is_some() { "layout" } else { "none" },
        aim: if layout.is_some() { "no-waste" } else { "any-layout" },
        why: finding.filter(|_| layout.is_none()).map(|finding| wording::finding(finding, plan.project.mark).said),
        left_percent: layout.map(left_percent),
        ways: ways
            .iter()
            .map(|out| WayOutView {
                way: make::way(&out.way, &plan.project),
                pieces: make::pieces(&out.layout.pieces, plan),
            })
            .collect(),
        ruled_out: answer.map_or_else(Vec::new, |answer| answer.refuted.iter().map(code).collect()),
        not_known: answer.map_or_else(Vec::new, |answer| answer.unknown.iter().map(code).collect()),
    }
}
