//! A stamp, and where its words come on a strip.

use cards::model::{Anchor, Spot, Stamp};

use super::{Pen, inline, quoted};
use crate::project_file::form::SPOTS;
use crate::project_file::recipe::{EDGES, LINES, usual_words_border};

impl Pen<'_> {
    /// A stamp whose ink does not fill it.
    pub(super) fn stamp(&mut self, stamp: Option<&Stamp>) {
        let Some(Stamp { size, left, top }) = stamp else { return };
        let entries = [
            format!("size = {}", quoted(&self.sides(*size))),
            format!("left = {}", quoted(&self.bare(*left))),
            format!("top = {}", quoted(&self.bare(*top))),
        ];
        self.line("stamp", &inline(&entries));
    }

    /// Where words come, left out where they come in the middle.
    pub(super) fn spot(&mut self, spot: Spot) {
        match spot {
            Spot::On { across, down } => {
                let line = LINES.iter().position(|line| *line == (across, down)).unwrap_or(0);
                if line > 0 {
                    self.text("words_at", SPOTS[line]);
                }
            }
            // The middle names no edge: there is nothing to be a border from.
            Spot::Border { anchor: Anchor::Middle, .. } => {}
            Spot::Border { anchor, border } => {
                let edge = EDGES.iter().position(|edge| *edge == anchor).unwrap_or(0);
                self.text("words_at", SPOTS[LINES.len() + edge]);
                if border != usual_words_border(self.unit) {
                    self.length("words_border", border);
                }
            }
        }
    }
}
