//! `plan.json`: the whole plan for other programs, every length as exact text in the maker's unit.
//!
//! `docs/schema/plan.schema.json` is written from these types (`cargo schemas`) and a test holds them together.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::Serialize;

use super::shares::BatchView;

/// Format name of this version.
pub const FORMAT: &str = "octavo-plan-1";

/// A whole plan.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct PlanView {
    /// Always `octavo-plan-1`.
    pub format: &'static str,
    /// The project's name.
    pub project: String,
    /// Who made it, if told.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub maker: Option<String>,
    /// The date the maker wrote on it, if any.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub date: Option<String>,
    /// `in` or `mm`.
    pub unit: &'static str,
    /// The finest mark the maker cuts to.
    pub mark: String,
    /// How many of everything.
    pub counts: CountsView,
    /// Backgrounds that are stamped by hand.
    pub backgrounds: Vec<BackgroundView>,
    /// How patterned sheets are cut.
    pub layouts: Vec<LayoutView>,
    /// The batches, how evenly they share the prints, and their kits.
    pub batches: Vec<BatchView>,
    /// Every card of the batches.
    pub cards: Vec<CardView>,
    /// What is cut from cardstock.
    pub cardstock: Vec<StockView>,
    /// What small errors do to the borders.
    pub borders: BordersView,
    /// What the batch uses up, in money.
    pub costs: CostsView,
    /// What the maker should know, the gravest first.
    pub findings: Vec<FindingView>,
}

/// How many of everything.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct CountsView {
    /// Cards in all.
    pub cards: u32,
    /// Cards of each recipe.
    pub by_recipe: Vec<RecipeCount>,
    /// Sheets of patterned paper cut.
    pub paper_sheets: u32,
    /// Patterned pieces cut.
    pub paper_pieces: u32,
    /// Bases.
    pub bases: u32,
    /// Mats.
    pub mats: u32,
    /// Greeting strips.
    pub strips: u32,
    /// Foam squares.
    pub foam_squares: u32,
    /// Whole packs of foam squares, if a pack is told of.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub foam_packs: Option<u32>,
    /// Ribbon of each kind that is used.
    pub ribbon: Vec<RibbonView>,
    /// Tape, if one is told of; its whole rolls are counted as spools.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tape: Option<RibbonView>,
    /// Envelopes, if the cards go into some.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub envelopes: Option<u32>,
    /// Whole packs of envelopes, if a pack is told of.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub envelope_packs: Option<u32>,
    /// Impressions of the stamps.
    pub impressions: u32,
}

/// Cards of one recipe.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct RecipeCount {
    /// The recipe.
    pub recipe: String,
    /// How many cards.
    pub cards: u32,
}

/// Ribbon of one kind.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct RibbonView {
    /// Its name.
    pub name: String,
    /// Length in all.
    pub length: String,
    /// Whole spools, if the length of a spool is told.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spools: Option<u32>,
}

/// How good an answer is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(tag = "grade", rename_all = "kebab-case")]
pub enum GradeView {
    /// Nothing better exists; proven.
    ProvenBest,
    /// The best found; nothing better than `bound` exists.
    BestFound {
        /// The proven bound: waste in square grid steps for a layout, sheets or cost for cardstock.
        bound: u64,
    },
    /// Stopped before it was sure.
    Stopped,
}

/// How many layouts waste as little.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum ExistView {
    /// All were looked at.
    Exactly(u64),
    /// The search did not look at all.
    AtLeast(u64),
}

/// A place on a sheet or a card: x to the right and y down from its top left.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct PlaceView {
    /// From the left.
    pub x: String,
    /// From the top.
    pub y: String,
    /// Width as it lies.
    pub width: String,
    /// Height as it lies.
    pub height: String,
}

/// One patterned sheet cut for some cards.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct LayoutView {
    /// From 1.
    pub number: usize,
    /// The pack.
    pub pack: String,
    /// Size of its sheets.
    pub sheet: String,
    /// The part of a sheet that is used.
    pub usable: PlaceView,
    /// How good it is.
    pub grade: GradeView,
    /// How many layouts waste as little.
    pub exist: ExistView,
    /// Left over on one sheet, in square inches.
    pub waste_square_inches: f64,
    /// Cards of each recipe from one sheet.
    pub cards_per_sheet: Vec<RecipeCount>,
    /// The designs it is used for.
    pub sheets: Vec<SheetView>,
    /// The pieces, in the order of their marks.
    pub pieces: Vec<PieceView>,
    /// Different distances at the trimmer.
    pub settings: u32,
    /// Cuts on one sheet.
    pub cuts: u32,
    /// The cuts of the usable part as a tree.
    pub tree: TreeView,
    /// Every part that is ever in hand; the steps name them by number.
    pub parts: Vec<HandView>,
    /// What to do at the trimmer, in order.
    pub steps: Vec<StepView>,
    /// Other layouts that really differ, best first.
    pub alternatives: Vec<AlternativeView>,
    /// What was gained by placing the pieces on the prints, where something is known of them.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub placing: Option<PlacingView>,
}

