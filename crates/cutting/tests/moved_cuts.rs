//! Source: an independent brute force: every size of every kind is put into the same cuts, and those that fill the sheet
//! exactly are kept. The worked case is that of `job.md`, layout L1 (12 x 12 in from 3 x 4 1/2 and 3 x 1 1/2), by hand.
//! Tolerance: none.
#![allow(clippy::unwrap_used, reason = "tests")]

use cutting::flexible::shift::{Line, left_over, lines, shifted};
use cutting::flexible::{Instance, Kind, Recipe, Span, Wish, solve};
use cutting::{Axis, Budget, Tree};

fn kind(width: (u32, u32), height: (u32, u32)) -> Kind {
    Kind {
        width: Span::new(width.0, width.1),
        height: Span::new(height.0, height.1),
        prefer: (width.1, height.1),
        step: 1,
        turn: false,
        uniform: true,
    }
}

fn instance(sheet: (u32, u32), kinds: Vec<Kind>, cards: u32) -> Instance {
    Instance {
        width: sheet.0,
        height: sheet.1,
        recipes: vec![Recipe { pieces: vec![1; kinds.len()], cards: Span::exactly(cards) }],
        spares: vec![0; kinds.len()],
        kinds,
        cards: Span::exactly(cards),
        pins: Vec::new(),
        wishes: Wish::ORDER.to_vec(),
        alternatives: 1,
    }
}

/// The tree with every piece at the size of its kind; `None` where parts do not meet.
fn sized(tree: &Tree, sizes: &[(u32, u32)]) -> Option<(Tree, (u32, u32))> {
    match tree {
        Tree::Waste => None,
        Tree::Piece { kind, turned, .. } => {
            let (w, h) = sizes[*kind];
            let (width, height) = if *turned { (h, w) } else { (w, h) };
            Some((Tree::Piece { kind: *kind, width, height, turned: *turned }, (width, height)))
        }
        Tree::Cut { axis, first, second, .. } => {
            let ((one, a), (other, b)) = (sized(first, sizes)?, sized(second, sizes)?);
            let (at, size) = match axis {
                Axis::X if a.1 == b.1 => (a.0, (a.0 + b.0, a.1)),
                Axis::Y if a.0 == b.0 => (a.1, (a.0, a.1 + b.1)),
                _ => return None,
            };
            Some((Tree::Cut { axis: *axis, at, first: Box::new(one), second: Box::new(other) }, size))
        }
    }
}

/// Every tree of the same cuts that fills the sheet.
fn every(instance: &Instance, tree: &Tree) -> Vec<Tree> {
    let sizes = |kind: &Kind| {
        let (w, h) = (kind.width, kind.height);
        (w.least..=w.most).flat_map(move |w| (h.least..=h.most).map(move |h| (w, h))).collect::<Vec<_>>()
    };
    let all: Vec<Vec<(u32, u32)>> = instance.kinds.iter().map(sizes).collect();
    let mut choices: Vec<Vec<(u32, u32)>> = vec![Vec::new()];
    for sizes in &all {
        choices = choices.iter().flat_map(|c| sizes.iter().map(move |s| [&c[..], &[*s]].concat())).collect();
    }
    let whole = |sizes: &Vec<(u32, u32)>| {
        sized(tree, sizes).filter(|(_, size)| *size == (instance.width, instance.height)).map(|(tree, _)| tree)
    };
    choices.iter().filter_map(whole).collect()
}

#[test]
fn a_panel_a_step_shorter_gives_bands_a_step_taller() {
    // Steps of 1/8 in: 96 x 96.
    let asked = instance((96, 96), vec![kind((22, 24), (32, 36)), kind((22, 24), (8, 16))], 8);
    let layout = &solve(&asked, &mut Budget::nodes(20_000_000)).unwrap().layouts[0];
    let all = lines(&layout.tree, 96, 96);
    let level = all.iter().find(|line| line.axis == Axis::Y).unwrap();
    let moved = [level.at - 1, level.at + 1]
        .into_iter()
        .find_map(|to| shifted(&asked, &layout.tree, *level, to, &mut Budget::nodes(100_000)).unwrap())
        .unwrap();
    let placed = cutting::tree::pieces(&moved, 96, 96).unwrap();
    let panel = placed.iter().find(|piece| piece.kind == 0).unwrap().height;
    assert!(panel != 36, "panels are what changed");
    for piece in &placed {
        let height = if piece.kind == 0 { panel } else { 48 - panel };
        assert_eq!((piece.width, piece.height), (24, height));
    }
    // Four columns have one width only.
    let upright = all.iter().find(|line| line.axis == Axis::X).unwrap();
    assert_eq!(shifted(&asked, &layout.tree, *upright, upright.at + 1, &mut Budget::nodes(100_000)), Ok(None));
}

