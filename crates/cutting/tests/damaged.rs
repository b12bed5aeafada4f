//! Damaged step lists and trees: each is refused with the error that names its damage.
#![allow(clippy::unwrap_used, reason = "tests")]

use cutting::replay::{ReplayError, check, replay};
use cutting::steps::{Caution, CutPlan, CutStep, Fate, Fold, Job, Limits, Part, PartId, Rect, ScoreStep, Step};
use cutting::steps::{Trims, Turn, Up, steps};
use cutting::tree::{Axis, Placed, Tree, TreeError, pieces};
use cutting::verify::{Demand, Fault, Kind, Pin, verify};

const FOLD: Fold = Fold { kind: 0, axis: Axis::X, at: 5 };

fn piece(width: u32, height: u32) -> Tree {
    Tree::Piece { kind: 0, width, height, turned: false }
}

fn cut(axis: Axis, at: u32, first: Tree, second: Tree) -> Tree {
    Tree::Cut { axis, at, first: Box::new(first), second: Box::new(second) }
}

/// Two columns of 12, each cut into 18 and 6.
fn pad() -> Tree {
    let column = || cut(Axis::Y, 18, piece(12, 18), piece(12, 6));
    cut(Axis::X, 12, column(), column())
}

/// Two columns of 8 and 16, whose top parts of 10 are both cut at 4.
fn uneven() -> Tree {
    let column = |w| cut(Axis::Y, 10, cut(Axis::X, 4, piece(4, 10), piece(w - 4, 10)), piece(w, 14));
    cut(Axis::X, 8, column(8), column(16))
}

fn plan(tree: &Tree, folds: &[Fold]) -> CutPlan {
    let limits = Limits { longest_cut: 60, smallest_strip: 2, stack: 2 };
    let job = Job { tree, width: 24, height: 24, trims: Trims::default(), sheets: 2, limits, folds };
    steps(&job).unwrap()
}

fn cut_step(plan: &mut CutPlan, at: usize) -> &mut CutStep {
    match &mut plan.steps[at] {
        Step::Cut(step) => step,
        Step::Score(_) => panic!("step {at} scores"),
    }
}

/// The step that scores: the pad has two cut steps before it.
fn score_step(plan: &mut CutPlan) -> &mut ScoreStep {
    match &mut plan.steps[2] {
        Step::Score(step) => step,
        Step::Cut(_) => panic!("step 2 cuts"),
    }
}

