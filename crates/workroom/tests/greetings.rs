//! `octavo greetings` and the greetings of the page Background: told, grown, measured.
#![allow(clippy::unwrap_used, reason = "tests")]

use std::fs;
use std::path::PathBuf;

#[path = "common/run.rs"]
mod run;

use run::octavo;
use workroom::web::{Asked, Method, Room, answer};

fn folder(name: &str) -> PathBuf {
    let folder = std::env::temp_dir().join(format!("octavo-greetings-{name}-{}", std::process::id()));
    fs::create_dir_all(&folder).unwrap();
    folder
}

#[test]
fn the_demo_is_stamped_in_one_jig() {
    let (code, out, _) = octavo(&["greetings", "--demo", "--json"]);
    let told: serde_json::Value = serde_json::from_str(&out).unwrap();
    assert_eq!(code, 0);
    assert_eq!(told["too_small"], serde_json::json!([]));
    let [sitting] = told["sittings"].as_array().unwrap().as_slice() else { panic!("{told}") };
    assert_eq!(sitting["impressions"], 192);
    // A strip of 3 × 3/4 in and ink of 2 1/4 × 3/8 in: half of what is left on either side.
    assert_eq!((&sitting["ink_left"], &sitting["ink_right"]), (&"3/8 in".into(), &"3/8 in".into()));
    assert_eq!((&sitting["ink_top"], &sitting["ink_bottom"]), (&"3/16 in".into(), &"3/16 in".into()));
    let (code, out, _) = octavo(&["--language", "de", "greetings", "--demo"]);
    assert_eq!(code, 0);
    assert!(out.contains("192 Abdrücke") && !out.contains('⟨'), "{out}");
}

#[test]
fn a_strip_that_is_too_small_is_made_large_enough_in_a_new_file() {
    let folder = folder("grow");
    let (from, to) = (folder.join("from.toml"), folder.join("to.toml"));
    let tight = workroom::make::ONE_EACH.replace("inked = \"2 1/4 x 3/8\"", "inked = \"2 7/8 x 5/8\" # measured twice");
    fs::write(&from, &tight).unwrap();
    let (from, to) = (from.to_str().unwrap(), to.to_str().unwrap());
    let (code, out, _) = octavo(&["greetings", from]);
    assert_eq!(code, 1);
    assert!(out.contains("its greeting asks for 3 1/8 in x 7/8 in"), "{out}");
    let (code, _, _) = octavo(&["greetings", from, "--fit", to]);
    assert_eq!(code, 0);
    let grown = fs::read_to_string(to).unwrap();
    assert!(grown.contains("3 1/8 in x 7/8 in") && grown.contains("# measured twice"), "the maker's own words stay");
    let (code, out, _) = octavo(&["greetings", to]);
    assert_eq!((code, out.contains("asks for")), (0, false), "{out}");
    // Nothing is written over.
    let (code, _, err) = octavo(&["greetings", from, "--fit", to]);
    assert_eq!(code, 2, "{err}");
    assert_eq!(fs::read_to_string(to).unwrap(), grown);
    fs::remove_dir_all(folder).unwrap();
}

