//! The pages of a whole plan, seen from outside.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;

use std::sync::{Arc, LazyLock};

use cards::Plan;
use cards::model::Side;
use cards::plan::PartKind;
use cutting::Budget;
use drawing::sheets::{Faces, Paper, card_picture, handout, sheet_drawing};
use drawing::{Mark, Picture, png, svg};
use measure::{FractionStyle, Length, Rect, Size, UnitSign};

fn planned() -> Plan {
    static PLAN: LazyLock<Plan> = LazyLock::new(|| cards::plan::plan(&drive::project(), &mut Budget::nodes(200_000)));
    PLAN.clone()
}

/// A face whose colour says where one is: red grows to the right, green grows downwards.
fn chart() -> Picture {
    let side = 240_u32;
    let pixel = |at: u32| u8::try_from(at * 255 / (side - 1)).unwrap();
    let rgb: Vec<u8> = (0..side).flat_map(|y| (0..side).flat_map(move |x| [pixel(x), pixel(y), 128])).collect();
    Picture::new(side, side, Arc::from(rgb)).unwrap()
}

/// Half of the card's way from the middle of `rect` to its top, as a pixel of the drawn card, and as shares of it.
fn sample(drawn: &image::RgbImage, card: Size, rect: Rect) -> [u8; 3] {
    // The picture has a twelfth of its width round the card.
    let per = f64::from(drawn.width()) / (card.width.to_inches() * (1.0 + 2.0 / 12.0));
    let edge = card.width.to_inches() / 12.0;
    let x = (rect.x.to_inches() + rect.size.width.to_inches() / 2.0 + edge) * per;
    let y = (rect.y.to_inches() + rect.size.height.to_inches() * 0.25 + edge) * per;
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "inside the picture")]
    let pixel = drawn.get_pixel(x as u32, y as u32).0;
    pixel
}

#[test]
fn a_card_shows_the_part_of_the_print_its_piece_is_cut_from() {
    let mut plan = planned();
    // A plain card, its panel alone, so that nothing lies on what is sampled.
    let mut looked = 0;
    for turned in [false, true] {
        let layout = &mut plan.layouts[0];
        layout.pieces[2].turned = turned;
        let piece = layout.pieces[2].rect;
        let sheet = plan.project.packs[0].sheet;
        let mut card = plan.cards[0].clone();
        let size = if turned { piece.size.turned() } else { piece.size };
        let front = Rect::new(drive::length("1/4"), drive::length("1/4"), size);
        card.parts.truncate(1);
        card.parts[0].rect = front;
        card.parts[0].kind = PartKind::Patterned { layout: 0, piece: 2, design: 0, side: Side::Front, sheet: 1 };
        let faces = Faces::from([((0, 0, Side::Front), chart())]);
        let scene = card_picture(&plan, &faces, &card, drive::length("3 1/2"));
        let drawn = image::load_from_memory(&png::write(&scene, 100).unwrap()).unwrap().into_rgb8();
        let seen = sample(&drawn, plan.project.recipes[0].finished, front);
        // A quarter down from the piece's own top: from the sheet's top, or from the right if it lies turned.
        let share = |at: f64, of: Length| at / of.to_inches() * 255.0;
        let (w, h) = (piece.size.width.to_inches(), piece.size.height.to_inches());
        let (across, down) = if turned { (0.75, 0.5) } else { (0.5, 0.25) };
        let red = share(piece.x.to_inches() + w * across, sheet.width);
        let green = share(piece.y.to_inches() + h * down, sheet.height);
        // Two steps of the chart, and what JPEG takes.
        let near = |got: u8, wanted: f64| (f64::from(got) - wanted).abs() <= 4.0;
        assert!(near(seen[0], red) && near(seen[1], green), "{seen:?}, wanted {red:.0} {green:.0}, turned {turned}");
        looked += 1;
    }
    assert_eq!(looked, 2);
}

