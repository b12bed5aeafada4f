//! The colours of a plan's prints, what goes with them, and whether its greetings can be read.
//!
//! Left out on purpose: what is laid beside what (the plan), and the truth: no screen shows the paper's own colour.

use std::collections::BTreeMap;
use std::sync::Arc;

use cards::Plan;
use cards::plan::PartKind;
use color::{
    Lab, LinearRgb, Nearness, Pairing, Share, Srgb, contrast_ratio, legible_on, nearest, pair, palette_of, stamped,
};
use drawing::sheets::{Colors, Faces, GreetingGround, Nearest, PrintColors, Reads, greeting_grounds};
use drawing::{Color, Picture};
use store::shelf::Shelved;
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
    /// On the shelf, and not in the project: of which kind, by its place among those that are held.
    Shelf(Kind, usize),
}

/// What kind of thing is held against a print.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(crate) enum Kind {
    Cardstock,
    Ribbon,
    Ink,
}

impl Kind {
    pub(crate) const ALL: [Kind; 3] = [Kind::Cardstock, Kind::Ribbon, Kind::Ink];

    /// Its name for other programs, and on the shelf.
    fn name(self) -> &'static str {
        match self {
            Kind::Cardstock => "cardstock",
            Kind::Ribbon => "ribbon",
            Kind::Ink => "ink",
        }
    }
}

/// Something on the shelf with a colour.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct OnShelf {
    kind: Kind,
    name: String,
    color: String,
}

/// The cardstocks, ribbons and inks of a shelf whose colour is told and of which there is something left.
pub(crate) fn on_shelf(shelf: &[Shelved]) -> Vec<OnShelf> {
    let items = shelf.iter().map(|shelved| &shelved.item);
    let there = items.filter(|item| !item.amount.is_zero() && !item.color.is_empty());
    let held = there.filter_map(|item| {
        let kind = Kind::ALL.into_iter().find(|kind| kind.name() == item.kind)?;
        Some(OnShelf { kind, name: item.name.clone(), color: item.color.clone() })
    });
    held.collect()
}

impl Stuff {
    /// Of which kind it is.
    pub(crate) fn of(self) -> Kind {
        match self {
            Stuff::Cardstock(_) => Kind::Cardstock,
            Stuff::Ribbon(_) => Kind::Ribbon,
            Stuff::Ink(_) => Kind::Ink,
            Stuff::Shelf(kind, _) => kind,
        }
    }

    /// Its kind for other programs.
    pub(crate) fn kind(self) -> &'static str {
        self.of().name()
    }

    /// The message that says its kind, its name and how near it is.
    pub(crate) fn nearest_name(self) -> &'static str {
        match self {
            Stuff::Cardstock(_) | Stuff::Shelf(Kind::Cardstock, _) => "page-colored-cardstock",
            Stuff::Ribbon(_) | Stuff::Shelf(Kind::Ribbon, _) => "page-colored-ribbon",
            Stuff::Shelf(Kind::Ink, _) => "matched-shelf-ink",
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
    /// What lies under it, by name: a cardstock, or a print with the card on which it reads worst.
    pub(crate) on: String,
    /// True if `on` is a cardstock's name.
    pub(crate) stock: bool,
    /// Its ink.
    pub(crate) ink: Srgb,
    /// The colour under it; the mean where it is a print.
    pub(crate) ground: Srgb,
    /// Contrast ratio of the stamped words with what lies around them; on a print at its worst place.
    pub(crate) contrast: f64,
}

impl Read {
    /// What lies under it, in a sentence.
    pub(crate) fn told_on(&self) -> String {
        if self.stock { say("matched-on-stock", &[("name", (&self.on).into())]) } else { self.on.clone() }
    }
}

impl Beside {
    /// What it is called in a list: an ink by what is stamped with it.
    pub(crate) fn called(&self) -> String {
        match self.stuff {
            Stuff::Ink(_) => say("matched-ink", &[("words", (&self.name).into())]),
            Stuff::Shelf(..) => say("matched-shelved", &[("name", (&self.name).into())]),
            _ => self.name.clone(),
        }
    }
}

