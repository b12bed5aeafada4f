//! The sheet that answers a background, numbered in the order in which it is stamped.

use measure::{Length, Size};
use scatter::{
    EdgeRule, Loosened, MOST_MOTIFS, Motif as Scattered, MoveError, Outline, OutlineError, Placement, ScatterError,
    Shortfall, Slip, Wish, by_hand, make_room, scatter, worst_by_hand,
};

use super::{StampError, outline};
use crate::model::Background;

/// Which hand stamps: the order keeps it off wet ink.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Hand {
    /// Rows run from left to right.
    Right,
    /// Rows run from right to left.
    Left,
}

/// Why a background has no sheet.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Refused {
    /// A stamp has no outline.
    #[error("stamp {stamp}: {why}")]
    Stamp {
        /// Which stamp, counted from 0.
        stamp: usize,
        /// Why.
        why: StampError,
    },
    /// The wish has no answer.
    #[error(transparent)]
    Wish(#[from] ScatterError),
}

/// One impression.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Impression {
    /// Its number in stamping order, from 1.
    pub number: u32,
    /// Which stamp, where its centre of ink comes, and how it is turned.
    pub placed: Placement,
    /// 1: freshly inked; 2: the paler second one of the same inking, and so on.
    pub generation: u32,
    /// What of its ink is on the sheet, in percent, rounded; 100 only where all of it is.
    pub inside_percent: u32,
    /// It stays where it is.
    pub locked: bool,
}

/// What one stamp does on a sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct StampUse {
    /// Which stamp, counted from 0.
    pub stamp: usize,
    /// Impressions of each generation, first ones first; as many entries as are made with one inking.
    pub of_generation: [u32; 3],
    /// How often it is inked.
    pub inkings: u32,
    /// Impressions that run off the edge.
    pub off_edge: u32,
}

impl StampUse {
    /// All its impressions.
    pub fn impressions(&self) -> u32 {
        self.of_generation.iter().sum()
    }
}

/// A sheet ready to be stamped.
#[derive(Debug, Clone, PartialEq)]
pub struct Laid {
    /// The sheet.
    pub sheet: Size,
    /// The ink of every stamp at its size.
    pub outlines: Vec<Outline>,
    /// Impressions in stamping order.
    pub impressions: Vec<Impression>,
    /// Every stamp in use, in stamping order.
    pub stamps: Vec<StampUse>,
    /// Least distance of ink between two impressions; `None` for fewer than two.
    pub closest: Option<Length>,
    /// How much of the sheet is ink, in percent, rounded.
    pub cover_percent: u32,
    /// What was wished and is not there.
    pub shortfall: Option<Shortfall>,
    /// Impressions put by hand that are nearer to another than the gap, or leave a sliver at an edge.
    pub too_near: u32,
}

/// The background as the engine is asked.
fn wish(background: &Background) -> Result<Wish, Refused> {
    let motif = |(stamp, of): (usize, &crate::model::Motif)| {
        let outline = outline(of).map_err(|why| Refused::Stamp { stamp, why })?;
        Ok(Scattered { outline, share: of.share, turning: of.turning })
    };
    Ok(Wish {
        sheet: background.sheet,
        motifs: background.motifs.iter().enumerate().map(motif).collect::<Result<_, Refused>>()?,
        gap: background.gap,
        count: background.count,
        arrangement: background.arrangement,
        edge: background.edge,
        locked: background.locked.clone(),
        seed: u64::from(background.seed),
    })
}

