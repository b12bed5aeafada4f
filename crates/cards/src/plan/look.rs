//! Whether layers, prints and envelope look right: findings only, nothing is changed.

use std::collections::BTreeSet;

use measure::envelopes::{clearance, envelopes};
use measure::{Length, Rect, Size, Unit};

use super::answer::{Card, Layout, PartKind};
use super::fit;
use crate::finding::{Finding, Severity, Subject};
use crate::mailing::stacked;
use crate::model::{Material, Placing, Project, Recipe, Wanted, Way};
use crate::stamping::{self, Sides};

/// Narrowest border that hides small errors of cutting (common practice).
const NARROWEST_BORDER: Length = Length::from_ticks(Length::INCH.ticks() / 16);
/// Least clearance of an envelope beyond the card's thickness (common practice).
const EIGHTH: Length = Length::from_ticks(Length::INCH.ticks() / 8);

/// Look at every recipe, layout and the envelope.
pub(super) fn look(project: &Project, layouts: &[Layout], cards: &[Card], findings: &mut Vec<Finding>) {
    for (recipe, sizes) in made(project, layouts, cards) {
        let recipe = &project.recipes[recipe];
        layers(project, recipe, &sizes, findings);
    }
    for (index, recipe) in project.recipes.iter().enumerate() {
        base(project, recipe, findings);
        inside(recipe, findings);
        envelope(project, index, findings);
    }
    for (index, layout) in layouts.iter().enumerate() {
        prints(project, index, layout, findings);
        regions(project, index, layout, findings);
        strips(project, index, layout, findings);
    }
}

/// Each recipe with the sizes of its layers, every different set of sizes once; a recipe without cards with the sizes it prefers.
fn made(project: &Project, layouts: &[Layout], cards: &[Card]) -> BTreeSet<(usize, Vec<Size>)> {
    let mut made = BTreeSet::new();
    for card in cards {
        let recipe = &project.recipes[card.recipe];
        let piece = |layer: usize| {
            let part = card.parts.iter().find(|part| part.layer == layer);
            match part.map(|part| &part.kind) {
                Some(PartKind::Patterned { layout, piece, .. }) => layouts[*layout].pieces[*piece].stands(),
                _ => Size::default(),
            }
        };
        made.insert((card.recipe, fit::sizes(project, recipe, piece)));
    }
    for (index, recipe) in project.recipes.iter().enumerate() {
        if !cards.iter().any(|card| card.recipe == index) {
            let prefer = |layer: usize| match &recipe.layers[layer].material {
                Material::Patterned { prefer, .. } => *prefer,
                _ => Size::default(),
            };
            made.insert((index, fit::sizes(project, recipe, prefer)));
        }
    }
    made
}

