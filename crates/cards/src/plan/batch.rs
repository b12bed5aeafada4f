//! Which sheets are cut, and every card that comes from them.

use std::collections::BTreeMap;

use measure::{Rect, Size};

use super::answer::{Card, CardPart, Layout, PartKind, SheetUse};
use super::{checked, fit, paper};
use crate::finding::{Finding, Severity, Subject};
use crate::model::{Design, Goal, Material, Pack, Project, Recipe};
use cutting::Budget;

/// Cards that are wanted in all; `None`: as many as the paper gives.
fn wanted(goal: &Goal) -> Option<u32> {
    goal.cards.map(|cards| cards.saturating_add(goal.overs))
}

/// Chosen: most cards of one batch, so that a slip of the pen does not fill the memory.
const MOST_CARDS: u32 = 50_000;

/// The layouts of all packs that are used, each with the sheets it is used for.
pub(super) fn layouts(project: &Project, budget: &mut Budget<'_>, findings: &mut Vec<Finding>) -> Vec<Layout> {
    let mut layouts = Vec::new();
    let asked = wanted(&project.goal);
    let there = project.packs.iter().flat_map(|pack| &pack.designs).map(Design::sheets).fold(0, u32::saturating_add);
    let mut open = asked.map(|cards| cards.min(MOST_CARDS));
    // Every sheet gives one card at least: where that is already too much, the number is bounded here.
    if open.is_none() && there > MOST_CARDS / 100 {
        open = Some(MOST_CARDS);
    }
    if there == 0 {
        findings.push(Finding::new(Severity::Serious, Subject::Project, "no-sheets"));
    }
    let mut leads = true;
    for (index, pack) in project.packs.iter().enumerate() {
        if open == Some(0) || pack.designs.iter().all(|design| design.sheets() == 0) {
            continue;
        }
        let layout = paper::lay_out(project, index, leads, budget, findings);
        leads = false;
        let Some(mut layout) = layout else { continue };
        let gives = layout.recipe_counts.iter().sum::<u32>().max(1);
        let most = open.map_or(u32::MAX, |cards| cards.div_ceil(gives));
        let sheets = share(pack, &pairs(project, pack, &mut Vec::new()), most);
        let cards = sheets.iter().fold(0_u32, |sum, &more| sum.saturating_add(more)).saturating_mul(gives);
        open = open.map(|open| open.saturating_sub(cards));
        layout.sheets = (pack.designs.iter().enumerate().zip(&sheets))
            .filter(|(_, sheets)| **sheets > 0)
            .map(|((design, face), sheets)| SheetUse { design, side: face.up, sheets: *sheets })
            .collect();
        let all: u32 = layout.sheets.iter().map(|used| used.sheets).sum();
        match checked::paper(project, pack, layout.usable, layout.step, &layout.tree, all) {
            Some((cut_plan, cut_step)) => (layout.cut_plan, layout.cut_step) = (cut_plan, cut_step),
            None => {
                findings.push(Finding::new(Severity::Serious, Subject::Layout(layouts.len() + 1), "internal-check"));
            }
        }
        layouts.push(layout);
    }
    let full = open == Some(0) && asked.is_none_or(|cards| cards > MOST_CARDS);
    if full {
        let finding = Finding::new(Severity::Serious, Subject::Project, "batch-too-large");
        findings.push(finding.with("most", MOST_CARDS));
    }
    if let (Some(short), Some(first), Some(asked)) = (open.filter(|&short| short > 0), layouts.first(), asked) {
        let gives = first.recipe_counts.iter().sum::<u32>().max(1);
        let finding = Finding::new(Severity::Serious, Subject::Project, "too-few-sheets").with("wanted", asked);
        let made = asked.min(MOST_CARDS) - short;
        findings.push(finding.with("cards", made).with("short", short.div_ceil(gives)));
    }
    layouts
}

/// Sheets of each design, shared as evenly as can be, at most so many in all; partners together.
fn share(pack: &Pack, pairs: &[Option<usize>], most: u32) -> Vec<u32> {
    let there: Vec<u32> = pack.designs.iter().map(Design::sheets).collect();
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for (design, partner) in pairs.iter().enumerate() {
        match partner {
            Some(partner) if *partner < design => {}
            Some(partner) => groups.push(vec![design, *partner]),
            None => groups.push(vec![design]),
        }
    }
    let mut used = vec![0_u32; there.len()];
    let mut left = most;
    // Whole groups first; then, if sheets are still wanted, whatever is there.
    for whole in [true, false] {
        let mut went_on = true;
        while left > 0 && went_on {
            went_on = false;
            for group in &groups {
                let size = u32::try_from(group.len()).unwrap_or(u32::MAX);
                let ready = group.iter().filter(|&&design| used[design] < there[design]).count();
                if ready == 0 || (whole && (ready < group.len() || left < size)) {
                    continue;
                }
                for &design in group {
                    if left > 0 && used[design] < there[design] {
                        used[design] += 1;
                        left -= 1;
                        went_on = true;
                    }
                }
            }
        }
    }
    used
}

