//! `octavo make`: plan a project and write everything.

use std::path::Path;

use cards::plan::{plan, plan_on};
use cards::{Plan, Project, Severity, Subject};
use cutting::Budget;
use drawing::sheets::{Edition, Paper};
use measure::{Length, Unit};
use store::project_file::{self, Problem};
use words::{Arg, say};

use super::ask::{MakeRequest, Page, Source};
use super::clock::{Clock, Teller};
use super::solve::text_of;
use super::{Desk, Done, Refusal};
use crate::make::faces::{BadPicture, Known, faces, print_maps};
use crate::make::{DEMO, DEMO_NAME, Wanted, files, plan_json};
use crate::outputs::{self, OutFile, OutputError};
use crate::pictures::PictureError;
use crate::wording::{self, Worded};

/// Nodes a plan may spend: the same plan on every machine.
/// Chosen: the demo needs a hundredth; spending all of it takes some twenty seconds.
pub(crate) const NODES: u64 = 40_000_000;
/// A plan that is still not there after so many seconds stops with what it has.
pub(super) const MOST_SECONDS: f64 = 120.0;

/// Read, plan, draw, write.
pub(super) fn run(request: &MakeRequest, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    let project = project(&request.source)?;
    let (plan, known) = planned_on_prints(&project, &request.source, desk);
    let made = faces(&plan, folder(&request.source), &known)
        .map_err(|bad| Refusal::Many(bad.iter().map(picture_refusal).collect()))?;
    let paper = match (request.page, project.unit) {
        (Some(Page::Letter), _) | (None, Unit::Inch) => Paper::Letter,
        (Some(Page::A4), _) | (None, Unit::Millimetre) => Paper::A4,
    };
    let unit = request.unit.unwrap_or(project.unit);
    let wanted = Wanted {
        edition: Edition { paper, print: request.print, hand: request.hand, unit, language: words::spoken() },
        every: request.every_edition,
        square: request.square.unwrap_or(Length::INCH),
    };
    let mut files = files(&plan, &made.faces, &wanted)
        .map_err(|error| Refusal::said("refused-drawing", &[("reason", error.to_string().into())]))?;
    if request.source == Source::Demo {
        files.push(OutFile::new(DEMO_NAME, DEMO));
    }
    outputs::write_whole(&request.out, &say("made-list", &[]), &files).map_err(|error| output_refusal(&error))?;
    if request.json {
        write!(desk.out, "{}", plan_json(&plan))?;
    } else {
        tell(&plan, &request.out, desk)?;
    }
    for picture in &made.stretched {
        let facts = [("picture", Arg::from(picture))];
        writeln!(desk.err, "{}: {}", say("warned-picture-shape", &facts), say("warned-picture-shape.remedy", &facts))?;
    }
    let serious = plan.findings.iter().any(|finding| finding.severity == Severity::Serious);
    Ok(if serious { Done::Seriously } else { Done::Well })
}

/// The project that was named.
pub(super) fn project(source: &Source) -> Result<Project, Refusal> {
    let text = text(source)?;
    let named = match source {
        Source::Demo => DEMO_NAME.to_owned(),
        Source::File(file) => file.display().to_string(),
    };
    let folder = folder(source);
    let refused = |problems: Vec<Problem>| {
        Refusal::Many(problems.iter().map(|problem| problem_refusal(problem, &named)).collect())
    };
    let project = project_file::read_bytes(text.as_bytes()).map_err(refused)?;
    // The ink of stamps that are pictures; what cannot be had is told in the findings.
    let bytes = |name: &str| crate::pictures::bytes(folder?, name).ok().map(std::sync::Arc::new);
    Ok(crate::backgrounds::traced(&project, &bytes))
}

/// The text of the project that was named.
pub(super) fn text(source: &Source) -> Result<String, Refusal> {
    match source {
        Source::Demo => Ok(DEMO.to_owned()),
        Source::File(file) => text_of(file),
    }
}

/// The folder in which a project's pictures lie.
pub(super) fn folder(source: &Source) -> Option<&Path> {
    match source {
        Source::Demo => None,
        Source::File(file) => file.parent().map(|folder| if folder == Path::new("") { Path::new(".") } else { folder }),
    }
}

