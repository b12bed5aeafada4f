//! Source: `OpenCV` 5.0.0 (Apache-2.0), `getPerspectiveTransform` and `warpPerspective`, run by `data/compare_opencv.py` on
//! pictures drawn from a seed. Places are held to 0.1 pixel (mean to 0.01); the warp to 40 dB, since `OpenCV` takes
//! another cubic (a = −0.75) and places in 1/32 of a pixel.
#![allow(clippy::unwrap_used, reason = "tests")]

use photo::{Homography, Point, Quad, Raster, square};

#[test]
fn sixty_homographies() {
    let (mut sum, mut count) = (0.0, 0.0);
    let rows = include_str!("data/homographies.csv").lines().filter(|line| !line.starts_with('#'));
    for row in rows {
        let numbers: Vec<f64> = row.split(',').map(|cell| cell.parse().unwrap()).collect();
        let at = |place: usize| Point::new(numbers[2 * place], numbers[2 * place + 1]);
        let quad = Quad::new([at(0), at(1), at(2), at(3)]).unwrap();
        let map = Homography::onto(&quad, 1000.0, 800.0).unwrap();
        let back = map.inverse().unwrap();
        let places = [0.0, 333.0, 800.0].into_iter().flat_map(|y| [0.0, 417.0, 1000.0].map(|x| Point::new(x, y)));
        for (index, place) in places.enumerate() {
            let far = map.apply(place).far(at(4 + index));
            assert!(far < 0.1, "{far}");
            assert!(back.apply(map.apply(place)).far(place) < 1e-6);
            sum += far;
            count += 1.0;
        }
    }
    assert!(count > 500.0 && sum / count < 0.01, "mean {}", sum / count);
}

fn ppm(bytes: &[u8]) -> Raster {
    let head = bytes.iter().enumerate().filter(|(_, byte)| byte.is_ascii_whitespace()).nth(3).unwrap().0;
    let words: Vec<&str> = std::str::from_utf8(&bytes[..head]).unwrap().split_ascii_whitespace().collect();
    Raster::new(words[1].parse().unwrap(), words[2].parse().unwrap(), bytes[head + 1..].to_vec()).unwrap()
}

#[test]
fn the_same_warp() {
    let photo = ppm(include_bytes!("data/photo.ppm"));
    let theirs = ppm(include_bytes!("data/warped.ppm"));
    let corners = [(20.0, 9.0), (104.0, 15.0), (99.0, 80.0), (12.0, 72.0)].map(|(x, y)| Point::new(x, y));
    let ours = square(&photo, &Quad::new(corners).unwrap(), 90, 72);
    let square_error: f64 =
        ours.rgb().iter().zip(theirs.rgb()).map(|(a, b)| f64::from(a.abs_diff(*b)) * f64::from(a.abs_diff(*b))).sum();
    let mean = square_error / (90.0 * 72.0 * 3.0);
    let psnr = 10.0 * (255.0 * 255.0 / mean).log10();
    assert!(psnr > 40.0, "{psnr} dB");
}
