//! The shape of an answer.

use cutting::Tree;
use cutting::steps::{CutPlan, Effort};
use measure::{Length, Rect, Size};
use rust_decimal::Decimal;

use super::borders::Borders;
use super::placed::Gain;
use super::shares::BatchShares;
use crate::background::Laid;
use crate::finding::Finding;
use crate::model::{Batch, Project, Side};

/// The whole answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// What was asked.
    pub project: Project,
    /// The batches, in the order of the project; one without a name where the project tells of none.
    pub batches: Vec<Batch>,
    /// The backgrounds as they are stamped, in the order of the project; `None` where one cannot be.
    pub backgrounds: Vec<Option<Laid>>,
    /// Layouts of patterned paper, one for each batch, pack and way the pack is used in it.
    pub layouts: Vec<Layout>,
    /// Every card of the batch, in the order they are numbered.
    pub cards: Vec<Card>,
    /// Cardstock, one entry for each colour that is used.
    pub stocks: Vec<StockPlan>,
    /// How evenly prints and cards are shared, one entry for each batch.
    pub shares: Vec<BatchShares>,
    /// What small errors do to every border.
    pub borders: Borders,
    /// How many of everything.
    pub counts: Counts,
    /// What it costs, as far as prices were given.
    pub costs: Costs,
    /// What the maker should know.
    pub findings: Vec<Finding>,
}

/// How many different layouts exist.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Exist {
    /// All were looked at: exactly so many.
    Exactly(u64),
    /// At least so many; the search did not look at all of them.
    AtLeast(u64),
}

/// How good a layout (or a cardstock plan) is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LayoutGrade {
    /// Nothing better exists; proven.
    ProvenBest,
    /// Best found; nothing better than `bound` (waste in square grid steps, or sheets/cost) exists.
    BestFound {
        /// The proven bound.
        bound: u64,
    },
    /// Stopped by the budget before an answer was sure.
    Stopped,
}

/// One sheet cut for some cards.
#[derive(Debug, Clone, PartialEq)]
pub struct Layout {
    /// Index of the batch.
    pub batch: usize,
    /// Index of the pack.
    pub pack: usize,
    /// The printed panels that its cuts keep to, on the whole sheet; empty where nothing is cut on printed lines.
    pub panels: Vec<Rect>,
    /// One grid step.
    pub step: Length,
    /// The part of the sheet that is used, in sheet coordinates (top left of the whole sheet is 0, 0).
    pub usable: Rect,
    /// The cuts of the usable part, in grid steps.
    pub tree: Tree,
    /// The pieces, in sheet coordinates, in the order of their marks.
    pub pieces: Vec<Piece>,
    /// The trimmer steps for all sheets of `sheets`, replayed and checked.
    pub cut_plan: CutPlan,
    /// One grid step of the cut plan; it takes in the unusable edges, so it can be finer than `step`.
    pub cut_step: Length,
    /// Settings and cuts.
    pub effort: Effort,
    /// What is left over on one sheet, in square ticks (the unusable edges not counted).
    pub waste: i128,
    /// Cards of each recipe from one sheet.
    pub recipe_counts: Vec<u32>,
    /// The sheets it is used for.
    pub sheets: Vec<SheetUse>,
    /// How good it is.
    pub grade: LayoutGrade,
    /// How many different layouts waste as little.
    pub exist: Exist,
    /// Other layouts that really differ, best first.
    pub alternatives: Vec<Alternative>,
    /// Other cuts of the usable part, in grid steps, that give the same pieces with as much left over and as many settings and
    /// cuts: the prints may choose among them. Empty with pins.
    pub equals: Vec<Tree>,
    /// What was gained by placing it on the prints; `None` where nothing is known of them.
    pub gain: Option<Gain>,
}

/// A design cut by a layout.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetUse {
    /// Index of the design in the pack.
    pub design: usize,
    /// The side that shows.
    pub side: Side,
    /// How many sheets of it.
    pub sheets: u32,
    /// How many sheets of it earlier layouts took: its own are numbered from the next on.
    pub before: u32,
}

/// A patterned piece on a layout.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Piece {
    /// What is pencilled on its back: `1`, `2`, …; the design's letter comes before it.
    pub mark: String,
    /// Index of the recipe.
    pub recipe: usize,
    /// Index of the layer in the recipe.
    pub layer: usize,
    /// Which card of the sheet it is for, from 0; `None` for a spare.
    pub card: Option<usize>,
    /// Where it lies on the sheet.
    pub rect: Rect,
    /// True if it lies a quarter turn from the way it stands on the card.
    pub turned: bool,
}

impl Piece {
    /// Its size as it stands on its card.
    pub fn stands(&self) -> Size {
        if self.turned { self.rect.size.turned() } else { self.rect.size }
    }
}

/// Another layout, told in numbers.
#[derive(Debug, Clone, PartialEq)]
pub struct Alternative {
    /// Its cuts in grid steps.
    pub tree: Tree,
    /// Its pieces.
    pub pieces: Vec<Piece>,
    /// Left over on one sheet, in square ticks.
    pub waste: i128,
    /// Settings and cuts.
    pub effort: Effort,
    /// Cards of each recipe from one sheet.
    pub recipe_counts: Vec<u32>,
}

/// One finished card.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Card {
    /// From 1, through all batches.
    pub number: u32,
    /// Index of the batch.
    pub batch: usize,
    /// Index of the recipe.
    pub recipe: usize,
    /// Index of the pack and of the design its main piece comes from.
    pub pack: usize,
    /// Index of that design.
    pub design: usize,
    /// What it is made of, bottom layer first (the base itself is not listed).
    pub parts: Vec<CardPart>,
}

