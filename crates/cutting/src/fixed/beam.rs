//! All pieces that are left, one after another onto sheet after sheet: a search that keeps the best few beginnings.
//!
//! A sheet is cut into strips, a strip into rows, a row into columns, a column into pieces that are trimmed to
//! size. Each beginning is judged by what its sheets cost so far for the pieces they hold. A heuristic, no proof.
//!
//! # Source
//! Anytime tree search for cutting with a growing beam, guided by waste and the size of the pieces already cut:
//! Libralesso, Fontan 2020, arXiv 2004.02603 (from memory).

use super::Item;
use super::front::{Front, Into, front_key, fronts, lie, mix};
use super::pattern::Pattern;
use super::stock::{Stock, stack};
use super::table::set;
use crate::{Axis, Budget, Exhausted, Tree};

/// How beginnings with equally many pieces are compared; less is better.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Guide {
    /// Share of waste, over the mean size of the pieces.
    WasteBySize,
    /// Cost for the area of the pieces.
    Cost,
    /// The same, over the square root of their mean size.
    CostByRoot,
    /// The same, over their mean size.
    CostBySize,
}

impl Guide {
    pub(super) const ALL: [Guide; 4] = [Guide::WasteBySize, Guide::CostByRoot, Guide::Cost, Guide::CostBySize];
}

/// What is to be cut, from what, and below which cost.
#[derive(Debug, Clone, Copy)]
pub(super) struct Task<'a> {
    /// Pieces left of each item.
    pub(super) left: &'a [u32],
    /// Sheets left of each kind; `u32::MAX`: any number.
    pub(super) copies: &'a [u32],
    /// Only plans that cost less are of use.
    pub(super) below: u64,
    pub(super) width: usize,
    pub(super) guide: Guide,
}

#[derive(Debug, Clone, Copy)]
struct Move {
    item: usize,
    turned: bool,
    into: Into,
    front: Front,
}

/// One step of the way to a beginning: where it came from and what was added.
struct Link {
    before: usize,
    step: Move,
}

#[derive(Clone)]
struct Node {
    link: usize,
    left: Vec<u32>,
    copies: Vec<u32>,
    front: Option<Front>,
    /// Full cost of all sheets begun.
    cost: u64,
    /// Cost of the sheets before the last; worth of all pieces.
    closed: f64,
    worth: f64,
    key: u64,
}

struct Child {
    score: f64,
    key: u64,
    node: usize,
    step: Move,
}

struct Beam<'a> {
    stock: &'a Stock<'a>,
    task: Task<'a>,
    /// What each item is worth: its area, or its value where only one sheet is cut.
    worth: Vec<f64>,
    links: Vec<Link>,
    /// Cost of each sheet kind, a little above 0 at least.
    cost: Vec<f64>,
    /// Least cost for what pieces are worth.
    rate: f64,
    placed: f64,
}

