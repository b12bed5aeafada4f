//! `octavo square` and `octavo colors`, on a photo drawn here: a pale sheet with a blue band, askew on a dark table.
#![allow(clippy::unwrap_used, reason = "tests")]

use std::fs;
use std::path::PathBuf;

use photo::{Homography, Point};

#[path = "common/run.rs"]
mod run;

use run::octavo;

/// Where the sheet lies in the photo.
const CORNERS: [Point; 4] =
    [Point::new(150.0, 80.0), Point::new(640.0, 110.0), Point::new(690.0, 540.0), Point::new(100.0, 500.0)];

/// A folder of this test's own, with the photo in it.
fn folder(name: &str) -> (PathBuf, String) {
    let folder = std::env::temp_dir().join(format!("octavo-pictures-{name}-{}", std::process::id()));
    fs::create_dir_all(&folder).unwrap();
    let flat = [Point::new(0.0, 0.0), Point::new(1.0, 0.0), Point::new(1.0, 1.0), Point::new(0.0, 1.0)];
    let onto = Homography::between(CORNERS, flat).unwrap();
    let color = |x: u32, y: u32| {
        let at = onto.apply(Point::new(f64::from(x) + 0.5, f64::from(y) + 0.5));
        let inside = (0.0..1.0).contains(&at.x) && (0.0..1.0).contains(&at.y);
        match (inside, (0.3..0.5).contains(&at.x)) {
            (false, _) => [70, 55, 45],
            (true, false) => [244, 239, 226],
            (true, true) => [90, 120, 170],
        }
    };
    let rgb: Vec<u8> = (0..600).flat_map(|y| (0..800).flat_map(move |x| color(x, y))).collect();
    let path = folder.join("photo.png");
    fs::write(&path, workroom::pictures::png(800, 600, &rgb).unwrap()).unwrap();
    (folder, path.to_str().unwrap().to_owned())
}

#[test]
fn a_photo_is_made_straight_and_its_colors_told() {
    let (folder, photo) = folder("straight");
    let sheet = folder.join("sheet.png").to_str().unwrap().to_owned();
    let (code, out, err) = octavo(&["square", &photo, "--size", "12x12", "--dots", "50", "--out", &sheet, "--json"]);
    assert!(code < 2, "{err}");
    let answer: serde_json::Value = serde_json::from_str(&out).unwrap();
    let first: Vec<f64> = serde_json::from_value(answer["corners"][0].clone()).unwrap();
    let near = CORNERS.iter().map(|at| (at.x - first[0]).hypot(at.y - first[1])).fold(f64::INFINITY, f64::min);
    assert!(near < 1.5, "{near} pixels off");
    let made = workroom::pictures::decode_whole(&fs::read(&sheet).unwrap()).unwrap();
    assert_eq!((made.width, made.height), (600, 600));
    // The table told to be grey: what is brown in the photo loses its red, the sheet with it.
    let grey = folder.join("grey.png").to_str().unwrap().to_owned();
    let (code, _, err) =
        octavo(&["square", &photo, "--size", "12x12", "--dots", "50", "--neutral", "20,300", "--out", &grey]);
    assert!(code < 2, "{err}");
    let balanced = workroom::pictures::decode_whole(&fs::read(&grey).unwrap()).unwrap();
    assert!(balanced.rgb[0] < made.rgb[0] - 5, "{} {}", balanced.rgb[0], made.rgb[0]);
    let (code, out, err) = octavo(&["colors", &sheet, "--paper", "#ffffff", "--ink", "#202040"]);
    assert_eq!(code, 0, "{err}");
    assert!(
        out.contains("#f4efe2") && out.contains(" % of the picture") && out.contains("ΔE") && err.contains("daylight"),
        "{out}{err}"
    );
    fs::remove_dir_all(folder).unwrap();
}

