//! Source: ISO 14289-1:2014 (PDF/UA-1), clauses 5, 7.1–7.6, 7.16–7.18, 7.21, from memory; read back by `lopdf` and, where
//! it is installed, poppler's `pdfinfo`. The handout can be used by a person who does not see it.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;
#[path = "common/tags.rs"]
mod tags;

use std::collections::BTreeMap;
use std::sync::LazyLock;

use cards::Plan;
use cutting::Budget;
use drawing::pdf::{self, About};
use drawing::scene::{Color, Mark, Point, Role, Scene};
use drawing::sheets::{Edition, Faces, Hand, Paper, Print, edition, handout};
use drawing::text::{Align, Face, Style, say};
use lopdf::{Document, Object};
use measure::{Length, Size, Unit};
use tags::{Element, Read};

fn planned() -> &'static Plan {
    static PLAN: LazyLock<Plan> = LazyLock::new(|| cards::plan::plan(&drive::project(), &mut Budget::nodes(200_000)));
    &PLAN
}

fn about() -> About {
    About { title: planned().project.name.clone(), ..About::default() }
}

fn scenes() -> Vec<Scene> {
    handout(planned(), &Faces::new(), Paper::Letter)
}

fn book() -> &'static [u8] {
    static BOOK: LazyLock<Vec<u8>> = LazyLock::new(|| pdf::write(&scenes(), &about()).unwrap());
    &BOOK
}

fn document() -> Document {
    static DOCUMENT: LazyLock<Document> = LazyLock::new(|| Document::load_mem(book()).unwrap());
    DOCUMENT.clone()
}

#[test]
fn nothing_in_the_handout_breaks_a_rule() {
    let crowded = cards::plan::plan(&drive::crowded(), &mut Budget::nodes(200_000));
    let plain = Edition {
        paper: Paper::Letter,
        print: Print::Normal,
        hand: Hand::Right,
        unit: Unit::Inch,
        language: words::Language::English,
    };
    for (plan, which) in [
        (planned(), plain),
        (planned(), Edition { paper: Paper::A4, unit: Unit::Millimetre, ..plain }),
        (planned(), Edition { print: Print::Large, hand: Hand::Left, ..plain }),
        (&crowded, plain),
    ] {
        let bytes = pdf::write(&edition(plan, &Faces::new(), &which), &about()).unwrap();
        assert_eq!(Read::new(&Document::load_mem(&bytes).unwrap()).faults(), [], "{which:?}");
    }
}

/// The reader finds what is wrong: each spoiled file breaks the clause that was spoiled.
#[test]
fn every_spoiled_handout_breaks_its_rule() {
    type Spoil = fn(&mut Document);
    fn elements<'a>(document: &'a mut Document, kind: &str) -> Vec<&'a mut lopdf::Dictionary> {
        let dictionaries = document.objects.values_mut().filter_map(|object| object.as_dict_mut().ok());
        let named = |found: &lopdf::Dictionary| found.get(b"S").and_then(Object::as_name).ok() == Some(kind.as_bytes());
        dictionaries.filter(|found| named(found)).collect()
    }
    fn rename(document: &mut Document, from: &str, to: &str) {
        elements(document, from)[0].set("S", Object::Name(to.into()));
    }
    fn replaced(document: &mut Document, from: &str, to: &str) {
        let page = *document.get_pages().values().next().unwrap();
        let text = String::from_utf8_lossy(&document.get_page_content(page)).replacen(from, to, 1);
        document.change_page_content(page, text.into_bytes()).unwrap();
    }
    let spoils: [(&str, Spoil); 17] = [
        ("5", |document| {
            let id = document.catalog().unwrap().get(b"Metadata").unwrap().as_reference().unwrap();
            document.get_object_mut(id).unwrap().as_stream_mut().unwrap().set_plain_content(Vec::new());
        }),
        ("7.1", |document| drop(document.catalog_mut().unwrap().remove(b"MarkInfo"))),
        ("7.1", |document| drop(document.catalog_mut().unwrap().remove(b"StructTreeRoot"))),
        ("7.1", |document| drop(document.catalog_mut().unwrap().remove(b"ViewerPreferences"))),
        ("7.1", |document| replaced(document, "/MCID 1", "/MCID 0")),
        ("7.1", |document| replaced(document, "/MCID 1", "/MCID 999")),
        ("7.1", |document| replaced(document, "EMC", "EMC 0 0 9 9 re f ")),
        ("7.1", |document| rename(document, "P", "Para")),
        ("7.2", |document| drop(document.catalog_mut().unwrap().remove(b"Lang"))),
        ("7.3", |document| drop(elements(document, "Figure")[0].remove(b"Alt"))),
        ("7.3", |document| drop(elements(document, "Figure")[0].remove(b"A"))),
        ("7.4.2", |document| rename(document, "H2", "H3")),
        ("7.5", |document| drop(elements(document, "TH")[0].remove(b"A"))),
        ("7.5", |document| drop(elements(document, "TR")[1].remove(b"K"))),
        ("7.6", |document| drop(elements(document, "L")[0].remove(b"A"))),
        ("7.17", |document| drop(document.catalog_mut().unwrap().remove(b"Outlines"))),
        ("7.21.7", |document| {
            for object in document.objects.values_mut() {
                if let Ok(font) = object.as_dict_mut() {
                    font.remove(b"ToUnicode");
                }
            }
        }),
    ];
    for (index, (clause, spoil)) in spoils.into_iter().enumerate() {
        let mut document = document();
        spoil(&mut document);
        let faults = Read::new(&document).faults();
        assert!(faults.iter().any(|(found, _)| *found == clause), "spoil {index}, {clause}: {faults:?}");
    }
}

