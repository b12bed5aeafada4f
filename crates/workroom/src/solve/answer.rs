//! What `octavo solve` prints: the answer in the layout of the cutting bench.
//!
//! There `at` is measured from the left or the **bottom** of the rectangle in hand and `a` is the left or
//! bottom part; inside the house y runs down. So every level cut is turned over here, once.

use cutting::fixed::{self, Instance};
use cutting::{Axis, Outcome, Tree, flexible};
use schemars::JsonSchema;
use serde::Serialize;
use words::{Arg, say};

use super::question::Flexible;

/// How good an answer is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
pub enum Grade {
    /// Nothing better exists.
    #[serde(rename = "proven best")]
    ProvenBest,
    /// The best that was found; nothing better than `bound` exists.
    #[serde(rename = "best found")]
    BestFound,
    /// No answer exists.
    #[serde(rename = "impossible")]
    Impossible,
    /// Stopped before an answer was found.
    #[serde(rename = "stopped")]
    Stopped,
}

impl Grade {
    fn of<W>(outcome: &Outcome<W>) -> Grade {
        match outcome {
            Outcome::Proven => Grade::ProvenBest,
            Outcome::Best { .. } => Grade::BestFound,
            Outcome::Impossible { .. } => Grade::Impossible,
            Outcome::Unfinished => Grade::Stopped,
        }
    }
}

/// A cut tree in the layout of the bench, all lengths in units of the instance.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(untagged)]
pub enum TreeJson {
    /// A cut.
    Cut {
        /// `x`: an upright cut line; `y`: a level one.
        #[schemars(extend("enum" = ["x", "y"]))]
        cut: &'static str,
        /// Distance from the left or the bottom of the rectangle in hand.
        at: u32,
        /// The left or bottom part.
        a: Box<TreeJson>,
        /// The right or top part.
        b: Box<TreeJson>,
    },
    /// A piece.
    Piece {
        /// Index of the piece or slot in the file.
        slot: usize,
        /// Width as it lies.
        w: u32,
        /// Height as it lies.
        h: u32,
        /// True if it lies a quarter turn from the way it is written.
        turned: bool,
    },
    /// Waste.
    Waste {
        /// Always true.
        #[schemars(extend("const" = true))]
        waste: bool,
    },
}

/// One physical sheet: its tree, and which sheet it is cut from where there is a choice.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct SheetJson {
    /// Index of the sheet in the file (only for `stock`).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sheet: Option<usize>,
    /// How many sheets are cut so; left out: one. Told only where there are more than 10 000 sheets.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub times: Option<u32>,
    /// How it is cut.
    #[serde(flatten)]
    pub tree: TreeJson,
}

/// The whole answer.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct AnswerJson {
    /// How good it is.
    pub grade: Grade,
    /// Sheets used (`stock`).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sheets: Option<u64>,
    /// What the sheets cost in all (`stock`, where a sheet costs anything but 1).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost: Option<u64>,
    /// What the pieces are worth in all (`knapsack`).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub value: Option<u64>,
    /// Area left over, in square units (flexible pieces).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub waste: Option<u64>,
    /// Nothing better than this exists, in the measure of the question: cost (sheets where each costs 1),
    /// value, or waste. Null where no answer exists, or none is known.
    pub bound: Option<u64>,
    /// Search nodes spent.
    pub nodes: u64,
    /// Seconds it took.
    pub seconds: f64,
    /// Why it is impossible, in words.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<String>,
    /// One tree a physical sheet, or, above 10 000 sheets, one for all that are cut alike; empty where no sheet is cut.
    pub trees: Vec<SheetJson>,
}

/// The answer of the flexible engine.
pub(super) fn of_flexible(asked: &Flexible, answer: &flexible::Answer) -> AnswerJson {
    let square = u64::from(asked.unit) * u64::from(asked.unit);
    let best = answer.layouts.first();
    let bound = match &answer.outcome {
        Outcome::Proven => best.map(|layout| layout.waste * square),
        Outcome::Best { bound } => Some(bound * square),
        Outcome::Impossible { .. } | Outcome::Unfinished => None,
    };
    let why = match &answer.outcome {
        Outcome::Impossible { why } => Some(flexible_why(why, square)),
        _ => None,
    };
    let height = asked.instance.height;
    AnswerJson {
        grade: Grade::of(&answer.outcome),
        sheets: None,
        cost: None,
        value: None,
        waste: best.map(|layout| layout.waste * square),
        bound,
        nodes: answer.nodes,
        seconds: 0.0,
        why,
        trees: best
            .map(|layout| SheetJson { sheet: None, times: None, tree: tree(&layout.tree, height, asked.unit) })
            .into_iter()
            .collect(),
    }
}

/// Chosen: up to so many sheets each has its own tree, as the bench has it; more would fill a disk.
const LISTED: u64 = 10_000;

