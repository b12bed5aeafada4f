//! Other patterned paper, or other cards on it: how many come from one sheet, and how many sheets of each design that
//! takes. As many cards of each recipe and design as before, at least.
//!
//! The fewest sheets are sought; where that takes no more, with the same pieces as before. Recipes that shared a sheet go on sharing one in the same proportion if the new sheet is used nearly as well; else each has sheets
//! of its own.

use std::collections::BTreeSet;

use cutting::Budget;
use measure::{Length, Size};

use super::people::{MOST_SHEETS, enough};
use super::{no_choices, note, put_back, taken};
use crate::finding::{Finding, Severity, Subject};
use crate::model::{Batch, Collage, Edges, Goal, Layer, Material, Project, Range, Side, Take};
use crate::plan::{Card, Layout, Piece, Plan, SheetUse, one_sheet};

/// Most cards from one sheet that are tried. Chosen: as many as the engine takes of one kind.
const MOST_CARDS: u32 = 127;

/// A piece by recipe and layer, with its size as it stands on the card.
pub(super) type Sized = (usize, usize, Size);

/// The packs on another sheet. Their sheets are still to be got: label strips, prices and printed panels were the old ones'.
pub(super) fn other(project: &mut Project, size: Size, which: &[bool], findings: &mut Vec<Finding>) {
    let batches = &mut project.batches;
    for (index, pack) in project.packs.iter_mut().enumerate().filter(|(index, _)| which[*index]) {
        pack.sheet = size;
        if std::mem::take(&mut pack.unusable) != Edges::default() {
            findings.push(note("replan-edges-left-out").with("pack", pack.name.as_str()));
        }
        if pack.price.take().is_some() {
            findings.push(note("replan-price-left-out").with("names", pack.name.as_str()));
        }
        for (number, design) in pack.designs.iter_mut().enumerate() {
            // Marked on a print of another size: they would say nothing of this one.
            design.front.regions.clear();
            design.back.regions.clear();
            let was = [design.front.collage.take(), design.back.collage.take()];
            if was.iter().all(Option::is_none) {
                continue;
            }
            let lost = |side: Side| was[usize::from(side == Side::Back)].is_some();
            let turned = was.iter().any(Option::is_none);
            let own = |take: &&mut Take| (take.pack, take.design) == (index, number) && lost(take.side);
            let mut used = lost(design.up) && design.sheets() > 0;
            if turned && lost(design.up) {
                design.up = design.up.other();
            }
            for take in batches.iter_mut().flat_map(|batch| &mut batch.takes).filter(own) {
                used = true;
                if turned {
                    take.side = take.side.other();
                }
            }
            if used {
                let code = if turned { "replan-collage-turned" } else { "replan-collage-left-out" };
                let finding = Finding::new(Severity::Warning, Subject::Design(design.letter.clone()), code);
                findings
                    .push(finding.with("design", design.letter.as_str()).with("face", design.face_up().name.as_str()));
            }
        }
    }
}

/// Some cards from sheets of one pack, all cut alike.
#[derive(Debug, Clone)]
struct Part {
    /// Each recipe with the cards of it from one sheet.
    recipes: Vec<(usize, u32)>,
    takes: Vec<Take>,
    /// Cards of it in the plan before.
    cards: u32,
    /// The sizes of its pieces.
    sizes: Vec<Sized>,
    /// True if it is cut on printed lines, which say themselves how many cards there are.
    printed: bool,
}

impl Part {
    fn gives(&self) -> u32 {
        self.recipes.iter().map(|&(_, cards)| cards).sum()
    }

    fn sheets(&self) -> u32 {
        self.takes.iter().map(|take| take.sheets).fold(0, u32::saturating_add)
    }
}