/// What is read next lies below or to the right of what was read before, page after page.
#[test]
fn it_is_read_from_top_to_bottom() {
    let document = document();
    let read = Read::new(&document);
    let order: BTreeMap<_, _> = read.pages.iter().enumerate().map(|(index, (id, _))| (*id, index)).collect();
    let blocks = ["H1", "H2", "P", "LBody", "TR", "Figure"];
    let (mut looked, mut last) = (0, None);
    for element in read.root.all() {
        let holds = element.inner().next().is_some();
        if !blocks.contains(&element.kind.as_str()) || (element.kind == "LBody" && holds) {
            continue;
        }
        // Of a figure only its page: its words are drawn wherever there is room.
        let contents = element.contents();
        let pages: Vec<usize> = contents.iter().map(|(page, ..)| order[page]).collect();
        assert!(pages.is_sorted(), "an element goes back a page");
        let lines: Vec<(f64, f64)> = contents
            .iter()
            .filter(|_| element.kind != "Figure")
            .flat_map(|(page, number, _)| read.pages[order[page]].1[number].lines.clone())
            .collect();
        if element.kind != "TR" {
            // A fraction is a run of its own on the same line; a number stands before its line, a little lower.
            let goes_on = |a: (f64, f64), b: (f64, f64)| b.1 <= a.1 + 0.01 || (b.1 <= a.1 + 2.0 && b.0 > a.0);
            assert!(lines.windows(2).all(|pair| goes_on(pair[0], pair[1])), "lines go down: {lines:?}");
        }
        let (left, right) = (
            lines.iter().map(|line| line.0).fold(f64::MAX, f64::min),
            lines.iter().map(|line| line.0).fold(0.0, f64::max),
        );
        let (top, foot) = (
            lines.iter().map(|line| line.1).fold(0.0, f64::max),
            lines.iter().map(|line| line.1).fold(f64::MAX, f64::min),
        );
        let (Some(&page), false) = (pages.first(), lines.is_empty()) else { continue };
        if let Some((before, before_right, before_top)) = last {
            assert!(page >= before, "back to page {}", page + 1);
            assert!(
                page > before || top <= before_top + 0.01 || left > before_right,
                "page {}: {foot} after {before_top}",
                page + 1
            );
        }
        last = Some((page, right, top));
        looked += 1;
    }
    assert!(looked > 60, "{looked} blocks");
}

fn of_kind<'a>(root: &'a Element, kind: &str) -> Vec<&'a Element> {
    root.all().into_iter().filter(|element| element.kind == kind).collect()
}

#[test]
fn roles_become_elements_one_for_one() {
    fn count(marks: &[Mark], wanted: fn(&Role) -> bool) -> usize {
        let of = |mark: &Mark| match mark {
            Mark::Group { role, marks, .. } => usize::from(role.as_ref().is_some_and(wanted)) + count(marks, wanted),
            _ => 0,
        };
        marks.iter().map(of).sum()
    }
    let document = document();
    let read = Read::new(&document);
    let scenes = scenes();
    let roles = |wanted: fn(&Role) -> bool| scenes.iter().map(|scene| count(&scene.marks, wanted)).sum::<usize>();
    for (kind, wanted) in [
        ("H1", (|role| *role == Role::Heading(1)) as fn(&Role) -> bool),
        ("H2", |role| *role == Role::Heading(2)),
        ("P", |role| *role == Role::Paragraph),
        ("Figure", |role| matches!(role, Role::Figure(_))),
        ("LI", |role| *role == Role::Item),
        ("Lbl", |role| *role == Role::Label),
        ("Table", |role| *role == Role::Table),
        ("TR", |role| *role == Role::Row),
        ("TD", |role| *role == Role::Cell),
        ("TH", |role| *role == Role::HeadCell),
    ] {
        assert_eq!(of_kind(&read.root, kind).len(), roles(wanted), "{kind}");
        assert!(roles(wanted) > 0, "{kind}");
    }
    // Items in a row are one list, and each chapter is a part.
    assert!(of_kind(&read.root, "L").len() < roles(|role| *role == Role::List));
    assert_eq!(of_kind(&read.root, "Sect").len(), roles(|role| *role == Role::Heading(1)));
    // The steps are a numbered list.
    let numbered = |list: &&Element| list.attributes.get(b"ListNumbering").unwrap().as_name().unwrap() == b"Decimal";
    let steps = of_kind(&read.root, "L").into_iter().find(numbered).unwrap();
    let parts: Vec<&str> = steps.inner().next().unwrap().all().iter().map(|part| part.kind.as_str()).collect();
    assert_eq!(parts, ["LI", "Lbl", "LBody", "Figure", "P", "P"]);
    // No list of the handout is without labels.
    assert_eq!(of_kind(&read.root, "LI").len(), of_kind(&read.root, "Lbl").len());
    // The dot of an item is read as one.
    let dot = of_kind(&read.root, "Lbl")[0].contents()[0];
    let page = &read.pages.iter().find(|(id, _)| *id == dot.0).unwrap().1;
    assert!(page[&dot.1].actual.is_some() || !page[&dot.1].lines.is_empty());
}

