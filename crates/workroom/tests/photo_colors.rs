//! Colours of a photo put right by a known patch reach everything that is made of them, undo brings back what was before, and
//! the patches go wherever the photo goes: copies, a file brought in, a backup brought back, a turned picture.
//!
//! Source: the drawn papers' own colours, which the pages must show again once a drawn lamp's cast was put right; the lamp
//! multiplies light (IEC 61966-2-1:1999 says how light becomes levels; worked out here anew).
#![allow(clippy::unwrap_used, reason = "tests")]
#![allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "levels of 0 to 255")]

#[path = "common/folder.rs"]
mod folder;
#[path = "common/served.rs"]
mod served;

use folder::Folder;
use served::{Line, Served};

/// Ground and stripes of the drawn sheet, and the card beside it, as they are.
const TRUE: [[u8; 3]; 3] = [[226, 214, 190], [96, 124, 168], [128, 128, 128]];
/// What the lamp leaves of red, green and blue light.
const LAMP: [f64; 3] = [1.0, 0.78, 0.5];
/// The patch on the card: its middle in the photo, and its colour in truth.
const CARD: (&str, &str) = ("40,40", "#808080");
const CORNERS: [(&str, &str); 8] = [
    ("tl-x", "90"),
    ("tl-y", "70"),
    ("tr-x", "330"),
    ("tr-y", "80"),
    ("br-x", "320"),
    ("br-y", "250"),
    ("bl-x", "100"),
    ("bl-y", "240"),
];
/// The face that the photo is put on: the front of design B.
const FACE: [(&str, &str); 3] = [("pack", "0"), ("design", "1"), ("side", "front")];

/// A colour under the lamp.
fn lit(color: [u8; 3]) -> [u8; 3] {
    let one = |level: u8, left: f64| {
        let value = f64::from(level) / 255.0;
        let light = if value <= 0.04045 { value / 12.92 } else { ((value + 0.055) / 1.055).powf(2.4) } * left;
        let coded = if light <= 0.003_130_8 { light * 12.92 } else { 1.055 * light.powf(1.0 / 2.4) - 0.055 };
        (coded * 255.0).round() as u8
    };
    [one(color[0], LAMP[0]), one(color[1], LAMP[1]), one(color[2], LAMP[2])]
}

/// A sheet with stripes, somewhat askew on a dark table, and a grey card beside it.
fn photo() -> Vec<u8> {
    let color = |x: u32, y: u32| {
        let sheet = (85..335).contains(&x) && (65..255).contains(&y);
        let card = (20..60).contains(&x) && (20..60).contains(&y);
        match (card, sheet, x / 25 % 2 == 1) {
            (true, ..) => lit(TRUE[2]),
            (_, true, false) => lit(TRUE[0]),
            (_, true, true) => lit(TRUE[1]),
            _ => [52, 40, 30],
        }
    };
    let rgb: Vec<u8> = (0..300).flat_map(|y| (0..400).flat_map(move |x| color(x, y))).collect();
    workroom::pictures::png(400, 300, &rgb).unwrap()
}

fn to(back: &str) -> String {
    back.split("location: ").nth(1).unwrap().split("\r\n").next().unwrap().to_owned()
}

/// Sends the photo for the face; its hash.
fn sent(line: Line) -> String {
    let (code, back) = line.upload("/w/1/photo", &FACE, &photo());
    assert_eq!(code, 303, "{back}");
    to(&back).split("photo=").nth(1).unwrap().to_owned()
}

/// Makes the sheet straight with these patches, a row each.
fn made_straight(line: Line, project: &str, hash: &str, patches: &[(&str, &str)]) {
    let now = line.seen(&format!("{project}/paper"));
    let mut fields = [&FACE[..], &CORNERS, &[("act", "square"), ("photo", hash), ("seen", &now)]].concat();
    for (place, color) in patches {
        fields.extend([("patch-place", *place), ("patch-color", *color)]);
    }
    let (code, back) = line.post(&format!("{project}/photo"), &fields);
    assert_eq!(code, 303, "{back}");
}

fn step(line: Line, verb: &str) {
    let now = line.seen("/w/1/paper");
    let (code, back) = line.post(&format!("/w/1/{verb}"), &[("seen", &now), ("page", "paper")]);
    assert_eq!(code, 303, "{back}");
}

