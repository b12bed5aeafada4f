//! Recipes: the layers of one card and where they go.

use measure::{Length, Size};

/// How a base is folded.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Fold {
    /// Fold at the left, like a book.
    Side,
    /// Fold above, like a tent.
    Top,
    /// Two doors meeting in the middle: base 2W × H, scores at W/2 and 3W/2.
    Gate,
    /// One fold each way: base 2W × H, scores at W/2 and W.
    Zed,
    /// No fold: a flat card.
    Flat,
}

/// The smallest and the largest length that look right.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Range {
    /// Smallest.
    pub least: Length,
    /// Largest.
    pub most: Length,
}

impl Range {
    /// Exactly this length.
    pub const fn exactly(length: Length) -> Range {
        Range { least: length, most: length }
    }
}

/// Which point of a layer sits on which point of the card's front.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Anchor {
    /// Top left corners meet.
    TopLeft,
    /// Middles of the top edges meet.
    Top,
    /// Top right corners meet.
    TopRight,
    /// Middles of the left edges meet.
    Left,
    /// Centres meet.
    Middle,
    /// Middles of the right edges meet.
    Right,
    /// Bottom left corners meet.
    BottomLeft,
    /// Middles of the bottom edges meet.
    Bottom,
    /// Bottom right corners meet.
    BottomRight,
}

impl Anchor {
    /// Its column and row in halves of what it is laid on: 0, 1 or 2, from the left and from the top.
    pub const fn halves(self) -> (i64, i64) {
        match self {
            Anchor::TopLeft => (0, 0),
            Anchor::Top => (1, 0),
            Anchor::TopRight => (2, 0),
            Anchor::Left => (0, 1),
            Anchor::Middle => (1, 1),
            Anchor::Right => (2, 1),
            Anchor::BottomLeft => (0, 2),
            Anchor::Bottom => (1, 2),
            Anchor::BottomRight => (2, 2),
        }
    }
}

/// A line on which the middle of something lies: after a third, half or two thirds of a side.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum Third {
    /// After the first third.
    First,
    /// In the middle.
    #[default]
    Middle,
    /// Before the last third.
    Last,
}

impl Third {
    /// How many sixths of the side it lies from its beginning.
    pub const fn sixths(self) -> i64 {
        match self {
            Third::First => 2,
            Third::Middle => 3,
            Third::Last => 4,
        }
    }
}

/// Where on a strip a greeting comes, by its ink and not by its block.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Spot {
    /// The middle of the ink lies on these two lines.
    On {
        /// Of the three lines from the left.
        across: Third,
        /// Of the three lines from the top.
        down: Third,
    },
    /// The ink lies so far from the edges that the anchor names, and in the middle of the others.
    Border {
        /// An edge or a corner; the middle names no edge.
        anchor: Anchor,
        /// From each of them to the ink.
        border: Length,
    },
}

impl Default for Spot {
    fn default() -> Spot {
        Spot::On { across: Third::Middle, down: Third::Middle }
    }
}

/// Where a layer sits.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Placement {
    /// Which layer it is laid on, by index in the recipe; `None`: the card's front itself.
    pub on: Option<usize>,
    /// Which point of it meets the same point of what it is laid on.
    pub anchor: Anchor,
    /// Shift to the right from there.
    pub right: Length,
    /// Shift down from there.
    pub down: Length,
    /// True if it may run over the edge of what it lies on (ribbon, a tag).
    pub overlap: bool,
}

