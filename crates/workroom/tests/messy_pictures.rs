//! Pictures as they come: odd ones are read as Pillow reads them, broken ones are refused in words, by the commands and on
//! the pages, and nothing is lost.
//!
//! Source: `data/messy/make.py` draws the pictures and writes `data/messy/colors.json`, what Pillow 13.0.0, a
//! general-purpose library, says of their colours.
#![allow(clippy::unwrap_used, reason = "tests")]

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use serde_json::Value;
use workroom::pictures::{self, PictureError};

#[path = "common/folder.rs"]
mod folder;
#[path = "common/run.rs"]
mod run;
#[path = "common/served.rs"]
mod served;

use folder::Folder;
use run::octavo;
use served::Served;

fn messy(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/messy").join(name)
}

/// What each broken picture is refused for.
const BROKEN: [(&str, &str); 8] = [
    ("cut-off.jpg", "cut off"),
    ("cut-off.png", "cut off"),
    ("cut-off.webp", "cut off"),
    ("bomb.png", "large"),
    ("bomb.jpg", "large"),
    ("moving.gif", "kind"),
    ("make.py", "kind"),
    ("heic", "kind"),
];

fn broken(name: &str) -> Vec<u8> {
    match name {
        // The first bytes of what phones of one make write.
        "heic" => b"\0\0\0\x18ftypheic\0\0\0\0mif1heic".to_vec(),
        name => fs::read(messy(name)).unwrap(),
    }
}

#[test]
fn odd_pictures_have_the_colors_that_pillow_reads() {
    let known: Value = serde_json::from_str(&fs::read_to_string(messy("colors.json")).unwrap()).unwrap();
    let known = known.as_object().unwrap();
    assert_eq!(known.len(), 26);
    for (name, known) in known {
        let read =
            pictures::decode_whole(&fs::read(messy(name)).unwrap()).unwrap_or_else(|why| panic!("{name}: {why}"));
        let size = [read.width, read.height].map(Value::from);
        assert_eq!(known["size"].as_array().unwrap()[..], size, "{name}");
        let (w, h) = (read.width as usize, read.height as usize);
        for (at, (x, y)) in
            [(w / 4, h / 4), (3 * w / 4, h / 4), (w / 4, 3 * h / 4), (3 * w / 4, 3 * h / 4)].iter().enumerate()
        {
            for channel in 0..3 {
                let ours = i64::from(read.rgb[(y * w + x) * 3 + channel]);
                let theirs = known["colors"][at][channel].as_i64().unwrap();
                // Decoders of JPEG may differ by rounding, of four inks by two roundings.
                assert!((ours - theirs).abs() <= 3, "{name}, quarter {at}, channel {channel}: {ours}, Pillow {theirs}");
            }
        }
    }
}

#[test]
fn broken_pictures_are_told_apart() {
    for (name, kind) in BROKEN {
        let why = pictures::decode_whole(&broken(name)).err();
        let fits = match why {
            Some(PictureError::WrongKind) => kind == "kind",
            Some(PictureError::TooLarge) => kind == "large",
            Some(PictureError::CutOff) => kind == "cut off",
            _ => false,
        };
        assert!(fits, "{name}: {why:?} instead of {kind}");
        assert_eq!(pictures::decode(&broken(name)).err(), why, "{name}");
    }
    // Cut off anywhere: never a panic, and half a photo is not taken for a whole one.
    let whole = fs::read(messy("turned-6.jpg")).unwrap();
    for length in 0..whole.len() - 2 {
        assert!(pictures::decode(&whole[..length]).is_err(), "{length} of {} bytes", whole.len());
    }
}

#[test]
fn commands_refuse_broken_pictures_and_name_them() {
    let folder = Folder::new("messy-commands");
    let out = folder.0.join("out.png");
    for (name, kind) in BROKEN {
        let path = folder.0.join(if name == "heic" { "phone.jpg" } else { name });
        fs::write(&path, broken(name)).unwrap();
        let (path, out) = (path.to_str().unwrap(), out.to_str().unwrap());
        let words = match kind {
            "large" => "make it smaller",
            "kind" => "HEIC",
            _ => "is cut off",
        };
        for args in [
            &["square", path, "--size", "12x12", "--out", out][..],
            &["panels", path, "--size", "12x12"],
            &["colors", path],
        ] {
            let (code, said, err) = octavo(args);
            assert_eq!((code, said.as_str()), (2, ""), "{args:?}: {err}");
            assert!(err.contains(words) && err.contains(path), "{args:?}: {err}");
        }
    }
    assert!(!out.exists());
}

/// 51 KB that would be 256 million pixels: refused from their head, in little memory.
#[cfg(target_os = "linux")]
#[test]
fn a_bomb_is_refused_in_little_memory() {
    // Pages of the program and its threads count too; the pixels alone would be 768 MB.
    let script = r#"ulimit -v 400000; exec "$0" colors "$1""#;
    let run =
        Command::new("sh").args(["-c", script, env!("CARGO_BIN_EXE_octavo")]).arg(messy("bomb.png")).output().unwrap();
    let err = String::from_utf8_lossy(&run.stderr);
    assert_eq!(run.status.code(), Some(2), "{err}");
    assert!(err.contains("64 million"), "{err}");
}

#[test]
fn the_paper_page_refuses_broken_pictures_and_keeps_what_is_there() {
    let folder = Folder::new("messy-pages");
    let served = Served::over(&folder.0.join("octavo.db"));
    let line = served.line();
    let text = |line: served::Line| line.get("/w/1/file/project.toml");
    let before = text(line);
    assert_eq!(before.0, 200, "{}", before.1);
    let seen = line.seen("/w/1/paper");
    let send = |path: &str, act: &str, bytes: &[u8]| {
        let fields = [("seen", &*seen), ("pack", "0"), ("design", "0"), ("side", "front"), ("act", act)];
        let told: Vec<(&str, &str)> = fields.into_iter().filter(|(_, value)| !value.is_empty()).collect();
        line.upload(path, &told, bytes)
    };
    for (name, kind) in BROKEN {
        let words = match kind {
            "large" => "The picture is too large",
            "kind" => "HEIC",
            _ => "The picture is cut off",
        };
        for (path, act) in [("/w/1/face", "picture"), ("/w/1/photo", "")] {
            let (status, page) = send(path, act, &broken(name));
            assert_eq!(status, 422, "{name} {path}: {page}");
            assert!(page.contains(words), "{name} {path}: {page}");
        }
    }
    assert_eq!(text(line).1.split("\r\n\r\n").nth(1), before.1.split("\r\n\r\n").nth(1));
    // An odd one that is whole is taken.
    let (status, back) = send("/w/1/photo", "", &fs::read(messy("cmyk.jpg")).unwrap());
    assert_eq!(status, 303, "{back}");
    let (status, back) = send("/w/1/face", "picture", &fs::read(messy("deep-clear.png")).unwrap());
    assert_eq!(status, 303, "{back}");
    assert_ne!(text(line).1.split("\r\n\r\n").nth(1), before.1.split("\r\n\r\n").nth(1));
}
