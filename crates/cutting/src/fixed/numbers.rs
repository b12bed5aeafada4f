//! How many sheets of each kind: the numbers are chosen first, the cheapest that nothing forbids, then it is asked
//! whether they can hold the pieces.
//!
//! Worths of the pieces forbid numbers whose sheets together cannot hold so much worth. Where no worths forbid them, all
//! pieces are sought on just these sheets; each answer either forbids more numbers or is a plan that no other undercuts.
//! So the bound is as whole as sheets are: a shelf of odd sheets has few numbers below a cost.
//!
//! # Source
//! Choosing first and learning from what fails: Benders 1962, *Numerische Mathematik* 4; Hooker, Ottosson 2003,
//! *Mathematical Programming* 96 (both from memory). Checked by `tests/fixed_brute_force.rs`.

use microlp::{ComparisonOp, OptimizationDirection, Problem, Solution, Variable};

use super::SheetKind;
use super::beam::{self, Guide, Task};
use super::columns::{Proof, programme_costs, whole};
use super::cover::{self, Covered};
use super::deep::{self, Proven};
use super::look::{self, Kind};
use super::pattern::Pattern;
use super::stock::{Plan, Stock, area};
use super::table::{self, Grid, Table};
use crate::{Budget, Exhausted};

/// Chosen: more kinds of sheets have too many numbers.
const KINDS: usize = 12;

/// Chosen: with more pieces no exact search and no beam is tried on given sheets.
const FEW: u64 = 160;

/// Chosen: widths of the beams on given sheets.
const WIDTHS: [usize; 4] = [1, 4, 16, 64];

/// Chosen: numbers tried at most.
const TRIES: usize = 200;

/// Chosen: rounds of new patterns for one choice of numbers.
const ROUNDS: usize = 100;

/// Whole-number worth of the most that a piece may be worth.
const UNIT: f64 = (1_u64 << 34) as f64;

/// Worths, and what they forbid: sheets that together cannot hold what all pieces are worth.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Cut {
    worth: Vec<i64>,
    need: i128,
    /// No sheet of a kind holds more.
    most: Vec<i128>,
}

impl Cut {
    pub(super) fn of(stock: &Stock<'_>, worth: Vec<i64>, most: impl Iterator<Item = i128>) -> Cut {
        let need = stock.items.iter().zip(&worth).map(|(item, &y)| i128::from(item.cap) * i128::from(y)).sum();
        Cut { worth, need, most: most.collect() }
    }

    /// What the area forbids.
    fn area(stock: &Stock<'_>) -> Cut {
        let wide = |n: u128| i128::try_from(n).unwrap_or(i128::MAX);
        let need = stock.items.iter().map(|item| wide(item.area()) * i128::from(item.cap)).sum();
        Cut { worth: Vec::new(), need, most: stock.sheets.iter().map(|s| wide(area(s))).collect() }
    }

    fn forbids(&self, numbers: &[u32]) -> bool {
        numbers.iter().zip(&self.most).map(|(&n, most)| i128::from(n) * most).sum::<i128>() < self.need
    }
}

/// What the search found out so far.
#[derive(Debug, Default)]
pub(super) struct Numbered {
    /// A plan below the given cost.
    pub(super) plan: Option<Plan>,
    /// No plan costs less.
    pub(super) bound: u64,
}

enum Tried {
    Forbidden(Cut),
    /// No plan has these numbers, but no worths say so.
    None,
    Plan(Plan),
    /// Neither a plan nor a proof.
    Open,
}

struct Search<'a, 'b> {
    stock: &'a Stock<'a>,
    pool: &'b mut Vec<Pattern>,
    cuts: &'b mut Vec<Cut>,
    /// Numbers, and all smaller ones, that are not to be proposed again.
    past: Vec<Vec<u32>>,
}