/// What a layer is made of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Material {
    /// A piece of patterned paper, cut from the layout.
    Patterned {
        /// Widths that look right.
        width: Range,
        /// Heights that look right.
        height: Range,
        /// The size the maker likes best.
        prefer: Size,
        /// True: each copy may have its own size; false: all copies have one size.
        free_size: bool,
        /// True: this piece may lie a quarter turned on the sheet where the print allows it.
        may_turn: bool,
        /// The partner: true if it comes from the partner design of the card's design.
        from_partner: bool,
        /// A die or punch that takes its shape out of the piece; the piece is its outer rectangle.
        die: Option<String>,
    },
    /// A mat that follows the layer laid on it: that layer + 2 × border.
    Mat {
        /// Index of the layer it follows (a later layer of the recipe).
        follows: usize,
        /// Visible border all round.
        border: Length,
        /// Index of the cardstock for each design; one entry for all, or one by design letter.
        cardstock: Vec<(Option<String>, usize)>,
    },
    /// A piece of cardstock of given size.
    Plain {
        /// Its size.
        size: Size,
        /// Index of the cardstock.
        cardstock: usize,
    },
    /// A strip of cardstock with a stamped greeting centred on it.
    Strip {
        /// Its size.
        size: Size,
        /// Index of the cardstock.
        cardstock: usize,
        /// Index of the greeting.
        greeting: usize,
        /// Where on it the greeting comes.
        spot: Spot,
        /// Foam squares under it.
        foam_squares: u32,
    },
    /// Ribbon laid across; its width is the ribbon's own.
    Ribbon {
        /// Index of the ribbon.
        ribbon: usize,
        /// Length of ribbon for one card, wrap and bow together.
        length: Length,
        /// True if it ends in a bow.
        bow: bool,
    },
}

/// One layer of a card, bottom first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Layer {
    /// The maker's name for it (`panel`, `band`, `mat`).
    pub name: String,
    /// What it is made of.
    pub material: Material,
    /// Where it sits. A mat's own placement is where the mat sits; the layer it follows is centred on it
    /// unless that layer says otherwise.
    pub placement: Placement,
    /// A greeting stamped on it, by its index, and where; a strip names its own.
    pub stamped: Option<(usize, Spot)>,
}

impl Layer {
    /// True if it is a piece that comes from the partner of the card's design.
    pub fn is_from_partner(&self) -> bool {
        matches!(self.material, Material::Patterned { from_partner: true, .. })
    }

    /// The greeting stamped on it, by its index, and where: a strip has one, any other piece of paper may.
    pub fn greeting(&self) -> Option<(usize, Spot)> {
        match self.material {
            Material::Strip { greeting, spot, .. } => Some((greeting, spot)),
            Material::Ribbon { .. } => None,
            Material::Patterned { .. } | Material::Mat { .. } | Material::Plain { .. } => self.stamped,
        }
    }
}

/// The recipe of one card.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Recipe {
    /// The maker's name; unique in the project.
    pub name: String,
    /// Finished size, width × height as it stands.
    pub finished: Size,
    /// How the base is folded.
    pub fold: Fold,
    /// Index of the base's cardstock.
    pub base: usize,
    /// An inside sheet: its size and cardstock.
    pub inside: Option<(Size, usize)>,
    /// Its layers, bottom first.
    pub layers: Vec<Layer>,
    /// Letters of the designs it may be made of; empty: any.
    pub designs: Vec<String>,
    /// Fewest cards of it from one sheet.
    pub least: u32,
    /// Most cards of it from one sheet; `None`: no bound of its own.
    pub most: Option<u32>,
}

impl Recipe {
    /// Size of the base before folding, and the scores as distances along the folded side.
    ///
    /// Scores are measured from the left (side folds) or from the top (top fold).
    pub fn base_size(&self) -> (Size, Vec<Length>) {
        let Size { width, height } = self.finished;
        let half = |length: Length| Length::from_ticks(length.ticks() / 2);
        match self.fold {
            Fold::Side => (Size::new(width * 2, height), vec![width]),
            Fold::Top => (Size::new(width, height * 2), vec![height]),
            Fold::Gate => (Size::new(width * 2, height), vec![half(width), width + half(width)]),
            Fold::Zed => (Size::new(width * 2, height), vec![half(width), width]),
            Fold::Flat => (self.finished, Vec::new()),
        }
    }
}
