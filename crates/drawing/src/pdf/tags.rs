//! Roles as tags: what a page says, in the order in which it is said.

use std::mem;
use std::num::NonZeroU16;

use krilla::destination::XyzDestination;
use krilla::outline::{Outline, OutlineNode};
use krilla::surface::Surface;
use krilla::tagging::{
    Artifact, ArtifactType, BBox, ContentTag, Identifier, ListNumbering, Node, Placement, SpanTag, TableHeaderScope,
    Tag, TagGroup, TagKind, TagTree,
};

use super::at;
use super::paint::{Painter, box_of, pop, push};
use crate::scene::{Mark, Point, Role, Scene, points};
use crate::text::{Glyph, Line};

/// The tags of all pages, growing.
#[derive(Default)]
pub(super) struct Tree {
    parts: Vec<Node>,
    headings: Vec<Heading>,
    titles: Vec<String>,
}

/// A heading, for the outline.
struct Heading {
    level: u8,
    words: String,
    page: usize,
    place: Point,
}

impl Tree {
    /// Draws a page and keeps what it says.
    pub(super) fn page(&mut self, painter: &mut Painter, surface: &mut Surface<'_>, scene: &Scene) {
        let page = self.titles.len();
        self.titles.push(scene.title.clone());
        let mut said = Vec::new();
        Page { painter, surface, page, turned: 0, decoration: None, row_of_heads: true, headings: &mut self.headings }
            .walk(&scene.marks, &mut said);
        for node in said {
            self.add(node);
        }
    }

    /// A heading of the first level starts a part; all else goes to the part that is open.
    fn add(&mut self, node: Node) {
        let opens = matches!(&node, Node::Group(group)
            if matches!(&group.tag, TagKind::Hn(tag) if tag.level() == NonZeroU16::MIN));
        if opens {
            self.parts.push(TagGroup::with_children(Tag::Section, vec![node]).into());
            return;
        }
        match self.parts.last_mut() {
            Some(Node::Group(part)) if matches!(part.tag, TagKind::Section(_)) => add(&mut part.children, node),
            _ => add(&mut self.parts, node),
        }
    }

    /// The tree, and the headings as an outline (the pages, where there is no heading).
    pub(super) fn finish(self, language: &str) -> (TagTree, Outline) {
        let mut outline = Outline::new();
        let node = |words: &str, page, place| OutlineNode::new(words.to_owned(), XyzDestination::new(page, at(place)));
        if self.headings.is_empty() {
            for (page, title) in self.titles.iter().enumerate() {
                outline.push_child(node(title, page, Point::default()));
            }
        }
        let mut chapter: Option<OutlineNode> = None;
        for heading in &self.headings {
            let entry = node(&heading.words, heading.page, heading.place);
            match &mut chapter {
                Some(chapter) if heading.level > 1 => chapter.push_child(entry),
                _ => {
                    if let Some(done) = chapter.replace(entry) {
                        outline.push_child(done);
                    }
                }
            }
        }
        if let Some(done) = chapter {
            outline.push_child(done);
        }
        (TagTree::from(self.parts).with_lang(Some(language.to_owned())), outline)
    }
}

/// Puts a node at the end; a list that follows a list of its kind goes on with it.
fn add(nodes: &mut Vec<Node>, node: Node) {
    if let (Some(Node::Group(before)), Node::Group(group)) = (nodes.last_mut(), &node)
        && let (TagKind::L(one), TagKind::L(other)) = (&before.tag, &group.tag)
        && one.numbering() == other.numbering()
    {
        if let Node::Group(group) = node {
            before.children.extend(group.children);
        }
        return;
    }
    nodes.push(node);
}

/// One page while it is drawn.
struct Page<'a, 's> {
    painter: &'a mut Painter,
    surface: &'a mut Surface<'s>,
    page: usize,
    /// How many turned or clipped groups we are in.
    turned: u8,
    /// Decoration that is open, so that neighbours share one mark.
    decoration: Option<ArtifactType>,
    /// Whether the row we are in holds heads of columns only.
    row_of_heads: bool,
    headings: &'a mut Vec<Heading>,
}

