//! The envelope a card goes into, or the blank to make one of.

use measure::envelopes::{clearance, envelopes};
use measure::{EnvelopeSize, Length, Mark, Size, Unit, round};

use super::body::length_of;
use crate::model::{Envelope, Project};

/// Clearance in all that a thick card needs beyond its thickness, each way (common practice).
const BEYOND: Length = Length::from_ticks(Length::INCH.ticks() / 8);
/// Clearance in all of a flat card, each way (common practice; about 6 mm).
const USUAL: Length = Length::from_ticks(Length::INCH.ticks() / 4);

/// How a card goes into an envelope.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fit {
    /// The card, finished.
    pub card: Size,
    /// The maker's own envelope, if she told one.
    pub own: Option<Envelope>,
    /// What it leaves in all, short way × long way; below zero where the card is too large.
    pub left: Option<Size>,
    /// What a card so thick needs in all, each way.
    pub wanted: Length,
    /// True if her own leaves that much.
    pub fits: bool,
    /// The smallest envelopes of the table that leave so much, in the maker's unit first; at most three.
    pub others: Vec<&'static EnvelopeSize>,
    /// The blank to make one of.
    pub blank: Blank,
}

impl Fit {
    /// The face of the envelope it is posted in: the maker's own if the card goes in, else the smallest that would do,
    /// else the one to make.
    pub fn face(&self) -> Size {
        match (&self.own, self.others.first()) {
            (Some(own), _) if self.fits => own.size,
            (_, Some(other)) => other.size,
            _ => self.blank.face,
        }
    }
}

/// Which envelope takes a card of that thickness.
pub(super) fn fit(project: &Project, card: Size, thickest_um: u32) -> Fit {
    let thick = length_of(thickest_um);
    let wanted = thick + BEYOND;
    let own = project.envelope.clone();
    let left = own.as_ref().map(|own| clearance(own.size, card));
    let roomy = |left: Size| left.width >= wanted && left.height >= wanted;
    let fits = left.is_some_and(roomy);
    let mut others: Vec<&'static EnvelopeSize> = envelopes().filter(|row| roomy(clearance(row.size, card))).collect();
    // Stable: rows of one size stay in the table's order.
    others.sort_by_key(|row| (row.unit != project.unit, row.size.area()));
    others.truncate(3);
    Fit { card, own, left, wanted, fits, others, blank: Blank::around(card, thick, project.unit) }
}

/// The sheet an envelope is folded from: a cross of four flaps round the face.
///
/// The longer edges carry the upper and the lower flap, the shorter ones the side flaps, which lie inside.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Blank {
    /// Its finished face, long edge × short edge.
    pub face: Size,
    /// Width of a side flap.
    pub side: Length,
    /// Height of the lower flap: the back of the envelope, a little lower than the face.
    pub lower: Length,
    /// Height of the upper flap, which closes it.
    pub upper: Length,
}

impl Blank {
    /// Round a card: its size, a quarter inch and its thickness twice, up to the next eighth (or whole millimetre).
    ///
    /// # Source
    /// A quarter inch of clearance, a back that reaches to 3/8 in below the top, a closing flap of half the height, sides
    /// of 3/4 in: common practice.
    pub fn around(card: Size, thick: Length, unit: Unit) -> Blank {
        let step = Mark::usual(unit).step();
        let sides = card.short_first();
        let up = |length: Length| round::ceiling(length + USUAL + thick * 2, step);
        let face = Size::new(up(sides.height), up(sides.width));
        let (side, short) = match unit {
            Unit::Inch => (unit.thousandths(750), unit.thousandths(375)),
            Unit::Millimetre => (Length::mm(19), Length::mm(10)),
        };
        let half = round::ceiling(Length::from_ticks(face.height.ticks() / 2), step);
        Blank { face, side, lower: face.height - short, upper: half + step }
    }

    /// The sheet it comes out of, width × height.
    pub fn sheet(&self) -> Size {
        Size::new(self.face.width + self.side * 2, self.lower + self.face.height + self.upper)
    }
}
