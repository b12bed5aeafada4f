//! Layers of a recipe on the Cards page: taken hold of, moved, made larger, refused; one more.
#![allow(clippy::unwrap_used, reason = "tests")]

use workroom::web::{Answer, Asked, Method, Room, answer};

const NOW: i64 = 1_793_491_200;

fn get(room: &Room, address: &str) -> (u16, String) {
    let (path, query) = address.split_once('?').unwrap_or((address, ""));
    let pair = |pair: &str| pair.split_once('=').map(|(key, value)| (key.to_owned(), value.to_owned()));
    let query = query.split('&').filter_map(pair).collect();
    let asked = Asked { method: Method::Get, path: path.to_owned(), query, fields: Vec::new(), now: NOW };
    let answered = answer(room, &asked);
    let text = String::from_utf8(answered.body).unwrap();
    assert!(!text.contains('⟨'), "a message is missing: {}", text.split('⟨').nth(1).unwrap_or_default());
    (answered.status, text)
}

fn post(room: &Room, path: &str, fields: &[(&str, &str)]) -> Answer {
    let fields = fields.iter().map(|(key, value)| ((*key).to_owned(), value.as_bytes().to_vec())).collect();
    answer(room, &Asked { method: Method::Post, path: path.to_owned(), query: Vec::new(), fields, now: NOW })
}

fn file(room: &Room) -> cards::Project {
    store::project_file::read(&get(room, "/w/1/file/project.toml").1).unwrap()
}

fn hold(room: &Room, seen: &str, hold: &str, line: &str, to: &str) -> Answer {
    post(
        room,
        "/w/1/layers",
        &[("seen", seen), ("page", "cards"), ("at", "hands-0"), ("hold", hold), ("line", line), ("to", to)],
    )
}

fn inches(text: &str) -> measure::Length {
    measure::parse_length(text, Some(measure::Unit::Inch)).unwrap()
}

/// Of the demo's recipe: mat, panel, band, ribbon, strip.
const MAT: usize = 0;
const PANEL: usize = 1;
const BAND: usize = 2;
const STRIP: usize = 4;

#[test]
fn a_layer_says_at_once_what_becomes_of_it() {
    let room = Room::in_memory(1_000).unwrap();
    let (_, page) = get(&room, "/w/1/cards");
    assert!(
        page.contains("hold=0-4#hands-0") && !page.contains("data-enhance=\"lines\""),
        "only what is chosen is drawn"
    );
    let (_, page) = get(&room, "/w/1/cards?hold=0-2");
    assert_eq!(page.matches("class=\"grip\"").count(), 5);
    assert!(page.contains("in above, ") && page.contains("class=\"gap\""), "its borders are told and drawn");
    // A ribbon's size comes from its spool: it can only be moved.
    let (_, page) = get(&room, "/w/1/cards?hold=0-3");
    assert_eq!(page.matches("class=\"grip\"").count(), 1);

    let told = |query: &str| get(&room, &format!("/w/1/layers?{query}")).1;
    let moved = told("hold=0-2&line=4&marks=0&down=-3");
    assert!(moved.contains("data-to=\"1/4 in, 2 1/8 in\"") && moved.contains("class=\"said\""), "{moved}");
    assert!(moved.contains("8 cards from a sheet"), "the sheet is cut anew while it moves");
    let over = told("hold=0-2&line=4&marks=9&down=-3");
    assert!(over.contains("class=\"stays\"") && over.contains("over the edge"), "{over}");
    let small = told("hold=0-4&line=2&marks=-40");
    assert!(small.contains("class=\"stays\""), "{small}");
    let greeting = told("hold=0-4&line=2&marks=-7");
    assert!(greeting.contains("runs over the edge of its strip"), "{greeting}");
    for nonsense in [
        "hold=0-9&line=0&marks=1",
        "hold=x&line=0&marks=1",
        "hold=0-3&line=0&marks=1",
        "hold=0-2&line=9&marks=1",
        "hold=0-2&line=0",
        "hold=0-2&line=0&point=NaN",
        "hold=0-2&line=0&marks=99999999999",
    ] {
        assert_eq!(get(&room, &format!("/w/1/layers?{nonsense}")).0, 404, "{nonsense}");
    }
}

