//! Greetings stamped on strips and other pieces: where the ink comes, what a tilt does, which size would do, in which
//! order to stamp.
//!
//! | offers | gives |
//! |---|---|
//! | [`place`], [`Sides`] | where the ink and the stamp's own edges lie on a strip, and what stays clear round the ink |
//! | [`mark_of`], [`middle_of`] | the outline of what a stamp leaves, and where its ink balances |
//! | [`enough`], [`growths`] | the smallest strip that leaves clear what should be clear, and the pieces that are smaller |
//! | [`tilt`], [`steepest`] | what a turn of some degrees does at the ends, and how much the strip forgives |
//! | [`sittings`] | a batch in the order in which to stamp it |
//!
//! Everything goes by the ink: a stamp's block is cut by hand and seldom even round it. Left out on purpose: how the
//! words look, what the ink's colour does on the paper.

use std::borrow::Cow;

use measure::{Length, Rect, Size, round};

use crate::background::{Outline, shape_outline};
use crate::model::{Anchor, Greeting, Layer, Material, MotifShape, Project, Side, Spot, Third};
use crate::plan::{PartKind, Plan};

/// Least clear space round the words of a strip.
///
/// # Source
/// Common practice: an eighth of an inch looks meant, less looks like a slip.
pub const CLEAR: Length = Length::from_ticks(Length::INCH.ticks() / 8);

/// Steepest turn that is looked at, in tenths of a degree. Chosen: nobody stamps straight and is off by half a right angle.
const STEEPEST: u32 = 450;

/// Where a greeting comes on a strip; the strip's top left is 0, 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Placed {
    /// The box round the ink.
    pub ink: Rect,
    /// The stamp's own edges, where they are known.
    pub stamp: Option<Rect>,
}

/// What stays clear from the edges of a strip to the ink; below zero where the ink runs over.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Sides {
    /// At the left.
    pub left: Length,
    /// At the right.
    pub right: Length,
    /// Above.
    pub above: Length,
    /// Below.
    pub below: Length,
}

impl Sides {
    /// What `strip` leaves clear round `ink`.
    pub fn of(strip: Size, ink: Rect) -> Sides {
        Sides { left: ink.x, right: strip.width - ink.right(), above: ink.y, below: strip.height - ink.bottom() }
    }

    /// The least of the four.
    pub fn least(self) -> Length {
        self.left.min(self.right).min(self.above).min(self.below)
    }
}

/// Where the ink of a greeting comes on a strip of that size, exact to a tick.
pub fn place(strip: Size, greeting: &Greeting, spot: Spot) -> Placed {
    let (across, down) = axes(spot);
    let middle = middle_of(greeting);
    let x = across.start(strip.width, greeting.inked.width, middle.width);
    let y = down.start(strip.height, greeting.inked.height, middle.height);
    let ink = Rect::new(x, y, greeting.inked);
    let stamp = greeting.stamp.map(|stamp| Rect::new(x - stamp.left, y - stamp.top, stamp.size));
    Placed { ink, stamp }
}

/// What should stay clear round words at that spot: [`CLEAR`], or the maker's own border where that is less.
pub fn wished(spot: Spot) -> Length {
    match spot {
        Spot::Border { anchor, border } if anchor != Anchor::Middle => CLEAR.min(border),
        _ => CLEAR,
    }
}

/// The smallest strip on which the greeting keeps what is [`wished`] clear, its sides on whole steps.
///
/// # Panics
/// If `step` is not above zero.
pub fn enough(greeting: &Greeting, spot: Spot, step: Length) -> Size {
    let ((across, down), clear) = (axes(spot), wished(spot));
    let side = |axis: Axis, ink: Length, middle: Length| round::ceiling(axis.enough(ink, middle, clear), step);
    let middle = middle_of(greeting);
    Size::new(side(across, greeting.inked.width, middle.width), side(down, greeting.inked.height, middle.height))
}