/// Pictures of the prints that stay whole on one piece with nothing over them, counted over all sheets of a layout.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct PlacingView {
    /// Pictures in all.
    pub pictures: u64,
    /// Whole under the plain layout.
    pub whole_plain: u64,
    /// Whole as it is cut.
    pub whole: u64,
    /// True if no other order of the same cuts is better; proven.
    pub proven: bool,
    /// Print by print, on one sheet.
    pub prints: Vec<PrintPlacingView>,
}

/// What becomes of one print on one sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct PrintPlacingView {
    /// The design's letter.
    pub design: String,
    /// `front` or `back`: the side that shows.
    pub side: &'static str,
    /// Pictures.
    pub pictures: usize,
    /// Whole under the plain layout.
    pub whole_plain: usize,
    /// Whole as it is cut.
    pub whole: usize,
    /// Regions to keep that are whole.
    pub kept: usize,
    /// Regions to keep that are not.
    pub lost: usize,
}

/// A design cut by a layout.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct SheetView {
    /// The design's letter.
    pub design: String,
    /// Its name.
    pub name: String,
    /// `front` or `back`: the side that shows.
    pub side: &'static str,
    /// How many sheets of it.
    pub sheets: u32,
}

/// A patterned piece on its sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct PieceView {
    /// What is pencilled on its back after the design's letter.
    pub mark: String,
    /// The recipe it is for.
    pub recipe: String,
    /// The layer it is for.
    pub layer: String,
    /// Which card of the sheet, from 1; left out for a spare.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub card: Option<usize>,
    /// Where it lies on the sheet.
    #[serde(flatten)]
    pub place: PlaceView,
    /// True if it lies a quarter turn from the way it stands on the card.
    pub turned: bool,
}

/// A cut tree; distances from the left or the top of what is being cut.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum TreeView {
    /// Cut in two.
    Cut {
        /// `x`: an upright cut line; `y`: a level one.
        axis: &'static str,
        /// Distance of the line from the left or the top.
        at: String,
        /// The left or upper part.
        first: Box<TreeView>,
        /// The right or lower part.
        second: Box<TreeView>,
    },
    /// A piece, its size as it lies.
    Piece {
        /// Width.
        width: String,
        /// Height.
        height: String,
        /// True if it lies a quarter turn round.
        turned: bool,
    },
    /// Left over.
    Waste,
}

/// Another layout.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
pub struct AlternativeView {
    /// Left over on one sheet, in square inches.
    pub waste_square_inches: f64,
    /// Cards of each recipe from one sheet.
    pub cards_per_sheet: Vec<RecipeCount>,
    /// Different distances at the trimmer.
    pub settings: u32,
    /// Cuts on one sheet.
    pub cuts: u32,
    /// Its pieces.
    pub pieces: Vec<PieceView>,
}

/// A part that is in hand at some time.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct HandView {
    /// Its number; 0 is the whole sheet.
    pub part: u32,
    /// Where it lies on the sheet.
    #[serde(flatten)]
    pub place: PlaceView,
    /// `cut` (cut further), `piece`, `waste` or `edge` (an edge that cannot be used).
    pub fate: &'static str,
    /// Number of the finished piece, in reading order from 1.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub piece: Option<u32>,
}

/// One thing to do at the trimmer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(tag = "do", rename_all = "kebab-case")]
pub enum StepView {
    /// Cut equal parts off.
    Cut(CutView),
    /// Press a fold line.
    Score {
        /// Distance of the line from the piece's own left or top.
        at: String,
        /// Lines to press over all sheets.
        strokes: u32,
        /// The pieces, by number of the part.
        parts: Vec<u32>,
    },
}

/// Cuts of one distance.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct CutView {
    /// Counts how often the stop has moved, from 1.
    pub stop: u32,
    /// Distance between stop and blade.
    pub setting: String,
    /// How to turn the parts first: `none`, `right`, `half`, `left`.
    pub turn: &'static str,
    /// Cuts from each part.
    pub cuts: u32,
    /// Layers cut at once.
    pub layers: u32,
    /// Strokes of the blade over all sheets.
    pub strokes: u32,
    /// The parts that go under the blade (0 is the sheet), what comes off each and what stays.
    pub work: Vec<WorkView>,
    /// What to take care of: `long-cut`, `narrow-strip`, `narrow-rest`.
    pub cautions: Vec<&'static str>,
}

