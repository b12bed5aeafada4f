//! `octavo background`: the picture of a stamped background and the guide to stamp it by.

use std::path::PathBuf;

use cards::background::slips;
use cards::{Plan, Severity};
use clap::{Arg, ArgAction, ArgMatches, Command, value_parser};
use drawing::sheets::{Edition, Hand, Paper};
use measure::{Length, Unit};
use serde::Serialize;
use words::say;

use super::ask::{Source, file};
use super::make::{output_refusal, planned, project, tell_finding};
use super::{Desk, Done, Refusal};
use crate::make::BACKGROUND;
use crate::outputs;
use crate::wording;

/// What was asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Request {
    source: Source,
    out: Option<PathBuf>,
    page: Option<Paper>,
    hand: Hand,
    square: Option<Length>,
    seed: Option<u32>,
    json: bool,
}

pub(super) fn command() -> Command {
    let flag = |name: &'static str, help: String| Arg::new(name).long(name).action(ArgAction::SetTrue).help(help);
    Command::new("background")
        .about(say("help-background", &[]))
        .after_help(say("help-background.examples", &[]))
        .arg(file())
        .arg(flag("demo", say("help-background.demo", &[])))
        .arg(
            Arg::new("out")
                .long("out")
                .value_name("FOLDER")
                .value_parser(value_parser!(PathBuf))
                .help(say("help-background.out", &[])),
        )
        .arg(
            Arg::new("sheet")
                .long("sheet")
                .value_name("PAGE")
                .value_parser(["letter", "a4"])
                .help(say("help-background.sheet", &[])),
        )
        .arg(
            Arg::new("seed")
                .long("seed")
                .value_name("NUMBER")
                .value_parser(value_parser!(u32).range(0..=1_000_000_000))
                .help(say("help-background.seed", &[])),
        )
        .arg(
            Arg::new("square-measured")
                .long("square-measured")
                .value_name("LENGTH")
                .value_parser(super::ask::measured_square)
                .help(say("help-background.square", &[])),
        )
        .arg(flag("left-hand", say("help-background.left", &[])))
        .arg(flag("json", say("help-background.json", &[])))
}

impl Request {
    pub(super) fn read(given: &ArgMatches) -> Request {
        let file = given.get_one::<PathBuf>("file");
        Request {
            source: file.map_or(Source::Demo, |file| Source::File(file.clone())),
            out: given.get_one::<PathBuf>("out").cloned(),
            page: given.get_one::<String>("sheet").map(|page| if page == "a4" { Paper::A4 } else { Paper::Letter }),
            hand: if given.get_flag("left-hand") { Hand::Left } else { Hand::Right },
            square: given.get_one::<Length>("square-measured").copied(),
            seed: given.get_one::<u32>("seed").copied(),
            json: given.get_flag("json"),
        }
    }
}

#[derive(Debug, Serialize)]
struct SlipView {
    /// Off by up to so much.
    place: String,
    turn_deg: u16,
    usual: String,
    worst: String,
    touch_per_mille: u32,
}

#[derive(Debug, Serialize)]
struct View {
    #[serde(flatten)]
    background: crate::make::view::BackgroundView,
    slips: Vec<SlipView>,
}

