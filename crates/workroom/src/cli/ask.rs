//! What was asked for on the command line. Every text comes from the message files.

use std::ffi::OsString;
use std::path::PathBuf;

use clap::builder::{PossibleValuesParser, Styles};
use clap::error::{ContextKind, ContextValue, ErrorKind};
use clap::{Arg, ArgAction, ArgMatches, Command, value_parser};
use drawing::sheets::{Hand, Print};
use measure::{Length, Unit};
use words::{Language, say};

use super::open::OpenRequest;
use super::{Refusal, interest, panels, picture, replan, why};

/// One command, read and checked.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Asked {
    /// `octavo` alone: the workroom.
    Open(OpenRequest),
    /// Help or the version, ready to print.
    Text(String),
    /// Not understood.
    Refused(Box<Refusal>),
    /// `octavo make`.
    Make(MakeRequest),
    /// `octavo solve`.
    Solve(SolveRequest),
    /// `octavo schema`: of what.
    Schema(String),
    /// `octavo spoiled`.
    Spoiled(super::spoiled::Request),
    /// `octavo post`, `octavo supplies`, `octavo class`.
    Trade(super::trade::Request),
    /// `octavo greetings`.
    Greetings(super::greetings::Request),
    /// `octavo why`.
    Why(why::Request),
    /// `octavo square`.
    Square(picture::SquareRequest),
    /// `octavo panels`.
    Panels(panels::PanelsRequest),
    /// `octavo interest`.
    Interest(interest::InterestRequest),
    /// `octavo colors`.
    Colors(picture::ColorsRequest),
    /// `octavo background`.
    Background(super::background::Request),
    /// `octavo replan`.
    Replan(replan::Request),
}

/// Which project to make.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Source {
    /// The demo that comes with the program.
    Demo,
    /// A project file.
    File(PathBuf),
}

/// The page to print on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Page {
    /// 8 1/2 × 11 in.
    Letter,
    /// 210 × 297 mm.
    A4,
}

/// `octavo make`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct MakeRequest {
    /// What to make.
    pub(super) source: Source,
    /// Where everything is written.
    pub(super) out: PathBuf,
    /// The page to print on; `None`: the one that goes with the project's unit.
    pub(super) page: Option<Page>,
    /// How large the words are.
    pub(super) print: Print,
    /// The hand that moves the blade.
    pub(super) hand: Hand,
    /// The unit of the measures; `None`: the project's own.
    pub(super) unit: Option<Unit>,
    /// True: write every edition for the page.
    pub(super) every_edition: bool,
    /// What the printed test square of one inch measured.
    pub(super) square: Option<Length>,
    /// True: also print the plan as JSON.
    pub(super) json: bool,
}

/// `octavo solve`.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct SolveRequest {
    /// The instance.
    pub(super) file: PathBuf,
    /// True: print the answer as JSON; otherwise as a sentence.
    pub(super) json: bool,
    /// Most nodes.
    pub(super) nodes: Option<u64>,
    /// Most seconds.
    pub(super) seconds: f64,
}

/// Seconds a search may take when nothing else is said.
/// Chosen: long enough for nearly every sheet a maker cuts, short enough to wait for.
const DEFAULT_SECONDS: f64 = 30.0;

/// What there is a schema of; the first where nothing is said.
const SCHEMAS: [&str; 4] = ["project", "plan", "question", "solve"];

/// Which language was asked for, and the rest of the command line; the last one named counts.
///
/// It is taken out before the rest is read, because what that says is in it already. A language that is not spoken here
/// is left in, for the reader to refuse.
pub(super) fn language(args: impl IntoIterator<Item = OsString>) -> (Language, Vec<OsString>) {
    let mut language = Language::default();
    let mut rest: Vec<OsString> = Vec::new();
    let mut args = args.into_iter().peekable();
    while let Some(arg) = args.next() {
        let joined = arg.to_str().and_then(|text| text.strip_prefix("--language=")).and_then(Language::of_tag);
        if let Some(named) = joined {
            language = named;
            continue;
        }
        let named = args.peek().filter(|_| arg == "--language");
        if let Some(named) = named.and_then(|next| next.to_str()).and_then(Language::of_tag) {
            language = named;
            args.next();
            continue;
        }
        rest.push(arg);
    }
    (language, rest)
}

