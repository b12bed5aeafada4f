//! Which page answers what was asked.

use std::collections::BTreeMap;
use std::time::Duration;

use maud::{Markup, html};
use store::project_file;
use store::projects::{Kept, ProjectId, SaveError, StoreError};
use toml_edit::DocumentMut;

use super::edit::{self, Changed, EditError, Pin};
use super::room::{Made, Room};
use super::{
    assets, background, backups, batch, begin, by_hand, cards, chosen, class, collage, drawings, facing, hand, hold,
    interest, known, layout, mend, moving, paper, post, progress, rates, recipes, regions, sample, say, share, shell,
    spoiled, stale, stamped, stock, straight, supplies, table,
};
use crate::wording;

/// How it was asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Method {
    /// To look.
    Get,
    /// To change something.
    Post,
}

/// One request, read whole.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Asked {
    /// To look or to change.
    pub method: Method,
    /// The path, as it was sent.
    pub path: String,
    /// What follows the question mark.
    pub query: Vec<(String, String)>,
    /// The fields of a form.
    pub fields: Vec<(String, Vec<u8>)>,
    /// Seconds since 1970.
    pub now: i64,
}

impl Asked {
    /// The value of a query by its name; empty if it was not sent.
    pub(super) fn query(&self, name: &str) -> &str {
        self.query.iter().find(|(key, _)| key == name).map_or("", |(_, value)| value)
    }

    /// A field of the form as text; empty if it was not sent or is no text.
    pub(super) fn field(&self, name: &str) -> &str {
        let found = self.fields.iter().find(|(key, _)| key == name);
        found.and_then(|(_, value)| std::str::from_utf8(value).ok()).unwrap_or_default()
    }

    /// What the address asks for under a name, or else the form.
    pub(super) fn either(&self, name: &str) -> &str {
        let query = self.query(name);
        if query.is_empty() { self.field(name) } else { query }
    }

    /// The fields that say what is to stand where: `set:place`.
    pub(super) fn changes(&self) -> Vec<(String, String)> {
        let text = |value: &[u8]| std::str::from_utf8(value).ok().map(|text| text.replace("\r\n", "\n"));
        let set = |(key, value): &(String, Vec<u8>)| Some((key.strip_prefix("set:")?.to_owned(), text(value)?));
        self.fields.iter().filter_map(set).collect()
    }
}

/// One answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answer {
    /// HTTP status.
    pub status: u16,
    /// Content type.
    pub kind: &'static str,
    /// True: it may be kept for ever under its address.
    pub forever: bool,
    /// Where to go instead.
    pub to: Option<String>,
    /// The name to save it under.
    pub file: Option<String>,
    /// Its bytes.
    pub body: Vec<u8>,
}

impl Answer {
    /// A page.
    pub(super) fn page(status: u16, page: Markup) -> Answer {
        let body = page.into_string().into_bytes();
        Answer { status, kind: "text/html; charset=utf-8", forever: false, to: None, file: None, body }
    }

    /// Something that never changes under its address.
    pub(super) fn kept(kind: &'static str, body: Vec<u8>) -> Answer {
        Answer { status: 200, kind, forever: true, to: None, file: None, body }
    }

    /// The same, but asked for anew each time.
    pub(super) fn passing(self) -> Answer {
        Answer { forever: false, ..self }
    }

    /// Something to save.
    pub(super) fn file(name: &str, kind: &'static str, body: Vec<u8>) -> Answer {
        Answer { status: 200, kind, forever: false, to: None, file: Some(name.to_owned()), body }
    }

    /// The same, saved under a name that begins with the project's.
    fn named_after(mut self, project: &str) -> Answer {
        let slug = share::slug(project);
        self.file = self.file.map(|file| if slug.is_empty() { file } else { format!("{slug}-{file}") });
        self
    }

    /// The same, with the card that was open still open, or seen as the cards were seen.
    fn with_card(mut self, asked: &Asked) -> Answer {
        if let (Some(to), Some(side)) = (&mut self.to, batch::side(asked.field("side"))) {
            to.push_str(side);
            return self;
        }
        if let (Some(to), Ok(card)) = (&mut self.to, asked.field("card").parse::<u32>()) {
            let (page, at) = to.split_once('#').unwrap_or((to.as_str(), "card"));
            *to = format!("{page}?card={card}#{at}");
        }
        self
    }

