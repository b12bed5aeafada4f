//! Pairs of pieces against brute force on single pieces, against linear programmes, and the told shortages recounted.
//!
//! Source: Hall's condition is checked by counting; optima by trying every way on small cases, and on larger ones
//! by linear programmes of the general-purpose library `microlp` (each unit of a convex cost a column of its own;
//! such programmes of flows have whole optima), solved line by line in the order of what matters.
#![allow(clippy::unwrap_used, reason = "tests")]

use cards::model::Side;
use cards::pairs::{
    Apart, Cards, Companions, Given, Paper, Piece, Print, Rule, Shown, Uneven, evenness, give, give_all, kits,
};
use microlp::{ComparisonOp, OptimizationDirection, Problem, Variable};
use proptest::prelude::*;

fn print(design: usize) -> Print {
    Print { pack: 0, design, side: Side::Front }
}

fn piece(design: usize) -> Piece {
    Piece { print: print(design), large: false, ground: None }
}

fn cards(design: usize, count: u32) -> Cards {
    Cards { pieces: vec![piece(design)], takes: vec![0], count }
}

fn bands(design: usize, count: u32) -> Companions {
    Companions { piece: piece(design), kind: 0, count }
}

/// Given, with a partner, squares of shares, squares of pairs: what is compared, best first is largest, smallest, smallest, smallest.
type Worth = (u32, u32, u32, u32);

fn worth(pairs: &[Vec<u32>], partner: impl Fn(usize, usize) -> bool) -> Worth {
    let square = |count: u32| count * count;
    let (mut given, mut apart, mut mixes) = (0, 0, 0);
    for (card, row) in pairs.iter().enumerate() {
        for (piece, &count) in row.iter().enumerate() {
            given += count;
            mixes += square(count);
            if !partner(card, piece) {
                apart += count;
            }
        }
    }
    let served: u32 = pairs.iter().map(|row| square(row.iter().sum())).sum();
    let used: u32 = (0..pairs[0].len()).map(|piece| square(pairs.iter().map(|row| row[piece]).sum())).sum();
    (given, apart, served + used, mixes)
}

fn better(one: Worth, other: Worth) -> bool {
    (u32::MAX - one.0, one.1, one.2, one.3) < (u32::MAX - other.0, other.1, other.2, other.3)
}

/// The clash of two single pieces, written again from the words of the rule.
fn may_meet(rule: &Rule, one: &Piece, other: &Piece) -> bool {
    let pair = (one.print.paper(), other.print.paper());
    let has = |list: &[(Paper, Paper)]| list.contains(&pair) || list.contains(&(pair.1, pair.0));
    let differ = match rule.apart {
        Apart::Designs => pair.0 != pair.1,
        Apart::Faces => one.print != other.print,
        Apart::Anything => true,
    };
    differ
        && !has(&rule.never)
        && (rule.only.is_empty() || has(&rule.only))
        && !(rule.one_large && one.large && other.large)
        && !(rule.grounds_differ && one.ground.is_some() && one.ground == other.ground)
}

fn is_partner(rule: &Rule, one: &Piece, other: &Piece) -> bool {
    let pair = (one.print.paper(), other.print.paper());
    rule.partners.contains(&pair) || rule.partners.contains(&(pair.1, pair.0))
}

/// Every way to give each single card a single piece or none.
fn brute(all: &[Cards], companions: &[Companions], rule: &Rule) -> Worth {
    let single: Vec<usize> = all.iter().enumerate().flat_map(|(i, c)| vec![i; c.count as usize]).collect();
    let mut left: Vec<u32> = companions.iter().map(|c| c.count).collect();
    let mut pairs = vec![vec![0; companions.len()]; all.len()];
    let mut best = None;
    try_all(&single, &mut left, &mut pairs, &mut best, all, companions, rule);
    best.unwrap()
}

fn try_all(
    single: &[usize],
    left: &mut Vec<u32>,
    pairs: &mut Vec<Vec<u32>>,
    best: &mut Option<Worth>,
    all: &[Cards],
    companions: &[Companions],
    rule: &Rule,
) {
    let Some((&card, rest)) = single.split_first() else {
        let now = worth(pairs, |card, piece| is_partner(rule, &all[card].pieces[0], &companions[piece].piece));
        if best.is_none_or(|best| better(now, best)) {
            *best = Some(now);
        }
        return;
    };
    try_all(rest, left, pairs, best, all, companions, rule);
    for index in 0..companions.len() {
        let fits = all[card].takes[0] == companions[index].kind;
        let meets = all[card].pieces.iter().all(|piece| may_meet(rule, piece, &companions[index].piece));
        if left[index] > 0 && fits && meets {
            left[index] -= 1;
            pairs[card][index] += 1;
            try_all(rest, left, pairs, best, all, companions, rule);
            pairs[card][index] -= 1;
            left[index] += 1;
        }
    }
}