/// Read a command line.
pub(super) fn read(args: impl IntoIterator<Item = OsString>) -> Asked {
    match command().try_get_matches_from(args) {
        Ok(matches) => match matches.subcommand() {
            Some(("make", given)) => Asked::Make(make_request(given)),
            Some(("solve", given)) => Asked::Solve(solve_request(given)),
            Some(("schema", given)) => Asked::Schema(word(given, "of").unwrap_or(SCHEMAS[0]).to_owned()),
            Some(("spoiled", given)) => Asked::Spoiled(super::spoiled::Request::read(given)),
            Some((verb @ ("post" | "supplies" | "class"), given)) => {
                Asked::Trade(super::trade::Request::read(verb, given))
            }
            Some(("greetings", given)) => Asked::Greetings(super::greetings::Request::read(given)),
            Some(("why", given)) => Asked::Why(why::Request::read(given)),
            Some(("square", given)) => Asked::Square(picture::SquareRequest::read(given)),
            Some(("background", given)) => Asked::Background(super::background::Request::read(given)),
            Some(("panels", given)) => Asked::Panels(panels::PanelsRequest::read(given)),
            Some(("interest", given)) => Asked::Interest(interest::InterestRequest::read(given)),
            Some(("colors", given)) => Asked::Colors(picture::ColorsRequest::read(given)),
            Some(("replan", given)) => Asked::Replan(replan::Request::read(given)),
            _ => Asked::Open(open_request(&matches)),
        },
        Err(error) => match error.kind() {
            ErrorKind::DisplayHelp
            | ErrorKind::DisplayVersion
            | ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand => Asked::Text(error.render().to_string()),
            _ => Asked::Refused(Box::new(refusal(&error))),
        },
    }
}

fn open_request(given: &ArgMatches) -> OpenRequest {
    OpenRequest {
        port: given.get_one::<u16>("port").copied(),
        data: given.get_one::<PathBuf>("data").cloned(),
        browser: !given.get_flag("no-open"),
    }
}

fn make_request(given: &ArgMatches) -> MakeRequest {
    MakeRequest {
        source: given.get_one::<PathBuf>("file").map_or(Source::Demo, |file| Source::File(file.clone())),
        out: given.get_one::<PathBuf>("out").cloned().unwrap_or_default(),
        page: given.get_one::<String>("sheet").map(|name| if name == "a4" { Page::A4 } else { Page::Letter }),
        print: match word(given, "print") {
            Some("large") => Print::Large,
            _ => Print::Normal,
        },
        hand: match word(given, "hand") {
            Some("left") => Hand::Left,
            _ => Hand::Right,
        },
        unit: word(given, "units").map(|unit| if unit == "mm" { Unit::Millimetre } else { Unit::Inch }),
        every_edition: given.get_flag("every-edition"),
        square: given.get_one::<Length>("square-measured").copied(),
        json: given.get_flag("json"),
    }
}

fn word<'a>(given: &'a ArgMatches, name: &str) -> Option<&'a str> {
    given.get_one::<String>(name).map(String::as_str)
}

fn solve_request(given: &ArgMatches) -> SolveRequest {
    SolveRequest {
        file: given.get_one::<PathBuf>("file").cloned().unwrap_or_default(),
        json: given.get_flag("json"),
        nodes: given.get_one::<u64>("nodes").copied(),
        seconds: given.get_one::<f64>("seconds").copied().unwrap_or(DEFAULT_SECONDS),
    }
}

