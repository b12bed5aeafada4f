//! Source: brute force written for this test: every change within reach, every choice of sizes, every cut, every
//! split of the pieces. It shares no code with the engine, and makes each change to the question by itself.
//! Tolerance: none. The sheets of 12 x 12 in are worked by hand (areas in square eighths or sixteenths).
#![allow(clippy::cast_possible_truncation, dead_code, reason = "tests share helpers; sides are small")]

#[path = "common/recount.rs"]
mod recount;

use std::collections::BTreeSet;

use cutting::Budget;
use cutting::flexible::nearest::{Aim, Change, End, Fix, Move, Nearest, Reach, Side, Sort, nearest};
use cutting::flexible::{Instance, Kind, Recipe, Refusal, Span, Wish};

/// A piece: width, height, whether it may turn.
type Piece = (u32, u32, bool);

/// True if the pieces can be cut from w x h, waste allowed.
fn cuts(w: u32, h: u32, pieces: &[Piece]) -> bool {
    if pieces.iter().map(|p| p.0 * p.1).sum::<u32>() > w * h {
        return false;
    }
    match pieces {
        [] => return true,
        [p] => return (p.0 <= w && p.1 <= h) || (p.2 && p.1 <= w && p.0 <= h),
        _ => {}
    }
    // The first piece goes to the first part; mirrored cuts are all tried, so nothing is lost.
    for mask in 1..1u32 << (pieces.len() - 1) {
        let goes = |i: usize| i > 0 && mask >> (i - 1) & 1 == 1;
        let part = |second: bool| -> Vec<Piece> {
            pieces.iter().enumerate().filter(|(i, _)| goes(*i) == second).map(|(_, p)| *p).collect()
        };
        let (a, b) = (part(false), part(true));
        if (1..w).any(|at| cuts(at, h, &a) && cuts(w - at, h, &b))
            || (1..h).any(|at| cuts(w, at, &a) && cuts(w, h - at, &b))
        {
            return true;
        }
    }
    false
}

/// True if some choice of sizes works for some number of cards.
fn works(instance: &Instance, aim: Aim) -> bool {
    let recipe = &instance.recipes[0];
    let low = instance.cards.least.max(recipe.cards.least);
    let high = instance.cards.most.min(recipe.cards.most);
    (low..=high).any(|cards| {
        let mut slots: Vec<(usize, u32)> = Vec::new();
        for (k, kind) in instance.kinds.iter().enumerate() {
            let n = recipe.pieces[k] * cards;
            if kind.uniform { slots.push((k, n)) } else { slots.extend((0..n).map(|_| (k, 1))) }
        }
        choose(instance, &slots, aim, &mut Vec::new())
    })
}

fn choose(instance: &Instance, slots: &[(usize, u32)], aim: Aim, pieces: &mut Vec<Piece>) -> bool {
    let (w, h) = (instance.width, instance.height);
    let Some((&(k, n), rest)) = slots.split_first() else {
        let area = pieces.iter().map(|p| p.0 * p.1).sum::<u32>();
        return (aim == Aim::AnyLayout || area == w * h) && cuts(w, h, pieces);
    };
    let kind = &instance.kinds[k];
    for width in kind.width.least..=kind.width.most {
        for height in kind.height.least..=kind.height.most {
            (0..n).for_each(|_| pieces.push((width, height, kind.turn)));
            let found = choose(instance, rest, aim, pieces);
            pieces.truncate(pieces.len() - n as usize);
            if found {
                return true;
            }
        }
    }
    false
}

/// The question with a change made to it, by the words of the change alone.
fn made(instance: &Instance, reach: &Reach, change: &Change) -> Instance {
    let mut made = instance.clone();
    match change {
        Change::Turn { kinds } => kinds.iter().for_each(|&k| made.kinds[k].turn = true),
        Change::Sizes { moves } => {
            for to in moves {
                let kind = &mut made.kinds[to.kind];
                match (to.side, to.end) {
                    (Side::Width, End::Least) => kind.width.least -= to.steps,
                    (Side::Width, End::Most) => kind.width.most += to.steps,
                    (Side::Height, End::Least) => kind.height.least -= to.steps,
                    (Side::Height, End::Most) => kind.height.most += to.steps,
                }
            }
        }
        Change::FewerCards { by } => made.cards.least -= by,
        Change::Sheet { index } => (made.width, made.height) = reach.sheets[*index],
    }
    made
}

