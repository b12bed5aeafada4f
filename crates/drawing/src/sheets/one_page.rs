//! The handout on one page: what to cut, and how the sheets are cut, in a few words.

use cards::Plan;

use super::Faces;
use super::edition::Edition;
use super::look::say;
use super::needs::pieces_table;
use super::pages::Pages;
use super::steps::of_layout;
use super::told::Told;
use crate::scene::Scene;

/// One page for the wall or the bag: the table of pieces and the cuts of as many sheets as fit, the most used first.
///
/// # Shape
/// Always one page. What did not fit is named at its end: the full handout has it.
pub fn one_page(plan: &Plan, edition: &Edition) -> Vec<Scene> {
    words::speaking(edition.language, || {
        let told = Told::new(plan.project.mark, *edition);
        let all = pieces_table(plan, told).1.len();
        // All of it first; then without the last sheets; then without the last pieces.
        let ways =
            (0..=plan.layouts.len()).rev().map(|layouts| (all, layouts)).chain((0..all).rev().map(|rows| (rows, 0)));
        let mut shortest = Vec::new();
        for (rows, layouts) in ways {
            shortest = drawn(plan, told, rows, layouts);
            if shortest.len() == 1 {
                break;
            }
        }
        shortest.truncate(1);
        shortest
    })
}

fn drawn(plan: &Plan, told: Told, rows: usize, layouts: usize) -> Vec<Scene> {
    let mut pages = Pages::new(told, &plan.project.name);
    pages.chapter(&plan.project.name);
    let (columns, mut all) = pieces_table(plan, told);
    let whole = all.len() == rows && layouts == plan.layouts.len();
    all.truncate(rows);
    pages.table(&columns, &all);
    let mut order: Vec<usize> = (0..plan.layouts.len()).collect();
    let sheets = |index: &usize| plan.layouts[*index].sheets.iter().map(|used| used.sheets).sum::<u32>();
    order.sort_by_key(|index| std::cmp::Reverse(sheets(index)));
    for index in order.into_iter().take(layouts) {
        pages.section(&say("page-sheet-title-numbered", &[("number", (index + 1).into())]));
        for (number, sentence) in (1_u32..).zip(of_layout(plan, &Faces::new(), &plan.layouts[index], told).short()) {
            pages.numbered(number, &sentence);
        }
    }
    if !whole {
        pages.note(&say("page-one-rest", &[]));
    }
    // Short as it is, it is cut by: the blade is never left out.
    pages.note(&say("page-caution-blade", &[]));
    pages.finish(&plan.project.name)
}
