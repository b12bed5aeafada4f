//! Paper and cardstock.

use measure::{Length, Rect, Size};
use rust_decimal::Decimal;

/// A price with the date on which the maker wrote it down.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Price {
    /// Exact amount.
    pub amount: Decimal,
    /// ISO 4217 code, such as `GBP`; empty where the project names none.
    pub currency: String,
    /// `YYYY-MM-DD`, if told.
    pub date: Option<String>,
}

/// One of the two sides of a sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Side {
    /// The side named first.
    Front,
    /// The other side.
    Back,
}

impl Side {
    /// The side behind it.
    #[must_use]
    pub const fn other(self) -> Side {
        match self {
            Side::Front => Side::Back,
            Side::Back => Side::Front,
        }
    }

    /// Its name in files and addresses: `front` or `back`.
    pub const fn name(self) -> &'static str {
        match self {
            Side::Front => "front",
            Side::Back => "back",
        }
    }
}

/// Which ways up a print may be used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Way {
    /// Any way: dots, solids, scatters.
    Any,
    /// It has a top: it may not be turned at all.
    OneWay,
    /// A stripe: it may turn half round but not a quarter.
    TwoWays,
}

/// How large the motifs of a print are (common practice: large over 2 in, medium 1/2 to 2 in, small under 1/2 in).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PrintSize {
    /// Motifs over 2 in.
    Large,
    /// Motifs of 1/2 to 2 in.
    Medium,
    /// Motifs under 1/2 in: reads as texture.
    Small,
    /// One tone.
    Solid,
}

/// What a face looks like.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Look {
    /// A PNG or JPEG beside the project file that covers the sheet exactly.
    Picture(String),
    /// A print that Octavo draws itself, by its name.
    Drawn(String),
    /// One flat colour, `#rrggbb`.
    Plain(String),
    /// A background of the project that is stamped by hand, by its index.
    Stamped(usize),
}

/// Where a collage sheet is printed as panels: columns and rows from the top left, or panels one by one.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Collage {
    /// Widths of the columns, left to right; empty where `panels` says it all.
    pub columns: Vec<Length>,
    /// Heights of the rows, top to bottom; empty where `panels` says it all.
    pub rows: Vec<Length>,
    /// Panels that are printed elsewhere, on the whole sheet.
    pub panels: Vec<Rect>,
}

impl Collage {
    /// Every printed panel on the sheet, row by row, then those told one by one.
    pub fn rects(&self) -> Vec<Rect> {
        let starts = |sides: &[Length]| -> Vec<(Length, Length)> {
            sides.iter().scan(Length::ZERO, |next, &side| Some((std::mem::replace(next, *next + side), side))).collect()
        };
        let columns = starts(&self.columns);
        let mut rects = Vec::new();
        for (y, height) in starts(&self.rows) {
            rects.extend(columns.iter().map(|&(x, width)| Rect::new(x, y, Size::new(width, height))));
        }
        rects.extend(&self.panels);
        rects
    }
}

/// What the maker wants of a region of a print.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Wanted {
    /// It stays whole on one piece, with nothing over it: on a piece of that recipe and layer, or on any.
    Keep {
        /// Recipe and layer by name.
        show_on: Option<(String, String)>,
    },
    /// It should not show.
    Avoid,
}

/// A region of a print that the maker marked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Region {
    /// Where, from the top left of the sheet with that face up and upright.
    pub rect: Rect,
    /// What is wanted of it.
    pub wanted: Wanted,
}

/// One printed face of a design.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Face {
    /// The maker's name for it.
    pub name: String,
    /// Which ways up it may be used.
    pub way: Way,
    /// How large its motifs are, if told.
    pub print_size: Option<PrintSize>,
    /// What it looks like.
    pub look: Look,
    /// Its printed panels, if it is a collage.
    pub collage: Option<Collage>,
    /// Regions that the maker marked: those to keep whole, then those to avoid.
    pub regions: Vec<Region>,
}

/// How the back lies when the sheet is turned over.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Lies {
    /// Turned about its upright edge like a book page: tops agree.
    LikeABook,
    /// Turned about its level edge: the back's top is at the front's bottom.
    HeadToFoot,
}

/// One design of a pack.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Design {
    /// Short mark, such as `A`; unique in the project.
    pub letter: String,
    /// The maker's name for it.
    pub name: String,
    /// How many sheets of it there are.
    pub copies: u32,
    /// How many of them this project uses; all if `None`.
    pub use_sheets: Option<u32>,
    /// The front.
    pub front: Face,
    /// The back.
    pub back: Face,
    /// How the back lies.
    pub lies: Lies,
    /// Which side is up: the face the cards show.
    pub up: Side,
}