/// All words of a page, in the order in which they are drawn.
fn said(marks: &[Mark]) -> String {
    let words = marks.iter().map(|mark| match mark {
        Mark::Text { line, .. } => line.text.replace('\u{a0}', " "),
        Mark::Group { marks, .. } => said(marks),
        _ => String::new(),
    });
    words.filter(|text| !text.is_empty()).collect::<Vec<_>>().join(" ")
}

#[test]
fn what_is_unknown_or_wrong_is_said() {
    let mut project = drive::project();
    project.ribbons[0].price = None;
    project.envelope.as_mut().unwrap().size = drive::size("3 5/8 x 5 1/8");
    let plan = cards::plan::plan(&project, &mut Budget::nodes(200_000));
    let pages = handout(&plan, &Faces::new(), Paper::Letter);
    let all: String = pages.iter().map(|page| said(&page.marks) + " ").collect();
    assert!(all.contains("at least 12.72 GBP"), "six sheets 3.60, Milk 5.28, 48 mats at five a sheet 3.84");
    assert!(all.contains("unknown"));
    assert!(!plan.findings.is_empty());
    for finding in &plan.findings {
        assert!(words::known(&format!("finding-{}", finding.code)), "{}", finding.code);
    }
    assert!(all.contains("does not fit") || all.contains("to spare"), "the envelope is told");
    // A message or a fact without words would show its name in these brackets.
    assert!(!all.contains('⟨'), "{}", all.split('⟨').nth(1).unwrap());
    let without: String = handout(&planned(), &Faces::new(), Paper::A4).iter().map(|page| said(&page.marks)).collect();
    assert!(!without.contains("at least 1") && !without.contains('⟨'));
}

#[test]
fn cautions_stand_on_the_pages_of_their_steps() {
    let pages: Vec<String> =
        handout(&planned(), &Faces::new(), Paper::Letter).iter().map(|page| said(&page.marks)).collect();
    for (page, cautions) in [
        ("Mind your fingers", &["live blade", "fingertip", "narrow strip", "kick the blade", "craft knife"][..]),
        ("Stamping the greetings", &["open a window", "scorch"]),
        ("One act at a time", &["Hot glue burns", "near an infant"]),
        ("Check the printer", &["actual size"]),
        (
            "Take care",
            &["one card completely", "Measure a sheet", "in daylight", "local counter", "other people’s works"],
        ),
    ] {
        // What has no room on a page goes on with the next.
        let at = pages.iter().rposition(|text| text.contains(page)).unwrap_or_else(|| panic!("{page}"));
        let on = pages[at..pages.len().min(at + 2)].join(" ");
        let on = on.split_whitespace().collect::<Vec<_>>().join(" ");
        for caution in cautions {
            assert!(on.contains(caution), "{page}: {caution}");
        }
    }
}

#[test]
fn counts_on_the_pages_are_the_plans() {
    let plan = planned();
    let pages = handout(&plan, &Faces::new(), Paper::Letter);
    let first = said(&pages[0].marks);
    assert!(first.contains("48 finished cards") && first.contains("6 patterned sheets"), "{first}");
    for letter in ["A · Quince Branch", "B · Kettle Stripe", "C · Tea Dot", "D · Recipe Cards", "E · Hedge Check"]
    {
        assert!(first.contains(letter), "{letter}");
    }
    assert_eq!(first.matches("8 cards").count(), 6);
    let steps: String =
        pages.iter().map(|page| said(&page.marks)).filter(|text| text.contains("Set the stop")).collect();
    for cut in plan.layouts[0].cut_plan.cut_steps() {
        let length = measure::from_steps(cut.setting, plan.layouts[0].cut_step);
        let written = measure::write_as(length, plan.project.mark, FractionStyle::Typographic, UnitSign::Shown).text;
        assert!(
            steps.contains(&format!("stop to {written}")) || steps.contains(&format!("stop at {written}")),
            "{written}"
        );
    }
    let count = i64::try_from(pages.len()).unwrap();
    assert!(said(&pages[pages.len() - 1].marks).contains(&format!("Page {count} of {count}")));
}

