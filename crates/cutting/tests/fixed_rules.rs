//! Source: brute force written for this test, over every whole position of every cut, for sheets that may be turned
//! only so often, narrow strips and unusable edges; and `data/stages_best_known.csv`, whose rows name their sources.
//! It shares no code with the engine. Whole numbers: no tolerance.
#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/fixed_json.rs"]
mod fixed_json;
#[path = "common/fixed_recount.rs"]
mod fixed_recount;

use std::collections::BTreeMap;

use cutting::fixed::{
    Answer, Edges, Instance, InstanceError, PieceKind, Question, Rules, SheetKind, Stages, Why, solve,
};
use cutting::{Axis, Budget, Outcome};
use proptest::prelude::*;
use serde_json::Value;

type State = (u32, u32, u32, Option<bool>, u8);

/// Whether single pieces can be cut from a rectangle under rules.
struct Plain {
    /// Width, height, may turn, kind.
    pieces: Vec<(u32, u32, bool, usize)>,
    rules: Rules,
    known: BTreeMap<State, bool>,
}

impl Plain {
    fn of(instance: &Instance) -> Plain {
        let kinds = instance.pieces.iter().enumerate();
        let one = |(k, p): (usize, &PieceKind)| vec![(p.width, p.height, p.turn, k); p.demand.unwrap() as usize];
        Plain { pieces: kinds.flat_map(one).collect(), rules: instance.rules, known: BTreeMap::new() }
    }

    fn is_piece(&self, w: u32, h: u32, mask: u32) -> bool {
        mask.is_power_of_two() && {
            let (a, b, turn, _) = self.pieces[mask.trailing_zeros() as usize];
            (a, b) == (w, h) || (turn && (b, a) == (w, h))
        }
    }

    fn positions(&self, side: u32) -> impl Iterator<Item = u32> + use<> {
        let least = self.rules.least_strip.max(1);
        (1..side).filter(move |at| *at >= least && side - at >= least)
    }

    fn whole(&mut self, sheet: &SheetKind, mask: u32) -> bool {
        self.cuts((sheet.width, sheet.height, mask, None, self.rules.stages.map_or(99, |s| s.most)))
    }

    /// True if exactly the pieces of the mask, and waste, can be cut from a rectangle with so many runs left.
    fn cuts(&mut self, state: State) -> bool {
        let (w, h, mask, along, left) = state;
        if mask == 0 || self.is_piece(w, h, mask) {
            return true;
        }
        if let Some(&known) = self.known.get(&state) {
            return known;
        }
        let mut found = false;
        for axis in [true, false] {
            let runs = if along == Some(axis) { Some(left) } else { left.checked_sub(1) };
            for at in self.positions(if axis { w } else { h }) {
                let (a, b) = if axis { ((at, h), (w - at, h)) } else { ((w, at), (w, h - at)) };
                let Some(runs) = runs else {
                    // Only trimming is left: one piece and waste.
                    let trim = self.rules.stages.is_some_and(|s| s.trim);
                    found |= trim && (self.is_piece(a.0, a.1, mask) || self.is_piece(b.0, b.1, mask));
                    continue;
                };
                let mut part = mask;
                loop {
                    found = found
                        || (self.cuts((a.0, a.1, part, Some(axis), runs))
                            && self.cuts((b.0, b.1, mask ^ part, Some(axis), runs)));
                    if part == 0 || found {
                        break;
                    }
                    part = (part - 1) & mask;
                }
            }
        }
        self.known.insert(state, found);
        found
    }

    /// Fewest sheets of one kind for the pieces of a mask; `None`: some piece cannot be cut at all.
    fn sheets(&mut self, sheet: &SheetKind, mask: u32) -> Option<u64> {
        if mask == 0 {
            return Some(0);
        }
        let first = mask & mask.wrapping_neg();
        let (mut best, mut part) = (None, mask);
        while part > 0 {
            if part & first > 0
                && self.whole(sheet, part)
                && let Some(rest) = self.sheets(sheet, mask ^ part)
            {
                best = Some(best.map_or(rest + 1, |b: u64| b.min(rest + 1)));
            }
            part = (part - 1) & mask;
        }
        best
    }
}

