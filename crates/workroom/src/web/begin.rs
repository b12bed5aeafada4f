//! A new project: from an example, from a file, or from a pack and a few answers.

use maud::{Markup, html};
use measure::{Length, Size, Unit, parse_size};
use store::project_file::Problem;
use store::projects::StoreError;

use super::answer::{Answer, Asked, told};
use super::room::Room;
use super::{fields, hand, mend, say};
use crate::wording::{exact, exact_size};

/// The examples that come with the program.
const EXAMPLES: [(&str, &str); 8] = [
    ("kettle-and-quince", crate::make::ONE_EACH),
    ("four-recipes", include_str!("../../../../examples/four-recipes.toml")),
    ("free-sizes", include_str!("../../../../examples/free-sizes.toml")),
    ("six-inch-pad", include_str!("../../../../examples/six-inch-pad.toml")),
    ("a6-from-a4", include_str!("../../../../examples/a6-from-a4.toml")),
    ("landscape-and-square", include_str!("../../../../examples/landscape-and-square.toml")),
    ("stamped-background", crate::make::BACKGROUND),
    ("small-envelope", include_str!("../../../../examples/small-envelope.toml")),
];

/// Most designs that a form may ask for.
const MOST_DESIGNS: u32 = 24;

/// The forms that begin a project.
pub(super) fn forms(asked: &Asked) -> Markup {
    let typed = |name: &str, otherwise: &str| {
        let value = asked.field(name);
        if value.is_empty() { otherwise.to_owned() } else { value.to_owned() }
    };
    let line = |name: &str, label: String, otherwise: &str| {
        html! {
            label.field { span { (label) } input type="text" name=(name) value=(typed(name, otherwise)) autocomplete="off"; }
        }
    };
    // A size with its name, to choose from: a name alone means different cards in different countries.
    let sized = |name: &str, label: String, otherwise: &str, all: &[(String, String)]| {
        let list = format!("sizes-of-{name}");
        html! {
            label.field { span { (label) } input type="text" name=(name) value=(typed(name, otherwise)) list=(list) autocomplete="off"; }
            datalist id=(list) { @for (size, name) in all { option value=(size) { (name) } } }
        }
    };
    html! {
        section.new {
            h2 { (say("new-title", &[])) }
            div.kinds {
                form method="post" action="/new" {
                    h3 { (say("new-pack", &[])) }
                    input type="hidden" name="kind" value="pack";
                    (line("pack", say("new-pack-name", &[]), ""))
                    (sized("sheet", say("new-sheet", &[]), "12 x 12 in", &sheets()))
                    (line("designs", say("new-designs", &[]), "6"))
                    (line("copies", say("new-copies", &[]), "1"))
                    (sized("format", say("new-format", &[]), "3 1/2 x 5 in", &cards()))
                    button type="submit" { (say("new-begin", &[])) }
                }
                form method="post" action="/new" {
                    h3 { (say("new-example", &[])) }
                    input type="hidden" name="kind" value="example";
                    label.field {
                        span { (say("new-which", &[])) }
                        select name="example" {
                            @for (name, text) in EXAMPLES { option value=(name) { (title(text)) } }
                        }
                    }
                    button type="submit" { (say("new-open", &[])) }
                }
                form class=[(!asked.field("text").is_empty()).then_some("mends")] method="post" action="/new" enctype="multipart/form-data" {
                    h3 { (say("new-file", &[])) }
                    input type="hidden" name="kind" value="file";
                    label.field { span { (say("new-file-file", &[])) } input type="file" name="file" accept=".toml,text/plain"; }
                    label.field {
                        span { (say("new-file-text", &[])) }
                        @let rows = if asked.field("text").is_empty() { 4 } else { 24 };
                        textarea id="text" name="text" rows=(rows) spellcheck="false" { "\n" (asked.field("text")) }
                    }
                    button type="submit" { (say("new-open", &[])) }
                }
            }
        }
    }
}

/// Sheets as they are sold, with their names.
fn sheets() -> Vec<(String, String)> {
    let found = ["12x12", "8x8", "6x6", "Letter", "A4"].into_iter().filter_map(measure::sheet);
    let unit = |size: Size| if size.width.ticks() % Length::mm(1).ticks() == 0 { Unit::Millimetre } else { Unit::Inch };
    found.map(|known| (exact_size(known.size, unit(known.size)), crate::wording::size_name(known.name))).collect()
}

/// Finished sizes of cards, with their names.
fn cards() -> Vec<(String, String)> {
    let mut all: Vec<(String, String)> = Vec::new();
    for known in measure::formats::formats() {
        let size = exact_size(known.face, known.unit);
        if all.iter().all(|(other, _)| *other != size) {
            all.push((size, crate::wording::size_name(known.name)));
        }
    }
    all
}

fn title(text: &str) -> String {
    store::project_file::read(text).map(|project| project.name).unwrap_or_default()
}

