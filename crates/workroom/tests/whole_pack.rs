//! A whole pack of 24 sheets: 96 cards to post and 16 kits of six.
//!
//! Source: the sums of a card drive worked by hand beforehand, layer by layer (common practice); every number below
//! is written out from them, none is read off our own plan.
#![allow(clippy::unwrap_used, reason = "tests")]

use std::collections::BTreeMap;

use cards::plan::{Budget, CardPart, PartKind, Plan, plan, used_for};
use cards::{Project, Severity};
use measure::{Length, Size, Unit, parse_length, parse_size};
use rust_decimal::Decimal;

const DEMO: &str = include_str!("../../../examples/kettle-and-quince-whole-pack.toml");

fn project() -> Project {
    store::project_file::read(DEMO).unwrap()
}

fn planned(project: &Project) -> Plan {
    plan(project, &mut Budget::nodes(50_000_000))
}

fn length(text: &str) -> Length {
    parse_length(text, Some(Unit::Inch)).unwrap()
}

fn size(text: &str) -> Size {
    parse_size(text, Some(Unit::Inch)).unwrap()
}

fn codes(plan: &Plan) -> Vec<(&'static str, Severity)> {
    plan.findings.iter().map(|finding| (finding.code, finding.severity)).collect()
}

#[test]
fn two_batches_use_up_the_pack() {
    let plan = planned(&project());
    assert_eq!(plan.counts.cards, 192);
    assert_eq!(plan.counts.paper_sheets, 24);
    for batch in 0..2 {
        for design in 0..6 {
            let cards = plan.cards.iter().filter(|card| (card.batch, card.design) == (batch, design)).count();
            assert_eq!(cards, 16, "16 cards of each design in each batch, so that 16 kits are alike");
        }
    }
    // Every sheet of every design once: numbers 1 to 4.
    for design in 0..6 {
        let mut sheets: Vec<u32> = Vec::new();
        for used in plan.layouts.iter().flat_map(|layout| &layout.sheets).filter(|used| used.design == design) {
            sheets.extend(used.before + 1..=used.before + used.sheets);
        }
        sheets.sort_unstable();
        assert_eq!(sheets, [1, 2, 3, 4]);
    }
}

#[test]
fn cardstock_ribbon_and_foam() {
    let plan = planned(&project());
    let sheets: BTreeMap<&str, u32> = plan
        .stocks
        .iter()
        .map(|stock| (plan.project.cardstocks[stock.cardstock].name.as_str(), stock.sheet_count))
        .collect();
    // 192 bases, two a sheet; 64, 64, 32 and 32 mats, five a sheet.
    let wanted = [("Brick", 13), ("Hedge", 7), ("Milk", 96), ("Pot Blue", 13), ("Quince", 7)];
    assert_eq!(sheets, BTreeMap::from(wanted));
    // 96 × 4 in and 96 × 12 in, on spools of 360 in.
    assert_eq!(plan.counts.ribbon, [(length("1536"), Some(5))]);
    assert_eq!((plan.counts.bases, plan.counts.strips, plan.counts.foam_squares), (192, 192, 384));
}

