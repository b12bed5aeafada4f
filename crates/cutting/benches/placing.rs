//! How long it takes to choose the order of a layout of 16 pieces on a sheet in marks of 1/8 in over six prints, exactly, against
//! walking all its orders (`every_order`, which only counts what one print's pictures come to).

use cutting::placing::{Area, Ask, Motif, Placing, Print, place};
use cutting::{Axis, Budget, Tree};

fn main() {
    divan::main();
}

const SIDES: [u32; 4] = [36, 36, 12, 12];

fn layout() -> Tree {
    let piece = |height| Tree::Piece { kind: usize::from(height == 12), width: 24, height, turned: false };
    let cut = |axis, at, first, second| Tree::Cut { axis, at, first: Box::new(first), second: Box::new(second) };
    let column = || {
        let two = cut(Axis::Y, 12, piece(12), piece(12));
        cut(Axis::Y, 36, piece(36), cut(Axis::Y, 36, piece(36), two))
    };
    cut(Axis::X, 24, column(), cut(Axis::X, 24, column(), cut(Axis::X, 24, column(), column())))
}

fn prints() -> Vec<Print> {
    let spot = |print: u32, at: u32| {
        let (left, top) = ((at * 37 + print * 11) % 84, (at * 53 + print * 29) % 84);
        Motif { area: Area { left, top, right: left + 12, bottom: top + 12 }, weight: 500 }
    };
    let of = |print: u32| Print {
        weights: (0..96 * 96).map(|cell| cell * 7919 % 1000).collect(),
        motifs: (0..40).map(|at| spot(print, at)).collect(),
        times: 4,
        ..Print::default()
    };
    (0..6).map(of).collect()
}

#[divan::bench(sample_count = 20)]
fn exact(bencher: divan::Bencher<'_, '_>) {
    let (tree, prints) = (layout(), prints());
    bencher.bench(|| -> Placing {
        let ask = Ask { tree: &tree, width: 96, height: 96, prints: &prints, covers: &[], stops: None };
        place(&ask, &mut Budget::nodes(1_000_000)).expect("the bench asks proper questions")
    });
}

/// Six orders a column, four columns: 1296 orders, by hand.
#[divan::bench(sample_count = 20)]
fn every_order(bencher: divan::Bencher<'_, '_>) {
    let prints = prints();
    let orders: Vec<Vec<u32>> = (0..4_usize)
        .flat_map(|one| (one + 1..4).map(move |other| (one, other)))
        .map(|(one, other)| {
            let mut order = vec![SIDES[2]; 4];
            (order[one], order[other]) = (SIDES[0], SIDES[0]);
            order
        })
        .collect();
    bencher.bench(|| {
        let mut best = 0_u64;
        for choice in 0..orders.len().pow(4) {
            let mut sum = 0_u64;
            for print in &prints {
                for motif in &print.motifs {
                    let column = motif.area.left / 24;
                    let order = &orders[choice / orders.len().pow(column) % orders.len()];
                    let mut top = 0;
                    for height in order {
                        let inside = motif.area.top >= top && motif.area.bottom <= top + height;
                        sum += u64::from(inside && motif.area.right <= (column + 1) * 24) * u64::from(motif.weight);
                        top += height;
                    }
                }
            }
            best = best.max(sum);
        }
        best
    });
}
