//! The sheet of a layout on a page: its print, its cuts over it, a link for every piece, and cut lines to take hold of.
//!
//! The print is a picture of its own that stays while cuts move. Left out on purpose: what comes of a moved line
//! (`cards::plan::shift`) and keeping it (`moving`).

use cards::plan::{Alternative, CutLine, Layout, Piece};
use cutting::Axis;
use drawing::sheets::{OnScreen, on_screen, unusable_edges};
use drawing::{Scene, svg};
use maud::{Markup, html};
use measure::{Length, Rect};

use super::answer::Desk;
use super::drawings::sheet_size;
use super::{fields, say};
use crate::wording;

/// What lies over the print: cuts with their sizes, links, lines to take hold of.
pub(super) struct Over<'a> {
    pub(super) pieces: &'a [Piece],
    pub(super) left_over: &'a [Rect],
    pub(super) lines: &'a [CutLine],
}

/// A layout as it is.
pub(super) fn as_it_is(layout: &Layout) -> (Vec<Rect>, Vec<CutLine>) {
    (cards::plan::left_over(&layout.tree, layout.usable, layout.step), cards::plan::cut_lines(layout))
}

/// Where the sheet of a layout lies in its drawing.
pub(super) fn place(desk: &Desk<'_>, index: usize) -> Option<OnScreen> {
    let plan = &desk.made.plan;
    let size = sheet_size(plan.project.packs.get(plan.layouts.get(index)?.pack)?.sheet);
    on_screen(plan, index, size)
}

/// The sheet: print, veil, and what lies over it.
pub(super) fn drawn(desk: &Desk<'_>, index: usize, layout: &Layout) -> Markup {
    let plan = &desk.made.plan;
    let Some(size) = plan.project.packs.get(layout.pack).map(|pack| sheet_size(pack.sheet)) else { return html! {} };
    let Some(place) = place(desk, index) else { return html! {} };
    let whole = place.whole();
    let (left_over, lines) = as_it_is(layout);
    let view = format!("0 0 {} {}", size.width.to_points(), size.height.to_points());
    let print = format!("/w/{}/{}/print-{index}.jpg", desk.kept.id.0, desk.kept.now.number);
    html! {
        svg xmlns="http://www.w3.org/2000/svg" viewBox=(view) role="group" font-family="'Libertinus Serif', serif"
            aria-label=(say("layout-number", &[("number", (index + 1).into())])) {
            rect.ground x=(pt(whole.x)) y=(pt(whole.y)) width=(pt(whole.size.width)) height=(pt(whole.size.height)) {}
            image href=(print) x=(pt(whole.x)) y=(pt(whole.y)) width=(pt(whole.size.width)) height=(pt(whole.size.height))
                preserveAspectRatio="none" {}
            rect.veil x=(pt(whole.x)) y=(pt(whole.y)) width=(pt(whole.size.width)) height=(pt(whole.size.height)) {}
            (over(desk, index, layout, &place, &Over { pieces: &layout.pieces, left_over: &left_over, lines: &lines }))
        }
    }
}

/// What lies over the print, in one group that can be put in another's place.
pub(super) fn over(desk: &Desk<'_>, index: usize, layout: &Layout, place: &OnScreen, over: &Over<'_>) -> Markup {
    let marks = place.cuts(over.pieces, over.left_over, &unusable_edges(layout));
    let size = place.whole().size;
    let text = svg::write(&Scene { size, title: String::new(), marks });
    let inside = text.split_once("<defs>").map_or("", |(_, rest)| rest).trim_end();
    let inside = format!("<defs>{}", inside.strip_suffix("</svg>").unwrap_or(inside));
    html! {
        g.over data-sheet=(index) {
            g aria-hidden="true" { (fields::inline(&inside, "s")) }
            @for piece in over.pieces {
                @let at = place.rect(piece.rect);
                a.piece href=(format!("#piece-{}", piece.mark)) data-piece=(piece.mark)
                    aria-label=(say("layout-piece", &[("mark", (&piece.mark).into()), ("layer", layer(desk, piece).into())])) {
                    rect x=(pt(at.x)) y=(pt(at.y)) width=(pt(at.size.width)) height=(pt(at.size.height)) fill="transparent" {}
                }
            }
            @for (number, line) in over.lines.iter().enumerate() { (grip(desk, layout, place, number, line)) }
        }
    }
}