#[test]
fn known_patches_put_colors_right_and_a_spoilt_one_is_named() {
    let (folder, photo) = folder("known");
    let sheet = folder.join("sheet.png").to_str().unwrap().to_owned();
    let plain = ["square", &photo, "--size", "12x12", "--dots", "50", "--out", &sheet];
    let with = |more: &[&str]| octavo(&[&plain[..], more].concat());
    // The table (70, 55, 45) and the band (90, 120, 170) said to be other colours: the picture follows them.
    let list = folder.join("patches.txt").to_str().unwrap().to_owned();
    fs::write(&list, "40,300 #4b4640\n\n").unwrap();
    let (code, out, err) = with(&["--patches", &list, "--patch", "330,300 lab 54.0 0.0 -18.0 D65"]);
    assert!(code < 2, "{err}");
    assert!(
        out.contains("2 patches: each") && out.contains("Patch 2 at 40,300: ΔE") && out.contains("In the mean: ΔE"),
        "{out}"
    );
    let (code, out, _) = with(&["--patch", "40,300 grey 5%", "--json"]);
    assert!(code < 2);
    let answer: serde_json::Value = serde_json::from_str(&out).unwrap();
    assert_eq!(answer["reference"]["way"], "gains");
    assert!(answer["reference"]["mean"]["before"].as_f64().unwrap() > 5.0, "{answer}");
    assert!(answer["reference"]["mean"]["after"].as_f64().unwrap() < 0.5, "{answer}");
    for (patches, said) in [
        (&["--patch", "2,2 #808080"][..], "Patch 1 at 2,2 reaches beyond"),
        (&["--patch", "40,300 #4b4640", "--patch", "150,80,20 #808080"], "Patch 2 at 150,80 is not of one colour"),
        (&["--patch", "40,300,1 #4b4640"], "has too few pixels"),
        (&["--patch", "40,300 #ffffff"], "over four times"),
        (&["--patch", "40,300 brown"], "--patch number 1 (“40,300 brown”): “brown” is no colour"),
        (
            &["--patch", "40,300 #4b4640", "--patch", "40;x #4b4640"],
            "--patch number 2 (“40;x #4b4640”): “40;x” is no place. Write pixels from the left",
        ),
        (&["--patch", "40,300"], "--patch number 1 (“40,300”) has a place but no colour. Write the colour after"),
        (&["--patch", "-4,300"], "--patch number 1 (“-4,300”) has a place but no colour"),
        (&["--patch", "40,300 #4b46"], "“#4b46” is no colour. After # come six signs"),
        (&["--patch", "40,300 lab 50 1 2"], "“lab 50 1 2” is not whole. After lab come"),
        (&["--patch", "40,300 grey 18"], "“grey 18” is not whole. After grey comes"),
        (&["--patches", "/nowhere/at/all.txt"], "cannot read the patches"),
        (&["--patch", "40,300 #4b4640", "--neutral", "20,300"], "not both"),
    ] {
        let (code, _, err) = with(patches);
        assert_eq!(code, 2, "{patches:?}");
        assert!(err.contains(said), "{err}");
    }
    fs::write(&list, "40,300 #4b4640\nnonsense\n").unwrap();
    assert!(with(&["--patches", &list]).2.contains("Line 2 (“nonsense”): “nonsense” is no place"));
    // The same in German, and nothing is written.
    fs::remove_file(&sheet).unwrap();
    for (patches, said) in [
        (
            ["--patch", "40,300 braun"],
            "--patch Nummer 1 („40,300 braun“): „braun“ ist keine lesbare Farbe. Schreiben Sie #8c8c8c",
        ),
        (
            ["--patch", "40 #4b4640"],
            "--patch Nummer 1 („40 #4b4640“): „40“ ist keine Stelle. Schreiben Sie Pixel von links",
        ),
        (["--patches", &list], "Zeile 2 („nonsense“): „nonsense“ ist keine Stelle"),
    ] {
        let (code, _, err) = with(&[&patches[..], &["--language", "de"]].concat());
        assert!(code == 2 && err.contains(said), "{err}");
    }
    assert!(!PathBuf::from(&sheet).exists());
    fs::remove_dir_all(folder).unwrap();
}

