//! Layers where they lie, and one layer more.
//!
//! By hand, for the 3 1/2 × 5 in card with a 3 1/4 × 4 3/4 mat, a 3 × 4 1/2 panel, a 3 × 1 1/2 band and a 3 × 3/4 strip: what
//! shows is the difference of two sizes, halved where a layer lies in the middle; a layer more is a border smaller all round.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;

use cards::Plan;
use cards::model::Material;
use cards::plan::{Budget, Fresh, added, plan, stands};
use drive::{length, size};
use measure::Length;

const MAT: usize = 0;
const PANEL: usize = 1;
const BAND: usize = 2;
const RIBBON: usize = 3;
const STRIP: usize = 4;

fn planned() -> Plan {
    plan(&drive::project(), &mut Budget::nodes(3_000_000))
}

fn plan_of(project: &cards::Project) -> Plan {
    plan(project, &mut Budget::nodes(3_000_000))
}

#[test]
fn borders_are_what_shows_all_round() {
    let laid = stands(&planned(), 0);
    let eighth = length("1/8");
    assert_eq!((laid[MAT].on, laid[MAT].borders), (None, [eighth; 4]));
    assert_eq!((laid[PANEL].on, laid[PANEL].borders), (Some(MAT), [eighth; 4]));
    assert_eq!(laid[BAND].borders, [Length::ZERO, Length::ZERO, length("2 1/2"), length("1/2")]);
    assert_eq!(laid[STRIP].borders, [Length::ZERO, Length::ZERO, length("3/8"), length("3/8")]);
}

#[test]
fn a_layer_more_has_its_size_by_subtraction() {
    let plan = planned();
    let of = |on, fresh| added(&plan, 0, on, fresh).unwrap();
    let panel = of(Some(PANEL), Fresh::Panel);
    assert_eq!(panel.at, 2);
    let Material::Patterned { prefer, width, .. } = panel.layer.material else { panic!("no paper") };
    assert_eq!((prefer, width.least, width.most), (size("2 3/4 x 4 1/4"), length("2 1/2"), length("2 3/4")));
    // What is laid on a mat is laid on what it shows its border around.
    assert_eq!(of(Some(MAT), Fresh::Panel).at, 2);
    let piece = of(None, Fresh::Piece);
    assert!(matches!(piece.layer.material, Material::Plain { size, .. } if size == drive::size("3 1/4 x 4 3/4")));
    assert_eq!(piece.at, 0);
    // A third of 4 1/2, its middle on the upper third: the lower has a band already.
    let band = of(Some(PANEL), Fresh::Band);
    let Material::Patterned { prefer, from_partner, .. } = band.layer.material else { panic!("no paper") };
    assert_eq!((prefer, from_partner), (size("3 x 1 1/2"), true));
    assert_eq!(band.layer.placement.down, length("3/4"));
    let ribbon = of(Some(PANEL), Fresh::Ribbon);
    assert!(matches!(ribbon.layer.material, Material::Ribbon { length, .. } if length == drive::length("4")));
    let greeting = of(Some(BAND), Fresh::Greeting);
    assert!(matches!(greeting.layer.material, Material::Strip { size, .. } if size == drive::size("2 3/4 x 7/8")));
    assert_eq!(greeting.at, 5);
}

#[test]
fn a_mat_more_takes_the_place_and_the_layer_shrinks_where_there_is_no_room() {
    let plan = planned();
    let mat = added(&plan, 0, Some(PANEL), Fresh::Mat).unwrap();
    assert_eq!(mat.at, MAT, "behind the mat that is there");
    assert!(matches!(mat.layer.material, Material::Mat { follows: MAT, .. }));
    let [(_, outer), (core, panel)] = mat.changed.as_slice() else { panic!("{:?}", mat.changed) };
    assert_eq!((*core, outer.placement.on), (PANEL, None));
    let Material::Patterned { prefer, .. } = panel.material else { panic!("no paper") };
    assert_eq!(prefer, size("2 3/4 x 4 1/4"), "two borders less: 3 1/2 - 6 × 1/8");
    // Words need their room: the strip keeps its size, and its mat runs over the band.
    let mat = added(&plan, 0, Some(STRIP), Fresh::Mat).unwrap();
    assert!(mat.layer.placement.overlap);
    assert_eq!(added(&plan, 0, Some(RIBBON), Fresh::Mat), None);
    assert_eq!(added(&plan, 0, Some(9), Fresh::Panel), None);
    let mut bare = drive::project();
    bare.greetings.clear();
    bare.recipes[0].layers.truncate(2);
    assert_eq!(added(&plan_of(&bare), 0, None, Fresh::Greeting), None);
}
