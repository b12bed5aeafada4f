//! The pages of the workroom, asked in process: what each shows, what is kept, what is refused.
#![allow(clippy::unwrap_used, reason = "tests")]

use workroom::web::{Answer, Asked, Method, Room, answer};

#[path = "common/folder.rs"]
mod folder;

const HANDOUT: &str = "thank-you-cards-from-one-sheet-of-each-handout.pdf";

struct Visit {
    room: Room,
}

impl Visit {
    fn new() -> Visit {
        Visit { room: Room::in_memory(1_000).unwrap() }
    }

    fn get(&self, address: &str) -> Answer {
        let (path, query) = address.split_once('?').unwrap_or((address, ""));
        let pair = |pair: &str| pair.split_once('=').map(|(key, value)| (key.to_owned(), value.to_owned()));
        let query = query.split('&').filter_map(pair).collect();
        answer(&self.room, &Asked { method: Method::Get, path: path.to_owned(), query, fields: Vec::new(), now: 2_000 })
    }

    fn post(&self, path: &str, fields: &[(&str, &str)]) -> Answer {
        let fields = fields.iter().map(|(key, value)| ((*key).to_owned(), value.as_bytes().to_vec())).collect();
        answer(
            &self.room,
            &Asked { method: Method::Post, path: path.to_owned(), query: Vec::new(), fields, now: 3_000 },
        )
    }

    fn page(&self, address: &str) -> String {
        let answered = self.get(address);
        assert_eq!(answered.status, 200, "{address}");
        text(&answered)
    }
}

fn text(answer: &Answer) -> String {
    let text = String::from_utf8(answer.body.clone()).unwrap();
    assert!(!text.contains('⟨'), "a message is missing: {}", text.split('⟨').nth(1).unwrap_or_default());
    text
}

fn count(text: &str, what: &str) -> usize {
    text.matches(what).count()
}

#[test]
fn each_page_has_its_heading_and_its_items() {
    let visit = Visit::new();
    let hand = visit.page("/");
    assert!(hand.contains("<h1>Work in hand</h1>") && hand.contains("48 cards from 6 sheets, nothing left over."));
    assert!(hand.contains("192 cards from 24 sheets"), "the whole pack lies on top");
    assert_eq!(count(&hand, "<img class=\"card\""), 9);
    for (page, heading, item, number) in [
        ("paper", "Paper", "<article class=\"design\"", 6),
        ("cards", "Cards", "<section class=\"recipe\"", 1),
        ("layout", "Layout", "class=\"piece\"", 16),
        ("batch", "Batch", "<img class=\"card\"", 48),
        ("cardstock", "Cardstock", "<section class=\"stock\"", 5),
        ("cardstock", "Cardstock", "class=\"palette\"", 6),
        ("table", "Table", "id=\"step\"", 1),
        ("share", "Share", "<ol class=\"pages\"", 3),
    ] {
        let shown = visit.page(&format!("/w/1/{page}"));
        assert!(shown.contains(&format!("<h1>{heading}</h1>")), "{page}");
        assert_eq!(count(&shown, item), number, "{page}");
        assert!(!shown.contains("style=") && !shown.contains("onclick"), "{page} has something inline");
    }
    let without_pictures = visit.page("/w/1/batch").len();
    assert!(without_pictures < 200_000, "{without_pictures}");
}

#[test]
fn an_edit_is_kept_undone_and_redone() {
    let visit = Visit::new();
    let place = "set:recipe.0.layer.0.border";
    let kept = visit.post("/w/1/edit", &[("seen", "1"), ("page", "cards"), ("at", "recipe-1"), (place, "1/16")]);
    assert_eq!((kept.status, kept.to.as_deref()), (303, Some("/w/1/cards#recipe-1")));
    assert!(visit.page("/w/1/cards").contains("Twin, mat: border from"));
    let file = text(&visit.get("/w/1/file/project.toml"));
    assert!(file.starts_with("# Six sheets") && file.contains("border = \"1/16\""));
    visit.post("/w/1/undo", &[("seen", "2")]);
    assert!(text(&visit.get("/w/1/file/project.toml")).contains("border = \"1/8\""));
    visit.post("/w/1/redo", &[("seen", "1")]);
    assert!(text(&visit.get("/w/1/file/project.toml")).contains("border = \"1/16\""));
}

