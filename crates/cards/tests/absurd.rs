//! Projects that nobody can carry out: told in findings, never a panic.
#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;

use cards::model::{Anchor, Collage, Fold, Material, Range};
use cards::plan::{Plan, plan};
use cards::{Project, Severity};
use cutting::Budget;
use drive::{length, project, size};
use measure::{Length, Size};

fn changed(change: impl Fn(&mut Project)) -> Plan {
    let mut project = project();
    change(&mut project);
    plan(&project, &mut Budget::nodes(2_000_000))
}

fn codes(plan: &Plan) -> Vec<&'static str> {
    plan.findings.iter().map(|finding| finding.code).collect()
}

fn serious(plan: &Plan) -> bool {
    plan.findings.iter().any(|finding| finding.severity == Severity::Serious)
}

fn panel(project: &mut Project) -> (&mut Range, &mut Range, &mut Size) {
    match &mut project.recipes[0].layers[1].material {
        Material::Patterned { width, height, prefer, .. } => (width, height, prefer),
        _ => unreachable!("the panel is patterned"),
    }
}

/// Each change with the finding it must bring.
#[test]
fn every_impossible_wish_is_named() {
    let check = |code: &str, change: &dyn Fn(&mut Project)| {
        let plan = changed(change);
        assert!(serious(&plan), "{code}: {:?}", plan.findings);
        assert!(codes(&plan).contains(&code), "{code} is not among {:?}", codes(&plan));
        assert!(!codes(&plan).contains(&"internal-check"), "{code}");
    };
    check("sheet-too-small", &|p| p.packs[0].unusable.left = length("12"));
    check("sheet-too-large", &|p| p.packs[0].sheet = Size::new(Length::mm(90_000_000), Length::mm(300)));
    check("layout-too-much-area", &|p| p.goal.cards_per_sheet = Some(40));
    check("layout-too-much-area", &|p| p.goal.cards_per_sheet = Some(u32::MAX));
    check("layout-piece-too-large", &|p| {
        p.recipes[0].finished = size("20 x 20");
        p.goal.cards_per_sheet = Some(1);
        *panel(p).0 = Range::exactly(length("13"));
    });
    check("piece-not-on-mark", &|p| *panel(p).0 = Range::exactly(length("3 1/16")));
    check("recipe-bounds", &|p| (p.recipes[0].least, p.recipes[0].most) = (u32::MAX, Some(0)));
    check("goal-no-mix", &|p| p.recipes[0].least = 9);
    check("goal-no-mix", &|p| p.recipes[0].most = Some(7));
    check("no-paper-piece", &|p| p.recipes[0].layers.clear());
    check("no-paper-piece", &|p| p.recipes.clear());
    check("too-few-sheets", &|p| p.goal.cards = Some(49));
    check("batch-too-large", &|p| {
        p.goal.cards = Some(u32::MAX);
        p.goal.overs = u32::MAX;
        p.packs[0].designs.iter_mut().for_each(|d| (d.copies, d.use_sheets) = (u32::MAX, None));
    });
    check("batch-too-large", &|p| {
        p.packs[0].designs.iter_mut().for_each(|d| (d.copies, d.use_sheets) = (u32::MAX, None));
    });
    check("greeting-too-large", &|p| p.greetings[0].inked = size("3 1/8 x 3/8"));
    check("envelope-too-small", &|p| p.envelope.as_mut().unwrap().size = size("3 1/2 x 5"));
    check("cardstock-no-sheet", &|p| p.cardstocks[0].sheets.clear());
    check("cardstock-no-sheet", &|p| p.cardstocks[0].sheets[0].size = size("0 x 0"));
    check("base-fits-no-sheet", &|p| p.cardstocks[0].sheets[0].size = size("6 x 6"));
    check("piece-fits-no-sheet", &|p| p.cardstocks[1].sheets[0].size = size("3 x 4"));
    check("inside-fits-no-sheet", &|p| p.recipes[0].inside = Some((size("9 x 12"), 0)));
    check("cardstock-short", &|p| p.cardstocks[0].sheets[0].count = Some(23));
    check("cardstock-short", &|p| p.cardstocks[0].sheets[0].count = Some(0));
    check("cardstock-too-fine", &|p| p.cardstocks[0].sheets[0].size.width += Length::from_ticks(1));
}

