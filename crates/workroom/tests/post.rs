//! The demo by post, and envelopes that do not do.
//!
//! Source: sums worked by hand beforehand, layer by layer (common practice); limits as in `cards/tests/data`.
#![allow(clippy::unwrap_used, reason = "tests")]

use cards::Project;
use cards::mailing::{Mailing, Of, Why, mailings};
use cards::plan::{Budget, plan};
use measure::{Length, parse_size};

const DEMO: &str = include_str!("../../../examples/kettle-and-quince-whole-pack.toml");

fn mailed(project: &Project) -> Vec<Mailing> {
    mailings(&plan(project, &mut Budget::nodes(50_000_000)))
}

fn um(length: Length) -> i64 {
    length.ticks() / (Length::MM.ticks() / 1_000)
}

#[test]
fn the_posted_card_weighs_13_grams_and_is_a_flat_letter_nearly_everywhere() {
    let project = store::project_file::read(DEMO).unwrap();
    let all = mailed(&project);
    let [posted, bow, recipe] = all.as_slice() else { panic!("three kinds of cards, not {}", all.len()) };
    assert_eq!((posted.cards, bow.cards, recipe.cards), (96, 80, 16));
    assert_eq!(posted.letter.weight.unwrap().in_grams(), "13.0");
    // 2 × 0.28, 0.28, 0.15, 0.15, 0.28, ribbon 0.30, envelope 2 × 0.11: 1.94 mm, were there no foam and all in one place.
    let foam: u32 =
        posted.body.layers.iter().filter(|layer| matches!(layer.of, Of::Foam(_))).map(|layer| layer.um).sum();
    assert_eq!(foam, 1_000);
    assert_eq!(um(posted.stacked()), 1_940 + 1_000);
    // The ribbon lies below the strip, not under it: 0.30 less where the card is thickest.
    assert_eq!(um(posted.thickness()), 1_640 + 1_000);
    let mut flat = project.clone();
    for layer in flat.recipes.iter_mut().flat_map(|recipe| &mut recipe.layers) {
        if let cards::model::Material::Strip { foam_squares, .. } = &mut layer.material {
            *foam_squares = 0;
        }
    }
    assert_eq!(um(mailed(&flat)[0].stacked()), 1_940);
    let class = |mailing: &Mailing, operator: &str| {
        let verdict = mailing.verdicts.iter().find(|verdict| verdict.operator == operator).unwrap();
        verdict.class.map(|class| class.class)
    };
    assert_eq!(class(posted, "USPS"), Some("letter machinable"));
    assert_eq!(class(posted, "Royal Mail"), Some("Letter"));
    assert_eq!(class(posted, "Canada Post"), Some("Standard Lettermail"));
    assert_eq!(class(posted, "Australia Post"), Some("small letter"));
    // 5 5/8 ÷ 4 1/8 is 1.36: too square where 1.4 is asked.
    assert_eq!(class(posted, "Deutsche Post"), Some("Grossbrief"));
    let german = posted.verdicts.iter().find(|verdict| verdict.operator == "Deutsche Post").unwrap();
    assert!(german.not[0].1.contains(&Why::TooSquare(1_400)));
    // With a bow: uneven, and over 5 mm.
    assert!(bow.body.bow && um(bow.thickness()) > 5_000);
    assert_eq!(class(bow, "USPS"), None, "an uneven letter over 1/4 in is a parcel");
    assert_eq!(class(bow, "Royal Mail"), Some("Large Letter"));
    let usps = bow.verdicts.iter().find(|verdict| verdict.operator == "USPS").unwrap();
    assert!(usps.not[0].1.contains(&Why::Uneven));
}

#[test]
fn an_envelope_that_is_too_small_names_the_next_and_the_blank_to_make_one() {
    let mut project = store::project_file::read(DEMO).unwrap();
    let fits = mailed(&project)[0].fit.clone();
    assert!(fits.fits, "4 1/8 x 5 5/8 leaves 5/8 each way");
    let own = project.envelope.as_mut().unwrap();
    own.size = parse_size("3 5/8 x 5 1/8 in", None).unwrap();
    let all = mailed(&project);
    let fit = &all[0].fit;
    assert_eq!(fit.left, Some(parse_size("1/8 x 1/8 in", None).unwrap()));
    assert!(!fit.fits && fit.wanted > Length::from_ticks(Length::INCH.ticks() / 8));
    assert_eq!(fit.others[0].name, "5-bar");
    assert_eq!(fit.face(), fit.others[0].size);
    // The one to make: at least a quarter inch and twice the thickness more than the card, on eighths of an inch.
    let card = parse_size("5 x 3 1/2 in", None).unwrap();
    for (made, card) in [(fit.blank.face.width, card.width), (fit.blank.face.height, card.height)] {
        let room = made - card;
        assert!(
            room >= Length::from_ticks(Length::INCH.ticks() / 4) + Length::mm(5)
                && room < Length::from_ticks(Length::INCH.ticks() / 4) + Length::mm(9),
            "{room}"
        );
        assert_eq!(made.ticks() % (Length::INCH.ticks() / 8), 0);
    }
}

#[test]
fn the_makers_own_rate_goes_by_class_and_weight() {
    let text = DEMO.replace(
        "extras = \"0.9 g\"",
        "extras = \"0.9 g\"\nrate = [\n  { operator = \"royal mail\", class = \"Letter\", up_to = \"10 g\", price = \"0.50\" },\n  \
         { operator = \"Royal Mail\", class = \"Letter\", up_to = \"100 g\", price = { amount = \"1.70\", date = \"2026-04-07\" } },\n  \
         { operator = \"Royal Mail\", class = \"Letter\", price = \"9.99\" },\n]",
    );
    let project = store::project_file::read(&text).unwrap();
    let all = mailed(&project);
    let rate_of = |mailing: &Mailing, operator: &str| {
        let at = mailing.verdicts.iter().position(|verdict| verdict.operator == operator).unwrap();
        mailing.rates[at].map(|index| project.trade.post.rates[index].price.amount.to_string())
    };
    assert_eq!(rate_of(&all[0], "Royal Mail").as_deref(), Some("1.70"), "13 g: over 10 g, within 100 g");
    assert_eq!(rate_of(&all[0], "USPS"), None, "no price is built in");
    assert_eq!(rate_of(&all[1], "Royal Mail"), None, "with a bow it is a large letter, which has no rate here");
}
