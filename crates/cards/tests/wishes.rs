//! What a maker may ask for: scraps, pins, spares, free sizes, several recipes, millimetres, several sheet sizes.
#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;

use std::collections::BTreeSet;

use cards::Project;
use cards::model::{Anchor, Fold, Grain, Layer, Material, Placement, Range, Recipe, StockSheet};
use cards::plan::{LayoutGrade, PartKind, Plan, plan};
use cutting::Budget;
use drive::{length, project, size};
use measure::{Length, Mark, Rect, Size, Unit};

fn planned(project: &Project) -> Plan {
    let plan = plan(project, &mut Budget::nodes(20_000_000));
    assert!(plan.findings.iter().all(|finding| finding.code != "internal-check"), "{:?}", plan.findings);
    plan
}

fn has(plan: &Plan, code: &str) -> bool {
    plan.findings.iter().any(|finding| finding.code == code)
}

fn exactly(project: &mut Project) {
    for layer in &mut project.recipes[0].layers {
        if let Material::Patterned { width, height, prefer, .. } = &mut layer.material {
            (*width, *height) = (Range::exactly(prefer.width), Range::exactly(prefer.height));
        }
    }
}

#[test]
fn a_scrap_gives_what_it_can() {
    let mut project = project();
    exactly(&mut project);
    let mut scrap = project.packs[0].clone();
    scrap.name = "Scrap".into();
    scrap.sheet = size("6 x 6");
    scrap.designs.truncate(1);
    scrap.designs[0].letter = "S".into();
    project.packs.push(scrap);
    let plan = planned(&project);
    // Common practice: a pad sheet of 6 × 6 gives a quarter of a 12 × 12 one.
    assert_eq!((plan.layouts.len(), plan.counts.cards), (2, 50));
    assert_eq!((plan.layouts[1].recipe_counts.as_slice(), plan.layouts[1].waste), (&[2][..], 0));
    assert!(has(&plan, "sheet-gives-fewer") && has(&plan, "partner-missing"));
    // A scrap that gives no card is told of, and the rest of the plan stands.
    let mut small = project.clone();
    small.packs[1].sheet = size("2 x 2");
    let plan = planned(&small);
    assert_eq!(plan.counts.cards, 48);
    assert!(has(&plan, "layout-too-much-area"));
    assert!(plan.findings.iter().all(|finding| finding.severity < cards::Severity::Serious));
    // With enough cards from the first pack the scrap is not touched.
    project.goal.cards = Some(40);
    let plan = planned(&project);
    assert_eq!((plan.layouts.len(), plan.counts.cards, plan.counts.paper_sheets), (1, 40, 5));
}

#[test]
fn a_pinned_piece_stays_where_it_is() {
    let mut project = project();
    exactly(&mut project);
    let place = Rect::new(length("9"), length("7 1/2"), size("3 x 4 1/2"));
    project.goal.pins.push(("Twins".into(), "panel".into(), place.x, place.y, place.size));
    let plan = planned(&project);
    assert_eq!(plan.counts.cards, 48, "{:?}", plan.findings);
    for layout in &plan.layouts {
        assert!(layout.pieces.iter().any(|piece| piece.rect == place && piece.layer == 1));
        assert_eq!(layout.waste, 0);
    }
}

#[test]
fn spares_are_cut_and_belong_to_no_card() {
    let mut project = project();
    exactly(&mut project);
    project.goal.cards_per_sheet = Some(7);
    project.goal.spares.push(("Twins".into(), "band".into(), 1));
    let plan = planned(&project);
    let spare: Vec<_> = plan.layouts[0].pieces.iter().filter(|piece| piece.card.is_none()).collect();
    assert_eq!((spare.len(), spare[0].layer, plan.counts.cards), (1, 2, 42));
    assert_eq!((plan.counts.paper_pieces, plan.counts.mats), (6 * 15, 42));
}

