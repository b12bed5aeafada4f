//! Every example in `examples/` reads, and the demo says what it should.
#![allow(clippy::unwrap_used, reason = "tests")]

use cards::Project;
use cards::model::{Anchor, Look, Material, Side, Way};
use measure::{Length, Mark, Size, Unit};

fn folder() -> std::path::PathBuf {
    std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples")
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
    let names = std::fs::read_dir(folder()).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
    let projects: Vec<String> = names.filter(|name| name.ends_with(".toml")).collect();
    assert!(!projects.is_empty());
    for name in projects {
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
