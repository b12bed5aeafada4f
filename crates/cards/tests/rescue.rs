//! Spoiled pieces are replaced by the least that must be cut again.
//!
//! Source: two bases of 7 × 5 in come from one Letter sheet (`tests/data/pieces_per_sheet.csv`, computed exactly by
//! a separate programme). By hand: five mats of 3 1/4 × 4 3/4 in do, three lying in a column 4 3/4 wide beside two
//! upright in one 3 1/4 wide; the rest is counted from the plan.
#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;

use std::collections::BTreeMap;

use cards::plan::{Fix, Lost, Plan, Rescue, Source, plan, rescue};
use cutting::{Budget, replay};
use drive::{length, project};
use measure::Size;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

fn planned(pull: impl FnOnce(&mut cards::Project)) -> Plan {
    let mut project = project();
    pull(&mut project);
    plan(&project, &mut Budget::nodes(2_000_000))
}

fn rescued(plan: &Plan, lost: &[Lost], earlier: &[Fix]) -> Rescue {
    let rescue = rescue(plan, lost, earlier, &mut Budget::nodes(2_000_000));
    sound(plan, lost, &rescue);
    rescue
}

/// The first piece of a layer, on the first layout.
fn piece(plan: &Plan, layer: &str, design: usize) -> Lost {
    let layer = plan.project.recipes[0].layers.iter().position(|found| found.name == layer).unwrap();
    let found = |piece: &cards::plan::Piece| piece.layer == layer && piece.card.is_some();
    Lost::Paper { layout: 0, piece: plan.layouts[0].pieces.iter().position(found).unwrap(), design }
}

/// A piece of cardstock: `None` is the base.
fn stock(plan: &Plan, color: &str, layer: Option<&str>) -> Lost {
    let named = |stock: &cards::plan::StockPlan| plan.project.cardstocks[stock.cardstock].name == color;
    let stock = plan.stocks.iter().position(named).unwrap();
    let name = |layer: usize| plan.project.recipes[0].layers[layer].name.as_str();
    let cut = plan.stocks[stock].cuts.iter().position(|cut| cut.layer.map(name) == layer && !cut.inside).unwrap();
    Lost::Stock { stock, cut }
}

fn size_of(plan: &Plan, lost: Lost) -> Size {
    match lost {
        Lost::Paper { layout, piece, .. } => plan.layouts[layout].pieces[piece].rect.size,
        Lost::Stock { stock, cut } => plan.stocks[stock].cuts[cut].size,
    }
}

/// Every lost piece comes back once; following the published steps gives pieces of the right sizes.
fn sound(plan: &Plan, lost: &[Lost], rescue: &Rescue) {
    let mut back: Vec<Lost> = rescue.fixes.iter().flat_map(|fix| fix.lost.iter().copied()).collect();
    back.extend(&rescue.missing);
    let mut lost = lost.to_vec();
    back.sort();
    lost.sort();
    assert_eq!(back, lost, "each lost piece once");
    for fix in &rescue.fixes {
        let Some(recut) = &fix.recut else {
            assert!(matches!(fix.source, Source::Spare { .. }));
            continue;
        };
        let replayed = replay::replay(&recut.cut_plan).unwrap();
        let side = |steps: u32| recut.step * i64::from(steps);
        let mut cut: Vec<Size> = Vec::new();
        for piece in replayed.pieces.iter().copied() {
            let size = Size::new(side(piece.width), side(piece.height));
            cut.push(if piece.turned { size.turned() } else { size });
        }
        let mut wanted: Vec<Size> = fix.lost.iter().map(|&lost| size_of(plan, lost)).collect();
        cut.sort_by_key(|size| (size.width, size.height));
        wanted.sort_by_key(|size| (size.width, size.height));
        assert_eq!(cut, wanted, "the steps give what was lost");
    }
}

fn new_sheets(rescue: &Rescue) -> usize {
    rescue.fixes.iter().filter(|fix| fix.source.is_new_sheet()).count()
}

#[test]
fn a_panel_comes_from_a_sheet_that_was_not_used() {
    let plan = planned(|_| {});
    let lost = piece(&plan, "panel", 0);
    let rescue = rescued(&plan, &[lost], &[]);
    assert_eq!(rescue.fixes.len(), 1);
    assert_eq!(rescue.fixes[0].source, Source::PaperSheet { pack: 0, design: 0 });
    assert!(rescue.fewest_sheets);
}

#[test]
fn a_second_panel_comes_from_what_the_first_rescue_left() {
    let plan = planned(|_| {});
    let lost = piece(&plan, "panel", 0);
    let first = rescued(&plan, &[lost], &[]);
    let second = rescued(&plan, &[lost, lost], &first.fixes);
    assert_eq!(new_sheets(&second), 0);
    assert!(second.fixes.iter().all(|fix| matches!(fix.source, Source::EarlierRest { fix: 0, .. })));
}

