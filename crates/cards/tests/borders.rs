//! Source: the worked build-up of the trade notes (four 3 in strips, a stop 1/32 in wide, mats of 3 1/4 in: borders of
//! 7/64 and 11/64; common practice), and every border counted again here from the steps by hand-cut columns.
#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;

use std::collections::BTreeMap;

use cards::plan::{Edge, PartKind, Plan, plan};
use cutting::Budget;
use cutting::steps::PartId;
use drive::{length, project};
use measure::{Length, Size};

fn planned() -> Plan {
    plan(&project(), &mut Budget::nodes(20_000_000))
}

/// The pieces of the first layout where every cut at one stop is `error` too wide: sizes cut by hand, from the steps.
fn cut_wide(plan: &Plan, stop: u32, error: Length) -> BTreeMap<(Length, Length), Size> {
    let layout = &plan.layouts[0];
    let (cut, step) = (&layout.cut_plan, layout.cut_step);
    let mut sizes =
        BTreeMap::from([(PartId::SHEET, Size::new(step * i64::from(cut.sheet.0), step * i64::from(cut.sheet.1)))]);
    for done in cut.cut_steps() {
        let wide = step * i64::from(done.setting) + if done.stop == stop { error } else { Length::ZERO };
        for work in &done.work {
            let mut held = sizes[&work.part];
            for off in &work.off {
                if done.axis == cutting::Axis::X {
                    sizes.insert(*off, Size::new(wide, held.height));
                    held.width -= wide;
                } else {
                    sizes.insert(*off, Size::new(held.width, wide));
                    held.height -= wide;
                }
            }
            sizes.insert(work.rest, held);
        }
    }
    let at = |id: PartId| {
        let rect = cut.part(id).unwrap().rect;
        (step * i64::from(rect.x), step * i64::from(rect.y))
    };
    sizes.into_iter().map(|(id, size)| ((at(id), id), size)).map(|((at, _), size)| (at, size)).collect()
}

#[test]
fn the_drive_has_the_borders_of_the_worked_build_up() {
    let plan = planned();
    let error = length("1/32");
    // By hand: columns of 3 in come off three times, the last is the rest.
    let mut borders = Vec::new();
    let layout = &plan.layouts[0];
    let three = |setting: u32| layout.cut_step * i64::from(setting) == length("3");
    let widest = layout.cut_plan.cut_steps().find(|step| three(step.setting)).unwrap().stop;
    let sizes = cut_wide(&plan, widest, error);
    for piece in &plan.layouts[0].pieces {
        borders.push(Length::from_ticks((length("3 1/4") - sizes[&(piece.rect.x, piece.rect.y)].width).ticks() / 2));
    }
    borders.sort();
    borders.dedup();
    assert_eq!(borders, [length("7/64"), length("11/64")]);
    // The plan says as much: the panel's side border, on the mat, with a stop too wide.
    let twins = &plan.borders.recipes[0];
    let side = twins.borders.iter().find(|b| (b.layer, b.edge) == (1, Edge::Left)).unwrap();
    assert_eq!((side.planned, side.on), (length("1/8"), Some(0)));
    assert!(side.by_stop_wide <= length("7/64"), "{side:?}");
    // Too near instead, the rest grows by 3/32: 5/64 is left.
    assert!(side.by_stop <= length("5/64"), "{side:?}");
    let (_, narrowest) = plan.borders.narrowest().unwrap();
    assert!(narrowest.together <= side.together);
    assert!(plan.findings.iter().any(|finding| finding.code == "border-errors"));
}

#[test]
fn every_cause_takes_its_share_and_no_more() {
    let plan = planned();
    for found in &plan.borders.recipes {
        assert!(found.borders[0].share.is_some());
        assert!(found.borders.windows(2).all(|two| two[0].together <= two[1].together), "the narrowest first");
        for border in &found.borders {
            let causes = [border.by_cuts, border.by_stop, border.by_placing, border.by_square, border.by_drift];
            assert!(causes.iter().all(|left| *left <= border.planned && *left >= border.together));
            let lost: Length = causes.iter().map(|left| border.planned - *left).sum();
            assert!(border.planned - lost <= border.together, "no card loses more than the worst of each");
            assert!(border.by_stop <= border.by_stop_wide);
            assert_eq!(border.by_placing, border.planned - length("1/32"));
            assert_eq!(border.by_drift, border.planned, "nothing here is cut by the print");
            let card = plan.cards.iter().find(|card| card.number == border.card).unwrap();
            assert!(card.parts.iter().any(|part| part.layer == border.layer));
        }
    }
    // The panel of 4 1/2 in: 0.0234 over its height, half of it at either end.
    let side = plan.borders.recipes[0].borders.iter().find(|b| (b.layer, b.edge) == (1, Edge::Left)).unwrap();
    let lean = (side.planned - side.by_square).to_inches();
    assert!((lean - 0.0234 / 2.0).abs() < 1e-4, "{lean}");
}

#[test]
fn the_rest_of_the_drive_lies_where_it_shows_least() {
    let plan = planned();
    // Bands come last in every column; columns are all alike: there is nothing better.
    assert!(plan.borders.rests.is_empty(), "{:?}", plan.borders.rests);
    assert!(plan.cards.iter().flat_map(|card| &card.parts).any(|part| matches!(part.kind, PartKind::Patterned { .. })));
}
