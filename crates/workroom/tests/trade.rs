//! What the demo costs, takes and brings: needs, packs, time, a class.
//!
//! Source: the sums of a card drive worked by hand beforehand (common practice); every number below is written out from
//! them, none is read off our own plan.
#![allow(clippy::unwrap_used, reason = "tests")]

use std::collections::BTreeMap;

use cards::buying::{NeedOf, card_shares, colour_swap, shopping, used};
use cards::class::{ClassPlan, class};
use cards::days::Day;
use cards::mailing::{Mailing, mailings};
use cards::money::leaves;
use cards::plan::{Budget, CostOf, Plan, plan, used_for};
use cards::work::{minutes, work};
use cards::{Project, Severity};
use rust_decimal::Decimal;

const DEMO: &str = include_str!("../../../examples/kettle-and-quince-whole-pack.toml");

fn planned(text: &str) -> Plan {
    let project: Project = store::project_file::read(text).unwrap();
    plan(&project, &mut Budget::nodes(50_000_000))
}

fn two(amount: Decimal) -> String {
    cards::money::to_coin(amount, "GBP").to_string()
}

#[test]
fn whole_packs_for_the_demo_and_the_swap_that_saves_two() {
    let plan = planned(DEMO);
    let shop = shopping(&plan, &BTreeMap::new());
    let packs: BTreeMap<&str, u64> = (shop.purchases.iter())
        .map(|purchase| (purchase.need.name.as_str(), purchase.packs.as_ref().unwrap().iter().sum()))
        .collect();
    let wanted = [
        ("Brick", 2),
        ("Envelopes", 4),
        ("Foam squares", 2),
        ("Hedge", 1),
        ("Ink pad", 1),
        ("Kettle & Quince", 1),
        ("Milk", 2),
        ("Pot Blue", 2),
        ("Quince", 1),
        ("Slate ribbon", 5),
        ("Stamps", 1),
        ("Tape", 9),
    ];
    assert_eq!(packs, BTreeMap::from(wanted));
    // Six packs of mats; with four it would be 165.00.
    assert_eq!(two(shop.bought.amount.unwrap()), "174.60");
    let swap = colour_swap(&plan, &BTreeMap::new()).unwrap();
    assert_eq!((swap.now.iter().sum::<u64>(), swap.swap.packs.iter().sum::<u64>()), (6, 4));
    assert_eq!((swap.swap.moved, two(swap.saved)), (8, "9.60".to_owned()));
    assert_eq!(two(shop.bought.amount.unwrap() - swap.saved), "165.00");
    assert_eq!(two((shop.bought.amount.unwrap() - swap.saved) / Decimal::from(192)), "0.86");
    // Left over: 4 sheets of Milk, 8 envelopes, 264 in of ribbon (7.3 yd).
    let left = |of: NeedOf| shop.purchases.iter().find(|purchase| purchase.need.of == of).unwrap().left;
    assert_eq!((left(NeedOf::Cardstock(0, 0)), left(NeedOf::Envelopes)), (4, 8));
    assert_eq!(left(NeedOf::Ribbon(0)), 264 * 18_288_000);
    // The same again: what was left over counts, and the pack of paper is bought once more.
    assert!(shop.next.amount.unwrap() < shop.bought.amount.unwrap());
    let ink = shop.purchases.iter().find(|purchase| purchase.need.of == NeedOf::InkPad).unwrap();
    assert_eq!(ink.next_packs, Some(vec![0]), "808 impressions are left in the pad");
}

#[test]
fn what_is_on_the_shelf_is_not_bought() {
    let plan = planned(DEMO);
    let there = BTreeMap::from([(NeedOf::Tape, 200_000 * 720_000), (NeedOf::Envelopes, 142), (NeedOf::Foam, 83)]);
    let shop = shopping(&plan, &there);
    let bought = |of: NeedOf| shop.purchases.iter().find(|purchase| purchase.need.of == of).unwrap();
    assert_eq!(bought(NeedOf::Tape).packs, Some(vec![0]));
    assert_eq!((bought(NeedOf::Envelopes).packs.clone(), bought(NeedOf::Envelopes).left), (Some(vec![1]), 0));
    // 384 less 83 is 301: one more than a pack.
    assert_eq!(bought(NeedOf::Foam).packs, Some(vec![2]));
}

