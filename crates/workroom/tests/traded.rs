//! Supplies, Post and Class in the workroom and on the command line: what each shows, what is kept, what is refused.
#![allow(clippy::unwrap_used, reason = "tests")]

use std::ffi::OsString;

use workroom::web::{Answer, Asked, Method, Room, answer};

const DEMO: &str = include_str!("../../../examples/kettle-and-quince-whole-pack.toml");

struct Visit {
    room: Room,
    /// 1 November 2026.
    now: i64,
}

impl Visit {
    /// The whole pack is project 2, as the workroom begins.
    fn new() -> Visit {
        Visit { room: Room::in_memory(1_000).unwrap(), now: 1_793_491_200 }
    }

    fn get(&self, address: &str) -> Answer {
        let (path, query) = address.split_once('?').unwrap_or((address, ""));
        let pair = |pair: &str| pair.split_once('=').map(|(key, value)| (key.to_owned(), value.to_owned()));
        let query = query.split('&').filter_map(pair).collect();
        let asked = Asked { method: Method::Get, path: path.to_owned(), query, fields: Vec::new(), now: self.now };
        answer(&self.room, &asked)
    }

    fn post(&self, path: &str, fields: &[(&str, &str)]) -> Answer {
        let fields = fields.iter().map(|(key, value)| ((*key).to_owned(), value.as_bytes().to_vec())).collect();
        let asked = Asked { method: Method::Post, path: path.to_owned(), query: Vec::new(), fields, now: self.now };
        answer(&self.room, &asked)
    }

    fn page(&self, address: &str) -> String {
        let answered = self.get(address);
        assert_eq!(answered.status, 200, "{address}");
        text(&answered)
    }

    /// Puts something on the shelf.
    fn shelve(&self, kind: &str, name: &str, amount: &str, unit: &str) -> Answer {
        let fields = [("act", "save"), ("kind", kind), ("name", name), ("amount", amount), ("unit", unit)];
        self.post("/w/2/shelf", &fields)
    }
}

fn text(answer: &Answer) -> String {
    let text = String::from_utf8(answer.body.clone()).unwrap();
    assert!(!text.contains('⟨'), "a message is missing: {}", text.split('⟨').nth(1).unwrap_or_default());
    text
}

fn said(args: &[&str]) -> (u8, String, String) {
    let (mut out, mut err) = (Vec::new(), Vec::new());
    let args = std::iter::once("octavo").chain(args.iter().copied()).map(OsString::from);
    let code = workroom::cli::run(args, &mut out, &mut err);
    (code, String::from_utf8(out).unwrap(), String::from_utf8(err).unwrap())
}

#[test]
fn the_pages_say_what_the_engines_found() {
    let visit = Visit::new();
    let post = visit.page("/w/2/post");
    for part in
        ["13.0 g", "2.64 mm", "letter machinable", "Grossbrief", "Confirm with your local operator", "none entered"]
    {
        assert!(post.contains(part), "{part}");
    }
    let supplies = visit.page("/w/2/supplies");
    for part in ["9.60 GBP saved", "174.60 GBP", "139.64 GBP", "25.88 GBP", "5.35", "Nothing is on the shelf yet"] {
        assert!(supplies.contains(part), "{part}");
    }
    // Every card's share, and what batches have together.
    for part in ["all 192 cards", "Every card’s share, to the coin", "97–", "cut off to the coin"] {
        assert!(supplies.contains(part), "{part}");
    }
    let class = visit.page("/w/2/class");
    for part in [
        "as many of each print as every other",
        "For 16 kits that are not cut yet",
        "96 × base, scored and not folded",
        "16 × mat Hedge",
        "16 × spare strip",
    ] {
        assert!(class.contains(part), "{part}");
    }
    for part in
        ["16 kits", "2026-11-14 Saturday", "233.17 GBP", "102.83 GBP", "6 × base, scored and not folded", "minors"]
    {
        assert!(class.contains(part), "{part}");
    }
    // A project without a class says how to begin one.
    assert!(visit.page("/w/1/class").contains("No class is planned yet"));
}

