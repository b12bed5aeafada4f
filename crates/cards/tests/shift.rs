//! Source: `job.md`, layout L1 (12 x 12 in from 3 x 4 1/2 and 3 x 1 1/2 in), worked by hand: four columns 3 in wide leave
//! no other width, and what a panel loses in height its band gains. Tolerance: none. That a kept move gives what was
//! shown is checked by planning anew.
#![allow(clippy::unwrap_used, dead_code, reason = "tests share helpers")]

#[path = "common/drive.rs"]
mod drive;

use cards::plan::{Budget, Plan, Shifted, Stays, cut_lines, left_over, pins_for, plan, shift};
use cutting::Axis;
use measure::Length;

fn inches(numerator: i64, denominator: i64) -> Length {
    Length::inches(numerator, denominator).unwrap()
}

fn budget() -> Budget<'static> {
    Budget::nodes(20_000_000)
}

fn moved(plan: &Plan, line: usize, by: Length) -> Result<Shifted, Stays> {
    let known = cut_lines(&plan.layouts[0])[line];
    shift(plan, 0, line, known.at + by, known.from, &mut budget())
}

/// The pieces of a layout by what they are and where they lie.
fn places(pieces: &[cards::plan::Piece]) -> Vec<(usize, usize, measure::Rect)> {
    pieces.iter().map(|piece| (piece.recipe, piece.layer, piece.rect)).collect()
}

#[test]
fn a_level_cut_moves_and_is_kept_as_it_was_shown() {
    let plan = plan(&drive::project(), &mut budget());
    let lines = cut_lines(&plan.layouts[0]);
    let eighth = inches(1, 8);
    let mut kept = 0;
    for (index, line) in lines.iter().enumerate().filter(|(_, line)| line.axis == Axis::Y) {
        for by in [-eighth, eighth] {
            let Ok(found) = moved(&plan, index, by) else { continue };
            assert_eq!(found.at, line.at + by);
            assert!(found.cuts.iter().any(|cut| cut.axis == Axis::Y && cut.at == found.at), "the line lies there");
            let area: i128 = found
                .left_over
                .iter()
                .map(|r| i128::from(r.size.width.ticks()) * i128::from(r.size.height.ticks()))
                .sum();
            assert_eq!(area, found.layout.waste);
            let mut project = plan.project.clone();
            let wanted = pins_for(&with_pins(&plan, &found), 0, &found.layout, &mut budget()).unwrap();
            project.goal.pins = wanted;
            let again = cards::plan::plan(&project, &mut budget());
            assert_eq!(places(&again.layouts[0].pieces), places(&found.layout.pieces));
            assert_eq!(again.cards.len(), plan.cards.len());
            kept += 1;
        }
    }
    assert!(kept > 0);
}

#[test]
fn a_piece_pinned_where_it_lies_changes_nothing_and_takes_no_choice_away() {
    let project = drive::project();
    let before = plan(&project, &mut budget());
    let laid = &before.layouts[0];
    for piece in laid.pieces.iter().step_by(5) {
        let mut pinned = project.clone();
        let recipe = &pinned.recipes[piece.recipe];
        let name = (recipe.name.clone(), recipe.layers[piece.layer].name.clone());
        pinned.goal.pins = vec![(name.0, name.1, piece.rect.x, piece.rect.y, piece.rect.size)];
        let after = plan(&pinned, &mut budget());
        assert_eq!(places(&after.layouts[0].pieces), places(&laid.pieces), "{}", piece.mark);
        assert_eq!(after.layouts[0].effort, laid.effort);
        assert_eq!(after.layouts[0].grade, laid.grade);
        assert_eq!(after.layouts[0].alternatives.len(), laid.alternatives.len(), "the others can still be taken");
    }
}

#[test]
fn another_layout_that_is_taken_leaves_the_first_one_to_go_back_to() {
    let project = drive::project();
    let before = plan(&project, &mut budget());
    let other = &before.layouts[0].alternatives[0];
    let mut taken = project.clone();
    taken.goal.pins = pins_for(&before, 0, other, &mut budget()).unwrap();
    let after = plan(&taken, &mut budget());
    assert_eq!(places(&after.layouts[0].pieces), places(&other.pieces));
    let back =
        after.layouts[0].alternatives.iter().find(|told| places(&told.pieces) == places(&before.layouts[0].pieces));
    taken.goal.pins = pins_for(&after, 0, back.expect("the one she came from"), &mut budget()).unwrap();
    assert_eq!(places(&plan(&taken, &mut budget()).layouts[0].pieces), places(&before.layouts[0].pieces));
}

fn with_pins(plan: &Plan, found: &Shifted) -> Plan {
    let mut pinned = plan.clone();
    pinned.project.goal.pins.clone_from(&found.pins);
    pinned
}

#[test]
fn an_upright_cut_leaves_a_rest_or_says_why_not() {
    let plan = plan(&drive::project(), &mut budget());
    let upright = cut_lines(&plan.layouts[0]).iter().position(|line| line.axis == Axis::X).unwrap();
    let found = moved(&plan, upright, -inches(1, 8)).unwrap();
    assert!(found.layout.waste > 0);
    assert_eq!(left_over(&found.layout.tree, plan.layouts[0].usable, plan.layouts[0].step), found.left_over);
    // A panel is 2 3/4 to 3 1/4 in wide.
    match moved(&plan, upright, inches(3, 4)) {
        Err(Stays::Range { side: Axis::X, least, most, .. }) => {
            assert_eq!((least, most), (inches(11, 4), inches(13, 4)));
        }
        other => panic!("{other:?}"),
    }
    assert_eq!(moved(&plan, upright, Length::INCH * 40), Err(Stays::OffSheet));
    assert_eq!(moved(&plan, upright, -Length::INCH * 40), Err(Stays::OffSheet));
    let away = cut_lines(&plan.layouts[0])[upright].at;
    assert_eq!(shift(&plan, 0, 99, away, away, &mut budget()), Err(Stays::NoLine));
    assert_eq!(shift(&plan, 7, 0, away, away, &mut budget()), Err(Stays::NoLine));
}

#[test]
fn another_layout_is_taken_by_as_few_pins_as_keep_it() {
    let plan = plan(&drive::project(), &mut budget());
    for other in &plan.layouts[0].alternatives {
        let pins = pins_for(&plan, 0, other, &mut budget()).unwrap();
        let mut project = plan.project.clone();
        assert!(pins.len() <= other.pieces.len());
        project.goal.pins = pins;
        let again = cards::plan::plan(&project, &mut budget());
        assert_eq!(places(&again.layouts[0].pieces), places(&other.pieces));
    }
    assert!(!plan.layouts[0].alternatives.is_empty());
}
