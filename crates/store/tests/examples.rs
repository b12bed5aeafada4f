//! Every example in `examples/` reads, and the demo says what it should.
#![allow(clippy::unwrap_used, reason = "tests")]

use cards::model::{Anchor, Grain, Look, Material, Side, Way};
use cards::plan::{Budget, plan};
use cards::{Project, Severity};
use measure::{Length, Mark, Size, Unit};

fn folder() -> std::path::PathBuf {
    std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples")
}

fn names() -> Vec<String> {
    let names = std::fs::read_dir(folder()).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
    let mut names: Vec<String> = names.filter(|name| name.ends_with(".toml")).collect();
    names.sort();
    assert!(names.len() >= 7, "{names:?}");
    names
}

fn read(name: &str) -> Project {
    let bytes = std::fs::read(folder().join(name)).unwrap();
    store::project_file::read_bytes(&bytes).unwrap_or_else(|problems| panic!("{name}: {problems:#?}"))
}

fn inches(numerator: i64, denominator: i64) -> Length {
    Length::inches(numerator, denominator).unwrap()
}

#[test]
fn every_example_reads() {
    for name in names() {
        let project = read(&name);
        assert!(!project.recipes.is_empty(), "{name}");
        assert!(project.recipes.iter().all(|recipe| !recipe.layers.is_empty()), "{name}");
    }
}

#[test]
fn the_demo_has_six_sheets_and_eight_cards_from_each() {
    let project = read("kettle-and-quince.toml");
    assert_eq!((project.unit, project.mark), (Unit::Inch, Mark::EighthInch));
    let [pack] = project.packs.as_slice() else { panic!("{:?}", project.packs) };
    assert_eq!(pack.sheet, Size::new(inches(12, 1), inches(12, 1)));
    let letters: Vec<&str> = pack.designs.iter().map(|design| design.letter.as_str()).collect();
    assert_eq!(letters, ["A", "B", "C", "D", "E", "F"]);
    assert!(pack.designs.iter().all(|design| design.copies == 4 && design.use_sheets == Some(1)));
    assert_eq!((pack.designs[0].front.way, pack.designs[3].up), (Way::OneWay, Side::Back));
    assert_eq!(pack.designs[1].front.look, Look::Drawn("kettle-stripe".to_owned()));
    assert_eq!(project.cardstocks[0].thickness_um, Some(280));
    assert_eq!(project.ribbons[0].spool, Some(inches(360, 1)));
    assert_eq!(project.goal.cards_per_sheet, Some(8));
    assert_eq!((project.goal.set_of, project.goal.alternatives), (1, 3));
    let pair = |a: &str, b: &str| (a.to_owned(), b.to_owned());
    assert_eq!(project.goal.partners, [pair("A", "C"), pair("B", "F"), pair("D", "E")]);
}

#[test]
fn the_demo_mat_follows_the_panel_that_lies_on_it() {
    let project = read("kettle-and-quince.toml");
    let [recipe] = project.recipes.as_slice() else { panic!("{:?}", project.recipes) };
    let on: Vec<Option<usize>> = recipe.layers.iter().map(|layer| layer.placement.on).collect();
    assert_eq!(on, [None, Some(0), Some(1), Some(2), Some(2)]);
    let Material::Mat { follows, border, cardstock } = &recipe.layers[0].material else { panic!() };
    assert_eq!((*follows, *border), (1, inches(1, 8)));
    assert_eq!(cardstock.len(), 6);
    assert_eq!(cardstock[5], (Some("F".to_owned()), 4));
    let band = &recipe.layers[2].placement;
    assert_eq!((band.anchor, band.down), (Anchor::Bottom, -inches(3, 4)));
    let Material::Patterned { width, height, prefer, from_partner, .. } = &recipe.layers[2].material else { panic!() };
    assert_eq!((width.least, width.most), (inches(11, 4), inches(13, 4)));
    assert_eq!((height.least, height.most), (inches(5, 4), inches(7, 4)));
    assert_eq!((*prefer, *from_partner), (Size::new(inches(3, 1), inches(3, 2)), true));
}

#[test]
fn every_example_can_be_carried_out_but_the_one_meant_not_to() {
    for name in names() {
        let plan = plan(&read(&name), &mut Budget::nodes(400_000));
        let serious = plan.findings.iter().filter(|finding| finding.severity == Severity::Serious);
        let serious: Vec<&str> = serious.map(|finding| finding.code).collect();
        let expected: &[&str] = if name == "small-envelope.toml" { &["envelope-too-small"] } else { &[] };
        assert_eq!(serious, expected, "{name}");
        let cards = plan.layouts.first().map_or(0, |_| plan.cards.len());
        assert!(cards > 0, "{name}: no cards");
    }
}

#[test]
fn the_metric_example_thinks_in_millimetres() {
    let project = read("a6-from-a4.toml");
    assert_eq!((project.unit, project.mark), (Unit::Millimetre, Mark::WholeMillimetre));
    let recipe = &project.recipes[0];
    let (base, scores) = recipe.base_size();
    assert_eq!((base, scores), (Size::new(Length::mm(210), Length::mm(148)), vec![Length::mm(105)]));
    // Two of those bases lie on an A4 sheet, ISO 216: 210 × 297 mm.
    assert_eq!(project.cardstocks[0].sheets[0].size, Size::new(Length::mm(210), Length::mm(297)));
    assert_eq!(project.cardstocks[0].sheets[0].grain, Grain::AlongHeight);
    assert_eq!(project.cardstocks[0].thickness_um, Some(270));
    let price = project.packs[0].price.as_ref().unwrap();
    assert_eq!(
        (price.amount.to_string(), price.currency.as_str(), price.date.as_deref()),
        ("9.50".to_owned(), "EUR", Some("2026-03-14"))
    );
}

#[test]
fn what_is_left_out_takes_its_usual_value() {
    let project = read("small-envelope.toml");
    let design = &project.packs[0].designs[0];
    assert_eq!((design.letter.as_str(), design.copies, design.use_sheets), ("A", 1, None));
    assert_eq!(project.cardstocks[0].sheets[0].size, Size::new(inches(17, 2), inches(11, 1)));
    assert_eq!(project.trimmer.longest_cut, inches(12, 1));
    let Material::Patterned { prefer, free_size, .. } = &project.recipes[0].layers[0].material else { panic!() };
    // The middle of 3 1/2 to 3 3/4 in lies on 3 5/8 in, that of 4 3/4 to 5 in on 4 7/8 in.
    assert_eq!((*prefer, *free_size), (Size::new(inches(29, 8), inches(39, 8)), false));
    let loose = read("free-sizes.toml");
    let letters: Vec<&str> = loose.packs.iter().map(|pack| pack.designs[0].letter.as_str()).collect();
    assert_eq!(letters, ["A", "S"]);
    assert_eq!(loose.packs[0].usable(), Size::new(inches(47, 4), inches(47, 4)));
}