impl Seen {
    /// What is to be seen of a print: a few milliseconds.
    pub(crate) fn of(picture: &Picture) -> Seen {
        let small = picture.at_most(SEEN);
        let pixels = pixels_of(&small);
        Seen { shares: palette_of(&pixels, MOST), width: width_of(&small), pixels }
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

/// Everything of the project held against a print, and what lies on the `shelf` besides: what lies beside it on most cards
/// first, then what is nearest.
pub(crate) fn beside(plan: &Plan, print: &OfPrint, shelf: &[OnShelf]) -> Vec<Beside> {
    let project = &plan.project;
    let cards = together(plan, print.face);
    let stocks = project.cardstocks.iter().enumerate().map(|(at, of)| (Stuff::Cardstock(at), &of.name, &of.color));
    let ribbons = project.ribbons.iter().enumerate().map(|(at, of)| (Stuff::Ribbon(at), &of.name, &of.color));
    let inks = project.greetings.iter().enumerate().map(|(at, of)| (Stuff::Ink(at), &of.words, &of.ink));
    let own: Vec<_> = stocks.chain(ribbons).chain(inks).collect();
    let same = |of: &OnShelf| own.iter().any(|(stuff, name, _)| stuff.of() == of.kind && **name == of.name);
    let besides = shelf.iter().enumerate().filter(|(_, of)| !same(of));
    let besides = besides.map(|(at, of)| (Stuff::Shelf(of.kind, at), &of.name, &of.color));
    let held = own.iter().copied().chain(besides).filter_map(|(stuff, name, hex)| {
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

/// Squares that the ground of a greeting is parted into, to an inch. `Chosen:` a stroke of stamped letters and its nearest
/// surroundings are about a sixteenth wide.
const SQUARES: f64 = 16.0;

/// How each greeting reads on each cardstock that it is stamped on in this plan, and on each print: there on the very part
/// that lies under it, on the card where it reads worst.
pub(crate) fn read(plan: &Plan, faces: &Faces) -> Vec<Read> {
    let mut on_stock: BTreeMap<(usize, usize), Read> = BTreeMap::new();
    let mut on_print: BTreeMap<(usize, FaceId), Read> = BTreeMap::new();
    for (card, greeting, ground) in greeting_grounds(plan, faces) {
        let Some(ink) = plan.project.greetings.get(greeting).and_then(|of| Srgb::from_hex(&of.ink)) else { continue };
        match ground {
            GreetingGround::Cardstock(at) => {
                let Some(stock) = plan.project.cardstocks.get(at) else { continue };
                let Some(ground) = Srgb::from_hex(&stock.color) else { continue };
                let contrast = contrast_ratio(stamped(ink, ground), ground);
                on_stock.insert(
                    (greeting, at),
                    Read { greeting, on: stock.name.clone(), stock: true, ink, ground, contrast },
                );
            }
            GreetingGround::Print { face, picture, per_inch } => {
                let pixels = pixels_of(&picture);
                let window = usize::try_from(whole(per_inch / SQUARES)).unwrap_or(1).max(1);
                let Some(found) = legible_on(ink, &pixels, width_of(&picture), window) else { continue };
                let name = plan.project.design(face.0, face.1).map(|of| (of.letter.as_str(), of.face(face.2)));
                let Some((letter, of)) = name else { continue };
                let facts = [("letter", letter.into()), ("name", (&of.name).into()), ("card", card.into())];
                let on = say("matched-on-print", &facts);
                let read = Read { greeting, on, stock: false, ink, ground: mean(&pixels), contrast: found.worst };
                let known = on_print.entry((greeting, face)).or_insert_with(|| read.clone());
                if read.contrast < known.contrast {
                    *known = read;
                }
            }
        }
    }
    on_stock.into_values().chain(on_print.into_values()).collect()
}

/// The mean of so many colours, by their light.
fn mean(pixels: &[Srgb]) -> Srgb {
    let light = pixels.iter().map(|pixel| pixel.linear());
    let sum = light.fold([0.0; 3], |sum, at| [sum[0] + at.r, sum[1] + at.g, sum[2] + at.b]);
    let [r, g, b] = sum.map(|all| all / f64::from(u32::try_from(pixels.len()).unwrap_or(u32::MAX)).max(1.0));
    LinearRgb { r, g, b }.srgb()
}

fn pixels_of(picture: &Picture) -> Vec<Srgb> {
    picture.rgb().chunks_exact(3).map(|of| Srgb::new(of[0], of[1], of[2])).collect()
}

fn width_of(picture: &Picture) -> usize {
    usize::try_from(picture.width_px()).unwrap_or(0)
}

/// The colours of a plan's papers for its handout.
pub(crate) fn for_pages(plan: &Plan, faces: &Faces, prints: &[OfPrint]) -> Colors {
    let share =
        |of: &Share| (Color { rgb: [of.color.r, of.color.g, of.color.b], alpha: 255 }, whole(of.share * 1000.0));
    let print = |of: &OfPrint| PrintColors {
        face: of.face,
        shares: of.seen.shares.iter().map(share).collect(),
        nearest: nearest_of_each(&beside(plan, of, &[])),
    };
    let reads = |of: Read| Reads {
        words: plan.project.greetings.get(of.greeting).map(|greeting| greeting.words.clone()).unwrap_or_default(),
        on: of.told_on(),
        tenths: whole(of.contrast * 10.0),
        how: readable_name(of.contrast),
    };
    Colors { prints: prints.iter().map(print).collect(), reads: read(plan, faces).into_iter().map(reads).collect() }
}

/// The nearest cardstock, the nearest ribbon, the nearest ink.
pub(crate) fn nearest_of_kinds(all: &[Beside]) -> Vec<&Beside> {
    let best = |kind: Kind| {
        let of_kind = all.iter().filter(|of| of.stuff.of() == kind);
        of_kind.min_by(|one, other| one.delta_e.total_cmp(&other.delta_e))
    };
    Kind::ALL.into_iter().filter_map(best).collect()
}

fn nearest_of_each(all: &[Beside]) -> Vec<Nearest> {
    let told = |of: &Beside| Nearest {
        kind: of.stuff.nearest_name(),
        name: of.name.clone(),
        tenths: whole(of.delta_e * 10.0),
        near: near_name(of.delta_e),
    };
    nearest_of_kinds(all).into_iter().map(told).collect()
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
