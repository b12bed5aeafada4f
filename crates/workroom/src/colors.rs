//! The colours of a plan's prints, what goes with them, and whether its greetings can be read.
//!
//! Left out on purpose: what is laid beside what (the plan), and the truth: no screen shows the paper's own colour.

use std::collections::BTreeMap;
use std::sync::Arc;

use cards::Plan;
use cards::plan::PartKind;
use color::{Lab, Nearness, Pairing, Share, Srgb, contrast_ratio, legible_on, nearest, pair, palette_of, stamped};
use drawing::sheets::{Colors, Faces, Nearest, PrintColors, Reads};
use drawing::{Color, Picture};
use words::say;

use crate::make::faces::FaceId;

/// Most colours that are told of a print. Chosen: more blocks than these are too narrow to see.
const MOST: usize = 8;
/// Pixels across that are looked at. Chosen: a palette of 40 000 pixels is that of the whole print to the last per cent.
const SEEN: u32 = 200;
/// What letters this large need (WCAG 2.2, success criterion 1.4.3: large text).
pub(crate) const LARGE_TEXT: f64 = 3.0;
/// What letters of any size need (likewise).
pub(crate) const ANY_TEXT: f64 = 4.5;

/// The colours of one print that shows.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct OfPrint {
    /// Which face.
    pub(crate) face: FaceId,
    /// What was seen of it.
    pub(crate) seen: Arc<Seen>,
}

/// A print as its colours are looked at.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Seen {
    /// Its colours, largest area first.
    pub(crate) shares: Vec<Share>,
    pixels: Vec<Srgb>,
    width: usize,
}

/// Cardstock, ribbon or a greeting's ink of the project, by its index.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(crate) enum Stuff {
    Cardstock(usize),
    Ribbon(usize),
    /// The ink of that greeting.
    Ink(usize),
}

impl Stuff {
    /// Its kind for other programs.
    pub(crate) fn kind(self) -> &'static str {
        match self {
            Stuff::Cardstock(_) => "cardstock",
            Stuff::Ribbon(_) => "ribbon",
            Stuff::Ink(_) => "ink",
        }
    }

    /// The message that says its kind, its name and how near it is.
    fn nearest_name(self) -> &'static str {
        match self {
            Stuff::Cardstock(_) => "page-colored-cardstock",
            Stuff::Ribbon(_) => "page-colored-ribbon",
            Stuff::Ink(_) => "page-colored-ink",
        }
    }
}

/// Something of the project held against a print.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Beside {
    /// What it is.
    pub(crate) stuff: Stuff,
    /// Its name; of an ink, the words that are stamped with it.
    pub(crate) name: String,
    /// Its colour.
    pub(crate) color: Srgb,
    /// The colour of the print that is nearest.
    pub(crate) nearest: Srgb,
    /// How far it is, ΔE₀₀.
    pub(crate) delta_e: f64,
    /// How the two go together.
    pub(crate) pairing: Option<Pairing>,
    /// Cards of the plan on which both lie.
    pub(crate) cards: usize,
}

/// How a greeting reads on what it is stamped on.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Read {
    /// Index of the greeting.
    pub(crate) greeting: usize,
    /// What lies under it, by name.
    pub(crate) on: String,
    /// Its ink.
    pub(crate) ink: Srgb,
    /// The colour under it; the mean where it is a print.
    pub(crate) ground: Srgb,
    /// Contrast ratio of the stamped words with what lies around them; on a print at its worst place.
    pub(crate) contrast: f64,
}

impl Beside {
    /// What it is called in a list: an ink by what is stamped with it.
    pub(crate) fn called(&self) -> String {
        match self.stuff {
            Stuff::Ink(_) => say("matched-ink", &[("words", (&self.name).into())]),
            _ => self.name.clone(),
        }
    }
}

impl Seen {
    /// What is to be seen of a print: a few milliseconds.
    pub(crate) fn of(picture: &Picture) -> Seen {
        let small = picture.at_most(SEEN);
        let pixels: Vec<Srgb> = small.rgb().chunks_exact(3).map(|of| Srgb::new(of[0], of[1], of[2])).collect();
        Seen { shares: palette_of(&pixels, MOST), pixels, width: usize::try_from(small.width_px()).unwrap_or(0) }
    }

