//! One question, one way to write it: sheets without their edges, everything in an order of its own, lengths as small
//! as they can be. So neither the order of kinds nor the size of a step changes an answer, however short the search.

use std::cmp::Reverse;

use super::answer::{Answer, Why};
use super::{Instance, PieceKind, SheetKind};
use crate::{Outcome, Tree};

/// An instance written so, and the way back.
#[derive(Debug)]
pub(super) struct Canon {
    pub(super) instance: Instance,
    /// For each sheet and piece kind its index as it was asked.
    sheets: Vec<usize>,
    pieces: Vec<usize>,
    /// Steps of the question in one step here.
    unit: u32,
}

impl Canon {
    /// The instance must have been checked.
    pub(super) fn of(asked: &Instance) -> Canon {
        let mut rules = asked.rules;
        if !rules.strips() {
            rules.least_strip = 0;
        }
        // The check has shown that something is left of each sheet.
        let inside = |s: &SheetKind| s.usable().unwrap_or((s.width, s.height));
        let sides = asked.sheets.iter().map(inside).chain(asked.pieces.iter().map(|p| (p.width, p.height)));
        let unit = sides.fold(rules.least_strip, |unit, (w, h)| gcd(gcd(unit, w), h)).max(1);
        rules.least_strip /= unit;
        let mut sheets: Vec<(usize, SheetKind)> = asked
            .sheets
            .iter()
            .map(|sheet| {
                let (width, height) = inside(sheet);
                SheetKind::whole(width / unit, height / unit, sheet.copies, sheet.cost)
            })
            .enumerate()
            .collect();
        // Large before small; of equal ones the first asked.
        sheets.sort_by_key(|(_, s)| {
            (Reverse(u64::from(s.width) * u64::from(s.height)), s.width, s.cost, Reverse(s.copies.unwrap_or(u32::MAX)))
        });
        let small = |p: &PieceKind| PieceKind { width: p.width / unit, height: p.height / unit, ..p.clone() };
        let mut pieces: Vec<(usize, PieceKind)> = asked.pieces.iter().map(small).enumerate().collect();
        pieces.sort_by_key(|(_, p)| {
            let area = u64::from(p.width) * u64::from(p.height);
            (Reverse(area), Reverse(p.width), p.turn, Reverse(p.demand.unwrap_or(u32::MAX)), Reverse(p.value), p.min)
        });
        let (sheet_places, sheets) = sheets.into_iter().unzip();
        let (piece_places, pieces) = pieces.into_iter().unzip();
        let instance = Instance { sheets, pieces, question: asked.question, rules };
        Canon { instance, sheets: sheet_places, pieces: piece_places, unit }
    }

    /// The answer in the words of the question, the edges of the sheets round it.
    pub(super) fn undo(&self, asked: &Instance, answer: &mut Answer) {
        for cut in &mut answer.sheets {
            cut.sheet = self.sheets[cut.sheet];
            let SheetKind { width, height, edges, .. } = asked.sheets[cut.sheet];
            let tree = std::mem::replace(&mut cut.tree, Tree::Waste);
            cut.tree = edges.around(self.tree(tree), (width, height));
        }
        if let Outcome::Impossible { why } = &mut answer.outcome {
            let square = u128::from(self.unit) * u128::from(self.unit);
            match why {
                Why::FitsNoSheet { piece } => *piece = self.pieces[*piece],
                Why::TooLittleArea { wanted, there } => {
                    (*wanted, *there) = (wanted.saturating_mul(square), there.saturating_mul(square));
                }
                Why::TooFewSheets | Why::MinimumDoesNotFit => {}
            }
        }
    }

    fn tree(&self, tree: Tree) -> Tree {
        match tree {
            Tree::Waste => Tree::Waste,
            Tree::Piece { kind, width, height, turned } => {
                Tree::Piece { kind: self.pieces[kind], width: width * self.unit, height: height * self.unit, turned }
            }
            Tree::Cut { axis, at, first, second } => {
                let (first, second) = (self.tree(*first), self.tree(*second));
                Tree::Cut { axis, at: at * self.unit, first: Box::new(first), second: Box::new(second) }
            }
        }
    }
}

fn gcd(a: u32, b: u32) -> u32 {
    if b == 0 { a } else { gcd(b, a % b) }
}