impl Page<'_, '_> {
    fn walk(&mut self, marks: &[Mark], into: &mut Vec<Node>) {
        for mark in marks {
            match mark {
                Mark::Group { role: Some(role), clip, turn, marks } if !role.is_silent() => {
                    self.close();
                    let pushed = push(self.surface, *clip, *turn);
                    self.turned += pushed;
                    let group = self.element(role, mark, marks);
                    self.turned -= pushed;
                    pop(self.surface, pushed);
                    add(into, group.into());
                }
                Mark::Group { role: None, clip, turn, marks } if speaks(mark) => {
                    self.close();
                    let pushed = push(self.surface, *clip, *turn);
                    self.turned += pushed;
                    self.walk(marks, into);
                    self.turned -= pushed;
                    pop(self.surface, pushed);
                }
                // Words are never lost, even where nobody said what they are.
                Mark::Text { .. } => {
                    self.close();
                    into.push(self.leaf(Tag::P.into(), std::slice::from_ref(mark)).into());
                }
                mark => {
                    self.decorate(decoration(mark));
                    self.painter.draw(self.surface, mark);
                }
            }
        }
        self.close();
    }

    fn element(&mut self, role: &Role, mark: &Mark, marks: &[Mark]) -> TagGroup {
        match role {
            Role::Heading(level) => {
                let words = mark.words().join(" ");
                let place = mark.bounds().map_or_else(Point::default, |rect| Point::new(rect.x, rect.y));
                self.headings.push(Heading { level: *level, words: words.clone(), page: self.page, place });
                let level = NonZeroU16::new(u16::from(*level)).unwrap_or(NonZeroU16::MIN);
                self.leaf(Tag::Hn(level, Some(words)).into(), marks)
            }
            Role::Figure(alt) => {
                let mut tag = Tag::Figure(Some(alt.clone())).with_placement(Some(Placement::Block));
                if self.turned == 0 {
                    let rect = mark.bounds().and_then(box_of);
                    tag = tag.with_bbox(rect.map(|rect| BBox::new(self.page, rect)));
                }
                let id = self.surface.start_tagged(ContentTag::Other);
                self.painter.draw(self.surface, mark);
                self.surface.end_tagged();
                TagGroup::with_children(tag, vec![id.into()])
            }
            Role::List => self.holder(Tag::L(numbering(marks)).into(), marks),
            Role::Item => self.item(marks),
            Role::Table => self.table(marks),
            Role::Row => {
                self.row_of_heads = !marks.iter().any(|mark| is(mark, &Role::Cell));
                self.holder(Tag::TR.into(), marks)
            }
            Role::HeadCell => {
                let scope = if self.row_of_heads { TableHeaderScope::Column } else { TableHeaderScope::Row };
                self.leaf(Tag::TH(scope).into(), marks)
            }
            Role::Cell => self.leaf(Tag::TD.into(), marks),
            Role::Label => self.leaf(Tag::Lbl.into(), marks),
            Role::Paragraph | Role::Artifact | Role::Foot => self.leaf(Tag::P.into(), marks),
        }
    }

    fn holder(&mut self, tag: TagKind, marks: &[Mark]) -> TagGroup {
        let mut group = TagGroup::new(tag);
        self.walk(marks, &mut group.children);
        group
    }

    fn item(&mut self, marks: &[Mark]) -> TagGroup {
        let (labels, rest): (Vec<Mark>, Vec<Mark>) = marks.iter().cloned().partition(|mark| is(mark, &Role::Label));
        let mut item = TagGroup::new(Tag::LI);
        for label in &labels {
            if label.words().is_empty() {
                // A drawn dot.
                let dot = ContentTag::Span(SpanTag::empty().with_actual_text(Some("•")));
                let id = self.surface.start_tagged(dot);
                self.painter.draw(self.surface, label);
                self.surface.end_tagged();
                item.push(TagGroup::with_children(Tag::Lbl, vec![id.into()]));
            } else {
                self.walk(std::slice::from_ref(label), &mut item.children);
            }
        }
        let roles = rest.iter().any(|mark| matches!(mark, Mark::Group { role: Some(role), .. } if !role.is_silent()));
        let body = if roles { self.holder(Tag::LBody.into(), &rest) } else { self.leaf(Tag::LBody.into(), &rest) };
        item.push(body);
        item
    }