/// The same optimum by four linear programmes, one for each line of the cost.
fn programmes(all: &[Cards], companions: &[Companions], rule: &Rule) -> Worth {
    let goes = |card: usize, piece: usize| rule.refuses(&all[card], 0, &companions[piece]).is_none();
    let mut fixed: Vec<f64> = Vec::new();
    for line in 0..4 {
        let mut problem = Problem::new(OptimizationDirection::Minimize);
        // Columns with their part in each line of the cost.
        let mut columns: Vec<(Variable, [f64; 4])> = Vec::new();
        let mut add = |problem: &mut Problem, worth: [f64; 4]| {
            let column = problem.add_var(worth[line], (0.0, 1.0));
            columns.push((column, worth));
            column
        };
        let odd = |unit: u32| f64::from(2 * unit + 1);
        let mut rows: Vec<Vec<(Variable, f64)>> = Vec::new();
        let mut row_of_cards: Vec<Vec<(Variable, f64)>> = vec![Vec::new(); all.len()];
        let mut row_of_pieces: Vec<Vec<(Variable, f64)>> = vec![Vec::new(); companions.len()];
        for (index, class) in all.iter().enumerate() {
            for unit in 0..class.count {
                row_of_cards[index].push((add(&mut problem, [0.0, 0.0, odd(unit), 0.0]), -1.0));
            }
        }
        for (index, class) in companions.iter().enumerate() {
            for unit in 0..class.count {
                row_of_pieces[index].push((add(&mut problem, [0.0, 0.0, odd(unit), 0.0]), -1.0));
            }
        }
        for card in 0..all.len() {
            for piece in (0..companions.len()).filter(|&piece| goes(card, piece)) {
                let alone = f64::from(!is_partner(rule, &all[card].pieces[0], &companions[piece].piece));
                for unit in 0..all[card].count.min(companions[piece].count) {
                    let column = add(&mut problem, [-1.0, alone, 0.0, odd(unit)]);
                    row_of_cards[card].push((column, 1.0));
                    row_of_pieces[piece].push((column, 1.0));
                }
            }
        }
        rows.extend(row_of_cards.into_iter().chain(row_of_pieces).filter(|row| !row.is_empty()));
        for row in rows {
            problem.add_constraint(row, ComparisonOp::Eq, 0.0);
        }
        for (before, &value) in fixed.iter().enumerate() {
            let row: Vec<_> = columns.iter().map(|(column, worth)| (*column, worth[before])).collect();
            problem.add_constraint(row, ComparisonOp::Le, value + 1e-7);
        }
        let value = problem.solve().unwrap().into_solution().ok().unwrap().objective();
        assert!((value - value.round()).abs() < 1e-4, "line {line} is whole: {value}");
        fixed.push(value.round());
    }
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "small whole numbers")]
    let whole = |line: usize| fixed[line].abs() as u32;
    (whole(0), whole(1), whole(2), whole(3))
}

/// Everything a reader can recount: sums, clashes and shortages.
fn recount(all: &[Cards], companions: &[Companions], rule: &Rule, given: &Given) {
    for (index, row) in given.pairs.iter().enumerate() {
        assert_eq!(row.iter().sum::<u32>() + given.missing[index], all[index].count);
        for (piece, &count) in row.iter().enumerate() {
            let meets = all[index].pieces.iter().all(|one| may_meet(rule, one, &companions[piece].piece));
            assert!(count == 0 || (meets && all[index].takes[0] == companions[piece].kind), "no clash");
        }
    }
    for (piece, class) in companions.iter().enumerate() {
        assert_eq!(given.pairs.iter().map(|row| row[piece]).sum::<u32>() + given.left[piece], class.count);
    }
    let mut told = 0;
    let mut seen = vec![0; companions.len()];
    for shortage in &given.shortages {
        let goes = |piece: &Companions| {
            shortage.cards.iter().any(|&index| {
                let fits = all[index].takes[0] == piece.kind;
                fits && all[index].pieces.iter().all(|one| may_meet(rule, one, &piece.piece))
            })
        };
        let near: Vec<usize> = (0..companions.len()).filter(|&index| goes(&companions[index])).collect();
        assert_eq!(near, shortage.companions, "all pieces that go with these cards are counted");
        assert_eq!(shortage.needed, shortage.cards.iter().map(|&index| all[index].count).sum::<u32>());
        assert_eq!(shortage.there, near.iter().map(|&index| companions[index].count).sum::<u32>());
        assert!(shortage.there < shortage.needed, "really too few");
        near.iter().for_each(|&index| seen[index] += 1);
        for &(index, _) in &shortage.refused {
            assert!(given.left[index] > 0 && !near.contains(&index), "what is refused lies unused");
        }
        told += shortage.needed - shortage.there;
    }
    assert!(seen.iter().all(|&times| times <= 1), "no piece is counted twice");
    assert_eq!(told, given.missing.iter().sum::<u32>(), "the shortages explain every card that goes without");
}

