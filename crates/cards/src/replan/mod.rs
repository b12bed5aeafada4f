//! Re-planning: the same project on another sheet, in the other unit, or for another number of people or cards.
//!
//! | part | answers |
//! |---|---|
//! | `unit` | the other unit: re-designed in whole marks from its own formats and borders, never converted |
//! | `sheet` | another patterned sheet: cards from one sheet and sheets of each design; the same pieces where they go |
//! | `people` | kits for so many seats, or so many cards, and the sheets and packs they take |
//! | `told` | what became of each recipe: kept, changed from what to what, or lost, with the nearest that would do |
//!
//! From project to project: as many cards of each recipe and design as before, at least. The maker's file is not
//! touched. Left out on purpose: prices of what is bought in the new size (they are the maker's own, and left blank),
//! and whether the new prints are pretty.

mod people;
mod sheet;
mod told;
mod unit;

use cutting::Budget;
use measure::{Length, Size, Unit, round};

use crate::finding::{Fact, Finding, Severity, Subject, Way};
use crate::model::{Batch, Cardstock, Edges, Goal, Project, StockSheet, Take};
use crate::plan::{Plan, plan};

pub use people::kits;

/// What is to change; what is `None` stays.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Wanted {
    /// The patterned sheet, as it lies.
    pub sheet: Option<Size>,
    /// The sheet of every cardstock, as it lies.
    pub cardstock: Option<Size>,
    /// The unit the maker thinks in.
    pub unit: Option<Unit>,
    /// Seats: people who make a kit of cards each.
    pub people: Option<u32>,
    /// Spare kits; `None`: as many as [`kits`] takes.
    pub spare_kits: Option<u32>,
    /// Cards, in all batches that are not shared out over kits.
    pub cards: Option<u32>,
}

/// What became of a recipe.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fate {
    /// The same pieces of the same sizes.
    Kept,
    /// It is made, with pieces of other sizes or more cardstock.
    Changed,
    /// No card of it can be made.
    Lost,
}

/// Something that differs, worded by the message file under its code, which begins with `replan-`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Change {
    /// What, in kebab case.
    pub code: &'static str,
    /// The facts by name, in a fixed order.
    pub facts: Vec<(&'static str, Fact)>,
}

impl Change {
    fn new(code: &'static str, facts: Vec<(&'static str, Fact)>) -> Change {
        Change { code, facts }
    }
}

/// What became of one recipe.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Told {
    /// Its name.
    pub recipe: String,
    /// Kept, changed or lost.
    pub fate: Fate,
    /// What differs, from what to what.
    pub changes: Vec<Change>,
    /// If it is lost: the smallest changes known to help.
    pub ways: Vec<Way>,
}

/// A project made anew.
#[derive(Debug, Clone, PartialEq)]
pub struct Replanned {
    /// The plan of the project as it was.
    pub before: Plan,
    /// The plan of the new project.
    pub after: Plan,
    /// What became of each recipe of which there were cards, in the order of the project.
    pub recipes: Vec<Told>,
    /// What the maker should know of the change; serious where it could not be made.
    pub findings: Vec<Finding>,
}

impl Replanned {
    /// The new project.
    pub fn project(&self) -> &Project {
        &self.after.project
    }
}

/// The same project for something else.
///
/// # Shape
/// Pure: the same project, wish and budget in nodes give the same answer. First the unit, then the papers, then the
/// people or cards. A recipe of which no card can be made any more stays in the project, makes no cards, and is told as
/// lost with the nearest that would do.
pub fn replan(project: &Project, wanted: &Wanted, budget: &mut Budget<'_>) -> Replanned {
    let mut findings = Vec::new();
    let before = planned(project, budget);
    let mut now = before.clone();
    let mut lost = Vec::new();
    if let Some(to) = wanted.unit.filter(|to| *to != project.unit) {
        let new = unit::redesigned(project, to, &mut findings);
        let same = |sizes, new: &Project| unit::sizes(sizes, project, new);
        let new = sheet::cards_anew(&now, new, |_| true, same, budget, &mut lost, &mut findings);
        now = planned(&new, budget);
    }
    if let Some(size) = wanted.cardstock {
        let mut new = now.project.clone();
        cardstock(&mut new, |_| Some(size), &mut findings);
        now = planned(&new, budget);
    }
    let leading = now.project.packs.iter().find(|pack| pack.sheets() > 0).map(|pack| pack.sheet);
    let squared = |size: Size| match now.project.unit {
        // Sold in inches, planned on whole millimetres once it is squared.
        Unit::Millimetre => Size::new(down(size.width), down(size.height)),
        Unit::Inch => size,
    };
    if let (Some(size), Some(old)) = (wanted.sheet.map(squared), leading)
        && size.short_first() != old.short_first()
    {
        let mut new = now.project.clone();
        let other: Vec<bool> = new.packs.iter().map(|pack| pack.sheet == old).collect();
        sheet::other(&mut new, size, &other, &mut findings);
        let new = sheet::cards_anew(&now, new, |pack| other[pack], |sizes, _| sizes, budget, &mut lost, &mut findings);
        now = planned(&new, budget);
    }
    if let Some(seats) = wanted.people {
        let kits = people::kits_and(seats, wanted.spare_kits);
        let new = people::seated(&now, seats, kits, &mut findings);
        now = planned(&new, budget);
    }
    if let Some(cards) = wanted.cards {
        let new = people::counted(&now, cards, &mut findings);
        now = planned(&new, budget);
    }
    let recipes = told::told(&before, &now, &lost, budget, &mut findings);
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.severity));
    Replanned { before, after: now, recipes, findings }
}

