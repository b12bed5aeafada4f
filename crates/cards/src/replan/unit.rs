//! The other unit: cards, borders and pieces designed anew in its own formats and whole marks.
//!
//! | what | becomes |
//! |---|---|
//! | the finished card | the nearest format of the other unit's table, square if it was square |
//! | a side that spans the card but for borders | the new side less as many of the new borders |
//! | another side | the same share of the card, at a whole mark |
//! | a border | as many usual borders: 1/8 in and 3 mm stand for one another |
//! | paper that is there | its own size, squared down to a whole mark |
//! | Letter and A4 | one another, and the envelope that goes with the format |
//! | stamps, ribbon, thickness | stay what they are; only written in the other unit |
//!
//! # Source
//! Formats, borders and envelopes: the tables of [`measure::formats`], [`measure::sheets`], [`measure::envelopes`].
//! That a side short of the card by less than a quarter spans it but for borders: chosen.

use measure::envelopes::{EnvelopeSize, envelopes_for};
use measure::formats::{self, CardFormat};
use measure::{Length, Mark, Rect, Size, Unit, envelope, round, sheet};

use super::sheet::Sized;
use super::{cardstock, note};
use crate::finding::Finding;
use crate::model::{Cardstock, Edges, Envelope, Layer, Material, Project, Range, Recipe, Spot, Tape, Trimmer};

/// The project in the other unit. How many cards a sheet gives is left as it was.
pub(super) fn redesigned(project: &Project, to: Unit, findings: &mut Vec<Finding>) -> Project {
    let mut new = project.clone();
    let turn = Turn { from: project.unit, to };
    (new.unit, new.mark) = (to, Mark::usual(to));
    new.trimmer = turn.trimmer(&project.trimmer);
    for pack in &mut new.packs {
        pack.unusable = turn.edges(pack.unusable);
        // Squared: the odd bit beyond the last mark is cut off.
        pack.sheet = Size::new(turn.down(pack.sheet.width), turn.down(pack.sheet.height));
        for face in pack.designs.iter_mut().flat_map(|design| [&mut design.front, &mut design.back]) {
            for length in
                face.collage.iter_mut().flat_map(|collage| collage.columns.iter_mut().chain(&mut collage.rows))
            {
                *length = turn.down(*length);
            }
            for region in &mut face.regions {
                let Rect { x, y, size } = region.rect;
                let (left, top) = (turn.down(x), turn.down(y));
                // A region stays on its sheet, which may have lost a bit at its far edges.
                let right = turn.up(x + size.width).min(pack.sheet.width);
                let bottom = turn.up(y + size.height).min(pack.sheet.height);
                region.rect = Rect::new(left, top, Size::new(right - left, bottom - top));
            }
            face.regions
                .retain(|region| region.rect.size.width > Length::ZERO && region.rect.size.height > Length::ZERO);
        }
    }
    cardstock(&mut new, |size| Some(turn.stock(size)), findings);
    for ribbon in &mut new.ribbons {
        ribbon.width = turn.nearest(ribbon.width).max(new.mark.step());
        // A spool holds what it holds; what is said of it is not more.
        ribbon.spool = ribbon.spool.map(|spool| turn.down(spool));
    }
    if let Some(tape) = &mut new.supplies.tape {
        tape.two_lines_from = turn.twin(tape.two_lines_from, Tape::usual_two_lines_from);
        tape.roll = tape.roll.map(|roll| turn.down(roll));
    }
    for greeting in &mut new.greetings {
        greeting.inked = Size::new(turn.up(greeting.inked.width), turn.up(greeting.inked.height));
    }
    // The envelope that goes with the largest card, if every card goes in; else the smallest that takes them all.
    let mut largest: Option<(Size, Option<&CardFormat>)> = None;
    let mut around = Size::default();
    for (recipe, old) in new.recipes.iter_mut().zip(&project.recipes) {
        let format = turn.format(old, new.cardstocks.get(old.base));
        let lies = old.finished.width > old.finished.height;
        let face = format.map_or_else(|| turn.round(old.finished).short_first(), |format| format.face);
        recipe.finished = if lies { face.turned() } else { face };
        turn.recipe(old, recipe, project);
        around = Size::new(around.width.max(face.width), around.height.max(face.height));
        if largest.is_none_or(|(largest, _)| largest.area() < face.area()) {
            largest = Some((face, format));
        }
    }
    if project.envelope.is_some() {
        let usual = largest.and_then(|(_, format)| format?.envelopes.first()).and_then(|name| envelope(name));
        let takes_all = |row: &&EnvelopeSize| largest.is_some_and(|(face, _)| face == around) && around.fits(row.size);
        let roomy = || envelopes_for(around, Length::mm(6)).into_iter().find(|row| row.unit == to);
        match usual.filter(takes_all).or_else(roomy) {
            Some(row) => {
                new.envelope = Some(Envelope { name: row.name.to_owned(), size: row.size });
                let told = note("replan-envelope").with("envelope", row.name).with("width", row.size.width);
                findings.push(told.with("height", row.size.height));
            }
            None => {
                new.envelope = None;
                findings.push(note("replan-envelope-left-out"));
            }
        }
    }
    new
}