/// One part that goes under the blade, by number.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct WorkView {
    /// The part that goes in.
    pub part: u32,
    /// What comes off, in order.
    pub off: Vec<u32>,
    /// What stays in hand, never measured.
    pub rest: u32,
}

/// One finished card.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct CardView {
    /// From 1.
    pub number: u32,
    /// Its recipe.
    pub recipe: String,
    /// The pack its main piece comes from.
    pub pack: String,
    /// The letter of the design its main piece comes from.
    pub design: String,
    /// Its layers, bottom first; the base is not listed.
    pub parts: Vec<PartView>,
}

/// One layer of a finished card.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct PartView {
    /// The layer's name.
    pub layer: String,
    /// Where it lies on the card's front.
    #[serde(flatten)]
    pub place: PlaceView,
    /// What it is.
    #[serde(flatten)]
    pub kind: PartKindView,
}

/// What a layer is made of.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(tag = "of", rename_all = "kebab-case")]
pub enum PartKindView {
    /// A patterned piece.
    Paper {
        /// Number of the layout.
        layout: usize,
        /// The piece's mark on it.
        piece: String,
        /// Letter of its design.
        design: String,
        /// `front` or `back`.
        side: &'static str,
        /// Which sheet of that design, from 1.
        sheet: u32,
    },
    /// Cardstock.
    Cardstock {
        /// Its name.
        cardstock: String,
    },
    /// A strip of cardstock with a greeting.
    Strip {
        /// The cardstock's name.
        cardstock: String,
        /// The greeting's words.
        greeting: String,
    },
    /// Ribbon.
    Ribbon {
        /// Its name.
        ribbon: String,
        /// True if it ends in a bow.
        bow: bool,
    },
}

/// What is cut from one cardstock.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct StockView {
    /// Its name.
    pub cardstock: String,
    /// Sheets in all.
    pub sheets: u32,
    /// No plan uses less, by area.
    pub area_bound: u32,
    /// How good the answer is.
    pub grade: GradeView,
    /// What is wanted.
    pub cuts: Vec<StockCutView>,
    /// How its sheets are cut, equal sheets together.
    pub patterns: Vec<PatternView>,
}

/// One kind of piece wanted.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct StockCutView {
    /// The recipe it is for, the first where several share it.
    pub recipe: String,
    /// The other recipes that share it.
    pub also: Vec<String>,
    /// `base`, `inside`, or the layer's name.
    pub piece: String,
    /// Its size as it stands on the card (a base unfolded).
    pub size: String,
    /// How many.
    pub count: u32,
    /// Scores, from the left (side folds) or the top (top fold).
    pub scores: Vec<String>,
    /// True if it may lie a quarter turned on the sheet.
    pub may_turn: bool,
}

/// Sheets of a cardstock cut alike.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct PatternView {
    /// Size of the sheet.
    pub sheet: String,
    /// How many sheets are cut this way.
    pub times: u32,
    /// The pieces.
    pub pieces: Vec<StockPieceView>,
    /// Every part that is ever in hand; the steps name them by number.
    pub parts: Vec<HandView>,
    /// What to do at the trimmer, in order.
    pub steps: Vec<StepView>,
}

/// A piece of cardstock on its sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct StockPieceView {
    /// Which of the `cuts` it is, from 0.
    pub cut: usize,
    /// Where it lies on the sheet.
    #[serde(flatten)]
    pub place: PlaceView,
    /// True if it lies a quarter turned.
    pub turned: bool,
}

/// What the batch uses up, in money; exact decimals as text.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct CostsView {
    /// One line a supply.
    pub lines: Vec<CostView>,
    /// Sum of the lines that have a price, if they share one currency.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub total_used: Option<String>,
    /// The total divided by the cards, to two decimals.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub per_card: Option<String>,
    /// True if a line has no price: the total reads “at least”.
    pub at_least: bool,
}

/// One line of the costs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct CostView {
    /// The supply.
    pub name: String,
    /// What the batch uses up of it; left out where no price was given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub used: Option<String>,
    /// ISO 4217 code, if told.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub currency: Option<String>,
    /// The date of the price, if told.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub date: Option<String>,
}

/// What small errors do to the borders of the cards.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct BordersView {
    /// The narrowest border of all; left out where no card has any.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub narrowest: Option<BorderView>,
    /// Every border of every recipe, each as on its worst card; of each recipe the narrowest first.
    pub borders: Vec<BorderView>,
    /// Rows of cuts whose rest lies where it matters; empty where it lies well, or nowhere better.
    pub rests: Vec<RestView>,
}