    /// The worst contrast of an ink anywhere on the print.
    pub(crate) fn worst(&self, ink: Srgb) -> Option<f64> {
        Some(legible_on(ink, &self.pixels, self.width, (self.width / 60).max(1))?.worst)
    }
}

/// The colours of every print that shows, in the order of packs and designs; each is `seen` once.
pub(crate) fn of_prints(faces: &Faces, seen: &dyn Fn(&Picture) -> Arc<Seen>) -> Vec<OfPrint> {
    faces.iter().map(|(face, picture)| OfPrint { face: *face, seen: seen(picture) }).collect()
}

/// How one colour goes with a print.
pub(crate) struct Held {
    /// The colour of the print that is nearest.
    pub(crate) nearest: Srgb,
    /// How far it is, ΔE₀₀.
    pub(crate) delta_e: f64,
    /// How the two go together.
    pub(crate) pairing: Option<Pairing>,
}

/// Holds a colour against those of a print; `None` if it has none.
pub(crate) fn held_against(color: Srgb, print: &[Share]) -> Option<Held> {
    let lab = Lab::of(color);
    let labs: Vec<Lab> = print.iter().map(|share| share.lab).collect();
    let (at, delta_e) = nearest(lab, &labs)?;
    Some(Held { nearest: print[at].color, delta_e, pairing: pair(lab, print).map(|(pairing, ..)| pairing) })
}

/// Everything of the project held against a print: what lies beside it on most cards first, then what is nearest.
pub(crate) fn beside(plan: &Plan, print: &OfPrint) -> Vec<Beside> {
    let project = &plan.project;
    let cards = together(plan, print.face);
    let stocks = project.cardstocks.iter().enumerate().map(|(at, of)| (Stuff::Cardstock(at), &of.name, &of.color));
    let ribbons = project.ribbons.iter().enumerate().map(|(at, of)| (Stuff::Ribbon(at), &of.name, &of.color));
    let inks = project.greetings.iter().enumerate().map(|(at, of)| (Stuff::Ink(at), &of.words, &of.ink));
    let held = stocks.chain(ribbons).chain(inks).filter_map(|(stuff, name, hex)| {
        let color = Srgb::from_hex(hex)?;
        let Held { nearest, delta_e, pairing } = held_against(color, &print.seen.shares)?;
        Some(Beside {
            stuff,
            name: name.clone(),
            color,
            nearest,
            delta_e,
            pairing,
            cards: cards.get(&stuff).copied().unwrap_or(0),
        })
    });
    let mut all: Vec<Beside> = held.collect();
    all.sort_by(|one, other| other.cards.cmp(&one.cards).then(one.delta_e.total_cmp(&other.delta_e)));
    all
}

/// On how many cards each thing lies together with a print; the folded base counts too.
fn together(plan: &Plan, face: FaceId) -> BTreeMap<Stuff, usize> {
    let mut cards: BTreeMap<Stuff, usize> = BTreeMap::new();
    for card in &plan.cards {
        let shows = card.parts.iter().any(|part| match part.kind {
            PartKind::Patterned { layout, design, side, .. } => {
                plan.layouts.get(layout).is_some_and(|layout| (layout.pack, design, side) == face)
            }
            _ => false,
        });
        if !shows {
            continue;
        }
        let mut stuffs: Vec<Stuff> = card
            .parts
            .iter()
            .flat_map(|part| match part.kind {
                PartKind::Cardstock(at) => [Some(Stuff::Cardstock(at)), None],
                PartKind::Strip(at, greeting) => [Some(Stuff::Cardstock(at)), Some(Stuff::Ink(greeting))],
                PartKind::Ribbon(at, _) => [Some(Stuff::Ribbon(at)), None],
                PartKind::Patterned { .. } => [None, None],
            })
            .flatten()
            .collect();
        stuffs.sort();
        stuffs.dedup();
        for stuff in stuffs {
            *cards.entry(stuff).or_default() += 1;
        }
    }
    cards
}

