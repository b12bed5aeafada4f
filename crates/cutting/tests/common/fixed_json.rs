//! Reads fixed-piece instances of the bench (`cutbench-1`).

use cutting::fixed::{Instance, PieceKind, Question, Rules, SheetKind};
use serde_json::Value;

/// The instance of one line; `turn` and `limited` override what the line says.
pub(crate) fn instance(json: &Value, turn: Option<bool>, limited: bool) -> Instance {
    let number = |v: &Value| u32::try_from(v.as_u64().expect("a number")).expect("a small number");
    let stock = json["kind"] == "stock";
    let sheets = json["sheets"].as_array().expect("sheets").iter().map(|s| {
        let copies = s["copies"].as_u64().map(|n| u32::try_from(n).expect("small"));
        SheetKind::whole(number(&s["w"]), number(&s["h"]), copies, s["cost"].as_u64().expect("cost"))
    });
    let pieces = json["pieces"].as_array().expect("pieces").iter().map(|p| PieceKind {
        width: number(&p["w"]),
        height: number(&p["h"]),
        demand: p["demand"].as_u64().filter(|_| limited).map(|n| u32::try_from(n).expect("small")),
        min: p["min"].as_u64().map_or(0, |n| u32::try_from(n).expect("small")),
        value: p["value"].as_u64().unwrap_or(0),
        turn: turn.unwrap_or(p["rotate"] == true),
    });
    let question = if stock { Question::LeastCost } else { Question::MostValue };
    Instance { sheets: sheets.collect(), pieces: pieces.collect(), question, rules: Rules::default() }
}
