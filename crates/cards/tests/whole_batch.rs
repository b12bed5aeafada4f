//! A whole batch, counted a second time on another way: from areas, and card by card.
#![allow(clippy::unwrap_used, clippy::cast_possible_truncation, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;

use std::collections::BTreeSet;

use cards::plan::{LayoutGrade, PartKind, Plan, plan};
use cards::{Project, Severity};
use cutting::Budget;
use drive::{length, project, size};
use measure::Size;
use rust_decimal::Decimal;

fn planned(project: &Project) -> Plan {
    plan(project, &mut Budget::nodes(20_000_000))
}

/// Laws that hold for every plan.
fn lawful(plan: &Plan) {
    let mut taken = BTreeSet::new();
    for card in &plan.cards {
        for part in &card.parts {
            if let PartKind::Patterned { layout, piece, design, sheet, .. } = part.kind {
                assert!(taken.insert((layout, piece, design, sheet)), "a piece is used once");
            }
        }
    }
    let pieces: usize =
        plan.layouts.iter().map(|l| l.pieces.len() * l.sheets.iter().map(|s| s.sheets as usize).sum::<usize>()).sum();
    assert!(taken.len() <= pieces);
    for layout in &plan.layouts {
        let cut: i128 = layout.pieces.iter().map(|piece| piece.rect.size.area()).sum();
        assert_eq!(cut + layout.waste, layout.usable.size.area(), "pieces and waste make up the sheet");
        for (i, a) in layout.pieces.iter().enumerate() {
            assert!(layout.usable.contains(a.rect));
            assert!(layout.pieces[..i].iter().all(|b| !a.rect.overlaps(b.rect)));
        }
    }
    for stock in &plan.stocks {
        let given: u32 = stock.sheets.iter().map(|sheet| sheet.times * sheet.pieces.len() as u32).sum();
        assert_eq!(given, stock.cuts.iter().map(|cut| cut.count).sum::<u32>());
        assert!(stock.sheet_count >= stock.area_bound);
    }
}

#[test]
fn one_sheet_of_each_design_makes_forty_eight_cards() {
    let plan = planned(&project());
    lawful(&plan);
    assert!(plan.findings.iter().all(|finding| finding.severity < Severity::Serious), "{:#?}", plan.findings);
    // Common practice: eight cards from a sheet, six sheets, 48 cards.
    assert_eq!((plan.counts.cards, plan.counts.paper_sheets, plan.counts.paper_pieces), (48, 6, 96));
    let layout = &plan.layouts[0];
    assert_eq!((layout.waste, layout.grade), (0, LayoutGrade::ProvenBest));
    assert_eq!((layout.effort.settings, layout.effort.cuts), (3, 15));
    // Six sheets in pairs: no more stops than settings, and equal columns are cut together.
    let tally = layout.cut_plan.tally();
    assert_eq!((tally.stops, tally.settings, tally.cuts), (3, 3, 15));
    let sizes: BTreeSet<Size> = layout.pieces.iter().map(|piece| piece.rect.size).collect();
    assert_eq!(sizes, BTreeSet::from([size("3 x 4 1/2"), size("3 x 1 1/2")]));
    assert!(layout.pieces.iter().all(|piece| !piece.turned));
    assert!(!layout.alternatives.is_empty());
    // Bases two a Letter sheet, mats five: 24 and 4 + 4 + 2 + 2 sheets.
    let sheets: Vec<(String, u32)> =
        plan.stocks.iter().map(|s| (plan.project.cardstocks[s.cardstock].name.clone(), s.sheet_count)).collect();
    let expected = [("Milk", 24), ("Pot Blue", 4), ("Brick", 4), ("Hedge", 2), ("Quince", 2)];
    assert_eq!(sheets, expected.map(|(name, n)| (name.to_owned(), n)));
    assert_eq!((plan.counts.bases, plan.counts.mats, plan.counts.strips, plan.counts.foam_squares), (48, 48, 48, 96));
    assert_eq!(plan.counts.ribbon, vec![(length("192"), Some(1))]);
    // Used: 6/24 of 14.40, 24/50 of 11.00, 48 mats at a fifth of 4.80/12, 192/360 of 3.20.
    let by_hand = Decimal::new(360, 2) + Decimal::new(528, 2) + Decimal::new(384, 2);
    let ribbon = Decimal::new(320, 2) * Decimal::from(192) / Decimal::from(360);
    let total = plan.costs.total_used.unwrap();
    assert!((total - by_hand - ribbon).abs() < Decimal::new(1, 9), "{total}");
    assert!(!plan.costs.at_least);
}