#[test]
fn what_cannot_be_kept_is_refused_with_what_was_typed() {
    let visit = Visit::new();
    for nonsense in ["wide", "-3", "3 parsecs", "<script>alert(1)</script>", "\u{0}\u{1}", "9999999999999999999"] {
        let place = "set:recipe.0.layer.1.width";
        let refused = visit.post("/w/1/edit", &[("seen", "1"), ("page", "cards"), (place, nonsense)]);
        assert_eq!(refused.status, 422, "{nonsense}");
        let shown = text(&refused);
        assert!(shown.contains("role=\"alert\"") && !shown.contains("<script>alert"), "{nonsense}");
        assert!(shown.contains("class=\"remedy\""), "{nonsense}");
    }
    let gone = visit.post("/w/1/edit", &[("seen", "1"), ("set:recipe.9.name", "x")]);
    assert_eq!(gone.status, 422);
    let broken = visit.post("/w/1/text", &[("seen", "1"), ("text", "name = ")]);
    assert_eq!(broken.status, 422);
    assert!(text(&visit.get("/w/1/file/project.toml")).contains("2 3/4 to 3 1/4"));
}

#[test]
fn the_later_of_two_pages_keeps_both() {
    let visit = Visit::new();
    visit.post("/w/1/edit", &[("seen", "1"), ("set:recipe.0.layer.0.border", "1/16")]);
    let late = visit.post("/w/1/edit", &[("seen", "1"), ("page", "cards"), ("set:goal.cards_per_sheet", "7")]);
    assert_eq!(late.status, 409);
    let shown = text(&late);
    assert!(shown.contains("border from") && shown.contains("cards per sheet from 8 to 7"));
    // Keep both: the copy is what was on that page, with the change; the original stays as it was changed elsewhere.
    let mine = shown.split("name=\"text\">").nth(1).unwrap().split("</textarea>").next().unwrap();
    let mine = mine.replace("&quot;", "\"").replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&");
    let copy = visit.post("/w/1/copy", &[("text", &mine)]);
    assert_eq!(copy.to.as_deref(), Some("/w/3/cards"));
    let copied = text(&visit.get("/w/3/file/project.toml"));
    assert!(copied.contains("cards_per_sheet = 7") && copied.contains("border = \"1/8\""));
    let original = text(&visit.get("/w/1/file/project.toml"));
    assert!(original.contains("cards_per_sheet = 8") && original.contains("border = \"1/16\""));
}

#[test]
fn a_later_page_brings_only_what_it_changed() {
    let visit = Visit::new();
    let (border, count) = ("set:recipe.0.layer.0.border", "set:goal.cards_per_sheet");
    visit.post("/w/1/edit", &[("seen", "1"), (border, "1/16")]);
    // The form of the other page still holds the border as it was there.
    let late = visit.post("/w/1/edit", &[("seen", "1"), ("page", "cards"), (border, "1/8"), (count, "7")]);
    let shown = text(&late);
    assert_eq!(late.status, 409);
    let on_top = shown.split("<form").find(|form| form.contains("action=\"/w/1/edit\"")).unwrap();
    assert!(on_top.contains(count) && !on_top.contains(border) && on_top.contains("name=\"seen\" value=\"2\""));
    visit.post("/w/1/edit", &[("seen", "2"), (count, "7")]);
    let now = text(&visit.get("/w/1/file/project.toml"));
    assert!(now.contains("cards_per_sheet = 7") && now.contains("border = \"1/16\""));
}

#[test]
fn a_file_that_cannot_be_read_is_shown_back() {
    let visit = Visit::new();
    let mistaken = "name = \"Mine\"\nsheet = [\n";
    let file = [("kind", "file"), ("file", mistaken)];
    let refused = visit.post("/new", &file);
    let shown = text(&refused);
    assert_eq!(refused.status, 422);
    assert!(shown.contains("role=\"alert\"") && shown.contains("data-line"), "{shown}");
    assert!(shown.contains("\n".to_owned().as_str()) && shown.contains("sheet = [\n</textarea>"));
}

