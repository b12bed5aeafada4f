//! Choices by hand: pieces change places or are turned over, and nothing else changes.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;

use std::collections::BTreeMap;

use cards::Plan;
use cards::model::{Choice, Decided, Lies, Project, Side, Way};
use cards::plan::{Budget, Card, PartKind, plan, refusal};
use measure::{Length, Rect, Size};

fn planned(choices: Vec<Choice>, change: impl Fn(&mut Project)) -> Plan {
    let mut project = drive::project();
    change(&mut project);
    project.choices = choices;
    plan(&project, &mut Budget::nodes(3_000_000))
}

fn choice(card: u32, layer: &str, decided: Decided) -> Choice {
    Choice { card, layer: layer.to_owned(), decided }
}

/// Design, side and mat of every piece of a card, by the name of its layer.
fn made_of(plan: &Plan, number: u32) -> BTreeMap<String, (usize, Side, u32)> {
    let card = plan.cards.iter().find(|card| card.number == number).unwrap();
    let piece = |part: &cards::plan::CardPart| {
        let name = plan.project.recipes[card.recipe].layers[part.layer].name.clone();
        match part.kind {
            PartKind::Patterned { design, side, sheet, .. } => Some((name, (design, side, sheet))),
            _ => None,
        }
    };
    card.parts.iter().filter_map(piece).collect()
}

/// Every patterned piece that is used, each by the sheet it is cut from, counted.
fn used(cards: &[Card]) -> BTreeMap<(usize, usize, usize, u32), u32> {
    let mut used = BTreeMap::new();
    for part in cards.iter().flat_map(|card| &card.parts) {
        if let PartKind::Patterned { layout, piece, design, sheet, .. } = part.kind {
            *used.entry((layout, piece, design, sheet)).or_default() += 1;
        }
    }
    used
}

fn codes(plan: &Plan) -> Vec<&'static str> {
    plan.findings.iter().map(|finding| finding.code).filter(|code| code.starts_with("choice-")).collect()
}

#[test]
fn two_bands_change_places_and_every_piece_is_still_used_once() {
    let before = planned(Vec::new(), |_| {});
    // Cards 1 to 8 are of A with bands of C; 9 to 16 of B with bands of F.
    let after = planned(vec![choice(1, "band", Decided::Swap(9))], |_| {});
    assert_eq!(codes(&after), [""; 0]);
    assert_eq!(made_of(&after, 1)["band"].0, made_of(&before, 9)["band"].0);
    assert_eq!(made_of(&after, 9)["band"].0, made_of(&before, 1)["band"].0);
    assert_eq!(made_of(&after, 1)["panel"], made_of(&before, 1)["panel"]);
    assert_eq!(used(&after.cards), used(&before.cards));
    assert!(used(&after.cards).values().all(|&times| times == 1));
    // Twice is as it was.
    let twice = planned(vec![choice(1, "band", Decided::Swap(9)), choice(9, "band", Decided::Swap(1))], |_| {});
    assert_eq!(twice.cards, before.cards);
}

#[test]
fn a_mat_follows_its_panel() {
    let before = planned(Vec::new(), |_| {});
    let after = planned(vec![choice(1, "panel", Decided::Swap(41))], |_| {});
    assert_eq!(codes(&after), [""; 0]);
    let mat = |plan: &Plan, number: usize| plan.cards[number - 1].parts[0].kind.clone();
    assert_eq!((mat(&after, 1), mat(&after, 41)), (mat(&before, 41), mat(&before, 1)));
    assert_eq!((after.cards[0].design, after.cards[40].design), (5, 0));
    assert_eq!(used(&after.cards), used(&before.cards));
    assert_eq!(after.counts, before.counts);
}

#[test]
fn a_piece_turned_over_shows_its_other_face_and_no_count_changes() {
    let before = planned(Vec::new(), |_| {});
    let after = planned(vec![choice(3, "panel", Decided::Shows(Side::Back))], |_| {});
    assert_eq!(made_of(&after, 3)["panel"].1, Side::Back);
    assert_eq!(used(&after.cards), used(&before.cards));
    assert_eq!((&after.counts, &after.stocks), (&before.counts, &before.stocks));
    let back = planned(
        vec![choice(3, "panel", Decided::Shows(Side::Back)), choice(3, "panel", Decided::Shows(Side::Front))],
        |_| {},
    );
    assert_eq!(back.cards, before.cards);
}

#[test]
fn what_breaks_the_rule_is_told_and_left() {
    let before = planned(Vec::new(), |_| {});
    for (made, code) in [
        // A's panel with a band of A, which lies on card 17.
        (choice(1, "band", Decided::Swap(17)), "choice-same-print"),
        (choice(1, "band", Decided::Swap(1)), "choice-same-card"),
        (choice(1, "band", Decided::Swap(490)), "choice-no-card"),
        (choice(0, "band", Decided::Shows(Side::Back)), "choice-no-card"),
        (choice(1, "mat", Decided::Swap(2)), "choice-no-piece"),
        (choice(1, "nothing", Decided::Shows(Side::Back)), "choice-no-piece"),
    ] {
        assert_eq!(refusal(&before, &made).map(|finding| finding.code), Some(code), "{made:?}");
        let after = planned(vec![made], |_| {});
        assert_eq!(codes(&after), [code]);
        assert_eq!(after.cards, before.cards);
    }
    assert_eq!(refusal(&before, &choice(1, "band", Decided::Swap(9))), None);
}

