//! Which sheets are cut, and every card that comes from them.

use std::collections::{BTreeMap, VecDeque};
use std::sync::Arc;

use measure::{Length, Rect, Size};

use super::answer::{Card, CardPart, Layout, PartKind, SheetUse};
use super::groups::{Group, groups};
use super::placed::{self, PrintMaps};
use super::{checked, collage, fit, mix, paper, short};
use crate::finding::{Finding, Severity, Subject};
use crate::model::{Batch, Goal, Layer, Material, Pack, Project, Recipe, Side, Take};
use cutting::Budget;

/// Cards that are wanted in all; `None`: as many as the paper gives.
fn wanted(goal: &Goal) -> Option<u32> {
    goal.cards.map(|cards| cards.saturating_add(goal.overs))
}

/// Chosen: most cards of one batch, so that a slip of the pen does not fill the memory.
const MOST_CARDS: u32 = 50_000;

/// The layouts of all batches, each with the sheets it is used for.
pub(super) fn layouts(
    project: &Project,
    maps: &PrintMaps,
    batches: &[Batch],
    budget: &mut Budget<'_>,
    findings: &mut Vec<Finding>,
) -> Vec<Layout> {
    let mut gone: Vec<Vec<u32>> = project.packs.iter().map(|pack| vec![0; pack.designs.len()]).collect();
    let mut layouts = Vec::new();
    let mut found: Vec<Vec<Finding>> = vec![Vec::new(); batches.len()];
    for (index, batch) in batches.iter().enumerate() {
        let parts = u64::try_from(batches.len() - index).unwrap_or(u64::MAX).max(1);
        let first = layouts.len();
        let (gone, found) = (&mut gone, &mut found[index]);
        layouts.extend(
            budget.within(budget.left() / parts, |part| of_batch(project, maps, batch, first, gone, part, found)),
        );
        for layout in &mut layouts[first..] {
            layout.batch = index;
        }
    }
    short::what_could_go(project, batches, &layouts, &mut found);
    findings.extend(found.into_iter().flatten());
    layouts
}

/// A group of sheets with the layout they share.
struct Laid {
    group: Group,
    layout: Layout,
}

/// The layouts of one batch; `first` is the number of layouts before it.
#[allow(clippy::too_many_arguments, reason = "all that a batch is made of")]
fn of_batch(
    project: &Project,
    maps: &PrintMaps,
    batch: &Batch,
    first: usize,
    gone: &mut [Vec<u32>],
    budget: &mut Budget<'_>,
    findings: &mut Vec<Finding>,
) -> Vec<Layout> {
    let mut layouts: Vec<Layout> = Vec::new();
    let asked = wanted(&batch.goal);
    let groups = groups(project, batch, gone, findings);
    let there = groups.iter().flat_map(|group| &group.takes).fold(0_u32, |sum, take| sum.saturating_add(take.sheets));
    let mut open = asked.map(|cards| cards.min(MOST_CARDS));
    // Every sheet gives one card at least: where that is already too much, the number is bounded here.
    if open.is_none() && there > MOST_CARDS / 100 {
        open = Some(MOST_CARDS);
    }
    if batch.takes.iter().all(|take| take.sheets == 0) {
        findings.push(Finding::new(Severity::Serious, Subject::Project, "no-sheets"));
    }
    let mut leads = true;
    for (index, pack) in project.packs.iter().enumerate() {
        let own: Vec<&Group> = groups.iter().filter(|group| group.pack == index).collect();
        if open == Some(0) || own.is_empty() {
            continue;
        }
        let mut laid = Vec::new();
        for group in own {
            laid.extend(lay_out(project, batch, group, leads, budget, findings));
        }
        leads = false;
        let pairs = pairs(project, &batch.goal, pack, &mut Vec::new());
        let sheets = share(pack, &laid, &pairs, open.unwrap_or(u32::MAX));
        for Laid { group, mut layout } in laid {
            let used = |take: &Take| SheetUse {
                design: take.design,
                side: take.side,
                sheets: sheets[take.design],
                before: gone[index][take.design],
            };
            layout.sheets = group.takes.iter().map(used).filter(|used| used.sheets > 0).collect();
            let all: u32 = layout.sheets.iter().map(|used| used.sheets).sum();
            if all == 0 {
                continue;
            }
            let cards = all.saturating_mul(layout.recipe_counts.iter().sum());
            open = open.map(|open| open.saturating_sub(cards));
            for mut layout in placed::on_prints(project, maps, batch, layout, budget) {
                let sheets = layout.sheets.iter().map(|used| used.sheets).sum();
                match checked::paper(project, pack, layout.usable, layout.step, &layout.tree, sheets) {
                    Some((cut_plan, cut_step)) => (layout.cut_plan, layout.cut_step) = (cut_plan, cut_step),
                    None => {
                        let number = first + layouts.len() + 1;
                        findings.push(Finding::new(Severity::Serious, Subject::Layout(number), "internal-check"));
                    }
                }
                layouts.push(layout);
            }
        }
        for used in layouts.iter().filter(|layout| layout.pack == index).flat_map(|layout| &layout.sheets) {
            gone[index][used.design] = used.before + used.sheets;
        }
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
        let finding = finding.with("batch", batch.called(project));
        findings.push(finding.with("cards", made).with("short", short.div_ceil(gives)));
    }
    layouts
}