#[test]
fn a_sheet_drawing_is_a_whole_svg_at_true_size() {
    let plan = planned();
    let faces = Faces::from([((0, 0, Side::Front), chart())]);
    let scene = sheet_drawing(&plan, &faces, 0, drive::size("6 x 6")).unwrap();
    let text = svg::write(&scene);
    assert!(text.contains("width=\"432pt\" height=\"432pt\""), "6 in are 432 points");
    for piece in &plan.layouts[0].pieces {
        assert!(text.contains(&format!(">{}</text>", piece.mark)), "piece {}", piece.mark);
    }
    assert!(text.contains("role=\"img\"") && text.matches("<image").count() == 1);
    // Named short, described at length, before anything is drawn.
    let head = text.split("<defs>").next().unwrap();
    assert!(head.contains("<title>Patterned sheets, layout 1</title><desc>Layout 1 on a sheet of"), "{head}");
    assert!(png::write(&scene, 60).is_ok());
    assert_eq!(text, svg::write(&sheet_drawing(&plan, &faces, 0, drive::size("6 x 6")).unwrap()));
}

#[test]
fn a_page_as_svg_says_what_is_what() {
    let pages = handout(&planned(), &Faces::new(), Paper::A4);
    let text: String = pages.iter().map(svg::write).collect();
    assert!(text.starts_with("<svg ") && text.contains("role=\"graphics-document document\""));
    for role in ["img", "paragraph", "list", "listitem", "table", "row", "columnheader", "cell"] {
        assert!(text.contains(&format!("<g role=\"{role}\"")), "{role}");
    }
    assert!(text.contains("<g role=\"heading\" aria-level=\"1\">") && text.contains("<g aria-hidden=\"true\">"));
    // Every image has its name as its first child.
    for after in text.split("<g role=\"img\">").skip(1) {
        let name = after.strip_prefix("<title>").unwrap().split("</title>").next().unwrap();
        assert!(!name.trim().is_empty());
    }
}

#[test]
fn odd_plans_are_drawn_too() {
    let plan = Plan { cards: Vec::new(), layouts: Vec::new(), stocks: Vec::new(), ..planned() };
    let pages = handout(&plan, &Faces::new(), Paper::A4);
    assert!(said(&pages[0].marks).contains("no cards yet"));
    let card = planned().cards[0].clone();
    assert!(png::write(&card_picture(&plan, &Faces::new(), &card, Length::INCH), 50).is_ok());
    assert_eq!(sheet_drawing(&plan, &Faces::new(), 0, Paper::A4.size()), None);
}

#[test]
fn the_assembly_names_every_border_and_does_one_act_at_a_time() {
    let text: String = handout(&planned(), &Faces::new(), Paper::Letter)
        .iter()
        .map(|page| said(&page.marks) + " ")
        .filter(|text| text.contains("Putting a card together") || text.contains("One act at a time"))
        .collect();
    // Worked by hand: strip 3 in, inked 2 1/4 in; mat 3 1/4 x 4 3/4 on 3 1/2 x 5; panel 3 x 4 1/2 on the mat.
    for wanted in [
        "⅜ in stays free at the left and at the right",
        "Glue the panel on the mat. ⅛ in of mat shows all round.",
        "Glue the mat on the base. ⅛ in of base shows all round.",
        "Put 2 foam squares under the strip",
    ] {
        assert!(text.contains(wanted), "`{wanted}` is not in {text}");
    }
    let order = ["Fold the base", "Glue the panel", "Lay the ribbon", "Glue the mat on the base", "foam squares"];
    let places: Vec<usize> = order.iter().map(|act| text.find(act).unwrap()).collect();
    assert!(places.is_sorted(), "ribbon ends are hidden before the mat goes on the base: {places:?}");
}
