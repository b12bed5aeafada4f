//! Background: what is stamped by hand.

use maud::{Markup, html};

use super::answer::Desk;
use super::{greetings, say, shell};

/// The page.
pub(super) fn page(desk: &Desk<'_>) -> Markup {
    let inside = html! {
        div.lead { h1 { (say("background-title", &[])) } p.facts { (say("background-lead", &[])) } }
        p.caution { (say("background-caution", &[])) }
        (greetings::section(desk))
    };
    shell::of_project(desk, "background", &inside)
}