/// A line to take hold of, with a knob at its far end.
fn grip(desk: &Desk<'_>, layout: &Layout, place: &OnScreen, number: usize, line: &CutLine) -> Markup {
    let along = |at: Length, across: Length| match line.axis {
        Axis::X => Rect::new(across, at, measure::Size::default()),
        Axis::Y => Rect::new(at, across, measure::Size::default()),
    };
    let (from, to) = (place.rect(along(line.from, line.at)), place.rect(along(line.to, line.at)));
    let name = name(desk, line);
    let far = if line.axis == Axis::X { layout.usable.right() } else { layout.usable.bottom() };
    let marks = |length: Length| length.ticks() / layout.step.ticks().max(1);
    html! {
        g.grip tabindex="0" role="slider" data-line=(number) data-at=(wording::exact(line.at, desk.made.project().unit)) data-axis=(if line.axis == Axis::X { "x" } else { "y" })
            aria-orientation=(if line.axis == Axis::X { "horizontal" } else { "vertical" }) aria-label=(say("layout-grip", &[]))
            aria-valuemin="0" aria-valuemax=(marks(far)) aria-valuenow=(marks(line.at)) aria-valuetext=(name) {
            line.touch x1=(pt(from.x)) y1=(pt(from.y)) x2=(pt(to.x)) y2=(pt(to.y)) {}
            line.cut x1=(pt(from.x)) y1=(pt(from.y)) x2=(pt(to.x)) y2=(pt(to.y)) {}
            circle cx=(pt(to.x)) cy=(pt(to.y)) r="8" {}
        }
    }
}

/// A line in words: "upright, 3 in from the left".
pub(super) fn name(desk: &Desk<'_>, line: &CutLine) -> String {
    let facts = [
        ("at", fields::length(desk, line.at).into()),
        ("from", fields::length(desk, line.from).into()),
        ("to", fields::length(desk, line.to).into()),
    ];
    say(if line.axis == Axis::X { "layout-line-upright" } else { "layout-line-level" }, &facts)
}

/// The name of a piece's layer.
pub(super) fn layer(desk: &Desk<'_>, piece: &Piece) -> String {
    desk.made.project().layer(piece.recipe, piece.layer).map(|layer| layer.name.clone()).unwrap_or_default()
}

/// A layout in outlines: which pieces lie where.
pub(super) fn small(desk: &Desk<'_>, layout: &Layout, other: &Alternative) -> Markup {
    let Some(pack) = desk.made.project().packs.get(layout.pack) else { return html! {} };
    let view = format!("-2 -2 {} {}", pack.sheet.width.to_points() + 4.0, pack.sheet.height.to_points() + 4.0);
    // The first layers stand out as they do on the card.
    let shade = |piece: &Piece| format!("shade-{}", (piece.layer + piece.recipe * 3) % 5);
    html! {
        svg.small viewBox=(view) aria-hidden="true" {
            rect.sheet width=(pt(pack.sheet.width)) height=(pt(pack.sheet.height)) {}
            @for piece in &other.pieces {
                rect class=(shade(piece)) x=(pt(piece.rect.x)) y=(pt(piece.rect.y)) width=(pt(piece.rect.size.width)) height=(pt(piece.rect.size.height)) {}
            }
        }
    }
}

/// Points to a hundredth: finer than a screen shows.
pub(super) fn pt(length: Length) -> String {
    let hundredths = (length.to_points() * 100.0).round() / 100.0;
    format!("{hundredths}")
}
