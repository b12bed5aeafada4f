//! Size and weight limits of letters at several postal operators. No prices: the maker writes down her own.
//!
//! Length is the longest edge, height the shorter one, whatever way the address runs. Limits are inclusive. They change:
//! every page that uses this table shows the source and its year, and sends people to the counter.
//!
//! # Source
//! Each row names its own, its year and how sure it is; gathered on 25 November 2026.

use measure::{Length, Unit};

use crate::weight::Weight;

/// What a row is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Role {
    /// A letter in an envelope; of several classes that would take it, the lowest number is the usual one.
    Letter(u8),
    /// What is over the letters in at least one measure; its least measures are where a letter ends.
    Over,
    /// A card without an envelope.
    Card,
    /// The least size of anything the operator takes.
    Least,
}

/// What a class asks beyond size, weight and shape.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Want {
    /// As thick everywhere: no bow, no button.
    Even,
    /// It bends.
    Flexible,
    /// The address runs along the longer edge.
    AlongTheLongEdge,
    /// Over 6 in long or 4 1/4 in high it is at least 0.009 in thick.
    ThickIfLarge,
    /// Length, height and thickness together are at most 900 mm.
    SidesTogether,
}

/// One row of the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LetterClass {
    /// The operator.
    pub operator: &'static str,
    /// Its name for the class.
    pub class: &'static str,
    /// What it is for.
    pub role: Role,
    /// The unit the operator thinks in.
    pub unit: Unit,
    /// Least length, height and thickness.
    pub least: [Option<Length>; 3],
    /// Most length, height and thickness.
    pub most: [Option<Length>; 3],
    /// Least and most length ÷ height, in thousandths.
    pub ratio: [Option<u32>; 2],
    /// The heaviest.
    pub most_weight: Option<Weight>,
    /// What else it asks, as far as it can be checked.
    pub wants: &'static [Want],
    /// What else was read of it.
    pub other: &'static str,
    /// Where it was read.
    pub source: &'static str,
    /// When that was true.
    pub year: &'static str,
    /// How sure it is.
    pub sure: &'static str,
}

impl LetterClass {
    /// True if the row is from memory alone.
    pub fn from_memory(&self) -> bool {
        self.sure == "from memory"
    }
}

/// Every row, operator by operator.
pub fn letter_classes() -> impl Iterator<Item = &'static LetterClass> {
    CLASSES.iter()
}

/// The operators, in the order of the table.
pub fn operators() -> Vec<&'static str> {
    let mut all = Vec::new();
    for row in &CLASSES {
        if all.last() != Some(&row.operator) {
            all.push(row.operator);
        }
    }
    all
}

