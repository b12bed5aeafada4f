//! The layout of a collage sheet: cut on the printed lines, then pieces out of the printed panels.
//!
//! First the sheet comes apart into its panels; each panel then is one piece, or is cut or trimmed further. Pieces
//! never take part of two panels. Chosen exactly among the sizes that are tried: most cards, then fewest panels that
//! are cut again, then sizes nearest to those the maker prefers.
//!
//! Leaves out: panels that straight edge-to-edge cuts cannot part (they get no layout here), and spares and pins.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use cutting::steps::effort;
use cutting::tree::pieces;
use cutting::verify::{Demand, Kind, verify};
use cutting::{Axis, Budget, Placed, Tree};
use measure::{Length, Rect};

use super::answer::{Exist, Layout, LayoutGrade};
use super::grid::{Grid, MOST_STEPS};
use super::look::as_count;
use super::paper::{self, PaperKind};
use super::{checked, fit};
use crate::finding::{Finding, Severity, Subject};
use crate::model::{Collage, Material, Project, Range, Way};

/// Chosen: most sizes tried for a layer, and most ways to fill a panel that are kept.
const MOST_SIZES: usize = 12;
const MOST_FILLINGS: usize = 400;
/// Chosen: most states of the sharing of panels, so that a slip of the pen does not fill the memory.
const MOST_STATES: usize = 20_000;

/// The layout of a collage; `None`, with a finding, if its panels give no card.
pub(super) fn lay_out(
    project: &Project,
    pack: usize,
    collage: &Collage,
    budget: &mut Budget<'_>,
    findings: &mut Vec<Finding>,
) -> Option<Layout> {
    let paper = &project.packs[pack];
    let about = |code| Finding::new(Severity::Warning, Subject::Project, code).with("pack", paper.name.as_str());
    let usable = Rect::new(paper.unusable.left, paper.unusable.top, paper.usable());
    let panels: Vec<Rect> = collage.rects().into_iter().filter(|panel| usable.contains(*panel)).collect();
    let edges = |rect: &Rect| [rect.x, rect.y, rect.size.width, rect.size.height];
    let lengths = panels.iter().chain([&usable]).flat_map(edges).chain([project.mark.step()]);
    let grid = Grid::through(lengths)?;
    let longest = usable.size.width.max(usable.size.height);
    if panels.is_empty() || longest.ticks() / grid.step().ticks() > MOST_STEPS {
        return None;
    }
    let sheet = (grid.exact(usable.size.width)?, grid.exact(usable.size.height)?);
    let cells: Option<Vec<Cell>> = panels.iter().map(|panel| Cell::of(panel, usable, grid)).collect();
    let cells = cells?;
    if part(&cells, sheet, Axis::X).is_none() {
        findings.push(about("collage-not-straight").with("panels", as_count(panels.len())));
        return None;
    }
    let search = Search { project, grid, cells: &cells, kinds: kinds(project, pack, grid) };
    let Some(found) = search.best(budget) else {
        findings.push(about("collage-fits-no-recipe").with("panels", as_count(panels.len())));
        return None;
    };
    let tree = [Axis::X, Axis::Y]
        .into_iter()
        .filter_map(|first| part(&cells, sheet, first))
        .map(|tree| filled(&tree, &found.fillings))
        .min_by_key(|tree| {
            let work = effort(tree, sheet.0, sheet.1);
            (work.settings, work.cuts)
        })?;
    let layout = search.layout(pack, usable, panels, sheet, &found, tree);
    debug_assert!(layout.is_some(), "a collage layout is not what was asked for");
    if layout.is_none() {
        findings.push(Finding::new(Severity::Serious, Subject::Project, "internal-check"));
    }
    layout
}

/// A printed panel on the usable sheet, in steps.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Cell {
    x: u32,
    y: u32,
    width: u32,
    height: u32,
}

impl Cell {
    fn of(panel: &Rect, usable: Rect, grid: Grid) -> Option<Cell> {
        Some(Cell {
            x: grid.exact(panel.x - usable.x)?,
            y: grid.exact(panel.y - usable.y)?,
            width: grid.exact(panel.size.width)?,
            height: grid.exact(panel.size.height)?,
        })
    }

