//! Least-cost flow between classes of cards and classes of pieces.
//!
//! Source: the primal-dual method, from memory: potentials from the shortest ways (Dijkstra's search on reduced
//! costs), then units along every way that is as short. A unit at a time keeps it exact for convex costs: each unit
//! costs the next step of its curve. Costs are compared line by line as in a dictionary, which keeps order under
//! addition, so no large factor is needed.

use std::cmp::Reverse;
use std::collections::BinaryHeap;
use std::ops::{Add, Sub};

/// Whether a piece goes with a card.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Goes {
    No,
    Yes,
    /// A named partner.
    First,
}

/// Who needs how many, what is there, and what goes with what.
#[derive(Debug)]
pub(super) struct Task {
    pub(super) need: Vec<u32>,
    pub(super) there: Vec<u32>,
    pub(super) goes: Vec<Vec<Goes>>,
}

/// What a unit costs: first those apart from their partner, then uneven shares, then uneven pairs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
struct Cost([i64; 3]);

impl Add for Cost {
    type Output = Cost;
    fn add(self, more: Cost) -> Cost {
        Cost(std::array::from_fn(|line| self.0[line] + more.0[line]))
    }
}

impl Sub for Cost {
    type Output = Cost;
    fn sub(self, less: Cost) -> Cost {
        Cost(std::array::from_fn(|line| self.0[line] - less.0[line]))
    }
}

/// The step of the square from `count` to `count + 1`.
fn step(count: u32) -> i64 {
    2 * i64::from(count) + 1
}

impl Goes {
    /// What the unit after `count` costs.
    fn cost(self, count: u32) -> Option<Cost> {
        match self {
            Goes::No => None,
            Goes::Yes => Some(Cost([1, 0, step(count)])),
            Goes::First => Some(Cost([0, 0, step(count)])),
        }
    }
}

/// Flow on the way, with the potentials that keep every open step at no less than nothing.
///
/// Nodes: the classes of cards, then the classes of pieces, then the end. The start needs no node: it stays at nothing.
struct State<'a> {
    task: &'a Task,
    pairs: Vec<Vec<u32>>,
    served: Vec<u32>,
    used: Vec<u32>,
    height: Vec<Cost>,
}

/// Where a search for ways that cost nothing more has come to.
struct Walk {
    /// By node: the next node to try from it.
    next: Vec<usize>,
    /// By node: true while it lies on the way, so that no way crosses itself.
    on_way: Vec<bool>,
}

impl State<'_> {
    /// What it costs to go on from one node to another by one unit, if that is open.
    fn open(&self, from: usize, to: usize) -> Option<Cost> {
        let (cards, end) = (self.task.need.len(), self.height.len() - 1);
        match (from < cards, to) {
            (true, to) if to >= cards && to < end => {
                let piece = to - cards;
                self.task.goes[from][piece].cost(self.pairs[from][piece])
            }
            (false, to) if to == end => {
                let piece = from - cards;
                let used = self.used[piece];
                (used < self.task.there[piece]).then(|| Cost([0, step(used), 0]))
            }
            (false, to) if to < cards => {
                let piece = from - cards;
                let count = self.pairs[to][piece].checked_sub(1)?;
                self.task.goes[to][piece].cost(count).map(|cost| Cost::default() - cost)
            }
            _ => None,
        }
    }

    /// As [`State::open`], above what the potentials say: never less than nothing.
    fn reduced(&self, from: usize, to: usize) -> Option<Cost> {
        self.open(from, to).map(|cost| cost + self.height[from] - self.height[to])
    }

    /// What one unit more for a class of cards costs above its potential, if it needs one.
    fn begin(&self, card: usize) -> Option<Cost> {
        (self.served[card] < self.task.need[card]).then(|| Cost([0, step(self.served[card]), 0]) - self.height[card])
    }

    /// The nodes that a node may lead to.
    fn nexts(&self, node: usize) -> std::ops::Range<usize> {
        let (cards, end) = (self.task.need.len(), self.height.len() - 1);
        match node {
            node if node < cards => cards..end,
            node if node < end => 0..end + 1,
            _ => 0..0,
        }
    }

    /// Raise the potentials by the shortest ways; false if no way to the end is open.
    fn raise(&mut self) -> bool {
        let (cards, nodes) = (self.task.need.len(), self.height.len());
        let end = nodes - 1;
        let mut far: Vec<Option<Cost>> = vec![None; nodes];
        let mut done = vec![false; nodes];
        let mut open: BinaryHeap<Reverse<(Cost, usize)>> = BinaryHeap::new();
        for card in 0..cards {
            far[card] = self.begin(card);
            open.extend(far[card].map(|far| Reverse((far, card))));
        }
        while let Some(Reverse((here, node))) = open.pop() {
            if std::mem::replace(&mut done[node], true) {
                continue;
            }
            if node == end {
                break;
            }
            for to in self.nexts(node) {
                if done[to] {
                    continue;
                }
                let Some(more) = self.reduced(node, to) else { continue };
                let there = here + more;
                if far[to].is_none_or(|known| there < known) {
                    far[to] = Some(there);
                    open.push(Reverse((there, to)));
                }
            }
        }
        let Some(whole) = far[end].filter(|_| done[end]) else { return false };
        for (height, far) in self.height.iter_mut().zip(&far) {
            *height = *height + far.map_or(whole, |far| far.min(whole));
        }
        true
    }

    /// Send units along every way that costs nothing above the potentials.
    fn send(&mut self) {
        let (cards, nodes) = (self.task.need.len(), self.height.len());
        let nexts = (0..nodes).map(|node| self.nexts(node).start).collect();
        let mut walk = Walk { next: nexts, on_way: vec![false; nodes] };
        for card in 0..cards {
            while self.begin(card) == Some(Cost::default()) {
                let Some(way) = self.way(card, &mut walk) else { break };
                self.take(&way);
            }
        }
    }

    /// A way from a class of cards to the end that costs nothing above the potentials.
    fn way(&self, card: usize, walk: &mut Walk) -> Option<Vec<usize>> {
        let end = self.height.len() - 1;
        let mut way = vec![card];
        walk.on_way[card] = true;
        while let Some(&node) = way.last() {
            if node == end {
                break;
            }
            let last = self.nexts(node).end;
            let free = |&to: &usize| !walk.on_way[to] && self.reduced(node, to) == Some(Cost::default());
            // The end first: it is the last of the nodes.
            let found = Some(end).filter(free).or_else(|| (walk.next[node]..last).find(free));
            match found {
                Some(to) => {
                    if to != end {
                        walk.next[node] = to;
                    }
                    walk.on_way[to] = true;
                    way.push(to);
                }
                None => {
                    // Nothing leads on from here: the one before tries its next.
                    walk.next[node] = last;
                    walk.on_way[node] = false;
                    way.pop();
                    if let Some(&before) = way.last() {
                        walk.next[before] += 1;
                    }
                }
            }
        }
        for &node in &way {
            walk.on_way[node] = false;
        }
        (way.last() == Some(&end)).then_some(way)
    }

    /// One unit along a way.
    fn take(&mut self, way: &[usize]) {
        let (cards, end) = (self.task.need.len(), self.height.len() - 1);
        for step in way.windows(2) {
            match (step[0], step[1]) {
                (from, to) if to == end => self.used[from - cards] += 1,
                (from, to) if from < cards => self.pairs[from][to - cards] += 1,
                (from, to) => self.pairs[to][from - cards] -= 1,
            }
        }
        self.served[way[0]] += 1;
    }
}

