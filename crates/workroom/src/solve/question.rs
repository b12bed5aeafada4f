//! Reading one instance: `cutbench-1` (pieces of given size) or `cutbench-flex-1` (pieces with ranges).

use cutting::fixed::{self, PieceKind, SheetKind};
use cutting::flexible::{self, Kind, Recipe, Span, Wish};
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

#[derive(Deserialize)]
struct FixedFile {
    kind: Goal,
    sheets: Vec<SheetFile>,
    pieces: Vec<PieceFile>,
}

#[derive(Deserialize)]
#[serde(rename_all = "lowercase")]
enum Goal {
    Knapsack,
    Stock,
}

#[derive(Deserialize)]
struct SheetFile {
    w: u32,
    h: u32,
    copies: Option<u32>,
    #[serde(default = "one_cost")]
    cost: u64,
}

#[derive(Deserialize)]
struct PieceFile {
    w: u32,
    h: u32,
    demand: Option<u32>,
    value: Option<u64>,
    #[serde(default)]
    rotate: bool,
    #[serde(default)]
    min: u32,
}

#[derive(Deserialize)]
struct FlexFile {
    sheet: FlexSheet,
    #[serde(default = "one")]
    cut_step: u32,
    cards: u32,
    slots: Vec<SlotFile>,
}

#[derive(Deserialize)]
struct FlexSheet {
    w: u32,
    h: u32,
}

#[derive(Deserialize)]
struct SlotFile {
    w: [u32; 2],
    h: [u32; 2],
    prefer: Option<[u32; 2]>,
    #[serde(default = "one")]
    step: u32,
    #[serde(default = "one")]
    count: u32,
    #[serde(default)]
    rotate: bool,
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
        .map(|sheet| SheetKind { width: sheet.w, height: sheet.h, copies: sheet.copies, cost: sheet.cost })
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
    Ok(Question::Fixed(fixed::Instance { sheets, pieces, question, rules: fixed::Rules::default() }))
}

fn flexible_question(value: Value) -> Result<Question, QuestionError> {
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
        assert_eq!(read.sheets, [SheetKind { width: 10, height: 8, copies: None, cost: 3 }]);
        assert_eq!(read.pieces[0].demand, Some(6));
        assert!(read.pieces[0].turn);
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