fn a_piece() -> impl Strategy<Value = Piece> {
    (0..4_usize, any::<bool>(), any::<bool>(), prop::option::of(0..3_u32)).prop_map(|(design, back, large, ground)| {
        Piece { print: Print { pack: 0, design, side: if back { Side::Back } else { Side::Front } }, large, ground }
    })
}

fn a_rule() -> impl Strategy<Value = Rule> {
    let papers =
        |most| prop::collection::vec(((0..4_usize), (0..4_usize)).prop_map(|(a, b)| ((0, a), (0, b))), 0..most);
    let apart = prop_oneof![Just(Apart::Designs), Just(Apart::Faces), Just(Apart::Anything)];
    (papers(3), apart, any::<bool>(), any::<bool>(), prop_oneof![Just(Vec::new()), papers(9)], papers(3)).prop_map(
        |(partners, apart, one_large, grounds_differ, only, never)| Rule {
            partners,
            apart,
            one_large,
            grounds_differ,
            only,
            never,
        },
    )
}

fn some(classes: usize, most: u32) -> impl Strategy<Value = (Vec<Cards>, Vec<Companions>)> {
    let main = (a_piece(), prop_oneof![4 => Just(0_usize), 1 => Just(1)], 0..=most)
        .prop_map(|(piece, kind, count)| Cards { pieces: vec![piece], takes: vec![kind], count });
    let band = (a_piece(), prop_oneof![4 => Just(0_usize), 1 => Just(1)], 0..=most)
        .prop_map(|(piece, kind, count)| Companions { piece, kind, count });
    (prop::collection::vec(main, 1..=classes), prop::collection::vec(band, 1..=classes))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn small_cases_as_by_trying_every_way((all, companions) in some(3, 2), rule in a_rule()) {
        let given = give(&all, 0, &companions, &rule);
        recount(&all, &companions, &rule, &given);
        let ours = worth(&given.pairs, |card, piece| is_partner(&rule, &all[card].pieces[0], &companions[piece].piece));
        prop_assert_eq!(ours, brute(&all, &companions, &rule));
        prop_assert_eq!(given, give(&all, 0, &companions, &rule));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn medium_cases_as_by_linear_programmes((all, companions) in some(6, 7), rule in a_rule()) {
        let given = give(&all, 0, &companions, &rule);
        recount(&all, &companions, &rule, &given);
        let ours = worth(&given.pairs, |card, piece| is_partner(&rule, &all[card].pieces[0], &companions[piece].piece));
        prop_assert_eq!(ours, programmes(&all, &companions, &rule));
    }

    #[test]
    fn two_layers_never_clash_and_use_every_piece_once((mut all, companions) in some(4, 6), rule in a_rule()) {
        for (index, class) in all.iter_mut().enumerate() {
            class.takes.extend(std::iter::repeat_n(0, index % 3));
        }
        let (dealt, shortages) = give_all(&all, &companions, &rule);
        let mut used = vec![0; companions.len()];
        let mut made = vec![0; all.len()];
        let mut without = 0;
        for some in &dealt {
            made[some.cards] += some.count;
            prop_assert_eq!(some.companions.len(), all[some.cards].takes.len());
            let mut on_card = all[some.cards].pieces.clone();
            for (layer, chosen) in some.companions.iter().enumerate() {
                let Some(index) = *chosen else { without += some.count; continue };
                used[index] += some.count;
                prop_assert_eq!(companions[index].kind, all[some.cards].takes[layer]);
                prop_assert!(on_card.iter().all(|one| may_meet(&rule, one, &companions[index].piece)));
                on_card.push(companions[index].piece);
            }
        }
        prop_assert!(used.iter().zip(&companions).all(|(used, class)| *used <= class.count));
        prop_assert!(made.iter().zip(&all).all(|(made, class)| *made == class.count));
        let told: u32 = shortages.iter().map(|short| short.shortage.needed - short.shortage.there).sum();
        prop_assert_eq!(told, without);
    }

    #[test]
    fn kits_differ_by_one_at_most(counts in prop::collection::vec(0..40_u32, 1..8), number in 1..20_u32) {
        let shared = kits(&counts, number);
        prop_assert_eq!(shared.cards.len(), number as usize);
        let spread = |counts: &mut dyn Iterator<Item = u32>| {
            let all: Vec<u32> = counts.collect();
            (all.iter().sum::<u32>(), all.iter().max().unwrap() - all.iter().min().unwrap())
        };
        for (class, count) in counts.iter().enumerate() {
            let (sum, apart) = spread(&mut shared.cards.iter().map(|kit| kit[class]));
            prop_assert_eq!(sum, *count);
            prop_assert!(apart <= 1);
        }
        let (_, apart) = spread(&mut shared.cards.iter().map(|kit| kit.iter().sum()));
        prop_assert!(apart <= 1);
        prop_assert_eq!(shared.equal, counts.iter().all(|count| count.is_multiple_of(number)));
    }
}

#[test]
fn partners_come_first_and_the_rest_is_even() {
    // Six prints, 16 cards each, three pairs of partners: as by hand, every card has its partner.
    let all: Vec<Cards> = (0..6).map(|design| cards(design, 16)).collect();
    let there: Vec<Companions> = (0..6).map(|design| bands(design, 16)).collect();
    let partners = vec![((0, 0), (0, 2)), ((0, 1), (0, 5)), ((0, 3), (0, 4))];
    let given = give(&all, 0, &there, &Rule { partners, ..Rule::default() });
    for (card, partner) in [(0, 2), (1, 5), (2, 0), (3, 4), (4, 3), (5, 1)] {
        assert_eq!(given.pairs[card][partner], 16);
    }
    // Without partners, five other prints share the 16 cards: 3 or 4 each.
    let given = give(&all, 0, &there, &Rule::default());
    for (card, row) in given.pairs.iter().enumerate() {
        let others = row.iter().enumerate().filter(|&(piece, _)| piece != card);
        assert!(others.clone().all(|(_, count)| (3..=4).contains(count)), "{row:?}");
        assert_eq!(row[card], 0);
    }
}

#[test]
fn a_shortage_is_told_with_its_cards() {
    // Three prints of 8 cards go with one print of 20 bands only; 24 are needed.
    let all: Vec<Cards> = (0..4).map(|design| cards(design, 8)).collect();
    let there = [bands(3, 20), bands(0, 8)];
    let only = vec![((0, 0), (0, 3)), ((0, 1), (0, 3)), ((0, 2), (0, 3))];
    let given = give(&all, 0, &there, &Rule { only, ..Rule::default() });
    assert_eq!(given.shortages.len(), 1);
    let short = &given.shortages[0];
    assert_eq!((&short.cards[..], short.needed, short.there), (&[0, 1, 2][..], 24, 20));
    assert_eq!(given.pairs[3], [0, 8]);
    assert!(given.missing[..3].iter().all(|&missing| missing == 1 || missing == 2), "{:?}", given.missing);
}

#[test]
fn an_uneven_share_has_its_reason() {
    let shown = |design, cards, there| Shown { recipe: 0, layer: 1, print: print(design), cards, there };
    let even = evenness(&[shown(0, 8, 9), shown(1, 7, 7)]);
    assert_eq!((even[0].most, even[0].fewest, even[0].reason), ((print(0), 8), (print(1), 7), None));
    let short = evenness(&[shown(0, 8, 9), shown(1, 4, 4)]);
    assert_eq!(short[0].reason, Some(Uneven::AllUsed));
    let ruled = evenness(&[shown(0, 8, 8), shown(1, 4, 4), shown(2, 4, 8)]);
    assert_eq!((ruled[0].fewest, ruled[0].reason), ((print(2), 4), Some(Uneven::Rule)));
}

#[test]
fn sixteen_kits_of_six_prints_are_alike_and_a_rest_goes_round() {
    // job of the demo: 16 cards of each of six prints, 16 kits: one of each in every kit.
    let shared = kits(&[16; 6], 16);
    assert!(shared.equal && shared.cards.iter().all(|kit| kit == &[1; 6]));
    // 16 cards of each of six prints for 12 kits: 8 a kit, and every pair of neighbours can swap.
    let shared = kits(&[16; 6], 12);
    assert!(!shared.equal && shared.cards.iter().all(|kit| kit.iter().sum::<u32>() == 8));
    assert_eq!(shared.swaps, 12, "{:?}", shared.cards);
}
