//! A card with its layers pulled apart: each as it looks, where it lies, and what shows beside it, measured.
//!
//! Drawn in the page itself, so that it can be drawn anew while a layer is in hand (`hold`). Left out on purpose: what can be
//! taken hold of.

use ::cards::model::{Material, Recipe, Spot};
use ::cards::plan::{Card, CardPart, LaidLayer, PartKind, Plan, stands};
use ::cards::stamping;
use drawing::scene::points;
use maud::{Markup, html};
use measure::{Length, Rect, Size};

use super::answer::Desk;
use super::sheet::pt;
use super::{fields, say};

/// A recipe as it is drawn, by one of its cards where there is one.
pub(super) struct Pulled<'a> {
    desk: &'a Desk<'a>,
    plan: &'a Plan,
    index: usize,
    recipe: &'a Recipe,
    card: Option<&'a Card>,
    laid: Vec<LaidLayer>,
    /// Names of the faces that the page holds.
    known: Vec<String>,
    /// True if each layer is drawn alone, and small.
    alone: bool,
}

impl<'a> Pulled<'a> {
    /// A recipe as a plan has it: the one on the desk, or what would come of a change.
    pub(super) fn new(desk: &'a Desk<'a>, plan: &'a Plan, index: usize) -> Option<Pulled<'a>> {
        let of = |plan: &'a Plan| {
            let recipe = plan.project.recipes.get(index)?;
            let card = plan.cards.iter().find(|card| card.recipe == index);
            let (laid, known) = (stands(plan, index), Vec::new());
            Some(Pulled { desk, plan, index, recipe, card, laid, known, alone: false })
        };
        let on_page = of(&desk.made.plan)?.faces();
        Some(Pulled { known: on_page.into_iter().map(|(id, ..)| id).collect(), ..of(plan)? })
    }

    /// The size of letters, and the room beside and above the card that they need, in points.
    fn letters(&self) -> (f64, f64, f64) {
        let Size { width, height } = self.recipe.finished;
        // Chosen: a phone shows them at 15 px and more; beside a layer that is drawn alone they are larger for its size.
        let letters = width.to_points().max(height.to_points() * 0.62) / if self.alone { 6.4 } else { 11.2 };
        (letters, letters * 3.5, letters * 2.1)
    }

    /// What of the drawing is seen: the card and the room for its measures; the front's top left is 0, 0.
    pub(super) fn view(&self) -> String {
        let (_, beside, above) = self.letters();
        let Size { width, height } = self.recipe.finished;
        let (wide, high) = (width.to_points() + beside * 2.0, height.to_points() + above * 2.0);
        format!("{:.1} {:.1} {wide:.1} {high:.1}", -beside, -above)
    }

