//! The shelf: amounts with their reasons, two tabs, and tables from other programs.
#![allow(clippy::unwrap_used, reason = "tests")]

use proptest::prelude::*;
use rust_decimal::Decimal;
use store::projects::{ProjectId, Projects};
use store::shelf::table::{Decimals, guarded, number, read, write};
use store::shelf::{Item, ShelfError};

fn item(kind: &str, name: &str, amount: i64) -> Item {
    Item {
        kind: kind.to_owned(),
        name: name.to_owned(),
        amount: Decimal::from(amount),
        unit: "sheet".to_owned(),
        price: Some(Decimal::new(480, 2)),
        buys: Some(Decimal::from(12)),
        currency: "GBP".to_owned(),
        priced_on: Some("2026-11-01".to_owned()),
        place: "blue box".to_owned(),
        color: if kind == "marker" { "#66834f".to_owned() } else { String::new() },
    }
}

fn there(store: &Projects, id: i64) -> Decimal {
    store.shelf().unwrap().into_iter().find(|shelved| shelved.id == id).unwrap().item.amount
}

#[test]
fn the_ledger_says_why_every_amount_is_what_it_is() {
    let mut store = Projects::in_memory().unwrap();
    let project = store.add("x", "begun", 1).unwrap();
    let id = store.shelve(&item("cardstock", "Milk", 10), None, "counted", 2).unwrap();
    store.lay_aside(project, &[(id, Decimal::from(8))]).unwrap();
    assert_eq!(store.shelf().unwrap()[0].held, [(project, Decimal::from(8))]);
    let other = store.add("y", "begun", 3).unwrap();
    assert_eq!(store.shelf().unwrap()[0].free_for(other), Decimal::from(2));
    // Laid aside is never more than there is.
    store.lay_aside(other, &[(id, Decimal::from(5))]).unwrap();
    assert_eq!(store.shelf().unwrap()[0].held[1].1, Decimal::from(2));
    store.use_up(project, "stock-0", &[(id, Decimal::from(8))], 4).unwrap();
    store.use_up(project, "stock-0", &[(id, Decimal::from(8))], 5).unwrap();
    assert_eq!(there(&store, id), Decimal::from(2), "a part is used up once");
    assert_eq!(store.shelf().unwrap()[0].held, [(other, Decimal::from(2))]);
    store.give_back(project, "stock-0", 6).unwrap();
    store.give_back(project, "stock-0", 7).unwrap();
    assert_eq!(there(&store, id), Decimal::from(10));
    store.use_up(project, "stock-0", &[(id, Decimal::from(8))], 8).unwrap();
    let ledger = store.shelf_ledger(id).unwrap();
    let told: Vec<(&str, String)> = ledger.iter().map(|entry| (entry.why.as_str(), entry.amount.to_string())).collect();
    let wanted = [("counted", "10"), ("used", "-8"), ("returned", "8"), ("used", "-8")];
    assert_eq!(told, wanted.map(|(why, amount)| (why, amount.to_owned())));
    assert_eq!(ledger.iter().map(|entry| entry.amount).sum::<Decimal>(), there(&store, id));
    let after: Vec<String> = ledger.iter().map(|entry| entry.there.to_string()).collect();
    assert_eq!(after, ["10", "2", "10", "2"], "what was there after each");
}

