//! How long each print takes to draw on a sheet of 12 × 12 in, at the resolution the pages use.

use drawing::prints;
use measure::{Length, Size};

fn main() {
    divan::main();
}

#[divan::bench(args = prints::names(), sample_count = 5, sample_size = 1)]
fn sheet(name: &str) -> Option<prints::Pixels> {
    prints::draw(name, Size::new(Length::INCH * 12, Length::INCH * 12), 100, 1)
}