fn command() -> Command {
    Command::new("octavo")
        .version(env!("CARGO_PKG_VERSION"))
        .styles(Styles::plain())
        .about(say("help-about", &[]))
        .after_help(say("help-examples", &[]))
        .disable_help_subcommand(false)
        .args_conflicts_with_subcommands(true)
        .arg(
            Arg::new("port")
                .long("port")
                .value_name("PORT")
                .value_parser(value_parser!(u16))
                .help(say("help-port", &[])),
        )
        .arg(
            Arg::new("data")
                .long("data")
                .value_name("FILE")
                .value_parser(value_parser!(PathBuf))
                .help(say("help-data", &[])),
        )
        .arg(Arg::new("no-open").long("no-open").action(ArgAction::SetTrue).help(say("help-no-open", &[])))
        .arg(
            Arg::new("language")
                .long("language")
                .value_name("LANGUAGE")
                .global(true)
                .value_parser(PossibleValuesParser::new(Language::ALL.map(Language::tag)))
                .help(say("help-language", &[])),
        )
        .subcommand(make_command())
        .subcommand(solve_command())
        .subcommand(schema_command())
        .subcommand(super::spoiled::command())
        .subcommands(super::trade::commands())
        .subcommand(super::greetings::command())
        .subcommand(why::command())
        .subcommand(replan::command())
        .subcommand(super::background::command())
        .subcommand(picture::square_command())
        .subcommand(panels::command())
        .subcommand(interest::command())
        .subcommand(picture::colors_command())
}

/// The project file, which the demo can stand in for.
pub(super) fn file() -> Arg {
    Arg::new("file")
        .value_name("FILE")
        .value_parser(value_parser!(PathBuf))
        .required_unless_present("demo")
        .conflicts_with("demo")
        .help(say("help-make.file", &[]))
}

fn make_command() -> Command {
    Command::new("make")
        .about(say("help-make", &[]))
        .after_help(say("help-make.examples", &[]))
        .arg(file())
        .arg(Arg::new("demo").long("demo").action(ArgAction::SetTrue).help(say("help-make.demo", &[])))
        .arg(
            Arg::new("out")
                .long("out")
                .value_name("DIR")
                .value_parser(value_parser!(PathBuf))
                .required(true)
                .help(say("help-make.out", &[])),
        )
        .arg(
            Arg::new("sheet")
                .long("sheet")
                .value_name("PAGE")
                .value_parser(PossibleValuesParser::new(["letter", "a4"]))
                .help(say("help-make.sheet", &[])),
        )
        .arg(
            Arg::new("print")
                .long("print")
                .value_name("SIZE")
                .value_parser(PossibleValuesParser::new(["normal", "large"]))
                .help(say("help-make.print", &[])),
        )
        .arg(
            Arg::new("hand")
                .long("hand")
                .value_name("HAND")
                .value_parser(PossibleValuesParser::new(["right", "left"]))
                .help(say("help-make.hand", &[])),
        )
        .arg(
            Arg::new("units")
                .long("units")
                .value_name("UNIT")
                .value_parser(PossibleValuesParser::new(["inches", "mm"]))
                .help(say("help-make.units", &[])),
        )
        .arg(
            Arg::new("every-edition")
                .long("every-edition")
                .action(ArgAction::SetTrue)
                .conflicts_with_all(["print", "hand", "units"])
                .help(say("help-make.every-edition", &[])),
        )
        .arg(
            Arg::new("square-measured")
                .long("square-measured")
                .value_name("LENGTH")
                .value_parser(measured_square)
                .help(say("help-make.square-measured", &[])),
        )
        .arg(Arg::new("json").long("json").action(ArgAction::SetTrue).help(say("help-make.json", &[])))
}

/// What a printed square of one inch measured: a length, or a number of inches. Chosen: no printer is off by more
/// than a quarter; whoever measures more has measured something else.
pub(super) fn measured_square(text: &str) -> Result<Length, String> {
    let quarter = Length::from_ticks(Length::INCH.ticks() / 4);
    measure::parse_length(text, Some(Unit::Inch))
        .ok()
        .filter(|length| *length >= Length::INCH - quarter && *length <= Length::INCH + quarter)
        .ok_or_else(|| say("refused-square", &[]))
}

