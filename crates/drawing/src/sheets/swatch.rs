//! A letter and a pattern for every colour, so that no page needs colours to be told apart.
//!
//! About one man in twelve confuses red and green, and many handouts are printed in grey.

use cards::Plan;
use measure::{Length, Rect};

use super::card::stock_color;
use super::look::{INK, WHITE, pt};
use crate::scene::{Color, Hatch, Mark, Pen, hatch, share};

/// How one cardstock or ribbon is drawn.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Swatch {
    /// One to three letters, no other colour's.
    pub(super) letters: String,
    pub(super) color: Color,
    hatch: Hatch,
    pitch: Length,
}

/// Patterns given out in turn. Not among them: those of what is left over and of unusable edges.
const PATTERNS: [Hatch; 4] = [Hatch::Dotted, Hatch::Level, Hatch::Upright, Hatch::Falling];

impl Swatch {
    /// Of the cardstock with that index.
    pub(super) fn stock(plan: &Plan, index: usize) -> Swatch {
        Swatch::numbered(plan, index, stock_color(plan, index))
    }

    /// Of the ribbon with that index.
    pub(super) fn ribbon(plan: &Plan, index: usize) -> Swatch {
        let color = plan.project.ribbons.get(index).and_then(|ribbon| Color::parse(&ribbon.color)).unwrap_or(INK);
        Swatch::numbered(plan, plan.project.cardstocks.len() + index, color)
    }

    fn numbered(plan: &Plan, number: usize, color: Color) -> Swatch {
        let letters = letters(plan).into_iter().nth(number).unwrap_or_default();
        let round = i64::try_from(number / PATTERNS.len()).unwrap_or(0);
        Swatch { letters, color, hatch: PATTERNS[number % PATTERNS.len()], pitch: pt(5 + 2 * (round % 4)) }
    }

    /// A rectangle of it: its colour, a shade paler, under its pattern.
    pub(super) fn fill(&self, rect: Rect) -> Vec<Mark> {
        let ground = self.color.mix(WHITE, 90);
        // Lines that show in grey: darker on a light ground, lighter on a dark one.
        let line = if light(ground) { ground.mix(INK, 130) } else { ground.mix(WHITE, 130) };
        let pen = Pen::solid(line, share(pt(1), if self.hatch == Hatch::Dotted { 9 } else { 4 }, 5));
        vec![Mark::fill(rect, ground), hatch(rect, self.hatch, self.pitch, &pen)]
    }
}

/// True if ink reads better on it than white.
fn light(color: Color) -> bool {
    let [r, g, b] = color.rgb.map(u32::from);
    // Rec. 709 weights of the primaries, in thousandths.
    213 * r + 715 * g + 72 * b > 110_000
}

/// The letters of every cardstock, then of every ribbon: the first two of the name, or the first and another.
fn letters(plan: &Plan) -> Vec<String> {
    let stocks = plan.project.cardstocks.iter().map(|stock| stock.name.as_str());
    let names = stocks.chain(plan.project.ribbons.iter().map(|ribbon| ribbon.name.as_str()));
    let designs = plan.project.packs.iter().flat_map(|pack| &pack.designs);
    let mut taken: Vec<String> = designs.map(|design| design.letter.to_lowercase()).collect();
    let mut given = Vec::new();
    for (index, name) in names.enumerate() {
        let signs: Vec<char> = name.chars().filter(|sign| sign.is_alphanumeric()).collect();
        let first: String = signs.first().into_iter().flat_map(|sign| sign.to_uppercase()).collect();
        let pairs = signs.iter().skip(1).map(|sign| format!("{first}{}", sign.to_lowercase()));
        let found = pairs.chain([format!("{first}{}", index + 1)]).find(|code| !taken.contains(&code.to_lowercase()));
        let code = found.unwrap_or_else(|| format!("#{}", index + 1));
        taken.push(code.to_lowercase());
        given.push(code);
    }
    given
}

/// `Pot Blue (Po)`.
pub(super) fn stock_name(plan: &Plan, index: usize) -> String {
    let name = plan.project.cardstocks.get(index).map_or("", |stock| stock.name.as_str());
    format!("{name}\u{a0}({})", Swatch::stock(plan, index).letters)
}