/// Each caution on the page that its row of the list of cautions names.
#[test]
fn cautions_stand_on_the_pages_they_belong_to() {
    let visit = Visit::new();
    // At the table, what is laid has cautions of its own: of glue, of heat and vapours for words, of ribbon.
    let steps = (1..200).map(|step| visit.get(&format!("/w/1/table?step={step}"))).take(22);
    let laid: Vec<String> = steps.map(|step| text(&step)).filter(|step| step.contains("Hot glue")).collect();
    assert!(laid.len() > 3 && laid.iter().all(|step| !step.contains("live blade")));
    for part in ["burn skin", "vapours", "near an infant"] {
        let told = laid.iter().filter(|step| step.contains(part)).count();
        assert_eq!(told, 1, "{part}");
    }
    for (page, parts) in [
        ("paper", &["damp paper grows"][..]),
        ("cardstock", &["in daylight"]),
        ("cards", &["under 3", "button cells", "near an infant", "one card completely"]),
        ("supplies", &["other people’s works", "non-toxic", "may be taxed", "only in if you entered them"]),
        (
            "post",
            &["local operator", "uneven or stiff", "weigh one finished card", "Square, tall-addressed", "customs form"],
        ),
        (
            "class",
            &["fingertip", "burn skin", "vapours", "glue guns", "under 3", "minors", "personal data", "may be taxed"],
        ),
        ("share", &["other people’s works", "your own data", "people or their work"]),
        ("table", &["live blade", "fingertip", "narrow strip", "kick the blade", "craft knife"]),
    ] {
        let text = visit.page(&format!("/w/2/{page}"));
        for part in parts {
            assert!(text.contains(part), "{page}: {part}");
        }
    }
}

#[test]
fn seats_and_prices_are_changed_on_the_pages() {
    let visit = Visit::new();
    let changed = visit.post(
        "/w/2/edit",
        &[("seen", "1"), ("page", "class"), ("set:class.seats", "18"), ("set:class.cut_kits", "16")],
    );
    assert_eq!(changed.status, 303);
    let class = visit.page("/w/2/class");
    assert!(class.contains("20 kits") && class.contains("4 are still to cut"), "never what is cut");
    assert!(!class.contains("Cut before the class"), "the plan's 16 kits are cut; further sheets are told");
    let fees = visit.post(
        "/w/2/edit",
        &[("seen", "2"), ("page", "supplies"), ("set:selling.fees", "10"), ("set:minutes.card", "4")],
    );
    assert_eq!(fees.status, 303);
    assert!(visit.page("/w/2/supplies").contains("6.35"), "a minute more a card");
    let bad = visit.post("/w/2/edit", &[("seen", "3"), ("page", "post"), ("set:post.extras", "a bit")]);
    assert_eq!(bad.status, 422);
    assert!(text(&bad).contains("is not a weight"));
    let past = visit.post("/w/2/edit", &[("seen", "3"), ("page", "class"), ("set:class.date", "2020-02-29")]);
    assert_eq!(past.status, 303);
    assert!(visit.page("/w/2/class").contains("is over: today is 2026-11-01"));
    // A class where there was none.
    let first = visit.post("/w/1/edit", &[("seen", "1"), ("page", "class"), ("set:class.seats", "5")]);
    assert_eq!(first.status, 303);
}

#[test]
fn ticking_the_last_step_uses_up_and_undoing_gives_back() {
    let visit = Visit::new();
    assert_eq!(visit.shelve("cardstock", "Milk", "100", "sheet").status, 303);
    assert_eq!(visit.shelve("ribbon", "slate ribbon", "40", "yd").status, 303);
    let supplies = visit.page("/w/2/supplies");
    assert!(supplies.contains("Milk: 100 sheets (Laid aside: 96 here)"), "planning lays aside");
    assert!(supplies.contains("slate ribbon: 40 yd (Laid aside: 40 here)"), "never more than there is");
    // Every step of every part, in the order of the table.
    let mut keys = Vec::new();
    let mut step = 1;
    loop {
        let page = visit.page(&format!("/w/2/table?step={step}"));
        let key = page.split("name=\"step\" value=\"").nth(1).unwrap().split('"').next().unwrap().to_owned();
        if keys.last() == Some(&key) {
            break;
        }
        keys.push(key);
        step += 1;
    }
    let milk: Vec<&String> = keys.iter().filter(|key| key.starts_with("stock-0-0-")).collect();
    let cards: Vec<&String> = keys.iter().filter(|key| key.starts_with("card-")).collect();
    assert!(milk.len() > 1 && cards.len() > 10);
    let shelf = || visit.page("/w/2/supplies");
    for key in &milk[..milk.len() - 1] {
        visit.post("/w/2/tick", &[("step", key), ("done", "yes")]);
    }
    assert!(shelf().contains("Milk: 100 sheets"), "the last step is still open");
    let last = milk[milk.len() - 1].as_str();
    visit.post("/w/2/tick", &[("step", last), ("done", "yes")]);
    assert!(shelf().contains("Milk: 4 sheets"), "96 are used up");
    assert!(shelf().contains("used up -96"));
    visit.post("/w/2/tick", &[("step", last), ("done", "no")]);
    assert!(shelf().contains("Milk: 100 sheets (Laid aside: 96 here)") && shelf().contains("given back +96"));
    for key in &cards {
        visit.post("/w/2/tick", &[("step", key), ("done", "yes")]);
    }
    // 1536 in are 42 2/3 yd: 2.67 more than there were.
    let page = shelf();
    assert!(page.contains("slate ribbon: 0 yd"), "no amount goes below nothing");
    assert!(page.contains("more was wanted and not there"), "and it is told");
}

