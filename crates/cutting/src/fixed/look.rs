//! Better patterns of one kind of sheet under given worths, no piece more often than it is wanted, and a bound on what
//! any of them is worth.

use super::pattern::{self, Pattern};
use super::stock::Stock;
use super::table::{self, Grid, Table};
use super::worths::{self, Limits, Worths};
use super::{Item, blocks, fill};
use crate::{Budget, Exhausted, Tree};

/// Chosen: patterns made in one look.
const TOGETHER: usize = 4;

/// Chosen: parts of the nodes for one look at all patterns of a sheet.
const LOOK: u64 = 48;

/// Chosen: the same where the look is a proof.
const PROVE: u64 = 6;

/// What a look found.
#[derive(Default)]
pub(super) struct Look {
    pub(super) better: Vec<Pattern>,
    /// No pattern is worth more.
    pub(super) most: i64,
}

/// A sheet kind with the pieces that are left for it.
pub(super) struct Kind {
    pub(super) sheet: usize,
    pub(super) here: Vec<usize>,
    pub(super) items: Vec<Item>,
    pub(super) grid: Grid,
}

impl Kind {
    /// A sheet kind, if any piece that is left fits it; inside, `None` where there is no grid for it.
    #[expect(clippy::option_option, reason = "no piece, and no grid")]
    pub(super) fn of(stock: &Stock<'_>, s: usize, left: &[u32]) -> Option<Option<Kind>> {
        let sheet = &stock.sheets[s];
        let fits = |&k: &usize| left[k] > 0 && stock.items[k].fits(sheet.width, sheet.height);
        let here: Vec<usize> = (0..left.len()).filter(fits).collect();
        let items: Vec<Item> = here.iter().map(|&k| Item { cap: left[k], ..stock.items[k] }).collect();
        if items.is_empty() {
            return None;
        }
        let grid = stock.grid(s, &items);
        Some(grid.map(|grid| Kind { sheet: s, here, items, grid }))
    }
}

/// Patterns that are worth more than `least` and not among those known; with `prove` more nodes go to the bound.
///
/// # Errors
/// [`Exhausted`] when stopped.
pub(super) fn look(
    (stock, kind): (&Stock<'_>, &Kind),
    (worth, least): (&[i64], i64),
    (known, prove): (&[Pattern], bool),
    budget: &mut Budget<'_>,
) -> Result<Look, Exhausted> {
    let here: Vec<i64> = kind.here.iter().map(|&k| worth[k]).collect();
    let mut look = Look { better: Vec::new(), most: i64::MAX >> 12 };
    let mut offer = |tree: &Tree| -> i64 {
        let mut still = vec![0; stock.place.len()];
        for item in &kind.items {
            still[item.kind] = item.cap;
        }
        let tree = pattern::trim(tree, &mut still);
        let pattern = Pattern::of(kind.sheet, tree, &stock.place, stock.items.len());
        let value = value(&pattern, worth);
        let same = |p: &Pattern| p.sheet == pattern.sheet && p.counts == pattern.counts;
        let new = value > least && !known.iter().chain(&look.better).any(same);
        if new && look.better.len() < TOGETHER && stock.allows(&pattern) {
            look.better.push(pattern);
        }
        value
    };
    if fill::can_fill(&kind.grid, kind.items.len()) {
        let (_, tree) = fill::fill(&kind.grid, &kind.items, &here, budget)?;
        if offer(&tree) > least {
            return Ok(look);
        }
    }
    // Pieces that come too often made worth less, until a pattern is better or none can be.
    let area = u128::from(kind.grid.width) * u128::from(kind.grid.height);
    let most = |item: &Item| item.cap.min(u32::try_from(area / item.area()).unwrap_or(u32::MAX));
    let limits: Vec<Limits> = kind.items.iter().map(|item| Limits { min: 0, cap: most(item) }).collect();
    let items: Vec<Item> =
        kind.items.iter().zip(&here).map(|(item, &y)| Item { value: y.unsigned_abs(), ..*item }).collect();
    let mut worths = Worths::default();
    let enough = |value: i64| if value > least { u64::MAX } else { least.unsigned_abs() };
    let mut part = budget.part(budget.left() / LOOK);
    let _ended = worths::improve(&kind.grid, &items, &limits, &mut worths, &mut |tree| enough(offer(tree)), &mut part);
    budget.join(&part)?;
    // Without a single table nothing is known.
    let mut bound = if worths.worth.is_empty() { u64::MAX } else { worths.bound };
    if worths.bound > least.unsigned_abs() && !worths.worth.is_empty() && stock.rules.plain() {
        let mut part = budget.part(budget.left() / if prove { PROVE } else { LOOK });
        let mut table = Table::default();
        if table::fill(&kind.grid, &items, &worths.worth, &mut table, &mut part).is_ok() {
            let sides = (&kind.grid, &table.value[..]);
            let best = Some(least.unsigned_abs());
            let mut seen = |tree: &Tree| {
                offer(tree);
            };
            let found = blocks::search(sides, (&items, &limits), &worths, best, &mut seen, &mut part);
            bound = bound.min(found.bound);
        }
        budget.join(&part)?;
    }
    look.most = look.most.min(i64::try_from(bound).unwrap_or(i64::MAX));
    Ok(look)
}

fn value(pattern: &Pattern, worth: &[i64]) -> i64 {
    pattern.counts.iter().zip(worth).map(|(&n, &worth)| i64::from(n) * worth).sum()
}
