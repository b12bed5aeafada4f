//! A card drive in code: one sheet of each of six designs, 48 cards of 3 1/2 × 5 in.

use cards::model::{
    Anchor, Cardstock, Design, Edges, Envelope, Face, Fold, Goal, Grain, Greeting, Layer, Lies, Look, Material,
    Meeting, Pack, Placement, Placing, Price, Project, Range, Recipe, Ribbon, Side, Spot, StockSheet, Supplies, Trade,
    Trimmer, Way,
};
use measure::{Length, Mark, Size, Unit, parse_length, parse_size};

/// A length as a person writes it.
pub(crate) fn length(text: &str) -> Length {
    parse_length(text, Some(Unit::Inch)).expect("a length")
}

/// A size as a person writes it.
pub(crate) fn size(text: &str) -> Size {
    parse_size(text, Some(Unit::Inch)).expect("a size")
}

fn price(amount: &str) -> Option<Price> {
    let amount = amount.parse().expect("an amount");
    Some(Price { amount, currency: "GBP".into(), date: Some("2026-11-01".into()) })
}

fn face(name: &str, way: Way) -> Face {
    Face {
        name: name.into(),
        way,
        print_size: None,
        look: Look::Plain("#D9A441".into()),
        collage: None,
        regions: Vec::new(),
    }
}

fn range(text: &str, slack: &str) -> Range {
    Range { least: length(text) - length(slack), most: length(text) + length(slack) }
}

fn centred(on: Option<usize>) -> Placement {
    Placement { on, anchor: Anchor::Middle, right: Length::ZERO, down: Length::ZERO, overlap: false }
}

fn patterned(name: &str, width: &str, height: &str, placement: Placement, from_partner: bool) -> Layer {
    let material = Material::Patterned {
        width: range(width, "1/4"),
        height: range(height, "1/4"),
        prefer: Size::new(length(width), length(height)),
        free_size: false,
        may_turn: false,
        from_partner,
        die: None,
    };
    Layer { name: name.into(), material, placement, stamped: None }
}

/// The recipe: base, mat, panel, band, ribbon, strip.
fn twins() -> Recipe {
    let by_design = [("A", 1), ("B", 2), ("C", 3), ("D", 1), ("E", 2), ("F", 4)];
    let mat = Material::Mat {
        follows: 1,
        border: length("1/8"),
        cardstock: by_design.iter().map(|&(d, c)| (Some(d.to_owned()), c)).collect(),
    };
    let low =
        Placement { on: Some(1), anchor: Anchor::Bottom, right: Length::ZERO, down: -length("1/2"), overlap: false };
    let ribbon = Material::Ribbon { ribbon: 0, length: length("4"), bow: false };
    let strip =
        Material::Strip { size: size("3 x 3/4"), cardstock: 0, greeting: 0, spot: Spot::default(), foam_squares: 2 };
    Recipe {
        name: "Twins".into(),
        finished: size("3 1/2 x 5"),
        fold: Fold::Side,
        base: 0,
        inside: None,
        layers: vec![
            Layer { name: "mat".into(), material: mat, placement: centred(None), stamped: None },
            patterned("panel", "3", "4 1/2", centred(None), false),
            patterned("band", "3", "1 1/2", low, true),
            Layer {
                name: "ribbon".into(),
                material: ribbon,
                placement: Placement { overlap: true, anchor: Anchor::Bottom, ..centred(Some(2)) },
                stamped: None,
            },
            Layer { name: "strip".into(), material: strip, placement: centred(Some(2)), stamped: None },
        ],
        designs: Vec::new(),
        least: 0,
        most: None,
    }
}

/// The whole project.
pub(crate) fn project() -> Project {
    let design = |letter: &str, name: &str, front: Way, back: Way, up: Side| Design {
        letter: letter.into(),
        name: name.into(),
        copies: 4,
        use_sheets: Some(1),
        front: face("front", front),
        back: face("back", back),
        lies: Lies::LikeABook,
        up,
    };
    let stock = |name: &str, color: &str, pack_of: u32, amount: &str| Cardstock {
        name: name.into(),
        color: color.into(),
        grammage_gsm: Some(216),
        thickness_um: Some(280),
        sheets: vec![StockSheet {
            size: size("8 1/2 x 11"),
            count: None,
            grain: Grain::AlongHeight,
            price: price(amount),
            pack_of,
            unusable: Edges::default(),
        }],
    };
    Project {
        name: "A thank-you card drive for a village library".into(),
        maker: None,
        date: None,
        unit: Unit::Inch,
        mark: Mark::EighthInch,
        trimmer: Trimmer {
            longest_cut: length("12"),
            smallest_strip: length("1/2"),
            stack_paper: 2,
            stack_cardstock: 1,
        },
        placing: Placing::Alike,
        packs: vec![Pack {
            name: "Kettle & Quince".into(),
            sheet: size("12 x 12"),
            unusable: Edges::default(),
            grammage_gsm: Some(120),
            thickness_um: None,
            price: price("14.40"),
            designs: vec![
                design("A", "Quince Branch", Way::OneWay, Way::Any, Side::Front),
                design("B", "Kettle Stripe", Way::TwoWays, Way::TwoWays, Side::Front),
                design("C", "Tea Dot", Way::Any, Way::Any, Side::Front),
                design("D", "Recipe Cards", Way::OneWay, Way::TwoWays, Side::Back),
                design("E", "Hedge Check", Way::Any, Way::OneWay, Side::Front),
                design("F", "Dusk Leaf", Way::OneWay, Way::Any, Side::Front),
            ],
        }],
        backgrounds: Vec::new(),
        cardstocks: vec![
            stock("Milk", "#F6F0E2", 50, "11.00"),
            stock("Pot Blue", "#2F5D73", 12, "4.80"),
            stock("Brick", "#A8483A", 12, "4.80"),
            stock("Hedge", "#5E7B4C", 12, "4.80"),
            stock("Quince", "#D9A441", 12, "4.80"),
        ],
        ribbons: vec![Ribbon {
            name: "Brick ribbon".into(),
            color: "#A8483A".into(),
            width: length("1/4"),
            thickness_um: None,
            spool: Some(length("360")),
            price: price("3.20"),
        }],
        greetings: vec![Greeting {
            words: "with thanks".into(),
            inked: size("2 1/4 x 3/8"),
            ink: "#3B4148".into(),
            stamp: None,
            mark: None,
            balanced: false,
        }],
        supplies: Supplies::default(),
        envelope: Some(Envelope { name: "5-bar".into(), size: size("4 1/8 x 5 5/8") }),
        recipes: vec![twins()],
        goal: Goal {
            cards_per_sheet: Some(8),
            set_of: 1,
            partners: vec![("A".into(), "C".into()), ("B".into(), "F".into()), ("D".into(), "E".into())],
            alternatives: 4,
            ..Goal::default()
        },
        meeting: Meeting::default(),
        batches: Vec::new(),
        choices: Vec::new(),
        trade: Trade::default(),
    }
}