#[test]
fn pins_and_other_layouts_are_taken() {
    let visit = Visit::new();
    let fields = [("seen", "1"), ("layout", "0"), ("pin", "1"), ("left", "0"), ("top", "0"), ("size", "3 x 4 1/2")];
    assert_eq!(visit.post("/w/1/pins", &fields).status, 303);
    assert!(visit.page("/w/1/layout").contains("from the left, 0"));
    visit.post("/w/1/pins", &[("seen", "2"), ("layout", "0"), ("unpin", "0")]);
    let shown = visit.page("/w/1/layout");
    assert!(!shown.contains("name=\"unpin\""));
    if shown.contains("name=\"take\"") {
        let taken = visit.post("/w/1/pins", &[("seen", "3"), ("layout", "0"), ("take", "0")]);
        assert_eq!(taken.status, 303);
        let told = visit.page("/w/1/layout");
        assert!(told.contains("Another layout was taken") && told.contains("class=\"piece\""));
    }
    // A piece pinned outside the sheet is told, and the rest still shown.
    let off = [("seen", "4"), ("layout", "0"), ("pin", "1"), ("left", "40"), ("top", "0"), ("size", "3 x 4 1/2")];
    let answered = visit.post("/w/1/pins", &off);
    assert!([303, 422, 409].contains(&answered.status));
}

#[test]
fn ticks_stay() {
    let visit = Visit::new();
    let shown = visit.page("/w/1/table");
    let step = shown.split("name=\"step\" value=\"").nth(1).unwrap().split('"').next().unwrap();
    assert!(shown.contains("0 of 22 steps done"));
    let done = visit.post("/w/1/tick", &[("step", step), ("done", "yes"), ("next", "2")]);
    assert_eq!(done.to.as_deref(), Some("/w/1/table?step=2#step"));
    // The hand is kept beside the ticks, and is no step.
    visit.post("/w/1/tick", &[("step", "left-hand"), ("done", "yes"), ("next", "2")]);
    assert!(visit.page("/w/1/table").contains("<section class=\"now for-left\""));
    visit.post("/w/1/tick", &[("step", "left-hand"), ("done", "no"), ("next", "2")]);
    assert!(visit.page("/w/1/table").contains("<section class=\"now for-right\""));
    let shown = visit.page("/w/1/table");
    assert!(shown.contains("1 of 22 steps done") && shown.contains("Step 2 of 22"));
    // Another size is another cut: its tick does not count.
    visit.post("/w/1/edit", &[("seen", "1"), ("set:goal.cards_per_sheet", "7")]);
    let shown = visit.page("/w/1/table");
    assert!(shown.contains("0 of ") && shown.contains("1 tick is of an earlier plan"));
}

#[test]
fn a_step_at_the_table_says_its_cardstock_its_fold_and_what_is_pencilled() {
    let visit = Visit::new();
    let steps: Vec<String> = (1..=22).map(|step| visit.page(&format!("/w/1/table?step={step}"))).collect();
    let all = steps.concat();
    assert!(all.contains("Milk, ") && all.contains(" sheets.</p>"));
    assert!(all.contains("the letter of its print and its number, such as A"));
    let fold = steps.iter().find(|step| step.contains("<svg class=\"opened\"")).unwrap();
    assert!(
        fold.contains("Fold at the line scored at 3½\u{a0}in") || fold.contains("Fold at the line scored at 3½ in")
    );
    assert!(!fold.contains("Score at"), "scored once, at the trimmer");
}

