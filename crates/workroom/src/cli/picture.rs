//! `octavo square` and `octavo colors`: a photo of a sheet made straight, and the colours of a picture.

use std::fs;
use std::path::{Path, PathBuf};

use clap::{Arg, ArgAction, ArgMatches, Command, value_parser};
use measure::{Size, Unit};
use photo::reference::{Off, Reference, Way};
use photo::{Doubt, Point, Quad, QuadError, Raster};
use serde::Serialize;
use words::{Arg as Fact, say};

use super::{Desk, Done, Refusal, matched};
use crate::colors;
use crate::pictures::{self, PictureError};
use crate::references::{self, Line};
use crate::squaring::{self, Wanted};

/// Bytes of a file of patches that are read. `Chosen:` far more than the most patches take.
const MOST_TEXT: u64 = 64 * 1024;

/// `octavo square`.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct SquareRequest {
    photo: PathBuf,
    size: Size,
    out: PathBuf,
    corners: Option<[Point; 4]>,
    dots: u32,
    even: bool,
    neutral: Option<Point>,
    /// As they were typed.
    patches: Vec<String>,
    references: Option<PathBuf>,
    json: bool,
}

/// `octavo colors`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct ColorsRequest {
    picture: PathBuf,
    papers: Vec<color::Srgb>,
    ink: Option<color::Srgb>,
    json: bool,
}

fn photo_argument(name: &'static str, help: String) -> Arg {
    Arg::new("photo").value_name(name).value_parser(value_parser!(PathBuf)).required(true).help(help)
}

pub(super) fn size_argument(help: String) -> Arg {
    Arg::new("size").long("size").value_name("SIZE").value_parser(size).required(true).help(help)
}

pub(super) fn square_command() -> Command {
    Command::new("square")
        .about(say("help-square", &[]))
        .after_help(say("help-square.examples", &[]))
        .arg(photo_argument("PHOTO", say("help-square.photo", &[])))
        .arg(size_argument(say("help-square.size", &[])))
        .arg(
            Arg::new("out")
                .long("out")
                .value_name("FILE")
                .value_parser(value_parser!(PathBuf))
                .required(true)
                .help(say("help-square.out", &[])),
        )
        .arg(
            Arg::new("corners")
                .long("corners")
                .value_name("PLACES")
                .value_parser(places)
                .allow_hyphen_values(true)
                .help(say("help-square.corners", &[])),
        )
        .arg(
            Arg::new("dots")
                .long("dots")
                .value_name("NUMBER")
                .value_parser(value_parser!(u32).range(20..=600))
                .default_value("200")
                .help(say("help-square.dots", &[])),
        )
        .arg(Arg::new("even").long("even-light").action(ArgAction::SetTrue).help(say("help-square.even", &[])))
        .arg(
            Arg::new("neutral")
                .long("neutral")
                .value_name("PLACE")
                .value_parser(place)
                .help(say("help-square.neutral", &[])),
        )
        .arg(
            Arg::new("patch")
                .long("patch")
                .value_name("PATCH")
                .allow_hyphen_values(true)
                .action(ArgAction::Append)
                .help(say("help-square.patch", &[])),
        )
        .arg(
            Arg::new("patches")
                .long("patches")
                .value_name("FILE")
                .value_parser(value_parser!(PathBuf))
                .help(say("help-square.patches", &[])),
        )
        .arg(Arg::new("json").long("json").action(ArgAction::SetTrue).help(say("help-square.json", &[])))
}

pub(super) fn colors_command() -> Command {
    Command::new("colors")
        .about(say("help-colors", &[]))
        .after_help(say("help-colors.examples", &[]))
        .arg(photo_argument("PICTURE", say("help-colors.picture", &[])))
        .arg(
            Arg::new("paper")
                .long("paper")
                .value_name("COLOR")
                .value_parser(one_color)
                .action(ArgAction::Append)
                .help(say("help-colors.paper", &[])),
        )
        .arg(Arg::new("ink").long("ink").value_name("COLOR").value_parser(one_color).help(say("help-colors.ink", &[])))
        .arg(Arg::new("json").long("json").action(ArgAction::SetTrue).help(say("help-colors.json", &[])))
}

fn size(text: &str) -> Result<Size, String> {
    measure::parse_size(text, Some(Unit::Inch)).map_err(|_| say("refused-square-size", &[]))
}

fn one_color(text: &str) -> Result<color::Srgb, String> {
    color::Srgb::from_hex(text).ok_or_else(|| say("refused-color", &[]))
}

fn place(text: &str) -> Result<Point, String> {
    let (x, y) = text.split_once([',', ' ']).ok_or_else(|| say("refused-square-neutral", &[]))?;
    match (x.trim().parse::<f64>(), y.trim().parse::<f64>()) {
        (Ok(x), Ok(y)) if x.is_finite() && y.is_finite() => Ok(Point::new(x, y)),
        _ => Err(say("refused-square-neutral", &[])),
    }
}