/// Sizes of pieces as they are designed anew.
pub(super) fn sizes(mut sizes: Vec<Sized>, old: &Project, new: &Project) -> Vec<Sized> {
    let turn = Turn { from: old.unit, to: new.unit };
    for (recipe, layer, size) in &mut sizes {
        let now = turn.size(*size, old.recipes[*recipe].finished, new.recipes[*recipe].finished);
        // Within the new range, which is rounded too.
        *size = match &new.recipes[*recipe].layers[*layer].material {
            Material::Patterned { width, height, .. } => {
                Size::new(now.width.clamp(width.least, width.most), now.height.clamp(height.least, height.most))
            }
            _ => now,
        };
    }
    sizes
}

/// From one unit to the other.
#[derive(Debug, Clone, Copy)]
struct Turn {
    from: Unit,
    to: Unit,
}

impl Turn {
    fn step(self) -> Length {
        Mark::usual(self.to).step()
    }

    fn nearest(self, length: Length) -> Length {
        Mark::usual(self.to).nearest(length)
    }

    fn down(self, length: Length) -> Length {
        round::floor(length, self.step()).max(self.step())
    }

    fn up(self, length: Length) -> Length {
        round::ceiling(length, self.step())
    }

    /// What is usual in one unit stands for what is usual in the other; another length is what still fits.
    fn twin(self, length: Length, usual: impl Fn(Unit) -> Length) -> Length {
        if length == usual(self.from) { usual(self.to) } else { self.down(length) }
    }

    fn edges(self, edges: Edges) -> Edges {
        let Edges { left, top, right, bottom } = edges;
        Edges { left: self.up(left), top: self.up(top), right: self.up(right), bottom: self.up(bottom) }
    }

    fn trimmer(self, trimmer: &Trimmer) -> Trimmer {
        Trimmer {
            longest_cut: self.twin(trimmer.longest_cut, |unit| Trimmer::usual(unit).longest_cut),
            smallest_strip: self.twin(trimmer.smallest_strip, |unit| Trimmer::usual(unit).smallest_strip),
            ..trimmer.clone()
        }
    }

    /// Letter and A4 stand for one another; another sheet is squared down.
    fn stock(self, size: Size) -> Size {
        let pair = match self.to {
            Unit::Millimetre => (sheet("letter"), sheet("A4")),
            Unit::Inch => (sheet("A4"), sheet("letter")),
        };
        match pair {
            (Some(mine), Some(other)) if mine.size == size.short_first() => {
                if size.width > size.height {
                    Size::new(other.size.height, other.size.width)
                } else {
                    other.size
                }
            }
            _ => Size::new(self.down(size.width), self.down(size.height)),
        }
    }

