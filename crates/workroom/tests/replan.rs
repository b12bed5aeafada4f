//! `octavo replan` the whole way: another sheet, another unit, other people.
//!
//! Source: the layouts and sums of a card drive worked by hand beforehand (common practice): eight cards from a
//! 12 × 12 sheet equal four 6 × 6 sheets piece for piece; two 8 1/2 × 5 1/2 bases from Letter, one from A4, two 7 × 5
//! bases and five 3 1/4 × 4 3/4 mats from either; A6 with borders of 3 mm is 99 × 142 and 93 × 136 in a C6 envelope;
//! 14 seats are 16 kits, 20 seats 22. ISO 216 and ISO 269 for A4, A6 and C6.
#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/run.rs"]
mod run;

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use cards::Severity;
use cards::model::{Material, Project};
use cards::plan::{Budget, Plan, plan};
use measure::{Length, Size, Unit, parse_size};
use run::octavo;

/// A folder of this test's own; gone when dropped.
struct Scratch(PathBuf);

impl Scratch {
    fn new(name: &str) -> Scratch {
        let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("replan-{}-{name}", std::process::id()));
        fs::create_dir_all(&path).unwrap();
        Scratch(path)
    }

    /// One of the examples, copied in.
    fn example(&self, name: &str) -> String {
        let from = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples").join(name);
        let to = self.0.join(name);
        fs::copy(from, &to).unwrap();
        to.to_str().unwrap().to_owned()
    }

    fn file(&self, name: &str, text: &str) -> String {
        let path = self.0.join(name);
        fs::write(&path, text).unwrap();
        path.to_str().unwrap().to_owned()
    }

    fn at(&self, name: &str) -> String {
        self.0.join(name).to_str().unwrap().to_owned()
    }

    fn read(&self, name: &str) -> Project {
        store::project_file::read(&fs::read_to_string(self.0.join(name)).unwrap()).unwrap()
    }
}