#[test]
fn nothing_goes_below_nothing_silently() {
    let mut store = Projects::in_memory().unwrap();
    let project = store.add("x", "begun", 1).unwrap();
    let id = store.shelve(&item("cardstock", "Milk", 3), None, "counted", 2).unwrap();
    store.use_up(project, "a", &[(id, Decimal::from(5))], 3).unwrap();
    let last = store.shelf_ledger(id).unwrap().pop().unwrap();
    assert_eq!((last.amount, last.short), (Decimal::from(-3), Decimal::TWO));
    assert_eq!(there(&store, id), Decimal::ZERO);
    store.give_back(project, "a", 4).unwrap();
    assert_eq!(there(&store, id), Decimal::from(3), "what was not taken is not given back");
    let below = Item { amount: Decimal::from(-1), ..item("cardstock", "Brick", 0) };
    assert_eq!(store.shelve(&below, None, "counted", 5), Err(ShelfError::Negative(Decimal::from(-1))));
    let price = Item { price: Some(Decimal::new(-1, 2)), ..item("cardstock", "Brick", 0) };
    assert!(matches!(store.shelve(&price, None, "counted", 5), Err(ShelfError::Negative(_))));
    for bad in [
        Item { kind: "gold".into(), ..item("paper", "x", 0) },
        Item { unit: "ell".into(), ..item("paper", "x", 0) },
        Item { currency: "pounds".into(), ..item("paper", "x", 0) },
        Item { priced_on: Some("2026-02-30".into()), ..item("paper", "x", 0) },
        item("paper", "  ", 0),
    ] {
        assert!(matches!(store.shelve(&bad, None, "counted", 5), Err(ShelfError::Bad(_))), "{bad:?}");
    }
    assert_eq!(store.shelf().unwrap().len(), 1);
}

#[test]
fn the_later_of_two_tabs_is_told_what_changed() {
    let mut store = Projects::in_memory().unwrap();
    let id = store.shelve(&item("cardstock", "Milk", 10), None, "counted", 1).unwrap();
    let seen = store.shelf().unwrap()[0].revision;
    let mine = Item { amount: Decimal::from(7), ..item("cardstock", "Milk", 0) };
    store.shelve(&item("cardstock", "Milk", 60), Some((id, seen)), "bought", 2).unwrap();
    let Err(ShelfError::Stale { now, since }) = store.shelve(&mine, Some((id, seen)), "counted", 3) else {
        panic!("kept over a newer one")
    };
    assert_eq!((now.item.amount, since.len(), since[0].amount), (Decimal::from(60), 1, Decimal::from(50)));
    assert_eq!(since[0].why, "bought");
    assert_eq!(there(&store, id), Decimal::from(60));
    assert!(matches!(store.unshelve((id, seen), 4), Err(ShelfError::Stale { .. })));
    store.unshelve((id, now.revision), 5).unwrap();
    assert_eq!(store.shelve(&mine, Some((id, now.revision)), "counted", 6), Err(ShelfError::Gone));
    assert!(store.shelf().unwrap().is_empty());
    assert_eq!(store.shelf_ledger(id).unwrap().len(), 2, "its ledger is kept");
}

#[test]
fn a_name_lies_once_on_the_shelf_and_a_table_replaces_all_or_nothing() {
    let mut store = Projects::in_memory().unwrap();
    store.shelve(&item("cardstock", "Milk", 10), None, "counted", 1).unwrap();
    let taken = store.shelve(&item("cardstock", " MILK", 1), None, "counted", 2);
    assert_eq!(taken, Err(ShelfError::Taken(" MILK".to_owned())));
    store.shelve(&item("paper", "Milk", 1), None, "counted", 2).unwrap();
    let bad = [item("cardstock", "Milk", 4), Item { unit: "ell".into(), ..item("foam", "Foam", 1) }];
    assert!(store.shelve_all(&bad, 3).is_err());
    assert_eq!(store.shelf().unwrap()[0].item.amount, Decimal::from(10), "all or nothing");
    store.shelve_all(&[item("cardstock", "milk", 4), item("foam", "Foam", 1)], 4).unwrap();
    let amounts: Vec<(String, Decimal)> =
        store.shelf().unwrap().into_iter().map(|shelved| (shelved.item.kind, shelved.item.amount)).collect();
    let wanted = [("cardstock", 4), ("foam", 1), ("paper", 1)];
    assert_eq!(amounts, wanted.map(|(kind, amount)| (kind.to_owned(), Decimal::from(amount))));
}

#[test]
fn a_backup_holds_the_shelf_and_what_was_spoiled() {
    let mut store = Projects::in_memory().unwrap();
    let project = store.add("x", "begun", 1).unwrap();
    let id = store.shelve(&item("cardstock", "Milk", 10), None, "counted", 1).unwrap();
    store.lay_aside(project, &[(id, Decimal::ONE)]).unwrap();
    store.spoil(project, "A1", 2).unwrap();
    let scratch = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("shelf-{}.db", std::process::id()));
    let bytes = store.backup_bytes(&scratch).unwrap();
    let before = (store.shelf().unwrap(), store.spoiled(project).unwrap());
    store.shelve(&item("cardstock", "Brick", 1), None, "counted", 3).unwrap();
    store.restore(&bytes, &scratch).unwrap();
    assert_eq!((store.shelf().unwrap(), store.spoiled(project).unwrap()), before);
    assert_eq!(project, ProjectId(1));
}

