//! What lies beyond the cards themselves: post, other packs on sale, selling, working time, a class.

use measure::Length;
use rust_decimal::Decimal;

use super::Price;
use crate::days::Time;
use crate::weight::Weight;

/// Everything of it; a maker who says nothing has the usual values.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Trade {
    /// How the cards are mailed.
    pub post: Post,
    /// Other packs on sale of what the project uses.
    pub offers: Vec<Offer>,
    /// What is asked for a card.
    pub selling: Selling,
    /// How long each piece of work takes.
    pub minutes: Minutes,
    /// A class, if one is held.
    pub class: Option<Class>,
}

/// How the cards are mailed.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Post {
    /// Paper of the envelope in g/m²; 90 if `None` (24 lb bond, common practice).
    pub envelope_gsm: Option<u32>,
    /// True if the address runs along the short edge.
    pub addressed_upright: bool,
    /// True if something in the card does not bend: chipboard, wood, a tin button.
    pub stiff: bool,
    /// Tape, ribbon, foam and glue of one card together; a gram if `None` (1 to 2 g, from memory).
    pub extras: Option<Weight>,
    /// Thickness of a foam square in micrometres; 1000 if `None`.
    pub foam_um: Option<u32>,
    /// Thickness of a tied bow in micrometres; 5000 if `None` (3 to 8 mm, from memory).
    pub bow_um: Option<u32>,
    /// The maker's own postage, as she wrote it down.
    pub rates: Vec<Rate>,
}

/// A line of the maker's own price list of an operator.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rate {
    /// The operator, as the table of limits or the maker names it.
    pub operator: String,
    /// The class, as the table of limits or the maker names it.
    pub class: String,
    /// The heaviest letter it is for; `None`: as heavy as the class allows.
    pub up_to: Option<Weight>,
    /// What it costs, with the date on which the maker saw it.
    pub price: Price,
}

/// Another pack on sale of something that the project uses.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Offer {
    /// The name of the cardstock, ribbon or supply.
    pub of: String,
    /// Sheets or pieces in it; `None` where it is sold by length.
    pub pack_of: Option<u32>,
    /// Length on it; `None` where it is sold by the piece.
    pub length: Option<Length>,
    /// Its price.
    pub price: Option<Price>,
}

/// What is asked for a card, and what of it does not stay.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Selling {
    /// What is asked for one card.
    pub price: Option<Price>,
    /// Percent of the price that goes to a market, a shop or a card reader.
    pub fees: Decimal,
    /// Percent of the price that goes to the tax office.
    pub tax: Decimal,
    /// Percent of the price that should be left over after everything else.
    pub margin: Decimal,
    /// What an hour of the maker's work should bring.
    pub hour: Option<Price>,
}

/// Minutes for each piece of work, one practised person.
///
/// # Source
/// From memory, as a starting point: the maker's own timings replace them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Minutes {
    /// Cutting one piece of patterned paper out of an unstacked sheet; sheets in pairs take half of it.
    pub piece: Decimal,
    /// A base cut, scored and folded.
    pub base: Decimal,
    /// A mat, or another piece of cardstock.
    pub mat: Decimal,
    /// A greeting strip stamped with a jig.
    pub strip: Decimal,
    /// Ribbon wrapped round.
    pub ribbon: Decimal,
    /// A bow tied.
    pub bow: Decimal,
    /// A card assembled.
    pub card: Decimal,
    /// A card with a bow assembled.
    pub layered: Decimal,
    /// A kit's label.
    pub label: Decimal,
    /// A kit filled.
    pub kit: Decimal,
}

impl Default for Minutes {
    fn default() -> Minutes {
        let hundredths = |hundredths: i64| Decimal::new(hundredths, 2);
        Minutes {
            // A 12 × 12 in sheet into 16 pieces in 4 minutes.
            piece: hundredths(25),
            base: hundredths(60),
            mat: hundredths(25),
            strip: hundredths(50),
            ribbon: hundredths(75),
            bow: hundredths(150),
            card: hundredths(300),
            layered: hundredths(500),
            label: hundredths(50),
            kit: hundredths(200),
        }
    }
}

impl Minutes {
    /// Every value by the key it has in a project file, in the order of the work.
    pub fn by_key(&self) -> [(&'static str, Decimal); 10] {
        [
            ("piece", self.piece),
            ("base", self.base),
            ("mat", self.mat),
            ("strip", self.strip),
            ("ribbon", self.ribbon),
            ("bow", self.bow),
            ("card", self.card),
            ("layered", self.layered),
            ("label", self.label),
            ("kit", self.kit),
        ]
    }

    /// The value under a key; `None` if there is no such key.
    pub fn of_key(&mut self, key: &str) -> Option<&mut Decimal> {
        match key {
            "piece" => Some(&mut self.piece),
            "base" => Some(&mut self.base),
            "mat" => Some(&mut self.mat),
            "strip" => Some(&mut self.strip),
            "ribbon" => Some(&mut self.ribbon),
            "bow" => Some(&mut self.bow),
            "card" => Some(&mut self.card),
            "layered" => Some(&mut self.layered),
            "label" => Some(&mut self.label),
            "kit" => Some(&mut self.kit),
            _ => None,
        }
    }
}

/// A class at which people make the cards of one batch.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Class {
    /// The batch whose cards are made, by name; `None`: the only one that is shared out over kits.
    pub batch: Option<String>,
    /// The day, `YYYY-MM-DD`.
    pub date: Option<String>,
    /// When it begins.
    pub starts: Option<Time>,
    /// Minutes to arrive and to be welcomed.
    pub welcome_minutes: u32,
    /// Minutes of a pause when half of the cards are made; 0: none.
    pub pause_minutes: u32,
    /// Minutes to spare at the end.
    pub end_minutes: u32,
    /// Seats that are booked.
    pub seats: u32,
    /// Kits for whoever shows how.
    pub demonstrators: u32,
    /// Spare kits; `None`: 5 % of the seats, one at least.
    pub spare_kits: Option<u32>,
    /// How many of the seats are left-handers'.
    pub left_handed: u32,
    /// Kits that are cut already: they are never cut again.
    pub cut_kits: u32,
    /// Minutes for one card of a beginner.
    pub minutes_a_card: u32,
    /// What the room costs.
    pub room: Option<Price>,
    /// Hours of the teacher, preparing and shopping with it.
    pub hours: Decimal,
    /// What an hour of the teacher costs.
    pub hour: Option<Price>,
    /// What all seats use together.
    pub shared: Option<Price>,
    /// Seats at which the class pays for itself.
    pub break_even: Option<u32>,
    /// Price of a seat.
    pub price: Option<Price>,
}

impl Default for Class {
    /// # Source
    /// One demonstrator, 25 minutes a card for beginners, 15 to arrive and 15 to spare: common practice.
    fn default() -> Class {
        Class {
            batch: None,
            date: None,
            starts: None,
            welcome_minutes: 15,
            pause_minutes: 0,
            end_minutes: 15,
            seats: 1,
            demonstrators: 1,
            spare_kits: None,
            left_handed: 0,
            cut_kits: 0,
            minutes_a_card: 25,
            room: None,
            hours: Decimal::ZERO,
            hour: None,
            shared: None,
            break_even: None,
            price: None,
        }
    }
}
