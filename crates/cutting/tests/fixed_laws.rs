//! Laws that hold for every answer, each as one test over random questions; no outside figures.
//!
//! Two laws compare two questions (more stock, turning allowed). A search that ends early can break them, so their
//! values are compared where both answers are proven, which most are (counted), and value against bound always.
//! Order of kinds and size of a step cannot matter by construction, however few the nodes: these compare whole answers.
#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/batches.rs"]
#[allow(dead_code, reason = "some of its batches only")]
mod batches;
#[path = "common/fixed_recount.rs"]
mod fixed_recount;

use std::cell::Cell;

use cutting::fixed::{Answer, Edges, Instance, PieceKind, Question, Rules, SheetKind, Stages, solve};
use cutting::{Budget, Outcome, Tree};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{RngSeed, TestRunner};

/// A fixed seed: the suite gives the same answer every time.
fn runner(cases: u32) -> TestRunner {
    TestRunner::new(ProptestConfig {
        cases,
        rng_seed: RngSeed::Fixed(4),
        failure_persistence: None,
        ..ProptestConfig::default()
    })
}

fn piece(largest: u32) -> impl Strategy<Value = PieceKind> {
    (1..largest, 1..largest, 1_u32..5, 0_u32..2, 0_u64..20, any::<bool>())
        .prop_map(|(width, height, n, min, value, turn)| PieceKind { width, height, demand: Some(n), min, value, turn })
}

fn sheet(largest: u32) -> impl Strategy<Value = SheetKind> {
    let edge = || prop_oneof![3 => Just(0), 1 => 2_u32..4];
    let sides = (largest / 2 + 4..largest + 6, largest / 2 + 4..largest + 6);
    (sides, prop::option::of(0_u32..6), 0_u64..9, edge(), edge()).prop_map(
        |((width, height), copies, cost, left, bottom)| SheetKind {
            edges: Edges { left, bottom, ..Edges::NONE },
            ..SheetKind::whole(width, height, copies, cost)
        },
    )
}

fn rules() -> impl Strategy<Value = Rules> {
    let stages = (2_u8..5, any::<bool>()).prop_map(|(most, trim)| Some(Stages { most, trim }));
    let some =
        (prop_oneof![Just(None), stages], 0_u32..3).prop_map(|(stages, least_strip)| Rules { stages, least_strip });
    prop_oneof![2 => Just(Rules::default()), 1 => some]
}

/// Questions of either sort; `kinds` of pieces at most, sides below `largest`.
fn question(kinds: usize, largest: u32) -> impl Strategy<Value = Instance> {
    let sheets = prop::collection::vec(sheet(largest), 1..4);
    let pieces = prop::collection::vec(piece(largest), 1..=kinds);
    (sheets, pieces, any::<bool>(), rules()).prop_map(|(mut sheets, pieces, least, rules)| {
        if !least {
            sheets.truncate(1);
        }
        let question = if least { Question::LeastCost } else { Question::MostValue };
        Instance { sheets, pieces, question, rules }
    })
}

/// A least-cost question that the search mostly proves.
fn easy() -> impl Strategy<Value = Instance> {
    question(4, 9).prop_filter("least cost", |asked| asked.question == Question::LeastCost)
}

fn answered(instance: &Instance, nodes: u64) -> Answer {
    solve(instance, &mut Budget::nodes(nodes)).unwrap()
}

fn has_sheets(answer: &Answer) -> bool {
    matches!(answer.outcome, Outcome::Proven | Outcome::Best { .. })
}

#[test]
fn the_checker_passes_every_answer() {
    let asked = (question(6, 14), 0_u64..60_000);
    let each = |(instance, nodes): (Instance, u64)| {
        let found = answered(&instance, nodes);
        if has_sheets(&found) {
            fixed_recount::recount(&instance, &found, "random");
        } else {
            prop_assert!(found.sheets.is_empty() && found.value == 0);
        }
        Ok(())
    };
    runner(256).run(&asked, each).unwrap();
}

#[test]
fn no_answer_is_better_than_its_own_bound() {
    let asked = (question(6, 14), 0_u64..60_000, 0_u64..400_000);
    let each = |(instance, few, more): (Instance, u64, u64)| {
        let (first, second) = (answered(&instance, few), answered(&instance, few + more));
        for (one, other) in [(&first, &first), (&first, &second), (&second, &first)] {
            let both = has_sheets(one) && has_sheets(other);
            let holds = match instance.question {
                Question::LeastCost => one.bound <= other.value,
                Question::MostValue => one.bound >= other.value,
            };
            prop_assert!(!both || holds, "bound {} against {}", one.bound, other.value);
        }
        prop_assert_eq!(first.outcome == Outcome::Proven, has_sheets(&first) && first.value == first.bound);
        // What one search finds, another cannot prove impossible.
        let impossible = |answer: &Answer| matches!(answer.outcome, Outcome::Impossible { .. });
        for (one, other) in [(&first, &second), (&second, &first)] {
            prop_assert!(!has_sheets(one) || !impossible(other));
        }
        Ok(())
    };
    runner(192).run(&asked, each).unwrap();
}

