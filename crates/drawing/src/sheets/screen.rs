//! Single pictures for a screen: one step of the cuts, one sheet of cardstock.
//!
//! The same words and drawings as on the printed pages. Left out on purpose: which step is due.

use std::collections::BTreeSet;

use cards::Plan;
use cards::plan::{Layout, Piece, StockPlan, StockSheetPlan};
use cutting::steps::{CutStep, PartId, Step};
use measure::{Length, Rect, Size};

use super::Faces;
use super::edition::Edition;
use super::look::{Fit, inset, pt, say};
use super::needs::scores;
use super::papers::left_over;
use super::sketch::{Says, Sketch, SketchPiece, Under, dimensions_room};
use super::steps::{Cuts, at_trimmer, map, of_layout, scored};
use super::swatch::Swatch;
use super::told::Told;
use crate::scene::{Mark, Role, Scene, share};

/// Whose cuts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum CutsOf {
    /// A layout of patterned paper, by index.
    Layout(usize),
    /// A cardstock's plan, and which of its sheets that are cut alike, by index.
    Stock(usize, usize),
}

/// One step at the trimmer.
#[derive(Debug, Clone, PartialEq)]
pub struct StepPicture {
    /// What to do first: where the stop goes.
    pub head: String,
    /// The rest, sentence by sentence.
    pub said: Vec<String>,
    /// What to take care of.
    pub cautions: Vec<String>,
    /// How the paper lies at the trimmer.
    pub drawing: Scene,
    /// Where on the sheet that is.
    pub place: Scene,
}

/// A step of the cuts, by index; `None` if there is no such step.
///
/// # Shape
/// Words and pictures are those of the printed page of that edition.
pub fn step_picture(plan: &Plan, faces: &Faces, of: CutsOf, step: usize, edition: &Edition) -> Option<StepPicture> {
    let told = Told::new(plan.project.mark, *edition);
    let cuts = match of {
        CutsOf::Layout(index) => of_layout(plan, faces, plan.layouts.get(index)?, told),
        CutsOf::Stock(stock, sheet) => {
            let stock = plan.stocks.get(stock)?;
            let sheet = stock.sheets.get(sheet)?;
            let marks = (1_u32..).zip(&sheet.pieces).map(|(number, piece)| (piece.rect, number.to_string())).collect();
            let under = Under::Stock(Swatch::stock(plan, stock.cardstock));
            let name = plan.project.cardstocks.get(stock.cardstock).map(|known| known.name.as_str());
            Cuts { plan: &sheet.cut_plan, step: sheet.step, under, marks, stock: name, letter: None, told }
        }
    };
    pictured(&cuts, step)
}

/// A step of any cuts, by index.
pub(super) fn pictured(cuts: &Cuts<'_>, step: usize) -> Option<StepPicture> {
    let told = cuts.told;
    let due = cuts.plan.steps.get(step)?;
    let mut there = BTreeSet::from([PartId::SHEET]);
    let mut before: Option<&CutStep> = None;
    for done in cuts.plan.steps.iter().take(step) {
        if let Step::Cut(cut) = done {
            for work in &cut.work {
                there.remove(&work.part);
                there.extend(work.off.iter().chain([&work.rest]).copied());
            }
            before = Some(cut);
        }
    }
    let (head, said) = cuts.sentences(due, before);
    let cautions = if let Step::Cut(cut) = due { cuts.cautions(cut) } else { Vec::new() };
    let place = Rect::new(pt(4), pt(4), Size::new(told.step_picture(), Length::ZERO));
    let (marks, tall) = match due {
        Step::Cut(cut) => at_trimmer(cuts, cut, place),
        Step::Score(score) => scored(cuts, score, place),
    };
    let alt = say("page-step-alt", &[("number", (step + 1).into()), ("head", (&head).into())]);
    // Where the part is narrow, so is its picture.
    let right = marks.iter().filter_map(Mark::bounds).map(Rect::right).max().unwrap_or_default();
    let wide = (right + pt(6)).max(share(told.step_picture(), 2, 3));
    let drawing = figure(alt, Size::new(wide, tall + pt(8)), marks);
    let side = told.map();
    let marks = map(cuts, due, &there, Rect::new(pt(4), pt(4), Size::new(side, side)));
    let place = figure(say("page-step-map", &[]), Size::new(side + pt(8), side + pt(34)), marks);
    Some(StepPicture { head, said, cautions, drawing, place })
}