/// Plans, writes where a folder is named, and says what there is to stamp.
pub(super) fn run(request: &Request, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    let mut project = match &request.source {
        Source::Demo => {
            store::project_file::read(BACKGROUND).map_err(|_| Refusal::said("refused-no-background", &[]))?
        }
        Source::File(_) => project(&request.source)?,
    };
    if project.backgrounds.is_empty() {
        return Err(Refusal::said("refused-no-background", &[]));
    }
    if let Some(seed) = request.seed {
        for background in &mut project.backgrounds {
            background.seed = seed;
            background.stands.clear();
        }
    }
    let plan = planned(&project, desk);
    let paper = request.page.unwrap_or(match project.unit {
        Unit::Inch => Paper::Letter,
        Unit::Millimetre => Paper::A4,
    });
    let edition = Edition { hand: request.hand, ..Edition::plain(&plan, paper) };
    if let Some(out) = &request.out {
        let mut files = Vec::new();
        for index in 0..plan.backgrounds.len() {
            let made = crate::backgrounds::files(&plan, index, &edition, request.square.unwrap_or(Length::INCH), &[]);
            files.extend(
                made.map_err(|error| Refusal::said("refused-drawing", &[("reason", error.to_string().into())]))?,
            );
        }
        outputs::write_whole(out, &say("made-list", &[]), &files).map_err(|error| output_refusal(&error))?;
    }
    let unit = project.unit;
    let views = crate::make::backgrounds(&plan).into_iter().map(|view| {
        let at = project.backgrounds.iter().position(|background| background.name == view.name);
        let slipped = at.and_then(|at| Some(slips(&project.backgrounds[at], plan.backgrounds[at].as_ref()?)));
        let slip = |of: &cards::background::Slipped| SlipView {
            place: wording::exact(of.slip.place, unit),
            turn_deg: of.slip.turn_deg,
            usual: wording::exact(of.loosened.usual, unit),
            worst: wording::exact(of.loosened.worst, unit),
            touch_per_mille: of.loosened.touch_per_mille,
        };
        View { background: view, slips: slipped.unwrap_or_default().iter().map(slip).collect() }
    });
    let views: Vec<View> = views.collect();
    if request.json {
        desk.json(&views)?;
    } else {
        for view in &views {
            told(view, &plan, desk)?;
        }
        if let Some(out) = &request.out {
            writeln!(desk.out, "{}", say("background-written", &[("path", out.display().to_string().into())]))?;
        }
    }
    let own: Vec<_> = plan.findings.iter().filter(|finding| finding.code.starts_with("background-")).collect();
    if !request.json {
        for finding in &own {
            tell_finding(finding.severity, wording::finding(finding, project.mark), desk)?;
        }
    }
    let serious = own.iter().any(|finding| finding.severity == Severity::Serious);
    Ok(if serious { Done::Seriously } else { Done::Well })
}

fn told(view: &View, plan: &Plan, desk: &mut Desk<'_>) -> Result<(), Refusal> {
    let of = &view.background;
    let at = plan.project.backgrounds.iter().position(|background| background.name == of.name);
    let laid = at.and_then(|at| plan.backgrounds.get(at)?.as_ref());
    let rounded = |length: Length| wording::length(length, plan.project.mark);
    let facts = [
        ("name", (&of.name).into()),
        ("count", of.impressions.len().into()),
        ("closest", laid.and_then(|laid| laid.closest).map_or_else(|| "none".to_owned(), rounded).into()),
        ("off", of.stamps.iter().map(|stamp| stamp.off_edge).sum::<u32>().into()),
        ("cover", laid.map_or(0, |laid| laid.cover_percent).into()),
    ];
    writeln!(desk.out, "{}", say("background-told", &facts))?;
    for stamp in &of.stamps {
        let facts = [
            ("stamp", (&stamp.stamp).into()),
            ("first", stamp.first.into()),
            ("paler", stamp.paler.into()),
            ("inkings", stamp.inkings.into()),
        ];
        writeln!(desk.out, "  {}", say("background-told-stamp", &facts))?;
    }
    let slipped = at.zip(laid).map(|(at, laid)| slips(&plan.project.backgrounds[at], laid)).unwrap_or_default();
    for of in &slipped {
        let facts = [
            ("place", rounded(of.slip.place).into()),
            ("turn", u32::from(of.slip.turn_deg).into()),
            ("worst", rounded(of.loosened.worst).into()),
            ("touch", of.loosened.touch_per_mille.div_ceil(10).into()),
        ];
        writeln!(desk.out, "  {}", say("background-told-slip", &facts))?;
    }
    Ok(())
}
