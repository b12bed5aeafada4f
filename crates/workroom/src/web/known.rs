//! Patches of a photo whose colours are known, on the page of the photo: a row of the form and a ring in the photo for each.
//!
//! They are kept under the hash of the straight picture that was made with them, so that they go with it wherever it goes
//! (copies, undo, a turn), and under the photo's for the next time it is sent. Left out on purpose: how colours are put right.

use maud::{Markup, html};
use photo::reference::Reference;
use photo::{Point, Raster};
use store::projects::{Kept, Projects, StoreError};

use super::answer::{Asked, Desk};
use super::say;
use crate::references::{self, Refused};

/// Pixels across of the picture on which somebody without scripts marks a patch.
const SMALL: u32 = 280;
/// A ring is so many heights of its letters across.
const USUAL: f64 = 1.7;
/// And so many on a phone, where there is room for it. See `workroom.css`.
const WIDEST: f64 = 3.4;

/// Under which name patches are kept, a line each, by the hash of a photo or of a straight picture.
fn name(hash: &str) -> String {
    format!("patches of {hash}")
}

/// Keeps the patches with which a straight picture was made.
pub(super) fn keep(
    store: &mut Projects,
    kept: &Kept,
    photo: &str,
    straight: &str,
    text: &str,
) -> Result<(), StoreError> {
    store.keep_picture(kept.id, &name(photo), text.as_bytes())?;
    store.keep_picture(kept.id, &name(straight), text.as_bytes())?;
    Ok(())
}

/// What was made of a picture has its patches too.
pub(super) fn follow(store: &mut Projects, kept: &Kept, from: &str, to: &str) -> Result<(), StoreError> {
    if let Some(bytes) = store.picture_or_others(kept.id, &name(from))? {
        store.keep_picture(kept.id, &name(to), &bytes)?;
    }
    Ok(())
}

/// The patches of a straight picture; those of its photo if it is not made straight yet. Another project's if this one has none:
/// a copy, or a file that was brought in.
fn kept_of(store: &Projects, kept: &Kept, photo: &str, straight: Option<&str>) -> Result<String, StoreError> {
    for hash in straight.into_iter().chain([photo]) {
        if let Some(bytes) = store.picture_or_others(kept.id, &name(hash))? {
            return Ok(String::from_utf8(bytes).unwrap_or_default());
        }
    }
    Ok(String::new())
}

/// Whether only the page is wanted: what the patches would do, one taken away, one put back, one marked without scripts.
pub(super) fn only_looks(asked: &Asked) -> bool {
    !asked.field("check").is_empty() || !asked.field("spot.x").is_empty()
}

/// The patches of a form, a line each: its rows, then what was written as lines.
pub(super) fn written(asked: &Asked) -> String {
    let all = rows(asked).into_iter().filter(|line| !line.is_empty());
    all.chain(asked.field("patches").lines().map(|line| line.trim().to_owned()).filter(|line| !line.is_empty()))
        .collect::<Vec<_>>()
        .join("\n")
}

/// Reads what [`written`] gives; or says which patch cannot be read and why.
pub(super) fn read(text: &str) -> Result<Vec<references::Line>, String> {
    let whose = |number: usize| say("photo-patch", &[("number", (number + 1).into())]);
    let read = |(number, text)| references::line(text).map_err(|unread| unread.said(whose(number), text));
    let all: Vec<references::Line> = text.lines().enumerate().map(read).collect::<Result<_, _>>()?;
    if all.len() > references::MOST { Err(references::many()) } else { Ok(all) }
}

/// The rows of a form, empty ones too.
fn rows(asked: &Asked) -> Vec<String> {
    let all = |name: &str| -> Vec<&str> {
        let named = asked.fields.iter().filter(|(key, _)| key == name);
        named.map(|(_, value)| std::str::from_utf8(value).unwrap_or_default().trim()).collect()
    };
    let (places, colors) = (all("patch-place"), all("patch-color"));
    let row = |number: usize| {
        let place = places.get(number).copied().unwrap_or_default();
        let color = colors.get(number).copied().unwrap_or_default();
        // As somebody may type them: with spaces, or without a comma.
        let parts = place.split([',', ';', ' ', '\t']).filter(|part| !part.is_empty());
        let place = parts.collect::<Vec<_>>().join(",");
        // A colour without a place stays one.
        if place.is_empty() && !color.is_empty() {
            format!("? {color}")
        } else {
            format!("{place} {color}").trim().to_owned()
        }
    };
    (0..places.len().max(colors.len())).map(row).collect()
}

/// A patch on the page.
#[derive(Debug, Default)]
struct Row {
    place: String,
    color: String,
    at: Option<Point>,
    /// As photographed, put right, in truth.
    chips: Option<[String; 3]>,
    said: String,
    refused: bool,
}

