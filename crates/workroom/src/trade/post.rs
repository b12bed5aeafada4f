//! What cards weigh and measure, and what operators say to them, in words.

use cards::mailing::{LetterClass, Mailing, Verdict, Why, letter_classes};
use cards::model::Rate;
use cards::plan::Plan;
use cards::weight::Weight;
use measure::{Length, Mark, Unit};
use rust_decimal::Decimal;
use words::{local, say};

use super::money;
use crate::wording;

/// Grams and ounces.
pub(crate) fn weight(weight: Weight) -> String {
    let (grams, ounces) = (local(&weight.in_grams()), local(&weight.in_ounces()));
    say("grams-ounces", &[("grams", grams.into()), ("ounces", ounces.into())])
}

/// A thickness in hundredths of a millimetre.
pub(crate) fn thick(length: Length) -> String {
    let um = length.ticks() / (Length::MM.ticks() / 1_000);
    let mm = Decimal::new(um, 3).round_dp(2).normalize().to_string();
    say("millimetres", &[("mm", local(&mm).into())])
}

/// A limit as its operator tells it.
fn limit(length: Length, unit: Unit) -> String {
    local(&measure::write_exact_in(length, unit))
}

/// Why a class does not take a letter.
pub(crate) fn why(why: &Why, class: &LetterClass) -> String {
    let ratio = |thousandths: u32| local(&Decimal::new(i64::from(thousandths), 3).normalize().to_string());
    let of_class = |length: Length| limit(length, class.unit);
    let (id, fact) = match *why {
        Why::TooSmall(least) => ("post-why-too-small", Some(("least", of_class(least)))),
        Why::TooLong(most) => ("post-why-too-long", Some(("most", of_class(most)))),
        Why::TooHigh(most) => ("post-why-too-high", Some(("most", of_class(most)))),
        Why::TooThick(most) => ("post-why-too-thick", Some(("most", of_class(most)))),
        Why::TooThin(least) => ("post-why-too-thin", Some(("least", of_class(least)))),
        Why::TooHeavy(most) => ("post-why-too-heavy", Some(("most", weight(most)))),
        Why::TooSquare(least) => ("post-why-too-square", Some(("ratio", ratio(least)))),
        Why::TooSlender(most) => ("post-why-too-slender", Some(("ratio", ratio(most)))),
        Why::Uneven => ("post-why-uneven", None),
        Why::Stiff => ("post-why-stiff", None),
        Why::Upright => ("post-why-upright", None),
        Why::TooLargeTogether(most) => ("post-why-too-large-together", Some(("most", limit(most, Unit::Millimetre)))),
        Why::NotOver => ("post-why-not-over", None),
    };
    let args: Vec<(&str, words::Arg)> = fact.into_iter().map(|(name, text)| (name, text.into())).collect();
    say(id, &args)
}

/// The class of a verdict, or that it is no letter.
pub(crate) fn class(verdict: &Verdict) -> String {
    verdict.class.map_or_else(|| say("post-none", &[]), |class| class.class.to_owned())
}

/// Why not a better class, a sentence each; what is only from memory last.
pub(crate) fn reasons(verdict: &Verdict) -> Vec<String> {
    let told = |(class, whys): &(&LetterClass, Vec<Why>)| {
        let reasons: Vec<String> = whys.iter().map(|one| why(one, class)).collect();
        say("post-not", &[("class", class.class.into()), ("reasons", reasons.join(", ").into())])
    };
    let mut all: Vec<String> = verdict.not.iter().map(told).collect();
    if let (Some(class), false) = (verdict.class, verdict.doubts.is_empty()) {
        let doubts: Vec<String> = verdict.doubts.iter().map(|one| why(one, class)).collect();
        all.push(say("post-doubt", &[("reasons", doubts.join(", ").into())]));
    }
    all
}

/// The maker's own rate, with its date.
pub(crate) fn rate(rate: Option<&Rate>) -> String {
    let Some(rate) = rate else { return say("post-no-rate", &[]) };
    let price = money(rate.price.amount, &rate.price.currency);
    match &rate.price.date {
        Some(date) => say("post-rate-dated", &[("price", price.into()), ("date", date.into())]),
        None => say("post-rate", &[("price", price.into())]),
    }
}

