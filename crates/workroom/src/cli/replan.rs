//! `octavo replan`: the same project on another sheet, in the other unit, for other people; as a new file.

use std::fs::{self, OpenOptions};
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

use cards::replan::{Fate, Replanned, Told, Wanted, replan};
use cards::{Finding, Severity};
use clap::builder::PossibleValuesParser;
use clap::{Arg, ArgAction, ArgGroup, ArgMatches, Command, value_parser};
use measure::{Length, Size, Unit};
use serde::Serialize;
use store::project_file;
use words::say;

use super::ask::Source;
use super::make::{self, NODES};
use super::{Desk, Done, Refusal};
use crate::make::DEMO_NAME;
use crate::wording;

/// What was asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Request {
    source: Source,
    sheet: Option<String>,
    cardstock: Option<String>,
    unit: Option<Unit>,
    people: Option<u32>,
    spare_kits: Option<u32>,
    cards: Option<u32>,
    out: Option<PathBuf>,
    replace: bool,
    json: bool,
}

impl Request {
    pub(super) fn read(given: &ArgMatches) -> Request {
        let text = |name: &str| given.get_one::<String>(name).cloned();
        let count = |name: &str| given.get_one::<u32>(name).copied();
        let file = given.get_one::<PathBuf>("file");
        Request {
            source: file.map_or(Source::Demo, |file| Source::File(file.clone())),
            sheet: text("sheet"),
            cardstock: text("cardstock"),
            unit: text("unit").map(|unit| if unit == "mm" { Unit::Millimetre } else { Unit::Inch }),
            people: count("people"),
            spare_kits: count("spare-kits"),
            cards: count("cards"),
            out: given.get_one::<PathBuf>("out").cloned(),
            replace: given.get_flag("replace"),
            json: given.get_flag("json"),
        }
    }

    /// Where the new project goes: beside the old one, under a name that says what changed.
    fn target(&self) -> PathBuf {
        if let Some(out) = &self.out {
            return out.clone();
        }
        let source = match &self.source {
            Source::Demo => Path::new(DEMO_NAME),
            Source::File(file) => file,
        };
        let mut name = source.file_stem().unwrap_or_default().to_string_lossy().into_owned();
        let plain = |text: &str| {
            let sign = |sign: char| if sign.is_alphanumeric() { sign.to_ascii_lowercase() } else { '-' };
            text.trim().replace(' ', "").chars().map(sign).collect::<String>()
        };
        let changes = [
            self.unit.map(|unit| if unit == Unit::Millimetre { "mm" } else { "in" }.to_owned()),
            self.sheet.as_deref().map(plain),
            self.cardstock.as_deref().map(|sheet| format!("cardstock-{}", plain(sheet))),
            self.people.map(|people| format!("{people}-people")),
            self.cards.map(|cards| format!("{cards}-cards")),
        ];
        for change in changes.into_iter().flatten() {
            name.push('-');
            name.push_str(&change);
        }
        source.with_file_name(format!("{name}.toml"))
    }
}

pub(super) fn command() -> Command {
    let value = |name: &'static str, shown: &'static str| Arg::new(name).long(name).value_name(shown);
    let count = || value_parser!(u32).range(1..=10_000);
    Command::new("replan")
        .about(say("help-replan", &[]))
        .after_help(say("help-replan.examples", &[]))
        .arg(super::ask::file().help(say("help-replan.file", &[])))
        .arg(Arg::new("demo").long("demo").action(ArgAction::SetTrue).help(say("help-replan.demo", &[])))
        .arg(value("sheet", "SIZE").help(say("help-replan.sheet", &[])))
        .arg(value("cardstock", "SIZE").help(say("help-replan.cardstock", &[])))
        .arg(
            value("unit", "UNIT")
                .value_parser(PossibleValuesParser::new(["mm", "in"]))
                .help(say("help-replan.unit", &[])),
        )
        .arg(value("people", "N").value_parser(count()).help(say("help-replan.people", &[])))
        .arg(
            value("spare-kits", "N")
                .value_parser(value_parser!(u32).range(0..=10_000))
                .requires("people")
                .help(say("help-replan.spare-kits", &[])),
        )
        .arg(
            value("cards", "N")
                .value_parser(value_parser!(u32).range(1..=50_000))
                .conflicts_with("people")
                .help(say("help-replan.cards", &[])),
        )
        .arg(value("out", "FILE").value_parser(value_parser!(PathBuf)).help(say("help-replan.out", &[])))
        .arg(Arg::new("replace").long("replace").action(ArgAction::SetTrue).help(say("help-replan.replace", &[])))
        .arg(Arg::new("json").long("json").action(ArgAction::SetTrue).help(say("help-replan.json", &[])))
        .group(
            ArgGroup::new("change")
                .args(["sheet", "cardstock", "unit", "people", "cards"])
                .required(true)
                .multiple(true),
        )
}

