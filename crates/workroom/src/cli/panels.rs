//! `octavo panels`: where a collage sheet is printed as panels.

use std::path::PathBuf;

use cards::model::Collage;
use clap::{Arg, ArgAction, ArgMatches, Command, value_parser};
use measure::{Length, Mark, Rect, Size, Unit, parse_length};
use serde::Serialize;
use words::{Arg as Fact, say};

use super::{Desk, Done, Refusal, picture};
use crate::{panels, wording};

/// `octavo panels`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct PanelsRequest {
    picture: PathBuf,
    size: Size,
    mark: Mark,
    json: bool,
}

pub(super) fn command() -> Command {
    Command::new("panels")
        .about(say("help-panels", &[]))
        .after_help(say("help-panels.examples", &[]))
        .arg(
            Arg::new("picture")
                .value_name("PICTURE")
                .value_parser(value_parser!(PathBuf))
                .required(true)
                .help(say("help-panels.picture", &[])),
        )
        .arg(picture::size_argument(say("help-panels.size", &[])))
        .arg(marks_argument("1/16 in", say("help-panels.marks", &[])))
        .arg(Arg::new("json").long("json").action(ArgAction::SetTrue).help(say("help-panels.json", &[])))
}

pub(super) fn marks_argument(usual: &'static str, help: String) -> Arg {
    Arg::new("marks").long("marks").value_name("LENGTH").value_parser(marks).default_value(usual).help(help)
}

fn marks(text: &str) -> Result<Mark, String> {
    let step = parse_length(text, Some(Unit::Inch)).ok();
    step.and_then(Mark::from_step).ok_or_else(|| say("refused-marks", &[]))
}

impl PanelsRequest {
    pub(super) fn read(given: &ArgMatches) -> Self {
        Self {
            picture: given.get_one::<PathBuf>("picture").cloned().unwrap_or_default(),
            size: given.get_one::<Size>("size").copied().unwrap_or_default(),
            mark: given.get_one::<Mark>("marks").copied().unwrap_or(Mark::SixteenthInch),
            json: given.get_flag("json"),
        }
    }
}

/// Lengths are text, exact, in the unit of the marks.
#[derive(Debug, Serialize)]
struct PanelView {
    left: String,
    top: String,
    width: String,
    height: String,
}

#[derive(Debug, Serialize)]
struct PanelsView {
    panels: Vec<PanelView>,
    /// What to write into the face of a project file; empty where the sheet is one print.
    collage: String,
}

/// Finds the panels, and tells them as a part of a project file or as JSON.
pub(super) fn run(request: &PanelsRequest, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    let (sheet, mark) = (request.size, request.mark);
    let collage = panels::proposed(&picture::load(&request.picture)?, sheet, mark);
    let rects = collage.as_ref().map(Collage::rects).unwrap_or_default();
    let text = collage.as_ref().map(|collage| written(collage, mark.unit())).unwrap_or_default();
    if request.json {
        let exact = |length: Length| wording::exact(length, mark.unit());
        let view = |rect: &Rect| PanelView {
            left: exact(rect.x),
            top: exact(rect.y),
            width: exact(rect.size.width),
            height: exact(rect.size.height),
        };
        desk.json(&PanelsView { panels: rects.iter().map(view).collect(), collage: text })?;
    } else if rects.is_empty() {
        writeln!(desk.out, "{}", say("panels-one-print", &[]))?;
    } else {
        writeln!(desk.out, "{text}")?;
        let facts = [("count", Fact::from(rects.len())), ("mark", wording::length(mark.step(), mark).into())];
        writeln!(desk.err, "{}", say("panels-found", &facts))?;
    }
    Ok(Done::Well)
}

/// As a face of a project file has it.
fn written(collage: &Collage, unit: Unit) -> String {
    let exact = |length: &Length| format!("\"{}\"", wording::exact(*length, unit));
    let list = |lengths: &[Length]| lengths.iter().map(exact).collect::<Vec<_>>().join(", ");
    if !collage.is_free() {
        return format!("collage = {{ columns = [{}], rows = [{}] }}", list(&collage.columns), list(&collage.rows));
    }
    let one = |panel: &Rect| {
        let size = wording::exact_size(panel.size, unit);
        format!("{{ left = {}, top = {}, size = \"{size}\" }}", exact(&panel.x), exact(&panel.y))
    };
    format!("collage = {{ panels = [{}] }}", collage.panels.iter().map(one).collect::<Vec<_>>().join(", "))
}