    /// Where it begins and ends along an axis.
    fn along(self, axis: Axis) -> (u32, u32) {
        match axis {
            Axis::X => (self.x, self.x + self.width),
            Axis::Y => (self.y, self.y + self.height),
        }
    }

    /// The same cell after so much was cut away before it.
    fn shifted(self, axis: Axis, by: u32) -> Cell {
        match axis {
            Axis::X => Cell { x: self.x - by, ..self },
            Axis::Y => Cell { y: self.y - by, ..self },
        }
    }
}

/// The cuts that part a sheet into its panels: a leaf names a panel. `None`: straight cuts cannot.
fn part(cells: &[Cell], sheet: (u32, u32), first: Axis) -> Option<Tree> {
    let named: Vec<(usize, Cell)> = cells.iter().copied().enumerate().collect();
    parted(&named, sheet, first)
}

fn parted(cells: &[(usize, Cell)], (width, height): (u32, u32), first: Axis) -> Option<Tree> {
    match cells {
        [] => return Some(Tree::Waste),
        [(kind, cell)] if (cell.width, cell.height) == (width, height) => {
            return Some(Tree::Piece { kind: *kind, width, height, turned: false });
        }
        _ => {}
    }
    for axis in [first, first.across()] {
        let side = axis.of(width, height);
        let mut lines: Vec<u32> = cells.iter().flat_map(|(_, cell)| <[u32; 2]>::from(cell.along(axis))).collect();
        lines.sort_unstable();
        let free = |&line: &u32| {
            let crossed = |(_, cell): &(usize, Cell)| cell.along(axis).0 < line && line < cell.along(axis).1;
            line > 0 && line < side && !cells.iter().any(crossed)
        };
        let Some(line) = lines.into_iter().find(free) else { continue };
        let (near, far): (Vec<_>, Vec<_>) = cells.iter().partition(|(_, cell)| cell.along(axis).1 <= line);
        let far: Vec<(usize, Cell)> = far.into_iter().map(|(kind, cell)| (kind, cell.shifted(axis, line))).collect();
        let (near_size, far_size) = match axis {
            Axis::X => ((line, height), (width - line, height)),
            Axis::Y => ((width, line), (width, height - line)),
        };
        let next = if axis == first { first } else { first.across() };
        let (one, other) = (parted(&near, near_size, next)?, parted(&far, far_size, next)?);
        return Some(Tree::Cut { axis, at: line, first: Box::new(one), second: Box::new(other) });
    }
    None
}

/// The panels' leaves replaced by how each panel is filled.
fn filled(tree: &Tree, fillings: &[Tree]) -> Tree {
    match tree {
        Tree::Piece { kind, .. } => fillings[*kind].clone(),
        Tree::Waste => Tree::Waste,
        Tree::Cut { axis, at, first, second } => Tree::Cut {
            axis: *axis,
            at: *at,
            first: Box::new(filled(first, fillings)),
            second: Box::new(filled(second, fillings)),
        },
    }
}

/// A patterned layer with the sides that look right, in steps.
#[derive(Debug, Clone)]
struct Layered {
    recipe: usize,
    layer: usize,
    wide: (u32, u32),
    high: (u32, u32),
    prefer: (u32, u32),
    turn: bool,
}

/// The patterned layers of the recipes that are made.
fn kinds(project: &Project, pack: usize, grid: Grid) -> Vec<Layered> {
    let used = project.packs[pack].designs.iter().filter(|design| design.sheets() > 0);
    let any_way = used.map(|design| design.face_up().way).all(|way| way == Way::Any);
    let mut kinds = Vec::new();
    for (recipe, made) in project.recipes.iter().enumerate().filter(|(_, made)| made.most != Some(0)) {
        for (layer, part) in made.layers.iter().enumerate() {
            let Material::Patterned { width, height, prefer, may_turn, .. } = &part.material else { continue };
            let room = fit::room(made, layer);
            let span = |range: &Range, room: Length| {
                let range = fit::bounded(part, range, room);
                (grid.ceil(range.least).max(1), grid.floor(range.most))
            };
            kinds.push(Layered {
                recipe,
                layer,
                wide: span(width, room.width),
                high: span(height, room.height),
                prefer: (grid.floor(prefer.width), grid.floor(prefer.height)),
                turn: *may_turn && any_way,
            });
        }
    }
    kinds
}

