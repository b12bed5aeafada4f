//! Kit labels lie where their sheet has them.
//!
//! Source: dimensions of label sheets add up to the page (from memory, checked by their sums); the PDF is measured with
//! lopdf, a library that shares no code with ours.
#![allow(clippy::unwrap_used, clippy::cast_precision_loss, reason = "tests")]

#[path = "common/matrix.rs"]
mod matrix;

use drawing::pdf;
use drawing::sheets::{KitLabel, LABEL_SHEETS, LabelSheet, kit_labels};
use matrix::product;
use measure::{Length, Unit};

fn label(number: usize) -> KitLabel {
    KitLabel {
        head: format!("Kit {number} of 31"),
        lines: vec![
            "A thank-you card drive for a village library".to_owned(),
            "Cards 97, 113, 129, 145, 161, 177".to_owned(),
        ],
        contents: (1..=14).map(|n| format!("{n} × a piece with a rather long name")).collect(),
        foot: "Not included: scissors, adhesive.".to_owned(),
    }
}

#[test]
fn margins_labels_and_gaps_add_up_to_the_page() {
    for sheet in &LABEL_SHEETS {
        let page = sheet.paper.size();
        let places = sheet.places();
        let last = places.last().unwrap();
        // What is left at the right and below is what is left at the left and above.
        assert_eq!(page.width - last.right(), sheet.first.x, "{}", sheet.name);
        assert_eq!(page.height - last.bottom(), sheet.first.y, "{}", sheet.name);
        for (at, one) in places.iter().enumerate() {
            assert!(places[at + 1..].iter().all(|other| !one.overlaps(*other)), "{}", sheet.name);
        }
    }
    let counts: Vec<usize> = LABEL_SHEETS.iter().map(|sheet| sheet.places().len()).collect();
    assert_eq!(counts, [8, 8, 30, 10, 14]);
}

#[test]
fn nothing_leaves_its_label() {
    for sheet in &LABEL_SHEETS {
        let labels: Vec<KitLabel> = (1..=31).map(label).collect();
        let scenes = kit_labels(&labels, sheet);
        let places = sheet.places();
        assert_eq!(scenes.len(), 31_usize.div_ceil(places.len()), "{}", sheet.name);
        for scene in &scenes {
            for mark in &scene.marks {
                let bounds = mark.bounds().unwrap();
                let room = Length::POINT;
                let inside = |place: &measure::Rect| {
                    bounds.x >= place.x - room
                        && bounds.y >= place.y - room
                        && bounds.right() <= place.right() + room
                        && bounds.bottom() <= place.bottom() + room
                };
                assert!(places.iter().any(inside), "{}: {bounds:?}", sheet.name);
            }
        }
        let words: Vec<&str> = scenes.iter().flat_map(|scene| &scene.marks).flat_map(|mark| mark.words()).collect();
        assert!(words.contains(&"Kit 31 of 31"), "{}: every kit has its label", sheet.name);
        // A list is whole, or says how much of it is left off: it is packed by.
        let first = places[0];
        let on_first = |mark: &&drawing::Mark| {
            mark.bounds().is_some_and(|at| {
                at.x < first.right() && at.y < first.bottom() && at.right() > first.x && at.bottom() > first.y
            })
        };
        let words: Vec<&str> = scenes[0].marks.iter().filter(on_first).flat_map(|mark| mark.words()).collect();
        let told = words.iter().filter(|word| word.contains(" × a ")).count();
        let rest = format!("… and {} more: see the list of contents.", 14 - told);
        assert!(told == 14 || told == 0 || words.contains(&rest.as_str()), "{}: {told} of 14, {words:?}", sheet.name);
    }
}

/// Rectangles drawn in the first page's content, in points from its bottom left, with the matrix over them.
fn frames(bytes: &[u8]) -> Vec<[f64; 4]> {
    let document = lopdf::Document::load_mem(bytes).unwrap();
    let page = document.page_iter().next().unwrap();
    let content = lopdf::content::Content::decode(&document.get_page_content(page)).unwrap();
    let number = |object: &lopdf::Object| f64::from(object.as_float().unwrap());
    let mut matrix = [1.0, 0.0, 0.0, 1.0, 0.0, 0.0];
    let mut kept = Vec::new();
    let (mut points, mut found): (Vec<(f64, f64)>, Vec<[f64; 4]>) = (Vec::new(), Vec::new());
    for operation in content.operations {
        let all: Vec<f64> = operation.operands.iter().filter(|one| one.as_float().is_ok()).map(number).collect();
        let at = |matrix: &[f64; 6], x: f64, y: f64| {
            (matrix[0] * x + matrix[2] * y + matrix[4], matrix[1] * x + matrix[3] * y + matrix[5])
        };
        match operation.operator.as_str() {
            "q" => kept.push(matrix),
            "Q" => matrix = kept.pop().unwrap(),
            "cm" => matrix = product(&all, matrix),
            "m" | "l" => points.push(at(&matrix, all[0], all[1])),
            "re" => points.extend([at(&matrix, all[0], all[1]), at(&matrix, all[0] + all[2], all[1] + all[3])]),
            "S" | "s" => {
                let xs = points.iter().map(|point| point.0);
                let ys = points.iter().map(|point| point.1);
                let least = |all: &mut dyn Iterator<Item = f64>| all.fold(f64::MAX, f64::min);
                let most = |all: &mut dyn Iterator<Item = f64>| all.fold(f64::MIN, f64::max);
                if points.len() >= 2 {
                    let (x, y) = (xs.clone(), ys.clone());
                    found.push([
                        least(&mut x.clone()),
                        least(&mut y.clone()),
                        most(&mut xs.clone()),
                        most(&mut ys.clone()),
                    ]);
                }
                points.clear();
            }
            "f" | "f*" | "n" | "B" => points.clear(),
            _ => {}
        }
    }
    found
}

#[test]
fn frames_measure_what_they_should_in_the_pdf() {
    for (unit, width, height) in
        [(Unit::Inch, 3.75 * 72.0, 2.5 * 72.0), (Unit::Millimetre, 95.0 / 25.4 * 72.0, 65.0 / 25.4 * 72.0)]
    {
        let sheet = LabelSheet::named("plain", unit);
        let scenes = kit_labels(&(1..=8).map(label).collect::<Vec<_>>(), sheet);
        let about = pdf::About { title: "Labels".to_owned(), streams: pdf::Streams::Readable, ..pdf::About::default() };
        let bytes = pdf::write(&scenes, &about).unwrap();
        let large: Vec<[f64; 4]> = frames(&bytes).into_iter().filter(|frame| frame[2] - frame[0] > 100.0).collect();
        assert_eq!(large.len(), 8);
        for (frame, place) in large.iter().zip(sheet.places()) {
            let close = |found: f64, wanted: f64| assert!((found - wanted).abs() < 0.01, "{found} is not {wanted}");
            close(frame[2] - frame[0], width);
            close(frame[3] - frame[1], height);
            close(frame[0], place.x.to_points());
            close(sheet.paper.size().height.to_points() - frame[3], place.y.to_points());
        }
    }
}