#[test]
fn a_pictured_stamp_is_measured_by_its_ink() {
    let folder = folder("stamp");
    let path = folder.join("with-thanks.png");
    // 900 × 300 pixels are 3 × 1 in: ink from 90 to 690 across, from 60 to 240 down.
    let inside = |x, y| (90..690).contains(&x) && (60..240).contains(&y);
    let color = |x: u32, y: u32| if inside(x, y) { [30, 30, 60] } else { [252, 250, 245] };
    let rgb: Vec<u8> = (0..300).flat_map(|y| (0..900).flat_map(move |x| color(x, y))).collect();
    fs::write(&path, workroom::pictures::png(900, 300, &rgb).unwrap()).unwrap();
    let named = path.to_str().unwrap();
    let (code, out, _) = octavo(&["greetings", "--stamp", named, "--wide", "300mm", "--json"]);
    let told: serde_json::Value = serde_json::from_str(&out).unwrap();
    assert_eq!((code, &told["inked"]), (0, &"200 mm x 60 mm".into()));
    let stamp = serde_json::json!({ "size": "300 mm x 100 mm", "left": "30 mm", "top": "20 mm" });
    assert_eq!(told["stamp"], stamp);
    // What is printed goes into a project file as it is.
    let (_, out, _) = octavo(&["greetings", "--stamp", named, "--wide", "3in"]);
    let lines = out.split_once("[[greeting]]").unwrap().1;
    let project = workroom::make::ONE_EACH.replacen("[[greeting]]", &format!("[[greeting]]{lines}\n[[greeting]]"), 1);
    let project = project.replace("kind = \"strip\"", "kind = \"strip\"\ngreeting = \"with-thanks\"");
    assert!(store::project_file::read(&project).is_ok(), "{:?}", store::project_file::read(&project).err());

    let blank = folder.join("blank.png");
    fs::write(&blank, workroom::pictures::png(20, 20, &[255; 1_200]).unwrap()).unwrap();
    for (picture, said) in [(blank.to_str().unwrap(), "no ink"), ("/no/such.png", "cannot find"), (file!(), "")] {
        let (code, _, err) = octavo(&["greetings", "--stamp", picture, "--wide", "3in"]);
        assert_eq!(code, 2, "{err}");
        assert!(err.contains(said) && !err.contains('⟨'), "{err}");
    }
    fs::remove_dir_all(folder).unwrap();
}

fn page(room: &Room) -> String {
    let (path, query, fields) = ("/w/1/background".to_owned(), Vec::new(), Vec::new());
    let answered = answer(room, &Asked { method: Method::Get, path, query, fields, now: 1_793_491_200 });
    let text = String::from_utf8(answered.body).unwrap();
    assert!(answered.status == 200 && !text.contains('⟨'), "{text}");
    text
}

fn edit(room: &Room, seen: &str, place: &str, value: &str) {
    let fields = [("seen", seen), ("page", "background"), (place, value)];
    let fields = fields.map(|(key, value)| (key.to_owned(), value.as_bytes().to_vec())).to_vec();
    let path = "/w/1/edit".to_owned();
    let asked = Asked { method: Method::Post, path, query: Vec::new(), fields, now: 1_793_491_200 };
    assert_eq!(answer(room, &asked).status, 303, "{place} = {value}");
}

#[test]
fn the_page_grows_a_strip_by_one_click() {
    let room = Room::in_memory(1_000).unwrap();
    let shown = page(&room);
    assert!(shown.contains("48 impressions") && shown.contains("⅜"), "the jig's measures");
    edit(&room, "1", "set:greeting.0.inked", "2 7/8 x 5/8");
    let shown = page(&room);
    assert!(shown.contains("Make this piece large enough"), "it says what would do");
    let (place, size) = ("set:recipe.0.layer.4.size", "3 1/8 in x 7/8 in");
    assert!(shown.contains(&format!("name=\"{place}\" value=\"{size}\"")), "the button carries it");
    edit(&room, "2", place, size);
    assert!(!page(&room).contains("Make this piece large enough"));
    // A stamp larger than its ink, of which the file said nothing yet.
    edit(&room, "3", "set:greeting.0.stamp.size", "3 1/2 x 1");
    assert!(page(&room).contains("own edges"), "the stamp's edges are told");
    edit(&room, "4", "set:greeting.0.stamp.size", "");
    assert!(!page(&room).contains("own edges"), "and no more, once they are taken away");
    edit(&room, "5", "set:recipe.0.layer.4.words_at", "left");
    assert!(page(&room).contains("By the ink: "), "and where else they come");
}

/// The demo's own file with two greetings: one more on the panel.
fn on_a_panel() -> String {
    let text = workroom::make::ONE_EACH.replacen(
        "[[greeting]]",
        "[[greeting]]\nwords = \"for you\"\ninked = \"1 x 1/4\"\n\n[[greeting]]",
        1,
    );
    let text = text.replace("kind = \"strip\"", "kind = \"strip\"\ngreeting = \"with thanks\"");
    let stamped = "name = \"panel\"\ngreeting = \"for you\"\nwords_at = \"top\"\nwords_border = \"1/4\"";
    text.replacen("name = \"panel\"", stamped, 1)
}

