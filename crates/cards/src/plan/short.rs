//! What could go where sheets are missing: cards of the batch itself, or another batch that takes the same sheets.

use super::answer::Layout;
use crate::finding::{Fact, Finding};
use crate::model::{Batch, Project};

/// Adds to the findings of a batch that lacks sheets what could go.
///
/// | fact | says |
/// |---|---|
/// | `fewer` | cards that the batch gives less than it should, as the sheets are shared now |
/// | `kits-left` | most kits that the sheets there are fill, each as it should be; 0 where the batch makes none |
/// | `other` | the batch that takes the fewest such sheets and yet enough, or `none` |
/// | `other-sheets`, `other-cards` | sheets it takes of what is short, and cards it makes in all |
pub(super) fn what_could_go(project: &Project, batches: &[Batch], layouts: &[Layout], findings: &mut [Vec<Finding>]) {
    for (index, batch) in batches.iter().enumerate() {
        for finding in &mut findings[index] {
            let (short, design) = match finding.code {
                "design-short" => (count(finding, "short"), text(finding, "design")),
                "too-few-sheets" => (count(finding, "short"), None),
                _ => continue,
            };
            let gives = gives(project, layouts, index, design.as_deref());
            let fewer = match design {
                Some(_) => short.saturating_mul(gives),
                None => count(finding, "wanted").saturating_sub(count(finding, "cards")),
            };
            finding.facts.push(("fewer", Fact::from(fewer)));
            if finding.code == "design-short" {
                // Kits that were to hold the same of this design.
                let (there, wanted) = (count(finding, "there"), count(finding, "wanted").max(1));
                let kits = batch.kits.map_or(0, |kits| u64::from(kits) * there / wanted);
                finding.facts.push(("kits-left", Fact::from(kits)));
            }
            let other = (0..batches.len())
                .filter(|&other| other != index)
                .map(|other| (sheets(project, layouts, other, design.as_deref()), other))
                .filter(|&(sheets, _)| sheets >= short && sheets > 0)
                .min();
            let (named, sheets, cards) = match other {
                Some((sheets, other)) => (batches[other].name.as_str(), sheets, cards(layouts, other)),
                None => ("none", 0, 0),
            };
            let facts = [("other", Fact::from(named)), ("other-sheets", Fact::from(sheets))];
            finding.facts.extend(facts);
            finding.facts.push(("other-cards", Fact::from(cards)));
        }
    }
}

fn count(finding: &Finding, name: &str) -> u64 {
    let found = finding.facts.iter().find(|(fact, _)| *fact == name);
    found.map_or(0, |(_, fact)| if let Fact::Count(count) = fact { *count } else { 0 })
}

fn text(finding: &Finding, name: &str) -> Option<String> {
    let found = finding.facts.iter().find(|(fact, _)| *fact == name);
    found.and_then(|(_, fact)| if let Fact::Text(text) = fact { Some(text.clone()) } else { None })
}

/// Cards from one sheet of a batch, of a design if one is named and is cut.
fn gives(project: &Project, layouts: &[Layout], batch: usize, design: Option<&str>) -> u64 {
    let own = || layouts.iter().filter(|layout| layout.batch == batch);
    let of = |layout: &&Layout| {
        let letter = |design: usize| project.packs[layout.pack].designs[design].letter.as_str();
        design.is_some_and(|wanted| layout.sheets.iter().any(|used| letter(used.design) == wanted))
    };
    let layout = own().find(of).or_else(|| own().next());
    layout.map_or(0, |layout| layout.recipe_counts.iter().map(|&cards| u64::from(cards)).sum())
}

/// Sheets that a batch takes, of a design if one is named.
fn sheets(project: &Project, layouts: &[Layout], batch: usize, design: Option<&str>) -> u64 {
    let own = layouts.iter().filter(|layout| layout.batch == batch);
    let of = |layout: &Layout| -> u64 {
        let letter = |design: usize| project.packs[layout.pack].designs[design].letter.as_str();
        let used = layout.sheets.iter().filter(|used| design.is_none_or(|wanted| letter(used.design) == wanted));
        used.map(|used| u64::from(used.sheets)).sum()
    };
    own.map(of).sum()
}

fn cards(layouts: &[Layout], batch: usize) -> u64 {
    let own = layouts.iter().filter(|layout| layout.batch == batch);
    let of = |layout: &Layout| {
        let sheets: u64 = layout.sheets.iter().map(|used| u64::from(used.sheets)).sum();
        sheets * layout.recipe_counts.iter().map(|&cards| u64::from(cards)).sum::<u64>()
    };
    own.map(of).sum()
}