#[test]
fn a_spare_is_taken_before_anything_is_cut() {
    let plan = planned(|project| {
        project.goal.cards_per_sheet = Some(7);
        project.goal.spares = vec![("Twins".into(), "panel".into(), 1), ("Twins".into(), "band".into(), 1)];
    });
    let lost = piece(&plan, "panel", 2);
    let rescue = rescued(&plan, &[lost, lost], &[]);
    assert!(matches!(rescue.fixes[0].source, Source::Spare { design: 2, .. }), "{rescue:?}");
    assert_eq!(new_sheets(&rescue), 1, "one spare on one sheet, so the second is cut");
}

#[test]
fn no_sheet_left_is_told() {
    let plan = planned(|project| project.packs[0].designs.iter_mut().for_each(|design| design.use_sheets = None));
    let lost = piece(&plan, "panel", 0);
    assert_eq!(rescued(&plan, &[lost], &[]).missing, [lost]);
}

#[test]
fn mats_by_fives_from_new_sheets() {
    let plan = planned(|_| {});
    let lost = stock(&plan, "Quince", Some("mat"));
    let Lost::Stock { stock: index, cut } = lost else { unreachable!() };
    // By hand: room left on the planned sheets for whole mats.
    let mat = plan.stocks[index].cuts[cut].size;
    assert_eq!(mat, Size::new(length("3 1/4"), length("4 3/4")));
    for (spoiled, sheets) in [(1, 1), (5, 1), (6, 2), (10, 2), (11, 3)] {
        let rescue = rescued(&plan, &vec![lost; spoiled], &[]);
        let from_rests = rescue.fixes.iter().filter(|fix| !fix.source.is_new_sheet()).map(|fix| fix.lost.len()).sum();
        let least = (spoiled - std::cmp::min(spoiled, from_rests)).div_ceil(5);
        assert_eq!(new_sheets(&rescue), least, "{spoiled} mats");
        assert!(least <= sheets);
        assert!(rescue.fewest_sheets);
    }
}

#[test]
fn strips_come_from_what_the_bases_leave() {
    let plan = planned(|_| {});
    let strip = stock(&plan, "Milk", Some("strip"));
    assert_eq!(new_sheets(&rescued(&plan, &[strip; 3], &[])), 0);
    let base = stock(&plan, "Milk", None);
    let rescue = rescued(&plan, &[base, base, base, strip], &[]);
    assert_eq!(new_sheets(&rescue), 2, "two bases from a Letter sheet");
}

#[test]
fn what_does_not_exist_is_missing() {
    let plan = planned(|_| {});
    let lost = [Lost::Paper { layout: 9, piece: 0, design: 0 }, Lost::Stock { stock: 0, cut: 99 }];
    assert_eq!(rescued(&plan, &lost, &[]).missing.len(), 2);
    assert_eq!(rescued(&plan, &[], &[]), Rescue { fewest_sheets: true, ..Rescue::default() });
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, rng_seed: RngSeed::Fixed(11), ..ProptestConfig::default() })]

    #[test]
    fn nothing_is_taken_that_is_not_there(
        panels in proptest::collection::vec((0_usize..6, 0_usize..16), 0..12),
        stocks in proptest::collection::vec((0_usize..5, 0_usize..3), 0..12),
        used in 1_u32..5,
        edge in prop_oneof![Just("0"), Just("1/4"), Just("1")],
    ) {
        let plan = planned(|project| {
            project.packs[0].unusable.right = length(edge);
            project.packs[0].designs.iter_mut().for_each(|design| design.use_sheets = Some(used));
            project.goal.cards_per_sheet = (edge == "1").then_some(4);
        });
        let mut lost: Vec<Lost> = Vec::new();
        lost.extend(panels.iter().map(|&(design, piece)| Lost::Paper { layout: 0, piece, design }));
        lost.extend(stocks.iter().map(|&(stock, cut)| Lost::Stock { stock, cut }));
        let rescue = rescued(&plan, &lost, &[]);
        let mut taken: BTreeMap<Source, u32> = BTreeMap::new();
        for fix in &rescue.fixes {
            *taken.entry(fix.source).or_default() += 1;
        }
        for (source, times) in taken {
            match source {
                Source::PaperSheet { design, .. } => {
                    let there = plan.project.packs[0].designs[design].copies - used;
                    prop_assert!(times <= there, "{times} of {there} unused sheets");
                }
                Source::PaperRest { layout, design, rect } => {
                    let layout = &plan.layouts[layout];
                    let sheets = layout.sheets.iter().find(|found| found.design == design).unwrap().sheets;
                    prop_assert!(times <= sheets);
                    for piece in &layout.pieces {
                        let apart = piece.rect.right() <= rect.x || rect.right() <= piece.rect.x
                            || piece.rect.bottom() <= rect.y || rect.bottom() <= piece.rect.y;
                        prop_assert!(apart, "a rest lies on a piece");
                    }
                }
                Source::StockRest { stock, sheet, .. } => {
                    prop_assert!(times <= plan.stocks[stock].sheets[sheet].times);
                }
                Source::Spare { .. } | Source::EarlierRest { .. } | Source::StockSheet { .. } => {}
            }
        }
    }
}
