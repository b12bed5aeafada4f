//! The workroom in a browser: pages on this computer, for this computer.
//!
//! | module | holds |
//! |---|---|
//! | `server` | the loopback address, limits, and who may ask |
//! | `arrival` | connections that say nothing, or too slowly |
//! | `answer` | which page answers what was asked |
//! | `room` | the projects, plans already made, drawings already drawn |
//! | `edit` | changes to a project file that leave its comments alone |
//! | `shell`, `fields` | what every page has; the parts of forms |
//! | `greetings` | greetings and their jigs, on the page Background |
//! | `hand`, `paper`, `cards`, `layout`, `batch`, `stock`, `supplies`, `table`, `post`, `class`, `share` | a page each |
//! | `background`, `stamped` | the page of stamped backgrounds; what comes of a change to one |
//! | `straight`, `known` | a phone photo for a face: corners, and the sheet made straight; patches of it whose colours are known |
//! | `collage` | the printed lines of a collage sheet |
//! | `hold` | a layer taken hold of on the drawn card |
//! | `recipes` | recipes and layers: new, copied, taken away, moved |
//! | `chosen` | one card opened: its pieces turned over and swapped |
//! | `by_hand` | pieces dragged from card to card |
//! | `layers`, `pulled` | a layer more, and what a changed one writes anew; layers drawn with their borders |
//! | `sheet`, `moving` | the sheet of a layout on its page; a cut line that is moved |
//! | `sample` | the first card measured |
//! | `spoiled` | a spoiled piece: what is cut again |
//! | `facing`, `prints` | a picture put on a face; faces as they were drawn |
//! | `drawings` | pictures, each by its own address |
//! | `backups` | everything as one file, and back |
//! | `begin` | a first project file from a few answers |
//! | `progress` | a plan that takes long: how far it is, and a way to stop it |
//! | `language` | which language the reader wants |
//! | `accent` | a colour out of the open paper that can be read |
//! | `assets` | styles, scripts and letters, in the program itself |
//!
//! Every page works without scripts. Left out on purpose: arithmetic of its own, and files named by a request.

mod accent;
mod answer;
mod arrival;
mod assets;
mod background;
mod backups;
mod batch;
mod begin;
mod by_hand;
mod cards;
mod chosen;
mod class;
mod collage;
mod drawings;
mod edit;
mod facing;
mod fields;
mod greetings;
mod hand;
mod hold;
mod interest;
mod known;
mod language;
mod layers;
mod layout;
mod matched;
mod mend;
mod moving;
mod paper;
mod post;
mod prints;
mod progress;
mod pulled;
mod rates;
mod recipes;
mod regions;
mod room;
mod sample;
mod server;
mod share;
mod sheet;
mod shell;
mod spoiled;
mod stale;
mod stamped;
mod stock;
mod straight;
mod supplies;
mod table;

use drawing::text::with_fractions;
use words::Arg;

pub use answer::{Answer, Asked, Method, answer};
pub(crate) use greetings::{grown, true_width};
pub use room::{Planner, Room};
pub use server::{Address, Limits, ServeError, serve};

/// A message with its facts, fractions set as fractions.
fn say(id: &str, args: &[(&str, Arg)]) -> String {
    with_fractions(&words::say(id, args))
}
