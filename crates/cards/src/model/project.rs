//! A whole project.

use measure::{Length, Mark, Size, Unit};

use crate::pairs::Apart;

use super::{Background, Cardstock, Design, Layer, MotifShape, Pack, Price, Recipe, Side, Supplies, Trade};

/// What the maker's trimmer can do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Trimmer {
    /// Longest cut.
    pub longest_cut: Length,
    /// Narrowest strip that is held safely (common practice: 1/2 in, 12 mm).
    pub smallest_strip: Length,
    /// Sheets of patterned paper cut together.
    pub stack_paper: u32,
    /// Sheets of cardstock cut together.
    pub stack_cardstock: u32,
}

impl Trimmer {
    /// The trimmer of a maker who says nothing of hers.
    ///
    /// # Source
    /// A 12 in (305 mm) trimmer, strips of 1/2 in (12 mm), two sheets of paper or one of cardstock: common practice.
    pub const fn usual(unit: Unit) -> Trimmer {
        let (longest_cut, smallest_strip) = match unit {
            Unit::Inch => (Unit::Inch.thousandths(12_000), Unit::Inch.thousandths(500)),
            Unit::Millimetre => (Length::mm(305), Length::mm(12)),
        };
        Trimmer { longest_cut, smallest_strip, stack_paper: 2, stack_cardstock: 1 }
    }
}

/// Ribbon on a spool.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ribbon {
    /// The maker's name for it.
    pub name: String,
    /// `#rrggbb`.
    pub color: String,
    /// How wide it is.
    pub width: Length,
    /// How thick it is, in micrometres; 300 where nobody measured it.
    pub thickness_um: Option<u32>,
    /// Length on one spool.
    pub spool: Option<Length>,
    /// Price of a spool.
    pub price: Option<Price>,
}

/// A stamped greeting.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Greeting {
    /// Its words.
    pub words: String,
    /// The size of the inked mark, not of the block.
    pub inked: Size,
    /// Ink colour, `#rrggbb`.
    pub ink: String,
    /// The stamp itself, where its ink does not fill it.
    pub stamp: Option<Stamp>,
    /// What it leaves, where it is told by corners or by a picture; stretched to its ink.
    pub mark: Option<MotifShape>,
    /// True: its middle is where its ink balances; false: halfway between the ends of its ink.
    pub balanced: bool,
}

/// The rubber or the clear block that leaves the mark, and where its ink lies on it.
///
/// Seen as it prints: left is left on the paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Stamp {
    /// Its outer size.
    pub size: Size,
    /// From its left edge to the ink.
    pub left: Length,
    /// From its top edge to the ink.
    pub top: Length,
}

/// The envelope the cards go into.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Envelope {
    /// Its name as the maker bought it.
    pub name: String,
    /// Its outside size.
    pub size: Size,
}

/// What the maker wants.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Goal {
    /// Cards from one sheet; `None`: as many as the recipes' bounds and the sheet allow.
    pub cards_per_sheet: Option<u32>,
    /// Cards in all; `None`: from all sheets.
    pub cards: Option<u32>,
    /// Cards in one set; 1 if not sold or given in sets.
    pub set_of: u32,
    /// Overs: extra cards on top of `cards`, made on purpose.
    pub overs: u32,
    /// Spare pieces from every sheet: recipe name, layer name, how many.
    pub spares: Vec<(String, String, u32)>,
    /// Pairs of designs whose pieces meet on one card, by letter.
    pub partners: Vec<(String, String)>,
    /// Pieces pinned on the sheet: recipe, layer, left, top, width, height.
    pub pins: Vec<(String, String, Length, Length, Size)>,
    /// How many alternatives of the layout to show.
    pub alternatives: u32,
}

impl Goal {
    /// What a maker wants who says nothing: single cards, as many as there can be, three layouts to choose from.
    pub fn unsaid() -> Goal {
        // Chosen: few enough to lay side by side.
        Goal { set_of: 1, alternatives: 3, ..Goal::default() }
    }
}

/// Which prints may meet on one card.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Meeting {
    /// What must differ.
    pub apart: Apart,
    /// At most one piece with large motifs on a card.
    pub one_large: bool,
    /// Pairs of designs, by letter: if not empty, only these meet.
    pub only: Vec<(String, String)>,
    /// Pairs of designs, by letter, that never meet.
    pub never: Vec<(String, String)>,
}