/// The patches that the page of the photo shows: place and colour. `None` if there is no such page.
fn patches(line: Line, project: &str) -> Option<Vec<(String, String)>> {
    let (_, page) = line.page(&format!("{project}/paper"));
    let begins = format!("href=\"{project}/photo?");
    let link = page.split(&begins).nth(1)?.split('"').next()?.replace("&amp;", "&");
    let (code, page) = line.page(&format!("{project}/photo?{link}"));
    assert_eq!(code, 200, "{page}");
    let values = |name: &str| -> Vec<String> {
        let field = format!("name=\"{name}\" value=\"");
        page.split(&field).skip(1).map(|rest| rest.split('"').next().unwrap().to_owned()).collect()
    };
    let all = values("patch-place").into_iter().zip(values("patch-color"));
    // The last row is for another one.
    Some(all.filter(|(place, _)| !place.is_empty()).collect())
}

fn one_patch() -> Option<Vec<(String, String)>> {
    Some(vec![(CARD.0.to_owned(), CARD.1.to_owned())])
}

/// The section of the cardstock page that holds design B's colours and what goes with them.
fn matched(line: Line) -> String {
    let (_, page) = line.page("/w/1/cardstock");
    let sections = page.split("<section class=\"print\"").skip(1);
    let mut of_b = sections.filter(|section| section.contains("<h3>B "));
    of_b.next().unwrap().split("</section>").next().unwrap().to_owned()
}

/// The colours of the print in such a section.
fn palette(section: &str) -> Vec<[u8; 3]> {
    let told = section.split("aria-label=\"").nth(1).unwrap().split('"').next().unwrap();
    let hex = |text: &str| -> [u8; 3] { [0, 2, 4].map(|at: usize| u8::from_str_radix(&text[at..at + 2], 16).unwrap()) };
    told.split('#').skip(1).map(hex).collect()
}

/// By how many levels the nearest of these colours is off.
fn off(colors: &[[u8; 3]], wanted: [u8; 3]) -> u8 {
    let one = |color: &[u8; 3]| color.iter().zip(wanted).map(|(level, wanted)| level.abs_diff(wanted)).max().unwrap();
    colors.iter().map(one).min().unwrap()
}

/// Which part of these colours is a certain one, but for four levels.
fn share(colors: &[[u8; 3]], wanted: [u8; 3]) -> f64 {
    let near = colors.iter().filter(|color| off(&[**color], wanted) <= 4).count();
    f64::from(u32::try_from(near).unwrap()) / f64::from(u32::try_from(colors.len()).unwrap())
}

/// RFC 4648's base 64.
fn bytes_of(text: &str) -> Vec<u8> {
    let signs = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let (mut all, mut held, mut bits) = (Vec::new(), 0u32, 0);
    for sign in text.bytes().take_while(|sign| *sign != b'=') {
        held = held << 6 | u32::try_from(signs.iter().position(|known| *known == sign).unwrap()).unwrap();
        bits += 6;
        if bits >= 8 {
            bits -= 8;
            all.push((held >> bits & 0xff) as u8);
        }
    }
    all
}

/// The drawing of the first card in print B, and the colours of the pictures in it.
fn card(line: Line) -> (String, Vec<[u8; 3]>) {
    let revision = line.seen("/w/1/paper");
    let drawing = |number: u32| line.get(&format!("/w/1/{revision}/card-{number}.svg")).1;
    let svg = (1..200).map(drawing).find(|svg| svg.contains("in print B,")).unwrap();
    let svg = svg.split("\r\n\r\n").nth(1).unwrap().to_owned();
    let pictures = svg.split("data:image/jpeg;base64,").skip(1).map(|rest| rest.split('"').next().unwrap());
    let mut colors = Vec::new();
    for picture in pictures {
        let read = workroom::pictures::decode_whole(&bytes_of(picture)).unwrap();
        colors.extend(read.rgb.chunks(3).map(|pixel| [pixel[0], pixel[1], pixel[2]]));
    }
    (svg, colors)
}

