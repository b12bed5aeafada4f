//! `octavo interest`: which pictures are seen in a print, what each is worth, and why.

use std::fs;
use std::path::PathBuf;
use std::sync::Arc;

use clap::{Arg, ArgAction, ArgMatches, Command, value_parser};
use drawing::Picture;
use measure::{Length, Mark, Size};
use serde::Serialize;
use words::{Arg as Fact, say};

use super::{Desk, Done, Refusal, panels, picture};
use crate::make::interest::{Found, Part, explained};
use crate::wording;

/// Longest side of the picture that is looked at and drawn on.
const SEEN: u32 = 1_200;
/// Longest side of the drawing, and its pixels to an inch. `Chosen:` as large as a screen shows it.
const DRAWN: (Length, u32) = (Length::from_ticks(Length::INCH.ticks() * 8), 125);

/// `octavo interest`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct InterestRequest {
    picture: PathBuf,
    size: Size,
    mark: Mark,
    out: Option<PathBuf>,
    json: bool,
}

pub(super) fn command() -> Command {
    let path = |name: &'static str| Arg::new(name).value_parser(value_parser!(PathBuf));
    Command::new("interest")
        .about(say("help-interest", &[]))
        .after_help(say("help-interest.examples", &[]))
        .arg(path("picture").value_name("PICTURE").required(true).help(say("help-interest.picture", &[])))
        .arg(picture::size_argument(say("help-interest.size", &[])))
        .arg(panels::marks_argument("1/8 in", say("help-interest.marks", &[])))
        .arg(path("out").long("out").value_name("FILE").help(say("help-interest.out", &[])))
        .arg(Arg::new("json").long("json").action(ArgAction::SetTrue).help(say("help-interest.json", &[])))
}

impl InterestRequest {
    pub(super) fn read(given: &ArgMatches) -> Self {
        let path = |name: &str| given.get_one::<PathBuf>(name).cloned();
        Self {
            picture: path("picture").unwrap_or_default(),
            size: given.get_one::<Size>("size").copied().unwrap_or_default(),
            mark: given.get_one::<Mark>("marks").copied().unwrap_or(Mark::EighthInch),
            out: path("out"),
            json: given.get_flag("json"),
        }
    }
}

/// Lengths are text, exact, in the unit of the marks; shares are percent.
#[derive(Debug, Serialize)]
struct FoundView {
    left: String,
    top: String,
    width: String,
    height: String,
    /// 1 to 1000.
    weight: u16,
    edges: u32,
    own_colors: u32,
    picture: u32,
}

#[derive(Debug, Serialize)]
struct InterestView {
    pictures: Vec<FoundView>,
}

/// Looks at a print, and tells what is seen.
pub(super) fn run(request: &InterestRequest, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    let raster = picture::load(&request.picture)?;
    let named = [("picture", Fact::Text(request.picture.display().to_string()))];
    let side = |pixels: usize| u32::try_from(pixels).unwrap_or(0);
    let (wide, tall) = (side(raster.width()), side(raster.height()));
    let print = Picture::new(wide, tall, Arc::from(raster.into_rgb())).map(|print| print.at_most(SEEN));
    let seen = print.and_then(|print| Some((explained(&print, request.size, request.mark.step())?, print)));
    let (seen, print) = seen.ok_or_else(|| Refusal::said("refused-photo-kind", &named))?;
    let found = seen.found();
    if let Some(out) = &request.out {
        let longest = request.size.width.max(request.size.height).ticks();
        let drawn = |side: Length| drawing::scene::share(DRAWN.0, side.ticks(), longest);
        let size = Size::new(drawn(request.size.width), drawn(request.size.height));
        let refused = |reason: String| {
            let facts = [("path", Fact::Text(out.display().to_string())), ("reason", reason.into())];
            Refusal::said("refused-out-disk", &facts)
        };
        let scene = seen.drawn(&print, Part::Sum, size, "");
        let bytes = drawing::png::write(&scene, DRAWN.1).map_err(|error| refused(error.to_string()))?;
        fs::write(out, bytes).map_err(|error| refused(error.to_string()))?;
    }
    if request.json {
        let exact = |length: Length| wording::exact(length, request.mark.unit());
        let view = |found: &Found| FoundView {
            left: exact(found.rect.x),
            top: exact(found.rect.y),
            width: exact(found.rect.size.width),
            height: exact(found.rect.size.height),
            weight: found.weight,
            edges: found.reasons[0],
            own_colors: found.reasons[1],
            picture: found.reasons[2],
        };
        desk.json(&InterestView { pictures: found.iter().map(view).collect() })?;
        return Ok(Done::Well);
    }
    if found.is_empty() {
        writeln!(desk.out, "{}", say("interest-none", &[]))?;
    }
    for (number, one) in (1_usize..).zip(&found) {
        let (said, why) = one.told(|length| wording::length(length, request.mark));
        let line = [("number", number.into()), ("said", said.into()), ("why", why.into())];
        writeln!(desk.out, "{}", say("interest-line", &line))?;
    }
    if let Some(out) = &request.out {
        writeln!(desk.err, "{}", say("interest-drawn", &[("path", Fact::Text(out.display().to_string()))]))?;
    }
    writeln!(desk.err, "{}", say("interest-sum", &[]))?;
    Ok(Done::Well)
}