#[test]
fn one_click_changes_the_colours_that_save_packs() {
    let visit = Visit::new();
    let supplies = || visit.page("/w/2/supplies");
    assert!(supplies().contains("9.60 GBP saved") && supplies().contains("Change the colours"));
    assert_eq!(visit.post("/w/2/swap", &[("seen", "1"), ("page", "supplies")]).status, 303);
    let page = supplies();
    assert!(!page.contains("GBP saved") && page.contains("165.00 GBP"), "four packs of mats, and no more to save");
    for (name, count) in [("Pot Blue", 60), ("Brick", 60), ("Hedge", 36), ("Quince", 36)] {
        let row = page.split(&format!(">{name}<")).nth(1).unwrap();
        assert!(row.split("</tr>").next().unwrap().contains(&format!("{count} mats")), "{name}: {count}");
    }
    // Only cards that are posted changed: every kit is as it was.
    let batch = visit.page("/w/2/batch");
    assert_eq!(batch.matches("cut from Hedge").count() + batch.matches("cut from Quince").count(), 8);
    assert!(visit.page("/w/2/class").contains("all kits alike"));
    // What saves nothing any more changes nothing, undo brings all of it back, an old tab is refused.
    assert_eq!(visit.post("/w/2/swap", &[("seen", "2"), ("page", "supplies")]).status, 303);
    assert_eq!(visit.post("/w/2/undo", &[("seen", "2"), ("page", "supplies")]).status, 303);
    assert!(supplies().contains("9.60 GBP saved") && supplies().contains("174.60 GBP"));
    assert_eq!(visit.post("/w/2/swap", &[("seen", "2"), ("page", "supplies")]).status, 409);
    // With mats on the shelf there is nothing to save.
    visit.shelve("cardstock", "Pot Blue", "13", "sheet");
    visit.shelve("cardstock", "Brick", "13", "sheet");
    assert!(!supplies().contains("GBP saved"));
}

#[test]
fn a_sheet_to_write_on_is_given_and_taken_on_the_page() {
    let visit = Visit::new();
    let edit = |seen: &str, fields: &[(&str, &str)]| {
        let fields = [&[("seen", seen), ("page", "cards")][..], fields].concat();
        visit.post("/w/2/edit", &fields).status
    };
    assert!(!visit.page("/w/2/supplies").contains("a black pen reads"), "Milk is light");
    assert_eq!(edit("1", &[("set:recipe.1.base", "Pot Blue")]), 303);
    for page in ["supplies", "cards"] {
        assert!(visit.page(&format!("/w/2/{page}")).contains("a black pen reads only 2.9 : 1 on Pot Blue"), "{page}");
    }
    let given = [("set:recipe.1.inside.size", "6 3/4 x 4 3/4"), ("set:recipe.1.inside.cardstock", "Milk")];
    assert_eq!(edit("2", &given), 303);
    let supplies = visit.page("/w/2/supplies");
    assert!(supplies.contains("80 inside sheets") && !supplies.contains("a black pen reads"));
    assert!(visit.page("/w/2/class").contains("5 × inside sheet Milk"), "five of the six cards of a kit have one");
    let handout = text(&visit.get("/w/2/file/handout.txt"));
    assert!(handout.contains("Glue the inside sheet into the card along its fold."));
    // A step more at the table; then it is taken away, whatever its cardstock says.
    assert!(visit.page("/w/2/table").contains("Twin with a bow: inside sheet"));
    assert_eq!(edit("3", &[("set:recipe.1.inside.size", ""), ("set:recipe.1.inside.cardstock", "Milk")]), 303);
    assert!(
        !visit.page("/w/2/supplies").contains("inside sheet,")
            && !text(&visit.get("/w/2/file/project.toml")).contains("inside =")
    );
    let large = [("set:recipe.1.inside.size", "8 x 9"), ("set:recipe.1.inside.cardstock", "Milk")];
    assert_eq!(edit("4", &large), 303, "too large: told, not refused");
    assert!(visit.page("/w/2/cards").contains("larger than the open base"));
}

