//! The pages of a plan: finished cards, cut sheets, steps, what to cut, cautions.
//!
//! | offers | gives |
//! |---|---|
//! | [`handout`], [`edition()`] | every page but the colours of the papers, for [`crate::pdf::write`] |
//! | [`full_edition`] | every page, with them |
//! | [`one_page()`] | the handout on one page |
//! | [`templates()`] | pages at true size, to cut and fold by |
//! | [`envelope_templates`] | the envelope to make, at true size |
//! | [`cut_files`] | cut lines in true units |
//! | [`sheet_drawing`] | one patterned sheet with its cuts |
//! | [`card_picture`], [`pieces_in_picture`] | one finished card, and where its pieces lie in it |
//! | [`every_card`], [`contact_sheet`] | every finished card, small, on pages or on one sheet |
//! | [`placed_drawing`] | a print under its cuts, and which of its pictures stay whole |
//! | [`interest_drawing`], [`greeting_grounds`] | where a print's interest lies; what greetings are stamped on |
//! | [`light_table`], [`piece_drawing`] | both faces of a card's pieces, or one of them |
//! | [`step_picture`] | one step at the trimmer, in words and pictures |
//! | [`background_scene`], [`background_pixels`] | a stamped background at true size, and as a face |
//! | [`placing_guide`], [`light_box`] | where every impression of a background goes |
//! | [`kit_labels()`] | labels for the kits of a class |
//! | [`recut_steps`], [`lost_name`] | what is cut again for a spoiled piece |
//! | [`worded`] | findings and ways out in words |
//! | [`stamping_told`] | where greetings come, in the order in which to stamp them |
//! | [`stock_drawing`] | one sheet of cardstock with its cuts |
//!
//! The only part of this room that knows plans. Left out on purpose: how a plan was found, and files.

mod assembly;
mod card;
mod cautions;
mod colored;
mod contact;
mod cut_lines;
mod edition;
mod envelope;
mod errors;
mod guide;
mod interest;
mod kit_labels;
mod labels;
mod light;
mod look;
mod needs;
mod one_page;
mod opening;
mod other_sizes;
mod pages;
mod papers;
mod placed;
mod recut;
mod screen;
mod shares;
mod sketch;
mod stamped;
mod stamping;
mod steps;
mod swatch;
mod templates;
mod told;
pub mod worded;

use std::collections::BTreeMap;

use cards::Plan;
use cards::model::Side;
use cards::plan::{Card, CardPart, PartKind};
use measure::{Length, Rect, Size};

use crate::picture::Picture;
use crate::scene::{Mark, Role, Scene, share};
use told::Told;

pub use card::{GreetingGround, greeting_grounds};
pub use colored::{Colors, Nearest, PrintColors, Reads};
pub use contact::{contact_sheet, every_card};
pub use cut_lines::{CutFile, cut_files};
pub use edition::{Edition, Hand, Paper, Print};
pub use envelope::envelope_templates;
pub use guide::{ColoredIn, Guide, hand_of, light_box, placing_guide};
pub use interest::{Shade, interest_drawing};
pub use kit_labels::{KitLabel, LABEL_SHEETS, LabelSheet, kit_labels};
pub use light::{light_table, piece_drawing};
pub use one_page::one_page;
pub use placed::placed_drawing;
pub use recut::{lost_name, recut_steps};
pub use screen::{CutsOf, OnScreen, StepPicture, on_screen, step_picture, stock_drawing, unusable_edges};
pub use stamped::{background_pixels, background_scene, stamp_ink};
pub use stamping::{StampingTold, stamping_told};
pub use templates::templates;

/// What each face looks like: pack, design, side, seen with its own top up.
pub type Faces = BTreeMap<(usize, usize, Side), Picture>;

/// Every page of the plan, in the order in which it is worked through.
///
/// # Shape
/// Pure: the same plan and faces give the same pages. A face that is not in `faces` is left white.
pub fn handout(plan: &Plan, faces: &Faces, paper: Paper) -> Vec<Scene> {
    edition(plan, faces, &Edition::plain(plan, paper))
}

/// As [`handout`], for other eyes, another hand, another rule or in another language.
///
/// # Shape
/// The pieces, cards and counts are the same in every edition.
pub fn edition(plan: &Plan, faces: &Faces, edition: &Edition) -> Vec<Scene> {
    full_edition(plan, faces, &Colors::default(), edition)
}

