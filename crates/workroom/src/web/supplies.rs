//! Supplies: what the batch needs, the shelf, what to buy, three figures, time and price.

use std::collections::BTreeMap;
use std::str::FromStr;

use cards::buying::{ColourSwap, Need, NeedOf, Shopping, Sum, card_shares, colour_swap, needs, shopping, used};
use cards::plan::Plan;
use cards::work::work;
use drawing::sheets::worded;
use maud::{Markup, html};
use rust_decimal::Decimal;
use store::projects::{Kept, ProjectId, Projects, StoreError};
use store::shelf::table::{self, Decimals, number};
use store::shelf::{Entry, Item, KINDS, ShelfError, Shelved, UNITS};

use super::answer::{Answer, Asked, Desk};
use super::edit::{self, Changed, EditError};
use super::room::{Made, Room};
use super::{fields, say, shell};
use crate::trade;

/// The page; what its plan needs is laid aside on the shelf first.
pub(super) fn page(desk: &Desk<'_>) -> Result<Markup, StoreError> {
    let plan = &desk.made.plan;
    let needs = needs(plan);
    lay_aside(&mut desk.room.store(), desk.kept, &needs)?;
    let shelf = desk.room.store().shelf()?;
    let there = on_shelf(desk.room, desk.kept, &needs)?;
    let shop = shopping(plan, &there);
    let swap = colour_swap(plan, &there);
    let (unit, mark) = (plan.project.unit, plan.project.mark);
    let used = used(plan);
    let figures: [(String, &Sum, String); 3] = [
        (say("supplies-used", &[]), &used, say("supplies-used-says", &[])),
        (say("supplies-bought", &[]), &shop.bought, say("supplies-bought-says", &[])),
        (say("supplies-next", &[]), &shop.next, say("supplies-next-says", &[])),
    ];
    // On a narrow screen each amount says its own heading.
    let heads = [
        say("supplies-need", &[]),
        say("supplies-there", &[]),
        say("supplies-buy", &[]),
        say("supplies-cost", &[]),
        say("supplies-left", &[]),
    ];
    let inside = html! {
        div.lead { h1 { (say("supplies-title", &[])) } p.facts { (say("supplies-lead", &[])) } }
        div.wide tabindex="0" role="region" aria-label=(say("supplies-title", &[])) {
            table.stacks {
                thead { tr {
                    th scope="col" { (say("supplies-name", &[])) }
                    @for head in &heads { th scope="col" { (head) } }
                } }
                tbody {
                    @for purchase in &shop.purchases {
                        @let need = &purchase.need;
                        tr {
                            th scope="row" { (worded::supply(&need.name)) }
                            td data-head=(heads[0]) { (trade::amount(need.counted, need.amount, unit)) br; small { (drawing::text::with_fractions(&trade::rule(need, mark))) } }
                            td data-head=(heads[1]) { (trade::amount(need.counted, purchase.there, unit)) }
                            td data-head=(heads[2]) { (trade::packs(purchase, unit)) }
                            td data-head=(heads[3]) { (trade::cost(purchase)) }
                            td data-head=(heads[4]) { (trade::amount(need.counted, purchase.left, unit)) }
                        }
                    }
                }
            }
        }
        @if let Some(found) = &swap { (swap_offered(desk, found)) }
        @for dark in trade::dark_bases(plan) { p.caution { (dark) } }
        section {
            h2 { (say("supplies-figures", &[])) }
            table.sums {
                thead { tr {
                    th scope="col" { (say("supplies-figure", &[])) }
                    th scope="col" { (say("supplies-total", &[])) }
                    th scope="col" { (say("supplies-each", &[])) }
                } }
                tbody {
                    @for (name, sum, says) in &figures {
                        tr {
                            th scope="row" { (name) br; small { (says) } }
                            td { (trade::sum(sum)) }
                            td { (trade::sum_each(sum, plan.cards.len())) }
                        }
                    }
                }
            }
            @for (name, sum, _) in &figures {
                @if !sum.missing.is_empty() { p.caution { (name) ": " (say("sum-missing", &[("names", trade::names(&sum.missing).into())])) } }
            }
            (shares(plan, [&used, &shop.bought, &shop.next], &shop))
            p.hint { (say("supplies-caution-costs", &[])) }
        }
        (prices(desk))
        (shelf_section(desk, &shelf)?)
        section {
            ul.findings {
                @for caution in [say("supplies-caution-rights", &[]), say("supplies-caution-label", &[]), say("supplies-caution-tax", &[])] { li.note { (caution) } }
            }
        }
    };
    Ok(shell::of_project(desk, "supplies", &inside))
}