/// The answer of the engine for fixed pieces.
pub(super) fn of_fixed(instance: &Instance, answer: &fixed::Answer) -> AnswerJson {
    let grade = Grade::of(&answer.outcome);
    let there = matches!(grade, Grade::ProvenBest | Grade::BestFound);
    let stock = instance.question == fixed::Question::LeastCost;
    let count = answer.sheets.iter().map(|cut| u64::from(cut.times)).sum();
    let trees = answer.sheets.iter().flat_map(|cut| {
        let height = instance.sheets[cut.sheet].height;
        let times = (count > LISTED).then_some(cut.times);
        let one = SheetJson { sheet: stock.then_some(cut.sheet), times, tree: tree(&cut.tree, height, 1) };
        let each = if times.is_some() { 1 } else { cut.times };
        std::iter::repeat_n(one, usize::try_from(each).unwrap_or(usize::MAX))
    });
    let counted = instance.sheets.iter().all(|sheet| sheet.cost == 1);
    AnswerJson {
        grade,
        sheets: (stock && there).then_some(count),
        cost: (stock && there && !counted).then_some(answer.value),
        value: (!stock && there).then_some(answer.value),
        waste: None,
        bound: (grade != Grade::Impossible).then_some(answer.bound),
        nodes: answer.nodes,
        seconds: 0.0,
        why: match &answer.outcome {
            Outcome::Impossible { why } => Some(fixed_why(why)),
            _ => None,
        },
        trees: trees.collect(),
    }
}

fn flexible_why(why: &flexible::Why, square: u64) -> String {
    use flexible::Why;
    match why {
        Why::NoMix => say("why-no-mix", &[]),
        Why::TooMuchArea { least, sheet } => {
            say("why-too-much-area", &[("least", (least * square).into()), ("sheet", (sheet * square).into())])
        }
        Why::PieceTooLarge { kind } => say("why-piece-too-large", &[("piece", (*kind).into())]),
        Why::NoTree => say("why-no-tree", &[]),
    }
}

fn fixed_why(why: &fixed::Why) -> String {
    use fixed::Why;
    match why {
        Why::FitsNoSheet { piece } => say("why-piece-too-large", &[("piece", (*piece).into())]),
        Why::TooLittleArea { wanted, there } => say(
            "why-too-much-area",
            &[("least", Arg::Text(wanted.to_string())), ("sheet", Arg::Text(there.to_string()))],
        ),
        Why::TooFewSheets => say("why-too-few-sheets", &[]),
        Why::MinimumDoesNotFit => say("why-minimum", &[]),
    }
}

/// A tree over a rectangle so many steps high, turned over so that level cuts are measured from the bottom.
fn tree(inside: &Tree, height: u32, unit: u32) -> TreeJson {
    match inside {
        Tree::Waste => TreeJson::Waste { waste: true },
        Tree::Piece { kind, width, height, turned } => {
            TreeJson::Piece { slot: *kind, w: width * unit, h: height * unit, turned: *turned }
        }
        Tree::Cut { axis: Axis::X, at, first, second } => TreeJson::Cut {
            cut: "x",
            at: at * unit,
            a: Box::new(tree(first, height, unit)),
            b: Box::new(tree(second, height, unit)),
        },
        Tree::Cut { axis: Axis::Y, at, first, second } => TreeJson::Cut {
            cut: "y",
            at: height.saturating_sub(*at) * unit,
            a: Box::new(tree(second, height.saturating_sub(*at), unit)),
            b: Box::new(tree(first, *at, unit)),
        },
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;

    fn piece(kind: usize, width: u32, height: u32) -> Box<Tree> {
        Box::new(Tree::Piece { kind, width, height, turned: false })
    }

    #[test]
    fn level_cuts_are_measured_from_the_bottom() {
        // Upper part 3 high, lower part 7 high and cut again 2 from its top.
        let lower = Tree::Cut { axis: Axis::Y, at: 2, first: piece(1, 4, 2), second: piece(2, 4, 5) };
        let inside = Tree::Cut { axis: Axis::Y, at: 3, first: piece(0, 4, 3), second: Box::new(lower) };
        let json = serde_json::to_value(tree(&inside, 10, 2)).unwrap();
        let expected = serde_json::json!({"cut": "y", "at": 14,
            "a": {"cut": "y", "at": 10, "a": {"slot": 2, "w": 8, "h": 10, "turned": false},
                                        "b": {"slot": 1, "w": 8, "h": 4, "turned": false}},
            "b": {"slot": 0, "w": 8, "h": 6, "turned": false}});
        assert_eq!(json, expected);
    }

    #[test]
    fn sheet_stands_in_the_root_of_its_tree() {
        let sheet = SheetJson { sheet: Some(3), times: None, tree: TreeJson::Waste { waste: true } };
        assert_eq!(serde_json::to_value(sheet).unwrap(), serde_json::json!({"sheet": 3, "waste": true}));
    }
}
