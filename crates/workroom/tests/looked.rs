//! What fresh eyes look for in prints and colours: what is seen in a print, what a greeting is stamped on, whose colours lie
//! nearest, and a card as others see it.
//!
//! Source: contrast ratio of WCAG 2.2, worked out here anew; the pictures of a print are drawn here, so that their places are
//! known.
#![allow(clippy::unwrap_used, reason = "tests")]

use std::fs;

use serde_json::Value;
use workroom::web::{Answer, Asked, Method, Room, answer};

#[path = "common/folder.rs"]
mod folder;
#[path = "common/run.rs"]
mod run;

use folder::Folder;
use run::octavo;

const EXAMPLE: &str = include_str!("../../../examples/kettle-and-quince.toml");

fn asked(room: &Room, method: Method, path: &str, fields: &[(&str, &str)]) -> Answer {
    let (path, query) = path.split_once('?').unwrap_or((path, ""));
    let pair = |pair: &str| pair.split_once('=').map(|(key, value)| (key.to_owned(), value.to_owned()));
    let query = query.split('&').filter_map(pair).collect();
    let fields = fields.iter().map(|(key, value)| ((*key).to_owned(), value.as_bytes().to_vec())).collect();
    answer(room, &Asked { method, path: path.to_owned(), query, fields, now: 2_000 })
}

fn page(room: &Room, path: &str) -> String {
    let answered = asked(room, Method::Get, path, &[]);
    assert_eq!(answered.status, 200, "{path}");
    let text = String::from_utf8(answered.body).unwrap();
    assert!(!text.contains('⟨'), "a message is missing in {path}");
    text
}

/// A pale sheet, 240 pixels for 12 in, with discs of 2 in in strong colours in boxes at these places in inches (a square
/// would be one of a check, and no picture).
fn discs(places: &[(u32, u32)]) -> Vec<u8> {
    let colors = [[168, 40, 40], [30, 80, 140], [40, 110, 40]];
    let inside = |x: u32, y: u32, (l, t): (u32, u32)| {
        let (dx, dy) = (i64::from(x) - i64::from(l * 20 + 20), i64::from(y) - i64::from(t * 20 + 20));
        dx * dx + dy * dy < 400
    };
    let dot = |x: u32, y: u32| {
        let on = places.iter().position(|place| inside(x, y, *place));
        on.map_or([240, 233, 218], |at| colors[at % 3])
    };
    let rgb: Vec<u8> = (0..240).flat_map(|y| (0..240).flat_map(move |x| dot(x, y))).collect();
    workroom::pictures::png(240, 240, &rgb).unwrap()
}

#[test]
fn the_pictures_of_a_print_are_told_where_they_lie_and_drawn() {
    let folder = Folder::new("interest");
    let (print, map) = (folder.0.join("print.png"), folder.0.join("map.png"));
    let places = [(1, 2), (8, 3), (4, 9)];
    fs::write(&print, discs(&places)).unwrap();
    let (print, out) = (print.display().to_string(), map.display().to_string());
    let (code, told, _) = octavo(&["interest", &print, "--size", "12x12", "--json"]);
    assert_eq!(code, 0);
    let told: Value = serde_json::from_str(&told).unwrap();
    let inches = |of: &Value, key: &str| {
        let text = of[key].as_str().unwrap().trim_end_matches(" in").to_owned();
        text.split(' ')
            .map(|part| {
                part.split_once('/').map_or_else(
                    || part.parse().unwrap(),
                    |(n, d)| n.parse::<f64>().unwrap() / d.parse::<f64>().unwrap(),
                )
            })
            .sum::<f64>()
    };
    let pictures = told["pictures"].as_array().unwrap();
    assert_eq!(pictures.len(), 3);
    for (x, y) in places {
        let near = |of: &&Value| {
            [("left", x), ("top", y), ("width", 2), ("height", 2)]
                .iter()
                .all(|(key, at)| (inches(of, key) - f64::from(*at)).abs() <= 0.25)
        };
        assert_eq!(pictures.iter().filter(near).count(), 1, "{x} {y}: {told}");
    }
    let (code, told, err) = octavo(&["interest", &print, "--size", "12x12", "--out", &out, "--language", "de"]);
    assert!(
        code == 0 && told.lines().count() == 3 && told.contains("von 10 wert") && err.contains("drei Zehntel"),
        "{told}{err}"
    );
    // Inside a picture the map is darker than beside it.
    let read = workroom::pictures::decode(&fs::read(&map).unwrap()).unwrap();
    let light = |x: u32, y: u32| {
        let at = ((y * read.height / 120) * read.width + x * read.width / 120) as usize * 3;
        read.rgb[at..at + 3].iter().map(|part| u32::from(*part)).sum::<u32>()
    };
    assert!(light(14, 34) + 90 < light(60, 60), "{} {}", light(14, 34), light(60, 60));
    let (code, _, err) = octavo(&["interest", &print, "--size", "huge"]);
    assert!(code == 2 && err.contains("`huge`") && err.contains("such as 12x12"), "{err}");
}

