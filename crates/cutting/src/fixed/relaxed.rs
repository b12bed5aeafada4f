//! Under rules: the same question is asked without them first.
//!
//! What holds without rules holds with them: no answer is better than that bound, and where there is none, there is none.
//! Where the answer happens to keep the rules, it is the answer, with the proofs of the searches that know no rules.

use super::{Answer, Instance, Question, Rules, asked};
use crate::{Budget, Outcome};

/// Chosen: an eighth of the nodes goes to the question without rules; most of these are proven with far fewer.
const SHARE: u64 = 8;

/// The better of two answers, with the tighter of two bounds. The sheets lie inside their edges.
pub(super) fn solve(ruled: &Instance, budget: &mut Budget<'_>) -> Answer {
    let free = Instance { rules: Rules::default(), ..ruled.clone() };
    if free.check().is_err() {
        // Without rules there may be more positions than a table holds.
        return asked(ruled, budget);
    }
    let loose = budget.within(budget.left() / SHARE, |part| asked(&free, part));
    if matches!(loose.outcome, Outcome::Impossible { .. }) {
        return loose;
    }
    let kept = keeps(ruled, &loose);
    if kept && loose.outcome == Outcome::Proven {
        return loose;
    }
    let strict = asked(ruled, budget);
    if matches!(strict.outcome, Outcome::Impossible { .. }) {
        return strict;
    }
    joined(ruled.question, loose, strict, kept)
}

/// True if an answer found without rules keeps them.
fn keeps(ruled: &Instance, answer: &Answer) -> bool {
    answer.outcome != Outcome::Unfinished
        && answer.sheets.iter().all(|cut| {
            let sheet = &ruled.sheets[cut.sheet];
            ruled.rules.allow(&cut.tree, sheet.width, sheet.height)
        })
}

fn joined(question: Question, loose: Answer, strict: Answer, kept: bool) -> Answer {
    let unfinished = strict.outcome == Outcome::Unfinished;
    match question {
        Question::LeastCost => {
            let bound = strict.bound.max(loose.bound);
            match kept && (unfinished || loose.value < strict.value) {
                true => Answer::cost(loose.value, bound.min(loose.value), loose.sheets),
                false if unfinished => Answer::unfinished(bound, 0),
                false => Answer::cost(strict.value, bound.min(strict.value), strict.sheets),
            }
        }
        Question::MostValue => {
            let bound = strict.bound.min(loose.bound);
            match kept && (unfinished || loose.value > strict.value) {
                true => Answer::worth(loose.value, bound.max(loose.value), loose.sheets),
                false if unfinished => Answer::unfinished(bound, 0),
                false => Answer::worth(strict.value, bound.max(strict.value), strict.sheets),
            }
        }
    }
}
