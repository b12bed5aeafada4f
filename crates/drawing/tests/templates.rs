//! Source: the international inch of 1959 and ISO 32000-1 (1/72 in a point): a test square of 1 in is 72 points of the
//! page's operators, one of 25 mm is 25 / 25.4 of that. Tolerance: PDF numbers are single precision. Cut files are
//! checked by flooding the sheet between their lines, which shares no code with the steps they come from.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;

use std::collections::BTreeSet;
use std::sync::LazyLock;

use cards::Plan;
use cutting::Budget;
use drawing::pdf::{About, Streams};
use drawing::scene::{Outline, Role};
use drawing::sheets::{Edition, Paper, cut_files, templates};
use drawing::{Mark, Scene, pdf};
use measure::{Length, Rect, Unit};

static PLAN: LazyLock<Plan> = LazyLock::new(|| cards::plan::plan(&drive::project(), &mut Budget::nodes(200_000)));
static CROWDED: LazyLock<Plan> = LazyLock::new(|| cards::plan::plan(&drive::crowded(), &mut Budget::nodes(200_000)));

fn pages(plan: &Plan, paper: Paper, square: Length) -> Vec<Scene> {
    templates(plan, &Edition::plain(plan, paper), square)
}

/// Lengths of all straight level lines of a page, in points, from its drawing operators.
fn level_lines(page: &Scene) -> Vec<f64> {
    let about = About { title: "test".into(), streams: Streams::Readable, ..About::default() };
    let bytes = pdf::write(std::slice::from_ref(page), &about).unwrap();
    let text = String::from_utf8_lossy(&bytes).into_owned();
    let words: Vec<&str> = text.split_ascii_whitespace().collect();
    // Fonts are in the file too; what is no number there is no line.
    let number = |at: usize| words[at].parse::<f64>().unwrap_or(f64::NAN);
    let (mut found, mut from) = (Vec::new(), None);
    for (at, word) in words.iter().enumerate() {
        match *word {
            "m" if at >= 2 => from = Some((number(at - 2), number(at - 1))),
            "l" if at >= 2 => {
                let to = (number(at - 2), number(at - 1));
                if let Some((x, y)) = from
                    && f64::abs(y - to.1) < 1e-6
                {
                    found.push(f64::abs(to.0 - x));
                }
                from = Some(to);
            }
            _ => {}
        }
    }
    found
}

#[test]
fn every_page_has_both_squares_at_their_size_or_corrected() {
    for (square, scale) in [(Length::INCH, 1.0), (Unit::Inch.thousandths(980), 1.0 / 0.98)] {
        for paper in [Paper::Letter, Paper::A4] {
            let pages = pages(&PLAN, paper, square);
            assert!(pages.len() >= 6, "jig, places, gauge, and a sheet in parts");
            for page in &pages {
                let lines = level_lines(page);
                for wanted in [72.0 * scale, 72.0 * 25.0 / 25.4 * scale] {
                    let hit = lines.iter().any(|line| (line - wanted).abs() < 1.0e-4);
                    assert!(hit, "{}: no line of {wanted} points", page.title);
                }
            }
        }
    }
}

#[test]
fn the_jig_and_the_gauge_have_the_plans_sizes() {
    let pages = pages(&PLAN, Paper::Letter, Length::INCH);
    let lines = |title: &str| level_lines(pages.iter().find(|page| page.title.contains(title)).unwrap());
    let has = |lines: &[f64], inches: f64| lines.iter().any(|line| (line - inches * 72.0).abs() < 1.0e-3);
    let jig = lines("jig");
    assert!(has(&jig, 3.0) && has(&jig, 2.25), "strip 3 in, inked 2 1/4 in: {jig:?}");
    assert!(has(&lines("gauge"), 7.0), "the base is 7 in before it is folded");
    let places = lines("layers go");
    assert!(has(&places, 3.5) && has(&places, 3.25) && has(&places, 3.0), "front, mat, panel");
}

/// The part of a page that shows the drawing, and the sheet's own frame there.
fn part(page: &Scene) -> (Rect, Rect) {
    let figure = page.marks.iter().find_map(|mark| match mark {
        Mark::Group { role: Some(Role::Figure(_)), clip: Some(clip), marks, .. } => Some((*clip, marks)),
        _ => None,
    });
    let (shown, marks) = figure.unwrap();
    let Some(Mark::Shape { outline: Outline::Rect(frame), .. }) = marks.first() else { panic!("no frame") };
    (shown, *frame)
}

#[test]
fn a_large_sheet_is_printed_whole_in_parts_that_overlap() {
    for paper in [Paper::Letter, Paper::A4] {
        for square in [Length::INCH, Unit::Inch.thousandths(980)] {
            let pages = pages(&PLAN, paper, square);
            let full: Vec<&Scene> = pages.iter().filter(|page| page.title.contains("full size")).collect();
            assert_eq!(full.len(), 4, "12 × 12 in on {paper:?}");
            let mut covered: Vec<Rect> = Vec::new();
            for page in &full {
                let (shown, frame) = part(page);
                assert!((frame.size.width.to_inches() - 12.0 / square.to_inches()).abs() < 1e-6);
                // Where on the sheet this part lies.
                covered.push(Rect::new(shown.x - frame.x, shown.y - frame.y, shown.size));
                // Printers need a margin all round.
                assert!(shown.x.to_inches() > 0.4 && (page.size.width - shown.right()).to_inches() > 0.4);
            }
            let whole = part(full[0]).1.size;
            // Every sixteenth of an inch of the sheet is on some part, and neighbours share a strip.
            let mut twice = 0;
            for index in 0..192 * 192 {
                let at = |n: i64| Length::from_ticks(whole.width.ticks() / 384 * (2 * n + 1));
                let (x, y) = (at(index % 192), at(index / 192));
                let on = covered.iter().filter(|r| r.x <= x && x <= r.right() && r.y <= y && y <= r.bottom()).count();
                assert!(on > 0, "{} × {} in is on no part", x.to_inches(), y.to_inches());
                twice += usize::from(on > 1);
            }
            assert!(twice > 192 * 8, "{twice}");
        }
    }
}

