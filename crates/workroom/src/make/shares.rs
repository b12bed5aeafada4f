//! Batches, shares of prints and kits, as `plan.json` tells them.

use cards::pairs::{Share, Shown, Uneven};
use cards::plan::{BatchKits, BatchShares, CardKind};
use schemars::JsonSchema;
use serde::Serialize;

use super::shown::Told;

/// One batch.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct BatchView {
    /// Its name; empty where the project names none.
    pub name: String,
    /// The numbers of its first and last card, if it has cards.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cards: Option<(u32, u32)>,
    /// How evenly each recipe's layers show the prints.
    pub shares: Vec<ShareView>,
    /// Its kits, if it is shared out over some.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub kits: Option<KitsView>,
}

/// How one recipe's layer shows the prints.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct ShareView {
    /// The recipe.
    pub recipe: String,
    /// The layer.
    pub layer: String,
    /// Most cards of one print, less fewest of another.
    pub apart: u32,
    /// Why that is more than one: `all-used` (every piece of the print shown least is used) or `rule`
    /// (more of it would clash, or partners come first).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reason: Option<&'static str>,
    /// Each print.
    pub prints: Vec<PrintView>,
}

/// One print at a layer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct PrintView {
    /// The pack.
    pub pack: String,
    /// The letter of the design.
    pub design: String,
    /// `front` or `back`.
    pub side: &'static str,
    /// Cards that show it.
    pub cards: u32,
    /// Pieces of it that could lie there.
    pub pieces: u32,
}

/// Cards shared out over kits.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct KitsView {
    /// True if all are alike.
    pub alike: bool,
    /// Pairs of neighbours whose kits differ so that they can swap.
    pub swaps: u32,
    /// Each kit.
    pub kits: Vec<KitView>,
}

/// One kit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct KitView {
    /// Numbers of its cards.
    pub cards: Vec<u32>,
    /// What they are.
    pub holds: Vec<HoldsView>,
}

/// Cards of one kind in a kit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct HoldsView {
    /// The recipe.
    pub recipe: String,
    /// The letter of the design of the main piece, if it has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub design: Option<String>,
    /// How many.
    pub count: u32,
}

/// The batches of a plan.
pub(super) fn show(told: &Told<'_>) -> Vec<BatchView> {
    let numbers = |batch: usize| {
        let of = || told.plan.cards.iter().filter(|card| card.batch == batch).map(|card| card.number);
        of().min().zip(of().max())
    };
    let view = |shares: &BatchShares| BatchView {
        name: told.plan.batches.get(shares.batch).map(|batch| batch.name.clone()).unwrap_or_default(),
        cards: numbers(shares.batch),
        shares: self::shares(told, shares),
        kits: shares.kits.as_ref().map(|kits| self::kits(told, kits)),
    };
    told.plan.shares.iter().map(view).collect()
}

fn shares(told: &Told<'_>, of: &BatchShares) -> Vec<ShareView> {
    let print = |shown: &Shown| PrintView {
        pack: told.pack(shown.print.pack),
        design: told.letter(shown.print.pack, shown.print.design),
        side: shown.print.side.name(),
        cards: shown.cards,
        pieces: shown.there,
    };
    let view = |share: &Share| {
        let own = |shown: &&Shown| (shown.recipe, shown.layer) == (share.recipe, share.layer);
        ShareView {
            recipe: told.recipe(share.recipe),
            layer: told.layer(share.recipe, share.layer),
            apart: share.most.1 - share.fewest.1,
            reason: share.reason.map(|reason| match reason {
                Uneven::AllUsed => "all-used",
                Uneven::Rule | Uneven::Partners => "rule",
            }),
            prints: of.shown.iter().filter(own).map(print).collect(),
        }
    };
    of.shares.iter().map(view).collect()
}

fn kits(told: &Told<'_>, of: &BatchKits) -> KitsView {
    let holds = |(kind, &count): (&CardKind, &u32)| HoldsView {
        recipe: told.recipe(kind.recipe),
        design: kind.print.map(|print| told.letter(print.pack, print.design)),
        count,
    };
    let kit = |(cards, counts): (&Vec<u32>, &Vec<u32>)| KitView {
        cards: cards.clone(),
        holds: of.kinds.iter().zip(counts).filter(|&(_, &count)| count > 0).map(holds).collect(),
    };
    KitsView {
        alike: of.dealt.equal,
        swaps: of.dealt.swaps,
        kits: of.cards.iter().zip(&of.dealt.cards).map(kit).collect(),
    }
}
