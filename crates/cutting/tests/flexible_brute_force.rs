//! Source: brute force written for this test: every choice of sizes, every cut, every split of the pieces.
//! It shares no code with the engine. Tolerance: none.
#![allow(clippy::cast_possible_truncation, clippy::type_complexity, dead_code, reason = "tests share helpers")]

#[path = "common/recount.rs"]
mod recount;

use cutting::flexible::{Instance, Kind, Pin, Recipe, Span, Why, Wish, solve};
use cutting::{Budget, Outcome};

/// Pieces by size and turning.
type Pieces = Vec<(u32, u32, bool)>;

/// True if the pieces can be cut from w × h, waste allowed.
fn cuts(w: u32, h: u32, pieces: &[(u32, u32, bool)]) -> bool {
    let area: u32 = pieces.iter().map(|p| p.0 * p.1).sum();
    if area > w * h {
        return false;
    }
    match pieces {
        [] => return true,
        [p] => return (p.0 <= w && p.1 <= h) || (p.2 && p.1 <= w && p.0 <= h),
        _ => {}
    }
    // The first piece goes to the first part; mirrored cuts are all tried, so nothing is lost.
    for mask in 0..1u32 << (pieces.len() - 1) {
        let part = |inside: bool| -> Pieces {
            let chosen = |i: usize| i == 0 || mask >> (i - 1) & 1 == 1;
            pieces.iter().enumerate().filter(|(i, _)| chosen(*i) == inside).map(|(_, p)| *p).collect()
        };
        let (a, b) = (part(true), part(false));
        if b.is_empty() {
            continue;
        }
        if (1..w).any(|at| cuts(at, h, &a) && cuts(w - at, h, &b))
            || (1..h).any(|at| cuts(w, at, &a) && cuts(w, h - at, &b))
        {
            return true;
        }
    }
    false
}

/// Most area of pieces over every choice of sizes; `None` if none fits.
fn most_area(instance: &Instance) -> Option<u32> {
    // One entry a piece; pieces of a uniform kind share a choice.
    let mut slots: Vec<(usize, u32)> = Vec::new();
    for (k, kind) in instance.kinds.iter().enumerate() {
        let n = instance.recipes[0].pieces[k] * instance.recipes[0].cards.least;
        if kind.uniform { slots.push((k, n)) } else { slots.extend((0..n).map(|_| (k, 1))) }
    }
    let mut best = None;
    fn choose(instance: &Instance, slots: &[(usize, u32)], pieces: &mut Pieces, best: &mut Option<u32>) {
        let Some((&(k, n), rest)) = slots.split_first() else {
            let area = pieces.iter().map(|p| p.0 * p.1).sum();
            if best.is_none_or(|b| area > b) && cuts(instance.width, instance.height, pieces) {
                *best = Some(area);
            }
            return;
        };
        let kind = &instance.kinds[k];
        for w in kind.width.least..=kind.width.most {
            for h in kind.height.least..=kind.height.most {
                (0..n).for_each(|_| pieces.push((w, h, kind.turn)));
                choose(instance, rest, pieces, best);
                pieces.truncate(pieces.len() - n as usize);
            }
        }
    }
    choose(instance, &slots, &mut Vec::new(), &mut best);
    best
}

struct Dice(u64);

impl Dice {
    fn roll(&mut self, least: u32, most: u32) -> u32 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        least + ((self.0 >> 33) % u64::from(most - least + 1)) as u32
    }
}

fn question(dice: &mut Dice, uniform: bool) -> Instance {
    let kinds = (0..dice.roll(1, 2))
        .map(|_| {
            let (w, h) = (dice.roll(1, 5), dice.roll(1, 5));
            Kind {
                width: Span::new(w, w + dice.roll(0, 1)),
                height: Span::new(h, h + dice.roll(0, 1)),
                prefer: (w, h),
                step: 1,
                turn: dice.roll(0, 1) == 1,
                uniform,
            }
        })
        .collect::<Vec<_>>();
    let pieces = kinds.iter().map(|_| dice.roll(1, 2)).collect();
    Instance {
        width: dice.roll(4, 9),
        height: dice.roll(4, 9),
        spares: Vec::new(),
        recipes: vec![Recipe { pieces, cards: Span::exactly(1) }],
        kinds,
        cards: Span::exactly(1),
        pins: Vec::new(),
        wishes: Wish::ORDER.to_vec(),
        alternatives: 3,
    }
}

/// Asks both and compares; returns the least waste.
fn compare(instance: &Instance) -> Option<u64> {
    let sheet = instance.width * instance.height;
    let brute = most_area(instance).map(|area| u64::from(sheet - area));
    let answer = solve(instance, &mut Budget::unlimited()).expect("a proper question");
    answer.layouts.iter().for_each(|layout| recount::check(instance, layout));
    match (&answer.outcome, brute) {
        (Outcome::Impossible { .. }, None) => {}
        (Outcome::Proven, Some(waste)) => assert_eq!(answer.layouts[0].waste, waste, "{instance:?}"),
        (Outcome::Best { bound }, Some(waste)) => {
            assert!(*bound <= waste && waste <= answer.layouts[0].waste, "{instance:?}");
            // Whether the whole sheet can be used is always decided.
            assert!(waste > 0, "{instance:?}");
        }
        other => panic!("{other:?} for {instance:?}"),
    }
    brute
}

