//! Source: numpy's `linalg.lstsq` (BSD), run by `data/reference_numpy.py` on patches drawn from a seed; the rest on pictures
//! drawn here, whose colours are known.
#![allow(clippy::unwrap_used, clippy::cast_precision_loss, reason = "tests")]

use color::{Lab, LinearRgb, Srgb, ciede2000};
use photo::reference::{Patch, Reference, Spoilt, Way, Why};
use photo::{Point, Raster};
use rand::{Rng, SeedableRng};

fn light(of: &[f64]) -> LinearRgb {
    LinearRgb { r: of[0], g: of[1], b: of[2] }
}

#[test]
fn least_squares_are_numpys() {
    let mut cases = 0;
    for row in include_str!("data/reference.csv").lines().filter(|line| !line.starts_with('#')) {
        let numbers: Vec<f64> = row.split(',').map(|cell| cell.parse().unwrap()).collect();
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a small count")]
        let n = numbers[0] as usize;
        let (seen, rest) = numbers[1..].split_at(3 * n);
        let (real, wanted) = rest.split_at(3 * n);
        let pairs: Vec<_> = seen.chunks(3).zip(real.chunks(3)).map(|(seen, real)| (light(seen), light(real))).collect();
        let near = |one: f64, other: f64| assert!((one - other).abs() < 1e-9, "{one} {other}");
        let (gains, offset, matrix) = (Way::Gains.fit(&pairs), Way::Offset.fit(&pairs), Way::Matrix.fit(&pairs));
        let (gains, offset, matrix) = (gains.unwrap(), offset.unwrap(), matrix.unwrap());
        for channel in 0..3 {
            near(gains[channel][channel], wanted[channel]);
            near(offset[channel][channel], wanted[3 + 2 * channel]);
            near(offset[channel][3], wanted[4 + 2 * channel]);
            for column in 0..3 {
                near(matrix[channel][column], wanted[9 + 3 * channel + column]);
            }
        }
        cases += 1;
    }
    assert_eq!(cases, 40);
}

/// Side of a patch in the drawn pictures.
const SIDE: usize = 20;

/// Six by five squares of paper colours, as they are.
fn papers() -> Vec<Srgb> {
    let greys = [40, 85, 130, 175, 215].map(|level| Srgb::new(level, level, level));
    let mut random = rand_chacha::ChaCha8Rng::seed_from_u64(6);
    let others = (0..25).map(|_| {
        let mut level = || random.random_range(45..=215);
        Srgb::new(level(), level(), level())
    });
    greys.into_iter().chain(others).collect()
}

/// The squares as a camera sees them, with noise of some levels.
fn seen(papers: &[Srgb], camera: impl Fn(LinearRgb) -> LinearRgb, noise: i16) -> Raster {
    let mut random = rand_chacha::ChaCha8Rng::seed_from_u64(7);
    let (w, h) = (6 * SIDE, 5 * SIDE);
    let mut rgb = Vec::new();
    for at in 0..w * h {
        let of = camera(papers[at / w / SIDE * 6 + at % w / SIDE].linear()).srgb();
        for level in [of.r, of.g, of.b] {
            let level = i16::from(level) + random.random_range(-noise..=noise);
            rgb.push(u8::try_from(level.clamp(0, 255)).unwrap());
        }
    }
    Raster::new(w, h, rgb).unwrap()
}

fn patch(number: usize, real: Srgb) -> Patch {
    let middle = |at: usize| (at * SIDE + SIDE / 2) as f64;
    Patch { at: Point::new(middle(number % 6), middle(number / 6)), half: 7.0, real: real.linear() }
}

/// A lamp's colour, channels that mix, stray light.
fn kitchen(light: LinearRgb) -> LinearRgb {
    let LinearRgb { r, g, b } = light;
    LinearRgb {
        r: 1.05 * r + 0.08 * g + 0.02 * b + 0.005,
        g: 0.06 * r + 0.78 * g + 0.05 * b + 0.004,
        b: 0.01 * r + 0.10 * g + 0.52 * b + 0.003,
    }
}