/// Begins a project.
pub(super) fn new(room: &Room, asked: &Asked) -> Result<Answer, StoreError> {
    let of_file = |asked: &Asked| {
        let file = asked.fields.iter().find(|(key, value)| key == "file" && !value.is_empty());
        file.map_or_else(|| asked.field("text").replace("\r\n", "\n").into_bytes(), |(_, bytes)| bytes.clone())
    };
    let begun = match asked.field("kind") {
        "example" => {
            EXAMPLES.iter().find(|(name, _)| *name == asked.field("example")).map(|(_, text)| (*text).to_owned())
        }
        "pack" => match from_pack(asked) {
            Ok(text) => Some(text),
            Err(refused) => return hand::page(room, asked, Some(html! { p { (refused) } })),
        },
        _ => {
            let bytes = of_file(asked);
            match store::project_file::read_bytes(&bytes) {
                Ok(_) => String::from_utf8(bytes).ok(),
                Err(problems) => return shown_back(room, asked, &bytes, &problems),
            }
        }
    };
    let Some(text) = begun else { return hand::page(room, asked, Some(html! { p { (say("new-nothing", &[])) } })) };
    if let Err(problems) = store::project_file::read(&text) {
        return hand::page(room, asked, Some(told(&problems)));
    }
    let id = room.store().add(&text, &say("edit-begun", &[]), asked.now)?;
    Ok(Answer::see(format!("/w/{}/cards", id.0)))
}

/// A file that cannot be read: its mistakes, and its text to mend and to send again.
fn shown_back(room: &Room, asked: &Asked, bytes: &[u8], problems: &[Problem]) -> Result<Answer, StoreError> {
    let Some(text) = mend::shown_back(bytes) else { return hand::page(room, asked, Some(told(problems))) };
    let fields = vec![("kind".to_owned(), b"file".to_vec()), ("text".to_owned(), text.clone().into_bytes())];
    let shown = Asked { fields, ..asked.clone() };
    hand::page(room, &shown, Some(mend::told(problems, &text, "text")))
}

/// A first project file: one recipe with a mat and a panel, a border of 1/8 in (3 mm) a layer.
fn from_pack(asked: &Asked) -> Result<String, String> {
    let size = |name: &str, label| fields::typed(asked, name, label, |typed| parse_size(typed, Some(Unit::Inch)));
    let number = |name: &str, label: String, most: u32| {
        let typed = asked.field(name).trim();
        typed.parse::<u32>().ok().filter(|number| (1..=most).contains(number)).ok_or_else(|| {
            say("new-bad-number", &[("label", label.into()), ("typed", typed.into()), ("most", most.into())])
        })
    };
    let (sheet, format) = (size("sheet", say("new-sheet", &[]))?, size("format", say("new-format", &[]))?);
    let designs = number("designs", say("new-designs", &[]), MOST_DESIGNS)?;
    let copies = number("copies", say("new-copies", &[]), 500)?;
    let metric = ["mm", "cm"].iter().any(|unit| asked.field("sheet").contains(unit))
        || ["mm", "cm"].iter().any(|unit| asked.field("format").contains(unit));
    let (unit, border, play) = if metric {
        (Unit::Millimetre, Length::mm(3), Length::mm(6))
    } else {
        (Unit::Inch, Length::from_ticks(Length::INCH.ticks() / 8), Length::from_ticks(Length::INCH.ticks() / 4))
    };
    let panel = Size::new(format.width - border * 4, format.height - border * 4);
    if panel.width <= play || panel.height <= play {
        return Err(say("new-too-small", &[("format", asked.field("format").into())]));
    }
    let range = |most: Length| format!("{} to {}", exact(most - play, unit), exact(most, unit));
    let name = if asked.field("pack").trim().is_empty() {
        say("new-unnamed", &[])
    } else {
        asked.field("pack").trim().to_owned()
    };
    let quoted = |text: &str| toml_edit::Value::from(text).to_string();
    let mut text = format!(
        "name = {}\nunit = \"{}\"\n\n[[pack]]\nname = {}\nsheet = \"{}\"\n",
        quoted(&name),
        if metric { "mm" } else { "in" },
        quoted(&name),
        exact_size(sheet, unit)
    );
    for design in 0..designs {
        let letter = char::from(b'A' + u8::try_from(design).unwrap_or(0));
        let named = say("new-design", &[("letter", letter.to_string().into())]);
        text.push_str(&format!(
            "\n[[pack.design]]\nletter = \"{letter}\"\nname = {}\ncopies = {copies}\n",
            quoted(&named)
        ));
    }
    let stock = |name: String, color: &str| format!("\n[[cardstock]]\nname = {}\ncolor = \"{color}\"\n", quoted(&name));
    text.push_str(&stock(say("new-base-color", &[]), "#f6f0e2"));
    text.push_str(&stock(say("new-mat-color", &[]), "#5b6b73"));
    text.push_str(&format!(
        "\n[[recipe]]\nname = {}\nformat = \"{}\"\nbase = {}\n\n[[recipe.layer]]\nname = {}\nkind = \"mat\"\nfollows = {}\n\
         border = \"{}\"\ncardstock = {}\n\n[[recipe.layer]]\nname = {}\nwidth = \"{}\"\nheight = \"{}\"\nprefer = \"{}\"\n",
        quoted(&say("new-recipe", &[])),
        exact_size(format, unit),
        quoted(&say("new-base-color", &[])),
        quoted(&say("new-mat", &[])),
        quoted(&say("new-panel", &[])),
        exact(border, unit),
        quoted(&say("new-mat-color", &[])),
        quoted(&say("new-panel", &[])),
        range(panel.width),
        range(panel.height),
        exact_size(panel, unit)
    ));
    Ok(text)
}