/// Cards from one sheet and sheets of each design, once papers or cards of `new` have other sizes than in the plan of
/// the old project. `which` packs that is true of. Recipes that no sheet gives are added to `lost`.
pub(super) fn cards_anew(
    before: &Plan,
    mut new: Project,
    which: impl Fn(usize) -> bool,
    same: impl Fn(Vec<Sized>, &Project) -> Vec<Sized>,
    budget: &mut Budget<'_>,
    lost: &mut Vec<usize>,
    findings: &mut Vec<Finding>,
) -> Project {
    let old = &before.project;
    bounds(&mut new);
    no_choices(&mut new, findings);
    let mut batches = new.made();
    for goal in batches.iter_mut().map(|batch| &mut batch.goal) {
        per_sheet_wishes(goal, findings);
    }
    let bare = new.clone();
    let mut all: Vec<Batch> = Vec::new();
    let mut wanted: Vec<Sized> = Vec::new();
    // Recipes that some designs no longer give, and those that some do.
    let (mut missing, mut given): (Vec<(usize, String)>, Vec<usize>) = (Vec::new(), Vec::new());
    for (index, batch) in batches.iter_mut().enumerate() {
        let own = before.layouts.iter().filter(|layout| layout.batch == index && which(layout.pack));
        let mut parts = Vec::new();
        for layout in own {
            let same = same(sizes_of(layout), &bare);
            let mut search = Search { new: &bare, batch, before, layout, same, turned: false, budget: &mut *budget };
            let mut none = Vec::new();
            parts.extend(search.parts(&mut none, findings));
            let letter = |used: &SheetUse| old.packs[layout.pack].designs[used.design].letter.clone();
            let letters: Vec<String> = layout.sheets.iter().map(letter).collect();
            missing.extend(none.into_iter().map(|recipe| (recipe, letters.join(", "))));
        }
        given.extend(parts.iter().flat_map(|part| part.recipes.iter().map(|&(recipe, _)| recipe)));
        // Where each copy may have its own size, the maker asked for no size to be kept.
        let free = |&(recipe, layer, _): &Sized| {
            matches!(bare.recipes[recipe].layers[layer].material, Material::Patterned { free_size: true, .. })
        };
        wanted.extend(parts.iter().flat_map(|part| part.sizes.iter().copied()).filter(|size| !free(size)));
        batch.takes.retain(|take| !which(take.pack));
        let stay = before.layouts.iter().filter(|layout| layout.batch == index && !which(layout.pack));
        let made = |layout: &Layout| {
            (0..new.recipes.len()).filter(|&recipe| layout.recipe_counts[recipe] > 0).collect::<Vec<_>>()
        };
        given.extend(stay.clone().flat_map(made));
        let stay = stay.map(|layout| layout.recipe_counts.iter().sum()).min();
        all.extend(assembled(&mut new, batch, parts, stay, findings));
    }
    for (recipe, letters) in missing {
        if given.contains(&recipe) {
            let name = new.recipes[recipe].name.as_str();
            let finding = Finding::new(Severity::Warning, Subject::Recipe(name.to_owned()), "replan-designs-lost");
            findings.push(finding.with("recipe", name).with("designs", letters.as_str()));
        } else if !lost.contains(&recipe) {
            lost.push(recipe);
        }
    }
    // What cannot be made stays written, and no batch makes it.
    for batch in all.iter_mut().filter(|_| !lost.is_empty()) {
        if batch.recipes.is_empty() {
            batch.recipes = (0..new.recipes.len()).collect();
        }
        batch.recipes.retain(|recipe| !lost.contains(recipe));
    }
    all.retain(|batch| lost.is_empty() || !batch.recipes.is_empty());
    keep_sizes(&mut new, &all, &wanted, budget);
    // Other paper is still to be got, and got to measure; the same paper is bought in its own packs.
    for (index, pack) in new.packs.iter_mut().enumerate().filter(|(index, _)| which(*index)) {
        let was = old.packs[index].sheet;
        if old.unit != new.unit || pack.sheet == was {
            continue;
        }
        for (number, design) in pack.designs.iter_mut().enumerate() {
            let needed = taken(&all, index, number);
            if needed > 0 {
                (design.copies, design.use_sheets) = (needed, None);
            }
        }
        let sheets: u32 = (0..pack.designs.len()).map(|design| taken(&all, index, design)).sum();
        let told = note("replan-sheets").with("pack", pack.name.as_str()).with("sheets", sheets);
        if sheets > 0 {
            findings.push(told.with("width", pack.sheet.width).with("height", pack.sheet.height));
        }
    }
    enough(&mut new, &all, |pack| which(pack) && old.unit != bare.unit, findings);
    put_back(&mut new, all);
    new
}