/// Planning lays aside, the table uses up, undoing gives back, and the ledger says why: in that order, on no page but those
/// on which a maker does it.
#[test]
fn planning_reserves_whichever_page_is_looked_at() {
    let visit = Visit::new();
    visit.shelve("cardstock", "Milk", "250", "sheet");
    // The other project is only looked at: it lays aside what is free, and the shelf names it.
    visit.page("/w/2/cards");
    visit.page("/w/1/layout");
    let shelf = || visit.page("/w/2/supplies");
    let name = store::project_file::read(&text(&visit.get("/w/1/file/project.toml"))).unwrap().name;
    let milk = || shelf().split("Milk: ").nth(1).unwrap().split("</summary>").next().unwrap().to_owned();
    assert_eq!(milk(), format!("250 sheets (Laid aside: 24 for {name}, 96 here)"));
    // Fewer cards lay aside less, without a look at the supplies; undo lays aside more again.
    let fewer = visit.post("/w/1/edit", &[("seen", "1"), ("page", "batch"), ("set:goal.cards", "40")]);
    assert_eq!(fewer.status, 303);
    visit.page("/w/1/batch");
    assert_eq!(milk(), format!("250 sheets (Laid aside: 20 for {name}, 96 here)"));
    visit.post("/w/1/undo", &[("seen", "2"), ("page", "batch")]);
    visit.page("/w/1/batch");
    assert_eq!(milk(), format!("250 sheets (Laid aside: 24 for {name}, 96 here)"));
    // What is used up at the table of the other project is told here with its day and what it was for.
    let mut step = 1;
    let (mut last, mut milk_key) = (String::new(), String::new());
    loop {
        let page = visit.page(&format!("/w/1/table?step={step}"));
        let key = page.split("name=\"step\" value=\"").nth(1).unwrap().split('"').next().unwrap().to_owned();
        if key == last {
            break;
        }
        visit.post("/w/1/tick", &[("step", &key), ("done", "yes")]);
        if key.starts_with("stock-0-0-") {
            milk_key.clone_from(&key);
        }
        (last, step) = (key, step + 1);
    }
    assert_eq!(milk(), "226 sheets (Laid aside: 96 here)", "used up, and not laid aside any more");
    let page = shelf();
    assert!(page.contains("2026-11-01: counted +250; 250 there"));
    assert!(page.contains(&format!("2026-11-01: used up -24 (cardstock cut, {name}); 226 there")));
    visit.post("/w/1/tick", &[("step", &milk_key), ("done", "no")]);
    assert!(shelf().contains(&format!("given back +24 (cardstock cut, {name}); 250 there")));
    assert_eq!(milk(), format!("250 sheets (Laid aside: 24 for {name}, 96 here)"), "and laid aside again");
    // A project that is put away keeps nothing aside.
    visit.post("/w/1/away", &[]);
    assert_eq!(milk(), "250 sheets (Laid aside: 96 here)");
}

