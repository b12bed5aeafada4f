//! What sheets of other sizes give, for whoever has not the same paper.

use std::collections::BTreeSet;

use cards::Plan;
use measure::Size;

use super::look::say;
use super::pages::{Column, Pages};
use super::told::Told;
use crate::text::Align;

/// Sheets people have, by their names in the table of named sizes; and what is said beside the size.
const SHEETS: [(&str, &str); 5] = [("6x6", ""), ("8x8", ""), ("12x12", ""), ("letter", "Letter"), ("A4", "A4")];
/// Most kinds of pieces that get a column.
const MOST_KINDS: usize = 3;

/// The patterned pieces of the plan: name and size as it stands on the card.
fn kinds(plan: &Plan) -> Vec<(String, Size)> {
    let mut seen = BTreeSet::new();
    let mut kinds = Vec::new();
    for layout in &plan.layouts {
        for piece in &layout.pieces {
            let size = piece.stands();
            if seen.insert((piece.recipe, piece.layer, size.width, size.height)) {
                kinds.push((super::needs::layer_name(plan, piece.recipe, piece.layer), size));
            }
        }
    }
    kinds.truncate(MOST_KINDS);
    kinds
}

/// A table of them.
pub(super) fn other_sizes(plan: &Plan, told: Told, pages: &mut Pages) {
    let Some(table) = rows(plan, told) else { return };
    pages.section(&say("page-others-title", &[]));
    pages.say(&say("page-others-lead", &[]));
    let columns: Vec<Column> = table
        .0
        .into_iter()
        .enumerate()
        .map(|(index, head)| Column {
            head,
            share: if index == 0 { 34 } else { 22 },
            align: if index == 0 { Align::Start } else { Align::End },
        })
        .collect();
    pages.table(&columns, &table.1);
}

/// Heads and rows; nothing where no patterned piece is cut.
pub(super) fn rows(plan: &Plan, told: Told) -> Option<(Vec<String>, Vec<Vec<String>>)> {
    let kinds = kinds(plan);
    if kinds.is_empty() {
        return None;
    }
    let mut heads = vec![say("page-others-sheet", &[])];
    heads.extend(kinds.iter().map(|(name, size)| format!("{name} {}", told.bare_size(*size))));
    let sheets = SHEETS.iter().filter_map(|(name, shown)| measure::sheet(name).map(|sheet| (sheet, shown)));
    let rows = sheets.map(|(sheet, shown)| {
        let size = told.size(sheet.size);
        let mut row = vec![if shown.is_empty() { size } else { format!("{shown}, {size}") }];
        row.extend(kinds.iter().map(|(_, size)| sheet.size.side_by_side(*size).to_string()));
        row
    });
    Some((heads, rows.collect()))
}