/// Pins are places on the old sheet, spares were cut from each old sheet.
fn per_sheet_wishes(goal: &mut Goal, findings: &mut Vec<Finding>) {
    let Goal { pins, spares, .. } = goal;
    if !pins.is_empty() {
        pins.clear();
        findings.push(note("replan-pins-left-out"));
    }
    if !spares.is_empty() {
        spares.clear();
        findings.push(note("replan-spares-left-out"));
    }
}

/// Least and most cards of each recipe were those of an old sheet; a recipe that was to give no card gives none.
fn bounds(project: &mut Project) {
    for recipe in &mut project.recipes {
        recipe.least = 0;
        recipe.most = recipe.most.filter(|most| *most == 0);
    }
}

/// Sizes of the pieces of each layer as they stand on the card, each once.
pub(super) fn sizes_of(layout: &Layout) -> Vec<Sized> {
    once(layout.pieces.iter().map(|piece| (piece.recipe, piece.layer, piece.stands())))
}

/// Each of them once, in order.
pub(super) fn once<T: Ord>(all: impl IntoIterator<Item = T>) -> Vec<T> {
    all.into_iter().collect::<BTreeSet<T>>().into_iter().collect()
}

/// The project with pieces at these sizes; `None` if copies of one layer differ.
fn with_sizes(project: &Project, sizes: &[Sized]) -> Option<Project> {
    if sizes.windows(2).any(|pair| (pair[0].0, pair[0].1) == (pair[1].0, pair[1].1)) {
        return None;
    }
    let mut fixed = project.clone();
    for &(recipe, layer, size) in sizes {
        if let Material::Patterned { width, height, prefer, .. } = &mut fixed.recipes[recipe].layers[layer].material {
            (*width, *height, *prefer) = (Range::exactly(size.width), Range::exactly(size.height), size);
        }
    }
    Some(fixed)
}

/// Writes sizes into the ranges where the plan would choose others out of them.
fn keep_sizes(new: &mut Project, batches: &[Batch], wanted: &[Sized], budget: &mut Budget<'_>) {
    let wanted = once(wanted.iter().copied());
    let Some(fixed) = with_sizes(new, &wanted) else { return };
    let mut trial = new.clone();
    let mut more = Vec::new();
    enough(&mut trial, batches, |_| true, &mut more);
    put_back(&mut trial, batches.to_vec());
    let chosen = super::planned(&trial, budget);
    let sizes = once(chosen.layouts.iter().flat_map(sizes_of));
    for (index, recipe) in fixed.recipes.into_iter().enumerate() {
        let own = |all: &[Sized]| all.iter().filter(|(recipe, ..)| *recipe == index).copied().collect::<Vec<_>>();
        if !own(&wanted).is_empty() && own(&sizes) != own(&wanted) {
            new.recipes[index] = recipe;
        }
    }
}

