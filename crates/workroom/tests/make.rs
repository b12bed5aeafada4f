//! `octavo make` the whole way: from a command line to the files and the exit code.
#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/run.rs"]
mod run;

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use run::octavo;
use serde_json::Value;

/// A folder of this test's own, gone when dropped.
struct Scratch(PathBuf);

impl Scratch {
    fn new(name: &str) -> Scratch {
        let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("make-{}-{name}", std::process::id()));
        let _ = fs::remove_dir_all(&folder);
        fs::create_dir_all(&folder).unwrap();
        Scratch(folder)
    }

    fn path(&self, name: &str) -> String {
        self.0.join(name).display().to_string()
    }

    fn write(&self, name: &str, text: &str) -> String {
        fs::write(self.0.join(name), text).unwrap();
        self.path(name)
    }

    fn json(&self, name: &str) -> Value {
        serde_json::from_str(&fs::read_to_string(self.0.join(name)).unwrap()).unwrap()
    }
}

impl Drop for Scratch {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

/// The plan of the demo, made once for all tests that only read it.
fn demo_plan() -> &'static str {
    static PLAN: LazyLock<String> = LazyLock::new(|| {
        let scratch = Scratch::new("plan");
        let (code, out, _) = octavo(&["make", "--demo", "--json", "--out", &scratch.path("out")]);
        assert_eq!(code, 0);
        let file = fs::read_to_string(scratch.0.join("out/plan.json")).unwrap();
        assert!(out == file, "what is printed is the file");
        out
    });
    &PLAN
}

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).ancestors().nth(2).unwrap().to_owned()
}

fn schema(name: &str) -> Value {
    serde_json::from_str(&fs::read_to_string(root().join("docs/schema").join(name)).unwrap()).unwrap()
}

/// Every problem a schema finds in a value.
fn problems(schema: &Value, value: &Value) -> Vec<String> {
    let validator = jsonschema::validator_for(schema).unwrap();
    validator.iter_errors(value).map(|error| format!("{}: {error}", error.instance_path())).collect()
}

#[test]
fn the_demo_makes_a_pack_of_cards_and_keeps_to_the_schema() {
    let scratch = Scratch::new("demo");
    let (code, out, err) = octavo(&["make", "--demo", "--out", &scratch.path("out")]);
    assert_eq!(code, 0, "{out}{err}");
    assert!(out.starts_with("192 cards from 24 sheets"), "{out}");
    assert!(!out.contains('⟨'), "every message and fact is there: {out}");
    let plan = scratch.json("out/plan.json");
    assert_eq!(problems(&schema("plan.schema.json"), &plan), Vec::<String>::new());
    assert_eq!(plan["counts"]["cards"], 192);
    assert_eq!(plan["layouts"][0]["grade"]["grade"], "proven-best");
    assert_eq!(plan["layouts"][0]["waste_square_inches"], 0.0);
    assert_eq!(plan["cards"].as_array().unwrap().len(), 192);
}

/// How often each page size stands in a PDF.
fn page_sizes(pdf: &[u8]) -> Vec<String> {
    let text = String::from_utf8_lossy(pdf);
    text.split("/MediaBox").skip(1).filter_map(|after| Some(after.split(']').next()?.trim().to_owned())).collect()
}

#[test]
fn pages_and_drawings_are_there_on_the_page_asked_for() {
    let scratch = Scratch::new("pages");
    for (sheet, points) in [("letter", "[0 0 612 792"), ("a4", "[0 0 595.2")] {
        let (code, _, err) = octavo(&["make", "--demo", "--sheet", sheet, "--out", &scratch.path(sheet)]);
        assert_eq!(code, 0, "{err}");
        let read = |name: &str| fs::read(scratch.0.join(sheet).join(name)).unwrap();
        let pdf = read("handout.pdf");
        assert!(pdf.starts_with(b"%PDF-"));
        let sizes = page_sizes(&pdf);
        assert!(sizes.len() > 3 && sizes.iter().all(|size| size.starts_with(points)), "{sheet}: {sizes:?}");
        assert!(read("sheet-1.svg").starts_with(b"<svg"));
        // One card of each of the six designs has a picture, in each of the two batches.
        let cards: Vec<u8> =
            (1..=192).filter(|n| scratch.0.join(sheet).join(format!("card-{n}.png")).exists()).collect();
        assert_eq!(cards.len(), 12);
        let card = workroom::pictures::decode(&read("card-1.png")).unwrap();
        assert_eq!(card.width, 350, "3 in and a twelfth of it on both sides, 100 pixels an inch");
    }
}