fn places(text: &str) -> Result<[Point; 4], String> {
    let numbers: Vec<f64> = text
        .split([',', ' '])
        .filter(|part| !part.is_empty())
        .map(str::parse)
        .collect::<Result<_, _>>()
        .map_err(|_| say("refused-square-corners", &[]))?;
    let [a, b, c, d, e, f, g, h] = numbers[..] else { return Err(say("refused-square-corners", &[])) };
    Ok([Point::new(a, b), Point::new(c, d), Point::new(e, f), Point::new(g, h)])
}

impl SquareRequest {
    pub(super) fn read(given: &ArgMatches) -> Self {
        let path = |name: &str| given.get_one::<PathBuf>(name).cloned().unwrap_or_default();
        Self {
            photo: path("photo"),
            size: given.get_one::<Size>("size").copied().unwrap_or_default(),
            out: path("out"),
            corners: given.get_one::<[Point; 4]>("corners").copied(),
            dots: given.get_one::<u32>("dots").copied().unwrap_or(200),
            even: given.get_flag("even"),
            neutral: given.get_one::<Point>("neutral").copied(),
            patches: given.get_many::<String>("patch").map(|all| all.cloned().collect()).unwrap_or_default(),
            references: given.get_one::<PathBuf>("patches").cloned(),
            json: given.get_flag("json"),
        }
    }
}

impl ColorsRequest {
    pub(super) fn read(given: &ArgMatches) -> Self {
        Self {
            picture: given.get_one::<PathBuf>("photo").cloned().unwrap_or_default(),
            papers: given.get_many::<color::Srgb>("paper").map(|all| all.copied().collect()).unwrap_or_default(),
            ink: given.get_one::<color::Srgb>("ink").copied(),
            json: given.get_flag("json"),
        }
    }
}

/// All the pixels of a picture file that may lie anywhere: the maker named it.
pub(super) fn load(path: &Path) -> Result<Raster, Refusal> {
    let named = ("picture", Fact::Text(path.display().to_string()));
    let refused = |error: &PictureError| match error {
        PictureError::Elsewhere | PictureError::Missing => {
            Refusal::said("refused-photo-missing", std::slice::from_ref(&named))
        }
        PictureError::WrongKind => Refusal::said("refused-photo-kind", std::slice::from_ref(&named)),
        PictureError::TooLarge => {
            let most = [("side", pictures::MOST_SIDE.into()), ("millions", pictures::MOST_MILLIONS.into())];
            Refusal::said("refused-photo-large", &[std::slice::from_ref(&named), &most[..]].concat())
        }
        PictureError::CutOff => Refusal::said("refused-picture-cut-off", std::slice::from_ref(&named)),
        PictureError::Unreadable(reason) | PictureError::Damaged(reason) => {
            Refusal::said("refused-picture-damaged", &[named.clone(), ("reason", reason.into())])
        }
    };
    let meta = fs::metadata(path).map_err(|_| refused(&PictureError::Missing))?;
    if !meta.is_file() {
        return Err(refused(&PictureError::WrongKind));
    }
    if meta.len() > pictures::MOST_BYTES {
        return Err(refused(&PictureError::TooLarge));
    }
    let bytes = fs::read(path).map_err(|error| refused(&PictureError::Unreadable(error.to_string())))?;
    let read = pictures::decode_whole(&bytes).map_err(|error| refused(&error))?;
    let side = |pixels: u32| usize::try_from(pixels).unwrap_or(usize::MAX);
    Raster::new(side(read.width), side(read.height), read.rgb).ok_or_else(|| refused(&PictureError::TooLarge))
}

#[derive(Debug, Serialize)]
struct SquareView {
    /// Top left, top right, bottom right, bottom left, in pixels of the upright photo, y down.
    corners: [[f64; 2]; 4],
    /// 0 to 1; absent where the corners were given.
    #[serde(skip_serializing_if = "Option::is_none")]
    confidence: Option<f64>,
    doubts: Vec<&'static str>,
    width_px: usize,
    height_px: usize,
    #[serde(skip_serializing_if = "Option::is_none")]
    reference: Option<ReferenceView>,
}

/// How colours were put right.
#[derive(Debug, Serialize)]
struct ReferenceView {
    way: &'static str,
    /// Rows for red, green and blue light; the fourth number is a constant.
    map: photo::reference::Map,
    patches: Vec<OffView>,
    mean: OffView,
    /// From 1.
    #[serde(skip_serializing_if = "Option::is_none")]
    suspect: Option<usize>,
}

/// ΔE₀₀.
#[derive(Debug, Serialize)]
struct OffView {
    before: f64,
    after: f64,
}

