//! Companion pieces for cards whose partner has none: another design's, given out by matching.

use std::collections::{BTreeMap, VecDeque};

use measure::Length;

use super::answer::Layout;
use super::batch::{Draft, Origin, Pool};
use crate::finding::{Finding, Severity, Subject};
use crate::model::{PrintSize, Project, Side};
use crate::pairs::{Cards, Companions, Piece, Print, Rule, give_all};

/// What a layer takes: pack and size as it stands.
type Kind = (usize, Length, Length);

/// Give cards that lack a companion piece one of another design, each piece once, as evenly as can be.
///
/// Told: cards of designs that together have too few such pieces.
pub(super) fn others(
    project: &Project,
    layouts: &[Layout],
    drafts: &[Draft],
    pool: &mut Pool,
    from: &mut [BTreeMap<usize, Origin>],
    findings: &mut Vec<Finding>,
) {
    // Cards that start alike and lack the same layers are one class.
    let mut kinds: Vec<Kind> = Vec::new();
    let mut classes: BTreeMap<(Vec<Piece>, Vec<usize>), Vec<usize>> = BTreeMap::new();
    for (index, (draft, from)) in drafts.iter().zip(from.iter()).enumerate() {
        let takes = lacks(project, &layouts[draft.layout], draft, from).map(|(_, kind)| number(&mut kinds, kind));
        let takes: Vec<usize> = takes.collect();
        if takes.is_empty() {
            continue;
        }
        let pack = layouts[draft.layout].pack;
        let mut pieces = vec![piece(project, pack, draft.used.design, draft.used.side)];
        pieces.extend(from.values().map(|origin| piece(project, pack, origin.design, origin.side)));
        classes.entry((pieces, takes)).or_default().push(index);
    }
    if classes.is_empty() {
        return;
    }
    let mut companions: Vec<Companions> = Vec::new();
    let mut origins: Vec<VecDeque<Origin>> = Vec::new();
    for (&(pack, design, width, height), there) in pool.pieces() {
        let Some(kind) = kinds.iter().position(|&known| known == (pack, width, height)) else { continue };
        for side in [Side::Front, Side::Back] {
            let of_side: VecDeque<Origin> = there.iter().filter(|origin| origin.side == side).copied().collect();
            let count = u32::try_from(of_side.len()).unwrap_or(u32::MAX);
            if count > 0 {
                companions.push(Companions { piece: piece(project, pack, design, side), kind, count });
                origins.push(of_side);
            }
        }
    }
    let count = |drafts: &Vec<usize>| u32::try_from(drafts.len()).unwrap_or(u32::MAX);
    let cards: Vec<Cards> = (classes.iter())
        .map(|((pieces, takes), drafts)| Cards { pieces: pieces.clone(), takes: takes.clone(), count: count(drafts) })
        .collect();
    let (dealt, shortages) = give_all(&cards, &companions, &Rule::of(project));
    let mut waiting: Vec<VecDeque<usize>> = classes.into_values().map(VecDeque::from).collect();
    for some in dealt {
        for _ in 0..some.count {
            let Some(index) = waiting[some.cards].pop_front() else { break };
            let draft = &drafts[index];
            let layers: Vec<usize> =
                lacks(project, &layouts[draft.layout], draft, &from[index]).map(|(layer, _)| layer).collect();
            for (layer, chosen) in layers.into_iter().zip(&some.companions) {
                if let Some(origin) = chosen.and_then(|chosen| origins[chosen].pop_front()) {
                    pool.take(layouts[draft.layout].pack, &origin);
                    from[index].insert(layer, origin);
                }
            }
        }
    }
    for short in shortages.into_iter().map(|short| short.shortage) {
        let letter = |&class: &usize| {
            let print = cards[class].pieces[0].print;
            project.packs[print.pack].designs[print.design].letter.clone()
        };
        let mut letters: Vec<String> = short.cards.iter().map(letter).collect();
        letters.dedup();
        let finding = Finding::new(Severity::Warning, Subject::Design(letters[0].clone()), "pairs-short");
        let finding = finding.with("designs", letters.join(", ").as_str());
        findings.push(finding.with("needed", short.needed).with("there", short.there));
    }
}

/// The layers of a card that still lack a companion piece, with what they take.
fn lacks<'a>(
    project: &'a Project,
    layout: &'a Layout,
    draft: &'a Draft,
    from: &'a BTreeMap<usize, Origin>,
) -> impl Iterator<Item = (usize, Kind)> + 'a {
    let slot = draft.slot();
    let layers = project.recipes[slot.recipe].layers.iter().enumerate();
    layers.filter(|(layer, made)| made.is_from_partner() && !from.contains_key(layer)).filter_map(|(layer, _)| {
        let size = layout.pieces[*slot.pieces.get(&layer)?].stands();
        Some((layer, (layout.pack, size.width, size.height)))
    })
}

fn number(kinds: &mut Vec<Kind>, kind: Kind) -> usize {
    kinds.iter().position(|&known| known == kind).unwrap_or_else(|| {
        kinds.push(kind);
        kinds.len() - 1
    })
}

/// A printed piece as the rule of prints that meet looks at it.
pub(super) fn piece(project: &Project, pack: usize, design: usize, side: Side) -> Piece {
    let printed = &project.packs[pack].designs[design];
    Piece {
        print: Print { pack, design, side },
        large: printed.face(side).print_size == Some(PrintSize::Large),
        ground: None,
    }
}
