//! Which companion piece (a band, a tile) goes on which card, by a stated rule, every piece once.
//!
//! Cards that start alike are one class, and so are pieces that are alike; the answer says how many pieces
//! of a class go to a class of cards. One layer is exact, by least-cost flow with convex costs. In this order:
//! as many cards as can be get a piece that does not clash; as few as can be miss a named partner; the cards
//! that get one, and the pieces taken, are as even as can be; and so are the pairs. Several layers are solved
//! one after the other: each is exact for what the ones before it chose, the whole need not be (choosing
//! three things together is a three-dimensional matching, which is hard).
//!
//! Source: least-cost flow by successive shortest paths with potentials, from memory; the set of cards that
//! has too few pieces is the one of Hall's theorem. The rules of taste are common practice.

mod flow;
mod shares;

use std::collections::BTreeMap;

pub use shares::{Kits, Share, Shown, Uneven, evenness, kits};

use crate::model::{Meeting, Pack, Project, Side};
use flow::{Goes, Task};

/// One printed face: what a piece shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Print {
    /// Index of the pack.
    pub pack: usize,
    /// Index of the design in the pack.
    pub design: usize,
    /// The side that shows.
    pub side: Side,
}

impl Print {
    /// The pack and design, whichever side shows.
    pub fn paper(self) -> (usize, usize) {
        (self.pack, self.design)
    }
}

/// A piece as far as the rule looks at it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Piece {
    /// What it shows.
    pub print: Print,
    /// True if its motifs are large.
    pub large: bool,
    /// Which ground it has, if known: equal numbers are equal grounds.
    pub ground: Option<u32>,
}

/// Cards that start alike.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cards {
    /// The pieces already on each of them; the first is the main piece.
    pub pieces: Vec<Piece>,
    /// The kind of piece that each companion layer takes, such as a number for its size.
    pub takes: Vec<usize>,
    /// How many cards.
    pub count: u32,
}

/// Companion pieces that are alike.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Companions {
    /// What they are.
    pub piece: Piece,
    /// Their kind.
    pub kind: usize,
    /// How many of them.
    pub count: u32,
}

/// What may not be alike on one card.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Apart {
    /// No two pieces of one design, whichever sides show.
    #[default]
    Designs,
    /// No two pieces that show the same side of the same design.
    Faces,
    /// Anything goes.
    Anything,
}

/// A design, by the index of its pack and its own.
pub type Paper = (usize, usize);

/// Which pieces go together.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Rule {
    /// Designs that go together before any other, in both directions.
    pub partners: Vec<(Paper, Paper)>,
    /// What must differ.
    pub apart: Apart,
    /// At most one piece with large motifs on a card.
    pub one_large: bool,
    /// No two pieces with the same ground.
    pub grounds_differ: bool,
    /// If not empty: only these go together, in both directions.
    pub only: Vec<(Paper, Paper)>,
    /// These never go together, in both directions.
    pub never: Vec<(Paper, Paper)>,
}

/// Why a piece does not go on a card.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Clash {
    /// The layer takes another kind of piece.
    Kind,
    /// The card has that print already.
    SamePrint,
    /// The card has a large print already.
    BothLarge,
    /// The card has that ground already.
    SameGround,
    /// The two designs are on the list of those that never go together.
    Never,
    /// The two designs are not on the list of those that go together.
    NotListed,
}

impl Rule {
    /// What the maker says of prints that meet; a letter means its design in every pack.
    pub fn of(project: &Project) -> Rule {
        let named = |letter: &String| -> Vec<Paper> {
            let of_pack = |(pack, paper): (usize, &Pack)| {
                let index = paper.designs.iter().position(|design| design.letter == *letter);
                index.map(|design| (pack, design))
            };
            project.packs.iter().enumerate().filter_map(of_pack).collect()
        };
        let pairs = |letters: &[(String, String)]| {
            let mut pairs = Vec::new();
            for (one, other) in letters {
                let others = named(other);
                pairs.extend(named(one).into_iter().flat_map(|one| others.iter().map(move |&other| (one, other))));
            }
            pairs
        };
        let Meeting { apart, one_large, only, never } = &project.meeting;
        Rule { apart: *apart, one_large: *one_large, only: pairs(only), never: pairs(never), ..Rule::default() }
    }

    /// The first reason why two pieces do not go on one card, if there is one.
    pub fn clash(&self, one: &Piece, other: &Piece) -> Option<Clash> {
        let same = match self.apart {
            Apart::Designs => one.print.paper() == other.print.paper(),
            Apart::Faces => one.print == other.print,
            Apart::Anything => false,
        };
        if same {
            Some(Clash::SamePrint)
        } else if listed(&self.never, one, other) {
            Some(Clash::Never)
        } else if !self.only.is_empty() && !listed(&self.only, one, other) {
            Some(Clash::NotListed)
        } else if self.one_large && one.large && other.large {
            Some(Clash::BothLarge)
        } else if self.grounds_differ && one.ground.is_some() && one.ground == other.ground {
            Some(Clash::SameGround)
        } else {
            None
        }
    }

    /// Why a piece does not go on such cards, if it does not.
    pub fn refuses(&self, cards: &Cards, layer: usize, companions: &Companions) -> Option<Clash> {
        if cards.takes.get(layer) != Some(&companions.kind) {
            return Some(Clash::Kind);
        }
        cards.pieces.iter().find_map(|piece| self.clash(piece, &companions.piece))
    }

    /// True if the piece is a named partner of the cards' main piece.
    fn partners(&self, cards: &Cards, companions: &Companions) -> bool {
        cards.pieces.first().is_some_and(|main| listed(&self.partners, main, &companions.piece))
    }
}