    /// The same, with the background that was looked at.
    fn with_background(mut self, asked: &Asked) -> Answer {
        if let (Some(to), Ok(index @ 1..)) = (&mut self.to, asked.field("b").parse::<usize>()) {
            let (page, at) = to.split_once('#').unwrap_or((to.as_str(), "stamping"));
            *to = format!("{page}?b={index}#{at}");
        }
        self
    }

    /// The same, with the panels that were open still open.
    fn with_panels(mut self, asked: &Asked) -> Answer {
        let open = asked.field("panels");
        if let Some(to) = &mut self.to
            && let Some((page, at)) = to.split_once('#')
            && at == open
        {
            *to = format!("{page}?panels={open}#{open}");
        }
        self
    }

    /// The same, with the layer that was in hand still in hand.
    fn with_hold(mut self, asked: &Asked) -> Answer {
        let held = asked.field("hold");
        if let Some(to) = &mut self.to
            && held.bytes().all(|sign| sign.is_ascii_digit() || sign == b'-')
            && let Some((page, at)) = to.split_once('#')
        {
            *to = format!("{page}?hold={held}#{at}");
        }
        self
    }

    /// Look there instead.
    pub(super) fn see(to: String) -> Answer {
        Answer { status: 303, kind: "text/plain", forever: false, to: Some(to), file: None, body: Vec::new() }
    }
}

/// The pages of a project, in the order of the job.
pub(super) const PAGES: [&str; 11] =
    ["paper", "cards", "layout", "batch", "cardstock", "supplies", "background", "table", "post", "class", "share"];

/// A project on the desk: all that a page shows.
pub(super) struct Desk<'a> {
    pub(super) room: &'a Room,
    pub(super) asked: &'a Asked,
    pub(super) kept: &'a Kept,
    pub(super) made: &'a Made,
    pub(super) document: &'a DocumentMut,
    /// What was typed and refused, by place.
    pub(super) typed: BTreeMap<String, String>,
    /// Why it was refused.
    pub(super) refused: Option<Markup>,
}

/// How long an answer that needs its plan waits for it.
const LONGEST: Duration = Duration::from_secs(60);

/// Answers one request.
///
/// # Shape
/// Nothing in a request names a file. Every refusal is a page that says what would do.
pub fn answer(room: &Room, asked: &Asked) -> Answer {
    let parts: Vec<&str> = asked.path.split('/').filter(|part| !part.is_empty()).collect();
    let answered = match (asked.method, parts.as_slice()) {
        (Method::Get, []) => hand::page(room, asked, None),
        (Method::Get, ["assets", _, name]) => Ok(assets::asset(name).unwrap_or_else(lost)),
        (Method::Get, ["backup"]) => backups::backup(room, asked),
        (Method::Post, ["restore"]) => backups::restore(room, asked),
        (Method::Post, ["new"]) => begin::new(room, asked),
        (method, ["w", id, rest @ ..]) => match id.parse().map(ProjectId) {
            Ok(id) => project(room, asked, method, id, rest),
            Err(_) => Ok(lost()),
        },
        _ => Ok(lost()),
    };
    answered.unwrap_or_else(|error| store_refusal(&error))
}