/// One layer at a size that is tried.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Sized {
    width: u32,
    height: u32,
    turn: bool,
    /// Steps away from the size the maker prefers.
    away: u32,
}

/// How many pieces of each layer.
type Numbers = Vec<u32>;

/// Numbers reached with the panels so far: panels cut again, the filling taken last, and the numbers before it.
type Round = BTreeMap<Numbers, (u32, Option<usize>, Numbers)>;

struct Search<'a> {
    project: &'a Project,
    grid: Grid,
    cells: &'a [Cell],
    kinds: Vec<Layered>,
}

/// More cards are better; then fewer panels cut again and fewer steps away from the preferred sizes.
type Rank = (u32, Reverse<(u32, u32)>);

/// What is cut from the panels.
#[derive(Debug, Clone)]
struct Found {
    /// How each panel is filled.
    fillings: Vec<Tree>,
    sizes: Vec<Sized>,
    recipe_counts: Vec<u32>,
}

impl Search<'_> {
    /// The best way to cut the panels: most cards, fewest panels cut again, sizes nearest to the preferred.
    fn best(&self, budget: &mut Budget<'_>) -> Option<Found> {
        if self.kinds.is_empty() {
            return None;
        }
        let choices: Vec<Vec<Sized>> = self.kinds.iter().map(|kind| self.sizes(kind)).collect();
        if choices.iter().any(Vec::is_empty) {
            return None;
        }
        let mut best: Option<(Rank, Found)> = None;
        let mut pick = vec![0_usize; choices.len()];
        loop {
            let sizes: Vec<Sized> = pick.iter().zip(&choices).map(|(&index, choices)| choices[index]).collect();
            let away: u32 = sizes.iter().map(|size| size.away).sum();
            if budget.spend(1).is_err() {
                break;
            }
            let least = best.as_ref().map_or(1, |((cards, _), _)| *cards);
            if let Some((cards, cut, found)) = self.with_sizes(&sizes, least, budget) {
                let rank = (cards, Reverse((cut, away)));
                if best.as_ref().is_none_or(|(old, _)| rank > *old) {
                    best = Some((rank, found));
                }
            }
            // The next combination, as an odometer turns.
            let Some(turned) = (0..pick.len()).find(|&at| pick[at] + 1 < choices[at].len()) else { break };
            pick[turned] += 1;
            pick[..turned].fill(0);
        }
        best.map(|(_, found)| found)
    }

    /// Sizes worth trying for a layer: the preferred one, the panels' own sides and whole parts of them, nearest first.
    fn sizes(&self, kind: &Layered) -> Vec<Sized> {
        let sides = |span: (u32, u32), prefer: u32, side: &dyn Fn(&Cell) -> u32| -> Vec<u32> {
            let mut sides = vec![prefer.clamp(span.0, span.1.max(span.0)), span.0, span.1];
            for cell in self.cells {
                let side = side(cell);
                sides.extend((1..=4).filter(|parts| side.is_multiple_of(*parts)).map(|parts| side / parts));
                sides.push(side.saturating_sub(prefer));
            }
            sides.retain(|&side| span.0 <= side && side <= span.1 && side > 0);
            sides.sort_unstable();
            sides.dedup();
            sides
        };
        let mut sizes = Vec::new();
        let across: &dyn Fn(&Cell) -> u32 = &|cell| cell.width;
        let down: &dyn Fn(&Cell) -> u32 = &|cell| cell.height;
        for &width in &sides(kind.wide, kind.prefer.0, across) {
            for &height in &sides(kind.high, kind.prefer.1, down) {
                let away = width.abs_diff(kind.prefer.0) + height.abs_diff(kind.prefer.1);
                sizes.push(Sized { width, height, turn: kind.turn, away });
            }
        }
        sizes.sort_by_key(|size| (size.away, size.width, size.height));
        sizes.truncate(MOST_SIZES);
        sizes
    }

    /// Most cards, at least so many, from pieces of these sizes: cards, panels cut again, and how.
    fn with_sizes(&self, sizes: &[Sized], least: u32, budget: &mut Budget<'_>) -> Option<(u32, u32, Found)> {
        let mut by_size: BTreeMap<(u32, u32), Vec<(Numbers, Tree)>> = BTreeMap::new();
        for cell in self.cells {
            by_size
                .entry((cell.width, cell.height))
                .or_insert_with(|| fillings(sizes, (cell.width, cell.height), &mut BTreeMap::new()));
        }
        let goal = self.project.goal.cards_per_sheet;
        let most = goal.unwrap_or_else(|| self.by_number(&by_size));
        for cards in (least.max(1)..=most).rev() {
            for mix in self.mixes(cards) {
                let wanted: Numbers = self.kinds.iter().map(|kind| mix[kind.recipe]).collect();
                budget.spend(1).ok()?;
                if let Some((cut, fillings)) = self.shared(&by_size, &wanted) {
                    return Some((cards, cut, Found { fillings, sizes: sizes.to_vec(), recipe_counts: mix }));
                }
            }
        }
        None
    }

    /// More cards than so many cannot be: every card takes a piece, and the panels give no more.
    fn by_number(&self, by_size: &BTreeMap<(u32, u32), Vec<(Numbers, Tree)>>) -> u32 {
        let largest = |cell: &Cell| {
            let most = |(numbers, _): &(Numbers, Tree)| numbers.iter().sum::<u32>();
            by_size.get(&(cell.width, cell.height)).and_then(|all| all.iter().map(most).max()).unwrap_or(0)
        };
        let layers = |recipe: usize| self.kinds.iter().filter(|kind| kind.recipe == recipe).count();
        let fewest = (0..self.project.recipes.len()).map(layers).filter(|&layers| layers > 0).min().unwrap_or(1);
        self.cells.iter().map(largest).sum::<u32>() / u32::try_from(fewest).unwrap_or(1)
    }

    /// The ways to make so many cards of the recipes, within their bounds.
    fn mixes(&self, cards: u32) -> Vec<Vec<u32>> {
        let made: Vec<usize> = (0..self.project.recipes.len())
            .filter(|&recipe| self.kinds.iter().any(|kind| kind.recipe == recipe))
            .collect();
        let mut mixes = vec![vec![0_u32; self.project.recipes.len()]];
        for (nth, &recipe) in made.iter().enumerate() {
            let bounds = &self.project.recipes[recipe];
            let mut next = Vec::new();
            for mix in &mixes {
                let open = cards - mix.iter().sum::<u32>();
                let least = if nth + 1 == made.len() { open } else { bounds.least };
                let most = open.min(bounds.most.unwrap_or(open));
                for number in least.max(bounds.least)..=most {
                    let mut more = mix.clone();
                    more[recipe] = number;
                    next.push(more);
                }
            }
            mixes = next;
            mixes.truncate(MOST_FILLINGS);
        }
        mixes
    }

    /// Share the panels out so that the wanted pieces come of them with as few panels cut again as can be.
    fn shared(
        &self,
        by_size: &BTreeMap<(u32, u32), Vec<(Numbers, Tree)>>,
        wanted: &Numbers,
    ) -> Option<(u32, Vec<Tree>)> {
        let states = wanted.iter().try_fold(1_usize, |states, &number| states.checked_mul(number as usize + 1))?;
        if states > MOST_STATES {
            return None;
        }
        let mut rounds: Vec<Round> = Vec::new();
        let start: Numbers = vec![0; wanted.len()];
        let mut reached: BTreeMap<Numbers, u32> = BTreeMap::from([(start, 0)]);
        for cell in self.cells {
            let fillings = &by_size[&(cell.width, cell.height)];
            let mut next: Round = BTreeMap::new();
            for (numbers, &cut) in &reached {
                let mut offer = |to: Numbers, cut: u32, filling: Option<usize>| {
                    let better = next.get(&to).is_none_or(|(old, ..)| cut < *old);
                    if better {
                        next.insert(to, (cut, filling, numbers.clone()));
                    }
                };
                offer(numbers.clone(), cut, None);
                for (index, (gives, tree)) in fillings.iter().enumerate() {
                    let more = |((have, give), most): ((&u32, &u32), &u32)| (have + give).min(*most);
                    let to: Numbers = numbers.iter().zip(gives).zip(wanted).map(more).collect();
                    offer(to, cut + u32::from(!matches!(tree, Tree::Piece { .. })), Some(index));
                }
            }
            reached = next.iter().map(|(numbers, (cut, ..))| (numbers.clone(), *cut)).collect();
            rounds.push(next);
        }
        let mut at = wanted.clone();
        let cut = *reached.get(&at)?;
        let mut taken: Vec<Option<usize>> = Vec::new();
        for round in rounds.iter().rev() {
            let (_, filling, before) = &round[&at];
            taken.push(*filling);
            at = before.clone();
        }
        taken.reverse();
        Some((cut, self.in_order(by_size, &taken, wanted)))
    }

    /// Fillings laid on the panels: whole panels first, equal ones side by side; what is over becomes waste.
    fn in_order(
        &self,
        by_size: &BTreeMap<(u32, u32), Vec<(Numbers, Tree)>>,
        taken: &[Option<usize>],
        wanted: &Numbers,
    ) -> Vec<Tree> {
        let mut trees = vec![Tree::Waste; self.cells.len()];
        for (size, fillings) in by_size {
            let mut places: Vec<usize> =
                (0..self.cells.len()).filter(|&at| (self.cells[at].width, self.cells[at].height) == *size).collect();
            let mut chosen: Vec<Option<usize>> = places.iter().map(|&at| taken[at]).collect();
            places.sort_by_key(|&at| (self.cells[at].y, self.cells[at].x));
            let cut = |filling: &Option<usize>| match filling {
                Some(index) => (matches!(fillings[*index].1, Tree::Cut { .. }), *index),
                None => (true, usize::MAX),
            };
            chosen.sort_by_key(cut);
            for (&at, filling) in places.iter().zip(&chosen) {
                trees[at] = filling.map_or(Tree::Waste, |index| fillings[index].1.clone());
            }
        }
        let mut left = wanted.clone();
        let mut order: Vec<usize> = (0..trees.len()).collect();
        order.sort_by_key(|&at| (self.cells[at].y, self.cells[at].x));
        for at in order {
            trees[at] = within(&trees[at], &mut left);
        }
        trees
    }

    /// The layout in the maker's terms; `None` if it is not what was asked for.
    fn layout(
        &self,
        pack: usize,
        usable: Rect,
        panels: Vec<Rect>,
        (width, height): (u32, u32),
        found: &Found,
        tree: Tree,
    ) -> Option<Layout> {
        let wanted = |kind: &Layered| found.recipe_counts[kind.recipe];
        let exact = |(kind, size): (&Layered, &Sized)| {
            let mut exact = Kind::exact(size.width, size.height, 0);
            (exact.count, exact.turn) = (wanted(kind)..=wanted(kind), size.turn);
            exact
        };
        let demand = Demand { kinds: self.kinds.iter().zip(&found.sizes).map(exact).collect(), pins: Vec::new() };
        verify(&tree, width, height, &demand).ok()?;
        let mut placed = pieces(&tree, width, height).ok()?;
        placed.sort_by_key(|piece| (piece.y, piece.x));
        let apart = |piece: &Placed| {
            self.cells.iter().any(|cell| {
                let (right, bottom) = (piece.x + piece.width, piece.y + piece.height);
                let (end, foot) = (cell.x + cell.width, cell.y + cell.height);
                cell.x <= piece.x && right <= end && cell.y <= piece.y && bottom <= foot
            })
        };
        if !placed.iter().all(apart) {
            return None;
        }
        let (cut_plan, cut_step) =
            checked::paper(self.project, &self.project.packs[pack], usable, self.grid.step(), &tree, 1)?;
        let square = |steps: u64| i128::from(steps) * i128::from(self.grid.step().ticks()).pow(2);
        let covered: u64 = placed.iter().map(|piece| u64::from(piece.width) * u64::from(piece.height)).sum();
        let area = u64::from(width) * u64::from(height);
        // What the pieces could cover at most, each as large as it may be.
        let largest = |kind: &Layered| u64::from(wanted(kind)) * u64::from(kind.wide.1) * u64::from(kind.high.1);
        let bound = area.saturating_sub(self.kinds.iter().map(largest).sum());
        let waste = area - covered;
        let kinds: Vec<PaperKind> =
            self.kinds.iter().map(|kind| PaperKind { recipe: kind.recipe, layer: kind.layer }).collect();
        Some(Layout {
            batch: 0,
            pack,
            panels,
            step: self.grid.step(),
            usable,
            effort: effort(&tree, width, height),
            pieces: paper::numbered(&placed, &kinds, &found.recipe_counts, usable, self.grid),
            tree,
            cut_plan,
            cut_step,
            waste: square(waste),
            recipe_counts: found.recipe_counts.clone(),
            sheets: Vec::new(),
            grade: if waste <= bound { LayoutGrade::ProvenBest } else { LayoutGrade::BestFound { bound } },
            exist: Exist::AtLeast(1),
            alternatives: Vec::new(),
            equals: Vec::new(),
            gain: None,
        })
    }
}

