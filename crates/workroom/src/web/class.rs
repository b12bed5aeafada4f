//! Class: kits, the days before, money, labels.

use cards::Severity;
use cards::class::{ClassPlan, class};
use cards::days::Day;
use maud::{Markup, html};

use super::answer::{Answer, Desk};
use super::{fields, say, shell};
use crate::{labels, trade};

fn planned(desk: &Desk<'_>) -> Option<ClassPlan> {
    class(&desk.made.plan, Some(Day::of_seconds(desk.asked.now)))
}

/// The page.
pub(super) fn page(desk: &Desk<'_>) -> Markup {
    let found = planned(desk);
    let inside = html! {
        div.lead { h1 { (say("class-title", &[])) } p.facts { (say("class-lead", &[])) } }
        @match &found {
            None => { p { (say("class-none", &[])) } }
            Some(found) => { (told(desk, found)) }
        }
        section id="own" {
            h2 { (say("class-own", &[])) }
            (own(desk))
        }
        section {
            ul.findings {
                @for caution in cautions() { li.warning { (caution) } }
            }
        }
    };
    shell::of_project(desk, "class", &inside)
}

/// What every class page says of safety and of people.
fn cautions() -> [String; 7] {
    [
        say("class-caution-lever", &[]),
        say("class-caution-heat", &[]),
        say("class-caution-solvent", &[]),
        say("class-caution-glue", &[]),
        say("class-caution-parts", &[]),
        say("class-caution-minors", &[]),
        say("class-caution-photos", &[]),
    ]
}

fn told(desk: &Desk<'_>, found: &ClassPlan) -> Markup {
    let plan = &desk.made.plan;
    let unknown = || say("sum-unknown", &[]);
    let file = |on: &str| format!("/w/{}/file/labels.pdf?on={on}", desk.kept.id.0);
    let first = plan.shares.iter().find(|shares| shares.batch == found.batch);
    let kit = first.and_then(|shares| shares.kits.as_ref()).and_then(|kits| kits.cards.first());
    html! {
        @if !found.findings.is_empty() {
            ul.findings {
                @for finding in &found.findings {
                    @let (said, remedy) = trade::finding(finding, plan.project.mark);
                    @let (class, word) = match finding.severity {
                        Severity::Serious => ("serious", say("graveness-serious", &[])),
                        Severity::Warning => ("warning", say("graveness-warning", &[])),
                        Severity::Note => ("note", say("graveness-note", &[])),
                    };
                    li class=(class) { strong { (word) } " " (said) " " span.remedy { (remedy) } }
                }
            }
        }
        @for said in trade::kits_told(plan, found) { p { (said) } }
        section {
            h2 { (say("class-timetable", &[])) }
            table {
                thead { tr {
                    th scope="col" { (say("class-day", &[])) }
                    th scope="col" { (say("class-due", &[])) }
                } }
                tbody {
                    @for due in &found.timetable {
                        tr { td { (trade::day(due)) } td { (trade::due(due.code)) } }
                    }
                }
            }
        }
        section id="the-day" {
            h2 { (say("class-the-day", &[])) }
            p { (trade::day_length(found)) }
            table {
                thead { tr {
                    th scope="col" { (say("class-when", &[])) }
                    th scope="col" { (say("class-due", &[])) }
                    th scope="col" { (say("class-takes", &[])) }
                } }
                tbody {
                    @for part in &found.on_the_day {
                        tr { td { (trade::when(part)) } td { (trade::day_part(part)) } td { (trade::takes(part)) } }
                    }
                }
            }
            @if found.on_the_day.iter().all(|part| part.times.is_none()) { p.hint { (say("class-no-start", &[])) } }
        }
        section {
            h2 { (say("class-money", &[])) }
            table.sums {
                tbody {
                    @for (what, amount) in trade::money_told(plan, found) {
                        tr {
                            th scope="row" { (what) }
                            td { (amount.map_or_else(unknown, |amount| trade::money(amount, &found.money.currency))) }
                        }
                    }
                }
            }
            @if !found.money.missing.is_empty() {
                p.caution { (say("sum-missing", &[("names", trade::names(&found.money.missing).into())])) }
            }
            p.hint { (say("supplies-caution-costs", &[])) " " (say("supplies-caution-tax", &[])) }
        }
        @if let Some(kit) = kit {
            section {
                h2 { (say("class-contents", &[])) }
                ul.wanted { @for line in trade::contents(plan, found.batch, kit) { li { (drawing::text::with_fractions(&line)) } } }
                p { (say("class-not-included", &[])) }
            }
        }
        @let mix = trade::mix(plan, found.batch);
        @if !mix.is_empty() {
            section id="mix" {
                h2 { (say("class-mix", &[])) }
                table {
                    thead { tr { th scope="col" { (say("class-mix-print", &[])) } th scope="col" { (say("class-mix-each", &[])) } } }
                    tbody { @for (print, each) in mix { tr { th scope="row" { (print) } td { (each) } } } }
                }
                p.hint { (trade::mix_even(plan, found.batch)) }
            }
        }
        @let (kits, ahead) = trade::ahead(plan, found);
        @if !ahead.is_empty() {
            section id="ahead" {
                h2 { (say("class-ahead", &[])) }
                p { (say("class-ahead-lead", &[("kits", kits.into())])) }
                ul.wanted { @for line in ahead { li { (drawing::text::with_fractions(&line)) } } }
            }
        }
        section {
            h2 { (say("class-labels", &[])) }
            p { (say("class-labels-lead", &[])) }
            ul.files {
                li { a href=(file("plain")) { (say("class-labels-plain", &[])) } }
                li { a href=(file("three-ten")) { (drawing::text::with_fractions(&say("class-labels-three-ten", &[]))) } }
                li { a href=(file("two-five")) { (say("class-labels-two-five", &[])) } }
                li { a href=(file("two-seven")) { (say("class-labels-two-seven", &[])) } }
            }
        }
    }
}