/// Re-plan, tell what became of each recipe, write the new project.
pub(super) fn run(request: &Request, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    let project = make::project(&request.source)?;
    let unit = request.unit.unwrap_or(project.unit);
    let wanted = Wanted {
        sheet: request.sheet.as_deref().map(|text| sheet(text, unit)).transpose()?,
        cardstock: request.cardstock.as_deref().map(|text| sheet(text, unit)).transpose()?,
        unit: request.unit,
        people: request.people,
        spare_kits: request.spare_kits,
        cards: request.cards,
    };
    let target = request.target();
    let there = target.symlink_metadata().is_ok();
    if let Source::File(file) = &request.source
        && there
        && fs::canonicalize(file).ok() == fs::canonicalize(&target).ok()
    {
        return Err(refused("refused-replan-itself", &target));
    }
    if there && !request.replace {
        return Err(refused("refused-replan-exists", &target));
    }
    // A plan before, plans on the way and one after.
    let made = make::watched(NODES * 4, desk, |budget| replan(&project, &wanted, budget));
    let nothing = made.after.cards.is_empty();
    if request.json {
        desk.json(&view(&made, &target))?;
    } else {
        tell(&made, desk)?;
    }
    if nothing {
        return Err(Refusal::said("refused-replan-nothing", &[]));
    }
    let text = project_file::write(made.project());
    if project_file::read(&text).as_ref() != Ok(made.project()) {
        return Err(Refusal::said("refused-replan-unread", &[]));
    }
    write(&target, &text, there).map_err(|error| {
        let facts = [("path", target.display().to_string().into()), ("reason", error.to_string().into())];
        Refusal::said("refused-out-disk", &facts)
    })?;
    if !request.json {
        written(&made, &target, there, desk)?;
    }
    let lost = made.recipes.iter().any(|told| told.fate == Fate::Lost);
    let serious = findings(&made).any(|finding| finding.severity == Severity::Serious);
    Ok(if lost || serious { Done::Seriously } else { Done::Well })
}

fn refused(id: &'static str, path: &Path) -> Refusal {
    let remedy = say(&format!("{id}.remedy"), &[]);
    Refusal::Said { what: say(id, &[("path", path.display().to_string().into())]), remedy: Some(remedy) }
}

/// A sheet by name, or two lengths. A name first: `6x6` is a pad, also for a maker who thinks in millimetres.
fn sheet(text: &str, unit: Unit) -> Result<Size, Refusal> {
    let named = measure::sheet(text).map(|row| row.size);
    let size = named.or_else(|| measure::parse_size(text, Some(unit)).ok());
    let usable = |side: Length| side >= Length::INCH && side <= Length::INCH * 78;
    size.filter(|size| usable(size.width) && usable(size.height))
        .ok_or_else(|| Refusal::said("refused-replan-sheet", &[("text", text.into())]))
}

/// Writes a file whole or not at all; one that is there is only touched if it may be replaced.
fn write(target: &Path, text: &str, replace: bool) -> io::Result<()> {
    if !replace {
        let mut file = OpenOptions::new().write(true).create_new(true).open(target)?;
        let done = file.write_all(text.as_bytes()).and_then(|()| file.sync_all());
        if done.is_err() {
            // Half a project is none; it is ours and new.
            let _ = fs::remove_file(target);
        }
        return done;
    }
    let name = target.file_name().unwrap_or_default().to_string_lossy().into_owned();
    let beside = target.with_file_name(format!(".{name}.octavo-{}", std::process::id()));
    fs::write(&beside, text).and_then(|()| fs::rename(&beside, target)).inspect_err(|_| {
        let _ = fs::remove_file(&beside);
    })
}