fn listed(pairs: &[(Paper, Paper)], one: &Piece, other: &Piece) -> bool {
    let (one, other) = (one.print.paper(), other.print.paper());
    pairs.iter().any(|&(a, b)| (a, b) == (one, other) || (b, a) == (one, other))
}

/// Cards that together have fewer pieces that go with them than they need.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shortage {
    /// Indices of the classes of cards.
    pub cards: Vec<usize>,
    /// Indices of the classes of pieces that go with any of them.
    pub companions: Vec<usize>,
    /// Pieces that the cards need.
    pub needed: u32,
    /// Pieces there are; fewer than needed.
    pub there: u32,
    /// Classes of pieces that lie unused, and why they do not go with the first of the cards.
    pub refused: Vec<(usize, Clash)>,
}

/// How the pieces of one layer are given out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Given {
    /// By class of cards, by class of pieces: how many.
    pub pairs: Vec<Vec<u32>>,
    /// Cards of each class that go without.
    pub missing: Vec<u32>,
    /// Pieces of each class that nobody takes.
    pub left: Vec<u32>,
    /// Why cards go without: sets of cards that share no piece, each with too few.
    pub shortages: Vec<Shortage>,
}

/// Give out the pieces of one companion layer, exactly.
///
/// Cards that take nothing at that layer are left alone.
pub fn give(cards: &[Cards], layer: usize, companions: &[Companions], rule: &Rule) -> Given {
    let need = cards.iter().map(|cards| if cards.takes.len() > layer { cards.count } else { 0 }).collect();
    let there: Vec<u32> = companions.iter().map(|companions| companions.count).collect();
    let goes = |cards: &Cards| {
        let goes = |companions: &Companions| match rule.refuses(cards, layer, companions) {
            Some(_) => Goes::No,
            None if rule.partners(cards, companions) => Goes::First,
            None => Goes::Yes,
        };
        companions.iter().map(goes).collect()
    };
    let task = Task { need, there, goes: cards.iter().map(goes).collect() };
    let pairs = task.flow();
    let (missing, left) = task.rest(&pairs);
    let mut shortages = Vec::new();
    for (short, near) in task.short(&pairs) {
        let first = &cards[short[0]];
        let unused = (0..companions.len()).filter(|&index| left[index] > 0);
        let refused = unused.filter_map(|index| Some((index, rule.refuses(first, layer, &companions[index])?)));
        shortages.push(Shortage {
            needed: short.iter().map(|&index| task.need[index]).fold(0, u32::saturating_add),
            there: near.iter().map(|&index| task.there[index]).fold(0, u32::saturating_add),
            refused: refused.collect(),
            cards: short,
            companions: near,
        });
    }
    Given { pairs, missing, left, shortages }
}

/// Cards of one class that get the same pieces.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Dealt {
    /// Index of the class of cards.
    pub cards: usize,
    /// By companion layer: index of the class of pieces; `None`: it goes without.
    pub companions: Vec<Option<usize>>,
    /// How many cards.
    pub count: u32,
}

/// A shortage at one of the layers; its cards are those classes that the caller knows.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LayerShortage {
    /// Which companion layer, from 0.
    pub layer: usize,
    /// What is short.
    pub shortage: Shortage,
}

/// Give out the pieces of all companion layers, one layer after the other out of one store of pieces.
///
/// At each layer the clash with all pieces already on the card counts.
pub fn give_all(cards: &[Cards], companions: &[Companions], rule: &Rule) -> (Vec<Dealt>, Vec<LayerShortage>) {
    let layers = cards.iter().map(|cards| cards.takes.len()).max().unwrap_or(0);
    let mut store = companions.to_vec();
    let whole = |(index, cards): (usize, &Cards)| Dealt { cards: index, companions: Vec::new(), count: cards.count };
    let mut dealt: Vec<Dealt> = cards.iter().enumerate().map(whole).collect();
    let mut shortages = Vec::new();
    for layer in 0..layers {
        let with = |dealt: &Dealt| {
            let mut made = cards[dealt.cards].clone();
            made.pieces.extend(dealt.companions.iter().flatten().map(|&index| companions[index].piece));
            made.count = dealt.count;
            made
        };
        let now: Vec<Cards> = dealt.iter().map(with).collect();
        let given = give(&now, layer, &store, rule);
        for mut shortage in given.shortages {
            for class in &mut shortage.cards {
                *class = dealt[*class].cards;
            }
            shortage.cards.sort_unstable();
            shortage.cards.dedup();
            shortages.push(LayerShortage { layer, shortage });
        }
        let mut next: BTreeMap<(usize, Vec<Option<usize>>), u32> = BTreeMap::new();
        for (index, old) in dealt.into_iter().enumerate() {
            if cards[old.cards].takes.len() <= layer {
                *next.entry((old.cards, old.companions)).or_default() += old.count;
                continue;
            }
            let some = given.pairs[index].iter().enumerate().map(|(piece, &count)| (Some(piece), count));
            for (piece, count) in some.chain([(None, given.missing[index])]).filter(|&(_, count)| count > 0) {
                let mut chosen = old.companions.clone();
                chosen.push(piece);
                *next.entry((old.cards, chosen)).or_default() += count;
            }
        }
        dealt = next.into_iter().map(|((cards, companions), count)| Dealt { cards, companions, count }).collect();
        for (companions, left) in store.iter_mut().zip(given.left) {
            companions.count = left;
        }
    }
    (dealt, shortages)
}