/// Mean ΔE₀₀ of the squares from a number on that no reference was.
fn off(papers: &[Srgb], picture: &Raster, from: usize) -> f64 {
    let one = |number: usize| {
        let (x, y) = (number % 6 * SIDE + 3, number / 6 * SIDE + 3);
        let mut sum = [0.0; 3];
        for at in 0..196 {
            let [r, g, b] = picture.pixel(x + at % 14, y + at / 14);
            let of = Srgb::new(r, g, b).linear();
            sum = [sum[0] + of.r / 196.0, sum[1] + of.g / 196.0, sum[2] + of.b / 196.0];
        }
        ciede2000(Lab::of(papers[number]), Lab::of_light(light(&sum)))
    };
    (from..papers.len()).map(one).sum::<f64>() / (papers.len() - from) as f64
}

#[test]
fn a_cast_is_undone_on_colors_that_were_no_references() {
    let papers = papers();
    let photo = seen(&papers, kitchen, 3);
    let with = |count: usize| {
        let patches: Vec<Patch> = (0..count).map(|number| patch(number, papers[number])).collect();
        let fitted = Reference::fitted(&photo, &patches).unwrap();
        (fitted.way(), off(&papers, &fitted.applied(&photo), 14), fitted)
    };
    let before = off(&papers, &photo, 14);
    let (gains, one, _) = with(1);
    let (_, five, _) = with(5);
    let (matrix, many, fitted) = with(14);
    assert_eq!((gains, matrix), (Way::Gains, Way::Matrix));
    assert!(before > 8.0 && five < before * 0.6 && many < 1.5, "{before:.2} {one:.2} {five:.2} {many:.2}");
    assert!(fitted.mean().before > 8.0 && fitted.mean().after < 1.5 && fitted.suspect().is_none());
    assert_eq!(fitted.off().len(), 14);
}

#[test]
fn patches_that_are_right_already_change_nothing() {
    let papers = papers();
    let photo = seen(&papers, |light| light, 0);
    for count in [1, 2, 3, 6, 14, 30] {
        let patches: Vec<Patch> = (0..count).map(|number| patch(number, papers[number])).collect();
        let fitted = Reference::fitted(&photo, &patches).unwrap();
        let same = fitted.applied(&photo);
        let worst = same.rgb().iter().zip(photo.rgb()).map(|(one, other)| one.abs_diff(*other)).max().unwrap();
        assert!(worst <= 1 && fitted.mean().after < 0.01, "{count}: {worst} {:?}", fitted.mean());
    }
}

#[test]
fn a_spoilt_patch_is_named() {
    let papers = papers();
    let photo = seen(&papers, kitchen, 2);
    let good: Vec<Patch> = (0..8).map(|number| patch(number, papers[number])).collect();
    let spoilt = |change: &dyn Fn(&mut Patch)| {
        let mut patches = good.clone();
        change(&mut patches[5]);
        Reference::fitted(&photo, &patches).unwrap_err()
    };
    let named = |why| Spoilt { patch: 5, why };
    assert_eq!(spoilt(&|patch| patch.at.x = 3.0), named(Why::Outside));
    assert_eq!(spoilt(&|patch| patch.at.y = f64::NAN), named(Why::Outside));
    assert_eq!(spoilt(&|patch| patch.half = -4.0), named(Why::Small));
    assert_eq!(spoilt(&|patch| patch.half = 2.0), named(Why::Small));
    assert_eq!(spoilt(&|patch| patch.at.x -= 10.0), named(Why::Uneven));
    assert_eq!(spoilt(&|patch| patch.real.r = 2.0), named(Why::Unreal));
    let glare = seen(&papers, |light| if light == papers[5].linear() { self::light(&[1.0; 3]) } else { light }, 2);
    assert_eq!(Reference::fitted(&glare, &good).unwrap_err(), named(Why::Clipped));
    // One black called white asks for too much.
    let dark = [patch(0, Srgb::new(250, 250, 250))];
    assert_eq!(Reference::fitted(&photo, &dark).unwrap_err(), Spoilt { patch: 0, why: Why::Extreme });
    assert_eq!(Reference::fitted(&photo, &[]).unwrap_err(), Spoilt { patch: 0, why: Why::Extreme });
}

#[test]
fn a_slip_of_typing_is_suspected() {
    let papers = papers();
    let photo = seen(&papers, kitchen, 2);
    let mut patches: Vec<Patch> = (0..14).map(|number| patch(number, papers[number])).collect();
    patches[9].real = Srgb::new(255 - papers[9].r, papers[9].b, 255 - papers[9].g).linear();
    assert_eq!(Reference::fitted(&photo, &patches).unwrap().suspect(), Some(9));
}