    fn part(&self, layer: usize) -> Option<&'a CardPart> {
        self.card?.parts.iter().find(|part| part.layer == layer)
    }

    fn stock(&self, index: usize) -> &str {
        self.plan.project.cardstocks.get(index).map_or("#ffffff", |stock| stock.color.as_str())
    }

    /// A face under its name in this drawing.
    fn face(&self, part: &CardPart) -> Option<(String, String)> {
        let PartKind::Patterned { layout, design, side, .. } = part.kind else { return None };
        let pack = self.plan.layouts.get(layout)?.pack;
        let name = format!("side-{pack}-{design}-{}", side.name());
        let address = format!("/w/{}/{}/{name}.jpg", self.desk.kept.id.0, self.desk.kept.now.number);
        Some((format!("r{}-{name}", self.index), address))
    }

    /// The faces that show, each once: its name on the page, its address, its size.
    fn faces(&self) -> Vec<(String, String, Size)> {
        let mut all: Vec<(String, String, Size)> = Vec::new();
        for part in self.card.map_or(&[][..], |card| &card.parts) {
            let PartKind::Patterned { layout, .. } = part.kind else { continue };
            let pack = self.plan.layouts.get(layout).map_or(0, |layout| layout.pack);
            let sheet = self.plan.project.packs.get(pack).map(|pack| pack.sheet).unwrap_or_default();
            if let Some((id, address)) = self.face(part).filter(|(id, _)| !all.iter().any(|(known, ..)| known == id)) {
                all.push((id, address, sheet));
            }
        }
        all
    }

    /// A layer as it looks.
    fn paper(&self, layer: usize, rect: Rect) -> Markup {
        let Some(known) = self.recipe.layers.get(layer) else { return html! {} };
        let plain = |color: &str| {
            html! { rect.own fill=(color) x=(pt(rect.x)) y=(pt(rect.y)) width=(pt(rect.size.width)) height=(pt(rect.size.height)) {} }
        };
        let stamped = known.stamped.map(|(greeting, spot)| self.words(greeting, spot, rect));
        let piece = match (&known.material, self.part(layer).map(|part| (part, &part.kind))) {
            (Material::Patterned { .. }, Some((part, PartKind::Patterned { .. }))) => {
                self.printed(part, rect).unwrap_or_else(|| plain("#ffffff"))
            }
            (Material::Patterned { .. }, _) => plain("#e9dcc2"),
            (_, Some((_, PartKind::Cardstock(stock)))) => plain(self.stock(*stock)),
            (Material::Mat { cardstock, .. }, _) => plain(self.stock(cardstock.first().map_or(0, |(_, stock)| *stock))),
            (Material::Plain { cardstock, .. }, _) => plain(self.stock(*cardstock)),
            (Material::Strip { cardstock, greeting, spot, .. }, _) => html! {
                (plain(self.stock(*cardstock)))
                (self.words(*greeting, *spot, rect))
            },
            (Material::Ribbon { ribbon, .. }, _) => {
                let color = self.plan.project.ribbons.get(*ribbon).map_or("#3b4148", |ribbon| ribbon.color.as_str());
                plain(color)
            }
        };
        html! { (piece) @if let Some(stamped) = stamped { (stamped) } }
    }

    /// The part of the print that a piece is cut from, the way it stands on the card.
    fn printed(&self, part: &CardPart, rect: Rect) -> Option<Markup> {
        let PartKind::Patterned { layout, piece, design, side, .. } = part.kind else { return None };
        // Only what was on the first card before is on the page.
        let (id, _) = self.face(part).filter(|(id, _)| self.known.contains(id))?;
        let laid = self.plan.layouts.get(layout)?;
        let cut = laid.pieces.get(piece)?;
        let sheet = self.plan.project.packs.get(laid.pack)?.sheet;
        let up = laid.sheets.iter().find(|used| used.design == design).map_or(side, |used| used.side);
        let size = if cut.turned { rect.size.turned() } else { rect.size };
        let on_sheet = Rect::new(cut.rect.x, cut.rect.y, size);
        let known = self.plan.project.design(laid.pack, design)?;
        let from = if side == up { on_sheet } else { known.on_other_side(on_sheet, sheet) };
        let part = format!("{} {} {} {}", pt(from.x), pt(from.y), pt(size.width), pt(size.height));
        // A turned piece lies with its top to the right.
        let stands = match cut.turned {
            true => format!("translate({} {}) rotate(-90)", pt(rect.x), pt(rect.bottom())),
            false => format!("translate({} {})", pt(rect.x), pt(rect.y)),
        };
        Some(html! {
            g transform=(stands) {
                svg width=(pt(size.width)) height=(pt(size.height)) viewBox=(part) preserveAspectRatio="none" { use href=(format!("#{id}")) {} }
                rect.edge width=(pt(size.width)) height=(pt(size.height)) {}
            }
        })
    }

    /// Stamped words where their ink comes.
    fn words(&self, greeting: usize, spot: Spot, strip: Rect) -> Markup {
        let Some(known) = self.plan.project.greetings.get(greeting) else { return html! {} };
        let ink = stamping::place(strip.size, known, spot).ink;
        if let Some(mark) = stamping::mark_of(known) {
            let (x, y) = (strip.x + ink.x, strip.y + ink.y);
            return html! { path fill=(known.ink) fill-rule="evenodd" d=(crate::backgrounds::path_over(&mark, x, y, ink.size)) {} };
        }
        let (x, y) = (strip.x + ink.x + half(ink.size.width), strip.y + ink.y + half(ink.size.height));
        html! {
            text.words x=(pt(x)) y=(pt(y)) fill=(known.ink) font-size=(pt(ink.size.height)) textLength=(pt(ink.size.width)) lengthAdjust="spacingAndGlyphs" { (known.words) }
        }
    }

    /// What a layer lies on.
    fn under(&self, layer: usize) -> Rect {
        let on = self.laid.get(layer).and_then(|layer| layer.on).and_then(|on| self.laid.get(on));
        on.map_or_else(|| Rect::new(Length::ZERO, Length::ZERO, self.recipe.finished), |on| on.rect)
    }

    /// What shows beside a layer: a number beside the card for each border, with a line to where it is.
    pub(super) fn borders(&self, layer: usize) -> Markup {
        let Some(lies) = self.laid.get(layer) else { return html! {} };
        let (letters, ..) = self.letters();
        let (under, rect) = (self.under(layer), lies.rect);
        let Size { width, height } = self.recipe.finished;
        let middle = (rect.x + half(rect.size.width), rect.y + half(rect.size.height));
        let [left, right, top, bottom] = lies.borders;
        let off = points(letters * 0.45);
        let level = [(left, -off, under.x, rect.x, "end"), (right, width + off, under.right(), rect.right(), "start")];
        let upright =
            [(top, -off, under.y, rect.y, "auto"), (bottom, height + off, under.bottom(), rect.bottom(), "hanging")];
        let told = |border: Length| fields::length(self.desk, border);
        html! {
            g.dims aria-hidden="true" font-size=(format!("{letters:.1}")) {
                @for (border, at, from, to, anchor) in level.into_iter().filter(|(border, ..)| *border > Length::ZERO) {
                    (measured((pt(at), pt(middle.1)), (pt(to), pt(middle.1)), (pt(from), pt(to)), &pt(middle.1), true))
                    text.number x=(pt(at)) y=(pt(middle.1)) text-anchor=(anchor) dominant-baseline="central" { (told(border)) }
                }
                @for (border, at, from, to, hangs) in upright.into_iter().filter(|(border, ..)| *border > Length::ZERO) {
                    (measured((pt(middle.0), pt(at)), (pt(middle.0), pt(to)), (pt(from), pt(to)), &pt(middle.0), false))
                    text.number x=(pt(middle.0)) y=(pt(at)) text-anchor="middle" dominant-baseline=(hangs) { (told(border)) }
                }
            }
        }
    }

    /// The front of the card without its layers.
    pub(super) fn base(&self) -> Markup {
        let Size { width, height } = self.recipe.finished;
        html! { rect.base fill=(self.stock(self.recipe.base)) width=(pt(width)) height=(pt(height)) {} }
    }

    /// All layers, the lowest first.
    pub(super) fn papers(&self) -> Markup {
        html! { g.papers { @for (layer, lies) in self.laid.iter().enumerate() { (self.paper(layer, lies.rect)) } } }
    }
}