/// Its plan, placed on its prints, and their faces: what its pieces are called and where they lie is the same for every verb.
pub(super) fn planned_on_prints(project: &Project, source: &Source, desk: &mut Desk<'_>) -> (Plan, Known) {
    let (maps, known) = print_maps(project, folder(source));
    (watched(NODES, desk, |budget| plan_on(project, &maps, budget)), known)
}

/// Its plan where it does not matter what lies where, with progress told when it takes long.
pub(super) fn planned(project: &Project, desk: &mut Desk<'_>) -> Plan {
    watched(NODES, desk, |budget| plan(project, budget))
}

/// Work within so many nodes and the time a person waits, with progress told when it takes long.
pub(super) fn watched<T>(nodes: u64, desk: &mut Desk<'_>, work: impl FnOnce(&mut Budget<'_>) -> T) -> T {
    let clock = Clock::start(Some(MOST_SECONDS));
    let stop = || clock.over();
    let teller = Teller::new(&clock, desk.err);
    let progress = |progress| teller.tell(progress);
    work(&mut Budget::nodes(nodes).stopped_by(&stop).telling(&progress))
}

/// What came out, and what to know, for the person.
fn tell(plan: &Plan, out: &Path, desk: &mut Desk<'_>) -> Result<(), Refusal> {
    let counts = &plan.counts;
    let made = say(
        "made",
        &[
            ("cards", say("count-cards", &[("count", counts.cards.into())]).into()),
            ("sheets", say("count-sheets", &[("count", counts.paper_sheets.into())]).into()),
            ("path", out.display().to_string().into()),
        ],
    );
    writeln!(desk.out, "{made}")?;
    for finding in &plan.findings {
        let worded = wording::finding(finding, plan.project.mark);
        let said = match &finding.subject {
            // Several recipes can have the same trouble: say which, where the sentence does not.
            Subject::Recipe(name) if !worded.said.contains(name) => {
                say("made-about", &[("about", name.into()), ("said", worded.said.into())])
            }
            _ => worded.said,
        };
        tell_finding(finding.severity, Worded { said, ..worded }, desk)?;
    }
    Ok(())
}

/// One finding with its remedy and its ways out, a line each.
pub(super) fn tell_finding(severity: Severity, worded: Worded, desk: &mut Desk<'_>) -> Result<(), Refusal> {
    let id = match severity {
        Severity::Note => "made-note",
        Severity::Warning => "made-warning",
        Severity::Serious => "made-serious",
    };
    writeln!(desk.out, "{}", say(id, &[("said", worded.said.into()), ("remedy", worded.remedy.into())]))?;
    for way in worded.ways {
        writeln!(desk.out, "{}", say("made-way", &[("way", way.into())]))?;
    }
    Ok(())
}

fn problem_refusal(problem: &Problem, path: &str) -> Refusal {
    let worded = wording::problem(problem);
    let place: [(&str, Arg); 4] = [
        ("path", path.into()),
        ("line", problem.line.into()),
        ("column", problem.column.into()),
        ("said", worded.said.into()),
    ];
    Refusal::Said { what: say("refused-project", &place), remedy: Some(worded.remedy) }
}

pub(super) fn picture_refusal(bad: &BadPicture) -> Refusal {
    let mut args: Vec<(&str, Arg)> = vec![("picture", (&bad.name).into())];
    let id = match &bad.error {
        PictureError::Elsewhere => "refused-picture-elsewhere",
        PictureError::Missing => "refused-picture-missing",
        PictureError::WrongKind => "refused-picture-kind",
        PictureError::TooLarge => "refused-picture-too-large",
        PictureError::CutOff => "refused-picture-cut-off",
        PictureError::Unreadable(reason) | PictureError::Damaged(reason) => {
            args.push(("reason", reason.into()));
            "refused-picture-damaged"
        }
    };
    Refusal::said(id, &args)
}

pub(super) fn output_refusal(error: &OutputError) -> Refusal {
    let named = |path: &Path| ("path", Arg::Text(path.display().to_string()));
    match error {
        OutputError::NotAFolder(path) => Refusal::said("refused-out-not-a-folder", &[named(path)]),
        OutputError::Theirs(path) => Refusal::said("refused-out-theirs", &[named(path)]),
        OutputError::Disk { path, error } => {
            Refusal::said("refused-out-disk", &[named(path), ("reason", error.to_string().into())])
        }
    }
}