impl ReferenceView {
    fn of(reference: &Reference) -> Self {
        let off = |off: &Off| OffView { before: off.before, after: off.after };
        let way = match reference.way() {
            Way::Gains => "gains",
            Way::Offset => "gains-and-offset",
            Way::Matrix => "matrix",
        };
        Self {
            way,
            map: *reference.map(),
            patches: reference.off().iter().map(off).collect(),
            mean: off(&reference.mean()),
            suspect: reference.suspect().map(|number| number + 1),
        }
    }
}

/// The patches of the command line, then those of its file.
fn patches(request: &SquareRequest) -> Result<Vec<Line>, Refusal> {
    let plain = |what: String| Refusal::Said { what, remedy: None };
    let typed = |(number, text): (usize, &String)| {
        let whose = || say("patch-of-the-command", &[("number", (number + 1).into())]);
        references::line(text).map_err(|unread| plain(unread.said(whose(), text)))
    };
    let mut lines: Vec<Line> = request.patches.iter().enumerate().map(typed).collect::<Result<_, _>>()?;
    if let Some(path) = &request.references {
        let unread = |reason: String| {
            let facts = [("path", Fact::Text(path.display().to_string())), ("reason", reason.into())];
            Refusal::said("refused-reference-file", &facts)
        };
        let meta = fs::metadata(path).map_err(|error| unread(error.to_string()))?;
        if !meta.is_file() || meta.len() > MOST_TEXT {
            return Err(unread(references::many()));
        }
        let text = fs::read_to_string(path).map_err(|error| unread(error.to_string()))?;
        lines.extend(references::lines(&text).map_err(plain)?);
    }
    if lines.len() > references::MOST {
        return Err(plain(references::many()));
    }
    if !lines.is_empty() && request.neutral.is_some() {
        return Err(plain(say("photo-one-way", &[])));
    }
    Ok(lines)
}

/// Finds or takes the corners, and writes the straight picture.
pub(super) fn square(request: &SquareRequest, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    let lines = patches(request)?;
    let photo = load(&request.photo)?;
    let named = [("picture", Fact::Text(request.photo.display().to_string()))];
    let (corners, found) = match request.corners {
        Some(given) => (Quad::new(given).map_err(|error| crossed(&error))?, None),
        None => {
            let found = photo::find_corners(&photo, squaring::proportion(request.size))
                .ok_or_else(|| Refusal::said("refused-no-sheet", &named))?;
            (found.corners, Some(found))
        }
    };
    let (width, height) = squaring::pixels(request.size, i64::from(request.dots));
    let plain = |refused: references::Refused| Refusal::Said { what: refused.said, remedy: None };
    let reference = (!lines.is_empty()).then(|| references::fitted(&photo, &lines)).transpose().map_err(plain)?;
    let wanted = Wanted { corners, even: request.even, neutral: request.neutral, reference };
    let flat = wanted.squared(&photo, (width, height));
    let side = |pixels: usize| u32::try_from(pixels).unwrap_or(u32::MAX);
    let refused = |reason: String| {
        Refusal::said(
            "refused-out-disk",
            &[("path", Fact::Text(request.out.display().to_string())), ("reason", reason.into())],
        )
    };
    let bytes = pictures::png(side(width), side(height), flat.rgb()).map_err(|error| refused(error.to_string()))?;
    fs::write(&request.out, bytes).map_err(|error| refused(error.to_string()))?;
    let doubts = found.as_ref().map(|found| found.doubts.clone()).unwrap_or_default();
    let places = corners.corners();
    if request.json {
        desk.json(&SquareView {
            corners: places.map(|at| [at.x, at.y]),
            confidence: found.map(|found| found.confidence),
            doubts: doubts.iter().map(|doubt| code(*doubt)).collect(),
            width_px: width,
            height_px: height,
            reference: wanted.reference.as_ref().map(ReferenceView::of),
        })?;
    } else {
        let written = places.map(|at| format!("{:.0},{:.0}", at.x, at.y)).join(" ");
        let facts = [("path", Fact::Text(request.out.display().to_string())), ("corners", written.into())];
        writeln!(desk.out, "{}", say("squared", &facts))?;
        for told in wanted.reference.iter().flat_map(|reference| references::told(reference, &lines)) {
            writeln!(desk.out, "{told}")?;
        }
        for doubt in &doubts {
            writeln!(desk.err, "{}", doubted(*doubt))?;
        }
    }
    Ok(if doubts.is_empty() { Done::Well } else { Done::Seriously })
}

fn crossed(error: &QuadError) -> Refusal {
    match error {
        QuadError::Crossed => Refusal::said("refused-corners-crossed", &[]),
        QuadError::Mirrored => Refusal::said("refused-corners-mirrored", &[]),
        QuadError::NotFinite | QuadError::Hollow | QuadError::TooSmall => Refusal::said("refused-corners-hollow", &[]),
    }
}

