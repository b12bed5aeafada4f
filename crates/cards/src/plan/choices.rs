//! What the maker decided by hand for single cards: pieces that change places, pieces that are turned over, mats of another
//! colour.
//!
//! A choice is carried out whole or not at all: nothing is lost or cut anew, every piece is still used once. One that
//! breaks a rule is told and left. Leaves out: which choices would be good; and the sheet, which stays as it is cut.
//!
//! Source: common practice: a piece may be turned over about either of its edges, so its other print stands upright
//! again unless the piece lies a quarter turned on the sheet.

use super::answer::{Card, CardPart, Layout, PartKind, Plan};
use super::batch::{main_part, mat_cardstock};
use super::mix;
use crate::finding::{Finding, Severity, Subject};
use crate::model::{Choice, Decided, Material, Project, Side, Way};
use crate::pairs::{Clash, Piece, Rule};

/// Carry out every choice of the project, in its order; tell of those that cannot be.
pub(super) fn carry_out(project: &Project, layouts: &[Layout], cards: &mut [Card], findings: &mut Vec<Finding>) {
    for choice in &project.choices {
        if let Err(finding) = choose(project, layouts, cards, choice) {
            findings.push(finding);
        }
    }
}

/// Why one more choice could not be carried out on a plan; `None` if it can.
pub fn refusal(plan: &Plan, choice: &Choice) -> Option<Finding> {
    tried(plan, choice).err()
}

/// The one or two cards that one more choice would change, as they would be.
///
/// # Errors
/// The finding that says why it cannot be carried out.
pub fn tried(plan: &Plan, choice: &Choice) -> Result<Vec<Card>, Finding> {
    let meant = |card: &&Card| card.number == choice.card || choice.decided == Decided::Swap(card.number);
    let mut cards: Vec<Card> = plan.cards.iter().filter(meant).cloned().collect();
    choose(&plan.project, &plan.layouts, &mut cards, choice)?;
    Ok(cards)
}

fn choose(project: &Project, layouts: &[Layout], cards: &mut [Card], choice: &Choice) -> Result<(), Finding> {
    let table = Table { project, layouts, choice, rule: Rule::of(project) };
    if let Decided::CutFrom(cardstock) = choice.decided {
        return table.cut_from(cards, cardstock);
    }
    let (card, part) = table.piece(cards, choice.card)?;
    match choice.decided {
        Decided::Swap(with) => {
            let (other, its) = table.piece(cards, with)?;
            if card == other {
                return Err(table.told("choice-same-card"));
            }
            table.swap(cards, (card, part), (other, its))
        }
        Decided::Shows(side) => table.show(&mut cards[card], part, side),
        Decided::CutFrom(_) => Ok(()),
    }
}

/// One choice, and what it is made on.
struct Table<'a> {
    project: &'a Project,
    layouts: &'a [Layout],
    choice: &'a Choice,
    rule: Rule,
}