#[test]
fn projects_begin_are_put_away_and_taken_back() {
    let visit = Visit::new();
    let pack = [
        ("kind", "pack"),
        ("pack", "Hedge \"row\""),
        ("sheet", "12 x 12 in"),
        ("designs", "3"),
        ("copies", "2"),
        ("format", "4 1/4 x 5 1/2 in"),
    ];
    assert_eq!(visit.post("/new", &pack).to.as_deref(), Some("/w/3/cards"));
    assert!(visit.page("/w/3/cards").contains("Hedge &quot;row&quot;"));
    let metric =
        [("kind", "pack"), ("sheet", "304 x 304 mm"), ("designs", "1"), ("copies", "1"), ("format", "105 x 148 mm")];
    assert_eq!(visit.post("/new", &metric).status, 303);
    assert_eq!(visit.post("/new", &[("kind", "example"), ("example", "four-recipes")]).status, 303);
    for bad in [
        &[("kind", "pack"), ("sheet", "large"), ("designs", "3"), ("copies", "1"), ("format", "3 x 5")][..],
        &[("kind", "pack"), ("sheet", "12 x 12"), ("designs", "0"), ("copies", "1"), ("format", "3 x 5")],
        &[("kind", "pack"), ("sheet", "12 x 12"), ("designs", "1"), ("copies", "1"), ("format", "1/2 x 1/2")],
        &[("kind", "example"), ("example", "../../etc/passwd")],
        &[("kind", "file"), ("text", "")],
        &[("kind", "file"), ("text", "not = [ toml")],
        &[],
    ] {
        let refused = visit.post("/new", bad);
        assert_eq!(refused.status, 422, "{bad:?}");
        assert!(text(&refused).contains("role=\"alert\""));
    }
    visit.post("/w/1/away", &[]);
    assert!(visit.page("/").contains("Take back"));
    visit.post("/w/1/back", &[]);
    assert!(!visit.page("/").contains("Take back"));
}

#[test]
fn files_are_saved_and_come_back() {
    let folder = folder::Folder::new("restored");
    let visit = Visit { room: Room::open(&folder.0.join("octavo.db"), 1_000).unwrap() };
    let aside = || {
        let all = std::fs::read_dir(&folder.0).unwrap().map(|entry| entry.unwrap().file_name());
        all.filter(|name| name.to_string_lossy().starts_with("octavo-before-4000")).count()
    };
    assert!(visit.get("/w/1/file/every-card.pdf").body.starts_with(b"%PDF"));
    let pdf = visit.get("/w/1/file/handout.pdf?print=large");
    assert!(pdf.body.starts_with(b"%PDF") && pdf.file.as_deref() == Some(HANDOUT));
    assert!(visit.get("/w/1/file/plan.json").body.starts_with(b"{"));
    assert!(text(&visit.get("/w/1/file/sheet-1.svg")).contains("<svg"));
    let backup = visit.get("/backup");
    assert_eq!(backup.file.as_deref(), Some("octavo-backup-1970-01-01.db"));
    assert!(backup.body.starts_with(b"SQLite format 3"));
    visit.post("/w/1/edit", &[("seen", "1"), ("set:goal.cards_per_sheet", "7")]);
    let sent = |name: &str, bytes: &[u8]| {
        let fields = vec![(name.to_owned(), bytes.to_vec())];
        let asked = Asked { method: Method::Post, path: "/restore".to_owned(), query: Vec::new(), fields, now: 4_000 };
        answer(&visit.room, &asked)
    };
    assert_eq!(sent("file", b"no backup").status, 422);
    assert!(text(&sent("file", b"")).contains("No file was chosen"));
    let mark = |page: &str, name: &str| {
        let rest = page.split(&format!("name=\"{name}\" value=\"")).nth(1).unwrap();
        rest.split('"').next().unwrap().to_owned()
    };
    // It is asked about first; what is asked about is brought once.
    let restore = |bytes: &[u8]| {
        let asked = text(&sent("file", bytes));
        assert!(asked.contains("projects that lie here would go"));
        let offered = mark(&asked, "offered");
        let brought = sent("offered", offered.as_bytes());
        assert_eq!(sent("offered", offered.as_bytes()).status, 422);
        brought
    };
    assert!(text(&visit.get("/w/1/file/project.toml")).contains("cards_per_sheet = 7"));
    assert_eq!(aside(), 0, "nothing was replaced, so nothing is kept aside");
    // What was there is kept aside each time, and an older copy is never written over, not within one second.
    assert_eq!(restore(&backup.body).status, 303);
    assert_eq!(restore(&backup.body).status, 303);
    assert_eq!(aside(), 2);
    assert!(text(&visit.get("/w/1/file/project.toml")).contains("cards_per_sheet = 8"));
    // What was here comes back at one click; no other name reaches a file.
    let notice = visit.page("/?brought=4000");
    assert!(notice.contains("octavo-before-4000.db"));
    for strange in ["../octavo", "4000/../octavo", "x", "-2", "4001", "4000-"] {
        assert_eq!(sent("aside", strange.as_bytes()).status, 404, "{strange}");
        assert!(!visit.page(&format!("/?brought={strange}")).contains("Brought back"), "{strange}");
    }
    assert_eq!(sent("aside", mark(&notice, "aside").as_bytes()).status, 303);
    assert!(text(&visit.get("/w/1/file/project.toml")).contains("cards_per_sheet = 7"));
}