impl Drop for Scratch {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

fn planned(project: &Project) -> Plan {
    plan(project, &mut Budget::nodes(40_000_000))
}

fn inches(text: &str) -> Size {
    parse_size(text, Some(Unit::Inch)).unwrap()
}

fn mm(width: i64, height: i64) -> Size {
    Size::new(Length::mm(width), Length::mm(height))
}

/// Pieces as they lie, by size, cut from all sheets of the designs.
fn pieces(plan: &Plan) -> BTreeMap<(usize, Size), u32> {
    let mut all = BTreeMap::new();
    for layout in &plan.layouts {
        for used in &layout.sheets {
            for piece in &layout.pieces {
                *all.entry((used.design, piece.rect.size)).or_insert(0) += used.sheets;
            }
        }
    }
    all
}

/// The project makes its pages, and nothing serious is found.
fn makes(scratch: &Scratch, file: &str) {
    let (code, out, err) = octavo(&["make", file, "--out", &scratch.at("made")]);
    assert_eq!((code, err.as_str()), (0, ""), "{out}");
}

#[test]
fn four_pad_sheets_give_the_pieces_of_one_large_sheet() {
    let scratch = Scratch::new("pad");
    let file = scratch.example("kettle-and-quince.toml");
    let (code, out, err) = octavo(&["replan", &file, "--sheet", "6x6"]);
    assert_eq!((code, err.as_str()), (0, ""), "{out}");
    assert!(out.starts_with("Twin: kept\n  cards from one sheet: 8 → 2; sheets: 6 → 24\n"), "{out}");
    let new = scratch.read("kettle-and-quince-6x6.toml");
    let plan = planned(&new);
    // Of each design, four sheets: 8 panels and 8 bands, nothing over; two and two on each sheet.
    let wanted = (0..6).flat_map(|design| [((design, inches("3 x 1 1/2")), 8), ((design, inches("3 x 4 1/2")), 8)]);
    assert_eq!(pieces(&plan), wanted.collect());
    let pad = &plan.layouts[0];
    assert_eq!((pad.pieces.len(), pad.waste, pad.effort.cuts), (4, 0, 3));
    assert!(pad.sheets.iter().all(|used| used.sheets == 4));
    assert_eq!(pieces(&plan), pieces(&planned(&scratch.read("kettle-and-quince.toml"))));
    makes(&scratch, &scratch.at("kettle-and-quince-6x6.toml"));
}

#[test]
fn the_whole_pack_moves_to_a_pad_in_both_batches() {
    let scratch = Scratch::new("pack");
    let file = scratch.example("kettle-and-quince-whole-pack.toml");
    let out = scratch.at("pad.toml");
    let (code, said, _) = octavo(&["replan", &file, "--sheet", "6x6", "--out", &out]);
    assert_eq!(code, 0, "{said}");
    for recipe in ["Twin: kept", "Twin with a bow: kept", "Recipe card: kept"] {
        assert!(said.contains(recipe), "{said}");
    }
    // Printed panels of another sheet are not known: told, and the other side is used.
    assert!(said.contains("Where design D is printed as panels on the new sheet is not known"), "{said}");
    let new = scratch.read("pad.toml");
    let plan = planned(&new);
    assert_eq!((plan.counts.cards, plan.counts.paper_sheets), (192, 96));
    assert_eq!(new.batches.iter().map(|batch| batch.kits).collect::<Vec<_>>(), [None, Some(16)]);
    assert!(new.packs[0].designs.iter().all(|design| design.copies == 16));
    makes(&scratch, &out);
}

#[test]
fn letter_and_a4_and_the_base_that_comes_only_once() {
    let scratch = Scratch::new("a4");
    // 7 × 5 bases and the mats come out of A4 as of Letter.
    let file = scratch.example("kettle-and-quince.toml");
    let (code, out, _) = octavo(&["replan", &file, "--cardstock", "a4"]);
    assert_eq!(code, 0, "{out}");
    assert!(out.starts_with("Twin: kept\n") && !out.contains("bases"), "{out}");
    makes(&scratch, &scratch.at("kettle-and-quince-cardstock-a4.toml"));
    let each = planned(&scratch.read("kettle-and-quince-cardstock-a4.toml"));
    let most = |plan: &Plan, size: Size| {
        let found = plan.stocks.iter().find_map(|stock| {
            let cut = stock.cuts.iter().position(|cut| cut.size == size)?;
            stock.most_each.iter().filter_map(|most| most.get(cut)).max().copied()
        });
        found.unwrap()
    };
    assert_eq!((most(&each, inches("7 x 5")), most(&each, inches("3 1/4 x 4 3/4"))), (2, 5));
    // An 8 1/2 × 5 1/2 base does not: one instead of two, and the nearest that does.
    let file = scratch.example("four-recipes.toml");
    let (code, out, _) = octavo(&["replan", &file, "--cardstock", "a4"]);
    assert_eq!(code, 0, "{out}");
    assert!(out.contains("Tall: changed\n  bases from one sheet of Oat: 2 → 1\n"), "{out}");
    assert!(out.contains("The base of Tall, 8 1/2 in × 5 1/2 in, comes out of a"), "{out}");
    assert!(
        out.contains(
            "only once, where there were 2. The nearest card of which 2 come out of it is 4 1/8 in × 5 1/2 in."
        )
    );
    let a4 = planned(&scratch.read("four-recipes-cardstock-a4.toml"));
    assert_eq!(most(&a4, inches("8 1/2 x 5 1/2")), 1);
    makes(&scratch, &scratch.at("four-recipes-cardstock-a4.toml"));
    // The nearest really gives two.
    let mut nearest = scratch.read("four-recipes-cardstock-a4.toml");
    nearest.recipes.truncate(1);
    nearest.recipes[0].finished = inches("4 1/8 x 5 1/2");
    assert_eq!(most(&planned(&nearest), inches("8 1/4 x 5 1/2")), 2);
    // And back: two again.
    let file = scratch.at("four-recipes-cardstock-a4.toml");
    let (code, out, _) = octavo(&["replan", &file, "--cardstock", "letter", "--out", &scratch.at("back.toml")]);
    assert_eq!(code, 0, "{out}");
    assert!(out.contains("bases from one sheet of Oat: 1 → 2"), "{out}");
    assert_eq!(most(&planned(&scratch.read("back.toml")), inches("8 1/2 x 5 1/2")), 2);
}

#[test]
fn millimetres_are_designed_and_not_converted() {
    let scratch = Scratch::new("mm");
    let file = scratch.example("kettle-and-quince-whole-pack.toml");
    let out = scratch.at("metric.toml");
    let (code, said, _) = octavo(&["replan", &file, "--unit", "mm", "--out", &out]);
    assert_eq!(code, 0, "{said}");
    let new = scratch.read("metric.toml");
    // A6 in C6, A4 cardstock, 30.5 cm sheets planned on 304.
    assert_eq!(new.unit, Unit::Millimetre);
    assert!(new.recipes.iter().all(|recipe| recipe.finished == mm(105, 148)));
    assert!(new.recipes.iter().all(|recipe| recipe.base_size().0 == mm(210, 148)));
    assert_eq!(new.envelope.as_ref().map(|envelope| envelope.size), Some(mm(114, 162)));
    assert!(new.cardstocks.iter().all(|stock| stock.sheets[0].size == mm(210, 297)));
    assert_eq!(new.packs[0].sheet, mm(304, 304));
    // Borders of 3 mm: mat 99 × 142, panel 93 × 136.
    let plan = planned(&new);
    let mats = plan.stocks.iter().flat_map(|stock| &stock.cuts).filter(|cut| cut.layer == Some(0));
    let mats: Vec<Size> = mats.map(|cut| cut.size).collect();
    assert!(!mats.is_empty() && mats.iter().all(|mat| *mat == mm(99, 142)), "{mats:?}");
    let panels: Vec<Size> = pieces(&plan).into_keys().map(|(_, size)| size).collect();
    assert!(panels.contains(&mm(93, 136)), "{panels:?}");
    for layer in new.recipes.iter().flat_map(|recipe| &recipe.layers) {
        if let Material::Mat { border, .. } = layer.material {
            assert_eq!(border, Length::mm(3));
        }
    }
    // No length of the paper pieces is anything but whole millimetres, and no card got lost.
    let whole = |length: Length| length.ticks() % Length::MM.ticks() == 0;
    assert!(panels.iter().all(|size| whole(size.width) && whole(size.height)));
    assert_eq!(plan.counts.cards, 192);
    assert!(said.contains("the card: 3 1/2 in × 5 in → 105 mm × 148 mm"), "{said}");
    assert!(said.contains("The printed panels of design D are too small for the new pieces"), "{said}");
    makes(&scratch, &out);
    // And the other way: A6 becomes the quarter sheet, with borders of 1/8 in, in A2.
    let file = scratch.example("a6-from-a4.toml");
    let (code, said, _) = octavo(&["replan", &file, "--unit", "in"]);
    assert_eq!(code, 0, "{said}");
    let new = scratch.read("a6-from-a4-in.toml");
    assert_eq!(new.recipes[0].finished, inches("4 1/4 x 5 1/2"));
    assert_eq!(new.envelope.as_ref().map(|envelope| envelope.size), Some(inches("4 3/8 x 5 3/4")));
    assert_eq!(new.cardstocks[0].sheets[0].size, inches("8 1/2 x 11"));
    assert!(pieces(&planned(&new)).into_keys().all(|(_, size)| size == inches("3 3/4 x 5")));
}

#[test]
fn fewer_cards_from_a_metric_sheet_offers_the_nearest_that_gives_as_many() {
    let scratch = Scratch::new("nearest");
    let file = scratch.example("hundred-and-fifty.toml");
    let (code, said, _) = octavo(&["replan", &file, "--unit", "mm"]);
    assert_eq!(code, 0, "{said}");
    // 5 × 7 becomes 127 × 178; three panels of 103 do not go across 304, three of 101 do, and two of 152 down.
    assert!(said.contains("the card: 5 in × 7 in → 127 mm × 178 mm"), "{said}");
    assert!(said.contains("2 mm narrower, 101 mm wide") && said.contains("2 mm lower, 152 mm high"), "{said}");
    makes(&scratch, &scratch.at("hundred-and-fifty-mm.toml"));
}

#[test]
fn twenty_seats_are_twenty_two_kits() {
    let scratch = Scratch::new("people");
    let file = scratch.example("kettle-and-quince-whole-pack.toml");
    let out = scratch.at("class.toml");
    let (code, said, _) = octavo(&["replan", &file, "--people", "20", "--out", &out]);
    assert_eq!(code, 0, "{said}");
    assert!(said.contains("22 kits, where there were 16: 20 seats, one to show, 1 spare"), "{said}");
    let new = scratch.read("class.toml");
    assert_eq!(new.batches.iter().map(|batch| batch.kits).collect::<Vec<_>>(), [None, Some(22)]);
    let class = new.trade.class.as_ref().unwrap();
    assert_eq!((class.seats, class.demonstrators, class.spare_kits), (20, 1, Some(1)), "the class has these seats too");
    let plan = planned(&new);
    // Every kit gets one card of each design: at least 22 of each, from three sheets. Cards to post stay as they were.
    for design in 0..6 {
        let cards = |batch| plan.cards.iter().filter(|card| (card.batch, card.design) == (batch, design)).count();
        assert_eq!((cards(0), cards(1)), (16, 24));
    }
    // Five sheets of each design are needed, a pack has four: two packs, at twice the price.
    assert!(new.packs[0].designs.iter().all(|design| design.copies == 8));
    assert_eq!(new.packs[0].price.as_ref().map(|price| price.amount.to_string()), Some("28.80".to_owned()));
    makes(&scratch, &out);
    // Fewer people need less, and no second pack.
    let (code, said, _) =
        octavo(&["replan", &file, "--people", "6", "--spare-kits", "1", "--out", &scratch.at("few.toml")]);
    assert_eq!(code, 0, "{said}");
    let few = scratch.read("few.toml");
    assert_eq!((few.batches[1].kits, few.packs[0].designs[0].copies), (Some(8), 4));
    let plan = planned(&few);
    assert!(
        (0..6).all(|design| plan.cards.iter().filter(|card| (card.batch, card.design) == (1, design)).count() == 8)
    );
}

#[test]
fn another_number_of_cards() {
    let scratch = Scratch::new("cards");
    let file = scratch.example("kettle-and-quince-whole-pack.toml");
    let out = scratch.at("more.toml");
    let (code, said, _) = octavo(&["replan", &file, "--cards", "100", "--out", &out]);
    assert_eq!(code, 0, "{said}");
    let plan = planned(&scratch.read("more.toml"));
    let cards = |batch| plan.cards.iter().filter(|card| card.batch == batch).count();
    // Two designs that meet on one card have a third sheet each.
    assert_eq!((cards(0), cards(1)), (112, 96));
    assert!(plan.findings.iter().all(|finding| finding.severity == Severity::Note), "{:?}", plan.findings);
    assert!(said.contains("12 cards more come of it"), "{said}");
}

#[test]
fn a_recipe_that_cannot_be_kept_is_named_with_the_nearest_that_would_do() {
    let scratch = Scratch::new("lost");
    let file = scratch.example("four-recipes.toml");
    let out = scratch.at("small.toml");
    let (code, said, _) = octavo(&["replan", &file, "--sheet", "3 x 5 in", "--out", &out]);
    assert_eq!(code, 1, "{said}");
    assert!(said.contains("Tall: kept\n"), "{said}");
    assert!(said.contains("Band: cannot be kept\n  would do: let the band of Band lie a quarter turned"), "{said}");
    assert!(
        said.contains("Edge: cannot be kept\n  would do: let the edge of Edge be 1/2 in lower, 5 in high"),
        "{said}"
    );
    // What can be kept is made without a fault.
    makes(&scratch, &out);
    let new = scratch.read("small.toml");
    assert_eq!(new.recipes.len(), 4);
    assert!(planned(&new).cards.iter().all(|card| [0, 2].contains(&card.recipe)));
    // Where nothing can, nothing is written.
    let file = scratch.example("hundred-and-fifty.toml");
    let (code, said, err) = octavo(&["replan", &file, "--sheet", "3x5", "--out", &scratch.at("none.toml")]);
    assert_eq!(code, 2, "{said}");
    assert!(said.contains("Invitation: cannot be kept\n  would do: use a sheet of 4 in × 6 in"), "{said}");
    assert!(err.contains("no recipe can be kept, so nothing was written"), "{err}");
    assert!(!Path::new(&scratch.at("none.toml")).exists());
    // A base of which none comes out of the new cardstock.
    let file = scratch.example("pad-of-fifteen.toml");
    let (code, said, _) = octavo(&["replan", &file, "--cardstock", "letter"]);
    assert_eq!(code, 1, "{said}");
    assert!(said.contains("Square: cannot be kept\n  bases from one sheet of Foam White: 1 → 0"), "{said}");
    assert!(said.contains("The nearest card of which 1 comes out of it is 139 mm × 148 mm."), "{said}");
}

#[test]
fn no_file_is_overwritten_without_a_word() {
    let scratch = Scratch::new("files");
    let file = scratch.example("kettle-and-quince.toml");
    let mine = scratch.file("mine.toml", "mine");
    let ask = |more: &[&str]| octavo(&[&["replan", &file, "--people", "5", "--out"][..], more].concat());
    let (code, _, err) = ask(&[&mine]);
    assert_eq!(code, 2);
    assert!(err.contains("mine.toml` is there already: name another file after `--out`, or add `--replace`"), "{err}");
    assert_eq!(fs::read_to_string(&mine).unwrap(), "mine");
    let before = fs::read_to_string(&file).unwrap();
    let (code, _, err) = ask(&[&file, "--replace"]);
    assert_eq!((code, err.contains("is the project itself")), (2, true), "{err}");
    assert_eq!(fs::read_to_string(&file).unwrap(), before);
    let (code, out, _) = ask(&[&mine, "--replace"]);
    assert_eq!((code, out.contains("the new project replaced `")), (0, true), "{out}");
    assert!(fs::read_to_string(&mine).unwrap().starts_with("name = "));
    let (code, _, err) = octavo(&["replan", &file, "--sheet", "tiny"]);
    assert_eq!((code, err.contains("`tiny` is no sheet: write a name")), (2, true), "{err}");
    let left = fs::read_dir(&scratch.0).unwrap().count();
    assert_eq!(left, 2, "nothing is left beside them");
}

#[test]
fn every_example_can_be_asked_everything() {
    let scratch = Scratch::new("all");
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples");
    let asks: [&[&str]; 6] = [
        &["--sheet", "6x6"],
        &["--sheet", "letter"],
        &["--cardstock", "12x12"],
        &["--unit", "mm"],
        &["--unit", "in"],
        &["--people", "9"],
    ];
    for entry in fs::read_dir(folder).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        let file = scratch.example(&name);
        let old = planned(&scratch.read(&name));
        let serious = |plan: &Plan| {
            plan.findings
                .iter()
                .filter(|finding| finding.severity == Severity::Serious)
                .map(|found| found.code)
                .collect::<Vec<_>>()
        };
        for ask in asks {
            let to = scratch.at("new.toml");
            let (code, said, err) = octavo(&[&["replan", &file, "--out", &to, "--replace", "--json"], ask].concat());
            // A slow machine is told how far a long search is; that is no complaint.
            let only_progress = err.lines().all(|line| line.contains(" nodes, best "));
            assert!(!said.contains('⟨') && only_progress, "{name} {ask:?}: {said}{err}");
            assert_eq!(code, 0, "{name} {ask:?}: {said}");
            let new = planned(&scratch.read("new.toml"));
            assert!(
                serious(&new).iter().all(|code| serious(&old).contains(code)),
                "{name} {ask:?}: {:?}",
                new.findings
            );
            // Only another number of people may make fewer cards.
            let fewer = new.cards.len() < old.cards.len();
            assert!(!fewer || ask[0] == "--people", "{name} {ask:?}: {said}");
        }
    }
}
