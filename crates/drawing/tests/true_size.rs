//! Source: `data/page_points.csv` (ISO 32000-1, 1/72 in a point). What is printed has the size it says: from the
//! operators of the PDF and from pixels.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;

use std::sync::LazyLock;

use cards::Plan;
use cutting::Budget;
use drawing::pdf::{About, Streams};
use drawing::sheets::{Faces, Paper, handout};
use drawing::{Scene, pdf, png};

const PAPERS: [(Paper, &str); 2] = [(Paper::Letter, "Letter"), (Paper::A4, "A4")];

fn planned() -> &'static Plan {
    static PLAN: LazyLock<Plan> = LazyLock::new(|| cards::plan::plan(&drive::project(), &mut Budget::nodes(200_000)));
    &PLAN
}

fn readable(scenes: &[Scene]) -> Vec<u8> {
    pdf::write(scenes, &About { streams: Streams::Readable, title: "Test".to_owned(), ..About::default() }).unwrap()
}

/// Numbers and operators of all content streams, in order.
fn words(bytes: &[u8]) -> Vec<String> {
    String::from_utf8_lossy(bytes).split_ascii_whitespace().map(str::to_owned).collect()
}

/// Lengths of all straight level lines that are drawn, in points; checks that nothing scales the page.
fn level_lines(words: &[String]) -> Vec<f64> {
    let number = |at: usize| words[at].parse::<f64>().unwrap();
    let mut found = Vec::new();
    let mut from = None;
    for (at, word) in words.iter().enumerate() {
        match word.as_str() {
            "m" => from = Some((number(at - 2), number(at - 1))),
            "l" => {
                let to = (number(at - 2), number(at - 1));
                if let Some((x, y)) = from.filter(|from| (from.1 - to.1).abs() < 1e-6) {
                    assert!((y - to.1).abs() < 1e-6);
                    found.push((to.0 - x).abs());
                }
                from = Some(to);
            }
            _ => {}
        }
    }
    found
}

#[test]
fn a_four_inch_line_is_288_points_and_a_test_square_72() {
    let plan = planned();
    for (paper, name) in PAPERS {
        let scenes = handout(plan, &Faces::new(), paper);
        let page: Vec<Scene> = scenes.into_iter().filter(|page| has(page, "4 in")).collect();
        assert_eq!(page.len(), 1, "{name}: one page has the rule");
        let words = words(&readable(&page));
        for (at, _) in words.iter().enumerate().filter(|(_, word)| *word == "cm") {
            // Only moves, mirrors and quarter turns: whatever is drawn keeps its size.
            let scale: Vec<f64> = words[at - 6..at - 2].iter().map(|number| number.parse().unwrap()).collect();
            let image = words[at + 1].starts_with("/x") || words[at + 1].starts_with("/X");
            assert!(image || ((scale[0] * scale[3] - scale[1] * scale[2]).abs() - 1.0).abs() < 1e-6, "{scale:?}");
        }
        let lines = level_lines(&words);
        for (what, wanted) in [("4 in rule", 288.0), ("100 mm rule", 283.464_567), ("1 in test square", 72.0)] {
            let column: f64 = row(what)[1].parse().unwrap();
            assert!((column - wanted).abs() < 1e-9, "the table says the same");
            // A millionth of an inch is 0.000 072 pt; single precision keeps about 0.000 03 pt at 600.
            let hits = lines.iter().filter(|line| (**line - wanted).abs() < 1.0e-4).count();
            assert!(hits >= 1, "{name}: no {what} among the lines");
        }
    }
}

fn has(scene: &Scene, words: &str) -> bool {
    format!("{:?}", scene.marks).contains(&format!("\"{words}\""))
}

fn row(what: &str) -> Vec<String> {
    let table = include_str!("data/page_points.csv");
    let row = table.lines().find(|line| line.split(',').next() == Some(what)).unwrap();
    row.split(',').map(str::to_owned).collect()
}

#[test]
fn pages_have_the_boxes_of_their_paper() {
    let plan = planned();
    for (paper, name) in PAPERS {
        let scenes = handout(plan, &Faces::new(), paper);
        let text = String::from_utf8_lossy(&readable(&scenes)).into_owned();
        let row = row(name);
        let boxes: Vec<Vec<f64>> = text
            .split("/MediaBox")
            .skip(1)
            .map(|rest| {
                let inside = rest.split_once('[').unwrap().1.split_once(']').unwrap().0;
                inside.split_ascii_whitespace().map(|number| number.parse().unwrap()).collect()
            })
            .collect();
        assert_eq!(boxes.len(), scenes.len(), "{name}");
        for found in boxes {
            let wanted = [0.0, 0.0, row[1].parse::<f64>().unwrap(), row[2].parse::<f64>().unwrap()];
            for (got, wanted) in found.iter().zip(wanted) {
                // Written in single precision.
                assert!((got - wanted).abs() < 1.0e-4, "{name}: {found:?}");
            }
        }
    }
}