#[test]
fn the_schema_refuses_a_plan_with_a_hole_in_it() {
    let mut plan: Value = serde_json::from_str(demo_plan()).unwrap();
    plan["layouts"][0].as_object_mut().unwrap().remove("pieces");
    plan["cards"][0]["number"] = Value::from("one");
    assert_eq!(problems(&schema("plan.schema.json"), &plan).len(), 2);
}

#[test]
fn published_schemas_are_the_types_own() {
    for (name, text) in workroom::make::schemas() {
        let published = fs::read_to_string(root().join("docs/schema").join(name)).unwrap();
        assert!(published == text, "{name} is old: run `cargo schemas`");
    }
}

#[test]
fn every_example_is_made() {
    let mut examples: Vec<PathBuf> =
        fs::read_dir(root().join("examples")).unwrap().map(|entry| entry.unwrap().path()).collect();
    examples.retain(|path| path.extension().is_some_and(|is| is == "toml"));
    examples.sort();
    assert!(examples.len() >= 7, "{examples:?}");
    let schema = schema("plan.schema.json");
    for example in examples {
        let scratch = Scratch::new("example");
        let file = example.display().to_string();
        let (code, out, err) = octavo(&["make", &file, "--out", &scratch.path("out")]);
        // One of them shows an envelope that is too small.
        let expected = u8::from(file.ends_with("small-envelope.toml"));
        assert_eq!(code, expected, "{file}: {out}{err}");
        assert!(!out.contains('⟨'), "{out}");
        let plan = scratch.json("out/plan.json");
        assert_eq!(problems(&schema, &plan), Vec::<String>::new(), "{file}");
        assert!(plan["counts"]["cards"].as_u64() > Some(0), "{file}");
        assert!(scratch.0.join("out/handout.pdf").exists() && scratch.0.join("out/sheet-1.svg").exists());
    }
}

#[test]
fn made_again_every_file_is_the_same() {
    let scratch = Scratch::new("again");
    octavo(&["make", "--demo", "--out", &scratch.path("a")]);
    octavo(&["make", "--demo", "--out", &scratch.path("b")]);
    let mut names: Vec<_> = fs::read_dir(scratch.0.join("a")).unwrap().map(|e| e.unwrap().file_name()).collect();
    names.sort();
    assert!(names.len() > 8);
    for name in names {
        let read = |run: &str| fs::read(scratch.0.join(run).join(&name)).unwrap();
        assert!(read("a") == read("b"), "{} differs from run to run", name.display());
    }
}

#[test]
fn the_demos_own_file_makes_the_demo() {
    let scratch = Scratch::new("own");
    let own = scratch.write("p.toml", workroom::make::DEMO);
    let (code, _, _) = octavo(&["make", &own, "--out", &scratch.path("out")]);
    assert_eq!(code, 0);
    assert!(fs::read_to_string(scratch.0.join("out/plan.json")).unwrap() == demo_plan());
}

/// Bad input, what must be said about it, and nothing written.
#[test]
fn bad_input_is_refused_with_where_what_and_what_would_do() {
    let scratch = Scratch::new("bad");
    let demo = workroom::make::DEMO;
    let picture = |name: &str| demo.replace("drawn = \"quince-branch\"", &format!("picture = \"{name}\""));
    fs::write(scratch.0.join("broken.png"), b"\x89PNG\r\n\x1a\n but no more").unwrap();
    fs::write(scratch.0.join("words.png"), "not a picture").unwrap();
    // Where a text stands in the demo, so that the demo may change.
    let at = |text: &str| {
        let before = demo.split(text).next().unwrap();
        format!("line {}", before.matches('\n').count() + 1)
    };
    let (mark, sheet, price) = (at("mark ="), at("sheet = \"12 x 12\""), at("price = \"4.80\""));
    let cases: Vec<(&str, String, Vec<&str>)> = vec![
        ("empty", String::new(), vec!["line 1"]),
        ("not toml", "name = ".to_owned(), vec!["line 1", "column"]),
        ("misspelt key", demo.replace("\nmark =", "\nmrak ="), vec![&mark, "mrak", "mark"]),
        ("bad length", demo.replace("\"12 x 12\"", "\"twelve\""), vec![&sheet, "twelve"]),
        ("unknown cardstock", demo.replace("base = \"Milk\"", "base = \"Silk\""), vec!["Silk", "Milk"]),
        ("two mistakes", demo.replace("price = \"4.80\"", "price = \"cheap\""), vec!["cheap", &price]),
        ("missing picture", picture("gone.png"), vec!["gone.png"]),
        ("broken picture", picture("broken.png"), vec!["broken.png"]),
        ("no picture", picture("words.png"), vec!["words.png"]),
        ("picture elsewhere", picture("../secret.png"), vec!["secret.png"]),
        ("control signs", "name = \"a\u{0}b\"".to_owned(), vec!["line 1"]),
    ];
    for (what, text, said) in cases {
        let file = scratch.write("project.toml", &text);
        let (code, out, err) = octavo(&["make", &file, "--out", &scratch.path("out")]);
        assert_eq!((code, out.as_str()), (2, ""), "{what}: {err}");
        for part in said {
            assert!(err.contains(part), "{what}: `{part}` is not said in:\n{err}");
        }
        assert!(!err.contains('⟨'), "{what}: every message and fact is there:\n{err}");
        assert!(!scratch.0.join("out").exists(), "{what}: nothing is written");
    }
}