/// What is to know: of the change, and what is serious in the new plan and was not in the old.
fn findings(made: &Replanned) -> impl Iterator<Item = &Finding> {
    let same = |one: &Finding, other: &Finding| (one.code, &one.subject) == (other.code, &other.subject);
    // A base that fits no sheet is told with the nearest that does.
    let told = |finding: &Finding| {
        finding.code == "base-fits-no-sheet" && made.findings.iter().any(|own| own.code == "replan-no-base")
    };
    let new = move |finding: &&Finding| {
        let was = made.before.findings.iter().any(|old| same(old, finding));
        finding.severity == Severity::Serious && !was && !told(finding) && !made.after.cards.is_empty()
    };
    made.findings.iter().chain(made.after.findings.iter().filter(new))
}

/// What became of a recipe, a line for each change.
fn lines(told: &Told, made: &Replanned) -> Vec<String> {
    let (was, is) = (made.before.project.mark, made.project().mark);
    let changes = told.changes.iter().map(|change| wording::change(change, was, is));
    let ways = told.ways.iter().map(|way| say("made-way", &[("way", wording::way(way, is).into())]).trim().to_owned());
    changes.chain(ways).collect()
}

fn fate(fate: Fate) -> &'static str {
    match fate {
        Fate::Kept => "kept",
        Fate::Changed => "changed",
        Fate::Lost => "lost",
    }
}

fn tell(made: &Replanned, desk: &mut Desk<'_>) -> Result<(), Refusal> {
    for told in &made.recipes {
        let facts = [("fate", fate(told.fate).into()), ("recipe", (&told.recipe).into())];
        writeln!(desk.out, "{}", say("replan-recipe", &facts))?;
        for line in lines(told, made) {
            writeln!(desk.out, "{}", say("replan-line", &[("line", line.into())]))?;
        }
    }
    for finding in findings(made) {
        make::tell_finding(finding.severity, wording::finding(finding, made.project().mark), desk)?;
    }
    Ok(())
}

fn written(made: &Replanned, target: &Path, replaced: bool, desk: &mut Desk<'_>) -> Result<(), Refusal> {
    let counted = |id: &str, count: u32| say(id, &[("count", count.into())]).into();
    let (was, is) = (&made.before.counts, &made.after.counts);
    let facts = [
        ("cards", counted("count-cards", is.cards)),
        ("sheets", counted("count-sheets", is.paper_sheets)),
        ("cards-before", counted("count-cards", was.cards)),
        ("sheets-before", counted("count-sheets", was.paper_sheets)),
        ("path", target.display().to_string().into()),
    ];
    writeln!(desk.out, "{}", say(if replaced { "replan-replaced" } else { "replan-written" }, &facts))?;
    Ok(())
}

/// The answer for other programs.
#[derive(Debug, Serialize)]
struct View {
    project: String,
    cards: [u32; 2],
    sheets: [u32; 2],
    recipes: Vec<RecipeView>,
    findings: Vec<FindingView>,
}

/// What became of one recipe.
#[derive(Debug, Serialize)]
struct RecipeView {
    recipe: String,
    fate: &'static str,
    /// In words, from what to what; where it is lost, what would do.
    lines: Vec<String>,
}

/// One finding in words.
#[derive(Debug, Serialize)]
struct FindingView {
    code: &'static str,
    serious: bool,
    said: String,
    remedy: String,
}

fn view(made: &Replanned, target: &Path) -> View {
    let recipe =
        |told: &Told| RecipeView { recipe: told.recipe.clone(), fate: fate(told.fate), lines: lines(told, made) };
    let finding = |finding: &Finding| {
        let worded = wording::finding(finding, made.project().mark);
        let serious = finding.severity == Severity::Serious;
        FindingView { code: finding.code, serious, said: worded.said, remedy: worded.remedy }
    };
    View {
        project: target.display().to_string(),
        cards: [made.before.counts.cards, made.after.counts.cards],
        sheets: [made.before.counts.paper_sheets, made.after.counts.paper_sheets],
        recipes: made.recipes.iter().map(recipe).collect(),
        findings: findings(made).map(finding).collect(),
    }
}