/// The sheet that answers a background, numbered for a hand.
///
/// # Shape
/// Same background, same sheet. The order: one stamp after the other, the largest first; of each stamp rows from the
/// far edge towards the maker, in each row away from the hand that stamps, so that it never lies on wet ink.
///
/// # Errors
/// [`Refused`].
///
/// # Source
/// Large motifs first and the hand off what is wet: common practice.
pub fn lay(background: &Background, hand: Hand) -> Result<Laid, Refused> {
    let mut wish = wish(background)?;
    if !background.stands.is_empty() {
        // What stands by hand stands: nothing is set out anew.
        wish.locked.extend(&background.stands);
        wish.count = Some(u32::try_from(wish.locked.len()).unwrap_or(u32::MAX));
    }
    let found = match background.density.filter(|_| wish.count.is_none()) {
        Some(percent) => as_dense(&mut wish, f64::from(percent) / 100.0)?,
        None => scatter(&wish)?,
    };
    let cover_percent = percent(covered(&wish, &found.placements));
    let outlines: Vec<Outline> = wish.motifs.iter().map(|motif| motif.outline.clone()).collect();
    let mut placed = found.placements;
    in_order(&mut placed, background, &outlines, hand);
    let mut stamps: Vec<StampUse> = Vec::new();
    let mut impressions = Vec::with_capacity(placed.len());
    for (number, placed) in (1..).zip(placed) {
        if stamps.last().is_none_or(|last| last.stamp != placed.motif) {
            stamps.push(StampUse { stamp: placed.motif, of_generation: [0; 3], inkings: 0, off_edge: 0 });
        }
        let per_inking = background.motifs[placed.motif].per_inking.clamp(1, 3);
        let Some(tally) = stamps.last_mut() else { continue };
        let generation = tally.impressions() % per_inking + 1;
        tally.inkings += u32::from(generation == 1);
        tally.of_generation[if generation == 3 { 2 } else { usize::from(generation == 2) }] += 1;
        let inside_percent = inside(&outlines[placed.motif], placed, background.sheet);
        tally.off_edge += u32::from(inside_percent < 100);
        let locked = background.locked.contains(&placed);
        impressions.push(Impression { number, placed, generation, inside_percent, locked });
    }
    Ok(Laid {
        sheet: background.sheet,
        outlines,
        impressions,
        stamps,
        closest: found.closest,
        cover_percent,
        shortfall: found.shortfall.filter(|_| background.stands.is_empty()),
        too_near: u32::try_from(found.locks_in_the_way.len()).unwrap_or(u32::MAX),
    })
}

/// The sheet of which so much is ink, as near as whole impressions and their shares come to it; else the fullest.
fn as_dense(wish: &mut Wish, share: f64) -> Result<scatter::Scattering, ScatterError> {
    let area = wish.sheet.width.to_mm() * wish.sheet.height.to_mm();
    let (mut ink, mut weight) = (0.0, 0.0);
    for motif in &wish.motifs {
        ink += f64::from(motif.share) * motif.outline.ink();
        weight += f64::from(motif.share);
    }
    let mut guess = share * area * weight / f64::max(ink, 1e-3);
    let mut best: Option<(f64, scatter::Scattering)> = None;
    // What runs off leaves less on the sheet than it is worth, how much goes by the sheet: a few with more or fewer.
    for _ in 0..5 {
        wish.count = Some(whole(guess));
        let sheet = scatter(wish)?;
        let found = covered(wish, &sheet.placements);
        let full = sheet.shortfall.is_some();
        let off = (found - share).abs();
        if best.as_ref().is_none_or(|(least, _)| off < *least) {
            best = Some((off, sheet));
        }
        if full || found <= 0.0 || off < 0.005 {
            break;
        }
        guess *= share / found;
    }
    match best {
        Some((_, sheet)) => Ok(sheet),
        None => scatter(wish),
    }
}