#[test]
fn a_correction_reaches_palette_matches_and_cards_and_undo_takes_it_back() {
    let folder = Folder::new("photo-colors");
    let served = Served::over(&folder.0.join("octavo.db"));
    let line = served.line();
    let hash = sent(line);
    made_straight(line, "/w/1", &hash, &[]);
    let (raw, raw_card) = (matched(line), card(line));
    assert_eq!(patches(line, "/w/1"), Some(Vec::new()));
    made_straight(line, "/w/1", &hash, &[CARD]);
    let (right, right_card) = (matched(line), card(line));
    // Levels that JPEG, twice over, may be off by.
    for wanted in &TRUE[..2] {
        assert!(off(&palette(&right), *wanted) <= 4, "{wanted:?} in {:?}", palette(&right));
        assert!(share(&right_card.1, *wanted) > 0.05, "{wanted:?} on the card");
        assert!(off(&palette(&raw), lit(*wanted)) <= 4, "{:?} in {:?}", lit(*wanted), palette(&raw));
        assert!(off(&palette(&raw), *wanted) > 15 && share(&raw_card.1, *wanted) < 0.005, "{wanted:?} before");
        assert!(share(&raw_card.1, lit(*wanted)) > 0.05, "{:?} on the card before", lit(*wanted));
    }
    // What is nearest in the print, how far cardstock and ink are from it and how they read on it: of the new colours.
    let parts = |section: &str| -> Vec<String> { section.split("<td>").map(str::to_owned).collect() };
    let changed = parts(&raw).iter().zip(parts(&right)).filter(|(one, other)| **one != *other).count();
    assert!(changed > 8, "{changed} cells of the matches");
    for section in [&raw, &right] {
        let cells = section.split("</svg>#").skip(1);
        let nearest: Vec<[u8; 3]> = cells.map(|cell| palette(&format!("aria-label=\"#{cell}"))[0]).collect();
        assert!(nearest.len() > 4 && nearest.iter().all(|color| palette(section).contains(color)), "{nearest:?}");
    }
    assert_eq!(patches(line, "/w/1"), one_patch());

    step(line, "undo");
    assert_eq!((matched(line), card(line)), (raw, raw_card), "as before the correction");
    assert_eq!(patches(line, "/w/1"), Some(Vec::new()), "and without its patch");
    step(line, "redo");
    assert_eq!((matched(line), card(line)), (right, right_card));
    assert_eq!(patches(line, "/w/1"), one_patch());
}

#[test]
fn patches_go_wherever_their_photo_goes() {
    let folder = Folder::new("photo-patches");
    let served = Served::over(&folder.0.join("octavo.db"));
    let line = served.line();
    let hash = sent(line);
    made_straight(line, "/w/1", &hash, &[CARD]);

    // Turned, it is another picture of the same photo.
    let now = line.seen("/w/1/paper");
    let (code, back) = line.post("/w/1/face", &[&FACE[..], &[("act", "turn"), ("seen", &now)]].concat());
    assert_eq!(code, 303, "{back}");
    assert_eq!(patches(line, "/w/1"), one_patch());

    // A copy, then given another name; and the file brought in as a new project.
    let (_, back) = line.post("/w/1/copy", &[("page", "paper")]);
    let copy = to(&back).trim_end_matches("/paper").to_owned();
    let now = line.seen(&format!("{copy}/paper"));
    let (code, back) = line.post(&format!("{copy}/edit"), &[("set:name", "Another name"), ("seen", &now)]);
    assert_eq!(code, 303, "{back}");
    let (_, file) = line.get("/w/1/file/project.toml");
    let text = file.split("\r\n\r\n").nth(1).unwrap();
    let (code, back) = line.upload("/new", &[("kind", "file")], text.as_bytes());
    assert_eq!(code, 303, "{back}");
    let brought = to(&back).split('/').take(3).collect::<Vec<_>>().join("/");
    for project in [copy.as_str(), &brought] {
        assert_ne!(project, "/w/1");
        assert_eq!(patches(line, project), one_patch(), "{project}");
    }
    // Patches of the copy made anew are the copy's alone.
    let other = [CARD, ("41,42,5", "grey 22%")];
    made_straight(line, &copy, &hash, &other);
    assert_eq!(patches(line, &copy).unwrap().len(), 2);
    assert_eq!(patches(line, "/w/1"), one_patch());
    assert_eq!(patches(line, &brought), one_patch());

    // Everything as one file, brought back where nothing of it was.
    let kept = backup(line);
    let elsewhere = Folder::new("photo-patches-back");
    let fresh = Served::over(&elsewhere.0.join("octavo.db"));
    let there = fresh.line();
    assert_eq!(patches(there, "/w/1"), None);
    let (code, asked) = there.upload("/restore", &[], &kept);
    assert_eq!(code, 200, "{asked}");
    let offered = asked.split("name=\"offered\" value=\"").nth(1).unwrap().split('"').next().unwrap();
    let (code, back) = there.post("/restore", &[("offered", offered)]);
    assert_eq!(code, 303, "{back}");
    assert_eq!(patches(there, "/w/1"), one_patch());
    assert_eq!(patches(there, &copy).unwrap()[1], ("41,42,5".to_owned(), "grey 22%".to_owned()));
    assert_eq!(patches(there, &brought), one_patch());
}