#[test]
fn mats_follow_pieces_of_free_sizes() {
    let mut project = project();
    for layer in &mut project.recipes[0].layers {
        if let Material::Patterned { free_size, .. } = &mut layer.material {
            *free_size = true;
        }
    }
    project.packs[0].sheet = size("12 1/4 x 12");
    let plan = planned(&project);
    assert_eq!((plan.counts.cards, plan.layouts[0].waste), (48, 0), "{:?}", plan.findings);
    let (mut panels, mut mats) = (Vec::new(), Vec::new());
    for card in &plan.cards {
        panels.extend(card.parts.iter().filter(|part| part.layer == 1).map(|part| part.rect.size));
        mats.extend(card.parts.iter().filter(|part| part.layer == 0).map(|part| part.rect.size));
    }
    let quarter = length("1/4");
    let follow: Vec<Size> = panels.iter().map(|s| Size::new(s.width + quarter, s.height + quarter)).collect();
    assert_eq!(mats, follow);
    let cut: u32 = plan.stocks.iter().flat_map(|s| &s.cuts).filter(|c| c.layer == Some(0)).map(|c| c.count).sum();
    assert_eq!(cut, 48);
}

/// A recipe of pieces side by side on a flat front.
fn tiles(name: &str, pieces: &[&str], cards: u32) -> Recipe {
    let layer = |(index, text): (usize, &&str)| {
        let size = size(text);
        Layer {
            name: format!("tile {index}"),
            material: Material::Patterned {
                width: Range::exactly(size.width),
                height: Range::exactly(size.height),
                prefer: size,
                free_size: false,
                may_turn: false,
                from_partner: false,
                die: None,
            },
            placement: Placement {
                on: None,
                anchor: Anchor::TopLeft,
                right: Length::ZERO,
                down: Length::ZERO,
                overlap: true,
            },
            stamped: None,
        }
    };
    Recipe {
        name: name.into(),
        finished: size("4 1/4 x 5 1/2"),
        fold: Fold::Side,
        base: 0,
        inside: None,
        layers: pieces.iter().enumerate().map(layer).collect(),
        designs: Vec::new(),
        least: cards,
        most: Some(cards),
    }
}

#[test]
fn four_recipes_share_one_sheet_without_waste() {
    let mut project = project();
    project.recipes = vec![
        tiles("full", &["4 x 5 1/4"], 3),
        tiles("two thirds", &["4 x 3 3/8"], 2),
        tiles("side and tile", &["2 x 5 1/4", "2 x 1 1/2"], 2),
        tiles("two sides and band", &["2 x 5 1/4", "2 x 5 1/4", "4 x 1 1/2"], 1),
    ];
    let plan = planned(&project);
    let layout = &plan.layouts[0];
    assert_eq!((layout.waste, layout.grade), (0, LayoutGrade::ProvenBest), "{:?}", plan.findings);
    assert_eq!(layout.recipe_counts, [3, 2, 2, 1]);
    assert_eq!(plan.counts.cards_by_recipe, [18, 12, 12, 6]);
    // 8 1/2 × 5 1/2 bases come two from a Letter sheet: 24 sheets.
    assert_eq!(plan.stocks[0].sheet_count, 24);
    for card in &plan.cards {
        assert_eq!(card.parts.len(), plan.project.recipes[card.recipe].layers.len());
    }
}

#[test]
fn millimetres_on_a_squared_sheet() {
    let mut project = project();
    let mm = |width: i64, height: i64| Size::new(Length::mm(width), Length::mm(height));
    (project.unit, project.mark) = (Unit::Millimetre, Mark::from_step(Length::MM).unwrap());
    project.packs[0].sheet = size("12 x 12");
    let recipe = &mut project.recipes[0];
    recipe.finished = mm(88, 126);
    for layer in &mut recipe.layers {
        match &mut layer.material {
            Material::Patterned { width, height, prefer, .. } => {
                *prefer = if layer.name == "panel" { mm(76, 114) } else { mm(76, 38) };
                (*width, *height) = (Range::exactly(prefer.width), Range::exactly(prefer.height));
            }
            Material::Mat { border, .. } => *border = Length::mm(3),
            _ => {}
        }
    }
    let plan = planned(&project);
    let layout = &plan.layouts[0];
    assert_eq!((plan.counts.cards, layout.usable.size, layout.waste), (48, mm(304, 304), 0));
    assert!(has(&plan, "sheet-not-on-grid"));
    // The squaring cut is in the steps: they start from the whole 304.8 mm sheet.
    let (width, height) = layout.cut_plan.sheet;
    assert_eq!(layout.cut_step * i64::from(width), length("12"));
    assert_eq!(layout.cut_step * i64::from(height), length("12"));
}