/// How much of a sheet is ink: 0 to 1.
fn covered(wish: &Wish, placements: &[Placement]) -> f64 {
    let each = placements.iter().filter_map(|placed| {
        let outline = &wish.motifs.get(placed.motif)?.outline;
        let share = if wish.edge == EdgeRule::Wrap { 1.0 } else { outline.share_on(*placed, wish.sheet) };
        Some(outline.ink() * share)
    });
    each.sum::<f64>() / (wish.sheet.width.to_mm() * wish.sheet.height.to_mm())
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "1 to 10 000")]
fn whole(count: f64) -> u32 {
    libm::round(count).clamp(1.0, f64::from(MOST_MOTIFS)) as u32
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 100")]
fn percent(share: f64) -> u32 {
    libm::round(share * 100.0).clamp(0.0, 100.0) as u32
}

/// Largest stamp first; of each, rows as high as it is with its gap, from the top; in a row away from the hand.
fn in_order(placed: &mut [Placement], background: &Background, outlines: &[Outline], hand: Hand) {
    let mut by_size: Vec<usize> = (0..outlines.len()).collect();
    by_size.sort_by(|a, b| outlines[*b].reach().total_cmp(&outlines[*a].reach()));
    let rank = |stamp: usize| by_size.iter().position(|is| *is == stamp).unwrap_or(stamp);
    placed.sort_by_key(|placed| {
        let high = super::hundredths(2.0 * outlines[placed.motif].reach()) + background.gap;
        let row = placed.y.ticks().div_euclid(high.ticks().max(1));
        let along = if hand == Hand::Left { -placed.x.ticks() } else { placed.x.ticks() };
        (rank(placed.motif), row, along, placed.y, placed.turn)
    });
}

/// What of an impression's ink is on the sheet, in percent.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 99")]
fn inside(outline: &Outline, placed: Placement, sheet: Size) -> u32 {
    let share = outline.share_on(placed, sheet);
    if share >= 1.0 { 100 } else { libm::round(share * 100.0).clamp(0.0, 99.0) as u32 }
}

/// The background with one impression, counted from 0 in stamping order, moved to a place, and the rest making room.
///
/// # Shape
/// Where the others stand is written down in `stands`; the second value is how many found no place any more.
///
/// # Errors
/// [`MoveError`] where the place is not free.
pub fn shove(
    background: &Background,
    laid: &Laid,
    which: usize,
    (x, y, turn): (Length, Length, u16),
) -> Result<(Background, u32), MoveError> {
    let wish = wish(background).map_err(|_| MoveError::Unknown(which))?;
    let standing: Vec<Placement> = laid.impressions.iter().map(|one| one.placed).collect();
    let held: Vec<usize> = (0..standing.len()).filter(|at| laid.impressions[*at].locked).collect();
    let before = *standing.get(which).ok_or(MoveError::Unknown(which))?;
    let to = Placement { x: super::hundredths(x.to_mm()), y: super::hundredths(y.to_mm()), turn: turn % 360, ..before };
    let after = make_room(&wish, &standing, &held, which, to)?;
    let mut made = background.clone();
    made.locked.retain(|locked| *locked != before);
    if made.locked.len() < background.locked.len() {
        made.locked.push(to);
    }
    let gone = after.iter().filter(|place| place.is_none()).count();
    made.stands = after.into_iter().flatten().filter(|placed| !made.locked.contains(placed)).collect();
    Ok((made, u32::try_from(gone).unwrap_or(u32::MAX)))
}

/// What becomes of the distances at one size of slip.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Slipped {
    /// The slip.
    pub slip: Slip,
    /// What comes of it.
    pub loosened: Loosened,
}

/// Sheets that are stamped for each size of slip. Chosen: shares settle to about a percent.
const SHEETS: u32 = 20;

/// What a practised and an unsure hand do to the distances: off by up to 1 mm and 2°, and by up to 3 mm and 5°.
///
/// # Source
/// 3 mm and 5°: a hand that stamps by eye from a guide beside the sheet; 1 mm and 2°: over a light box. common practice
pub fn slips(background: &Background, laid: &Laid) -> Vec<Slipped> {
    let Ok(wish) = wish(background) else { return Vec::new() };
    let placed: Vec<Placement> = laid.impressions.iter().map(|one| one.placed).collect();
    [(1, 2), (3, 5)]
        .into_iter()
        .filter_map(|(place, turn_deg)| {
            let slip = Slip { place: Length::mm(place), turn_deg };
            let loosened = by_hand(&wish, &placed, slip, SHEETS, u64::from(background.seed))?;
            Some(Slipped { slip, loosened })
        })
        .collect()
}

/// The worst of the sheets that a slip was reckoned by: every impression where that hand puts it, and which, counted
/// from 0, touch another. `None` for fewer than two impressions.
pub fn askew(background: &Background, laid: &Laid, slip: Slip) -> Option<(Laid, Vec<usize>)> {
    let wish = wish(background).ok()?;
    let placed: Vec<Placement> = laid.impressions.iter().map(|one| one.placed).collect();
    let worst = worst_by_hand(&wish, &placed, slip, SHEETS, u64::from(background.seed))?;
    let mut sheet = laid.clone();
    for (one, placed) in sheet.impressions.iter_mut().zip(worst.placements) {
        one.placed = placed;
    }
    Some((sheet, worst.touch))
}

impl Refused {
    /// What is wrong with a stamp's own corners, if that is why.
    pub fn corners(&self) -> Option<&OutlineError> {
        match self {
            Refused::Stamp { why: StampError::Outline(why), .. } => Some(why),
            _ => None,
        }
    }
}