fn project(room: &Room, asked: &Asked, method: Method, id: ProjectId, rest: &[&str]) -> Result<Answer, StoreError> {
    let found = room.store().get(id)?;
    let Some(kept) = found else { return Ok(lost()) };
    let at = |page: &str| Answer::see(format!("/w/{}/{page}", id.0));
    let seen: i64 = asked.field("seen").parse().unwrap_or(-1);
    let kept = match (method, rest) {
        (Method::Post, [verb]) => stale::as_seen(room, kept, verb, seen)?,
        _ => kept,
    };
    match (method, rest) {
        (Method::Get, []) => Ok(at("cards")),
        (Method::Get, [page]) if PAGES.contains(page) => show(room, asked, &kept, page, BTreeMap::new(), None),
        (Method::Get, ["move"]) => with_made(room, asked, &kept, moving::tried),
        (Method::Get, ["stamped"]) => with_made(room, asked, &kept, stamped::tried),
        (Method::Get, ["panels"]) => with_made(room, asked, &kept, collage::tried),
        (Method::Get, ["photo"]) => with_made(room, asked, &kept, |desk| straight::page(desk, None)),
        (Method::Get, ["interest"]) => with_made(room, asked, &kept, interest::page),
        (Method::Get, ["photo.jpg"]) => Ok(straight::file(room, asked)?.unwrap_or_else(lost)),
        (Method::Get, ["layers"]) => with_made(room, asked, &kept, hold::tried),
        (Method::Get, ["choices"]) => with_made(room, asked, &kept, by_hand::told),
        (Method::Get, ["progress"]) => Ok(progress::event(room, &kept).unwrap_or_else(lost)),
        // The maker's own file needs no plan: it can be had when nothing else can.
        (Method::Get, ["file", "project.toml"]) => {
            let name = hand::name_of(&kept);
            let file = Answer::file("project.toml", "application/toml", kept.now.text.into_bytes());
            Ok(file.named_after(&name))
        }
        (Method::Get, ["file", name]) => {
            let of_project = |desk: &Desk<'_>| Some(share::file(desk, name)?.named_after(&desk.made.project().name));
            with_made(room, asked, &kept, of_project)
        }
        (Method::Get, [number, name]) => {
            let revision = match number.parse() {
                Ok(number) => room.store().revision(id, number)?,
                Err(_) => None,
            };
            let Some(revision) = revision else { return Ok(lost()) };
            let drawn = drawings::drawing(room, asked, id, &revision, name);
            Ok(drawn.unwrap_or_else(lost))
        }
        (Method::Post, ["edit"]) => {
            let changes = asked.changes();
            Ok(keep(room, asked, &kept, edit::change(&kept.now.text, &changes))?.with_panels(asked))
        }
        (Method::Post, ["text"]) => {
            let text = asked.field("text").replace("\r\n", "\n");
            let changed = Changed { text, what: say("edit-text", &[]) };
            keep(room, asked, &kept, Ok(Some(changed).filter(|changed| changed.text != kept.now.text)))
        }
        (Method::Post, ["pins"]) => {
            let Some(made) = made(room, &kept) else { return unplanned(room, asked, &kept) };
            keep(room, asked, &kept, Ok(layout::pinned(asked, &kept, &made)))
        }
        (Method::Post, ["choices"]) => {
            let Some(made) = made(room, &kept) else { return unplanned(room, asked, &kept) };
            match chosen::change(asked, &kept, &made) {
                Ok(changed) => Ok(keep(room, asked, &kept, changed.map(Some))?.with_card(asked)),
                Err(refused) => show(room, asked, &kept, "batch", BTreeMap::new(), Some(refused)),
            }
        }
        (Method::Post, ["rates"]) => keep(room, asked, &kept, rates::change(asked, &kept)),
        (Method::Post, ["swap"]) => {
            let Some(made) = made(room, &kept) else { return unplanned(room, asked, &kept) };
            let changed = supplies::swapped(room, &kept, &made)?;
            keep(room, asked, &kept, changed)
        }
        (Method::Post, ["recipe"]) => {
            let Some(made) = made(room, &kept) else { return unplanned(room, asked, &kept) };
            match recipes::change(asked, &kept, &made) {
                Ok(changed) => keep(room, asked, &kept, Ok(Some(changed))),
                Err(why) => {
                    let refused = html! { p { (why) } };
                    show(room, asked, &kept, "cards", BTreeMap::new(), Some(refused))
                }
            }
        }
        (Method::Post, ["panels"]) => {
            let Some(made) = made(room, &kept) else { return unplanned(room, asked, &kept) };
            match collage::change(asked, &kept, &made) {
                Ok(changed) => Ok(keep(room, asked, &kept, Ok(changed))?.with_panels(asked)),
                Err(why) => show(room, asked, &kept, "paper", BTreeMap::new(), Some(why)),
            }
        }
        (Method::Post, ["regions"]) => {
            let Some(made) = made(room, &kept) else { return unplanned(room, asked, &kept) };
            match regions::change(asked, &kept, &made) {
                Ok(changed) => Ok(keep(room, asked, &kept, Ok(changed))?.with_panels(asked)),
                Err(why) => show(room, asked, &kept, "paper", BTreeMap::new(), Some(why)),
            }
        }
        (Method::Post, ["layers"]) => {
            let Some(made) = made(room, &kept) else { return unplanned(room, asked, &kept) };
            match hold::change(asked, &kept, &made) {
                Ok(changed) => Ok(keep(room, asked, &kept, Ok(changed))?.with_hold(asked)),
                Err(why) => show(room, asked, &kept, "cards", BTreeMap::new(), Some(why)),
            }
        }
        (Method::Post, ["background"]) => {
            let Some(made) = made(room, &kept) else { return unplanned(room, asked, &kept) };
            match stamped::change(room, asked, &kept, &made)? {
                Ok(changed) => Ok(keep(room, asked, &kept, Ok(changed))?.with_background(asked)),
                Err(why) => {
                    let typed = asked.changes().into_iter().collect();
                    show(room, asked, &kept, "background", typed, Some(html! { p { (why) } }))
                }
            }
        }
        (Method::Post, ["photo"]) if known::only_looks(asked) => {
            with_made(room, asked, &kept, |desk| straight::page(desk, None))
        }
        (Method::Post, ["photo"]) if asked.field("act") == "square" => match straight::change(room, asked, &kept)? {
            Ok(changed) => keep(room, asked, &kept, Ok(Some(changed))),
            Err(why) => with_made(room, asked, &kept, |desk| straight::page(desk, Some(&why))),
        },
        (Method::Post, ["photo"]) => match straight::upload(room, asked, &kept)? {
            Ok(page) => Ok(page),
            Err(why) => show(room, asked, &kept, "paper", BTreeMap::new(), Some(why)),
        },
        (Method::Post, ["face"]) => match facing::change(room, asked, &kept)? {
            Ok(changed) => keep(room, asked, &kept, Ok(Some(changed))),
            Err(why) => show(room, asked, &kept, "paper", BTreeMap::new(), Some(why)),
        },
        (Method::Post, ["move"]) => {
            let Some(made) = made(room, &kept) else { return unplanned(room, asked, &kept) };
            match moving::moved(asked, &kept, &made) {
                Ok(changed) => keep(room, asked, &kept, Ok(changed)),
                Err(why) => show(room, asked, &kept, "layout", BTreeMap::new(), Some(why)),
            }
        }
        (Method::Post, ["undo"]) => moved(room, asked, &kept, room.store().undo(id, seen).map(|_| ())),
        (Method::Post, ["redo"]) => moved(room, asked, &kept, room.store().redo(id, seen).map(|_| ())),
        (Method::Post, ["copy"]) => {
            let what = say("edit-copy", &[]);
            let mine = asked.field("text");
            let text = if mine.is_empty() { kept.now.text.clone() } else { mine.replace("\r\n", "\n") };
            let name = project_file::read(&text).map(|project| project.name).unwrap_or_default();
            let named = say("copy-name", &[("name", name.into())]);
            let copied = edit::change(&text, &[("name".to_owned(), named)]);
            let text = copied.ok().flatten().map_or(text, |changed| changed.text);
            let copy = room.store().add(&text, &what, asked.now)?;
            Ok(Answer::see(format!("/w/{}/{}", copy.0, page_of(asked))))
        }
        (Method::Post, ["away"]) => {
            room.store().put_away(id, asked.now)?;
            Ok(Answer::see(format!("/?away={}", id.0)))
        }
        (Method::Post, ["back"]) => {
            room.store().take_back(id)?;
            Ok(Answer::see("/".to_owned()))
        }
        (Method::Post, ["spoil"]) => {
            let Some(made) = made(room, &kept) else { return unplanned(room, asked, &kept) };
            match spoiled::change(room, asked, id, &made)? {
                None => Ok(back(asked, &kept)),
                Some(to) => Ok(at(&to)),
            }
        }
        (Method::Post, ["sample"]) => {
            let Some(before) = made(room, &kept) else { return unplanned(room, asked, &kept) };
            let changed = sample::change(asked, &kept, &before);
            if let Ok(Some(changed)) = &changed
                && let Ok(project) = project_file::read(&changed.text)
                && let Some(after) = room.job(&changed.text, &project).wait(LONGEST)
                && after.plan.counts.cards < before.plan.counts.cards
            {
                let refused = sample::fewer(before.plan.counts.cards, after.plan.counts.cards);
                return show(room, asked, &kept, "table", BTreeMap::new(), Some(refused));
            }
            keep(room, asked, &kept, changed)
        }
        (Method::Post, ["tick"]) => {
            let done = (asked.field("done") == "yes").then_some(asked.now);
            room.store().tick(id, asked.field("step"), done)?;
            // A tick never waits for a plan: the shelf hears of it at the next page that has one.
            room.owe(id);
            if let Some(made) = room.at_hand(&kept.now.text) {
                shelve(room, asked, &kept, &made)?;
            }
            Ok(at(&table::after(asked)))
        }
        (Method::Post, ["shelf"]) => match supplies::change(room, asked)? {
            None => Ok(at("supplies#shelf")),
            Some(refused) => show(room, asked, &kept, "supplies", BTreeMap::new(), Some(refused)),
        },
        (Method::Post, ["stop"]) => {
            if let Ok(project) = project_file::read(&kept.now.text) {
                room.job(&kept.now.text, &project).stop();
            }
            Ok(back(asked, &kept))
        }
        (Method::Post, ["again"]) => {
            room.try_again(&kept.now.text);
            Ok(back(asked, &kept))
        }
        _ => Ok(lost()),
    }
}

