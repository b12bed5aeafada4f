//! Pieces whose sizes lie in ranges: which cut trees use the whole sheet.
//!
//! The question: given a sheet, kinds of pieces with ranges, and recipes (how many pieces of each kind a
//! card takes) with bounds, which guillotine trees make the cards and waste least?
//!
//! | way | when | complete |
//! |---|---|---|
//! | `sizes`: choices of one size per kind, closed blocks for each | every kind has one size | yes |
//! | `shapes`: boxes of intervals for every sub-multiset | some kinds have free sizes | yes, while the table holds |
//! | `pinned`: the same tables, worked outwards from the pins | pieces that must lie just here | yes |
//! | `strips`: exact strips put side by side | too many pieces to close | no: finds, never proves |
//! | `packing`: boxes of choices halved, smallest bounding rectangles | nothing uses the whole sheet | yes for one size per kind |
//!
//! [`nearest`] answers the other way round: which smallest change makes a question work; [`shift`] moves one cut of an
//! answer.
//!
//! Left out on purpose: cards, money, prints; which way the branches of a tree lie.

#![allow(
    clippy::cast_possible_truncation,
    clippy::type_complexity,
    reason = "sides fit 16 bits and counts fit a byte, both checked by Grid::of; tuples here live for one function"
)]

mod greedy;
mod grid;
mod instance;
pub mod nearest;
mod packing;
mod pinned;
mod quick;
mod rank;
mod shapes;
pub mod shift;
mod sizes;
mod strips;
mod wishes;

pub use instance::{Answer, Count, Instance, Kind, Layout, Pin, Recipe, Refusal, Span, Why, Wish};

use crate::{Budget, Exhausted, Outcome, Tree};
use grid::{Counts, Grid};
use packing::Bounds;
use pinned::{Fillings, Pinned};
use shapes::{Reach, Shapes, Taste};
use sizes::{Blocks, Choices, Go, Task};
use wishes::Found;

/// Pairs of sub-multisets up to which a table is closed whole.
const MOST_PAIRS: u64 = 6_000_000;
/// Choices of sizes that are drawn out and compared by the wishes.
const MOST_DRAWN: usize = 48;
/// Choices of sizes from which on it is worth asking first whether free sizes could do it.
const MANY_CHOICES: u64 = 1_000_000;
/// Trees drawn out of a free table.
const FREE_DRAWS: u64 = 24;

/// Answers with the layouts that waste least, and how sure that is.
///
/// # Shape
/// All sizes in steps of the caller's grid. Layouts are sorted by waste, then by the instance's wishes; they
/// differ in sizes or in settings. Same instance, same budget in nodes: same answer.
///
/// # Errors
/// [`Refusal`] if the instance cannot be asked as it stands.
pub fn solve(instance: &Instance, budget: &mut Budget<'_>) -> Result<Answer, Refusal> {
    let before = budget.spent();
    let mut answer = match Grid::of(instance)? {
        Err(why) => nothing(Outcome::Impossible { why }),
        Ok(grid) => Solver { instance, grid: &grid, found: Vec::new() }.solve(budget),
    };
    answer.nodes = budget.spent() - before;
    Ok(answer)
}

fn nothing(outcome: Outcome<Why>) -> Answer {
    Answer { outcome, layouts: Vec::new(), exist: Count::Exactly(0), nodes: 0 }
}

/// Whether whole-sheet trees exist.
enum Whole {
    /// Found, and how many choices of sizes there are.
    Yes(Count),
    /// None exists; proven.
    No,
    /// None found.
    Unknown,
}

struct Solver<'a> {
    instance: &'a Instance,
    grid: &'a Grid,
    found: Vec<Found>,
}

