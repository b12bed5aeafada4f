//! Each mistake is found where it stands, and all of them at once.
#![allow(clippy::unwrap_used, reason = "tests")]

use std::collections::BTreeSet;

use cards::Fact;
use store::project_file::{MOST_BYTES, Problem, ProblemKind, read, read_bytes};
use words::Arg;

/// A whole project; the cases below change one piece of it.
const GOOD: &str = r##"name = "Test"
unit = "in"
mark = "1/8"
envelope = "A2"

[[pack]]
name = "Pack"
sheet = "12 x 12"
price = "14.40"

[[pack.design]]
letter = "A"
name = "Leaf"
copies = 4
use = 2
front = { way = "one way", drawn = "dusk-leaf" }
back = { collage = { columns = ["3", "4"], rows = ["4", "4"] } }

[[pack.design]]
letter = "B"
name = "Dot"
copies = 4

[[cardstock]]
name = "Milk"
color = "#f6f0e2"
sheet = { size = "Letter", price = "11.00" }

[[cardstock]]
name = "Brick"
color = "#a8483a"

[[ribbon]]
name = "Slate"
color = "#3b4148"
width = "1/4"
spool = "10 yd"

[[greeting]]
words = "with thanks"
inked = "2 1/4 x 3/8"

[[recipe]]
name = "Twin"
format = "3 1/2 x 5"
base = "Milk"
least = 2
most = 8

[[recipe.layer]]
name = "mat"
kind = "mat"
follows = "panel"
border = "1/8"
cardstock = { A = "Milk", B = "Brick" }

[[recipe.layer]]
name = "panel"
width = "2 3/4 to 3 1/4"
height = "4 1/4 to 4 3/4"
prefer = "3 x 4 1/2"

[[recipe.layer]]
name = "ribbon"
kind = "ribbon"
length = "4"
on = "panel"

[[recipe.layer]]
name = "strip"
kind = "strip"
size = "3 x 3/4"
cardstock = "Milk"

[goal]
cards_per_sheet = 8
partners = [["A", "B"]]
"##;

