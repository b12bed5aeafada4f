//! Cut lines as SVG in true units, for machines that cut and for drawing programs: cuts solid, scores dashed.
//!
//! One file a way of cutting. User units are inches or millimetres, so that a number in the file is the length it
//! says. Left out on purpose: words, prints and the colour of the paper.

use std::fmt::Write as _;

use cards::Plan;
use cards::plan::on_sheet;
use cutting::steps::{CutPlan, End};
use cutting::tree::Axis;
use measure::{Length, Rect, Size, Unit};

use super::needs::scores;
use crate::scene::Point;

/// One file of cut lines.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CutFile {
    /// `cut-paper-1` or `cut-card-1`, without an ending.
    pub name: String,
    /// The SVG.
    pub svg: String,
}

/// Every patterned sheet's and every cardstock sheet's cut lines.
pub fn cut_files(plan: &Plan) -> Vec<CutFile> {
    let unit = plan.project.unit;
    let mut files = Vec::new();
    for (number, layout) in (1..).zip(&plan.layouts) {
        let Some(pack) = plan.project.packs.get(layout.pack) else { continue };
        let lines = Lines { sheet: pack.sheet, cuts: cuts(&layout.cut_plan, layout.cut_step), scores: Vec::new() };
        files.push(CutFile { name: format!("cut-paper-{number}"), svg: lines.svg(unit, &pack.name) });
    }
    let mut number = 0;
    for stock in &plan.stocks {
        let Some(known) = plan.project.cardstocks.get(stock.cardstock) else { continue };
        for sheet in &stock.sheets {
            let Some(size) = known.sheets.get(sheet.size) else { continue };
            number += 1;
            let folds = sheet
                .pieces
                .iter()
                .filter_map(|piece| stock.cuts.get(piece.cut).map(|cut| scores(plan, cut, piece.rect, piece.turned)));
            let lines =
                Lines { sheet: size.size, cuts: cuts(&sheet.cut_plan, sheet.step), scores: folds.flatten().collect() };
            files.push(CutFile { name: format!("cut-card-{number}"), svg: lines.svg(unit, &known.name) });
        }
    }
    files
}

/// Where the blade goes, from the published steps.
pub(super) fn cuts(plan: &CutPlan, step: Length) -> Vec<(Point, Point)> {
    let rect = |id| plan.part(id).map_or_else(Rect::default, |part| on_sheet(part.rect, step));
    let mut lines = Vec::new();
    for cut in plan.cut_steps() {
        for work in &cut.work {
            let whole = rect(work.part);
            for off in &work.off {
                let off = rect(*off);
                let line = match (cut.axis, cut.end) {
                    (Axis::X, end) => {
                        let x = if end == End::Near { off.right() } else { off.x };
                        (Point::new(x, whole.y), Point::new(x, whole.bottom()))
                    }
                    (Axis::Y, end) => {
                        let y = if end == End::Near { off.bottom() } else { off.y };
                        (Point::new(whole.x, y), Point::new(whole.right(), y))
                    }
                };
                lines.push(line);
            }
        }
    }
    lines
}

struct Lines {
    sheet: Size,
    cuts: Vec<(Point, Point)>,
    scores: Vec<(Point, Point)>,
}

impl Lines {
    fn svg(&self, unit: Unit, name: &str) -> String {
        let n = |length: Length| decimal(length, unit);
        let (w, h) = (n(self.sheet.width), n(self.sheet.height));
        let sign = unit.sign();
        // A hair: 0.01 in or 0.25 mm.
        let hair = if unit == Unit::Inch { "0.01" } else { "0.25" };
        let dash = if unit == Unit::Inch { "0.12 0.06" } else { "3 1.5" };
        let mut text = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}{sign}\" height=\"{h}{sign}\" \
             viewBox=\"0 0 {w} {h}\" fill=\"none\" stroke-width=\"{hair}\">\n<title>{}</title>\n\
             <g id=\"sheet\" stroke=\"#8a8a8a\"><rect x=\"0\" y=\"0\" width=\"{w}\" height=\"{h}\"/></g>\n",
            crate::svg::escape(name)
        );
        for (id, pen, lines) in [
            ("cut", "stroke=\"#000000\"".to_owned(), &self.cuts),
            ("score", format!("stroke=\"#c00000\" stroke-dasharray=\"{dash}\""), &self.scores),
        ] {
            let _ = writeln!(text, "<g id=\"{id}\" {pen}>");
            for (from, to) in lines {
                let (x1, y1, x2, y2) = (n(from.x), n(from.y), n(to.x), n(to.y));
                let _ = writeln!(text, "<line x1=\"{x1}\" y1=\"{y1}\" x2=\"{x2}\" y2=\"{y2}\"/>");
            }
            text.push_str("</g>\n");
        }
        text.push_str("</svg>\n");
        text
    }
}

/// A length as a decimal of its unit, exact to a millionth.
fn decimal(length: Length, unit: Unit) -> String {
    let one = i128::from(unit.length().ticks());
    let parts = (i128::from(length.ticks()) * 1_000_000 * 2 + one).div_euclid(one * 2);
    let (sign, parts) = (if parts < 0 { "-" } else { "" }, parts.abs());
    let text = format!("{sign}{}.{:06}", parts / 1_000_000, parts % 1_000_000);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_decimals_of_their_unit() {
        assert_eq!(decimal(Length::INCH * 12, Unit::Inch), "12");
        assert_eq!(decimal(Length::from_ticks(Length::INCH.ticks() / 8 * 25), Unit::Inch), "3.125");
        assert_eq!(decimal(Length::INCH, Unit::Millimetre), "25.4");
        assert_eq!(decimal(Length::mm(-3), Unit::Millimetre), "-3");
    }
}
