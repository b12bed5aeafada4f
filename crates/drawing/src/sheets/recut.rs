//! What is cut again for a spoiled piece: its steps at the trimmer, in words and pictures.

use cards::Plan;
use cards::model::Side;
use cards::plan::{Fix, Lost, Source, on_sheet};
use cutting::steps::Fate;
use measure::{Rect, Size};

use super::Faces;
use super::card::shares_of;
use super::edition::Edition;
use super::look::{WHITE, say};
use super::screen::{StepPicture, pictured};
use super::sketch::Under;
use super::steps::Cuts;
use super::swatch::Swatch;
use super::told::Told;

/// The steps that cut a lost piece again; none for a spare, which is cut already.
pub fn recut_steps(plan: &Plan, faces: &Faces, fix: &Fix, edition: &Edition) -> Vec<StepPicture> {
    let Some(recut) = &fix.recut else { return Vec::new() };
    let told = Told::new(plan.project.mark, *edition);
    let marks = recut.cut_plan.parts.iter().filter_map(|part| match part.fate {
        Fate::Piece { kind, .. } => Some((on_sheet(part.rect, recut.step), lost_name(plan, *recut.kinds.get(kind)?))),
        _ => None,
    });
    let cuts = Cuts {
        plan: &recut.cut_plan,
        step: recut.step,
        under: under(plan, faces, fix, recut.size),
        marks: marks.collect(),
        stock: None,
        letter: None,
        told,
    };
    (0..recut.cut_plan.steps.len()).filter_map(|step| pictured(&cuts, step)).collect()
}

/// What is pencilled on a patterned piece, as `A7`; the layer of a piece of cardstock.
pub fn lost_name(plan: &Plan, lost: Lost) -> String {
    let found = match lost {
        Lost::Paper { layout, piece, design } => plan.layouts.get(layout).and_then(|laid| {
            let letter = &plan.project.design(laid.pack, design)?.letter;
            Some(format!("{letter}{}", laid.pieces.get(piece)?.mark))
        }),
        Lost::Stock { stock, cut } => plan.stocks.get(stock).and_then(|stock| {
            let cut = stock.cuts.get(cut)?;
            let layer = cut.layer.and_then(|layer| plan.project.layer(cut.recipe, layer));
            Some(match (cut.inside, layer) {
                (true, _) => say("lost-inside", &[]),
                (false, Some(layer)) => layer.name.clone(),
                (false, None) => say("lost-base", &[]),
            })
        }),
    };
    found.unwrap_or_default()
}

/// What the thing that is cut looks like.
fn under(plan: &Plan, faces: &Faces, fix: &Fix, size: Size) -> Under {
    let print = |pack: usize, design: usize, rect: Rect| {
        let sheet = plan.project.packs.get(pack)?.sheet;
        let sides = [Side::Front, Side::Back];
        let used = plan.layouts.iter().filter(|laid| laid.pack == pack).flat_map(|laid| &laid.sheets);
        let side = used.clone().find(|used| used.design == design).map(|used| used.side);
        let face = side.into_iter().chain(sides).find_map(|side| faces.get(&(pack, design, side)))?;
        Some(Under::Print(face.part(shares_of(rect, sheet), 500, 500)))
    };
    let found = match fix.source {
        Source::PaperRest { layout, design, rect } => {
            plan.layouts.get(layout).and_then(|laid| print(laid.pack, design, rect))
        }
        Source::PaperSheet { pack, design } => plan
            .project
            .packs
            .get(pack)
            .and_then(|known| print(pack, design, Rect::new(known.unusable.left, known.unusable.top, size))),
        Source::StockRest { stock, .. } => {
            plan.stocks.get(stock).map(|stock| Under::Stock(Swatch::stock(plan, stock.cardstock)))
        }
        Source::StockSheet { cardstock, .. } => Some(Under::Stock(Swatch::stock(plan, cardstock))),
        Source::EarlierRest { .. } => match fix.lost.first() {
            Some(Lost::Stock { stock, .. }) => {
                plan.stocks.get(*stock).map(|stock| Under::Stock(Swatch::stock(plan, stock.cardstock)))
            }
            // Which part of the print an earlier rest shows is not told.
            _ => None,
        },
        Source::Spare { .. } => None,
    };
    found.unwrap_or(Under::Color(WHITE))
}