/// What is changed, into what, and where the one mistake then is: line, code, path.
#[rustfmt::skip]
const CASES: &[(&str, &str, usize, &str, &str)] = &[
    ("mark = ", "marc = ", 3, "unknown-key", "marc"),
    ("name = \"Dot\"\ncopies", "name = \"Dot\"\ncopys", 22, "unknown-key", "pack[0].design[1].copys"),
    ("border = \"1/8\"", "bow = true", 54, "unknown-key", "recipe[0].layer[0].bow"),
    ("name = \"Test\"\n", "\n", 1, "missing-key", "name"),
    ("sheet = \"12 x 12\"\n", "\n", 6, "missing-key", "pack[0].sheet"),
    ("color = \"#a8483a\"", "", 29, "missing-key", "cardstock[1].color"),
    ("prefer = \"3 x 4 1/2\"", "prefer = \"3 x 4 1/2\"\nsize = \"3 x 4\"", 62, "pick-one", "recipe[0].layer[1].size"),
    ("front = { way", "front = { color = \"#ffffff\", way", 16, "pick-one", "pack[0].design[0].front.drawn"),
    ("copies = 4\nuse", "copies = \"4\"\nuse", 14, "wrong-type", "pack[0].design[0].copies"),
    ("length = \"4\"", "length = true", 66, "wrong-type", "recipe[0].layer[2].length"),
    ("name = \"Pack\"", "name = 7", 7, "wrong-type", "pack[0].name"),
    ("[goal]\ncards_per_sheet = 8", "[[goal]]\ncards_per_sheet = 8", 75, "wrong-type", "goal"),
    ("[goal]", "[[choice]]\ncard = 3\nlayer = \"panel\"\n[goal]", 75, "missing-key", "choice[0].with"),
    ("[goal]", "[[choice]]\ncard = 3\nlayer = \"panel\"\nwith = 0\n[goal]", 78, "count-out-of-bounds", "choice[0].with"),
    ("[goal]", "[[choice]]\ncard = 3\nlayer = \"strip\"\nwith = 1\n[goal]", 77, "unknown-name", "choice[0].layer"),
    ("[goal]", "[[choice]]\ncard = 3\nlayer = \"mat\"\nwith = 1\n[goal]", 77, "unknown-name", "choice[0].layer"),
    ("[goal]", "[[choice]]\ncard = 3\nlayer = \"panel\"\ncardstock = \"Milk\"\n[goal]", 77, "unknown-name", "choice[0].layer"),
    ("[goal]", "[[choice]]\ncard = 3\nlayer = \"mat\"\ncardstock = \"Mild\"\n[goal]", 78, "unknown-name", "choice[0].cardstock"),
    ("[goal]", "[[choice]]\ncard = 3\nlayer = \"panel\"\nshows = \"top\"\n[goal]", 78, "bad-choice", "choice[0].shows"),
    (
        "[goal]",
        "[[choice]]\ncard = 3\nlayer = \"panel\"\nwith = 1\nshows = \"back\"\n[goal]",
        79,
        "pick-one",
        "choice[0].shows",
    ),
    ("[[\"A\", \"B\"]]", "[[\"A\"]]", 77, "wrong-type", "goal.partners[0]"),
    ("name = \"Leaf\"", "name = \"  \"", 13, "bad-text", "pack[0].design[0].name"),
    ("columns = [\"3\", \"4\"]", "columns = []", 17, "empty-list", "pack[0].design[0].back.collage.columns"),
    ("border = \"1/8\"", "border = \"1/8 furlong\"", 54, "bad-length", "recipe[0].layer[0].border"),
    ("border = \"1/8\"", "border = \"\"", 54, "bad-length", "recipe[0].layer[0].border"),
    ("border = \"1/8\"", "border = \"1/0\"", 54, "bad-length", "recipe[0].layer[0].border"),
    ("border = \"1/8\"", "border = \"-1/8\"", 54, "bad-length", "recipe[0].layer[0].border"),
    ("border = \"1/8\"", "border = \"1 9/8\"", 54, "bad-length", "recipe[0].layer[0].border"),
    ("border = \"1/8\"", "border = 0", 54, "out-of-bounds", "recipe[0].layer[0].border"),
    ("length = \"4\"", "length = \"90 in\"", 66, "out-of-bounds", "recipe[0].layer[2].length"),
    ("format = \"3 1/2 x 5\"", "format = \"350 x 500\"", 45, "out-of-bounds", "recipe[0].format"),
    ("format = \"3 1/2 x 5\"", "format = \"0 x 5\"", 45, "out-of-bounds", "recipe[0].format"),
    ("format = \"3 1/2 x 5\"", "format = \"3 1/2\"", 45, "bad-size", "recipe[0].format"),
    ("format = \"3 1/2 x 5\"", "format = \"-3 x 5\"", 45, "bad-size", "recipe[0].format"),
    ("size = \"Letter\"", "size = \"Leter\"", 27, "bad-size", "cardstock[0].sheet.size"),
    ("copies = 4\nuse", "copies = -4\nuse", 14, "count-out-of-bounds", "pack[0].design[0].copies"),
    ("cards_per_sheet = 8", "cards_per_sheet = 0", 76, "count-out-of-bounds", "goal.cards_per_sheet"),
    ("cards_per_sheet = 8", "cards_per_sheet = 99999999999999999999", 76, "count-out-of-bounds", "goal.cards_per_sheet"),
    ("\"2 3/4 to 3 1/4\"", "\"3 1/4 to 2 3/4\"", 59, "least-above-most", "recipe[0].layer[1].width"),
    ("least = 2", "least = 9", 47, "fewest-above-most", "recipe[0].least"),
    ("prefer = \"3 x 4 1/2\"", "prefer = \"3 x 5\"", 61, "prefer-outside", "recipe[0].layer[1].prefer"),
    ("inked = \"2 1/4 x 3/8\"", "inked = \"2 1/4 x 3/8\"\nstamp = { size = \"2 1/4 x 1/4\" }", 42, "ink-beyond-stamp", "greeting[0].stamp.size"),
    ("size = \"3 x 3/4\"", "size = \"3 x 3/4\"\nwords_border = \"1/4\"", 73, "border-without-edge", "recipe[0].layer[3].words_border"),
    ("prefer = \"3 x 4 1/2\"", "prefer = \"3 x 4 1/2\"\nwords_at = \"top\"", 62, "place-without-greeting", "recipe[0].layer[1].words_at"),
    ("prefer = \"3 x 4 1/2\"", "prefer = \"3 x 4 1/2\"\ngreeting = \"nobody\"", 62, "unknown-name", "recipe[0].layer[1].greeting"),
    ("inked = \"2 1/4 x 3/8\"", "inked = \"2 1/4 x 3/8\"\nmiddle = \"weight\"", 42, "weight-without-mark", "greeting[0].middle"),
    ("inked = \"2 1/4 x 3/8\"", "inked = \"2 1/4 x 3/8\"\noutline = \"0,0 4,4 4,0 0,4\"", 42, "outline-crosses", "greeting[0].outline"),
    ("size = \"3 x 3/4\"", "size = \"3 x 3/4\"\nwords_at = \"left thrid\"", 73, "bad-choice", "recipe[0].layer[3].words_at"),
    ("mark = \"1/8\"", "mark = \"1/7 in\"", 3, "bad-length", "mark"),
    ("mark = \"1/8\"", "mark = \"3/8\"", 3, "bad-mark", "mark"),
    ("unit = \"in\"", "class = { seats = 4, starts = \"25:00\" }\nunit = \"in\"", 2, "bad-time", "class.starts"),
    ("unit = \"in\"", "unit = \"inch\"", 2, "bad-choice", "unit"),
    ("kind = \"strip\"", "kind = \"strop\"", 71, "bad-choice", "recipe[0].layer[3].kind"),
    ("drawn = \"dusk-leaf\"", "drawn = \"dusk-leef\"", 16, "bad-choice", "pack[0].design[0].front.drawn"),
    ("base = \"Milk\"", "base = \"Mlik\"", 46, "unknown-name", "recipe[0].base"),
    ("on = \"panel\"", "on = \"pannel\"", 67, "unknown-name", "recipe[0].layer[2].on"),
    ("follows = \"panel\"", "follows = \"panels\"", 53, "unknown-name", "recipe[0].layer[0].follows"),
    ("[[\"A\", \"B\"]]", "[[\"A\", \"Z\"]]", 77, "unknown-name", "goal.partners[0][1]"),
    ("B = \"Brick\" }", "B = \"Brick\", C = \"Milk\" }", 55, "unknown-name", "recipe[0].layer[0].cardstock.C"),
    ("[goal]", "[[goal.spares]]\nlayer = \"strip\"\n[goal]", 76, "unknown-name", "goal.spares[0].layer"),
    ("base = \"Milk\"\n", "\n", 43, "name-needed", "recipe[0].base"),
    ("\"Dot\"\n", "\"Dot\"\n[[pack.design]]\nletter = \"A\"\n", 23, "duplicate-name", "pack[0].design[2].letter"),
    ("name = \"Dot\"", "name = \"Leaf\"", 21, "duplicate-name", "pack[0].design[1].name"),
    ("name = \"strip\"", "name = \"mat\"", 70, "duplicate-name", "recipe[0].layer[3].name"),
    ("color = \"#a8483a\"", "color = \"brick\"", 31, "bad-color", "cardstock[1].color"),
    ("color = \"#a8483a\"", "color = \"#a8483\"", 31, "bad-color", "cardstock[1].color"),
    ("unit = \"in\"", "date = 2026-02-28T10:00:00", 2, "bad-date", "date"),
    ("unit = \"in\"", "priced_on = \"2026-02-30\"", 2, "bad-date", "priced_on"),
    ("price = \"14.40\"", "price = \"14,40\"", 9, "bad-price", "pack[0].price"),
    ("price = \"14.40\"", "price = -3", 9, "bad-price", "pack[0].price"),
    ("unit = \"in\"", "currency = \"pounds\"", 2, "bad-currency", "currency"),
    ("unit = \"in\"", "post = { extras = \"1 lb\" }", 2, "bad-weight", "post.extras"),
    ("unit = \"in\"", "class = { seats = 501 }", 2, "count-out-of-bounds", "class.seats"),
    ("unit = \"in\"", "class = { seats = 5, batch = \"Sunday\" }", 2, "unknown-name", "class.batch"),
    ("unit = \"in\"", "selling = { fees = \"-1\" }", 2, "bad-price", "selling.fees"),
    ("unit = \"in\"", "selling = { fees = 101 }", 2, "count-out-of-bounds", "selling.fees"),
    ("unit = \"in\"", "offer = [{ of = \"Gold\", pack_of = 5 }]", 2, "unknown-name", "offer[0].of"),
    ("unit = \"in\"", "minutes = { base = \"soon\" }", 2, "bad-price", "minutes.base"),
    ("letter = \"B\"", "letter = \"Bee Two\"", 20, "bad-letter", "pack[0].design[1].letter"),
    ("drawn = \"dusk-leaf\"", "picture = \"../leaf.png\"", 16, "bad-picture", "pack[0].design[0].front.picture"),
    ("drawn = \"dusk-leaf\"", "picture = \"leaf.gif\"", 16, "bad-picture", "pack[0].design[0].front.picture"),
    (
        "[goal]",
        "[[background]]\nname = \"Fern\"\nsheet = \"6 x 6\"\n[[background.stamp]]\nname = \"leaf\"\nshape = \"leaf\"\nsize = \"7\"\n[goal]",
        81,
        "stamp-too-large",
        "background[0].stamp[0].size",
    ),
    (
        "[goal]",
        "[[background]]\nname = \"Fern\"\nsheet = \"6 x 6\"\n[[background.stamp]]\nname = \"leaf\"\noutline = \"0,0 4,4 4,0 0,3\"\nsize = \"1\"\n[goal]",
        80,
        "outline-crosses",
        "background[0].stamp[0].outline",
    ),
    (
        "[goal]",
        "[[background]]\nname = \"Fern\"\nsheet = \"6 x 6\"\n[[background.stamp]]\nname = \"leaf\"\noutline = \"0,0 4,4\"\nsize = \"1\"\n[goal]",
        80,
        "outline-empty",
        "background[0].stamp[0].outline",
    ),
    (
        "[goal]",
        "[[background]]\nname = \"Fern\"\nsheet = \"6 x 6\"\n[[background.stamp]]\nname = \"leaf\"\noutline = \"0,0 4,x 4,0\"\nsize = \"1\"\n[goal]",
        80,
        "bad-outline",
        "background[0].stamp[0].outline",
    ),
    (
        "[goal]",
        "[[background]]\nname = \"Fern\"\nsheet = \"6 x 6\"\n[[background.stamp]]\nname = \"leaf\"\noutline = \"0,0 4;0 4,0\"\nsize = \"1\"\n[goal]",
        80,
        "bad-outline",
        "background[0].stamp[0].outline",
    ),
    (
        "[goal]",
        "[[background]]\nname = \"Fern\"\nsheet = \"6 x 6\"\n[[background.stamp]]\nname = \"leaf\"\nshape = \"leaf\"\nsize = \"1\"\nshare = 0\n[goal]",
        78,
        "nothing-to-stamp",
        "background[0].stamp",
    ),
    (
        "[goal]",
        "[[background]]\nname = \"Fern\"\nsheet = \"6 x 6\"\ncount = 10001\n[[background.stamp]]\nname = \"leaf\"\nshape = \"leaf\"\nsize = \"1\"\n[goal]",
        78,
        "count-out-of-bounds",
        "background[0].count",
    ),
    (
        "[goal]",
        "[[background]]\nname = \"Fern\"\nsheet = \"6 x 6\"\n[[background.stamp]]\nname = \"leaf\"\nshape = \"laef\"\nsize = \"1\"\n[goal]",
        80,
        "bad-choice",
        "background[0].stamp[0].shape",
    ),
    (
        "[goal]",
        "[[background]]\nname = \"Fern\"\nsheet = \"6 x 6\"\n[[background.stamp]]\nname = \"leaf\"\nsize = \"1\"\n[goal]",
        78,
        "pick-one",
        "background[0].stamp[0].shape",
    ),
    (
        "[goal]",
        "[[background]]\nname = \"Fern\"\nsheet = \"6 x 6\"\n[[background.stamp]]\nname = \"leaf\"\nshape = \"leaf\"\nsize = \"1\"\nturn = \"free\"\nturn_within = 20\n[goal]",
        83,
        "pick-one",
        "background[0].stamp[0].turn_within",
    ),
    (
        "[goal]",
        "[[background]]\nname = \"Fern\"\nsheet = \"6 x 6\"\n[[background.stamp]]\nname = \"leaf\"\npicture = \"../leaf.png\"\nsize = \"1\"\n[goal]",
        80,
        "bad-picture",
        "background[0].stamp[0].picture",
    ),
    (
        "[goal]",
        "[[background]]\nname = \"Fern\"\nsheet = \"6 x 6\"\nstands = [{ stamp = \"laef\", x = 1, y = 1 }]\n[[background.stamp]]\nname = \"leaf\"\nshape = \"leaf\"\nsize = \"1\"\n[goal]",
        78,
        "unknown-name",
        "background[0].stands[0].stamp",
    ),
    ("drawn = \"dusk-leaf\"", "background = \"Fern\"", 16, "unknown-name", "pack[0].design[0].front.background"),
    ("use = 2", "use = 5", 15, "use-above-copies", "pack[0].design[0].use"),
    ("price = \"14.40\"", "unusable = { left = 6, right = 6 }", 9, "nothing-left", "pack[0].unusable"),
    ("Letter\", price = \"11.00\"", "Letter\", unusable = { top = 11 }", 27, "nothing-left", "cardstock[0].sheet.unusable"),
    ("[\"3\", \"4\"]", "[\"8\", \"5\"]", 17, "collage-too-large", "pack[0].design[0].back.collage.columns"),
    (
        "{ columns = [\"3\", \"4\"], rows = [\"4\", \"4\"] }",
        "{ panels = [{ left = 0, top = 0, size = \"3 x 4\" }, { left = 2, top = 3, size = \"3 x 4\" }] }",
        17,
        "panels-overlap",
        "pack[0].design[0].back.collage.panels[1].left",
    ),
    (
        "{ columns = [\"3\", \"4\"], rows = [\"4\", \"4\"] }",
        "{ panels = [{ left = 0, top = 0, size = \"3 x 4\" }, { left = 9, top = 9, size = \"3 x 4\" }] }",
        17,
        "collage-too-large",
        "pack[0].design[0].back.collage.panels[1].size",
    ),
    (
        "{ columns = [\"3\", \"4\"], rows = [\"4\", \"4\"] }",
        "{ columns = [\"3\", \"4\"], rows = [\"4\", \"4\"] }, keep = [{ left = 9, top = 9, size = \"4 x 2\" }]",
        17,
        "region-off-sheet",
        "pack[0].design[0].back.keep[0].size",
    ),
    (
        "{ columns = [\"3\", \"4\"], rows = [\"4\", \"4\"] }",
        "{ columns = [\"3\"], rows = [\"4\"] }, keep = [{ left = 0, top = 0, size = \"1 x 2\", show_on = \"Nobody/panel\" }]",
        17,
        "unknown-name",
        "pack[0].design[0].back.keep[0].show_on",
    ),
    ("unit = \"in\"", "placing = \"pretty\"", 2, "bad-choice", "placing"),
    ("on = \"panel\"", "on = \"strip\"", 67, "laid-on-later", "recipe[0].layer[2].on"),
    ("on = \"panel\"", "on = \"ribbon\"", 67, "laid-on-later", "recipe[0].layer[2].on"),
    ("follows = \"panel\"", "follows = \"mat\"", 53, "follows-earlier", "recipe[0].layer[0].follows"),
    ("follows = \"panel\"", "follows = \"ribbon\"", 53, "nothing-to-follow", "recipe[0].layer[0].follows"),
    ("B = \"Brick\" }", "B = \"Brick\"", 57, "syntax", ""),
    ("{ A = \"Milk\", B = \"Brick\" }", "{ A = \"Milk\" }", 55, "designs-without", "recipe[0].layer[0].cardstock"),
    ("[[\"A\", \"B\"]]", "[[\"A\", \"A\"]]", 77, "partner-twice", "goal.partners[0][1]"),
    ("name = \"Pack\"", "name = \"Pack", 7, "syntax", ""),
    ("sheet = \"12 x 12\"", "sheet = 12 x 12", 8, "syntax", ""),
];