impl<'a> Beam<'a> {
    fn of(stock: &'a Stock<'a>, task: Task<'a>, worth: Vec<f64>, rate: f64) -> Beam<'a> {
        let dearest = stock.sheets.iter().map(|s| s.cost).max().unwrap_or(1).max(1);
        let cost = stock.sheets.iter().map(|s| float(s.cost).max(float(dearest) * 1e-6)).collect();
        Beam { stock, task, worth, links: Vec::new(), cost, rate, placed: 0.0 }
    }

    fn start(&self) -> Vec<Node> {
        vec![Node {
            link: usize::MAX,
            left: self.task.left.to_vec(),
            copies: self.task.copies.to_vec(),
            front: None,
            cost: 0,
            closed: 0.0,
            worth: 0.0,
            key: 0,
        }]
    }

    /// The best nodes with one piece more.
    fn step(&mut self, nodes: &[Node], budget: &mut Budget<'_>) -> Result<Vec<Node>, Exhausted> {
        self.placed += 1.0;
        let mut children = Vec::new();
        for (n, node) in nodes.iter().enumerate() {
            let before = children.len();
            self.children(n, node, &mut children);
            budget.spend((children.len() - before + 1) as u64)?;
        }
        Ok(self.best(nodes, children))
    }
}

/// Cut all that is left, if the beam finds a plan below the task's cost.
///
/// # Errors
/// [`Exhausted`] before a plan was found.
pub(super) fn search(
    stock: &Stock<'_>,
    task: Task<'_>,
    budget: &mut Budget<'_>,
) -> Result<Option<Vec<Pattern>>, Exhausted> {
    let mut beam = Beam::of(stock, task, stock.items.iter().map(|&item| float_area(item)).collect(), f64::INFINITY);
    let usable = (0..stock.sheets.len()).filter(|&s| task.copies[s] > 0);
    beam.rate = usable.map(|s| beam.cost[s] / sheet_area(stock, s)).fold(f64::INFINITY, f64::min);
    let mut nodes = beam.start();
    for _ in 0..task.left.iter().sum::<u32>() {
        nodes = beam.step(&nodes, budget)?;
        if nodes.is_empty() {
            return Ok(None);
        }
    }
    let best = nodes.iter().min_by_key(|node| node.cost);
    Ok(best.filter(|node| node.cost < task.below).map(|node| beam.patterns(node.link)))
}

/// Cut the one sheet of the stock once, into pieces that are worth much; `bound` is about the most there is.
///
/// # Errors
/// [`Exhausted`] before the sheet was full.
pub(super) fn most_worth(
    stock: &Stock<'_>,
    task: Task<'_>,
    (worth, bound): (&[i64], u64),
    budget: &mut Budget<'_>,
) -> Result<Option<Tree>, Exhausted> {
    // Without worth nothing can be compared; the sheet's cost stands for the sheet.
    let worth = worth.iter().map(|&w| float(w.unsigned_abs()).max(1e-3)).collect();
    let mut beam = Beam::of(stock, task, worth, 0.0);
    beam.rate = beam.cost[0] / float(bound.max(1));
    let mut nodes = beam.start();
    let mut best: Option<(f64, usize)> = None;
    loop {
        nodes = beam.step(&nodes, budget)?;
        let Some(top) = nodes.iter().max_by(|a, b| a.worth.total_cmp(&b.worth)) else { break };
        if best.is_none_or(|(worth, _)| top.worth > worth) {
            best = Some((top.worth, top.link));
        }
    }
    Ok(best.and_then(|(_, link)| beam.patterns(link).into_iter().next()).map(|pattern| pattern.tree))
}

impl Beam<'_> {
    /// All ways to add one piece; a new sheet is begun only where the last has no room for any piece.
    fn children(&self, n: usize, node: &Node, children: &mut Vec<Child>) {
        let before = children.len();
        if let Some(front) = node.front {
            let sheet = &self.stock.sheets[front.sheet];
            let (u, v) = lie(front.axis, (sheet.width, sheet.height));
            for (item, w, h, turned) in self.wanted(node, (sheet.width, sheet.height)) {
                for (into, front) in fronts(front, lie(front.axis, (w, h)), (u, v), self.stock.rules) {
                    self.child(n, node, Move { item, turned, into, front }, children);
                }
            }
        }
        if children.len() > before {
            return;
        }
        for s in (0..self.stock.sheets.len()).filter(|&s| node.copies[s] > 0) {
            let sheet = &self.stock.sheets[s];
            for (item, w, h, turned) in self.wanted(node, (sheet.width, sheet.height)) {
                for axis in [Axis::X, Axis::Y] {
                    let (u, v) = lie(axis, (w, h));
                    let front = Front { sheet: s, axis, u1: 0, u2: u, v1: 0, v2: v, c1: 0, c2: u, top: v };
                    self.child(n, node, Move { item, turned, into: Into::Sheet, front }, children);
                }
            }
        }
    }

    /// The ways each piece that is left may lie on a sheet.
    fn wanted(&self, node: &Node, sheet: (u32, u32)) -> impl Iterator<Item = (usize, u32, u32, bool)> {
        let wanted = self.stock.items.iter().enumerate().filter(|&(k, _)| node.left[k] > 0);
        wanted.flat_map(move |(k, item)| item.ways(sheet.0, sheet.1).map(move |(w, h, turned)| (k, w, h, turned)))
    }

    fn child(&self, n: usize, node: &Node, step: Move, children: &mut Vec<Child>) {
        let cost = node.cost + if step.into == Into::Sheet { self.stock.sheets[step.front.sheet].cost } else { 0 };
        if cost >= self.task.below {
            return;
        }
        let worth = node.worth + self.worth[step.item];
        let spent = self.closed(node, step) + self.share(step.front);
        let mean = worth / self.placed;
        let score = match self.task.guide {
            Guide::WasteBySize => (1.1 - worth * self.rate / spent) / mean,
            Guide::Cost => spent / worth,
            Guide::CostByRoot => spent / worth / mean.sqrt(),
            Guide::CostBySize => spent / worth / mean,
        };
        let key = mark(node.key, step.item).wrapping_mul(3) ^ front_key(step.front, cost);
        children.push(Child { score, key, node: n, step });
    }

    /// What the sheets before the last cost.
    fn closed(&self, node: &Node, step: Move) -> f64 {
        match (step.into, node.front) {
            (Into::Sheet, Some(front)) => node.closed + self.cost[front.sheet],
            _ => node.closed,
        }
    }

