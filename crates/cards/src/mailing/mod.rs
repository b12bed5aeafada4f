//! Post: what a finished card weighs, how thick it is, which envelope takes it, and what operators say to the letter.
//!
//! | module | offers |
//! |---|---|
//! | [`limits`] | limits of letters, each row with its source and year |
//! | [`verdict`] | which class takes a letter, and why not a better one |
//! | [`body`](mod@body) | weight and thickness from the layers |
//! | [`envelope`] | envelopes that fit, and the blank to make one of |
//!
//! Left out on purpose: prices. They are the maker's own, with a date; her local operator decides.

pub mod body;
pub mod envelope;
pub mod limits;
pub mod verdict;

use measure::Length;

pub use body::{Body, BodyLayer, Of, body};
pub use envelope::{Blank, Fit};
pub use limits::{LetterClass, Role, letter_classes, operators};
pub use verdict::{Letter, Verdict, Why, judge};

use crate::model::Rate;
use crate::plan::{Card, Plan};

pub(crate) use body::{length_of, stacked};

/// One kind of card as it is mailed.
#[derive(Debug, Clone, PartialEq)]
pub struct Mailing {
    /// Index of the batch.
    pub batch: usize,
    /// Index of the recipe.
    pub recipe: usize,
    /// The card that was weighed: the heaviest of its kind, by number.
    pub card: u32,
    /// How many cards of the kind there are.
    pub cards: u32,
    /// The card.
    pub body: Body,
    /// Its envelope.
    pub envelope: BodyLayer,
    /// How it goes in.
    pub fit: Fit,
    /// Closed, as it is posted.
    pub letter: Letter,
    /// What each operator says.
    pub verdicts: Vec<Verdict>,
    /// For each verdict the index of the maker's own rate, if she wrote one down for so heavy a letter.
    pub rates: Vec<Option<usize>>,
}

/// Every kind of card of the plan as it is mailed, batch by batch.
pub fn mailings(plan: &Plan) -> Vec<Mailing> {
    let mut kinds: Vec<(usize, usize)> = plan.cards.iter().map(|card| (card.batch, card.recipe)).collect();
    kinds.sort_unstable();
    kinds.dedup();
    kinds.into_iter().filter_map(|(batch, recipe)| mailing(plan, batch, recipe)).collect()
}

fn mailing(plan: &Plan, batch: usize, recipe: usize) -> Option<Mailing> {
    let own = |card: &&Card| (card.batch, card.recipe) == (batch, recipe);
    // Cards of one make-up weigh the same: each is weighed once.
    let mut seen: Vec<Vec<(usize, measure::Size, bool)>> = Vec::new();
    let mut heaviest: Option<(u32, Body)> = None;
    for card in plan.cards.iter().filter(own) {
        let made: Vec<_> = (card.parts.iter())
            .map(|part| (part.layer, part.rect.size, matches!(part.kind, crate::plan::PartKind::Ribbon(..))))
            .collect();
        if seen.contains(&made) {
            continue;
        }
        seen.push(made);
        let found = body(plan, card);
        if heaviest.as_ref().is_none_or(|(_, most)| found.weight > most.weight) {
            heaviest = Some((card.number, found));
        }
    }
    let (card, body) = heaviest?;
    let project = &plan.project;
    let fit = envelope::fit(project, project.recipes[recipe].finished, body.thickest_um);
    let face = fit.face().short_first();
    let envelope = body::envelope_layer(project, face.area());
    let weight = body.weight + envelope.weight.unwrap_or_default();
    let post = &project.trade.post;
    let letter = Letter {
        length: face.height,
        height: face.width,
        thickness: Some(length_of(body.thickest_um + envelope.um)),
        weight: Some(weight),
        even: !body.bow,
        flexible: !post.stiff,
        upright: post.addressed_upright,
    };
    let verdicts: Vec<Verdict> = operators().into_iter().map(|operator| judge(&letter, operator)).collect();
    let rates = verdicts.iter().map(|verdict| rate(&post.rates, verdict, &letter)).collect();
    let cards = u32::try_from(plan.cards.iter().filter(own).count()).unwrap_or(u32::MAX);
    Some(Mailing { batch, recipe, card, cards, body, envelope, fit, letter, verdicts, rates })
}

/// The maker's own rate for a letter: of her lines for its class, the lightest that reaches its weight.
fn rate(rates: &[Rate], verdict: &Verdict, letter: &Letter) -> Option<usize> {
    let class = verdict.class?;
    let same = |one: &str, other: &str| one.trim().eq_ignore_ascii_case(other);
    let reaches = |rate: &Rate| rate.up_to.is_none_or(|most| letter.weight.is_none_or(|weight| weight <= most));
    let fits = |(_, rate): &(usize, &Rate)| {
        same(&rate.operator, class.operator) && same(&rate.class, class.class) && reaches(rate)
    };
    let lightest = |(index, rate): &(usize, &Rate)| (rate.up_to.is_none(), rate.up_to, *index);
    rates.iter().enumerate().filter(fits).min_by_key(lightest).map(|(index, _)| index)
}

impl Mailing {
    /// Thickness of the closed letter where its layers lie thickest.
    pub fn thickness(&self) -> Length {
        self.letter.thickness.unwrap_or_default()
    }

    /// The same, as if all layers met in one point.
    pub fn stacked(&self) -> Length {
        length_of(self.body.stacked_um + self.envelope.um)
    }
}