#[test]
fn it_finds_one_wherever_trying_every_size_does() {
    let cases = [
        instance((24, 24), vec![kind((4, 7), (6, 10)), kind((4, 7), (2, 5))], 8),
        instance((24, 18), vec![kind((4, 8), (5, 9)), kind((4, 8), (3, 6))], 6),
        instance((20, 24), vec![kind((3, 6), (5, 9)), kind((3, 6), (3, 7))], 8),
        instance((16, 22), vec![kind((6, 9), (5, 9)), kind((6, 9), (3, 6)), kind((6, 9), (2, 8))], 2),
    ];
    let (mut yes, mut no) = (0, 0);
    for asked in &cases {
        let answer = solve(asked, &mut Budget::nodes(20_000_000)).unwrap();
        let layout = answer.layouts.iter().find(|layout| layout.waste == 0).unwrap_or_else(|| panic!("{asked:?}"));
        let (width, height) = (asked.width, asked.height);
        let all = every(asked, &layout.tree);
        assert!(all.contains(&layout.tree));
        for (number, line) in lines(&layout.tree, width, height).into_iter().enumerate() {
            for to in 1..line.axis.of(width, height) {
                let found = shifted(asked, &layout.tree, line, to, &mut Budget::nodes(10_000_000)).unwrap();
                // Where the same cut lies in each: the number-th line may have joined others, so its own cuts are compared.
                let there = |tree: &Tree| {
                    cuts_of(&layout.tree, tree, line, [0, 0, width, height], [0, 0, width, height])
                        .iter()
                        .all(|at| *at == to)
                };
                let known = all.iter().any(there);
                assert_eq!(found.is_some(), known, "{asked:?}: line {number} to {to}");
                if let Some(found) = found {
                    assert!(all.contains(&found) && there(&found) && left_over(&found, width, height).is_empty());
                    yes += 1;
                } else {
                    no += 1;
                }
            }
        }
    }
    assert!(yes > 20 && no > 20, "{yes} {no}");
}

/// Where the cuts that make up `line` in `old` lie in `new`, which has the same cuts.
fn cuts_of(old: &Tree, new: &Tree, line: Line, was: [u32; 4], is: [u32; 4]) -> Vec<u32> {
    let (Tree::Cut { axis, at, first, second }, Tree::Cut { at: now, first: one, second: other, .. }) = (old, new)
    else {
        return Vec::new();
    };
    let (i, j) = if *axis == Axis::X { (0, 1) } else { (1, 0) };
    let mut found = Vec::new();
    let (from, to) = (was[j], was[j] + was[j + 2]);
    if (*axis, was[i] + at) == (line.axis, line.at) && line.from <= from && to <= line.to {
        found.push(is[i] + now);
    }
    let halves = |area: [u32; 4], at: u32| {
        let (mut near, mut far) = (area, area);
        near[i + 2] = at;
        far[i] += at;
        far[i + 2] -= at;
        (near, far)
    };
    let ((was_near, was_far), (is_near, is_far)) = (halves(was, *at), halves(is, *now));
    found.extend(cuts_of(first, one, line, was_near, is_near));
    found.extend(cuts_of(second, other, line, was_far, is_far));
    found
}

#[test]
fn pins_stay_and_what_is_left_over_is_told() {
    let mut asked = instance((24, 24), vec![kind((4, 7), (6, 10)), kind((4, 7), (2, 5))], 8);
    let layout = solve(&asked, &mut Budget::nodes(20_000_000)).unwrap().layouts.remove(0);
    let line = lines(&layout.tree, 24, 24)[0];
    let placed = cutting::tree::pieces(&layout.tree, 24, 24).unwrap();
    let moves = |asked: &Instance| {
        (1..24)
            .filter(|to| shifted(asked, &layout.tree, line, *to, &mut Budget::unlimited()).unwrap().is_some())
            .count()
    };
    let free = moves(&asked);
    let piece = placed[0];
    asked.pins = vec![cutting::flexible::Pin {
        kind: piece.kind,
        x: piece.x,
        y: piece.y,
        width: piece.width,
        height: piece.height,
    }];
    assert!(free >= moves(&asked) && moves(&asked) >= 1);
    let half = Tree::Cut { axis: Axis::Y, at: 5, first: Box::new(Tree::Waste), second: Box::new(layout.tree.clone()) };
    assert_eq!(left_over(&half, 24, 29), [[0, 0, 24, 5]]);
    assert!(shifted(&asked, &layout.tree, line, line.at, &mut Budget::nodes(1)).is_err());
}
