//! Pages filled from the top: headings, paragraphs, tables, figures, footers.

use measure::{Length, Rect, Size};

use super::look::{ACCENT, INK, RULE, SOFT, half, pt, say, sixteenths};
use super::told::Told;
use crate::scene::{Color, Mark, Pen, Point, Role, Scene};
use crate::text::{Align, Style, place, shape, wrap};

/// Pages being filled.
pub(super) struct Pages {
    pub(super) told: Told,
    size: Size,
    title: String,
    done: Vec<Vec<Mark>>,
    marks: Vec<Mark>,
    /// Where the next thing goes.
    pub(super) y: Length,
}

/// One column of a table: its head, its share of the width, its side.
pub(super) struct Column {
    pub(super) head: String,
    pub(super) share: i64,
    pub(super) align: Align,
}

impl Pages {
    pub(super) fn new(told: Told, title: &str) -> Pages {
        let size = told.edition.paper.size();
        let mut pages =
            Pages { told, size, title: title.to_owned(), done: Vec::new(), marks: Vec::new(), y: Length::ZERO };
        pages.y = pages.margin();
        pages
    }

    /// Space at the left, right and top of a page.
    fn margin(&self) -> Length {
        sixteenths(if self.told.large() { 16 } else { 12 })
    }

    pub(super) fn left(&self) -> Length {
        self.margin()
    }

    pub(super) fn right(&self) -> Length {
        self.left() + self.width()
    }

    /// Between the margins; in large print lines are no longer than 6 in.
    pub(super) fn width(&self) -> Length {
        let between = self.size.width - self.margin() * 2;
        if self.told.large() { between.min(Length::INCH * 6) } else { between }
    }

    /// Above the page number.
    pub(super) fn bottom(&self) -> Length {
        self.size.height - sixteenths(if self.told.large() { 20 } else { 15 })
    }

    /// Height that is left on this page.
    pub(super) fn left_over(&self) -> Length {
        self.bottom() - self.y
    }

    /// Starts a new page unless this one is empty.
    pub(super) fn fresh(&mut self) {
        if !self.marks.is_empty() {
            self.done.push(std::mem::take(&mut self.marks));
        }
        self.y = self.margin();
    }

    /// Starts a new page unless so much room is left.
    pub(super) fn room(&mut self, height: Length) {
        if self.left_over() < height {
            self.fresh();
        }
    }

    pub(super) fn gap(&mut self, height: Length) {
        self.y += height;
    }

    pub(super) fn push(&mut self, mark: Mark) {
        self.marks.push(mark);
    }

    /// A thin line across.
    pub(super) fn rule(&mut self) {
        let (left, right, y) = (self.left(), self.right(), self.y);
        self.push(Mark::line(Point::new(left, y), Point::new(right, y), Pen::solid(RULE, sixteenths(1) - pt(4))));
    }

    /// The head of a chapter, at the top of its own page.
    pub(super) fn chapter(&mut self, text: &str) {
        self.fresh();
        self.heading(1, text, self.told.heading());
        self.gap(pt(4));
        self.push(Mark::fill(Rect::new(self.left(), self.y, Size::new(sixteenths(14), pt(2))), ACCENT));
        self.gap(pt(16));
    }

    /// A heading inside a chapter.
    pub(super) fn section(&mut self, text: &str) {
        self.room(sixteenths(20));
        self.heading(2, text, self.told.subheading());
        self.gap(pt(5));
    }

    fn heading(&mut self, level: u8, text: &str, style: Style) {
        self.block(text, style, INK, Role::Heading(level));
    }

    /// A paragraph.
    pub(super) fn say(&mut self, text: &str) {
        self.block(text, self.told.body(), INK, Role::Paragraph);
        self.gap(pt(5));
    }

    /// A note below something.
    pub(super) fn note(&mut self, text: &str) {
        self.block(text, self.told.small(), SOFT, Role::Paragraph);
        self.gap(pt(4));
    }

    /// Wrapped lines; goes over to the next page where it must.
    pub(super) fn block(&mut self, text: &str, style: Style, color: Color, role: Role) {
        let mut lines = wrap(text, style, self.width()).into_iter();
        while lines.len() > 0 {
            let mut held = Vec::new();
            let take = self.taken(lines.len(), style.leading());
            for line in lines.by_ref().take(take) {
                let base = self.y + style.size;
                held.push(place(line, Point::new(self.left(), base), Align::Start, color));
                self.y += style.leading();
            }
            self.push(Mark::role(role.clone(), held));
        }
    }