/// The outline of what a greeting's stamp leaves, in the proportions of its corners or its picture; `None` where none is
/// told or none is known.
pub fn mark_of(greeting: &Greeting) -> Option<Cow<'_, Outline>> {
    if let MotifShape::Picture(_, traced) = greeting.mark.as_ref()? {
        return traced.as_ref().map(Cow::Borrowed);
    }
    let size = greeting.inked.width.max(greeting.inked.height);
    shape_outline(greeting.mark.as_ref()?, size).ok().map(Cow::Owned)
}

/// Twice the way from the left and from the top end of a greeting's ink to its middle: whole where the middle lies
/// between two ticks.
pub fn middle_of(greeting: &Greeting) -> Size {
    let balance = if greeting.balanced { mark_of(greeting) } else { None };
    let Some(mark) = balance else { return greeting.inked };
    let ([left, top, right, bottom], (x, y)) = (mark.bounds(), mark.balance());
    let share = |at: f64, from: f64, to: f64, ink: Length| match to > from {
        true => scaled(ink * 2, ((at - from) / (to - from)).clamp(0.0, 1.0)),
        false => ink,
    };
    Size::new(share(x, left, right, greeting.inked.width), share(y, top, bottom, greeting.inked.height))
}

/// A piece that is too small for its greeting, and the size that would do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Growth {
    /// Index of the recipe.
    pub recipe: usize,
    /// Index of the layer in it.
    pub layer: usize,
    /// Its size; of a piece with ranges the least one.
    pub from: Size,
    /// The smallest size that does, never less than it is.
    pub to: Size,
}

/// The pieces of a project that leave less clear round their greeting than is [`wished`].
///
/// A mat is as large as what lies on it asks for: it does not grow for its greeting.
pub fn growths(project: &Project) -> Vec<Growth> {
    let mut found = Vec::new();
    for (recipe, made) in project.recipes.iter().enumerate() {
        for (layer, laid) in made.layers.iter().enumerate() {
            let Some((greeting, spot)) = laid.greeting() else { continue };
            let size = match &laid.material {
                Material::Strip { size, .. } | Material::Plain { size, .. } => *size,
                Material::Patterned { width, height, .. } => Size::new(width.least, height.least),
                Material::Mat { .. } | Material::Ribbon { .. } => continue,
            };
            let Some(greeting) = project.greetings.get(greeting) else { continue };
            if Sides::of(size, place(size, greeting, spot).ink).least() < wished(spot) {
                found.push(Growth { recipe, layer, from: size, to: grown(project, size, greeting, spot) });
            }
        }
    }
    found
}

/// The strip of at least that size on which the greeting keeps what is [`wished`] clear.
pub(crate) fn grown(project: &Project, strip: Size, greeting: &Greeting, spot: Spot) -> Size {
    let least = enough(greeting, spot, project.mark.step());
    Size::new(strip.width.max(least.width), strip.height.max(least.height))
}

/// How much higher one end of a line of that length lies than the other when it is turned by so many tenths of a degree.
///
/// # Source
/// Length × sin of the angle; the sine by its power series, whose terms are added and multiplied the same on every
/// machine.
pub fn tilt(long: Length, tenths: u32) -> Length {
    scaled(long, sine(f64::from(tenths.min(STEEPEST)) / 10.0))
}

/// The steepest turn round the middle of the ink, in tenths of a degree up to 45°, at which and below which the box of
/// the ink keeps `clear` from every edge; `None` if it does not even when straight.
pub fn steepest(strip: Size, ink: Rect, clear: Length) -> Option<u32> {
    // Twice the way from the middle to the nearer edge, less what is to stay clear.
    let across = (ink.x + ink.right()).min((strip.width - ink.x) + (strip.width - ink.right())) - clear * 2;
    let down = (ink.y + ink.bottom()).min((strip.height - ink.y) + (strip.height - ink.bottom())) - clear * 2;
    let keeps = |tenths: &u32| {
        let degrees = f64::from(*tenths) / 10.0;
        let (sin, cos) = (sine(degrees), sine(90.0 - degrees));
        let (wide, high) = (ink.size.width, ink.size.height);
        scaled(wide, cos) + scaled(high, sin) <= across && scaled(wide, sin) + scaled(high, cos) <= down
    };
    (0..=STEEPEST).take_while(keeps).last()
}

