//! Counts a fixed-piece answer again, piece by piece, with its own arithmetic.

use cutting::fixed::{Answer, Edges, Instance, Question, SheetKind};
use cutting::{Axis, Tree};

/// Count an answer again from its trees alone; panics where it breaks a rule.
pub(crate) fn recount(instance: &Instance, answer: &Answer, name: &str) {
    let mut cut = vec![0_u64; instance.pieces.len()];
    let mut cost = 0;
    let mut used = vec![0_u64; instance.sheets.len()];
    for sheet in &answer.sheets {
        let kind = &instance.sheets[sheet.sheet];
        let mut counts = vec![0_u64; instance.pieces.len()];
        walk(instance, &sheet.tree, kind.width, kind.height, &mut counts, name);
        keeps_rules(instance, &sheet.tree, kind, name);
        let Edges { left, right, top, bottom } = kind.edges;
        for piece in cutting::tree::pieces(&sheet.tree, kind.width, kind.height).expect("the cuts are sound") {
            let inside = piece.x >= left
                && piece.y >= top
                && piece.x + piece.width <= kind.width - right
                && piece.y + piece.height <= kind.height - bottom;
            assert!(inside, "{name}: a piece from an unusable edge: {piece:?}");
        }
        for (all, here) in cut.iter_mut().zip(counts) {
            *all += here * u64::from(sheet.times);
        }
        used[sheet.sheet] += u64::from(sheet.times);
        cost += kind.cost * u64::from(sheet.times);
    }
    for (kind, &used) in instance.sheets.iter().zip(&used) {
        assert!(kind.copies.is_none_or(|n| used <= u64::from(n)), "{name}: too many sheets");
    }
    match instance.question {
        Question::LeastCost => {
            assert_eq!(answer.value, cost, "{name}: cost");
            assert!(answer.bound <= answer.value, "{name}: bound above value");
            for (p, &n) in instance.pieces.iter().zip(&cut) {
                assert_eq!(p.demand.map(u64::from), Some(n), "{name}: demand");
            }
        }
        Question::MostValue => {
            let value: u64 = instance.pieces.iter().zip(&cut).map(|(p, n)| p.value * n).sum();
            assert_eq!(answer.value, value, "{name}: value");
            assert!(answer.bound >= answer.value, "{name}: bound below value");
            for (p, &n) in instance.pieces.iter().zip(&cut) {
                assert!(n >= u64::from(p.min) && p.demand.is_none_or(|d| n <= u64::from(d)), "{name}: numbers");
            }
        }
    }
}

fn walk(instance: &Instance, tree: &Tree, w: u32, h: u32, counts: &mut [u64], name: &str) {
    match tree {
        Tree::Waste => {}
        Tree::Cut { axis, at, first, second } => {
            let side = if *axis == Axis::X { w } else { h };
            assert!(*at > 0 && *at < side, "{name}: a cut outside its rectangle");
            let (a, b) = if *axis == Axis::X { ((*at, h), (w - at, h)) } else { ((w, *at), (w, h - at)) };
            walk(instance, first, a.0, a.1, counts, name);
            walk(instance, second, b.0, b.1, counts, name);
        }
        Tree::Piece { kind, width, height, turned } => {
            let p = &instance.pieces[*kind];
            let lies = if *turned { (p.height, p.width) } else { (p.width, p.height) };
            assert_eq!((lies, (w, h)), ((*width, *height), (*width, *height)), "{name}: size of a piece");
            assert!(!turned || p.turn, "{name}: a piece that must not turn");
            counts[*kind] += 1;
        }
    }
}

/// Every path from the sheet to a part, seen as the directions and the narrower sides of its cuts.
fn keeps_rules(instance: &Instance, tree: &Tree, sheet: &SheetKind, name: &str) {
    let rules = instance.rules;
    let mut open = vec![(tree, sheet.width, sheet.height, Vec::new())];
    while let Some((tree, w, h, path)) = open.pop() {
        let Tree::Cut { axis, at, first, second } = tree else { continue };
        let whole = if *axis == Axis::X { w } else { h };
        assert!((*at).min(whole - at) >= rules.least_strip.max(1), "{name}: a strip narrower than the least");
        let mut path: Vec<Axis> = path;
        path.push(*axis);
        if let Some(stages) = rules.stages.filter(|_| sheet.edges == Edges::NONE) {
            let runs = 1 + path.windows(2).filter(|pair| pair[0] != pair[1]).count();
            let last = usize::from(stages.most) + 1 == runs && stages.trim;
            let parts = [&**first, &**second];
            let trims = parts.iter().any(|part| **part == Tree::Waste)
                && parts.iter().any(|part| matches!(part, Tree::Piece { .. }));
            assert!(runs <= usize::from(stages.most) || (last && trims), "{name}: {runs} runs");
        }
        let (a, b) = if *axis == Axis::X { ((*at, h), (w - at, h)) } else { ((w, *at), (w, h - at)) };
        open.push((first, a.0, a.1, path.clone()));
        open.push((second, b.0, b.1, path));
    }
}
