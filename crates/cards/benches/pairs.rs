//! How long it takes to give out the pieces of 5 000 cards, with partners and without.

use cards::model::Side;
use cards::pairs::{Apart, Cards, Companions, Piece, Print, Rule, give_all};

fn main() {
    divan::main();
}

fn piece(design: usize, side: Side) -> Piece {
    Piece { print: Print { pack: 0, design, side }, large: design.is_multiple_of(3), ground: None }
}

/// So many cards of so many designs, a band and a tile on each.
fn ask(cards: u32, designs: u32) -> (Vec<Cards>, Vec<Companions>) {
    let count = cards / designs;
    let of = |design: u32| piece(design as usize, if design.is_multiple_of(4) { Side::Back } else { Side::Front });
    let mains = (0..designs).map(|design| Cards { pieces: vec![of(design)], takes: vec![0, 1], count });
    let companions = |kind| (0..designs).map(move |design| Companions { piece: of(design), kind, count });
    (mains.collect(), companions(0).chain(companions(1)).collect())
}

#[divan::bench(args = [6, 24, 48], sample_count = 5, sample_size = 1)]
fn five_thousand_cards(bencher: divan::Bencher<'_, '_>, designs: u32) {
    let (cards, companions) = ask(5_000, designs);
    let rule = Rule { apart: Apart::Designs, one_large: true, ..Rule::default() };
    bencher.bench(|| give_all(&cards, &companions, &rule));
}

#[divan::bench(args = [6, 24], sample_count = 5, sample_size = 1)]
fn five_thousand_cards_of_partners(bencher: divan::Bencher<'_, '_>, designs: u32) {
    let (cards, companions) = ask(5_000, designs);
    let partners = (0..designs as usize / 2).map(|pair| ((0, 2 * pair), (0, 2 * pair + 1))).collect();
    let rule = Rule { partners, ..Rule::default() };
    bencher.bench(|| give_all(&cards, &companions, &rule));
}
