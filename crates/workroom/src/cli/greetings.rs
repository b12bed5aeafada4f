//! `octavo greetings`: where each greeting comes on its strip, in which order to stamp; strips that fit; a stamp measured.

use std::fs;
use std::path::{Path, PathBuf};

use cards::stamping::{Ground, Growth, growths, place, sittings, steepest, tilt, wished};
use cards::{Plan, Project};
use clap::{Arg, ArgAction, ArgMatches, Command, value_parser};
use drawing::sheets::{Edition, Paper, stamping_told};
use measure::{Length, Size, Unit, round};
use serde_json::json;
use store::project_file;
use words::say;

use super::ask::Source;
use super::make::{self, planned};
use super::{Desk, Done, Refusal, picture};
use crate::stamps::ink_box;
use crate::web::{grown, true_width};
use crate::wording::{exact, exact_size};

/// What was asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Request {
    /// Of a project.
    Project {
        /// Which.
        source: Source,
        /// Where to write it with strips that are large enough.
        fit: Option<PathBuf>,
        /// True: as JSON.
        json: bool,
    },
    /// Of a pictured stamp, so wide.
    Stamp {
        /// The picture.
        picture: PathBuf,
        /// How wide the whole picture is in truth.
        wide: Length,
        /// The unit it was told in.
        unit: Unit,
        /// True: as JSON.
        json: bool,
    },
}

impl Request {
    pub(super) fn read(given: &ArgMatches) -> Request {
        let json = given.get_flag("json");
        if let (Some(picture), Some(wide)) = (given.get_one::<PathBuf>("stamp"), given.get_one::<String>("wide")) {
            let unit = if wide.contains('m') { Unit::Millimetre } else { Unit::Inch };
            return Request::Stamp {
                picture: picture.clone(),
                wide: true_width(wide, Unit::Inch).unwrap_or_default(),
                unit,
                json,
            };
        }
        let file = given.get_one::<PathBuf>("file");
        let source = file.map_or(Source::Demo, |file| Source::File(file.clone()));
        Request::Project { source, fit: given.get_one::<PathBuf>("fit").cloned(), json }
    }
}

pub(super) fn command() -> Command {
    let path = |name: &'static str| Arg::new(name).long(name).value_name("FILE").value_parser(value_parser!(PathBuf));
    let checked = |text: &str| {
        true_width(text, Unit::Inch).map(|_| text.to_owned()).ok_or_else(|| say("refused-stamp-wide", &[]))
    };
    Command::new("greetings")
        .about(say("help-greetings", &[]))
        .after_help(say("help-greetings.examples", &[]))
        .arg(
            Arg::new("file")
                .value_name("FILE")
                .value_parser(value_parser!(PathBuf))
                .required_unless_present_any(["demo", "stamp"])
                .conflicts_with_all(["demo", "stamp"])
                .help(say("help-make.file", &[])),
        )
        .arg(Arg::new("demo").long("demo").action(ArgAction::SetTrue).help(say("help-make.demo", &[])))
        .arg(path("fit").conflicts_with("stamp").help(say("help-greetings.fit", &[])))
        .arg(path("stamp").requires("wide").conflicts_with("demo").help(say("help-greetings.stamp", &[])))
        .arg(
            Arg::new("wide")
                .long("wide")
                .value_name("LENGTH")
                .requires("stamp")
                .value_parser(checked)
                .help(say("help-greetings.wide", &[])),
        )
        .arg(Arg::new("json").long("json").action(ArgAction::SetTrue).help(say("help-greetings.json", &[])))
}

/// Tell what was asked.
pub(super) fn run(request: &Request, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    match request {
        Request::Stamp { picture, wide, unit, json } => stamp(picture, *wide, *unit, *json, desk),
        Request::Project { source, fit, json } => {
            let project = make::project(source)?;
            if let Some(path) = fit {
                return fitted(source, &project, path, desk);
            }
            let plan = planned(&project, desk);
            if *json {
                desk.json(&view(&plan))?;
            } else {
                tell(&plan, desk)?;
            }
            Ok(if growths(&project).is_empty() { Done::Well } else { Done::Seriously })
        }
    }
}

fn tell(plan: &Plan, desk: &mut Desk<'_>) -> Result<(), Refusal> {
    let edition = Edition::plain(plan, Paper::usual(plan.project.unit));
    let all = stamping_told(plan, &edition, Length::INCH * 6);
    if all.is_empty() {
        writeln!(desk.out, "{}", say("greetings-none", &[]))?;
    }
    for told in all {
        writeln!(desk.out, "{}", told.head)?;
        for sentence in told.said {
            writeln!(desk.out, "  {sentence}")?;
        }
    }
    for growth in growths(&plan.project) {
        writeln!(desk.out, "{}", say("greetings-grow", &grown_facts(&plan.project, growth)))?;
    }
    Ok(())
}