/// Look for numbers of sheets below a cost that hold all pieces, the cheapest first; what forbids numbers is added to
/// the cuts.
///
/// # Errors
/// [`Exhausted`] when stopped; `found` then has what was found by then.
pub(super) fn search(
    stock: &Stock<'_>,
    (pool, cuts): (&mut Vec<Pattern>, &mut Vec<Cut>),
    (bound, mut below): (u64, u64),
    found: &mut Numbered,
    budget: &mut Budget<'_>,
) -> Result<(), Exhausted> {
    found.bound = bound;
    let endless = |s: &SheetKind| s.copies.is_none() && s.cost == 0;
    if stock.sheets.len() > KINDS || below == u64::MAX || stock.sheets.iter().any(endless) {
        return Ok(());
    }
    let mut search = Search { stock, pool, cuts, past: Vec::new() };
    let area = Cut::area(stock);
    if !search.cuts.contains(&area) {
        search.cuts.push(area);
    }
    let mut proving = true;
    for _ in 0..TRIES {
        let Some((numbers, cost)) = search.cheapest(found.bound, below, budget)? else {
            if proving {
                found.bound = below;
            }
            return Ok(());
        };
        if proving {
            found.bound = found.bound.max(cost);
        }
        match search.tried(&numbers, budget)? {
            Tried::Forbidden(cut) => search.cuts.push(cut),
            Tried::None => search.past.push(numbers),
            Tried::Open => {
                proving = false;
                search.past.push(numbers);
            }
            Tried::Plan(plan) => {
                below = plan.cost;
                found.plan = Some(plan);
                if below <= found.bound {
                    return Ok(());
                }
            }
        }
    }
    Ok(())
}

impl Search<'_, '_> {
    /// The cheapest numbers below a cost that nothing forbids; none costs less than `least`.
    fn cheapest(&self, least: u64, below: u64, budget: &mut Budget<'_>) -> Result<Option<(Vec<u32>, u64)>, Exhausted> {
        let order = self.cuts.iter().map(|cut| {
            let mut order: Vec<usize> = (0..cut.most.len()).filter(|&s| cut.most[s] > 0).collect();
            let rate = |s: usize| i128::from(self.stock.sheets[s].cost);
            order.sort_by(|&a, &b| (rate(a) * cut.most[b]).cmp(&(rate(b) * cut.most[a])).then(a.cmp(&b)));
            order
        });
        let mut choice = Choice {
            search: self,
            order: order.collect(),
            numbers: vec![0; self.stock.sheets.len()],
            best: None,
            least,
            below,
        };
        let lacking: Vec<i128> = self.cuts.iter().map(|cut| cut.need).collect();
        choice.down(0, 0, &lacking, budget)?;
        Ok(choice.best.map(|numbers| (numbers, choice.below)))
    }