fn changed(from: &str, to: &str) -> String {
    assert!(GOOD.contains(from), "the good file has no {from:?}");
    GOOD.replacen(from, to, 1)
}

fn problems(text: &str) -> Vec<Problem> {
    read(text).err().unwrap_or_default()
}

#[test]
fn the_good_file_reads() {
    assert_eq!(problems(GOOD), []);
}

#[test]
fn each_mistake_is_found_where_it_stands() {
    let mut missed = Vec::new();
    for (from, to, line, code, path) in CASES {
        let found = problems(&changed(from, to));
        let found: Vec<_> = found.iter().map(|found| (found.line, found.code(), found.path.clone())).collect();
        if found != [(*line, *code, (*path).to_owned())] {
            missed.push(format!("{from:?} to {to:?}: {found:?}"));
        }
    }
    assert!(missed.is_empty(), "{}", missed.join("\n"));
}

#[test]
fn columns_count_signs_not_bytes() {
    let found = problems(&changed("front = { way", "front = { name = \"¾ née 花\", wey"));
    assert_eq!((found[0].line, found[0].column, found[0].code()), (16, 29, "unknown-key"));
}

#[test]
fn a_near_key_or_name_is_suggested() {
    for (from, to, wanted) in [
        ("name = \"Dot\"\ncopies", "name = \"Dot\"\ncopys", "copies"),
        ("base = \"Milk\"", "base = \"milk\"", "Milk"),
        ("size = \"Letter\"", "size = \"Leter\"", "letter"),
        ("drawn = \"dusk-leaf\"", "drawn = \"dusk-leef\"", "dusk-leaf"),
    ] {
        let found = problems(&changed(from, to));
        let nearest = found[0].facts().into_iter().find(|(name, _)| *name == "nearest");
        let Some((_, Fact::Text(nearest))) = nearest else { panic!("{found:?}") };
        assert_eq!(nearest.split(", ").next(), Some(wanted));
    }
}

