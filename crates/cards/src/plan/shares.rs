//! How the prints are shared over the cards of a batch, and its cards over kits.

use std::collections::BTreeMap;

use measure::Size;

use super::answer::{Card, Layout, PartKind};
use super::batch::main_part;
use crate::finding::{Finding, Severity, Subject};
use crate::model::{Batch, Project};
use crate::pairs::{Kits, Print, Share, Shown, Uneven, evenness, kits};

/// How evenly the prints and the cards of a batch are shared.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BatchShares {
    /// Index of the batch.
    pub batch: usize,
    /// For each recipe and patterned layer: how many cards show each print that there are pieces of.
    pub shown: Vec<Shown>,
    /// For each recipe and patterned layer: most and fewest, with the reason where they are more than one apart.
    pub shares: Vec<Share>,
    /// Its kits, if it is shared out over some.
    pub kits: Option<BatchKits>,
}

/// Cards of one kind: recipe and print of the main piece are alike.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct CardKind {
    /// Index of the recipe.
    pub recipe: usize,
    /// What its main piece shows; `None` for a card without a piece of patterned paper.
    pub print: Option<Print>,
}

/// The kits of a batch.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BatchKits {
    /// The kinds of cards.
    pub kinds: Vec<CardKind>,
    /// By kit, by kind: how many.
    pub dealt: Kits,
    /// By kit: the numbers of its cards.
    pub cards: Vec<Vec<u32>>,
}

/// The shares of every batch.
///
/// Told: a print that shows on fewer cards than another by more than one, and why; cards that do not go into equal kits.
pub(super) fn shares(
    project: &Project,
    batches: &[Batch],
    layouts: &[Layout],
    cards: &[Card],
    findings: &mut Vec<Finding>,
) -> Vec<BatchShares> {
    let of_batch = |(index, batch): (usize, &Batch)| {
        let own: Vec<&Card> = cards.iter().filter(|card| card.batch == index).collect();
        let shown = shown(project, index, layouts, &own);
        let mut shares = evenness(&shown);
        for share in &mut shares {
            let layer = &project.recipes[share.recipe].layers[share.layer];
            if share.reason == Some(Uneven::Rule) && layer.is_from_partner() && !batch.goal.partners.is_empty() {
                share.reason = Some(Uneven::Partners);
            }
            findings.extend(uneven(project, batch, share));
        }
        let kits = batch.kits.map(|number| into_kits(project, &own, number));
        if let Some(kits) = &kits {
            findings.extend(unequal(project, batch, kits, own.len()));
        }
        BatchShares { batch: index, shown, shares, kits }
    };
    batches.iter().enumerate().map(of_batch).collect()
}

/// What a card shows as its main piece.
fn kind(project: &Project, card: &Card) -> CardKind {
    let print = main_part(project, card).and_then(|part| print(card, &part.kind));
    CardKind { recipe: card.recipe, print }
}

fn print(card: &Card, part: &PartKind) -> Option<Print> {
    match *part {
        PartKind::Patterned { design, side, .. } => Some(Print { pack: card.pack, design, side }),
        _ => None,
    }
}

/// Cards by recipe, layer and print, beside the pieces that could have been used there.
fn shown(project: &Project, batch: usize, layouts: &[Layout], cards: &[&Card]) -> Vec<Shown> {
    let mut counts: BTreeMap<(usize, usize, Print), u32> = BTreeMap::new();
    // The sizes that a recipe's layer takes: a partner's piece of any of them could lie there.
    let mut takes: BTreeMap<(usize, usize), Vec<(usize, Size)>> = BTreeMap::new();
    for card in cards {
        for part in &card.parts {
            let PartKind::Patterned { layout, piece, .. } = part.kind else { continue };
            let Some(print) = print(card, &part.kind) else { continue };
            *counts.entry((card.recipe, part.layer, print)).or_default() += 1;
            let size = (card.pack, layouts[layout].pieces[piece].stands());
            let known = takes.entry((card.recipe, part.layer)).or_default();
            if !known.contains(&size) {
                known.push(size);
            }
        }
    }
    let mut there: BTreeMap<(usize, usize, Print), u32> = BTreeMap::new();
    for layout in layouts.iter().filter(|layout| layout.batch == batch) {
        for (index, piece) in layout.pieces.iter().enumerate().filter(|(_, piece)| piece.card.is_some()) {
            let shared = project.recipes[piece.recipe].layers[piece.layer].is_from_partner();
            let size = (layout.pack, layout.pieces[index].stands());
            let goes = |&(&(recipe, layer), sizes): &(&(usize, usize), &Vec<(usize, Size)>)| {
                let from_partner = project.recipes[recipe].layers[layer].is_from_partner();
                let own = (recipe, layer) == (piece.recipe, piece.layer);
                own || (shared && from_partner && sizes.contains(&size))
            };
            for (&(recipe, layer), _) in takes.iter().filter(goes) {
                for used in &layout.sheets {
                    let print = Print { pack: layout.pack, design: used.design, side: used.side };
                    *there.entry((recipe, layer, print)).or_default() += used.sheets;
                }
            }
        }
    }
    for &key in counts.keys() {
        there.entry(key).or_default();
    }
    let show = |((recipe, layer, print), there)| {
        let cards = counts.get(&(recipe, layer, print)).copied().unwrap_or(0);
        Shown { recipe, layer, print, cards, there }
    };
    there.into_iter().map(show).collect()
}