#[test]
fn no_address_reaches_a_file_and_every_stray_one_is_told() {
    let visit = Visit::new();
    for address in [
        "/../../etc/passwd",
        "/assets/x/../../etc/passwd",
        "/assets/x/%2e%2e%2fCargo.toml",
        "/w/1/file/../../../etc/passwd",
        "/w/1/1/../../x.svg",
        "/w/1/1/card-0.svg",
        "/w/1/1/card-99999999999999999999.svg",
        "/w/1/1/stock-9-9.svg",
        "/w/1/1/page-0.svg",
        "/w/1/99/card-1.svg",
        "/w/1/-1/card-1.svg",
        "/w/99/cards",
        "/w/x/cards",
        "/w/1/nothing",
        "/favicon.ico",
    ] {
        let answered = visit.get(address);
        assert_eq!(answered.status, 404, "{address}");
        assert!(text(&answered).contains("To the work in hand"), "{address}");
    }
    for address in ["/w/1/layout?sheet=0", "/w/1/layout?cut=999", "/w/1/table?step=-4", "/w/1/share?print=vast"] {
        visit.page(address);
    }
    assert!(visit.get("/assets/any/workroom.css").forever);
    assert_eq!(visit.get("/w/1/1/card-1.svg?layers=2&side=other").kind, "image/svg+xml");
}

#[test]
fn pieces_are_swapped_turned_over_and_taken_back() {
    let visit = Visit::new();
    let one = [("page", "batch"), ("at", "card"), ("card", "1"), ("layer", "band")];
    let asked = |seen: &'static str, more: (&'static str, &'static str)| [&one[..], &[("seen", seen), more]].concat();
    // Cards 1 to 8 are of A with bands of C, 9 to 16 of B with bands of F.
    let open = visit.page("/w/1/batch?card=1");
    assert_eq!(count(&open, "class=\"piece-of\""), 2);
    assert!(open.contains("dots shows") && open.contains("plain wash is behind it"));
    let picking = visit.page("/w/1/batch?card=1&swap=band");
    assert_eq!(count(&picking, "class=\"pick\""), 39, "all but itself and the eight of C, whose bands are of A");
    assert_eq!(count(&picking, "one print twice"), 8);
    let swapped = visit.post("/w/1/choices", &asked("1", ("with", "9")));
    assert_eq!((swapped.status, swapped.to.as_deref()), (303, Some("/w/1/batch?card=1#card")));
    let shown = visit.page("/w/1/batch?card=1");
    assert!(shown.contains("large leaves shows") && shown.contains("Cards 1 and 9 swapped their band"));
    let file = text(&visit.get("/w/1/file/project.toml"));
    assert!(file.contains("[[choice]]") && file.contains("with = 9") && file.starts_with("# Six sheets"));
    assert_eq!(visit.post("/w/1/choices", &asked("2", ("turn", "back"))).status, 303);
    assert!(visit.page("/w/1/batch?card=1").contains("speckle shows"));
    // What breaks the rule is refused with its reason, and nothing is kept.
    for (with, why) in
        [("17", "print A twice"), ("1", "with itself"), ("500", "no card 500"), ("soon", "Write the number")]
    {
        let refused = visit.post("/w/1/choices", &asked("3", ("with", with)));
        assert_eq!(refused.status, 422, "{with}");
        assert!(text(&refused).contains(why), "{with}");
    }
    // Turned back is as if it had not been turned; then the swap is taken back, undone, redone.
    visit.post("/w/1/choices", &asked("3", ("turn", "front")));
    assert!(!text(&visit.get("/w/1/file/project.toml")).contains("shows = "));
    visit.post("/w/1/choices", &[("seen", "4"), ("page", "batch"), ("drop", "0")]);
    assert!(!text(&visit.get("/w/1/file/project.toml")).contains("[[choice]]"));
    visit.post("/w/1/undo", &[("seen", "5")]);
    assert!(visit.page("/w/1/batch").contains("Cards 1 and 9 swapped their band"));
    for address in ["/w/1/1/light-1.svg", "/w/1/1/piece-1-1-front.svg", "/w/1/1/piece-1-1-back.svg"] {
        assert_eq!(visit.get(address).kind, "image/svg+xml", "{address}");
    }
    assert_eq!(visit.get("/w/1/1/piece-1-0-back.svg").status, 404, "a mat has no faces");
}

