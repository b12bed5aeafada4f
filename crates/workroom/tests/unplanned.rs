//! Plans that do not come: one that breaks on the way, and one that takes long. Nothing kept is lost, and nobody waits
//! for ever.
#![allow(clippy::unwrap_used, clippy::disallowed_methods, reason = "tests, which wait for what other threads do")]

use std::thread::sleep;
use std::time::Duration;

use cards::plan::PrintMaps;
use cards::{Plan, Project};
use cutting::Budget;
use workroom::web::{Answer, Asked, Method, Planner, Room, answer};

/// What a plan of a project with such a name comes to: a mistake of ours, planted.
const BAD: &str = "Unlucky";

fn breaking(project: &Project, _: &PrintMaps, budget: &mut Budget<'_>) -> Plan {
    assert!(!project.name.starts_with(BAD), "planted by a test: this panic is wanted");
    cards::plan::plan(project, budget)
}

/// Does not end before it is stopped.
fn endless(project: &Project, _: &PrintMaps, budget: &mut Budget<'_>) -> Plan {
    while budget.spend(1 << 10).is_ok() {
        budget.tell(None, None);
        sleep(Duration::from_millis(1));
    }
    cards::plan::plan(project, &mut Budget::nodes(1_000_000))
}

struct Visit {
    room: Room,
}

impl Visit {
    fn new(planner: Planner, patience: Duration) -> Visit {
        Visit { room: Room::in_memory(1_000).unwrap().planned_by(planner, patience) }
    }

    fn get(&self, address: &str) -> (u16, String) {
        let (path, query) = address.split_once('?').unwrap_or((address, ""));
        let pair = |pair: &str| pair.split_once('=').map(|(key, value)| (key.to_owned(), value.to_owned()));
        let query = query.split('&').filter_map(pair).collect();
        let path = path.to_owned();
        said(answer(&self.room, &Asked { method: Method::Get, path, query, fields: Vec::new(), now: 2_000 }))
    }

    fn post(&self, path: &str, fields: &[(&str, &str)]) -> (u16, String) {
        let fields = fields.iter().map(|(key, value)| ((*key).to_owned(), value.as_bytes().to_vec())).collect();
        let path = path.to_owned();
        said(answer(&self.room, &Asked { method: Method::Post, path, query: Vec::new(), fields, now: 3_000 }))
    }
}

fn said(answered: Answer) -> (u16, String) {
    let text = String::from_utf8(answered.body).unwrap();
    assert!(!text.contains('⟨'), "a message is missing");
    (answered.status, text)
}

#[test]
fn a_plan_that_breaks_is_told_and_the_edit_and_the_cards_of_before_are_kept() {
    let visit = Visit::new(breaking, Duration::from_secs(60));
    assert_eq!(visit.get("/w/1/cards").0, 200);
    let kept = visit.post("/w/1/edit", &[("seen", "1"), ("page", "cards"), ("set:name", BAD)]);
    assert_eq!(kept.0, 303, "the edit is kept whatever comes of its plan");

    let (status, told) = visit.get("/w/1/cards");
    assert_eq!(status, 500);
    assert!(told.contains("role=\"alert\"") && told.contains("Octavo itself made a mistake"), "{told}");
    assert!(told.contains("The last change is kept: "), "{told}");
    assert!(told.contains("As it was before") && told.contains("/w/1/1/card-1.svg"), "the cards of before: {told}");
    assert!(!told.contains("http-equiv=\"refresh\"") && !told.contains("data-enhance=\"progress\""), "nothing waits");
    assert!(visit.get("/w/1/1/card-1.svg").1.starts_with("<svg"));
    assert!(visit.get("/w/1/progress").1.contains("event: done"), "who listened is told too");
    assert!(visit.get("/").1.contains("Octavo could not work out its plan"), "and so is the table of all projects");
    assert!(visit.get("/w/1/file/project.toml").1.contains(BAD), "her file can be had");

    // What needs the plan is refused in words, and changes nothing.
    for (change, fields) in [
        ("pins", &[("seen", "2"), ("page", "layout")][..]),
        ("recipe", &[("seen", "2"), ("act", "copy")]),
        ("choices", &[("seen", "2"), ("card", "1")]),
        ("move", &[("seen", "2"), ("line", "0"), ("to", "3")]),
        ("swap", &[("seen", "2"), ("page", "supplies")]),
        ("spoil", &[("card", "1")]),
        ("sample", &[("seen", "2"), ("sample", "0")]),
    ] {
        let (status, told) = visit.post(&format!("/w/1/{change}"), fields);
        assert_eq!(status, 500, "{change}");
        assert!(told.contains("needs the plan, so it was not done"), "{change}: {told}");
    }
    assert_eq!(visit.post("/w/1/tick", &[("step", "sheet-0-0"), ("done", "yes")]).0, 303, "a tick needs none");

    // Once more breaks once more; taking it back helps; so does changing the file by hand.
    assert_eq!(visit.post("/w/1/again", &[("seen", "2"), ("page", "cards")]).0, 303);
    assert_eq!(visit.get("/w/1/cards").0, 500);
    assert_eq!(visit.post("/w/1/undo", &[("seen", "2"), ("page", "cards")]).0, 303);
    assert_eq!(visit.get("/w/1/cards").0, 200);
    assert_eq!(visit.post("/w/1/redo", &[("seen", "1"), ("page", "cards")]).0, 303);
    let text = visit.get("/w/1/file/project.toml").1.replace(BAD, "Lucky");
    assert_eq!(visit.post("/w/1/text", &[("seen", "2"), ("text", &text)]).0, 303);
    let (status, told) = visit.get("/w/1/cards");
    assert!(status == 200 && told.contains("Lucky"), "{status}");
}