#[test]
fn partners_swap_their_bands_and_no_band_is_left_over() {
    let plan = planned(&project());
    let mut bands = BTreeSet::new();
    for card in &plan.cards {
        for part in &card.parts {
            if let PartKind::Patterned { design, sheet, piece, .. } = part.kind {
                let partner = [2, 5, 0, 4, 3, 1][card.design];
                assert_eq!(design, if part.layer == 2 { partner } else { card.design });
                assert!(bands.insert((design, sheet, piece)));
            }
        }
    }
    assert_eq!(bands.len(), 96);
}

/// A sheet of cardstock sold singly at so many pence.
fn priced_sheet(text: &str, cents: i64, count: Option<u32>) -> StockSheet {
    let amount = rust_decimal::Decimal::new(cents, 2);
    let price = Some(cards::model::Price { amount, currency: "GBP".into(), date: None });
    StockSheet {
        size: size(text),
        count,
        grain: Grain::Unknown,
        price,
        pack_of: 1,
        unusable: cards::model::Edges::default(),
    }
}

#[test]
fn a_cheaper_sheet_size_is_used_where_it_does() {
    let mut project = project();
    project.cardstocks[0].sheets = vec![priced_sheet("8 1/2 x 11", 20, Some(10)), priced_sheet("12 x 12", 60, None)];
    let plan = planned(&project);
    let milk = &plan.stocks[0];
    let used = |size: usize| milk.sheets.iter().filter(|s| s.size == size).map(|s| s.times).sum::<u32>();
    // Two bases from a Letter sheet at 0.20, three from a 12 × 12 one at 0.60: at most ten Letter sheets, so
    // ten of the others for the 28 bases left; those give 30, and nine Letter sheets do.
    assert_eq!((used(0), used(1)), (9, 10), "{:?}", milk.grade);
    assert!(!has(&plan, "cardstock-short"));
    let line = plan.costs.lines.iter().find(|line| line.name == "Milk").unwrap();
    assert_eq!(line.used, Some(rust_decimal::Decimal::new(780, 2)));
}

#[test]
fn nothing_is_cut_from_the_unusable_edges_of_cardstock() {
    let mut project = project();
    // Half an inch off the long edge: two bases of 7 x 5 still come from what is left of Letter, 8 1/2 x 10 1/2.
    let whole = planned(&project).stocks[0].sheet_count;
    project.cardstocks[0].sheets[0].unusable.bottom = length("1/2");
    let plan = planned(&project);
    assert_eq!(plan.stocks[0].sheet_count, whole);
    let sheet = &plan.stocks[0].sheets[0];
    assert!(sheet.pieces.iter().all(|piece| piece.rect.bottom() <= length("10 1/2")));
    let edges = sheet.cut_plan.parts.iter().filter(|part| part.fate == cutting::steps::Fate::Edge).count();
    assert_eq!(edges, 1, "the edge is cut off as such");
    // Two inches off: one base a sheet.
    project.cardstocks[0].sheets[0].unusable.top = length("1 3/4");
    let plan = planned(&project);
    assert!(plan.stocks[0].sheet_count > whole, "{} {whole}", plan.stocks[0].sheet_count);
    // Nothing left: said so, and no plan of it.
    project.cardstocks[0].sheets[0].unusable.left = length("8 1/2");
    let plan = planned(&project);
    assert!(has(&plan, "cardstock-no-sheet") && plan.stocks[0].sheets.is_empty());
}