/// The plan of a project as it is, waiting as long as it takes; `None` if its file cannot be read.
fn made(room: &Room, kept: &Kept) -> Option<std::sync::Arc<Made>> {
    let project = project_file::read(&kept.now.text).ok()?;
    room.job(&kept.now.text, &project).wait(LONGEST)
}

/// The shelf hears of what was ticked, and what the plan still needs is laid aside.
fn shelve(room: &Room, asked: &Asked, kept: &Kept, made: &Made) -> Result<(), StoreError> {
    if room.owed(kept.id)
        && let Err(error) = supplies::after_tick(room, asked, kept, made)
    {
        room.owe(kept.id);
        return Err(error);
    }
    // A plan lays aside as soon as it is there, whichever page it is looked at on.
    if room.lays_aside(kept.id, &kept.now.text) {
        supplies::lay_aside(&mut room.store(), kept, &::cards::buying::needs(&made.plan))?;
    }
    Ok(())
}

/// Nothing was done, because the plan that it needs is not there.
fn unplanned(room: &Room, asked: &Asked, kept: &Kept) -> Result<Answer, StoreError> {
    match project_file::read(&kept.now.text) {
        Ok(project) => {
            let job = room.job(&kept.now.text, &project);
            let said = if job.broken() { say("broken-refused", &[]) } else { say("working-refused", &[]) };
            let refused = html! { p { (said) } };
            progress::meanwhile(room, kept, page_of(asked), &job, Some(&refused))
        }
        Err(problems) => Ok(Answer::page(422, mend::page(kept, &problems))),
    }
}

