//! The maker's own postage: what she wrote down of a price list, each line with the day on which she saw it.

use cards::days::Day;
use cards::mailing::letter_classes;
use maud::{Markup, html};
use store::projects::Kept;
use toml_edit::{Array, ArrayOfTables, DocumentMut, InlineTable, Item, Table, Value};

use super::answer::{Asked, Desk};
use super::edit::{self, Changed, EditError};
use super::{say, shell};
use crate::trade;

/// Between the operator and its class in what a form sends: a sign that no name holds.
const BETWEEN: char = '|';

/// The table, and a line to add to it.
pub(super) fn section(desk: &Desk<'_>) -> Markup {
    let rates = &desk.made.project().trade.post.rates;
    let to = format!("/w/{}/rates", desk.kept.id.0);
    let typed = |name: &str| desk.typed.get(&format!("rate.{name}")).map_or("", String::as_str);
    let today = Day::of_seconds(desk.asked.now).to_string();
    let on = if typed("date").is_empty() { today.as_str() } else { typed("date") };
    let line = |name: &str, label: String, value: &str, hint: &str| {
        html! { label.field {
            span { (label) }
            input type="text" name=(format!("set:rate.{name}")) value=(value) placeholder=(hint) autocomplete="off" spellcheck="false";
        } }
    };
    html! {
        section id="rates" {
            h2 { (say("rates-title", &[])) }
            p.hint { (say("rates-lead", &[])) }
            @if rates.is_empty() { p { (say("rates-none", &[])) } } @else {
                table {
                    thead { tr {
                        th scope="col" { (say("rates-class", &[])) }
                        th scope="col" { (say("rates-up-to", &[])) }
                        th scope="col" { (say("post-postage", &[])) }
                        th scope="col" { (say("rates-take", &[])) }
                    } }
                    tbody {
                        @for (index, rate) in rates.iter().enumerate() {
                            tr {
                                th scope="row" { (rate.operator) ": " (rate.class) }
                                td { (rate.up_to.map_or_else(|| say("rates-all", &[]), trade::weight)) }
                                td { (trade::rate(Some(rate))) }
                                td { form method="post" action=(to) {
                                    (shell::seen(desk.kept, "post", "rates"))
                                    input type="hidden" name="take" value=(index);
                                    button.quiet type="submit" { (say("rates-take", &[])) }
                                } }
                            }
                        }
                    }
                }
            }
            form.change method="post" action=(to) {
                (shell::seen(desk.kept, "post", "rates"))
                fieldset {
                    label.field {
                        span { (say("rates-class", &[])) }
                        select name="set:rate.of" {
                            @for class in letter_classes() {
                                @let of = format!("{}{BETWEEN}{}", class.operator, class.class);
                                option value=(of) selected[of == typed("of")] { (class.operator) ": " (class.class) }
                            }
                        }
                    }
                    (line("up_to", say("rates-up-to", &[]), typed("up_to"), "100 g"))
                    (line("price", say("rates-price", &[]), typed("price"), "0.85"))
                    (line("date", say("rates-date", &[]), on, &today))
                }
                div.ends { button type="submit" { (say("rates-add", &[])) } }
            }
        }
    }
}

/// A line more, or one fewer.
pub(super) fn change(asked: &Asked, kept: &Kept) -> Result<Option<Changed>, EditError> {
    let mut document = edit::document(&kept.now.text)?;
    if let Ok(index) = asked.field("take").parse() {
        take(&mut document, index)?;
        return Ok(Some(Changed { text: document.to_string(), what: say("rates-taken", &[]) }));
    }
    let fields = asked.changes();
    let typed = |name: &str| fields.iter().find(|(key, _)| key.strip_prefix("rate.") == Some(name));
    let typed = |name: &str| typed(name).map_or("", |(_, value)| value.trim());
    let (operator, class) = typed("of").split_once(BETWEEN).ok_or(EditError::NoPlace)?;
    let mut row = InlineTable::new();
    row.insert("operator", operator.into());
    row.insert("class", class.into());
    if !typed("up_to").is_empty() {
        row.insert("up_to", typed("up_to").into());
    }
    // A decimal comma is how many people write money.
    let amount = typed("price").replace(',', ".");
    let mut price = InlineTable::new();
    price.insert("amount", amount.as_str().into());
    if !typed("date").is_empty() {
        // What is no day stays as it was typed, so that it is told.
        let day = typed("date").parse::<toml_edit::Datetime>().map_or_else(|_| typed("date").into(), Value::from);
        price.insert("date", day);
    }
    row.insert("price", Value::InlineTable(price));
    add(&mut document, row)?;
    let facts = [("class", format!("{operator}, {class}").into()), ("price", amount.into())];
    Ok(Some(Changed { text: document.to_string(), what: say("rates-added", &facts) }))
}

fn add(document: &mut DocumentMut, row: InlineTable) -> Result<(), EditError> {
    let post = document.as_table_mut().entry("post").or_insert_with(|| Item::Table(Table::new()));
    let post = post.as_table_like_mut().ok_or(EditError::NoPlace)?;
    let rates = post.entry("rate").or_insert_with(|| Item::ArrayOfTables(ArrayOfTables::new()));
    match rates {
        Item::ArrayOfTables(all) => all.push(row.into_table()),
        Item::Value(Value::Array(all)) => all.push(row),
        _ => return Err(EditError::NoPlace),
    }
    Ok(())
}

fn take(document: &mut DocumentMut, index: usize) -> Result<(), EditError> {
    let post = document.get_mut("post").and_then(Item::as_table_like_mut).ok_or(EditError::NoPlace)?;
    let rates = post.get_mut("rate").ok_or(EditError::NoPlace)?;
    let left = match rates {
        Item::ArrayOfTables(all) if index < all.len() => {
            all.remove(index);
            all.len()
        }
        Item::Value(Value::Array(all)) if index < all.len() => {
            all.remove(index);
            Array::len(all)
        }
        _ => return Err(EditError::NoPlace),
    };
    if left == 0 {
        post.remove("rate");
    }
    Ok(())
}
