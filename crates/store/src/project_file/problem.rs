//! What can be wrong with a project file: data for the rim to word, with the place in the text.

use cards::Fact;
use cards::background::{MOST_CORNERS, OutlineError};
use measure::{Length, ParseLengthError, ParseSizeError, Size, Unit};

/// One mistake in a project file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    /// Line, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// Where in the file, such as `recipe[0].layer[2].width`; empty for the file as a whole. Counted from 0.
    pub path: String,
    /// The unit the maker thinks in, as far as the file says; inches where it does not.
    pub unit: Unit,
    /// What is wrong.
    pub kind: ProblemKind,
}

impl Problem {
    /// Its kebab-case code; the message file words it under `problem-<code>`, what would do in `.remedy`.
    pub fn code(&self) -> &'static str {
        self.kind.code()
    }

    /// Its facts by name, in a fixed order. Lists are joined by `, `; `near` counts the names in `nearest`, `there`
    /// those in `known`.
    pub fn facts(&self) -> Vec<(&'static str, Fact)> {
        self.kind.facts()
    }
}

/// What is wrong, and what would do instead.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ProblemKind {
    /// The file has nothing in it but spaces and comments.
    EmptyFile,
    /// The file is larger than a project ever is.
    TooLargeFile {
        /// Its size.
        bytes: usize,
        /// The largest that is read.
        most: usize,
    },
    /// The file is not UTF-8 text.
    NotUtf8,
    /// It is not TOML.
    Syntax {
        /// What the TOML reader says, in its own words.
        message: String,
    },
    /// A key that means nothing here.
    UnknownKey {
        /// The key as written.
        found: String,
        /// Known keys that look like it, nearest first; empty if none does.
        nearest: Vec<String>,
        /// All keys that are known here.
        known: Vec<String>,
    },
    /// A key that cannot be left out.
    MissingKey {
        /// The key.
        key: &'static str,
        /// What its value looks like: `text`, `length`, `size`, `tables` and the like.
        wanted: &'static str,
    },
    /// Keys of which exactly one would do.
    PickOne {
        /// The keys that are written.
        found: Vec<String>,
        /// The keys to pick from.
        choices: Vec<String>,
    },
    /// A value of another type.
    WrongType {
        /// What stands there: `text`, `number`, `yes-no`, `date`, `list`, `table`.
        found: &'static str,
        /// What is wanted: `text`, `length`, `size`, `count`, `tables` and the like.
        wanted: &'static str,
    },
    /// Text with nothing in it, too long, or with control characters.
    BadText,
    /// A list that needs an entry.
    EmptyList,
    /// A list longer than any on a craft table.
    ListTooLong {
        /// Its entries.
        entries: usize,
        /// The most that are read.
        most: usize,
    },
    /// A length that cannot be read.
    BadLength {
        /// Why.
        why: ParseLengthError,
    },
    /// A size that is neither a known name nor two lengths.
    BadSize {
        /// Why it is not two lengths.
        why: ParseSizeError,
        /// Known names that look like it, nearest first.
        nearest: Vec<String>,
    },
    /// A length or one side of a size that nothing on a craft table has.
    OutOfBounds {
        /// The length.
        found: Length,
        /// The smallest that is read here.
        least: Length,
        /// The largest that is read here.
        most: Length,
    },
    /// A number of things out of bounds.
    CountOutOfBounds {
        /// The number as written.
        found: String,
        /// The smallest that is read here.
        least: u32,
        /// The largest that is read here.
        most: u32,
    },
    /// A range upside down.
    LeastAboveMost {
        /// What is written first.
        least: Length,
        /// What is written after `to`.
        most: Length,
    },
    /// A recipe's fewest cards are above its most.
    FewestAboveMost {
        /// Fewest.
        least: u32,
        /// Most.
        most: u32,
    },
    /// The size liked best is outside the ranges that look right.
    PreferOutside {
        /// The size.
        prefer: Size,
        /// The smallest that looks right.
        least: Size,
        /// The largest that looks right.
        most: Size,
    },
    /// Ink that lies beyond the edge of its stamp.
    InkBeyondStamp {
        /// Size of the ink.
        inked: Size,
        /// Size of the stamp.
        stamp: Size,
    },
    /// A border for words that come at no edge.
    BorderWithoutEdge,
    /// Where words come is told of a piece that names no greeting.
    PlaceWithoutGreeting,
    /// A greeting is to be centred by its weight, and nothing tells what its stamp leaves.
    WeightWithoutMark,
    /// A mark that no rule here has.
    BadMark {
        /// The length.
        found: Length,
        /// The marks there are.
        known: Vec<String>,
    },
    /// A word that is not one of those that can stand there.
    BadChoice {
        /// The word as written.
        found: String,
        /// Those that look like it, nearest first.
        nearest: Vec<String>,
        /// Those that can stand there.
        choices: Vec<String>,
    },
    /// A name that nothing in the file has.
    UnknownName {
        /// The name as written.
        found: String,
        /// What it should name: `cardstock`, `ribbon`, `greeting`, `layer`, `recipe`, `design`.
        of: &'static str,
        /// Those that look like it, nearest first.
        nearest: Vec<String>,
        /// The names there are.
        known: Vec<String>,
    },
    /// No name is written, and there is not just one thing that could be meant.
    NameNeeded {
        /// What should be named.
        of: &'static str,
        /// The names there are; empty if there is none.
        known: Vec<String>,
    },
    /// A name that is taken.
    DuplicateName {
        /// The name.
        name: String,
        /// What has it: `pack`, `cardstock`, `ribbon`, `greeting`, `recipe`, `layer`, `design`, `letter`.
        of: &'static str,
        /// The line where it stands first.
        first_line: usize,
    },
    /// A colour that is not `#rrggbb`.
    BadColor {
        /// As written.
        found: String,
    },
    /// A date that is not a day written `YYYY-MM-DD`.
    BadDate {
        /// As written.
        found: String,
    },
    /// A price that is not a plain decimal from nothing upwards with at most four decimals.
    BadPrice {
        /// As written.
        found: String,
    },
    /// A weight that is not grams or ounces.
    BadWeight {
        /// As written.
        found: String,
    },
    /// A time that is not one of a day written `14:00`.
    BadTime {
        /// As written.
        found: String,
    },
    /// A currency that is not three capitals.
    BadCurrency {
        /// As written.
        found: String,
    },
    /// A design's mark that is not one to four letters or digits.
    BadLetter {
        /// As written.
        found: String,
    },
    /// A picture that is not a PNG or JPEG beside the project file.
    BadPicture {
        /// As written.
        found: String,
    },
    /// More sheets are to be used than there are.
    UseAboveCopies {
        /// Sheets to be used.
        wanted: u32,
        /// Sheets there are.
        copies: u32,
    },
    /// The unusable edges leave nothing of the sheet.
    NothingLeft {
        /// The sheet.
        sheet: Size,
    },
    /// The printed panels are together larger than the sheet.
    CollageTooLarge {
        /// Columns and rows added up.
        printed: Size,
        /// The sheet.
        sheet: Size,
    },
    /// Every stamp of a background has a share of 0.
    NothingToStamp,
    /// A stamp is larger than the sheet it is for.
    StampTooLarge {
        /// The longer side of its ink.
        size: Length,
        /// The sheet.
        sheet: Size,
    },
    /// Corners that are no outline.
    BadOutline {
        /// What is wrong with it; `None` if the corners cannot be read.
        why: Option<OutlineError>,
    },
    /// A region that reaches beyond its sheet.
    RegionOffSheet {
        /// How far it reaches from the top left.
        reaches: Size,
        /// The sheet.
        sheet: Size,
    },
    /// Two printed panels that share a place.
    PanelsOverlap {
        /// The earlier one, counted from 1.
        one: u32,
        /// The later one.
        other: u32,
    },
    /// A layer is laid on one that comes after it, or on itself.
    LaidOnLater {
        /// The other layer.
        layer: String,
    },
    /// A mat follows a layer that comes before it, or itself.
    FollowsEarlier {
        /// The other layer.
        layer: String,
    },
    /// A mat follows a layer that has no size of its own, or there is no layer above it.
    NothingToFollow,
    /// A mat of one cardstock for each design leaves designs without.
    DesignsWithout {
        /// Their letters.
        letters: Vec<String>,
    },
    /// A design is a partner twice, or its own.
    PartnerTwice {
        /// Its letter.
        letter: String,
    },
}