#[test]
fn the_unit_of_the_project_is_that_of_bare_numbers() {
    let metric = GOOD.replacen("unit = \"in\"", "unit = \"mm\"", 1).replacen("mark = \"1/8\"\n", "", 1);
    let found = problems(&metric);
    // An eighth of a millimetre is a border; three and a half by five is no card.
    assert!(found.iter().any(|found| found.path == "recipe[0].layer[3].size" && found.code() == "out-of-bounds"));
    assert!(!found.iter().any(|found| found.path == "recipe[0].layer[0].border"));
    assert!(found.iter().all(|found| found.unit == measure::Unit::Millimetre));
}

#[test]
fn many_mistakes_come_at_once_in_the_order_of_their_lines() {
    let mut text = GOOD.to_owned();
    let wrong = [
        ("mark = ", "marc = "),
        ("sheet = \"12 x 12\"", "sheet = \"12\""),
        ("letter = \"B\"", "letter = \"A\""),
        ("color = \"#a8483a\"", "color = \"brick\""),
        ("base = \"Milk\"", "base = \"Mlik\""),
        ("\"2 3/4 to 3 1/4\"", "\"3 1/4 to 2 3/4\""),
        ("cards_per_sheet = 8", "cards_per_sheet = 0"),
    ];
    for (from, to) in wrong {
        text = text.replacen(from, to, 1);
    }
    let found: Vec<(usize, &str)> = problems(&text).iter().map(|found| (found.line, found.code())).collect();
    let expected = [
        (3, "unknown-key"),
        (8, "bad-size"),
        (20, "duplicate-name"),
        (31, "bad-color"),
        (46, "unknown-name"),
        // With letter B gone, its cardstock and its partner hang in the air too.
        (55, "unknown-name"),
        (59, "least-above-most"),
        (76, "count-out-of-bounds"),
        (77, "unknown-name"),
    ];
    assert_eq!(found, expected);
}