#[test]
fn tape_and_what_a_card_uses() {
    let plan = planned(&project());
    // Panel 2 × 4 1/2, mat 2 × 4 3/4, band 3: 21 1/2 in a card; the 16 cards with a 3 × 4 panel 20 1/2. 8.70 rolls of 12 m.
    assert_eq!(plan.counts.tape, Some((Length::INCH * 4112, Some(9))));
    assert_eq!((plan.counts.foam_packs, plan.counts.envelopes), (Some(2), Some((192, Some(4)))));
    let line = |times: u32, price: &str, of: &str| {
        let amount = |text: &str| text.parse::<Decimal>().unwrap();
        Decimal::from(times) * amount(price) / amount(of)
    };
    // The same in every card: paper, base, mat, foam, envelope, ink, stamp. Tape in tenths of an inch.
    let same = line(1, "14.40", "192") + line(1, "11.00", "100") + line(1, "4.80", "60");
    let same = same + line(2, "2.50", "300") + line(1, "6.50", "50") + line(1, "8.00", "1000");
    let same = same + line(1, "22.00", "300");
    let tape = |inches: u32| line(inches, "3.60", "12000") * Decimal::new(254, 1);
    let posted = same * Decimal::from(96) + line(96 * 4, "3.20", "360") + tape(96 * 43 / 2);
    let table = same * Decimal::from(96) + line(96 * 12, "3.20", "360") + tape(80 * 43 / 2 + 16 * 41 / 2);
    for (batch, by_hand, told) in [(0, posted, "0.69"), (1, table, "0.76")] {
        let used = used_for(&plan, |card| card.batch == batch);
        let found = used.total_used.unwrap();
        assert!((found - by_hand).abs() < Decimal::new(1, 9), "{found} is not {by_hand}");
        assert_eq!((found / Decimal::from(96)).round_dp(2).to_string(), told);
        assert!(!used.at_least);
    }
    // The tape's price is forgotten: the total reads “at least” and names the tape.
    let mut forgotten = project();
    forgotten.supplies.tape.as_mut().unwrap().price = None;
    let plan = planned(&forgotten);
    let names = |finding: &&cards::Finding| finding.code == "price-missing";
    let missing: Vec<_> = plan.findings.iter().filter(names).map(|finding| finding.facts.clone()).collect();
    assert_eq!(missing, [vec![("name", "Tape".into())]]);
    assert!(plan.costs.at_least);
}

#[test]
fn the_collage_is_cut_on_its_printed_lines() {
    let plan = planned(&project());
    let collage: Vec<_> = plan.layouts.iter().filter(|layout| !layout.panels.is_empty()).collect();
    let [layout] = collage.as_slice() else { panic!("one collage layout, found {}", collage.len()) };
    assert_eq!(layout.panels.len(), 12);
    for piece in &layout.pieces {
        assert!(layout.panels.iter().any(|panel| panel.contains(piece.rect)), "{piece:?} takes part of two panels");
    }
    // Two sheets: 16 panels stay whole, 8 give two bands of 3 × 1 1/2 and leave a strip of 3 × 1.
    let of = |wanted: Size| layout.pieces.iter().filter(|piece| piece.rect.size == wanted).count();
    assert_eq!((of(size("3 x 4")), of(size("3 x 1 1/2"))), (8, 8));
    let left = size("3 x 1").area() * 4;
    assert_eq!(layout.waste, left);
    assert_eq!(layout.sheets.iter().map(|used| used.sheets).sum::<u32>(), 2);
}

#[test]
fn every_piece_is_used_once_and_bands_come_from_partners() {
    let plan = planned(&project());
    let mut used: BTreeMap<(usize, usize, usize, u32), u32> = BTreeMap::new();
    let partner = |letter: &str| match letter {
        "A" => "C",
        "C" => "A",
        "B" => "F",
        "F" => "B",
        "D" => "E",
        _ => "D",
    };
    for card in &plan.cards {
        let letter = plan.project.packs[0].designs[card.design].letter.as_str();
        for CardPart { layer, kind, .. } in &card.parts {
            let PartKind::Patterned { layout, piece, design, sheet, .. } = *kind else { continue };
            *used.entry((layout, piece, design, sheet)).or_default() += 1;
            let name = plan.project.recipes[card.recipe].layers[*layer].name.as_str();
            let from = plan.project.packs[0].designs[design].letter.as_str();
            assert_eq!(from, if name == "band" { partner(letter) } else { letter });
            assert_eq!(plan.layouts[layout].batch, card.batch, "a piece goes to a card of its own batch");
        }
    }
    assert!(used.values().all(|&times| times == 1));
    assert_eq!(used.len(), 384);
}

#[test]
fn nothing_serious_is_found_in_the_demo() {
    let plan = planned(&project());
    assert!(codes(&plan).iter().all(|(_, severity)| *severity < Severity::Serious), "{:?}", codes(&plan));
}

#[test]
fn a_collage_under_a_plain_layout_is_told() {
    let mut project = project();
    // Design D face up with the recipe of the others: its panels are 3 × 4, the recipe wants 4 1/4 at least.
    let front = cards::model::Side::Front;
    project.batches[0].takes.iter_mut().for_each(|take| take.side = front);
    let told = codes(&planned(&project));
    assert!(told.contains(&("panels-cut", Severity::Warning)), "{told:?}");
    assert!(told.contains(&("collage-fits-no-recipe", Severity::Warning)), "{told:?}");
}