#[test]
fn a_four_inch_line_is_800_pixels_at_200_an_inch() {
    let scenes = handout(planned(), &Faces::new(), Paper::Letter);
    let page = scenes.iter().find(|page| has(page, "4 in")).unwrap();
    let picture = image::load_from_memory(&png::write(page, 200).unwrap()).unwrap().into_luma8();
    assert_eq!(picture.dimensions(), (1700, 2200));
    let mut runs = Vec::new();
    for y in 0..picture.height() {
        let mut run = 0_u32;
        for x in 0..picture.width() {
            if picture.get_pixel(x, y).0[0] < 128 {
                run += 1;
            } else {
                runs.push(run);
                run = 0;
            }
        }
    }
    // The end ticks are half a point wide: half of that, 0.7 px, lies outside at each end.
    assert!(runs.iter().any(|run| (800..=802).contains(run)), "{:?}", runs.iter().max());
    assert!(!runs.iter().any(|run| (790..800).contains(run)) && !runs.iter().any(|run| (803..810).contains(run)));
}

#[test]
fn the_same_plan_gives_the_same_bytes() {
    let plan = planned();
    let write = || {
        let scenes = handout(plan, &Faces::new(), Paper::A4);
        pdf::write(&scenes, &About { date: Some((2026, 11, 1)), title: "Test".to_owned(), ..About::default() }).unwrap()
    };
    assert!(write() == write());
}

#[test]
fn every_font_says_which_letters_its_glyphs_are() {
    let bytes = readable(&handout(planned(), &Faces::new(), Paper::Letter));
    let text = String::from_utf8_lossy(&bytes);
    let fonts = text.matches("/Type0").count();
    assert!(fonts >= 3 && text.matches("/ToUnicode").count() >= fonts, "{fonts} fonts");
    assert!(text.contains("/StructTreeRoot") && text.contains("/Lang"));
}

/// Words that must be found in the handout when another program reads it.
const WORDS: [&str; 5] =
    ["A thank-you card drive for a village library", "A · Quince Branch", "Set the stop to 3 in", "4½", "Page 1 of"];

/// Reads the words back with a PDF library of others; runs everywhere.
#[test]
fn words_can_be_selected_says_lopdf() {
    let bytes = pdf::write(
        &handout(planned(), &Faces::new(), Paper::Letter),
        &About { title: "Test".to_owned(), ..About::default() },
    )
    .unwrap();
    let read = lopdf::Document::load_mem(&bytes).unwrap();
    let pages: Vec<u32> = read.get_pages().into_keys().collect();
    let text = read.extract_text(&pages).unwrap();
    let squeezed = |text: &str| text.split_whitespace().collect::<String>();
    for wanted in WORDS {
        assert!(squeezed(&text).contains(&squeezed(wanted)), "`{wanted}` is not in the text");
    }
    // Every page carries the project's name at its foot.
    let name = squeezed("A thank-you card drive for a village library");
    for page in pages {
        assert!(squeezed(&read.extract_text(&[page]).unwrap()).contains(&name), "page {page}");
    }
}

/// Where the program of another PDF library is there, it must find the same words.
#[test]
#[allow(clippy::disallowed_methods, reason = "asks whether the machine has the program")]
fn words_can_be_selected_says_pdftotext_where_it_is_installed() {
    let bytes = pdf::write(
        &handout(planned(), &Faces::new(), Paper::Letter),
        &About { title: "Test".to_owned(), ..About::default() },
    )
    .unwrap();
    let path = std::env::temp_dir().join(format!("octavo-words-{}.pdf", std::process::id()));
    std::fs::write(&path, bytes).unwrap();
    let read = std::process::Command::new("pdftotext").arg("-layout").arg(&path).arg("-").output();
    std::fs::remove_file(&path).unwrap();
    let read = match read {
        Ok(read) => read,
        // The checking machine installs it. Elsewhere the test above has read the same words.
        Err(error) if error.kind() == std::io::ErrorKind::NotFound && std::env::var("CI").is_err() => return,
        Err(error) => panic!("pdftotext: {error}"),
    };
    assert!(read.status.success(), "{}", String::from_utf8_lossy(&read.stderr));
    let text = String::from_utf8(read.stdout).unwrap();
    for wanted in WORDS {
        assert!(text.contains(wanted), "`{wanted}` is not in the text");
    }
}