/// The swap of colours that saves packs, and the button that makes it.
fn swap_offered(desk: &Desk<'_>, found: &ColourSwap) -> Markup {
    let (said, each) = trade::swap(desk.made.project(), found);
    html! {
        ul.findings id="swap" {
            li.note {
                (said)
                ul.wanted { @for one in each { li.each { (one) } } }
                form method="post" action=(format!("/w/{}/swap", desk.kept.id.0)) {
                    (shell::seen(desk.kept, "supplies", ""))
                    button type="submit" { (say("supplies-swap-do", &[])) }
                }
                p.hint { (say("supplies-swap-how", &[])) }
            }
        }
    }
}

/// The project with the swap that saves packs; as it is where none does any more.
pub(super) fn swapped(room: &Room, kept: &Kept, made: &Made) -> Result<Result<Option<Changed>, EditError>, StoreError> {
    let plan = &made.plan;
    let there = on_shelf(room, kept, &needs(plan))?;
    let Some(found) = colour_swap(plan, &there) else { return Ok(Ok(None)) };
    let pieces = trade::recolored(plan, &found);
    let facts = [("moved", pieces.len().into()), ("piece", (&found.piece).into())];
    Ok(edit::recolor(&kept.now.text, &pieces, say("edit-swap", &facts)).map(Some))
}

/// What of each need lies on the shelf and is free for the project.
fn on_shelf(room: &Room, kept: &Kept, needs: &[Need]) -> Result<BTreeMap<NeedOf, u64>, StoreError> {
    let shelf = room.store().shelf()?;
    let free: Vec<(Item, Decimal)> =
        shelf.iter().map(|shelved| (shelved.item.clone(), shelved.free_for(kept.id))).collect();
    Ok(trade::there(needs, &free))
}

/// The figures by batch and recipe, and every card's share of them.
fn shares(plan: &Plan, sums: [&Sum; 3], shop: &Shopping) -> Markup {
    let shares = card_shares(plan, shop);
    let heads = [say("supplies-used", &[]), say("supplies-bought", &[]), say("supplies-next", &[])];
    html! {
        h3 { (say("supplies-by-kind", &[])) }
        div.wide tabindex="0" role="region" aria-label=(say("supplies-by-kind", &[])) {
            table.stacks {
                thead { tr {
                    th scope="col" { (say("supplies-cards", &[])) }
                    @for head in &heads { th scope="col" { (head) } }
                } }
                tbody {
                    @for row in trade::by_kind(plan, &shares, sums) {
                        tr {
                            th scope="row" { (row.cards) }
                            @for (head, (all, each)) in heads.iter().zip(&row.figures) {
                                td data-head=(head) { (all) br; small { (say("supplies-of-each", &[("each", each.into())])) } }
                            }
                        }
                    }
                }
            }
        }
        details id="each-card" {
            summary { (say("supplies-each-card", &[])) }
            p { (say("supplies-shared-rule", &[])) }
            table {
                thead { tr {
                    th scope="col" { (say("supplies-cards", &[])) }
                    @for head in &heads { th scope="col" { (head) } }
                } }
                tbody {
                    @for (cards, figures) in trade::each_card(plan, &shares, sums) {
                        tr { th scope="row" { (cards) } @for figure in &figures { td { (figure) } } }
                    }
                }
                tfoot { tr {
                    th scope="row" { (say("supplies-total", &[])) }
                    @for sum in sums { td { (trade::sum(sum)) } }
                } }
            }
        }
    }
}