type Damage = (&'static str, fn(&mut CutPlan), ReplayError);

fn refuse(damages: Vec<Damage>) {
    let sound = plan(&pad(), &[FOLD]);
    check(&sound, &pieces(&pad(), 24, 24).unwrap()).unwrap();
    for (name, damage, error) in damages {
        let mut plan = sound.clone();
        damage(&mut plan);
        assert_eq!(replay(&plan), Err(error), "{name}");
    }
}

#[test]
fn lists_of_parts_that_are_damaged_are_refused() {
    let rect = Rect { x: 0, y: 0, width: 12, height: 24 };
    refuse(vec![
        ("no sheets", |p| p.sheets = 0, ReplayError::NoSheet),
        ("a flat sheet", |p| p.sheet.0 = 0, ReplayError::NoSheet),
        ("no parts", |p| p.parts.clear(), ReplayError::NoSheet),
        ("an id elsewhere", |p| p.parts[1].id = PartId(5), ReplayError::PartOutOfPlace(PartId(5))),
        ("a part moved", |p| p.parts[1].rect.x = 1, ReplayError::WrongPlace { step: 0, part: PartId(1), rect }),
        (
            "a part turned",
            |p| p.parts[1].up = Up::Left,
            ReplayError::WrongUp { step: 0, part: PartId(1), up: Up::Away },
        ),
        (
            "a part to be cut called waste",
            |p| p.parts[1].fate = Fate::Waste,
            ReplayError::CutsFinished { step: 1, part: PartId(1) },
        ),
        ("a piece called waste", |p| p.parts[3].fate = Fate::Waste, ReplayError::Labels { step: 1 }),
        (
            "a number given twice",
            |p| p.parts[3].fate = Fate::Piece { kind: 0, turned: false, number: 2 },
            ReplayError::Number { number: 1 },
        ),
        (
            "a part that comes from nowhere",
            |p| p.parts.push(Part { id: PartId(7), ..p.parts[6] }),
            ReplayError::NeverComes { part: PartId(7) },
        ),
        ("a part missing", |p| p.parts.truncate(6), ReplayError::UnknownPart { step: 1, part: PartId(6) }),
    ]);
}

#[test]
fn cuts_that_are_damaged_are_refused() {
    let (first, second) = (PartId(0), PartId(1));
    refuse(vec![
        (
            "an unknown part",
            |p| cut_step(p, 0).work[0].part = PartId(99),
            ReplayError::UnknownPart { step: 0, part: PartId(99) },
        ),
        (
            "a part not in hand",
            |p| cut_step(p, 0).work[0].part = PartId(1),
            ReplayError::NotYet { step: 0, part: second },
        ),
        (
            "a part cut before",
            |p| cut_step(p, 1).work[0].part = PartId(0),
            ReplayError::UsedTwice { step: 1, part: first },
        ),
        (
            "a part that comes twice",
            |p| cut_step(p, 1).work[0].rest = PartId(3),
            ReplayError::ComesTwice { step: 1, part: PartId(3) },
        ),
        ("a step without cuts", |p| cut_step(p, 0).cuts = 0, ReplayError::Idle { step: 0 }),
        ("a step without parts", |p| cut_step(p, 1).work.clear(), ReplayError::Idle { step: 1 }),
        ("a setting of nought", |p| cut_step(p, 0).setting = 0, ReplayError::NoSetting { step: 0 }),
        (
            "a setting as large as the part",
            |p| cut_step(p, 0).setting = 24,
            ReplayError::SettingTooLarge { step: 0, part: first, side: 24, setting: 24 },
        ),
        (
            "a setting that is off by one",
            |p| cut_step(p, 0).setting = 11,
            ReplayError::WrongPlace { step: 0, part: second, rect: Rect { x: 0, y: 0, width: 11, height: 24 } },
        ),
        (
            "more cuts than pieces",
            |p| cut_step(p, 0).cuts = 2,
            ReplayError::CutCount { step: 0, part: first, cuts: 2, off: 1 },
        ),
        ("the wrong turn", |p| cut_step(p, 0).turn = Turn::Half, ReplayError::WrongTurn { step: 0, part: first }),
        ("a stop that jumps", |p| cut_step(p, 1).stop = 2, ReplayError::StopCount { step: 1, stop: 2 }),
        ("too many layers", |p| cut_step(p, 0).layers = 3, ReplayError::StackOverLimit { step: 0, layers: 3, most: 2 }),
        ("no layers", |p| cut_step(p, 0).layers = 0, ReplayError::StackOverLimit { step: 0, layers: 0, most: 2 }),
        ("strokes miscounted", |p| cut_step(p, 0).strokes = 5, ReplayError::Strokes { step: 0, said: 5, strokes: 1 }),
        ("a label missing", |p| cut_step(p, 1).finished.truncate(3), ReplayError::Labels { step: 1 }),
        ("a cut after scoring", |p| p.steps.push(p.steps[1].clone()), ReplayError::CutAfterScore { step: 3 }),
        ("the last steps missing", |p| p.steps.truncate(1), ReplayError::MissingCut { part: second }),
        ("no steps", |p| p.steps.clear(), ReplayError::MissingCut { part: first }),
    ]);
}

#[test]
fn cautions_that_are_missing_or_misplaced_are_refused() {
    refuse(vec![
        (
            "a long cut not named",
            |p| p.limits.longest_cut = 20,
            ReplayError::Caution { step: 0, caution: Caution::LongCut { length: 24 } },
        ),
        (
            "a narrow strip not named",
            |p| p.limits.smallest_strip = 13,
            ReplayError::Caution { step: 0, caution: Caution::NarrowStrip { held: 12 } },
        ),
        (
            "a narrow rest not named",
            |p| p.limits.smallest_strip = 7,
            ReplayError::Caution { step: 1, caution: Caution::NarrowRest { rest: 6 } },
        ),
        (
            "a caution without a danger",
            |p| cut_step(p, 0).cautions.push(Caution::NarrowRest { rest: 1 }),
            ReplayError::Caution { step: 0, caution: Caution::NarrowRest { rest: 1 } },
        ),
    ]);
}

#[test]
fn scores_that_are_damaged_are_refused() {
    let part = PartId(3);
    refuse(vec![
        ("a score of nothing", |p| score_step(p).parts.clear(), ReplayError::Idle { step: 2 }),
        (
            "a score of a part that is gone",
            |p| score_step(p).parts[0] = PartId(0),
            ReplayError::NotYet { step: 2, part: PartId(0) },
        ),
        ("a fold at the edge", |p| score_step(p).fold.at = 12, ReplayError::WrongFold { step: 2, part }),
        ("a fold of another kind", |p| score_step(p).fold.kind = 1, ReplayError::WrongFold { step: 2, part }),
        ("a fold nobody asked for", |p| p.folds.clear(), ReplayError::WrongFold { step: 2, part }),
        ("lines miscounted", |p| score_step(p).strokes = 3, ReplayError::Strokes { step: 2, said: 3, strokes: 8 }),
        (
            "a fold missing",
            |p| {
                score_step(p).parts.pop();
                score_step(p).strokes = 6;
            },
            ReplayError::FoldCount { part: PartId(6), fold: FOLD, times: 0 },
        ),
        (
            "a fold pressed twice",
            |p| {
                score_step(p).parts.push(PartId(3));
                score_step(p).strokes = 10;
            },
            ReplayError::FoldCount { part, fold: FOLD, times: 2 },
        ),
    ]);
}

#[test]
fn parts_of_different_length_in_one_step_are_refused() {
    let mut plan = plan(&uneven(), &[]);
    replay(&plan).unwrap();
    let at_four = |step: &Step| matches!(step, Step::Cut(cut) if cut.setting == 4);
    let at: Vec<usize> = (0..plan.steps.len()).filter(|&at| at_four(&plan.steps[at])).collect();
    assert_eq!(at.len(), 2, "parts of 8 and 16 are cut in two steps");
    let work = cut_step(&mut plan, at[1]).work.clone();
    let part = work[0].part;
    cut_step(&mut plan, at[0]).work.extend(work);
    assert_eq!(replay(&plan), Err(ReplayError::Unequal { step: at[0], part }));
}

#[test]
fn pieces_that_were_not_promised_or_do_not_come_are_refused() {
    let (plan, promised) = (plan(&pad(), &[]), pieces(&pad(), 24, 24).unwrap());
    let moved = Placed { x: 1, ..promised[0] };
    let with = |first: Placed| [&[first], &promised[1..]].concat();
    assert_eq!(check(&plan, &with(moved)), Err(ReplayError::MissingPiece(moved)));
    let turned = Placed { turned: true, ..promised[0] };
    assert_eq!(check(&plan, &with(turned)), Err(ReplayError::MissingPiece(turned)));
    let other = Placed { kind: 1, ..promised[0] };
    assert_eq!(check(&plan, &with(other)), Err(ReplayError::MissingPiece(other)));
    assert_eq!(check(&plan, &promised[1..]), Err(ReplayError::ExtraPiece(promised[0])));
}

fn demand() -> Demand {
    let kind = Kind { width: 10..=14, height: 6..=18, step: 2, turn: false, uniform: false, count: 4..=4 };
    Demand { kinds: vec![kind], pins: vec![] }
}

fn faults(tree: &Tree, demand: &Demand) -> Vec<Fault> {
    verify(tree, 24, 24, demand).unwrap_err()
}

/// The pad with its first piece replaced.
fn with(first: Tree) -> Tree {
    let column = |top: Tree| cut(Axis::Y, 18, top, piece(12, 6));
    cut(Axis::X, 12, column(first), column(piece(12, 18)))
}

#[test]
fn trees_that_do_not_fit_their_sheet_are_refused() {
    verify(&pad(), 24, 24, &demand()).unwrap();
    assert_eq!(verify(&pad(), 0, 24, &demand()).unwrap_err(), [Fault::EmptySheet]);
    for at in [0, 24, 30] {
        let tree = cut(Axis::X, at, pad(), Tree::Waste);
        let fault = Fault::CutOutside { axis: Axis::X, at, side: 24 };
        assert!(faults(&tree, &demand()).contains(&fault), "a cut at {at}");
        assert_eq!(pieces(&tree, 24, 24), Err(TreeError::CutOutside { axis: Axis::X, at, side: 24 }));
    }
    let small = Placed { kind: 0, x: 0, y: 0, width: 10, height: 18, turned: false };
    let found = faults(&with(piece(10, 18)), &demand());
    assert!(found.contains(&Fault::Misfit { piece: small, width: 12, height: 18 }));
    assert!(found.contains(&Fault::Area { covered: 576 - 36, sheet: 576 }));
    assert_eq!(pieces(&with(piece(10, 18)), 24, 24), Err(TreeError::Misfit { piece: small, width: 12, height: 18 }));

    let large = Placed { width: 30, ..small };
    let found = faults(&with(piece(30, 18)), &demand());
    assert!(found.contains(&Fault::OffSheet(large)));
    assert!(found.contains(&Fault::Overlap { first: large, second: Placed { x: 12, width: 12, ..small } }));
}

#[test]
fn trees_of_other_pieces_than_were_asked_for_are_refused() {
    let first = Placed { kind: 0, x: 0, y: 0, width: 12, height: 18, turned: false };
    let unknown = Tree::Piece { kind: 7, width: 12, height: 18, turned: false };
    assert!(faults(&with(unknown), &demand()).contains(&Fault::UnknownKind(Placed { kind: 7, ..first })));
    let turned = Tree::Piece { kind: 0, width: 12, height: 18, turned: true };
    assert_eq!(faults(&with(turned), &demand()), [Fault::Turned(Placed { turned: true, ..first })]);
    assert_eq!(faults(&with(Tree::Waste), &demand()), [Fault::Count { kind: 0, found: 3 }]);

    let mut narrow = demand();
    narrow.kinds[0].height = 6..=16;
    assert!(faults(&pad(), &narrow).contains(&Fault::OutOfRange(first)));
    let mut coarse = demand();
    coarse.kinds[0].step = 5;
    assert!(faults(&pad(), &coarse).contains(&Fault::OffStep(first)));
    let mut uniform = demand();
    uniform.kinds[0].uniform = true;
    let second = Placed { y: 18, height: 6, ..first };
    assert_eq!(faults(&pad(), &uniform), [Fault::Uneven { first, second }]);
    for count in [0..=3, 5..=9] {
        let mut other = demand();
        other.kinds[0].count = count;
        assert_eq!(faults(&pad(), &other), [Fault::Count { kind: 0, found: 4 }]);
    }
}

#[test]
fn pins_without_a_piece_of_their_own_are_refused() {
    let pin = Pin { kind: 0, x: Some(1), y: None, width: None, height: None };
    let with = |pins: Vec<Pin>| Demand { pins, ..demand() };
    assert_eq!(faults(&pad(), &with(vec![pin])), [Fault::Unpinned(pin)]);
    let pin = Pin { x: Some(0), y: Some(0), ..pin };
    verify(&pad(), 24, 24, &with(vec![pin])).unwrap();
    // One piece does not do for two pins.
    assert_eq!(faults(&pad(), &with(vec![pin, pin])), [Fault::Unpinned(pin)]);
}