#[test]
fn a_piece_of_another_size_is_not_taken() {
    let free = |project: &mut Project| {
        let mut other = project.recipes[0].clone();
        other.name = "Short".into();
        if let cards::model::Material::Patterned { height, prefer, .. } = &mut other.layers[1].material {
            *height = cards::model::Range::exactly(drive::length("3"));
            prefer.height = drive::length("3");
        }
        (other.least, project.recipes[0].least) = (2, 2);
        project.recipes.push(other);
        project.goal.cards_per_sheet = None;
    };
    let plan = planned(Vec::new(), free);
    let of = |recipe: usize| plan.cards.iter().find(|card| card.recipe == recipe).expect("a card of each").number;
    let made = choice(of(0), "panel", Decided::Swap(of(1)));
    assert_eq!(refusal(&plan, &made).map(|finding| finding.code), Some("choice-other-size"));
}

#[test]
fn a_recipe_keeps_to_its_designs() {
    let plan = planned(Vec::new(), |project| {
        let mut other = project.recipes[0].clone();
        other.name = "Only F".into();
        other.designs = vec!["F".into()];
        project.recipes[0].designs = ["A", "B", "C", "D", "E"].map(str::to_owned).to_vec();
        project.recipes.push(other);
    });
    let made = choice(1, "panel", Decided::Swap(41));
    assert_eq!(refusal(&plan, &made).map(|finding| finding.code), Some("choice-other-designs"));
}

#[test]
fn a_print_with_a_top_does_not_lie_on_its_side() {
    let mut plan = planned(Vec::new(), |project| {
        for design in &mut project.packs[0].designs {
            (design.front.way, design.back.way, design.up) = (Way::Any, Way::OneWay, Side::Front);
        }
    });
    let asked =
        |plan: &Plan, side| refusal(plan, &choice(1, "panel", Decided::Shows(side))).map(|finding| finding.code);
    assert_eq!(asked(&plan, Side::Back), None);
    let part = plan.cards[0].parts.iter().find(|part| part.layer == 1).unwrap();
    let PartKind::Patterned { layout, piece, .. } = part.kind else { panic!("the panel is no paper") };
    plan.layouts[layout].pieces[piece].turned = true;
    assert_eq!((asked(&plan, Side::Back), asked(&plan, Side::Front)), (Some("choice-sideways"), None));
}

#[test]
fn a_piece_lies_on_the_other_side_where_the_sheet_turned_over_has_it() {
    let inches = |x: i64, y: i64, w: i64, h: i64| {
        Rect::new(Length::INCH * x, Length::INCH * y, Size::new(Length::INCH * w, Length::INCH * h))
    };
    let sheet = Size::new(Length::INCH * 12, Length::INCH * 12);
    let mut design = drive::project().packs[0].designs[0].clone();
    for (lies, behind) in [(Lies::LikeABook, inches(9, 1, 3, 4)), (Lies::HeadToFoot, inches(0, 7, 3, 4))] {
        design.lies = lies;
        assert_eq!(design.on_other_side(inches(0, 1, 3, 4), sheet), behind);
        let piece = inches(2, 5, 3, 4);
        assert_eq!(design.on_other_side(design.on_other_side(piece, sheet), sheet), piece, "turned over twice");
    }
}

#[test]
fn a_mat_is_cut_from_another_cardstock_and_nothing_else_changes() {
    let before = planned(Vec::new(), |_| {});
    let mat = |plan: &Plan, number: usize| {
        let part = |part: &&cards::plan::CardPart| matches!(part.kind, PartKind::Cardstock(_));
        plan.cards[number - 1].parts.iter().find(part).unwrap().kind.clone()
    };
    let PartKind::Cardstock(was) = mat(&before, 1) else { panic!() };
    let fresh = (1..before.project.cardstocks.len()).find(|index| *index != was).unwrap();
    let after = planned(vec![choice(1, "mat", Decided::CutFrom(fresh))], |_| {});
    assert_eq!((mat(&after, 1), codes(&after)), (PartKind::Cardstock(fresh), vec![]));
    assert_eq!(after.cards[1..], before.cards[1..]);
    let count = |plan: &Plan, index: usize| {
        let of = plan.stocks.iter().filter(|stock| stock.cardstock == index).flat_map(|stock| &stock.cuts);
        of.map(|cut| cut.count).sum::<u32>()
    };
    assert_eq!((count(&after, was), count(&after, fresh)), (count(&before, was) - 1, count(&before, fresh) + 1));
    let told =
        planned(vec![choice(9_999, "mat", Decided::CutFrom(0)), choice(1, "panel", Decided::CutFrom(0))], |_| {});
    assert_eq!(codes(&told), ["choice-no-card", "choice-no-plain"]);
}
