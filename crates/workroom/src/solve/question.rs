//! Reading one instance: `cutbench-1` (pieces of given size) or `cutbench-flex-1` (pieces with ranges).

use cutting::fixed::{self, PieceKind, SheetKind, Stages};
use cutting::flexible::{self, Kind, Recipe, Span, Wish};
use schemars::JsonSchema;
use serde::Deserialize;
use serde_json::Value;

/// A question for one of the two engines.
#[derive(Debug, Clone, PartialEq)]
pub enum Question {
    /// Pieces with ranges on one sheet.
    Flexible(Flexible),
    /// Pieces of given size.
    Fixed(fixed::Instance),
}

/// A flexible instance on its cut grid.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Flexible {
    /// The instance, in cut steps.
    pub instance: flexible::Instance,
    /// File units in one cut step.
    pub unit: u32,
}

/// Why a file is not a question for the engines.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum QuestionError {
    /// Nothing in it.
    #[error("the file is empty")]
    Empty,
    /// Several instances, one a line.
    #[error("the file holds {0} instances: keep one line")]
    Several(usize),
    /// Not JSON.
    #[error("line {line}, column {column}: {what}")]
    NotJson {
        /// Line from 1.
        line: usize,
        /// Column from 1.
        column: usize,
        /// What the reader found.
        what: String,
    },
    /// A floor plan: blocks without edge-to-edge cuts.
    #[error("a floor plan is not a cutting question")]
    FloorPlan,
    /// A format that is not known.
    #[error("unknown format `{0}`")]
    UnknownFormat(String),
    /// A field is missing, of the wrong kind or out of range.
    #[error("{0}")]
    Field(String),
    /// The sheet is no whole number of cut steps.
    #[error("the sheet {width} × {height} is no whole number of cut steps of {step}")]
    CutStep {
        /// Sheet width in file units.
        width: u32,
        /// Sheet height in file units.
        height: u32,
        /// File units in one cut step.
        step: u32,
    },
    /// The engine cannot be asked this.
    #[error("{0}")]
    Refused(String),
}

/// A question for `octavo solve`. Fields that are not named here are let be.
///
/// For its schema alone: the reader picks the form by itself, so that mistakes are told well.
#[derive(Debug, JsonSchema)]
#[serde(untagged)]
pub enum QuestionFile {
    /// Pieces of given size.
    Fixed(FixedFile),
    /// Pieces with ranges on one sheet.
    Flexible(FlexFile),
}

/// `cutbench-1`: pieces of given size. All lengths are whole numbers in a unit of the file's own.
#[derive(Debug, Deserialize, JsonSchema)]
pub struct FixedFile {
    /// What is asked.
    kind: Goal,
    /// The kinds of sheet; one only for `knapsack`.
    sheets: Vec<SheetFile>,
    /// The kinds of piece.
    pieces: Vec<PieceFile>,
    /// Which cuts may be made. Left out: all that run from edge to edge.
    #[serde(default)]
    rules: RulesFile,
}

/// What is asked.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
enum Goal {
    /// One sheet, pieces worth the most.
    Knapsack,
    /// All pieces, from sheets that cost the least.
    Stock,
}

/// A kind of sheet.
#[derive(Debug, Deserialize, JsonSchema)]
struct SheetFile {
    /// Width.
    w: u32,
    /// Height.
    h: u32,
    /// How many there are; left out or null: as many as are wanted.
    copies: Option<u32>,
    /// What one costs. Left out: 1, so that sheets are counted.
    #[serde(default = "one_cost")]
    cost: u64,
    /// What cannot be used at each edge; it is cut off first. Left out: nothing.
    #[serde(default)]
    edges: EdgesFile,
}

/// What cannot be used at each edge of a sheet.
#[derive(Debug, Deserialize, JsonSchema, Default, Clone, Copy)]
#[serde(deny_unknown_fields, default)]
struct EdgesFile {
    /// At the left.
    left: u32,
    /// At the right.
    right: u32,
    /// At the top.
    top: u32,
    /// At the bottom.
    bottom: u32,
}

/// Which cuts may be made.
#[derive(Debug, Deserialize, JsonSchema, Default, Clone, Copy)]
#[serde(deny_unknown_fields, default)]
struct RulesFile {
    /// At most so many runs of cuts of one direction (2 to 8), either direction first; cuts that take unusable edges
    /// off are not counted. Left out or null: any number.
    stages: Option<u8>,
    /// With `stages`: one run more may trim single pieces to size.
    trim: bool,
    /// No cut may leave a part narrower than this, waste or not. Left out: 0, no rule.
    least_strip: u32,
}