#[test]
fn a_cut_is_moved_shown_while_it_moves_and_kept_when_it_is_let_go() {
    let visit = Visit::new();
    let page = visit.page("/w/1/layout");
    assert!(page.len() < 200_000 && count(&page, "class=\"grip\"") == 6, "{}", page.len());
    assert_eq!(visit.get("/w/1/1/print-0.jpg").kind, "image/jpeg");
    // The lines of the demo: three upright, three level; the first level one lies below the upper panels.
    let level = page.matches("data-axis=\"x\"").count();
    let moved = visit.get(&format!("/w/1/move?layout=0&line={level}&marks=-1"));
    let told = text(&moved);
    assert!(moved.status == 200 && told.contains("class=\"said\"") && told.contains("Nothing left over"), "{told}");
    assert_eq!(count(&told, "class=\"piece\""), 16);
    let to = told.split("data-to=\"").nth(1).unwrap().split('"').next().unwrap().to_owned();
    let stays = text(&visit.get("/w/1/move?layout=0&line=0&marks=5"));
    assert!(stays.contains("class=\"stays\"") && stays.contains("it may be"), "{stays}");
    // Kept by a plain form; the line lies where it was shown, and undo puts it back.
    let line = level.to_string();
    let fields = [("seen", "1"), ("page", "layout"), ("layout", "0"), ("line", line.as_str()), ("to", to.as_str())];
    assert_eq!(visit.post("/w/1/move", &fields).to.as_deref(), Some("/w/1/layout"));
    let kept = visit.page("/w/1/layout");
    assert!(kept.contains(&format!("data-at=\"{to}\"")) && kept.contains("A cut was moved from"));
    assert_eq!(count(&kept, "data-piece="), 16);
    visit.post("/w/1/undo", &[("seen", "2")]);
    assert!(!visit.page("/w/1/layout").contains(&format!("data-at=\"{to}\" data-axis=\"y\"")));
    // What cannot be is refused with the reason and what was typed.
    for (typed, reason) in [("9 in", "it may be"), ("wide", "wide"), ("40 in", "leave the sheet"), ("", "")] {
        let fields = [("seen", "1"), ("page", "layout"), ("layout", "0"), ("line", "0"), ("to", typed)];
        let refused = visit.post("/w/1/move", &fields);
        assert_eq!(refused.status, 422, "{typed}");
        assert!(text(&refused).contains(reason) && text(&refused).contains(&format!("value=\"{typed}\"")), "{typed}");
    }
    for nonsense in [
        "",
        "?layout=9&line=0&marks=1",
        "?layout=0&line=99&marks=1",
        "?layout=0&line=0&point=NaN",
        "?layout=0&line=0&marks=9999999999",
    ] {
        assert_eq!(visit.get(&format!("/w/1/move{nonsense}")).status, 404, "{nonsense}");
    }
}

#[test]
fn no_two_other_layouts_are_told_alike() {
    let visit = Visit::new();
    visit.post("/new", &[("kind", "example"), ("example", "four-recipes")]);
    for project in [1, 2] {
        let page = visit.page(&format!("/w/{project}/layout"));
        let others = page.split("<section class=\"others\"").nth(1).unwrap().split("</section>").next().unwrap();
        let told: Vec<&str> = others
            .split("<li>")
            .skip(1)
            .map(|li| li.split("<form").next().unwrap().split("</svg>").last().unwrap())
            .collect();
        let mut apart = told.clone();
        apart.sort_unstable();
        apart.dedup();
        assert!(!told.is_empty() && apart.len() == told.len(), "{told:?}");
    }
}

