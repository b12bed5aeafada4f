//! Source: sums over rectangles by numpy 2.4.6 (`numpy.cumsum` along both axes; `data/placing_numpy.json` says how they were
//! made); and a brute force written for this test, which walks every order of every row and looks at every cell by itself.
//! It shares no code with the search. Tolerance: none, all numbers are whole.
#![allow(clippy::unwrap_used, clippy::cast_possible_truncation, reason = "tests")]

use cutting::placing::{Area, Ask, Cover, Keep, Motif, PlacingError, Print, Score, follows, place, score, tally};
use cutting::steps::{Job, Limits, Step, Trims, effort, steps, tidy};
use cutting::verify::{Demand, Kind, verify};
use cutting::{Axis, Budget, Outcome, Tree};
use proptest::prelude::*;

fn cut(axis: Axis, at: u32, first: Tree, second: Tree) -> Tree {
    Tree::Cut { axis, at, first: Box::new(first), second: Box::new(second) }
}

fn piece(kind: usize, width: u32, height: u32) -> Tree {
    Tree::Piece { kind, width, height, turned: false }
}

#[test]
fn a_piece_is_worth_what_numpy_sums() {
    let data: serde_json::Value = serde_json::from_str(include_str!("data/placing_numpy.json")).unwrap();
    let number = |value: &serde_json::Value| u32::try_from(value.as_u64().unwrap()).unwrap();
    let (width, height) = (number(&data["width"]), number(&data["height"]));
    let weights: Vec<u32> = data["weights"].as_array().unwrap().iter().map(number).collect();
    let prints = [Print { weights, times: 1, ..Print::default() }];
    let sums = data["sums"].as_array().unwrap();
    assert_eq!(sums.len(), 120);
    for row in sums {
        let [l, t, r, b, sum] = std::array::from_fn(|at| number(&row[at]));
        // The rectangle as a piece, and waste round it.
        let mut tree = piece(0, r - l, b - t);
        if l > 0 {
            tree = cut(Axis::X, l, Tree::Waste, tree);
        }
        if r < width {
            tree = cut(Axis::X, r, tree, Tree::Waste);
        }
        if t > 0 {
            tree = cut(Axis::Y, t, Tree::Waste, tree);
        }
        if b < height {
            tree = cut(Axis::Y, b, tree, Tree::Waste);
        }
        let ask = Ask { tree: &tree, width, height, prints: &prints, covers: &[], stops: None };
        assert_eq!(score(&ask, &tree).unwrap(), Score { worth: i64::from(sum), ..Score::default() }, "{row}");
    }
}

/// A row of parts, or a leaf, as the brute force holds it.
#[derive(Debug, Clone)]
enum Part {
    Waste(u32, u32),
    Leaf(usize, u32, u32),
    Row(Axis, Vec<Part>),
}

fn size(part: &Part) -> (u32, u32) {
    match part {
        Part::Waste(w, h) | Part::Leaf(_, w, h) => (*w, *h),
        Part::Row(axis, parts) => {
            let sizes: Vec<(u32, u32)> = parts.iter().map(size).collect();
            match axis {
                Axis::X => (sizes.iter().map(|s| s.0).sum(), sizes[0].1),
                Axis::Y => (sizes[0].0, sizes.iter().map(|s| s.1).sum()),
            }
        }
    }
}

fn parts(tree: &Tree, w: u32, h: u32) -> Part {
    let Tree::Cut { axis, at, first, second } = tree else {
        return match tree {
            Tree::Piece { kind, .. } => Part::Leaf(*kind, w, h),
            _ => Part::Waste(w, h),
        };
    };
    let (one, other) = if *axis == Axis::X { ((*at, h), (w - at, h)) } else { ((w, *at), (w, h - at)) };
    let mut list = Vec::new();
    let mut waste = 0;
    for part in [parts(first, one.0, one.1), parts(second, other.0, other.1)] {
        match part {
            Part::Row(inner, more) if inner == *axis => list.extend(more),
            other => list.push(other),
        }
    }
    // Waste of a row is one part.
    list.retain(|part| {
        let Part::Waste(w, h) = part else { return true };
        waste += if *axis == Axis::X { *w } else { *h };
        false
    });
    if waste > 0 {
        list.push(if *axis == Axis::X { Part::Waste(waste, h) } else { Part::Waste(w, waste) });
    }
    if list.len() == 1 { list.remove(0) } else { Part::Row(*axis, list) }
}

