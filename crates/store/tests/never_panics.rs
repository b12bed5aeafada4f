//! Whatever is thrown at the reader, it answers with a project or with problems that have a place.
#![allow(clippy::unwrap_used, reason = "tests")]

use proptest::prelude::*;
use store::project_file::read_bytes;

const EXAMPLES: [&str; 4] = [
    include_str!("../../../examples/kettle-and-quince.toml"),
    include_str!("../../../examples/a6-from-a4.toml"),
    include_str!("../../../examples/free-sizes.toml"),
    include_str!("../../../examples/landscape-and-square.toml"),
];

/// Pieces of TOML and of our own language, likely to hurt where they do not belong.
const PIECES: [&str; 24] = [
    "[[pack]]",
    "[[recipe]]",
    "[goal]",
    "[[recipe.layer]]",
    "kind = \"mat\"",
    "follows = \"mat\"",
    "on = \"panel\"",
    "999999999999999999999",
    "-1",
    "0",
    "1e400",
    "nan",
    "\"1/0\"",
    "\"9999999 in\"",
    "\"x\"",
    "[]",
    "{}",
    "[[",
    "\"\"\"",
    "\u{feff}",
    "¾",
    "to",
    "use = 4294967295",
    "= true",
];

/// Reads and asks everything there is to ask of the answer.
fn check(bytes: &[u8]) {
    let lines = bytes.iter().filter(|byte| **byte == b'\n').count() + 1;
    match read_bytes(bytes) {
        Ok(project) => {
            assert!(!project.recipes.is_empty() && !project.cardstocks.is_empty());
            for recipe in &project.recipes {
                assert!(recipe.base < project.cardstocks.len());
                assert!(
                    recipe.layers.iter().enumerate().all(|(at, layer)| layer.placement.on.is_none_or(|on| on < at))
                );
            }
        }
        Err(problems) => {
            assert!(!problems.is_empty());
            for problem in problems {
                assert!((1..=lines).contains(&problem.line) && problem.column >= 1, "{problem:?}");
                assert!(!problem.code().is_empty());
                let _ = problem.facts();
            }
        }
    }
}

proptest! {
    #[test]
    fn random_bytes(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        check(&bytes);
    }

    #[test]
    fn random_text(text in "\\PC{0,200}") {
        check(text.as_bytes());
    }

    #[test]
    fn random_pieces(pieces in proptest::collection::vec(0..PIECES.len(), 0..40), breaks in any::<u64>()) {
        let mut text = String::new();
        for (at, piece) in pieces.into_iter().enumerate() {
            text.push_str(PIECES[piece]);
            text.push(if breaks >> (at % 64) & 1 == 0 { '\n' } else { ' ' });
        }
        check(text.as_bytes());
    }

    /// An example with bytes dropped, bytes put in and lines said twice.
    #[test]
    fn mutated_examples(
        which in 0..EXAMPLES.len(),
        changes in proptest::collection::vec((any::<u32>(), 0_usize..30, 0..PIECES.len(), 0_u8..3), 1..6),
    ) {
        let mut bytes = EXAMPLES[which].as_bytes().to_vec();
        for (place, length, piece, how) in changes {
            let at = usize::try_from(place).unwrap() % bytes.len().max(1);
            let end = (at + length).min(bytes.len());
            match how {
                0 => drop(bytes.drain(at..end)),
                1 => drop(bytes.splice(at..at, PIECES[piece].bytes())),
                _ => drop(bytes.splice(at..end, PIECES[piece].bytes())),
            }
        }
        check(&bytes);
    }

    /// An example in which one value is another piece: mostly still TOML, so the walk goes deep.
    #[test]
    fn mutated_values(which in 0..EXAMPLES.len(), line in any::<u32>(), piece in 0..PIECES.len(), twice in any::<bool>()) {
        let mut lines: Vec<String> = EXAMPLES[which].lines().map(str::to_owned).collect();
        let at = usize::try_from(line).unwrap() % lines.len();
        if let Some((key, _)) = lines[at].split_once('=') {
            lines[at] = format!("{key}= {}", PIECES[piece]);
        }
        if twice {
            let copy = lines[at].clone();
            lines.insert(at, copy);
        }
        check(lines.join("\n").as_bytes());
    }
}