/// Sheets of one design that a batch cuts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Take {
    /// Index of the pack.
    pub pack: usize,
    /// Index of the design in the pack.
    pub design: usize,
    /// How many sheets of it.
    pub sheets: u32,
    /// The side that the cards show.
    pub side: Side,
}

/// Cards made in one go from some of the sheets, with a goal of their own.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Batch {
    /// The maker's name for it; unique in the project.
    pub name: String,
    /// The sheets it cuts; a design appears once at most.
    pub takes: Vec<Take>,
    /// Indices of the recipes it makes; empty: all.
    pub recipes: Vec<usize>,
    /// What is wanted of it.
    pub goal: Goal,
    /// Equal kits its cards are shared out over, if any.
    pub kits: Option<u32>,
}

/// Something the maker decided by hand for one piece of one card, after the pieces were given out.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Choice {
    /// Number of the card, from 1.
    pub card: u32,
    /// Name of the layer.
    pub layer: String,
    /// What was decided.
    pub decided: Decided,
}

/// What was decided for a piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Decided {
    /// It changes places with the piece of that layer on another card, by number.
    Swap(u32),
    /// It shows this side of its sheet.
    Shows(Side),
    /// It is cut from this cardstock, by index: a mat or another plain piece.
    CutFrom(usize),
}

/// How pieces are placed on a print, among layouts that are equally good otherwise.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum Placing {
    /// Every sheet of a layout is cut alike, as is best over all its prints.
    #[default]
    Alike,
    /// Each design is cut as is best for its own print.
    Each,
    /// Prints are not looked at.
    Plain,
}

/// A whole project as the maker wrote it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Project {
    /// Its name.
    pub name: String,
    /// Who made it, if told.
    pub maker: Option<String>,
    /// The date the maker wrote on it, `YYYY-MM-DD`.
    pub date: Option<String>,
    /// The unit the maker thinks in.
    pub unit: Unit,
    /// The finest mark the maker cuts to: the grid of every layout (1/8 in, 1 mm).
    pub mark: Mark,
    /// The trimmer.
    pub trimmer: Trimmer,
    /// How pieces are placed on the prints.
    pub placing: Placing,
    /// Patterned papers.
    pub packs: Vec<Pack>,
    /// Backgrounds stamped by hand.
    pub backgrounds: Vec<Background>,
    /// Cardstocks.
    pub cardstocks: Vec<Cardstock>,
    /// Ribbons.
    pub ribbons: Vec<Ribbon>,
    /// Greetings.
    pub greetings: Vec<Greeting>,
    /// Small supplies: tape, foam, envelopes, ink.
    pub supplies: Supplies,
    /// Envelope, if the cards are mailed.
    pub envelope: Option<Envelope>,
    /// Recipes.
    pub recipes: Vec<Recipe>,
    /// Which prints may meet on one card.
    pub meeting: Meeting,
    /// The goal, where there are no batches.
    pub goal: Goal,
    /// Batches, in the order in which they take sheets; empty: one batch of all sheets in use, with `goal`.
    pub batches: Vec<Batch>,
    /// What was decided by hand for single cards, in the order in which it was.
    pub choices: Vec<Choice>,
    /// Post, buying, selling, a class.
    pub trade: Trade,
}

impl Batch {
    /// What it is called: a batch without a name is the whole project.
    pub fn called<'a>(&'a self, project: &'a Project) -> &'a str {
        if self.name.is_empty() { &project.name } else { &self.name }
    }
}

impl Project {
    /// A design by the index of its pack and its own.
    pub fn design(&self, pack: usize, design: usize) -> Option<&Design> {
        self.packs.get(pack)?.designs.get(design)
    }

    /// A layer by the index of its recipe and its own.
    pub fn layer(&self, recipe: usize, layer: usize) -> Option<&Layer> {
        self.recipes.get(recipe)?.layers.get(layer)
    }

    /// The batches, also where the maker named none: then one without a name, of all sheets in use.
    pub fn made(&self) -> Vec<Batch> {
        if !self.batches.is_empty() {
            return self.batches.clone();
        }
        let mut takes = Vec::new();
        for (pack, paper) in self.packs.iter().enumerate() {
            let take =
                |(design, printed): (usize, &Design)| Take { pack, design, sheets: printed.sheets(), side: printed.up };
            takes.extend(paper.designs.iter().enumerate().map(take));
        }
        vec![Batch { name: String::new(), takes, recipes: Vec::new(), goal: self.goal.clone(), kits: None }]
    }
}
