//! A layer more on a recipe, its size by subtraction: a border all round, or a share of what it is laid on.
//!
//! Left out on purpose: names and colours chosen well, which are the maker's; and whether the sheet still gives its cards,
//! which the plan tells.

use measure::formats::usual_border;
use measure::round::floor;
use measure::{Length, Rect, Size};

use super::answer::Plan;
use super::fit;
use super::laid::{LaidLayer, stands};
use crate::model::{Anchor, Layer, Material, Placement, Project, Range, Recipe, Spot};

/// What can be added.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Fresh {
    /// Patterned paper, a border smaller all round.
    Panel,
    /// Patterned paper laid across, a third as high.
    Band,
    /// Cardstock behind a layer, a border larger all round.
    Mat,
    /// Cardstock, a border smaller all round.
    Piece,
    /// Cardstock laid across, without words.
    Strip,
    /// Cardstock with a greeting.
    Greeting,
    /// Ribbon laid across.
    Ribbon,
}

impl Fresh {
    /// All of them, the most usual first.
    pub const ALL: [Fresh; 7] =
        [Fresh::Mat, Fresh::Panel, Fresh::Band, Fresh::Greeting, Fresh::Ribbon, Fresh::Strip, Fresh::Piece];

    /// Its name for forms.
    pub const fn name(self) -> &'static str {
        match self {
            Fresh::Panel => "panel",
            Fresh::Band => "band",
            Fresh::Mat => "mat",
            Fresh::Piece => "plain",
            Fresh::Strip => "across",
            Fresh::Greeting => "strip",
            Fresh::Ribbon => "ribbon",
        }
    }
}

/// A layer more. Indices are those of the recipe as it was.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Added {
    /// Before which layer it comes; as many as there are: on top of all.
    pub at: usize,
    /// The layer, without a name.
    pub layer: Layer,
    /// Layers that change with it: one that a mat was put behind.
    pub changed: Vec<(usize, Layer)>,
}

/// A layer more on (a mat: behind) a layer of the recipe, or on the card's front.
///
/// # Shape
/// `None` where there is no such layer, no room for it, or no greeting or ribbon in the project. Sizes are whole marks.
pub fn added(plan: &Plan, recipe: usize, on: Option<usize>, fresh: Fresh) -> Option<Added> {
    let project = &plan.project;
    let known = project.recipes.get(recipe)?;
    let laid = stands(plan, recipe);
    let adding = Adding { project, recipe: known, laid: &laid, border: usual_border(project.unit) };
    if fresh == Fresh::Mat {
        return match on {
            Some(behind) => adding.mat(behind),
            None => adding.piece(None),
        };
    }
    // What is laid on a mat is laid on what the mat shows its border around.
    let on = on.map(|on| inner(known, on));
    if on.is_some_and(|on| on >= known.layers.len()) {
        return None;
    }
    match fresh {
        Fresh::Panel => adding.panel(on),
        Fresh::Band => adding.band(on),
        Fresh::Strip => adding.strip(on),
        Fresh::Greeting => adding.greeting(on),
        Fresh::Ribbon => adding.ribbon(on),
        Fresh::Piece | Fresh::Mat => adding.piece(on),
    }
}

/// The layer that a mat, or the mats behind it, show a border around; any other layer is its own.
fn inner(recipe: &Recipe, layer: usize) -> usize {
    let mut at = layer;
    for _ in 0..recipe.layers.len() {
        match recipe.layers.get(at).map(|layer| &layer.material) {
            Some(Material::Mat { follows, .. }) => at = *follows,
            _ => break,
        }
    }
    at
}

/// The outermost mat behind a layer; the layer itself if it has none.
fn outer(recipe: &Recipe, layer: usize) -> usize {
    let behind = |inner: usize| {
        let follows = |layer: &Layer| matches!(layer.material, Material::Mat { follows, .. } if follows == inner);
        recipe.layers.iter().position(follows)
    };
    let mut at = layer;
    for _ in 0..recipe.layers.len() {
        at = behind(at).unwrap_or(at);
    }
    at
}

struct Adding<'a> {
    project: &'a Project,
    recipe: &'a Recipe,
    laid: &'a [LaidLayer],
    border: Length,
}