/// Every way to move ends by `total` steps in all that stays within bounds.
fn all_moves(instance: &Instance, reach: &Reach, total: u32) -> Vec<Vec<Move>> {
    let mut ends = Vec::new();
    for kind in 0..instance.kinds.len() {
        for side in [Side::Width, Side::Height] {
            ends.extend([End::Least, End::Most].map(|end| (kind, side, end)));
        }
    }
    let mut ways: Vec<(u32, Vec<Move>)> = vec![(total, Vec::new())];
    for (kind, side, end) in ends {
        let span = if side == Side::Width { instance.kinds[kind].width } else { instance.kinds[kind].height };
        let bound = if side == Side::Width { reach.bounds[kind].0 } else { reach.bounds[kind].1 };
        let most = match end {
            End::Least => span.least.saturating_sub(bound.least),
            End::Most => bound.most.saturating_sub(span.most),
        };
        let mut next = Vec::new();
        for (left, moves) in ways {
            for steps in 0..=left.min(most) {
                let mut moves = moves.clone();
                if steps > 0 {
                    moves.push(Move { kind, side, end, steps });
                }
                next.push((left - steps, moves));
            }
        }
        ways = next;
    }
    ways.into_iter().filter(|(left, _)| *left == 0).map(|(_, moves)| moves).collect()
}

/// The changes of one sort that brute force finds smallest.
fn smallest(instance: &Instance, reach: &Reach, sort: Sort) -> BTreeSet<Change> {
    let sizes: Vec<Vec<Change>> = match sort {
        Sort::Turn => {
            let may: Vec<usize> =
                (0..instance.kinds.len()).filter(|&k| reach.turn[k] && !instance.kinds[k].turn).collect();
            let subsets = (1..1u32 << may.len()).map(|mask| {
                let kinds = may.iter().enumerate().filter(|(i, _)| mask >> i & 1 == 1).map(|(_, k)| *k);
                kinds.collect::<Vec<usize>>()
            });
            let subsets: Vec<Vec<usize>> = subsets.collect();
            let of = |n: usize| subsets.iter().filter(move |s| s.len() == n).map(|s| Change::Turn { kinds: s.clone() });
            (1..=may.len()).map(|n| of(n).collect()).collect()
        }
        Sort::Sizes => (1..=reach.steps)
            .map(|total| all_moves(instance, reach, total).into_iter().map(|moves| Change::Sizes { moves }).collect())
            .collect(),
        Sort::FewerCards => {
            (1..=reach.cards.min(instance.cards.least - 1)).map(|by| vec![Change::FewerCards { by }]).collect()
        }
        Sort::Sheet => vec![(0..reach.sheets.len()).map(|index| Change::Sheet { index }).collect()],
    };
    let fits = |change: &Change| works(&made(instance, reach, change), reach.aim);
    sizes
        .into_iter()
        .map(|same| same.into_iter().filter(fits).collect())
        .find(|found: &BTreeSet<_>| !found.is_empty())
        .unwrap_or_default()
}

/// A move that the engine leaves out because it cannot help: a larger piece where waste is allowed, a side that
/// would pass the sheet. Brute force may list a way with such a move only beside a smaller way without it.
fn idle(instance: &Instance, reach: &Reach, change: &Change) -> bool {
    let Change::Sizes { moves } = change else { return false };
    moves.iter().any(|to| {
        let kind = &instance.kinds[to.kind];
        let side = if to.side == Side::Width { kind.width } else { kind.height };
        let room = match (kind.turn, to.side) {
            (true, _) => instance.width.max(instance.height),
            (false, Side::Width) => instance.width,
            (false, Side::Height) => instance.height,
        };
        to.end == End::Most && (reach.aim == Aim::AnyLayout || side.most + to.steps > room)
    })
}

fn sort_of(change: &Change) -> Sort {
    match change {
        Change::Turn { .. } => Sort::Turn,
        Change::Sizes { .. } => Sort::Sizes,
        Change::FewerCards { .. } => Sort::FewerCards,
        Change::Sheet { .. } => Sort::Sheet,
    }
}

/// Asks both and compares; the sorts that help.
fn compare(instance: &Instance, reach: &Reach) -> Option<BTreeSet<Sort>> {
    let answer = nearest(instance, reach, &mut Budget::unlimited()).expect("a proper question");
    assert_eq!(answer.works, works(instance, reach.aim), "{instance:?}");
    if answer.works {
        assert!(answer.fixes.is_empty());
        return None;
    }
    assert!(answer.unknown.is_empty(), "{instance:?} {reach:?}: {answer:?}");
    let mut helping = BTreeSet::new();
    for sort in Sort::ORDER {
        let own: Vec<&Fix> = answer.fixes.iter().filter(|fix| sort_of(&fix.change) == sort).collect();
        let found: BTreeSet<Change> = own.iter().map(|fix| fix.change.clone()).collect();
        let brute: BTreeSet<Change> =
            smallest(instance, reach, sort).into_iter().filter(|change| !idle(instance, reach, change)).collect();
        assert_eq!(found, brute, "{sort:?} of {instance:?} {reach:?}");
        assert_eq!(answer.refuted.contains(&sort), brute.is_empty());
        assert!(own.iter().all(|fix| fix.smallest));
        for fix in own {
            recount::check(&made(instance, reach, &fix.change), &fix.layout);
            assert!(reach.aim == Aim::AnyLayout || fix.layout.waste == 0);
            helping.insert(sort);
        }
    }
    Some(helping)
}