/// The most value without limits on numbers, by plain recursion over all positions.
fn unlimited(instance: &Instance, known: &mut BTreeMap<(u32, u32, Option<Axis>, u8), u64>) -> u64 {
    fn best(
        instance: &Instance,
        (w, h, along, left): (u32, u32, Option<Axis>, u8),
        known: &mut BTreeMap<(u32, u32, Option<Axis>, u8), u64>,
    ) -> u64 {
        if let Some(&value) = known.get(&(w, h, along, left)) {
            return value;
        }
        let is =
            |p: &PieceKind, w: u32, h: u32| (p.width, p.height) == (w, h) || (p.turn && (p.height, p.width) == (w, h));
        let one = |w: u32, h: u32| instance.pieces.iter().filter(|p| is(p, w, h)).map(|p| p.value).max().unwrap_or(0);
        let mut value = one(w, h);
        let least = instance.rules.least_strip.max(1);
        for axis in [Axis::X, Axis::Y] {
            let side = if axis == Axis::X { w } else { h };
            for at in (1..side).filter(|at| *at >= least && side - at >= least) {
                let (a, b) = if axis == Axis::X { ((at, h), (w - at, h)) } else { ((w, at), (w, h - at)) };
                if along == Some(axis) || left > 0 {
                    let left = if along == Some(axis) { left } else { left - 1 };
                    let both = best(instance, (a.0, a.1, Some(axis), left), known)
                        + best(instance, (b.0, b.1, Some(axis), left), known);
                    value = value.max(both);
                } else if instance.rules.stages.is_some_and(|s| s.trim) {
                    value = value.max(one(a.0, a.1)).max(one(b.0, b.1));
                }
            }
        }
        known.insert((w, h, along, left), value);
        value
    }
    let sheet = &instance.sheets[0];
    best(instance, (sheet.width, sheet.height, None, instance.rules.stages.map_or(99, |s| s.most)), known)
}

fn rules() -> impl Strategy<Value = Rules> {
    let stages = prop::option::of((2_u8..5, any::<bool>()).prop_map(|(most, trim)| Stages { most, trim }));
    (stages, 0_u32..4).prop_map(|(stages, least_strip)| Rules { stages, least_strip })
}

fn piece() -> impl Strategy<Value = PieceKind> {
    (1_u32..6, 1_u32..6, 1_u32..3, 1_u64..20, any::<bool>()).prop_map(|(width, height, n, value, turn)| PieceKind {
        width,
        height,
        demand: Some(n),
        min: 0,
        value,
        turn,
    })
}

fn sheet() -> impl Strategy<Value = SheetKind> {
    (3_u32..9, 3_u32..9).prop_map(|(width, height)| SheetKind::whole(width, height, None, 1))
}

fn answer(instance: &Instance) -> Answer {
    let answer = solve(instance, &mut Budget::nodes(300_000)).unwrap();
    if !answer.sheets.is_empty() {
        fixed_recount::recount(instance, &answer, "rules");
    }
    answer
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn without_limits_on_numbers_the_most_value_is_found(
        sheet in sheet(), mut pieces in prop::collection::vec(piece(), 1..4), rules in rules(),
    ) {
        for p in &mut pieces {
            p.demand = None;
        }
        let instance = Instance { sheets: vec![sheet], pieces, question: Question::MostValue, rules };
        let found = answer(&instance);
        prop_assert_eq!(found.value, unlimited(&instance, &mut BTreeMap::new()), "{:?}", rules);
        prop_assert_eq!(found.outcome, Outcome::Proven);
    }

    #[test]
    fn the_most_value_of_so_many_pieces_lies_between_ours_and_our_bound(
        sheet in sheet(), pieces in prop::collection::vec(piece(), 1..4), rules in rules(),
    ) {
        let instance = Instance { sheets: vec![sheet], pieces, question: Question::MostValue, rules };
        let mut plain = Plain::of(&instance);
        let found = answer(&instance);
        let mut best = 0;
        for mask in 0..1_u32 << plain.pieces.len() {
            if plain.whole(&instance.sheets[0], mask) {
                let chosen = plain.pieces.iter().enumerate().filter(|(i, _)| mask >> i & 1 == 1);
                best = best.max(chosen.map(|(_, p)| instance.pieces[p.3].value).sum());
            }
        }
        prop_assert!(found.value <= best && best <= found.bound, "{} {} {}: {:?}", found.value, best, found.bound, rules);
    }

    #[test]
    fn the_fewest_sheets_lie_between_our_bound_and_ours(
        sheet in sheet(), pieces in prop::collection::vec(piece(), 1..4), rules in rules(),
    ) {
        let instance = Instance { sheets: vec![sheet], pieces, question: Question::LeastCost, rules };
        let mut plain = Plain::of(&instance);
        let all = (1 << plain.pieces.len()) - 1;
        let found = answer(&instance);
        match plain.sheets(&instance.sheets[0], all) {
            Some(best) => {
                prop_assert!(found.bound <= best && best <= found.value, "{} {} {}", found.bound, best, found.value);
            }
            None => prop_assert!(
                matches!(found.outcome, Outcome::Impossible { why: Why::FitsNoSheet { .. } } | Outcome::Unfinished),
                "{:?}", found.outcome
            ),
        }
    }

    #[test]
    fn fewer_rules_are_never_worse(
        sheet in sheet(), pieces in prop::collection::vec(piece(), 1..4), rules in rules(),
    ) {
        let instance = Instance { sheets: vec![sheet], pieces, question: Question::MostValue, rules };
        let found = answer(&instance);
        let stages = rules.stages.map(|s| Stages { most: s.most + 1, ..s });
        for looser in [
            Rules::default(), Rules { least_strip: 0, ..rules }, Rules { stages, ..rules }, Rules { stages: None, ..rules },
        ] {
            let again = answer(&Instance { rules: looser, ..instance.clone() });
            prop_assert!(again.bound >= found.value, "{:?} {:?}", rules, looser);
        }
    }
}

