//! Backgrounds of a plan, and what the maker should know of them.

use measure::Length;

use crate::background::{Hand, Laid, Refused, ScatterError, StampError, lay};
use crate::finding::{Fact, Finding, Severity, Subject};
use crate::model::{Background, Look, Project, Side};

/// Every background as it is stamped; what is in the way goes to the findings.
pub(super) fn backgrounds(project: &Project, findings: &mut Vec<Finding>) -> Vec<Option<Laid>> {
    let mut all = Vec::new();
    for (index, background) in project.backgrounds.iter().enumerate() {
        other_sheets(project, index, background, findings);
        let laid = lay(background, Hand::Right);
        match &laid {
            Ok(laid) => told(background, laid, findings),
            Err(why) => findings.push(refused(background, why)),
        }
        all.push(laid.ok());
    }
    all
}

fn of(background: &Background, severity: Severity, code: &'static str) -> Finding {
    Finding::new(severity, Subject::Project, code).with("background", background.name.as_str())
}

/// What is wished and is not there, and what stands too near.
fn told(background: &Background, laid: &Laid, findings: &mut Vec<Finding>) {
    if let Some(short) = laid.shortfall {
        let code = if short.gap_that_would_do.is_some() { "background-short" } else { "background-short-at-any-gap" };
        let finding = of(background, Severity::Warning, code).with("wished", short.wished).with("placed", short.placed);
        findings.push(match short.gap_that_would_do {
            Some(gap) => finding.with("gap", gap),
            None => finding,
        });
    }
    if laid.too_near > 0 {
        let finding = of(background, Severity::Warning, "background-too-near").with("count", laid.too_near);
        findings.push(finding.with("gap", background.gap));
    }
}

/// Why a background cannot be stamped at all.
fn refused(background: &Background, why: &Refused) -> Finding {
    let name = |stamp: usize| background.motifs.get(stamp).map_or("", |stamp| stamp.name.as_str());
    match why {
        Refused::Stamp { stamp, why: StampError::NoInk(picture) } => {
            let finding = of(background, Severity::Serious, "background-no-ink").with("stamp", name(*stamp));
            finding.with("picture", picture.as_str())
        }
        Refused::Stamp { stamp, why: StampError::Outline(_) | StampError::UnknownShape(_) } => {
            of(background, Severity::Serious, "background-no-outline").with("stamp", name(*stamp))
        }
        Refused::Wish(ScatterError::LargerThanSheet { motif, .. }) => {
            let size = background.motifs.get(*motif).map_or(Length::ZERO, |stamp| stamp.size);
            let finding = of(background, Severity::Serious, "background-stamp-too-large").with("stamp", name(*motif));
            sheet(finding.with("size", size), background)
        }
        Refused::Wish(_) => of(background, Severity::Serious, "background-nothing-to-stamp"),
    }
}

fn sheet(finding: Finding, background: &Background) -> Finding {
    finding
        .with("sheet-width", Fact::Length(background.sheet.width))
        .with("sheet-height", Fact::Length(background.sheet.height))
}

/// Faces that show it on a sheet of another size.
fn other_sheets(project: &Project, index: usize, background: &Background, findings: &mut Vec<Finding>) {
    for pack in project.packs.iter().filter(|pack| pack.sheet != background.sheet) {
        for design in &pack.designs {
            if [Side::Front, Side::Back].iter().any(|side| design.face(*side).look == Look::Stamped(index)) {
                let finding = of(background, Severity::Warning, "background-other-sheet");
                let finding = finding.with("design", design.letter.as_str());
                let finding = finding.with("width", pack.sheet.width).with("height", pack.sheet.height);
                findings.push(sheet(finding, background));
            }
        }
    }
}