#[test]
fn several_pack_sizes_are_mixed_and_a_missing_price_is_named() {
    let text = DEMO.to_owned() + "\n[[offer]]\nof = \"Foam squares\"\npack_of = 100\nprice = \"0.90\"\n";
    let foam = |text: &str| {
        let shop = shopping(&planned(text), &BTreeMap::new());
        let found = shop.purchases.iter().find(|purchase| purchase.need.of == NeedOf::Foam).unwrap().clone();
        (found, shop)
    };
    let (found, _) = foam(&text);
    assert_eq!((found.packs, found.cost), (Some(vec![1, 1]), Some(Decimal::new(340, 2))), "300 and 100 for 384");
    let text = text.replace("roll = \"12 m\", price = \"3.60\"", "roll = \"12 m\"");
    let (_, shop) = foam(&text);
    assert_eq!(shop.bought.missing, ["Tape"]);
    assert!(shop.bought.amount.is_some(), "at least so much");
    let (_, shop) = foam(&text.replace("price = \"6.50\"", "price = { amount = \"6.50\", currency = \"EUR\" }"));
    assert_eq!((shop.bought.amount, shop.bought.currencies), (None, vec!["GBP".to_owned(), "EUR".to_owned()]));
}

#[test]
fn the_cards_shares_add_up_to_the_cent() {
    let plan = planned(DEMO);
    let shop = shopping(&plan, &BTreeMap::new());
    let shares = card_shares(&plan, &shop);
    let used = used(&plan);
    let all = shares.together(&plan, |_| true);
    assert_eq!(all.cards, 192);
    let wanted = [used.amount, shop.bought.amount, shop.next.amount].map(|sum| two(sum.unwrap()));
    assert_eq!(all.figures.map(|sum| sum.unwrap().to_string()), wanted, "to the cent, without rounding again");
    // By hand: paper 0.075, base with its strip 0.11, mat 0.08, tape 21 1/2 in of 12 m at 3.60 (0.16383), foam 0.01667,
    // envelope 0.13, ink 0.008, stamp 0.07333: 0.65683; with 4 in of ribbon (0.03556) 0.69239, with 12 in 0.76350. The
    // 16 cards of B with a panel of 3 × 4 take an inch less of tape, 0.75588, and paper by their areas.
    let each = shares.used.clone().unwrap();
    for (card, share) in plan.cards.iter().zip(&each) {
        let hand = if card.batch == 0 { Decimal::new(69_239, 5) } else { Decimal::new(76_350, 5) };
        let near = if card.batch == 0 { Decimal::new(1, 2) } else { Decimal::new(2, 2) };
        assert!((*share - hand).abs() < near, "card {}: {share}", card.number);
        assert_eq!(share.scale(), 2);
    }
    let posted = shares.together(&plan, |card| card.batch == 0).figures[0].unwrap();
    assert_eq!(posted.to_string(), "66.47", "96 × 0.69239 is 66.469: a batch loses nothing to another");
    let taught = shares.together(&plan, |card| card.batch == 1).figures[0].unwrap();
    assert_eq!(taught.to_string(), "73.17", "what 16 kits use, as the class has it");
    // Rows of cards that are alike name every card once.
    let rows = shares.alike(&plan);
    let named: Vec<u32> = rows.iter().flat_map(|row| row.first..=row.last).collect();
    assert_eq!(named, (1..=192).collect::<Vec<u32>>());
    assert!(rows.len() < 60, "{} rows", rows.len());
    // A missing price leaves shares of what is known; several currencies leave none.
    let text = DEMO.replace("roll = \"12 m\", price = \"3.60\"", "roll = \"12 m\"");
    let known = planned(&text);
    let shares = card_shares(&known, &shopping(&known, &BTreeMap::new()));
    let sum = shares.together(&known, |_| true).figures[0].unwrap();
    assert_eq!(two(sum), two(cards::buying::used(&known).amount.unwrap()));
    let mixed = planned(&DEMO.replace("price = \"6.50\"", "price = { amount = \"6.50\", currency = \"EUR\" }"));
    let shares = card_shares(&mixed, &shopping(&mixed, &BTreeMap::new()));
    assert_eq!((shares.used, shares.bought), (None, None));
}