/// The tree with pieces beyond what is wanted turned into waste.
fn within(tree: &Tree, left: &mut Numbers) -> Tree {
    match tree {
        Tree::Waste => Tree::Waste,
        Tree::Piece { kind, .. } => match left[*kind].checked_sub(1) {
            Some(fewer) => {
                left[*kind] = fewer;
                tree.clone()
            }
            None => Tree::Waste,
        },
        Tree::Cut { axis, at, first, second } => {
            let (first, second) = (within(first, left), within(second, left));
            match (&first, &second) {
                (Tree::Waste, Tree::Waste) => Tree::Waste,
                _ => Tree::Cut { axis: *axis, at: *at, first: Box::new(first), second: Box::new(second) },
            }
        }
    }
}

/// The ways to fill a rectangle of which none gives as much of everything as another, each with its cuts.
fn fillings(
    sizes: &[Sized],
    (width, height): (u32, u32),
    memo: &mut BTreeMap<(u32, u32), Vec<(Numbers, Tree)>>,
) -> Vec<(Numbers, Tree)> {
    if let Some(known) = memo.get(&(width, height)) {
        return known.clone();
    }
    let mut found: Vec<(Numbers, Tree)> = vec![(vec![0; sizes.len()], Tree::Waste)];
    let mut lines = [Vec::new(), Vec::new()];
    for (kind, size) in sizes.iter().enumerate() {
        for (w, h, turned) in [(size.width, size.height, false), (size.height, size.width, true)] {
            if turned && (!size.turn || size.width == size.height) {
                continue;
            }
            if (w, h) == (width, height) {
                let mut numbers = vec![0; sizes.len()];
                numbers[kind] = 1;
                offer(&mut found, numbers, Tree::Piece { kind, width: w, height: h, turned });
            }
            if w <= width && h <= height {
                lines[0].push(w);
                lines[1].push(h);
            }
        }
    }
    for (axis, lines) in [Axis::X, Axis::Y].into_iter().zip(&mut lines) {
        lines.sort_unstable();
        lines.dedup();
        // A piece, or a row of pieces, first; the rest after it is filled in turn.
        for &line in lines.iter().filter(|&&line| line < axis.of(width, height)) {
            let (near, far) = match axis {
                Axis::X => ((line, height), (width - line, height)),
                Axis::Y => ((width, line), (width, height - line)),
            };
            let (near, far) = (fillings(sizes, near, memo), fillings(sizes, far, memo));
            for (first, one) in &near {
                for (second, other) in &far {
                    let numbers: Numbers = first.iter().zip(second).map(|(a, b)| a + b).collect();
                    if numbers.iter().all(|&number| number == 0) {
                        continue;
                    }
                    let tree =
                        Tree::Cut { axis, at: line, first: Box::new(one.clone()), second: Box::new(other.clone()) };
                    offer(&mut found, numbers, tree);
                }
            }
        }
    }
    found.truncate(MOST_FILLINGS);
    memo.insert((width, height), found.clone());
    found
}

/// Keep a filling if no other gives as much; drop those that it beats.
fn offer(found: &mut Vec<(Numbers, Tree)>, numbers: Numbers, tree: Tree) {
    let covers = |one: &Numbers, other: &Numbers| one.iter().zip(other).all(|(a, b)| a >= b);
    if found.iter().any(|(known, _)| covers(known, &numbers)) {
        return;
    }
    // A whole piece stays: it is no cut at all.
    found.retain(|(known, tree)| matches!(tree, Tree::Piece { .. }) || !covers(&numbers, known));
    found.push((numbers, tree));
}