/// The partner of each design of a pack, both ways; a design has one partner at most.
///
/// Empty where no recipe takes a piece from a partner.
fn pairs(project: &Project, pack: &Pack, findings: &mut Vec<Finding>) -> Vec<Option<usize>> {
    let mut pairs = vec![None; pack.designs.len()];
    if !project.recipes.iter().any(takes_from_partner) {
        return pairs;
    }
    let named = |letter: &str| pack.designs.iter().position(|design| design.letter == letter);
    for (one, other) in &project.goal.partners {
        let (Some(a), Some(b)) = (named(one), named(other)) else { continue };
        if a != b && pairs[a].is_none() && pairs[b].is_none() {
            (pairs[a], pairs[b]) = (Some(b), Some(a));
        } else if a != b && pairs[a] != Some(b) {
            let finding = Finding::new(Severity::Warning, Subject::Design(one.clone()), "partner-twice");
            findings.push(finding.with("design", one.as_str()).with("partner", other.as_str()));
        }
    }
    pairs
}

/// True if a layer of the recipe comes from the partner design.
fn takes_from_partner(recipe: &Recipe) -> bool {
    recipe.layers.iter().any(|layer| matches!(layer.material, Material::Patterned { from_partner: true, .. }))
}

/// One place for a card on a layout.
struct Slot {
    recipe: usize,
    /// The piece of each patterned layer.
    pieces: BTreeMap<usize, usize>,
    /// Where each layer lies on the front.
    places: Vec<Rect>,
}

/// The slots of a layout, in the order of its cards.
fn slots(project: &Project, layout: &Layout) -> Vec<Slot> {
    let mut by_card: BTreeMap<usize, Slot> = BTreeMap::new();
    for (index, piece) in layout.pieces.iter().enumerate() {
        if let Some(card) = piece.card {
            let slot = by_card.entry(card).or_insert_with(|| Slot {
                recipe: piece.recipe,
                pieces: BTreeMap::new(),
                places: Vec::new(),
            });
            slot.pieces.insert(piece.layer, index);
        }
    }
    let mut slots: Vec<Slot> = by_card.into_values().collect();
    for slot in &mut slots {
        let recipe = &project.recipes[slot.recipe];
        let stands =
            |layer: usize| slot.pieces.get(&layer).map_or_else(Size::default, |&piece| standing(layout, piece));
        slot.places = fit::places(recipe, &fit::sizes(project, recipe, stands));
    }
    slots
}

/// The size of a piece as it stands on its card.
pub(super) fn standing(layout: &Layout, piece: usize) -> Size {
    let piece = &layout.pieces[piece];
    if piece.turned { piece.rect.size.turned() } else { piece.rect.size }
}

/// Every card of the batch.
pub(super) fn cards(project: &Project, layouts: &[Layout], findings: &mut Vec<Finding>) -> Vec<Card> {
    let mut over = surplus(project, layouts);
    let mut cards = Vec::new();
    for (index, layout) in layouts.iter().enumerate() {
        let pack = &project.packs[layout.pack];
        let slots = slots(project, layout);
        let pairs = pairs(project, pack, findings);
        lonely(project, pack, layout, &pairs, findings);
        let last = index + 1 == layouts.len();
        let dropped = drops(layout, slots.len(), if last { std::mem::take(&mut over) } else { 0 });
        for (used, dropped) in layout.sheets.iter().zip(dropped) {
            let made = (used.sheets as usize).saturating_mul(slots.len()).saturating_sub(dropped);
            for nth in 0..made {
                let (sheet, slot) = (nth / slots.len(), &slots[nth % slots.len()]);
                let sheet = u32::try_from(sheet + 1).unwrap_or(u32::MAX);
                let partner = pairs[used.design].and_then(|partner| {
                    layout.sheets.iter().find(|other| other.design == partner && other.sheets >= sheet)
                });
                let place = Place { layout: index, sheet, own: used, partner: partner.unwrap_or(used) };
                cards.push(Card {
                    number: u32::try_from(cards.len() + 1).unwrap_or(u32::MAX),
                    recipe: slot.recipe,
                    pack: layout.pack,
                    design: used.design,
                    parts: parts(project, &pack.designs[used.design].letter, slot, &place),
                });
            }
        }
    }
    sets(&project.goal, cards.len(), findings);
    cards
}