/// A kind of piece.
#[derive(Debug, Deserialize, JsonSchema)]
struct PieceFile {
    /// Width.
    w: u32,
    /// Height.
    h: u32,
    /// `stock`: exactly so many. `knapsack`: at most so many; left out or null: any number.
    demand: Option<u32>,
    /// `knapsack`: what one is worth.
    value: Option<u64>,
    /// True if it may lie a quarter turned.
    #[serde(default)]
    rotate: bool,
    /// `knapsack`: at least so many must be among the pieces.
    #[serde(default)]
    min: u32,
}

/// `cutbench-flex-1`: pieces with ranges on one sheet. All lengths are whole numbers in a unit of the file's own.
#[derive(Debug, Deserialize, JsonSchema)]
pub struct FlexFile {
    /// The sheet.
    sheet: FlexSheet,
    /// Cuts fall on multiples of this.
    #[serde(default = "one")]
    cut_step: u32,
    /// Cards from one sheet.
    cards: u32,
    /// The kinds of piece.
    slots: Vec<SlotFile>,
}

/// The sheet of pieces with ranges.
#[derive(Debug, Deserialize, JsonSchema)]
struct FlexSheet {
    /// Width.
    w: u32,
    /// Height.
    h: u32,
}

/// A kind of piece with a range.
#[derive(Debug, Deserialize, JsonSchema)]
struct SlotFile {
    /// Least and most width.
    w: [u32; 2],
    /// Least and most height.
    h: [u32; 2],
    /// Preferred width and height. Left out: the middles.
    prefer: Option<[u32; 2]>,
    /// Finished sides are multiples of this.
    #[serde(default = "one")]
    step: u32,
    /// How many each card takes.
    #[serde(default = "one")]
    count: u32,
    /// True if it may lie a quarter turned.
    #[serde(default)]
    rotate: bool,
    /// True if all copies share one size.
    #[serde(default)]
    uniform: bool,
}

const fn one() -> u32 {
    1
}

const fn one_cost() -> u64 {
    1
}

/// Read a file's text as one question.
///
/// # Errors
/// [`QuestionError`], the first thing that stands in the way.
pub fn read(text: &str) -> Result<Question, QuestionError> {
    let text = text.trim_start_matches('\u{feff}');
    if text.trim().is_empty() {
        return Err(QuestionError::Empty);
    }
    let value: Value = match serde_json::from_str(text) {
        Ok(value) => value,
        Err(error) => return Err(several(text).unwrap_or_else(|| not_json(&error))),
    };
    let format = value.get("format").and_then(Value::as_str);
    match format {
        Some("cutbench-1") => fixed_question(value),
        Some("cutbench-flex-1") => flexible_question(value),
        Some("cutbench-floor-1") => Err(QuestionError::FloorPlan),
        Some(other) => Err(QuestionError::UnknownFormat(other.to_owned())),
        None if value.get("slots").is_some() => flexible_question(value),
        None if value.get("pieces").is_some() => fixed_question(value),
        None => Err(QuestionError::Field("missing field `format`".to_owned())),
    }
}

/// The refusal for a file that holds several instances, one a line.
fn several(text: &str) -> Option<QuestionError> {
    let lines: Vec<&str> = text.lines().filter(|line| !line.trim().is_empty()).collect();
    let whole =
        lines.len() > 1 && lines.iter().all(|line| serde_json::from_str::<Value>(line).is_ok_and(|v| v.is_object()));
    whole.then_some(QuestionError::Several(lines.len()))
}

fn not_json(error: &serde_json::Error) -> QuestionError {
    // The message of the reader ends with the place, which is told on its own.
    let full = error.to_string();
    let what = full.split(" at line ").next().unwrap_or(&full).to_owned();
    QuestionError::NotJson { line: error.line(), column: error.column(), what }
}

fn parsed<T: for<'de> Deserialize<'de>>(value: Value) -> Result<T, QuestionError> {
    serde_json::from_value(value).map_err(|error| QuestionError::Field(error.to_string()))
}