impl Task {
    /// How many of each class of pieces go to each class of cards.
    pub(super) fn flow(&self) -> Vec<Vec<u32>> {
        let (cards, pieces) = (self.need.len(), self.there.len());
        let mut state = State {
            task: self,
            pairs: vec![vec![0; pieces]; cards],
            served: vec![0; cards],
            used: vec![0; pieces],
            height: vec![Cost::default(); cards + pieces + 1],
        };
        while state.raise() {
            state.send();
        }
        state.pairs
    }

    /// What the cards still lack, and what is left of the pieces.
    pub(super) fn rest(&self, pairs: &[Vec<u32>]) -> (Vec<u32>, Vec<u32>) {
        let missing = self.need.iter().zip(pairs).map(|(need, row)| need - row.iter().sum::<u32>());
        let taken = |piece: usize| pairs.iter().map(|row| row[piece]).sum::<u32>();
        let left = self.there.iter().enumerate().map(|(piece, there)| there - taken(piece));
        (missing.collect(), left.collect())
    }

    /// Sets of cards that have too few pieces, each with all pieces that go with it; no two sets share a piece.
    pub(super) fn short(&self, pairs: &[Vec<u32>]) -> Vec<(Vec<usize>, Vec<usize>)> {
        let (missing, _) = self.rest(pairs);
        let (cards, pieces) = (self.need.len(), self.there.len());
        let goes = |card: usize, piece: usize| self.goes[card][piece] != Goes::No;
        // A class is short if it lacks a piece, or holds a piece that goes with a class that is short.
        let mut short: Vec<bool> = missing.iter().map(|&missing| missing > 0).collect();
        let mut open: Vec<usize> = (0..cards).filter(|&card| short[card]).collect();
        while let Some(card) = open.pop() {
            for piece in (0..pieces).filter(|&piece| goes(card, piece)) {
                for other in 0..cards {
                    if !short[other] && pairs[other][piece] > 0 {
                        short[other] = true;
                        open.push(other);
                    }
                }
            }
        }
        // Those that share no piece are told apart.
        let mut sets = Vec::new();
        while let Some(start) = short.iter().position(|&short| short) {
            short[start] = false;
            let (mut set, mut near) = (vec![start], vec![false; pieces]);
            let mut at = 0;
            while at < set.len() {
                for piece in (0..pieces).filter(|&piece| goes(set[at], piece)).collect::<Vec<_>>() {
                    near[piece] = true;
                    let more = (0..cards).filter(|&other| short[other] && goes(other, piece)).collect::<Vec<_>>();
                    for &other in &more {
                        short[other] = false;
                    }
                    set.extend(more);
                }
                at += 1;
            }
            set.sort_unstable();
            sets.push((set, (0..pieces).filter(|&piece| near[piece]).collect()));
        }
        sets
    }
}