/// The bytes of a backup; an answer as text would not hold them.
fn backup(line: Line) -> Vec<u8> {
    use std::io::{Read as _, Write as _};
    let mut stream = line.connect().unwrap();
    stream.write_all(line.head("GET", "/backup", "").as_bytes()).unwrap();
    let mut all = Vec::new();
    stream.read_to_end(&mut all).unwrap();
    let body = all.windows(4).position(|four| four == b"\r\n\r\n").unwrap() + 4;
    all.split_off(body)
}

#[test]
fn one_patch_is_taken_away_and_put_back_by_the_form_alone() {
    let folder = Folder::new("photo-form");
    let served = Served::over(&folder.0.join("octavo.db"));
    let line = served.line();
    let hash = sent(line);
    let now = line.seen("/w/1/paper");
    let all = [("40,40", "#808080"), ("237,150", "#607ca8"), ("312,150", "#e2d6be")];
    let looked = |rows: &[(&str, &str)], more: &[(&str, &str)]| {
        let mut fields = [&FACE[..], &CORNERS, &[("act", "square"), ("photo", &hash), ("seen", &now)]].concat();
        for (place, color) in rows {
            fields.extend([("patch-place", *place), ("patch-color", *color)]);
        }
        fields.extend(more);
        let (code, page) = line.post("/w/1/photo", &fields);
        assert_eq!(code, 200, "{page}");
        page
    };
    let places = |page: &str| -> Vec<String> {
        let rows = page.split("name=\"patch-place\" value=\"").skip(1);
        rows.map(|rest| rest.split('"').next().unwrap().to_owned()).collect()
    };
    let page = looked(&all, &[("check", "yes")]);
    assert_eq!(places(&page), ["40,40", "237,150", "312,150", ""]);
    assert!(page.contains("3 patches: each") && page.matches("as photographed, ").count() == 4, "{page}");
    let page = looked(&all, &[("check", "without 2")]);
    assert_eq!(places(&page), ["40,40", "312,150", ""]);
    assert!(page.contains("Patch 2 (237,150 #607ca8) was taken away") && page.contains("2 patches: each"), "{page}");
    assert!(page.contains("name=\"check\" value=\"with 237,150 #607ca8\""), "{page}");
    let page = looked(&[all[0], all[2]], &[("check", "with 237,150 #607ca8")]);
    assert_eq!(places(&page), ["40,40", "312,150", "237,150", ""]);
    // The small picture is 280 pixels across, the photo 400.
    let page = looked(&all[..1], &[("spot.x", "140"), ("spot.y", "105")]);
    assert_eq!(places(&page), ["40,40", "200,150", ""]);
    assert!(page.contains("Patch 2 (“200,150”) has a place but no colour"), "{page}");
    // Several at once, and what cannot be read is named on its row.
    let page = looked(&all[..1], &[("check", "yes"), ("patches", "200 150 #607ca8\r\n\r\n300, 150 blue")]);
    assert_eq!(places(&page), ["40,40", "200", "300, 150", ""]);
    assert!(page.contains("Patch 2 (“200 150 #607ca8”): “200” is no place"), "{page}");
    assert!(page.contains("Patch 3 (“300, 150 blue”): “blue” is no colour"), "{page}");
    let page = looked(&[("200 150", "607ca8"), ("", "#808080")], &[("check", "yes")]);
    assert_eq!(places(&page), ["200,150", "", ""]);
    assert!(page.contains("Patch 2 (“? #808080”): “?” is no place"), "{page}");
    // Nothing that is sent breaks the page.
    for value in ["1e300,-1e300", "NaN,NaN", "0,0,-5", "9,9,1e18", "\u{0}", "<script>alert(1)</script>"] {
        for check in ["without 0", "without 99999999999999999999", "with ", "with <script>alert(1)</script>"] {
            let page = looked(&[(value, value)], &[("check", check), ("spot.x", value)]);
            assert!(!page.contains("<script>alert"), "{page}");
        }
    }
    let page = looked(&[], &[("check", "yes"), ("patches", &"1,2 #ffffff\n".repeat(201))]);
    assert!(page.contains("more than 200 patches"), "{page}");
}