fn with_made(
    room: &Room,
    asked: &Asked,
    kept: &Kept,
    page: impl FnOnce(&Desk<'_>) -> Option<Answer>,
) -> Result<Answer, StoreError> {
    let Ok(document) = edit::document(&kept.now.text) else { return Ok(lost()) };
    let Some(made) = made(room, kept) else { return unplanned(room, asked, kept) };
    let desk = Desk { room, asked, kept, made: &made, document: &document, typed: BTreeMap::new(), refused: None };
    Ok(page(&desk).unwrap_or_else(lost))
}

/// A page of a project; with what was typed, if that was refused.
fn show(
    room: &Room,
    asked: &Asked,
    kept: &Kept,
    page: &str,
    typed: BTreeMap<String, String>,
    refused: Option<Markup>,
) -> Result<Answer, StoreError> {
    let project = match (project_file::read(&kept.now.text), edit::document(&kept.now.text)) {
        (Ok(project), Ok(document)) => (project, document),
        (Err(problems), _) => return Ok(Answer::page(422, mend::page(kept, &problems))),
        _ => return Ok(lost()),
    };
    let (project, document) = project;
    let job = room.job(&kept.now.text, &project);
    // What was refused is told with the page it was typed on, however long that takes.
    let patience = if refused.is_some() { LONGEST } else { room.patience };
    let Some(made) = job.wait(patience) else {
        return progress::meanwhile(room, kept, page, &job, refused.as_ref());
    };
    shelve(room, asked, kept, &made)?;
    let status = if refused.is_some() { 422 } else { 200 };
    let desk = Desk { room, asked, kept, made: &made, document: &document, typed, refused };
    let shown = match page {
        "paper" => paper::page(&desk),
        "layout" => layout::page(&desk),
        "batch" => batch::page(&desk),
        "cardstock" => stock::page(&desk),
        "supplies" => supplies::page(&desk)?,
        "background" => background::page(&desk),
        "table" => table::page(&desk)?,
        "post" => post::page(&desk),
        "class" => class::page(&desk),
        "share" => share::page(&desk),
        _ => cards::page(&desk),
    };
    Ok(Answer::page(status, shown))
}

/// Keeps a change if the file can still be read and nobody was quicker.
fn keep(
    room: &Room,
    asked: &Asked,
    kept: &Kept,
    changed: Result<Option<Changed>, EditError>,
) -> Result<Answer, StoreError> {
    let page = page_of(asked);
    let typed: BTreeMap<String, String> = asked.changes().into_iter().collect();
    let changed = match changed {
        Ok(Some(changed)) => changed,
        Ok(None) => return Ok(back(asked, kept)),
        Err(_) => return show(room, asked, kept, page, typed, Some(html! { p { (say("refused-place", &[])) } })),
    };
    if let Err(problems) = project_file::read(&changed.text) {
        if asked.path.ends_with("/text") {
            let mut mine = kept.clone();
            mine.now.text = changed.text;
            return Ok(Answer::page(422, mend::page(&mine, &problems)));
        }
        return show(room, asked, kept, page, typed, Some(told(&problems)));
    }
    let seen: i64 = asked.field("seen").parse().unwrap_or(-1);
    let saved = room.store().save(kept.id, seen, &changed.text, &changed.what, asked.now);
    match saved {
        Ok(_) => Ok(back(asked, kept)),
        Err(SaveError::Stale { now, since }) => Ok(stale::page(asked, kept, &changed, now.number, &since)),
        Err(SaveError::NoProject(_)) => Ok(lost()),
        Err(SaveError::Store(error)) => Err(error),
    }
}

fn moved(_: &Room, asked: &Asked, kept: &Kept, done: Result<(), SaveError>) -> Result<Answer, StoreError> {
    match done {
        // An undo that comes too late changes nothing: the page shows how it is now.
        Ok(()) | Err(SaveError::Stale { .. }) => Ok(back(asked, kept)),
        Err(SaveError::NoProject(_)) => Ok(lost()),
        Err(SaveError::Store(error)) => Err(error),
    }
}

/// The page a form came from.
fn page_of(asked: &Asked) -> &str {
    let named = asked.field("page");
    PAGES.iter().find(|page| **page == named).copied().unwrap_or("cards")
}

fn back(asked: &Asked, kept: &Kept) -> Answer {
    let anchor = asked.field("at");
    let plain = !anchor.is_empty() && anchor.bytes().all(|sign| sign.is_ascii_alphanumeric() || sign == b'-');
    let anchor = if plain { format!("#{anchor}") } else { String::new() };
    Answer::see(format!("/w/{}/{}{anchor}", kept.id.0, page_of(asked)))
}

/// The problems of a file in words.
pub(super) fn told(problems: &[project_file::Problem]) -> Markup {
    html! {
        ul.problems {
            @for problem in problems.iter().take(12) {
                @let worded = wording::problem(problem);
                li {
                    (say("mistake-line", &[("line", problem.line.into()), ("said", worded.said.into())]))
                    span.remedy { (worded.remedy) }
                }
            }
        }
    }
}

/// Nothing lies under that address.
pub(super) fn lost() -> Answer {
    Answer::page(404, shell::plain(&say("lost-title", &[]), &html! { p { (say("lost", &[])) } }))
}

/// The store could not do it.
fn store_refusal(error: &StoreError) -> Answer {
    let said = match error {
        StoreError::Full => say("store-full", &[]),
        StoreError::Unwritten(reason) => say("store-unwritten", &[("reason", reason.into())]),
        StoreError::ReadOnly => say("store-read-only", &[]),
        StoreError::InUse => say("store-in-use", &[]),
        StoreError::Damaged(reason) => say("store-damaged", &[("reason", reason.into())]),
        StoreError::Other(reason) => say("store-other", &[("reason", reason.into())]),
    };
    let room = matches!(error, StoreError::Full | StoreError::Unwritten(_));
    let status = if room { 507 } else { 500 };
    Answer::page(status, shell::plain(&say("store-title", &[]), &html! { p { (said) } p { (say("store-kept", &[])) } }))
}

/// A pin as the project has it, in the words of its file.
pub(super) fn pins_of(made: &Made) -> Vec<Pin> {
    made.project().goal.pins.iter().map(|pin| moving::written(made, pin)).collect()
}