    /// Whether these sheets hold all pieces.
    fn tried(&mut self, numbers: &[u32], budget: &mut Budget<'_>) -> Result<Tried, Exhausted> {
        let sheets = |cost: &dyn Fn(&SheetKind) -> u64| -> Vec<SheetKind> {
            let kinds = self.stock.sheets.iter().zip(numbers);
            kinds.map(|(s, &n)| SheetKind { copies: Some(n), cost: cost(s), ..s.clone() }).collect()
        };
        // Any of these sheets will do: in a proof they cost nothing, elsewhere their size stands for their cost.
        let (free, sized) = (sheets(&|_| 0), sheets(&|s| size(self.stock, s)));
        let (free, sized) = (given(self.stock, &free), given(self.stock, &sized));
        // First pieces as often as a sheet holds them, which is quick.
        let mut proof = match self.shares(&free, (numbers, false), budget)? {
            Fits::Forbidden(cut) => return Ok(Tried::Forbidden(cut)),
            Fits::Perhaps(proof) => proof,
        };
        let all: u64 = sized.sheets.iter().map(|s| s.cost * u64::from(s.copies.unwrap_or(0))).sum();
        let few = self.stock.pieces() <= FEW;
        if few && let Some(patterns) = beams(&sized, (numbers, all), budget)? {
            return Ok(Tried::Plan(self.stock.plan(patterns.into_iter().map(|pattern| (pattern, 1)).collect())));
        }
        if free.rules.plain() {
            // Chosen: an eighth of the nodes.
            let mut part = budget.part(budget.left() / 8);
            let fits = self.shares(&free, (numbers, true), &mut part);
            budget.join(&part)?;
            match fits {
                Ok(Fits::Forbidden(cut)) => return Ok(Tried::Forbidden(cut)),
                Ok(Fits::Perhaps(Some(better))) => proof = Some(better),
                Ok(Fits::Perhaps(None)) | Err(Exhausted) => {}
            }
        }
        if few
            && free.rules.plain()
            && let Some(proof) = &proof
        {
            // Chosen: a sixteenth.
            let mut part = budget.part(budget.left() / 16);
            let covered = cover::cheapest(&free, proof, 1, &mut part);
            budget.join(&part)?;
            match covered {
                Covered::Best(plan) => return Ok(Tried::Plan(self.stock.plan(plan.uses))),
                Covered::None => return Ok(Tried::None),
                Covered::Open => {}
            }
        }
        let (mut found, mut proven) = (None, Proven::default());
        // Chosen: a third.
        let mut part = budget.part(budget.left() / 3);
        let _ended = deep::search(&sized, self.pool, (all, all + 1), (&mut found, &mut proven), &mut part);
        budget.join(&part)?;
        if let Some(plan) = found {
            return Ok(Tried::Plan(self.stock.plan(plan.uses)));
        }
        Ok(if proven.bound > all { Tried::None } else { Tried::Open })
    }

    /// Worths that forbid these numbers, if there are any; new patterns go to the pool. Where not `limited`, a pattern
    /// may hold more pieces than are wanted.
    fn shares(
        &mut self,
        given: &Stock<'_>,
        (numbers, limited): (&[u32], bool),
        budget: &mut Budget<'_>,
    ) -> Result<Fits, Exhausted> {
        let grids = (0..given.sheets.len()).map(|s| given.grid(s, &given.items)).collect::<Option<Vec<Grid>>>();
        let Some(grids) = grids else { return Ok(Fits::Perhaps(None)) };
        let left: Vec<u32> = given.items.iter().map(|item| item.cap).collect();
        let used = (0..numbers.len()).filter(|&s| limited && numbers[s] > 0);
        let kinds: Vec<Kind> = used.filter_map(|s| Kind::of(given, s, &left)?).collect();
        let mut table = Table::default();
        let Some(mut dual) = self.dual(given, (numbers, limited), budget)? else { return Ok(Fits::Perhaps(None)) };
        for _ in 0..ROUNDS {
            let (worth, room) = dual.values();
            let mut most: Vec<i128> = Vec::with_capacity(grids.len());
            let mut better = Vec::new();
            for (s, grid) in grids.iter().enumerate() {
                table::fill(grid, &given.items, &worth, &mut table, budget)?;
                most.push(i128::from(table.whole()));
                let Some(least) = room[s].filter(|&least| table.whole() > least) else { continue };
                if !limited {
                    let tree = table::tree(grid, &given.items, &worth, &table);
                    better.push(Pattern::of(s, tree, &given.place, given.items.len()));
                } else if let Some(kind) = kinds.iter().find(|kind| kind.sheet == s) {
                    let look = look::look((given, kind), (&worth, least), (self.pool, true), budget)?;
                    most[s] = most[s].min(i128::from(look.most));
                    better.extend(look.better);
                }
            }
            let cut = Cut::of(given, worth, most.into_iter());
            if cut.forbids(numbers) {
                return Ok(Fits::Forbidden(cut));
            }
            if better.is_empty() || dual.fits() {
                return Ok(Fits::Perhaps(Some(Proof::sheets(cut.worth, cut.most))));
            }
            for pattern in better {
                budget.spend(programme_costs(given.items.len(), self.pool.len()) / 8)?;
                let Some(next) = dual.add(&pattern, &left, limited) else { return Ok(Fits::Perhaps(None)) };
                dual = next;
                self.pool.push(pattern);
            }
        }
        Ok(Fits::Perhaps(None))
    }