type Laid = Vec<(usize, u32, u32, u32, u32)>;

/// Where the pieces lie in every order: kind, left, top, width, height.
fn all(part: &Part, x: u32, y: u32) -> Vec<Laid> {
    match part {
        Part::Waste(..) => vec![Vec::new()],
        Part::Leaf(kind, w, h) => vec![vec![(*kind, x, y, *w, *h)]],
        Part::Row(axis, list) => {
            let mut found = Vec::new();
            for at in 0..list.len() {
                let mut others = list.clone();
                let first = others.remove(at);
                let (w, h) = size(&first);
                let there = if *axis == Axis::X { (x + w, y) } else { (x, y + h) };
                let rest =
                    if others.is_empty() { vec![Vec::new()] } else { all(&Part::Row(*axis, others), there.0, there.1) };
                for one in all(&first, x, y) {
                    found.extend(rest.iter().map(|more| [one.clone(), more.clone()].concat()));
                }
            }
            found
        }
    }
}

/// Cell by cell: kept regions, avoided cells that show, worth.
fn by_cells(laid: &Laid, print: &Print, covers: &[Cover], width: u32, height: u32) -> (i64, i64, i64, i64) {
    let inside = |a: &Area, x: u32, y: u32| x >= a.left && x < a.right && y >= a.top && y < a.bottom;
    // Which piece shows at a cell, and whether it does.
    let holder = |x: u32, y: u32| laid.iter().position(|p| x >= p.1 && x < p.1 + p.3 && y >= p.2 && y < p.2 + p.4);
    let shows = |x: u32, y: u32| {
        let Some(at) = holder(x, y) else { return false };
        let p = laid[at];
        let over = covers.iter().filter(|c| (c.kind, c.width, c.height) == (p.0, p.3, p.4));
        !over.flat_map(|c| &c.areas).any(|a| inside(a, x - p.1, y - p.2))
    };
    let one_piece = |a: &Area| {
        let cells: Vec<_> = (a.top..a.bottom).flat_map(|y| (a.left..a.right).map(move |x| (x, y))).collect();
        let first = cells.first().and_then(|c| holder(c.0, c.1))?;
        cells.iter().all(|c| holder(c.0, c.1) == Some(first)).then_some((first, cells))
    };
    let (mut kept, mut avoided, mut whole, mut worth) = (0, 0, 0, 0);
    for y in 0..height {
        for x in 0..width {
            if shows(x, y) {
                worth += print.weights.get((y * width + x) as usize).map_or(0, |w| i64::from(*w));
                avoided += i64::from(print.avoid.iter().any(|a| inside(a, x, y)));
            }
        }
    }
    for motif in &print.motifs {
        if let Some((_, cells)) = one_piece(&motif.area) {
            let seen = cells.iter().filter(|c| shows(c.0, c.1)).count();
            whole += i64::from(seen == cells.len());
            worth += 4 * i64::from(motif.weight) * seen as i64;
        }
    }
    for keep in &print.keep {
        if let Some((at, cells)) = one_piece(&keep.area) {
            let right = keep.kinds.is_empty() || keep.kinds.contains(&laid[at].0);
            kept += i64::from(right && cells.iter().all(|c| shows(c.0, c.1)));
        }
    }
    let times = i64::from(print.times);
    (kept * times, -avoided * times, whole * times, worth * times)
}

fn best_of(laid: &[Laid], prints: &[Print], covers: &[Cover], width: u32, height: u32) -> Score {
    let of = |one: &Laid| {
        prints
            .iter()
            .map(|print| by_cells(one, print, covers, width, height))
            .fold((0, 0, 0, 0), |a, b| (a.0 + b.0, a.1 + b.1, a.2 + b.2, a.3 + b.3))
    };
    let (kept, spared, whole, worth) = laid.iter().map(of).max().unwrap();
    Score { kept, spared, whole, worth }
}