#[test]
fn time_and_the_wage_a_price_leaves() {
    let plan = planned(DEMO);
    let posted = work(&plan, 0);
    let told: BTreeMap<&str, String> = posted.iter().map(|work| (work.key, work.minutes.to_string())).collect();
    let wanted = [("piece", "24"), ("base", "57.6"), ("mat", "24"), ("strip", "48"), ("ribbon", "72"), ("card", "288")];
    assert_eq!(told, wanted.into_iter().map(|(key, minutes)| (key, minutes.to_owned())).collect());
    assert_eq!(minutes(&posted).to_string(), "513.6");
    let each = minutes(&posted) / Decimal::from(96);
    assert_eq!(two(each), "5.35");
    let material = used_for(&plan, |card| card.batch == 0).total_used.unwrap() / Decimal::from(96);
    assert_eq!(two(material), "0.69");
    let left = leaves(Decimal::from(3), material, each, &plan.project.trade.selling).unwrap();
    assert_eq!(left.wage.unwrap().round_dp(1).to_string(), "25.9");
    // The batch for the table is only prepared: 24 + 57.6 + 24 + 48 + 16 kits of 2.5.
    assert_eq!(minutes(&work(&plan, 1)).to_string(), "193.6");
    // Her own timing replaces the usual one.
    let own = planned(&(DEMO.to_owned() + "\n[minutes]\ncard = 4\n"));
    assert_eq!(minutes(&work(&own, 0)).to_string(), "609.6");
}

fn taught(text: &str, today: &str) -> ClassPlan {
    class(&planned(text), Day::parse(today)).unwrap()
}

#[test]
fn the_class_pays_for_itself_at_ten_seats() {
    let found = taught(DEMO, "2026-11-01");
    assert_eq!((found.kits, found.planned, found.spare, found.to_cut), (16, 16, 1, 16));
    assert_eq!(found.cards_each, (6, 6));
    let money = &found.money;
    let told = [money.kit, money.kits, money.total, money.seat, money.brings, money.over].map(|sum| two(sum.unwrap()));
    assert_eq!(told, ["4.57", "73.17", "233.17", "23.32", "336.00", "102.83"]);
    // By hand it was 4.58, 73.30, 233.30, 23.33, 336 and 102.70: there all 96 cards had 21 1/2 in of tape, also the 16
    // with a panel of 3 × 4, which take 20 1/2. Those 16 in are the 12 pence.
    let tape = Decimal::from(16) * Decimal::new(254, 1) * Decimal::new(360, 2) / Decimal::from(12_000);
    let by_hand = |sum: Option<Decimal>, tape: Decimal| two(sum.unwrap() + tape);
    let sixteen = Decimal::from(16);
    let told = [
        by_hand(money.kit, tape / sixteen),
        by_hand(money.kits, tape),
        by_hand(money.total, tape),
        by_hand(money.seat, tape / Decimal::TEN),
        by_hand(money.over, -tape),
    ];
    assert_eq!(told, ["4.58", "73.30", "233.30", "23.33", "102.70"]);
    assert_eq!(money.break_even, 10);
    assert!(found.findings.is_empty(), "{:?}", found.findings);
    let days: Vec<String> = found.timetable.iter().map(|due| due.day.unwrap().to_string()).collect();
    let wanted = ["11-14", "11-21", "11-25", "11-28", "11-30", "12-02", "12-04", "12-05"];
    assert_eq!(days, wanted.map(|day| format!("2026-{day}")));
}

#[test]
fn sign_ups_change_the_kits_but_never_what_is_cut() {
    let seats = |count: u32, cut: u32| {
        taught(&DEMO.replace("seats = 14", &format!("seats = {count}\ncut_kits = {cut}")), "2026-11-01")
    };
    let fewer = seats(11, 16);
    assert_eq!((fewer.kits, fewer.to_cut, fewer.cut_beyond), (13, 0, 3));
    assert!(fewer.more_sheets.is_empty());
    let more = seats(18, 16);
    assert_eq!((more.kits, more.to_cut), (20, 4));
    // Four kits more take 4 panels of each design; a sheet gives 8: one sheet of each, and the pack is used up.
    let sheets: Vec<(u32, u32)> = more.more_sheets.iter().map(|more| (more.sheets, more.short)).collect();
    assert_eq!(sheets, [(1, 1); 6]);
    assert!(more.findings.iter().any(|finding| finding.severity == Severity::Serious));
    let crowd = seats(500, 0);
    assert_eq!((crowd.kits, crowd.spare), (526, 25));
    // 96 cards over 526 kits: most are empty, and that is told gravely.
    let empty = DEMO.replace("seats = 14", "seats = 500").replace("kits = 16", "kits = 526");
    let empty = taught(&empty, "2026-11-01");
    let told = empty.findings.iter().find(|finding| finding.code == "class-kits-empty").unwrap();
    assert_eq!((told.severity, empty.cards_each), (Severity::Serious, (0, 1)));
}