fn prices(desk: &Desk<'_>) -> Markup {
    let plan = &desk.made.plan;
    let price = html! {
        fieldset {
            (fields::line(desk, "selling.price", &say("supplies-asked-label", &[]), "3.00"))
            (fields::line(desk, "selling.fees", &say("supplies-fees", &[]), "0"))
            (fields::line(desk, "selling.tax", &say("supplies-tax", &[]), "0"))
            (fields::line(desk, "selling.margin", &say("supplies-margin", &[]), "0"))
            (fields::line(desk, "selling.hour", &say("supplies-hour", &[]), "15.00"))
        }
    };
    let usual = cards::model::Minutes::default();
    let timings = html! {
        fieldset {
            @for (key, minutes) in usual.by_key() {
                (fields::line(desk, &format!("minutes.{key}"), &trade::work(key), &trade::decimal(minutes)))
            }
        }
    };
    html! {
        section id="price" {
            h2 { (say("supplies-price", &[])) }
            div.wide tabindex="0" role="region" aria-label=(say("supplies-price", &[])) {
                table {
                    thead { tr {
                        th scope="col" { (say("supplies-batch", &[])) }
                        th scope="col" { (say("supplies-material", &[])) }
                        th scope="col" { (say("supplies-minutes", &[])) }
                        th scope="col" { (say("supplies-asked", &[])) }
                        th scope="col" { (say("supplies-leaves", &[])) }
                        th scope="col" { (say("supplies-wage", &[])) }
                        th scope="col" { (say("supplies-wished", &[])) }
                    } }
                    tbody {
                        @for priced in trade::priced(plan) {
                            tr {
                                th scope="row" { (priced.batch) }
                                td { (priced.material) } td { (priced.minutes) } td { (priced.asked) }
                                td { (priced.leaves) } td { (priced.wage) } td { (priced.wished) }
                            }
                        }
                    }
                }
            }
            details {
                summary { (say("supplies-work", &[])) }
                @for (index, batch) in plan.batches.iter().enumerate() {
                    h3 { (batch.called(&plan.project)) }
                    ul.wanted {
                        @for done in work(plan, index) {
                            @let facts = [("what", trade::work(done.key).into()), ("times", done.times.into()), ("each", trade::decimal(done.each).into()), ("minutes", trade::decimal(done.minutes).into())];
                            li { (say("work-line", &facts)) }
                        }
                    }
                }
            }
            h3 { (say("supplies-selling", &[])) }
            (fields::change(desk, "supplies", "price", &price))
            details {
                summary { (say("supplies-timings", &[])) }
                (fields::change(desk, "supplies", "price", &timings))
            }
        }
    }
}

