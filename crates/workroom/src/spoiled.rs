//! Spoiled pieces: which one is meant, and what takes its place, in words.

use cards::Plan;
use cards::plan::{Fix, Lost, Source};
use drawing::sheets::lost_name;
use words::say;

use crate::wording;

/// Why no piece is meant.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unknown {
    /// There is none of that name.
    Nothing,
    /// Layouts that all have it, from 1.
    Several(Vec<usize>),
}

/// The piece that a person names: `A7`, `2:A7` where layouts share names, or a cardstock and a layer, `Milk base`.
///
/// # Errors
/// [`Unknown`].
pub fn find(plan: &Plan, text: &str) -> Result<Lost, Unknown> {
    let (of, mark) = match text.trim().split_once(':') {
        Some((layout, mark)) => (layout.trim().parse::<usize>().ok(), mark.trim()),
        None => (None, text.trim()),
    };
    let same = |name: &str| name.eq_ignore_ascii_case(mark);
    let papers: Vec<Lost> = papers(plan).into_iter().filter(|lost| same(&lost_name(plan, *lost))).collect();
    let layout = |lost: &Lost| if let Lost::Paper { layout, .. } = lost { layout + 1 } else { 0 };
    if let Some(of) = of {
        return papers.into_iter().find(|lost| layout(lost) == of).ok_or(Unknown::Nothing);
    }
    match papers.as_slice() {
        [] => {}
        [one] => return Ok(*one),
        several => return Err(Unknown::Several(several.iter().map(layout).collect())),
    }
    let named = |lost: &Lost| same(&format!("{} {}", stock_name(plan, *lost), lost_name(plan, *lost)));
    stocks(plan).into_iter().find(named).ok_or(Unknown::Nothing)
}

/// Every patterned piece there is, by layout, design and mark.
pub fn papers(plan: &Plan) -> Vec<Lost> {
    let mut all = Vec::new();
    for (layout, laid) in plan.layouts.iter().enumerate() {
        for used in &laid.sheets {
            all.extend((0..laid.pieces.len()).map(|piece| Lost::Paper { layout, piece, design: used.design }));
        }
    }
    all
}

/// Every kind of piece of cardstock there is.
pub fn stocks(plan: &Plan) -> Vec<Lost> {
    let of = |(stock, planned): (usize, &cards::plan::StockPlan)| {
        (0..planned.cuts.len()).map(move |cut| Lost::Stock { stock, cut })
    };
    plan.stocks.iter().enumerate().flat_map(of).collect()
}

/// The cardstock of a lost piece; empty for patterned paper.
fn stock_name(plan: &Plan, lost: Lost) -> String {
    let Lost::Stock { stock, .. } = lost else { return String::new() };
    let known = plan.stocks.get(stock).and_then(|stock| plan.project.cardstocks.get(stock.cardstock));
    known.map(|known| known.name.clone()).unwrap_or_default()
}

/// A lost piece in words: its name, its layer and its size.
pub fn name(plan: &Plan, lost: Lost) -> String {
    let (layer, recipe, sized) = match lost {
        Lost::Paper { layout, piece, .. } => {
            let found = plan.layouts.get(layout).and_then(|laid| laid.pieces.get(piece));
            let recipe = found.and_then(|found| plan.project.recipes.get(found.recipe));
            let layer = found.and_then(|found| recipe?.layers.get(found.layer)).map(|layer| layer.name.clone());
            (layer, recipe, found.map(cards::plan::Piece::stands))
        }
        Lost::Stock { stock, cut } => {
            let found = plan.stocks.get(stock).and_then(|stock| stock.cuts.get(cut));
            let recipe = found.and_then(|found| plan.project.recipes.get(found.recipe));
            (None, recipe, found.map(|found| found.size))
        }
    };
    say(
        "spoiled-name",
        &[
            ("kind", if layer.is_some() { "paper" } else { "stock" }.into()),
            ("name", lost_name(plan, lost).into()),
            ("layer", layer.unwrap_or_default().into()),
            ("stock", stock_name(plan, lost).into()),
            ("recipe", recipe.map(|recipe| recipe.name.clone()).unwrap_or_default().into()),
            ("size", wording::size(sized.unwrap_or_default(), plan.project.mark).into()),
        ],
    )
}

/// What is taken for a lost piece, in a sentence.
pub fn told(plan: &Plan, fix: &Fix) -> String {
    let project = &plan.project;
    let sized = fix.recut.as_ref().map(|recut| wording::size(recut.size, project.mark)).unwrap_or_default();
    let design = |pack: usize, design: usize| {
        project.design(pack, design).map(|design| format!("{} {}", design.letter, design.name)).unwrap_or_default()
    };
    let of_layout = |layout: usize, of: usize| plan.layouts.get(layout).map(|laid| design(laid.pack, of));
    let stock = |stock: usize| project.cardstocks.get(stock).map(|stock| stock.name.clone()).unwrap_or_default();
    let (kind, what, layout) = match fix.source {
        Source::Spare { layout, piece, design } => {
            ("spare", lost_name(plan, Lost::Paper { layout, piece, design }), layout + 1)
        }
        Source::PaperRest { layout, design, .. } => {
            ("paper-rest", of_layout(layout, design).unwrap_or_default(), layout + 1)
        }
        Source::StockRest { stock: of, .. } => {
            ("stock-rest", plan.stocks.get(of).map(|of| stock(of.cardstock)).unwrap_or_default(), 0)
        }
        Source::EarlierRest { .. } => ("earlier", String::new(), 0),
        Source::PaperSheet { pack, design: of } => ("paper-sheet", design(pack, of), 0),
        Source::StockSheet { cardstock, .. } => ("stock-sheet", stock(cardstock), 0),
    };
    say(
        "spoiled-take",
        &[("kind", kind.into()), ("what", what.into()), ("size", sized.into()), ("layout", layout.into())],
    )
}