/// The labels as a file to save.
pub(super) fn labels_pdf(desk: &Desk<'_>) -> Option<Answer> {
    let found = planned(desk)?;
    let bytes = labels::pdf(&desk.made.plan, &found, desk.asked.query("on"));
    Some(Answer::file("labels.pdf", "application/pdf", bytes))
}

fn own(desk: &Desk<'_>) -> Markup {
    let line = |key: &str, label: String, hint: &str| fields::line(desk, &format!("class.{key}"), &label, hint);
    let inside = html! {
        fieldset {
            (line("seats", say("class-seats", &[]), "14"))
            (line("date", say("class-date", &[]), "2026-12-05"))
            (line("batch", say("class-batch", &[]), ""))
            (line("demonstrators", say("class-demonstrators", &[]), "1"))
            (line("spare_kits", say("class-spare", &[]), "1"))
            (line("left_handed", say("class-left-handed", &[]), "0"))
            (line("cut_kits", say("class-cut", &[]), "0"))
            (line("starts", say("class-starts", &[]), "14:00"))
            (line("welcome_minutes", say("class-welcome-minutes", &[]), "15"))
            (line("minutes_a_card", say("class-minutes", &[]), "25"))
            (line("pause_minutes", say("class-pause-minutes", &[]), "0"))
            (line("end_minutes", say("class-end-minutes", &[]), "15"))
            (line("room", say("class-room", &[]), "40.00"))
            (line("hours", say("class-own-hours", &[]), "8"))
            (line("hour", say("class-hour", &[]), "15.00"))
            (line("shared", say("class-shared", &[]), ""))
            (line("break_even", say("class-break-even", &[]), "10"))
            (line("price", say("class-price", &[]), "24.00"))
        }
    };
    fields::change(desk, "class", "own", &inside)
}