/// A plan for a share of what is left, so that much stays for what follows.
fn planned(project: &Project, budget: &mut Budget<'_>) -> Plan {
    budget.within(budget.left() / 4, |part| plan(project, part))
}

/// The whole millimetres of a length.
fn down(length: Length) -> Length {
    round::floor(length, Length::MM)
}

fn note(code: &'static str) -> Finding {
    Finding::new(Severity::Note, Subject::Project, code)
}

/// Gives every cardstock another sheet. Its price was that of the old one.
fn cardstock(project: &mut Project, other: impl Fn(Size) -> Option<Size>, findings: &mut Vec<Finding>) {
    let mut priced: Vec<String> = Vec::new();
    for stock in &mut project.cardstocks {
        let Cardstock { name, sheets, .. } = stock;
        let Some(first) = sheets.first() else { continue };
        let Some(size) = other(first.size).filter(|size| *size != first.size) else { continue };
        // Sheets that were counted are gone: these have to be got.
        let anew = StockSheet {
            size,
            count: None,
            grain: first.grain,
            price: None,
            pack_of: first.pack_of,
            unusable: Edges::default(),
        };
        if sheets.iter().any(|sheet| sheet.price.is_some()) {
            priced.push(name.clone());
        }
        if sheets.iter().any(|sheet| sheet.unusable != Edges::default()) {
            findings.push(note("replan-edges-left-out").with("pack", name.as_str()));
        }
        *sheets = vec![anew];
    }
    if !priced.is_empty() {
        findings.push(note("replan-price-left-out").with("names", priced.join(", ").as_str()));
    }
}

/// What was decided for single cards was decided by their numbers, which are others now.
fn no_choices(project: &mut Project, findings: &mut Vec<Finding>) {
    if !project.choices.is_empty() {
        project.choices.clear();
        findings.push(note("replan-choices-left-out"));
    }
}

/// The batches put back into a project: as its goal and the sheets in use where it had no batches and needs none.
fn put_back(project: &mut Project, batches: Vec<Batch>) {
    let unnamed = |batch: &Batch| batch.name.is_empty() && batch.recipes.is_empty() && batch.kits.is_none();
    if batches.is_empty() {
        // Nothing can be made: no sheet is cut.
        for design in project.packs.iter_mut().flat_map(|pack| &mut pack.designs) {
            design.use_sheets = Some(0);
        }
    }
    match <[Batch; 1]>::try_from(batches) {
        Ok([batch]) if unnamed(&batch) => {
            for (pack, paper) in project.packs.iter_mut().enumerate() {
                for (design, printed) in paper.designs.iter_mut().enumerate() {
                    let take = batch.takes.iter().find(|take| (take.pack, take.design) == (pack, design));
                    let sheets = take.map_or(0, |take| take.sheets);
                    // A number of cards takes only what it needs of the sheets that are there.
                    let enough = batch.goal.cards.is_some() && sheets > 0 && printed.sheets() >= sheets;
                    if !enough {
                        printed.use_sheets = (sheets != printed.copies).then_some(sheets);
                    }
                    printed.up = take.map_or(printed.up, |take| take.side);
                }
            }
            (project.goal, project.batches) = (batch.goal, Vec::new());
        }
        Ok([batch]) => (project.goal, project.batches) = (Goal::unsaid(), vec![named(batch, project)]),
        Err(batches) => {
            let batches = batches.into_iter().map(|batch| named(batch, project)).collect();
            (project.goal, project.batches) = (Goal::unsaid(), batches);
        }
    }
}

/// A batch always has a name.
fn named(mut batch: Batch, project: &Project) -> Batch {
    batch.name = batch.called(project).to_owned();
    batch
}

/// Sheets of a design that all batches take together.
fn taken(batches: &[Batch], pack: usize, design: usize) -> u32 {
    let own = |take: &&Take| (take.pack, take.design) == (pack, design);
    batches.iter().flat_map(|batch| &batch.takes).filter(own).fold(0, |sum, take| sum.saturating_add(take.sheets))
}
