//! The plan as tables for a spreadsheet: what to cut, which cardstock, what else. Comma-separated, quoted as RFC 4180 says.

use std::collections::BTreeMap;

use cards::Plan;
use measure::{Length, Size, Unit};
use words::say;

use crate::outputs::OutFile;

/// `pieces.csv`, `cardstock.csv`, `supplies.csv`.
pub(crate) fn tables(plan: &Plan) -> Vec<OutFile> {
    vec![
        OutFile::new("pieces.csv", written(pieces(plan))),
        OutFile::new("cardstock.csv", written(cardstock(plan))),
        OutFile::new("supplies.csv", written(supplies(plan))),
    ]
}

type Row = Vec<String>;

fn written(rows: Vec<Row>) -> Vec<u8> {
    let mut writer = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    for row in rows {
        // Rows of one table are equally long and go into memory: nothing can fail.
        let _ = writer.write_record(row);
    }
    writer.into_inner().unwrap_or_default()
}

fn heads(ids: &[&str]) -> Row {
    ids.iter().map(|id| say(id, &[])).collect()
}

/// A length as a decimal number of the project's unit, for sums.
fn number(length: Length, unit: Unit) -> String {
    let one = i128::from(unit.length().ticks());
    let parts = (i128::from(length.ticks()) * 10_000 * 2 + one).div_euclid(one * 2);
    let text = format!("{}.{:04}", parts / 10_000, parts.abs() % 10_000);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

fn sized(size: Size, unit: Unit) -> [String; 3] {
    [number(size.width, unit), number(size.height, unit), unit.sign().to_owned()]
}

fn pieces(plan: &Plan) -> Vec<Row> {
    let project = &plan.project;
    let unit = project.unit;
    let mut rows = vec![heads(&[
        "csv-piece",
        "csv-recipe",
        "csv-width",
        "csv-height",
        "csv-unit",
        "csv-from",
        "csv-face",
        "csv-scored-at",
        "csv-how-many",
    ])];
    let recipe = |index: usize| project.recipes.get(index).map(|recipe| recipe.name.clone()).unwrap_or_default();
    let layer = |recipe, layer| project.layer(recipe, layer).map(|layer| layer.name.clone()).unwrap_or_default();
    let mut kinds: BTreeMap<(usize, usize, Length, Length, String, String), u32> = BTreeMap::new();
    for layout in &plan.layouts {
        let Some(pack) = project.packs.get(layout.pack) else { continue };
        for used in &layout.sheets {
            let Some(design) = pack.designs.get(used.design) else { continue };
            let face = design.face(used.side);
            for piece in &layout.pieces {
                let size = piece.stands();
                let from = format!("{}: {}", pack.name, design.letter);
                let key = (piece.recipe, piece.layer, size.width, size.height, from, face.name.clone());
                *kinds.entry(key).or_default() += used.sheets;
            }
        }
    }
    for ((of, at, width, height, from, face), count) in kinds {
        let [width, height, sign] = sized(Size::new(width, height), unit);
        rows.push(vec![layer(of, at), recipe(of), width, height, sign, from, face, String::new(), count.to_string()]);
    }
    for stock in &plan.stocks {
        let name = project.cardstocks.get(stock.cardstock).map(|stock| stock.name.clone()).unwrap_or_default();
        for cut in &stock.cuts {
            let piece = match cut.layer {
                _ if cut.inside => say("page-needs-inside", &[]),
                None => say("page-needs-base", &[]),
                Some(at) => layer(cut.recipe, at),
            };
            let scores: Vec<String> = cut.scores.iter().map(|score| number(*score, unit)).collect();
            let [width, height, sign] = sized(cut.size, unit);
            let scores = scores.join("; ");
            rows.push(vec![
                piece,
                recipe(cut.recipe),
                width,
                height,
                sign,
                name.clone(),
                String::new(),
                scores,
                cut.count.to_string(),
            ]);
        }
    }
    rows
}

fn cardstock(plan: &Plan) -> Vec<Row> {
    let mut rows = vec![heads(&["csv-color", "csv-width", "csv-height", "csv-unit", "csv-sheets"])];
    for stock in &plan.stocks {
        let Some(known) = plan.project.cardstocks.get(stock.cardstock) else { continue };
        let mut by_size: BTreeMap<usize, u32> = BTreeMap::new();
        for sheet in &stock.sheets {
            *by_size.entry(sheet.size).or_default() += sheet.times;
        }
        for (index, count) in by_size {
            let Some(size) = known.sheets.get(index) else { continue };
            let [width, height, sign] = sized(size.size, plan.project.unit);
            rows.push(vec![known.name.clone(), width, height, sign, count.to_string()]);
        }
    }
    rows
}

fn supplies(plan: &Plan) -> Vec<Row> {
    let (project, counts) = (&plan.project, &plan.counts);
    let unit = project.unit;
    let mut rows = vec![heads(&["csv-what", "csv-which", "csv-amount", "csv-unit"])];
    let mut row = |what: String, which: &str, amount: String, unit: &str| {
        rows.push(vec![what, which.to_owned(), amount, unit.to_owned()]);
    };
    for layout in &plan.layouts {
        let Some(pack) = project.packs.get(layout.pack) else { continue };
        for used in &layout.sheets {
            let letter = pack.designs.get(used.design).map(|design| design.letter.as_str()).unwrap_or_default();
            row(say("csv-paper", &[]), &format!("{}: {letter}", pack.name), used.sheets.to_string(), "");
        }
    }
    for (ribbon, (length, _)) in
        project.ribbons.iter().zip(&counts.ribbon).filter(|(_, (length, _))| *length > Length::ZERO)
    {
        row(say("csv-ribbon", &[]), &ribbon.name, number(*length, unit), unit.sign());
    }
    if counts.strips > 0 {
        row(say("page-needs-strips", &[]), &greetings(plan), counts.strips.to_string(), "");
    }
    if counts.foam_squares > 0 {
        row(say("page-needs-foam", &[]), "", counts.foam_squares.to_string(), "");
    }
    if let Some(envelope) = &project.envelope {
        row(say("page-needs-envelopes", &[]), &envelope.name, counts.cards.to_string(), "");
    }
    rows
}

/// The words that are stamped.
fn greetings(plan: &Plan) -> String {
    let layers = plan.project.recipes.iter().flat_map(|recipe| &recipe.layers);
    let mut words: Vec<&str> = layers
        .filter_map(|layer| plan.project.greetings.get(layer.greeting()?.0))
        .map(|greeting| greeting.words.as_str())
        .collect();
    words.dedup();
    words.join("; ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_needs_quotes_gets_them() {
        // RFC 4180, sections 2.5 to 2.7.
        let row = |cells: &[&str]| cells.iter().map(|cell| (*cell).to_owned()).collect::<Row>();
        let bytes = written(vec![row(&["a,b", "say \"hi\"", "two\nlines", "plain"])]);
        assert_eq!(String::from_utf8_lossy(&bytes), "\"a,b\",\"say \"\"hi\"\"\",\"two\nlines\",plain\r\n");
    }

    #[test]
    fn lengths_are_plain_numbers() {
        assert_eq!(number(Length::from_ticks(Length::INCH.ticks() / 4 * 19), Unit::Inch), "4.75");
        assert_eq!(number(Length::mm(121), Unit::Millimetre), "121");
        assert_eq!(number(Length::INCH, Unit::Millimetre), "25.4");
    }
}