    /// How many of so many lines go on this page (a new one if need be): never one alone on either side of the turn.
    fn taken(&mut self, lines: usize, leading: Length) -> usize {
        let fits = |pages: &Pages| usize::try_from(pages.left_over().ticks() / leading.ticks().max(1)).unwrap_or(0);
        let split = |fit: usize| if fit + 1 == lines { lines.saturating_sub(2) } else { fit.min(lines) };
        let mut take = split(fits(self));
        if take < lines.min(2) {
            self.fresh();
            take = split(fits(self));
        }
        take.max(1)
    }

    /// A list item with a dot at the left.
    pub(super) fn item(&mut self, text: &str) {
        let indent = sixteenths(4);
        let lines = wrap(text, self.told.item(), self.width() - indent);
        let height = self.told.item().leading() * i64::try_from(lines.len()).unwrap_or(1);
        self.room(height);
        let dot = Rect::new(self.left() + pt(2), self.y + half(self.told.item().size), Size::new(pt(4), pt(4)));
        let mut held = vec![Mark::role(Role::Label, vec![Mark::fill(dot, ACCENT)])];
        for line in lines {
            held.push(place(line, Point::new(self.left() + indent, self.y + self.told.item().size), Align::Start, INK));
            self.y += self.told.item().leading();
        }
        self.push(Mark::role(Role::List, vec![Mark::role(Role::Item, held)]));
        self.gap(pt(4));
    }

    /// A list item with its number at the left.
    pub(super) fn numbered(&mut self, number: u32, text: &str) {
        let style = self.told.body();
        let mark = shape(&format!("{number}."), self.told.strong());
        let indent = (mark.width + pt(6)).max(sixteenths(6));
        let lines = wrap(text, style, self.width() - indent);
        self.room(style.leading() * i64::try_from(lines.len()).unwrap_or(1));
        let mark = place(mark, Point::new(self.left(), self.y + style.size), Align::Start, ACCENT);
        let mut held = vec![Mark::role(Role::Label, vec![mark])];
        for line in lines {
            held.push(place(line, Point::new(self.left() + indent, self.y + style.size), Align::Start, INK));
            self.y += style.leading();
        }
        self.push(Mark::role(Role::List, vec![Mark::role(Role::Item, held)]));
        self.gap(pt(5));
    }

    /// Blank lines to write on, down to the foot of the page.
    pub(super) fn blank_lines(&mut self) {
        self.gap(pt(24));
        while self.left_over() > Length::ZERO {
            self.rule();
            self.gap(pt(28));
        }
    }

    /// A table; its head is said again on every page it goes over to.
    pub(super) fn table(&mut self, columns: &[Column], rows: &[Vec<String>]) {
        self.table_with_total(columns, rows, 0);
    }

    /// A table whose last rows, so many of them, sum it up.
    pub(super) fn table_with_total(&mut self, columns: &[Column], rows: &[Vec<String>], totals: usize) {
        let whole: i64 = columns.iter().map(|column| column.share).sum();
        let pad = pt(3);
        let mut held = Vec::new();
        for (index, row) in rows.iter().enumerate() {
            let style = if index + totals >= rows.len() { self.told.strong() } else { self.told.body() };
            let cells: Vec<Vec<crate::text::Line>> = row
                .iter()
                .zip(columns)
                .map(|(text, column)| {
                    wrap(text, style, crate::scene::share(self.width(), column.share, whole) - pad * 2)
                })
                .collect();
            let tall = cells.iter().map(Vec::len).max().unwrap_or(1).max(1);
            let height = self.told.body().leading() * i64::try_from(tall).unwrap_or(1) + pad;
            if held.is_empty() || self.left_over() < height {
                let head = if held.is_empty() {
                    // Two rows go with the head, so that none stands alone below it.
                    height * if rows.len() > 1 { 2 } else { 1 } + self.head_tall(columns, whole, pad)
                } else {
                    self.size.height
                };
                if !held.is_empty() {
                    self.push(Mark::role(Role::Table, std::mem::take(&mut held)));
                }
                self.room(head);
                held.push(self.table_head(columns, whole, pad));
            }
            let mut marks = Vec::new();
            let mut x = self.left();
            for (lines, column) in cells.into_iter().zip(columns) {
                let wide = crate::scene::share(self.width(), column.share, whole);
                let mut texts = Vec::new();
                for (index, line) in (0_i64..).zip(lines) {
                    let base = self.y + half(pad) + self.told.body().size + self.told.body().leading() * index;
                    texts.push(place(line, Point::new(side(x, wide, pad, column.align), base), column.align, INK));
                }
                marks.push(Mark::role(Role::Cell, texts));
                x += wide;
            }
            self.y += height;
            held.push(Mark::role(Role::Row, marks));
            self.rule();
        }
        if !held.is_empty() {
            self.push(Mark::role(Role::Table, held));
        }
        self.gap(pt(11));
    }