/// A row in thousandths of its unit.
#[allow(clippy::too_many_arguments, reason = "a row of a table")]
const fn row(
    [operator, class]: [&'static str; 2],
    role: Role,
    unit: Unit,
    least: [Option<i64>; 3],
    most: [Option<i64>; 3],
    ratio: [Option<u32>; 2],
    most_weight: Option<Weight>,
    wants: &'static [Want],
    [other, source, year, sure]: [&'static str; 4],
) -> LetterClass {
    let least = [length(unit, least[0]), length(unit, least[1]), length(unit, least[2])];
    let most = [length(unit, most[0]), length(unit, most[1]), length(unit, most[2])];
    LetterClass { operator, class, role, unit, least, most, ratio, most_weight, wants, other, source, year, sure }
}

const fn length(unit: Unit, thousandths: Option<i64>) -> Option<Length> {
    match thousandths {
        Some(thousandths) => Some(unit.thousandths(thousandths)),
        None => None,
    }
}

#[rustfmt::skip]
static CLASSES: [LetterClass; 24] = [
    row(["USPS", "letter"], Role::Letter(1), Unit::Inch, [Some(5000), Some(3500), Some(7)], [Some(11500), Some(6125), Some(250)], [None, None], Some(Weight::thousandths_of_an_ounce(3500)), &[], ["rectangular; card corners rounded at most 1/8 in radius; over 6 in long or 4.25 in high needs 0.009 in or is nonmachinable", "Domestic Mail Manual 101.1.1", "archive of 24 January 2021 and a copy of 2023 or later (2010 archive: no 0.009 rule here)", "read in source"]),
    row(["USPS", "letter machinable"], Role::Letter(0), Unit::Inch, [Some(5000), Some(3500), Some(7)], [Some(11500), Some(6125), Some(250)], [Some(1300), Some(2500)], Some(Weight::thousandths_of_an_ounce(3500)), &[Want::Even, Want::Flexible, Want::AlongTheLongEdge, Want::ThickIfLarge], ["not machinable if: ratio outside; plastic or non-paper outside; clasps strings buttons; uneven or loose contents; too rigid (40 lb belt, 11 in turn); over 6 x 4.25 in and under 0.009 in thick; address parallel to the short edge; unsealed self-mailer", "Domestic Mail Manual 101.1.2", "archive of 24 January 2021 and a copy of 2023 or later", "items a-d read in source; e-f read quoted; the rest from memory"]),
    row(["USPS", "postcard"], Role::Card, Unit::Inch, [Some(5000), Some(3500), Some(7)], [Some(6000), Some(4250), Some(16)], [None, None], None, &[], ["rectangular; a larger one pays the letter price; 9 x 6 in with 0.009 in minimum is for commercial presort and automation only", "Business Mail 101 cards; large postcard FAQ of August 2021", "2021", "read in source"]),
    row(["USPS", "large envelope (flat)"], Role::Over, Unit::Inch, [Some(11500), Some(6125), Some(250)], [Some(15000), Some(12000), Some(750)], [None, None], Some(Weight::thousandths_of_an_ounce(13000)), &[Want::Even, Want::Flexible], ["over the letter maximum in at least one dimension; flexible and uniformly thick, else parcel", "Domestic Mail Manual 101.2; Business Mail 101 flats", "copy undated", "read in source; weight read secondary"]),
    row(["Royal Mail", "Letter"], Role::Letter(0), Unit::Millimetre, [None, None, None], [Some(240000), Some(165000), Some(5000)], [None, None], Some(Weight::milligrams(100000)), &[], ["", "regulator help page (dimensions); two suppliers' guides (weight)", "undated and 2024-25", "read secondary"]),
    row(["Royal Mail", "Large Letter"], Role::Letter(1), Unit::Millimetre, [None, None, None], [Some(353000), Some(250000), Some(25000)], [None, None], Some(Weight::milligrams(750000)), &[], ["weight steps 100, 250, 500, 750 g", "regulator help page (dimensions); two suppliers' guides (weights)", "undated and 2024-25", "read secondary"]),
    row(["Royal Mail", "any item"], Role::Least, Unit::Millimetre, [Some(140000), Some(90000), None], [None, None, None], [None, None], None, &[], ["minimum size", "", "", "from memory"]),
    row(["Canada Post", "Standard Lettermail"], Role::Letter(0), Unit::Millimetre, [Some(140000), Some(90000), Some(180)], [Some(245000), Some(156000), Some(5000)], [Some(1300), Some(2600)], Some(Weight::milligrams(50000)), &[], ["minimum weight 2 g; weight steps 30 and 50 g; outside the ratio (square) it pays as non-standard; to the USA at most 150 mm high (2007-08)", "Lettermail size requirements page of the operator; steps and ratio in two summaries of 2008", "undated; 2008", "read in source; steps and ratio read secondary, old"]),
    row(["Canada Post", "Non-standard and Oversize Lettermail"], Role::Letter(1), Unit::Millimetre, [Some(140000), Some(90000), Some(180)], [Some(380000), Some(270000), Some(20000)], [None, None], Some(Weight::milligrams(500000)), &[], ["weight steps 100, 200, 500 g read (2008), 300 and 400 g from memory", "Lettermail size requirements page of the operator", "undated", "read in source"]),
    row(["Canada Post", "cards to USA and abroad"], Role::Card, Unit::Millimetre, [Some(140000), Some(90000), None], [Some(235000), Some(120000), None], [None, None], None, &[], ["postcards and cards", "letter weight and size page of the operator", "undated", "read in source"]),
    row(["Deutsche Post", "Standardbrief"], Role::Letter(0), Unit::Millimetre, [Some(140000), Some(90000), None], [Some(235000), Some(125000), Some(5000)], [Some(1400), None], Some(Weight::milligrams(20000)), &[], ["rectangular, not square; length at least 1.4 times width", "news guide of 12 February 2025 and two others", "2025", "read secondary"]),
    row(["Deutsche Post", "Kompaktbrief"], Role::Letter(1), Unit::Millimetre, [Some(100000), Some(70000), None], [Some(235000), Some(125000), Some(10000)], [Some(1400), None], Some(Weight::milligrams(50000)), &[], ["rectangular; length at least 1.4 times width", "same", "2025", "read secondary"]),
    row(["Deutsche Post", "Grossbrief"], Role::Letter(2), Unit::Millimetre, [Some(100000), Some(70000), None], [Some(353000), Some(250000), Some(20000)], [None, None], Some(Weight::milligrams(500000)), &[], ["square pieces go here", "same", "2025", "read secondary"]),
    row(["Deutsche Post", "Maxibrief"], Role::Letter(3), Unit::Millimetre, [Some(100000), Some(70000), None], [Some(353000), Some(250000), Some(50000)], [None, None], Some(Weight::milligrams(1000000)), &[], ["thickness from memory", "a guide to letter formats", "undated", "read secondary"]),
    row(["Australia Post", "small letter"], Role::Letter(0), Unit::Millimetre, [None, None, None], [Some(240000), Some(130000), Some(5000)], [None, None], Some(Weight::milligrams(250000)), &[Want::Flexible], ["flexible contents only; rigid items are parcels", "domestic letters page and regular letters page of the operator", "2021-2025", "read in source"]),
    row(["Australia Post", "large letter"], Role::Letter(1), Unit::Millimetre, [None, None, None], [Some(360000), Some(260000), Some(20000)], [None, None], Some(Weight::milligrams(500000)), &[Want::Flexible], ["weight steps 125, 250, 500 g", "same", "2021-2025", "read in source"]),
    row(["Australia Post", "any letter"], Role::Least, Unit::Millimetre, [Some(138000), Some(88000), None], [None, None, None], [None, None], None, &[], ["minimum size", "", "", "from memory"]),
    row(["Austrian Post", "C5/C6 (standard, standard plus)"], Role::Letter(0), Unit::Millimetre, [Some(140000), Some(90000), None], [Some(235000), Some(162000), Some(5000)], [None, None], Some(Weight::milligrams(50000)), &[], ["", "rate calculator formats page of the operator", "undated", "read in source"]),
    row(["Austrian Post", "C4 (maxi)"], Role::Letter(1), Unit::Millimetre, [Some(140000), Some(90000), None], [Some(324000), Some(229000), Some(20000)], [None, None], Some(Weight::milligrams(500000)), &[], ["", "same", "undated", "read in source"]),
    row(["bpost (Belgium)", "standardised letter"], Role::Letter(0), Unit::Millimetre, [Some(140000), Some(90000), Some(150)], [Some(235000), Some(125000), Some(5000)], [None, None], Some(Weight::milligrams(50000)), &[], ["rectangular", "page of the national regulator", "undated", "read (regulator)"]),
    row(["UPU", "letter post item"], Role::Letter(3), Unit::Millimetre, [Some(140000), Some(90000), None], [Some(600000), None, None], [None, None], Some(Weight::milligrams(2000000)), &[Want::SidesTogether], ["length + width + depth at most 900 mm; tolerance 2 mm", "Letter Post Regulations as given by a member post (article 203) and others", "copy undated", "read secondary"]),
    row(["UPU", "standardized item (old)"], Role::Letter(0), Unit::Millimetre, [Some(140000), Some(90000), None], [Some(235000), Some(120000), Some(5000)], [Some(1400), None], Some(Weight::milligrams(20000)), &[], ["tolerance 2 mm; folded cards without envelope, staples and metal fasteners excluded", "Letter Post Regulations article 203 as given by a member post", "copy undated", "read secondary"]),
    row(["UPU", "small letter format P"], Role::Letter(1), Unit::Millimetre, [Some(140000), Some(90000), None], [Some(245000), Some(165000), Some(5000)], [None, None], Some(Weight::milligrams(100000)), &[], ["", "Convention Regulations, format definitions", "after 2018", "from memory"]),
    row(["UPU", "large letter format G"], Role::Letter(2), Unit::Millimetre, [Some(140000), Some(90000), None], [Some(381000), Some(305000), Some(20000)], [None, None], Some(Weight::milligrams(500000)), &[], ["", "Convention Regulations, format definitions", "after 2018", "from memory"]),
];
