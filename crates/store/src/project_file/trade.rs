//! Post, other packs on sale, selling, working time, a class.

use cards::model::{Batch, Cardstock, Class, Minutes, Offer, Post, Price, Rate, Ribbon, Selling, Supplies, Trade};
use cards::weight::Weight;
use rust_decimal::Decimal;

use super::desk::{Bounds, Desk, Table, Value};
use super::names::Own;
use super::paper::{micrometres, price};
use super::problem::ProblemKind;

/// Everything of it. `batches` are the batches that were read, `stocks`, `ribbons` and `supplies` what can be on offer.
pub(super) fn trade(
    desk: &mut Desk,
    root: &Table<'_>,
    batches: &[Batch],
    stocks: &[Cardstock],
    ribbons: &[Ribbon],
    supplies: &Supplies,
) -> Trade {
    Trade {
        post: post(desk, root),
        offers: offers(desk, root, stocks, ribbons, supplies),
        selling: selling(desk, root),
        minutes: minutes(desk, root),
        class: class(desk, root, batches),
    }
}

fn post(desk: &mut Desk, root: &Table<'_>) -> Post {
    let Some(table) = root.table(desk, "post") else { return Post::default() };
    let mut thickness = |key| table.length(desk, key, Bounds::Thin).and_then(micrometres);
    let (foam_um, bow_um) = (thickness("foam_thickness"), thickness("bow_thickness"));
    let mut rates = Vec::new();
    for row in table.rows(desk, "rate") {
        let mut text = |key| row.need(desk, key).and_then(|value| desk.text(&value)).unwrap_or_default();
        let (operator, class) = (text("operator"), text("class"));
        let up_to = row.find("up_to").and_then(|value| weight(desk, &value));
        // Reported if it is missing.
        let _ = row.need(desk, "price");
        let Some(price) = price(desk, &row, "price") else { continue };
        rates.push(Rate { operator, class, up_to, price });
    }
    Post {
        envelope_gsm: table.count(desk, "envelope_gsm"),
        addressed_upright: table.choice(desk, "addressed") == Some(1),
        stiff: table.yes(desk, "stiff"),
        extras: table.find("extras").and_then(|value| weight(desk, &value)),
        foam_um,
        bow_um,
        rates,
    }
}

fn weight(desk: &mut Desk, value: &Value<'_>) -> Option<Weight> {
    let found = desk.text(value)?;
    let weight = Weight::parse(&found);
    if weight.is_none() {
        desk.blame(value, ProblemKind::BadWeight { found });
    }
    weight
}

fn offers(
    desk: &mut Desk,
    root: &Table<'_>,
    stocks: &[Cardstock],
    ribbons: &[Ribbon],
    supplies: &Supplies,
) -> Vec<Offer> {
    let mut known = Own::new("supply");
    let Supplies { tape, foam, envelopes, ink_pad, stamps } = supplies;
    let small = [foam, envelopes, ink_pad, stamps].into_iter().flatten().map(|supply| &supply.name);
    let long = ribbons.iter().map(|ribbon| &ribbon.name).chain(tape.iter().map(|tape| &tape.name));
    let short: Vec<&String> = stocks.iter().map(|stock| &stock.name).chain(small).collect();
    for name in short.iter().copied().chain(long.clone()) {
        if name.is_empty() {
            known.lost();
        } else if !known.has(name) {
            known.grant(name);
        }
    }
    let long: Vec<&String> = long.collect();
    let mut offers = Vec::new();
    for row in root.rows(desk, "offer") {
        let Some(value) = row.need(desk, "of") else { continue };
        let Some(of) = desk.text(&value) else { continue };
        if known.index_of(desk, &of, value.at, &value.path).is_none() {
            continue;
        }
        row.at_most_one(desk, &["pack_of", "length"]);
        // A cardstock and a ribbon may share a name: then either will do.
        let both = long.contains(&&of) && short.contains(&&of);
        let by_length = long.contains(&&of) && !(both && row.find("pack_of").is_some());
        let key = if by_length { "length" } else { "pack_of" };
        if row.find(key).is_none() {
            let wanted = if by_length { "length" } else { "count" };
            row.blame_key(desk, key, ProblemKind::MissingKey { key, wanted });
        }
        let pack_of = row.count(desk, "pack_of");
        let length = row.length(desk, "length", Bounds::Spool);
        offers.push(Offer { of, pack_of, length, price: price(desk, &row, "price") });
    }
    offers
}

fn selling(desk: &mut Desk, root: &Table<'_>) -> Selling {
    let Some(table) = root.table(desk, "selling") else { return Selling::default() };
    let mut percent = |key| {
        let value = table.find(key)?;
        let found = desk.amount(&value)?;
        if found > Decimal::from(100) {
            let found = found.to_string();
            desk.blame(&value, ProblemKind::CountOutOfBounds { found, least: 0, most: 100 });
        }
        Some(found)
    };
    let (fees, tax) = (percent("fees").unwrap_or_default(), percent("tax").unwrap_or_default());
    let margin = percent("margin").unwrap_or_default();
    Selling { price: price(desk, &table, "price"), fees, tax, margin, hour: price(desk, &table, "hour") }
}

fn minutes(desk: &mut Desk, root: &Table<'_>) -> Minutes {
    let mut minutes = Minutes::default();
    let Some(table) = root.table(desk, "minutes") else { return minutes };
    for (key, _) in Minutes::default().by_key() {
        let told = table.find(key).and_then(|value| desk.amount(&value));
        if let (Some(told), Some(place)) = (told, minutes.of_key(key)) {
            *place = told;
        }
    }
    minutes
}

fn class(desk: &mut Desk, root: &Table<'_>, batches: &[Batch]) -> Option<Class> {
    let table = root.table(desk, "class")?;
    let mut known = Own::new("batch");
    for batch in batches {
        if batch.name.is_empty() {
            known.lost();
        } else if !known.has(&batch.name) {
            known.grant(&batch.name);
        }
    }
    let batch = table.find("batch").and_then(|value| {
        let name = desk.text(&value)?;
        known.index_of(desk, &name, value.at, &value.path).map(|_| name)
    });
    let usual = Class::default();
    let seats = table.need(desk, "seats").and_then(|_| table.count(desk, "seats")).unwrap_or(1);
    let mut money = |key| -> Option<Price> { price(desk, &table, key) };
    let (room, hour, shared, asked) = (money("room"), money("hour"), money("shared"), money("price"));
    Some(Class {
        batch,
        date: table.find("date").and_then(|value| desk.date(&value)),
        starts: table.find("starts").and_then(|value| desk.time(&value)),
        welcome_minutes: table.count(desk, "welcome_minutes").unwrap_or(usual.welcome_minutes),
        pause_minutes: table.count(desk, "pause_minutes").unwrap_or(usual.pause_minutes),
        end_minutes: table.count(desk, "end_minutes").unwrap_or(usual.end_minutes),
        seats,
        demonstrators: table.count(desk, "demonstrators").unwrap_or(usual.demonstrators),
        spare_kits: table.count(desk, "spare_kits"),
        left_handed: table.count(desk, "left_handed").unwrap_or(usual.left_handed),
        cut_kits: table.count(desk, "cut_kits").unwrap_or(usual.cut_kits),
        minutes_a_card: table.count(desk, "minutes_a_card").unwrap_or(usual.minutes_a_card),
        room,
        hours: table.find("hours").and_then(|value| desk.amount(&value)).unwrap_or_default(),
        hour,
        shared,
        break_even: table.count(desk, "break_even"),
        price: asked,
    })
}
