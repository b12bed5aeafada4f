//! The schema, the guide and the reader say the same.
#![allow(clippy::unwrap_used, reason = "tests")]

use std::path::{Path, PathBuf};

use serde_json::Value;
use store::project_file::{read, schema};

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// A TOML text as JSON; it must have no date outside quotes.
fn json(text: &str) -> Value {
    toml::from_str(text).unwrap()
}

fn errors(text: &str) -> Vec<String> {
    let validator = jsonschema::validator_for(&schema()).unwrap();
    validator.iter_errors(&json(text)).map(|error| format!("{}: {error}", error.instance_path())).collect()
}

fn examples() -> Vec<(String, String)> {
    let paths = std::fs::read_dir(root().join("examples")).unwrap().map(|entry| entry.unwrap().path());
    let paths = paths.filter(|path| path.extension().is_some_and(|end| end == "toml"));
    paths.map(|path| (path.display().to_string(), std::fs::read_to_string(path).unwrap())).collect()
}

#[test]
fn the_schema_file_is_what_the_reader_knows() {
    let file = std::fs::read_to_string(root().join("docs/schema/project.schema.json")).unwrap_or_default();
    let there: Option<Value> = serde_json::from_str(&file).ok();
    if there != Some(schema()) {
        let wanted = serde_json::to_string_pretty(&schema()).unwrap() + "\n";
        let fresh = Path::new(env!("CARGO_TARGET_TMPDIR")).join("project.schema.json");
        std::fs::write(&fresh, wanted).unwrap();
        panic!("docs/schema/project.schema.json is out of date: copy {} over it", fresh.display());
    }
}

/// Checked against the meta-schema of JSON Schema, draft 2020-12.
#[test]
fn the_schema_is_one() {
    assert!(jsonschema::meta::validate(&schema()).is_ok(), "{:?}", jsonschema::meta::validate(&schema()));
}

#[test]
fn every_example_fits_the_schema() {
    let examples = examples();
    assert!(!examples.is_empty());
    for (name, text) in examples {
        assert_eq!(errors(&text), Vec::<String>::new(), "{name}");
    }
}

#[test]
fn the_schema_refuses_what_the_reader_refuses() {
    let (_, good) = examples().into_iter().find(|(name, _)| name.ends_with("kettle-and-quince.toml")).unwrap();
    for (from, to) in [
        ("mark = ", "marc = "),
        ("name = \"Twin\"\n", ""),
        ("copies = 4", "copies = \"4\""),
        ("copies = 4", "copies = 0"),
        ("way = \"one way\"", "way = \"up\""),
        ("#2f5d73", "#2f5d7"),
        ("kind = \"mat\"", "kind = \"matt\""),
        ("border = \"1/8\"", "may_turn = true"),
        ("size = \"3 x 3/4\"\n", ""),
        ("[\"A\", \"C\"]", "[\"A\"]"),
        ("cards_per_sheet = 8", "cards_per_sheet = 0"),
        ("sheet = \"12 x 12\"", "sheet = 12"),
    ] {
        let text = good.replacen(from, to, 1);
        assert_ne!(text, good, "{from}");
        assert!(read(&text).is_err(), "the reader takes {to:?}");
        assert!(!errors(&text).is_empty(), "the schema takes {to:?}");
    }
}

#[test]
fn the_guide_names_every_key_and_its_example_reads() {
    let guide = std::fs::read_to_string(root().join("docs/project-file.md")).unwrap();
    let example = guide.split("```toml\n").nth(1).unwrap().split("```").next().unwrap();
    assert!(read(example).is_ok(), "{:#?}", read(example));
    let schema = schema();
    let tables = std::iter::once(&schema).chain(schema["$defs"].as_object().unwrap().values());
    let missing: Vec<&String> = tables
        .flat_map(|table| table["properties"].as_object().unwrap())
        .map(|(key, _)| key)
        .filter(|key| !guide.contains(&format!("`{key}`")) && !guide.contains(&format!("{key} = ")))
        .filter(|key| !guide.contains(&format!("[{key}]")) && !guide.contains(&format!(".{key}]]")))
        .collect();
    assert!(missing.is_empty(), "not in docs/project-file.md: {missing:?}");
}
