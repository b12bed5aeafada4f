//! A project file that cannot be read, shown back: every mistake with its line, and the text to mend.

use maud::{Markup, html};
use store::project_file::Problem;
use store::projects::Kept;

use super::{say, share, shell};
use crate::wording;

/// Longest text that is shown back, in bytes. Chosen: ten times a large project, and no page too heavy to open.
const MOST_SHOWN: usize = 200_000;
/// Most signs of a line that are quoted.
const MOST_QUOTED: usize = 90;

/// The text to mend; `None` if it is no text that a person could mend on a page.
pub(super) fn shown_back(bytes: &[u8]) -> Option<String> {
    let text = std::str::from_utf8(bytes).ok().filter(|text| text.len() <= MOST_SHOWN && !text.contains('\0'))?;
    Some(text.replace("\r\n", "\n"))
}

/// The problems of a text that lies below in a field named `at`, each with its line as it stands there.
pub(super) fn told(problems: &[Problem], text: &str, at: &str) -> Markup {
    html! {
        ul.problems data-enhance="mend" {
            @for problem in problems.iter().take(12) {
                @let worded = wording::problem(problem);
                li {
                    (say("mistake-line", &[("line", problem.line.into()), ("said", worded.said.into())]))
                    span.remedy { (worded.remedy) }
                    @if let Some(line) = text.lines().nth(problem.line.saturating_sub(1)).filter(|line| !line.trim().is_empty()) {
                        " "
                        a.quoted href=(format!("#{at}")) data-line=(problem.line) data-column=(problem.column) {
                            code { (line.trim().chars().take(MOST_QUOTED).collect::<String>()) }
                        }
                    }
                }
            }
        }
        p { (say("mend-below", &[])) }
    }
}

/// A project file that cannot be read: every mistake, and the text to mend.
pub(super) fn page(kept: &Kept, problems: &[Problem]) -> Markup {
    let inside = html! {
        div.refused role="alert" { h2 { (say("refused-title", &[])) } (told(problems, &kept.now.text, "text")) }
        (share::text_form(kept, &kept.now.text))
    };
    shell::plain(&say("unreadable-title", &[]), &inside)
}