/// The layout of a group. Where there is none for all its sheets, those that may lie any way are laid out apart.
fn lay_out(
    project: &Project,
    batch: &Batch,
    group: &Group,
    leads: bool,
    budget: &mut Budget<'_>,
    findings: &mut Vec<Finding>,
) -> Vec<Laid> {
    let alone = group.project(project, batch);
    let laid = |layout: Layout| vec![Laid { group: group.clone(), layout }];
    if let Some(collage) = &group.collage
        && let Some(layout) = collage::lay_out(&alone, group.pack, collage, budget, findings)
    {
        return laid(layout);
    }
    let before = findings.len();
    if let Some(layout) = paper::lay_out(&alone, group.pack, leads, budget, findings) {
        return laid(layout);
    }
    let Some(parts) = group.by_way(project).filter(|_| alone.recipes.iter().any(may_turn)) else { return Vec::new() };
    let together = findings.split_off(before);
    let mut found = Vec::new();
    for part in parts {
        let alone = part.project(project, batch);
        if let Some(layout) = paper::lay_out(&alone, group.pack, leads, budget, findings) {
            found.push(Laid { group: part, layout });
        }
    }
    if found.is_empty() {
        findings.truncate(before);
        findings.extend(together);
    }
    found
}

/// True if a piece of the recipe may lie a quarter turned.
fn may_turn(recipe: &Recipe) -> bool {
    let turns = |layer: &Layer| matches!(layer.material, Material::Patterned { may_turn: true, .. });
    recipe.most != Some(0) && recipe.layers.iter().any(turns)
}