#[test]
fn a_broken_definition_is_not_blamed_on_those_who_use_it() {
    let found = problems(&changed("name = \"Brick\"", "name = 3"));
    assert_eq!(found.len(), 1, "{found:?}");
    let without = GOOD.replacen("[[recipe]]", "[[recipes]]", 1).replace("[[recipe.layer]]", "[[recipes.layer]]");
    let codes: Vec<&str> = problems(&without).iter().map(Problem::code).collect();
    assert_eq!(codes, ["missing-key", "unknown-key"]);
}

#[test]
fn patterned_layers_need_paper() {
    let start = GOOD.find("[[pack]]").unwrap();
    let end = GOOD.find("[[cardstock]]").unwrap();
    let text = format!("{}{}", &GOOD[..start], &GOOD[end..]);
    assert!(problems(&text).iter().any(|found| found.code() == "missing-key" && found.path == "pack"));
}

/// Files that are wrong as a whole.
fn whole() -> Vec<(Vec<u8>, usize, &'static str)> {
    let long = format!("{GOOD}\n{}", "# more\n".repeat(MOST_BYTES / 7));
    let list = format!("{GOOD}pins = [{}]\n", "1, ".repeat(501));
    vec![
        (many_corners().into_bytes(), 80, "outline-many"),
        (Vec::new(), 1, "empty-file"),
        (b" \n# only a comment\n".to_vec(), 1, "empty-file"),
        (b"\xef\xbb\xbf".to_vec(), 1, "empty-file"),
        (b"name = \"a\"\nmaker = \"\xff\"\n".to_vec(), 2, "not-utf8"),
        (long.into_bytes(), 1, "too-large-file"),
        (list.into_bytes(), 78, "list-too-long"),
    ]
}