#[test]
fn printed_panels_are_told_on_marks() {
    let (folder, _) = folder("panels");
    let sheet = folder.join("collage.png").to_str().unwrap().to_owned();
    // 400 pixels of 8 in: a band of 3 in, below it two panels that part at 5 1/8 in; the lines lie a little off the marks.
    let color = |x: u32, y: u32| match (y < 151, x < 257, (x / 10 + y / 10) % 2) {
        (true, _, 0) => [230, 200, 190],
        (true, ..) => [190, 90, 100],
        (_, true, _) => [120, 160, 130],
        (_, _, 0) => [245, 235, 210],
        _ => [90, 110, 160],
    };
    let rgb: Vec<u8> = (0..400).flat_map(|y| (0..400).flat_map(move |x| color(x, y))).collect();
    fs::write(&sheet, workroom::pictures::png(400, 400, &rgb).unwrap()).unwrap();
    let (code, out, err) = octavo(&["panels", &sheet, "--size", "8x8"]);
    assert_eq!(code, 0, "{err}");
    let told = r#"collage = { panels = [{ left = "0 in", top = "0 in", size = "8 in x 3 in" }, { left = "0 in", top = "3 in", size = "5 1/8 in x 5 in" }, { left = "5 1/8 in", top = "3 in", size = "2 7/8 in x 5 in" }] }"#;
    assert_eq!(out.trim_end(), told);
    let (_, out, _) = octavo(&["panels", &sheet, "--size", "8x8", "--marks", "1 mm", "--json"]);
    let answer: serde_json::Value = serde_json::from_str(&out).unwrap();
    assert_eq!((answer["panels"].as_array().unwrap().len(), &answer["panels"][2]["left"]), (3, &"131 mm".into()));
    let (code, _, err) = octavo(&["panels", &sheet, "--size", "8x8", "--marks", "1/10 in"]);
    assert!(code == 2 && err.contains("--marks"), "{err}");
    let plain = folder.join("plain.png").to_str().unwrap().to_owned();
    fs::write(&plain, workroom::pictures::png(300, 200, &[128; 300 * 200 * 3]).unwrap()).unwrap();
    let (code, out, err) = octavo(&["panels", &plain, "--size", "8x8"]);
    assert!(code == 0 && out.contains("one print"), "{out}{err}");
    fs::remove_dir_all(folder).unwrap();
}

#[test]
fn what_cannot_be_squared_says_why_and_writes_nothing() {
    let (folder, photo) = folder("refused");
    let out = folder.join("none.png").to_str().unwrap().to_owned();
    let plain = folder.join("plain.png").to_str().unwrap().to_owned();
    fs::write(&plain, workroom::pictures::png(300, 200, &[128; 300 * 200 * 3]).unwrap()).unwrap();
    let heic = folder.join("phone.jpg").to_str().unwrap().to_owned();
    fs::write(&heic, b"\0\0\0\x18ftypheic\0\0\0\0mif1heic").unwrap();
    let half = folder.join("half.png").to_str().unwrap().to_owned();
    fs::write(&half, &fs::read(&photo).unwrap()[..3000]).unwrap();
    let crossed = ["--corners", "10,10 300,300 300,10 10,300"];
    for (file, more, words) in [
        (&plain, &[][..], "no sheet was found"),
        (&heic, &[][..], "HEIC"),
        (&half, &[][..], "cut off"),
        (&photo, &crossed[..], "crossed"),
        (&"/no/such/photo.jpg".to_owned(), &[][..], "cannot find"),
    ] {
        let args = [&["square", file, "--size", "12x12", "--out", &out], more].concat();
        let (code, said, err) = octavo(&args);
        assert_eq!((code, said.as_str()), (2, ""), "{err}");
        assert!(err.contains(words) && err.contains(": ") && !err.contains('⟨'), "{err}");
        assert!(!PathBuf::from(&out).exists());
    }
    fs::remove_dir_all(folder).unwrap();
}