fn shelf_section(desk: &Desk<'_>, shelf: &[Shelved]) -> Result<Markup, StoreError> {
    let mut ledgers = Vec::new();
    for shelved in shelf {
        ledgers.push(desk.room.store().shelf_ledger(shelved.id)?);
    }
    let action = format!("/w/{}/shelf", desk.kept.id.0);
    let mut names = BTreeMap::new();
    let others = shelf.iter().flat_map(|shelved| shelved.held.iter().map(|(of, _)| *of));
    for of in others.chain(ledgers.iter().flatten().filter_map(|entry| entry.project)) {
        if let std::collections::btree_map::Entry::Vacant(free) = names.entry(of) {
            let name = desk.room.store().get(of)?.and_then(|kept| store::project_file::read(&kept.now.text).ok());
            free.insert(name.map(|project| project.name).unwrap_or_default());
        }
    }
    let name = |of: &ProjectId| names.get(of).map_or("", String::as_str);
    let held = |shelved: &Shelved| -> Vec<String> {
        let own = |(project, amount): &(ProjectId, Decimal)| {
            let facts = [("amount", trade::decimal(*amount).into()), ("project", name(project).into())];
            if *project == desk.kept.id { say("shelf-held-here", &facts) } else { say("shelf-held-others", &facts) }
        };
        shelved.held.iter().map(own).collect()
    };
    Ok(html! {
        section.shelf id="shelf" {
            h2 { (say("supplies-shelf", &[])) }
            p { (say("supplies-shelf-lead", &[])) }
            @if shelf.is_empty() { p { (say("supplies-shelf-empty", &[])) } }
            @for (shelved, ledger) in shelf.iter().zip(&ledgers) {
                details.item {
                    summary {
                        (shelved.item.name) ": " (trade::shelf_amount(&shelved.item))
                        @if !held(shelved).is_empty() { " (" (say("shelf-held", &[])) ": " (held(shelved).join(", ")) ")" }
                    }
                    form.change method="post" action=(action) {
                        input type="hidden" name="id" value=(shelved.id);
                        input type="hidden" name="revision" value=(shelved.revision);
                        (item_fields(&shelved.item))
                        div.ends {
                            button type="submit" name="act" value="save" { (say("shelf-save", &[])) }
                            " " button.quiet type="submit" name="act" value="remove" { (say("shelf-remove", &[])) }
                        }
                    }
                    h3 { (say("shelf-ledger", &[])) }
                    ul.wanted { @for entry in ledger { li { (entry_whole(entry, entry.project.as_ref().map_or("", name))) } } }
                }
            }
            details open[shelf.is_empty()] {
                summary { (say("shelf-add", &[])) }
                form.change method="post" action=(action) {
                    (item_fields(&Item { kind: String::new(), name: String::new(), amount: Decimal::ZERO, unit: "sheet".to_owned(), price: None, buys: None, currency: String::new(), priced_on: None, place: String::new(), color: String::new() }))
                    div.ends { button type="submit" name="act" value="save" { (say("shelf-save", &[])) } }
                }
            }
            form.change method="post" action=(action) enctype="multipart/form-data" {
                input type="hidden" name="act" value="import";
                label.field { span { (say("shelf-import", &[])) } input type="file" name="table" accept=".csv,text/csv"; }
                button type="submit" { (say("shelf-import-do", &[])) }
            }
            p { a href=(format!("/w/{}/file/shelf.csv", desk.kept.id.0)) { (say("shelf-export", &[])) } }
        }
    })
}

fn item_fields(item: &Item) -> Markup {
    let text = |name: &str, label: String, value: &str| {
        html! { label.field { span { (label) } input type="text" name=(name) value=(value) autocomplete="off"; } }
    };
    let pick = |name: &str, label: String, all: &[&str], value: &str, said: fn(&str) -> String| {
        html! { label.field { span { (label) } select name=(name) { @for one in all { option value=(one) selected[*one == value] { (said(one)) } } } } }
    };
    let decimal = |number: Option<Decimal>| number.map(|number| number.to_string()).unwrap_or_default();
    html! {
        fieldset {
            (pick("kind", say("shelf-kind", &[]), &KINDS, &item.kind, trade::shelf_kind))
            (text("name", say("shelf-name", &[]), &item.name))
            (text("amount", say("shelf-amount", &[]), &item.amount.to_string()))
            (pick("unit", say("shelf-unit", &[]), &UNITS, &item.unit, trade::shelf_unit))
            (text("price", say("shelf-price", &[]), &decimal(item.price)))
            (text("buys", say("shelf-buys", &[]), &decimal(item.buys)))
            (text("currency", say("shelf-currency", &[]), &item.currency))
            (text("priced_on", say("shelf-priced-on", &[]), item.priced_on.as_deref().unwrap_or_default()))
            (text("place", say("shelf-place", &[]), &item.place))
            (text("color", say("shelf-color", &[]), &item.color))
            label.field { span { (say("shelf-why", &[])) } select name="why" {
                option value="counted" { (say("shelf-counted", &[])) }
                option value="bought" { (say("shelf-bought", &[])) }
            } }
        }
    }
}

/// A line of the ledger with its day, what it was for, and what was there afterwards.
fn entry_whole(entry: &Entry, project: &str) -> String {
    let part = match entry.part.as_deref().and_then(|part| part.split('-').next()) {
        Some("sheet") => say("shelf-part-sheet", &[]),
        Some("stock") => say("shelf-part-stock", &[]),
        Some(_) => say("shelf-part-card", &[]),
        None => String::new(),
    };
    let facts = [
        ("day", cards::days::Day::of_seconds(entry.made_at).to_string().into()),
        ("said", entry_told(entry).into()),
        ("part", part.into()),
        ("project", project.into()),
        ("there", trade::decimal(entry.there).into()),
    ];
    if entry.part.is_some() { say("shelf-entry-of", &facts) } else { say("shelf-entry-day", &facts) }
}