#[test]
fn a_class_in_the_past_is_told() {
    let codes = |today: &str| taught(DEMO, today).findings.iter().map(|finding| finding.code).collect::<Vec<_>>();
    assert_eq!(codes("2026-12-06"), ["class-past"]);
    assert_eq!(codes("2026-12-05"), ["class-late"], "today: the days before it are over");
    assert_eq!(codes("2026-11-20"), ["class-late"]);
    let mixed = DEMO.replace("room = \"40.00\"", "room = { amount = \"40\", currency = \"EUR\" }");
    let found = taught(&mixed, "2026-11-01");
    assert!(found.money.mixed && found.money.total.is_none());
    assert_eq!(found.findings.iter().map(|finding| finding.code).collect::<Vec<_>>(), ["class-currencies"]);
}

/// A dark base with a lighter sheet inside, by hand: 192 sheets of 6 3/4 × 4 3/4.
#[test]
fn a_sheet_to_write_on_is_counted_cut_taped_costed_and_weighed() {
    let inside = "base = \"Pot Blue\"\ninside = { size = \"6 3/4 x 4 3/4\", cardstock = \"Milk\" }";
    let (before, after) = (planned(DEMO), planned(&DEMO.replace("base = \"Milk\"", inside)));
    let milk = after.stocks.iter().find(|stock| stock.cardstock == 0).unwrap();
    let sheets: u32 = milk.cuts.iter().filter(|cut| cut.inside).map(|cut| cut.count).sum();
    // Two come out of a Letter sheet (three are larger than it), and the strips out of what is left of it.
    assert_eq!((sheets, milk.sheet_count), (192, 96));
    assert!(milk.cuts.iter().all(|cut| cut.layer.is_some() || cut.inside), "no base is Milk any more");
    // Two lines of tape along 6 3/4 in for each of 192 cards: 2592 in more.
    let tape = |plan: &Plan| plan.counts.tape.unwrap().0.ticks() / 18_288_000;
    assert_eq!((tape(&before), tape(&after)), (4_112, 4_112 + 2_592));
    // Milk is used as before, 96 sheets of 11.00/50; Pot Blue for 96 sheets of bases more, at 4.80/12.
    let used = |plan: &Plan, of: CostOf| plan.costs.lines.iter().find(|line| line.of == of).unwrap().used.unwrap();
    let blue = used(&after, CostOf::Cardstock(1)) - used(&before, CostOf::Cardstock(1));
    assert_eq!(two(used(&after, CostOf::Cardstock(0))), two(used(&before, CostOf::Cardstock(0))));
    // Where a base and mats share a sheet, parts of sheets are counted: two pounds at most.
    assert!((blue - Decimal::new(38_40, 2)).abs() < Decimal::TWO, "{blue}");
    // 6.75 × 4.75 in are 206.85 cm² of 216 g/m²: 4.468 g. Open it covers both halves, so it lies double: 2 × 0.28 mm.
    let (was, is) = (mailings(&before), mailings(&after));
    let weight = |all: &[Mailing]| all[0].body.weight.in_grams().parse::<Decimal>().unwrap();
    assert!((weight(&is) - weight(&was) - Decimal::new(4_468, 3)).abs() <= Decimal::new(1, 1), "{}", weight(&is));
    assert_eq!(is[0].body.thickest_um - was[0].body.thickest_um, 560);
    // A kit holds six of them; the time of six pieces more is counted.
    let mats = |plan: &Plan| work(plan, 1).iter().find(|work| work.key == "mat").unwrap().times;
    assert_eq!((mats(&before), mats(&after)), (96, 192));
}