impl ProblemKind {
    /// True if it is about one value alone, so that it holds even where the file around it is broken.
    pub(super) fn is_local(&self) -> bool {
        matches!(
            self,
            ProblemKind::BadLength { .. }
                | ProblemKind::BadSize { .. }
                | ProblemKind::LeastAboveMost { .. }
                | ProblemKind::BadColor { .. }
                | ProblemKind::BadDate { .. }
                | ProblemKind::BadPrice { .. }
                | ProblemKind::BadWeight { .. }
                | ProblemKind::BadTime { .. }
                | ProblemKind::BadPicture { .. }
        )
    }

    fn code(&self) -> &'static str {
        match self {
            ProblemKind::EmptyFile => "empty-file",
            ProblemKind::TooLargeFile { .. } => "too-large-file",
            ProblemKind::NotUtf8 => "not-utf8",
            ProblemKind::Syntax { .. } => "syntax",
            ProblemKind::UnknownKey { .. } => "unknown-key",
            ProblemKind::MissingKey { .. } => "missing-key",
            ProblemKind::PickOne { .. } => "pick-one",
            ProblemKind::WrongType { .. } => "wrong-type",
            ProblemKind::BadText => "bad-text",
            ProblemKind::EmptyList => "empty-list",
            ProblemKind::ListTooLong { .. } => "list-too-long",
            ProblemKind::BadLength { .. } => "bad-length",
            ProblemKind::BadSize { .. } => "bad-size",
            ProblemKind::OutOfBounds { .. } => "out-of-bounds",
            ProblemKind::CountOutOfBounds { .. } => "count-out-of-bounds",
            ProblemKind::LeastAboveMost { .. } => "least-above-most",
            ProblemKind::FewestAboveMost { .. } => "fewest-above-most",
            ProblemKind::PreferOutside { .. } => "prefer-outside",
            ProblemKind::InkBeyondStamp { .. } => "ink-beyond-stamp",
            ProblemKind::BorderWithoutEdge => "border-without-edge",
            ProblemKind::PlaceWithoutGreeting => "place-without-greeting",
            ProblemKind::WeightWithoutMark => "weight-without-mark",
            ProblemKind::BadMark { .. } => "bad-mark",
            ProblemKind::BadChoice { .. } => "bad-choice",
            ProblemKind::UnknownName { .. } => "unknown-name",
            ProblemKind::NameNeeded { .. } => "name-needed",
            ProblemKind::DuplicateName { .. } => "duplicate-name",
            ProblemKind::BadColor { .. } => "bad-color",
            ProblemKind::BadDate { .. } => "bad-date",
            ProblemKind::BadPrice { .. } => "bad-price",
            ProblemKind::BadWeight { .. } => "bad-weight",
            ProblemKind::BadTime { .. } => "bad-time",
            ProblemKind::BadCurrency { .. } => "bad-currency",
            ProblemKind::BadLetter { .. } => "bad-letter",
            ProblemKind::BadPicture { .. } => "bad-picture",
            ProblemKind::UseAboveCopies { .. } => "use-above-copies",
            ProblemKind::NothingLeft { .. } => "nothing-left",
            ProblemKind::CollageTooLarge { .. } => "collage-too-large",
            ProblemKind::NothingToStamp => "nothing-to-stamp",
            ProblemKind::StampTooLarge { .. } => "stamp-too-large",
            ProblemKind::BadOutline { why } => match why {
                None => "bad-outline",
                Some(OutlineError::Empty { .. }) => "outline-empty",
                Some(OutlineError::CrossesItself { .. }) => "outline-crosses",
                Some(OutlineError::TooManyCorners { .. }) => "outline-many",
            },
            ProblemKind::RegionOffSheet { .. } => "region-off-sheet",
            ProblemKind::PanelsOverlap { .. } => "panels-overlap",
            ProblemKind::LaidOnLater { .. } => "laid-on-later",
            ProblemKind::FollowsEarlier { .. } => "follows-earlier",
            ProblemKind::NothingToFollow => "nothing-to-follow",
            ProblemKind::DesignsWithout { .. } => "designs-without",
            ProblemKind::PartnerTwice { .. } => "partner-twice",
        }
    }

    fn facts(&self) -> Vec<(&'static str, Fact)> {
        match self {
            ProblemKind::EmptyFile | ProblemKind::NotUtf8 | ProblemKind::BadText | ProblemKind::EmptyList => Vec::new(),
            ProblemKind::NothingToFollow | ProblemKind::NothingToStamp => Vec::new(),
            ProblemKind::StampTooLarge { size, sheet } => {
                let mut facts = vec![("size", Fact::Length(*size))];
                facts.extend(sides(["sheet-width", "sheet-height"], *sheet));
                facts
            }
            ProblemKind::BadOutline { why } => match why {
                None => Vec::new(),
                Some(OutlineError::CrossesItself { first, second }) => {
                    vec![("first", amount(*first)), ("second", amount(*second))]
                }
                Some(OutlineError::Empty { corners } | OutlineError::TooManyCorners { corners }) => {
                    vec![("corners", amount(*corners)), ("most", amount(MOST_CORNERS))]
                }
            },
            ProblemKind::TooLargeFile { bytes, most } => vec![("bytes", amount(*bytes)), ("most", amount(*most))],
            ProblemKind::ListTooLong { entries, most } => vec![("entries", amount(*entries)), ("most", amount(*most))],
            ProblemKind::Syntax { message } => vec![("message", text(message))],
            ProblemKind::UnknownKey { found, nearest, known } => {
                vec![
                    ("found", text(found)),
                    ("near", amount(nearest.len())),
                    ("nearest", list(nearest)),
                    ("known", list(known)),
                ]
            }
            ProblemKind::MissingKey { key, wanted } => vec![("key", text(key)), ("wanted", text(wanted))],
            ProblemKind::PickOne { found, choices } => {
                let first = choices.first().map_or("", String::as_str);
                vec![("found", list(found)), ("first", text(first)), ("choices", list(choices))]
            }
            ProblemKind::WrongType { found, wanted } => vec![("found", text(found)), ("wanted", text(wanted))],
            ProblemKind::BadLength { why } => vec![("why", text(reason(why))), ("found", text(&culprit(why)))],
            ProblemKind::BadSize { why, nearest } => {
                let (why, found) = size_reason(why);
                vec![
                    ("why", text(why)),
                    ("found", text(&found)),
                    ("near", amount(nearest.len())),
                    ("nearest", list(nearest)),
                ]
            }
            ProblemKind::OutOfBounds { found, least, most } => {
                vec![("found", Fact::Length(*found)), ("least", Fact::Length(*least)), ("most", Fact::Length(*most))]
            }
            ProblemKind::CountOutOfBounds { found, least, most } => {
                vec![("found", text(found)), ("least", count(*least)), ("most", count(*most))]
            }
            ProblemKind::LeastAboveMost { least, most } => {
                vec![("least", Fact::Length(*least)), ("most", Fact::Length(*most))]
            }
            ProblemKind::FewestAboveMost { least, most } => vec![("least", count(*least)), ("most", count(*most))],
            ProblemKind::PreferOutside { prefer, least, most } => {
                [sides(["prefer-width", "prefer-height"], *prefer), sides(["least-width", "least-height"], *least)]
                    .into_iter()
                    .chain([sides(["most-width", "most-height"], *most)])
                    .flatten()
                    .collect()
            }
            ProblemKind::InkBeyondStamp { inked, stamp } => {
                let sizes =
                    [sides(["ink-width", "ink-height"], *inked), sides(["stamp-width", "stamp-height"], *stamp)];
                sizes.into_iter().flatten().collect()
            }
            ProblemKind::BorderWithoutEdge | ProblemKind::PlaceWithoutGreeting | ProblemKind::WeightWithoutMark => {
                Vec::new()
            }
            ProblemKind::BadMark { found, known } => vec![("found", Fact::Length(*found)), ("known", list(known))],
            ProblemKind::BadChoice { found, nearest, choices } => {
                vec![
                    ("found", text(found)),
                    ("near", amount(nearest.len())),
                    ("nearest", list(nearest)),
                    ("choices", list(choices)),
                ]
            }
            ProblemKind::UnknownName { found, of, nearest, known } => {
                vec![
                    ("found", text(found)),
                    ("of", text(of)),
                    ("near", amount(nearest.len())),
                    ("nearest", list(nearest)),
                    ("there", amount(known.len())),
                    ("known", list(known)),
                ]
            }
            ProblemKind::NameNeeded { of, known } => {
                vec![("of", text(of)), ("there", amount(known.len())), ("known", list(known))]
            }
            ProblemKind::DuplicateName { name, of, first_line } => {
                vec![("name", text(name)), ("of", text(of)), ("first-line", amount(*first_line))]
            }
            ProblemKind::BadColor { found }
            | ProblemKind::BadDate { found }
            | ProblemKind::BadPrice { found }
            | ProblemKind::BadWeight { found }
            | ProblemKind::BadTime { found }
            | ProblemKind::BadCurrency { found }
            | ProblemKind::BadLetter { found }
            | ProblemKind::BadPicture { found } => vec![("found", text(found))],
            ProblemKind::UseAboveCopies { wanted, copies } => {
                vec![("wanted", count(*wanted)), ("copies", count(*copies))]
            }
            ProblemKind::NothingLeft { sheet } => sides(["sheet-width", "sheet-height"], *sheet),
            ProblemKind::CollageTooLarge { printed, sheet } => {
                let mut facts = sides(["printed-width", "printed-height"], *printed);
                facts.extend(sides(["sheet-width", "sheet-height"], *sheet));
                facts
            }
            ProblemKind::RegionOffSheet { reaches, sheet } => {
                let mut facts = sides(["reaches-width", "reaches-height"], *reaches);
                facts.extend(sides(["sheet-width", "sheet-height"], *sheet));
                facts
            }
            ProblemKind::PanelsOverlap { one, other } => vec![("one", count(*one)), ("other", count(*other))],
            ProblemKind::LaidOnLater { layer } | ProblemKind::FollowsEarlier { layer } => vec![("layer", text(layer))],
            ProblemKind::DesignsWithout { letters } => vec![("letters", list(letters))],
            ProblemKind::PartnerTwice { letter } => vec![("letter", text(letter))],
        }
    }
}