#[test]
fn a_spoiled_piece_is_cut_again_and_taken_back() {
    let visit = Visit::new();
    let spoil = |mark: &str| visit.post("/w/1/spoil", &[("page", "table"), ("at", "spoiled"), ("mark", mark)]);
    assert_eq!(spoil("A7").to.as_deref(), Some("/w/1/table#spoiled"));
    let shown = visit.page("/w/1/table");
    assert!(shown.contains("Take one more sheet of A Quince Branch") && shown.contains("No fewer sheets would do."));
    assert!(count(&shown, "<h4>") >= 2, "the cuts are told");
    // The second of the same print comes out of what the first left.
    spoil("a7");
    assert!(visit.page("/w/1/table").contains("left when the earlier one was cut again"));
    spoil("Milk base");
    assert!(visit.page("/w/1/table").contains("Take one more sheet of Milk"));
    // A refusal comes back to the form, says why beside it, and keeps what was typed; the address can be loaded again.
    let refused = |answer: &Answer| visit.page(answer.to.as_deref().unwrap().split('#').next().unwrap());
    let answer = spoil("Z9");
    assert_eq!(answer.to.as_deref(), Some("/w/1/table?refused=mark&mark=Z9&layout=#spoiled-why"));
    let shown = refused(&answer);
    assert!(shown.contains("There is no piece Z9.") && shown.contains("name=\"mark\" value=\"Z9\""));
    assert!(refused(&spoil("")).contains("Say which piece it is"));
    let other = visit.post("/w/1/spoil", &[("piece", "paper-0-0-0-ff")]);
    assert!(refused(&other).contains("belongs to an earlier plan. Choose it again."));
    let shown = visit.page("/w/1/table");
    assert_eq!(count(&shown, "class=\"again\""), 3);
    assert_eq!(count(&shown, "name=\"back\""), 3, "each can be taken back");
    visit.post("/w/1/tick", &[("step", "spoiled-3"), ("done", "yes"), ("then", "spoiled")]);
    assert!(visit.page("/w/1/table").contains("cut again</span>"));
    let early = visit.post("/w/1/spoil", &[("page", "table"), ("back", "1")]);
    assert!(refused(&early).contains("is cut again already"));
    let shown = visit.page("/w/1/table");
    assert_eq!(count(&shown, "class=\"again\""), 3, "what was before one that is cut stands");
    assert_eq!((count(&shown, "name=\"back\""), count(&shown, "Take the tick of that one away first")), (1, 2));
    visit.post("/w/1/spoil", &[("page", "table"), ("back", "3")]);
    assert_eq!(count(&visit.page("/w/1/table"), "class=\"again\""), 2);
    // Another plan has other pieces; undone, they count again.
    visit.post("/w/1/edit", &[("seen", "1"), ("set:goal.cards_per_sheet", "7")]);
    let shown = visit.page("/w/1/table");
    assert!(shown.contains("2 spoiled pieces belong to an earlier plan") && count(&shown, "class=\"again\"") == 0);
    visit.post("/w/1/undo", &[("seen", "2")]);
    assert_eq!(count(&visit.page("/w/1/table"), "class=\"again\""), 2);
    // From a card's piece on the Batch page.
    let open = visit.page("/w/1/batch?card=3");
    let key = open.split("name=\"piece\" value=\"").nth(1).unwrap().split('"').next().unwrap();
    assert_eq!(visit.post("/w/1/spoil", &[("page", "table"), ("at", "spoiled"), ("piece", key)]).status, 303);
    assert_eq!(count(&visit.page("/w/1/table"), "class=\"again\""), 3);
}