#[test]
fn a_first_plan_that_breaks_has_no_before_and_a_way_on_all_the_same() {
    let visit = Visit::new(breaking, Duration::from_secs(60));
    let text = visit.get("/w/1/file/project.toml").1;
    let name = text.lines().find(|line| line.starts_with("name = ")).unwrap();
    let text = text.replacen(name, &format!("name = \"{BAD}\""), 1);
    assert_eq!(visit.post("/new", &[("kind", "file"), ("text", &text)]).0, 303);
    let (status, told) = visit.get("/w/3/cards");
    assert_eq!(status, 500);
    assert!(told.contains("Try once more") && told.contains("<textarea"), "{told}");
    assert!(!told.contains("As it was before") && !told.contains("Take the last change back"));
}

#[test]
fn a_tick_does_not_wait_for_a_plan_and_the_shelf_hears_of_it_once_there_is_one() {
    // Which steps cut the first sheet of cardstock, as another room shows them.
    let other = Visit { room: Room::in_memory(1_000).unwrap() };
    let keys: Vec<String> = (1..)
        .map(|step| other.get(&format!("/w/2/table?step={step}")).1)
        .map(|page| page.split("name=\"step\" value=\"").nth(1).unwrap().split('"').next().unwrap().to_owned())
        .skip_while(|key| !key.starts_with("stock-0-0-"))
        .take_while(|key| key.starts_with("stock-0-0-"))
        .collect();
    assert!(keys.len() > 1);

    let visit = Visit::new(endless, Duration::ZERO);
    for key in &keys {
        // An endless plan would keep this test for ever if a tick waited for it.
        assert_eq!(visit.post("/w/2/tick", &[("step", key), ("done", "yes"), ("next", "2")]).0, 303);
    }
    let (status, waits) = visit.get("/w/2/table");
    assert!(status == 200 && waits.contains("s so far") && waits.contains("/w/2/stop"), "{waits}");
    let shelf = [("act", "save"), ("kind", "cardstock"), ("name", "Milk"), ("amount", "100"), ("unit", "sheet")];
    let come = |address: &str| {
        visit.post("/w/2/stop", &[("page", "table")]);
        let shown = std::iter::repeat_with(|| {
            sleep(Duration::from_millis(20));
            visit.get(address).1
        });
        shown.take(3_000).find(|page| !page.contains("/w/2/progress")).unwrap()
    };
    assert_eq!(visit.post("/w/2/shelf", &shelf).0, 303);
    let table = come("/w/2/table");
    assert!(table.contains(&format!("{} of ", keys.len())), "the ticks are there: {table}");
    assert!(come("/w/2/supplies").contains("used up -96"), "and the shelf has heard of them");
}