struct Dice(u64);

impl Dice {
    fn roll(&mut self, least: u32, most: u32) -> u32 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        least + ((self.0 >> 33) % u64::from(most - least + 1)) as u32
    }
}

fn question(dice: &mut Dice, aim: Aim) -> (Instance, Reach) {
    let kinds: Vec<Kind> = (0..dice.roll(1, 2))
        .map(|_| {
            let (w, h) = (dice.roll(2, 5), dice.roll(1, 4));
            let (more_w, more_h) = (dice.roll(0, 1), dice.roll(0, 1) / dice.roll(1, 2));
            Kind {
                width: Span::new(w, w + more_w),
                height: Span::new(h, h + more_h),
                prefer: (w, h),
                step: 1,
                turn: dice.roll(0, 3) == 0,
                uniform: dice.roll(0, 3) > 0,
            }
        })
        .collect();
    let cards = dice.roll(1, 2);
    let pieces = kinds.iter().map(|_| dice.roll(1, 2)).collect();
    let reach = Reach {
        aim,
        turn: kinds.iter().map(|_| dice.roll(0, 2) > 0).collect(),
        steps: dice.roll(1, 3),
        bounds: kinds.iter().map(|_| [0; 2].map(|_| Span::new(dice.roll(1, 3), dice.roll(4, 12))).into()).collect(),
        cards: 2,
        sheets: (0..dice.roll(0, 3)).map(|_| (dice.roll(3, 9), dice.roll(3, 9))).collect(),
        each: 1_000,
    };
    let instance = Instance {
        width: dice.roll(3, 8),
        height: dice.roll(3, 8),
        spares: Vec::new(),
        recipes: vec![Recipe { pieces, cards: Span::new(0, cards) }],
        kinds,
        cards: Span::exactly(cards),
        pins: Vec::new(),
        wishes: Wish::ORDER.to_vec(),
        alternatives: 1,
    };
    (instance, reach)
}

fn many(seed: u64, aim: Aim, rounds: u32) {
    let mut dice = Dice(seed);
    let (mut already, mut beyond) = (0, 0);
    let mut helped = [0; 4];
    for _ in 0..rounds {
        let (instance, reach) = question(&mut dice, aim);
        match compare(&instance, &reach) {
            None => already += 1,
            Some(helping) if helping.is_empty() => beyond += 1,
            Some(helping) => helping.iter().for_each(|sort| helped[*sort as usize] += 1),
        }
    }
    // The test says nothing unless every outcome is met.
    assert!(already >= 5 && beyond >= 5 && helped.iter().all(|n| *n >= 5), "{already} {beyond} {helped:?}");
}

#[test]
fn the_smallest_changes_that_give_a_layout_agree_with_brute_force() {
    many(3, Aim::AnyLayout, 400);
}

#[test]
fn the_smallest_changes_that_leave_no_waste_agree_with_brute_force() {
    many(9, Aim::NoWaste, 400);
}

/// Eight cards of a panel and a band from 12 x 12 in, in sixteenths.
fn eight(panel: (u32, u32), band: (u32, u32)) -> Instance {
    let kind = |(w, h)| Kind {
        width: Span::exactly(w),
        height: Span::exactly(h),
        prefer: (w, h),
        step: 1,
        turn: false,
        uniform: true,
    };
    Instance {
        width: 192,
        height: 192,
        kinds: vec![kind(panel), kind(band)],
        recipes: vec![Recipe { pieces: vec![1, 1], cards: Span::new(0, 8) }],
        cards: Span::exactly(8),
        spares: Vec::new(),
        pins: Vec::new(),
        wishes: Wish::ORDER.to_vec(),
        alternatives: 1,
    }
}

fn reach(aim: Aim) -> Reach {
    Reach {
        aim,
        turn: vec![true; 2],
        steps: 8,
        bounds: Vec::new(),
        cards: 4,
        sheets: vec![(224, 192), (192, 208), (196, 192)],
        each: 3,
    }
}