/// The patches of the page.
#[derive(Debug, Default)]
pub(super) struct Known {
    rows: Vec<Row>,
    /// What they do together; empty if one of them cannot be used.
    told: Vec<String>,
    /// Which one was just taken away, from 1, and its line.
    gone: Option<(usize, String)>,
    /// Why there cannot be so many.
    many: Option<String>,
    open: bool,
    /// Half a side of a patch that does not say its own.
    half: f64,
}

impl Known {
    /// What was sent, or what is kept of a photo and of the straight picture made of it.
    pub(super) fn of(desk: &Desk<'_>, photo: &str, straight: Option<&str>, pixels: &Raster) -> Self {
        let asked = desk.asked;
        let sent = asked.fields.iter().any(|(name, _)| name == "patches" || name == "patch-place");
        let mut known = Self { open: only_looks(asked), half: references::usual(pixels), ..Self::default() };
        let mut lines: Vec<String> = if sent {
            known.sent(asked, pixels)
        } else {
            let text = kept_of(&desk.room.store(), desk.kept, photo, straight).unwrap_or_default();
            text.lines().map(str::to_owned).collect()
        };
        if lines.len() > references::MOST {
            lines.truncate(references::MOST);
            known.many = Some(references::many());
        }
        known.rows = lines.iter().map(|line| Row::of(line)).collect();
        known.open |= !known.rows.is_empty();
        known.judge(&lines, pixels);
        known
    }

    /// The lines of a form, after what its button does to them.
    fn sent(&mut self, asked: &Asked, pixels: &Raster) -> Vec<String> {
        let mut rows = rows(asked);
        let act = asked.field("check");
        if let Some(number) = act.strip_prefix("without ").and_then(|number| number.parse::<usize>().ok())
            && (1..=rows.len()).contains(&number)
        {
            self.gone = Some((number, rows.remove(number - 1))).filter(|(_, line)| !line.is_empty());
        }
        let back = act.strip_prefix("with ").map(str::to_owned);
        let number = |name: &str| asked.field(name).parse::<u32>().ok();
        #[allow(clippy::cast_precision_loss, reason = "a pixel count")]
        let scale = pixels.width() as f64 / f64::from(SMALL);
        let spot = number("spot.x").zip(number("spot.y"));
        let spot = spot.map(|(x, y)| format!("{:.0},{:.0}", f64::from(x) * scale, f64::from(y) * scale));
        let typed = asked.field("patches").lines().map(str::to_owned);
        let all = rows.into_iter().chain(typed).chain(back).chain(spot);
        all.map(|line| line.trim().to_owned()).filter(|line| !line.is_empty()).collect()
    }

    /// Says of each what it does, or what is wrong with it.
    fn judge(&mut self, lines: &[String], pixels: &Raster) {
        let mut read = Vec::new();
        for (number, (row, text)) in self.rows.iter_mut().zip(lines).enumerate() {
            match references::line(text) {
                Ok(line) => read.push(line),
                Err(unread) => {
                    let whose = say("photo-patch", &[("number", (number + 1).into())]);
                    (row.said, row.refused) = (unread.said(whose, text), true);
                }
            }
        }
        if read.is_empty() || read.len() < self.rows.len() {
            return;
        }
        match references::fitted(pixels, &read) {
            Ok(reference) => self.tell(&reference, &read),
            Err(Refused { patch, said }) => {
                if let Some(row) = self.rows.get_mut(patch) {
                    (row.said, row.refused) = (said, true);
                }
            }
        }
    }

    fn tell(&mut self, reference: &Reference, lines: &[references::Line]) {
        self.told = vec![references::told_way(reference)];
        self.told.extend(references::told_mean(reference));
        let all = self.rows.iter_mut().zip(lines).zip(reference.seen().iter().zip(reference.off()));
        for ((row, line), (seen, off)) in all {
            row.said = references::told_of(off);
            row.chips = Some([*seen, reference.corrected(*seen), line.real].map(|light| light.srgb().to_string()));
        }
    }