/// Cards that the sheets give above what is wanted.
fn surplus(project: &Project, layouts: &[Layout]) -> u32 {
    let gives = |layout: &Layout| {
        let sheets: u32 = layout.sheets.iter().map(|used| used.sheets).sum();
        sheets.saturating_mul(layout.recipe_counts.iter().sum())
    };
    let all = layouts.iter().map(gives).fold(0_u32, u32::saturating_add);
    let most = wanted(&project.goal).unwrap_or(u32::MAX).min(MOST_CARDS);
    all.saturating_sub(most)
}

/// How many cards less each design gives, the last designs first.
fn drops(layout: &Layout, slots: usize, over: u32) -> Vec<usize> {
    let mut dropped = vec![0_usize; layout.sheets.len()];
    let mut left = over;
    while left > 0 {
        let before = left;
        for (used, dropped) in layout.sheets.iter().zip(&mut dropped).rev() {
            if left > 0 && *dropped < (used.sheets as usize).saturating_mul(slots) {
                *dropped += 1;
                left -= 1;
            }
        }
        if left == before {
            break;
        }
    }
    dropped
}

/// Where the pieces of one card come from.
struct Place<'a> {
    layout: usize,
    sheet: u32,
    own: &'a SheetUse,
    partner: &'a SheetUse,
}

/// The layers of one card.
fn parts(project: &Project, letter: &str, slot: &Slot, place: &Place<'_>) -> Vec<CardPart> {
    let recipe = &project.recipes[slot.recipe];
    let mut parts = Vec::with_capacity(recipe.layers.len());
    for (layer, rect) in slot.places.iter().enumerate() {
        let kind = match &recipe.layers[layer].material {
            Material::Patterned { from_partner, .. } => {
                let Some(&piece) = slot.pieces.get(&layer) else { continue };
                // Partners are paired one to one and cut alike, so the same place on the partner's sheet is always free.
                let from = if *from_partner { place.partner } else { place.own };
                PartKind::Patterned {
                    layout: place.layout,
                    piece,
                    design: from.design,
                    side: from.side,
                    sheet: place.sheet,
                }
            }
            Material::Mat { cardstock, .. } => match mat_cardstock(cardstock, letter) {
                Some(cardstock) => PartKind::Cardstock(cardstock),
                None => continue,
            },
            Material::Plain { cardstock, .. } => PartKind::Cardstock(*cardstock),
            Material::Strip { cardstock, greeting, .. } => PartKind::Strip(*cardstock, *greeting),
            Material::Ribbon { ribbon, bow, .. } => PartKind::Ribbon(*ribbon, *bow),
        };
        parts.push(CardPart { layer, rect: *rect, kind });
    }
    parts
}

/// The cardstock of a mat on a card of that design: its own, else the one for all, else the first.
fn mat_cardstock(cardstock: &[(Option<String>, usize)], letter: &str) -> Option<usize> {
    let own = cardstock.iter().find(|(design, _)| design.as_deref() == Some(letter));
    let all = cardstock.iter().find(|(design, _)| design.is_none());
    own.or(all).or(cardstock.first()).map(|&(_, cardstock)| cardstock)
}

/// Tell of designs whose partner is missing, or gives fewer sheets.
fn lonely(project: &Project, pack: &Pack, layout: &Layout, pairs: &[Option<usize>], findings: &mut Vec<Finding>) {
    let takes = project
        .recipes
        .iter()
        .zip(&layout.recipe_counts)
        .any(|(recipe, &cards)| cards > 0 && takes_from_partner(recipe));
    if !takes {
        return;
    }
    for used in &layout.sheets {
        let letter = pack.designs[used.design].letter.as_str();
        let about =
            |code| Finding::new(Severity::Warning, Subject::Design(letter.to_owned()), code).with("design", letter);
        let Some(partner) = pairs[used.design] else {
            let asked_for_itself = project.goal.partners.iter().any(|(one, other)| one == other && one == letter);
            if !asked_for_itself {
                findings.push(about("partner-missing"));
            }
            continue;
        };
        let gives = layout.sheets.iter().find(|other| other.design == partner).map_or(0, |other| other.sheets);
        if gives < used.sheets {
            let finding = about("partner-uneven").with("partner", pack.designs[partner].letter.as_str());
            findings.push(finding.with("sheets", used.sheets).with("partner-sheets", gives));
        }
    }
}

/// Tell if the cards do not make whole sets.
fn sets(goal: &Goal, cards: usize, findings: &mut Vec<Finding>) {
    let (cards, set) = (u32::try_from(cards).unwrap_or(u32::MAX), goal.set_of.max(1));
    let aside = goal.overs.min(cards);
    let (whole, rest) = ((cards - aside) / set, (cards - aside) % set);
    if rest > 0 {
        let finding = Finding::new(Severity::Note, Subject::Project, "sets-not-whole").with("cards", cards - aside);
        findings.push(finding.with("set", set).with("sets", whole).with("rest", rest));
    }
}
