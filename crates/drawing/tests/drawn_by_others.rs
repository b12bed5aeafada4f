//! Source: `resvg`, which draws our SVG by the SVG standard. Our own PNG of the same scene must show the same.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "tests")]

#[path = "common/drive.rs"]
mod drive;

use std::sync::Arc;

use cards::model::Side;
use cutting::Budget;
use drawing::sheets::{Faces, Paper, card_picture, handout, sheet_drawing};
use drawing::text::Face;
use drawing::{Picture, Scene, png, prints, svg};
use image::RgbImage;
use measure::Length;
use resvg::{tiny_skia, usvg};

const PER_INCH: u32 = 100;

/// What `resvg` makes of the scene's SVG, on white.
fn by_others(scene: &Scene, size: (u32, u32)) -> RgbImage {
    let mut fonts = usvg::fontdb::Database::new();
    Face::ALL.iter().for_each(|face| fonts.load_font_data(face.bytes().to_vec()));
    let options = usvg::Options { fontdb: Arc::new(fonts), ..usvg::Options::default() };
    let tree = usvg::Tree::from_str(&svg::write(scene), &options).unwrap();
    let mut canvas = tiny_skia::Pixmap::new(size.0, size.1).unwrap();
    canvas.fill(tiny_skia::Color::WHITE);
    #[allow(clippy::cast_precision_loss, reason = "a few hundred")]
    let scale = (size.0 as f32 / tree.size().width(), size.1 as f32 / tree.size().height());
    resvg::render(&tree, tiny_skia::Transform::from_scale(scale.0, scale.1), &mut canvas.as_mut());
    let rgb = canvas.data().chunks_exact(4).flat_map(|pixel| [pixel[0], pixel[1], pixel[2]]).collect();
    RgbImage::from_raw(size.0, size.1, rgb).unwrap()
}

/// Mean difference of a channel: over all, and in the tile of 10 × 10 pixels where it is largest.
fn differences(a: &RgbImage, b: &RgbImage) -> (f64, f64) {
    let (mut all, mut worst) = (0.0, 0.0_f64);
    let (across, down) = (a.width() / 10, a.height() / 10);
    for tile in 0..across * down {
        let (left, top) = (tile % across * 10, tile / across * 10);
        let at = (0..100).map(|index| (left + index % 10, top + index / 10));
        let sum: u32 = at
            .flat_map(|(x, y)| a.get_pixel(x, y).0.into_iter().zip(b.get_pixel(x, y).0))
            .map(|(a, b)| u32::from(a.abs_diff(b)))
            .sum();
        all += f64::from(sum) / 300.0;
        worst = worst.max(f64::from(sum) / 300.0);
    }
    (all / f64::from(across * down), worst)
}

#[test]
fn our_pixels_are_those_of_our_svg_drawn_by_resvg() {
    let plan = cards::plan::plan(&drive::crowded(), &mut Budget::nodes(200_000));
    let sheet = plan.project.packs[0].sheet;
    let drawn = prints::draw("quince-branch", sheet, 60, 1).unwrap();
    let print = Picture::new(drawn.width_px, drawn.height_px, Arc::from(drawn.rgb)).unwrap();
    let faces: Faces = (0..6).map(|design| ((0, design, Side::Front), print.clone())).collect();
    let mut scenes = handout(&plan, &faces, Paper::Letter);
    scenes.push(card_picture(&plan, &faces, &plan.cards[0], Length::INCH * 3));
    scenes.push(sheet_drawing(&plan, &faces, 0, drive::size("9 x 9")).unwrap());
    for (number, scene) in (1..).zip(&scenes) {
        let ours = image::load_from_memory(&png::write(scene, PER_INCH).unwrap()).unwrap().into_rgb8();
        let theirs = by_others(scene, ours.dimensions());
        let (all, worst) = differences(&ours, &theirs);
        // Words and lines differ by 0.01; pictures are JPEG in the SVG and are made smaller another way.
        assert!(all < 3.0 && worst < 20.0, "scene {number}: {all:.2} over all, {worst:.1} in a tile");
        if number == 1 {
            let (all, _) = differences(&ours, &RgbImage::from_pixel(ours.width(), ours.height(), image::Rgb([255; 3])));
            assert!(all > 20.0, "a white page would be told: {all:.1}");
        }
    }
}