/// What a piece that is stamped is cut from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Ground {
    /// A cardstock, by its index.
    Cardstock(usize),
    /// A printed side.
    Print {
        /// Index of the pack.
        pack: usize,
        /// Index of the design in it.
        design: usize,
        /// The side that is stamped.
        side: Side,
    },
}

/// Pieces of one size that take the same greeting at the same spot: one setting of the jig.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sitting {
    /// Index of the greeting.
    pub greeting: usize,
    /// Size of the strips or other pieces.
    pub strip: Size,
    /// Where on them it comes.
    pub spot: Spot,
    /// What pieces that are no strips are called in the recipe.
    pub piece: Option<String>,
    /// What they are cut from, and how many of each: the most first.
    pub strips: Vec<(Ground, u32)>,
    /// Indices of the recipes whose cards they are for.
    pub recipes: Vec<usize>,
}

impl Sitting {
    /// How many impressions.
    pub fn count(&self) -> u32 {
        self.strips.iter().map(|(_, count)| *count).fold(0, u32::saturating_add)
    }
}

/// The strips and other stamped pieces of a plan's cards in the order in which to stamp them.
///
/// Light inks come before dark ones: what is left of a light ink on stamp or fingers does not show under a dark one
/// (common practice). Within an ink a stamp is taken up once, and of its jigs the one with most strips comes first.
pub fn sittings(plan: &Plan) -> Vec<Sitting> {
    let mut found: Vec<Sitting> = Vec::new();
    for card in &plan.cards {
        let Some(recipe) = plan.project.recipes.get(card.recipe) else { continue };
        for part in &card.parts {
            let Some(layer) = recipe.layers.get(part.layer) else { continue };
            let Some((greeting, spot)) = layer.greeting() else { continue };
            let ground = match part.kind {
                PartKind::Strip(stock, _) | PartKind::Cardstock(stock) => Ground::Cardstock(stock),
                PartKind::Patterned { layout, design, side, .. } => {
                    let pack = plan.layouts.get(layout).map_or(card.pack, |layout| layout.pack);
                    Ground::Print { pack, design, side }
                }
                PartKind::Ribbon(..) => continue,
            };
            let strip = part.rect.size;
            let piece = named(layer);
            let same = |sitting: &Sitting| {
                (sitting.greeting, sitting.strip, sitting.spot) == (greeting, strip, spot)
                    && sitting.piece.as_deref() == piece
            };
            let at = found.iter().position(same).unwrap_or_else(|| {
                let piece = piece.map(str::to_owned);
                found.push(Sitting { greeting, strip, spot, piece, strips: Vec::new(), recipes: Vec::new() });
                found.len() - 1
            });
            let sitting = &mut found[at];
            match sitting.strips.iter_mut().find(|(of, _)| *of == ground) {
                Some((_, count)) => *count = count.saturating_add(1),
                None => sitting.strips.push((ground, 1)),
            }
            if !sitting.recipes.contains(&card.recipe) {
                sitting.recipes.push(card.recipe);
            }
        }
    }
    for sitting in &mut found {
        sitting.strips.sort_by_key(|(stock, count)| (std::cmp::Reverse(*count), *stock));
    }
    let of_greeting = |greeting: usize| {
        let same = found.iter().filter(|sitting| sitting.greeting == greeting);
        same.map(Sitting::count).fold(0, u32::saturating_add)
    };
    let mut keyed: Vec<_> = (found.iter())
        .map(|sitting| {
            let ink = plan.project.greetings.get(sitting.greeting).map_or("", |greeting| greeting.ink.as_str());
            let light = std::cmp::Reverse(lightness(ink));
            let most = std::cmp::Reverse(of_greeting(sitting.greeting));
            (light, ink.to_owned(), most, sitting.greeting, std::cmp::Reverse(sitting.count()), sitting.strip)
        })
        .zip(found.clone())
        .collect();
    keyed.sort_by(|(one, _), (other, _)| one.cmp(other));
    keyed.into_iter().map(|(_, sitting)| sitting).collect()
}