const TABLE: &str =
    "kind;name;amount;unit;price;currency\r\ncardstock;Milch weiß;12;sheet;4,80;EUR\r\nribbon;Grün;9,5;m;3;EUR\r\n";

#[test]
fn tables_of_other_programs_are_read() {
    let wanted = read(TABLE.as_bytes()).unwrap();
    assert_eq!(wanted.len(), 2);
    assert_eq!((wanted[0].name.as_str(), wanted[0].price), ("Milch weiß", Some(Decimal::new(480, 2))));
    assert_eq!(wanted[1].amount, Decimal::new(95, 1));
    let marked = [b"\xef\xbb\xbf".as_slice(), TABLE.as_bytes()].concat();
    let western: Vec<u8> = TABLE.chars().map(|sign| u8::try_from(u32::from(sign)).unwrap()).collect();
    let words: Vec<u16> = TABLE.encode_utf16().collect();
    let little: Vec<u8> = [0xfeff].iter().chain(&words).flat_map(|word| word.to_le_bytes()).collect();
    let big: Vec<u8> = [0xfeff].iter().chain(&words).flat_map(|word| word.to_be_bytes()).collect();
    for (name, bytes) in [("UTF-8 with a mark", marked), ("Windows-1252", western), ("UTF-16 LE", little), ("BE", big)]
    {
        assert_eq!(read(&bytes).as_ref(), Ok(&wanted), "{name}");
    }
    let euro = b"kind,name,amount,unit,place\nother,\"5 \x80 tin\",1,piece,\x93loft\x94\n";
    assert_eq!((&*read(euro).unwrap()[0].name, &*read(euro).unwrap()[0].place), ("5 € tin", "“loft”"));
    let tabs = TABLE.replace(';', "\t");
    assert_eq!(read(tabs.as_bytes()), Ok(wanted.clone()));
    let quoted = "kind,name,amount,unit,price,currency\ncardstock,\"Milch weiß\",12,sheet,\"4,80\",eur\nribbon,Grün,\"9,5\",m,3,EUR\n";
    assert_eq!(read(quoted.as_bytes()), Ok(wanted));
}