/// A border and how narrow it can come out; below nought the layer runs over the edge.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct BorderView {
    /// The recipe.
    pub recipe: String,
    /// The layer beside which it shows.
    pub layer: String,
    /// The layer that shows; left out for the card's front.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub on: Option<String>,
    /// `left`, `right`, `top` or `bottom` of the layer.
    pub edge: &'static str,
    /// Number of the first card that has it.
    pub card: u32,
    /// Its width where nothing is off.
    pub planned: String,
    /// Where every cut of both pieces is off by 1/32 in, all the wrong way.
    pub by_cuts: String,
    /// Where one setting of the stop is 1/32 in too wide, the worst of them.
    pub by_stop_wide: String,
    /// Where one setting of the stop is off by 1/32 in either way, the worst of them.
    pub by_stop: String,
    /// Where the layer is laid 1/32 in off its place.
    pub by_placing: String,
    /// Where the sheet is out of square by 1/16 in over 12 in.
    pub by_square: String,
    /// Where the print lies 1/16 in off and is cut by; as planned where nothing is cut by the print.
    pub by_drift: String,
    /// All of these at once, all the wrong way.
    pub together: String,
    /// Of so many drawn at random (told for the narrowest of each recipe) …
    #[serde(skip_serializing_if = "Option::is_none")]
    pub drawn: Option<u32>,
    /// … so many show less than half of it, or of the border across from it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub under_half: Option<u32>,
    /// One in twenty of those drawn has a border of this or less.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub worst_twentieth: Option<String>,
}

/// A row of cuts whose rest lies where it matters.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct RestView {
    /// The layout, from 1.
    pub layout: usize,
    /// `width` or `height` of the sheet, whichever the row divides.
    pub divides: &'static str,
    /// How many cuts meet in the rest.
    pub cuts: u32,
    /// Marks of the pieces that have the rest now.
    pub on: Vec<String>,
    /// Marks of the pieces that may have it: cut these last.
    pub better: Vec<String>,
}

/// Something the maker should know.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct FindingView {
    /// `note`, `warning` or `serious`.
    pub severity: &'static str,
    /// Which finding, in kebab case.
    pub code: &'static str,
    /// What it is about, such as `recipe Twin`.
    pub about: String,
    /// In words.
    pub said: String,
    /// What would do.
    pub remedy: String,
    /// The smallest changes known to help, the smallest first; empty where there are none.
    pub ways: Vec<WayView>,
}

/// A way out of a finding: changes to make together, and what comes of them.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct WayView {
    /// In words.
    pub said: String,
    /// What changes.
    pub changes: Vec<ChangeView>,
    /// Cards from one sheet then.
    pub cards_per_sheet: u32,
    /// Percent of the sheet left over then, rounded up.
    pub left_percent: u32,
    /// True if every smaller change of its sort was shown not to help.
    pub smallest: bool,
}

/// One change of a way.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct ChangeView {
    /// Which change, in kebab case, such as `way-narrower`.
    pub code: &'static str,
    /// Its facts by name; lengths as exact text in the maker's unit.
    pub facts: BTreeMap<&'static str, String>,
}

/// A background that is stamped by hand.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct BackgroundView {
    /// Its name.
    pub name: String,
    /// The sheet.
    pub sheet: String,
    /// The same seed gives the same sheet.
    pub seed: u32,
    /// Least distance of ink between two impressions.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub closest: Option<String>,
    /// Impressions wished, where not all of them go on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wished: Option<u32>,
    /// A gap with which they were found to go on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gap_that_would_do: Option<String>,
    /// How much of the sheet is ink, in percent.
    pub cover_percent: u32,
    /// The stamps in the order in which they are used.
    pub stamps: Vec<StampUseView>,
    /// Every impression in stamping order.
    pub impressions: Vec<ImpressionView>,
}

/// What one stamp does on a sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct StampUseView {
    /// The stamp.
    pub stamp: String,
    /// Impressions freshly inked.
    pub first: u32,
    /// Impressions made without inking again.
    pub paler: u32,
    /// How often it is inked.
    pub inkings: u32,
    /// Impressions that run off the edge.
    pub off_edge: u32,
}

/// One impression.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct ImpressionView {
    /// Its number in stamping order, from 1.
    pub number: u32,
    /// The stamp.
    pub stamp: String,
    /// Its middle from the left edge.
    pub x: String,
    /// Its middle from the top edge.
    pub y: String,
    /// Clockwise turn in degrees.
    pub turn_deg: u16,
    /// 1: freshly inked; 2: the paler second one, and so on.
    pub generation: u32,
    /// What of its ink is on the sheet; 100 only where all of it is.
    pub inside_percent: u32,
    /// It stays where it is when the others are set out anew.
    pub locked: bool,
}