fn code(doubt: Doubt) -> &'static str {
    match doubt {
        Doubt::FaintSide => "faint-side",
        Doubt::GoesOn => "goes-on",
        Doubt::Margin => "margin",
        Doubt::Rival => "rival",
        Doubt::Small => "small",
        Doubt::AtEdge => "at-edge",
        Doubt::Proportion => "proportion",
    }
}

fn doubted(doubt: Doubt) -> String {
    match doubt {
        Doubt::FaintSide => say("doubt-faint-side", &[]),
        Doubt::GoesOn => say("doubt-goes-on", &[]),
        Doubt::Margin => say("doubt-margin", &[]),
        Doubt::Rival => say("doubt-rival", &[]),
        Doubt::Small => say("doubt-small", &[]),
        Doubt::AtEdge => say("doubt-at-edge", &[]),
        Doubt::Proportion => say("doubt-proportion", &[]),
    }
}

#[derive(Debug, Serialize)]
struct ColorView {
    color: String,
    share: f64,
    lab: [f64; 3],
}

#[derive(Debug, Serialize)]
struct PaperView {
    paper: String,
    nearest: String,
    delta_e: f64,
    pairing: Option<&'static str>,
}

#[derive(Debug, Serialize)]
struct ColorsView {
    colors: Vec<ColorView>,
    papers: Vec<PaperView>,
    #[serde(skip_serializing_if = "Option::is_none")]
    ink_worst: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    ink_median: Option<f64>,
}

/// The colours of a picture, how papers go with it, and how an ink reads on it.
pub(super) fn colors(request: &ColorsRequest, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    if request.picture.extension().is_some_and(|kind| kind.eq_ignore_ascii_case("toml")) {
        return matched::run(&request.picture, request.json, desk);
    }
    let (picture, _) = load(&request.picture)?.shrunk(600);
    let pixels: Vec<color::Srgb> =
        picture.rgb().chunks_exact(3).map(|pixel| color::Srgb::new(pixel[0], pixel[1], pixel[2])).collect();
    let found = color::palette_of(&pixels, 8);
    let ground = request.ink.and_then(|ink| color::legible_on(ink, &pixels, picture.width(), picture.width() / 60));
    let papers = request.papers.iter().filter_map(|paper| {
        let held = colors::held_against(*paper, &found)?;
        Some((*paper, held.nearest, held.delta_e, held.pairing))
    });
    let papers: Vec<_> = papers.collect();
    if request.json {
        let colors = found.iter().map(|of| ColorView {
            color: of.color.to_string(),
            share: of.share,
            lab: [of.lab.l, of.lab.a, of.lab.b],
        });
        desk.json(&ColorsView {
            colors: colors.collect(),
            papers: papers
                .iter()
                .map(|(paper, nearest, delta_e, pairing)| PaperView {
                    paper: paper.to_string(),
                    nearest: nearest.to_string(),
                    delta_e: *delta_e,
                    pairing: pairing.map(pairing_code),
                })
                .collect(),
            ink_worst: ground.map(|ground| ground.worst),
            ink_median: ground.map(|ground| ground.median),
        })?;
        return Ok(Done::Well);
    }
    for of in &found {
        let facts = [("color", Fact::Text(of.color.to_string())), ("share", format!("{:.0}", of.share * 100.0).into())];
        writeln!(desk.out, "{}", say("colors-share", &facts))?;
    }
    for (paper, nearest, delta_e, pairing) in papers {
        let (near, goes) = (colors::near(delta_e), colors::goes(pairing));
        let facts = [
            ("paper", Fact::Text(paper.to_string())),
            ("nearest", Fact::Text(nearest.to_string())),
            ("delta", format!("{delta_e:.1}").into()),
            ("near", near.into()),
            ("goes", goes.into()),
        ];
        writeln!(desk.out, "{}", say("colors-paper", &facts))?;
    }
    if let (Some(ink), Some(ground)) = (request.ink, ground) {
        let facts = [
            ("ink", Fact::Text(ink.to_string())),
            ("worst", format!("{:.1}", ground.worst).into()),
            ("median", format!("{:.1}", ground.median).into()),
            ("below", format!("{:.0}", ground.share_below * 100.0).into()),
        ];
        writeln!(desk.out, "{}", say("colors-ink", &facts))?;
    }
    writeln!(desk.err, "{}", say("colors-daylight", &[]))?;
    Ok(Done::Well)
}

pub(super) fn pairing_code(pairing: color::Pairing) -> &'static str {
    match pairing {
        color::Pairing::Match => "match",
        color::Pairing::ToneOnTone => "tone-on-tone",
        color::Pairing::Contrast => "contrast",
        color::Pairing::Neutral => "neutral",
    }
}