#[test]
fn words_on_a_panel_are_told_drawn_and_grown() {
    let folder = folder("panel");
    let (from, to) = (folder.join("from.toml"), folder.join("to.toml"));
    fs::write(&from, on_a_panel()).unwrap();
    let named = from.to_str().unwrap();
    let (code, out, err) = octavo(&["greetings", named, "--json"]);
    assert_eq!(code, 0, "{err}");
    let told: serde_json::Value = serde_json::from_str(&out).unwrap();
    let panel = told["sittings"].as_array().unwrap().iter().find(|sitting| sitting["piece"] == "panel").unwrap();
    assert_eq!(
        (&panel["words"], &panel["ink_top"], &panel["impressions"]),
        (&"for you".into(), &"1/4 in".into(), &48.into())
    );
    assert_eq!(panel["ink_left"], panel["ink_right"]);
    assert!(panel["strips"].as_array().unwrap().iter().all(|of| of["design"].is_string()), "{panel}");
    let (_, out, _) = octavo(&["--language", "de", "greetings", named]);
    assert!(out.contains("„for you“ auf jedes Teil „panel“") && !out.contains('⟨'), "{out}");
    // Too wide for it: told, and the recipe's own range grows.
    fs::write(&from, on_a_panel().replace("inked = \"1 x 1/4\"", "inked = \"3 x 1/4\"")).unwrap();
    let (code, out, _) = octavo(&["greetings", named]);
    assert_eq!(
        (code, out.contains("panel is 2 3/4 in x 4 1/4 in; its greeting asks for 3 1/4 in")),
        (1, true),
        "{out}"
    );
    let (code, _, err) = octavo(&["greetings", named, "--fit", to.to_str().unwrap()]);
    assert_eq!(code, 0, "{err}");
    assert!(store::project_file::read(&fs::read_to_string(&to).unwrap()).is_ok());
    // What the words cannot be is said.
    fs::write(&from, on_a_panel().replacen("greeting = \"for you\"\n", "", 1)).unwrap();
    let (code, _, err) = octavo(&["greetings", named]);
    assert!(code == 2 && err.contains("names no greeting"), "{err}");
    fs::remove_dir_all(folder).unwrap();
}

fn post(room: &Room, seen: &str, fields: &[(&str, &[u8])]) -> (u16, String) {
    let mut all = vec![("seen".to_owned(), seen.as_bytes().to_vec()), ("page".to_owned(), b"background".to_vec())];
    all.extend(fields.iter().map(|(key, value)| ((*key).to_owned(), value.to_vec())));
    let path = "/w/1/background".to_owned();
    let asked = Asked { method: Method::Post, path, query: Vec::new(), fields: all, now: 1_793_491_200 };
    let answered = answer(room, &asked);
    (answered.status, String::from_utf8_lossy(&answered.body).into_owned())
}

