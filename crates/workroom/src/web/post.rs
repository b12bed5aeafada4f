//! Post: what each kind of card weighs and measures, its envelope, and what operators say to the letter.

use cards::mailing::{Mailing, Of, mailings};
use maud::{Markup, html};

use super::answer::Desk;
use super::{fields, rates, say, shell};
use crate::trade;

/// The page.
pub(super) fn page(desk: &Desk<'_>) -> Markup {
    let plan = &desk.made.plan;
    let all = mailings(plan);
    let inside = html! {
        div.lead { h1 { (say("post-title", &[])) } p.facts { (say("post-lead", &[])) } }
        p.caution { (say("post-confirm", &[])) }
        @for mailing in &all { (kind(desk, mailing)) }
        (rates::section(desk))
        p.hint { (say("post-others-not", &[])) }
        p { a href=(format!("/w/{}/file/envelope.pdf", desk.kept.id.0)) { (say("post-template", &[])) } }
        section {
            ul.findings {
                @for caution in [say("post-flat-test", &[]), say("post-weigh-one", &[]), say("post-shape", &[]), say("post-abroad", &[]), say("post-lighter", &[])] {
                    li.warning { (caution) }
                }
            }
        }
        section id="own" {
            h2 { (say("post-own", &[])) }
            (own(desk))
        }
    };
    shell::of_project(desk, "post", &inside)
}

fn kind(desk: &Desk<'_>, mailing: &Mailing) -> Markup {
    let plan = &desk.made.plan;
    let rate = |index: Option<usize>| index.and_then(|index| plan.project.trade.post.rates.get(index));
    html! {
        section.mailed {
            h2 { (trade::kind(plan, mailing)) }
            @for said in trade::measures(plan, mailing) { p { (drawing::text::with_fractions(&said)) } }
            ul.operators {
                @for (verdict, index) in mailing.verdicts.iter().zip(&mailing.rates) {
                    li {
                        h3 { (verdict.operator) ": " (trade::class(verdict)) }
                        @for reason in trade::reasons(verdict) { p { (drawing::text::with_fractions(&reason)) } }
                        p { (say("post-postage", &[])) ": " (trade::rate(rate(*index))) }
                        p { small { (say("post-source", &[])) ": " (trade::source(verdict)) } }
                    }
                }
            }
            details {
                summary { (say("post-layers", &[])) }
                table {
                    thead { tr {
                        th scope="col" { (say("post-layer", &[])) }
                        th scope="col" { (say("post-layer-thick", &[])) }
                        th scope="col" { (say("post-layer-weight", &[])) }
                    } }
                    tbody {
                        @for layer in mailing.body.layers.iter().chain([&mailing.envelope]) {
                            @let weighed = matches!(layer.of, Of::Foam(_)) || (layer.weight.is_none() && ribbon(desk, mailing, layer.of));
                            tr {
                                th scope="row" { (layer_name(desk, mailing, layer.of)) }
                                td {
                                    @if layer.um > 0 {
                                        (trade::thick(measure::Length::from_ticks(i64::from(layer.um) * 720)))
                                        " " small { @if layer.measured { (say("post-measured", &[])) } @else { (say("post-guessed", &[])) } }
                                    }
                                }
                                td {
                                    @match layer.weight {
                                        Some(weight) => { (trade::weight(weight)) }
                                        None if weighed => { (say("post-with-extras", &[])) }
                                        None => { (say("post-unknown", &[])) }
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

fn ribbon(desk: &Desk<'_>, mailing: &Mailing, of: Of) -> bool {
    let Of::Layer(index) = of else { return false };
    let layer = desk.made.project().layer(mailing.recipe, index);
    layer.is_some_and(|layer| matches!(layer.material, cards::model::Material::Ribbon { .. }))
}

fn layer_name(desk: &Desk<'_>, mailing: &Mailing, of: Of) -> String {
    let named = |index: usize| {
        desk.made.project().layer(mailing.recipe, index).map(|layer| layer.name.clone()).unwrap_or_default()
    };
    match of {
        Of::Base => say("post-layer-base", &[]),
        Of::Inside => say("post-layer-inside", &[]),
        Of::Layer(index) => named(index),
        Of::Foam(index) => say("post-layer-foam", &[("name", named(index).into())]),
        Of::Extras => say("post-layer-extras", &[]),
        Of::Envelope => say("post-layer-envelope", &[]),
    }
}

fn own(desk: &Desk<'_>) -> Markup {
    let inside = html! {
        fieldset {
            (fields::line(desk, "post.extras", &say("post-extras", &[]), "1 g"))
            (fields::line(desk, "post.envelope_gsm", &say("post-envelope-gsm", &[]), "90"))
            (fields::line(desk, "post.foam_thickness", &say("post-foam", &[]), "1 mm"))
            (fields::line(desk, "post.bow_thickness", &say("post-bow", &[]), "5 mm"))
            (fields::choice(desk, "post.addressed", &say("post-addressed", &[]), &[("", say("post-addressed-long", &[])), ("long edge", say("post-addressed-long", &[])), ("short edge", say("post-addressed-short", &[]))]))
            (fields::choice(desk, "post.stiff", &say("post-stiff", &[]), &[("", say("post-no", &[])), ("false", say("post-no", &[])), ("true", say("post-yes", &[]))]))
        }
    };
    fields::change(desk, "post", "own", &inside)
}
