//! Every table of a project file and its keys, in one place.
//!
//! The reader refuses what is not listed here and suggests the nearest key that is; the schema in
//! `docs/schema/` is written from the same lists, so the three cannot disagree.

/// One table of the file.
#[derive(Debug)]
pub(super) struct Form {
    /// Name of its definition in the schema.
    pub(super) name: &'static str,
    /// What it says, for the schema.
    pub(super) says: &'static str,
    /// Its keys, in the order in which a maker would write them.
    pub(super) keys: &'static [Key],
}

/// One key of a table.
#[derive(Debug)]
pub(super) struct Key {
    /// The key as it is written.
    pub(super) name: &'static str,
    /// What its value looks like.
    pub(super) shape: Shape,
    /// True if it cannot be left out.
    pub(super) needed: bool,
    /// What it says, for the schema.
    pub(super) says: &'static str,
}

/// What a value looks like.
#[derive(Debug, Clone, Copy)]
pub(super) enum Shape {
    /// Free text.
    Text,
    /// The short mark of a design.
    Letter,
    /// `4 3/4 in`, `121 mm`, or a bare number in the project's unit.
    Length,
    /// `3 x 4 1/2`, or a name of a known sheet, card or envelope.
    Size,
    /// `2 3/4 to 3 1/4`, or one length.
    Range,
    /// A whole number within bounds.
    Count(u32, u32),
    /// `true` or `false`.
    YesNo,
    /// `#rrggbb`.
    Color,
    /// `YYYY-MM-DD`.
    Date,
    /// An amount, such as `4.80`.
    Amount,
    /// An amount, or a table with amount, currency and date.
    Price,
    /// One of these words.
    Choice(&'static [&'static str]),
    /// A list of lengths.
    Lengths,
    /// A list of pairs of design letters.
    Pairs,
    /// A list of names.
    Names,
    /// One name, or a table that names one for each design letter.
    ByLetter,
    /// A table.
    Table(&'static Form),
    /// A size, or a table.
    SizeOrTable(&'static Form),
    /// A list of tables.
    Tables(&'static Form),
    /// A size, a table, or a list of either.
    SizesOrTables(&'static Form),
    /// A list of layers: the form goes by the layer's kind, the first if it names none.
    Layers(&'static [(&'static str, &'static Form)]),
}

impl Shape {
    /// The code under which messages word what was wanted.
    pub(super) fn code(self) -> &'static str {
        match self {
            Shape::Text => "text",
            Shape::Letter => "letter",
            Shape::Length => "length",
            Shape::Size => "size",
            Shape::Range => "range",
            Shape::Count(..) => "count",
            Shape::YesNo => "yes-no",
            Shape::Color => "color",
            Shape::Date => "date",
            Shape::Amount => "amount",
            Shape::Price => "price",
            Shape::Choice(_) => "choice",
            Shape::Lengths => "lengths",
            Shape::Pairs => "pairs",
            Shape::Names => "names",
            Shape::ByLetter => "by-letter",
            Shape::Table(_) => "table",
            Shape::SizeOrTable(_) => "size-or-table",
            Shape::SizesOrTables(_) => "sizes-or-tables",
            Shape::Tables(_) | Shape::Layers(_) => "tables",
        }
    }
}

impl Form {
    /// The key of that name.
    pub(super) fn key(&self, name: &str) -> Option<&'static Key> {
        self.keys.iter().find(|key| key.name == name)
    }
}

pub(super) const fn needed(name: &'static str, shape: Shape, says: &'static str) -> Key {
    Key { name, shape, needed: true, says }
}

pub(super) const fn may(name: &'static str, shape: Shape, says: &'static str) -> Key {
    Key { name, shape, needed: false, says }
}

/// Most sheets of one design or cardstock. Chosen: ten times a school's yearly drive, and still countable.
pub(super) const MOST_SHEETS: u32 = 100_000;
/// Most cards of one project. Chosen, as above.
pub(super) const MOST_CARDS: u32 = 1_000_000;

/// The whole file.
pub(super) static PROJECT: Form = Form {
    name: "project",
    says: "A project: papers, cardstock, recipes and what is wanted of them.",
    keys: &[
        needed("name", Shape::Text, "The project's name."),
        may("maker", Shape::Text, "Who made it."),
        may("date", Shape::Date, "The date written on it."),
        may("unit", Shape::Choice(UNITS), "The unit of every bare number: in or mm. Left out: in."),
        may("mark", Shape::Length, "The finest mark you cut to. Left out: 1/8 in, or 1 mm."),
        may("currency", Shape::Text, "Three capitals, such as GBP, for every price that names none."),
        may("priced_on", Shape::Date, "The date of every price that names none."),
        may("trimmer", Shape::Table(&TRIMMER), "What your trimmer can do."),
        may(
            "placing",
            Shape::Choice(PLACINGS),
            "How prints decide where pieces lie: alike on every sheet (left out), each design on its own, or plain.",
        ),
        may("pack", Shape::Tables(&PACK), "Packs of patterned paper."),
        may("loose", Shape::Tables(&LOOSE), "Loose sheets and scraps of patterned paper."),
        may("background", Shape::Tables(&super::background::BACKGROUND), "Backgrounds you stamp yourself."),
        needed("cardstock", Shape::Tables(&CARDSTOCK), "Cardstocks by colour."),
        may("ribbon", Shape::Tables(&RIBBON), "Ribbons."),
        may("greeting", Shape::Tables(&GREETING), "Stamped greetings."),
        may(
            "supplies",
            Shape::Table(&SUPPLIES),
            "Tape, foam squares, envelopes, ink and stamps, as far as they count.",
        ),
        may("envelope", Shape::SizeOrTable(&ENVELOPE), "The envelope: a name, a size, or a table with both."),
        needed("recipe", Shape::Tables(&RECIPE), "The cards."),
        may("pairs", Shape::Table(&PAIRS), "Which prints may meet on one card."),
        may("goal", Shape::Table(&GOAL), "What you want. Left out: as many cards as the sheets allow."),
        may("batch", Shape::Tables(&BATCH), "Cards made in one go, instead of goal: each batch with its own sheets."),
        may("choice", Shape::Tables(&CHOICE), "What you decided by hand for single cards, in that order."),
        may("post", Shape::Table(&POST), "How the cards are mailed, with your own postage."),
        may("offer", Shape::Tables(&OFFER), "Other packs on sale of what the project uses."),
        may("selling", Shape::Table(&SELLING), "What is asked for a card."),
        may("minutes", Shape::Table(&MINUTES), "Your own timings, in minutes."),
        may("class", Shape::Table(&CLASS), "A class at which people make the cards of one batch."),
    ],
};

/// Units a project can think in.
pub(super) const UNITS: &[&str] = &["in", "mm"];

/// How prints decide where pieces lie.
pub(super) const PLACINGS: &[&str] = &["alike", "each", "plain"];

static TRIMMER: Form = Form {
    name: "trimmer",
    says: "What a trimmer can do.",
    keys: &[
        may("longest_cut", Shape::Length, "Longest cut. Left out: 12 in, or 305 mm."),
        may("smallest_strip", Shape::Length, "Narrowest strip it holds safely. Left out: 1/2 in, or 12 mm."),
        may("stack_paper", Shape::Count(1, 100), "Sheets of patterned paper cut together. Left out: 2."),
        may("stack_cardstock", Shape::Count(1, 100), "Sheets of cardstock cut together. Left out: 1."),
    ],
};

static PACK: Form = Form {
    name: "pack",
    says: "A pack of patterned paper: designs of one sheet size.",
    keys: &[
        needed("name", Shape::Text, "Its name."),
        needed("sheet", Shape::Size, "One sheet as measured, edge to edge."),
        may("unusable", Shape::Table(&EDGES), "What is lost at an edge: a label strip, a squaring cut."),
        may("gsm", Shape::Count(20, 1000), "Weight in g/m²."),
        may("thickness", Shape::Length, "Thickness of one sheet (measure a stack of ten)."),
        may("price", Shape::Price, "Price of the whole pack."),
        needed("design", Shape::Tables(&DESIGN), "Its designs."),
    ],
};

static LOOSE: Form = Form {
    name: "loose",
    says: "A loose sheet or a scrap.",
    keys: &[
        needed("name", Shape::Text, "Its name."),
        needed("sheet", Shape::Size, "One sheet as measured, edge to edge."),
        may("unusable", Shape::Table(&EDGES), "What is lost at an edge."),
        may("gsm", Shape::Count(20, 1000), "Weight in g/m²."),
        may("thickness", Shape::Length, "Thickness of one sheet (measure a stack of ten)."),
        may("price", Shape::Price, "Price of all its copies together."),
        may("letter", Shape::Letter, "Short mark. Left out: the next free one of A, B, C …"),
        may("copies", Shape::Count(1, MOST_SHEETS), "How many there are. Left out: 1."),
        may("use", Shape::Count(0, MOST_SHEETS), "How many of them this project uses. Left out: all."),
        may("up", Shape::Choice(SIDES), "The side the cards show. Left out: front."),
        may("back_lies", Shape::Choice(LIES), "How the back lies when the sheet is turned over."),
        may("front", Shape::Table(&FACE), "The front."),
        may("back", Shape::Table(&FACE), "The back. Left out: plain white."),
    ],
};

/// The two sides of a sheet.
pub(super) const SIDES: &[&str] = &["front", "back"];
/// How a back can lie.
pub(super) const LIES: &[&str] = &["like a book", "head to foot"];

static DESIGN: Form = Form {
    name: "design",
    says: "One design of a pack.",
    keys: &[
        may("letter", Shape::Letter, "Short mark. Left out: the next free one of A, B, C …"),
        may("name", Shape::Text, "Its name. Left out: its letter."),
        may("copies", Shape::Count(1, MOST_SHEETS), "How many sheets of it there are. Left out: 1."),
        may("use", Shape::Count(0, MOST_SHEETS), "How many of them this project uses. Left out: all."),
        may("up", Shape::Choice(SIDES), "The side the cards show. Left out: front."),
        may(
            "back_lies",
            Shape::Choice(LIES),
            "How the back lies when the sheet is turned over. Left out: like a book.",
        ),
        may("front", Shape::Table(&FACE), "The front. Left out: plain white."),
        may("back", Shape::Table(&FACE), "The back. Left out: plain white."),
    ],
};

static FACE: Form = Form {
    name: "face",
    says: "One printed face.",
    keys: &[
        may("name", Shape::Text, "Its name. Left out: front or back."),
        may("way", Shape::Choice(WAYS), "Which ways up it may be used. Left out: any."),
        may("print", Shape::Choice(PRINTS), "How large its motifs are."),
        may("picture", Shape::Text, "A PNG or JPEG beside this file that covers the sheet exactly."),
        may("drawn", Shape::Choice(DRAWN), "A print that Octavo draws itself."),
        may("color", Shape::Color, "One flat colour."),
        may("background", Shape::Text, "A background of this project, by its name."),
        may("collage", Shape::Table(&COLLAGE), "Where it is printed as separate panels."),
        may("keep", Shape::Tables(&KEPT), "Regions that must stay whole on one piece."),
        may("avoid", Shape::Tables(&PRINTED), "Regions that should not show."),
    ],
};

/// Ways up.
pub(super) const WAYS: &[&str] = &["any", "one way", "two ways"];
/// Sizes of motifs.
pub(super) const PRINTS: &[&str] = &["large", "medium", "small", "solid"];

/// Prints that Octavo draws itself.
pub(super) const DRAWN: &[&str] = &[
    "quince-branch",
    "leaf-scatter",
    "kettle-stripe",
    "pinstripe",
    "tea-dot",
    "milk-wash",
    "recipe-cards",
    "ruled-lines",
    "hedge-check",
    "sprigs",
    "dusk-leaf",
    "speckle",
];

static COLLAGE: Form = Form {
    name: "collage",
    says: "Printed panels, from the top left corner of the sheet.",
    keys: &[
        may("columns", Shape::Lengths, "Widths of the columns, left to right."),
        may("rows", Shape::Lengths, "Heights of the rows, top to bottom."),
        may("panels", Shape::Tables(&PRINTED), "Panels told one by one, instead of columns and rows."),
    ],
};

static PRINTED: Form = Form {
    name: "printed_panel",
    says: "A place on a sheet: a printed panel, or a region.",
    keys: &[
        needed("left", Shape::Length, "From the left edge of the sheet."),
        needed("top", Shape::Length, "From the top edge of the sheet."),
        needed("size", Shape::Size, "Its size."),
    ],
};

static KEPT: Form = Form {
    name: "kept_region",
    says: "A region of a print that must stay whole on one piece.",
    keys: &[
        needed("left", Shape::Length, "From the left edge of the sheet."),
        needed("top", Shape::Length, "From the top edge of the sheet."),
        needed("size", Shape::Size, "Its size."),
        may("show_on", Shape::Text, "The piece that shows it: recipe/layer. Left out: any piece."),
    ],
};

static EDGES: Form = Form {
    name: "edges",
    says: "What cannot be used at each edge.",
    keys: &[
        may("left", Shape::Length, "At the left."),
        may("top", Shape::Length, "At the top."),
        may("right", Shape::Length, "At the right."),
        may("bottom", Shape::Length, "At the bottom."),
    ],
};

/// A price written out.
pub(super) static PRICE: Form = Form {
    name: "price",
    says: "A price with its currency and date.",
    keys: &[
        needed("amount", Shape::Amount, "The amount."),
        may("currency", Shape::Text, "Three capitals. Left out: the project's."),
        may("date", Shape::Date, "When you saw this price. Left out: the project's priced_on."),
    ],
};

static CARDSTOCK: Form = Form {
    name: "cardstock",
    says: "A cardstock of one colour.",
    keys: &[
        needed("name", Shape::Text, "Its name."),
        needed("color", Shape::Color, "Its colour."),
        may("gsm", Shape::Count(20, 1000), "Weight in g/m²."),
        may("thickness", Shape::Length, "Thickness of one sheet (measure a stack of ten)."),
        may("sheet", Shape::SizesOrTables(&STOCK_SHEET), "The sizes it lies there in. Left out: Letter, or A4."),
    ],
};

/// One size of a cardstock.
pub(super) static STOCK_SHEET: Form = Form {
    name: "stock_sheet",
    says: "A size in which a cardstock lies on the shelf.",
    keys: &[
        needed("size", Shape::Size, "Its size."),
        may("count", Shape::Count(0, MOST_SHEETS), "How many there are. Left out: as many as needed."),
        may("grain", Shape::Choice(GRAINS), "Which edge its fibres follow. Left out: unknown."),
        may("pack_of", Shape::Count(1, MOST_SHEETS), "Sheets in a pack. Left out: 1."),
        may("price", Shape::Price, "Price of one pack."),
        may("unusable", Shape::Table(&EDGES), "What is lost at an edge: a perforation, a bruise, a squaring cut."),
    ],
};

/// Ways a grain can run.
pub(super) const GRAINS: &[&str] = &["long", "short", "width", "height", "unknown"];

static RIBBON: Form = Form {
    name: "ribbon",
    says: "Ribbon on a spool.",
    keys: &[
        needed("name", Shape::Text, "Its name."),
        needed("color", Shape::Color, "Its colour."),
        needed("width", Shape::Length, "How wide it is."),
        may("thickness", Shape::Length, "How thick it is. Left out: 0.3 mm."),
        may("spool", Shape::Length, "Length on one spool, such as 10 yd or 9 m."),
        may("price", Shape::Price, "Price of a spool."),
    ],
};

/// What can count as the middle of a greeting.
pub(super) const MIDDLES: &[&str] = &["ends", "weight"];

static GREETING: Form = Form {
    name: "greeting",
    says: "A stamped greeting.",
    keys: &[
        needed("words", Shape::Text, "Its words."),
        needed("inked", Shape::Size, "Size of the inked mark, not of the block."),
        may("ink", Shape::Color, "Colour of the ink. Left out: #333333."),
        may("stamp", Shape::Table(&STAMP), "The stamp itself, where its ink does not fill it."),
        may("outline", Shape::Text, "Corners of what it leaves, such as 0,0 9,0 9,2 0,2: right and down, in any unit."),
        may("picture", Shape::Text, "A PNG, JPEG or WebP beside this file: what is dark, or not clear, is its ink."),
        may(
            "middle",
            Shape::Choice(MIDDLES),
            "Its middle: halfway between the ends of its ink, or, by its outline or picture, where the ink balances. Left out: ends.",
        ),
    ],
};

/// The stamp of a greeting.
pub(super) static STAMP: Form = Form {
    name: "stamp",
    says: "A stamp and where its ink lies on it, seen as it prints.",
    keys: &[
        needed("size", Shape::Size, "Its outer size."),
        may("left", Shape::Length, "From its left edge to the ink. Left out: half of what is free."),
        may("top", Shape::Length, "From its top edge to the ink. Left out: half of what is free."),
    ],
};

static SUPPLIES: Form = Form {
    name: "supplies",
    says: "Small supplies. One that is left out is neither counted nor costed.",
    keys: &[
        may("tape", Shape::Table(&TAPE), "Tape that holds the layers."),
        may("foam", Shape::Table(&PACKED), "Foam squares."),
        may("envelopes", Shape::Table(&PACKED), "Envelopes, one for each card."),
        may("ink_pad", Shape::Table(&LASTING), "The ink pad: one use is one impression."),
        may("stamps", Shape::Table(&LASTING), "The stamps: one use is one impression."),
    ],
};

static TAPE: Form = Form {
    name: "tape",
    says: "Double-sided tape: lines along the longer side of every layer that is glued flat.",
    keys: &[
        may("name", Shape::Text, "Its name. Left out: Tape."),
        may("roll", Shape::Length, "Length on one roll, such as 12 m."),
        may("price", Shape::Price, "Price of a roll."),
        may(
            "two_lines_from",
            Shape::Length,
            "A layer so wide or wider on its shorter side takes two lines, a narrower one takes one. Left out: 2 in, or 50 mm.",
        ),
    ],
};

static PACKED: Form = Form {
    name: "packed",
    says: "Something bought by the pack.",
    keys: &[
        may("name", Shape::Text, "Its name. Left out: what it is."),
        may("pack_of", Shape::Count(1, MOST_SHEETS), "How many a pack holds. Left out: 1."),
        may("price", Shape::Price, "Price of a pack."),
    ],
};

static LASTING: Form = Form {
    name: "lasting",
    says: "Something used many times before it is bought again.",
    keys: &[
        may("name", Shape::Text, "Its name. Left out: what it is."),
        may("lasts", Shape::Count(1, MOST_CARDS), "How many impressions it lasts. Left out: 1."),
        may("price", Shape::Price, "Its price."),
    ],
};

/// An envelope written out.
pub(super) static ENVELOPE: Form = Form {
    name: "envelope",
    says: "The envelope the cards go into.",
    keys: &[
        may("name", Shape::Text, "Its name."),
        needed("size", Shape::Size, "Its outside size, or the name of a known one."),
    ],
};

static RECIPE: Form = Form {
    name: "recipe",
    says: "One card: its base and its layers, bottom first.",
    keys: &[
        needed("name", Shape::Text, "Its name."),
        needed("format", Shape::Size, "Finished size as the card stands, or the name of a known one."),
        may("fold", Shape::Choice(FOLDS), "How the base is folded. Left out: side."),
        may("base", Shape::Text, "Cardstock of the base. Left out: the only one."),
        may("inside", Shape::Table(&INSIDE), "A sheet for the inside."),
        may("designs", Shape::Names, "Letters of the designs it is made of. Left out: any."),
        may("least", Shape::Count(0, MOST_CARDS), "Fewest cards of it from one sheet. Left out: 0."),
        may("most", Shape::Count(1, MOST_CARDS), "Most cards of it from one sheet."),
        needed("layer", Shape::Layers(LAYERS), "Its layers, bottom first."),
    ],
};

/// Ways to fold.
pub(super) const FOLDS: &[&str] = &["side", "top", "gate", "z", "flat"];

static INSIDE: Form = Form {
    name: "inside",
    says: "A sheet glued inside the card for writing.",
    keys: &[
        needed("size", Shape::Size, "Its size."),
        may("cardstock", Shape::Text, "Its cardstock. Left out: the only one."),
    ],
};

/// The kinds of layer and their keys, the one meant where none is named first.
pub(super) static LAYERS: &[(&str, &Form)] =
    &[("patterned", &PATTERNED), ("mat", &MAT), ("plain", &PLAIN), ("strip", &STRIP), ("ribbon", &LACED)];

/// Names of the kinds of layer.
pub(super) const KINDS: &[&str] = &["patterned", "mat", "plain", "strip", "ribbon"];
/// The nine points of a card's front.
pub(super) const POINTS: &[&str] =
    &["top left", "top", "top right", "left", "middle", "right", "bottom left", "bottom", "bottom right"];

/// Where words come on a strip: lines on which their middle lies, then edges and corners.
pub(super) const SPOTS: &[&str] = &[
    "middle",
    "left third",
    "right third",
    "upper third",
    "lower third",
    "upper left third",
    "upper right third",
    "lower left third",
    "lower right third",
    "top left",
    "top",
    "top right",
    "left",
    "right",
    "bottom left",
    "bottom",
    "bottom right",
];

const NAME: Key = needed("name", Shape::Text, "Its name: panel, band, mat.");
const KIND: Key = may("kind", Shape::Choice(KINDS), "What it is made of. Left out: patterned.");
const ON: Key =
    may("on", Shape::Text, "The earlier layer it is laid on. Left out: its mat if it has one, else the card.");
const AT: Key = may("at", Shape::Choice(POINTS), "Which point of it meets the same point below. Left out: middle.");
const RIGHT: Key = may("right", Shape::Length, "Shift to the right from there; a minus shifts to the left.");
const DOWN: Key = may("down", Shape::Length, "Shift down from there; a minus shifts up.");
const OVERLAP: Key = may("overlap", Shape::YesNo, "True if it may run over the edge of what it lies on.");

const STAMPED: Key = may("greeting", Shape::Text, "The words of a greeting stamped on it. Left out: none.");
const WORDS_AT: Key = may(
    "words_at",
    Shape::Choice(SPOTS),
    "Where on it the ink comes: its middle on a line, or with a border at an edge. Left out: middle.",
);
const WORDS_BORDER: Key = may(
    "words_border",
    Shape::Length,
    "Where words_at names an edge or a corner: from there to the ink. Left out: 1/4 in, or 6 mm.",
);

static PATTERNED: Form = Form {
    name: "patterned_layer",
    says: "A piece of patterned paper.",
    keys: &[
        NAME,
        KIND,
        may("size", Shape::Size, "Its size, if only one will do."),
        may("width", Shape::Range, "Widths that look right."),
        may("height", Shape::Range, "Heights that look right."),
        may("prefer", Shape::Size, "The size you like best. Left out: the middle of the ranges."),
        may("free_size", Shape::YesNo, "True if each copy may have its own size."),
        may("may_turn", Shape::YesNo, "True if it may lie a quarter turned on the sheet where the print allows it."),
        may("from_partner", Shape::YesNo, "True if it comes from the partner of the card's design."),
        may("die", Shape::Text, "A die or punch that takes its shape out of the piece."),
        STAMPED,
        WORDS_AT,
        WORDS_BORDER,
        ON,
        AT,
        RIGHT,
        DOWN,
        OVERLAP,
    ],
};

static MAT: Form = Form {
    name: "mat_layer",
    says: "A solid layer that follows the layer laid on it.",
    keys: &[
        NAME,
        KIND,
        may("follows", Shape::Text, "The later layer it follows. Left out: the next one."),
        may("border", Shape::Length, "Border seen all round. Left out: 1/8 in, or 3 mm."),
        may("cardstock", Shape::ByLetter, "Its cardstock, or one for each design. Left out: the only one."),
        STAMPED,
        WORDS_AT,
        WORDS_BORDER,
        ON,
        AT,
        RIGHT,
        DOWN,
        OVERLAP,
    ],
};

static PLAIN: Form = Form {
    name: "plain_layer",
    says: "A piece of cardstock.",
    keys: &[
        NAME,
        KIND,
        needed("size", Shape::Size, "Its size."),
        may("cardstock", Shape::Text, "Its cardstock. Left out: the only one."),
        STAMPED,
        WORDS_AT,
        WORDS_BORDER,
        ON,
        AT,
        RIGHT,
        DOWN,
        OVERLAP,
    ],
};

static STRIP: Form = Form {
    name: "strip_layer",
    says: "A strip of cardstock with a stamped greeting.",
    keys: &[
        NAME,
        KIND,
        needed("size", Shape::Size, "Its size."),
        may("cardstock", Shape::Text, "Its cardstock. Left out: the only one."),
        may("greeting", Shape::Text, "The words of its greeting. Left out: the only one."),
        WORDS_AT,
        WORDS_BORDER,
        may("foam_squares", Shape::Count(0, 100), "Foam squares under it. Left out: 0."),
        ON,
        AT,
        RIGHT,
        DOWN,
        OVERLAP,
    ],
};

static LACED: Form = Form {
    name: "ribbon_layer",
    says: "Ribbon laid across.",
    keys: &[
        NAME,
        KIND,
        may("ribbon", Shape::Text, "Which ribbon. Left out: the only one."),
        needed("length", Shape::Length, "Length in one card, wrap and bow together."),
        may("bow", Shape::YesNo, "True if it ends in a bow."),
        ON,
        AT,
        RIGHT,
        DOWN,
        OVERLAP,
    ],
};

// The keys that a goal and a batch share.
const CARDS_PER_SHEET: Key =
    may("cards_per_sheet", Shape::Count(1, 10_000), "Cards from one sheet. Left out: as many as can be.");
const SET_OF: Key = may("set_of", Shape::Count(1, 10_000), "Cards in one set. Left out: 1.");
const OVERS: Key = may("overs", Shape::Count(0, MOST_CARDS), "Extra cards made on purpose. Left out: 0.");
const SPARES: Key = may("spares", Shape::Tables(&SPARE), "Spare pieces from every sheet.");
const PARTNERS: Key = may("partners", Shape::Pairs, "Pairs of designs whose pieces meet on one card.");
const PINS: Key = may("pins", Shape::Tables(&PIN), "Pieces that stay where they are on the sheet.");
const ALTERNATIVES: Key = may("alternatives", Shape::Count(1, 50), "Layouts to choose from. Left out: 3.");

/// What must differ on one card.
pub(super) const APART: &[&str] = &["designs", "faces", "nothing"];

static PAIRS: Form = Form {
    name: "pairs",
    says: "Which prints may meet on one card.",
    keys: &[
        may(
            "apart",
            Shape::Choice(APART),
            "designs: no two pieces of one design; faces: none that show the same face; nothing: any. Left out: designs.",
        ),
        may("one_large", Shape::YesNo, "True if at most one print with large motifs may lie on a card."),
        may("only", Shape::Pairs, "Pairs of designs: only these meet."),
        may("never", Shape::Pairs, "Pairs of designs that never meet."),
    ],
};

static GOAL: Form = Form {
    name: "goal",
    says: "What is wanted.",
    keys: &[
        CARDS_PER_SHEET,
        may("cards", Shape::Count(1, MOST_CARDS), "Cards in all. Left out: from all sheets."),
        SET_OF,
        OVERS,
        SPARES,
        PARTNERS,
        PINS,
        ALTERNATIVES,
    ],
};

static BATCH: Form = Form {
    name: "batch",
    says: "Cards made in one go from some of the sheets.",
    keys: &[
        needed("name", Shape::Text, "Its name."),
        may("recipes", Shape::Names, "The recipes it makes. Left out: all."),
        may(
            "each",
            Shape::Count(0, MOST_SHEETS),
            "Sheets of every design. Left out: all there are, or none if sheets is written.",
        ),
        may("sheets", Shape::Tables(&TAKE), "Designs of which it takes other numbers, or another side."),
        may("kits", Shape::Count(1, 10_000), "Equal kits that its cards are shared out over."),
        CARDS_PER_SHEET,
        may("cards", Shape::Count(1, MOST_CARDS), "Cards in all. Left out: from all its sheets."),
        SET_OF,
        OVERS,
        SPARES,
        PARTNERS,
        PINS,
        ALTERNATIVES,
    ],
};

static TAKE: Form = Form {
    name: "batch_sheets",
    says: "Sheets of one design that a batch cuts.",
    keys: &[
        needed("design", Shape::Letter, "Its letter."),
        may("count", Shape::Count(0, MOST_SHEETS), "How many. Left out: the batch's each, or all there are."),
        may("up", Shape::Choice(SIDES), "The side the cards show. Left out: the design's own."),
    ],
};

static SPARE: Form = Form {
    name: "spare",
    says: "Spare pieces from every sheet.",
    keys: &[
        may("recipe", Shape::Text, "The recipe. Left out: the only one."),
        needed("layer", Shape::Text, "The layer."),
        may("count", Shape::Count(1, 10_000), "How many. Left out: 1."),
    ],
};

static PIN: Form = Form {
    name: "pin",
    says: "A piece that stays where it is on the sheet.",
    keys: &[
        may("recipe", Shape::Text, "The recipe. Left out: the only one."),
        needed("layer", Shape::Text, "The layer."),
        needed("left", Shape::Length, "From the left edge of the sheet."),
        needed("top", Shape::Length, "From the top edge of the sheet."),
        needed("size", Shape::Size, "Its size as it lies on the sheet."),
    ],
};

static CHOICE: Form = Form {
    name: "choice",
    says: "What you decided by hand for one piece of one card.",
    keys: &[
        needed("card", Shape::Count(1, MOST_CARDS), "The number of the card."),
        needed("layer", Shape::Text, "The layer: of patterned paper, or with cardstock a mat or another plain piece."),
        may("with", Shape::Count(1, MOST_CARDS), "The card whose piece of that layer it changes places with."),
        may("shows", Shape::Choice(SIDES), "The side of its sheet that shows; the piece is turned over for it."),
        may("cardstock", Shape::Text, "The cardstock that this mat or plain piece is cut from, instead of its own."),
    ],
};

/// Which way the address runs.
pub(super) const ADDRESSED: &[&str] = &["long edge", "short edge"];

static POST: Form = Form {
    name: "post",
    says: "How the cards are mailed.",
    keys: &[
        may("envelope_gsm", Shape::Count(20, 1000), "Paper of the envelope in g/m². Left out: 90."),
        may("addressed", Shape::Choice(ADDRESSED), "The edge along which the address runs. Left out: long edge."),
        may("stiff", Shape::YesNo, "True if something in the card does not bend."),
        may("extras", Shape::Text, "Tape, ribbon, foam and glue of one card, such as 0.9 g. Left out: 1 g."),
        may("foam_thickness", Shape::Length, "Thickness of a foam square. Left out: 1 mm."),
        may("bow_thickness", Shape::Length, "Thickness of a tied bow. Left out: 5 mm."),
        may("rate", Shape::Tables(&RATE), "Your own postage, as you wrote it down."),
    ],
};

static RATE: Form = Form {
    name: "rate",
    says: "A line of an operator's price list, as you wrote it down.",
    keys: &[
        needed("operator", Shape::Text, "The operator, as the table of limits names it."),
        needed("class", Shape::Text, "The class, as the table of limits names it."),
        may("up_to", Shape::Text, "The heaviest letter it is for, such as 100 g or 1 oz. Left out: all of the class."),
        needed("price", Shape::Price, "What it costs, with the date on which you saw it."),
    ],
};

static OFFER: Form = Form {
    name: "offer",
    says: "Another pack on sale of something the project uses.",
    keys: &[
        needed("of", Shape::Text, "The name of the cardstock, ribbon or supply."),
        may("pack_of", Shape::Count(1, MOST_SHEETS), "Sheets or pieces in it."),
        may("length", Shape::Length, "Length on it, for ribbon and tape, such as 25 yd."),
        may("price", Shape::Price, "Its price."),
    ],
};

static SELLING: Form = Form {
    name: "selling",
    says: "What is asked for a card, and what of it does not stay.",
    keys: &[
        may("price", Shape::Price, "What is asked for one card."),
        may("fees", Shape::Amount, "Percent of the price for a market, a shop or a card reader. Left out: 0."),
        may("tax", Shape::Amount, "Percent of the price for the tax office. Left out: 0."),
        may("margin", Shape::Amount, "Percent of the price that should be left over. Left out: 0."),
        may("hour", Shape::Price, "What an hour of your work should bring."),
    ],
};

static MINUTES: Form = Form {
    name: "minutes",
    says: "Minutes for each piece of work, as you timed them.",
    keys: &[
        may("piece", Shape::Amount, "One piece of patterned paper, sheets not stacked. Left out: 0.25."),
        may("base", Shape::Amount, "A base cut, scored and folded. Left out: 0.6."),
        may("mat", Shape::Amount, "A mat or another piece of cardstock. Left out: 0.25."),
        may("strip", Shape::Amount, "A greeting strip stamped with a jig. Left out: 0.5."),
        may("ribbon", Shape::Amount, "Ribbon wrapped round. Left out: 0.75."),
        may("bow", Shape::Amount, "A bow tied. Left out: 1.5."),
        may("card", Shape::Amount, "A card assembled. Left out: 3."),
        may("layered", Shape::Amount, "A card with a bow assembled. Left out: 5."),
        may("label", Shape::Amount, "A kit's label. Left out: 0.5."),
        may("kit", Shape::Amount, "A kit filled. Left out: 2."),
    ],
};

static CLASS: Form = Form {
    name: "class",
    says: "A class at which people make the cards of one batch.",
    keys: &[
        may("batch", Shape::Text, "The batch. Left out: the only one that is shared out over kits."),
        may("date", Shape::Date, "The day."),
        needed("seats", Shape::Count(1, 500), "Seats that are booked."),
        may("demonstrators", Shape::Count(0, 50), "Kits for whoever shows how. Left out: 1."),
        may("spare_kits", Shape::Count(0, 500), "Spare kits. Left out: 5 % of the seats, one at least."),
        may("left_handed", Shape::Count(0, 500), "How many of the seats are left-handers'. Left out: 0."),
        may("cut_kits", Shape::Count(0, 10_000), "Kits that are cut already. Left out: 0."),
        may("minutes_a_card", Shape::Count(1, 600), "Minutes for one card. Left out: 25."),
        may("starts", Shape::Text, "When it begins, such as 14:00."),
        may("welcome_minutes", Shape::Count(0, 600), "Minutes to arrive. Left out: 15."),
        may(
            "pause_minutes",
            Shape::Count(0, 600),
            "Minutes of a pause when half of the cards are made. Left out: none.",
        ),
        may("end_minutes", Shape::Count(0, 600), "Minutes to spare at the end. Left out: 15."),
        may("room", Shape::Price, "What the room costs."),
        may("hours", Shape::Amount, "Your hours, preparing and shopping with them. Left out: 0."),
        may("hour", Shape::Price, "What one of your hours costs."),
        may("shared", Shape::Price, "What all seats use together."),
        may("break_even", Shape::Count(1, 500), "Seats at which the class pays for itself. Left out: two thirds."),
        may("price", Shape::Price, "Price of a seat."),
    ],
};