#[test]
fn the_page_of_a_print_says_what_is_seen_and_why_nothing_comes_of_it() {
    let room = Room::in_memory(1_000).unwrap();
    let shown = page(&room, "/w/1/interest?pack=0&design=0&side=front");
    assert!(
        shown.contains("What Octavo sees in fruit on boughs")
            && shown.contains("Why it is so")
            && shown.contains("Keep it whole")
    );
    for (part, kind) in [("sum", "front"), ("edge", "front"), ("distinct", "back"), ("motif", "back")] {
        let drawn = asked(&room, Method::Get, &format!("/w/1/1/interest-0-0-{part}-{kind}.svg"), &[]);
        assert_eq!((drawn.status, drawn.kind), (200, "image/svg+xml"), "{part}");
    }
    assert_eq!(asked(&room, Method::Get, "/w/1/1/interest-0-0-mood-front.svg", &[]).status, 404);
    assert!(page(&room, "/w/1/interest?pack=0&design=0&side=back").contains("does not show on any card now"));
    assert!(page(&room, "/w/1/interest?pack=0&design=3&side=front").contains("cut on its printed lines"));
    assert_eq!(asked(&room, Method::Get, "/w/1/interest?pack=0&design=9&side=back", &[]).status, 404);
    let paper = page(&room, "/w/1/paper");
    assert!(paper.contains("href=\"interest?pack=0&amp;design=5&amp;side=front\""));
}

#[test]
fn where_the_tidy_order_stays_the_cut_pictures_are_seen_and_counted() {
    let room = Room::in_memory(1_000).unwrap();
    let layout = page(&room, "/w/1/layout");
    assert!(layout.contains("See which pictures are cut") && layout.contains("/w/1/1/placed-0-"), "the picture");
    assert!(layout.contains("in plain order)."), "the numbers");
}

#[test]
fn every_face_shows_its_colors_on_the_page_of_paper() {
    let room = Room::in_memory(1_000).unwrap();
    let paper = page(&room, "/w/1/paper");
    assert_eq!(paper.matches("class=\"palette\"").count(), 12);
    assert_eq!(paper.matches("href=\"cardstock#colors-").count(), 6);
    let bar = asked(&room, Method::Get, "/w/1/1/palette-0-2-front.svg", &[]);
    let text = String::from_utf8(bar.body).unwrap();
    // Tea Dot is Brick above all.
    assert!(bar.status == 200 && text.matches("fill=\"#").count() >= 3, "{text}");
    let cardstock = page(&room, "/w/1/cardstock");
    for design in 0..6 {
        let side = if design == 3 { "back" } else { "front" };
        assert!(
            cardstock.contains(&format!("id=\"colors-0-{design}-{side}\""))
                && paper.contains(&format!("cardstock#colors-0-{design}-{side}"))
        );
    }
}

#[test]
fn the_nearest_of_each_kind_is_told_and_what_lies_on_the_shelf_is_held_too() {
    let room = Room::in_memory(1_000).unwrap();
    let before = page(&room, "/w/1/cardstock");
    assert!(
        before.contains("Nearest cardstock: Brick, a good match") && before.contains("Nearest ribbon: Slate ribbon")
    );
    assert!(before.contains("Nearest ink: that of “with thanks”"));
    let item = [
        ("act", "add"),
        ("kind", "ribbon"),
        ("name", "Rust twine"),
        ("amount", "10"),
        ("unit", "yd"),
        ("color", "#aa4c3c"),
    ];
    let seen = before.split("name=\"seen\" value=\"").nth(1).map_or("1", |rest| rest.split('"').next().unwrap());
    let mut fields = vec![("seen", seen), ("page", "supplies")];
    fields.extend(item);
    let put = asked(&room, Method::Post, "/w/1/shelf", &fields);
    assert_eq!(put.status, 303, "{}", String::from_utf8_lossy(&put.body));
    let after = page(&room, "/w/1/cardstock");
    assert!(after.contains("Nearest ribbon: Rust twine, hardly to be told apart"), "the nearest");
    assert!(after.contains("), on your shelf") && after.contains("Rust twine, on your shelf"), "where it is");
}

