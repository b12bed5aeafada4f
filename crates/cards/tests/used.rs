//! What one card uses up, against sums done by hand.
//!
//! Source: the worked figures of the card drive (24 sheets, 192 cards), each line written out below; the rules of the
//! sums (sheet ÷ cards, sheet ÷ pieces, inches ÷ spool, line length ÷ roll, uses of a pad) are common practice.
#![allow(clippy::unwrap_used, clippy::cast_possible_truncation, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;

use cards::Project;
use cards::model::{Material, Price, Supplies, Supply, Tape};
use cards::plan::{CostOf, Costs, Plan, plan, used_for};
use cutting::Budget;
use drive::{length, project};
use measure::Length;
use rust_decimal::Decimal;

fn amount(text: &str) -> Decimal {
    text.parse().unwrap()
}

fn price(text: &str) -> Option<Price> {
    Some(Price { amount: amount(text), currency: "GBP".into(), date: Some("2026-11-01".into()) })
}

fn supplies() -> Supplies {
    let supply = |name: &str, lasts, worth| Some(Supply { name: name.into(), lasts, price: price(worth) });
    let tape =
        Tape { name: "Tape".into(), roll: Some(Length::mm(12_000)), price: price("3.60"), two_lines_from: length("2") };
    Supplies {
        tape: Some(tape),
        foam: supply("Foam squares", 300, "2.50"),
        envelopes: supply("Envelopes", 50, "6.50"),
        ink_pad: supply("Slate pad", 1_000, "8.00"),
        stamps: supply("Stamps", 300, "22.00"),
    }
}

/// All 24 sheets, with so much ribbon in a card.
fn drive(ribbon: &str) -> Project {
    let mut project = project();
    project.packs[0].designs.iter_mut().for_each(|design| design.use_sheets = None);
    project.supplies = supplies();
    for layer in &mut project.recipes[0].layers {
        if let Material::Ribbon { length: laid, .. } = &mut layer.material {
            *laid = length(ribbon);
        }
    }
    project
}

fn planned(project: &Project) -> Plan {
    plan(project, &mut Budget::nodes(20_000_000))
}

fn each(plan: &Plan) -> Decimal {
    plan.costs.total_used.unwrap() / Decimal::from(plan.counts.cards)
}

fn used(costs: &Costs, of: CostOf) -> Decimal {
    costs.lines.iter().find(|line| line.of == of).and_then(|line| line.used).unwrap()
}

#[test]
fn a_card_uses_sixty_nine_pence_and_with_a_bow_seventy_six() {
    // Paper 14.40/24/8, base 11.00/50/2, mat 4.80/12/5 (the strip comes out of the base's rest), ribbon 4/360 of 3.20,
    // tape 21 1/2 in of 12 m at 3.60, foam 2/300 of 2.50, envelope 6.50/50, ink 8.00/1000, stamp 22.00/300.
    let tape = amount("3.60") * amount("21.5") * amount("25.4") / amount("12000");
    let ribbon = |inches: u32| amount("3.20") * Decimal::from(inches) / Decimal::from(360);
    let rest = amount("0.075") + amount("0.11") + amount("0.08") + amount("5.00") / amount("300");
    let rest = rest + amount("0.13") + amount("0.008") + amount("22.00") / amount("300");
    for (inches, told) in [(4, "0.69"), (12, "0.76")] {
        let plan = planned(&drive(&inches.to_string()));
        assert_eq!(plan.counts.cards, 192);
        let by_hand = rest + tape + ribbon(inches);
        let found = each(&plan);
        assert!((found - by_hand).abs() < amount("0.000000001"), "{found} is not {by_hand}");
        assert_eq!(found.round_dp(2), amount(told));
        assert!(!plan.costs.at_least);
    }
}

#[test]
fn tape_foam_and_envelopes_are_counted_in_whole_packs() {
    let plan = planned(&drive("4"));
    // Two lines of 4 1/2 on the panel, two of 4 3/4 on the mat, one of 3 on the band: 21 1/2 in a card.
    assert_eq!(plan.counts.tape, Some((length("21 1/2") * 192, Some(9))));
    assert_eq!((plan.counts.foam_squares, plan.counts.foam_packs), (384, Some(2)));
    assert_eq!(plan.counts.envelopes, Some((192, Some(4))));
    assert_eq!(plan.counts.impressions, 192);
    // Not told of: not counted, and nothing is said to be missing.
    let plain = planned(&project());
    assert_eq!((plain.counts.tape, plain.counts.foam_packs), (None, None));
    assert_eq!(plain.counts.envelopes, Some((48, None)));
    assert!(!plain.costs.at_least);
}

#[test]
fn a_supply_without_a_price_makes_the_total_read_at_least() {
    let whole = planned(&drive("4"));
    let mut unknown = drive("4");
    unknown.supplies.tape.as_mut().unwrap().price = None;
    let plan = planned(&unknown);
    assert!(plan.costs.at_least);
    let named = |finding: &&cards::Finding| finding.code == "price-missing";
    let told: Vec<&cards::Finding> = plan.findings.iter().filter(named).collect();
    assert_eq!(told.len(), 1);
    assert_eq!(told[0].facts, vec![("name", "Tape".into())]);
    let gap = whole.costs.total_used.unwrap() - plan.costs.total_used.unwrap();
    assert!((gap - used(&whole.costs, CostOf::Tape)).abs() < amount("0.000000001"));
}

#[test]
fn the_parts_of_a_batch_add_up_to_the_whole() {
    let plan = planned(&drive("4"));
    let one = used_for(&plan, |card| card.number % 3 == 0);
    let other = used_for(&plan, |card| card.number % 3 != 0);
    let sum = one.total_used.unwrap() + other.total_used.unwrap();
    assert!((sum - plan.costs.total_used.unwrap()).abs() < amount("0.000000001"), "{sum}");
    // Every card here is made of the same things, but for the colour of its mat, which costs the same.
    for line in &plan.costs.lines {
        if !matches!(line.of, CostOf::Cardstock(1..)) {
            let third = used(&one, line.of) * Decimal::from(3);
            assert!((third - line.used.unwrap()).abs() < amount("0.000000001"), "{line:?}");
        }
    }
    assert_eq!(used_for(&plan, |_| true).total_used, plan.costs.total_used);
    assert!(used_for(&plan, |_| false).total_used.is_none());
}