/// Whether each layer lies inside what it lies on, and how much of that shows.
fn layers(project: &Project, recipe: &Recipe, sizes: &[Size], findings: &mut Vec<Finding>) {
    let places = fit::places(recipe, sizes);
    for (index, layer) in recipe.layers.iter().enumerate() {
        let about = |severity, code| {
            let finding = Finding::new(severity, Subject::Recipe(recipe.name.clone()), code);
            finding.with("recipe", recipe.name.as_str()).with("layer", layer.name.as_str())
        };
        let under = fit::host(recipe, index);
        let on = under.map_or_else(|| fit::front(recipe), |under| places[under]);
        let gaps = gaps(on, places[index]);
        let narrowest = gaps.into_iter().min().unwrap_or_default();
        if narrowest < Length::ZERO && !layer.placement.overlap {
            let host = under.map_or("", |under| recipe.layers[under].name.as_str());
            findings.push(about(Severity::Warning, "layer-runs-over").with("over", -narrowest).with("host", host));
        }
        if let Some(above) = (index + 1..places.len()).find(|&above| places[above].contains(places[index])) {
            let above = recipe.layers[above].name.as_str();
            findings.push(about(Severity::Note, "layer-hidden").with("above", above));
        }
        let told = match layer.material {
            Material::Mat { border, .. } => Some(border),
            _ => None,
        };
        let shows = gaps.into_iter().filter(|&gap| gap > Length::ZERO).min();
        if let Some(border) = [told, shows].into_iter().flatten().min().filter(|&border| border < NARROWEST_BORDER) {
            findings
                .push(about(Severity::Warning, "border-narrow").with("border", border).with("least", NARROWEST_BORDER));
        }
        if let Some((greeting, spot)) = layer.greeting()
            && let Some(greeting) = project.greetings.get(greeting)
        {
            let size = sizes[index];
            let clear = Sides::of(size, stamping::place(size, greeting, spot).ink).least();
            let wished = stamping::wished(spot);
            if clear < wished {
                let (severity, code) = match clear < Length::ZERO {
                    true => (Severity::Serious, "greeting-too-large"),
                    false => (Severity::Warning, "greeting-tight"),
                };
                let finding = about(severity, code).with("words", greeting.words.as_str());
                let finding = match clear < Length::ZERO {
                    true => finding.with("over", -clear),
                    false => finding.with("clear", clear).with("least", wished),
                };
                let would_do = stamping::grown(project, size, greeting, spot);
                findings.push(finding.with("wide", would_do.width).with("high", would_do.height));
            }
            let ink = stamping::place(size, greeting, spot).ink;
            let ink = Rect::new(places[index].x + ink.x, places[index].y + ink.y, ink.size);
            if let Some(above) = (index + 1..places.len()).find(|&above| places[above].overlaps(ink)) {
                let finding = about(Severity::Warning, "greeting-covered").with("words", greeting.words.as_str());
                findings.push(finding.with("above", recipe.layers[above].name.as_str()));
            }
        }
    }
}

/// What shows of `on` at the left, top, right and bottom of `layer`.
pub(super) fn gaps(on: Rect, layer: Rect) -> [Length; 4] {
    [layer.x - on.x, layer.y - on.y, on.right() - layer.right(), on.bottom() - layer.bottom()]
}

/// Whether the trimmer is long enough for the base.
fn base(project: &Project, recipe: &Recipe, findings: &mut Vec<Finding>) {
    let (size, _) = recipe.base_size();
    let long = size.width.max(size.height);
    if long > project.trimmer.longest_cut {
        let finding = Finding::new(Severity::Warning, Subject::Recipe(recipe.name.clone()), "base-longer-than-trimmer");
        findings.push(
            finding.with("recipe", recipe.name.as_str()).with("long", long).with("cut", project.trimmer.longest_cut),
        );
    }
}

/// Whether the inside sheet goes inside the base.
fn inside(recipe: &Recipe, findings: &mut Vec<Finding>) {
    let Some((inside, _)) = recipe.inside else { return };
    let (base, _) = recipe.base_size();
    if !inside.fits(base) {
        let finding = Finding::new(Severity::Warning, Subject::Recipe(recipe.name.clone()), "inside-too-large");
        let finding = finding.with("recipe", recipe.name.as_str()).with("width", inside.width);
        findings.push(finding.with("height", inside.height));
    }
}

/// Whether the cards go into the envelope, and which one of the table would do.
///
/// In each direction the clearance in all must cover the card's thickness and 1/8 in (common practice).
fn envelope(project: &Project, recipe: usize, findings: &mut Vec<Finding>) {
    let Some(envelope) = &project.envelope else { return };
    let recipe = &project.recipes[recipe];
    let thick = stacked(project, recipe);
    let wanted = thick + EIGHTH;
    let room = clearance(envelope.size, recipe.finished);
    let tightest = room.width.min(room.height);
    if tightest >= wanted {
        return;
    }
    let severity = if tightest < thick { Severity::Serious } else { Severity::Warning };
    let code = if tightest < thick { "envelope-too-small" } else { "envelope-tight" };
    let inches = project.unit == Unit::Inch;
    let next = envelopes().filter(|row| (row.unit == Unit::Inch) == inches).filter(|row| {
        let room = clearance(row.size, recipe.finished);
        room.width.min(room.height) >= wanted
    });
    let next = next.min_by_key(|row| row.size.area());
    let finding =
        Finding::new(severity, Subject::Envelope(envelope.name.clone()), code).with("envelope", envelope.name.as_str());
    let finding = finding
        .with("recipe", recipe.name.as_str())
        .with("clearance", tightest)
        .with("wanted", wanted)
        .with("thickness", thick);
    findings.push(match next {
        Some(row) => finding.with("next", row.name).with("width", row.size.width).with("height", row.size.height),
        None => finding.with("next", "none").with("width", Length::ZERO).with("height", Length::ZERO),
    });
}