    /// The nearest format of the new unit, on whole marks, square if the old one was, whose base comes out of the
    /// cardstock; `None` if none is near.
    ///
    /// Chosen: further off by a fifth, it is another card.
    fn format(self, old: &Recipe, stock: Option<&Cardstock>) -> Option<&'static CardFormat> {
        let finished = old.finished.short_first();
        let square = |size: Size| size.width == size.height;
        let whole = |format: &&CardFormat| {
            let sides = [format.face.width, format.face.height];
            format.unit == self.to && sides.iter().all(|side| Mark::usual(self.to).holds(*side))
        };
        let off = |format: &CardFormat| {
            let face = format.face.short_first();
            (face.width - finished.width).ticks().abs() + (face.height - finished.height).ticks().abs()
        };
        let comes_out = |format: &CardFormat| {
            let lies = old.finished.width > old.finished.height;
            let face = if lies { format.face.turned() } else { format.face };
            let (base, _) = Recipe { finished: face, ..old.clone() }.base_size();
            stock.is_none_or(|stock| stock.sheets.iter().any(|sheet| base.fits_turned(sheet.usable())))
        };
        let near = |format: &&CardFormat| {
            let around = (finished.width + finished.height).ticks();
            square(format.face) == square(finished) && off(format) * 5 <= around && comes_out(format)
        };
        formats::formats().filter(whole).filter(near).min_by_key(|format| off(format))
    }

    /// A card without a format: its sides at the nearest 5 mm or 1/4 in.
    fn round(self, finished: Size) -> Size {
        let step = match self.to {
            Unit::Millimetre => Length::mm(5),
            Unit::Inch => Mark::QuarterInch.step(),
        };
        let side = |side: Length| round::nearest(side, step).max(step);
        Size::new(side(finished.width), side(finished.height))
    }

    /// So many usual borders of the new unit, at a whole millimetre or half a mark, never under the narrow border.
    ///
    /// # Source
    /// Narrow borders of 1/16 in and 2 mm: common practice.
    fn border(self, border: Length) -> Length {
        let (old, new) = (formats::usual_border(self.from), formats::usual_border(self.to));
        let (step, narrow) = match self.to {
            Unit::Inch => (Mark::SixteenthInch, Mark::SixteenthInch.step()),
            Unit::Millimetre => (Mark::WholeMillimetre, Length::mm(2)),
        };
        if border <= Length::ZERO {
            return Length::ZERO;
        }
        step.nearest(share(border, new, old)).max(narrow)
    }

    /// A side of a piece on a card side that had length `old` and has length `new`.
    fn side(self, side: Length, old: Length, new: Length) -> Length {
        let short = old - side;
        if short >= Length::ZERO && short * 4 < old {
            let each = Length::from_ticks(short.ticks() / 2);
            return new - self.border(each) * 2;
        }
        self.nearest(share(side, new, old)).max(self.step())
    }

    fn size(self, size: Size, old: Size, new: Size) -> Size {
        Size::new(self.side(size.width, old.width, new.width), self.side(size.height, old.height, new.height))
    }

    fn recipe(self, old: &Recipe, new: &mut Recipe, project: &Project) {
        let (was, is) = (old.finished, new.finished);
        // A sheet glued inside lies in the open card or in half of it: it follows the card like any layer.
        new.inside = old.inside.map(|(size, stock)| (self.size(size, was, is), stock));
        for (layer, before) in new.layers.iter_mut().zip(&old.layers) {
            self.layer(layer, before, was, is, project);
        }
    }

    fn layer(self, new: &mut Layer, old: &Layer, was: Size, is: Size, project: &Project) {
        let range = |range: &Range, was: Length, is: Length| {
            let (least, most) = (self.side(range.least, was, is), self.side(range.most, was, is));
            Range { least: least.min(most), most: most.max(least) }
        };
        if let Some((_, Spot::Border { border, .. })) = &mut new.stamped {
            *border = self.border(*border);
        }
        match &mut new.material {
            Material::Patterned { width, height, prefer, .. } => {
                *width = range(width, was.width, is.width);
                *height = range(height, was.height, is.height);
                let liked = self.size(*prefer, was, is);
                *prefer = Size::new(
                    liked.width.clamp(width.least, width.most),
                    liked.height.clamp(height.least, height.most),
                );
            }
            Material::Mat { border, .. } => *border = self.border(*border),
            Material::Plain { size, .. } => *size = self.size(*size, was, is),
            Material::Strip { size, greeting, spot, .. } => {
                if let Spot::Border { border, .. } = spot {
                    *border = self.border(*border);
                }
                // As high as its stamp asks for, which stays the same stamp.
                let height = self.nearest(size.height).max(self.step());
                *size = Size::new(self.side(size.width, was.width, is.width), height);
                if let Some(stamp) = project.greetings.get(*greeting) {
                    // With as much clear round it as it had, up to the usual 1/8 in (common practice).
                    let Material::Strip { size: before, .. } = &old.material else { return };
                    let around = |before: Length, inked: Length| {
                        let clear = Length::from_ticks((before - inked).ticks() / 2).max(Length::ZERO);
                        self.up(inked) + self.up(clear.min(formats::usual_border(Unit::Inch))) * 2
                    };
                    let width = around(before.width, stamp.inked.width);
                    *size =
                        Size::new(size.width.max(width), size.height.max(around(before.height, stamp.inked.height)));
                }
            }
            Material::Ribbon { length, .. } => {
                // What is tucked in or tied stays; what spans the card follows it.
                *length = self.up(*length + (is.width - was.width).max(Length::ZERO));
            }
        }
        // A small shift leaves a border, a large one is a share of the card.
        let shift = |shift: Length, was: Length, is: Length| {
            let far = shift.max(-shift);
            let far = if far * 4 < was { self.border(far) } else { self.nearest(share(far, is, was)) };
            if shift < Length::ZERO { -far } else { far }
        };
        new.placement.right = shift(old.placement.right, was.width, is.width);
        new.placement.down = shift(old.placement.down, was.height, is.height);
    }
}

/// `length` × `new` / `old`, to the nearest tick.
fn share(length: Length, new: Length, old: Length) -> Length {
    let product = i128::from(length.ticks()) * i128::from(new.ticks());
    let ticks = product / i128::from(old.ticks().max(1));
    Length::from_ticks(i64::try_from(ticks).unwrap_or(0))
}