    /// Rows of heads first, then the others.
    fn table(&mut self, marks: &[Mark]) -> TagGroup {
        let mut rows = Vec::new();
        self.walk(marks, &mut rows);
        let heads = |row: &Node| {
            matches!(row, Node::Group(row) if row.children.iter().all(|cell| matches!(cell, Node::Group(cell)
                if matches!(cell.tag, TagKind::TH(_)))))
        };
        let body = rows.split_off(rows.iter().position(|row| !heads(row)).unwrap_or(rows.len()));
        let mut table = TagGroup::new(Tag::Table);
        if !rows.is_empty() {
            table.push(TagGroup::with_children(Tag::THead, rows));
        }
        if !body.is_empty() {
            table.push(TagGroup::with_children(Tag::TBody, body));
        }
        table
    }

    fn leaf(&mut self, tag: TagKind, marks: &[Mark]) -> TagGroup {
        let mut voice = Voice { ids: Vec::new(), open: false, left: lines(marks) };
        self.say(marks, &mut voice);
        if voice.ids.is_empty() {
            // An empty cell is a cell.
            voice.plain(self.surface);
        }
        voice.stop(self.surface);
        TagGroup::with_children(tag, voice.ids.into_iter().map(Node::from).collect())
    }

    fn say(&mut self, marks: &[Mark], voice: &mut Voice) {
        for mark in marks {
            match mark {
                Mark::Text { line, at, color } => {
                    voice.left = voice.left.saturating_sub(1);
                    // Lines follow each other with a space, or words would run together (14.8.2.5 of ISO 32000-1).
                    let spaced = voice.left > 0 && !line.text.ends_with(char::is_whitespace);
                    let pieces = pieces(line);
                    let count = pieces.len();
                    let mut shift = 0.0;
                    for (index, (glyphs, instead)) in pieces.into_iter().enumerate() {
                        // Nothing but the fraction itself may be read as the fraction: its space goes with it.
                        let after = if spaced && index + 1 == count { " " } else { "" };
                        match &instead {
                            Some(instead) => voice.instead(self.surface, &format!("{instead}{after}")),
                            None => voice.plain(self.surface),
                        }
                        let from = Point::new(at.x + points(shift * line.style.size.to_points()), at.y);
                        self.painter.glyphs(self.surface, line, glyphs, from, *color, after);
                        if instead.is_some() {
                            voice.stop(self.surface);
                        }
                        shift += glyphs.iter().map(|glyph| glyph.advance).sum::<f64>();
                    }
                }
                Mark::Group { role: Some(role), .. } if role.is_silent() => {
                    voice.stop(self.surface);
                    self.decorate(decoration(mark));
                    self.painter.draw(self.surface, mark);
                    self.close();
                }
                Mark::Group { clip, turn, marks, .. } => {
                    let pushed = push(self.surface, *clip, *turn);
                    self.say(marks, voice);
                    pop(self.surface, pushed);
                }
                mark => {
                    voice.plain(self.surface);
                    self.painter.draw(self.surface, mark);
                }
            }
        }
    }

    fn decorate(&mut self, kind: ArtifactType) {
        if self.decoration != Some(kind) {
            self.close();
            self.surface.start_tagged(ContentTag::Artifact(Artifact::with_kind(kind)));
            self.decoration = Some(kind);
        }
    }

    fn close(&mut self) {
        if self.decoration.take().is_some() {
            self.surface.end_tagged();
        }
    }
}

/// The content of one element while it is drawn.
struct Voice {
    ids: Vec<Identifier>,
    open: bool,
    /// Lines still to come.
    left: usize,
}

impl Voice {
    fn plain(&mut self, surface: &mut Surface<'_>) {
        if !self.open {
            self.ids.push(surface.start_tagged(ContentTag::Other));
            self.open = true;
        }
    }

    /// What follows is read as something else, up to [`Voice::stop`].
    fn instead(&mut self, surface: &mut Surface<'_>, words: &str) {
        self.stop(surface);
        self.ids.push(surface.start_tagged(ContentTag::Span(SpanTag::empty().with_actual_text(Some(words)))));
        self.open = true;
    }

    fn stop(&mut self, surface: &mut Surface<'_>) {
        if mem::take(&mut self.open) {
            surface.end_tagged();
        }
    }
}

