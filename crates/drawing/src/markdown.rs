//! Scenes as Markdown text: the same words in the same order, pictures by what they show.
//!
//! For mail, notebooks and machines that read aloud. Only roles are read: what has none is decoration.

use crate::scene::{Mark, Role, Scene};

/// The scenes' words, page after page.
pub fn write(scenes: &[Scene]) -> String {
    let mut text = String::new();
    let mut before = "";
    for mark in scenes.iter().flat_map(|scene| &scene.marks) {
        let Mark::Group { role: Some(role), marks, .. } = mark else { continue };
        let (kind, said) = match role {
            Role::Heading(level) => {
                let hashes = "#".repeat(usize::from(*level).clamp(1, 6));
                ("heading", format!("{hashes} {}\n", joined(marks)))
            }
            Role::List => ("list", marks.iter().map(|item| format!("{}\n", listed(item))).collect()),
            Role::Table => ("table", table(marks)),
            Role::Figure(alt) => ("figure", format!("[{}]\n", escape(&plain(alt)))),
            Role::Artifact | Role::Foot => continue,
            _ => ("words", format!("{}\n", joined(marks))),
        };
        if said.trim().is_empty() {
            continue;
        }
        // Items of one list stay together, all else stands apart.
        if !text.is_empty() && (kind != "list" || before != "list") {
            text.push('\n');
        }
        text.push_str(&said);
        before = kind;
    }
    text
}

/// The scenes' words as plain text, page after page: headings on lines of their own, rows of a table with two spaces
/// between their cells, pictures by what they show. For a video description or a mail that shows no formatting.
pub fn plain_text(scenes: &[Scene]) -> String {
    let mut text = String::new();
    let said = |marks: &[Mark]| plain(&marks.iter().flat_map(Mark::words).collect::<Vec<_>>().join(" "));
    let words = |mark: &Mark| plain(&mark.words().join(" "));
    let mut before = "";
    for mark in scenes.iter().flat_map(|scene| &scene.marks) {
        let Mark::Group { role: Some(role), marks, .. } = mark else { continue };
        let (kind, lines) = match role {
            Role::Heading(1) => ("heading", vec![said(marks).to_uppercase()]),
            Role::List => ("list", marks.iter().map(words).collect()),
            Role::Table => {
                let row = |row: &Mark| match row {
                    Mark::Group { marks, .. } => marks.iter().map(words).collect::<Vec<_>>().join("  "),
                    _ => String::new(),
                };
                ("table", marks.iter().map(row).collect())
            }
            Role::Figure(alt) => ("figure", vec![format!("({})", plain(alt))]),
            Role::Artifact | Role::Foot => continue,
            _ => ("words", vec![said(marks)]),
        };
        let lines: Vec<String> = lines.into_iter().filter(|line| !line.trim().is_empty()).collect();
        if lines.is_empty() {
            continue;
        }
        if !text.is_empty() && (kind != "list" || before != "list") {
            text.push('\n');
        }
        text.push_str(&lines.join("\n"));
        text.push('\n');
        before = kind;
    }
    text
}

fn joined(marks: &[Mark]) -> String {
    let words: Vec<&str> = marks.iter().flat_map(Mark::words).collect();
    escape(&plain(&words.join(" ")))
}

/// No-break spaces and built fractions as everyone's keyboard has them.
fn plain(text: &str) -> String {
    let text = text.replace('\u{a0}', " ").replace('\u{2044}', "/");
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn listed(item: &Mark) -> String {
    let Mark::Group { marks, .. } = item else { return String::new() };
    let label = |mark: &Mark| matches!(mark, Mark::Group { role: Some(Role::Label), .. });
    let number: Vec<&str> = marks.iter().filter(|mark| label(mark)).flat_map(Mark::words).collect();
    let words: Vec<&str> = marks.iter().filter(|mark| !label(mark)).flat_map(Mark::words).collect();
    let text = escape(&plain(&words.join(" ")));
    if number.is_empty() { format!("- {text}") } else { format!("{} {text}", number.join("")) }
}

fn table(rows: &[Mark]) -> String {
    let cells = |row: &Mark| -> Vec<String> {
        let Mark::Group { marks, .. } = row else { return Vec::new() };
        let cell = |mark: &Mark| {
            let words = mark.words().join(" ");
            escape(&plain(&words)).replace('|', "\\|")
        };
        marks.iter().map(cell).collect()
    };
    let mut text = String::new();
    for (index, row) in rows.iter().enumerate() {
        let cells = cells(row);
        text.push_str(&format!("| {} |\n", cells.join(" | ")));
        if index == 0 {
            text.push_str(&format!("|{}\n", " --- |".repeat(cells.len())));
        }
    }
    text
}

/// Signs that Markdown would read as its own.
fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for sign in text.chars() {
        if matches!(sign, '*' | '_' | '`' | '<' | '[' | ']' | '\\') {
            out.push('\\');
        }
        out.push(sign);
    }
    // At the start of a line these make lists and headings.
    if out.starts_with(['#', '-', '+', '>', '=']) { format!("\\{out}") } else { out }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use measure::{Length, Size};

    use super::*;
    use crate::scene::{Color, Point};
    use crate::text::{Align, Face, Style, say};

    fn words(text: &str) -> Mark {
        say(text, Style::new(Face::Regular, 12), Point::default(), Align::Start, Color::hex(0))
    }

    #[test]
    fn roles_become_headings_lists_tables_and_pictures() {
        let item = |label: &str, text: &str| {
            let label = Mark::role(Role::Label, if label.is_empty() { vec![] } else { vec![words(label)] });
            Mark::role(Role::List, vec![Mark::role(Role::Item, vec![label, words(text)])])
        };
        let cell = |text: &str| Mark::role(Role::Cell, vec![words(text)]);
        let marks = vec![
            Mark::role(Role::Heading(2), vec![words("Cut")]),
            Mark::role(Role::Paragraph, vec![words("Set to 4\u{a0}3\u{2044}4"), words("and *cut*.")]),
            item("1.", "First."),
            item("2.", "Second."),
            item("", "Loose"),
            Mark::role(
                Role::Table,
                vec![
                    Mark::role(Role::Row, vec![cell("Piece"), cell("How many")]),
                    Mark::role(Role::Row, vec![cell("a|b"), cell("8")]),
                ],
            ),
            Mark::role(Role::Figure("A sheet".to_owned()), vec![words("unheard")]),
            Mark::role(Role::Foot, vec![words("Page 1")]),
        ];
        let scene = Scene { size: Size::new(Length::INCH, Length::INCH), title: String::new(), marks };
        let wanted = "## Cut\n\nSet to 4 3/4 and \\*cut\\*.\n\n1. First.\n2. Second.\n- Loose\n\n\
                      | Piece | How many |\n| --- | --- |\n| a\\|b | 8 |\n\n[A sheet]\n";
        assert_eq!(write(std::slice::from_ref(&scene)), wanted);
        let wanted =
            "Cut\n\nSet to 4 3/4 and *cut*.\n\n1. First.\n2. Second.\nLoose\n\nPiece  How many\na|b  8\n\n(A sheet)\n";
        assert_eq!(plain_text(&[scene]), wanted);
    }
}
