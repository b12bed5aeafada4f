//! Source: the flexible instances of the cutting bench (`cutbench-flex-1`, generated with a witness of zero
//! waste, seed 4242, and four hand-written recipes), copied to `tests/data/flex`. Tolerance: none, all exact.
#![allow(clippy::cast_possible_truncation, clippy::type_complexity, dead_code, reason = "tests share helpers")]

#[path = "common/flex_json.rs"]
mod flex_json;
#[path = "common/recount.rs"]
mod recount;

use cutting::flexible::{Count, Instance, Layout, solve};
use cutting::steps::effort;
use cutting::{Budget, Outcome, Tree};

#[test]
fn every_instance_with_a_witness_is_cut_without_waste() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/data/flex");
    let (mut seen, mut equals) = (0, 0);
    for file in std::fs::read_dir(folder).expect("the bench's folder") {
        let text = std::fs::read_to_string(file.expect("a file").path()).expect("text");
        let (name, instance) = flex_json::instance(&text);
        let answer = solve(&instance, &mut Budget::nodes(30_000_000)).expect("a proper question");
        // The four recipes have no witness; that they too use the whole sheet is our finding.
        assert_eq!(answer.outcome, Outcome::Proven, "{name}");
        assert_eq!(answer.layouts[0].waste, 0, "{name}");
        answer.layouts.iter().for_each(|layout| recount::check(&instance, layout));
        answer.layouts.iter().for_each(|layout| equals += same_work(&instance, layout));
        seen += 1;
    }
    assert_eq!(seen, 22);
    assert!(equals > 0, "some layouts have equals");
}

/// Equals give the very same pieces by as many settings and cuts, and are other cuts; how many there are.
fn same_work(instance: &Instance, layout: &Layout) -> usize {
    let sizes = |tree: &Tree| {
        let mut pieces = Vec::new();
        let waste = recount::walk(tree, 0, 0, instance.width, instance.height, &mut pieces);
        let mut sizes: Vec<_> =
            pieces.iter().map(|&(k, _, _, w, h, turned)| if turned { (k, h, w) } else { (k, w, h) }).collect();
        sizes.sort_unstable();
        (waste, sizes, effort(tree, instance.width, instance.height))
    };
    for (at, other) in layout.equals.iter().enumerate() {
        assert!(other != &layout.tree && !layout.equals[..at].contains(other), "other cuts");
        assert_eq!(sizes(other), sizes(&layout.tree));
        recount::check(instance, &Layout { tree: other.clone(), ..layout.clone() });
    }
    layout.equals.len()
}

#[test]
fn sixteen_pieces_of_four_kinds_are_counted_and_proven() {
    for uniform in [true, false] {
        let instance = flex_json::sixteen(8, uniform);
        let answer = solve(&instance, &mut Budget::nodes(30_000_000)).expect("a proper question");
        assert_eq!(answer.outcome, Outcome::Proven);
        assert_eq!(answer.layouts[0].waste, 0);
        // Common practice: four columns of 3, each 4 1/2, 4 1/2, 1 1/2 and a rest, is three settings, 15 cuts.
        assert!(answer.layouts[0].effort.settings <= 3, "{:?}", answer.layouts[0].effort);
        assert_eq!(answer.layouts[0].effort.cuts, 15);
        assert!(!uniform || matches!(answer.exist, Count::Exactly(n) if n > 1));
        answer.layouts.iter().for_each(|layout| recount::check(&instance, layout));
    }
}

#[test]
fn the_same_question_has_the_same_answer() {
    let instance = flex_json::sixteen(8, true);
    let one = solve(&instance, &mut Budget::nodes(30_000_000));
    assert_eq!(one, solve(&instance, &mut Budget::nodes(30_000_000)));
}