/// The lines of one group of a cut file, in sixteenths of an inch.
fn lines(svg: &str, group: &str) -> Vec<[i64; 4]> {
    let inside = svg.split(&format!("<g id=\"{group}\"")).nth(1).unwrap().split("</g>").next().unwrap();
    let number = |line: &str, name: &str| {
        let text = line.split(&format!(" {name}=\"")).nth(1).unwrap().split('"').next().unwrap();
        let sixteenths = text.parse::<f64>().unwrap() * 16.0;
        assert!((sixteenths - sixteenths.round()).abs() < 1e-6, "{text}");
        #[allow(clippy::cast_possible_truncation, reason = "a sheet is a few hundred sixteenths")]
        let whole = sixteenths.round() as i64;
        whole
    };
    inside
        .lines()
        .filter(|line| line.starts_with("<line"))
        .map(|line| ["x1", "y1", "x2", "y2"].map(|name| number(line, name)))
        .collect()
}

/// The rectangles that the lines leave of a sheet, found by flooding.
fn rooms(width: i64, height: i64, lines: &[[i64; 4]]) -> BTreeSet<[i64; 4]> {
    let mut walls: BTreeSet<(i64, i64, bool)> = BTreeSet::new();
    for &[x1, y1, x2, y2] in lines {
        if x1 == x2 {
            walls.extend((y1.min(y2)..y1.max(y2)).map(|y| (x1, y, true)));
        } else {
            walls.extend((x1.min(x2)..x1.max(x2)).map(|x| (x, y1, false)));
        }
    }
    let mut seen: BTreeSet<(i64, i64)> = BTreeSet::new();
    let mut rooms = BTreeSet::new();
    for start in (0..width * height).map(|index| (index % width, index / width)) {
        if seen.contains(&start) {
            continue;
        }
        let (mut stack, mut cells) = (vec![start], Vec::new());
        seen.insert(start);
        while let Some((x, y)) = stack.pop() {
            cells.push((x, y));
            let ways = [
                (x + 1, y, (x + 1, y, true)),
                (x - 1, y, (x, y, true)),
                (x, y + 1, (x, y + 1, false)),
                (x, y - 1, (x, y, false)),
            ];
            for (nx, ny, wall) in ways {
                let inside = nx >= 0 && ny >= 0 && nx < width && ny < height;
                if inside && !walls.contains(&wall) && seen.insert((nx, ny)) {
                    stack.push((nx, ny));
                }
            }
        }
        let left = cells.iter().map(|cell| cell.0).min().unwrap();
        let top = cells.iter().map(|cell| cell.1).min().unwrap();
        let right = cells.iter().map(|cell| cell.0).max().unwrap() + 1;
        let bottom = cells.iter().map(|cell| cell.1).max().unwrap() + 1;
        let area = (right - left) * (bottom - top);
        assert_eq!(i64::try_from(cells.len()).unwrap(), area, "what the lines leave is no rectangle");
        rooms.insert([left, top, right, bottom]);
    }
    rooms
}

fn sixteenths(rect: Rect) -> [i64; 4] {
    let of = |length: Length| length.ticks() / (Length::INCH.ticks() / 16);
    [of(rect.x), of(rect.y), of(rect.right()), of(rect.bottom())]
}

#[test]
fn cut_files_leave_exactly_the_pieces() {
    for plan in [&*PLAN, &*CROWDED] {
        let files = cut_files(plan);
        let stocks: usize = plan.stocks.iter().map(|stock| stock.sheets.len()).sum();
        assert_eq!(files.len(), plan.layouts.len() + stocks);
        let papers = plan.layouts.iter().map(|layout| {
            let sheet = plan.project.packs[layout.pack].sheet;
            (sheet, layout.pieces.iter().map(|piece| piece.rect).collect::<Vec<_>>())
        });
        let cards = plan.stocks.iter().flat_map(|stock| {
            stock.sheets.iter().map(|sheet| {
                let size = plan.project.cardstocks[stock.cardstock].sheets[sheet.size].size;
                (size, sheet.pieces.iter().map(|piece| piece.rect).collect::<Vec<_>>())
            })
        });
        for (file, (sheet, pieces)) in files.iter().zip(papers.chain(cards)) {
            let whole = sixteenths(Rect::new(Length::ZERO, Length::ZERO, sheet));
            let rooms = rooms(whole[2], whole[3], &lines(&file.svg, "cut"));
            for piece in pieces {
                assert!(rooms.contains(&sixteenths(piece)), "{}: {piece:?} is not among {rooms:?}", file.name);
            }
        }
    }
    // Folded bases are scored: dashed, in a group of their own.
    let files = cut_files(&PLAN);
    let scored = files.iter().filter(|file| !lines(&file.svg, "score").is_empty()).count();
    assert!(
        scored >= 1
            && files.iter().all(|file| file.svg.contains("<g id=\"score\" stroke=\"#c00000\" stroke-dasharray"))
    );
    assert!(files[0].svg.contains("width=\"12in\" height=\"12in\" viewBox=\"0 0 12 12\""));
}