/// The batch with its parts: as it was if they can share one goal, else as a batch for each part. `stay` cards come of
/// its sheets that stay what they were.
fn assembled(
    new: &mut Project,
    batch: &Batch,
    parts: Vec<Part>,
    stay: Option<u32>,
    findings: &mut Vec<Finding>,
) -> Vec<Batch> {
    let Some(first) = parts.iter().find(|part| !part.printed).or(parts.first()) else {
        return if batch.takes.is_empty() { Vec::new() } else { vec![batch.clone()] };
    };
    let gives = first.gives();
    // Sheets that are cut otherwise for other recipes are another matter than a design with recipes of its own.
    let one_take = |(index, part): (usize, &Part)| {
        let twice = |take: &Take| {
            let own = |other: &Take| (other.pack, other.design) == (take.pack, take.design);
            parts[..index].iter().flat_map(|part| &part.takes).any(own)
        };
        (part.printed || part.gives() == gives) && !part.takes.iter().any(twice)
    };
    // Sheets of other sizes would give as few cards as the new ones if they stayed with them.
    let fewer = stay.is_some_and(|cards| cards > gives);
    if !fewer && parts.iter().enumerate().all(one_take) {
        let mut whole = batch.clone();
        whole.goal.cards_per_sheet = Some(gives);
        for part in parts {
            if let [_, _, ..] = part.recipes.as_slice() {
                for &(recipe, cards) in part.recipes.iter().filter(|_| !part.printed) {
                    (new.recipes[recipe].least, new.recipes[recipe].most) = (cards, Some(cards));
                }
            }
            whole.takes.extend(part.takes);
        }
        whole.takes.sort_by_key(|take| (take.pack, take.design));
        return vec![whole];
    }
    let told = note("replan-apart").with("batch", batch.called(new));
    let mut split: Vec<Batch> = Vec::new();
    for part in parts {
        let recipes: Vec<usize> = part.recipes.iter().map(|&(recipe, _)| recipe).collect();
        let alike = |other: &&mut Batch| other.recipes == recipes && other.goal.cards_per_sheet == Some(part.gives());
        if let Some(other) = split.iter_mut().find(alike) {
            other.goal.cards = other.goal.cards.map(|cards| cards + part.cards);
            other.takes.extend(part.takes);
            continue;
        }
        let named: Vec<&str> = recipes.iter().map(|&recipe| new.recipes[recipe].name.as_str()).collect();
        let named = named.join(", ");
        let mut name = if batch.name.is_empty() { named } else { format!("{}: {named}", batch.name) };
        while split.iter().any(|other| other.name == name) {
            name.push('*');
        }
        let goal = Goal {
            cards_per_sheet: Some(part.gives()),
            cards: batch.goal.cards.map(|_| part.cards),
            overs: 0,
            ..batch.goal.clone()
        };
        split.push(Batch { name, takes: part.takes, recipes, goal, kits: batch.kits });
    }
    // Sheets of other sizes go on as they were.
    if let Some(first) = batch.takes.first() {
        let others: u32 = split.iter().filter_map(|part| part.goal.cards).sum();
        let pack = new.packs[first.pack].name.as_str();
        let name = if batch.name.is_empty() { pack.to_owned() } else { format!("{}: {pack}", batch.name) };
        let left = |cards: u32| cards.saturating_add(batch.goal.overs).saturating_sub(others).max(1);
        let goal = Goal { cards_per_sheet: stay, cards: batch.goal.cards.map(left), overs: 0, ..batch.goal.clone() };
        split.push(Batch { name, goal, ..batch.clone() });
    }
    findings.push(told.with("parts", split.len() as u64));
    split
}

/// The search for what a new sheet gives of the cards of one old layout.
struct Search<'a, 'b> {
    new: &'a Project,
    batch: &'a Batch,
    before: &'a Plan,
    layout: &'a Layout,
    /// The sizes of its pieces, as they would be now.
    same: Vec<Sized>,
    /// True if its sheets are turned over, so that no printed panel is cut.
    turned: bool,
    budget: &'a mut Budget<'b>,
}

impl Search<'_, '_> {
    /// Parts that together give the cards of the layout.
    fn parts(&mut self, lost: &mut Vec<usize>, findings: &mut Vec<Finding>) -> Vec<Part> {
        let mix: Vec<(usize, u32)> =
            self.layout.recipe_counts.iter().copied().enumerate().filter(|&(_, cards)| cards > 0).collect();
        let printed = self.printed(&mix);
        if printed.is_some() {
            return printed.into_iter().collect();
        }
        self.turn_over(findings);
        // Bounds belong to a recipe, whichever sheet it is on: a mix is kept where its recipes are on this sheet only.
        let elsewhere = |&(recipe, _): &(usize, u32)| {
            self.before.layouts.iter().filter(|other| other.recipe_counts[recipe] > 0).count() > 1
        };
        let shared = mix.len() == 1 || !mix.iter().any(elsewhere);
        let together = if shared { self.best(&mix) } else { None };
        let well = together.as_ref().is_some_and(|part| part.gives() * 4 >= self.target(&mix) * 3);
        if mix.len() == 1 || well {
            if together.is_none() {
                lost.extend(mix.iter().map(|&(recipe, _)| recipe));
            }
            return together.into_iter().collect();
        }
        let alone: Vec<Option<Part>> = mix.iter().map(|&one| self.best(&[one])).collect();
        if alone.iter().any(Option::is_none) && together.is_some() {
            return together.into_iter().collect();
        }
        for (part, (recipe, _)) in alone.iter().zip(&mix) {
            if part.is_none() {
                lost.push(*recipe);
            }
        }
        alone.into_iter().flatten().collect()
    }