#[test]
fn one_size_per_piece_agrees_with_brute_force() {
    let mut dice = Dice(7);
    let (mut whole, mut wasteful, mut impossible) = (0, 0, 0);
    for _ in 0..400 {
        match compare(&question(&mut dice, true)) {
            None => impossible += 1,
            Some(0) => whole += 1,
            Some(_) => wasteful += 1,
        }
    }
    // At least ten small ones that nothing can cut, and many of each other sort.
    assert!(impossible >= 10 && whole >= 5 && wasteful >= 50, "{impossible} {whole} {wasteful}");
}

#[test]
fn free_sizes_agree_with_brute_force() {
    let mut dice = Dice(11);
    let (mut whole, mut impossible) = (0, 0);
    for _ in 0..250 {
        match compare(&question(&mut dice, false)) {
            None => impossible += 1,
            Some(0) => whole += 1,
            Some(_) => {}
        }
    }
    assert!(impossible >= 10 && whole >= 5, "{impossible} {whole}");
}

fn plain(width: u32, height: u32, piece: (u32, u32), n: u32, turn: bool) -> Instance {
    Instance {
        width,
        height,
        kinds: vec![Kind {
            width: Span::exactly(piece.0),
            height: Span::exactly(piece.1),
            prefer: piece,
            step: 1,
            turn,
            uniform: true,
        }],
        recipes: vec![Recipe { pieces: vec![1], cards: Span::exactly(n) }],
        cards: Span::exactly(n),
        spares: Vec::new(),
        pins: Vec::new(),
        wishes: Wish::ORDER.to_vec(),
        alternatives: 1,
    }
}

#[test]
fn four_five_by_sevens_do_not_come_out_of_twelve_by_twelve() {
    // They fit as a pinwheel, which no edge-to-edge cut makes.
    let four = solve(&plain(12, 12, (5, 7), 4, true), &mut Budget::unlimited()).expect("a proper question");
    assert_eq!(four.outcome, Outcome::Impossible { why: Why::NoTree });
    let three = solve(&plain(12, 12, (5, 7), 3, true), &mut Budget::unlimited()).expect("a proper question");
    assert_eq!(three.outcome, Outcome::Proven);
    assert_eq!(three.layouts[0].waste, 144 - 105);
}

#[test]
fn a_pinned_piece_stays_where_it_is() {
    // Twelve 4 x 3 on 12 x 12; one of them pinned in the second column, third row.
    let mut instance = plain(12, 12, (4, 3), 12, true);
    instance.pins = vec![Pin { kind: 0, x: 4, y: 6, width: 4, height: 3 }];
    let answer = solve(&instance, &mut Budget::unlimited()).expect("a proper question");
    assert_eq!((&answer.outcome, answer.layouts[0].waste), (&Outcome::Proven, 0));
    recount::check(&instance, &answer.layouts[0]);
    // Off the grid of its neighbours nothing can be whole any more, but the pin still holds.
    instance.recipes[0].cards = Span::exactly(8);
    instance.cards = Span::exactly(8);
    instance.pins = vec![Pin { kind: 0, x: 1, y: 1, width: 4, height: 3 }];
    let answer = solve(&instance, &mut Budget::unlimited()).expect("a proper question");
    assert!(answer.layouts[0].waste > 0);
    recount::check(&instance, &answer.layouts[0]);
    // Free sizes around a pin.
    let mut free = plain(12, 12, (4, 3), 9, false);
    free.kinds[0].width = Span::new(3, 5);
    free.kinds[0].height = Span::new(3, 5);
    free.kinds[0].uniform = false;
    free.pins = vec![Pin { kind: 0, x: 3, y: 4, width: 5, height: 3 }];
    let answer = solve(&free, &mut Budget::nodes(50_000_000)).expect("a proper question");
    assert_eq!(answer.layouts[0].waste, 0);
    recount::check(&free, &answer.layouts[0]);
}

#[test]
fn many_pieces_of_many_kinds_still_get_an_answer() {
    let mut dice = Dice(5);
    let kinds: Vec<Kind> = (0..10)
        .map(|_| {
            let (w, h) = (dice.roll(12, 30), dice.roll(12, 30));
            Kind {
                width: Span::new(w, w + 6),
                height: Span::new(h, h + 6),
                prefer: (w + 3, h + 3),
                step: 1,
                turn: true,
                uniform: true,
            }
        })
        .collect();
    let mut instance = plain(192, 192, (1, 1), 4, true);
    instance.recipes = vec![Recipe { pieces: vec![1; 10], cards: Span::exactly(4) }];
    instance.kinds = kinds;
    let answer = solve(&instance, &mut Budget::nodes(2_000_000)).expect("a proper question");
    assert!(matches!(answer.outcome, Outcome::Best { .. } | Outcome::Proven), "{:?}", answer.outcome);
    recount::check(&instance, &answer.layouts[0]);
    assert_eq!(answer.layouts[0].cards, vec![4]);
}