/// A strip that has to grow: recipe, layer, from, to.
fn grown_facts(project: &Project, growth: Growth) -> [(&'static str, words::Arg); 4] {
    let [recipe, layer, from, to] = grown_words(project, growth);
    [("recipe", recipe.into()), ("layer", layer.into()), ("from", from.into()), ("to", to.into())]
}

fn grown_words(project: &Project, growth: Growth) -> [String; 4] {
    let recipe = project.recipes.get(growth.recipe);
    let layer = recipe.and_then(|recipe| recipe.layers.get(growth.layer));
    [
        recipe.map(|recipe| recipe.name.clone()).unwrap_or_default(),
        layer.map(|layer| layer.name.clone()).unwrap_or_default(),
        exact_size(growth.from, project.unit),
        exact_size(growth.to, project.unit),
    ]
}

fn view(plan: &Plan) -> serde_json::Value {
    let unit = plan.project.unit;
    let length = |length: Length| exact(length, unit);
    let rows = sittings(plan).into_iter().filter_map(|sitting| {
        let greeting = plan.project.greetings.get(sitting.greeting)?;
        let placed = place(sitting.strip, greeting, sitting.spot);
        let ink = placed.ink;
        let stocks: Vec<_> = (sitting.strips.iter())
            .map(|(ground, count)| match ground {
                Ground::Cardstock(stock) => {
                    json!({ "cardstock": plan.project.cardstocks.get(*stock).map(|stock| &stock.name), "count": count })
                }
                Ground::Print { pack, design, side } => {
                    let design = plan.project.design(*pack, *design).map(|design| &design.letter);
                    json!({ "design": design, "side": side.name(), "count": count })
                }
            })
            .collect();
        Some(json!({
            "words": greeting.words,
            "ink": greeting.ink,
            "piece": sitting.piece.as_deref().unwrap_or("strip"),
            "strip": exact_size(sitting.strip, unit),
            "ink_left": length(ink.x),
            "ink_top": length(ink.y),
            "ink_right": length(sitting.strip.width - ink.right()),
            "ink_bottom": length(sitting.strip.height - ink.bottom()),
            "stamp_left": placed.stamp.map(|stamp| length(stamp.x)),
            "stamp_top": placed.stamp.map(|stamp| length(stamp.y)),
            "impressions": sitting.count(),
            "strips": stocks,
            "one_degree_lifts": length(round::nearest(tilt(ink.size.width.max(ink.size.height), 10), unit.finest())),
            "steepest_degrees": steepest(sitting.strip, ink, wished(sitting.spot)).map(|tenths| f64::from(tenths) / 10.0),
        }))
    });
    let rows: Vec<_> = rows.collect();
    let grow = growths(&plan.project).into_iter().map(|growth| {
        let [recipe, layer, from, to] = grown_words(&plan.project, growth);
        json!({ "recipe": recipe, "layer": layer, "from": from, "to": to })
    });
    json!({ "sittings": rows, "too_small": grow.collect::<Vec<_>>() })
}

/// Writes the project with every strip large enough, comments and all.
fn fitted(source: &Source, project: &Project, path: &Path, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    let found = growths(project);
    if found.is_empty() {
        writeln!(desk.out, "{}", say("greetings-fit-already", &[]))?;
        return Ok(Done::Well);
    }
    let before = make::text(source)?;
    let text = grown(&before, project, &found).filter(|text| project_file::read(text).is_ok());
    let Some(text) = text else { return Err(Refusal::said("refused-replan-unread", &[])) };
    if path.symlink_metadata().is_ok() {
        let remedy = say("refused-replan-exists.remedy", &[]);
        let what = say("refused-replan-exists", &[("path", path.display().to_string().into())]);
        return Err(Refusal::Said { what, remedy: Some(remedy) });
    }
    fs::write(path, text).map_err(|error| {
        let facts = [("path", path.display().to_string().into()), ("reason", error.to_string().into())];
        Refusal::said("refused-out-disk", &facts)
    })?;
    for growth in found {
        writeln!(desk.out, "{}", say("greetings-grown", &grown_facts(project, growth)))?;
    }
    writeln!(desk.out, "{}", say("greetings-written", &[("path", path.display().to_string().into())]))?;
    Ok(Done::Well)
}

/// Measures a pictured stamp and says it as a project file has it.
fn stamp(path: &Path, wide: Length, unit: Unit, json: bool, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    let raster = picture::load(path)?;
    let pixels = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
    let (across, down) = (pixels(raster.width()), pixels(raster.height()));
    let named = [("path", path.display().to_string().into())];
    let Some(ink) = ink_box(across, down, raster.rgb()) else {
        return Err(Refusal::said("refused-stamp-empty", &named));
    };
    // To the finest mark of a rule: a picture is not more exact than that.
    let mark = if unit == Unit::Inch {
        Length::from_ticks(Length::INCH.ticks() / 64)
    } else {
        Length::from_ticks(Length::MM.ticks() / 10)
    };
    let length = |count: u32| round::nearest(drawing::scene::share(wide, i64::from(count), i64::from(across)), mark);
    let (left, top) = (length(ink.left), length(ink.top));
    let inked = Size::new(length(ink.left + ink.width) - left, length(ink.top + ink.height) - top);
    let size = Size::new(round::nearest(wide, mark), length(down));
    if json {
        let view = json!({
            "inked": exact_size(inked, unit),
            "stamp": { "size": exact_size(size, unit), "left": exact(left, unit), "top": exact(top, unit) },
        });
        desk.json(&view)?;
        return Ok(Done::Well);
    }
    let name = path.file_stem().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    writeln!(desk.out, "{}", say("greetings-measured", &[]))?;
    writeln!(desk.out, "\n[[greeting]]\nwords = {}", serde_json::Value::from(name))?;
    writeln!(desk.out, "inked = \"{}\"", exact_size(inked, unit))?;
    let stamp = format!(
        "size = \"{}\", left = \"{}\", top = \"{}\"",
        exact_size(size, unit),
        exact(left, unit),
        exact(top, unit)
    );
    writeln!(desk.out, "stamp = {{ {stamp} }}")?;
    let file = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    writeln!(desk.out, "picture = {}", serde_json::Value::from(file))?;
    Ok(Done::Well)
}