impl Table<'_> {
    fn told(&self, code: &'static str) -> Finding {
        let finding = Finding::new(Severity::Warning, Subject::Project, code);
        let with = if let Decided::Swap(with) = self.choice.decided { with } else { self.choice.card };
        finding.with("card", self.choice.card).with("with", with).with("layer", self.choice.layer.as_str())
    }

    /// Index of a card, and of the choice's layer among its parts.
    fn piece(&self, cards: &[Card], number: u32) -> Result<(usize, usize), Finding> {
        let about = |code| self.told(code).with("wanted", number);
        // Cards are numbered in their order.
        let index = cards.binary_search_by_key(&number, |card| card.number).map_err(|_| about("choice-no-card"))?;
        let layers = &self.project.recipes[cards[index].recipe].layers;
        let meant = |part: &CardPart| {
            matches!(part.kind, PartKind::Patterned { .. }) && layers[part.layer].name == self.choice.layer
        };
        let part = cards[index].parts.iter().position(meant).ok_or_else(|| about("choice-no-piece"))?;
        Ok((index, part))
    }

    /// Another colour for a plain piece.
    fn cut_from(&self, cards: &mut [Card], cardstock: usize) -> Result<(), Finding> {
        let number = self.choice.card;
        let about = |code| self.told(code).with("wanted", number);
        let index = cards.binary_search_by_key(&number, |card| card.number).map_err(|_| about("choice-no-card"))?;
        let card = &mut cards[index];
        let layers = &self.project.recipes[card.recipe].layers;
        let meant = |part: &&mut CardPart| {
            matches!(part.kind, PartKind::Cardstock(_)) && layers[part.layer].name == self.choice.layer
        };
        let part = card.parts.iter_mut().find(meant).ok_or_else(|| about("choice-no-plain"))?;
        part.kind = PartKind::Cardstock(cardstock);
        Ok(())
    }

    fn swap(
        &self,
        cards: &mut [Card],
        (one, part): (usize, usize),
        (other, its): (usize, usize),
    ) -> Result<(), Finding> {
        let (mine, theirs) = (cards[one].parts[part].kind.clone(), cards[other].parts[its].kind.clone());
        let size = |kind: &PartKind| match kind {
            PartKind::Patterned { layout, piece, .. } => Some(self.layouts[*layout].pieces[*piece].stands()),
            _ => None,
        };
        if size(&mine) != size(&theirs) {
            return Err(self.told("choice-other-size"));
        }
        let given = [(one, part, theirs), (other, its, mine)];
        let mut changed = Vec::new();
        for (card, part, kind) in given {
            let mut fresh = cards[card].clone();
            fresh.parts[part].kind = kind;
            self.fits(&cards[card], &fresh, part)?;
            self.follow(&mut fresh, part);
            changed.push((card, fresh));
        }
        for (card, fresh) in changed {
            cards[card] = fresh;
        }
        Ok(())
    }

    fn show(&self, card: &mut Card, part: usize, wanted: Side) -> Result<(), Finding> {
        let mut fresh = card.clone();
        let PartKind::Patterned { layout, piece, design, side, .. } = &mut fresh.parts[part].kind else {
            return Ok(());
        };
        let laid = &self.layouts[*layout];
        let printed = &self.project.packs[laid.pack].designs[*design];
        *side = wanted;
        if laid.pieces[*piece].turned && printed.face(wanted).way != Way::Any {
            let face = printed.face(wanted).name.as_str();
            return Err(self.told("choice-sideways").with("face", face));
        }
        self.fits(card, &fresh, part)?;
        *card = fresh;
        Ok(())
    }

    /// Whether a card may have its new piece: one that clashes is refused, unless the old one clashed the same way.
    fn fits(&self, before: &Card, after: &Card, part: usize) -> Result<(), Finding> {
        let recipe = &self.project.recipes[after.recipe];
        let letter = self.letter(&after.parts[part].kind);
        let own = !recipe.layers[after.parts[part].layer].is_from_partner();
        if own && !recipe.designs.is_empty() && !recipe.designs.iter().any(|known| known == letter) {
            let finding = self.told("choice-other-designs").with("wanted", after.number);
            return Err(finding.with("recipe", recipe.name.as_str()).with("design", letter));
        }
        match self.clash(after, part).filter(|(clash, _)| self.clash(before, part).is_none_or(|(was, _)| was != *clash))
        {
            None => Ok(()),
            Some((clash, with)) => {
                let code = match clash {
                    Clash::BothLarge => "choice-both-large",
                    Clash::SameGround => "choice-same-ground",
                    Clash::Never | Clash::NotListed => "choice-never-together",
                    Clash::Kind | Clash::SamePrint => "choice-same-print",
                };
                Err(self.told(code).with("wanted", after.number).with("design", letter).with("other", with.as_str()))
            }
        }
    }

    /// Why a piece does not go with the others of its card, and the letter of the one it clashes with.
    fn clash(&self, card: &Card, part: usize) -> Option<(Clash, String)> {
        let piece = self.print(&card.parts[part].kind)?;
        let others = card.parts.iter().enumerate().filter(|&(index, _)| index != part);
        let mut others = others.filter_map(|(_, part)| Some((&part.kind, self.print(&part.kind)?)));
        others.find_map(|(kind, other)| Some((self.rule.clash(&piece, &other)?, self.letter(kind).to_owned())))
    }

    /// A card goes by the print of its main piece: its design, its sheet and the colour of its mats.
    fn follow(&self, card: &mut Card, part: usize) {
        let layers = &self.project.recipes[card.recipe].layers;
        if layers[card.parts[part].layer].is_from_partner() {
            return;
        }
        let Some(&PartKind::Patterned { layout, design, .. }) = main_part(self.project, card).map(|part| &part.kind)
        else {
            return;
        };
        let pack = self.layouts[layout].pack;
        let letter = &self.project.packs[pack].designs[design].letter;
        for part in &mut card.parts {
            if let Material::Mat { cardstock, .. } = &layers[part.layer].material
                && let Some(cardstock) = mat_cardstock(cardstock, letter)
            {
                part.kind = PartKind::Cardstock(cardstock);
            }
        }
        (card.pack, card.design) = (pack, design);
    }

    fn letter(&self, kind: &PartKind) -> &str {
        let PartKind::Patterned { layout, design, .. } = kind else { return "" };
        &self.project.packs[self.layouts[*layout].pack].designs[*design].letter
    }

    /// A piece as the rule of prints looks at it.
    fn print(&self, kind: &PartKind) -> Option<Piece> {
        let PartKind::Patterned { layout, design, side, .. } = *kind else { return None };
        Some(mix::piece(self.project, self.layouts[layout].pack, design, side))
    }
}