impl Solver<'_> {
    fn solve(mut self, budget: &mut Budget<'_>) -> Answer {
        let sheet = u64::from(self.instance.width) * u64::from(self.instance.height);
        let square = u64::from(self.grid.scale) * u64::from(self.grid.scale);
        // What lies beyond the last full grid unit is lost whatever is done.
        let lost = sheet - self.grid.area() * square;
        let whole = self.whole(budget);
        if let Whole::Yes(exist) = whole {
            let layouts = wishes::best(self.instance, self.grid, self.found);
            return Answer { outcome: Outcome::Proven, layouts, exist, nodes: 0 };
        }
        let ceiling = match whole {
            Whole::No => self.grid.area() - 1,
            _ => self.grid.area(),
        };
        let most = self.grid.mixes.iter().map(|mix| self.grid.most_area_of(mix)).max().unwrap_or(0);
        let ceiling = ceiling.min(most);
        if !self.grid.pins.is_empty() {
            let bound = lost + (self.grid.area() - ceiling) * square;
            return self.around_pins(bound, budget);
        }
        let packing = packing::least_waste(self.grid, ceiling, self.instance.alternatives.max(1), budget);
        let closed = packing.closed && self.grid.all_mixes;
        if packing.best.is_empty() {
            // Where the smallest sizes fit nowhere, no other sizes do; free sizes included.
            return nothing(if closed { Outcome::Impossible { why: Why::NoTree } } else { Outcome::Unfinished });
        }
        let uniform = self.all_one_size();
        self.found = (packing.best.into_iter())
            .flat_map(|p| p.trees.into_iter().map(move |tree| Found { mix: p.mix, tree }))
            .collect();
        if !uniform {
            wishes::grow(self.grid, &mut self.found);
        }
        let layouts = wishes::best(self.instance, self.grid, self.found);
        let waste = layouts.first().map_or(sheet, |layout| layout.waste);
        let bound_area = if closed && uniform { packing.most_area } else { ceiling };
        let bound = lost + (self.grid.area() - bound_area.min(self.grid.area())) * square;
        let outcome = if bound >= waste { Outcome::Proven } else { Outcome::Best { bound } };
        let exist = Count::AtLeast(layouts.len() as u64);
        Answer { outcome, layouts, exist, nodes: 0 }
    }

    /// Pins, and nothing uses the whole sheet: sizes nearest to the preferred that fit, then the smallest.
    fn around_pins(mut self, bound: u64, budget: &mut Budget<'_>) -> Answer {
        let grid = self.grid;
        let mut smallest_tried = true;
        for eighths in [8u32, 6, 4, 2, 0] {
            // From the preferred size down to the smallest.
            let side = |lo: u32, prefer: u32, stride: u32| {
                let v = lo + prefer.saturating_sub(lo) * eighths / 8;
                (v / stride * stride).max(lo)
            };
            let sizes: Vec<(u32, u32)> = grid
                .kinds
                .iter()
                .map(|k| {
                    let w = side(k.width.0, k.prefer.0.min(k.width.1), k.stride);
                    (w, side(k.height.0, k.prefer.1.min(k.height.1), k.stride))
                })
                .collect();
            for (number, mix) in grid.mixes.iter().enumerate() {
                let Ok(bounds) = packing::bounds(grid, &mix.pieces, &sizes, grid.area(), budget) else {
                    smallest_tried = false;
                    continue;
                };
                let most = Counts::of(&mix.pieces);
                match Pinned::of(grid, most, &mut Packed(&bounds)).trees(budget) {
                    Ok(trees) => {
                        let own = trees.into_iter().filter(|(mix, _)| *mix == number);
                        self.found.extend(own.map(|(mix, tree)| Found { mix, tree }));
                    }
                    Err(Exhausted) => smallest_tried = false,
                }
            }
            if !self.found.is_empty() {
                break;
            }
        }
        if self.found.is_empty() {
            // A pinned piece keeps its size; the smallest of all others fit nowhere around it.
            let proven = smallest_tried && grid.all_mixes;
            return nothing(if proven { Outcome::Impossible { why: Why::NoTree } } else { Outcome::Unfinished });
        }
        let layouts = wishes::best(self.instance, grid, self.found);
        let waste = layouts.first().map_or(0, |layout| layout.waste);
        let outcome = if bound >= waste { Outcome::Proven } else { Outcome::Best { bound } };
        let exist = Count::AtLeast(layouts.len() as u64);
        Answer { outcome, layouts, exist, nodes: 0 }
    }

    fn used(&self, kind: usize) -> bool {
        self.grid.mixes.iter().any(|mix| mix.pieces[kind] > 0)
    }

    fn all_one_size(&self) -> bool {
        (0..self.grid.kinds.len()).all(|k| {
            let kind = &self.grid.kinds[k];
            kind.uniform || !self.used(k) || self.grid.mixes.iter().all(|mix| mix.pieces[k] <= 1)
        })
    }

    fn whole(&mut self, budget: &mut Budget<'_>) -> Whole {
        let area = self.grid.area();
        if self.grid.mixes.iter().all(|mix| self.grid.most_area_of(mix) < area) && self.grid.all_mixes {
            return Whole::No;
        }
        if self.all_one_size() {
            // What the walk leaves over goes to the search for least waste.
            let mut part = budget.part(budget.left() / 4 * 3);
            let whole = self.whole_of_one_size(&mut part);
            let _ = budget.join(&part);
            return whole;
        }
        // Sizes shared by all copies are free sizes too, and the tidiest: look there first, but not for ever.
        let mut first = budget.part((budget.left() / 4).min(400_000));
        let tidy = self.whole_of_one_size(&mut first);
        if budget.spend(first.spent()).is_err() {
            return if self.found.is_empty() { Whole::Unknown } else { Whole::Yes(Count::AtLeast(1)) };
        }
        // Once something uses the whole sheet, free sizes only add variety.
        let some = !self.found.is_empty();
        let mut second = budget.part(if some { 1_000_000 } else { u64::MAX });
        let free = if some { self.whole_of_free_sizes(&mut second) } else { self.whole_of_free_sizes(budget) };
        let free = free.unwrap_or(Whole::Unknown);
        if some && budget.spend(second.spent()).is_err() {
            return Whole::Yes(Count::AtLeast(self.found.len() as u64));
        }
        match (tidy, free) {
            (_, Whole::Yes(_)) | (Whole::Yes(_), _) => Whole::Yes(Count::AtLeast(self.found.len() as u64)),
            (_, Whole::No) => Whole::No,
            _ => Whole::Unknown,
        }
    }

    /// One size per kind: every choice of sizes is tried.
    fn whole_of_one_size(&mut self, budget: &mut Budget<'_>) -> Whole {
        let grid = self.grid;
        let most = Counts::of(&grid.most());
        let mut blocks = Blocks::default();
        let mut fitting: Vec<Vec<(u32, u32)>> = Vec::new();
        let choices = Choices::of(grid);
        if choices.most() > MANY_CHOICES && self.ruled_out(budget) {
            return Whole::No;
        }
        let walk = choices.each(budget, &mut |sizes, mix, budget| {
            let most = Counts::of(&grid.mixes[mix].pieces);
            let task = Task { grid, sizes, most };
            let tiles = if grid.pins.is_empty() {
                blocks.tiles(&task, budget)?
            } else {
                blocks.close_fully(&task, budget)?;
                !Pinned::of(grid, most, &mut Closed(&blocks)).trees(budget)?.is_empty()
            };
            if tiles {
                fitting.push(sizes.to_vec());
                budget.tell(Some(0), Some(0));
            }
            Ok(Go::On)
        });
        fitting.sort();
        fitting.dedup();
        let number = fitting.len() as u64;
        if number == 0 {
            return if walk.is_ok() && grid.all_mixes { Whole::No } else { Whole::Unknown };
        }
        let promise = |sizes: &Vec<(u32, u32)>| wishes::promise(grid, sizes);
        fitting.sort_by_cached_key(promise);
        fitting.truncate(MOST_DRAWN);
        // Drawing has a small budget of its own: an answer that is already known must not be lost to it.
        let mut drawing = Budget::nodes(2_000_000);
        for sizes in &fitting {
            let task = Task { grid, sizes, most };
            let closed = blocks.close_fully(&task, &mut drawing);
            if !grid.pins.is_empty() {
                if let Ok(trees) = Pinned::of(grid, most, &mut Closed(&blocks)).trees(&mut Budget::unlimited()) {
                    self.found.extend(trees.into_iter().map(|(mix, tree)| Found { mix, tree }));
                }
                continue;
            }
            let Ok(wholes) = closed else {
                // Too many ways to list: the first one found must do.
                if blocks.tiles(&task, &mut Budget::unlimited()).unwrap_or(false) {
                    self.keep_first(&blocks);
                }
                continue;
            };
            for whole in wholes {
                let counts = blocks.blocks[whole as usize].counts;
                let Some(mix) = grid.mixes.iter().position(|m| Counts::of(&m.pieces) == counts) else { continue };
                let trees = rank::best_trees(&blocks, whole, 3);
                self.found.extend(trees.into_iter().map(|(_, tree)| Found { mix, tree }));
            }
        }
        Whole::Yes(if walk.is_ok() && grid.all_mixes { Count::Exactly(number) } else { Count::AtLeast(number) })
    }

    /// True if not even free sizes could use the whole sheet; false if they could, or if it is not known.
    fn ruled_out(&self, budget: &mut Budget<'_>) -> bool {
        let grid = self.grid;
        let most = grid.most();
        let reach = Reach { block: block_size(&most), boxes: usize::MAX };
        if !grid.all_mixes || !grid.pins.is_empty() || reach.block < most.iter().sum() {
            return false;
        }
        let mut part = budget.part(budget.left() / 4);
        let closed = Shapes::close(grid, &vec![None; grid.kinds.len()], reach, &mut part);
        let _ = budget.join(&part);
        matches!(closed, Ok(Some(shapes)) if shapes.complete && !self.holds_whole(&shapes))
    }

    fn keep_first(&mut self, blocks: &Blocks) {
        let grid = self.grid;
        let whole = (0..blocks.blocks.len()).rev().find(|&i| {
            let block = blocks.blocks[i];
            block.w == grid.width
                && block.h == grid.height
                && grid.mixes.iter().any(|m| Counts::of(&m.pieces) == block.counts)
        });
        if let Some(whole) = whole {
            let counts = blocks.blocks[whole].counts;
            if let Some(mix) = grid.mixes.iter().position(|m| Counts::of(&m.pieces) == counts) {
                self.found.push(Found { mix, tree: blocks.tree(whole as u32) });
            }
        }
    }

    /// Some kinds with free sizes: choices for the others, a table of boxes for each.
    fn whole_of_free_sizes(&mut self, budget: &mut Budget<'_>) -> Result<Whole, Exhausted> {
        let grid = self.grid;
        let free = vec![None; grid.kinds.len()];
        let fixed: Vec<usize> =
            (0..grid.kinds.len()).filter(|&k| grid.kinds[k].uniform && self.used(k) && grid.most()[k] > 1).collect();
        let most = grid.most();
        let whole = Reach { block: block_size(&most), boxes: usize::MAX };
        if fixed.is_empty() && grid.pins.is_empty() && whole.block < most.iter().sum() {
            // Too many to close: look for strips of ever larger blocks first.
            for (block, boxes) in [(6, 24), (8, 40), (10, 60), (12, 90)] {
                let mut stage = budget.part(6_000_000);
                let closed = Shapes::close(grid, &free, Reach { block, boxes }, &mut stage);
                let found = match closed {
                    Ok(Some(shapes)) => self.out_of(&shapes, &mut stage).ok(),
                    _ => None,
                };
                budget.spend(stage.spent())?;
                if let Some(Whole::Yes(count)) = found {
                    return Ok(Whole::Yes(count));
                }
            }
        }
        let Some(relaxed) = Shapes::close(grid, &free, whole, budget)? else { return Ok(Whole::Unknown) };
        if fixed.is_empty() {
            return self.out_of(&relaxed, budget);
        }
        if relaxed.complete && !self.holds_whole(&relaxed) {
            // Not even with every size free.
            return Ok(if grid.all_mixes { Whole::No } else { Whole::Unknown });
        }
        drop(relaxed);
        self.by_choices(&fixed, whole, budget)
    }

    fn holds_whole(&self, shapes: &Shapes<'_>) -> bool {
        let grid = self.grid;
        grid.mixes.iter().any(|mix| shapes.tiles(shapes.index(&mix.pieces), grid.width, grid.height))
    }

    /// Tries each choice of sizes for the kinds that have one size, nearest to the preferred first.
    fn by_choices(&mut self, fixed: &[usize], reach: Reach, budget: &mut Budget<'_>) -> Result<Whole, Exhausted> {
        let grid = self.grid;
        let mut choices: Vec<(u64, Vec<Option<(u32, u32)>>)> = vec![(0, vec![None; grid.kinds.len()])];
        for &k in fixed {
            let kind = &grid.kinds[k];
            let sizes = kind.sizes();
            if choices.len().saturating_mul(sizes.len()) > 500_000 {
                return Ok(Whole::Unknown);
            }
            choices = choices
                .into_iter()
                .flat_map(|(off, choice)| {
                    sizes.iter().map(move |&(w, h)| {
                        let mut choice = choice.clone();
                        choice[k] = Some((w, h));
                        (off + kind.off(w, h), choice)
                    })
                })
                .collect();
        }
        choices.sort();
        let mut complete = true;
        for (_, choice) in &choices {
            let Some(shapes) = Shapes::close(grid, choice, reach, budget)? else { return Ok(Whole::Unknown) };
            complete &= shapes.complete;
            if let Whole::Yes(count) = self.out_of(&shapes, budget)? {
                return Ok(Whole::Yes(count));
            }
        }
        Ok(if complete && grid.all_mixes { Whole::No } else { Whole::Unknown })
    }

    /// Draws trees out of a table.
    fn out_of(&mut self, shapes: &Shapes<'_>, budget: &mut Budget<'_>) -> Result<Whole, Exhausted> {
        let grid = self.grid;
        if !grid.pins.is_empty() {
            let trees = Pinned::of(grid, Counts::of(&grid.most()), &mut Boxed(shapes)).trees(budget)?;
            if trees.is_empty() {
                return Ok(if shapes.complete && grid.all_mixes { Whole::No } else { Whole::Unknown });
            }
            self.found.extend(trees.into_iter().map(|(mix, tree)| Found { mix, tree }));
            return Ok(Whole::Yes(Count::AtLeast(self.found.len() as u64)));
        }
        let mut any = false;
        for (number, mix) in grid.mixes.iter().enumerate() {
            let index = shapes.index(&mix.pieces);
            if !shapes.tiles(index, grid.width, grid.height) {
                continue;
            }
            for seed in 0..FREE_DRAWS {
                if let Some(tree) = shapes.tree(index, grid.width, grid.height, &mut Taste::seeded(seed)) {
                    any = true;
                    self.found.push(Found { mix: number, tree });
                }
            }
        }
        if any {
            return Ok(Whole::Yes(Count::AtLeast(self.found.len() as u64)));
        }
        if shapes.complete {
            return Ok(if grid.all_mixes { Whole::No } else { Whole::Unknown });
        }
        if let Some((mix, tree)) = strips::whole(grid, shapes, budget)? {
            self.found.push(Found { mix, tree });
            return Ok(Whole::Yes(Count::AtLeast(1)));
        }
        Ok(Whole::Unknown)
    }
}