fn asked(instance: &Instance, reach: &Reach) -> Nearest {
    nearest(instance, reach, &mut Budget::nodes(20_000_000)).expect("a proper question")
}

fn narrower(kind: usize, steps: u32) -> Move {
    Move { kind, side: Side::Width, end: End::Least, steps }
}

#[test]
fn a_sixteenth_too_wide_tiles_one_sixteenth_narrower() {
    // Eight 3 1/16 x 4 1/2 and eight 3 x 1 1/2: 8 x (49 x 72 + 48 x 24) = 37 440 of 36 864 square sixteenths.
    let answer = asked(&eight((49, 72), (48, 24)), &reach(Aim::NoWaste));
    assert_eq!(answer.fixes[0].change, Change::Sizes { moves: vec![narrower(0, 1)] });
    assert!(answer.fixes[0].smallest && answer.fixes[0].layout.waste == 0);
    assert_eq!(answer.fixes.iter().filter(|fix| sort_of(&fix.change) == Sort::Sizes).count(), 1);
    assert!(answer.refuted.contains(&Sort::Turn), "more area than the sheet has: {answer:?}");
    // Both wider: both a sixteenth narrower, two steps in all, and nothing smaller.
    let answer = asked(&eight((49, 72), (49, 24)), &reach(Aim::NoWaste));
    assert_eq!(answer.fixes[0].change, Change::Sizes { moves: vec![narrower(0, 1), narrower(1, 1)] });
    assert!(answer.fixes[0].smallest && answer.fixes[0].layout.waste == 0);
}

#[test]
fn with_waste_the_smallest_sheet_and_fewest_cards_are_told() {
    let answer = asked(&eight((49, 72), (48, 24)), &reach(Aim::AnyLayout));
    let found: Vec<&Change> = answer.fixes.iter().map(|fix| &fix.change).collect();
    // 196 x 192: four columns of 49; then by area.
    let sheets: Vec<&Change> = found.iter().copied().filter(|change| sort_of(change) == Sort::Sheet).collect();
    assert_eq!(sheets[0], &Change::Sheet { index: 2 }, "{answer:#?}");
    // Six in three columns of 49; the seventh panel would need a fourth column of 45.
    assert!(found.contains(&&Change::FewerCards { by: 2 }), "{found:?}");
}

#[test]
fn what_works_needs_no_change() {
    let answer = asked(&eight((48, 72), (48, 24)), &reach(Aim::NoWaste));
    assert_eq!(answer, Nearest { works: true, ..Nearest::default() });
}

#[test]
fn nothing_within_reach_is_said_and_a_spent_budget_proves_nothing() {
    let far = eight((96, 96), (96, 96));
    let bounded = Reach { sheets: vec![(10, 10)], cards: 1, ..reach(Aim::AnyLayout) };
    let answer = asked(&far, &bounded);
    assert!(answer.fixes.is_empty() && answer.refuted == Sort::ORDER);
    // One sixteenth narrower works: an ended search must not say that nothing does.
    let question = eight((49, 72), (48, 24));
    let stop = || true;
    for mut budget in [Budget::nodes(0), Budget::unlimited().stopped_by(&stop)] {
        let answer = nearest(&question, &reach(Aim::NoWaste), &mut budget).expect("a proper question");
        assert!(!answer.refuted.contains(&Sort::Sizes), "{answer:?}");
        assert!(answer.unknown.contains(&Sort::Sizes) || !answer.fixes.is_empty());
    }
}

#[test]
fn a_wish_beyond_all_bounds_is_answered_at_once() {
    // Four thousand million cards: the area says that at most eight come of a sheet, and eight do.
    let mut slip = eight((48, 72), (48, 24));
    slip.cards = Span::exactly(u32::MAX);
    slip.recipes[0].cards = Span::new(0, u32::MAX);
    let answer = asked(&slip, &Reach { cards: u32::MAX, ..reach(Aim::AnyLayout) });
    let fewer = answer.fixes.iter().find(|fix| sort_of(&fix.change) == Sort::FewerCards).expect("fewer cards do");
    assert_eq!((&fewer.change, fewer.smallest), (&Change::FewerCards { by: u32::MAX - 8 }, true));
    assert_eq!((fewer.layout.cards[0], fewer.layout.waste), (8, 0));
}

#[test]
fn a_question_that_cannot_be_asked_is_refused() {
    let mut broken = eight((48, 72), (48, 24));
    broken.kinds[1].width = Span::new(9, 3);
    let answer = nearest(&broken, &reach(Aim::AnyLayout), &mut Budget::nodes(1_000));
    assert_eq!(answer, Err(Refusal::Kind(1)));
}