/// How each greeting reads on each cardstock that it is stamped on in this plan.
pub(crate) fn read(plan: &Plan) -> Vec<Read> {
    let mut pairs: Vec<(usize, usize)> = plan
        .cards
        .iter()
        .flat_map(|card| &card.parts)
        .filter_map(|part| match part.kind {
            PartKind::Strip(stock, greeting) => Some((greeting, stock)),
            _ => None,
        })
        .collect();
    pairs.sort_unstable();
    pairs.dedup();
    let of = |(greeting, stock): (usize, usize)| {
        let stock = plan.project.cardstocks.get(stock)?;
        let (ink, paper) = (Srgb::from_hex(&plan.project.greetings.get(greeting)?.ink)?, Srgb::from_hex(&stock.color)?);
        let contrast = contrast_ratio(stamped(ink, paper), paper);
        Some(Read { greeting, on: stock.name.clone(), ink, ground: paper, contrast })
    };
    pairs.into_iter().filter_map(of).collect()
}

/// The colours of a plan's papers for its handout.
pub(crate) fn for_pages(plan: &Plan, prints: &[OfPrint]) -> Colors {
    let share =
        |of: &Share| (Color { rgb: [of.color.r, of.color.g, of.color.b], alpha: 255 }, whole(of.share * 1000.0));
    let print = |of: &OfPrint| PrintColors {
        face: of.face,
        shares: of.seen.shares.iter().map(share).collect(),
        nearest: nearest_of_each(&beside(plan, of)),
    };
    let reads = |of: Read| Reads {
        words: plan.project.greetings.get(of.greeting).map(|greeting| greeting.words.clone()).unwrap_or_default(),
        on: of.on,
        tenths: whole(of.contrast * 10.0),
        how: readable_name(of.contrast),
    };
    Colors { prints: prints.iter().map(print).collect(), reads: read(plan).into_iter().map(reads).collect() }
}

/// The nearest cardstock, the nearest ribbon, the nearest ink.
fn nearest_of_each(all: &[Beside]) -> Vec<Nearest> {
    let kinds = [
        |stuff: Stuff| matches!(stuff, Stuff::Cardstock(_)),
        |stuff: Stuff| matches!(stuff, Stuff::Ribbon(_)),
        |stuff: Stuff| matches!(stuff, Stuff::Ink(_)),
    ];
    let best = |is: fn(Stuff) -> bool| {
        let of_kind = all.iter().filter(|of| is(of.stuff));
        let of = of_kind.min_by(|one, other| one.delta_e.total_cmp(&other.delta_e))?;
        Some(Nearest {
            kind: of.stuff.nearest_name(),
            name: of.name.clone(),
            tenths: whole(of.delta_e * 10.0),
            near: near_name(of.delta_e),
        })
    };
    kinds.into_iter().filter_map(best).collect()
}

/// A small number that is not negative, rounded.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to what fits")]
fn whole(number: f64) -> u32 {
    number.round().clamp(0.0, f64::from(u32::MAX)) as u32
}

/// The message that says a ΔE₀₀ in words.
fn near_name(delta_e: f64) -> &'static str {
    match Nearness::of(delta_e) {
        Nearness::Same => "near-same",
        Nearness::Good => "near-good",
        Nearness::Close => "near-close",
        Nearness::Family => "near-family",
        Nearness::Other => "near-other",
    }
}

/// ΔE₀₀ in words.
pub(crate) fn near(delta_e: f64) -> String {
    say(near_name(delta_e), &[])
}

/// A pairing in words.
pub(crate) fn goes(pairing: Option<Pairing>) -> String {
    match pairing {
        Some(Pairing::Match) => say("goes-match", &[]),
        Some(Pairing::ToneOnTone) => say("goes-tone", &[]),
        Some(Pairing::Contrast) => say("goes-contrast", &[]),
        Some(Pairing::Neutral) => say("goes-neutral", &[]),
        None => say("goes-none", &[]),
    }
}

/// The message that says a contrast ratio in words.
fn readable_name(contrast: f64) -> &'static str {
    if contrast >= ANY_TEXT {
        "reads-well"
    } else if contrast >= LARGE_TEXT {
        "reads-large"
    } else {
        "reads-badly"
    }
}

/// A contrast ratio in words.
pub(crate) fn readable(contrast: f64) -> String {
    say(readable_name(contrast), &[])
}