fn fixed_question(value: Value) -> Result<Question, QuestionError> {
    let file: FixedFile = parsed(value)?;
    let sheets = file
        .sheets
        .iter()
        .map(|sheet| {
            let EdgesFile { left, right, top, bottom } = sheet.edges;
            let edges = fixed::Edges { left, right, top, bottom };
            SheetKind { edges, ..SheetKind::whole(sheet.w, sheet.h, sheet.copies, sheet.cost) }
        })
        .collect();
    let mut pieces = Vec::with_capacity(file.pieces.len());
    for (index, piece) in file.pieces.iter().enumerate() {
        let value = match (&file.kind, piece.value) {
            (Goal::Stock, _) => 0,
            (Goal::Knapsack, Some(value)) => value,
            (Goal::Knapsack, None) => {
                return Err(QuestionError::Field(format!("piece {index}: missing field `value`")));
            }
        };
        pieces.push(PieceKind {
            width: piece.w,
            height: piece.h,
            demand: piece.demand,
            min: piece.min,
            value,
            turn: piece.rotate,
        });
    }
    let question = match file.kind {
        Goal::Knapsack => fixed::Question::MostValue,
        Goal::Stock => fixed::Question::LeastCost,
    };
    let RulesFile { stages, trim, least_strip } = file.rules;
    if trim && stages.is_none() {
        return Err(QuestionError::Field("`trim` is of no meaning without `stages`".to_owned()));
    }
    let rules = fixed::Rules { stages: stages.map(|most| Stages { most, trim }), least_strip };
    Ok(Question::Fixed(fixed::Instance { sheets, pieces, question, rules }))
}

fn flexible_question(value: Value) -> Result<Question, QuestionError> {
    if value.get("rules").is_some() {
        return Err(QuestionError::Field("`rules` hold for pieces of given size only".to_owned()));
    }
    let file: FlexFile = parsed(value)?;
    let unit = file.cut_step;
    let (width, height) = (file.sheet.w, file.sheet.h);
    if unit == 0 || width % unit != 0 || height % unit != 0 {
        return Err(QuestionError::CutStep { width, height, step: unit });
    }
    let kinds = file.slots.iter().enumerate().map(|(index, slot)| kind(index, slot, unit)).collect::<Result<_, _>>()?;
    let instance = flexible::Instance {
        width: width / unit,
        height: height / unit,
        kinds,
        recipes: vec![Recipe {
            pieces: file.slots.iter().map(|slot| slot.count).collect(),
            cards: Span::exactly(file.cards),
        }],
        cards: Span::exactly(file.cards),
        spares: vec![0; file.slots.len()],
        pins: Vec::new(),
        wishes: [Wish::Preferred]
            .into_iter()
            .chain(Wish::ORDER.into_iter().filter(|wish| *wish != Wish::Preferred))
            .collect(),
        alternatives: 1,
    };
    Ok(Question::Flexible(Flexible { instance, unit }))
}

/// A slot in cut steps. Every cut falls on the grid of cut steps and so does the sheet's edge, so every
/// finished side is a multiple of both the cut step and the slot's own step.
fn kind(index: usize, slot: &SlotFile, unit: u32) -> Result<Kind, QuestionError> {
    let refuse = |what: &str| QuestionError::Field(format!("slot {index}: {what}"));
    if slot.step == 0 {
        return Err(refuse("`step` must be at least 1"));
    }
    if slot.w[0] > slot.w[1] || slot.h[0] > slot.h[1] {
        return Err(refuse("the smallest size is above the largest"));
    }
    let step = slot.step / gcd(slot.step, unit);
    let span = |range: [u32; 2]| Span::new(range[0].div_ceil(unit), range[1] / unit);
    let middle = |range: [u32; 2]| range[0] + (range[1] - range[0]) / 2;
    let prefer = slot.prefer.unwrap_or([middle(slot.w), middle(slot.h)]);
    Ok(Kind {
        width: span(slot.w),
        height: span(slot.h),
        prefer: (prefer[0] / unit, prefer[1] / unit),
        step,
        turn: slot.rotate,
        uniform: slot.uniform,
    })
}