    fn dual(
        &self,
        given: &Stock<'_>,
        (numbers, limited): (&[u32], bool),
        budget: &mut Budget<'_>,
    ) -> Result<Option<Dual>, Exhausted> {
        budget.spend(programme_costs(given.items.len(), self.pool.len()))?;
        let mut problem = Problem::new(OptimizationDirection::Maximize);
        let worth: Vec<Variable> =
            given.items.iter().map(|item| problem.add_var(f64::from(item.cap), (0.0, 1.0))).collect();
        let room: Vec<Option<Variable>> =
            numbers.iter().map(|&n| (n > 0).then(|| problem.add_var(-f64::from(n), (0.0, f64::INFINITY)))).collect();
        let left: Vec<u32> = given.items.iter().map(|item| item.cap).collect();
        for pattern in self.pool.iter() {
            let Some(room) = room[pattern.sheet] else { continue };
            problem.add_constraint(row(pattern, &left, limited, &worth, room), ComparisonOp::Le, 0.0);
        }
        let solution = problem.solve().ok().and_then(|outcome| outcome.into_solution().ok());
        Ok(solution.map(|solution| Dual { solution, worth, room }))
    }
}

/// The same pieces from other sheets.
fn given<'a>(stock: &Stock<'_>, sheets: &'a [SheetKind]) -> Stock<'a> {
    Stock { sheets, items: stock.items.clone(), place: stock.place.clone(), rules: stock.rules }
}

/// A sheet's size as a cost.
fn size(stock: &Stock<'_>, sheet: &SheetKind) -> u64 {
    let scale = (stock.sheets.iter().map(area).max().unwrap_or(1) >> 24).max(1);
    u64::try_from(area(sheet) / scale).unwrap_or(1).max(1)
}

/// All pieces on the given sheets, if a beam manages that.
fn beams(
    given: &Stock<'_>,
    (numbers, all): (&[u32], u64),
    budget: &mut Budget<'_>,
) -> Result<Option<Vec<Pattern>>, Exhausted> {
    let left: Vec<u32> = given.items.iter().map(|item| item.cap).collect();
    for width in WIDTHS {
        for guide in Guide::ALL {
            let task = Task { left: &left, copies: numbers, below: all + 1, width, guide };
            let mut part = budget.part(budget.left() / 16);
            let found = beam::search(given, task, &mut part);
            budget.join(&part)?;
            if let Ok(Some(patterns)) = found
                && patterns.iter().all(|p| given.allows(p))
            {
                return Ok(Some(patterns));
            }
        }
    }
    Ok(None)
}

enum Fits {
    Forbidden(Cut),
    /// The programme of shares has a solution; worths under which sheets are nearly full.
    Perhaps(Option<Proof>),
}

/// The dual of the programme that asks whether shares of patterns hold all pieces.
struct Dual {
    solution: Solution,
    worth: Vec<Variable>,
    /// What a sheet holds, where there is one.
    room: Vec<Option<Variable>>,
}

impl Dual {
    /// Worth of each item, and what a sheet of each kind is to hold at most.
    fn values(&self) -> (Vec<i64>, Vec<Option<i64>>) {
        let of = |&v: &Variable| self.solution.var_value(v);
        let worth = self.worth.iter().map(|y| whole(of(y) * UNIT)).collect();
        (worth, self.room.iter().map(|z| z.as_ref().map(|z| whole((of(z) + 1e-8) * UNIT))).collect())
    }

    /// True if no worths can forbid anything.
    fn fits(&self) -> bool {
        self.solution.objective() < 1e-7
    }

    fn add(self, pattern: &Pattern, left: &[u32], limited: bool) -> Option<Dual> {
        let row = row(pattern, left, limited, &self.worth, self.room[pattern.sheet]?);
        let outcome = self.solution.add_constraint(row, ComparisonOp::Le, 0.0).ok()?;
        Some(Dual { solution: outcome.into_solution().ok()?, ..self })
    }
}