#[test]
fn files_wrong_as_a_whole_are_refused() {
    for (bytes, line, code) in whole() {
        let found = read_bytes(&bytes).unwrap_err();
        let found: Vec<_> = found.iter().map(|found| (found.line, found.code())).collect();
        assert_eq!(found, [(line, code)]);
    }
    assert!(read_bytes(format!("\u{feff}{GOOD}").as_bytes()).is_ok());
    assert!(read_bytes(GOOD.replace('\n', "\r\n").as_bytes()).is_ok());
}

#[test]
fn a_broken_file_still_tells_what_single_values_are_wrong() {
    let text = changed("sheet = \"12 x 12\"", "sheet = 12 x 12").replacen("\"14.40\"", "\"14,40\"", 1);
    let codes: Vec<&str> = problems(&text).iter().map(Problem::code).collect();
    assert_eq!(codes, ["syntax", "bad-price"]);
}

fn arg(fact: Fact) -> Arg {
    match fact {
        Fact::Length(length) => measure::write_exact(length).into(),
        Fact::Count(count) => count.into(),
        Fact::Text(text) => text.into(),
    }
}

#[test]
fn every_mistake_and_its_remedy_can_be_said() {
    let texts = CASES.iter().map(|(from, to, ..)| changed(from, to).into_bytes());
    let mut said = BTreeSet::new();
    for bytes in texts.chain(whole().into_iter().map(|(bytes, ..)| bytes)) {
        for problem in read_bytes(&bytes).err().unwrap_or_default() {
            let args: Vec<(&str, Arg)> = problem.facts().into_iter().map(|(name, fact)| (name, arg(fact))).collect();
            let id = format!("problem-{}", problem.code());
            for id in [id.clone(), format!("{id}.remedy")] {
                let text = words::say(&id, &args);
                assert!(!text.is_empty() && !text.contains(['⟨', '⟩']), "{id}: {text:?}");
            }
            said.insert(id);
        }
    }
    let (_, file) = words::ENGLISH.into_iter().find(|(name, _)| *name == "projects.ftl").unwrap();
    let messages = file.lines().filter(|line| line.starts_with("problem-"));
    let written: BTreeSet<String> = messages.filter_map(|line| line.split(' ').next()).map(str::to_owned).collect();
    assert_eq!(said, written, "a message without a case here, or the other way round");
}