fn entry_told(entry: &Entry) -> String {
    let why = match entry.why.as_str() {
        "bought" => say("shelf-bought", &[]),
        "used" => say("shelf-used", &[]),
        "returned" => say("shelf-returned", &[]),
        _ => say("shelf-counted", &[]),
    };
    let sign = if entry.amount > Decimal::ZERO { "+" } else { "" };
    let facts = [
        ("why", why.into()),
        ("amount", format!("{sign}{}", trade::decimal(entry.amount)).into()),
        ("short", trade::decimal(entry.short).into()),
    ];
    if entry.short.is_zero() { say("shelf-entry", &facts) } else { say("shelf-entry-short", &facts) }
}

/// The shelf as a table to save.
pub(super) fn table(room: &Room) -> Option<Answer> {
    let items: Vec<Item> = room.store().shelf().ok()?.into_iter().map(|shelved| shelved.item).collect();
    let decimals = match words::spoken() {
        words::Language::German => Decimals::Comma,
        words::Language::English => Decimals::Point,
    };
    Some(Answer::file("shelf.csv", "text/csv; charset=utf-8", table::write(&items, decimals)))
}

/// Changes the shelf as a form says; why not, if it cannot.
pub(super) fn change(room: &Room, asked: &Asked) -> Result<Option<Markup>, StoreError> {
    let told = |said: String| Ok(Some(html! { p { (said) } }));
    // What was typed is told again where it is not kept: nothing of it is lost.
    let mine = item(asked).map_or_else(|typed| typed, |item| trade::shelf_item(&item));
    let seen = asked.field("id").parse().ok().zip(asked.field("revision").parse().ok());
    let done = match asked.field("act") {
        "import" => {
            let bytes = asked.fields.iter().find(|(name, _)| name == "table").map_or(&[][..], |(_, bytes)| bytes);
            match table::read(bytes) {
                Ok(items) => room.store().shelve_all(&items, asked.now).map(|()| 0),
                Err(problems) => {
                    let said: Vec<String> = problems.iter().map(trade::table_problem).collect();
                    return Ok(Some(html! { ul { @for one in said { li { (one) } } } }));
                }
            }
        }
        "remove" => match seen {
            Some(seen) => room.store().unshelve(seen, asked.now).map(|()| 0),
            None => return told(say("shelf-gone", &[])),
        },
        _ => match item(asked) {
            Ok(item) => {
                let why = if asked.field("why") == "bought" { "bought" } else { "counted" };
                room.store().shelve(&item, seen, why, asked.now)
            }
            Err(found) => return told(say("shelf-number", &[("found", found.into())])),
        },
    };
    match done {
        Ok(_) => {
            room.shelf_changed();
            Ok(None)
        }
        Err(ShelfError::Store(error)) => Err(error),
        Err(ShelfError::Gone) => told(say("shelf-gone", &[])),
        Err(ShelfError::Taken(name)) => told(say("shelf-taken", &[("name", name.into())])),
        Err(ShelfError::Negative(amount)) => told(say("shelf-negative", &[("amount", trade::decimal(amount).into())])),
        Err(ShelfError::Bad(found)) => told(say("shelf-bad", &[("found", found.into())])),
        Err(ShelfError::Stale { now, since }) => {
            let since: Vec<String> = since.iter().map(entry_told).collect();
            let facts = [
                ("name", (&now.item.name).into()),
                ("since", since.join(", ").into()),
                ("amount", trade::shelf_amount(&now.item).into()),
                ("mine", mine.into()),
            ];
            told(say("shelf-stale", &facts))
        }
    }
}

/// The item of a form; a text that is no number otherwise.
fn item(asked: &Asked) -> Result<Item, String> {
    let text = |name: &str| asked.field(name).trim().to_owned();
    let decimal = |name: &str| match asked.field(name).trim() {
        "" => Ok(None),
        // What is below nothing is told by the shelf, with its own words.
        found => match Decimal::from_str(found) {
            Ok(below) if below < Decimal::ZERO => Ok(Some(below)),
            _ => number(found).map(Some).map_err(|_| found.to_owned()),
        },
    };
    Ok(Item {
        kind: text("kind"),
        name: text("name"),
        amount: decimal("amount")?.ok_or_else(|| asked.field("amount").to_owned())?,
        unit: text("unit"),
        price: decimal("price")?,
        buys: decimal("buys")?,
        currency: text("currency").to_uppercase(),
        priced_on: Some(text("priced_on")).filter(|day| !day.is_empty()),
        place: text("place"),
        color: text("color").to_lowercase(),
    })
}

