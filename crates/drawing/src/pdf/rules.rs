//! What the pages must keep to so that a person who does not see them can use them.
//!
//! Numbers are clauses of ISO 14289-1:2014 (PDF/UA-1), named from memory. What can only be seen in the file itself
//! (fonts, marked content, metadata) the library checks; what only a person can judge (whether an alternative
//! text says enough) nobody does.

use std::fmt;

use super::About;
use crate::scene::{Mark, Role, Scene};

/// One rule that is broken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Breach {
    /// The clause.
    pub clause: &'static str,
    /// The page, from 1; none for the document.
    pub page: Option<usize>,
    /// What is wrong.
    pub what: String,
}

impl fmt::Display for Breach {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(page) = self.page {
            write!(f, "page {page}: ")?;
        }
        write!(f, "{} ({})", self.what, self.clause)
    }
}

/// Every rule that the pages break.
///
/// # Shape
/// Clauses looked at: 7.1 (title; roles only where they can be kept), 7.3 (figures), 7.4.2 (levels of headings),
/// 7.5 (tables), 7.6 (lists).
pub fn breaches(scenes: &[Scene], about: &About) -> Vec<Breach> {
    let mut check = Check { found: Vec::new(), page: None, level: 0 };
    if about.title.trim().is_empty() {
        check.breach("7.1", "the document has no title");
    }
    for (index, scene) in scenes.iter().enumerate() {
        check.page = Some(index + 1);
        check.marks(&scene.marks, Within::Page);
    }
    check.found
}

/// What the marks stand in.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Within {
    Page,
    List,
    Item,
    Table,
    Row,
    /// Words, a cell, a figure: nothing below it can be told apart.
    Leaf,
}

struct Check {
    found: Vec<Breach>,
    page: Option<usize>,
    level: u8,
}

impl Check {
    fn breach(&mut self, clause: &'static str, what: impl Into<String>) {
        self.found.push(Breach { clause, page: self.page, what: what.into() });
    }

    fn marks(&mut self, marks: &[Mark], within: Within) {
        for mark in marks {
            match mark {
                Mark::Group { role: Some(role), .. } if role.is_silent() => {}
                Mark::Group { role: Some(role), marks, .. } => self.role(role, mark, marks, within),
                Mark::Group { role: None, marks, .. } => self.marks(marks, within),
                Mark::Text { line, .. } if matches!(within, Within::List | Within::Table | Within::Row) => {
                    let clause = if within == Within::List { "7.6" } else { "7.5" };
                    self.breach(clause, format!("`{}` is in no item and no cell", line.text));
                }
                _ => {}
            }
        }
    }

    fn role(&mut self, role: &Role, mark: &Mark, marks: &[Mark], within: Within) {
        use Within::{Item, Leaf, List, Page, Row, Table};
        let (may, clause, below) = match role {
            Role::Heading(_) => (within == Page, "7.1", Leaf),
            Role::Paragraph | Role::Figure(_) => (matches!(within, Page | Item), "7.1", Leaf),
            Role::List => (matches!(within, Page | Item), "7.6", List),
            Role::Table => (matches!(within, Page | Item), "7.5", Table),
            Role::Item => (within == List, "7.6", Item),
            Role::Label => (within == Item, "7.6", Leaf),
            Role::Row => (within == Table, "7.5", Row),
            Role::HeadCell | Role::Cell => (within == Row, "7.5", Leaf),
            Role::Artifact | Role::Foot => return,
        };
        if !may {
            self.breach(clause, format!("{role:?} stands where it cannot be told"));
        }
        match role {
            Role::Heading(level) => {
                if mark.words().concat().trim().is_empty() {
                    self.breach("7.4.2", "a heading without words");
                }
                if *level == 0 || *level > self.level + 1 {
                    self.breach("7.4.2", format!("heading level {level} after level {}", self.level));
                }
                self.level = *level;
            }
            Role::Figure(alt) if alt.trim().is_empty() => self.breach("7.3", "a figure without words for it"),
            Role::Table => self.table(marks),
            Role::List if children(marks, |role| *role == Role::Item).is_empty() => {
                self.breach("7.6", "a list without items");
            }
            _ => {}
        }
        self.marks(marks, below);
    }