fn decoration(mark: &Mark) -> ArtifactType {
    if is(mark, &Role::Foot) { ArtifactType::Footer } else { ArtifactType::Layout }
}

fn is(mark: &Mark, wanted: &Role) -> bool {
    matches!(mark, Mark::Group { role: Some(role), .. } if role == wanted)
}

/// True if something in it is read aloud.
fn speaks(mark: &Mark) -> bool {
    match mark {
        Mark::Text { .. } => true,
        Mark::Group { role: Some(role), .. } => !role.is_silent(),
        Mark::Group { role: None, marks, .. } => marks.iter().any(speaks),
        _ => false,
    }
}

fn lines(marks: &[Mark]) -> usize {
    let count = |mark: &Mark| match mark {
        Mark::Text { .. } => 1,
        Mark::Group { role: Some(role), .. } if role.is_silent() => 0,
        Mark::Group { marks, .. } => lines(marks),
        _ => 0,
    };
    marks.iter().map(count).sum()
}

/// How a list is labelled: by numbers, by drawn squares, or not.
fn numbering(marks: &[Mark]) -> ListNumbering {
    let label = marks.iter().find_map(|item| match item {
        Mark::Group { marks, .. } => marks.iter().find(|mark| is(mark, &Role::Label)),
        _ => None,
    });
    match label.map(Mark::words) {
        None => ListNumbering::None,
        Some(words) if words.is_empty() => ListNumbering::Square,
        Some(words) => {
            let first = words.concat().trim_start().chars().next();
            if first.is_some_and(|sign| sign.is_ascii_digit()) {
                ListNumbering::Decimal
            } else {
                ListNumbering::UpperAlpha
            }
        }
    }
}

/// A line in pieces, each with what is read instead of it: fractions set with the fraction slash are read as
/// `1/2` written plainly is, or by their own sign.
fn pieces(line: &Line) -> Vec<(&[Glyph], Option<String>)> {
    let text = &*line.text;
    let mut pieces = Vec::new();
    let mut from = 0;
    let first_of = |byte: usize| line.glyphs.partition_point(|glyph| glyph.start < byte);
    for (slash, sign) in text.match_indices('\u{2044}') {
        let over = text[..slash].len() - text[..slash].trim_end_matches(|sign: char| sign.is_ascii_digit()).len();
        let rest = &text[slash + sign.len()..];
        let under = rest.len() - rest.trim_start_matches(|sign: char| sign.is_ascii_digit()).len();
        let (start, end) = (first_of(slash - over), first_of(slash + sign.len() + under));
        if over == 0 || under == 0 || start < from || end <= start {
            continue;
        }
        if start > from {
            pieces.push((&line.glyphs[from..start], None));
        }
        pieces.push((&line.glyphs[start..end], Some(spoken(&text[slash - over..slash], &rest[..under]))));
        from = end;
    }
    if from < line.glyphs.len() || pieces.is_empty() {
        pieces.push((&line.glyphs[from..], None));
    }
    pieces
}

fn spoken(over: &str, under: &str) -> String {
    let own = match (over, under) {
        ("1", "2") => "½",
        ("1", "4") => "¼",
        ("3", "4") => "¾",
        ("1", "8") => "⅛",
        ("3", "8") => "⅜",
        ("5", "8") => "⅝",
        ("7", "8") => "⅞",
        _ => return format!("{over}/{under}"),
    };
    own.to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::text::{Face, Style, shape};

    #[test]
    fn fractions_are_pieces_of_their_own() {
        let style = Style::new(Face::Regular, 12);
        let read = |text: &str| {
            let line = shape(text, style);
            let all: usize = pieces(&line).iter().map(|(glyphs, _)| glyphs.len()).sum();
            assert_eq!(all, line.glyphs.len());
            pieces(&line).into_iter().map(|(_, instead)| instead.unwrap_or_else(|| ".".to_owned())).collect::<String>()
        };
        assert_eq!(read("set 4\u{a0}3\u{2044}4 in"), ".¾.");
        assert_eq!(read("1\u{2044}2 × 3\u{2044}16"), "½.3/16");
        assert_eq!(read("4\u{2044} and \u{2044}4"), ".");
        assert_eq!(read(""), ".");
    }
}