/// Fillings out of closed blocks of one choice of sizes.
struct Closed<'b>(&'b Blocks);

impl Fillings for Closed<'_> {
    fn of(&mut self, w: u32, h: u32) -> Vec<Counts> {
        self.0.sized(w, h).map(|n| self.0.blocks[n as usize].counts).collect()
    }

    fn tree(&mut self, counts: Counts, w: u32, h: u32) -> Option<Tree> {
        self.0.sized(w, h).find(|&n| self.0.blocks[n as usize].counts == counts).map(|n| self.0.tree(n))
    }
}

/// Fillings out of a table of boxes.
struct Boxed<'b, 'g>(&'b Shapes<'g>);

impl Fillings for Boxed<'_, '_> {
    fn of(&mut self, w: u32, h: u32) -> Vec<Counts> {
        (1..self.0.len()).filter(|&i| self.0.tiles(i, w, h)).map(|i| self.0.counts(i)).collect()
    }

    fn tree(&mut self, counts: Counts, w: u32, h: u32) -> Option<Tree> {
        let index = (1..self.0.len()).find(|&i| self.0.counts(i) == counts)?;
        self.0.tree(index, w, h, &mut Taste::seeded(0))
    }
}

/// Fillings with waste, out of smallest bounding rectangles.
struct Packed<'b>(&'b Bounds);

impl Fillings for Packed<'_> {
    fn of(&mut self, w: u32, h: u32) -> Vec<Counts> {
        self.0.within(w, h)
    }

    fn tree(&mut self, counts: Counts, w: u32, h: u32) -> Option<Tree> {
        self.0.tree(counts, w, h)
    }
}

/// How many pieces a block may have so that the table stays within [`MOST_PAIRS`].
fn block_size(most: &[u32]) -> u32 {
    // Pairs of sub-multisets by the number of pieces of the larger: a product of small polynomials.
    let mut pairs: Vec<u64> = vec![1];
    for &n in most {
        let mut next = vec![0u64; pairs.len() + n as usize];
        for (total, &p) in pairs.iter().enumerate() {
            for c in 0..=n as usize {
                next[total + c] = next[total + c].saturating_add(p.saturating_mul(c as u64 + 1));
            }
        }
        pairs = next;
    }
    let mut sum = 0u64;
    for (total, &p) in pairs.iter().enumerate() {
        sum = sum.saturating_add(p);
        if sum > MOST_PAIRS {
            return (total as u32).saturating_sub(1).max(2);
        }
    }
    pairs.len() as u32
}
