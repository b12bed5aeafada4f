//! From a project file's text to everything `octavo make` writes, without touching the disk but for pictures.
//!
//! | file | holds |
//! |---|---|
//! | `plan.json` | the whole plan for other programs ([`view`]) |
//! | `handout.pdf` | every page to print; `handout-large.pdf`, `handout-left.pdf` … in other editions |
//! | `handout.md`, `handout.txt` | its words as Markdown, and as plain text |
//! | `one-page.pdf` | pieces and cuts on one page |
//! | `templates.pdf` | pages at true size, to cut and fold by |
//! | `background-1.pdf`, `background-1-light-box.pdf` | the guide to stamp a background by |
//! | `background-1.png`, `background-1.svg` | its picture at true size |
//! | `cut-paper-1.svg`, `cut-card-1.svg` … | cut and score lines in true units |
//! | `pieces.csv`, `cardstock.csv`, `supplies.csv` | tables for a spreadsheet |
//! | `contact-sheet.png` | all finished cards on one picture (up to 400) |
//! | `every-card.pdf`, `every-card-1.png` … | every finished card, small, with its number |
//! | `cards.png` | its first page: the finished cards |
//! | `sheet-1.svg`, `sheet-1.png` … | each patterned sheet with its cuts |
//! | `card-1.png` … | a finished card of each recipe and design, by its number |
//! | the demo's project file | what to copy and change |
//!
//! Left out on purpose: the command line, clocks, and writing the files ([`crate::outputs`]).

mod backgrounds;
mod borders;
mod cores;
pub mod faces;
pub mod interest;
mod pages;
pub mod shares;
mod shown;
pub(crate) mod tables;
pub mod view;

use std::sync::Arc;

use cards::Plan;
use drawing::sheets::{Edition, Faces, Paper};
use measure::Length;

use crate::colors;
use crate::outputs::OutFile;

pub use backgrounds::backgrounds;
pub use pages::DrawingError;
pub(crate) use pages::{book, card_png, contact_png};
pub use shown::show;
pub(crate) use shown::{pieces, way};

/// The smaller demo, which the workroom opens with too: one sheet of each design.
pub const ONE_EACH: &str = include_str!("../../../../examples/kettle-and-quince.toml");
/// The demo's project file.
pub const DEMO: &str = include_str!("../../../../examples/kettle-and-quince-whole-pack.toml");
/// The demo's project file is written under this name.
pub const DEMO_NAME: &str = "kettle-and-quince-whole-pack.toml";

/// The project file of a stamped background, which `octavo background --demo` shows.
pub const BACKGROUND: &str = include_str!("../../../../examples/stamped-background.toml");

/// `plan.json` of a plan.
pub fn plan_json(plan: &Plan) -> String {
    // Cannot fail: the view has text keys only and writes into memory.
    let mut text = serde_json::to_string_pretty(&show(plan)).unwrap_or_default();
    text.push('\n');
    text
}

/// The schemas that are published in `docs/schema`, by file name.
pub fn schemas() -> [(&'static str, String); 4] {
    let written = |schema: &serde_json::Value| {
        let mut text = serde_json::to_string_pretty(schema).unwrap_or_default();
        text.push('\n');
        text
    };
    let plan = serde_json::Value::from(schemars::schema_for!(view::PlanView));
    let question = serde_json::Value::from(schemars::schema_for!(crate::solve::QuestionFile));
    let solve = serde_json::Value::from(schemars::schema_for!(crate::solve::AnswerJson));
    [
        ("plan.schema.json", written(&plan)),
        ("project.schema.json", written(&store::project_file::schema())),
        ("question.schema.json", written(&question)),
        ("solve.schema.json", written(&solve)),
    ]
}

/// What is to be written besides the plan itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wanted {
    /// The edition of the handout.
    pub edition: Edition,
    /// Every other edition for the same paper as well.
    pub every: bool,
    /// What the printed test square of one inch measured: templates are scaled by it.
    pub square: Length,
}

impl Wanted {
    /// The plain edition, on a printer that prints true.
    pub fn plain(plan: &Plan, paper: Paper) -> Wanted {
        Wanted { edition: Edition::plain(plan, paper), every: false, square: Length::INCH }
    }
}

/// Everything that is written for a plan.
///
/// # Errors
/// [`DrawingError`], a mistake of ours.
pub fn files(plan: &Plan, faces: &Faces, wanted: &Wanted) -> Result<Vec<OutFile>, DrawingError> {
    let mut files = vec![OutFile::new("plan.json", plan_json(plan))];
    let prints = colors::of_prints(faces, &|picture| Arc::new(colors::Seen::of(picture)));
    files.extend(pages::pages(plan, faces, &colors::for_pages(plan, faces, &prints), wanted)?);
    for index in 0..plan.backgrounds.len() {
        files.extend(crate::backgrounds::files(plan, index, &wanted.edition, wanted.square, &[])?);
    }
    files.extend(tables::tables(plan));
    Ok(files)
}
