//! Labels for the kits of a class, and envelopes to make, as PDF.

use cards::Plan;
use cards::class::ClassPlan;
use drawing::pdf;
use drawing::sheets::{Edition, KitLabel, LabelSheet, envelope_templates, kit_labels};
use words::say;

use crate::trade;

/// One label a kit, on the label sheet of that name.
pub(crate) fn pdf(plan: &Plan, found: &ClassPlan, on: &str) -> Vec<u8> {
    let sheet = LabelSheet::named(on, plan.project.unit);
    let about = pdf::About {
        title: say("class-labels", &[]),
        author: plan.project.maker.clone(),
        language: words::spoken(),
        ..pdf::About::default()
    };
    // Labels have a title, headings and lists: no rule can be broken.
    pdf::write(&kit_labels(&labels(plan, found), sheet), &about).unwrap_or_default()
}

/// The template of every envelope the cards could go into.
pub(crate) fn envelopes(plan: &Plan, edition: &Edition) -> Vec<u8> {
    let about = pdf::About { title: say("post-template", &[]), language: edition.language, ..pdf::About::default() };
    // Templates are figures with words for each: no rule can be broken.
    pdf::write(&envelope_templates(plan, edition, measure::Length::INCH), &about).unwrap_or_default()
}

/// The words of every label. Kits beyond those the plan deals cards to are labelled without card numbers.
pub(crate) fn labels(plan: &Plan, found: &ClassPlan) -> Vec<KitLabel> {
    let shares = plan.shares.iter().find(|shares| shares.batch == found.batch);
    let dealt: &[Vec<u32>] = shares.and_then(|shares| shares.kits.as_ref()).map_or(&[], |kits| &kits.cards);
    let count = usize::try_from(found.kits).unwrap_or(0);
    let label = |index: usize| {
        let kit = dealt.get(index).or_else(|| dealt.first()).map_or(&[][..], Vec::as_slice);
        let numbers: Vec<String> = kit.iter().map(u32::to_string).collect();
        let numbers = say("class-label-cards", &[("numbers", numbers.join(", ").into())]);
        let date = plan.project.trade.class.as_ref().and_then(|class| class.date.clone());
        let facts = [(index < dealt.len()).then_some(numbers), date, plan.project.maker.clone()];
        let facts: Vec<String> = facts.into_iter().flatten().collect();
        let lines = vec![plan.project.name.clone(), facts.join(" · ")];
        KitLabel {
            head: say("class-label-kit", &[("number", (index + 1).into()), ("all", count.into())]),
            lines,
            contents: trade::contents(plan, found.batch, kit),
            foot: say("class-not-included", &[]),
        }
    };
    (0..count).map(label).collect()
}
