//! Styles, scripts and letters, in the program itself: an asset's name is looked up here, never on the disk.

use drawing::text::Face;

use super::Answer;

const STYLE: &str = include_str!("../../static/workroom.css");
const MAIN: &str = include_str!("../../static/main.js");
const TABLE: &str = include_str!("../../static/table.js");
const TIES: &str = include_str!("../../static/ties.js");

/// Changes with every build that changes an asset, so that each may be kept for ever.
pub(super) fn mark() -> String {
    let fold = |sum: u64, byte: &u8| (sum ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3);
    let all = [STYLE, MAIN, TABLE, TIES].concat();
    format!("{:016x}", all.as_bytes().iter().fold(0xcbf2_9ce4_8422_2325, fold))
}

/// An asset by its name.
pub(super) fn asset(name: &str) -> Option<Answer> {
    let text = |kind: &'static str, text: &str| Answer::kept(kind, text.as_bytes().to_vec());
    let font = |face: Face| Answer::kept("font/otf", face.bytes().to_vec());
    Some(match name {
        "workroom.css" => text("text/css; charset=utf-8", STYLE),
        "main.js" => text("text/javascript; charset=utf-8", MAIN),
        "table.js" => text("text/javascript; charset=utf-8", TABLE),
        "ties.js" => text("text/javascript; charset=utf-8", TIES),
        "regular.otf" => font(Face::Regular),
        "italic.otf" => font(Face::Italic),
        "semibold.otf" => font(Face::Semibold),
        _ => return None,
    })
}