    /// The cards out of the printed panels, if the sheets are a collage that still gives each recipe.
    fn printed(&mut self, mix: &[(usize, u32)]) -> Option<Part> {
        let collage = self.collage()?;
        let mut trial = self.narrow(self.new, mix);
        for &(recipe, _) in mix {
            trial.recipes[recipe].most = None;
        }
        let layout = self.one_sheet(&trial, Some(&collage))?;
        let gives = |&(recipe, _): &(usize, u32)| (recipe, layout.recipe_counts[recipe]);
        let recipes: Vec<(usize, u32)> = mix.iter().map(gives).collect();
        recipes.iter().all(|&(_, cards)| cards > 0).then(|| self.part(mix, recipes, &layout, true))
    }

    /// The printed panels that the sheets have now.
    fn collage(&self) -> Option<Collage> {
        let used = self.layout.sheets.first()?;
        let take = self.now(used.design, used.side);
        self.new.packs[self.layout.pack].designs[used.design].face(take).collage.clone()
    }

    /// Turns sheets over whose printed panels are too small, if their other side has none.
    fn turn_over(&mut self, findings: &mut Vec<Finding>) {
        let design = |used: &SheetUse| &self.new.packs[self.layout.pack].designs[used.design];
        let face = |used: &SheetUse| design(used).face(self.now(used.design, used.side).other());
        if self.collage().is_none() || self.layout.sheets.iter().any(|used| face(used).collage.is_some()) {
            return;
        }
        for used in &self.layout.sheets {
            let letter = design(used).letter.as_str();
            let subject = Subject::Design(letter.to_owned());
            let finding = Finding::new(Severity::Warning, subject, "replan-collage-too-small").with("design", letter);
            findings.push(finding.with("face", face(used).name.as_str()));
        }
        self.turned = true;
    }

    /// The side of a design that is used now.
    fn now(&self, design: usize, side: Side) -> Side {
        let own = |take: &&Take| (take.pack, take.design) == (self.layout.pack, design);
        let side = self.batch.takes.iter().find(own).map_or(side, |take| take.side);
        if self.turned { side.other() } else { side }
    }

    /// Cards of a mix from one sheet, so that the fewest sheets are cut: the same pieces where they take no more.
    fn best(&mut self, mix: &[(usize, u32)]) -> Option<Part> {
        let same = with_sizes(self.new, &self.same);
        let most = self.target(mix);
        let of_same = same.as_ref().and_then(|same| self.most(same, mix, most));
        // With ranges, only what would save a sheet is worth other pieces.
        let saves = |part: &Part| of_same.as_ref().is_none_or(|same| part.sheets() < same.sheets());
        let free = self.most(self.new, mix, most).filter(saves);
        free.or(of_same)
    }

    /// Most cards of a mix from one sheet, and fewer where that takes no more sheets: then less is made for nothing.
    fn most(&mut self, project: &Project, mix: &[(usize, u32)], most: u32) -> Option<Part> {
        let all: u32 = mix.iter().map(|&(_, cards)| cards).sum();
        let mut found: Option<Part> = None;
        for cards in (1..=most).rev() {
            if mix.iter().any(|&(_, each)| each * cards % all != 0) {
                continue;
            }
            let recipes: Vec<(usize, u32)> = mix.iter().map(|&(recipe, each)| (recipe, each * cards / all)).collect();
            if let Some(found) = &found {
                let sheets: u32 = self.takes(mix, &recipes).iter().map(|take| take.sheets).sum();
                if sheets > found.sheets() || self.batch.goal.cards_per_sheet.is_none() {
                    break;
                }
            }
            let trial = self.narrow(project, &recipes);
            if let Some(layout) = self.one_sheet(&trial, None) {
                found = Some(self.part(mix, recipes, &layout, false));
            }
        }
        found
    }

    /// The layout of a sheet, for a share of what is left.
    fn one_sheet(&mut self, trial: &Project, collage: Option<&Collage>) -> Option<Layout> {
        let pack = self.layout.pack;
        self.budget.within(self.budget.left() / 8, |part| one_sheet(trial, pack, collage, part))
    }

