//! How long the pages and pictures of a card drive take, from its plan on: 48 cards, six printed faces.

#[path = "../tests/common/drive.rs"]
mod drive;

use std::sync::{Arc, LazyLock};

use cards::Plan;
use cards::model::{Look, Side};
use cutting::Budget;
use drawing::sheets::{Faces, Paper, card_picture, handout, sheet_drawing};
use drawing::{Picture, Scene, pdf, png, prints, svg};
use measure::Length;

fn main() {
    divan::main();
}

static PLAN: LazyLock<Plan> = LazyLock::new(|| cards::plan::plan(&drive::project(), &mut Budget::nodes(200_000)));

static FACES: LazyLock<Faces> = LazyLock::new(|| {
    let pack = &PLAN.project.packs[0];
    let mut faces = Faces::new();
    for (index, design) in pack.designs.iter().enumerate() {
        for (side, face) in [(Side::Front, &design.front), (Side::Back, &design.back)] {
            if let Look::Drawn(name) = &face.look {
                let drawn = prints::draw(name, pack.sheet, 100, 1).expect("a print of that name");
                let picture = Picture::new(drawn.width_px, drawn.height_px, Arc::from(drawn.rgb));
                faces.insert((0, index, side), picture.expect("as many pixels as it says"));
            }
        }
    }
    faces
});

fn sheet() -> Scene {
    sheet_drawing(&PLAN, &FACES, 0, drive::size("9 x 9")).expect("the plan has a layout")
}

/// The plan's pages as scenes.
#[divan::bench(sample_count = 10, sample_size = 1)]
fn scenes(bencher: divan::Bencher<'_, '_>) {
    LazyLock::force(&FACES);
    bencher.bench(|| handout(&PLAN, &FACES, Paper::Letter));
}

/// The scenes as a PDF. Made anew each time, because a picture keeps its JPEG copy.
#[divan::bench(sample_count = 10, sample_size = 1)]
fn write_pdf(bencher: divan::Bencher<'_, '_>) {
    let scenes = || handout(&PLAN, &FACES, Paper::Letter);
    bencher
        .with_inputs(scenes)
        .bench_values(|scenes| pdf::write(&scenes, &pdf::About { title: "Bench".to_owned(), ..pdf::About::default() }));
}

#[divan::bench(sample_count = 10, sample_size = 1)]
fn sheet_as_svg(bencher: divan::Bencher<'_, '_>) {
    bencher.with_inputs(sheet).bench_values(|scene| svg::write(&scene));
}

#[divan::bench(sample_count = 10, sample_size = 1)]
fn sheet_as_png(bencher: divan::Bencher<'_, '_>) {
    bencher.with_inputs(sheet).bench_values(|scene| png::write(&scene, 100));
}

#[divan::bench(sample_count = 10, sample_size = 1)]
fn card_as_png(bencher: divan::Bencher<'_, '_>) {
    let scene = || card_picture(&PLAN, &FACES, &PLAN.cards[0], Length::INCH * 3);
    bencher.with_inputs(scene).bench_values(|scene| png::write(&scene, 100));
}