/// A sheet of cardstock with its cuts and scores, as large as `size` allows; `None` if there is no such sheet.
pub fn stock_drawing(plan: &Plan, stock: usize, sheet: usize, size: Size) -> Option<Scene> {
    let stock = plan.stocks.get(stock)?;
    let sheet = stock.sheets.get(sheet)?;
    let told = Told::new(plan.project.mark, Edition::plain(plan, super::Paper::Letter));
    let place = inset(Rect::new(Length::ZERO, Length::ZERO, size), pt(9));
    let marks = stock_sketch(plan, stock, sheet)?.marks(place, told, Says::All);
    let name = plan.project.cardstocks.get(stock.cardstock).map_or("", |cardstock| &cardstock.name);
    Some(figure(say("page-stock-color", &[("name", name.into()), ("count", sheet.times.into())]), size, marks))
}

/// A sheet of paper on a screen: where it lies in a drawing of some size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OnScreen {
    fit: Fit,
    place: Rect,
    sheet: Size,
    told: Told,
}

/// Where the sheet of a layout lies in a drawing of that size.
pub fn on_screen(plan: &Plan, layout: usize, size: Size) -> Option<OnScreen> {
    let sheet = plan.project.packs.get(plan.layouts.get(layout)?.pack)?.sheet;
    let told = Told::new(plan.project.mark, Edition::plain(plan, super::Paper::Letter));
    let place = inset(Rect::new(Length::ZERO, Length::ZERO, size), pt(9));
    let room = dimensions_room(told);
    let inside = Size::new(place.size.width - room, place.size.height - room);
    let fit = Fit::into(sheet, Rect::new(place.x + room, place.y + room, inside));
    Some(OnScreen { fit, place, sheet, told })
}

impl OnScreen {
    /// Where a rectangle of the sheet lies in the drawing.
    pub fn rect(&self, rect: Rect) -> Rect {
        self.fit.rect(rect)
    }

    /// Where the whole sheet lies.
    pub fn whole(&self) -> Rect {
        self.fit.rect(Rect::new(Length::ZERO, Length::ZERO, self.sheet))
    }

    /// The cuts, sizes and marks of pieces, to be laid over a picture of the print.
    pub fn cuts(&self, pieces: &[Piece], left_over: &[Rect], edges: &[Rect]) -> Vec<Mark> {
        let pieces = pieces.iter().map(|piece| SketchPiece {
            mark: piece.mark.clone(),
            rect: piece.rect,
            turned: piece.turned,
            scores: Vec::new(),
        });
        let sketch = Sketch {
            sheet: self.sheet,
            pieces: pieces.collect(),
            waste: left_over.to_vec(),
            edges: edges.to_vec(),
            under: Under::Clear,
            arrows: true,
        };
        sketch.marks(self.place, self.told, Says::All)
    }
}

/// The edges of a layout's sheet that cannot be used.
pub fn unusable_edges(layout: &Layout) -> Vec<Rect> {
    left_over(&layout.cut_plan, layout.cut_step).1
}

fn stock_sketch(plan: &Plan, stock: &StockPlan, sheet: &StockSheetPlan) -> Option<Sketch> {
    let known = plan.project.cardstocks.get(stock.cardstock)?.sheets.get(sheet.size)?;
    let (waste, edges) = left_over(&sheet.cut_plan, sheet.step);
    let pieces = (1_u32..).zip(&sheet.pieces).map(|(number, piece)| SketchPiece {
        mark: number.to_string(),
        rect: piece.rect,
        turned: piece.turned,
        scores: stock.cuts.get(piece.cut).map(|c| scores(plan, c, piece.rect, piece.turned)).unwrap_or_default(),
    });
    let under = Under::Stock(Swatch::stock(plan, stock.cardstock));
    Some(Sketch { sheet: known.size, pieces: pieces.collect(), waste, edges, under, arrows: false })
}

fn figure(alt: String, size: Size, marks: Vec<Mark>) -> Scene {
    Scene { size, title: alt.clone(), marks: vec![Mark::role(Role::Figure(alt), marks)] }
}
