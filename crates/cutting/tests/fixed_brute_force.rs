//! Source: brute force written for this test: every split of the pieces by every cut, every share of the pieces
//! among the sheets. It shares no code with the engine. Whole numbers: no tolerance.
#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/fixed_plain.rs"]
mod fixed_plain;
#[path = "common/fixed_recount.rs"]
mod fixed_recount;

use cutting::fixed::{Answer, Instance, PieceKind, Question, Rules, SheetKind, Why, solve};
use cutting::{Budget, Outcome};
use fixed_plain::Plain;
use proptest::prelude::*;

/// Most value; `None` if what must appear cannot.
fn most_value(instance: &Instance) -> Option<u64> {
    let mut plain = Plain::of(instance);
    let sheet = &instance.sheets[0];
    if sheet.copies == Some(0) {
        return None;
    }
    let mut best = None;
    for mask in 0..1_u32 << plain.pieces.len() {
        let chosen = |i: usize| mask >> i & 1 == 1;
        let kinds: Vec<usize> = (0..plain.pieces.len()).filter(|&i| chosen(i)).map(|i| plain.pieces[i].3).collect();
        let enough = |(k, p): (usize, &PieceKind)| kinds.iter().filter(|&&kind| kind == k).count() >= p.min as usize;
        let value: u64 = kinds.iter().map(|&k| instance.pieces[k].value).sum();
        if instance.pieces.iter().enumerate().all(enough)
            && best.is_none_or(|b| value > b)
            && plain.cuts(sheet.width, sheet.height, mask)
        {
            best = Some(value);
        }
    }
    best
}

fn piece() -> impl Strategy<Value = PieceKind> {
    (1_u32..6, 1_u32..6, 1_u32..3, 0_u32..2, 0_u64..20, any::<bool>())
        .prop_map(|(width, height, n, min, value, turn)| PieceKind { width, height, demand: Some(n), min, value, turn })
}

fn sheet() -> impl Strategy<Value = SheetKind> {
    (3_u32..8, 3_u32..8, prop::option::of(0_u32..3), 0_u64..9)
        .prop_map(|(width, height, copies, cost)| SheetKind::whole(width, height, copies, cost))
}

fn answer(instance: &Instance) -> Answer {
    let answer = solve(instance, &mut Budget::nodes(400_000)).unwrap();
    if !answer.sheets.is_empty() {
        fixed_recount::recount(instance, &answer, "random");
    }
    answer
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_most_value_is_the_brute_force_one(sheet in sheet(), pieces in prop::collection::vec(piece(), 1..5)) {
        let instance = Instance { sheets: vec![sheet], pieces, question: Question::MostValue, rules: Rules::default() };
        let found = answer(&instance);
        match most_value(&instance) {
            Some(best) => {
                prop_assert_eq!(&found.outcome, &Outcome::Proven);
                prop_assert_eq!(found.value, best);
            }
            None => prop_assert!(
                matches!(found.outcome, Outcome::Impossible { why: Why::MinimumDoesNotFit | Why::FitsNoSheet { .. } | Why::TooFewSheets }),
                "{:?}", found.outcome
            ),
        }
    }

    #[test]
    fn the_least_cost_is_never_beaten_and_always_found(
        mut sheets in prop::collection::vec(sheet(), 1..4),
        pieces in prop::collection::vec(piece(), 1..5),
    ) {
        let instance = Instance { sheets: sheets.clone(), pieces, question: Question::LeastCost, rules: Rules::default() };
        let mut plain = Plain::of(&instance);
        let all = plain.all();
        let found = answer(&instance);
        match plain.cost(&mut sheets, all) {
            Some(best) => {
                prop_assert!(found.bound <= best, "bound {} above {}", found.bound, best);
                prop_assert_eq!(found.value, best, "{:?}", found.outcome);
                let answered = matches!(found.outcome, Outcome::Proven | Outcome::Best { .. });
                prop_assert!(answered);
            }
            None => prop_assert!(
                matches!(found.outcome, Outcome::Impossible { .. } | Outcome::Unfinished),
                "{:?}", found.outcome
            ),
        }
    }

    #[test]
    fn however_few_the_nodes_the_bound_holds(
        mut sheets in prop::collection::vec(sheet(), 1..3),
        pieces in prop::collection::vec(piece(), 1..5),
        nodes in 0_u64..30_000,
    ) {
        let mut instance = Instance { sheets: sheets.clone(), pieces, question: Question::LeastCost, rules: Rules::default() };
        let mut plain = Plain::of(&instance);
        let all = plain.all();
        let found = solve(&instance, &mut Budget::nodes(nodes)).unwrap();
        prop_assert_eq!(&found, &solve(&instance, &mut Budget::nodes(nodes)).unwrap(), "the same question, answered twice");
        if let Some(best) = plain.cost(&mut sheets, all) {
            let impossible = matches!(found.outcome, Outcome::Impossible { .. });
            prop_assert!(!impossible && found.bound <= best, "{:?} against {}", found, best);
            prop_assert!(found.outcome == Outcome::Unfinished || found.value >= best);
        }
        instance.question = Question::MostValue;
        instance.sheets.truncate(1);
        let found = solve(&instance, &mut Budget::nodes(nodes)).unwrap();
        if let Some(best) = most_value(&instance) {
            let impossible = matches!(found.outcome, Outcome::Impossible { .. });
            prop_assert!(!impossible && found.bound >= best, "{:?} against {}", found, best);
            prop_assert!(found.outcome == Outcome::Unfinished || found.value <= best);
        }
    }
}