    /// Regular: heads first, as many cells in each row.
    fn table(&mut self, marks: &[Mark]) {
        let cells = |row: &&[Mark]| children(row, |role| matches!(role, Role::Cell | Role::HeadCell)).len();
        let rows = children(marks, |role| *role == Role::Row);
        let Some(first) = rows.first() else { return self.breach("7.5", "a table without rows") };
        let heads = children(first, |role| *role == Role::HeadCell).len();
        let wide = cells(first);
        if heads < wide || wide == 0 {
            self.breach("7.5", "a table whose first row does not head its columns");
        }
        if rows.iter().any(|row| cells(row) != wide) {
            self.breach("7.5", "a table with rows of unlike length");
        }
    }
}

/// What the groups of such roles hold, whatever clips or turns lie between.
fn children(marks: &[Mark], wanted: fn(&Role) -> bool) -> Vec<&[Mark]> {
    let mut found: Vec<&[Mark]> = Vec::new();
    for mark in marks {
        match mark {
            Mark::Group { role: Some(role), marks, .. } if wanted(role) => found.push(marks),
            Mark::Group { role: None, marks, .. } => found.extend(children(marks, wanted)),
            _ => {}
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scene::{Color, Point};
    use crate::text::{Align, Face, Style, say};
    use measure::{Length, Size};

    fn words(text: &str) -> Vec<Mark> {
        vec![say(text, Style::new(Face::Regular, 12), Point::default(), Align::Start, Color::hex(0))]
    }

    fn clauses(title: &str, marks: Vec<Mark>) -> Vec<&'static str> {
        let size = Size::new(Length::INCH, Length::INCH);
        let scene = Scene { size, title: "Page".to_owned(), marks };
        let about = About { title: title.to_owned(), ..About::default() };
        let found = breaches(std::slice::from_ref(&scene), &about);
        assert_eq!(super::super::write(&[scene], &about).is_err(), !found.is_empty(), "the writer refuses just these");
        found.into_iter().map(|breach| breach.clause).collect()
    }

    fn row(roles: &[Role]) -> Mark {
        Mark::role(Role::Row, roles.iter().map(|role| Mark::role(role.clone(), words("a"))).collect())
    }

    #[test]
    fn each_rule_is_broken_by_something() {
        assert!(clauses("T", words("plain words are a paragraph")).is_empty());
        assert_eq!(clauses(" ", words("a")), ["7.1"]);
        assert_eq!(clauses("T", vec![Mark::role(Role::Figure(" ".to_owned()), words("a"))]), ["7.3"]);
        assert_eq!(clauses("T", vec![Mark::role(Role::Heading(2), words("a"))]), ["7.4.2"]);
        let skips = vec![Mark::role(Role::Heading(1), words("a")), Mark::role(Role::Heading(3), words("a"))];
        assert_eq!(clauses("T", skips), ["7.4.2"]);
        assert_eq!(clauses("T", vec![Mark::role(Role::Heading(1), Vec::new())]), ["7.4.2"]);
        let lost = Mark::role(Role::Paragraph, vec![Mark::role(Role::Figure("a".to_owned()), words("a"))]);
        assert_eq!(clauses("T", vec![lost]), ["7.1"]);
        assert_eq!(clauses("T", vec![Mark::role(Role::List, words("a"))]), ["7.6", "7.6"]);
        assert_eq!(clauses("T", vec![Mark::role(Role::Item, words("a"))]), ["7.6"]);
    }

    #[test]
    fn tables_are_regular() {
        let heads = || row(&[Role::HeadCell, Role::HeadCell]);
        let table = |rows: Vec<Mark>| clauses("T", vec![Mark::role(Role::Table, rows)]);
        assert!(table(vec![heads(), row(&[Role::Cell, Role::Cell]), row(&[Role::HeadCell, Role::Cell])]).is_empty());
        assert_eq!(table(vec![heads(), row(&[Role::Cell])]), ["7.5"]);
        assert_eq!(table(vec![row(&[Role::Cell, Role::Cell])]), ["7.5"]);
        assert_eq!(table(Vec::new()), ["7.5"]);
        assert_eq!(table(words("a")), ["7.5", "7.5"]);
    }
}