impl Design {
    /// The face the cards show.
    pub fn face_up(&self) -> &Face {
        self.face(self.up)
    }

    /// The face on a side.
    pub fn face(&self, side: Side) -> &Face {
        match side {
            Side::Front => &self.front,
            Side::Back => &self.back,
        }
    }

    /// The same place on the sheet as it lies when the other side is up, each side seen with its print upright.
    ///
    /// A place and its image are each other's image: front to back and back to front are the same mirror.
    pub fn on_other_side(&self, rect: Rect, sheet: Size) -> Rect {
        match self.lies {
            Lies::LikeABook => Rect::new(sheet.width - rect.right(), rect.y, rect.size),
            Lies::HeadToFoot => Rect::new(rect.x, sheet.height - rect.bottom(), rect.size),
        }
    }

    /// How many sheets of it this project may cut.
    pub fn sheets(&self) -> u32 {
        self.use_sheets.map_or(self.copies, |sheets| sheets.min(self.copies))
    }
}

/// How much is lost at each edge before the layout starts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Edges {
    /// At the left.
    pub left: Length,
    /// At the top.
    pub top: Length,
    /// At the right.
    pub right: Length,
    /// At the bottom.
    pub bottom: Length,
}

impl Edges {
    /// The size that they leave of a sheet; negative or zero if nothing is left.
    pub fn inside(self, sheet: Size) -> Size {
        Size::new(sheet.width - self.left - self.right, sheet.height - self.top - self.bottom)
    }

    /// The same edges as they lie when the back is up, seen with the back's print upright.
    pub fn from_behind(self, lies: Lies) -> Edges {
        match lies {
            Lies::LikeABook => Edges { left: self.right, right: self.left, ..self },
            Lies::HeadToFoot => Edges { top: self.bottom, bottom: self.top, ..self },
        }
    }
}

/// A pack of patterned paper, a loose sheet or a scrap: designs of one measured size.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pack {
    /// The maker's name for it.
    pub name: String,
    /// The size of one sheet as measured, edge to edge.
    pub sheet: Size,
    /// What cannot be used at each edge (label strip, squaring cut).
    pub unusable: Edges,
    /// Weight in g/m².
    pub grammage_gsm: Option<u32>,
    /// Thickness of one sheet in micrometres.
    pub thickness_um: Option<u32>,
    /// Price of the whole pack.
    pub price: Option<Price>,
    /// Its designs.
    pub designs: Vec<Design>,
}

impl Pack {
    /// Sheets of all designs together.
    pub fn sheets(&self) -> u32 {
        self.designs.iter().map(|design| design.copies).fold(0, u32::saturating_add)
    }

    /// The size that is left inside the unusable edges; negative or zero if nothing is.
    pub fn usable(&self) -> Size {
        self.unusable.inside(self.sheet)
    }
}

/// Which edge of a sheet its fibres follow.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Grain {
    /// Along its width as the size is written.
    AlongWidth,
    /// Along its height as the size is written.
    AlongHeight,
    /// Not known, or of no matter.
    Unknown,
}

/// A size in which a cardstock lies on the shelf.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StockSheet {
    /// Its size as measured.
    pub size: Size,
    /// How many there are; `None`: as many as needed.
    pub count: Option<u32>,
    /// Which way its grain runs.
    pub grain: Grain,
    /// Price of one pack.
    pub price: Option<Price>,
    /// Sheets in a pack; 1 if bought singly.
    pub pack_of: u32,
    /// What cannot be used at each edge: a torn perforation, a bruised corner, a squaring cut.
    pub unusable: Edges,
}

impl StockSheet {
    /// The size that is left inside the unusable edges; negative or zero if nothing is.
    pub fn usable(&self) -> Size {
        self.unusable.inside(self.size)
    }
}

/// A cardstock of one colour.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cardstock {
    /// The maker's name for the colour.
    pub name: String,
    /// `#rrggbb`.
    pub color: String,
    /// Weight in g/m².
    pub grammage_gsm: Option<u32>,
    /// Thickness of one sheet in micrometres.
    pub thickness_um: Option<u32>,
    /// The sizes it lies there in, first choice first.
    pub sheets: Vec<StockSheet>,
}