fn text(text: &str) -> Fact {
    Fact::Text(text.to_owned())
}

fn list(names: &[String]) -> Fact {
    Fact::Text(names.join(", "))
}

fn count(number: u32) -> Fact {
    Fact::Count(u64::from(number))
}

fn amount(number: usize) -> Fact {
    Fact::Count(u64::try_from(number).unwrap_or(u64::MAX))
}

fn sides(names: [&'static str; 2], size: Size) -> Vec<(&'static str, Fact)> {
    vec![(names[0], Fact::Length(size.width)), (names[1], Fact::Length(size.height))]
}

/// The code of a reason why a text is not a length.
fn reason(why: &ParseLengthError) -> &'static str {
    match why {
        ParseLengthError::Empty => "empty",
        ParseLengthError::MissingUnit { .. } => "missing-unit",
        ParseLengthError::UnknownUnit { .. } => "unknown-unit",
        ParseLengthError::NotANumber { .. } => "not-a-number",
        ParseLengthError::Trailing { .. } => "trailing",
        ParseLengthError::AmbiguousComma { .. } => "ambiguous-comma",
        ParseLengthError::FractionTooLarge { .. } => "fraction-too-large",
        ParseLengthError::ZeroDenominator { .. } => "zero-denominator",
        ParseLengthError::TooFine { .. } => "too-fine",
        ParseLengthError::TooLarge { .. } => "too-large",
        ParseLengthError::Negative { .. } => "negative",
    }
}

/// The piece of text that is to blame.
fn culprit(why: &ParseLengthError) -> String {
    match why {
        ParseLengthError::Empty => String::new(),
        ParseLengthError::MissingUnit { found, .. }
        | ParseLengthError::UnknownUnit { found, .. }
        | ParseLengthError::NotANumber { found, .. }
        | ParseLengthError::Trailing { found, .. }
        | ParseLengthError::AmbiguousComma { found, .. }
        | ParseLengthError::FractionTooLarge { found, .. }
        | ParseLengthError::ZeroDenominator { found, .. }
        | ParseLengthError::TooFine { found, .. }
        | ParseLengthError::TooLarge { found }
        | ParseLengthError::Negative { found } => found.clone(),
    }
}

fn size_reason(why: &ParseSizeError) -> (&'static str, String) {
    match why {
        ParseSizeError::NotTwoLengths { found } => ("not-two-lengths", found.clone()),
        ParseSizeError::Width(why) | ParseSizeError::Height(why) => (reason(why), culprit(why)),
    }
}