#[test]
fn a_sample_is_measured_and_the_rest_planned_with_it() {
    let visit = Visit::new();
    let shown = visit.page("/w/1/table");
    assert!(shown.contains("Sample first") && !shown.contains("class=\"measured\""));
    // Parts of the demo's card: mat, panel, band, ribbon, strip.
    let told = visit.page("/w/1/table?sample=0&w1=3&h1=4+9/16&w2=3 1/16&h2=wide".replace('+', " ").as_str());
    assert!(told.contains("panel, width: 3 in is fine"), "{told}");
    assert!(told.contains("panel, height:") && told.contains("too much") && told.contains("is no length"));
    assert!(told.contains("Where the stop is set to") || told.contains("It is the rest of its row"));
    // A narrower band is planned: a new revision, undone like any other.
    let fields = [("seen", "1"), ("page", "table"), ("at", "sample"), ("sample", "0"), ("h2", "1 3/8")];
    let kept = visit.post("/w/1/sample", &fields);
    if kept.status == 303 {
        assert!(text(&visit.get("/w/1/file/project.toml")).contains("1 3/8"));
        visit.post("/w/1/undo", &[("seen", "2")]);
    } else {
        assert!(kept.status == 422 && text(&kept).contains("cards instead of 48"));
    }
    assert!(!text(&visit.get("/w/1/file/project.toml")).contains("1 3/8"));
    // Panels that no sheet gives eight of are refused, and nothing is kept.
    let fields = [("seen", "1"), ("page", "table"), ("sample", "0"), ("w1", "3 1/16"), ("h1", "4 3/4")];
    let refused = visit.post("/w/1/sample", &fields);
    assert!(refused.status == 422 && text(&refused).contains("cards instead of 48"), "{}", refused.status);
}

#[test]
fn a_picture_is_put_on_a_face_turned_and_refused_where_it_is_none() {
    let visit = Visit::new();
    let give = |seen: &str, act: &str, bytes: &[u8]| {
        let text = |key: &str, value: &str| (key.to_owned(), value.as_bytes().to_vec());
        let mut fields = vec![text("seen", seen), text("page", "paper"), text("pack", "0"), text("design", "0")];
        fields.extend([text("side", "front"), text("act", act), ("file".to_owned(), bytes.to_vec())]);
        answer(
            &visit.room,
            &Asked { method: Method::Post, path: "/w/1/face".to_owned(), query: Vec::new(), fields, now: 5_000 },
        )
    };
    let file = || text(&visit.get("/w/1/file/project.toml"));
    let before = visit.get("/w/1/1/card-1.svg").body;
    // Left half black, right half white.
    let picture = image::RgbImage::from_fn(40, 40, |x, _| image::Rgb([if x < 20 { 0 } else { 255 }; 3]));
    let mut png = std::io::Cursor::new(Vec::new());
    picture.write_to(&mut png, image::ImageFormat::Png).unwrap();
    for (bad, why) in
        [(&b"GIF89a nothing"[..], "neither PNG"), (&b""[..], "neither"), (&png.get_ref()[..60], "cut off")]
    {
        let refused = give("1", "picture", bad);
        assert_eq!(refused.status, 422);
        assert!(text(&refused).contains(why), "{why}");
    }
    assert_eq!(give("1", "turn", b"").status, 422, "there is none to turn");
    assert_eq!(give("1", "picture", png.get_ref()).status, 303);
    assert!(
        file().contains("picture = \"")
            && !file().contains("drawn = \"quince-branch\"")
            && file().starts_with("# Six sheets")
    );
    assert!(visit.page("/w/1/paper").contains("A picture was put on"));
    assert_ne!(visit.get("/w/1/2/card-1.svg").body, before, "the card shows it");
    let face = visit.get("/w/1/2/face-0-0-front.svg").body;
    assert_eq!(give("2", "turn", b"").status, 303);
    assert_ne!(visit.get("/w/1/3/face-0-0-front.svg").body, face);
    assert_eq!(give("3", "arrow", b"").status, 303);
    assert!(visit.page("/w/1/paper").contains("The arrow of"));
    visit.post("/w/1/undo", &[("seen", "4")]);
    visit.post("/w/1/undo", &[("seen", "3")]);
    visit.post("/w/1/undo", &[("seen", "2")]);
    assert!(!file().contains("picture = \""));

    // The other side shows by one click; a picture from a page of before is not put over that.
    let page = visit.page("/w/1/paper");
    assert!(page.contains("the pack costs") && page.contains("name=\"set:pack.0.design.0.up\" value=\"back\""));
    visit.post("/w/1/edit", &[("seen", "1"), ("page", "paper"), ("set:pack.0.design.0.up", "back")]);
    assert!(file().contains("up = \"back\""));
    let stale = give("1", "picture", png.get_ref());
    assert_eq!(stale.status, 409);
    assert!(file().contains("up = \"back\"") && !file().contains("picture = \""), "nothing was put over it");
}