fn small(rules: Rules) -> Instance {
    let sheet = SheetKind::whole(12, 12, None, 1);
    let piece = PieceKind { width: 5, height: 7, demand: Some(6), min: 0, value: 1, turn: true };
    Instance { sheets: vec![sheet], pieces: vec![piece], question: Question::LeastCost, rules }
}

#[test]
fn unusable_edges_are_cut_off_and_nothing_is_cut_from_them() {
    let edges = Edges { left: 1, right: 0, top: 2, bottom: 3 };
    let mut instance = small(Rules::default());
    instance.sheets[0].edges = edges;
    let found = answer(&instance);
    // 11 x 7 is left: two pieces side by side.
    assert_eq!((found.value, found.outcome), (3, Outcome::Proven));
    for cut in &found.sheets {
        for piece in cutting::tree::pieces(&cut.tree, 12, 12).unwrap() {
            assert!(piece.x >= 1 && piece.y >= 2 && piece.y + piece.height <= 9, "{piece:?}");
        }
    }
}

#[test]
fn rules_that_leave_nothing_are_refused() {
    let refused = |rules| solve(&small(rules), &mut Budget::nodes(1000)).unwrap_err();
    let edged = |edges, rules| {
        let mut instance = small(rules);
        instance.sheets.push(SheetKind { edges, ..instance.sheets[0].clone() });
        solve(&instance, &mut Budget::nodes(1000)).unwrap_err()
    };
    for side in [6, u32::MAX] {
        let edges = Edges { left: side, right: side, ..Edges::NONE };
        assert_eq!(edged(edges, Rules::default()), InstanceError::OnlyEdges { sheet: 1 });
    }
    let (edges, least_strip) = (Edges { left: 1, ..Edges::NONE }, 2);
    let narrow = InstanceError::NarrowEdge { sheet: 1, edge: 1, least: 2 };
    assert_eq!(edged(edges, Rules { least_strip, stages: None }), narrow);
    for most in [0, 1, 9, 255] {
        let stages = Some(Stages { most, trim: true });
        assert_eq!(refused(Rules { stages, ..Rules::default() }), InstanceError::Stages { stages: most, most: 8 });
    }
    // 12 - 7 = 5 is left beside any piece.
    let found = answer(&small(Rules { least_strip: 6, ..Rules::default() }));
    assert_eq!(found.outcome, Outcome::Impossible { why: Why::FitsNoSheet { piece: 0 } });
    let found = answer(&small(Rules { least_strip: u32::MAX, ..Rules::default() }));
    assert_eq!(found.outcome, Outcome::Impossible { why: Why::FitsNoSheet { piece: 0 } });
}

#[test]
fn offcuts_of_no_cost_are_used_before_a_new_sheet() {
    let mut instance = small(Rules::default());
    instance.sheets.push(SheetKind::whole(7, 10, Some(2), 0));
    let found = answer(&instance);
    // Three pieces from a new sheet; two from each offcut, of which one has them turned.
    assert_eq!((found.value, found.outcome), (1, Outcome::Proven));
    assert_eq!(found.sheets.iter().filter(|cut| cut.sheet == 1).map(|cut| cut.times).sum::<u32>(), 2);
}

#[test]
fn turns_of_academic_instances_are_as_published() {
    let lines = include_str!("data/stages.jsonl");
    let all: Vec<Value> = lines.lines().map(|l| serde_json::from_str(l).unwrap()).collect();
    let mut rows = 0;
    for row in include_str!("data/stages_best_known.csv").lines().skip(1) {
        let f: Vec<&str> = row.split(',').collect();
        let named = |j: &&Value| f[0] == format!("{}/{}", j["family"].as_str().unwrap(), j["name"].as_str().unwrap());
        let mut instance = fixed_json::instance(all.iter().find(named).unwrap(), Some(f[5] == "yes"), f[6] == "yes");
        instance.rules.stages = Some(Stages { most: f[3].parse().unwrap(), trim: f[4] == "yes" });
        let found = solve(&instance, &mut Budget::nodes(4_000_000)).unwrap();
        fixed_recount::recount(&instance, &found, row);
        let (best, limit): (u64, u64) = (f[7].parse().unwrap(), f[8].parse().unwrap());
        if f[1] == "max value" {
            assert_eq!((found.value, &found.outcome), (best, &Outcome::Proven), "{row}");
        } else {
            // Their first cuts run along one given side, ours along either.
            assert!(limit <= found.value && found.value <= best && found.bound <= best, "{row}: {}", found.value);
        }
        rows += 1;
    }
    assert!(rows >= 60, "{rows}");
}