/// As [`edition()`], with a chapter about the papers whose colours are known.
pub fn full_edition(plan: &Plan, faces: &Faces, colors: &Colors, edition: &Edition) -> Vec<Scene> {
    words::speaking(edition.language, || spoken_edition(plan, faces, colors, edition))
}

fn spoken_edition(plan: &Plan, faces: &Faces, colors: &Colors, edition: &Edition) -> Vec<Scene> {
    let told = Told::new(plan.project.mark, *edition);
    let mut pages = pages::Pages::new(told, &plan.project.name);
    opening::opening(plan, faces, told, &mut pages);
    needs::needs(plan, told, &mut pages);
    shares::shares(plan, &mut pages);
    colored::colored(plan, faces, colors, told, &mut pages);
    papers::papers(plan, faces, told, &mut pages);
    guide::chapters(plan, told, &mut pages);
    steps::steps(plan, faces, told, &mut pages);
    needs::cardstock(plan, told, &mut pages);
    stamping::stamping(plan, told, &mut pages);
    assembly::assembly(plan, faces, told, &mut pages);
    errors::errors(plan, faces, told, &mut pages);
    cautions::cautions(plan, told, &mut pages);
    other_sizes::other_sizes(plan, told, &mut pages);
    cautions::notes(&mut pages);
    pages.finish(&plan.project.name)
}

/// One patterned sheet with its cuts, dimensions, letters and up arrows; `None` if there is no such layout.
///
/// # Shape
/// `layout` is its index; the drawing is as large as `size` allows, the first design it is used for underneath.
pub fn sheet_drawing(plan: &Plan, faces: &Faces, layout: usize, size: Size) -> Option<Scene> {
    let found = plan.layouts.get(layout)?;
    let sketch = papers::sketch(plan, faces, found, found.sheets.first(), size.width);
    let told = Told::new(plan.project.mark, Edition::plain(plan, Paper::Letter));
    let place = look::inset(Rect::new(Length::ZERO, Length::ZERO, size), look::pt(9));
    let alt = papers::alt(plan, layout, found, told);
    let marks = sketch.marks(place, told, sketch::Says::All);
    let title = look::say("page-sheet-title-numbered", &[("number", (layout + 1).into())]);
    Some(Scene { size, title, marks: vec![Mark::role(Role::Figure(alt), marks)] })
}

/// Where the front of a card lies in a picture of it: a little room is left round it.
fn front_in_picture(plan: &Plan, card: &Card, width: Length) -> Rect {
    let finished = plan.project.recipes.get(card.recipe).map_or(Size::new(width, width), |recipe| recipe.finished);
    let height = share(width, finished.height.ticks(), finished.width.ticks());
    let room = share(width, 1, 12);
    Rect::new(room, room, Size::new(width, height))
}

/// Where each patterned piece lies in a [`card_picture`], as it lies there: its place among the card's parts and, in thousandths of
/// the picture's width and height, its left, top, right and bottom edge. The last one lies on top.
pub fn pieces_in_picture(plan: &Plan, card: &Card) -> Vec<(usize, [i64; 4])> {
    let front = front_in_picture(plan, card, Length::INCH);
    let Some(recipe) = plan.project.recipes.get(card.recipe) else { return Vec::new() };
    let (wide, tall) = (front.size.width + front.x * 2, front.size.height + front.y * 2);
    let thousandth = |at: Length, whole: Length| {
        let whole = i128::from(whole.ticks()).max(1);
        i64::try_from((i128::from(at.ticks()) * 1000 + whole / 2) / whole).unwrap_or_default()
    };
    let fit = look::Fit::into(recipe.finished, front);
    let patterned = card.parts.iter().enumerate().filter(|(_, part)| matches!(part.kind, PartKind::Patterned { .. }));
    let place = |(index, part): (usize, &CardPart)| {
        let rect = fit.rect(part.rect);
        let (x, y) = (|at| thousandth(at, wide), |at| thousandth(at, tall));
        (index, [x(rect.x), y(rect.y), x(rect.right()), y(rect.bottom())])
    };
    patterned.map(place).collect()
}

/// One finished card, `width` across its front and in proportion, with a little room round it.
pub fn card_picture(plan: &Plan, faces: &Faces, card: &Card, width: Length) -> Scene {
    let front = front_in_picture(plan, card, width);
    let alt = opening::alt(plan, card);
    let marks = vec![Mark::role(Role::Figure(alt.clone()), card::marks(plan, faces, card, front))];
    let size = Size::new(front.size.width + front.x * 2, front.size.height + front.y * 2);
    Scene { size, title: alt, marks }
}