#[test]
#[cfg(unix)]
fn a_file_without_end_is_refused() {
    for verb in ["make", "solve"] {
        let out = ["--out", "nowhere"];
        let args: Vec<&str> =
            [verb, "/dev/zero"].into_iter().chain(out.into_iter().filter(|_| verb == "make")).collect();
        let (code, _, err) = octavo(&args);
        assert_eq!(code, 2);
        assert!(err.contains("larger than"), "{err}");
    }
}

#[test]
fn a_picture_of_a_face_is_used_and_one_of_another_shape_is_told() {
    let scratch = Scratch::new("picture");
    let file = |name: &str| workroom::make::DEMO.replace("drawn = \"quince-branch\"", &format!("picture = \"{name}\""));
    let save = |name: &str, width, height| {
        image::RgbImage::from_pixel(width, height, image::Rgb([200, 30, 90])).save(scratch.0.join(name))
    };
    save("square.png", 120, 120).unwrap();
    save("wide.jpg", 160, 120).unwrap();
    for (name, told) in [("square.png", false), ("wide.jpg", true)] {
        let project = scratch.write("p.toml", &file(name));
        let (code, _, err) = octavo(&["make", &project, "--out", &scratch.path("out")]);
        assert_eq!((code, err.contains(name)), (0, told), "{err}");
        // The middle of the first card's panel, above its band, shows the picture's colour.
        let card = image::open(scratch.0.join("out/card-1.png")).unwrap().into_rgb8();
        let [red, green, blue] = card.get_pixel(card.width() / 2, card.height() / 4).0;
        assert!(red.abs_diff(200) < 6 && green.abs_diff(30) < 6 && blue.abs_diff(90) < 6, "{red} {green} {blue}");
    }
}

#[test]
fn an_impossible_layout_is_told_with_exit_code_one() {
    let scratch = Scratch::new("impossible");
    let file = scratch.write("p.toml", &workroom::make::DEMO.replace("cards_per_sheet = 8", "cards_per_sheet = 90"));
    let (code, out, err) = octavo(&["make", &file, "--out", &scratch.path("out")]);
    assert_eq!(code, 1, "{out}{err}");
    assert!(out.contains("serious: "), "{out}");
    assert!(!out.contains('⟨'), "{out}");
    assert!(scratch.json("out/plan.json")["findings"][0]["severity"] == "serious");
}

#[test]
fn a_makers_file_in_the_folder_stays() {
    let scratch = Scratch::new("theirs");
    fs::create_dir(scratch.0.join("out")).unwrap();
    scratch.write("out/plan.json", "mine");
    let (code, _, err) = octavo(&["make", "--demo", "--out", &scratch.path("out")]);
    assert_eq!(code, 2);
    assert!(err.contains("plan.json"), "{err}");
    assert_eq!(fs::read_to_string(scratch.0.join("out/plan.json")).unwrap(), "mine");
    assert_eq!(fs::read_dir(scratch.0.join("out")).unwrap().count(), 1);
}

/// The reader takes the names of prints by a list of its own, since it does not know how to draw.
#[test]
fn every_print_a_face_can_name_is_drawn() {
    let drawn: Vec<&str> = drawing::prints::names().collect();
    assert_eq!(store::project_file::DRAWN, drawn);
}