/// Every way in which pieces of one size change places.
fn exchanges(laid: &Laid) -> Vec<Laid> {
    fn go(done: &mut Laid, laid: &Laid, left: &mut Vec<(usize, u32, u32)>, found: &mut Vec<Laid>) {
        let Some(next) = laid.get(done.len()) else {
            found.push(done.clone());
            return;
        };
        let mut tried = Vec::new();
        for at in 0..left.len() {
            let (kind, w, h) = left[at];
            if (w, h) != (next.3, next.4) || tried.contains(&kind) {
                continue;
            }
            tried.push(kind);
            let took = left.remove(at);
            done.push((kind, next.1, next.2, w, h));
            go(done, laid, left, found);
            done.pop();
            left.insert(at, took);
        }
    }
    let mut found = Vec::new();
    go(&mut Vec::new(), laid, &mut laid.iter().map(|p| (p.0, p.3, p.4)).collect(), &mut found);
    found
}

const W: u32 = 7;
const H: u32 = 6;

fn tree(depth: u32, w: u32, h: u32) -> BoxedStrategy<Tree> {
    let leaf = prop_oneof![1 => Just(Tree::Waste), 5 => (0..2_usize).prop_map(move |kind| piece(kind, w, h))];
    if depth == 0 || w * h < 2 {
        return leaf.boxed();
    }
    let split = (any::<bool>(), any::<u32>()).prop_flat_map(move |(across, at)| {
        let axis = if (across && w > 1) || h == 1 { Axis::X } else { Axis::Y };
        let at = 1 + at % (axis.of(w, h) - 1);
        let (one, other) = if axis == Axis::X { ((at, h), (w - at, h)) } else { ((w, at), (w, h - at)) };
        (tree(depth - 1, one.0, one.1), tree(depth - 1, other.0, other.1))
            .prop_map(move |(first, second)| cut(axis, at, first, second))
    });
    prop_oneof![1 => leaf, 6 => split].boxed()
}

fn area() -> impl Strategy<Value = Area> {
    (0..W - 1, 0..H - 1, 1..4_u32, 1..4_u32).prop_map(|(left, top, wide, high)| Area {
        left,
        top,
        right: (left + wide).min(W),
        bottom: (top + high).min(H),
    })
}

fn print() -> impl Strategy<Value = Print> {
    let motif = (area(), 0..60_u32).prop_map(|(area, weight)| Motif { area, weight });
    let keep = (area(), prop::collection::vec(0..2_usize, 0..2)).prop_map(|(area, kinds)| Keep { area, kinds });
    (
        prop::collection::vec(0..50_u32, (W * H) as usize),
        prop::collection::vec(motif, 0..4),
        prop::collection::vec(keep, 0..3),
        prop::collection::vec(area(), 0..3),
        1..4_u32,
    )
        .prop_map(|(weights, motifs, keep, avoid, times)| Print { weights, motifs, keep, avoid, times })
}

fn covers() -> impl Strategy<Value = Vec<Cover>> {
    let one = (0..2_usize, 1..=4_u32, 1..=4_u32, prop::collection::vec(area(), 0..3))
        .prop_map(|(kind, width, height, areas)| Cover { kind, width, height, turned: false, areas });
    prop::collection::vec(one, 0..8).prop_map(|mut list| {
        // One entry for a kind and size.
        list.sort_by_key(|cover| (cover.kind, cover.width, cover.height));
        list.dedup_by_key(|cover| (cover.kind, cover.width, cover.height));
        list
    })
}