/// A pattern's pieces are not worth more than its sheet holds; where `limited`, only those that are wanted count.
fn row(pattern: &Pattern, left: &[u32], limited: bool, worth: &[Variable], room: Variable) -> Vec<(Variable, f64)> {
    let counts = pattern.counts.iter().zip(left).map(|(&n, &left)| if limited { n.min(left) } else { n });
    let pieces = worth.iter().zip(counts).filter(|&(_, n)| n > 0).map(|(&y, n)| (y, f64::from(n)));
    pieces.chain([(room, -1.0)]).collect()
}

/// A search for the cheapest numbers.
struct Choice<'a> {
    search: &'a Search<'a, 'a>,
    /// For each cut the sheets by what they cost for what they hold, the cheapest first.
    order: Vec<Vec<usize>>,
    numbers: Vec<u32>,
    best: Option<Vec<u32>>,
    least: u64,
    below: u64,
}

impl Choice<'_> {
    /// All numbers of the sheets from `s` on; `lacking`: what each cut still needs.
    fn down(&mut self, s: usize, cost: u64, lacking: &[i128], budget: &mut Budget<'_>) -> Result<(), Exhausted> {
        budget.spend(1 + lacking.len() as u64 / 4)?;
        if self.best.is_some() && self.below <= self.least {
            return Ok(());
        }
        let Some(rest) = self.rest(s, lacking) else { return Ok(()) };
        if cost.saturating_add(rest) >= self.below {
            return Ok(());
        }
        let sheets = self.search.stock.sheets;
        let Some(sheet) = sheets.get(s) else {
            let smaller = |past: &Vec<u32>| past.iter().zip(&self.numbers).all(|(past, n)| n <= past);
            if !self.search.past.iter().any(smaller) {
                (self.best, self.below) = (Some(self.numbers.clone()), cost);
            }
            return Ok(());
        };
        let most = self.most(s, cost);
        // One that costs nothing is there.
        let from = if sheet.cost == 0 { most } else { 0 };
        for n in from..=most {
            self.numbers[s] = n;
            let held = self.search.cuts.iter().map(|cut| i128::from(n) * cut.most[s]);
            let lacking: Vec<i128> = lacking.iter().zip(held).map(|(lacking, held)| lacking - held).collect();
            self.down(s + 1, cost + u64::from(n) * sheet.cost, &lacking, budget)?;
        }
        self.numbers[s] = 0;
        Ok(())
    }

    /// So many copies may still be taken.
    fn most(&self, s: usize, cost: u64) -> u32 {
        let sheet = &self.search.stock.sheets[s];
        let paid = (self.below - 1).saturating_sub(cost).checked_div(sheet.cost);
        let paid = paid.map_or(u32::MAX, |paid| u32::try_from(paid).unwrap_or(u32::MAX));
        paid.min(sheet.copies.unwrap_or(u32::MAX)).min(u32::try_from(self.search.stock.pieces()).unwrap_or(u32::MAX))
    }

    /// What the sheets from `s` on must cost at least; `None` if they cannot hold what is lacking.
    fn rest(&self, s: usize, lacking: &[i128]) -> Option<u64> {
        let mut least = 0;
        for ((cut, order), &lacking) in self.search.cuts.iter().zip(&self.order).zip(lacking) {
            let (mut lacking, mut cost) = (lacking, 0_i128);
            for &t in order.iter().filter(|&&t| t >= s) {
                if lacking <= 0 {
                    break;
                }
                let sheet = &self.search.stock.sheets[t];
                let all = i128::from(sheet.copies.unwrap_or(u32::MAX)) * cut.most[t];
                if all < lacking {
                    cost += i128::from(sheet.copies.unwrap_or(u32::MAX)) * i128::from(sheet.cost);
                } else {
                    cost += (lacking * i128::from(sheet.cost) + cut.most[t] - 1) / cut.most[t];
                }
                lacking -= all;
            }
            if lacking > 0 {
                return None;
            }
            least = least.max(cost);
        }
        Some(u64::try_from(least).unwrap_or(u64::MAX))
    }
}