/// Compare a question with one that allows more: never dearer. Most pairs must be proven.
fn never_dearer(more: impl Fn(&mut Instance, usize)) {
    let (all, proven) = (Cell::new(0), Cell::new(0));
    let each = |(instance, at): (Instance, prop::sample::Index)| {
        let mut other = instance.clone();
        more(&mut other, at.index(64));
        let (tight, loose) = (answered(&instance, 400_000), answered(&other, 400_000));
        if !has_sheets(&tight) {
            return Ok(());
        }
        all.set(all.get() + 1);
        let impossible = matches!(loose.outcome, Outcome::Impossible { .. });
        prop_assert!(!impossible && loose.bound <= tight.value, "{loose:?} against {tight:?}");
        if tight.outcome == Outcome::Proven && loose.outcome == Outcome::Proven {
            proven.set(proven.get() + 1);
            prop_assert!(loose.value <= tight.value, "{} against {}", loose.value, tight.value);
        }
        Ok(())
    };
    runner(192).run(&(easy(), any::<prop::sample::Index>()), each).unwrap();
    assert!(all.get() > 60 && proven.get() * 10 >= all.get() * 9, "{} of {} proven", proven.get(), all.get());
}

#[test]
fn more_stock_never_needs_dearer_sheets() {
    never_dearer(|asked, at| {
        let at = at % asked.sheets.len();
        let sheet = &mut asked.sheets[at];
        sheet.copies = sheet.copies.and_then(|n| (n < 4).then_some(n + 1));
    });
}

#[test]
fn turning_allowed_never_needs_dearer_sheets() {
    never_dearer(|asked, at| {
        let kinds = asked.pieces.len();
        for k in 0..=at % kinds {
            asked.pieces[k].turn = true;
        }
    });
}

fn scaled(tree: &Tree, by: u32) -> Tree {
    match tree {
        Tree::Waste => Tree::Waste,
        Tree::Piece { kind, width, height, turned } => {
            Tree::Piece { kind: *kind, width: width * by, height: height * by, turned: *turned }
        }
        Tree::Cut { axis, at, first, second } => Tree::Cut {
            axis: *axis,
            at: at * by,
            first: Box::new(scaled(first, by)),
            second: Box::new(scaled(second, by)),
        },
    }
}

#[test]
fn a_scaled_question_has_the_scaled_answer() {
    let each = |(instance, by, nodes): (Instance, u32, u64)| {
        let mut large = instance.clone();
        // Of no rule, 0 and 1, the scaled one is 0.
        large.rules.least_strip = if instance.rules.least_strip > 1 { instance.rules.least_strip * by } else { 0 };
        for s in &mut large.sheets {
            (s.width, s.height) = (s.width * by, s.height * by);
            (s.edges.left, s.edges.bottom) = (s.edges.left * by, s.edges.bottom * by);
        }
        for p in &mut large.pieces {
            (p.width, p.height) = (p.width * by, p.height * by);
        }
        let (mut found, again) = (answered(&instance, nodes), answered(&large, nodes));
        for cut in &mut found.sheets {
            cut.tree = scaled(&cut.tree, by);
        }
        if has_sheets(&found) {
            prop_assert_eq!(found, again);
        } else {
            prop_assert_eq!((found.value, found.bound, found.nodes), (again.value, again.bound, again.nodes));
        }
        Ok(())
    };
    runner(128).run(&(question(8, 20), 2_u32..40, 0_u64..120_000), each).unwrap();
}

/// A tree with each kind of piece named by what it is.
fn named(instance: &Instance, tree: &Tree) -> String {
    match tree {
        Tree::Waste => "waste".to_owned(),
        Tree::Piece { kind, width, height, turned } => {
            format!("{:?} {width} {height} {turned}", instance.pieces[*kind])
        }
        Tree::Cut { axis, at, first, second } => {
            format!("{axis:?} {at} ({}) ({})", named(instance, first), named(instance, second))
        }
    }
}

/// All that an answer says, without the numbers of kinds.
fn said(instance: &Instance, answer: &Answer) -> (String, u64, u64, u64, Vec<String>) {
    let outcome = match &answer.outcome {
        Outcome::Impossible { .. } => "impossible".to_owned(),
        other => format!("{other:?}"),
    };
    let sheets = answer
        .sheets
        .iter()
        .map(|cut| format!("{} of {:?}: {}", cut.times, instance.sheets[cut.sheet], named(instance, &cut.tree)));
    let mut sheets: Vec<String> = sheets.collect();
    sheets.sort();
    (outcome, answer.value, answer.bound, answer.nodes, sheets)
}

#[test]
fn shuffled_and_renamed_kinds_change_nothing() {
    let shuffled = question(8, 20).prop_flat_map(|instance| {
        let (sheets, pieces) = (instance.sheets.clone(), instance.pieces.clone());
        (Just(instance), Just(sheets).prop_shuffle(), Just(pieces).prop_shuffle(), 0_u64..120_000)
    });
    let each = |(instance, sheets, pieces, nodes): (Instance, Vec<SheetKind>, Vec<PieceKind>, u64)| {
        let other = Instance { sheets, pieces, ..instance.clone() };
        let (found, again) = (answered(&instance, nodes), answered(&other, nodes));
        prop_assert_eq!(said(&instance, &found), said(&other, &again));
        Ok(())
    };
    runner(192).run(&shuffled, each).unwrap();
}

#[test]
fn the_same_question_and_nodes_give_the_same_answer_on_one_thread_or_two() {
    // The engine takes no seed and starts no thread; what must not matter is what else goes on.
    let mut questions: Vec<Instance> = batches::all().into_iter().take(5).map(|(_, instance)| instance).collect();
    let mut runner = runner(1);
    for _ in 0..20 {
        questions.push(question(8, 20).new_tree(&mut runner).unwrap().current());
    }
    let all = |questions: &[Instance]| questions.iter().map(|q| answered(q, 300_000)).collect::<Vec<_>>();
    let alone = all(&questions);
    let (first, second) = std::thread::scope(|scope| {
        let other = scope.spawn(|| all(&questions));
        (all(&questions), other.join().unwrap())
    });
    assert!(alone == first && alone == second);
}