    /// What the part of the last sheet that is used up costs.
    fn share(&self, f: Front) -> f64 {
        let sheet = &self.stock.sheets[f.sheet];
        let (_, v) = lie(f.axis, (sheet.width, sheet.height));
        let part = |a: u32, b: u32| f64::from(a) * f64::from(b);
        let used =
            part(f.u1, v) + part(f.u2 - f.u1, f.v1) + part(f.c1 - f.u1, f.v2 - f.v1) + part(f.c2 - f.c1, f.top - f.v1);
        self.cost[f.sheet] * used / part(sheet.width, sheet.height)
    }

    /// The best children as nodes, no two of them alike.
    fn best(&mut self, nodes: &[Node], mut children: Vec<Child>) -> Vec<Node> {
        let order =
            |a: &Child, b: &Child| a.score.total_cmp(&b.score).then(a.key.cmp(&b.key)).then(a.node.cmp(&b.node));
        let most = self.task.width * 4;
        if children.len() > most {
            children.select_nth_unstable_by(most, order);
            children.truncate(most);
        }
        children.sort_unstable_by(order);
        let mut seen = std::collections::BTreeSet::new();
        let mut next = Vec::with_capacity(self.task.width);
        for child in children {
            if !seen.insert(child.key) {
                continue;
            }
            next.push(self.node(&nodes[child.node], child.step));
            if next.len() == self.task.width {
                break;
            }
        }
        next
    }

    fn node(&mut self, before: &Node, step: Move) -> Node {
        let mut node = before.clone();
        self.links.push(Link { before: before.link, step });
        node.link = self.links.len() - 1;
        node.closed = self.closed(before, step);
        node.front = Some(step.front);
        node.left[step.item] -= 1;
        node.worth += self.worth[step.item];
        node.key = mark(node.key, step.item);
        if step.into == Into::Sheet {
            let s = step.front.sheet;
            node.cost += self.stock.sheets[s].cost;
            if self.stock.sheets[s].copies.is_some() {
                node.copies[s] -= 1;
            }
        }
        node
    }

    fn patterns(&self, mut link: usize) -> Vec<Pattern> {
        let mut steps = Vec::new();
        while let Some(Link { before, step }) = self.links.get(link) {
            steps.push(*step);
            link = *before;
        }
        steps.reverse();
        let sheets = steps.chunk_by(|_, next| next.into != Into::Sheet);
        sheets
            .map(|steps| Pattern::of(steps[0].front.sheet, self.tree(steps), &self.stock.place, self.stock.items.len()))
            .collect()
    }

    /// The cut tree of one sheet's steps.
    fn tree(&self, steps: &[Move]) -> Tree {
        let Front { sheet, axis, .. } = steps[0].front;
        let sheet = &self.stock.sheets[sheet];
        let (u, v) = lie(axis, (sheet.width, sheet.height));
        let strips = steps.chunk_by(|_, next| !matches!(next.into, Into::Sheet | Into::Strip)).map(|strip| {
            let end = strip[strip.len() - 1].front;
            let width = end.u2 - end.u1;
            let rows = strip.chunk_by(|_, next| next.into != Into::Row).map(|row| {
                let end = row[row.len() - 1].front;
                let height = end.v2 - end.v1;
                let columns = row.chunk_by(|_, next| next.into != Into::Column).map(|column| {
                    let across = column[0].front.c2 - column[0].front.c1;
                    (across, self.column(column, across, height))
                });
                (height, stack(axis, columns.collect::<Vec<_>>().into_iter(), width))
            });
            (width, stack(axis.across(), rows.collect::<Vec<_>>().into_iter(), v))
        });
        stack(axis, strips.collect::<Vec<_>>().into_iter(), u)
    }

    fn column(&self, steps: &[Move], width: u32, height: u32) -> Tree {
        let axis = steps[0].front.axis;
        let parts: Vec<(u32, Tree)> = steps
            .iter()
            .map(|step| {
                let item = self.stock.items[step.item];
                let (w, h) = if step.turned { (item.height, item.width) } else { (item.width, item.height) };
                let (_, along) = lie(axis, (w, h));
                (along, set(item.kind, (w, h, step.turned), lie(axis, (width, along))))
            })
            .collect();
        stack(axis.across(), parts.into_iter(), height)
    }
}

/// A number for the pieces used, the same in whatever order they came.
fn mark(key: u64, item: usize) -> u64 {
    key.wrapping_add(mix(item as u64 + 1))
}

fn sheet_area(stock: &Stock<'_>, s: usize) -> f64 {
    f64::from(stock.sheets[s].width) * f64::from(stock.sheets[s].height)
}

fn float_area(item: Item) -> f64 {
    f64::from(item.width) * f64::from(item.height)
}

#[expect(clippy::cast_precision_loss, reason = "orders beginnings only; costs are added in whole numbers")]
fn float(n: u64) -> f64 {
    n as f64
}
