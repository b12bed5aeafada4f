//! Styles, scripts and letters, in the program itself: an asset's name is looked up here, never on the disk.

use drawing::text::Face;

use super::Answer;

/// Styles and scripts by name.
const TEXTS: [(&str, &str); 16] = [
    ("workroom.css", include_str!("../../static/workroom.css")),
    ("asking.js", include_str!("../../static/asking.js")),
    ("corners.js", include_str!("../../static/corners.js")),
    ("gone.js", include_str!("../../static/gone.js")),
    ("hold.js", include_str!("../../static/hold.js")),
    ("lines.js", include_str!("../../static/lines.js")),
    ("regions.js", include_str!("../../static/regions.js")),
    ("main.js", include_str!("../../static/main.js")),
    ("mend.js", include_str!("../../static/mend.js")),
    ("patches.js", include_str!("../../static/patches.js")),
    ("progress.js", include_str!("../../static/progress.js")),
    ("stamping.js", include_str!("../../static/stamping.js")),
    ("swap.js", include_str!("../../static/swap.js")),
    ("table.js", include_str!("../../static/table.js")),
    ("ties.js", include_str!("../../static/ties.js")),
    ("wake.js", include_str!("../../static/wake.js")),
];

/// Changes with every build that changes an asset, so that each may be kept for ever.
pub(super) fn mark() -> String {
    let fold = |sum: u64, byte: &u8| (sum ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3);
    let all = TEXTS.iter().flat_map(|(_, text)| text.as_bytes());
    format!("{:016x}", all.fold(0xcbf2_9ce4_8422_2325, fold))
}

/// An asset by its name.
pub(super) fn asset(name: &str) -> Option<Answer> {
    if let Some((_, text)) = TEXTS.iter().find(|(known, _)| *known == name) {
        let kind = if name.ends_with(".css") { "text/css; charset=utf-8" } else { "text/javascript; charset=utf-8" };
        return Some(Answer::kept(kind, text.as_bytes().to_vec()));
    }
    let font = |face: Face| Answer::kept("font/otf", face.bytes().to_vec());
    Some(match name {
        "regular.otf" => font(Face::Regular),
        "italic.otf" => font(Face::Italic),
        "semibold.otf" => font(Face::Semibold),
        _ => return None,
    })
}