/// The pieces of a tree as a demand: as many of each kind and size, no more and no fewer.
fn demand(tree: &Tree) -> (Demand, Vec<(usize, u32, u32)>) {
    let mut sizes: Vec<(usize, u32, u32)> =
        cutting::tree::pieces(tree, W, H).unwrap().iter().map(|p| (p.kind, p.width, p.height)).collect();
    sizes.sort_unstable();
    let free = Kind { uniform: false, width: 1..=W, height: 1..=H, step: 1, turn: false, count: 0..=99 };
    (Demand { kinds: vec![free; 2], pins: Vec::new() }, sizes)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, ..ProptestConfig::default() })]

    #[test]
    fn no_order_is_better((tree, prints, covers) in (tree(3, W, H), prop::collection::vec(print(), 1..3), covers())) {
        let laid = all(&parts(&tree, W, H), 0, 0);
        prop_assume!(laid.len() <= 3000);
        let ask = Ask { tree: &tree, width: W, height: H, prints: &prints, covers: &covers, stops: None };
        let placing = place(&ask, &mut Budget::unlimited()).unwrap();
        let orders = best_of(&laid, &prints, &covers, W, H);
        prop_assert!(placing.score >= orders, "{placing:?} {orders:?}");
        let every: Vec<Laid> = laid.iter().flat_map(exchanges).take(40_000).collect();
        let all = best_of(&every, &prints, &covers, W, H);
        prop_assert!(placing.bound >= all, "{placing:?} {all:?}");
        if placing.outcome == Outcome::Proven && every.len() < 40_000 {
            prop_assert_eq!(placing.score, all);
        }
        // The plain tree and the answer are counted cell by cell too.
        for (tree, told) in [(&tree, placing.plain), (&placing.tree, placing.score)] {
            let here: Laid = cutting::tree::pieces(tree, W, H).unwrap().iter().map(|p| (p.kind, p.x, p.y, p.width, p.height)).collect();
            prop_assert_eq!(best_of(&[here], &prints, &covers, W, H), told);
        }
        // The same pieces, the same settings and cuts.
        let (asked, sizes) = demand(&tree);
        prop_assert!(verify(&placing.tree, W, H, &asked).is_ok());
        prop_assert_eq!(demand(&placing.tree).1, sizes);
        prop_assert_eq!(effort(&placing.tree, W, H), effort(&tree, W, H));
        let told = tally(&ask, &placing.tree, &prints[0]).unwrap();
        prop_assert_eq!(told.whole + told.hidden + told.cut, prints[0].motifs.len());
        prop_assert_eq!(told.kept + told.lost, prints[0].keep.len());
    }

    #[test]
    fn the_stop_moves_no_more_often((tree, prints) in (tree(3, W, H), prop::collection::vec(print(), 1..3))) {
        let plain = tidy(&tree, W, H).unwrap();
        let sets = |tree: &Tree| -> Option<Vec<u32>> {
            let limits = Limits { longest_cut: 99, smallest_strip: 1, stack: 1 };
            let job = Job { tree, width: W, height: H, trims: Trims::default(), sheets: 1, limits, folds: &[] };
            let mut stops = Vec::new();
            for step in &steps(&job).ok()?.steps {
                if let Step::Cut(cut) = step && stops.last() != Some(&cut.setting) {
                    stops.push(cut.setting);
                }
            }
            Some(stops)
        };
        let stops = sets(&plain).unwrap();
        let ask = Ask { tree: &plain, width: W, height: H, prints: &prints, covers: &[], stops: Some(&stops) };
        let placing = place(&ask, &mut Budget::unlimited()).unwrap();
        prop_assert!(follows(&placing.tree, W, H, &stops).unwrap());
        prop_assert!(sets(&placing.tree).unwrap().len() <= stops.len(), "{:?}", placing.tree);
        prop_assert!(placing.score >= placing.plain);
        // No worse than the best order that the stops allow, by brute force over all orders.
        let free = place(&Ask { stops: None, ..ask }, &mut Budget::unlimited()).unwrap();
        prop_assert!(free.bound >= placing.score);
        if follows(&free.tree, W, H, &stops).unwrap() && free.outcome == Outcome::Proven {
            prop_assert_eq!(free.score, placing.score);
        }
    }

    #[test]
    fn beyond_the_budget_it_is_no_worse_than_the_plain_tree(
        (tree, prints, nodes) in (tree(3, W, H), prop::collection::vec(print(), 1..3), 0..30_u64)
    ) {
        let ask = Ask { tree: &tree, width: W, height: H, prints: &prints, covers: &[], stops: None };
        let placing = place(&ask, &mut Budget::nodes(nodes)).unwrap();
        let exact = place(&ask, &mut Budget::unlimited()).unwrap();
        prop_assert!(placing.score >= placing.plain);
        prop_assert!(placing.bound >= exact.score, "{placing:?} {exact:?}");
        if placing.outcome == Outcome::Proven {
            prop_assert!(placing.score >= exact.score);
        }
    }
}

