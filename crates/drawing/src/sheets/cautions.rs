//! The last pages: a rule to check the printer by, findings, cautions.

use cards::Plan;
use cards::finding::{Severity, Subject};
use measure::{Length, Rect, Size};

use super::look::{ACCENT, INK, half, pt, say, sixteenths};
use super::pages::Pages;
use super::told::Told;
use super::worded;
use crate::scene::{Color, Mark, Pen, Point, Role};
use crate::text::{Align, place, shape, with_fractions};

/// Draws them.
pub(super) fn cautions(plan: &Plan, told: Told, pages: &mut Pages) {
    pages.chapter(&say("page-before-title", &[]));
    findings(plan, told, pages);
    rule(pages);
    let mut ids = vec!["page-caution-sample", "page-caution-paper", "page-caution-colors"];
    // Where greetings are stamped, the page of the stamping says it.
    if !plan.project.backgrounds.is_empty() {
        ids.extend(["page-caution-heat", "page-caution-solvent"]);
    }
    ids.push("page-caution-children");
    if plan.project.envelope.is_some() {
        ids.push("page-caution-post");
    }
    ids.push("page-caution-rights");
    pages.section(&say("page-cautions-title", &[]));
    for id in ids {
        pages.item(&say(id, &[]));
    }
}

/// Blank lines for the reader's own notes.
pub(super) fn notes(pages: &mut Pages) {
    pages.room(sixteenths(60));
    pages.section(&say("page-notes-title", &[]));
    pages.note(&say("page-notes-lead", &[]));
    pages.blank_lines();
}

fn findings(plan: &Plan, told: Told, pages: &mut Pages) {
    pages.section(&say("page-findings-title", &[]));
    if plan.findings.is_empty() {
        pages.say(&say("page-findings-none", &[]));
    }
    let length = |length| told.length(length);
    for finding in &plan.findings {
        let args = worded::arguments(&finding.facts, &length);
        let id = format!("finding-{}", finding.code);
        let remedy = format!("{id}.remedy");
        let mut text = say(&id, &args);
        if words::known(&remedy) {
            text = format!("{text} {}", say(&remedy, &args));
        }
        let (severity, color): (&str, Color) = match finding.severity {
            Severity::Serious => ("page-finding-serious", ACCENT),
            Severity::Warning => ("page-finding-warning", ACCENT),
            Severity::Note => ("page-finding-note", INK),
        };
        let about = match &finding.subject {
            Subject::Project => String::new(),
            Subject::Layout(number) => say("page-finding-layout", &[("number", (*number).into())]),
            Subject::Recipe(name) | Subject::Design(name) | Subject::Cardstock(name) | Subject::Envelope(name) => {
                name.clone()
            }
        };
        let head = if about.is_empty() { say(severity, &[]) } else { format!("{} · {about}", say(severity, &[])) };
        pages.room(pt(46));
        pages.block(&head, told.small_strong(), color, Role::Paragraph);
        pages.say(&text);
        if !finding.ways.is_empty() {
            pages.say(&say("page-finding-ways", &[]));
        }
        for out in &finding.ways {
            pages.item(&with_fractions(&worded::way(out, &length)));
        }
    }
    pages.gap(pt(6));
}

/// A square of exactly one inch, a line of four, a line of a hundred millimetres.
fn rule(pages: &mut Pages) {
    pages.room(sixteenths(46));
    pages.section(&say("page-rule-title", &[]));
    pages.say(&say("page-caution-scale", &[]));
    pages.gap(pt(6));
    let (x, y) = (pages.left(), pages.y);
    let pen = Pen::solid(INK, pt(1));
    let square = Rect::new(x, y, Size::new(Length::INCH, Length::INCH));
    let middle = Point::new(x + half(Length::INCH), y + half(Length::INCH) + pt(5));
    let marks = vec![
        Mark::frame(square, pen.clone()),
        place(shape(&say("page-rule-square", &[]), pages.told.strong()), middle, Align::Middle, INK),
    ];
    pages.push(Mark::role(Role::Figure(say("page-rule-square-alt", &[])), marks));
    let at = x + Length::INCH + sixteenths(8);
    for (index, (length, steps, step, id)) in (0_i64..).zip([
        (Length::INCH * 4, 32_i64, Length::INCH, "page-rule-inches"),
        (Length::mm(100), 100, Length::MM, "page-rule-mm"),
    ]) {
        // In large print the words stand below their line: beside it they would leave the margin.
        let large = pages.told.large();
        let base = if large { y + pt(16) + pt(54) * index } else { y + pt(26) + pt(40) * index };
        let mut marks = vec![Mark::line(Point::new(at, base), Point::new(at + length, base), pen.clone())];
        for tick in 0..=steps {
            let x = if index == 0 { at + crate::scene::share(step, tick, 8) } else { at + step * tick };
            let tall = match (index, tick) {
                (0, tick) if tick % 8 == 0 => 12,
                (0, tick) if tick % 4 == 0 => 8,
                (1, tick) if tick % 10 == 0 => 12,
                (1, tick) if tick % 5 == 0 => 8,
                _ => 5,
            };
            let thin = Pen::solid(INK, crate::scene::share(pt(1), 1, 2));
            marks.push(Mark::line(Point::new(x, base), Point::new(x, base - pt(tall)), thin));
        }
        let beside = if large { Point::new(at, base + pt(22)) } else { Point::new(at + length + pt(8), base) };
        let words = place(shape(&say(id, &[]), pages.told.small()), beside, Align::Start, INK);
        marks.push(words);
        pages.push(Mark::role(Role::Figure(say(id, &[])), marks));
    }
    pages.y = y + Length::INCH + pt(if pages.told.large() { 34 } else { 18 });
}