#[test]
fn the_page_takes_a_greeting_from_a_picture_and_refuses_an_empty_one() {
    let room = Room::in_memory(1_000).unwrap();
    // 900 × 300 pixels are 3 × 1 in: a wedge, all of its weight at the left.
    let inside = |x: u32, y: u32| (90..690).contains(&x) && (60..150).contains(&y) && (y - 60) * 600 >= (x - 90) * 90;
    let color = |x: u32, y: u32| if inside(x, y) { [30, 30, 60] } else { [252, 250, 245] };
    let rgb: Vec<u8> = (0..300).flat_map(|y| (0..900).flat_map(move |x| color(x, y))).collect();
    let wedge = workroom::pictures::png(900, 300, &rgb).unwrap();
    let act: &[u8] = b"greeting-picture";
    let (code, said) =
        post(&room, "1", &[("act", act), ("b", b"0"), ("greeting", b"0"), ("wide", b"3 in"), ("file", &wedge)]);
    assert_eq!(code, 303, "{said}");
    let shown = page(&room);
    assert!(shown.contains("own edges"), "measured");
    let text = {
        let path = "/w/1/file/project.toml".to_owned();
        let asked = Asked { method: Method::Get, path, query: Vec::new(), fields: Vec::new(), now: 1_793_491_200 };
        String::from_utf8(answer(&room, &asked).body).unwrap()
    };
    let project = store::project_file::read(&text).unwrap();
    // The tip of the wedge is thinner than a pixel.
    let inked = project.greetings[0].inked;
    assert!((inked.width.to_inches() - 2.0).abs() < 0.06 && (inked.height.to_inches() - 0.3).abs() < 0.02, "{inked:?}");
    assert!(matches!(project.greetings[0].mark, Some(cards::model::MotifShape::Picture(..))));
    // By its weight it lies further right: a third of a wedge's length is left of its balance.
    let left =
        |shown: &str| shown.split("stays clear at the left").next().unwrap().rsplit(": ").next().unwrap().to_owned();
    let before = left(&shown);
    edit(&room, "2", "set:greeting.0.middle", "weight");
    let shown = page(&room);
    assert!(shown.contains("Where the ink balances") && left(&shown) != before, "{before}");

    let blank = workroom::pictures::png(20, 20, &[255; 1_200]).unwrap();
    for (file, wide, why) in [
        (&blank[..], &b"3 in"[..], "There is no ink"),
        (b"no picture", b"3 in", "no picture that can be read"),
        (&wedge, b"a lot", "How wide is the whole picture"),
        (&wedge, b"900 in", "How wide is the whole picture"),
    ] {
        let (_, said) =
            post(&room, "3", &[("act", act), ("b", b"0"), ("greeting", b"0"), ("wide", wide), ("file", file)]);
        assert!(said.contains(why), "{why}: {said}");
    }
    // One more greeting: the strip keeps its own.
    let (code, said) =
        post(&room, "3", &[("act", b"greeting"), ("b", b"0"), ("words", b"for you"), ("inked", b"1 x 1/4")]);
    assert_eq!(code, 303, "{said}");
    edit(&room, "4", "set:recipe.0.layer.1.greeting", "for you");
    assert!(page(&room).contains("“for you” on each panel of"), "and a panel takes the new one");
}

/// A workroom with the example that has a stamped background, and its number.
fn stamped() -> (Room, String) {
    let room = Room::in_memory(1_000).unwrap();
    let text = include_str!("../../../examples/stamped-background.toml");
    let to = begin(&room, text);
    (room, to)
}

fn begin(room: &Room, text: &str) -> String {
    let fields = [("kind", "file"), ("text", text)];
    let fields = fields.map(|(key, value)| (key.to_owned(), value.as_bytes().to_vec())).to_vec();
    let asked = Asked { method: Method::Post, path: "/new".to_owned(), query: Vec::new(), fields, now: 1_793_491_200 };
    let answered = answer(room, &asked);
    let to = answered.to.unwrap_or_else(|| panic!("{}", String::from_utf8_lossy(&answered.body)));
    to.trim_start_matches("/w/").split('/').next().unwrap().to_owned()
}

fn get(room: &Room, path: &str) -> String {
    let (path, query) = path.split_once('?').unwrap_or((path, ""));
    let query =
        query.split('&').filter_map(|pair| pair.split_once('=')).map(|(key, value)| (key.to_owned(), value.to_owned()));
    let asked = Asked {
        method: Method::Get,
        path: path.to_owned(),
        query: query.collect(),
        fields: Vec::new(),
        now: 1_793_491_200,
    };
    let answered = answer(room, &asked);
    assert_eq!(answered.status, 200, "{path}");
    String::from_utf8_lossy(&answered.body).into_owned()
}