fn solve_command() -> Command {
    Command::new("solve")
        .about(say("help-solve", &[]))
        .after_help(say("help-solve.examples", &[]))
        .arg(
            Arg::new("file")
                .value_name("FILE")
                .value_parser(value_parser!(PathBuf))
                .required(true)
                .help(say("help-solve.file", &[])),
        )
        .arg(Arg::new("json").long("json").action(ArgAction::SetTrue).help(say("help-solve.json", &[])))
        .arg(
            Arg::new("nodes")
                .long("nodes")
                .value_name("N")
                .value_parser(value_parser!(u64).range(1..))
                .help(say("help-solve.nodes", &[])),
        )
        .arg(
            Arg::new("seconds")
                .long("seconds")
                .value_name("S")
                .value_parser(seconds)
                .help(say("help-solve.seconds", &[("default", DEFAULT_SECONDS.to_string().into())])),
        )
}

fn schema_command() -> Command {
    Command::new("schema").about(say("help-schema", &[])).after_help(say("help-schema.examples", &[])).arg(
        Arg::new("of")
            .value_name("OF")
            .value_parser(PossibleValuesParser::new(SCHEMAS))
            .help(say("help-schema.of", &[])),
    )
}

/// Seconds above zero and below a year.
fn seconds(text: &str) -> Result<f64, String> {
    text.parse::<f64>()
        .ok()
        .filter(|seconds| *seconds > 0.0 && *seconds < 3.2e7)
        .ok_or_else(|| say("refused-seconds", &[]))
}

/// Options whose values are read by us: what we say of a bad one is told.
const OWN_WORDS: [&str; 7] = ["--corners", "--neutral", "--patch", "--size", "--marks", "--paper", "--ink"];