#[test]
fn what_is_let_go_is_kept_in_the_file_and_can_be_undone() {
    let room = Room::in_memory(1_000).unwrap();
    let before = file(&room);
    let answered = hold(&room, "1", "0-2", "4", "1/4, 2 1/8");
    assert_eq!(answered.status, 303);
    assert!(answered.to.unwrap().contains("?hold=0-2#"), "it stays in hand");
    let down = |project: &cards::Project| project.recipes[0].layers[BAND].placement.down;
    assert_eq!(down(&before) - down(&file(&room)), inches("3/8 in"));

    // The mat's border all round by its right edge.
    assert_eq!(hold(&room, "2", "0-0", "2", "3 13/32 in").status, 303);
    let cards::model::Material::Mat { border, .. } = file(&room).recipes[0].layers[MAT].material else {
        panic!("no mat")
    };
    assert_eq!(border, inches("1/8 in"), "less than half a mark is none");
    assert_eq!(hold(&room, "2", "0-0", "2", "3 1/2 in").status, 303);
    let cards::model::Material::Mat { border, .. } = file(&room).recipes[0].layers[MAT].material else {
        panic!("no mat")
    };
    assert_eq!(border, inches("1/4 in"));

    // A strip in the middle grows on both sides.
    assert_eq!(hold(&room, "3", "0-4", "2", "3 1/8 in").status, 303);
    let cards::model::Material::Strip { size, .. } = file(&room).recipes[0].layers[STRIP].material else {
        panic!("no strip")
    };
    assert_eq!(size.width, inches("2 3/4 in"));

    // Of a range, the one size that the hand gave is kept, so that it is seen.
    let answered = hold(&room, "4", "0-1", "1", "3/8 in");
    assert_eq!(answered.status, 303);
    let cards::model::Material::Patterned { height, prefer, .. } =
        file(&room).recipes[0].layers[PANEL].material.clone()
    else {
        panic!("no panel")
    };
    assert_eq!((height.least, height.most), (inches("4 1/4 in"), inches("4 1/4 in")));
    assert_eq!(prefer.height, inches("4 1/4 in"));

    for seen in ["5", "4", "3", "2"] {
        post(&room, "/w/1/undo", &[("seen", seen)]);
    }
    assert!(file(&room) == before, "the file is as it was");
}

#[test]
fn what_cannot_be_is_refused_with_the_reason() {
    let room = Room::in_memory(1_000).unwrap();
    let before = file(&room);
    for (name, line, to, reason) in [
        ("0-2", "4", "3, 2", "over the edge"),
        ("0-2", "4", "3", "is no place"),
        ("0-2", "0", "soon", "is no length"),
        ("0-4", "2", "1/2", "smaller than"),
    ] {
        let answered = hold(&room, "1", name, line, to);
        let page = String::from_utf8(answered.body).unwrap();
        assert_eq!(answered.status, 422, "{to}");
        assert!(page.contains(reason), "{to}: no `{reason}`");
    }
    assert_eq!(hold(&room, "1", "0-3", "0", "1").status, 422);
    assert!(file(&room) == before, "the file is as it was");
}

#[test]
fn every_kind_of_layer_can_be_added() {
    for (kind, on, place) in [
        ("mat", "4", 4),
        // Behind the mat that is there: between it and the panel nothing of it would show.
        ("mat", "1", 0),
        ("mat", "", 0),
        // Right on the panel: on top of all they would hide what lies there.
        ("panel", "1", 2),
        ("panel", "0", 2),
        ("band", "1", 2),
        ("plain", "", 0),
        ("across", "1", 5),
        ("strip", "1", 5),
        ("ribbon", "1", 5),
    ] {
        let room = Room::in_memory(1_000).unwrap();
        let before = file(&room);
        let answered = post(
            &room,
            "/w/1/recipe",
            &[("seen", "1"), ("page", "cards"), ("recipe", "0"), ("act", "layer-new"), ("kind", kind), ("on", on)],
        );
        assert_eq!(answered.status, 303, "{kind}");
        let after = file(&room);
        let (old, new) = (&before.recipes[0].layers, &after.recipes[0].layers);
        assert_eq!(new.len(), old.len() + 1, "{kind}");
        let added = &new[place];
        let matches = match (&added.material, kind) {
            (cards::model::Material::Mat { follows, .. }, "mat") => {
                let followed = &new[*follows];
                assert_eq!(followed.name, old[place].name);
                // It takes the place of what it follows, which lies in its middle.
                assert_eq!(added.placement.down, old[place].placement.down);
                followed.placement.down == measure::Length::ZERO
            }
            (cards::model::Material::Patterned { .. }, "panel" | "band") => true,
            // Behind the lowest layer, on the card itself, a mat follows nothing: it is a border smaller than the card.
            (cards::model::Material::Plain { .. }, "plain" | "across" | "mat")
            | (cards::model::Material::Strip { .. }, "strip") => true,
            (cards::model::Material::Ribbon { .. }, "ribbon") => true,
            _ => false,
        };
        assert!(matches, "{kind}: {added:?}");
        let (_, page) = get(&room, "/w/1/cards");
        assert!(page.contains(&added.name), "{kind}");
        // What the mats of the recipe follow stays what it was.
        let panel = |layers: &[cards::model::Layer]| {
            let mat = layers.iter().find(|layer| layer.name == "mat");
            match mat.map(|mat| &mat.material) {
                Some(cards::model::Material::Mat { follows, .. }) => layers[*follows].name.clone(),
                _ => String::new(),
            }
        };
        assert_eq!((panel(old), panel(new)), ("panel".to_owned(), "panel".to_owned()), "{kind} on {on}");
    }
    let room = Room::in_memory(1_000).unwrap();
    for (kind, on, says) in [
        ("lid", "1", "not there"),
        ("panel", "17", "not there"),
        ("panel", "3", "no room"),
        ("mat", "3", "behind a ribbon"),
    ] {
        let answered = post(
            &room,
            "/w/1/recipe",
            &[("seen", "1"), ("page", "cards"), ("recipe", "0"), ("act", "layer-new"), ("kind", kind), ("on", on)],
        );
        assert_eq!(answered.status, 422);
        assert!(String::from_utf8(answered.body).unwrap().contains(says), "{kind} on {on}");
    }
}