#[test]
fn the_flat_envelope_is_refused_with_the_next_one() {
    let mut project = project();
    project.envelope.as_mut().unwrap().size = size("3 5/8 x 5 1/8");
    let told = codes(&planned(&project));
    assert!(told.contains(&("envelope-too-small", Severity::Serious)), "{told:?}");
}

#[test]
fn a_batch_that_wants_more_sheets_than_there_are_is_told() {
    let mut project = project();
    project.packs[0].designs[4].copies = 3;
    let plan = planned(&project);
    assert!(codes(&plan).contains(&("design-short", Severity::Serious)));
    assert_eq!(plan.counts.cards, 184, "the other sheets are still planned");
}

/// How often each recipe's layer shows each design, counted on the finished cards.
fn counted(plan: &Plan, batch: usize) -> BTreeMap<(usize, usize, usize), u32> {
    let mut counted = BTreeMap::new();
    for card in plan.cards.iter().filter(|card| card.batch == batch) {
        for part in &card.parts {
            if let PartKind::Patterned { design, .. } = part.kind {
                *counted.entry((card.recipe, part.layer, design)).or_default() += 1;
            }
        }
    }
    counted
}

#[test]
fn prints_are_shared_evenly_or_the_reason_is_told() {
    let project = project();
    let mut fewer = project.clone();
    fewer.batches[0].takes[3].sheets = 1;
    for (project, apart) in [(project, 0), (fewer, 8)] {
        let plan = planned(&project);
        for (index, batch) in plan.shares.iter().enumerate() {
            for ((recipe, layer, design), cards) in counted(&plan, index) {
                let key = |shown: &&cards::pairs::Shown| {
                    (shown.recipe, shown.layer, shown.print.design) == (recipe, layer, design)
                };
                let shown = batch.shown.iter().find(key).unwrap();
                assert_eq!(shown.cards, cards, "recipe {recipe}, layer {layer}, design {design}");
                assert!(shown.there >= cards, "no more cards than pieces");
            }
            for share in &batch.shares {
                assert!(share.most.1 - share.fewest.1 <= 1 || share.reason.is_some(), "{share:?}");
            }
        }
        // The panels of the batch to post: 16 of each, but 8 of the design that gives a sheet less.
        let panels = plan.shares[0].shares.iter().find(|share| share.layer == 1).unwrap();
        assert_eq!(panels.most.1 - panels.fewest.1, apart);
        let told = plan.findings.iter().any(|finding| finding.code == "share-all-used");
        assert_eq!(told, apart > 1);
    }
}

#[test]
fn sixteen_kits_hold_one_card_of_each_design() {
    let plan = planned(&project());
    let kits = plan.shares[1].kits.as_ref().unwrap();
    assert!(kits.dealt.equal);
    assert_eq!(kits.cards.len(), 16);
    let mut all: Vec<u32> = kits.cards.concat();
    all.sort_unstable();
    assert_eq!(all, (97..=192).collect::<Vec<u32>>(), "every card of the batch lies in one kit");
    for kit in &kits.cards {
        let mut designs: Vec<usize> = kit.iter().map(|&number| plan.cards[number as usize - 1].design).collect();
        designs.sort_unstable();
        assert_eq!(designs, [0, 1, 2, 3, 4, 5]);
    }
    assert!(!codes(&plan).iter().any(|(code, _)| code.starts_with("kits-")));
}

#[test]
fn kits_that_cannot_be_alike_are_told_with_the_nearest_numbers() {
    let mut project = project();
    project.batches[1].kits = Some(14);
    let plan = planned(&project);
    let finding = plan.findings.iter().find(|finding| finding.code == "kits-unequal").unwrap();
    let fact = |name: &str| finding.facts.iter().find(|(fact, _)| *fact == name).map(|(_, fact)| fact.clone()).unwrap();
    // 16 of each of six kinds: 8 and 16 divide; 16 - 14 of each of six kinds are over.
    assert_eq!((fact("fewer"), fact("more"), fact("aside")), (8_u32.into(), 16_u32.into(), 12_u32.into()));
    let kits = plan.shares[1].kits.as_ref().unwrap();
    for kind in 0..kits.kinds.len() {
        let of_kind = kits.dealt.cards.iter().map(|kit| kit[kind]);
        assert!(of_kind.clone().max().unwrap() - of_kind.min().unwrap() <= 1);
    }
    let sizes = kits.cards.iter().map(Vec::len);
    assert!(sizes.clone().max().unwrap() - sizes.min().unwrap() <= 1, "no kit has two cards more than another");
    project.batches[1].kits = Some(97);
    assert!(codes(&planned(&project)).contains(&("kits-too-many", Severity::Serious)));
}

