//! Reads the flexible instances of the bench (`cutbench-flex-1`) for tests, benches and the table.

use cutting::flexible::{Instance, Kind, Recipe, Span, Wish};
use serde_json::Value;

fn number(value: &Value) -> u32 {
    u32::try_from(value.as_u64().expect("a number")).expect("a small number")
}

fn span(value: &Value) -> Span {
    Span::new(number(&value[0]), number(&value[1]))
}

/// The instance of one file.
pub(crate) fn instance(text: &str) -> (String, Instance) {
    let json: Value = serde_json::from_str(text).expect("the bench file is JSON");
    let slots = json["slots"].as_array().expect("slots");
    let cut_step = number(&json["cut_step"]);
    let cards = number(&json["cards"]);
    let kinds = slots
        .iter()
        .map(|slot| Kind {
            width: span(&slot["w"]),
            height: span(&slot["h"]),
            prefer: (number(&slot["prefer"][0]), number(&slot["prefer"][1])),
            step: number(&slot["step"]).max(cut_step),
            turn: slot["rotate"].as_bool().expect("rotate"),
            uniform: slot["uniform"].as_bool().expect("uniform"),
        })
        .collect::<Vec<_>>();
    let pieces = slots.iter().map(|slot| number(&slot["count"])).collect();
    let instance = Instance {
        width: number(&json["sheet"]["w"]),
        height: number(&json["sheet"]["h"]),
        spares: vec![0; kinds.len()],
        kinds,
        recipes: vec![Recipe { pieces, cards: Span::exactly(cards) }],
        cards: Span::exactly(cards),
        pins: Vec::new(),
        wishes: Wish::ORDER.to_vec(),
        alternatives: 5,
    };
    (json["name"].as_str().expect("a name").to_owned(), instance)
}

/// Sixteen pieces in four kinds on 12 × 12 in: panels 3 × 4 1/2 and bands 3 × 1 1/2, two kinds of each,
/// four of each kind, every side ± 1/4 in. `unit` is grid steps to the inch.
pub(crate) fn sixteen(unit: u32, uniform: bool) -> Instance {
    let kind = |w: u32, h: u32| {
        let (w, h, slack) = (w * unit / 2, h * unit / 2, unit / 4);
        Kind {
            width: Span::new(w - slack, w + slack),
            height: Span::new(h - slack, h + slack),
            prefer: (w, h),
            step: 1,
            turn: false,
            uniform,
        }
    };
    Instance {
        width: 12 * unit,
        height: 12 * unit,
        kinds: vec![kind(6, 9), kind(6, 9), kind(6, 3), kind(6, 3)],
        recipes: vec![Recipe { pieces: vec![1, 1, 1, 1], cards: Span::exactly(4) }],
        cards: Span::exactly(4),
        spares: vec![0; 4],
        pins: Vec::new(),
        wishes: Wish::ORDER.to_vec(),
        alternatives: 5,
    }
}