fn letter(project: &Project, print: Print) -> String {
    project.packs[print.pack].designs[print.design].letter.clone()
}

/// What is told of a share that is more than one apart.
fn uneven(project: &Project, batch: &Batch, share: &Share) -> Option<Finding> {
    let code = match share.reason? {
        Uneven::AllUsed => "share-all-used",
        Uneven::Rule => "share-by-rule",
        // What comes of the partners she named is the maker's wish: the page tells it.
        Uneven::Partners => return None,
    };
    let recipe = &project.recipes[share.recipe];
    let finding = Finding::new(Severity::Note, Subject::Recipe(recipe.name.clone()), code);
    let finding = finding.with("batch", batch.name.as_str()).with("recipe", recipe.name.as_str());
    let finding = finding.with("layer", recipe.layers[share.layer].name.as_str());
    let finding = finding.with("most", letter(project, share.most.0).as_str()).with("most-cards", share.most.1);
    Some(finding.with("fewest", letter(project, share.fewest.0).as_str()).with("fewest-cards", share.fewest.1))
}

/// The cards of a batch dealt out over so many kits.
fn into_kits(project: &Project, cards: &[&Card], number: u32) -> BatchKits {
    let mut by_kind: BTreeMap<CardKind, Vec<u32>> = BTreeMap::new();
    for card in cards {
        by_kind.entry(kind(project, card)).or_default().push(card.number);
    }
    let counts: Vec<u32> = by_kind.values().map(|cards| u32::try_from(cards.len()).unwrap_or(u32::MAX)).collect();
    let dealt = kits(&counts, number);
    let mut waiting: Vec<std::vec::IntoIter<u32>> = by_kind.values().cloned().map(Vec::into_iter).collect();
    let of_kit = |kit: &Vec<u32>| {
        let of_kind = |(count, waiting): (&u32, &mut std::vec::IntoIter<u32>)| {
            waiting.by_ref().take(*count as usize).collect::<Vec<u32>>()
        };
        kit.iter().zip(&mut waiting).flat_map(of_kind).collect()
    };
    let cards = dealt.cards.iter().map(of_kit).collect();
    BatchKits { kinds: by_kind.into_keys().collect(), dealt, cards }
}

/// What is told of kits that are not alike: the nearest numbers that are.
fn unequal(project: &Project, batch: &Batch, kits: &BatchKits, cards: usize) -> Option<Finding> {
    let number = u32::try_from(kits.cards.len()).unwrap_or(u32::MAX);
    let cards = u32::try_from(cards).unwrap_or(u32::MAX);
    if number == 0 || kits.dealt.equal && (cards == 0 || !kits.cards[0].is_empty()) {
        return None;
    }
    let about = |severity, code| {
        let finding = Finding::new(severity, Subject::Project, code).with("batch", batch.name.as_str());
        finding.with("cards", cards).with("kits", number)
    };
    if cards < number {
        return Some(about(Severity::Serious, "kits-too-many"));
    }
    let totals: Vec<u32> =
        (0..kits.kinds.len()).map(|kind| kits.dealt.cards.iter().map(|kit| kit[kind]).sum()).collect();
    // Alike kits are as many as divide the number of every kind.
    let common = totals.iter().copied().fold(0, gcd);
    let divides = |kits: &u32| common % kits == 0;
    let fewer = (1..number).rev().find(divides).filter(|&kits| kits > 1).unwrap_or(0);
    let more = (number + 1..=common).find(divides).unwrap_or(0);
    let aside: u32 = totals.iter().map(|total| total % number).sum();
    let odd: Vec<String> = (kits.kinds.iter().zip(&totals))
        .filter(|&(_, total)| total % number != 0)
        .map(|(kind, total)| {
            let letter = kind.print.map(|print| letter(project, print)).unwrap_or_default();
            format!("{letter} {total}").trim().to_owned()
        })
        .collect();
    let all_aside = totals.iter().all(|total| *total < number);
    let finding = about(Severity::Note, "kits-unequal").with("odd", odd.join(", ").as_str());
    let finding = finding.with("fewer", fewer).with("more", more).with("swaps", kits.dealt.swaps);
    Some(finding.with("aside", if all_aside { 0 } else { aside }))
}

fn gcd(one: u32, other: u32) -> u32 {
    if other == 0 { one } else { gcd(other, one % other) }
}
