//! Source: `job.md` section 10, story 1 (12 x 12 in, eight 3 x 4 1/2 and eight 3 x 1 1/2 tile it; 3 1/16 cannot) and
//! the areas, worked by hand. Tolerance: none.
#![allow(clippy::unwrap_used, dead_code, reason = "tests share helpers")]

#[path = "common/drive.rs"]
mod drive;

use cards::finding::{Fact, Finding, Severity, Way};
use cards::model::{Material, Project, Range};
use cards::plan::{Aim, Budget, Plan, Sort, plan, why};
use measure::{Length, Mark, Size};

fn inches(numerator: i64, denominator: i64) -> Length {
    Length::inches(numerator, denominator).unwrap()
}

/// The demo with pieces of these sizes only.
fn pieces(panel: Size, band: Size) -> Project {
    let mut project = drive::project();
    let sizes = [panel, band];
    let mut sizes = sizes.iter();
    for layer in &mut project.recipes[0].layers {
        if let Material::Patterned { width, height, prefer, .. } = &mut layer.material {
            let size = *sizes.next().unwrap();
            (*width, *height, *prefer) = (Range::exactly(size.width), Range::exactly(size.height), size);
        }
    }
    project
}

fn planned(project: &Project) -> Plan {
    plan(project, &mut Budget::nodes(20_000_000))
}

fn serious(plan: &Plan) -> &Finding {
    plan.findings.iter().find(|finding| finding.severity == Severity::Serious && !finding.ways.is_empty()).unwrap()
}

fn fact<'f>(facts: &'f [(&'static str, Fact)], name: &str) -> &'f Fact {
    &facts.iter().find(|(key, _)| *key == name).unwrap().1
}

fn codes(way: &Way) -> Vec<&'static str> {
    way.changes.iter().map(|change| change.code).collect()
}

#[test]
fn a_panel_a_sixteenth_too_wide_is_told_to_be_a_sixteenth_narrower() {
    let (wide, band) = (Size::new(inches(49, 16), inches(9, 2)), Size::new(inches(3, 1), inches(3, 2)));
    let mut project = pieces(wide, band);
    // On marks of 1/8 in the panel has no size; what would help is told all the same.
    for mark in [Mark::EighthInch, Mark::SixteenthInch, Mark::ThirtySecondInch] {
        project.mark = mark;
        let plan = planned(&project);
        assert!(plan.layouts.is_empty());
        let finding = serious(&plan);
        let expected = if mark == Mark::EighthInch { "piece-not-on-mark" } else { "layout-too-much-area" };
        assert_eq!(finding.code, expected);
        let first = &finding.ways[0];
        assert_eq!((codes(first), first.smallest, first.left_percent, first.cards), (vec!["way-narrower"], true, 0, 8));
        let facts = &first.changes[0].facts;
        assert_eq!(fact(facts, "to"), &Fact::Length(inches(3, 1)));
        assert_eq!(fact(facts, "by"), &Fact::Length(inches(1, 16)));
        assert_eq!(fact(facts, "layer"), &Fact::Text("panel".to_owned()));
    }
}

#[test]
fn the_other_ways_are_fewer_cards_and_another_sheet() {
    let wide = Size::new(inches(49, 16), inches(9, 2));
    let mut project = pieces(wide, Size::new(inches(3, 1), inches(3, 2)));
    project.mark = Mark::SixteenthInch;
    let plan = planned(&project);
    let ways = &serious(&plan).ways;
    let fewer = ways.iter().find(|way| codes(way) == ["way-fewer-cards"]).unwrap();
    // Three columns of 3 1/16 in hold six; a fourth is 2 13/16 in.
    assert_eq!((fewer.cards, fact(&fewer.changes[0].facts, "by")), (6, &Fact::Count(2)));
    let sheet = ways.iter().find(|way| codes(way) == ["way-sheet"]).unwrap();
    // 11 x 17 in, the next larger of the tables: three columns of 3 1/16 in, two with three panels and two bands
    // (16 1/2 in), one with two panels and four bands (15 in).
    assert_eq!(fact(&sheet.changes[0].facts, "width"), &Fact::Length(inches(11, 1)), "{ways:#?}");
    assert_eq!(fact(&sheet.changes[0].facts, "height"), &Fact::Length(inches(17, 1)));
}

#[test]
fn a_band_that_may_not_turn_is_told_that_it_may() {
    // 12 x 6 1/2 in: four panels of 3 x 4 1/2 in a row leave 12 x 2, where four bands of 2 x 3 must lie.
    let mut project = pieces(Size::new(inches(3, 1), inches(9, 2)), Size::new(inches(2, 1), inches(3, 1)));
    let pack = &mut project.packs[0];
    pack.sheet = Size::new(inches(12, 1), inches(13, 2));
    for design in &mut pack.designs {
        design.front.way = cards::model::Way::Any;
        design.back.way = cards::model::Way::Any;
    }
    project.goal.cards_per_sheet = Some(4);
    let plan = planned(&project);
    let finding = serious(&plan);
    assert_eq!(finding.code, "layout-none");
    assert_eq!(codes(&finding.ways[0]), ["way-turn"]);
    assert_eq!(fact(&finding.ways[0].changes[0].facts, "layer"), &Fact::Text("band".to_owned()));
    assert_eq!(finding.ways[0].left_percent, 0);
    // A print with a top is not turned: then it is not offered.
    project.packs[0].designs[0].front.way = cards::model::Way::OneWay;
    let plan = planned(&project);
    assert!(serious(&plan).ways.iter().all(|way| codes(way) != ["way-turn"]));
}

#[test]
fn a_layout_that_wastes_is_told_what_would_leave_nothing() {
    // A panel an eighth lower: 12 x 1/4 in is left over; higher by one mark, nothing is.
    let project = pieces(Size::new(inches(3, 1), inches(35, 8)), Size::new(inches(3, 1), inches(3, 2)));
    let mut budget = Budget::nodes(20_000_000);
    let any = why(&project, 0, Aim::AnyLayout, None, &mut budget).unwrap();
    assert!(any.works && any.ways.is_empty());
    let whole = why(&project, 0, Aim::NoWaste, None, &mut budget).unwrap();
    assert!(!whole.works && whole.refuted.contains(&Sort::Turn));
    let ways: Vec<(Vec<&str>, &Fact)> =
        whole.ways.iter().map(|out| (codes(&out.way), fact(&out.way.changes[0].facts, "to"))).take(2).collect();
    // Either the panel or the band takes the eighth.
    let (panel, band) = (Fact::Length(inches(9, 2)), Fact::Length(inches(13, 8)));
    assert_eq!(ways, [(vec!["way-higher"], &panel), (vec!["way-higher"], &band)]);
    for out in &whole.ways[..2] {
        assert_eq!((out.layout.waste, out.way.left_percent, out.layout.pieces.len()), (0, 0, 16));
    }
}

#[test]
fn what_needs_no_change_gets_no_ways() {
    let plan = planned(&drive::project());
    assert!(plan.findings.iter().all(|finding| finding.ways.is_empty()));
    let same = why(&drive::project(), 0, Aim::NoWaste, None, &mut Budget::nodes(20_000_000)).unwrap();
    assert!(same.works && same.ways.is_empty());
}

#[test]
fn the_same_question_gets_the_same_answer() {
    let wide = Size::new(inches(49, 16), inches(9, 2));
    let project = pieces(wide, Size::new(inches(3, 1), inches(3, 2)));
    let ask = || why(&project, 0, Aim::AnyLayout, None, &mut Budget::nodes(200_000));
    assert_eq!(ask(), ask());
}