#[test]
fn prices_in_two_currencies_and_below_nothing_are_told_with_a_way_on() {
    let visit = Visit::new();
    let price = r#"{ amount = "6.50", currency = "EUR" }"#;
    let toml = text(&visit.get("/w/2/file/project.toml"));
    let mixed = toml.replace("price = \"6.50\"", &format!("price = {price}"));
    assert_eq!(visit.post("/w/2/text", &[("seen", "1"), ("text", &mixed)]).status, 303);
    let page = visit.page("/w/2/supplies");
    assert!(page.contains("in several currencies (GBP, EUR), not added up: write every price in one of them"));
    let below = toml.replace("price = \"6.50\"", "price = \"-6.50\"");
    let refused = visit.post("/w/2/text", &[("seen", "2"), ("text", &below)]);
    assert_eq!(refused.status, 422);
    assert!(text(&refused).contains("-6.50"), "the place and the value are named");
    let none = toml.replace(", price = \"6.50\"", "");
    assert_eq!(visit.post("/w/2/text", &[("seen", "2"), ("text", &none)]).status, 303);
    assert!(
        visit.page("/w/2/supplies").contains("at least")
            && visit.page("/w/2/supplies").contains("No price is told of Envelopes")
    );
    // A table of the shelf in other encodings: with a mark, in 16 bits, as old spreadsheets have it.
    let import = |bytes: &[u8]| {
        let fields = vec![("act".to_owned(), b"import".to_vec()), ("table".to_owned(), bytes.to_vec())];
        let asked = Asked { method: Method::Post, path: "/w/2/shelf".to_owned(), query: Vec::new(), fields, now: 0 };
        answer(&visit.room, &asked).status
    };
    let table = "kind;name;amount;unit\r\nribbon;Grün;1,5;m\r\n";
    let wide: Vec<u8> = table.encode_utf16().flat_map(u16::to_le_bytes).collect();
    let old: Vec<u8> = table.chars().map(|sign| if sign == 'ü' { 0xfc } else { u8::try_from(sign).unwrap() }).collect();
    for bytes in [[b"\xef\xbb\xbf", table.as_bytes()].concat(), [b"\xff\xfe", wide.as_slice()].concat(), old] {
        assert_eq!(import(&bytes), 303);
        assert!(visit.page("/w/2/supplies").contains("Grün: 1.5 m"));
    }
    assert_eq!(import(b"\x89PNG\0\0"), 422);
}

#[test]
fn a_class_has_its_times() {
    let visit = Visit::new();
    let class = visit.page("/w/2/class");
    assert!(class.contains("3 h 0 min for 6 cards") && class.contains("Write down when the class begins"));
    let edit = |seen: &str, fields: &[(&str, &str)]| {
        visit.post("/w/2/edit", &[&[("seen", seen), ("page", "class")][..], fields].concat())
    };
    let told = [("set:class.starts", "13:30"), ("set:class.pause_minutes", "20"), ("set:class.welcome_minutes", "10")];
    assert_eq!(edit("1", &told).status, 303);
    let class = visit.page("/w/2/class");
    // 10 to arrive, three of 25, 20 of a pause, three of 25, 15 to spare: 3 h 15 min, by hand.
    for part in ["3 h 15 min", "13:30–13:40", "13:40–14:05", "14:30–14:55", "14:55–15:15", "16:05–16:30", "16:30–16:45"]
    {
        assert!(class.contains(part), "{part}");
    }
    assert_eq!(edit("2", &[("set:class.starts", "22:00")]).status, 303);
    assert!(visit.page("/w/2/class").contains("take until after midnight"));
    let bad = edit("3", &[("set:class.starts", "half past two")]);
    assert_eq!(bad.status, 422);
    assert!(text(&bad).contains("is not a time of the day"));
    let (_, out, _) = said(&["class", "--demo", "--today", "2026-11-01"]);
    assert!(out.contains("–  card 6, 25 min"), "{out}");
}

#[test]
fn two_tabs_and_bad_amounts_are_refused_with_a_way_on() {
    let visit = Visit::new();
    visit.shelve("cardstock", "Milk", "100", "sheet");
    let seen =
        [("act", "save"), ("id", "1"), ("revision", "1"), ("kind", "cardstock"), ("name", "Milk"), ("unit", "sheet")];
    let change = |amount: &'static str| visit.post("/w/2/shelf", &[&seen[..], &[("amount", amount)]].concat());
    assert_eq!(change("50").status, 303);
    let stale = change("70");
    assert_eq!(stale.status, 422);
    let told = text(&stale);
    assert!(
        told.contains("Somebody else changed Milk") && told.contains("counted -50") && told.contains("50 sheets now")
    );
    assert!(
        told.contains("Milk: 70 sheets") && told.contains("not kept yet"),
        "what was typed is told, so that it is not lost"
    );
    for (amount, part) in
        [("-3", "below nothing"), ("many", "is no amount"), ("", "is no amount"), ("1.234,5", "is no amount")]
    {
        let refused = visit.shelve("foam", "Foam", amount, "piece");
        assert_eq!(refused.status, 422, "{amount}");
        assert!(text(&refused).contains(part), "{amount}: {part}");
    }
    assert!(text(&visit.shelve("cardstock", "milk", "1", "sheet")).contains("on the shelf already"));
    assert_eq!(visit.shelve("gold", "Bar", "1", "sheet").status, 422);
}

