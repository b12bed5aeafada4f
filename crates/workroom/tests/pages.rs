//! The printed pages of every example: words large enough, headings never alone at the foot.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

use std::path::{Path, PathBuf};

use cards::Plan;
use cutting::Budget;
use drawing::scene::Role;
use drawing::sheets::{Faces, Paper, handout};
use drawing::{Mark, Scene};
use measure::Length;

/// Every example, planned.
fn examples() -> Vec<(PathBuf, Plan)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples");
    let mut paths: Vec<PathBuf> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "toml"))
        .collect();
    paths.sort();
    let plan = |path: PathBuf| {
        let project = store::project_file::read_bytes(&std::fs::read(&path).unwrap()).unwrap();
        let plan = cards::plan::plan(&project, &mut Budget::nodes(2_000_000));
        (path, plan)
    };
    let found: Vec<_> = paths.into_iter().map(plan).collect();
    assert!(found.len() >= 7, "the examples are there");
    found
}

/// Every page of every example, on both papers.
fn every_page(look: impl Fn(&str, &Scene)) {
    for (path, plan) in examples() {
        for paper in [Paper::Letter, Paper::A4] {
            for (number, page) in (1..).zip(handout(&plan, &Faces::new(), paper)) {
                look(&format!("{} {paper:?} page {number}", path.file_name().unwrap().display()), &page);
            }
        }
    }
}

/// Words with their size, outside in.
fn words(marks: &[Mark], found: &mut Vec<(String, Length)>) {
    for mark in marks {
        match mark {
            Mark::Text { line, .. } => found.push((line.text.to_string(), line.style.size)),
            Mark::Group { marks, .. } => words(marks, found),
            _ => {}
        }
    }
}

#[test]
fn no_words_are_smaller_than_nine_points() {
    every_page(|name, page| {
        let mut found = Vec::new();
        words(&page.marks, &mut found);
        assert!(!found.is_empty(), "{name} says nothing");
        for (text, size) in found {
            assert!(size >= Length::POINT * 9, "{name}: `{text}` at {} pt", size.to_points());
        }
    });
}

/// What stands on a page in reading order: headings as true, all else that is read as false, with its lines.
fn read(page: &Scene) -> Vec<(bool, usize)> {
    let mut found = Vec::new();
    for mark in &page.marks {
        if let Mark::Group { role: Some(role), marks, .. } = mark
            && *role != Role::Artifact
        {
            let mut lines = Vec::new();
            words(marks, &mut lines);
            let figure = usize::from(matches!(role, Role::Figure(_))) * 2;
            found.push((matches!(role, Role::Heading(_)), lines.len() + figure));
        }
    }
    found
}

#[test]
fn no_heading_and_no_line_stands_alone() {
    every_page(|name, page| {
        let read = read(page);
        let (heading, _) = read.last().unwrap_or_else(|| panic!("{name} is empty"));
        assert!(!heading, "{name} ends with a heading");
        let lines: usize = read.iter().filter(|(heading, _)| !heading).map(|(_, lines)| lines).sum();
        assert!(lines >= 2, "{name} holds a single line");
    });
}