#[test]
fn twenty_four_strips_are_ordered_exactly() {
    // Four columns of six strips in three sizes: 24 pieces, more orders than can be walked.
    let strips = [5, 5, 3, 3, 2, 6];
    let column = |kind: usize| {
        let mut tree = piece(kind, 6, strips[5]);
        for at in (0..5).rev() {
            tree = cut(Axis::Y, strips[at], piece(kind, 6, strips[at]), tree);
        }
        tree
    };
    let tree = cut(Axis::X, 6, column(0), cut(Axis::X, 6, column(0), cut(Axis::X, 6, column(0), column(0))));
    let spot = |at: u32| Motif {
        area: Area { left: at % 5 * 5, top: at * 7 % 19, right: at % 5 * 5 + 4, bottom: at * 7 % 19 + 5 },
        weight: 100 + at,
    };
    let prints = [Print { motifs: (0..20).map(spot).collect(), times: 3, ..Print::default() }];
    let ask = Ask { tree: &tree, width: 24, height: 24, prints: &prints, covers: &[], stops: None };
    let placing = place(&ask, &mut Budget::nodes(200_000)).unwrap();
    assert_eq!(placing.outcome, Outcome::Proven);
    assert!(placing.score > placing.plain);
}

#[test]
fn a_plain_tree_with_waste_on_both_sides_may_be_the_best() {
    // The picture lies from 1 to 4: only between two lines of waste does the piece show it. No order with the waste in one
    // part does.
    let waste = || Box::new(Tree::Waste);
    let tree =
        Tree::Cut { axis: Axis::Y, at: 1, first: waste(), second: cut(Axis::Y, 3, piece(0, 4, 3), Tree::Waste).into() };
    let motifs = vec![Motif { area: Area { left: 0, top: 1, right: 4, bottom: 4 }, weight: 10 }];
    let prints = [Print { motifs, times: 1, ..Print::default() }];
    let ask = Ask { tree: &tree, width: 4, height: 5, prints: &prints, covers: &[], stops: None };
    for nodes in [0, 1000] {
        let placing = place(&ask, &mut Budget::nodes(nodes)).unwrap();
        assert_eq!((&placing.tree, placing.score), (&tree, placing.plain));
        assert!(placing.score.whole == 1 && placing.bound >= placing.score);
    }
}

#[test]
fn what_cannot_be_asked_is_refused() {
    let tree = piece(0, 3, 3);
    let ask = Ask { tree: &tree, width: 3, height: 4, prints: &[], covers: &[], stops: None };
    assert!(matches!(place(&ask, &mut Budget::nodes(9)), Err(PlacingError::Tree(_))));
    let ask = Ask { width: 60_000, height: 60_000, ..ask };
    assert_eq!(place(&ask, &mut Budget::nodes(9)), Err(PlacingError::TooLarge { width: 60_000, height: 60_000 }));
    let prints = [Print { weights: vec![1; 8], times: 1, ..Print::default() }];
    let ask = Ask { width: 3, height: 3, prints: &prints, ..ask };
    assert_eq!(place(&ask, &mut Budget::nodes(9)), Err(PlacingError::Weights { weights: 8, cells: 9 }));
    let ask = Ask { prints: &[], ..ask };
    assert_eq!(place(&ask, &mut Budget::nodes(9)).unwrap().tree, tree);
}