/// Lays aside what the plan still needs: what its parts have used up is not needed any more.
pub(super) fn lay_aside(store: &mut Projects, kept: &Kept, needs: &[Need]) -> Result<(), StoreError> {
    let shelf = store.shelf()?;
    if shelf.is_empty() {
        return Ok(());
    }
    let mut wanted = Vec::new();
    for need in needs {
        let Some(at) = trade::item_of(need, shelf.iter().map(|shelved| &shelved.item)) else { continue };
        let used: Decimal = store
            .shelf_ledger(shelf[at].id)?
            .iter()
            .filter(|entry| entry.project == Some(kept.id))
            .map(|entry| if entry.why == "used" { entry.short - entry.amount } else { -entry.amount })
            .sum();
        let amount = trade::in_item(need, &shelf[at].item.unit, need.amount) - used.max(Decimal::ZERO);
        if amount > Decimal::ZERO {
            wanted.push((shelf[at].id, amount));
        }
    }
    store.lay_aside(kept.id, &wanted)
}

/// A part of the work at the table that uses material up when its last step is done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Part {
    /// A layout's sheets of patterned paper.
    Sheet(usize),
    /// Sheets of cardstock cut alike: stock and sheet plan.
    Stock(usize, usize),
    /// The cards of a recipe put together.
    Card(usize),
}

impl Part {
    /// Its name in the ledger.
    fn name(self) -> String {
        match self {
            Part::Sheet(layout) => format!("sheet-{layout}"),
            Part::Stock(stock, sheet) => format!("stock-{stock}-{sheet}"),
            Part::Card(recipe) => format!("card-{recipe}"),
        }
    }
}

/// After a tick: every part that is done has used its material up, every other gives it back.
pub(super) fn after_tick(room: &Room, asked: &Asked, kept: &Kept, made: &Made) -> Result<(), StoreError> {
    let ticks = room.store().ticks(kept.id)?;
    let mut store = room.store();
    let shelf = store.shelf()?;
    if shelf.is_empty() {
        return Ok(());
    }
    let needs = needs(&made.plan);
    room.shelf_changed();
    for (part, done) in super::table::parts(made, &ticks) {
        if !done {
            store.give_back(kept.id, &part.name(), asked.now)?;
            continue;
        }
        let mut takes = Vec::new();
        for need in &needs {
            let amount = takes_of(&made.plan, part, need);
            if let Some(at) = trade::item_of(need, shelf.iter().map(|shelved| &shelved.item)).filter(|_| amount > 0) {
                takes.push((shelf[at].id, trade::in_item(need, &shelf[at].item.unit, amount)));
            }
        }
        store.use_up(kept.id, &part.name(), &takes, asked.now)?;
    }
    Ok(())
}

/// How much of a need a part takes, in the need's own measure.
fn takes_of(plan: &Plan, part: Part, need: &Need) -> u64 {
    use cards::buying::NeedOf;
    match (part, need.of) {
        (Part::Sheet(index), NeedOf::Paper(pack)) => plan
            .layouts
            .get(index)
            .filter(|layout| layout.pack == pack)
            .map_or(0, |layout| layout.sheets.iter().map(|used| u64::from(used.sheets)).sum()),
        (Part::Stock(stock, sheet), NeedOf::Cardstock(cardstock, size)) => plan
            .stocks
            .get(stock)
            .filter(|stock| stock.cardstock == cardstock)
            .and_then(|stock| stock.sheets.get(sheet))
            .filter(|cut| cut.size == size)
            .map_or(0, |cut| u64::from(cut.times)),
        (Part::Card(recipe), of) => cards::buying::used_by(plan, of, |card| card.recipe == recipe),
        _ => 0,
    }
}