#[test]
fn what_is_said_helps() {
    let say = |from: &str, to: &str| -> (String, String) {
        let problem = problems(&changed(from, to)).remove(0);
        let args: Vec<(&str, Arg)> = problem.facts().into_iter().map(|(name, fact)| (name, arg(fact))).collect();
        let id = format!("problem-{}", problem.code());
        (words::say(&id, &args), words::say(&format!("{id}.remedy"), &args))
    };
    let (what, remedy) = say("copies = 4\nuse", "copys = 4\nuse");
    assert_eq!((what.as_str(), remedy.as_str()), ("the key `copys` means nothing here", "did you mean `copies`?"));
    let (what, remedy) = say("letter = \"B\"", "letter = \"A\"");
    assert_eq!(what, "the letter `A` is taken: line 12");
    assert_eq!(remedy, "choose another one here");
    let (_, remedy) = say("\"2 3/4 to 3 1/4\"", "\"3 1/4 to 2 3/4\"");
    assert_eq!(remedy, "write the smaller length first");
    let (what, _) = say("prefer = \"3 x 4 1/2\"", "prefer = \"3 x 5\"");
    assert_eq!(what, "the size you like best, 3 in × 5 in, is outside what looks right");
    let (_, remedy) = say("{ A = \"Milk\", B = \"Brick\" }", "3");
    assert!(remedy.contains("{ A = \"Brick\", B = \"Hedge\" }"), "{remedy}");
}

#[test]
fn kinds_carry_what_was_found() {
    let found = problems(&changed("copies = 4\nuse", "copies = -4\nuse"));
    let ProblemKind::CountOutOfBounds { found, least, .. } = &found[0].kind else { panic!("{found:?}") };
    assert_eq!((found.as_str(), *least), ("-4", 1));
}

/// A background whose stamp has more corners than are read.
fn many_corners() -> String {
    let corners: Vec<String> = (0..401).map(|at: i32| format!("{at},{}", at * at % 7)).collect();
    let stamp = format!(
        "[[background]]\nname = \"Fern\"\nsheet = \"6 x 6\"\n[[background.stamp]]\nname = \"leaf\"\noutline = \"{}\"\n\
         size = \"1\"\n[goal]",
        corners.join(" ")
    );
    GOOD.replace("[goal]", &stamp)
}