    /// Each column's head, broken to fit its column.
    fn head_lines(&self, columns: &[Column], whole: i64, pad: Length) -> Vec<Vec<crate::text::Line>> {
        let wide = |column: &Column| crate::scene::share(self.width(), column.share, whole) - pad * 2;
        columns.iter().map(|column| wrap(&column.head, self.told.small_strong(), wide(column))).collect()
    }

    fn head_tall(&self, columns: &[Column], whole: i64, pad: Length) -> Length {
        let tall = self.head_lines(columns, whole, pad).iter().map(Vec::len).max().unwrap_or(1);
        self.told.small().leading() * i64::try_from(tall).unwrap_or(1) + pt(4)
    }

    fn table_head(&mut self, columns: &[Column], whole: i64, pad: Length) -> Mark {
        let mut marks = Vec::new();
        let mut x = self.left();
        let tall = self.head_tall(columns, whole, pad);
        for (column, lines) in columns.iter().zip(self.head_lines(columns, whole, pad)) {
            let wide = crate::scene::share(self.width(), column.share, whole);
            let mut texts = Vec::new();
            for (index, line) in (0_i64..).zip(lines) {
                let base = self.y + self.told.small().size + self.told.small().leading() * index;
                texts.push(place(line, Point::new(side(x, wide, pad, column.align), base), column.align, SOFT));
            }
            marks.push(Mark::role(Role::HeadCell, texts));
            x += wide;
        }
        self.y += tall - pt(1);
        let (left, right, y) = (self.left(), self.right(), self.y);
        self.push(Mark::line(Point::new(left, y), Point::new(right, y), Pen::solid(INK, pt(1))));
        Mark::role(Role::Row, marks)
    }

    /// The pages, each with its footer.
    pub(super) fn finish(mut self, name: &str) -> Vec<Scene> {
        self.fresh();
        let count = self.done.len();
        let (left, right, style) = (self.left(), self.right(), self.told.small());
        let (size, title) = (self.size, self.title);
        let number = |index: usize| say("page-number", &[("number", (index + 1).into()), ("count", count.into())]);
        let base = size.height - sixteenths(8);
        self.done
            .into_iter()
            .enumerate()
            .map(|(index, mut marks)| {
                let line = shape(&number(index), style);
                let free = right - left - line.width - pt(18);
                let mut foot = vec![place(line, Point::new(right, base), Align::End, SOFT)];
                if shape(name, style).width <= free {
                    foot.push(place(shape(name, style), Point::new(left, base), Align::Start, SOFT));
                }
                marks.push(Mark::role(Role::Foot, foot));
                Scene { size, title: format!("{title} – {}", number(index)), marks }
            })
            .collect()
    }
}

fn side(x: Length, wide: Length, pad: Length, align: Align) -> Length {
    match align {
        Align::Start => x,
        Align::Middle => x + half(wide),
        Align::End => x + wide - pad,
    }
}

/// A line no wider than `width`: what is too long ends in an ellipsis.
pub(super) fn fitted(text: &str, style: Style, width: Length) -> crate::text::Line {
    let line = shape(text, style);
    if line.width <= width {
        return line;
    }
    let mut signs: Vec<char> = text.chars().collect();
    while !signs.is_empty() {
        signs.pop();
        let short: String = signs.iter().collect::<String>().trim_end().to_owned() + "…";
        let line = shape(&short, style);
        if line.width <= width {
            return line;
        }
    }
    shape("", style)
}