#[test]
fn markers_for_colouring_in_come_from_the_shelf() {
    let (room, id) = stamped();
    let page = || get(&room, &format!("/w/{id}/background"));
    assert!(page().contains("marker Straw") && page().contains("once it holds some"));
    // Nearer to #d9a441 than the file's own Straw, #e0b04a; one that is used up, and one without a colour, do not count.
    for (name, amount, color) in [("Quince", "1", "#d9a441"), ("Gone", "0", "#d9a442"), ("Unknown", "3", "")] {
        let fields = [
            ("kind", "marker"),
            ("name", name),
            ("amount", amount),
            ("unit", "piece"),
            ("color", color),
            ("act", "save"),
            ("why", "counted"),
        ];
        let fields = fields.map(|(key, value)| (key.to_owned(), value.as_bytes().to_vec())).to_vec();
        let asked = Asked {
            method: Method::Post,
            path: format!("/w/{id}/shelf"),
            query: Vec::new(),
            fields,
            now: 1_793_491_200,
        };
        let answered = answer(&room, &asked);
        assert!(answered.status == 303, "{name}: {}", String::from_utf8_lossy(&answered.body));
    }
    assert!(page().contains("marker Quince") && page().contains("One marker with its colour"), "{}", page());
}

#[test]
fn a_try_of_anything_is_answered_and_says_what_is_possible() {
    let (room, id) = stamped();
    let tried = |query: &str| get(&room, &format!("/w/{id}/stamped?b=0&{query}"));
    // 10 000 wished: the fullest sheet that is; a larger number is refused with what may stand there.
    let full = tried("number:background.0.count=10000");
    assert!(full.contains("Of 10000 wished") || full.contains("Of 10,000 wished"), "{full}");
    assert!(tried("number:background.0.count=10001").contains("10000"), "bounds are told");
    // A stamp larger than the sheet; a gap that leaves next to nothing; a density that no sheet has; ink of all sizes.
    assert!(
        tried("set:background.0.stamp.0.size=14 in").contains("larger than the sheet")
            || tried("set:background.0.stamp.0.size=14 in").contains("class=\"stays\"")
    );
    assert!(tried("set:background.0.gap=11 in").contains("class=\"said\""));
    let dense = tried("number:background.0.density=60");
    assert!(dense.contains("wished") && dense.contains("fullest"), "{dense}");
    let sparse = tried("number:background.0.density=5");
    assert!(
        sparse.contains("Ink covers 5 %") || sparse.contains("Ink covers 6 %") || sparse.contains("Ink covers 4 %"),
        "{sparse}"
    );
}

#[test]
fn the_verb_says_what_is_wrong_with_a_background() {
    let folder = folder("bad");
    let file = folder.join("project.toml");
    let text = include_str!("../../../examples/stamped-background.toml");
    let named = file.to_str().unwrap().to_owned();
    let told = |text: String| {
        fs::write(&file, text).unwrap();
        octavo(&["background", &named])
    };
    fs::write(folder.join("blank.png"), workroom::pictures::png(20, 20, &[255; 1_200]).unwrap()).unwrap();
    for (from, to, code, said) in [
        // An empty picture.
        ("shape = \"sprig\"", "picture = \"blank.png\"", 1, "no ink"),
        // A motif larger than the sheet.
        ("size = \"1 3/4\"", "size = \"13\"", 2, "12 in × 12 in"),
        // An outline that crosses itself.
        ("shape = \"sprig\"", "outline = \"0,0 4,4 4,0 0,3\"", 2, "cross"),
        ("shape = \"sprig\"", "outline = \"0,0 4,4\"", 2, "at least three corners"),
        // More than can be stamped, and as many as can be asked for.
        ("seed = 7", "seed = 7\ncount = 10001", 2, "10000"),
        ("seed = 7", "seed = 7\ncount = 10000", 0, "fullest sheet"),
        // Both ways of saying how many.
        ("seed = 7", "seed = 7\ncount = 40\ndensity = 12", 2, "density"),
        // A gap that cannot be met by that many.
        ("gap = \"1/8\"", "gap = \"2\"\ncount = 100", 0, "With a gap of"),
        ("seed = 7", "seed = 7\ndensity = 80", 0, "fullest sheet"),
    ] {
        let (found, out, err) = told(text.replacen(from, to, 1));
        assert!(found == code && format!("{out}{err}").contains(said), "{to}: {found} {out} {err}");
        assert!(!format!("{out}{err}").contains('⟨'), "{to}");
    }
    fs::remove_dir_all(folder).unwrap();
}
