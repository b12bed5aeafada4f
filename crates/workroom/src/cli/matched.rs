//! `octavo colors` on a project file: every print that shows with its colours and what goes with it.

use std::path::Path;
use std::sync::Arc;

use schemars::JsonSchema;
use serde::Serialize;
use words::say;

use super::ask::Source;
use super::make::{folder, planned_on_prints, project};
use super::picture::pairing_code;
use super::{Desk, Done, Refusal};
use crate::colors::{Seen, beside, goes, near, of_prints, read, readable};
use crate::make::faces::faces;

/// The answer as JSON.
#[derive(Debug, Serialize, JsonSchema)]
struct MatchedView {
    prints: Vec<PrintView>,
    greetings: Vec<ReadView>,
}

#[derive(Debug, Serialize, JsonSchema)]
struct PrintView {
    design: String,
    side: &'static str,
    colors: Vec<ShareView>,
    beside: Vec<BesideView>,
}

#[derive(Debug, Serialize, JsonSchema)]
struct ShareView {
    color: String,
    share: f64,
}

#[derive(Debug, Serialize, JsonSchema)]
struct BesideView {
    /// What it is: `cardstock`, `ribbon` or `ink` (of the greeting with those words).
    kind: &'static str,
    name: String,
    color: String,
    nearest: String,
    delta_e: f64,
    #[serde(skip_serializing_if = "Option::is_none")]
    pairing: Option<&'static str>,
    cards: usize,
}

#[derive(Debug, Serialize, JsonSchema)]
struct ReadView {
    words: String,
    on: String,
    contrast: f64,
}

/// Plans the project, then tells its colours.
pub(super) fn run(file: &Path, json: bool, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    let source = Source::File(file.to_owned());
    let project = project(&source)?;
    let (plan, known) = planned_on_prints(&project, &source, desk);
    let made = faces(&plan, folder(&source), &known)
        .map_err(|bad| Refusal::Many(bad.iter().map(super::make::picture_refusal).collect()))?;
    let prints = of_prints(&made.faces, &|picture| Arc::new(Seen::of(picture)));
    let reads = read(&plan, &made.faces);
    let words = |greeting: usize| plan.project.greetings.get(greeting).map_or("", |greeting| greeting.words.as_str());
    let design = |pack: usize, design: usize| plan.project.design(pack, design);
    if json {
        let print = |of: &crate::colors::OfPrint| PrintView {
            design: design(of.face.0, of.face.1).map(|design| design.letter.clone()).unwrap_or_default(),
            side: of.face.2.name(),
            colors: of
                .seen
                .shares
                .iter()
                .map(|of| ShareView { color: of.color.to_string(), share: of.share })
                .collect(),
            beside: beside(&plan, of, &[])
                .into_iter()
                .map(|of| BesideView {
                    kind: of.stuff.kind(),
                    name: of.name,
                    color: of.color.to_string(),
                    nearest: of.nearest.to_string(),
                    delta_e: of.delta_e,
                    pairing: of.pairing.map(pairing_code),
                    cards: of.cards,
                })
                .collect(),
        };
        let greeting = |of: &crate::colors::Read| ReadView {
            words: words(of.greeting).to_owned(),
            on: of.on.clone(),
            contrast: of.contrast,
        };
        desk.json(&MatchedView {
            prints: prints.iter().map(print).collect(),
            greetings: reads.iter().map(greeting).collect(),
        })?;
        return Ok(Done::Well);
    }
    let tenth = |number: f64| words::local(&format!("{number:.1}"));
    for print in &prints {
        let Some(of) = design(print.face.0, print.face.1) else { continue };
        let side = say(if print.face.2 == cards::model::Side::Front { "face-front" } else { "face-back" }, &[]);
        writeln!(desk.out, "{} · {}, {side}", of.letter, of.name)?;
        for share in &print.seen.shares {
            let percent = format!("{:.0}", share.share * 100.0);
            let facts = [("color", share.color.to_string().into()), ("share", percent.into())];
            writeln!(desk.out, "  {}", say("colors-share", &facts))?;
        }
        for held in beside(&plan, print, &[]) {
            let facts = [
                ("paper", held.called().into()),
                ("nearest", held.nearest.to_string().into()),
                ("delta", tenth(held.delta_e).into()),
                ("near", near(held.delta_e).into()),
                ("goes", goes(held.pairing).into()),
            ];
            writeln!(desk.out, "  {}", say("colors-paper", &facts))?;
        }
    }
    for of in &reads {
        let facts = [
            ("words", words(of.greeting).into()),
            ("on", of.told_on().into()),
            ("contrast", tenth(of.contrast).into()),
            ("how", readable(of.contrast).into()),
        ];
        writeln!(desk.out, "{}", say("matched-read", &facts))?;
    }
    writeln!(desk.err, "{}", say("colors-daylight", &[]))?;
    Ok(Done::Well)
}