#[test]
fn every_mistake_of_a_table_has_its_line_and_column() {
    let text = "kind,name,amount,unit,price,currency,priced_on,colour\n\
                gold,Bar,1,sheet,,,,\n\
                paper,,1,sheet,,,,\n\
                paper,A,-1,sheet,,,,\n\
                paper,B,\"1,234\",sheet,,,,\n\
                paper,C,many,sheet,-3,,,\n\
                paper,D,1,ell,,,,\n\
                paper,E,1,sheet,1,pounds,2026-02-30,\n\
                paper,F,,sheet,,,,\n\
                paper,F2,1,sheet,,,,\n\
                paper,f2,1,sheet,,,,\n\
                paper,G,1,sheet,,,,,,\n";
    let found: Vec<(u64, usize, &str)> =
        read(text.as_bytes()).unwrap_err().iter().map(|problem| (problem.line, problem.column, problem.code)).collect();
    let wanted = [
        (1, 8, "unknown-column"),
        (2, 1, "kind"),
        (3, 2, "name"),
        (4, 3, "negative"),
        (5, 3, "two-separators"),
        (6, 3, "no-number"),
        (6, 5, "negative"),
        (7, 4, "unit"),
        (8, 6, "currency"),
        (8, 7, "day"),
        (9, 3, "no-number"),
        (11, 2, "twice"),
        (12, 0, "too-wide"),
    ];
    assert_eq!(found, wanted);
    let code = |bytes: &[u8]| read(bytes).unwrap_err()[0].code;
    assert_eq!(code(b""), "empty");
    assert_eq!(code(b"kind,name\npaper,A\n"), "no-column");
    assert_eq!(code(b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR"), "not-text");
    assert_eq!(code(&vec![b'a'; 5 << 20]), "too-large");
    assert_eq!(code(b"\xff\xfeo"), "not-text");
}

#[test]
fn no_cell_becomes_a_formula() {
    for cell in ["=1+1", "+44 20", "-5", "@SUM(A1)", "\tx", "\rx", "'=quoted"] {
        assert!(guarded(cell).starts_with('\''), "{cell}");
    }
    assert_eq!(guarded("Milk = white"), "Milk = white");
    let item = Item { place: "=HYPERLINK(\"http://x\",\"y\")".into(), ..item("paper", "@home", 1) };
    let table = String::from_utf8(write(std::slice::from_ref(&item), Decimals::Point)).unwrap();
    assert!(table.starts_with('\u{feff}'));
    assert!(table.contains(",'@home") || table.contains("'@home"));
    assert!(table.contains("\"'=HYPERLINK("), "{table}");
    assert_eq!(read(table.as_bytes()), Ok(vec![item]));
}

#[test]
fn numbers_with_points_or_commas() {
    let value = |text: &str| number(text).map(|number| number.to_string());
    assert_eq!(value("4,80"), Ok("4.80".into()));
    assert_eq!(value("0,125"), Ok("0.125".into()));
    assert_eq!(value("1234.5"), Ok("1234.5".into()));
    for (text, code) in [
        ("1.234,5", "two-separators"),
        ("1,234", "two-separators"),
        ("-1", "negative"),
        ("1e5", "no-number"),
        ("", "no-number"),
        ("999999999", "too-much"),
    ] {
        assert_eq!(value(text), Err(code), "{text}");
    }
}

proptest! {
    #[test]
    fn any_shelf_is_written_and_read_back(
        names in proptest::collection::btree_set("[a-z=+@' -]{0,6}[a-z][\",;é]{0,2}", 1..6),
        amount in 0..100_000_i64,
        place in "[=a-z'@\"]{0,8}",
    ) {
        let names: std::collections::BTreeSet<String> = names.iter().map(|name| name.trim().to_owned()).collect();
        let items: Vec<Item> = names
            .iter()
            .map(|name| Item { amount: Decimal::new(amount, 2), place: place.clone(), ..item("paper", name, 0) })
            .collect();
        prop_assert_eq!(read(&write(&items, Decimals::Point)), Ok(items.clone()));
        // A comma before three digits is written so that it is not taken for thousands: the value is the same.
        let same = |items: Vec<Item>| -> Vec<Item> {
            let flat = |number: Decimal| number.normalize();
            let one = |item: Item| Item {
                amount: flat(item.amount),
                price: item.price.map(flat),
                buys: item.buys.map(flat),
                ..item
            };
            items.into_iter().map(one).collect()
        };
        prop_assert_eq!(read(&write(&items, Decimals::Comma)).map(same), Ok(same(items)));
    }

    #[test]
    fn no_bytes_panic(bytes in proptest::collection::vec(any::<u8>(), 0..200)) {
        let _ = read(&bytes);
        let _ = read(&[b"kind,name,amount,unit\n".as_slice(), &bytes].concat());
    }
}

/// Source: a table as spreadsheets write it where the decimal sign is a comma (RFC 4180 with semicolons, common practice).
#[test]
fn a_table_with_decimal_commas_is_written_and_read() {
    let one = Item { amount: "9.5".parse().unwrap(), buys: "1.125".parse().ok(), ..item("ribbon", "Slate; wide", 1) };
    let one = Item { place: "=1+1".to_owned(), ..one };
    let table = String::from_utf8(write(std::slice::from_ref(&one), Decimals::Comma)).unwrap();
    assert!(table.starts_with("\u{feff}kind;name;amount;unit;price;buys"), "{table}");
    assert!(
        table.contains("ribbon;\"Slate; wide\";9,5;") && table.contains(";1,1250;") && table.contains("'=1+1"),
        "{table}"
    );
    let back = read(table.as_bytes()).unwrap();
    assert_eq!((back[0].amount, back[0].buys, &back[0].place), (one.amount, one.buys, &one.place));
}