fn half(length: Length) -> Length {
    Length::from_ticks(length.ticks() / 2)
}

/// A place in a drawing, or a pair of them on one line.
type Place = (String, String);

/// A thin line from a number to a border, and the border itself with a tick at both ends.
fn measured(number: Place, layer: Place, (from, to): Place, along: &str, level: bool) -> Markup {
    let tick = |at: &str| {
        let (x, y) = if level { (at, along) } else { (along, at) };
        html! { line.tick x1=(x) y1=(y) x2=(x) y2=(y) {} }
    };
    html! {
        line.leader x1=(number.0) y1=(number.1) x2=(layer.0) y2=(layer.1) {}
        @if level { line.gap x1=(from) y1=(along) x2=(to) y2=(along) {} } @else { line.gap x1=(along) y1=(from) x2=(along) y2=(to) {} }
        (tick(&from)) (tick(&to))
    }
}

/// The front of the card, then each layer alone, where it lies on the card, with what shows beside it.
pub(super) fn apart(desk: &Desk<'_>, index: usize) -> Option<(Markup, Vec<(Markup, Size)>)> {
    let drawn = Pulled { alone: true, ..Pulled::new(desk, &desk.made.plan, index)? };
    let length = |length: Length| fields::length(desk, length);
    let framed = |said: String, inside: Markup| {
        html! { svg.lined.alone xmlns="http://www.w3.org/2000/svg" viewBox=(drawn.view()) role="img" font-family="'Libertinus Serif', serif" aria-label=(said) { (inside) } }
    };
    // The prints lie on the page once, for all drawings of this recipe.
    let prints = html! {
        defs { @for (id, address, sheet) in drawn.faces() {
            image id=(id) href=(address) width=(pt(sheet.width)) height=(pt(sheet.height)) preserveAspectRatio="none" {}
        } }
    };
    let base = framed(say("cards-base", &[]), html! { (prints) (drawn.base()) });
    let Size { width, height } = drawn.recipe.finished;
    let one = |(layer, lies): (usize, &LaidLayer)| {
        let (under, size) = (drawn.under(layer), lies.rect.size);
        let name = drawn.recipe.layers.get(layer).map(|layer| layer.name.as_str()).unwrap_or_default();
        let facts = [
            ("layer", name.into()),
            ("size", format!("{} × {}", length(size.width), length(size.height)).into()),
            ("borders", told(desk, lies).into()),
        ];
        let inside = html! {
            rect.card-edge width=(pt(width)) height=(pt(height)) {}
            rect.under x=(pt(under.x)) y=(pt(under.y)) width=(pt(under.size.width)) height=(pt(under.size.height)) {}
            (drawn.paper(layer, lies.rect))
            (drawn.borders(layer))
        };
        (framed(say("apart-alone", &facts), inside), size)
    };
    Some((base, drawn.laid.iter().enumerate().map(one).collect()))
}

/// The borders of a layer in words.
fn told(desk: &Desk<'_>, lies: &LaidLayer) -> String {
    let [left, right, top, bottom] = lies.borders;
    let length = |border: Length| fields::length(desk, border);
    if left == right && top == bottom && left == top {
        return say("apart-border-all", &[("border", length(left).into())]);
    }
    let facts = [
        ("left", length(left).into()),
        ("right", length(right).into()),
        ("top", length(top).into()),
        ("bottom", length(bottom).into()),
    ];
    say("apart-borders", &facts)
}