    /// A project as if it were about these sheets and these recipes only.
    fn narrow(&self, project: &Project, recipes: &[(usize, u32)]) -> Project {
        let mut alone = project.clone();
        alone.batches = Vec::new();
        for (pack, paper) in alone.packs.iter_mut().enumerate() {
            for (index, design) in paper.designs.iter_mut().enumerate() {
                let used = self.layout.sheets.iter().find(|used| pack == self.layout.pack && used.design == index);
                (design.use_sheets, design.copies) = (None, u32::from(used.is_some()));
                if let Some(used) = used {
                    design.up = self.now(index, used.side);
                }
            }
        }
        for (index, recipe) in alone.recipes.iter_mut().enumerate() {
            let cards = recipes.iter().find(|(recipe, _)| *recipe == index).map_or(0, |&(_, cards)| cards);
            (recipe.least, recipe.most) = (cards, Some(cards));
        }
        let cards = recipes.iter().map(|&(_, cards)| cards).sum();
        alone.goal = Goal { cards_per_sheet: Some(cards), alternatives: 1, ..Goal::unsaid() };
        alone
    }

    /// The sheets of each design for as many cards of each recipe as before.
    fn takes(&self, mix: &[(usize, u32)], recipes: &[(usize, u32)]) -> Vec<Take> {
        let take = |used: &SheetUse| {
            let sheets = |(&(_, was), &(_, is)): (&(usize, u32), &(usize, u32))| {
                (u64::from(used.sheets) * u64::from(was)).div_ceil(u64::from(is.max(1)))
            };
            let sheets = mix.iter().zip(recipes).map(sheets).max().unwrap_or(0);
            Take {
                pack: self.layout.pack,
                design: used.design,
                sheets: u32::try_from(sheets).unwrap_or(u32::MAX).min(MOST_SHEETS),
                side: self.now(used.design, used.side),
            }
        };
        self.layout.sheets.iter().map(take).collect()
    }

    /// The part of the batch that a new layout makes.
    fn part(&self, mix: &[(usize, u32)], recipes: Vec<(usize, u32)>, layout: &Layout, printed: bool) -> Part {
        let index = self.layout.batch;
        let made = |card: &&Card| {
            let of = |used: &SheetUse| used.design == card.design;
            let own = card.batch == index && card.pack == self.layout.pack && self.layout.sheets.iter().any(of);
            own && mix.iter().any(|&(recipe, _)| recipe == card.recipe)
        };
        Part {
            takes: self.takes(mix, &recipes),
            cards: u32::try_from(self.before.cards.iter().filter(made).count()).unwrap_or(u32::MAX),
            sizes: sizes_of(layout),
            recipes,
            printed,
        }
    }

    /// How many cards of a mix to look for: those that the sheet has room for at the sizes of before, in another unit at
    /// the sizes she prefers; or, where she wanted as many as can be, at the smallest.
    fn target(&self, mix: &[(usize, u32)]) -> u32 {
        // In square hundredths of a millimetre, so that the products stay far from overflowing.
        let square = i128::from(Length::MM.ticks() / 100).pow(2);
        let all: i128 = mix.iter().map(|&(_, cards)| i128::from(cards)).sum();
        let least = self.batch.goal.cards_per_sheet.is_none();
        let side = |range: Range, liked: Length| if least { range.least } else { liked };
        let area = |layer: &Layer| match &layer.material {
            Material::Patterned { width, height, prefer, .. } => {
                Size::new(side(*width, prefer.width), side(*height, prefer.height)).area() / square
            }
            _ => 0,
        };
        let card = |recipe: usize| self.new.recipes[recipe].layers.iter().map(area).sum::<i128>();
        let now = mix.iter().map(|&(recipe, cards)| card(recipe) * i128::from(cards)).sum::<i128>();
        let ours = |piece: &&Piece| mix.iter().any(|&(recipe, _)| recipe == piece.recipe) && piece.card.is_some();
        let before = self.layout.pieces.iter().filter(ours).map(|piece| piece.rect.size.area() / square).sum::<i128>();
        // Sizes of another unit are of other cards.
        let each = if least || self.new.unit != self.before.project.unit { now } else { now.min(before) };
        let sheet = self.new.packs[self.layout.pack].usable().area() / square;
        u32::try_from(sheet * all / each.max(1)).unwrap_or(1).clamp(1, MOST_CARDS)
    }
}
