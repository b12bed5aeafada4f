//! Squares a PPM file: `warp IN OUT WIDTH HEIGHT X Y X Y X Y X Y`, and prints the milliseconds of the best of five. For
//! `tests/data/compare_opencv.py`.
#![allow(clippy::print_stdout, clippy::disallowed_methods, clippy::disallowed_types, reason = "a command")]

use photo::{Point, Quad, Raster, square};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let asked: Vec<String> = std::env::args().skip(1).collect();
    let bytes = std::fs::read(&asked[0])?;
    let head = bytes.iter().enumerate().filter(|(_, byte)| byte.is_ascii_whitespace()).nth(3).ok_or("a head")?.0;
    let words: Vec<&str> = std::str::from_utf8(&bytes[..head])?.split_ascii_whitespace().collect();
    let photo = Raster::new(words[1].parse()?, words[2].parse()?, bytes[head + 1..].to_vec()).ok_or("pixels")?;
    let numbers = asked[4..12].iter().map(|text| text.parse()).collect::<Result<Vec<f64>, _>>()?;
    let at = |corner: usize| Point::new(numbers[2 * corner], numbers[2 * corner + 1]);
    let corners = Quad::new([at(0), at(1), at(2), at(3)])?;
    let (width, height) = (asked[2].parse()?, asked[3].parse()?);
    let mut best = f64::INFINITY;
    let mut flat = square(&photo, &corners, width, height);
    for _ in 0..5 {
        let start = std::time::Instant::now();
        flat = square(&photo, &corners, width, height);
        best = best.min(start.elapsed().as_secs_f64() * 1000.0);
    }
    std::fs::write(&asked[1], [format!("P6\n{width} {height}\n255\n").as_bytes(), flat.rgb()].concat())?;
    println!("{best:.1}");
    Ok(())
}
