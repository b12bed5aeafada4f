//! Which class of an operator a letter falls into, and why not into a cheaper one.

use measure::Length;

use super::limits::{LetterClass, Role, Want, letter_classes};
use crate::weight::Weight;

/// A closed letter as it is posted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Letter {
    /// Its longer edge.
    pub length: Length,
    /// Its shorter edge.
    pub height: Length,
    /// At its thickest point; `None`: not known, and not judged.
    pub thickness: Option<Length>,
    /// Its weight; `None`: not known, and not judged.
    pub weight: Option<Weight>,
    /// False with a bow, a button, anything that stands out.
    pub even: bool,
    /// False if something in it does not bend.
    pub flexible: bool,
    /// True if the address runs along the shorter edge.
    pub upright: bool,
}

/// One reason why a class does not take a letter.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Why {
    /// Shorter or lower than anything the class takes; the least edge.
    TooSmall(Length),
    /// Longer than that.
    TooLong(Length),
    /// Higher than that.
    TooHigh(Length),
    /// Thicker than that.
    TooThick(Length),
    /// Thinner than that.
    TooThin(Length),
    /// Heavier than that.
    TooHeavy(Weight),
    /// Length ÷ height is below so many thousandths: too near a square.
    TooSquare(u32),
    /// Length ÷ height is above so many thousandths.
    TooSlender(u32),
    /// Not equally thick everywhere.
    Uneven,
    /// It does not bend.
    Stiff,
    /// The address runs along the shorter edge.
    Upright,
    /// Length, height and thickness together are over that.
    TooLargeTogether(Length),
    /// It is no larger than a letter in any measure.
    NotOver,
}

/// What an operator says to a letter, as far as its limits were read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Verdict {
    /// The operator.
    pub operator: &'static str,
    /// The class that takes it; `None`: no letter at all.
    pub class: Option<&'static LetterClass>,
    /// The better classes that do not, each with its reasons.
    pub not: Vec<(&'static LetterClass, Vec<Why>)>,
    /// Reasons of rows from memory alone: to be asked, not to be judged by.
    pub doubts: Vec<Why>,
}

/// Judges a letter in an envelope by the limits of an operator.
pub fn judge(letter: &Letter, operator: &str) -> Verdict {
    let rows: Vec<&'static LetterClass> = letter_classes().filter(|row| row.operator == operator).collect();
    let rank = |row: &&&'static LetterClass| match row.role {
        Role::Letter(rank) => Some(rank),
        Role::Over => Some(u8::MAX),
        Role::Card | Role::Least => None,
    };
    let mut classes: Vec<&'static LetterClass> = rows.iter().filter(|row| rank(row).is_some()).copied().collect();
    classes.sort_by_key(|row| rank(&row));
    let mut not = Vec::new();
    let mut class = None;
    for row in classes {
        let why = reasons(letter, row);
        if why.is_empty() {
            class = Some(row);
            break;
        }
        not.push((row, why));
    }
    let least = rows.iter().filter(|row| row.role == Role::Least);
    let doubts = least.flat_map(|row| reasons(letter, row)).collect();
    let operator = rows.first().map_or("", |row| row.operator);
    Verdict { operator, class, not, doubts }
}

/// Every reason why a class does not take a letter; none if it does.
pub fn reasons(letter: &Letter, row: &LetterClass) -> Vec<Why> {
    let mut why = Vec::new();
    let edges = [letter.length, letter.height];
    if row.role == Role::Over {
        let over = |(measure, least): (Option<Length>, Option<Length>)| measure > least && least.is_some();
        let measures = [Some(letter.length), Some(letter.height), letter.thickness];
        let heavy = letter.weight.is_some_and(|weight| weight > heaviest_letter(row.operator));
        if !heavy && !measures.into_iter().zip(row.least).any(over) {
            why.push(Why::NotOver);
        }
    } else {
        let short = edges.into_iter().zip(row.least).find(|(edge, least)| least.is_some_and(|least| *edge < least));
        why.extend(short.and_then(|(_, least)| least).map(Why::TooSmall));
        let thin = row.least[2].filter(|least| letter.thickness.is_some_and(|thick| thick < *least));
        why.extend(thin.map(Why::TooThin));
    }
    let over = |measure: Length, most: Option<Length>| most.filter(|most| measure > *most);
    why.extend(over(letter.length, row.most[0]).map(Why::TooLong));
    why.extend(over(letter.height, row.most[1]).map(Why::TooHigh));
    why.extend(letter.thickness.and_then(|thick| over(thick, row.most[2])).map(Why::TooThick));
    // length ÷ height against thousandths, multiplied out.
    let (length, height) = (i128::from(letter.length.ticks()) * 1_000, i128::from(letter.height.ticks()));
    let below = |least: &u32| length < i128::from(*least) * height;
    why.extend(row.ratio[0].filter(below).map(Why::TooSquare));
    why.extend(row.ratio[1].filter(|most| length > i128::from(*most) * height).map(Why::TooSlender));
    why.extend(row.most_weight.filter(|most| letter.weight.is_some_and(|weight| weight > *most)).map(Why::TooHeavy));
    why.extend(row.wants.iter().filter_map(|want| unmet(letter, *want)));
    why
}

fn heaviest_letter(operator: &str) -> Weight {
    let letters = letter_classes().filter(|row| row.operator == operator && matches!(row.role, Role::Letter(_)));
    letters.filter_map(|row| row.most_weight).max().unwrap_or_default()
}

fn unmet(letter: &Letter, want: Want) -> Option<Why> {
    match want {
        Want::Even => (!letter.even).then_some(Why::Uneven),
        Want::Flexible => (!letter.flexible).then_some(Why::Stiff),
        Want::AlongTheLongEdge => letter.upright.then_some(Why::Upright),
        Want::ThickIfLarge => {
            let inch = measure::Unit::Inch;
            let large = letter.length > inch.thousandths(6_000) || letter.height > inch.thousandths(4_250);
            let least = inch.thousandths(9);
            (large && letter.thickness.is_some_and(|thick| thick < least)).then_some(Why::TooThin(least))
        }
        Want::SidesTogether => {
            let most = Length::mm(900);
            let all = letter.length + letter.height + letter.thickness.unwrap_or_default();
            (all > most).then_some(Why::TooLargeTogether(most))
        }
    }
}