/// A refusal of `clap` in our own words.
fn refusal(error: &clap::Error) -> Refusal {
    let context = |kind| match error.get(kind) {
        Some(ContextValue::String(text)) => text.clone(),
        Some(ContextValue::Strings(texts)) => texts.join(" "),
        _ => String::new(),
    };
    let (argument, value) = (context(ContextKind::InvalidArg), context(ContextKind::InvalidValue));
    let facts = |name: &str, text: String| [(name.to_owned(), text)];
    let (id, found) = match error.kind() {
        ErrorKind::InvalidSubcommand => {
            ("refused-verb", facts("verb", context(ContextKind::InvalidSubcommand)).to_vec())
        }
        ErrorKind::MissingRequiredArgument => ("refused-missing-argument", facts("argument", argument).to_vec()),
        ErrorKind::ArgumentConflict => ("refused-conflict", facts("argument", argument).to_vec()),
        ErrorKind::InvalidValue | ErrorKind::ValueValidation if value.is_empty() => {
            ("refused-no-value", facts("argument", argument).to_vec())
        }
        // Our own readers of values say what would do.
        ErrorKind::ValueValidation if OWN_WORDS.contains(&argument.split(' ').next().unwrap_or_default()) => {
            let why = std::error::Error::source(error).map(ToString::to_string).unwrap_or_default();
            let all = [facts("argument", argument), facts("value", value), facts("why", why)];
            ("refused-value-own", all.concat())
        }
        ErrorKind::InvalidValue | ErrorKind::ValueValidation => {
            ("refused-value", [facts("argument", argument), facts("value", value)].concat())
        }
        _ => ("refused-argument", facts("argument", argument).to_vec()),
    };
    let args: Vec<(&str, words::Arg)> = found.iter().map(|(name, text)| (name.as_str(), text.into())).collect();
    Refusal::said(id, &args)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asked(line: &str) -> Asked {
        read(line.split(' ').map(OsString::from))
    }

    #[test]
    fn the_command_tree_is_sound() {
        command().debug_assert();
    }

    #[test]
    fn the_bare_name_opens_the_workroom() {
        assert_eq!(asked("octavo"), Asked::Open(OpenRequest { port: None, data: None, browser: true }));
        let Asked::Open(open) = asked("octavo --no-open --port 4000 --data p.db") else { panic!("not open") };
        assert_eq!((open.port, open.data, open.browser), (Some(4000), Some("p.db".into()), false));
    }

    #[test]
    fn make_takes_a_file_or_the_demo() {
        let Asked::Make(made) = asked("octavo make --demo --out d --sheet a4") else { panic!("not make") };
        assert_eq!((made.source, made.page, made.json), (Source::Demo, Some(Page::A4), false));
        let Asked::Make(made) = asked("octavo make p.toml --out d --json") else { panic!("not make") };
        assert_eq!((made.source, made.page, made.json), (Source::File("p.toml".into()), None, true));
    }

    #[test]
    fn schema_is_of_the_project_unless_told() {
        assert_eq!(asked("octavo schema"), Asked::Schema("project".to_owned()));
        assert_eq!(asked("octavo schema solve"), Asked::Schema("solve".to_owned()));
    }

    #[test]
    fn editions_are_asked_for_in_plain_words() {
        let line = "octavo make --demo --out d --print large --hand left --units mm --square-measured 0.98";
        let Asked::Make(made) = asked(line) else { panic!("not make") };
        assert_eq!((made.print, made.hand, made.unit), (Print::Large, Hand::Left, Some(Unit::Millimetre)));
        assert_eq!(made.square, Some(Unit::Inch.thousandths(980)));
        let Asked::Make(made) = asked("octavo make --demo --out d --every-edition") else { panic!("not make") };
        assert!(made.every_edition && made.print == Print::Normal && made.unit.is_none());
    }

    #[test]
    fn refusals_say_what_would_do() {
        for line in [
            "octavo bake",
            "octavo make",
            "octavo make --demo",
            "octavo make x --demo --out d",
            "octavo make x --out d --sheet a3",
            "octavo make x --out d --print huge",
            "octavo make x --out d --hand both",
            "octavo make x --out d --units yards",
            "octavo make x --out d --every-edition --print large",
            "octavo make x --out d --square-measured 2",
            "octavo make x --out d --square-measured soon",
            "octavo solve",
            "octavo --port 99999",
            "octavo solve f --seconds -1",
            "octavo solve f --seconds soon",
            "octavo solve f --nodes 0",
            "octavo solve f --quickly",
            "octavo schema envelope",
            "octavo replan p.toml",
            "octavo post",
            "octavo class p.toml --today soon",
            "octavo class p.toml --on gold",
            "octavo greetings",
            "octavo greetings --stamp s.png",
            "octavo greetings --stamp s.png --wide soon",
            "octavo greetings --stamp s.png --wide 900in",
            "octavo greetings p.toml --demo",
            "octavo replan p.toml --unit ell",
            "octavo replan p.toml --people none",
            "octavo replan p.toml --people 0",
            "octavo replan p.toml --spare-kits 2",
            "octavo replan p.toml --people 20 --cards 100",
        ] {
            let Asked::Refused(refusal) = asked(line) else { panic!("`{line}` was understood") };
            let text = refusal.to_string();
            assert!(text.contains(": ") && !text.contains('⟨'), "`{line}` gives `{text}`");
        }
    }

    #[test]
    fn help_teaches_by_example() {
        for verb in [
            "help",
            "--help",
            "help make",
            "help solve",
            "help schema",
            "help spoiled",
            "help why",
            "help replan",
            "help post",
            "help supplies",
            "help class",
            "help greetings",
        ] {
            let line = &format!("octavo {verb}");
            let Asked::Text(text) = asked(line) else { panic!("`{line}` gives no help") };
            assert!(text.contains("  octavo ") && !text.contains('⟨'), "`{line}` gives `{text}`");
        }
    }
}
