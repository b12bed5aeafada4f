//! A stamped background: its picture repeats without a seam, the guide draws what it lists, blank places stay blank.
#![allow(clippy::unwrap_used, reason = "tests")]

use cards::background::{Arrangement, EdgeRule, Hand, Laid, Turning, lay, slips};
use cards::model::{Background, Motif, MotifShape};
use drawing::Picture;
use drawing::sheets::{Edition, Guide, Hand as Cuts, Paper, Print, background_pixels, light_box, placing_guide};
use measure::{Length, Mark, Size, Unit};
use words::Language;

fn stamp(name: &str, shape: &str, mm: i64) -> Motif {
    Motif {
        name: name.into(),
        shape: MotifShape::Drawn(shape.into()),
        size: Length::mm(mm),
        share: 1,
        turning: Turning::Free,
        ink: "#3b4148".into(),
        fill: None,
        per_inking: 2,
    }
}

fn background(edge: EdgeRule) -> Background {
    Background {
        name: "Fern".into(),
        sheet: Size::new(Length::mm(120), Length::mm(100)),
        paper: "#f6f0e2".into(),
        seed: 3,
        arrangement: Arrangement::Toss,
        gap: Length::mm(3),
        edge,
        count: None,
        density: None,
        motifs: vec![stamp("sprig", "sprig", 34), stamp("ring", "ring", 14), stamp("dot", "dot", 5)],
        locked: Vec::new(),
        stands: Vec::new(),
        markers: Vec::new(),
    }
}

/// Pixels to the inch: 5 to the millimetre, so that every step below is a whole number of them.
const PER_INCH: u32 = 127;

/// Of a thousand pixels, how many differ once one picture is rolled round by so many millimetres.
fn differing(one: &Picture, other: &Picture, (right, down): (usize, usize)) -> usize {
    let (width, height) = (one.width_px() as usize, one.height_px() as usize);
    let mut count = 0;
    for y in 0..height {
        for x in 0..width {
            let from = (y * width + x) * 3;
            let to = ((y + down * 5) % height * width + (x + right * 5) % width) * 3;
            let far = |channel: usize| one.rgb()[from + channel].abs_diff(other.rgb()[to + channel]);
            count += usize::from((0..3).any(|channel| far(channel) > 60));
        }
    }
    count * 1_000 / (width * height)
}

#[test]
fn a_sheet_that_repeats_has_no_seam() {
    // Rolled round by 37 and 41 mm, the picture is that of the same sheet with every impression so much further: the
    // left edge goes on at the right one, the top at the bottom. A sheet that does not repeat fails the same test.
    let drawn =
        |background: &Background, laid: &Laid| background_pixels(background, laid, laid.sheet, PER_INCH).unwrap();
    for (edge, seamless) in [(EdgeRule::Wrap, true), (EdgeRule::RunOff, false)] {
        let background = background(edge);
        let laid = lay(&background, Hand::Right).unwrap();
        let mut rolled = laid.clone();
        for one in &mut rolled.impressions {
            let round = |at: Length, by: i64, side: Length| {
                Length::from_ticks((at + Length::mm(by)).ticks().rem_euclid(side.ticks()))
            };
            one.placed.x = round(one.placed.x, 37, laid.sheet.width);
            one.placed.y = round(one.placed.y, 41, laid.sheet.height);
        }
        let off = differing(&drawn(&background, &laid), &drawn(&background, &rolled), (37, 41));
        assert_eq!(off < 2, seamless, "{edge:?}: {off} of 1000 pixels");
    }
}

#[test]
fn a_larger_sheet_shows_a_repeating_background_again() {
    let background = background(EdgeRule::Wrap);
    let laid = lay(&background, Hand::Right).unwrap();
    let one = background_pixels(&background, &laid, laid.sheet, PER_INCH).unwrap();
    let four = Size::new(laid.sheet.width * 2, laid.sheet.height * 2);
    let four = background_pixels(&background, &laid, four, PER_INCH).unwrap();
    let (width, height) = (one.width_px() as usize, one.height_px() as usize);
    assert_eq!((four.width_px() as usize, four.height_px() as usize), (width * 2, height * 2));
    for (x, y) in [(0, 0), (width, 0), (0, height), (width, height)] {
        let row = |line: usize| &four.rgb()[((y + line) * width * 2 + x) * 3..][..width * 3];
        let same = (0..height).filter(|line| row(*line) == &one.rgb()[line * width * 3..][..width * 3]).count();
        assert!(same * 50 >= height * 49, "{same} of {height} rows at {x}, {y}");
    }
}

#[test]
fn blank_places_in_a_stamp_stay_blank() {
    let mut background = background(EdgeRule::Inside);
    background.motifs = vec![stamp("ring", "ring", 40)];
    background.count = Some(1);
    let laid = lay(&background, Hand::Right).unwrap();
    let picture = background_pixels(&background, &laid, laid.sheet, PER_INCH).unwrap();
    let at = |x: Length, y: Length| {
        let pixel = |length: Length| usize::try_from(length.ticks() * 5 / Length::MM.ticks()).unwrap();
        let from = (pixel(y) * picture.width_px() as usize + pixel(x)) * 3;
        picture.rgb()[from..from + 3].to_vec()
    };
    let middle = laid.impressions[0].placed;
    assert_eq!(at(middle.x, middle.y), [0xf6, 0xf0, 0xe2]);
    assert_eq!(at(middle.x + Length::mm(16), middle.y), [0x3b, 0x41, 0x48]);
}

fn edition(paper: Paper, print: Print, hand: Cuts) -> Edition {
    Edition { paper, print, hand, unit: Unit::Millimetre, language: Language::English }
}

#[test]
fn impressions_drawn_are_impressions_listed() {
    let background = background(EdgeRule::RunOff);
    for (edition, hand) in [
        (edition(Paper::A4, Print::Normal, Cuts::Right), Hand::Right),
        (edition(Paper::Letter, Print::Large, Cuts::Left), Hand::Left),
    ] {
        let laid = lay(&background, hand).unwrap();
        let slips = slips(&background, &laid);
        assert_eq!(slips.len(), 2);
        let guide =
            Guide { background: &background, laid: &laid, mark: Mark::WholeMillimetre, colored: &[], slips: &slips };
        let scenes = placing_guide(&guide, &edition, Length::INCH);
        drawing::pdf::write(&scenes, &drawing::pdf::About { title: "Fern".into(), ..Default::default() }).unwrap();
        let (true_size, listed): (Vec<_>, Vec<_>) = scenes.iter().partition(|scene| scene.title.contains("true size"));
        let words = |scenes: &[&drawing::Scene]| -> Vec<String> {
            scenes.iter().flat_map(|scene| &scene.marks).flat_map(|mark| mark.words()).map(str::to_owned).collect()
        };
        let (drawn, listed) = (words(&true_size), words(&listed));
        for number in 1..=laid.impressions.len() {
            assert!(drawn.contains(&number.to_string()), "{number} is not drawn");
            assert!(listed.contains(&number.to_string()), "{number} is not listed");
        }
        assert!(listed.iter().any(|word| word.contains("rings")), "the worst sheet is drawn");
        assert!(listed.iter().any(|word| word.contains("open a window")), "what to take care of");
        let more = (laid.impressions.len() + 1..).take(50).filter(|number| drawn.contains(&number.to_string()));
        assert_eq!(more.count(), 0);
        let box_ = light_box(&guide, &edition);
        assert!(box_.size.width == laid.sheet.width + Length::INCH && box_.title.contains("Fern"));
    }
}