/// Sheets of each design, shared as evenly as can be, for at least so many cards if they are there; partners together.
fn share(pack: &Pack, laid: &[Laid], pairs: &[Option<usize>], cards: u32) -> Vec<u32> {
    let mut there = vec![0_u32; pack.designs.len()];
    let mut gives = vec![0_u32; pack.designs.len()];
    for Laid { group, layout } in laid {
        for take in &group.takes {
            there[take.design] = take.sheets;
            gives[take.design] = layout.recipe_counts.iter().sum::<u32>().max(1);
        }
    }
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for (design, partner) in pairs.iter().enumerate() {
        match partner {
            Some(partner) if *partner < design => {}
            Some(partner) => groups.push(vec![design, *partner]),
            None => groups.push(vec![design]),
        }
    }
    let mut used = vec![0_u32; there.len()];
    let mut left = cards;
    // Whole groups first; then, if cards are still wanted, whatever is there.
    for whole in [true, false] {
        let mut went_on = true;
        while left > 0 && went_on {
            went_on = false;
            for group in &groups {
                let ready = group.iter().filter(|&&design| used[design] < there[design]).count();
                // The last sheet of the group is wanted too.
                let before: u32 = group[..group.len() - 1].iter().map(|&design| gives[design]).sum();
                if ready == 0 || (whole && (ready < group.len() || left <= before)) {
                    continue;
                }
                for &design in group {
                    if left > 0 && used[design] < there[design] {
                        used[design] += 1;
                        left = left.saturating_sub(gives[design]);
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
fn pairs(project: &Project, goal: &Goal, pack: &Pack, findings: &mut Vec<Finding>) -> Vec<Option<usize>> {
    let mut pairs = vec![None; pack.designs.len()];
    if !project.recipes.iter().any(takes_from_partner) {
        return pairs;
    }
    let named = |letter: &str| pack.designs.iter().position(|design| design.letter == letter);
    for (one, other) in &goal.partners {
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
    recipe.layers.iter().any(Layer::is_from_partner)
}

/// One place for a card on a layout.
pub(super) struct Slot {
    pub(super) recipe: usize,
    /// The piece of each patterned layer.
    pub(super) pieces: BTreeMap<usize, usize>,
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
            |layer: usize| slot.pieces.get(&layer).map_or_else(Size::default, |&piece| layout.pieces[piece].stands());
        slot.places = fit::places(recipe, &fit::sizes(project, recipe, stands));
    }
    slots
}

/// Every card of all batches.
pub(super) fn cards(
    project: &Project,
    batches: &[Batch],
    layouts: &[Layout],
    findings: &mut Vec<Finding>,
) -> Vec<Card> {
    let mut cards = Vec::new();
    for (index, batch) in batches.iter().enumerate() {
        let own: Vec<(usize, &Layout)> =
            layouts.iter().enumerate().filter(|(_, layout)| layout.batch == index).collect();
        let mut pool = Pool::of(project, &own);
        let mut over = surplus(&batch.goal, &own);
        let first = cards.len();
        let mut drafts: Vec<Draft> = Vec::new();
        for (nth, &(layout_index, layout)) in own.iter().enumerate() {
            let pack = &project.packs[layout.pack];
            let slots = Arc::new(slots(project, layout));
            let pairs = pairs(project, &batch.goal, pack, findings);
            lonely(project, &batch.goal, &own, layout, &pairs, findings);
            let last = nth + 1 == own.len();
            let dropped = drops(layout, slots.len(), if last { std::mem::take(&mut over) } else { 0 });
            for (used, dropped) in layout.sheets.iter().zip(dropped) {
                let made = (used.sheets as usize).saturating_mul(slots.len()).saturating_sub(dropped);
                let letter = &pack.designs[used.design].letter;
                let for_itself = asked_for_itself(&batch.goal, letter).then_some(used.design);
                let partner = pairs[used.design].or(for_itself);
                drafts.extend((0..made).map(|nth| Draft {
                    layout: layout_index,
                    used: used.clone(),
                    nth,
                    slots: Arc::clone(&slots),
                    partner,
                }));
            }
        }
        // Partners first; then other designs by matching; a card's own print only where nothing else is left.
        let mut from: Vec<BTreeMap<usize, Origin>> = vec![BTreeMap::new(); drafts.len()];
        for (draft, from) in drafts.iter().zip(&mut from) {
            if draft.partner.is_some() {
                pool.fill(project, &layouts[draft.layout], draft, draft.partner, from);
            }
        }
        mix::others(project, layouts, &drafts, &mut pool, &mut from, findings);
        for whose in [|draft: &Draft| Some(draft.used.design), |_: &Draft| None] {
            for (draft, from) in drafts.iter().zip(&mut from) {
                pool.fill(project, &layouts[draft.layout], draft, whose(draft), from);
            }
        }
        for (draft, from) in drafts.iter().zip(&from) {
            let layout = &layouts[draft.layout];
            let letter = &project.packs[layout.pack].designs[draft.used.design].letter;
            cards.push(Card {
                number: u32::try_from(cards.len() + 1).unwrap_or(u32::MAX),
                batch: index,
                recipe: draft.slot().recipe,
                pack: layout.pack,
                design: draft.used.design,
                parts: parts(project, letter, draft, from),
            });
        }
        sets(&batch.goal, cards.len() - first, findings);
    }
    cards
}

/// A card to be, before its partner pieces are found.
pub(super) struct Draft {
    pub(super) layout: usize,
    pub(super) used: SheetUse,
    /// Which card of that design on that layout, from 0.
    nth: usize,
    slots: Arc<Vec<Slot>>,
    /// Index of the design whose pieces it takes first where its recipe says so.
    partner: Option<usize>,
}

impl Draft {
    pub(super) fn slot(&self) -> &Slot {
        &self.slots[self.nth % self.slots.len()]
    }

    /// Which sheet of the design it is cut from, from 1.
    fn sheet(&self) -> u32 {
        u32::try_from(self.nth / self.slots.len()).unwrap_or(u32::MAX).saturating_add(self.used.before + 1)
    }
}

/// A patterned piece of a certain sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Origin {
    layout: usize,
    piece: usize,
    pub(super) design: usize,
    pub(super) side: Side,
    sheet: u32,
}

/// Pieces cut for a partner that no card has taken yet: by pack, design and size as they stand.
pub(super) struct Pool(BTreeMap<(usize, usize, Length, Length), VecDeque<Origin>>);

impl Pool {
    fn of(project: &Project, layouts: &[(usize, &Layout)]) -> Pool {
        let mut pool: BTreeMap<_, VecDeque<Origin>> = BTreeMap::new();
        for &(index, layout) in layouts {
            for used in &layout.sheets {
                for sheet in 1..=used.sheets {
                    let shared = |&piece: &usize| {
                        let found = &layout.pieces[piece];
                        found.card.is_some() && project.recipes[found.recipe].layers[found.layer].is_from_partner()
                    };
                    let mut pieces: Vec<usize> = (0..layout.pieces.len()).filter(shared).collect();
                    pieces.sort_by_key(|&piece| layout.pieces[piece].card);
                    for piece in pieces {
                        let size = layout.pieces[piece].stands();
                        let origin = Origin {
                            layout: index,
                            piece,
                            design: used.design,
                            side: used.side,
                            sheet: used.before + sheet,
                        };
                        let key = (layout.pack, used.design, size.width, size.height);
                        pool.entry(key).or_default().push_back(origin);
                    }
                }
            }
        }
        Pool(pool)
    }

    /// All of them.
    pub(super) fn pieces(&self) -> &BTreeMap<(usize, usize, Length, Length), VecDeque<Origin>> {
        &self.0
    }

    /// Take one out.
    pub(super) fn take(&mut self, pack: usize, origin: &Origin) {
        for (_, there) in self.0.iter_mut().filter(|(key, _)| (key.0, key.1) == (pack, origin.design)) {
            if let Some(index) = there.iter().position(|piece| piece == origin) {
                there.remove(index);
            }
        }
    }

    /// Give a card the partner pieces that it still lacks, of a design, or of any design of its pack.
    fn fill(
        &mut self,
        project: &Project,
        layout: &Layout,
        draft: &Draft,
        design: Option<usize>,
        from: &mut BTreeMap<usize, Origin>,
    ) {
        let slot = draft.slot();
        for (layer, made) in project.recipes[slot.recipe].layers.iter().enumerate() {
            let Some(&piece) = slot.pieces.get(&layer).filter(|_| made.is_from_partner()) else { continue };
            if from.contains_key(&layer) {
                continue;
            }
            let size = layout.pieces[piece].stands();
            let designs = design.map_or(0..project.packs[layout.pack].designs.len(), |design| design..design + 1);
            for design in designs {
                let there = self.0.get_mut(&(layout.pack, design, size.width, size.height));
                if let Some(origin) = there.and_then(VecDeque::pop_front) {
                    from.insert(layer, origin);
                    break;
                }
            }
        }
    }
}

/// Cards that the sheets of a batch give above what is wanted.
fn surplus(goal: &Goal, layouts: &[(usize, &Layout)]) -> u32 {
    let gives = |(_, layout): &(usize, &Layout)| {
        let sheets: u32 = layout.sheets.iter().map(|used| used.sheets).sum();
        sheets.saturating_mul(layout.recipe_counts.iter().sum())
    };
    let all = layouts.iter().map(gives).fold(0_u32, u32::saturating_add);
    let most = wanted(goal).unwrap_or(u32::MAX).min(MOST_CARDS);
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

/// The layers of one card.
fn parts(project: &Project, letter: &str, draft: &Draft, from: &BTreeMap<usize, Origin>) -> Vec<CardPart> {
    let slot = draft.slot();
    let recipe = &project.recipes[slot.recipe];
    let mut parts = Vec::with_capacity(recipe.layers.len());
    for (layer, rect) in slot.places.iter().enumerate() {
        let made = &recipe.layers[layer];
        let kind = match &made.material {
            Material::Patterned { .. } => {
                let Some(&piece) = slot.pieces.get(&layer) else { continue };
                let own = Origin {
                    layout: draft.layout,
                    piece,
                    design: draft.used.design,
                    side: draft.used.side,
                    sheet: draft.sheet(),
                };
                let origin = if made.is_from_partner() { from.get(&layer).copied() } else { Some(own) };
                let Some(Origin { layout, piece, design, side, sheet }) = origin else { continue };
                PartKind::Patterned { layout, piece, design, side, sheet }
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
pub(super) fn mat_cardstock(cardstock: &[(Option<String>, usize)], letter: &str) -> Option<usize> {
    let own = cardstock.iter().find(|(design, _)| design.as_deref() == Some(letter));
    let all = cardstock.iter().find(|(design, _)| design.is_none());
    own.or(all).or(cardstock.first()).map(|&(_, cardstock)| cardstock)
}

/// The piece that a card goes by: the first of patterned paper that no partner gives.
pub(super) fn main_part<'a>(project: &Project, card: &'a Card) -> Option<&'a CardPart> {
    let layers = &project.recipes[card.recipe].layers;
    let main =
        |part: &&CardPart| matches!(part.kind, PartKind::Patterned { .. }) && !layers[part.layer].is_from_partner();
    card.parts.iter().find(main)
}

/// True if the maker named the design as its own partner.
fn asked_for_itself(goal: &Goal, letter: &str) -> bool {
    goal.partners.iter().any(|(one, other)| one == other && one == letter)
}

/// Tell of designs of a layout whose partner is missing from the batch, or gives fewer sheets.
fn lonely(
    project: &Project,
    goal: &Goal,
    batch: &[(usize, &Layout)],
    layout: &Layout,
    pairs: &[Option<usize>],
    findings: &mut Vec<Finding>,
) {
    let takes = project
        .recipes
        .iter()
        .zip(&layout.recipe_counts)
        .any(|(recipe, &cards)| cards > 0 && takes_from_partner(recipe));
    if !takes {
        return;
    }
    let pack = &project.packs[layout.pack];
    for used in &layout.sheets {
        let letter = pack.designs[used.design].letter.as_str();
        let about =
            |code| Finding::new(Severity::Warning, Subject::Design(letter.to_owned()), code).with("design", letter);
        let Some(partner) = pairs[used.design] else {
            if !asked_for_itself(goal, letter) {
                findings.push(about("partner-missing"));
            }
            continue;
        };
        let of_pack = batch.iter().filter(|(_, other)| other.pack == layout.pack);
        let gives: u32 = of_pack
            .flat_map(|(_, other)| &other.sheets)
            .filter(|other| other.design == partner)
            .map(|other| other.sheets)
            .sum();
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
