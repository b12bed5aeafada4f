//! A photo stays with its design: made straight anew wherever the design is put, in a copy of the project too, and after its
//! picture was turned.
#![allow(clippy::unwrap_used, reason = "tests")]

#[path = "common/folder.rs"]
mod folder;
#[path = "common/served.rs"]
mod served;

use folder::Folder;
use served::{Line, Served};

/// A pale square sheet askew on a dark table.
fn photo() -> Vec<u8> {
    let inside = |x: i32, y: i32| {
        let (x, y) = (x - 200, y - 150);
        (10 * x + y).abs() < 900 && (10 * y - x).abs() < 900
    };
    let color = |x, y| if inside(x, y) { [240, 233, 218] } else { [70, 56, 44] };
    let rgb: Vec<u8> = (0..300).flat_map(|y| (0..400).flat_map(move |x| color(x, y))).collect();
    workroom::pictures::png(400, 300, &rgb).unwrap()
}

/// The addresses at which photos of this project can be made straight anew.
fn links(line: Line, project: &str) -> Vec<String> {
    let (_, page) = line.page(&format!("{project}/paper"));
    let begins = format!("href=\"{project}/photo?");
    let links = page.split(&begins).skip(1);
    links.map(|rest| rest.split('"').next().unwrap().replace("&amp;", "&")).collect()
}

/// Sends the photo for a face; where its page is.
fn sent(line: Line, design: &str) -> String {
    let (code, back) = line.upload("/w/1/photo", &[("pack", "0"), ("design", design), ("side", "front")], &photo());
    assert_eq!(code, 303, "{back}");
    back.split("location: ").nth(1).unwrap().split("\r\n").next().unwrap().to_owned()
}

#[test]
fn a_photo_goes_with_its_design() {
    let folder = Folder::new("photo-kept");
    let served = Served::over(&folder.0.join("octavo.db"));
    let line = served.line();
    assert_eq!(links(line, "/w/1"), Vec::<String>::new());
    let page = sent(line, "1");
    let hash = page.split("photo=").nth(1).unwrap().to_owned();
    let (code, shown) = line.page(&page);
    assert!(
        code == 200 && shown.contains(&format!("/w/1/photo.jpg?pack=0&amp;design=1&amp;side=front&amp;photo={hash}")),
        "{shown}"
    );
    let corners = [
        ("tl-x", "95"),
        ("tl-y", "75"),
        ("tr-x", "320"),
        ("tr-y", "95"),
        ("br-x", "310"),
        ("br-y", "230"),
        ("bl-x", "105"),
        ("bl-y", "240"),
    ];
    let fixed = [("pack", "0"), ("design", "1"), ("side", "front"), ("act", "square"), ("photo", &*hash)];
    let now = line.seen("/w/1/paper");
    let (code, back) = line.post("/w/1/photo", &[&fixed[..], &corners, &[("seen", &now)]].concat());
    assert_eq!(code, 303, "{back}");
    assert_eq!(links(line, "/w/1"), [format!("pack=0&design=1&side=front&photo={hash}")]);

    // Turned, it is another picture of the same photo.
    let now = line.seen("/w/1/paper");
    let turn = [("pack", "0"), ("design", "1"), ("side", "front"), ("act", "turn"), ("seen", &*now)];
    let (code, back) = line.post("/w/1/face", &turn);
    assert_eq!(code, 303, "{back}");
    assert_eq!(links(line, "/w/1"), [format!("pack=0&design=1&side=front&photo={hash}")]);

    // The first two designs change places: the photo goes along.
    let (_, file) = line.get("/w/1/file/project.toml");
    let text = file.split("\r\n\r\n").nth(1).unwrap();
    let mut parts: Vec<&str> = text.split("[[pack.design]]").collect();
    parts.swap(1, 2);
    let moved = parts.join("[[pack.design]]").replace("Kettle Stripe", "Kettle Stripes");
    let now = line.seen("/w/1/paper");
    let (code, back) = line.post("/w/1/text", &[("text", &moved), ("seen", &now)]);
    assert_eq!(code, 303, "{back}");
    let link = format!("pack=0&design=0&side=front&photo={hash}");
    assert_eq!(links(line, "/w/1"), [link.as_str()]);

    // And into a copy of the project.
    let (code, back) = line.post("/w/1/copy", &[]);
    assert_eq!(code, 303, "{back}");
    let copy = back.split("location: ").nth(1).unwrap().split("\r\n").next().unwrap();
    let copy = copy.split('/').take(3).collect::<Vec<_>>().join("/");
    assert_ne!(copy, "/w/1");
    assert_eq!(links(line, &copy), [link.as_str()]);
    let (code, shown) = line.page(&format!("{copy}/photo?{link}"));
    assert!(code == 200 && shown.contains("corners were found"), "{shown}");
    // A photo that nobody has is nowhere.
    assert_eq!(line.get(&format!("/w/1/photo?pack=0&design=0&side=front&photo={}", "0".repeat(64))).0, 404);
}