fn gcd(a: u32, b: u32) -> u32 {
    if b == 0 { a } else { gcd(b, a % b) }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;

    const STOCK: &str = r#"{"format":"cutbench-1","kind":"stock","sheets":[{"w":10,"h":8,"copies":null,"cost":3}],
        "pieces":[{"w":5,"h":4,"demand":6,"rotate":true,"label":"base"}],"best":"ignored"}"#;

    #[test]
    fn stock_is_read_and_extra_fields_are_let_be() {
        let Question::Fixed(read) = read(STOCK).unwrap() else { panic!("not fixed") };
        assert_eq!(read.question, fixed::Question::LeastCost);
        assert_eq!(read.sheets, [SheetKind::whole(10, 8, None, 3)]);
        assert_eq!(read.pieces[0].demand, Some(6));
        assert!(read.pieces[0].turn);
    }

    #[test]
    fn rules_and_edges_are_read_and_a_slip_in_them_is_told() {
        let ruled = STOCK.replacen("\"kind\"", r#""rules":{"stages":3,"trim":true,"least_strip":2},"kind""#, 1);
        let edged = ruled.replacen("\"h\":8", r#""h":8,"edges":{"left":1,"bottom":2}"#, 1);
        let Question::Fixed(read) = super::read(&edged).unwrap() else { panic!("not fixed") };
        assert_eq!(read.rules, fixed::Rules { stages: Some(Stages { most: 3, trim: true }), least_strip: 2 });
        assert_eq!(read.sheets[0].edges, fixed::Edges { left: 1, bottom: 2, ..fixed::Edges::NONE });
        for (wrong, named) in [
            (ruled.replace("least_strip", "least_stripe"), "least_stripe"),
            (ruled.replace("\"stages\":3,", ""), "stages"),
            (ruled.replace("3,\"trim", "-3,\"trim"), "-3"),
            (edged.replace("bottom", "base"), "base"),
            (edged.replace("\"left\":1", "\"left\":\"NaN\""), "NaN"),
        ] {
            let said = super::read(&wrong).unwrap_err().to_string();
            assert!(said.contains(named), "{said}");
        }
        let flexible = r#"{"format":"cutbench-flex-1","sheet":{"w":9,"h":9},"cards":1,"rules":{},"slots":[]}"#;
        assert!(super::read(flexible).unwrap_err().to_string().contains("rules"));
    }

    #[test]
    fn one_line_with_an_empty_line_after_it_is_one_instance() {
        let line = STOCK.replace('\n', " ");
        assert!(read(&format!("{line}\n\n")).is_ok());
        assert_eq!(read(&format!("{line}\n{line}\n")).unwrap_err(), QuestionError::Several(2));
    }

    #[test]
    fn refusals_name_what_is_wrong() {
        let wrong = [
            ("", QuestionError::Empty),
            (" \n", QuestionError::Empty),
            (r#"{"format":"cutbench-floor-1","soft":[]}"#, QuestionError::FloorPlan),
            (r#"{"format":"other"}"#, QuestionError::UnknownFormat("other".to_owned())),
        ];
        for (text, expected) in wrong {
            assert_eq!(read(text).unwrap_err(), expected, "{text}");
        }
        for (text, named) in [
            (r#"{"format":"cutbench-1","kind":"stock","sheets":[]}"#, "pieces"),
            (r#"{"format":"cutbench-1","kind":"stock","sheets":[{"w":-3,"h":2}],"pieces":[]}"#, "-3"),
            (r#"{"format":"cutbench-1","kind":"knapsack","sheets":[{"w":3,"h":2}],"pieces":[{"w":1,"h":1}]}"#, "value"),
            (
                r#"{"format":"cutbench-flex-1","sheet":{"w":9,"h":9},"cards":1,"slots":[{"w":[5,4],"h":[1,1]}]}"#,
                "slot 0",
            ),
            (r#"[1, 2]"#, "format"),
            ("{\"format\": \n oops", "line 2"),
        ] {
            let said = read(text).unwrap_err().to_string();
            assert!(said.contains(named), "{said}");
        }
    }

    #[test]
    fn a_coarser_cut_step_shrinks_the_grid() {
        let text = r#"{"format":"cutbench-flex-1","sheet":{"w":12,"h":8},"cut_step":4,"cards":2,
            "slots":[{"w":[3,9],"h":[4,8],"prefer":[8,4],"step":2,"count":1}]}"#;
        let Question::Flexible(flexible) = read(text).unwrap() else { panic!("not flexible") };
        assert_eq!((flexible.instance.width, flexible.instance.height, flexible.unit), (3, 2, 4));
        assert_eq!(flexible.instance.kinds[0].width, Span::new(1, 2));
        assert_eq!(flexible.instance.kinds[0].step, 1);
    }
}