#[test]
fn a_table_is_read_whole_or_refused_and_saved_without_formulas() {
    let visit = Visit::new();
    let import = |table: &str| visit.post("/w/2/shelf", &[("act", "import"), ("table", table)]);
    let bad = import("kind;name;amount;unit\ncardstock;Milk;-5;sheet\ncardstock;Brick;x;sheet\n");
    assert_eq!(bad.status, 422);
    let told = text(&bad);
    assert!(told.contains("Line 2, column 3 (amount)") && told.contains("Line 3, column 3"), "{told}");
    assert_eq!(import("kind;name;amount;unit;place\ncardstock;Milk;9,5;sheet;=1+1\n").status, 303);
    let saved = text(&visit.get("/w/2/file/shelf.csv"));
    assert!(saved.contains("cardstock,Milk,9.5,sheet") && saved.contains("'=1+1"), "{saved}");
    // Spoken German, it has decimal commas and semicolons; read again, it is the same shelf.
    let german = words::speaking(words::Language::German, || visit.get("/w/2/file/shelf.csv").body);
    let german = String::from_utf8(german).unwrap();
    assert!(german.contains("cardstock;Milk;9,5;sheet"), "{german}");
    assert_eq!(import(&german).status, 303);
    assert_eq!(text(&visit.get("/w/2/file/shelf.csv")), saved);
}

#[test]
fn the_short_handout_is_one_page() {
    let visit = Visit::new();
    for query in ["", "?print=large", "?sheet=a4&units=mm", "?hand=left"] {
        let file = visit.get(&format!("/w/2/file/one-page.pdf{query}"));
        assert_eq!(file.status, 200);
        assert!(file.body.starts_with(b"%PDF"), "{query}");
    }
    let project = store::project_file::read(DEMO).unwrap();
    let plan = cards::plan::plan(&project, &mut cards::plan::Budget::nodes(50_000_000));
    for print in [drawing::sheets::Print::Normal, drawing::sheets::Print::Large] {
        let edition = drawing::sheets::Edition {
            print,
            ..drawing::sheets::Edition::plain(&plan, drawing::sheets::Paper::Letter)
        };
        let pages = drawing::sheets::one_page(&plan, &edition);
        assert_eq!(pages.len(), 1);
        assert!(format!("{:?}", pages[0]).contains("blade"), "short as it is, it is cut by");
    }
}

#[test]
fn labels_come_as_a_file() {
    let visit = Visit::new();
    for on in ["plain", "three-ten", "two-five", "two-seven"] {
        let file = visit.get(&format!("/w/2/file/labels.pdf?on={on}"));
        assert_eq!((file.status, file.kind), (200, "application/pdf"));
        assert!(file.body.starts_with(b"%PDF"), "{on}");
    }
    assert_eq!(visit.get("/w/1/file/labels.pdf").status, 404);
}