#[test]
fn spoilt_looks_are_warned_of() {
    let check = |code: &str, change: &dyn Fn(&mut Project)| {
        let plan = changed(change);
        assert!(codes(&plan).contains(&code), "{code} is not among {:?}", codes(&plan));
        assert_eq!(plan.cards.len(), 48, "{code}");
    };
    check("layer-runs-over", &|p| p.recipes[0].layers[4].placement.right = length("1"));
    check("layer-hidden", &|p| p.recipes[0].layers[3].placement.anchor = Anchor::Middle);
    check("border-narrow", &|p| match &mut p.recipes[0].layers[0].material {
        Material::Mat { border, .. } => *border = length("1/32"),
        _ => unreachable!("the mat is a mat"),
    });
    check("greeting-tight", &|p| p.greetings[0].inked = size("2 7/8 x 3/8"));
    check("envelope-tight", &|p| p.envelope.as_mut().unwrap().size = size("3 5/8 x 5 1/8"));
    check("base-longer-than-trimmer", &|p| p.trimmer.longest_cut = length("6"));
    check("strip-narrow", &|p| p.trimmer.smallest_strip = length("2"));
    check("partner-missing", &|p| p.goal.partners.clear());
    check("partner-twice", &|p| p.goal.partners.push(("A".into(), "B".into())));
    check("sets-not-whole", &|p| p.goal.set_of = 7);
    check("sheet-not-on-grid", &|p| p.packs[0].sheet = size("12 1/16 x 12"));
    check("spare-unknown", &|p| p.goal.spares.push(("Twins".into(), "mat".into(), 1)));
    check("pin-dropped", &|p| {
        p.goal.pins.push(("Twins".into(), "panel".into(), length("1/16"), Length::ZERO, size("3 x 4 1/2")));
    });
    check("currencies-differ", &|p| p.packs[0].price.as_mut().unwrap().currency = "EUR".into());
    check("price-missing", &|p| p.packs[0].price = None);
    check("panels-cut", &|p| {
        let face = &mut p.packs[0].designs[3].back;
        face.collage = Some(Collage { columns: vec![length("3"); 4], rows: vec![length("4"); 3], panels: Vec::new() });
    });
    check("inside-too-large", &|p| p.recipes[0].inside = Some((size("7 1/4 x 4 3/4"), 0)));
    check("grain-across-fold", &|p| {
        // 10 × 5 in comes out of 5 × 11 in only with its short edge, the fold, across the long grain.
        p.recipes[0].finished = size("5 x 5");
        p.cardstocks[0].sheets[0].size = size("5 x 11");
    });
}

#[test]
fn sizes_that_make_no_sense_do_not_panic() {
    let longest = Length::mm(100_000);
    for text in ["0", "1/128", "3000"] {
        for fold in [Fold::Side, Fold::Top, Fold::Gate, Fold::Zed, Fold::Flat] {
            let plan = changed(|p| {
                p.recipes[0].fold = fold;
                p.recipes[0].finished = Size::new(length(text), length(text));
            });
            assert!(serious(&plan) || text != "0", "{text}");
        }
    }
    let plan = changed(|p| p.packs[0].sheet = Size::new(longest, longest));
    assert_eq!(plan.counts.cards as usize, plan.cards.len());
    let plan = changed(|p| p.packs[0].sheet = Size::new(-longest, longest));
    assert!(serious(&plan));
    let plan = changed(|p| p.trimmer.longest_cut = Length::ZERO);
    assert_eq!(plan.cards.len(), 48);
    let plan = changed(|p| p.trimmer.smallest_strip = longest);
    assert_eq!(plan.cards.len(), 48);
    let plan = changed(|p| p.goal.spares.push(("Twins".into(), "panel".into(), u32::MAX)));
    assert!(serious(&plan));
    let plan = changed(|p| p.goal.alternatives = u32::MAX);
    assert_eq!(plan.cards.len(), 48);
    let plan = changed(|p| match &mut p.recipes[0].layers[4].material {
        Material::Strip { foam_squares, .. } => *foam_squares = u32::MAX,
        _ => unreachable!("the strip is a strip"),
    });
    assert_eq!(plan.counts.foam_squares, u32::MAX);
    let plan = changed(|p| p.packs.clear());
    assert!(plan.cards.is_empty() && serious(&plan), "{:?}", plan.findings);
    let plan = changed(|p| p.recipes[0].layers[0].placement.on = Some(1));
    assert_eq!(plan.cards.len(), 48);
}

#[test]
fn layers_that_follow_one_another_in_a_circle_are_still_placed() {
    let plan = changed(|p| {
        for layer in [0, 3] {
            p.recipes[0].layers[layer].material =
                Material::Mat { follows: 3 - layer, border: length("1/8"), cardstock: vec![(None, 1)] };
        }
    });
    assert!(serious(&plan), "{:?}", plan.findings);
}
