//! What is told where something is missing or cannot be: where, what was found, what would do.
//!
//! Source: the sums of a card drive worked by hand beforehand (common practice): eight cards from a sheet, two sheets of
//! each of six designs for 96 cards to post, two for 16 kits of six; written out here, none read off our own plan.
#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/run.rs"]
mod run;

use std::fs;
use std::path::{Path, PathBuf};

use run::octavo;

const DEMO: &str = include_str!("../../../examples/kettle-and-quince-whole-pack.toml");

/// A folder of this test's own; gone when dropped.
struct Scratch(PathBuf);

impl Scratch {
    fn new(name: &str) -> Scratch {
        let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("short-{}-{name}", std::process::id()));
        fs::create_dir_all(&path).unwrap();
        Scratch(path)
    }

    /// Makes a project; exit code, what was printed, and the handout as text.
    fn make(&self, text: &str) -> (u8, String, String) {
        let file = self.0.join("project.toml");
        fs::write(&file, text).unwrap();
        let out = self.0.join("out");
        let (code, said, err) = octavo(&["make", file.to_str().unwrap(), "--out", out.to_str().unwrap()]);
        let book = fs::read_to_string(out.join("handout.md")).unwrap_or_default();
        (code, said + &err, book)
    }
}

impl Drop for Scratch {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

/// The demo with so many sheets of the design of a name.
fn with_copies(name: &str, copies: u32) -> String {
    let wanted = format!("name = \"{name}\"\ncopies = 4");
    assert!(DEMO.contains(&wanted));
    DEMO.replace(&wanted, &format!("name = \"{name}\"\ncopies = {copies}"))
}

#[test]
fn a_pack_with_a_sheet_missing_says_of_which_design_and_what_could_go() {
    let scratch = Scratch::new("design");
    // One of the four sheets of E is not there: the kits lack 8 of 16 cards of it, so 8 kits are whole.
    let (code, said, book) = scratch.make(&with_copies("Hedge Check", 3));
    assert_eq!(code, 1, "{said}");
    let told = "Saturday table: design E is to give 2 sheets and 1 is left: 1 too few. Get 1 more, or use another \
                design in their place. Or let something go: 8 cards of E, which leaves 8 whole kits; or To post, which \
                takes 2 sheets of it and makes 96 cards.";
    assert!(said.contains(told), "{said}");
    assert!(book.contains("design E is to give 2 sheets"), "the handout tells it too");
    // No sheet of it is left at all.
    let (code, said, _) = scratch.make(&with_copies("Hedge Check", 2));
    assert_eq!(code, 1, "{said}");
    assert!(said.contains("and 0 are left: 2 too few. Get 2 more"), "{said}");
    assert!(said.contains("Or let something go: 16 cards of E; or To post, which takes 2 sheets of it"), "{said}");
}

#[test]
fn too_many_cards_say_how_many_sheets_are_missing_and_what_could_go() {
    let scratch = Scratch::new("cards");
    // 120 cards are 15 sheets of eight; the batch takes 12, so three are missing.
    let wanted = "name = \"To post\"\n";
    assert!(DEMO.contains(wanted));
    let (code, said, _) = scratch.make(&DEMO.replace(wanted, "name = \"To post\"\ncards = 120\n"));
    assert_eq!(code, 1, "{said}");
    let told = "To post: 120 cards are wanted and the sheets give 96. About 3 more sheets are needed, of any design. Or \
                let something go: 24 cards of this batch; or Saturday table, which takes 12 sheets and makes 96 cards.";
    assert!(said.contains(told), "{said}");
}

#[test]
fn a_share_that_cannot_be_says_the_nearest_that_can() {
    let scratch = Scratch::new("share");
    // Six designs with 16 cards each do not go into 50 equal kits; they go into 16, which is the most.
    let (code, said, _) = scratch.make(&DEMO.replace("kits = 16", "kits = 50"));
    assert_eq!(code, 0, "{said}");
    assert!(said.contains("The 50 kits are not alike: ") && said.contains("A 16"), "{said}");
    assert!(said.contains("16 kits would be alike"), "{said}");
    // More kits than cards: some would be empty.
    let (code, said, _) = scratch.make(&DEMO.replace("kits = 16", "kits = 97"));
    assert_eq!(code, 1, "{said}");
    assert!(said.contains("96 cards do not fill 97 kits: some would be empty."), "{said}");
}

#[test]
fn the_ways_out_stand_on_the_printed_pages_too() {
    let scratch = Scratch::new("ways");
    // Eight cards of a panel 3 1/16 wide do not go on a sheet of 12 x 12.
    let text = "name = \"Eight\"\n[[pack]]\nname = \"Spring\"\nsheet = \"12 x 12\"\n[[pack.design]]\nname = \"Meadow\"\n\
         [[cardstock]]\nname = \"Milk\"\ncolor = \"#f6f0e2\"\n[[recipe]]\nname = \"Twin\"\nformat = \"3 1/2 x 5\"\n\
         [[recipe.layer]]\nname = \"panel\"\nsize = \"3 1/16 x 4 1/2\"\n[[recipe.layer]]\nname = \"band\"\n\
         size = \"3 x 1 1/2\"\nat = \"bottom\"\ndown = \"-3/4\"\n[goal]\ncards_per_sheet = 8\n";
    let (code, said, book) = scratch.make(text);
    assert_eq!(code, 1, "{said}");
    assert!(
        said.contains("would do: let the panel of Twin be 1/16 in narrower, 3 in wide: nothing is left over"),
        "{said}"
    );
    let after = book.split("Any one of these would do:").nth(1).unwrap();
    let narrower = "let the panel of Twin be 1/16 in narrower, 3 in wide: nothing is left over";
    assert!(after.replace('\u{a0}', " ").contains(narrower), "{book}");
    assert!(!book.contains('⟨'), "every way is worded");
}
