//! The first sample: which setting gives a side its length.
//!
//! By hand, for eight 3 × 4 1/2 in panels and eight 3 × 1 1/2 in bands from a 12 × 12 in sheet: a side that a setting gives
//! is as long as the setting, and where all columns are 3 wide, the last of a row is never measured.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;

use cards::plan::{Budget, MadeBy, Measured, compare, made_by, plan};
use cutting::steps::Step;
use cutting::tree::Axis;
use drive::length;
use measure::{Length, Unit, from_steps};

#[test]
fn a_setting_gives_its_own_length_and_the_last_of_a_row_is_a_rest() {
    let plan = plan(&drive::project(), &mut Budget::nodes(3_000_000));
    let laid = &plan.layouts[0];
    let (mut set, mut rests) = (0, 0);
    for piece in &laid.pieces {
        for (axis, side) in [(Axis::X, piece.rect.size.width), (Axis::Y, piece.rect.size.height)] {
            match made_by(&laid.cut_plan, laid.cut_step, piece.rect, axis) {
                MadeBy::Rest => rests += 1,
                MadeBy::Setting(setting, steps) => {
                    set += 1;
                    assert_eq!(setting, side);
                    for number in steps {
                        let Step::Cut(cut) = &laid.cut_plan.steps[number - 1] else { panic!("no cut") };
                        assert_eq!(from_steps(cut.setting, laid.cut_step), setting);
                    }
                }
            }
        }
    }
    assert_eq!(set + rests, 2 * laid.pieces.len());
    assert!(set > 0 && rests > 0, "{set} set, {rests} rests");
}

#[test]
fn a_hair_is_fine_and_more_is_told() {
    let planned = length("3");
    for (measured, unit, is) in [
        (length("3"), Unit::Inch, Measured::Fine),
        (length("3 1/32"), Unit::Inch, Measured::Fine),
        (length("2 31/32"), Unit::Inch, Measured::Fine),
        (length("3 1/16"), Unit::Inch, Measured::Off(length("1/16"))),
        (length("2 15/16"), Unit::Inch, Measured::Off(-length("1/16"))),
        (planned + Length::MM, Unit::Millimetre, Measured::Fine),
        (planned + Length::MM * 2, Unit::Millimetre, Measured::Off(Length::MM * 2)),
    ] {
        assert_eq!(compare(planned, measured, unit), is);
    }
}