/// Milk from these sheets only: size and how many there are, all at one price unless it is an offcut.
fn milk_from(sheets: &[(&str, Option<u32>, i64)], strip: &str) -> Plan {
    let mut project = project();
    project.trimmer.smallest_strip = length(strip);
    let sheet = |&(text, count, cents): &(&str, Option<u32>, i64)| priced_sheet(text, cents, count);
    project.cardstocks[0].sheets = sheets.iter().map(sheet).collect();
    planned(&project)
}

fn used(plan: &Plan, size: usize) -> u32 {
    plan.stocks[0].sheets.iter().filter(|s| s.size == size).map(|s| s.times).sum()
}

#[test]
fn sheets_that_leave_a_narrow_strip_are_left_where_others_cost_no_more() {
    // A base of 7 × 5 leaves a strip of 1/4 of the one and none so narrow of the other; a band gives greeting strips.
    let sheets = [("7 1/4 x 5 3/4", None, 20), ("7 x 6 1/2", None, 20)];
    let heedless = milk_from(&sheets, "1/8");
    let heeded = milk_from(&sheets, "1/2");
    assert!(used(&heedless, 0) > 0, "without the rule the first size is taken");
    assert_eq!(used(&heeded, 0), 0, "with it, none");
    assert!(!has(&heeded, "cardstock-strip-narrow"));
    assert_eq!(heeded.stocks[0].sheet_count, heedless.stocks[0].sheet_count);
}

#[test]
fn a_narrow_strip_that_saves_sheets_stays_and_is_told() {
    // Two bases of 7 × 5 are 10 wide: a strip of 1/4 is left, and one a sheet would take twice as many.
    let plan = milk_from(&[("10 1/4 x 7", None, 20)], "1/2");
    let told = plan.findings.iter().find(|finding| finding.code == "cardstock-strip-narrow").unwrap();
    let fact = |name: &str| told.facts.iter().find(|fact| fact.0 == name).map(|fact| fact.1.clone());
    assert_eq!((fact("width"), fact("least")), (Some(length("1/4").into()), Some(length("1/2").into())));
    assert!(!has(&milk_from(&[("10 1/4 x 7", None, 20)], "1/4"), "cardstock-strip-narrow"));
}

#[test]
fn offcuts_are_used_first_and_are_never_bought() {
    // A sheet that cost nothing, of which there are so many, is an offcut: one base each from five of them.
    let sheets = [("8 1/2 x 11", None, 20), ("7 x 5", Some(5), 0)];
    let plan = milk_from(&sheets, "1/2");
    assert_eq!(used(&plan, 1), 5);
    assert!(!has(&plan, "cardstock-short"));
    let few = milk_from(&[("8 1/2 x 11", Some(1), 20), ("7 x 5", Some(5), 0)], "1/2");
    assert_eq!(used(&few, 1), 5, "sheets are lacking, offcuts are not bought");
    assert!(has(&few, "cardstock-short"));
}

#[test]
fn without_partners_other_prints_are_shared_evenly() {
    let mut project = project();
    project.goal.partners.clear();
    let plan = planned(&project);
    let (mut met, mut bands) = ([[0; 6]; 6], BTreeSet::new());
    for card in &plan.cards {
        for part in &card.parts {
            if let PartKind::Patterned { design, sheet, piece, .. } = part.kind {
                assert!(bands.insert((design, sheet, piece)), "every piece once");
                met[card.design][design] += u32::from(part.layer == 2);
            }
        }
    }
    // Eight cards of each of six designs: each takes one or two bands of each of the five others, none of its own.
    for (design, row) in met.iter().enumerate() {
        assert_eq!((row[design], row.iter().sum::<u32>()), (0, 8));
        let others = row.iter().enumerate().filter(|&(other, _)| other != design);
        assert!(others.clone().all(|(_, count)| (1..=2).contains(count)), "{met:?}");
    }
    assert_eq!(bands.len(), 96);
    // With one design only there is no other print: it is told, and the cards keep their own.
    project.packs[0].designs.truncate(1);
    let plan = planned(&project);
    assert!(has(&plan, "pairs-short") && plan.cards.iter().all(|card| card.parts.len() == 5), "{:?}", plan.findings);
}
