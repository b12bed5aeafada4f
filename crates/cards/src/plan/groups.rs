//! Which sheets of a batch may share a layout.
//!
//! Sheets of one pack share a layout if the same recipes may be made of them, the same edges cannot be used and
//! neither is printed as a collage. A collage keeps to its own printed lines.

use super::look::as_count;
use crate::finding::{Finding, Severity, Subject};
use crate::model::{Batch, Collage, Edges, Project, Side, Take, Way};

/// Sheets of one pack that share a layout, if there is one.
#[derive(Debug, Clone)]
pub(super) struct Group {
    pub(super) pack: usize,
    /// The sheets, each with the number of sheets of its design that are there for this batch.
    pub(super) takes: Vec<Take>,
    /// The recipes that may be made of them.
    recipes: Vec<usize>,
    edges: Edges,
    /// The printed panels, if the sheets are a collage.
    pub(super) collage: Option<Collage>,
}

impl Group {
    /// The project as if it were about this group only: its sheets, its recipes, its goal. Indices stay.
    pub(super) fn project(&self, project: &Project, batch: &Batch) -> Project {
        let mut alone = project.clone();
        for (pack, paper) in alone.packs.iter_mut().enumerate() {
            for (index, design) in paper.designs.iter_mut().enumerate() {
                let take = self.takes.iter().find(|take| (take.pack, take.design) == (pack, index));
                design.use_sheets = Some(take.map_or(0, |take| take.sheets));
                if let Some(take) = take {
                    design.up = take.side;
                }
            }
        }
        alone.packs[self.pack].unusable = self.edges;
        for (index, recipe) in alone.recipes.iter_mut().enumerate() {
            if !self.recipes.contains(&index) {
                (recipe.least, recipe.most) = (0, Some(0));
            }
        }
        alone.goal = batch.goal.clone();
        alone
    }

    /// The group in two: sheets that may lie any way, and the rest. `None` if that is no division.
    pub(super) fn by_way(&self, project: &Project) -> Option<[Group; 2]> {
        let any = |take: &Take| project.packs[take.pack].designs[take.design].face(take.side).way == Way::Any;
        let part = |want: bool| {
            let takes: Vec<Take> = self.takes.iter().filter(|take| any(take) == want).copied().collect();
            Group { takes, ..self.clone() }
        };
        let parts = [part(true), part(false)];
        parts.iter().all(|part| !part.takes.is_empty()).then_some(parts)
    }
}

/// The groups of a batch, pack by pack; `gone` says how many sheets of each design earlier batches took.
pub(super) fn groups(project: &Project, batch: &Batch, gone: &[Vec<u32>], findings: &mut Vec<Finding>) -> Vec<Group> {
    let mut groups: Vec<Group> = Vec::new();
    for (pack, paper) in project.packs.iter().enumerate() {
        for take in batch.takes.iter().filter(|take| take.pack == pack && take.sheets > 0) {
            let Some(design) = paper.designs.get(take.design) else { continue };
            let there = design.copies.saturating_sub(gone[pack][take.design]);
            if take.sheets > there {
                let finding = Finding::new(Severity::Serious, Subject::Design(design.letter.clone()), "design-short");
                let name = if batch.name.is_empty() { &project.name } else { &batch.name };
                let finding = finding.with("design", design.letter.as_str()).with("batch", name.as_str());
                let finding = finding.with("wanted", take.sheets).with("there", there);
                findings.push(finding.with("short", take.sheets - there));
            }
            let sheets = take.sheets.min(there);
            if sheets == 0 {
                continue;
            }
            let may = |index: &usize| {
                let recipe = &project.recipes[*index];
                let made = batch.recipes.is_empty() || batch.recipes.contains(index);
                made && (recipe.designs.is_empty() || recipe.designs.contains(&design.letter))
            };
            let recipes: Vec<usize> = (0..project.recipes.len()).filter(may).collect();
            if recipes.is_empty() && !project.recipes.is_empty() {
                let finding =
                    Finding::new(Severity::Serious, Subject::Design(design.letter.clone()), "design-no-recipe");
                let finding = finding.with("design", design.letter.as_str());
                findings.push(finding.with("sheets", sheets).with("recipes", as_count(project.recipes.len())));
                continue;
            }
            let edges = match take.side {
                Side::Front => paper.unusable,
                Side::Back => paper.unusable.from_behind(design.lies),
            };
            let collage = design.face(take.side).collage.clone();
            let take = Take { sheets, ..*take };
            let alike = |group: &&mut Group| {
                group.pack == pack && group.recipes == recipes && group.edges == edges && group.collage == collage
            };
            match groups.iter_mut().find(alike) {
                Some(group) => group.takes.push(take),
                None => groups.push(Group { pack, takes: vec![take], recipes, edges, collage }),
            }
        }
    }
    groups
}