#[test]
fn the_command_line_says_the_same() {
    let (code, out, err) = said(&["post", "--demo"]);
    assert_eq!((code, err.as_str()), (0, ""));
    assert!(out.contains("13.0 g") && out.contains("Confirm with your local operator"));
    let (_, json, _) = said(&["post", "--demo", "--json"]);
    let post: serde_json::Value = serde_json::from_str(&json).unwrap();
    assert_eq!(post[0]["grams"], "13.0");
    assert_eq!(post[0]["operators"].as_array().unwrap().len(), 8);
    let (_, json, _) = said(&["supplies", "--demo", "--json"]);
    let supplies: serde_json::Value = serde_json::from_str(&json).unwrap();
    assert_eq!((&supplies["bought"]["amount"], &supplies["swap"]["saves"]), (&"174.6".into(), &"9.6".into()));
    let coins = |row: &serde_json::Value| row["used"].as_str().unwrap().parse::<rust_decimal::Decimal>().unwrap();
    let many = |row: &serde_json::Value| row["last"].as_u64().unwrap() - row["first"].as_u64().unwrap() + 1;
    let rows = supplies["cards"].as_array().unwrap();
    let sum: rust_decimal::Decimal = rows.iter().map(|row| coins(row) * rust_decimal::Decimal::from(many(row))).sum();
    assert_eq!(sum.to_string(), "139.64", "what is used, to the cent");
    let (code, json, _) = said(&["class", "--demo", "--today", "2026-11-01", "--json"]);
    let class: serde_json::Value = serde_json::from_str(&json).unwrap();
    assert_eq!((code, &class["money"]["over"], &class["kits"]), (0, &"102.83".into(), &16.into()));
    let swapped = std::env::temp_dir().join(format!("octavo-swapped-{}.toml", std::process::id()));
    let swap = || said(&["supplies", "--demo", "--swapped", swapped.to_str().unwrap()]);
    assert_eq!(swap().0, 0);
    assert_eq!(swap().0, 2, "a file that is there is left as it is");
    let (_, json, _) = said(&["supplies", swapped.to_str().unwrap(), "--json"]);
    let again: serde_json::Value = serde_json::from_str(&json).unwrap();
    assert_eq!((&again["bought"]["amount"], &again["swap"]), (&"165".into(), &serde_json::Value::Null));
    std::fs::remove_file(&swapped).unwrap();
    let shelf = std::env::temp_dir().join(format!("octavo-shelf-{}.csv", std::process::id()));
    std::fs::write(&shelf, "kind,name,amount,unit\ncardstock,Milk,96,sheet\nadhesive,Tape,2,roll\n").unwrap();
    let (code, out, _) = said(&["supplies", "--demo", "--shelf", shelf.to_str().unwrap()]);
    assert_eq!(code, 0);
    assert!(
        out.contains("Milk: 96 sheets (sheets for 192 bases, 192 greeting strips); on the shelf 96 sheets; buy none"),
        "{out}"
    );
    assert!(out.contains("buy 7 packs of 13.1 yd"), "{out}");
    std::fs::write(&shelf, "kind,name,amount,unit\ncardstock,Milk,-96,sheet\n").unwrap();
    let (code, _, err) = said(&["supplies", "--demo", "--shelf", shelf.to_str().unwrap()]);
    std::fs::remove_file(&shelf).unwrap();
    assert_eq!(code, 2);
    assert!(err.contains("Line 2, column 3 (amount)"), "{err}");
}

#[test]
fn the_makers_own_postage_is_written_down_on_the_page() {
    let visit = Visit::new();
    assert!(visit.page("/w/2/post").contains("Nothing is written down yet"));
    let rate = |seen: &str, of: &str, up_to: &str, price: &str, date: &str| {
        let fields = [
            ("seen", seen),
            ("page", "post"),
            ("set:rate.of", of),
            ("set:rate.up_to", up_to),
            ("set:rate.price", price),
            ("set:rate.date", date),
        ];
        visit.post("/w/2/rates", &fields)
    };
    assert_eq!(rate("1", "Royal Mail|Letter", "100 g", "1,70", "2026-11-20").status, 303);
    let post = visit.page("/w/2/post");
    assert!(post.contains("1.70 GBP on 2026-11-20"), "a decimal comma is money too");
    assert!(post.contains("100") && post.contains("Royal Mail: Letter"));
    // What cannot be read is told, and stays where it was typed.
    for (up_to, price, date) in
        [("heavy", "1", "2026-11-20"), ("", "cheap", "2026-11-20"), ("", "", ""), ("", "-1", ""), ("", "1", "soon")]
    {
        let refused = rate("2", "Royal Mail|Letter", up_to, price, date);
        assert_eq!(refused.status, 422, "{up_to} {price} {date}");
        assert!(text(&refused).contains("role=\"alert\""));
    }
    assert_eq!(rate("2", "nobody", "", "1", "").status, 422);
    // A file that holds a list in one line takes another line too; the last taken away leaves none.
    assert_eq!(rate("2", "USPS|letter", "1 oz", "0.80", "2026-11-20").status, 303);
    let take = |seen: &str, index: &str| visit.post("/w/2/rates", &[("seen", seen), ("page", "post"), ("take", index)]);
    assert_eq!(take("3", "7").status, 422);
    assert_eq!(take("3", "0").status, 303);
    assert_eq!(take("4", "0").status, 303);
    assert!(visit.page("/w/2/post").contains("Nothing is written down yet"));
}