#[test]
fn any_card_is_seen_as_eyes_with_fewer_colors_see_it() {
    let room = Room::in_memory(1_000).unwrap();
    let shown = page(&room, "/w/1/cardstock?eyes=41");
    assert_eq!(shown.matches("card-41.svg").count(), 5);
    assert!(
        shown.contains("<details class=\"eyes\" id=\"eyes\" open>") && shown.contains("Card 41: Twin, F Dusk Leaf")
    );
    assert_eq!(page(&room, "/w/1/cardstock?eyes=4711").matches("card-1.svg").count(), 5);
}

#[test]
fn any_card_and_the_whole_batch_are_saved_as_pictures() {
    let room = Room::in_memory(1_000).unwrap();
    assert!(page(&room, "/w/2/batch?card=98").contains("/w/2/file/card-98.png"));
    let [one, other] = [97, 98].map(|card| asked(&room, Method::Get, &format!("/w/2/file/card-{card}.png"), &[]));
    assert_eq!((one.status, one.kind), (200, "image/png"));
    assert!(one.body.starts_with(b"\x89PNG") && one.body != other.body, "each its own part of the print");
    assert_eq!(asked(&room, Method::Get, "/w/2/file/card-193.png", &[]).status, 404);
    assert!(page(&room, "/w/2/share").contains("/w/2/file/contact-sheet.png"));
    let sheet = asked(&room, Method::Get, "/w/2/file/contact-sheet.png", &[]);
    let read = workroom::pictures::decode(&sheet.body).unwrap();
    // 192 cards, each nearly an inch by an inch and a half at 100 to the inch.
    assert!(read.width > read.height && read.width > 1_500 && read.height > 1_200, "{} {}", read.width, read.height);
}

/// WCAG 2.2's relative luminance.
fn luminance(rgb: [u8; 3]) -> f64 {
    let part = |value: u8| {
        let value = f64::from(value) / 255.0;
        if value <= 0.04045 { value / 12.92 } else { ((value + 0.055) / 1.055).powf(2.4) }
    };
    0.2126 * part(rgb[0]) + 0.7152 * part(rgb[1]) + 0.0722 * part(rgb[2])
}

#[test]
fn a_greeting_on_a_print_is_read_where_it_is_stamped_and_nowhere_else() {
    // The left half of every panel is white, the right half nearly black: words at the left read, words at the right do not.
    let folder = Folder::new("stamped-on-print");
    let dot = |x: u32| if (x / 15).is_multiple_of(2) { [255, 255, 255] } else { [40, 40, 40] };
    let rgb: Vec<u8> = (0..120).flat_map(|_| (0..120).flat_map(dot)).collect();
    fs::write(folder.0.join("halves.png"), workroom::pictures::png(120, 120, &rgb).unwrap()).unwrap();
    let contrast = |at: &str| {
        let text = EXAMPLE.replace("drawn = \"quince-branch\"", "picture = \"halves.png\"");
        let text = text.replace("inked = \"2 1/4 x 3/8\"", "inked = \"1 x 3/8\"");
        let stamped = format!("prefer = \"3 x 4 1/2\"\ngreeting = \"with thanks\"\nwords_at = \"{at}\"\n");
        let text = text.replace("prefer = \"3 x 4 1/2\"\n", &stamped);
        let file = folder.0.join("cards.toml");
        fs::write(&file, text).unwrap();
        let (code, out, err) = octavo(&["colors", &file.display().to_string(), "--json"]);
        assert_eq!(code, 0, "{err}");
        let told: Value = serde_json::from_str(&out).unwrap();
        let greetings = told["greetings"].as_array().unwrap().clone();
        let on = |what: &str| greetings.iter().find(|of| of["on"].as_str().unwrap().starts_with(what)).unwrap().clone();
        assert!(on("Milk")["contrast"].as_f64().unwrap() > 9.0);
        on("print A (fruit on boughs, worst on card ")["contrast"].as_f64().unwrap()
    };
    // Slate ink on white.
    let least = (luminance([255; 3]) + 0.05) / (luminance([0x3b, 0x41, 0x48]) + 0.05);
    let (left, right) = (contrast("top left"), contrast("top right"));
    assert!(left > least * 0.98, "{left} {least}");
    assert!(right < 1.5, "{right}");
}