/// No card breaks what the project says of prints that meet, judged from the words of the rule.
#[test]
fn prints_meet_as_the_project_says() {
    let mut text = DEMO.replace("partners = [[\"A\", \"C\"], [\"B\", \"F\"], [\"D\", \"E\"]]\n", "");
    assert!(!text.contains("partners"));
    text.push_str("\n[pairs]\none_large = true\nnever = [[\"B\", \"E\"], [\"C\", \"A\"]]\n");
    let project = store::project_file::read(&text).unwrap();
    let plan = planned(&project);
    assert_eq!(plan.cards.len(), 192);
    let faces = |card: &cards::plan::Card| -> Vec<(usize, cards::model::Side)> {
        let face = |part: &CardPart| match part.kind {
            PartKind::Patterned { design, side, .. } => Some((design, side)),
            _ => None,
        };
        card.parts.iter().filter_map(face).collect()
    };
    let large = |&(design, side): &(usize, cards::model::Side)| {
        project.packs[0].designs[design].face(side).print_size == Some(cards::model::PrintSize::Large)
    };
    let mut met = 0;
    for card in &plan.cards {
        let [panel, band] = faces(card)[..] else { continue };
        met += 1;
        assert_ne!(panel.0, band.0, "card {}", card.number);
        let mut designs = [panel.0, band.0];
        designs.sort_unstable();
        assert!(designs != [1, 4] && designs != [0, 2], "card {}", card.number);
        assert!(!(large(&panel) && large(&band)), "card {}", card.number);
    }
    assert_eq!(met, 192, "every card has its band");
}

/// A landscape panel on a sheet that takes five of them only if two lie on their side: 3 upright in a column 4 1/2 wide
/// (3 × 3 = 9), 2 turned in the 3 that is left (2 × 4 1/2 = 9).
const LANDSCAPE: &str = r##"
name = "Landscape"
[[pack]]
name = "Scraps"
sheet = "7 1/2 x 9"
[[pack.design]]
letter = "A"
name = "Boughs"
copies = 2
front = { name = "fruit on boughs", way = "one way" }
[[pack.design]]
letter = "C"
name = "Dots"
copies = 2
front = { name = "dots", way = "any" }
[[cardstock]]
name = "Milk"
color = "#f6f0e2"
sheet = "Letter"
[[recipe]]
name = "Wide"
format = "5 x 3 1/2"
base = "Milk"
[[recipe.layer]]
name = "panel"
size = "4 1/2 x 3"
may_turn = true
[goal]
cards_per_sheet = 5
"##;

#[test]
fn a_print_with_one_way_up_is_never_turned_in_a_landscape_variant() {
    let project = store::project_file::read(LANDSCAPE).unwrap();
    let plan = planned(&project);
    let turned = |design: usize| {
        let of = plan.layouts.iter().filter(move |layout| layout.sheets.iter().any(|used| used.design == design));
        of.map(|layout| layout.pieces.iter().filter(|piece| piece.turned).count()).collect::<Vec<_>>()
    };
    assert_eq!(turned(1), [2], "the dots may lie any way: two of five are turned");
    assert!(turned(0).iter().all(|&turned| turned == 0), "the boughs have one way up");
    assert_eq!(plan.cards.iter().filter(|card| card.design == 1).count(), 10);
    assert!(plan.cards.iter().all(|card| card.design == 1), "five upright boughs do not come out of a sheet");
    assert!(codes(&plan).contains(&("layout-none", Severity::Serious)), "{:?}", codes(&plan));
    // With no way up, the boughs share the layout.
    let text = LANDSCAPE.replace("way = \"one way\"", "way = \"any\"");
    let plan = planned(&store::project_file::read(&text).unwrap());
    assert_eq!(plan.cards.len(), 20);
}