/// A page of one paragraph.
fn page(words: &str) -> Scene {
    let style = Style::new(Face::Regular, 12);
    let at = Point::new(Length::INCH, Length::INCH);
    let marks = vec![Mark::role(Role::Paragraph, vec![say(words, style, at, Align::Start, Color::hex(0))])];
    Scene { size: Size::new(Length::INCH * 8, Length::INCH * 2), title: "Page".to_owned(), marks }
}

#[test]
fn fractions_are_read_as_numbers() {
    let bytes = pdf::write(&[page("set 4\u{a0}3\u{2044}4 in, then 3\u{2044}16 in")], &about()).unwrap();
    let document = Document::load_mem(&bytes).unwrap();
    let read = Read::new(&document);
    let actual: Vec<Option<&str>> = read.pages[0].1.values().map(|drawn| drawn.actual.as_deref()).collect();
    assert_eq!(actual, [None, Some("¾"), None, Some("3/16"), None]);
    assert_eq!(read.root.contents().len(), 5);
    // Each piece starts where the one before ends.
    let starts: Vec<f64> = read.pages[0].1.values().map(|drawn| drawn.lines[0].0).collect();
    assert!(starts.is_sorted() && (starts[0] - 72.0).abs() < 1e-6, "{starts:?}");
    assert_eq!(Read::new(&document).faults(), []);
}

/// A maker may write what no face here has: it is a box on paper, and itself for whoever listens or copies.
#[test]
fn names_in_other_scripts_are_written() {
    for words in ["Grüße für 小さな Karten", "שלום", "🦊 fox\u{fe0f}", "a\u{feff}b\u{0}c\td"] {
        let bytes = pdf::write(&[page(words)], &About { title: words.to_owned(), ..About::default() }).unwrap();
        assert_eq!(Read::new(&Document::load_mem(&bytes).unwrap()).faults(), [], "{words:?}");
    }
}

#[test]
fn the_outline_names_every_heading() {
    let document = document();
    let outline = document.catalog().unwrap().get(b"Outlines").unwrap().as_reference().unwrap();
    let mut ids = vec![outline];
    let mut entries = 0;
    while let Some(id) = ids.pop() {
        let entry = document.get_dictionary(id).unwrap();
        entries += usize::from(entry.has(b"Title") && entry.has(b"Dest"));
        ids.extend([b"First".as_slice(), b"Next"].iter().filter_map(|key| entry.get(key).ok()?.as_reference().ok()));
    }
    let read = Read::new(&document);
    assert_eq!(entries, of_kind(&read.root, "H1").len() + of_kind(&read.root, "H2").len());
    assert!(entries > 8, "{entries}");
}

/// What poppler's own reader of tags says; where the program is missing the tests above have read the same tags.
#[test]
#[allow(clippy::disallowed_methods, reason = "asks whether the machine has the program")]
fn words_stand_apart_says_pdfinfo_where_it_is_installed() {
    let path = std::env::temp_dir().join(format!("octavo-tags-{}.pdf", std::process::id()));
    std::fs::write(&path, book()).unwrap();
    let read = std::process::Command::new("pdfinfo").arg("-struct-text").arg(&path).output();
    std::fs::remove_file(&path).unwrap();
    let read = match read {
        Ok(read) => read,
        Err(error) if error.kind() == std::io::ErrorKind::NotFound && std::env::var("CI").is_err() => return,
        Err(error) => panic!("pdfinfo: {error}"),
    };
    let text = String::from_utf8_lossy(&read.stdout).split_whitespace().collect::<Vec<_>>().join(" ");
    // Lines end in a space, so that their words do not run together.
    for wanted in
        ["48 finished cards", "Set the stop to 3 in", "damp paper grows. Make one card completely before you cut"]
    {
        assert!(text.contains(wanted), "`{wanted}` is not in what is read aloud");
    }
    for wanted in ["THead", "/Scope /Column", "LBody", "H2"] {
        assert!(text.contains(wanted), "{wanted}");
    }
}