/// Whether prints stand upright and printed panels stay whole.
fn prints(project: &Project, index: usize, layout: &Layout, findings: &mut Vec<Finding>) {
    let pack = &project.packs[layout.pack];
    for used in &layout.sheets {
        let design = &pack.designs[used.design];
        let face = design.face(used.side);
        let about = |code| {
            let finding = Finding::new(Severity::Warning, Subject::Design(design.letter.clone()), code);
            finding
                .with("design", design.letter.as_str())
                .with("face", face.name.as_str())
                .with("layout", as_count(index + 1))
        };
        let turned: Vec<&str> =
            layout.pieces.iter().filter(|piece| piece.turned).map(|piece| piece.mark.as_str()).collect();
        if face.way != Way::Any && !turned.is_empty() {
            findings.push(about("print-turned").with("pieces", turned.join(", ").as_str()));
        }
        if let Some(collage) = &face.collage {
            let panels = collage.rects();
            let cut =
                panels.iter().filter(|panel| !layout.pieces.iter().any(|piece| piece.rect.contains(**panel))).count();
            if cut > 0 && layout.panels.is_empty() {
                findings.push(about("panels-cut").with("cut", as_count(cut)).with("panels", as_count(panels.len())));
            }
        }
    }
}

/// Whether the regions that the maker marked are whole, and whether those to avoid show.
fn regions(project: &Project, index: usize, layout: &Layout, findings: &mut Vec<Finding>) {
    for used in &layout.sheets {
        let design = &project.packs[layout.pack].designs[used.design];
        let face = design.face(used.side);
        let about = |severity, code| {
            let finding = Finding::new(severity, Subject::Design(design.letter.clone()), code);
            let finding = finding.with("design", design.letter.as_str()).with("face", face.name.as_str());
            finding.with("layout", as_count(index + 1))
        };
        let kept = face.regions.iter().filter(|region| region.wanted != Wanted::Avoid).count();
        let gain = layout
            .gain
            .as_ref()
            .and_then(|gain| gain.prints.iter().find(|print| (print.design, print.side) == (used.design, used.side)));
        match gain {
            Some(print) => {
                // One that reaches into an unusable edge was not even asked for.
                let lost = kept.saturating_sub(print.after.kept);
                if lost > 0 {
                    findings.push(
                        about(Severity::Warning, "region-cut")
                            .with("lost", as_count(lost))
                            .with("regions", as_count(kept)),
                    );
                }
                if print.after.shown > 0 {
                    findings.push(about(Severity::Note, "region-shows"));
                }
            }
            None if !face.regions.is_empty() && project.placing != Placing::Plain => {
                findings.push(about(Severity::Note, "region-not-looked-at"));
            }
            None => {}
        }
    }
}

/// Whether any piece is narrower than the trimmer holds safely.
fn strips(project: &Project, index: usize, layout: &Layout, findings: &mut Vec<Finding>) {
    let narrow = |piece: &super::answer::Piece| piece.rect.size.width.min(piece.rect.size.height);
    if let Some(piece) = layout.pieces.iter().min_by_key(|piece| narrow(piece))
        && narrow(piece) < project.trimmer.smallest_strip
    {
        let finding = Finding::new(Severity::Warning, Subject::Layout(index + 1), "strip-narrow")
            .with("layout", as_count(index + 1));
        findings.push(
            finding
                .with("piece", piece.mark.as_str())
                .with("width", narrow(piece))
                .with("least", project.trimmer.smallest_strip),
        );
    }
}

/// A number of things as a fact counts it.
pub(super) fn as_count(count: usize) -> u64 {
    u64::try_from(count).unwrap_or(u64::MAX)
}