    /// Open if there are any: then a touch of the photo begins another.
    pub(super) fn form(&self, action: &str, photo: &str) -> Markup {
        let here = format!("{action}#patches-told");
        let wrong = self.rows.iter().enumerate().filter(|(_, row)| row.refused);
        let wrong: Vec<String> = wrong.map(|(number, _)| (number + 1).to_string()).collect();
        let called = |number: String| say("photo-patch", &[("number", number.into())]);
        let away = |number: String| say("photo-patch-away", &[("number", number.into())]);
        html! {
            details.known id="patches" open[self.open] {
                summary { (say("photo-known", &[])) }
                p.hint { (say("photo-known-lead", &[])) }
                p.hint.by-hand-only { (say("photo-known-touch", &[])) }
                // Only where there are no scripts: a picture that says where it was clicked.
                noscript {
                    p.hint { (say("photo-known-spot", &[])) }
                    input.spot type="image" name="spot" formaction=(here) src=(photo) width=(SMALL) alt=(say("photo-known-spot", &[]));
                }
                p.hint { (say("photo-known-colors", &[])) }
                div id="patches-told" {
                    @if let Some((number, line)) = &self.gone {
                        div.notice role="status" {
                            p { (say("photo-patch-gone", &[("number", (*number).into()), ("line", line.into())])) }
                            button.quiet type="submit" name="check" value=(format!("with {line}")) formaction=(here) { (say("photo-patch-back", &[])) }
                        }
                    }
                    @if let Some(many) = &self.many { p.refused { (many) } }
                    @if !wrong.is_empty() { p.off.refused role="status" { (say("photo-patch-look", &[("count", wrong.len().into()), ("numbers", wrong.join(", ").into())])) } }
                    @if !self.told.is_empty() {
                        div.off role="status" { ul { @for line in &self.told { li { (line) } } } p.hint { (say("photo-chips", &[])) } }
                    }
                }
                ol.rows data-half=(format!("{:.1}", self.half)) data-called=(called("#".to_owned())) data-away=(away("#".to_owned())) data-at=(say("photo-patch-at", &[("number", "#".into()), ("place", "@".into())])) {
                    @for (number, row) in self.rows.iter().enumerate() {
                        (row.form(&called((number + 1).to_string()), Some(&away((number + 1).to_string())), number + 1, &here))
                    }
                    (Row::default().form(&say("photo-patch-new", &[]), None, self.rows.len() + 1, &here))
                }
                details.several {
                    summary { (say("photo-several", &[])) }
                    label.field {
                        span { (say("photo-patches", &[])) }
                        textarea name="patches" rows="6" spellcheck="false" autocomplete="off" {}
                    }
                }
                button type="submit" name="check" value="yes" formaction=(here) { (say("photo-check", &[])) }
                p.up { a href="#photo" { (say("photo-up", &[])) } }
            }
        }
    }

    /// A numbered ring at each. Scripts make them anew, by the screen's own pixels, so that they can be taken hold of.
    pub(super) fn marks(&self, reach: f64) -> Markup {
        let places: Vec<(usize, Point)> =
            self.rows.iter().enumerate().filter_map(|(number, row)| Some((number, row.at?))).collect();
        html! {
            g.patches aria-hidden="true" {
                @for (number, at) in &places {
                    @let nearest = places.iter().filter(|(other, _)| other != number).map(|(_, other)| (other.x - at.x).hypot(other.y - at.y)).fold(f64::INFINITY, f64::min);
                    @let letters = (nearest / USUAL).clamp(reach * 0.3, reach);
                    g class=(if nearest < reach * WIDEST { "ring crowded" } else { "ring" }) font-size=(format!("{letters:.1}")) transform=(format!("translate({} {})", at.x, at.y)) {
                        circle.patch r="0.85em" {}
                        text { (number + 1) }
                    }
                }
            }
        }
    }
}

impl Row {
    fn of(line: &str) -> Self {
        let (place, color) = references::parted(line);
        let at = references::place_of(place).map(|(at, _)| at);
        let place = if place == "?" { String::new() } else { place.to_owned() };
        Self { place, color: color.to_owned(), at, ..Self::default() }
    }

    /// `away`: what its button says; the last row, in which another patch is begun, has none yet.
    fn form(&self, called: &str, away: Option<&str>, number: usize, here: &str) -> Markup {
        html! {
            li {
                fieldset.refused[self.refused] {
                    legend { (called) }
                    label.field { span { (say("photo-patch-place", &[])) } input type="text" name="patch-place" value=(self.place) autocomplete="off" spellcheck="false"; }
                    label.field { span { (say("photo-patch-color", &[])) } input type="text" name="patch-color" value=(self.color) autocomplete="off" spellcheck="false"; }
                    @if let Some(chips) = &self.chips { (swatches(chips)) }
                    @if !self.said.is_empty() { p.said { (self.said) } }
                    button.quiet type="submit" name="check" value=(format!("without {number}")) formaction=(here) hidden[away.is_none()] { (away.unwrap_or_default()) }
                }
            }
        }
    }
}

/// Three colours side by side.
fn swatches(colors: &[String; 3]) -> Markup {
    html! {
        svg.chips viewBox="0 0 60 20" width="90" height="30" aria-hidden="true" {
            @for (number, color) in colors.iter().enumerate() { rect x=(number * 20) width="20" height="20" fill=(color) {} }
            rect.edge width="60" height="20" {}
        }
    }
}
