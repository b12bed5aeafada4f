//! Source: `tests/data/pieces_per_sheet.csv`, computed exactly by a separate programme (its header says how);
//! no tolerance. Bases whose fold keeps the grain come out as the columns for pieces that lie one way say.
#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;

use cards::model::{Fold, Grain};
use cards::plan::plan;
use cutting::Budget;
use drive::{length, project, size};
use measure::{Length, Size, Unit, parse_length};

/// A row: the base's short and long edge, the sheet, and the three numbers.
struct Row {
    short: Length,
    long: Length,
    sheet: Size,
    best: u32,
    short_along_short: u32,
    short_along_long: u32,
}

fn rows() -> Vec<Row> {
    let text = include_str!("data/pieces_per_sheet.csv");
    let row = |line: &str| {
        // The name may hold a comma; the numbers never do.
        let mut cells: Vec<&str> = line.rsplitn(9, ',').collect();
        cells.reverse();
        if !cells[0].contains("base") {
            return None;
        }
        let unit = if cells[3] == "mm" { Unit::Millimetre } else { Unit::Inch };
        let side = |text: &str| parse_length(text, Some(unit)).unwrap();
        let mm = |w: i64, h: i64| Size::new(Length::mm(w), Length::mm(h));
        let sheet = match cells[4] {
            "letter" => size("8 1/2 x 11"),
            "legal" => size("8 1/2 x 14"),
            "12x12" => size("12 x 12"),
            "A4" => mm(210, 297),
            "A3" => mm(297, 420),
            _ => return None,
        };
        let number = |cell: &str| cell.parse().unwrap();
        Some(Row {
            short: side(cells[1]),
            long: side(cells[2]),
            sheet,
            best: number(cells[5]),
            short_along_short: number(cells[6]),
            short_along_long: number(cells[7]),
        })
    };
    text.lines().filter(|line| !line.starts_with('#')).skip(1).filter_map(row).collect()
}

/// Sheets for 24 bases whose short edge is the fold; `None` if the plan says that none fits.
fn sheets(row: &Row, grain: Grain) -> (Option<u32>, bool) {
    let mut project = project();
    project.packs[0].designs.iter_mut().for_each(|design| design.use_sheets = Some(4));
    project.packs[0].sheet = size("1 x 1");
    project.goal.cards_per_sheet = Some(1);
    let recipe = &mut project.recipes[0];
    recipe.fold = Fold::Side;
    recipe.finished = Size::new(Length::from_ticks(row.long.ticks() / 2), row.short);
    recipe.layers.drain(2..);
    recipe.layers.remove(0);
    if let cards::model::Material::Patterned { width, height, .. } = &mut recipe.layers[0].material {
        (*width, *height) = (cards::model::Range::exactly(length("1")), cards::model::Range::exactly(length("1")));
    }
    project.cardstocks[0].sheets[0].size = row.sheet;
    project.cardstocks[0].sheets[0].grain = grain;
    let plan = plan(&project, &mut Budget::nodes(20_000_000));
    assert_eq!(plan.counts.bases, 24, "{:?}", plan.findings);
    let has = |code: &str| plan.findings.iter().any(|finding| finding.code == code);
    assert!(!has("internal-check"));
    ((!has("base-fits-no-sheet")).then(|| plan.stocks[0].sheet_count), has("grain-across-fold"))
}

#[test]
fn bases_come_out_as_the_table_says() {
    let rows = rows();
    assert!(rows.len() >= 25, "{} rows", rows.len());
    for row in &rows {
        let per = |count: u32| (count > 0).then(|| 24_u32.div_ceil(count));
        let told = format!("{:?} × {:?} from {:?}", row.short, row.long, row.sheet);
        assert_eq!(sheets(row, Grain::Unknown), (per(row.best), false), "{told}, any way");
        // The fold is the short edge. Grain along the height is along the sheet's long edge.
        for (grain, kept) in [(Grain::AlongHeight, row.short_along_long), (Grain::AlongWidth, row.short_along_short)] {
            let across = kept == 0 && row.best > 0;
            let expected = if across { per(row.best) } else { per(kept) };
            assert_eq!(sheets(row, grain), (expected, across), "{told}, {grain:?}");
        }
    }
}