/// Where the limits of a verdict were read.
pub(crate) fn source(verdict: &Verdict) -> String {
    let row = verdict.class.or_else(|| verdict.not.first().map(|(class, _)| *class));
    row.map_or_else(String::new, |row| {
        // A row that says `same` has the source of the row before it.
        let before = letter_classes().take_while(|other| *other != row).filter(|other| other.source != "same");
        let source = if row.source == "same" { before.last().map_or("", |other| other.source) } else { row.source };
        let facts = [("source", source.into()), ("year", row.year.into()), ("sure", row.sure.into())];
        say("post-sure", &facts)
    })
}

/// What a kind of card is called.
pub(crate) fn kind(plan: &Plan, mailing: &Mailing) -> String {
    kind_of(plan, mailing.batch, Some(mailing.recipe), usize::try_from(mailing.cards).unwrap_or(usize::MAX))
}

/// What cards of a batch are called: recipe and number, after the batch where there are several.
pub(crate) fn kind_of(plan: &Plan, batch: usize, recipe: Option<usize>, cards: usize) -> String {
    let cards = ("cards", cards.into());
    let recipe = recipe.map(|recipe| plan.project.recipes.get(recipe).map_or("", |recipe| recipe.name.as_str()));
    let kind = match recipe {
        Some(recipe) => say("post-kind", &[("recipe", recipe.into()), cards]),
        None => say("supplies-all-cards", &[cards]),
    };
    if plan.batches.len() < 2 {
        return kind;
    }
    let batch = plan.batches.get(batch).map_or("", |batch| batch.called(&plan.project));
    say("post-of-batch", &[("batch", batch.into()), ("kind", kind.into())])
}

/// What is to know of a kind of card before any operator is asked, a sentence each.
pub(crate) fn measures(plan: &Plan, mailing: &Mailing) -> Vec<String> {
    let mark = plan.project.mark;
    let length = |length: Length| wording::length(length, mark);
    let heavy = weight(mailing.letter.weight.unwrap_or_default());
    let weighs = if mailing.body.at_least {
        say("post-weighs-at-least", &[("weight", heavy.into())])
    } else {
        say("post-weighs", &[("weight", heavy.into())])
    };
    let thickness =
        say("post-thick", &[("mm", thick(mailing.thickness()).into()), ("all", thick(mailing.stacked()).into())]);
    let (long, high) = (mailing.letter.length, mailing.letter.height);
    let size = say("post-size", &[("width", length(long).into()), ("height", length(high).into())]);
    let mut told = vec![weighs, thickness, size];
    let fit = &mailing.fit;
    let wanted = ("wanted", wording::length(fit.wanted, Mark::usual(plan.project.unit)).into());
    match (&fit.own, fit.left) {
        (Some(own), Some(left)) => {
            let facts = [
                ("envelope", (&own.name).into()),
                ("width", length(left.width).into()),
                ("height", length(left.height).into()),
                wanted,
            ];
            told.push(if fit.fits { say("post-fits", &facts) } else { say("post-fits-not", &facts) });
        }
        _ => told.push(say("post-no-envelope", &[wanted])),
    }
    if !fit.fits && !fit.others.is_empty() {
        let named = |row: &&measure::EnvelopeSize| {
            let unit = row.unit;
            let facts = [
                ("name", wording::size_name(row.name).into()),
                ("width", limit(row.size.width, unit).into()),
                ("height", limit(row.size.height, unit).into()),
            ];
            say("post-named", &facts)
        };
        let names: Vec<String> = fit.others.iter().map(named).collect();
        told.push(say("post-others", &[("names", names.join(", ").into())]));
    }
    let (blank, sheet) = (fit.blank, fit.blank.sheet());
    let facts = [
        ("width", length(sheet.width).into()),
        ("height", length(sheet.height).into()),
        ("face-width", length(blank.face.width).into()),
        ("face-height", length(blank.face.height).into()),
        ("side", length(blank.side).into()),
        ("lower", length(blank.lower).into()),
        ("upper", length(blank.upper).into()),
    ];
    told.push(say("post-make", &facts));
    told
}