/// One layer of one finished card.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CardPart {
    /// Index of the layer in the recipe.
    pub layer: usize,
    /// Where it lies on the card's front, top left is 0, 0.
    pub rect: Rect,
    /// What it is.
    pub kind: PartKind,
}

/// What a layer of a finished card is made of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PartKind {
    /// A patterned piece.
    Patterned {
        /// Index of the layout.
        layout: usize,
        /// Index of the piece in the layout.
        piece: usize,
        /// Index of the design in the layout's pack.
        design: usize,
        /// The side that shows.
        side: Side,
        /// Which sheet of that design, from 1.
        sheet: u32,
    },
    /// Cardstock, by index.
    Cardstock(usize),
    /// A strip of cardstock with a greeting: cardstock index, greeting index.
    Strip(usize, usize),
    /// Ribbon, by index; true with a bow.
    Ribbon(usize, bool),
}

/// What must be cut from one cardstock.
#[derive(Debug, Clone, PartialEq)]
pub struct StockPlan {
    /// Index of the cardstock.
    pub cardstock: usize,
    /// What is wanted.
    pub cuts: Vec<StockCut>,
    /// How its sheets are cut, equal sheets together.
    pub sheets: Vec<StockSheetPlan>,
    /// Sheets in all.
    pub sheet_count: u32,
    /// For each size of sheet that is used, the most pieces of each cut that one sheet of it gives, as far as a short
    /// search finds; 0 where none comes out of it. Empty for a size that is not used.
    pub most_each: Vec<Vec<u32>>,
    /// The area bound: no plan uses less than so many sheets (of the largest size, if there are several).
    pub area_bound: u32,
    /// How good the answer is.
    pub grade: LayoutGrade,
}

/// One kind of piece wanted from a cardstock.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StockCut {
    /// Index of the recipe, the first where several take the same piece.
    pub recipe: usize,
    /// The other recipes that take the very same piece: alike pieces are cut together.
    pub also: Vec<usize>,
    /// Index of the layer; `None`: the base; `Some(usize::MAX)` never occurs.
    pub layer: Option<usize>,
    /// True for the inside sheet.
    pub inside: bool,
    /// Its size as it stands on the card (base: unfolded).
    pub size: Size,
    /// How many.
    pub count: u32,
    /// Scores as distances from the left (side folds) or top (top fold).
    pub scores: Vec<Length>,
    /// True if it may lie a quarter turned on the sheet.
    pub may_turn: bool,
}

/// Sheets of one cardstock cut alike.
#[derive(Debug, Clone, PartialEq)]
pub struct StockSheetPlan {
    /// Index of the size in the cardstock's `sheets`.
    pub size: usize,
    /// How many sheets are cut this way.
    pub times: u32,
    /// One grid step.
    pub step: Length,
    /// The cuts.
    pub tree: Tree,
    /// The pieces.
    pub pieces: Vec<StockPiece>,
    /// The trimmer steps, replayed and checked.
    pub cut_plan: CutPlan,
}

/// A piece of cardstock on its sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StockPiece {
    /// Index into the `cuts` of its plan.
    pub cut: usize,
    /// Where it lies on the sheet.
    pub rect: Rect,
    /// True if it lies a quarter turned.
    pub turned: bool,
}

/// How many of everything.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Counts {
    /// Cards in all.
    pub cards: u32,
    /// Sheets of patterned paper cut.
    pub paper_sheets: u32,
    /// Patterned pieces cut.
    pub paper_pieces: u32,
    /// Cards of each recipe.
    pub cards_by_recipe: Vec<u32>,
    /// Bases.
    pub bases: u32,
    /// Mats.
    pub mats: u32,
    /// Greeting strips.
    pub strips: u32,
    /// Foam squares.
    pub foam_squares: u32,
    /// Ribbon of each kind: length in all and whole spools (`None` if the spool's length is not told).
    pub ribbon: Vec<(Length, Option<u32>)>,
    /// Tape: length in all and whole rolls (`None` if the roll's length is not told); nothing where no tape is told of.
    pub tape: Option<(Length, Option<u32>)>,
    /// Whole packs of foam squares, where the maker tells how many a pack holds.
    pub foam_packs: Option<u32>,
    /// Envelopes, if the cards go into some, and whole packs of them, if a pack is told of.
    pub envelopes: Option<(u32, Option<u32>)>,
    /// Impressions of the stamps.
    pub impressions: u32,
}

/// What a line of the costs is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CostOf {
    /// Patterned paper, by index of the pack.
    Paper(usize),
    /// Cardstock, by index.
    Cardstock(usize),
    /// Ribbon, by index.
    Ribbon(usize),
    /// Tape.
    Tape,
    /// Foam squares.
    Foam,
    /// Envelopes.
    Envelopes,
    /// The ink pad.
    InkPad,
    /// Stamps.
    Stamps,
}

/// One line of the costs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CostLine {
    /// What it is for.
    pub of: CostOf,
    /// The maker's own name of it.
    pub name: String,
    /// What the batch uses up of it, in the currency of its price; `None`: no price was given.
    pub used: Option<Decimal>,
    /// The currency.
    pub currency: String,
    /// The date of the price, if told.
    pub date: Option<String>,
}

/// Material used, as far as prices were given.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Costs {
    /// One line a supply.
    pub lines: Vec<CostLine>,
    /// Sum of the lines that have a price, if they share one currency.
    pub total_used: Option<Decimal>,
    /// True if a line has no price: the total reads “at least”.
    pub at_least: bool,
}