/// What a piece is called that is no strip.
fn named(layer: &Layer) -> Option<&str> {
    (!matches!(layer.material, Material::Strip { .. })).then_some(layer.name.as_str())
}

/// How light an ink `#rrggbb` is, for an order only; one that cannot be read counts as black.
///
/// # Source
/// The weights of red, green and blue in the luma of ITU-R BT.709, in ten-thousandths.
fn lightness(ink: &str) -> u32 {
    let digits = ink.strip_prefix('#').and_then(|digits| u32::from_str_radix(digits, 16).ok()).unwrap_or(0);
    (digits >> 16 & 0xff) * 2_126 + (digits >> 8 & 0xff) * 7_152 + (digits & 0xff) * 722
}

/// One direction of a spot.
#[derive(Debug, Clone, Copy)]
enum Axis {
    /// The middle of the ink lies on this line.
    On(Third),
    /// The ink begins so far from the beginning of the side.
    FromStart(Length),
    /// The ink ends so far before the end of the side.
    FromEnd(Length),
}

fn axes(spot: Spot) -> (Axis, Axis) {
    match spot {
        Spot::On { across, down } => (Axis::On(across), Axis::On(down)),
        Spot::Border { anchor, border } => {
            let axis = |halves: i64| match halves {
                0 => Axis::FromStart(border),
                2 => Axis::FromEnd(border),
                _ => Axis::On(Third::Middle),
            };
            let (across, down) = anchor.halves();
            (axis(across), axis(down))
        }
    }
}

impl Axis {
    /// Where the ink begins on a side; `middle` is twice the way from there to its middle.
    fn start(self, side: Length, ink: Length, middle: Length) -> Length {
        match self {
            Axis::On(third) => Length::from_ticks((side * third.sixths() - middle * 3).ticks().div_euclid(6)),
            Axis::FromStart(border) => border,
            Axis::FromEnd(border) => side - border - ink,
        }
    }

    /// The shortest side on which the ink keeps `clear` at both ends.
    fn enough(self, ink: Length, middle: Length, clear: Length) -> Length {
        match self {
            // The way before the middle and the way behind it each go into their sixths of the side, rounded up.
            Axis::On(third) => {
                let (before, behind) = (third.sixths(), 6 - third.sixths());
                let sides = [(clear * 6 + middle * 3, before), (clear * 6 + ink * 6 - middle * 3, behind)];
                let up = |(long, sixths): (Length, i64)| Length::from_ticks(-(-long.ticks()).div_euclid(sixths));
                up(sides[0]).max(up(sides[1]))
            }
            Axis::FromStart(border) | Axis::FromEnd(border) => border + ink + clear,
        }
    }
}

/// A length times a number between 0 and 1, to the nearest tick.
#[expect(
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    reason = "a strip has far fewer than 2^52 ticks"
)]
fn scaled(length: Length, by: f64) -> Length {
    Length::from_ticks((length.ticks() as f64 * by).round() as i64)
}

/// The sine of an angle from 0° to 90°.
fn sine(degrees: f64) -> f64 {
    let angle = degrees * (std::f64::consts::PI / 180.0);
    let (mut term, mut sum) = (angle, angle);
    for step in 1..=12 {
        let next = f64::from(2 * step);
        term *= -angle * angle / (next * (next + 1.0));
        sum += term;
    }
    sum
}