impl Adding<'_> {
    fn step(&self) -> Length {
        self.project.mark.step()
    }

    fn under(&self, on: Option<usize>) -> Option<Rect> {
        match on {
            None => Some(fit::front(self.recipe)),
            Some(on) => self.laid.get(on).map(|laid| laid.rect),
        }
    }

    /// A border smaller all round, in whole marks.
    fn within(&self, on: Option<usize>) -> Option<Size> {
        let size = self.under(on)?.size.inset(self.border);
        let size = Size::new(floor(size.width, self.step()), floor(size.height, self.step()));
        (size.width >= self.step() && size.height >= self.step()).then_some(size)
    }

    /// As wide as what it is laid on; on the card itself a border smaller.
    fn across(&self, on: Option<usize>) -> Option<Length> {
        match on {
            None => self.within(None).map(|size| size.width),
            Some(_) => Some(floor(self.under(on)?.size.width, self.step())).filter(|wide| *wide >= self.step()),
        }
    }

    /// The first cardstock that is not the base's.
    fn other_stock(&self) -> usize {
        (0..self.project.cardstocks.len()).find(|stock| *stock != self.recipe.base).unwrap_or(self.recipe.base)
    }

    /// Right above what it is laid on.
    fn lowest(&self, on: Option<usize>, material: Material, placement: Placement) -> Option<Added> {
        let at = on.map_or(0, |on| on + 1);
        Some(Added {
            at,
            layer: Layer { name: String::new(), material, placement, stamped: None },
            changed: Vec::new(),
        })
    }

    /// On top of all layers.
    fn topmost(&self, material: Material, placement: Placement) -> Option<Added> {
        let at = self.recipe.layers.len();
        Some(Added {
            at,
            layer: Layer { name: String::new(), material, placement, stamped: None },
            changed: Vec::new(),
        })
    }

    /// Laid across, its middle on the lower third; on the upper third if something lies there already.
    ///
    /// # Source
    /// The lower third: common practice.
    fn on_a_third(&self, on: Option<usize>, size: Size, overlap: bool) -> Option<Placement> {
        let under = self.under(on)?;
        let third = Length::from_ticks(under.size.height.ticks() / 3 - size.height.ticks() / 2);
        let off = floor(third.max(Length::ZERO), self.step());
        let low = Rect::new(under.x, under.bottom() - off - size.height, Size::new(under.size.width, size.height));
        let taken = |laid: &LaidLayer| {
            laid.on == on && laid.rect.overlaps(low) && laid.rect.size.height < half(under.size.height)
        };
        let overlap = overlap || !size.fits(under.size);
        let lies = |anchor, down| Placement { on, anchor, right: Length::ZERO, down, overlap };
        Some(if self.laid.iter().any(taken) { lies(Anchor::Top, off) } else { lies(Anchor::Bottom, -off) })
    }

    fn patterned(
        &self,
        on: Option<usize>,
        prefer: Size,
        least: Size,
        most: Size,
        placement: Placement,
    ) -> Option<Added> {
        let from_partner = prefer.height < half(self.recipe.finished.height)
            && self.project.recipes.iter().flat_map(|recipe| &recipe.layers).any(Layer::is_from_partner);
        let one = self.step();
        let range = |least: Length, most: Length| Range { least: least.max(one), most: most.max(one) };
        let material = Material::Patterned {
            width: range(least.width, most.width),
            height: range(least.height, most.height),
            prefer,
            free_size: false,
            may_turn: false,
            from_partner,
            die: None,
        };
        self.lowest(on, material, placement)
    }

    fn panel(&self, on: Option<usize>) -> Option<Added> {
        let most = self.within(on)?;
        self.patterned(on, most, most.inset(self.border), most, middle(on))
    }

    fn band(&self, on: Option<usize>) -> Option<Added> {
        let under = self.under(on)?.size.height;
        let high = floor(Length::from_ticks(under.ticks() / 3), self.step()).max(self.step());
        let prefer = Size::new(self.across(on)?, high);
        let placement = self.on_a_third(on, prefer, false)?;
        // Chosen: a border lower or higher looks right too.
        let play = self.border * 2;
        let least = Size::new(prefer.width - play, high - play);
        let most = Size::new(prefer.width, (high + play).min(floor(under, self.step())));
        self.patterned(on, prefer, least, most, placement)
    }

    fn piece(&self, on: Option<usize>) -> Option<Added> {
        let size = self.within(on)?;
        let cardstock = if on.is_none() { self.other_stock() } else { self.recipe.base };
        self.lowest(on, Material::Plain { size, cardstock }, middle(on))
    }

    fn strip(&self, on: Option<usize>) -> Option<Added> {
        // Chosen: 3/4 in or 18 mm, between the half and the whole inch of common practice.
        let size = Size::new(self.across(on)?, floor(self.border * 6, self.step()).max(self.step()));
        let placement = self.on_a_third(on, size, false)?;
        self.topmost(Material::Plain { size, cardstock: self.recipe.base }, placement)
    }

    fn greeting(&self, on: Option<usize>) -> Option<Added> {
        let inked = self.project.greetings.first()?.inked;
        // Chosen: two borders clear on every side of the ink.
        let size = Size::new(inked.width + self.border * 4, inked.height + self.border * 4);
        let placement = self.on_a_third(on, size, false)?;
        let (cardstock, spot) = (self.recipe.base, Spot::default());
        self.topmost(Material::Strip { size, cardstock, greeting: 0, spot, foam_squares: 0 }, placement)
    }

    fn ribbon(&self, on: Option<usize>) -> Option<Added> {
        let wide = self.project.ribbons.first()?.width;
        let under = self.under(on)?.size.width;
        // Common practice: half an inch (12 mm) tucked behind at each end.
        let placement = self.on_a_third(on, Size::new(under, wide), true)?;
        self.topmost(Material::Ribbon { ribbon: 0, length: under + self.border * 8, bow: false }, placement)
    }

    /// A mat behind a layer and the mats it has: it takes their place, and the innermost shrinks where there is no room.
    fn mat(&self, behind: usize) -> Option<Added> {
        let (followed, core) = (outer(self.recipe, behind), inner(self.recipe, behind));
        let lies = self.laid.get(followed)?;
        let under = self.under(lies.on)?.size;
        let mut layer = self.recipe.layers.get(followed)?.clone();
        let mut shrunk = self.recipe.layers.get(core)?.clone();
        if matches!(layer.material, Material::Ribbon { .. }) {
            return None;
        }
        let round = self.border * 2;
        let lost = |under: Length, own: Length| {
            let gap = under - own;
            if gap < Length::ZERO { Length::ZERO } else { (round + gap.min(round) - gap).max(Length::ZERO) }
        };
        let lost = Size::new(lost(under.width, lies.rect.size.width), lost(under.height, lies.rect.size.height));
        let less = |range: &mut Range, by: Length| (range.least, range.most) = (range.least - by, range.most - by);
        let left = match &mut shrunk.material {
            Material::Patterned { width, height, prefer, .. } => {
                less(width, lost.width);
                less(height, lost.height);
                *prefer = Size::new(prefer.width - lost.width, prefer.height - lost.height);
                Some(Size::new(width.least, height.least))
            }
            Material::Plain { size, .. } => {
                *size = Size::new(size.width - lost.width, size.height - lost.height);
                Some(*size)
            }
            // Words need their room.
            _ => None,
        };
        let shrinks = left.is_some_and(|left| left.width >= self.step() && left.height >= self.step());
        let fresh = if shrinks { lost } else { Size::default() };
        let size = lies.rect.size;
        let outside = Size::new(size.width - fresh.width + round, size.height - fresh.height + round);
        let mut placement = layer.placement.clone();
        placement.on = lies.on;
        placement.overlap |= !outside.fits(under);
        layer.placement = middle(None);
        let mut changed = Vec::new();
        if core == followed {
            shrunk.placement = middle(None);
            changed.push((core, if shrinks { shrunk } else { layer }));
        } else {
            changed.push((followed, layer));
            changed.extend(shrinks.then_some((core, shrunk)));
        }
        let cardstock = vec![(None, self.other_stock())];
        let material = Material::Mat { follows: followed, border: self.border, cardstock };
        Some(Added { at: followed, layer: Layer { name: String::new(), material, placement, stamped: None }, changed })
    }
}

fn half(length: Length) -> Length {
    Length::from_ticks(length.ticks() / 2)
}

fn middle(on: Option<usize>) -> Placement {
    Placement { on, anchor: Anchor::Middle, right: Length::ZERO, down: Length::ZERO, overlap: false }
}