#[test]
fn all_twenty_four_sheets_make_one_hundred_and_ninety_two() {
    let mut project = project();
    project.packs[0].designs.iter_mut().for_each(|design| design.use_sheets = None);
    let plan = planned(&project);
    lawful(&plan);
    // Common practice: 24 sheets, 192 cards; two bases a Letter sheet, 96 sheets.
    assert_eq!((plan.counts.cards, plan.counts.paper_sheets), (192, 24));
    assert_eq!(plan.stocks[0].sheet_count, 96);
}

#[test]
fn a_changed_project_changes_only_what_depends_on_it() {
    let before = planned(&project());
    let mut dearer = project();
    dearer.packs[0].price.as_mut().unwrap().amount *= Decimal::from(2);
    dearer.packs[0].name = "Another name".into();
    let after = planned(&dearer);
    assert_eq!(after.counts, before.counts);
    assert_eq!(after.costs.total_used.unwrap() - before.costs.total_used.unwrap(), Decimal::new(360, 2));
    let mut unknown = project();
    unknown.ribbons[0].price = None;
    let after = planned(&unknown);
    assert!(after.costs.at_least && after.findings.iter().any(|finding| finding.code == "price-missing"));
    // Two sheets of A and C more: sixteen cards more.
    let mut more = project();
    more.packs[0].designs[0].use_sheets = Some(2);
    more.packs[0].designs[2].use_sheets = Some(2);
    let after = planned(&more);
    lawful(&after);
    assert_eq!(after.counts.cards, 64);
    // The pad: one sheet of 6 x 6 gives a quarter of it, piece for piece.
    let mut pad = project();
    pad.packs[0].sheet = size("6 x 6");
    pad.goal.cards_per_sheet = Some(2);
    let after = planned(&pad);
    lawful(&after);
    assert_eq!((after.counts.cards, after.layouts[0].waste, after.layouts[0].effort.cuts), (12, 0, 3));
}

#[test]
fn ten_thousand_cards_and_impossible_wishes_are_answered() {
    let mut many = project();
    many.packs[0].designs.iter_mut().for_each(|design| {
        design.copies = 210;
        design.use_sheets = None;
    });
    many.goal.cards = Some(10_000);
    let plan = planned(&many);
    lawful(&plan);
    assert_eq!(plan.counts.cards, 10_000);
    let mut never = project();
    never.goal.cards_per_sheet = Some(40);
    let plan = planned(&never);
    assert!(plan.cards.is_empty());
    assert!(plan.findings.iter().any(|finding| finding.severity == Severity::Serious), "{:#?}", plan.findings);
    let mut bounds = project();
    (bounds.recipes[0].least, bounds.recipes[0].most) = (9, Some(3));
    assert!(planned(&bounds).findings.iter().any(|finding| finding.code == "recipe-bounds"));
}

#[test]
fn an_envelope_that_is_too_small_is_refused_and_another_named() {
    let mut tight = project();
    tight.envelope.as_mut().unwrap().size = size("3 5/8 x 5 1/8");
    let plan = planned(&tight);
    assert!(plan.findings.iter().any(|finding| finding.code.contains("envelope")), "{:#?}", plan.findings);
    assert!(planned(&project()).findings.iter().all(|finding| !finding.code.contains("envelope")));
}
